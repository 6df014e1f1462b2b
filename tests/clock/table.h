/* SPDX-License-Identifier: MIT */
/* table: measured numbers and their shares, for the programs that print a table of them. */
#ifndef TESTS_CLOCK_TABLE_H
#define TESTS_CLOCK_TABLE_H

#include <stddef.h>

struct numbers {
    double *at;
    size_t count, room;
};

void numbers_add(struct numbers *numbers, double number);
double numbers_share(struct numbers *numbers, double share);   /* .5: the median; of none 0 */
void numbers_print(const char *name, struct numbers *numbers); /* a comment of TAP */

#endif
