/* SPDX-License-Identifier: MIT */
/* ends: where a movement ends, said behind it: the same spot once more, so far behind the line, by
 * a second verb that only says that; and what `far` means. */
#include "language/words/grammar.h"

static bool left_or_right(const struct place *place)
{
    return place->side == SIDE_LEFT || place->side == SIDE_RIGHT;
}

/* the ball side corner of the lane, the right elbow: the spot once more, with its side or without;
 * but not left corner, right corner. */
int same_place_again(struct predicate *p)
{
    struct cursor trial = *p->c;
    const struct place *said = p->s->place;
    const struct place *again = said ? spot_here(&trial) : NULL;
    if (!again || said->kind != PLACE_SPOT || again->kind != PLACE_SPOT ||
        (!stop_is(&trial) && !mark_is(&trial, ','))) {
        return 0;
    }
    bool line = said->spot == SPOT_FREE_THROW_LINE && again->spot == SPOT_NAIL;
    bool side = said->side == SIDE_NONE || again->side == SIDE_NONE || said->side == again->side ||
                (left_or_right(again) && !left_or_right(said));
    if ((said->spot != again->spot && !line) || !side) {
        return said_twice(p, again->span, "the place");
    }
    if (!p->c->speech) {
        return 0;
    }
    p->c->at = trial.at;
    if (line || again->side != SIDE_NONE) {
        p->s->place = again;
    }
    return 1;
}

/* left slot, 1 metre behind the 3 point line: so far outside a spot that stands a foot behind it.
 */
int behind_line(struct predicate *p)
{
    static const char *const behinds[] = {"behind", "outside", "beyond", "off", "back of", NULL};
    static const char *const lines[] = {"3 point line", "three-point line", "arc", "line",
                                        "3-point arc",  "the three",        NULL};
    struct cursor trial = *p->c;
    const struct place *at = p->s->place;
    struct place place = {.kind = PLACE_OFFSET, .direction = OUTSIDE, .a = at};
    bool perimeter = at && at->kind == PLACE_SPOT &&
                     (at->spot == SPOT_TOP || at->spot == SPOT_WING || at->spot == SPOT_SLOT ||
                      at->spot == SPOT_CORNER);
    const struct token *from = p->c->at;
    if (!p->c->speech || !perimeter || !take_measure(&trial, false, &place.length) ||
        !take_among(&trial, behinds) || !take_among(&trial, lines)) {
        return 0;
    }
    p->c->at = trial.at;
    struct span span = cursor_taken(p->c, from);
    p->s->place = place_new(p->c, place, from);
    struct diag *diag =
        diag_add(p->c->diags, DIAG_TEXT_LENGTH_TAKEN, span,
                 "`%.*s` was counted from the spot, which is behind the line already",
                 STR_ARG(cursor_text(p->c, span)));
    diag_help(p->c->diags, diag, "write the distance from the spot: `2 ft outside left slot`");
    return 1;
}

/* cuts to the rim but stops at the block: as far as that, on the side that was said. */
static bool stops_short(struct predicate *p)
{
    static const char *const stops[] = {"stops short", "stop short", "stops", "stop", NULL};
    struct cursor trial = *p->c;
    const struct place *was = p->s->place;
    enum verb_task task = verb_row(p->s->verb)->task;
    if (!was || was->kind != PLACE_SPOT || (task != VERB_CARRY && task != VERB_MOVE)) {
        return false;
    }
    take_mark(&trial, ',');
    bool joined = take_words(&trial, "but") || take_words(&trial, "and");
    const struct place *spot =
        joined && take_among(&trial, stops) ? spot_behind(&trial, place_words) : NULL;
    if (!spot || spot->kind != PLACE_SPOT) {
        return false;
    }
    bool sided = spot->side == SIDE_NONE && spot_takes_side(spot->spot) && left_or_right(was);
    p->s->place = sided ? place_sided(p->c, spot, was->side) : spot;
    p->c->at = trial.at;
    return true;
}

/* brings it down the right side and stops at the wing: that one. */
static bool side_ends(struct predicate *p)
{
    static const char *const ends[] = {"stops",    "stop",     "ends up", "end up",  "finishes",
                                       "finish",   "pulls up", "pull up", "settles", "lands",
                                       "holds up", "ends",     NULL};
    struct cursor trial = *p->c;
    const struct place *side = p->s->place;
    enum verb_task task = verb_row(p->s->verb)->task;
    if (!side || side->kind != PLACE_SIDE || !left_or_right(side) ||
        (task != VERB_CARRY && task != VERB_MOVE)) {
        return false;
    }
    take_mark(&trial, ',');
    take_words(&trial, "and");
    if (!take_among(&trial, ends)) {
        return false;
    }
    take_among(&trial, place_words);
    const struct place *spot = spot_here(&trial);
    if (!spot || spot->kind != PLACE_SPOT || !spot_takes_side(spot->spot) ||
        (spot->side != SIDE_NONE && spot->side != side->side)) {
        return false;
    }
    p->s->place = place_sided(p->c, spot, side->side);
    p->c->at = trial.at;
    return true;
}

/* loops under the basket and comes out on the other wing: the second verb only says where the way
 * ends. */
static bool way_ends(struct predicate *p)
{
    struct cursor trial = *p->c;
    if (!p->way_said || p->s->place || !p->c->speech || !verb_takes_place(p->s->verb)) {
        return false;
    }
    take_mark(&trial, ',');
    bool joined = take_words(&trial, "and");
    joined = take_words(&trial, "then") || joined;
    if (!joined || !take_among(&trial, way_end_words) || !leg_follows(&trial)) {
        return false;
    }
    p->c->at = trial.at;
    return true;
}

/* beats his man and drives to the rim, turns the corner and gets downhill: one drive, said twice.
 */
static bool drives_on(struct predicate *p)
{
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    struct phrase phrase;
    if ((s->verb != VERB_DRIVES && s->verb != VERB_DRIVES_OFF) || s->place ||
        s->drive != DRIVE_FREE) {
        return false;
    }
    static const char *const ends[] = {"ends up", "stops", "gets", "winds up",
                                       "lands",   "stop",  "get",  NULL};
    take_mark(&trial, ',');
    if (!take_words(&trial, "and")) {
        return false;
    }
    struct cursor end = trial; /* drives and stops at the elbow: where the drive ends */
    if (take_among(&end, ends) && leg_follows(&end) &&
        !word_among(&end, (const char *const[]){"back", "away", NULL})) {
        p->c->at = end.at;
        return true;
    }
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.verb != VERB_DRIVES) {
        return false;
    }
    p->c->at = trial.at;
    return true;
}

bool ends_said(struct predicate *p)
{
    return drives_on(p) || stops_short(p) || side_ends(p) || way_ends(p);
}

/* drifts to the far corner: away from the ball, wherever he is. */
static bool drifts_far(struct predicate *p)
{
    const struct place *place = p->s->place;
    struct str words = cursor_text(p->c, place->span);
    if (p->s->verb != VERB_DRIFTS || place->side != SIDE_OPPOSITE ||
        !(str_starts(words, "far") || str_starts(words, "the far"))) {
        return false;
    }
    p->s->place = place_sided(p->c, place, SIDE_WEAK);
    return true;
}

/* stays in the far corner, is skipped to 3 on the far wing: far from the ball, and not from where
 * he is. */
void far_from_ball(struct predicate *p)
{
    const struct place *place = p->s->place;
    bool caught = verb_row(p->s->verb)->task == VERB_PASS && p->s->object.kind == WHO_PLAYER;
    if (!place || place->kind != PLACE_SPOT || drifts_far(p)) {
        return;
    }
    if ((p->s->verb != VERB_STAYS && !caught) || place->side != SIDE_OPPOSITE) {
        return;
    }
    p->s->place = place_sided(p->c, place, SIDE_NONE);
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_WORD_DROPPED, place->span,
                                 "`%.*s` is far from the ball: his own side was taken",
                                 STR_ARG(cursor_text(p->c, place->span)));
    diag_help(p->c->diags, diag, "name the side to be sure: `%s`",
              caught ? "at left wing" : "stays at left corner");
}
