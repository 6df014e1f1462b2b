/* SPDX-License-Identifier: MIT */
/* plays: every play of some files and of some seeds, one after the other, each with memory of its
 * own: what the programs of this folder are given as FILE... and -g PLAYS. */
#ifndef TESTS_CLOCK_PLAYS_H
#define TESTS_CLOCK_PLAYS_H

#include "floor/play/play.h"

typedef void plays_visit(void *ctx, struct arena *arena, const struct sources *sources,
                         const struct play *play);

/* The words after the program's name: files; `-g N`: the plays of N seeds. Another word with a dash
 * and the one after it are left to the program. A file that cannot be read ends it. */
void plays_files(int argc, char **argv, plays_visit *visit, void *ctx); /* the files alone, */
void plays_seeds(int seeds, plays_visit *visit, void *ctx);             /* the seeds alone, */
void plays_text(const char *text, plays_visit *visit, void *ctx);       /* one text */
void plays_each(int argc, char **argv, plays_visit *visit, void *ctx);
/* The number after an option, or `otherwise`. */
double plays_option(int argc, char **argv, const char *name, double otherwise);

#endif
