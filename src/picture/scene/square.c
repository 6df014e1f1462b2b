/* SPDX-License-Identifier: MIT */
/* square: the line of a screener who comes from afar turns in its last feet, so that it meets his
 * bar square: the bar lies as he looks, and a crooked T is read as a slip of the pen. */
#include "picture/scene/drawing.h"

#define LEAST_FEET 6.0             /* of the line: a shorter one would become a hook (ours) */
#define TURNS_SHARE 0.4            /* of the line in which it turns, */
#define TURNS_FEET 4.0             /* and no more than so much */
#define SQUARE (6 * REAL_PI / 180) /* so far off is square to the eye (ours) */
#define ASKEW (55 * REAL_PI / 180) /* further off he comes from the side, and is seen to */
enum { PIECES = 12 };

/* From the way's last point but those of `turns` on: to its end, as `facing` looks. */
static struct path way_turned(struct drawing *drawing, const struct path *way, double turns,
                              struct vec2 facing)
{
    double first = path_length(way) - turns;
    struct path kept = path_cut(drawing->arena, way, 0, first);
    struct vec2 from = kept.at[kept.count - 1], to = way->at[way->count - 1];
    struct vec2 leaves = vec2_along(from, path_direction(way, first), turns / 3);
    struct vec2 comes = vec2_along(to, facing, -turns / 3);
    points_list at = {0};
    for (size_t i = 0; i < kept.count; i++) {
        VEC_PUSH(drawing->arena, &at, kept.at[i]);
    }
    for (int i = 1; i <= PIECES; i++) {
        double t = (double)i / PIECES;
        struct vec2 a = vec2_mix(from, leaves, t), b = vec2_mix(leaves, comes, t),
                    c = vec2_mix(comes, to, t);
        VEC_PUSH(drawing->arena, &at, vec2_mix(vec2_mix(a, b, t), vec2_mix(b, c, t), t));
    }
    return path_of(drawing->arena, at.at, at.count);
}

void bars_square(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        const struct stop *bar = stroke->end < 0 ? NULL : &drawing->stops.at[stroke->end];
        double length = stroke->path.count > 1 ? path_length(&stroke->path) : 0;
        if (!bar || bar->kind != STOP_BAR || stroke->class != CLASS_SCREEN || stroke->standing ||
            length < LEAST_FEET * drawing->size.k) {
            continue;
        }
        double turns = real_min(TURNS_SHARE * length, TURNS_FEET * drawing->size.k);
        struct vec2 last = stroke->path.at[stroke->path.count - 1];
        double off =
            vec2_angle(vec2_sub(last, path_point(&stroke->path, length - turns)), bar->facing);
        if (off > SQUARE && off < ASKEW) {
            stroke->path = way_turned(drawing, &stroke->path, turns, bar->facing);
            size_t kept = stroke->path.count - PIECES;
            bool *corner = arena_array(drawing->arena, bool, stroke->path.count);
            for (size_t p = 0; stroke->trail.corner && p + 1 < kept; p++) {
                corner[p] = p < stroke->trail.count && stroke->trail.corner[p];
            }
            stroke->trail = (struct trail){stroke->path.at, corner, stroke->path.count};
        }
    }
}
