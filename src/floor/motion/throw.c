/* SPDX-License-Identifier: MIT */
/* throw: the laws of a ball in the air: passes by kind with drag, the bounce, the lob, the try for
 * goal; where it is over the floor and how high. Closed forms; must not know a clock or a play. */
#include "floor/motion/motion.h"

#include "base/real.h"

#define GRAVITY 9.81
#define DRAG .0219 /* per metre: a ball of .62 kg, .12 m, Cd .5 (ours; a ball of the rulebooks) */

#define FLOOR_AT (2 / 3.0) /* a bounce pass meets the floor at two thirds (common practice) */
#define BOUNCE_SPEED .85   /* of a chest pass, along its slant (ours: 8.5 m/s to 10) */
#define BOUNCE_KEEPS .75   /* of its speed after the floor (ours) */
#define LOB_LEAST 1.0      /* m that a lob rises over the hands: over a raised arm (ours) */

#define RELEASE 1.25                       /* of the shooter's height: over the head (ours) */
#define LEAST_ENTRY (36.0 / 180 * REAL_PI) /* under 32.7 degrees no ball goes in; centers 36.6 */
#define LAYUP_TIME .51                     /* s: off the board, from 1 m (ours) */
#define LAYUP_TO 1.0                       /* m: so far out it is laid up, */
#define SHOT_FROM 2.0                      /* from here on it is shot; between them a mixture */

struct throw_row { /* ours: chest 9-12, overhead 10-13, lob 5-7 m/s, adults; no published speeds */
    double speed;  /* share of the level's chest pass; a lob's is its shadow's */
    double from, to; /* shares of a player's height: the ball's middle as it leaves, is caught */
};
static const struct throw_row throws[] = {
    [PASS_PLAIN] = {1, .72, .72},        [PASS_BOUNCE] = {BOUNCE_SPEED, .60, .49},
    [PASS_SKIP] = {1.10, 1.10, .80},     [PASS_LOB] = {.62, 1.15, 1.25},
    [PASS_OVERHEAD] = {1.08, 1.15, .80}, [PASS_CHEST] = {1, .72, .72},
};

/* ---- passes ---- */

static double drag_time(double distance, double speed)
{
    return (real_exp(DRAG * distance) - 1) / (DRAG * speed);
}

double motion_lob_time(double rise)
{
    return 2 * real_sqrt(2 * rise / GRAVITY);
}

double motion_fall_time(double height)
{
    return real_sqrt(2 * height / GRAVITY);
}

/* Down to the floor and up again, each a slant run through at an even speed. */
static void bounce(struct flight *flight, double speed)
{
    double down = real_hypot(FLOOR_AT * flight->length, flight->from_z);
    double up = real_hypot((1 - FLOOR_AT) * flight->length, flight->to_z);
    flight->law = FLIGHT_BOUNCE;
    flight->bounce_seconds = down / speed;
    flight->seconds = flight->bounce_seconds + up / (BOUNCE_KEEPS * speed);
}

struct flight motion_pass(const struct level *level, enum pass_kind kind, double distance)
{
    const struct throw_row *row = &throws[kind];
    struct flight flight = {.law = FLIGHT_AIR,
                            .length = distance,
                            .from_z = row->from * level->height,
                            .to_z = row->to * level->height};
    double speed = row->speed * level->pass;
    if (kind == PASS_BOUNCE) {
        bounce(&flight, speed);
        return flight;
    }
    flight.seconds = drag_time(distance, speed);
    if (kind == PASS_LOB) {
        flight.seconds = real_max(flight.seconds, motion_lob_time(LOB_LEAST));
    }
    return flight;
}

double motion_pass_time(const struct level *level, enum pass_kind kind, double distance)
{
    return motion_pass(level, kind, distance).seconds;
}

void motion_flight_take(struct flight *flight, double seconds)
{
    flight->bounce_seconds *= seconds / flight->seconds;
    flight->seconds = seconds;
}

/* ---- tries for goal (Brancazio 1981: t^2 = 2 (d tan a - h) / g, tan entry = tan a - 2 h / d) ----
 */

static double tan_of(double angle)
{
    return real_sin(angle) / real_cos(angle);
}

double motion_arc_time(double distance, double rise, double angle)
{
    return real_sqrt(2 * (distance * tan_of(angle) - rise) / GRAVITY);
}

double motion_arc_entry(double distance, double rise, double angle)
{
    return real_atan2(distance * tan_of(angle) - 2 * rise, distance);
}

/* The angle at which it leaves the hand: flatter from further out (ours: 52 degrees from the free
 * throw, 48 from a federation's arc, 47 from the professionals'). */
static double shot_angle(double distance)
{
    static const struct {
        double distance, degrees;
    } table[] = {{4.225, 52}, {6.75, 48}, {7.24, 47}, {9, 45}};
    size_t last = sizeof table / sizeof table[0] - 1, i = 0;
    double far = real_clamp(distance, table[0].distance, table[last].distance);
    while (i + 1 < last && far > table[i + 1].distance) {
        i++;
    }
    double part = (far - table[i].distance) / (table[i + 1].distance - table[i].distance);
    return real_mix(table[i].degrees, table[i + 1].degrees, part) / 180 * REAL_PI;
}

struct flight motion_shot(const struct level *level, double ring, double distance)
{
    struct flight flight = {.law = FLIGHT_SHOT,
                            .length = distance,
                            .from_z = RELEASE * level->height,
                            .to_z = ring,
                            .seconds = LAYUP_TIME};
    if (distance > LAYUP_TO) {
        double rise = flight.to_z - flight.from_z;
        double steep = real_atan2(distance * tan_of(LEAST_ENTRY) + 2 * rise, distance);
        double angle = real_max(shot_angle(distance), steep);
        flight.seconds = real_mix(LAYUP_TIME, motion_arc_time(distance, rise, angle),
                                  real_smooth(distance, LAYUP_TO, SHOT_FROM));
    }
    return flight;
}

/* ---- where it is ---- */

/* How far a ball has come that drag slows: x = ln(1 + k v0 t) / k, with v0 from the whole flight.
 */
static double drag_along(const struct flight *flight, double t)
{
    double whole = DRAG * flight->length;
    if (whole < 1e-9) {
        return flight->length * t / flight->seconds;
    }
    return real_log(1 + (real_exp(whole) - 1) * t / flight->seconds) / DRAG;
}

double motion_flight_along(const struct flight *flight, double t)
{
    if (t <= 0 || flight->seconds <= 0) {
        return 0;
    }
    if (t >= flight->seconds) {
        return flight->length;
    }
    if (flight->law == FLIGHT_AIR) {
        return drag_along(flight, t);
    }
    if (flight->law == FLIGHT_SHOT) {
        return flight->length * t / flight->seconds;
    }
    double floor_at = FLOOR_AT * flight->length;
    if (t < flight->bounce_seconds) {
        return floor_at * t / flight->bounce_seconds;
    }
    return floor_at + (flight->length - floor_at) * (t - flight->bounce_seconds) /
                          (flight->seconds - flight->bounce_seconds);
}

double motion_flight_height(const struct flight *flight, double t)
{
    double whole = flight->seconds, s = real_clamp(t, 0, whole);
    if (whole <= 0) {
        return flight->to_z;
    }
    if (flight->law == FLIGHT_BOUNCE) {
        double down = flight->bounce_seconds;
        if (s < down) {
            return real_mix(flight->from_z, MOTION_BALL, s / down);
        }
        double up = (s - down) / (whole - down); /* it slows as it rises */
        return real_mix(MOTION_BALL, flight->to_z, up * (2 - up));
    }
    return real_mix(flight->from_z, flight->to_z, s / whole) + GRAVITY / 2 * s * (whole - s);
}
