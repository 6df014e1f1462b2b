/* SPDX-License-Identifier: MIT */
/* breaks: where a text may go on in the next line. Private to text. */
#ifndef PICTURE_TEXT_BREAKS_H
#define PICTURE_TEXT_BREAKS_H

#include <stdint.h>

#include "base/arena.h"

/* Once before any breaks_find: libunibreak makes an index of its tables. Any number of threads. */
void breaks_prepare(void);

enum break_kind { BREAK_NEVER, BREAK_ALLOWED, BREAK_MUST };
/* For each letter whether a line may or must end behind it. By Unicode's rules (UAX 14), and by
 * what coaches' sheets need: a number stays with its unit ("4.5 s", "12 ft"), a step with its
 * number. */
unsigned char *breaks_find(struct arena *arena, const uint32_t *letters, size_t count);

#endif
