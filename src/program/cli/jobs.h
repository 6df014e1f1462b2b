/* SPDX-License-Identifier: MIT */
/* jobs: work that is done by several threads at once. */
#ifndef PROGRAM_CLI_JOBS_H
#define PROGRAM_CLI_JOBS_H

#include <stddef.h>

/* As side_by_side of courtwright.h; ctx is an int: how many at once, 0: as many as the machine has
 * processors. A thread that cannot be had is done without. */
void jobs_side_by_side(void *ctx, size_t count, void (*job)(void *jobs, size_t i), void *jobs);

#endif
