/* SPDX-License-Identifier: MIT */
/* task_use: off a screen: leaves when it is set, goes by the shoulder, and tells the screener when
 * he is past. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define LEAVE .15       /* s after it is set: the user has to see it */
#define CLEAR .6        /* m past the shoulder */
#define BEHIND_CLEAR .2 /* s after a back cut's start the screen is of no more use */

/* The screen that he sets for this use: the one named, else the last one written before it, else
 * the first one after it; none when it is over. */
static int screen_job(const struct world *world, const struct job *use, body screener)
{
    int found = SIM_NO_TASK;
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool named = use->task->screen_task >= 0 && screener == use->task->other;
        if (task->kind == TASK_SCREEN && task->who == screener && task->other == use->task->who &&
            (!named || use->task->screen_task == (int)i) &&
            ((int)i < use->index || found == SIM_NO_TASK)) {
            found = (int)i;
        }
    }
    return found != SIM_NO_TASK && world->job[found].phase != PHASE_DONE ? found : SIM_NO_TASK;
}

/* Is the screener's part done, as far as this use goes? */
static bool stands(const struct world *world, const struct job *use, body screener)
{
    const struct screen *screen = &world->screen[screener];
    int job = screen_job(world, use, screener);
    if (job == SIM_NO_TASK) {
        return true; /* one left standing from before, one slipped, or a standing post */
    }
    bool this_one = screen->live && screen->task == job;
    return this_one && screen->set && world->t >= screen->set_at + LEAVE - 1e-9;
}

bool use_has_ball(const struct world *world, const struct task *task)
{
    for (const char *need = verb_row(task->verb)->needs; *need; need++) {
        if (*need == 'B' && !ball_is_held(world, task->who)) {
            return false;
        }
    }
    return true;
}

static bool use_ready(struct world *world, struct job *job)
{
    const struct task *task = job->task;
    if (!use_has_ball(world, task)) {
        return false;
    }
    if (task->early) { /* he does not wait for the screen, only for its screener to be on the way */
        int screen = screen_job(world, job, task->other);
        return screen == SIM_NO_TASK || world->job[screen].phase != PHASE_WAITING;
    }
    return stands(world, job, task->other) &&
           (task->other2 >= BODY_COUNT || stands(world, job, task->other2));
}

/* The ball is kept from the screen, and he uses it. */
static bool is_iced(const struct world *world, const struct task *task)
{
    return ball_is_held(world, task->who) && task->shape != SHAPE_BACK &&
           guard_coverage(world, task->who, task->other).guard == STRATEGY_ICE;
}

static void use_start(struct world *world, struct job *job)
{
    const struct task *task = job->task;
    struct route route;
    struct vec2 goal = move_goal(world, task);
    bool loops = use_goes_away(world, task, goal);
    job->away = task->shape == SHAPE_BACK || loops;
    if (is_iced(world, task)) {
        trouble_ice(world, job);
    } else if (loops) {
        trouble_away(world, job);
    }
    if (use_doubles_back(world, task, goal)) {
        trouble_order(world, job);
    }
    double run_out = plan_use(world, task, goal, &route);
    move_along(world, job, &route, run_out);
    job->shoulder = route.has_shoulder
                        ? path_nearest(&world->agent[task->who].course.path, route.shoulder, 0)
                        : -1;
    job->least = 1e9;
    see_later(world, world->level->reaction);     /* by who follows him, */
    see_later(world, 2 * world->level->reaction); /* and by who may change men */
    job->with_ball = ball_is_held(world, task->who);
    body screeners[2] = {task->other, task->other2};
    for (int i = 0; i < 2; i++) {
        if (screeners[i] < BODY_COUNT) {
            world->screen[screeners[i]].left = true;
            world->screen[screeners[i]].left_at = world->t;
            world->screen[screeners[i]].refused = job->away;
        }
    }
}

/* Not the next one that he sets for him: he may be on the way to that already. */
static void clear(struct world *world, body screener, const struct job *use)
{
    struct screen *screen = &world->screen[screener];
    int job = screen_job(world, use, screener);
    bool this_one = screen->task == SIM_NO_TASK || screen->task == job || screen->left;
    if (screen->user == use->task->who && this_one && !screen->cleared) {
        screen->cleared = true;
        world->news = true;
        screen->clear_at = world->t;
    }
}

void use_let_go(struct world *world, const struct job *job)
{
    body screeners[2] = {job->task->other, job->task->other2};
    for (int i = 0; i < 2; i++) {
        if (screeners[i] < BODY_COUNT && world->screen[screeners[i]].left) {
            clear(world, screeners[i], job);
        }
    }
}

static bool is_past(const struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    if (job->away) {
        return world->t >= job->begun + BEHIND_CLEAR;
    }
    const struct agent *agent = &world->agent[task->who];
    return job->shoulder >= 0 && motion_along(&agent->course, agent->m.at) > job->shoulder + CLEAR;
}

static bool use_due(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    bool two = task->other2 < BODY_COUNT && !world->screen[task->other2].cleared;
    bool uncleared = !world->screen[task->other].cleared || two;
    return move_due(world, job) || (uncleared && is_past(world, job));
}

static bool use_tick(struct world *world, struct job *job)
{
    const struct task *task = job->task;
    double far = vec2_distance(world->agent[task->who].m.at, world->agent[task->other].m.at);
    bool arrived = move_tick(world, job);
    if (!world->screen[task->other].cleared) {
        job->least = real_min(job->least, far);
    }
    if (arrived || is_past(world, job)) {
        clear(world, task->other, job);
        if (task->other2 < BODY_COUNT) {
            clear(world, task->other2, job);
        }
    }
    if (arrived) {
        bool by_shoulder = job->shoulder >= 0;
        world_record(world, job->index)->gap =
            by_shoulder ? real_max(0, job->least - MOTION_BODY) : -1;
    }
    return arrived;
}

static int use_waits_for(struct world *world, const struct job *job)
{
    return screen_job(world, job, job->task->other);
}

const struct task_class task_use = {use_ready, use_start, use_tick, use_due, use_waits_for, true};
