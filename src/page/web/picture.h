/* SPDX-License-Identifier: MIT */
/* picture: what is drawn in a page: each court once, the samples of the key, diagrams on them.
 * Private to web. */
#ifndef PAGE_WEB_PICTURE_H
#define PAGE_WEB_PICTURE_H

#include "page/web/html.h"
#include "picture/scene/scene.h"

#define PICTURE_WIDTH 390.0 /* px: a phone's whole width */

/* Courts (a bit 1 << court_code each) and key samples, to be drawn from: an element of no size. */
void picture_library(const struct html *html, unsigned courts);
/* The scene of a diagram as pages show it. */
struct scene *picture_scene(struct arena *arena, const struct diagram *diagram,
                            const struct team *names);
void picture_still(const struct html *html, const struct scene *scene, enum court_code court);
/* "run", "pass" with their samples: of the marks that occur, bits 1 << scene_class. */
void picture_key(const struct html *html, unsigned uses);

#endif
