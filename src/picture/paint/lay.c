/* SPDX-License-Identifier: MIT */
/* lay: where each scene of a strip or grid goes. */
#include "picture/paint/lay.h"

#define HEADING_GAP 8.0      /* from a heading's last baseline to its diagram */
#define HEADING_NARROW 200.0 /* a diagram narrower than this has the smaller heading */

static double widest(const struct paint_sheet *sheet)
{
    double width = 0;
    for (size_t i = 0; i < sheet->count; i++) {
        width = sheet->scenes[i]->width > width ? sheet->scenes[i]->width : width;
    }
    return width;
}

static struct text_style heading_style(double column)
{
    return column < HEADING_NARROW ? (struct text_style){.size = 9.5, .leading = 12}
                                   : (struct text_style){.size = 11, .leading = 14};
}

/* Height of the row's headings, the gap below included; 0 when none has one. */
static double set_headings(struct arena *arena, struct fonts *fonts,
                           const struct paint_sheet *sheet, struct laid_cell *row, size_t first,
                           size_t count, double column)
{
    struct text_style style = heading_style(column);
    double height = 0;
    for (size_t i = 0; sheet->headings && i < count; i++) {
        struct text_piece piece = {sheet->headings[first + i], FACE_BOLD};
        if (piece.text.size == 0) {
            continue;
        }
        const struct text_block *block = text_layout(arena, fonts, &piece, 1, &style, column);
        double lines = text_height(block) - style.leading;
        double tall = METRICS_CAP_HEIGHT * style.size + lines + HEADING_GAP;
        row[i].heading = block;
        height = tall > height ? tall : height;
    }
    for (size_t i = 0; i < count; i++) {
        row[i].heading_at.y = METRICS_CAP_HEIGHT * style.size;
    }
    return height;
}

static double row_height(const struct paint_sheet *sheet, size_t first, size_t count)
{
    double height = 0;
    for (size_t i = first; i < first + count; i++) {
        height = sheet->scenes[i]->height > height ? sheet->scenes[i]->height : height;
    }
    return height;
}

struct laid lay(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet)
{
    size_t across =
        sheet->across == 0 || sheet->across > sheet->count ? sheet->count : sheet->across;
    double column = widest(sheet);
    double edge = sheet->count > 1 || sheet->headings ? sheet->gutter / 2 : 0;
    struct laid laid = {.cells = arena_array(arena, struct laid_cell, sheet->count),
                        .count = sheet->count,
                        .width =
                            (double)across * (column + sheet->gutter) - sheet->gutter + 2 * edge,
                        .theme = sheet->count ? sheet->scenes[0]->theme : THEME_PRINT};
    for (size_t first = 0; first < sheet->count; first += across) {
        size_t count = sheet->count - first < across ? sheet->count - first : across;
        struct laid_cell *row = laid.cells + first;
        double top = first ? laid.height + sheet->gutter : edge;
        double heading = set_headings(arena, fonts, sheet, row, first, count, column);
        for (size_t i = 0; i < count; i++) {
            double x = edge + (double)i * (column + sheet->gutter);
            row[i].scene = sheet->scenes[first + i];
            row[i].heading_at = (struct vec2){x, top + row[i].heading_at.y};
            row[i].at = (struct vec2){x, top + heading};
        }
        laid.height = top + heading + row_height(sheet, first, count);
    }
    laid.height += edge;
    return laid;
}

void laid_paint(cairo_t *cr, struct fonts *fonts, const struct laid *laid)
{
    if (laid->count > 1 || laid->cells[0].heading) {
        /* No cairo_paint: over a whole PDF page it makes cairo 1.16 forget the open structure tag.
         */
        paint_role(cr, laid->theme, ROLE_PAGE);
        cairo_rectangle(cr, 0, 0, laid->width, laid->height);
        cairo_fill(cr);
    }
    for (size_t i = 0; i < laid->count; i++) {
        const struct laid_cell *cell = &laid->cells[i];
        if (cell->heading) {
            paint_role(cr, laid->theme, ROLE_TEXT);
            text_draw(cr, cell->heading, cell->heading_at.x, cell->heading_at.y, 0,
                      text_lines(cell->heading));
        }
        cairo_save(cr);
        cairo_translate(cr, cell->at.x, cell->at.y);
        paint_scene(cr, fonts, cell->scene);
        cairo_restore(cr);
    }
}
