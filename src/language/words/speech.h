/* SPDX-License-Identifier: MIT */
/* speech: the second reading of a line that could not be read as it stands: as it is said aloud,
 * with words that say nothing, and with sentences that leave out who acts. Inside words only. */
#ifndef LANGUAGE_WORDS_SPEECH_H
#define LANGUAGE_WORDS_SPEECH_H

#include "language/words/grammar.h"

/* The line's tokens, of which what is said otherwise takes the place. */
struct speech {
    struct token *tokens;
    size_t room;
};

typedef VEC(struct token) token_list;

/* What stands at the head of a sentence, and what is read in its place. */
struct recast {
    const struct token *to; /* what is written ends there */
    token_list tokens;      /* what is read for it */
    who_list subject;       /* who acts, where the words do not say; else empty */
    bool taken;             /* not said, but known from above: a note tells */
    bool same;              /* it goes on with the subject before it */
    struct span told;       /* left out, for a note; or SPAN_NONE */
};
/* Whether a sentence that is said another way begins at the cursor. */
bool recast_find(const struct cursor *c, struct recast *out);
/* front: rules of recast_find. */
bool fronted(const struct cursor *c, struct recast *r);
bool stepping(const struct cursor *c, struct recast *r);
/* Reads it so from here on; false: no room. */
bool recast_put(struct cursor *c, const struct recast *recast);

#endif
