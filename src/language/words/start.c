/* SPDX-License-Identifier: MIT */
/* start: who stands where as the play begins: a formation, players, cones, lines. */
#include "language/words/reader.h"

static bool refuse(struct cursor *c, const char *expected)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag;
    c->refusals++;
    if (text.size == 0) {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "the start breaks off here");
    } else {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "`%.*s` does not fit into the start",
                        STR_ARG(text));
    }
    diag_help(c->diags, diag, "%s", expected);
    return false;
}

/* Up to the comma, as one text without articles. */
static bool formation_read(struct cursor *c, struct placing *out)
{
    struct strbuf words;
    strbuf_init(&words, c->arena);
    const struct token *at = c->at;
    for (; at < c->end && at->kind != TOKEN_MARK; at++) {
        bool article = str_is(at->text, "the") || str_is(at->text, "a");
        bool letters =
            at->kind == TOKEN_WORD || at->kind == TOKEN_NUMBER || at->kind == TOKEN_GROUP;
        if (!letters || at->possessive) {
            return false;
        }
        strbuf_add(&words, article ? (struct str){0} : at->text);
        strbuf_text(&words, " ");
    }
    words.size -= words.size > 0;
    if (!formation_find(strbuf_str(&words), &out->formation)) {
        return false;
    }
    out->kind = PLACING_FORMATION;
    c->at = at;
    return true;
}

static bool where_read(struct cursor *c, struct placing *out)
{
    take_words(c, "at");
    size_t refusals = c->refusals;
    out->place = place_read(c, 0);
    if (!out->place && refusals == c->refusals) {
        return refuse(c,
                      "a place for each: start 1 top, 2 right wing, 5 at 6 ft above left corner");
    }
    return out->place != NULL;
}

static bool line_read(struct cursor *c, struct placing *out)
{
    out->kind = PLACING_LINE;
    return (who_read(c, &out->who) && out->who.kind == WHO_PLAYER) ||
           refuse(c, "line behind a player: line behind 1");
}

static bool drill_only(struct cursor *c, struct span span, const char *what)
{
    if (!c->drill) {
        c->refusals++;
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_DRILL_ONLY, span, "%s belongs to a drill", what);
        diag_help(c->diags, diag, "drill instead of play in the heading");
    }
    return c->drill;
}

static bool placing_read(struct cursor *c, bool first, struct placing *out)
{
    struct span span = cursor_span(c);
    if (first && formation_read(c, out)) {
        return true;
    }
    if (take_words(c, "cone at")) {
        out->kind = PLACING_CONE;
        return drill_only(c, span, "a cone") && where_read(c, out);
    }
    if (take_words(c, "line behind")) {
        return drill_only(c, span, "a line of players") && line_read(c, out);
    }
    out->kind = PLACING_WHO;
    struct cursor trial = *c;
    bool known = who_read(&trial, &out->who) &&
                 (out->who.kind == WHO_PLAYER || out->who.kind == WHO_DEFENDER ||
                  out->who.kind == WHO_COACH);
    if (!known) {
        return refuse(
            c, first ? "a formation (five-out, horns, box) or players with their places: start 1 "
                       "top, 2 right wing"
                     : "a player and a place: 5 at 6 ft above left corner");
    }
    *c = trial;
    return where_read(c, out);
}

static bool same_body(const struct placing *a, const struct placing *b)
{
    return a->kind == PLACING_WHO && b->kind == PLACING_WHO && a->who.kind == b->who.kind &&
           a->who.number == b->who.number;
}

static bool placed_twice(struct cursor *c, const struct setting_form *out,
                         const struct placing *placing)
{
    for (size_t i = 0; i < out->placings.count; i++) {
        if (same_body(&out->placings.at[i], placing)) {
            c->refusals++;
            struct str text = cursor_text(c, placing->who.span);
            struct diag *diag = diag_add(c->diags, DIAG_TEXT_SETTING, placing->span,
                                         "%.*s is placed twice", STR_ARG(text));
            diag_help(c->diags, diag, "keep one of the two places");
            if (diag) {
                diag->other = out->placings.at[i].span;
            }
            return true;
        }
    }
    return false;
}

bool start_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    do {
        struct placing placing = {0};
        const struct token *from = c->at;
        if (!placing_read(c, out->placings.count == 0, &placing)) {
            return false;
        }
        placing.span = cursor_taken(c, from);
        if (placed_twice(c, out, &placing)) {
            return false;
        }
        VEC_PUSH(c->arena, &out->placings, placing);
    } while (take_mark(c, ',') || take_words(c, "and"));
    return true;
}
