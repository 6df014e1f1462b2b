/* SPDX-License-Identifier: MIT */
/* share: how far a counted share can be trusted. Pure numbers. */
#ifndef FLOOR_SEASON_SHARE_H
#define FLOOR_SEASON_SHARE_H

#include <stdbool.h>

/* Shares are 0 to 1; a change -1 to 1. */
struct interval {
    double low, high;
};

/* The score interval of made in `of` > 0 at 90 % (E. B. Wilson, J. Am. Stat. Assoc. 22 (1927)
 * 209-212). */
struct interval share_interval(int made, int of);
/* Of the change from the first share to the second, by the intervals of both (R. G. Newcombe,
 * Statistics in Medicine 17 (1998) 873-890, method 10), at 90 %. */
struct interval share_change(int first_made, int first_of, int second_made, int second_of);

/* Of points a trip, and of their change, at 90 %. Only the sum is counted, so they are as wide as
 * they can be: of all that is worth 0 to 3 on a trip and has this mean, what is worth 0 or 3 varies
 * most (R. Bhatia, C. Davis, Am. Math. Monthly 107 (2000) 353-357), and that is a share of threes.
 */
struct interval points_interval(int points, int trips);
struct interval points_change(int first, int first_trips, int second, int second_trips);

/* The same at any level: `z` is the quantile of the normal distribution. For tests against tables.
 */
struct interval share_interval_at(double made, double of, double z);
struct interval share_change_at(double first_made, double first_of, double second_made,
                                double second_of, double z);

#endif
