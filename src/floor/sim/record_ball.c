/* SPDX-License-Identifier: MIT */
/* record_ball: writes down where the ball was, span by span, and the dribbles. */
#include "floor/sim/world.h"

#include "base/real.h"

#define A_BOUNCE .5      /* s from hand to floor to hand (ours) */
#define LEAST_BOUNCE .35 /* s: in less it has not been back */

static int state_of(const struct ball *ball)
{
    static const int states[] = {[HELD] = BALL_HELD,
                                 [IN_FLIGHT] = BALL_FLIGHT,
                                 [IN_SHOT] = BALL_SHOT,
                                 [LOOSE] = BALL_LOOSE,
                                 [GONE] = BALL_LOOSE};
    return states[ball->state];
}

/* A step that begins inside a tick is written down from the start of the tick on: so is its ball.
 */
static void date_back(const struct world *world, struct ball_span *span)
{
    double inside = span->from - world_zero(world);
    if (inside <= 0) {
        return;
    }
    span->from -= inside;
    span->settle += span->settle > 0 ? inside : 0;
    if (span->state == BALL_HELD) {
        span->start = vec2_along(span->start, world->agent[span->holder].m.v, -inside);
    }
}

void record_ball(struct world *world)
{
    struct segment *segment = world->segment;
    const struct ball *ball = &world->ball;
    bool first = segment->ball.count == 0; /* it may fly since before the segment */
    struct ball_span span = {.from = first ? ball->from : world->t,
                             .to = world->t,
                             .state = (unsigned)state_of(ball),
                             .holder = ball->state == LOOSE || ball->state == GONE ? (body)BODY_NONE
                                                                                   : ball->holder,
                             .target = ball->state == IN_FLIGHT ? ball->target : (body)BODY_NONE,
                             .start = ball->start,
                             .end = ball->end,
                             .flight = ball->flight,
                             .settle = ball->state == HELD ? ball->to - ball->from : 0,
                             .throw_in = ball->throw_in,
                             .task = ball->task};
    if (first && ball->state == HELD && world->t >= ball->to) { /* brought in long since */
        span.from = world->t;
        span.settle = 0;
        span.start = ball_place(world);
        span.flight.from_z = ball->flight.to_z;
    } else if (first && ball->state == HELD) { /* off his body, which has gone on since */
        span.start = vec2_add(world->agent[ball->holder].m.at, ball->off);
    }
    if (first) {
        date_back(world, &span);
    }
    if (segment->ball.count) {
        struct ball_span *last = &segment->ball.at[segment->ball.count - 1];
        last->to = world->t;
        last->end = last->state == BALL_HELD ? span.start : last->end;
    }
    VEC_PUSH(world->arena, &segment->ball, span);
    see_ball(world);
}

/* ---- dribbles ---- */

static bool is_dribble(const struct segment *segment, size_t i, const struct ball_span *span)
{
    const struct task *task = segment_task(segment, i);
    double started = segment->record[i].time[MOMENT_STARTED];
    bool runs = task->kind == TASK_CARRY || task->kind == TASK_USE;
    return runs && task->who == span->holder && started >= span->from - 1e-9 && started < span->to;
}

/* A fake, a look or a hold between two ends the first. */
static bool stops_between(const struct segment *segment, body who, double from, double to)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->kind == TASK_HOLD && !task->stay && task->who == who && started >= from - 1e-9 &&
            started <= to + 1e-9) {
            return true;
        }
    }
    return false;
}

static double way_between(const struct segment *segment, body who, double from, double to)
{
    double length = 0;
    struct vec2 at = segment_at(segment, who, from);
    for (double t = from; t < to;) {
        t = real_min(t + RUN_SAMPLE, to);
        struct vec2 next = segment_at(segment, who, t);
        length += vec2_distance(at, next);
        at = next;
    }
    return length;
}

static void add_dribble(struct world *world, const struct ball_span *span, size_t i)
{
    struct segment *segment = world->segment;
    const double *time = segment->record[i].time;
    double from = time[MOMENT_STARTED];
    double to =
        time[MOMENT_ARRIVED] == TIME_NEVER ? span->to : real_min(time[MOMENT_ARRIVED], span->to);
    size_t count = segment->dribbles.count;
    struct dribble_span *last = count ? &segment->dribbles.at[count - 1] : NULL;
    if (last && last->who == span->holder && last->from >= span->from - 1e-9 &&
        !stops_between(segment, last->who, last->to, from)) {
        last->to = real_max(last->to, to);
        return;
    }
    struct dribble_span dribble = {.who = span->holder, .from = from, .to = to};
    VEC_PUSH(world->arena, &segment->dribbles, dribble);
}

static void record_dribbles(struct world *world)
{
    struct segment *segment = world->segment;
    for (size_t k = 0; k < segment->ball.count; k++) {
        const struct ball_span *span = &segment->ball.at[k];
        for (size_t i = 0; span->state == BALL_HELD && i < segment->tasks; i++) {
            if (is_dribble(segment, i, span)) {
                add_dribble(world, span, i);
            }
        }
    }
    for (size_t i = 0; i < segment->dribbles.count; i++) {
        struct dribble_span *dribble = &segment->dribbles.at[i];
        double seconds = dribble->to - dribble->from;
        dribble->length = way_between(segment, dribble->who, dribble->from, dribble->to);
        dribble->bounces = seconds < LEAST_BOUNCE ? 0 : (int)real_max(1, seconds / A_BOUNCE + .5);
    }
}

void record_ball_end(struct world *world)
{
    struct segment *segment = world->segment;
    if (segment->ball.count) {
        struct ball_span *last = &segment->ball.at[segment->ball.count - 1];
        last->to = world->t;
        last->end = last->state == BALL_HELD ? ball_place(world) : last->end;
    }
    for (size_t i = 0; i < segment->ball.count; i++) {
        struct ball_span *span = &segment->ball.at[i];
        span->from -= world_zero(world);
        span->to -= world_zero(world);
        span->task = span->task >= (int)world->base ? span->task - (int)world->base : SIM_NO_TASK;
    }
    record_dribbles(world);
}
