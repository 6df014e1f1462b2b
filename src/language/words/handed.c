/* SPDX-License-Identifier: MIT */
/* handed: a hand-off that is told as the end of what its receiver does: `comes off it straight into
 * a hand-off from 5`, `runs off 5 for a hand-off`, `takes the ball back hand to hand`. Who hands it
 * to him is told in a sentence of its own. Rules of reshape.h. */
#include "language/words/reshape.h"

static const char *const exchanges[] = {
    "dribble hand-off", "dribble handoff", "hand-off",  "hand off", "handoff", "dho",
    "hand-back",        "handback",        "hand back", NULL};

/* Who has the ball there: the last one named before it, or the one who has it above; 0: nobody. */
static int hands_it(const struct cursor *c, const struct token *at, int receiver)
{
    struct who holder;
    for (const struct token *word = at; word-- > c->at;) {
        int number = attacker_at(word, at);
        if (number && number != receiver) {
            return number;
        }
    }
    bool held = above_holder(c, &holder) && holder.kind == WHO_PLAYER;
    if (held && holder.number != receiver) {
        return holder.number;
    }
    above_list above = above_sentences(c, false);
    const struct sentence *last = above.count > 0 ? above.at[above.count - 1] : NULL;
    bool him = last && last->subject.count == 1 && !none_among(c->at, at, him_or_her);
    return him && last->subject.at[0].number != receiver ? last->subject.at[0].number : 0;
}

/* from 5, with 5; 0: not said. */
static int from_whom_read(struct cursor *c)
{
    static const char *const froms[] = {"back from", "from", "with", "by", "of", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, froms)) {
        return 0;
    }
    const struct token *who = past_fillers(trial.at, c->end);
    int number = attacker_at(who, c->end);
    c->at = number ? who + 1 : c->at;
    return number;
}

static void take_hand_back(struct cursor *c)
{
    static const char *const backs[] = {"right back", "straight back", "back again", "back",
                                        "again",      "in return",     NULL};
    take_among(c, backs);
}

/* straight into a hand-off, for the hand-back. */
static bool into_exchange(struct cursor *c, int *from)
{
    static const char *const leads[] = {
        "straight into", "right into", "directly into", "into", "for",      "to take",
        "to get",        "to receive", "takes",         "gets", "receives", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, leads) || !take_among(&trial, exchanges)) {
        return false;
    }
    take_hand_back(&trial);
    *from = from_whom_read(&trial);
    take_hand_back(&trial);
    c->at = trial.at;
    return true;
}

/* takes the ball back hand to hand, takes it right back out of 2's hands. */
static bool out_of_hands(struct cursor *c, int *from)
{
    static const char *const takes[] = {"takes it",   "takes ball",  "gets it",      "gets ball",
                                        "takes pass", "plucks it",   "grabs it",     "to get it",
                                        "to take it", "to get ball", "to take ball", NULL};
    static const char *const hands[] = {"hand to hand", "on hand-off", "on handoff", "on hand off",
                                        "by hand",      "in hand-off", NULL};
    static const char *const outs[] = {"out of", "from", "off", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, takes)) {
        return false;
    }
    take_hand_back(&trial);
    struct who owner;
    *from = 0;
    if (!take_among(&trial, hands)) {
        if (!take_among(&trial, outs) || !owner_read(&trial, &owner) || owner.kind != WHO_PLAYER ||
            !take_words(&trial, "hands")) {
            return false;
        }
        *from = owner.number;
    } else {
        *from = from_whom_read(&trial);
    }
    c->at = trial.at;
    return true;
}

/* What he does on his way to whoever has it, and no more: runs after his pass. A use of a screen
 * tells more. */
static bool only_comes(const struct cursor *c, const struct token *from, const struct token *to,
                       int giver)
{
    static const char *const comes[] = {"runs",    "sprints", "chases",  "follows", "comes", "goes",
                                        "cuts",    "loops",   "circles", "steps",   "races", "jogs",
                                        "hustles", "darts",   "tracks",  NULL};
    static const char *const turns[] = {"not",  "if", "when",   "unless", "until", "or",
                                        "once", "as", "before", "while",  NULL};
    const struct place *place;
    struct cursor verb = line_look(c, from);
    if (!take_among(&verb, comes)) {
        return false;
    }
    for (const struct token *at = verb.at; at < to; at++) {
        int number = at->kind == TOKEN_NUMBER ? (int)at->number : 0;
        struct cursor led = line_look(c, at);
        bool to_spot = take_among(&led, place_words) && spot_end(c, led.at, &place);
        if (at->kind == TOKEN_DEFENDER || (number && number != giver) || to_spot ||
            token_is_among(at, turns) || sentence_ends(at)) {
            return false;
        }
    }
    return true;
}

/* Behind the hand-off: on the way to the slot, at the top, and drives. */
static bool put_tail(const struct cursor *c, struct recast *r, const struct token *to, int who)
{
    static const char *const ways[] = {
        "on his way to",     "on her way to", "on way to", "going to",
        "on his way toward", "on way toward", NULL};
    static const char *const wheres[] = {"at", "on", "in", NULL};
    struct cursor tail = line_look(c, to), here = line_look(c, to < c->end ? to : c->end - 1);
    const struct place *place;
    if (to == c->end || sentence_ends(to)) {
        recast_copy(c, r, to, c->end);
        return true;
    }
    if (take_among(&tail, ways)) {
        put_stop(c, r);
        recast_number(&here, r, who);
        recast_word(&here, r, "dribbles");
        recast_word(&here, r, "to");
        recast_copy(c, r, tail.at, c->end);
        return true;
    }
    if (take_among(&tail, wheres)) {
        const struct token *end = spot_end(c, tail.at, &place);
        if (!end || !(end == c->end || clause_ends(end))) {
            return false;
        }
        r->told = span_join(to->span, end[-1].span);
        to = end;
        tail.at = end;
    } else {
        tail.at = to;
    }
    if (tail.at < c->end && take_joint(&tail)) {
        put_stop(c, r);
        if (verb_begins(&tail) && !subject_verb_is(&tail)) {
            recast_number(&here, r, who);
        }
        recast_copy(c, r, tail.at, c->end);
        return true;
    }
    recast_copy(c, r, to, c->end);
    return to == c->end || sentence_ends(to);
}

/* 5 hands off to 2. */
static void put_handed(const struct cursor *here, struct recast *r, int giver, int taker)
{
    recast_number(here, r, giver);
    recast_verb(here, r, STR("hands off"));
    recast_word(here, r, "to");
    recast_number(here, r, taker);
}

/* What its receiver does before it: where that clause and his verb begin, and where it ends. */
struct hand_before {
    const struct token *clause, *verb, *stop;
    int who;
};
static bool hand_before(const struct cursor *c, const struct token *at, struct hand_before *out)
{
    struct somebody acts;
    bool own;
    out->who = acts_in_clause(c, at, &out->clause);
    out->stop = at;
    while (out->stop > c->at && clause_ends(out->stop - 1) && !sentence_ends(out->stop - 1)) {
        out->stop--;
    }
    out->clause = clause_begin(c, out->stop - 1);
    if (!clause_subject(c, out->clause, &acts, &own) || acts.who.number != out->who) {
        return false;
    }
    out->verb = own ? acts.to : out->clause;
    return out->who > 0;
}

/* comes off it: of a screen, which is not the one who hands it to him. */
static bool comes_off_screen(const struct hand_before *b, int giver)
{
    static const char *const uses[] = {"off", "curls", "uses", NULL};
    return !none_among(b->verb, b->stop, uses) && !names_player(b->verb, b->stop, giver) &&
           none_among(b->verb, b->stop, him_or_her);
}

/* The line up to the hand-off: who only comes for it comes by himself. */
static void put_hand_before(const struct cursor *c, struct recast *r, const struct hand_before *b,
                            int giver)
{
    struct cursor here = line_look(c, b->verb);
    bool use = comes_off_screen(b, giver);
    if (!use && only_comes(c, b->verb, b->stop, giver)) {
        put_before(c, r, b->clause);
        r->told = span_join(b->verb->span, b->stop[-1].span);
        return;
    }
    recast_copy(c, r, c->at, b->stop);
    if (use) {
        recast_word(&here, r, "to");
        recast_word(&here, r, "beside");
        recast_number(&here, r, giver);
    }
    put_stop(c, r);
}

/* comes off it straight into a hand-off from 5: and 5 hands off to him. */
bool shape_hand_off(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const straights[] = {"straight", "right", "directly", NULL};
    struct cursor trial = line_look(c, at);
    struct hand_before b;
    int giver = 0;
    if (at == c->at || (!into_exchange(&trial, &giver) && !out_of_hands(&trial, &giver))) {
        return false;
    }
    at -= token_is_among(at - 1, straights) && at - 1 > c->at; /* it begins there */
    if (!hand_before(c, at, &b)) {
        return false;
    }
    giver = giver ? giver : hands_it(c, at, b.who);
    if (!giver || giver == b.who) {
        return false;
    }
    put_hand_before(c, r, &b, giver);
    struct span told = r->told;
    struct cursor here = line_look(c, at);
    put_handed(&here, r, giver, b.who);
    bool put = put_tail(c, r, trial.at, b.who);
    r->told = told.source != SOURCE_NONE ? told : r->told;
    return put;
}

/* 1 and 2 meet at the slot for a dribble hand-off: who has the ball takes it there. */
bool shape_meet(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const meets[] = {"meet up", "meet", "come together", "get together", NULL};
    static const char *const wheres[] = {"at", "on", "in", NULL};
    static const char *const fors[] = {"for", "in", "on", "with", NULL};
    struct who holder;
    const struct place *place;
    int one = attacker_at(at, c->end);
    if (!one || at + 3 >= c->end || !token_is_word(at + 1, "and") || !clause_begins_at(c, at) ||
        !above_holder(c, &holder)) {
        return false;
    }
    int other = attacker_at(at + 2, c->end);
    struct cursor trial = line_look(c, at + 3), here = line_look(c, at);
    if (!other || !take_among(&trial, meets)) {
        return false;
    }
    const struct token *spot = NULL, *spot_to = NULL;
    struct cursor where = trial;
    if (take_among(&where, wheres) && (spot_to = spot_end(c, where.at, &place))) {
        spot = where.at;
        trial.at = spot_to;
    }
    if (!take_among(&trial, fors) || !take_among(&trial, exchanges) ||
        (holder.number != one && holder.number != other)) {
        return false;
    }
    int giver = holder.number, taker = giver == one ? other : one;
    recast_copy(c, r, c->at, at);
    if (spot) {
        recast_number(&here, r, giver);
        recast_word(&here, r, "dribbles");
        recast_word(&here, r, "to");
        recast_copy(c, r, spot, spot_to);
        recast_mark(c, r, ',');
        put_handed(&here, r, giver, taker);
    } else {
        put_dho(&here, r, giver, taker);
    }
    return put_tail(c, r, trial.at, taker);
}

/* 1 hands it to 3 as 3 comes up out of the corner: whom it is handed to comes by himself. */
bool shape_comes_for_it(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const ties[] = {"as", "while", "when", "who", NULL};
    static const char *const comes[] = {"comes",   "runs",  "sprints", "cuts",  "goes",
                                        "flashes", "loops", "curls",   "races", "flies",
                                        "cross",   "meet",  "pass",    NULL};
    static const char *const hands[] = {"hands",    "hand",    "pitches", "flips",
                                        "hand-off", "handoff", NULL};
    if (!token_is_among(at, ties) || at < c->at + 3 || at + 2 >= c->end) {
        return false;
    }
    bool relative = token_is_word(at, "who");
    const struct token *clause = clause_begin(c, at - 1);
    const struct token *who = relative ? at : past_fillers(at + 1, c->end);
    const struct token *whom = at - (token_is_mark(at - 1, ',') ? 2 : 1);
    struct cursor verb = line_look(c, who + 1);
    bool him = relative || token_is_among(who, subject_pronouns);
    if (none_among(clause, at, hands) || !attacker_at(whom, c->end) ||
        !(him || attacker_at(who, c->end) == attacker_at(whom, c->end)) ||
        !take_among(&verb, comes)) {
        return false;
    }
    const struct token *end = verb.at;
    const struct place *place;
    while (end < c->end && !clause_ends(end)) {
        struct cursor to = line_look(c, end);
        bool led = take_words(&to, "to") || take_words(&to, "into");
        if ((led && spot_end(c, to.at, &place)) || end->kind == TOKEN_NUMBER) {
            return false;
        }
        end++;
    }
    recast_copy(c, r, c->at, whom + 1);
    recast_copy(c, r, end, c->end);
    r->told = span_join(at->span, end[-1].span);
    return true;
}
