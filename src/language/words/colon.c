/* SPDX-License-Identifier: MIT */
/* colon: what a colon joins: a sentence and what it is called, in front or behind; two sentences;
 * what several do, and where each of them goes. Rules of reshape.h. */
#include "language/words/reshape.h"

#include "language/words/people.h"

/* ---- : a ghost ---- */

/* What it was called, behind it: an article, and nobody, and no place. */
bool shape_tail(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"a", "an", "the", "our", "this", NULL};
    enum { LONGEST = 6 };
    if (!token_is_mark(at, ':') || at == c->at || at + 2 >= c->end || c->end - at > LONGEST ||
        !token_is_among(at + 1, leads)) {
        return false;
    }
    const struct place *place;
    struct cursor noun = line_look(c, at + 1);
    struct phrase phrase;
    if (phrase_noun_read(&noun, &phrase)) { /* : the screen: he sets it */
        return false;
    }
    for (const struct token *word = at + 1; word < c->end; word++) {
        if (word->kind != TOKEN_WORD || token_is_among(word, turning_words) ||
            spot_end(c, word, &place)) {
            return false;
        }
    }
    recast_copy(c, r, c->at, at);
    r->told = span_join(at[1].span, c->end[-1].span);
    return true;
}

/* ---- two sentences ---- */

/* Who acts in the clause before the colon, or whose thing it is about. */
static const struct token *about_whom(const struct cursor *c, const struct token *colon,
                                      const struct token **clause)
{
    static const char *const talk[] = {"so", "then", "now", "and", "but", NULL};
    *clause = colon;
    while (*clause > c->at && (*clause)[-1].kind != TOKEN_MARK &&
           !token_is_word(*clause - 1, "so")) {
        --*clause;
    }
    const struct token *who = past_fillers(*clause, colon);
    while (who < colon && token_is_among(who, talk)) {
        who = past_fillers(who + 1, colon);
    }
    return who < colon && who->kind == TOKEN_NUMBER && who->integer ? who : NULL;
}

static void put_number_of(const struct cursor *c, struct recast *r, const struct token *who)
{
    struct cursor here = line_look(c, who);
    recast_number(&here, r, (int)who->number);
}

/* What is said behind the colon, of whom it is: he, as the one in front of it. */
static bool put_behind_colon(const struct cursor *c, struct recast *r, const struct token *colon,
                             const struct token *who, bool goes_on)
{
    struct cursor behind = line_look(c, colon + 1);
    if (take_among(&behind, he_or_she)) {
        if (!who || !verb_at(c, behind.at)) {
            return false;
        }
        put_number_of(c, r, who);
        recast_copy(c, r, behind.at, c->end);
        return true;
    }
    bool acts = subject_verb_is(&behind) || clause_is(&behind);
    bool verb = !acts && verb_begins(&behind);
    if (!acts && !verb && goes_on && who && word_is(&behind, 0, "off")) { /* snakes it: off 5 */
        struct cursor here = line_look(c, colon + 1);
        struct who one = {.kind = WHO_PLAYER, .number = (int)who->number, .span = who->span};
        put_number_of(c, r, who);
        recast_word(&here, r, above_holds(c, &one) ? "dribbles" : "comes");
        recast_copy(c, r, colon + 1, c->end);
        return true;
    }
    if (!acts && !verb) {
        return false;
    }
    if (verb && goes_on && who) {
        put_number_of(c, r, who);
    }
    recast_copy(c, r, colon + 1, c->end);
    return true;
}

/* 5 gives the flex screen: 2 cuts: for whom it is stands behind it. */
static void put_user(const struct cursor *c, struct recast *r, const struct token *colon)
{
    static const char *const screens[] = {"screen", "pick", "pin-down", "flare", NULL};
    const struct token *user = past_fillers(colon + 1, c->end);
    struct cursor here = line_look(c, colon);
    if (token_is_among(colon - 1, screens) && attacker_at(user, c->end)) {
        recast_word(&here, r, "for");
        recast_copy(c, r, user, user + 1);
    }
}

/* 3 cuts and 4 looks for him: bounce it in: one behind the other. */
bool shape_stop(const struct cursor *c, const struct token *at, struct recast *r)
{
    const struct token *clause;
    if (!token_is_mark(at, ':') || at == c->at || at + 1 >= c->end || remark_judges(c, c->at, at)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    put_user(c, r, at);
    recast_mark(c, r, '.');
    return put_behind_colon(c, r, at, about_whom(c, at, &clause), false);
}

/* ---- what it is called, by whom it is done ---- */

/* What one does says no more than what it is called. */
static bool announces(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const acts[] = {"play",       "plays",
                                       "run",        "runs",
                                       "make",       "makes",
                                       "work",       "works",
                                       "snake",      "snakes",
                                       "scissor",    "scissors",
                                       "criss",      "cross",
                                       "crosses",    "split",
                                       "splits",     "swap",
                                       "swaps",      "switch",
                                       "exchange",   "interchange",
                                       "is between", "trade",
                                       "trades",     "pass it back and forth",
                                       NULL};
    static const char *const uses[] = {"use", "uses", "take", "takes", "accept", NULL};
    static const char *const never[] = {
        "doesn't",  "does not", "never",        "is not",       "isn't",    "don't",
        "do not",   "is fake",  "is just fake", "is only fake", "is decoy", "is only decoy",
        "is bluff", NULL};
    for (const struct token *at = from; at < to; at++) {
        struct cursor trial = line_look(c, at);
        bool not = take_among(&trial, never); /* does not use it: rejects it */
        if (not || take_among(&trial, acts)) {
            struct cursor he = line_look(c, to + 1); /* and what he does instead */
            return none_among(trial.at, to, turning_words) &&
                   (!not || (none_among(trial.at, to, uses) && take_among(&he, he_or_she)));
        }
    }
    return false;
}

/* 1 and 2 play give and go: of the two it is the one who is named behind it that begins. */
static bool two_play(const struct cursor *c, const struct token *from, const struct token *to)
{
    struct cursor trial = line_look(c, from);
    while (trial.at < to && !take_two_name(&trial)) {
        trial.at++;
    }
    return trial.at < to || !none_among(from, to, (const char *const[]){"game", "go", NULL});
}

/* Who is named in front acts behind, or it goes on with the only one. */
static bool all_behind(const struct cursor *c, const struct token *from, const struct token *colon,
                       const struct token *who)
{
    struct cursor behind = line_look(c, colon + 1);
    bool goes_on = take_among(&behind, he_or_she) || verb_begins(&behind) ||
                   (who && word_is(&behind, 0, "off"));
    bool two = two_play(c, from, colon) && subject_verb_is(&behind);
    for (const struct token *at = from; at < colon; at++) {
        bool player = at->kind == TOKEN_NUMBER && !(at == who && goes_on);
        if (at->kind == TOKEN_DEFENDER || at->kind == TOKEN_QUOTED || sentence_ends(at) ||
            (player && !two && !(goes_on && who) &&
             !names_player(colon + 1, c->end, (int)at->number))) {
            return false;
        }
    }
    return true;
}

/* 2 and 1 play give-and-go: 2 passes and cuts: only what is done. */
bool shape_label(const struct cursor *c, const struct token *at, struct recast *r)
{
    const struct token *clause;
    if (!token_is_mark(at, ':') || at == c->at || at + 1 >= c->end) {
        return false;
    }
    const struct token *who = about_whom(c, at, &clause);
    if (remark_judges(c, c->at, clause) || !announces(c, clause, at) ||
        !all_behind(c, clause, at, who)) {
        return false;
    }
    recast_copy(c, r, c->at, clause);
    r->told = span_join(clause->span, at[-1].span);
    return put_behind_colon(c, r, at, who, true);
}

/* ---- 4 up to the elbow, 5 down to the block ---- */

/* Past the words that only say which way: up, underneath, along the baseline, straight. */
static const struct token *past_way(const struct cursor *c, const struct token *at)
{
    static const char *const ways[] = {
        "underneath", "under",    "over",  "along",  "across",     "around",   "through",
        "behind",     "straight", "wide",  "high",   "low",        "baseline", "basket",
        "rim",        "lane",     "right", "middle", "diagonally", "deep",     "out",
        "up",         "down",     "back",  "top",    NULL};
    enum { FAR = 6 };
    for (const struct token *far = at + FAR; at < c->end && at < far; at++) {
        struct cursor leg = line_look(c, at);
        if (leg_follows(&leg)) {
            return at;
        }
        if (!at->filler && !token_is_among(at, ways)) {
            return NULL;
        }
    }
    return NULL;
}

/* off 5 and 4: of a list that is gone off. */
static bool second_off(const struct cursor *c, const struct token *who)
{
    return who > c->at + 2 && token_is_word(who - 1, "and") && number_token(who - 2) &&
           token_is_word(who - 3, "off");
}

/* The verb that a leg without one stands for, `side`: only a side, of the spot before. */
static const char *leg_said(const struct cursor *c, const struct token *who, bool *side)
{
    static const char *const sides[] = {"to left", "to right", "left", "right", NULL};
    struct cursor trial = line_look(c, who + 1);
    *side = false;
    if (!attacker_at(who, c->end) || !clause_begins_at(c, who) || second_off(c, who)) {
        return NULL;
    }
    struct cursor off = trial, alone = trial;
    if (take_words(&off, "off") && attacker_at(past_fillers(off.at, c->end), c->end)) {
        return "comes";
    }
    if (take_words(&off, "for")) {
        return attacker_at(past_fillers(off.at, c->end), c->end) ? "screens" : NULL;
    }
    if (take_among(&alone, sides) && (alone.at == c->end || clause_ends(alone.at))) {
        *side = true;
        return "goes";
    }
    bool down = word_is(&trial, 0, "down"); /* no defender's verb here */
    return (down || !verb_begins(&trial)) && past_way(c, trial.at) ? "goes" : NULL;
}

/* short corner, wing: the spot that was named before `at`, without its side; NULL: none. */
static const struct token *spot_told_before(const struct cursor *c, const struct token *at,
                                            const struct token **end)
{
    static const char *const sides[] = {"left", "right", NULL};
    const struct place *place;
    while (at > c->at &&
           !(token_is_among(at - 1, sides) && (*end = spot_end(c, at - 1, &place)) && *end > at)) {
        at--;
    }
    return at > c->at ? at : NULL;
}

/* One leg with its verb, up to where the next one begins. */
static bool put_leg_verb(const struct cursor *c, struct recast *r, const struct token *who,
                         const char *verb, bool side, const struct token *to)
{
    struct cursor here = line_look(c, who);
    recast_copy(c, r, who, who + 1);
    recast_word(&here, r, verb);
    if (!side) {
        recast_copy(c, r, who + 1, to);
        return true;
    }
    const struct token *spot_to = NULL, *spot = spot_told_before(c, who, &spot_to), *word = who + 1;
    while (word->filler || token_is_word(word, "to")) {
        word++;
    }
    if (!spot) {
        return false;
    }
    recast_word(&here, r, "to");
    recast_copy(c, r, word, word + 1);
    recast_copy(c, r, spot, spot_to);
    recast_copy(c, r, word + 1, to);
    return true;
}

/* Everybody who acts in front of the list is in it, or several are who are not named. */
static bool told_in_short(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const groups[] = {
        "bigs",   "wings",  "corners",  "guards", "posts",     "side",     "both", "two",
        "others", "rest",   "forwards", "pair",   "everybody", "everyone", "all",  "they",
        "stack",  "elbows", "blocks",   "low",    "high",      NULL};
    static const char *const moments[] = {"on", "upon", "off", NULL};
    bool several = false;
    if (token_is_among(past_fillers(from, to), moments)) { /* on his catch the guards exchange */
        return false;
    }
    for (const struct token *at = from; at < to; at++) {
        several = several || token_is_among(at, groups);
        if (at->kind == TOKEN_DEFENDER || at->kind == TOKEN_QUOTED || sentence_ends(at) ||
            token_is_among(at, turning_words) ||
            (attacker_at(at, to) && !token_is_spelled(at) &&
             !names_player(to, c->end, (int)at->number))) {
            return false;
        }
        several = several || attacker_at(at, to);
    }
    return several;
}

/* Each leg from `from` on with its verb, of screens if only those are told of; gives how many. */
static size_t put_legs(const struct cursor *c, struct recast *r, const struct token *from,
                       bool screens)
{
    size_t legs = 0;
    while (from < c->end) {
        bool side, other;
        const char *verb = leg_said(c, from, &side);
        const struct token *next = from + 1;
        while (verb && next < c->end && !leg_said(c, next, &other)) {
            next++;
        }
        if (!verb) {
            recast_copy(c, r, from, next);
        } else if ((screens && verb[0] != 's') || !put_leg_verb(c, r, from, verb, side, next)) {
            return 0; /* 4 and 5 screen: 4 to the wing */
        }
        legs += verb != NULL;
        from = next;
    }
    return legs;
}

static bool colon_in(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at < c->end && !token_is_mark(at, ':')) {
        at++;
    }
    return at < c->end;
}

/* The wings cross: 2 off 5 to the left, 3 along the baseline to the right: each with a verb of his
 * own. In front of a colon or a comma at `at`: left out; at the line's head: as it stands. */
bool shape_legs(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const sets[] = {"screen", "screens", "pick", "picks", "pin", "pins", NULL};
    bool side;
    if (at + 2 >= c->end) {
        return false;
    }
    if (at == c->at) {
        return !colon_in(c) && put_legs(c, r, c->at, false) > 1;
    }
    const struct token *first = past_fillers(at + 1, c->end), *from = clause_begin(c, at - 1);
    if (!(token_is_mark(at, ':') || token_is_mark(at, ',')) || !leg_said(c, first, &side) ||
        !told_in_short(c, from, at)) {
        return false;
    }
    recast_copy(c, r, c->at, from);
    r->told = span_join(from->span, at[-1].span);
    size_t legs = put_legs(c, r, first, !none_among(from, at, sets));
    return legs > 1 || (legs == 1 && token_is_mark(at, ':'));
}
