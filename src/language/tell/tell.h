/* SPDX-License-Identifier: MIT */
/* tell: a resolved sentence in plain words: captions under diagrams, "your job", descriptions for
 * those who cannot see the picture. American coaching English, present tense, no jargon where a
 * plain word does. Bold pieces (players' numbers) stand between TELL_BOLD and TELL_PLAIN, which no
 * coach's text can hold; tell_strip takes them out. */
#ifndef LANGUAGE_TELL_TELL_H
#define LANGUAGE_TELL_TELL_H

#include "floor/play/play.h"

#define TELL_BOLD '\x01'
#define TELL_PLAIN '\x02'

/* The sentence of task `index` (of the step with its branch): "5 screens down for 3. Look for x3,
 * not for a spot on the floor." Tasks of one sentence are told once, at its first; others give an
 * empty text. */
struct str tell_task(struct arena *arena, const struct play *play, const struct step *step,
                     int branch, size_t index);
/* The same where no sentence stands before it: without a "Then". */
struct str tell_task_first(struct arena *arena, const struct play *play, const struct step *step,
                           int branch, size_t index);
/* Does its sentence say when, by more than that the one who gets the ball is there? */
bool tell_says_when(struct arena *arena, const struct play *play, const struct step *step,
                    int branch, size_t index);
/* What `who` (an attacker) does in this step, in the second person, with whom to look at and when;
 * a player who stands still is told why. Of a way on what is done in it alone; `again`: its picture
 * begins with the step, "begin as in step 1". */
struct str tell_job(struct arena *arena, const struct play *play, const struct step *step,
                    int branch, body who, bool again);
/* Of a player who stands still in it for a reason that an earlier diagram has told: where, "step
 * 1", "1a"; empty for others. */
struct str tell_job_before(struct arena *arena, const struct play *play, const struct step *step,
                           int branch, body who);
/* On paper, where all diagrams are seen: "The same as in step 1." where that is so. */
struct str tell_job_once(struct arena *arena, const struct play *play, const struct step *step,
                         int branch, body who, bool again);
/* The whole diagram in words, for <desc>: who has the ball, where everyone stands, what happens in
 * order. Of a way on that begins where the step's own sentences end, `drawn` is the first task that
 * is seen, and what was done before it is told as such. Plain text. */
struct str tell_diagram(struct arena *arena, const struct play *play, const struct step *step,
                        int branch, size_t drawn);
/* Another read of a step whose beginning was told before it. */
struct str tell_diagram_again(struct arena *arena, const struct play *play, const struct step *step,
                              int branch);
/* Task `index` as a thing: "3's cut to the left wing", "5's screen for 3". Plain text. */
struct str tell_thing(struct arena *arena, const struct play *play, const struct step *step,
                      int branch, size_t index);
/* "x3 trails", "x3 and x5 switch", "otherwise". */
struct str tell_conditions(struct arena *arena, const struct branch *branch);
/* "." behind what has no stop of its own; else empty. */
struct str tell_stop(struct str text);
/* A player as sentences name him: an attacker's number marked, for bold. */
void tell_body(struct strbuf *out, body who);
/* "x3 trails: Curl": what the player has to see, and what the coach calls it. */
struct str tell_branch(struct arena *arena, const struct branch *branch);
/* "after 1a": the way of several on which a step goes on; else empty. */
struct str tell_after(struct arena *arena, const struct play *play, const struct step *step);
/* "left wing", "the rim", "3 ft toward half court from the left corner": a place as told to a
 * player. */
void tell_goal(struct strbuf *out, const struct play *play, const struct goal *goal);
/* "in the left corner", "at the rim": where somebody stands. */
void tell_at(struct strbuf *out, const struct play *play, struct vec2 at);
/* The short caution for a picture of contact, with the coach's own lines behind it. Plain text. */
struct str tell_caution(struct arena *arena, const struct play *play);
struct str tell_strip(struct arena *arena, struct str text);

/* ---- about.c: what a page says of a play round its sentences ---- */
/* A coach's line with the players' numbers marked bold: "brush shoulders with 5". A number with a
 * measure or a count behind it is none. */
struct str tell_bold(struct arena *arena, struct str text, int players);
/* Bit 1 << n of each defender xN that the points of a play, its goal and its reads speak of. */
unsigned tell_spoken_of(struct arena *arena, const struct play *play);
struct str tell_level(struct arena *arena, enum level_code level);    /* "under 16 girls" */
struct str tell_series(struct arena *arena, const struct play *play); /* "Flex, number 7" */
/* "Step 2: what x3 does decides what 3 does"; `reader` is told "what you do". */
struct str tell_decides(struct arena *arena, const struct play *play, const struct step *step,
                        body reader);
/* The same under the step itself: "What x3 does decides what 3 does."; of options
 * "Ways on: 2a or 2b." */
struct str tell_decides_here(struct arena *arena, const struct play *play, const struct step *step,
                             body reader);
/* The two lines of caution that stand on every page with a diagram; `page` is what they stand on:
 * "sheet", "page". Then what is said besides where the young play, and whether they do. */
enum { TELL_CAUTION_LINES = 2 };
struct str tell_page_caution(struct arena *arena, int line, const char *page);
struct str tell_young_caution(void);
/* What a card, where there is no room for those, has under its picture. */
struct str tell_card_caution(void);
bool tell_is_young(const struct play *play);
/* Of several plays: whether the young play one of them, and each of the coach's own lines once. */
struct tell_care {
    bool young;
    const struct str *own;
    size_t own_count;
};
struct tell_care tell_care_of(struct arena *arena, const struct play *const *plays, size_t count);

#endif
