/* SPDX-License-Identifier: MIT */
/* What sentences wait for and what cuts them short, from a coach's own words to the run. */
#include "told.h"

#include "base/real.h"

static struct told told;

/* ---- until ---- */

START_TEST(a_dribble_is_cut_short_the_moment_another_catches)
{
    told_run(&told, "start five-out\nball 4\n"
                    "4 passes to 2\n"
                    "1 cuts to the rim until 2 catches\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double caught = told_time(way, 0, MOMENT_CAUGHT), ended = told_time(way, 1, MOMENT_ARRIVED);
    ck_assert_double_le(caught, ended);
    ck_assert_double_lt(ended - caught, .02);
    struct vec2 stood = segment_at(way, body_attacker(1), way->duration);
    ck_assert_double_gt(vec2_length(stood), 2); /* he never got to the rim */
    ck_assert_double_lt(vec2_length(segment_velocity(way, body_attacker(1), way->duration)), .4);
}
END_TEST

START_TEST(who_is_cut_short_goes_on_with_his_next_sentence_at_once)
{
    told_run(&told, "start five-out\n"
                    "1 dribbles to left corner until 3 cuts\n"
                    "1 passes to 2\n"
                    "at 1 s, 3 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double cut = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_eq_tol(cut, 1, .02);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), cut, .02);
}
END_TEST

START_TEST(a_hold_lasts_until_the_other_is_past)
{
    told_run(&told, "start 1 top, 2 left wing, 3 right wing, 4 left corner, 5 right corner\n"
                    "1 holds until 3 is past 1\n"
                    "1 passes to 2\n"
                    "3 cuts to left slot\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double end = told_time(way, 0, MOMENT_ARRIVED);
    struct vec2 three = segment_at(way, body_attacker(3), end);
    struct vec2 one = segment_at(way, body_attacker(1), end);
    ck_assert_double_lt(three.x, one.x);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), end, .02);
}
END_TEST

START_TEST(a_hold_until_what_holds_already_is_no_time)
{
    told_run(&told, "start five-out\n1 holds until 1 has the ball\n1 passes to 2\n");
    told_is_sound(&told);
    ck_assert_double_lt(told_time(told_segment(&told, 0, -1), 0, MOMENT_ARRIVED), .02);
}
END_TEST

START_TEST(an_until_that_never_comes_never_cuts)
{
    told_run(&told, "start five-out\ndefense man\n"
                    "3 cuts to the rim until 5 has the ball\n"
                    "2 stays until 5 has the ball\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_lt(vec2_length(way->record[0].to), 1.2);
    ck_assert_double_lt(way->duration, 6);
}
END_TEST

START_TEST(a_hold_that_keeps_a_sentence_waiting_for_ever_is_said)
{
    told_run(&told, "start five-out\n"
                    "1 stays until 5 has the ball\n1 passes to 2\n3 cuts to the rim\n");
    told_says(&told, "run.stuck", "until 5 has the ball");
}
END_TEST

START_TEST(a_screen_cut_short_lets_its_user_and_its_screener_go)
{
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 screens for 2 until 1 dribbles\n"
                    "5 cuts to the rim\n"
                    "at 2 s, 1 dribbles to left wing\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_double_eq_tol(told_time(way, 0, MOMENT_ARRIVED), 2, .02);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), 2, .02);
}
END_TEST

START_TEST(a_use_cut_short_frees_its_screener)
{
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 down screens for 2\n"
                    "2 curls off 5 to the rim until 3 cuts\n"
                    "5 pops to top\n"
                    "1 s after 2 curls, 3 cuts to the rim\n"
                    "after 5 screens, 4 cuts to the rim\n");
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 screens for 2\n"
                    "2 curls off 5 to the rim until 3 cuts\n"
                    "as 2 curls, 3 lifts to top\n"
                    "5 pops to right wing\n");
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_msg(way->ran, "%s", told_said(&told));
    told_time(way, 3, MOMENT_ARRIVED);
}
END_TEST

START_TEST(a_pass_has_nothing_to_cut_short)
{
    told_run(&told, "start five-out\n1 passes to 2 until 3 is open\n");
    told_says(&told, "play.until", "passes to");
}
END_TEST

START_TEST(an_until_that_names_nobodys_sentence_is_said)
{
    told_run(&told, "start five-out\n1 dribbles to left wing until 3 cuts\n");
    told_says(&told, "play.no-event", "3");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sim ties");
    TCase *all = tcase_create("until");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, a_dribble_is_cut_short_the_moment_another_catches);
    tcase_add_test(all, who_is_cut_short_goes_on_with_his_next_sentence_at_once);
    tcase_add_test(all, a_hold_lasts_until_the_other_is_past);
    tcase_add_test(all, a_hold_until_what_holds_already_is_no_time);
    tcase_add_test(all, an_until_that_never_comes_never_cuts);
    tcase_add_test(all, a_hold_that_keeps_a_sentence_waiting_for_ever_is_said);
    tcase_add_test(all, a_screen_cut_short_lets_its_user_and_its_screener_go);
    tcase_add_test(all, a_use_cut_short_frees_its_screener);
    tcase_add_test(all, a_pass_has_nothing_to_cut_short);
    tcase_add_test(all, an_until_that_names_nobodys_sentence_is_said);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
