/* SPDX-License-Identifier: MIT */
/* told: a coach's text resolved and run in one call, for the suites of ties and steps. */
#ifndef TESTS_UNIT_SIM_TOLD_H
#define TESTS_UNIT_SIM_TOLD_H

#include "floor/sim/sim.h"
#include "resolved.h"
#include "suite.h"

struct told {
    struct resolved text;
    const struct play *play; /* the last one of the text */
    struct run *run;
};
void told_run(struct told *told, const char *text);
/* Everything that was said, one a line. */
const char *told_said(struct told *told);
/* Nothing was said against it, in reading it or in running it. */
void told_is_sound(struct told *told);
/* It says this; the text of the message must hold `words`. */
void told_says(struct told *told, const char *id, const char *words);
/* The segment of "2" or "2b"; the time of a moment of its task, which must have been. */
const struct segment *told_segment(const struct told *told, int step, int branch);
double told_time(const struct segment *segment, size_t task, enum moment moment);

#endif
