/* SPDX-License-Identifier: MIT */
/* paint: which bytes of a source were read as what. Between the files of this room. */
#ifndef LANGUAGE_EDIT_PAINT_H
#define LANGUAGE_EDIT_PAINT_H

#include "language/edit/edit.h"

struct painted {
    unsigned char *class; /* one for each byte; EDIT_PLAIN: nothing was made of it */
    struct {
        struct span span;
        const char *name; /* "curls off" */
        enum edit_class class;
    } * names;
    size_t name_count, name_room;
    size_t size;
};
/* From the forms of a book, and from what was said against it. */
void paint_book(const struct edit_text *text, const struct book *book, const struct diags *diags,
                struct painted *out);

/* The words that say when and how, NULL at the end: tokens.c. */
extern const char *const when_words[], *const how_words[];

#endif
