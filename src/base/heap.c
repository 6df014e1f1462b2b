/* SPDX-License-Identifier: MIT */
/* heap: see heap.h. */
#define _DEFAULT_SOURCE /* madvise, posix_memalign */
#include "base/heap.h"

#include <stdint.h>
#include <stdlib.h>
#ifdef __linux__
#include <sys/mman.h>
#endif

#ifdef MADV_POPULATE_WRITE
enum { PAGE = 4096, FEW = 16 }; /* bytes; pages that are not worth a call (ours) */

/* The whole pages of it; a machine that refuses gives them one by one, as before. */
static void touch_together(void *block, size_t size)
{
    uintptr_t at = (uintptr_t)block, first = (at + PAGE - 1) / PAGE * PAGE;
    uintptr_t behind = (at + size) / PAGE * PAGE;
    if (behind > first && (behind - first) / PAGE >= FEW) {
        madvise((char *)block + (first - at), behind - first, MADV_POPULATE_WRITE);
    }
}

/* Large pages, where it fills some; NULL: it does not, or the machine has none of that. */
static void *take_large(size_t size)
{
    void *block = NULL;
    if (size < HEAP_TOGETHER || posix_memalign(&block, HEAP_TOGETHER, size) != 0) {
        return NULL;
    }
    if (madvise(block, size / HEAP_TOGETHER * HEAP_TOGETHER, MADV_HUGEPAGE) == 0) {
        return block;
    }
    free(block);
    return NULL;
}

void *heap_take(void *ctx, size_t size)
{
    (void)ctx;
    void *block = take_large(size);
    if (!block && (block = malloc(size)) && size <= HEAP_TOGETHER) {
        touch_together(block, size); /* of what is larger much may never be touched */
    }
    return block;
}
#else
void *heap_take(void *ctx, size_t size)
{
    (void)ctx;
    return malloc(size);
}
#endif

void heap_give(void *ctx, void *block)
{
    (void)ctx;
    free(block);
}
