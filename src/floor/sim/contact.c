/* SPDX-License-Identifier: MIT */
/* contact: bodies are circles that do not pass through each other. Two passes a tick, with a dead
 * band, so that nobody trembles against a body; a set screener does not give way. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define DEAD .015     /* m of overlap that is left alone */
#define PUSH .5       /* share of the overlap taken away in a pass */
#define RUB_SPEED 1.2 /* m/s: above it, rubbing a set screen costs speed */
#define RUB 3.0       /* m/s^2 (ours) */
#define RUNNING 1.0   /* m/s */
#define RUNNER .1     /* share of an overlap that a running attacker gives way */
#define LINE .15      /* m inside the boundary: feet stay on the floor */

/* The share of the overlap that `a` gives way: a set screener none, a shadow all; a screener on his
 * way does not push the defender whom he looks for; a runner is not held up by a defender, and who
 * stands is not pushed about.
 */
static double give(const struct agent *a, const struct agent *b)
{
    if (a->anchored || b->anchored) {
        return a->anchored ? 0 : 1;
    }
    if (b->shadow != a->shadow) {
        return a->shadow ? 1 : 0;
    }
    if (a->defends != b->defends) {
        const struct agent *attacker = a->defends ? b : a;
        bool runs = vec2_length(attacker->m.v) > RUNNING;
        const struct agent *defender = a->defends ? a : b;
        bool looks = attacker->screening && !attacker->planted && attacker->sought == defender;
        double share = looks ? 1 : runs ? RUNNER : 0;
        return a->defends ? 1 - share : share;
    }
    return .5;
}

static void rub(struct agent *a, double dt)
{
    double speed = vec2_length(a->m.v);
    if (speed > RUB_SPEED) {
        a->m.v = vec2_scale(a->m.v, real_max(RUB_SPEED, speed - RUB * dt) / speed);
    }
}

static void part(struct agent *a, struct agent *b, double least, double dt)
{
    struct vec2 gap = vec2_sub(b->m.at, a->m.at);
    double far = vec2_length(gap);
    if (far >= least || far < 1e-9) {
        return;
    }
    struct vec2 way = vec2_scale(gap, 1 / far);
    double ga = give(a, b), gb = give(b, a), over = least - far - DEAD;
    if (over > 0) {
        a->m.at = vec2_along(a->m.at, way, -PUSH * over * ga);
        b->m.at = vec2_along(b->m.at, way, PUSH * over * gb);
    }
    double closing = vec2_dot(vec2_sub(a->m.v, b->m.v), way);
    if (closing > 0) {
        a->m.v = vec2_along(a->m.v, way, -closing * ga);
        b->m.v = vec2_along(b->m.v, way, closing * gb);
    }
    if (a->anchored && !b->anchored) {
        rub(b, dt);
    } else if (b->anchored && !a->anchored) {
        rub(a, dt);
    }
}

/* A hand-off is closer than two shoulders; two who exchange the ball lean past each other.
 * Team-mates who step aside for one who cannot get on leave him half a body. */
static double least_gap(const struct world *world, const struct agent *a, const struct agent *b)
{
    double bodies = 2 * MOTION_BODY;
    if (!a->defends && !b->defends && (world->t < a->let_through || world->t < b->let_through)) {
        return 0;
    }
    return a->coming || b->coming ? bodies - .06 : bodies;
}

static void keep_inside(const struct world *world, struct agent *a)
{
    struct vec2 p = a->m.at;
    const struct court *court = world->court;
    double side = court->half_width - LINE;
    double far = world->play->full_floor ? 2 * court->half_court - court->baseline - LINE : 1e9;
    double near = court->baseline + LINE;
    struct vec2 in = vec2_of(real_clamp(p.x, -side, side), real_clamp(p.y, near, far));
    if (in.x != p.x) {
        a->m.v.x = 0;
    }
    if (in.y != p.y) {
        a->m.v.y = 0;
    }
    a->m.at = in;
}

void contact_tick(struct world *world)
{
    bool met = true;
    for (int pass = 0; met && pass < 2; pass++) {
        met = false;
        for (int i = 0; i < world->bodies; i++) {
            struct agent *a = &world->agent[world->present[i]];
            for (int k = i + 1; k < world->bodies; k++) {
                struct agent *b = &world->agent[world->present[k]];
                double dx = a->m.at.x - b->m.at.x, dy = a->m.at.y - b->m.at.y;
                if (dx * dx + dy * dy < 4 * MOTION_BODY * MOTION_BODY) {
                    part(a, b, least_gap(world, a, b), world->dt);
                    met = true;
                }
            }
        }
    }
    double most = world->level->sprint;
    for (int i = 0; i < world->bodies; i++) {
        struct agent *a = &world->agent[world->present[i]];
        double speed = vec2_square(a->m.v);
        if (speed > most * most) { /* a bump makes nobody faster than his legs */
            a->m.v = vec2_scale(a->m.v, most / real_sqrt(speed));
        }
        if (!a->outside && world->present[i] != BODY_COACH) {
            keep_inside(world, a);
        }
    }
}
