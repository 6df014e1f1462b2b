/* SPDX-License-Identifier: MIT */
/* heap: see heap.h. */
#define _DEFAULT_SOURCE /* madvise */
#include "base/heap.h"

#include <stdlib.h>
#ifdef __linux__
#include <sys/mman.h>
#endif

#ifdef MADV_HUGEPAGE
/* Whole large pages of it are asked for, and the rest is left as it is: nothing behind it is
 * touched. */
static void *take_large(size_t size)
{
    void *block = NULL;
    if (posix_memalign(&block, HEAP_LARGE, size) != 0) {
        return NULL;
    }
    madvise(block, size / HEAP_LARGE * HEAP_LARGE,
            MADV_HUGEPAGE); /* refused: small ones, as before */
    return block;
}
#endif

void *heap_take(void *ctx, size_t size)
{
    (void)ctx;
#ifdef MADV_HUGEPAGE
    if (size >= HEAP_LARGE) {
        return take_large(size);
    }
#endif
    return malloc(size);
}

void heap_give(void *ctx, void *block)
{
    (void)ctx;
    free(block);
}
