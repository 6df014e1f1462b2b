/* SPDX-License-Identifier: MIT */
/* writer: where bytes go. A failed write is remembered; further ones do nothing. */
#ifndef BASE_WRITER_H
#define BASE_WRITER_H

#include <stdbool.h>
#include <stddef.h>

#include "base/str.h"

struct writer {
    bool (*write)(void *ctx, const char *bytes, size_t size);
    void *ctx;
    bool failed;
};

void writer_bytes(struct writer *writer, const char *bytes, size_t size);
void writer_str(struct writer *writer, struct str s);
void writer_text(struct writer *writer, const char *text);
void writer_number(struct writer *writer, double value, int decimals); /* as strbuf_number */

#endif
