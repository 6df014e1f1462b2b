/* SPDX-License-Identifier: MIT */
/* handoffs: a hand-off whose two bars, or whose rings, would lie on something moves aside and turns
 * until they do not: as little as may be. Who stands where he is drawn stays. */
#include "picture/scene/drawing.h"

#include <math.h>

#define RING_FEET 0.6      /* between the distances at which a place is looked for (ours) */
#define TURN (REAL_PI / 9) /* the line between the two is turned in such steps */
#define TURN_COSTS 0.25    /* feet, for each */
#define TROUBLE_COSTS 6.0  /* feet, for each foot by which it lies on things */
enum { RINGS = 6, WAYS = 12, TURNS = 4 };

/* Both ends of a hand-off on paper. */
struct handoff {
    struct vec2 giver, taker;
};

/* How deep a circle is in another's room. */
static double deep(struct vec2 a, double radius, struct vec2 b, double room)
{
    return real_max(0, radius + room - vec2_distance(a, b));
}

/* What its bars, its line and its rings would lie on of one mark, points. */
static double on_mark(const struct drawing *drawing, const struct stop *giver,
                      const struct stop *taker, const struct handoff *at, struct vec2 mark,
                      double radius)
{
    const struct sizes *size = &drawing->size;
    double bars = size->handoff_bar / 2 + 0.5 * size->gap, ring = size->end + size->end_stroke / 2;
    double room = radius + 0.8 * size->gap;
    double trouble = deep(vec2_mix(at->giver, at->taker, 0.5), bars, mark, radius);
    trouble += giver->kind == STOP_RING ? deep(at->giver, ring, mark, room) : 0;
    trouble += taker->kind == STOP_RING ? deep(at->taker, ring, mark, room) : 0;
    double far = segment_distance(mark, at->giver, at->taker, NULL);
    return trouble + real_max(0, radius + size->line - far);
}

static double handoff_trouble(const struct drawing *drawing, int from, int to,
                              const struct handoff *at)
{
    const struct stop *giver = &drawing->stops.at[from], *taker = &drawing->stops.at[to];
    double trouble = 0, edge = drawing->size.handoff_bar / 2;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        bool stands = (symbol->who == giver->who && giver->kind == STOP_SYMBOL) ||
                      (symbol->who == taker->who && taker->kind == STOP_SYMBOL);
        bool yields = body_is_defender(symbol->who) && !symbol->pinned;
        if (!stands && !yields) {
            trouble += on_mark(drawing, giver, taker, at, symbol->at, symbol->radius);
        }
    }
    for (int i = 0; i < (int)drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING && i != from && i != to) {
            trouble += on_mark(drawing, giver, taker, at, stop->at, stop_radius(drawing, stop));
        } else if (stop->kind == STOP_BAR) {
            struct vec2 near = bar_nearest(drawing, stop, vec2_mix(at->giver, at->taker, 0.5));
            trouble += on_mark(drawing, giver, taker, at, near, drawing->size.bar_stroke / 2);
        }
    }
    struct vec2 basket = basket_marks(drawing, false).ring;
    trouble += on_mark(drawing, giver, taker, at, basket, drawing->size.basket);
    const struct vec2 ends[2] = {at->giver, at->taker};
    for (int i = 0; i < 2; i++) {
        trouble += 4 * vec2_distance(ends[i], frame_keep(&drawing->frame, ends[i], edge));
    }
    return trouble;
}

/* The same moved, and turned about the end that stays, or about its middle. */
static struct handoff handoff_moved(const struct handoff *at, bool giver_moves, bool taker_moves,
                                    struct vec2 by, double turn)
{
    struct vec2 about = giver_moves && taker_moves ? vec2_mix(at->giver, at->taker, 0.5)
                        : giver_moves              ? at->taker
                                                   : at->giver;
    struct handoff moved = *at;
    if (giver_moves) {
        moved.giver = vec2_add(vec2_add(about, vec2_turn(vec2_sub(at->giver, about), turn)), by);
    }
    if (taker_moves) {
        moved.taker = vec2_add(vec2_add(about, vec2_turn(vec2_sub(at->taker, about), turn)), by);
    }
    return moved;
}

/* How good a place is looked for, and the best so far. */
struct seeking {
    struct drawing *drawing;
    int from, to;
    bool giver_moves, taker_moves;
    struct handoff first, best;
    double least;
};

static void seek(struct seeking *seeking, struct vec2 by, int turn)
{
    double k = seeking->drawing->size.k;
    struct handoff at =
        handoff_moved(&seeking->first, seeking->giver_moves, seeking->taker_moves, by, turn * TURN);
    double cost = vec2_length(by) / k + TURN_COSTS * fabs((double)turn);
    if (cost >= seeking->least ||
        vec2_distance(at.giver, at.taker) <
            0.97 * vec2_distance(seeking->first.giver, seeking->first.taker)) {
        return;
    }
    cost += TROUBLE_COSTS * handoff_trouble(seeking->drawing, seeking->from, seeking->to, &at) / k;
    if (cost < seeking->least - 1e-9) {
        seeking->least = cost;
        seeking->best = at;
    }
}

/* Whether it moved. */
static bool handoff_clear(struct drawing *drawing, int from, int to)
{
    struct stop *giver = &drawing->stops.at[from], *taker = &drawing->stops.at[to];
    struct seeking seeking = {.drawing = drawing,
                              .from = from,
                              .to = to,
                              .giver_moves = giver->kind == STOP_RING,
                              .taker_moves = taker->kind == STOP_RING,
                              .first = {giver->at, taker->at}};
    double trouble = handoff_trouble(drawing, from, to, &seeking.first);
    if (trouble < 0.1 || (!seeking.giver_moves && !seeking.taker_moves)) {
        return false;
    }
    seeking.best = seeking.first;
    seeking.least = TROUBLE_COSTS * trouble / drawing->size.k;
    for (int ring = 0; ring < RINGS; ring++) {
        for (int way = 0; way < (ring ? WAYS : 1); way++) {
            double angle = 2 * REAL_PI * way / WAYS, far = RING_FEET * ring * drawing->size.k;
            struct vec2 by = vec2_of(far * real_cos(angle), far * real_sin(angle));
            for (int turn = -TURNS; turn <= TURNS; turn++) {
                seek(&seeking, by, turn);
            }
        }
    }
    giver->at = seeking.best.giver;
    taker->at = seeking.best.taker;
    return true;
}

void handoffs_clear(struct drawing *drawing)
{
    bool any = false;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        int from, to;
        if (throw_stops(drawing, i, TASK_EXCHANGE, &from, &to)) {
            any |= handoff_clear(drawing, from, to);
        }
    }
    if (any) {
        defenders_settle(drawing);
    }
}
