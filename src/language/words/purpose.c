/* SPDX-License-Identifier: MIT */
/* purpose: what a sentence of its own is said in with a preposition: gives way by cutting, off a
 * down screen by 4, to receive at the top, for 1's pass, to drive to the rim. Rules of unfold.h. */
#include "language/words/unfold.h"

static bool names_anybody(const struct token *from, const struct token *to)
{
    for (; from < to; from++) {
        if (from->kind == TOKEN_NUMBER || from->kind == TOKEN_DEFENDER) {
            return true;
        }
    }
    return false;
}

/* ---- gives way by cutting ---- */

static const char *const ways[] = {"gives way",
                                   "makes way",
                                   "makes room",
                                   "makes space",
                                   "clears out",
                                   "clears",
                                   "clears way",
                                   "opens up",
                                   "vacates",
                                   "empties",
                                   "leaves",
                                   "gets out of way",
                                   "gets out of his way",
                                   "gets out of her way",
                                   "gets out of their way",
                                   "answers",
                                   "responds",
                                   "reacts",
                                   "starts",
                                   "starts out",
                                   "begins",
                                   "finishes",
                                   "ends",
                                   "follows",
                                   "continues",
                                   "splits",
                                   "splits off",
                                   "helps",
                                   "opens it",
                                   "opens",
                                   "frees up",
                                   "goes on",
                                   NULL};

/* 3 vacates the post by going to the left corner: 3 goes to the left corner. */
bool way_by(const struct cursor *c, struct recast *r)
{
    for (const struct token *by = c->at + 2; by + 1 < c->end; by++) {
        struct cursor ing = line_look(c, by + 1);
        struct phrase phrase;
        struct str bare;
        struct somebody who;
        bool own;
        const struct token *clause = clause_begin(c, by);
        if (!token_is_word(by, "by") || !phrase_ing_here(&ing, FOR_ATTACKERS, &phrase, &bare) ||
            !clause_subject(c, clause, &who, &own)) {
            continue;
        }
        struct cursor verb = line_look(c, past_fillers(own ? who.to : clause, c->end));
        const struct token *from = verb.at;
        if ((!take_among(&verb, ways) && verb_begins(&verb)) || names_anybody(verb.at, by)) {
            continue; /* what moves him by itself is no way to do it */
        }
        recast_copy(c, r, c->at, from);
        struct cursor here = line_look(c, by);
        put_third(&here, r, bare);
        recast_copy(c, r, ing.at, c->end);
        r->told = span_join(from->span, by[-1].span);
        return true;
    }
    return false;
}

/* ---- off a down screen by 4 ---- */

struct named_screen {
    const struct token *lead, *end;  /* off ... by 4 at the elbow */
    const struct token *at, *at_end; /* where it is set; NULL: not said */
    struct somebody by;
    struct phrase screen;
    bool owned; /* 4's screen */
};

static bool take_by(struct cursor *c, struct somebody *by)
{
    static const char *const bys[] = {
        "set for him by", "set for her by", "set by", "from", "by", "of", NULL};
    return take_among(c, bys) && player_here(c, by) && by->who.kind == WHO_PLAYER;
}

/* the screen of 4, 4's pick, a flare set by 5. */
static bool screen_noun(struct cursor *c, struct named_screen *out)
{
    struct who owner;
    const struct token *from = cursor_next(c);
    if (owner_read(c, &owner)) {
        out->by = somebody_numbered(c, from, owner);
        out->owned = true;
        return owner.kind == WHO_PLAYER && phrase_noun_read(c, &out->screen) &&
               verb_row(out->screen.verb)->task == VERB_SCREEN;
    }
    return phrase_noun_read(c, &out->screen) && verb_row(out->screen.verb)->task == VERB_SCREEN &&
           take_by(c, &out->by);
}

static bool named_screen_at(const struct cursor *c, const struct token *at,
                            struct named_screen *out)
{
    static const char *const leads[] = {"off of", "off",   "behind",      "around", "round",
                                        "over",   "using", "uses",        "use",    "via",
                                        "with",   "from",  "over top of", "takes",  NULL};
    static const char *const ats[] = {"at", "on", NULL};
    struct cursor trial = line_look(c, at);
    *out = (struct named_screen){.lead = at};
    if (!take_among(&trial, leads) || !screen_noun(&trial, out)) {
        return false;
    }
    struct cursor place = trial;
    if (take_among(&place, ats)) {
        out->at = past_fillers(place.at, c->end);
        bool spot = spot_here(&place) != NULL;
        out->at = spot ? out->at : NULL;
        out->at_end = place.at;
        trial.at = spot ? place.at : trial.at;
    }
    out->end = trial.at;
    return true;
}

static void put_named_screen(const struct cursor *c, struct recast *r,
                             const struct named_screen *named, const struct who *user)
{
    bool ball = named->screen.screen == SCREEN_PLAIN && above_holds(c, user);
    struct cursor here = line_look(c, named->lead);
    recast_somebody(c, r, &named->by);
    recast_verb(&here, r,
                ball ? STR("ball screens")
                     : phrase_words(VERB_SCREENS, PASS_PLAIN, named->screen.screen, false));
    recast_word(&here, r, "for");
    recast_number(&here, r, user->number);
    if (named->at) {
        recast_word(&here, r, "at");
        recast_copy(c, r, named->at, named->at_end);
    }
    recast_mark(&here, r, '.');
}

/* off 4's screen, where 5's waits for who goes off: the strict reading tells which one is meant. */
static bool another_waits(const struct cursor *c, const struct who *user, bool owned)
{
    struct who waits, second;
    bool several;
    return owned && above_waiting_screen(c, user, &waits, &second, &several);
}

/* The verb that the screen stands behind is one of a move, and may be used off it; the cursor goes
 * behind it. `*uses`: it says the use itself, uses a pin-down by 3. */
static bool use_verb_before(struct cursor *verb, const struct token *lead, bool *uses)
{
    struct phrase phrase;
    *uses = lead <= verb->at;
    if (*uses) {
        return true;
    }
    skip_run_in(verb);
    if (!phrase_read(verb, FOR_ATTACKERS, &phrase) || verb->at > lead) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    return task != VERB_PASS && task != VERB_SCREEN && task != VERB_SHOOT;
}

/* The sentence without the screen, which stands in front of it now: off 4, right behind the verb
 * and its particles, or where the screen stood. */
static void put_off_screen(const struct cursor *c, struct recast *r,
                           const struct named_screen *named, const struct token *said,
                           struct cursor verb, bool uses)
{
    struct cursor here = line_look(c, named->lead), particles = verb;
    take_particles(&particles);
    bool near = uses || particles.at == named->lead;
    const struct token *put = near ? named->lead : verb.at;
    recast_copy(c, r, said, put);
    recast_word(&here, r, uses ? "uses" : "off");
    recast_somebody(c, r, &named->by);
    recast_copy(c, r, put, named->lead);
    recast_copy(c, r, named->end, c->end);
}

/* the screens of 4 and 5: two set it. */
static bool second_by(const struct cursor *c, const struct named_screen *named)
{
    const struct token *more = past_fillers(named->end, c->end);
    return more + 1 < c->end && token_is_word(more, "and") && number_token(more + 1) &&
           !(more + 2 < c->end && ends_in_s(more + 2));
}

/* comes up the lane line off a down screen by 4: the screen is a sentence of its own, in front. */
bool screen_in_use(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at + 1; at + 1 < c->end; at++) {
        struct named_screen named;
        struct somebody user;
        bool own, uses;
        const struct token *clause = clause_begin(c, at);
        if (at->kind != TOKEN_WORD || !named_screen_at(c, at, &named) || second_by(c, &named) ||
            !clause_subject(c, clause, &user, &own) || same_who(&user.who, &named.by.who) ||
            another_waits(c, &user.who, named.owned) ||
            above_screened(c, &user.who, &named.by.who)) {
            continue;
        }
        const struct token *said = own ? user.to : clause;
        struct cursor verb = line_look(c, past_fillers(said, c->end));
        if (!use_verb_before(&verb, named.lead, &uses) ||
            (uses && known_screen(named.lead, named.end))) {
            continue; /* uses the screen of 4: nobody has set it */
        }
        put_before(c, r, clause);
        put_named_screen(c, r, &named, &user.who);
        recast_copy(c, r, user.from, user.to);
        put_off_screen(c, r, &named, said, verb, uses);
        return true;
    }
    return false;
}

/* ---- to receive, for 1's pass ---- */

struct gets {
    const struct token *from, *to;       /* to receive the pass from 1 at the top */
    const struct token *noun, *noun_end; /* what, or NULL */
    const struct token *place, *place_end;
    int giver; /* 0: who has the ball */
    const struct token *giver_at;
    bool hands; /* out of his hands */
};

static bool take_what(struct cursor *c, struct gets *out)
{
    static const char *const things[] = {"it",     "ball",         "pass",          "throw-in",
                                         "catch",  "return pass",  "inbounds pass", "feed",
                                         "entry",  "inbound pass", "next pass",     "entry pass",
                                         "return", "high low",     "high low pass", NULL};
    struct phrase phrase;
    struct cursor noun = *c;
    out->noun = past_fillers(c->at, c->end);
    if (phrase_noun_read(&noun, &phrase) && !ends_in_s(&noun.at[-1]) && phrase_passes(&phrase)) {
        out->hands = verb_row(phrase.verb)->task == VERB_EXCHANGE;
        c->at = out->noun_end = noun.at;
        return true;
    }
    bool thing = take_among(c, things);
    out->noun = NULL;
    return thing;
}

static bool take_from(struct cursor *c, struct gets *out)
{
    static const char *const froms[] = {"from", "with", "by", NULL};
    struct somebody giver;
    struct cursor trial = *c;
    if (!take_among(&trial, froms)) {
        return true;
    }
    static const char *const him[] = {"him", "her", "passer", "ball-handler", NULL};
    struct cursor pronoun = trial;
    if (take_among(&pronoun, him)) { /* who has the ball */
        c->at = pronoun.at;
        return true;
    }
    if (!player_here(&trial, &giver) || giver.who.kind != WHO_PLAYER) {
        return false;
    }
    out->giver = giver.who.number;
    out->giver_at = giver.from;
    c->at = trial.at;
    return true;
}

static void take_gets_place(struct cursor *c, struct gets *out)
{
    static const char *const ats[] = {"at", "on", "in", NULL};
    struct cursor trial = *c;
    if (take_among(&trial, ats)) {
        out->place = past_fillers(trial.at, c->end);
        if (spot_here(&trial)) {
            out->place_end = c->at = trial.at;
            return;
        }
    }
    out->place = NULL;
}

static bool gets_at(const struct cursor *c, const struct token *at, struct gets *out)
{
    static const char *const verbs[] = {"to receive", "to catch",   "to get",
                                        "to take",    "to collect", NULL};
    struct cursor trial = line_look(c, at);
    struct who owner;
    *out = (struct gets){.from = at};
    bool received = take_among(&trial, verbs);
    static const char *const hopes[] = {"hoping",  "looking", "calling", "asking", "wishing",
                                        "waiting", "ready",   "open",    NULL};
    if (token_is_among(&at[-1], hopes) || (!received && !take_words(&trial, "for"))) {
        return false;
    }
    bool bare = received &&
                (token_is_word(&trial.at[-1], "receive") || token_is_word(&trial.at[-1], "catch"));
    out->giver_at = cursor_next(&trial);
    received = received || word_is(&trial, 0, "high"); /* the high-low pass: by who has it */
    if (owner_read(&trial, &owner)) {
        out->giver = owner.kind == WHO_PLAYER ? owner.number : 0;
        if (out->giver == 0 || !take_what(&trial, out)) {
            return false;
        }
    } else {
        bool what = take_what(&trial, out);
        if ((!what && !bare) || !take_from(&trial, out)) {
            return false;
        }
    }
    take_gets_place(&trial, out);
    out->to = trial.at;
    return part_ends(&trial) && (received || out->giver > 0);
}

bool gets_is(const struct cursor *c)
{
    struct gets gets;
    const struct token *at = cursor_next(c);
    return at && at > c->first && gets_at(c, at, &gets);
}

/* Where he goes is said in there. */
static bool place_said(const struct cursor *c, const struct token *from, const struct token *to)
{
    for (; from < to; from++) {
        struct cursor place = line_look(c, from);
        if (take_among(&place, place_words) && spot_here(&place) && place.at <= to) {
            return true;
        }
    }
    return false;
}

/* Any spot is named in there. */
static bool place_read_there(const struct cursor *c, const struct token *from,
                             const struct token *to)
{
    for (; from < to; from++) {
        struct cursor place = line_look(c, from);
        if (spot_here(&place) && place.at <= to) {
            return true;
        }
    }
    return false;
}

static void put_gets(const struct cursor *c, struct recast *r, const struct gets *gets,
                     const struct somebody *taker, int giver)
{
    struct cursor here = line_look(c, gets->from);
    recast_somebody(c, r, taker);
    if (gets->noun) {
        recast_word(&here, r, gets->hands ? "takes" : "gets");
        recast_word(&here, r, "the");
        r->tokens.at[r->tokens.count - 1].filler = true;
        recast_copy(c, r, gets->noun, gets->noun_end);
    } else {
        recast_word(&here, r, "gets");
        recast_word(&here, r, "ball");
    }
    recast_word(&here, r, "from");
    here.at = gets->giver > 0 ? gets->giver_at : here.at;
    recast_number(&here, r, giver);
}

/* Who has the ball where the line has come to: the last one it was passed to in it, else as above.
 */
static int holder_there(const struct cursor *c, const struct token *to)
{
    struct who holder;
    int number = above_holder(c, &holder) && holder.kind == WHO_PLAYER ? holder.number : 0;
    for (const struct token *at = c->at; at < to; at++) {
        struct cursor trial = line_look(c, at);
        struct somebody giver, taker;
        struct phrase phrase;
        static const char *const firsts[] = {"first", "then", "just", "now", NULL};
        if (number_token(at) && player_here(&trial, &giver) && (take_among(&trial, firsts), true) &&
            phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase_passes(&phrase)) {
            take_words(&trial, "it");
            take_words(&trial, "to");
            number = player_here(&trial, &taker) ? taker.who.number : 0;
        }
    }
    return number;
}

/* comes off 4 to receive at the slot; to the right slot for 1's pass. */
bool gets_for(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at + 2; at < c->end; at++) {
        struct gets gets;
        struct somebody who;
        struct phrase phrase;
        bool own;
        if (at->kind != TOKEN_WORD || !gets_at(c, at, &gets)) {
            continue;
        }
        const struct token *clause = clause_begin(c, at);
        if (!clause_subject(c, clause, &who, &own)) {
            continue;
        }
        struct cursor verb = line_look(c, own ? who.to : clause);
        skip_run_in(&verb);
        int giver = gets.giver > 0 ? gets.giver : holder_there(c, at);
        if (giver == 0 || giver == who.who.number || !phrase_read(&verb, FOR_ATTACKERS, &phrase) ||
            verb.at > at ||
            (verb_row(phrase.verb)->task != VERB_MOVE && verb_row(phrase.verb)->task != VERB_USE)) {
            continue;
        }
        const struct token *before = at - token_is_mark(&at[-1], ',');
        recast_copy(c, r, c->at, before);
        if (gets.place && !place_said(c, verb.at, before)) {
            recast_word(c, r, "to");
            recast_copy(c, r, gets.place, gets.place_end);
        }
        put_stop(c, r);
        put_gets(c, r, &gets, &who, giver);
        recast_copy(c, r, gets.to, c->end);
        return true;
    }
    return false;
}

/* gets it right back on a hand-off: he takes it from who has it there. */
bool handed_back(const struct cursor *c, struct recast *r)
{
    static const char *const gets[] = {"gets it",     "gets ball",     "takes it", "takes ball",
                                       "receives it", "receives ball", "gets",     NULL};
    static const char *const backs[] = {"right back", "straight back", "back", NULL};
    static const char *const ons[] = {"on", "with", "off", "in", "via", NULL};
    static const char *const hands[] = {"hand-off", "dribble hand-off", "dho", NULL};
    for (const struct token *at = c->at + 1; at + 3 < c->end; at++) {
        struct cursor trial = line_look(c, at);
        if (!take_among(&trial, gets) || !take_among(&trial, backs) || !take_among(&trial, ons) ||
            !take_among(&trial, hands)) {
            continue;
        }
        int giver = holder_there(c, at);
        struct cursor here = line_look(c, at);
        recast_copy(c, r, c->at, at);
        recast_word(&here, r, "takes");
        recast_word(&here, r, "hand-off");
        recast_word(&here, r, "from");
        recast_number(&here, r, giver);
        recast_copy(c, r, trial.at, c->end);
        return giver > 0;
    }
    return false;
}

/* sets a back screen for 2's cut to the rim: for 2, who cuts. */
bool for_whose_move(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at + 2; at + 2 < c->end; at++) {
        struct cursor trial = line_look(c, at + 1);
        struct who owner;
        struct phrase phrase;
        if (!token_is_word(at, "for") || !owner_read(&trial, &owner) || owner.kind != WHO_PLAYER ||
            !phrase_noun_read(&trial, &phrase) ||
            (verb_row(phrase.verb)->task != VERB_MOVE &&
             verb_row(phrase.verb)->task != VERB_CARRY)) {
            continue;
        }
        struct cursor here = line_look(c, at);
        recast_copy(c, r, c->at, at + 1);
        recast_number(&here, r, owner.number);
        put_stop(c, r);
        recast_number(&here, r, owner.number);
        recast_verb(&here, r, phrase_words(phrase.verb, PASS_PLAIN, SCREEN_PLAIN, false));
        recast_copy(c, r, trial.at, c->end);
        return true;
    }
    return false;
}

/* ---- to drive to the rim ---- */

/* as if to screen, never to drive: not done. */
static bool seeming(const struct token *from, const struct token *to)
{
    static const char *const words[] = {"if",     "though", "like",   "never",   "not",  "almost",
                                        "nearly", "as",     "rather", "without", "only", NULL};
    for (; from < to; from++) {
        if (token_is_among(from, words)) {
            return true;
        }
    }
    return false;
}

/* rejects it toward the baseline to drive to the rim; uses 3 to come up to the wing: his own next
 * sentence. */
bool purpose(const struct cursor *c, struct recast *r)
{
    static const char *const wants[] = {"wants", "tries", "has",   "looks", "ready", "way",
                                        "likes", "comes", "needs", "goes",  "turn",  "gets",
                                        "going", "about", "used",  "able",  NULL};
    for (const struct token *to = c->at + 3; to + 1 < c->end; to++) {
        struct cursor verb = line_look(c, to + 1);
        struct phrase phrase;
        struct somebody who;
        bool own;
        if (!token_is_word(to, "to") || token_is_among(&to[-1], wants) ||
            (to + 1)->kind != TOKEN_WORD) {
            continue;
        }
        struct cursor spot = verb;
        if (spot_here(&spot) || !phrase_read(&verb, FOR_ATTACKERS, &phrase) || phrase.with_s ||
            verb_row(phrase.verb)->task == VERB_HOLD || verb_row(phrase.verb)->task == VERB_GUARD) {
            continue;
        }
        const struct token *clause = clause_begin(c, to);
        bool other = to[-1].kind == TOKEN_NUMBER && token_is_word(&to[-2], "for");
        if (!seeming(clause, to) && other) { /* screens for 4 to come to the wing: 4 does */
            struct cursor here = line_look(c, to);
            recast_copy(c, r, c->at, to);
            put_stop(c, r);
            recast_copy(c, r, to - 1, to);
            put_third(&here, r, (to + 1)->text);
            recast_copy(c, r, to + 2, c->end);
            return true;
        }
        if (seeming(clause, to) || !clause_subject(c, clause, &who, &own)) {
            continue;
        }
        struct cursor before = line_look(c, own ? who.to : clause);
        struct cursor use = before;
        skip_run_in(&before);
        if (!(phrase_read(&before, FOR_ATTACKERS, &phrase) || take_uses(&use)) || before.at > to) {
            continue;
        }
        const struct token *from = past_fillers(own ? who.to : clause, c->end);
        bool way = verb_row(phrase.verb)->task == VERB_MOVE && !names_anybody(from, to) &&
                   !place_read_there(c, from, to);
        struct cursor here = line_look(c, to);
        if (way) { /* rotates up to replace 1: the way there */
            recast_copy(c, r, c->at, from);
            r->told = span_join(from->span, to[-1].span);
        } else {
            recast_copy(c, r, c->at, to - token_is_mark(&to[-1], ','));
            put_stop(c, r);
            recast_somebody(c, r, &who);
        }
        put_third(&here, r, (to + 1)->text);
        recast_copy(c, r, to + 2, c->end);
        return true;
    }
    return false;
}
