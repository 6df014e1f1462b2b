/* SPDX-License-Identifier: MIT */
/* rng: repeatable random numbers (splitmix64). The same seed gives the same row everywhere. */
#ifndef BASE_RNG_H
#define BASE_RNG_H

#include <stdint.h>

struct rng {
    uint64_t state;
};

void rng_seed(struct rng *rng, uint64_t seed);
uint64_t rng_next(struct rng *rng);
double rng_unit(struct rng *rng);                   /* [0, 1) */
double rng_normal(struct rng *rng);                 /* mean 0, deviation 1 */
uint32_t rng_below(struct rng *rng, uint32_t most); /* 0 .. most-1; most > 0 */

/* FNV-1a, for ids and goldens: not for safety. */
uint64_t hash_bytes(uint64_t seed, const void *bytes, uint64_t size);
#define HASH_SEED 14695981039346656037ull

#endif
