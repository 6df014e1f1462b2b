/* SPDX-License-Identifier: MIT */
/* written: what a test does with text that was written: keeps it, looks into it. What is given lies
 * in the arena of the running test (suite.h). */
#ifndef TESTS_UNIT_WRITTEN_H
#define TESTS_UNIT_WRITTEN_H

#include "base/str.h"

/* For a struct writer: into the strbuf that is its ctx; and one that takes nothing, and counts in
 * the int that is its ctx how often it was asked. */
bool written_keep(void *ctx, const char *at, size_t size);
bool written_refuse(void *ctx, const char *at, size_t size);

const char *text_of(struct str text);
/* With what stands between two marks in brackets. */
const char *bracketed(struct str text, char from, char to);

/* Else the test fails. */
void has(const char *text, const char *part);
void has_not(const char *text, const char *part);
size_t count_of(const char *text, const char *part);

#endif
