/* SPDX-License-Identifier: MIT */
/* guard: the defenders: each goes, from what he saw a reaction ago, to where his strategy or the
 * man rules want him. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define CLOSE_SEES .45 /* of the reaction, for one's own man within touch */
#define CLOSE_NEAR .8  /* m */
#define CLOSE_FAR 1.3
#define PULL 3.5         /* 1/s: speed by distance to the target (ours) */
#define SOFT 1.6         /* braking, as a share of sqrt(2 b L) squared */
#define TOP .85          /* of the sprint: what a defender's legs tend to */
#define STILL .10        /* m: near enough not to stir */
#define SWITCH_NEAR 1.25 /* m from user to screener */
#define SWITCH_SPEED .5  /* m/s toward the exit */
#define AFTER .8         /* s after the use ended in which the strategy still holds */
#define RETHINK 3        /* ticks between two thoughts */
#define BACKS 1.2        /* m before a runner: he backs up, he does not turn yet */
#define COMES 3.0        /* m from its spot at which a screen is seen to come */

static struct vec2 inside(const struct world *world, struct vec2 p)
{
    double side = world->court->half_width - .3;
    return vec2_of(real_clamp(p.x, -side, side), real_max(p.y, world->court->baseline + .3));
}

static double reaction_to(const struct world *world, body self, body who)
{
    double far = vec2_distance(world->agent[self].m.at, world->agent[who].m.at);
    return world->level->reaction *
           real_mix(CLOSE_SEES, 1, real_smooth(far, CLOSE_NEAR, CLOSE_FAR));
}

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

struct view { /* what one defender has to go by */
    struct mover man;
    struct vec2 ball;
    struct vec2 ball_v;
    bool has_ball;
};

static struct view look(const struct world *world, body self)
{
    body man = world->guards[self];
    double reaction = world->level->reaction;
    const struct glimpse *seen = see_ago(world, reaction);
    return (struct view){.man = see_body(world, man, reaction_to(world, self, man)),
                         .ball = vec2_along(seen->ball, seen->ball_v, reaction),
                         .ball_v = seen->ball_v,
                         .has_ball = seen->holder == man};
}

/* The man rules, and how fast the place they name is moving. */
static struct aim by_rule(const struct world *world, const struct view *view)
{
    const double soon = .08;
    enum man_style style = world->play->man;
    struct vec2 now = defense_man(world->court, style, view->man.at, view->ball, view->has_ball);
    struct vec2 man = vec2_along(view->man.at, view->man.v, soon);
    struct vec2 ball = vec2_along(view->ball, view->ball_v, soon);
    struct vec2 then = defense_man(world->court, style, man, ball, view->has_ball);
    return (struct aim){now, vec2_scale(vec2_sub(then, now), 1 / soon)};
}

static struct seen_screen seen_of(struct world *world, body self, const struct view *view,
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
        seen.exit = screen_exit(world, screener, world->guards[self]);
        seen.passed = screen->cleared;
    }
    return seen;
}

/* His man uses a screen, or is about to. */
static bool at_screen(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = world->guards[self], screener = screen_for(world, man);
    enum strategy strategy = world->strategy[self];
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
    struct seen_screen seen = seen_of(world, self, view, screener);
    seen.left = in_use && world->t >= since + world->level->reaction;
    if (strategy == STRATEGY_NONE || strategy == STRATEGY_SAG) {
        strategy = STRATEGY_TRAIL;
    }
    if (view->has_ball && seen.passed && !handler) {
        return false;
    }
    *aim = defense_screened(strategy, &seen);
    return true;
}

/* His man is the screener. */
static bool at_own_screener(struct world *world, body self, const struct view *view,
                            struct aim *aim)
{
    body man = world->guards[self];
    const struct screen *screen = &world->screen[man];
    if (!screen->live || screen->cleared ||
        vec2_distance(world->agent[man].m.at, screen->spot) > COMES) {
        return false;
    }
    struct seen_screen seen = {.man = view->man.at,
                               .man_v = view->man.v,
                               .ball = view->ball,
                               .exit = screen->exit,
                               .screener = view->man.at,
                               .self = world->agent[self].m.at};
    seen.has_ball = ball_is_held(world, screen->user);
    body other = screen->defender;
    *aim = defense_screener(other < BODY_COUNT ? world->strategy[other] : STRATEGY_NONE, &seen);
    aim->v = view->man.v;
    return true;
}

static struct aim wanted(struct world *world, body self, const struct view *view)
{
    struct aim aim;
    if (help_aim(world, self, &aim)) {
        return aim;
    }
    if (at_screen(world, self, view, &aim) || at_own_screener(world, self, view, &aim)) {
        return aim;
    }
    enum strategy strategy = world->strategy[self];
    if (strategy == STRATEGY_NONE || strategy == STRATEGY_UNDER || strategy == STRATEGY_OVER ||
        strategy == STRATEGY_SWITCH) {
        return by_rule(world, view);
    }
    struct seen_screen seen = seen_of(world, self, view, BODY_NONE);
    return defense_unscreened(strategy, world->court, world->play->man, &seen);
}

/* Where `self` will stand once his man stands at `man` and the screener is on the way: what a
 * screener can reckon with before he is there. */
struct vec2 guard_expected(struct world *world, body self, struct vec2 man, struct vec2 exit)
{
    struct seen_screen seen = {.man = man,
                               .ball = ball_place(world),
                               .exit = exit,
                               .screener = man,
                               .self = world->agent[self].m.at,
                               .has_ball = ball_is_held(world, world->guards[self])};
    enum strategy strategy = world->strategy[self];
    if (strategy == STRATEGY_NONE || strategy == STRATEGY_SAG) {
        strategy = STRATEGY_TRAIL;
    }
    return inside(world, defense_screened(strategy, &seen).at);
}

/* How fast he may go: slides near the target, runs far from it or beside a running man. */
static double speed_cap(const struct world *world, double far, double along)
{
    double slide = world->level->slide, sprint = world->level->sprint;
    if (far > 2 || along > .8 * slide) {
        return .95 * sprint;
    }
    return far < 1 ? slide : real_mix(slide, .7 * sprint, far - 1);
}

static void control(struct world *world, body self, const struct view *view, struct aim aim)
{
    struct agent *agent = &world->agent[self];
    struct vec2 way = vec2_sub(aim.at, agent->m.at), off = vec2_sub(agent->m.at, view->man.at);
    double far = vec2_length(way), speed = vec2_length(view->man.v), slide = world->level->slide;
    struct vec2 rim = vec2_unit(vec2_scale(view->man.at, -1));
    double cap = speed_cap(world, far, vec2_length(aim.v)), share = 1;
    double ahead = speed > .3 ? vec2_dot(off, view->man.v) / speed : 0;
    if (ahead > .6) { /* too far in front of a runner: he is waited for */
        share = real_clamp(1 - (ahead - .6) / .6, .25, 1);
    }
    bool in_front = vec2_length(off) < 1.5 && vec2_dot(vec2_unit(off), rim) > .35;
    if (in_front && vec2_dot(view->man.v, rim) < 1.3 * slide) {
        cap = real_min(cap, 1.15 * slide);
        share *= .75;
    } else if (in_front && vec2_length(off) < BACKS) {
        cap =
            real_min(cap, world->level->backpedal); /* nobody runs backwards as fast as forwards */
    }
    double go = real_min(PULL * far, real_sqrt(SOFT * world->level->brake * far));
    struct vec2 command = vec2_scale(vec2_unit(way), far > STILL ? go : 0);
    command = vec2_along(command, aim.v, share);
    double fast = vec2_length(command);
    if (fast > cap) {
        command = vec2_scale(command, cap / fast);
    }
    agent->gait = motion_gait(world->level, EFFORT_SPRINT, false);
    agent->gait.top = TOP * world->level->sprint;
    agent->gait.clip = cap;
    agent->command = steer_round(world, self, command, vec2_along(aim.at, aim.v, .3), BODY_NONE);
}

struct vec2 guard_start(struct world *world, body defender)
{
    body man = world->guards[defender];
    struct vec2 at = world->agent[man].m.at;
    return inside(world, defense_man(world->court, world->play->man, at, ball_place(world),
                                     ball_is_held(world, man)));
}

static void swap_men(struct world *world, body a, body b)
{
    body man = world->guards[a];
    world->guards[a] = world->guards[b];
    world->guards[b] = man;
    world->guarded[world->guards[a]] = a;
    world->guarded[world->guards[b]] = b;
    world->strategy[a] = STRATEGY_NONE;
    world->strategy[b] = STRATEGY_NONE;
}

/* The two change men when the user comes by the screener, seen two reactions later. */
static void watch_switches(struct world *world)
{
    for (int s = 0; s <= BODY_COACH; s++) {
        const struct screen *screen = &world->screen[s];
        if (!screen->live || !screen->left || screen->defender == BODY_NONE) {
            continue;
        }
        body own = world->guarded[s], his = world->guarded[screen->user];
        bool asked =
            own != BODY_NONE && his != BODY_NONE && world->strategy[his] == STRATEGY_SWITCH;
        if (!asked || world->t < screen->left_at + 2 * world->level->reaction) {
            continue;
        }
        struct mover user = see_body(world, screen->user, world->level->reaction);
        struct vec2 exit = vec2_unit(vec2_sub(screen->exit, user.at));
        bool near = vec2_distance(user.at, world->agent[s].m.at) < SWITCH_NEAR;
        if ((near && vec2_dot(user.v, exit) > SWITCH_SPEED) || screen->cleared) {
            swap_men(world, his, own);
        }
    }
}

void guard_tick(struct world *world)
{
    watch_switches(world);
    help_tick(world);
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        body man = world->guards[b];
        if (!agent->here) {
            continue;
        }
        agent->command = vec2_of(0, 0);
        if (man >= BODY_COUNT || !world->agent[man].here) {
            continue;
        }
        struct view view = look(world, (body)b);
        if (world->tick % RETHINK == 0) {
            agent->aim = wanted(world, (body)b, &view);
        } else { /* goes on in between */
            agent->aim.at = vec2_along(agent->aim.at, agent->aim.v, SIM_DT);
        }
        struct aim aim = agent->aim;
        aim.at = inside(world, aim.at);
        control(world, (body)b, &view, aim);
    }
}
