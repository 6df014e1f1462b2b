/* SPDX-License-Identifier: MIT */
/* words: told sentences and the coach's own as blocks of lines; what only paper says of a play.
 * Private to sheet. */
#ifndef PAGE_SHEET_WORDS_H
#define PAGE_SHEET_WORDS_H

#include "page/sheet/sheet.h"

struct drawn { /* a diagram, or its size until it is drawn */
    struct diagram diagram;
    double width;
    struct scene *scene;
    bool made;
};
/* Pictures and words made for the play that is being set, for the next way to set it: the pictures
 * have their sizes alone until the best way is known (pictures_draw). */
struct kept {
    VEC(struct drawn) scenes;
    struct kept_words *words; /* a table by hash, `room` of them, a power of two */
    size_t count, room;
};
/* What everything that is set needs. */
struct setter {
    struct arena *arena;
    struct fonts *fonts;
    const struct sheet_job *job;
    struct kept *kept;            /* or NULL */
    const finding_list *findings; /* drawn on the diagrams; or NULL */
};

enum type { /* the sizes of numbers on paper */
            TYPE_TITLE,
            TYPE_LONG_TITLE,
            TYPE_LONGEST_TITLE,
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
            TYPE_ASKED,
            TYPE_NOTE,
            TYPE_CLUB,
            TYPE_DISC,
            TYPE_CALL,
            TYPE_COVER,
            TYPE_LONG_COVER,
            TYPE_LONGEST_COVER,
            TYPE_CHAPTER,
            TYPE_CARD_NAME,
            TYPE_SMALL_CARD_NAME,
            TYPE_COUNT
};
double type_leading(enum type type);
/* Text with TELL_BOLD and TELL_PLAIN in it; width 0: one line. */
const struct text_block *words_set(const struct setter *setter, enum type type, struct str text,
                                   double width);

/* A name that may stand in any script, so that what is set round it keeps its place: between marks
 * that nobody sees, when letters of it run to the left; else as it is. */
struct str words_isolated(struct arena *arena, struct str name);
/* What a coach says to one player: "3: Go as the top empties." */
struct str words_point(struct arena *arena, const struct point *point, int players);
struct str words_capitals(struct arena *arena,
                          struct str text); /* ASCII and Latin letters of two bytes */
/* "Players' sheet, under 16 girls"; the sheet alone where the coach has written no level. */
struct str words_sheet(struct arena *arena, const char *sheet, const struct play *play);
/* "Larkspur Kites, tally sheets"; without the comma where one of them is empty. */
struct str words_joined(struct arena *arena, struct str name, struct str what);
struct str words_foot(struct arena *arena, const struct play *play); /* "Lantern, Flex 7" */
/* The text when it takes at most so many lines, else as much of it as does, in whole words where
 * that can be, and three dots. What does not fit has to be told somewhere else. */
struct str words_fit(const struct setter *setter, enum type type, struct str text, double width,
                     size_t lines);

#endif
