/* SPDX-License-Identifier: MIT */
/* bands: a play's handout as rows that a page takes one after another: steps side by side, reads
 * three across, the coach's short paragraphs. Private to sheet. */
#ifndef PAGE_SHEET_BANDS_H
#define PAGE_SHEET_BANDS_H

#include "page/sheet/galley.h"
#include "page/sheet/words.h"

#define PAGE_WIDE 504.0 /* the live width of letter and A4 */

enum band_kind { BAND_STEPS, BAND_READS, BAND_WORDS };
struct band {
    enum band_kind kind;
    struct galley *galley; /* its top is the top of its headings' letters */
    double gap;            /* kept free above it, not at the top of a page */
    unsigned uses;         /* of its scenes */
    int first, last;       /* numbers of its steps */
    double taken;          /* STEPS: its columns reach so far across */
    double beside;         /* and what stands beside them so far down */
    double words;          /* the last baseline of its words */
    size_t start;          /* on a page: its first item there */
};
typedef VEC(struct band) band_list;

/* One or two ways to set the same, the better first: a page takes the first for which it has room.
 */
struct group {
    band_list ways[2];
    size_t count;
};
typedef VEC(struct group) group_list;

/* How steps stand on a page: so many across, at most so many rows. */
struct grid {
    int per_page, across, rows;
    double diagram, column; /* their widths */
    bool beside;            /* the sentences stand beside the diagram */
    enum type sentence;
};
const struct grid *grid_find(int per_page); /* 0: as 4 */

/* All of the play, in order. */
void bands_make(const struct setter *setter, const struct run *run, const struct grid *grid,
                group_list *groups);
/* A group of one way, of paragraphs. */
void group_add_words(const struct setter *setter, group_list *groups, struct galley *words,
                     double gap);

#endif
