/* SPDX-License-Identifier: MIT */
/* task_hold: standing for a while: faces, jabs, fakes, holds, stays. */
#include "floor/sim/world.h"

struct hold_row {
    enum verb verb;
    double seconds; /* ours */
};
static const struct hold_row holds[] = {{VERB_FACES, .3},
                                        {VERB_JABS, .4},
                                        {VERB_SHOT_FAKES, .5},
                                        {VERB_PASS_FAKES, .4},
                                        {VERB_STAYS, 0}};

static double seconds_of(const struct task *task)
{
    for (size_t i = 0; i < sizeof holds / sizeof *holds; i++) {
        if (holds[i].verb == task->verb) {
            return holds[i].seconds;
        }
    }
    return task->duration;
}

/* It lasts until something happens, however long that takes. */
static bool is_open_ended(const struct task *task)
{
    return task->has_until && task->taking <= 0 && seconds_of(task) <= 0;
}

static bool hold_ready(struct world *world, struct job *job)
{
    if (job->task->stay) {
        return true;
    }
    int pass = task_carry.waits_for(world, job); /* a ball that is to come first */
    return pass == SIM_NO_TASK || pass > job->index;
}

static void hold_start(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    job->until = world->t + (job->task->taking > 0 ? job->task->taking : seconds_of(job->task));
    if (job->task->faces) {
        struct vec2 position[BODY_COUNT];
        world_position(world, position);
        struct vec2 to =
            goal_point(&job->task->face, world->court, job->task->who, agent->m.at, position);
        agent->face = vec2_unit(vec2_sub(to, agent->m.at));
    }
}

static bool hold_tick(struct world *world, struct job *job)
{
    if (is_open_ended(job->task)) {
        return false;
    }
    world->quiet = 0;
    if (world->t < job->until - 1e-9) {
        return false;
    }
    world_mark(world, job->index, MOMENT_ARRIVED);
    world_record(world, job->index)->to = world->agent[job->task->who].m.at;
    job->complete = true;
    return true;
}

static bool hold_due(struct world *world, const struct job *job)
{
    return !is_open_ended(job->task) && world->t >= job->until - 1e-9;
}

static int hold_waits_for(struct world *world, const struct job *job)
{
    return job->task->stay ? SIM_NO_TASK : task_carry.waits_for(world, job);
}

const struct task_class task_hold = {hold_ready, hold_start,     hold_tick,
                                     hold_due,   hold_waits_for, false};
