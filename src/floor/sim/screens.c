/* SPDX-License-Identifier: MIT */
/* screens: what is known of the screens of a step: which one a user uses, where its user is to go,
 * when the screener will be there. */
#include "floor/sim/world.h"

#include "base/real.h"

#define LATER 99.0      /* s: not on the way yet */
#define KEEP_CARRIED .3 /* s a screen of an earlier step stands after it has been used */

int screen_task_for(struct world *world, body user)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        bool set = world->segment->record[i].time[MOMENT_SET] != TIME_NEVER;
        if (job->task->kind == TASK_SCREEN && job->task->other == user &&
            job->phase != PHASE_DONE && !set) {
            return (int)i;
        }
    }
    return SIM_NO_TASK;
}

bool screen_setup_pending(struct world *world, body user)
{
    const struct agent *agent = &world->agent[user];
    for (size_t i = agent->head; i < agent->queued; i++) {
        const struct task *task = world->job[agent->queue[i]].task;
        if (task->kind == TASK_USE) {
            return false;
        }
        if (task->kind == TASK_MOVE && task->shape == SHAPE_SETUP) {
            return true;
        }
    }
    return false;
}

double screen_eta(struct world *world, int task)
{
    const struct job *job = &world->job[task];
    if (job->phase != PHASE_ACTIVE) {
        return LATER;
    }
    const struct screen *screen = &world->screen[job->task->who];
    double far = vec2_distance(world->agent[job->task->who].m.at, screen->spot);
    return far / (.6 * world->level->sprint);
}

static bool is_use_of(const struct task *task, body screener, body user)
{
    return task->kind == TASK_USE && task->who == user &&
           (task->other == screener || task->other2 == screener);
}

static const struct task *first_use(const struct step *step, body screener, body user)
{
    for (size_t i = 0; i < step->tasks.count; i++) {
        if (is_use_of(&step->tasks.at[i], screener, user)) {
            return &step->tasks.at[i];
        }
    }
    for (size_t b = 0; b < step->branches.count; b++) {
        const struct branch *branch = &step->branches.at[b];
        for (size_t i = 0; i < branch->tasks.count; i++) {
            if (is_use_of(&branch->tasks.at[i], screener, user)) {
                return &branch->tasks.at[i];
            }
        }
    }
    return NULL;
}

/* The user's next run of this way through the step, when nobody says that he uses the screen. */
static const struct task *next_run(const struct world *world, body user)
{
    const struct agent *agent = &world->agent[user];
    for (size_t i = agent->head; i < agent->queued; i++) {
        const struct task *task = world->job[agent->queue[i]].task;
        if (task->kind == TASK_MOVE && task->shape != SHAPE_SETUP) {
            return task;
        }
    }
    return NULL;
}

/* The screener does not know what the user will do: the first use written, also of the next step.
 */
struct vec2 screen_exit(struct world *world, body screener, body user)
{
    const struct task *use = first_use(world->step, screener, user);
    const struct step *next = border_next(world);
    if (!use) {
        use = next_run(world, user);
    }
    if (!use && next) {
        use = first_use(next, screener, user);
    }
    if (use) {
        return move_goal(world, use);
    }
    struct vec2 at = world->agent[user].m.at, ball = ball_place(world);
    return vec2_distance(at, ball) > 1 ? vec2_mix(at, ball, .5) : vec2_of(0, 0);
}

void screen_watch(struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        struct screen *screen = &world->screen[b];
        bool over = screen->live && screen->task == SIM_NO_TASK && screen->cleared &&
                    world->t > screen->clear_at + KEEP_CARRIED;
        if (over) {
            screen->live = false;
            world->agent[b].anchored = false;
        }
    }
}
