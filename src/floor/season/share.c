/* SPDX-License-Identifier: MIT */
/* share: see share.h. */
#include "floor/season/share.h"

#include <math.h>

#define Z_90                                                                                       \
    1.6448536269514722 /* 95th percentile of the normal distribution: 90 % between both            \
                        */

struct interval share_interval_at(int made, int of, double z)
{
    double n = of, x = made, p = x / n;
    double middle = (2 * x + z * z) / (2 * (n + z * z));
    double half = z * sqrt(z * z + 4 * x * (1 - p)) / (2 * (n + z * z));
    double low = middle - half, high = middle + half;
    return (struct interval){low > 0 ? low : 0, high < 1 ? high : 1};
}

struct interval share_change_at(int first_made, int first_of, int second_made, int second_of,
                                double z)
{
    struct interval first = share_interval_at(first_made, first_of, z);
    struct interval second = share_interval_at(second_made, second_of, z);
    double p = (double)first_made / first_of, q = (double)second_made / second_of;
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
