/* SPDX-License-Identifier: MIT */
/* str: see str.h. */
#include "base/str.h"

#include <assert.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

bool str_starts(struct str a, const char *text)
{
    size_t i = 0;
    while (i < a.size && text[i] && a.at[i] == text[i]) {
        i++;
    }
    return !text[i];
}

int str_compare(struct str a, struct str b)
{
    size_t both = a.size < b.size ? a.size : b.size;
    int order = both ? memcmp(a.at, b.at, both) : 0;
    return order ? order : (a.size > b.size) - (a.size < b.size);
}

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

bool str_equal_fold(struct str a, struct str b)
{
    if (a.size != b.size) {
        return false;
    }
    for (size_t i = 0; i < a.size; i++) {
        if (lower(a.at[i]) != lower(b.at[i])) {
            return false;
        }
    }
    return true;
}

struct str str_copy(struct arena *arena, struct str s)
{
    return (struct str){arena_copy(arena, s.at, s.size), s.size};
}

/* Bytes of a mark that shows nothing but turns or joins what stands beside it (U+200B..U+200F,
 * U+2028..U+202F, U+2060..U+206F, U+FEFF) at `at`, 0 if none: a file's name must read as it is. */
static size_t unseen_mark(struct str s, size_t at)
{
    if (s.size - at < 3) {
        return 0;
    }
    const unsigned char *b = (const unsigned char *)s.at + at;
    bool general = b[0] == 0xE2 && b[1] == 0x80 &&
                   ((b[2] >= 0x8B && b[2] <= 0x8F) || (b[2] >= 0xA8 && b[2] <= 0xAF));
    bool joiner = b[0] == 0xE2 && b[1] == 0x81 && b[2] >= 0xA0 && b[2] <= 0xAF;
    bool order_mark = b[0] == 0xEF && b[1] == 0xBB && b[2] == 0xBF;
    return general || joiner || order_mark ? 3 : 0;
}

struct str str_slug(struct arena *arena, struct str s)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    bool gap = false;
    for (size_t i = 0; i < s.size; i++) {
        char c = lower(s.at[i]);
        bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (unsigned char)c >= 0x80;
        size_t unseen = unseen_mark(s, i);
        if (!letter || unseen) {
            gap = out.size > 0;
            i += unseen ? unseen - 1 : 0;
            continue;
        }
        if (gap) {
            strbuf_char(&out, '-');
            gap = false;
        }
        strbuf_char(&out, c);
    }
    return out.size ? strbuf_str(&out) : STR("play");
}

enum { DISTANCE_MOST = 32 };

static size_t least_of(size_t a, size_t b)
{
    return a < b ? a : b;
}

size_t str_distance(struct str a, struct str b, size_t most)
{
    size_t gap = a.size > b.size ? a.size - b.size : b.size - a.size;
    if (gap > most || a.size > DISTANCE_MOST || b.size > DISTANCE_MOST) {
        return most + 1;
    }
    /* three rows of the table: two letters that changed places look two rows up */
    size_t rows[3][DISTANCE_MOST + 1];
    for (size_t j = 0; j <= b.size; j++) {
        rows[0][j] = j;
    }
    size_t least = 0, least_above = 0;
    for (size_t i = 1; i <= a.size; i++) {
        size_t *row = rows[i % 3], *above = rows[(i + 2) % 3], *two_up = rows[(i + 1) % 3];
        row[0] = i;
        least_above = least;
        least = i;
        for (size_t j = 1; j <= b.size; j++) {
            row[j] = least_of(above[j - 1] + (a.at[i - 1] != b.at[j - 1]),
                              least_of(above[j], row[j - 1]) + 1);
            if (i > 1 && j > 1 && a.at[i - 1] == b.at[j - 2] && a.at[i - 2] == b.at[j - 1]) {
                row[j] = least_of(row[j], two_up[j - 2] + 1);
            }
            least = least_of(least, row[j]);
        }
        if (least > most && least_above > most) {
            return most + 1; /* it only grows */
        }
    }
    size_t distance = rows[a.size % 3][b.size];
    return distance > most ? most + 1 : distance;
}

void strbuf_init(struct strbuf *buf, struct arena *arena)
{
    *buf = (struct strbuf){.arena = arena, .at = arena_take(arena, 1), .room = 1};
}

static void reserve(struct strbuf *buf, size_t more)
{
    if (buf->room - buf->size > more) {
        return;
    }
    size_t room = buf->room < 64 ? 64 : buf->room * 2;
    while (room - buf->size <= more) {
        room *= 2;
    }
    buf->at = arena_grow(buf->arena, buf->at, buf->size, room);
    buf->room = room;
}

void strbuf_add(struct strbuf *buf, struct str s)
{
    if (s.size == 0) {
        return;
    }
    reserve(buf, s.size);
    memcpy(buf->at + buf->size, s.at, s.size);
    buf->size += s.size;
    buf->at[buf->size] = '\0';
}

void strbuf_text(struct strbuf *buf, const char *text)
{
    strbuf_add(buf, str_of(text));
}

void strbuf_char(struct strbuf *buf, char c)
{
    strbuf_add(buf, (struct str){&c, 1});
}

void strbuf_vprint(struct strbuf *buf, const char *format, va_list args)
{
    assert(format); /* also tells a sanitizing compiler so */
    va_list again;
    va_copy(again, args);
    int size = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (size <= 0) {
        return;
    }
    reserve(buf, (size_t)size);
    vsnprintf(buf->at + buf->size, (size_t)size + 1, format, args);
    buf->size += (size_t)size;
}

void strbuf_print(struct strbuf *buf, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    strbuf_vprint(buf, format, args);
    va_end(args);
}

static const double power_of_ten[] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

size_t number_print(char *out, double value, int decimals, bool keep_zeros)
{
    decimals = decimals < 0 ? 0 : decimals > 9 ? 9 : decimals;
    double scaled = fabs(value) * power_of_ten[decimals];
    uint64_t whole =
        scaled < 9e15 ? (uint64_t)floor(scaled + 0.5) : 0; /* also 0 for not a number */
    int places = decimals;
    while (!keep_zeros && places > 0 && whole % 10 == 0) {
        whole /= 10;
        places--;
    }
    bool minus = value < 0 && whole > 0;
    char digits[NUMBER_MOST];
    size_t count = 0;
    int written = 0;
    do {
        digits[count++] = (char)('0' + whole % 10);
        whole /= 10;
        if (++written == places) {
            digits[count++] = '.';
        }
    } while (whole > 0 || written <= places);
    if (minus) {
        digits[count++] = '-';
    }
    for (size_t i = 0; i < count; i++) {
        out[i] = digits[count - 1 - i];
    }
    return count;
}

void strbuf_number(struct strbuf *buf, double value, int decimals)
{
    char digits[NUMBER_MOST];
    strbuf_add(buf, (struct str){digits, number_print(digits, value, decimals, false)});
}

void strbuf_fixed(struct strbuf *buf, double value, int decimals)
{
    char digits[NUMBER_MOST];
    strbuf_add(buf, (struct str){digits, number_print(digits, value, decimals, true)});
}

struct str strbuf_str(const struct strbuf *buf)
{
    return (struct str){buf->at, buf->size};
}

struct str str_capital(struct arena *arena, struct str text)
{
    char first = text.size > 0 ? text.at[0] : ' ';
    bool small = first >= 'a' && first <= 'z';
    return small ? str_format(arena, "%c%.*s", first - 'a' + 'A', (int)text.size - 1, text.at + 1)
                 : text;
}

struct str str_format(struct arena *arena, const char *format, ...)
{
    struct strbuf buf;
    strbuf_init(&buf, arena);
    va_list args;
    va_start(args, format);
    strbuf_vprint(&buf, format, args);
    va_end(args);
    return strbuf_str(&buf);
}
