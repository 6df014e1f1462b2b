/* SPDX-License-Identifier: MIT */
/* sieve: which first two letters the words of a list may have, found when it is first gone through
 * and kept for the book: most lists are passed over by it. What is read does not hang on it. Inside
 * words only. */
#ifndef LANGUAGE_WORDS_SIEVE_H
#define LANGUAGE_WORDS_SIEVE_H

#include "base/arena.h"
#include "language/words/index.h"

struct sieves;
struct sieves *sieves_new(struct arena *arena);
/* Whether a word of the list may begin with these two letters (NUL: it has no second one): false is
 * certain. The list is a static one: another at its place would be taken for it. Rows of `stride`
 * bytes begin with their words; NULL words end the list. `sieves` may be NULL. */
bool sieves_let(struct sieves *sieves, const void *list, size_t stride, char first, char second);

#endif
