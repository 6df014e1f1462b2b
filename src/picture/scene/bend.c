/* SPDX-License-Identifier: MIT */
/* bend: lines pushed apart where paper needs it. An out-and-back opens to a V; a line that would
 * run through a symbol, a bar or a ring goes round it; one that would lie on another moves off it.
 * The moving picture keeps the true path. */
#include "picture/scene/drawing.h"

#include <math.h>
#include <string.h>

enum { ROUNDS = 18, RELAX = 160, SIDES = 3 };
#define ONE_BODY 4.0  /* feet between a screener's numeral and his bar: less is one body (ours) */
#define AT_REST 0.002 /* points a turn: it is taut */

/* A thing to keep clear of: a circle, or all that is within r of a bar from a to b. */
struct obstacle {
    struct vec2 a, b;
    double r;
    bool own;                    /* the stroke starts here: only its later parts keep clear */
    bool round;                  /* who would cross goes round b, however near a is */
    const struct passed *passed; /* on which side it was run past, or NULL */
    struct vec2 middle;          /* of what was passed */
    size_t from, to;             /* the points of a trail that can come to it */
};
typedef VEC(struct obstacle) obstacle_list;

double trail_length(const struct trail *trail)
{
    double length = 0;
    for (size_t i = 1; i < trail->count; i++) {
        length += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    return length;
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

/* What one stroke has to keep clear of, being gathered. */
struct gathering {
    struct drawing *drawing;
    const struct stroke *stroke;
    obstacle_list *list;
    double wide; /* how far a zigzag swings out */
};

static void gather(const struct gathering *g, struct vec2 a, struct vec2 b, double r, bool own)
{
    VEC_PUSH(g->drawing->arena, g->list,
             ((struct obstacle){.a = a, .b = b, .r = r + g->wide, .own = own}));
}

/* What was gathered last is passed as it was run past. */
static void gather_passed(const struct gathering *g, body who, int bar, struct vec2 middle)
{
    struct obstacle *last = &g->list->at[g->list->count - 1];
    last->passed = stroke_passes(g->stroke, who, bar);
    last->middle = middle;
}

static void gather_symbols(const struct gathering *g)
{
    const struct drawing *drawing = g->drawing;
    double k = drawing->size.k;
    const struct stop *start = g->stroke->start < 0 ? NULL : &drawing->stops.at[g->stroke->start];
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        bool defender = body_is_defender(symbol->who);
        double r = defender ? 1.15 * drawing->size.x_half + 0.5 * k : symbol->radius + 0.6 * k;
        bool own = start && start->kind == STOP_SYMBOL && start->who == symbol->who;
        gather(g, symbol->at, symbol->at, r, own);
        gather_passed(g, symbol->who, -1, symbol->at);
    }
}

/* A standing screener and his bar are one body: who would cross between goes round the numeral. */
static void gather_standing(const struct gathering *g, const struct stop *bar)
{
    for (size_t i = 0; i < g->drawing->symbols.count; i++) {
        const struct symbol *symbol = &g->drawing->symbols.at[i];
        if (symbol->who == bar->who) {
            gather(g, bar->at, symbol->at, symbol->radius + 0.6 * g->drawing->size.k, false);
            g->list->at[g->list->count - 1].round = true;
        }
    }
}

/* How much room there is between a bar and what is kept clear of round the ring. */
static double basket_room(const struct drawing *drawing, struct vec2 a, struct vec2 b)
{
    struct basket_marks basket = basket_marks(drawing, false);
    double taken = drawing->size.basket + 0.5 * drawing->size.k + drawing->size.line;
    return segment_distance(basket.ring, a, b, NULL) - taken;
}

/* Is the screener's numeral so near to his bar that the two are read as one? */
static bool is_one_body(const struct drawing *drawing, const struct stop *bar)
{
    const struct symbol *screener = symbol_of(drawing, bar->who);
    return bar->from < 0 || (screener && vec2_distance(screener->at, bar->at) <
                                             screener->radius + ONE_BODY * drawing->size.k);
}

static void gather_bar(const struct gathering *g, const struct stop *bar)
{
    double k = g->drawing->size.k;
    struct vec2 a, b;
    bar_ends(g->drawing, bar, &a, &b);
    if (bar->who != g->stroke->who) {
        bool used = uses_screen_of(g->drawing, g->stroke, bar->who);
        double under = real_clamp(basket_room(g->drawing, a, b), 0.9 * k, 1.6 * k);
        gather(g, a, b, used ? under : 0.9 * k, false);
        gather_passed(g, bar->who, (int)(bar - g->drawing->stops.at), bar->at);
        if (used && is_one_body(g->drawing, bar)) { /* nobody runs between it and his numeral */
            gather_standing(g, bar);
        }
    } else if (bar->from < 0) { /* his own, standing: off the bar and the short line behind it */
        gather(g, a, b, 0.8 * k, false);
        gather(g, bar->at, vec2_along(bar->at, bar->facing, -2.2 * k), 1.1 * k, false);
    }
}

static void gather_stops(const struct gathering *g)
{
    const struct drawing *drawing = g->drawing;
    for (int i = 0; i < (int)drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (i == g->stroke->end) {
            continue;
        }
        if (stop->kind == STOP_RING) {
            double r = drawing->size.end + 0.6 * drawing->size.k;
            gather(g, stop->at, stop->at, r, i == g->stroke->start);
        } else if (stop->kind == STOP_BAR && i != g->stroke->start) {
            gather_bar(g, stop);
        }
    }
}

/* The two bars of a hand-off. */
static void gather_handoffs(const struct gathering *g)
{
    const struct sizes *size = &g->drawing->size;
    for (size_t i = 0; i < g->drawing->strokes.count; i++) {
        struct vec2 middle;
        if (handoff_middle(&g->drawing->strokes.at[i], &middle)) {
            gather(g, middle, middle, size->handoff_bar / 2 + 0.5 * size->k, false);
        }
    }
}

static void gather_props(const struct gathering *g)
{
    const struct drawing *drawing = g->drawing;
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i + 1 < drawing->ticks.count; i++) {
        if (drawing->tick_owners.at[i] == drawing->tick_owners.at[i + 1]) {
            gather(g, drawing->ticks.at[i], drawing->ticks.at[i + 1], size->tick + 0.5 * size->k,
                   false);
        }
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        gather(g, drawing->cones.at[i], drawing->cones.at[i], size->cone + 0.6 * size->k, false);
    }
    for (int far = 0; far <= (drawing->frame.full ? 1 : 0); far++) {
        struct basket_marks basket = basket_marks(drawing, far == 1);
        /* nobody runs between hoop and board: round the hoop */
        gather(g, vec2_mix(basket.left, basket.right, 0.5), basket.ring,
               size->basket + 0.5 * size->k, false);
        g->list->at[g->list->count - 1].round = true;
        if (far == 0) {
            gather_passed(g, BODY_NONE, -1, basket.ring);
        }
    }
}

static void obstacles_of(struct drawing *drawing, const struct stroke *stroke, obstacle_list *list)
{
    double wide = stroke->class == CLASS_DRIBBLE ? drawing->size.wave_half : 0;
    struct gathering gathering = {drawing, stroke, list, wide};
    gather_symbols(&gathering);
    gather_stops(&gathering);
    gather_handoffs(&gathering);
    gather_props(&gathering);
}

/* From a place to an obstacle's middle: *near is the point of it. Most are circles. */
static double obstacle_far(const struct obstacle *obstacle, struct vec2 at, struct vec2 *near)
{
    if (obstacle->a.x == obstacle->b.x && obstacle->a.y == obstacle->b.y) {
        *near = obstacle->a;
        return vec2_distance(at, obstacle->a);
    }
    double t, far = segment_distance(at, obstacle->a, obstacle->b, &t);
    *near = vec2_mix(obstacle->a, obstacle->b, t);
    return far;
}

/* Is a place surely further off than r? */
static bool is_beyond(const struct obstacle *obstacle, struct vec2 at, double r)
{
    return at.x < real_min(obstacle->a.x, obstacle->b.x) - r ||
           at.x > real_max(obstacle->a.x, obstacle->b.x) + r ||
           at.y < real_min(obstacle->a.y, obstacle->b.y) - r ||
           at.y > real_max(obstacle->a.y, obstacle->b.y) + r;
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
    struct vec2 near;
    while (i < trail->count && obstacle_far(obstacle, trail->at[i], &near) < obstacle->r * 1.25) {
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
        double u, s;
        struct vec2 on;
        if (is_beyond(obstacle, trail->at[i], nearest) &&
            (!bar || i == from || is_beyond(obstacle, trail->at[i - 1], nearest))) {
            continue;
        }
        double far = obstacle_far(obstacle, trail->at[i], &on);
        if (bar && i > from &&
            segment_cross(trail->at[i - 1], trail->at[i], obstacle->a, obstacle->b, &s, &u)) {
            bool to_a = u < 0.5 && !obstacle->round;
            struct vec2 end = to_a ? obstacle->a : obstacle->b,
                        other = to_a ? obstacle->b : obstacle->a;
            double reach = (to_a ? u : 1 - u) * vec2_distance(obstacle->a, obstacle->b);
            return (struct breach){r + reach, along, square_to(trail, i, vec2_sub(end, other)), i};
        }
        if (far < nearest) {
            nearest = far;
            struct vec2 out = vec2_sub(trail->at[i], on);
            breach = (struct breach){r - far, along, square_to(trail, i, out), i};
        }
    }
    for (size_t i = 1; i <= from && i < trail->count; i++) {
        breach.along += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    return breach;
}

/* A smooth hump: full height at `along`, nothing beyond `left` and `right` of it. */
struct hump {
    double along, left, right, wide;
    bool fan;
};

static struct hump hump_of(const struct trail *trail, double along, double wide, bool fan)
{
    double rest = trail_length(trail) - along;
    return (struct hump){along, real_min(wide, along), real_min(wide, rest), wide, fan};
}

/* How much of its height it has so far along. */
static double hump_height(const struct hump *hump, double at)
{
    double off = at - hump->along, side = off < 0 ? hump->left : hump->right;
    if (side <= 1e-6 || fabs(off) >= side) {
        return 0;
    }
    double c = real_cos(REAL_PI / 2 * off / side);
    return hump->fan && side < hump->wide ? c : c * c;
}

void hump_shape(const struct trail *trail, double along, double wide, bool fan, double *shape)
{
    struct hump hump = hump_of(trail, along, wide, fan);
    double at = 0;
    for (size_t i = 0; i < trail->count; i++) {
        at += i > 0 ? vec2_distance(trail->at[i - 1], trail->at[i]) : 0;
        shape[i] = hump_height(&hump, at);
    }
}

void trail_hump(struct trail *trail, double along, struct vec2 push, double wide, bool fan)
{
    struct hump hump = hump_of(trail, along, wide, fan);
    double at = 0;
    struct vec2 last = trail->at[0];
    for (size_t i = 0; i < trail->count; i++) {
        at += vec2_distance(last, trail->at[i]);
        last = trail->at[i];
        trail->at[i] = vec2_along(last, push, hump_height(&hump, at));
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
        struct vec2 on;
        for (size_t p = 0; p < trail->count; p++) {
            if (!is_beyond(&obstacle, trail->at[p], obstacle.r + reach)) {
                near = real_min(near, obstacle_far(&obstacle, trail->at[p], &on));
            }
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

/* Notes which points can come to an obstacle while the trail is drawn taut toward its course: those
 * that are near it in either. */
static void obstacle_window(struct obstacle *obstacle, const struct trail *trail,
                            const struct vec2 *course, double reach)
{
    double far = obstacle->r + reach;
    obstacle->from = trail->count;
    obstacle->to = 0;
    for (size_t i = 1; i + 1 < trail->count; i++) {
        if (!is_beyond(obstacle, trail->at[i], far) || !is_beyond(obstacle, course[i], far)) {
            obstacle->from = i < obstacle->from ? i : obstacle->from;
            obstacle->to = i + 1;
        }
    }
}

static void hold_off(struct trail *trail, const struct obstacle *obstacle, size_t from)
{
    for (size_t i = from > obstacle->from ? from : obstacle->from; i < obstacle->to; i++) {
        struct vec2 near;
        if (is_beyond(obstacle, trail->at[i], obstacle->r)) {
            continue;
        }
        double far = obstacle_far(obstacle, trail->at[i], &near);
        if (far < obstacle->r && far > 1e-3) {
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
    for (size_t o = 0; o < list->count; o++) {
        obstacle_window(&list->at[o], trail, course, 1.5 * drawing->size.k);
    }
    struct vec2 *off = arena_array(drawing->arena, struct vec2, trail->count);
    for (int turn = 0; turn < RELAX; turn++) {
        for (size_t i = 0; i < trail->count; i++) {
            off[i] = vec2_sub(trail->at[i], course[i]);
        }
        double most = 0; /* how far anything moves still */
        for (size_t i = 1; i + 1 < trail->count; i++) {
            struct vec2 to = vec2_mix(off[i], vec2_mix(off[i - 1], off[i + 1], 0.5), 0.6);
            most = real_max(most, fabs(to.x - off[i].x) + fabs(to.y - off[i].y));
            trail->at[i] = vec2_add(course[i], to);
        }
        if (most < AT_REST) {
            return;
        }
        for (size_t o = 0; o < list->count; o++) {
            hold_off(trail, &list->at[o], list->at[o].own ? first_free(trail, &list->at[o]) : 0);
        }
    }
}

/* Keeps to those that a way could come to, pushed about as ways are. */
static void obstacles_about(const struct trail *trail, obstacle_list *list, double reach)
{
    struct vec2 low = trail->at[0], high = low;
    for (size_t i = 1; i < trail->count; i++) {
        struct vec2 at = trail->at[i];
        low = vec2_of(real_min(low.x, at.x), real_min(low.y, at.y));
        high = vec2_of(real_max(high.x, at.x), real_max(high.y, at.y));
    }
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++) {
        const struct obstacle *obstacle = &list->at[i];
        double far = obstacle->r + reach;
        if (real_max(obstacle->a.x, obstacle->b.x) > low.x - far &&
            real_min(obstacle->a.x, obstacle->b.x) < high.x + far &&
            real_max(obstacle->a.y, obstacle->b.y) > low.y - far &&
            real_min(obstacle->a.y, obstacle->b.y) < high.y + far) {
            list->at[kept++] = *obstacle;
        }
    }
    list->count = kept;
}

/* Over to the side of a thing on which it was run past it. */
static bool cross_over(struct trail *trail, const struct obstacle *obstacle)
{
    if (!obstacle->passed || !is_passed_wrong(obstacle->passed, obstacle->middle, trail)) {
        return false;
    }
    double along = 0, nearest = 1e9, at = 0;
    size_t index = 0;
    for (size_t i = 0; i < trail->count; i++) {
        along += i > 0 ? vec2_distance(trail->at[i - 1], trail->at[i]) : 0;
        double far = vec2_distance(trail->at[i], obstacle->middle);
        if (far < nearest) {
            nearest = far;
            at = along;
            index = i;
        }
    }
    struct vec2 way = vec2_sub(obstacle->middle, trail->at[index]);
    struct vec2 out = square_to(trail, index, way);
    double half = fabs(vec2_dot(out, vec2_sub(obstacle->b, obstacle->a))) / 2;
    double depth = vec2_dot(out, way) + half + obstacle->r;
    trail_hump(trail, at, vec2_scale(out, depth), 2 * depth, false);
    return true;
}

void bend_one(struct drawing *drawing, struct stroke *stroke)
{
    struct trail *trail = &stroke->trail;
    obstacle_list list = {0};
    obstacles_of(drawing, stroke, &list);
    obstacles_about(trail, &list, 6 * drawing->size.k);
    struct vec2 *course = arena_array(drawing->arena, struct vec2, trail->count);
    memcpy(course, trail->at, trail->count * sizeof *course);
    bool bent = false;
    for (int turn = 0; turn < SIDES; turn++) {
        bool any = false;
        for (size_t i = 0; i < list.count; i++) {
            any |= cross_over(trail, &list.at[i]);
        }
        bent |= any;
        if (!any) {
            break;
        }
    }
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
        trail_hump(trail, worst.along, vec2_scale(worst.out, worst.depth * 1.03), 2.5 * r, false);
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
        struct vec2 near;
        if (i == 0 || is_beyond(obstacle, trail->at[i], r)) {
            continue;
        }
        double far = obstacle_far(obstacle, trail->at[i], &near);
        if (far >= r) {
            continue;
        }
        struct vec2 way = vec2_sub(trail->at[i], near);
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

void squeeze_one(struct drawing *drawing, struct stroke *stroke)
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
        if (!stroke_is_throw(stroke) && !stroke->standing && stroke->trail.count >= 2) {
            bend_one(drawing, stroke);
            squeeze_one(drawing, stroke);
            keep_inside(drawing, stroke);
        }
    }
}
