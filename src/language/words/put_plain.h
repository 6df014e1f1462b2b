/* SPDX-License-Identifier: MIT */
/* put_plain: ways of a refused line to be put more plainly that no row of plain.def could say,
 * because they look at what stands around or above: see plain.c. Inside words only. */
#ifndef LANGUAGE_WORDS_PUT_PLAIN_H
#define LANGUAGE_WORDS_PUT_PLAIN_H

#include "language/words/unfold.h"

/* A way: what begins at `at`, of the line from line->at to line->end: where it ends, with what is
 * read for it in `out` and, told by a note, what is left out of it, or what it was taken as. NULL:
 * not said so, and `out` is as it was. */
typedef const struct token *plain_way(const struct cursor *line, const struct token *at,
                                      struct recast *out);
plain_way already_put;   /* so it is already, or it is told once more */
plain_way talk_put;      /* as it is dictated, without a stop */
plain_way dictated_put;  /* with sounds, with words said twice, with a scene in front */
plain_way spoken_put;    /* what he does not do, only shows, or looks at, before what he does */
plain_way rundown_put;   /* where he looks, which of them: told beside what is done */
plain_way likewise_put;  /* as another one, what one has another one do */
plain_way retold_put;    /* what is told by what stands around it */
plain_way jot_put;       /* as it is noted, without to, with brackets: before the others */
plain_way set_named_put; /* behind what it is called; for the get */
plain_way shorthand_put; /* as it is noted down */
plain_way around_put;    /* past, around, between team-mates */
plain_way in_turn_put;   /* off two who stand one behind the other */
plain_way beats_put;     /* when x4 comes in, until x5 meets him: as what a defender does */
plain_way vacated_put;   /* the spot he left, a full second */
plain_way he_then_put;   /* he in a moment, where the line tells who that is */
plain_way each_his_put;  /* what several do, and then each of them */
plain_way zone_men_put;  /* the top right defender, in a zone: his number */
/* The two top defenders of the zone are spoken of: neither player 2, nor the top. */
bool zone_men_told(const struct cursor *c);
plain_way described_put; /* who is told by where he stands, or by what he is */

/* vs 2-3:, against their two three, where that is the defense of the play: where the sentence
 * behind it begins, and what is left out; or NULL. Of another defense it would be a condition. */
const struct token *against_said(const struct cursor *line, struct span *told);

/* ---- what the ways share ---- */

/* What the first of them gives; the last one is NULL. */
const struct token *first_put(plain_way *const *ways, const struct cursor *line,
                              const struct token *at, struct recast *out);
/* Where a row of words as in plain.def, said from `at` on, ends; NULL: it is not said there. */
const struct token *row_said(const struct cursor *line, const struct token *at, const char *said);
/* Nothing but a joint or a mark stands before `at`. */
bool clause_begins_at(const struct cursor *line, const struct token *at);
/* As it is written, a full stop or a semicolon stands right before `at`. */
bool behind_stop(const struct cursor *line, const struct token *at);
/* A spot from `at` on, and where it ends; NULL: none. */
const struct token *spot_end(const struct cursor *line, const struct token *at,
                             const struct place **place);
/* A spot from `at` on, with nothing else behind it: where it ends, or NULL. */
const struct token *spot_alone(const struct cursor *line, const struct token *at);
/* The number of the attacker at `at`; 0: none there. */
int attacker_at(const struct token *at, const struct token *end);
extern const char *const subject_pronouns[]; /* he, she, they */
/* The players from `at` on, 4 and 5, both of them: where they end, and how many they are. */
const struct token *players_end(const struct cursor *line, const struct token *at, size_t *count);
/* uh, you know, just: what is said between. */
const struct token *past_sounds(const struct token *at, const struct token *end);
/* 1 dribbles at 2, and hands off to 2; at `here`. */
void put_dho(const struct cursor *here, struct recast *out, int from, int to);
/* A verb begins at `at`. */
bool verb_at(const struct cursor *line, const struct token *at);

#endif
