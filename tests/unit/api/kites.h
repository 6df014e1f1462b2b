/* SPDX-License-Identifier: MIT */
/* kites: a book that the suites of the api ask, as a checked fixture (open_book, close_book), and
 * what a call of theirs writes, kept. */
#ifndef TESTS_UNIT_API_KITES_H
#define TESTS_UNIT_API_KITES_H

#include "courtwright/courtwright.h"

struct kept {
    char at[1 << 20];
    size_t size, most; /* a write that comes to `most` is refused */
};
extern struct kept kept;
extern const struct courtwright_writer writer; /* into it */
void start_over(void);

/* A sound play, a broken one, and one that mirrors it. */
extern const char kites[];
extern struct courtwright *book;
void open_book(void);
void close_book(void);

struct courtwright *load(const char *name, const char *text); /* the caller's */
char *copy(const char *text);                                 /* the caller's, of malloc */

#endif
