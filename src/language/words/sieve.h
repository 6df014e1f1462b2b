/* SPDX-License-Identifier: MIT */
/* sieve: which first two letters the words of a list may have, found when it is first gone through
 * and kept for the book: most lists are passed over by it. What is read does not hang on it. Inside
 * words only. */
#ifndef LANGUAGE_WORDS_SIEVE_H
#define LANGUAGE_WORDS_SIEVE_H

#include <stdint.h>

#include "base/arena.h"
#include "language/words/index.h"

enum { SIEVE_SLOTS = 1024, SIEVE_PAIRS = (INDEX_BUCKETS + 63) / 64 };
struct sieve {
    const void *list;
    uint32_t first, any; /* letters by index_letter; those that may have any letter behind them */
    uint64_t pairs[SIEVE_PAIRS]; /* by index_bucket */
};
struct sieves {
    struct arena *arena;
    size_t count;
    struct sieve *at[SIEVE_SLOTS]; /* by the place of the list in memory */
};
struct sieves *sieves_new(struct arena *arena);
static inline size_t sieve_slot(const void *list)
{
    return (size_t)((uintptr_t)list / sizeof list * 2654435761u / 64) % SIEVE_SLOTS;
}
/* The sieve of the list, which is made when there is none; NULL: there is no room for one more. */
const struct sieve *sieve_find(struct sieves *sieves, const void *list, size_t stride);

/* Whether a word of the list may begin with these two letters (NUL: it has no second one): false is
 * certain. The list is a static one: another at its place would be taken for it. Rows of `stride`
 * bytes begin with their words; NULL words end the list. `sieves` may be NULL. */
static inline bool sieves_let(struct sieves *sieves, const void *list, size_t stride, char first,
                              char second)
{
    const struct sieve *sieve = sieves ? sieves->at[sieve_slot(list)] : NULL;
    if (!sieve || sieve->list != list) {
        sieve = sieves ? sieve_find(sieves, list, stride) : NULL;
        if (!sieve) {
            return true;
        }
    }
    unsigned letter = index_letter(first);
    bool begins = sieve->first >> letter & 1, pair = second >= 'a' && second <= 'z';
    if (!begins || !pair || (sieve->any >> letter & 1)) {
        return begins;
    }
    unsigned bucket = index_bucket(first, second);
    return (sieve->pairs[bucket / 64] >> bucket % 64 & 1) != 0;
}

#endif
