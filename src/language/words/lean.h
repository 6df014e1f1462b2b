/* SPDX-License-Identifier: MIT */
/* lean: what a refused line can do without (lean_cuts.c), and how it is read without it (lean.c).
 * Inside words only. */
#ifndef LANGUAGE_WORDS_LEAN_H
#define LANGUAGE_WORDS_LEAN_H

#include "language/words/put_plain.h"

enum { CUTS_MOST = 12 };
/* What may be left out. */
struct cut {
    const struct token *from, *to;
    int catches; /* when this one catches: said in its place; 0: nothing is */
};
struct cuts {
    struct cut at[CUTS_MOST];
    size_t count;
};
/* In the order in which they are tried. */
void cuts_find(const struct cursor *c, struct cuts *cuts);
/* lean_more: the same, of what stands at `at`: adverbs, aims, what comes before what counts. */
void cuts_find_more(const struct cursor *c, const struct token *at, struct cuts *cuts);

/* lean_tails: the same, of what hangs at the end of a clause. */
void cuts_find_tails(const struct cursor *c, const struct token *at, struct cuts *cuts);

/* ---- what the finders share ---- */

void add_cut(struct cuts *cuts, const struct token *from, const struct token *to);
/* Neither who, where nor when, nor what comes of it: `his` and `her` only of what is nobody. */
bool idle_words(const struct cursor *c, const struct token *from, const struct token *to);
/* A mark, and, then: another clause may begin behind it. */
bool joint_at(const struct token *at);
/* Where the same one goes on to do something, from what is shown on; NULL: not said. `*joint`:
 * where what he does first ends. */
const struct token *goes_on_at(const struct cursor *c, const struct token *at,
                               const struct token **joint);

#endif
