/* SPDX-License-Identifier: MIT */
/* shaped: see shaped.h. Takes letters and glyphs, gives them back; must not know how they are
 * shaped. The shaper sets itself up anew for each text, which costs more than all the rest of it.
 */
#include "picture/text/shaped.h"

#include <stdlib.h>
#include <string.h>

#include "base/rng.h"

struct shaped_text {
    uint64_t hash;
    enum face face;
    size_t count, glyph_count;
    uint32_t *letters;     /* behind the glyphs */
    raqm_glyph_t glyphs[]; /* as they were shaped */
};

static uint64_t hash_of(enum face face, const uint32_t *letters, size_t count)
{
    uint64_t hash = hash_bytes(HASH_SEED, &face, sizeof face);
    return hash_bytes(hash, letters, count * sizeof *letters);
}

static size_t size_of(size_t count, size_t glyph_count)
{
    return sizeof(struct shaped_text) + glyph_count * sizeof(raqm_glyph_t) +
           count * sizeof(uint32_t);
}

const raqm_glyph_t *shaped_find(const struct shaped *shaped, enum face face,
                                const uint32_t *letters, size_t count, size_t *glyphs)
{
    uint64_t hash = hash_of(face, letters, count);
    const struct shaped_text *text = shaped->texts[hash % SHAPED_PLACES];
    if (!text || text->hash != hash || text->face != face || text->count != count ||
        memcmp(text->letters, letters, count * sizeof *letters) != 0) {
        return NULL;
    }
    *glyphs = text->glyph_count;
    return text->glyphs;
}

static void drop(struct shaped *shaped, struct shaped_text **place)
{
    if (*place) {
        shaped->bytes -= size_of((*place)->count, (*place)->glyph_count);
        free(*place);
        *place = NULL;
    }
}

void shaped_let_go(struct shaped *shaped)
{
    for (size_t i = 0; i < SHAPED_PLACES; i++) {
        drop(shaped, &shaped->texts[i]);
    }
}

void shaped_keep(struct shaped *shaped, enum face face, const uint32_t *letters, size_t count,
                 const raqm_glyph_t *glyphs, size_t glyph_count)
{
    size_t size = size_of(count, glyph_count);
    if (count > SHAPED_LETTERS_MOST) {
        return;
    }
    if (shaped->bytes + size > SHAPED_BYTES) {
        shaped_let_go(shaped);
    }
    uint64_t hash = hash_of(face, letters, count);
    struct shaped_text **place = &shaped->texts[hash % SHAPED_PLACES];
    drop(shaped, place);
    struct shaped_text *text = malloc(size);
    if (!text) {
        return;
    }
    *text = (struct shaped_text){
        .hash = hash, .face = face, .count = count, .glyph_count = glyph_count};
    memcpy(text->glyphs, glyphs, glyph_count * sizeof *glyphs);
    text->letters = (uint32_t *)(void *)(text->glyphs + glyph_count);
    memcpy(text->letters, letters, count * sizeof *letters);
    shaped->bytes += size;
    *place = text;
}
