/* SPDX-License-Identifier: MIT */
/* outline: an item of a practice as it stands in a notebook, without quotes and in any order: layup
 * lines both sides 5 mins; 3:30 to 3:45 stretch; water, 2. Takes one line of which the strict
 * reading made nothing; needs minutes, or two times of the day. */
#include "language/syntax/chars.h"
#include "language/words/grammar.h"
#include "language/words/outline.h"
#include "language/words/reader.h"

#include <string.h>

#include "base/limits.h"

/* What of the line is no text. */
struct pieces {
    const struct token *minutes, *from, *to; /* the measure or number; 3:30 to 3:45 */
    bool bare;                               /* the minutes are a number without unit */
};

static bool is_minutes(const struct token *token)
{
    struct str text = token->text;
    bool dash = text.size > 0 && text.at[text.size - 1] == '\''; /* 6' on a plan */
    return token->kind == TOKEN_MEASURE &&
           (token->unit == UNIT_MINUTES || (token->unit == UNIT_FEET && dash));
}

static bool joins_times(const struct token *token)
{
    return token_is_mark(token, '-') ||
           (token->kind == TOKEN_WORD &&
            (str_is(token->text, "to") || str_is(token->text, "until") ||
             str_is(token->text, "till")));
}

/* False: two of a kind, a text in quotes, or no time at all. */
static bool find_pieces(const struct cursor *c, struct pieces *out)
{
    *out = (struct pieces){NULL, NULL, NULL, false};
    for (const struct token *at = c->at; at < c->end; at++) {
        if (at->kind == TOKEN_QUOTED || (is_minutes(at) && out->minutes)) {
            return false;
        }
        out->minutes = is_minutes(at) ? at : out->minutes;
        if (at->kind == TOKEN_CLOCK && at != c->at && !(at - 2 == c->at && out->from)) {
            return false; /* a time of the day stands in front */
        }
        if (at->kind == TOKEN_CLOCK) {
            *(at == c->at ? &out->from : &out->to) = at;
        }
    }
    if (out->to && !joins_times(out->from + 1)) {
        return false;
    }
    const struct token *last = c->end - 1;
    if (!out->minutes && !out->to && last > c->at && last->kind == TOKEN_NUMBER && last->integer &&
        token_is_mark(last - 1, ',')) { /* water, 2 */
        out->minutes = last;
        out->bare = true;
    }
    return out->minutes || out->to;
}

/* minus 5 minutes, scrimmage -5 min: less than none. */
static bool below_none(const struct cursor *c, const struct token *minutes)
{
    const struct token *before = minutes - 1;
    if (!minutes || minutes < c->at + 2) {
        return false;
    }
    bool near = token_is_mark(before, '-') && before->span.end == minutes->span.begin &&
                before[-1].span.end < before->span.begin;
    return near || (before->kind == TOKEN_WORD && str_is(before->text, "minus"));
}

/* warm up ten minutes then layups eight: two things, and the second has minutes of its own. */
static bool two_things(struct cursor *c, const struct pieces *pieces)
{
    const struct token *last = c->end - 1, *then = pieces->minutes;
    while (then && then < last && !str_is(then->text, "then")) {
        then++;
    }
    if (!then || then == last || last->kind != TOKEN_NUMBER) {
        return false;
    }
    struct diag *diag = REFUSE(c, TEXT_PLAN, span_join(then->span, last->span),
                               "two things on one line, and the second has minutes of its own");
    diag_help(c->diags, diag, "write it on a line of its own: `8 min \"Lay-ups\"`");
    return true;
}

/* 3 stations of 4 min, stations of 4 min: what stands over stations, and no item. */
static bool over_stations(struct cursor *c)
{
    struct cursor trial = *c;
    int count = 3;
    struct span span;
    bool counted = integer_read(&trial, &count, &span);
    if (!take_words(&trial, "stations of") || trial.at == trial.end) {
        return false;
    }
    double each =
        trial.at->kind == TOKEN_MEASURE || trial.at->kind == TOKEN_NUMBER ? trial.at->number : 4;
    struct diag *diag =
        REFUSE(c, TEXT_PLAN, cursor_taken(&trial, c->at), "stations are told by all their minutes");
    diag_help(c->diags, diag,
              "write `stations %g min, change every %g min`, and under it `station \"Basket 1\" "
              "drill \"Four-spot closeouts\"`%s",
              count * each, each, counted ? "" : ", for three stations");
    return true;
}

/* Minutes out of range are told by the strict reading; times that run backwards by nobody else. */
static bool fits_a_practice(struct cursor *c, const struct pieces *pieces, double minutes)
{
    if (minutes <= 0 && !pieces->minutes) {
        struct diag *diag = REFUSE(c, TEXT_PLAN, pieces->to->span, "this ends before it starts");
        diag_help(c->diags, diag, "write the minutes: `10 min \"Form shooting\"`");
    }
    if (pieces->minutes && below_none(c, pieces->minutes)) {
        struct diag *diag =
            REFUSE(c, TEXT_PLAN, pieces->minutes->span, "minutes are more than 0 and at most %d",
                   LIMIT_PRACTICE_MINUTES);
        diag_help(c->diags, diag, "write `10 min \"Form shooting\"`");
        return false;
    }
    return minutes > 0 && minutes <= LIMIT_PRACTICE_MINUTES;
}

/* Marks at its ends, and words that lead to the minutes, are no part of the text. */
static void add_text(const struct cursor *c, struct strbuf *text, const struct token *from,
                     const struct token *to)
{
    while (from < to && (token_is_mark(from, ',') || token_is_mark(from, ':') ||
                         token_is_mark(from, '-') || token_is_mark(from, '.'))) {
        from++;
    }
    while (to > from && (to[-1].kind == TOKEN_MARK || str_is(to[-1].text, "for"))) {
        to--;
    }
    if (from == to) {
        return;
    }
    struct span span = span_join(from->span, to[-1].span);
    strbuf_text(text, text->size > 0 ? ", " : "");
    strbuf_add(text, cursor_text(c, span));
}

/* The first word is near to one that opens a line of a plan: mistyped, and no item. */
static bool mistyped(const struct cursor *c)
{
    const struct token *first = c->at;
    if (c->end - first > 1 && str_is(first[1].text, "with")) { /* end with free throws */
        return false;
    }
    static const char *const words[] = {"starts", "ends",    "lasts",    "about", "lineup", "water",
                                        "drill",  "station", "stations", "play",  NULL};
    return first->kind == TOKEN_WORD && words_nearest(first->text, words) != NULL &&
           !str_is(first->text, "water") && !str_is(first->text, "drill");
}

static double minutes_of(struct cursor *c, const struct pieces *pieces)
{
    if (!pieces->minutes) {
        return pieces->to->number - pieces->from->number;
    }
    if (pieces->bare) {
        struct str text = cursor_text(c, pieces->minutes->span);
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLAN_MINUTES, pieces->minutes->span,
                                     "`%.*s` was taken as minutes", STR_ARG(text));
        diag_help(c->diags, diag, "write the unit: `%.*s min`", STR_ARG(text));
    }
    return pieces->minutes->number;
}

bool outline_item(struct cursor *c, struct plan_form *out, int *clock)
{
    struct pieces pieces;
    struct strbuf text;
    if (c->at == c->end || mistyped(c) || over_stations(c) || !find_pieces(c, &pieces) ||
        two_things(c, &pieces)) {
        return false;
    }
    const struct token *from = pieces.to ? pieces.to + 1 : pieces.from ? pieces.from + 1 : c->at;
    const struct token *cut = pieces.minutes ? pieces.minutes : c->end;
    strbuf_init(&text, c->arena);
    add_text(c, &text, from, cut);
    if (cut < c->end) {
        add_text(c, &text, cut + 1, c->end);
    }
    double minutes = minutes_of(c, &pieces);
    if (text.size == 0 || !fits_a_practice(c, &pieces, minutes)) {
        return false;
    }
    *out = (struct plan_form){.kind = PLAN_ITEM, .with_span = SPAN_NONE};
    out->minutes = minutes;
    out->text = text_clean(c->arena, strbuf_str(&text), false);
    out->text_span = c->line_span;
    *clock = pieces.from ? (int)pieces.from->number : -1;
    c->at = c->end;
    return true;
}

/* ---- what kind of work it is ---- */

static void say_kind(struct cursor *c, struct span said, const char *as, const char *otherwise)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_READ_AS, said, "`%.*s` was read as `%s`",
                                 STR_ARG(cursor_text(c, said)), as);
    diag_help(c->diags, diag, "%s", otherwise);
}

void outline_say_contact(struct cursor *c, struct span said)
{
    say_kind(c, said, "contact", "if it is not live, write `no contact`");
}

bool outline_sides(struct cursor *c)
{
    struct cursor trial = *c;
    int attack, defend;
    struct span span;
    bool on = integer_read(&trial, &attack, &span);
    take_mark(&trial, '-');
    on = on && take_words(&trial, "on");
    take_mark(&trial, '-');
    if (!on || !integer_read(&trial, &defend, &span) || defend < 1) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* The first place in the line where one of these stands, or sides that play each other. */
static bool said_in(const struct cursor *c, const char *const words[], bool sides,
                    struct span *said)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        struct cursor trial = *c;
        trial.at = at;
        if (take_among(&trial, words) || (sides && outline_sides(&trial))) {
            *said = cursor_taken(&trial, at);
            return true;
        }
    }
    return false;
}

static bool text_is(struct str text, const char *const words[])
{
    while (*words && !str_equal_fold(text, str_of(*words))) {
        words++;
    }
    return *words != NULL;
}

static const char *const without_words[] = {"no contact", "without contact", "non contact",
                                            "non-contact", NULL};
static const char *const contact_words[] = {"full contact", "contact", "scrimmage",
                                            "scrimmaging",  "live",    NULL};

static bool is_letter(char byte)
{
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
           (unsigned char)byte > 127;
}

/* Whole words of a text, whatever their letters' size. */
static bool text_has(struct str text, const char *word)
{
    size_t size = strlen(word);
    for (size_t i = 0; i + size <= text.size; i++) {
        bool begins = i == 0 || !is_letter(text.at[i - 1]);
        bool ends = i + size == text.size || !is_letter(text.at[i + size]);
        if (begins && ends && str_equal_fold((struct str){text.at + i, size}, str_of(word))) {
            return true;
        }
    }
    return false;
}

static bool text_has_one(struct str text, const char *const words[])
{
    while (*words && !text_has(text, *words)) {
        words++;
    }
    return *words != NULL;
}

/* 5 on 5, 3-on-2: a number of attackers, and of defenders at least one. */
static bool text_has_sides(struct str text)
{
    for (size_t i = 1; i + 1 < text.size; i++) {
        size_t before = i, after = i + 2;
        if (!str_equal_fold((struct str){text.at + i, 2}, STR("on"))) {
            continue;
        }
        while (before > 0 && (text.at[before - 1] == ' ' || text.at[before - 1] == '-')) {
            before--;
        }
        while (after < text.size && (text.at[after] == ' ' || text.at[after] == '-')) {
            after++;
        }
        if (before > 0 && text.at[before - 1] >= '0' && text.at[before - 1] <= '9' &&
            after < text.size && text.at[after] >= '1' && text.at[after] <= '9') {
            return true;
        }
    }
    return false;
}

void outline_quoted(struct cursor *c, struct plan_form *out)
{
    bool open = out->kind == PLAN_ITEM && out->content == CONTENT_TEXT &&
                out->contact == CONTACT_BY_RULE && !text_has_one(out->text, without_words);
    if (open && (text_has_one(out->text, contact_words) || text_has_sides(out->text))) {
        out->contact = CONTACT_YES;
        outline_say_contact(c, out->text_span);
    }
}

void outline_kind(struct cursor *c, struct plan_form *out)
{
    static const char *const warm[] = {"stretching", "stretches", "jogging", "warmup", NULL};
    static const char *const water[] = {"drinks break", "drink break", "drinks", "drink",
                                        "break",        "rest",        NULL};
    struct span said;
    if (out->content != CONTENT_TEXT) {
        return;
    }
    if (said_in(c, without_words, false, &said)) {
        out->contact = CONTACT_NO;
    } else if (said_in(c, contact_words, true, &said)) {
        out->contact = CONTACT_YES;
        outline_say_contact(c, said);
    } else if (said_in(c, warm, false, &said)) {
        out->content = CONTENT_WARM_UP;
        say_kind(c, c->line_span, "warm-up", "if it is work, put what is done in quotes");
    } else if (text_is(out->text, water)) {
        out->content = CONTENT_WATER;
        say_kind(c, c->line_span, "water", "if nobody drinks, put what is done in quotes");
    }
}
