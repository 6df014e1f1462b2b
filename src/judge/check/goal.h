/* SPDX-License-Identifier: MIT */
/* goal: what a drill asks for in seconds, beside what the run of it takes. For the coach alone: to
 * players a goal is what the coach wrote. */
#ifndef JUDGE_CHECK_GOAL_H
#define JUDGE_CHECK_GOAL_H

#include "floor/sim/run.h"

/* "As drawn the ball is over half court after 7.6 s, not within 6 s: change the goal or the
 * drill.", "As drawn once through takes 5.9 s."; empty where the goal has no seconds or nothing was
 * run. */
struct str goal_measured(struct arena *arena, const struct run *run);

#endif
