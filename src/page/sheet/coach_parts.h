/* SPDX-License-Identifier: MIT */
/* coach_parts: what a coach's sheet is put together from: steps, reads, and what both have. Private
 * to sheet. */
#ifndef PAGE_SHEET_COACH_PARTS_H
#define PAGE_SHEET_COACH_PARTS_H

#include "page/sheet/rows.h"
#include "page/sheet/telling.h"
#include "page/sheet/timing.h"
#include "page/sheet/watch.h"

#define ACROSS 3
#define COLUMN 152.0
#define SECTION_BASE 8.0 /* of a section's heading, under its row's top */
#define LARGE 237.6      /* a step's picture, in points; a full floor's is a column wide */

/* Where a read's timing stands that its step does not show: across the page, in its column under
 * the sentences, or there where this makes no row higher. */
enum timed { TIMED_ACROSS, TIMED_UNDER, TIMED_FREE };

/* How large the pictures are, and where the reads have their timing: the first way that takes no
 * more pages than another is kept. */
struct coach_sizes {
    const struct grid *step;
    const struct grid *pair; /* reads in twos and fours */
    enum timed timed;
    double gap; /* between sections */
};
/* A step's smallest picture; reads three across. */
extern const struct grid coach_small_step, coach_three_reads;

struct coaching {
    struct rows rows;
    const struct coach_sizes *way;
    const struct sheet_tolerance *tolerance; /* of each diagram; NULL: nobody asked */
    const struct sheet_play *play;
    const struct run *run;
    diagram_list diagrams;
};

/* Rows that stay on one page where a page is tall enough for them. */
struct bundle {
    VEC(struct galley *) rows;
};

/* An empty row is none. */
void coach_bundle_add(struct bundle *bundle, struct galley *row);
void coach_bundle_place(struct coaching *coaching, const struct bundle *bundle);
/* A section's heading with a note at its right; returns how far the note's further lines reach
 * down. */
double coach_head(struct coaching *coaching, struct galley *galley, struct str title,
                  struct str note);
void coach_small_heading(struct column *column, struct str words);
/* "Common mistakes" under what stands in the column. */
void coach_mistakes(struct column *column, const struct play *play, const point_list *mistakes);
/* What stands in a timing's note: how often it held, where it lies on the play's clock. */
void coach_put_tolerance(struct strbuf *out, const struct sheet_tolerance *tolerance);
void coach_put_clock(struct strbuf *note, const struct segment *segment);
struct str coach_note_ended(struct strbuf *note);
/* Of the diagram whose segment it is; NULL: it says nothing. */
const struct sheet_tolerance *coach_tolerance(const struct coaching *coaching,
                                              const struct segment *segment);
/* Has it a timing that its step does not show? */
bool coach_own_timing(const struct coaching *coaching, const struct diagram *diagram);

/* A step with all that belongs to it; and the ways on of one. */
void coach_step(struct coaching *coaching, const struct diagram *diagram);
void coach_reads(struct coaching *coaching, const struct diagram *diagrams, size_t count);

#endif
