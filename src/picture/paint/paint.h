/* SPDX-License-Identifier: MIT */
/* paint: scene to cairo: print-true SVG, PDF, PNG. With text/ the only room that knows cairo. */
#ifndef PICTURE_PAINT_PAINT_H
#define PICTURE_PAINT_PAINT_H

#include <cairo.h>

#include "base/writer.h"
#include "picture/scene/scene.h"
#include "picture/text/text.h"

void paint_scene(cairo_t *cr, struct fonts *fonts, const struct scene *scene); /* at the origin */
void paint_role(cairo_t *cr, enum theme theme, enum role role); /* sets the source colour */
/* A disc without a rim, in the source colour, as a point of a round pen; the cap is butt behind it.
 */
void paint_point(cairo_t *cr, struct vec2 at, double radius);

struct paint_sheet { /* several scenes on one picture: strip and grid; each with its heading */
    const struct scene *const *scenes;
    const struct str *headings; /* may be NULL */
    size_t count, across;
    double gutter;
};
struct paint_options {
    struct str title, description, salt;
    double scale;     /* PNG: pixels per point, above 0 */
    bool fluid;       /* SVG: width 100 % instead of points */
    const char *date; /* PDF: ISO 8601, or NULL for none */
};
bool paint_svg(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer);
bool paint_pdf(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer);
bool paint_png(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer);
/* Whether the PNG is within 20,000 pixels a side, the most that is made. */
bool paint_png_fits(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
                    double scale);

#endif
