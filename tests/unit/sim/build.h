/* SPDX-License-Identifier: MIT */
/* build: plays made by hand, so that the clock can be tested without a word of text. */
#ifndef TESTS_UNIT_SIM_BUILD_H
#define TESTS_UNIT_SIM_BUILD_H

#include "floor/motion/motion.h"
#include "floor/sim/sim.h"

/* A five-on-five play on the high-school floor at u16, 1 has the ball. */
struct play *build_play(struct arena *arena, enum defense_kind defense);
void build_place(struct play *play, int player, double x_feet, double y_feet);
void build_formation(struct play *play, const char *squeezed);
struct step *build_step(struct arena *arena, struct play *play);
struct branch *build_branch(struct arena *arena, struct step *step, const char *title);
void build_condition(struct arena *arena, struct branch *branch, int defender, enum verb verb);
/* Adds a task to the branch, or to the step when it is NULL; returns it, until the next is added.
 */
struct task *build_task(struct arena *arena, struct step *step, struct branch *branch, int who,
                        enum verb verb);
void build_to(struct task *task, double x_feet, double y_feet);
void build_to_spot(const struct play *play, struct task *task, enum spot spot, enum side side);
void build_wait(struct arena *arena, struct task *task, int on, enum moment moment, bool fixed);
/* The play seen in a mirror: x and sides; numbers stay. */
struct play *build_mirror(struct arena *arena, const struct play *play);

#endif
