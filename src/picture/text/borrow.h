/* SPDX-License-Identifier: MIT */
/* borrow: letters that the bundled face lacks, from the fonts of the machine; nothing is looked for
 * until there is such a letter. Private to text. */
#ifndef PICTURE_TEXT_BORROW_H
#define PICTURE_TEXT_BORROW_H

#include <stdbool.h>
#include <stdint.h>

#include <cairo-ft.h>

struct borrowing;
/* NULL when memory ran out or the machine tells of no fonts. */
struct borrowing *borrowing_create(void);
void borrowing_destroy(struct borrowing *borrowing);

enum { BORROWED_MOST = 32, BORROWED_NAME = 64 };
struct borrowed {
    FT_Face shaping; /* one unit of the em is one pixel */
    cairo_font_face_t *painting;
    bool bold;
    char name[BORROWED_NAME]; /* "DejaVu Sans" */
};
/* Which of them has the letter, upright, bold or not; -1 when none has. */
int borrowing_find(struct borrowing *borrowing, FT_Library library, bool bold, uint32_t letter);
const struct borrowed *borrowing_at(const struct borrowing *borrowing, int index);

#endif
