/* SPDX-License-Identifier: MIT */
/* guard: the one place where running out of memory, or past a limit, unwinds to. */
#ifndef BASE_GUARD_H
#define BASE_GUARD_H

#include "base/arena.h"

/* Runs work(job); when the arena gives up inside, comes back with ARENA_NO_MEMORY or ARENA_LIMIT,
 * else 0. */
int guard(struct arena *arena, void (*work)(void *job), void *job);

#endif
