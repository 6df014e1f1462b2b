/* SPDX-License-Identifier: MIT */
/* trim: passes, hand-offs and shots are led straight from stop to stop; then every line is cut to
 * its gaps: short of the symbols it leaves and comes to, of rings, bars and the basket. */
#include "picture/scene/drawing.h"

#include <math.h>

#define RIM_CLEAR 2.0  /* feet from the middle of the basket to the tip of a run to the rim */
#define SHOT_CLEAR 4.6 /* the same where a shot goes on from there */
#define BESIDE_RUN (50 * REAL_PI / 180)
#define MEET_SLANT 0.23 /* sine of 13 degrees: throws that meet at less read as one (ours) */
#define SHOT_LEAST 2.2  /* feet: no shot is drawn shorter */

/* Where a player is at a time, as a stop: one of his own, or a point on his way. */
static int stop_for(struct drawing *drawing, body who, double time, struct vec2 truth)
{
    int stop = stop_at(drawing, who, time);
    if (stop >= 0) {
        return stop;
    }
    struct stop free = {
        .kind = STOP_FREE, .who = who, .truth = truth, .from = time, .to = time, .on = -1};
    free.at = frame_point(&drawing->frame, truth);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (!stroke_is_throw(stroke) && stroke->who == who && stroke->began <= time &&
            time <= stroke->ended) {
            free.on = (int)i;
            free.share = stroke_share(stroke, time);
        }
    }
    return stop_add(drawing, free);
}

static void throw_add(struct drawing *drawing, size_t index)
{
    static const enum scene_class classes[] = {
        [TASK_PASS] = CLASS_PASS, [TASK_EXCHANGE] = CLASS_HANDOFF, [TASK_SHOOT] = CLASS_SHOT};
    const struct task *task = segment_task(drawing->segment, index);
    const struct task_record *record = &drawing->segment->record[index];
    double released = record->time[MOMENT_RELEASED], caught = record->time[MOMENT_CAUGHT];
    if (released < 0 || !symbol_of(drawing, task->who)) {
        return;
    }
    int start = stop_for(drawing, task->who, released, record->from), end = -1;
    if (task->kind != TASK_SHOOT && task->other != BODY_NONE && caught >= 0) {
        end = stop_for(drawing, task->other, caught, record->to);
    } else if (task->kind != TASK_SHOOT) {
        end = stop_add(drawing, (struct stop){.kind = STOP_FREE,
                                              .who = BODY_NONE,
                                              .truth = record->to,
                                              .at = frame_point(&drawing->frame, record->to),
                                              .on = -1});
    }
    struct stroke *stroke = stroke_add(drawing, classes[task->kind], task->who, index);
    stroke->other = task->other;
    stroke->start = start;
    stroke->end = end;
    stroke->began = released;
    stroke->ended = caught >= 0 ? caught : released;
    stroke->head = task->kind != TASK_EXCHANGE;
}

/* How far from the middle of the basket a shot starts at the least, to be seen as one. */
static double shot_clear(const struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    double least = real_max(SHOT_LEAST * size->k, 1.5 * size->head_length);
    return real_max(SHOT_CLEAR * size->k, size->basket + size->gap + 0.8 * size->k + least);
}

/* Who shoots from under the basket gets no end ring: there is no room for one and a line. */
static void shots_near(struct drawing *drawing)
{
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        struct stop *stop = &drawing->stops.at[stroke->start];
        if (stroke->class == CLASS_SHOT && stop->kind == STOP_RING &&
            vec2_distance(stop->at, basket) < shot_clear(drawing)) {
            stop->kind = STOP_RIM;
        }
    }
}

void throws_make(struct drawing *drawing)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        if (task_is_throw(segment_task(drawing->segment, i))) {
            throw_add(drawing, i);
        }
    }
    shots_near(drawing);
}

static struct vec2 basket_at(const struct drawing *drawing)
{
    return frame_point(&drawing->frame, vec2_of(0, 0));
}

/* How far to the left of throw a, going its way, throw b lies along it; false: it does not. */
static bool throws_lie(const struct trail *a, const struct trail *b, double k, double *left)
{
    struct vec2 way = vec2_unit(vec2_sub(a->at[1], a->at[0]));
    struct vec2 from = vec2_sub(b->at[0], a->at[0]), to = vec2_sub(b->at[1], a->at[0]);
    double length = vec2_distance(a->at[0], a->at[1]);
    double begin = vec2_dot(from, way), end = vec2_dot(to, way);
    double shared = real_min(length, real_max(begin, end)) - real_max(0, real_min(begin, end));
    double off0 = vec2_cross(way, from), off1 = vec2_cross(way, to);
    bool slant = fabs(vec2_cross(way, vec2_unit(vec2_sub(b->at[1], b->at[0])))) > MEET_SLANT;
    *left = (off0 + off1) / 2;
    return shared > 3 * k && !slant && real_min(fabs(off0), fabs(off1)) < 1.2 * k;
}

/* Two throws between the same two places, there and back: each keeps to its right. */
static void throws_part(struct drawing *drawing)
{
    double k = drawing->size.k, aside = real_max(0.62 * k, 2.0);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        for (size_t j = i + 1; j < drawing->strokes.count; j++) {
            struct trail *a = &drawing->strokes.at[i].trail, *b = &drawing->strokes.at[j].trail;
            double left;
            if (!stroke_flies(&drawing->strokes.at[i]) || !stroke_flies(&drawing->strokes.at[j]) ||
                !throws_lie(a, b, k, &left)) {
                continue;
            }
            double side = left > 0.1 * k ? -aside : aside;
            struct vec2 square =
                vec2_scale(vec2_left(vec2_unit(vec2_sub(a->at[1], a->at[0]))), side);
            for (int end = 0; end < 2; end++) {
                a->at[end] = vec2_add(a->at[end], square);
                b->at[end] = vec2_sub(b->at[end], square);
            }
        }
    }
}

/* How much of a pass is left on the shorter side of a symbol that it runs through; a lot where it
 * runs through none. */
static double pass_left(const struct drawing *drawing, const struct trail *trail,
                        const struct symbol *symbol, double *along)
{
    const struct sizes *size = &drawing->size;
    double t, clear = symbol->radius + size->gap;
    double off = segment_distance(symbol->at, trail->at[0], trail->at[1], &t);
    double length = vec2_distance(trail->at[0], trail->at[1]);
    *along = t * length;
    if (off >= clear) {
        return length;
    }
    double half = real_sqrt(clear * clear - off * off), ends = 1.2 * size->k;
    return real_min(*along - half - ends, length - *along - half - ends - size->head_length);
}

/* How many symbols a way runs through, but for those at its ends; a numeral counts twice. */
static int symbols_on(const struct drawing *drawing, const struct trail *trail)
{
    int on = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double far = 1e9, clear = symbol->radius + drawing->size.line / 2;
        for (size_t p = 0; p + 1 < trail->count; p++) {
            far = real_min(far, segment_distance(symbol->at, trail->at[p], trail->at[p + 1], NULL));
        }
        bool at_end = vec2_distance(symbol->at, trail->at[0]) < clear ||
                      vec2_distance(symbol->at, trail->at[trail->count - 1]) < clear;
        if (far < clear && !at_end) {
            on += body_is_defender(symbol->who) ? 1 : 2;
        }
    }
    return on;
}

/* Is that a numeral, not at an end of the pass, that would leave it in scraps? `along`: where it
 * lies. */
static bool breaks_pass(const struct drawing *drawing, const struct stroke *stroke,
                        const struct symbol *symbol, double *along)
{
    const struct sizes *size = &drawing->size;
    const struct trail *trail = &stroke->trail;
    if (trail->count > 2) { /* it goes round something already */
        return false;
    }
    double left = pass_left(drawing, trail, symbol, along);
    double at_it = symbol->radius + 1.5 * size->gap;
    bool theirs = symbol->who == stroke->who || symbol->who == stroke->other;
    return !body_is_defender(symbol->who) && vec2_distance(symbol->at, trail->at[0]) >= at_it &&
           vec2_distance(symbol->at, trail->at[1]) >= at_it && !(theirs && size->small) &&
           left < 2 * size->dash + size->space;
}

/* The pass bowed round a mark on its way, on the side where it is or else where there is room. */
static struct trail bowed_round(const struct drawing *drawing, const struct trail *straight,
                                struct vec2 mark, double radius, double along)
{
    const struct sizes *size = &drawing->size;
    const struct vec2 from = straight->at[0];
    struct vec2 way = vec2_unit(vec2_sub(straight->at[1], from)), square = vec2_left(way);
    double off = vec2_dot(vec2_sub(vec2_along(from, way, along), mark), square);
    double side = off < 0 ? -1 : 1, clear = radius + 1.5 * size->gap;
    if (fabs(off) < 0.3 * size->k) {
        double one = room_at(drawing, vec2_along(mark, square, 2 * clear));
        side = one >= room_at(drawing, vec2_along(mark, square, -2 * clear)) ? 1 : -1;
    }
    struct path path = path_of(drawing->arena, straight->at, 2);
    double length = path_length(&path);
    size_t pieces = (size_t)(length / (0.35 * size->k)) + 2;
    struct trail bowed = {arena_array(drawing->arena, struct vec2, pieces + 1), NULL, pieces + 1};
    for (size_t p = 0; p <= pieces; p++) {
        bowed.at[p] = path_point(&path, length * (double)p / (double)pieces);
    }
    trail_hump(&bowed, along, vec2_scale(square, side * clear - off), length, true);
    return bowed;
}

/* A pass through somebody's numeral that would be left in scraps goes round it, where it then runs
 * through fewer. With a gap, as the tables have it for every numeral, it was read as a pass to that
 * one and another from him (ours, by eye). */
static void pass_round(struct drawing *drawing, struct stroke *stroke)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double along;
        if (breaks_pass(drawing, stroke, symbol, &along)) {
            struct trail bowed =
                bowed_round(drawing, &stroke->trail, symbol->at, symbol->radius, along);
            if (symbols_on(drawing, &bowed) < symbols_on(drawing, &stroke->trail)) {
                stroke->trail = bowed;
            }
            return;
        }
    }
}

/* Nobody throws through a cone: the pass goes round it, where it then runs through no more. */
static void pass_round_cones(struct drawing *drawing, struct stroke *stroke)
{
    double clear = drawing->size.cone + drawing->size.gap;
    for (size_t i = 0; i < drawing->cones.count && stroke->trail.count == 2; i++) {
        struct vec2 cone = drawing->cones.at[i], from = stroke->trail.at[0];
        double t, far = segment_distance(cone, from, stroke->trail.at[1], &t);
        double length = vec2_distance(from, stroke->trail.at[1]);
        bool at_end = t * length < 2 * clear || (1 - t) * length < 2 * clear;
        if (far < clear && !at_end) {
            struct trail bowed =
                bowed_round(drawing, &stroke->trail, cone, drawing->size.cone, t * length);
            if (symbols_on(drawing, &bowed) <= symbols_on(drawing, &stroke->trail)) {
                stroke->trail = bowed;
            }
        }
    }
}

void passes_round(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        if (drawing->strokes.at[i].class == CLASS_PASS) {
            pass_round_cones(drawing, &drawing->strokes.at[i]);
            pass_round(drawing, &drawing->strokes.at[i]);
        }
    }
}

void throws_aim(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_FREE && stop->on >= 0) {
            const struct trail *trail = &drawing->strokes.at[stop->on].trail;
            struct path path = path_of(drawing->arena, trail->at, trail->count);
            stop->at = path_point(&path, stop->share * path_length(&path));
        }
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke_is_throw(stroke)) {
            stroke->trail.at = arena_array(drawing->arena, struct vec2, 2);
            stroke->trail.at[0] = drawing->stops.at[stroke->start].at;
            stroke->trail.at[1] =
                stroke->end >= 0 ? drawing->stops.at[stroke->end].at : basket_at(drawing);
            stroke->trail.corner = NULL;
            stroke->trail.count = 2;
        }
    }
    throws_part(drawing);
}

/* Cuts the front off as far as it is within r of the piece from a to b (or of one point). */
static void cut_front_off(struct trail *trail, struct vec2 from, struct vec2 to, double r)
{
    size_t i = 0;
    while (i < trail->count && segment_distance(trail->at[i], from, to, NULL) < r) {
        i++;
    }
    if (i == 0) {
        return;
    }
    if (i >= trail->count) {
        trail->count = 0;
        return;
    }
    double low = 0, high = 1;
    struct vec2 a = trail->at[i - 1], b = trail->at[i];
    for (int turn = 0; turn < 30; turn++) {
        double middle = (low + high) / 2;
        if (segment_distance(vec2_mix(a, b, middle), from, to, NULL) < r) {
            low = middle;
        } else {
            high = middle;
        }
    }
    trail->at[i - 1] = vec2_mix(a, b, high);
    trail->at += i - 1;
    trail->corner = trail->corner ? trail->corner + (i - 1) : NULL;
    trail->count -= i - 1;
}

static void cut_front(struct trail *trail, struct vec2 centre, double r)
{
    cut_front_off(trail, centre, centre, r);
}

/* A way that has hardly left a symbol when it runs over it again begins where it leaves for good.
 */
static void cut_return(struct trail *trail, struct vec2 centre, double r, double reach)
{
    size_t last = 0;
    double along = 0;
    for (size_t i = 1; i < trail->count && along < reach; i++) {
        along += vec2_distance(trail->at[i - 1], trail->at[i]);
        last = vec2_distance(trail->at[i], centre) < r ? i : last;
    }
    if (last > 0 && last + 1 < trail->count) {
        trail->at += last;
        trail->corner = trail->corner ? trail->corner + last : NULL;
        trail->count -= last;
        cut_front(trail, centre, r);
    }
}

static void turn_round(struct trail *trail)
{
    for (size_t i = 0; i < trail->count / 2; i++) {
        size_t j = trail->count - 1 - i;
        struct vec2 at = trail->at[i];
        trail->at[i] = trail->at[j];
        trail->at[j] = at;
        if (trail->corner) {
            bool corner = trail->corner[i];
            trail->corner[i] = trail->corner[j];
            trail->corner[j] = corner;
        }
    }
}

static void cut_back(struct trail *trail, struct vec2 centre, double r)
{
    turn_round(trail);
    cut_front(trail, centre, r);
    turn_round(trail);
}

/* Cuts everything from the first entry into the circle on, for a way that ends in it. */
static void cut_at_entry(struct trail *trail, struct vec2 centre, double r)
{
    if (trail->count == 0 || vec2_distance(trail->at[0], centre) < r ||
        vec2_distance(trail->at[trail->count - 1], centre) >= r) {
        return;
    }
    for (size_t i = 1; i < trail->count; i++) {
        if (vec2_distance(trail->at[i], centre) < r) {
            trail->count = i + 1;
            cut_back(trail, centre, r);
            return;
        }
    }
}

static bool shot_from(const struct drawing *drawing, int stop)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        if (drawing->strokes.at[i].class == CLASS_SHOT && drawing->strokes.at[i].start == stop) {
            return true;
        }
    }
    return false;
}

static double trail_left(const struct drawing *drawing, const struct stroke *stroke)
{
    double start = start_gap(drawing, stroke);
    return stroke->trail.count < 2 ? 0 : trail_length(&stroke->trail) - start;
}

/* Where a shot goes on from a run to the rim the run stops well short, if that leaves it long
 * enough to be seen. */
static void rim_cut(struct drawing *drawing, struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    struct trail *trail = &stroke->trail, whole = *trail;
    if (shot_from(drawing, stroke->end)) {
        trail->at = arena_array(drawing->arena, struct vec2, whole.count);
        trail->corner = whole.corner ? arena_array(drawing->arena, bool, whole.count) : NULL;
        for (size_t i = 0; i < whole.count; i++) {
            trail->at[i] = whole.at[i];
            if (whole.corner) {
                trail->corner[i] = whole.corner[i];
            }
        }
        cut_at_entry(trail, basket_at(drawing), shot_clear(drawing));
        if (trail_left(drawing, stroke) >= 1.6 * size->head_length) {
            return;
        }
        *trail = whole;
    }
    cut_at_entry(trail, basket_at(drawing),
                 real_max(RIM_CLEAR * size->k, size->basket + 2 * size->gap));
}

/* A defender's line stops short of where somebody ends: a trap's two point at the ball. */
static void cut_at_rings(const struct drawing *drawing, struct stroke *stroke)
{
    for (size_t i = 0; i < drawing->stops.count && stroke->trail.count > 1; i++) {
        const struct stop *ring = &drawing->stops.at[i];
        if (ring->kind == STOP_RING && ring->who != stroke->who) {
            cut_back(&stroke->trail, ring->at, stop_radius(drawing, ring) + drawing->size.gap);
        }
    }
}

/* A run to the rim whose head would lie on somebody's shot comes to the basket beside it, on the
 * side from which it runs. */
static void lead_off_shots(struct drawing *drawing, struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    double clear = size->shot_half + size->head_width / 2 + 1.5 * size->gap;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *shot = &drawing->strokes.at[i];
        struct trail *trail = &stroke->trail;
        if (shot->class != CLASS_SHOT || shot->start == stroke->end || shot->trail.count < 2 ||
            trail->count < 2) {
            continue;
        }
        struct vec2 from = shot->trail.at[0], tip = trail->at[trail->count - 1];
        struct vec2 square = vec2_left(vec2_unit(vec2_sub(shot->trail.at[1], from)));
        if (vec2_dot(square, vec2_sub(trail->at[0], from)) < 0) {
            square = vec2_scale(square, -1);
        }
        double off = vec2_dot(square, vec2_sub(tip, from));
        if (off < clear && segment_distance(tip, from, shot->trail.at[1], NULL) < clear) {
            trail_lead(drawing->arena, trail, vec2_of(0, 0), vec2_scale(square, clear - off));
        }
    }
}

/* A run to the rim stops short of the basket, and of whoever is drawn there. */
void rims_cut(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->end < 0 || stroke_is_throw(stroke) ||
            drawing->stops.at[stroke->end].kind != STOP_RIM || stroke->trail.count < 2) {
            continue;
        }
        rim_cut(drawing, stroke);
        for (size_t s = 0; s < drawing->symbols.count && stroke->trail.count > 1; s++) {
            const struct symbol *symbol = &drawing->symbols.at[s];
            bool leaves = drawing->stops.at[stroke->start].kind == STOP_SYMBOL;
            if (symbol->who != stroke->who || !leaves) {
                cut_back(&stroke->trail, symbol->at, symbol->radius + size->gap);
            }
        }
        if (stroke->class == CLASS_DEFENSE_MOVE) {
            cut_at_rings(drawing, stroke);
        }
        lead_off_shots(drawing, stroke);
        if (stroke->trail.count > 0) {
            drawing->stops.at[stroke->end].at = stroke->trail.at[stroke->trail.count - 1];
        }
    }
}

/* A shot from too near is drawn from just outside; is it one? */
static bool shot_reach(const struct drawing *drawing, struct trail *trail, bool beside)
{
    const struct sizes *size = &drawing->size;
    struct vec2 basket = basket_at(drawing), out = vec2_sub(trail->at[0], basket);
    double least =
        size->basket + size->gap + real_max(SHOT_LEAST * size->k, 1.5 * size->head_length);
    bool near = vec2_length(out) < least;
    if (near) {
        struct vec2 down = vec2_unit(drawing->frame.down);
        out = vec2_length(out) > 0.1 ? vec2_unit(out) : down;
        if (beside) { /* the run itself lies there */
            double turn = vec2_cross(out, down) < 0 ? -BESIDE_RUN : BESIDE_RUN;
            out = vec2_turn(out, turn);
        }
        trail->at[0] = vec2_along(basket, out, least);
    }
    return near;
}

/* Does a shot that goes so run over somebody, or so near that it is broken there? Not the numeral
 * that it leaves. */
static bool shot_meets(const struct drawing *drawing, const struct stroke *shot, struct vec2 from,
                       struct vec2 to)
{
    const struct sizes *size = &drawing->size;
    bool leaves = drawing->stops.at[shot->start].kind == STOP_SYMBOL;
    double clear = size->shot_half + size->shot_line + real_max(0.42 * size->k, size->gap);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (!(leaves && symbol->who == shot->who) &&
            segment_distance(symbol->at, from, to, NULL) < symbol->radius + clear) {
            return true;
        }
    }
    return false;
}

/* Past somebody at the rim a shot comes to the basket by its side; one from too near to be drawn
 * from where it is taken starts beside it too. Of the ways that run over nobody, that which turns
 * least and begins nearest to where he comes to. */
static void shot_past(const struct drawing *drawing, struct stroke *stroke, bool near)
{
    enum { TURNS = 6 };
    struct vec2 *at = stroke->trail.at, basket = basket_at(drawing);
    struct vec2 from = vec2_sub(at[0], basket);
    double reach = end_gap(drawing, stroke), best = 1e9;
    struct vec2 to = vec2_scale(vec2_unit(from), reach), start = at[0], end = basket;
    if (!shot_meets(drawing, stroke, at[0], vec2_add(basket, to))) {
        return;
    }
    for (int i = -TURNS; i <= TURNS; i++) {
        for (int j = near ? -TURNS : 0; j <= (near ? TURNS : 0); j++) {
            double here = i * REAL_PI / 12, there = j * REAL_PI / 9;
            struct vec2 a = vec2_add(basket, vec2_turn(from, there));
            struct vec2 b = vec2_add(basket, vec2_turn(to, here + there));
            double far = near ? vec2_distance(a, drawing->stops.at[stroke->start].at) : 0;
            double cost = fabs(here) + far / reach;
            if (cost < best - 1e-9 && !shot_meets(drawing, stroke, a, b)) {
                best = cost;
                start = a;
                end = b;
            }
        }
    }
    at[0] = start;
    at[1] = end;
}

/* Is what is left of its way long enough to be drawn? Measures it. */
static bool trim_seen(const struct drawing *drawing, struct stroke *stroke)
{
    const struct trail *trail = &stroke->trail;
    if (trail->count < 2) { /* it lies wholly within its symbols */
        return false;
    }
    stroke->path = path_of(drawing->arena, trail->at, trail->count);
    return path_length(&stroke->path) >= (stroke->head ? 1.05 * drawing->size.head_length : 0.1);
}

/* Off what it begins at. */
static void trim_front(const struct drawing *drawing, struct stroke *stroke)
{
    struct trail *trail = &stroke->trail;
    const struct stop *start = &drawing->stops.at[stroke->start];
    double gap = start_gap(drawing, stroke);
    double half = start->kind == STOP_BAR ? drawing->size.bar / 2 : 0;
    struct vec2 along = vec2_scale(vec2_left(start->facing), half);
    cut_front_off(trail, vec2_add(start->at, along), vec2_sub(start->at, along), gap);
    if (start->kind == STOP_SYMBOL && !stroke_is_throw(stroke) &&
        !stroke_comes_home(drawing, stroke)) {
        cut_return(trail, start->at, gap, 6 * drawing->size.k);
    }
}

void shares_shift(struct stroke *stroke, double whole, double front)
{
    double length = path_length(&stroke->path);
    for (size_t p = 0; p < stroke->parts; p++) {
        struct stroke_part *part = &stroke->part[p];
        part->from = real_clamp((part->from * whole - front) / length, 0, 1);
        part->to = real_clamp((part->to * whole - front) / length, 0, 1);
    }
    for (size_t c = 0; c < stroke->clocks; c++) {
        stroke->share[c] = (stroke->share[c] * whole - front) / length;
    }
}

static void trim_one(struct drawing *drawing, struct stroke *stroke)
{
    struct trail *trail = &stroke->trail;
    double whole = trail_length(trail);
    if (trail->count >= 2) {
        trim_front(drawing, stroke);
    }
    if (stroke->class == CLASS_SHOT) {
        trail->count = 2;
        bool beside = drawing->stops.at[stroke->start].kind == STOP_RIM;
        shot_past(drawing, stroke, shot_reach(drawing, trail, beside) || beside);
    }
    double front = whole - trail_length(trail);
    if (trail->count >= 2) {
        struct vec2 end = stroke->end >= 0 ? drawing->stops.at[stroke->end].at : basket_at(drawing);
        cut_back(trail, end, end_gap(drawing, stroke));
    }
    if (trim_seen(drawing, stroke) || throw_beside(drawing, stroke)) {
        shares_shift(stroke, whole, front);
    } else {
        trail->count = 0;
        stroke->path.count = 0;
    }
}

void trim(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        trim_one(drawing, &drawing->strokes.at[i]);
    }
}
