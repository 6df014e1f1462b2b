/* SPDX-License-Identifier: MIT */
/* worked_offense: the published actions against man defense. */
#include "worked.h"

static const struct worked offense[] = {
    {"A1",
     "play.standing-post: the post is the screen and does not move, as the source says; "
     "move.standing: the source says nothing of 3 once he is low",
     "L. Gaze, shuffle offense, third option: 3 waits for the second pass; the post pivots where "
     "he is; a double screen for the other forward follows",
     "play \"Shuffle, third option\"\n"
     "  start 3 left slot, 2 top, 1 right wing, 4 left wing, 5 left elbow\n"
     "  ball 3\n"
     "  defense man\n"
     "  step\n"
     "    5 stays\n"
     "    3 passes to 2\n"
     "    2 passes to 1\n"
     "    as 2 passes, 3 comes off 5 to right block\n"
     "  step\n"
     "    2 and 5 screen for 4\n"
     "    4 comes off 2 and 5 to nail\n",
     {ORDER(2, PASSES, RELEASED, 3, COMES, STARTED), STILL(5, .3), HAS_BALL(1),
      ENDS(3, BLOCK, RIGHT, .6), ENDS_SIDE(3, RIGHT, 1.0), INSIDE(1, -1),
      SCREENS_MAN(2, SCREENS, .95), TOGETHER(4, COMES, STARTED, 2, 5, 2.0),
      ORDER(2, SCREENS, SET, 4, COMES, STARTED), ORDER(5, SCREENS, SET, 4, COMES, STARTED),
      ENDS(4, NAIL, NONE, .6), HAS_BALL(1)}},
    {"A2",
     "play.standing-post: as in A1",
     "L. Gaze, shuffle offense, first option: the post is the screen; 2 goes to screen for him "
     "while the second pass is in the air",
     "play \"Shuffle, first option\"\n"
     "  start 3 right slot, 2 top, 1 left wing, 4 right wing, 5 right elbow\n"
     "  ball 3\n"
     "  defense man\n"
     "  step\n"
     "    5 stays\n"
     "    3 passes to 4\n"
     "    as 4 catches, 3 comes off 5 to left block\n"
     "  step\n"
     "    2 and 1 double screen for 3\n"
     "    3 comes off 2 and 1 to left corner\n"
     "    4 skip passes to 3\n"
     "    as 4 passes, 2 screens for 5\n"
     "    5 comes off 2 to left block\n"
     "    as 4 passes, 1 goes to left short corner\n",
     {STILL(5, .3), GAP(3, COMES, .6), HAS_BALL(4), INSIDE(1, -1),
      ORDER_OF(4, PASSES, 0, RELEASED, 2, SCREENS, 1, STARTED),
      ORDER_OF(2, SCREENS, 1, STARTED, 4, PASSES, 0, CAUGHT),
      ORDER_OF(2, SCREENS, 1, SET, 5, COMES, 0, STARTED), HAS_BALL(3), ENDS_SIDE(5, LEFT, 1.0)}},
    {"A4, branch a",
     "play.standing-post: the high post is the screen; move.standing: the source says nothing of 1 "
     "and 2",
     "L. Gaze, high-post cut: the passer to the post becomes the screener for the first cutter",
     "play \"High-post cut, back out\"\n"
     "  start 3 right slot, 4 right wing, 5 right elbow, 1 left wing, 2 left slot\n"
     "  ball 3\n"
     "  defense man\n"
     "  step\n"
     "    5 stays\n"
     "    3 passes to 4\n"
     "    as 4 catches, 3 comes off 5 to right block\n"
     "    then 4 passes to 5\n"
     "  step\n"
     "    4 down screens for 3\n"
     "    3 comes off 4 to right wing\n"
     "    5 passes to 3\n",
     {ORDER(3, PASSES, CAUGHT, 3, COMES, STARTED), STILL(5, .3), HAS_BALL(5), INSIDE(1, -1),
      SCREENS_MAN(4, SCREENS, .95), ORDER(4, SCREENS, SET, 3, COMES, STARTED),
      TOGETHER(4, SCREENS, SET, 4, 3, 2.5), HAS_BALL(3), ENDS(3, WING, RIGHT, .6)}},
    {"A4, branch b",
     "play.standing-post: the high post is the screen; pass.lane: x1 steps in front of the cutter "
     "whom 1 has screened for; move.standing: the source says nothing of 2",
     "L. Gaze, high-post cut: with the pass to 4 the far guard screens for the post, who cuts to "
     "the rim",
     "play \"High-post cut, power cut\"\n"
     "  start 3 right slot, 4 right wing, 5 right elbow, 1 left slot, 2 left wing\n"
     "  ball 3\n"
     "  defense man\n"
     "  step\n"
     "    5 stays\n"
     "    3 passes to 4\n"
     "    as 4 catches, 3 comes off 5 to right block\n"
     "    as 3 comes off 5, 1 screens for 5\n"
     "  step\n"
     "    5 comes off 1 to the rim\n"
     "    4 passes to 5\n",
     {ORDER(3, PASSES, CAUGHT, 1, SCREENS, STARTED), SCREENS_MAN(1, SCREENS, .95), HAS_BALL(4),
      ENDS_SIDE(3, RIGHT, 1.0), INSIDE(1, -1), HAS_BALL(5), ENDS(5, RIM, NONE, 2.6),
      TOGETHER(5, COMES, STARTED, 1, 5, 2.0)}},
    {"A5",
     "play.standing-post: the high post is the screen; pass.lane: x2 is a step off toward the "
     "ball, before the forward who steps in",
     "J. Wooden and S. Nater, 'John Wooden's UCLA Offense', Human Kinetics: guard to forward, cut "
     "off the high post, and the reversal through him is the third look",
     "play \"Reversal by the high post\"\n"
     "  start 1 right slot, 2 left slot, 3 right wing, 4 left wing, 5 right elbow\n"
     "  defense man\n"
     "  step\n"
     "    1 passes to 3\n"
     "    as 3 catches, 1 comes off 5 to right block\n"
     "    after 1 comes off 5, 3 passes to 5\n"
     "    as 3 passes, 4 cuts to 4 ft left of nail\n"
     "    5 passes to 4\n",
     {ORDER(1, PASSES, CAUGHT, 1, COMES, STARTED), ORDER(1, COMES, ARRIVED, 3, PASSES, RELEASED),
      ORDER(3, PASSES, CAUGHT, 5, PASSES, RELEASED), ENDS_IN_LANE(4), ENDS_SIDE(1, RIGHT, 1.0),
      HAS_BALL(4)}},
    {"A7",
     "play.after-screen: the note only says what after means, and that is meant",
     "B. Grosgeorge, 'Ecran pour le porteur d'ecran', Basketball (French federation) 601, 1995, "
     "second example: the cross screen starts on the catch, and each screener is screened next",
     "play \"Screen the screener\"\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block\n"
     "  defense man\n"
     "  step\n"
     "    1 passes to 2\n"
     "    after 2 catches, 4 cross screens for 5\n"
     "    5 comes off 4 to right block\n"
     "    after 4 screens, 1 down screens for 4\n"
     "    4 comes off 1 to nail\n"
     "    after 1 screens, 3 down screens for 1\n"
     "    1 comes off 3 to left wing\n",
     {ORDER(1, PASSES, CAUGHT, 4, SCREENS, STARTED), ORDER(4, SCREENS, SET, 5, COMES, STARTED),
      ORDER(4, SCREENS, USED, 1, SCREENS, STARTED), ORDER(1, SCREENS, USED, 3, SCREENS, STARTED),
      SCREENS_MAN(4, SCREENS, .95), SCREENS_MAN(1, SCREENS, .95), ENDS(5, BLOCK, RIGHT, .6),
      ENDS(1, WING, LEFT, .6), HAS_BALL(2)}},
    {"A8",
     "play.after-screen: as in A7",
     "the same article, flex start: the down screen is for the first screener, after the cutter "
     "has passed",
     "play \"Flex start\"\n"
     "  start 1 right slot, 2 right corner, 3 left slot, 4 right block, 5 left corner\n"
     "  defense man\n"
     "  1 passes to 3\n"
     "  4 back screens for 2\n"
     "  2 comes off 4 to left block\n"
     "  after 4 screens, 1 down screens for 4\n"
     "  4 comes off 1 to right elbow\n",
     {ORDER(4, SCREENS, USED, 1, SCREENS, STARTED), ORDER(1, SCREENS, SET, 4, COMES, STARTED),
      SCREENS_MAN(4, SCREENS, .95), ENDS(2, BLOCK, LEFT, .6), ENDS(4, ELBOW, RIGHT, .6),
      HAS_BALL(3)}},
    {"A10",
     "step.crowded: the dribble to the hand-off and the one off it are one picture in the source",
     "FIBA WABC Coaches Manual L3, 1.4.1 dribble hand-offs: 1 dribbles toward 2, stops and gives, "
     "2 dribbles at once",
     "play \"Dribble hand-off\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  1 dribbles at 2\n"
     "  1 hands off to 2\n"
     "  2 drives to the rim\n",
     {ORDER(1, DRIBBLES_AT, ARRIVED, 1, HANDS_OFF, RELEASED),
      TOGETHER(1, HANDS_OFF, RELEASED, 1, 2, .95), ORDER(1, HANDS_OFF, CAUGHT, 2, DRIVES, STARTED),
      TOGETHER(2, DRIVES, STARTED, 1, 2, .95), HAS_BALL(2), ENDS(2, RIM, NONE, 2.6)}},
    {"A11",
     "",
     "the same section, hand-off denied: 2 cuts behind to the basket",
     "play \"Denied\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  step\n"
     "    1 dribbles at 2\n"
     "    read 2 is denied \"Back door\"\n"
     "      2 back cuts to the rim\n",
     {INSIDE(0, 0), HAS_BALL(1), ENDS(2, RIM, NONE, 2.6)}},
    {"A13",
     "time.lane: the play is over when 1 is under the rim",
     "R. Kruger, 'The pick-and-roll', FIBA Assist Magazine: the fake comes as the screener's feet "
     "land, the pair pass shoulder to shoulder, two dribbles follow (four steps of 0.7 m, ours)",
     "play \"Screen the ball\"\n"
     "  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right elbow\n"
     "  defense man\n"
     "  5 ball screens for 1\n"
     "  as 5 screens, 1 jabs\n"
     "  1 drives off 5 to the rim\n"
     "  5 rolls to the rim\n",
     {ORDER(5, SCREENS, SET, 1, JABS, STARTED), LASTS(1, JABS, STARTED, 5, SCREENS, SET, -.02),
      ORDER(1, JABS, ARRIVED, 1, DRIVES_OFF, STARTED), ORDER(5, SCREENS, USED, 5, ROLLS, STARTED),
      SCREENS_MAN(5, SCREENS, .95), GAP(1, DRIVES_OFF, .6), CARRIES(5, SCREENS, USED, 1, 2.8),
      HAS_BALL(1)}},
    {"A14",
     "time.lane: the play is over when 1 and 5 are under the rim",
     "'Le Pick and Roll', French coach-education sheet: the other three are on the weak side "
     "first; the screen stands level with the free-throw line, chest to the defender, feet toward "
     "a "
     "corner of the half court",
     "play \"The others first\"\n"
     "  start 1 right slot, 2 right wing, 3 left wing, 4 left corner, 5 right block\n"
     "  defense man\n"
     "  2 clears to left slot\n"
     "  after 2 clears, 5 ball screens for 1\n"
     "  1 drives off 5 to the rim\n"
     "  5 rolls to the rim\n",
     {ORDER(2, CLEARS, ARRIVED, 5, SCREENS, STARTED), ALONE_ON_SIDE(5, SCREENS, SET, 1, 5),
      SCREENS_MAN(5, SCREENS, .95), LEVEL_WITH(5, SCREENS, NAIL, .5), CHEST_TO_MAN(5, SCREENS, 45),
      ORDER(5, SCREENS, SET, 1, DRIVES_OFF, STARTED), HAS_BALL(1)}},
    {"A15",
     "",
     "'Teaching On-Ball Screens', Basketball New Zealand: corner, straight, stop behind, refuse; "
     "then one of the pair is in, the other out",
     "play \"One in, one out\"\n"
     "  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right elbow\n"
     "  defense man\n"
     "  step\n"
     "    5 ball screens for 1\n"
     "    read x1 goes over \"Turn the corner\"\n"
     "      1 drives off 5 to the rim\n"
     "      5 pops to top\n"
     "    read x1 goes under \"Stop behind it\"\n"
     "      1 dribbles off 5 to 2 ft outside 5\n"
     "      1 shoots\n"
     "      5 rolls to the rim\n"
     "    read x1 trails \"Stretch away\"\n"
     "      1 dribbles off 5 to right wing\n"
     "      5 rolls to the rim\n"
     "      1 passes to 5\n"
     "    read x1 overplays \"Refuse it\"\n"
     "      1 rejects 5 to the rim\n"
     "      5 pops to right wing\n",
     {INSIDE(0, 0), BACK_TO_BASELINE(5, SCREENS, 30), ENDS(1, RIM, NONE, 2.6),
      ENDS(5, TOP, NONE, .6), INSIDE(0, 1), ENDS(5, RIM, NONE, 2.6),
      TOGETHER(1, SHOOTS, RELEASED, 1, 5, 2.5), INSIDE(0, 2), ENDS(1, WING, RIGHT, .6),
      ENDS(5, RIM, NONE, 2.6), HAS_BALL(5), INSIDE(0, 3), ENDS(1, RIM, NONE, 2.6),
      ENDS_OUTSIDE(5)}},
    {"A16",
     "",
     "FIBA WABC Coaches Manual L1, 2.2.2 off-ball screens, straight cut: walk at the own "
     "defender, then over the top, shoulder to hip",
     "play \"Straight cut\"\n"
     "  start 1 right slot, 2 left wing, 3 right corner, 4 left corner, 5 left elbow\n"
     "  defense man\n"
     "  2 sets up toward left block, walking\n"
     "  5 screens for 2\n"
     "  2 comes off 5 to the nail\n"
     "  1 passes to 2\n",
     {ORDER(2, SETS_UP, ARRIVED, 5, SCREENS, SET), ORDER(5, SCREENS, SET, 2, COMES, STARTED),
      SCREENS_MAN(5, SCREENS, .95), GAP(2, COMES, .4), QUICKER_AFTER(2, SETS_UP, 2, COMES, 1.0),
      ENDS(2, NAIL, NONE, .6), HAS_BALL(2)}},
    {"A18",
     "play.standing-post: the high post is the screen; time.lane: the source sends 1 into the lane "
     "and leaves him there",
     "FIBA WABC Coaches Manual L3, 2.2.6 cuts off a high screen: the cut waits for the ball to "
     "arrive; the high post pops after it",
     "play \"High post cut\"\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 left short corner\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  after 2 catches, 1 comes off 4 to the rim\n"
     "  after 1 comes off 4, 4 goes to top\n",
     {ORDER(1, PASSES, CAUGHT, 1, COMES, STARTED), ORDER(1, COMES, ARRIVED, 4, GOES, STARTED),
      ENDS_IN_LANE(1), ENDS_OUTSIDE(4), ENDS(4, TOP, NONE, .6), HAS_BALL(2)}},
    {"A20",
     "move.standing: the source says nothing of 3",
     "M. McNeill, 'Teaching Motion Offence to Young Players', Basketball BC: cut through and "
     "fill, from the federation's own spots; all five are taken again at rest",
     "units metres\n"
     "play \"Pass, cut, fill\"\n"
     "  rules fiba\n"
     "  start 1 (2.70, 6.95), 2 (-2.70, 6.95), 3 (-6.95, 2.68), 4 (6.95, 2.68), 5 right block\n"
     "  1 passes to 2\n"
     "  1 cuts to the rim\n"
     "  1 clears to 4's spot\n"
     "  4 fills 1's spot\n"
     "  5 stays\n",
     {ORDER(1, PASSES, RELEASED, 1, CUTS, STARTED), ENDS(2, SLOT, LEFT, .6),
      ENDS(4, SLOT, RIGHT, .6), ENDS_SIDE(1, RIGHT, 6.5), ENDS_SIDE(3, LEFT, 6.5),
      ENDS(5, BLOCK, RIGHT, .3), HAS_BALL(2)}},
    {"A21",
     "pass.lane: x4 has followed the screener to the block, where the cutter comes by",
     "'Common Sense in Basket Ball', Sport Story Magazine (Univ. of Kansas, Allen papers): the "
     "passer runs by near the sideline as a decoy, the screen is on the other side",
     "play \"Decoy along the side\"\n"
     "  start 1 right slot, 5 right wing, 4 right elbow, 3 left block, 2 left slot\n"
     "  defense man\n"
     "  1 passes to 5\n"
     "  1 cuts to 3 ft left of right sideline\n"
     "  4 screens for 3\n"
     "  3 comes off 4 to the rim\n"
     "  5 passes to 3\n",
     {BY_SIDELINE(1, 2.0), SCREENS_MAN(4, SCREENS, .95), ORDER(4, SCREENS, SET, 3, COMES, STARTED),
      ENDS(3, RIM, NONE, 2.6), HAS_BALL(3)}},
    {"A22",
     "play.supplied: the source does not say how 1 comes to 5; play.standing-post: the receiver is "
     "the screen",
     "the same magazine, second play: 5 gives it back and stands in his own man's way, or fakes, "
     "passes on and runs by the receiver for the return",
     "play \"Return or pass on\"\n"
     "  start 1 right slot, 5 right wing, 4 right block, 3 left wing, 2 left slot\n"
     "  defense man\n"
     "  step\n"
     "    1 passes to 5\n"
     "    read otherwise \"Return it\"\n"
     "      5 hands off to 1\n"
     "    read x1 denies \"Pass on\"\n"
     "      1 cuts to right corner\n"
     "      5 shot fakes\n"
     "      5 passes to 4\n"
     "      5 comes off 4 to the rim\n"
     "      4 passes to 5\n",
     {INSIDE(0, 0), TOGETHER(5, HANDS_OFF, RELEASED, 1, 5, .95), HAS_BALL(1), INSIDE(0, 1),
      ORDER(5, SHOT_FAKES, ARRIVED, 5, PASSES, RELEASED), GAP(5, COMES, .6), HAS_BALL(5),
      ENDS(5, RIM, NONE, 2.6)}},
};
const struct worked_table worked_offense = {offense, sizeof offense / sizeof *offense};
