/* SPDX-License-Identifier: MIT */
/* show: one line of text in one style, at once: the lettering of diagrams. Takes words and a place,
 * draws; keeps nothing. */
#include "picture/text/fonts.h"

enum { CHUNK = 64, GLYPHS = 4 * CHUNK };

/* Part of a line, small enough for the stack. */
struct chunk {
    uint32_t letters[CHUNK];
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

/* The width of the line; draws it too when there is a context. */
static double pass(cairo_t *cr, struct fonts *fonts, enum face face, double size, struct vec2 at,
                   struct str text)
{
    struct chunk chunk;
    double scale = size / (64 * fonts_em(fonts, face));
    double start = at.x;
    while (text.size > 0) {
        take_letters(&chunk, &text);
        size_t count;
        const raqm_glyph_t *glyphs = fonts_shape(fonts, face, chunk.letters, chunk.count, &count);
        if (cr) {
            for (size_t i = 0; i < chunk.count; i++) {
                fonts_meet(fonts, face, chunk.letters[i]);
            }
            draw_chunk(cr, &chunk, glyphs, count, scale, at);
        }
        at.x += glyphs_width(glyphs, count, scale);
    }
    return at.x - start;
}

void text_show(cairo_t *cr, struct fonts *fonts, enum face face, double size, struct vec2 at,
               double anchor, struct str text)
{
    fonts_use(fonts, cr, face, size);
    if (anchor > 0) {
        at.x -= anchor * pass(NULL, fonts, face, size, at, text);
    }
    pass(cr, fonts, face, size, at, text);
}
