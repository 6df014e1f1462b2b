/* SPDX-License-Identifier: MIT */
/* called: a screen called out by its name, with who sets it, for whom and in which order wherever
 * they stand: `stagger for 3 by 4 and 5`, `double away for 3, first 4, second 5`, `empty side pick
 * for 1. 5 rolls`. Who is not named is known by what comes next. Rules of recast_find. */
#include "language/words/speech.h"

#include <string.h>

enum { BY_MOST = 2 };
struct called {
    const struct token *noun, *noun_end;
    struct phrase phrase;
    struct somebody by[BY_MOST];
    size_t by_count;
    bool ordered; /* one behind the other */
    struct somebody user;
    bool has_user, on; /* on: the user's defender is named */
    bool away;
};

/* pick is, one's, one is from: behind an order. */
static void take_rest(struct cursor *c)
{
    static const char *const things[] = {"pick",  "screen",  "screener", "picker", "drag",
                                         "big",   "comes",   "from",     "by",     "is",
                                         "being", "is from", "will be",  NULL};
    for (;;) {
        const struct token *next = cursor_next(c);
        bool one = next && next->kind == TOKEN_NUMBER && (int)next->number == 1 &&
                   (next->possessive || (next + 1 < c->end && str_is(next[1].text, "is")));
        if (one) {
            c->at = next + 1;
        } else if (!take_among(c, things)) {
            return;
        }
    }
}

/* the first pick is, second one's: which of two, before he is named. */
static bool take_order(struct cursor *c)
{
    static const char *const orders[] = {"first", "second", "1st", "2nd", "next", NULL};
    static const char *const told[] = {"pick is", "screen is", "screener is", "picker is", NULL};
    struct cursor trial = *c;
    bool order =
        take_among(&trial, orders); /* `first` may have been taken for a word said in front */
    if (!order && !word_among(&trial, told)) {
        return false;
    }
    take_rest(&trial);
    c->at = trial.at;
    return true;
}

static bool take_marks(struct cursor *c, const char *marks)
{
    bool any = false;
    for (const char *mark = marks; *mark;) {
        if (take_mark(c, *mark)) {
            any = true;
            mark = marks;
        } else {
            mark++;
        }
    }
    return any;
}

/* first is the four second one is the five: no four seconds. */
static bool player_before_second(struct cursor *c, struct somebody *out)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_MEASURE || next->unit != UNIT_SECONDS || next->number < 1 ||
        next->number > c->players) {
        return false;
    }
    struct who who = {.kind = WHO_PLAYER, .number = (int)next->number, .span = next->span};
    *out = somebody_numbered(c, next, who);
    c->at = next + 1;
    return true;
}

/* 4 then 5; first 4, second 5; 4 and 5. False: nobody here; `order`: one of two is told apart. */
static bool take_screeners(struct cursor *c, struct called *k)
{
    static const char *const links[] = {"then",        "and then",   "and",
                                        "followed by", "first then", NULL};
    struct cursor trial = *c;
    k->ordered = take_order(&trial);
    bool second = k->ordered && player_before_second(&trial, &k->by[0]);
    if (!second && !player_here(&trial, &k->by[0])) {
        return false;
    }
    k->by_count = 1;
    c->at = trial.at;
    bool first = take_words(&trial, "first");
    take_marks(&trial, k->ordered ? ",." : ",");
    bool then = word_is(&trial, 0, "then") || first;
    bool joined = take_among(&trial, links);
    second = second ? (take_rest(&trial), true) : take_order(&trial);
    then = then || second;
    struct cursor verb = trial;
    if ((!joined && !second) || !player_here(&trial, &k->by[1]) ||
        (!k->ordered && subject_verb_is(&verb))) {
        return true; /* and 3 curls */
    }
    k->by_count = 2;
    k->ordered = k->ordered || then;
    c->at = trial.at;
    take_words(c, "second");
    return true;
}

/* flare for 2, 5 sets it: that he is the one. */
static bool take_sets_it(struct cursor *c)
{
    static const char *const words[] = {"sets it",
                                        "sets that",
                                        "sets one",
                                        "sets the screen",
                                        "sets the pick",
                                        "is setting it",
                                        "is the screener",
                                        "screens",
                                        "with it",
                                        "will set it",
                                        NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, words) || !part_ends(&trial)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* One thing more that is said of it. */
static bool take_part(struct cursor *c, struct called *k)
{
    static const char *const bys[] = {"by", "from", "with", "set by", "coming from", NULL};
    static const char *const aways[] = {"away", "opposite", "away from ball", "on weak side", NULL};
    static const char *const leads[] = {"for", "to", NULL};
    struct cursor trial = *c;
    if (!k->away && take_among(&trial, aways)) {
        k->away = true;
        c->at = trial.at;
        return true;
    }
    if (!k->has_user && take_among(&trial, leads) && player_here(&trial, &k->user)) {
        k->has_user = true;
        c->at = trial.at;
        return true;
    }
    trial = *c;
    struct who on;
    struct cursor defender = trial;
    if (!k->has_user && take_words(&defender, "on")) {
        k->user.from = past_fillers(defender.at, defender.end);
        if (person_read(&defender, &on) && who_defends(&on)) {
            k->user.to = defender.at;
            k->user.who = on;
            k->has_user = k->on = true;
            c->at = defender.at;
            return true;
        }
    }
    if (k->by_count > 0) {
        return false;
    }
    bool led = take_among(&trial, bys);
    if (!led) {
        take_marks(&trial, k->has_user ? ",:." : ",:");
        struct cursor order = trial;
        struct cursor verb = trial;
        led = take_order(&order);
        if (!led && (trial.at == c->at || subject_verb_is(&verb))) {
            return false; /* , 3 curls */
        }
    }
    struct called found = *k;
    if (!take_screeners(&trial, &found) || (trial.at < c->end && !led && found.by_count < 2 &&
                                            !word_is(&trial, 0, "for") && !take_sets_it(&trial))) {
        return false;
    }
    *k = found;
    c->at = trial.at;
    return true;
}

/* Further on: 5 rolls, of the one who set it; 3 curls, of the one it is for. */
static bool named_ahead(const struct cursor *c, bool screener, struct somebody *out)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        struct cursor trial = cursor_look(c);
        struct phrase phrase;
        trial.at = at + 1;
        if (!clause_ends(at) || !player_here(&trial, out)) {
            continue;
        }
        skip_run_in(&trial);
        if (!phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
            continue;
        }
        bool after = strchr(verb_row(phrase.verb)->needs, 'S') != NULL;
        if (screener ? after : !after && verb_runs(phrase.verb)) {
            return true;
        }
    }
    return false;
}

static bool on_ball(const struct phrase *phrase)
{
    return phrase->screen == SCREEN_BALL;
}

/* Who is not named: the one who has the ball, of a ball screen; else by what comes next. */
static bool complete(const struct cursor *c, const struct cursor *behind, struct called *k)
{
    if (k->by_count == 0) {
        if (!named_ahead(behind, true, &k->by[0])) {
            return false;
        }
        k->by_count = 1;
    }
    if (k->phrase.screen == SCREEN_DOUBLE && k->by_count == 1) {
        return false;
    }
    if (k->has_user || on_ball(&k->phrase)) {
        return true;
    }
    k->has_user = named_ahead(behind, false, &k->user) && !same_who(&k->user.who, &k->by[0].who) &&
                  !(k->by_count > 1 && same_who(&k->user.who, &k->by[1].who));
    return k->has_user && !above_holds(c, &k->user.who);
}

static bool take_name(struct cursor *c, struct called *k)
{
    static const char *const manners[] = {"empty side",  "empty corner", "empty", "weak side",
                                          "strong side", "ball side",    NULL};
    struct cursor trial = *c;
    take_among(&trial, manners);
    k->noun = past_fillers(trial.at, trial.end);
    if (k->noun == trial.end || !phrase_noun_read(&trial, &k->phrase) ||
        verb_row(k->phrase.verb)->task != VERB_SCREEN) {
        return false;
    }
    k->noun_end = c->at = trial.at;
    return true;
}

bool screen_named(const struct cursor *c)
{
    struct cursor trial = cursor_look(c);
    struct called k;
    return take_name(&trial, &k);
}

bool by_name(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct called k = {.by_count = 0};
    if (!take_name(&trial, &k)) {
        return false;
    }
    struct cursor straight = trial; /* cross screen 4 for 5 */
    if (player_here(&straight, &k.by[0]) && word_is(&straight, 0, "for")) {
        k.by_count = 1;
        trial = straight;
    }
    size_t parts = k.by_count;
    while (take_part(&trial, &k)) {
        parts++;
    }
    bool bare = parts == 0 && on_ball(&k.phrase); /* high ball screen, 4 rolls */
    if ((parts == 0 && !bare) || !complete(c, &trial, &k) ||
        (bare && above_has_screened(c, &k.by[0].who, 1))) {
        return false;
    }
    for (size_t i = 0; i < k.by_count; i++) {
        if (i > 0) {
            recast_word(c, r, "and");
        }
        recast_somebody(c, r, &k.by[i]);
    }
    bool two = k.by_count > 1;
    if (k.phrase.screen == SCREEN_DOUBLE && k.ordered) {
        recast_word(c, r, k.away ? "screen-away" : "screen");
    } else if (k.away && k.phrase.screen == SCREEN_PLAIN) {
        recast_word(c, r, two ? "screen-away" : "screens-away");
    } else {
        recast_word(c, r, two ? "set" : "sets");
        recast_copy(c, r, k.noun, k.noun_end);
    }
    if (k.has_user) {
        recast_word(c, r, k.on ? "on" : "for");
        recast_somebody(c, r, &k.user);
    }
    r->to = trial.at;
    return true;
}

/* UCLA cut, rub off 5 down to the block: by the one who has just passed. */
bool cut_of_passer(const struct cursor *c, struct recast *r)
{
    static const char *const names[] = {"ucla cut", "give and go cut", "ucla", NULL};
    struct cursor trial = cursor_look(c);
    struct who passer = {.kind = WHO_NONE};
    const struct token *from = cursor_next(c);
    if (!take_among(&trial, names)) {
        return false;
    }
    const struct token *noun_end = trial.at;
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0 && passer.kind == WHO_NONE;) {
        bool pass = verb_row(list.at[i]->verb)->task == VERB_PASS && list.at[i]->subject.count == 1;
        passer = pass ? list.at[i]->subject.at[0] : passer;
    }
    bool joined = take_mark(&trial, ',') || take_mark(&trial, ':');
    bool on = joined && verb_begins(&trial) && !subject_verb_is(&trial);
    if (passer.kind != WHO_PLAYER || (joined && !on)) {
        return false;
    }
    if (!on) {
        recast_word(c, r, "makes");
        recast_copy(c, r, from, noun_end);
    } else {
        r->told = span_join(from->span, noun_end[-1].span);
    }
    r->to = on ? trial.at : noun_end;
    recast_acts(c, r, &passer);
    return r->taken = true;
}

/* 4 hammers 3 into the corner: that is where 3 goes off it. */
bool screens_into(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody by, user;
    struct phrase phrase;
    if (!player_here(&trial, &by)) {
        return false;
    }
    const struct token *verb = trial.at;
    skip_run_in(&trial);
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        verb_row(phrase.verb)->task != VERB_SCREEN || phrase.screen != SCREEN_FLARE) {
        return false;
    }
    const struct token *verb_end = trial.at;
    take_words(&trial, "for");
    if (!player_here(&trial, &user) || !take_words(&trial, "into")) {
        return false;
    }
    const struct token *to = trial.at;
    bool placed = spot_read(&trial, true) != NULL;
    const struct token *to_end = trial.at;
    cursor_back(&trial, mark);
    if (!placed) {
        return false;
    }
    recast_somebody(c, r, &by);
    recast_copy(c, r, verb, verb_end);
    recast_word(c, r, "for");
    recast_somebody(c, r, &user);
    recast_mark(c, r, ',');
    recast_somebody(c, r, &user);
    recast_word(c, r, "fades");
    recast_word(c, r, "off");
    recast_somebody(c, r, &by);
    recast_word(c, r, "to");
    recast_copy(c, r, to, to_end);
    r->to = to_end;
    return true;
}
