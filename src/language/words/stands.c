/* SPDX-License-Identifier: MIT */
/* stands: on which spot a player stands by the lines above: where he was sent last, or where the
 * start puts him. Follows the order of the lines, not of the floor; where the words do not tell,
 * nothing is known. And what hangs on it: two who screen for two, each on his own side. */
#include "language/words/people.h"
#include "language/words/speech.h"

static bool in_formation(const struct formation *formation, int number, struct spot_stood *out)
{
    const struct formation_spot *spot = number <= 5 ? &formation->at[number - 1] : NULL;
    if (!spot || spot->backcourt || spot->out_of_bounds || spot->between != SPOT_COUNT) {
        return false;
    }
    *out = (struct spot_stood){.spot = spot->spot, .side = spot->side};
    return true;
}

static bool on_spot(const struct place *place, struct spot_stood *out)
{
    if (!place || place->kind != PLACE_SPOT || place->backcourt) {
        return false;
    }
    *out = (struct spot_stood){.spot = place->spot, .side = place->side};
    return true;
}

const struct placing *above_placing(const struct cursor *c, const struct who *who)
{
    const struct setting_form *start = setting_of(c->top, SETTING_START);
    for (size_t i = start ? start->placings.count : 0; i-- > 0;) {
        const struct placing *placing = &start->placings.at[i];
        if (placing->kind == PLACING_FORMATION
                ? who->kind == WHO_PLAYER && who->number >= 1 && who->number <= 5
                : placing->kind == PLACING_WHO && same_who(&placing->who, who)) {
            return placing;
        }
    }
    return NULL;
}

static bool at_start(const struct cursor *c, const struct who *who, struct spot_stood *out)
{
    const struct placing *placing = above_placing(c, who);
    if (!setting_of(c->top, SETTING_START)) { /* five-out, which is the first of the table */
        return c->top && c->top->kind == BLOCK_PLAY &&
               in_formation(formation_at(0), who->number, out);
    }
    if (!placing) {
        return false;
    }
    return placing->kind == PLACING_FORMATION
               ? in_formation(formation_at(placing->formation), who->number, out)
               : on_spot(placing->place, out);
}

static bool may_act(const struct sentence *s, const struct who *who)
{
    static const struct who others = {.kind = WHO_EVERYONE_ELSE};
    return acts_in(s, who) || acts_in(s, &others);
}

/* Passes, shots and what moves nobody leave him where he is. */
static bool leaves(const struct sentence *s)
{
    enum verb_task task = verb_row(s->verb)->task;
    return task != VERB_PASS && task != VERB_SHOOT && task != VERB_HOLD;
}

bool above_stands(const struct cursor *c, const struct who *who, struct spot_stood *out)
{
    above_list list = above_sentences(c, true);
    if (who->kind != WHO_PLAYER) {
        return false;
    }
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (!may_act(s, who) || !leaves(s)) {
            continue;
        }
        bool sent = verb_row(s->verb)->task != VERB_SCREEN && s->subject.count == 1 &&
                    s->object.kind == WHO_NONE && on_spot(s->place, out);
        struct spot_stood before;
        if (sent && out->side == SIDE_NONE && at_start(c, who, &before)) {
            out->side = before.side; /* his own, where none is said */
        }
        return sent;
    }
    return at_start(c, who, out);
}

bool stood_on(const struct spot_stood *at, const struct place *place)
{
    struct place stood = {.kind = PLACE_SPOT, .spot = at->spot, .side = at->side};
    return same_spot(&stood, place);
}

/* ---- 4 and 5 screen down for 2 and 3: each for the one on his side ---- */

static bool sided(const struct spot_stood *at)
{
    return at->side == SIDE_LEFT || at->side == SIDE_RIGHT;
}

static bool two_players(struct cursor *c, struct somebody two[2])
{
    return player_here(c, &two[0]) && take_words(c, "and") && player_here(c, &two[1]) &&
           two[0].who.kind == WHO_PLAYER && two[1].who.kind == WHO_PLAYER;
}

/* the corners, both wings: who stands there. */
static bool two_on_spot(struct cursor *c, struct somebody two[2])
{
    const struct token *from = cursor_next(c);
    struct cursor trial = *c;
    enum spot spot;
    bool found[2] = {false, false};
    take_words(&trial, "both");
    if (!from || !several_spot(&trial, &spot)) {
        return false;
    }
    for (int number = 1; number <= c->players; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number, .span = from->span};
        struct spot_stood at;
        if (above_stands(c, &who, &at) && at.spot == spot && sided(&at)) {
            bool right = at.side == SIDE_RIGHT;
            if (found[right]) {
                return false;
            }
            found[right] = true;
            two[right] = somebody_numbered(c, from, who);
        }
    }
    c->at = trial.at;
    return found[0] && found[1];
}

/* Which of the two in `users` stands on the side of `one`; -1: the words do not tell. */
static int on_side_of(const struct cursor *c, const struct who *one, const struct somebody users[2])
{
    struct spot_stood at, first, second;
    if (!above_stands(c, one, &at) || !above_stands(c, &users[0].who, &first) ||
        !above_stands(c, &users[1].who, &second) || !sided(&at) || !sided(&first) ||
        !sided(&second) || first.side == second.side) {
        return -1;
    }
    return first.side == at.side ? 0 : 1;
}

static bool two_screeners(struct cursor *c, struct somebody two[2])
{
    static const char *const words[] = {"both bigs", "two bigs", "bigs", "both posts",
                                        "posts",     "big guys", NULL};
    const struct token *at = cursor_next(c);
    if (at && take_among(c, words)) {
        for (int i = 0; i < 2; i++) {
            struct who who = {.kind = WHO_PLAYER, .number = 4 + i, .span = at->span};
            two[i] = somebody_numbered(c, at, who);
        }
        return true;
    }
    return two_players(c, two);
}

/* 4 and 5 screen down for 2 and 3; for the corners; or 2 and 3 go on behind a comma. */
bool pairs_off(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody by[2], users[2];
    struct phrase phrase;
    if (!two_screeners(&trial, by)) {
        return false;
    }
    take_words(&trial, "both");
    skip_run_in(&trial);
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.verb != VERB_SCREENS ||
        (phrase.screen != SCREEN_DOWN && phrase.screen != SCREEN_PLAIN &&
         phrase.screen != SCREEN_BACK && phrase.screen != SCREEN_FLARE)) {
        return false;
    }
    bool named = take_words(&trial, "for");
    struct cursor behind = trial;
    if (!named) {
        take_mark(&trial, ',');
        take_words(&trial, "and");
    }
    if (!(two_players(&trial, users) || (named && two_on_spot(&trial, users))) ||
        same_who(&users[0].who, &by[0].who) || same_who(&users[0].who, &by[1].who)) {
        return false;
    }
    int first = on_side_of(c, &by[0].who, users), second = on_side_of(c, &by[1].who, users);
    if (first < 0 || second < 0 || first == second) {
        return false;
    }
    struct str words = phrase_words(VERB_SCREENS, PASS_PLAIN, phrase.screen, false);
    for (int i = 0; i < 2; i++) {
        if (i > 0) {
            recast_mark(c, r, ',');
        }
        recast_somebody(c, r, &by[i]);
        recast_verb(c, r, words);
        recast_word(c, r, "for");
        recast_somebody(c, r, &users[i == 0 ? first : second]);
    }
    r->to = named ? trial.at : behind.at;
    return true;
}

/* 2 and 3 switch sides, the wings trade, 4 changes with 5: each goes where the other one stands. */
bool trades(const struct cursor *c, struct recast *r)
{
    static const char *const both[] = {"switch sides",
                                       "switch",
                                       "cross",
                                       "cross over",
                                       "trade",
                                       "trade sides",
                                       "swap sides",
                                       "trade spots",
                                       "switch places",
                                       "trade places",
                                       "swap places",
                                       "swap",
                                       "switch spots",
                                       "cross each other",
                                       "swap spots",
                                       "make exchange",
                                       "exchange positions",
                                       "change positions",
                                       "exchange",
                                       "x cut",
                                       "change",
                                       "change sides",
                                       "change places",
                                       "change spots",
                                       "exchange spots",
                                       "exchange places",
                                       "interchange",
                                       NULL};
    static const char *const with[] = {"changes position with",
                                       "changes place with",
                                       "changes spot with",
                                       "exchanges position with",
                                       "exchanges places with",
                                       "makes exchange with",
                                       "switches with",
                                       "switches sides with",
                                       "changes with",
                                       "trades with",
                                       "swaps with",
                                       "exchanges with",
                                       "trades places with",
                                       "trades spots with",
                                       "swaps places with",
                                       "changes places with",
                                       "interchanges with",
                                       "changes spots with",
                                       "trades sides with",
                                       "swaps sides with",
                                       "crosses with",
                                       "x cuts with",
                                       "switches spots with",
                                       "switches places with",
                                       NULL};
    struct cursor trial = cursor_look(c);
    struct somebody two[2];
    bool pair = two_players(&trial, two);
    if (!pair) {
        trial = cursor_look(c);
        pair = two_on_spot(&trial, two) || two_screeners(&trial, two);
    }
    if (pair) {
        take_words(&trial, "both");
        pair = take_among(&trial, both);
    } else {
        trial = cursor_look(c);
        pair = player_here(&trial, &two[0]) && take_among(&trial, with) &&
               player_here(&trial, &two[1]) && !same_who(&two[0].who, &two[1].who);
    }
    if (!pair || word_is(&trial, 0, "screen") || word_is(&trial, 0, "screens")) {
        return false;
    }
    const struct token *behind = cursor_next(&trial);
    if (behind && token_is_mark(behind, ':') && behind + 1 < c->end &&
        behind[1].kind == TOKEN_NUMBER) { /* swap: 2 to the wing: where to is said of each */
        return false;
    }
    recast_somebody(c, r, &two[0]);
    recast_word(c, r, "and");
    recast_somebody(c, r, &two[1]);
    recast_word(c, r, "exchange");
    r->to = trial.at;
    return true;
}

/* The two whom two screens are for, where they are not named: they come up to the wings. */
static bool two_screened(struct cursor *c, struct somebody two[2])
{
    static const char *const words[] = {"they both", "both of them", "both cutters",
                                        "both",      "they",         NULL};
    const struct token *from = cursor_next(c);
    above_list list = above_sentences(c, false);
    size_t count = list.count;
    if (count < 2 || !take_among(c, words)) {
        return false;
    }
    for (size_t i = 0; i < 2; i++) {
        const struct sentence *s = list.at[count - 2 + i];
        if (verb_row(s->verb)->task != VERB_SCREEN || s->object.kind != WHO_PLAYER) {
            return false;
        }
        two[i] = somebody_numbered(c, from, s->object);
    }
    return !same_who(&two[0].who, &two[1].who);
}

/* to the wings: of one of them it is a wing. */
static void copy_singular(const struct cursor *c, struct recast *r, const struct token *from,
                          const struct token *to)
{
    for (struct cursor at = *c; from < to;) {
        enum spot spot;
        at.at = from;
        at.watch = NULL;
        if (!several_spot(&at, &spot) || at.at > to) {
            recast_copy(c, r, from, from + 1);
            from++;
            continue;
        }
        recast_copy(c, r, from, at.at - 1);
        struct token one = at.at[-1];
        one.text.size--;
        VEC_PUSH(c->arena, &r->tokens, one);
        from = at.at;
    }
}

/* 4 and 5 have screened for 3 and 2, who come up to the wings: each off his own screen. */
bool users_each(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody two[2];
    struct phrase phrase;
    struct who by[2], second;
    bool several;
    if (!two_players(&trial, two) && (trial = cursor_look(c), !two_screened(&trial, two))) {
        return false;
    }
    take_words(&trial, "both");
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.with_s ||
        (verb_row(phrase.verb)->task != VERB_USE && verb_row(phrase.verb)->task != VERB_MOVE)) {
        return false;
    }
    for (int i = 0; i < 2; i++) {
        if (!above_waiting_screen(c, &two[i].who, &by[i], &second, &several)) {
            return false;
        }
    }
    const struct token *end = trial.at;
    while (end < c->end && !clause_ends(end)) {
        end++;
    }
    for (int i = 0; i < 2; i++) {
        if (i > 0) {
            recast_mark(c, r, ',');
        }
        recast_somebody(c, r, &two[i]);
        recast_verb(c, r, phrase_words(phrase.verb, PASS_PLAIN, SCREEN_PLAIN, false));
        copy_singular(c, r, trial.at, end);
    }
    r->to = end;
    return !same_who(&by[0], &by[1]);
}
