/* SPDX-License-Identifier: MIT */
/* limits: every bound the library keeps, by name. Each has a test. */
#ifndef BASE_LIMITS_H
#define BASE_LIMITS_H

enum {
    LIMIT_ATTACKERS = 12,       /* in a drill; five in a play */
    LIMIT_DEFENDERS = 12,       /* in a drill; five in a play */
    LIMIT_LINE_BYTES = 4096,    /* a longer line is an error and is skipped */
    LIMIT_TOKENS = 256,         /* in one line */
    LIMIT_FILE_BYTES = 8 << 20, /* one source file */
    LIMIT_SOURCES = 64,         /* files of one book */
    LIMIT_INCLUDE_DEPTH = 8,
    LIMIT_PLACE_DEPTH = 3,  /* places inside places */
    LIMIT_ACTION_DEPTH = 4, /* run inside run */
    LIMIT_ACTIONS = 400,    /* in one book */
    LIMIT_RUNS = 256,       /* actions and shared steps in one step, those within others included */
    LIMIT_SENTENCES = 64,   /* in one step, branches included */
    LIMIT_STEPS = 24,       /* in one play */
    LIMIT_BRANCHES = 8,     /* in one step */
    LIMIT_PLAYS = 10000,    /* in one book */
    LIMIT_PRACTICE_MINUTES = 600, /* of a practice, and of one item */
    LIMIT_GROUP = 40,             /* players in a group */
    LIMIT_COUNT = 9999,           /* a count in what was charted */
    LIMIT_CREST_BYTES = 4 << 20,  /* a team's picture */
    LIMIT_CREST_PIXELS = 4000,    /* each way, of a PNG */
    LIMIT_DIAGS = 500             /* kept for one run; the rest is counted */
};
#define LIMIT_ARENA_BYTES ((size_t)1 << 30)
#define LIMIT_RUNS_BYTES ((size_t)1 << 26) /* runs of a book that are kept: program/api/runs.c */
#define LIMIT_STEP_SECONDS 30.0            /* a step that runs longer cannot end */
#define LIMIT_WAIT_SECONDS 8.0             /* the longest a tied sentence waits for its moment */

#endif
