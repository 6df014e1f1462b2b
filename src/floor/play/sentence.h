/* SPDX-License-Identifier: MIT */
/* sentence: what the files that make tasks share. For no other room, and only for them in this. */
#ifndef FLOOR_PLAY_SENTENCE_H
#define FLOOR_PLAY_SENTENCE_H

#include "base/real.h"
#include "floor/play/resolve.h"

#define THERE 1.0        /* m: a sentence that ends this near takes the receiver there (ours) */
#define MEETS_WITHIN 2.0 /* m: nearer than this a hand-off needs nobody to come (ours) */

struct task task_new(const struct maker *m, const struct sentence *s, enum verb verb, body who);
struct work work_new(const struct maker *m, const struct sentence *s, enum verb verb, body who);
/* The place written or the verb's own, with what is planned by it; false with an error. */
bool task_set_goal(struct maker *m, const struct sentence *s, const struct voice *voice,
                   struct task *task);
bool task_set_other(struct maker *m, const struct sentence *s, const struct voice *voice,
                    struct task *task);
/* The screen that a roll, pop, slip or re-screen belongs to; false with an error. */
bool task_own_screen(struct maker *m, const struct sentence *s, struct task *task);
/* The movement of one who is to catch, not of one who has the ball. */
bool task_meets_ball(const struct maker *m, const struct task *task);

/* One of each kind: fills the task and plans what is so after it; false with an error. */
typedef bool maker_of_task(struct maker *m, const struct sentence *s, const struct voice *voice,
                           struct task *task, struct work *work);
maker_of_task make_move, make_hold, make_carry;     /* moves.c */
maker_of_task make_pass, make_exchange, make_shoot; /* passes.c */
maker_of_task make_screen, make_use;                /* screens.c */
maker_of_task make_guard;                           /* duties.c */

/* Whether the player is where the sentence says it begins (3 cuts from left wing); else reported.
 */
bool begins_there(struct maker *m, const struct sentence *s, const struct voice *voice, body who);

#endif
