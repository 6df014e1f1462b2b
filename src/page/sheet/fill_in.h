/* SPDX-License-Identifier: MIT */
/* fill_in: the sheet with lines taken away, a row of sheets.def. Private to sheet. */
#ifndef PAGE_SHEET_FILL_IN_H
#define PAGE_SHEET_FILL_IN_H

#include "page/sheet/sheet.h"

bool fill_in_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                   struct writer *writer);

#endif
