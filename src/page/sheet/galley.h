/* SPDX-License-Identifier: MIT */
/* galley: what goes on paper, set but not yet on a page: lines of text, diagrams, discs and rules
 * with their places. A galley that is too tall can be parted between lines. Private to sheet. */
#ifndef PAGE_SHEET_GALLEY_H
#define PAGE_SHEET_GALLEY_H

#include "base/vec.h"
#include "picture/paint/paint.h"

#define GALLEY_DISC 5.2 /* radius of a sentence's disc, points */

enum placed_kind {
    PLACED_TEXT,
    PLACED_SCENE,
    PLACED_DISC,
    PLACED_RULE,
    PLACED_SIGN,
    PLACED_SCISSORS,
    PLACED_LINK,
    PLACED_PLACE,
    PLACED_BOX,
    PLACED_DOT
};
/* How a box or a dot is filled: told apart in black and white, on a copy too. */
enum filling { FILL_OPEN, FILL_LINED, FILL_HATCH, FILL_DARK, FILL_DOTS, FILL_LIGHT, FILL_ROLE };
struct placed {
    enum placed_kind kind;
    double x, y; /* text: start and baseline; scene: its corner; disc: its middle; rule: from */
    double top, bottom; /* what it covers, for parting */
    enum role role;
    bool keep; /* may not be the last thing before a parting: a heading */
    const struct text_block *text;
    size_t line; /* TEXT: which of its lines */
    const struct scene *scene;
    double x2, y2, width; /* RULE: to, and how thick; BOX: its far corner; DOT: its radius */
    enum filling filling; /* BOX, DOT */
    const char *place;    /* LINK: where to; PLACE: its name. Letters, digits and hyphens */
    enum { LINE_WHOLE, LINE_DOTTED, LINE_CUT } line_kind; /* RULE */
};
struct galley {
    struct arena *arena;
    VEC(struct placed) items;
    double height; /* from 0 to below the last thing */
};

struct galley *galley_new(struct arena *arena);
/* All lines of a block, the first baseline at y; returns the last one's baseline (y with no line).
 */
double galley_text(struct galley *galley, const struct text_block *text, double x, double y,
                   enum role role);
/* The same ending at `right`, and about the middle `x`. */
double galley_text_end(struct galley *galley, const struct text_block *text, double right, double y,
                       enum role role);
double galley_text_middle(struct galley *galley, const struct text_block *text, double x, double y,
                          enum role role);
void galley_keep(struct galley *galley); /* what was added last stays with what follows */
void galley_scene(struct galley *galley, const struct scene *scene, double x, double y);
/* A sentence's number, reversed; `number` is one line of text. */
void galley_disc(struct galley *galley, const struct text_block *number, double x, double y,
                 enum role role);
void galley_rule(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                 enum role role);
/* Dots, and dashes, along a line. */
void galley_dots(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                 enum role role);
void galley_dashes(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                   enum role role);
/* A box with a frame `width` thick (0: none) in `role`. */
void galley_box(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                enum role role, enum filling filling);
/* A round dot, filled or open, with its rim in `role`. */
void galley_dot(struct galley *galley, struct vec2 at, double radius, enum role role,
                enum filling filling);
/* The triangle of the caution, its middle at (x, y). */
void galley_sign(struct galley *galley, double x, double y);
/* What lies between the corners leads to a place; the place of that name, in the whole document. */
void galley_link(struct galley *galley, struct vec2 from, struct vec2 to, const char *place);
void galley_place(struct galley *galley, double x, double y, const char *place);
/* A line to cut along; and the pair of scissors at its start, pointing right. */
void galley_cut(struct galley *galley, struct vec2 from, struct vec2 to);
void galley_scissors(struct galley *galley, double x, double y);
void galley_reach(struct galley *galley, double y); /* makes it at least so tall */
void galley_join(struct galley *galley, const struct galley *other, double x, double y);
/* Moves all from item `from` on down by y. */
void galley_lower(struct galley *galley, size_t from, double y);
/* All that is painted of it, in memory of its own. */
struct galley *galley_copy(struct arena *arena, const struct galley *galley);
/* Takes off all that does not fit above `height`; NULL when not even its first things fit. */
struct galley *galley_part(struct galley *galley, double height);
/* Takes no memory. */
void galley_paint(cairo_t *cr, struct fonts *fonts, const struct galley *galley, double x,
                  double y);

#endif
