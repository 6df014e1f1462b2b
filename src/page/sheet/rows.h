/* SPDX-License-Identifier: MIT */
/* rows: sheets that are rows under each other: a practice plan, a tally, a trend. Takes rows, gives
 * pages with their heads and feet, and the document; each sheet counts its own pages. Private to
 * sheet. */
#ifndef PAGE_SHEET_ROWS_H
#define PAGE_SHEET_ROWS_H

#include "page/sheet/page.h"

struct rows {
    struct setter setter;
    const struct head_words *head; /* of the sheet that is open */
    const struct galley *caution;
    struct galley *columns; /* what stands again at the head of a further page; or NULL */
    page_list pages;
    VEC(const struct galley *) cautions; /* of each page */
    VEC(size_t) starts;                  /* the page on which each sheet starts, from 1 */
    VEC(const char *) titles;            /* its bookmark */
};

/* A new sheet on a new page; what its head and foot shorten stands in full in its first row. */
void rows_open(struct rows *rows, const struct head_words *head, const struct caution *caution);
/* A further page of the sheet that is open, with its head and its columns; the page is one's own to
 * fill. */
struct page *rows_turn(struct rows *rows, bool first);
struct page *rows_page(const struct rows *rows); /* the one being filled */
/* Adds a row: whole on this page or the next; one taller than a page is parted. `uses`: of its
 * diagrams, for the key. */
void rows_add(struct rows *rows, struct galley *row, unsigned uses);
/* Ends a row: a rule under what stands in it. */
void row_end(struct galley *row, double weight);
/* A section's heading with a note at its right, over a heavy rule. */
struct galley *rows_section(const struct rows *rows, struct str title, struct str note);
/* A line of text, and the same ending at `right`. */
const struct text_block *rows_set(const struct rows *rows, enum type type, struct str text);
void row_put_end(struct galley *row, const struct text_block *words, double right, double base,
                 enum role role);
/* What is left of the page, from the top of the next row on. */
double rows_room(const struct rows *rows);
/* The PDF; false when there is no page or nothing could be written. `title`: of the document. */
bool rows_write(struct rows *rows, struct str title, struct writer *writer);

#endif
