/* SPDX-License-Identifier: MIT */
/* tidy: prints a book in its one written form. Comments and blank lines stay where they were (runs
 * of blank lines become one). Lines that could not be read are printed as they stand. Printing what
 * was printed gives the same bytes. Included files are not printed: their line is. */
#ifndef LANGUAGE_TIDY_TIDY_H
#define LANGUAGE_TIDY_TIDY_H

#include "language/words/words.h"

struct str tidy_book(struct arena *arena, const struct sources *sources, const struct book *book);

/* The same in the newest version of the language, which its first line then names. Version 1 is the
 * only one so far: nothing else changes. An empty text stays empty. Only of a book that can be. */
struct str tidy_upgrade(struct arena *arena, const struct sources *sources,
                        const struct book *book);
/* False when its version line could not be read, or names one that is not known. */
bool tidy_can_upgrade(const struct book *book);

/* The tidy form of single things, for messages, hover texts and captions. */
void tidy_sentence(struct strbuf *out, const struct sentence *sentence);
void tidy_place(struct strbuf *out, const struct place *place);
void tidy_who(struct strbuf *out, const struct who *who);
void tidy_event(struct strbuf *out, const struct event *event);
void tidy_condition(struct strbuf *out, const struct condition *condition);
/* With its comma and a space behind; nothing for no tie. */
void tidy_tie(struct strbuf *out, const struct tie *tie);

#endif
