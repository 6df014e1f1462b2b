/* SPDX-License-Identifier: MIT */
/* Defenders whom nobody has told anything, as a coach would see them: who is in help stays there
 * while a screen comes, who has trapped does not stay round a man without the ball. */
#include "base/real.h"
#include "told.h"

static struct told told;
static const struct segment *way;

static void run(const char *text)
{
    told_run(&told, text);
    ck_assert_msg(told.text.diags.errors == 0, "%s%s", text, told_said(&told));
    way = told.run->segments.at[0];
    ck_assert(way->ran);
}

static struct vec2 x(int number, double t)
{
    return segment_at(way, body_defender(number), t);
}

static struct vec2 p(int number, double t)
{
    return segment_at(way, body_attacker(number), t);
}

#define FLEX                                                                                       \
    "start 1 left slot, 2 left wing, 3 left corner, 4 right block, 5 right corner\n"               \
    "defense man sag\n4 back screens for 5\n5 cuts off 4 to the rim\n"

START_TEST(who_is_in_help_does_not_go_out_to_be_screened)
{
    run(FLEX);
    told_is_sound(&told);
    double goes = told_time(way, 1, MOMENT_STARTED), there = told_time(way, 1, MOMENT_ARRIVED);
    ck_assert(court_in_lane(told.play->court, x(5, 0)));
    for (double t = 0; t < there; t += .05) { /* a step out as the cut comes by, no more */
        ck_assert_msg(court_in_lane(told.play->court, x(5, t)) ||
                          (t > goes && x(5, t).x < told.play->court->lane_half_width + FEET),
                      "x5 at (%.1f, %.1f) ft, %.2f s", x(5, t).x / FEET, x(5, t).y / FEET, t);
    }
    ck_assert_double_lt(vec2_distance(x(5, goes), x(5, 0)), 1.2);
}
END_TEST

START_TEST(who_screens_for_a_man_two_passes_away_goes_to_the_helper_and_not_to_the_man)
{
    run(FLEX);
    double set = told_time(way, 0, MOMENT_SET);
    ck_assert_double_lt(vec2_distance(p(4, set), x(5, set)), 1.2);
    ck_assert_double_gt(vec2_distance(p(4, set), p(5, set)), 3.5);
    /* and the cut goes by him: he is a shoulder from its way */
    double least = 1e9;
    for (double t = set; t < told_time(way, 1, MOMENT_ARRIVED); t += .02) {
        least = real_min(least, vec2_distance(p(5, t), p(4, t)));
    }
    ck_assert_double_lt(least, 1.3);
}
END_TEST

START_TEST(a_screen_for_a_man_who_goes_up_from_the_corner_is_set_on_the_helper_who_comes_out)
{
    run("start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
        "defense man\n1 passes to 2\n5 down screens for 3\n3 comes off 5 to left wing\n");
    told_is_sound(&told);
    double set = told_time(way, 1, MOMENT_SET);
    ck_assert_double_lt(vec2_distance(p(5, set), x(3, set)), 3 * FEET);
    ck_assert_double_lt(set, 2.6);
}
END_TEST

START_TEST(the_helper_stays_in_the_lane_when_the_ball_is_thrown_in_from_the_baseline)
{
    run("start 1 right short corner, 2 left block, 3 left elbow, 4 right block, 5 right elbow\n"
        "ball 1 out of bounds at right short corner\ndefense man\n4 cross screens for 2\n"
        "2 cuts off 4 to the right corner\n1 inbounds to 2\n");
    told_is_sound(&told);
    double goes = told_time(way, 1, MOMENT_STARTED);
    for (double t = 0; t < goes; t += .05) {
        ck_assert_double_lt(vec2_distance(x(2, t), x(2, 0)), .6);
    }
}
END_TEST

START_TEST(who_is_told_to_trail_is_by_his_man_also_two_passes_away)
{
    run("start 1 left slot, 2 left wing, 3 left corner, 4 right block, 5 right corner\n"
        "defense man sag\nx5 trails 5\n4 back screens for 5\n5 cuts off 4 to the rim\n");
    double goes = told_time(way, 2, MOMENT_STARTED);
    ck_assert_double_lt(vec2_distance(x(5, goes), p(5, goes)), 1.8);
}
END_TEST

/* Two trap 1, who throws to 4 and is let go. */
#define TRAPPED_BY(read)                                                                           \
    "start horns\ndefense man\nstep\n4 ball screens for 1\n"                                       \
    "1 dribbles off 4 to the right wing\n" read "4 pops to top\n1 passes to 4\n4 holds for 2 s\n"

/* After the pass: they were at him, and so long later neither is any more. */
static void both_leave(const struct segment *segment, size_t pass)
{
    double out = told_time(segment, pass, MOMENT_RELEASED), later = out + .35 + .9;
    for (int d = 1; d <= 4; d += 3) {
        body b = body_defender(d), one = body_attacker(1);
        double before = vec2_distance(segment_at(segment, b, out), segment_at(segment, one, out));
        double after =
            vec2_distance(segment_at(segment, b, later), segment_at(segment, one, later));
        ck_assert_msg(before < 1.5 && after > before + .9, "x%d %.2f m, then %.2f m", d, before,
                      after);
    }
    struct vec2 ball = segment_at(segment, body_attacker(4), later);
    struct vec2 big = segment_at(segment, body_defender(4), later);
    ck_assert_double_lt(vec2_distance(big, ball), 4.5); /* x4 on the way to who has it */
}

START_TEST(who_has_trapped_leaves_when_the_ball_has_left_the_trap)
{
    told_run(&told, TRAPPED_BY("read x1 and x4 trap 1\n"));
    ck_assert_msg(told.text.diags.errors == 0, "%s", told_said(&told));
    const struct segment *read = told_segment(&told, 0, 0);
    size_t pass = 0;
    while (segment_task(read, pass)->kind != TASK_PASS) {
        pass++;
    }
    both_leave(read, pass);
}
END_TEST

START_TEST(a_close_out_told_after_a_pass_waits_until_it_is_thrown)
{
    run("start 1 left slot, 2 right slot, 3 left corner, 4 right corner\nball 3\ndefense man\n"
        "3 drives baseline to the rim\nas 3 drives, x4 helps to left block\n"
        "3 passes to 4\nx2 closes out on 4\nx4 recovers to 2\n");
    double thrown = told_time(way, 2, MOMENT_RELEASED);
    for (size_t i = 3; i <= 4; i++) {
        double goes = told_time(way, i, MOMENT_STARTED);
        ck_assert_double_gt(goes, thrown + .1); /* s: he has to see it */
        ck_assert_double_lt(goes, thrown + .6);
    }
    ck_assert_double_lt(told_time(way, 1, MOMENT_STARTED), thrown - .5); /* a tie is a tie */
}
END_TEST

START_TEST(a_pass_that_waits_for_the_close_out_does_not_make_a_circle)
{
    run("start 1 left slot, 2 right slot, 3 left corner, 4 right corner\nball 1\ndefense man\n"
        "after x4 recovers, 1 passes to 2\nx4 recovers\n");
    ck_assert_double_lt(told_time(way, 1, MOMENT_STARTED), told_time(way, 0, MOMENT_RELEASED));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("defenders");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, who_is_in_help_does_not_go_out_to_be_screened);
    tcase_add_test(all,
                   who_screens_for_a_man_two_passes_away_goes_to_the_helper_and_not_to_the_man);
    tcase_add_test(
        all, a_screen_for_a_man_who_goes_up_from_the_corner_is_set_on_the_helper_who_comes_out);
    tcase_add_test(all, the_helper_stays_in_the_lane_when_the_ball_is_thrown_in_from_the_baseline);
    tcase_add_test(all, who_is_told_to_trail_is_by_his_man_also_two_passes_away);
    tcase_add_test(all, who_has_trapped_leaves_when_the_ball_has_left_the_trap);
    tcase_add_test(all, a_close_out_told_after_a_pass_waits_until_it_is_thrown);
    tcase_add_test(all, a_pass_that_waits_for_the_close_out_does_not_make_a_circle);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
