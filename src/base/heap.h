/* SPDX-License-Identifier: MIT */
/* heap: where an arena's chunks come from unless its maker says otherwise. A book of a megabyte
 * fills some fifteen; the machine's first touch of each page of 4 kB, one by one, costs as much as
 * reading the book, and under a hypervisor many times that. So the pages of a small chunk are asked
 * for together, and a large one is asked for as one page, where the machine can. */
#ifndef BASE_HEAP_H
#define BASE_HEAP_H

#include <stddef.h>

/* Bytes of the largest chunk that is shared: one large page, where the machine has such. */
#ifdef __linux__
enum { HEAP_TOGETHER = 2 * 1024 * 1024 };
#else
enum { HEAP_TOGETHER = 512 * 1024 };
#endif

/* NULL: there is none. What it holds is not said. `ctx` is for struct memory: nothing. */
void *heap_take(void *ctx, size_t size);
void heap_give(void *ctx, void *block);

#endif
