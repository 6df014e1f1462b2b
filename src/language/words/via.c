/* SPDX-License-Identifier: MIT */
/* via: by way of the lane or the rim, where the straight way would lead elsewhere: a sentence of
 * its own before this one. Every other way is the straight one, and is left out with a note. */
#include "language/words/grammar.h"

static void note_straight(struct cursor *c, struct span span)
{
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                 "`%.*s` was left out: the way is the straight one", STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "for another way write `past left block`, or two sentences");
}

/* through the lane, under the basket: what lies on the way; SPOT_COUNT: nothing that has a name. */
static enum spot way_by(struct str text)
{
    static const struct {
        const char *begins, *ends;
        enum spot spot;
    } rows[] = {
        {"through", "lane", SPOT_LANE}, {"through", "paint", SPOT_LANE},
        {"through", "key", SPOT_LANE},  {"thru", "lane", SPOT_LANE},
        {"thru", "paint", SPOT_LANE},   {"thru", "key", SPOT_LANE},
        {"down", "lane", SPOT_LANE},    {"down", "paint", SPOT_LANE},
        {"up", "lane", SPOT_LANE},      {"through", "middle", SPOT_LANE},
        {"under", "basket", SPOT_RIM},  {"under", "rim", SPOT_RIM},
        {"under", "hoop", SPOT_RIM},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct str end = str_of(rows[i].ends);
        bool ends = text.size >= end.size &&
                    str_equal((struct str){text.at + text.size - end.size, end.size}, end);
        if (ends && str_starts(text, rows[i].begins)) {
            return rows[i].spot;
        }
    }
    return SPOT_COUNT;
}

void note_way(struct predicate *p, struct span span)
{
    struct cursor *c = p->c;
    const struct sentence *s = p->s;
    enum spot via = way_by(cursor_text(c, span));
    bool moves = s->verb == VERB_CUTS || s->verb == VERB_GOES || s->verb == VERB_CLEARS ||
                 s->verb == VERB_RELOCATES;
    p->way_said = true;
    if (via == SPOT_COUNT || !moves || s->subject.count != 1 || p->via_span.end > 0) {
        note_straight(c, span);
        return;
    }
    p->via = via;
    p->via_span = span;
}

/* On which side the player is as the lines above have it; SIDE_NONE: they do not tell. */
static enum side side_known(const struct cursor *c, const struct who *who)
{
    struct spot_stood at;
    return above_stands(c, who, &at) ? at.side : SIDE_NONE;
}

static bool perimeter(enum spot spot)
{
    return spot == SPOT_TOP || spot == SPOT_WING || spot == SPOT_SLOT || spot == SPOT_CORNER ||
           spot == SPOT_SHORT_CORNER || spot == SPOT_HASH;
}

/* The straight way would lead elsewhere: by the lane to a spot outside, by the rim to one on the
 * other side. */
static bool leads_round(const struct predicate *p)
{
    const struct place *place = p->s->place;
    bool side = place && place->kind == PLACE_SIDE;
    if (!place || (!side && (place->kind != PLACE_SPOT || !perimeter(place->spot)))) {
        return false;
    }
    enum side to = place->side, from = side_known(p->c, &p->s->subject.at[0]);
    bool known = (to == SIDE_LEFT || to == SIDE_RIGHT) && (from == SIDE_LEFT || from == SIDE_RIGHT);
    bool opposite = to == SIDE_OPPOSITE && (from == SIDE_LEFT || from == SIDE_RIGHT);
    bool across = opposite || to == SIDE_WEAK || (known && to != from);
    return to == SIDE_OPPOSITE ? opposite : p->via == SPOT_LANE || across;
}

/* In the middle nothing is opposite: by its name. */
static void name_side(struct predicate *p)
{
    if (p->s->place->side == SIDE_OPPOSITE) {
        bool left = side_known(p->c, &p->s->subject.at[0]) == SIDE_LEFT;
        p->s->place = place_sided(p->c, p->s->place, left ? SIDE_RIGHT : SIDE_LEFT);
    }
}

/* cuts through, and no more: the rim is taken for where it ends. */
static void note_rim_taken(const struct predicate *p)
{
    static const char *const rims[] = {"rim", "basket", "hoop", "goal", "bucket", NULL};
    for (const struct token *at = p->from; at < p->c->at; at++) {
        if (token_is_among(at, rims)) {
            return;
        }
    }
    struct span span = p->s->verb_span;
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_PLACE_TAKEN, span,
                                 "`%.*s`: where it ends is not said, the rim was taken",
                                 STR_ARG(cursor_text(p->c, span)));
    diag_help(p->c->diags, diag, "name the place: `%.*s to left corner`",
              STR_ARG(predicate_begun(p)));
}

/* cuts through to the wing of his own side: by way of the lane, where the straight way to the other
 * side leads through it anyway. */
static void through_lane(struct predicate *p)
{
    const struct place *place = p->s->place;
    struct str words = str_of(p->phrase.words);
    bool through = str_equal(words, STR("cuts through")) || str_equal(words, STR("scoots through"));
    if (through && place && place->kind == PLACE_SPOT && place->spot == SPOT_RIM) {
        note_rim_taken(p);
        return;
    }
    if (through && p->s->subject.count == 1 && place && place->kind == PLACE_SPOT &&
        perimeter(place->spot) && place->side == side_known(p->c, &p->s->subject.at[0])) {
        p->via = SPOT_LANE;
        p->via_span = p->s->verb_span;
    }
}

void way_settled(struct predicate *p)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    if (p->via_span.end == 0) {
        through_lane(p);
    }
    struct span span = p->via_span;
    if (span.end == 0) {
        return;
    }
    p->via_span = (struct span){0};
    if (!leads_round(p) || s->ahead || verb_row(s->verb)->task != VERB_MOVE) {
        note_straight(c, span);
        return;
    }
    name_side(p);
    struct place place = {.kind = PLACE_SPOT, .spot = p->via, .span = span};
    struct sentence *ahead = arena_new(c->arena, struct sentence);
    *ahead = (struct sentence){.span = s->verb_span,
                               .subject = s->subject,
                               .verb = s->verb == VERB_CUTS ? VERB_CUTS : VERB_GOES,
                               .verb_span = s->verb_span,
                               .pace = s->pace,
                               .begins = s->begins,
                               .place = place_keep(c->arena, place)};
    s->begins = NULL;
    s->ahead = ahead;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, span,
                 "`%.*s`: it is run by way of %s, a sentence of its own",
                 STR_ARG(cursor_text(c, span)), p->via == SPOT_LANE ? "the lane" : "the rim");
    diag_help(c->diags, diag, "for the straight way leave it out");
}

bool leaves_for_nowhere(struct predicate *p)
{
    static const char *const inside[] = {"lane",   "paint", "key",  "rim",
                                         "basket", "hoop",  "post", NULL};
    enum verb_task task = verb_row(p->s->verb)->task;
    const struct token *from = NULL, *to = NULL;
    for (const struct token *at = p->from; at < p->c->at; at++) {
        bool out = at + 1 < p->c->at && token_is_word(at, "out") && token_is_word(at + 1, "of");
        from = !from && (out || token_is_word(at, "away")) ? at : from;
        to = from && token_is_among(at, inside) ? at + 1 : to;
    }
    if (!to || p->s->place || p->s->object.kind != WHO_NONE ||
        (task != VERB_MOVE && task != VERB_CARRY)) {
        return false;
    }
    struct span span = span_join(from->span, to[-1].span);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_PLACE_MISSING, span,
                     "`%.*s` is where it begins: where does it end?",
                     STR_ARG(cursor_text(p->c, span))),
              "name the place: `%.*s to left corner`", STR_ARG(predicate_begun(p)));
    return true;
}
