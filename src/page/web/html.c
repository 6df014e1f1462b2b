/* SPDX-License-Identifier: MIT */
/* html: see html.h. Takes formats of our own and texts of anybody's; must not know plays. */
#include "page/web/html.h"

#include <assert.h>
#include <stdarg.h>

#include "language/tell/tell.h"
#include "picture/svg/svg.h"

void html_number(const struct html *html, double value, int decimals)
{
    writer_number(html->writer, value, decimals);
}

static void put_marked(const struct html *html, struct str text)
{
    size_t begin = 0;
    bool bold = false;
    for (size_t i = 0; i <= text.size; i++) {
        bool mark = i < text.size && (text.at[i] == TELL_BOLD || text.at[i] == TELL_PLAIN);
        if (!mark && i < text.size) {
            continue;
        }
        svg_escape(html->writer, (struct str){text.at + begin, i - begin});
        bool now = mark && text.at[i] == TELL_BOLD;
        if (now != bold) {
            writer_text(html->writer, now ? "<b>" : "</b>");
        }
        bold = now;
        begin = i + 1;
    }
}

static void put_one(const struct html *html, char kind, va_list *args)
{
    switch (kind) {
    case 's':
        svg_escape(html->writer, va_arg(*args, struct str));
        break;
    case 'm':
        put_marked(html, va_arg(*args, struct str));
        break;
    case 'd':
        html_number(html, va_arg(*args, int), 0);
        break;
    case 'n':
        html_number(html, va_arg(*args, double), 2);
        break;
    default:
        assert(false && "a format that html_put does not know");
    }
}

void html_put(const struct html *html, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    while (*format) {
        const char *hole = strchr(format, '%');
        size_t plain = hole ? (size_t)(hole - format) : strlen(format);
        writer_bytes(html->writer, format, plain);
        format += plain;
        if (hole) {
            put_one(html, hole[1], &args);
            format += 2;
        }
    }
    va_end(args);
}
