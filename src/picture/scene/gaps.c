/* SPDX-License-Identifier: MIT */
/* gaps: how far short of what it leaves and comes to a line is drawn; and room made for throws
 * between two who are so near that nothing would be left of them. */
#include "picture/scene/drawing.h"

#include <math.h>

bool stroke_flies(const struct stroke *stroke)
{
    return stroke->class == CLASS_PASS || stroke->class == CLASS_SHOT;
}

static double leave_gap(const struct drawing *drawing, const struct stop *stop, bool throws)
{
    const struct sizes *size = &drawing->size;
    double radius = stop_radius(drawing, stop);
    switch (stop->kind) {
    case STOP_SYMBOL:
        return radius + size->gap;
    case STOP_RING:
        return throws ? real_max(1.0 * size->k, radius + 0.7 * size->gap) : radius;
    case STOP_BAR:
        return throws ? size->k : size->bar_stroke / 2; /* it is seen whose way goes on there */
    case STOP_FREE:
    case STOP_RIM:
        return 0.8 * size->k;
    }
    return 0;
}

double start_gap(const struct drawing *drawing, const struct stroke *stroke)
{
    return leave_gap(drawing, &drawing->stops.at[stroke->start], stroke_flies(stroke));
}

/* Short of what it ends at. */
static double come_gap(const struct drawing *drawing, const struct stop *stop,
                       enum scene_class class)
{
    const struct sizes *size = &drawing->size;
    double radius = stop_radius(drawing, stop);
    bool pass = class == CLASS_PASS;
    switch (stop->kind) {
    case STOP_SYMBOL:
        return radius + size->gap;
    case STOP_RING:
        return class == CLASS_HANDOFF ? radius : radius + (pass ? 1.2 : 0.45) * size->gap;
    case STOP_BAR:
        return pass                     ? 1.2 * size->k
               : class == CLASS_HANDOFF ? size->bar_stroke / 2 + 0.5 * size->gap
                                        : 0;
    case STOP_RIM:
        return pass ? (size->small ? 1.6 : 1.25) * size->k : 0.15 * size->k;
    case STOP_FREE:
        return 0.9 * size->k;
    }
    return 0;
}

double end_gap(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    return stroke->end < 0 ? size->basket + size->gap
                           : come_gap(drawing, &drawing->stops.at[stroke->end], stroke->class);
}

/* From the passer's middle to the passee's at the least: a head and a dash lie between them. */
static double pass_least(const struct drawing *drawing, const struct stop *from,
                         const struct stop *to)
{
    const struct sizes *size = &drawing->size;
    return leave_gap(drawing, from, true) + come_gap(drawing, to, CLASS_PASS) +
           1.1 * size->head_length + size->dash;
}

/* May it be moved there? A ring may; a numeral where all are small, and nobody's is there. */
static bool stop_moves(struct drawing *drawing, const struct stop *stop, struct vec2 at)
{
    if (stop->kind != STOP_SYMBOL) {
        return stop->kind == STOP_RING;
    }
    const struct symbol *own = symbol_of(drawing, stop->who);
    for (size_t i = 0; drawing->size.small && i < drawing->symbols.count; i++) {
        const struct symbol *other = &drawing->symbols.at[i];
        double least = own->radius + other->radius + drawing->size.gap;
        if (other != own && !body_is_defender(other->who) && vec2_distance(other->at, at) < least &&
            vec2_distance(other->at, at) < vec2_distance(other->at, own->at)) {
            return false;
        }
    }
    return drawing->size.small;
}

/* Moves it as far along as the picture goes; how far that was. */
static double stop_push(struct drawing *drawing, struct stop *stop, struct vec2 way, double far)
{
    double edge = stop_radius(drawing, stop) + 0.5;
    struct vec2 before = stop->at, to = vec2_along(before, way, far);
    struct vec2 at = stop->kind == STOP_RING ? ring_keep(drawing, stop, to)
                                             : frame_keep(&drawing->frame, to, edge);
    if (far <= 0 || !stop_moves(drawing, stop, at)) {
        return 0;
    }
    stop->at = at;
    if (stop->kind == STOP_SYMBOL) {
        symbol_of(drawing, stop->who)->at = at;
    }
    return vec2_dot(vec2_sub(at, before), way);
}

/* Who gets the ball goes on along the pass, who throws it goes back, until it can be seen. */
static void pass_part(struct drawing *drawing, struct stop *from, struct stop *to)
{
    struct vec2 way = vec2_sub(to->at, from->at);
    double far = vec2_length(way), lacks = pass_least(drawing, from, to) - far;
    way = far > 0.05 ? vec2_unit(way) : vec2_of(1, 0);
    if (lacks > 0) {
        lacks -= stop_push(drawing, to, way, lacks);
        stop_push(drawing, from, vec2_scale(way, -1), lacks);
    }
}

bool throw_stops(const struct drawing *drawing, size_t task, enum task_kind kind, int *from,
                 int *to)
{
    const struct task *thrown = segment_task(drawing->segment, task);
    const struct task_record *record = &drawing->segment->record[task];
    double released = record->time[MOMENT_RELEASED], caught = record->time[MOMENT_CAUGHT];
    if (thrown->kind != kind || released < 0 || caught < 0) {
        return false;
    }
    *from = stop_at(drawing, thrown->who, released);
    *to = stop_at(drawing, thrown->other, caught);
    return *from >= 0 && *to >= 0;
}

bool stop_is_thrown(const struct drawing *drawing, int stop, enum task_kind kind)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        int from, to;
        if (throw_stops(drawing, i, kind, &from, &to) && (from == stop || to == stop)) {
            return true;
        }
    }
    return false;
}

void passes_part(struct drawing *drawing)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        int from, to;
        if (throw_stops(drawing, i, TASK_PASS, &from, &to)) {
            pass_part(drawing, &drawing->stops.at[from], &drawing->stops.at[to]);
        }
    }
}

bool throw_beside(struct drawing *drawing, struct stroke *stroke)
{
    if (stroke->class == CLASS_SHOT || !stroke_is_throw(stroke) || stroke->end < 0) {
        return false;
    }
    const struct sizes *size = &drawing->size;
    const struct stop *from = &drawing->stops.at[stroke->start];
    const struct stop *to = &drawing->stops.at[stroke->end];
    struct vec2 way = vec2_sub(to->at, from->at), middle = vec2_mix(from->at, to->at, 0.5);
    way = vec2_length(way) > 0.05 ? vec2_unit(way) : vec2_of(1, 0);
    double radius = real_max(stop_radius(drawing, from), stop_radius(drawing, to));
    double off = radius + size->gap + size->head_width / 2;
    double half = (1.1 * size->head_length + size->dash) / 2;
    struct vec2 left = vec2_along(middle, vec2_left(way), off),
                right = vec2_along(middle, vec2_left(way), -off);
    middle = room_at(drawing, left) >= room_at(drawing, right) ? left : right;
    stroke->trail = (struct trail){arena_array(drawing->arena, struct vec2, 2), NULL, 2};
    stroke->trail.at[0] = vec2_along(middle, way, -half);
    stroke->trail.at[1] = vec2_along(middle, way, half);
    stroke->path = path_of(drawing->arena, stroke->trail.at, 2);
    return true;
}
