/* SPDX-License-Identifier: MIT */
/* picture: what is drawn in a page: each court once, the samples of the key, diagrams on them.
 * Private to web. */
#ifndef PAGE_WEB_PICTURE_H
#define PAGE_WEB_PICTURE_H

#include "page/web/html.h"
#include "picture/scene/moving.h"
#include "picture/scene/scene.h"

#define PICTURE_WIDTH 390.0 /* px: a phone's whole width */

/* Courts (a bit 1 << court_code each) and key samples, to be drawn from: an element of no size. */
void picture_library(const struct html *html, unsigned courts);
/* A diagram as pages show it: all of a play on one floor, so that it stays where it is from step to
 * step. */
struct picture {
    const struct scene *still;
    const struct moving *moving;
};
struct picture picture_make(struct arena *arena, const struct diagram *diagram,
                            const diagram_list *together, const struct team *names);
void picture_still(const struct html *html, const struct picture *picture, enum court_code court);
/* "run", "pass" with their samples: of the marks that occur, bits 1 << scene_class. */
void picture_key(const struct html *html, unsigned uses);

#endif
