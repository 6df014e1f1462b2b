/* SPDX-License-Identifier: MIT */
/* ran: a play that was run, for the suites of sheets made of one. */
#ifndef TESTS_UNIT_SHEET_RAN_H
#define TESTS_UNIT_SHEET_RAN_H

#include "picture/scene/scene.h"
#include "resolved.h"

#define PLAY                                                                                       \
    "play \"Lantern\"\n"                                                                           \
    "  start 1 top, 2 right wing, 3 left short corner, 4 right corner, 5 left elbow\n"             \
    "  ball 1\n"                                                                                   \
    "  defense man gap\n"                                                                          \
    "  step \"Screen down\"\n"                                                                     \
    "    2 and 4 stay\n"                                                                           \
    "    3 sets up toward the rim\n"                                                               \
    "    5 down screens for 3\n"
#define READS                                                                                      \
    "    read otherwise \"Wait\"\n"                                                                \
    "      3 comes off 5 to left wing\n"                                                           \
    "      1 passes to 3\n"                                                                        \
    "    read x3 trails \"Curl\"\n"                                                                \
    "      3 curls off 5 to the nail\n"                                                            \
    "      5 pops to left wing\n"                                                                  \
    "      1 passes to 3\n"                                                                        \
    "    read x3 overplays \"Back cut\"\n"                                                         \
    "      3 back cuts to the rim\n"                                                               \
    "      1 bounce passes to 3\n"

/* The play last run, and what it was read from. */
extern struct resolved resolved;
extern struct run *run;
extern diagram_list diagrams;
const struct play *run_text(const char *text); /* its first play */
const struct play *run_play(const struct play *play);

const char *plain(struct str text); /* without the marks of players' numbers */

#endif
