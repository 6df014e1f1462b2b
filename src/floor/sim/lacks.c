/* SPDX-License-Identifier: MIT */
/* lacks: a row for each of a defender's words that needs something of the attack: a screen, a run,
 * the ball. Words without a row can always be done. */
#include "floor/sim/lacks.h"

#include "floor/sim/guard.h"

static const struct {
    enum verb verb;
    enum lack lack;
} rows[] = {
    {VERB_GOES_UNDER, LACK_USER}, {VERB_GOES_OVER, LACK_USER}, {VERB_HEDGES, LACK_SCREEN},
    {VERB_DROPS, LACK_SCREEN},    {VERB_ICES, LACK_PICK},      {VERB_SWITCHES, LACK_PAIR},
    {VERB_TRAILS, LACK_MOVE},     {VERB_BUMPS, LACK_MOVE},     {VERB_TAGS, LACK_MOVE},
    {VERB_DOUBLES, LACK_BALL},    {VERB_TRAPS, LACK_BALL},     {VERB_CLOSES_OUT, LACK_BALL},
    {VERB_STUNTS, LACK_BALL},     {VERB_DENIES, LACK_NO_BALL}, {VERB_OVERPLAYS, LACK_NO_BALL},
    {VERB_FRONTS, LACK_NO_BALL},  {VERB_BOXES_OUT, LACK_SHOT}, {VERB_HELPS, LACK_DRIVE},
    {VERB_ROTATES, LACK_THREAT},  {VERB_SAGS, LACK_STEP},      {VERB_STAYS, LACK_STEP}};

#define NEAR_RIM 5.2 /* m: the ball so near calls for help, as in duty_watch.c */
#define AT_HAND 2.0  /* m: from no further off anybody closes out (ours) */

/* ---- screens ---- */

/* The two of a screen, of a post gone round, or of a hand-off; BODY_NONE: anybody. */
static bool is_pair(body user, body screener, body a, body b)
{
    return (user == BODY_NONE || user == a) && (screener == BODY_NONE || screener == b);
}

static bool task_pairs(const struct task *task, body user, body screener)
{
    switch (task->kind) {
    case TASK_SCREEN:
    case TASK_EXCHANGE:
        return is_pair(user, screener, task->other, task->who);
    case TASK_USE:
        return is_pair(user, screener, task->who, task->other) ||
               (task->other2 < BODY_COUNT && is_pair(user, screener, task->who, task->other2));
    default:
        return false;
    }
}

static bool comes_by_ball(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool rebounds = task->verb == VERB_REBOUNDS && task->who == who;
        bool gets = task_gives_ball_to(task, who) || rebounds;
        if (gets && !world->job[i].complete) {
            return true;
        }
    }
    return ball_is_for(world, who);
}

/* `on_ball`: one whose user has the ball when he comes off it. */
static bool is_screened(const struct world *world, body user, body screener, bool on_ball)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        body by = task->kind == TASK_USE ? task->who : task->other;
        if (task_pairs(task, user, screener) && (!on_ball || comes_by_ball(world, by))) {
            return true;
        }
    }
    for (int b = 0; b <= BODY_COACH; b++) { /* one that stands from an earlier step */
        const struct screen *screen = &world->screen[b];
        if (screen->live && is_pair(user, screener, screen->user, (body)b) &&
            (!on_ball || comes_by_ball(world, screen->user))) {
            return true;
        }
    }
    return false;
}

/* Of a screen of his man's, in one part or the other; a name beside his man's own is the other
 * one's. */
static enum lack lacks_screen(const struct world *world, const struct word *word, enum lack lack)
{
    bool on_ball = lack == LACK_PICK;
    body other = word->whom == word->man ? (body)BODY_NONE : word->whom;
    bool uses = lack != LACK_SCREEN && is_screened(world, word->man, BODY_NONE, on_ball);
    bool sets = lack != LACK_USER && is_screened(world, BODY_NONE, word->man, on_ball);
    if (!uses && !sets) {
        return lack;
    }
    bool part = (uses && is_screened(world, word->man, other, on_ball)) ||
                (sets && is_screened(world, other, word->man, on_ball));
    return part ? LACK_NONE : LACK_PART;
}

static bool has_pair(const struct world *world, const struct word *word)
{
    return is_screened(world, word->man, word->other, false) ||
           is_screened(world, word->other, word->man, false);
}

/* ---- the ball, and who runs ---- */

/* He has it, and no sentence to come takes it from him. */
static bool keeps_ball(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        if (task_is_throw(task) && task->who == who && !world->job[i].complete) {
            return false;
        }
    }
    return ball_is_held(world, who);
}

/* Whoever goes to set a screen is not run with: he is met there. */
static bool moves(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        bool runs = task_class(job->task->kind)->movement && job->task->kind != TASK_SCREEN;
        if (job->task->who == who && runs && !job->complete) {
            return true;
        }
    }
    return is_screened(world, who, BODY_NONE, false);
}

/* ---- what calls for help ---- */

/* He is near the rim, or on his way to where that is. */
static bool comes_near(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        const struct task *task = job->task;
        bool goes = task->who == who && task_class(task->kind)->movement && !job->complete;
        if (goes && (task->verb == VERB_DRIVES || vec2_length(task->planned) < NEAR_RIM)) {
            return true;
        }
    }
    return vec2_length(world->agent[who].m.at) < NEAR_RIM;
}

/* The ball comes near the rim in the hands of anybody but `own`; of him. */
static bool drives(const struct world *world, body own, bool his)
{
    for (int b = 0; b < BODY_COACH; b++) {
        if (world->agent[b].here && (b == own) == his && comes_by_ball(world, (body)b) &&
            comes_near(world, (body)b)) {
            return true;
        }
    }
    return false;
}

/* Anything but passes among those who stand outside. */
static bool threatens(const struct world *world, body own)
{
    bool any = drives(world, own, false);
    for (size_t i = 0; i < world->jobs && !any; i++) {
        const struct task *task = world->job[i].task;
        any = body_is_attacker(task->who) && task->who != own && task_class(task->kind)->movement;
    }
    return any;
}

/* ---- whom the step is about ---- */

static bool names(const struct task *task, body who)
{
    bool stands = task->kind == TASK_HOLD && task->stay;
    return (task->who == who && !stands) || task->other == who || task->other2 == who;
}

/* A sentence names him, before the reads or in any of them: one may tell what is done about him,
 * and the other what else. */
static bool has_part(const struct world *world, body who)
{
    const struct step *step = world->step;
    for (int b = -1; b < (int)step->branches.count; b++) {
        for (size_t i = 0; i < step_task_count(step, b); i++) {
            if (names(step_task(step, b, i), who)) {
                return true;
            }
        }
    }
    for (size_t i = 0; i < world->jobs; i++) { /* what goes on from the step before */
        if (names(world->job[i].task, who)) {
            return true;
        }
    }
    return ball_is_for(world, who) || is_screened(world, who, BODY_NONE, false) ||
           is_screened(world, BODY_NONE, who, false);
}

/* He has it, nobody is to pass it to him, and his defender is with him. */
static bool is_closed_out(const struct world *world, body self, body whom)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (task_gives_ball_to(world->job[i].task, whom)) {
            return false;
        }
    }
    return ball_is_held(world, whom) && world->guards[self] == whom &&
           vec2_near(world->agent[whom].m.at, world->agent[self].m.at, AT_HAND);
}

static bool is_shot(const struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (world->job[i].task->kind == TASK_SHOOT) {
            return true;
        }
    }
    return false;
}

/* ---- what is asked ---- */

/* What calls for it: in a sentence the coach does. */
static bool of_reads(enum lack lack)
{
    return lack == LACK_DRIVE || lack == LACK_THREAT || lack == LACK_STEP;
}

static enum lack row_of(const struct word *word)
{
    bool trap = word->verb == VERB_TRAPS && word->whom == BODY_NONE; /* whoever has the ball */
    bool low = word->verb == VERB_DROPS && word->has_place;
    for (size_t i = 0; i < sizeof rows / sizeof *rows && !trap && !low; i++) {
        if (rows[i].verb == word->verb) {
            bool sent = rows[i].lack == LACK_DRIVE && word->has_place;
            enum lack lack = sent ? LACK_THREAT : rows[i].lack;
            return word->is_read || !of_reads(lack) ? lack : LACK_NONE;
        }
    }
    return LACK_NONE;
}

/* Where it is about a player: he goes somewhere, he gets the ball, he is without it. Who dribbles
 * is trailed at a screen only; there, and there only, the ball is overplayed: he jumps to its side.
 */
static bool is_given(const struct world *world, const struct word *word, enum lack *lack, body whom)
{
    bool has = *lack != LACK_BALL && keeps_ball(world, whom);
    bool at_screen = has && is_screened(world, whom, BODY_NONE, true);
    switch (*lack) {
    case LACK_BALL:
        if (word->is_read && word->verb == VERB_CLOSES_OUT &&
            is_closed_out(world, word->self, whom)) {
            *lack = LACK_CATCH;
            return false;
        }
        return comes_by_ball(world, whom);
    case LACK_NO_BALL:
        if (has && !(at_screen && word->verb == VERB_OVERPLAYS)) {
            return false;
        }
        *lack = LACK_STEP;
        return !word->is_read || has_part(world, whom);
    case LACK_STEP:
        return drives(world, whom, false) || has_part(world, whom);
    default:
        break;
    }
    if (has && !at_screen && word->verb == VERB_TRAILS) {
        *lack = LACK_NO_BALL;
        return false;
    }
    return moves(world, whom);
}

enum lack lacks(const struct world *world, const struct word *word)
{
    enum lack lack = row_of(word);
    body whom = word->whom != BODY_NONE ? word->whom : word->man;
    switch (lack) {
    case LACK_USER:
    case LACK_SCREEN:
    case LACK_PICK:
        return lacks_screen(world, word, lack);
    case LACK_PAIR:
        return has_pair(world, word) ? LACK_NONE : lack;
    case LACK_MOVE:
    case LACK_BALL:
    case LACK_NO_BALL:
    case LACK_STEP: /* of an area: it is about whoever comes there */
        return whom == BODY_NONE || is_given(world, word, &lack, whom) ? LACK_NONE : lack;
    case LACK_DRIVE:
        return drives(world, word->man, false)  ? LACK_NONE
               : drives(world, word->man, true) ? LACK_OWN
                                                : lack;
    case LACK_THREAT:
        return threatens(world, word->man) ? LACK_NONE : lack;
    case LACK_SHOT:
        return is_shot(world) ? LACK_NONE : lack;
    default:
        return LACK_NONE;
    }
}

enum lack lacks_still(enum strategy strategy)
{
    switch (strategy) {
    case STRATEGY_HELP:
        return LACK_DRIVE;
    case STRATEGY_BUMP:
    case STRATEGY_TAG:
        return LACK_MOVE;
    case STRATEGY_CLOSE_OUT:
    case STRATEGY_DOUBLE:
    case STRATEGY_TRAP:
    case STRATEGY_STUNT:
        return LACK_BALL;
    default:
        return LACK_NONE;
    }
}

body lacks_instead(const struct world *world, enum lack lack)
{
    bool screener = lack == LACK_SCREEN;
    if (lack != LACK_USER && !screener && lack != LACK_PICK) {
        return BODY_NONE;
    }
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool use = task->kind == TASK_USE;
        if ((use || task->kind == TASK_SCREEN) &&
            (lack != LACK_PICK || comes_by_ball(world, use ? task->who : task->other))) {
            return guard_of(world, screener == use ? task->other : task->who);
        }
    }
    return BODY_NONE;
}
