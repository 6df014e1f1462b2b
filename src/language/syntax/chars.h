/* SPDX-License-Identifier: MIT */
/* chars: one character of a source at a time, with what phones and word processors change undone:
 * curly quotes, dashes, odd spaces. Knows UTF-8; nothing of words. */
#ifndef LANGUAGE_SYNTAX_CHARS_H
#define LANGUAGE_SYNTAX_CHARS_H

#include <stdbool.h>
#include <stdint.h>

#include "base/str.h"

enum char_fault { CHAR_FINE, CHAR_BROKEN, CHAR_CONTROL, CHAR_HIDDEN };
struct letter {
    uint32_t code;         /* ' ', '"', '\'', '-' and '.' stand for all that mean them */
    uint32_t raw;          /* as written */
    unsigned size;         /* bytes, at least 1 */
    enum char_fault fault; /* HIDDEN: has no shape and may stand in quotes only */
};

/* The character at `at` < `end`. */
struct letter letter_read(const char *at, const char *end);
bool letter_is_digit(struct letter letter);
bool letter_is_letter(struct letter letter); /* of any script */
/* Lower case, odd apostrophes made plain; `s` itself where nothing changes. */
struct str text_lower(struct arena *arena, struct str s);
/* Broken bytes and control characters become `?`, blanks one space each; with `quoted` also \" and
 * \\ are undone. `s` itself where nothing changes. */
struct str text_clean(struct arena *arena, struct str s, bool quoted);
/* Whether these bytes are a text at all: no NUL, not mostly broken. */
bool text_is_text(struct str s);

#endif
