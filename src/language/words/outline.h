/* SPDX-License-Identifier: MIT */
/* outline: an item of a practice as it stands in a notebook: outline.c. Inside words only. */
#ifndef LANGUAGE_WORDS_OUTLINE_H
#define LANGUAGE_WORDS_OUTLINE_H

#include "language/words/cursor.h"

/* `clock`: when it begins, minutes after midnight; -1: not said. False: no such item; c->refusals
 * has grown where that was reported. */
bool outline_item(struct cursor *c, struct plan_form *out, int *clock);
/* What kind of work the coach's own words say it is, where they do: contact, none of it, warm-up,
 * water. What is taken so is noted. */
void outline_kind(struct cursor *c, struct plan_form *out);
/* The same of contact alone, where it is said in a text in quotes: "Scrimmage 5 on 5". */
void outline_quoted(struct cursor *c, struct plan_form *out);
/* 4 on 4, 3-on-2: live, so with contact; not 1 on 0. */
bool outline_sides(struct cursor *c);
void outline_say_contact(struct cursor *c, struct span said); /* that it was read so */

#endif
