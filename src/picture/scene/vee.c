/* SPDX-License-Identifier: MIT */
/* vee: an out-and-back that would lie on itself opens to a V on paper: the corner moves aside, and
 * where that is not enough the end ring with it. */
#include "picture/scene/drawing.h"

#define END_MOVES 1.15  /* feet that an end ring is moved at most: it tells where somebody ends */
#define LEG_LEAST 4.0   /* feet of the way in that are seen, so that a plant is no curl, */
#define LEG_HEADS 2.8   /* and lengths of an arrow's head, so that it is one on a card too (ours) */
#define OPEN_LEAST 45.0 /* degrees between the legs of a V */

/* Opening a V: the corner may move, and the end ring with it. */
struct vee {
    struct vec2 start, corner, next, end; /* next: a few feet along the way out */
    double out;                           /* length of the way out */
    double hidden;                        /* of the way in, by the numeral it leaves */
    double share;                         /* of it that lies before `next` */
    bool end_moves;
    bool goes_on;        /* another line leaves from its end, */
    struct vec2 goes_to; /* through here */
    bool is_passed;      /* the ball is passed there, from here */
    struct vec2 passer;
};

static double vee_angle(const struct vee *vee, struct vec2 move_corner, struct vec2 move_end)
{
    struct vec2 corner = vec2_add(vee->corner, move_corner);
    struct vec2 next = vec2_add(vee->next, vec2_mix(move_corner, move_end, vee->share));
    return vec2_angle(vec2_sub(vee->start, corner), vec2_sub(next, corner)) * 180 / REAL_PI;
}

/* Both legs keep clear of the defender a screen is set on, and of bars. */
static double vee_marks(const struct drawing *drawing, const struct vee *vee, struct vec2 corner,
                        struct vec2 next)
{
    double k = drawing->size.k, cost = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *x = &drawing->symbols.at[i];
        double least = x->radius + 0.6 * k;
        if (x->pinned) {
            double far = real_min(segment_distance(x->at, vee->start, corner, NULL),
                                  segment_distance(x->at, corner, next, NULL));
            cost += 12 * real_max(0, least - far) / k;
        }
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *bar = &drawing->stops.at[i];
        if (bar->kind != STOP_BAR) {
            continue;
        }
        struct vec2 a, b;
        bar_ends(drawing, bar, &a, &b);
        double far =
            real_min(segment_gap(a, b, vee->start, corner), segment_gap(a, b, corner, next));
        cost += 12 * real_max(0, 1.0 * k - far) / k;
    }
    return cost;
}

/* What moving the two points costs in itself: the least that the whole can come to. */
static double vee_moved(const struct drawing *drawing, struct vec2 c, struct vec2 e)
{
    return (vec2_length(c) + 1.2 * vec2_length(e)) / drawing->size.k;
}

/* How far the corner lies from the numeral at least, part of that way hidden by it. */
static double leg_least(const struct drawing *drawing, double hidden)
{
    const struct sizes *size = &drawing->size;
    return hidden + real_max(LEG_LEAST * size->k, LEG_HEADS * size->head_length);
}

static double vee_cost(const struct drawing *drawing, const struct vee *vee, struct vec2 c,
                       struct vec2 e)
{
    double k = drawing->size.k;
    double angle = vee_angle(vee, c, e);
    struct vec2 corner = vec2_add(vee->corner, c), end = vec2_add(vee->end, e);
    double cost = vee_moved(drawing, c, e);
    cost += 0.35 * real_max(0, OPEN_LEAST - angle);
    double in = vec2_distance(vee->start, corner), least = leg_least(drawing, vee->hidden);
    cost += 4 * real_max(0, least - in) / k;
    cost += room_at(drawing, corner) < 0.8 * k ? 6 : 0;
    cost += vee_marks(drawing, vee, corner, vec2_add(vee->next, vec2_mix(c, e, vee->share)));
    if (vee->end_moves) {
        double clear = drawing->size.end + drawing->size.gap;
        cost += room_at(drawing, end) < clear ? 40 : 0;
        double off = vec2_distance(end, vee->start) / k;
        cost += 8 * real_max(0, 3.2 - off);
        if (vee->is_passed) {
            cost += 5 * real_max(0, 3.0 - segment_distance(vee->start, end, vee->passer, NULL) / k);
            cost += 3 * real_max(0, 2.0 - segment_distance(corner, end, vee->passer, NULL) / k);
        }
        if (vee->goes_on) { /* not back over the V itself, nor over the player */
            double turn =
                vec2_angle(vec2_sub(corner, end), vec2_sub(vee->goes_to, end)) * 180 / REAL_PI;
            cost += 0.3 * real_max(0, 40 - turn);
            cost +=
                5 * real_max(0, 3.0 - segment_distance(vee->start, end, vee->goes_to, NULL) / k);
        }
    }
    return cost;
}

enum { WAYS = 16, CORNER_RINGS = 5, END_RINGS = 2 };

/* The best place for the end, the corner moved by `move_c`. */
static void vee_search_end(const struct drawing *drawing, const struct vee *vee,
                           const struct vec2 *ways, struct vec2 move_c, double *best,
                           struct vec2 *c, struct vec2 *e)
{
    for (int ring = 0; ring <= (vee->end_moves ? END_RINGS : 0); ring++) {
        for (int way = 0; way < (ring ? WAYS : 1); way++) {
            struct vec2 move_e =
                vec2_scale(ways[way], END_MOVES / END_RINGS * ring * drawing->size.k);
            if (vee_moved(drawing, move_c, move_e) >= *best) {
                continue;
            }
            double cost = vee_cost(drawing, vee, move_c, move_e);
            if (cost < *best - 1e-6) {
                *best = cost;
                *c = move_c;
                *e = move_e;
            }
        }
    }
}

static void vee_search(const struct drawing *drawing, const struct vee *vee, struct vec2 *c,
                       struct vec2 *e)
{
    double best = vee_cost(drawing, vee, vec2_of(0, 0), vec2_of(0, 0));
    struct vec2 ways[WAYS];
    for (int way = 0; way < WAYS; way++) {
        ways[way] = vec2_of(real_cos(way * REAL_PI / 8), real_sin(way * REAL_PI / 8));
    }
    *c = *e = vec2_of(0, 0);
    for (int ring = 0; ring <= CORNER_RINGS; ring++) {
        for (int way = 0; way < (ring ? WAYS : 1); way++) {
            struct vec2 move_c = vec2_scale(ways[way], 0.75 * ring * drawing->size.k);
            vee_search_end(drawing, vee, ways, move_c, &best, c, e);
        }
    }
}

static size_t corner_before(const struct trail *trail, size_t index)
{
    size_t i = index;
    while (i > 0 && (i == index || !trail->corner[i])) {
        i--;
    }
    return i;
}

static size_t corner_after(const struct trail *trail, size_t index)
{
    size_t i = index + 1;
    while (i + 1 < trail->count && !trail->corner[i]) {
        i++;
    }
    return i;
}

/* The way beyond a moved corner comes back to itself by the next one. */
static void fade_shift(struct trail *trail, size_t corner, struct vec2 shift)
{
    size_t to = corner + 1 < trail->count ? corner_after(trail, corner) : corner;
    double length = 0, along = 0;
    for (size_t i = corner + 1; i <= to; i++) {
        length += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    struct vec2 last = trail->at[corner];
    for (size_t i = corner + 1; i <= to; i++) {
        along += vec2_distance(last, trail->at[i]);
        last = trail->at[i];
        trail->at[i] = vec2_along(trail->at[i], shift, 1 - along / real_max(length, 1e-9));
    }
}

/* Moves the corner and the end; each leg follows in proportion. */
static void vee_move(struct trail *trail, size_t from, size_t corner, size_t to, struct vec2 c,
                     struct vec2 e)
{
    fade_shift(trail, to, e);
    double in = 0, out = 0, along = 0;
    for (size_t i = from + 1; i <= corner; i++) {
        in += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    for (size_t i = corner + 1; i <= to; i++) {
        out += vec2_distance(trail->at[i - 1], trail->at[i]);
    }
    struct vec2 last = trail->at[from];
    for (size_t i = from + 1; i <= to; i++) {
        along += vec2_distance(last, trail->at[i]);
        last = trail->at[i];
        if (i <= corner) {
            trail->at[i] = vec2_along(trail->at[i], c, along / real_max(in, 1e-9));
        } else {
            trail->at[i] =
                vec2_add(trail->at[i], vec2_mix(c, e, (along - in) / real_max(out, 1e-9)));
        }
    }
}

/* Whether another line goes on from a stop, and a place some feet along it. */
static bool next_from(const struct drawing *drawing, int stop, struct vec2 *through)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *next = &drawing->strokes.at[i];
        if (next->start == stop && next->trail.count >= 2) {
            struct path path = path_of(drawing->arena, next->trail.at, next->trail.count);
            *through = path_point(&path, real_min(path_length(&path), 9 * drawing->size.k));
            return true;
        }
    }
    return false;
}

/* Whether a pass is caught where the line ends, and where it comes from. */
static bool pass_to(const struct drawing *drawing, const struct stroke *stroke, struct vec2 *from)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        double caught = record->time[MOMENT_CAUGHT];
        if (task->kind == TASK_PASS && task->other == stroke->who && caught > stroke->ended - 0.5) {
            *from = frame_point(&drawing->frame, record->from);
            return true;
        }
    }
    return false;
}

/* Does the line begin with steps in, a plant and the way out? */
static bool is_planted(const struct drawing *drawing, const struct stroke *stroke)
{
    int task = stroke->part[0].task;
    enum verb_shape shape =
        task < 0 ? SHAPE_STRAIGHT : segment_task(drawing->segment, (size_t)task)->shape;
    return shape == SHAPE_V || shape == SHAPE_L || shape == SHAPE_SETUP;
}

static void open_corner(struct drawing *drawing, struct stroke *stroke, size_t index)
{
    struct trail *trail = &stroke->trail;
    size_t from = corner_before(trail, index), to = corner_after(trail, index);
    size_t next = index;
    double gone = 0, k = drawing->size.k, out = 0;
    for (size_t i = index + 1; i <= to; i++) {
        double step = vec2_distance(trail->at[i - 1], trail->at[i]);
        out += step;
        if (gone < 5 * k) {
            gone += step;
            next = i;
        }
    }
    struct stop *end = &drawing->stops.at[stroke->end];
    double hidden = stop_radius(drawing, &drawing->stops.at[stroke->start]) + drawing->size.gap;
    bool is_set_up = from == 0 && is_planted(drawing, stroke);
    if (from == 0 && !is_set_up && vec2_distance(trail->at[0], trail->at[index]) < hidden + k) {
        trail->corner[index] = false; /* under the numeral: nobody will see it */
        return;
    }
    bool ends = to + 1 == trail->count;
    struct vee vee = {.start = trail->at[from],
                      .corner = trail->at[index],
                      .next = trail->at[next],
                      .end = trail->at[to],
                      .out = out,
                      .hidden = from == 0 ? hidden : 0,
                      .share = gone / real_max(out, 1e-9),
                      .end_moves = ends ? end->kind == STOP_RING : trail->corner[to]};
    vee.is_passed = ends && vee.end_moves && pass_to(drawing, stroke, &vee.passer);
    vee.goes_on = ends && vee.end_moves && next_from(drawing, stroke->end, &vee.goes_to);
    bool seen = !is_set_up || vec2_distance(vee.start, vee.corner) >= leg_least(drawing, hidden);
    if (seen && vee_angle(&vee, vec2_of(0, 0), vec2_of(0, 0)) >= OPEN_LEAST &&
        vee_marks(drawing, &vee, vee.corner, vee.next) <= 0) {
        return;
    }
    struct vec2 c, e;
    vee_search(drawing, &vee, &c, &e);
    vee_move(trail, from, index, to, c, e);
    if (ends && vee.end_moves) {
        end->at = vec2_add(end->at, e);
        for (size_t i = 0; i < drawing->strokes.count;
             i++) { /* what goes on from there starts there */
            struct stroke *next_stroke = &drawing->strokes.at[i];
            if (next_stroke->start == stroke->end) {
                trail_lead(drawing->arena, &next_stroke->trail, e, vec2_of(0, 0));
            }
        }
    }
}

void open_corners(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        for (size_t p = 1; p + 1 < stroke->trail.count; p++) {
            if (stroke->trail.corner[p]) {
                open_corner(drawing, stroke, p);
            }
        }
    }
}
