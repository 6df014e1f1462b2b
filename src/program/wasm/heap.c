/* SPDX-License-Identifier: MIT */
/* heap: malloc, realloc and free, in the place of the C library's, which are ten times as large:
 * few blocks are taken here, most of them an arena's. What is free stands in one list, by address;
 * neighbors become one. Takes the memory behind what the linker put there, and asks for more. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { UNIT = 16, PAGE = 65536 }; /* bytes: what any type is aligned to; of WebAssembly's memory */

struct block {   /* what is handed out begins a UNIT behind it */
    size_t size; /* with this head; a multiple of UNIT */
    struct block *next;
};

extern unsigned char __heap_base; /* the linker's */
static struct block *spare;
static size_t taken_to; /* the end of the memory that has been put in the list or handed out */

static unsigned char *end_of(struct block *block)
{
    return (unsigned char *)block + block->size;
}

static void put_back(struct block *block)
{
    struct block **at = &spare, *before = NULL;
    while (*at && *at < block) {
        before = *at;
        at = &before->next;
    }
    block->next = *at;
    *at = block;
    if (block->next && end_of(block) == (unsigned char *)block->next) {
        block->size += block->next->size;
        block->next = block->next->next;
    }
    if (before && end_of(before) == (unsigned char *)block) {
        before->size += block->size;
        before->next = block->next;
    }
}

/* More memory into the list: at first what lies behind the module's own data. */
static int ask(size_t need)
{
    if (taken_to == 0) {
        taken_to = ((size_t)&__heap_base + UNIT - 1) / UNIT * UNIT;
    }
    size_t have = __builtin_wasm_memory_size(0) * PAGE;
    if (have - taken_to < need) {
        size_t pages = (need + PAGE - 1) / PAGE;
        if (__builtin_wasm_memory_grow(0, pages) == SIZE_MAX) {
            return 0;
        }
        have += pages * PAGE;
    }
    struct block *block = (struct block *)taken_to;
    block->size = have - taken_to;
    taken_to = have;
    put_back(block);
    return 1;
}

static struct block *first_of(size_t need)
{
    for (struct block **at = &spare; *at; at = &(*at)->next) {
        struct block *block = *at;
        if (block->size < need) {
            continue;
        }
        struct block *rest = block->next;
        if (block->size - need > UNIT) {
            rest = (struct block *)((unsigned char *)block + need);
            rest->size = block->size - need;
            rest->next = block->next;
            block->size = need;
        }
        *at = rest;
        return block;
    }
    return NULL;
}

void *malloc(size_t size)
{
    if (size > SIZE_MAX / 4) {
        return NULL;
    }
    size_t need = (size + UNIT + UNIT - 1) / UNIT * UNIT;
    struct block *block = first_of(need);
    if (!block && ask(need)) {
        block = first_of(need);
    }
    return block ? (unsigned char *)block + UNIT : NULL;
}

void free(void *given)
{
    if (given) {
        put_back((struct block *)((unsigned char *)given - UNIT));
    }
}

void *realloc(void *old, size_t size)
{
    void *more = malloc(size);
    if (more && old) {
        size_t had = ((struct block *)((unsigned char *)old - UNIT))->size - UNIT;
        memcpy(more, old, had < size ? had : size);
        free(old);
    }
    return more;
}
