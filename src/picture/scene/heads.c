/* SPDX-License-Identifier: MIT */
/* heads: two heads at one place are a black clump, and a head on another's line points nowhere. A
 * throw and a run to the rim, which end at no ring, stop a little shorter; a throw begins beyond
 * the head of what comes to where it is let go. */
#include "picture/scene/drawing.h"

#define STEP 0.25 /* of a head's length */
enum { STEPS = 10 };

static double half_of(const struct drawing *drawing, const struct stroke *stroke)
{
    return stroke->width / 2 + (stroke->class == CLASS_SHOT ? drawing->size.shot_half : 0);
}

/* Would it lie on somebody's mark? */
static bool head_meets(const struct drawing *drawing, const struct head *head)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double radius = body_is_defender(symbol->who) ? drawing->size.x_half : symbol->radius;
        if (vec2_near(symbol->at, head->edge[0], radius + drawing->size.head_length)) {
            struct vec2 there[2] = {symbol->at, symbol->at};
            if (way_gap(head->edge, HEAD_EDGE, there, 2) < radius) {
                return true;
            }
        }
    }
    return false;
}

/* Would the head lie on another's head, on another's line, or on somebody? */
static bool head_lies(const struct drawing *drawing, const struct stroke *stroke, double back)
{
    struct head head = line_head(drawing, stroke, back);
    double clear = 0.25 * drawing->size.gap;
    if (head_meets(drawing, &head)) {
        return true;
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *other = &drawing->strokes.at[i];
        double reach = drawing->size.head_length + clear;
        if (other == stroke || other->ink_count < 2 ||
            stroke_is_beyond(drawing, other, head.edge[0], reach)) {
            continue;
        }
        if (way_gap(head.edge, HEAD_EDGE, other->ink, other->ink_count) <
            half_of(drawing, other) + clear) {
            return true;
        }
        if (other->head && other->path.count > 1) {
            struct head its = line_head(drawing, other, 0);
            if (way_gap(head.edge, HEAD_EDGE, its.edge, HEAD_EDGE) < clear) {
                return true;
            }
        }
    }
    return false;
}

/* May its end be anywhere on its way? It is at no ring and at no bar. */
static bool ends_free(const struct drawing *drawing, const struct stroke *stroke)
{
    return stroke->head && stroke->class != CLASS_DRIBBLE && stroke->path.count > 1 &&
           (stroke_flies(stroke) || stroke_is_light(stroke) ||
            (stroke->end >= 0 && drawing->stops.at[stroke->end].kind == STOP_RIM));
}

/* The shortest line that still reads as one of its kind. */
static double least_length(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    return size->head_length + (stroke->class == CLASS_PASS ? 2 * size->dash : size->head_length);
}

static void cut_to(struct drawing *drawing, struct stroke *stroke, double from, double back)
{
    double whole = path_length(&stroke->path);
    struct path left = path_cut(drawing->arena, &stroke->path, from, whole - back);
    stroke->path = path_of(drawing->arena, left.at, left.count);
    stroke->trail = (struct trail){stroke->path.at, NULL, stroke->path.count};
    shares_shift(stroke, whole, from);
    ink_again(drawing, stroke);
}

static void head_back(struct drawing *drawing, struct stroke *stroke)
{
    double step = STEP * drawing->size.head_length;
    double most = path_length(&stroke->path) - least_length(drawing, stroke);
    for (int i = 1; i <= STEPS && i * step <= most; i++) {
        if (!head_lies(drawing, stroke, i * step)) {
            cut_to(drawing, stroke, 0, i * step);
            return;
        }
    }
}

/* How far in from its start a throw runs over the head of what comes to that place. */
static double head_over(const struct drawing *drawing, const struct stroke *throw,
                        const struct stroke *comes)
{
    struct head head = line_head(drawing, comes, 0);
    double clear = half_of(drawing, throw) + 0.5 * drawing->size.gap, over = 0;
    double step = STEP * drawing->size.head_length;
    for (int i = 0; i <= STEPS; i++) {
        struct vec2 piece[2] = {path_point(&throw->path, i * step),
                                path_point(&throw->path, (i + 1) * step)};
        over = way_gap(head.edge, HEAD_EDGE, piece, 2) < clear ? (i + 1) * step : over;
    }
    return over;
}

static void throw_on(struct drawing *drawing, struct stroke *throw)
{
    double over = 0;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *comes = &drawing->strokes.at[i];
        if (comes->head && comes->path.count > 1 && comes->ink_count > 1 &&
            comes->end == throw->start) {
            over = real_max(over, head_over(drawing, throw, comes));
        }
    }
    if (over > 0 && path_length(&throw->path) - over >= least_length(drawing, throw)) {
        cut_to(drawing, throw, over, 0);
    }
}

void heads_part(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke_flies(stroke) && stroke->path.count > 1 && stroke->ink_count > 1) {
            throw_on(drawing, stroke);
        }
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (ends_free(drawing, stroke) && stroke->ink_count > 1 && head_lies(drawing, stroke, 0)) {
            head_back(drawing, stroke);
        }
    }
}
