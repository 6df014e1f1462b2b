/* SPDX-License-Identifier: MIT */
/* tolerance: how often a step works with other players, and what of it is said. Shared in api. */
#ifndef PROGRAM_API_TOLERANCE_H
#define PROGRAM_API_TOLERANCE_H

#include "judge/trials/trials.h"
#include "program/api/handle.h"

/* The step run a hundred times, side by side where the host can; nothing of it is tight or wrong
 * when nothing in it can be late. */
enum courtwright_status tolerance_try(struct arena *scratch, const struct courtwright *book,
                                      const struct segment *segment, struct tolerance *found);
/* What is tightest in it, "3's curl off 5 to the nail"; what went wrong most often. With marks;
 * empty: nothing. */
struct str tolerance_tightest(struct arena *scratch, const struct segment *segment,
                              const struct tolerance *found);
struct str tolerance_trouble(struct arena *scratch, const struct segment *segment,
                             const struct tolerance *found);

#endif
