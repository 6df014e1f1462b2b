/* SPDX-License-Identifier: MIT */
/* fit: a polyline drawn as few smooth cubic curves, and curves back to points. Takes a path and a
 * tolerance; pure.
 *
 * The path is cut at its corners. In each part the longest beginning that one cubic follows within
 * the tolerance is sought, then the next, each starting in the direction the last one ended in. A
 * cubic's ends and end directions are given, so only the lengths of its two handles are free: least
 * squares give them for known parameters, and the parameters are improved in turn by Newton's
 * method on the distance to each point. */
#include "base/geom/path.h"

#include <math.h>

#include "base/real.h"
#include "base/vec.h"

enum { PASSES = 12, DENSE_MOST = 1200 };
#define DENSE 3 /* tolerances between points: a cubic that is held at both bends less between */
#define STRAIGHT 0.2 /* of the tolerance: points that near the chord are a line */
#define HOPELESS 4   /* tolerances off after the first passes: it will not be reached */

struct part { /* the stretch being fitted: points without repeats, and where along they lie */
    const struct vec2 *at;
    const double *along;
    size_t count;
};

struct fitting {
    struct arena *arena;
    double tolerance;
    struct vec2 *tangent; /* of the path at each point of the part */
    double *t;            /* the parameter of each point */
    VEC(struct curve_piece) pieces;
};

static struct vec2 cubic_at(struct vec2 start, const struct curve_piece *piece, double t)
{
    double s = 1 - t;
    double a = s * s * s, b = 3 * s * s * t, c = 3 * s * t * t, d = t * t * t;
    return vec2_of(a * start.x + b * piece->handle1.x + c * piece->handle2.x + d * piece->end.x,
                   a * start.y + b * piece->handle1.y + c * piece->handle2.y + d * piece->end.y);
}

static struct vec2 cubic_bend(struct vec2 start, const struct curve_piece *piece, double t)
{
    struct vec2 first = vec2_sub(piece->handle1, start);
    struct vec2 middle = vec2_sub(piece->handle2, piece->handle1);
    struct vec2 last = vec2_sub(piece->end, piece->handle2);
    return vec2_along(vec2_scale(vec2_sub(middle, first), 6 * (1 - t)), vec2_sub(last, middle),
                      6 * t);
}

/* The handles that bring the cubic nearest to the points at their parameters. */
static struct curve_piece best_handles(const struct part *part, const double *t, struct vec2 leaves,
                                       struct vec2 comes)
{
    struct vec2 start = part->at[0], end = part->at[part->count - 1];
    double c00 = 0, c01 = 0, c11 = 0, x0 = 0, x1 = 0;
    for (size_t i = 0; i < part->count; i++) {
        double u = t[i], s = 1 - u;
        double b1 = 3 * s * s * u, b2 = 3 * s * u * u;
        struct vec2 a0 = vec2_scale(leaves, b1), a1 = vec2_scale(comes, -b2);
        struct vec2 still = vec2_mix(start, end, b2 + u * u * u);
        struct vec2 miss = vec2_sub(part->at[i], still);
        c00 += vec2_dot(a0, a0);
        c01 += vec2_dot(a0, a1);
        c11 += vec2_dot(a1, a1);
        x0 += vec2_dot(a0, miss);
        x1 += vec2_dot(a1, miss);
    }
    double turn = c00 * c11 - c01 * c01, chord = vec2_distance(start, end);
    double length = part->along[part->count - 1] - part->along[0];
    double first = -1, second = -1;
    if (fabs(turn) > 1e-12 * c00 * c11) {
        first = (x0 * c11 - x1 * c01) / turn;
        second = (c00 * x1 - c01 * x0) / turn;
    }
    if (!(first > 1e-3 * chord && second > 1e-3 * chord && first < length && second < length)) {
        first = second = length / 3; /* no sound answer: the plain one; the error decides */
    }
    return (struct curve_piece){vec2_along(start, leaves, first), vec2_along(end, comes, -second),
                                end};
}

/* Moves each parameter toward the foot of its point on the curve; gives the greatest distance. The
 * curve as a polynomial, start + t (c1 + t (c2 + t c3)): this is where fitting spends its time. */
static double improve(const struct part *part, const struct curve_piece *piece, double *t)
{
    struct vec2 start = part->at[0];
    struct vec2 first = vec2_sub(piece->handle1, start);
    struct vec2 middle = vec2_sub(piece->handle2, piece->handle1);
    struct vec2 c1 = vec2_scale(first, 3), c2 = vec2_scale(vec2_sub(middle, first), 3);
    struct vec2 c3 = vec2_sub(vec2_sub(piece->end, start), vec2_add(c1, c2));
    double worst = 0;
    for (size_t i = 1; i + 1 < part->count; i++) {
        double u = t[i];
        struct vec2 miss = vec2_sub(start, part->at[i]);
        miss.x += u * (c1.x + u * (c2.x + u * c3.x));
        miss.y += u * (c1.y + u * (c2.y + u * c3.y));
        struct vec2 slope =
            vec2_of(c1.x + u * (2 * c2.x + 3 * u * c3.x), c1.y + u * (2 * c2.y + 3 * u * c3.y));
        struct vec2 bend = vec2_of(2 * c2.x + 6 * u * c3.x, 2 * c2.y + 6 * u * c3.y);
        worst = real_max(worst, vec2_dot(miss, miss));
        double down = vec2_dot(slope, slope) + vec2_dot(miss, bend);
        if (down > 0) {
            t[i] = real_clamp(u - vec2_dot(miss, slope) / down, 0, 1);
        }
    }
    return real_sqrt(worst);
}

/* No place of the curve may be far from the path: each stretch between two neighbours' parameters
 * is looked at in its middle. */
static bool stays_near(const struct part *part, const struct curve_piece *piece, const double *t,
                       double tolerance)
{
    for (size_t i = 0; i + 1 < part->count; i++) {
        if (t[i + 1] < t[i]) {
            return false;
        }
        struct vec2 middle = cubic_at(part->at[0], piece, (t[i] + t[i + 1]) / 2);
        double chord = vec2_distance(part->at[i], part->at[i + 1]);
        double near =
            real_min(vec2_distance(middle, part->at[i]), vec2_distance(middle, part->at[i + 1]));
        if (near > tolerance + chord) {
            return false;
        }
    }
    return true;
}

static bool fit_one(struct fitting *fit, const struct part *part, struct vec2 leaves,
                    struct vec2 comes, struct curve_piece *piece)
{
    double *t = fit->t, length = part->along[part->count - 1] - part->along[0];
    for (size_t i = 0; i < part->count; i++) {
        t[i] = (part->along[i] - part->along[0]) / length;
    }
    double before = 0;
    for (int pass = 0; pass < PASSES; pass++) {
        *piece = best_handles(part, t, leaves, comes);
        double worst = improve(part, piece, t);
        if (worst <= fit->tolerance && stays_near(part, piece, t, fit->tolerance)) {
            return true;
        }
        if (pass >= 3 && worst > HOPELESS * fit->tolerance) {
            return false;
        }
        if (pass >= 4 && worst > before * 0.95 && worst > fit->tolerance) {
            return false; /* it no longer gets better */
        }
        before = worst;
    }
    return false;
}

static struct part part_of(const struct part *whole, size_t from, size_t to)
{
    return (struct part){whole->at + from, whole->along + from, to - from + 1};
}

/* The farthest end that one cubic from `from` reaches: doubled strides, then halved ones. */
static size_t longest(struct fitting *fit, const struct part *whole, size_t from,
                      struct curve_piece *piece)
{
    size_t last = whole->count - 1, good = from, bad = last + 1;
    for (size_t stride = last - from; good + 1 < bad;) {
        size_t to = good == from ? from + stride : good + (bad - good) / 2;
        struct part part = part_of(whole, from, to);
        struct curve_piece trial;
        if (fit_one(fit, &part, fit->tangent[from], fit->tangent[to], &trial)) {
            good = to;
            *piece = trial;
        } else {
            bad = to;
            stride = (stride + 1) / 2;
        }
        if (good == from && bad == from + 1) {
            break;
        }
    }
    return good;
}

/* At a point between two chords the circle through the three points gives the direction; at an end
 * the same circle, or the chord when there is no other. */
static void find_tangents(struct fitting *fit, const struct part *part)
{
    size_t last = part->count - 1;
    for (size_t i = 1; i < last; i++) {
        double before = part->along[i] - part->along[i - 1];
        double after = part->along[i + 1] - part->along[i];
        struct vec2 in = vec2_scale(vec2_sub(part->at[i], part->at[i - 1]), after / before);
        struct vec2 out = vec2_scale(vec2_sub(part->at[i + 1], part->at[i]), before / after);
        fit->tangent[i] = vec2_unit(vec2_add(in, out));
    }
    struct vec2 first = vec2_unit(vec2_sub(part->at[1], part->at[0]));
    struct vec2 end = vec2_unit(vec2_sub(part->at[last], part->at[last - 1]));
    fit->tangent[0] = first;
    fit->tangent[last] = end;
    if (last > 1) { /* mirrored at the chord */
        struct vec2 next = fit->tangent[1], prior = fit->tangent[last - 1];
        fit->tangent[0] =
            vec2_unit(vec2_along(vec2_scale(next, -1), first, 2 * vec2_dot(next, first)));
        fit->tangent[last] =
            vec2_unit(vec2_along(vec2_scale(prior, -1), end, 2 * vec2_dot(prior, end)));
    }
}

static struct curve_piece line_to(struct vec2 from, struct vec2 to)
{
    return (struct curve_piece){vec2_mix(from, to, 1.0 / 3), vec2_mix(from, to, 2.0 / 3), to};
}

/* Points put into the longer chords, so that the curve is held to them and not only to the corners.
 */
static struct part dense(struct arena *arena, const struct part *part, double tolerance)
{
    double length = part->along[part->count - 1] - part->along[0];
    double step = real_max(DENSE * tolerance, length / DENSE_MOST);
    VEC(struct vec2) points = {0};
    for (size_t i = 0; i + 1 < part->count; i++) {
        size_t pieces = (size_t)floor((part->along[i + 1] - part->along[i]) / step) + 1;
        for (size_t k = 0; k < pieces; k++) {
            VEC_PUSH(arena, &points,
                     vec2_mix(part->at[i], part->at[i + 1], (double)k / (double)pieces));
        }
    }
    VEC_PUSH(arena, &points, part->at[part->count - 1]);
    struct path path = path_of(arena, points.at, points.count);
    return (struct part){path.at, path.along, path.count};
}

/* Do the points go straight from the first to the last? */
static bool is_straight(const struct part *part, double off)
{
    struct vec2 first = part->at[0], last = part->at[part->count - 1];
    struct vec2 way = vec2_unit(vec2_sub(last, first));
    double before = 0;
    for (size_t i = 1; i < part->count; i++) {
        struct vec2 from = vec2_sub(part->at[i], first);
        double along = vec2_dot(from, way);
        if (fabs(vec2_cross(way, from)) > off || along < before) {
            return false;
        }
        before = along;
    }
    return true;
}

static void fit_part(struct fitting *fit, const struct part *sparse)
{
    if (is_straight(sparse, STRAIGHT * fit->tolerance)) {
        struct curve_piece piece = line_to(sparse->at[0], sparse->at[sparse->count - 1]);
        VEC_PUSH(fit->arena, &fit->pieces, piece);
        return;
    }
    struct vec2 *tangents = arena_array(fit->arena, struct vec2, sparse->count);
    fit->tangent = tangents;
    find_tangents(fit, sparse);
    struct part part = dense(fit->arena, sparse, fit->tolerance);
    struct vec2 first = tangents[0], last = tangents[sparse->count - 1];
    fit->tangent = arena_array(fit->arena, struct vec2, part.count);
    fit->t = arena_array(fit->arena, double, part.count);
    find_tangents(fit, &part);
    fit->tangent[0] = first;
    fit->tangent[part.count - 1] = last;
    for (size_t from = 0; from + 1 < part.count;) {
        struct curve_piece piece;
        size_t to = longest(fit, &part, from, &piece);
        if (to == from) { /* not even one chord bends as asked */
            to = from + 1;
            piece = line_to(part.at[from], part.at[to]);
        }
        VEC_PUSH(fit->arena, &fit->pieces, piece);
        from = to;
    }
}

struct curve path_fit(struct arena *arena, const struct path *path, double tolerance, double corner)
{
    struct fitting fit = {.arena = arena, .tolerance = real_max(tolerance, 1e-9)};
    struct vec2 *points = arena_array(arena, struct vec2, path->count);
    size_t count = 0;
    for (size_t i = 0; i < path->count; i++) {
        if (!count || vec2_distance(points[count - 1], path->at[i]) > 0) {
            points[count++] = path->at[i];
        }
    }
    struct path clean = path_of(arena, points, count);
    struct part whole = {clean.at, clean.along, clean.count};
    size_t from = 0;
    for (size_t i = 1; i < count; i++) {
        bool ends = i + 1 == count;
        if (!ends) {
            double turn = vec2_angle(vec2_sub(clean.at[i], clean.at[i - 1]),
                                     vec2_sub(clean.at[i + 1], clean.at[i]));
            ends = turn > corner;
        }
        if (ends) {
            struct part part = part_of(&whole, from, i);
            fit_part(&fit, &part);
            from = i;
        }
    }
    return (struct curve){path->at[0], fit.pieces.at, fit.pieces.count};
}

struct path curve_flatten(struct arena *arena, const struct curve *curve, double flatness)
{
    VEC(struct vec2) points = {0};
    VEC_PUSH(arena, &points, curve->start);
    struct vec2 start = curve->start;
    for (size_t i = 0; i < curve->count; i++) {
        const struct curve_piece *piece = &curve->piece[i];
        /* A chord over 1/n of the parameter leaves the curve by at most |B''| / (8 n^2). */
        double bend = real_max(vec2_length(cubic_bend(start, piece, 0)),
                               vec2_length(cubic_bend(start, piece, 1)));
        double chords = floor(sqrt(bend / (8 * real_max(flatness, 1e-6)))) + 1;
        for (double k = 1; k <= chords; k++) {
            VEC_PUSH(arena, &points, k == chords ? piece->end : cubic_at(start, piece, k / chords));
        }
        start = piece->end;
    }
    return path_of(arena, points.at, points.count);
}
