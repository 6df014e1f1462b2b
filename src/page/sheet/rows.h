/* SPDX-License-Identifier: MIT */
/* rows: sheets that are rows under each other: a practice plan, a tally, a trend. Takes rows, gives
 * pages with their heads and feet, and the document; each sheet counts its own pages. Private to
 * sheet. */
#ifndef PAGE_SHEET_ROWS_H
#define PAGE_SHEET_ROWS_H

#include "page/sheet/booklet.h"

#define ROW_BASE 12.6 /* a row's first baseline */

/* The sheet that is open. */
struct rows {
    struct setter setter;
    const struct head_words *head;
    const struct galley *caution;
    struct galley *columns; /* what stands again at the head of a further page; or NULL */
    page_list pages;
    bool ruled; /* what is left of each page is for notes */
};

/* A new sheet on a new page; what its head and foot shorten stands in full in its first row. */
void rows_open(struct rows *rows, const struct head_words *head, const struct caution *caution);
/* A further page of the sheet that is open, with its head and its columns; the page is one's own to
 * fill. */
struct page *rows_turn(struct rows *rows, bool first);
struct page *rows_page(const struct rows *rows); /* the one being filled */
/* Adds a row: whole on this page or the next; one taller than a page is parted. */
void rows_add(struct rows *rows, struct galley *row);
/* The same with room over it, where something stands there. */
void rows_add_apart(struct rows *rows, struct galley *row, double gap);
/* Ends a row: a rule under what stands in it. */
void row_end(struct galley *row, double weight);
/* A section's heading with a note at its right, over a heavy rule. */
struct galley *rows_section(const struct rows *rows, struct str title, struct str note);
/* A line of text. */
const struct text_block *rows_set(const struct rows *rows, enum type type, struct str text);
/* A name on one line, a person's or a heading, else smaller on as many as it takes, the first of
 * them `rise` higher. */
void rows_name(const struct rows *rows, struct galley *row, enum type type, struct str name,
               struct vec2 base, double width, double rise);
/* What is left of the page, from the top of the next row on. */
double rows_room(const struct rows *rows);
/* The sheet is whole: its pages are counted and kept under a bookmark. */
void rows_close(struct rows *rows, struct booklet *booklet, struct str mark);
/* What is left of the page is ruled for notes, where there is room for so many lines. */
void rows_notes(struct rows *rows, int least);
/* "Lantern, tally sheet" where there is one sheet alone, else what many are called. */
struct str rows_title(struct booklet *booklet, const char *one, const char *many);
/* The PDF of sheets of a club: "Larkspur Kites, tally sheets". */
bool rows_write(struct booklet *booklet, struct str title, struct writer *writer);

#endif
