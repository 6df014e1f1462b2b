/* SPDX-License-Identifier: MIT */
/* sieve: see sieve.h. */
#include "language/words/sieve.h"

#include <string.h>

enum { FULL = SIEVE_SLOTS / 2 };

struct sieves *sieves_new(struct arena *arena)
{
    struct sieves *sieves = arena_new(arena, struct sieves);
    sieves->arena = arena;
    return sieves;
}

static const char *past_articles(const char *words)
{
    static const char *const articles[] = {"the ", "a ", "an "};
    for (size_t i = 0; i < sizeof articles / sizeof *articles;) {
        size_t size = strlen(articles[i]);
        bool article = strncmp(words, articles[i], size) == 0;
        words += article ? size : 0;
        i = article ? 0 : i + 1;
    }
    return words;
}

static struct sieve *sieve_make(struct sieves *sieves, const void *list, size_t stride)
{
    struct sieve *sieve = arena_new(sieves->arena, struct sieve);
    sieve->list = list;
    for (const char *row = list;; row += stride) {
        const char *words;
        memcpy(&words, row, sizeof words);
        if (!words) {
            return sieve;
        }
        words = past_articles(words);
        bool letter = words[0] != '\0' && words[1] >= 'a' && words[1] <= 'z';
        uint32_t first = (uint32_t)1 << index_letter(words[0]);
        sieve->first |= first;
        sieve->any |= letter ? 0 : first;
        unsigned bucket = letter ? index_bucket(words[0], words[1]) : 0;
        sieve->pairs[bucket / 64] |= letter ? (uint64_t)1 << bucket % 64 : 0;
    }
}

const struct sieve *sieve_find(struct sieves *sieves, const void *list, size_t stride)
{
    size_t slot = sieve_slot(list);
    while (sieves->at[slot] && sieves->at[slot]->list != list) {
        slot = (slot + 1) % SIEVE_SLOTS;
    }
    if (!sieves->at[slot] && sieves->count < FULL) {
        sieves->at[slot] = sieve_make(sieves, list, stride);
        sieves->count++;
    }
    return sieves->at[slot];
}
