/* SPDX-License-Identifier: MIT */
/* ways: the directions in which the defenders of a screen think. Private to defense. */
#ifndef FLOOR_DEFENSE_WAYS_H
#define FLOOR_DEFENSE_WAYS_H

#include "floor/defense/defense.h"

struct ways { /* unit: to the rim, to the ball, to the place where the user is to go */
    struct vec2 rim, ball, exit;
};
struct ways ways_of(const struct seen_screen *seen, struct vec2 from);
/* `metres` from p along a * x + b * y; never more than .45 of the way to the rim. */
struct vec2 ways_beside(struct vec2 p, struct vec2 a, double x, struct vec2 b, double y,
                        double metres);
/* The man runs rimward, at a cosine of that or more. */
bool ways_rimward(const struct seen_screen *seen, double cosine);

/* What is done in one situation; NULL in a table: as the row of STRATEGY_NONE does. */
typedef struct aim ways_aim(const struct seen_screen *seen);

#endif
