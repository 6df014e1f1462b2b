/* SPDX-License-Identifier: MIT */
/* split: one verb said of two who do it one behind the other, 2 then 3 cut to the rim, and one
 * movement by way of a spot: a sentence for each. And what stands before who acts: to the corner
 * goes 5; with the side empty, 5 dives. Rules of unfold.h. */
#include "language/words/unfold.h"

#include "language/words/put_plain.h"

/* ---- 2 then 3 cut ---- */

enum { TURNS_MOST = 5 };

/* 2, then 3, and then 4: who does it, in their order; gives where the verb begins, or NULL. */
static const struct token *turns(const struct cursor *c, const struct token *at, int *who,
                                 size_t *count)
{
    static const char *const thens[] = {"and then", "then", "followed by", "and after that", NULL};
    bool then = false;
    *count = 0;
    for (;;) {
        int number = attacker_at(at, c->end);
        if (number == 0 || *count == TURNS_MOST) {
            return NULL;
        }
        who[(*count)++] = number;
        struct cursor joint = line_look(c, at + 1);
        bool comma = take_mark(&joint, ',');
        if (take_among(&joint, thens)) {
            then = true;
            at = joint.at;
        } else if (comma && attacker_at(joint.at, c->end)) {
            at = joint.at;
        } else {
            return then && !comma && *count > 1 && verb_at(c, at + 1) ? at + 1 : NULL;
        }
    }
}

bool one_then_other(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        int who[TURNS_MOST];
        size_t count;
        const struct token *verb =
            at->kind == TOKEN_NUMBER && clause_begins_at(c, at) ? turns(c, at, who, &count) : NULL;
        const struct token *end = verb ? clause_end(c, verb) : NULL;
        struct cursor phrase_at = line_look(c, verb ? verb : at);
        struct phrase phrase;
        if (!end || !phrase_read(&phrase_at, FOR_ATTACKERS, &phrase)) {
            continue;
        }
        struct cursor here = line_look(c, at);
        recast_copy(c, r, c->at, at);
        if (count == 2 &&
            verb_row(phrase.verb)->task == VERB_SCREEN) { /* a stagger, in that order */
            recast_number(&here, r, who[0]);
            recast_word(&here, r, "and");
            recast_number(&here, r, who[1]);
            recast_copy(c, r, verb, c->end);
            return true;
        }
        for (size_t i = 0; i < count; i++) {
            if (i > 0) {
                put_stop(c, r);
                recast_word(&here, r, "then");
            }
            recast_number(&here, r, who[i]);
            recast_verb(&here, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
            recast_copy(c, r, phrase_at.at, end);
        }
        recast_copy(c, r, end, c->end);
        return true;
    }
    return false;
}

/* ---- via ---- */

/* Where the last `to` of the clause stands, of a place that ends at `to`; NULL: none. */
static const struct token *place_lead(const struct cursor *c, const struct token *from,
                                      const struct token *to)
{
    for (const struct token *at = to; at-- > from;) {
        struct cursor place = line_look(c, at);
        if (take_among(&place, place_words)) {
            const struct place *spot;
            return spot_end(c, place.at, &spot) == to ? at : NULL;
        }
    }
    return NULL;
}

/* A verb that takes somebody somewhere by himself. */
static bool moves_here(const struct cursor *c, const struct token *at)
{
    struct cursor verb = line_look(c, at);
    struct phrase phrase;
    skip_run_in(&verb);
    return phrase_read(&verb, FOR_ATTACKERS, &phrase) && verb_goes(phrase.verb);
}

/* goes to the corner via the left block, by way of the top to the slot. */
bool by_way_of(const struct cursor *c, struct recast *r)
{
    static const char *const ways[] = {"via", "by way of", NULL};
    for (const struct token *at = c->at + 1; at < c->end; at++) {
        struct cursor way = line_look(c, at);
        struct somebody who;
        bool own;
        const struct place *spot;
        if (!take_among(&way, ways)) {
            continue;
        }
        const struct token *clause = clause_begin(c, at), *end = spot_end(c, way.at, &spot);
        const struct token *lead = end ? place_lead(c, clause, at) : NULL;
        const struct token *verb = NULL;
        if (end && clause_subject(c, clause, &who, &own) && own) {
            verb = who.to;
        }
        if (!verb || verb >= at || !moves_here(c, verb)) {
            continue;
        }
        struct cursor here = line_look(c, at);
        recast_copy(c, r, c->at, lead ? lead : at);
        recast_word(&here, r, "to");
        recast_copy(c, r, way.at, end);
        put_stop(c, r);
        recast_somebody(&here, r, &who);
        recast_copy(c, r, verb, at);
        recast_copy(c, r, end, c->end);
        return true;
    }
    return false;
}

/* ---- to the corner goes 5 ---- */

/* A verb of somebody who goes somewhere, as one speaks of one, in one word. */
static bool goes_word(const struct cursor *c, const struct token *at)
{
    struct cursor verb = line_look(c, at);
    struct phrase phrase;
    return at->kind == TOKEN_WORD && ends_in_s(at) && phrase_read(&verb, FOR_ATTACKERS, &phrase) &&
           verb.at == at + 1 && (verb_goes(phrase.verb) || verb_runs(phrase.verb));
}

/* Nobody acts in it: who is named stands behind a word that leads to him. */
static bool only_where(const struct token *from, const struct token *to)
{
    static const char *const leads[] = {"off",   "around", "behind", "past", "under", "over",
                                        "above", "below",  "of",     "from", NULL};
    for (const struct token *at = from; at < to; at++) {
        bool led = at > from && token_is_among(at - 1, leads);
        if ((at->kind == TOKEN_NUMBER && !led) || at->kind == TOKEN_DEFENDER || sentence_ends(at) ||
            token_is_mark(at, ':')) {
            return false;
        }
    }
    return from < to;
}

/* Where the sentence begins that `at` stands in, without what joins it. */
static const struct token *where_begin(const struct cursor *c, const struct token *at)
{
    static const char *const joints[] = {"and then", "and now", "and", "then", "so", "now", NULL};
    const struct token *begin = at;
    while (begin > c->at && !sentence_ends(begin - 1)) {
        begin--;
    }
    if (!only_where(begin, at)) {
        begin = clause_begin(c, at);
    }
    struct cursor head = line_look(c, begin);
    take_among(&head, joints);
    return head.at;
}

bool goes_turned(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {
        "to",   "into",  "up",     "down",   "out",  "off",   "across",  "through",  "back",
        "in",   "deep",  "over",   "around", "from", "along", "away",    "straight", "right",
        "hard", "under", "behind", "past",   "high", "low",   "between", "on",       NULL};
    for (const struct token *at = c->at + 1; at + 1 < c->end; at++) {
        int number = attacker_at(at + 1, c->end);
        if (number == 0 || !goes_word(c, at) || (at + 2 < c->end && verb_at(c, at + 2))) {
            continue;
        }
        const struct token *begin = where_begin(c, at);
        struct cursor where = line_look(c, begin);
        if (begin >= at || !word_among(&where, heads) || !only_where(begin, at)) {
            continue;
        }
        const struct token *behind = at + 2;
        behind += behind < c->end && token_is_mark(behind, ',') &&
                  !(behind + 1 < c->end &&
                    (attacker_at(behind + 1, c->end) || token_is_word(behind + 1, "and")));
        recast_copy(c, r, c->at, begin);
        recast_copy(c, r, at + 1, at + 2);
        recast_copy(c, r, at, at + 1);
        recast_copy(c, r, begin, at - token_is_mark(at - 1, ','));
        recast_copy(c, r, behind, c->end);
        return true;
    }
    return false;
}

/* ---- with the side empty, 5 dives ---- */

bool only_how(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const says[] = {
        "ball",      "pass",   "catch",   "screen", "pick",     "shot",    "drive",   "cut",
        "roll",      "left",   "right",   "side",   "strong",   "weak",    "not",     "if",
        "when",      "as",     "after",   "before", "until",    "while",   "once",    "unless",
        "or",        "then",   "instead", "that",   "which",    "who",     "his",     "her",
        "him",       "middle", "slap",    "signal", "catching", "passing", "cutting", "screening",
        "driving",   "case",   "clock",   "second", "seconds",  "beat",    "count",   "switch",
        "trap",      "help",   "zone",    "next",   "time",     "now",     "end",     "start",
        "beginning", "later",  "first",   "last",   "turn",     "order",   "play",    "read",
        "option",    "front",  "moment",  "place",  "stead",    "fact",    "reverse", "theory",
        NULL};
    static const char *const states[] = {"empty",   "open",   "clear", "cleared", "free",
                                         "emptied", "vacant", "wide",  "packed",  NULL};
    bool state = to - from > 2 && token_is_mark(to - 1, ',') && token_is_among(to - 2, states);
    for (const struct token *at = from; at < to; at++) {
        struct cursor spot = line_look(c, at);
        bool count = token_is_spelled(at) && at + 1 < to && at[1].kind == TOKEN_WORD &&
                     !verb_at(c, at + 1); /* in one motion */
        if ((at->kind == TOKEN_NUMBER && !count) || at->kind == TOKEN_DEFENDER ||
            at->kind == TOKEN_QUOTED || at->possessive || token_is_among(at, says) ||
            sentence_ends(at) || (at->kind == TOKEN_MARK && at + 1 < to) ||
            (!state && spot_read(&spot, true))) {
            return false;
        }
    }
    return !remark_judges(c, from, to);
}

/* to overload that side, rather than roll: why, or what is not done; nobody is named in it. */
static bool only_why(const struct cursor *c, const struct token *head, const struct token *to)
{
    static const char *const nots[] = {"rather than", "instead of", NULL};
    static const char *const manners[] = {"staying low",     "looking",       "flipping angle",
                                          "changing angle",  "showing hands", "calling for ball",
                                          "reading defense", "staying wide",  NULL};
    struct cursor look = line_look(c, head), aim = look;
    bool is = word_among(&look, nots) || word_among(&look, manners) ||
              (take_words(&aim, "to") && aside_aim_is(&aim));
    for (const struct token *at = head; is && at + 1 < to; at++) {
        bool who = at->kind == TOKEN_NUMBER || at->kind == TOKEN_DEFENDER;
        is = !who && at->kind != TOKEN_MARK && at->kind != TOKEN_QUOTED && !at->possessive;
    }
    return is && !remark_judges(c, head, to);
}

bool how_in_front(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {"with", "without", "in", "from", "for", "under",
                                        "as a", "out of",  "by", "like", NULL};
    enum { FAR = 9 };
    for (const struct token *at = c->at; at + 2 < c->end; at++) {
        struct cursor head = line_look(c, at);
        bool begins = at == c->at || sentence_ends(at - 1);
        if (!begins) {
            continue;
        }
        bool how = take_among(&head, heads);
        const struct token *who = head.at;
        for (struct cursor acts = head; who < c->end && who < at + FAR; acts.at = ++who) {
            if (attacker_at(who, c->end) && subject_verb_is(&acts)) {
                break;
            }
        }
        bool told = who > head.at && who > at + 1; /* there is something in front of the comma */
        bool comma = told && who < c->end && token_is_mark(who - 1, ',');
        if (who >= at + FAR || who >= c->end || !comma ||
            !((how && only_how(c, head.at, who)) || only_why(c, at, who))) {
            continue;
        }
        recast_copy(c, r, c->at, at);
        recast_copy(c, r, who, c->end);
        r->told = span_join(at->span, who[-2].span);
        return true;
    }
    return false;
}

/* ---- curling off 5, 3 shoots; with 5 screening for 1, 4 lifts ---- */

/* him, his man: of whom is said behind it, if at all. */
static bool points_on(const struct token *from, const struct token *to)
{
    static const char *const words[] = {"him",  "her", "his", "their", "them",
                                        "they", "he",  "she", NULL};
    while (from < to && !token_is_among(from, words)) {
        from++;
    }
    return from < to;
}

/* Where the comma is behind which somebody acts, of what begins at `from`; `*who`: he. NULL: none,
 * or one who acts is named before it. */
static const struct token *main_comma(const struct cursor *c, const struct token *from,
                                      struct somebody *who)
{
    for (const struct token *at = from; at < c->end && !sentence_ends(at); at++) {
        struct cursor acts = line_look(c, at + 1);
        if (at > from && token_is_mark(at, ',')) {
            bool is = at + 1 < c->end && subject_verb_is(&acts) && player_here(&acts, who) &&
                      who->who.kind == WHO_PLAYER;
            return is ? at : NULL;
        }
        if (attacker_at(at, c->end) && verb_at(c, at + 1)) {
            return NULL;
        }
    }
    return NULL;
}

/* A spot is named there. */
static bool spot_named(const struct cursor *c, const struct token *from, const struct token *to)
{
    for (; from < to; from++) {
        struct cursor spot = look_between(c, from, to);
        if (spot_here(&spot)) {
            return true;
        }
    }
    return false;
}

/* Curling off 5, 3 cuts to the corner: one movement, told twice, which ends where the second says.
 * False: he does something else then, for which the first must say where it ends. */
static bool one_movement(const struct cursor *c, const struct phrase *phrase,
                         const struct somebody *who, bool placed, const struct token **rest)
{
    struct cursor verb = line_look(c, who->to);
    struct phrase second;
    *rest = NULL;
    if (placed || !(verb_goes(phrase->verb) || verb_runs(phrase->verb))) {
        return true;
    }
    bool moves = phrase_read(&verb, FOR_ATTACKERS, &second) && verb_goes(second.verb);
    *rest = moves ? verb.at : NULL;
    return moves || verb_row(phrase->verb)->task == VERB_USE;
}

/* Curling off 5, 3 shoots: he curls off 5, and shoots. */
bool doing_in_front(const struct cursor *c, struct recast *r)
{
    struct cursor ing = line_look(c, past_fillers(c->at, c->end));
    const struct token *from = ing.at;
    struct phrase phrase;
    struct somebody who;
    struct str bare;
    bool uses = from < c->end && token_is_word(from, "using"); /* using it, 2 cuts */
    if (from == c->end || !ends_in_ing(from) ||
        !(uses || phrase_ing_here(&ing, FOR_ATTACKERS, &phrase, &bare))) {
        return false;
    }
    const struct token *object = uses ? from + 1 : ing.at, *comma = main_comma(c, object, &who);
    const struct token *rest = NULL;
    if (!comma || points_on(object, comma) || names_player(object, comma, who.who.number) ||
        (!uses && !one_movement(c, &phrase, &who, spot_named(c, object, comma), &rest))) {
        return false;
    }
    struct cursor here = line_look(c, from);
    recast_somebody(&here, r, &who);
    put_third(&here, r, uses ? STR("use") : bare);
    recast_copy(c, r, object, comma);
    if (uses) {
        recast_word(&here, r, "and");
        rest = who.to;
    } else if (!rest) {
        put_stop(c, r);
        rest = comma + 1;
    }
    recast_copy(c, r, rest, c->end);
    return true;
}

/* The same where no comma was spoken: with 5 rolling to the rim 4 lifts. */
static const struct token *main_dictated(const struct cursor *c, const struct token *from,
                                         struct somebody *who)
{
    for (const struct token *at = from; at < c->end && !sentence_ends(at); at++) {
        struct cursor acts = line_look(c, at);
        if (at->kind == TOKEN_MARK) {
            return NULL;
        }
        if (attacker_at(at, c->end) && subject_verb_is(&acts)) {
            return at > from && player_here(&acts, who) && who->who.kind == WHO_PLAYER ? at : NULL;
        }
    }
    return NULL;
}

/* his man, for him: of the one who acts behind the comma. */
static bool his_man(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const hims[] = {"his man",      "her man",      "for him", "for her",
                                       "his defender", "her defender", NULL};
    struct cursor trial = line_look(c, from);
    return take_among(&trial, hims) && trial.at == to;
}

/* With 5 screening for 1, 4 lifts: while 5 screens for 1. */
bool with_doing(const struct cursor *c, struct recast *r)
{
    struct cursor ing = line_look(c, c->at);
    struct somebody doer, who;
    struct phrase phrase;
    struct str bare;
    if (!take_words(&ing, "with") || !player_here(&ing, &doer) || doer.who.kind != WHO_PLAYER ||
        !phrase_ing_here(&ing, FOR_ATTACKERS, &phrase, &bare)) {
        return false;
    }
    const struct token *comma = main_comma(c, ing.at, &who);
    const struct token *main = comma ? comma : main_dictated(c, ing.at, &who);
    bool for_him = main && phrase.verb == VERB_SCREENS && his_man(c, ing.at, main);
    if (!main || (points_on(ing.at, main) && !for_him) || same_who(&doer.who, &who.who)) {
        return false;
    }
    struct cursor here = line_look(c, c->at);
    recast_word(&here, r, "while");
    recast_somebody(&here, r, &doer);
    put_third(&here, r, bare);
    if (for_him) {
        recast_word(&here, r, "for");
        recast_somebody(c, r, &who);
    } else {
        recast_copy(c, r, ing.at, main);
    }
    if (!comma) {
        recast_mark(&here, r, ',');
    }
    recast_copy(c, r, main, c->end);
    return true;
}
