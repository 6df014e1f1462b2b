/* SPDX-License-Identifier: MIT */
/* plan_bar: the minutes of a practice as one bar by kind, with its clock and its key. Private to
 * sheet. */
#ifndef PAGE_SHEET_PLAN_BAR_H
#define PAGE_SHEET_PLAN_BAR_H

#include "page/sheet/galley.h"
#include "page/sheet/words.h"

/* PAGE_WIDE across; its top is the bar's. */
struct galley *plan_bar(const struct setter *setter, const struct practice *practice);

#endif
