/* SPDX-License-Identifier: MIT */
/* teller: what the files of this room share. For no other room. */
#ifndef LANGUAGE_TELL_TELLER_H
#define LANGUAGE_TELL_TELLER_H

#include "language/tell/tell.h"

struct teller {
    struct arena *arena;
    const struct play *play;
    const struct step *step;
    int branch;
    body you;   /* to whom it is told; BODY_NONE: to everybody */
    bool plain; /* no marks round numbers */
    bool again; /* of a way on: what came before it is shown with it */
};

/* names.c */
struct teller teller_to_all(struct arena *arena, const struct play *play, const struct step *step,
                            int branch, bool plain);
void say_body(const struct teller *t, struct strbuf *out, body b);       /* "3", "you", "x3" */
void say_possessive(const struct teller *t, struct strbuf *out, body b); /* "3's", "your" */
/* Who guards b as this task comes; NULL: as the step begins. */
void say_guard(const struct teller *t, struct strbuf *out, body b, const struct task *task);
/* Whom a defender guards, as far as sentences before `task` say; NULL: as the step begins. */
body guards_then(const struct teller *t, body defender, const struct task *task);
void say_goal(const struct teller *t, struct strbuf *out, const struct goal *goal);
void say_to(const struct teller *t, struct strbuf *out, const struct goal *goal,
            body mover); /* " to the rim" */
void say_at(const struct teller *t, struct strbuf *out,
            const struct goal *goal); /* " at the rim" */
/* The spot nearest to p, SPOT_COUNT when none is within 4 ft. */
enum spot near_spot(const struct play *play, struct vec2 p, enum side *side);
/* Where an attacker is planned to stand as the step begins. */
struct vec2 stands_at(const struct play *play, const struct step *step, body who);
/* And who is planned to have the ball. */
body holds_ball(const struct play *play, const struct step *step);
/* The same after the first `count` tasks of the step. */
body holds_ball_then(const struct teller *t, size_t count);
/* Is there a defender on the floor who has to mind b? In a zone everybody is minded. */
bool has_guard(const struct teller *t, body b); /* somebody has him as his man */
bool is_guarded(const struct teller *t, body b);
void say_upper(struct strbuf *out, struct str sentence); /* with its first letter a capital */

/* phrase.c: what a task says after its subject. */
enum form_of { FORM_THIRD, FORM_BARE };
void say_task(const struct teller *t, struct strbuf *out, const struct task *task,
              enum form_of form);
/* " at a sprint", " in 1.5 s", ", facing the baseline" */
void say_manner(const struct teller *t, struct strbuf *out, const struct task *task);
/* Of a text with a bar in it, what stands before it is told where there is a defender to speak of
 * ({x}'s or else {y}'s player is guarded), what stands behind it where there is none. */
void say_template(const struct teller *t, struct strbuf *out, const struct task *task,
                  const char *text);
const char *verb_event_word(enum verb verb);
const char *verb_more(enum verb verb);
/* What he is told besides, as this task comes. */
const char *task_more(const struct teller *t, const struct task *task);

/* stand.c: what one is told who stands still; the sentences that jobs are made of. */
struct strbuf sentence_of(const struct teller *t); /* a new one */
void end_sentence(struct strbuf *out);             /* with its full stop */
void add_sentence(const struct teller *t, struct strbuf *out, const struct strbuf *sentence);
/* Where one stands when so many tasks of the step are done. */
struct vec2 stands_now(const struct teller *t, size_t until);
/* How long one who holds a place in the lane may; nothing for a place outside. */
void say_lane(const struct teller *t, struct strbuf *out, struct vec2 at);
/* One's own screen of this way through the step, that nobody uses. */
bool holds_a_screen(const struct teller *t);
/* `before`: how many tasks are done when this one is told to stand still. */
void say_still(const struct teller *t, struct strbuf *out, size_t before);

/* when.c: "as 1 passes", "when 5's screen is set", "" when it is free to go. */
void say_when(const struct teller *t, struct strbuf *out, const struct task *task);
/* "as 5 screens": what a step is tied to, in the words of the step before. */
void say_begins(const struct teller *t, struct strbuf *out, const struct wait *wait);
/* " until x4 helps": what cuts it short; nothing for most. */
void say_until(const struct teller *t, struct strbuf *out, const struct task *task);
/* Does the screener leave on this way before the screen that this task sets or uses stands? */
bool is_slipped(const struct teller *t, const struct task *task);
/* The last thing that task `index` of a pass waits for of itself: "as 2 gets there". */
bool receiver_moves(const struct teller *t, size_t index);

/* about.c: "x4 and x5", whose deeds decide which way of the step is run, of a few; false: nobody's
 * alone, or too many's. */
bool say_deciders(struct strbuf *out, const struct play *play, const struct step *step);

#endif
