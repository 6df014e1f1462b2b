/* SPDX-License-Identifier: MIT */
/* pen: writes paths, circles and texts into the display list. */
#include "picture/scene/drawing.h"

#include <math.h>
#include <string.h>

struct scene_item *item_add(struct drawing *drawing, enum scene_class class, enum item_shape shape)
{
    struct scene_item item = {.class = class,
                              .shape = shape,
                              .task = -1,
                              .line = -1,
                              .who = BODY_NONE,
                              .other = BODY_NONE};
    VEC_PUSH(drawing->arena, &drawing->scene->items, item);
    drawing->scene->uses |= 1u << class;
    return &drawing->scene->items.at[drawing->scene->items.count - 1];
}

static void pen_push(struct drawing *drawing, struct path_element element)
{
    VEC_PUSH(drawing->arena, &drawing->pen, element);
}

void pen_move(struct drawing *drawing, struct vec2 at)
{
    pen_push(drawing, (struct path_element){OP_MOVE, {at, at, at}});
}

void pen_line(struct drawing *drawing, struct vec2 at)
{
    pen_push(drawing, (struct path_element){OP_LINE, {at, at, at}});
}

void pen_curve(struct drawing *drawing, struct vec2 handle1, struct vec2 handle2, struct vec2 end)
{
    pen_push(drawing, (struct path_element){OP_CURVE, {handle1, handle2, end}});
}

void pen_close(struct drawing *drawing)
{
    struct vec2 zero = {0, 0};
    pen_push(drawing, (struct path_element){OP_CLOSE, {zero, zero, zero}});
}

void pen_arc(struct drawing *drawing, struct vec2 centre, struct vec2 x, struct vec2 y, double a,
             double b)
{
    /* a cubic for an eighth of a turn or less is true to a ten-thousandth of the radius */
    int pieces = (int)floor(fabs(b - a) / (REAL_PI / 4)) + 1;
    double step = (b - a) / pieces;
    double reach = 4.0 / 3.0 * real_sin(step / 4) / real_cos(step / 4);
    for (int i = 0; i < pieces; i++) {
        double from = a + step * i, to = from + step;
        double c1 = real_cos(from), s1 = real_sin(from), c2 = real_cos(to), s2 = real_sin(to);
        struct vec2 p1 = vec2_along(vec2_along(centre, x, c1 - reach * s1), y, s1 + reach * c1);
        struct vec2 p2 = vec2_along(vec2_along(centre, x, c2 + reach * s2), y, s2 - reach * c2);
        pen_curve(drawing, p1, p2, vec2_along(vec2_along(centre, x, c2), y, s2));
    }
}

void pen_way(struct drawing *drawing, const struct vec2 *at, size_t count)
{
    pen_way_within(drawing, at, count, PEN_WITHIN);
}

void pen_way_within(struct drawing *drawing, const struct vec2 *at, size_t count, double tolerance)
{
    if (count == 0) {
        return;
    }
    pen_move(drawing, at[0]);
    struct path path = path_of(drawing->arena, at, count);
    struct curve curve = path_fit(drawing->arena, &path, tolerance, REAL_PI / 7);
    struct vec2 from = at[0];
    for (size_t i = 0; i < curve.count; i++) {
        const struct curve_piece *piece = &curve.piece[i];
        double bend = real_max(segment_distance(piece->handle1, from, piece->end, NULL),
                               segment_distance(piece->handle2, from, piece->end, NULL));
        if (bend < 0.02) {
            pen_line(drawing, piece->end);
        } else {
            pen_curve(drawing, piece->handle1, piece->handle2, piece->end);
        }
        from = piece->end;
    }
}

static struct scene_item *pen_end(struct drawing *drawing, enum scene_class class)
{
    struct scene_item *item = item_add(drawing, class, ITEM_PATH);
    item->count = drawing->pen.count;
    item->path = arena_take_array(drawing->arena, item->count, sizeof *item->path);
    if (item->count > 0) {
        memcpy(item->path, drawing->pen.at, item->count * sizeof *item->path);
    }
    drawing->pen.count = 0;
    return item;
}

struct scene_item *pen_stroke(struct drawing *drawing, enum scene_class class, enum role role,
                              double width)
{
    struct scene_item *item = pen_end(drawing, class);
    item->stroke = role;
    item->width = width;
    return item;
}

struct scene_item *pen_fill(struct drawing *drawing, enum scene_class class, enum role role)
{
    struct scene_item *item = pen_end(drawing, class);
    item->fill = role;
    return item;
}

struct scene_item *put_circle(struct drawing *drawing, enum scene_class class, struct vec2 at,
                              double radius, enum role fill, enum role stroke, double width)
{
    struct scene_item *item = item_add(drawing, class, ITEM_CIRCLE);
    item->at = at;
    item->radius = radius;
    item->fill = fill;
    item->stroke = stroke;
    item->width = width;
    return item;
}

struct scene_item *put_text(struct drawing *drawing, enum scene_class class, struct str text,
                            struct vec2 middle, double size, enum face face, enum role role)
{
    struct scene_item *item = item_add(drawing, class, ITEM_TEXT);
    item->at = vec2_of(middle.x, middle.y + 0.5 * METRICS_CAP_HEIGHT * size);
    if (str_is(text, "1")) {
        item->at.x -= 0.035 * size; /* its flag makes it look too far right */
    }
    item->text = text;
    item->size = size;
    item->face = face;
    item->fill = role;
    item->anchor = ANCHOR_MIDDLE;
    return item;
}

enum role ground_at(const struct drawing *drawing, struct vec2 at)
{
    const struct theme_row *theme = theme_row(drawing->options->theme);
    const struct court *court = drawing->frame.court;
    struct vec2 metres = frame_back(&drawing->frame, at);
    if (metres.y > court->half_court) {
        metres.y = 2 * court->half_court - metres.y;
    }
    if (theme->has_lane && court_in_lane(court, metres)) {
        return ROLE_LANE;
    }
    return theme->has_floor ? ROLE_FLOOR : ROLE_PAGE;
}
