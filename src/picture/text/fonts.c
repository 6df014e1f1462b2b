/* SPDX-License-Identifier: MIT */
/* fonts: the faces from memory, for the shaper and for cairo. Takes letters, gives glyphs; must not
 * know lines or pages. Nothing here asks the system for a font. */
#include "picture/text/fonts.h"

#include "picture/text/borrow.h"
#include "picture/text/breaks.h"
#include "picture/text/faces.h"

#include <fribidi.h>
#include <stdlib.h>
#include <string.h>

#include FT_ADVANCES_H
#include FT_MODULE_H
#include FT_SYSTEM_H

struct face_file {
    const unsigned char *begin, *end;
};

static struct face_file face_file(enum face face)
{
    static const struct face_file files[FACE_COUNT] = {
        [FACE_REGULAR] = {face_regular, face_regular_end},
        [FACE_MEDIUM] = {face_medium, face_medium_end},
        [FACE_SEMIBOLD] = {face_semibold, face_semibold_end},
        [FACE_BOLD] = {face_bold, face_bold_end},
        [FACE_EXTRABOLD] = {face_extrabold, face_extrabold_end},
    };
    return files[face];
}

static FT_Face load_face(FT_Library library, enum face face)
{
    FT_Face loaded = NULL;
    struct face_file file = face_file(face);
    if (FT_New_Memory_Face(library, file.begin, (FT_Long)(file.end - file.begin), 0, &loaded)) {
        return NULL;
    }
    return loaded;
}

/* Cairo may keep a font longer than we keep the document: the last of both lets go of it. */
static void let_go(void *data)
{
    FT_Face face = data;
    FT_Library library = face->glyph->library;
    FT_Done_Face(face);
    FT_Done_Library(library);
}

cairo_font_face_t *fonts_for_painting(FT_Library library, FT_Face loaded)
{
    static const cairo_user_data_key_t key;
    if (!loaded) {
        return NULL;
    }
    FT_Reference_Library(library);
    cairo_font_face_t *made = cairo_ft_font_face_create_for_ft_face(loaded, FT_LOAD_NO_HINTING);
    if (cairo_font_face_set_user_data(made, &key, loaded, let_go) != CAIRO_STATUS_SUCCESS) {
        cairo_font_face_destroy(made);
        let_go(loaded);
        return NULL;
    }
    return made;
}

bool fonts_size_for_shaping(FT_Face face)
{
    FT_F26Dot6 em = (FT_F26Dot6)face->units_per_EM * 64;
    return !FT_Set_Char_Size(face, em, em, 72, 72);
}

static bool load_one(struct fonts *fonts, enum face face)
{
    fonts->shaping[face] = load_face(fonts->library, face);
    fonts->painting[face] = fonts_for_painting(fonts->library, load_face(fonts->library, face));
    return fonts->shaping[face] && fonts->painting[face] &&
           fonts_size_for_shaping(fonts->shaping[face]);
}

static void *take_memory(FT_Memory memory, long size)
{
    (void)memory;
    return malloc((size_t)size);
}

static void give_memory(FT_Memory memory, void *block)
{
    (void)memory;
    free(block);
}

static void *grow_memory(FT_Memory memory, long old_size, long size, void *block)
{
    (void)memory;
    (void)old_size;
    return realloc(block, (size_t)size);
}

/* FT_Init_FreeType would read the environment, and its memory record cannot be shared by faces that
 * end at different times. */
static bool start_library(FT_Library *library)
{
    static struct FT_MemoryRec_ memory = {NULL, take_memory, give_memory, grow_memory};
    if (FT_New_Library(&memory, library)) {
        return false;
    }
    FT_Add_Default_Modules(*library);
    return true;
}

struct fonts *fonts_create(void)
{
    breaks_prepare();
    struct fonts *fonts = calloc(1, sizeof *fonts); /* outlives any one arena */
    if (!fonts) {
        return NULL;
    }
    if (!start_library(&fonts->library)) {
        free(fonts);
        return NULL;
    }
    for (int face = 0; face < FACE_COUNT; face++) {
        if (!load_one(fonts, (enum face)face)) {
            fonts_destroy(fonts);
            return NULL;
        }
    }
    return fonts;
}

void fonts_destroy(struct fonts *fonts)
{
    if (!fonts) {
        return;
    }
    raqm_destroy(fonts->raqm);
    shaped_let_go(&fonts->shaped);
    latin_let_go(&fonts->latin);
    borrowing_destroy(fonts->borrowing);
    for (int face = 0; face < FACE_COUNT; face++) {
        if (fonts->painting[face]) {
            cairo_font_face_destroy(fonts->painting[face]);
        }
        if (fonts->shaping[face]) {
            FT_Done_Face(fonts->shaping[face]);
        }
    }
    FT_Done_Library(fonts->library);
    free(fonts);
}

bool fonts_failed(const struct fonts *fonts)
{
    return fonts->failed;
}

static struct str text_of(const struct letters *letters)
{
    return (struct str){letters->at, letters->size};
}

size_t fonts_missing(const struct fonts *fonts, struct str *letters)
{
    if (letters) {
        *letters = text_of(&fonts->boxed);
    }
    return fonts->missing;
}

bool fonts_borrowed(const struct fonts *fonts, struct str *letters, const char **name)
{
    *letters = text_of(&fonts->borrowed);
    *name = fonts->borrowing && letters->size > 0 ? borrowing_at(fonts->borrowing, 0)->name : "";
    return letters->size > 0;
}

static FT_Face shaping_of(const struct fonts *fonts, face_code code)
{
    return code < FACE_COUNT ? fonts->shaping[code]
                             : borrowing_at(fonts->borrowing, code - FACE_COUNT)->shaping;
}

double fonts_em(const struct fonts *fonts, face_code code)
{
    return shaping_of(fonts, code)->units_per_EM;
}

size_t letter_bytes(uint32_t letter, char out[4])
{
    if (letter < 0x80) {
        out[0] = (char)letter;
        return 1;
    }
    size_t size = letter < 0x800 ? 2 : letter < 0x10000 ? 3 : 4;
    static const unsigned lead[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t i = size - 1; i > 0; i--) {
        out[i] = (char)(0x80 | (letter & 0x3F));
        letter >>= 6;
    }
    out[0] = (char)(lead[size] | letter);
    return size;
}

/* Spaces and invisible letters have nothing to be drawn; the shaper makes up for them. */
static bool is_blank(uint32_t letter)
{
    return letter <= ' ' || letter == 0xA0 || letter == 0xAD ||
           (letter >= 0x2000 && letter <= 0x200F) || (letter >= 0x2028 && letter <= 0x202F) ||
           (letter >= 0x2060 && letter <= 0x206F) || letter == 0x3000 || letter == 0xFEFF;
}

static void add_letter(struct letters *letters, uint32_t letter)
{
    char bytes[4];
    size_t size = letter_bytes(letter, bytes);
    for (size_t i = 0; i + size <= letters->size; i++) {
        if (memcmp(letters->at + i, bytes, size) == 0) {
            return;
        }
    }
    if (letters->size + size <= sizeof letters->at) {
        memcpy(letters->at + letters->size, bytes, size);
        letters->size += size;
    }
}

/* Marks that stand over or join the letter before them. */
static bool joins(uint32_t letter)
{
    return (letter >= 0x300 && letter <= 0x36F) || letter == 0x200C || letter == 0x200D ||
           (letter >= 0xFE00 && letter <= 0xFE0F);
}

/* -1: no font has it. */
static int borrow(struct fonts *fonts, enum face face, uint32_t letter)
{
    if (!fonts->borrowing && !fonts->alone) {
        fonts->borrowing = borrowing_create();
        fonts->alone = !fonts->borrowing;
    }
    return fonts->alone
               ? -1
               : borrowing_find(fonts->borrowing, fonts->library, face >= FACE_SEMIBOLD, letter);
}

face_code fonts_code(struct fonts *fonts, enum face face, uint32_t letter, face_code before)
{
    bool shares = before >= FACE_COUNT && joins(letter) &&
                  FT_Get_Char_Index(shaping_of(fonts, before), letter) != 0;
    if (shares) {
        return before;
    }
    if (is_blank(letter) || FT_Get_Char_Index(fonts->shaping[face], letter) != 0) {
        return (face_code)face;
    }
    int index = borrow(fonts, face, letter);
    if (index >= 0) {
        add_letter(&fonts->borrowed, letter);
        return (face_code)(FACE_COUNT + index);
    }
    fonts->missing++;
    add_letter(&fonts->boxed, letter);
    return (face_code)face;
}

face_code fonts_code_of(const struct fonts *fonts, FT_Face shaping)
{
    face_code code = 0;
    while (code < FACE_COUNT + BORROWED_MOST - 1 && shaping_of(fonts, code) != shaping) {
        code++;
    }
    return code;
}

static bool prepare(raqm_t *raqm, FT_Face face, const uint32_t *letters, size_t count)
{
    return raqm_set_text(raqm, letters, count) && raqm_set_freetype_face(raqm, face) &&
           raqm_set_par_direction(raqm, RAQM_DIRECTION_LTR) &&
           raqm_set_freetype_load_flags(raqm, FT_LOAD_NO_HINTING);
}

/* The face writes the x of "2x2" as a times sign, but x2 is a defender: Latin letters keep their
 * own glyph. (Switching the face's alternates off through libraqm 0.7 would leak.) */
static void keep_letters(FT_Face face, const uint32_t *letters, raqm_glyph_t *glyphs, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        bool alone = (i == 0 || glyphs[i - 1].cluster != glyphs[i].cluster) &&
                     (i + 1 == count || glyphs[i + 1].cluster == glyphs[i].cluster + 1);
        uint32_t letter = letters[glyphs[i].cluster];
        FT_UInt own = alone && latin_letter(letter) ? FT_Get_Char_Index(face, letter) : 0;
        FT_Fixed is = 0;
        FT_Fixed was = 0;
        if (own != 0 && own != glyphs[i].index &&
            !FT_Get_Advance(face, own, FT_LOAD_NO_SCALE, &is) &&
            !FT_Get_Advance(face, glyphs[i].index, FT_LOAD_NO_SCALE, &was)) {
            glyphs[i].index = own;
            glyphs[i].x_advance += (int)(is - was) * 64;
        }
    }
}

static raqm_glyph_t *shape_any(struct fonts *fonts, enum face face, const uint32_t *letters,
                               size_t count, size_t *glyphs)
{
    raqm_destroy(fonts->raqm);
    fonts->raqm = raqm_create();
    bool good = fonts->raqm && prepare(fonts->raqm, fonts->shaping[face], letters, count) &&
                raqm_layout(fonts->raqm);
    return good ? raqm_get_glyphs(fonts->raqm, glyphs) : NULL;
}

static const raqm_glyph_t *shape(struct fonts *fonts, enum face face, const uint32_t *letters,
                                 size_t count, size_t *glyphs)
{
    FT_Face loaded = fonts->shaping[face];
    raqm_glyph_t *shaped = latin_alone(letters, count)
                               ? latin_shape(&fonts->latin, face, loaded, letters, count, glyphs)
                               : shape_any(fonts, face, letters, count, glyphs);
    if (!shaped) {
        fonts->failed = true;
        return NULL;
    }
    keep_letters(loaded, letters, shaped, *glyphs);
    return shaped;
}

bool fonts_leftward(const uint32_t *letters, size_t count)
{
    const uint32_t first_isolate = 0x2066, last_isolate = 0x2068, pop_isolate = 0x2069;
    size_t inside = 0; /* what is set apart says nothing of the text round it */
    for (size_t i = 0; i < count; i++) {
        inside += letters[i] >= first_isolate && letters[i] <= last_isolate;
        inside -= letters[i] == pop_isolate && inside > 0;
        FriBidiCharType type = fribidi_get_bidi_type(letters[i]);
        if (inside > 0 || !FRIBIDI_IS_STRONG(type)) {
            continue;
        }
        return FRIBIDI_IS_RTL(type); /* the first letter that has a direction decides */
    }
    return false;
}

static bool prepare_mixed(struct fonts *fonts, const face_code *codes, const uint32_t *letters,
                          size_t count, bool leftward)
{
    raqm_t *raqm = fonts->raqm;
    bool good = raqm_set_text(raqm, letters, count) &&
                raqm_set_par_direction(raqm, leftward ? RAQM_DIRECTION_RTL : RAQM_DIRECTION_LTR);
    for (size_t begin = 0, end; good && begin < count; begin = end) {
        end = begin + 1;
        while (end < count && codes[end] == codes[begin]) {
            end++;
        }
        good =
            raqm_set_freetype_face_range(raqm, shaping_of(fonts, codes[begin]), begin, end - begin);
    }
    return good && raqm_set_freetype_load_flags(raqm, FT_LOAD_NO_HINTING);
}

const raqm_glyph_t *fonts_shape_mixed(struct fonts *fonts, const face_code *codes,
                                      const uint32_t *letters, size_t count, bool leftward,
                                      size_t *glyphs)
{
    *glyphs = 0;
    if (count == 0) {
        return NULL;
    }
    raqm_destroy(fonts->raqm);
    fonts->raqm = raqm_create();
    if (!fonts->raqm || !prepare_mixed(fonts, codes, letters, count, leftward) ||
        !raqm_layout(fonts->raqm)) {
        fonts->failed = true;
        return NULL;
    }
    raqm_glyph_t *shaped = raqm_get_glyphs(fonts->raqm, glyphs);
    for (size_t begin = 0, end; begin < *glyphs; begin = end) {
        end = begin + 1;
        while (end < *glyphs && shaped[end].ftface == shaped[begin].ftface) {
            end++;
        }
        if (fonts_code_of(fonts, shaped[begin].ftface) < FACE_COUNT) {
            keep_letters(shaped[begin].ftface, letters, shaped + begin, end - begin);
        }
    }
    return shaped;
}

const raqm_glyph_t *fonts_shape(struct fonts *fonts, enum face face, const uint32_t *letters,
                                size_t count, size_t *glyphs)
{
    *glyphs = 0;
    if (count == 0) {
        return NULL;
    }
    const raqm_glyph_t *kept = shaped_find(&fonts->shaped, face, letters, count, glyphs);
    if (kept) {
        return kept;
    }
    const raqm_glyph_t *made = shape(fonts, face, letters, count, glyphs);
    if (made) {
        shaped_keep(&fonts->shaped, face, letters, count, made, *glyphs);
    }
    return made;
}

void fonts_use(const struct fonts *fonts, cairo_t *cr, face_code code, double size)
{
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    cairo_set_font_face(cr, code < FACE_COUNT
                                ? fonts->painting[code]
                                : borrowing_at(fonts->borrowing, code - FACE_COUNT)->painting);
    cairo_set_font_size(cr, size);
    cairo_set_font_options(cr, options);
    cairo_font_options_destroy(options);
}

/* ---- clusters ---- */

size_t fonts_run_end(const raqm_glyph_t *glyphs, size_t count, size_t begin, bool *backward)
{
    int direction = 0;
    size_t end = begin + 1;
    for (; end < count && glyphs[end].ftface == glyphs[begin].ftface; end++) {
        uint32_t before = glyphs[end - 1].cluster, here = glyphs[end].cluster;
        int step = here > before ? 1 : here < before ? -1 : 0;
        if (step != 0 && direction != 0 && step != direction) {
            break;
        }
        direction = step != 0 ? step : direction;
    }
    *backward = direction < 0;
    return end;
}

void fonts_cluster_ends(const raqm_glyph_t *glyphs, size_t count, size_t letter_count, size_t *ends)
{
    for (size_t i = 0; i < letter_count; i++) {
        ends[i] = 0;
    }
    for (size_t i = 0; i < count; i++) {
        ends[glyphs[i].cluster] = 1; /* a cluster begins there */
    }
    size_t end = letter_count;
    for (size_t i = letter_count; i > 0; i--) {
        bool begins = ends[i - 1] != 0;
        ends[i - 1] = end;
        end = begins ? i - 1 : end;
    }
}

/* How many glyphs one cluster has, from `begin` on, or with `backward` before it. */
static size_t cluster_glyphs(const raqm_glyph_t *glyphs, size_t count, size_t begin, bool backward)
{
    size_t size = 1;
    if (backward) {
        while (size < begin && glyphs[begin - 1 - size].cluster == glyphs[begin - 1].cluster) {
            size++;
        }
        return size;
    }
    while (begin + size < count && glyphs[begin + size].cluster == glyphs[begin].cluster) {
        size++;
    }
    return size;
}

void fonts_mixed_clusters(const raqm_glyph_t *glyphs, size_t count, bool backward,
                          const uint32_t *letters, const size_t *ends, struct cluster_sink *sink)
{
    sink->count = 0;
    sink->size = 0;
    for (size_t done = 0, size; done < count; done += size) {
        size_t at = backward ? count - done : done;
        size = cluster_glyphs(glyphs, count, at, backward);
        size_t first = glyphs[backward ? at - 1 : at].cluster, before = sink->size;
        for (size_t i = first; i < ends[first]; i++) {
            sink->size += letter_bytes(letters[i], sink->bytes + sink->size);
        }
        sink->clusters[sink->count++] =
            (cairo_text_cluster_t){(int)(sink->size - before), (int)size};
    }
}

bool fonts_clusters(const raqm_glyph_t *glyphs, size_t count, const uint32_t *letters,
                    size_t letter_count, struct cluster_sink *sink)
{
    sink->count = 0;
    sink->size = 0;
    size_t begin = 0;
    while (begin < count) {
        size_t end = begin + 1;
        while (end < count && glyphs[end].cluster == glyphs[begin].cluster) {
            end++;
        }
        size_t first = begin == 0 ? 0 : glyphs[begin].cluster;
        size_t last = end < count ? glyphs[end].cluster : letter_count;
        if (last <= first) {
            return false;
        }
        size_t size = sink->size;
        for (size_t i = first; i < last; i++) {
            sink->size += letter_bytes(letters[i], sink->bytes + sink->size);
        }
        sink->clusters[sink->count++] =
            (cairo_text_cluster_t){(int)(sink->size - size), (int)(end - begin)};
        begin = end;
    }
    return count > 0;
}
