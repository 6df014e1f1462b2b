/* SPDX-License-Identifier: MIT */
/* unscreened: who rolls, pops, slips or ghosts, and has set no screen: a screen that is meant and
 * not said is put in front, else it is a cut, a move. */
#include "language/words/speech.h"

/* dives to the rim, pops out to the wing: said of one who has set no screen it is a cut, a move. */
void screenless_move(struct predicate *p)
{
    bool rolls = p->s->verb == VERB_ROLLS, pops = p->s->verb == VERB_POPS && p->s->place;
    if ((!rolls && !pops) || (rolls && !word_starts(p->from, p->c->end, "dive")) ||
        above_has_screened(p->c, p->s->subject.at, p->s->subject.count)) {
        return;
    }
    p->s->verb = rolls ? VERB_CUTS : VERB_GOES;
    if (rolls && !p->s->place) {
        p->phrase.to = SPOT_RIM;
    }
}

/* What is asked is what a defender does at a screen on the ball. */
static bool asks_of_screen(const struct cursor *c)
{
    static const enum verb there[] = {VERB_HEDGES,     VERB_SWITCHES,  VERB_DROPS, VERB_ICES,
                                      VERB_GOES_UNDER, VERB_GOES_OVER, VERB_TRAPS};
    const struct condition *asked = c->asked;
    if (!asked && c->branch && c->branch->conditions.count > 0) {
        asked = &c->branch->conditions.at[0];
    }
    for (size_t i = 0; asked && i < sizeof there / sizeof *there; i++) {
        if (asked->verb == there[i] && (asked->kind == COND_VERB || asked->kind == COND_BOTH)) {
            return true;
        }
    }
    return false;
}

/* A screen on the ball in front of it, or for him whose defender the read asks of. */
static void put_ahead(struct predicate *p, const struct who *user)
{
    struct sentence *s = p->s, *ahead = arena_new(p->c->arena, struct sentence);
    *ahead = (struct sentence){.span = s->verb_span,
                               .subject = s->subject,
                               .verb = VERB_SCREENS,
                               .screen = SCREEN_BALL,
                               .verb_span = s->verb_span,
                               .object = {.kind = WHO_BALL, .span = s->verb_span}};
    if (user && user->kind == WHO_PLAYER) {
        ahead->screen = SCREEN_PLAIN;
        ahead->object = *user;
    }
    s->ahead = ahead;
}

/* if x5 hedges, 5 slips, and no screen of 5 stands above: the one on the ball that is meant. 5
 * rolls to the left block, of no screen: a cut. */
void rolls_of_none(struct predicate *p)
{
    struct sentence *s = p->s;
    struct who holder;
    bool rolls = s->verb == VERB_SLIPS || s->verb == VERB_ROLLS;
    if (!rolls || s->ahead || s->subject.count != 1 || s->subject.at[0].kind != WHO_PLAYER ||
        above_has_screened(p->c, s->subject.at, 1) || !above_holder(p->c, &holder) ||
        holder.kind != WHO_PLAYER || same_who(&holder, &s->subject.at[0])) {
        return;
    }
    int who = s->subject.at[0].number;
    struct diag *diag = NULL;
    const struct who *user = p->c->asked ? &p->c->asked->other : NULL; /* x5 switches out on 1 */
    bool off_ball = user && user->kind == WHO_PLAYER && !same_who(user, &holder);
    if (asks_of_screen(p->c) && (off_ball || !stands_outside(p->c, &holder))) {
        put_ahead(p, off_ball ? user : NULL);
        diag = diag_add(p->c->diags, DIAG_TEXT_VERB_TAKEN, s->verb_span,
                        "no screen of %d stands above: `%d screens for %d` was put in front", who,
                        who, off_ball ? user->number : holder.number);
    } else if (s->place && (p->c->speech || s->place->spot != SPOT_RIM)) {
        s->verb = VERB_CUTS;
        diag = diag_add(p->c->diags, DIAG_TEXT_VERB_TAKEN, s->verb_span,
                        "%d has set no screen before this: taken as a cut", who);
    }
    if (diag) {
        diag_help(p->c->diags, diag, "for another, write it in front: `%d screens for 3`", who);
    }
}

/* 4 ghosts to the left wing: by one who has set no screen, on the ball; a slip leaves it before
 * contact. */
void ghosts_on_ball(struct predicate *p)
{
    struct sentence *s = p->s;
    struct who holder;
    if (s->verb != VERB_SLIPS || !s->place || !word_starts(p->from, p->c->end, "ghost") ||
        s->subject.count != 1 || above_has_screened(p->c, s->subject.at, 1) ||
        !above_holder(p->c, &holder) || same_who(&holder, &s->subject.at[0])) {
        return;
    }
    put_ahead(p, NULL);
}
