/* SPDX-License-Identifier: MIT */
/* court_lines: the floor of the rules in force, to scale, from the court's row. Lines are never
 * thinner than can be printed; curves are cubics. Knows nothing of players. */
#include "picture/scene/drawing.h"

/* One half of the floor; the far one is mirrored over the division line. */
struct half {
    struct drawing *drawing;
    const struct court *court;
    double line;   /* feet */
    double points; /* the same on paper, or the least */
    bool far;
};

static struct vec2 half_point(const struct half *half, double x, double y)
{
    double length = 2 * (half->court->half_court - half->court->baseline) / FEET;
    return frame_point_feet(&half->drawing->frame, x, half->far ? length - y : y);
}

/* y in metres from the ring as feet from the baseline. */
static double feet_y(const struct half *half, double metres)
{
    return (metres - half->court->baseline) / FEET;
}

static void arc_about(const struct half *half, double y, double radius, double a, double b)
{
    struct frame *frame = &half->drawing->frame;
    struct vec2 x_axis = vec2_scale(frame->across, radius);
    struct vec2 y_axis = vec2_scale(frame->down, half->far ? -radius : radius);
    pen_arc(half->drawing, half_point(half, 0, y), x_axis, y_axis, a, b);
}

static void half_stroke(const struct half *half, enum scene_class class, enum role role,
                        double width)
{
    pen_stroke(half->drawing, class, role, width);
}

static void lane_tint(const struct half *half)
{
    if (!theme_row(half->drawing->options->theme)->has_lane) {
        return;
    }
    double wide = half->court->lane_half_width / FEET, top = feet_y(half, half->court->free_throw);
    pen_move(half->drawing, half_point(half, -wide, 0));
    pen_line(half->drawing, half_point(half, wide, 0));
    pen_line(half->drawing, half_point(half, wide, top));
    pen_line(half->drawing, half_point(half, -wide, top));
    pen_close(half->drawing);
    pen_fill(half->drawing, CLASS_COURT, ROLE_LANE);
}

static void lane(const struct half *half)
{
    struct drawing *drawing = half->drawing;
    double wide = half->court->lane_half_width / FEET - half->line / 2;
    double top = feet_y(half, half->court->free_throw) - half->line / 2;
    pen_move(drawing, half_point(half, -wide, 0));
    pen_line(drawing, half_point(half, -wide, top));
    pen_line(drawing, half_point(half, wide, top));
    pen_line(drawing, half_point(half, wide, 0));
    double radius = half->court->circle / FEET - half->line / 2;
    pen_move(drawing, half_point(half, radius, top));
    arc_about(half, top, radius, 0, REAL_PI);
}

/* The corners of the square beside the lane, round it. */
static void block_corners(const struct half *half, int side, struct vec2 at[4])
{
    const struct court *court = half->court;
    double in = side * court->lane_half_width / FEET;
    double out = side * (court->lane_half_width / FEET + court->block_depth / FEET);
    double near = feet_y(half, court->block_near), far = feet_y(half, court->block_far);
    at[0] = half_point(half, in, near);
    at[1] = half_point(half, out, near);
    at[2] = half_point(half, out, far);
    at[3] = half_point(half, in, far);
}

static double block_distance(const struct half *half, int side, struct vec2 at)
{
    struct vec2 corner[4];
    block_corners(half, side, corner);
    double least = 1e9;
    int within = 0;
    for (int i = 0; i < 4; i++) {
        struct vec2 a = corner[i], b = corner[(i + 1) % 4];
        least = real_min(least, segment_distance(at, a, b, NULL));
        within += vec2_cross(vec2_sub(b, a), vec2_sub(at, a)) > 0 ? 1 : -1;
    }
    return within == 4 || within == -4 ? 0 : least;
}

double block_gap(struct drawing *drawing, struct vec2 at)
{
    const struct court *court = drawing->frame.court;
    double least = 1e9;
    for (int i = 0; i < (drawing->frame.full ? 2 : 1) && court->block_depth > 0; i++) {
        struct half half = {.drawing = drawing, .court = court, .far = i > 0};
        least = real_min(least, block_distance(&half, -1, at));
        least = real_min(least, block_distance(&half, 1, at));
    }
    return least;
}

/* Would somebody who stands there hide a part of it? Half a square is no mark of the floor. */
static bool block_is_hidden(const struct half *half, int side)
{
    const struct drawing *drawing = half->drawing;
    bool hidden = false;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        hidden |= block_distance(half, side, symbol->at) < symbol->radius ||
                  (symbol->has_numeral && block_distance(half, side, symbol->numeral) <
                                              NUMERAL_CLEAR * drawing->size.x_numeral);
    }
    return hidden;
}

static void lane_blocks(const struct half *half)
{
    for (int side = -1; side <= 1 && half->court->block_depth > 0; side += 2) {
        if (block_is_hidden(half, side)) {
            continue;
        }
        struct vec2 at[4];
        block_corners(half, side, at);
        pen_move(half->drawing, at[0]);
        for (int i = 1; i < 4; i++) {
            pen_line(half->drawing, at[i]);
        }
        pen_close(half->drawing);
        pen_fill(half->drawing, CLASS_COURT, ROLE_COURT);
    }
}

static void lane_marks(const struct half *half)
{
    const struct court *court = half->court;
    double edge = court->lane_half_width / FEET, end = edge + court->mark_depth / FEET;
    for (int side = -1; side <= 1 && !half->drawing->size.small; side += 2) {
        for (int i = 0; i < 4 && court->mark[i] > 0; i++) {
            double y = feet_y(half, court->mark[i]);
            pen_move(half->drawing, half_point(half, side * edge, y));
            pen_line(half->drawing, half_point(half, side * end, y));
        }
    }
}

static void arc(const struct half *half)
{
    const struct court *court = half->court;
    if (court->arc <= 0) {
        return;
    }
    double radius = court->arc / FEET - half->line / 2,
           straight = court->straight / FEET - half->line / 2;
    double rise = real_sqrt(radius * radius - straight * straight);
    double ring = feet_y(half, 0);
    if (straight >= radius) { /* the arc meets the straights level with the ring */
        straight = radius;
        rise = 0;
    }
    double from = real_atan2(rise, straight);
    pen_move(half->drawing, half_point(half, straight, 0));
    pen_line(half->drawing, half_point(half, straight, ring + rise));
    arc_about(half, ring, radius, from, REAL_PI - from);
    pen_line(half->drawing, half_point(half, -straight, 0));
}

static void no_charge(const struct half *half)
{
    const struct court *court = half->court;
    if (court->no_charge <= 0) {
        return;
    }
    double radius = court->no_charge / FEET, ring = feet_y(half, 0),
           board = feet_y(half, court->board);
    pen_move(half->drawing, half_point(half, radius, board));
    pen_line(half->drawing, half_point(half, radius, ring));
    arc_about(half, ring, radius, 0, REAL_PI);
    pen_line(half->drawing, half_point(half, -radius, board));
}

static void basket(const struct half *half)
{
    struct drawing *drawing = half->drawing;
    const struct sizes *size = &drawing->size;
    double wide = half->court->board_half_width / FEET, board = feet_y(half, half->court->board);
    double ring = feet_y(half, 0);
    /* the board's thickness lies behind its face, the neck reaches to the ring */
    double middle = board - size->board / 2 / size->k;
    pen_move(drawing, half_point(half, -wide, middle));
    pen_line(drawing, half_point(half, wide, middle));
    half_stroke(half, CLASS_BASKET, ROLE_SOFT, size->board);
    double edge = ring - size->basket / size->k;
    if (edge > board) {
        pen_move(drawing, half_point(half, 0, board));
        pen_line(drawing, half_point(half, 0, edge));
        half_stroke(half, CLASS_BASKET, ROLE_SOFT, half->points);
    }
    put_circle(drawing, CLASS_BASKET, half_point(half, 0, ring), size->basket, ROLE_NONE, ROLE_SOFT,
               size->basket_stroke);
}

static void boundary(const struct half *half)
{
    struct drawing *drawing = half->drawing;
    const struct frame *frame = &drawing->frame;
    double side = half->court->half_width / FEET + half->line / 2, end = -half->line / 2;
    double length = 2 * (half->court->half_court - half->court->baseline) / FEET;
    double open = frame->full ? length - end : real_min(frame->high.y, length);
    pen_move(drawing, frame_point_feet(frame, -side, open));
    pen_line(drawing, frame_point_feet(frame, -side, end));
    pen_line(drawing, frame_point_feet(frame, side, end));
    pen_line(drawing, frame_point_feet(frame, side, open));
    if (frame->full) {
        pen_close(drawing);
    }
    struct scene_item *item = pen_stroke(drawing, CLASS_COURT, ROLE_COURT, half->points);
    item->join = JOIN_MITER;
}

static void half_court(const struct half *half)
{
    struct drawing *drawing = half->drawing;
    if (!drawing->frame.half_line) {
        return;
    }
    double side = half->court->half_width / FEET, y = feet_y(half, half->court->half_court);
    double radius = half->court->circle / FEET - half->line / 2;
    pen_move(drawing, half_point(half, -side, y));
    pen_line(drawing, half_point(half, side, y));
    half_stroke(half, CLASS_COURT, ROLE_COURT, half->points);
    double to = drawing->frame.full ? 2 * REAL_PI : 0;
    double from = drawing->frame.full ? 0 : -REAL_PI;
    pen_move(drawing, half_point(half, drawing->frame.full ? radius : -radius, y));
    arc_about(half, y, radius, from, to);
    half_stroke(half, CLASS_COURT, ROLE_COURT, half->points);
    if (half->court->centre_inner_circle) {
        double inner = 2.0; /* feet, NBA rule 1 */
        pen_move(drawing, half_point(half, drawing->frame.full ? inner : -inner, y));
        arc_about(half, y, inner, from, to);
        half_stroke(half, CLASS_COURT, ROLE_COURT, half->points);
    }
}

static void floor_tint(struct drawing *drawing)
{
    const struct frame *frame = &drawing->frame;
    if (!theme_row(drawing->options->theme)->has_floor) {
        return;
    }
    double top = frame->top;
    pen_move(drawing, vec2_of(0, top));
    pen_line(drawing, vec2_of(frame->width, top));
    pen_line(drawing, vec2_of(frame->width, frame->height));
    pen_line(drawing, vec2_of(0, frame->height));
    pen_close(drawing);
    pen_fill(drawing, CLASS_COURT, ROLE_FLOOR);
}

struct basket_marks basket_marks(const struct drawing *drawing, bool far)
{
    const struct court *court = drawing->frame.court;
    double length = 2 * court->half_court, half = court->board_half_width;
    double ring = far ? length : 0, board = far ? length - court->board : court->board;
    return (struct basket_marks){frame_point(&drawing->frame, vec2_of(0, ring)),
                                 frame_point(&drawing->frame, vec2_of(-half, board)),
                                 frame_point(&drawing->frame, vec2_of(half, board))};
}

static void court_lines(struct drawing *drawing)
{
    const struct court *court = drawing->frame.court;
    double line = court->line / FEET;
    struct half near = {drawing, court, line,
                        real_max(line * drawing->size.k, drawing->size.court_line), false};
    struct half far = near;
    far.far = true;
    lane_tint(&near);
    if (drawing->frame.full) {
        lane_tint(&far);
    }
    boundary(&near);
    half_court(&near);
    for (int i = 0; i < (drawing->frame.full ? 2 : 1); i++) {
        const struct half *half = i == 0 ? &near : &far;
        lane_blocks(half);
        lane(half); /* this and what follows is one stroke */
        lane_marks(half);
        arc(half);
        no_charge(half);
        half_stroke(half, CLASS_COURT, ROLE_COURT, half->points);
        basket(half);
    }
}

void court_draw(struct drawing *drawing)
{
    floor_tint(drawing);
    court_lines(drawing);
}

struct scene *scene_court(struct arena *arena, const struct court *court)
{
    static const struct scene_options options = {.theme = THEME_SCREEN, .accent = BODY_NONE};
    struct drawing drawing = {
        .arena = arena, .options = &options, .scene = arena_new(arena, struct scene)};
    double k = SCENE_COURT_SCALE, length = 2 * (court->half_court - court->baseline) / FEET;
    drawing.size = sizes_of(k);
    drawing.frame = (struct frame){.court = court,
                                   .k = k,
                                   .high = vec2_of(court->half_width / FEET, length),
                                   .across = vec2_of(k, 0),
                                   .down = vec2_of(0, k),
                                   .full = true,
                                   .half_line = true};
    drawing.scene->theme = options.theme;
    drawing.scene->scale = k;
    drawing.scene->floor =
        (struct floor_place){drawing.frame.origin, drawing.frame.across, drawing.frame.down};
    court_lines(&drawing);
    return drawing.scene;
}
