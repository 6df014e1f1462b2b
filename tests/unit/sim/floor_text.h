/* SPDX-License-Identifier: MIT */
/* floor_text: a play's text run on the clock in one call, and what is measured in the run. */
#ifndef TESTS_UNIT_SIM_FLOOR_TEXT_H
#define TESTS_UNIT_SIM_FLOOR_TEXT_H

#include "floor/sim/sim.h"
#include "resolved.h"
#include "suite.h"

struct ran {
    struct resolved text;
    const struct run *run; /* of the first play; NULL when the text is not one */
};
/* Everything in the running test's arena. */
void floor_text(struct ran *out, struct str text);
/* The run of a text in which there is no error; else the test fails. */
const struct run *floor_run(const char *text);
/* What was said against it, one a line. */
const char *floor_said(const struct ran *ran);
/* The first task of `who` of that kind in the segment, or -1. */
int floor_task(const struct segment *segment, int who, enum task_kind kind);
double floor_moment(const struct segment *segment, int task, enum moment moment);
/* Metres from an attacker to the nearest of all defenders, and to one of them, at t. */
double floor_room(const struct segment *segment, int player, double t);
double floor_off(const struct segment *segment, int player, int defender, double t);

#endif
