/* SPDX-License-Identifier: MIT */
/* fonts: see fonts.h. Left out of the core. */
#include "program/api/fonts.h"

struct fonts *fonts_of(struct courtwright *book)
{
    if (!book->fonts) {
        book->fonts = fonts_create();
    }
    return book->fonts;
}

void fonts_let_go(struct courtwright *book)
{
    if (book->fonts) {
        fonts_destroy(book->fonts);
        book->fonts = NULL;
    }
}
