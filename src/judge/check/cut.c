/* SPDX-License-Identifier: MIT */
/* cut: checks about who runs where at the same time. */
#include <math.h>
#include <string.h>

#include "base/real.h"
#include "judge/check/stand.h"

#define MOVING 1.0         /* m/s: a driver or cutter at speed; ours */
#define SAME_SECOND 0.5    /* s either way */
#define FOR_RIM (5 * FEET) /* who is sent so near to the ring goes for it; ours */

/* What b is in the middle of at a sample, moving at speed through the lane, or NULL. */
static const struct task *runs_in_lane(const struct checker *checker, body b, size_t sample)
{
    const struct segment *segment = checker->segment, *in;
    size_t index;
    if (look_speed(segment, b, sample) < MOVING ||
        !court_in_lane(checker->play->court, look_at(segment, b, sample))) {
        return NULL;
    }
    double t = (double)sample * RUN_SAMPLE;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    return task && in == segment ? task : NULL;
}

static bool is_drive(const struct task *task)
{
    return task && (task->kind == TASK_CARRY || task->kind == TASK_USE) && look_uses_ball(task);
}

static bool is_cut(const struct task *task)
{
    return task && (task->kind == TASK_MOVE || task->kind == TASK_USE) && !look_uses_ball(task) &&
           task->effort >= EFFORT_CUT;
}

static bool is_rim_cut(const struct task *task)
{
    return is_cut(task) && vec2_length(task->planned) < FOR_RIM;
}

typedef bool is_run(const struct task *task);
struct meeting {
    double gap, time;
    struct vec2 driver, cutter;
};

/* The closest that `cutter` comes to where the other one is at `sample`, within the same second. */
static void meet(const struct checker *checker, body driver, body cutter, is_run *cuts,
                 size_t sample, struct meeting *closest)
{
    const struct segment *segment = checker->segment;
    const size_t window = (size_t)(SAME_SECOND / RUN_SAMPLE);
    size_t from = sample > window ? sample - window : 0;
    struct vec2 drive = look_at(segment, driver, sample);
    for (size_t k = from; k <= sample + window && k < segment->samples; k++) {
        struct vec2 cut = look_at(segment, cutter, k);
        double gap = vec2_distance(drive, cut);
        if (gap < closest->gap && cuts(runs_in_lane(checker, cutter, k))) {
            *closest = (struct meeting){gap, (double)sample * RUN_SAMPLE, drive, cut};
        }
    }
}

/* False: the two keep out of each other's way, or belong together. */
static bool they_meet(const struct checker *checker, body one, is_run *runs, body two, is_run *cuts,
                      struct meeting *closest)
{
    const struct segment *segment = checker->segment;
    *closest = (struct meeting){.gap = checker->limit};
    if (one == two || !look_plays(checker, one) || !look_plays(checker, two) ||
        look_linked(segment, one, two)) {
        return false;
    }
    for (size_t i = 0; i < segment->samples; i++) {
        if (runs(runs_in_lane(checker, one, i)) && !look_shot(segment, (double)i * RUN_SAMPLE)) {
            meet(checker, one, two, cuts, i, closest);
        }
    }
    return closest->gap < checker->limit - HALF_FOOT;
}

/* The drive's own verb, of which a tie takes the first word. */
static struct str drives(const struct segment *segment, body driver, double t)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, driver, t, &in, &index);
    const char *words = task ? verb_row(task->verb)->words : "drives";
    return (struct str){words, strcspn(words, " ")};
}

/* A clause has him start right then: a drive that hangs on the cut cannot be waited for by it. */
static bool starts_with(const struct segment *segment, body driver, double t)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, driver, t, &in, &index);
    return task && task_is_fixed(task);
}

static void traffic(struct checker *checker, body driver, body cutter, const struct meeting *met)
{
    struct finding *finding = look_report(checker, met->time, met->gap, cutter, driver);
    finding->mark = MARK_DISTANCE;
    finding->a = met->cutter;
    finding->b = met->driver;
    const char *who = look_body(checker, cutter), *other = look_body(checker, driver);
    look_say(checker, &finding->message,
             "%s: let %s's drive go by, or cut behind it. You come within %s of %s in the lane in "
             "the same second; keep %s.",
             who, other, look_length(checker, met->gap), other,
             look_length(checker, checker->limit));
    if (starts_with(checker->segment, driver, met->time)) {
        look_say(checker, &finding->help, "begin %s's sentence with: after %s cuts,", other, who);
    } else {
        look_say(checker, &finding->help, "put before this sentence: after %s %.*s,", other,
                 STR_ARG(drives(checker->segment, driver, met->time)));
    }
}

/* Of two cutters the one who is written later waits, `second`. Of one sentence, or out of one
 * stack, they know of each other. */
static bool waits(const struct checker *checker, body first, body second, double t)
{
    const struct segment *segment = checker->segment, *in, *also;
    size_t of_one = 0, of_two = 0;
    const struct task *one = look_latest(segment, first, t, &in, &of_one);
    const struct task *two = look_latest(segment, second, t, &also, &of_two);
    return one && two && in == segment && also == segment && one->group != two->group &&
           one->span.begin < two->span.begin &&
           !vec2_near(segment->record[of_one].from, segment->record[of_two].from, checker->limit);
}

/* Two cutters for the rim. */
static void crowd(struct checker *checker, body first, body second, const struct meeting *met)
{
    struct finding *finding = look_report(checker, met->time, met->gap, second, first);
    const char *who = look_body(checker, second), *other = look_body(checker, first);
    size_t sample = (size_t)(met->time / RUN_SAMPLE);
    const char *spot = stand_where_to(checker, first, sample, CLEAR);
    finding->severity = SEVERITY_NOTE;
    finding->mark = MARK_DISTANCE;
    finding->a = met->cutter;
    finding->b = met->driver;
    look_say(checker, &finding->message,
             "%s: let %s's cut clear first. You both go for the rim and come within %s of each "
             "other in the lane in the same second; keep %s.",
             who, other, look_length(checker, met->gap), look_length(checker, checker->limit));
    look_say(checker, &finding->help,
             "write: %s clears to %s, before this sentence, and begin this one: after %s clears,",
             other, spot ? spot : "the weak side corner", other);
}

/* The cutter for the rim whom `two` comes nearest to, of those written before him. */
static void look_for_crowd(struct checker *checker, body two)
{
    struct meeting closest = {.gap = INFINITY}, met;
    body nearest = BODY_NONE;
    for (body one = 0; one < BODY_COACH; one++) {
        if (they_meet(checker, one, is_rim_cut, two, is_rim_cut, &met) &&
            waits(checker, one, two, met.time) && met.gap < closest.gap) {
            nearest = one;
            closest = met;
        }
    }
    if (nearest != BODY_NONE) {
        crowd(checker, nearest, two, &closest);
    }
}

void look_cut_traffic(struct checker *checker)
{
    for (body one = 0; one < BODY_COACH && !checker->play->is_drill; one++) {
        for (body two = 0; two < BODY_COACH; two++) {
            struct meeting closest;
            if (they_meet(checker, one, is_drive, two, is_cut, &closest)) {
                traffic(checker, one, two, &closest);
            }
        }
        look_for_crowd(checker, one);
    }
}
