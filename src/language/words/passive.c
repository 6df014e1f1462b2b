/* SPDX-License-Identifier: MIT */
/* passive: what is done to somebody or something, told by that: the right corner is filled by 4, x1
 * is screened by 5, the ball has been swung to 3; and who comes first of two, told behind it: 4 and
 * 5 screen for 2, 4 first, 5 second. Rules of unfold.h. */
#include "language/words/unfold.h"

#include "language/words/put_plain.h"

static const char *const ball_names[] = {"ball", "it", "rock", NULL};

/* is, has been, gets, with what may stand between; false: none of them. */
static bool take_be(struct cursor *c)
{
    static const char *const bes[] = {"has been", "have been", "is being", "are being", "is", "are",
                                      "gets",     "get",       "was",      "were",      NULL};
    static const char *const between[] = {"then",  "now",    "next",    "quickly", "finally",
                                          "first", "simply", "at once", "also",    NULL};
    bool be = take_among(c, bes);
    while (be && take_among(c, between)) {
    }
    return be;
}

struct undergone {
    const struct token *what, *be;      /* the right corner | is */
    const struct token *first, *behind; /* filled | by 4 */
    const struct token *by, *by_end;    /* NULL: by whoever has the ball */
    struct str bare;
    struct phrase phrase;
    struct who holder;
};

/* Only one player, or only the ball. */
static bool what_is_one(const struct cursor *c, const struct undergone *u, bool ball)
{
    bool one = u->what + 1 == u->be;
    return one && (ball ? token_is_among(u->what, ball_names) : attacker_at(u->what, c->end) > 0);
}

/* by 4, by x4, behind it; or the ball is passed or carried on, by whoever has it, where nothing
 * stands before it that may have moved it. */
static bool find_doer(const struct cursor *c, struct undergone *u, bool defends)
{
    const struct token *end = u->behind;
    while (end < c->end && !sentence_ends(end) && !token_is_mark(end, ',') &&
           !token_is_word(end, "and")) {
        bool by = token_is_word(end, "by") && end + 1 < c->end;
        if (by && (defends ? end[1].kind == TOKEN_DEFENDER && !end[1].possessive
                           : attacker_at(end + 1, c->end) > 0)) {
            u->by = end;
            u->by_end = end + 2;
            return true;
        }
        end++;
    }
    enum verb_task task = verb_row(u->phrase.verb)->task;
    bool ball = what_is_one(c, u, true), passed = task == VERB_PASS && what_is_one(c, u, false);
    bool first = past_fillers(c->at, c->end) == u->what && !defends;
    return first && ((ball && (task == VERB_PASS || task == VERB_CARRY)) || passed) &&
           end > u->behind && above_holder(c, &u->holder) && u->holder.kind == WHO_PLAYER;
}

/* Somebody or something, and what it undergoes. */
static bool undergone_at(const struct cursor *c, const struct token *be, bool defends,
                         struct undergone *u)
{
    struct cursor verb = line_look(c, be);
    if (be->kind != TOKEN_WORD || !take_be(&verb)) {
        return false;
    }
    *u = (struct undergone){.be = be, .first = past_fillers(verb.at, c->end)};
    u->what = past_fillers(clause_begin(c, be), c->end);
    if (u->what >= be ||
        !past_base(&verb, defends ? FOR_DEFENDERS : FOR_ATTACKERS, &u->phrase, &u->bare)) {
        return false;
    }
    u->behind = verb.at;
    struct cursor subject = look_between(c, u->what, be);
    enum verb_task task = verb_row(u->phrase.verb)->task;
    return task != VERB_HOLD && u->phrase.verb != VERB_GUARDS && !clause_is(&subject) &&
           find_doer(c, u, defends);
}

/* 2 is screened for by 4 and comes out: 2 does, of whom it is told. */
static const struct token *put_goes_on(const struct cursor *c, struct recast *r,
                                       const struct undergone *u, const struct token *rest)
{
    struct cursor next = line_look(c, rest);
    bool goes_on = u->by && attacker_at(u->what, c->end) && take_joint(&next) &&
                   !subject_verb_is(&next) && verb_begins(&next);
    if (goes_on) {
        recast_mark(c, r, ',');
        recast_copy(c, r, u->what, u->what + 1);
    }
    return goes_on ? next.at : rest;
}

/* What stands behind who did it; by 1, who relocates: 1 does, and not whoever is named last now. */
static void put_behind_doer(const struct cursor *c, struct recast *r, const struct undergone *u)
{
    const struct token *rest = u->by ? u->by_end : c->end, *who = rest;
    who += who < c->end && token_is_mark(who, ',');
    if (who < c->end && token_is_word(who, "who")) {
        struct cursor here = line_look(c, who);
        recast_mark(&here, r, ',');
        recast_word(&here, r, "and");
        recast_copy(c, r, u->by + 1, u->by_end);
        rest = who + 1;
    }
    rest = put_goes_on(c, r, u, rest);
    recast_copy(c, r, rest, c->end);
}

bool undergoes(const struct cursor *c, struct recast *r)
{
    for (const struct token *be = c->at + 1; be + 1 < c->end; be++) {
        struct undergone u;
        if (!undergone_at(c, be, false, &u) && !undergone_at(c, be, true, &u)) {
            continue;
        }
        struct cursor here = line_look(c, u.first);
        recast_copy(c, r, c->at, clause_begin(c, be));
        if (u.by) {
            recast_copy(c, r, u.by + 1, u.by_end);
        } else {
            recast_number(&here, r, u.holder.number);
        }
        put_third(&here, r, u.bare);
        recast_copy(c, r, past_fillers(u.first, c->end) + 1, u.behind);
        recast_copy(c, r, u.what, u.be);
        recast_copy(c, r, u.behind, u.by ? u.by : c->end);
        put_behind_doer(c, r, &u);
        return true;
    }
    return false;
}

/* ---- 4 and 5 screen for 2, 4 first, 5 second ---- */

/* , 5 second: the other one is told too. */
static bool takes_on(const struct cursor *c, int other)
{
    struct cursor look = *c;
    take_mark(&look, ',');
    take_words(&look, "and");
    take_words(&look, "then");
    return look.at < c->end && (number_token(look.at) || look.at->unit != UNIT_NONE) &&
           (int)look.at->number == other;
}

/* `4 first, 5 second` begins there, or `4 first` alone; where it ends, or NULL. */
static const struct token *order_end(const struct cursor *c, const struct token *at, int one,
                                     int other)
{
    static const char *const firsts[] = {"first", "going first", "goes first", NULL};
    static const char *const seconds[] = {"next",        "after him",  "after her", "last",
                                          "right after", "behind him", NULL};
    struct cursor look = line_look(c, at + 1);
    if (attacker_at(at, c->end) != one || !take_among(&look, firsts)) {
        return NULL;
    }
    if (part_ends(&look) && !takes_on(&look, other)) {
        return look.at; /* 4 first */
    }
    take_mark(&look, ',');
    take_words(&look, "and");
    bool then = take_words(&look, "then");
    bool player = look.at < c->end && (number_token(look.at) || look.at->unit != UNIT_NONE);
    if (!player || (int)look.at->number != other) {
        return NULL;
    }
    then = then || look.at->unit != UNIT_NONE; /* 5 second, which is no time */
    look.at++;
    if (look.at < c->end && str_is(look.at->text, "second")) {
        then = true;
        look.at++;
    }
    return (take_among(&look, seconds) || then) && part_ends(&look) ? look.at : NULL;
}

bool in_order(const struct cursor *c, struct recast *r)
{
    for (const struct token *comma = c->at + 4; comma + 3 < c->end; comma++) {
        const struct token *who = past_fillers(clause_begin(c, comma), c->end);
        int first = who + 2 < comma ? attacker_at(who, c->end) : 0;
        int second = first && token_is_word(who + 1, "and") ? attacker_at(who + 2, c->end) : 0;
        if (!token_is_mark(comma, ',') || !second) {
            continue;
        }
        const struct token *end = order_end(c, comma + 1, first, second);
        bool turned = !end && (end = order_end(c, comma + 1, second, first));
        if (!end) {
            continue;
        }
        struct cursor here = line_look(c, who);
        recast_copy(c, r, c->at, who);
        recast_number(&here, r, turned ? second : first);
        recast_word(&here, r, "then");
        recast_number(&here, r, turned ? first : second);
        recast_copy(c, r, who + 3, comma);
        recast_copy(c, r, end, c->end);
        return true;
    }
    return false;
}
