/* SPDX-License-Identifier: MIT */
/* route: the points of a way by its shape: lines, bows, and arcs round a body by the tangent. Pure
 * geometry; must not know speeds. */
#include "floor/motion/motion.h"

#include <math.h>

#include "base/real.h"

#define ARC_STEP .12 /* rad between the points of an arc */
#define ARC_MOST 4.4 /* rad: more than that is not a way round but a circle */
#define ON_LINE .02  /* m: nearer than this nobody can say on which side */
#define EASE .8      /* m of way that a soft turn takes on either side */

void route_start(struct route *route, struct arena *arena, struct vec2 from)
{
    *route = (struct route){.arena = arena};
    VEC_PUSH(arena, &route->points, from);
}

static struct vec2 last_point(const struct route *route)
{
    return route->points.at[route->points.count - 1];
}

void route_to(struct route *route, struct vec2 to)
{
    VEC_PUSH(route->arena, &route->points, to);
}

void route_corner(struct route *route, struct vec2 at)
{
    route_to(route, at);
    route->has_corner = true;
    route->corner = at;
}

double route_length(const struct route *route)
{
    double length = 0;
    for (size_t i = 1; i < route->points.count; i++) {
        length += vec2_distance(route->points.at[i - 1], route->points.at[i]);
    }
    return length;
}

double route_side(struct vec2 from, struct vec2 to, struct vec2 p, const struct tie_side *tie)
{
    struct vec2 way = vec2_unit(vec2_sub(to, from));
    double off = vec2_cross(way, vec2_sub(p, from));
    if (fabs(off) < ON_LINE) {
        off = vec2_cross(way, vec2_sub(tie->ball, from));
    }
    if (fabs(off) < ON_LINE) {
        return tie->hand;
    }
    return off > 0 ? 1 : -1;
}

/* Rotates the unit vector u by the angle whose cosine and sine are given, toward `turn`. */
static struct vec2 rotate(struct vec2 u, double c, double s, double turn)
{
    struct vec2 left = vec2_left(u);
    return vec2_of(u.x * c + left.x * s * turn, u.y * c + left.y * s * turn);
}

/* From the circle's middle to where the tangent from or to p touches it. */
static struct vec2 touch(struct vec2 p, struct vec2 c, double r, double turn)
{
    struct vec2 out = vec2_sub(p, c);
    double far = vec2_length(out), cosine = far > r ? r / far : 1;
    return rotate(vec2_unit(out), cosine, real_sqrt(1 - cosine * cosine), turn);
}

/* A corner at `via` between from and to, softened by a quadratic curve. */
static void soften(struct route *route, struct vec2 via, struct vec2 to)
{
    struct vec2 from = last_point(route);
    double before = vec2_distance(from, via), after = vec2_distance(via, to);
    struct vec2 a = vec2_mix(via, from, before > 0 ? real_min(EASE, before * .6) / before : 0);
    struct vec2 b = vec2_mix(via, to, after > 0 ? real_min(EASE, after * .6) / after : 0);
    for (int i = 0; i <= 8; i++) {
        double t = i / 8.0;
        route_to(route, vec2_mix(vec2_mix(a, via, t), vec2_mix(via, b, t), t));
    }
    route_to(route, to);
}

static void wrap(struct route *route, struct vec2 c, double r, double turn, struct vec2 via,
                 struct vec2 to)
{
    struct vec2 in = touch(last_point(route), c, r, turn), out = touch(to, c, r, -turn);
    double arc = real_atan2(turn * vec2_cross(in, out), vec2_dot(in, out));
    if (arc < -1.6) {
        arc += 2 * REAL_PI;
    }
    if (arc <= 0 || arc > ARC_MOST) {
        soften(route, via, to);
        return;
    }
    int pieces = (int)(arc / ARC_STEP) + 1;
    for (int i = 0; i <= pieces; i++) {
        double angle = arc * i / pieces;
        route_to(route, vec2_along(c, rotate(in, real_cos(angle), real_sin(angle), turn), r));
    }
    route_to(route, to);
}

void route_round(struct route *route, struct vec2 c, double r, double turn, struct vec2 to)
{
    struct vec2 from = last_point(route);
    struct vec2 right = vec2_scale(vec2_left(vec2_unit(vec2_sub(to, from))), -turn);
    struct vec2 via = vec2_along(c, right, r);
    route->has_shoulder = true;
    route->shoulder = via;
    wrap(route, c, r, turn, via, to);
}

void route_shoulder(struct route *route, struct vec2 c, struct vec2 out, double near, double radius,
                    struct vec2 to)
{
    struct vec2 from = last_point(route);
    struct vec2 via = vec2_along(c, out, near), middle = vec2_along(via, out, -radius);
    struct vec2 on = vec2_left(out);
    double ahead =
        vec2_dot(on, vec2_unit(vec2_sub(via, from))) + vec2_dot(on, vec2_unit(vec2_sub(to, via)));
    double turn = ahead > 0 ? 1 : -1; /* going left(out) past `out` turns from x toward y */
    route->has_shoulder = true;
    route->shoulder = via;
    if (vec2_distance(from, middle) < radius || vec2_distance(to, middle) < radius) {
        soften(route, via, to);
        return;
    }
    wrap(route, middle, radius, turn, via, to);
}

void route_bow(struct route *route, struct vec2 to, double bow, struct vec2 from_point,
               const struct tie_side *tie)
{
    struct vec2 from = last_point(route);
    double side = route_side(from, to, from_point, tie);
    struct vec2 aside = vec2_scale(vec2_left(vec2_unit(vec2_sub(to, from))), -side);
    int pieces = 12;
    for (int i = 1; i <= pieces; i++) {
        double t = (double)i / pieces;
        struct vec2 p = vec2_mix(from, to, t);
        route_to(route, i == pieces ? to : vec2_along(p, aside, 4 * bow * t * (1 - t)));
    }
}

struct vec2 route_outward(struct vec2 user, struct vec2 screener, struct vec2 exit,
                          const struct tie_side *tie)
{
    struct vec2 turned =
        vec2_add(vec2_unit(vec2_sub(user, screener)), vec2_unit(vec2_sub(exit, screener)));
    double side = route_side(user, exit, tie->ball, tie);
    struct vec2 to_ball = vec2_scale(vec2_left(vec2_unit(vec2_sub(exit, user))), side * .35);
    struct vec2 out = vec2_sub(to_ball, turned);
    return vec2_length(out) > 1e-6 ? vec2_unit(out) : vec2_unit(to_ball);
}
