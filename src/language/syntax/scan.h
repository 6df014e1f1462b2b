/* SPDX-License-Identifier: MIT */
/* scan: the tokens of one line of a source. Between the files of this room only. */
#ifndef LANGUAGE_SYNTAX_SCAN_H
#define LANGUAGE_SYNTAX_SCAN_H

#include "base/limits.h"
#include "language/syntax/chars.h"
#include "language/syntax/syntax.h"

struct scan {
    struct arena *arena;
    struct diags *diags;
    uint32_t source;
    const char *text; /* of the whole source: offsets are spans */
    const char *at, *end;
    struct token tokens[LIMIT_TOKENS];
    size_t count;
    bool plain;    /* the whole source: text_is_plain */
    bool full;     /* more tokens than a line may hold */
    bool unclosed; /* a quote that the line's end broke off */
};

/* Reads up to scan->end or to a comment, where `at` then stands. */
void scan_tokens(struct scan *scan);
struct span scan_span(const struct scan *scan, const char *from, const char *to);

/* Numbers and what hangs on them: each takes what it finds at `at`, or nothing. */
bool scan_number(struct scan *scan);
/* The token last added is a number or `a`: takes a unit behind it. */
void scan_unit(struct scan *scan, struct token *token);
/* `'s` with no letter behind it. */
bool scan_possessive(struct scan *scan);
static inline struct letter scan_peek(const struct scan *scan, const char *at)
{
    return at < scan->end ? letter_read(at, scan->end) : (struct letter){' ', ' ', 1, CHAR_FINE};
}
struct token *scan_add(struct scan *scan, enum token_kind kind, const char *from);

#endif
