/* SPDX-License-Identifier: MIT */
/* heap: see heap.h. */
#define _DEFAULT_SOURCE /* madvise */
#include "base/heap.h"

#include <stdint.h>
#include <stdlib.h>
#ifdef __linux__
#include <sys/mman.h>
#endif

enum { PAGE = 4096, FEW = 16 }; /* bytes; pages that are not worth a call (ours) */

/* The whole pages of it; a machine that refuses gives them one by one, as before. */
static void touch_together(void *block, size_t size)
{
#ifdef MADV_POPULATE_WRITE
    uintptr_t at = (uintptr_t)block, first = (at + PAGE - 1) / PAGE * PAGE;
    uintptr_t behind = (at + size) / PAGE * PAGE;
    if (size <= HEAP_TOGETHER && behind > first && (behind - first) / PAGE >= FEW) {
        madvise((char *)block + (first - at), behind - first, MADV_POPULATE_WRITE);
    }
#else
    (void)block;
    (void)size;
#endif
}

void *heap_take(void *ctx, size_t size)
{
    (void)ctx;
    void *block = malloc(size);
    if (block) {
        touch_together(block, size);
    }
    return block;
}

void heap_give(void *ctx, void *block)
{
    (void)ctx;
    free(block);
}
