/* SPDX-License-Identifier: MIT */
/* suite: what every Check suite shares: a main that runs one suite and prints TAP. */
#ifndef TESTS_UNIT_SUITE_H
#define TESTS_UNIT_SUITE_H

#include <check.h>

int suite_main(Suite *suite); /* the exit status */

#endif
