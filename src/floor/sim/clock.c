/* SPDX-License-Identifier: MIT */
/* clock: the loop: everybody decides, everybody moves, bodies meet, the ball flies; tick
 * by tick until everything that was said is done and the defenders stand. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define STIRRING .25     /* m/s: slower than that nothing is going on */
#define STUCK 1.2        /* s of that while there is something left to do */
#define SETTLE_LEAST .25 /* s after the last task, so that the defenders stand right */
#define SETTLE_MOST 1.2
#define STALL_WANTS .4 /* m/s wanted, */
#define STALL_GETS .3  /* and not reached */
#define STALL_TIME .35 /* for so long */
#define STALL_LETS .8  /* s in which team-mates step aside */
#define STANDS .35     /* m/s */

/* Who wants to go and cannot, in a crowd of his own side, is let through: people step aside. */
static void watch_stall(const struct world *world, struct agent *agent)
{
    bool stalls = vec2_length(agent->command) > STALL_WANTS && vec2_length(agent->m.v) < STALL_GETS;
    agent->stall = stalls ? agent->stall + world->dt : 0;
    if (agent->stall > STALL_TIME) {
        agent->let_through = world->t + STALL_LETS;
    }
}

static void move_all(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        if (!agent->here) {
            continue;
        }
        if (agent->anchored) {
            agent->m.v = vec2_of(0, 0);
            continue;
        }
        motion_advance(&agent->m, &agent->gait, agent->command, world->dt);
        if (!agent->defends) {
            watch_stall(world, agent);
        }
        if (agent->outside && court_inside(world->court, agent->m.at, .2)) {
            agent->outside = false;
        }
    }
}

static bool attackers_stir(const struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        if (world->agent[b].here && vec2_length(world->agent[b].m.v) > STIRRING) {
            return true;
        }
    }
    return false;
}

/* A tie to the clock, or some seconds after an event that has been, will end by itself. */
static bool clock_will_tell(struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        struct job *job = world->agent[b].here ? queue_head(world, (body)b) : NULL;
        for (size_t i = 0; job && i < job->task->waits.count; i++) {
            const struct wait *wait = &job->task->waits.at[i];
            if (wait->kind == WAIT_CLOCK && wait->delay > world->t) {
                return true;
            }
            if (wait->delay > 0 && wait->delay > world->quiet - STUCK) {
                return wait->kind != WAIT_TASK ||
                       world->segment->record[wait->task].time[wait->moment] != TIME_NEVER;
            }
        }
    }
    return false;
}

static bool everybody_stands(const struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        if (world->agent[b].here && vec2_length(world->agent[b].m.v) > STANDS) {
            return false;
        }
    }
    return true;
}

static bool is_over(struct world *world)
{
    if (!queue_all_done(world) || world->ball.state == IN_FLIGHT || world->ball.state == IN_SHOT) {
        world->settled = 0;
        return false;
    }
    world->settled += world->dt;
    bool whole = world_beat(world, SIM_SAMPLES); /* the last sample is the end */
    return whole && world->settled >= SETTLE_LEAST &&
           (everybody_stands(world) || world->settled > SETTLE_MOST);
}

static void show(const struct world *world)
{
    const struct sim_options *options = world->options;
    if (options->inside) {
        options->inside(options->watcher, world, true);
    }
    if (!options->watch) {
        return;
    }
    struct sim_tick tick = {.step = world->step_index, .branch = world->branch, .t = world->t};
    for (int b = 0; b < BODY_COUNT; b++) {
        tick.here[b] = world->agent[b].here;
        tick.at[b] = world->agent[b].m.at;
        tick.v[b] = world->agent[b].m.v;
    }
    options->watch(options->watcher, &tick);
}

static void one_tick(struct world *world)
{
    see_now(world);
    queue_tick(world);
    guard_tick(world);
    move_all(world);
    if (world->options->inside) {
        world->options->inside(world->options->watcher, world, false);
    }
    contact_tick(world);
    world->tick++;
    world->t = (double)world->tick / world->rate;
    ball_tick(world);
    screen_watch(world);
    world->quiet = attackers_stir(world) ? 0 : world->quiet + world->dt;
    if (world_beat(world, SIM_SAMPLES)) {
        record_sample(world);
    }
    show(world);
}

void clock_run(struct world *world)
{
    see_fill(world);
    record_ball(world);
    record_sample(world);
    show(world);
    while (!world->failed && !is_over(world)) {
        one_tick(world);
        if (world->quiet > STUCK && !queue_all_done(world) && !clock_will_tell(world)) {
            trouble_stuck(world);
        } else if (world->t > LIMIT_STEP_SECONDS) {
            trouble_long(world);
        }
    }
    while (!world_beat(world, SIM_SAMPLES)) { /* a failed one may stop between two samples */
        one_tick(world);
    }
    record_finish(world);
}
