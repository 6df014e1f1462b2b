/* SPDX-License-Identifier: MIT */
/* apposed: what is said twice, first in short and then of each: 3 and 4 swap: 4 to the wing, 3 to
 * the corner; 5 screens the screener: he down screens for 2; five he ducks in. Rules of unfold.h.
 */
#include "language/words/unfold.h"

/* Two change, each to where the other one was, or they cross on their way. */
static const char *const changes[] = {
    "cross", "criss cross",      "swap",  "switch", "trade",  "exchange", "change", "scissor",
    "split", "go opposite ways", "x cut", "loop",   "circle", NULL};

/* ---- five he ducks in ---- */

/* Who acts begins there: nothing but what says nothing stands between it and the last joint. */
static bool heads_clause(const struct cursor *c, const struct token *at)
{
    static const char *const small[] = {"uh",      "um",   "so",    "okay", "ok",    "now",
                                        "alright", "you",  "know",  "like", "first", "well",
                                        "just",    "then", "right", NULL};
    const struct token *begin = clause_begin(c, at);
    for (; begin < at; begin++) {
        bool list = begin->kind == TOKEN_NUMBER || token_is_word(begin, "and");
        if (!begin->filler && !list && !token_is_among(begin, small)) {
            return false;
        }
    }
    return true;
}

bool doubled_subject(const struct cursor *c, struct recast *r)
{
    static const char *const said[] = {"he",        "she",     "they",     "they both", "both",
                                       "they just", "he just", "she just", NULL};
    for (const struct token *at = c->at; at + 2 < c->end; at++) {
        struct cursor trial = line_look(c, at + 1);
        bool several = at > c->at && token_is_word(&at[-1], "and");
        bool they = token_is_word(&at[1], "they"); /* 5 they cut: of others, and he is lost */
        if (!number_token(at) || !take_among(&trial, said) || they != several ||
            !heads_clause(c, at) || !(verb_begins(&trial) || word_among(&trial, changes))) {
            continue;
        }
        recast_copy(c, r, c->at, at + 1);
        recast_copy(c, r, trial.at, c->end);
        return true;
    }
    return false;
}

/* ---- what I want is ---- */

/* How things are before anybody moves, or that the coach speaks now: left out up to who acts first.
 */
bool scene_in_front(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {
        "it is",         "it's",      "this is",    "on side out",    "sideline out", "side out",
        "baseline out",  "out of",    "out of the", "versus",         "vs",           "against",
        "alright girls", "with side", "with sides", "away from ball", "with floor",   NULL};
    static const char *const turns[] = {
        "if",     "when",  "after",    "as",      "once", "not",   "then",  "while",  "until",
        "unless", "trap",  "switch",   "trails",  "that", "his",   "her",   "screen", "pick",
        "catch",  "pass",  "wrong",    "mistake", "bad",  "never", "avoid", "nobody", "no",
        "cut",    "drive", "trailing", "going",   "goes", NULL};
    struct cursor head = line_look(c, c->at);
    if (skip_talk(&head) || (!take_among(&head, what_is_said) && !take_among(&head, heads))) {
        return false;
    }
    enum { FAR = 10 };
    for (const struct token *at = head.at; at + 1 < c->end && at < head.at + FAR; at++) {
        struct cursor acts = line_look(c, at);
        if (token_is_among(at, turns) || at->kind == TOKEN_DEFENDER || sentence_ends(at)) {
            return false;
        }
        if (number_token(at) && subject_verb_is(&acts)) {
            if (!bare_before(&acts)) { /* passes to 2 and 3 cuts: who passes is lost */
                return false;
            }
            recast_copy(c, r, at, c->end);
            r->told = span_join(c->at->span, at[-1].span);
            return true;
        }
    }
    return false;
}

/* ---- a list behind a colon ---- */

enum { ITEMS_MOST = 5 };
struct leg {
    const struct token *player, *from, *to; /* what is said of him */
    bool verb;                              /* has one of its own */
    bool then;                              /* goes second */
};
struct legs {
    struct leg at[ITEMS_MOST];
    size_t count;
    const struct token *end;
};

static const struct token *find_mark(const struct token *from, const struct token *to, char mark)
{
    for (; from < to; from++) {
        if (token_is_mark(from, mark)) {
            return from;
        }
    }
    return NULL;
}

/* 4 out to the wing, 3 up to the elbow, and 2 after him to the block: each with where to. */
static bool legs_read(const struct cursor *c, const struct token *from, struct legs *out)
{
    *out = (struct legs){.count = 0};
    const struct token *at = past_fillers(from, c->end);
    while (at < c->end && out->count < ITEMS_MOST) {
        struct cursor verb = line_look(c, at + 1);
        if (!number_token(at)) {
            break;
        }
        struct leg leg = {.player = at, .from = at + 1, .verb = verb_begins(&verb)};
        const struct token *to = at + 1;
        for (bool joint = false; to < c->end && !sentence_ends(to); to++) {
            struct cursor next = line_look(c, to);
            joint = take_joint(&next);
            const struct token *who = past_fillers(next.at, c->end);
            if (joint && who < c->end && number_token(who)) {
                break;
            }
        }
        leg.to = to;
        if (to == leg.from) { /* and 4: what he does is lost */
            return false;
        }
        out->at[out->count++] = leg;
        struct cursor next = line_look(c, to);
        out->end = to;
        if (to == c->end || sentence_ends(to) || !take_joint(&next)) {
            break;
        }
        at = past_fillers(next.at, c->end);
    }
    return out->count > 0;
}

/* after him, first, next: in which order. */
static bool take_order(struct cursor *c, bool *then)
{
    static const char *const firsts[] = {"goes first", "first", "leads", "leading", NULL};
    static const char *const seconds[] = {"after him",   "after her",   "behind him",  "behind her",
                                          "goes second", "second",      "next",        "last",
                                          "follows",     "follows him", "follows her", NULL};
    bool first = take_among(c, firsts), second = !first && take_among(c, seconds);
    *then = *then || second;
    return first || second;
}

/* What the short form says each of them does: which verb stands for all. */
struct announcement {
    struct str verb;                       /* of each: goes, comes, down screens */
    bool screens;                          /* each for somebody */
    const struct token *off_from, *off_to; /* off 5 */
};

static bool take_off(struct cursor *c)
{
    static const char *const offs[] = {"off of", "off", "around", NULL};
    struct somebody who;
    return take_among(c, offs) && player_here(c, &who);
}

/* both bigs screen down, set back screens: of which kind. */
static bool screens_said(const struct token *from, const struct token *to, struct str *verb)
{
    static const char *const words[] = {"screen", "screens", "pick", "picks", "pin", "pins", NULL};
    static const struct {
        const char *word;
        enum screen_kind kind;
    } kinds[] = {{"down", SCREEN_DOWN},
                 {"back", SCREEN_BACK},
                 {"cross", SCREEN_CROSS},
                 {"flare", SCREEN_FLARE}};
    enum screen_kind kind = SCREEN_PLAIN;
    bool said = false;
    for (; from < to; from++) {
        said = said || token_is_among(from, words);
        for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
            kind = token_is_word(from, kinds[i].word) ? kinds[i].kind : kind;
        }
    }
    *verb = said ? phrase_words(VERB_SCREENS, PASS_PLAIN, kind, false) : *verb;
    return said;
}

/* they cross, go opposite ways, scissor off 5: nothing that is not said of each behind it. */
static bool announcement_read(const struct cursor *c, const struct token *colon,
                              struct announcement *out)
{
    static const char *const turns[] = {"not",  "if",     "unless", "instead", "fakes",
                                        "fake", "before", "until",  "or",      NULL};
    *out = (struct announcement){.verb = STR("goes")};
    for (const struct token *at = c->at; at < colon; at++) {
        struct cursor off = line_look(c, at);
        if (token_is_among(at, turns) || sentence_ends(at)) {
            return false;
        }
        if (!out->off_from && take_off(&off)) {
            *out = (struct announcement){.verb = STR("comes"), .off_from = at, .off_to = off.at};
        }
    }
    struct cursor trial = line_look(c, c->at);
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    struct phrase phrase;
    bool subject = subject_read(&trial, &list) && trial.refusals == mark.refusals;
    skip_run_in(&trial);
    bool verb = subject && phrase_read(&trial, FOR_ATTACKERS, &phrase);
    cursor_back(&trial, mark);
    out->screens = screens_said(c->at, colon, &out->verb);
    return out->screens || !verb || verb_runs(phrase.verb) ||
           verb_row(phrase.verb)->task == VERB_HOLD;
}

/* Who is named in the short form acts in the list. */
static bool all_listed(const struct token *from, const struct token *to, const struct legs *legs,
                       const struct announcement *all)
{
    for (const struct token *at = from; at < to; at++) {
        bool off = all->off_from && at >= all->off_from && at < all->off_to;
        bool found = at->kind != TOKEN_NUMBER || off;
        for (size_t i = 0; i < legs->count; i++) {
            found = found || legs->at[i].player->number == at->number;
        }
        if (!found) {
            return false;
        }
    }
    return true;
}

/* On the catch, 3 and 4 cross: when, in front of it; NULL: a moment that is none. */
static const struct token *moment_end(const struct cursor *c)
{
    static const char *const heads[] = {"on", "at", "off", "upon", "by", NULL};
    static const char *const signals[] = {"on slap",         "on signal", "on call",  "on whistle",
                                          "on slap of ball", "on go",     "on break", NULL};
    struct cursor trial = line_look(c, c->at), signal = trial, slap = trial;
    struct cursor_mark mark = cursor_mark(&trial);
    struct tie tie = {.word = TIE_NONE};
    static const char *const calls[] = {"slap", "signal", "call", "go", "whistle", "clap", NULL};
    struct who whose;
    if (take_among(&signal, signals)) {
        return c->at;
    }
    if (take_words(&slap, "on") && owner_read(&slap, &whose) && take_among(&slap, calls)) {
        return slap.at; /* on 3's slap */
    }
    bool head = word_among(&trial, heads), clause = clause_is(&trial);
    bool read = clause && clause_read(&trial, &tie) && trial.refusals == mark.refusals;
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    return read ? end : head || clause ? NULL : c->at;
}

/* A clause of time begins the line: no mere signal. */
static bool clause_here(const struct cursor *c)
{
    struct cursor look = line_look(c, c->at);
    return clause_is(&look);
}

static void put_leg(const struct cursor *c, struct recast *r, struct leg *leg,
                    const struct announcement *all)
{
    struct cursor trial = line_look(c, leg->from);
    take_order(&trial, &leg->then);
    take_mark(&trial, ',');
    struct phrase phrase;
    struct str bare;
    bool verb = verb_begins(&trial);
    struct cursor ing = trial;
    bool coming = !verb && phrase_ing_here(&ing, FOR_ATTACKERS, &phrase, &bare);
    if (r->tokens.count > 0) {
        recast_mark(c, r, leg->then ? '.' : ',');
    }
    if (leg->then) {
        recast_word(c, r, "then");
    }
    recast_copy(c, r, leg->player, leg->player + 1);
    if (coming) {
        struct cursor here = line_look(c, leg->from);
        put_third(&here, r, bare);
        trial = ing;
    } else if (!verb) {
        struct cursor off = trial, here = line_look(c, leg->from);
        bool uses = take_off(&off);
        recast_verb(&here, r, uses ? STR("comes") : all->verb);
        if (!uses) {
            recast_copy(c, r, all->off_from, all->off_to);
        }
    }
    recast_copy(c, r, trial.at, leg->to);
}

/* 2 and 3 cross under the basket, 2 coming out left: a comma parts them where two only change. */
static const struct token *change_end(const struct cursor *c)
{
    struct cursor trial = line_look(c, c->at);
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    bool two = subject_read(&trial, &list) && list.count == 2 && trial.refusals == mark.refusals;
    const struct token *verb = trial.at;
    cursor_back(&trial, mark);
    trial.at = verb;
    bool change = two && take_among(&trial, changes);
    for (const struct token *at = verb; change && at + 1 < c->end && !sentence_ends(at); at++) {
        if (token_is_mark(at, ',') || token_is_word(at, "so")) {
            return number_token(at + 1) ? at : NULL;
        }
    }
    return NULL;
}

/* 3 and 4 swap: 4 out to the wing, 3 up to the elbow. */
bool apposed_list(const struct cursor *c, struct recast *r)
{
    const struct token *colon = find_mark(c->at, c->end, ':');
    colon = colon ? colon : change_end(c);
    struct announcement all;
    struct legs legs;
    const struct token *moment = colon ? moment_end(c) : NULL;
    if (!moment || moment >= colon || !announcement_read(c, colon, &all) ||
        !legs_read(c, colon + 1, &legs) || legs.count < 2 ||
        !all_listed(moment, colon, &legs, &all)) {
        return false;
    }
    bool verbless = false;
    for (size_t i = 0; i < legs.count; i++) {
        struct cursor leg = line_look(c, legs.at[i].from);
        bool then = false;
        bool ordered = take_order(&leg, &then);
        verbless = verbless || !legs.at[i].verb || (ordered && all.off_from);
        bool pass = !legs.at[i].verb && word_is(&leg, 0, "to") && leg.at + 1 < c->end &&
                    number_token(past_fillers(leg.at + 1, c->end));
        if (pass) { /* UCLA: 1 to 2 */
            return false;
        }
        if (all.screens && (legs.at[i].verb || !word_is(&leg, 0, "for"))) {
            return false;
        }
    }
    if (!verbless && !token_is_word(colon, "so")) {
        return false;
    }
    bool signal = moment > c->at && moment[-1].kind == TOKEN_WORD && !clause_here(c);
    recast_copy(c, r, signal ? moment : c->at, moment);
    for (size_t i = 0; i < legs.count; i++) {
        put_leg(c, r, &legs.at[i], &all);
    }
    recast_copy(c, r, legs.end, c->end);
    r->told = span_join(signal ? c->at->span : moment->span, colon[-1].span);
    return true;
}

/* ---- a sentence behind a colon ---- */

/* The clause that begins there is of this player and of this kind. */
static bool does(const struct cursor *c, const struct token *at, int number, enum verb_task task)
{
    struct cursor trial = line_look(c, at);
    struct somebody who;
    struct phrase phrase;
    bool read = player_here(&trial, &who) && who.who.number == number;
    skip_run_in(&trial);
    return read && phrase_read(&trial, FOR_ATTACKERS, &phrase) &&
           verb_row(phrase.verb)->task == task;
}

/* What is said in front is done behind it, by the same, or is nothing that is done. */
static bool said_again(const struct cursor *c, const struct token *colon)
{
    static const char *const small[] = {"then", "now", NULL};
    struct cursor trial = line_look(c, c->at);
    struct somebody who;
    struct phrase phrase;
    bool named = player_here(&trial, &who);
    take_among(&trial, small);
    skip_run_in(&trial);
    if (!named || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return true;
    }
    struct cursor he = line_look(c, colon + 1);
    if (take_among(&he, he_or_she)) {
        skip_run_in(&he);
        struct phrase own;
        return phrase_read(&he, FOR_ATTACKERS, &own) &&
               verb_row(own.verb)->task == verb_row(phrase.verb)->task;
    }
    for (const struct token *at = colon + 1; at < c->end; at++) {
        if (does(c, at, who.who.number, verb_row(phrase.verb)->task)) {
            return true;
        }
    }
    return false;
}

/* 5 screens the screener: he down screens for 2: what is said in short is left out. */
bool announced(const struct cursor *c, struct recast *r)
{
    static const char *const turns[] = {"not",   "if",   "when",   "unless", "instead", "never",
                                        "catch", "once", "as",     "after",  "before",  "until",
                                        "or",    "pass", "switch", "read",   "option",  NULL};
    const struct token *colon = find_mark(c->at, c->end, ':');
    struct cursor he = line_look(c, colon ? colon + 1 : c->at);
    bool pronoun = colon && take_among(&he, he_or_she);
    struct cursor behind = line_look(c, colon ? colon + 1 : c->at);
    if (!colon || colon == c->at || remark_judges(c, c->at, colon) ||
        (!pronoun && !subject_verb_is(&behind)) || !said_again(c, colon)) {
        return false;
    }
    const struct token *first = NULL;
    for (const struct token *at = c->at; at < colon; at++) {
        bool player = at->kind == TOKEN_NUMBER;
        if (token_is_among(at, turns) || sentence_ends(at) || at->kind == TOKEN_DEFENDER ||
            (player && !(pronoun && !first) && !names_player(colon + 1, c->end, (int)at->number))) {
            return false;
        }
        first = player && !first ? at : first;
    }
    if (pronoun && (!first || !heads_clause(c, first))) {
        return false;
    }
    if (pronoun) {
        recast_copy(c, r, first, first + 1);
        recast_copy(c, r, he.at, c->end);
    } else {
        recast_copy(c, r, colon + 1, c->end);
    }
    r->told = span_join(c->at->span, colon[-1].span);
    return true;
}

/* Each of them begins a clause of his own behind the colon, with a verb. */
static bool all_act(const struct cursor *c, const who_list *list, const struct token *colon)
{
    for (size_t i = 0; i < list->count; i++) {
        bool acts = false;
        for (const struct token *at = colon + 1; at + 1 < c->end && !acts; at++) {
            struct cursor verb = line_look(c, at + 1);
            acts = number_token(at) && (int)at->number == list->at[i].number &&
                   verb_begins(&verb) && clause_begin(c, at) == at;
        }
        if (!acts || list->at[i].kind != WHO_PLAYER) {
            return false;
        }
    }
    return list->count > 1;
}

/* 1 passes to 4, then 1 and 2 scissor: 2 cuts first, then 1: what several do, and then each. */
bool heralded(const struct cursor *c, struct recast *r)
{
    static const char *const turns[] = {"not",    "if",    "unless", "instead", "fakes", "fake",
                                        "before", "until", "or",     "never",   "when",  NULL};
    const struct token *colon = find_mark(c->at, c->end, ':');
    if (!colon || colon == c->at) {
        return false;
    }
    const struct token *clause = clause_begin(c, colon - 1);
    struct cursor trial = line_look(c, past_fillers(clause, c->end));
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list = {NULL, 0, 0};
    bool read = subject_read(&trial, &list) && trial.refusals == mark.refusals;
    cursor_back(&trial, mark);
    for (const struct token *at = clause; at < colon && read; at++) {
        read = !token_is_among(at, turns) && at->kind != TOKEN_DEFENDER;
    }
    if (!read || !all_act(c, &list, colon)) {
        return false;
    }
    recast_copy(c, r, c->at, clause);
    recast_copy(c, r, colon + 1, c->end);
    r->told = span_join(clause->span, colon[-1].span);
    return true;
}

/* ---- to the wings, 1 right and 4 left ---- */

/* 1 on the right: who goes to which side. */
static bool side_read(struct cursor *c, const struct token **who, const char **side)
{
    static const struct entry sides[] = {{"on left", 0},  {"on right", 1}, {"to left", 0},
                                         {"to right", 1}, {"left", 0},     {"right", 1},
                                         {NULL, 0}};
    const struct token *at = cursor_next(c);
    struct cursor trial = *c;
    if (!at || !number_token(at)) {
        return false;
    }
    trial.at = at + 1;
    int value = take_entry(&trial, sides);
    static const char *const names[] = {"left", "right"};
    if (value < 0 || spot_here(&trial)) {
        return false;
    }
    *who = at;
    *side = names[value];
    c->at = trial.at;
    return true;
}

/* both pop out to the wings, 3 on the left, 2 on the right. */
bool spread_sides(const struct cursor *c, struct recast *r)
{
    static const char *const one[] = {[SPOT_WING] = "wing",
                                      [SPOT_CORNER] = "corner",
                                      [SPOT_ELBOW] = "elbow",
                                      [SPOT_BLOCK] = "block",
                                      [SPOT_SLOT] = "slot"};
    for (const struct token *at = c->at + 2; at + 2 < c->end; at++) {
        struct cursor trial = line_look(c, at);
        enum spot spot;
        const struct token *who[2];
        const char *side[2];
        if (!several_spot(&trial, &spot) || (size_t)spot >= sizeof one / sizeof *one ||
            !one[spot]) {
            continue;
        }
        take_mark(&trial, ',');
        if (!side_read(&trial, &who[0], &side[0])) {
            continue;
        }
        take_joint(&trial);
        if (!side_read(&trial, &who[1], &side[1]) || side[0] == side[1] ||
            who[0]->number == who[1]->number) {
            continue;
        }
        const struct token *clause = clause_begin(c, at);
        put_before(c, r, clause);
        for (int i = 0; i < 2; i++) {
            recast_copy(c, r, who[i], who[i] + 1);
            struct cursor here = line_look(c, who[i]);
            recast_word(&here, r, "goes");
            recast_word(&here, r, "to");
            recast_word(&here, r, side[i]);
            recast_word(&here, r, one[spot]);
            put_stop(c, r);
        }
        recast_copy(c, r, trial.at, c->end);
        return true;
    }
    return false;
}
