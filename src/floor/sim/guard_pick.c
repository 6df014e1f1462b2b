/* SPDX-License-Identifier: MIT */
/* guard_pick: a screen on the ball as its two defenders play it, from when the handler goes until
 * both are back with their men; and who takes the screener meanwhile. Where each wants to be is the
 * defense's to say; this knows when. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define HEDGE_LEAST .5 /* s that a hedge lasts, */
#define HEDGE_MOST 1.2 /* and at most */
#define BACK_NEAR 1.3  /* m: the guard is with the handler again, */
#define BACK_FRONT .35 /* cosine to the rim: and before him */
#define RESTS 1.0      /* s after the handler has stopped that a low big stays with him */
#define STOPPED .6     /* m/s */
#define ROLLS 1.0      /* m/s toward the rim */
#define LOW 4.0        /* m from the ring: there the screener is a danger without moving */
#define TAG_OFF 1.1    /* m before him on his way to the rim */
#define TAG_RIM .9     /* m from the ring */
#define TAKEN 1.2      /* m: his own man has him again */

/* The handler's use of a screen that has just begun, or is going on. */
static struct job *use_of_holder(struct world *world)
{
    body holder = world->ball.state == HELD ? world->ball.holder : (body)BODY_NONE;
    struct job *job = holder < BODY_COACH ? queue_head(world, holder) : NULL;
    bool uses = job && job->task->kind == TASK_USE && job->phase == PHASE_ACTIVE;
    return uses ? job : NULL;
}

struct coverage guard_coverage(const struct world *world, body user, body screener)
{
    body guard = world->guarded[user], big = world->guarded[screener];
    return defense_coverage(guard < BODY_COUNT ? world->duty[guard].strategy : STRATEGY_NONE,
                            big < BODY_COUNT ? world->duty[big].strategy : STRATEGY_NONE);
}

static void begin_pick(struct world *world, const struct job *job)
{
    body user = job->task->who, screener = job->task->other;
    struct pick *pick = &world->pick;
    *pick = (struct pick){.live = true,
                          .task = job->index,
                          .user = user,
                          .screener = screener,
                          .guard = world->guarded[user],
                          .big = world->guarded[screener],
                          .does = guard_coverage(world, user, screener),
                          .exit = move_goal(world, job->task),
                          .from = world_record(world, job->index)->from,
                          .tagger = BODY_NONE,
                          .since = job->begun};
    struct seen_screen stood = {.screener = world->agent[screener].m.at, .from = pick->from};
    pick->side = defense_screen_side(&stood);
    pick->live =
        pick->guard < BODY_COUNT && pick->big < BODY_COUNT && defense_big_jumps(pick->does);
}

/* The guard is before the handler again. */
static bool is_back(const struct world *world, const struct pick *pick)
{
    struct vec2 user = world->agent[pick->user].m.at, rim = vec2_unit(vec2_scale(user, -1));
    struct vec2 off = vec2_sub(world->agent[pick->guard].m.at, user);
    return vec2_length(off) < BACK_NEAR && vec2_dot(off, rim) > BACK_FRONT * vec2_length(off);
}

static bool is_over(const struct world *world, struct pick *pick)
{
    double since = world->t - pick->since - world->level->reaction;
    if (!ball_is_held(world, pick->user)) {
        return true;
    }
    const struct screen *screen = &world->screen[pick->screener];
    bool slipped = screen->user == pick->user && screen->slipped;
    if (slipped && pick->does.big != STRATEGY_DROP && pick->does.big != STRATEGY_ICE) {
        return !guard_is_fooled(world, pick->screener, pick->does.big);
    }
    if (pick->does.big == STRATEGY_HEDGE) {
        return since > HEDGE_MOST || (since > HEDGE_LEAST && is_back(world, pick));
    }
    if (pick->does.big == STRATEGY_TRAP) {
        return false; /* stays until the ball is gone */
    }
    bool stands = vec2_length(world->agent[pick->user].m.v) < STOPPED;
    pick->rests = stands && is_back(world, pick) ? pick->rests + world->since : 0;
    return pick->rests > RESTS;
}

void guard_watch_picks(struct world *world)
{
    struct pick *pick = &world->pick;
    struct job *job = use_of_holder(world);
    if (job && (job->index != pick->task || pick->user != job->task->who)) {
        begin_pick(world, job);
    }
    if (pick->live && is_over(world, pick)) {
        pick->live = false;
        pick->ended = world->t;
    }
}

static struct seen_screen seen_pick(struct world *world, body self)
{
    const struct pick *pick = &world->pick;
    double reaction = world->agent[self].level->reaction;
    struct mover user = see_body(world, pick->user, guard_reaction(world, self, pick->user));
    const struct screen *screen = &world->screen[pick->screener];
    return (struct seen_screen){.man = user.at,
                                .man_v = user.v,
                                .ball = user.at,
                                .exit = pick->exit,
                                .screener = see_body(world, pick->screener, reaction).at,
                                .from = pick->from,
                                .side = pick->side,
                                .self = world->agent[self].m.at,
                                .left = true,
                                .passed = screen->user == pick->user && screen->cleared &&
                                          !screen->refused,
                                .has_ball = true};
}

bool guard_at_pick(struct world *world, body self, const struct view *view, struct aim *aim)
{
    (void)view;
    const struct pick *pick = &world->pick;
    if (!pick->live || (self != pick->guard && self != pick->big) ||
        world->t < pick->since + world->agent[self].level->reaction) {
        return false;
    }
    struct seen_screen seen = seen_pick(world, self);
    *aim = self == pick->guard ? defense_on_handler(pick->does, &seen)
                               : defense_on_screener(pick->does, &seen);
    return true;
}

/* ---- the screener, whose man has jumped out ---- */

static bool may_tag(const struct world *world, body b)
{
    const struct pick *pick = &world->pick;
    body man = world->guards[b];
    return world->agent[b].here && b != pick->guard && b != pick->big && man < BODY_COUNT &&
           world->duty[b].strategy == STRATEGY_NONE && !world->duty[b].holds && world->helper != b;
}

/* The lowest of the other three. */
static body lowest(const struct world *world)
{
    body best = BODY_NONE;
    double least = 1e9;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        double far = vec2_length(world->agent[b].m.at);
        if (may_tag(world, (body)b) && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* A sentence of the step has a defender on him: then nobody comes by rule. */
static bool is_told_of(const struct world *world, body man)
{
    for (size_t i = world->base; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        if (task->kind == TASK_GUARD && task->other == man && task->who != world->pick.big) {
            return true;
        }
    }
    return false;
}

void guard_watch_roller(struct world *world)
{
    struct pick *pick = &world->pick;
    bool leaves = pick->does.big == STRATEGY_HEDGE || pick->does.big == STRATEGY_TRAP;
    if (pick->tagger == BODY_NONE) {
        if (!pick->live || !leaves || is_told_of(world, pick->screener)) {
            return;
        }
        struct mover roller = see_body(world, pick->screener, world->level->reaction);
        double far = vec2_length(roller.at);
        bool rolls = vec2_dot(roller.v, vec2_unit(vec2_scale(roller.at, -1))) > ROLLS;
        if ((rolls && far < 2 * LOW) || far < LOW) {
            pick->tagger = lowest(world);
        }
        return;
    }
    struct vec2 at = world->agent[pick->screener].m.at;
    bool taken = !pick->live && vec2_distance(world->agent[pick->big].m.at, at) < TAKEN;
    if (taken || world->ball.state == GONE) {
        pick->tagger = BODY_NONE;
        pick->does.big = STRATEGY_NONE; /* and it is over */
    }
}

bool guard_tags_roller(struct world *world, body self, const struct view *view, struct aim *aim)
{
    (void)view;
    const struct pick *pick = &world->pick;
    if (pick->tagger != self) {
        return false;
    }
    struct mover roller = see_body(world, pick->screener, world->agent[self].level->reaction);
    double far = vec2_length(roller.at), left = real_max(real_min(TAG_RIM, far), far - TAG_OFF);
    *aim = (struct aim){vec2_scale(vec2_unit(roller.at), left), vec2_scale(roller.v, .6)};
    return true;
}
