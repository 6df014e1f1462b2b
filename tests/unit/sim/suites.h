/* SPDX-License-Identifier: MIT */
/* suites: what the test files of the clock share. */
#ifndef TESTS_UNIT_SIM_SUITES_H
#define TESTS_UNIT_SIM_SUITES_H

#include "build.h"
#include "suite.h"

extern struct diags sim_diags;
struct run *sim_of(const struct play *play); /* runs it; its complaints are in sim_diags */
double sim_time(const struct run *run, size_t segment, size_t task, enum moment moment);
double sim_between(const struct segment *segment, int player, int other, double t);
struct str sim_dump(const struct run *run);

TCase *sim_screen_tests(void);
TCase *sim_whole_tests(void);

#endif
