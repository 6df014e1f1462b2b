/* SPDX-License-Identifier: MIT */
/* made: a run made by hand, for checks: feet from the ring, seconds; no clock has run it. */
#ifndef TESTS_UNIT_CHECK_MADE_H
#define TESTS_UNIT_CHECK_MADE_H

#include "judge/check/check.h"

enum { MADE_STEPS = 3, MADE_TASKS = 8 };
struct made {
    struct arena *arena;
    struct play play;
    struct run run;
    struct segment segment[MADE_STEPS];
    struct step step[MADE_STEPS];
};

/* A high-school u16 play, five-out, 1 has the ball; everybody stands on his spot for `seconds`. */
struct made *made_play(struct arena *arena, double seconds);
/* One more step that goes on from the last: everybody stands where he stood. */
struct segment *made_step(struct made *made, double seconds);
/* From then on b stands there. */
void made_stand(struct made *made, struct segment *segment, body b, double x, double y);
/* b walks in a straight line from where he is at `from` seconds to (x, y) at `to` seconds. */
void made_walk(struct made *made, struct segment *segment, body b, double from, double to, double x,
               double y);
void made_ball(struct made *made, struct segment *segment, body holder, double from, double to);
void made_flight(struct made *made, struct segment *segment, body from, body target, double at,
                 double till, bool shot);
/* Adds a task that runs from `started` to `arrived` (never: TIME_NEVER); its record is at the same
 * index. The task may be changed after. */
struct task *made_task(struct made *made, struct segment *segment, enum task_kind kind,
                       enum verb verb, body who, body other, double started, double arrived);
/* 2 catches at 2 s and, from 2.5 to 4.5 s, goes `feet` across with the ball in hand. */
struct made *made_run_with_ball(struct arena *arena, double feet);
struct task_record *made_record(struct segment *segment, const struct task *task);

#endif
