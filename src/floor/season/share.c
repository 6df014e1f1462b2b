/* SPDX-License-Identifier: MIT */
/* share: see share.h. */
#include "floor/season/share.h"

#include <math.h>

#define Z_90                                                                                       \
    1.6448536269514722 /* 95th percentile of the normal distribution: 90 % between both            \
                        */

struct interval share_interval_at(double made, double of, double z)
{
    double n = of, x = made, p = x / n;
    double middle = (2 * x + z * z) / (2 * (n + z * z));
    double half = z * sqrt(z * z + 4 * x * (1 - p)) / (2 * (n + z * z));
    double low = middle - half, high = middle + half;
    return (struct interval){low > 0 ? low : 0, high < 1 ? high : 1};
}

struct interval share_change_at(double first_made, double first_of, double second_made,
                                double second_of, double z)
{
    struct interval first = share_interval_at(first_made, first_of, z);
    struct interval second = share_interval_at(second_made, second_of, z);
    double p = first_made / first_of, q = second_made / second_of;
    double down = sqrt((q - second.low) * (q - second.low) + (first.high - p) * (first.high - p));
    double up = sqrt((second.high - q) * (second.high - q) + (p - first.low) * (p - first.low));
    return (struct interval){q - p - down, q - p + up};
}

struct interval share_interval(int made, int of)
{
    return share_interval_at(made, of, Z_90);
}

struct interval share_change(int first_made, int first_of, int second_made, int second_of)
{
    return share_change_at(first_made, first_of, second_made, second_of, Z_90);
}

#define MOST_A_TRIP 3.0 /* points; who is fouled on a three may have four, which is rare */

/* As a count of threes. */
static double threes(int points, int trips)
{
    double count = points / MOST_A_TRIP;
    return count < trips ? count : trips;
}

static struct interval in_points(struct interval share)
{
    return (struct interval){MOST_A_TRIP * share.low, MOST_A_TRIP * share.high};
}

struct interval points_interval(int points, int trips)
{
    return in_points(share_interval_at(threes(points, trips), trips, Z_90));
}

struct interval points_change(int first, int first_trips, int second, int second_trips)
{
    return in_points(share_change_at(threes(first, first_trips), first_trips,
                                     threes(second, second_trips), second_trips, Z_90));
}
