/* SPDX-License-Identifier: MIT */
/* mover: one tick of one body toward the velocity it wants. A planted foot first turns what speed
 * there is; then exact exponential along the wanted way, grip across it, the two together held;
 * trapezoid for the place: nothing here hangs on the length of the tick. */
#include "floor/motion/motion.h"

#include <math.h>

#include "base/real.h"

#define NEARLY_HELD .8  /* of what the feet hold: from there on it is looked at closely, */
#define STRIDES 960     /* times a second, so that a bend does not hang on the tick */
#define BRAKE_BACK 1.25 /* stopping a wrong way is done harder than stopping a run (ours) */

/* A speed, and how far it has led. */
struct run {
    double v, s;
};

/* Gains speed toward `wanted` for `dt` seconds; who is already faster than this effort tends to
 * holds that, braking is elsewhere. */
static struct run gain(const struct gait *gait, double v, double wanted, double dt)
{
    double top = gait->top;
    if (top <= v || wanted <= v) {
        double held = real_min(wanted, v);
        return (struct run){held, held * dt};
    }
    double most = motion_speed(top, gait->tau, v, dt);
    if (most <= wanted) { /* what is left to the top falls off as e^-t/tau: so does the way */
        return (struct run){most, top * dt - gait->tau * (most - v)};
    }
    double t = gait->tau * real_log((top - v) / (top - wanted)); /* then it is reached */
    return (struct run){wanted, top * t - gait->tau * (wanted - v) + wanted * (dt - t)};
}

/* Speed falls at `rate` to `low`, and stays there. */
static struct run fall(double v, double low, double rate, double dt)
{
    double t = real_min(dt, (v - low) / rate), end = t < dt ? low : v - rate * t;
    return (struct run){end, (v + end) / 2 * t + end * (dt - t)};
}

static struct run along_way(const struct gait *gait, double v, double wanted, double dt)
{
    if (v < 0) {
        double brake = BRAKE_BACK * gait->brake, stop = -v / brake;
        if (stop >= dt) {
            return (struct run){v + brake * dt, (v + brake * dt / 2) * dt};
        }
        struct run run = gain(gait, 0, wanted, dt - stop);
        run.s += v * stop / 2;
        return run;
    }
    return v > wanted ? fall(v, wanted, gait->brake, dt) : gain(gait, v, wanted, dt);
}

struct mover motion_between(const struct mover *a, const struct mover *b, double seconds,
                            double part)
{
    double p2 = part * part, p3 = p2 * part;
    double h00 = 2 * p3 - 3 * p2 + 1, h10 = (p3 - 2 * p2 + part) * seconds, h01 = 3 * p2 - 2 * p3,
           h11 = (p3 - p2) * seconds;
    return (struct mover){.at =
                              vec2_of(a->at.x * h00 + b->at.x * h01 + a->v.x * h10 + b->v.x * h11,
                                      a->at.y * h00 + b->at.y * h01 + a->v.y * h10 + b->v.y * h11),
                          .v = vec2_mix(a->v, b->v, part)};
}

void motion_plant(struct mover *mover, const struct gait *gait, struct vec2 way, double most)
{
    double speed = vec2_length(mover->v), carried = real_min(speed, most);
    if (speed <= 0 || (way.x == 0 && way.y == 0)) {
        mover->plant.left = 0;
        return;
    }
    carried = real_min(carried, gait->sprint * motion_turn_share(vec2_angle(mover->v, way)));
    double turn = vec2_distance(vec2_scale(mover->v, 1 / speed), way);
    mover->plant.to = vec2_scale(way, carried);
    mover->plant.left = carried * turn / MOTION_PLANT;
}

/* A steady push from v in to v out is a parabola: half of it is run on the way in. */
double motion_plant_lead(double speed, double turn)
{
    return speed * speed * turn / MOTION_PLANT / 2;
}

/* The planted part of a tick: its seconds. */
static double turn_feet(struct mover *mover, double dt)
{
    double t = real_min(dt, mover->plant.left), most = MOTION_PLANT * t;
    struct vec2 before = mover->v, change = vec2_sub(mover->plant.to, before);
    double length = vec2_length(change);
    mover->v = vec2_along(before, change, length > most ? most / length : 1);
    mover->at = vec2_add(mover->at, vec2_scale(vec2_add(before, mover->v), t / 2));
    mover->plant.left -= t;
    return t;
}

struct stride motion_stride(const struct gait *gait, struct vec2 command)
{
    double length = vec2_length(command), most = gait->sprint;
    if (gait->clip > 0) {
        most = real_min(most, gait->clip);
    }
    bool moves = length > 0 && most > 0;
    return (struct stride){.way = moves ? vec2_scale(command, 1 / length) : vec2_of(0, 0),
                           .speed = real_min(length, most)};
}

/* Where the feet have their legs within what they hold; false: they do not for so long. */
static bool run_held(struct mover *mover, const struct gait *gait, const struct stride *stride,
                     double dt, double share)
{
    struct vec2 before = mover->v;
    struct vec2 way = stride->speed > 0 ? stride->way : vec2_unit(before), left = vec2_left(way);
    double slip = vec2_cross(way, before),
           side = slip < 0 ? -1 : 1; /* across the way, to its left */
    struct run on = along_way(gait, vec2_dot(before, way), stride->speed, dt);
    struct run aside = slip == 0 ? (struct run){0, 0} : fall(side * slip, 0, MOTION_ACROSS, dt);
    struct vec2 v = vec2_along(vec2_scale(way, on.v), left, side * aside.v);
    struct vec2 led = vec2_along(vec2_scale(way, on.s), left, side * aside.s);
    if (gait->bends) {
        /* gaining or braking along one way and sliding across it add up, seen from where he is
         * going: the feet hold so much of it */
        double most = MOTION_ROUND * dt, area = vec2_cross(before, v);
        if (area * area > share * share * most * most * vec2_square(before)) {
            if (share < 1) {
                return false;
            }
            v = vec2_mix(before, v, most * vec2_length(before) / fabs(area));
            led = vec2_scale(vec2_add(before, v), dt / 2);
        }
    }
    mover->at = vec2_add(mover->at, led);
    mover->v = v;
    return true;
}

void motion_run(struct mover *mover, const struct gait *gait, const struct stride *stride,
                double dt)
{
    if (mover->plant.left > 0) {
        dt -= turn_feet(mover, dt);
        if (dt <= 0) {
            return;
        }
    }
    if (stride->speed == 0 && mover->v.x == 0 && mover->v.y == 0) {
        return; /* stands, and wants to */
    }
    if (run_held(mover, gait, stride, dt, NEARLY_HELD)) {
        return;
    }
    int strides = real_pieces(dt, STRIDES); /* at his feet's limit: in small ones */
    for (int i = 0; i < strides; i++) {
        run_held(mover, gait, stride, dt / strides, 1);
    }
}

void motion_advance(struct mover *mover, const struct gait *gait, struct vec2 command, double dt)
{
    struct stride stride = motion_stride(gait, command);
    motion_run(mover, gait, &stride, dt);
}
