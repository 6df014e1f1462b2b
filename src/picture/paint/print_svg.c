/* SPDX-License-Identifier: MIT */
/* print_svg: print-true SVG. Cairo writes it with letters as outlines; what it writes is finished
 * here: our own root with a name and words for who cannot see, and a prefix before every id, since
 * cairo's ids start again in each file and fifty drawings may stand in one page. */
#include <cairo-svg.h>

#include "base/vec.h"
#include "picture/paint/lay.h"
#include "picture/paint/sink.h"
#include "picture/svg/svg.h"

#include <string.h>

struct finish {
    struct arena *arena;
    struct writer *writer;
    struct str prefix;
    VEC(struct str) ids; /* cairo's, in the order they are met */
};

/* The marks behind which an id stands in what cairo 1.16 and 1.18 write. */
static const char *const id_marks[] = {" id=\"", "href=\"#", "url(#"};

/* The mark that `text` starts with; its length, or 0. */
static size_t mark_at(struct str text)
{
    for (size_t i = 0; i < sizeof id_marks / sizeof *id_marks; i++) {
        if (str_starts(text, id_marks[i])) {
            return strlen(id_marks[i]);
        }
    }
    return 0;
}

/* Cairo counts some of its ids over the life of the process: ours count in the order they are met,
 * so that the same picture has the same bytes. */
static void put_id(struct finish *finish, struct str id)
{
    size_t place = 0;
    while (place < finish->ids.count && !str_equal(finish->ids.at[place], id)) {
        place++;
    }
    if (place == finish->ids.count) {
        VEC_PUSH(finish->arena, &finish->ids, id);
    }
    writer_str(finish->writer, finish->prefix);
    writer_text(finish->writer, "-");
    writer_number(finish->writer, (double)place, 0);
}

static size_t id_size(struct str text)
{
    size_t size = 0;
    while (size < text.size && text.at[size] != '"' && text.at[size] != ')') {
        size++;
    }
    return size;
}

static void put_prefixed(struct finish *finish, struct str content)
{
    size_t written = 0;
    for (size_t i = 0; i < content.size; i++) {
        char c = content.at[i];
        if (c != ' ' && c != 'h' && c != 'u') {
            continue;
        }
        size_t mark = mark_at((struct str){content.at + i, content.size - i});
        if (mark == 0) {
            continue;
        }
        writer_bytes(finish->writer, content.at + written, i + mark - written);
        struct str id = {content.at + i + mark, 0};
        id.size = id_size((struct str){id.at, content.size - i - mark});
        put_id(finish, id);
        written = i + mark + id.size;
        i = written - 1;
    }
    writer_bytes(finish->writer, content.at + written, content.size - written);
}

static void put_size(struct writer *writer, const char *before, double value, const char *after)
{
    writer_text(writer, before);
    writer_number(writer, value, 2);
    writer_text(writer, after);
}

static void put_words(const struct finish *finish, const char *element, const char *suffix,
                      struct str words)
{
    struct writer *writer = finish->writer;
    writer_text(writer, "<");
    writer_text(writer, element);
    writer_text(writer, " id=\"");
    writer_str(writer, finish->prefix);
    writer_text(writer, suffix);
    writer_text(writer, "\">");
    svg_escape(writer, words);
    writer_text(writer, "</");
    writer_text(writer, element);
    writer_text(writer, ">\n");
}

static void put_head(const struct finish *finish, const struct laid *laid,
                     const struct paint_options *options)
{
    struct writer *writer = finish->writer;
    writer_text(writer, "<svg xmlns=\"http://www.w3.org/2000/svg\" "
                        "xmlns:xlink=\"http://www.w3.org/1999/xlink\" version=\"1.1\" "
                        "xml:lang=\"en\"");
    if (options->fluid) {
        writer_text(writer, " width=\"100%\"");
    } else {
        put_size(writer, " width=\"", laid->width, "\"");
        put_size(writer, " height=\"", laid->height, "\"");
    }
    put_size(writer, " viewBox=\"0 0 ", laid->width, " ");
    put_size(writer, "", laid->height, "\" class=\"courtwright ");
    writer_str(writer, finish->prefix);
    writer_text(writer, "\" role=\"img\" aria-labelledby=\"");
    writer_str(writer, finish->prefix);
    writer_text(writer, "-t");
    if (options->description.size > 0) {
        writer_text(writer, " ");
        writer_str(writer, finish->prefix);
        writer_text(writer, "-d");
    }
    writer_text(writer, "\">\n");
    put_words(finish, "title", "-t", options->title);
    if (options->description.size > 0) {
        put_words(finish, "desc", "-d", options->description);
    }
}

/* What stands behind cairo's own root tag, its end tag included. */
static struct str body_of(struct str text)
{
    static const char root[] = "<svg ";
    for (size_t i = 0; i + sizeof root <= text.size; i++) {
        if (memcmp(text.at + i, root, sizeof root - 1) != 0) {
            continue;
        }
        const char *end = memchr(text.at + i, '>', text.size - i);
        if (end) {
            size_t skip = (size_t)(end - text.at) + 1;
            while (skip < text.size && text.at[skip] == '\n') {
                skip++;
            }
            return (struct str){text.at + skip, text.size - skip};
        }
    }
    return (struct str){NULL, 0};
}

/* One name for all ids of the picture: a hash over those of its scenes, its headings and the salt;
 * another one than the live picture has of the same. */
static struct str prefix_of(struct arena *arena, const struct paint_sheet *sheet, struct str salt)
{
    struct str prefix = str_format(arena, "%.*s outlines", STR_ARG(salt));
    for (size_t i = sheet->count; i-- > 0;) {
        struct strbuf mixed;
        strbuf_init(&mixed, arena);
        strbuf_add(&mixed, prefix);
        if (sheet->headings) {
            strbuf_char(&mixed, '\n');
            strbuf_add(&mixed, sheet->headings[i]);
        }
        prefix = svg_prefix(arena, sheet->scenes[i], strbuf_str(&mixed));
    }
    return prefix;
}

static bool write_surface(struct sink *sink, struct fonts *fonts, const struct laid *laid)
{
    cairo_surface_t *surface =
        cairo_svg_surface_create_for_stream(sink_take, sink, laid->width, laid->height);
    cairo_svg_surface_restrict_to_version(surface, CAIRO_SVG_VERSION_1_1);
    cairo_t *cr = cairo_create(surface);
    laid_paint(cr, fonts, laid);
    bool good = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    good = good && cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(surface);
    return good && !fonts_failed(fonts);
}

bool paint_svg(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer)
{
    if (sheet->count == 0) {
        return false;
    }
    struct laid laid = lay(arena, fonts, sheet);
    struct finish finish = {
        .arena = arena, .writer = writer, .prefix = prefix_of(arena, sheet, options->salt)};
    struct sink sink;
    sink_init(&sink, arena);
    bool good = write_surface(&sink, fonts, &laid);
    sink_end(&sink);
    struct str content = body_of(strbuf_str(&sink.bytes));
    if (!good || !content.at) {
        return false;
    }
    put_head(&finish, &laid, options);
    put_prefixed(&finish, content);
    return !writer->failed;
}
