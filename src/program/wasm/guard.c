/* SPDX-License-Identifier: MIT */
/* guard: unwinding without setjmp, in the place of program/api/guard.c and of the C library's
 * assert. The page lends two functions, all that the module asks of the world:
 *   guard(work, job, here): calls work(job), an index of the table of functions; gives 0, or what
 *     unwind was told for this `here`, with the stack as it was;
 *   unwind(here, why): throws that.
 * What traps (an assert, a full stack, no memory for the page's own bytes) ends the instance: the
 * page says so, starts another and loads the text again. */
#include "base/guard.h"

__attribute__((import_module("page"), import_name("guard"))) int
page_lends_guard(void (*work)(void *job), void *job, int *here);
__attribute__((import_module("page"), import_name("unwind"))) _Noreturn void
page_lends_unwind(int *here, int why);

_Noreturn void longjmp(jmp_buf here, int why)
{
    page_lends_unwind(here, why);
}

int guard(struct arena *arena, void (*work)(void *job), void *job)
{
    jmp_buf escape;
    jmp_buf *outer = arena->escape;
    arena->escape = &escape;
    int why = page_lends_guard(work, job, escape);
    arena->escape = outer;
    return why;
}

_Noreturn void __assert_fail(const char *what, const char *file, int line, const char *function);
_Noreturn void __assert_fail(const char *what, const char *file, int line, const char *function)
{
    (void)what, (void)file, (void)line, (void)function;
    __builtin_trap();
}
