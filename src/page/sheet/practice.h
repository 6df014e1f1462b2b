/* SPDX-License-Identifier: MIT */
/* practice: the practice plan. Private to sheet. */
#ifndef PAGE_SHEET_PRACTICE_H
#define PAGE_SHEET_PRACTICE_H

#include "page/sheet/sheet.h"

bool practice_holds(const struct sheet_job *job);
/* All practices of the book, or the one of the job's title. */
bool practice_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                    struct writer *writer);

#endif
