/* SPDX-License-Identifier: MIT */
/* crest: a team's picture, SVG or PNG, from bytes. librsvg is looked for only when there is an SVG:
 * it is not among what the program is linked with. Nothing outside the bytes is ever opened. */
#ifndef PICTURE_PAINT_CREST_H
#define PICTURE_PAINT_CREST_H

#include <cairo.h>

#include "base/str.h"

/* What is wrong with it, to stand behind "the crest"; NULL: it can be drawn. */
const char *crest_trouble(struct str bytes);
/* Draws it as large as it fits, at the right end of the box, in the middle of its height; false
 * when that failed. Takes no memory from an arena. */
bool crest_draw(cairo_t *cr, struct str bytes, double x, double y, double width, double height);

#endif
