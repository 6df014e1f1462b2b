/* SPDX-License-Identifier: MIT */
/* source: see source.h. */
#include "base/source.h"

#include <assert.h>

void sources_init(struct sources *sources, struct arena *arena)
{
    *sources = (struct sources){.arena = arena};
}

/* The first byte behind the line that `from` stands in; 0: there is none. A line ends with LF, CRLF
 * or CR. */
static size_t next_line(struct str text, size_t from)
{
    for (size_t i = from; i < text.size; i++) {
        if (text.at[i] > '\r' || (text.at[i] != '\n' && text.at[i] != '\r')) {
            continue;
        }
        bool crlf = text.at[i] == '\r' && i + 1 < text.size && text.at[i + 1] == '\n';
        return i + (crlf ? 2 : 1);
    }
    return 0;
}

static void find_lines(struct arena *arena, struct source *source)
{
    size_t lines = 1; /* at most: of CRLF both are counted */
    for (size_t i = 0; i < source->text.size; i++) {
        lines += (source->text.at[i] == '\n') | (source->text.at[i] == '\r');
    }
    source->line_starts.room = lines;
    source->line_starts.at = arena_array(arena, uint32_t, lines);
    VEC_PUSH(arena, &source->line_starts, 0);
    for (size_t at = 0; (at = next_line(source->text, at)) > 0;) {
        VEC_PUSH(arena, &source->line_starts, (uint32_t)at);
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
