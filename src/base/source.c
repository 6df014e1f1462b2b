/* SPDX-License-Identifier: MIT */
/* source: see source.h. */
#include "base/source.h"

#include <assert.h>
#include <string.h>

void sources_init(struct sources *sources, struct arena *arena)
{
    *sources = (struct sources){.arena = arena};
}

static size_t count_letter(struct str text, char letter)
{
    size_t count = 0;
    for (const char *at = text.at, *end = text.at + text.size;
         at < end && (at = memchr(at, letter, (size_t)(end - at)));) {
        count++;
        at++;
    }
    return count;
}

/* The first `letter` at `from` or behind it; the text's end: there is none. */
static size_t next_letter(struct str text, size_t from, char letter)
{
    const char *found = from < text.size ? memchr(text.at + from, letter, text.size - from) : NULL;
    return found ? (size_t)(found - text.at) : text.size;
}

/* A line ends with LF, CRLF or CR. */
static void find_lines(struct arena *arena, struct source *source)
{
    struct str text = source->text;
    size_t lf = next_letter(text, 0, '\n'), cr = next_letter(text, 0, '\r');
    source->line_starts.room = 1 + count_letter(text, '\n') + count_letter(text, '\r');
    source->line_starts.at = arena_array(arena, uint32_t, source->line_starts.room);
    VEC_PUSH(arena, &source->line_starts, 0);
    while (lf < text.size || cr < text.size) {
        bool crlf = cr + 1 == lf && lf < text.size;
        size_t end = cr < lf && !crlf ? cr : lf;
        VEC_PUSH(arena, &source->line_starts, (uint32_t)end + 1);
        lf = lf <= end ? next_letter(text, end + 1, '\n') : lf;
        cr = cr <= end ? next_letter(text, end + 1, '\r') : cr;
    }
}

uint32_t sources_add(struct sources *sources, struct str name, struct str text)
{
    assert(text.size < UINT32_MAX);
    struct source source = {.name = name, .text = text};
    find_lines(sources->arena, &source);
    VEC_PUSH(sources->arena, &sources->all, source);
    return (uint32_t)(sources->all.count - 1);
}

static size_t line_index(const struct source *source, uint32_t offset)
{
    size_t low = 0, high = source->line_starts.count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (source->line_starts.at[middle] <= offset) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

struct place_in_source source_place(const struct source *source, uint32_t offset)
{
    size_t line = line_index(source, offset);
    uint32_t at = source->line_starts.at[line];
    uint32_t column = 1;
    if (line == 0 && str_starts(source->text, "\xEF\xBB\xBF") && offset >= 3) {
        at = 3;
    }
    for (; at < offset && at < source->text.size; at++) {
        column += ((unsigned char)source->text.at[at] & 0xC0) != 0x80;
    }
    return (struct place_in_source){(uint32_t)line + 1, column};
}

struct str source_line(const struct source *source, uint32_t line)
{
    if (line == 0 || line > source->line_starts.count) {
        return (struct str){"", 0};
    }
    size_t begin = source->line_starts.at[line - 1];
    size_t end =
        line < source->line_starts.count ? source->line_starts.at[line] : source->text.size;
    while (end > begin && (source->text.at[end - 1] == '\n' || source->text.at[end - 1] == '\r')) {
        end--;
    }
    return (struct str){source->text.at + begin, end - begin};
}

struct str source_text(const struct sources *sources, struct span span)
{
    if (span.source >= sources->all.count) {
        return (struct str){"", 0};
    }
    struct str text = sources->all.at[span.source].text;
    size_t end = span.end < text.size ? span.end : text.size;
    size_t begin = span.begin < end ? span.begin : end;
    return (struct str){text.at + begin, end - begin};
}

struct span span_join(struct span a, struct span b)
{
    if (a.source == SOURCE_NONE) {
        return b;
    }
    if (b.source != a.source) {
        return a;
    }
    return (struct span){a.source, a.begin < b.begin ? a.begin : b.begin,
                         a.end > b.end ? a.end : b.end};
}

struct span span_end(struct span span)
{
    span.begin = span.end;
    return span;
}
