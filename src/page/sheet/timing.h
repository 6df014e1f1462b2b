/* SPDX-License-Identifier: MIT */
/* timing: one way through a step on the clock: a lane for the ball and one for each attacker, what
 * each does as boxes over its seconds. Private to sheet. */
#ifndef PAGE_SHEET_TIMING_H
#define PAGE_SHEET_TIMING_H

#include "page/sheet/galley.h"
#include "page/sheet/words.h"

struct timing_form;
extern const struct timing_form timing_whole, timing_column;
/* `wide` across, from 0 to the next whole second. */
struct galley *timing_set(const struct setter *setter, const struct segment *segment,
                          const struct timing_form *form, double wide);
/* Is there anything to show: somebody who runs, screens or passes? */
bool timing_holds(const struct segment *segment);
/* Is a screen set in it, which has a heavy edge? */
bool timing_has_set(const struct segment *segment);

#endif
