/* SPDX-License-Identifier: MIT */
/* task_exchange: a hand-off: the receiver runs by, or comes; the ball changes hands where the two
 * are closest, within an arm's length. */
#include "floor/sim/world.h"

#include "base/real.h"

#define WITHIN (3 * FEET) /* common practice */
#define TOUCH .62         /* m: nearer they do not come */
#define APPROACH .58      /* m from the giver to where a comer goes */
#define FOLLOW .12        /* s */

static bool exchange_ready(struct world *world, struct job *job)
{
    return ball_is_held(world, job->task->who);
}

static void exchange_start(struct world *world, struct job *job)
{
    (void)world;
    job->until = -1;
    job->least = 1e9;
}

static void hand_over(struct world *world, struct job *job)
{
    struct task_record *record = world_record(world, job->index);
    record->from = world->agent[job->task->who].m.at;
    record->to = world->agent[job->task->other].m.at;
    world_mark(world, job->index, MOMENT_RELEASED);
    ball_give(world, job->task->other);
    world_mark(world, job->index, MOMENT_CAUGHT);
    job->complete = true;
    job->until = world->t + FOLLOW;
}

static void come(struct world *world, struct job *job)
{
    struct agent *giver = &world->agent[job->task->who], *taker = &world->agent[job->task->other];
    struct vec2 way = vec2_unit(vec2_sub(taker->m.at, giver->m.at));
    taker->coming = true;
    taker->going = false;
    taker->come_to = vec2_along(giver->m.at, way, APPROACH);
}

static bool exchange_tick(struct world *world, struct job *job)
{
    if (job->until >= 0) {
        return world->t >= job->until;
    }
    if (!ball_is_held(world, job->task->who)) {
        return false;
    }
    struct agent *giver = &world->agent[job->task->who], *taker = &world->agent[job->task->other];
    double far = vec2_distance(giver->m.at, taker->m.at);
    bool closing = far < job->least - 1e-6;
    job->least = real_min(job->least, far);
    giver->face = vec2_unit(vec2_sub(taker->m.at, giver->m.at));
    if (far <= WITHIN && (far <= TOUCH || !closing)) {
        hand_over(world, job);
        return false;
    }
    if (!ball_receiver_job(world, job->task->other, job->index)) {
        come(world, job);
    } else if (far > WITHIN) {
        job->least = 1e9;
    }
    return false;
}

static int exchange_waits_for(struct world *world, const struct job *job)
{
    if (!ball_is_held(world, job->task->who)) {
        return task_carry.waits_for(world, job);
    }
    struct job *run = ball_receiver_job(world, job->task->other, job->index);
    return run ? run->index : SIM_NO_TASK;
}

const struct task_class task_exchange = {exchange_ready, exchange_start, exchange_tick,
                                         exchange_waits_for, false};
