/* SPDX-License-Identifier: MIT */
/* guard_screen: the defenders of the two men of a screen, and when they change men. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define SWITCH_NEAR 1.25 /* m from user to screener */
#define SWITCH_SPEED .5  /* m/s toward the exit */
#define AFTER .8         /* s after the use ended in which the strategy still holds */
#define AT_RING 1.6      /* m: a place as near as that to the ring is the ring */
#define OUT_FIRST 1.0    /* s for which he who steps out at a slip goes by the other (ours) */
#define SLIP_SEEN 2      /* reactions until who has jumped out knows of a slip */
#define ROLLS .8         /* m/s */
#define BY_HIM 1.2       /* m from a man who has set off: with him, */
#define FAR_OFF 2.4      /* and so far from him still in help (ours) */
#define MEETS (2 * MOTION_BODY + .06) /* m from the screener: in touch with him */
#define COMES 3.0                     /* m from its spot at which a screen is seen to come */

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

/* His use of a screen that goes on, or is just over; NULL: none. */
static const struct job *in_use(const struct world *world, body user)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        if (job->task->kind == TASK_USE && job->task->who == user && job->phase != PHASE_WAITING) {
            double end = world->segment->record[i].time[MOMENT_ARRIVED];
            if (!job->complete || world->t < end + AFTER) {
                return job;
            }
        }
    }
    return NULL;
}

/* Which way the user comes off, as defenders see it: to where he is to go; when that is the ring,
 * first toward where the screener came from. */
struct vec2 guard_exit(struct world *world, body screener, body user)
{
    const struct screen *screen = &world->screen[screener];
    struct vec2 exit = screen_exit(world, screener, user);
    bool known = screen->live && screen->user == user;
    return known && vec2_length(exit) < AT_RING ? screen->came_from : exit;
}

struct seen_screen guard_seen(struct world *world, body self, const struct view *view,
                              body screener)
{
    struct seen_screen seen = {.man = view->man.at,
                               .man_v = view->man.v,
                               .ball = view->ball,
                               .exit = view->ball,
                               .screener = view->man.at,
                               .from = view->man.at,
                               .self = world->agent[self].m.at,
                               .has_ball = view->has_ball};
    if (screener != BODY_NONE) {
        const struct screen *screen = &world->screen[screener];
        seen.screener = world->agent[screener].m.at;
        bool under = world->duty[self].strategy == STRATEGY_UNDER; /* meets him at the end */
        seen.exit = under ? screen_exit(world, screener, duty_man(world, self))
                          : guard_exit(world, screener, duty_man(world, self));
        seen.refused = screen->refused;
        seen.passed = screen->cleared && !screen->refused;
    }
    return seen;
}

/* Who helps too far off his man's way to be screened beside it comes out, to be met there. */
static bool comes_out(const struct world *world, body screener, struct vec2 *rule)
{
    if (screener == BODY_NONE || !world->screen[screener].live || !world->screen[screener].ahead) {
        return false;
    }
    struct vec2 spot = world->screen[screener].spot, off = vec2_sub(*rule, spot);
    *rule = vec2_along(spot, vec2_unit(off), real_min(vec2_length(off), MEETS));
    return true;
}

struct aim guard_screened(const struct world *world, enum strategy strategy, body screener,
                          const struct seen_screen *seen)
{
    double helps = defense_helps(seen->man, seen->ball);
    if (strategy != STRATEGY_NONE || helps <= 0 || seen->passed) {
        return defense_screened(strategy, seen);
    }
    /* until he is by the screen his man is met from the rim's side, not chased */
    struct aim aim = seen->left ? defense_roller(seen) : defense_screened(strategy, seen);
    struct vec2 rule = guard_rule(world, seen->man, seen->ball, false);
    bool out = comes_out(world, screener, &rule);
    double far = vec2_distance(seen->self, seen->man);
    double share = seen->left ? helps * real_smooth(far, BY_HIM, FAR_OFF) : out ? 1 : helps;
    return (struct aim){vec2_mix(aim.at, rule, share), vec2_scale(aim.v, 1 - share)};
}

/* His man uses a screen, or is about to. */
bool guard_at_screen(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = duty_man(world, self), screener = screen_for(world, man);
    if (man == BODY_NONE) {
        return false;
    }
    enum strategy strategy = world->duty[self].strategy;
    const struct job *use = in_use(world, man);
    if (screener == BODY_NONE && use) {
        screener = use->task->other;
    } else if (screener == BODY_NONE && strategy != STRATEGY_NONE) {
        screener = screen_ahead(world, man);
    }
    bool came_without = use && !use->with_ball;
    if (screener == BODY_NONE || (came_without && ball_is_held(world, man))) {
        return false; /* nothing to answer, or he has caught it since */
    }
    struct seen_screen seen = guard_seen(world, self, view, screener);
    seen.from = use ? world->segment->record[use->index].from : view->man.at;
    seen.left = use && world->t >= use->begun + world->agent[self].level->reaction;
    seen.has_ball = view->has_ball && !came_without;
    if (seen.has_ball && seen.passed && !use) {
        return false;
    }
    *aim = seen.has_ball ? defense_on_handler(guard_coverage(world, man, screener), &seen)
                         : guard_screened(world, strategy, screener, &seen);
    return true;
}

/* What he does about the screen that his own man sets off the ball. */
static enum strategy off_ball(const struct world *world, body self, const struct screen *screen)
{
    enum strategy own = world->duty[self].strategy;
    bool his = own == STRATEGY_SWITCH || own == STRATEGY_HEDGE;
    bool known = screen->defender < BODY_COUNT;
    return his || !known ? own : world->duty[screen->defender].strategy;
}

bool guard_is_fooled(const struct world *world, body screener, enum strategy big)
{
    const struct screen *screen = &world->screen[screener];
    bool jumps = big == STRATEGY_SWITCH || big == STRATEGY_HEDGE || big == STRATEGY_TRAP;
    return jumps && !screen->live && screen->slipped &&
           world->t < screen->slipped_at + SLIP_SEEN * world->level->reaction;
}

bool guard_jumps_early(struct world *world, body screener)
{
    const struct screen *screen = &world->screen[screener];
    enum strategy big = guard_coverage(world, screen->user, screener).big;
    return (big == STRATEGY_HEDGE || big == STRATEGY_TRAP) && screen->live && !screen->set &&
           ball_is_held(world, screen->user) && screen_is_slipped(world, screener);
}

bool guard_is_out(const struct world *world, body screener)
{
    body big = world->guarded[screener];
    struct vec2 ball = world->agent[world->screen[screener].user].m.at;
    return big >= BODY_COUNT || vec2_distance(world->agent[big].m.at, ball) <
                                    vec2_distance(world->agent[screener].m.at, ball);
}

/* His man is the screener. */
bool guard_at_own_screener(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = world->guards[self];
    if (man == BODY_NONE) {
        return false;
    }
    const struct screen *screen = &world->screen[man];
    bool on_ball = ball_is_held(world, screen->user);
    struct coverage does = guard_coverage(world, screen->user, man);
    enum strategy strategy = off_ball(world, self, screen);
    bool fooled = guard_is_fooled(world, man, on_ball ? does.big : strategy);
    bool at_it = screen->live && !screen->cleared &&
                 vec2_distance(world->agent[man].m.at, screen->spot) <= COMES;
    if (!at_it && !fooled) {
        return false;
    }
    struct mover user = see_body(world, screen->user, world->agent[self].level->reaction);
    const struct job *use = in_use(world, screen->user);
    struct seen_screen seen = {.man = user.at,
                               .man_v = user.v,
                               .ball = view->ball,
                               .exit = guard_exit(world, man, screen->user),
                               .screener = fooled ? screen->spot : view->man.at,
                               .from = use ? world->segment->record[use->index].from : user.at,
                               .self = world->agent[self].m.at,
                               .left = guard_jumps_early(world, man),
                               .has_ball = on_ball};
    *aim = on_ball ? defense_on_screener(does, &seen) : defense_screener(strategy, &seen);
    aim->v = fooled ? vec2_of(0, 0) : view->man.v;
    return true;
}

/* Somebody else has been told to take him. */
static bool is_tagged(const struct world *world, body self, body man)
{
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        const struct duty *duty = &world->duty[b];
        if (b != self && duty->strategy == STRATEGY_TAG && duty->whom == man) {
            return true;
        }
    }
    return false;
}

/* His man has left his screen for the ring: rolls, slips, seals. */
bool guard_at_roller(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = world->guards[self];
    if (man == BODY_NONE) {
        return false;
    }
    const struct job *job = queue_head(world, man);
    bool leaves = job && job->phase == PHASE_ACTIVE && job->task->kind == TASK_MOVE &&
                  job->task->screen_task >= 0;
    struct vec2 rim = vec2_unit(vec2_scale(view->man.at, -1));
    double speed = vec2_length(view->man.v);
    bool elsewhere = speed > ROLLS && vec2_dot(view->man.v, rim) < .4 * speed;
    if (!leaves || view->has_ball || elsewhere || is_tagged(world, self, man)) {
        return false;
    }
    struct seen_screen seen = guard_seen(world, self, view, BODY_NONE);
    *aim = defense_roller(&seen);
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

/* Have the two who guard screener and user been told to change men? */
static bool is_switched(const struct world *world, body own, body his)
{
    return own != BODY_NONE && his != BODY_NONE &&
           (world->duty[his].strategy == STRATEGY_SWITCH ||
            world->duty[own].strategy == STRATEGY_SWITCH);
}

/* A screen that was slipped: who has stepped out at the user stays with him when he sees it, and
 * the user's man is left with the slip. */
static bool slip_is_switched(const struct world *world, body screener)
{
    const struct screen *screen = &world->screen[screener];
    return !screen->live && screen->slipped &&
           world->t >= screen->slipped_at + world->level->reaction;
}

/* The two change men when the user comes by the screener, seen two reactions later. */
void guard_watch_switches(struct world *world)
{
    for (int s = 0; s <= BODY_COACH; s++) {
        const struct screen *screen = &world->screen[s];
        bool slipped = slip_is_switched(world, (body)s);
        if (!slipped && (!screen->live || !screen->left || screen->defender == BODY_NONE)) {
            continue;
        }
        body own = world->guarded[s], his = world->guarded[screen->user];
        if (!is_switched(world, own, his)) {
            continue;
        }
        if (slipped) {
            guard_swap(world, his, own);
            world->agent[own].let_through = world->t + OUT_FIRST;
            if (!ball_is_held(world, screen->user)) {
                duty_by_rule(world, own, STRATEGY_DENY);
            }
            continue;
        }
        if (world->t < screen->left_at + 2 * world->level->reaction) {
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
