/* SPDX-License-Identifier: MIT */
/* repair: when all lines are cut to their ends, whichever still lies on something is tried in other
 * bows, wider and to the other side, at last over a mesh, and takes the one in which it lies on
 * least. A clean line is not touched. */
#include "picture/scene/drawing.h"

#include <math.h>
#include <string.h>

#define ALONG 0.24        /* sine of 14 degrees: flatter is along, not across */
#define TOGETHER_FEET 1.4 /* so long side by side is too much (ours) */
#define FLAT (16 * REAL_PI / 180)
#define STEM_FEET 3.5 /* of a screener's line behind his bar */
#define MOST_FEET 6.5 /* that another way is off the first one: two metres (ours) */
#define MIDWAY 2.0    /* feet from either end: there lines come together at a place */
#define YIELDS 0.3    /* of what a mark costs: an X steps aside when the lines are there (ours) */
#define WINDS (200 * REAL_PI / 180) /* round the numeral it leaves: more reads as a loop (ours) */
#define AT_EDGE 0.1 /* points that a line reaches over the edge of its own ring (ours) */
#define WORTH 0.3   /* of cost: for less no line is moved */
enum { TURNS = 3, BOWS = 10, CENTRES = 5, ROUNDS = 7, HOWS = 4 };

/* What lies on what costs; feet and points of cost (ours). */
static const struct {
    double mark, depth, together, per_foot, crossing, flat, stem, outside, moved, longer, turn,
        wrong, on;
} costs = {4, 1, 6, 0.5, 0.4, 1.5, 3, 20, 0.25, 0.3, 0.8, 10, 8};

/* A stroke's box on paper, and half of what it is wide. */
struct extent {
    struct vec2 low, high;
    double half;
};

static double half_width(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    double half = size->line / 2;
    return stroke->class == CLASS_DRIBBLE ? half + size->wave_half
           : stroke->class == CLASS_SHOT  ? half + size->shot_half
                                          : half;
}

static struct extent extent_of(const struct drawing *drawing, const struct stroke *stroke,
                               const struct trail *trail)
{
    struct extent extent = {{1e9, 1e9}, {-1e9, -1e9}, half_width(drawing, stroke)};
    for (size_t i = 0; i < trail->count; i++) {
        struct vec2 at = trail->at[i];
        extent.low = vec2_of(real_min(extent.low.x, at.x), real_min(extent.low.y, at.y));
        extent.high = vec2_of(real_max(extent.high.x, at.x), real_max(extent.high.y, at.y));
    }
    return extent;
}

static bool is_off(const struct extent *extent, struct vec2 at, double reach)
{
    return at.x < extent->low.x - reach || at.x > extent->high.x + reach ||
           at.y < extent->low.y - reach || at.y > extent->high.y + reach;
}

static bool are_apart(const struct extent *a, const struct extent *b, double reach)
{
    return a->low.x > b->high.x + reach || b->low.x > a->high.x + reach ||
           a->low.y > b->high.y + reach || b->low.y > a->high.y + reach;
}

/* What lying on a thing from a to b costs, to be kept `clear` of, of which `comfort` is
 * white. */
static double mark_cost(const struct trail *trail, const struct extent *extent, struct vec2 a,
                        struct vec2 b, double clear, double comfort, double k)
{
    if (is_off(extent, vec2_mix(a, b, 0.5), clear + vec2_distance(a, b) / 2)) {
        return 0;
    }
    double least = 1e9;
    struct vec2 low = vec2_of(real_min(a.x, b.x) - clear, real_min(a.y, b.y) - clear);
    struct vec2 high = vec2_of(real_max(a.x, b.x) + clear, real_max(a.y, b.y) + clear);
    for (size_t i = 0; i + 1 < trail->count; i++) {
        struct vec2 from = trail->at[i], to = trail->at[i + 1];
        if ((from.x < low.x && to.x < low.x) || (from.x > high.x && to.x > high.x) ||
            (from.y < low.y && to.y < low.y) || (from.y > high.y && to.y > high.y)) {
            continue;
        }
        least = real_min(least, segment_gap(from, to, a, b));
    }
    double on = least < clear - comfort + PEN_SLIP ? costs.on : 0;
    return least < clear ? on + costs.mark + costs.depth * (clear - least) / k : 0;
}

static double marks_cost(const struct drawing *drawing, const struct stroke *stroke,
                         const struct trail *trail, const struct extent *extent)
{
    const struct sizes *size = &drawing->size;
    double k = size->k, cost = 0, clear = extent->half + 0.25 * size->gap;
    double comfort = clear - size->line / 2; /* a dribble's waves go lower beside a mark */
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double gives_way = body_is_defender(symbol->who) && !symbol->pinned ? YIELDS : 1;
        cost += gives_way * mark_cost(trail, extent, symbol->at, symbol->at, symbol->radius + clear,
                                      comfort, k);
    }
    for (int i = 0; i < (int)drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        bool own = i == stroke->start || i == stroke->end;
        if (stop->kind == STOP_RING && own) { /* it begins and ends at its edge */
            cost += mark_cost(trail, extent, stop->at, stop->at,
                              stop_radius(drawing, stop) - AT_EDGE, 0, k);
        } else if (stop->kind == STOP_RING) {
            cost += mark_cost(trail, extent, stop->at, stop->at, stop_radius(drawing, stop) + clear,
                              comfort, k);
        } else if (stop->kind == STOP_BAR && !own && (stop->who != stroke->who || stop->from < 0)) {
            struct vec2 a, b;
            bar_ends(drawing, stop, &a, &b);
            cost += mark_cost(trail, extent, a, b, size->bar_stroke / 2 + clear, comfort, k);
        }
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *handoff = &drawing->strokes.at[i];
        struct vec2 middle;
        if (handoff != stroke && handoff_middle(handoff, &middle)) {
            cost +=
                mark_cost(trail, extent, middle, middle, size->handoff_bar / 2 + clear, comfort, k);
        }
    }
    if (!stroke_is_throw(stroke)) {
        for (int far = 0; far <= (drawing->frame.full ? 1 : 0); far++) {
            struct basket_marks at = basket_marks(drawing, far == 1);
            cost += mark_cost(trail, extent, at.left, at.right, size->board / 2 + clear + 0.4 * k,
                              comfort + 0.4 * k, k);
            cost += mark_cost(trail, extent, at.ring, vec2_mix(at.left, at.right, 0.5),
                              size->basket + clear, comfort, k);
        }
    }
    for (size_t i = 0; i < trail->count; i++) {
        struct vec2 in = frame_keep(&drawing->frame, trail->at[i], extent->half);
        if (in.x != trail->at[i].x || in.y != trail->at[i].y) {
            return cost + costs.outside;
        }
    }
    return cost;
}

/* Is a place well away from where a way begins and ends? */
static bool is_midway(const struct trail *trail, struct vec2 at, double off)
{
    return vec2_distance(at, trail->at[0]) > off &&
           vec2_distance(at, trail->at[trail->count - 1]) > off;
}

/* How far two lines run side by side, and how they cross, or touch and part again: one that comes
 * to another and turns away reads as its branch. */
static double pair_cost(const struct drawing *drawing, const struct trail *a,
                        const struct extent *at_a, const struct trail *b, const struct extent *at_b)
{
    double k = drawing->size.k, length = 0, cost = 0;
    bool touches = false;
    double near = at_a->half + at_b->half + drawing->size.line;
    if (are_apart(at_a, at_b, near)) {
        return 0;
    }
    for (size_t i = 0; i + 1 < a->count; i++) {
        struct vec2 from = a->at[i], to = a->at[i + 1], middle = vec2_mix(from, to, 0.5);
        double step = vec2_distance(from, to);
        if (is_off(at_b, middle, near + step)) {
            continue;
        }
        bool along = false;
        for (size_t j = 0; j + 1 < b->count; j++) {
            struct vec2 one = b->at[j], other = b->at[j + 1];
            double reach = near + step;
            if ((one.x < middle.x - reach && other.x < middle.x - reach) ||
                (one.x > middle.x + reach && other.x > middle.x + reach) ||
                (one.y < middle.y - reach && other.y < middle.y - reach) ||
                (one.y > middle.y + reach && other.y > middle.y + reach)) {
                continue;
            }
            struct vec2 way = vec2_sub(to, from), off = vec2_sub(other, one);
            double cross = fabs(vec2_cross(vec2_unit(way), vec2_unit(off))), s, t;
            double far = segment_distance(middle, one, other, NULL);
            along = along || (cross < ALONG && far < near);
            touches =
                touches || (far < at_a->half + at_b->half && is_midway(a, middle, MIDWAY * k) &&
                            is_midway(b, middle, MIDWAY * k));
            if (segment_cross(from, to, one, other, &s, &t)) {
                cost += cross < FLAT ? costs.flat : costs.crossing;
            }
        }
        length += along ? step : 0;
    }
    cost += touches && cost == 0 ? costs.flat : 0;
    return cost + (length > TOGETHER_FEET * k ? costs.together + costs.per_foot * length / k : 0);
}

/* Does one of them end where the other, a shot, starts? The two lie side by side there, and may,
 * but the run does not cross its shot. */
static bool is_shot_of(const struct stroke *stroke, const struct stroke *other)
{
    return (other->class == CLASS_SHOT && other->start == stroke->end) ||
           (stroke->class == CLASS_SHOT && stroke->start == other->end);
}

static double shot_cost(const struct trail *a, const struct trail *b)
{
    double cost = 0, s, t;
    for (size_t i = 0; i + 1 < a->count; i++) {
        for (size_t j = 0; j + 1 < b->count; j++) {
            bool crosses = segment_cross(a->at[i], a->at[i + 1], b->at[j], b->at[j + 1], &s, &t);
            cost += crosses ? costs.together : 0;
        }
    }
    return cost;
}

/* A screener and his bar are one body: who crosses the line between, so near to the bar, is read as
 * running through him. */
static double stem_cost(const struct drawing *drawing, const struct stroke *stroke,
                        const struct trail *trail, const struct stroke *other)
{
    bool screens = stroke->class == CLASS_SCREEN;
    if (screens == (other->class == CLASS_SCREEN)) {
        return 0;
    }
    const struct trail *stem = screens ? trail : &other->trail;
    const struct trail *line = screens ? &other->trail : trail;
    double along = 0, s, t;
    for (size_t i = stem->count - 1; i > 0 && along < STEM_FEET * drawing->size.k; i--) {
        for (size_t j = 0; j + 1 < line->count; j++) {
            if (segment_cross(stem->at[i], stem->at[i - 1], line->at[j], line->at[j + 1], &s, &t)) {
                return costs.stem;
            }
        }
        along += vec2_distance(stem->at[i], stem->at[i - 1]);
    }
    return 0;
}

struct repair {
    struct drawing *drawing;
    struct extent *extents; /* of all strokes */
    struct trail *first;    /* the ways they had */
};

/* All that a stroke lies on if it goes that way; no need to know it above `most`. */
static double way_cost(const struct repair *repair, size_t index, const struct trail *trail,
                       double most)
{
    const struct drawing *drawing = repair->drawing;
    const struct stroke *stroke = &drawing->strokes.at[index];
    struct extent extent = extent_of(drawing, stroke, trail);
    double cost = marks_cost(drawing, stroke, trail, &extent);
    for (size_t i = 0; i < drawing->strokes.count && cost < most; i++) {
        const struct stroke *other = &drawing->strokes.at[i];
        bool yields = stroke_is_light(other) && !stroke_is_light(stroke);
        if (i != index && other->trail.count > 1 && !yields) {
            cost += is_shot_of(stroke, other)
                        ? shot_cost(trail, &other->trail)
                        : pair_cost(drawing, trail, &extent, &other->trail, &repair->extents[i]);
            cost += stem_cost(drawing, stroke, trail, other);
        }
    }
    return cost;
}

static struct trail trail_copy(struct arena *arena, const struct trail *trail)
{
    struct trail copy = {arena_array(arena, struct vec2, trail->count), trail->corner,
                         trail->count};
    memcpy(copy.at, trail->at, trail->count * sizeof *copy.at);
    return copy;
}

/* The same with each point moved by its share of a push. */
static struct trail trail_pushed(struct arena *arena, const struct trail *trail, struct vec2 push,
                                 const double *share)
{
    struct trail pushed = {arena_array(arena, struct vec2, trail->count), trail->corner,
                           trail->count};
    for (size_t i = 0; i < trail->count; i++) {
        pushed.at[i] = vec2_along(trail->at[i], push, share[i]);
    }
    return pushed;
}

/* A straight throw as close points, so that it can bow. */
static struct trail trail_fine(struct drawing *drawing, const struct trail *trail)
{
    struct path path = path_of(drawing->arena, trail->at, trail->count);
    size_t pieces = (size_t)(path_length(&path) / (0.5 * drawing->size.k)) + 2;
    struct trail fine = {arena_array(drawing->arena, struct vec2, pieces + 1), NULL, pieces + 1};
    for (size_t i = 0; i <= pieces; i++) {
        fine.at[i] = path_point(&path, path_length(&path) * (double)i / (double)pieces);
    }
    return fine;
}

/* How far a way leads, feet, and how much it turns, radians: both are read as meant. */
static double way_strain(const struct trail *trail, double k)
{
    double length = 0, turn = 0;
    struct vec2 last = {0, 0};
    for (size_t i = 1; i < trail->count; i++) {
        struct vec2 step = vec2_sub(trail->at[i], trail->at[i - 1]);
        double far = vec2_length(step);
        length += far;
        if (far > 1e-6) {
            turn += last.x != 0 || last.y != 0 ? vec2_angle(last, step) : 0;
            last = step;
        }
    }
    return costs.longer * length / k + costs.turn * turn;
}

/* Looking for another way for one stroke. */
struct looking {
    const struct repair *repair;
    size_t index;
    struct trail best;
    double cost;
    double strain; /* of the way as it was */
    int wrong;     /* sides of it */
    bool found;
};

/* A line so far from its run would tell a lie. */
static bool goes_far(const struct looking *looking, const struct trail *way)
{
    const struct trail *first = &looking->repair->first[looking->index];
    double most = MOST_FEET * looking->repair->drawing->size.k;
    for (size_t i = 0; i < way->count; i++) {
        double off = 1e9;
        for (size_t j = 0; j + 1 < first->count && off > most; j++) {
            off = real_min(off, segment_distance(way->at[i], first->at[j], first->at[j + 1], NULL));
        }
        if (off > most) {
            return true;
        }
    }
    return false;
}

/* On how many sides it passes a numeral or a bar on which nobody ran: it would tell a lie,
 * too. */
static int passes_wrong(const struct looking *looking, const struct trail *way)
{
    const struct drawing *drawing = looking->repair->drawing;
    return sides_wrong(drawing, &drawing->strokes.at[looking->index], way);
}

/* Does it wind round the numeral that it leaves? */
static bool winds(const struct looking *looking, const struct trail *way)
{
    const struct drawing *drawing = looking->repair->drawing;
    int start = drawing->strokes.at[looking->index].start;
    const struct stop *from = start < 0 ? NULL : &drawing->stops.at[start];
    return from && from->kind == STOP_SYMBOL &&
           fabs(sweep_round(from->at, way->at, way->count)) > WINDS;
}

static void look_at(struct looking *looking, const struct trail *way, double extra)
{
    double cost = extra + WORTH;
    if (cost >= looking->cost) {
        return;
    }
    int wrong = looking->wrong > 0 ? passes_wrong(looking, way) : 0;
    cost += costs.wrong * wrong;
    cost += cost < looking->cost
                ? way_cost(looking->repair, looking->index, way, looking->cost - cost)
                : 0;
    cost += cost < looking->cost
                ? real_max(0, way_strain(way, looking->repair->drawing->size.k) - looking->strain)
                : 0;
    if (cost < looking->cost && !goes_far(looking, way) && !winds(looking, way) &&
        passes_wrong(looking, way) <= looking->wrong) {
        looking->cost = cost;
        looking->best = *way;
        looking->found = true;
    }
}

/* Plain bows of the way as it is. */
static void look_at_bows(struct looking *looking, const struct trail *whole)
{
    static const double bows[BOWS] = {0.8, -0.8, 1.6, -1.6, 2.6, -2.6, 3.8, -3.8, 5.4, -5.4};
    static const double centres[CENTRES] = {0.5, 0.3, 0.7, 0.15, 0.85};
    struct drawing *drawing = looking->repair->drawing;
    struct path path = path_of(drawing->arena, whole->at, whole->count);
    double length = path_length(&path), k = drawing->size.k;
    double *shape[2] = {arena_array(drawing->arena, double, whole->count),
                        arena_array(drawing->arena, double, whole->count)};
    for (int c = 0; c < CENTRES; c++) {
        double along = centres[c] * length;
        struct vec2 square = vec2_left(path_direction(&path, along));
        hump_shape(whole, along, length, false, shape[0]);
        hump_shape(whole, along, length, true, shape[1]);
        for (int b = 0; b < BOWS; b++) {
            double extra = costs.moved * fabs(bows[b]);
            for (int fan = 0; fan < 2 && extra + WORTH < looking->cost; fan++) {
                struct vec2 push = vec2_scale(square, bows[b] * k);
                struct trail way = trail_pushed(drawing->arena, whole, push, shape[fan]);
                look_at(looking, &way, extra);
            }
        }
    }
}

/* A bow, and then round whatever is in its way. */
static void look_round(struct looking *looking, const struct trail *whole)
{
    static const double bows[ROUNDS] = {0, 2, -2, 4, -4, 6, -6};
    struct drawing *drawing = looking->repair->drawing;
    struct path path = path_of(drawing->arena, whole->at, whole->count);
    double length = path_length(&path), k = drawing->size.k;
    struct vec2 square = vec2_left(path_direction(&path, length / 2));
    for (int b = 0; b < ROUNDS; b++) {
        struct stroke tried = drawing->strokes.at[looking->index];
        tried.trail = trail_copy(drawing->arena, whole);
        trail_hump(&tried.trail, length / 2, vec2_scale(square, bows[b] * k), length, true);
        bend_one(drawing, &tried);
        look_at(looking, &tried.trail, costs.moved * fabs(bows[b]));
        tried.trail = trail_copy(drawing->arena, &tried.trail);
        squeeze_one(drawing, &tried);
        look_at(looking, &tried.trail, costs.moved * fabs(bows[b]));
    }
}

/* Over a mesh, where all that is left lies on a mark or passes one where nobody ran. */
static void look_by_mesh(struct looking *looking, const struct trail *whole)
{
    static const struct route_how hows[HOWS] = {
        {true, false}, {true, true}, {false, false}, {false, true}};
    struct drawing *drawing = looking->repair->drawing;
    const struct stroke *stroke = &drawing->strokes.at[looking->index];
    for (int i = 0; i < HOWS; i++) {
        const struct trail *best = looking->found ? &looking->best : whole;
        struct trail way;
        bool clear = trail_lies(drawing, stroke, best) == 0 && passes_wrong(looking, best) == 0;
        if (!clear && route_way(drawing, stroke, whole, hows[i], &way)) {
            look_at(looking, &way, 0);
        }
    }
}

/* Tries other ways; true: the stroke takes one now. */
static bool repair_one(const struct repair *repair, size_t index)
{
    struct drawing *drawing = repair->drawing;
    struct stroke *stroke = &drawing->strokes.at[index];
    struct looking looking = {.repair = repair, .index = index};
    looking.wrong = sides_wrong(drawing, stroke, &stroke->trail);
    looking.strain = way_strain(&stroke->trail, drawing->size.k);
    looking.cost = way_cost(repair, index, &stroke->trail, 1e9) + costs.wrong * looking.wrong;
    double lies = looking.cost;
    if (stroke_is_throw(stroke)) { /* it is straight, and broken where it meets a mark */
        lies -= marks_cost(drawing, stroke, &stroke->trail, &repair->extents[index]);
    }
    if (lies < costs.flat) {
        return false;
    }
    struct trail whole = stroke->trail;
    if (stroke_is_throw(stroke)) {
        whole = trail_fine(drawing, &stroke->trail);
    }
    look_at_bows(&looking, &whole);
    if (looking.cost > costs.mark && !stroke_is_throw(stroke)) {
        look_round(&looking, &whole);
    }
    if (looking.cost > costs.mark && !stroke_is_throw(stroke)) {
        look_by_mesh(&looking, &whole);
    }
    if (looking.found) {
        stroke->trail = looking.best;
        stroke->path = path_of(drawing->arena, looking.best.at, looking.best.count);
        repair->extents[index] = extent_of(drawing, stroke, &stroke->trail);
    }
    return looking.found;
}

static bool may_bow(const struct drawing *drawing, const struct stroke *stroke)
{
    bool straight = stroke->class == CLASS_SHOT || stroke->class == CLASS_HANDOFF;
    return !straight && !stroke->standing && stroke->trail.count > 1 &&
           path_length(&stroke->path) > 4 * drawing->size.k;
}

bool lines_repair(struct drawing *drawing)
{
    struct repair repair = {drawing,
                            arena_array(drawing->arena, struct extent, drawing->strokes.count),
                            arena_array(drawing->arena, struct trail, drawing->strokes.count)};
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        repair.first[i] = stroke->trail;
        repair.extents[i] = extent_of(drawing, stroke, &stroke->trail);
    }
    bool any = true, moved = false;
    for (int turn = 0; turn < TURNS && any; turn++) {
        any = false;
        for (size_t i = 0; i < drawing->strokes.count; i++) {
            if (may_bow(drawing, &drawing->strokes.at[i])) {
                any |= repair_one(&repair, i);
            }
        }
        moved |= any;
    }
    return moved;
}
