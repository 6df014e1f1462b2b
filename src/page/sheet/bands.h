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
    int first, last;       /* numbers of its steps */
    double taken;          /* STEPS: its columns reach so far across */
    double beside;         /* and what stands beside them so far down */
    double words;          /* the last baseline of its words */
    double columns[3];     /* of each column's */
    int pictures;          /* diagrams in it */
    double scale;          /* their points a foot of floor, added up */
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
    bool run_on; /* ways on follow their step in the same row, under no heading of their own */
};
const struct grid *grid_find(int per_page); /* 0: as 4 */

/* How a play is laid out: the grid of its steps, and that of their ways on. */
struct layout {
    const struct grid *grid, *reads;
};
typedef VEC(struct layout) layout_list;
/* Those worth trying for these diagrams, larger pictures first: which is best is seen on the pages.
 */
void layouts_for(const struct setter *setter, const diagram_list *diagrams, layout_list *layouts);

/* All of the play, in order. */
void bands_make(const struct setter *setter, const struct run *run, const diagram_list *diagrams,
                const struct layout *layout, group_list *groups);
/* Call, goal, names and points for the whole play as paragraphs; NULL when there are none.
 * `measured`: told behind the goal, or empty. */
struct galley *paragraphs_set(const struct setter *setter, const struct play *play,
                              struct str measured, double width);
/* A group of one way, of paragraphs. */
void group_add_words(const struct setter *setter, group_list *groups, struct galley *words,
                     double gap);

#endif
