/* SPDX-License-Identifier: MIT */
/* lane: can a defender get a hand on a thrown ball? By how much he comes short of its way, or is
 * over it, where he comes nearest. Takes a flight and how he moves as it leaves the hand; no clock.
 */
#include "floor/motion/motion.h"

#include "base/real.h"

#define HAND                                                                                       \
    .433 /* of a player's height: from the body to a hand that deflects, no step (ours)            \
          */
#define REACH_UP 1.33 /* of it: standing reach (Gryko et al. 2022: 1.335 and 1.332) */
#define BEHIND                                                                                     \
    .65 /* m before the catch where a hand from behind the receiver gets nothing (ours) */
enum { LOOKS = 200 }; /* moments of a flight that are looked at */

struct lane motion_lane(const struct level *level)
{
    return (struct lane){.reaction = level->reaction,
                         .top = level->sprint,
                         .tau = level->tau,
                         .hand = HAND * level->height,
                         .high = REACH_UP * level->height + level->reach_jump,
                         .behind = BEHIND};
}

/* From a hand's reach to the ball after s seconds: he goes on as he went for a reaction's time,
 * then sprints at it. What can be reached is a disc (Fujimura & Sugihara 2005). */
static double short_by(const struct lane *lane, struct mover defender, struct vec2 ball, double s)
{
    double m = real_max(0, s - lane->reaction);
    double g = lane->tau * (1 - real_exp(-m / lane->tau));
    double drift = real_min(s, lane->reaction) + g;
    struct vec2 centre = vec2_along(defender.at, defender.v, drift);
    return vec2_distance(ball, centre) - lane->hand - lane->top * (m - g);
}

double motion_lane_margin(const struct flight *flight, struct vec2 from, struct vec2 to,
                          struct mover defender, const struct lane *lane)
{
    bool before = vec2_dot(vec2_sub(defender.at, to), vec2_sub(from, to)) > 0;
    double last = flight->length - (before ? 0 : lane->behind), least = LANE_FREE;
    for (int i = 0; i <= LOOKS; i++) {
        double s = flight->seconds * i / LOOKS, along = motion_flight_along(flight, s);
        if (along > last + 1e-9 || motion_flight_height(flight, s) > lane->high) {
            continue;
        }
        struct vec2 ball = flight->length > 0 ? vec2_mix(from, to, along / flight->length) : from;
        least = real_min(least, short_by(lane, defender, ball, s));
    }
    return least;
}
