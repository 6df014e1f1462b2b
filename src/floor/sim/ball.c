/* SPDX-License-Identifier: MIT */
/* ball: who has it, where it flies, whether it is caught. A catch is tested, not assumed: a
 * receiver who is not there goes to fetch it. */
#include "floor/sim/world.h"

#include "base/real.h"

#define REACH 1.0    /* m: two hands and a step */
#define FETCH .6     /* m from a loose ball at which it is picked up */
#define RIM_SHORT .3 /* m in front of the ring where a rebound comes down */

bool ball_is_held(const struct world *world, body who)
{
    return world->ball.state == HELD && world->ball.holder == who;
}

struct vec2 ball_place(const struct world *world)
{
    const struct ball *ball = &world->ball;
    if (ball->state == HELD) {
        return world->agent[ball->holder].m.at;
    }
    if (ball->state == IN_FLIGHT || ball->state == IN_SHOT) {
        double far = ball->to - ball->from;
        double t = far > 0 ? real_clamp((world->t - ball->from) / far, 0, 1) : 1;
        return vec2_mix(ball->start, ball->end, t);
    }
    return ball->at;
}

void ball_throw(struct world *world, body from, body to, struct vec2 end, double seconds, int task)
{
    world->ball = (struct ball){.state = IN_FLIGHT,
                                .holder = from,
                                .target = to,
                                .end = end,
                                .start = world->agent[from].m.at,
                                .from = world->t,
                                .to = world->t + seconds,
                                .task = task};
    world->ball.at = world->ball.start;
    record_ball(world);
}

void ball_shoot(struct world *world, body from, int task)
{
    struct vec2 start = world->agent[from].m.at, ring = vec2_of(0, 0);
    double seconds =
        motion_shot(world->level, world->court->ring_height, vec2_length(start)).seconds;
    world->ball = (struct ball){.state = IN_SHOT,
                                .holder = from,
                                .target = BODY_NONE,
                                .start = start,
                                .end = ring,
                                .at = start,
                                .from = world->t,
                                .to = world->t + seconds,
                                .task = task};
    record_ball(world);
}

void ball_give(struct world *world, body to)
{
    world->ball = (struct ball){.state = HELD,
                                .holder = to,
                                .target = BODY_NONE,
                                .at = world->agent[to].m.at,
                                .caught_at = world->t,
                                .task = SIM_NO_TASK};
    world->agent[to].coming = false;
    world->quiet = 0;
    world->news = true;
    record_ball(world);
}

/* The movement the pass has to meet: the one on, else the last one written before the pass. */
struct job *ball_receiver_job(struct world *world, body receiver, int pass)
{
    struct agent *agent = &world->agent[receiver];
    struct job *found = NULL;
    for (size_t i = agent->head; i < agent->queued; i++) {
        struct job *job = &world->job[agent->queue[i]];
        enum task_kind kind = job->task->kind;
        bool runs = kind == TASK_MOVE || kind == TASK_USE;
        if (!runs) {
            if (kind == TASK_CARRY || kind == TASK_PASS || kind == TASK_SHOOT ||
                kind == TASK_EXCHANGE) {
                break; /* with the ball: after this catch, or another one */
            }
            continue;
        }
        if (job->index < pass || (job->phase == PHASE_ACTIVE && !found)) {
            found = job;
        } else if (i == agent->head && !found && queue_depends(world, job->index, pass, 6)) {
            found = job; /* begins with the pass */
        }
    }
    return found;
}

static void caught(struct world *world, body by)
{
    int task = world->ball.task;
    ball_give(world, by);
    if (task >= 0) {
        world_record(world, task)->to = world->agent[by].m.at;
        world_mark(world, task, MOMENT_CAUGHT);
        world->job[task].complete = true;
    }
}

static void fly(struct world *world)
{
    struct ball *ball = &world->ball;
    struct agent *target = &world->agent[ball->target];
    world->quiet = 0;
    if (!target->going && vec2_distance(target->m.at, ball->end) > .25) {
        target->coming = true;
        target->come_to = ball->end;
    }
    if (world->t < ball->to - 1e-9) {
        return;
    }
    if (vec2_distance(target->m.at, ball->end) <= REACH) {
        caught(world, ball->target);
        return;
    }
    ball->state = LOOSE;
    ball->at = ball->end;
    record_ball(world);
}

static void lie(struct world *world)
{
    struct ball *ball = &world->ball;
    if (ball->target == BODY_NONE) {
        return;
    }
    struct agent *target = &world->agent[ball->target];
    target->coming = true;
    target->going = false;
    target->come_to = ball->at;
    if (vec2_distance(target->m.at, ball->at) < FETCH) {
        caught(world, ball->target);
    }
}

static void shot(struct world *world)
{
    struct ball *ball = &world->ball;
    world->quiet = 0;
    if (world->t < ball->to - 1e-9) {
        return;
    }
    world->job[ball->task].complete = true;
    world_mark(world, ball->task, MOMENT_ARRIVED);
    ball->state = LOOSE;
    ball->target = BODY_NONE;
    ball->at = vec2_of(0, RIM_SHORT);
    record_ball(world);
}

/* After a shot the ball is his who rebounds and is there first. */
static void rebound(struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        if (job->task->verb == VERB_REBOUNDS && job->complete) {
            ball_give(world, job->task->who);
            return;
        }
    }
}

bool ball_due(const struct world *world)
{
    const struct ball *ball = &world->ball;
    switch (ball->state) {
    case IN_FLIGHT:
    case IN_SHOT:
        return world->t >= ball->to - 1e-9;
    case LOOSE:
        return ball->target != BODY_NONE &&
               vec2_distance(world->agent[ball->target].m.at, ball->at) < FETCH;
    case HELD:
    case GONE:
        break;
    }
    return false;
}

void ball_tick(struct world *world)
{
    switch (world->ball.state) {
    case IN_FLIGHT:
        fly(world);
        break;
    case IN_SHOT:
        shot(world);
        break;
    case LOOSE:
        if (world->ball.target == BODY_NONE) {
            rebound(world);
        } else {
            lie(world);
        }
        break;
    case HELD:
    case GONE:
        break;
    }
}
