/* SPDX-License-Identifier: MIT */
/* latin: see latin.h. */
#include "picture/text/latin.h"

#include <hb-ft.h>
#include <stdlib.h>

/* Letters of the blocks from Basic Latin to Latin Extended-B, without what is invisible there, and
 * the spaces, dashes and quotes a text is set with. */
static bool is_plain(uint32_t letter)
{
    const uint32_t soft_hyphen = 0xAD, past_latin = 0x250;
    return (letter >= ' ' && letter < 0x7F) ||
           (letter >= 0xA0 && letter < past_latin && letter != soft_hyphen) || letter == 0x2002 ||
           (letter >= 0x2010 && letter <= 0x2027);
}

bool latin_letter(uint32_t letter)
{
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

bool latin_alone(const uint32_t *letters, size_t count)
{
    bool plain = true, any = false;
    for (size_t i = 0; i < count && plain; i++) {
        plain = is_plain(letters[i]);
        any = any || latin_letter(letters[i]);
    }
    return plain && any;
}

static bool prepare(struct latin *latin, enum face face, FT_Face loaded)
{
    if (!latin->fonts[face]) {
        latin->fonts[face] = hb_ft_font_create_referenced(loaded);
        hb_ft_font_set_load_flags(latin->fonts[face], FT_LOAD_NO_HINTING);
    }
    if (!latin->buffer) {
        latin->buffer = hb_buffer_create();
    }
    return latin->fonts[face] != hb_font_get_empty() &&
           hb_buffer_allocation_successful(latin->buffer);
}

static bool fill(hb_buffer_t *buffer, const uint32_t *letters, size_t count)
{
    hb_buffer_clear_contents(buffer);
    hb_buffer_add_utf32(buffer, letters, (int)count, 0, (int)count);
    hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer, HB_SCRIPT_LATIN);
    hb_buffer_set_language(buffer, hb_language_from_string("en", -1));
    return hb_buffer_allocation_successful(buffer);
}

static bool take_room(struct latin *latin, size_t count)
{
    if (count > latin->room) {
        raqm_glyph_t *longer = realloc(latin->glyphs, count * sizeof *longer);
        if (!longer) {
            return false;
        }
        latin->glyphs = longer;
        latin->room = count;
    }
    return true;
}

raqm_glyph_t *latin_shape(struct latin *latin, enum face face, FT_Face loaded,
                          const uint32_t *letters, size_t count, size_t *glyphs)
{
    if (!prepare(latin, face, loaded) || !fill(latin->buffer, letters, count)) {
        return NULL;
    }
    hb_shape(latin->fonts[face], latin->buffer, NULL, 0);
    unsigned made = 0;
    const hb_glyph_info_t *info = hb_buffer_get_glyph_infos(latin->buffer, &made);
    const hb_glyph_position_t *place = hb_buffer_get_glyph_positions(latin->buffer, &made);
    if (!hb_buffer_allocation_successful(latin->buffer) || !take_room(latin, made + 1)) {
        return NULL;
    }
    for (unsigned i = 0; i < made; i++) {
        latin->glyphs[i] = (raqm_glyph_t){.index = info[i].codepoint,
                                          .x_advance = place[i].x_advance,
                                          .y_advance = place[i].y_advance,
                                          .x_offset = place[i].x_offset,
                                          .y_offset = place[i].y_offset,
                                          .cluster = info[i].cluster,
                                          .ftface = loaded};
    }
    *glyphs = made;
    return latin->glyphs;
}

void latin_let_go(struct latin *latin)
{
    for (int face = 0; face < FACE_COUNT; face++) {
        hb_font_destroy(latin->fonts[face]);
    }
    hb_buffer_destroy(latin->buffer);
    free(latin->glyphs);
}
