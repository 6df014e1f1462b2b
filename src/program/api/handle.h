/* SPDX-License-Identifier: MIT */
/* handle: what stands behind struct courtwright, and what the files of this room share. */
#ifndef PROGRAM_API_HANDLE_H
#define PROGRAM_API_HANDLE_H

#include "base/diag.h"
#include "base/guard.h"
#include "base/limits.h"
#include "base/writer.h"
#include "courtwright/courtwright.h"
#include "floor/season/season.h"
#include "floor/sim/sim.h"
#include "judge/check/check.h"
#include "picture/scene/scene.h"

struct fonts;

/* A play on its way through the rooms. */
struct compiled {
    const struct play *play;
    bool broken;     /* there is an error in it, or in what it leans on */
    bool waiting;    /* another one is wanted: it was not tried */
    bool ran;        /* it could be run */
    struct run *run; /* NULL: it could not, or its run was let go (runs.c) */
    finding_list findings;
    diagram_list diagrams; /* without their segments when the run was let go */
    struct courtwright_play told;
    struct courtwright_diagram *told_diagrams;
};

struct courtwright {
    struct courtwright_host host;
    struct memory memory;
    struct arena arena; /* everything below that is not a plain value lives in it */
    struct arena runs;  /* of the plays: nothing else lives here */
    const char *name;   /* stands behind the handle itself, in the same block */
    struct sources sources;
    struct diags diags;
    struct book *book;         /* NULL when the text was no text */
    struct playbook *playbook; /* NULL likewise */
    struct season *season;     /* NULL likewise: practices and what was charted */
    struct compiled *plays;
    size_t play_count;
    struct courtwright_diagnostic *said;
    size_t said_count, errors, warnings;
    size_t errors_in[COURTWRIGHT_CHARTED + 1]; /* outside plays, by part of the book */
    struct courtwright_diagnostic gave_up;     /* the one thing said when memory ran out */
    struct courtwright_player *players;
    size_t player_count;
    const char **practices; /* their titles */
    const char **source_names;
    size_t source_count;
    const char *title, *team;
    char missing[160];             /* letters that no face has */
    char borrowed[160];            /* letters for which a face of the machine was borrowed */
    char borrowed_face[80];        /* the first such face */
    struct fonts *fonts;           /* made when first needed; see fonts.c */
    struct scene_memory *pictures; /* of pages; NULL for a book without plays */
};

/* As guard, with a fresh arena that is gone afterwards: for one render call. */
enum courtwright_status
with_scratch(const struct memory *memory,
             enum courtwright_status (*work)(struct arena *scratch, void *job), void *job);
struct memory memory_of(const struct courtwright_host *host);

/* A NUL-ended copy that is valid UTF-8 without control characters (spaces stand for them). */
const char *clean_copy(struct arena *arena, struct str text);

/* report.c. A message with "Ada (1)" for a marked "1", where the team has a name for her. */
const char *names_put(struct arena *arena, const struct courtwright *book, const struct play *play,
                      struct str marked);

bool has_nul(struct str text);
/* "plays/lantern.play" -> "lantern": what a file without a play heading is called. */
struct str name_stem(struct str name);
/* The loader that asks a host's fetch, which there must be; ctx is the host. */
enum load_result load_include(void *ctx, struct arena *arena, struct str from, struct str path,
                              struct str *name, struct str *text);

/* Steps of load, in the arena, unwinding by its escape. */
void report_make(struct courtwright *book); /* report.c: said, errors, warnings */
/* broken.c: which plays are not to be run, and where other errors stand. */
void broken_find(struct courtwright *book);
void accepts_note_idle(struct courtwright *book); /* accepts.c: accept lines that silence nothing */
void contents_make(struct courtwright *book);     /* contents.c: what the book holds, told */
/* contents.c: what there is to say of one play, while its run is there. */
void contents_tell_play(struct courtwright *book, struct compiled *compiled);

/* contents.c: on which paper; what the book says counts where the caller says nothing. */
bool paper_is_a4(const struct courtwright *book, enum courtwright_paper paper);

/* runs.c. Lets the play's run go when the runs of the book, with it, take more than they may:
 * `before` is how book->runs stood before it was made. */
void runs_keep_or_release(struct courtwright *book, struct compiled *compiled,
                          struct arena_mark before);
/* The play with its run and diagrams; made in `scratch` where they were let go. */
const struct compiled *runs_again(struct arena *scratch, const struct courtwright *book,
                                  const struct compiled *compiled);
/* The plays of the book that were run: those that are asked for, in that order, or with NULL all.
 * COURTWRIGHT_NO_SUCH and COURTWRIGHT_BROKEN where one is asked for that is not there or was not
 * run. */
struct ran_plays {
    const struct compiled **at;
    size_t count;
};
enum courtwright_status runs_asked_for(struct arena *scratch, const struct courtwright *book,
                                       const size_t *asked, size_t count, struct ran_plays *ran);
struct web_job;
/* web.c: these plays for a page, which says itself the rest. Runs that were let go are made again
 * one at a time, as the page comes to them. */
struct web_job web_job_of(struct arena *scratch, struct courtwright *book,
                          const struct ran_plays *ran);
/* NULL: it is none of the book's. */
const struct compiled *runs_find(const struct courtwright *book, const struct play *play);
/* The run of a play of the book `ctx`, made in `arena` where it was let go. */
const struct run *runs_of_play(void *ctx, struct arena *arena, const struct play *play);

void fonts_let_go(struct courtwright *book);
#endif
