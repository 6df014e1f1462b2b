/* SPDX-License-Identifier: MIT */
/* borrow: see borrow.h. Takes a letter, gives a face; must not know lines. The one place that asks
 * fontconfig. */
#include "picture/text/borrow.h"

#include "picture/text/fonts.h"

#include <fontconfig/fontconfig.h>
#include <stdlib.h>
#include <string.h>

enum { NOT_FOUND_MOST = 256 };

struct borrowing {
    FcConfig *config; /* our own: what the program itself has set up is left alone */
    struct borrowed faces[BORROWED_MOST];
    int count;
    uint32_t not_found[NOT_FOUND_MOST]; /* letters that no font has, so as not to ask again */
    int not_found_count;
};

struct borrowing *borrowing_create(void)
{
    struct borrowing *borrowing = calloc(1, sizeof *borrowing);
    if (!borrowing) {
        return NULL;
    }
    borrowing->config = FcInitLoadConfigAndFonts();
    if (!borrowing->config) {
        free(borrowing);
        return NULL;
    }
    return borrowing;
}

void borrowing_destroy(struct borrowing *borrowing)
{
    if (!borrowing) {
        return;
    }
    for (int i = 0; i < borrowing->count; i++) {
        cairo_font_face_destroy(borrowing->faces[i].painting);
        FT_Done_Face(borrowing->faces[i].shaping);
    }
    FcConfigDestroy(borrowing->config);
    free(borrowing);
}

const struct borrowed *borrowing_at(const struct borrowing *borrowing, int index)
{
    return &borrowing->faces[index];
}

/* A face for sans serif text with this letter in it, as the machine's settings like it best. */
static FcPattern *wish_for(bool bold, uint32_t letter)
{
    FcPattern *wish = FcPatternCreate();
    FcCharSet *letters = FcCharSetCreate();
    if (wish && letters) {
        FcCharSetAddChar(letters, letter);
        FcPatternAddCharSet(wish, FC_CHARSET, letters);
        FcPatternAddString(wish, FC_FAMILY, (const FcChar8 *)"sans-serif");
        FcPatternAddInteger(wish, FC_WEIGHT, bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
        FcPatternAddInteger(wish, FC_SLANT, FC_SLANT_ROMAN);
        FcPatternAddBool(wish, FC_SCALABLE, FcTrue);
        FcPatternAddBool(wish, FC_COLOR, FcFalse);
    }
    if (letters) {
        FcCharSetDestroy(letters);
    }
    return wish;
}

static FcPattern *match(const struct borrowing *borrowing, bool bold, uint32_t letter)
{
    FcPattern *wish = wish_for(bold, letter);
    if (!wish) {
        return NULL;
    }
    FcResult result = FcResultNoMatch;
    FcConfigSubstitute(borrowing->config, wish, FcMatchPattern);
    FcDefaultSubstitute(wish);
    FcPattern *found = FcFontMatch(borrowing->config, wish, &result);
    FcPatternDestroy(wish);
    return found;
}

static FT_Face load(FT_Library library, const char *path, int index)
{
    FT_Face face = NULL;
    return FT_New_Face(library, path, index, &face) ? NULL : face;
}

static bool is_usable(FT_Face face, uint32_t letter)
{
    return face && FT_IS_SCALABLE(face) && FT_Get_Char_Index(face, letter) != 0;
}

/* Adds the face of a file; false, and nothing kept, when it has not the letter after all. */
static bool add(struct borrowing *borrowing, FT_Library library, FcPattern *found, bool bold,
                uint32_t letter)
{
    FcChar8 *path = NULL, *name = NULL;
    int index = 0;
    if (FcPatternGetString(found, FC_FILE, 0, &path) != FcResultMatch) {
        return false;
    }
    FcPatternGetInteger(found, FC_INDEX, 0, &index);
    struct borrowed face = {.shaping = load(library, (const char *)path, index), .bold = bold};
    if (!is_usable(face.shaping, letter) || !fonts_size_for_shaping(face.shaping)) {
        FT_Done_Face(face.shaping);
        return false;
    }
    face.painting = fonts_for_painting(library, load(library, (const char *)path, index));
    if (!face.painting) {
        FT_Done_Face(face.shaping);
        return false;
    }
    if (FcPatternGetString(found, FC_FAMILY, 0, &name) == FcResultMatch) {
        strncpy(face.name, (const char *)name, BORROWED_NAME - 1);
    }
    borrowing->faces[borrowing->count++] = face;
    return true;
}

static int among(const struct borrowing *borrowing, bool bold, uint32_t letter)
{
    for (int i = 0; i < borrowing->count; i++) {
        const struct borrowed *face = &borrowing->faces[i];
        if (face->bold == bold && FT_Get_Char_Index(face->shaping, letter) != 0) {
            return i;
        }
    }
    return -1;
}

static bool is_not_found(const struct borrowing *borrowing, uint32_t letter)
{
    for (int i = 0; i < borrowing->not_found_count; i++) {
        if (borrowing->not_found[i] == letter) {
            return true;
        }
    }
    return false;
}

int borrowing_find(struct borrowing *borrowing, FT_Library library, bool bold, uint32_t letter)
{
    int index = among(borrowing, bold, letter);
    if (index >= 0 || borrowing->count == BORROWED_MOST || is_not_found(borrowing, letter)) {
        return index;
    }
    FcPattern *found = match(borrowing, bold, letter);
    bool added = found && add(borrowing, library, found, bold, letter);
    if (found) {
        FcPatternDestroy(found);
    }
    if (added) {
        return borrowing->count - 1;
    }
    if (borrowing->not_found_count < NOT_FOUND_MOST) {
        borrowing->not_found[borrowing->not_found_count++] = letter;
    }
    return -1;
}
