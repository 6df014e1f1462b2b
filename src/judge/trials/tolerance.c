/* SPDX-License-Identifier: MIT */
/* tolerance: many trials of one segment summed up. The order in which they were run is no matter.
 */
#include "judge/trials/trials.h"

#include <stdlib.h>

static int by_size(const void *left, const void *right)
{
    const double *a = left, *b = right;
    return (*a > *b) - (*a < *b);
}

/* What the task has to spare in the middle one of the trials. */
static double middle_spare(double *sorted, const struct trial *trials, int count, size_t task)
{
    for (int i = 0; i < count; i++) {
        sorted[i] = trials[i].spare[task];
    }
    qsort(sorted, (size_t)count, sizeof *sorted, by_size);
    return sorted[(count - 1) / 2];
}

static bool is_same(const struct trial *a, const struct trial *b)
{
    return a->trouble == b->trouble && a->check == b->check && a->task == b->task;
}

/* By whom it was most of these times; of two as often by who is met first. */
static void find_by_whom(const struct trial *trials, int count, struct tolerance *tolerance)
{
    struct trial worst = {
        .trouble = tolerance->trouble, .task = tolerance->task, .check = tolerance->check};
    int most = 0;
    for (int i = 0; i < count; i++) {
        int times = 0;
        for (int k = 0; k < count; k++) {
            times += is_same(&trials[k], &worst) && trials[k].by == trials[i].by;
        }
        if (is_same(&trials[i], &worst) && times > most) {
            most = times;
            tolerance->by = trials[i].by;
            tolerance->example = i;
        }
    }
}

/* The trouble met most often; of two as frequent the one met in an earlier trial. */
static void find_worst(const struct trial *trials, int count, struct tolerance *tolerance)
{
    for (int i = 0; i < count; i++) {
        int times = 0;
        for (int k = 0; k < count; k++) {
            times += is_same(&trials[i], &trials[k]);
        }
        if (trials[i].trouble != TRIAL_WORKS && times > tolerance->times) {
            tolerance->trouble = trials[i].trouble;
            tolerance->check = trials[i].check;
            tolerance->task = trials[i].task;
            tolerance->times = times;
        }
    }
    find_by_whom(trials, count, tolerance);
}

struct tolerance tolerance_of(struct arena *arena, const struct segment *segment,
                              const struct trial *trials, int count)
{
    struct tolerance tolerance = {.runs = count,
                                  .tightest = -1,
                                  .spare = TRIAL_FREE,
                                  .task = -1,
                                  .by = BODY_NONE,
                                  .example = -1};
    double *sorted = arena_array(arena, double, (size_t)count + 1);
    for (int i = 0; i < count; i++) {
        tolerance.works += trials[i].trouble == TRIAL_WORKS;
    }
    for (size_t task = 0; count > 0 && task < segment->tasks; task++) {
        double spare = middle_spare(sorted, trials, count, task);
        if (spare < tolerance.spare) {
            tolerance.spare = spare;
            tolerance.tightest = (int)task;
        }
    }
    if (tolerance.works < count) {
        find_worst(trials, count, &tolerance);
    }
    return tolerance;
}
