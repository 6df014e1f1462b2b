/* SPDX-License-Identifier: MIT */
/* crossings: where drawn lines cross, found on the ink itself (zigzags and all), and the white
 * under the later of the two. */
#include "picture/scene/drawing.h"

#include <math.h>

#define FLAT (12 * REAL_PI / 180) /* flatter crossings get no casing */
#define CRUMB 1.0        /* feet: no shorter piece of the earlier line is cut off (ours), */
#define CRUMB_SOLID 2.2  /* and of one without dashes none that reads as a dash, */
#define CRUMB_POINTS 4.0 /* and none so short that it reads as a stroke of the pen */
#define STEEP (30 * REAL_PI / 180) /* casings are not made longer than at this angle */

struct crossing_box {
    struct vec2 low, high;
};

static struct crossing_box box_of(const struct vec2 *at, size_t count)
{
    struct crossing_box box = {at[0], at[0]};
    for (size_t i = 1; i < count; i++) {
        box.low = vec2_of(real_min(box.low.x, at[i].x), real_min(box.low.y, at[i].y));
        box.high = vec2_of(real_max(box.high.x, at[i].x), real_max(box.high.y, at[i].y));
    }
    return box;
}

static bool boxes_apart(struct crossing_box a, struct crossing_box b)
{
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
}

static void cross_pair(struct drawing *drawing, size_t under, size_t over)
{
    const struct stroke *a = &drawing->strokes.at[under], *b = &drawing->strokes.at[over];
    double along_a = 0;
    for (size_t i = 0; i + 1 < a->ink_count; i++) {
        double step_a = vec2_distance(a->ink[i], a->ink[i + 1]), along_b = 0;
        for (size_t j = 0; j + 1 < b->ink_count; j++) {
            double step_b = vec2_distance(b->ink[j], b->ink[j + 1]), t, u;
            if (segment_cross(a->ink[i], a->ink[i + 1], b->ink[j], b->ink[j + 1], &t, &u)) {
                double angle = vec2_angle(vec2_sub(a->ink[i + 1], a->ink[i]),
                                          vec2_sub(b->ink[j + 1], b->ink[j]));
                struct crossing crossing = {under,
                                            over,
                                            vec2_mix(a->ink[i], a->ink[i + 1], t),
                                            along_a + t * step_a,
                                            along_b + u * step_b,
                                            angle > REAL_PI / 2 ? REAL_PI - angle : angle};
                VEC_PUSH(drawing->arena, &drawing->crossings, crossing);
            }
            along_b += step_b;
        }
        along_a += step_a;
    }
}

void crossings_find(struct drawing *drawing)
{
    drawing->crossings.count = 0;
    for (size_t over = 1; over < drawing->strokes.count; over++) {
        const struct stroke *b = &drawing->strokes.at[over];
        for (size_t under = 0; under < over && b->ink_count > 1; under++) {
            const struct stroke *a = &drawing->strokes.at[under];
            if (a->ink_count > 1 &&
                !boxes_apart(box_of(a->ink, a->ink_count), box_of(b->ink, b->ink_count))) {
                cross_pair(drawing, under, over);
            }
        }
    }
}

/* How wide a line is over all. */
static double ink_width(const struct drawing *drawing, const struct stroke *stroke)
{
    return stroke->class == CLASS_SHOT ? 2 * drawing->size.shot_half + stroke->width
                                       : stroke->width;
}

/* Would white that reaches so far both ways along the earlier line leave a crumb at one of its
 * ends?
 */
static bool leaves_crumb(const struct drawing *drawing, const struct crossing *crossing,
                         double half)
{
    const struct stroke *under = &drawing->strokes.at[crossing->under];
    bool solid = under->class == CLASS_MOVE || under->class == CLASS_SCREEN;
    double crumb = (solid ? CRUMB_SOLID : CRUMB) * drawing->size.k;
    double length = 0, least = half + real_max(crumb, CRUMB_POINTS);
    for (size_t i = 0; i + 1 < under->ink_count; i++) {
        length += vec2_distance(under->ink[i], under->ink[i + 1]);
    }
    return crossing->along_under < least || length - crossing->along_under < least;
}

/* The white under stroke `over` where it crosses earlier ones. */
void crossings_case(struct drawing *drawing, size_t over)
{
    const struct sizes *size = &drawing->size;
    const struct stroke *line = &drawing->strokes.at[over];
    struct path ink = path_of(drawing->arena, line->ink, line->ink_count);
    double length = path_length(&ink), end = 0.5 * size->k;
    for (size_t i = 0; i < drawing->crossings.count; i++) {
        const struct crossing *crossing = &drawing->crossings.at[i];
        if (crossing->over != over || crossing->angle < FLAT || crossing->along_over < end ||
            crossing->along_over > length - end) {
            continue;
        }
        const struct stroke *under = &drawing->strokes.at[crossing->under];
        double steep = real_sin(real_max(crossing->angle, STEEP));
        double half = (ink_width(drawing, under) / 2 + size->casing) / steep;
        if (leaves_crumb(drawing, crossing,
                         (ink_width(drawing, line) / 2 + size->casing) / steep)) {
            continue;
        }
        struct path piece = path_cut(drawing->arena, &ink, real_max(0, crossing->along_over - half),
                                     real_min(length, crossing->along_over + half));
        pen_way(drawing, piece.at, piece.count);
        struct scene_item *item = pen_stroke(drawing, line->class, ground_at(drawing, crossing->at),
                                             ink_width(drawing, line) + 2 * size->casing);
        item->casing = true;
        item->line = (int)over; /* with the line goes what it cuts */
        item->task = line->part[line->parts - 1].task;
        item->who = line->who;
    }
}
