/* SPDX-License-Identifier: MIT */
/* moving_keys: a way through time brought to few keys. Takes close samples, gives those of them
 * between which everybody goes straight and evenly, never further from where he was than the
 * bound. Must not know what moves. */
#include "picture/scene/drawing.h"

/* Where the straight and even way from a to b is at t. */
static struct vec2 between(const struct moving_key *a, const struct moving_key *b, double t)
{
    return b->t > a->t ? vec2_mix(a->at, b->at, (t - a->t) / (b->t - a->t)) : b->at;
}

static bool holds(const struct moving_key *sample, size_t first, size_t last, double within)
{
    for (size_t i = first + 1; i < last; i++) {
        struct vec2 there = between(&sample[first], &sample[last], sample[i].t);
        if (!vec2_near(there, sample[i].at, within)) {
            return false;
        }
    }
    return true;
}

static bool is_last(const moving_keys *keys, const struct moving_key *key)
{
    if (keys->count == 0) {
        return false;
    }
    const struct moving_key *last = &keys->at[keys->count - 1];
    return key->t <= last->t && vec2_near(key->at, last->at, 1e-6);
}

void keys_add(struct arena *arena, moving_keys *keys, const struct moving_key *sample, size_t count,
              double within)
{
    if (count > 0 && !is_last(keys, &sample[0])) {
        VEC_PUSH(arena, keys, sample[0]);
    }
    for (size_t first = 0, last; first + 1 < count; first = last) {
        for (last = first + 1; last + 1 < count && holds(sample, first, last + 1, within);) {
            last++;
        }
        VEC_PUSH(arena, keys, sample[last]);
    }
}

void keys_copy(struct arena *arena, moving_keys *keys, const moving_keys *way, double from,
               double to)
{
    for (size_t i = 0; i + 1 < way->count; i++) {
        const struct moving_key *a = &way->at[i], *b = &way->at[i + 1];
        double t0 = real_max(a->t, from), t1 = real_min(b->t, to);
        if (t0 >= t1) {
            continue; /* a jump, or not in the stretch */
        }
        struct moving_key begin = {t0, between(a, b, t0)}, end = {t1, between(a, b, t1)};
        if (!is_last(keys, &begin)) {
            VEC_PUSH(arena, keys, begin);
        }
        VEC_PUSH(arena, keys, end);
    }
}
