/* SPDX-License-Identifier: MIT */
/* spread: the level of each player in one trial, drawn around the level of the play. */
#include "base/real.h"
#include "base/rng.h"
#include "judge/trials/trials.h"

/* Deviations, as shares. No study of one team's spread was found: common practice, no source. */
#define SPEED_SPREAD .08
#define REACTION_SPREAD .20
#define MOST                                                                                       \
    2.0 /* deviations: rarer ones are taken as that, so that nobody sees further back than         \
         * the clock remembers */

static double drawn_factor(struct rng *rng, double spread)
{
    return 1 + spread * real_clamp(rng_normal(rng), -MOST, MOST);
}

/* Always as many draws, so that nobody's hang on who else is there. */
static struct level drawn_level(const struct level *level, struct rng *rng)
{
    struct level drawn = *level;
    double legs = drawn_factor(rng, SPEED_SPREAD), arm = drawn_factor(rng, SPEED_SPREAD);
    double eye = drawn_factor(rng, REACTION_SPREAD), hands = drawn_factor(rng, REACTION_SPREAD);
    drawn.sprint *= legs;
    drawn.jog *= legs;
    drawn.walk *= legs;
    drawn.slide *= legs;
    drawn.backpedal *= legs;
    drawn.pass *= arm;
    drawn.reaction *= eye;
    drawn.catch_shot *= hands;
    drawn.catch_pass *= hands;
    return drawn;
}

void trial_levels(const struct level *level, int step, int branch, int number,
                  struct level drawn[BODY_COUNT])
{
    const int64_t key[] = {step, branch, number};
    struct rng rng;
    uint64_t seed = HASH_SEED;
    for (size_t i = 0; i < sizeof key / sizeof *key; i++) {
        unsigned char bytes[8]; /* the same in whatever order a machine keeps them */
        for (int b = 0; b < 8; b++) {
            bytes[b] = (unsigned char)((uint64_t)key[i] >> (8 * b));
        }
        seed = hash_bytes(seed, bytes, sizeof bytes);
    }
    rng_seed(&rng, seed);
    for (int b = 0; b < BODY_COUNT; b++) {
        drawn[b] = drawn_level(level, &rng);
    }
}
