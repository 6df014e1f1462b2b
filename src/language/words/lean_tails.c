/* SPDX-License-Identifier: MIT */
/* lean_tails: what hangs at the end of a clause, by what kind of phrase it is: an aim at nobody's
 * movement, how much or how hard, what it looks like, how far at most, how one is left, whose way
 * or hands it is out of: see lean.h. */
#include "language/words/lean.h"

#include "language/words/loose_read.h"
#include "language/words/people.h"

/* Where what is said from `at` on ends: at a mark, or at what joins. */
static const struct token *tail_to(const struct cursor *c, const struct token *at)
{
    while (at < c->end && !joint_at(at)) {
        at++;
    }
    return at;
}

/* Nobody by number, no spot, no condition, nothing that somebody does, from there to there. */
static bool says_nothing(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const turns[] = {"not",   "if",   "when",    "unless", "until", "or",
                                        "once",  "till", "instead", "never",  "else",  "before",
                                        "while", "then", "except",  "after",  NULL};
    const struct place *place;
    for (const struct token *at = from; at < to; at++) {
        if (at->kind != TOKEN_WORD || token_is_among(at, turns) || spot_end(c, at, &place)) {
            return false;
        }
    }
    return from < to;
}

/* him, it, them; the ball, his man, any help: whom or what an aim is at. */
static bool aimed_at(const struct token *at, const struct token *end)
{
    static const char *const whom[] = {"him", "her", "it", "them", "himself", "herself", NULL};
    static const char *const whose[] = {"his", "her", "their", "its", "any", "some", "more", NULL};
    return at < end && (token_is_among(at, whom) || at->filler || token_is_among(at, whose));
}

static bool defends_before(const struct cursor *c, const struct token *at)
{
    while (at > c->at && at->kind != TOKEN_DEFENDER) {
        at--;
    }
    return at->kind == TOKEN_DEFENDER;
}

/* to freeze him, to slow the ball: a verb of nobody's movement, and what it is about. `to give 1
 * room`: 1 does nothing in it. */
static void aim_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const gives[] = {"give", "leave", "buy", "offer", "show", NULL};
    static const char *const rooms[] = {"room",   "space", "time", "lane", "look",
                                        "outlet", "angle", "gap",  "seam", NULL};
    if (!token_is_word(at, "to") || at < c->at + 2 || at + 2 >= c->end) {
        return;
    }
    const struct token *verb = at + 1, *whom = verb + 1, *to = tail_to(c, verb);
    const struct place *place;
    bool gives_room = token_is_among(verb, gives) && attacker_at(whom, c->end) && whom + 1 < to &&
                      token_is_among(to - 1, rooms);
    bool aim = aimed_at(whom, to) && verb->kind == TOKEN_WORD && !verb->filler &&
               !verb_at(c, verb) && !act_begins(verb, c->end, false) &&
               !(defends_before(c, at) && act_begins(verb, c->end, true)) &&
               says_nothing(c, verb, to);
    if ((aim || gives_room) && !spot_end(c, at + 1, &place)) {
        add_cut(cuts, token_is_mark(at - 1, ',') ? at - 1 : at, to);
    }
}

/* as hard as he can, as wide as possible. */
static void degree_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const ends[] = {"as he can",     "as she can",  "as they can",
                                       "as possible",   "as can be",   "as ever",
                                       "as he is able", "as he likes", NULL};
    static const char *const when[] = {"soon", "long", "quick", "quickly", "late", "early", "deep",
                                       "far",  "high", "low",   "close",   "near", NULL};
    const struct token *how = at + 1;
    if (!token_is_word(at, "as") || at < c->at + 2 || how + 1 >= c->end) {
        return;
    }
    struct cursor trial = line_look(c, how + 1);
    if (!token_is_among(how, when) && how->kind == TOKEN_WORD && take_among(&trial, ends)) {
        add_cut(cuts, at, trial.at);
    }
}

/* as if the house were on fire: how it looks; not what he is about to do. */
static void likeness_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const likes[] = {"as if", "as though", NULL};
    struct cursor trial = line_look(c, at);
    if (at < c->at + 2 || !take_among(&trial, likes)) {
        return;
    }
    const struct token *to = tail_to(c, trial.at);
    for (const struct token *word = trial.at; word < to; word++) {
        if (token_is_word(word, "to") || verb_at(c, word)) {
            return;
        }
    }
    if (says_nothing(c, trial.at, to)) {
        add_cut(cuts, at, to);
    }
}

/* no further than that: where it ends is said; no deeper than the nail would be another end. */
static void limit_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const limits[] = {"no deeper than that",    "no further than that",
                                         "no farther than that",   "no lower than that",
                                         "no higher than that",    "no more than that",
                                         "no further than needed", NULL};
    struct cursor trial = line_look(c, at);
    if (at > c->at + 2 && take_among(&trial, limits)) {
        add_cut(cuts, token_is_mark(at - 1, ',') ? at - 1 : at, trial.at);
    }
}

/* a little, a bit, a touch: how much of a way whose end is said. */
static void little_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const bits[] = {"little", "bit", "touch", "hair", "tad", "notch", NULL};
    static const char *const next[] = {"to", "into",  "up",   "down", "out",  "back", "over",
                                       "in", "right", "left", "off",  "away", "from", NULL};
    bool lone = at + 1 == c->end || joint_at(at + 1) || token_is_among(at + 1, next);
    bool led = at > c->at && (at[-1].filler || token_is_word(at - 1, "a"));
    if (token_is_among(at, bits) && led && lone && at > c->at + 2) {
        add_cut(cuts, at, at + 1);
    }
}

/* who is wide open, being free, where he can shoot: how one is left, or what he could do. */
static void hanging_state(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const leads[] = {"who is",       "who are",       "who's",
                                        "being",        "where he is",   "where she is",
                                        "where he can", "where she can", NULL};
    static const char *const states[] = {
        "open",  "free", "alone", "unguarded", "uncovered", "ready", "set",     "empty",
        "shoot", "see",  "score", "unseen",    "loose",     "clear", "waiting", NULL};
    struct cursor trial = line_look(c, at);
    if (at < c->at + 2 || !take_among(&trial, leads)) {
        return;
    }
    const struct token *to = tail_to(c, trial.at);
    bool state = false;
    for (const struct token *word = trial.at; word < to; word++) {
        state = state || token_is_among(word, states);
    }
    bool mark = to == c->end || to->kind == TOKEN_MARK ||
                (token_is_word(to, "and") && attacker_at(to + 1, c->end)); /* and cuts: who? */
    if (state && mark && says_nothing(c, trial.at, to)) {
        bool comma = token_is_mark(at - 1, ',');
        add_cut(cuts, comma ? at - 1 : at, to);
    }
}

/* and is cut off, and gets walled off: what stops him, before what he does of it. */
static void stopped_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const leads[] = {"and is", "and gets", "but is", "but gets", NULL};
    static const char *const stops[] = {
        "cut off",   "stopped",    "walled off",    "shut off",      "met", "met there",
        "contained", "closed off", "cut off there", "stopped there", NULL};
    struct cursor trial = line_look(c, at);
    if (at > c->at + 1 && take_among(&trial, leads) && take_among(&trial, stops) &&
        (trial.at == c->end || joint_at(trial.at))) {
        add_cut(cuts, at, trial.at);
    }
}

/* with x4 on his back: where his own defender is meanwhile. */
static void on_back_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const wheres[] = {
        "on his back", "on her back",  "behind him",   "behind her", "on his hip",
        "on her hip",  "on his heels", "on her heels", "trailing",   "chasing",
        "on his tail", "on her tail",  "in tow",       NULL};
    if (!token_is_word(at, "with") || at < c->at + 2 || at + 2 >= c->end ||
        at[1].kind != TOKEN_DEFENDER || at[1].possessive) {
        return;
    }
    struct cursor trial = line_look(c, at + 2);
    bool own = false;
    for (const struct token *who = at; who > c->at && !own && !joint_at(who - 1); who--) {
        own = attacker_at(who - 1, c->end) == (int)at[1].number;
    }
    if (own && take_among(&trial, wheres)) {
        add_cut(cuts, at, trial.at);
    }
}

/* , who looks at the rim: the receiver only turns or looks. */
static void looks_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const looks[] = {"who looks", "who turns", "who faces", "who squares",
                                        "who reads", "who sees",  NULL};
    struct cursor trial = line_look(c, at);
    if (at < c->at + 3 || !take_among(&trial, looks)) {
        return;
    }
    const struct token *to = trial.at;
    while (to < c->end && to->kind == TOKEN_WORD && !joint_at(to)) {
        to++;
    }
    bool over = to == c->end || sentence_ends(to);
    for (const struct token *word = trial.at; word < to; word++) {
        over = over && !verb_at(c, word) && !ends_in_ing(word);
    }
    if (over) {
        add_cut(cuts, token_is_mark(at - 1, ',') ? at - 1 : at, to);
    }
}

/* out of everyone's way, out of the way: where he is not to stand. */
static void out_of_way(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    enum { FAR = 5 };
    struct cursor trial = line_look(c, at);
    if (at < c->at + 2 || !take_words(&trial, "out of")) {
        return;
    }
    const struct token *to = trial.at;
    while (to < c->end && to < trial.at + FAR && to->kind != TOKEN_MARK &&
           !token_is_word(to, "way")) {
        to++;
    }
    if (to < c->end && token_is_word(to, "way") && to < trial.at + FAR) {
        add_cut(cuts, at, to + 1);
    }
}

/* on time and on target: a second one of how, behind the first. */
static void how_again(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const leads[] = {"on", "in", "with", "without", "at", "under", NULL};
    if (!token_is_word(at, "and") || at < c->at + 3 || at + 2 >= c->end ||
        !token_is_among(at + 1, leads)) {
        return;
    }
    const struct token *to = tail_to(c, at + 1), *from = at;
    while (from > c->at + 2 && !token_is_among(from, leads) && !joint_at(from - 1)) {
        from--;
    }
    if (token_is_among(from, leads) && to > at + 2 && idle_words(c, from + 1, at) &&
        idle_words(c, at + 2, to)) {
        add_cut(cuts, from, to);
    }
}

/* while staying low, using a wide stance: how, beside what is done. */
static void manner_tail(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const manners[] = {"staying", "keeping", "holding", "looking",
                                          "using",   "showing", "leaning", NULL};
    const struct token *ing = at + (token_is_word(at, "while") ? 1 : 0);
    if (at < c->at + 3 || ing + 1 >= c->end || !token_is_among(ing, manners) || joint_at(at - 1)) {
        return;
    }
    const struct token *to = tail_to(c, ing);
    bool over = to == c->end || sentence_ends(to);
    if (over && says_nothing(c, ing, to) && idle_words(c, ing + 1, to)) {
        add_cut(cuts, at, to);
    }
}

void cuts_find_tails(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    if (at->kind != TOKEN_WORD) {
        return;
    }
    how_again(c, at, cuts);
    aim_tail(c, at, cuts);
    degree_tail(c, at, cuts);
    likeness_tail(c, at, cuts);
    limit_tail(c, at, cuts);
    little_tail(c, at, cuts);
    hanging_state(c, at, cuts);
    manner_tail(c, at, cuts);
    stopped_tail(c, at, cuts);
    on_back_tail(c, at, cuts);
    looks_tail(c, at, cuts);
    out_of_way(c, at, cuts);
}
