/* SPDX-License-Identifier: MIT */
/* record: writes down where everybody was, which way he faced, and who had the ball. */
#include "floor/sim/world.h"

#include "base/real.h"

#define RUNNING .9 /* m/s: faster than that one looks where one runs */

static void turn_face(const struct world *world, body b, struct agent *agent)
{
    struct vec2 to = vec2_sub(ball_place(world), agent->m.at);
    double speed = vec2_length(agent->m.v);
    if ((agent->anchored && !agent->seals) ||
        (!body_is_defender(b) && ball_is_held(world, b) && speed < RUNNING)) {
        return; /* a set screener, a passer: as his task says */
    }
    bool catching = world->ball.state == IN_FLIGHT && world->ball.target == b;
    if (speed > RUNNING && !catching) {
        to = agent->m.v;
    }
    if (vec2_length(to) > 1e-6) {
        agent->face = vec2_unit(to);
    }
}

/* The angle, worked out anew only when he has turned: mostly he stands. */
static float facing(struct agent *agent)
{
    if (agent->face.x != agent->faced.x || agent->face.y != agent->faced.y) {
        agent->faced = agent->face;
        agent->facing = (float)real_atan2(agent->face.y, agent->face.x);
    }
    return agent->facing;
}

/* A step that begins inside a tick is written down from the start of the tick, a 120th, on. */
void record_sample(struct world *world)
{
    double begun = world->t - world_zero(world);
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        if (agent->here) {
            double inside = world->samples[b].count ? 0 : begun;
            struct sample sample = {vec2_along(agent->m.at, agent->m.v, -inside), agent->m.v};
            turn_face(world, (body)b, agent);
            VEC_PUSH(world->arena, &world->samples[b], sample);
            VEC_PUSH(world->arena, &world->facing[b], facing(agent));
        }
    }
}

void record_finish(struct world *world)
{
    struct segment *segment = world->segment;
    double zero = world_zero(world);
    segment->duration = world->t - zero;
    segment->tasks = world->jobs - world->base;
    for (int b = 0; b < BODY_COUNT; b++) {
        struct track *track = &segment->track[b];
        track->on_floor = world->agent[b].here && !world->agent[b].shadow;
        track->sample = world->samples[b].at;
        track->facing = world->facing[b].at;
        if (world->samples[b].count) {
            segment->samples = world->samples[b].count;
        }
        segment->guards[b] = world->guards[b];
    }
    for (size_t i = 0; i < world->jobs; i++) {
        struct job *job = &world->job[i];
        struct task_record *record = &segment->record[i];
        if (record->time[MOMENT_STARTED] != TIME_NEVER && !job->complete) {
            record->to = world->agent[job->task->who].m.at;
        }
        const struct screen *screen = &world->screen[job->task->who];
        for (int m = 0; m < MOMENT_COUNT; m++) {
            record->time[m] -= record->time[m] == TIME_NEVER ? 0 : zero;
        }
        record->carried = !job->complete || (job->task->kind == TASK_SCREEN && screen->live &&
                                             screen->task == job->index && !screen->cleared);
    }
    segment->record += world->base; /* what goes on from the step before is told there */
    record_ball_end(world);
}
