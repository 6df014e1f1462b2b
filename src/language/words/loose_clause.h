/* SPDX-License-Identifier: MIT */
/* loose_clause: what a clause says, between the two files that find it and write it down:
 * loose_slots.c and loose_fill.c. Inside words only. */
#ifndef LANGUAGE_WORDS_LOOSE_CLAUSE_H
#define LANGUAGE_WORDS_LOOSE_CLAUSE_H

#include "language/words/loose_read.h"

enum { ACTORS_MOST = 3, UNKNOWN_MOST = 2 };
/* What a clause says. */
struct clause {
    const struct cursor *c;
    const struct going *going;
    const struct loose_act *act;
    const struct item *act_item;
    const struct item *actors[ACTORS_MOST];
    size_t actor_count;
    const struct item *object, *from_who; /* whom it is done to; by whom, from whom */
    unsigned object_lead;
    const struct item *place, *route, *side;
    const struct item *noun; /* off a down screen: of which it is told by whom */
    bool spot_object;        /* the place stands for whom it is done to */
    size_t unknown;
    bool by;       /* `from_who` stands behind `by`: he does it */
    bool man, led; /* a defender is passed; something leads somewhere */
    bool thing, into, at, away, through;
    bool gone; /* cuts away, out of the lane: not to the rim */
    unsigned place_lead;
    struct recast said; /* its tokens, as they come */
};
/* Which of its acts it is about; false: two things are done. */
bool clause_act(struct clause *k, const struct items *items);
/* Behind `who`: whom the sentence before was done to; x2 overplays 2, who cuts: his own man. */
bool clause_whom(const struct clause *k, struct who *out);
/* Who goes on, where nobody is named or `he` is; false: either of two could. */
bool clause_goes_on(struct clause *k, bool he, struct who *out);
/* Who, whom and where; false: something turns it round, or has no part in it. */
bool clause_gather(struct clause *k, const struct items *items);
/* The last word of a place or of somebody. */
/* A shot comes of the pass that nobody is said to take. */
bool clause_shot_lost(const struct clause *k);
/* It is done with the ball, and this one does not have it. */
bool clause_needs_ball(const struct clause *k, const struct who *who);
bool item_says(const struct item *item, const char *word);
/* loose_judge */
bool clause_stands_off(const struct clause *k, const struct who *taker);
enum verb clause_by_ball(const struct clause *k, enum verb verb, const struct who *who);
bool clause_lacks_object(const struct clause *k);
bool clause_could_be_two(const struct clause *k);
bool clause_goes_behind_ball(const struct clause *k);
bool clause_passes_by(const struct clause *k, const char *way);
bool clause_moves_on(const struct clause *k);
bool clause_apart_stand(struct clause *k);
enum verb clause_verb_meant(struct clause *k);

#endif
