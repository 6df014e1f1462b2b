/* SPDX-License-Identifier: MIT */
/* out: one growing piece of bytes; see out.h. */
#include "program/wasm/out.h"

#include <stdlib.h>
#include <string.h>

#include "program/wasm/page.h"

static struct {
    char *at;
    size_t size, room;
} out;

size_t page_out_at(void)
{
    return (size_t)out.at;
}

size_t page_out_size(void)
{
    return out.size;
}

void out_clear(void)
{
    out.size = 0;
}

void out_bytes(const char *bytes, size_t size)
{
    if (out.room - out.size < size) {
        size_t room = (out.room + size) * 2;
        char *grown = realloc(out.at, room);
        if (!grown) {
            __builtin_trap();
        }
        out.at = grown;
        out.room = room;
    }
    memcpy(out.at + out.size, bytes, size);
    out.size += size;
}

void out_text(const char *text)
{
    out_bytes(text, strlen(text));
}

/* Behind an opening bracket or a member's colon there is no comma. */
static void comma(void)
{
    char last = out.size > 0 ? out.at[out.size - 1] : '{';
    if (last != '{' && last != '[' && last != ':') {
        out_text(",");
    }
}

static void escaped(unsigned char c)
{
    static const char digits[] = "0123456789abcdef";
    char code[] = {'\\', 'u', '0', '0', digits[c >> 4], digits[c & 15]};
    out_bytes(code, sizeof code);
}

void out_string(const char *text)
{
    const char *from = text ? text : "", *at = from;
    comma();
    out_text("\"");
    for (; *at; at++) {
        unsigned char c = (unsigned char)*at;
        if (c >= ' ' && c != '"' && c != '\\') {
            continue;
        }
        out_bytes(from, (size_t)(at - from));
        escaped(c);
        from = at + 1;
    }
    out_bytes(from, (size_t)(at - from));
    out_text("\"");
}

void out_whole(long value)
{
    char digits[24], *at = digits + sizeof digits;
    unsigned long rest = value < 0 ? 0UL - (unsigned long)value : (unsigned long)value;
    do {
        *--at = (char)('0' + rest % 10);
        rest /= 10;
    } while (rest > 0);
    if (value < 0) {
        *--at = '-';
    }
    out_bytes(at, (size_t)(digits + sizeof digits - at));
}

void out_word(uint32_t value)
{
    char bytes[] = {(char)(value & 255), (char)(value >> 8 & 255), (char)(value >> 16 & 255),
                    (char)(value >> 24)};
    out_bytes(bytes, sizeof bytes);
}

void out_milliseconds(double seconds)
{
    out_whole((long)(seconds * 1000 + 0.5));
}

void out_member(const char *name)
{
    out_string(name);
    out_text(":");
}

void out_string_member(const char *name, const char *text)
{
    out_member(name);
    out_string(text);
}

void out_whole_member(const char *name, long value)
{
    out_member(name);
    out_whole(value);
}

void out_milliseconds_member(const char *name, double seconds)
{
    out_member(name);
    out_milliseconds(seconds);
}

void out_flag_member(const char *name, bool value)
{
    out_member(name);
    out_text(value ? "true" : "false");
}

void out_open(char bracket)
{
    comma();
    out_bytes(&bracket, 1);
}

void out_close(char bracket)
{
    out_bytes(&bracket, 1);
}
