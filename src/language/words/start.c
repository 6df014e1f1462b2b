/* SPDX-License-Identifier: MIT */
/* start: who stands where as the play begins: a formation, players, cones, lines. */
#include "language/words/people.h"
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
    static const char *const ats[] = {"at",        "in",        "on",        "is at",     "is in",
                                      "is on",     "starts at", "starts in", "starts on", "up at",
                                      "down in",   "down on",   "out at",    "over in",   "over on",
                                      "stands at", "under",     NULL};
    take_among(c, ats);
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
    const struct person_row *row = take_person(&trial); /* point guard up top */
    if (row && row->person == PERSON_PLAYER) {
        out->who = (struct who){.kind = WHO_PLAYER, .number = row->number, .span = span};
        *c = trial;
        return where_read(c, out);
    }
    trial = *c;
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

/* ---- two at once: 4 and 5 at the elbows, wings 2 and 3, bigs in the corners ---- */

bool several_spot(struct cursor *c, enum spot *out)
{
    static const struct entry spots[] = {{"wings", SPOT_WING},
                                         {"corners", SPOT_CORNER},
                                         {"elbows", SPOT_ELBOW},
                                         {"blocks", SPOT_BLOCK},
                                         {"slots", SPOT_SLOT},
                                         {"hashes", SPOT_HASH},
                                         {"short corners", SPOT_SHORT_CORNER},
                                         {"mid posts", SPOT_MID_POST},
                                         {"low posts", SPOT_LOW_POST},
                                         {"high posts", SPOT_HIGH_POST},
                                         {"dunker spots", SPOT_DUNKER},
                                         {"guard spots", SPOT_SLOT},
                                         {"boxes", SPOT_BLOCK},
                                         {NULL, 0}};
    struct cursor trial = *c;
    take_words(&trial, "both");
    take_words(&trial, "two");
    int spot = take_entry(&trial, spots);
    if (spot < 0) {
        return false;
    }
    *out = (enum spot)spot;
    c->at = trial.at;
    return true;
}

/* 2 and 3; guards, bigs: the two of these numbers. */
static bool two_read(struct cursor *c, struct who out[2])
{
    static const struct entry pairs[] = {{"bigs", 4},   {"posts", 4},    {"two bigs", 4},
                                         {"wings", 2},  {"big men", 4},  {"forwards", 3},
                                         {"guards", 1}, {"shooters", 2}, {NULL, 0}};
    struct cursor trial = *c;
    const struct token *from = past_fillers(c->at, c->end);
    int first = take_entry(&trial, pairs);
    bool named = first >= 0;
    if (named) {
        struct span span = cursor_taken(&trial, from);
        out[0] = (struct who){.kind = WHO_PLAYER, .number = first, .span = span};
        out[1] = (struct who){.kind = WHO_PLAYER, .number = first + 1, .span = span};
    }
    if (!named &&
        (!who_read(&trial, &out[0]) || !take_words(&trial, "and") || !who_read(&trial, &out[1]))) {
        return false;
    }
    if (out[0].kind != WHO_PLAYER || out[1].kind != WHO_PLAYER) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* The first on the right, the second on the left, as in the formations: a note. */
static void put_two(struct cursor *c, struct setting_form *out, const struct who who[2],
                    enum spot spot, const struct token *from)
{
    const char *words = entry_words(spot_entries, (int)spot);
    struct span span = cursor_taken(c, from);
    for (int i = 0; i < 2; i++) {
        struct place place = {.kind = PLACE_SPOT,
                              .spot = spot,
                              .side = i == 0 ? SIDE_RIGHT : SIDE_LEFT,
                              .span = span};
        struct placing placing = {
            .kind = PLACING_WHO, .who = who[i], .place = place_keep(c->arena, place), .span = span};
        VEC_PUSH(c->arena, &out->placings, placing);
    }
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_SPOT_TAKEN, span,
                                 "who is on which side is not written: %d "
                                 "right, %d left was taken",
                                 who[0].number, who[1].number);
    diag_help(c->diags, diag, "name the sides: `%d left %s, %d right %s`", who[0].number, words,
              who[1].number, words);
}

/* False: nothing of that here, unmoved. */
static bool two_placed(struct cursor *c, struct setting_form *out)
{
    static const char *const ats[] = {"at",
                                      "in",
                                      "on",
                                      "are",
                                      "start in",
                                      "start on",
                                      "start at",
                                      "under them on",
                                      "below them on",
                                      "below on",
                                      "up at",
                                      "down on",
                                      "down in",
                                      "with",
                                      NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    const struct token *from = past_fillers(c->at, c->end);
    struct who who[2];
    enum spot spot;
    bool behind = two_read(&trial, who) && (take_among(&trial, ats), several_spot(&trial, &spot));
    if (!behind) {
        cursor_back(&trial, mark);
        trial = *c;
        if (!several_spot(&trial, &spot) || (take_among(&trial, ats), !two_read(&trial, who))) {
            cursor_back(&trial, mark);
            return false;
        }
    }
    c->at = trial.at;
    put_two(c, out, who, spot, from);
    return true;
}

/* `, `, `and`, or the next player right behind the place. */
static bool goes_on(struct cursor *c)
{
    if (take_mark(c, ',') || take_mark(c, '.') || take_words(c, "and")) {
        take_words(c, "and");
        return !cursor_done(c);
    }
    const struct token *next = cursor_next(c);
    return next && (next->kind == TOKEN_NUMBER || next->kind == TOKEN_DEFENDER) &&
           !next->possessive;
}

bool start_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    do {
        struct placing placing = {0};
        const struct token *from = c->at;
        size_t had = out->placings.count;
        if (two_placed(c, out)) {
            for (size_t i = had; i < out->placings.count; i++) {
                struct setting_form before = {.placings = {out->placings.at, i, i}};
                if (placed_twice(c, &before, &out->placings.at[i])) {
                    return false;
                }
            }
            continue;
        }
        if (!placing_read(c, out->placings.count == 0, &placing)) {
            return false;
        }
        placing.span = cursor_taken(c, from);
        if (placed_twice(c, out, &placing)) {
            return false;
        }
        VEC_PUSH(c->arena, &out->placings, placing);
    } while (goes_on(c));
    return true;
}
