/* SPDX-License-Identifier: MIT */
/* collide: team-mates who run into each other. Two of a screen or a hand-off belong together, and
 * so do two of one sentence, who know of each other; who brushes somebody who stands has only to go
 * round him. */
#include <math.h>
#include <string.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "judge/check/look.h"

#define TOUCH (2 * MOTION_BODY + .06) /* m between two middles: no air between the bodies; ours */
#define RUNS 1.0                      /* m/s: each of them; ours */
#define CLOSING 2.0                   /* m/s toward each other; else they run side by side; ours */
#define BEFORE .2                     /* s before they touch: so fast they came; ours */
enum { BETWEEN = 4 };                 /* looks from one sample to the next */

/* What he was told that has him running then, or NULL. */
static const struct task *runs_for(const struct segment *segment, body b, double t)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    return task && in == segment && task->sentence ? task : NULL;
}

static bool clash(const struct segment *segment, body a, body b, double t)
{
    double before = real_max(0, t - BEFORE);
    struct vec2 one = segment_velocity(segment, a, before);
    struct vec2 two = segment_velocity(segment, b, before);
    return vec2_distance(segment_at(segment, a, t), segment_at(segment, b, t)) < TOUCH &&
           vec2_length(one) > RUNS && vec2_length(two) > RUNS && vec2_distance(one, two) > CLOSING;
}

/* When they first run into each other, or TIME_NEVER. */
static double when_they_meet(const struct segment *segment, body a, body b)
{
    for (size_t i = 0; i + 1 < segment->samples; i++) {
        if (vec2_distance(look_at(segment, a, i), look_at(segment, b, i)) > 3 * TOUCH) {
            continue;
        }
        for (int k = 0; k < BETWEEN; k++) {
            double t = ((double)i + (double)k / BETWEEN) * RUN_SAMPLE;
            if (clash(segment, a, b, t)) {
                return look_shot(segment, t) ? TIME_NEVER : t;
            }
        }
    }
    return TIME_NEVER;
}

/* Of one sentence, two screens on one cutter's way, or two who exchange: each goes to the other's
 * spot. */
static bool belong_together(const struct task *one, const struct task *two)
{
    bool screens = one->kind == TASK_SCREEN && two->kind == TASK_SCREEN;
    bool exchange = one->goal.who == two->who && two->goal.who == one->who;
    return exchange || one->group == two->group || (screens && one->other == two->other);
}

static void collide(struct checker *checker, body a, body b, double t)
{
    const struct segment *segment = checker->segment;
    const struct task *one = runs_for(segment, a, t), *two = runs_for(segment, b, t);
    if (!one || !two || belong_together(one, two) ||
        (court_in_lane(checker->play->court, segment_at(segment, a, t)) &&
         (look_uses_ball(one) || look_uses_ball(two)))) { /* that is traffic */
        return;
    }
    if (one->span.begin < two->span.begin) { /* who is written later waits */
        collide(checker, b, a, t);
        return;
    }
    struct finding *finding = look_report(checker, t, 0, a, b);
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    const char *words = verb_row(two->verb)->words;
    finding->span = one->span;
    finding->mark = MARK_POINT;
    finding->a = vec2_mix(segment_at(segment, a, t), segment_at(segment, b, t), .5);
    look_say(checker, &finding->message,
             "%s: let %s go by first, or take another way. You two run into each other %s after "
             "the step begins.",
             who, other, look_seconds(checker, t));
    look_say(checker, &finding->help, "put before this sentence: after %s %.*s,", other,
             (int)strcspn(words, " "), words);
}

void look_cut_collide(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (body a = 0; a < BODY_COACH && !checker->play->is_drill; a++) {
        for (body b = 0; b < a; b++) {
            double t =
                look_plays(checker, a) && look_plays(checker, b) && !look_linked(segment, a, b)
                    ? when_they_meet(segment, a, b)
                    : TIME_NEVER;
            if (t >= 0) {
                collide(checker, a, b, t);
            }
        }
    }
}
