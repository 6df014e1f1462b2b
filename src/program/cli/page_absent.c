/* SPDX-License-Identifier: MIT */
/* page_absent: what stands for the page in a program that was built without it. */
#include "program/cli/site.h"

const char *page_missing(void)
{
    return PAGE_MISSING; /* of meson.build */
}

const char *page_whole(size_t *size)
{
    *size = 0;
    return "";
}
