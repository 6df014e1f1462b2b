/* SPDX-License-Identifier: MIT */
/* task_pass: the ball leaves so that it and its receiver meet. A receiver who is on the way gets it
 * where his run ends; one who stands gets it where he stands. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define FOLLOW .15      /* s a passer's hands follow the ball before he moves */
#define FINISH 1.0      /* m before the ring at which a cutter wants the ball */
#define LEAST_HOLD .30  /* s between catch and pass, even where a tie asks for more speed */
#define CATCH_LEAD .12  /* s: a receiver likes to be there first */
#define LOOK_LEAST .001 /* s: a moment is met that well, */
#define LOOK_SHARE .8   /* looked at again when so much of what was left has gone by */

static bool has_it(const struct world *world, body who)
{
    return ball_is_held(world, who);
}

static bool pass_ready(struct world *world, struct job *job)
{
    return has_it(world, job->task->who) &&
           world->t >= world->ball.caught_at + world->level->catch_pass - 1e-9;
}

static void pass_start(struct world *world, struct job *job)
{
    (void)world;
    job->until = -1;
    job->look_at = 0;
}

/* Where along the receiver's way the ball is wanted. */
static double catch_along(const struct world *world, const struct task *pass,
                          const struct course *course)
{
    double goal = course->goal;
    struct vec2 end = path_point(&course->path, goal);
    if (pass->goal_written) {
        struct vec2 position[BODY_COUNT];
        world_position(world, position);
        struct vec2 at = goal_point(&pass->goal, world->court, pass->other,
                                    world->agent[pass->other].m.at, position);
        double along = path_nearest(&course->path, at, course->along);
        return vec2_distance(path_point(&course->path, along), at) < 1.2 ? real_min(along, goal)
                                                                         : goal;
    }
    return move_at_rim(end) ? real_max(0, goal - FINISH) : goal;
}

static double flight(const struct world *world, const struct task *pass, struct vec2 to)
{
    return motion_pass_time(world->level, pass->pass,
                            vec2_distance(world->agent[pass->who].m.at, to));
}

static void release(struct world *world, struct job *job, struct vec2 end)
{
    const struct task *task = job->task;
    struct task_record *record = world_record(world, job->index);
    record->from = world->agent[task->who].m.at;
    record->to = end;
    world_mark(world, job->index, MOMENT_RELEASED);
    ball_throw(world, task->who, task->other, end, flight(world, task, end), job->index);
    job->until = world->t + FOLLOW;
}

/* The receiver is running: released when the flight takes as long as the rest of his way. */
static void to_runner(struct world *world, struct job *job, struct job *run)
{
    struct agent *receiver = &world->agent[job->task->other];
    if (world->t < job->look_at) {
        return;
    }
    double along = catch_along(world, job->task, &receiver->course);
    double left = along - receiver->course.along;
    struct vec2 end = path_point(&receiver->course.path, along);
    double far = flight(world, job->task, end);
    double sprint = receiver->gait.sprint, too_far = left - 1.5 - (far + .3) * sprint;
    if (too_far > 0) { /* for sure: no need to run it through */
        job->look_at = world->t + real_max(too_far / sprint, LOOK_LEAST);
        return;
    }
    struct mover there = receiver->m;
    double eta = left > 0 ? motion_course_time(&receiver->course, receiver->m, &receiver->gait,
                                               receiver->end_speed, along, &there)
                          : 0;
    if (run->task->kind == TASK_USE && run->shoulder > receiver->course.along + .2 &&
        run->shoulder < along && run->task->shape != SHAPE_FADE) {
        double on =
            run->shoulder - receiver->course.along - .2; /* not before he is by the screen */
        job->look_at = world->t + real_max(on / sprint, LOOK_LEAST);
        return;
    }
    double early = eta - CATCH_LEAD - far;
    if (early <= LOOK_LEAST) {
        release(world, job, end);
    } else { /* no need to look again before most of it has gone by */
        job->look_at = world->t + real_max(LOOK_SHARE * early, LOOK_LEAST);
    }
}

/* A receiver whose run begins with this pass is led: the first point of his way that the ball
 * reaches no later than he does. */
static void to_starter(struct world *world, struct job *job, struct job *run)
{
    const struct task *task = run->task;
    struct route route;
    double run_out = plan_move(world, task, move_goal(world, task), &route);
    struct gait gait = motion_gait(world->level, task->effort, false);
    struct course course =
        motion_course(world->arena, route.points.at, route.points.count, &gait, run_out);
    struct mover mover = world->agent[task->who].m;
    double last = catch_along(world, job->task, &course), t = 0;
    struct course copy = course;
    while (copy.along < last - .1 && t < 10 && flight(world, job->task, mover.at) > t) {
        motion_advance(&mover, &gait, motion_follow(&copy, &mover, &gait, 0), world->dt);
        t += world->dt;
    }
    release(world, job, copy.along < last - .1 ? mover.at : path_point(&course.path, last));
}

static bool may_leave(const struct world *world, const struct job *job)
{
    return has_it(world, job->task->who) && world->t >= world->ball.caught_at + LEAST_HOLD;
}

static void try_release(struct world *world, struct job *job)
{
    body receiver = job->task->other;
    if (!may_leave(world, job)) {
        return;
    }
    struct agent *agent = &world->agent[receiver];
    struct job *run = ball_receiver_job(world, receiver, job->index);
    if (run && run->phase == PHASE_WAITING) {
        if (queue_depends(world, run->index, job->index, LIMIT_PLACE_DEPTH + 3)) {
            bool first = run == queue_head(world, receiver);
            if (first && run->task->kind == TASK_MOVE && run->task->shape != SHAPE_SETUP) {
                to_starter(world, job, run);
            } else {
                release(world, job, agent->m.at);
            }
        }
        job->look_at = -1; /* he is still to go */
        return;
    }
    if (run && agent->going) {
        to_runner(world, job, run);
        return;
    }
    struct vec2 drift = vec2_scale(agent->m.v, .35); /* comes to a stop a little further on */
    release(world, job, vec2_add(agent->m.at, drift));
}

static bool pass_tick(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    if (job->until < 0) {
        struct vec2 to = vec2_sub(world->agent[job->task->other].m.at, agent->m.at);
        agent->face = vec2_length(to) > 1e-6 ? vec2_unit(to) : agent->face;
        try_release(world, job);
        return false;
    }
    return world->t >= job->until;
}

static bool pass_due(struct world *world, const struct job *job)
{
    if (job->until >= 0) {
        return world->t >= job->until;
    }
    return job->look_at >= 0 && world->t >= job->look_at && may_leave(world, job);
}

static int pass_waits_for(struct world *world, const struct job *job)
{
    if (!has_it(world, job->task->who)) {
        return task_carry.waits_for(world, job);
    }
    struct job *run = ball_receiver_job(world, job->task->other, job->index);
    return run ? run->index : SIM_NO_TASK;
}

const struct task_class task_pass = {pass_ready, pass_start,     pass_tick,
                                     pass_due,   pass_waits_for, false};
