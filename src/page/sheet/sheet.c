/* SPDX-License-Identifier: MIT */
/* sheet: the table of sheets. One file and one row in sheets.def each. */
#include "page/sheet/sheet.h"

#include "page/sheet/chart.h"
#include "page/sheet/handout.h"
#include "page/sheet/practice.h"
#include "page/sheet/trend.h"

static const struct sheet_row rows[] = {
#define SHEET(word, what, holds, write) {word, what, holds, write},
#include "page/sheet/sheets.def"
#undef SHEET
};
enum { ROWS = sizeof rows / sizeof *rows };

size_t sheet_count(void)
{
    return ROWS;
}

const struct sheet_row *sheet_at(size_t index)
{
    return index < ROWS ? &rows[index] : NULL;
}

const struct sheet_row *sheet_find(struct str word)
{
    for (size_t i = 0; i < ROWS; i++) {
        if (str_is(word, rows[i].word)) {
            return &rows[i];
        }
    }
    return NULL;
}
