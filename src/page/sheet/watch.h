/* SPDX-License-Identifier: MIT */
/* watch: what the coach is to look at in one way through a step, with its figures: what the checks
 * found, and, where they found nothing, what in it is tightest. Private to sheet. */
#ifndef PAGE_SHEET_WATCH_H
#define PAGE_SHEET_WATCH_H

#include "page/sheet/galley.h"
#include "page/sheet/words.h"

struct watched {
    const struct finding *finding; /* or NULL: a figure of the run */
    size_t letter;                 /* of a finding: as on the diagram, 0 is A */
    struct str text;               /* players' numbers marked */
};
typedef VEC(struct watched) watched_list;

/* The findings of one diagram in the order of their letters; those accepted are left out. */
void watch_findings(struct arena *arena, const finding_list *findings, int step, int branch,
                    watched_list *out);
/* The run's own figures, at most one of a kind: the screen with the least time to spare, the widest
 * gap at one, the pass a defender is nearest to; of nothing that a check has found fault with. */
void watch_figures(struct arena *arena, const struct segment *segment, const watched_list *found,
                   watched_list *out);
/* In columns of `width`, `across` of them at `pitch`, row by row; the first baseline 14 points
 * under `top`. Returns the last baseline. */
double watch_set(const struct setter *setter, struct galley *galley, const watched_list *list,
                 double width, double pitch, size_t across, double top);

#endif
