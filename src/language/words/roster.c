/* SPDX-License-Identifier: MIT */
/* roster: the lines under team: who plays which spot, and lineups. */
#include "language/syntax/chars.h"
#include "language/words/reader.h"

static bool refuse(struct cursor *c, const char *expected)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag;
    if (text.size == 0) {
        diag = diag_add(c->diags, DIAG_TEXT_ROSTER, span, "the line breaks off here");
    } else {
        diag = diag_add(c->diags, DIAG_TEXT_ROSTER, span, "`%.*s` has no place in a team",
                        STR_ARG(text));
    }
    diag_help(c->diags, diag, "write `%s`", expected);
    return false;
}

static const char roster_example[] = "1 \"Wren Halloway\" guard, jersey 12";
static const char lineup_example[] = "lineup \"Big\" 1 \"Wren Halloway\", 2 \"Juno Marsh\"";

static bool is_proper(const struct cursor *c, const struct token *at)
{
    struct str text = cursor_text(c, at->span);
    return at->kind == TOKEN_WORD && text.at[0] >= 'A' && text.at[0] <= 'Z';
}

/* 1 Maya Lind, jersey 12: every word with a capital is the name's. */
static bool refuse_bare_name(struct cursor *c)
{
    const struct token *last = c->at;
    while (last + 1 < c->end && is_proper(c, last + 1)) {
        last++;
    }
    struct span span = c->at->span;
    span.end = last->span.end;
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_ROSTER, span, "a name stands in quotes");
    diag_help(c->diags, diag, "did you mean `\"%.*s\"`?", STR_ARG(cursor_text(c, span)));
    return false;
}

/* A name, or a lineup's title: something that is to be seen has to stand in the quotes. */
static bool name_part(struct cursor *c, struct str *name, struct span *span, const char *example)
{
    if (!quoted_read(c, name, span)) {
        bool bare = c->at < c->end && is_proper(c, c->at);
        return bare ? refuse_bare_name(c) : refuse(c, example);
    }
    if (text_is_blank(*name)) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_ROSTER, *span, "this name is empty");
        diag_help(c->diags, diag, "write `%s`, or leave the line out", example);
        return false;
    }
    return true;
}

static bool number_part(struct cursor *c, int *number, const char *example)
{
    struct span span;
    if (!integer_read(c, number, &span)) {
        return refuse(c, example);
    }
    if (*number < 1 || *number > 5) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLAYER_RANGE, span,
                                     "there is no spot %d in a play: 1 to 5", *number);
        diag_help(c->diags, diag, "the jersey's number stands behind: %s", roster_example);
        return false;
    }
    return true;
}

/* Words up to the comma or the jersey: guard, point guard. */
static void role_part(struct cursor *c, struct str *role)
{
    const struct token *from = c->at;
    while (c->at < c->end && c->at->kind == TOKEN_WORD && !word_is(c, 0, "jersey")) {
        c->at++;
    }
    if (c->at > from) {
        *role = text_clean(c->arena, cursor_text(c, span_join(from->span, c->at[-1].span)), false);
    }
}

static bool player_read(struct cursor *c, struct form *form)
{
    struct span span;
    if (!number_part(c, &form->number, roster_example)) {
        return false;
    }
    if (!name_part(c, &form->title, &span, roster_example)) {
        return false;
    }
    role_part(c, &form->roster->role);
    take_mark(c, ',');
    if (take_words(c, "jersey")) {
        const struct token *jersey = cursor_next(c);
        int number;
        if (!integer_read(c, &number, &span)) {
            return refuse(c, roster_example);
        }
        enum { DIGITS = 2 }; /* 0 to 99 and 00: the rulebooks */
        if (jersey->text.size > DIGITS) {
            struct diag *diag = diag_add(c->diags, DIAG_TEXT_ROSTER, span,
                                         "no jersey has the number %.*s", STR_ARG(jersey->text));
            diag_help(c->diags, diag, "they run from 0 to 99, with 00: `%s`", roster_example);
            return false;
        }
        form->roster->jersey = jersey->text;
    }
    return true;
}

/* 1 "Wren Halloway", 2 "Juno Marsh" and 3 "Imke Dorn"; or nothing but a blank in between. */
static bool another_follows(struct cursor *c)
{
    bool comma = take_mark(c, ',');
    bool joined = take_words(c, "and") || comma;
    const struct token *next = cursor_next(c);
    return joined || (next && next->kind == TOKEN_NUMBER);
}

bool lineup_read(struct reader *r, struct cursor *c, struct form *form)
{
    struct span span;
    (void)r;
    if (!name_part(c, &form->title, &span, lineup_example)) {
        return false;
    }
    do {
        struct role_binding binding = {.who = {.kind = WHO_PLAYER}};
        if (!number_part(c, &binding.who.number, lineup_example)) {
            return false;
        }
        if (!name_part(c, &binding.role, &binding.who.span, lineup_example)) {
            return false;
        }
        VEC_PUSH(c->arena, &form->roster->lineup, binding);
    } while (another_follows(c));
    return true;
}

void roster_read(struct reader *r, const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    bool lineup = opener.kind == LINE_SETTING && opener.which == SETTING_LINEUP;
    struct form form = {.kind = lineup ? FORM_LINEUP : FORM_ROSTER};
    form.roster = arena_new(r->arena, struct roster_form);
    struct cursor c = reader_cursor(r, line, lineup ? 1 : 0);
    bool fine = lineup ? lineup_read(r, &c, &form) : player_read(&c, &form);
    if (!fine || !reader_used_up(&c)) {
        reader_broken(r, line);
        return;
    }
    form.line = line;
    form.span = line->span;
    VEC_PUSH(r->arena, &r->top->forms, form);
}
