/* SPDX-License-Identifier: MIT */
/* film: a whole document that moves: court, a still and the moving picture over it. The still is
 * what stands there for renderers that do not animate, on paper, and for readers who ask for less
 * motion; where the animation runs it takes the still's place by itself, in an image too. */
#ifndef PICTURE_SVG_FILM_H
#define PICTURE_SVG_FILM_H

#include "picture/svg/moving.h"

struct film {
    const struct scene *still; /* of the same frame */
    const struct moving *moving;
    struct str title, description;
};
struct film_options {
    struct str salt; /* part of every id's prefix */
    bool fluid, loop;
};
void svg_film(struct arena *arena, const struct film *film, const struct film_options *options,
              struct writer *writer);

#endif
