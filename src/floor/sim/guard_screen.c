/* SPDX-License-Identifier: MIT */
/* guard_screen: the defenders of the two men of a screen, and when they change men. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define SWITCH_NEAR 1.25 /* m from user to screener */
#define SWITCH_SPEED .5  /* m/s toward the exit */
#define AFTER .8         /* s after the use ended in which the strategy still holds */
#define COMES 3.0        /* m from its spot at which a screen is seen to come */

/* The screen that is set or coming for `user`, by its screener; BODY_NONE: none. */
static body screen_for(const struct world *world, body user)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        const struct screen *screen = &world->screen[b];
        bool over = screen->cleared && world->t > screen->clear_at + AFTER;
        if (screen->live && screen->user == user && !over) {
            return (body)b;
        }
    }
    return BODY_NONE;
}

/* A screen, or its use, is still ahead for `user` in this step: by its screener. */
static body screen_ahead(const struct world *world, body user)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        if (task->kind == TASK_SCREEN && task->other == user &&
            world->job[i].phase == PHASE_WAITING) {
            return task->who;
        }
        if (task->kind == TASK_USE && task->who == user && !world->job[i].complete) {
            return task->other;
        }
    }
    return BODY_NONE;
}

static bool is_in_use(const struct world *world, body user, double *since)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        if (job->task->kind == TASK_USE && job->task->who == user && job->phase != PHASE_WAITING) {
            double end = world->segment->record[i].time[MOMENT_ARRIVED];
            if (!job->complete || world->t < end + AFTER) {
                *since = job->begun;
                return true;
            }
        }
    }
    return false;
}

struct seen_screen guard_seen(struct world *world, body self, const struct view *view,
                              body screener)
{
    struct seen_screen seen = {.man = view->man.at,
                               .man_v = view->man.v,
                               .ball = view->ball,
                               .exit = view->ball,
                               .screener = view->man.at,
                               .self = world->agent[self].m.at,
                               .has_ball = view->has_ball};
    if (screener != BODY_NONE) {
        const struct screen *screen = &world->screen[screener];
        seen.screener = world->agent[screener].m.at;
        seen.exit = screen_exit(world, screener, duty_man(world, self));
        seen.passed = screen->cleared;
    }
    return seen;
}

/* His man uses a screen, or is about to. */
bool guard_at_screen(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = duty_man(world, self), screener = screen_for(world, man);
    if (man == BODY_NONE) {
        return false;
    }
    enum strategy strategy = world->duty[self].strategy;
    double since = 0;
    bool in_use = is_in_use(world, man, &since);
    if (screener == BODY_NONE && (in_use || strategy != STRATEGY_NONE)) {
        screener = screen_ahead(world, man);
    }
    bool handler = view->has_ball && in_use;
    if ((screener == BODY_NONE && !in_use) ||
        (view->has_ball && !in_use && screener == BODY_NONE)) {
        return false;
    }
    if (in_use && screener == BODY_NONE) {
        for (size_t i = 0; i < world->jobs; i++) {
            const struct task *task = world->job[i].task;
            screener = task->kind == TASK_USE && task->who == man ? task->other : screener;
        }
    }
    struct seen_screen seen = guard_seen(world, self, view, screener);
    seen.left = in_use && world->t >= since + guard_reaction(world, self, man);
    if (view->has_ball && seen.passed && !handler) {
        return false;
    }
    *aim = view->has_ball ? defense_on_handler(guard_coverage(world, man, screener), &seen)
                          : defense_screened(strategy, &seen);
    return true;
}

/* His man is the screener. */
bool guard_at_own_screener(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = world->guards[self];
    if (man == BODY_NONE) {
        return false;
    }
    const struct screen *screen = &world->screen[man];
    if (!screen->live || screen->cleared ||
        vec2_distance(world->agent[man].m.at, screen->spot) > COMES) {
        return false;
    }
    struct mover user = see_body(world, screen->user, world->level->reaction);
    struct seen_screen seen = {.man = user.at,
                               .man_v = user.v,
                               .ball = view->ball,
                               .exit = screen->exit,
                               .screener = view->man.at,
                               .self = world->agent[self].m.at};
    body other = screen->defender;
    seen.has_ball = ball_is_held(world, screen->user);
    struct coverage does = guard_coverage(world, screen->user, man);
    enum strategy strategy = other < BODY_COUNT ? world->duty[other].strategy : STRATEGY_NONE;
    enum strategy own = world->duty[self].strategy;
    strategy = own == STRATEGY_SWITCH || own == STRATEGY_HEDGE ? own : strategy;
    *aim = seen.has_ball ? defense_on_screener(does, &seen) : defense_screener(strategy, &seen);
    aim->v = view->man.v;
    return true;
}

/* A screener on his way looks for whoever guards the user now; one named in words stays meant. */
static void screens_follow(struct world *world)
{
    for (int s = 0; s <= BODY_COACH; s++) {
        struct screen *screen = &world->screen[s];
        bool named = screen->task != SIM_NO_TASK && world->job[screen->task].task->on != BODY_NONE;
        bool area = screen->defender != BODY_NONE && guard_has_area(world, screen->defender);
        if (!screen->live || screen->set || named || area) {
            continue;
        }
        body now = guard_of(world, screen->user);
        screen->defender = now;
        screen->shadow = now != BODY_NONE && world->agent[now].shadow;
        world->agent[s].sought = now != BODY_NONE ? &world->agent[now] : NULL;
    }
}

void guard_swap(struct world *world, body a, body b)
{
    body man = world->guards[a];
    world->guards[a] = world->guards[b];
    world->guards[b] = man;
    world->guarded[world->guards[a]] = a;
    world->guarded[world->guards[b]] = b;
    world->duty[a].strategy = STRATEGY_NONE;
    world->duty[b].strategy = STRATEGY_NONE;
    screens_follow(world);
}

void guard_take(struct world *world, body self, body man)
{
    body left = world->guards[self], before = world->guarded[man];
    if (left < BODY_COUNT && world->guarded[left] == self) {
        world->guarded[left] = BODY_NONE;
    }
    if (before < BODY_COUNT && before != self) {
        world->guards[before] = BODY_NONE;
    }
    world->guards[self] = man;
    world->guarded[man] = self;
    screens_follow(world);
}

/* The two change men when the user comes by the screener, seen two reactions later. */
void guard_watch_switches(struct world *world)
{
    for (int s = 0; s <= BODY_COACH; s++) {
        const struct screen *screen = &world->screen[s];
        if (!screen->live || !screen->left || screen->defender == BODY_NONE) {
            continue;
        }
        body own = world->guarded[s], his = world->guarded[screen->user];
        bool asked = own != BODY_NONE && his != BODY_NONE &&
                     (world->duty[his].strategy == STRATEGY_SWITCH ||
                      world->duty[own].strategy == STRATEGY_SWITCH);
        if (!asked || world->t < screen->left_at + 2 * world->level->reaction) {
            continue;
        }
        struct mover user = see_body(world, screen->user, world->level->reaction);
        struct vec2 exit = vec2_unit(vec2_sub(screen->exit, user.at));
        bool near = vec2_distance(user.at, world->agent[s].m.at) < SWITCH_NEAR;
        if ((near && vec2_dot(user.v, exit) > SWITCH_SPEED) || screen->cleared) {
            guard_swap(world, his, own);
        }
    }
}
