/* SPDX-License-Identifier: MIT */
/* print: vsnprintf in the place of the C library's, which would ask the page for files: %s %c %d %i
 * %u %x %X with a width, leading zeros, a precision of strings, and the lengths l, ll, z. Anything
 * else stops the module: the core prints nothing else (numbers with a point have their own writer).
 */
#include <stdarg.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

struct piece {
    bool zeros;
    int width, most; /* most: of a string; -1: all of it */
    int longs;       /* 1: long, 2: long long, 3: size_t */
};

struct sink {
    char *at;
    size_t room, size;
};

static void put(struct sink *sink, const char *bytes, size_t size)
{
    for (size_t i = 0; i < size; i++, sink->size++) {
        if (sink->size + 1 < sink->room) {
            sink->at[sink->size] = bytes[i];
        }
    }
}

static void put_padded(struct sink *sink, const struct piece *piece, const char *bytes, size_t size)
{
    for (size_t i = size; i < (size_t)piece->width; i++) {
        put(sink, piece->zeros ? "0" : " ", 1);
    }
    put(sink, bytes, size);
}

static void put_whole(struct sink *sink, const struct piece *piece, uint64_t value, bool negative,
                      unsigned base, const char *digits)
{
    char text[24], *at = text + sizeof text;
    size_t least = piece->zeros && piece->width < 22 ? (size_t)piece->width - negative : 1;
    do {
        *--at = digits[value % base];
        value /= base;
    } while (value > 0 || (size_t)(text + sizeof text - at) < least);
    if (negative) {
        *--at = '-';
    }
    put_padded(sink, piece, at, (size_t)(text + sizeof text - at));
}

static int64_t taken(va_list *args, const struct piece *piece, bool is_signed)
{
    switch (piece->longs) {
    case 0:
        return is_signed ? (int64_t)va_arg(*args, int) : (int64_t)va_arg(*args, unsigned);
    case 2:
        return va_arg(*args, long long);
    default: /* long and size_t are alike here */
        return is_signed ? (int64_t)va_arg(*args, long) : (int64_t)va_arg(*args, unsigned long);
    }
}

static void put_string(struct sink *sink, const struct piece *piece, const char *text)
{
    const char *end = piece->most < 0 ? NULL : memchr(text, '\0', (size_t)piece->most);
    size_t size = end ? (size_t)(end - text) : piece->most < 0 ? strlen(text) : (size_t)piece->most;
    put_padded(sink, piece, text, size);
}

/* Behind the percent sign: gives what follows. */
static const char *piece_read(const char *at, struct piece *piece, va_list *args)
{
    *piece = (struct piece){.most = -1};
    for (; *at == '0'; at++) {
        piece->zeros = true;
    }
    for (; *at >= '0' && *at <= '9'; at++) {
        piece->width = piece->width * 10 + (*at - '0');
    }
    if (at[0] == '.' && at[1] == '*') {
        piece->most = va_arg(*args, int);
        at += 2;
    }
    for (; *at == 'l' || *at == 'z'; at++) {
        piece->longs += *at == 'l' ? 1 : 3;
    }
    return at;
}

static void put_piece(struct sink *sink, const struct piece *piece, char kind, va_list *args)
{
    switch (kind) {
    case '%':
        put(sink, "%", 1);
        break;
    case 's':
        put_string(sink, piece, va_arg(*args, const char *));
        break;
    case 'c': {
        char letter = (char)va_arg(*args, int);
        put_padded(sink, piece, &letter, 1);
        break;
    }
    case 'd':
    case 'i': {
        int64_t value = taken(args, piece, true);
        uint64_t size = value < 0 ? 0 - (uint64_t)value : (uint64_t)value;
        put_whole(sink, piece, size, value < 0, 10, "0123456789");
        break;
    }
    case 'u':
        put_whole(sink, piece, (uint64_t)taken(args, piece, false), false, 10, "0123456789");
        break;
    case 'x':
        put_whole(sink, piece, (uint64_t)taken(args, piece, false), false, 16, "0123456789abcdef");
        break;
    case 'X':
        put_whole(sink, piece, (uint64_t)taken(args, piece, false), false, 16, "0123456789ABCDEF");
        break;
    default:
        __builtin_trap();
    }
}

int vsnprintf(char *restrict at, size_t room, const char *restrict format, va_list args)
{
    struct sink sink = {at, room, 0};
    va_list rest;
    va_copy(rest, args);
    while (*format) {
        size_t plain = strcspn(format, "%");
        put(&sink, format, plain);
        format += plain;
        if (*format) {
            struct piece piece;
            format = piece_read(format + 1, &piece, &rest);
            put_piece(&sink, &piece, *format++, &rest);
        }
    }
    va_end(rest);
    if (room > 0) {
        at[sink.size < room ? sink.size : room - 1] = '\0';
    }
    return (int)sink.size;
}

int snprintf(char *restrict at, size_t room, const char *restrict format, ...)
{
    va_list args;
    va_start(args, format);
    int size = vsnprintf(at, room, format, args);
    va_end(args);
    return size;
}
