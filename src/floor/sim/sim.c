/* SPDX-License-Identifier: MIT */
/* sim: the steps of a play in turn, every branch of a step from the same start. */
#include "floor/sim/sim.h"

#include "base/limits.h"
#include "base/real.h"
#include "floor/sim/world.h"

struct chain { /* a segment with how everybody stood at its end */
    struct segment *segment;
    struct stand *end;
};

void world_position(const struct world *world, struct vec2 position[BODY_COUNT])
{
    for (int b = 0; b < BODY_COUNT; b++) {
        position[b] = world->agent[b].m.at;
    }
}

struct tie_side world_tie(const struct world *world)
{
    return (struct tie_side){ball_place(world), world->play->mirrored ? -1 : 1};
}

struct task_record *world_record(struct world *world, int task)
{
    return &world->segment->record[task];
}

void world_mark(struct world *world, int task, enum moment moment)
{
    double *time = &world->segment->record[task].time[moment];
    if (*time == TIME_NEVER) {
        *time = world->t;
        world->quiet = 0;
        world->news = true;
    }
}

struct mover world_soon(const struct world *world, const struct agent *agent)
{
    return (struct mover){vec2_along(agent->m.at, agent->m.v, world->lead), agent->m.v};
}

bool world_beat(const struct world *world, int times)
{
    return world->fresh && world->tick * times % world->rate == 0;
}

/* ---- the first stand ---- */

static body man_of(const struct play *play, body defender)
{
    body man = play->guards[defender];
    bool given = man < BODY_COACH && play->start[man].on_floor;
    if (given || play->zone != ZONE_NONE) {
        return given ? man : (body)BODY_NONE;
    }
    man = body_attacker(body_number(defender));
    return man < BODY_COACH && play->start[man].on_floor ? man : (body)BODY_NONE;
}

static void first_stand(const struct play *play, struct stand *stand)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        stand->here[b] = play->start[b].on_floor;
        stand->m[b].at = play->start[b].at;
        stand->guards[b] = BODY_NONE;
        stand->face[b] = vec2_of(0, -1);
    }
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        stand->guards[b] = man_of(play, (body)b);
        stand->here[b] |= stand->guards[b] != BODY_NONE; /* a shadow, when it is not in the play */
    }
    stand->ball.state = play->ball < BODY_COUNT ? HELD : GONE;
    stand->ball.holder = play->ball;
    stand->ball.task = SIM_NO_TASK;
}

/* Is this defender drawn and run into, or does he only serve the checks? */
static bool is_shadow(const struct play *play, int defender)
{
    return play->defense == DEFENSE_NONE && !play->start[defender].on_floor;
}

/* Defenders who were not placed stand by the man rules, clear of everybody's body. */
static void place_defenders(struct world *world)
{
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        bool placed = world->play->start[b].on_floor && world->play->start[b].placed;
        bool ruled = world->guards[b] != BODY_NONE || guard_has_area(world, (body)b);
        if (agent->here && !placed && ruled) {
            agent->m.at = guard_start(world, (body)b);
        }
    }
    for (int pass = 0; pass < 12; pass++) {
        for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
            for (int other = 0; other < BODY_COUNT; other++) {
                struct agent *a = &world->agent[b], *o = &world->agent[other];
                double far = vec2_distance(a->m.at, o->m.at), least = 2 * MOTION_BODY + .02;
                if (other != b && a->here && o->here && far < least && far > 1e-9) {
                    a->m.at =
                        vec2_along(a->m.at, vec2_unit(vec2_sub(a->m.at, o->m.at)), least - far);
                }
            }
        }
    }
}

/* ---- one segment ---- */

static void take_stand(struct world *world, const struct stand *stand)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        *agent = (struct agent){.here = stand->here[b],
                                .m = stand->m[b],
                                .face = stand->face[b],
                                .anchored = stand->anchored[b],
                                .dodged = BODY_NONE};
        agent->m.v = vec2_of(0, 0);
        agent->gait = motion_gait(world->level, EFFORT_RUN, false);
        agent->outside =
            agent->here && b < BODY_COACH && !court_inside(world->court, agent->m.at, 0);
        agent->defends = body_is_defender((body)b);
        agent->shadow = body_is_defender((body)b) && is_shadow(world->play, b);
        world->screen[b] = stand->screen[b];
        world->screen[b].task = SIM_NO_TASK;
        world->screen[b].left = false;
        world->guards[b] = world->guards_first[b] = stand->guards[b];
        world->guarded[b] = BODY_NONE;
    }
    for (int b = 0; b < BODY_COUNT; b++) {
        if (world->agent[b].here) {
            world->present[world->bodies++] = (body)b;
        }
    }
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (world->agent[b].here && world->guards[b] < BODY_COUNT &&
            world->guarded[world->guards[b]] == BODY_NONE) {
            world->guarded[world->guards[b]] = (body)b;
        }
    }
    ball_take(world, &stand->ball);
}

static void leave_stand(const struct world *world, struct stand *stand)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        const struct agent *agent = &world->agent[b];
        const struct screen *screen = &world->screen[b];
        stand->m[b] = agent->m;
        stand->face[b] = agent->face;
        stand->here[b] = agent->here;
        stand->guards[b] = world->guards[b];
        bool stands = screen->live && screen->set && !screen->cleared;
        stand->anchored[b] = stands;
        stand->screen[b] = stands ? *screen : (struct screen){.defender = BODY_NONE};
    }
    stand->ball = ball_leave(world);
}

static void queue_up(struct world *world)
{
    world->jobs = step_task_count(world->step, world->branch);
    world->job = arena_array(world->arena, struct job, world->jobs);
    world->segment->tasks = world->jobs;
    world->segment->record = arena_array(world->arena, struct task_record, world->jobs);
    for (int b = 0; b < BODY_COUNT; b++) {
        world->agent[b].queue = arena_array(world->arena, int, world->jobs);
    }
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = step_task(world->step, world->branch, i);
        struct agent *agent = &world->agent[task->who];
        struct task_record *record = &world->segment->record[i];
        world->job[i] =
            (struct job){.task = task, .index = (int)i, .head_since = -1, .shoulder = -1};
        agent->queue[agent->queued++] = (int)i;
        for (int m = 0; m < MOMENT_COUNT; m++) {
            record->time[m] = TIME_NEVER;
        }
        record->from = record->to = agent->m.at;
        record->defender = BODY_NONE;
        record->gap = -1;
        record->miss = -1;
    }
}

static struct world *open_world(struct arena *arena, const struct sources *sources,
                                const struct play *play, struct diags *diags,
                                const struct sim_options *options)
{
    struct world *world = arena_new(arena, struct world);
    world->arena = arena;
    world->sources = sources;
    world->diags = diags;
    world->play = play;
    world->court = play->court;
    world->level = play->speed;
    world->options = options;
    world->rate = options->rate;
    world->dt = 1.0 / options->rate;
    world->past_size = (long)(SIM_PAST * options->rate);
    world->past = arena_array(arena, struct stance, (size_t)world->past_size);
    world->helper = world->helped = BODY_NONE;
    world->pick = (struct pick){.task = SIM_NO_TASK, .tagger = BODY_NONE};
    return world;
}

static struct chain run_segment(struct arena *arena, const struct sources *sources,
                                const struct play *play, struct diags *diags, int step, int branch,
                                const struct chain *before, const struct sim_options *options)
{
    struct world *world = open_world(arena, sources, play, diags, options);
    struct stand *stand = before ? before->end : arena_new(arena, struct stand);
    if (!before) {
        first_stand(play, stand);
    }
    world->step = &play->steps.at[step];
    world->step_index = step;
    world->branch = branch;
    world->segment = arena_new(arena, struct segment);
    world->segment->play = play;
    world->segment->step = step;
    world->segment->branch = branch;
    take_stand(world, stand);
    queue_up(world);
    if (!before) {
        place_defenders(world);
    }
    duty_clear(world);
    zone_start(world);
    duty_pick_up(world);
    duty_suppose(world);
    deeds_list(world);
    clock_run(world);
    struct segment *segment = world->segment;
    segment->ran = !world->failed;
    segment->before = before ? before->segment : NULL;
    segment->time_before = before ? before->segment->time_before + before->segment->duration : 0;
    struct chain chain = {segment, arena_new(arena, struct stand)};
    leave_stand(world, chain.end);
    return chain;
}

/* ---- the play ---- */

/* Which branch of `step` the next step goes on from; -1: it has none. */
static int goes_on_from(const struct play *play, size_t step)
{
    const struct step *now = &play->steps.at[step];
    if (now->branches.count == 0) {
        return -1;
    }
    if (step + 1 < play->steps.count) {
        int after = play->steps.at[step + 1].after_branch;
        if (after >= 0 && (size_t)after < now->branches.count) {
            return after;
        }
    }
    for (size_t b = 0; b < now->branches.count; b++) {
        if (now->branches.at[b].continues) {
            return (int)b;
        }
    }
    return 0;
}

static const struct sim_options as_ever = {.rate = SIM_RATE};

struct run *sim_run(struct arena *arena, const struct sources *sources, const struct play *play,
                    struct diags *diags)
{
    return sim_run_with(arena, sources, play, diags, &as_ever);
}

struct run *sim_run_with(struct arena *arena, const struct sources *sources,
                         const struct play *play, struct diags *diags,
                         const struct sim_options *options)
{
    struct run *run = arena_new(arena, struct run);
    struct chain before = {0};
    struct diags echo; /* what goes wrong after a step that failed is only its echo */
    diags_init(&echo, arena);
    bool failed = false;
    run->play = play;
    for (size_t s = 0; s < play->steps.count; s++) {
        int on = goes_on_from(play, s), branches = (int)play->steps.at[s].branches.count;
        struct chain next = {0};
        for (int b = branches ? 0 : -1; b < branches; b++) {
            struct chain chain = run_segment(arena, sources, play, failed ? &echo : diags, (int)s,
                                             b, before.segment ? &before : NULL, options);
            VEC_PUSH(arena, &run->segments, chain.segment);
            chain.segment->main = b == on;
            if (b == on) {
                next = chain;
            }
        }
        before = next;
        failed |= next.segment && !next.segment->ran;
    }
    return run;
}
