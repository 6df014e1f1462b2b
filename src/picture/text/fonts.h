/* SPDX-License-Identifier: MIT */
/* fonts: the loaded faces and the shaping of letters with them. Private to text. */
#ifndef PICTURE_TEXT_FONTS_H
#define PICTURE_TEXT_FONTS_H

#include <stdint.h>

#include <cairo-ft.h>
#include <raqm.h>

#include "picture/text/latin.h"
#include "picture/text/shaped.h"
#include "picture/text/text.h"

/* The first few different letters of a kind. */
struct letters {
    char at[64];
    size_t size;
};
/* A face of ours, or from FACE_COUNT on one of the borrowed. */
typedef unsigned char face_code;

struct fonts {
    FT_Library library;
    FT_Face shaping[FACE_COUNT]; /* never sized by cairo: one unit of the em is one pixel */
    cairo_font_face_t *painting[FACE_COUNT]; /* each holds its own FreeType face and the library */
    raqm_t *raqm;                            /* of the last shaping; its glyphs live as long */
    struct latin latin;
    bool failed; /* the shaper ran out of memory once */
    size_t missing;
    struct letters boxed;        /* a box stands for each: no font here has it */
    struct letters borrowed;     /* drawn in a face of the machine */
    struct borrowing *borrowing; /* NULL: no letter was borrowed yet */
    bool alone;                  /* there is nothing to borrow from */
    struct shaped shaped;        /* texts in one face of ours */
};

/* Glyphs of letters in one face, in the order they stand on the line. They live until the next
 * call. Advances and offsets are 26.6 units of the em: multiply by size / (64 * fonts_em). */
const raqm_glyph_t *fonts_shape(struct fonts *fonts, enum face face, const uint32_t *letters,
                                size_t count, size_t *glyphs);
double fonts_em(const struct fonts *fonts, face_code code);
/* The face that a letter is set in: `face` where it has it, else a borrowed one, else `face` with a
 * box. `before`: that of the letter before it, which a mark over that letter shares. Takes note of
 * what is lacking. */
face_code fonts_code(struct fonts *fonts, enum face face, uint32_t letter, face_code before);
/* Does a text run to the left as a whole: has it letters of such scripts and of no other? */
bool fonts_leftward(const uint32_t *letters, size_t count);
/* Glyphs of letters in several faces with borrowed ones among them, in the order they stand on the
 * line: letters of scripts that run to the left are turned round. Of each glyph `ftface` is set. */
const raqm_glyph_t *fonts_shape_mixed(struct fonts *fonts, const face_code *codes,
                                      const uint32_t *letters, size_t count, bool leftward,
                                      size_t *glyphs);
face_code fonts_code_of(const struct fonts *fonts, FT_Face shaping);
/* Sets the face, its size, and no hinting, on a context. */
void fonts_use(const struct fonts *fonts, cairo_t *cr, face_code code, double size);

/* For borrow.c: one unit of the em is one pixel; a face of cairo's, which takes `loaded` over. */
bool fonts_size_for_shaping(FT_Face face);
cairo_font_face_t *fonts_for_painting(FT_Library library, FT_Face loaded);
/* UTF-8 of one letter; returns its length, 1 to 4. */
size_t letter_bytes(uint32_t letter, char out[4]);

/* Which few glyphs stand next to each other in one face and one direction, from `begin` on: the end
 * of them. `backward`: they run to the left. */
size_t fonts_run_end(const raqm_glyph_t *glyphs, size_t count, size_t begin, bool *backward);

/* Cairo's clusters for glyphs: which letters each few glyphs came from. `bytes` takes the letters
 * as UTF-8 (4 per letter at most), `clusters` at most `count`. False when the glyphs do not stand
 * in the order of the letters. */
struct cluster_sink {
    char *bytes;
    size_t size;
    cairo_text_cluster_t *clusters;
    int count;
};
/* The same for some of a line's glyphs, in whatever order: `ends` has for each letter of the line
 * where its cluster ends. The letters come in their own order, with `backward` from the last glyph
 * to the first. */
void fonts_mixed_clusters(const raqm_glyph_t *glyphs, size_t count, bool backward,
                          const uint32_t *letters, const size_t *ends, struct cluster_sink *sink);
/* For each letter where the cluster that begins with it ends; `ends` takes `letter_count`. */
void fonts_cluster_ends(const raqm_glyph_t *glyphs, size_t count, size_t letter_count,
                        size_t *ends);
bool fonts_clusters(const raqm_glyph_t *glyphs, size_t count, const uint32_t *letters,
                    size_t letter_count, struct cluster_sink *sink);

#endif
