/* SPDX-License-Identifier: MIT */
/* state: what a player is, which a read or a clause asks: 3 is open, is denied, is open on the
 * roll; the roll is there. */
#include "language/words/grammar.h"

int take_state(struct cursor *c)
{
    static const struct entry states[] = {{"is open", EVENT_OPEN},
                                          {"is free", EVENT_OPEN},
                                          {"gets open", EVENT_OPEN},
                                          {"comes open", EVENT_OPEN},
                                          {"is wide open", EVENT_OPEN},
                                          {"is left open", EVENT_OPEN},
                                          {"is left alone", EVENT_OPEN},
                                          {"is unguarded", EVENT_OPEN},
                                          {"is getting open", EVENT_OPEN},
                                          {"has space", EVENT_OPEN},
                                          {"is covered", EVENT_COVERED},
                                          {"is getting denied", EVENT_DENIED},
                                          {"is getting overplayed", EVENT_DENIED},
                                          {"is top-locked", EVENT_DENIED},
                                          {"is getting top-locked", EVENT_DENIED},
                                          {"is guarded", EVENT_COVERED},
                                          {"isn't open", EVENT_COVERED},
                                          {"isnt open", EVENT_COVERED},
                                          {"is not open", EVENT_COVERED},
                                          {"is denied", EVENT_DENIED},
                                          {"be denied", EVENT_DENIED},
                                          {"be open", EVENT_OPEN},
                                          {"be covered", EVENT_COVERED},
                                          {"is being denied", EVENT_DENIED},
                                          {"gets denied", EVENT_DENIED},
                                          {"is overplayed", EVENT_DENIED},
                                          {"gets overplayed", EVENT_DENIED},
                                          {"is taken away", EVENT_DENIED},
                                          {"is being overplayed", EVENT_DENIED},
                                          {NULL, 0}};
    return take_entry(c, states);
}

/* is open on the roll, is open inside: where and when, which nobody asks the defense. */
static void state_tail(struct cursor *c)
{
    static const char *const tails[] = {
        "on the roll",  "on the cut",    "on the pop",     "on the dive", "on the slip", "rolling",
        "cutting",      "diving",        "popping",        "inside",      "down low",    "early",
        "for three",    "for the three", "off the screen", "right away",  "first",       "late",
        "under basket", "on the catch",  "for a shot",     "for the lob", "coming off",  NULL};
    const struct token *from = past_fillers(c->at, c->end);
    if (take_among(c, tails) || spot_behind(c, place_words)) {
        note_left_out(c, cursor_taken(c, from));
    }
}

bool asked_state_read(struct cursor *c, struct condition *out)
{
    int state = take_state(c);
    if (state < 0) {
        return false;
    }
    state_tail(c);
    out->kind = state == EVENT_OPEN      ? COND_OPEN
                : state == EVENT_COVERED ? COND_COVERED
                                         : COND_DENIED;
    return true;
}

/* the roll is there, the cut is not open: of whom it is. */
bool deed_state_read(struct cursor *c, struct condition *out)
{
    static const char *const rolls[] = {"roll", "dive", "slip", "pop", "roll man", "roller", NULL};
    static const struct entry theres[] = {{"is there", EVENT_OPEN},
                                          {"is not there", EVENT_COVERED},
                                          {"isn't there", EVENT_COVERED},
                                          {"is taken away", EVENT_COVERED},
                                          {NULL, 0}};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who user, doer;
    bool known = take_among(&trial, rolls) ? above_last_screen(c, &user, &doer)
                                           : above_noun_doer(&trial, &doer);
    if (!known || doer.kind != WHO_PLAYER) {
        cursor_back(c, mark);
        return false;
    }
    out->who = doer;
    int there = take_entry(&trial, theres);
    if (there < 0 && !asked_state_read(&trial, out)) {
        cursor_back(c, mark);
        return false;
    }
    if (there >= 0) {
        out->kind = there == EVENT_OPEN ? COND_OPEN : COND_COVERED;
    }
    c->at = trial.at;
    return true;
}
