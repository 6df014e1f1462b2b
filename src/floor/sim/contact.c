/* SPDX-License-Identifier: MIT */
/* contact: bodies are circles, soft at the rim, that do not pass through each other: the deeper two
 * are in each other, the more is taken of the speed at which they still come together, so that no
 * moment is the first and no hit is a jump of the speed. They come apart slowly, with a dead band,
 * so that nobody trembles against a body; a set screener does not give way. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define NEAR (2 * MOTION_BODY + BRUSH)
#define DEAD .015       /* m of overlap that is left alone */
#define STOPS 5000.0    /* 1/(m s): two who meet at 5 m/s stop 4.5 cm in each other (ours) */
#define DEEPEST .045    /* m */
#define PRESSED .025    /* m: from there on both give way, the deeper the more alike (ours) */
#define PUSH 20.0       /* 1/s: so fast is an overlap taken away, */
#define PUSH_MOST 2.4   /* m/s: and no faster than one is pushed aside, */
#define SHOVED_MOST 3.4 /* or, who is deeper than DEEPEST in another, shoved (ours) */
#define BRUSH .01       /* m of air in which one still rubs */
#define RUB_SPEED 1.2   /* m/s: above it, rubbing a set screen costs speed */
#define RUB 3.0         /* m/s^2 (ours) */
#define RUNNING 1.0     /* m/s */
#define RUNNER .1       /* share of an overlap that a running attacker gives way */
#define WALKS .2        /* m/s: who comes on faster than that walks into the other */
#define NUDGED .15      /* share that a team-mate gives way who is walked into (ours) */
#define LEAN .04        /* m that two who exchange the ball lean past each other (ours) */
#define LOOKS 1.0       /* m: further off nobody touches within a tick, whatever he runs, */
#define REACH 2.0       /* and whoever is as far off is not so near before the next beat (ours) */
#define LINE .15        /* m inside the boundary: feet stay on the floor */

/* How much he stands and wants to: his feet are planted. */
static double stands(const struct agent *a)
{
    bool wants = a->command.x != 0 || a->command.y != 0;
    return wants ? 0 : 1 - real_smooth(vec2_length(a->m.v), WALKS / 2, 1.5 * WALKS);
}

/* Of two team-mates he gives way who walks into the other; and when only one of them stands, that
 * one leans out of the way, and does not start to walk: in `legs`. */
static double give_to_mate(const struct agent *a, const struct agent *b, struct vec2 way, bool legs)
{
    double from_a = real_max(0, vec2_dot(a->m.v, way)),
           from_b = real_max(0, -vec2_dot(b->m.v, way));
    double both = from_a + from_b, walks = real_smooth(both, WALKS / 2, 1.5 * WALKS);
    double share = both > 0 ? real_mix(NUDGED, 1 - NUDGED, from_a / both) : .5;
    double gives = real_mix(.5, share, walks), more = legs ? stands(a) - stands(b) : 0;
    return more > 0 ? gives * (1 - more) : gives - (1 - gives) * more;
}

/* What an attacker gives way to a defender: a screener on his way does not push the one whom he
 * looks for; a runner is not held up; who walks into him shares; who stands is not pushed about. */
static double give_to_defender(const struct agent *attacker, const struct agent *defender,
                               struct vec2 way)
{
    if (attacker->screening && !attacker->planted && attacker->sought == defender) {
        return 1;
    }
    double walks = real_smooth(vec2_dot(attacker->m.v, way), WALKS / 2, 1.5 * WALKS);
    double runs = real_smooth(vec2_length(attacker->m.v), .7 * RUNNING, 1.3 * RUNNING);
    return real_mix(.5 * walks, RUNNER, runs);
}

/* The share that `a` gives way, of what the two are put apart or, with `legs`, of the speed that
 * they lose, `way` being the unit toward `b`: a set screener none, a shadow all. The two shares
 * make one.
 */
static double give(const struct agent *a, const struct agent *b, struct vec2 way, double t,
                   bool legs)
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
        return give_to_mate(a, b, way, legs && !a_first && !b_first);
    }
    return b->defends ? give_to_defender(a, b, way)
                      : 1 - give_to_defender(b, a, vec2_scale(way, -1));
}

/* Who is deep in another is not to go through him, whoever gives way: he may be shut in. */
static double share(const struct agent *a, const struct agent *b, struct vec2 way, double t,
                    double depth, bool legs)
{
    double gives = give(a, b, way, t, legs);
    bool fixed = a->anchored || b->anchored || a->shadow != b->shadow;
    return fixed ? gives : real_mix(gives, .5, real_smooth(depth, PRESSED, DEEPEST));
}

static void rub(struct agent *a, double dt)
{
    double speed = vec2_length(a->m.v);
    if (speed > RUB_SPEED) {
        a->m.v = vec2_scale(a->m.v, real_max(RUB_SPEED, speed - RUB * dt) / speed);
    }
}

/* What they still come toward each other is taken from them, the more the deeper they are. Whose
 * feet are planted is put aside by it (come_apart), and does not begin to walk. */
static void slow_down(const struct world *world, struct agent *a, struct agent *b, struct vec2 way,
                      double depth)
{
    double closing = vec2_dot(vec2_sub(a->m.v, b->m.v), way);
    if (closing <= 0) {
        return;
    }
    double lost = closing * motion_fades(STOPS * depth * world->h);
    double ga = share(a, b, way, world->t, depth, true);
    double gb = a->anchored && b->anchored ? 0 : 1 - ga;
    a->m.v = vec2_along(a->m.v, way, -lost * ga * (1 - stands(a)));
    b->m.v = vec2_along(b->m.v, way, lost * gb * (1 - stands(b)));
}

/* And they come apart again, slowly; what is too deep at once. */
static void come_apart(const struct world *world, struct agent *a, struct agent *b, struct vec2 way,
                       double depth)
{
    double push = (depth - DEAD) * motion_fades(PUSH * world->h);
    if (push <= 0) {
        return;
    }
    push = real_max(real_min(push, PUSH_MOST * world->h),
                    real_min(depth - DEEPEST, SHOVED_MOST * world->h));
    double ga = share(a, b, way, world->t, depth, false);
    double gb = a->anchored && b->anchored ? 0 : 1 - ga;
    a->m.at = vec2_along(a->m.at, way, -push * ga);
    b->m.at = vec2_along(b->m.at, way, push * gb);
}

static void part(const struct world *world, struct agent *a, struct agent *b, double least)
{
    struct vec2 gap = vec2_sub(b->m.at, a->m.at);
    double far = vec2_length(gap), depth = least - far;
    if (depth < -BRUSH || far < 1e-9) {
        return;
    }
    if (a->anchored != b->anchored) {
        rub(a->anchored ? b : a, world->h);
    }
    if (depth > 0) {
        struct vec2 way = vec2_scale(gap, 1 / far);
        slow_down(world, a, b, way, depth);
        come_apart(world, a, b, way, depth);
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
    double side = court->half_width - LINE, near = court->baseline + LINE;
    double far = world->play->full_floor ? 2 * court->half_court - court->baseline - LINE : 1e9;
    if (p.x < -side || p.x > side) {
        a->m.at.x = p.x < 0 ? -side : side;
        a->m.v.x = 0;
    }
    if (p.y < near || p.y > far) {
        a->m.at.y = p.y < near ? near : far;
        a->m.v.y = 0;
    }
}

static bool are_far(struct vec2 gap, double reach)
{
    return gap.x > reach || gap.x < -reach || gap.y > reach || gap.y < -reach;
}

void contact_list(struct world *world)
{
    world->nears = 0;
    for (int i = 0; i < world->bodies; i++) {
        struct vec2 at = world->agent[world->present[i]].m.at;
        for (int k = i + 1; k < world->bodies; k++) {
            struct vec2 to = world->agent[world->present[k]].m.at;
            if (!are_far(vec2_sub(to, at), REACH)) {
                world->near[world->nears++] =
                    (struct meeting){world->present[i], world->present[k]};
            }
        }
    }
}

void contact_look(struct world *world, double seconds)
{
    world->meetings = 0;
    for (int i = 0; i < world->bodies; i++) {
        world->agent[world->present[i]].meets = false;
    }
    for (int i = 0; i < world->nears; i++) {
        struct agent *a = &world->agent[world->near[i].a], *b = &world->agent[world->near[i].b];
        struct vec2 gap = vec2_sub(b->m.at, a->m.at);
        if (are_far(gap, LOOKS)) {
            continue; /* most of them */
        }
        double reach = NEAR + seconds * vec2_length(vec2_sub(b->m.v, a->m.v));
        if (vec2_square(gap) < reach * reach) {
            world->meeting[world->meetings++] = world->near[i];
            a->meets = b->meets = true;
        }
    }
}

void contact_part(struct world *world)
{
    for (int i = 0; i < world->meetings; i++) {
        struct agent *a = &world->agent[world->meeting[i].a];
        struct agent *b = &world->agent[world->meeting[i].b];
        part(world, a, b, least_gap(a, b));
    }
}

void contact_bound(struct world *world, body b)
{
    struct agent *a = &world->agent[b];
    double speed = vec2_square(a->m.v), most = a->level->sprint;
    if (speed > most * most) { /* a bump makes nobody faster than his legs */
        a->m.v = vec2_scale(a->m.v, most / real_sqrt(speed));
    }
    if (!a->outside && b != BODY_COACH) {
        keep_inside(world, a);
    }
}
