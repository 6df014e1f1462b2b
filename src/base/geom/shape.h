/* SPDX-License-Identifier: MIT */
/* shape: distances, crossings, tangents and hulls of simple shapes. */
#ifndef BASE_GEOM_SHAPE_H
#define BASE_GEOM_SHAPE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/geom/vec2.h"

/* Distance from p to the segment ab; *t (may be NULL) is where along it, 0..1. */
double segment_distance(struct vec2 p, struct vec2 a, struct vec2 b, double *t);
/* To the nearest of a way's pieces; with fewer than two points: 1e9. */
double way_distance(struct vec2 p, const struct vec2 *way, size_t count);
double segment_gap(struct vec2 a, struct vec2 b, struct vec2 c,
                   struct vec2 d); /* 0 if they cross */
/* Between the nearest of two ways' pieces, 0 if they cross; 1e9 where one has fewer than two
 * points. */
double way_gap(const struct vec2 *a, size_t a_count, const struct vec2 *b, size_t b_count);
/* Where ab and cd cross: *t along ab, *u along cd, both 0..1. Parallel ones do not cross. */
bool segment_cross(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d, double *t,
                   double *u);
/* The point where a straight way from p to goal should turn so as to pass the circle (c, r) on the
 * nearer side; false when the way is free. p inside the circle turns straight out. */
bool circle_detour(struct vec2 p, struct vec2 goal, struct vec2 c, double r, struct vec2 *turn);
/* How far round a place a way goes from its first point to its last, radians, positive from x to y;
 * two ways between the same ends pass the place on the same side if they go as far. */
double sweep_round(struct vec2 place, const struct vec2 *way, size_t count);
/* What of a convex polygon lies behind the line through `at` that is square to `out`, seen along
 * `out`: its corners in order, at most count + 1 of them, to `kept`; returns how many. */
size_t polygon_cut(const struct vec2 *points, size_t count, struct vec2 at, struct vec2 out,
                   struct vec2 *kept);
double polygon_area(const struct vec2 *points, size_t count); /* unsigned */
/* Corners of the convex hull in order; writes at most `count` points to `hull`, returns how many.
 */
size_t hull_of(struct arena *arena, const struct vec2 *points, size_t count, struct vec2 *hull);
struct box2 {
    struct vec2 low, high;
};
bool box_overlap(struct box2 a, struct box2 b);

#endif
