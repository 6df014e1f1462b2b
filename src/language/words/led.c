/* SPDX-License-Identifier: MIT */
/* led: what stands in front of who acts, and is neither a moment nor a sentence that the grammar
 * knows: how it is done, what is not done, where one comes from, how the floor is, so many seconds.
 * Left out with a note, or put where it belongs. Rules of reshape.h. */
#include "language/words/reshape.h"

#include "language/words/loose_read.h"
#include "language/words/people.h"

/* Who acts begins at `who`: with a verb, or with a word that may be one, behind a comma. */
static bool acts_there(const struct cursor *c, const struct token *who)
{
    struct cursor acts = line_look(c, who);
    bool bent = token_is_mark(who - 1, ',') && who + 1 < c->end && who[1].kind == TOKEN_WORD &&
                ends_in_s(who + 1);
    bool steps = who->kind == TOKEN_MEASURE && who->unit == UNIT_STEPS && who->integer &&
                 token_is_mark(who - 1, ','); /* , 4 steps on to the lane */
    bool does = who + 1 < c->end && ends_in_s(who + 1) && act_begins(who + 1, c->end, false);
    return steps || (attacker_at(who, c->end) && (bent || does || subject_verb_is(&acts)));
}

/* Who acts behind what is said from `at` on, where nobody acts in it; NULL: none. */
static const struct token *main_who(const struct cursor *c, const struct token *at)
{
    enum { FAR = 12 };
    if (at->filler || !sentence_begins_at(c, at) || (attacker_at(at, c->end) && at->integer)) {
        return NULL;
    }
    for (const struct token *who = at + 1; who < c->end && who < at + FAR; who++) {
        if (sentence_ends(who) || token_is_mark(who, ':')) {
            return NULL;
        }
        if (acts_there(c, who)) {
            return token_is_word(who - 1, "and") ? NULL : who;
        }
    }
    return NULL;
}

static const struct token *front_end(const struct token *who)
{
    return who - (token_is_mark(who - 1, ',') ? 1 : 0);
}

/* Nobody by number in it, but two dribbles, one bounce. */
static bool of_no_player(const struct token *from, const struct token *to)
{
    for (; from < to; from++) {
        bool count = token_is_spelled(from) && from + 1 < to && from[1].kind == TOKEN_WORD;
        if ((from->kind == TOKEN_NUMBER && !count) || from->kind == TOKEN_QUOTED ||
            token_is_among(from, subject_pronouns)) {
            return false;
        }
    }
    return true;
}

/* Crossing the lane, peeling off the stack, chased by x1: on his way, or what is done to him. */
static bool on_the_way(const struct cursor *c, const struct token *at, const struct token *end)
{
    static const char *const done[] = {"chased by",  "trailed by", "followed by", "guarded by",
                                       "hounded by", "pressed by", "bumped by",   "shadowed by",
                                       "denied by",  "dogged by",  NULL};
    static const char *const aims[] = {
        "to", "into",      "toward", "towards", "onto",    "for",  "him",   "her",    "his", "pass",
        "it", "screening", "ball",   "shot",    "passing", "left", "right", "faking", NULL};
    struct cursor trial = line_look(c, at);
    struct phrase phrase;
    struct str said;
    if (take_among(&trial, done)) {
        return of_no_player(trial.at, end);
    }
    if (!ends_in_ing(at) || end - at < 2 || !of_no_player(at, end) ||
        !none_among(at + 1, end, aims) || !none_among(at, end, turning_words)) {
        return false;
    }
    for (const struct token *word = at; word < end; word++) {
        if (word->kind == TOKEN_DEFENDER) {
            return false;
        }
    }
    trial = line_look(c, at);
    bool verb = phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &said);
    enum verb_task task = verb ? verb_row(phrase.verb)->task : VERB_MOVE;
    return task == VERB_MOVE || task == VERB_USE || task == VERB_CARRY;
}

/* Having thrown it in: of one who has done something already. */
static bool done_already(const struct cursor *c, const struct token *at, const struct token *end,
                         const struct token *who)
{
    static const char *const havings[] = {"having", "after having", "once having", NULL};
    struct cursor trial = line_look(c, at);
    above_list above = above_sentences(c, false);
    if (!take_among(&trial, havings) || !of_no_player(trial.at, end)) {
        return false;
    }
    for (size_t i = above.count; i-- > 0;) {
        const struct sentence *s = above.at[i];
        if (s->subject.count == 1 && s->subject.at[0].kind == WHO_PLAYER &&
            s->subject.at[0].number == (int)who->number) {
            return true;
        }
    }
    return false;
}

/* On the far side, once around the corner: where he is already, or on his own way. */
static bool where_he_is(const struct cursor *c, const struct token *at, const struct token *end)
{
    static const char *const sides[] = {"on weak side",
                                        "on strong side",
                                        "on help side",
                                        "on far side",
                                        "on near side",
                                        "on other side",
                                        "on ball side",
                                        "on opposite side",
                                        "on left side",
                                        "on right side",
                                        NULL};
    static const char *const onces[] = {
        "once around", "once past", "once there",  "once free",   "once open",   "once inside",
        "once under",  "once over", "once out of", "once in the", "once at the", "once on the",
        "once clear",  "when free", "when there",  "once rid of", NULL};
    struct cursor side = line_look(c, at), once = side;
    if (take_among(&side, sides)) {
        return of_no_player(side.at, end) && end - side.at < 4;
    }
    return take_among(&once, onces) && of_no_player(once.at, end) && !verb_at(c, once.at);
}

/* Neither the ball, nor when, nor somebody's own thing: behind the drive, the play may be named. */
static bool tells_nothing(const struct token *from, const struct token *to, bool behind)
{
    static const char *const tells[] = {"ball",  "pass", "catch",   "shot",    "seconds", "second",
                                        "clock", "long", "whistle", "soon",    "far",     "screen",
                                        "pick",  "his",  "her",     "passing", "cutting", NULL};
    static const char *const plays[] = {"pick", "roll", "ball", "pass", "screen", "action", NULL};
    for (; from < to; from++) {
        bool play = behind && token_is_among(from, plays);
        if (from->kind == TOKEN_DEFENDER || ends_in_ing(from) ||
            (!play && token_is_among(from, tells))) {
            return false;
        }
    }
    return true;
}

/* With the side empty, behind the drive, as our safety: how things are there. */
static bool as_it_is(const struct cursor *c, const struct token *at, const struct token *end)
{
    static const char *const leads[] = {
        "with",    "without",    "behind",       "away from",   "out of",     "under",
        "amid",    "ahead of",   "opposite",     "off",         "from under", "as",
        "between", "in face of", "right behind", "just behind", NULL};
    static const char *const roles[] = {"our", "safety", "outlet", "decoy", "last man",
                                        "a",   "the",    "an",     NULL};
    static const char *const his[] = {"his back", "her back", "his hands", "her hands", "his eyes",
                                      "her eyes", "his head", "her head",  "his feet",  "her feet",
                                      "his pass", "her pass", "his cut",   "her cut",   NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, leads) || trial.at >= end || !of_no_player(trial.at, end) ||
        !none_among(trial.at, end, turning_words)) {
        return false;
    }
    bool behind = !none_among(at, trial.at, (const char *const[]){"behind", "away", NULL});
    if (token_is_word(at, "as") && !token_is_among(at + 1, roles) &&
        !token_is_among(trial.at, roles)) {
        return false;
    }
    bool body = take_among(&trial, his);
    const struct place *place;
    const struct token *spot = past_fillers(trial.at, end);
    bool placed = spot < end && spot_end(c, spot, &place) == end;
    return tells_nothing(trial.at, end, behind) &&
           (!placed || behind || body || may_stand_there(c, spot, place));
}

/* Rather than roll, instead of holding it: what is not done. */
static bool not_done(const struct cursor *c, const struct token *at, const struct token *end)
{
    static const char *const nots[] = {"rather than", "instead of", "in place of", "without", NULL};
    static const char *const turns[] = {"if", "when", "unless", "until", "or", "once", NULL};
    struct cursor trial = line_look(c, at);
    return take_among(&trial, nots) && trial.at < end && none_among(trial.at, end, turns);
}

bool shape_front(const struct cursor *c, const struct token *at, struct recast *r)
{
    const struct token *who = main_who(c, at);
    const struct token *end = who ? front_end(who) : NULL;
    if (!who || !(not_done(c, at, end) || on_the_way(c, at, end) || where_he_is(c, at, end) ||
                  as_it_is(c, at, end) || done_already(c, at, end, who))) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, who, c->end);
    r->told = span_join(at->span, end[-1].span);
    return true;
}

/* ---- put where it belongs ---- */

/* Behind x2's back 2 cuts to the rim: a back cut. */
bool shape_behind_man(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const men[] = {"his man's back",
                                      "her man's back",
                                      "his man",
                                      "her man",
                                      "his defender's back",
                                      "her defender's back",
                                      "his defender",
                                      "her defender",
                                      "defense",
                                      "their backs",
                                      NULL};
    static const char *const cuts[] = {"cuts", "cut", "goes", "sneaks", "slips", "dives", NULL};
    const struct token *who = main_who(c, at);
    struct cursor trial = line_look(c, at);
    if (!who || !take_words(&trial, "behind")) {
        return false;
    }
    const struct token *man = past_fillers(trial.at, c->end);
    if (man->kind == TOKEN_DEFENDER && man->number == who->number) {
        trial.at = man + 1;
        take_words(&trial, "back");
    } else if (!take_among(&trial, men)) {
        return false;
    }
    struct cursor verb = line_look(c, who + 1), here = verb;
    if (trial.at != front_end(who) || !take_among(&verb, cuts)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, who, who + 1);
    recast_verb(&here, r, STR("back cuts"));
    recast_copy(c, r, verb.at, c->end);
    return true;
}

/* Two seconds into the step, 3 cuts: at 2 s. Half a second behind the exchange: after it. */
bool shape_seconds(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const intos[] = {"into step", "into play", "into it", "in", NULL};
    static const char *const behinds[] = {"behind", "after", "past", NULL};
    static const char *const limits[] = {"and not before", "and no sooner",  "no sooner",
                                         "not before",     "and not sooner", NULL};
    static const char *const things[] = {"pass", "hand-off", "hand off", "handoff", "screen",
                                         "shot", "catch",    "cut",      "drive",   NULL};
    if (at->kind != TOKEN_MEASURE || !sentence_begins_at(c, at)) {
        return false;
    }
    struct cursor trial = line_look(c, at + 1), here = line_look(c, at);
    recast_copy(c, r, c->at, at);
    if (take_among(&trial, intos)) {
        recast_word(&here, r, "at");
        recast_copy(c, r, at, at + 1);
    } else if (take_among(&trial, behinds)) {
        recast_copy(c, r, at, at + 1);
        recast_word(&here, r, "after");
        const struct token *thing = trial.at;
        if (take_words(&trial, "exchange")) {
            recast_word(&here, r, "hand-off");
        } else if (take_among(&trial, things)) {
            recast_copy(c, r, thing, trial.at);
        } else {
            return false;
        }
    } else {
        return false;
    }
    const struct token *limit = trial.at;
    take_mark(&trial, ',');
    if (take_among(&trial, limits)) {
        r->told = span_join(past_fillers(limit, c->end)->span, trial.at[-1].span);
        take_mark(&trial, ',');
    }
    recast_mark(c, r, ',');
    recast_copy(c, r, trial.at, c->end);
    const struct token *who = past_fillers(trial.at, c->end);
    return who > at && who < c->end && acts_there(c, who);
}

/* on the second of those passes: on the second pass. */
bool shape_which_of(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const which[] = {"first", "second", "third", "last", NULL};
    static const char *const ofs[] = {"of those",     "of these",     "of two",
                                      "of those two", "of these two", NULL};
    static const struct {
        const char *many, *one;
    } things[] = {{"passes", "pass"},   {"screens", "screen"}, {"cuts", "cut"},
                  {"catches", "catch"}, {"picks", "screen"},   {"hand-offs", "hand-off"}};
    struct cursor trial = line_look(c, at + 1), here = line_look(c, at);
    if (!token_is_among(at, which) || !take_among(&trial, ofs)) {
        return false;
    }
    for (size_t i = 0; i < sizeof things / sizeof *things; i++) {
        if (take_words(&trial, things[i].many)) {
            recast_copy(c, r, c->at, at + 1);
            recast_word(&here, r, things[i].one);
            recast_copy(c, r, trial.at, c->end);
            return true;
        }
    }
    return false;
}

/* Before feeding the post, 2 dribbles down: and then he feeds it. */
bool shape_before_doing(const struct cursor *c, const struct token *at, struct recast *r)
{
    const struct token *who = main_who(c, at), *end = who ? front_end(who) : NULL;
    struct cursor trial = line_look(c, at);
    struct phrase phrase;
    struct str said;
    if (!who || end == who || !take_words(&trial, "before") ||
        !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &said) || trial.at > end ||
        !none_among(trial.at, end, turning_words)) {
        return false;
    }
    const struct token *stop = who;
    while (stop < c->end && !sentence_ends(stop)) {
        stop++;
    }
    struct cursor here = line_look(c, who);
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, who, stop);
    put_stop(c, r);
    recast_word(&here, r, "then");
    recast_copy(c, r, who, who + 1);
    put_third(&here, r, said);
    recast_copy(c, r, trial.at, end);
    recast_copy(c, r, stop, c->end);
    return true;
}

/* returns it to 1 and, instead of standing, cuts through: what is not done, between. */
bool shape_not_done_inside(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const nots[] = {"instead of", "rather than", NULL};
    static const char *const turns[] = {"if", "when", "unless", "until", "once", NULL};
    struct cursor trial = line_look(c, at);
    bool comma = take_mark(&trial, ',');
    if (at < c->at + 2 || !take_among(&trial, nots)) {
        return false;
    }
    const struct token *end = mark_ahead(c, trial.at, c->end - trial.at);
    if (end + 1 >= c->end || !token_is_mark(end, ',') || end == trial.at ||
        !none_among(trial.at, end, turns) || !deed_at(c, end + 1)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    bool joined = token_is_word(at - 1, "and") || token_is_word(at - 1, "but");
    recast_copy(c, r, joined ? end + 1 : end, c->end);
    r->told = span_join(at[comma].span, end[-1].span);
    return true;
}
