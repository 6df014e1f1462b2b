/* SPDX-License-Identifier: MIT */
/* clock: times of the day as they are said on paper. Private to sheet. */
#ifndef PAGE_SHEET_CLOCK_H
#define PAGE_SHEET_CLOCK_H

#include "page/sheet/words.h"

/* "5:30", or "17:30" on A4; `at` minutes after midnight. A practice with no start counts from 0:00.
 */
struct str clock_time(const struct setter *setter, double at, bool of_day);
/* "5:30 PM", "17:30" */
struct str clock_full(const struct setter *setter, double at, bool of_day);
/* "5:30 to 6:45 PM", "17:30 to 18:45" */
struct str clock_range(const struct setter *setter, double from, double to);

#endif
