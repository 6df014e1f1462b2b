/* SPDX-License-Identifier: MIT */
/* said: one line of sentences, as tests say it: read, printed, and held to what was wanted. */
#ifndef TESTS_UNIT_WORDS_SAID_H
#define TESTS_UNIT_WORDS_SAID_H

#include "language/tidy/tidy.h"
#include "language/words/cursor.h"
#include "suite.h"

extern struct sources sources; /* of the line that was opened last */
extern struct diags diags;

/* A cursor on the line; the roles passer and receiver are known. */
struct cursor open_line(const char *text, bool drill);
const char *complaint(void); /* the first message, or nothing */
const char *printed(const sentence_list *list, const char *between);
/* Every sentence of the line in its tidy form, with " / " in between. */
const char *tidied(const char *text, bool drill);

struct pair {
    const char *written, *tidy; /* NULL: as written */
};
/* Each is printed so, and what is printed is printed the same; rows end with NULL. */
void check_pairs(const struct pair *pairs, bool drill);

/* Sentences in the form tidy prints, and words that point back: in sentences.c. */
extern const struct pair tidy_forms[], guards[], ties[], back[];

#endif
