/* SPDX-License-Identifier: MIT */
/* task_guard: a defender's own sentence as a task. It has no end of its own: it holds until his
 * next sentence or the step's end. It has arrived once he is where it wants him; an errand may keep
 * the step for a while, a way to stand never does, and neither can hold it for good. */
#include "floor/sim/world.h"

#define PATIENCE 3.0 /* s that a step waits for somebody to be there (ours) */
enum { DEPTH = 8 };  /* sentences in a chain that are looked back through */

/* What is done about a ball that comes. */
static bool answers_ball(const struct task *task)
{
    enum strategy strategy = defense_strategy_of(task->verb);
    return strategy == STRATEGY_CLOSE_OUT || strategy == STRATEGY_RECOVER ||
           strategy == STRATEGY_STUNT || strategy == STRATEGY_DOUBLE;
}

/* The pass that is told last before him in the step, or SIM_NO_TASK. */
static int pass_before(const struct world *world, const struct job *job)
{
    for (int i = job->index - 1; i >= (int)world->base; i--) {
        if (world->job[i].task->kind == TASK_PASS) {
            return i;
        }
    }
    return SIM_NO_TASK;
}

/* Told without a tie, after a pass, he goes when he has seen it thrown, as the reads have it; but
 * for a pass that itself waits for him. */
static bool guard_ready(struct world *world, struct job *job)
{
    int pass = pass_before(world, job);
    if (job->task->waits.count > 0 || !answers_ball(job->task) || pass == SIM_NO_TASK ||
        queue_depends(world, pass, job->index, DEPTH)) {
        return true;
    }
    double thrown = world->segment->record[pass].time[MOMENT_RELEASED];
    return thrown != TIME_NEVER &&
           world->t >= thrown + world->agent[job->task->who].level->reaction;
}

static void guard_begin(struct world *world, struct job *job)
{
    duty_begin(world, job);
    reads_start(world, job);
}

/* All that the attack has to do is done. */
static bool attack_is_done(const struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (world->job[i].task->kind != TASK_GUARD && !world->job[i].complete) {
            return false;
        }
    }
    return true;
}

static bool is_his(const struct world *world, const struct job *job)
{
    const struct duty *duty = &world->duty[job->task->who];
    return duty->task == job->index && duty->strategy != STRATEGY_NONE;
}

/* Nobody waits for ever: for an errand some seconds, for a way to stand until the attack is over.
 */
static bool has_waited(const struct world *world, const struct job *job)
{
    bool goes = defense_goes(world->duty[job->task->who].strategy);
    return world->t >= job->begun + PATIENCE && (goes || attack_is_done(world));
}

static bool guard_job_due(struct world *world, const struct job *job)
{
    return !is_his(world, job) || has_waited(world, job) || duty_arrives(world, job->task->who);
}

static bool guard_job_tick(struct world *world, struct job *job)
{
    body who = job->task->who;
    bool goes = is_his(world, job) && defense_goes(world->duty[who].strategy);
    bool late = world->t >= job->begun + PATIENCE, over = guard_job_due(world, job);
    world_record(world, job->index)->to = world->agent[who].m.at;
    job->complete = job->complete || !goes || late || over;
    if ((goes || !over) && !late) { /* he is on his way: somebody may wait for it */
        world->quiet = 0;
    }
    if (!over) {
        return false;
    }
    if (is_his(world, job) && duty_arrives(world, who)) {
        duty_arrive(world, who);
    }
    world_mark(world, job->index, MOMENT_ARRIVED);
    return true;
}

static int guard_waits_for(struct world *world, const struct job *job)
{
    (void)world;
    (void)job;
    return SIM_NO_TASK;
}

const struct task_class task_guard = {guard_ready,   guard_begin,     guard_job_tick,
                                      guard_job_due, guard_waits_for, false};
