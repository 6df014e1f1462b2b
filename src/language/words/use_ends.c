/* SPDX-License-Identifier: MIT */
/* use_ends: a second verb that only says how a screen is used, or where the use ends: comes off 5
 * and drives, rejects it and goes left, comes off it, two dribbles to the wing, gets the ball on
 * the wing; ghosts and flies out to the corner. */
#include "language/words/speech.h"

/* A verb that uses a screen, by itself or with off. */
bool use_verb(struct sentence *s)
{
    enum verb other = verb_sibling(s->verb, "off");
    if (other != VERB_COUNT) {
        s->verb = other;
    }
    return verb_row(s->verb)->task == VERB_USE;
}

/* Whose screen it is was said, or one waits for him. */
static bool has_screen(const struct predicate *p)
{
    struct who by, second;
    bool several;
    return p->s->object.kind != WHO_NONE ||
           above_waiting_screen(p->c, &p->s->subject.at[0], &by, &second, &several);
}

/* comes off 5 and drives: one use of the screen, as the second verb says it. */
static bool comes_and(struct predicate *p)
{
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    if (s->verb != VERB_COMES || s->place || !has_screen(p)) {
        return false;
    }
    take_mark(&trial, ',');
    bool joined = take_words(&trial, "and") || take_words(&trial, "to");
    struct phrase phrase;
    const struct token *verb = trial.at;
    if (!joined || inverse_is(&trial) || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    struct sentence used = {.verb = phrase.verb};
    if (!use_verb(&used)) {
        return false;
    }
    p->c->at = trial.at;
    p->phrase = phrase;
    s->verb = used.verb;
    s->pace = phrase.pace != PACE_VERB ? phrase.pace : s->pace;
    s->verb_span = cursor_taken(p->c, verb);
    return true;
}

/* What stands between the use and where it ends: and, to; one dribble, which ends there itself. */
static bool take_end_joint(struct predicate *p, struct cursor *c, bool *dribbled)
{
    static const char *const counts[] = {
        "one dribble",       "two dribbles",    "three dribbles",     "one hard dribble",
        "two hard dribbles", "couple dribbles", "couple of dribbles", NULL};
    bool rejects = p->s->verb == VERB_REJECTS;
    bool comma = take_mark(c, ',');
    struct cursor count = *c;
    *dribbled = comma && p->c->speech && take_among(&count, counts) && leg_follows(&count);
    if (*dribbled) {
        c->at = count.at;
        return true;
    }
    bool joined = take_words(c, "and") || take_words(c, "to") || (rejects && comma);
    struct who same;
    struct cursor named = *c; /* reject it, 1 goes left */
    if (joined && rejects && person_read(&named, &same) && same_who(&same, &p->s->subject.at[0])) {
        *c = named;
    }
    return joined;
}

/* goes away from it: what a rejection does. */
static void take_away(struct cursor *c)
{
    static const char *const aways[] = {"away from it",
                                        "away from screen",
                                        "away from pick",
                                        "opposite way",
                                        "other way",
                                        "other direction",
                                        "opposite side",
                                        "away",
                                        NULL};
    take_among(c, aways);
}

/* The verb that ends it; false: it is a sentence of its own. */
static bool take_end_verb(struct predicate *p, struct cursor *c, struct phrase *phrase, bool *end)
{
    static const char *const ends[] = {"ends up", "end up",  "winds up", "wind up",  "lands",
                                       "land",    "stops",   "stop",     "finishes", "finish",
                                       "ends",    "settles", NULL};
    static const char *const its[] = {"it", "screen", "pick", NULL};
    bool rejects = p->s->verb == VERB_REJECTS, needs = p->s->verb == VERB_COMES || rejects;
    *end = take_among(c, ends);
    if (*end) {
        return true;
    }
    if (!needs || (!p->c->speech && !rejects) || !phrase_read(c, FOR_ATTACKERS, phrase)) {
        return false;
    }
    enum verb_task task = verb_row(phrase->verb)->task;
    bool way = word_is(c, 0, "baseline") || word_is(c, 0, "middle");
    bool away = rejects && phrase->verb == VERB_REJECTS && take_among(c, its);
    return phrase->verb != VERB_STAYS &&
           (away || (rejects && !way && (task == VERB_CARRY || task == VERB_MOVE)) ||
            (!rejects && task == VERB_MOVE));
}

/* comes off it and stops at the nail, rejects it and goes to the rim, curls 5 and ends up in the
 * lane: the second verb only says where the first one ends. */
static bool use_ends(struct predicate *p)
{
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    struct phrase phrase = {.to = SPOT_COUNT};
    bool dribbled, end = false, rejects = s->verb == VERB_REJECTS;
    if (verb_row(s->verb)->task != VERB_USE || s->place || (!rejects && !has_screen(p))) {
        return false;
    }
    if (!take_end_joint(p, &trial, &dribbled) ||
        (!dribbled && !take_end_verb(p, &trial, &phrase, &end)) ||
        (!leg_follows(&trial) && !rejects)) {
        return false;
    }
    if (rejects) {
        take_away(&trial);
    }
    p->c->at = trial.at;
    bool paced = !dribbled && !end && phrase.pace != PACE_VERB;
    s->pace = paced ? phrase.pace : s->pace;
    if (phrase.verb == VERB_BACK_CUTS && !dribbled && !end) {
        p->phrase.to = SPOT_RIM;
    }
    return true;
}

/* comes off and gets the ball from 1 on the left wing: that is where the use ends, too. */
static bool use_ends_at_catch(struct predicate *p)
{
    static const char *const gets[] = {"gets", "catches", "receives", "takes", NULL};
    static const char *const balls[] = {"it", "ball", "pass", NULL};
    static const char *const froms[] = {"from", "back from", NULL};
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who who;
    if (p->s->verb != VERB_COMES || p->s->place || !p->c->speech) {
        return false;
    }
    take_mark(&trial, ',');
    static const char *const leads[] = {"on", "at", "in", NULL};
    bool got = take_words(&trial, "and") && take_among(&trial, gets) && take_among(&trial, balls);
    if (got && take_among(&trial, froms)) {
        got = person_read(&trial, &who);
    }
    p->s->place = got && take_among(&trial, leads) ? spot_read(&trial, true) : NULL;
    cursor_back(&trial, mark);
    return p->s->place != NULL;
}

/* ghosts and flies out to the left wing: one movement. */
static bool ghost_ends(struct predicate *p)
{
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    struct phrase phrase;
    bool ghost = s->verb == VERB_SLIPS && !s->place && p->from < p->c->end &&
                 str_starts(p->from->text, "ghost");
    if (!ghost || !take_words(&trial, "and") || !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        verb_row(phrase.verb)->task != VERB_MOVE || !leg_follows(&trial)) {
        return false;
    }
    p->c->at = trial.at;
    return true;
}

bool use_goes_on(struct predicate *p)
{
    return comes_and(p) || use_ends_at_catch(p) || use_ends(p) || ghost_ends(p);
}

/* 1 drives baseline away from the screen: rejects it, by that side. */
bool drives_away(const struct cursor *c, struct recast *r)
{
    static const char *const goes[] = {"goes", "go", NULL};
    static const char *const ways[] = {"baseline", "middle", "left", "right", NULL};
    static const char *const screens[] = {"it", "screen", "pick", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody who, by;
    if (!player_here(&trial, &who)) {
        return false;
    }
    bool drives = take_among(&trial, goes) ||
                  (phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.verb == VERB_DRIVES);
    const struct token *way = trial.at;
    if (!drives || !take_among(&trial, ways) || !take_words(&trial, "away from")) {
        return false;
    }
    const struct token *screen = trial.at;
    bool from = take_among(&trial, screens) || player_here(&trial, &by);
    recast_somebody(c, r, &who);
    recast_word(c, r, "rejects");
    recast_copy(c, r, screen, trial.at);
    recast_word(c, r, "and");
    recast_word(c, r, "drives");
    recast_copy(c, r, past_fillers(way, c->end), past_fillers(way, c->end) + 1);
    r->to = trial.at;
    return from;
}

/* 1, with the ball, uses 5's screen, who has set none: it is set now, in front, with a note. */
static void set_now(struct predicate *p)
{
    struct sentence *s = p->s, *ahead = arena_new(p->c->arena, struct sentence);
    *ahead = (struct sentence){.span = s->verb_span,
                               .verb = VERB_SCREENS,
                               .screen = SCREEN_BALL,
                               .verb_span = s->verb_span,
                               .object = s->subject.at[0]};
    VEC_PUSH(p->c->arena, &ahead->subject, s->object);
    s->ahead = ahead;
    struct diag *diag =
        diag_add(p->c->diags, DIAG_TEXT_VERB_TAKEN, s->object.span,
                 "no screen of %d stands above: `%d ball screens for %d` was put in front",
                 s->object.number, s->object.number, s->subject.at[0].number);
    diag_help(p->c->diags, diag, "for another, write it in front: `%d screens for 3`",
              s->object.number);
}

bool screen_of_nobody(struct predicate *p)
{
    static const char *const nouns[] = {"screen",  "pick",  "block",   "pin-down", "pindown",
                                        "stagger", "flare", "screens", NULL};
    const struct sentence *s = p->s;
    bool noun = false;
    for (const struct token *at = p->from; at < p->c->at; at++) {
        noun = noun || token_is_among(at, nouns);
    }
    if (!p->used || !noun || s->subject.count != 1 || s->object.kind != WHO_PLAYER ||
        above_may_have_screened(p->c, &s->subject.at[0], &s->object)) {
        return false;
    }
    struct str user = subject_words(p->c, &s->subject);
    bool ball = above_holds(p->c, &s->subject.at[0]);
    if (ball && p->c->speech && !s->ahead && s->subject.at[0].kind == WHO_PLAYER &&
        !same_who(&s->object, &s->subject.at[0]) && !stands_outside(p->c, &s->subject.at[0])) {
        set_now(p);
        return false;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_TWO_MEANINGS, s->object.span,
                     "%d has set no screen for %.*s: is it set now?", s->object.number,
                     STR_ARG(user)),
              "write it in front: `%d %s for %.*s`", s->object.number,
              ball ? "ball screens" : "screens", STR_ARG(user));
    return true;
}
