/* SPDX-License-Identifier: MIT */
#include "written.h"

#include <string.h>

#include "suite.h"

bool written_keep(void *ctx, const char *at, size_t size)
{
    strbuf_add(ctx, (struct str){at, size});
    return true;
}

bool written_refuse(void *ctx, const char *at, size_t size)
{
    (void)at;
    (void)size;
    ++*(int *)ctx;
    return false;
}

const char *text_of(struct str text)
{
    return str_copy(&arena, text).at;
}

const char *bracketed(struct str text, char from, char to)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        strbuf_char(&out, c == from ? '[' : c == to ? ']' : c);
    }
    strbuf_char(&out, '\0');
    return out.at;
}

void has(const char *text, const char *part)
{
    ck_assert_msg(strstr(text, part) != NULL, "no %s in\n%s", part, text);
}

void has_not(const char *text, const char *part)
{
    ck_assert_msg(strstr(text, part) == NULL, "%s in\n%s", part, text);
}

size_t count_of(const char *text, const char *part)
{
    size_t count = 0;
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) {
        count++;
    }
    return count;
}
