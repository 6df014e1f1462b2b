/* SPDX-License-Identifier: MIT */
/* maker: what the files of this room share. */
#ifndef FLOOR_SEASON_MAKER_H
#define FLOOR_SEASON_MAKER_H

#include "floor/season/season.h"

struct season_maker {
    struct arena *arena;
    const struct playbook *plays;
    struct diags *diags;
    struct season *out;
    bool roster_told; /* that there is none */
    bool spot_told;   /* that a spot is of two players */
    bool worn_told;   /* that somebody else wears the number of a spot */
};

/* Names of one kind, to find one among and to offer the nearest. */
typedef VEC(const char *) name_list;
void name_add(struct season_maker *m, name_list *names, struct str name);
/* "there is no play "X" in this book"; `what` holds the whole message but the name. `others`: names
 * of another kind, of which it may be a slip too; or NULL. */
void name_unknown(struct season_maker *m, struct span span, const char *what, struct str name,
                  const name_list *names, const name_list *others, const char *example);

/* NULL: not there. */
const struct play *play_named(const struct season_maker *m, struct str name);
void play_names(struct season_maker *m, name_list *names, bool drills, bool plays);

/* `end`: where its lines end in its file. */
void practice_make(struct season_maker *m, const struct block *block, uint32_t end);
void charted_make(struct season_maker *m, const struct block *block);
/* A day that is far from all the others; they are sorted. */
void charted_hold_days(struct season_maker *m);

#endif
