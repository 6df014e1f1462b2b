/* SPDX-License-Identifier: MIT */
/* moving_roads: the way a player is going to run, in full ink from where he is to its end, and
 * behind him the trail he left. Takes the strokes of a part's movements for what they are and when;
 * their shape is the run's own track. A screen's road ends in its bar, which stays while he stands
 * behind it. */
#include "picture/scene/drawing.h"

#define STEP 0.025     /* s between the points of a road */
#define NEAR 0.02      /* feet: points nearer than this are one */
#define ROAD 0.05      /* m: how far its curves may be from the track */
#define SHARE 0.10     /* m: how far its erased end may be from the player */
#define BAR_FEET 1.08  /* from the middle of the numeral to its bar beside it; */
#define BAR_OVER 0.14  /* and so much more over or under it: an X stands 2 ft from a screener */
#define AHEAD 1.0      /* s by which an answer's road is seen before it is run (ours) */
#define LEAST_LINE 1.5 /* a line shorter than so many of its head's has none (ours) */
#define DOT 0.55       /* where a trail begins: a ring of the line so small that it is a dot */

/* How far before a screener who faces that way his bar is, feet. */
static double bar_reach(struct vec2 facing)
{
    return BAR_FEET + BAR_OVER * fabs(facing.y);
}

/* A road being made: points on paper, when he was there, and how far along. */
struct road {
    struct vec2 *at;
    double *when;
    size_t count, run; /* `run` of them are run; one more is the bar */
};

static struct road road_of(struct moving_work *work, const struct stroke *stroke, bool bar)
{
    const struct drawing *drawing = &work->drawing;
    size_t most = (size_t)((stroke->ended - stroke->began) / STEP) + 4;
    struct road road = {arena_array(work->arena, struct vec2, most),
                        arena_array(work->arena, double, most), 0, 0};
    for (size_t i = 0; i + 1 < most; i++) {
        double t = real_min(stroke->began + (double)i * STEP, stroke->ended);
        struct vec2 at = frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, t));
        if (road.count == 0 ||
            vec2_distance(at, road.at[road.count - 1]) > NEAR * drawing->size.k) {
            road.at[road.count] = at;
            road.when[road.count++] = t;
        }
    }
    road.run = road.count;
    if (bar) {
        const struct stop *stop = &drawing->stops.at[stroke->end];
        road.at[road.count] = vec2_along(road.at[road.count - 1], stop->facing,
                                         bar_reach(stop->facing) * drawing->size.k);
        road.when[road.count] = road.when[road.count - 1];
        road.count++;
    }
    return road;
}

/* How far along the road he is at a time. */
static double along_at(const struct road *road, const struct path *path, double time)
{
    size_t i = 1;
    while (i + 1 < road->run && road->when[i] < time) {
        i++;
    }
    double from = road->when[i - 1], part = (time - from) / (road->when[i] - from);
    return real_mix(path->along[i - 1], path->along[i], real_clamp(part, 0, 1));
}

struct erasing {
    const struct road *road;
    const struct path *path;
    double length; /* of the line, without its head */
};

static struct vec2 erased_at(const struct moving_work *work, const void *ctx, double time)
{
    const struct erasing *erasing = ctx;
    (void)work;
    return vec2_of(real_min(along_at(erasing->road, erasing->path, time), erasing->length), 0);
}

/* The share of the line that is behind him, tick by tick. */
static void erase(struct moving_work *work, struct moving_group *group, const struct road *road,
                  const struct stroke *stroke, double length)
{
    struct erasing erasing = {road, &stroke->path, length};
    keys_share(work, &group->erased, moving_tick(work, stroke->began),
               moving_tick(work, stroke->ended), SHARE / FEET * work->drawing.size.k, erased_at,
               &erasing);
    for (size_t i = 0; i < group->erased.count; i++) {
        group->erased.at[i].at.x = real_clamp(group->erased.at[i].at.x / length, 0, 1);
    }
}

/* When his road is first seen: as he is done with what he ran before; an answer's, a little before
 * he runs it, and not before it is given. */
static double seen_from(const struct moving_work *work, const struct stroke *stroke)
{
    const struct drawing *drawing = &work->drawing;
    double from = work->part->from;
    size_t common = step_task_count(&drawing->play->steps.at[drawing->segment->step], -1);
    if (stroke->part[0].task >= (int)common) {
        double given = real_max(answer_start(drawing->diagram), stroke->began - AHEAD);
        from = real_min(stroke->began, real_max(from, given));
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *other = &drawing->strokes.at[i];
        if (other != stroke && other->who == stroke->who && other->ended <= stroke->began + 0.05) {
            from = real_max(from, real_min(other->ended, stroke->began));
        }
    }
    return from;
}

/* Who stands at the end of a road when it is first seen; BODY_NONE: nobody. */
static body who_stands_at(const struct moving_work *work, const struct stroke *stroke,
                          struct vec2 end, double time)
{
    const struct segment *segment = work->drawing.segment;
    for (int number = 1; number <= segment->play->players; number++) {
        body other = body_attacker(number);
        if (other != stroke->who && segment->track[other].on_floor &&
            vec2_near(frame_point(&work->frame, segment_at(segment, other, time)), end,
                      work->drawing.size.body)) {
            return other;
        }
    }
    return BODY_NONE;
}

/* The head of a road is seen beside who stands at its end, not under him. */
static void stop_beside(const struct moving_work *work, const struct stroke *stroke,
                        struct road *road)
{
    const struct drawing *drawing = &work->drawing;
    double time = seen_from(work, stroke);
    body other = who_stands_at(work, stroke, road->at[road->count - 1], time);
    if (other == BODY_NONE) {
        return;
    }
    bool ball = segment_holder(drawing->segment, time) == other;
    double room = ball ? drawing->size.ring : drawing->size.body;
    struct vec2 there = frame_point(&work->frame, segment_at(drawing->segment, other, time));
    size_t count = road->count;
    while (count > 2 && vec2_near(road->at[count - 1], there, room)) {
        count--;
    }
    if (vec2_distance(road->at[0], road->at[count - 1]) > room) {
        road->count = road->run = count;
    }
}

static struct moving_group *line_group(struct moving_work *work, const struct stroke *stroke)
{
    struct moving_group *group = moving_group_add(work, stroke->class, stroke->who);
    group->part = work->index;
    return group;
}

static void trail_add(struct moving_work *work, const struct stroke *stroke)
{
    struct drawing *drawing = &work->drawing;
    enum role role = stroke->role == ROLE_DEFENDER ? ROLE_DEFENDER : ROLE_SOFT;
    struct moving_group *group = line_group(work, stroke);
    group->trail = true;
    line_draw(drawing, stroke, role, ROAD / FEET * drawing->size.k);
    moving_mark_add(work, group);
    put_circle(drawing, stroke->class, stroke->ink[0], DOT * stroke->width, ROLE_NONE, role,
               stroke->width);
    moving_mark_add(work, group);
    moving_show(work, &group->shows, stroke->began, work->part->to);
}

static void road_add(struct moving_work *work, const struct stroke *stroke, const struct road *road)
{
    struct drawing *drawing = &work->drawing;
    double length = path_length(&stroke->path) - head_reach(drawing, stroke);
    struct moving_group *group = line_group(work, stroke);
    line_draw(drawing, stroke, stroke->role, ROAD / FEET * drawing->size.k);
    moving_mark_add(work, group);
    moving_show(work, &group->shows, seen_from(work, stroke), stroke->ended);
    erase(work, group, road, stroke, length);
    group->length = length;
    if (stroke->head) {
        line_head_draw(drawing, stroke);
        moving_mark_add(work, group);
    }
}

/* When the screener leaves his bar. */
static double bar_until(const struct moving_work *work, const struct stroke *stroke)
{
    const struct drawing *drawing = &work->drawing;
    double until = work->part->to;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *other = &drawing->strokes.at[i];
        if (other->who == stroke->who && !stroke_is_light(other) && other->began >= stroke->ended &&
            other != stroke) {
            until = real_min(until, other->began);
        }
    }
    return until;
}

/* The bar of a screener whose body is at `at`, over everybody. */
static void bar_add(struct moving_work *work, const struct stroke *stroke, struct vec2 at,
                    double from)
{
    struct drawing *drawing = &work->drawing;
    struct stop bar = drawing->stops.at[stroke->end];
    struct moving_group group = {.class = CLASS_SCREEN, .who = stroke->who, .part = -1};
    bar.at = vec2_along(at, bar.facing, bar_reach(bar.facing) * drawing->size.k);
    bar_draw(drawing, &bar, stroke->role, 1);
    moving_mark_add(work, &group);
    moving_show(work, &group.shows, from, bar_until(work, stroke));
    VEC_PUSH(work->arena, &work->over, group);
}

/* Its trail, or its road and its bar. */
static void stroke_move(struct moving_work *work, struct stroke *stroke, bool trail)
{
    struct drawing *drawing = &work->drawing;
    bool bar = stroke_has_bar(drawing, stroke);
    struct road road = road_of(work, stroke, bar);
    if (road.run < 2) {
        return;
    }
    if (!trail && !bar) {
        stop_beside(work, stroke, &road);
    }
    stroke->trail = (struct trail){road.at, NULL, road.count};
    stroke->path = path_of(work->arena, road.at, road.count);
    stroke->head =
        stroke->head && path_length(&stroke->path) > LEAST_LINE * head_reach(drawing, stroke);
    ink_one(drawing, stroke);
    if (trail) {
        trail_add(work, stroke);
        return;
    }
    road_add(work, stroke, &road);
    if (bar) {
        bar_add(work, stroke, road.at[road.run - 1], seen_from(work, stroke));
    }
}

void roads_plan(struct moving_work *work)
{
    struct drawing *drawing = &work->drawing;
    symbols_place(drawing);
    chain_make(drawing);
    drawing->symbols.count = 0; /* nobody stands in the way of a wave */
}

void roads_add(struct moving_work *work, bool trails)
{
    struct drawing *drawing = &work->drawing;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->standing && !trails) { /* it was set in the step before */
            stroke->role = ROLE_INK;
            stroke->ended = work->part->from;
            bar_add(work, stroke, drawing->stops.at[stroke->end].at, work->part->from);
        } else if (!stroke->standing && stroke->began < work->part->to &&
                   stroke->ended > work->part->from) {
            stroke_move(work, stroke, trails);
        }
    }
}
