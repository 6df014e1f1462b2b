/* SPDX-License-Identifier: MIT */
/* mover: one tick of one body toward the velocity it wants. Exact exponential along the wanted way,
 * grip across it, trapezoid for the place: nothing here hangs on the length of the tick. */
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

void motion_advance(struct mover *mover, const struct gait *gait, struct vec2 command, double dt)
{
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
    double slip = vec2_square(across), grip = MOTION_ACROSS * dt;
    struct vec2 v = vec2_scale(way, along_way(gait, speed, wanted, dt));
    if (slip > grip * grip) {
        v = vec2_along(v, across, 1 - grip / real_sqrt(slip));
    }
    mover->at = vec2_add(mover->at, vec2_scale(vec2_add(before, v), dt / 2));
    mover->v = v;
}
