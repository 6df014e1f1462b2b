/* SPDX-License-Identifier: MIT */
/* sheet: paper made of plays. One file and one row a sheet. */
#ifndef PAGE_SHEET_SHEET_H
#define PAGE_SHEET_SHEET_H

#include "base/writer.h"
#include "floor/season/season.h"
#include "floor/sim/run.h"
#include "judge/check/check.h"
#include "picture/paint/paint.h"

struct sheet_play {
    const struct play *play;
    const struct run *run; /* NULL: see sheet_job.run_again */
    const finding_list *findings;
    int reader; /* whose pages these are, 1..5; 0: the job's reader's */
};
struct sheet_job {
    const struct playbook *book;
    const struct season *season;
    const struct sheet_play *plays; /* those to print, in order; for a practice: those it names */
    size_t count;
    struct str title; /* the practice to print; empty: all of them */
    bool a4;
    int per_page;           /* one of the sheet's sizes; 0: as it likes */
    body reader;            /* --for N; BODY_NONE: everybody */
    struct str reader_name; /* from the roster, or empty */
    uint64_t seed;          /* of a fill-in sheet: which lines are missing */
    bool names;
    struct str heading; /* at the head of a play's pages, instead of whose sheet it is; or empty */
    /* For a sheet that takes one play at a time, however many there are: makes the run of a play in
     * `arena` where the row of it has none. */
    const struct run *(*run_again)(void *ctx, struct arena *arena, const struct play *play);
    void *run_ctx;
    struct str crest;     /* bytes of an SVG or PNG without trouble; empty: none */
    bool two_sided;       /* for binding: pages lean to the outside */
    struct str date_text; /* shown in the foot; empty: none */
    const char *date;     /* ISO 8601, of the file; NULL: none */
    bool *nothing; /* set when the plays hold nothing for the sheet, and nothing was written */
};
struct sheet_row {
    const char *word; /* "handout" */
    const char *what;
    const int *sizes;   /* how many diagrams a page may be asked for, 0 behind the last */
    bool one_at_a_time; /* takes plays whose runs are not there: see sheet_job.run_again */
    /* Made of what the book plans and counts, not of picked plays: whether there is any; NULL: of
     * plays. */
    bool (*holds)(const struct sheet_job *job);
    bool plans; /* with `holds`: it shows the plays that practices name; none may be broken */
    bool (*write)(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                  struct writer *writer);
};
size_t sheet_count(void);
const struct sheet_row *sheet_at(size_t index);
/* Can so many diagrams be had on a page of it? 0: as the sheet likes. */
bool sheet_takes(const struct sheet_row *row, int per_page);
const struct sheet_row *sheet_find(struct str word);

#endif
