/* SPDX-License-Identifier: MIT */
/* run_ball: reading a run: who had the ball at a moment, where it was and how high. */
#include "floor/sim/run.h"

#include "base/real.h"

#define RAISE .25 /* s in which hands bring the ball to where it leaves them (ours) */

const struct ball_span *segment_span(const struct segment *segment, double t)
{
    const struct ball_span *found = NULL;
    for (size_t i = 0; i < segment->ball.count; i++) {
        if (segment->ball.at[i].from <= t || !found) {
            found = &segment->ball.at[i];
        }
    }
    return found;
}

body segment_holder(const struct segment *segment, double t)
{
    const struct ball_span *span = segment_span(segment, t);
    return span && span->state == BALL_HELD ? span->holder : (body)BODY_NONE;
}

struct vec2 segment_ball(const struct segment *segment, double t)
{
    const struct ball_span *span = segment_span(segment, t);
    if (!span) {
        return vec2_of(0, 0);
    }
    if (span->state == BALL_HELD) {
        struct vec2 off = vec2_sub(span->start, segment_at(segment, span->holder, span->from));
        double left =
            span->settle > 0 ? 1 - real_smooth(t, span->from, span->from + span->settle) : 0;
        return vec2_along(segment_at(segment, span->holder, t), off, left);
    }
    double length = span->flight.length;
    double along = motion_flight_along(&span->flight, t - span->from);
    return length > 0 ? vec2_mix(span->start, span->end, along / length) : span->end;
}

/* ---- its height ---- */

/* 1 in the hand, 0 on the floor; slow at the hand, fast at the floor. */
static double bounced(const struct segment *segment, body who, double t)
{
    for (size_t i = 0; i < segment->dribbles.count; i++) {
        const struct dribble_span *dribble = &segment->dribbles.at[i];
        if (dribble->who == who && t > dribble->from && t < dribble->to) {
            double u = (t - dribble->from) / (dribble->to - dribble->from) * dribble->bounces;
            double part = u - (double)(int)u, up = part < .5 ? 1 - 2 * part : 2 * part - 1;
            return up * (2 - up);
        }
    }
    return 1;
}

/* From where it was taken to where it is held, and up to where the next span has it leave. */
static double held_height(const struct segment *segment, const struct ball_span *span, double t)
{
    const struct ball_span *next = span + 1;
    bool last = next == segment->ball.at + segment->ball.count; /* the hands go on after it */
    double held = span->flight.to_z, length = span->to - span->from;
    double settle = last ? span->settle : real_min(span->settle, length);
    double raise = real_min(RAISE, length);
    double z = held;
    if (settle > 0) {
        z = real_mix(span->flight.from_z, held, real_smooth(t, span->from, span->from + settle));
    }
    if (!last && raise > 0) {
        z += (next->flight.from_z - held) * real_smooth(t, span->to - raise, span->to);
    }
    return z;
}

double segment_ball_height(const struct segment *segment, double t)
{
    const struct ball_span *span = segment_span(segment, t);
    if (!span) {
        return 0;
    }
    if (span->state != BALL_HELD) {
        return motion_flight_height(&span->flight, t - span->from);
    }
    return real_mix(MOTION_BALL, held_height(segment, span, t), bounced(segment, span->holder, t));
}
