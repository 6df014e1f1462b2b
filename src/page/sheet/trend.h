/* SPDX-License-Identifier: MIT */
/* trend: what both parts of a trend print of what was counted. Private to sheet. */
#ifndef PAGE_SHEET_TREND_H
#define PAGE_SHEET_TREND_H

#include "floor/season/share.h"
#include "page/sheet/counted.h"
#include "page/sheet/rows.h"

#define TREND_DOT 2.7

/* `kind` is that of the row: a share of what was seen, or points a trip. */
struct interval trend_interval(int kind, int made, int of);
struct str trend_value(struct arena *arena, int kind, double value);             /* "64%", "0.69" */
struct str trend_range(struct arena *arena, int kind, struct interval interval); /* "(57-75)" */
struct str trend_count(struct arena *arena, int kind, int made, int of);         /* "46 of 69" */
/* Rows for who did it, where that was charted. */
void trend_players(struct rows *rows, const struct counted *counted);

#endif
