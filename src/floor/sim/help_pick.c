/* SPDX-License-Identifier: MIT */
/* help_pick: who helps: of those between the drive and the rim the one who can be on its line
 * before it, by time and not by distance; the low men first, and never one who is behind it. Takes
 * where everybody is; changes nothing. */
#include "floor/sim/help.h"

#include "base/real.h"

#define FRONT 1.3     /* m before the driver where the helper stops him */
#define RIM_LEAST 1.3 /* m: nobody takes a stand further in: the no-charge arc, 1.25 m (FIBA) */
#define AT_RIM .3     /* share of his way that is left, once he is past that */
#define LOW 4.0       /* m from the rim: a low man stands no further out (ours) */
#define AHEAD .5      /* m nearer to the rim than the driver, along his way (ours) */
#define LEADS .25     /* s until somebody who starts from rest has speed (ours), */
#define SHARE .8      /* and of the sprint what he has on so short a way (ours) */
#define SLOWEST .8    /* m/s: a driver who stands is met where he stands */
#define LATE .6       /* s: so late he can still trouble the shot (ours) */
#define SINKS 6.0     /* m from which the next one comes to the helper's man (ours) */
#define NEAR_RIM 3.0  /* m: a man so near has to be met himself, */
#define FAR_RIM 5.5   /* m: with one out here and his own the next one splits the difference */
#define OFF 1.0       /* m from the man who was left */
#define SPLIT .5      /* of the way from him to his own, */
#define DEEP .45      /* and so much of that from the rim: where the helper stood (ours) */
#define UNDER_RING (4 * FEET) /* nobody without a man there stands nearer to the baseline */
enum { STEPS = 12 };          /* points of the line that are looked at; halvings */

/* The way of the drive: from FRONT metres before him to where nobody stands further in. */
struct ahead {
    struct vec2 from, way;
    double near, far, speed;
};

static struct ahead line_of(const struct mover *seen)
{
    struct vec2 way = vec2_unit(vec2_scale(seen->at, -1));
    double left = vec2_length(seen->at), far = real_max(left - RIM_LEAST, AT_RIM * left);
    return (struct ahead){seen->at, way, real_min(FRONT, far), far,
                          real_max(SLOWEST, vec2_dot(seen->v, way))};
}

/* s that he comes later than the drive to the point `s` metres along; below 0: before it. */
static double late_at(const struct world *world, body b, const struct ahead *line, double s)
{
    const struct mover *m = &world->agent[b].m;
    struct vec2 p = vec2_along(line->from, line->way, s);
    double far = vec2_distance(vec2_along(m->at, m->v, LEADS), p);
    double time = far < FRONT / 2 ? far / world->agent[b].level->slide
                                  : LEADS + far / (SHARE * world->agent[b].level->sprint);
    return time - s / line->speed;
}

/* How far the drive comes until he can be before it; *late: s too late at the best point, or 0. */
static double meets(const struct world *world, body b, const struct ahead *line, double *late)
{
    double best = line->far;
    *late = 1e9;
    for (int i = 0; i <= STEPS; i++) {
        double s = real_mix(line->near, line->far, (double)i / STEPS);
        double by = late_at(world, b, line, s);
        if (by <= 0) {
            *late = 0;
            return s;
        }
        if (by < *late) {
            *late = by;
            best = s;
        }
    }
    return best;
}

/* Who has no man is there for it; who has something else to do is not. */
static bool is_busy(const struct world *world, body defender)
{
    body man = world->guards[defender];
    for (int s = 0; s <= BODY_COACH; s++) { /* somebody comes to screen him */
        if (world->screen[s].live && !world->screen[s].cleared &&
            world->screen[s].defender == defender) {
            return true;
        }
    }
    return guard_has_area(world, defender) || world->duty[defender].strategy != STRATEGY_NONE ||
           world->duty[defender].holds || (man != BODY_NONE && world->screen[man].live);
}

static bool may_help(const struct world *world, body b, body danger, const struct ahead *line)
{
    struct vec2 off = vec2_sub(world->agent[b].m.at, line->from);
    return world->agent[b].here && b != world->guarded[danger] && !is_busy(world, b) &&
           vec2_dot(off, line->way) > AHEAD;
}

/* Less is better: first who can be there, low; then who can be there from above; then who is least
 * late. */
static double cost_of(const struct world *world, body b, const struct ahead *line)
{
    double late, s = meets(world, b, line, &late);
    bool low = vec2_length(world->agent[b].m.at) < LOW;
    if (late > LATE) {
        return 1e9;
    }
    return late > 0 ? 1e6 + late : s + (low ? 0 : 1e3) + .1 * late_at(world, b, line, s);
}

body help_who(const struct world *world, body danger, const struct mover *seen)
{
    struct ahead line = line_of(seen);
    body best = BODY_NONE;
    double least = 1e9;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        double cost =
            may_help(world, (body)b, danger, &line) ? cost_of(world, (body)b, &line) : 1e9;
        if (cost < least) {
            least = cost;
            best = (body)b;
        }
    }
    return best;
}

struct aim help_meet(const struct world *world, body helper, const struct mover *seen)
{
    struct ahead line = line_of(seen);
    double low = line.near, high = line.far;
    if (late_at(world, helper, &line, low) <= 0) {
        high = low;
    }
    for (int i = 0; i < STEPS && high > low; i++) {
        double middle = (low + high) / 2;
        if (late_at(world, helper, &line, middle) <= 0) {
            high = middle;
        } else {
            low = middle;
        }
    }
    double stays = real_smooth(high - line.near, 0, .5); /* a point of the floor, not before him */
    return (struct aim){vec2_along(line.from, line.way, high),
                        vec2_scale(seen->v, .5 * (1 - stays))};
}

body help_second(const struct world *world)
{
    body man = world->guards[world->helper], best = BODY_NONE;
    double least = SINKS;
    if (man >= BODY_COUNT) {
        return best;
    }
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        body own = world->guards[b];
        bool may = world->agent[b].here && b != world->helper && own < BODY_COUNT &&
                   own != world->helped && !is_busy(world, (body)b);
        double far = vec2_distance(world->agent[b].m.at, world->agent[man].m.at);
        if (may && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

struct aim help_sink(const struct mover *left, const struct mover *own, struct vec2 ball)
{
    struct vec2 near = vec2_along(left->at, vec2_unit(vec2_sub(ball, left->at)), OFF);
    struct vec2 split = vec2_mix(left->at, own->at, SPLIT);
    double out = real_smooth(vec2_length(left->at), NEAR_RIM, FAR_RIM);
    struct vec2 deep = vec2_scale(split, DEEP);
    deep.y = real_max(deep.y, UNDER_RING);
    return (struct aim){vec2_mix(near, deep, out), vec2_scale(left->v, .5 * (1 - out))};
}
