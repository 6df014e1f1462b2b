/* SPDX-License-Identifier: MIT */
/* cut: checks about who runs where at the same time. */
#include <string.h>

#include "base/real.h"
#include "judge/check/look.h"

#define MOVING 1.0      /* m/s: a driver or cutter at speed; ours */
#define SAME_SECOND 0.5 /* s either way */

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

struct meeting {
    double gap, time;
    struct vec2 driver, cutter;
};

/* The closest that `cutter` comes to where the driver is at `sample`, within the same second. */
static void meet(const struct checker *checker, body driver, body cutter, size_t sample,
                 struct meeting *closest)
{
    const struct segment *segment = checker->segment;
    const size_t window = (size_t)(SAME_SECOND / RUN_SAMPLE);
    size_t from = sample > window ? sample - window : 0;
    struct vec2 drive = look_at(segment, driver, sample);
    for (size_t k = from; k <= sample + window && k < segment->samples; k++) {
        struct vec2 cut = look_at(segment, cutter, k);
        double gap = vec2_distance(drive, cut);
        if (gap < closest->gap && is_cut(runs_in_lane(checker, cutter, k))) {
            *closest = (struct meeting){gap, (double)sample * RUN_SAMPLE, drive, cut};
        }
    }
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
    look_say(checker, &finding->help, "put before this sentence: after %s %.*s,", other,
             STR_ARG(drives(checker->segment, driver, met->time)));
}

void look_cut_traffic(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (body driver = 0; driver < BODY_COACH && !checker->play->is_drill; driver++) {
        for (body cutter = 0; cutter < BODY_COACH; cutter++) {
            if (driver == cutter || !look_plays(checker, driver) || !look_plays(checker, cutter) ||
                look_linked(segment, driver, cutter)) {
                continue;
            }
            struct meeting closest = {.gap = checker->limit};
            for (size_t i = 0; i < segment->samples; i++) {
                if (is_drive(runs_in_lane(checker, driver, i)) &&
                    !look_shot(segment, (double)i * RUN_SAMPLE)) {
                    meet(checker, driver, cutter, i, &closest);
                }
            }
            if (closest.gap < checker->limit - HALF_FOOT) {
                traffic(checker, driver, cutter, &closest);
            }
        }
    }
}
