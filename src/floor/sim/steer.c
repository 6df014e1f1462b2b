/* SPDX-License-Identifier: MIT */
/* steer: bends a wanted velocity round whoever stands in the way, by the tangent. The side is the
 * nearer one, kept until he is passed: changing one's mind in front of a body is how players dance.
 */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define SIGHT 2.0     /* m ahead in which a body matters (ours) */
#define AIR .06       /* m between the two, passing */
#define KEEP .4       /* s that a chosen side is kept */
#define FORESIGHT .25 /* s that a moving body is thought on */
#define RUNS .6       /* m/s: a defender who moves is run by, it is he who has to get there first */

static bool is_obstacle(const struct world *world, body who, body other, body not_him)
{
    const struct agent *a = &world->agent[who], *b = &world->agent[other];
    if (!b->here || other == who || other == not_him || b->outside) {
        return false;
    }
    bool yields = body_is_attacker(who) && body_is_defender(other) &&
                  (b->shadow || vec2_length(b->m.v) > RUNS);
    return !yields && !a->anchored;
}

/* How far off the line he is, if he is in the way; false when he is not. */
static bool in_the_way(const struct agent *a, const struct agent *b, struct vec2 way, double far,
                       double room, double *ahead, double *off)
{
    struct vec2 closing = vec2_sub(b->m.v, a->m.v);
    struct vec2 now = vec2_sub(b->m.at, a->m.at);
    struct vec2 soon = vec2_along(now, closing, FORESIGHT * .5);
    *ahead = vec2_dot(now, way);
    *off = vec2_cross(way, soon);
    if (*ahead < 0 || *ahead > real_min(SIGHT, far) || fabs(*off) >= room) {
        return false;
    }
    return vec2_dot(vec2_sub(a->m.v, b->m.v), way) > -.2; /* not running away in front */
}

/* The direction that passes the point `rel` at `room`, with it on the side `side` (+1 left). */
static struct vec2 tangent(struct vec2 rel, double room, double side)
{
    double far = vec2_length(rel);
    struct vec2 u = vec2_scale(rel, 1 / real_max(far, 1e-9));
    double sine = real_min(room / real_max(far, 1e-9), .995), cosine = real_sqrt(1 - sine * sine);
    struct vec2 right = vec2_scale(vec2_left(u), -side);
    return vec2_of(u.x * cosine + right.x * sine, u.y * cosine + right.y * sine);
}

/* On which side the other is left: where he is; head on, to the ball's side. Two who run at each
 * other must choose alike, or they dance: the first one's view holds for both. */
static double choose_side(const struct world *world, body who, body other, struct vec2 goal,
                          double off)
{
    const struct agent *a = &world->agent[who], *o = &world->agent[other];
    struct tie_side tie = world_tie(world);
    bool both = vec2_dot(a->m.v, o->m.v) < 0 && vec2_length(o->m.v) > .3;
    if (both) {
        const struct agent *first = who < other ? a : o, *second = who < other ? o : a;
        off = vec2_cross(vec2_unit(first->m.v), vec2_sub(second->m.at, first->m.at));
        goal = vec2_add(first->m.at, first->m.v);
        a = first;
    }
    if (fabs(off) > .02) {
        return off > 0 ? 1 : -1;
    }
    return -route_side(a->m.at, goal, tie.ball, &tie);
}

struct vec2 steer_round(struct world *world, body who, struct vec2 command, struct vec2 goal,
                        body not_him)
{
    struct agent *a = &world->agent[who];
    double speed = vec2_length(command), far = vec2_distance(a->m.at, goal), nearest = SIGHT;
    if (speed < .2 || far < .3 || world->t < a->let_through) {
        return command;
    }
    struct vec2 way = vec2_scale(command, 1 / speed);
    double room = 2 * MOTION_BODY + AIR, near_off = 0;
    body found = BODY_NONE;
    for (int i = 0; i < world->bodies; i++) {
        body b = world->present[i];
        const struct agent *o = &world->agent[b];
        double dx = o->m.at.x - a->m.at.x, dy = o->m.at.y - a->m.at.y, ahead, off;
        if (dx * dx + dy * dy > (SIGHT + 1) * (SIGHT + 1) || dx * way.x + dy * way.y < 0) {
            continue; /* most of them, at little cost */
        }
        if (is_obstacle(world, who, b, not_him) &&
            in_the_way(a, &world->agent[b], way, far, room, &ahead, &off) && ahead < nearest) {
            found = b;
            nearest = ahead;
            near_off = off;
        }
    }
    if (found == BODY_NONE) {
        return command;
    }
    if (a->dodged != found || world->t > a->dodge_until) {
        struct agent *o = &world->agent[found];
        a->dodge_side = choose_side(world, who, found, goal, near_off);
        a->dodged = found;
        if (vec2_dot(a->m.v, o->m.v) < 0) { /* he who comes the other way must know */
            o->dodge_side = a->dodge_side;
            o->dodged = who;
            o->dodge_until = world->t + KEEP;
        }
    }
    a->dodge_until = world->t + KEEP;
    struct vec2 rel = vec2_sub(world->agent[found].m.at, a->m.at);
    return vec2_scale(tangent(rel, room, a->dodge_side), speed);
}
