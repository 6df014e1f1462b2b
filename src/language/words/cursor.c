/* SPDX-License-Identifier: MIT */
/* cursor: see cursor.h. Here: looking at tokens and taking words over their borders, so that
 * five-out, five out and fiveout are one thing. */
#include "language/words/cursor.h"

#include <string.h>

#include "language/words/vocabulary.h"

static bool is_hyphen(const struct token *token)
{
    return token_is_mark(token, '-');
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
    from = past_fillers(from, c->end);
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

/* The letters of a token that may be part of a vocabulary word; empty when it cannot. A number is
 * what was written: four, 3. */
static struct str word_letters(const struct token *token)
{
    if (token->first == '\0') {
        return (struct str){NULL, 0};
    }
    struct str text = token->text;
    bool towards = text.size == 7 && memcmp(text.at, "towards", 7) == 0;
    return towards ? (struct str){text.at, 6} : text;
}

/* The articles of a table's words are as good as not there. */
static size_t article_size(struct str word)
{
    static const char *const articles[] = {"the ", "a ", "an "};
    for (size_t i = 0; i < 3 && (word.at[0] == 't' || word.at[0] == 'a'); i++) {
        if (str_starts(word, articles[i])) {
            return strlen(articles[i]);
        }
    }
    return 0;
}

/* Past blanks, hyphens and articles, which stand between the letters of a table's words. */
static struct str skip_gap_slowly(struct str words, bool begins)
{
    for (;;) {
        size_t skip = words.size > 0 && (words.at[0] == ' ' || words.at[0] == '-') ? 1 : 0;
        skip = skip == 0 && begins && words.size > 0 ? article_size(words) : skip;
        if (skip == 0) {
            return words;
        }
        words = (struct str){words.at + skip, words.size - skip};
        begins = true;
    }
}

static inline struct str skip_gap(struct str words, bool begins)
{
    char next = words.size > 0 ? words.at[0] : 'x';
    bool letter = next != ' ' && next != '-' && (!begins || (next != 't' && next != 'a'));
    return letter ? words : skip_gap_slowly(words, begins);
}

/* `text` follows in `words`, hyphens aside: gives what is left of them. */
static bool letters_follow(struct str *words, struct str text)
{
    struct str left = *words;
    bool any = false;
    for (size_t i = 0; i < text.size; i++) {
        if (left.size == 0 || left.at[0] != text.at[i]) {
            if (text.at[i] == '-') {
                continue;
            }
            left = skip_gap(left, false);
            if (left.size == 0 || left.at[0] != text.at[i]) {
                return false;
            }
        }
        left.at++;
        left.size--;
        any = true;
    }
    *words = skip_gap(left, false);
    return any;
}

/* The token behind `words` at `at`, or NULL. */
static const struct token *words_end(const struct cursor *c, const struct token *at,
                                     struct str words)
{
    at = past_fillers(at, c->end);
    struct str left = skip_gap(words, true);
    if (left.size == 0) {
        return NULL;
    }
    while (left.size > 0) {
        if (at >= c->end || !letters_follow(&left, word_letters(at))) {
            return NULL;
        }
        at++;
        const struct token *next = at;
        while (left.size > 0 && next < c->end && (is_hyphen(next) || next->filler)) {
            next++;
        }
        at = next;
    }
    return at;
}

const struct token *words_behind(const struct cursor *c, struct str words)
{
    return words_end(c, c->at, words);
}

bool take_str(struct cursor *c, struct str words)
{
    const struct token *end = words_end(c, c->at, words);
    if (!end) {
        return false;
    }
    cursor_take(c, c->at, end);
    return true;
}

bool word_is(const struct cursor *c, size_t ahead, const char *word)
{
    const struct token *at = past_fillers(c->at, c->end);
    for (; ahead > 0 && at < c->end; ahead--) {
        at = past_fillers(at + 1, c->end);
        while (at < c->end && is_hyphen(at)) {
            at++;
        }
    }
    struct opening opening = at < c->end ? token_opening(at) : (struct opening){'\0', '\0'};
    return may_open(opening, word) && words_end(c, at, str_of(word)) != NULL;
}

bool take_mark(struct cursor *c, char mark)
{
    if (!mark_is(c, mark)) {
        return false;
    }
    cursor_take(c, c->at, cursor_next(c) + 1);
    return true;
}

/* A list as short as this is as soon gone through, and may stand in the call that asks. */
static bool is_short(const char *const *words)
{
    return !words[0] || !words[1] || !words[2] || !words[3];
}

static bool may_hold(const struct cursor *c, const char *const *words, struct opening opening)
{
    return opening.first != '\0' && (is_short(words) || sieves_let(c->sieves, words, sizeof *words,
                                                                   opening.first, opening.second));
}

bool word_among(const struct cursor *c, const char *const *words)
{
    struct opening opening = cursor_opening(c);
    if (!may_hold(c, words, opening)) {
        return false;
    }
    while (*words && !(may_open(opening, *words) && word_is(c, 0, *words))) {
        words++;
    }
    return *words != NULL;
}

bool take_among(struct cursor *c, const char *const *words)
{
    struct opening opening = cursor_opening(c);
    if (!may_hold(c, words, opening)) {
        return false;
    }
    const struct token *longest = NULL;
    for (; *words; words++) {
        const struct token *end =
            may_open(opening, *words) ? words_end(c, c->at, str_of(*words)) : NULL;
        longest = end && (!longest || end > longest) ? end : longest;
    }
    if (longest) {
        cursor_take(c, c->at, longest);
    }
    return longest != NULL;
}

const char *const particle_words[] = {
    "out",  "up",    "down",   "back",    "through",    "over",          "across",     "away",
    "thru", "ahead", "inside", "outside", "right back", "straight back", "right over", NULL};
const char *const place_words[] = {"to", "at", "in", "into", "on", "onto", "toward", NULL};
const char *const begin_words[] = {"out of", "from", NULL};
const char *const owner_words[] = {"his", "her", "their", NULL};
const char *const he_or_she[] = {"he", "she", NULL};
const char *const him_or_her[] = {"him", "her", NULL};
const char *const catch_runs[] = {
    "cuts",  "dives", "flashes", "slides", "lifts", "drifts", "sinks", "fades", "rolls", "pops",
    "comes", "steps", "runs",    "breaks", "moves", "shows",  "pulls", "races", NULL};

/* men.def five times: each list keeps the rows of some kinds. */
#define KEEP(word) word,
#define DROP(word)
#define MAN(word, is, guards) MAN_##is(word)
#define MAN_ONE KEEP
#define MAN_SORT DROP
#define MAN_SEVERAL DROP
#define MAN_HELPER DROP
const char *const man_words[] = {
#include "language/words/men.def"
    NULL};
#undef MAN_SORT
#undef MAN_HELPER
#define MAN_SORT KEEP
#define MAN_HELPER KEEP
const char *const sort_words[] = {
#include "language/words/men.def"
    NULL};
#undef MAN_SEVERAL
#undef MAN_HELPER
#define MAN_SEVERAL KEEP
#define MAN_HELPER DROP
const char *const people_words[] = {
#include "language/words/men.def"
    NULL};
#undef MAN
#define MAN(word, is, guards) GUARDS_##guards(word)
#define GUARDS_ALWAYS KEEP
#define GUARDS_LOOSE DROP
#define GUARDS_NOT DROP
const char *const defender_words[] = {
#include "language/words/men.def"
    NULL};
#undef GUARDS_LOOSE
#define GUARDS_LOOSE KEEP
const char *const guard_words[] = {
#include "language/words/men.def"
    NULL};

const char *const light_words[] = {
    "makes",    "make",    "sets",    "set",    "takes",    "take",     "gives",
    "give",     "throws",  "throw",   "fires",  "fire",     "delivers", "deliver",
    "executes", "execute", "puts up", "put up", "performs", "perform",  "does",
    "do",       "runs",    "run",     "whips",  "whip",     "zips",     "zip",
    "tosses",   "toss",    "slings",  "sling",  "slips in", NULL};

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
    cursor_take(c, next, next + 1);
    return true;
}
