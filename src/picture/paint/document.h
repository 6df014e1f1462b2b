/* SPDX-License-Identifier: MIT */
/* document: a PDF of one or many pages, whatever is on them. For paint and for sheets. */
#ifndef PICTURE_PAINT_DOCUMENT_H
#define PICTURE_PAINT_DOCUMENT_H

#include <cairo.h>

#include "picture/paint/sink.h"

struct document {
    struct sink sink;
    cairo_surface_t *surface;
    cairo_t *cr;
    const char *title, *date;
    /* NULL: not told; else text that document_text gave, set between init and open. */
    const char *author, *subject;
};

/* Takes memory: to be called before document_open. `date`: ISO 8601, or NULL. */
void document_init(struct document *document, struct arena *arena, struct str title,
                   const char *date);
/* From here to document_close no memory may be taken from an arena. */
void document_open(struct document *document, double width, double height);
/* A bookmark to the top of the page being drawn; returns its number. `parent` 0: on top. `title`
 * must be text that document_text gave. */
int document_bookmark(struct document *document, int parent, const char *title, size_t page);
/* What the page being drawn is called in a reader: "Cover", "12". */
void document_label(struct document *document, const char *label);
bool document_close(struct document *document); /* jumps if memory ran out; false: cairo failed */
/* Whole UTF-8 without control letters, as cairo wants it. */
const char *document_text(struct arena *arena, struct str text);

#endif
