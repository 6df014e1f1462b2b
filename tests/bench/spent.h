/* SPDX-License-Identifier: MIT */
/* spent: what a piece of work costs of the processor's time, not of the wall's: others may be at
 * work beside it. */
#ifndef TESTS_BENCH_SPENT_H
#define TESTS_BENCH_SPENT_H

#include <time.h>

/* Seconds. */
static inline double now(void)
{
    return (double)clock() / CLOCKS_PER_SEC;
}

/* Microseconds since `begin`, the least of several rounds; 0 before the first. */
static inline void least(double *figure, double begin)
{
    double spent = (now() - begin) * 1e6;
    *figure = *figure == 0 || spent < *figure ? spent : *figure;
}

#endif
