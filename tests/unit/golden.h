/* SPDX-License-Identifier: MIT */
/* golden: every NAME.play of a folder must still make what stands in NAME plus an ending. Run with
 * --write a suite writes those files anew, to be looked at before they are kept. */
#ifndef TESTS_UNIT_GOLDEN_H
#define TESTS_UNIT_GOLDEN_H

#include "base/str.h"

struct golden {
    const char *folder, *ending;
    struct str (*make)(const char *name, struct str text); /* in the test's arena */
};

int golden_main(const struct golden *golden, int argc, char **argv); /* the exit status */

#endif
