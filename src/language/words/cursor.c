/* SPDX-License-Identifier: MIT */
/* cursor: see cursor.h. Here: looking at tokens and taking words over their borders, so that
 * five-out, five out and fiveout are one thing. */
#include "language/words/cursor.h"

#include <string.h>

#include "language/words/vocabulary.h"

static bool is_filler(const struct token *token)
{
    static const char *const fillers[] = {"the", "a", "an", "just", "simply", "please", NULL};
    if (token->kind != TOKEN_WORD || token->possessive) {
        return false;
    }
    for (const char *const *filler = fillers; *filler; filler++) {
        if (str_is(token->text, *filler)) {
            return true;
        }
    }
    return false;
}

static bool is_hyphen(const struct token *token)
{
    return token->kind == TOKEN_MARK && token->mark == '-';
}

static const struct token *skip_fillers(const struct token *at, const struct token *end)
{
    while (at < end && is_filler(at)) {
        at++;
    }
    return at;
}

const struct token *cursor_next(const struct cursor *c)
{
    const struct token *at = skip_fillers(c->at, c->end);
    return at < c->end ? at : NULL;
}

bool cursor_done(const struct cursor *c)
{
    return !cursor_next(c);
}

struct span cursor_span(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    return next ? next->span : span_end(c->line_span);
}

struct str cursor_text(const struct cursor *c, struct span span)
{
    return source_text(c->sources, span);
}

struct span cursor_taken(const struct cursor *c, const struct token *from)
{
    from = skip_fillers(from, c->end);
    if (from >= c->at) {
        return from < c->end ? from->span : span_end(c->line_span);
    }
    return span_join(from->span, c->at[-1].span);
}

struct cursor_mark cursor_mark(const struct cursor *c)
{
    return (struct cursor_mark){.at = c->at,
                                .refusals = c->refusals,
                                .full = c->diags->full,
                                .diags = c->diags->all.count,
                                .errors = c->diags->errors,
                                .warnings = c->diags->warnings};
}

void cursor_back(struct cursor *c, struct cursor_mark mark)
{
    c->at = mark.at;
    c->refusals = mark.refusals;
    c->diags->full = mark.full;
    c->diags->all.count = mark.diags;
    c->diags->errors = mark.errors;
    c->diags->warnings = mark.warnings;
}

/* The letters of a token that may be part of a vocabulary word; empty when it cannot. A number that
 * was written as a word gives that word. */
static struct str word_letters(const struct cursor *c, const struct token *token)
{
    if (token->possessive) {
        return (struct str){NULL, 0};
    }
    if (token->kind == TOKEN_WORD) {
        return str_is(token->text, "towards") ? STR("toward") : token->text;
    }
    if (token->kind == TOKEN_NUMBER) {
        struct str word = number_as_word(cursor_text(c, token->span));
        return word.size > 0 ? word : token->text; /* shoots a 3 */
    }
    return (struct str){NULL, 0};
}

/* `text` follows in `pattern`, hyphens aside: gives what is left of the pattern. */
static bool letters_follow(struct str *pattern, struct str text)
{
    struct str left = *pattern;
    bool any = false;
    for (size_t i = 0; i < text.size; i++) {
        if (text.at[i] == '-') {
            continue;
        }
        if (left.size == 0 || left.at[0] != text.at[i]) {
            return false;
        }
        left.at++;
        left.size--;
        any = true;
    }
    *pattern = left;
    return any;
}

/* A look at the first letters only: most entries of a table fail here. */
static bool may_begin(const struct cursor *c, const struct token *at, struct str words)
{
    struct str have = word_letters(c, at);
    bool article = str_starts(words, "the ") || str_starts(words, "a ");
    return have.size > 0 && words.size > 0 && (article || have.at[0] == words.at[0]);
}

/* The token behind `words` at `at`, or NULL. */
static const struct token *words_end(const struct cursor *c, const struct token *at,
                                     struct str words)
{
    char letters[WORDS_MOST];
    at = skip_fillers(at, c->end);
    if (at >= c->end || !may_begin(c, at, words)) {
        return NULL;
    }
    struct str left = words_squeeze(words, letters);
    if (left.size == 0) {
        return NULL;
    }
    while (left.size > 0) {
        if (at >= c->end || !letters_follow(&left, word_letters(c, at))) {
            return NULL;
        }
        at++;
        const struct token *next = at;
        while (left.size > 0 && next < c->end && (is_hyphen(next) || is_filler(next))) {
            next++;
        }
        at = next;
    }
    return at;
}

bool take_str(struct cursor *c, struct str words)
{
    const struct token *end = words_end(c, c->at, words);
    if (!end) {
        return false;
    }
    c->at = end;
    return true;
}

bool take_words(struct cursor *c, const char *words)
{
    return take_str(c, str_of(words));
}

bool word_is(const struct cursor *c, size_t ahead, const char *word)
{
    const struct token *at = skip_fillers(c->at, c->end);
    for (; ahead > 0 && at < c->end; ahead--) {
        at = skip_fillers(at + 1, c->end);
        while (at < c->end && is_hyphen(at)) {
            at++;
        }
    }
    return words_end(c, at, str_of(word)) != NULL;
}

bool mark_is(const struct cursor *c, char mark)
{
    const struct token *next = cursor_next(c);
    return next && next->kind == TOKEN_MARK && next->mark == mark;
}

bool take_mark(struct cursor *c, char mark)
{
    if (!mark_is(c, mark)) {
        return false;
    }
    c->at = cursor_next(c) + 1;
    return true;
}

bool word_among(const struct cursor *c, const char *const *words)
{
    while (*words && !word_is(c, 0, *words)) {
        words++;
    }
    return *words != NULL;
}

bool take_among(struct cursor *c, const char *const *words)
{
    while (*words && !take_words(c, *words)) {
        words++;
    }
    return *words != NULL;
}

const char *const particle_words[] = {"out",    "up",   "down",  "back",   "through", "over",
                                      "across", "away", "ahead", "inside", "outside", NULL};
const char *const place_words[] = {"to", "at", "in", "into", "on", "onto", "toward", NULL};
const char *const light_words[] = {"makes",   "make",    "sets",     "set",     "takes",
                                   "take",    "gives",   "give",     "throws",  "throw",
                                   "fires",   "fire",    "delivers", "deliver", "executes",
                                   "execute", "puts up", "put up",   NULL};

bool take_measure(struct cursor *c, bool is_time, struct measure *out)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_MEASURE) {
        return false;
    }
    bool length = next->unit == UNIT_FEET || next->unit == UNIT_METRES || next->unit == UNIT_STEPS;
    bool fits = is_time ? next->unit == UNIT_SECONDS : length;
    if (!fits) {
        return false;
    }
    *out = (struct measure){.value = next->number, .unit = next->unit};
    c->at = next + 1;
    return true;
}
