/* SPDX-License-Identifier: MIT */
/* fonts: the loaded faces and the shaping of letters with them. Private to text. */
#ifndef PICTURE_TEXT_FONTS_H
#define PICTURE_TEXT_FONTS_H

#include <stdint.h>

#include <cairo-ft.h>
#include <raqm.h>

#include "picture/text/text.h"

enum { SHORT_TEXT = 4, SHORT_GLYPHS = 4, SHORT_TEXTS = 128 };
/* A numeral or so: the lettering of diagrams says the same few again and again. */
struct short_text {
    enum face face;
    uint32_t letters[SHORT_TEXT];
    size_t count; /* 0: the place is free */
    raqm_glyph_t glyphs[SHORT_GLYPHS];
    size_t glyph_count;
};
struct fonts {
    FT_Library library;
    FT_Face shaping[FACE_COUNT]; /* never sized by cairo: one unit of the em is one pixel */
    cairo_font_face_t *painting[FACE_COUNT]; /* each holds its own FreeType face and the library */
    raqm_t *raqm;                            /* of the last shaping; its glyphs live as long */
    bool failed;                             /* the shaper ran out of memory once */
    size_t missing;
    char letters[64]; /* the first few different letters that the face lacks */
    size_t letters_size;
    struct short_text shaped[SHORT_TEXTS]; /* short texts that were shaped, by a hash of them */
};

/* Glyphs of letters in one face, in the order they stand on the line. They live until the next
 * call. Advances and offsets are 26.6 units of the em: multiply by size / (64 * fonts_em). */
const raqm_glyph_t *fonts_shape(struct fonts *fonts, enum face face, const uint32_t *letters,
                                size_t count, size_t *glyphs);
double fonts_em(const struct fonts *fonts, enum face face);
/* Takes note of a letter that the face lacks. */
void fonts_meet(struct fonts *fonts, enum face face, uint32_t letter);
/* Sets the face, its size, and no hinting, on a context. */
void fonts_use(const struct fonts *fonts, cairo_t *cr, enum face face, double size);
/* UTF-8 of one letter; returns its length, 1 to 4. */
size_t letter_bytes(uint32_t letter, char out[4]);

/* Cairo's clusters for glyphs: which letters each few glyphs came from. `bytes` takes the letters
 * as UTF-8 (4 per letter at most), `clusters` at most `count`. False when the glyphs do not stand
 * in the order of the letters. */
struct cluster_sink {
    char *bytes;
    size_t size;
    cairo_text_cluster_t *clusters;
    int count;
};
bool fonts_clusters(const raqm_glyph_t *glyphs, size_t count, const uint32_t *letters,
                    size_t letter_count, struct cluster_sink *sink);

#endif
