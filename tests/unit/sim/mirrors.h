/* SPDX-License-Identifier: MIT */
/* mirrors: whether two runs are each other's other side. */
#ifndef TESTS_UNIT_SIM_MIRRORS_H
#define TESTS_UNIT_SIM_MIRRORS_H

#include "floor/sim/sim.h"

/* One is the other with its sides exchanged, to the last bit; else the test fails. */
void runs_are_mirrors(const struct run *run, const struct run *other);

#endif
