/* SPDX-License-Identifier: MIT */
/* booklet: pages that are whole, kept while the next play is set, and the document made of them: a
 * sheet of three hundred plays needs no more room for its work than one of three. Private to sheet.
 */
#ifndef PAGE_SHEET_BOOKLET_H
#define PAGE_SHEET_BOOKLET_H

#include "page/sheet/page.h"

struct booklet_page {
    struct galley *galley;
    struct str foot;
    const char *label; /* what a reader calls it; NULL: its number */
};
struct booklet_mark {
    const char *title;
    size_t page; /* from 1 */
    int level;   /* 0: on top */
};
enum { BOOKLET_LEVELS = 3 };
struct booklet {
    struct setter setter; /* its arena is for what is needed for a moment */
    struct arena keep;    /* and this for what is painted */
    VEC(struct booklet_page) pages;
    VEC(struct booklet_mark) marks; /* in the order of their pages */
};

/* Runs `work` with an empty booklet; when memory runs out in it, all is let go and the jump goes
 * on. */
bool booklet_make(const struct setter *setter,
                  bool (*work)(struct booklet *booklet, struct writer *writer),
                  struct writer *writer);
/* Keeps what is painted of a page. */
void booklet_add(struct booklet *booklet, const struct galley *galley, struct str foot);
void booklet_mark(struct booklet *booklet, struct str title, size_t page, int level);

/* The feet of all pages, of which the first `bare` have no number. */
void booklet_number(struct booklet *booklet, size_t bare);

struct booklet_cover { /* what only a book has */
    const char *subject, *author;
    double crest_left, crest_top, crest_wide, crest_tall;
    double lean; /* of its pages to the outside */
};
/* The PDF; `cover`: or NULL. False when there is no page or nothing could be written. */
bool booklet_write(struct booklet *booklet, struct str title, const struct booklet_cover *cover,
                   struct writer *writer);

/* The run of a play, made anew where the book keeps none. */
const struct run *booklet_run(const struct setter *setter, const struct sheet_play *row);

#endif
