/* SPDX-License-Identifier: MIT */
/* guard_way: where a defender goes who guards somebody: where a trap meets him, down which line he
 * is sent, into what one sags. The floor knows where that is: left out. */
#include "language/words/grammar.h"

/* x3 sags off 3 into the lane: off his own man, to where who sags stands by rule. */
static int sag_way(struct predicate *p)
{
    static const char *const offs[] = {"off of", "off", "away from", "from", NULL};
    static const char *const leads[] = {"into",    "to",         "in",         "toward", "back to",
                                        "down to", "back in to", "down in to", NULL};
    static const char *const ends[] = {
        "lane", "paint", "middle of lane", "middle of paint", "middle", "key", "help", "gap", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who man, own;
    if (p->s->verb != VERB_SAGS || p->s->subject.count > 1) {
        return 0;
    }
    bool off = take_among(&trial, offs) || str_is(c->at[-1].text, "off");
    if (off && person_read(&trial, &man) && above_guarded(c, &p->s->subject.at[0], &own) &&
        same_who(&man, &own)) {
        c->at = trial.at;
        return 1;
    }
    cursor_back(c, mark);
    trial = *c;
    const struct token *from = c->at;
    if (!take_among(&trial, leads) || !take_among(&trial, ends)) {
        return 0;
    }
    c->at = trial.at;
    note_left_out(c, cursor_taken(c, from));
    return 1;
}

/* ices it down the side: where the ball is sent, which moves no defender. */
static int sent_along(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    bool down = c->at > c->first && str_is(c->at[-1].text, "down"); /* ices it down: the side */
    if (verb_row(p->s->verb)->task != VERB_GUARD || !take_way(&trial, down) ||
        !way_ends_here(&trial)) {
        return 0;
    }
    c->at = trial.at;
    note_left_out(c, cursor_taken(c, from));
    return 1;
}

/* traps 1 at half court, in the corner: where they meet him. */
static int trap_where(struct predicate *p)
{
    static const char *const leads[] = {"at", "in", "on", "along", "near", "against", NULL};
    static const char *const near_lines[] = {
        "half court line", "half court", "timeline",      "line",
        "sideline",        "baseline",   "coffin corner", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    bool traps = (p->s->verb == VERB_TRAPS || p->s->verb == VERB_DOUBLES) && !clause_is(c) &&
                 p->s->object.kind != WHO_NONE;
    if (traps && take_among(&trial, leads) && take_among(&trial, near_lines)) {
        c->at = trial.at;
    } else if (!traps || !spot_behind(c, leads)) {
        return 0;
    }
    note_meeting(c, cursor_taken(c, from));
    return 1;
}

int guard_way(struct predicate *p)
{
    int found = trap_where(p);
    found = found != 0 ? found : sent_along(p);
    return found != 0 ? found : sag_way(p);
}
