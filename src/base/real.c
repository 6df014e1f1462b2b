/* SPDX-License-Identifier: MIT */
/* real: elementary functions from + - * / and sqrt, so that no two machines differ by a bit. The
 * argument is brought into a small range, where a short power series is exact to the last places.
 * Takes and gives plain doubles; knows nothing of the floor. */
#include "base/real.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

/* Each constant is split so that the product of its high part with a count is exact. */
#define LN2_HIGH 0x1.62e42fefp-1
#define LN2_LOW 0x1.473de6af278edp-34
#define HALF_PI_HIGH 0x1.921fb544p+0
#define HALF_PI_MIDDLE 0x1.0b4611a6p-34
#define HALF_PI_LOW 0x1.3198a2e037073p-69

static double power_of_two(int exponent) /* -1022 .. 1023 */
{
    uint64_t bits = (uint64_t)(exponent + 1023) << 52;
    double value;
    memcpy(&value, &bits, sizeof value);
    return value;
}

double real_exp(double x)
{
    if (!(x > -745.2)) {
        return x != x ? x : 0;
    }
    if (x > 709.7) {
        return (double)INFINITY;
    }
    double count = floor(x / (LN2_HIGH + LN2_LOW) + 0.5);
    double r = (x - count * LN2_HIGH) - count * LN2_LOW;
    double sum = 1;
    for (int n = 14; n > 0; n--) {
        sum = 1 + sum * r / n;
    }
    int exponent = (int)count;
    int half = exponent / 2; /* in two steps: 2^1024 and 2^-1075 are no numbers */
    return sum * power_of_two(half) * power_of_two(exponent - half);
}

double real_log(double x)
{
    if (!(x > 0)) {
        return x == 0 ? -(double)INFINITY : (double)NAN;
    }
    if (x > 1.7e308) {
        return x == (double)INFINITY ? x : real_log(x / 2) + (LN2_HIGH + LN2_LOW);
    }
    int exponent = 0;
    if (x < 0x1p-1022) {
        x *= 0x1p54;
        exponent = -54;
    }
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    exponent += (int)(bits >> 52) - 1023;
    double part = x * power_of_two(-((int)(bits >> 52) - 1023)); /* [1, 2) */
    if (part > 1.4142135623730951) {
        part /= 2;
        exponent++;
    }
    double s = (part - 1) / (part + 1), square = s * s, sum = 0;
    for (int n = 25; n > 0; n -= 2) {
        sum = 1.0 / n + sum * square;
    }
    return (2 * s * sum + exponent * LN2_LOW) + exponent * LN2_HIGH;
}

static double sin_small(double r)
{
    double square = r * r, sum = 1;
    for (int n = 19; n > 1; n -= 2) {
        sum = 1 - sum * square / (n * (n - 1));
    }
    return r * sum;
}

static double cos_small(double r)
{
    double square = r * r, sum = 1;
    for (int n = 20; n > 0; n -= 2) {
        sum = 1 - sum * square / (n * (n - 1));
    }
    return sum;
}

/* Sine of x plus `quarters` quarter turns. */
static double sin_turned(double x, int quarters)
{
    if (!(x >= -1e9 && x <= 1e9)) {
        return (double)NAN;
    }
    double count = floor(x / (HALF_PI_HIGH + HALF_PI_MIDDLE) + 0.5);
    double r = ((x - count * HALF_PI_HIGH) - count * HALF_PI_MIDDLE) - count * HALF_PI_LOW;
    switch (((int64_t)count + quarters) & 3) {
    case 0:
        return sin_small(r);
    case 1:
        return cos_small(r);
    case 2:
        return -sin_small(r);
    default:
        return -cos_small(r);
    }
}

double real_sin(double x)
{
    return sin_turned(x, 0);
}

double real_cos(double x)
{
    return sin_turned(x, 1);
}

/* For 0 <= t <= 1: from the nearest quarter whose arc is known. */
static double atan_part(double t)
{
    static const double known[5] = {0, 0x1.f5b75f92c80ddp-3, 0x1.dac670561bb4fp-2,
                                    0x1.4978fa3269ee1p-1, 0x1.921fb54442d18p-1};
    int quarter = (int)floor(t * 4 + 0.5);
    double base = quarter * 0.25;
    double z = (t - base) / (1 + t * base), square = z * z, sum = 0;
    for (int n = 19; n > 0; n -= 2) {
        sum = 1.0 / n - sum * square;
    }
    return known[quarter] + z * sum;
}

double real_atan2(double y, double x)
{
    if (x != x || y != y || (x == 0 && y == 0)) {
        return 0;
    }
    double width = fabs(x), height = fabs(y);
    double angle =
        height <= width ? atan_part(height / width) : REAL_PI / 2 - atan_part(width / height);
    if (x < 0) {
        angle = REAL_PI - angle;
    }
    return y < 0 ? -angle : angle;
}

double real_acos(double x)
{
    x = real_clamp(x, -1, 1);
    return real_atan2(sqrt((1 - x) * (1 + x)), x);
}

double real_hypot(double x, double y)
{
    double large = fabs(x), small = fabs(y);
    if (large < small) {
        double swap = large;
        large = small;
        small = swap;
    }
    if (large == 0) {
        return 0;
    }
    double share = small / large;
    return large * sqrt(1 + share * share);
}
