/* SPDX-License-Identifier: MIT */
/* dates: when something was counted, in words. Private to sheet. */
#ifndef PAGE_SHEET_DATES_H
#define PAGE_SHEET_DATES_H

#include "page/sheet/counted.h"
#include "page/sheet/rows.h"

enum month { MONTH_LEFT_OUT, MONTH_SHORT, MONTH_IN_FULL };

struct span_of_days {
    struct str first, last;
    int from, to; /* day numbers */
};

/* "Nov 10"; on A4 "10 November", or in short "10 Nov"; the year with it where the dates are of
 * several. */
struct str date_words(const struct rows *rows, struct str date, enum month with_month,
                      bool with_year);
/* The first and the last day of all that was counted. */
struct span_of_days dates_span(const counted_list *counted);
bool is_of_years(const struct span_of_days *span);
/* "Nov 14 Millrace; Nov 21 film, Quarry Bay": the games in which the play was charted, where it was
 * said whom they were against; empty: none. */
struct str dates_games(const struct rows *rows, const struct play *play, bool with_year);

#endif
