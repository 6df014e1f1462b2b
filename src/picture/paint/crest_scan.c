/* SPDX-License-Identifier: MIT */
/* crest_scan: does an SVG refer to anything outside itself? Takes its bytes, gives a word; must not
 * know how it is drawn. Whatever is missed here is not loaded either: librsvg is given no place to
 * look at. */
#include "picture/paint/crest_scan.h"

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

static bool starts_fold(struct str rest, const char *word)
{
    size_t size = strlen(word);
    return rest.size >= size && str_equal_fold((struct str){rest.at, size}, str_of(word));
}

static struct str from(struct str text, size_t at)
{
    return (struct str){text.at + at, text.size - at};
}

static struct str skip_blanks(struct str rest)
{
    while (rest.size > 0 && is_blank(rest.at[0])) {
        rest = from(rest, 1);
    }
    return rest;
}

/* A part of the picture itself, or bytes written in it. */
static bool stays_inside(struct str target)
{
    target = skip_blanks(target);
    return target.size == 0 || target.at[0] == '#' || starts_fold(target, "data:");
}

static struct str skip_quote(struct str rest)
{
    rest = skip_blanks(rest);
    return rest.size > 0 && (rest.at[0] == '"' || rest.at[0] == '\'') ? from(rest, 1) : rest;
}

/* href="…", whatever stands before it. */
static bool refers(struct str rest)
{
    rest = skip_blanks(from(rest, strlen("href")));
    if (rest.size == 0 || rest.at[0] != '=') {
        return false;
    }
    return !stays_inside(skip_quote(from(rest, 1)));
}

/* <!ENTITY name SYSTEM "…"> */
static bool is_entity_outside(struct str rest)
{
    const char *end = memchr(rest.at, '>', rest.size);
    size_t size = end ? (size_t)(end - rest.at) : rest.size;
    for (size_t i = 0; i < size; i++) {
        struct str word = {rest.at + i, size - i};
        if (starts_fold(word, "SYSTEM") || starts_fold(word, "PUBLIC")) {
            return true;
        }
    }
    return false;
}

/* Behind the comment that begins here. */
static size_t comment_size(struct str rest)
{
    size_t i = strlen("<!--");
    while (i + 3 <= rest.size && memcmp(rest.at + i, "-->", 3) != 0) {
        i++;
    }
    return i + 3 <= rest.size ? i + 3 : rest.size;
}

bool crest_refers_outside(struct str svg)
{
    for (struct str rest = svg; rest.size > 0; rest = from(rest, 1)) {
        if (starts_fold(rest, "<!--")) {
            rest = from(rest, comment_size(rest) - 1);
            continue;
        }
        bool outside = (starts_fold(rest, "href") && refers(rest)) ||
                       (starts_fold(rest, "url(") && !stays_inside(skip_quote(from(rest, 4)))) ||
                       starts_fold(rest, "@import") || starts_fold(rest, "<?xml-stylesheet") ||
                       (starts_fold(rest, "<!ENTITY") && is_entity_outside(rest));
        if (outside) {
            return true;
        }
    }
    return false;
}
