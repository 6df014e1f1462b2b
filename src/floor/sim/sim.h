/* SPDX-License-Identifier: MIT */
/* sim: the one clock. Ten players, the ball and contact advance together, 120 ticks a second; a
 * screener finds the defender where he is, a defender reacts to what was seen. Pure: the same play
 * gives the same run. */
#ifndef FLOOR_SIM_SIM_H
#define FLOOR_SIM_SIM_H

#include "floor/sim/run.h"

/* Runs every step and branch. What cannot happen (a circle of waits, a wait past its limit) is
 * reported with the sentences it is about; that segment has ran == false and holds what was run.
 * The steps behind it are run on from where everybody then is, but nothing more is said of them. */
struct run *sim_run(struct arena *arena, const struct sources *sources, const struct play *play,
                    struct diags *diags);

#endif
