/* SPDX-License-Identifier: MIT */
/* motion: the laws of legs: sprint, braking, turns. Closed forms; must not know a clock or a play.
 */
#include "floor/motion/motion.h"

#include "base/real.h"

/* e^-x. A tick is a hundredth of a time constant: there eight terms are exact to the last place
 * but one, at a fifth of the cost. */
static double decay(double x)
{
    if (!(x >= 0 && x < 1.0 / 32)) {
        return real_exp(-x);
    }
    double rest = 1.0 / 120 - x * (1.0 / 720 - x * (1.0 / 5040 - x / 40320));
    return 1 - x * (1 - x * (1.0 / 2 - x * (1.0 / 6 - x * (1.0 / 24 - x * rest))));
}

double motion_speed(double top, double tau, double v0, double t)
{
    return top - (top - v0) * decay(t / tau);
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
