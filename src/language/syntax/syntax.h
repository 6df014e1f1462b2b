/* SPDX-License-Identifier: MIT */
/* syntax: a source as lines of tokens. Knows characters, numbers, units and quotes; no vocabulary
 * beyond the words that open a line. */
#ifndef LANGUAGE_SYNTAX_SYNTAX_H
#define LANGUAGE_SYNTAX_SYNTAX_H

#include "base/diag.h"
#include "base/source.h"
#include "base/vec.h"

enum unit { UNIT_NONE, UNIT_FEET, UNIT_METRES, UNIT_STEPS, UNIT_SECONDS, UNIT_MINUTES, UNIT_DEGREES, UNIT_PERCENT };

enum token_kind {
    TOKEN_WORD,     /* text: lower case, articles kept */
    TOKEN_NUMBER,   /* number; a player in a sentence */
    TOKEN_MEASURE,  /* number and unit */
    TOKEN_QUOTED,   /* text: without quotes, \" and \\ undone */
    TOKEN_DEFENDER, /* number: x3 */
    TOKEN_GROUP,    /* text: 2-3, 1-3-1 */
    TOKEN_DATE,     /* text: 2026-12-01 */
    TOKEN_CLOCK,    /* number: minutes after midnight */
    TOKEN_CHECK_ID, /* text: space.close */
    TOKEN_MARK      /* mark: , ; . ( ) - */
};
struct token {
    enum token_kind kind;
    struct span span;
    struct str text;
    double number;
    bool integer;    /* TOKEN_NUMBER without a point */
    bool possessive; /* 's follows: 3's, passer's */
    enum unit unit;  /* UNIT_NONE but for measures */
    char mark;
};
struct line {
    struct span span;       /* from its first token to its last, continued lines included */
    struct token *tokens;   /* comment and line end are gone */
    size_t count;
    struct str comment;     /* with its #, without trailing blanks; empty: none */
    struct span comment_span;
    unsigned indent;        /* columns before the first token, a tab to the next of 8 */
    bool broken;            /* an error was reported: tokens are what could be read */
};
struct lines {
    VEC(struct line) all;   /* blank lines have no tokens and no comment */
};

void lines_read(struct arena *arena, const struct sources *sources, uint32_t source,
                struct diags *diags, struct lines *lines);

#endif
