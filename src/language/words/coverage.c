/* SPDX-License-Identifier: MIT */
/* coverage: what the defense does, as it is said: they trap it, they're icing it, and what is going
 * on: x3 is sagging, 4 is lifting to the wing. Rules of recast_find, for the second reading. */
#include "language/words/speech.h"

/* they trap it: the two at the latest screen above, or the one of them whose part it is. */
bool theirs(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"they", "defense", NULL};
    struct cursor trial = *c;
    struct condition said = {.kind = COND_OTHERWISE};
    trial.watch = NULL;
    if (!word_among(c, words) || !coverage_said(&trial, &said) ||
        !(stop_is(&trial) || mark_is(&trial, ',') || word_is(&trial, 0, "and"))) {
        return false;
    }
    bool both = said.other.kind != WHO_NONE;
    VEC_PUSH(c->arena, &r->subject, said.who);
    if (both) {
        VEC_PUSH(c->arena, &r->subject, said.other);
    }
    recast_verb(c, r, phrase_words(said.verb, PASS_PLAIN, SCREEN_PLAIN, both));
    r->to = trial.at;
    return true;
}

/* x3 is sagging, 4 is lifting to the wing: it does. */
bool going_on(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"is", "are", NULL};
    struct cursor trial = *c;
    struct phrase phrase;
    struct str bare;
    who_list list;
    trial.watch = NULL;
    const struct token *from = c->at;
    if (!subject_read(&trial, &list)) {
        return false;
    }
    const struct token *behind = trial.at;
    if (!take_among(&trial, words) ||
        !phrase_ing_here(&trial, who_side(&list.at[0]), &phrase, &bare)) {
        return false;
    }
    recast_copy(c, r, from, behind);
    recast_verb(c, r, bare);
    r->to = trial.at;
    return true;
}
