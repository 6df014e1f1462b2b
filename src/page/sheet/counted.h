/* SPDX-License-Identifier: MIT */
/* counted: what was charted of a play, put together by what was counted, by day and by player.
 * Private to sheet. */
#ifndef PAGE_SHEET_COUNTED_H
#define PAGE_SHEET_COUNTED_H

#include "base/vec.h"
#include "floor/season/season.h"

struct day { /* all that was counted of one thing on one date and occasion */
    struct str date;
    int number; /* of days since a fixed one: their distance is true */
    bool game;  /* a game, live or on film; else at practice */
    int made, of;
};
struct by_player {
    struct str name; /* as charted: a name, or "3" */
    int made, of;
};
struct counted {
    int kind;         /* as in row_form */
    struct str label; /* "Screen set on the defender", "Read: Curl", "Points a trip" */
    VEC(struct day) days;
    VEC(struct by_player) players;
    int made, of; /* of all days */
};
typedef VEC(struct counted) counted_list;

/* In the order in which they were first charted, points last. */
void counted_gather(struct arena *arena, const struct season *season, const struct play *play,
                    counted_list *out);

#endif
