/* SPDX-License-Identifier: MIT */
/* turns: what a player is told of a drill, in which a number is a spot that everybody takes. */
#ifndef PAGE_SHEET_TURNS_H
#define PAGE_SHEET_TURNS_H

#include "floor/play/play.h"

/* "You take each spot in turn: 1 and 2. Wait in the line behind 1: ...", with marks round numbers.
 */
struct str turns_told(struct arena *arena, const struct play *play);

#endif
