/* SPDX-License-Identifier: MIT */
/* rows: see rows.h. */
#include "page/sheet/rows.h"

#include "picture/paint/document.h"

#define ROW_BASE 12.6
#define GOING_ON 5.0 /* under what a page opens with */

struct page *rows_page(const struct rows *rows)
{
    return &rows->pages.at[rows->pages.count - 1];
}

static void place(struct rows *rows, const struct galley *galley)
{
    struct page *page = rows_page(rows);
    galley_join(page->galley, galley, paper_of(rows->setter.job->a4)->margin, page->y);
    page->y += galley->height;
    page->empty = false;
}

struct page *rows_turn(struct rows *rows, bool first)
{
    struct page page = page_open(&rows->setter, rows->head, rows->caution, first);
    VEC_PUSH(rows->setter.arena, &rows->pages, page);
    VEC_PUSH(rows->setter.arena, &rows->cautions, rows->caution);
    if (!first && rows->columns) {
        place(rows, rows->columns);
    }
    return rows_page(rows);
}

double rows_room(const struct rows *rows)
{
    return rows_page(rows)->bottom - rows_page(rows)->y;
}

void rows_add(struct rows *rows, struct galley *row, unsigned uses)
{
    const double least = 90; /* what is left of a page that is still used */
    if (row->height > rows_room(rows) &&
        (row->height < rows_page(rows)->bottom / 2 || rows_room(rows) < least)) {
        rows_turn(rows, false);
    }
    bool fresh = false;
    while (row->height > rows_room(rows)) {
        struct galley *rest = galley_part(row, rows_room(rows));
        if (!rest && !fresh) { /* its first thing is too tall for what is left */
            rows_turn(rows, false);
            fresh = true;
            continue;
        }
        if (!rest || rest->items.count == 0) {
            break;
        }
        place(rows, row);
        rows_page(rows)->uses |= uses;
        rows_turn(rows, false);
        rows_page(rows)->y += GOING_ON;
        fresh = true;
        row = rest;
    }
    place(rows, row);
    rows_page(rows)->uses |= uses;
}

void row_end(struct galley *row, double weight)
{
    const double under_tails = 1.6; /* the height is below a line's tails */
    double y = row->height + under_tails;
    galley_rule(row, vec2_of(0, y), vec2_of(PAGE_WIDE, y), weight, ROLE_RULE);
    row->height = y;
}

const struct text_block *rows_set(const struct rows *rows, enum type type, struct str text)
{
    return words_set(&rows->setter, type, text, 0);
}

void row_put_end(struct galley *row, const struct text_block *words, double right, double base,
                 enum role role)
{
    galley_text(row, words, right - text_width(words), base, role);
}

struct galley *rows_section(const struct rows *rows, struct str title, struct str note)
{
    const double rule = ROW_BASE + 8;
    struct galley *row = galley_new(rows->setter.arena);
    galley_text(row, rows_set(rows, TYPE_HEADING, title), 0, ROW_BASE, ROLE_TEXT);
    galley_keep(row);
    row_put_end(row, rows_set(rows, TYPE_NOTE, note), PAGE_WIDE, ROW_BASE, ROLE_SOFT);
    galley_keep(row);
    galley_rule(row, vec2_of(0, rule), vec2_of(PAGE_WIDE, rule), 0.9, ROLE_INK);
    row->height = rule;
    return row;
}

/* What head and foot had to shorten. */
static void add_surplus(struct rows *rows, const struct caution *caution, bool surplus)
{
    struct galley *row = galley_new(rows->setter.arena);
    const struct galley *rest = head_surplus(&rows->setter, rows->head);
    if (rest) {
        galley_join(row, rest, 0, 6);
    }
    for (size_t i = 0; surplus && i < caution->own_count; i++) {
        double base = row->height > 0 ? row->height + 9 : ROW_BASE;
        galley_text(row, words_set(&rows->setter, TYPE_POINT, caution->own[i], PAGE_WIDE), 0, base,
                    ROLE_TEXT);
    }
    if (row->items.count > 0) {
        row_end(row, 0.5);
        rows_add(rows, row, 0);
        rows_page(rows)->y += GOING_ON;
    }
}

void rows_open(struct rows *rows, const struct head_words *head, const struct caution *caution)
{
    bool surplus;
    rows->head = head;
    rows->columns = NULL;
    rows->caution = page_caution(&rows->setter, caution, &surplus);
    rows_turn(rows, true);
    VEC_PUSH(rows->setter.arena, &rows->starts, rows->pages.count);
    VEC_PUSH(rows->setter.arena, &rows->titles, document_text(rows->setter.arena, head->title));
    add_surplus(rows, caution, surplus);
}

static void close_pages(struct rows *rows)
{
    for (size_t k = 0; k < rows->starts.count; k++) {
        size_t first = rows->starts.at[k] - 1;
        size_t end = k + 1 < rows->starts.count ? rows->starts.at[k + 1] - 1 : rows->pages.count;
        for (size_t i = first; i < end; i++) {
            page_close(&rows->setter, &rows->pages.at[i], rows->cautions.at[i], i - first + 1,
                       end - first);
        }
    }
}

static void paint_pages(struct document *document, struct rows *rows)
{
    size_t next = 0;
    for (size_t i = 0; i < rows->pages.count; i++) {
        for (; next < rows->starts.count && rows->starts.at[next] == i + 1; next++) {
            document_bookmark(document, 0, rows->titles.at[next], i + 1);
        }
        galley_paint(document->cr, rows->setter.fonts, rows->pages.at[i].galley, 0, 0);
        cairo_show_page(document->cr);
    }
}

bool rows_write(struct rows *rows, struct str title, struct writer *writer)
{
    const struct sheet_job *job = rows->setter.job;
    const struct paper *paper = paper_of(job->a4);
    struct document document;
    if (rows->pages.count == 0) {
        return false;
    }
    close_pages(rows);
    struct str club = head_club(job);
    struct str whole = str_format(rows->setter.arena, "%.*s%s%.*s", STR_ARG(club),
                                  club.size > 0 ? ", " : "", STR_ARG(title));
    document_init(&document, rows->setter.arena, whole, job->date);
    document_open(&document, paper->width, paper->height);
    paint_pages(&document, rows);
    if (!document_close(&document) || fonts_failed(rows->setter.fonts)) {
        return false;
    }
    writer_str(writer, strbuf_str(&document.sink.bytes));
    return !writer->failed;
}
