/* SPDX-License-Identifier: MIT */
/* task_shoot: a try for goal: feet set, or on the run at the ring. */
#include "floor/sim/world.h"

#include "base/real.h"

#define ON_THE_RUN 1.5   /* m/s: faster than this at the ring it is a lay-up */
#define LAYUP_FROM 3.0   /* m */
#define LAYUP_AT 1.1     /* m: where it leaves the hand */
#define LAYUP_GATHER .35 /* s */
#define LAYUP_LATEST .9  /* s after it could first be taken */

static bool shoot_ready(struct world *world, struct job *job)
{
    return ball_is_held(world, job->task->who);
}

static void shoot_start(struct world *world, struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    double far = vec2_length(agent->m.at);
    bool running = vec2_length(agent->m.v) > ON_THE_RUN && far < LAYUP_FROM;
    double from_catch = world->ball.caught_at +
                        (running ? LAYUP_GATHER : world->agent[job->task->who].level->catch_shot);
    job->until = real_max(from_catch, world->t + (running ? 0 : .35));
    job->least = running ? 1 : 0;
}

static bool shoot_due(struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    bool near = vec2_length(agent->m.at) < LAYUP_AT || world->t > job->until + LAYUP_LATEST;
    return ball_is_held(world, job->task->who) && world->t >= job->until - 1e-9 &&
           (job->least <= 0 || near);
}

static bool shoot_tick(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    struct task_record *record = world_record(world, job->index);
    if (!ball_is_held(world, job->task->who)) {
        return false;
    }
    world->quiet = 0;
    agent->face = vec2_unit(vec2_scale(agent->m.at, -1));
    if (!shoot_due(world, job)) {
        return false;
    }
    record->from = agent->m.at;
    record->to = vec2_of(0, 0);
    world_mark(world, job->index, MOMENT_RELEASED);
    ball_shoot(world, job->task->who, job->index);
    return true;
}

static int shoot_waits_for(struct world *world, const struct job *job)
{
    return task_carry.waits_for(world, job);
}

const struct task_class task_shoot = {shoot_ready, shoot_start,     shoot_tick,
                                      shoot_due,   shoot_waits_for, false};
