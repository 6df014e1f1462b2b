/* SPDX-License-Identifier: MIT */
/* border: what goes on from one step to the next. The clock does not stop: the next world begins as
 * a copy of this one, at its end or, where a step is tied to something in the step before, at that
 * moment, with what is still going on as the first of its jobs. This one is run to its own end all
 * the same. Takes a world, gives the next. */
#include "floor/sim/world.h"

#include "base/real.h"

#define WALKS 1.2 /* m/s */
#define ABOUT .1  /* s: two who are there so close to each other both run on (ours) */
#define SURE .5   /* s with the ball in hand, before which a dribble may have to wait */

/* ---- the moment at which a step begins ---- */

static bool follows(const struct world *world, const struct step *step)
{
    return step->after_step == world->step_index &&
           (step->after_branch < 0 ? world->branch < 0 : step->after_branch == world->branch);
}

/* A wait among the tasks of the step, as one among the jobs of this world. */
static struct wait in_world(const struct world *world, struct wait wait)
{
    if (wait.kind == WAIT_TASK) {
        wait.task += (int)world->base;
    }
    return wait;
}

void border_open(struct world *world)
{
    for (size_t s = (size_t)world->step_index + 1; s < world->play->steps.count; s++) {
        const struct step *step = &world->play->steps.at[s];
        if (!follows(world, step) || step->begins.count == 0) {
            continue;
        }
        struct entry entry = {.step = (int)s};
        for (size_t i = 0; i < step->begins.count; i++) {
            VEC_PUSH(world->arena, &entry.waits, in_world(world, step->begins.at[i]));
        }
        VEC_PUSH(world->arena, &world->entries, entry);
    }
}

static bool is_met(struct world *world, const struct entry *entry)
{
    for (size_t i = 0; i < entry->waits.count; i++) {
        const struct wait *wait = &entry->waits.at[i];
        bool met =
            wait->kind == WAIT_DEED ? deed_holds(world, wait) : queue_wait_met(world, NULL, wait);
        if (!met) {
            return false;
        }
    }
    return true;
}

/* With nobody in it looking for one of the other. */
static struct world *copy_of(struct arena *arena, const struct world *world)
{
    struct world *copy = arena_new(arena, struct world);
    *copy = *world;
    copy->arena = arena;
    copy->segment = arena_new(arena, struct segment);
    for (int b = 0; b < BODY_COUNT; b++) {
        const struct agent *sought = world->agent[b].sought;
        copy->agent[b].sought = sought ? &copy->agent[sought - world->agent] : NULL;
    }
    return copy;
}

/* The moment itself, with its jobs and what was waited for as they are now. */
static struct world *snapshot(struct world *world)
{
    struct world *copy = copy_of(world->arena, world);
    copy->job = arena_array(world->arena, struct job, world->jobs);
    copy->segment->record = arena_array(world->arena, struct task_record, world->jobs);
    for (size_t i = 0; i < world->jobs; i++) {
        copy->job[i] = world->job[i];
        copy->segment->record[i] = world->segment->record[i];
    }
    copy->deeds.at = NULL;
    copy->deeds.count = copy->deeds.room = 0;
    for (size_t i = 0; i < world->deeds.count; i++) {
        VEC_PUSH(world->arena, &copy->deeds, world->deeds.at[i]);
    }
    return copy;
}

bool border_due(struct world *world)
{
    for (size_t i = 0; i < world->entries.count; i++) {
        if (!world->entries.at[i].at && is_met(world, &world->entries.at[i])) {
            return true;
        }
    }
    return false;
}

void border_watch(struct world *world)
{
    for (size_t i = 0; i < world->entries.count; i++) {
        struct entry *entry = &world->entries.at[i];
        if (!entry->at && is_met(world, entry)) {
            entry->early = world->t <= world_zero(world);
            entry->at = snapshot(world);
        }
    }
}

const struct world *border_to(const struct world *world, int step)
{
    for (size_t i = 0; i < world->entries.count; i++) {
        const struct entry *entry = &world->entries.at[i];
        if (entry->step == step && entry->at && !entry->early) {
            return entry->at;
        }
    }
    return world;
}

static void say_entry(const struct world *world, const struct entry *entry)
{
    const struct step *step = &world->play->steps.at[entry->step];
    struct span span = entry->waits.at[0].span;
    struct str words = source_text(world->sources, span);
    struct diag *diag;
    if (entry->early) {
        diag = diag_add(world->diags, DIAG_RUN_STEP_TIE, span,
                        "`%.*s` is so already as step %d begins, and step %d would begin with it",
                        STR_ARG(words), world->step->number, step->number);
    } else {
        diag = diag_add(world->diags, DIAG_RUN_STEP_TIE, span,
                        "step %d never begins: `%.*s` does not come about in step %d", step->number,
                        STR_ARG(words), world->step->number);
    }
    diag_help(world->diags, diag,
              "tie it to a sentence of step %d, or leave the tie out: it then begins when step %d "
              "is over",
              world->step->number, world->step->number);
}

void border_close(struct world *world)
{
    for (size_t i = 0; i < world->entries.count && !world->failed; i++) {
        const struct entry *entry = &world->entries.at[i];
        if (!entry->at || entry->early) {
            say_entry(world, entry);
        }
    }
}

/* ---- running through ---- */

const struct step *border_next(const struct world *world)
{
    for (size_t s = (size_t)world->step_index + 1; s < world->play->steps.count; s++) {
        if (follows(world, &world->play->steps.at[s])) {
            return &world->play->steps.at[s];
        }
    }
    return NULL;
}

/* His first sentence of the step, if it is the same on every way through it. */
static const struct task *first_of(const struct step *step, body who)
{
    for (size_t i = 0; i < step->tasks.count; i++) {
        if (step->tasks.at[i].who == who) {
            return &step->tasks.at[i];
        }
    }
    return NULL;
}

/* s until he is at the end of his way, as fast as he is now (ours: at least at a walk). */
static double left_to_go(const struct agent *agent)
{
    double left = real_max(0, agent->course.goal - agent->course.along);
    return left / real_max(WALKS, vec2_length(agent->m.v));
}

/* The step is over as soon as he is there: everybody else is done by then, and the ball is held. */
static bool is_last(struct world *world, body who)
{
    double mine = left_to_go(&world->agent[who]) + ABOUT;
    if (ball_is_under_way(world)) {
        return false;
    }
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        const struct agent *agent = &world->agent[job->task->who];
        bool runs = job->phase == PHASE_ACTIVE && agent->going &&
                    (job->task->kind == TASK_MOVE || job->task->kind == TASK_CARRY ||
                     job->task->kind == TASK_USE);
        if (!job->complete && job->task->who != who && !(runs && left_to_go(agent) <= mine)) {
            return false;
        }
    }
    return true;
}

/* The screen that he uses stands there already, and the step brings no other for him. */
static bool stands(const struct world *world, const struct step *next, const struct task *use,
                   body screener)
{
    const struct screen *screen = &world->screen[screener];
    for (size_t i = 0; i < next->tasks.count; i++) {
        const struct task *task = &next->tasks.at[i];
        if (task->kind == TASK_SCREEN && task->who == screener && task->other == use->who) {
            return false;
        }
    }
    return screen->live && screen->set && screen->user == use->who;
}

static bool uses_at_once(const struct world *world, const struct step *next,
                         const struct task *task)
{
    return task->kind == TASK_USE && use_has_ball(world, task) &&
           stands(world, next, task, task->other) &&
           (task->other2 >= BODY_COUNT || stands(world, next, task, task->other2));
}

static bool starts_at_once(const struct world *world, const struct step *next,
                           const struct task *task)
{
    bool plants = task->shape == SHAPE_V || task->shape == SHAPE_L || task->shape == SHAPE_BACK ||
                  task->shape == SHAPE_SETUP; /* begins with a step the other way */
    bool carries = task->kind == TASK_CARRY && ball_is_held(world, task->who) &&
                   world->t > world->ball.caught_at + SURE;
    return task->waits.count == 0 && !plants &&
           (task->kind == TASK_MOVE || carries || uses_at_once(world, next, task));
}

bool border_next_is_run(struct world *world, body who, struct vec2 *goal)
{
    const struct agent *agent = &world->agent[who];
    const struct step *next = border_next(world);
    const struct task *task = next && next->begins.count == 0 ? first_of(next, who) : NULL;
    if (agent->head + 1 < agent->queued || !task || !starts_at_once(world, next, task) ||
        !is_last(world, who)) {
        return false;
    }
    *goal = move_goal(world, task);
    return true;
}

/* ---- the next world ---- */

struct moved { /* from the jobs of the world before to those of this one; SIM_NO_TASK: over */
    const struct world *from;
    const struct world *world;
    int *to;
    bool over; /* nothing goes on */
};

static int moved_task(const struct moved *moved, int task)
{
    bool known = task >= 0 && (size_t)task < moved->from->jobs;
    return known ? moved->to[task] : SIM_NO_TASK;
}

/* A wait for what has been is one for the clock, which shows that time already or soon. */
static bool is_over(const struct moved *moved, struct wait *wait)
{
    double time = TIME_NEVER;
    if (wait->kind == WAIT_TASK) {
        time = moved->from->segment->record[wait->task].time[wait->moment];
    } else if (wait->kind == WAIT_DEED) {
        time = deed_time(moved->from, wait);
    } else if (wait->kind == WAIT_CLOCK) {
        time = world_zero(moved->from);
    }
    if (time == TIME_NEVER) {
        return false;
    }
    wait->kind = WAIT_CLOCK;
    wait->delay += time - world_zero(moved->world);
    return true;
}

/* False: it is no wait any more. */
static bool move_wait(const struct moved *moved, struct wait *wait)
{
    struct wait old = *wait;
    if (is_over(moved, wait)) {
        return true;
    }
    if (old.kind == WAIT_TASK) {
        wait->task = moved_task(moved, old.task);
        return wait->task != SIM_NO_TASK;
    }
    return true;
}

/* The task without its waits, which are then put in anew. */
static struct task *bare_copy(struct world *world, const struct task *old)
{
    struct task *task = arena_new(world->arena, struct task);
    *task = *old;
    task->waits.at = NULL;
    task->waits.count = task->waits.room = 0;
    return task;
}

/* The task of a job that goes on, with its waits among the jobs of the new world. */
static const struct task *moved_copy(struct world *world, const struct moved *moved,
                                     const struct task *old)
{
    struct task *task = bare_copy(world, old);
    for (size_t i = 0; i < old->waits.count; i++) {
        struct wait wait = old->waits.at[i];
        bool deed =
            wait.kind == WAIT_DEED && deed_time(moved->from, &old->waits.at[i]) != TIME_NEVER;
        if (!deed && move_wait(moved, &wait)) {
            VEC_PUSH(world->arena, &task->waits, wait);
        }
    }
    task->has_until = old->has_until && move_wait(moved, &task->until);
    task->screen_task = moved_task(moved, old->screen_task);
    return task;
}

/* The task of the new step, behind `base` jobs that go on. A wait for a sentence of the step before
 * is one for such a job, or it is over. */
static const struct task *shifted_copy(struct world *world, const struct moved *moved,
                                       const struct task *old)
{
    struct task *task = bare_copy(world, old);
    for (size_t i = 0; i < old->waits.count; i++) {
        struct wait wait = old->waits.at[i];
        bool keeps = true;
        if (wait.kind == WAIT_TASK && wait.before && moved->over) {
            keeps = false;
        } else if (wait.kind == WAIT_TASK && wait.before) {
            wait.task += (int)moved->from->base;
            keeps = move_wait(moved, &wait);
        } else {
            wait = in_world(world, wait);
        }
        if (keeps) {
            VEC_PUSH(world->arena, &task->waits, wait);
        }
    }
    if (task->has_until && task->until.kind == WAIT_TASK && task->until.before) {
        task->has_until = !moved->over;
        task->until.task += (int)moved->from->base;
        task->has_until = task->has_until && move_wait(moved, &task->until);
    } else if (task->has_until) {
        task->until = in_world(world, task->until);
    }
    task->screen_task = old->screen_task >= 0 ? old->screen_task + (int)world->base : -1;
    return task;
}

static void new_record(struct world *world, size_t index, const struct task *task)
{
    struct task_record *record = &world->segment->record[index];
    for (int m = 0; m < MOMENT_COUNT; m++) {
        record->time[m] = TIME_NEVER;
    }
    record->from = record->to = world->agent[task->who].m.at;
    record->defender = BODY_NONE;
    record->gap = -1;
    record->miss = -1;
    record->lane_by = BODY_NONE;
}

/* What goes on first, in its old order, then the sentences of the step. */
static void queue_up(struct world *world, const struct world *from, bool over)
{
    size_t own = step_task_count(world->step, world->branch), kept = 0;
    struct moved moved = {from, world, NULL, over};
    if (from) {
        moved.to = arena_array(world->arena, int, from->jobs + 1);
        for (size_t i = 0; i < from->jobs; i++) {
            moved.to[i] = !over && !from->job[i].complete ? (int)kept++ : SIM_NO_TASK;
        }
    }
    world->base = kept;
    world->jobs = kept + own;
    world->job = arena_array(world->arena, struct job, world->jobs);
    world->segment->record = arena_array(world->arena, struct task_record, world->jobs);
    for (int b = 0; b < BODY_COUNT; b++) {
        world->agent[b].queue = arena_array(world->arena, int, world->jobs);
        world->agent[b].queued = world->agent[b].head = 0;
    }
    for (size_t i = 0; from && i < from->jobs; i++) {
        if (moved.to[i] >= 0) {
            struct job *job = &world->job[moved.to[i]];
            *job = from->job[i];
            job->index = moved.to[i];
            job->task = moved_copy(world, &moved, from->job[i].task);
            world->segment->record[moved.to[i]] = from->segment->record[i];
        }
    }
    bool tied = from && world->step->begins.count > 0;
    for (size_t i = 0; i < own; i++) {
        const struct task *task = step_task(world->step, world->branch, i);
        world->job[kept + i] = (struct job){.task = tied ? shifted_copy(world, &moved, task) : task,
                                            .index = (int)(kept + i),
                                            .head_since = -1,
                                            .shoulder = -1};
        new_record(world, kept + i, task);
    }
    for (size_t i = 0; i < world->jobs; i++) {
        struct agent *agent = &world->agent[world->job[i].task->who];
        agent->queue[agent->queued++] = (int)i;
    }
    for (int b = 0; from && b < BODY_COUNT; b++) {
        world->screen[b].task = moved_task(&moved, world->screen[b].task);
        world->duty[b].task = moved_task(&moved, world->duty[b].task);
    }
    world->ball.task = from ? moved_task(&moved, world->ball.task) : SIM_NO_TASK;
    world->pick.task = from ? moved_task(&moved, world->pick.task) : SIM_NO_TASK;
}

/* What was said of the defenders ends with the step; who is on his way back to his man by rule goes
 * on. */
static void settle_duties(struct world *world)
{
    struct duty old[BODY_COUNT];
    for (int b = 0; b < BODY_COUNT; b++) {
        old[b] = world->duty[b];
    }
    duty_clear(world);
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (old[b].by_rule) {
            world->duty[b] = old[b];
        }
    }
}

/* All is over: everybody keeps his place, his way of going, what he has seen and thinks; a screen
 * that stands unused stands on. */
static void settle(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b], old = *agent;
        struct screen *screen = &world->screen[b];
        bool stands = screen->live && screen->set && !screen->cleared;
        if (!stands) {
            *screen = (struct screen){.defender = BODY_NONE};
        }
        *agent = (struct agent){.here = old.here,
                                .shadow = old.shadow,
                                .level = old.level,
                                .m = old.m,
                                .face = old.face,
                                .aim = old.aim,
                                .goes = old.goes,
                                .defends = old.defends,
                                .anchored = stands || (old.seals && old.anchored),
                                .seals = old.seals && old.anchored,
                                .dodged = BODY_NONE};
        agent->gait = motion_gait(agent->level, EFFORT_RUN, false);
        agent->outside =
            agent->here && b < BODY_COACH && !court_inside(world->court, agent->m.at, 0);
        screen->left = false;
    }
    struct ball ball = ball_leave(world);
    ball_take(world, &ball);
    world->pick = (struct pick){.task = SIM_NO_TASK, .tagger = BODY_NONE};
    settle_duties(world);
    zone_start(world);
}

/* It goes on in the middle of things. */
static void take_over(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        world->agent[b].has_helped = false;
    }
}

static void want_screens(struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        struct screen *screen = &world->screen[b];
        screen->wanted |= screen->live && screen->task != SIM_NO_TASK &&
                          screen_is_wanted(world, screen->task, (body)b, screen->user);
    }
}

struct world *border_cross(struct arena *arena, const struct world *from, bool over, int step,
                           int branch)
{
    struct world *world = copy_of(arena, from);
    world->step = &world->play->steps.at[step];
    world->step_index = step;
    world->branch = branch;
    long parts =
        from->rate > SIM_RATE ? from->rate / SIM_RATE : 1; /* at the same moment at every rate */
    world->origin = from->tick / parts * parts;
    world->segment->play = world->play;
    world->segment->step = step;
    world->segment->branch = branch;
    world->failed = false;
    world->quiet = 0;
    world->done = -1;
    for (int b = 0; b < BODY_COUNT; b++) {
        world->samples[b].at = NULL;
        world->samples[b].count = world->samples[b].room = 0;
        world->facing[b].at = NULL;
        world->facing[b].count = world->facing[b].room = 0;
        world->guards_first[b] = world->guards[b];
    }
    world->deeds.at = NULL;
    world->deeds.count = world->deeds.room = 0;
    world->entries.at = NULL;
    world->entries.count = world->entries.room = 0;
    if (over) {
        settle(world);
    } else {
        take_over(world);
    }
    queue_up(world, from, over);
    if (!over) {
        want_screens(world);
    }
    return world;
}

void border_first(struct world *world)
{
    queue_up(world, NULL, true);
}
