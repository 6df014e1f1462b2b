/* SPDX-License-Identifier: MIT */
/* lights: the light lines that reads.c makes give way to all others. Takes them as they run; cuts
 * them where their heads are seen, turns them past what stands there, or leads them behind the line
 * of the man they trail; what cannot be seen is left out. */
#include "picture/scene/drawing.h"

#include <math.h>

#define SEEN 0.3                     /* of a line is left at least, where its end would be hidden */
#define NARROW 0.5                   /* of a gap is left where he squeezes through behind his man */
#define WRITHES (40 * REAL_PI / 180) /* turned to either side: no straight way */
enum { BEHIND = 12 };                /* points of a way behind a man */

/* How near a straight piece comes to the other lines, points. */
static double lines_room(const struct drawing *drawing, const struct stroke *light,
                         struct vec2 from, struct vec2 to)
{
    double room = 1e9;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *other = &drawing->strokes.at[i];
        for (size_t p = 0; other != light && p + 1 < other->path.count; p++) {
            room = real_min(room, segment_gap(from, to, other->path.at[p], other->path.at[p + 1]));
        }
    }
    return room;
}

/* The same of the head of a line of that length. */
static double head_room(const struct drawing *drawing, const struct stroke *light, double length)
{
    struct vec2 tip = path_point(&light->path, length),
                back = path_point(&light->path, length - drawing->size.head_length);
    return lines_room(drawing, light, back, tip);
}

/* How near a straight piece comes to the bars, points. */
static double bar_room(const struct drawing *drawing, struct vec2 from, struct vec2 to)
{
    double room = 1e9;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct vec2 a, b;
        if (drawing->stops.at[i].kind == STOP_BAR) {
            bar_ends(drawing, &drawing->stops.at[i], &a, &b);
            room = real_min(room, segment_gap(from, to, a, b));
        }
    }
    return room;
}

/* Does it run between a screener who stands and his bar? The two are one body. */
static bool runs_through(const struct drawing *drawing, struct vec2 from, struct vec2 to)
{
    double s, t;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stem = &drawing->strokes.at[i];
        if (stem->standing && stem->path.count > 1 &&
            segment_cross(from, to, stem->path.at[0], stem->path.at[stem->path.count - 1], &s,
                          &t)) {
            return true;
        }
    }
    return false;
}

/* How far a light line runs before it comes upon a bar. */
static double length_to_bar(const struct drawing *drawing, const struct stroke *light)
{
    const struct path *path = &light->path;
    double clear = drawing->size.bar_stroke / 2 + light->width / 2 + 0.3 * drawing->size.gap;
    for (size_t p = 0; p + 1 < path->count; p++) {
        if (bar_room(drawing, path->at[p], path->at[p + 1]) < clear ||
            runs_through(drawing, path->at[p], path->at[p + 1])) {
            return path->along[p];
        }
    }
    return path_length(path);
}

/* Does a straight way of an X go through another mark that stands there? */
static bool ray_is_free(const struct drawing *drawing, const struct stroke *light, struct vec2 from,
                        struct vec2 tip, double gap)
{
    struct basket_marks basket = basket_marks(drawing, false);
    bool free = bar_room(drawing, from, tip) > drawing->size.bar_stroke / 2 + gap &&
                segment_distance(basket.ring, from, tip, NULL) > drawing->size.basket + gap &&
                segment_gap(basket.left, basket.right, from, tip) > gap;
    for (size_t i = 0; free && i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        free = symbol->who == light->who ||
               segment_distance(symbol->at, from, tip, NULL) > symbol->radius + gap;
    }
    return free;
}

/* The line of the man whom a defender guards. */
static const struct stroke *man_line(const struct drawing *drawing, body guard)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *line = &drawing->strokes.at[i];
        if (line->path.count > 1 && !stroke_is_throw(line) && !line->standing &&
            read_guard(segment, line->who) == guard) {
            return line;
        }
    }
    return NULL;
}

/* Does a line go by a screen on another side than that way does? */
static bool goes_by_other(const struct drawing *drawing, const struct stroke *light,
                          const struct vec2 *way, size_t count, bool as_run)
{
    bool other = false;
    for (size_t i = 0; count > 1 && i < drawing->stops.count; i++) {
        const struct stop *bar = &drawing->stops.at[i];
        if (bar->kind == STOP_BAR) {
            struct vec2 middle = as_run ? frame_point(&drawing->frame, bar->truth) : bar->at;
            double swept = sweep_round(middle, way, count);
            double drawn = sweep_round(bar->at, light->trail.at, light->trail.count);
            other |= fabs(swept - drawn) > REAL_PI;
        }
    }
    return other;
}

/* Does a line go by a screen on the side on which its run does not, or the line of the man he is
 * behind? That side is the read. */
static bool goes_by_wrong(const struct drawing *drawing, const struct stroke *light)
{
    points_list run = {0};
    if (!read_is_at_screen(drawing)) {
        return false;
    }
    const struct stroke *man = read_is_behind(drawing) ? man_line(drawing, light->who) : NULL;
    if (man && goes_by_other(drawing, light, man->path.at, man->path.count, false)) {
        return true;
    }
    for (double t = light->began; t <= light->ended; t += RUN_SAMPLE) {
        struct vec2 at = segment_at(drawing->segment, light->who, t);
        VEC_PUSH(drawing->arena, &run, frame_point(&drawing->frame, at));
    }
    return !man && goes_by_other(drawing, light, run.at, run.count, true);
}

/* A line whose head is hidden all along its way goes straight beside it, nearest to it first. */
static bool light_turns(struct drawing *drawing, struct stroke *light)
{
    static const double turns[] = {0, .2, -.2, .4, -.4, .6, -.6, .8, -.8}; /* rad */
    static const double shares[] = {1, .8, .6};
    enum { SHARES = sizeof shares / sizeof *shares };
    const struct sizes *size = &drawing->size;
    double clear = size->head_width / 2 + size->gap;
    struct vec2 from = light->path.at[0],
                way = vec2_sub(light->path.at[light->path.count - 1], from);
    for (size_t i = 0; i < SHARES * sizeof turns / sizeof *turns; i++) {
        struct vec2 turned = vec2_turn(way, turns[i / SHARES]);
        struct vec2 both[2] = {from, vec2_along(from, turned, shares[i % SHARES])};
        struct path straight = path_of(drawing->arena, both, 2), was = light->path;
        light->path = straight;
        if (path_length(&straight) > 2 * size->head_length &&
            head_room(drawing, light, path_length(&straight)) >= clear &&
            ray_is_free(drawing, light, from, both[1], size->gap)) {
            light->trail = (struct trail){straight.at, NULL, straight.count};
            if (!goes_by_wrong(drawing, light)) {
                return true;
            }
        }
        light->path = was;
    }
    return false;
}

/* Is a way of an X free of all that stands there and of all other lines, its head seen? */
static bool way_is_free(const struct drawing *drawing, const struct stroke *light, double gap)
{
    const struct path *way = &light->path;
    for (size_t p = 0; p + 1 < way->count; p++) {
        struct vec2 a = way->at[p], b = way->at[p + 1];
        if (!ray_is_free(drawing, light, a, b, gap) ||
            lines_room(drawing, light, a, b) < 2 * light->width + drawing->size.gap) {
            return false;
        }
    }
    return path_length(way) > 3 * drawing->size.head_length;
}

/* The middle of the way between the end of a screen's bar and where the man's line begins; false:
 * there is no bar, or no room. */
static bool way_between(const struct drawing *drawing, const struct stroke *man, struct vec2 x,
                        struct vec2 *middle)
{
    const struct stop *from = &drawing->stops.at[man->start], *bar = NULL;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        bool nearer = stop->kind == STOP_BAR &&
                      (!bar || vec2_distance(stop->at, x) < vec2_distance(bar->at, x));
        bar = nearer ? stop : bar;
    }
    if (!bar) {
        return false;
    }
    struct vec2 near = bar_nearest(drawing, bar, from->at), off = vec2_sub(from->at, near);
    double low = drawing->size.bar_stroke / 2, high = vec2_length(off) - stop_radius(drawing, from);
    *middle = vec2_along(near, vec2_unit(off), (low + high) / 2);
    return high - low > 2 * NARROW * drawing->size.gap + drawing->size.line;
}

/* Beside his man's line, from where it is nearest to where the X stands; by `through`, if any. */
static struct path way_behind(const struct drawing *drawing, const struct stroke *light,
                              const struct stroke *man, double off, double length,
                              const struct vec2 *through)
{
    const struct sizes *size = &drawing->size;
    struct vec2 x = symbol_of(drawing, light->who)->at;
    points_list at = {0};
    double first = path_nearest(&man->path, x, 0) + 2 * size->k;
    double last = real_min(first + length, path_length(&man->path) - 2 * size->head_length);
    VEC_PUSH(drawing->arena, &at, x);
    if (through) {
        VEC_PUSH(drawing->arena, &at, *through);
    }
    for (int i = 0; i < BEHIND; i++) {
        double along = real_mix(first, last, (double)i / (BEHIND - 1));
        struct vec2 square = vec2_left(path_direction(&man->path, along));
        VEC_PUSH(drawing->arena, &at, vec2_along(path_point(&man->path, along), square, off));
    }
    at.at[0] = vec2_along(x, vec2_unit(vec2_sub(at.at[1], x)), size->x_half + size->gap);
    return last > first ? path_of(drawing->arena, at.at, at.count) : (struct path){0};
}

/* Who trails his man follows that one's line. */
static bool light_follows(struct drawing *drawing, struct stroke *light)
{
    static const double lengths[] = {9, 6.5, 4.5, 2.5, 1}; /* feet */
    enum { LENGTHS = sizeof lengths / sizeof *lengths };
    const struct stroke *man = man_line(drawing, light->who);
    double off = drawing->size.head_width / 2 + 1.2 * drawing->size.gap;
    struct vec2 middle;
    bool between = man && way_between(drawing, man, symbol_of(drawing, light->who)->at, &middle);
    for (int i = 0; man && i < 2 * LENGTHS * (between ? 2 : 1); i++) {
        struct path was = light->path;
        double length = lengths[i / 2 % LENGTHS] * drawing->size.k;
        double gap = (i < 2 * LENGTHS ? 1 : NARROW) * drawing->size.gap;
        light->path = way_behind(drawing, light, man, i % 2 ? -off : off, length,
                                 i < 2 * LENGTHS ? NULL : &middle);
        if (light->path.count > 1 && way_is_free(drawing, light, gap)) {
            light->trail = (struct trail){light->path.at, NULL, light->path.count};
            return true;
        }
        light->path = was;
    }
    return false;
}

/* Does it turn to one side and back to the other? So does nobody who is only pointed at. */
static bool writhes(const struct path *path)
{
    double left = 0, right = 0;
    for (size_t p = 1; p + 1 < path->count; p++) {
        struct vec2 in = vec2_sub(path->at[p], path->at[p - 1]);
        struct vec2 out = vec2_sub(path->at[p + 1], path->at[p]);
        double turn = vec2_angle(in, out);
        *(vec2_cross(in, out) < 0 ? &right : &left) += turn;
    }
    return real_min(left, right) > WRITHES;
}

/* A scrap without a head tells nothing: another way, or none. What tells by which side of a screen
 * he goes is not turned to the other. */
static void light_drop(struct drawing *drawing, struct stroke *light)
{
    if (read_is_behind(drawing) ? !light_follows(drawing, light) : !light_turns(drawing, light)) {
        light->path.count = light->trail.count = 0;
    }
}

/* A light line ends where its head is seen: short of another line that it would lie on. */
void lights_cut(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    double clear = size->head_width / 2 + size->gap;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *light = &drawing->strokes.at[i];
        if (!stroke_is_light(light) || light->path.count < 2) {
            continue;
        }
        double whole = path_length(&light->path), most = length_to_bar(drawing, light);
        double length = whole, best = -1, least = real_max(SEEN * whole, 2 * size->head_length);
        if (most < least || goes_by_wrong(drawing, light)) {
            light_drop(drawing, light);
            continue;
        }
        if (!read_is_behind(drawing) && writhes(&light->path) && light_turns(drawing, light)) {
            continue;
        }
        for (double at = most; at > least && best < clear; at -= 0.2 * size->k) {
            double room = head_room(drawing, light, at);
            if (room > best) {
                best = room;
                length = at;
            }
        }
        /* who trails is close behind his man: his head may touch that one's line */
        double seen =
            read_is_behind(drawing) ? size->head_width / 3 : (size->head_width + size->line) / 2;
        if (best >= 0 && best < seen) {
            light_drop(drawing, light);
        } else if (length < whole) {
            light->path = path_cut(drawing->arena, &light->path, 0, length);
            light->trail = (struct trail){light->path.at, NULL, light->path.count};
        }
    }
}
