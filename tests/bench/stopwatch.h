/* SPDX-License-Identifier: MIT */
/* stopwatch: microseconds of this process, and the least of several rounds. */
#ifndef BENCH_STOPWATCH_H
#define BENCH_STOPWATCH_H

#include <time.h>

static inline double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return (double)time.tv_sec * 1e6 + (double)time.tv_nsec / 1e3;
}

/* What was spent since `begin`, where that is less than the figure; 0: there is none yet. */
static inline void least(double *figure, double begin)
{
    double spent = now() - begin;
    *figure = *figure == 0 || spent < *figure ? spent : *figure;
}

#endif
