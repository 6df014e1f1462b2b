/* SPDX-License-Identifier: MIT */
#include "table.h"

#include <stdio.h>
#include <stdlib.h>

void numbers_add(struct numbers *numbers, double number)
{
    if (numbers->count == numbers->room) {
        numbers->room = numbers->room * 2 + 64;
        numbers->at = realloc(numbers->at, numbers->room * sizeof *numbers->at);
        if (!numbers->at) {
            abort();
        }
    }
    numbers->at[numbers->count++] = number;
}

static int compare(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

double numbers_share(struct numbers *numbers, double share)
{
    if (!numbers->count) {
        return 0;
    }
    qsort(numbers->at, numbers->count, sizeof *numbers->at, compare);
    return numbers->at[(size_t)((double)(numbers->count - 1) * share)];
}

void numbers_print(const char *name, struct numbers *numbers)
{
    if (numbers->count) {
        printf("# %-34s %7zu of them %9.2f %9.2f %9.2f\n", name, numbers->count,
               numbers_share(numbers, .5), numbers_share(numbers, .9), numbers_share(numbers, 1));
    }
}
