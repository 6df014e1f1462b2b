/* SPDX-License-Identifier: MIT */
/* lane: how near a pass goes by a defender who could touch it. For pass.lane, and for whoever tries
 * the same step many times. */
#ifndef JUDGE_CHECK_LANE_H
#define JUDGE_CHECK_LANE_H

#include "floor/sim/run.h"

/* m: nearer to somebody's middle a pass may be picked off: the limit of pass.lane, in this play. */
double lane_clear(const struct play *play);

enum { PASS_LOOKS = 100 }; /* moments of a flight */

/* The way of one pass where hands can reach it: not over their heads, nor at its two ends. */
struct pass_way {
    const struct segment *segment;
    const struct ball_span *span;
    body guard; /* the ball's own defender, or BODY_NONE */
    struct pass_moment {
        double after, along; /* s after the release; m */
        struct vec2 at;
    } moment[PASS_LOOKS + 1];
    int count;
};
/* False: it is no pass that flies. */
bool pass_way_of(const struct segment *segment, const struct ball_span *span, struct pass_way *way);

struct lane_look {     /* of one pass */
    body by;           /* whom it goes by too near; BODY_NONE: nobody */
    double near, when; /* m between the ball's way and his middle; when, s of the segment */
    double clear;      /* m: that would have been enough */
    struct vec2 where;
    double along; /* of the ball's way, m */
};
/* `clear`: as lane_clear says. Who runs after a receiver on the run, or back
 * to his man, has no eye for the ball: half of that is enough. `later`: as it would be with the
 * defenders where they are so many seconds later (before: below 0). */
struct lane_look lane_look(const struct pass_way *way, double clear, double later);

#endif
