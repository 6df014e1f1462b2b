/* SPDX-License-Identifier: MIT */
/* unpack: the module's tables and texts lie packed in it (pack.py) and are written out to where the
 * code looks for them, once, as it starts. Reads none of them before; what it reads lies where the
 * stack ends, which is not that deep yet. */
#include "program/wasm/page.h"

#define PACKED 1024 /* the same in pack.py */

/* A count of 15 goes on in bytes, as long as they are 255. */
static size_t count_read(const unsigned char **at, unsigned nibble)
{
    size_t count = nibble;
    unsigned more = nibble == 15 ? 255 : 0;
    while (more == 255) {
        more = *(*at)++;
        count += more;
    }
    return count;
}

static const unsigned char *whole_read(const unsigned char *at, size_t *whole)
{
    *whole = (size_t)at[0] | (size_t)at[1] << 8 | (size_t)at[2] << 16 | (size_t)at[3] << 24;
    return at + 4;
}

/* Pieces: a byte with two counts, as many bytes as they are, and how far back the same stands that
 * comes next, in two bytes; none behind the last. */
void page_unpack(void)
{
    const unsigned char *at = (const unsigned char *)PACKED;
    size_t to, size;
    at = whole_read(at, &to);
    at = whole_read(at, &size);
    unsigned char *out = (unsigned char *)to, *end = out + size;
    while (out < end) {
        unsigned counts = *at++;
        for (size_t left = count_read(&at, counts >> 4); left > 0; left--) {
            *out++ = *at++;
        }
        if (out < end) {
            const unsigned char *from = out - ((size_t)at[0] | (size_t)at[1] << 8);
            at += 2;
            for (size_t left = count_read(&at, counts & 15) + 4; left > 0; left--) {
                *out++ = *from++;
            }
        }
    }
}
