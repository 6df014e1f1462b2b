/* SPDX-License-Identifier: MIT */
/* suite: what every Check suite shares: a main that runs one suite and prints TAP, and an arena for
 * each test, as a checked fixture: tcase_add_checked_fixture(tcase, open_arena, close_arena). */
#ifndef TESTS_UNIT_SUITE_H
#define TESTS_UNIT_SUITE_H

#include <check.h>

#include "base/arena.h"

int suite_main(Suite *suite); /* the exit status */
/* The one word that the suite is started with, of what it reads; without it the program ends. */
const char *suite_argument(int argc, char **argv, const char *name);

extern struct arena arena; /* of the running test */
void open_arena(void);
void close_arena(void);

#endif
