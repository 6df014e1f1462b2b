/* SPDX-License-Identifier: MIT */
/* arena: memory that is taken piece by piece and given back all at once.
 *
 * One arena serves one compilation (or one render call). Running out of memory, or past the limit,
 * jumps to `escape`; that is allowed only while nothing but arenas is held. Not thread-safe. */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <setjmp.h>
#include <stdbool.h>
#include <stddef.h>

/* Where chunks come from; NULL functions mean malloc and free. `take` may return NULL. */
struct memory {
    void *(*take)(void *ctx, size_t size);
    void (*give)(void *ctx, void *block);
    void *ctx;
};

struct arena_chunk;
struct arena {
    struct arena_chunk *top;
    struct memory memory;
    jmp_buf *escape; /* where a failed allocation jumps to, with value ARENA_NO_MEMORY or _LIMIT */
    size_t taken;    /* bytes taken from `memory` so far */
    size_t limit;    /* most bytes that may be taken; 0: LIMIT_ARENA_BYTES */
};

enum { ARENA_NO_MEMORY = 1, ARENA_LIMIT = 2 };

void arena_init(struct arena *arena, const struct memory *memory, jmp_buf *escape);
void arena_finish(struct arena *arena);

/* What was taken since the mark is given back; for work that is tried many times over. */
struct arena_mark {
    struct arena_chunk *top;
    size_t used, taken;
};
struct arena_mark arena_mark(const struct arena *arena);
void arena_release(struct arena *arena, struct arena_mark mark);

/* Zeroed memory, aligned for any type. Never NULL. */
void *arena_take(struct arena *arena, size_t size);
/* `count` zeroed elements; the product is checked. */
void *arena_take_array(struct arena *arena, size_t count, size_t size);
/* `old` (of `old_size` bytes; NULL: none) with room for `new_size`, zeroed behind what it held:
 * where it is when nothing was taken since, else a copy (and `old` stays as it is until the arena
 * goes). */
void *arena_grow(struct arena *arena, void *old, size_t old_size, size_t new_size);
char *arena_copy(struct arena *arena, const char *bytes, size_t size); /* adds a NUL */

#define arena_new(arena, type) ((type *)arena_take((arena), sizeof(type)))
#define arena_array(arena, type, count) ((type *)arena_take_array((arena), (count), sizeof(type)))

#endif
