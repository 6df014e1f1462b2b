/* SPDX-License-Identifier: MIT */
/* text: shaping (libraqm) and lines (libunibreak) of words on a page, in the bundled face. */
#ifndef PICTURE_TEXT_TEXT_H
#define PICTURE_TEXT_TEXT_H

#include <cairo.h>

#include "base/arena.h"
#include "base/geom/vec2.h"
#include "base/str.h"
#include "picture/metrics/metrics.h"

struct fonts;                     /* the faces, loaded from memory; one per document */
struct fonts *fonts_create(void); /* NULL when FreeType cannot be started */
void fonts_destroy(struct fonts *fonts);

/* A run of text in one style. */
struct text_piece {
    struct str text;
    enum face face;
};
struct text_style {
    double size, leading, spacing; /* points; spacing between letters */
};
/* Pieces broken into lines no wider than `width` (0: one line). Numbers do not part from units. */
struct text_block;
struct text_block *text_layout(struct arena *arena, struct fonts *fonts,
                               const struct text_piece *pieces, size_t count,
                               const struct text_style *style, double width);
/* What is drawn of it, in memory of its own. */
struct text_block *text_copy(struct arena *arena, const struct text_block *block);
size_t text_lines(const struct text_block *block);
double text_width(const struct text_block *block);  /* of its widest line */
double text_height(const struct text_block *block); /* lines * leading */
/* Draws with the first baseline at y. Lines `from`..`to` (exclusive) only. */
void text_draw(cairo_t *cr, const struct text_block *block, double x, double y, size_t from,
               size_t to);
/* One line at once: for scenes. `anchor` 0 start, .5 middle, 1 end. */
void text_show(cairo_t *cr, struct fonts *fonts, enum face face, double size, struct vec2 at,
               double anchor, struct str text);
/* Letters that a face of the machine was borrowed for: whether there are any, the first few as
 * text, and the name of the first such face. */
bool fonts_borrowed(const struct fonts *fonts, struct str *letters, const char **name);
/* Letters that no face has: how many were met since the fonts were created, the first few as
 * text. */
size_t fonts_missing(const struct fonts *fonts, struct str *letters);
/* The shaper ran out of memory: words are missing from what was drawn. */
bool fonts_failed(const struct fonts *fonts);

#endif
