/* SPDX-License-Identifier: MIT */
/* rate: see rate.h. */
#include "program/serve/rate.h"

enum { ONE = 1000 };

void rate_init(struct rate *rate, int burst, int a_second, int64_t now)
{
    *rate = (struct rate){burst, a_second, (int64_t)burst * ONE, now};
}

bool rate_takes(struct rate *rate, int64_t now)
{
    int64_t passed = now > rate->asked ? now - rate->asked : 0;
    int64_t full = rate->burst * ONE;
    int64_t to_full = (full - rate->left + rate->a_second - 1) / rate->a_second; /* ms */
    rate->left = passed >= to_full ? full : rate->left + passed * rate->a_second;
    rate->asked = now;
    if (rate->left < ONE) {
        return false;
    }
    rate->left -= ONE;
    return true;
}
