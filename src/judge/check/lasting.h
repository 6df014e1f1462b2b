/* SPDX-License-Identifier: MIT */
/* lasting: how long something has been so, through the steps, and whose the ball is meanwhile: what
 * the clocks of the rulebook count by. For the checks of this room. */
#ifndef JUDGE_CHECK_LASTING_H
#define JUDGE_CHECK_LASTING_H

#include "judge/check/look.h"

const struct ball_span *lasting_span(const struct segment *segment, double t); /* NULL: none */
/* The attack has the ball on the floor: not while it is thrown in, nor after a try for goal. */
bool lasting_control(const struct checker *checker, const struct segment *segment, double t);

/* Seconds for which something has been so without a break: in the segments before, then here. Stops
 * at the first sample of the segment in hand where it passes the limit. */
struct stay {
    double seconds, passed; /* so far; when in the segment it passed the limit, or TIME_NEVER */
    double whole;           /* of the stay that passed it, to its end or the segment's */
};
/* Whether it is so; PAUSED: the count stands still. */
enum so { SO_NOT, SO_YES, SO_PAUSED };
typedef enum so is_so(const struct checker *checker, const struct segment *segment, body b,
                      size_t sample);

struct stay lasting_stay(const struct checker *checker, is_so *so, body b, double limit);

#endif
