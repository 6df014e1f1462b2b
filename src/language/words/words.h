/* SPDX-License-Identifier: MIT */
/* words: reads a book: lines to forms by the vocabulary and the grammar of one sentence. Reports
 * every fault as a diagnostic and goes on at the next line. */
#ifndef LANGUAGE_WORDS_WORDS_H
#define LANGUAGE_WORDS_WORDS_H

#include "base/diag.h"
#include "language/words/ast.h"

enum { LANGUAGE_VERSION = 1 }; /* the newest that is read: `courtwright 1` on a first line */

enum verb_task {
    VERB_MOVE,
    VERB_HOLD,
    VERB_CARRY,
    VERB_PASS,
    VERB_EXCHANGE,
    VERB_SHOOT,
    VERB_SCREEN,
    VERB_USE,
    VERB_GUARD
};
enum verb_default {
    DEFAULT_NONE,
    DEFAULT_RIM,
    DEFAULT_OWN_SPOT,
    DEFAULT_EMPTY_PERIMETER,
    DEFAULT_AWAY_PERIMETER,
    DEFAULT_NEAREST_BLOCK,
    DEFAULT_LANE,
    DEFAULT_HALF_COURT,
    DEFAULT_WHERE_HE_IS
};
enum verb_shape {
    SHAPE_STRAIGHT,
    SHAPE_CURL,
    SHAPE_FADE,
    SHAPE_V,
    SHAPE_L,
    SHAPE_BACK,
    SHAPE_SETUP,
    SHAPE_DRIVE,
    SHAPE_AT,
    SHAPE_SEAL
};
enum verb_pace { EFFORT_WALK, EFFORT_JOG, EFFORT_RUN, EFFORT_CUT, EFFORT_HARD, EFFORT_SPRINT };
enum verb_event { WHEN_STARTED, WHEN_ARRIVED, WHEN_SET, WHEN_USED, WHEN_RELEASED, WHEN_CAUGHT };

struct verb_row {
    const char *symbol; /* "PASSES" */
    const char *words;  /* "passes to" */
    const char *bare;   /* "pass to" */
    enum verb_task task;
    const char *needs;
    enum verb_default place;
    enum verb_shape shape;
    enum verb_pace pace;
    enum verb_event fixed, last;
    const char *slots; /* what may follow: see verbs.def */
};
const struct verb_row *verb_row(enum verb verb);
bool verb_goes(enum verb verb); /* somebody goes somewhere himself, with the ball or without */
bool verb_runs(enum verb verb); /* somebody runs without the ball, off a screen or not */
/* Whether an event of this family may be a sentence with this verb. */
bool verb_in_family(enum verb verb, enum event_family family);

/* "warm-up"; NULL for the coach's own words. */
const char *content_word(enum content_kind kind);
/* "starts"; nothing for an item. */
const char *plan_word(enum plan_kind kind);
/* "film" */
const char *occasion_word(enum occasion occasion);

/* "level": the word a setting's line opens with. */
const char *setting_word(enum setting setting);

/* Reads `source` (already in `sources`) and what it includes. Never fails: what cannot be read is
 * reported. `loader` may be NULL: then every include is an error. */
struct book *book_read(struct arena *arena, struct sources *sources, uint32_t source,
                       const struct loader *loader, struct diags *diags);

/* The same, watched: cursor.h. */
struct cursor_watch;
struct book *book_read_watched(struct arena *arena, struct sources *sources, uint32_t source,
                               const struct loader *loader, struct diags *diags,
                               const struct cursor_watch *watch);

/* A word of the language near to `word` among `candidates` (NULL-ended), or NULL: for help texts.
 */
const char *words_nearest(struct str word, const char *const *candidates);

#endif
