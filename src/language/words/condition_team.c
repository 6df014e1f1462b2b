/* SPDX-License-Identifier: MIT */
/* condition_team: what a read asks of the defense without naming who: they switch, he trails, on a
 * trap. Whose defenders that are is known from the screen above, or from whom they do it to. */
#include "language/words/condition.h"

/* ---- they switch, he trails, on a trap: whose defender is known from the screen above ---- */

enum part { PART_NONE, PART_USER, PART_SCREENER, PART_BOTH };

/* Whose defender does this at a screen. */
static enum part part_of(enum verb verb)
{
    switch (verb) {
    case VERB_GOES_UNDER:
    case VERB_GOES_OVER:
    case VERB_TRAILS:
    case VERB_OVERPLAYS:
        return PART_USER;
    case VERB_HEDGES:
    case VERB_DROPS:
    case VERB_ICES:
        return PART_SCREENER;
    case VERB_SWITCHES:
    case VERB_TRAPS:
        return PART_BOTH;
    default:
        return PART_NONE;
    }
}

/* At the latest screen above; false: there is none, or this is not done at a screen. */
static bool at_screen(const struct cursor *c, enum verb verb, struct span span,
                      struct condition *out)
{
    struct who user, screener;
    enum part part = part_of(verb);
    if (part == PART_NONE || !above_last_screen(c, &user, &screener)) {
        return false;
    }
    out->kind = part == PART_BOTH ? COND_BOTH : COND_VERB;
    out->verb = verb;
    out->who = above_defender_of(c, part == PART_SCREENER ? &screener : &user, span);
    out->other =
        part == PART_BOTH ? above_defender_of(c, &screener, span) : (struct who){.kind = WHO_NONE};
    out->object = verb == VERB_TRAPS ? user : (struct who){.kind = WHO_NONE};
    return true;
}

/* they deny 2, they're fronting 4: what his own defender does. */
static bool they_on(const struct cursor *at, enum verb verb, struct cursor *trial,
                    struct condition *out)
{
    static const enum verb on_one[] = {VERB_DENIES, VERB_OVERPLAYS,  VERB_FRONTS,   VERB_SAGS,
                                       VERB_TRAILS, VERB_GOES_UNDER, VERB_GOES_OVER};
    struct cursor whom = *trial;
    struct cursor_mark mark = cursor_mark(trial);
    struct who who;
    bool one = false;
    for (size_t i = 0; i < sizeof on_one / sizeof *on_one; i++) {
        one = one || on_one[i] == verb;
    }
    if (!one || !person_read(&whom, &who) || who.kind != WHO_PLAYER || verb_begins(&whom)) {
        cursor_back(&whom, mark);
        return false;
    }
    out->kind = COND_VERB;
    out->verb = verb;
    out->who = above_defender_of(at, &who, who.span);
    out->other = (struct who){.kind = WHO_NONE};
    trial->at = whom.at;
    return true;
}

bool they_read(struct cursor *c, struct condition *out)
{
    static const char *const words[] = {"they",
                                        "he",
                                        "she",
                                        "the defense",
                                        "the defender",
                                        "their big",
                                        "the big",
                                        "their guard",
                                        "both",
                                        "the defenders",
                                        "two",
                                        "on-ball defender",
                                        "the screener's man",
                                        "ball defender",
                                        NULL};
    static const char *const ups[] = {"steps up",  "comes up",  "is up",
                                      "steps out", "comes out", NULL};
    static const struct entry together[] = {{"double", VERB_TRAPS},
                                            {"double it", VERB_TRAPS},
                                            {"double team", VERB_TRAPS},
                                            {"go with the ball", VERB_TRAPS},
                                            {"go to the ball", VERB_TRAPS},
                                            {"go to it", VERB_TRAPS},
                                            {"send two", VERB_TRAPS},
                                            {"send two to the ball", VERB_TRAPS},
                                            {"bring two", VERB_TRAPS},
                                            {"put two on the ball", VERB_TRAPS},
                                            {NULL, 0}};
    static const char *const tails[] = {"it",    "the screen",       "the ball screen", "him",
                                        "her",   "the ball handler", "the ball",        "the pick",
                                        "on it", "on the screen",    "everything",      NULL};
    struct cursor trial = *c;
    struct phrase phrase;
    const struct token *from = c->at;
    bool big = word_is(c, 0, "big") || word_is(c, 1, "big");
    if (!take_among(&trial, words)) {
        return false;
    }
    int both = take_entry(&trial, together);
    bool shows = both < 0 && big && take_among(&trial, ups); /* to where the screen is */
    if (both < 0 && !shows && !guard_verb_read(&trial, &phrase)) {
        return false;
    }
    enum verb verb = both >= 0 ? (enum verb)both : shows ? VERB_HEDGES : phrase.verb;
    if (token_is_word(from, "they") && both < 0 && !shows && they_on(c, verb, &trial, out)) {
        c->at = trial.at;
        return true;
    }
    condition_tail(&trial, NULL);
    take_among(&trial, tails);
    bool one = word_is(c, 0, "he") || word_is(c, 0, "she");
    if ((one && part_of(verb) == PART_BOTH) || /* two do it: which one is he? */
        !at_screen(c, verb, cursor_taken(&trial, from), out)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static const struct entry coverages[] = {{"switch", VERB_SWITCHES},
                                         {"top lock", VERB_OVERPLAYS},
                                         {"trap", VERB_TRAPS},
                                         {"blitz", VERB_TRAPS},
                                         {"double", VERB_DOUBLES},
                                         {"double-team", VERB_DOUBLES},
                                         {"hedge", VERB_HEDGES},
                                         {"hard hedge", VERB_HEDGES},
                                         {"show", VERB_HEDGES},
                                         {"hard show", VERB_HEDGES},
                                         {"ice", VERB_ICES},
                                         {"drop", VERB_DROPS},
                                         {"drop coverage", VERB_DROPS},
                                         {"under", VERB_GOES_UNDER},
                                         {"trail", VERB_TRAILS},
                                         {"chase", VERB_TRAILS},
                                         {"help", VERB_HELPS},
                                         {"overplay", VERB_DENIES},
                                         {"denial", VERB_DENIES},
                                         {NULL, 0}};

/* a trap by x1 and x5, the help from x4, an overplay on 2, a switch. */
bool coverage_read(struct cursor *c, struct condition *out)
{
    static const char *const by[] = {"by", "from", "of", "comes from", NULL};
    static const char *const comes[] = {"comes", "is on", "is coming", NULL};
    struct cursor trial = *c;
    const struct token *from = c->at;
    struct who who;
    int verb = take_entry(&trial, coverages);
    if (verb < 0) {
        return false;
    }
    out->verb = (enum verb)verb;
    struct cursor behind = trial;
    if (verb == VERB_DENIES) {
        out->kind = COND_DENIED;
        bool whom = take_words(&behind, "on") && person_read(&behind, &out->who) &&
                    out->who.kind == WHO_PLAYER;
        c->at = whom ? behind.at : c->at;
        c->refusals = behind.refusals;
        return whom;
    }
    if (take_among(&behind, by) && person_read(&behind, &who) && who_defends(&who)) {
        out->kind = COND_VERB;
        out->who = who;
        if (take_words(&behind, "and") && person_read(&behind, &out->other) &&
            who_defends(&out->other)) {
            out->kind = COND_BOTH;
        } else {
            out->other = (struct who){.kind = WHO_NONE};
        }
        if (take_words(&behind, "on") &&
            !person_read(&behind, out->kind == COND_BOTH ? &out->object : &out->other)) {
            return false;
        }
        struct who holder;
        if (out->kind == COND_VERB && out->verb == VERB_DOUBLES && out->other.kind == WHO_NONE &&
            above_holder(c, &holder)) {
            out->other = holder; /* the double comes from x2: whoever has the ball */
        }
        c->at = behind.at;
        c->refusals = behind.refusals;
        return out->verb != VERB_SWITCHES || out->kind == COND_BOTH;
    }
    take_among(&trial, comes);
    if (!at_screen(c, out->verb, cursor_taken(&trial, from), out)) {
        return false;
    }
    c->at = trial.at;
    return true;
}
