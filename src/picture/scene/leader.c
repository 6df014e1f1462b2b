/* SPDX-License-Identifier: MIT */
/* leader: a number with no place at its line stands where there is room, and a short thin line
 * leads from it to what it belongs to. */
#include "picture/scene/labels.h"

#include <math.h>
#include <stdint.h>

#define LEADER 100.0     /* of score: a place at the line itself is better */
#define LEADER_CARD 25.0 /* the same on a small picture, where a number is left out sooner */
#define LONGER 6.0       /* of score, for each radius of its disc */
#define OVER_MARK 300.0  /* of score: it lies on a symbol, a ring, a bar or a disc */
#define OVER_LINE 90.0   /* it crosses another line, */
#define OVER_HEAD 105.0  /* it hides its head, */
#define BESIDE_LINE 60.0 /* or lies along it */
#define ELSEWHERE 120.0  /* it meets its line where that is another sentence's */
#define FLAT_MEET 0.6    /* sine of the angle under which it should meet its line, at the least */
#define FLAT_COST 60.0
#define SHORTEST 0.7 /* radii of the disc: less is no line to the eye */
#define LONGEST 5.0
#define ALONG_LINE 0.35 /* sine: flatter is along a line */
enum { ANGLES = 24, LENGTHS = 8, MARCH = 12 };

/* Where a number's leader may end. */
struct led {
    struct owner owner;
    struct vec2 about, way; /* that place, and of its line the direction; no line: {0, 0} */
};

/* From a disc at `at` toward what it belongs to: where it gets there. */
static struct vec2 leader_tip(const struct drawing *drawing, const struct led *led, struct vec2 at)
{
    struct vec2 way = vec2_unit(vec2_sub(led->about, at));
    double whole = vec2_distance(at, led->about), far = drawing->size.order;
    double off = owner_has_line(drawing, led->owner) ? 0 : 0.25 * drawing->size.k;
    for (int step = 0; step < MARCH && far < whole; step++) {
        double lacks = own_distance(drawing, led->owner, vec2_along(at, way, far)) - off;
        if (lacks < 0.1) {
            break;
        }
        far += lacks;
    }
    return vec2_along(at, way, real_min(far, whole));
}

static double over_marks(const struct drawing *drawing, const struct led *led, struct vec2 from,
                         struct vec2 to)
{
    double k = drawing->size.k, score = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        bool own = led->owner.line == SIZE_MAX && symbol->who == led->owner.who;
        double gap = segment_distance(symbol->at, from, to, NULL) - symbol->radius;
        score += !own && gap < 0.3 * k ? OVER_MARK : 0;
        gap = segment_distance(symbol->numeral, from, to, NULL) - 0.4 * drawing->size.x_numeral;
        score += symbol->has_numeral && gap < 0.2 * k ? OVER_MARK : 0;
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        double radius = drawing->size.end + drawing->size.end_stroke + 0.2 * k;
        bool ring = stop->kind == STOP_RING;
        score += ring && segment_distance(stop->at, from, to, NULL) < radius ? OVER_MARK : 0;
    }
    struct basket_marks basket = basket_marks(drawing, false);
    bool near = segment_distance(basket.ring, from, to, NULL) < drawing->size.basket + 0.2 * k;
    score += near || segment_gap(basket.left, basket.right, from, to) < 0.2 * k ? OVER_MARK : 0;
    for (size_t i = 0; i < drawing->discs.count; i++) {
        double gap = segment_distance(drawing->discs.at[i].at, from, to, NULL);
        score += gap < disc_white(&drawing->size) + 0.1 * k ? OVER_MARK : 0;
        if (drawing->discs.at[i].led) {
            struct vec2 a = drawing->discs.at[i].at, b = drawing->discs.at[i].tip;
            score += segment_gap(a, b, from, to) < 0.3 * k ? OVER_MARK : 0;
        }
    }
    return score;
}

/* Does it pass over a screen's bar? */
static bool over_bar(const struct drawing *drawing, const struct stroke *stroke, struct vec2 from,
                     struct vec2 to)
{
    struct vec2 a, b;
    const struct stop *end = stroke->end < 0 ? NULL : &drawing->stops.at[stroke->end];
    if (!end || end->kind != STOP_BAR) {
        return false;
    }
    bar_ends(drawing, end, &a, &b);
    return segment_gap(a, b, from, to) < drawing->size.bar_stroke / 2 + 0.25 * drawing->size.k;
}

/* One piece of another line: does the leader cross it, or lie along it? */
static double piece_cost(const struct drawing *drawing, struct vec2 from, struct vec2 to,
                         struct vec2 a, struct vec2 b)
{
    double t, u, near = 0.35 * drawing->size.k;
    double flat = fabs(vec2_cross(vec2_unit(vec2_sub(to, from)), vec2_unit(vec2_sub(b, a))));
    if (segment_cross(from, to, a, b, &t, &u)) {
        return flat < ALONG_LINE ? OVER_MARK : OVER_LINE;
    }
    double gap = segment_gap(from, to, a, b);
    return gap < near ? (flat < ALONG_LINE ? BESIDE_LINE : 0.3 * BESIDE_LINE) : 0;
}

static double over_lines(const struct drawing *drawing, const struct led *led, struct vec2 from,
                         struct vec2 to)
{
    double score = 0;
    struct vec2 middle = vec2_mix(from, to, 0.5);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        bool own = i == led->owner.line;
        double worst = !own && over_bar(drawing, stroke, from, to) ? OVER_MARK : 0;
        double reach = vec2_distance(from, to) / 2 + drawing->size.k;
        if (own || stroke->ink_count < 2 || stroke_is_beyond(drawing, stroke, middle, reach)) {
            score += worst;
            continue;
        }
        for (size_t p = 0; p + 1 < stroke->ink_count; p++) {
            double cost = piece_cost(drawing, from, to, stroke->ink[p], stroke->ink[p + 1]);
            worst = real_max(worst, cost);
        }
        double end = stroke_distance(drawing, stroke, to) < 0.4 * drawing->size.k ? OVER_LINE : 0;
        bool head = stroke->head &&
                    segment_gap(from, to, stroke->back, stroke->tip) < drawing->size.head_width / 2;
        score += real_max(worst, head ? OVER_HEAD : end);
    }
    return score;
}

/* What its leader adds to what a disc costs there; `most`: above it nobody wants to know. */
static double leader_score(const struct drawing *drawing, const struct led *led, struct vec2 at,
                           struct vec2 *tip)
{
    double r = drawing->size.order;
    *tip = leader_tip(drawing, led, at);
    struct vec2 way = vec2_unit(vec2_sub(*tip, at)), from = vec2_along(at, way, r);
    double length = vec2_distance(from, *tip);
    if (vec2_distance(at, *tip) < (1 + SHORTEST) * r) {
        return LEFT_OUT;
    }
    double score = LONGER * length / r;
    score += vec2_distance(*tip, led->about) > 0.6 * r + 0.5 * drawing->size.k ? ELSEWHERE : 0;
    bool lies = vec2_length(led->way) > 0 && fabs(vec2_cross(way, led->way)) < FLAT_MEET;
    score += lies ? FLAT_COST : 0;
    score += over_marks(drawing, led, from, *tip);
    return score < LEFT_OUT ? score + over_lines(drawing, led, from, *tip) : score;
}

/* The best place round about one point of what a number belongs to. */
static void led_round(const struct drawing *drawing, const struct led *led, struct choice *best)
{
    double r = drawing->size.order, base = drawing->size.small ? LEADER_CARD : LEADER;
    for (int ring = 0; ring < LENGTHS; ring++) {
        double off = r * (1 + SHORTEST + (LONGEST - SHORTEST) * ring / (LENGTHS - 1));
        for (int i = 0; i < ANGLES && base + LONGER * (off / r - 1) < best->cost; i++) {
            struct candidate place = {.led = true};
            double angle = 2 * REAL_PI * i / ANGLES;
            struct vec2 out = vec2_of(real_cos(angle), real_sin(angle));
            place.at = vec2_along(led->about, out, off);
            double cost = base + place_score_below(drawing, place.at, r, best->cost - base);
            cost += cost < best->cost ? leader_score(drawing, led, place.at, &place.tip) : 0;
            if (cost < best->cost) {
                *best = (struct choice){place, cost};
            }
        }
    }
}

void leader_to_line(const struct drawing *drawing, size_t index, const struct stroke_part *part,
                    struct choice *best)
{
    static const double shares[] = {0.5, 0.35, 0.65, 0.2, 0.8};
    const struct stroke *stroke = &drawing->strokes.at[index];
    struct led led = {.owner = {index, stroke->who}};
    bool drawn = stroke->ink_count > 1;
    double head = stroke->head ? drawing->size.head_length : 0;
    double whole = drawn ? path_length(&stroke->path) - head : 0;
    for (size_t i = 0; drawn && i < sizeof shares / sizeof *shares; i++) {
        double along = real_max(0, whole) * real_mix(part->from, part->to, shares[i]);
        led.about = path_point(&stroke->path, along);
        led.way = path_direction(&stroke->path, along);
        led_round(drawing, &led, best);
    }
    const struct stop *end = stroke->end < 0 ? NULL : &drawing->stops.at[stroke->end];
    if (!drawn && end && end->kind == STOP_BAR) {
        led.about = end->at;
        led.way = vec2_left(end->facing);
        led_round(drawing, &led, best);
    }
}

void leader_to_player(const struct drawing *drawing, body who, struct vec2 about,
                      struct choice *best)
{
    struct led led = {.owner = {SIZE_MAX, who}, .about = about};
    led_round(drawing, &led, best);
}
