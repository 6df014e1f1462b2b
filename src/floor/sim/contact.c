/* SPDX-License-Identifier: MIT */
/* contact: bodies are circles that do not pass through each other. Two passes a tick, with a dead
 * band, so that nobody trembles against a body; a set screener does not give way. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define DEAD .015     /* m of overlap that is left alone */
#define PUSH .5       /* share of the overlap taken away in a pass, */
#define PUSH_MOST 1.2 /* m/s: and no faster than one is shoved aside (ours) */
#define RUB_SPEED 1.2 /* m/s: above it, rubbing a set screen costs speed */
#define RUB 3.0       /* m/s^2 (ours) */
#define RUNNING 1.0   /* m/s */
#define RUNNER .1     /* share of an overlap that a running attacker gives way */
#define WALKS .2      /* m/s: who comes on faster than that walks into the other */
#define NUDGED .15    /* share that a team-mate gives way who is walked into (ours) */
#define LEAN .06      /* m that two who exchange the ball lean past each other (ours) */
#define LINE .15      /* m inside the boundary: feet stay on the floor */

/* He stands and wants to: his feet are planted. */
static bool stands(const struct agent *a)
{
    return a->command.x == 0 && a->command.y == 0 && vec2_square(a->m.v) < WALKS * WALKS;
}

/* One of two team-mates stands: he leans out of the other's way, and does not start to walk. */
static bool leans(const struct agent *a, const struct agent *b, double t)
{
    bool lets = t < a->let_through || t < b->let_through;
    return a->defends == b->defends && !lets && stands(a) != stands(b);
}

/* Of two team-mates he gives way who walks into the other. */
static double give_to_mate(const struct agent *a, const struct agent *b, struct vec2 way)
{
    double from_a = real_max(0, vec2_dot(a->m.v, way)),
           from_b = real_max(0, -vec2_dot(b->m.v, way));
    double both = from_a + from_b;
    return both > WALKS ? real_mix(NUDGED, 1 - NUDGED, from_a / both) : .5;
}

/* What an attacker gives way to a defender: a screener on his way does not push the one whom he
 * looks for; a runner is not held up; who walks into him shares; who stands is not pushed about. */
static double give_to_defender(const struct agent *attacker, const struct agent *defender,
                               struct vec2 way)
{
    bool looks = attacker->screening && !attacker->planted && attacker->sought == defender;
    if (looks) {
        return 1;
    }
    if (vec2_square(attacker->m.v) > RUNNING * RUNNING) {
        return RUNNER;
    }
    return vec2_dot(attacker->m.v, way) > WALKS ? .5 : 0;
}

/* The share of the overlap that `a` gives way, `way` being the unit toward `b`: a set screener
 * none, a shadow all. The two shares make one. */
static double give(const struct agent *a, const struct agent *b, struct vec2 way, double t)
{
    if (a->anchored || b->anchored) {
        return a->anchored ? 0 : 1;
    }
    if (b->shadow != a->shadow) {
        return a->shadow ? 1 : 0;
    }
    bool a_first = t < a->let_through, b_first = t < b->let_through;
    bool his_own = a->defends == b->defends || (a_first ? !a->defends : !b->defends);
    if (a_first != b_first && his_own) {
        return a_first ? 0 : 1; /* who cannot get on is let through */
    }
    if (a->defends == b->defends) {
        return give_to_mate(a, b, way);
    }
    return b->defends ? give_to_defender(a, b, way)
                      : 1 - give_to_defender(b, a, vec2_scale(way, -1));
}

static void rub(struct agent *a, double dt)
{
    double speed = vec2_length(a->m.v);
    if (speed > RUB_SPEED) {
        a->m.v = vec2_scale(a->m.v, real_max(RUB_SPEED, speed - RUB * dt) / speed);
    }
}

static void part(const struct world *world, struct agent *a, struct agent *b, double least)
{
    struct vec2 gap = vec2_sub(b->m.at, a->m.at);
    double far = vec2_length(gap);
    if (far >= least || far < 1e-9) {
        return;
    }
    struct vec2 way = vec2_scale(gap, 1 / far);
    double ga = give(a, b, way, world->t), gb = a->anchored && b->anchored ? 0 : 1 - ga;
    double dt = world->h, over = least - far - DEAD;
    if (over > 0) {
        double push = real_min(PUSH * over, PUSH_MOST * dt);
        a->m.at = vec2_along(a->m.at, way, -push * ga);
        b->m.at = vec2_along(b->m.at, way, push * gb);
    }
    double closing = vec2_dot(vec2_sub(a->m.v, b->m.v), way);
    if (closing > 0) {
        if (leans(a, b, world->t)) {
            ga = stands(a) ? 0 : 1;
            gb = 1 - ga;
        }
        a->m.v = vec2_along(a->m.v, way, -closing * ga);
        b->m.v = vec2_along(b->m.v, way, closing * gb);
    }
    if (a->anchored && !b->anchored) {
        rub(b, dt);
    } else if (b->anchored && !a->anchored) {
        rub(a, dt);
    }
}

/* A hand-off is closer than two shoulders; two who exchange the ball lean past each other. */
static double least_gap(const struct agent *a, const struct agent *b)
{
    double bodies = 2 * MOTION_BODY;
    bool mates = !a->defends && !b->defends;
    return mates && (a->coming || b->coming) ? bodies - LEAN : bodies;
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
                    part(world, a, b, least_gap(a, b));
                    met = true;
                }
            }
        }
    }
    for (int i = 0; i < world->bodies; i++) {
        struct agent *a = &world->agent[world->present[i]];
        double speed = vec2_square(a->m.v), most = a->level->sprint;
        if (speed > most * most) { /* a bump makes nobody faster than his legs */
            a->m.v = vec2_scale(a->m.v, most / real_sqrt(speed));
        }
        if (!a->outside && world->present[i] != BODY_COACH) {
            keep_inside(world, a);
        }
    }
}
