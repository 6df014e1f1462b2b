/* SPDX-License-Identifier: MIT */
/* task_screen: to where the screened man's defender is, not to where he was; still before the user
 * comes; held until the user has cleared. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define CONTACT (2 * MOTION_BODY + .06)
#define LEAD .5 /* s, at most, that the defender's way is thought on */
#define LEAD_SHARE .6
#define SPEED .75 /* of the top speed */
#define NEAR .25  /* m from the spot, or in touch with the defender and this near: */
#define TOUCH .22
#define TOUCH_NEAR .6
#define FROM_PLACE 1.83 /* m (6 ft) from the place that was written: then it is said (ours) */
#define UP_LEAST 1.5    /* m toward half court: a down screen is none (ours) */
#define STILL .15       /* m/s; at more he slides on after being set */
#define SIDEWAYS .95    /* rad off the way through, for a screen on the ball */
#define BACK_WITHIN .45 /* rad: the back is turned at most so far from the exit */
#define PATIENCE 1.5    /* s that the defender is awaited where he ought to come */
#define STAGGER 1.9     /* m between two screeners in a row */
#define ABREAST .62     /* shoulder to shoulder */
#define END_ROOM 1.0    /* m that are kept free round the place that the user goes to (ours) */
#define NEARBY 1.2      /* m from the spot */
#define WAITS_AT .1    /* m from the spot: there he waits for the fake, and does not tread (ours) */
#define ROUGHLY 1.8    /* m */
#define LONGEST 3.0    /* s of looking for the defender so near the spot */
#define HELD_UP .8     /* s of standing so near it without getting there */
#define STOOD .3       /* s of both standing in touch, wherever it was meant to be (ours) */
#define SETTLED 1.0    /* m from the spot: there, */
#define SMALL .28      /* m: a change of plan as small as that is not followed */
#define STANDS 1.0     /* m/s: a defender faster than that is running by */
#define MET .36        /* m of air between the two at most */
#define FAKE_LIMIT 4.0 /* s that a user's set-up is waited for */
#define SLIP_AT .9     /* m from the spot */
#define AFTER_CLEAR .1 /* s */
#define FREE_GAP .25   /* m between screener and defender: the job is done */
#define HOLD_MOST .8   /* s after the user has cleared */
#define UNUSED_HOLD .5 /* s that a screen nobody uses is shown before its screener goes on */
#define ROUND .70      /* m from the defender who is gone round */
#define HELPS .5       /* from there on the defender is met on his way to his man, */
#define ALL_HELP .75   /* who helps so much is screened where the user goes by him (ours) */
#define SHORT_OF 1.8   /* m from where the user goes, and stood, at least, */
#define OFF_WAY 1.2    /* m beside the user's way (ours) */
#define LOST 1.1       /* m of gap: the defender is gone, it has to be set anew */
#define LOST_MOST 2    /* times */

/* He slips out of it, and nothing but his screen keeps him from it; else he sets it and waits. */
static bool is_slipped(struct world *world, body who)
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

static struct vec2 defender_at(const struct world *world, const struct screen *screen,
                               struct vec2 *v)
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
    d = defender_at(world, screen, &v);
    *speed = vec2_length(v);
    double ahead = real_min(vec2_distance(d, at) / 4, LEAD) * LEAD_SHARE;
    struct vec2 soon = vec2_along(d, v, ahead);
    if (!guards || screen->shadow) {
        screen->met = true;
        return soon;
    }
    bool early = screen_setup_pending(world, task->other);
    bool late = world->t > screen->due + PATIENCE; /* he does not come: then to where he stands, */
    screen->goes_to_him |= late && vec2_length(v) < STANDS;
    double trust = early                 ? 1
                   : screen->goes_to_him ? 0
                                         : real_smooth(vec2_distance(d, rest), .25, .8);
    *speed *= 1 - trust;
    double gap = vec2_distance(at, d) - 2 * MOTION_BODY;
    screen->met = (trust < .5 && gap < MET && vec2_length(v) < STANDS) || late; /* or here */
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

static void replan(struct world *world, const struct job *job, struct screen *screen)
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
    replan(world, job, &world->screen[task->who]);
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
    struct vec2 v, at = defender_at(world, screen, &v), to = vec2_sub(at, agent->m.at);
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
    screen->on = screen->left ? screen->reckoned : defender_at(world, screen, &v);
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
    struct vec2 v, d = defender_at(world, screen, &v);
    double far = vec2_distance(agent->m.at, screen->spot);
    double gap = vec2_distance(agent->m.at, d) - 2 * MOTION_BODY;
    return (far < NEAR || (!screen->second && gap < TOUCH && far < TOUCH_NEAR)) &&
           vec2_length(agent->m.v) < STILL;
}

static bool is_held_up(const struct world *world, body screener, const struct screen *screen)
{
    struct vec2 v, d = defender_at(world, screen, &v);
    bool comes = vec2_length(v) > STANDS / 2; /* then he is waited for */
    double gap = vec2_distance(world->agent[screener].m.at, d) - 2 * MOTION_BODY;
    bool stands = gap < MET && vec2_length(v) < STILL; /* beside him, and comes no further */
    return (!comes && world->t > screen->still + (stands ? STOOD : HELD_UP)) ||
           (screen->near_at >= 0 && world->t > screen->near_at + LONGEST);
}

/* To a spot on the far side of the defender he goes behind him, never between him and the user. */
static struct vec2 past_defender(const struct world *world, const struct screen *screen,
                                 struct vec2 at)
{
    struct vec2 v, d = defender_at(world, screen, &v), spot = screen->spot;
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

/* On the way; true when he slips before there is any contact. */
static bool approach(struct world *world, struct job *job, struct screen *screen)
{
    struct agent *agent = &world->agent[job->task->who];
    if (world_beat(world, SIM_REPLANS)) {
        replan(world, job, screen);
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
    if (is_slipped(world, job->task->who) && far < SLIP_AT &&
        !screen_setup_pending(world, screen->user)) {
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
    struct vec2 v, d = defender_at(world, screen, &v);
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
    struct vec2 v, d = defender_at(world, screen, &v);
    bool literal = job->task->goal_written && job->task->goal.measured;
    double gap = vec2_distance(d, world->agent[job->task->who].m.at) - 2 * MOTION_BODY;
    return !literal && !screen->second && !screen->ahead && !screen->left && gap > LOST &&
           screen->unset < LOST_MOST;
}

static bool screen_tick(struct world *world, struct job *job)
{
    struct screen *screen = &world->screen[job->task->who];
    struct agent *agent = &world->agent[job->task->who];
    if (screen->set ? is_slipped(world, job->task->who) : approach(world, job, screen)) {
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
    bool early = screen_setup_pending(world, screen->user);
    if (is_slipped(world, job->task->who) && !early) {
        double far = vec2_distance(world->agent[job->task->who].m.at, screen->spot);
        if (far < SLIP_AT) {
            return true;
        }
    }
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
    if (is_slipped(world, job->task->who)) {
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
