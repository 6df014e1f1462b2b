/* SPDX-License-Identifier: MIT */
/* heap: where an arena's chunks come from unless its maker says otherwise. A book of a megabyte
 * fills some fifty; the machine's first touch of each page of 4 kB, one by one, costs as much as
 * reading the book. So the pages of a chunk are asked for together, where the machine can: up to
 * HEAP_TOGETHER bytes, for of what is larger much may never be touched. */
#ifndef BASE_HEAP_H
#define BASE_HEAP_H

#include <stddef.h>

enum { HEAP_TOGETHER = 512 * 1024 }; /* bytes (ours) */

/* NULL: there is none. What it holds is not said. `ctx` is for struct memory: nothing. */
void *heap_take(void *ctx, size_t size);
void heap_give(void *ctx, void *block);

#endif
