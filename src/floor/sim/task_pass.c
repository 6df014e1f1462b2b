/* SPDX-License-Identifier: MIT */
/* task_pass: the ball leaves so that it and its receiver meet. A receiver who is on the way gets it
 * where his run ends; one who stands gets it where he stands. With `as` or `at` it leaves at that
 * moment, to wherever on his way it can then meet him. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define FOLLOW .15            /* s a passer's hands follow the ball before he moves */
#define AT_RING 1.1           /* m: a way that ends no further from the ring ends at it, */
#define FINISH .7             /* m before its end a cutter wants the ball: in stride (ours) */
#define LEAST_HOLD .30        /* s between catch and pass, even where a tie asks for more speed */
#define LOOK_LEAST .001       /* s: a moment is met that well, */
#define LOOK_SHARE .8         /* looked at again when so much of what was left has gone by */
#define BY_PLACE 1.2          /* m from a written place: he comes by it */
#define SETTLES .25           /* s that a screener needs to stand (ours) */
#define LEAD_MOST 10          /* s that a pass looks ahead, */
#define LEAD_STEP (1.0 / 120) /* so finely */
#define OPEN_HAND .4          /* m before him at which who seals shows his hand (ours) */
#define LATE .05              /* s after its moment that nobody sees (ours) */

static bool has_it(const struct world *world, body who)
{
    return ball_is_held(world, who);
}

static bool pass_ready(struct world *world, struct job *job)
{
    return has_it(world, job->task->who) &&
           world->t >=
               world->ball.caught_at + world->agent[job->task->who].level->catch_pass - 1e-9;
}

static void pass_start(struct world *world, struct job *job)
{
    job->until = -1;
    job->look_at = 0;
    queue_waits_met(world, job, &job->fixed);
}

static struct vec2 written_place(struct world *world, const struct task *pass)
{
    struct vec2 position[BODY_COUNT];
    world_position(world, position);
    return goal_point(&pass->goal, world->court, pass->other, world->agent[pass->other].m.at,
                      position);
}

/* Where along the receiver's way the ball is wanted. */
static double catch_along(struct world *world, const struct task *pass, const struct course *course)
{
    double goal = course->goal;
    struct vec2 end = path_point(&course->path, goal);
    if (pass->goal_written) {
        struct vec2 at = written_place(world, pass);
        double along = path_nearest(&course->path, at, course->along);
        return vec2_distance(path_point(&course->path, along), at) < BY_PLACE
                   ? real_min(along, goal)
                   : goal;
    }
    return vec2_length(end) < AT_RING ? real_max(0, goal - FINISH) : goal;
}

static double flight(const struct world *world, const struct task *pass, struct vec2 to)
{
    return ball_flight(world, pass, to).seconds;
}

/* ---- the release ---- */

static void say_hurry(struct world *world, const struct task *task, double hold)
{
    const char *who = said_who(world, task->who);
    const char *held = said_seconds(world, hold);
    const char *needed = said_seconds(world, world->agent[task->who].level->catch_pass);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_HURRY, task->span,
                 "%s passes %s s after the catch; at this level it takes %s s", who, held, needed);
    diag_help(world->diags, diag, "leave the tie out: the pass leaves as soon as it can");
}

static void say_late(struct world *world, const struct task *task, double late)
{
    const char *who = said_who(world, task->who);
    const char *by = said_seconds(world, late);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_LATE, task->span,
                 "%s cannot pass then: the ball is in %s's hands to pass %s s later", who, who, by);
    diag_help(world->diags, diag, "give a later time, or tie it to the catch: after %s catches",
              who);
}

static void say_place(struct world *world, const struct task *task, double off)
{
    const char *who = said_who(world, task->other);
    const char *far = said_far(world, off);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_CATCH_PLACE, task->span,
                 "%s comes no nearer than %s to where the pass is to be caught", who, far);
    diag_help(world->diags, diag, "send %s there first, or leave the place out", who);
}

static void say_fast(struct world *world, const struct task *task, struct vec2 end)
{
    struct task plain = *task;
    plain.taking = 0;
    double needs = flight(world, &plain, end);
    if (task->taking <= 0 || task->taking >= needs - LATE) {
        return;
    }
    const char *far = said_far(world, vec2_distance(ball_place(world), end));
    const char *least = said_seconds(world, needs);
    struct diag *diag = diag_add(world->diags, DIAG_RUN_TIME, task->span,
                                 "this pass flies %s: it needs at least %s s", far, least);
    diag_help(world->diags, diag, "write taking %s s, or leave the time out", least);
}

/* He is told to stay out there, or to throw in from another place. */
static bool stays_out(const struct world *world, const struct agent *agent)
{
    if (agent->head + 1 >= agent->queued) {
        return false;
    }
    const struct task *next = world->job[agent->queue[agent->head + 1]].task;
    return next->kind == TASK_HOLD || next->goal.kind == GOAL_OUTSIDE;
}

/* Who has thrown in comes onto the floor, whatever he waits for. */
static void step_in(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    if (!agent->outside || stays_out(world, agent)) {
        return;
    }
    agent->coming = true;
    agent->come_to = court_stepped_in(world->court, agent->m.at);
}

/* Who is nearest to getting a hand on it, as it leaves. */
static void look_at_lane(const struct world *world, struct task_record *record)
{
    const struct ball *ball = &world->ball;
    double least = LANE_FREE;
    struct lane_way way;
    const struct level *level = NULL;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        const struct agent *agent = &world->agent[b];
        if (!agent->here) {
            continue;
        }
        if (agent->level != level) {
            level = agent->level;
            struct lane lane = motion_lane(level);
            way = motion_lane_way(&ball->flight, ball->start, ball->end, &lane);
        }
        double margin = motion_lane_short(&way, agent->m);
        if (margin < least) {
            least = margin;
            record->lane_by = (body)b;
        }
    }
    record->lane = record->lane_by == BODY_NONE ? 0 : least;
}

static void release(struct world *world, struct job *job, struct vec2 end)
{
    const struct task *task = job->task;
    struct task_record *record = world_record(world, job->index);
    double hold = world->t - world->ball.caught_at;
    double off = task->goal_written ? vec2_distance(end, written_place(world, task)) : 0;
    if (job->fixed && world->ball.caught_at > job->begun + LATE) {
        say_late(world, task, world->t - job->begun);
    } else if (world->ball.caught_at >= 0 &&
               hold < world->agent[task->who].level->catch_pass - LATE) {
        say_hurry(world, task, hold);
    }
    if (off > BY_PLACE) {
        say_place(world, task, off);
    }
    say_fast(world, task, end);
    record->from = world->agent[task->who].m.at;
    record->to = end;
    world_mark(world, job->index, MOMENT_RELEASED);
    ball_throw(world, job, end);
    look_at_lane(world, record);
    job->until = world->t + FOLLOW;
    step_in(world, task->who);
}

/* ---- to whom ---- */

/* The first point of a way that the ball, thrown now, reaches no later than its runner does; where
 * he comes to a stop, if there is none before; a written place, if he comes by it sooner. */
static struct vec2 lead(struct world *world, const struct task *pass, const struct course *course,
                        struct mover mover, const struct gait *gait, double end_speed)
{
    double last = pass->goal_written ? catch_along(world, pass, course) : 1e9, t = 0;
    struct course copy = *course;
    while (copy.along < last - .1 && t < LEAD_MOST && flight(world, pass, mover.at) > t) {
        motion_advance(&mover, gait, motion_follow(&copy, &mover, gait, end_speed), LEAD_STEP);
        t += LEAD_STEP;
    }
    return copy.along < last - .1 ? mover.at : path_point(&course->path, last);
}

/* Not before `early` seconds have gone by, or so. */
static void look_later(const struct world *world, struct job *job, double early)
{
    job->look_at = world->t + real_max(LOOK_SHARE * early, LOOK_LEAST);
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
    double early = eta - far;
    if (early < -LATE) { /* he will be by */
        release(world, job,
                lead(world, job->task, &receiver->course, receiver->m, &receiver->gait,
                     receiver->end_speed));
    } else if (early <= LOOK_LEAST) {
        release(world, job, end);
    } else { /* no need to look again before most of it has gone by */
        look_later(world, job, early);
    }
}

/* A screener gets it where he screens, when he is there; one who goes to screen after this pass, on
 * his way. */
static void to_screener(struct world *world, struct job *job, const struct job *screen)
{
    const struct agent *agent = &world->agent[job->task->other];
    if (agent->anchored) {
        release(world, job, agent->m.at);
        return;
    }
    struct vec2 end = world->screen[job->task->other].spot;
    double far = flight(world, job->task, end);
    double early = screen_eta(world, screen->index) + SETTLES - far;
    if (screen->index > job->index) {
        far = flight(world, job->task, agent->m.at);
        release(world, job, vec2_along(agent->m.at, agent->m.v, far));
    } else if (early <= LOOK_LEAST) {
        release(world, job, end);
    } else {
        look_later(world, job, early);
    }
}

/* A receiver whose run begins with this pass is led. */
static void to_starter(struct world *world, struct job *job, struct job *run)
{
    const struct task *task = run->task;
    struct route route;
    double run_out = plan_move(world, task, move_goal(world, task), &route);
    struct gait gait = motion_gait(world->agent[task->who].level, task->effort, false);
    gait.bends = true;
    struct course course =
        motion_course(world->arena, route.points.at, route.points.count, &gait, run_out);
    release(world, job, lead(world, job->task, &course, world->agent[task->who].m, &gait, 0));
}

/* He stands, or comes to a stop a little further on. */
static void to_stander(struct world *world, struct job *job)
{
    const struct agent *agent = &world->agent[job->task->other];
    struct vec2 to = vec2_along(agent->m.at, agent->m.v, .35);
    if (agent->seals) { /* away from the defender on his back */
        to = vec2_along(to, vec2_unit(vec2_sub(ball_place(world), to)), OPEN_HAND);
    }
    release(world, job, to);
}

/* Now, whoever is where. */
static void at_its_moment(struct world *world, struct job *job, struct job *run)
{
    const struct task *task = job->task;
    struct agent *agent = &world->agent[task->other];
    if (task->goal_written) {
        release(world, job, written_place(world, task));
    } else if (run && run->phase == PHASE_ACTIVE && agent->going) {
        release(world, job,
                lead(world, task, &agent->course, agent->m, &agent->gait, agent->end_speed));
    } else {
        to_stander(world, job);
    }
}

static bool begins_with(struct world *world, struct job *run, struct job *job)
{
    return run->phase == PHASE_WAITING &&
           queue_depends(world, run->index, job->index, LIMIT_PLACE_DEPTH + 3);
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
    bool first = run && run == queue_head(world, receiver);
    if (run && begins_with(world, run, job)) {
        if (first && run->task->kind == TASK_MOVE && run->task->shape != SHAPE_SETUP) {
            to_starter(world, job, run);
        } else {
            release(world, job, agent->m.at);
        }
    } else if (job->fixed) {
        at_its_moment(world, job, run);
    } else if (run && run->phase == PHASE_WAITING) {
        job->look_at = -1; /* he is still to go */
    } else if (run && run->task->kind == TASK_SCREEN) {
        to_screener(world, job, run);
    } else if (run && agent->going) {
        to_runner(world, job, run);
    } else {
        to_stander(world, job);
    }
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
