/* SPDX-License-Identifier: MIT */
/* show: one line of text in one style, at once: the lettering of diagrams. Takes words and a place,
 * draws; keeps nothing. */
#include "picture/text/fonts.h"

enum { CHUNK = 64, GLYPHS = 4 * CHUNK };

/* Part of a line, small enough for the stack. */
struct chunk {
    uint32_t letters[CHUNK];
    face_code codes[CHUNK];
    bool borrowed; /* one of them is not ours */
    size_t count;
    cairo_glyph_t glyphs[GLYPHS];
    cairo_text_cluster_t clusters[GLYPHS];
    char bytes[4 * CHUNK];
};

static void take_letters(struct chunk *chunk, struct str *rest)
{
    chunk->count = 0;
    while (rest->size > 0 && chunk->count < CHUNK) {
        uint32_t letter = metrics_letter(rest);
        if (letter >= ' ' && letter != 0x7F) {
            chunk->letters[chunk->count++] = letter;
        }
    }
}

static double glyphs_width(const raqm_glyph_t *glyphs, size_t count, double scale)
{
    double width = 0;
    for (size_t i = 0; i < count; i++) {
        width += glyphs[i].x_advance * scale;
    }
    return width;
}

static void draw_chunk(cairo_t *cr, struct chunk *chunk, const raqm_glyph_t *glyphs, size_t count,
                       double scale, struct vec2 at)
{
    if (count > GLYPHS) {
        count = GLYPHS; /* no letter of a chunk becomes more than four glyphs */
    }
    for (size_t i = 0; i < count; i++) {
        chunk->glyphs[i] = (cairo_glyph_t){glyphs[i].index, at.x + glyphs[i].x_offset * scale,
                                           at.y - glyphs[i].y_offset * scale};
        at.x += glyphs[i].x_advance * scale;
    }
    struct cluster_sink sink = {.bytes = chunk->bytes, .clusters = chunk->clusters};
    if (fonts_clusters(glyphs, count, chunk->letters, chunk->count, &sink)) {
        cairo_show_text_glyphs(cr, sink.bytes, (int)sink.size, chunk->glyphs, (int)count,
                               sink.clusters, sink.count, 0);
    } else {
        cairo_show_glyphs(cr, chunk->glyphs, (int)count);
    }
}

static void find_codes(struct fonts *fonts, enum face face, struct chunk *chunk)
{
    chunk->borrowed = false;
    for (size_t i = 0; i < chunk->count; i++) {
        face_code before = i > 0 ? chunk->codes[i - 1] : 0;
        chunk->codes[i] = fonts_code(fonts, face, chunk->letters[i], before);
        chunk->borrowed = chunk->borrowed || chunk->codes[i] >= FACE_COUNT;
    }
}

/* A chunk with borrowed letters; draws it when there is a context. Returns where it ends. */
static double pass_mixed(cairo_t *cr, struct fonts *fonts, struct chunk *chunk, double size,
                         struct vec2 at)
{
    size_t count, ends[CHUNK];
    bool leftward = fonts_leftward(chunk->letters, chunk->count);
    const raqm_glyph_t *glyphs =
        fonts_shape_mixed(fonts, chunk->codes, chunk->letters, chunk->count, leftward, &count);
    count = count > GLYPHS ? GLYPHS : count;
    fonts_cluster_ends(glyphs, count, chunk->count, ends);
    for (size_t i = 0, next; i < count; i = next) {
        bool backward;
        next = fonts_run_end(glyphs, count, i, &backward);
        face_code code = fonts_code_of(fonts, glyphs[i].ftface);
        double scale = size / (64 * fonts_em(fonts, code));
        struct cluster_sink sink = {.bytes = chunk->bytes, .clusters = chunk->clusters};
        fonts_mixed_clusters(glyphs + i, next - i, backward, chunk->letters, ends, &sink);
        for (size_t k = i; k < next; k++) {
            chunk->glyphs[k - i] =
                (cairo_glyph_t){glyphs[k].index, at.x + glyphs[k].x_offset * scale,
                                at.y - glyphs[k].y_offset * scale};
            at.x += glyphs[k].x_advance * scale;
        }
        if (cr) {
            fonts_use(fonts, cr, code, size);
            cairo_show_text_glyphs(cr, sink.bytes, (int)sink.size, chunk->glyphs, (int)(next - i),
                                   sink.clusters, sink.count,
                                   backward ? CAIRO_TEXT_CLUSTER_FLAG_BACKWARD : 0);
        }
    }
    return at.x;
}

/* A chunk in the face itself; draws it when there is a context. Returns where it ends. */
static double pass_plain(cairo_t *cr, struct fonts *fonts, enum face face, struct chunk *chunk,
                         double size, struct vec2 at)
{
    double scale = size / (64 * fonts_em(fonts, (face_code)face));
    size_t count;
    const raqm_glyph_t *glyphs = fonts_shape(fonts, face, chunk->letters, chunk->count, &count);
    if (cr) {
        fonts_use(fonts, cr, (face_code)face, size);
        draw_chunk(cr, chunk, glyphs, count, scale, at);
    }
    return at.x + glyphs_width(glyphs, count, scale);
}

/* The width of the line; draws it too when there is a context. */
static double pass(cairo_t *cr, struct fonts *fonts, enum face face, double size, struct vec2 at,
                   struct str text)
{
    struct chunk chunk;
    double start = at.x;
    while (text.size > 0) {
        take_letters(&chunk, &text);
        find_codes(fonts, face, &chunk);
        at.x = chunk.borrowed ? pass_mixed(cr, fonts, &chunk, size, at)
                              : pass_plain(cr, fonts, face, &chunk, size, at);
    }
    return at.x - start;
}

void text_show(cairo_t *cr, struct fonts *fonts, enum face face, double size, struct vec2 at,
               double anchor, struct str text)
{
    if (anchor > 0) {
        at.x -= anchor * pass(NULL, fonts, face, size, at, text);
    }
    pass(cr, fonts, face, size, at, text);
}
