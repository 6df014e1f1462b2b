/* SPDX-License-Identifier: MIT */
/* What is tied to a screen: its set, its end, and what either is when nobody uses it, when its
 * screener slips it, or when it is the user himself who waits. */
#include "told.h"

static struct told told;

#define FLOOR "start five-out\ndefense man\n"

/* The time from a moment of task `on` to the start of task `then`. */
static double between(size_t on, enum moment moment, size_t then)
{
    const struct segment *way = told_segment(&told, 0, -1);
    return told_time(way, then, MOMENT_STARTED) - told_time(way, on, moment);
}

/* ---- slips ---- */

START_TEST(a_slip_some_seconds_later_leaves_the_screen_that_was_set)
{
    told_run(&told, FLOOR "5 ball screens for 1\n0.5 s later, 5 slips to the rim\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(between(0, MOMENT_SET, 1), .5, .02);
    told_run(&told, FLOOR "5 ball screens for 1\n1 s after 5 screens, 5 slips to the rim\n"
                          "1 dribbles off 5 to right slot\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(between(0, MOMENT_SET, 1), 1, .02);
}
END_TEST

START_TEST(a_slip_that_waits_for_nothing_leaves_before_the_screen_is_set)
{
    static const char *const words[] = {"5 slips to the rim\n", "then 5 slips to the rim\n"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        told_run(&told, str_format(&arena, FLOOR "5 ball screens for 1\n%s", words[i]).at);
        told_is_sound(&told);
        const struct segment *way = told_segment(&told, 0, -1);
        ck_assert(way->record[0].time[MOMENT_SET] == TIME_NEVER);
    }
}
END_TEST

START_TEST(a_slip_tied_to_a_pass_holds_the_screen_until_then)
{
    told_run(&told, FLOOR "5 ball screens for 1\n1 holds for 5 s\n1 passes to 2\n"
                          "as 1 passes, 5 slips to the rim\n");
    told_is_sound(&told);
    ck_assert_double_ge(told_time(told_segment(&told, 0, -1), 0, MOMENT_SET), 0);
    ck_assert_double_eq_tol(between(2, MOMENT_RELEASED, 3), 0, .02);
}
END_TEST

START_TEST(who_waits_for_a_screen_that_is_slipped_waits_no_longer)
{
    told_run(&told, FLOOR "5 ball screens for 1\n5 slips to the rim\nafter 5 screens, 1 passes to "
                          "2\n");
    told_is_sound(&told);
    told_run(&told, FLOOR "5 ball screens for 1\n5 slips\n5 pops to left wing\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
}
END_TEST

/* ---- the end of a screen that is not used ---- */

START_TEST(the_end_of_a_screen_that_nobody_uses_is_its_set)
{
    told_run(&told, FLOOR "5 screens for 3\nafter 5 screens, 1 passes to 2\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(between(0, MOMENT_SET, 1), 0, .02);
    told_run(&told, FLOOR "5 screens for 3\n0.5 s after 5 screens, 5 pops to top\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_eq_tol(between(0, MOMENT_SET, 1), .5, .02);
}
END_TEST

START_TEST(a_step_after_a_screen_that_is_used_only_in_it_begins_with_the_set)
{
    told_run(&told, FLOOR "step \"Screen\"\n  5 screens for 3\n  2 cuts to the rim\n"
                          "step \"Use it\" after 5 screens\n  3 comes off 5 to top\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    const struct segment *first = told_segment(&told, 0, -1);
    ck_assert_double_ge(told_time(first, 0, MOMENT_SET), 0);
    ck_assert_uint_eq(told.run->segments.count, 2);
}
END_TEST

/* ---- its own user ---- */

START_TEST(a_user_tied_to_the_end_of_his_own_screen_leaves_after_the_set)
{
    static const struct {
        const char *words;
        double after;
    } ties[] = {
        {"after 5 screens,", 0}, {"0.5 s after 5 screens,", .5}, {"0.5 s later,", .5}, {"then", 0}};
    for (size_t i = 0; i < sizeof ties / sizeof *ties; i++) {
        told_run(&told, str_format(&arena, FLOOR "5 screens for 3\n%s 3 curls off 5 to the rim\n",
                                   ties[i].words)
                            .at);
        told_is_sound(&told);
        double waited = between(0, MOMENT_SET, 1); /* and .15 s to see that it is set */
        ck_assert_double_ge(waited, ties[i].after - .02);
        ck_assert_double_le(waited, ties[i].after + .2);
    }
}
END_TEST

START_TEST(what_stands_between_a_screen_and_its_use_waits_for_the_set)
{
    told_run(&told, FLOOR "5 screens for 3\nthen 2 cuts to the rim\nthen 3 curls off 5 to top\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_eq_tol(between(0, MOMENT_SET, 1), 0, .03);
    ck_assert_double_ge(between(1, MOMENT_ARRIVED, 2), -.02);
}
END_TEST

START_TEST(a_set_up_tied_to_the_screen_is_not_awaited_by_it)
{
    told_run(&told, FLOOR "5 screens for 3\nafter 5 screens, 3 sets up toward the rim\n"
                          "3 curls off 5 to top\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_ge(between(0, MOMENT_SET, 1), -.02);
}
END_TEST

START_TEST(a_screen_set_again_before_it_is_used_is_shown_and_left)
{
    told_run(&told, FLOOR "5 ball screens for 1\n5 re-screens\n1 dribbles off 5 to right slot\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_ge(between(1, MOMENT_SET, 2), 0);
    ck_assert_double_ge(between(0, MOMENT_SET, 1), 0);
}
END_TEST

START_TEST(who_leaves_a_spot_as_another_fills_it_goes_with_him)
{
    told_run(&told, FLOOR "2 fills top\nas 2 fills, 1 dribbles to left slot\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_eq_tol(between(0, MOMENT_STARTED, 1), 0, .02);
    told_run(&told, FLOOR "2 fills top\nthen 1 dribbles to left slot\n");
    ck_assert_uint_eq(told.text.diags.errors, 0);
    ck_assert_double_ge(between(0, MOMENT_ARRIVED, 1), -.02);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("screen ties");
    TCase *all = tcase_create("screen ties");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, a_slip_some_seconds_later_leaves_the_screen_that_was_set);
    tcase_add_test(all, a_slip_that_waits_for_nothing_leaves_before_the_screen_is_set);
    tcase_add_test(all, a_slip_tied_to_a_pass_holds_the_screen_until_then);
    tcase_add_test(all, who_waits_for_a_screen_that_is_slipped_waits_no_longer);
    tcase_add_test(all, the_end_of_a_screen_that_nobody_uses_is_its_set);
    tcase_add_test(all, a_step_after_a_screen_that_is_used_only_in_it_begins_with_the_set);
    tcase_add_test(all, a_user_tied_to_the_end_of_his_own_screen_leaves_after_the_set);
    tcase_add_test(all, what_stands_between_a_screen_and_its_use_waits_for_the_set);
    tcase_add_test(all, a_set_up_tied_to_the_screen_is_not_awaited_by_it);
    tcase_add_test(all, a_screen_set_again_before_it_is_used_is_shown_and_left);
    tcase_add_test(all, who_leaves_a_spot_as_another_fills_it_goes_with_him);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
