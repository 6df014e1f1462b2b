/* SPDX-License-Identifier: MIT */
/* Published plays, written in our language, must run as their books tell them: the order of what
 * happens, who ends where, who has the ball. Each row names its source. Spots a source leaves open
 * are ours and are not asserted. */
#include "pipe.h"
#include "suite.h"

#include "base/real.h"
#include "floor/sim/sim.h"

#include <string.h>

/* What a book says of its play, in terms of the run. */
struct fact {
    enum {
        END_OF_FACTS,
        BEFORE,
        ENDS,
        HOLDS_BALL,
        SCREENS_DEFENDER,
        SHARES_HAND,
        ON_HELP_LINE,
        STILL
    } kind;
    int who; /* BEFORE: of the earlier task; a defender for ON_HELP_LINE */
    enum verb verb;
    enum moment moment;
    int who2; /* BEFORE: of the later one */
    enum verb verb2;
    enum moment moment2;
    enum spot spot; /* ENDS */
    enum side side;
    double within; /* metres */
};
struct worked {
    const char *source;
    const char *text;
    int step, branch; /* the segment the facts are about; branch -1: none */
    struct fact facts[8];
};

static const struct worked worked[] = {
    {"B. Grosgeorge, 'Ecran pour le porteur d'ecran', Basketball (French federation) 601, 1995, "
     "second example: "
     "the cross screen starts on the catch, and the screener is screened next",
     "play \"Screen the screener\"\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  after 2 catches, 4 cross screens for 5\n"
     "  5 comes off 4 to right block\n"
     "  after 4 screens, 1 down screens for 4\n"
     "  4 comes off 1 to nail\n",
     0,
     -1,
     {{BEFORE, 1, VERB_PASSES, MOMENT_CAUGHT, 4, VERB_SCREENS, MOMENT_STARTED, 0, 0, 0},
      {BEFORE, 4, VERB_SCREENS, MOMENT_SET, 5, VERB_COMES, MOMENT_STARTED, 0, 0, 0},
      {BEFORE, 4, VERB_SCREENS, MOMENT_USED, 1, VERB_SCREENS, MOMENT_STARTED, 0, 0, 0},
      {SCREENS_DEFENDER, 4, VERB_SCREENS, 0, 0, 0, 0, 0, 0, .95},
      {SCREENS_DEFENDER, 1, VERB_SCREENS, 0, 0, 0, 0, 0, 0, .95},
      {ENDS, 5, 0, 0, 0, 0, 0, SPOT_BLOCK, SIDE_RIGHT, .6},
      {HOLDS_BALL, 2, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"the same article, flex start: the down screen is for the first screener, after the cutter "
     "has passed",
     "play \"Flex start\"\n"
     "  start 1 right slot, 2 right corner, 3 left slot, 4 right block, 5 left corner\n"
     "  defense man\n"
     "  1 passes to 3\n"
     "  4 back screens for 2\n"
     "  2 comes off 4 to left block\n"
     "  after 4 screens, 1 down screens for 4\n"
     "  4 comes off 1 to right elbow\n",
     0,
     -1,
     {{BEFORE, 4, VERB_SCREENS, MOMENT_USED, 1, VERB_SCREENS, MOMENT_STARTED, 0, 0, 0},
      {BEFORE, 1, VERB_SCREENS, MOMENT_SET, 4, VERB_COMES, MOMENT_STARTED, 0, 0, 0},
      {SCREENS_DEFENDER, 4, VERB_SCREENS, 0, 0, 0, 0, 0, 0, .95},
      {ENDS, 2, 0, 0, 0, 0, 0, SPOT_BLOCK, SIDE_LEFT, .6},
      {ENDS, 4, 0, 0, 0, 0, 0, SPOT_ELBOW, SIDE_RIGHT, .6},
      {HOLDS_BALL, 3, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"FIBA WABC Coaches Manual L3, 1.4.1 dribble hand-offs: 1 dribbles toward 2, stops and gives, "
     "2 dribbles at once",
     "play \"Dribble hand-off\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  1 dribbles at 2\n"
     "  1 hands off to 2\n"
     "  2 drives to the rim\n",
     0,
     -1,
     {{BEFORE, 1, VERB_DRIBBLES_AT, MOMENT_ARRIVED, 1, VERB_HANDS_OFF, MOMENT_RELEASED, 0, 0, 0},
      {SHARES_HAND, 1, VERB_HANDS_OFF, 0, 2, 0, 0, 0, 0, .95},
      {BEFORE, 1, VERB_HANDS_OFF, MOMENT_CAUGHT, 2, VERB_DRIVES, MOMENT_STARTED, 0, 0, 0},
      {HOLDS_BALL, 2, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"the same section, hand-off denied: 2 cuts behind to the basket",
     "play \"Denied\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  step\n"
     "    1 dribbles at 2\n"
     "    read 2 is denied \"Back door\"\n"
     "      2 back cuts to the rim\n",
     0,
     0,
     {{HOLDS_BALL, 1, 0, 0, 0, 0, 0, 0, 0, 0}, {ENDS, 2, 0, 0, 0, 0, 0, SPOT_RIM, SIDE_NONE, 2.6}}},
    {"R. Kruger, 'The pick-and-roll', FIBA Assist Magazine: nothing before the screener's feet are "
     "still",
     "play \"Screen the ball\"\n"
     "  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right elbow\n"
     "  defense man\n"
     "  5 ball screens for 1\n"
     "  1 drives off 5 to the rim\n"
     "  5 rolls to the rim\n",
     0,
     -1,
     {{BEFORE, 5, VERB_SCREENS, MOMENT_SET, 1, VERB_DRIVES_OFF, MOMENT_STARTED, 0, 0, 0},
      {BEFORE, 5, VERB_SCREENS, MOMENT_USED, 5, VERB_ROLLS, MOMENT_STARTED, 0, 0, 0},
      {SCREENS_DEFENDER, 5, VERB_SCREENS, 0, 0, 0, 0, 0, 0, .95},
      {HOLDS_BALL, 1, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"FIBA WABC Coaches Manual L3, 2.2.6 cuts off a high screen: the cut waits for the ball to "
     "arrive; the high post "
     "pops after it",
     "play \"High post cut\"\n"
     "  start 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 left short corner\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  after 2 catches, 1 comes off 4 to the rim\n"
     "  after 1 comes off 4, 4 goes to top\n",
     0,
     -1,
     {{BEFORE, 1, VERB_PASSES, MOMENT_CAUGHT, 1, VERB_COMES, MOMENT_STARTED, 0, 0, 0},
      {BEFORE, 1, VERB_COMES, MOMENT_ARRIVED, 4, VERB_GOES, MOMENT_STARTED, 0, 0, 0},
      {ENDS, 4, 0, 0, 0, 0, 0, SPOT_TOP, SIDE_NONE, .6},
      {HOLDS_BALL, 2, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"L. Gaze, shuffle offence, third option: 3 waits until the second pass is in the air; the "
     "post stands",
     "play \"Shuffle cut\"\n"
     "  start 2 top, 3 left slot, 1 right wing, 4 left wing, 5 left elbow\n"
     "  ball 3\n"
     "  defense man\n"
     "  5 stays\n"
     "  3 passes to 2\n"
     "  2 passes to 1\n"
     "  as 2 passes, 3 comes off 5 to right block\n",
     0,
     -1,
     {{BEFORE, 2, VERB_PASSES, MOMENT_RELEASED, 3, VERB_COMES, MOMENT_STARTED, 0, 0, 0},
      {STILL, 5, 0, 0, 0, 0, 0, 0, 0, .4},
      {ENDS, 3, 0, 0, 0, 0, 0, SPOT_BLOCK, SIDE_RIGHT, .6},
      {HOLDS_BALL, 1, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"M. McNeill, 'Teaching Motion Offence to Young Players', Basketball BC: pass, cut through, "
     "the open spot is filled",
     "play \"Pass, cut, fill\"\n"
     "  start four-out one-in\n"
     "  1 passes to 2\n"
     "  1 cuts to the rim\n"
     "  1 clears to right corner\n"
     "  4 fills right slot\n",
     0,
     -1,
     {{ENDS, 1, 0, 0, 0, 0, 0, SPOT_CORNER, SIDE_RIGHT, .6},
      {ENDS, 4, 0, 0, 0, 0, 0, SPOT_SLOT, SIDE_RIGHT, .6},
      {BEFORE, 1, VERB_PASSES, MOMENT_RELEASED, 1, VERB_CUTS, MOMENT_STARTED, 0, 0, 0},
      {HOLDS_BALL, 2, 0, 0, 0, 0, 0, 0, 0, 0}}},
    {"FIBA WABC Coaches Manual L1, 1.1.7 split line: defenders two and three passes away stand "
     "within the board's "
     "width (0.90 m) of the axis",
     "play \"Help line\"\n"
     "  start five-out\n"
     "  defense man\n"
     "  1 passes to 2\n"
     "  2 holds for 2 s\n",
     0,
     -1,
     {{ON_HELP_LINE, 3, 0, 0, 0, 0, 0, 0, 0, .90}, {ON_HELP_LINE, 5, 0, 0, 0, 0, 0, 0, 0, .90}}},
};

static const struct segment *find_segment(const struct run *run, const struct worked *row)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        if (segment->step == row->step && segment->branch == row->branch) {
            return segment;
        }
    }
    ck_abort_msg("no such segment");
    return NULL;
}

static size_t find_task(const struct segment *segment, int who, enum verb verb)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == body_attacker(who) && task->verb == verb) {
            return i;
        }
    }
    ck_abort_msg("%d has no such task", who);
    return 0;
}

static double far(struct vec2 a, struct vec2 b)
{
    return vec2_distance(a, b);
}

static void hold_up(const struct segment *segment, const struct fact *fact, const char *source)
{
    const double end = segment->duration;
    const struct task_record *record = segment->record;
    switch (fact->kind) {
    case BEFORE: {
        double first = record[find_task(segment, fact->who, fact->verb)].time[fact->moment];
        double later = record[find_task(segment, fact->who2, fact->verb2)].time[fact->moment2];
        ck_assert_msg(first >= 0 && later >= first - 1e-9, "%s: %.2f s is not before %.2f s",
                      source, first, later);
        break;
    }
    case ENDS: {
        struct vec2 spot = court_spot(segment->play->court, fact->spot, fact->side);
        struct vec2 at = segment_at(segment, body_attacker(fact->who), end);
        ck_assert_msg(far(spot, at) <= fact->within, "%s: %d ends %.2f m off", source, fact->who,
                      far(spot, at));
        break;
    }
    case HOLDS_BALL:
        ck_assert_msg(segment_holder(segment, end) == body_attacker(fact->who),
                      "%s: %d has not the ball", source, fact->who);
        break;
    case SCREENS_DEFENDER: {
        const struct task_record *screen = &record[find_task(segment, fact->who, fact->verb)];
        struct vec2 at = segment_at(segment, body_attacker(fact->who), screen->time[MOMENT_SET]);
        ck_assert_msg(screen->time[MOMENT_SET] >= 0, "%s: never set", source);
        ck_assert_msg(far(at, screen->on) <= fact->within, "%s: screen %.2f m from the defender",
                      source, far(at, screen->on));
        break;
    }
    case SHARES_HAND: {
        double when = record[find_task(segment, fact->who, fact->verb)].time[MOMENT_RELEASED];
        double apart = far(segment_at(segment, body_attacker(fact->who), when),
                           segment_at(segment, body_attacker(fact->who2), when));
        ck_assert_msg(when >= 0 && apart <= fact->within, "%s: %.2f m apart", source, apart);
        break;
    }
    case ON_HELP_LINE: {
        struct vec2 at = segment_at(segment, body_defender(fact->who), end);
        ck_assert_msg(at.x <= fact->within && at.x >= -fact->within, "%s: x%d at x = %.2f m",
                      source, fact->who, at.x);
        break;
    }
    case STILL: {
        struct vec2 from = segment_at(segment, body_attacker(fact->who), 0);
        struct vec2 to = segment_at(segment, body_attacker(fact->who), end);
        ck_assert_msg(far(from, to) <= fact->within, "%s: %d moved %.2f m", source, fact->who,
                      far(from, to));
        break;
    }
    case END_OF_FACTS:
        break;
    }
}

START_TEST(a_published_play_runs_as_told)
{
    const struct worked *row = &worked[_i];
    struct piped piped;
    pipe_text(&arena, str_of(row->text), &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s:%s", row->source, piped_said(&arena, &piped));
    const struct run *run = sim_run(&arena, &piped.sources, &piped.book->plays.at[0], &piped.diags);
    const struct segment *segment = find_segment(run, row);
    ck_assert_msg(segment->ran, "%s: did not run", row->source);
    for (size_t i = 0; i < 8 && row->facts[i].kind != END_OF_FACTS; i++) {
        hold_up(segment, &row->facts[i], row->source);
    }
}
END_TEST

/* A published play that is sound raises nothing above a note. */
START_TEST(a_published_play_raises_no_warning)
{
    const struct worked *row = &worked[_i];
    struct piped piped;
    pipe_text(&arena, str_of(row->text), &piped);
    for (size_t i = 0; i < piped.findings.count; i++) {
        ck_assert_msg(piped.findings.at[i].severity == SEVERITY_NOTE, "%s:%s", row->source,
                      piped_said(&arena, &piped));
    }
}
END_TEST

int main(void)
{
    const int count = (int)(sizeof worked / sizeof *worked);
    Suite *suite = suite_create("outside worked examples");
    TCase *all = tcase_create("worked");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, a_published_play_runs_as_told, 0, count);
    tcase_add_loop_test(all, a_published_play_raises_no_warning, 0, count);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
