/* SPDX-License-Identifier: MIT */
/* names: players and places as told to a player. */
#include "language/tell/teller.h"

#include <math.h>
#include <string.h>

#include "base/real.h"

#define BACKCOURT " of the backcourt"
#define NEAR (4 * FEET) /* a point this near a spot is called by its name (ours) */
#define JUST (7 * FEET) /* this near it is told "just left of" it (ours) */

struct teller teller_to_all(struct arena *arena, const struct play *play, const struct step *step,
                            int branch, bool plain)
{
    return (struct teller){.arena = arena,
                           .play = play,
                           .step = step,
                           .branch = branch,
                           .you = BODY_NONE,
                           .plain = plain};
}

void tell_body(struct strbuf *out, body who)
{
    bool marked = body_is_attacker(who) && who != BODY_COACH;
    if (marked) {
        strbuf_char(out, TELL_BOLD);
    }
    body_print(out, who);
    if (marked) {
        strbuf_char(out, TELL_PLAIN);
    }
}

void say_body(const struct teller *t, struct strbuf *out, body b)
{
    if (b == t->you && b != BODY_NONE) {
        strbuf_text(out, "you");
        return;
    }
    if (t->plain) {
        body_print(out, b);
    } else {
        tell_body(out, b);
    }
}

void say_possessive(const struct teller *t, struct strbuf *out, body b)
{
    if (b == t->you && b != BODY_NONE) {
        strbuf_text(out, "your");
        return;
    }
    say_body(t, out, b);
    strbuf_text(out, "'s");
}

void say_guard(const struct teller *t, struct strbuf *out, body b, const struct task *task)
{
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (b != BODY_NONE && guards_then(t, x, task) == b) {
            body_print(out, x);
            return;
        }
    }
    if (t->you == BODY_NONE) {
        strbuf_text(out, "the defender");
    } else { /* in a zone it is nobody for good: told to a player, it is who is there then */
        strbuf_text(out, "whoever guards ");
        say_body(t, out, b);
    }
}

static void say_half_court(struct strbuf *out, enum side side)
{
    strbuf_text(out, "half court");
    if (side == SIDE_LEFT || side == SIDE_RIGHT) {
        strbuf_print(out, " on the %s side", side == SIDE_LEFT ? "left" : "right");
    }
}

static void say_spot(struct strbuf *out, enum spot spot, enum side side)
{
    const char *word = side == SIDE_LEFT ? "left " : side == SIDE_RIGHT ? "right " : "";
    bool one = spot == SPOT_RIM || spot == SPOT_LANE || spot == SPOT_FRONT_OF_RIM;
    if (spot == SPOT_HALF_COURT) {
        say_half_court(out, side);
        return;
    }
    strbuf_print(out, "the %s%s", one ? "" : word, spot_row(spot)->word);
}

static bool telling_spot(enum spot spot)
{
    return spot != SPOT_FREE_THROW_LINE && spot != SPOT_BASELINE && spot != SPOT_SIDELINE &&
           spot != SPOT_LANE && spot != SPOT_LANE_SPACE && spot != SPOT_CENTRE &&
           spot != SPOT_LOW_POST && spot != SPOT_HIGH_POST;
}

/* The spot nearest to p of those that are nearer than `least`. */
static enum spot nearest_spot(const struct play *play, struct vec2 p, double least, enum side *side)
{
    enum spot best = SPOT_COUNT;
    *side = SIDE_NONE;
    for (int s = 0; s < SPOT_COUNT; s++) {
        const struct spot_row *row = spot_row((enum spot)s);
        bool sided = row->sided && !row->optional;
        for (int i = SIDE_LEFT; i <= SIDE_RIGHT && telling_spot((enum spot)s); i++) {
            enum side one = sided ? (enum side)i : SIDE_NONE;
            double far = vec2_distance(p, court_spot(play->court, (enum spot)s, one));
            if (far < least) {
                least = far;
                best = (enum spot)s;
                *side = one;
            }
        }
    }
    return best;
}

enum spot near_spot(const struct play *play, struct vec2 p, enum side *side)
{
    return nearest_spot(play, p, NEAR, side);
}

/* A point of the other half that has a name there, or one at half court near a sideline. */
static bool say_far_point(const struct teller *t, struct strbuf *out, struct vec2 p)
{
    const struct court *court = t->play->court;
    if (fabs(p.y - court->half_court) < NEAR / 2 && fabs(p.x) > NEAR) {
        say_half_court(out, p.x < 0 ? SIDE_LEFT : SIDE_RIGHT);
        return true;
    }
    enum side side;
    enum spot spot = near_spot(t->play, court_mirror_back(court, p), &side);
    if (p.y < court->half_court || spot == SPOT_COUNT || side == SIDE_NONE) {
        return false;
    }
    say_spot(out, spot, side);
    strbuf_text(out, BACKCOURT);
    return true;
}

/* A point that has no name, by the nearest spot that has one: "just left of the rim", "above the
 * left wing". */
static void say_by_spot(const struct teller *t, struct strbuf *out, struct vec2 p)
{
    const struct court *court = t->play->court;
    bool back = p.y > court->half_court;
    p = back ? court_mirror_back(court, p) : p;
    enum side side;
    enum spot spot = nearest_spot(t->play, p, HUGE_VAL, &side);
    struct vec2 off = vec2_sub(p, court_spot(court, spot, side));
    bool across = fabs(off.x) >= fabs(off.y) && spot != SPOT_HALF_COURT;
    bool low = off.y < 0;
    strbuf_text(out, vec2_length(off) < JUST ? "just " : "");
    strbuf_text(out, across ? (off.x < 0 ? "left of " : "right of ") : low ? "below " : "above ");
    say_spot(out, spot, side);
    strbuf_text(out, back && spot != SPOT_HALF_COURT ? BACKCOURT : "");
}

static void say_point(const struct teller *t, struct strbuf *out, struct vec2 p)
{
    enum side side;
    enum spot spot = near_spot(t->play, p, &side);
    if (!court_inside(t->play->court, p, 0)) {
        strbuf_text(out, "out of bounds");
    } else if (spot != SPOT_COUNT) {
        say_spot(out, spot, side);
    } else if (!say_far_point(t, out, p)) {
        say_by_spot(t, out, p);
    }
}

/* Is it told as lying by a spot, or out of bounds, and not as one? */
static bool is_by_spot(const struct teller *t, const struct goal *goal)
{
    bool named = goal->cone || goal->line_end || goal->who != BODY_NONE || goal->spot != SPOT_COUNT;
    if (goal->kind != GOAL_POINT || named) {
        return false;
    }
    struct strbuf told;
    strbuf_init(&told, t->arena);
    say_point(t, &told, goal->at);
    struct str words = strbuf_str(&told);
    return !str_starts(words, "the ") && !str_starts(words, "half ");
}

static void say_fraction(struct strbuf *out, double fraction)
{
    static const struct {
        double value;
        const char *words;
    } fractions[] = {
        {.25, "a quarter"}, {1 / 3.0, "a third"}, {2 / 3.0, "two thirds"}, {.75, "three quarters"}};
    for (size_t i = 0; i < sizeof fractions / sizeof *fractions; i++) {
        if (fabs(fractions[i].value - fraction) < .01) {
            strbuf_print(out, "%s of the way ", fractions[i].words);
            return;
        }
    }
    strbuf_number(out, fraction * 100, 0);
    strbuf_text(out, " percent of the way ");
}

/* The same spot of both halves? */
static bool is_twice(const struct goal *a, const struct goal *b)
{
    return a->kind == GOAL_POINT && b->kind == GOAL_POINT && a->spot != SPOT_COUNT &&
           a->spot == b->spot && a->side == b->side && a->backcourt != b->backcourt;
}

static void say_mix(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    bool half = fabs(goal->fraction - .5) < .01;
    if (half && is_twice(goal->a, goal->b)) { /* here and in the backcourt: the line between */
        say_half_court(out, goal->a->side);
        return;
    }
    if (half) {
        strbuf_text(out, "halfway between ");
    } else {
        say_fraction(out, goal->fraction);
        strbuf_text(out, "from ");
    }
    say_goal(t, out, goal->a);
    strbuf_text(out, half ? " and " : " to ");
    say_goal(t, out, goal->b);
}

/* On the page the basket is at the top: "above" would send a player to the wrong side. */
static void say_offset(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    static const char *const words[DIRECTION_COUNT] = {[ABOVE] = " toward half court from ",
                                                       [BELOW] = " toward the baseline from ",
                                                       [INSIDE] = " inside ",
                                                       [OUTSIDE] = " outside ",
                                                       [LEFT_OF] = " left of ",
                                                       [RIGHT_OF] = " right of "};
    strbuf_text(out, "a spot ");
    play_length(out, t->play, goal->length);
    strbuf_text(out, words[goal->direction]);
    if (goal->a->kind == GOAL_BODY) {
        say_body(t, out, goal->a->who);
    } else {
        say_goal(t, out, goal->a);
    }
}

static void say_fixed(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    if (goal->cone) {
        strbuf_print(out, "cone %c", 'A' + goal->cone - 1);
    } else if (goal->line_end) {
        strbuf_text(out, "the end of the line");
    } else if (goal->who != BODY_NONE) {
        say_possessive(t, out, goal->who);
        strbuf_text(out, " spot");
    } else if (goal->spot != SPOT_COUNT) {
        say_spot(out, goal->spot, goal->side);
        strbuf_text(out, goal->backcourt ? BACKCOURT : "");
    } else {
        say_point(t, out, goal->at);
    }
}

void say_goal(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    switch (goal->kind) {
    case GOAL_NONE:
        break;
    case GOAL_POINT:
        say_fixed(t, out, goal);
        break;
    case GOAL_BODY:
        strbuf_text(out, "where ");
        say_body(t, out, goal->who);
        strbuf_text(out, goal->who == t->you ? " are" : " is");
        break;
    case GOAL_BESIDE:
    case GOAL_BEHIND:
        strbuf_text(out, goal->kind == GOAL_BESIDE ? "beside " : "behind ");
        say_body(t, out, goal->who);
        break;
    case GOAL_LINE:
    case GOAL_LANE:
    case GOAL_FRONT_OF_RIM:
        say_spot(out, goal->spot, goal->side);
        break;
    case GOAL_MIX:
        say_mix(t, out, goal);
        break;
    case GOAL_OFFSET:
        say_offset(t, out, goal);
        break;
    case GOAL_OUTSIDE:
        strbuf_text(out, "out of bounds, level with ");
        say_goal(t, out, goal->a);
        break;
    }
}

static bool takes_no_word(const struct goal *goal)
{
    return goal->kind == GOAL_BESIDE || goal->kind == GOAL_BEHIND || goal->kind == GOAL_OUTSIDE;
}

/* halfway to 2, of one who goes there from where he is. */
static void say_part(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    strbuf_text(out, " ");
    if (fabs(goal->fraction - .5) < .01) {
        strbuf_text(out, "halfway ");
    } else {
        say_fraction(out, goal->fraction);
    }
    strbuf_text(out, "to ");
    if (goal->b->kind == GOAL_BODY) {
        say_body(t, out, goal->b->who);
    } else {
        say_goal(t, out, goal->b);
    }
}

void say_to(const struct teller *t, struct strbuf *out, const struct goal *goal, body mover)
{
    if (goal->kind == GOAL_MIX && goal->a->kind == GOAL_BODY && goal->a->who == mover) {
        say_part(t, out, goal);
    } else if (goal->kind != GOAL_NONE) {
        strbuf_text(out, takes_no_word(goal) ? " " : " to ");
        say_goal(t, out, goal);
    }
}

void say_at(const struct teller *t, struct strbuf *out, const struct goal *goal)
{
    if (goal->kind == GOAL_NONE) {
        return;
    }
    bool posts = goal->kind == GOAL_POINT && (goal->spot == SPOT_BLOCK || goal->spot == SPOT_WING ||
                                              goal->spot == SPOT_LOW_POST);
    bool inside = goal->kind == GOAL_LANE || goal->spot == SPOT_CORNER || goal->spot == SPOT_SLOT ||
                  goal->spot == SPOT_SHORT_CORNER;
    bool bare = takes_no_word(goal) || goal->kind == GOAL_BODY || goal->kind == GOAL_MIX ||
                is_by_spot(t, goal);
    strbuf_text(out, bare ? " " : inside ? " in " : posts ? " on " : " at ");
    say_goal(t, out, goal);
}

void tell_goal(struct strbuf *out, const struct play *play, const struct goal *goal)
{
    struct teller t = {.play = play, .branch = -1, .you = BODY_NONE, .plain = true};
    say_goal(&t, out, goal);
}

void tell_at(struct strbuf *out, const struct play *play, struct vec2 at)
{
    if (!court_inside(play->court, at, 0)) {
        strbuf_text(out, "out of bounds");
        return;
    }
    struct strbuf told;
    strbuf_init(&told, out->arena);
    struct teller t = teller_to_all(out->arena, play, NULL, -1, true);
    struct goal goal = goal_at(at);
    goal.spot = near_spot(play, at, &goal.side);
    say_at(&t, &told, &goal);
    strbuf_add(out, (struct str){told.at + 1, told.size - 1}); /* it opens with a space */
}

struct str tell_stop(struct str text)
{
    char end = text.size > 0 ? text.at[text.size - 1] : ' ';
    return end == '.' || end == '!' || end == '?' ? STR("") : STR(".");
}

void say_upper(struct strbuf *out, struct str sentence)
{
    for (size_t i = 0; i < sentence.size; i++) {
        char c = sentence.at[i];
        strbuf_char(out, i == 0 && c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c);
    }
}

/* ---- who is where ---- */

/* Which way through step `s` leads to `step`; false: it is not on the way there. */
static bool way_to(const struct play *play, const struct step *step, size_t s, int *branch)
{
    size_t at = (size_t)(step - play->steps.at);
    while (at > s) {
        int before = play->steps.at[at].after_step;
        *branch = play->steps.at[at].after_branch;
        if (before < 0 || (size_t)before >= at) {
            return false;
        }
        at = (size_t)before;
    }
    return at == s;
}

/* What one sentence changes of who guards whom. */
static void guard_by(body guards[BODY_COUNT], const struct task *task)
{
    body old = guards[task->who];
    if (task->kind == TASK_GUARD && task->verb == VERB_GUARDS) {
        for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
            guards[x] = guards[x] == task->other ? (body)BODY_NONE : guards[x];
        }
        guards[task->who] = task->other;
    } else if (task->kind == TASK_GUARD && task->verb == VERB_SWITCHES && task->on != BODY_NONE) {
        guards[task->who] = guards[task->on];
        guards[task->on] = old;
    }
}

/* read x1 and x5 switch: by the time of its own sentences they have. */
static void suppose_switch(body guards[BODY_COUNT], const struct branch *branch)
{
    const struct condition *first = branch->conditions.count > 0 ? branch->conditions.at : NULL;
    if (first && first->kind == COND_BOTH && first->verb == VERB_SWITCHES &&
        first->who.kind == WHO_DEFENDER && first->other.kind == WHO_DEFENDER) {
        body one = body_defender(first->who.number), other = body_defender(first->other.number);
        body old = guards[one];
        guards[one] = guards[other];
        guards[other] = old;
    }
}

/* Who lost his man takes the one who was left, as a step begins. */
static void pick_up(const struct play *play, body guards[BODY_COUNT])
{
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        for (body man = 0; play->start[x].on_floor && guards[x] == BODY_NONE && man < BODY_COACH;
             man++) {
            bool open = play->start[man].on_floor;
            for (body y = BODY_FIRST_DEFENDER; y < BODY_COUNT; y++) {
                open = open && guards[y] != man;
            }
            guards[x] = open ? man : guards[x];
        }
    }
}

body guards_then(const struct teller *t, body defender, const struct task *task)
{
    body guards[BODY_COUNT];
    memcpy(guards, t->play->guards, sizeof guards);
    for (size_t s = 0; s < t->play->steps.count; s++) {
        const struct step *step = &t->play->steps.at[s];
        bool here = step == t->step;
        int branch = t->branch;
        if (!here && !way_to(t->play, t->step, s, &branch)) {
            continue;
        }
        for (size_t i = 0; i < step_task_count(step, branch); i++) {
            const struct task *one = step_task(step, branch, i);
            if (here && !task) {
                return guards[defender];
            }
            if (branch >= 0 && i == step->tasks.count) {
                suppose_switch(guards, &step->branches.at[branch]);
            }
            if (here && one == task) {
                return guards[defender];
            }
            guard_by(guards, one);
        }
        if (here) {
            break;
        }
        if (t->play->defense == DEFENSE_MAN) {
            pick_up(t->play, guards);
        }
    }
    return guards[defender];
}

/* Who has thrown in stands on the floor, a step inside the line. */
static struct vec2 stepped_in(const struct court *court, struct vec2 at)
{
    const double step = 0.6; /* metres (ours) */
    double wide = court->half_width - step, low = court->baseline + step;
    return (struct vec2){real_clamp(at.x, -wide, wide),
                         real_clamp(at.y, low, 2 * court->half_court - low)};
}

struct vec2 stands_at(const struct play *play, const struct step *step, body who)
{
    struct vec2 at = play->start[who].at;
    for (size_t s = 0; s < play->steps.count && &play->steps.at[s] != step; s++) {
        const struct step *before = &play->steps.at[s];
        int branch = -1;
        if (!way_to(play, step, s, &branch)) {
            continue;
        }
        for (size_t i = 0; i < step_task_count(before, branch); i++) {
            const struct task *task = step_task(before, branch, i);
            if (task->who == who) {
                at = task->kind == TASK_PASS ? stepped_in(play->court, task->planned)
                                             : task->planned;
            }
        }
    }
    return at;
}

/* Who is planned to have the ball after the first `count` tasks, if `holder` had it before. */
static body holder_after(const struct step *step, int branch, size_t count, body holder)
{
    for (size_t i = 0; i < count; i++) {
        const struct task *task = step_task(step, branch, i);
        if (task->kind == TASK_PASS || task->kind == TASK_EXCHANGE) {
            holder = task->other;
        } else if (task->kind == TASK_SHOOT) {
            holder = BODY_NONE;
        } else if (task->verb == VERB_REBOUNDS) {
            holder = task->who;
        }
    }
    return holder;
}

body holds_ball(const struct play *play, const struct step *step)
{
    body holder = play->ball;
    for (size_t s = 0; s < play->steps.count && &play->steps.at[s] != step; s++) {
        const struct step *before = &play->steps.at[s];
        int branch = -1;
        if (!way_to(play, step, s, &branch)) {
            continue;
        }
        holder = holder_after(before, branch, step_task_count(before, branch), holder);
    }
    return holder;
}

body holds_ball_then(const struct teller *t, size_t count)
{
    return holder_after(t->step, t->branch, count, holds_ball(t->play, t->step));
}

bool has_guard(const struct teller *t, body b)
{
    bool guarded = false;
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        guarded = guarded || (t->play->start[x].on_floor && guards_then(t, x, NULL) == b);
    }
    return guarded;
}

bool is_guarded(const struct teller *t, body b)
{
    bool zone = false;
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        zone = zone || (t->play->start[x].on_floor && t->play->guards[x] == BODY_NONE);
    }
    return zone || has_guard(t, b);
}
