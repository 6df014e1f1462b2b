/* SPDX-License-Identifier: MIT */
/* latin: the shaping of Latin letters alone. They run one way and are of one script, so that there
 * is nothing for libraqm to sort out: its own shaper, which is set up once for a face here and not
 * for each text, gives the same glyphs. Private to text. */
#ifndef PICTURE_TEXT_LATIN_H
#define PICTURE_TEXT_LATIN_H

#include <hb.h>
#include <raqm.h>

#include "picture/metrics/metrics.h"

struct latin {
    hb_font_t *fonts[FACE_COUNT];
    hb_buffer_t *buffer;
    raqm_glyph_t *glyphs; /* of the last shaping */
    size_t room;
};

bool latin_letter(uint32_t letter); /* a to z, A to Z */
/* Are there Latin letters, figures and their marks alone, and a letter among them? */
bool latin_alone(const uint32_t *letters, size_t count);
/* As libraqm gives them; NULL: there was not enough memory. They live until the next call. */
raqm_glyph_t *latin_shape(struct latin *latin, enum face face, FT_Face loaded,
                          const uint32_t *letters, size_t count, size_t *glyphs);
void latin_let_go(struct latin *latin);

#endif
