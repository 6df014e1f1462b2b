/* SPDX-License-Identifier: MIT */
/* html: bytes of a page, with every text escaped. Private to web. */
#ifndef PAGE_WEB_HTML_H
#define PAGE_WEB_HTML_H

#include "base/writer.h"

struct html {
    struct arena *arena;
    struct writer *writer;
};
/* The format as it stands, but for
 *   %s  a struct str, escaped
 *   %m  the same, what stands between TELL_BOLD and TELL_PLAIN in <b>
 *   %d  an int
 *   %n  a double, at most two decimals */
void html_put(const struct html *html, const char *format, ...);
/* A double with so many decimals at most. */
void html_number(const struct html *html, double value, int decimals);

#endif
