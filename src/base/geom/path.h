/* SPDX-License-Identifier: MIT */
/* path: a polyline measured along itself. */
#ifndef BASE_GEOM_PATH_H
#define BASE_GEOM_PATH_H

#include <stddef.h>

#include "base/arena.h"
#include "base/geom/vec2.h"

struct path {
    struct vec2 *at; /* count points, count >= 1; repeated points are allowed */
    double *along;   /* length from the start to each point; along[0] == 0 */
    size_t count;
};

struct path path_of(struct arena *arena, const struct vec2 *points, size_t count);
double path_length(const struct path *path);
struct vec2 path_point(const struct path *path, double along);     /* clamped to the ends */
struct vec2 path_direction(const struct path *path, double along); /* unit, (0,0) for a point */
/* The length along the path of its point nearest to p, not before `from`. */
double path_nearest(const struct path *path, struct vec2 p, double from);
struct path path_cut(struct arena *arena, const struct path *path, double from, double to);
struct path path_resample(struct arena *arena, const struct path *path, double step);

/* A smooth curve as cubic pieces: each has its end and two handles; the start is `start`. */
struct curve_piece {
    struct vec2 handle1, handle2, end;
};
struct curve {
    struct vec2 start;
    struct curve_piece *piece;
    size_t count;
};

/* The fewest smooth cubics that stay within `tolerance` of the path, split at corners sharper than
 * `corner` radians. Sound for any path; a path of one point gives count 0. */
struct curve path_fit(struct arena *arena, const struct path *path, double tolerance,
                      double corner);
/* Back to points, each chord within `flatness` of the curve. */
struct path curve_flatten(struct arena *arena, const struct curve *curve, double flatness);

#endif
