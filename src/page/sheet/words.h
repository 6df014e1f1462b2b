/* SPDX-License-Identifier: MIT */
/* words: told sentences and the coach's own as blocks of lines; how levels, series and reads are
 * called on paper. Private to sheet. */
#ifndef PAGE_SHEET_WORDS_H
#define PAGE_SHEET_WORDS_H

#include "page/sheet/sheet.h"

/* What everything that is set needs. */
struct setter {
    struct arena *arena;
    struct fonts *fonts;
    const struct sheet_job *job;
};

enum type { /* the sizes of numbers on paper */
            TYPE_TITLE,
            TYPE_SERIES,
            TYPE_CLOCK,
            TYPE_ABOUT,
            TYPE_HEADING,
            TYPE_SMALL_HEADING,
            TYPE_SENTENCE,
            TYPE_LARGE_SENTENCE,
            TYPE_JOB,
            TYPE_POINT,
            TYPE_OTHERS,
            TYPE_NOTE,
            TYPE_CLUB,
            TYPE_DISC,
            TYPE_COUNT
};
double type_leading(enum type type);
/* Text with TELL_BOLD and TELL_PLAIN in it; width 0: one line. */
const struct text_block *words_set(const struct setter *setter, enum type type, struct str text,
                                   double width);

/* A coach's line with the players' numbers marked bold: "brush shoulders with 5". A number with a
 * measure or a count behind it is none. */
struct str words_bold(struct arena *arena, struct str text, int players);
struct str words_capitals(struct arena *arena,
                          struct str text); /* ASCII and Latin letters of two bytes */
struct str words_level(struct arena *arena, enum level_code level);    /* "under 16 girls" */
struct str words_series(struct arena *arena, const struct play *play); /* "Flex, number 7" */
struct str words_foot(struct arena *arena, const struct play *play);   /* "Lantern, Flex 7" */
/* A line for a foot: as many whole words as fit, with three dots when some do not. */
struct str words_short(const struct setter *setter, struct str text, double width);
/* "Step 2: what x3 does decides what 3 does"; `reader` is told "what you do". */
struct str words_decides(struct arena *arena, const struct play *play, const struct step *step,
                         body reader);

#endif
