/* SPDX-License-Identifier: MIT */
/* staged: a segment made by hand, so that drawing is tested without a clock. Feet, x to the
 * attackers' right, y from the baseline; players run their points at an even speed. */
#ifndef TESTS_UNIT_SCENE_STAGED_H
#define TESTS_UNIT_SCENE_STAGED_H

#include "picture/scene/scene.h"

enum { STAGED_POINTS = 12, STAGED_TASKS = 24 };

struct staged {
    struct arena *arena;
    struct play *play;
    struct step *step;
    struct segment *segment;
    struct diagram diagram;
    struct staged_run {
        double start, end;
        struct vec2 at[STAGED_POINTS];
        size_t count;
    } run[BODY_COUNT][STAGED_TASKS];
    size_t runs[BODY_COUNT];
    struct vec2 home[BODY_COUNT];
    double ball_since;
    body ball;
};

struct vec2 staged_feet(const struct staged *staged, double x, double y);
void staged_begin(struct staged *staged, struct arena *arena, enum court_code court);
void staged_stands(struct staged *staged, body who, double x, double y);
void staged_ball(struct staged *staged, body who);
/* A movement through points (x, y pairs in feet) from `start` seconds on; returns its task. */
size_t staged_move(struct staged *staged, enum task_kind kind, body who, double start,
                   double seconds, const double *points, size_t count);
/* The screen ends where the points end, on defender `on`, looking at him. */
size_t staged_screen(struct staged *staged, body who, body on, double start, double seconds,
                     const double *points, size_t count);
size_t staged_pass(struct staged *staged, body who, body to, double released, double caught);
size_t staged_handoff(struct staged *staged, body who, body to, double time);
size_t staged_shot(struct staged *staged, body who, double time);
struct task *staged_task(struct staged *staged, size_t index);
/* Fills tracks and times; the diagram is ready. */
void staged_end(struct staged *staged);

#endif
