/* SPDX-License-Identifier: MIT */
/* writer: see writer.h. */
#include "base/writer.h"

void writer_bytes(struct writer *writer, const char *bytes, size_t size)
{
    if (!writer->failed && size > 0 && !writer->write(writer->ctx, bytes, size)) {
        writer->failed = true;
    }
}

void writer_str(struct writer *writer, struct str s)
{
    writer_bytes(writer, s.at, s.size);
}

void writer_text(struct writer *writer, const char *text)
{
    writer_str(writer, str_of(text));
}

void writer_number(struct writer *writer, double value, int decimals)
{
    char digits[NUMBER_MOST];
    writer_bytes(writer, digits, number_print(digits, value, decimals, false));
}
