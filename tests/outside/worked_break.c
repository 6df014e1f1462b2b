/* SPDX-License-Identifier: MIT */
/* worked_break: transition, and single published statements that can be measured in a play. */
#include "worked.h"

static const struct worked rows[] = {
    {"T2",
     "pass.lane: x2 is a step off toward the ball, in the way of the pass to the nail",
     "P. Beesley, 'La transition offensive', Basketball (French federation) 628, 1998: 4 runs to "
     "the ball side and on to the far one in one path, then screens; the ball goes by the high "
     "post",
     "play \"Two-stage transition\"\n"
     "  start 1 right wing, 4 right elbow, 5 left slot, 3 left wing, 2 right slot\n"
     "  defense man\n"
     "  2 stays\n"
     "  4 cuts to right block\n"
     "  4 clears to left block\n"
     "  4 screens for 3\n"
     "  5 flashes to nail\n"
     "  1 passes to 5\n"
     "  3 comes off 4 to left corner\n"
     "  5 passes to 3\n",
     {ORDER(4, CUTS, ARRIVED, 4, CLEARS, STARTED),
      LASTS(4, CLEARS, STARTED, 4, CUTS, ARRIVED, -.05),
      ORDER(4, CLEARS, ARRIVED, 4, SCREENS, STARTED), ORDER(1, PASSES, CAUGHT, 5, PASSES, RELEASED),
      SCREENS_MAN(4, SCREENS, .95), ORDER(4, SCREENS, SET, 3, COMES, STARTED),
      ENDS_SIDE(4, LEFT, 1.0), ENDS_OUTSIDE(4), HAS_BALL(3)}},
    {"4, roll means",
     "time.lane: the play is over when 5 is under the rim",
     "FIBA WABC Coaches Manual L3, 2.3.3: when one big rolls the other replaces him",
     "play \"The other big replaces\"\n"
     "  start 1 right slot, 2 right corner, 3 left wing, 4 left block, 5 right elbow\n"
     "  defense man\n"
     "  5 ball screens for 1\n"
     "  1 drives off 5 to left elbow\n"
     "  5 rolls to the rim\n"
     "  as 5 rolls, 4 flashes to right elbow\n",
     {ORDER(5, ROLLS, STARTED, 4, FLASHES, STARTED), ENDS(5, RIM, NONE, 2.6),
      ENDS(4, ELBOW, RIGHT, .6), HAS_BALL(1)}},
    {"4, youth",
     "",
     "YMCA, 'Youth basketball coaches manual, 4-5th grade': after the pass move to a spot next to "
     "the ball",
     "play \"Next to the ball\"\n"
     "  level u12\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 left short corner\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  1 cuts to the rim\n"
     "  1 goes to right corner\n"
     "  3 fills top\n",
     {ORDER(1, PASSES, RELEASED, 1, CUTS, STARTED), NEARER(1, 2), HAS_BALL(2)}},
    {"4, drive",
     "",
     "FIBA WABC Coaches Manual L1, 2.1.5: both feet inside the lane and a one-count stop before "
     "the "
     "pass",
     "play \"Two feet in\"\n"
     "  start 1 left wing, 2 right wing, 3 left corner, 4 right corner, 5 top\n"
     "  defense man\n"
     "  1 drives to lane\n"
     "  1 passes to 4\n",
     {SLOW_IN_LANE(1, PASSES, RELEASED, 1, 1.0), HAS_BALL(4)}},
    {"4, pressure",
     "",
     "FIBA WABC Coaches Manual L1, 2.4.1 protecting the ball: under pressure team-mates come to "
     "the "
     "ball",
     "play \"Help the passer\"\n"
     "  start 1 right corner, 2 right slot, 3 left wing, 4 left slot, 5 left block\n"
     "  defense man\n"
     "  x2 doubles 1\n"
     "  as x2 doubles, 2 goes to 3 ft below right wing\n"
     "  5 flashes to right elbow\n"
     "  1 passes to 2\n",
     {TOGETHER(-2, DOUBLES, ARRIVED, 1, -2, 1.2), TOGETHER(-2, DOUBLES, ARRIVED, 1, -1, 1.5),
      COMES_TO(2, 1, 1.5), COMES_TO(5, 1, 1.5), HAS_BALL(2)}},
};
const struct worked_table worked_break = {rows, sizeof rows / sizeof *rows};
