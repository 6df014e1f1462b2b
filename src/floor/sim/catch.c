/* SPDX-License-Identifier: MIT */
/* catch: whom a throw meets, and whether he is there when it comes. A catch is tested, not assumed:
 * who is not there goes to fetch the ball, and it is said how far off he was. */
#include "floor/sim/world.h"

#include "base/real.h"

#define ARM .44   /* of a player's height: shoulder to fingers (Drillis & Contini 1966) */
#define LUNGE .25 /* m: a lean toward the ball (ours) */
#define COMES .25 /* m from the ball's end at which a receiver who stands comes to it */

double catch_reach(const struct world *world)
{
    return ARM * world->level->height + LUNGE;
}

/* The movement or screen that the pass has to meet: the one on, else the last one written before
 * the pass. */
struct job *ball_receiver_job(struct world *world, body receiver, int pass)
{
    struct agent *agent = &world->agent[receiver];
    struct job *found = NULL;
    for (size_t i = agent->head; i < agent->queued; i++) {
        struct job *job = &world->job[agent->queue[i]];
        enum task_kind kind = job->task->kind;
        bool runs = kind == TASK_MOVE || kind == TASK_USE || kind == TASK_SCREEN;
        if (!runs) {
            if (kind == TASK_CARRY || task_is_throw(job->task)) {
                break; /* with the ball: after this catch, or another one */
            }
            continue;
        }
        if (job->index < pass || (job->phase == PHASE_ACTIVE && !found)) {
            found = job;
        } else if (i == agent->head && !found && queue_depends(world, job->index, pass, 6)) {
            found = job; /* begins with the pass */
        }
    }
    return found;
}

static void say_missed(struct world *world, int task, double miss)
{
    const struct task *pass = world->job[task].task;
    const char *far = said_far(world, miss);
    const char *who = said_who(world, pass->other);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_MISSED, pass->span,
                 "%s is %s from the ball when the pass comes, and cannot catch it", who, far);
    diag_help(world->diags, diag, "let the pass wait for %s, or bring %s there sooner", who, who);
}

void catch_take(struct world *world, body by)
{
    int task = world->ball.task;
    ball_give(world, by);
    if (task < 0) {
        return;
    }
    world_record(world, task)->to = world->agent[by].m.at;
    world_mark(world, task, MOMENT_CAUGHT);
    world->job[task].complete = true;
}

void catch_tick(struct world *world)
{
    struct ball *ball = &world->ball;
    struct agent *target = &world->agent[ball->target];
    world->quiet = 0;
    if (!target->going && vec2_distance(target->m.at, ball->end) > COMES) {
        target->coming = true;
        target->come_to = ball->end;
    }
    if (world->t < ball->to - 1e-9) {
        return;
    }
    double miss = vec2_distance(target->m.at, ball->end);
    world_record(world, ball->task)->miss = miss;
    if (miss <= catch_reach(world)) {
        catch_take(world, ball->target);
        return;
    }
    say_missed(world, ball->task, miss);
    ball_drop(world, ball->target);
}
