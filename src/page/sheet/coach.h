/* SPDX-License-Identifier: MIT */
/* coach: the coach's sheet, a row of sheets.def. Private to sheet. */
#ifndef PAGE_SHEET_COACH_H
#define PAGE_SHEET_COACH_H

#include "page/sheet/sheet.h"

bool coach_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                 struct writer *writer);

#endif
