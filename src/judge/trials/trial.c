/* SPDX-License-Identifier: MIT */
/* trial: one segment run once more by other players, and what came of it: does every pass arrive
 * that arrives as a rule, is every screen used in time, and how near a thing was it. */
#include "judge/trials/trials.h"

#include "base/real.h"
#include "judge/check/lane.h"

#define LATE                                                                                       \
    (2 * RUN_SAMPLE)    /* s before a screen is set that nobody sees; as screen.early has it */
#define MOVING .5       /* s after he has arrived a catcher still counts as coming (ours) */
#define SOONER 2.0      /* s: what is so much too late, or too soon, is not near (ours) */
#define SHIFT .05       /* s: as fine as that is told */
enum { HALVINGS = 11 }; /* of both ways of SOONER: 2 ms */

/* ---- what can be late ---- */

static bool has_moment(const struct segment *segment, size_t task, enum moment moment)
{
    return segment->record[task].time[moment] != TIME_NEVER;
}

static bool is_throw(const struct task *task)
{
    return task->kind == TASK_PASS || task->kind == TASK_EXCHANGE;
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
    return is_throw(task) ? has_moment(segment, index, MOMENT_CAUGHT)
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
    const struct level *levels;
    struct trial *trial;
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
static double lane_spare(const struct segment *run, const struct ball_span *span, double clear,
                         bool closed)
{
    for (int i = 1; i <= SOONER / SHIFT; i++) {
        double later = closed ? -SHIFT * i : SHIFT * i;
        if ((lane_look(run, span, later).near < clear) != closed) {
            return closed ? later : later - SHIFT;
        }
    }
    return closed ? -SOONER : TRIAL_FREE;
}

/* Could he get a hand on it, if he went for it so many seconds sooner than he can react? */
static bool gets_hand_on(const struct trying *trying, const struct ball_span *span, body x,
                         double sooner)
{
    struct mover mover = {.at = segment_at(trying->run, x, span->from),
                          .v = segment_velocity(trying->run, x, span->from)};
    struct lane lane = motion_lane(&trying->levels[x]);
    lane.reaction -= sooner;
    return motion_lane_margin(&span->flight, span->start, span->end, mover, &lane) < 0;
}

static double race_spare(const struct trying *trying, const struct ball_span *span, body x)
{
    double low = -SOONER, high = SOONER;
    if (!gets_hand_on(trying, span, x, high)) {
        return TRIAL_FREE;
    }
    for (int i = 0; i < HALVINGS; i++) {
        double sooner = (low + high) / 2;
        bool caught = gets_hand_on(trying, span, x, sooner);
        low = caught ? low : sooner;
        high = caught ? sooner : high;
    }
    return (low + high) / 2;
}

/* Who runs after the receiver and not between him and the ball: he sees it come, and goes for it.
 */
static bool races(const struct segment *run, const struct ball_span *span, body x)
{
    struct vec2 at = segment_at(run, x, span->from);
    double to_him = vec2_distance(at, segment_at(run, span->target, span->from));
    return run->track[x].on_floor && lane_chases(run, span, x) &&
           to_him < vec2_distance(at, span->start);
}

/* By whom it may be picked off: who stands in its way, as pass.lane sees it, or who wins the race
 * with a receiver on the run; BODY_NONE: it is not. */
static body look_at_lane(const struct trying *trying, size_t throw)
{
    const struct segment *run = trying->run;
    const struct ball_span *span = flight_of(run, throw);
    if (!span || run->play->is_drill) {
        return BODY_NONE;
    }
    int way = way_to_catch(run, throw);
    size_t tight = way < 0 ? throw : (size_t)way;
    struct lane_look look = lane_look(run, span, 0);
    double clear = lane_clear(run->play);
    bool closed = look.near < clear;
    body by = closed ? look.by : (body)BODY_NONE;
    spare(trying, tight, lane_spare(run, span, clear, closed));
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        double sooner = races(run, span, x) ? race_spare(trying, span, x) : TRIAL_FREE;
        spare(trying, tight, sooner);
        by = sooner < 0 && !closed ? x : by;
    }
    return by;
}

/* A pass that leaves at its moment, whoever is there: the catcher may come so much later. */
static void look_at_catcher(const struct trying *trying, size_t throw)
{
    const struct task *task = segment_task(trying->run, throw);
    bool fixed = false;
    for (size_t i = 0; i < task->waits.count; i++) {
        fixed |= task->waits.at[i].fixed;
    }
    int way = fixed ? way_to_catch(trying->run, throw) : -1;
    if (way >= 0) {
        double arrived = trying->run->record[way].time[MOMENT_ARRIVED],
               caught = trying->run->record[throw].time[MOMENT_CAUGHT];
        spare(trying, (size_t)way, arrived == TIME_NEVER ? 0 : real_max(0, caught - arrived));
    }
}

/* ---- did it come off ---- */

static void fail(const struct trying *trying, enum trial_trouble trouble, size_t task, body by)
{
    struct trial *trial = trying->trial;
    if (trial->trouble == TRIAL_WORKS) {
        trial->trouble = trouble;
        trial->task = (int)task;
        trial->by = by;
    }
}

static void judge_throw(const struct trying *trying, size_t throw)
{
    const struct task_record *record = &trying->run->record[throw];
    if (record->time[MOMENT_CAUGHT] == TIME_NEVER) {
        fail(trying, TRIAL_MISSED, throw, BODY_NONE);
        return;
    }
    look_at_catcher(trying, throw);
    body by = look_at_lane(trying, throw);
    if (by != BODY_NONE) {
        fail(trying, TRIAL_LANE, throw, by);
    }
}

/* Only who does not wait for the screen can be too early. */
static void judge_use(const struct trying *trying, size_t use)
{
    const struct task *task = segment_task(trying->run, use);
    size_t screen = (size_t)task->screen_task;
    double leaves = trying->run->record[use].time[MOMENT_STARTED],
           set = trying->run->record[screen].time[MOMENT_SET];
    bool both = leaves != TIME_NEVER && set != TIME_NEVER, tied = task->early;
    for (size_t i = 0; i < task->waits.count; i++) {
        tied |= task->waits.at[i].fixed;
    }
    if (both && tied) {
        spare(trying, screen, leaves + LATE - set);
    }
    if (!both || set - leaves > LATE) {
        fail(trying, TRIAL_EARLY, use, BODY_NONE);
    }
}

/* Of two that go wrong the one that starts first is told. */
static size_t next_timed(const struct segment *segment, double *after, size_t last)
{
    size_t next = segment->tasks;
    for (size_t i = 0; i < segment->tasks; i++) {
        double t = segment->record[i].time[MOMENT_STARTED];
        bool later = t > *after || (t == *after && i > last);
        if (later && is_timed(segment, i) &&
            (next == segment->tasks || t < segment->record[next].time[MOMENT_STARTED])) {
            next = i;
        }
    }
    *after = next < segment->tasks ? segment->record[next].time[MOMENT_STARTED] : *after;
    return next;
}

void trial_run(struct arena *arena, const struct segment *segment, int number, struct trial *trial)
{
    struct level *levels = arena_array(arena, struct level, BODY_COUNT);
    trial_levels(segment->play->speed, segment->step, segment->branch, number, levels);
    trial->trouble = TRIAL_WORKS;
    trial->task = -1;
    trial->by = BODY_NONE;
    for (size_t i = 0; i < segment->tasks; i++) {
        trial->spare[i] = TRIAL_FREE;
    }
    struct trying trying = {sim_again(arena, segment, levels), levels, trial};
    double after = TIME_NEVER;
    for (size_t i = next_timed(segment, &after, 0); i < segment->tasks;
         i = next_timed(segment, &after, i)) {
        if (is_throw(segment_task(segment, i))) {
            judge_throw(&trying, i);
        } else {
            judge_use(&trying, i);
        }
    }
    if (!trying.run->ran && trial->trouble == TRIAL_WORKS) {
        trial->trouble = TRIAL_STUCK;
    }
}
