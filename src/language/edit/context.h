/* SPDX-License-Identifier: MIT */
/* context: where in a book a place is: which lines above decide what may stand there, what the line
 * holds before it, and which names are known. Between the files of this room. */
#ifndef LANGUAGE_EDIT_CONTEXT_H
#define LANGUAGE_EDIT_CONTEXT_H

#include "language/edit/edit.h"
#include "language/words/reader.h"

struct context {
    const struct edit_text *text;
    const struct book *book;
    struct str before;        /* the source up to the place asked about */
    uint32_t at;              /* its length */
    uint32_t line_begin;      /* of the line there, with what it goes on from */
    struct line line;         /* its tokens, up to `at` */
    struct str above;         /* the lines that decide, each with its line end */
    enum block_kind top;      /* BLOCK_FILE: none open */
    struct str action;        /* in a `run` line: the action it names */
    const struct block *play; /* the play or drill `at` is in, as read; NULL: none */
    bool silent;              /* in a comment, or in no text at all: nothing can stand there */
};
void context_find(const struct edit_text *text, uint32_t at, struct context *out);

#endif
