/* SPDX-License-Identifier: MIT */
/* film: what moves, told in numbers for the page's script: a sixth of what declarative animation of
 * the same takes. Private to web.
 *
 * A film is [tick, group, ...]: seconds of a tick, then for each group
 *     [frame, way, erased, shows, mark, ...]      and for each of its marks
 *     [paint, shape, shows, ends]                 without zeros at the end.
 * Frames, paints and shapes are pieces of the play's cast, by number. Keys (way, erased, ends) are
 * one row of numbers: a time and its values, each but the first as the difference to the one
 * before; between them everything goes straight. Times are ticks, places quarters of a px, what is
 * erased hundredths of the line. Shows are times from and to, as they are. 0: none. */
#ifndef PAGE_WEB_FILM_H
#define PAGE_WEB_FILM_H

#include "page/web/html.h"
#include "picture/scene/moving.h"

/* The pieces of all films of one play, each once. */
struct cast {
    VEC(struct str) pieces;
};
void film_put(const struct html *html, struct cast *cast, const struct moving *moving);
/* Put by until the script takes it out; behind the films. */
void cast_put(const struct html *html, const struct cast *cast);

#endif
