/* SPDX-License-Identifier: MIT */
/* mover: one tick of one body toward the velocity it wants. A planted foot first turns what speed
 * there is; then exact exponential along the wanted way, grip across it, the two together held;
 * trapezoid for the place: nothing here hangs on the length of the tick. */
#include "floor/motion/motion.h"

#include <math.h>

#include "base/real.h"

#define BRAKE_BACK 1.25 /* stopping a wrong way is done harder than stopping a run (ours) */

static double gain(const struct gait *gait, double speed, double wanted, double dt)
{
    double most = motion_speed(gait->top, gait->tau, speed, dt);
    if (most < speed) {
        most =
            speed; /* already faster than this effort tends to: it is held, braking is elsewhere */
    }
    return real_min(wanted, most);
}

static double along_way(const struct gait *gait, double speed, double wanted, double dt)
{
    if (speed < 0) {
        double brake = BRAKE_BACK * gait->brake, stop = -speed / brake;
        if (stop >= dt) {
            return speed + brake * dt;
        }
        return gain(gait, 0, wanted, dt - stop);
    }
    if (speed > wanted) {
        return real_max(wanted, speed - gait->brake * dt);
    }
    return gain(gait, speed, wanted, dt);
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

/* Gaining or braking along one way and sliding across it add up, seen from where he is going: the
 * feet hold `most` of it. */
static struct vec2 hold_sideways(struct vec2 before, struct vec2 v, double most)
{
    double sideways = fabs(vec2_cross(vec2_unit(before), v));
    return sideways > most ? vec2_mix(before, v, most / sideways) : v;
}

void motion_advance(struct mover *mover, const struct gait *gait, struct vec2 command, double dt)
{
    if (mover->plant.left > 0) {
        dt -= turn_feet(mover, dt);
        if (dt <= 0) {
            return;
        }
    }
    struct vec2 before = mover->v;
    double length = vec2_length(command), wanted = length;
    if (wanted == 0 && before.x == 0 && before.y == 0) {
        return; /* stands, and wants to */
    }
    if (gait->clip > 0) {
        wanted = real_min(wanted, gait->clip);
    }
    wanted = real_min(wanted, gait->sprint);
    struct vec2 way = wanted > 0 ? vec2_scale(command, 1 / length) : vec2_unit(before);
    double speed = vec2_dot(before, way);
    struct vec2 across = vec2_along(before, way, -speed);
    double slip = vec2_length(across), held = real_min(slip, MOTION_ACROSS * dt);
    double along = along_way(gait, speed, wanted, dt) - speed;
    struct vec2 v = vec2_scale(way, speed + along);
    if (slip > held) {
        v = vec2_along(v, across, 1 - held / slip);
    }
    if (gait->bends) {
        v = hold_sideways(before, v, MOTION_ROUND * dt);
    }
    mover->at = vec2_add(mover->at, vec2_scale(vec2_add(before, v), dt / 2));
    mover->v = v;
}
