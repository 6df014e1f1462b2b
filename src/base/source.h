/* SPDX-License-Identifier: MIT */
/* source: the texts of one compilation, spans in them, and how to find line and column again. */
#ifndef BASE_SOURCE_H
#define BASE_SOURCE_H

#include <stdint.h>

#include "base/arena.h"
#include "base/str.h"
#include "base/vec.h"

/* Half open, in bytes of one source. A span of no place has source == SOURCE_NONE. */
struct span {
    uint32_t source, begin, end;
};
#define SOURCE_NONE UINT32_MAX
#define SPAN_NONE ((struct span){SOURCE_NONE, 0, 0})

struct source {
    struct str name; /* as the user named it, shown in messages */
    struct str text; /* as given, may hold a byte-order mark */
    VEC(uint32_t) line_starts;
};

struct sources {
    struct arena *arena;
    VEC(struct source) all;
};

struct place_in_source { /* both from 1; column counts code points, a tab as one */
    uint32_t line, column;
};

void sources_init(struct sources *sources, struct arena *arena);
/* Takes the name and text by reference: they must outlive the sources. Returns its number. */
uint32_t sources_add(struct sources *sources, struct str name, struct str text);
struct place_in_source source_place(const struct source *source, uint32_t offset);
struct str source_line(const struct source *source, uint32_t line); /* without its line end */
struct str source_text(const struct sources *sources, struct span span);
struct span span_join(struct span a,
                      struct span b);   /* from the first's begin to the second's end */
struct span span_end(struct span span); /* the empty span behind it */

/* Fetches an include for the reader of books. `from` is the including file's name, `path` what the
 * coach wrote. On success fills name (to show, and to tell a circle by) and text, both living as
 * long as the arena. */
enum load_result { LOAD_OK, LOAD_MISSING, LOAD_UNREADABLE, LOAD_OUTSIDE, LOAD_TOO_LARGE };
struct loader {
    enum load_result (*load)(void *ctx, struct arena *arena, struct str from, struct str path,
                             struct str *name, struct str *text);
    void *ctx;
};

#endif
