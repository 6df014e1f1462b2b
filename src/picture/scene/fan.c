/* SPDX-License-Identifier: MIT */
/* fan: a movement that would lie along another line, or along a pass, moves off it; two that leave
 * one place the same way fan out. */
#include "picture/scene/drawing.h"

#include <math.h>

#define OVERLAY_FEET 2.5                /* so much side by side is moved apart (ours) */
enum { STRETCHES = 3 };                 /* of one pair of lines */
#define SHOT_ANGLE (35 * REAL_PI / 180) /* between a shot and the run that it ends */
#define CURL_ANGLE (15 * REAL_PI / 180) /* the same where a screen stands beside the run */

/* The longest stretch of `trail` that lies along `other`: its middle, its length, and the way off.
 */
struct overlay {
    double length, along, off;
    struct vec2 out;
};

static bool lies_on(const struct trail *trail, size_t i, const struct trail *other, double near,
                    double *off, struct vec2 *from)
{
    struct vec2 way = vec2_unit(vec2_sub(trail->at[i + 1], trail->at[i]));
    struct vec2 at = trail->at[i];
    for (size_t j = 0; j + 1 < other->count; j++) {
        struct vec2 a = other->at[j], b = other->at[j + 1];
        if (at.x < real_min(a.x, b.x) - near || at.x > real_max(a.x, b.x) + near ||
            at.y < real_min(a.y, b.y) - near || at.y > real_max(a.y, b.y) + near) {
            continue;
        }
        double t, far = segment_distance(trail->at[i], other->at[j], other->at[j + 1], &t);
        struct vec2 along = vec2_unit(vec2_sub(other->at[j + 1], other->at[j]));
        if (far < near && fabs(vec2_cross(way, along)) < 0.30) {
            *off = far;
            *from = vec2_mix(other->at[j], other->at[j + 1], t);
            return true;
        }
    }
    return false;
}

static struct overlay overlay_of(const struct trail *trail, const struct trail *other, double near)
{
    struct overlay best = {0}, now = {0};
    double along = 0;
    for (size_t i = 0; i + 1 < trail->count; i++) {
        double step = vec2_distance(trail->at[i], trail->at[i + 1]), off = 0;
        struct vec2 from = {0, 0};
        if (lies_on(trail, i, other, near, &off, &from)) {
            if (now.length == 0) {
                now.along = along;
            }
            now.length += step;
            now.off = off;
            struct vec2 out = vec2_sub(trail->at[i], from);
            now.out = vec2_add(now.out, out);
            if (now.length > best.length) {
                best = now;
            }
        } else {
            now = (struct overlay){0};
        }
        along += step;
    }
    best.along += best.length / 2;
    return best;
}

/* Which of the two sides of a place has more room. */
double room_at(const struct drawing *drawing, struct vec2 at)
{
    double room = real_min(real_min(at.x, drawing->frame.width - at.x),
                           real_min(at.y - drawing->frame.top, drawing->frame.height - at.y));
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        room = real_min(room, vec2_distance(at, drawing->symbols.at[i].at) -
                                  drawing->symbols.at[i].radius);
    }
    return room;
}

/* Do the two ways cross outright, near the places where they begin and end apart? */
static bool ways_cross(const struct trail *a, const struct trail *b, double near)
{
    for (size_t i = 0; i + 1 < a->count; i++) {
        for (size_t j = 0; j + 1 < b->count; j++) {
            double t, u;
            if (segment_cross(a->at[i], a->at[i + 1], b->at[j], b->at[j + 1], &t, &u) &&
                vec2_distance(a->at[i], a->at[0]) > near &&
                vec2_distance(a->at[i], a->at[a->count - 1]) > near) {
                return true;
            }
        }
    }
    return false;
}

/* Moves the longest stretch that lies along the other line off it; false: there is none. */
static bool bend_off_once(struct drawing *drawing, struct stroke *stroke,
                          const struct stroke *other)
{
    double k = drawing->size.k;
    double want =
        (1.5 + (stroke->class == CLASS_DRIBBLE || other->class == CLASS_DRIBBLE ? 0.5 : 0)) * k;
    struct overlay lies = overlay_of(&stroke->trail, &other->trail, 0.95 * k);
    double length = trail_length(&stroke->trail);
    bool short_of_it = lies.length < 6 * k && ways_cross(&stroke->trail, &other->trail, 2.5 * k);
    if (lies.length < OVERLAY_FEET * k || length < 6 * k || short_of_it) {
        return false; /* two that cross at a slant are read more easily than two that writhe */
    }
    struct path path = path_of(drawing->arena, stroke->trail.at, stroke->trail.count);
    struct vec2 middle = path_point(&path, lies.along);
    struct vec2 square = vec2_left(path_direction(&path, lies.along));
    double lean = vec2_dot(square, lies.out);
    if (fabs(lean) < 0.4 * k) { /* as good as on it: to where there is room */
        double left = room_at(drawing, vec2_along(middle, square, want));
        double right = room_at(drawing, vec2_along(middle, square, -want));
        lean = left >= right ? 1 : -1;
    }
    square = vec2_scale(square, lean < 0 ? -1 : 1);
    double wide = real_max(lies.length / 2 + 3 * k, real_min(lies.along, length - lies.along));
    trail_hump(&stroke->trail, lies.along, vec2_scale(square, want - 0.5 * lies.off), wide + 0.01,
               true);
    return true;
}

static bool bend_off_one(struct drawing *drawing, struct stroke *stroke, const struct stroke *other)
{
    int turn = 0;
    while (turn < STRETCHES && bend_off_once(drawing, stroke, other)) {
        turn++;
    }
    return turn > 0;
}

/* The angle that a run keeps off its own shot, so far from where the two meet. */
static double angle_off(double angle, double far, double k)
{
    double fade = real_clamp((far - 6 * k) / (8 * k), 0, 1);
    return angle * (1 - fade * fade * (3 - 2 * fade));
}

/* Does the line come off a screen? Then it passes the bar where it did, whatever follows. */
static bool comes_off_screen(const struct drawing *drawing, const struct stroke *stroke)
{
    for (size_t i = 0; i < stroke->parts; i++) {
        int task = stroke->part[i].task;
        if (task >= 0 && segment_task(drawing->segment, (size_t)task)->kind == TASK_USE) {
            return true;
        }
    }
    return false;
}

static void smooth(struct trail *trail, int turns)
{
    for (int turn = 0; turn < turns; turn++) {
        for (size_t i = 1; i + 1 < trail->count; i++) {
            if (!trail->corner || !trail->corner[i]) {
                struct vec2 middle = vec2_mix(trail->at[i - 1], trail->at[i + 1], 0.5);
                trail->at[i] = vec2_mix(trail->at[i], middle, 0.5);
            }
        }
    }
}

/* On which side of a shot's line from `meet` a way lies most: of one that comes by the basket, on
 * its side there. */
static double shot_side(const struct trail *trail, struct vec2 meet, struct vec2 way, double most)
{
    double by = 0, lean = 0;
    for (size_t i = 0; i < trail->count; i++) {
        struct vec2 off = vec2_sub(trail->at[i], meet);
        double cross = vec2_cross(way, off);
        lean = fabs(cross) > fabs(lean) ? cross : lean;
        if (vec2_dot(way, off) > 0 && vec2_dot(way, off) < most) {
            by = fabs(cross) > fabs(by) ? cross : by;
        }
    }
    bool comes_by = trail->count > 0 && vec2_dot(way, vec2_sub(trail->at[0], meet)) > most;
    return (comes_by && by != 0 ? by : lean) < 0 ? -1 : 1;
}

/* A run that comes to its shot along the line of the shot comes from the side it started on. */
static void bend_off_shot(struct drawing *drawing, struct stroke *stroke, const struct stroke *shot)
{
    double k = drawing->size.k;
    struct trail *trail = &stroke->trail;
    struct vec2 meet = trail->at[trail->count - 1];
    struct vec2 way = vec2_unit(vec2_sub(shot->trail.at[shot->trail.count - 1], meet));
    if (drawing->stops.at[stroke->end].kind != STOP_RING ||
        overlay_of(trail, &shot->trail, 1.2 * k).length < 2 * k) {
        return;
    }
    double most = vec2_distance(meet, shot->trail.at[shot->trail.count - 1]);
    double side = shot_side(trail, meet, way, most);
    double open = comes_off_screen(drawing, stroke) ? CURL_ANGLE : SHOT_ANGLE;
    for (size_t i = 0; i + 1 < trail->count; i++) {
        struct vec2 off = vec2_sub(trail->at[i], meet);
        double far = vec2_length(off), least = angle_off(open, far, k);
        bool his = vec2_cross(way, off) * side >= 0;
        double angle = vec2_angle(way, off);
        if (far > 1e-6 && angle < REAL_PI / 2 && (his ? angle : -angle) < least) {
            trail->at[i] = vec2_along(meet, vec2_turn(way, side * least), far);
        }
    }
    smooth(trail, 24);
}

/* Does a line stay where it is when another lies on it? */
static bool stays(const struct stroke *other, bool earlier, const struct stroke *stroke)
{
    if (stroke_is_light(stroke) != stroke_is_light(other)) {
        return stroke_is_light(stroke);
    }
    return stroke_is_throw(other) || earlier;
}

void lights_off(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *light = &drawing->strokes.at[i];
        for (size_t j = 0; stroke_is_light(light) && j < drawing->strokes.count; j++) {
            const struct stroke *other = &drawing->strokes.at[j];
            if (!stroke_is_light(other) && other->trail.count >= 2 && light->trail.count >= 2) {
                (void)bend_off_one(drawing, light, other);
            }
        }
    }
}

bool bend_off(struct drawing *drawing)
{
    bool any = false;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke_is_throw(stroke) || stroke->standing || stroke->trail.count < 2) {
            continue;
        }
        for (size_t j = 0; j < drawing->strokes.count; j++) {
            const struct stroke *other = &drawing->strokes.at[j];
            bool first = stays(other, j < i, stroke);
            if (other->class == CLASS_SHOT && other->start == stroke->end &&
                other->trail.count >= 2) {
                bend_off_shot(drawing, stroke, other);
            } else if (j != i && first && other->trail.count >= 2) {
                any |= bend_off_one(drawing, stroke, other);
            }
        }
    }
    return any;
}
