/* SPDX-License-Identifier: MIT */
/* arena: chunks of growing size in a list; large requests get a chunk of their own. */
#include "base/arena.h"

#include <assert.h>
#include <stdalign.h>
#include <stdint.h>
#include <string.h>

#include "base/heap.h"
#include "base/limits.h"

struct arena_chunk {
    struct arena_chunk *below;
    size_t room, used;
    alignas(max_align_t) unsigned char bytes[];
};

/* The largest is one whose pages come together, with its head. */
enum { CHUNK_FIRST = 16 * 1024, CHUNK_MOST = HEAP_TOGETHER - sizeof(struct arena_chunk) };

void arena_init(struct arena *arena, const struct memory *memory, jmp_buf *escape)
{
    *arena = (struct arena){.escape = escape, .limit = LIMIT_ARENA_BYTES};
    if (memory && memory->take) {
        arena->memory = *memory;
    } else {
        arena->memory = (struct memory){heap_take, heap_give, NULL};
    }
}

void arena_finish(struct arena *arena)
{
    struct arena_chunk *chunk = arena->top;
    while (chunk) {
        struct arena_chunk *below = chunk->below;
        arena->memory.give(arena->memory.ctx, chunk);
        chunk = below;
    }
    arena->top = NULL;
    arena->taken = 0;
}

struct arena_mark arena_mark(const struct arena *arena)
{
    return (struct arena_mark){arena->top, arena->top ? arena->top->used : 0, arena->taken};
}

void arena_release(struct arena *arena, struct arena_mark mark)
{
    while (arena->top != mark.top) {
        struct arena_chunk *chunk = arena->top;
        arena->top = chunk->below;
        arena->memory.give(arena->memory.ctx, chunk);
    }
    if (arena->top) {
        arena->top->used = mark.used;
    }
    arena->taken = mark.taken;
}

static _Noreturn void give_up(struct arena *arena, int why)
{
    /* Who makes an arena says where running out leads; there is no other way out of a library. */
    assert(arena->escape);
    longjmp(*arena->escape, why);
}

static struct arena_chunk *add_chunk(struct arena *arena, size_t least)
{
    size_t room = arena->top ? arena->top->room * 2 : CHUNK_FIRST;
    if (room > CHUNK_MOST) {
        room = CHUNK_MOST;
    }
    if (room < least) {
        room = least;
    }
    if (room > arena->limit || arena->taken > arena->limit - room) {
        give_up(arena, ARENA_LIMIT);
    }
    struct arena_chunk *chunk = arena->memory.take(arena->memory.ctx, sizeof *chunk + room);
    if (!chunk) {
        give_up(arena, ARENA_NO_MEMORY);
    }
    *chunk = (struct arena_chunk){.below = arena->top, .room = room};
    arena->top = chunk;
    arena->taken += room;
    return chunk;
}

static size_t rounded(struct arena *arena, size_t size)
{
    const size_t unit = alignof(max_align_t);
    if (size > SIZE_MAX / 2) {
        give_up(arena, ARENA_LIMIT);
    }
    return size ? (size + unit - 1) / unit * unit : unit;
}

void *arena_take(struct arena *arena, size_t size)
{
    size_t need = rounded(arena, size);
    struct arena_chunk *chunk = arena->top;
    if (!chunk || chunk->room - chunk->used < need) {
        chunk = add_chunk(arena, need);
    }
    void *block = chunk->bytes + chunk->used;
    chunk->used += need;
    memset(block, 0, need);
    return block;
}

void *arena_take_array(struct arena *arena, size_t count, size_t size)
{
    if (size && count > SIZE_MAX / 2 / size) {
        give_up(arena, ARENA_LIMIT);
    }
    return arena_take(arena, count * size);
}

/* What was taken last grows where it is, as long as its chunk has room. */
static bool grow_here(struct arena *arena, const void *old, size_t old_size, size_t new_size)
{
    struct arena_chunk *chunk = arena->top;
    size_t have = rounded(arena, old_size), need = rounded(arena, new_size);
    bool last = chunk && chunk->used >= have && old == chunk->bytes + chunk->used - have;
    if (old_size == 0 || !last || need < have || chunk->room - chunk->used < need - have) {
        return false;
    }
    memset(chunk->bytes + chunk->used, 0, need - have);
    chunk->used += need - have;
    return true;
}

void *arena_grow(struct arena *arena, void *old, size_t old_size, size_t new_size)
{
    if (grow_here(arena, old, old_size, new_size)) {
        return old;
    }
    void *block = arena_take(arena, new_size);
    if (old_size) {
        memcpy(block, old, old_size);
    }
    return block;
}

char *arena_copy(struct arena *arena, const char *bytes, size_t size)
{
    char *copy = arena_take(arena, size + 1);
    if (size) {
        memcpy(copy, bytes, size);
    }
    return copy;
}
