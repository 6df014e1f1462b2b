/* SPDX-License-Identifier: MIT */
/* condition: between the files that read what a read asks of the defense. Inside words only. */
#ifndef LANGUAGE_WORDS_CONDITION_H
#define LANGUAGE_WORDS_CONDITION_H

#include "language/words/grammar.h"

/* What a defender does: trails, is trailing. */
bool guard_verb_read(struct cursor *c, struct phrase *phrase);
/* Behind it, what changes nothing of it: shows hard, stays with 5, who is `man`; or NULL. */
void condition_tail(struct cursor *c, const struct who *man);
/* they switch, he trails: whose defenders, the screen above tells. */
bool they_read(struct cursor *c, struct condition *out);
/* on a trap, a double from x4: the coverage as a noun. */
bool coverage_read(struct cursor *c, struct condition *out);

#endif
