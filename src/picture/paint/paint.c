/* SPDX-License-Identifier: MIT */
/* paint: a scene's items with cairo. Takes a display list and a context; must not know files. */
#include "picture/paint/paint.h"

void paint_role(cairo_t *cr, enum theme theme, enum role role)
{
    unsigned rgb = theme_row(theme)->rgb[role];
    cairo_set_source_rgb(cr, (rgb >> 16 & 0xFF) / 255.0, (rgb >> 8 & 0xFF) / 255.0,
                         (rgb & 0xFF) / 255.0);
}

static void trace(cairo_t *cr, const struct path_element *element)
{
    const struct vec2 *p = element->p;
    switch (element->op) {
    case OP_MOVE:
        cairo_move_to(cr, p[0].x, p[0].y);
        break;
    case OP_LINE:
        cairo_line_to(cr, p[0].x, p[0].y);
        break;
    case OP_CURVE:
        cairo_curve_to(cr, p[0].x, p[0].y, p[1].x, p[1].y, p[2].x, p[2].y);
        break;
    case OP_CLOSE:
        cairo_close_path(cr);
        break;
    }
}

static void outline(cairo_t *cr, const struct scene_item *item)
{
    cairo_new_path(cr);
    if (item->shape == ITEM_CIRCLE) {
        const double whole_turn = 6.283185307179586;
        cairo_arc(cr, item->at.x, item->at.y, item->radius, 0, whole_turn);
        cairo_close_path(cr);
        return;
    }
    for (size_t i = 0; i < item->count; i++) {
        trace(cr, &item->path[i]);
    }
}

/* A fifth of what the four arcs of a circle take in a file. It has a length, since there are
 * readers that leave out a line that has none. */
void paint_point(cairo_t *cr, struct vec2 at, double radius)
{
    const double half = .005;
    cairo_set_line_width(cr, 2 * radius);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    cairo_new_path(cr);
    cairo_move_to(cr, at.x - half, at.y);
    cairo_line_to(cr, at.x + half, at.y);
    cairo_stroke(cr);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
}

static void paint_shape(cairo_t *cr, enum theme theme, const struct scene_item *item)
{
    if (item->shape == ITEM_CIRCLE && item->fill != ROLE_NONE && item->stroke == ROLE_NONE) {
        paint_role(cr, theme, item->fill);
        paint_point(cr, item->at, item->radius);
        return;
    }
    outline(cr, item);
    if (item->fill != ROLE_NONE) {
        paint_role(cr, theme, item->fill);
        cairo_fill_preserve(cr);
    }
    if (item->stroke != ROLE_NONE) {
        paint_role(cr, theme, item->stroke);
        cairo_set_line_width(cr, item->width);
        cairo_set_line_cap(cr, item->cap == CAP_ROUND ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
        cairo_set_line_join(cr, item->join == JOIN_MITER ? CAIRO_LINE_JOIN_MITER
                                                         : CAIRO_LINE_JOIN_ROUND);
        cairo_set_miter_limit(cr, 4);
        cairo_stroke_preserve(cr);
    }
    cairo_new_path(cr);
}

static void paint_text(cairo_t *cr, struct fonts *fonts, enum theme theme,
                       const struct scene_item *item)
{
    if (item->fill == ROLE_NONE) {
        return;
    }
    paint_role(cr, theme, item->fill);
    text_show(cr, fonts, item->face, item->size, item->at, item->anchor == ANCHOR_MIDDLE ? 0.5 : 0,
              item->text);
}

void paint_scene(cairo_t *cr, struct fonts *fonts, const struct scene *scene)
{
    cairo_save(cr);
    cairo_rectangle(cr, 0, 0, scene->width, scene->height);
    cairo_clip(cr);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->shape == ITEM_TEXT) {
            paint_text(cr, fonts, scene->theme, item);
        } else {
            paint_shape(cr, scene->theme, item);
        }
    }
    cairo_restore(cr);
}
