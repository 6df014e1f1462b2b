/* SPDX-License-Identifier: MIT */
/* out: what a call hands to the page: one growing piece of bytes, mostly JSON. Knows the heap only;
 * when that runs out the module stops (guard.c), and the page starts a new one. */
#ifndef PROGRAM_WASM_OUT_H
#define PROGRAM_WASM_OUT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

void out_clear(void);
void out_bytes(const char *bytes, size_t size);
void out_text(const char *text);
/* "quoted", escaped, a comma before it where one is due; NULL counts as empty. */
void out_string(const char *text);
void out_whole(long value);
void out_word(uint32_t value); /* four bytes, the lowest first */
/* Milliseconds from seconds, to the nearest. */
void out_milliseconds(double seconds);

/* `"name":` before a member; a comma before it unless it opens its object. */
void out_member(const char *name);
void out_string_member(const char *name, const char *text);
void out_whole_member(const char *name, long value);
void out_milliseconds_member(const char *name, double seconds);
void out_flag_member(const char *name, bool value);
void out_open(char bracket);  /* { or [; a comma before it where one is due */
void out_close(char bracket); /* } or ] */

#endif
