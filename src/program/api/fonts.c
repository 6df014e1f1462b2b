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

void fonts_note_missing(struct courtwright *book)
{
    struct str letters;
    fonts_missing(book->fonts, &letters);
    size_t room = sizeof book->missing - 1;
    size_t size = letters.size < room ? letters.size : room;
    memcpy(book->missing, letters.at, size);
    book->missing[size] = '\0';
}

void fonts_let_go(struct courtwright *book)
{
    if (book->fonts) {
        fonts_destroy(book->fonts);
        book->fonts = NULL;
    }
}
