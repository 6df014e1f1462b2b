/* SPDX-License-Identifier: MIT */
/* standing: where a screener's numeral is drawn who is at his bar already: behind it, where it
 * hides nothing and where nobody else's line, ring or shot could be taken for his; and the bar of a
 * screen that stands as the diagram begins. */
#include "picture/scene/again.h"

#include <math.h>

#define BEHIND_FEET 4.2          /* of the numeral behind the bar, as a rule, */
#define NEAR_FEET 2.4            /* and at the least */
#define FAR_FEET 5.4             /* and at the most */
#define STEM 2.5                 /* least points of line between bar and numeral */
#define STILL_THERE 0.6          /* metres */
#define FAN (70 * REAL_PI / 180) /* so far round the bar at the most */
#define SHOT_ROOM_FEET 2.2       /* between a numeral and where another's shot starts (ours) */
#define ITS_WAY 0.8              /* of a pass to who stands there keeps off his numeral (ours) */
#define TIGHTER 1.5              /* of cost a foot (ours) */
#define TAKEN 0.5                /* of the cost of what is there: by how much more at this size */
#define ASKEW 8.0                /* of cost a radian beyond BAR_OBLIQUE: it looks like a Y */
#define SEEN_FEET 3.4            /* behind his bar: nearer, the stem is a stub, */
#define STUB 1.5                 /* of cost a foot (ours) */
#define TURNED_BY 1.0            /* s after which it is seen which way a screener goes on */
#define BESIDE_STEM (40 * REAL_PI / 180) /* from the stem: a line so near lies beside it (ours) */
#define FORWARD 0.6                      /* cosine of his way to the bar's facing */
enum { FAN_TURNS = 7, FAN_RINGS = 4 };   /* places to each side and at how many distances */

/* What a place behind a bar is weighed against. */
struct behind {
    const struct drawing *drawing;
    const struct stop *bar;
    body who;
    double radius;
};

/* How deep a circle of that radius is inside the room round a segment, feet. */
static double depth_at(const struct behind *behind, struct vec2 at, struct vec2 a, struct vec2 b,
                       double room)
{
    double k = behind->drawing->size.k;
    double far = segment_distance(at, a, b, NULL);
    return real_max(0, behind->radius + room - far) / k;
}

static double marks_cost(const struct behind *behind, struct vec2 at)
{
    const struct drawing *drawing = behind->drawing;
    const struct sizes *size = &drawing->size;
    double cost = 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who != behind->who && !body_is_defender(symbol->who)) {
            cost += 40 * depth_at(behind, at, symbol->at, symbol->at, symbol->radius + size->gap);
        }
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        double room = size->end + 2 * size->gap;
        if (stop->kind == STOP_RING && stop->who != behind->who) {
            cost += 40 * depth_at(behind, at, stop->at, stop->at, room);
        } else if (stop->kind == STOP_RING) { /* his own line is long enough to be seen */
            room += 1.6 * size->head_length;
            cost += 10 * depth_at(behind, at, stop->at, stop->at, room);
        }
    }
    struct vec2 a, b;
    bar_ends(drawing, behind->bar, &a, &b);
    cost += 40 * depth_at(behind, at, a, b, size->bar_stroke / 2 + size->gap);
    struct basket_marks basket = basket_marks(drawing, false);
    double line = size->line + 2 * size->gap; /* who uses the screen comes between */
    cost += 40 * depth_at(behind, at, basket.ring, basket.ring, size->basket + line);
    cost += 40 * depth_at(behind, at, basket.left, basket.right, size->board / 2 + line);
    struct vec2 inside = frame_keep(&drawing->frame, at, behind->radius + 0.5);
    return cost + 40 * vec2_distance(at, inside) / size->k;
}

/* The ways of the others, as they run: over the numeral, or between it and its bar. */
static double ways_cost(const struct behind *behind, struct vec2 at)
{
    const struct drawing *drawing = behind->drawing;
    double cost = 0, room = drawing->size.gap;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->who == behind->who || stroke->standing || body_is_defender(stroke->who)) {
            continue;
        }
        double deepest = 0;
        bool between = false;
        struct vec2 last =
            frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, stroke->began));
        for (double t = stroke->began + RUN_SAMPLE; t <= stroke->ended; t += 2 * RUN_SAMPLE) {
            struct vec2 next =
                frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, t));
            double s, u;
            deepest = real_max(deepest, depth_at(behind, at, last, next, room));
            between = between || segment_cross(last, next, at, behind->bar->at, &s, &u);
            last = next;
        }
        /* who comes between goes round the numeral: the nearer it is, the tighter his curl */
        double behind_feet = vec2_distance(at, behind->bar->at) / drawing->size.k;
        cost += 8 * deepest + (between ? 4 + TIGHTER * (behind_feet - NEAR_FEET) : 0);
    }
    return cost;
}

/* Where a shot will be drawn to start: after a short dribble a little further on. */
static struct vec2 shot_start(const struct drawing *drawing, body who, struct vec2 metres)
{
    struct vec2 from = frame_point(&drawing->frame, metres);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who == who && symbol->ball &&
            vec2_distance(symbol->at, from) > symbol->radius) {
            double least = way_least(drawing, symbol->radius, true);
            return vec2_add(from, push_off(from, symbol->at, least, vec2_of(1, 0)));
        }
    }
    return from;
}

/* Passes and shots of the others: a shot that starts beside a numeral looks like that player's. */
static double throws_cost(const struct behind *behind, struct vec2 at)
{
    const struct drawing *drawing = behind->drawing;
    const struct frame *frame = &drawing->frame;
    double cost = 0, k = drawing->size.k;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(drawing->segment, i);
        const struct task_record *record = &drawing->segment->record[i];
        bool shoots = task->kind == TASK_SHOOT;
        if ((!shoots && task->kind != TASK_PASS) || record->time[MOMENT_RELEASED] < 0 ||
            task->who == behind->who) {
            continue;
        }
        struct vec2 from = shoots ? shot_start(drawing, task->who, record->from)
                                  : frame_point(frame, record->from);
        struct vec2 to = frame_point(frame, shoots ? vec2_of(0, 0) : record->to);
        double room = drawing->size.gap + (shoots ? 0.6 * k : 0);
        if (!shoots && task->other == behind->who) { /* it ends at a ring of his own */
            to = vec2_mix(from, to, ITS_WAY);
        }
        cost += (shoots ? 12 : 6) * depth_at(behind, at, from, to, room);
        cost += shoots ? 12 * depth_at(behind, at, from, from, SHOT_ROOM_FEET * k) : 0;
    }
    return cost;
}

/* The same with marks as large for the floor as on a card, so that all sizes are decided alike. */
static struct drawing as_card(const struct drawing *drawing)
{
    struct drawing card = *drawing;
    size_t count = drawing->symbols.count;
    card.size = sizes_as_card(drawing->size.k);
    card.symbols.at = arena_array(drawing->arena, struct symbol, count);
    for (size_t i = 0; i < count; i++) {
        struct symbol *symbol = &card.symbols.at[i];
        *symbol = drawing->symbols.at[i];
        symbol->radius *= card.size.body / drawing->size.body;
    }
    return card;
}

struct vec2 place_behind(const struct drawing *drawing, const struct stop *bar, body who,
                         double radius)
{
    struct drawing card = as_card(drawing);
    double grow = card.size.body / drawing->size.body;
    const struct behind here = {drawing, bar, who, radius};
    const struct behind behind = {&card, bar, who, radius * grow};
    double k = drawing->size.k, least = radius + drawing->size.gap + STEM, best = 1e9;
    struct vec2 back = vec2_scale(bar->facing, -1), chosen = bar->at;
    for (int ring = 0; ring < FAN_RINGS; ring++) {
        double feet = NEAR_FEET + (FAR_FEET - NEAR_FEET) * ring / (FAN_RINGS - 1);
        double far = real_max(feet * k, least);
        for (int turn = -FAN_TURNS; turn <= FAN_TURNS; turn++) {
            double angle = FAN * turn / FAN_TURNS;
            struct vec2 at = vec2_along(bar->at, vec2_turn(back, angle), far);
            double cost = 7 * (1 - real_cos(angle)) + 0.35 * fabs(far / k - BEHIND_FEET);
            cost += ASKEW * real_max(0, fabs(angle) - BAR_OBLIQUE);
            cost += STUB * real_max(0, SEEN_FEET - far / k);
            cost += marks_cost(&behind, at);
            cost += cost < best ? TAKEN * marks_cost(&here, at) : 0;
            cost += cost < best ? ways_cost(&behind, at) : 0;
            cost += cost < best ? throws_cost(&behind, at) : 0;
            if (cost < best - 1e-6) {
                best = cost;
                chosen = at;
            }
        }
    }
    return vec2_add(chosen, nudge_of(drawing, who, -1));
}

/* Does anybody run off this screen in the step? One that is not used any more says nothing. */
static bool is_used(const struct segment *segment, body screener)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->kind == TASK_USE && (task->other == screener || task->other2 == screener)) {
            return true;
        }
    }
    return false;
}

static bool stands_there(const struct segment *segment, size_t index, double time)
{
    const struct task_record *record = &segment->record[index];
    const struct task *task = segment_task(segment, index);
    double set = record->time[MOMENT_SET], used = record->time[MOMENT_USED];
    return task->kind == TASK_SCREEN && set >= 0 && set <= time + 0.1 &&
           (used < 0 || used >= time - 0.1) &&
           vec2_distance(segment_at(segment, task->who, time), record->to) <= STILL_THERE;
}

/* Would his line lie beside the short one from his numeral to his bar, and end beyond it? */
static bool is_along_stem(const struct drawing *drawing, const struct stop *screen,
                          const struct stop *end)
{
    struct vec2 from = symbol_of(drawing, screen->who)->at;
    struct vec2 stem = vec2_sub(screen->at, from), goes = vec2_sub(end->at, from);
    return end->kind == STOP_RING && vec2_angle(stem, goes) < BESIDE_STEM &&
           vec2_length(goes) > vec2_length(stem);
}

/* Whoever goes on past the front of his own bar leaves from it: his line beside the short one from
 * his numeral to the bar, or through the bar, would be read as something else. */
static void leaves_forward(struct drawing *drawing, int from, int bar)
{
    const struct stop *screen = &drawing->stops.at[bar];
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->start != from || stroke->standing || stroke_is_throw(stroke)) {
            continue;
        }
        double when = real_min(stroke->ended, stroke->began + TURNED_BY);
        struct vec2 to =
            frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, when));
        struct vec2 goes = vec2_sub(to, screen->at);
        const struct stop *end = &drawing->stops.at[stroke->end];
        double least = drawing->size.bar / 2 + way_least(drawing, drawing->size.gap, false);
        bool forward = vec2_dot(screen->facing, goes) > FORWARD * vec2_length(goes) &&
                       vec2_distance(end->at, screen->at) > least;
        if (forward || is_along_stem(drawing, screen, end)) {
            stroke->start = bar;
        }
    }
}

/* A screen that already stands as the diagram begins: its bar, and the screener a little behind
 * with the short end of the line between, for a bar alone beside a numeral reads as a slip of the
 * pen. */
static void standing_bar(struct drawing *drawing, const struct segment *segment, size_t index,
                         double time)
{
    const struct task_record *record = &segment->record[index];
    const struct task *task = segment_task(segment, index);
    struct symbol *symbol = symbol_of(drawing, task->who);
    if (!symbol || !stands_there(segment, index, time)) {
        return;
    }
    struct stop bar = {
        .kind = STOP_BAR, .who = task->who, .from = -2, .to = -1, .truth = record->to};
    bar.at = frame_point(&drawing->frame, record->to);
    bar.facing = frame_direction(&drawing->frame, record->facing);
    symbol->at = frame_keep(&drawing->frame, place_behind(drawing, &bar, task->who, symbol->radius),
                            symbol->radius + 0.5);
    drawing->stops.at[stop_at(drawing, task->who, drawing->scope.start)].at = symbol->at;
    bool here = segment == drawing->segment;
    bar_tilt(drawing, &bar, symbol->at, here ? (int)index : -1);
    struct stroke *stroke = stroke_new(drawing, CLASS_SCREEN, task->who);
    stroke->head = false;
    stroke->standing = true;
    stroke->part[0].task = here ? (int)index : -1;
    int stands = stop_at(drawing, task->who, drawing->scope.start);
    int end = stop_add(drawing, bar);
    stroke->start = stands;
    stroke->end = end;
    leaves_forward(drawing, stands, end);
}

void standing_bars(struct drawing *drawing)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = 0; i < drawing->scope.first; i++) {
        standing_bar(drawing, segment, i, drawing->scope.start);
    }
    const struct segment *before = segment->before;
    for (size_t i = 0; before && drawing->scope.start <= 0 && i < before->tasks; i++) {
        if (before->record[i].time[MOMENT_USED] < 0 &&
            is_used(segment, segment_task(before, i)->who)) {
            standing_bar(drawing, before, i, before->duration);
        }
    }
}
