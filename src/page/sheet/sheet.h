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
    int reader; /* whose pages these are, 1..5; 0: the job's reader's; SHEET_ANY_ROLE: of one who
                 * takes every spot of a drill in turn */
};
enum { SHEET_ANY_ROLE = -1 };
/* How a step fared when it was run many times by other players. */
struct sheet_tolerance {
    int runs, works;     /* 0: nothing in it can be late, and it was not run */
    struct str tightest; /* "3's curl off 5 to the nail", with marks; empty: nothing is tight */
    double spare;        /* seconds it had in the tightest of the runs that worked */
    struct str trouble;  /* what went wrong most often, with marks; or empty, */
    int times;           /* and how often */
};
struct sheet_job {
    const struct playbook *book;
    const struct season *season;
    const struct sheet_play *plays; /* those to print, in order; for a practice: those it names */
    size_t count;
    struct str title; /* the practice to print; empty: all of them */
    bool a4;
    int per_page;      /* one of the sheet's sizes; 0: as it likes */
    body reader;       /* --for N; BODY_NONE: everybody */
    bool call_at_head; /* where it would stand alone on a page */
    bool any_role;     /* of a drill: one reader, who takes every spot of it in turn */
    struct str reader_name, reader_jersey; /* of one asked for by name, else empty */
    uint64_t seed;                         /* of a fill-in sheet: which lines are missing */
    bool names;
    const struct roster_entry *instead_of; /* the reader stands in for her here; NULL: for none */
    const struct team *team;               /* as the reader's pages have it; NULL: the book's */
    struct scene_memory *pictures;         /* what was found for crowded ones; or NULL */
    double last_line;   /* kept free at the end of a play's pages where there is room; points */
    struct str heading; /* at the head of a play's pages, instead of whose sheet it is; or empty */
    /* A sheet takes one play at a time, however many there are: makes the run of a play in `arena`
     * where the row of it has none. */
    const struct run *(*run_again)(void *ctx, struct arena *arena, const struct play *play);
    void *run_ctx;
    struct str crest;     /* bytes of an SVG or PNG without trouble; empty: none */
    bool two_sided;       /* for binding: pages lean to the outside */
    struct str date_text; /* shown in the foot; empty: none */
    const char *date;     /* ISO 8601, of the file; NULL: none */
    /* Of a coach's sheet; NULL: the sheet says nothing of it. False: that is all, memory ran out.
     */
    bool (*tolerance)(void *ctx, struct arena *arena, const struct segment *segment,
                      struct sheet_tolerance *tolerance);
    void *tolerance_ctx;
    /* Told of each play that holds nothing for the sheet. */
    void (*left_out)(void *ctx, const struct play *play);
    void *left_out_ctx;
    bool *nothing; /* set when the plays hold nothing for the sheet, and nothing was written */
};
struct booklet;
struct sheet_row {
    const char *word; /* "handout" */
    const char *what;
    const int *sizes; /* how many diagrams a page may be asked for, 0 behind the last */
    /* Made of what the book plans and counts, not of picked plays: whether there is any; NULL: of
     * plays. */
    bool (*holds)(const struct sheet_job *job);
    bool plans; /* with `holds`: it shows the plays that practices name; none may be broken */
    bool (*pages)(struct booklet *booklet, struct writer *writer); /* sheets.h */
};
size_t sheet_count(void);
const struct sheet_row *sheet_at(size_t index);
/* Can so many diagrams be had on a page of it? 0: as the sheet likes. */
bool sheet_takes(const struct sheet_row *row, int per_page);
const struct sheet_row *sheet_find(struct str word);
/* The sheet of these plays, as PDF. False: nothing could be written. */
bool sheet_write(const struct sheet_row *row, struct arena *arena, struct fonts *fonts,
                 const struct sheet_job *job, struct writer *writer);

#endif
