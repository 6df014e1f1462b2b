/* SPDX-License-Identifier: MIT */
/* kept: a book to ask things of, and what comes out kept for a look. */
#ifndef KEPT_H
#define KEPT_H

#include "courtwright/courtwright.h"

struct kept {
    char at[1 << 20];
    size_t size, most;
};
extern struct kept kept;
extern const struct courtwright_writer writer; /* to `kept` */
void start_over(void);

/* Open in every test: of `kites`, one play that is whole, one with an error, one that leans on it.
 */
extern const char kites[];
extern struct courtwright *book;
void open_book(void);
void close_book(void);

struct courtwright *load(const char *name, const char *text); /* another one */
char *copy(const char *text);                                 /* to be freed */

#endif
