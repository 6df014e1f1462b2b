/* SPDX-License-Identifier: MIT */
/* situation: what a play is for, by its tags; without tags by how it begins. Private to sheet. */
#ifndef PAGE_SHEET_SITUATION_H
#define PAGE_SHEET_SITUATION_H

#include "floor/play/play.h"

/* What stands over the play on a card: "Baseline", "After time-out", a tag of the coach's own. */
struct situation {
    size_t order; /* of those we know, below situation_count(); the coach's own, and none: at it */
    struct str word;
};
size_t situation_count(void);
/* A tag as it is printed: "Baseline" for every word that means it; the coach's own with a capital.
 */
struct str situation_tag(struct arena *arena, struct str tag);
struct situation situation_of(struct arena *arena, const struct play *play);

#endif
