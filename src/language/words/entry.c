/* SPDX-License-Identifier: MIT */
/* entry: the ball on its way in, as it is called: `dribble entry right`, `left hand drive by 1`,
 * `jumper by 2 at the elbow`, `3 along the baseline off 5 to the corner`. Rules of recast_find. */
#include "language/words/speech.h"

static const struct entry sides[] = {{"left", SIDE_LEFT}, {"right", SIDE_RIGHT}, {NULL, 0}};

/* dribble entry right, dribble entry to the left wing: on the dribble to that wing. */
bool dribble_entry(const struct cursor *c, struct recast *r)
{
    static const char *const names[] = {"dribble entry", "dribble-entry", "dribble entries",
                                        "dribble enters", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    bool named = somebody_read(&trial, &who) && who.who.kind == WHO_PLAYER;
    if (!named) {
        trial = cursor_look(c);
    }
    if (!take_among(&trial, names)) {
        return false;
    }
    struct cursor behind = trial;
    struct somebody by;
    bool said_by = !named && take_words(&behind, "by") && somebody_read(&behind, &by);
    trial = said_by ? behind : trial;
    if (named) {
        recast_somebody(c, r, &who);
    } else if (said_by) {
        recast_acts(c, r, &by.who);
    } else if (!recast_holder(c, r)) {
        return false;
    }
    recast_word(c, r, "dribbles");
    r->to = trial.at;
    if (leg_follows(&trial)) {
        bool led = word_among(&trial, place_words);
        struct cursor spot = trial;
        take_among(&spot, place_words);
        if (spot_here(&spot)) { /* right wing; right is a side alone */
            if (!led) {
                recast_word(c, r, "to");
            }
            return true;
        }
    }
    take_words(&trial, "to");
    int side = take_entry(&trial, sides);
    if (side < 0 || !part_ends(&trial)) {
        return false;
    }
    recast_word(c, r, "to");
    recast_word(c, r, side == SIDE_LEFT ? "left" : "right");
    recast_word(c, r, "wing");
    r->to = trial.at;
    return true;
}

/* left hand drive by 1, baseline drive from 2: who drives, and by which side. */
bool drive_noun(const struct cursor *c, struct recast *r)
{
    static const char *const ways[] = {"left", "right", "baseline", "middle", NULL};
    static const char *const hands[] = {"hand", "handed", "side", NULL};
    static const char *const manners[] = {"hard", "strong", "quick", "straight line", NULL};
    static const char *const drives[] = {"drive", "penetration", "dribble drive", "attack", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    take_among(&trial, manners);
    const struct token *way = cursor_next(&trial);
    bool sided = take_among(&trial, ways);
    take_among(&trial, hands);
    if (!take_among(&trial, drives) || !(take_words(&trial, "by") || take_words(&trial, "from")) ||
        !somebody_read(&trial, &who)) {
        return false;
    }
    recast_somebody(c, r, &who);
    recast_word(c, r, "drives");
    if (sided) {
        recast_copy(c, r, way, way + 1);
    }
    r->to = trial.at;
    return true;
}

/* jumper by 2 at the elbow, floater from 3 in the lane: there first, then the shot. */
bool shot_noun(const struct cursor *c, struct recast *r)
{
    static const char *const shots[] = {
        "jumper",         "jump shot", "floater", "pull-up",   "runner",
        "pull-up jumper", "shot",      "hook",    "hook shot", NULL};
    static const char *const bys[] = {"by", "from", "for", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody who;
    if (!take_among(&trial, shots) || !take_among(&trial, bys) || !somebody_read(&trial, &who) ||
        who.who.kind == WHO_SPOT) {
        return false;
    }
    bool led = word_is(&trial, 0, "at") || word_is(&trial, 0, "in") || word_is(&trial, 0, "from");
    take_words(&trial, "from");
    take_among(&trial, place_words);
    const struct token *spot = trial.at;
    bool found = led && spot_read(&trial, true) != NULL;
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    if (!found) {
        return false;
    }
    recast_somebody(c, r, &who);
    recast_word(c, r, "dribbles");
    recast_word(c, r, "to");
    static const char *const dribbles[] = {"off two dribbles", "off one dribble",
                                           "off the dribble",  "off three dribbles",
                                           "off the bounce",   NULL};
    recast_copy(c, r, spot, end);
    trial.at = end;
    if (take_among(&trial, dribbles)) {
        r->told = cursor_taken(&trial, end);
        end = trial.at;
    }
    recast_word(c, r, "and");
    recast_word(c, r, "shoots");
    r->to = end;
    return true;
}

/* 1 gets two feet in the paint, gets a foot in the lane: he drives there. */
bool feet_in(const struct cursor *c, struct recast *r)
{
    static const char *const gets[] = {"gets", "get", "puts", "put", "plants", NULL};
    static const char *const feet[] = {"both feet", "a foot", "feet", "foot", NULL};
    static const char *const ins[] = {"in", "into", "inside", "down in", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody who;
    if (!somebody_read(&trial, &who) || !take_among(&trial, gets)) {
        return false;
    }
    const struct token *next = cursor_next(&trial);
    if (next && next->kind == TOKEN_MEASURE && next->unit == UNIT_FEET) { /* two feet */
        trial.at = next + 1;
    } else if (!take_among(&trial, feet)) {
        return false;
    }
    struct cursor in = trial;
    if (!take_among(&in, ins)) {
        return false;
    }
    const struct token *spot = in.at;
    bool lane = spot_read(&in, true) != NULL;
    cursor_back(&in, mark);
    if (!lane) {
        return false;
    }
    bool ball = above_holds(c, &who.who);
    recast_somebody(c, r, &who);
    recast_word(c, r, ball ? "drives" : "goes");
    recast_word(c, r, "to");
    r->to = spot;
    return true;
}

/* 3 along the baseline off 5 to the corner: a cut, or past a screen. */
bool along_leg(const struct cursor *c, struct recast *r)
{
    static const char *const ways[] = {"along", "across", "through", "down", "up", NULL};
    static const char *const lines[] = {"baseline",  "end line", "endline", "lane",
                                        "lane line", "key",      "paint",   NULL};
    static const char *const offs[] = {"off of", "off", "past", "around", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody who, other = {.from = NULL};
    if (!somebody_read(&trial, &who) || who.who.kind != WHO_PLAYER) {
        return false;
    }
    const struct token *way = trial.at;
    if (!take_among(&trial, ways) || !take_among(&trial, lines)) {
        return false;
    }
    const struct token *way_end = trial.at;
    struct cursor off = trial;
    if (take_among(&off, offs) && somebody_read(&off, &other) && other.who.kind == WHO_PLAYER) {
        trial = off;
    } else {
        other.from = NULL;
    }
    const struct token *to = trial.at;
    bool placed = take_words(&trial, "to") && spot_read(&trial, true);
    cursor_back(&trial, mark);
    if (!placed) {
        return false;
    }
    recast_somebody(c, r, &who);
    if (other.from) {
        recast_word(c, r, "comes");
        recast_word(c, r, "off");
        recast_somebody(c, r, &other);
        r->told = span_join(way->span, way_end[-1].span);
    } else {
        recast_word(c, r, "cuts");
        to = way;
    }
    r->to = to;
    return true;
}
