/* SPDX-License-Identifier: MIT */
/* level: how fast, quick and tall the players of a level are. Takes levels.def; a table. */
#include "floor/court/court.h"

static const struct level levels[LEVEL_COUNT] = {
#define MEAN(a, b) (((a) + (b)) / 2)
#define LEVEL(symbol, word, ...) [LEVEL_##symbol] = {word, __VA_ARGS__},
#include "floor/court/levels.def"
#undef LEVEL
#undef MEAN
};

const struct level *level_of(enum level_code code)
{
    return &levels[code];
}

bool level_find(struct str written, enum level_code *code)
{
    for (int i = 0; i < LEVEL_COUNT; i++) {
        if (court_same_word(written, levels[i].word)) {
            *code = (enum level_code)i;
            return true;
        }
    }
    return false;
}
