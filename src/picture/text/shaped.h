/* SPDX-License-Identifier: MIT */
/* shaped: texts that were shaped, with their glyphs: a book says the same few hundred again and
 * again, on every sheet. Private to text. */
#ifndef PICTURE_TEXT_SHAPED_H
#define PICTURE_TEXT_SHAPED_H

#include <stddef.h>
#include <stdint.h>

#include <raqm.h>

#include "picture/metrics/metrics.h"

struct shaped_text;
enum {
    SHAPED_PLACES = 4096,     /* texts at most: a place by hash; a later one takes it over */
    SHAPED_BYTES = 4 << 20,   /* what is kept at most: beyond it all is let go */
    SHAPED_LETTERS_MOST = 512 /* of a text that is kept */
};
struct shaped {
    struct shaped_text *texts[SHAPED_PLACES];
    size_t bytes;
};

/* The glyphs that were kept for these letters, or NULL. They stay until the next shaped_keep. */
const raqm_glyph_t *shaped_find(const struct shaped *shaped, enum face face,
                                const uint32_t *letters, size_t count, size_t *glyphs);
/* Keeps a copy, if there is memory for it. */
void shaped_keep(struct shaped *shaped, enum face face, const uint32_t *letters, size_t count,
                 const raqm_glyph_t *glyphs, size_t glyph_count);
void shaped_let_go(struct shaped *shaped);

#endif
