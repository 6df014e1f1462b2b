/* SPDX-License-Identifier: MIT */
/* condition: what a read asks of the defense. */
#include "language/words/grammar.h"

/* Where to: helps to left block. False: it was begun, and is no place. */
static bool place_part(struct cursor *c, struct condition *out)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(out->verb, slots);
    for (size_t i = 0; i < count; i++) {
        if (slots[i].letter == 'P' && take_str(c, slots[i].preposition)) {
            out->place = place_read(c, 0);
            return out->place != NULL;
        }
    }
    return true;
}

/* What a defender does: trails, is trailing, chasing over the top. */
static bool guard_verb_read(struct cursor *c, struct phrase *phrase)
{
    struct str said;
    struct cursor are = *c;
    if (take_words(&are, "are") && phrase_ing_here(&are, FOR_DEFENDERS, phrase, &said)) {
        c->at = are.at;
        return true;
    }
    return phrase_read(c, FOR_DEFENDERS, phrase) || phrase_ing_read(c, FOR_DEFENDERS, phrase) ||
           phrase_ing_here(c, FOR_DEFENDERS, phrase, &said);
}

/* helps off the corner, off 4: from where he stands, which is known. */
static void off_what(struct cursor *c, enum verb verb)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool off = verb == VERB_HELPS && take_words(&trial, "off") &&
               (person_read(&trial, &who) || spot_read(&trial, true));
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    c->at = off ? end : c->at;
}

static bool guard_read(struct cursor *c, struct condition *out, struct who *object)
{
    struct phrase phrase;
    if (!guard_verb_read(c, &phrase)) {
        return false;
    }
    out->verb = phrase.verb;
    event_object_read(c, &out->verb, &phrase, object);
    off_what(c, out->verb);
    return place_part(c, out);
}

/* What two defenders do together: x1 and x3 switch, x1 and x5 trap 1. */
static bool both_read(struct cursor *c, struct condition *out)
{
    return take_words(c, "and") && person_read(c, &out->other) && who_defends(&out->other) &&
           guard_read(c, out, &out->object);
}

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

/* By number where it is known who guards whom. */
static struct who defender_of(const struct cursor *c, const struct who *player, struct span span)
{
    for (int number = 1; number <= c->players; number++) {
        struct who defender = {.kind = WHO_DEFENDER, .number = number, .span = span}, man;
        if (above_guarded(c, &defender, &man) && same_who(&man, player)) {
            return defender;
        }
    }
    return (struct who){
        .kind = WHO_DEFENDER_OF, .number = player->number, .role = player->role, .span = span};
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
    out->who = defender_of(c, part == PART_SCREENER ? &screener : &user, span);
    out->other =
        part == PART_BOTH ? defender_of(c, &screener, span) : (struct who){.kind = WHO_NONE};
    out->object = verb == VERB_TRAPS ? user : (struct who){.kind = WHO_NONE};
    return true;
}

/* they trap, he's under, they are switching: without whom. */
static bool their_verb_read(struct cursor *c, enum verb *verb)
{
    struct phrase phrase;
    if (!guard_verb_read(c, &phrase)) {
        return false;
    }
    *verb = phrase.verb;
    return true;
}

static bool they_read(struct cursor *c, struct condition *out)
{
    static const char *const words[] = {
        "they",      "he",      "she",         "the defense", "the defender",
        "their big", "the big", "their guard", "both",        "the defenders",
        NULL};
    static const char *const tails[] = {"it",    "the screen",       "the ball screen", "him",
                                        "her",   "the ball handler", "the ball",        "the pick",
                                        "on it", "on the screen",    "everything",      NULL};
    struct cursor trial = *c;
    enum verb verb;
    const struct token *from = c->at;
    if (!take_among(&trial, words) || !their_verb_read(&trial, &verb)) {
        return false;
    }
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
static bool coverage_read(struct cursor *c, struct condition *out)
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

int take_state(struct cursor *c)
{
    static const struct entry states[] = {{"is open", EVENT_OPEN},
                                          {"is free", EVENT_OPEN},
                                          {"gets open", EVENT_OPEN},
                                          {"comes open", EVENT_OPEN},
                                          {"is wide open", EVENT_OPEN},
                                          {"is left open", EVENT_OPEN},
                                          {"is left alone", EVENT_OPEN},
                                          {"is unguarded", EVENT_OPEN},
                                          {"is covered", EVENT_COVERED},
                                          {"is guarded", EVENT_COVERED},
                                          {"isn't open", EVENT_COVERED},
                                          {"isnt open", EVENT_COVERED},
                                          {"is not open", EVENT_COVERED},
                                          {"is denied", EVENT_DENIED},
                                          {"is being denied", EVENT_DENIED},
                                          {"gets denied", EVENT_DENIED},
                                          {"is overplayed", EVENT_DENIED},
                                          {"gets overplayed", EVENT_DENIED},
                                          {"is taken away", EVENT_DENIED},
                                          {"is being overplayed", EVENT_DENIED},
                                          {NULL, 0}};
    return take_entry(c, states);
}

static bool state_read(struct cursor *c, struct condition *out)
{
    int state = take_state(c);
    if (state < 0) {
        return false;
    }
    out->kind = state == EVENT_OPEN      ? COND_OPEN
                : state == EVENT_COVERED ? COND_COVERED
                                         : COND_DENIED;
    return true;
}

/* 5 is fronted: what his own defender does. */
static bool suffered_read(struct cursor *c, struct condition *out)
{
    static const struct entry words[] = {{"is fronted", VERB_FRONTS},
                                         {"gets fronted", VERB_FRONTS},
                                         {"is being fronted", VERB_FRONTS},
                                         {"is trailed", VERB_TRAILS},
                                         {NULL, 0}};
    struct cursor trial = *c;
    struct who who = out->who;
    int verb = take_entry(&trial, words);
    if (verb < 0) {
        return false;
    }
    c->at = trial.at;
    out->kind = COND_VERB;
    out->verb = (enum verb)verb;
    out->who = defender_of(c, &who, who.span);
    out->other = (struct who){.kind = WHO_NONE};
    return true;
}

static bool one_read(struct cursor *c, struct condition *out)
{
    static const char *const others[] = {"otherwise", "anything else", "if not",
                                         "else",      "none of these", NULL};
    if (take_among(c, others)) {
        out->kind = COND_OTHERWISE;
        return true;
    }
    if (they_read(c, out) || coverage_read(c, out)) {
        return true;
    }
    *out = (struct condition){.kind = COND_OTHERWISE};
    if (!person_read(c, &out->who) && !who_read(c, &out->who)) {
        return false;
    }
    if (!who_defends(&out->who)) {
        bool one =
            out->who.kind == WHO_PLAYER || out->who.kind == WHO_ROLE || out->who.kind == WHO_SPOT;
        return one && (state_read(c, out) || (out->who.kind != WHO_SPOT && suffered_read(c, out)));
    }
    struct cursor_mark mark = cursor_mark(c);
    if (both_read(c, out)) {
        out->kind = COND_BOTH;
        return true;
    }
    cursor_back(c, mark);
    out->other = out->object = (struct who){.kind = WHO_NONE};
    out->kind = COND_VERB;
    return guard_read(c, out, &out->other);
}

bool coverage_said(struct cursor *c, struct condition *out)
{
    return they_read(c, out);
}

bool coverage_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct condition condition = {.kind = COND_OTHERWISE};
    bool is = coverage_read(&trial, &condition) &&
              (mark_is(&trial, ',') || cursor_done(&trial) || subject_verb_is(&trial));
    cursor_back(&trial, mark);
    return is;
}

bool condition_read(struct cursor *c, struct condition *out)
{
    struct cursor_mark mark = cursor_mark(c);
    *out = (struct condition){.kind = COND_OTHERWISE};
    if (!one_read(c, out)) {
        cursor_back(c, mark);
        return false;
    }
    out->span = cursor_taken(c, mark.at);
    return true;
}
