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
    {VERB_FRONTS, LACK_NO_BALL},  {VERB_BOXES_OUT, LACK_SHOT}};

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

static bool moves(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        if (job->task->who == who && task_class(job->task->kind)->movement && !job->complete) {
            return true;
        }
    }
    return is_screened(world, who, BODY_NONE, false);
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

static enum lack row_of(const struct word *word)
{
    bool trap = word->verb == VERB_TRAPS && word->whom == BODY_NONE; /* whoever has the ball */
    bool low = word->verb == VERB_DROPS && word->has_place;
    for (size_t i = 0; i < sizeof rows / sizeof *rows && !trap && !low; i++) {
        if (rows[i].verb == word->verb) {
            return rows[i].lack;
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
        return comes_by_ball(world, whom);
    case LACK_NO_BALL:
        return !has || (at_screen && word->verb == VERB_OVERPLAYS);
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
    case LACK_NO_BALL: /* of an area: it is about whoever comes there */
        return whom == BODY_NONE || is_given(world, word, &lack, whom) ? LACK_NONE : lack;
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
