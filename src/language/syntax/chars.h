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
    uint32_t code;         /* ' ', '"', '\'', '-', '.' and '>' stand for all that mean them */
    uint32_t raw;          /* as written */
    unsigned size;         /* bytes, at least 1 */
    enum char_fault fault; /* HIDDEN: has no shape and may stand in quotes only */
};

struct letter letter_read_wide(const char *at, const char *end); /* of more than one byte, or odd */
/* The character at `at` < `end`. Nearly all are one byte that stands for itself. */
static inline struct letter letter_read(const char *at, const char *end)
{
    unsigned char first = (unsigned char)*at;
    if (first >= ' ' && first < 0x7F) {
        return (struct letter){first, first, 1, CHAR_FINE};
    }
    return letter_read_wide(at, end);
}
static inline bool letter_is_digit(struct letter letter)
{
    return letter.code >= '0' && letter.code <= '9';
}
static inline bool letter_is_letter(struct letter letter) /* of any script */
{
    uint32_t small = letter.code | 0x20;
    return (small >= 'a' && small <= 'z') || letter.code >= 0x80 || letter.fault == CHAR_CONTROL;
}
/* Lower case, odd apostrophes made plain; `s` itself where nothing changes. */
struct str text_lower(struct arena *arena, struct str s);
/* Broken bytes and control characters become `?`, blanks one space each; with `quoted` also \" and
 * \\ are undone. `s` itself where nothing changes. */
struct str text_clean(struct arena *arena, struct str s, bool quoted);
/* In quotation marks, with those inside it and the backslashes written so that they are read again.
 */
void text_quote(struct strbuf *out, struct str text);
/* Nothing, or spaces alone. */
bool text_is_blank(struct str text);
/* Whether each character is one byte that is seen, a blank, a tab or a line end: most texts are. */
bool text_is_plain(struct str s);
/* Whether these bytes are a text at all: no NUL, not mostly broken. */
bool text_is_text(struct str s);

#endif
