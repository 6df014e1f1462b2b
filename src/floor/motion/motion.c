/* SPDX-License-Identifier: MIT */
/* motion: the laws: sprint, braking, turns, throws. Closed forms; must not know a clock or a play.
 */
#include "floor/motion/motion.h"

#include "base/real.h"

#define GRAVITY 9.81
#define DRAG                                                                                       \
    .0219 /* per metre: a ball of .62 kg, .12 m, Cd .5 (Brancazio 1981; ball as in the rulebooks)  \
           */
#define SHOT_ANGLE (50.0 / 180 * REAL_PI) /* between 46 and 54 degrees by height (ours) */
#define RIM_HEIGHT 3.05                   /* every code */
#define RELEASE 1.25                      /* of the shooter's height: over the head */
#define LAYUP_DISTANCE 1.5                /* m: nearer than this the ball is laid up */
#define LAYUP_TIME .51                    /* s: a lay-up from 1 m (ours) */

double motion_speed(double top, double tau, double v0, double t)
{
    return top - (top - v0) * real_exp(-t / tau);
}

double motion_distance(double top, double tau, double v0, double t)
{
    return top * t - (top - v0) * tau * (1 - real_exp(-t / tau));
}

double motion_time(double top, double tau, double v0, double distance)
{
    double low = 0, high = 60;
    for (int i = 0; i < 80; i++) {
        double middle = (low + high) / 2;
        if (motion_distance(top, tau, v0, middle) < distance) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

double motion_rush(double top, double tau, double brake, double distance)
{
    double low = 0, high = 60;
    for (int i = 0; i < 80; i++) {
        double middle = (low + high) / 2, v = motion_speed(top, tau, 0, middle);
        if (motion_distance(top, tau, 0, middle) + v * v / (2 * brake) < distance) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low + motion_speed(top, tau, 0, low) / brake;
}

double motion_turn_share(double angle)
{
    /* 45, 90 and 180 degrees fitted to published losses, 135 between (Giannakopoulos et al. 2026)
     */
    static const double share[] = {1.00, .63, .385, .25, .12};
    double place = real_clamp(angle / (REAL_PI / 4), 0, 4);
    int index = place >= 4 ? 3 : (int)place;
    return real_mix(share[index], share[index + 1], place - index);
}

struct effort_row {
    double share; /* of the top speed */
    enum { NO_CLIP, CLIP_WALK, CLIP_JOG } clip;
};

static const struct effort_row efforts[] =
    {/* multipliers: ours */
     [EFFORT_WALK] = {.60, CLIP_WALK}, [EFFORT_JOG] = {.75, CLIP_JOG},
     [EFFORT_RUN] = {.60, NO_CLIP},    [EFFORT_CUT] = {.75, NO_CLIP},
     [EFFORT_HARD] = {.90, NO_CLIP},   [EFFORT_SPRINT] = {1.0, NO_CLIP}};

double motion_effort(const struct level *level, enum verb_pace effort, double *cap)
{
    const struct effort_row *row = &efforts[effort];
    *cap = row->clip == CLIP_WALK ? level->walk : row->clip == CLIP_JOG ? level->jog : 0;
    return level->sprint * row->share;
}

struct gait motion_gait(const struct level *level, enum verb_pace effort, bool with_ball)
{
    struct gait gait = {.tau = level->tau, .brake = level->brake, .sprint = level->sprint};
    gait.top = motion_effort(level, effort, &gait.clip);
    if (with_ball) {
        gait.top *= level->dribble;
        gait.sprint *= level->dribble;
    }
    return gait;
}

double motion_pass_time(const struct level *level, enum pass_kind kind, double distance)
{
    /* shares of the chest pass's speed; a bounce's is its mean along the floor, a lob's its
     * shadow's (ours: chest 9-12, bounce 6-8, overhead 10-13, lob 5-7 m/s, adults) */
    static const double share[] = {[PASS_PLAIN] = 1, [PASS_BOUNCE] = .70,    [PASS_SKIP] = 1.10,
                                   [PASS_LOB] = .62, [PASS_OVERHEAD] = 1.08, [PASS_CHEST] = 1};
    double speed = level->pass * share[kind];
    return (real_exp(DRAG * distance) - 1) / (DRAG * speed);
}

double motion_flight(double distance, double rise, double angle)
{
    double c = real_cos(angle), s = real_sin(angle);
    double square = GRAVITY * distance * distance / (2 * c * c * (distance * s / c - rise));
    return square > 0 ? distance / (real_sqrt(square) * c) : LAYUP_TIME;
}

double motion_shot_time(const struct level *level, double distance)
{
    if (distance < LAYUP_DISTANCE) {
        return LAYUP_TIME;
    }
    return motion_flight(distance, RIM_HEIGHT - RELEASE * level->height, SHOT_ANGLE);
}
