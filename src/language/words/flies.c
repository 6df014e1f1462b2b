/* SPDX-License-Identifier: MIT */
/* flies: how a pass flies and what it goes by: on the bounce, over the top, with a skip pass, right
 * back, out of the trap, for the lob. */
#include "language/words/grammar.h"

/* passes to 3 on the far side: where that player is already. */
static bool on_side(struct predicate *p)
{
    static const char *const sides[] = {"on far side",   "on near side",     "on that side",
                                        "on this side",  "on his side",      "on her side",
                                        "on other side", "on the same side", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    if (!take_among(&trial, sides) ||
        !(cursor_done(&trial) || cursor_next(&trial)->kind == TOKEN_MARK ||
          word_is(&trial, 0, "and") || word_is(&trial, 0, "then"))) {
        return false;
    }
    c->at = trial.at;
    struct span span = cursor_taken(c, from);
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                 "`%.*s` was left out: the pass finds its receiver", STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "to have it caught elsewhere, name the spot: `at left wing`");
    return true;
}

/* feeds the post from the wing: where the passer stands. */
static bool passed_from(struct predicate *p)
{
    static const char *const froms[] = {"from", NULL};
    const struct token *from = p->c->at;
    bool found = spot_behind(p->c, froms) != NULL;
    if (found) {
        note_left_out(p->c, cursor_taken(p->c, from));
    }
    return found;
}

/* Nothing more is said of the pass. */
static bool pass_ends(const struct cursor *c)
{
    return part_ends(c) || word_is(c, 0, "for") || clause_is(c);
}

/* Said so, `high` is how the ball flies, and not where to. */
static bool thrown(const struct phrase *phrase)
{
    return str_starts(str_of(phrase->words), "throws") ||
           str_starts(str_of(phrase->words), "tosses");
}

/* over x1, out of the trap: what the pass goes by, which is left out. */
static bool gone_by(struct predicate *p)
{
    static const char *const outs[] = {
        "out of double team", "out of trap",     "out of double", "out of post",      "out of lane",
        "out of paint",       "out of pressure", "over defense",  "over zone",        "over trap",
        "across court",       "across floor",    "off dribble",   "through the trap", NULL};
    static const char *const past[] = {"over", "past", "around", "by", "under", NULL};
    struct cursor trial = *p->c;
    struct who who;
    const struct token *from = p->c->at;
    if (!p->c->speech ||
        (!take_among(&trial, outs) && !(take_among(&trial, past) && defender_read(&trial, &who)))) {
        return false;
    }
    p->c->at = trial.at;
    note_left_out(p->c, cursor_taken(p->c, from));
    return true;
}

/* on the bounce, with a bounce pass: a PASS_…; -1: nothing of that. */
static int flies_how(struct cursor *c)
{
    static const struct entry ways[] = {{"on the bounce", PASS_BOUNCE},
                                        {"off the bounce", PASS_BOUNCE},
                                        {"with a bounce", PASS_BOUNCE},
                                        {"over the top", PASS_LOB},
                                        {"over the defense", PASS_LOB},
                                        {"over his head", PASS_LOB},
                                        {"with a lob", PASS_LOB},
                                        {"with a skip", PASS_SKIP},
                                        {NULL, 0}};
    int way = take_entry(c, ways);
    if (way >= 0) {
        take_words(c, "pass"); /* with a bounce pass */
    }
    return way;
}

/* with a quick skip pass: as flies_how. */
static int flies_with(struct cursor *c)
{
    static const char *const adjectives[] = {"quick", "hard",   "simple", "good", "nice",
                                             "sharp", "crisp",  "soft",   "big",  "little",
                                             "long",  "strong", NULL};
    struct phrase phrase;
    if (!take_words(c, "with")) {
        return -1;
    }
    while (take_among(c, adjectives)) {
    }
    return phrase_noun_read(c, &phrase) && phrase.verb == VERB_PASSES ? (int)phrase.pass : -1;
}

/* throws it right back, lobs it in; toss it in high to 5: as flies_how. */
static int flies_where(const struct predicate *p, struct cursor *c)
{
    static const char *const leads[] = {
        "right back", "straight back", "back out", "back in", "back", "in",    "inside",
        "over",       "up there",      "right in", "up high", "high", "there", "ahead",
        "it over",    "long",          "it long",  "deep",    NULL};
    bool high = false, to = p->s->object.kind == WHO_NONE;
    if (!c->speech || !word_among(c, leads)) {
        return -1;
    }
    do {
        high = high || word_is(c, 0, "high") || word_is(c, 1, "high");
    } while (take_among(c, leads));
    to = to && word_is(c, 0, "to");
    if (!pass_ends(c) && !to) {
        return -1;
    }
    return high && to && thrown(&p->phrase) ? PASS_LOB : (int)p->s->pass;
}

/* on the bounce, over the top, with a chest pass; back, right back, where it came from. */
bool how_it_flies(struct predicate *p)
{
    struct cursor trial = *p->c;
    bool whom = p->s->object.kind != WHO_NONE;
    if (p->s->verb != VERB_PASSES) {
        return false;
    }
    if (gone_by(p)) {
        return true;
    }
    int way = flies_how(&trial);
    if (way < 0 && ((p->s->object.kind == WHO_PLAYER && on_side(p)) ||
                    (p->c->speech && whom && passed_from(p)))) {
        return true;
    }
    way = way < 0 ? flies_with(&trial) : way;
    if (way < 0 && whom && take_words(&trial, "back") && !word_among(&trial, place_words)) {
        way = (int)p->s->pass;
    }
    way = way < 0 ? flies_where(p, &trial) : way;
    if (way < 0) {
        return false;
    }
    p->s->pass = p->s->pass == PASS_PLAIN ? (enum pass_kind)way : p->s->pass;
    p->c->at = trial.at;
    return true;
}

/* throws it up to her at the rim for the lob: how it flies. */
int for_lob(struct predicate *p)
{
    static const char *const lobs[] = {"for lob", "for a lob",      "for alley-oop",
                                       "for oop", "for a lob dunk", NULL};
    struct cursor trial = *p->c;
    if (!p->c->speech || p->s->verb != VERB_PASSES || p->s->pass != PASS_PLAIN ||
        p->s->object.kind != WHO_PLAYER || !take_among(&trial, lobs) || !part_ends(&trial)) {
        return 0;
    }
    p->s->pass = PASS_LOB;
    p->c->at = trial.at;
    return 1;
}
