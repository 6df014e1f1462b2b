/* SPDX-License-Identifier: MIT */
/* sheet: the table of sheets. One file and one row in sheets.def each. */
#include "page/sheet/sheet.h"

#include "page/sheet/sheets.h"

static const int grid_sizes[] = {1, 2, 4, 6, 9, 0};
static const int card_sizes[] = {12, 20, 0};
static const int no_sizes[] = {0};
static const struct sheet_row rows[] = {
#define SHEET(word, what, sizes, holds, plans, pages) {word, what, sizes, holds, plans, pages},
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

bool sheet_takes(const struct sheet_row *row, int per_page)
{
    const int *size = row->sizes;
    while (*size && *size != per_page) {
        size++;
    }
    return *size == per_page;
}

bool sheet_write(const struct sheet_row *row, struct arena *arena, struct fonts *fonts,
                 const struct sheet_job *job, struct writer *writer)
{
    struct setter setter = {.arena = arena, .fonts = fonts, .job = job};
    return booklet_make(&setter, row->pages, writer);
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
