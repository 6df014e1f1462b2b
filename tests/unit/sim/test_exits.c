/* SPDX-License-Identifier: MIT */
/* Ways off one screen for reads that leave it on different sides: nobody runs a loop, and what the
 * floor makes of the words is said. */
#include "floor_text.h"

#include <math.h>
#include <string.h>

#include "base/real.h"

#define LOOP 1.3 /* m that a way may be longer than the straight one: once round a shoulder */

static struct ran ran;

static void run_it(const char *text)
{
    floor_text(&ran, str_of(text));
    ck_assert_msg(ran.run != NULL, "%s", floor_said(&ran));
}

static bool says(const char *what)
{
    return strstr(floor_said(&ran), what) != NULL;
}

/* Metres run between two moments. */
static double run_between(const struct segment *segment, int who, double from, double to)
{
    double length = 0;
    for (double t = from; t < to; t += RUN_SAMPLE) {
        length +=
            vec2_distance(segment_at(segment, body_attacker(who), t),
                          segment_at(segment, body_attacker(who), real_min(to, t + RUN_SAMPLE)));
    }
    return length;
}

/* How much longer than straight the way of the user was, in each read. */
static void nobody_loops(int user)
{
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        const struct segment *segment = ran.run->segments.at[i];
        int use = floor_task(segment, user, TASK_USE);
        if (use < 0) {
            continue;
        }
        double from = floor_moment(segment, use, MOMENT_STARTED);
        double to = floor_moment(segment, use, MOMENT_ARRIVED);
        double straight = vec2_distance(segment_at(segment, body_attacker(user), from),
                                        segment_at(segment, body_attacker(user), to));
        double ran_length = run_between(segment, user, from, to);
        ck_assert_msg(ran_length < straight + LOOP, "read %zu: %d runs %.2f m for %.2f m", i, user,
                      ran_length, straight);
    }
}

static double screen_x(size_t read)
{
    const struct segment *segment = ran.run->segments.at[read];
    return segment->record[floor_task(segment, 5, TASK_SCREEN)].to.x;
}

static const char *const plays[] = {
    "play \"Tollgate\"\n  start horns\n  defense man\n  step\n    5 ball screens for 1\n"
    "    read x5 drops\n      1 dribbles off 5 to left elbow\n"
    "    read x5 traps\n      1 dribbles off 5 to left slot\n",
    "play \"Tollgate\"\n  start horns\n  defense man\n  step\n    5 ball screens for 1\n"
    "    read x5 drops\n      1 dribbles off 5 to left wing\n"
    "    read x5 traps\n      1 dribbles off 5 to right wing\n"
    "    read x1 goes under\n      1 dribbles off 5 to right slot\n"
    "    read x5 hedges\n      1 dribbles off 5 to left slot\n",
    "play \"Millrace\"\n  start 1 right wing, 2 left wing, 3 left corner, 4 right corner, 5 right "
    "block\n"
    "  defense man\n  step\n    5 ball screens for 1\n"
    "    read x1 goes over\n      1 drives off 5 to nail\n"
    "    read x1 goes under\n      1 dribbles off 5 to right slot\n",
};

START_TEST(no_read_of_a_ball_screen_loops)
{
    run_it(plays[_i]);
    nobody_loops(1);
}
END_TEST

START_TEST(he_stands_for_the_first_read)
{
    run_it(plays[1]); /* two on either side: the first is on the left */
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        ck_assert_double_lt(screen_x(i), -.2);
    }
    ck_assert(says("run.away: 1 goes away from the screen here: x1 stands between 5 and the way"));
}
END_TEST

START_TEST(he_stands_for_most_of_the_reads)
{
    run_it("play \"Tollgate\"\n  start 1 top, 2 right corner, 3 left corner, 4 right short corner, "
           "5 left elbow\n"
           "  defense man\n  step\n    5 ball screens for 1\n"
           "    read x5 drops\n      1 dribbles off 5 to left wing\n"
           "    read x5 traps\n      1 dribbles off 5 to right wing\n"
           "    read x1 goes under\n      1 dribbles off 5 to right slot\n");
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        ck_assert_double_gt(screen_x(i), .2);
    }
    ck_assert(says("run.away"));
    nobody_loops(1);
}
END_TEST

START_TEST(he_goes_behind_the_defender_to_the_other_side)
{
    run_it("play \"Tollgate\"\n  start 1 top, 2 right corner, 3 left corner, 4 right short corner, "
           "5 left elbow\n"
           "  defense man\n  step\n    5 ball screens for 1\n    1 dribbles off 5 to right wing\n");
    const struct segment *segment = ran.run->segments.at[0];
    int screen = floor_task(segment, 5, TASK_SCREEN);
    double set = floor_moment(segment, screen, MOMENT_SET);
    ck_assert_double_gt(segment->record[screen].to.x, .2);
    ck_assert_double_lt(set, 2.6);
    for (double t = 0; t < set; t += RUN_SAMPLE) { /* never between handler and defender */
        ck_assert_double_lt(segment_at(segment, body_attacker(5), t).y,
                            segment_at(segment, body_attacker(1), t).y - 2 * FEET);
    }
    ck_assert(!says("run.away"));
}
END_TEST

static const char *const curls[] = {
    "start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n  ball 1\n",
    "start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left elbow\n  ball 1\n",
    "start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left block\n  ball 2\n",
    "start 1 top, 2 left wing, 3 right corner, 4 left corner, 5 right elbow\n  ball 1\n"};

/* He comes off it toward the ball, with the screener between him and the way that is straight. */
START_TEST(a_curl_to_the_rim_goes_round_the_screener_on_the_side_of_the_ball)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Millrace\"\n  %s  defense man\n  step\n    5 screens for 3\n"
                 "    3 curls off 5 to the rim\n",
                 curls[_i]);
    run_it(strbuf_str(&text).at);
    const struct segment *segment = ran.run->segments.at[0];
    int use = floor_task(segment, 3, TASK_USE), screen = floor_task(segment, 5, TASK_SCREEN);
    double left = floor_moment(segment, use, MOMENT_STARTED);
    double there = floor_moment(segment, use, MOMENT_ARRIVED);
    struct vec2 from = segment->record[use].from, screener = segment->record[screen].to;
    struct vec2 rim = vec2_unit(vec2_sub(vec2_of(0, 0), from)), by = from;
    for (double t = left; t < there; t += RUN_SAMPLE) {
        struct vec2 at = segment_at(segment, body_attacker(3), t);
        by = vec2_distance(at, screener) < vec2_distance(by, screener) ? at : by;
    }
    double his = vec2_cross(rim, vec2_sub(by, from)),
           balls = vec2_cross(rim, vec2_sub(segment_ball(segment, left), from));
    ck_assert_double_gt(his * balls, 0);
    ck_assert_double_gt(fabs(his), .5); /* m off the straight way */
}
END_TEST

START_TEST(a_rejection_to_one_side_is_screened_on_the_other)
{
    run_it("play \"Tollgate\"\n  start horns\n  defense man\n  step\n    5 ball screens for 1\n"
           "    1 rejects 5 to right wing\n");
    ck_assert_double_lt(screen_x(0), -.2);
    ck_assert(!says("run."));
}
END_TEST

START_TEST(a_screen_far_from_the_place_named_is_told)
{
    run_it("play \"Shuttle\"\n  start 1 top, 2 left wing, 3 right wing, 4 right corner, 5 right "
           "elbow\n"
           "  defense man\n  step\n    2 screens for 5 at left block\n"
           "    5 comes off 2 to left block\n");
    ck_assert_msg(says("run.screen-place: this screen is set "), "%s", floor_said(&ran));
    ck_assert(says(" ft from the place you name: it is set on the defender, and there x5 is"));
}
END_TEST

START_TEST(a_place_that_is_near_enough_is_not)
{
    run_it(
        "play \"Shuttle\"\n  start 1 top, 2 left wing, 3 right wing, 4 right corner, 5 left block\n"
        "  defense man\n  step\n    2 screens for 5 at left block\n"
        "    5 comes off 2 to left wing\n");
    ck_assert_msg(!says("run.screen-place"), "%s", floor_said(&ran));
}
END_TEST

START_TEST(a_v_in_the_backcourt_has_two_legs)
{
    run_it(
        "play \"Sluice\"\n  floor full\n  start 1 backcourt left elbow, 2 half court, 3 right "
        "hash, 4 backcourt right wing, 5 left block\n  ball 4\n  step\n    1 v-cuts to backcourt "
        "right corner\n    4 passes to 1\n");
    const struct segment *segment = ran.run->segments.at[0];
    struct vec2 from = segment_at(segment, body_attacker(1), 0);
    struct vec2 to = segment_at(segment, body_attacker(1), segment->duration);
    double off = 0;
    for (double t = 0; t < segment->duration; t += RUN_SAMPLE) {
        struct vec2 way = vec2_unit(vec2_sub(to, from));
        struct vec2 p = vec2_sub(segment_at(segment, body_attacker(1), t), from);
        off = real_max(off, fabs(vec2_cross(way, p)));
    }
    ck_assert_double_gt(off, .29 * vec2_distance(from, to)); /* legs within 120 degrees */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ways off a screen");
    TCase *tcase = tcase_create("exits");
    tcase_add_checked_fixture(tcase, open_arena, close_arena);
    tcase_set_timeout(tcase, 120);
    tcase_add_loop_test(tcase, no_read_of_a_ball_screen_loops, 0,
                        (int)(sizeof plays / sizeof *plays));
    tcase_add_test(tcase, he_stands_for_the_first_read);
    tcase_add_test(tcase, he_stands_for_most_of_the_reads);
    tcase_add_test(tcase, he_goes_behind_the_defender_to_the_other_side);
    tcase_add_loop_test(tcase, a_curl_to_the_rim_goes_round_the_screener_on_the_side_of_the_ball, 0,
                        (int)(sizeof curls / sizeof *curls));
    tcase_add_test(tcase, a_rejection_to_one_side_is_screened_on_the_other);
    tcase_add_test(tcase, a_screen_far_from_the_place_named_is_told);
    tcase_add_test(tcase, a_place_that_is_near_enough_is_not);
    tcase_add_test(tcase, a_v_in_the_backcourt_has_two_legs);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
