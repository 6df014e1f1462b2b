/* SPDX-License-Identifier: MIT */
/* galley: set things with their places. Takes blocks and scenes, paints them; must not know plays.
 */
#include "page/sheet/galley.h"

#include <math.h>

#define DISC 5.2    /* radius of a sentence's disc */
#define DESCENT 3.0 /* kept free under a baseline */
#define ASCENT 8.0  /* and over it */

struct galley *galley_new(struct arena *arena)
{
    struct galley *galley = arena_new(arena, struct galley);
    galley->arena = arena;
    return galley;
}

static void add(struct galley *galley, struct placed placed)
{
    galley_reach(galley, placed.bottom);
    VEC_PUSH(galley->arena, &galley->items, placed);
}

void galley_reach(struct galley *galley, double y)
{
    galley->height = y > galley->height ? y : galley->height;
}

void galley_keep(struct galley *galley)
{
    if (galley->items.count > 0) {
        galley->items.at[galley->items.count - 1].keep = true;
    }
}

double galley_text(struct galley *galley, const struct text_block *text, double x, double y,
                   enum role role)
{
    size_t lines = text_lines(text);
    double leading = lines > 0 ? text_height(text) / (double)lines : 0;
    for (size_t i = 0; i < lines; i++) {
        double base = y + (double)i * leading;
        add(galley, (struct placed){.kind = PLACED_TEXT,
                                    .x = x,
                                    .y = base,
                                    .top = base - ASCENT,
                                    .bottom = base + DESCENT,
                                    .role = role,
                                    .text = text,
                                    .line = i});
    }
    return lines > 0 ? y + (double)(lines - 1) * leading : y;
}

void galley_scene(struct galley *galley, const struct scene *scene, double x, double y)
{
    add(galley, (struct placed){.kind = PLACED_SCENE,
                                .x = x,
                                .y = y,
                                .top = y,
                                .bottom = y + scene->height,
                                .keep = true,
                                .scene = scene});
}

void galley_disc(struct galley *galley, const struct text_block *number, double x, double y,
                 enum role role)
{
    add(galley, (struct placed){.kind = PLACED_DISC,
                                .x = x,
                                .y = y,
                                .top = y - DISC,
                                .bottom = y + DISC,
                                .role = role,
                                .keep = true,
                                .text = number});
}

void galley_rule(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                 enum role role)
{
    add(galley, (struct placed){.kind = PLACED_RULE,
                                .x = from.x,
                                .y = from.y,
                                .top = from.y,
                                .bottom = to.y,
                                .role = role,
                                .x2 = to.x,
                                .y2 = to.y,
                                .width = width});
}

void galley_box(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                enum role role, enum filling filling)
{
    add(galley, (struct placed){.kind = PLACED_BOX,
                                .x = from.x,
                                .y = from.y,
                                .top = from.y,
                                .bottom = to.y,
                                .role = role,
                                .x2 = to.x,
                                .y2 = to.y,
                                .width = width,
                                .filling = filling});
}

void galley_dot(struct galley *galley, struct vec2 at, double radius, enum role role,
                enum filling filling)
{
    add(galley, (struct placed){.kind = PLACED_DOT,
                                .x = at.x,
                                .y = at.y,
                                .top = at.y - radius,
                                .bottom = at.y + radius,
                                .role = role,
                                .width = radius,
                                .filling = filling});
}

void galley_sign(struct galley *galley, double x, double y)
{
    add(galley,
        (struct placed){
            .kind = PLACED_SIGN, .x = x, .y = y, .top = y - 6, .bottom = y + 6, .role = ROLE_INK});
}

void galley_cut(struct galley *galley, struct vec2 from, struct vec2 to)
{
    galley_rule(galley, from, to, 0.5, ROLE_SOFT);
    galley->items.at[galley->items.count - 1].line_kind = LINE_CUT;
}

void galley_scissors(struct galley *galley, double x, double y)
{
    add(galley, (struct placed){.kind = PLACED_SCISSORS,
                                .x = x,
                                .y = y,
                                .top = y - 4,
                                .bottom = y + 4,
                                .role = ROLE_SOFT});
}

static struct placed moved(struct placed placed, double x, double y)
{
    placed.x += x;
    placed.x2 += x;
    placed.y += y;
    placed.y2 += y;
    placed.top += y;
    placed.bottom += y;
    return placed;
}

void galley_join(struct galley *galley, const struct galley *other, double x, double y)
{
    for (size_t i = 0; i < other->items.count; i++) {
        add(galley, moved(other->items.at[i], x, y));
    }
    galley_reach(galley, other->height + y);
}

void galley_lower(struct galley *galley, size_t from, double y)
{
    for (size_t i = from; i < galley->items.count; i++) {
        galley->items.at[i] = moved(galley->items.at[i], 0, y);
    }
    galley->height += y;
}

/* ---- parting ---- */

static bool stays(const struct placed *placed, double cut)
{
    return placed->bottom <= cut + 1e-9;
}

/* The lowest place at most `height` at which nothing is left standing that has to stay with what
 * follows it. */
static double find_cut(const struct galley *galley, double height)
{
    for (size_t tries = 0; tries <= galley->items.count; tries++) {
        double cut = 0;
        for (size_t i = 0; i < galley->items.count; i++) {
            const struct placed *placed = &galley->items.at[i];
            if (placed->kind != PLACED_RULE && placed->bottom <= height && placed->bottom > cut) {
                cut = placed->bottom;
            }
        }
        double lower = cut;
        for (size_t i = 0; i + 1 < galley->items.count; i++) {
            const struct placed *placed = &galley->items.at[i];
            if (placed->keep && stays(placed, cut) && !stays(&galley->items.at[i + 1], cut) &&
                placed->top < lower) {
                lower = placed->top;
            }
        }
        if (lower >= cut) {
            return cut;
        }
        height = lower;
    }
    return 0;
}

static bool is_upright(const struct placed *placed)
{
    return placed->kind == PLACED_RULE && placed->x == placed->x2;
}

struct galley *galley_part(struct galley *galley, double height)
{
    double cut = find_cut(galley, height);
    if (cut <= 0) {
        return NULL;
    }
    struct galley all = *galley;
    double shift = all.height;
    for (size_t i = 0; i < all.items.count; i++) {
        const struct placed *placed = &all.items.at[i];
        if (placed->kind != PLACED_RULE && !stays(placed, cut)) {
            shift = placed->top < shift ? placed->top : shift;
        }
    }
    struct galley *rest = galley_new(galley->arena);
    struct galley *head = galley_new(galley->arena);
    for (size_t i = 0; i < all.items.count; i++) {
        struct placed placed = all.items.at[i];
        if (is_upright(&placed) && placed.y < cut && placed.y2 > cut) {
            struct placed below = placed; /* a rule beside the text goes on beside it */
            below.y = below.top = shift;
            if (below.y2 > shift) {
                add(rest, moved(below, 0, -shift));
            }
            placed.y2 = placed.bottom = cut;
            add(head, placed);
        } else if (stays(&placed, cut)) {
            add(head, placed);
        } else {
            add(rest, moved(placed, 0, -shift));
        }
    }
    *galley = *head;
    return rest;
}

/* ---- painting ---- */

static void paint_disc(cairo_t *cr, const struct placed *placed)
{
    const double whole_turn = 6.283185307179586;
    cairo_new_path(cr);
    cairo_arc(cr, placed->x, placed->y, DISC, 0, whole_turn);
    cairo_fill(cr);
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
            cairo_arc(cr, at_x, at_y, 0.5, 0, whole_turn);
        }
    }
    cairo_fill(cr);
}

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
    if (placed->filling == FILL_HATCH || placed->filling == FILL_DOTS) {
        cairo_path_t *frame = cairo_copy_path(cr);
        cairo_save(cr);
        cairo_clip(cr);
        (placed->filling == FILL_HATCH ? paint_hatch : paint_dots)(cr, placed->x, placed->y,
                                                                   placed->x2, placed->y2);
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

static void paint_placed(cairo_t *cr, struct fonts *fonts, const struct placed *placed)
{
    if (placed->kind == PLACED_SCENE) {
        cairo_save(cr);
        cairo_translate(cr, placed->x, placed->y);
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
