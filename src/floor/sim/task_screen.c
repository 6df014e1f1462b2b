/* SPDX-License-Identifier: MIT */
/* task_screen: to where the screened man's defender is (screen_place.c); still before the user
 * comes; held until the user has cleared. */
#include "floor/sim/guard.h"

#include <math.h>

#include "base/real.h"

#define SPEED .75 /* of the top speed */
#define NEAR .25  /* m from the spot, or in touch with the defender and this near: */
#define TOUCH .22
#define TOUCH_NEAR .6
#define FROM_PLACE 1.83 /* m (6 ft) from the place that was written: then it is said (ours) */
#define UP_LEAST 1.5    /* m toward half court: a down screen is none (ours) */
#define STILL .15       /* m/s; at more he slides on after being set */
#define BACK_WITHIN .45 /* rad: the back is turned at most so far from the exit */
#define NEARBY 1.2      /* m from the spot */
#define WAITS_AT .1    /* m from the spot: there he waits for the fake, and does not tread (ours) */
#define ROUGHLY 1.8    /* m */
#define LONGEST 3.0    /* s of looking for the defender so near the spot */
#define HELD_UP .8     /* s of standing so near it without getting there */
#define STOOD .3       /* s of both standing in touch, wherever it was meant to be (ours) */
#define FAKE_LIMIT 4.0 /* s that a user's set-up is waited for */
#define SLIP_AT .9     /* m from the spot */
#define SLIP_WAITS 1.0 /* s that a slip waits there for him to jump out (ours) */
#define AFTER_CLEAR .1 /* s */
#define FREE_GAP .25   /* m between screener and defender: the job is done */
#define HOLD_MOST .8   /* s after the user has cleared */
#define UNUSED_HOLD .5 /* s that a screen nobody uses is shown before its screener goes on */
#define ROUND .70      /* m from the defender who is gone round */
#define LOST 1.1       /* m of gap: the defender is gone, it has to be set anew */
#define LOST_MOST 2    /* times */

bool screen_is_slipped(struct world *world, body who)
{
    const struct agent *agent = &world->agent[who];
    const struct job *next =
        agent->head + 1 < agent->queued ? &world->job[agent->queue[agent->head + 1]] : NULL;
    bool fixed;
    return next && next->task->slip && queue_waits_met(world, next, &fixed);
}

static bool has_next(const struct world *world, body who)
{
    return world->agent[who].head + 1 < world->agent[who].queued;
}

bool screen_is_wanted(const struct world *world, int screen, body screener, body user)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool next = task->screen_task >= 0 && task->screen_task != screen; /* he sets one more */
        bool off = (task->other == screener && !next) || task->other2 == screener;
        if (task->kind == TASK_USE && task->who == user && off &&
            world->job[i].phase == PHASE_WAITING) {
            return true;
        }
    }
    return false;
}

static bool screen_ready(struct world *world, struct job *job)
{
    (void)world, (void)job;
    return true;
}

/* Whoever comes to the ball first runs at another. */
static void take_gait(struct world *world, const struct task *task)
{
    struct agent *agent = &world->agent[task->who];
    agent->gait = motion_gait(agent->level, task->effort, ball_is_held(world, task->who));
    agent->gait.top = SPEED * agent->gait.sprint;
}

/* Nothing has begun there of what is waited for once he is near. */
static void not_there(const struct world *world, struct screen *screen)
{
    screen->still = screen->due = world->t;
    screen->near_at = -1;
}

static void screen_start(struct world *world, struct job *job)
{
    const struct task *task = job->task;
    struct agent *agent = &world->agent[task->who];
    body defender = task->on != BODY_NONE ? task->on : guard_of(world, task->other);
    int side;
    const struct task *use = screen_use(world, world->step, task->who, task->other, &side);
    world->screen[task->who] =
        (struct screen){.live = true,
                        .task = job->index,
                        .user = task->other,
                        .defender = defender,
                        .use = use,
                        .side = side,
                        .came_from = agent->m.at,
                        .wanted = screen_is_wanted(world, job->index, task->who, task->other)};
    agent->going = false;
    agent->screening = true;
    agent->sought = defender < BODY_COUNT ? &world->agent[defender] : NULL;
    not_there(world, &world->screen[task->who]);
    take_gait(world, task);
    job->until = -1;
    screen_plan(world, job, &world->screen[task->who]);
}

/* Chest to the defender, but no further round than keeps the back to where the user is to go. */
static void turn_back(struct agent *agent, const struct screen *screen)
{
    struct vec2 back = vec2_scale(agent->face, -1), exit = vec2_sub(screen->exit, agent->m.at);
    double angle = vec2_angle(back, exit), over = angle - BACK_WITHIN;
    if (over <= 0 || vec2_length(exit) < .3 || over > .8) {
        return;
    }
    double turn = vec2_cross(back, exit) > 0 ? 1 : -1;
    struct vec2 left = vec2_scale(vec2_left(agent->face), turn);
    agent->face = vec2_of(agent->face.x * real_cos(over) + left.x * real_sin(over),
                          agent->face.y * real_cos(over) + left.y * real_sin(over));
}

static void face_him(struct world *world, const struct task *task, const struct screen *screen)
{
    struct agent *agent = &world->agent[task->who];
    struct vec2 v, at = screen_defender(world, screen, &v), to = vec2_sub(at, agent->m.at);
    if (task->faces) {
        struct vec2 position[BODY_COUNT];
        world_position(world, position);
        to = vec2_sub(goal_point(&task->face, world->court, task->who, agent->m.at, position),
                      agent->m.at);
        to = task->faces_back ? vec2_scale(to, -1) : to;
    }
    if (vec2_length(to) > 1e-6) {
        agent->face = vec2_unit(to);
    }
    if (!task->faces) {
        turn_back(agent, screen);
    }
}

/* The place that was written is near enough, or it is said where the screen is. */
static void compare_place(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    if (task->goal_written && !task->goal.measured) {
        double off = vec2_distance(world->agent[task->who].m.at, move_goal(world, task));
        if (off > FROM_PLACE) {
            trouble_screen_place(world, job, off);
        }
    }
}

/* A down screen goes toward the baseline. */
static void compare_kind(struct world *world, const struct job *job)
{
    double up = world->agent[job->task->who].m.at.y - world_record(world, job->index)->from.y;
    if (job->task->screen == SCREEN_DOWN && up > UP_LEAST) {
        trouble_up(world, job, up);
    }
}

static void set(struct world *world, struct job *job, struct screen *screen)
{
    struct agent *agent = &world->agent[job->task->who];
    struct task_record *record = world_record(world, job->index);
    struct vec2 v;
    screen->set = true;
    screen->set_at = world->t;
    screen->on = screen->left ? screen->reckoned : screen_defender(world, screen, &v);
    agent->anchored = true;
    agent->screening = false;
    agent->m.v = vec2_of(0, 0);
    face_him(world, job->task, screen);
    world_mark(world, job->index, MOMENT_SET);
    record->to = agent->m.at;
    record->on = screen->on;
    record->defender = screen->defender;
    record->on_way = screen->ahead;
    record->exit = screen->exit;
    record->facing = real_atan2(agent->face.y, agent->face.x);
    compare_place(world, job);
    compare_kind(world, job);
    if (!screen->wanted && !has_next(world, job->task->who)) {
        job->complete = true; /* carried into the next step */
    }
    world->quiet = 0;
}

static bool in_place(const struct world *world, const struct job *job, const struct screen *screen)
{
    const struct agent *agent = &world->agent[job->task->who];
    struct vec2 v, d = screen_defender(world, screen, &v);
    double far = vec2_distance(agent->m.at, screen->spot);
    double gap = vec2_distance(agent->m.at, d) - 2 * MOTION_BODY;
    return (far < NEAR || (!screen->second && gap < TOUCH && far < TOUCH_NEAR)) &&
           vec2_length(agent->m.v) < STILL;
}

static bool is_held_up(const struct world *world, body screener, const struct screen *screen)
{
    struct vec2 v, d = screen_defender(world, screen, &v);
    bool comes = vec2_length(v) > SCREEN_STANDS / 2; /* then he is waited for */
    double gap = vec2_distance(world->agent[screener].m.at, d) - 2 * MOTION_BODY;
    bool stands = gap < SCREEN_MET && vec2_length(v) < STILL; /* beside him, and comes no further */
    return (!comes && world->t > screen->still + (stands ? STOOD : HELD_UP)) ||
           (screen->near_at >= 0 && world->t > screen->near_at + LONGEST);
}

/* To a spot on the far side of the defender he goes behind him, never between him and the user. */
static struct vec2 past_defender(const struct world *world, const struct screen *screen,
                                 struct vec2 at)
{
    struct vec2 v, d = screen_defender(world, screen, &v), spot = screen->spot;
    struct vec2 way = vec2_unit(vec2_sub(spot, at)), to = vec2_sub(d, at);
    double ahead = vec2_dot(to, way), off = vec2_cross(way, to);
    bool on_ball = screen_on_ball(world, screen->user);
    if (!on_ball || screen->second || ahead < 0 || ahead > vec2_distance(at, spot) ||
        fabs(off) > ROUND - .04) {
        return spot;
    }
    struct vec2 user = vec2_sub(world->agent[screen->user].m.at, d);
    double aside = vec2_cross(way, user);
    double side = aside == 0 ? world_tie(world).hand : aside > 0 ? -1 : 1;
    return vec2_along(d, vec2_left(way), side * ROUND);
}

/* A ball was thrown to him that he does not get where he is to screen: he goes for it first, and
 * then on to his screen. */
static bool goes_for_ball(const struct world *world, body who, const struct screen *screen)
{
    const struct ball *ball = &world->ball;
    return world->agent[who].coming && ball_is_under_way(world) && ball->target == who &&
           vec2_distance(ball->end, screen->spot) > catch_reach(world);
}

/* He is to slip, and is near enough: at once, or when who hedges or traps has jumped out. */
static bool slips_now(struct world *world, const struct job *job, const struct screen *screen)
{
    body who = job->task->who;
    double far = vec2_distance(world->agent[who].m.at, screen->spot);
    if (far >= SLIP_AT || !screen_is_slipped(world, who) ||
        screen_setup_pending(world, screen->user)) {
        return false;
    }
    bool waited = screen->near_at >= 0 && world->t > screen->near_at + SLIP_WAITS;
    return waited || !guard_jumps_early(world, who) || guard_is_out(world, who);
}

/* On the way; true when he slips before there is any contact. */
static bool approach(struct world *world, struct job *job, struct screen *screen)
{
    struct agent *agent = &world->agent[job->task->who];
    if (world_beat(world, SIM_REPLANS)) {
        screen_plan(world, job, screen);
    }
    if (goes_for_ball(world, job->task->who, screen)) {
        not_there(world, screen);
        return false;
    }
    take_gait(world, job->task);
    double far = vec2_distance(agent->m.at, screen->spot);
    bool early = screen_setup_pending(world, screen->user);
    if (early || far > TOUCH_NEAR) {
        screen->due = world->t; /* not yet there, or not yet wanted */
    }
    agent->planted = far < TOUCH_NEAR;
    if (slips_now(world, job, screen)) {
        return true;
    }
    struct vec2 at = world_soon(world, agent).at;
    struct vec2 to = past_defender(world, screen, at), way = vec2_unit(vec2_sub(to, at));
    double rest = vec2_distance(at, to) + vec2_distance(to, screen->spot);
    double speed = real_min(3.5 * rest, real_sqrt(1.6 * agent->gait.brake * rest));
    bool waits = early && rest < WAITS_AT;
    agent->command = waits ? vec2_of(0, 0) : vec2_scale(way, real_min(speed, agent->gait.top));
    if (far > NEAR) {
        agent->command = steer_round(world, job->task->who, agent->command, to, BODY_NONE);
    }
    if (far > NEARBY || vec2_length(agent->m.v) > STILL) {
        screen->still = world->t;
    }
    if (early || far > ROUGHLY) {
        screen->near_at = -1;
    } else if (screen->near_at < 0) {
        screen->near_at = world->t;
    }
    if (screen->near_at >= 0) {
        world->quiet = 0; /* it will be set before long, one way or the other */
    }
    /* bodies in between, or a defender who will not stand: he stops where he is */
    if (!is_held_up(world, job->task->who, screen) &&
        (!in_place(world, job, screen) || !screen->met)) {
        return false;
    }
    job->until = job->until < 0 ? world->t : job->until;
    if (!early || world->t > job->until + FAKE_LIMIT) {
        set(world, job, screen);
    }
    return false;
}

static bool is_freed(const struct world *world, const struct job *job, const struct screen *screen)
{
    double since = world->t - screen->clear_at;
    struct vec2 v, d = screen_defender(world, screen, &v);
    double gap = vec2_distance(d, world->agent[job->task->who].m.at) - 2 * MOTION_BODY;
    return screen->cleared && since >= AFTER_CLEAR && (gap > FREE_GAP || since >= HOLD_MOST);
}

static void let_go(struct world *world, struct job *job, struct screen *screen)
{
    screen->live = false;
    world->agent[job->task->who].anchored = false;
    world->agent[job->task->who].screening = false;
    job->complete = true;
}

/* The defender has gone elsewhere before anybody used it. */
static bool is_lost(const struct world *world, const struct job *job, const struct screen *screen)
{
    struct vec2 v, d = screen_defender(world, screen, &v);
    bool literal = job->task->goal_written && job->task->goal.measured;
    double gap = vec2_distance(d, world->agent[job->task->who].m.at) - 2 * MOTION_BODY;
    return !literal && !screen->second && !screen->ahead && !screen->left && gap > LOST &&
           screen->unset < LOST_MOST;
}

static bool screen_tick(struct world *world, struct job *job)
{
    struct screen *screen = &world->screen[job->task->who];
    struct agent *agent = &world->agent[job->task->who];
    if (screen->set ? screen_is_slipped(world, job->task->who) : approach(world, job, screen)) {
        screen->slipped = true;
        screen->slipped_at = world->t;
        let_go(world, job, screen);
        return true;
    }
    if (!screen->set) {
        return false;
    }
    agent->command = vec2_of(0, 0);
    if (!screen->wanted) {
        bool next = has_next(world, job->task->who);
        if (next && world->t > screen->set_at + UNUSED_HOLD) {
            let_go(world, job, screen);
            return true;
        }
        return !next;
    }
    if (is_lost(world, job, screen)) {
        screen->set = screen->goes_to_him = false;
        screen->unset++;
        agent->anchored = false;
        agent->screening = true;
        job->until = -1;
        return false;
    }
    if (screen->cleared) {
        world_mark(world, job->index, MOMENT_USED);
    }
    if (is_freed(world, job, screen)) {
        let_go(world, job, screen);
        return true;
    }
    return false;
}

/* Before it is set: will `approach` do something? */
static bool approach_due(struct world *world, const struct job *job, const struct screen *screen)
{
    if (goes_for_ball(world, job->task->who, screen)) {
        return false;
    }
    if (slips_now(world, job, screen)) {
        return true;
    }
    bool early = screen_setup_pending(world, screen->user);
    bool there =
        is_held_up(world, job->task->who, screen) || (screen->met && in_place(world, job, screen));
    return there && (!early || job->until < 0 || world->t > job->until + FAKE_LIMIT);
}

static bool screen_due(struct world *world, const struct job *job)
{
    const struct screen *screen = &world->screen[job->task->who];
    if (!screen->set) {
        return approach_due(world, job, screen);
    }
    if (screen_is_slipped(world, job->task->who)) {
        return true;
    }
    if (!screen->wanted) {
        return has_next(world, job->task->who) && world->t > screen->set_at + UNUSED_HOLD;
    }
    return is_lost(world, job, screen) || is_freed(world, job, screen);
}

static int screen_waits_for(struct world *world, const struct job *job)
{
    const struct screen *screen = &world->screen[job->task->who];
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool use = screen->set && task->kind == TASK_USE && task->other == job->task->who;
        bool fake = !screen->set && task->kind == TASK_MOVE && task->shape == SHAPE_SETUP;
        if ((use || fake) && task->who == job->task->other && !world->job[i].complete) {
            return (int)i;
        }
    }
    return SIM_NO_TASK;
}

const struct task_class task_screen = {screen_ready, screen_start,     screen_tick,
                                       screen_due,   screen_waits_for, true};
