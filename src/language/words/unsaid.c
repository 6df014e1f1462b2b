/* SPDX-License-Identifier: MIT */
/* unsaid: where a movement ends that is not said and that its own words tell: 1 cuts, 4 comes up, 2
 * clears out, 3 cuts off 5, 3 fills. Each is taken with a note. Knows words only. */
#include "language/words/grammar.h"

/* Where to, by the verb, and by its words where they say more than the verb: NULL, by its own. */
struct unsaid {
    enum verb verb;
    const char *words;
    enum place_kind kind;
    enum spot spot;
    enum way way;
    const char *taken;
};
static const struct unsaid unsaid_rows[] = {
    {VERB_CUTS, NULL, PLACE_SPOT, SPOT_RIM, WAY_UP, "the rim"},
    {VERB_LIFTS, NULL, PLACE_NEXT, SPOT_RIM, WAY_UP, "the next spot up"},
    {VERB_DRIFTS, NULL, PLACE_NEXT, SPOT_RIM, WAY_DOWN, "the next spot down"},
    {VERB_SINKS, NULL, PLACE_NEXT, SPOT_RIM, WAY_DOWN, "the next spot down"},
    {VERB_FLASHES, NULL, PLACE_SPOT, SPOT_NAIL, WAY_UP, "the nail"},
    {VERB_CLEARS, "", PLACE_SIDE, SPOT_RIM, WAY_UP, "the opposite side"},
    {VERB_GOES, "changes side", PLACE_SIDE, SPOT_RIM, WAY_UP, "the opposite side"},
    {VERB_GOES, "changes sides", PLACE_SIDE, SPOT_RIM, WAY_UP, "the opposite side"},
    {VERB_GOES, "switches sides", PLACE_SIDE, SPOT_RIM, WAY_UP, "the opposite side"},
    {VERB_COMES, "cuts", PLACE_SPOT, SPOT_RIM, WAY_UP, "the rim"},
    {VERB_COMES, "basket cuts", PLACE_SPOT, SPOT_RIM, WAY_UP, "the rim"},
    {VERB_COMES, "dives", PLACE_SPOT, SPOT_RIM, WAY_UP, "the rim"},
};

/* The row says where this verb, in these words, ends. */
static bool row_fits(const struct predicate *p, const struct unsaid *row)
{
    struct str words = str_of(p->phrase.words);
    bool plain = str_is(words, verb_row(p->s->verb)->words);
    bool fits = !row->words ? plain : row->words[0] == '\0' || str_is(words, row->words);
    return row->verb == p->s->verb && fits &&
           (p->s->verb != VERB_CLEARS || p->s->subject.count == 1);
}

void take_place(struct predicate *p, struct place place, const char *taken)
{
    place.span = p->s->verb_span;
    p->s->place = place_keep(p->c->arena, place);
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_PLACE_TAKEN, p->s->verb_span,
                                 "no place is written: %s was taken", taken);
    diag_help(p->c->diags, diag, "to go elsewhere, name it: `%.*s to left corner`",
              STR_ARG(predicate_begun(p)));
}

/* 2 cuts out, cuts up, cuts away: not to the rim. */
static bool elsewhere(const struct predicate *p)
{
    static const char *const ways[] = {"out", "up", "away", "back", NULL};
    bool cuts = p->s->verb == VERB_CUTS || p->s->verb == VERB_COMES;
    return cuts && p->c->at > p->c->first && token_is_among(&p->c->at[-1], ways);
}

/* 1 cuts, 4 lifts, 2 clears out, 1 cuts off 5: to the rim, to the next spot up, to the other side.
 */
static void place_unsaid(struct predicate *p)
{
    for (size_t i = 0; !p->s->place && i < sizeof unsaid_rows / sizeof *unsaid_rows; i++) {
        const struct unsaid *row = &unsaid_rows[i];
        if (row_fits(p, row) && !elsewhere(p)) {
            struct place place = {
                .kind = row->kind, .spot = row->spot, .side = SIDE_NONE, .way = row->way};
            place.side = row->kind == PLACE_SIDE ? SIDE_OPPOSITE : SIDE_NONE;
            take_place(p, place, row->taken);
        }
    }
}

static bool ends_with(struct str said, struct str end)
{
    return said.size > end.size &&
           str_equal((struct str){said.at + said.size - end.size, end.size}, end);
}

/* after 2 cuts through: where a moment that is put in front as a sentence ends, by the word behind
 * its verb; gives what was taken, for a note, or NULL. `after 2 cuts` alone points to a sentence
 * that is missing. */
const char *unsaid_place(const struct cursor *c, struct sentence *s)
{
    static const struct {
        enum verb verb;
        const char *end;
    } ends[] = {{VERB_CUTS, "through"},
                {VERB_CUTS, "through the lane"},
                {VERB_CUTS, "through the paint"},
                {VERB_CUTS, "through the key"},
                {VERB_CLEARS, "out"},
                {VERB_CLEARS, "through"},
                {VERB_LIFTS, "up"},
                {VERB_DRIFTS, "down"},
                {VERB_SINKS, "down"}};
    bool says = false;
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        says = says ||
               (ends[i].verb == s->verb && ends_with(cursor_text(c, s->span), str_of(ends[i].end)));
    }
    for (size_t i = 0; says && i < sizeof unsaid_rows / sizeof *unsaid_rows; i++) {
        const struct unsaid *row = &unsaid_rows[i];
        if (row->verb == s->verb && (!row->words || row->words[0] == '\0') &&
            s->subject.count == 1 && s->path == PATH_NONE) {
            struct place place = {
                .kind = row->kind, .spot = row->spot, .way = row->way, .span = s->span};
            place.side = row->kind == PLACE_SIDE ? SIDE_OPPOSITE : SIDE_NONE;
            s->place = place_keep(c->arena, place);
            return row->taken;
        }
    }
    return NULL;
}

/* 5 crosses the lane: to the same spot on the other side. */
static void crosses(struct predicate *p)
{
    struct spot_stood at;
    if (p->s->verb != VERB_GOES || !str_is(str_of(p->phrase.words), "crosses lane") ||
        p->s->place || p->s->subject.count != 1 || !above_stands(p->c, &p->s->subject.at[0], &at) ||
        (at.side != SIDE_LEFT && at.side != SIDE_RIGHT)) {
        return;
    }
    struct place place = {.kind = PLACE_SPOT, .spot = at.spot, .side = SIDE_OPPOSITE};
    take_place(p, place, "the same spot on the other side");
}

/* 3 fills: where nobody stands any more, the spot of the one who has just gone. */
static void fills_behind(struct predicate *p)
{
    if (p->s->verb == VERB_FILLS && !p->s->place && p->s->subject.count == 1 &&
        p->s->path == PATH_NONE) {
        p->s->verb = VERB_REPLACES;
    }
}

/* 5 dives to the ball side, seals on the left side: to the block there, never out to a corner. */
void end_inside(struct predicate *p)
{
    const struct place *place = p->s->place;
    bool seals = p->s->verb == VERB_SEALS || p->s->verb == VERB_POSTS_UP;
    if (!place || place->kind != PLACE_SIDE ||
        !(seals || str_starts(str_of(p->phrase.words), "dives"))) {
        return;
    }
    struct place block = *place;
    block.kind = PLACE_SPOT;
    block.spot = SPOT_BLOCK;
    p->s->place = place_keep(p->c->arena, block);
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_PLACE_TAKEN, block.span,
                                 "no spot is written: the block there was taken");
    diag_help(p->c->diags, diag, "to go elsewhere, name it: `%.*s to left elbow`",
              STR_ARG(predicate_begun(p)));
}

void end_unsaid(struct predicate *p)
{
    fills_behind(p);
    place_unsaid(p);
    crosses(p);
}
