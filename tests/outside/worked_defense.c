/* SPDX-License-Identifier: MIT */
/* worked_defense: what books say of defenders, against where ours are. */
#include "worked.h"

static const struct worked defense[] = {
    {"D1",
     "",
     "FIBA WABC Coaches Manual L1, 1.1.7 split line: the defenders of the far side stand within "
     "the board's width (0.90 m) of the axis",
     "play \"Help line\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  2 holds for 2 s\n",
     {ON_AXIS(-3, .90), ON_AXIS(-5, .90)}},
    {"D4",
     "",
     "FIBA WABC Coaches Manual, glossary, passes away: with the ball at 2 in the chain 5-2-1-3-4, "
     "1 and 5 are one pass away, 3 two, 4 three; the farther the man from the ball, the farther "
     "his defender from him (L1, 1.1.7)",
     "play \"Passes away\"\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right corner\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  2 holds for 2 s\n",
     {LOOSER(-3, -1, .5), LOOSER(-3, -5, .5), LOOSER(-4, -1, .5), LOOSER(-4, -5, .5),
      LOOSER(-4, -3, 0)}},
    {"D5",
     "",
     "FIBA WABC Coaches Manual L1, 1.2.3 going through: the screener's man leaves a gap of more "
     "than a body, the cutter's man runs through it and meets the cutter on the far side",
     "play \"Through the gap\"\n"
     "  start 1 right slot, 2 right wing, 3 left slot, 4 left corner, 5 left elbow\n"
     "  defense man\n"
     "  step\n"
     "    5 screens for 3\n"
     "    read x3 goes under \"Met\"\n"
     "      3 comes off 5 to left block\n",
     {INSIDE(0, 0), APART(5, SCREENS, USED, 5, -5, 1.0),
      GOES_BETWEEN(5, SCREENS, SET, -3, 5, -5, .4), TOGETHER(3, COMES, ARRIVED, 3, -3, 1.5),
      NEARER(-3, 3)}},
};
const struct worked_table worked_defense = {defense, sizeof defense / sizeof *defense};
