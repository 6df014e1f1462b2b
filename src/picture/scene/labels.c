/* SPDX-License-Identifier: MIT */
/* labels: the order discs. Candidate places on and beside each line are scored by what they would
 * lie on; the least score wins, and a disc that finds no place is left out (the sentence under the
 * diagram keeps its own). */
#include "picture/scene/labels.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#define SMALL_LEFT_OUT 55.0 /* the same on a small picture, where there is little room for any, */
#define SMALL_LED 150.0     /* and where a thin line tells whose it is */

#define AWAY 6.0      /* of score for each round that it stands further off */
#define ASKEW 60.0    /* of score: its line runs under its edge */
#define PAST_END 40.0 /* of score */
#define WELL 40.0     /* of score: no better place need be looked for */
#define FURTHEST 1.75 /* radii: no disc is further off its own (ours) */
#define GOES_ON 1.5   /* s until the player's line begins */
#define BEGINS 0.5    /* of that line: where its beginning is */
#define AT_START 4.0  /* of score: the line comes out from under it */
#define GOOD 12.0     /* of cost for all discs of a line: no better need be looked for */
enum { SMALL_LEADERS = 2, CARD_LEADERS = 4 };
enum { FRACTIONS = 13, FINE = 31, ROUNDS = 6, STEPS = 8, TURNS = 3, ASKEWS = 10, STARTS = 3 };

/* The i-th fraction of a line's length to be tried: .50, .44, .56 ... .14, .86; a fine one goes on
 * in steps half as wide, to .05 and .95. */
static double fraction(int i, bool fine)
{
    int step = (i + 1) / 2;
    return 0.5 + (i % 2 ? -1 : 1) * step * (fine ? 0.03 : 0.06);
}

/* What a disc costs from which it is rather left out. */
static double left_out(const struct drawing *drawing, const struct candidate *place)
{
    double small = place->led ? SMALL_LED : SMALL_LEFT_OUT;
    return drawing->size.small ? small : LEFT_OUT;
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

/* Where and how hard a place for a part's disc is looked for. */
struct looking {
    bool may_lie_on, fine, tail;
    int sides; /* how many places beside each point of the line are tried, two at each distance */
    int askew; /* and how many on it, but to a side: it lies under the disc's edge */
};

static const struct choice nowhere = {.cost = LEFT_OUT};

/* A place on or beside a part's line that costs so much by itself is weighed against the best so
 * far. */
static void weigh(const struct drawing *drawing, size_t index, const struct candidate *place,
                  double cost, struct choice *best)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    double whole = path_length(&stroke->path) - (stroke->head ? drawing->size.head_length : 0);
    cost += on_line_score(drawing, stroke, place, whole);
    cost += score_of(drawing, index, place, best->cost - cost);
    if (cost < best->cost) {
        *best = (struct choice){*place, cost};
    }
}

/* On the line, or at either side of it, each time further off. */
static void try_sides(const struct drawing *drawing, size_t index, const struct candidate *middle,
                      struct vec2 square, struct looking how, struct choice *best)
{
    double beside = beside_of(drawing, &drawing->strokes.at[index]);
    if (middle->on) {
        weigh(drawing, index, middle, 0, best);
    }
    for (int side = 0; side < how.sides; side++) {
        int further = side / 2;
        double off = beside + 0.4 * drawing->size.order * further;
        struct candidate place = *middle;
        place.at = vec2_along(middle->at, square, side % 2 ? -off : off);
        place.on = false;
        weigh(drawing, index, &place, 5 * further, best);
    }
}

/* On the line, but to a side, where enough of it is seen. */
static void try_askew(const struct drawing *drawing, size_t index, const struct candidate *middle,
                      struct vec2 square, struct looking how, double whole, struct choice *best)
{
    double order = drawing->size.order;
    for (int step = 0; step < how.askew; step++) {
        int further = step / 2;
        double off = (0.3 + 0.23 * further) * order;
        struct candidate place = *middle;
        place.at = vec2_along(middle->at, square, step % 2 ? off : -off);
        place.on = off < order;
        if (disc_leaves_enough(drawing, &drawing->strokes.at[index], place.along, whole, true,
                               off)) {
            weigh(drawing, index, &place, ASKEW + 5 * further, best);
        }
    }
}

/* Where a short line begins, beside the numeral or the ring that it leaves: it comes out from under
 * the number in one piece. */
static void try_start(const struct drawing *drawing, size_t index, const struct stroke_part *part,
                      double whole, struct choice *best)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    const struct sizes *size = &drawing->size;
    enum stop_kind kind = drawing->stops.at[stroke->start].kind;
    for (int step = 0; step < STARTS; step++) {
        double along = size->order + 0.13 * size->k * step; /* nothing of it is seen before */
        bool fits = part->from <= 0.01 && part->to * whole > along + size->order;
        if (!fits || !stroke_is_solid(stroke->class) ||
            (kind != STOP_SYMBOL && kind != STOP_RING) ||
            !disc_leaves_enough(drawing, stroke, along, whole, true, 0)) {
            break;
        }
        struct candidate place = {
            .at = path_point(&stroke->path, along), .along = along, .fraction = 0.5, .on = true};
        weigh(drawing, index, &place, AT_START, best);
    }
}

/* The best place for a part's disc on its line or beside it. */
static struct choice disc_search(const struct drawing *drawing, size_t index,
                                 const struct stroke_part *part, struct looking how)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    double head = stroke->head ? drawing->size.head_length : 0;
    double whole = path_length(&stroke->path) - head;
    double from = part->from * whole, length = (part->to - part->from) * whole;
    struct choice best = nowhere;
    try_start(drawing, index, part, whole, &best);
    for (int f = 0; f < (how.fine ? FINE : FRACTIONS); f++) {
        double share = fraction(f, how.fine), along = from + share * length;
        struct candidate middle = {
            .at = path_point(&stroke->path, along), .along = along, .fraction = share};
        struct vec2 square = vec2_left(path_direction(&stroke->path, along));
        middle.on =
            how.may_lie_on && disc_leaves_enough(drawing, stroke, along, whole, how.tail, 0);
        try_sides(drawing, index, &middle, square, how, &best);
        try_askew(drawing, index, &middle, square, how, whole, &best);
    }
    return best;
}

/* The next place that way on which a disc is so far from its own. */
static struct vec2 place_off(const struct drawing *drawing, struct owner owner, struct vec2 about,
                             struct vec2 way, double off)
{
    double far = 0;
    struct vec2 at = about;
    for (int step = 0; step < STEPS; step++) {
        double lacks = off - own_distance(drawing, owner, at);
        if (lacks < 0.05 * drawing->size.k) {
            break;
        }
        far += lacks;
        at = vec2_along(about, way, far);
    }
    return at;
}

/* Beyond where the line begins or ends a number seems to be of what goes on from there. */
static bool is_past_end(const struct drawing *drawing, struct owner owner, struct vec2 at)
{
    const struct stroke *stroke = owner.line == SIZE_MAX ? NULL : &drawing->strokes.at[owner.line];
    if (!stroke || stroke->ink_count < 2) {
        return false;
    }
    double length = path_length(&stroke->path);
    struct vec2 start = vec2_sub(at, path_point(&stroke->path, 0));
    struct vec2 end = vec2_sub(at, path_point(&stroke->path, length));
    return vec2_dot(start, path_direction(&stroke->path, 0)) < -0.5 * vec2_length(start) ||
           vec2_dot(end, path_direction(&stroke->path, length)) > 0.5 * vec2_length(end);
}

/* Round about what it belongs to, as near as may be, and no further than somebody would look. */
static struct choice disc_round(const struct drawing *drawing, struct owner owner,
                                struct vec2 about, struct vec2 way)
{
    const struct sizes *size = &drawing->size;
    struct choice best = nowhere;
    bool shared = owner.line != SIZE_MAX && drawing->strokes.at[owner.line].parts > 1;
    for (int ring = 0; ring < ROUNDS; ring++) {
        double off = size->order + 0.3 * size->k + ring * FURTHEST * size->order / (ROUNDS - 1);
        for (int i = 0; i < 24; i++) {
            struct vec2 out = vec2_turn(way, i * REAL_PI / 12);
            struct candidate place = {.at = place_off(drawing, owner, about, out, off)};
            if (shared && vec2_distance(place.at, about) > off + FURTHEST * size->order) {
                continue; /* that way the line goes on for another sentence */
            }
            struct loose how = {false, best.cost - AWAY * ring};
            double score = loose_score(drawing, owner, place.at, size->order, how) + AWAY * ring;
            score += score < best.cost && is_past_end(drawing, owner, place.at) ? PAST_END : 0;
            if (score < best.cost) {
                best = (struct choice){place, score};
            }
        }
    }
    return best;
}

/* A line with no room on it or beside it, a bar, a line too short to be drawn: as near as may be,
 * about some places of it. */
static struct choice disc_near(const struct drawing *drawing, const struct stroke *stroke,
                               const struct stroke_part *part)
{
    static const double shares[] = {0.5, 0.25, 0.75, 0, 1};
    struct owner owner = {(size_t)(stroke - drawing->strokes.at), stroke->who};
    const struct stop *start = &drawing->stops.at[stroke->start];
    const struct stop *end = stroke->end >= 0 ? &drawing->stops.at[stroke->end] : NULL;
    struct vec2 from = start->at, to = end ? end->at : start->at;
    struct choice best = nowhere;
    for (size_t i = 0; i < sizeof shares / sizeof *shares && best.cost > WELL; i++) {
        bool drawn = stroke->ink_count > 1;
        double share = part->from + shares[i] * (part->to - part->from);
        struct vec2 about = drawn ? path_point(&stroke->path, share * path_length(&stroke->path))
                                  : vec2_mix(from, to, share);
        struct vec2 way = end && end->kind == STOP_BAR ? end->facing : vec2_of(0, -1);
        struct choice found = disc_round(drawing, owner, about, way);
        best = found.cost < best.cost ? found : best;
    }
    return best;
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

/* The best place for a part's disc. */
static struct choice disc_find(const struct drawing *drawing, size_t index,
                               const struct stroke_part *part)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    const struct sizes *size = &drawing->size;
    struct choice best = nowhere;
    if (stroke->ink_count >= 2) {
        double whole = path_length(&stroke->path) - (stroke->head ? size->head_length : 0);
        double length = (part->to - part->from) * whole;
        bool may_lie_on = whole > 4.2 * size->order && length > 2.4 * size->order &&
                          stroke->class != CLASS_HANDOFF;
        /* on the line; at either side; for a line too short for that, a little further off */
        struct looking how = {may_lie_on, false, false, may_lie_on ? 2 : 6, 0};
        best = disc_search(drawing, index, part, how);
        if (best.cost >= LEFT_OUT) {
            struct stroke_part wide = part_widened(part, 5 * size->order / whole);
            bool hands = stroke->class == CLASS_HANDOFF;
            how = (struct looking){!hands, true, true, 8, hands ? 0 : ASKEWS};
            best = disc_search(drawing, index, &wide, how);
        }
    }
    best = best.cost >= LEFT_OUT ? disc_near(drawing, stroke, part) : best;
    leader_to_line(drawing, index, part, &best);
    return best;
}

static struct disc disc_at(const struct choice *found, int order, int task, int line, body who)
{
    const struct candidate *place = &found->place;
    return (struct disc){place->at, order, task, line, who, place->led, place->tip};
}

/* There, or it is left out. */
static void disc_put(struct drawing *drawing, const struct choice *found, struct disc disc)
{
    if (found->cost >= left_out(drawing, &found->place)) {
        drawing->scene->labels_left_out++;
        drawing->scene->left_out |= disc.who < BODY_COUNT ? 1U << disc.who : 0;
        return;
    }
    drawing->scene->labels_beside += found->place.on ? 0 : 1;
    VEC_PUSH(drawing->arena, &drawing->discs, disc);
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
        struct choice found = disc_find(drawing, index, part);
        sum += found.cost;
        disc_put(drawing, &found,
                 disc_at(&found, part->order, part->task, (int)index, stroke->who));
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
    int stop = stop_at(drawing, task->who, task_start(drawing->segment, index));
    const struct symbol *symbol = symbol_of(drawing, task->who);
    if (stop < 0 && !symbol) {
        return;
    }
    struct vec2 about = stop < 0 ? symbol->at : drawing->stops.at[stop].at;
    struct owner owner = {SIZE_MAX, task->who};
    struct choice found = disc_round(drawing, owner, about, vec2_of(0, -1));
    leader_to_player(drawing, task->who, about, &found);
    disc_put(drawing, &found, disc_at(&found, task->order, (int)index, -1, task->who));
}

/* What has numbers: a line, or else a sentence without one. */
struct bearer {
    size_t line, task;
    bool missed;  /* one of its numbers found no place */
    bool presses; /* an X in its way steps aside */
};
typedef VEC(struct bearer) bearer_list;

static void bearers_find(struct drawing *drawing, bearer_list *bearers)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        VEC_PUSH(drawing->arena, bearers, ((struct bearer){.line = i}));
    }
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        int order = segment_task(drawing->segment, i)->order;
        if (order > 0 && task_start(drawing->segment, i) >= 0 && !has_line(drawing, order)) {
            VEC_PUSH(drawing->arena, bearers, ((struct bearer){.line = SIZE_MAX, .task = i}));
        }
    }
}

/* All numbers, in the order of the bearers; how many found no place. */
static int discs_all(struct drawing *drawing, bearer_list *bearers)
{
    discs_off(drawing, 0, 0, 0);
    drawing->scene->left_out = 0;
    for (size_t i = 0; i < bearers->count; i++) {
        struct bearer *bearer = &bearers->at[i];
        int missing = drawing->scene->labels_left_out;
        drawing->over_defenders = bearer->presses;
        if (bearer->line == SIZE_MAX) {
            disc_beside(drawing, bearer->task);
        } else {
            discs_line(drawing, bearer->line);
        }
        bearer->missed = drawing->scene->labels_left_out > missing;
    }
    drawing->over_defenders = false;
    return drawing->scene->labels_left_out;
}

/* Those that missed go first. */
static void bearers_sort(struct drawing *drawing, bearer_list *bearers)
{
    bearer_list sorted = {0};
    for (int missed = 1; missed >= 0; missed--) {
        for (size_t i = 0; i < bearers->count; i++) {
            if (bearers->at[i].missed == (missed == 1)) {
                VEC_PUSH(drawing->arena, &sorted, bearers->at[i]);
            }
        }
    }
    *bearers = sorted;
}

/* In the order in which most find a place; how many do not. */
static int discs_best(struct drawing *drawing, bearer_list *bearers)
{
    bearer_list best = *bearers;
    int missing = discs_all(drawing, bearers), least = missing;
    for (int turn = 0; turn < TURNS && missing > 0; turn++) {
        bearers_sort(drawing, bearers);
        missing = discs_all(drawing, bearers);
        if (missing < least) {
            least = missing;
            best = *bearers;
        }
    }
    *bearers = best;
    return missing > least ? discs_all(drawing, bearers) : missing;
}

/* Defenders give way where no disc is then missing that was not, and no numeral lost: those that
 * have places round about them move, or where they stand in the way of a number, the X itself. */
static void defenders_way(struct drawing *drawing, bearer_list *bearers, bool step_aside)
{
    struct symbol *before = arena_array(drawing->arena, struct symbol, drawing->symbols.count);
    int missing = drawing->scene->labels_left_out, lost = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        before[i] = drawing->symbols.at[i];
        drawing->symbols.at[i].has_numeral = false;
    }
    for (size_t i = 0; i < bearers->count; i++) {
        bearers->at[i].presses = step_aside && bearers->at[i].missed;
    }
    bool good = discs_all(drawing, bearers) < missing;
    good = good && (!step_aside || defenders_make_room(drawing));
    symbols_number(drawing);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        lost += before[i].has_numeral && !drawing->symbols.at[i].has_numeral ? 1 : 0;
    }
    if (good && lost == 0) {
        return;
    }
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        drawing->symbols.at[i] = before[i];
    }
    for (size_t i = 0; i < bearers->count; i++) {
        bearers->at[i].presses = false;
    }
    (void)discs_all(drawing, bearers);
}

static int discs_led(const struct drawing *drawing)
{
    int led = 0;
    for (size_t i = 0; i < drawing->discs.count; i++) {
        led += drawing->discs.at[i].led ? 1 : 0;
    }
    return led;
}

/* On a small picture all stand or none: numbers that jump are read as a page that lacks something,
 * and many thin lines as a web. The first to go there, as the sentences keep theirs; a card has
 * none, bears more, and is laid out again until all of its numbers stand. */
static void small_discs(struct drawing *drawing)
{
    bool card = drawing->options->order;
    int missing = drawing->scene->labels_left_out;
    bool web = discs_led(drawing) > (card ? CARD_LEADERS : SMALL_LEADERS);
    if (drawing->size.small && (missing > 0 || web)) {
        discs_off(drawing, 0, 0, card ? missing + web : 0);
    }
}

void discs_place(struct drawing *drawing)
{
    if ((drawing->options->plain && !drawing->options->order) || drawing->options->beads) {
        return;
    }
    bearer_list bearers = {0};
    parts_begin(drawing);
    bearers_find(drawing, &bearers);
    if (discs_best(drawing, &bearers) > 0) {
        defenders_way(drawing, &bearers, false);
    }
    if (drawing->scene->labels_left_out > 0) {
        defenders_way(drawing, &bearers, true);
    }
    small_discs(drawing);
}
