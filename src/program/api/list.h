/* SPDX-License-Identifier: MIT */
/* list: the tables of the language, row by row, to a callback: for `list`, `explain` and pages. */
#ifndef PROGRAM_API_LIST_H
#define PROGRAM_API_LIST_H

#include "program/api/handle.h"

struct lister {
    struct arena *arena;
    enum courtwright_list list;
    courtwright_each each;
    void *ctx;
    const char *word; /* only rows that go by it; NULL: all */
    bool stopped;
    size_t given;
};

/* Gives one row, unless it is not the one asked for: `list` is filled in and NULL texts become
 * empty. `other` names (NULL-ended, may be NULL) are what the row goes by too. */
void list_row(struct lister *lister, const struct courtwright_entry *entry);
void list_row_named(struct lister *lister, const struct courtwright_entry *entry,
                    const char *const *other);

/* tables.c */
void list_table(struct lister *lister);

#endif
