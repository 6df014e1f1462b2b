/* SPDX-License-Identifier: MIT */
/* moving_throws: passes and shots while the ball is in the air: in full ink from the ball to where
 * it will be caught, lighter from where it was thrown to the ball. The dashes stand still: a line
 * grows from its own fixed end. A hand-off has no line of its own: the ring changes hands. */
#include "picture/scene/drawing.h"

#define WITHIN 0.05    /* m: how far a line's end may be from the ball */
#define LEAST_FEET 3.0 /* shorter throws have no line */

struct throw
{
    const struct ball_span *span;
    struct vec2 from, to; /* the ends of its line, points */
    struct vec2 way;      /* unit */
    enum scene_class class;
};

static struct vec2 ball_point(const struct moving_work *work, double time)
{
    return frame_point(&work->drawing.frame, segment_ball(work->drawing.segment, time));
}

/* When the ball comes to the end of the line before it: from then on there is none. */
static long last_tick(const struct moving_work *work, const struct throw *throw)
{
    long tick = moving_tick(work, throw->span->from), last = moving_tick(work, throw->span->to);
    double length = vec2_distance(throw->from, throw->to);
    while (tick < last &&
           vec2_distance(ball_point(work, moving_clock(work, tick)), throw->from) < length) {
        tick++;
    }
    return tick;
}

/* The end of a line that goes with the ball. */
static void end_follow(struct moving_work *work, moving_keys *keys, const struct throw *throw,
                       long last, struct vec2 off)
{
    long first = moving_tick(work, throw->span->from);
    struct moving_key *sample =
        arena_array(work->arena, struct moving_key, (size_t)(last - first + 1));
    for (long tick = first; tick <= last; tick++) {
        struct vec2 ball = ball_point(work, moving_clock(work, tick));
        sample[tick - first] =
            (struct moving_key){(double)tick * work->moving->tick, vec2_add(ball, off)};
    }
    keys_add(work->arena, keys, sample, (size_t)(last - first + 1),
             WITHIN / FEET * work->drawing.size.k);
}

static void line_add(struct moving_work *work, struct moving_group *group,
                     const struct throw *throw, long last, struct vec2 off)
{
    struct drawing *drawing = &work->drawing;
    const struct sizes *size = &drawing->size;
    bool shot = throw->class == CLASS_SHOT;
    struct vec2 fixed = vec2_add(group->trail ? throw->from : throw->to, off);
    pen_move(drawing, fixed);
    pen_line(drawing, fixed);
    pen_stroke(drawing, throw->class, group->trail ? ROLE_SOFT : ROLE_INK,
               shot ? size->shot_line : size->line);
    struct moving_mark *mark = moving_mark_add(work, group);
    mark->dash = shot ? 0 : size->dash;
    mark->space = shot ? 0 : size->space;
    end_follow(work, &mark->ends, throw, last, off);
}

static void throw_add(struct moving_work *work, const struct throw *throw, bool trail)
{
    struct drawing *drawing = &work->drawing;
    struct moving_group *group = moving_group_add(work, throw->class, throw->span->holder);
    bool shot = throw->class == CLASS_SHOT;
    struct vec2 square = vec2_scale(vec2_left(throw->way), shot ? drawing->size.shot_half : 0);
    long last = trail ? moving_tick(work, throw->span->to) : last_tick(work, throw);
    group->part = work->index;
    group->trail = trail;
    line_add(work, group, throw, last, square);
    if (shot) {
        line_add(work, group, throw, last, vec2_scale(square, -1));
    }
    if (!trail) {
        struct vec2 tip = vec2_along(throw->to, throw->way, 0.7 * drawing->size.head_length);
        head_draw(drawing, throw->class, ROLE_INK, tip, throw->way, 1);
        moving_mark_add(work, group);
    }
    moving_show(work, &group->shows, throw->span->from,
                trail ? work->part->to : moving_clock(work, last));
}

/* A flight's line: from beside the thrower to short of the catcher, or of the ring. */
static bool throw_of(const struct moving_work *work, const struct ball_span *span,
                     struct throw *throw)
{
    const struct sizes *size = &work->drawing.size;
    const struct frame *frame = &work->drawing.frame;
    struct vec2 from = frame_point(frame, span->start), to = frame_point(frame, span->end);
    double length = vec2_distance(from, to);
    bool shot = span->state == BALL_SHOT;
    bool hands = span->task >= 0 &&
                 segment_task(work->drawing.segment, (size_t)span->task)->kind == TASK_EXCHANGE;
    if (hands || length < LEAST_FEET * size->k) {
        return false;
    }
    throw->span = span;
    throw->class = shot ? CLASS_SHOT : CLASS_PASS;
    throw->way = vec2_unit(vec2_sub(to, from));
    throw->from = from;
    /* its head lies behind the end of the line */
    double stop = (shot ? size->basket : size->body) + size->gap + 0.7 * size->head_length;
    throw->to = vec2_along(to, throw->way, -real_min(stop, 0.6 * length));
    return true;
}

void flights_add(struct moving_work *work, bool trails)
{
    const struct segment *segment = work->drawing.segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        struct throw throw;
        bool flies = span->state == BALL_FLIGHT || span->state == BALL_SHOT;
        if (flies && span->from < work->part->to && span->to > work->part->from &&
            throw_of(work, span, &throw)) {
            throw_add(work, &throw, trails);
        }
    }
}
