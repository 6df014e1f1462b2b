/* SPDX-License-Identifier: MIT */
/* reshape: a refused line, put another way in one place and read again: see reshape.h. */
#include "language/words/reshape.h"

#include "language/words/loose_read.h"

/* A long line costs more at each try; one that runs on and on is read by its parts. */
enum { DEEPEST = 2, TRIES_MOST = 20, TRIES_LONG = 6, LONG = 32, LONGEST = 44 };

/* ---- what the rules share ---- */

const char *const turning_words[] = {"not",    "if",     "when",    "unless",  "until",  "or",
                                     "once",   "after",  "instead", "never",   "before", "while",
                                     "as",     "except", "else",    "doesn't", "don't",  "won't",
                                     "option", "read",   "catch",   "isn't",   NULL};

bool none_among(const struct token *from, const struct token *to, const char *const *words)
{
    while (from < to && !token_is_among(from, words)) {
        from++;
    }
    return from >= to;
}

bool deed_at(const struct cursor *c, const struct token *at)
{
    return verb_at(c, at) || ends_in_s(at);
}

const struct token *mark_ahead(const struct cursor *c, const struct token *from, ptrdiff_t far)
{
    const struct token *end = from;
    while (end < c->end && end - from < far && end->kind != TOKEN_MARK) {
        end++;
    }
    return end;
}

bool sentence_begins_at(const struct cursor *c, const struct token *at)
{
    while (at > c->at && at[-1].filler) {
        at--;
    }
    return at == c->at || sentence_ends(at - 1) || token_is_mark(at - 1, ':');
}

int acts_in_clause(const struct cursor *c, const struct token *at, const struct token **clause)
{
    struct somebody who;
    bool own;
    *clause = clause_begin(c, at);
    bool read = clause_subject(c, *clause, &who, &own);
    return read ? who.who.number : 0;
}

/* ---- reading ---- */

typedef bool shape_rule(const struct cursor *c, const struct token *at, struct recast *r);
struct shape {
    shape_rule *rule;
    bool apart;
};
static const struct shape shapes[] = {
#define SHAPE(rule) {rule, false},
#define SHAPE_APART(rule) {rule, true},
#include "language/words/reshape.def"
#undef SHAPE
#undef SHAPE_APART
};

/* One of those read from behind `at` is told before it already: the same one does the same. */
static bool told_twice(const sentence_list *out, size_t from, const struct token *at)
{
    for (size_t i = from; i < out->count; i++) {
        for (size_t j = from; j < out->count; j++) {
            const struct sentence *one = &out->at[i], *two = &out->at[j];
            if (one->verb_span.begin < at->span.begin && two->verb_span.begin > at->span.begin &&
                one->subject.count > 0 && two->subject.count > 0 &&
                same_who(&one->subject.at[0], &two->subject.at[0]) &&
                verb_row(one->verb)->task == verb_row(two->verb)->task) {
                return true;
            }
        }
    }
    return false;
}

static void tell_shape(struct cursor *c, const struct recast *r)
{
    if (r->told.source != SOURCE_NONE) {
        note_left_out(c, r->told);
    }
    if (r->as.size > 0) {
        struct span whole = span_join(c->at->span, c->end[-1].span);
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_READ_AS, whole, "read as `%.*s`", STR_ARG(r->as));
        diag_help(c->diags, diag, "if something else is meant, write it so: who, what, where");
    }
}

static bool shape_is_read(struct cursor *c, const struct shape *shape, const struct token *at,
                          const struct recast *r, sentence_list *out)
{
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    struct cursor line = recast_afresh(c, r);
    line.shaped = c->shaped + 1;
    line.jotted = false;
    bool read = !line_turns(&line) && sentences_read(&line, out) &&
                line.refusals == mark.refusals && out->count > had &&
                !(shape->apart && told_twice(out, had, at));
    if (!read) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    tell_shape(c, r);
    c->at = c->end;
    return true;
}

/* The rules at each token, as long as there are tries left. */
static bool shapes_tried(struct cursor *c, sentence_list *out)
{
    for (size_t i = 0; i < sizeof shapes / sizeof *shapes; i++) {
        for (const struct token *at = c->at; at < c->end; at++) {
            struct recast r = {.told = SPAN_NONE};
            struct cursor look = line_look(c, c->at);
            struct cursor_mark mark = cursor_mark(&look);
            bool fits = *c->tries > 0 && shapes[i].rule(&look, at, &r) && r.tokens.count > 1;
            cursor_back(&look, mark);
            *c->tries -= fits;
            if (fits && shape_is_read(c, &shapes[i], at, &r, out)) {
                return true;
            }
        }
    }
    return false;
}

bool reshape_read(struct cursor *c, sentence_list *out)
{
    int tries = c->end - c->at > LONG ? TRIES_LONG : TRIES_MOST;
    if (c->shaped == DEEPEST || c->spared > 0 || c->lean || c->end - c->at > LONGEST) {
        return false;
    }
    int *outer = c->tries;
    c->tries = outer ? outer : &tries;
    bool read = shapes_tried(c, out);
    c->tries = outer;
    return read;
}
