/* SPDX-License-Identifier: MIT */
/* pass_by: what is only passed by on the way, a defender, a zone, the rim: words that move nobody
 * elsewhere, and the dribbles that are taken on it. */
#include "language/words/grammar.h"

/* What is passed by, and moves nobody elsewhere. */
static const char *const passes_by[] = {"up and down",
                                        "in and out",
                                        "out and back",
                                        "down and back",
                                        "up and back",
                                        "in front of her defender",
                                        "in front of his defender",
                                        "across face of his man",
                                        "on her right shoulder",
                                        "on his right shoulder",
                                        "across front of zone",
                                        "on her left shoulder",
                                        "on his left shoulder",
                                        "sideline to sideline",
                                        "across face of zone",
                                        "across front of rim",
                                        "behind back of zone",
                                        "in front of defense",
                                        "in front of her man",
                                        "in front of his man",
                                        "from opposite side",
                                        "from where she is",
                                        "in behind defense",
                                        "on her right side",
                                        "on his right side",
                                        "past his defender",
                                        "underneath basket",
                                        "underneath hoop",
                                        "behind defenders",
                                        "corner to corner",
                                        "from strong side",
                                        "from where he is",
                                        "in front of zone",
                                        "off her shoulder",
                                        "off his shoulder",
                                        "on baseline side",
                                        "on her left side",
                                        "on his left side",
                                        "on his right hip",
                                        "across his face",
                                        "from other side",
                                        "from underneath",
                                        "going other way",
                                        "on his left hip",
                                        "through defense",
                                        "through traffic",
                                        "around her man",
                                        "around his man",
                                        "around outside",
                                        "behind defence",
                                        "behind defense",
                                        "behind her man",
                                        "behind his man",
                                        "block to block",
                                        "elbow to elbow",
                                        "from back side",
                                        "from ball side",
                                        "from help side",
                                        "from weak side",
                                        "going baseline",
                                        "going downhill",
                                        "in behind zone",
                                        "on middle side",
                                        "underneath rim",
                                        "baseline side",
                                        "behind cutter",
                                        "behind roller",
                                        "from baseline",
                                        "from far side",
                                        "with baseline",
                                        "behind drive",
                                        "from outside",
                                        "going middle",
                                        "on high side",
                                        "out of paint",
                                        "out of there",
                                        "past her man",
                                        "past his man",
                                        "side to side",
                                        "through zone",
                                        "under basket",
                                        "across face",
                                        "around horn",
                                        "around zone",
                                        "behind ball",
                                        "behind play",
                                        "behind roll",
                                        "behind them",
                                        "behind zone",
                                        "from behind",
                                        "from inside",
                                        "going right",
                                        "middle side",
                                        "off her hip",
                                        "off her man",
                                        "off his hip",
                                        "off his man",
                                        "on low side",
                                        "on top side",
                                        "out of lane",
                                        "out of post",
                                        "behind cut",
                                        "behind her",
                                        "behind him",
                                        "from above",
                                        "from below",
                                        "going left",
                                        "out of key",
                                        "out of way",
                                        "top to rim",
                                        "underneath",
                                        "behind it",
                                        "high side",
                                        "other way",
                                        "under rim",
                                        "under hoop",
                                        "low side",
                                        "over top",
                                        "top side",
                                        "in back",
                                        NULL};
static const char *const dribbles[] = {"one dribble",
                                       "two dribbles",
                                       "three dribbles",
                                       "one hard dribble",
                                       "two hard dribbles",
                                       "off dribble",
                                       "off one dribble",
                                       "off two dribbles",
                                       "on dribble",
                                       "off bounce",
                                       "with one dribble",
                                       "with two dribbles",
                                       "with two hard dribbles",
                                       "in one dribble",
                                       "in two dribbles",
                                       "with a hard dribble",
                                       NULL};

/* Somewhere to go, or for whom, is said still. */
bool where_follows(const struct cursor *c)
{
    return word_among(c, place_words) || word_among(c, particle_words) || word_is(c, 0, "from") ||
           word_is(c, 0, "for") || word_is(c, 0, "off");
}

const char *const way_end_words[] = {"comes out", "come out", "pops out", "pop out",  "ends up",
                                     "end up",    "gets out", "goes out", "winds up", "lands",
                                     "out",       "stops",    NULL};

/* along the baseline, behind the zone, and comes out: the end is said still. */
bool way_goes_on(const struct cursor *c)
{
    struct cursor trial = *c;
    while (take_among(&trial, passes_by)) {
    }
    bool more = trial.at > c->at && where_follows(&trial);
    take_mark(&trial, ',');
    take_words(&trial, "and");
    return where_follows(c) || more || word_among(&trial, way_end_words);
}

/* Nothing more is said of where to. */
bool way_ends_here(const struct cursor *c)
{
    static const char *const behind[] = {"past", "around", "until", "till", "til", "before", NULL};
    return part_ends(c) || word_among(c, behind) || clause_is(c);
}

/* left, high: which way, right before where to. 1: taken, 0: nothing of that. */
int toward_side(struct predicate *p)
{
    static const char *const sides[] = {"left",       "right",  "high",  "low",    "wide",
                                        "baseline",   "middle", "under", "around", "behind",
                                        "underneath", "tight",  NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    if (p->s->place || !take_among(&trial, sides) || !take_among(&trial, place_words)) {
        return 0;
    }
    const struct token *to = trial.at - 1;
    const struct place *place = spot_here(&trial);
    bool sideless = place && place->kind == PLACE_SPOT && spot_needs_side(place->spot) &&
                    place->side == SIDE_NONE;
    if (!place || (sideless && (word_is(c, 0, "left") || word_is(c, 0, "right")))) {
        return 0; /* right to the corner: which one is meant */
    }
    const struct token *from = past_fillers(c->at, c->end);
    int runs = drive_runs(p, from, from + 1, p->s->verb != VERB_DRIVES);
    if (runs != 0) {
        return runs;
    }
    cursor_take(c, c->at, to);
    note_way(p, cursor_taken(c, from));
    return 1;
}

/* under the basket: no way that passes by, where nothing follows. */
static bool under_rim(const struct cursor *c, const struct token *from)
{
    static const char *const unders[] = {
        "under basket",   "under rim",       "under hoop", "underneath basket",
        "underneath rim", "underneath hoop", NULL};
    struct cursor said = *c;
    said.at = from;
    return word_among(&said, unders);
}

int passing_by(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    struct cursor trial = *c;
    enum verb_task task = verb_row(p->s->verb)->task;
    bool ball = task == VERB_CARRY || task == VERB_USE || p->s->verb == VERB_GOES;
    static const char *const overs[] = {
        "over top",   "over defense",  "over her defender", "over his defender",
        "over front", "over her head", "over his head",     NULL};
    if (p->s->pass == PASS_LOB && task == VERB_PASS && take_among(c, overs)) {
        return 1; /* what a lob does */
    }
    if (task == VERB_PASS || task == VERB_SHOOT || task == VERB_GUARD) {
        return 0; /* over the top: how high a pass is */
    }
    bool taken = take_among(&trial, passes_by) || (ball && take_among(&trial, dribbles));
    /* the baseline side of 5 is a place; the top side block another */
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool more = taken && (word_is(&trial, 0, "of") || person_read(&trial, &who));
    cursor_back(c, mark);
    if (!taken || more) {
        return 0;
    }
    int runs =
        drive_runs(p, past_fillers(from, c->end), trial.at, p->s->place || where_follows(&trial));
    if (runs != 0) {
        return runs;
    }
    c->at = trial.at;
    if (under_rim(c, from) && !p->s->place && stop_is(c)) { /* and it ends there */
        p->phrase.to = SPOT_RIM;
        return 1;
    }
    note_way(p, cursor_taken(c, from));
    return 1;
}

/* off x5, past 5's defender, in front of x3: a defender is gone by, and stands for no way. */
int by_defender(struct predicate *p)
{
    static const char *const leads[] = {"in front of", "off of", "off",  "past", "behind",
                                        "around",      "by",     "over", NULL};
    struct cursor *c = p->c;
    const struct token *from = c->at;
    struct cursor trial = *c;
    struct who who;
    if (verb_row(p->s->verb)->task != VERB_MOVE || !take_among(&trial, leads) ||
        !defender_read(&trial, &who)) {
        return 0;
    }
    c->at = trial.at;
    if (p->s->verb == VERB_CUTS && !p->s->place && str_is(from->text, "behind")) {
        p->s->verb = VERB_BACK_CUTS; /* cuts behind x2 */
        return 1;
    }
    note_way(p, cursor_taken(c, from));
    return 1;
}
