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
    {"D7",
     "step.crowded: the whole of it is one picture in the source, nine lines with the defense",
     "FIBA WABC Coaches Manual L2, 1.2.4 team defense against pick and roll, screen in the middle: "
     "x5 "
     "helps on the roller, x2 drops to 5 and returns to 2 only when x5 is back at 5 (help reach: a "
     "pass of 7 m flies about a second, in which 2.3 m are run, ours)",
     "play \"Help and hand back\"\n"
     "  start 1 top, 2 right wing, 3 left corner, 4 left elbow, 5 right block\n"
     "  defense man\n"
     "  4 ball screens for 1\n"
     "  1 drives off 4 to left wing\n"
     "  4 rolls to the rim\n"
     "  4 clears to left block\n"
     "  x4 hedges\n"
     "  as 4 rolls, x5 tags 4\n"
     "  as 4 rolls, x2 helps to 3 ft inside right block\n"
     "  after 4 rolls, x4 recovers to 4\n"
     "  as 4 clears, x5 recovers to 5\n"
     "  after x5 recovers, x2 recovers to 2\n",
     {ORDER(-5, TAGS, STARTED, -5, RECOVERS, STARTED), TOGETHER(4, ROLLS, ARRIVED, 4, -5, 1.5),
      ORDER(-5, RECOVERS, ARRIVED, -2, RECOVERS, STARTED), GUARDED(-2, HELPS, ARRIVED, 5, 2.3),
      NEARER(-5, 5)}},
    {"D9",
     "",
     "article on double-teaming the pick and roll, FIBA magazine style: x5 to the roller, x3 down "
     "on "
     "5, x2 denies 2 instead of dropping; 3, the farthest man, is the one left open",
     "play \"Trap and rotate\"\n"
     "  start 1 top, 2 right wing, 3 right corner, 4 left elbow, 5 left block\n"
     "  defense man\n"
     "  step\n"
     "    4 ball screens for 1\n"
     "    read x4 traps \"Rotate\"\n"
     "      1 dribbles off 4 to left wing\n"
     "      4 rolls to lane\n"
     "      as 4 rolls, x5 tags 4\n"
     "      as 4 rolls, x3 denies 5\n"
     "      as 4 rolls, x2 denies 2\n",
     {INSIDE(0, 0), TOGETHER(4, ROLLS, ARRIVED, 1, -1, 1.5),
      TOGETHER(4, ROLLS, ARRIVED, 1, -4, 1.5), NEARER(-5, 4), NEARER(-2, 2), MOST_OPEN(3)}},
    {"close-out",
     "",
     "L. Rose, 'Winning Basketball Fundamentals', Human Kinetics 2013: sprint about three quarters "
     "of "
     "12 to 30 ft, chop the rest, stop one arm away",
     "play \"Close out\"\n"
     "  start five-out\n"
     "  ball 3\n"
     "  defense man sag\n"
     "  3 skip passes to 4\n"
     "  as 3 passes, x4 closes out on 4\n"
     "  4 holds for 2 s\n",
     {APART(-4, CLOSES_OUT, STARTED, 4, -4, 3.7), KEEPS_SPEED(-4, CLOSES_OUT, .6), NEARER(-4, 4),
      TOGETHER(4, HOLDS, ARRIVED, 4, -4, 1.0)}},
};
const struct worked_table worked_defense = {defense, sizeof defense / sizeof *defense};
