/* SPDX-License-Identifier: MIT */
/* unfold: a line that the grammar has refused, and in which one sentence hangs in another: in a
 * relative clause (finds 3, who has lifted), behind a colon (3 and 4 cross: 3 to the left wing), in
 * a purpose (to receive at the top), in a noun (off a down screen by 4). It is unfolded into
 * sentences one behind the other, rule by rule, and read again. Inside words only. */
#ifndef LANGUAGE_WORDS_UNFOLD_H
#define LANGUAGE_WORDS_UNFOLD_H

#include "language/words/speech.h"

/* All of the line from c->at to c->end, unfolded and read; true: with notes. False: nothing of it,
 * nothing is reported. */
bool unfold_read(struct cursor *c, sentence_list *out);

/* Each rule is asked of the whole line, and gives all of it anew. */
#define UNFOLD(rule) bool rule(const struct cursor *c, struct recast *r);
#include "language/words/unfold.def"
#undef UNFOLD

/* to receive the pass, for a hand-off with 1: what such a rule takes begins at the cursor. */
bool gets_is(const struct cursor *c);
/* sending 3 to the corner, leaving 4 free to cut: the same. */
bool consequence_is(const struct cursor *c);

/* ---- what the rules share: a line as tokens ---- */

/* A cursor there, watched by nobody. */
struct cursor line_look(const struct cursor *c, const struct token *at);
/* A player's number, and nothing that is his. */
bool number_token(const struct token *token);
/* Where the clause that `at` stands in begins: behind a mark, `and`, `then`; a list of players is
 * not parted. */
const struct token *clause_begin(const struct cursor *c, const struct token *at);
/* Where the joint before a clause begins: its comma, `and`, `then`. `*then`: one of them. */
const struct token *joint_begin(const struct cursor *c, const struct token *clause, bool *then);
/* Who acts in the clause that begins there, an attacker by number, and where the verb begins.
 * `*own`: named in it; else in the clause it goes on with. */
bool clause_subject(const struct cursor *c, const struct token *clause, struct somebody *out,
                    bool *own);
/* Where what is said from `at` on ends: at a full stop, or where a new sentence begins behind a
 * joint. NULL: a verb goes on there, and whose it is is not said. */
const struct token *clause_end(const struct cursor *c, const struct token *at);
/* split: how it is done, or why, and neither who, where nor when. */
bool only_how(const struct cursor *c, const struct token *from, const struct token *to);
/* spare: who acts in the clause stands on this spot by the lines above, or nothing tells; the spot
 * begins at `at`. */
bool may_stand_there(const struct cursor *c, const struct token *at, const struct place *place);
/* From here to there; the words of a spot stand for no player. */
bool names_player(const struct token *from, const struct token *to, int number);
/* It gives the ball to somebody: a pass, a hand-off. */
bool phrase_passes(const struct phrase *phrase);
/* Adds the words as one speaks of one: `lift` as `lifts`. */
void put_third(const struct cursor *c, struct recast *r, struct str bare);
/* Adds what ends one sentence and begins the next. */
void put_stop(const struct cursor *c, struct recast *r);
/* The line up to a clause, without what joins it there. */
void put_before(const struct cursor *c, struct recast *r, const struct token *clause);

/* wanted: what i want is, what we do is: the coach tells that he tells. */
extern const char *const what_is_said[];
/* so, okay, um: said before a line; true: a `then` is among it, which ties. */
bool skip_talk(struct cursor *c);

#endif
