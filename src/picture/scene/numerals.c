/* SPDX-License-Identifier: MIT */
/* numerals: where an X's numeral stands: beside it, off everything, lines first of all; an X whose
 * number words are about steps aside with it where there is no room. */
#include "picture/scene/drawing.h"

#include <math.h>

#define NUMERAL_RADIUS 0.36 /* of its size: half a figure, */
#define OWN_X 0.3           /* points that it keeps off its own X (ours) */
#define OFF_LINES 0.085     /* of its size that it keeps off lines (ours), */
#define AIR 0.25            /* or so much where there is room */
#define ON_LINE 4.0         /* of trouble, a point: a line under it is parted in two */
#define FREE 1e-9           /* of trouble: none */
#define ASIDE_FEET 0.45 /* of each of the steps of an X that makes room for its numeral (ours) */
enum { ASIDES = 4, ASIDE_WAYS = 16 };

/* How deep a circle is inside another's room, points. */
static double circle_depth(struct vec2 at, double radius, struct vec2 other, double room)
{
    return real_max(0, radius + room - vec2_distance(at, other));
}

/* How deep a numeral at `at` would lie on things, points; 0: on nothing. `off`: points that it is
 * to keep off lines. */
static double numeral_trouble(struct drawing *drawing, const struct symbol *own, struct vec2 at,
                              double off)
{
    const struct sizes *size = &drawing->size;
    double radius = 0.40 * size->x_numeral, trouble = 0;
    trouble += 10 * vec2_distance(at, frame_keep(&drawing->frame, at, radius));
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol == own) {
            continue;
        }
        trouble += 3 * circle_depth(at, radius, symbol->at, symbol->radius + 0.5);
        trouble +=
            symbol->has_numeral ? 3 * circle_depth(at, radius, symbol->numeral, radius + 0.5) : 0;
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING) {
            trouble += 2 * circle_depth(at, radius, stop->at, stop_radius(drawing, stop) + 0.5);
        } else if (stop->kind == STOP_BAR) {
            trouble += 2 * circle_depth(at, radius, bar_nearest(drawing, stop, at),
                                        size->bar_stroke / 2 + 0.7);
        }
    }
    for (int far = 0; far <= (drawing->frame.full ? 1 : 0); far++) { /* it tells which way is up */
        struct vec2 ring = basket_marks(drawing, far == 1).ring;
        trouble += 3 * circle_depth(at, radius, ring, size->basket + 0.5);
    }
    for (size_t i = 0; i < drawing->discs.count; i++) {
        trouble += 3 * circle_depth(at, radius, drawing->discs.at[i].at, size->order + 0.5);
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *line = &drawing->strokes.at[i];
        if (line->ink_count > 1 && !stroke_is_beyond(drawing, line, at, radius + off)) {
            trouble += ON_LINE * real_max(0, radius + off - stroke_distance(drawing, line, at));
        }
    }
    return trouble;
}

double numeral_reach(const struct sizes *size)
{
    return size->x_half + 0.20 * size->k + 0.30 * size->x_numeral;
}

/* How far off it is, that way, clear of its own X: past the end of an arm a little further. */
static double numeral_clear(const struct sizes *size, struct vec2 way, bool touches)
{
    double least = NUMERAL_RADIUS * size->x_numeral + size->x_stroke / 2 + OWN_X;
    if (touches) {
        return 0;
    }
    double along = (fabs(way.x) + fabs(way.y)) * size->x_half;
    double aside2 = 2 * size->x_half * size->x_half - along * along;
    return along + real_sqrt(real_max(0, least * least - aside2));
}

/* How a place for an X's numeral is looked for. */
struct numbering {
    double most;  /* times the usual distance from its X */
    double lines; /* of its size, how far it is off lines at the least */
    bool touches; /* it may touch its own X */
};

/* Round an X, right of it first, at `far` times the usual distance: takes a place that is in less
 * trouble than `best`. */
static void number_round(struct drawing *drawing, struct symbol *symbol, double far,
                         const struct numbering *how, double *best)
{
    static const struct vec2 ways[] = {{1, 0},        {-1, 0},        {0, -1},      {0, 1},
                                       {0.71, -0.71}, {-0.71, -0.71}, {0.71, 0.71}, {-0.71, 0.71},
                                       {0.92, -0.38}, {-0.92, -0.38}, {0.92, 0.38}, {-0.92, 0.38},
                                       {0.38, -0.92}, {-0.38, -0.92}, {0.38, 0.92}, {-0.38, 0.92}};
    const struct sizes *size = &drawing->size;
    double reach = far * numeral_reach(size);
    for (size_t w = 0; *best > 0 && w < sizeof ways / sizeof *ways; w++) {
        double taller = ways[w].x == 0 ? 0.08 * size->x_numeral : 0;
        double off =
            real_max(reach + taller, numeral_clear(size, vec2_unit(ways[w]), how->touches));
        struct vec2 at = vec2_along(symbol->at, ways[w], off);
        double trouble = numeral_trouble(drawing, symbol, at, how->lines * size->x_numeral);
        if (trouble < *best) {
            *best = trouble;
            symbol->numeral = at;
            symbol->has_numeral = true;
        }
    }
}

/* The first place that is in less trouble than `most`, or else the best of those. */
static void number_within(struct drawing *drawing, struct symbol *symbol,
                          const struct numbering *how, double most)
{
    for (double far = 1; far < how->most && most > 0; far += 0.15) {
        number_round(drawing, symbol, far, how, &most);
    }
}

/* The first place that is free, if any is. */
static void number_free(struct drawing *drawing, struct symbol *symbol)
{
    static const struct numbering airy = {1.2, AIR, false}, near = {1.7, OFF_LINES, false};
    number_within(drawing, symbol, &airy, FREE);
    if (!symbol->has_numeral) {
        number_within(drawing, symbol, &near, FREE);
    }
}

/* An X whose numeral has no place steps aside with it, as little as may be. */
static void number_aside(struct drawing *drawing, struct symbol *symbol)
{
    struct vec2 home = symbol->at;
    for (int i = 0; i < ASIDES * ASIDE_WAYS && !symbol->has_numeral; i++) {
        double angle = 2 * REAL_PI * (i % ASIDE_WAYS) / ASIDE_WAYS;
        double far = ASIDE_FEET * drawing->size.k * (1 + i / ASIDE_WAYS);
        struct vec2 at = vec2_along(home, vec2_of(real_cos(angle), real_sin(angle)), far);
        if (defender_has_room(drawing, symbol, at)) {
            symbol->at = at;
            number_free(drawing, symbol);
        }
    }
    symbol->at = symbol->has_numeral ? symbol->at : home;
}

/* Whom a read is about is numbered on the best place there is, as a card's title names that
 * defender; but not on a small picture that stands among words. */
static void number_one(struct drawing *drawing, struct symbol *symbol, bool must)
{
    static const struct numbering touching = {1.7, OFF_LINES, true}, any = {1.7, OFF_LINES, false};
    bool somewhere = must && (!drawing->size.small || drawing->options->plain);
    number_free(drawing, symbol);
    if (!symbol->has_numeral && somewhere && defender_can_yield(drawing, symbol)) {
        number_aside(drawing, symbol);
    }
    if (!symbol->has_numeral) { /* it may touch its X at last */
        number_within(drawing, symbol, somewhere ? &any : &touching, somewhere ? 1e9 : FREE);
    }
}

static bool is_spoken_of(const struct drawing *drawing, body who)
{
    return read_is_about(drawing, who) || (drawing->options->named >> body_number(who) & 1) != 0;
}

void symbols_number(struct drawing *drawing)
{
    for (int turn = 0; turn < 2; turn++) { /* whom words are about first */
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            struct symbol *symbol = &drawing->symbols.at[i];
            bool must = body_is_defender(symbol->who) && is_spoken_of(drawing, symbol->who);
            if (body_is_defender(symbol->who) && must == (turn == 0) &&
                (must || !drawing->size.small)) {
                number_one(drawing, symbol, must);
            }
        }
    }
}
