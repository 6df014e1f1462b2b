/* SPDX-License-Identifier: MIT */
/* ball_law: does the ball move as its law lets it, at every moment of a segment? */
#ifndef TESTS_UNIT_SIM_BALL_LAW_H
#define TESTS_UNIT_SIM_BALL_LAW_H

#include "floor/sim/run.h"

struct ball_fault {
    double far; /* m that it moved in a millisecond beyond what its law lets it */
    double when;
    const char *what; /* NULL: nothing was wrong */
};
/* The worst of a segment; also a gap between spans, a holder who is not on the floor, a ball under
 * the floor. */
struct ball_fault ball_law(const struct segment *segment);

#endif
