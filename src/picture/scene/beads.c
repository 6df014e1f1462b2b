/* SPDX-License-Identifier: MIT */
/* beads: a bead on each line every half second of the step, larger on the whole seconds, and the
 * seconds in figures: of each arrival, and of each line's first whole second. */
#include "picture/scene/drawing.h"

#include <math.h>

#define WHITE_FEET 0.19

static bool beads_wanted(const struct drawing *drawing)
{
    return drawing->options->beads && !drawing->size.small;
}

static double share_at(const struct stroke *stroke, double time)
{
    if (stroke->clocks > 1) {
        return stroke_share(stroke, time);
    }
    return (time - stroke->began) / real_max(stroke->ended - stroke->began, 1e-9);
}

/* Where along its drawn length a line is at the half second `tick`; false when no bead goes there.
 */
static bool bead_at(const struct drawing *drawing, const struct stroke *stroke, int tick,
                    struct vec2 *at)
{
    double time = tick * 0.5;
    if (stroke->ink_count < 2 || stroke->path.count < 2 || stroke->standing ||
        time <= stroke->began || time >= stroke->ended) {
        return false;
    }
    double length = path_length(&stroke->path), along = share_at(stroke, time) * length;
    double head = stroke->head ? drawing->size.head_length : 0.5 * drawing->size.k;
    if (along < 0.8 * drawing->size.k || along > length - head) {
        return false;
    }
    *at = path_point(&stroke->path, along);
    return true;
}

static int last_tick(const struct drawing *drawing)
{
    return (int)floor(drawing->segment->duration / 0.5) + 1;
}

void beads_draw(struct drawing *drawing)
{
    for (size_t i = 0; beads_wanted(drawing) && i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        for (int tick = 1; tick <= last_tick(drawing); tick++) {
            struct vec2 at;
            if (!bead_at(drawing, stroke, tick, &at)) {
                continue;
            }
            double radius = tick % 2 ? drawing->size.bead : drawing->size.bead_whole;
            struct scene_item *item =
                put_circle(drawing, CLASS_BEAD, at, radius + WHITE_FEET * drawing->size.k,
                           ground_at(drawing, at), ROLE_NONE, 0);
            item->casing = true;
            item = put_circle(drawing, CLASS_BEAD, at, radius, stroke->role, ROLE_NONE, 0);
            item->who = stroke->who;
            item->line = (int)i;
        }
    }
}

/* Puts a time near a point, in the first of the places round it that is free. */
static void time_put(struct drawing *drawing, struct vec2 at, double time, int decimals,
                     const double *off, size_t offs, double most)
{
    static const double turns[] = {0, 180, 90, 270, 45, 135, 225, 315};
    struct strbuf text;
    strbuf_init(&text, drawing->arena);
    strbuf_fixed(&text, time, decimals);
    strbuf_text(&text, " s");
    double size = drawing->size.lettering, k = drawing->size.k;
    double wide = metrics_width(FACE_MEDIUM, size, strbuf_str(&text)) / 2, high = 0.36 * size,
           best = most;
    struct vec2 chosen = {0, 0};
    for (size_t d = 0; d < offs; d++) {
        for (size_t t = 0; t < sizeof turns / sizeof *turns; t++) {
            struct vec2 way =
                vec2_of(real_cos(turns[t] * REAL_PI / 180), -real_sin(turns[t] * REAL_PI / 180));
            struct vec2 middle =
                vec2_of(at.x + way.x * (off[d] * k + wide), at.y + way.y * (off[d] * k + high));
            double score = 0.6 * (double)t + 4 * (off[d] - off[0]);
            score += words_score(drawing, strbuf_str(&text), size, middle);
            if (score < best) {
                best = score;
                chosen = middle;
            }
        }
    }
    if (best < most) {
        words_put(drawing, CLASS_BEAD, strbuf_str(&text), size, chosen, FACE_MEDIUM, ROLE_SOFT);
    }
}

void beads_time(struct drawing *drawing)
{
    static const double round_end[] = {1.0, 1.5, 2.1}, round_bead[] = {0.72, 1.15};
    for (size_t i = 0; beads_wanted(drawing) && i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->ink_count < 2 || stroke->standing) {
            continue;
        }
        struct vec2 end = stroke->end >= 0 ? drawing->stops.at[stroke->end].at
                                           : stroke->trail.at[stroke->trail.count - 1];
        time_put(drawing, end, stroke->ended, 1, round_end, 3, 100);
        for (int tick = 2; tick <= last_tick(drawing); tick += 2) {
            struct vec2 at;
            if (bead_at(drawing, stroke, tick, &at)) {
                time_put(drawing, at, tick / 2, 0, round_bead, 2, 60);
                break;
            }
        }
    }
}
