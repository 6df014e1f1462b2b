/* SPDX-License-Identifier: MIT */
/* guard: by setjmp; WebAssembly has another (program/wasm/guard.c). */
#include "base/guard.h"

int guard(struct arena *arena, void (*work)(void *job), void *job)
{
    jmp_buf escape;
    jmp_buf *outer = arena->escape;
    int why = 0;
    arena->escape = &escape;
    switch (setjmp(escape)) {
    case 0:
        work(job);
        break;
    case ARENA_LIMIT:
        why = ARENA_LIMIT;
        break;
    default:
        why = ARENA_NO_MEMORY;
        break;
    }
    arena->escape = outer;
    return why;
}
