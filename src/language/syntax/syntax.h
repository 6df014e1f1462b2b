/* SPDX-License-Identifier: MIT */
/* syntax: a source as lines of tokens. Knows characters, numbers, units and quotes; no vocabulary
 * beyond the words that open a line. */
#ifndef LANGUAGE_SYNTAX_SYNTAX_H
#define LANGUAGE_SYNTAX_SYNTAX_H

#include "base/diag.h"
#include "base/source.h"
#include "base/vec.h"

enum unit {
    UNIT_NONE,
    UNIT_FEET,
    UNIT_METRES,
    UNIT_STEPS,
    UNIT_SECONDS,
    UNIT_MINUTES,
    UNIT_DEGREES,
    UNIT_PERCENT
};

/* Nothing on a floor is larger, and what is written larger is read as this: whoever takes a number
 * may turn it into an int. */
#define NUMBER_TOP 1e6

/* Every token's `text` is what stands there in lower case ("four", "x3", "6 ft"), but for quoted
 * ones. A hyphen between letters or digits is dropped: five-out is the words `five` `out`. */
enum token_kind {
    TOKEN_WORD,     /* articles kept */
    TOKEN_NUMBER,   /* number; a player in a sentence. `one`..`twelve` too: text tells them apart */
    TOKEN_MEASURE,  /* number and unit: 6 ft, 6', two steps, a foot */
    TOKEN_QUOTED,   /* text: without quotes, \" and \\ undone */
    TOKEN_DEFENDER, /* number: x3, x 3 */
    TOKEN_GROUP,    /* text: 2-3, 1-3-1 */
    TOKEN_DATE,     /* text: 2026-12-01 */
    TOKEN_CLOCK,    /* number: minutes after midnight */
    TOKEN_CHECK_ID, /* text: space.close */
    TOKEN_MARK      /* mark: , ; . ( ) and - before a digit inside ( ); others have no meaning */
};
struct token {
    enum token_kind kind;
    struct span span;
    struct str text;
    double number;
    unsigned char unit; /* enum unit: UNIT_NONE but for measures */
    char first;         /* of the letters a word of the language is known by: of WORD and NUMBER
                           without 's; else NUL */
    bool filler;        /* says nothing: the, a, an, just, simply, please */
    bool integer;       /* TOKEN_NUMBER without a point */
    bool possessive;    /* 's is in the span, not in the text: 3's, x3's, passer's */
    bool stopped; /* a measure with a full stop behind its unit, which closes nothing: 6 ft. */
    char mark;
};
static inline bool token_is_mark(const struct token *token, char mark)
{
    return token->kind == TOKEN_MARK && token->mark == mark;
}
/* A number in a word: two. */
static inline bool token_is_spelled(const struct token *token)
{
    return token->kind == TOKEN_NUMBER && token->text.size > 0 && token->text.at[0] > '9';
}
/* This word, and nobody's own. */
static inline bool token_is_word(const struct token *token, const char *word)
{
    return token->kind == TOKEN_WORD && !token->possessive && str_is(token->text, word);
}
bool token_is_among(const struct token *token, const char *const *words); /* NULL ends them */
/* As somebody types them: a space between two, none in front of a mark. In the arena. */
struct str tokens_typed(struct arena *arena, const struct token *from, const struct token *to);
/* Where `like` stands, as if this were written there. `mark`: a comma or a full stop. */
struct token token_word(const struct token *like, const char *text);
struct token token_mark(const struct token *like, char mark);
struct token token_number(struct arena *arena, const struct token *like, int number);
struct line {
    struct span span;     /* from its first token to its last, continued lines included */
    struct token *tokens; /* comment and line end are gone */
    size_t count;
    struct str comment; /* with its #, without trailing blanks; empty: none */
    struct span comment_span;
    unsigned indent; /* columns before the first token, a tab to the next of 8 */
    bool broken;     /* an error was reported: tokens are what could be read */
};
struct lines {
    VEC(struct line) all; /* one a line of the source; blank lines have no tokens and no comment */
};

/* One line each as they stand in the source. A line that was broken off in a quote, holds a broken
 * byte or is too long has `broken` set; its span is then its whole text. A source that is no text
 * at all is one error and no lines. */
void lines_read(struct arena *arena, const struct sources *sources, uint32_t source,
                struct diags *diags, struct lines *lines);

/* Whether the line ends in a comma and so goes on in the next. */
bool line_goes_on(const struct line *line);
/* One line of `first` and what goes on in `second`; the comment is the second's. */
struct line line_join(struct arena *arena, const struct line *first, const struct line *second);
/* The tokens [from, to) as a line of their own, with no comment. */
struct line line_part(const struct line *line, size_t from, size_t to);
/* Reports a mark that means nothing outside a title: a hyphen with a space beside it, a colon. Once
 * a line; true when there is none. */
bool line_marks_ok(const struct line *line, const struct sources *sources, struct diags *diags);

#endif
