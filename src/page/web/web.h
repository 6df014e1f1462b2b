/* SPDX-License-Identifier: MIT */
/* web: the playbook as one HTML file for phones and larger screens: every play with its diagrams,
 * what moves, its sentences and points. The file needs nothing but a browser: no network, and
 * without its script the still diagrams and all words stand there. No cairo. */
#ifndef PAGE_WEB_WEB_H
#define PAGE_WEB_WEB_H

#include "base/writer.h"
#include "floor/season/season.h"
#include "floor/sim/run.h"

struct web_play {
    const struct play *play;
    const struct run *run; /* NULL: see web_job.run_again */
};
struct web_job {
    const struct playbook *book;
    const struct web_play *plays; /* in order; at least one */
    size_t count;
    bool names;                  /* players' names; else numbers alone */
    struct str date_text;        /* shown at the foot; empty: none */
    const struct season *season; /* whose practices are told; NULL: none */
    bool a4;                     /* where a clock has twenty-four hours */
    /* Makes the run of a play in `arena` where the row of it has none. */
    const struct run *(*run_again)(void *ctx, struct arena *arena, const struct play *play);
    void *run_ctx;
};
void web_book_write(struct arena *arena, const struct web_job *job, struct writer *writer);

#endif
