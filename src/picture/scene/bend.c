/* SPDX-License-Identifier: MIT */
/* bend: lines pushed apart where paper needs it. An out-and-back opens to a V; a line that would
 * run through a symbol, a bar or a ring goes round it; one that would lie on another moves off it.
 * The moving picture keeps the true path. */
#include "picture/scene/drawing.h"

#include <math.h>
#include <string.h>

enum { ROUNDS = 18, RELAX = 160 };

/* A thing to keep clear of: a circle, or all that is within r of a bar from a to b. */
struct obstacle {
    struct vec2 a, b;
    double r;
    bool own; /* the stroke starts here: only its later parts keep clear */
};
typedef VEC(struct obstacle) obstacle_list;

static double trail_length(const struct trail *trail)
{
    double length = 0;
    for (size_t i = 1; i < trail->count; i++) {
        length += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    return length;
}

static bool is_throw(const struct stroke *stroke)
{
    return stroke->class == CLASS_PASS || stroke->class == CLASS_SHOT ||
           stroke->class == CLASS_HANDOFF;
}

static bool uses_screen_of(const struct drawing *drawing, const struct stroke *stroke,
                           body screener)
{
    for (size_t i = 0; i < stroke->parts; i++) {
        const struct task *task =
            stroke->part[i].task < 0 ? NULL
                                     : segment_task(drawing->segment, (size_t)stroke->part[i].task);
        if (task && task->kind == TASK_USE &&
            (task->other == screener || task->other2 == screener)) {
            return true;
        }
    }
    return false;
}

static void obstacles_of(struct drawing *drawing, const struct stroke *stroke, obstacle_list *list)
{
    const struct sizes *size = &drawing->size;
    double k = size->k, wide = stroke->class == CLASS_DRIBBLE ? size->wave_half : 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double r = body_is_defender(symbol->who) ? 1.15 * size->x_half + 0.5 * k
                                                 : symbol->radius + 0.6 * k;
        bool own = stroke->start >= 0 && drawing->stops.at[stroke->start].kind == STOP_SYMBOL &&
                   drawing->stops.at[stroke->start].who == symbol->who;
        VEC_PUSH(drawing->arena, list, ((struct obstacle){symbol->at, symbol->at, r + wide, own}));
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        bool own = (int)i == stroke->start;
        if ((int)i == stroke->end) {
            continue;
        }
        if (stop->kind == STOP_RING) {
            VEC_PUSH(drawing->arena, list,
                     ((struct obstacle){stop->at, stop->at, size->end + 0.6 * k + wide, own}));
        } else if (stop->kind == STOP_BAR && stop->from < 0 && stop->who == stroke->who) {
            /* his own standing screen: off the bar, and off the short line behind it */
            struct vec2 along = vec2_scale(vec2_left(stop->facing), size->bar / 2);
            struct vec2 behind = vec2_along(stop->at, stop->facing, -2.2 * k);
            VEC_PUSH(drawing->arena, list,
                     ((struct obstacle){vec2_add(stop->at, along), vec2_sub(stop->at, along),
                                        0.8 * k + wide, false}));
            VEC_PUSH(drawing->arena, list,
                     ((struct obstacle){stop->at, behind, 1.1 * k + wide, false}));
        } else if (stop->kind == STOP_BAR && !own && stop->who != stroke->who) {
            struct vec2 along = vec2_scale(vec2_left(stop->facing), size->bar / 2);
            double r = uses_screen_of(drawing, stroke, stop->who) ? 1.6 * k : 0.9 * k;
            VEC_PUSH(drawing->arena, list,
                     ((struct obstacle){vec2_add(stop->at, along), vec2_sub(stop->at, along),
                                        r + wide, false}));
        }
    }
    for (size_t i = 0; i + 1 < drawing->ticks.count; i++) {
        if (drawing->tick_owners.at[i] == drawing->tick_owners.at[i + 1]) {
            VEC_PUSH(drawing->arena, list,
                     ((struct obstacle){drawing->ticks.at[i], drawing->ticks.at[i + 1],
                                        size->tick + 0.5 * k + wide, false}));
        }
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        struct vec2 at = drawing->cones.at[i];
        VEC_PUSH(drawing->arena, list,
                 ((struct obstacle){at, at, size->cone + 0.6 * k + wide, false}));
    }
    struct vec2 ring = frame_point(&drawing->frame, vec2_of(0, 0));
    VEC_PUSH(drawing->arena, list,
             ((struct obstacle){ring, ring, size->basket + 0.5 * k + wide, false}));
}

/* How deep the trail is inside an obstacle, where, and which way is out. */
struct breach {
    double depth, along;
    struct vec2 out;
    size_t index;
};

static size_t first_free(const struct trail *trail, const struct obstacle *obstacle)
{
    size_t i = 0;
    while (i < trail->count &&
           segment_distance(trail->at[i], obstacle->a, obstacle->b, NULL) < obstacle->r * 1.25) {
        i++;
    }
    return i;
}

/* The unit vector square to the trail at `index`, on the side of `toward`. */
static struct vec2 square_to(const struct trail *trail, size_t index, struct vec2 toward)
{
    size_t a = index > 2 ? index - 2 : 0,
           b = index + 2 < trail->count ? index + 2 : trail->count - 1;
    struct vec2 square = vec2_left(vec2_unit(vec2_sub(trail->at[b], trail->at[a])));
    return vec2_dot(square, toward) < 0 ? vec2_scale(square, -1) : square;
}

static struct breach breach_of(const struct trail *trail, const struct obstacle *obstacle)
{
    struct breach breach = {0};
    size_t from = obstacle->own ? first_free(trail, obstacle) : 0;
    double along = 0, nearest = obstacle->r;
    double room =
        real_min(segment_distance(trail->at[trail->count - 1], obstacle->a, obstacle->b, NULL),
                 obstacle->own ? obstacle->r
                               : segment_distance(trail->at[0], obstacle->a, obstacle->b, NULL));
    double r = real_min(obstacle->r, 0.97 * room);
    nearest = r;
    bool bar = vec2_distance(obstacle->a, obstacle->b) > 1e-6;
    for (size_t i = from; i < trail->count; i++) {
        along += i > from ? vec2_distance(trail->at[i - 1], trail->at[i]) : 0;
        double t, u, s;
        double far = segment_distance(trail->at[i], obstacle->a, obstacle->b, &t);
        if (bar && i > from &&
            segment_cross(trail->at[i - 1], trail->at[i], obstacle->a, obstacle->b, &s, &u)) {
            struct vec2 end = u < 0.5 ? obstacle->a : obstacle->b,
                        other = u < 0.5 ? obstacle->b : obstacle->a;
            double reach = real_min(u, 1 - u) * vec2_distance(obstacle->a, obstacle->b);
            return (struct breach){r + reach, along, square_to(trail, i, vec2_sub(end, other)), i};
        }
        if (far < nearest) {
            nearest = far;
            struct vec2 out = vec2_sub(trail->at[i], vec2_mix(obstacle->a, obstacle->b, t));
            breach = (struct breach){r - far, along, square_to(trail, i, out), i};
        }
    }
    for (size_t i = 1; i <= from && i < trail->count; i++) {
        breach.along += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    return breach;
}

/* A smooth hump: full height at `along`, nothing beyond `wide` to either side or at the ends. Where
 * it reaches an end and `fan` is set, the way leaves that end at an angle. */
static void hump(struct trail *trail, double along, struct vec2 push, double wide, bool fan)
{
    double length = trail_length(trail), at = 0;
    double left = real_min(wide, along), right = real_min(wide, length - along);
    struct vec2 last = trail->at[0];
    for (size_t i = 0; i < trail->count; i++) {
        at += vec2_distance(last, trail->at[i]);
        last = trail->at[i];
        double off = at - along, side = off < 0 ? left : right;
        if (side > 1e-6 && fabs(off) < side) {
            double c = real_cos(REAL_PI / 2 * off / side);
            bool open = fan && side < wide;
            trail->at[i] = vec2_along(trail->at[i], push, open ? c : c * c);
        }
    }
}

/* Keeps to those obstacles that the trail is near to, with the room that its ends leave them. */
static void obstacles_near(struct trail *trail, obstacle_list *list, double reach)
{
    size_t kept = 0;
    struct vec2 first = trail->at[0], last = trail->at[trail->count - 1];
    for (size_t i = 0; i < list->count; i++) {
        struct obstacle obstacle = list->at[i];
        double near = 1e9;
        for (size_t p = 0; p < trail->count; p++) {
            near = real_min(near, segment_distance(trail->at[p], obstacle.a, obstacle.b, NULL));
        }
        double room = segment_distance(last, obstacle.a, obstacle.b, NULL);
        if (!obstacle.own) {
            room = real_min(room, segment_distance(first, obstacle.a, obstacle.b, NULL));
        }
        obstacle.r = real_min(obstacle.r, 0.97 * room);
        if (near < obstacle.r + reach) {
            list->at[kept++] = obstacle;
        }
    }
    list->count = kept;
}

static void hold_off(struct trail *trail, const struct obstacle *obstacle, size_t from)
{
    for (size_t i = from > 0 ? from : 1; i + 1 < trail->count; i++) {
        double t, far = segment_distance(trail->at[i], obstacle->a, obstacle->b, &t);
        if (far < obstacle->r && far > 1e-3) {
            struct vec2 near = vec2_mix(obstacle->a, obstacle->b, t);
            trail->at[i] = vec2_along(near, vec2_unit(vec2_sub(trail->at[i], near)), obstacle->r);
        }
    }
}

/* What was pushed is drawn taut: how far the way is off its own course changes evenly, like a
 * string laid round pegs, so that several pushes make one bend and not a writhing line. */
static void relax_one(struct drawing *drawing, struct trail *trail, const struct vec2 *course,
                      obstacle_list *list)
{
    obstacles_near(trail, list, 1.5 * drawing->size.k);
    struct vec2 *off = arena_array(drawing->arena, struct vec2, trail->count);
    for (int turn = 0; turn < RELAX; turn++) {
        for (size_t i = 0; i < trail->count; i++) {
            off[i] = vec2_sub(trail->at[i], course[i]);
        }
        for (size_t i = 1; i + 1 < trail->count; i++) {
            struct vec2 middle = vec2_mix(off[i - 1], off[i + 1], 0.5);
            trail->at[i] = vec2_add(course[i], vec2_mix(off[i], middle, 0.6));
        }
        for (size_t o = 0; o < list->count; o++) {
            hold_off(trail, &list->at[o], list->at[o].own ? first_free(trail, &list->at[o]) : 0);
        }
    }
}

static void bend_one(struct drawing *drawing, struct stroke *stroke)
{
    struct trail *trail = &stroke->trail;
    obstacle_list list = {0};
    obstacles_of(drawing, stroke, &list);
    struct vec2 *course = arena_array(drawing->arena, struct vec2, trail->count);
    memcpy(course, trail->at, trail->count * sizeof *course);
    bool bent = false;
    for (int round = 0; round < ROUNDS; round++) {
        struct breach worst = {0};
        double r = 0;
        for (size_t i = 0; i < list.count; i++) {
            struct breach breach = breach_of(trail, &list.at[i]);
            if (breach.depth > worst.depth) {
                worst = breach;
                r = list.at[i].r;
            }
        }
        if (worst.depth < 0.06 * drawing->size.k) {
            break;
        }
        hump(trail, worst.along, vec2_scale(worst.out, worst.depth * 1.03), 2.5 * r, false);
        bent = true;
    }
    if (bent) {
        relax_one(drawing, trail, course, &list);
    }
}

/* Where smooth bends found no way between crowded marks: the points themselves are pushed out and
 * the neighbours smoothed after them. */
static bool push_points(struct trail *trail, const struct obstacle *obstacle, size_t from,
                        bool *moved)
{
    bool any = false;
    double room = segment_distance(trail->at[trail->count - 1], obstacle->a, obstacle->b, NULL);
    double r = real_min(obstacle->r, 0.97 * room);
    for (size_t i = from; i + 1 < trail->count; i++) {
        double t, far = segment_distance(trail->at[i], obstacle->a, obstacle->b, &t);
        if (i == 0 || far >= r) {
            continue;
        }
        struct vec2 near = vec2_mix(obstacle->a, obstacle->b, t),
                    way = vec2_sub(trail->at[i], near);
        way = far > 1e-3 ? vec2_unit(way) : square_to(trail, i, vec2_of(0, 1));
        trail->at[i] = vec2_along(near, way, r);
        moved[i] = any = true;
    }
    return any;
}

static void smooth_moved(struct trail *trail, const bool *moved)
{
    for (size_t i = 1; i + 1 < trail->count; i++) {
        bool near = false;
        for (size_t j = i > 4 ? i - 4 : 0; j <= i + 4 && j < trail->count; j++) {
            near |= moved[j];
        }
        if (near && !trail->corner[i]) {
            struct vec2 middle = vec2_mix(trail->at[i - 1], trail->at[i + 1], 0.5);
            trail->at[i] = vec2_mix(trail->at[i], middle, 0.5);
        }
    }
}

static void squeeze_one(struct drawing *drawing, struct stroke *stroke)
{
    obstacle_list list = {0};
    obstacles_of(drawing, stroke, &list);
    bool *moved = arena_array(drawing->arena, bool, stroke->trail.count);
    double slack = 0.25 * drawing->size.k; /* symbols keep their gap, only the comfort goes */
    for (int turn = 0; turn < 40; turn++) {
        bool any = false;
        for (size_t i = 0; i < list.count; i++) {
            struct obstacle tight = list.at[i];
            tight.r -= slack;
            size_t from = tight.own ? first_free(&stroke->trail, &tight) : 0;
            any |= push_points(&stroke->trail, &tight, from, moved);
        }
        if (!any) {
            return;
        }
        if (turn < 38) {
            smooth_moved(&stroke->trail, moved);
        }
    }
}

/* No line leaves the picture. */
static void keep_inside(const struct drawing *drawing, struct stroke *stroke)
{
    double edge =
        drawing->size.line + (stroke->class == CLASS_DRIBBLE ? drawing->size.wave_half : 0);
    for (size_t i = 0; i < stroke->trail.count; i++) {
        stroke->trail.at[i] = frame_keep(&drawing->frame, stroke->trail.at[i], edge);
    }
}

void bend_round(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (!is_throw(stroke) && !stroke->standing && stroke->trail.count >= 2) {
            bend_one(drawing, stroke);
            squeeze_one(drawing, stroke);
            keep_inside(drawing, stroke);
        }
    }
}

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
    for (size_t j = 0; j + 1 < other->count; j++) {
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

static void bend_off_one(struct drawing *drawing, struct stroke *stroke, const struct stroke *other)
{
    double k = drawing->size.k;
    double want =
        (1.5 + (stroke->class == CLASS_DRIBBLE || other->class == CLASS_DRIBBLE ? 0.5 : 0)) * k;
    struct overlay lies = overlay_of(&stroke->trail, &other->trail, 0.95 * k);
    double length = trail_length(&stroke->trail);
    bool short_of_it = lies.length < 6 * k && ways_cross(&stroke->trail, &other->trail, 2.5 * k);
    if (lies.length < 3.2 * k || length < 6 * k || short_of_it) {
        return; /* two that cross at a slant are read more easily than two that writhe */
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
    hump(&stroke->trail, lies.along, vec2_scale(square, want - 0.5 * lies.off), wide + 0.01, true);
}

void bend_off(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (is_throw(stroke) || stroke->standing || stroke->trail.count < 2) {
            continue;
        }
        for (size_t j = 0; j < drawing->strokes.count; j++) {
            const struct stroke *other = &drawing->strokes.at[j];
            bool first = is_throw(other) || j < i;
            if (j != i && first && other->trail.count >= 2) {
                bend_off_one(drawing, stroke, other);
            }
        }
    }
}
