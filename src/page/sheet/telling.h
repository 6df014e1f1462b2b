/* SPDX-License-Identifier: MIT */
/* telling: one way through a step as a block of a page: heading, diagram, sentences, points, and
 * "your job". Blocks side by side are a row. Private to sheet. */
#ifndef PAGE_SHEET_TELLING_H
#define PAGE_SHEET_TELLING_H

#include "page/sheet/page.h"

#define HEADING_BASE 8.0 /* a band's top to its first heading's baseline */
#define BESIDE_GAP 21.6  /* from a diagram to words beside it */
#define TO_SENTENCE 15.0 /* from a diagram or a section's heading to the next baseline */

/* A column being filled, from the top down. */
struct column {
    const struct setter *setter;
    struct galley *galley;
    double x, width;
    double base; /* the last baseline */
    bool gap;    /* a sentence stands above */
};

/* One way through a step, as it is to be set. */
struct telling {
    const struct play *play;
    const struct diagram *diagram;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    const struct scene *scene;
    size_t first_task; /* what the diagram shows is told from here on; */
    size_t own_task;   /* whose player's job this is, from here on */
    const point_list *points;
};

/* "2  Cross screen": the label, a wide space, the title. */
struct heading {
    const struct text_block *label, *title; /* either may be NULL */
    const struct text_block *after;         /* "after 1a", behind the title; or NULL; */
    bool after_under;                       /* under it, where there is no room */
    double indent;                          /* of the title */
    struct str whole;                       /* the title, when it is shown shortened */
    size_t lines;
    enum type type;
};

/* Steps or reads that stand side by side. */
struct row {
    struct telling telling[3];
    struct heading heading[3];
    size_t count, lines; /* of the tallest heading */
    double height;       /* of the tallest diagram: words side by side start level */
};

/* Adds the diagram to the row, with its size alone until pictures_draw; there has to be room for
 * it, and the setter has to keep pictures. */
void row_add(const struct setter *setter, struct row *row, const struct grid *grid,
             const struct run *run, const struct diagram *diagram);
/* Sets the row at `top` of the band and empties it. */
void row_set(const struct setter *setter, struct band *band, struct row *row,
             const struct grid *grid, double top);
/* Draws the pictures that stand on these pages. */
void pictures_draw(const struct setter *setter, const page_list *pages);
/* From one column's left edge to the next one's. */
double grid_pitch(const struct grid *grid);

/* A section's heading over the full column, away from what stands before it. */
void section_set(struct column *column, struct str words);
/* A section of one paragraph. */
void paragraph_set(struct column *column, struct str heading, struct str text);
/* Teaching points with a rule at their left, the first baseline `gap` further down. */
void points_set(struct column *column, const struct play *play, const point_list *points,
                double gap);
bool point_is_for(const struct point *point, body reader);

#endif
