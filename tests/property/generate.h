/* SPDX-License-Identifier: MIT */
/* generate: random man-to-man plays as a coach would write them, from a seed: formations and free
 * starts, passes, cuts, screens on and off the ball with their uses, hand-offs, drives, fills,
 * ties, reads; one to three steps. Every sentence is tied only to earlier ones, no two are sent to
 * one place, and the ball is where a sentence needs it: a play that is refused, or that hangs, is
 * the program's fault. The same seed gives the same text everywhere. */
#ifndef TESTS_PROPERTY_GENERATE_H
#define TESTS_PROPERTY_GENERATE_H

#include <stdint.h>

#include "base/str.h"

void generate_play(struct strbuf *out, uint64_t seed);

#endif
