/* SPDX-License-Identifier: MIT */
/* rate: how often something may happen: so many at once, then so many a second. Takes the time. */
#ifndef PROGRAM_SERVE_RATE_H
#define PROGRAM_SERVE_RATE_H

#include <stdbool.h>
#include <stdint.h>

struct rate {
    int64_t burst, a_second;
    int64_t left;  /* thousandths of one */
    int64_t asked; /* ms */
};

void rate_init(struct rate *rate, int burst, int a_second, int64_t now);
bool rate_takes(struct rate *rate, int64_t now); /* one more; false: not yet */

#endif
