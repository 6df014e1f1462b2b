/* SPDX-License-Identifier: MIT */
/* trend: what was charted, by date. Private to sheet. */
#ifndef PAGE_SHEET_TREND_H
#define PAGE_SHEET_TREND_H

#include "page/sheet/sheet.h"

bool trend_holds(const struct sheet_job *job);
/* Every play of which something was charted, or the one of the job's title. */
bool trend_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                 struct writer *writer);

#endif
