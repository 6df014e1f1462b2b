/* SPDX-License-Identifier: MIT */
/* loose_who: who goes on in a clause that names nobody, or says `he` or `who`: see loose_clause.h.
 */
#include "language/words/loose_clause.h"

/* Behind `who`: whom the sentence before was done to; x2 overplays 2, who cuts: his own man. */
bool clause_whom(const struct clause *k, struct who *out)
{
    const struct sentence *last = k->going->last;
    *out = last->object;
    return out->kind != WHO_NONE ||
           (who_defends(&last->subject.at[0]) && above_guarded(k->c, &last->subject.at[0], out));
}

/* Who goes on, where nobody is named or `he` is: behind a screen the one who set it rolls, and the
 * one it is for uses it; behind a pass only the passer goes on, and `he` could be either. */
bool clause_goes_on(struct clause *k, bool he, struct who *out)
{
    const struct sentence *last = k->going->last;
    enum frame_kind frame = k->act->frame;
    if (loose_frame(frame)->holder) { /* 2 waits for the ball and drives: not who has it */
        bool held = above_holder(k->c, out);
        bool waits = last && last->verb == VERB_STAYS && last->subject.count == 1;
        return held && (!waits || same_who(&last->subject.at[0], out));
    }
    if (!last || last->subject.count != 1) {
        return false;
    }
    if (k->going->relative && !clause_whom(k, out)) {
        return false;
    }
    if (!k->going->relative) {
        *out = last->subject.at[0];
    }
    bool two = !k->going->relative && who_is_one(&last->object);
    bool screen = verb_row(last->verb)->task == VERB_SCREEN;
    bool own =
        k->act->verb == VERB_ROLLS || k->act->verb == VERB_POPS || k->act->verb == VERB_SLIPS;
    bool uses = frame == FRAME_USE || frame == FRAME_CURL || frame == FRAME_TAKE ||
                k->act->verb == VERB_BACK_CUTS;
    if (two && screen && !own) {
        *out = last->object;
        return uses;
    }
    return !two || own || (!he && !screen) ||
           (he && !k->going->relative && passer_goes_on(last, k->act->verb, out));
}
