/* SPDX-License-Identifier: MIT */
/* turned: sentences that say last what is written first, or say who it is only by how things stand:
 * `bring it down the right side 1`, `3, cut to the rim`, `corner is open hit it`, `low man steps up
 * that's x5`, `2 catches, and 5 screens for 3`. Rules of recast_find; the last is one of those that
 * look at all up to the full stop. */
#include "language/words/speech.h"

/* ---- said to somebody ---- */

/* What is told a player by name: a verb that is no pass and takes nobody. */
static bool told_verb(struct cursor *c, struct phrase *phrase)
{
    const struct token *verb = cursor_next(c);
    if (!verb || !phrase_read(c, FOR_ATTACKERS, phrase) || phrase->with_s || ends_in_s(verb) ||
        phrase->inside) {
        return false;
    }
    enum verb_task task = verb_row(phrase->verb)->task;
    return verb_goes(phrase->verb) || task == VERB_SHOOT || task == VERB_HOLD;
}

/* cut to the rim 3: the number that ends it, and stands behind no word that takes one. */
static const struct token *name_last(const struct cursor *c, const struct token *from)
{
    static const char *const takes[] = {
        "to",      "for",   "off",    "of",      "at",       "from",    "with",   "by",
        "on",      "in",    "into",   "past",    "around",   "over",    "under",  "behind",
        "beside",  "and",   "player", "number",  "toward",   "where",   "than",   "or",
        "until",   "when",  "as",     "onto",    "replace",  "between", "near",   "inside",
        "outside", "above", "below",  "against", "opposite", "after",   "before", "while",
        "once",    "if",    "let",    "have",    NULL};
    const struct token *end = from;
    while (end < c->end && !clause_ends(end)) {
        end++;
    }
    const struct token *name = end - 1;
    bool number = name > from && name->kind == TOKEN_NUMBER && !name->possessive && name->integer;
    if (!number || token_is_among(&name[-1], takes) || name[-1].kind == TOKEN_NUMBER ||
        name[-1].filler) {
        return NULL;
    }
    return name;
}

/* bring it down the right side 1; 3, cut to the rim. */
bool spoken_to(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody who;
    if (somebody_read(&trial, &who)) {
        bool comma = who.who.kind == WHO_PLAYER && take_mark(&trial, ',');
        const struct token *verb = trial.at;
        if (!comma || !told_verb(&trial, &phrase)) {
            return false;
        }
        recast_somebody(c, r, &who);
        r->to = verb;
        return true;
    }
    trial = cursor_look(c);
    const struct token *verb = cursor_next(&trial);
    if (!told_verb(&trial, &phrase)) {
        return false;
    }
    const struct token *name = name_last(c, trial.at);
    if (!name) {
        return false;
    }
    recast_copy(c, r, name, name + 1);
    recast_copy(c, r, verb, name);
    r->to = name + 1;
    return true;
}

/* ---- who is open gets it ---- */

/* corner is open hit it; 4 is open, so find him: a pass to who is open. */
bool open_hit(const struct cursor *c, struct recast *r)
{
    static const char *const opens[] = {"is open",      "is wide open",  "is free",  "is all alone",
                                        "is left open", "is left alone", "is there", NULL};
    static const char *const joints[] = {"so", "and", "then", "just", NULL};
    static const char *const passes[] = {"hit",         "find",       "feed",       "throw it to",
                                         "pass to",     "pass it to", "give it to", "get it to",
                                         "swing it to", "kick it to", "look for",   "use",
                                         NULL};
    static const struct entry kinds[] = {
        {"skip it to", PASS_SKIP}, {"skip to", PASS_SKIP}, {"lob it to", PASS_LOB}, {NULL, 0}};
    static const char *const thems[] = {"it", "him", "her", "that", "there", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    if (!somebody_read(&trial, &who) || !take_among(&trial, opens)) {
        return false;
    }
    take_mark(&trial, ',');
    take_mark(&trial, ':');
    while (take_among(&trial, joints)) {
    }
    int kind = take_entry(&trial, kinds);
    if ((kind < 0 && !take_among(&trial, passes)) || !take_among(&trial, thems) ||
        !part_ends(&trial)) {
        return false;
    }
    recast_word(c, r, kind == PASS_SKIP ? "skips" : kind == PASS_LOB ? "lobs" : "passes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &who);
    r->to = trial.at;
    struct who holder;
    return above_holder(c, &holder) && !same_who(&holder, &who.who) && recast_holder(c, r);
}

/* ---- they trade places ---- */

/* 2 down for 4, they trade places: the two of the sentence right before it. */
bool trade_places(const struct cursor *c, struct recast *r)
{
    static const char *const theys[] = {"they", "both", "those two", "the two", "they both", NULL};
    struct cursor trial = cursor_look(c);
    const struct sentence *last = sentence_before(c);
    if (!last) {
        above_list above = above_sentences(c, false);
        last = above.count > 0 ? above.at[above.count - 1] : NULL;
    }
    if (!last || !take_among(&trial, theys) || !trade_is(&trial)) {
        return false;
    }
    bool two = last->subject.count == 2 && last->object.kind == WHO_NONE;
    bool pair = last->subject.count == 1 && who_is_one(&last->object);
    if ((!two && !pair) || !who_is_one(&last->subject.at[0])) {
        return false;
    }
    recast_acts(c, r, &last->subject.at[0]);
    recast_acts(c, r, two ? &last->subject.at[1] : &last->object);
    r->to = trial.at;
    return r->taken = true;
}

/* ---- who that is, said behind ---- */

/* low man steps up that's x5: x5 does. */
bool thats_who(const struct cursor *c, struct recast *r)
{
    static const char *const men[] = {
        "low man",   "help man",      "help",     "helper",      "nail man",   "top man",
        "weak side", "weak side man", "big",      "low helper",  "bottom man", "help defender",
        "far man",   "one of them",   "next man", "nearest man", "low guy",    "help side man",
        "last man",  "somebody",      NULL};
    static const char *const thats[] = {"that is", "which is", "it is", "meaning", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    if (!take_among(&trial, men)) {
        return false;
    }
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_DEFENDERS, &phrase)) {
        return false;
    }
    for (; trial.at < c->end && (!clause_ends(trial.at) || token_is_mark(trial.at, ','));
         trial.at++) {
        struct cursor that = trial;
        take_mark(&that, ',');
        bool own = that.at < c->end && that.at->possessive && str_is(that.at->text, "that");
        that.at += own; /* that's: the scanner keeps the 's apart */
        const struct token *name = own || take_among(&that, thats) ? cursor_next(&that) : NULL;
        if (name && name->kind == TOKEN_DEFENDER && !name->possessive) {
            recast_copy(c, r, name, name + 1);
            recast_copy(c, r, verb, trial.at);
            r->to = name + 1;
            return true;
        }
    }
    return false;
}

/* ---- a catch that only says when ---- */

/* 2 catches, and 5 screens for 3: when 2 catches, 5 screens for 3. */
bool catch_in_front(const struct cursor *c, struct recast *r)
{
    static const char *const catches[] = {"catches it", "catches the pass", "catches the ball",
                                          "catches", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    const struct token *from = cursor_next(c);
    if (!somebody_read(&trial, &who) || who.who.kind != WHO_PLAYER ||
        !take_among(&trial, catches)) {
        return false;
    }
    const struct token *to = trial.at;
    if (!take_joint(&trial) || !subject_verb_is(&trial)) {
        return false;
    }
    recast_when(c, r, from, to);
    r->to = trial.at;
    return true;
}
