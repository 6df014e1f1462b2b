/* SPDX-License-Identifier: MIT */
/* rows: see rows.h. */
#include "page/sheet/rows.h"

#define GOING_ON 5.0   /* under what a page opens with */
#define NOTES_GAP 14.0 /* over ruled lines */

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

void rows_notes(struct rows *rows, int least)
{
    const double first = ROW_BASE + 6, foot = 4;
    int lines = (int)((rows_room(rows) - foot - first) / NOTES_PITCH) + 1;
    if (rows_room(rows) < first + foot || lines < least) {
        return;
    }
    struct galley *row = galley_new(rows->setter.arena);
    const struct text_block *word = rows_set(rows, TYPE_SMALL_HEADING, STR("Notes"));
    galley_text(row, word, 0, ROW_BASE + 4, ROLE_TEXT);
    double x = text_width(word) + 8;
    for (int i = 0; i < lines; i++) {
        double y = first + i * NOTES_PITCH;
        galley_rule(row, vec2_of(x, y), vec2_of(PAGE_WIDE, y), 0.5, ROLE_RULE);
        x = 0;
    }
    place(rows, row);
}

static void rule_rest(struct rows *rows)
{
    rows_page(rows)->y += NOTES_GAP;
    rows_notes(rows, NOTES_LEAST);
}

struct page *rows_turn(struct rows *rows, bool first)
{
    if (rows->ruled && rows->pages.count > 0) {
        rule_rest(rows);
    }
    struct page page = page_open(&rows->setter, rows->head, rows->caution, first);
    VEC_PUSH(rows->setter.arena, &rows->pages, page);
    if (!first && rows->columns) {
        place(rows, rows->columns);
    }
    return rows_page(rows);
}

double rows_room(const struct rows *rows)
{
    return rows_page(rows)->bottom - rows_page(rows)->y;
}

void rows_add(struct rows *rows, struct galley *row)
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
        rows_turn(rows, false);
        rows_page(rows)->y += GOING_ON;
        fresh = true;
        row = rest;
    }
    place(rows, row);
}

void rows_add_apart(struct rows *rows, struct galley *row, double gap)
{
    struct page *page = rows_page(rows);
    if (!page->empty && row->height + gap <= rows_room(rows)) {
        page->y += gap;
    } else if (!page->empty && row->height <= rows_room(rows)) {
        rows_turn(rows, false); /* it would touch what stands over it */
    }
    rows_add(rows, row);
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

void rows_name(const struct rows *rows, struct galley *row, enum type type, struct str name,
               struct vec2 base, double width, double rise)
{
    const struct setter *setter = &rows->setter;
    enum type smaller = type == TYPE_HEADING ? TYPE_SMALL_HEADING : TYPE_NOTE;
    const struct text_block *words = words_set(setter, type, name, width);
    if (text_lines(words) > 1) {
        words = words_set(setter, smaller, name, width);
        base.y -= text_lines(words) > 1 ? rise : 0;
    }
    galley_text(row, words, base.x, base.y, ROLE_TEXT);
}

struct galley *rows_section(const struct rows *rows, struct str title, struct str note)
{
    const double rule = ROW_BASE + 8;
    struct galley *row = galley_new(rows->setter.arena);
    galley_text(row, rows_set(rows, TYPE_HEADING, title), 0, ROW_BASE, ROLE_TEXT);
    galley_keep(row);
    galley_text_end(row, rows_set(rows, TYPE_NOTE, note), PAGE_WIDE, ROW_BASE, ROLE_SOFT);
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
        rows_add(rows, row);
        rows_page(rows)->y += GOING_ON;
    }
}

void rows_open(struct rows *rows, const struct head_words *head, const struct caution *caution)
{
    bool surplus;
    rows->head = head;
    rows->columns = NULL;
    rows->pages = (page_list){0};
    rows->caution = page_caution(&rows->setter, caution, &surplus);
    rows_turn(rows, true);
    add_surplus(rows, caution, surplus);
}

void rows_close(struct rows *rows, struct booklet *booklet, struct str mark)
{
    if (rows->ruled) {
        rule_rest(rows);
    }
    booklet_mark(booklet, mark, booklet->pages.count + 1, 0);
    for (size_t i = 0; i < rows->pages.count; i++) {
        struct page *page = &rows->pages.at[i];
        page_close(&rows->setter, page, rows->caution, i + 1, rows->pages.count);
        booklet_add(booklet, page->galley, page->head->foot);
    }
}

struct str rows_title(struct booklet *booklet, const char *one, const char *many)
{
    return booklet->marks.count == 1
               ? words_joined(&booklet->keep, str_of(booklet->marks.at[0].title), str_of(one))
               : str_of(many);
}

bool rows_write(struct booklet *booklet, struct str title, struct writer *writer)
{
    struct str club = head_club(booklet->setter.job);
    return booklet_write(booklet, words_joined(&booklet->keep, club, title), NULL, writer);
}
