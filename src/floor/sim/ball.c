/* SPDX-License-Identifier: MIT */
/* ball: who has it, and where it is at every moment: held, passed, shot, off the ring, on the
 * floor. It goes from one to the next without a jump: hands that take it bring it in. */
#include "floor/sim/world.h"

#include "base/real.h"

#define READY .15    /* s into a step before the first pass leaves the hand */
#define FETCH .8     /* m from a ball on the floor at which it is picked up: an arm (ours) */
#define RIM_SHORT .3 /* m in front of the ring where a ball comes down that nobody is there for */
#define HANDS 3.0    /* m/s: how fast hands bring a ball in (ours) */
#define STANDS .3    /* m/s */
#define GIVES_UP 1.5 /* s after which nobody gets a ball that he cannot come to (ours) */

#define OFF_RING_LEAST .45 /* s from the ring to the hands of who rebounds (ours), */
#define OFF_RING_MOST 1.6  /* when it goes up first */
#define HANDS_UP 1.25      /* of a player's height: where a rebound is taken (ours) */

bool ball_is_held(const struct world *world, body who)
{
    return world->ball.state == HELD && world->ball.holder == who;
}

bool ball_is_under_way(const struct world *world)
{
    const struct ball *ball = &world->ball;
    return ball->state == IN_FLIGHT || ball->state == IN_SHOT ||
           (ball->state == LOOSE && ball->target != BODY_NONE);
}

bool ball_is_for(const struct world *world, body who)
{
    return ball_is_held(world, who) || (ball_is_under_way(world) && world->ball.target == who);
}

static double held_height(const struct world *world)
{
    return MOTION_HELD * world->level->height;
}

/* How much is left of the way that the hands have to bring it in. */
static double still_off(const struct world *world)
{
    const struct ball *ball = &world->ball;
    return ball->to > ball->from ? 1 - real_smooth(world->t, ball->from, ball->to) : 0;
}

struct vec2 ball_place(const struct world *world)
{
    const struct ball *ball = &world->ball;
    if (ball->state == HELD) {
        return vec2_along(world->agent[ball->holder].m.at, ball->off, still_off(world));
    }
    double along = motion_flight_along(&ball->flight, world->t - ball->from);
    return ball->flight.length > 0 ? vec2_mix(ball->start, ball->end, along / ball->flight.length)
                                   : ball->end;
}

static double ball_height(const struct world *world)
{
    const struct ball *ball = &world->ball;
    if (ball->state == HELD) {
        return real_mix(ball->flight.to_z, ball->flight.from_z, still_off(world));
    }
    return motion_flight_height(&ball->flight, world->t - ball->from);
}

/* ---- from state to state ---- */

static void become(struct world *world, const struct ball *ball)
{
    world->ball = *ball;
    world->quiet = 0;
    world->news = true;
    record_ball(world);
}

static void let_fly(struct world *world, struct ball *ball)
{
    ball->from = world->t;
    ball->to = world->t + ball->flight.seconds;
    become(world, ball);
}

/* As by its kind and length, or in the time that is written. */
struct flight ball_flight(const struct world *world, const struct task *pass, struct vec2 end)
{
    struct flight flight = motion_pass(world->agent[pass->who].level, pass->pass,
                                       vec2_distance(ball_place(world), end));
    if (pass->taking > 0) {
        motion_flight_take(&flight, pass->taking);
    }
    return flight;
}

void ball_throw(struct world *world, const struct job *job, struct vec2 end)
{
    struct ball ball = {.state = IN_FLIGHT,
                        .holder = job->task->who,
                        .target = job->task->other,
                        .start = ball_place(world),
                        .end = end,
                        .flight = ball_flight(world, job->task, end),
                        .throw_in = world->agent[job->task->who].outside,
                        .task = job->index};
    let_fly(world, &ball);
}

void ball_shoot(struct world *world, body from, int task)
{
    struct ball ball = {.state = IN_SHOT,
                        .holder = from,
                        .target = BODY_NONE,
                        .start = ball_place(world),
                        .task = task};
    ball.flight =
        motion_shot(world->level, world->court->ring_height, vec2_distance(ball.start, ball.end));
    let_fly(world, &ball);
}

void ball_give(struct world *world, body to)
{
    double held = held_height(world), high = ball_height(world);
    struct ball ball = {.state = HELD,
                        .holder = to,
                        .target = BODY_NONE,
                        .start = ball_place(world),
                        .flight = {.from_z = high, .to_z = held},
                        .from = world->t,
                        .caught_at = world->t,
                        .throw_in = world->agent[to].outside,
                        .task = SIM_NO_TASK};
    ball.off = vec2_sub(ball.start, world->agent[to].m.at);
    ball.to = world->t + real_hypot(vec2_length(ball.off), high - held) / HANDS;
    world->agent[to].coming = false;
    become(world, &ball);
}

/* From where it is to `end`; there it lies, or is caught if `target` is near. */
static void fall(struct world *world, struct vec2 end, double end_z, double seconds, body target)
{
    struct ball ball = {.state = LOOSE,
                        .holder = BODY_NONE,
                        .target = target,
                        .start = ball_place(world),
                        .end = end,
                        .task = world->ball.state == IN_FLIGHT ? world->ball.task : SIM_NO_TASK};
    ball.flight = (struct flight){.law = FLIGHT_SHOT,
                                  .length = vec2_distance(ball.start, end),
                                  .seconds = seconds,
                                  .from_z = ball_height(world),
                                  .to_z = end_z};
    let_fly(world, &ball);
}

void ball_drop(struct world *world, body target)
{
    double high = ball_height(world) - MOTION_BALL;
    fall(world, ball_place(world), MOTION_BALL, motion_fall_time(high), target);
}

/* ---- off the ring ---- */

/* Seconds until he who rebounds is where he rebounds; never for one who has not started. */
static double rebound_eta(struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    if (job->complete) {
        return 0;
    }
    if (job->phase != PHASE_ACTIVE || !agent->going) {
        return 1e9;
    }
    return motion_course_time(&agent->course, agent->m, &agent->gait, 0, agent->course.goal, NULL);
}

/* He was there before this shot, for another one. */
static bool is_of_old(struct world *world, const struct job *job)
{
    double there = world_record(world, job->index)->time[MOMENT_ARRIVED];
    double left = world_record(world, world->ball.task)->time[MOMENT_RELEASED];
    return there != TIME_NEVER && left != TIME_NEVER && there < left;
}

static const struct job *first_to_rebound(struct world *world, double *eta)
{
    const struct job *first = NULL;
    *eta = 1e9;
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        if (job->task->verb != VERB_REBOUNDS || !world->agent[job->task->who].here ||
            is_of_old(world, job)) {
            continue;
        }
        double his = rebound_eta(world, job);
        if (!first || his < *eta) {
            first = job;
            *eta = his;
        }
    }
    return first;
}

static void off_the_ring(struct world *world)
{
    double eta, down = world->court->ring_height - MOTION_BALL;
    const struct job *job = first_to_rebound(world, &eta);
    body who = job ? job->task->who : (body)BODY_NONE;
    if (job && eta <= OFF_RING_MOST) {
        fall(world, job->complete ? world->agent[who].m.at : job->goal,
             HANDS_UP * world->level->height, real_max(eta, OFF_RING_LEAST), who);
    } else {
        fall(world, vec2_of(0, RIM_SHORT), MOTION_BALL, motion_fall_time(down), who);
    }
}

/* ---- each tick ---- */

static bool is_over(const struct world *world)
{
    return world->t >= world->ball.to - 1e-9;
}

static bool is_down(const struct ball *ball)
{
    return ball->flight.to_z <= MOTION_BALL + 1e-9;
}

/* Of a loose one: does he for whom it is get it now? Out of the air as it comes, or off the floor.
 */
static bool gets_it(const struct world *world)
{
    const struct ball *ball = &world->ball;
    double far = vec2_distance(world->agent[ball->target].m.at, ball->end);
    return far < (is_down(ball) ? FETCH : catch_reach(world));
}

bool ball_due(const struct world *world)
{
    const struct ball *ball = &world->ball;
    switch (ball->state) {
    case IN_FLIGHT:
    case IN_SHOT:
        return is_over(world);
    case LOOSE:
        return ball->target != BODY_NONE && is_over(world) && (gets_it(world) || !is_down(ball));
    case HELD:
    case GONE:
        break;
    }
    return false;
}

static void shot(struct world *world)
{
    world->quiet = 0;
    if (is_over(world)) {
        world->job[world->ball.task].complete = true;
        world_mark(world, world->ball.task, MOMENT_ARRIVED);
        off_the_ring(world);
    }
}

static void come(struct world *world, struct agent *agent)
{
    if (!agent->coming) {
        world->ball.caught_at = world->t; /* since when he has been coming */
    }
    agent->coming = true;
    agent->going = false;
    agent->come_to = world->ball.end;
}

static void loose(struct world *world)
{
    struct ball *ball = &world->ball;
    if (ball->target == BODY_NONE || !is_over(world)) {
        return;
    }
    struct agent *agent = &world->agent[ball->target];
    const struct job *job = queue_head(world, ball->target);
    bool idle = !job || job->phase == PHASE_WAITING;
    if (gets_it(world)) {
        catch_take(world, ball->target);
    } else if (!is_down(ball)) {
        ball_drop(world, ball->target);
    } else if (agent->coming && idle && vec2_length(agent->m.v) < STANDS &&
               world->t > ball->caught_at + GIVES_UP) {
        ball->target = BODY_NONE;
        agent->coming = false;
    } else if (idle || ball->task != SIM_NO_TASK) {
        come(world, agent);
    }
    if (!idle) { /* whoever has something else to do first has not tried yet */
        ball->caught_at = world->t;
    }
}

void ball_tick(struct world *world)
{
    switch (world->ball.state) {
    case IN_FLIGHT:
        catch_tick(world);
        break;
    case IN_SHOT:
        shot(world);
        break;
    case LOOSE:
        loose(world);
        break;
    case HELD:
    case GONE:
        break;
    }
}

/* ---- from segment to segment ---- */

static bool is_brought_in(const struct world *world, const struct ball *ball)
{
    return ball->state == HELD && world->t < ball->to;
}

void ball_take(struct world *world, const struct ball *before)
{
    struct ball *ball = &world->ball;
    *ball = *before;
    ball->caught_at = world->t + READY - world->level->catch_pass;
    ball->task = SIM_NO_TASK;
    if (ball->state == HELD) {
        ball->throw_in = world->agent[ball->holder].outside;
    }
    if (is_brought_in(world, ball)) { /* the hands go on with it */
        return;
    }
    ball->from = ball->to = world->t;
    if (ball->state == HELD) {
        ball->flight = (struct flight){.from_z = held_height(world), .to_z = held_height(world)};
        ball->start = world->agent[ball->holder].m.at;
    }
}

struct ball ball_leave(const struct world *world)
{
    struct ball ball = world->ball;
    if (!is_brought_in(world, &ball)) {
        ball.off = vec2_of(0, 0);
    }
    if (ball.state != HELD) {
        ball.state = GONE;
        ball.start = ball.end = ball_place(world);
        ball.flight = (struct flight){.to_z = MOTION_BALL};
    }
    return ball;
}
