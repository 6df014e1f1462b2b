/* SPDX-License-Identifier: MIT */
/* zigzag: the ink of a dribble, waves fitted to its length; of the ways in which they may swing,
 * the one in which the fewest of their sides lie along another line. */
#include "picture/scene/drawing.h"

#include <math.h>

#define ALONG 0.24     /* sine of 14 degrees: flatter is along, not across */
#define WORTH_FEET 0.3 /* of other lines that waves lie along: for less none is swung (ours) */
#define RESET_FEET 0.1 /* what other than the plain waves costs (ours) */
enum { SWINGS = 6 };

/* How the waves swing: first to the left or to the right, and how many halves more than fit best.
 */
struct swing {
    bool right;
    int more;
};
static const struct swing swings[SWINGS] = {{false, 0}, {true, 0},   {false, 1},
                                            {true, 1},  {false, -1}, {true, -1}};

/* Would a side of a wave touch somebody, or where somebody else ends, or a bar? */
static bool side_touches(const struct drawing *drawing, const struct stroke *stroke, struct vec2 a,
                         struct vec2 b)
{
    double clear = stroke->width / 2 + 0.6 * drawing->size.gap;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (segment_distance(symbol->at, a, b, NULL) < symbol->radius + clear) {
            return true;
        }
    }
    for (int i = 0; i < (int)drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (i == stroke->start || i == stroke->end) {
            continue;
        }
        if (stop->kind == STOP_RING &&
            segment_distance(stop->at, a, b, NULL) < stop_radius(drawing, stop) + stroke->width) {
            return true;
        }
        struct vec2 c, d;
        bar_ends(drawing, stop, &c, &d);
        if (stop->kind == STOP_BAR &&
            segment_gap(a, b, c, d) < drawing->size.bar_stroke / 2 + stroke->width) {
            return true;
        }
    }
    return false;
}

/* A wave goes lower where it would touch something. */
static struct vec2 peak_at(const struct drawing *drawing, const struct stroke *stroke, double along,
                           double far, struct vec2 before)
{
    struct vec2 square = vec2_left(path_direction(&stroke->path, along)),
                middle = path_point(&stroke->path, along);
    for (int lower = 0; lower < 4; lower++) {
        struct vec2 at = vec2_along(middle, square, far * (1 - 0.3 * lower));
        if (!side_touches(drawing, stroke, before, at)) {
            return at;
        }
    }
    return vec2_along(middle, square, far * 0.1);
}

/* The zigzag of a dribble, fitted to the length: straight in, half-waves, straight out. */
static void zigzag_swing(struct drawing *drawing, struct stroke *stroke, struct swing swing)
{
    const struct sizes *size = &drawing->size;
    double length = path_length(&stroke->path) - head_reach(drawing, stroke);
    double in = size->wave_in, out = size->wave_out, half = size->wave / 2;
    double waves = length - in - out;
    int count = (int)floor(waves / half + 0.5) + swing.more;
    count = count < 3 ? 3 : count;
    bool is_short = waves < 3 * 0.6 * half; /* less of everything, but it is no plain arrow */
    if (is_short) {
        in = out = 0.06 * length;
        waves = 0.88 * length;
    }
    double step = waves / count, high = size->wave_half * (stroke->grow > 1 ? 1.15 : 1);
    high = real_min(high, 0.9 * step) * (swing.right ? -1 : 1);
    struct vec2 *at = arena_array(drawing->arena, struct vec2, (size_t)count + 4);
    size_t n = 0;
    at[n++] = path_point(&stroke->path, 0);
    at[n++] = path_point(&stroke->path, in);
    for (int i = 0; i < count; i++) {
        double along = in + (i + 0.5) * step;
        double far = high * (i % 2 ? -1 : 1) * (!is_short && (i == 0 || i == count - 1) ? 0.55 : 1);
        at[n] = peak_at(drawing, stroke, along, far, at[n - 1]);
        n++;
    }
    at[n++] = path_point(&stroke->path, in + waves);
    at[n++] = path_point(&stroke->path, length);
    stroke->ink = at;
    stroke->ink_count = n;
}

void zigzag_ink(struct drawing *drawing, struct stroke *stroke)
{
    zigzag_swing(drawing, stroke, swings[0]);
}

/* Does a side of a wave lie along a line? */
static bool lies_along(struct vec2 a, struct vec2 b, const struct stroke *line, double near)
{
    struct vec2 middle = vec2_mix(a, b, 0.5), way = vec2_unit(vec2_sub(b, a));
    for (size_t i = 0; i + 1 < line->ink_count; i++) {
        struct vec2 c = line->ink[i], d = line->ink[i + 1];
        if (middle.x < real_min(c.x, d.x) - near || middle.x > real_max(c.x, d.x) + near ||
            middle.y < real_min(c.y, d.y) - near || middle.y > real_max(c.y, d.y) + near) {
            continue;
        }
        if (segment_distance(middle, c, d, NULL) < near &&
            fabs(vec2_cross(way, vec2_unit(vec2_sub(d, c)))) < ALONG) {
            return true;
        }
    }
    return false;
}

/* How much of the waves lies along other lines, points: their sides are looked at in halves. */
static double zigzag_lies(const struct drawing *drawing, size_t index)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    double length = 0, near = 1.6 * drawing->size.line;
    for (size_t i = 0; i + 1 < stroke->ink_count; i++) {
        struct vec2 a = stroke->ink[i], b = stroke->ink[i + 1], middle = vec2_mix(a, b, 0.5);
        double half = vec2_distance(a, b) / 2;
        for (size_t j = 0; j < drawing->strokes.count; j++) {
            const struct stroke *line = &drawing->strokes.at[j];
            if (j != index && line->ink_count > 1 &&
                !stroke_is_beyond(drawing, line, middle, near + half)) {
                length += lies_along(a, middle, line, near) ? half : 0;
                length += lies_along(middle, b, line, near) ? half : 0;
            }
        }
    }
    return length;
}

void zigzag_off_lines(struct drawing *drawing, size_t index)
{
    struct stroke *stroke = &drawing->strokes.at[index];
    double k = drawing->size.k, least = zigzag_lies(drawing, index);
    if (least < WORTH_FEET * k) {
        return;
    }
    struct stroke best = *stroke;
    for (int i = 1; i < SWINGS; i++) {
        zigzag_swing(drawing, stroke, swings[i]);
        double lies = zigzag_lies(drawing, index) + RESET_FEET * k;
        if (lies < least) {
            least = lies;
            best = *stroke;
        }
    }
    *stroke = best;
}
