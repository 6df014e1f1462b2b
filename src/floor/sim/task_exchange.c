/* SPDX-License-Identifier: MIT */
/* task_exchange: a hand-off: the receiver runs by, or comes; the ball changes hands where the two
 * are closest, within an arm's length. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define WITHIN (3 * FEET) /* common practice */
#define TOUCH .62         /* m: nearer they do not come */
#define APPROACH .58      /* m from the giver to where a comer goes */
#define CLOSING .02       /* m/s: slower than that they come no nearer */
#define STOPPED .1        /* m/s */
#define FOLLOW .12        /* s */

static bool exchange_ready(struct world *world, struct job *job)
{
    return ball_is_held(world, job->task->who);
}

static void exchange_start(struct world *world, struct job *job)
{
    (void)world;
    job->until = -1;
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

/* In reach, and not coming any nearer. */
static bool is_closest(const struct agent *giver, const struct agent *taker)
{
    struct vec2 way = vec2_sub(taker->m.at, giver->m.at), v = vec2_sub(taker->m.v, giver->m.v);
    double far = vec2_length(way);
    return far <= WITHIN && (far <= TOUCH || vec2_dot(way, v) >= -CLOSING * far);
}

/* He has nothing to do before he has the ball, and the giver, who came to him, has been stopped
 * short of him: a defender stands between the two. */
static bool is_cut_off(struct world *world, const struct job *job, const struct job *run)
{
    const struct agent *giver = &world->agent[job->task->who];
    double far = vec2_distance(giver->m.at, world->agent[job->task->other].m.at);
    return far > WITHIN && vec2_length(giver->m.v) < STOPPED && run->phase == PHASE_WAITING &&
           queue_depends(world, run->index, job->index, LIMIT_PLACE_DEPTH + 3);
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
    giver->face = vec2_unit(vec2_sub(taker->m.at, giver->m.at));
    if (is_closest(giver, taker)) {
        hand_over(world, job);
        return false;
    }
    struct job *run = ball_receiver_job(world, job->task->other, job->index);
    if (!run || is_cut_off(world, job, run)) {
        come(world, job);
    }
    return false;
}

static bool exchange_due(struct world *world, const struct job *job)
{
    if (job->until >= 0) {
        return world->t >= job->until;
    }
    return ball_is_held(world, job->task->who) &&
           is_closest(&world->agent[job->task->who], &world->agent[job->task->other]);
}

static int exchange_waits_for(struct world *world, const struct job *job)
{
    if (!ball_is_held(world, job->task->who)) {
        return task_carry.waits_for(world, job);
    }
    struct job *run = ball_receiver_job(world, job->task->other, job->index);
    return run ? run->index : SIM_NO_TASK;
}

const struct task_class task_exchange = {exchange_ready, exchange_start,     exchange_tick,
                                         exchange_due,   exchange_waits_for, false};
