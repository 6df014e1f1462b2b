/* SPDX-License-Identifier: MIT */
/* rng: splitmix64 (Steele, Lea and Flood 2014): a counter, well mixed. Takes a seed, gives the same
 * row on every machine; never a clock. */
#include "base/rng.h"

#include "base/real.h"

void rng_seed(struct rng *rng, uint64_t seed)
{
    rng->state = seed;
}

uint64_t rng_next(struct rng *rng)
{
    uint64_t mixed = rng->state += 0x9e3779b97f4a7c15ull;
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ull;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebull;
    return mixed ^ (mixed >> 31);
}

double rng_unit(struct rng *rng)
{
    return (double)(rng_next(rng) >> 11) * 0x1p-53;
}

double rng_normal(struct rng *rng)
{
    double u = 1 - rng_unit(rng); /* (0, 1]: its logarithm exists */
    double turn = rng_unit(rng);
    return real_sqrt(-2 * real_log(u)) * real_cos(2 * REAL_PI * turn);
}

uint32_t rng_below(struct rng *rng, uint32_t most)
{
    /* The few draws that would favour small numbers are thrown again. */
    uint64_t fair = UINT64_MAX - UINT64_MAX % most;
    uint64_t drawn;
    do {
        drawn = rng_next(rng);
    } while (drawn >= fair);
    return (uint32_t)(drawn % most);
}

uint64_t hash_bytes(uint64_t seed, const void *bytes, uint64_t size)
{
    const unsigned char *at = bytes;
    uint64_t hash = seed;
    for (uint64_t i = 0; i < size; i++) {
        hash = (hash ^ at[i]) * 1099511628211ull;
    }
    return hash;
}
