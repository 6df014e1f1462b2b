/* SPDX-License-Identifier: MIT */
/* lane: how near a pass goes by a defender who could touch it. For pass.lane, and for whoever tries
 * the same step many times. */
#ifndef JUDGE_CHECK_LANE_H
#define JUDGE_CHECK_LANE_H

#include "floor/sim/run.h"

/* m: nearer to somebody's middle a pass may be picked off: the limit of pass.lane, in this play. */
double lane_clear(const struct play *play);

struct lane_look {     /* of one pass */
    body by;           /* BODY_NONE: nobody is anywhere near */
    double near, when; /* m between the ball's way and his middle; when, s of the segment */
    struct vec2 where;
    double along; /* of the ball's way, m */
};
/* The defender runs after the receiver, who runs to the ball: who is first is the cut's matter, and
 * lane_look leaves him out. */
bool lane_chases(const struct segment *segment, const struct ball_span *span, body x);
/* `later`: as it would be with the defenders where they are so many seconds later (before: below
 * 0).
 */
struct lane_look lane_look(const struct segment *segment, const struct ball_span *span,
                           double later);

#endif
