/* SPDX-License-Identifier: MIT */
/* path: a polyline measured along itself. Takes points, gives lengths, points and pieces; pure. */
#include "base/geom/path.h"

#include <assert.h>
#include <math.h>

#include "base/geom/shape.h"
#include "base/real.h"

struct path path_of(struct arena *arena, const struct vec2 *points, size_t count)
{
    assert(count > 0);
    struct path path = {arena_array(arena, struct vec2, count), arena_array(arena, double, count),
                        count};
    for (size_t i = 0; i < count; i++) {
        path.at[i] = points[i];
        path.along[i] = i ? path.along[i - 1] + vec2_distance(points[i - 1], points[i]) : 0;
    }
    return path;
}

double path_length(const struct path *path)
{
    return path->along[path->count - 1];
}

/* The last chord that starts at or before `along`; chords of no length are passed over. */
static size_t chord_at(const struct path *path, double along)
{
    size_t low = 0, high = path->count - 1;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (path->along[middle] <= along) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

struct vec2 path_point(const struct path *path, double along)
{
    if (!(along > 0)) {
        return path->at[0];
    }
    if (along >= path_length(path)) {
        return path->at[path->count - 1];
    }
    size_t i = chord_at(path, along);
    double chord = path->along[i + 1] - path->along[i];
    return vec2_mix(path->at[i], path->at[i + 1], chord > 0 ? (along - path->along[i]) / chord : 0);
}

struct vec2 path_direction(const struct path *path, double along)
{
    if (!(path_length(path) > 0)) {
        return (struct vec2){0, 0};
    }
    size_t i = chord_at(path, real_clamp(along, 0, path_length(path)));
    while (i > 0 && path->along[i + 1] <= path->along[i]) {
        i--; /* the end is repeated */
    }
    while (path->along[i + 1] <= path->along[i]) {
        i++; /* the start is */
    }
    return vec2_unit(vec2_sub(path->at[i + 1], path->at[i]));
}

double path_nearest(const struct path *path, struct vec2 p, double from)
{
    double best = real_clamp(from, 0, path_length(path));
    double least = vec2_distance(path_point(path, best), p);
    for (size_t i = 0; i + 1 < path->count; i++) {
        if (path->along[i + 1] <= from) {
            continue;
        }
        double t, chord = path->along[i + 1] - path->along[i];
        segment_distance(p, path->at[i], path->at[i + 1], &t);
        double along = real_max(path->along[i] + t * chord, from);
        double distance = vec2_distance(path_point(path, along), p);
        if (distance < least) {
            least = distance;
            best = along;
        }
    }
    return best;
}

struct path path_cut(struct arena *arena, const struct path *path, double from, double to)
{
    from = real_clamp(from, 0, path_length(path));
    to = real_clamp(to, from, path_length(path));
    struct vec2 *points = arena_array(arena, struct vec2, path->count + 2);
    size_t count = 0;
    points[count++] = path_point(path, from);
    for (size_t i = 0; i < path->count; i++) {
        if (path->along[i] > from && path->along[i] < to) {
            points[count++] = path->at[i];
        }
    }
    if (to > from) {
        points[count++] = path_point(path, to);
    }
    return path_of(arena, points, count);
}

struct path path_resample(struct arena *arena, const struct path *path, double step)
{
    double length = path_length(path);
    if (!(length > 0) || !(step > 0)) {
        return path_of(arena, path->at, 1);
    }
    size_t chords = (size_t)real_max(1, floor(length / step + 0.999999));
    struct vec2 *points = arena_array(arena, struct vec2, chords + 1);
    for (size_t i = 0; i <= chords; i++) {
        points[i] = path_point(path, length * ((double)i / (double)chords));
    }
    return path_of(arena, points, chords + 1);
}
