/* SPDX-License-Identifier: MIT */
/* label_scores: what a place costs for an order disc or another piece of lettering: all that it
 * would lie on, or be mistaken for. */
#include "picture/scene/labels.h"

#include <math.h>
#include <stdint.h>

/* What a disc is weighed against, feet and points of score. A stranger's line nearer than its own
 * is just less than to be left out: where nothing else is amiss, a number there is better than
 * none. */
struct weights {
    double beside, fraction;
    double outside, symbol, symbol_near, tight, label, ring, bar, cone, line, line_under, line_near,
        away, beside_near, beside_line, own_line, stranger_near, stranger, crossing, bend, dashed,
        figures, moved, parted;
};
static const struct weights weights = {.beside = 6,
                                       .fraction = 10,
                                       .outside = 1000,
                                       .symbol = 400,
                                       .symbol_near = 12,
                                       .tight = 70,
                                       .label = 300,
                                       .ring = 300,
                                       .bar = 300,
                                       .cone = 300,
                                       .line = 60,
                                       .line_under = 300,
                                       .line_near = 10,
                                       .away = 9,
                                       .beside_near = 26,
                                       .beside_line = 14,
                                       .own_line = 150,
                                       .stranger_near = 170,
                                       .stranger = 230,
                                       .crossing = 25,
                                       .bend = 18,
                                       .dashed = 60,
                                       .figures = 40,
                                       .moved = 10,
                                       .parted = 115};
/* Feet of a line between two discs on it: less reads as a dash, and the line as a pass (ours). */
#define LOOKS_DASHED 2.2
#define FIGURES_GAP 1.5   /* radii between two discs in a row: 4 and 1 so near read as 41 (ours) */
#define STRANGER_FEET 0.5 /* nearer than its own: nobody takes it for its own (ours) */
#define PARTED_FEET 0.5   /* nearer to somebody than to its line (ours) */
static const struct owner nobodys = {SIZE_MAX, BODY_NONE};

double disc_white(const struct sizes *size)
{
    return size->order + 0.26 * size->k;
}

static double outside_score(const struct drawing *drawing, struct vec2 at, double r)
{
    const struct frame *frame = &drawing->frame;
    bool out =
        at.x < r || at.y < frame->top + r || at.x > frame->width - r || at.y > frame->height - r;
    return out ? weights.outside : 0;
}

static double near_score(double gap, double k)
{
    if (gap < 0.15 * k) {
        return gap < 0.1 * k ? weights.symbol : weights.tight;
    }
    return gap < 0.6 * k ? weights.symbol_near * (0.6 * k - gap) / k : 0;
}

static double symbols_score(const struct drawing *drawing, struct vec2 at, double r)
{
    double k = drawing->size.k, score = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double gap = vec2_distance(at, symbol->at) - symbol->radius - r;
        if (drawing->over_defenders && defender_can_yield(drawing, symbol)) {
            score += gap < 0.15 * k ? weights.moved : 0;
            continue;
        }
        score += near_score(gap, k);
        if (symbol->has_numeral) {
            score += near_score(
                vec2_distance(at, symbol->numeral) - 0.4 * drawing->size.x_numeral - r, k);
        }
    }
    for (size_t i = 0; i < drawing->ticks.count; i++) {
        score += near_score(vec2_distance(at, drawing->ticks.at[i]) - drawing->size.tick - r, k);
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        score += vec2_distance(at, drawing->cones.at[i]) < r + 1.2 * k ? weights.cone : 0;
    }
    return score;
}

/* As good as touching, or tight. */
static double gap_score(double gap, double least, double touches, double k)
{
    if (gap < 0.03 * k) {
        return touches;
    }
    return gap < least ? weights.tight : 0;
}

static double stops_score(const struct drawing *drawing, struct vec2 at, double r)
{
    const struct sizes *size = &drawing->size;
    double score = 0;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING) {
            double gap = vec2_distance(at, stop->at) - r - size->end - size->end_stroke / 2;
            score += gap_score(gap, 0.27 * size->k, weights.ring, size->k);
        } else if (stop->kind == STOP_BAR) {
            struct vec2 a, b;
            bar_ends(drawing, stop, &a, &b);
            double gap = segment_distance(at, a, b, NULL) - r - size->bar_stroke / 2;
            score += gap_score(gap, 0.27 * size->k, weights.bar, size->k);
        }
    }
    return score;
}

static const struct stop *bar_of(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct stop *end = stroke->end < 0 ? NULL : &drawing->stops.at[stroke->end];
    return end && end->kind == STOP_BAR ? end : NULL;
}

bool owner_has_line(const struct drawing *drawing, struct owner owner)
{
    const struct stroke *stroke = owner.line == SIZE_MAX ? NULL : &drawing->strokes.at[owner.line];
    return stroke && (stroke->ink_count > 1 || bar_of(drawing, stroke));
}

static double bar_distance(const struct drawing *drawing, const struct stop *bar, struct vec2 at)
{
    return vec2_distance(at, bar_nearest(drawing, bar, at)) - drawing->size.bar_stroke / 2;
}

/* From a place to a line, or to its bar where that is nearer. */
static double line_distance(const struct drawing *drawing, size_t line, struct vec2 at)
{
    const struct stroke *stroke = &drawing->strokes.at[line];
    double far = stroke->ink_count < 2 ? 1e9 : stroke_distance(drawing, stroke, at);
    const struct stop *bar = bar_of(drawing, stroke);
    return bar ? real_min(far, bar_distance(drawing, bar, at)) : far;
}

static bool is_run_of(const struct stroke *stroke, body who)
{
    return stroke->who == who && !stroke_is_throw(stroke);
}

/* From a place to a player's numeral, a ring or a run of his. */
static double player_distance(const struct drawing *drawing, body who, struct vec2 at)
{
    double far = 1e9;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who == who) {
            far = real_min(far, vec2_distance(at, symbol->at) - symbol->radius);
        }
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING && stop->who == who) {
            far = real_min(far, vec2_distance(at, stop->at) - stop_radius(drawing, stop));
        }
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (is_run_of(stroke, who)) {
            far = real_min(far, line_distance(drawing, i, at));
        }
    }
    return far;
}

double own_distance(const struct drawing *drawing, struct owner owner, struct vec2 at)
{
    return owner_has_line(drawing, owner) ? line_distance(drawing, owner.line, at)
                                          : player_distance(drawing, owner.who, at);
}

/* From a place to the next of the others' numerals and X's. */
static double nearest_other(const struct drawing *drawing, struct owner owner, struct vec2 at)
{
    double far = 1e9;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who != owner.who) {
            far = real_min(far, vec2_distance(at, symbol->at) - symbol->radius);
        }
    }
    return far;
}

/* The ring and the board tell which way is up. */
static double basket_score(const struct drawing *drawing, struct vec2 at, double r)
{
    struct basket_marks basket = basket_marks(drawing, false);
    double reach = r + drawing->size.basket + 0.3 * drawing->size.k;
    bool on_board = segment_distance(at, basket.left, basket.right, NULL) < r;
    bool on_ring = vec2_distance(at, basket.ring) < reach;
    return (on_board ? weights.ring : 0) + (on_ring ? weights.ring : 0);
}

/* A line and the place weighed against it: is it the owner's own; does nothing of it mislead beside
 * its player; how far it is. */
struct near_line {
    const struct stroke *stroke;
    bool own, his;
    double far;
};

/* What a line that is so near costs. */
static double line_score(const struct drawing *drawing, const struct near_line *line, double r,
                         bool on)
{
    double k = drawing->size.k, far = line->far;
    double light = stroke_is_light(line->stroke) ? 0.5 : 1; /* it is gray, and has no number */
    if (line->own) {
        return !on && far < r + 0.2 * k ? weights.own_line : 0;
    }
    if (far < r + 0.02 * k) {
        return weights.line_under;
    }
    if (far < r + 0.25 * k) {
        return light * weights.line;
    }
    if (!line->his && far < r + 0.7 * k) {
        return light * (on ? weights.line_near : weights.beside_near);
    }
    return !line->his && !on && far < r + 1.1 * k ? light * weights.beside_line : 0;
}

static double crossings_score(const struct drawing *drawing, struct owner owner, struct vec2 at,
                              double r)
{
    double k = drawing->size.k, score = 0, least = r + 1.3 * k;
    for (size_t i = 0; i < drawing->crossings.count; i++) {
        const struct crossing *crossing = &drawing->crossings.at[i];
        double far = vec2_distance(at, crossing->at);
        bool crosses = crossing->under == owner.line || crossing->over == owner.line;
        score += crosses && far < least ? weights.crossing * (least - far) / k : 0;
    }
    return score;
}

/* A number nearer to something else than to its own. */
static double stranger_score(double own, double other, double k)
{
    double nearer = own + 0.02 * k - other;
    double much = real_clamp(nearer / (STRANGER_FEET * k), 0, 1);
    return nearer <= 0 ? 0 : real_mix(weights.stranger_near, weights.stranger, much);
}

/* A number beside its line, but nearer to somebody else, seems to be his: rather a thin line leads
 * from it. On a small picture there are few of those. */
static double parted_score(const struct drawing *drawing, double own, double symbol)
{
    double k = drawing->size.k, nearer = own - symbol - PARTED_FEET * k;
    return drawing->size.small ? 0 : weights.parted * real_clamp(nearer / (PARTED_FEET * k), 0, 1);
}

static double lines_score(const struct drawing *drawing, struct owner owner,
                          const struct candidate *place, double r)
{
    double k = drawing->size.k, score = 0;
    bool loose = owner.who != BODY_NONE && !place->on;
    bool has_line = owner_has_line(drawing, owner);
    double own = loose ? own_distance(drawing, owner, place->at) : 0;
    double symbol = loose ? nearest_other(drawing, owner, place->at) : 1e9;
    double other = has_line ? 1e9 : symbol;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        struct near_line line = {.stroke = stroke, .own = i == owner.line};
        line.his = !line.own && !has_line && is_run_of(stroke, owner.who);
        bool others = loose && !line.own && !line.his;
        const struct stop *bar = others ? bar_of(drawing, stroke) : NULL;
        other = bar ? real_min(other, bar_distance(drawing, bar, place->at)) : other;
        if (stroke->ink_count >= 2 &&
            !stroke_is_beyond(drawing, stroke, place->at, real_max(r + 1.1 * k, own))) {
            line.far = stroke_distance(drawing, stroke, place->at);
            other = others ? real_min(other, line.far) : other;
            score += line_score(drawing, &line, r, place->on);
        }
    }
    score += stranger_score(own, other, k);
    score += has_line ? parted_score(drawing, own, symbol) : 0;
    return score + crossings_score(drawing, owner, place->at, r);
}

/* How near it is to another disc: under it, tight, or beside it like a second figure. */
static double disc_score(const struct drawing *drawing, struct vec2 at, double r, double least,
                         struct vec2 other)
{
    double gap = vec2_distance(at, other) - r - drawing->size.order;
    bool row = fabs(at.y - other.y) < drawing->size.order;
    double score = gap_score(gap, least, weights.label, drawing->size.k);
    return score + (row && gap < FIGURES_GAP * drawing->size.order ? weights.figures : 0);
}

double loose_score(const struct drawing *drawing, struct owner owner, struct vec2 at, double r,
                   struct loose how)
{
    struct candidate place = {.at = at, .on = how.on};
    double score =
        outside_score(drawing, at, r) + symbols_score(drawing, at, r) + stops_score(drawing, at, r);
    score += basket_score(drawing, at, r);
    for (size_t i = 0; i < drawing->discs.count; i++) {
        score += disc_score(drawing, at, r, 0.2 * drawing->size.k, drawing->discs.at[i].at);
    }
    for (size_t i = 0; i < drawing->words.count; i++) {
        score += vec2_distance(at, drawing->words.at[i]) < r + 0.5 * drawing->size.lettering
                     ? weights.label
                     : 0;
    }
    score += score < how.most ? lines_score(drawing, owner, &place, r) : 0;
    if (score >= how.most) {
        return score;
    }
    score += lines_score(drawing, nobodys, &place, 0.4 * r) >= weights.line ? weights.line : 0;
    return score;
}

double place_score(const struct drawing *drawing, struct vec2 at, double r)
{
    return loose_score(drawing, nobodys, at, r, (struct loose){true, 1e9});
}

double place_score_below(const struct drawing *drawing, struct vec2 at, double r, double most)
{
    return loose_score(drawing, nobodys, at, r, (struct loose){true, most});
}

static double bend_score(const struct drawing *drawing, const struct stroke *stroke,
                         const struct candidate *place, double r)
{
    double reach = r + drawing->size.k, length = path_length(&stroke->path);
    struct vec2 a = path_point(&stroke->path, real_max(0, place->along - reach));
    struct vec2 m = path_point(&stroke->path, place->along);
    struct vec2 b = path_point(&stroke->path, real_min(length, place->along + reach));
    return weights.bend * (1 - vec2_dot(vec2_unit(vec2_sub(m, a)), vec2_unit(vec2_sub(b, m))));
}

/* Does a disc lie on its own line, and not beside it? */
static bool disc_lies_on(const struct drawing *drawing, const struct disc *disc)
{
    const struct stroke *stroke = &drawing->strokes.at[disc->line];
    return stroke_distance(drawing, stroke, disc->at) < drawing->size.order / 2;
}

double score_of(const struct drawing *drawing, size_t own, const struct candidate *place,
                double most)
{
    double r = drawing->size.order, k = drawing->size.k;
    double score =
        (place->on ? 0 : weights.beside) + weights.fraction * fabs(place->fraction - 0.5);
    score += outside_score(drawing, place->at, r);
    score += symbols_score(drawing, place->at, r);
    score += stops_score(drawing, place->at, r);
    score += basket_score(drawing, place->at, r);
    if (score >= most) {
        return score;
    }
    struct owner owner = {own, drawing->strokes.at[own].who};
    score += lines_score(drawing, owner, place, r);
    score += bend_score(drawing, &drawing->strokes.at[own], place, r);
    for (size_t i = 0; i < drawing->discs.count; i++) {
        const struct disc *other = &drawing->discs.at[i];
        double gap = vec2_distance(place->at, other->at) - 2 * r;
        score += disc_score(drawing, place->at, r, 0.4 * k, other->at);
        bool cuts = place->on && other->line == (int)own && gap < LOOKS_DASHED * k;
        score += cuts && disc_lies_on(drawing, other) ? weights.dashed : 0;
    }
    return score;
}
