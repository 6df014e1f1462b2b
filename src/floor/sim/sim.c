/* SPDX-License-Identifier: MIT */
/* sim: the steps of a play in turn, every branch of a step from the same start. */
#include "floor/sim/sim.h"

#include "base/limits.h"
#include "base/real.h"
#include "floor/sim/world.h"

struct chain { /* a segment, and whether it or one on the way to it failed */
    struct segment *segment;
    bool failed;
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
    return (struct mover){.at = vec2_along(agent->m.at, agent->m.v, world->lead), .v = agent->m.v};
}

bool world_beat(const struct world *world, int times)
{
    return world->fresh && world->tick * times % world->rate == 0;
}

double world_zero(const struct world *world)
{
    return (double)world->origin / world->rate;
}

bool world_is_written(const struct world *world, struct span span)
{
    return span.source < world->sources->all.count;
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

static void first_stand(struct world *world)
{
    const struct play *play = world->play;
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        body man = body_is_defender((body)b) ? man_of(play, (body)b) : (body)BODY_NONE;
        agent->defends = body_is_defender((body)b);
        agent->here =
            play->start[b].on_floor || man != BODY_NONE; /* a shadow, if not in the play */
        agent->shadow = agent->defends && is_shadow(play, b);
        agent->m.at = play->start[b].at;
        agent->face = vec2_of(0, -1);
        agent->turned = -1;
        agent->dodged = BODY_NONE;
        agent->level = world->level;
        agent->gait = motion_gait(agent->level, EFFORT_RUN, false);
        agent->outside =
            agent->here && b < BODY_COACH && !court_inside(world->court, agent->m.at, 0);
        world->screen[b] = (struct screen){.task = SIM_NO_TASK, .defender = BODY_NONE};
        world->guards[b] = world->guards_first[b] = man;
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
    struct ball ball = {.state = play->ball < BODY_COUNT ? HELD : GONE, .holder = play->ball};
    ball_take(world, &ball);
}

static struct world *open_world(struct arena *arena, const struct sources *sources,
                                const struct play *play, const struct sim_options *options)
{
    struct world *world = arena_new(arena, struct world);
    world->arena = arena;
    world->sources = sources;
    world->play = play;
    world->court = play->court;
    world->level = play->speed;
    world->options = options;
    world->rate = options->rate;
    world->dt = 1.0 / options->rate;
    world->helper = world->helped = world->second = world->driver = BODY_NONE;
    world->pick = (struct pick){.task = SIM_NO_TASK, .tagger = BODY_NONE};
    return world;
}

/* The play's first step, as everybody stands before it. */
static void set_up(struct world *first, int step, int branch)
{
    first->step = &first->play->steps.at[step];
    first->step_index = step;
    first->branch = branch;
    first->segment = arena_new(first->arena, struct segment);
    first->segment->play = first->play;
    first->segment->step = step;
    first->segment->branch = branch;
    first_stand(first);
    border_first(first);
    place_defenders(first);
    duty_clear(first);
    zone_start(first);
}

/* What the step begins from: the end of the way before it, or the moment it is tied to. */
static struct world *world_after(struct arena *arena, const struct segment *before, int step,
                                 int branch)
{
    const struct world *from = border_to(before->end, step);
    return border_cross(arena, from, from == before->end, step, branch);
}

/* One way through a step, and what it is run from: `before`, or NULL. */
struct attempt {
    struct arena *arena;
    const struct sources *sources;
    const struct play *play;
    const struct sim_options *options;
    struct segment *before;
    int step, branch;
};

/* As everybody stands when the step begins. */
static struct world *world_for(const struct attempt *attempt)
{
    struct world *world;
    if (attempt->before) {
        world = world_after(attempt->arena, attempt->before, attempt->step, attempt->branch);
    } else {
        world = open_world(attempt->arena, attempt->sources, attempt->play, attempt->options);
        set_up(world, attempt->step, attempt->branch);
    }
    world->lacked = NULL;
    world->supposed = NULL;
    return world;
}

static struct segment *run_segment(struct world *world, struct segment *before)
{
    struct segment *segment = world->segment;
    duty_pick_up(world);
    reads_look(world);
    duty_suppose(world);
    deeds_list(world);
    border_open(world);
    clock_run(world);
    border_close(world);
    reads_end(world);
    segment->ran = !world->failed;
    segment->before = before;
    segment->begins = before ? world_zero(world) - world_zero(before->end) : 0;
    segment->end = world;
    segment->time_before = before ? before->time_before + segment->begins : 0;
    return segment;
}

/* ---- what the defense does not do by itself ---- */

static struct segment *run_attempt(const struct attempt *attempt, struct diags *diags,
                                   const deed_list *supposed)
{
    struct world *world = world_for(attempt);
    world->diags = diags;
    world->supposed = supposed;
    return run_segment(world, attempt->before);
}

static void say_supposed(struct diags *diags, const deed_list *supposed)
{
    for (size_t i = 0; i < supposed->count; i++) {
        const struct wait *deed = supposed->at[i];
        struct strbuf does;
        strbuf_init(&does, diags->arena);
        strbuf_print(&does, "x%d %s", body_number(deed->who), verb_row(deed->verb)->words);
        if (body_is_attacker(deed->other)) {
            strbuf_print(&does, " %d", body_number(deed->other));
        }
        struct str told = strbuf_str(&does);
        struct diag *diag = diag_add(diags, DIAG_RUN_SUPPOSED, deed->span,
                                     "it is taken as given that %.*s: the defense does not do so "
                                     "here by itself",
                                     STR_ARG(told));
        diag_help(diags, diag, "`if %.*s, ...` makes a read of it, with a picture of its own",
                  STR_ARG(told));
    }
}

/* The same deed may be waited for by a sentence that goes on from the step before, and is copied.
 */
static bool is_supposed(const deed_list *supposed, const struct wait *deed)
{
    for (size_t i = 0; i < supposed->count; i++) {
        const struct wait *one = supposed->at[i];
        if (one->who == deed->who && one->verb == deed->verb && one->other == deed->other) {
            return true;
        }
    }
    return false;
}

static void hear(struct diags *diags, const struct diags *heard)
{
    for (size_t i = 0; i < heard->all.count; i++) {
        diag_again(diags, &heard->all.at[i]);
    }
}

/* A sentence that waits for what a defender does by no rule is run once more with him doing it, as
 * a read would have him. Where that does not help either, it is as it was. */
static struct segment *run_as_said(const struct attempt *attempt, struct diags *diags)
{
    struct diags first;
    diags_init(&first, diags->arena); /* what is heard outlives the run */
    struct segment *segment = run_attempt(attempt, &first, NULL), *last = segment;
    deed_list *supposed = arena_new(attempt->arena, deed_list);
    while (last->end->lacked && !is_supposed(supposed, last->end->lacked)) {
        struct diags heard;
        diags_init(&heard, diags->arena);
        VEC_PUSH(attempt->arena, supposed, last->end->lacked);
        last = run_attempt(attempt, &heard, supposed);
        if (last->ran) {
            hear(diags, &heard);
            say_supposed(diags, supposed);
            return last;
        }
    }
    hear(diags, &first);
    return segment;
}

/* ---- the play ---- */

/* Which branch of `step` the next step goes on from; -1: it has none. */
static int goes_on_from(const struct play *play, size_t step)
{
    const struct step *now = &play->steps.at[step];
    if (now->branches.count == 0) {
        return -1;
    }
    if (step + 1 < play->steps.count && play->steps.at[step + 1].after_step == (int)step) {
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

const struct segment *sim_again(struct arena *arena, const struct segment *segment,
                                const struct level *levels)
{
    struct diags unsaid;
    diags_init(&unsaid, arena);
    const struct attempt attempt = {arena,          segment->end->sources, segment->play,
                                    &as_ever,       segment->before,       segment->step,
                                    segment->branch};
    struct world *world = world_for(&attempt);
    world->diags = &unsaid;
    world->options = &as_ever;
    world->supposed = segment->end->supposed;
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        agent->level = &levels[b];
        if (!agent->going) {
            agent->gait = motion_gait(agent->level, EFFORT_RUN, false);
        }
    }
    return run_segment(world, segment->before);
}

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
    struct chain **ends = arena_array(arena, struct chain *, play->steps.count + 1);
    struct diags echo; /* what goes wrong after a step that failed is only its echo */
    diags_init(&echo, arena);
    run->play = play;
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        int on = goes_on_from(play, s), branches = (int)step->branches.count;
        const struct chain *before = NULL;
        if (s > 0) {
            before = &ends[step->after_step][step->after_branch < 0 ? 0 : step->after_branch];
        }
        ends[s] = arena_array(arena, struct chain, step->branches.count + 1);
        for (int b = branches ? 0 : -1; b < branches; b++) {
            struct segment *from = before ? before->segment : NULL;
            bool failed = before && before->failed;
            struct attempt attempt = {arena, sources, play, options, from, (int)s, b};
            struct segment *segment = run_as_said(&attempt, failed ? &echo : diags);
            VEC_PUSH(arena, &run->segments, segment);
            segment->main = b == on;
            ends[s][b < 0 ? 0 : b] = (struct chain){segment, failed || !segment->ran};
        }
    }
    return run;
}
