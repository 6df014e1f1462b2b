/* SPDX-License-Identifier: MIT */
/* galley_paint: what was set, put on cairo's page. Takes a galley, gives ink, links and places;
 * must not know plays. */
#include "page/sheet/galley.h"

#include <assert.h>
#include <string.h>

static void paint_disc(cairo_t *cr, const struct placed *placed)
{
    paint_point(cr, vec2_of(placed->x, placed->y), GALLEY_DISC);
    paint_role(cr, THEME_PRINT, ROLE_ORDER_TEXT);
    text_draw(cr, placed->text, placed->x - text_width(placed->text) / 2, placed->y + 2.9, 0, 1);
}

static void paint_rule(cairo_t *cr, const struct placed *placed)
{
    cairo_set_line_width(cr, placed->width);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
    static const double dashes[][2] = {
        [LINE_WHOLE] = {0, 0}, [LINE_DOTTED] = {0.8, 2.4}, [LINE_CUT] = {2.5, 2.5}};
    const double *dash = dashes[placed->line_kind];
    cairo_set_dash(cr, dash, placed->line_kind == LINE_WHOLE ? 0 : 2, 0);
    cairo_move_to(cr, placed->x, placed->y);
    cairo_line_to(cr, placed->x2, placed->y2);
    cairo_stroke(cr);
    cairo_set_dash(cr, dash, 0, 0);
}

/* Slanting lines 4 apart, upward to the right. */
static void paint_hatch(cairo_t *cr, double x, double y, double x2, double y2)
{
    const double pitch = 4 * 1.41421356;
    double height = y2 - y;
    for (double at = x - height; at < x2; at += pitch) {
        cairo_move_to(cr, at, y2);
        cairo_line_to(cr, at + height, y);
    }
    cairo_set_line_width(cr, 0.6);
    cairo_stroke(cr);
}

static void paint_dots(cairo_t *cr, double x, double y, double x2, double y2)
{
    const double pitch = 4, whole_turn = 6.283185307179586;
    for (double at_y = y + pitch / 2; at_y < y2; at_y += pitch) {
        for (double at_x = x + pitch / 2; at_x < x2; at_x += pitch) {
            cairo_new_sub_path(cr);
            cairo_arc(cr, at_x, at_y, 0.8, 0, whole_turn);
        }
    }
    cairo_fill(cr);
}

/* Level lines: a gray alone is white on a copy. */
static void paint_lines(cairo_t *cr, double x, double y, double x2, double y2)
{
    const double pitch = 4;
    for (double at = y + pitch / 2; at < y2; at += pitch) {
        cairo_move_to(cr, x, at);
        cairo_line_to(cr, x2, at);
    }
    cairo_set_line_width(cr, 0.5);
    cairo_stroke(cr);
}

typedef void pattern_painter(cairo_t *cr, double x, double y, double x2, double y2);
static pattern_painter *const patterns[] = {
    [FILL_ROLE] = NULL, /* and those that are even all over */
    [FILL_LINED] = paint_lines,
    [FILL_HATCH] = paint_hatch,
    [FILL_DOTS] = paint_dots,
};

/* What a filling puts inside the path that is laid, and leaves the path. */
static void paint_filling(cairo_t *cr, const struct placed *placed)
{
    const double light = 0xD9 / 255.0, dark = 0x4D / 255.0;
    cairo_save(cr);
    switch (placed->filling) {
    case FILL_OPEN:
    case FILL_HATCH:
    case FILL_DOTS:
        cairo_set_source_rgb(cr, 1, 1, 1);
        break;
    case FILL_LIGHT:
    case FILL_LINED:
        cairo_set_source_rgb(cr, light, light, light);
        break;
    case FILL_DARK:
        cairo_set_source_rgb(cr, dark, dark, dark);
        break;
    case FILL_ROLE:
        break;
    }
    cairo_fill_preserve(cr);
    cairo_restore(cr);
}

static void paint_box(cairo_t *cr, const struct placed *placed)
{
    cairo_new_path(cr);
    cairo_rectangle(cr, placed->x, placed->y, placed->x2 - placed->x, placed->y2 - placed->y);
    paint_filling(cr, placed);
    pattern_painter *paint = patterns[placed->filling];
    if (paint) {
        cairo_path_t *frame = cairo_copy_path(cr);
        cairo_save(cr);
        cairo_clip(cr);
        paint(cr, placed->x, placed->y, placed->x2, placed->y2);
        cairo_restore(cr);
        cairo_append_path(cr, frame);
        cairo_path_destroy(frame);
    }
    cairo_set_line_width(cr, placed->width);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
    placed->width > 0 ? cairo_stroke(cr) : cairo_new_path(cr);
}

static void paint_dot(cairo_t *cr, const struct placed *placed)
{
    const double whole_turn = 6.283185307179586, rim = 1.1;
    cairo_new_path(cr);
    cairo_arc(cr, placed->x, placed->y, placed->width - rim / 2, 0, whole_turn);
    paint_filling(cr, placed);
    cairo_set_line_width(cr, rim);
    cairo_stroke(cr);
}

/* A triangle with a stroke and a dot in it, 12.4 by 10.8. */
static void paint_sign(cairo_t *cr, const struct placed *placed)
{
    cairo_set_line_width(cr, 1.1);
    cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
    cairo_move_to(cr, placed->x, placed->y - 5.4);
    cairo_line_to(cr, placed->x + 6.2, placed->y + 5.4);
    cairo_line_to(cr, placed->x - 6.2, placed->y + 5.4);
    cairo_close_path(cr);
    cairo_stroke(cr);
    cairo_move_to(cr, placed->x, placed->y - 2);
    cairo_line_to(cr, placed->x, placed->y + 1.8);
    cairo_stroke(cr);
    cairo_rectangle(cr, placed->x - 0.55, placed->y + 2.7, 1.1, 1.1);
    cairo_fill(cr);
}

/* Two open blades that meet to the right, each with its ring, 12 long. */
static void paint_scissors(cairo_t *cr, const struct placed *placed)
{
    const double ring = 1.9, whole_turn = 6.283185307179586;
    cairo_set_line_width(cr, 0.7);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_ROUND);
    for (int side = -1; side <= 1; side += 2) {
        double y = placed->y + side * 2.4;
        cairo_new_sub_path(cr);
        cairo_arc(cr, placed->x + ring, y, ring, 0, whole_turn);
        cairo_move_to(cr, placed->x + 2 * ring - 0.4, y - side * 0.8);
        cairo_line_to(cr, placed->x + 12, placed->y - side * 2.2);
    }
    cairo_stroke(cr);
    cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
}

/* Takes no memory: names are short. */
enum { ATTRIBUTES_MOST = 400, PLACE_MOST = 100 };

static size_t print_text(char *out, size_t size, const char *text)
{
    size_t length = strlen(text);
    assert(size + length + 1 < ATTRIBUTES_MOST);
    memcpy(out + size, text, length + 1);
    return size + length;
}

static size_t print_number(char *out, size_t size, const char *before, double value)
{
    size = print_text(out, size, before);
    size += number_print(out + size, value, 2, false);
    out[size] = '\0';
    return size;
}

/* Rectangles and places of tags are the page's own, whatever was moved. */
static void paint_link(cairo_t *cr, const struct placed *placed)
{
    char tag[ATTRIBUTES_MOST];
    double x = placed->x, y = placed->y, x2 = placed->x2, y2 = placed->y2;
    cairo_user_to_device(cr, &x, &y);
    cairo_user_to_device(cr, &x2, &y2);
    assert(strlen(placed->place) < PLACE_MOST);
    size_t size = print_number(tag, 0, "rect=[", x);
    size = print_number(tag, size, " ", y);
    size = print_number(tag, size, " ", x2 - x);
    size = print_number(tag, size, " ", y2 - y);
    size = print_text(tag, size, "] dest='");
    size = print_text(tag, size, placed->place);
    print_text(tag, size, "'");
    cairo_tag_begin(cr, CAIRO_TAG_LINK, tag);
    cairo_tag_end(cr, CAIRO_TAG_LINK);
}

static void paint_place(cairo_t *cr, const struct placed *placed)
{
    char tag[ATTRIBUTES_MOST];
    double x = placed->x, y = placed->y;
    cairo_user_to_device(cr, &x, &y);
    assert(strlen(placed->place) < PLACE_MOST);
    size_t size = print_text(tag, 0, "name='");
    size = print_text(tag, size, placed->place);
    size = print_number(tag, size, "' x=", x);
    print_number(tag, size, " y=", y);
    cairo_tag_begin(cr, CAIRO_TAG_DEST, tag);
    cairo_tag_end(cr, CAIRO_TAG_DEST);
}

static void paint_placed(cairo_t *cr, struct fonts *fonts, const struct placed *placed)
{
    if (placed->kind == PLACED_SCENE) {
        cairo_save(cr);
        /* To whole points: pictures of one size have the same digits then, which a file packs. */
        cairo_translate(cr, round(placed->x), round(placed->y));
        paint_scene(cr, fonts, placed->scene);
        cairo_restore(cr);
        return;
    }
    paint_role(cr, THEME_PRINT, placed->role);
    switch (placed->kind) {
    case PLACED_TEXT:
        text_draw(cr, placed->text, placed->x, placed->y, placed->line, placed->line + 1);
        break;
    case PLACED_DISC:
        paint_disc(cr, placed);
        break;
    case PLACED_RULE:
        paint_rule(cr, placed);
        break;
    case PLACED_SIGN:
        paint_sign(cr, placed);
        break;
    case PLACED_LINK:
        paint_link(cr, placed);
        break;
    case PLACED_PLACE:
        paint_place(cr, placed);
        break;
    case PLACED_SCISSORS:
        paint_scissors(cr, placed);
        break;
    case PLACED_BOX:
        paint_box(cr, placed);
        break;
    case PLACED_DOT:
        paint_dot(cr, placed);
        break;
    case PLACED_SCENE:
        break;
    }
}

void galley_paint(cairo_t *cr, struct fonts *fonts, const struct galley *galley, double x, double y)
{
    cairo_save(cr);
    cairo_translate(cr, x, y);
    for (size_t i = 0; i < galley->items.count; i++) {
        paint_placed(cr, fonts, &galley->items.at[i]);
    }
    cairo_restore(cr);
}
