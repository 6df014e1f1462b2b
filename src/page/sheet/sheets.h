/* SPDX-License-Identifier: MIT */
/* sheets: what the file of each sheet gives to the table of them: its pages and its document, and
 * whether there is anything for it. Private to sheet. */
#ifndef PAGE_SHEET_SHEETS_H
#define PAGE_SHEET_SHEETS_H

#include "page/sheet/booklet.h"

/* False: nothing could be written. */
#define SHEET(word, what, sizes, holds, plans, pages)                                              \
    bool pages(struct booklet *booklet, struct writer *writer);
#include "page/sheet/sheets.def"
#undef SHEET

/* The practices, the charted plays: all of them, or the one of the job's title. */
bool practice_holds(const struct sheet_job *job);
bool trend_holds(const struct sheet_job *job);

#endif
