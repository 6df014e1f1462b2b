/* SPDX-License-Identifier: MIT */
/* real: the few functions of real numbers that must give the same bits on every machine. They are
 * made of + - * / and sqrt alone, exact to better than 1e-12 (relative for real_exp). */
#ifndef BASE_REAL_H
#define BASE_REAL_H

#include <math.h>

#define REAL_PI 3.14159265358979323846
#define FEET 0.3048 /* metres in a foot, exactly (international foot of 1959) */

double real_exp(double x);
double real_log(double x);
double real_sin(double x); /* radians, |x| up to 1e6 */
double real_cos(double x);
double real_atan2(double y, double x); /* (-pi, pi]; 0 for (0, 0) */
double real_acos(double x);            /* x is brought into [-1, 1] first */
double real_hypot(double x, double y);

/* The small ones are open to the compiler: the clock calls them a few thousand times a second of
 * play. */
static inline double real_sqrt(double x) /* 0 for x < 0 */
{
    return x > 0 ? sqrt(x) : 0;
}

static inline double real_clamp(double x, double low, double high)
{
    return x < low ? low : x > high ? high : x;
}

static inline double real_min(double a, double b)
{
    return a < b ? a : b;
}

static inline double real_max(double a, double b)
{
    return a > b ? a : b;
}

/* In how many equal pieces `seconds` are run so that there are at least `rate` of them a second: a
 * time that is whole pieces but for rounding (a millionth of one) is not cut once more. */
static inline int real_pieces(double seconds, double rate)
{
    return (int)(seconds * rate - 1e-6) + 1;
}

static inline double real_mix(double a, double b, double t) /* a at t = 0, b at t = 1 */
{
    return t == 1 ? b : a + (b - a) * t;
}

static inline double real_smooth(double x, double low, double high) /* 3t^2 - 2t^3 between */
{
    if (!(high > low)) {
        return x < low ? 0 : 1;
    }
    double t = real_clamp((x - low) / (high - low), 0, 1);
    return t * t * (3 - 2 * t);
}

#endif
