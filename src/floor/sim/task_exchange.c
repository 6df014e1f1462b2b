/* SPDX-License-Identifier: MIT */
/* task_exchange: a hand-off: the receiver runs by, or comes; the ball changes hands where the two
 * are closest, within an arm's length. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/limits.h"
#include "base/real.h"

#define WITHIN (3 * FEET) /* common practice */
#define TOUCH .62         /* m: nearer they do not come */
#define APPROACH .58      /* m from the giver to where a comer goes */
#define ASIDE 2.0         /* to one straight on: 63 degrees round the giver (ours) */
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

/* The defender who stands between the two, or NULL. */
static const struct agent *between(const struct world *world, const struct agent *giver,
                                   const struct agent *taker)
{
    struct vec2 way = vec2_sub(taker->m.at, giver->m.at);
    double far = vec2_length(way);
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        const struct agent *o = &world->agent[b];
        struct vec2 to = vec2_sub(o->m.at, giver->m.at);
        double ahead = vec2_dot(to, vec2_unit(way));
        if (o->here && !o->shadow && ahead > 0 && ahead < far &&
            fabs(vec2_cross(vec2_unit(way), to)) < 2 * MOTION_BODY) {
            return o;
        }
    }
    return NULL;
}

/* Straight at the giver, or, past who stands between, to his other side. */
static void come(struct world *world, struct job *job)
{
    struct agent *giver = &world->agent[job->task->who], *taker = &world->agent[job->task->other];
    struct vec2 way = vec2_unit(vec2_sub(taker->m.at, giver->m.at));
    const struct agent *o = between(world, giver, taker);
    if (o && vec2_length(giver->m.v) < STOPPED) {
        struct tie_side tie = world_tie(world);
        double side = route_side(giver->m.at, taker->m.at, o->m.at, &tie);
        way = vec2_unit(vec2_along(way, vec2_left(way), -side * ASIDE));
    }
    taker->coming = true;
    taker->going = false;
    taker->come_to = vec2_along(giver->m.at, way, APPROACH);
}

static bool is_closing(const struct agent *giver, const struct agent *taker)
{
    struct vec2 way = vec2_sub(taker->m.at, giver->m.at), v = vec2_sub(taker->m.v, giver->m.v);
    return vec2_dot(way, v) < -CLOSING * vec2_length(way);
}

/* In reach, and not coming any nearer. */
static bool is_closest(const struct agent *giver, const struct agent *taker)
{
    double far = vec2_distance(taker->m.at, giver->m.at);
    return far <= WITHIN && (far <= TOUCH || !is_closing(giver, taker));
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
        if (is_closing(giver, taker)) { /* past whoever is between them, it comes about */
            world->quiet = 0;
        }
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
