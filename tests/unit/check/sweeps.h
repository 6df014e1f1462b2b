/* SPDX-License-Identifier: MIT */
/* sweeps: amounts moved through the limits of the checks on runs made by hand. */
#ifndef TESTS_UNIT_CHECK_SWEEPS_H
#define TESTS_UNIT_CHECK_SWEEPS_H

#include "made.h"

struct sweep {
    const char *id, *what;
    struct made *(*of)(double amount);
    double from, to, step; /* amounts, and */
    double border;         /* where it flips: the limit with what the check forgives */
    bool below;            /* told under it; else over it */
};
extern const struct sweep sweeps_more[];
extern const size_t sweeps_more_count;
/* Everybody of a five-out stands where he starts and 1 has the ball. */
struct made *sweep_standing(double seconds);

#endif
