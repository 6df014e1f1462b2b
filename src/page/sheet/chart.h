/* SPDX-License-Identifier: MIT */
/* chart: the tally sheet. Private to sheet. */
#ifndef PAGE_SHEET_CHART_H
#define PAGE_SHEET_CHART_H

#include "page/sheet/sheet.h"

/* Of several plays those of which there is something to count; of one play in any case. */
bool chart_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                 struct writer *writer);

#endif
