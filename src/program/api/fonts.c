/* SPDX-License-Identifier: MIT */
/* fonts: see fonts.h. Left out of the core. */
#include "program/api/fonts.h"

#include <string.h>

struct fonts *fonts_of(struct courtwright *book)
{
    if (!book->fonts) {
        book->fonts = fonts_create();
    }
    return book->fonts;
}

static void note(char *into, size_t room, struct str text)
{
    size_t size = text.size < room - 1 ? text.size : room - 1;
    memcpy(into, text.at, size);
    into[size] = '\0';
}

void fonts_note_missing(struct courtwright *book)
{
    struct str letters;
    const char *face;
    fonts_missing(book->fonts, &letters);
    note(book->missing, sizeof book->missing, letters);
    fonts_borrowed(book->fonts, &letters, &face);
    note(book->borrowed, sizeof book->borrowed, letters);
    note(book->borrowed_face, sizeof book->borrowed_face, str_of(face));
}

void fonts_let_go(struct courtwright *book)
{
    if (book->fonts) {
        fonts_destroy(book->fonts);
        book->fonts = NULL;
    }
}
