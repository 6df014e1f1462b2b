/* SPDX-License-Identifier: MIT */
/* trial: one segment run once more by other players, and what came of it: does every pass arrive
 * that arrives as a rule, is every screen used that is used as a rule, does a check of passes and
 * screens find anything that the coach has not accepted, and how near a thing was it. */
#include "judge/trials/trials.h"

#include "base/real.h"
#include "judge/check/lane.h"

/* What a pass that arrives and a screen that is used in time are is said by the same checks as of
 * the play itself, so that the two never disagree. */
static const char *const timed_checks[] = {
    "ball.handoff",  "pass.lane", "screen.early", "screen.gap", "screen.moving",
    "screen.nobody", NULL};

#define LATE (2 * RUN_SAMPLE) /* s before a screen is set that nobody sees, as in screen.early */
#define MOVING .5             /* s after he has arrived a catcher still counts as coming (ours) */
#define SOONER 2.0            /* s: what is so much too late, or too soon, is not near (ours) */
#define SHIFT .05             /* s: as fine as that is told */

/* ---- what can be late ---- */

static bool has_moment(const struct segment *segment, size_t task, enum moment moment)
{
    return segment->record[task].time[moment] != TIME_NEVER;
}

/* The use of a screen that is set in this step; a back cut answers a defender who jumped early. */
static bool is_use(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    return task->kind == TASK_USE && task->screen_task >= 0 && task->shape != SHAPE_BACK &&
           has_moment(segment, (size_t)task->screen_task, MOMENT_SET);
}

/* What comes off as a rule is what a trial is held to. */
static bool is_timed(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    return task_gives_ball(task)
               ? has_moment(segment, index, MOMENT_CAUGHT)
               : is_use(segment, index) && has_moment(segment, index, MOMENT_STARTED);
}

bool trial_has_timing(const struct segment *segment)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        if (is_timed(segment, i)) {
            return true;
        }
    }
    return false;
}

/* ---- how near a thing it was ---- */

struct trying {
    const struct segment *run; /* the trial's */
    struct trial *trial;
    double when; /* s: of its trouble so far */
};

static void spare(const struct trying *trying, size_t task, double seconds)
{
    double *least = &trying->trial->spare[task];
    *least = real_min(*least, seconds);
}

/* The last thing the catcher did to be there: he comes to it, or has come just now; else -1. */
static int way_to_catch(const struct segment *run, size_t throw)
{
    const struct task *task = segment_task(run, throw);
    double caught = run->record[throw].time[MOMENT_CAUGHT], latest = -1;
    int found = -1;
    for (size_t i = 0; i < run->tasks; i++) {
        const struct task *his = segment_task(run, i);
        const double *time = run->record[i].time;
        bool runs = his->kind == TASK_MOVE || his->kind == TASK_USE;
        if (his->who == task->other && runs && time[MOMENT_STARTED] != TIME_NEVER &&
            time[MOMENT_STARTED] < caught && time[MOMENT_STARTED] >= latest) {
            bool there = time[MOMENT_ARRIVED] != TIME_NEVER &&
                         time[MOMENT_ARRIVED] < run->record[throw].time[MOMENT_RELEASED] - MOVING;
            latest = time[MOMENT_STARTED];
            found = there ? -1 : (int)i;
        }
    }
    return found;
}

static const struct ball_span *flight_of(const struct segment *run, size_t throw)
{
    for (size_t s = 0; s < run->ball.count; s++) {
        const struct ball_span *span = &run->ball.at[s];
        if (span->task == (int) throw &&span->state == BALL_FLIGHT) {
            return span;
        }
    }
    return NULL;
}

/* How much later it could leave, before somebody is in its way; below 0: how much sooner it would
 * have had to. He is taken to be where he is so much later. */
static double lane_spare(const struct pass_way *way, double clear)
{
    bool closed = lane_look(way, clear, 0).by != BODY_NONE;
    for (int i = 1; i <= SOONER / SHIFT; i++) {
        double later = closed ? -SHIFT * i : SHIFT * i;
        if ((lane_look(way, clear, later).by != BODY_NONE) != closed) {
            return closed ? later : later - SHIFT;
        }
    }
    return closed ? -SOONER : TRIAL_FREE;
}

static void look_at_lane(const struct trying *trying, size_t throw)
{
    const struct segment *run = trying->run;
    const struct ball_span *span = flight_of(run, throw);
    struct pass_way lane;
    if (span && !run->play->is_drill && pass_way_of(run, span, &lane)) {
        int way = way_to_catch(run, throw);
        spare(trying, way < 0 ? throw : (size_t)way, lane_spare(&lane, lane_clear(run->play)));
    }
}

/* A pass that leaves at its moment, whoever is there: the catcher may come so much later. */
static void look_at_catcher(const struct trying *trying, size_t throw)
{
    const struct task *task = segment_task(trying->run, throw);
    int way = task_is_fixed(task) ? way_to_catch(trying->run, throw) : -1;
    if (way >= 0) {
        double arrived = trying->run->record[way].time[MOMENT_ARRIVED],
               caught = trying->run->record[throw].time[MOMENT_CAUGHT];
        spare(trying, (size_t)way, arrived == TIME_NEVER ? 0 : real_max(0, caught - arrived));
    }
}

/* ---- did it come off ---- */

/* Of two that go wrong the one that is sooner is told. */
static struct trial *fail(struct trying *trying, enum trial_trouble trouble, size_t task,
                          double when)
{
    struct trial *trial = trying->trial;
    if (trial->trouble != TRIAL_WORKS && when >= trying->when) {
        return NULL;
    }
    trying->when = when;
    trial->trouble = trouble;
    trial->task = (int)task;
    trial->by = BODY_NONE;
    return trial;
}

static double start_of(const struct trying *trying, size_t task)
{
    return trying->run->record[task].time[MOMENT_STARTED];
}

static void judge_throw(struct trying *trying, size_t throw)
{
    if (!has_moment(trying->run, throw, MOMENT_CAUGHT)) {
        fail(trying, TRIAL_MISSED, throw, start_of(trying, throw));
        return;
    }
    look_at_catcher(trying, throw);
    look_at_lane(trying, throw);
}

/* Only who does not wait for the screen can be too early. */
static void judge_use(struct trying *trying, size_t use)
{
    const struct task *task = segment_task(trying->run, use);
    size_t screen = (size_t)task->screen_task;
    if (!has_moment(trying->run, use, MOMENT_STARTED) ||
        !has_moment(trying->run, screen, MOMENT_SET)) {
        fail(trying, TRIAL_UNUSED, use, start_of(trying, use));
        return;
    }
    if (task->early || task_is_fixed(task)) {
        double set = trying->run->record[screen].time[MOMENT_SET];
        spare(trying, screen, start_of(trying, use) + LATE - set);
    }
}

/* The sentence a finding is about. */
static size_t task_of(const struct segment *run, const struct finding *finding)
{
    for (size_t i = 0; i < run->tasks; i++) {
        const struct task *task = segment_task(run, i);
        if (task->who == finding->who[0] && task->span.source == finding->span.source &&
            task->span.begin == finding->span.begin) {
            return i;
        }
    }
    return 0;
}

static void judge_by_checks(struct arena *arena, struct trying *trying)
{
    finding_list findings;
    check_again(arena, trying->run, timed_checks, &findings);
    for (size_t i = 0; i < findings.count; i++) {
        const struct finding *finding = &findings.at[i];
        struct trial *trial =
            finding->accepted
                ? NULL
                : fail(trying, TRIAL_FOUND, task_of(trying->run, finding), finding->time);
        if (trial) {
            trial->check = finding->row;
            trial->by = finding->who[1];
            trial->help = finding->help;
        }
    }
}

void trial_run(struct arena *arena, const struct segment *segment, int number, struct trial *trial)
{
    struct level *levels = arena_array(arena, struct level, BODY_COUNT);
    trial_levels(segment->play->speed, segment->step, segment->branch, number, levels);
    *trial = (struct trial){.task = -1, .by = BODY_NONE, .spare = trial->spare};
    for (size_t i = 0; i < segment->tasks; i++) {
        trial->spare[i] = TRIAL_FREE;
    }
    struct trying trying = {sim_again(arena, segment, levels), trial, 0};
    for (size_t i = 0; i < segment->tasks; i++) {
        if (!is_timed(segment, i)) {
            continue;
        }
        if (task_gives_ball(segment_task(segment, i))) {
            judge_throw(&trying, i);
        } else {
            judge_use(&trying, i);
        }
    }
    judge_by_checks(arena, &trying);
    if (!trying.run->ran && trial->trouble == TRIAL_WORKS) {
        trial->trouble = TRIAL_STUCK;
    }
}
