/* SPDX-License-Identifier: MIT */
/* rings: where the small ring stands that tells where a player ends: on his place, or beside the
 * numeral that stands there, clear of all others; one that would have to go too far is left out. */
#include "picture/scene/drawing.h"

#include <math.h>

#define RING_MOVES 0.35 /* metres a finish ring is moved at most, */
#define RING_POINTS 5.0 /* or so far on a small picture (ours) */
#define LONGER 1.1      /* of the shortest move that is drawn: a shorter one is no longer */
#define ASTRAY (60 * REAL_PI / 180) /* off the way it was run (ours) */
#define HANDED 1.6                  /* feet of zigzag to a hand-off (ours) */
#define LEAVES_BAR 0.9              /* feet beyond it at which a line begins */
#define BESIDE 0.4                  /* of the way between two who change places: beside one */
#define SWAP 2.5                    /* of cost: as much as a numeral in the way of a pass */
#define BESIDE_NUMERAL 0.2          /* feet more than the gap (ours) */
#define LEAVES_BY 1.0               /* s after which it is seen which way somebody leaves */

/* The stroke that ends in that stop, or NULL. */
static const struct stroke *stroke_to(const struct drawing *drawing, int end)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        if (drawing->strokes.at[i].end == end) {
            return &drawing->strokes.at[i];
        }
    }
    return NULL;
}

/* How far a ring's middle is from the middle of somebody else's numeral: so near it reads as a
 * hand-off, or as his own end. */
static double ring_least(const struct drawing *drawing, const struct symbol *symbol, double own)
{
    return symbol->radius + own + drawing->size.gap + BESIDE_NUMERAL * drawing->size.k;
}

double way_least(const struct drawing *drawing, double radius, bool dribbles)
{
    const struct sizes *size = &drawing->size;
    double least = radius + size->end + size->end_stroke / 2 + size->gap + 0.45 * size->k +
                   1.15 * size->head_length;
    return least + (dribbles ? size->waves : 0);
}

/* Does somebody hand the ball off there? */
static bool is_handed_from(const struct drawing *drawing, int stop)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(drawing->segment, i);
        double released = drawing->segment->record[i].time[MOMENT_RELEASED];
        if (task->kind == TASK_EXCHANGE && task->who == drawing->stops.at[stop].who &&
            released >= 0 && stop_at(drawing, task->who, released) == stop) {
            return true;
        }
    }
    return false;
}

/* A short move is drawn long enough for its head to be seen, off a bar as off a numeral. */
static double start_least(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct stop *start = &drawing->stops.at[stroke->start];
    double least =
        start->kind == STOP_BAR ? LEAVES_BAR * drawing->size.k : stop_radius(drawing, start);
    bool dribbles = stroke->class == CLASS_DRIBBLE;
    least = way_least(drawing, least, dribbles);
    if (dribbles && is_handed_from(drawing, stroke->end)) { /* its bars need their room */
        least -= drawing->size.waves - HANDED * drawing->size.k;
    }
    return least;
}

/* From what it leaves to a place. */
static struct vec2 start_nearest(const struct drawing *drawing, const struct stroke *stroke,
                                 struct vec2 at)
{
    const struct stop *start = &drawing->stops.at[stroke->start];
    return start->kind == STOP_BAR ? bar_nearest(drawing, start, at) : start->at;
}

/* From where it begins to where it ends, as it was run. */
static struct vec2 stroke_run(const struct drawing *drawing, const struct stroke *stroke)
{
    return vec2_sub(frame_point(&drawing->frame, drawing->stops.at[stroke->end].truth),
                    frame_point(&drawing->frame, drawing->stops.at[stroke->start].truth));
}

static struct vec2 ring_off_start(const struct drawing *drawing, int index)
{
    const struct stop *ring = &drawing->stops.at[index];
    const struct stroke *stroke = stroke_to(drawing, index);
    if (!stroke) {
        return vec2_of(0, 0);
    }
    struct vec2 from = start_nearest(drawing, stroke, ring->at);
    double least = start_least(drawing, stroke);
    struct vec2 run = stroke_run(drawing, stroke);
    struct vec2 otherwise = vec2_length(run) > 0.1 ? vec2_unit(run) : vec2_of(1, 0);
    return push_off(ring->at, from, least, otherwise);
}

/* A shot from beside somebody's numeral looks like his: it starts on the basket's side of it, and
 * does not run along it. */
static double ring_shot_cost(const struct drawing *drawing, const struct stroke *stroke,
                             const struct symbol *symbol, struct vec2 at)
{
    const struct segment *segment = drawing->segment;
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    double clear = symbol->radius + drawing->size.gap + 0.8 * drawing->size.k, cost = 0;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        double released = segment->record[i].time[MOMENT_RELEASED];
        if (task->kind == TASK_SHOOT && task->who == stroke->who &&
            released > stroke->ended - 0.2) {
            struct vec2 way = vec2_unit(vec2_sub(basket, symbol->at));
            cost += 1 - vec2_dot(vec2_unit(vec2_sub(at, symbol->at)), way);
            double far = segment_distance(symbol->at, at, basket, NULL);
            cost += 2.5 * real_max(0, clear - far) / drawing->size.k;
        }
    }
    return cost;
}

/* Who stood there leaves by another side than the one on which the next one stops. */
static double ring_leave_cost(const struct drawing *drawing, const struct symbol *symbol,
                              struct vec2 at)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->who == symbol->who && !stroke->standing &&
            drawing->stops.at[stroke->start].kind == STOP_SYMBOL) {
            double when = real_min(stroke->ended, stroke->began + LEAVES_BY);
            struct vec2 to =
                frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, when));
            double along =
                vec2_dot(vec2_unit(vec2_sub(at, symbol->at)), vec2_unit(vec2_sub(to, symbol->at)));
            return 1.5 * real_max(0, along);
        }
    }
    return 0;
}

/* Two who change places pass each other: the rings stand on opposite sides of the way between them,
 * and the lines do not cross. */
static double ring_swap_cost(const struct drawing *drawing, const struct stroke *stroke,
                             const struct symbol *symbol, struct vec2 at)
{
    const struct stop *own = &drawing->stops.at[stroke->start];
    struct vec2 way = vec2_sub(symbol->at, own->at);
    for (const struct stroke *other = drawing->strokes.at; other < stroke; other++) {
        const struct stop *ring = &drawing->stops.at[other->end];
        if (other->who == symbol->who && own->kind == STOP_SYMBOL && ring->kind == STOP_RING &&
            drawing->stops.at[other->start].kind == STOP_SYMBOL &&
            vec2_distance(ring->at, own->at) < BESIDE * vec2_length(way)) {
            double one = vec2_cross(way, vec2_sub(ring->at, own->at));
            double side = vec2_cross(way, vec2_sub(at, symbol->at));
            return one * side > 0 ? SWAP : 0;
        }
    }
    return 0;
}

/* How bad a place beside a symbol is for a ring: off the way its runner comes, or with the symbol
 * in the way of a pass to it. */
static double ring_place_cost(const struct drawing *drawing, const struct stroke *stroke,
                              const struct symbol *symbol, struct vec2 at, struct vec2 approach)
{
    const struct segment *segment = drawing->segment;
    double cost = 1 - vec2_dot(vec2_unit(vec2_sub(at, symbol->at)), approach);
    cost += ring_shot_cost(drawing, stroke, symbol, at) + ring_leave_cost(drawing, symbol, at);
    cost += ring_swap_cost(drawing, stroke, symbol, at);
    double clear = symbol->radius + drawing->size.gap;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        bool to = task->other == stroke->who && record->time[MOMENT_CAUGHT] > stroke->ended - 0.5;
        bool from = task->who == stroke->who && record->time[MOMENT_RELEASED] > stroke->ended - 0.2;
        if (task->kind == TASK_PASS && (to || from)) {
            struct vec2 other = frame_point(&drawing->frame, to ? record->from : record->to);
            cost += segment_distance(symbol->at, at, other, NULL) < clear ? 2.5 : 0;
        }
    }
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *other = &drawing->symbols.at[i];
        double far = vec2_distance(other->at, at) - other->radius - drawing->size.end;
        cost += other != symbol && far < drawing->size.gap ? 2 : 0;
    }
    const struct frame *frame = &drawing->frame;
    double edge = 2 * drawing->size.end;
    bool out = at.x < edge || at.x > frame->width - edge || at.y < frame->top + edge ||
               at.y > frame->height - edge;
    return cost + (out ? 5 : 0);
}

static void ring_beside(struct drawing *drawing, const struct stroke *stroke,
                        const struct symbol *symbol, double least)
{
    double before = real_max(stroke->began, stroke->ended - 0.8), best = 1e9;
    struct vec2 from =
        frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, before));
    struct vec2 approach = vec2_unit(vec2_sub(from, symbol->at));
    for (int i = 0; i < 32; i++) {
        double turn = (i % 2 ? -1 : 1) * ((i + 1) / 2) * REAL_PI / 16;
        struct vec2 at = vec2_along(symbol->at, vec2_turn(approach, turn), least);
        double cost = ring_place_cost(drawing, stroke, symbol, at, approach);
        if (cost < best - 1e-9) {
            best = cost;
            drawing->stops.at[stroke->end].at = at;
        }
    }
}

/* That of a short move lies the way it was run, wherever its two ends are pushed. */
static void ring_leads(struct drawing *drawing, const struct stroke *stroke)
{
    struct stop *ring = &drawing->stops.at[stroke->end];
    const struct stop *start = &drawing->stops.at[stroke->start];
    struct vec2 run = stroke_run(drawing, stroke);
    double least = start_least(drawing, stroke);
    if (ring->kind == STOP_RING && start->kind == STOP_SYMBOL && !body_is_defender(stroke->who) &&
        vec2_length(run) > 0.1 && vec2_distance(ring->at, start->at) < least) {
        ring->at = vec2_along(start->at, vec2_unit(run), least);
    }
}

/* A ring on the very spot that somebody leaves stands beside it, on the side its runner comes from.
 */
void rings_approach(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        const struct stop *ring = &drawing->stops.at[stroke->end];
        ring_leads(drawing, stroke);
        for (size_t s = 0; s < drawing->symbols.count && ring->kind == STOP_RING; s++) {
            const struct symbol *symbol = &drawing->symbols.at[s];
            double least = ring_least(drawing, symbol, stop_radius(drawing, ring));
            bool his = body_is_defender(symbol->who) || symbol->who == stroke->who;
            if (!his && vec2_distance(symbol->at, ring->at) < 0.7 * least) {
                ring_beside(drawing, stroke, symbol, 1.02 * least);
            }
        }
    }
}

/* Off the short line between a bar that stands and its screener. */
static struct vec2 ring_off_stem(const struct drawing *drawing, const struct stop *ring,
                                 const struct stop *bar)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; bar->from < 0 && i < drawing->symbols.count; i++) {
        const struct symbol *screener = &drawing->symbols.at[i];
        if (screener->who == bar->who && ring->who != bar->who) {
            double t, least = size->end + size->end_stroke / 2 + size->line / 2 + size->gap;
            segment_distance(ring->at, bar->at, screener->at, &t);
            struct vec2 near = vec2_mix(bar->at, screener->at, t);
            return push_off(ring->at, near, least, vec2_left(bar->facing));
        }
    }
    return vec2_of(0, 0);
}

static struct vec2 ring_push(struct drawing *drawing, size_t index)
{
    const struct sizes *size = &drawing->size;
    const struct stop *ring = &drawing->stops.at[index];
    double own = stop_radius(drawing, ring);
    struct vec2 push = ring_off_start(drawing, (int)index);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (!body_is_defender(symbol->who) || symbol->pinned) {
            double least = symbol->who == ring->who || symbol->pinned
                               ? symbol->radius + own + size->gap
                               : ring_least(drawing, symbol, own);
            push = vec2_add(push, push_off(ring->at, symbol->at, least, vec2_of(0.6, 0.8)));
        }
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        double least = size->cone + own + 0.7 * size->gap;
        push = vec2_add(push, push_off(ring->at, drawing->cones.at[i], least, vec2_of(0.6, 0.8)));
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *other = &drawing->stops.at[i];
        if (i == index) {
            continue;
        }
        if (other->kind == STOP_RING) {
            struct vec2 way = vec2_of(i < index ? 1 : -1, 0);
            push = vec2_add(
                push, vec2_scale(push_off(ring->at, other->at, 2 * own + size->gap, way), 0.5));
        } else if (other->kind == STOP_BAR) {
            struct vec2 near = bar_nearest(drawing, other, ring->at);
            double least = own + size->bar_stroke / 2 + size->gap;
            push = vec2_add(push, push_off(ring->at, near, least, other->facing));
            push = vec2_add(push, ring_off_stem(drawing, ring, other));
        }
    }
    return push;
}

/* The end of a line of players is behind its last one. */
void rings_behind_queues(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *ring = &drawing->stops.at[i];
        double least = stop_radius(drawing, ring) + size->tick + 0.5 * size->gap;
        for (size_t t = 0; ring->kind == STOP_RING && t < drawing->ticks.count; t++) {
            if (vec2_distance(ring->at, drawing->ticks.at[t]) >= least) {
                continue;
            }
            size_t last = t;
            while (last + 1 < drawing->ticks.count &&
                   drawing->tick_owners.at[last + 1] == drawing->tick_owners.at[t]) {
                last++;
            }
            struct vec2 way =
                vec2_unit(vec2_sub(drawing->ticks.at[last], drawing->ticks.at[last - 1]));
            double off = stop_radius(drawing, ring) + size->gap;
            ring->at =
                frame_keep(&drawing->frame, vec2_along(drawing->ticks.at[last], way, off), off);
            break;
        }
    }
}

struct vec2 ring_keep(const struct drawing *drawing, const struct stop *ring, struct vec2 at)
{
    double edge = stop_radius(drawing, ring) + 0.5;
    const struct court *court = drawing->frame.court;
    double off = edge / drawing->size.k * FEET;
    struct vec2 inside = frame_back(&drawing->frame, at), truth = ring->truth;
    double side = real_max(fabs(truth.x), court->half_width - off);
    double low = real_min(truth.y, court->baseline + off);
    double high = real_max(truth.y, 2 * court->half_court - court->baseline - off);
    inside = vec2_of(real_clamp(inside.x, -side, side), real_clamp(inside.y, low, high));
    return frame_keep(&drawing->frame, frame_point(&drawing->frame, inside), edge);
}

void rings_settle(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING) {
            stop->at = ring_keep(drawing, stop, vec2_add(stop->at, ring_push(drawing, i)));
        }
    }
}

/* Does a shot start there? Then the ring says who shoots. */
static bool is_shot_from(const struct drawing *drawing, int stop)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(drawing->segment, i);
        double released = drawing->segment->record[i].time[MOMENT_RELEASED];
        if (task->kind == TASK_SHOOT && released >= 0 &&
            stop_at(drawing, task->who, released) == stop) {
            return true;
        }
    }
    return false;
}

/* Is it a short move, drawn as long as one has to be and the way it was run? Without its line a
 * number would stand beside somebody who seems to stay. */
static bool is_lengthened(const struct drawing *drawing, const struct stroke *stroke)
{
    if (!stroke || body_is_defender(stroke->who)) {
        return false;
    }
    struct vec2 at = drawing->stops.at[stroke->end].at;
    struct vec2 off = vec2_sub(at, start_nearest(drawing, stroke, at));
    return vec2_length(off) < LONGER * start_least(drawing, stroke) &&
           vec2_angle(off, stroke_run(drawing, stroke)) < ASTRAY;
}

/* Rings that had to go too far from where their runner ends would tell a lie: they are left out,
 * and the line's head points there. Beside a numeral that stands on the very spot a ring may be. */
bool rings_drop(struct drawing *drawing)
{
    bool any = false;
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *ring = &drawing->stops.at[i];
        struct vec2 truth = symbol_spot(drawing, ring->truth, false);
        const struct stroke *stroke = stroke_to(drawing, (int)i);
        bool dribbles = stroke && stroke->class == CLASS_DRIBBLE;
        double most = real_max(RING_MOVES / FEET * size->k, RING_POINTS);
        most += dribbles ? size->waves : 0;
        most += stop_is_thrown(drawing, (int)i, TASK_PASS) ? size->head_length + size->dash : 0;
        for (size_t s = 0; s < drawing->symbols.count; s++) {
            const struct symbol *symbol = &drawing->symbols.at[s];
            double least = ring_least(drawing, symbol, stop_radius(drawing, ring));
            bool under =
                !body_is_defender(symbol->who) && vec2_distance(symbol->at, truth) < 0.7 * least;
            most = under ? real_max(most, 1.2 * least) : most;
        }
        bool handed = stop_is_thrown(drawing, (int)i, TASK_EXCHANGE); /* its bars need their room */
        if (ring->kind == STOP_RING && !handed && !is_shot_from(drawing, (int)i) &&
            !is_lengthened(drawing, stroke) && vec2_distance(ring->at, truth) > most) {
            ring->kind = STOP_RIM;
            ring->at = truth;
            any = true;
        }
    }
    return any;
}
