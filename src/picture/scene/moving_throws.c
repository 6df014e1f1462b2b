/* SPDX-License-Identifier: MIT */
/* moving_throws: passes and shots while the ball is in the air: in full ink from the ball to where
 * it will be caught, lighter behind it. The dashes stand still: the full line shrinks to its far
 * end, and the lighter one under it has its dashes in the same places. A hand-off has no line of
 * its own: the ring changes hands. */
#include "picture/scene/drawing.h"

#define WITHIN 0.12    /* m from the end of its line to the ball, which lies on it and is larger */
#define LEAST_FEET 3.0 /* shorter throws have no line */

struct thrown {
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
static long last_tick(const struct moving_work *work, const struct thrown *thrown)
{
    long tick = moving_tick(work, thrown->span->from), last = moving_tick(work, thrown->span->to);
    double length = vec2_distance(thrown->from, thrown->to);
    while (tick < last &&
           vec2_distance(ball_point(work, moving_clock(work, tick)), thrown->from) < length) {
        tick++;
    }
    return tick;
}

static struct vec2 ball_at(const struct moving_work *work, const void *ctx, double time)
{
    (void)ctx;
    return ball_point(work, time);
}

/* The share of its line that the ball has behind it. */
static struct vec2 share_at(const struct moving_work *work, const void *ctx, double time)
{
    const struct thrown *thrown = ctx;
    double length = vec2_distance(thrown->from, thrown->to);
    return vec2_of(real_min(1, vec2_distance(ball_point(work, time), thrown->from) / length), 0);
}

static bool is_shot(const struct thrown *thrown)
{
    return thrown->class == CLASS_SHOT;
}

/* A pass: dashes from where it ends to where it began; a shot: two thin lines from its shooter. */
static struct moving_mark *line_add(struct moving_work *work, struct moving_group *group,
                                    const struct thrown *thrown)
{
    struct drawing *drawing = &work->drawing;
    const struct sizes *size = &drawing->size;
    struct vec2 off = vec2_scale(vec2_left(thrown->way), size->shot_half);
    enum role role = group->trail ? ROLE_SOFT : ROLE_INK;
    if (is_shot(thrown)) {
        pen_move(drawing, vec2_add(thrown->from, off));
        pen_line(drawing, vec2_add(thrown->to, off));
        pen_move(drawing, vec2_sub(thrown->from, off));
        pen_line(drawing, vec2_sub(thrown->to, off));
        pen_stroke(drawing, thrown->class, role, size->shot_line);
        return moving_mark_add(work, group);
    }
    pen_move(drawing, thrown->to);
    pen_line(drawing, thrown->from);
    pen_stroke(drawing, thrown->class, role, size->line);
    struct moving_mark *mark = moving_mark_add(work, group);
    mark->dash = size->dash;
    mark->space = size->space;
    return mark;
}

/* The whole line lighter, in the place of the full one, which gives way to it. */
static void trail_add(struct moving_work *work, const struct thrown *thrown)
{
    struct moving_group *group = moving_group_add(work, thrown->class, thrown->span->holder);
    group->part = work->index;
    group->trail = true;
    line_add(work, group, thrown);
    moving_show(work, &group->shows, thrown->span->from, work->part->to);
}

/* In full ink from the ball to where it is going. */
static void road_add(struct moving_work *work, const struct thrown *thrown)
{
    struct drawing *drawing = &work->drawing;
    struct moving_group *group = moving_group_add(work, thrown->class, thrown->span->holder);
    long first = moving_tick(work, thrown->span->from), last = last_tick(work, thrown);
    double within = WITHIN / FEET * drawing->size.k;
    group->part = work->index;
    struct moving_mark *mark = line_add(work, group, thrown);
    if (is_shot(thrown)) {
        within /= vec2_distance(thrown->from, thrown->to);
        keys_share(work, &group->erased, first, last, within, share_at, thrown);
        group->length = vec2_distance(thrown->from, thrown->to);
    } else {
        keys_sample(work, &mark->ends, first, last, within, ball_at, NULL);
    }
    struct vec2 tip = vec2_along(thrown->to, thrown->way, 0.7 * drawing->size.head_length);
    head_draw(drawing, thrown->class, ROLE_INK, tip, thrown->way, 1);
    moving_mark_add(work, group);
    moving_show(work, &group->shows, thrown->span->from, moving_clock(work, last));
}

/* A flight's line: from beside the thrower to short of the catcher, or of the ring. */
static bool thrown_of(const struct moving_work *work, const struct ball_span *span,
                      struct thrown *thrown)
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
    thrown->span = span;
    thrown->class = shot ? CLASS_SHOT : CLASS_PASS;
    thrown->way = vec2_unit(vec2_sub(to, from));
    thrown->from = from;
    /* its head lies behind the end of the line */
    double stop = (shot ? size->basket : size->body) + size->gap + 0.7 * size->head_length;
    thrown->to = vec2_along(to, thrown->way, -real_min(stop, 0.6 * length));
    return true;
}

void flights_add(struct moving_work *work, bool trails)
{
    const struct segment *segment = work->drawing.segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        struct thrown thrown;
        bool flies = span->state == BALL_FLIGHT || span->state == BALL_SHOT;
        if (flies && span->from < work->part->to && span->to > work->part->from &&
            thrown_of(work, span, &thrown)) {
            (trails ? trail_add : road_add)(work, &thrown);
        }
    }
}
