/* SPDX-License-Identifier: MIT */
/* settle: bars, hand-offs and (rings.c, defenders.c) end rings and defenders are brought clear of
 * each other on paper, each as little as may be. Attackers' numerals stand; rings give way to them,
 * defenders to everyone. */
#include "picture/scene/drawing.h"

#include <math.h>

#define HOOK_FEET 6.0                   /* of a screener's way to his bar: it may be a hook */
#define HOOK_ANGLE (70 * REAL_PI / 180) /* further round than this from behind the bar */
#define TILT (28 * REAL_PI / 180)     /* so far a bar is turned at most toward a short way to it */
#define HOOK_MOVES 4.0                /* feet that his numeral is moved at most for it (ours) */
#define FOLLOWED (50 * REAL_PI / 180) /* a hand-off after a pass between the same two, off it */
enum { TURNS = 24 };

/* The push that brings `at` to `least` from `from`, or nothing. */
struct vec2 push_off(struct vec2 at, struct vec2 from, double least, struct vec2 otherwise)
{
    struct vec2 way = vec2_sub(at, from);
    if (vec2_square(way) >= least * least) { /* most are */
        return vec2_of(0, 0);
    }
    double far = vec2_length(way);
    way = far > 0.05 ? vec2_unit(way) : otherwise;
    return vec2_scale(way, least - far);
}

void bar_ends(const struct drawing *drawing, const struct stop *bar, struct vec2 *a, struct vec2 *b)
{
    struct vec2 along = vec2_left(bar->facing);
    *a = vec2_along(bar->at, along, drawing->size.bar / 2);
    *b = vec2_along(bar->at, along, -drawing->size.bar / 2);
}

struct vec2 bar_nearest(const struct drawing *drawing, const struct stop *bar, struct vec2 p)
{
    struct vec2 a, b;
    double t;
    bar_ends(drawing, bar, &a, &b);
    segment_distance(p, a, b, &t);
    return vec2_mix(a, b, t);
}

double stop_radius(const struct drawing *drawing, const struct stop *stop)
{
    const struct sizes *size = &drawing->size;
    if (stop->kind == STOP_RING) {
        return size->end + size->end_stroke / 2;
    }
    if (stop->kind == STOP_SYMBOL) {
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            if (drawing->symbols.at[i].who == stop->who) {
                return drawing->symbols.at[i].radius;
            }
        }
    }
    return 0;
}

struct vec2 frame_keep(const struct frame *frame, struct vec2 at, double edge)
{
    return vec2_of(real_clamp(at.x, edge, frame->width - edge),
                   real_clamp(at.y, frame->top + edge, frame->height - edge));
}

/* Screens: the X is drawn where the screen finds it, the bar at its distance from the X. */
static void screens_pin(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        const struct stop *end = &drawing->stops.at[stroke->end];
        if (end->kind != STOP_BAR || stroke->standing) {
            continue;
        }
        const struct task_record *record =
            &drawing->segment->record[stroke->part[stroke->parts - 1].task];
        struct symbol *x =
            record->defender == BODY_NONE ? NULL : symbol_of(drawing, record->defender);
        if (x && !x->pinned) {
            x->at = frame_point(&drawing->frame, record->on);
            x->pinned = true;
        }
    }
}

/* Where an X that a screen was set on has been moved, the bar goes with it. */
static void bars_follow(struct drawing *drawing)
{
    double k = drawing->size.k;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        struct stop *bar = &drawing->stops.at[stroke->end];
        if (bar->kind != STOP_BAR || stroke->standing) {
            continue;
        }
        const struct task_record *record =
            &drawing->segment->record[stroke->part[stroke->parts - 1].task];
        const struct symbol *x =
            record->defender == BODY_NONE ? NULL : symbol_of(drawing, record->defender);
        if (!x) {
            continue;
        }
        double least =
            real_max(2.6 * k, x->radius + drawing->size.bar_stroke / 2 + drawing->size.gap);
        struct vec2 off = vec2_sub(bar->at, x->at);
        double far = vec2_length(off);
        if (far > 0.1 && far < least) {
            bar->at = vec2_along(x->at, vec2_unit(off), least);
        }
    }
}

/* Moves a bar, and who stands behind it as the diagram begins. */
static void bar_shift(struct drawing *drawing, struct stop *bar, struct vec2 by)
{
    bar->at = vec2_add(bar->at, by);
    struct symbol *symbol = symbol_of(drawing, bar->who);
    if (bar->from < 0 && symbol) {
        symbol->at = frame_keep(&drawing->frame, vec2_add(symbol->at, by), symbol->radius + 0.5);
        int start = stop_at(drawing, bar->who, drawing->scope.start);
        drawing->stops.at[start].at = symbol->at;
    }
}

/* Off the board by so much that a line has room between: who uses the screen may come there. */
static struct vec2 bar_off_board(const struct drawing *drawing, const struct stop *bar)
{
    const struct sizes *size = &drawing->size;
    struct basket_marks basket = basket_marks(drawing, false);
    double t, least = size->bar_stroke / 2 + size->board / 2 + size->line + 3 * size->gap;
    struct vec2 from = bar_nearest(drawing, bar, vec2_mix(basket.left, basket.right, 0.5));
    segment_distance(from, basket.left, basket.right, &t);
    struct vec2 board = vec2_mix(basket.left, basket.right, t);
    struct vec2 push = push_off(bar_nearest(drawing, bar, board), board, least, bar->facing);
    struct vec2 down = vec2_unit(drawing->frame.down);
    return vec2_scale(down, real_max(0, vec2_dot(push, down)));
}

/* Bars keep off the numerals, their own too, and off the basket's ring; who stands behind one as
 * the diagram begins goes with it. */
static void bars_settle(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    double edge = size->bar / 2;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *bar = &drawing->stops.at[i];
        for (size_t s = 0; bar->kind == STOP_BAR && s < drawing->symbols.count; s++) {
            const struct symbol *symbol = &drawing->symbols.at[s];
            bool behind = bar->from < 0 && symbol->who == bar->who;
            if (body_is_defender(symbol->who) || behind) {
                continue;
            }
            struct vec2 near = bar_nearest(drawing, bar, symbol->at);
            double stem = symbol->who == bar->who ? size->k : 0;
            double least = symbol->radius + size->bar_stroke / 2 + size->gap + stem;
            bar_shift(drawing, bar, push_off(near, symbol->at, least, vec2_scale(bar->facing, -1)));
        }
        if (bar->kind == STOP_BAR) {
            struct vec2 ring = basket_marks(drawing, false).ring;
            double least = size->basket + size->bar_stroke / 2 + size->gap;
            bar_shift(drawing, bar,
                      push_off(bar_nearest(drawing, bar, ring), ring, least, bar->facing));
            bar_shift(drawing, bar, bar_off_board(drawing, bar));
            struct vec2 inside = frame_keep(&drawing->frame, bar->at, edge);
            bar_shift(drawing, bar, vec2_sub(inside, bar->at));
        }
    }
}

/* Two who screen together stand shoulder to shoulder: their bars lie side by side, each on its
 * man's side, and never on each other. */
static void bars_part(struct drawing *drawing, struct stop *a, struct stop *b)
{
    const struct sizes *size = &drawing->size;
    struct vec2 a0, a1, b0, b1;
    bar_ends(drawing, a, &a0, &a1);
    bar_ends(drawing, b, &b0, &b1);
    double least = size->bar_stroke + size->gap;
    if (segment_gap(a0, a1, b0, b1) >= least) {
        return;
    }
    struct vec2 along = vec2_left(a->facing), apart = vec2_sub(b->at, a->at);
    struct vec2 truth =
        vec2_sub(frame_point(&drawing->frame, b->truth), frame_point(&drawing->frame, a->truth));
    double side = vec2_dot(truth, along) < 0 ? -1 : 1;
    if (fabs(vec2_dot(b->facing, a->facing)) < 0.5) { /* at a corner: off each other */
        struct vec2 way = vec2_length(apart) > 0.05 ? vec2_unit(apart) : along;
        bar_shift(drawing, a, vec2_scale(way, -least / 2));
        bar_shift(drawing, b, vec2_scale(way, least / 2));
        return;
    }
    double want = size->bar + least, gone = side * vec2_dot(apart, along);
    if (gone < want) {
        struct vec2 push = vec2_scale(along, side * (want - gone) / 2);
        bar_shift(drawing, a, vec2_scale(push, -1));
        bar_shift(drawing, b, push);
    }
}

static void bars_apart(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        for (size_t j = i + 1; j < drawing->stops.count; j++) {
            struct stop *a = &drawing->stops.at[i], *b = &drawing->stops.at[j];
            if (a->kind == STOP_BAR && b->kind == STOP_BAR && a->who != b->who) {
                bars_part(drawing, a, b);
            }
        }
    }
}

/* A hand-off where somebody stood at the start is drawn beside him, both ends of it. */
static void handoff_aside(struct drawing *drawing, struct stop *giver, struct stop *taker)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (body_is_defender(symbol->who) || giver->kind != STOP_RING || taker->kind != STOP_RING) {
            continue;
        }
        double t, least = symbol->radius + size->handoff_bar / 2 + size->gap;
        segment_distance(symbol->at, giver->at, taker->at, &t);
        struct vec2 near = vec2_mix(giver->at, taker->at, t);
        struct vec2 square = vec2_left(vec2_unit(vec2_sub(taker->at, giver->at)));
        struct vec2 inward = vec2_sub(frame_point(&drawing->frame, vec2_of(0, 0)), near);
        square = vec2_dot(square, inward) < 0 ? vec2_scale(square, -1) : square;
        struct vec2 push = push_off(near, symbol->at, least, square);
        giver->at = vec2_add(giver->at, push);
        taker->at = vec2_add(taker->at, push);
    }
}

/* Who follows his pass to get the ball back comes to the passee's side, off the line of the pass.
 */
static struct vec2 handoff_way(const struct drawing *drawing, const struct stop *giver,
                               const struct stop *taker)
{
    struct vec2 way = vec2_sub(taker->at, giver->at);
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *pass = segment_task(drawing->segment, i);
        const struct task_record *record = &drawing->segment->record[i];
        if (pass->kind != TASK_PASS || pass->who != taker->who || pass->other != giver->who ||
            record->time[MOMENT_CAUGHT] < 0) {
            continue;
        }
        struct vec2 back = vec2_sub(frame_point(&drawing->frame, record->from), giver->at);
        if (vec2_angle(way, back) < 0.9 * FOLLOWED) {
            struct vec2 left = vec2_turn(back, FOLLOWED), right = vec2_turn(back, -FOLLOWED);
            double far = vec2_length(way);
            bool to_left = room_at(drawing, vec2_along(giver->at, vec2_unit(left), far)) >=
                           room_at(drawing, vec2_along(giver->at, vec2_unit(right), far));
            return vec2_scale(vec2_unit(to_left ? left : right), far);
        }
    }
    return way;
}

/* Both its rings lie in the picture, and its bars with them. */
static void handoff_inside(const struct drawing *drawing, struct stop *giver, struct stop *taker)
{
    double edge = drawing->size.handoff_bar / 2 + drawing->size.line;
    struct stop *ends[2] = {giver, taker};
    for (int i = 0; i < 2; i++) {
        if (ends[i]->kind == STOP_RING) {
            ends[i]->at = frame_keep(&drawing->frame, ends[i]->at, edge);
        }
    }
}

/* How far apart the two ends of a hand-off are at the least, for the two bars between them. */
static double handoff_least(const struct drawing *drawing, const struct stop *giver,
                            const struct stop *taker)
{
    const struct sizes *size = &drawing->size;
    double bars = size->handoff_apart + size->handoff_stroke + 1.6 * size->k;
    double least = stop_radius(drawing, giver) + stop_radius(drawing, taker) + bars;
    return real_max(least, (size->small ? 4.9 : 3.5) * size->k);
}

/* Those that are too near are moved apart along the way from the one to the other. */
static void handoff_part(struct drawing *drawing, struct stop *giver, struct stop *taker,
                         struct vec2 way, double least)
{
    double far = vec2_length(way);
    if (far >= least) {
        return;
    }
    bool giver_moves = giver->kind != STOP_SYMBOL, taker_moves = taker->kind != STOP_SYMBOL;
    bool hand_in_hand = !giver_moves && !taker_moves; /* as the diagram begins */
    double share = giver_moves == taker_moves ? 0.5 : giver_moves ? 1 : 0;
    way = far > 0.05 ? vec2_unit(way) : vec2_of(1, 0);
    giver->at = vec2_along(giver->at, way, -(least - far) * share);
    taker->at = vec2_along(taker->at, way, (least - far) * (1 - share));
    if (hand_in_hand) {
        symbol_of(drawing, giver->who)->at = giver->at;
        symbol_of(drawing, taker->who)->at = taker->at;
    }
}

static void handoff_settle(struct drawing *drawing, size_t task)
{
    int from, to;
    if (!throw_stops(drawing, task, TASK_EXCHANGE, &from, &to)) {
        return;
    }
    struct stop *giver = &drawing->stops.at[from], *taker = &drawing->stops.at[to];
    handoff_aside(drawing, giver, taker);
    struct vec2 way = handoff_way(drawing, giver, taker);
    if (taker->kind == STOP_RING) {
        taker->at = vec2_add(giver->at, way);
    }
    handoff_part(drawing, giver, taker, way, handoff_least(drawing, giver, taker));
    handoff_inside(drawing, giver, taker);
}

/* Where a screener with a short way stands, so that his line need not come round to the bar in a
 * hook, which reads as a slip of the pen: as near as may be to where he is, and behind enough. */
static struct vec2 unhooked(const struct drawing *drawing, const struct stop *bar,
                            const struct stop *start, double behind)
{
    struct vec2 back = vec2_scale(bar->facing, -1), off = vec2_sub(start->at, bar->at);
    double k = drawing->size.k, angle = vec2_angle(back, off);
    if (start->kind != STOP_SYMBOL || angle < HOOK_ANGLE || vec2_length(off) > HOOK_FEET * k) {
        return start->at;
    }
    double side = vec2_cross(back, off) < 0 ? -1 : 1;
    struct vec2 at =
        vec2_along(bar->at, vec2_turn(back, side * HOOK_ANGLE), real_max(behind, vec2_length(off)));
    return vec2_distance(at, start->at) < HOOK_MOVES * k ? at : start->at;
}

void bar_tilt(const struct drawing *drawing, struct stop *bar, struct vec2 from, int task)
{
    struct vec2 back = vec2_scale(bar->facing, -1), off = vec2_sub(from, bar->at);
    double angle = vec2_angle(back, off) - BAR_OBLIQUE;
    bool told = task >= 0 && segment_task(drawing->segment, (size_t)task)->faces;
    if (angle > 0 && !told && vec2_length(off) < HOOK_FEET * drawing->size.k) {
        double side = vec2_cross(back, off) < 0 ? -1 : 1;
        bar->facing = vec2_turn(bar->facing, side * real_min(angle, TILT));
    }
}

/* A screener who hardly moves stands a little behind his bar. */
static void screeners_back(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        struct stop *bar = &drawing->stops.at[stroke->end];
        struct stop *start = &drawing->stops.at[stroke->start];
        double radius = stop_radius(drawing, start);
        double least = radius + drawing->size.gap + 1.2 * drawing->size.k;
        if (bar->kind != STOP_BAR || start->kind == STOP_BAR || stroke->standing) {
            continue;
        }
        bool close = vec2_distance(bar->at, start->at) < least;
        double behind = real_max(least, 3.6 * drawing->size.k);
        start->at = close ? place_behind(drawing, bar, stroke->who, radius)
                          : unhooked(drawing, bar, start, behind);
        if (start->kind == STOP_SYMBOL) {
            struct symbol *symbol = symbol_of(drawing, start->who);
            start->at = frame_keep(&drawing->frame, start->at, symbol->radius + 0.5);
            symbol->at = start->at;
        }
        bar_tilt(drawing, bar, start->at, stroke->part[stroke->parts - 1].task);
    }
}

/* Who comes back to his numeral comes back to where it is now. */
static void homes_follow(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_SYMBOL) {
            stop->at = symbol_of(drawing, stop->who)->at;
        }
    }
}

double places_sum(const struct drawing *drawing)
{
    double sum = 0, weight = 1;
    for (size_t i = 0; i < drawing->symbols.count; i++, weight += 0.37) {
        sum += weight * (drawing->symbols.at[i].at.x + 1.7 * drawing->symbols.at[i].at.y);
    }
    for (size_t i = 0; i < drawing->stops.count; i++, weight += 0.37) {
        sum += weight * (drawing->stops.at[i].at.x + 1.7 * drawing->stops.at[i].at.y);
    }
    return sum;
}

static void settle_turns(struct drawing *drawing)
{
    double before = places_sum(drawing);
    for (int turn = 0; turn < TURNS; turn++) {
        rings_settle(drawing);
        for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
            handoff_settle(drawing, i);
        }
        passes_part(drawing);
        bars_follow(drawing);
        bars_apart(drawing);
        bars_settle(drawing);
        defenders_settle(drawing);
        double sum = places_sum(drawing);
        if (sum == before) { /* nothing moves any more */
            break;
        }
        before = sum;
    }
}

void settle(struct drawing *drawing)
{
    screens_pin(drawing);
    screeners_back(drawing);
    rings_approach(drawing);
    rings_behind_queues(drawing);
    settle_turns(drawing);
    if (rings_drop(drawing)) {
        settle_turns(drawing);
    }
    handoffs_clear(drawing);
    homes_follow(drawing);
    defenders_lead(drawing);
}
