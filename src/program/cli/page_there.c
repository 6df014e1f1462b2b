/* SPDX-License-Identifier: MIT */
/* page_there: the page, taken into the program byte for byte (page_bytes.S, made by page_bytes.py).
 */
#include "program/cli/site.h"

extern const char page_bytes_begin[], page_bytes_end[];

const char *page_missing(void)
{
    return NULL;
}

const char *page_whole(size_t *size)
{
    *size = (size_t)(page_bytes_end - page_bytes_begin);
    return page_bytes_begin;
}
