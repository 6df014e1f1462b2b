/* SPDX-License-Identifier: MIT */
/* relative: who has lifted, where 1 passes to her, which 5 throws, which sends 3 to the corner:
 * what hangs in a line behind a player, a place, a noun or all of it, as a sentence of its own.
 * Rules of unfold.h. */
#include "language/words/unfold.h"

#include <string.h>

static const char *const balls[] = {"it", "ball", "pass", NULL};

/* Which of the verbs is said in the clause of that subject. */
static bool verb_of(const struct cursor *c, const struct somebody *who, struct phrase *out)
{
    struct cursor verb = line_look(c, who->to);
    skip_run_in(&verb);
    return phrase_read(&verb, FOR_ATTACKERS, out);
}

/* ---- who ---- */

/* A relative clause and the player it is of. */
struct of_whom {
    const struct token *player, *end; /* the player, and behind the spot he is told to be at */
    const struct token *verb;         /* behind `who` */
};

static bool of_whom(const struct cursor *c, const struct token *who, struct of_whom *out)
{
    const struct token *end = who;
    end -= end > c->at && token_is_mark(&end[-1], ',');
    for (const struct token *at = end; at > c->at && at > end - 6; at--) {
        if (!number_token(&at[-1])) {
            continue;
        }
        struct cursor place = line_look(c, at);
        bool spot = at < end && take_among(&place, place_words) && spot_read(&place, true) &&
                    place.at == end;
        *out = (struct of_whom){.player = at - 1, .end = end, .verb = who + 1};
        return at == end || spot;
    }
    return false;
}

/* A screen is set in the line: who rolls or slips may do it from there. */
static bool screen_told(const struct cursor *c, const struct token *player)
{
    struct who who = {.kind = WHO_PLAYER, .number = (int)player->number, .span = player->span};
    for (const struct token *at = c->at; at < c->end; at++) {
        static const char *const words[] = {"screen", "screens", "pick",  "picks",
                                            "pin",    "pins",    "flare", NULL};
        if (token_is_among(at, words)) {
            return true;
        }
    }
    return above_has_screened(c, &who, 1);
}

/* has popped, is drifting, rolled: the verb in the present; gives where what is said with it goes
 * on, or NULL. */
static const struct token *put_done(const struct cursor *c, const struct of_whom *of,
                                    struct recast *r)
{
    static const char *const haves[] = {"has", "have", "had", NULL};
    static const char *const adverbs[] = {"just", "already", "now", "meanwhile", "since", NULL};
    static const char *const ways[] = {"on his way to",   "on her way to",   "on the way to",
                                       "on his way into", "on her way into", NULL};
    struct cursor trial = line_look(c, of->verb);
    struct phrase phrase;
    struct str bare;
    bool have = take_among(&trial, haves), is = !have && take_words(&trial, "is");
    take_among(&trial, adverbs);
    if (is && take_among(&trial, ways)) {
        recast_word(c, r, "goes");
        recast_word(c, r, "to");
        return trial.at;
    }
    if (!is || !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        const struct token *verb = past_fillers(trial.at, c->end);
        bool present = !have && !is && verb_begins(&trial);
        if (present || !past_base(&trial, FOR_ATTACKERS, &phrase, &bare)) {
            return NULL;
        }
        trial.at = verb + 1; /* only its first word is bare: the others stand behind it */
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    if (task != VERB_MOVE && task != VERB_USE && task != VERB_SCREEN) {
        return NULL;
    }
    if (strchr(verb_row(phrase.verb)->needs, 'S') && !screen_told(c, of->player)) {
        recast_word(c, r, "goes");
    } else {
        put_third(c, r, bare);
    }
    return trial.at;
}

/* to get it, to catch: behind what he does for a pass. */
static const struct token *take_to_catch(const struct cursor *c, const struct token *at)
{
    static const char *const gets[] = {"to get",     "to catch",   "to receive",
                                       "to take",    "to collect", "to meet",
                                       "to pick up", "for",        NULL};
    static const char *const what[] = {"it", "ball", "pass", NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, gets)) {
        return NULL;
    }
    bool alone = part_ends(&trial);
    return alone || take_among(&trial, what) ? trial.at : NULL;
}

/* passes to 3, who runs to the left wing to catch it; who cuts to the rim: without the ball, so he
 * is there before it. Gives where that ends. */
static const struct token *put_before_pass(const struct cursor *c, const struct of_whom *of,
                                           const struct phrase *main, struct recast *r)
{
    const struct token *end = clause_end(c, of->verb), *to = NULL;
    struct cursor verb = line_look(c, of->verb);
    struct phrase phrase;
    skip_run_in(&verb);
    bool run = word_among(&verb, catch_runs);
    if (!end || !phrase_passes(main) || !phrase_read(&verb, FOR_ATTACKERS, &phrase) ||
        verb_needs_ball(phrase.verb) || verb_row(phrase.verb)->task != VERB_MOVE) {
        return NULL;
    }
    const struct token *catch = end;
    for (const struct token *at = verb.at; at < end && !to; at++) {
        to = take_to_catch(c, at);
        catch = to ? at : catch;
    }
    if ((!run && !to) || (to && to != end)) {
        return NULL;
    }
    recast_copy(c, r, of->verb, catch);
    r->told = to ? span_join(catch->span, end[-1].span) : SPAN_NONE;
    return end;
}

/* The clause of time in front of a clause goes with it. */
static const struct token *with_tie(const struct cursor *c, const struct token *clause)
{
    const struct token *before = clause;
    before -= before > c->at && token_is_mark(&before[-1], ',');
    const struct token *begin = clause_begin(c, before);
    struct cursor look = line_look(c, begin);
    return before < clause && begin < before && clause_is(&look) ? begin : clause;
}

/* What is said behind `who`, of the player `acts` does something with: what it is in the present.
 * Gives where that ends, or NULL. */
static const struct token *put_who(const struct cursor *c, const struct of_whom *of,
                                   const struct somebody *acts, struct recast *r)
{
    struct phrase main;
    const struct token *from = put_done(c, of, r);
    if (!from) {
        return verb_of(c, acts, &main) ? put_before_pass(c, of, &main, r) : NULL;
    }
    const struct token *end = clause_end(c, from);
    if (end) {
        recast_copy(c, r, from, end);
    }
    return end;
}

/* finds 3, who has lifted to the wing: 3 lifts to the wing, in front of it. */
bool relative_done(const struct cursor *c, struct recast *r)
{
    for (const struct token *who = c->at + 1; who < c->end; who++) {
        struct of_whom of;
        struct somebody subject;
        struct recast verb = {.told = SPAN_NONE};
        bool own, then;
        if (!token_is_word(who, "who") || !of_whom(c, who, &of)) {
            continue;
        }
        const struct token *clause = clause_begin(c, of.player);
        if (!clause_subject(c, clause, &subject, &own)) {
            continue;
        }
        struct somebody acts = subject;
        acts.to = own ? subject.to : clause;
        const struct token *end = put_who(c, &of, &acts, &verb);
        if (!end) {
            continue;
        }
        clause = with_tie(c, clause);
        joint_begin(c, clause, &then);
        put_before(c, r, clause);
        recast_copy(c, r, of.player, of.player + 1);
        recast_copy(c, r, verb.tokens.at, verb.tokens.at + verb.tokens.count);
        put_stop(c, r);
        if (own && then) {
            recast_word(c, r, "then");
        } else if (!own) {
            recast_somebody(c, r, &subject);
        }
        recast_copy(c, r, clause, of.end);
        recast_copy(c, r, end, c->end);
        r->told = verb.told;
        return true;
    }
    return false;
}

/* ---- where ---- */

/* Who is there, where the clause before ends: who went, or to whom it was passed. */
static bool who_is_there(const struct cursor *c, const struct token *end, struct who *out)
{
    struct somebody subject;
    struct phrase phrase;
    bool own;
    const struct token *clause = clause_begin(c, end);
    if (!clause_subject(c, clause, &subject, &own)) {
        return false;
    }
    *out = subject.who;
    subject.to = own ? subject.to : clause;
    if (!verb_of(c, &subject, &phrase) || !phrase_passes(&phrase)) {
        return true;
    }
    for (const struct token *at = end; at > subject.to; at--) {
        if (number_token(&at[-1])) {
            *out =
                (struct who){.kind = WHO_PLAYER, .number = (int)at[-1].number, .span = at[-1].span};
            return true;
        }
    }
    return false;
}

/* 1's pass meets her, the pass from 1 goes, he gets the ball from 1: who passes. */
static bool pass_comes(struct cursor *c, int *giver)
{
    static const char *const comes[] = {"meets", "finds",   "reaches", "hits", "goes",
                                        "comes", "arrives", "is for",  NULL};
    static const char *const things[] = {"pass", "ball", "feed", "throw", "lob", "entry", NULL};
    struct cursor trial = *c;
    struct who who;
    struct somebody from;
    if (owner_read(&trial, &who) && who.kind == WHO_PLAYER && take_among(&trial, things)) {
        *giver = who.number;
    } else if (take_among(&trial, things) && take_words(&trial, "from") &&
               player_here(&trial, &from) && from.who.kind == WHO_PLAYER) {
        *giver = from.who.number;
    } else {
        return false;
    }
    if (!take_among(&trial, comes)) {
        return false;
    }
    take_among(&trial, him_or_her);
    c->at = trial.at;
    return part_ends(&trial);
}

/* 1 passes him the ball, 1 skips it to her: to whoever is there. */
static bool put_pass_to(const struct cursor *c, struct recast *r, const struct token *from,
                        const struct token *end, int number)
{
    struct cursor trial = line_look(c, from);
    struct somebody giver;
    struct phrase phrase;
    if (!player_here(&trial, &giver) || !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        verb_row(phrase.verb)->task != VERB_PASS || giver.who.number == number) {
        return false;
    }
    const struct token *verb_end = trial.at;
    bool to = token_is_word(&verb_end[-1], "to");
    struct cursor dative = trial;
    if (take_among(&dative, him_or_her) && take_among(&dative, balls)) {
        recast_copy(c, r, from, verb_end);
        recast_word(c, r, "to");
        recast_number(c, r, number);
        recast_copy(c, r, dative.at, end);
        return true;
    }
    bool named = false, put = false;
    for (const struct token *at = verb_end; at < end; at++) {
        named = named || number_token(at) || token_is_among(at, him_or_her);
    }
    recast_copy(c, r, from, verb_end);
    take_among(&trial, balls);
    recast_copy(c, r, verb_end, trial.at);
    if (!named) {
        if (!to) {
            recast_word(c, r, "to");
        }
        recast_number(c, r, number);
    }
    for (const struct token *at = trial.at; at < end; at++) {
        if (!put && token_is_among(at, him_or_her)) {
            recast_number(c, r, number);
            put = true;
        } else {
            recast_copy(c, r, at, at + 1);
        }
    }
    return true;
}

/* pops to the slot, where 1 passes him the ball; where he shoots. */
bool relative_where(const struct cursor *c, struct recast *r)
{
    for (const struct token *where = c->at + 2; where + 1 < c->end; where++) {
        struct who there;
        int giver = 0;
        const struct token *before = where - token_is_mark(&where[-1], ',');
        if (!token_is_word(where, "where") || !who_is_there(c, before, &there)) {
            continue;
        }
        struct cursor trial = line_look(c, where + 1);
        bool comes = pass_comes(&trial, &giver);
        const struct token *end = comes ? trial.at : clause_end(c, where + 1);
        struct cursor he = line_look(c, where + 1);
        bool acts = !comes && take_among(&he, he_or_she) && verb_begins(&he);
        recast_copy(c, r, c->at, before);
        put_stop(c, r);
        struct cursor here = line_look(c, where);
        if (comes) {
            recast_number(&here, r, giver);
            recast_word(&here, r, "passes");
            recast_word(&here, r, "to");
            recast_number(&here, r, there.number);
        } else if (acts) {
            recast_number(&here, r, there.number);
            end = he.at;
        } else {
            trial = line_look(c, where + 1);
            bool own = end && subject_verb_is(&trial);
            if (own && !put_pass_to(&here, r, where + 1, end, there.number)) {
                recast_copy(c, r, where + 1, end);
            } else if (!own) {
                return false;
            }
        }
        recast_copy(c, r, end, c->end);
        return true;
    }
    return false;
}

/* ---- which ---- */

/* for the lob, which 5 throws: from 5; the screen, which 1 uses to the left: 1 uses it. */
bool relative_which(const struct cursor *c, struct recast *r)
{
    static const char *const throws[] = {"throws",   "delivers", "makes", "passes", "gives",
                                         "provides", "tosses",   "feeds", "sends",  NULL};
    static const char *const uses[] = {"uses",     "takes",    "rejects",   "refuses", "comes off",
                                       "runs off", "cuts off", "curls off", "curls",   NULL};
    for (const struct token *which = c->at + 2; which + 2 < c->end; which++) {
        struct somebody who;
        if (!token_is_word(which, "which") && !token_is_word(which, "that")) {
            continue;
        }
        const struct token *before = which - token_is_mark(&which[-1], ',');
        struct cursor trial = line_look(c, which + 1);
        if (!player_here(&trial, &who)) {
            continue;
        }
        struct cursor throw = trial, use = trial;
        if (take_among(&throw, throws) && (take_among(&throw, him_or_her), part_ends(&throw))) {
            struct cursor here = line_look(c, which);
            recast_copy(c, r, c->at, before);
            recast_word(&here, r, "from");
            recast_somebody(c, r, &who);
            recast_copy(c, r, throw.at, c->end);
            return true;
        }
        if (take_among(&use, uses)) {
            struct cursor here = line_look(c, which);
            recast_copy(c, r, c->at, before);
            put_stop(c, r);
            recast_copy(c, r, which + 1, use.at);
            recast_word(&here, r, "it");
            recast_copy(c, r, use.at, c->end);
            return true;
        }
    }
    return false;
}

/* ---- what comes of it ---- */

enum sent { SENT_TO_DO, SENT_ANYWHERE };
static const struct entry sendings[] = {{"which sends", SENT_ANYWHERE},
                                        {"which tells", SENT_TO_DO},
                                        {"which lets", SENT_TO_DO},
                                        {"which allows", SENT_TO_DO},
                                        {"which gets", SENT_ANYWHERE},
                                        {"which has", SENT_TO_DO},
                                        {"which makes", SENT_TO_DO},
                                        {"which leaves", SENT_TO_DO},
                                        {"which brings", SENT_ANYWHERE},
                                        {"which frees", SENT_TO_DO},
                                        {"which pushes", SENT_ANYWHERE},
                                        {"which moves", SENT_ANYWHERE},
                                        {"which is the signal for", SENT_TO_DO},
                                        {"which is signal for", SENT_TO_DO},
                                        {"which is cue for", SENT_TO_DO},
                                        {"which signals", SENT_TO_DO},
                                        {"which triggers", SENT_TO_DO},
                                        {"sending", SENT_ANYWHERE},
                                        {"letting", SENT_TO_DO},
                                        {"allowing", SENT_TO_DO},
                                        {"leaving", SENT_TO_DO},
                                        {"bringing", SENT_ANYWHERE},
                                        {"freeing", SENT_TO_DO},
                                        {"pushing", SENT_ANYWHERE},
                                        {"telling", SENT_TO_DO},
                                        {"signaling", SENT_TO_DO},
                                        {"signalling", SENT_TO_DO},
                                        {NULL, 0}};

/* `lift to the wing`, as one speaks of one. */
static void put_verb_third(const struct cursor *c, struct recast *r, const struct token *at,
                           const struct token *end)
{
    struct cursor here = line_look(c, at);
    put_third(&here, r, at->text);
    recast_copy(c, r, at + 1, end);
}

/* Who is sent, and to do what, or where. */
struct sent_player {
    struct somebody who;
    const struct token *verb, *leg; /* one of them */
};

static bool sent_read(const struct cursor *c, const struct token *at, struct sent_player *out)
{
    static const char *const frees[] = {"free", "open", "room", "space", "up", "time", NULL};
    struct cursor trial = line_look(c, at);
    *out = (struct sent_player){.verb = NULL};
    int kind = at->kind == TOKEN_WORD ? take_entry(&trial, sendings) : -1;
    if (kind < 0 || !player_here(&trial, &out->who) || out->who.who.kind != WHO_PLAYER) {
        return false;
    }
    while (take_among(&trial, frees)) {
    }
    struct cursor verb = trial;
    take_words(&verb, "to");
    struct cursor spot = verb;
    bool place = verb.at > trial.at && spot_read(&spot, true);
    if (!place && verb_begins(&verb)) {
        out->verb = past_fillers(verb.at, c->end);
    } else if (kind == SENT_ANYWHERE && (leg_is(&trial) || word_is(&trial, 0, "through"))) {
        out->leg = trial.at;
    }
    return out->verb || out->leg;
}

bool consequence_is(const struct cursor *c)
{
    struct sent_player sent;
    const struct token *at = cursor_next(c);
    struct cursor_mark mark = cursor_mark(c);
    struct cursor back = *c;
    bool is = at && sent_read(c, at, &sent);
    cursor_back(&back, mark);
    return is;
}

/* which sends 3 through to the corner; leaving 4 free to step out. */
bool consequence(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at + 2; at + 2 < c->end; at++) {
        struct sent_player sent;
        bool comma = token_is_mark(&at[-1], ',');
        if (!(comma || token_is_word(at, "which")) || !sent_read(c, at, &sent)) {
            continue;
        }
        recast_copy(c, r, c->at, at - comma);
        put_stop(c, r);
        recast_somebody(c, r, &sent.who);
        if (sent.verb) {
            put_verb_third(c, r, sent.verb, c->end);
        } else {
            struct cursor here = line_look(c, at);
            recast_word(&here, r, "goes");
            recast_copy(c, r, sent.leg, c->end);
        }
        return true;
    }
    return false;
}

/* , 2 coming out on the left wing; with 3 cutting to the rim. */
bool absolute(const struct cursor *c, struct recast *r)
{
    for (const struct token *at = c->at + 2; at + 1 < c->end; at++) {
        struct cursor trial = line_look(c, at);
        struct cursor_mark mark = cursor_mark(&trial);
        who_list list;
        struct phrase phrase;
        struct str bare;
        bool with = token_is_word(&at[-1], "with");
        bool led = with || token_is_mark(&at[-1], ',');
        bool read = led && number_token(at) && subject_read(&trial, &list) &&
                    trial.refusals == mark.refusals;
        const struct token *verb = trial.at;
        read = read && phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare);
        const struct token *end = trial.at;
        cursor_back(&trial, mark);
        if (!read) {
            continue;
        }
        const struct token *before = at - 1;
        before -= with && before > c->at && token_is_mark(&before[-1], ',');
        recast_copy(c, r, c->at, before);
        put_stop(c, r);
        recast_copy(c, r, at, verb);
        trial.at = verb;
        if (list.count > 1) {
            recast_verb(&trial, r, bare);
        } else {
            put_third(&trial, r, bare);
        }
        recast_copy(c, r, end, c->end);
        return true;
    }
    return false;
}
