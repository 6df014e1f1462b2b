/* SPDX-License-Identifier: MIT */
/* screen_place: where a screen is to be set: at the defender as he will be met, on his side toward
 * the exit; beside another screen; or in a helping defender's way. */
#include "floor/sim/world.h"

#include "base/real.h"

#define CONTACT (2 * MOTION_BODY + .06)
#define LEAD .5 /* s, at most, that the defender's way is thought on */
#define LEAD_SHARE .6
#define SIDEWAYS .95 /* rad off the way through, for a screen on the ball */
#define PATIENCE 1.5 /* s that the defender is awaited where he ought to come */
#define STAGGER 1.9  /* m between two screeners in a row */
#define ABREAST .62  /* shoulder to shoulder */
#define END_ROOM 1.0 /* m that are kept free round the place that the user goes to (ours) */
#define SETTLED 1.0  /* m from the spot: there, */
#define SMALL .28    /* m: a change of plan as small as that is not followed */
#define HELPS .5     /* from there on the defender is met on his way to his man, */
#define ALL_HELP .75 /* who helps so much is screened where the user goes by him (ours) */
#define SHORT_OF 1.8 /* m from where the user goes, and stood, at least, */
#define OFF_WAY 1.2  /* m beside the user's way (ours) */

struct vec2 screen_defender(const struct world *world, const struct screen *screen, struct vec2 *v)
{
    *v = vec2_of(0, 0);
    if (screen->shadow) { /* where one would stand */
        return screen->rest;
    }
    if (screen->defender != BODY_NONE && world->agent[screen->defender].here) {
        *v = world->agent[screen->defender].m.v;
        return world->agent[screen->defender].m.at;
    }
    const struct agent *user = &world->agent[screen->user];
    return defense_man(world->court, world->play->man, user->m.at, ball_place(world),
                       ball_is_held(world, screen->user));
}

/* Where the user will stand when the screener is there: his fake is out and back. */
static struct vec2 user_rest(struct world *world, body user)
{
    const struct agent *agent = &world->agent[user];
    const struct job *head = queue_head(world, user);
    bool faking = head && head->task->shape == SHAPE_SETUP && head->phase == PHASE_ACTIVE;
    return faking ? path_point(&agent->course.path, 1e9) : agent->m.at;
}

/* The defender as he will be met: where he is going to stand, while he is on the way there; and how
 * fast he then is. */
static struct vec2 meet(struct world *world, const struct task *task, struct screen *screen,
                        struct vec2 at, double *speed)
{
    bool guards = screen->defender != BODY_NONE && world->guarded[task->other] == screen->defender;
    struct vec2 rest = {0, 0}, v, d;
    if (guards) {
        rest = guard_expected(world, screen->defender, task->who, user_rest(world, task->other),
                              screen->exit);
        screen->rest = rest;
        screen->shadow = world->agent[screen->defender].shadow;
    }
    d = screen_defender(world, screen, &v);
    *speed = vec2_length(v);
    double ahead = real_min(vec2_distance(d, at) / 4, LEAD) * LEAD_SHARE;
    struct vec2 soon = vec2_along(d, v, ahead);
    if (!guards || screen->shadow) {
        screen->met = true;
        return soon;
    }
    bool early = screen_setup_pending(world, task->other);
    bool late = world->t > screen->due + PATIENCE; /* he does not come: then to where he stands, */
    screen->goes_to_him |= late && vec2_length(v) < SCREEN_STANDS;
    double trust = early                 ? 1
                   : screen->goes_to_him ? 0
                                         : real_smooth(vec2_distance(d, rest), .25, .8);
    *speed *= 1 - trust;
    double gap = vec2_distance(at, d) - 2 * MOTION_BODY;
    screen->met =
        (trust < .5 && gap < SCREEN_MET && vec2_length(v) < SCREEN_STANDS) || late; /* or here */
    return vec2_mix(soon, rest, trust);
}

/* From the defender to the spot beside him: toward the exit. A way that leads straight on through
 * the defender, as a dribbler's to the rim, is blocked from the side that other reads go to, else
 * from the one that the screener comes from. */
static struct vec2 beside_him(struct world *world, const struct task *task,
                              const struct screen *screen, struct vec2 d, struct vec2 at)
{
    struct vec2 way = vec2_unit(vec2_sub(screen->exit, d));
    if (vec2_length(way) < .5) {
        return vec2_unit(vec2_sub(at, d));
    }
    if (!screen_on_ball(world, task->other)) {
        return way;
    }
    struct vec2 user = world->agent[task->other].m.at;
    double straight = vec2_dot(way, vec2_unit(vec2_sub(d, user)));
    struct tie_side tie = world_tie(world);
    double side = screen->side;
    if (side == 0) {
        side = route_side(user, screen->exit, world_record(world, screen->task)->from, &tie);
    }
    double turn = SIDEWAYS * real_smooth(straight, .5, .9);
    struct vec2 left = vec2_scale(vec2_left(way), side);
    return vec2_of(way.x * real_cos(turn) + left.x * real_sin(turn),
                   way.y * real_cos(turn) + left.y * real_sin(turn));
}

/* Where his defender would stand, did he not come out to the screen. */
static struct vec2 help_place(struct world *world, const struct task *task, struct screen *screen)
{
    bool ahead = screen->ahead;
    screen->ahead = false;
    struct vec2 at = guard_expected(world, screen->defender, task->who,
                                    user_rest(world, task->other), screen->exit);
    screen->ahead = ahead;
    return at;
}

/* Off the ball, for somebody whose defender helps: from him toward the user's way, which he will
 * have to cross, and so far that who runs there runs by the screen; never under the ring. Who helps
 * further off comes out to it (guard_screen.c). */
static bool on_way(struct world *world, const struct task *task, struct screen *screen,
                   struct vec2 d, struct vec2 *spot)
{
    struct vec2 user = user_rest(world, task->other), to = vec2_sub(screen->exit, user);
    double far = vec2_length(to), helps = defense_helps(user, ball_place(world));
    body guard = world->guarded[task->other];
    bool told = guard == BODY_NONE || guard != screen->defender ||
                world->duty[guard].strategy != STRATEGY_NONE;
    if (screen_on_ball(world, task->other) || told || helps < HELPS || far < 2 * SHORT_OF) {
        return false;
    }
    struct vec2 help = help_place(world, task, screen);
    double along = vec2_dot(vec2_sub(help, user), vec2_unit(to));
    if (along < 0) {
        return false; /* behind him: he will follow, from where he is */
    }
    struct vec2 p = vec2_along(user, vec2_unit(to), real_clamp(along, SHORT_OF, far - SHORT_OF));
    double off = vec2_distance(help, p);
    if (off < CONTACT || (off < CONTACT + OFF_WAY && helps < ALL_HELP)) {
        return false; /* he stands on it */
    }
    if (off < CONTACT + OFF_WAY) { /* nearly: on the side where the user goes by */
        *spot = vec2_along(d, vec2_unit(vec2_sub(p, d)), CONTACT);
        return false; /* on him, as any screen */
    }
    *spot = vec2_along(p, vec2_unit(vec2_sub(help, p)), OFF_WAY);
    return true;
}

/* The screen written before this one for the same user: the two stand in a row. */
static const struct screen *screen_before(const struct world *world, const struct job *job)
{
    for (int i = job->index - 1; i >= 0; i--) {
        const struct task *task = world->job[i].task;
        const struct screen *screen = &world->screen[task->who];
        if (task->kind == TASK_SCREEN && task->other == job->task->other &&
            task->who != job->task->who && screen->live && screen->task == i) {
            return screen;
        }
    }
    return NULL;
}

/* Who goes straight away from his defender stands where the screen would be: then in touch with
 * both of them, and nobody is pushed off his place. */
static struct vec2 clear_of_user(struct world *world, const struct task *task, struct vec2 d,
                                 struct vec2 spot)
{
    struct vec2 user = user_rest(world, task->other), way = vec2_sub(user, d);
    double half = vec2_length(way) / 2;
    if (screen_on_ball(world, task->other) || vec2_distance(spot, user) >= CONTACT ||
        half >= CONTACT) {
        return spot;
    }
    struct tie_side tie = world_tie(world);
    double side = route_side(d, user, spot, &tie);
    return vec2_along(vec2_mix(d, user, .5), vec2_left(vec2_unit(way)),
                      side * real_sqrt(CONTACT * CONTACT - half * half));
}

/* Further on than the first of two, or shoulder to shoulder with him; where that would be in the
 * place that the user goes to, on his other side. */
static struct vec2 beside_first(struct world *world, const struct task *task,
                                const struct screen *screen, struct vec2 first)
{
    struct vec2 way = vec2_unit(vec2_sub(screen->exit, first));
    double room = vec2_distance(first, screen->exit) - END_ROOM;
    double far = real_min(task->screen == SCREEN_DOUBLE ? ABREAST : STAGGER, room);
    if (far >= ABREAST) {
        return vec2_along(first, way, far);
    }
    struct tie_side tie = world_tie(world);
    double side =
        -route_side(first, screen->exit, world->agent[task->other].m.at, &tie); /* not his */
    return vec2_along(first, vec2_left(way), side * ABREAST);
}

/* The user has run off on another sentence, without this screen. */
static bool is_gone(struct world *world, const struct screen *screen)
{
    const struct job *head = queue_head(world, screen->user);
    bool runs = head && head->phase == PHASE_ACTIVE && head->task->shape != SHAPE_SETUP;
    bool moves = runs && (head->task->kind == TASK_MOVE || head->task->kind == TASK_CARRY) &&
                 screen->task < head->index;
    return moves || screen->left; /* or by it, but too early */
}

void screen_plan(struct world *world, const struct job *job, struct screen *screen)
{
    const struct task *task = job->task;
    const struct screen *first = screen_before(world, job);
    if (screen->planned && is_gone(world, screen)) {
        screen->given_up = true; /* nobody to screen for any more: it is set where it was to be */
    }
    if (screen->given_up) {
        screen->met = true;
        return;
    }
    bool seen = screen->planned;
    screen->planned = true;
    screen->exit = screen_exit(world, task->who, screen->user);
    if (task->goal_written && task->goal.measured) {
        screen->spot = move_goal(world, task);
        screen->met = true;
        return;
    }
    screen->second = first != NULL;
    if (first) {
        screen->met = true;
        screen->spot = beside_first(world, task, screen, first->spot);
        return;
    }
    double speed;
    struct vec2 at = world->agent[task->who].m.at, d = meet(world, task, screen, at, &speed);
    screen->reckoned = d;
    double away = CONTACT + (speed > 1 ? real_min(.35 * (speed - 1), world->level->step) : 0);
    struct vec2 spot = vec2_along(d, beside_him(world, task, screen, d, at), away);
    spot = clear_of_user(world, task, d, spot);
    screen->ahead = on_way(world, task, screen, d, &spot);
    bool small =
        vec2_distance(at, screen->spot) < SETTLED && vec2_distance(spot, screen->spot) < SMALL;
    if (!seen || !small) { /* nobody steps about for every shuffle of the defender */
        screen->spot = spot;
    }
}
