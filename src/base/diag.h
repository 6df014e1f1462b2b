/* SPDX-License-Identifier: MIT */
/* diag: what is said about the coach's text. Every complaint has a row (stable id, severity, an
 * explanation), a span, a message and mostly a help. Work goes on after one. */
#ifndef BASE_DIAG_H
#define BASE_DIAG_H

#include "base/source.h"

/* For tables: the page's module, which is to be small, is never asked to explain, nor where a
 * number comes from. */
#ifdef UNEXPLAINED
#define EXPLAINED(text) ""
#else
#define EXPLAINED(text) text
#endif

enum severity { SEVERITY_NOTE, SEVERITY_WARNING, SEVERITY_ERROR };

struct diag_row {
    const char *id; /* "text.unknown-word": never changes once released */
    enum severity severity;
    const char *explain; /* why, in a coach's words; what to write instead, with an example */
};

/* The rows, one .def per room: DIAG(SYMBOL, "id", SEVERITY, "explanation"). */
enum diag_code {
#define DIAG(symbol, id, severity, explain) DIAG_##symbol,
#include "base/diags.def"
#undef DIAG
    DIAG_COUNT
};
extern const struct diag_row diag_rows[DIAG_COUNT];

/* For `explain`, in the play language: what raises a row, and what to write instead. NULL: none. */
struct diag_example {
    const char *bad, *good;
};
struct diag_example diag_example(enum diag_code code);

struct diag {
    const struct diag_row *row;
    enum severity severity;
    struct span span;
    struct span other;        /* a second place the message speaks of, or SPAN_NONE */
    struct str message, help; /* help may be empty */
};

struct diags {
    struct arena *arena;
    VEC(struct diag) all;
    size_t errors, warnings;
    bool full; /* LIMIT_DIAGS reached: the rest is only counted */
};

void diags_init(struct diags *diags, struct arena *arena);
/* Adds one; the same row at the same span with the same message is kept once (and, behind
 * LIMIT_DIAGS, counted each time). Returns the entry to
 * set `other` on, or NULL when it was dropped. */
struct diag *diag_add(struct diags *diags, enum diag_code code, struct span span,
                      const char *format, ...) __attribute__((format(printf, 4, 5)));
/* The same as one that another list heard; NULL as above. */
struct diag *diag_again(struct diags *diags, const struct diag *diag);
/* The help of the entry last added by diag_add; no effect on NULL. */
void diag_help(struct diags *diags, struct diag *diag, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* By source, then place, then severity: errors first. Stable. */
void diags_sort(struct diags *diags);

#endif
