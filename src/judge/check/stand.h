/* SPDX-License-Identifier: MIT */
/* stand: who stands where and for how long, what brought him there, and where he could go instead.
 * For the checks of this room that look at players at rest. */
#ifndef JUDGE_CHECK_STAND_H
#define JUDGE_CHECK_STAND_H

#include "judge/check/look.h"

#define END_REST 0.3      /* s: who stands at the very end of a play stands; ours */
#define CLEAR (12 * FEET) /* a spot to send somebody to is free so far around; ours */

/* Idle on the floor, on his own: not in the lane, and no shot has left. */
bool stand_on_floor(const struct checker *checker, body b, size_t sample);

/* A stretch of samples long enough to be called standing: [from, to). */
struct rest {
    size_t from, to;
};
/* The first such stretch in which `so` holds of what `about` points to; false: none. */
typedef bool stand_so(const struct checker *checker, const void *about, size_t sample);
bool stand_rest(const struct checker *checker, stand_so *so, const void *about, struct rest *rest);

/* It is no end of a text, where somebody may be about to go on. */
bool stand_lasts(const struct rest *rest);

/* Where to send him: to the nearest free spot of the perimeter, from a post of the posts; else of
 * the other ones, or NULL. */
const char *stand_where_to(struct checker *checker, body who, size_t sample, double limit);
/* Nobody stands there now, and nobody ends there. */
bool stand_is_free(const struct checker *checker, struct vec2 there, body who, size_t sample);
/* Out of the lane: the nearest free place beside it, his side first, or NULL. */
const char *stand_by_lane(struct checker *checker, body who, size_t sample);
double stand_off_spot(const struct checker *checker, struct vec2 at); /* of the perimeter */
/* The sentence that brought him where he stands, or NULL when he started there. */
const struct task *stand_came_by(const struct checker *checker, body who, double t);
/* The line to change: that sentence, else the start. */
struct span stand_line(const struct checker *checker, body who, double t, struct span otherwise);
/* "goes"; with the ball in hand one "dribbles" there. */
const char *stand_goes_by(const struct checker *checker, body who, double t);

#endif
