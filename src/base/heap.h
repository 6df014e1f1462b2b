/* SPDX-License-Identifier: MIT */
/* heap: where an arena's chunks come from unless its maker says otherwise. A book of a megabyte
 * fills some thirty; in pages of 4 kB the machine's first touch of each costs as much as reading
 * the book. So what is HEAP_LARGE or more begins at a multiple of it, and large pages are asked
 * for: where the machine has none, nothing is lost. */
#ifndef BASE_HEAP_H
#define BASE_HEAP_H

#include <stddef.h>

enum {
    HEAP_LARGE = 2 * 1024 * 1024
}; /* bytes: a large page of x86-64, and of arm64 with pages of 4 kB */

/* NULL: there is none. What it holds is not said. `ctx` is for struct memory: nothing. */
void *heap_take(void *ctx, size_t size);
void heap_give(void *ctx, void *block);

#endif
