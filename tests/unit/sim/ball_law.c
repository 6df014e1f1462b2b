/* SPDX-License-Identifier: MIT */
#include "ball_law.h"

#include <math.h>

#define MOMENT .001   /* s */
#define CLOSE_TO .004 /* m: what a track's curve may err where it is not sampled */
#define HANDS 4.6 /* m/s: hands bring a ball in at 3 m/s on the mean, half as fast again at most   \
                   */
#define UP_DOWN 13.0 /* m/s: a ball from a ring, a dribble, a shot */

static void worse(struct ball_fault *fault, double far, double when, const char *what)
{
    if (far > fault->far) {
        *fault = (struct ball_fault){far, when, what};
    }
}

/* m/s over the floor that the ball may have in the span at t. */
static double fastest(const struct segment *segment, const struct ball_span *span, double t)
{
    if (span->state == BALL_HELD) {
        return vec2_length(segment_velocity(segment, span->holder, t)) + .6 +
               (t < span->from + span->settle + MOMENT ? HANDS : 0);
    }
    if (span->flight.seconds <= 0) {
        return 0;
    }
    double start = motion_flight_along(&span->flight, MOMENT) / MOMENT; /* it only gets slower */
    return start + .01;
}

static void look_at_spans(const struct segment *segment, struct ball_fault *fault)
{
    double end = 0;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        worse(fault, fabs(span->from - end), span->from, "a gap between spans");
        worse(fault, span->from - span->to, span->from, "a span that ends before it begins");
        if (span->state == BALL_HELD && !segment->track[span->holder].on_floor) {
            worse(fault, 1, span->from, "held by nobody");
        }
        end = span->to;
    }
    worse(fault, segment->ball.count ? fabs(segment->duration - end) : 0, end,
          "no ball at the end");
}

struct ball_fault ball_law(const struct segment *segment)
{
    struct ball_fault fault = {1e-9, 0, NULL};
    look_at_spans(segment, &fault);
    struct vec2 at = segment_ball(segment, 0);
    double z = segment_ball_height(segment, 0);
    for (long i = 1; segment->ball.count && (double)i * MOMENT < segment->duration; i++) {
        double t = (double)i * MOMENT;
        const struct ball_span *span = segment_span(segment, t);
        const struct ball_span *before = segment_span(segment, t - MOMENT);
        struct vec2 now = segment_ball(segment, t);
        double high = segment_ball_height(segment, t);
        double most = fmax(fastest(segment, span, t), fastest(segment, before, t)) * MOMENT;
        most += span == before ? 1e-6 : CLOSE_TO;
        worse(&fault, vec2_distance(at, now) - most, t, "a jump");
        worse(&fault, fabs(high - z) - UP_DOWN * MOMENT - (span == before ? 0 : CLOSE_TO), t,
              "a jump up or down");
        worse(&fault, MOTION_BALL - high - 1e-9, t, "under the floor");
        at = now;
        z = high;
    }
    return fault;
}
