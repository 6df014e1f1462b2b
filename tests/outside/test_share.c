/* SPDX-License-Identifier: MIT */
/* Intervals of counted shares against tables in print (values from memory of the tables, and
 * reckoned again from the formulas): R. G. Newcombe, "Two-sided confidence intervals for the single
 * proportion: comparison of seven methods", Statistics in Medicine 17 (1998) 857-872, table I,
 * score method without continuity correction; and "Interval estimation for the difference between
 * independent proportions: comparison of eleven methods", ibid. 873-890, table II, method 10. */
#include "floor/season/share.h"
#include "suite.h"

#define Z_95 1.959963984540054

static const struct {
    int made, of;
    double low, high;
} shares[] = {{81, 263, 0.2553, 0.3662},
              {15, 148, 0.0624, 0.1605},
              {0, 20, 0, 0.1611},
              {1, 29, 0.0061, 0.1718}};

START_TEST(shares_have_the_intervals_of_the_table)
{
    struct interval interval = share_interval_at(shares[_i].made, shares[_i].of, Z_95);
    ck_assert_double_eq_tol(interval.low, shares[_i].low, 5e-5);
    ck_assert_double_eq_tol(interval.high, shares[_i].high, 5e-5);
}
END_TEST

/* The table has the first less the second: turned round here. */
static const struct {
    int made, of, second_made, second_of;
    double low, high;
} changes[] = {{48, 80, 56, 70, 0.0524, 0.3339},
               {3, 10, 9, 10, 0.1705, 0.8090},
               {2, 7, 6, 7, 0.0582, 0.8062},
               {0, 29, 5, 56, -0.0381, 0.1926},
               {0, 10, 0, 10, -0.2775, 0.2775}};

START_TEST(changes_have_the_intervals_of_the_table)
{
    struct interval change = share_change_at(changes[_i].made, changes[_i].of,
                                             changes[_i].second_made, changes[_i].second_of, Z_95);
    ck_assert_double_eq_tol(change.low, changes[_i].low, 5e-5);
    ck_assert_double_eq_tol(change.high, changes[_i].high, 5e-5);
}
END_TEST

/* No way to come to a mean from scores of 0, 2 and 3 varies more than threes alone; and the
 * interval of threes holds all of what two points at a time would have. */
START_TEST(points_a_trip_are_as_wide_as_threes)
{
    struct interval points = points_interval(9, 10), threes = share_interval(3, 10);
    ck_assert_double_eq_tol(points.low, 3 * threes.low, 1e-12);
    ck_assert_double_eq_tol(points.high, 3 * threes.high, 1e-12);
    struct interval twos = share_interval(6, 10), in_twos = points_interval(12, 10);
    ck_assert(in_twos.low < 2 * twos.low && in_twos.high > 2 * twos.high);
    struct interval change = points_change(9, 15, 30, 15), few = points_change(9, 13, 14, 15);
    ck_assert(change.low > 0 && change.high < 3);
    ck_assert(few.low < 0 && few.high > 0);
    ck_assert_double_eq_tol(points_interval(40, 10).high, 3, 1e-12); /* more than is possible */
}
END_TEST

/* By simulation over every outcome: nine in ten intervals hold the true share, on average over
 * shares (Newcombe 1998, table II: the mean coverage of the score method is near its level). */
START_TEST(nine_in_ten_intervals_hold_the_true_share)
{
    enum { OF = 20, SHARES = 99 };
    double held = 0;
    for (int i = 1; i <= SHARES; i++) {
        double share = i / (SHARES + 1.0), likely = 1;
        for (int k = 0; k < OF; k++) {
            likely *= 1 - share; /* of none */
        }
        for (int made = 0; made <= OF; made++) {
            struct interval interval = share_interval(made, OF);
            held += interval.low <= share && share <= interval.high ? likely / SHARES : 0;
            likely *= (double)(OF - made) / (made + 1) * share / (1 - share);
        }
    }
    ck_assert_double_eq_tol(held, 0.9, 0.015);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("shares");
    TCase *tcase = tcase_create("shares");
    tcase_add_loop_test(tcase, shares_have_the_intervals_of_the_table, 0,
                        (int)(sizeof shares / sizeof *shares));
    tcase_add_loop_test(tcase, changes_have_the_intervals_of_the_table, 0,
                        (int)(sizeof changes / sizeof *changes));
    tcase_add_test(tcase, points_a_trip_are_as_wide_as_threes);
    tcase_add_test(tcase, nine_in_ten_intervals_hold_the_true_share);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
