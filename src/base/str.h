/* SPDX-License-Identifier: MIT */
/* str: pieces of text (pointer and length, not owned, not NUL-terminated), and a text that grows in
 * an arena. Numbers are printed by our own writer, never by the locale's. */
#ifndef BASE_STR_H
#define BASE_STR_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "base/arena.h"

struct str {
    const char *at;
    size_t size;
};

#define STR(literal) ((struct str){(literal), sizeof(literal) - 1})
#define STR_ARG(s) (int)(s).size, (s).at /* for "%.*s" */

/* NULL gives an empty piece. */
static inline struct str str_of(const char *text)
{
    return text ? (struct str){text, strlen(text)} : (struct str){"", 0};
}
static inline bool str_equal(struct str a, struct str b)
{
    return a.size == b.size && (a.size == 0 || memcmp(a.at, b.at, a.size) == 0);
}
static inline bool str_is(struct str a, const char *text)
{
    return str_equal(a, str_of(text));
}
bool str_starts(struct str a, const char *text);
int str_compare(struct str a, struct str b);            /* by bytes */
bool str_equal_fold(struct str a, struct str b);        /* ASCII capitals do not matter */
struct str str_copy(struct arena *arena, struct str s); /* the copy has a NUL behind it */
/* Words brought to lower case with runs of anything else as one hyphen: "Down 2!" -> "down-2".
 * Letters outside ASCII are kept. For file names. Empty input gives "play". */
struct str str_slug(struct arena *arena, struct str s);
/* Number of single-letter insertions, removals and changes, and of neighbors that changed places,
 * between two words; more than `most`: `most` + 1. */
size_t str_distance(struct str a, struct str b, size_t most);

struct strbuf {
    struct arena *arena;
    char *at;
    size_t size, room;
};

void strbuf_init(struct strbuf *buf, struct arena *arena);
void strbuf_add(struct strbuf *buf, struct str s);
void strbuf_text(struct strbuf *buf, const char *text);
void strbuf_char(struct strbuf *buf, char c);
/* printf for integers, characters and text only: no %f (see strbuf_number). */
void strbuf_print(struct strbuf *buf, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
void strbuf_vprint(struct strbuf *buf, const char *format, va_list args);
/* The shortest decimal form with at most `decimals` (0..9) places, rounded half away from zero;
 * no trailing zeros, never "-0". Infinite or not a number prints "0". */
void strbuf_number(struct strbuf *buf, double value, int decimals);
/* As above but always with all `decimals` places. */
void strbuf_fixed(struct strbuf *buf, double value, int decimals);
/* As strbuf_number into a buffer of at least NUMBER_MOST bytes; returns the length. */
enum { NUMBER_MOST = 40 };
size_t number_print(char *out, double value, int decimals, bool keep_zeros);
struct str strbuf_str(const struct strbuf *buf);
/* "quick hitter" -> "Quick hitter": its first letter, where that is one of a to z. */
struct str str_capital(struct arena *arena, struct str text);
struct str str_format(struct arena *arena, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

#endif
