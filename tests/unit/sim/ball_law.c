/* SPDX-License-Identifier: MIT */
#include "ball_law.h"

#include <math.h>

#define MOMENT .001   /* s */
#define CLOSE_TO .004 /* m: what a track's curve may err where it is not sampled */
#define HANDS                                                                                      \
    4.6 /* m/s: hands bring a ball in at 3 m/s on the mean, half as fast again at most             \
         */
#define UP_DOWN 16.0 /* m/s: hands that raise a ball, a dribble, a fall from the ring */
#define HALF_G                                                                                     \
    4.905 /* m/s^2: a throw leaves the hand at half g times its seconds, and its rise              \
           */

static void worse(struct ball_fault *fault, double far, double when, const char *what)
{
    if (far > fault->far) {
        *fault = (struct ball_fault){far, when, what};
    }
}

/* m/s over the floor that the ball may have in the span at t; held: as seen from its holder. */
static double fastest(const struct ball_span *span, double t)
{
    if (span->state == BALL_HELD) {
        return t < span->from + span->settle + MOMENT ? HANDS : 0;
    }
    if (span->flight.seconds <= 0) {
        return 0;
    }
    return motion_flight_along(&span->flight, MOMENT) / MOMENT + .01; /* it only gets slower */
}

/* How much further it came in the moment before t than it may. */
static double too_far(const struct segment *segment, double t)
{
    const struct ball_span *span = segment_span(segment, t),
                           *before = segment_span(segment, t - MOMENT);
    struct vec2 way = vec2_sub(segment_ball(segment, t), segment_ball(segment, t - MOMENT));
    body holder = span->state == BALL_HELD ? span->holder : before->holder;
    if (span->state == BALL_HELD || before->state == BALL_HELD) {
        struct vec2 run =
            vec2_sub(segment_at(segment, holder, t), segment_at(segment, holder, t - MOMENT));
        double alone = vec2_length(way);
        way = vec2_sub(way, run);
        if (span != before) { /* part of the moment with him, part without */
            return fmin(alone, vec2_length(way)) - CLOSE_TO -
                   fmax(fastest(span, t), fastest(before, t)) * MOMENT;
        }
    }
    double most = fmax(fastest(span, t), fastest(before, t)) * MOMENT;
    return vec2_length(way) - most - (span == before ? 1e-6 : CLOSE_TO);
}

static void look_at_spans(const struct segment *segment, struct ball_fault *fault)
{
    double end = 0;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        double gap = i == 0 ? span->from : fabs(span->from - end); /* the first may be older */
        worse(fault, gap, span->from, "a gap between spans");
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
    double z = segment_ball_height(segment, 0);
    for (long i = 1; segment->ball.count && (double)i * MOMENT < segment->duration; i++) {
        double t = (double)i * MOMENT, high = segment_ball_height(segment, t);
        bool goes_on = segment_span(segment, t) == segment_span(segment, t - MOMENT);
        worse(&fault, too_far(segment, t), t, "a jump");
        double flies = segment_span(segment, t)->flight.seconds;
        double most = fmax(UP_DOWN, HALF_G * flies + 3) * MOMENT;
        worse(&fault, fabs(high - z) - most - (goes_on ? 0 : CLOSE_TO), t, "a jump up or down");
        worse(&fault, MOTION_BALL - high - 1e-9, t, "under the floor");
        z = high;
    }
    return fault;
}
