/* SPDX-License-Identifier: MIT */
/* fonts: the faces, loaded once a handle. */
#ifndef PROGRAM_API_FONTS_H
#define PROGRAM_API_FONTS_H

#include "picture/text/text.h"
#include "program/api/handle.h"

struct fonts *fonts_of(struct courtwright *book);  /* NULL: they could not be loaded */
void fonts_note_missing(struct courtwright *book); /* to be called when something was drawn */

#endif
