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

struct lane motion_lane(const struct level *level)
{
    return (struct lane){.reaction = level->reaction,
                         .top = level->sprint,
                         .tau = level->tau,
                         .hand = HAND * level->height,
                         .high = REACH_UP * level->height + level->reach_jump,
                         .behind = BEHIND};
}

/* A defender goes on as he went for a reaction's time, then sprints at the ball: what can be
 * reached is a disc (Fujimura & Sugihara 2005) that drifts and grows. */
static struct lane_moment look_at(const struct flight *flight, struct vec2 from, struct vec2 to,
                                  const struct lane *lane, double s)
{
    double along = motion_flight_along(flight, s), m = real_max(0, s - lane->reaction);
    double g = lane->tau * (1 - real_exp(-m / lane->tau));
    return (struct lane_moment){
        .along = along,
        .over = motion_flight_height(flight, s) > lane->high,
        .ball = flight->length > 0 ? vec2_mix(from, to, along / flight->length) : from,
        .drift = real_min(s, lane->reaction) + g,
        .reach = lane->top * (m - g)};
}

struct lane_way motion_lane_way(const struct flight *flight, struct vec2 from, struct vec2 to,
                                const struct lane *lane)
{
    struct lane_way way = {.from = from,
                           .to = to,
                           .length = flight->length,
                           .behind = lane->behind,
                           .hand = lane->hand};
    for (int i = 0; i <= LANE_LOOKS; i++) {
        way.look[i] = look_at(flight, from, to, lane, flight->seconds * i / LANE_LOOKS);
    }
    return way;
}

double motion_lane_short(const struct lane_way *way, struct mover defender)
{
    bool before = vec2_dot(vec2_sub(defender.at, way->to), vec2_sub(way->from, way->to)) > 0;
    double last = way->length - (before ? 0 : way->behind), least = LANE_FREE;
    for (int i = 0; i <= LANE_LOOKS; i++) {
        const struct lane_moment *look = &way->look[i];
        if (look->along > last + 1e-9 || look->over) {
            continue;
        }
        struct vec2 centre = vec2_along(defender.at, defender.v, look->drift);
        least = real_min(least, vec2_distance(look->ball, centre) - way->hand - look->reach);
    }
    return least;
}

double motion_lane_margin(const struct flight *flight, struct vec2 from, struct vec2 to,
                          struct mover defender, const struct lane *lane)
{
    struct lane_way way = motion_lane_way(flight, from, to, lane);
    return motion_lane_short(&way, defender);
}
