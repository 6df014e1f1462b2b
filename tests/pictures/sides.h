/* SPDX-License-Identifier: MIT */
/* sides: whether two pictures of one diagram tell the same: each movement's line passes each
 * numeral and each bar on the same side in both. */
#ifndef TESTS_PICTURES_SIDES_H
#define TESTS_PICTURES_SIDES_H

#include "picture/scene/drawing.h"

/* The line of a run, and no bar, no head and no white under it? */
bool is_movement(const struct scene_item *item, const struct sizes *size);
/* How many numerals and bars the lines of `small` pass on the other side than those of `large`. */
int sides_differ(struct arena *arena, const struct scene *large, const struct scene *small);

#endif
