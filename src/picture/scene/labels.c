/* SPDX-License-Identifier: MIT */
/* labels: the order discs. Candidate places on and beside each line are scored by what they would
 * lie on; the least score wins, and a disc that finds no place is left out (the sentence under the
 * diagram keeps its own). */
#include "picture/scene/drawing.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#define LEFT_OUT 100.0      /* a score from which a disc is rather left out */
#define SMALL_LEFT_OUT 55.0 /* the same on a small picture, where there is little room for any */
#define SHORT_LINE 8.0      /* radii of a disc: beside a shorter line it may stand further off */

/* What a disc is weighed against, feet and points of score. */
struct weights {
    double beside, fraction;
    double outside, symbol, symbol_near, label, ring, bar, cone, line, line_under, line_near, away,
        beside_near, beside_line, own_line, stranger, crossing, bend;
};
static const struct weights weights = {.beside = 6,
                                       .fraction = 10,
                                       .outside = 1000,
                                       .symbol = 400,
                                       .symbol_near = 12,
                                       .label = 300,
                                       .ring = 150,
                                       .bar = 150,
                                       .cone = 200,
                                       .line = 60,
                                       .line_under = 100,
                                       .line_near = 10,
                                       .away = 9,
                                       .beside_near = 26,
                                       .beside_line = 14,
                                       .own_line = 90,
                                       .stranger = 18,
                                       .crossing = 25,
                                       .bend = 18};
/* Feet from a screener's numeral to his bar: the disc may be beside either. */
#define SHORT_STEM 6.0
#define STRANGER 0.15 /* feet: a disc so much nearer to another line seems to be that one's */
#define GOES_ON 1.5   /* s until the player's line begins */
#define BEGINS 0.5    /* of that line: where its beginning is */
#define GOOD 12.0     /* of cost for all discs of a line: no better need be looked for */
enum { FRACTIONS = 13, FINE = 31, ROUNDS = 10 };

/* The i-th fraction of a line's length to be tried: .50, .44, .56 ... .14, .86; a fine one goes on
 * in steps half as wide, to .05 and .95. */
static double fraction(int i, bool fine)
{
    int step = (i + 1) / 2;
    return 0.5 + (i % 2 ? -1 : 1) * step * (fine ? 0.03 : 0.06);
}

struct candidate {
    struct vec2 at;
    double along; /* points along the ink's middle line */
    double fraction;
    bool on;
};

/* Of a disc with the white round it. */
static double disc_white(const struct sizes *size)
{
    return size->order + 0.26 * size->k;
}

/* What a disc costs from which it is rather left out. */
static double left_out(const struct drawing *drawing)
{
    return drawing->size.small ? SMALL_LEFT_OUT : LEFT_OUT;
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
        return weights.symbol;
    }
    return gap < 0.6 * k ? weights.symbol_near * (0.6 * k - gap) / k : 0;
}

static double symbols_score(const struct drawing *drawing, struct vec2 at, double r)
{
    double k = drawing->size.k, score = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        score += near_score(vec2_distance(at, symbol->at) - symbol->radius - r, k);
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

static double stops_score(const struct drawing *drawing, struct vec2 at, double r)
{
    const struct sizes *size = &drawing->size;
    double score = 0;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING &&
            vec2_distance(at, stop->at) < r + real_max(0.9 * size->k, size->end + 0.38 * size->k)) {
            score += weights.ring;
        } else if (stop->kind == STOP_BAR) {
            struct vec2 a, b;
            bar_ends(drawing, stop, &a, &b);
            double far = segment_distance(at, a, b, NULL);
            score += far < r + 0.45 * size->k ? weights.bar : 0;
        }
    }
    return score;
}

/* From a place to a line, or to its bar where that is nearer; 0 where nothing of it is drawn. */
static double own_distance(const struct drawing *drawing, size_t own, struct vec2 at)
{
    const struct stroke *stroke = &drawing->strokes.at[own];
    double far = stroke->ink_count < 2 ? 1e9 : stroke_distance(drawing, stroke, at);
    const struct stop *end = stroke->end < 0 ? NULL : &drawing->stops.at[stroke->end];
    if (end && end->kind == STOP_BAR) {
        far = real_min(far, vec2_distance(at, bar_nearest(drawing, end, at)));
    }
    return far < 1e9 ? far : 0;
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

static double lines_score(const struct drawing *drawing, size_t own, const struct candidate *place,
                          double r)
{
    double k = drawing->size.k, score = 0;
    bool nearer = false; /* to somebody else's line than to its own */
    double his = own < SIZE_MAX && !place->on ? own_distance(drawing, own, place->at) : 0;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        double reach = real_max(r + 1.1 * k, his);
        if (stroke->ink_count < 2 || stroke_is_beyond(drawing, stroke, place->at, reach)) {
            continue;
        }
        double far = stroke_distance(drawing, stroke, place->at);
        nearer = nearer || (i != own && far < his - STRANGER * k);
        if (i == own) {
            score += !place->on && far < r + 0.2 * k ? weights.own_line : 0;
        } else if (far < r + 0.02 * k) {
            score += weights.line_under;
        } else if (far < r + 0.25 * k) {
            score += weights.line;
        } else if (far < r + 0.7 * k) {
            score += place->on ? weights.line_near : weights.beside_near;
        } else if (!place->on && far < r + 1.1 * k) {
            score += weights.beside_line;
        }
    }
    score += nearer ? weights.stranger : 0;
    for (size_t i = 0; i < drawing->crossings.count; i++) {
        const struct crossing *crossing = &drawing->crossings.at[i];
        double far = vec2_distance(place->at, crossing->at), least = r + 1.3 * k;
        bool crosses = crossing->under == own || crossing->over == own;
        score += crosses && far < least ? weights.crossing * (least - far) / k : 0;
    }
    return score;
}

/* The same for what belongs to line `own`, SIZE_MAX: to none; `on`: it may be near other lines,
 * whose it cannot be taken to be. */
static double loose_score(const struct drawing *drawing, size_t own, struct vec2 at, double r,
                          bool on)
{
    struct candidate place = {.at = at, .on = on};
    double score =
        outside_score(drawing, at, r) + symbols_score(drawing, at, r) + stops_score(drawing, at, r);
    score += lines_score(drawing, own, &place, r);
    for (size_t i = 0; i < drawing->discs.count; i++) {
        double least = r + drawing->size.order + 0.2 * drawing->size.k;
        score += vec2_distance(at, drawing->discs.at[i].at) < least ? weights.label : 0;
    }
    for (size_t i = 0; i < drawing->words.count; i++) {
        score += vec2_distance(at, drawing->words.at[i]) < r + 0.5 * drawing->size.lettering
                     ? weights.label
                     : 0;
    }
    score += basket_score(drawing, at, r);
    score += lines_score(drawing, SIZE_MAX, &place, 0.4 * r) >= weights.line ? weights.line : 0;
    return score;
}

double place_score(const struct drawing *drawing, struct vec2 at, double r)
{
    return loose_score(drawing, SIZE_MAX, at, r, true);
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

/* What a place costs; no need to know it above `most`. */
static double score_of(const struct drawing *drawing, size_t own, const struct candidate *place,
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
    score += lines_score(drawing, own, place, r);
    score += bend_score(drawing, &drawing->strokes.at[own], place, r);
    for (size_t i = 0; i < drawing->discs.count; i++) {
        score +=
            vec2_distance(place->at, drawing->discs.at[i].at) < 2 * r + 0.4 * k ? weights.label : 0;
    }
    return score;
}

/* Does a disc on a line hide another stretch of it, the other leg of a way there and back? */
static bool hides_leg(const struct stroke *stroke, const struct candidate *place, double reach)
{
    const struct path *path = &stroke->path;
    for (size_t i = 0; place->on && i < path->count; i++) {
        if (fabs(path->along[i] - place->along) > 2 * reach &&
            vec2_distance(path->at[i], place->at) < reach) {
            return true;
        }
    }
    return false;
}

/* How far beside the line a disc's middle lies. */
static double beside_of(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    double off = size->order + 0.30 * size->k + stroke->width / 2;
    if (stroke->class == CLASS_DRIBBLE) {
        off += size->wave_half;
    } else if (stroke->class == CLASS_HANDOFF) {
        off += size->handoff_bar / 2 + 0.25 * size->k;
    } else if (stroke->class == CLASS_SHOT) {
        off += size->shot_half;
    }
    return off;
}

/* Would a disc there hide a sharp corner, and with it that somebody planted and turned? */
static bool hides_corner(const struct stroke *stroke, double along, double reach)
{
    const struct trail *trail = &stroke->trail;
    for (size_t i = 1; trail->corner && i + 1 < trail->count && i < stroke->path.count; i++) {
        if (trail->corner[i] && fabs(stroke->path.along[i] - along) < reach) {
            return true;
        }
    }
    return false;
}

/* A disc lies on a line only where enough of it is seen on both sides: of a zigzag two waves. */
static bool leaves_enough(const struct drawing *drawing, const struct stroke *stroke, double along,
                          double whole)
{
    const struct sizes *size = &drawing->size;
    double white = disc_white(size);
    double least = white + (stroke->parts > 1 ? 0.7 : 1.2) * size->order; /* two may have to fit */
    if (along < least || whole - along < least ||
        hides_corner(stroke, along, white + 0.6 * size->order)) {
        return false;
    }
    double waves = whole - 2 * white - size->wave_in - size->wave_out;
    return stroke->class != CLASS_DRIBBLE || waves >= 2 * size->wave;
}

/* Where and how hard a place for a part's disc is looked for. */
struct looking {
    bool may_lie_on, fine;
    int sides; /* how many places beside each point of the line are tried, two at each distance */
};

/* The best place for a part's disc, and its score. */
static double disc_search(const struct drawing *drawing, size_t index,
                          const struct stroke_part *part, struct looking how,
                          struct candidate *chosen)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    double head = stroke->head ? drawing->size.head_length : 0;
    double whole = path_length(&stroke->path) - head;
    double from = part->from * whole, length = (part->to - part->from) * whole;
    double beside = beside_of(drawing, stroke), best = LEFT_OUT;
    for (int f = 0; f < (how.fine ? FINE : FRACTIONS); f++) {
        double share = fraction(f, how.fine), along = from + share * length;
        struct vec2 at = path_point(&stroke->path, along);
        struct vec2 square = vec2_left(path_direction(&stroke->path, along));
        bool on = how.may_lie_on && leaves_enough(drawing, stroke, along, whole);
        for (int side = on ? 0 : 1; side <= how.sides; side++) {
            double off = beside * (1 + 0.4 * (side > 0 ? (side - 1) / 2 : 0)) * (side % 2 ? 1 : -1);
            struct candidate place = {side == 0 ? at : vec2_along(at, square, off), along, share,
                                      side == 0};
            double score = side > 2 ? 5 * ((side - 1) / 2) : 0;
            score += hides_leg(stroke, &place, 1.15 * drawing->size.order) ? weights.own_line : 0;
            score += score_of(drawing, index, &place, best - score);
            if (score < best) {
                best = score;
                *chosen = place;
            }
        }
    }
    return best;
}

/* Round about a point, as near as may be: `first` from it to begin with. */
static double disc_round(const struct drawing *drawing, size_t own, struct vec2 about,
                         struct vec2 way, double first, struct candidate *chosen)
{
    double best = LEFT_OUT;
    for (int ring = 0; ring < ROUNDS; ring++) {
        double far = (1 + 0.35 * ring) * first;
        for (int i = 0; i < 24; i++) {
            struct candidate place = {.at =
                                          vec2_along(about, vec2_turn(way, i * REAL_PI / 12), far)};
            double score = loose_score(drawing, own, place.at, drawing->size.order, false) +
                           weights.away * ring;
            if (score < best) {
                best = score;
                *chosen = place;
            }
        }
    }
    return best;
}

/* A bar with no room beside its line, or with none, a line that is shorter than its disc and the
 * white round it, and one too short to be drawn have it as near as may be. */
static double disc_near(const struct drawing *drawing, const struct stroke *stroke,
                        struct candidate *chosen)
{
    const struct sizes *size = &drawing->size;
    size_t own = (size_t)(stroke - drawing->strokes.at);
    const struct stop *start = &drawing->stops.at[stroke->start];
    const struct stop *end = stroke->end >= 0 ? &drawing->stops.at[stroke->end] : NULL;
    if (end && end->kind == STOP_BAR) {
        struct candidate beside;
        double best =
            disc_round(drawing, own, end->at, end->facing, size->bar / 2 + size->order, chosen);
        if (start->kind == STOP_SYMBOL &&
            vec2_distance(start->at, end->at) < SHORT_STEM * size->k) {
            double first = stop_radius(drawing, start) + size->order + 0.3 * size->k;
            double score = disc_round(drawing, own, start->at, end->facing, first, &beside);
            if (score < best) {
                best = score;
                *chosen = beside;
            }
        }
        return best;
    }
    if (stroke->ink_count < 2) {
        struct vec2 about = end ? vec2_mix(start->at, end->at, 0.5) : start->at;
        return disc_round(drawing, own, about, vec2_of(0, -1), 1.2 * size->order, chosen);
    }
    double length = path_length(&stroke->path);
    if (length > SHORT_LINE * size->order) {
        return LEFT_OUT;
    }
    return disc_round(drawing, own, path_point(&stroke->path, length / 2),
                      path_direction(&stroke->path, length / 2), 1.6 * size->order, chosen);
}

/* A part of no length lends itself a disc's width of the line. */
static struct stroke_part part_widened(const struct stroke_part *part, double least)
{
    struct stroke_part wide = *part;
    double lacks = (least - (part->to - part->from)) / 2;
    if (lacks > 0) {
        wide.from = real_clamp(part->from - lacks, 0, real_max(0, 1 - least));
        wide.to = real_min(1, wide.from + least);
    }
    return wide;
}

/* The best place for a part's disc; what it costs. */
static double disc_find(const struct drawing *drawing, size_t index, const struct stroke_part *part,
                        struct candidate *chosen)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    const struct sizes *size = &drawing->size;
    double best = LEFT_OUT;
    if (stroke->ink_count >= 2) {
        double whole = path_length(&stroke->path) - (stroke->head ? size->head_length : 0);
        double length = (part->to - part->from) * whole;
        bool may_lie_on = whole > 4.2 * size->order && length > 2.4 * size->order &&
                          stroke->class != CLASS_HANDOFF;
        /* on the line; at either side; for a line too short for that, a little further off */
        struct looking how = {may_lie_on, false, may_lie_on ? 2 : 6};
        best = disc_search(drawing, index, part, how, chosen);
        if (best >= LEFT_OUT) {
            struct stroke_part wide = part_widened(part, 5 * size->order / whole);
            how = (struct looking){whole > 4.2 * size->order && stroke->class != CLASS_HANDOFF,
                                   true, 10};
            best = disc_search(drawing, index, &wide, how, chosen);
        }
    }
    return best >= LEFT_OUT ? disc_near(drawing, stroke, chosen) : best;
}

/* The discs of one line, one part after another or the other way round; what they cost. */
static double discs_of(struct drawing *drawing, size_t index, bool backward)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    double sum = 0;
    for (size_t i = 0; i < stroke->parts; i++) {
        const struct stroke_part *part = &stroke->part[backward ? stroke->parts - 1 - i : i];
        if (part->order <= 0) {
            continue;
        }
        struct candidate chosen = {0};
        double cost = disc_find(drawing, index, part, &chosen);
        sum += cost;
        if (cost >= left_out(drawing)) {
            drawing->scene->labels_left_out++;
            continue;
        }
        drawing->scene->labels_beside += chosen.on ? 0 : 1;
        VEC_PUSH(drawing->arena, &drawing->discs,
                 ((struct disc){chosen.at, part->order, part->task, (int)index, stroke->who}));
    }
    return sum;
}

/* Takes the last discs off again, to so many of each kind. */
static void discs_off(struct drawing *drawing, size_t discs, int beside, int missing)
{
    drawing->discs.count = discs;
    drawing->scene->labels_beside = beside;
    drawing->scene->labels_left_out = missing;
}

/* The discs of a line of several sentences stand where all together they stand best. */
static void discs_line(struct drawing *drawing, size_t index)
{
    size_t before = drawing->discs.count;
    int beside = drawing->scene->labels_beside, missing = drawing->scene->labels_left_out;
    double forward = discs_of(drawing, index, false);
    if (drawing->strokes.at[index].parts < 2 || forward < GOOD) {
        return;
    }
    discs_off(drawing, before, beside, missing);
    if (discs_of(drawing, index, true) > forward) {
        discs_off(drawing, before, beside, missing);
        (void)discs_of(drawing, index, false);
    }
}

/* Does any line carry the number of this sentence? */
static bool has_line(const struct drawing *drawing, int order)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        for (size_t p = 0; p < drawing->strokes.at[i].parts; p++) {
            if (drawing->strokes.at[i].part[p].order == order) {
                return true;
            }
        }
    }
    return false;
}

/* The line on which a player goes on at once from a step too small to be drawn, or SIZE_MAX. */
static size_t goes_on_by(const struct drawing *drawing, const struct task *task, double started)
{
    bool moves = task->kind == TASK_SCREEN || task->kind == TASK_MOVE || task->kind == TASK_CARRY;
    for (size_t i = 0; moves && i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->who == task->who && !stroke_is_throw(stroke) && !stroke->standing &&
            stroke->ink_count > 1 && drawing->stops.at[stroke->start].kind == STOP_SYMBOL &&
            stroke->began >= started - 0.1 && stroke->began <= started + GOES_ON) {
            return i;
        }
    }
    return SIZE_MAX;
}

/* The number of a step too small to be drawn, of a screen that is slipped at once, stands on the
 * beginning of the line by which its player goes on. */
static void parts_begin(struct drawing *drawing)
{
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(drawing->segment, i);
        double started = task_start(drawing->segment, i);
        if (task->order <= 0 || started < 0 || has_line(drawing, task->order)) {
            continue;
        }
        size_t line = goes_on_by(drawing, task, started);
        struct stroke *stroke = line == SIZE_MAX ? NULL : &drawing->strokes.at[line];
        if (stroke && stroke->parts < STROKE_PARTS) {
            memmove(&stroke->part[1], stroke->part, stroke->parts * sizeof *stroke->part);
            stroke->parts++;
            stroke->part[0] = (struct stroke_part){(int)i, task->order, 0, BEGINS};
            stroke->part[1].from = real_max(stroke->part[1].from, BEGINS);
            stroke->part[1].to = real_max(stroke->part[1].to, BEGINS);
        }
    }
}

/* A fake, a wait, a step too small to be drawn: the number stands beside the player. */
static void disc_beside(struct drawing *drawing, size_t index)
{
    const struct task *task = segment_task(drawing->segment, index);
    double started = task_start(drawing->segment, index);
    if (task->order <= 0 || started < 0 || has_line(drawing, task->order)) {
        return;
    }
    int stop = stop_at(drawing, task->who, started);
    const struct symbol *symbol = symbol_of(drawing, task->who);
    if (stop < 0 && !symbol) {
        return;
    }
    const struct stop *at = stop < 0 ? NULL : &drawing->stops.at[stop];
    double radius = at ? stop_radius(drawing, at) : symbol->radius;
    struct candidate chosen = {0};
    double first = radius + drawing->size.order + 0.4 * drawing->size.k;
    double score =
        disc_round(drawing, SIZE_MAX, at ? at->at : symbol->at, vec2_of(0, -1), first, &chosen);
    if (score >= left_out(drawing)) {
        drawing->scene->labels_left_out++;
        return;
    }
    drawing->scene->labels_beside++;
    VEC_PUSH(drawing->arena, &drawing->discs,
             ((struct disc){chosen.at, task->order, (int)index, -1, task->who}));
}

/* On a small picture all stand or none: numbers that jump are read as a page that lacks something.
 * The first to go there, as the sentences keep theirs. */
static void small_discs(struct drawing *drawing)
{
    if (drawing->size.small && drawing->scene->labels_left_out > 0) {
        discs_off(drawing, 0, 0, 0);
    }
}

void discs_place(struct drawing *drawing)
{
    if (drawing->options->plain || drawing->options->beads) {
        return;
    }
    parts_begin(drawing);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        discs_line(drawing, i);
    }
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        disc_beside(drawing, i);
    }
    small_discs(drawing);
}

static void tag(struct scene_item *item, const struct disc *disc)
{
    item->task = disc->task;
    item->line = disc->line;
    item->who = disc->who;
}

void discs_draw(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->discs.count; i++) {
        const struct disc *disc = &drawing->discs.at[i];
        struct scene_item *item = put_circle(drawing, CLASS_ORDER, disc->at, disc_white(size),
                                             ground_at(drawing, disc->at), ROLE_NONE, 0);
        item->casing = true;
        tag(item, disc);
        bool own = disc->who == drawing->options->accent;
        item = put_circle(drawing, CLASS_ORDER, disc->at, size->order,
                          own ? ROLE_ACCENT : ROLE_ORDER, ROLE_NONE, 0);
        tag(item, disc);
        double narrow = disc->order > 9 ? 0.86 : 1;
        item = put_text(drawing, CLASS_ORDER, str_format(drawing->arena, "%d", disc->order),
                        disc->at, real_max(8.0 * narrow, size->order_numeral * narrow),
                        FACE_SEMIBOLD, ROLE_ORDER_TEXT);
        tag(item, disc);
    }
}
