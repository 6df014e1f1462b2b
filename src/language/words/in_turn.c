/* SPDX-License-Identifier: MIT */
/* in_turn: two who are used one behind the other: off 4 and then off 5, first by 5 and then by 4,
 * over the top of 4 and 5; and two who screen so: 5 and then 4 screen. Ways of plain.c: see
 * put_plain.h. */
#include "language/words/put_plain.h"

/* ---- off 4 and then off 5 ---- */

struct two {
    const struct token *first, *second, *end;
};

static bool take_by(struct cursor *c, bool *over)
{
    static const char *const overs[] = {"over top of", "over tops of", "up over top of", NULL};
    static const char *const bys[] = {"off of", "off", "by", "around", "past", NULL};
    bool is = take_among(c, overs);
    *over = *over || is;
    return is || take_among(c, bys);
}

static const struct token *take_player(struct cursor *c)
{
    const struct token *at = cursor_next(c);
    if (!at || !attacker_at(at, c->end)) {
        return NULL;
    }
    c->at = at + 1;
    return at;
}

/* Both of them, where the words say that one comes before the other. */
static bool two_read(struct cursor *c, struct two *out)
{
    static const char *const thens[] = {"and then", "then", "and after that", NULL};
    static const char *const lasts[] = {"second", "next", "last", NULL};
    bool turn = take_words(c, "first");
    if (!take_by(c, &turn)) {
        return false;
    }
    turn = take_words(c, "first") || turn;
    out->first = take_player(c);
    turn = take_words(c, "first") || turn;
    take_mark(c, ',');
    bool then = take_among(c, thens), joined = then || take_words(c, "and");
    bool again = joined && take_by(c, &turn);
    out->second = joined ? take_player(c) : NULL;
    take_among(c, lasts);
    out->end = c->at;
    return out->first && out->second && out->first->number != out->second->number &&
           (turn || then || again);
}

/* and ends on the left wing, coming out in the corner: where it leads; NULL: not said so. */
static const struct token *ends_at(const struct cursor *line, const struct token *at)
{
    static const char *const ends[] = {
        "ends",      "ends up",   "finishes", "comes out", "comes up", "coming out", "ending",
        "ending up", "finishing", "gets out", "end",       "come out", "pops out",   NULL};
    static const char *const ats[] = {"on", "at", "in", "to", NULL};
    struct cursor trial = line_look(line, at);
    const struct place *place;
    take_mark(&trial, ',');
    take_words(&trial, "and");
    bool end = take_among(&trial, ends);
    take_particles(&trial);
    const struct token *spot = end && take_among(&trial, ats) ? trial.at : NULL;
    spot = spot ? past_fillers(spot, line->end) : NULL;
    return spot && spot_end(line, spot, &place) ? spot : NULL;
}

static const struct token *put_two(const struct cursor *line, const struct token *at,
                                   const struct two *two, struct recast *out)
{
    struct cursor here = line_look(line, at);
    const struct token *spot = ends_at(line, two->end);
    recast_word(&here, out, "off");
    recast_number(&here, out, (int)two->first->number);
    recast_word(&here, out, "and");
    recast_number(&here, out, (int)two->second->number);
    if (spot) {
        recast_word(&here, out, "to");
    }
    return spot ? spot : two->end;
}

/* runs up over the top of 4 and then 5: comes off both. */
static const struct token *off_in_turn(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const going[] = {"goes", "runs", "comes", "rubs",  "breaks", "sprints",
                                        "cuts", "run",  "go",    "loops", "moves",  NULL};
    struct cursor trial = line_look(line, at);
    struct two two;
    if (at == line->at) {
        return NULL;
    }
    bool goes = take_among(&trial, going);
    if (goes) {
        take_particles(&trial);
    }
    if (!two_read(&trial, &two)) {
        return NULL;
    }
    if (goes) {
        struct cursor here = line_look(line, at);
        recast_word(&here, out, "comes");
    }
    return put_two(line, at, &two, out);
}

/* 5 and then 4 screen: a stagger, in that order. */
static const struct token *screen_in_turn(const struct cursor *line, const struct token *at,
                                          struct recast *out)
{
    struct cursor trial = line_look(line, at);
    struct phrase phrase;
    const struct token *first = take_player(&trial);
    if (!first || !clause_begins_at(line, at) || !take_words(&trial, "and then")) {
        return NULL;
    }
    const struct token *second = take_player(&trial), *end = trial.at;
    static const char *const staggers[] = {"stagger", "pick", "screen", NULL};
    bool screens =
        second && (word_among(&trial, staggers) || (phrase_read(&trial, FOR_ATTACKERS, &phrase) &&
                                                    verb_row(phrase.verb)->task == VERB_SCREEN));
    if (!screens) {
        return NULL;
    }
    recast_copy(line, out, first, first + 1);
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "and");
    recast_copy(line, out, second, second + 1);
    return end;
}

const struct token *in_turn_put(const struct cursor *line, const struct token *at,
                                struct recast *out)
{
    static plain_way *const ways[] = {screen_in_turn, off_in_turn, NULL};
    return first_put(ways, line, at, out);
}
