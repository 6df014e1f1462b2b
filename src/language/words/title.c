/* SPDX-License-Identifier: MIT */
/* title: texts of the coach's own, in quotes or to the end of the line. */
#include <string.h>

#include "language/syntax/chars.h"
#include "language/words/reader.h"
#include "language/words/vocabulary.h"

static enum title_result refuse_title(struct reader *r, struct span span, const char *why)
{
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_TITLE, span, "%s", why);
    diag_help(r->diags, diag, "write the title in quotes: `\"Swing it\"`");
    return TITLE_REFUSED;
}

/* A word in an unquoted title that could open something else. */
static const struct token *ambiguous(const struct line *line, size_t from, const char *const *stops)
{
    for (size_t i = from; i < line->count; i++) {
        const struct token *token = &line->tokens[i];
        if (token->kind == TOKEN_QUOTED) {
            return token;
        }
        for (const char *const *stop = stops; stop && *stop; stop++) {
            if (token->kind == TOKEN_WORD && str_is(token->text, *stop)) {
                return token;
            }
        }
    }
    return NULL;
}

/* quote Lantern unquote: as a phone writes the marks down. */
static struct str without_said_quotes(struct str text)
{
    static const char *const opens[] = {"quote ", "open quote "};
    static const char *const closes[] = {" unquote", " end quote", " close quote"};
    for (size_t i = 0; i < sizeof opens / sizeof *opens; i++) {
        struct str open = str_of(opens[i]);
        for (size_t k = 0; k < sizeof closes / sizeof *closes; k++) {
            struct str close = str_of(closes[k]);
            if (text.size > open.size + close.size &&
                str_equal_fold((struct str){text.at, open.size}, open) &&
                str_equal_fold((struct str){text.at + text.size - close.size, close.size}, close)) {
                return (struct str){text.at + open.size, text.size - open.size - close.size};
            }
        }
    }
    return text;
}

/* Somebody acts or is acted on: a number before a word (2 goes), or behind by, to, through, for,
 * off. */
static bool plays_in_title(const struct line *line, size_t from, size_t i)
{
    static const char *const ahead[] = {"by", "to", "through", "for", "off"};
    const struct token *token = &line->tokens[i];
    if ((token->kind != TOKEN_NUMBER && token->kind != TOKEN_DEFENDER) || token->number < 1 ||
        token->number > 5) {
        return false;
    }
    if (i + 1 < line->count && line->tokens[i + 1].kind == TOKEN_WORD) {
        return true;
    }
    for (size_t k = 0; k < sizeof ahead / sizeof *ahead && i > from; k++) {
        const struct token *before = &line->tokens[i - 1];
        if (before->kind == TOKEN_WORD && str_is(before->text, ahead[k])) {
            return true;
        }
    }
    return false;
}

/* A title without quotes may have been meant to play: `option 2 goes baseline`. */
static void tell_taken(struct reader *r, const struct line *line, size_t from,
                       const struct title *title)
{
    for (size_t i = from; i < line->count; i++) {
        if (plays_in_title(line, from, i)) {
            struct diag *diag =
                diag_add(r->diags, DIAG_TEXT_TITLE_TAKEN, title->span,
                         "`%.*s` was taken as a title: nobody moves by it", STR_ARG(title->text));
            diag_help(r->diags, diag, "write it in quotes if it is one: `\"%.*s\"`",
                      STR_ARG(title->text));
            return;
        }
    }
}

enum title_result title_read(struct reader *r, const struct line *line, size_t *from,
                             const char *const *stops, struct title *out)
{
    *out = (struct title){.span = SPAN_NONE};
    if (*from < line->count && line->tokens[*from].kind == TOKEN_MARK &&
        line->tokens[*from].mark == '-') {
        (*from)++; /* step - Swing it */
    }
    if (*from >= line->count) {
        return TITLE_NONE;
    }
    const struct token *first = &line->tokens[*from];
    if (first->kind == TOKEN_QUOTED) {
        *out = (struct title){first->text, first->span, true};
        (*from)++;
        return text_is_blank(out->text) ? refuse_title(r, out->span, "this title is empty")
                                        : TITLE_FINE;
    }
    const struct token *word = ambiguous(line, *from, stops);
    if (word) {
        *from = line->count;
        return refuse_title(r, word->span,
                            word->kind == TOKEN_QUOTED
                                ? "a quotation mark in a title without quotes"
                                : "this word in a title could mean something else");
    }
    out->span = span_join(first->span, line->tokens[line->count - 1].span);
    out->text = source_text(r->shelf->sources, out->span);
    size_t begin = *from;
    *from = line->count;
    if (memchr(out->text.at, '\n', out->text.size) || memchr(out->text.at, '\r', out->text.size)) {
        return refuse_title(r, out->span, "a title cannot go on in the next line");
    }
    out->text = text_clean(r->arena, without_said_quotes(out->text), false);
    tell_taken(r, line, begin, out);
    return TITLE_FINE;
}

bool quoted_read(struct cursor *c, struct str *text, struct span *span)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_QUOTED) {
        return false;
    }
    *text = next->text;
    *span = next->span;
    cursor_take(c, next, next + 1);
    return true;
}

bool integer_read(struct cursor *c, int *number, struct span *span)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_NUMBER || !next->integer || next->possessive) {
        return false;
    }
    *number = (int)next->number;
    *span = next->span;
    cursor_take(c, next, next + 1);
    return true;
}
