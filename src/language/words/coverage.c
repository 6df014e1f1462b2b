/* SPDX-License-Identifier: MIT */
/* coverage: what the defense does, as it is said: they trap it, they're icing it, and what is going
 * on: x3 is sagging, 4 is lifting to the wing. Rules of recast_find, for the second reading. */
#include "language/words/speech.h"

/* they trap it: the two at the latest screen above, or the one of them whose part it is. */
bool theirs(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"they", "defense", NULL};
    struct cursor trial = *c;
    struct condition said = {.kind = COND_OTHERWISE};
    trial.watch = NULL;
    if (!word_among(c, words) || !coverage_said(&trial, &said) ||
        !(stop_is(&trial) || mark_is(&trial, ',') || word_is(&trial, 0, "and"))) {
        return false;
    }
    bool both = said.other.kind != WHO_NONE;
    VEC_PUSH(c->arena, &r->subject, said.who);
    if (both) {
        VEC_PUSH(c->arena, &r->subject, said.other);
    }
    recast_verb(c, r, phrase_words(said.verb, PASS_PLAIN, SCREEN_PLAIN, both));
    r->to = trial.at;
    return true;
}

/* x3 is sagging, 4 is lifting to the wing: it does. */
bool going_on(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"is",     "are",   "starts", "start",
                                        "begins", "begin", "keeps",  NULL};
    struct cursor trial = *c;
    struct phrase phrase;
    struct str bare;
    who_list list;
    trial.watch = NULL;
    const struct token *from = c->at;
    if (!subject_read(&trial, &list)) {
        return false;
    }
    const struct token *behind = trial.at;
    if (!take_among(&trial, words) ||
        !phrase_ing_here(&trial, who_side(&list.at[0]), &phrase, &bare)) {
        return false;
    }
    recast_copy(c, r, from, behind);
    recast_verb(c, r, bare);
    r->to = trial.at;
    return true;
}

/* 1 and 5, 1: whose defenders are meant; x1 and x5 as they are. */
static bool two_of(struct cursor *c, struct somebody out[2])
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    for (int i = 0; i < 2; i++) {
        out[i].from = past_fillers(trial.at, trial.end);
        bool read = (i == 0 || take_words(&trial, "and")) && person_read(&trial, &out[i].who);
        out[i].to = trial.at;
        bool one = out[i].who.kind == WHO_PLAYER || out[i].who.kind == WHO_DEFENDER;
        if (!read || !one || c->refusals != trial.refusals) {
            cursor_back(&trial, mark);
            return false;
        }
    }
    c->at = trial.at;
    return true;
}

static void put_defenders(const struct cursor *c, struct recast *r, const struct somebody two[2])
{
    for (int i = 0; i < 2; i++) {
        struct who who = two[i].who;
        if (who.kind == WHO_PLAYER) { /* x1 for 1: who guards whom is not changed by a screen */
            struct who guard = above_defender_of(c, &who, who.span);
            who.number = guard.kind == WHO_DEFENDER ? guard.number : who.number;
        }
        who.kind = WHO_DEFENDER;
        VEC_PUSH(c->arena, &r->subject, who);
    }
}

static const char *const theys[] = {"they", "the defense", "the defenders", NULL};

/* they switch 1 and 5, they trap 1 with x1 and x5. */
bool they_both(const struct cursor *c, struct recast *r)
{
    static const struct entry verbs[] = {{"switch", VERB_SWITCHES},   {"trap", VERB_TRAPS},
                                         {"blitz", VERB_TRAPS},       {"double", VERB_TRAPS},
                                         {"double team", VERB_TRAPS}, {"jump", VERB_TRAPS},
                                         {"swap", VERB_SWITCHES},     {NULL, 0}};
    static const char *const withs[] = {"with", "using", "by", "from", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody two[2], whom = {.from = NULL};
    struct who holder;
    bool him = false;
    if (!take_among(&trial, theys)) {
        return false;
    }
    int verb = take_entry(&trial, verbs);
    if (verb < 0) {
        return false;
    }
    if (verb == VERB_TRAPS) {
        struct cursor object = trial;
        him = take_words(&object, "him") || take_words(&object, "her") ||
              take_words(&object, "the ball") || take_words(&object, "it");
        if (him || somebody_read(&object, &whom)) {
            trial = object;
        }
        while (take_among(&trial, place_words) && spot_read(&trial, true)) { /* in the corner */
        }
        if (!take_among(&trial, withs)) {
            return false;
        }
    }
    if (!two_of(&trial, two)) {
        return false;
    }
    put_defenders(c, r, two);
    recast_verb(c, r, phrase_words((enum verb)verb, PASS_PLAIN, SCREEN_PLAIN, true));
    if (whom.from) {
        recast_somebody(c, r, &whom);
    } else if (him && above_holder(c, &holder) && holder.kind == WHO_PLAYER) {
        recast_number(c, r, holder.number);
    }
    r->to = trial.at;
    return true;
}

/* x1 takes 4: who takes whom. */
static bool takes_whom(struct cursor *c, struct who *who, struct who *whom)
{
    static const char *const takes[] = {"takes over",  "takes",         "picks up", "gets",
                                        "goes with",   "stays with",    "has",      "jumps to",
                                        "switches to", "switches onto", "guards",   NULL};
    return person_read(c, who) && who->kind == WHO_DEFENDER && take_among(c, takes) &&
           person_read(c, whom) && whom->kind == WHO_PLAYER;
}

/* the two defenders switch: x1 takes 4 and x4 takes 1: each the other's man. */
bool switch_told(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {"two defenders switch",
                                        "defenders switch",
                                        "they switch",
                                        "they switch it",
                                        "defense switches",
                                        "both defenders switch",
                                        "they switch the screen",
                                        "it's a switch",
                                        "switch",
                                        "they just switch",
                                        NULL};
    struct cursor trial = cursor_look(c);
    struct who who[2], whom[2], man[2];
    struct cursor two = trial;
    struct somebody named[2];
    bool head = take_among(&trial, heads);
    if (!head && two_of(&two, named) && named[0].who.kind == WHO_DEFENDER &&
        take_words(&two, "switch")) {
        trial = two;
        head = true;
    }
    if (!head || !(take_mark(&trial, ':') || take_mark(&trial, ',') || take_words(&trial, "so"))) {
        return false;
    }
    take_words(&trial, "so");
    bool first = takes_whom(&trial, &who[0], &whom[0]);
    take_mark(&trial, ',');
    take_words(&trial, "and");
    if (!first || !takes_whom(&trial, &who[1], &whom[1])) {
        return false;
    }
    for (int i = 0; i < 2; i++) {
        if (!above_guarded(c, &who[i], &man[i]) || !same_who(&man[i], &whom[1 - i])) {
            return false;
        }
        VEC_PUSH(c->arena, &r->subject, who[i]);
    }
    recast_verb(c, r, phrase_words(VERB_SWITCHES, PASS_PLAIN, SCREEN_PLAIN, true));
    r->to = trial.at;
    return true;
}

/* x3 to the nail, x4 down to the block: he rotates there. */
bool defender_leg(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct who who;
    const struct token *from = past_fillers(c->at, c->end);
    if (!person_read(&trial, &who) || !who_defends(&who)) {
        return false;
    }
    const struct token *to = trial.at;
    if (!leg_is(&trial)) {
        return false;
    }
    recast_copy(c, r, from, to);
    recast_word(c, r, "rotates");
    r->to = trial.at;
    return true;
}

/* x5 rotates over from the weak side to meet 2 at the rim: he helps there. */
bool meets_there(const struct cursor *c, struct recast *r)
{
    static const char *const goes[] = {
        "rotates",     "comes",      "slides",         "steps",
        "slides over", "comes over", "rotates over",   "steps over",
        "helps over",  "steps up",   "comes across",   "rotates down",
        "comes up",    "helps",      "rotates across", "slides across",
        NULL};
    static const char *const froms[] = {"from weak side", "from help side",    "from other side",
                                        "from behind",    "from the far side", "off his man",
                                        "off her man",    "from the corner",   NULL};
    static const char *const meets[] = {"to meet",    "to stop",   "to cut off", "to take",
                                        "to help on", "and meets", "and stops",  NULL};
    static const char *const whom[] = {"him",    "her",          "the drive", "ball",
                                       "driver", "ball handler", "it",        NULL};
    static const char *const ats[] = {"at", "in", "in front of", "on", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    struct somebody met;
    const struct token *from = past_fillers(c->at, c->end);
    if (!person_read(&trial, &who) || !who_defends(&who)) {
        return false;
    }
    const struct token *to = trial.at;
    if (!take_among(&trial, goes)) {
        return false;
    }
    take_among(&trial, froms);
    if (!take_among(&trial, meets) || (!take_among(&trial, whom) && !somebody_read(&trial, &met))) {
        return false;
    }
    recast_copy(c, r, from, to);
    recast_word(c, r, "helps");
    r->to = trial.at;
    bool front = word_is(&trial, 0, "in") && word_is(&trial, 1, "front"); /* a spot by itself */
    if (front ? take_words(&trial, "in") : take_among(&trial, ats)) {
        const struct token *spot = trial.at;
        bool placed = spot_read(&trial, true) != NULL;
        const struct token *end = trial.at;
        cursor_back(&trial, mark);
        if (!placed) {
            return false;
        }
        recast_word(c, r, "to");
        recast_copy(c, r, spot, end);
        r->to = end;
        return true;
    }
    return part_ends(&trial);
}

/* x4 leaves 4 to double 5, x5 comes off his man and helps: what he does then. */
bool leaves_to(const struct cursor *c, struct recast *r)
{
    static const char *const leaves[] = {
        "leaves",       "comes off of", "comes off",  "slides off", "rotates off",
        "helps off of", "helps off",    "leaves off", "steps off",  NULL};
    static const char *const men[] = {"his man",    "her man",  "his own man", "her own man",
                                      "the corner", "the wing", "weak side",   NULL};
    struct cursor trial = cursor_look(c);
    struct who who;
    struct somebody man;
    struct phrase phrase;
    const struct token *from = past_fillers(c->at, c->end);
    if (!person_read(&trial, &who) || !who_defends(&who)) {
        return false;
    }
    const struct token *to = trial.at;
    if (!take_among(&trial, leaves) || (!take_among(&trial, men) && !somebody_read(&trial, &man))) {
        return false;
    }
    take_mark(&trial, ',');
    if (!take_words(&trial, "to") && !take_words(&trial, "and")) {
        return false;
    }
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_DEFENDERS, &phrase)) {
        return false;
    }
    recast_copy(c, r, from, to);
    r->to = verb;
    return true;
}

/* all our defenders sag, all five deny: each of them. */
bool all_defend(const struct cursor *c, struct recast *r)
{
    static const char *const all[] = {
        "all defenders",     "all our defenders",    "all five defenders",  "every defender",
        "each defender",     "everybody on defense", "everyone on defense", "all of the defenders",
        "the whole defense", "all defense",          "all five on defense", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    if (!take_among(&trial, all)) {
        return false;
    }
    struct cursor verb = trial;
    skip_run_in(&verb);
    if (!phrase_read(&verb, FOR_DEFENDERS, &phrase)) {
        return false;
    }
    if (str_is(str_of(phrase.words), "jumps to the ball")) { /* what each does on every pass */
        r->told = span_join(cursor_next(c)->span, verb.at[-1].span);
        r->to = verb.at;
        return r->remark = part_ends(&verb);
    }
    struct span span = cursor_span(c);
    for (int number = 1; number <= 5; number++) {
        struct who who = {.kind = WHO_DEFENDER, .number = number, .span = span};
        recast_acts(c, r, &who);
    }
    recast_verb(c, r, phrase_words(phrase.verb, PASS_PLAIN, SCREEN_PLAIN, true));
    r->to = verb.at;
    return true;
}
