/* SPDX-License-Identifier: MIT */
/* lay: several scenes on one picture, row by row, each under its heading. Private to paint. */
#ifndef PICTURE_PAINT_LAY_H
#define PICTURE_PAINT_LAY_H

#include "picture/paint/paint.h"

struct laid_cell {
    const struct scene *scene;
    const struct text_block *heading; /* or NULL */
    struct vec2 heading_at;           /* its first baseline */
    struct vec2 at;                   /* the scene's corner */
};
struct laid {
    struct laid_cell *cells;
    size_t count;
    double width, height;
    enum theme theme;
};

/* Takes all the memory that is needed; laid_paint takes none. */
struct laid lay(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet);
void laid_paint(cairo_t *cr, struct fonts *fonts, const struct laid *laid);

#endif
