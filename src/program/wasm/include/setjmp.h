/* SPDX-License-Identifier: MIT */
/* setjmp, as far as WebAssembly can have it: the way back is an exception of the page's own, thrown
 * by what it lends as `unwind` and caught by what it lends as `guard`; see ../guard.c. */
#ifndef COURTWRIGHT_WASM_SETJMP_H
#define COURTWRIGHT_WASM_SETJMP_H

typedef int jmp_buf[1];

_Noreturn void longjmp(jmp_buf here, int why);

#endif
