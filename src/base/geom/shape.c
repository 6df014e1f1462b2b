/* SPDX-License-Identifier: MIT */
/* shape: distances, crossings, ways round and hulls of simple shapes. Pure. */
#include "base/geom/shape.h"

#include <math.h>
#include <stdlib.h>

#include "base/real.h"

double segment_distance(struct vec2 p, struct vec2 a, struct vec2 b, double *t)
{
    struct vec2 way = vec2_sub(b, a);
    double square = vec2_dot(way, way);
    double share = square > 0 ? real_clamp(vec2_dot(vec2_sub(p, a), way) / square, 0, 1) : 0;
    if (t) {
        *t = share;
    }
    return vec2_distance(p, vec2_mix(a, b, share));
}

/* The square of how far it is from p to ab. */
static double segment_square(struct vec2 p, struct vec2 a, struct vec2 b)
{
    struct vec2 way = vec2_sub(b, a), off = vec2_sub(p, a);
    double length = vec2_square(way), along = vec2_dot(off, way);
    if (along <= 0) {
        return vec2_square(off);
    }
    if (along >= length) {
        return vec2_square(vec2_sub(p, b));
    }
    double across = vec2_cross(off, way);
    return across * across / length;
}

/* Asked for every place that a number might have, so a root is drawn but once. */
double way_distance(struct vec2 p, const struct vec2 *way, size_t count)
{
    double least = 1e18;
    for (size_t i = 1; i < count; i++) {
        least = real_min(least, segment_square(p, way[i - 1], way[i]));
    }
    return real_sqrt(least);
}

bool segment_cross(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d, double *t, double *u)
{
    struct vec2 first = vec2_sub(b, a), second = vec2_sub(d, c), apart = vec2_sub(c, a);
    double turn = vec2_cross(first, second);
    if (turn == 0) {
        return false;
    }
    double along = vec2_cross(apart, second) / turn, across = vec2_cross(apart, first) / turn;
    if (!(along >= 0 && along <= 1 && across >= 0 && across <= 1)) {
        return false;
    }
    if (t) {
        *t = along;
    }
    if (u) {
        *u = across;
    }
    return true;
}

double segment_gap(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d)
{
    if (segment_cross(a, b, c, d, NULL, NULL)) {
        return 0;
    }
    double ends = real_min(segment_distance(a, c, d, NULL), segment_distance(b, c, d, NULL));
    return real_min(ends,
                    real_min(segment_distance(c, a, b, NULL), segment_distance(d, a, b, NULL)));
}

double way_gap(const struct vec2 *a, size_t a_count, const struct vec2 *b, size_t b_count)
{
    double least = 1e9;
    for (size_t i = 0; i + 1 < a_count; i++) {
        for (size_t j = 0; j + 1 < b_count; j++) {
            least = real_min(least, segment_gap(a[i], a[i + 1], b[j], b[j + 1]));
        }
    }
    return least;
}

/* Whole turns only count where the way crosses the ray behind the place, as seen from where it
 * begins. */
double sweep_round(struct vec2 place, const struct vec2 *way, size_t count)
{
    struct vec2 first = vec2_sub(way[0], place), last = first;
    double side = 0;
    int turns = 0;
    for (size_t i = 1; i < count; i++) {
        struct vec2 at = vec2_sub(way[i], place);
        double now = vec2_cross(first, at);
        if ((side < 0) != (now < 0)) {
            /* where the two points' line meets that of the ray */
            double behind = vec2_dot(first, last) * fabs(now) + vec2_dot(first, at) * fabs(side);
            turns += behind < 0 ? (now < 0 ? 1 : -1) : 0;
        }
        side = now;
        last = at;
    }
    return real_atan2(vec2_cross(first, last), vec2_dot(first, last)) + 2 * REAL_PI * turns;
}

/* Where the tangent from p, turned round the circle toward the goal, meets the tangent from the
 * goal. Ends close to the circle's edge have theirs meet far away: then the turn is on p's tangent
 * twice the radius out, and whoever gets there asks again. */
static struct vec2 tangents_meet(struct vec2 out, struct vec2 goal_out, struct vec2 c, double r)
{
    double first = real_acos(r / vec2_length(out));
    double second = real_acos(r / vec2_length(goal_out));
    double half = (vec2_angle(out, goal_out) - first - second) / 2;
    half = real_clamp(half, 0, REAL_PI / 3);
    double side = vec2_cross(out, goal_out) < 0 ? -1 : 1;
    struct vec2 direction = vec2_turn(vec2_unit(out), side * (first + half));
    return vec2_along(c, direction, r / real_cos(half));
}

bool circle_detour(struct vec2 p, struct vec2 goal, struct vec2 c, double r, struct vec2 *turn)
{
    struct vec2 way = vec2_sub(goal, p), out = vec2_sub(p, c), goal_out = vec2_sub(goal, c);
    double far = vec2_length(out);
    if (vec2_length(way) == 0 || !(r > 0)) {
        return false;
    }
    if (far < r) {
        if (far > 0 && vec2_dot(out, way) >= 0) {
            return false; /* it only gets farther */
        }
        *turn = vec2_along(c, vec2_unit(far > 0 ? out : vec2_left(way)), r);
        return true;
    }
    r = real_min(r, vec2_length(goal_out)); /* whoever ends inside passes no closer than he ends */
    double t, gap = segment_distance(c, p, goal, &t);
    if (gap >= r * (1 - 1e-9) || t <= 0 || t >= 1) {
        return false;
    }
    *turn = tangents_meet(out, goal_out, c, r);
    return true;
}

size_t polygon_cut(const struct vec2 *points, size_t count, struct vec2 at, struct vec2 out,
                   struct vec2 *kept)
{
    size_t size = 0;
    for (size_t i = 0; i < count; i++) {
        struct vec2 p = points[i], next = points[(i + 1) % count];
        double far = vec2_dot(vec2_sub(p, at), out), next_far = vec2_dot(vec2_sub(next, at), out);
        if (far <= 0) {
            kept[size++] = p;
        }
        if ((far < 0 && next_far > 0) || (far > 0 && next_far < 0)) {
            kept[size++] = vec2_mix(p, next, far / (far - next_far));
        }
    }
    return size;
}

double polygon_area(const struct vec2 *points, size_t count)
{
    double twice = 0;
    for (size_t i = 0; i < count; i++) {
        twice += vec2_cross(points[i], points[(i + 1) % count]);
    }
    return fabs(twice) / 2;
}

static int by_x_then_y(const void *a, const void *b)
{
    const struct vec2 *first = a, *second = b;
    if (first->x != second->x) {
        return first->x < second->x ? -1 : 1;
    }
    return (first->y > second->y) - (first->y < second->y);
}

/* Adds p to a chain that only turns one way; corners that it leaves inside go. `least`: the length
 * of what must stay. */
static size_t chain_add(struct vec2 *chain, size_t count, size_t least, struct vec2 p)
{
    while (count > least && vec2_cross(vec2_sub(chain[count - 1], chain[count - 2]),
                                       vec2_sub(p, chain[count - 2])) <= 0) {
        count--;
    }
    chain[count] = p;
    return count + 1;
}

size_t hull_of(struct arena *arena, const struct vec2 *points, size_t count, struct vec2 *hull)
{
    struct vec2 *sorted = arena_array(arena, struct vec2, count + 1);
    struct vec2 *chain = arena_array(arena, struct vec2, 2 * count + 2);
    size_t distinct = 0, size = 0;
    for (size_t i = 0; i < count; i++) {
        sorted[i] = points[i];
    }
    qsort(sorted, count, sizeof *sorted, by_x_then_y);
    for (size_t i = 0; i < count; i++) {
        if (!distinct || by_x_then_y(&sorted[i], &sorted[distinct - 1]) != 0) {
            sorted[distinct++] = sorted[i];
        }
    }
    for (size_t i = 0; i < distinct; i++) {
        size = chain_add(chain, size, 1, sorted[i]);
    }
    size_t lower = size;
    for (size_t i = distinct; i-- > 1;) {
        size = chain_add(chain, size, lower, sorted[i - 1]);
    }
    if (size > 1) {
        size--; /* the way back ends where it began */
    }
    for (size_t i = 0; i < size; i++) {
        hull[i] = chain[i];
    }
    return size;
}

bool box_overlap(struct box2 a, struct box2 b)
{
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}
