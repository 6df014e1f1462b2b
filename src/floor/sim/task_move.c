/* SPDX-License-Identifier: MIT */
/* task_move: running somewhere, with the ball or without: MOVE and CARRY, and what USE shares. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define THERE .14       /* m: he is there */
#define INSIDE .17      /* m from the lines that a way keeps: no body comes nearer than .15 */
#define COMES_IN .5     /* m from the line: a step onto the floor (ours) */
#define GATHER .20      /* s between catch and dribble (ours) */
#define FAKE_SPEED 2.5  /* m/s: a set-up's mean pace, for its start (ours) */
#define FAKE_LEAD .5    /* s */
#define REBOUND_OFF 1.2 /* m from the ring's middle */
#define BLOCKED .8      /* s without getting on: somebody stands where he wants to be */
#define GIVES_UP 1.1    /* s: then he leaves the way that he had in mind (ours) */
#define JOINS 1.0       /* m: no step is longer */
#define SHORT .05       /* m that motion_course_time stops short of a length */
#define BETWEEN .35     /* m: further nobody comes between two beats, from where he last looked */
#define CREEPS .1       /* m/s: slower than that nobody is said to go */
enum { PACES = 4 };   /* times a second that a movement which is told its time looks at the clock */
#define HURRY .1      /* s less than it takes, and nobody sees it (ours) */
#define NEARLY 2.2    /* m: then he has come as near as he can */
#define STANDS .5     /* m/s: who is slower stands, */
#define ON_IT .4      /* m from the place: on it, */
#define SHOULDERS .08 /* m of air: and the other beside him (all ours) */
#define BESIDE (2 * MOTION_BODY + SHOULDERS + ON_IT)

struct vec2 move_goal(struct world *world, const struct task *task)
{
    struct vec2 position[BODY_COUNT], from = world->agent[task->who].m.at;
    world_position(world, position);
    struct vec2 goal = goal_point(&task->goal, world->court, task->who, from, position);
    if (task->verb == VERB_REBOUNDS && move_at_rim(goal)) { /* in front of the ring, on his side */
        goal = vec2_along(goal, vec2_unit(vec2_sub(from, goal)), REBOUND_OFF);
    }
    if (task->goal.kind != GOAL_OUTSIDE && !world->agent[task->who].outside) {
        double side = world->court->half_width - .3;
        goal.x = real_clamp(goal.x, -side, side);
        goal.y = real_max(goal.y, world->court->baseline + .3);
    }
    return goal;
}

/* Seconds until he is there, at that gait, if nothing is in the way. */
static double time_left(const struct agent *agent, const struct gait *gait)
{
    double lead = motion_plant_lead(agent->end_speed, agent->course.turn);
    double there = agent->course.goal - real_max(THERE, lead) + SHORT;
    return motion_course_time(&agent->course, agent->m, gait, agent->end_speed, there, NULL);
}

/* Seconds that it takes at least: at top speed, but off the mark, round the corners and to a stop.
 */
static double least_time(const struct agent *agent)
{
    struct gait gait = agent->gait;
    gait.top = gait.sprint;
    gait.clip = 0;
    return time_left(agent, &gait);
}

static void say_fast(struct world *world, const struct task *task, double length, double least)
{
    const char *who = said_who(world, task->who);
    const char *far = said_far(world, length);
    const char *needs = said_seconds(world, least);
    struct diag *diag = diag_add(world->diags, DIAG_RUN_TIME, task->span,
                                 "%s has %s to go: that needs at least %s s", who, far, needs);
    diag_help(world->diags, diag, "write taking %s s, or leave the time out", needs);
}

/* The steady speed at which what is left of the way takes `seconds`. */
static void take_time(struct agent *agent, double seconds)
{
    double low = CREEPS, high = agent->gait.sprint;
    struct gait gait = agent->gait;
    gait.top = agent->gait.sprint;
    for (int i = 0; i < 18; i++) {
        gait.clip = (low + high) / 2;
        if (time_left(agent, &gait) > seconds) {
            low = gait.clip;
        } else {
            high = gait.clip;
        }
    }
    gait.clip = high;
    agent->gait = gait;
}

/* Who runs on from one way into the next turns about the place where they meet, a step before it.
 */
static void join(const struct agent *agent, struct route *route)
{
    if (!agent->going || agent->end_speed <= 0 || route->points.count < 2) {
        return;
    }
    struct vec2 corner = path_point(&agent->course.path, agent->course.goal);
    struct vec2 left = vec2_sub(corner, agent->m.at);
    if (vec2_length(left) < JOINS && vec2_dot(left, agent->m.v) > 0) {
        route->points.at[0] = corner;
    }
}

/* A way that bends round somebody near the line bends along the line. */
static void stay_inside(const struct world *world, const struct route *route)
{
    double side = world->court->half_width - INSIDE, near = world->court->baseline + INSIDE;
    for (size_t i = 1; i < route->points.count; i++) {
        struct vec2 *p = &route->points.at[i];
        *p = vec2_of(real_clamp(p->x, -side, side), real_max(p->y, near));
    }
}

/* Who is out of bounds comes in where he is, and not on the way to somewhere else. */
static void come_in(const struct world *world, struct route *route)
{
    double side = world->court->half_width - COMES_IN, near = world->court->baseline + COMES_IN;
    struct vec2 from = route->points.at[0];
    route_to(route, from);
    for (size_t i = route->points.count - 1; i > 1; i--) {
        route->points.at[i] = route->points.at[i - 1];
    }
    route->points.at[1] = vec2_of(real_clamp(from.x, -side, side),
                                  real_clamp(from.y, near, 2 * world->court->half_court - near));
}

void move_along(struct world *world, struct job *job, struct route *route, double run_out)
{
    struct agent *agent = &world->agent[job->task->who];
    if (job->task->goal.kind != GOAL_OUTSIDE) {
        if (agent->outside) {
            come_in(world, route);
        }
        stay_inside(world, route);
    }
    struct task_record *record = world_record(world, job->index);
    join(agent, route);
    agent->gait = motion_gait(agent->level, job->task->effort, ball_is_held(world, job->task->who));
    agent->gait.bends = true;
    agent->course =
        motion_course(world->arena, route->points.at, route->points.count, &agent->gait, run_out);
    motion_plant(&agent->m, &agent->gait, path_direction(&agent->course.path, 0),
                 agent->gait.sprint);
    agent->going = true;
    agent->anchored = false;
    agent->stuck_since = world->t;
    agent->held_since = -1;
    agent->stuck_along = 0;
    agent->way_since = world->t;
    agent->way_far = agent->course.goal;
    agent->held_by = BODY_NONE;
    agent->end_speed = 0;
    if (job->task->taking > 0) {
        double least = least_time(agent);
        if (job->task->taking < least - HURRY) {
            say_fast(world, job->task, agent->course.goal, least);
        }
        take_time(agent, job->task->taking);
    }
    record->has_corner = route->has_corner;
    record->corner = route->corner;
    job->goal = path_point(&agent->course.path, agent->course.goal);
}

/* The speed to carry into the next movement, when that may follow at once. */
static double end_speed(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    struct vec2 next, end = path_point(&agent->course.path, 1e9);
    bool runs = queue_next_is_run(world, who, &next) || border_next_is_run(world, who, &next);
    if (!runs || vec2_distance(end, next) < .3) {
        return 0;
    }
    struct vec2 now = path_direction(&agent->course.path, path_length(&agent->course.path));
    struct vec2 then = vec2_unit(vec2_sub(next, end));
    double angle = vec2_angle(now, then);
    agent->course.turn = vec2_distance(now, then);
    return agent->gait.sprint * motion_turn_share(angle);
}

static body nearest_to(const struct world *world, const struct agent *agent)
{
    body near = BODY_NONE;
    double least = 1e18;
    for (int i = 0; i < world->bodies; i++) {
        const struct agent *o = &world->agent[world->present[i]];
        double square = vec2_square(vec2_sub(o->m.at, agent->m.at));
        if (o != agent && !o->shadow && square < least) {
            near = world->present[i];
            least = square;
        }
    }
    return near;
}

static bool is_blocked(const struct world *world, struct agent *agent)
{
    double slow = agent->gait.clip > 0 ? real_min(.3, agent->gait.clip / 2) : .3;
    bool gets_on = agent->course.along > agent->stuck_along + .04 && vec2_length(agent->m.v) > slow;
    if (gets_on) {
        agent->stuck_along = agent->course.along;
        agent->stuck_since = world->t;
    }
    if (world->t > agent->stuck_since + BLOCKED / 2) {
        agent->let_through = world->t + BLOCKED; /* straight on, whoever dances before him */
        agent->held_by = nearest_to(world, agent);
    }
    return world->t >= agent->stuck_since + BLOCKED;
}

static void arrive(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    agent->through = agent->head + 1 == agent->queued && agent->end_speed > 0;
    struct task_record *record = world_record(world, job->index);
    world_mark(world, job->index, MOMENT_ARRIVED);
    record->to = world->agent[job->task->who].m.at;
    job->complete = true;
    seal_set(world, job->task->who);
}

static bool is_there(const struct agent *agent, const struct job *job, double along)
{
    double left = agent->course.goal - along, far = vec2_distance(agent->m.at, job->goal);
    bool passes = agent->end_speed > 0 || agent->course.goal < path_length(&agent->course.path);
    double carried = real_min(agent->end_speed, vec2_length(agent->m.v));
    if (left < motion_plant_lead(carried, agent->course.turn)) {
        return true; /* the next way begins with this step */
    }
    return left < THERE && (far < 2.5 * THERE || passes);
}

/* Somebody stands on the place: shoulder to shoulder with him is there. */
static bool is_taken(const struct world *world, const struct job *job)
{
    struct vec2 at = world->agent[job->task->who].m.at;
    for (int i = 0; i < world->bodies; i++) {
        const struct agent *o = &world->agent[world->present[i]];
        bool stands = world->present[i] != job->task->who && !o->shadow &&
                      vec2_square(o->m.v) < STANDS * STANDS;
        if (stands && vec2_near(o->m.at, job->goal, ON_IT) &&
            vec2_near(o->m.at, at, 2 * MOTION_BODY + SHOULDERS)) {
            return true;
        }
    }
    return false;
}

static bool is_as_near_as_can_be(const struct world *world, const struct job *job, bool blocked)
{
    double far = vec2_distance(world->agent[job->task->who].m.at, job->goal);
    return far < NEARLY && (blocked || (far < BESIDE && is_taken(world, job)));
}

bool move_due(struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    bool blocked = world->t >= agent->stuck_since + BLOCKED;
    bool near = is_as_near_as_can_be(world, job, blocked);
    if (near || trap_is_closed(world, job->task->who) ||
        motion_at_corner(&agent->course, &agent->m, &agent->gait)) {
        return true;
    }
    double lead = motion_plant_lead(agent->end_speed, agent->course.turn);
    double most = agent->course.goal - agent->course.along - real_max(THERE, lead);
    return most < BETWEEN && is_there(agent, job, motion_along(&agent->course, agent->m.at));
}

/* His way is shut, however he turns: he leaves it, and goes straight on from where he is. */
static void straight_on(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    struct route route;
    route_start(&route, world->arena, agent->m.at);
    route_to(&route, job->goal);
    stay_inside(world, &route);
    agent->course =
        motion_course(world->arena, route.points.at, route.points.count, &agent->gait, 0);
    motion_plant(&agent->m, &agent->gait, path_direction(&agent->course.path, 0),
                 agent->gait.sprint);
    agent->stuck_since = world->t;
    agent->stuck_along = 0;
    agent->dodged = BODY_NONE;
    world->quiet = 0;
    if (job->shoulder > 0) { /* by the screen, on whichever side */
        job->shoulder = 0;
    }
}

/* Between two who trap him he stands, and after a moment his dribble is over. */
static bool is_trapped(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    agent->command = vec2_of(0, 0);
    if (!trap_is_closed(world, job->task->who)) {
        return false;
    }
    agent->going = false;
    agent->end_speed = 0;
    arrive(world, job);
    trouble_trapped(world, job);
    return true;
}

bool move_tick(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    agent->end_speed = end_speed(world, job->task->who);
    double left = job->begun + job->task->taking - world->t;
    if (left > 0) { /* however slowly: he has his time */
        world->quiet = 0;
    }
    if (job->task->taking > 0 && left > HURRY && world_beat(world, PACES)) {
        take_time(agent, left);
    }
    struct mover soon = world_soon(world, agent);
    motion_progress(&agent->course, &agent->m, &agent->gait);
    agent->command = motion_wish(&agent->course, &soon, &agent->gait, agent->end_speed);
    if (trap_holds(world, job->task->who, agent->command)) {
        return is_trapped(world, job);
    }
    agent->command = steer_round(world, job->task->who, agent->command, job->goal, BODY_NONE);
    bool there = is_there(agent, job, agent->course.along);
    bool near = is_as_near_as_can_be(world, job, is_blocked(world, agent));
    if (!there && !near) {
        if (world->t >= agent->stuck_since + GIVES_UP) {
            straight_on(world, job);
        }
        return false;
    }
    if (near && !there) {
        agent->going = false;
        agent->held_by = nearest_to(world, agent);
    }
    trouble_held_up(world, job);
    arrive(world, job);
    return true;
}

static bool waits_for_pass(struct world *world, const struct job *job)
{
    const struct ball *ball = &world->ball;
    return ball->state == IN_FLIGHT && ball->target == job->task->who && ball->task < job->index;
}

/* A fake is timed to end as the screener comes. */
static bool fake_is_due(struct world *world, const struct job *job)
{
    int screen = screen_task_for(world, job->task->who);
    if (screen == SIM_NO_TASK || queue_depends(world, screen, job->index, 6)) {
        return true;
    }
    struct vec2 goal = move_goal(world, job->task);
    double length =
        plan_setup_length(job->task, vec2_distance(goal, world->agent[job->task->who].m.at));
    return screen_eta(world, screen) < FAKE_LEAD + 2 * length / FAKE_SPEED;
}

static bool move_ready(struct world *world, struct job *job)
{
    if (waits_for_pass(world, job)) {
        return false;
    }
    if (job->task->shape == SHAPE_BACK &&
        job->task->kind == TASK_MOVE) { /* against a screen as a decoy */
        int screen = screen_task_for(world, job->task->who);
        return screen == SIM_NO_TASK || screen > job->index ||
               queue_depends(world, screen, job->index, 6);
    }
    return job->task->shape != SHAPE_SETUP || fake_is_due(world, job);
}

static void move_start(struct world *world, struct job *job)
{
    struct route route;
    double run_out = plan_move(world, job->task, move_goal(world, job->task), &route);
    move_along(world, job, &route, run_out);
    if (job->task->shape == SHAPE_SEAL) {
        seal_begin(world, job->task->who);
    }
}

static int move_waits_for(struct world *world, const struct job *job)
{
    bool screened = job->task->shape == SHAPE_SETUP || job->task->shape == SHAPE_BACK;
    return screened ? screen_task_for(world, job->task->who) : SIM_NO_TASK;
}

static bool carry_ready(struct world *world, struct job *job)
{
    return ball_is_held(world, job->task->who) && world->t >= world->ball.caught_at + GATHER;
}

static int carry_waits_for(struct world *world, const struct job *job)
{
    for (size_t i = 0; i < world->jobs; i++) { /* whoever is to give him the ball */
        bool gives = task_gives_ball_to(world->job[i].task, job->task->who);
        if (gives && !world->job[i].complete) {
            return (int)i;
        }
    }
    return SIM_NO_TASK;
}

const struct task_class task_move = {move_ready, move_start,     move_tick,
                                     move_due,   move_waits_for, true};
const struct task_class task_carry = {carry_ready, move_start,      move_tick,
                                      move_due,    carry_waits_for, true};
