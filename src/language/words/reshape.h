/* SPDX-License-Identifier: MIT */
/* reshape: a line that nothing else has read, put another way in one place and read again by
 * everything that reads lines: a label in front of a colon, a phrase in front of who acts, a screen
 * or a hand-off that is a noun. Each way is sound by itself; which of them fits is found by trying,
 * all of the line or nothing. Inside words only. */
#ifndef LANGUAGE_WORDS_RESHAPE_H
#define LANGUAGE_WORDS_RESHAPE_H

#include <stddef.h>

#include "language/words/put_plain.h"

/* The line another way in what begins at `at`: all of it in `r`, what is left out of it in r->told,
 * what it was taken as in r->as. */
#define SHAPE(rule) bool rule(const struct cursor *c, const struct token *at, struct recast *r);
#define SHAPE_APART(rule) SHAPE(rule)
#include "language/words/reshape.def"
#undef SHAPE
#undef SHAPE_APART

/* ---- what the rules share ---- */

/* Nothing but what says nothing stands between `at` and where a sentence begins. */
bool sentence_begins_at(const struct cursor *c, const struct token *at);
/* Who acts in the clause that `at` stands in, by number, and where that clause begins; 0: it is not
 * said. */
int acts_in_clause(const struct cursor *c, const struct token *at, const struct token **clause);
/* What he does stands there, or a word that looks like it. */
bool deed_at(const struct cursor *c, const struct token *at);
/* The next mark from `from` on, or the end; no further than `far` words. */
const struct token *mark_ahead(const struct cursor *c, const struct token *from, ptrdiff_t far);
/* None of these words stands in between. */
bool none_among(const struct token *from, const struct token *to, const char *const *words);
/* What makes a condition, a moment or a denial of what stands with it. */
extern const char *const turning_words[];

#endif
