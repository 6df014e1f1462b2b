/* SPDX-License-Identifier: MIT */
/* used: a screen that is named by the one who uses it: `3 curls off a down screen from 4`, `1 uses
 * 5`, `1 waits for 5 to set the pick and drives`. Who sets it is a sentence of its own, in front.
 * Rules of recast_find. */
#include "language/words/speech.h"

/* X sets a SCREEN for W, in front; of the one who has the ball a plain one is a ball screen. */
static void put_screen(const struct cursor *c, struct recast *r, const struct somebody *by,
                       const struct phrase *phrase, const struct somebody *user)
{
    bool ball = phrase->screen == SCREEN_PLAIN && above_holds(c, &user->who);
    recast_somebody(c, r, by);
    recast_verb(c, r,
                ball ? STR("ball screens")
                     : phrase_words(VERB_SCREENS, PASS_PLAIN, phrase->screen, false));
    recast_word(c, r, "for");
    recast_somebody(c, r, user);
}

/* 5 and 4 screen for W, in that order. */
static void put_two(const struct cursor *c, struct recast *r, const struct somebody *first,
                    const struct somebody *second, const struct somebody *user)
{
    recast_somebody(c, r, first);
    recast_word(c, r, "and");
    recast_somebody(c, r, second);
    recast_word(c, r, "screen");
    recast_word(c, r, "for");
    recast_somebody(c, r, user);
}

/* a down screen from 4, 4's down screen. */
static bool owned_screen(struct cursor *c, struct somebody *by, struct phrase *phrase)
{
    static const char *const froms[] = {"from", "by", "set by", "of", NULL};
    struct cursor trial = *c;
    struct who owner;
    const struct token *from = past_fillers(trial.at, trial.end);
    if (owner_read(&trial, &owner) && owner.kind == WHO_PLAYER &&
        phrase_noun_read(&trial, phrase) && verb_row(phrase->verb)->task == VERB_SCREEN) {
        *by = somebody_numbered(c, from, owner);
        c->at = trial.at;
        return true;
    }
    trial = *c;
    if (!phrase_noun_read(&trial, phrase) || verb_row(phrase->verb)->task != VERB_SCREEN ||
        !take_among(&trial, froms) || !player_here(&trial, by)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* off 4's screen, where 5's waits for who goes off: which one is meant is told by the strict
 * reading. */
static bool another_waits(const struct cursor *c, const struct who *user, const struct token *owner)
{
    struct who waits, second;
    bool several;
    return owner < c->end && owner->possessive &&
           above_waiting_screen(c, user, &waits, &second, &several);
}

/* at the right elbow: where the screen stands. */
static bool take_where(struct cursor *c, const struct token **from, const struct token **to)
{
    static const char *const leads[] = {"at", "on", "in", NULL};
    struct cursor trial = *c;
    bool led = take_among(&trial, leads);
    *from = past_fillers(trial.at, trial.end);
    if (!led || !spot_here(&trial)) {
        return false;
    }
    *to = c->at = trial.at;
    return true;
}

bool known_screen(const struct token *from, const struct token *to)
{
    static const char *const anys[] = {"a", "an", "another", NULL};
    while (from < to && !token_is_among(from, anys)) {
        from++;
    }
    return from == to;
}

/* A screen that nobody has set so far was put in front: what a note tells. */
static void tell_supplied(const struct cursor *c, struct recast *r, const struct somebody *by,
                          const struct somebody *user)
{
    r->as =
        str_format(c->arena, "%d screens for %d, who uses it", by->who.number, user->who.number);
}

/* 3 curls off a down screen from 4: the screen comes first. */
bool off_a_screen(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody who, by;
    struct phrase phrase, screen;
    if (!player_here(&trial, &who)) {
        return false;
    }
    const struct token *verb = trial.at, *run_in = verb;
    skip_run_in(&trial);
    verb = trial.at;
    bool uses = take_uses(&trial); /* uses 5's ball screen */
    if (!uses &&
        (!phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
         (verb_row(phrase.verb)->task != VERB_USE && verb_row(phrase.verb)->task != VERB_MOVE &&
          verb_row(phrase.verb)->task != VERB_CARRY))) {
        return false;
    }
    const struct token *verb_end = trial.at;
    struct cursor off = trial;
    take_particles(&off);
    static const char *const offs[] = {"off of", "off", "around", "from", NULL};
    bool led = take_among(&off, offs) || str_is(trial.at[-1].text, "off") || uses;
    trial.at = led && off.at > verb_end ? off.at : trial.at;
    const struct token *owner = past_fillers(trial.at, trial.end);
    if (!led || !owned_screen(&trial, &by, &screen) || another_waits(c, &who.who, owner) ||
        same_who(&by.who, &who.who) || above_screened(c, &who.who, &by.who)) {
        return false;
    }
    const struct token *where, *where_end;
    struct somebody second = {.from = NULL};
    struct cursor other = trial;
    bool two = take_words(&other, "and") && !subject_verb_is(&other) &&
               player_here(&other, &second) && !same_who(&second.who, &who.who) &&
               (cursor_done(&other) || !ends_in_s(cursor_next(&other))); /* and 2 looks for her */
    trial = two ? other : trial;
    if (uses && !two && known_screen(verb_end, trial.at)) {
        return false; /* which nobody has set */
    }
    bool placed = take_where(&trial, &where, &where_end);
    r->told = verb > run_in ? span_join(run_in->span, verb[-1].span) : r->told;
    if (two) { /* the stagger by 5 and 4 */
        put_two(c, r, &by, &second, &who);
    } else {
        put_screen(c, r, &by, &screen, &who);
    }
    if (placed) {
        recast_word(c, r, "at");
        recast_copy(c, r, where, where_end);
    }
    recast_mark(c, r, ',');
    recast_somebody(c, r, &who);
    if (uses) {
        recast_word(c, r, "uses");
    } else {
        recast_copy(c, r, verb, verb_end);
        if (!str_is(verb_end[-1].text, "off")) {
            recast_word(c, r, "off");
        }
    }
    recast_somebody(c, r, &by);
    if (two) {
        recast_word(c, r, "and");
        recast_somebody(c, r, &second);
    }
    r->to = trial.at;
    return true;
}

/* 1 uses 5, who has set no screen: with the ball it is a ball screen. */
bool uses_player(const struct cursor *c, struct recast *r)
{
    static const struct phrase ball = {.screen = SCREEN_BALL};
    struct cursor trial = cursor_look(c);
    struct somebody who, by;
    static const char *const uses[] = {"uses", "use", NULL};
    if (!player_here(&trial, &who) || !above_holds(c, &who.who)) {
        return false;
    }
    const struct token *verb = trial.at;
    if (!take_among(&trial, uses) || !player_here(&trial, &by) || same_who(&by.who, &who.who)) {
        return false;
    }
    if (above_has_screened(c, &by.who, 1)) {
        return false;
    }
    put_screen(c, r, &by, &ball, &who);
    tell_supplied(c, r, &by, &who);
    recast_mark(c, r, ',');
    recast_somebody(c, r, &who);
    recast_copy(c, r, verb, trial.at);
    r->to = trial.at;
    return true;
}

/* to set the ball screen, to get there, is planted: what he waits for. */
static bool take_awaited(struct cursor *c, struct phrase *screen)
{
    static const char *const sets[] = {"to set",       "sets",    "to come set", "to come and set",
                                       "comes to set", "to make", "to give",     "to come",
                                       "to",           NULL};
    static const char *const there[] = {
        "to get there",    "to get set", "to be set", "is set",     "to be planted",
        "is planted",      "to set it",  "sets it",   "gets there", "to arrive",
        "is there",        "to plant",   "plants",    "to set up",  "to set his feet",
        "to set her feet", "gets set",   "arrives",   NULL};
    struct cursor trial = *c;
    *screen = (struct phrase){.screen = SCREEN_PLAIN};
    if (take_among(&trial, sets) &&
        (phrase_noun_read(&trial, screen) || phrase_read(&trial, FOR_ATTACKERS, screen)) &&
        verb_row(screen->verb)->task == VERB_SCREEN) {
        c->at = trial.at;
        return true;
    }
    *screen = (struct phrase){.screen = SCREEN_PLAIN};
    return take_among(c, there);
}

/* 2 waits for 5 to set the screen and then drives off it: the use waits for it by itself. */
bool waits_for_screen(const struct cursor *c, struct recast *r)
{
    static const char *const waits[] = {"waits for",  "wait for",   "waits on", "waits until",
                                        "waits till", "wait until", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who, by;
    struct phrase screen;
    if (!player_here(&trial, &who) || !take_among(&trial, waits)) {
        return false;
    }
    struct who screener, second;
    bool several;
    struct cursor him = trial, on = trial;
    if (take_among(&him, him_or_her) && (on = him, take_joint(&on)) && !subject_verb_is(&on) &&
        verb_begins(&on) && above_waiting_screen(c, &who.who, &screener, &second, &several) &&
        !several) {
        recast_somebody(c, r, &who); /* whose screen waits for him */
        r->to = on.at;
        return true;
    }
    struct cursor noun = trial; /* the screen from 5 */
    bool read = owned_screen(&noun, &by, &screen);
    if (read) {
        trial = noun;
    } else if (!player_here(&trial, &by) || !take_awaited(&trial, &screen)) {
        return false;
    }
    struct cursor verb = trial;
    if (same_who(&by.who, &who.who) || !take_joint(&verb) || subject_verb_is(&verb) ||
        !verb_begins(&verb)) {
        return false;
    }
    if (!above_screened(c, &who.who, &by.who)) {
        put_screen(c, r, &by, &screen, &who);
        recast_mark(c, r, ',');
    }
    recast_somebody(c, r, &who);
    r->to = verb.at;
    return true;
}

/* roll and replace with 4: the screener rolls, and 4 takes his place. */
bool rolls_and_replaced(const struct cursor *c, struct recast *r)
{
    static const char *const rolls[] = {"roll and replace", "roll & replace", "roll replace",
                                        "roll n replace", NULL};
    static const char *const withs[] = {"with", "by", "from", NULL};
    struct cursor trial = cursor_look(c);
    struct who user, screener;
    struct somebody by;
    if (!take_among(&trial, rolls) || !take_among(&trial, withs) || !player_here(&trial, &by) ||
        !above_last_screen(c, &user, &screener) || screener.kind != WHO_PLAYER ||
        same_who(&by.who, &screener)) {
        return false;
    }
    recast_number(c, r, screener.number);
    recast_word(c, r, "rolls");
    recast_mark(c, r, ',');
    recast_somebody(c, r, &by);
    recast_word(c, r, "replaces");
    recast_number(c, r, screener.number);
    r->to = trial.at;
    return true;
}

/* 5 sets it on the right hip: of the one who has the ball; on which side the run finds by itself.
 */
bool sets_it(const struct cursor *c, struct recast *r)
{
    static const char *const sets[] = {"sets it", "sets one", "sets screen", "sets pick", NULL};
    static const char *const sides[] = {
        "right hip",     "left hip", "right side", "left side", "high side", "right shoulder",
        "left shoulder", "hip",      "top side",   "low side",  NULL};
    static const struct phrase ball = {.screen = SCREEN_BALL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct who holder;
    if (!player_here(&trial, &who) || !take_among(&trial, sets) || !take_words(&trial, "on") ||
        !above_holder(c, &holder) || same_who(&holder, &who.who) || holder.kind != WHO_PLAYER) {
        return false;
    }
    const struct token *side = past_fillers(trial.at, trial.end);
    take_among(&trial, owner_words);
    if (!take_among(&trial, sides)) {
        return false;
    }
    struct somebody user = somebody_numbered(c, side, holder);
    put_screen(c, r, &who, &ball, &user);
    r->told = span_join(side->span, trial.at[-1].span);
    r->to = trial.at;
    return true;
}
