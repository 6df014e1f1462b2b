/* SPDX-License-Identifier: MIT */
/* chain: who goes from where to where. Each player's drawn tasks become strokes that lead from stop
 * to stop; sentences that run through into one another become one stroke. Shapes come later
 * (trace). */
#include "picture/scene/drawing.h"

#include <math.h>

#define LEAST_MOVE 0.4   /* metres: less is not drawn, the player just stands a little off */
#define COMES 1.0        /* metres: who takes a hand-off from so near just reaches for it (ours) */
#define THROWN_AFTER 0.2 /* seconds: he may throw as he stops */
#define RUN_ON 0.30      /* seconds between two moves that make one line */
#define RIM_FEET 6.0 /* no end ring so near the basket: a run to the rim ends 3 to 5.5 ft off. */
/* With rings from 3 ft on, looked at, heads and lines lie on them in the crowd before it (ours). */
#define THROWN_FEET 4.5  /* but from so far off who dribbled there and throws has one */
#define PAST_FEET 6.2    /* who ends further past the basket did not run to the rim */
#define LITTLE_STEPS 0.7 /* metres */
#define HOME 0.9         /* metres: who ends so near to where he began came back (ours) */
#define HIDDEN 1.0       /* metres: there and back so near is within his numeral (ours) */
#define NEVER_LEAVES 1e9

/* One drawn movement of one player. */
struct move {
    size_t task;
    double start, end;
    bool ball, screen;
};
typedef VEC(struct move) move_list;

double rim_distance(const struct drawing *drawing, struct vec2 metres)
{
    struct vec2 far = vec2_of(0, 2 * drawing->frame.court->half_court);
    return real_min(vec2_length(metres), vec2_distance(metres, far)) / FEET;
}

static bool moves(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE ||
           task->kind == TASK_SCREEN || task->kind == TASK_GUARD;
}

/* How far the player runs between two times, metres. */
static double run_length(const struct segment *segment, body who, double from, double to)
{
    double length = 0;
    struct vec2 last = segment_at(segment, who, from);
    for (double t = from + RUN_SAMPLE; t < to + RUN_SAMPLE; t += RUN_SAMPLE) {
        struct vec2 at = segment_at(segment, who, real_min(t, to));
        length += vec2_distance(last, at);
        last = at;
    }
    return length;
}

/* Does he come back at once from a step that his own numeral would hide? */
static bool hardly_leaves(const struct segment *segment, body who, double from, double to)
{
    struct vec2 home = segment_at(segment, who, from);
    double reach = 0;
    for (double t = from; t < to; t += RUN_SAMPLE) {
        reach = real_max(reach, vec2_distance(home, segment_at(segment, who, t)));
    }
    return reach < HIDDEN && vec2_near(home, segment_at(segment, who, to), LEAST_MOVE);
}

static bool holds_ball(const struct segment *segment, body who, double from, double to)
{
    return segment_holder(segment, from + 0.02) == who &&
           segment_holder(segment, real_mix(from, to, 0.5)) == who;
}

/* Is the player found again, without having caught or shot the ball, as the next step begins? */
static bool goes_on(const struct drawing *drawing, body who, double time)
{
    const struct segment *segment = drawing->segment;
    if ((size_t)drawing->diagram->step + 1 >= segment->play->steps.count) {
        return false;
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool later = task->who == who && moves(task) && task_start(segment, i) >= time - 0.05;
        bool catches = task->kind == TASK_PASS && task->other == who &&
                       segment->record[i].time[MOMENT_CAUGHT] > time - 1;
        if (later || catches || (task->kind == TASK_SHOOT && task->who == who)) {
            return false;
        }
    }
    return true;
}

/* A run to the rim that went well past it is drawn to where it ended. */
static void past_rim(const struct drawing *drawing, body who, struct move *last)
{
    const struct segment *segment = drawing->segment;
    if (!last->screen && goes_on(drawing, who, last->end) &&
        rim_distance(drawing, segment_at(segment, who, last->end)) < RIM_FEET &&
        rim_distance(drawing, segment_at(segment, who, segment->duration)) > PAST_FEET) {
        last->end = segment->duration;
    }
}

/* Where the ring of a player's last line stands: where he is found as the next step begins, for
 * small steps after the line are not drawn. */
static struct vec2 last_place(const struct drawing *drawing, body who, double time,
                              struct vec2 truth)
{
    const struct segment *segment = drawing->segment;
    if (!goes_on(drawing, who, time)) {
        return truth;
    }
    struct vec2 end = segment_at(segment, who, segment->duration);
    return vec2_distance(end, truth) < LITTLE_STEPS ? end : truth;
}

/* A defender who only shows himself and goes back: his line is the way out. */
static bool goes_back(const struct segment *segment, size_t task)
{
    return segment_task(segment, task)->kind == TASK_GUARD && segment->record[task].has_corner;
}

static double out_end(const struct segment *segment, size_t task, double start, double end)
{
    const struct task_record *record = &segment->record[task];
    double best = end, least = 1e9;
    for (double t = start; t <= end; t += RUN_SAMPLE) {
        double off =
            vec2_distance(segment_at(segment, segment_task(segment, task)->who, t), record->corner);
        if (off < least) {
            least = off;
            best = t;
        }
    }
    return best;
}

static void move_add(struct drawing *drawing, move_list *list, struct move move)
{
    size_t at = list->count;
    VEC_PUSH(drawing->arena, list, move);
    for (; at > 0 && list->at[at - 1].start > move.start; at--) {
        list->at[at] = list->at[at - 1];
        list->at[at - 1] = move;
    }
}

/* Who takes a hand-off comes to it, though no sentence may say so: from where his own moves before
 * it end. */
static void comes_to_handoffs(struct drawing *drawing, body who, move_list *list)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        double caught = segment->record[i].time[MOMENT_CAUGHT], from = task_start(segment, i);
        if (task->kind != TASK_EXCHANGE || task->other != who || from < 0 || caught < 0) {
            continue;
        }
        for (size_t m = 0; m < list->count; m++) {
            bool before = list->at[m].start < caught;
            from = before ? real_max(from, list->at[m].end) : from;
        }
        if (from < caught && run_length(segment, who, from, caught) >= COMES) {
            move_add(drawing, list, (struct move){i, from, caught, false, false});
        }
    }
}

/* Does he only go as if to screen, and slip? However small the step, his line begins with it. */
static bool is_slipped(const struct segment *segment, const move_list *list, size_t index)
{
    return index + 1 < list->count && is_feint(segment, (int)list->at[index].task) &&
           segment_task(segment, list->at[index + 1].task)->slip;
}

/* Who traps goes on with the dribble that he meets: where it ends the trap is. */
static double trap_end(const struct drawing *drawing, size_t trap, double end)
{
    const struct segment *segment = drawing->segment;
    enum verb verb = segment_task(segment, trap)->verb;
    if (verb != VERB_TRAPS && verb != VERB_DOUBLES) {
        return end;
    }
    double met = end;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        double start = task_start(segment, i);
        if (segment_task(segment, i)->kind == TASK_CARRY && start >= 0 && start <= met) {
            end = real_max(end, task_end(segment, i));
        }
    }
    return end;
}

static void moves_of(struct drawing *drawing, body who, move_list *list)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        double start = task_start(segment, i);
        if (task->who != who || !moves(task) || start < 0) {
            continue;
        }
        double end = task_end(segment, i);
        end = goes_back(segment, i) ? out_end(segment, i, start, end) : trap_end(drawing, i, end);
        move_add(drawing, list, (struct move){i, start, end, false, task->kind == TASK_SCREEN});
    }
    comes_to_handoffs(drawing, who, list);
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++) {
        struct move move = list->at[i];
        if (i + 1 < list->count) {
            move.end = real_min(move.end, list->at[i + 1].start);
        }
        bool set = move.screen && segment->record[move.task].time[MOMENT_SET] >= 0;
        bool seen = run_length(segment, who, move.start, move.end) >= LEAST_MOVE &&
                    !hardly_leaves(segment, who, move.start, move.end);
        if (set || seen || is_slipped(segment, list, i)) {
            move.ball = segment_task(segment, move.task)->kind == TASK_CARRY ||
                        holds_ball(segment, who, move.start, move.end);
            list->at[kept++] = move;
        }
    }
    list->count = kept;
    if (kept > 0) {
        past_rim(drawing, who, &list->at[kept - 1]);
    }
}

/* Does the ball come to or leave this player between the two times? */
static bool ball_between(const struct segment *segment, body who, double from, double to)
{
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        bool his = span->holder == who || span->target == who;
        if (!his) {
            continue;
        }
        bool comes = i > 0 && span->state == BALL_HELD && span->holder == who &&
                     span->from >= from && span->from <= to;
        bool goes = span->state != BALL_HELD && span->holder == who && span->from >= from &&
                    span->from <= to;
        if (comes || goes) {
            return true;
        }
    }
    return false;
}

static bool runs_on(const struct drawing *drawing, body who, const struct move *a,
                    const struct move *b)
{
    const struct segment *segment = drawing->segment;
    bool was_set = a->screen && segment->record[a->task].time[MOMENT_SET] >= 0;
    if (was_set || a->ball != b->ball || (b->screen && a->ball)) {
        return false;
    }
    if (ball_between(segment, who, a->end - 0.15, b->start + 0.15)) {
        return false;
    }
    bool setup = segment_task(segment, a->task)->shape == SHAPE_SETUP;
    return setup || b->start - a->end <= RUN_ON;
}

bool class_is_throw(enum scene_class class)
{
    return class == CLASS_PASS || class == CLASS_SHOT || class == CLASS_HANDOFF;
}

bool stroke_is_throw(const struct stroke *stroke)
{
    return class_is_throw(stroke->class);
}

bool handoff_middle(const struct stroke *stroke, struct vec2 *middle)
{
    if (stroke->class != CLASS_HANDOFF || stroke->trail.count != 2) {
        return false;
    }
    *middle = vec2_mix(stroke->trail.at[0], stroke->trail.at[1], 0.5);
    return true;
}

bool stroke_comes_home(const struct drawing *drawing, const struct stroke *stroke)
{
    return !stroke_is_throw(stroke) && stroke->start >= 0 && stroke->end >= 0 &&
           drawing->stops.at[stroke->start].kind == STOP_SYMBOL &&
           drawing->stops.at[stroke->end].kind == STOP_SYMBOL;
}

int stop_add(struct drawing *drawing, struct stop stop)
{
    VEC_PUSH(drawing->arena, &drawing->stops, stop);
    return (int)drawing->stops.count - 1;
}

/* Does he pass from where he dribbled to? Else the pass would start in the air. */
static bool is_thrown_from(const struct drawing *drawing, const struct move *last)
{
    const struct segment *segment = drawing->segment;
    for (size_t i = drawing->scope.first; last->ball && i < drawing->scope.end; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->kind == TASK_PASS && task->who == segment_task(segment, last->task)->who &&
            segment->record[i].time[MOMENT_RELEASED] > last->end - THROWN_AFTER) {
            return true;
        }
    }
    return false;
}

static enum stop_kind end_kind(const struct drawing *drawing, const struct move *last,
                               struct vec2 truth)
{
    if (last->screen && drawing->segment->record[last->task].time[MOMENT_SET] >= 0) {
        return STOP_BAR;
    }
    if (goes_back(drawing->segment, last->task)) { /* nobody finishes there */
        return STOP_RIM;
    }
    double near = is_thrown_from(drawing, last) ? THROWN_FEET : RIM_FEET;
    return rim_distance(drawing, truth) < near ? STOP_RIM : STOP_RING;
}

/* Where the bar stands and which way it looks, from what the run found. */
static void bar_place(struct drawing *drawing, size_t index, struct stop *stop)
{
    const struct task_record *record = &drawing->segment->record[index];
    const struct frame *frame = &drawing->frame;
    struct vec2 at = frame_point(frame, record->to), on = frame_point(frame, record->on);
    struct vec2 toward = vec2_sub(on, at);
    double far = vec2_length(toward), k = frame->k;
    stop->facing = frame_direction(frame, record->facing);
    if (record->defender == BODY_NONE || far < 0.2 * k || far > 6 * k) {
        stop->at = at;
        return;
    }
    struct vec2 unit = vec2_unit(toward);
    stop->at = vec2_along(on, unit, -real_clamp(far, 2.6 * k, 3.0 * k));
    if (vec2_dot(unit, stop->facing) < 0.5) { /* the X in front says it better than a turned body */
        stop->facing = segment_task(drawing->segment, index)->faces ? stop->facing : unit;
    }
}

static struct stop stop_of_end(struct drawing *drawing, body who, const struct move *last)
{
    struct vec2 truth = segment_at(drawing->segment, who, last->end);
    struct stop stop = {.kind = end_kind(drawing, last, truth),
                        .who = who,
                        .truth = truth,
                        .from = last->end,
                        .to = NEVER_LEAVES};
    struct vec2 place = body_is_defender(who) ? truth : last_place(drawing, who, last->end, truth);
    if (stop.kind == STOP_BAR) {
        bar_place(drawing, last->task, &stop);
    } else {
        stop.at = stop.kind == STOP_RIM ? frame_point(&drawing->frame, truth)
                                        : symbol_spot(drawing, place, false);
    }
    return stop;
}

static enum scene_class class_of(body who, const struct move *last)
{
    if (body_is_defender(who)) {
        return CLASS_DEFENSE_MOVE;
    }
    return last->screen ? CLASS_SCREEN : last->ball ? CLASS_DRIBBLE : CLASS_MOVE;
}

struct stroke *stroke_new(struct drawing *drawing, enum scene_class class, body who)
{
    struct stroke stroke = {.class = class,
                            .who = who,
                            .other = BODY_NONE,
                            .start = -1,
                            .end = -1,
                            .grow = 1,
                            .role = ROLE_INK,
                            .head = true,
                            .parts = 1,
                            .width = drawing->size.line};
    stroke.part[0] = (struct stroke_part){-1, 0, 0, 1};
    VEC_PUSH(drawing->arena, &drawing->strokes, stroke);
    return &drawing->strokes.at[drawing->strokes.count - 1];
}

struct stroke *stroke_add(struct drawing *drawing, enum scene_class class, body who, size_t task)
{
    struct stroke *stroke = stroke_new(drawing, class, who);
    stroke->part[0].task = (int)task;
    stroke->part[0].order = segment_task(drawing->segment, task)->order;
    return stroke;
}

/* Who comes back to where he stood has no ring beside his numeral: the line comes back to it. */
static void comes_home(const struct drawing *drawing, int start, struct stop *end)
{
    const struct stop *begin = &drawing->stops.at[start];
    if (begin->kind == STOP_SYMBOL && end->kind == STOP_RING && !body_is_defender(end->who) &&
        vec2_near(begin->truth, end->truth, HOME)) {
        end->kind = STOP_SYMBOL;
        end->at = begin->at;
    }
}

/* The number on a move's line: its sentence's; a run to a hand-off or a pass that no sentence tells
 * has the number of that. */
static int part_order(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    for (size_t i = index; task->order <= 0 && i < segment->tasks; i++) {
        const struct task *handoff = segment_task(segment, i);
        if (task_gives_ball_to(handoff, task->who)) {
            return handoff->order;
        }
    }
    return task->order;
}

/* The moves [first, end) as one stroke from stop `start`; returns the stop at its end. */
static int chain_stroke(struct drawing *drawing, body who, const struct move *first, size_t count,
                        int start)
{
    const struct move *last = &first[count - 1];
    struct stop stop = stop_of_end(drawing, who, last);
    if (run_length(drawing->segment, who, first->start, last->end) > 2 * HOME) {
        comes_home(drawing, start, &stop);
    }
    struct stroke *stroke = stroke_add(drawing, class_of(who, last), who, first->task);
    if (stop.kind == STOP_BAR) {
        stroke->head = false;
    } else if (stroke->class == CLASS_SCREEN) {
        stroke->class = CLASS_MOVE; /* it never came to a screen */
    }
    stroke->parts = 0;
    for (size_t i = 0; i < count; i++) {
        stroke->part[stroke->parts++] =
            (struct stroke_part){(int)first[i].task, part_order(drawing->segment, first[i].task),
                                 first[i].start, first[i].end};
    }
    stroke->began = first->start;
    stroke->ended = last->end;
    stroke->start = start;
    drawing->stops.at[start].to = first->start;
    drawing->stops.at[start].out = true;
    stroke->end = stop_add(drawing, stop);
    return stroke->end;
}

static void chain_of(struct drawing *drawing, const struct symbol *symbol)
{
    move_list list = {0};
    moves_of(drawing, symbol->who, &list);
    int stop = stop_add(drawing, (struct stop){.kind = STOP_SYMBOL,
                                               .who = symbol->who,
                                               .at = symbol->at,
                                               .truth = segment_at(drawing->segment, symbol->who,
                                                                   drawing->scope.start),
                                               .from = drawing->scope.start,
                                               .to = NEVER_LEAVES});
    for (size_t i = 0; i < list.count;) {
        size_t count = 1;
        while (i + count < list.count && count < STROKE_PARTS &&
               runs_on(drawing, symbol->who, &list.at[i + count - 1], &list.at[i + count])) {
            count++;
        }
        stop = chain_stroke(drawing, symbol->who, &list.at[i], count, stop);
        i += count;
    }
}

void chain_make(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        chain_of(drawing, &drawing->symbols.at[i]);
    }
    standing_bars(drawing);
    reads_make(drawing);
}

/* The stop where a player is at a time, or -1 while on the way between two. */
int stop_at(const struct drawing *drawing, body who, double time)
{
    int best = -1;
    double least = 0.45;
    struct vec2 truth = segment_at(drawing->segment, who, time);
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->who != who || stop->kind == STOP_FREE) {
            continue;
        }
        double off = time < stop->from ? stop->from - time : time > stop->to ? time - stop->to : 0;
        /* slow starts and stops: still there as long as he is within a long step */
        if (off > 0 && vec2_distance(truth, stop->truth) < 1.2 && off < 1.0) {
            off = real_min(off, 0.2 + 0.01 * off);
        }
        if (off < least ||
            (off == least && best >= 0 && stop->from > drawing->stops.at[best].from)) {
            least = off;
            best = (int)i;
        }
    }
    return best;
}
