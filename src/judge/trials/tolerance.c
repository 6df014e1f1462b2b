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
    return a->trouble == b->trouble && a->task == b->task;
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
            tolerance->task = trials[i].task;
            tolerance->times = times;
        }
    }
    int most = 0;
    struct trial worst = {.trouble = tolerance->trouble, .task = tolerance->task};
    for (int b = 0; b < BODY_COUNT; b++) {
        int times = 0;
        for (int i = 0; i < count; i++) {
            times += is_same(&trials[i], &worst) && trials[i].by == b;
        }
        if (times > most) {
            most = times;
            tolerance->by = (body)b;
        }
    }
}

struct tolerance tolerance_of(struct arena *arena, const struct segment *segment,
                              const struct trial *trials, int count)
{
    struct tolerance tolerance = {
        .runs = count, .tightest = -1, .spare = TRIAL_FREE, .task = -1, .by = BODY_NONE};
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
