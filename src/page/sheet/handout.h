/* SPDX-License-Identifier: MIT */
/* handout: the players' sheet, a row of sheets.def. Private to sheet. */
#ifndef PAGE_SHEET_HANDOUT_H
#define PAGE_SHEET_HANDOUT_H

#include "page/sheet/sheet.h"

bool handout_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                   struct writer *writer);

#endif
