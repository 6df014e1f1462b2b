/* SPDX-License-Identifier: MIT */
/* reads: what a read looks at. Its defenders do it by rule, so no sentence draws it; without their
 * lines a hedge, a trap and a switch look alike. Takes the run's tracks; gives light lines of their
 * own, without a disc, from where the picture finds them to where the answer is given. */
#include "picture/scene/drawing.h"

#include <math.h>

#define LEAST 0.6     /* metres: who moves less stands (ours) */
#define LONGEST 4.0   /* metres of a line: by then it has been seen (ours) */
#define SHORT_OF 1.0  /* metres: he points at his new man, and does not run through him (ours) */
#define POINTS 3.0    /* metres of a line that only points to a place (ours) */
#define SHOWS 1.2     /* metres toward the ball: who steps out at it, however little of it is run */
#define SHOWS_TO 0.6  /* of the way to the ball at the most (ours) */
#define AT_SCREEN 0.5 /* s after its use: over or under it has been told by then (ours) */
#define SHOWN 0.8     /* s that are looked at where nobody answers with a throw or a cut (ours) */
#define CAME_BACK 0.75 /* of the way out: who is nearer than that again only showed himself */
enum { LINES = 7 };    /* in one picture, with those of the reads */

bool stroke_is_light(const struct stroke *stroke)
{
    return stroke->class == CLASS_DEFENSE_MOVE && stroke->part[0].task < 0;
}

body read_guard(const struct segment *segment, body man)
{
    const body *guards = segment->before ? segment->before->guards : segment->play->guards;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (guards[b] == man && segment->track[b].on_floor) {
            return (body)b;
        }
    }
    return BODY_NONE;
}

static body defender_of(const struct segment *segment, const struct who *who)
{
    if (who->kind == WHO_DEFENDER) {
        return body_defender(who->number);
    }
    bool man = who->kind == WHO_PLAYER || who->kind == WHO_DEFENDER_OF;
    return man ? read_guard(segment, body_attacker(who->number)) : (body)BODY_NONE;
}

/* When the screen of a cut is used by this time, or never. */
static double used_at(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    bool uses = task->kind == TASK_USE && task->screen_task >= 0;
    return uses ? segment->record[task->screen_task].time[MOMENT_USED] : TIME_NEVER;
}

static void sooner(double *first, double time, double start)
{
    if (time > start && (*first == TIME_NEVER || time < *first)) {
        *first = time;
    }
}

/* How a defender's deed is seen: as a place to stand in and not a way to go, as a way past a screen
 * that is used, as a step out at the ball, of two, as whom he ends up with, behind his man. */
enum {
    SEEN_STANDING = 1,
    SEEN_AT_SCREEN = 2,
    SEEN_AT_BALL = 4,
    SEEN_OF_TWO = 8,
    SEEN_AT_END = 16,
    SEEN_BEHIND = 32
};
static const unsigned char seen[VERB_COUNT + 1] = {
    [VERB_OVERPLAYS] = SEEN_STANDING,
    [VERB_DENIES] = SEEN_STANDING,
    [VERB_ICES] = SEEN_STANDING,
    [VERB_FRONTS] = SEEN_STANDING,
    [VERB_SAGS] = SEEN_STANDING,
    [VERB_STAYS] = SEEN_STANDING,
    [VERB_GOES_UNDER] = SEEN_AT_SCREEN,
    [VERB_GOES_OVER] = SEEN_AT_SCREEN,
    [VERB_TRAILS] = SEEN_AT_SCREEN | SEEN_BEHIND,
    [VERB_HEDGES] = SEEN_AT_BALL,
    [VERB_SWITCHES] = SEEN_AT_END,
    [VERB_TRAPS] = SEEN_AT_BALL | SEEN_OF_TWO,
    [VERB_DOUBLES] = SEEN_AT_BALL | SEEN_OF_TWO,
};

static bool is_seen(const struct condition *condition, int how)
{
    return (seen[condition->verb] & how) != 0;
}

/* Is it a place to stand in, and not a way to go? */
static bool is_stance(const struct condition *condition)
{
    return condition->kind == COND_OPEN || condition->kind == COND_COVERED ||
           condition->kind == COND_DENIED || is_seen(condition, SEEN_STANDING);
}

/* When the read has been answered: the ball is thrown or the cut off the screen is over; who only
 * stands somewhere is seen there as the answer begins. */
static double answered(const struct drawing *drawing, const struct condition *condition)
{
    const struct segment *segment = drawing->segment;
    double start = drawing->scope.start, first = TIME_NEVER;
    if (is_stance(condition)) {
        return answer_start(drawing->diagram);
    }
    bool at_screen = is_seen(condition, SEEN_AT_SCREEN);
    size_t own = step_task_count(&segment->play->steps.at[segment->step], -1);
    for (size_t i = own; i < segment->tasks; i++) {
        const double *time = segment->record[i].time;
        const struct task *task = segment_task(segment, i);
        if (task_is_throw(task)) {
            sooner(&first, time[MOMENT_RELEASED], start);
        } else if (task->kind == TASK_USE) {
            double used = used_at(segment, i);
            sooner(&first, time[MOMENT_ARRIVED], start);
            sooner(&first, at_screen && used >= 0 ? used + AT_SCREEN : TIME_NEVER, start);
        }
    }
    return first == TIME_NEVER ? real_min(segment->duration, start + SHOWN) : first;
}

/* How long the line gets by `to`, and no longer than it may: cuts `to` short. */
static double line_length(const struct segment *segment, body who, double from, double *to)
{
    double length = 0;
    struct vec2 last = segment_at(segment, who, from);
    for (double t = from + RUN_SAMPLE; t <= *to; t += RUN_SAMPLE) {
        struct vec2 at = segment_at(segment, who, t);
        length += vec2_distance(last, at);
        last = at;
        if (length > LONGEST) {
            *to = t;
        }
    }
    return length;
}

/* Who went out and came back only showed himself: his line is the way out. */
static double shown_until(const struct segment *segment, body who, double from, double to)
{
    struct vec2 home = segment_at(segment, who, from);
    double most = 0, out = from;
    for (double t = from; t <= to; t += RUN_SAMPLE) {
        double far = vec2_distance(home, segment_at(segment, who, t));
        if (far > most) {
            most = far;
            out = t;
        }
    }
    return vec2_distance(home, segment_at(segment, who, to)) < CAME_BACK * most ? out : to;
}

/* Has the coach written what he does? Then that is drawn. */
static bool has_line(const struct drawing *drawing, body who)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        if (drawing->strokes.at[i].who == who) {
            return true;
        }
    }
    return false;
}

/* An X that is drawn where a screen finds it leaves from there. */
static double leaves_at(const struct drawing *drawing, body who)
{
    double from = drawing->scope.start;
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task_record *record = &drawing->segment->record[i];
        if (segment_task(drawing->segment, i)->kind == TASK_SCREEN && record->defender == who) {
            from = real_max(from, record->time[MOMENT_SET]);
        }
    }
    return from;
}

/* A line of a defender's without a sentence, that ends without a ring: the next picture need not
 * find him there. */
static void light_add(struct drawing *drawing, body who, double from, double to, struct vec2 truth)
{
    struct stop end = {.kind = STOP_RIM,
                       .who = who,
                       .truth = truth,
                       .from = to,
                       .to = drawing->segment->duration,
                       .at = frame_point(&drawing->frame, truth)};
    struct stroke *stroke = stroke_new(drawing, CLASS_DEFENSE_MOVE, who);
    stroke->part[0] = (struct stroke_part){-1, 0, from, to};
    stroke->start = stop_at(drawing, who, drawing->scope.start);
    stroke->end = stop_add(drawing, end);
    stroke->began = from;
    stroke->ended = to;
    drawing->stops.at[stroke->start].to = from;
    drawing->stops.at[stroke->start].out = true;
}

/* Who steps out at the ball is seen to do so, however little of it is run before the answer: a
 * short straight line toward where the ball is. */
static void shows_add(struct drawing *drawing, body who, double from)
{
    const struct segment *segment = drawing->segment;
    body holder = segment_holder(segment, from);
    if (holder == BODY_NONE) {
        return;
    }
    struct vec2 at = segment_at(segment, who, from);
    struct vec2 off = vec2_sub(segment_at(segment, holder, from), at);
    double far = real_min(SHOWS, SHOWS_TO * vec2_length(off));
    light_add(drawing, who, from, from, vec2_along(at, vec2_unit(off), far));
}

/* When two who change men have done so: the cut is over, and the ball that is thrown first is
 * there. */
static double changed(const struct segment *segment, double start, double answered)
{
    double last = answered, caught = TIME_NEVER;
    size_t own = step_task_count(&segment->play->steps.at[segment->step], -1);
    for (size_t i = own; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const double *time = segment->record[i].time;
        if (task_is_throw(task)) {
            sooner(&caught, time[MOMENT_CAUGHT], start);
        } else if (task->kind == TASK_USE && time[MOMENT_ARRIVED] > last) {
            last = time[MOMENT_ARRIVED];
        }
    }
    return real_max(last, caught);
}

/* Whose man a defender takes when he changes with another; BODY_NONE: nobody's. */
static body new_man(const struct segment *segment, body other)
{
    const body *guards = segment->before ? segment->before->guards : segment->play->guards;
    return other < BODY_COUNT ? guards[other] : (body)BODY_NONE;
}

/* Does anybody else stand on the straight way of an X to a man? */
static bool is_stood_on(const struct drawing *drawing, body who, body man, struct vec2 from,
                        struct vec2 to)
{
    struct vec2 a = frame_point(&drawing->frame, from), b = frame_point(&drawing->frame, to);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who != who && symbol->who != man &&
            segment_distance(symbol->at, a, b, NULL) < symbol->radius) {
            return true;
        }
    }
    return false;
}

/* Of who changes men it is told to whom he goes, straight: on his way he is with his own first.
 * Where somebody stands before that one, to where he will be himself. */
static void ends_add(struct drawing *drawing, body who, body other, double from, double to)
{
    const struct segment *segment = drawing->segment;
    to = changed(segment, from, to);
    body man = new_man(segment, other);
    struct vec2 home = segment_at(segment, who, from), goal = segment_at(segment, who, to);
    double whole = vec2_distance(home, goal), far = real_min(whole, POINTS);
    if (man < BODY_COUNT && segment->track[man].on_floor) {
        struct vec2 there = segment_at(segment, man, to);
        double least = real_min(vec2_distance(home, there), LEAST);
        double short_of = real_clamp(vec2_distance(home, there) - SHORT_OF, least, POINTS);
        if (!is_stood_on(drawing, who, man, home, there)) {
            goal = there;
            far = short_of;
        }
    }
    if (far >= LEAST) {
        struct vec2 way = vec2_unit(vec2_sub(goal, home));
        light_add(drawing, who, from, from, vec2_along(home, way, far));
    }
}

static void read_add(struct drawing *drawing, const struct condition *condition, body who,
                     body other, double to)
{
    const struct segment *segment = drawing->segment;
    double from = leaves_at(drawing, who);
    if (who == BODY_NONE || !symbol_of(drawing, who) || has_line(drawing, who)) {
        return;
    }
    if (is_seen(condition, SEEN_AT_END)) {
        ends_add(drawing, who, other, from, to);
        return;
    }
    double length = line_length(segment, who, from, &to);
    if (is_seen(condition, SEEN_BEHIND) && length < LEAST) { /* he is behind only later */
        to = segment->duration;
        length = line_length(segment, who, from, &to);
    }
    to = shown_until(segment, who, from, to);
    struct vec2 home = segment_at(segment, who, from), end = segment_at(segment, who, to);
    body holder = segment_holder(segment, from);
    struct vec2 ball = holder == BODY_NONE ? end : segment_at(segment, holder, to);
    bool at_ball = vec2_distance(home, ball) - vec2_distance(end, ball) >= LEAST / 2;
    if (is_seen(condition, SEEN_AT_BALL) && !at_ball) {
        shows_add(drawing, who, from);
    } else if (length >= LEAST && vec2_distance(home, end) >= LEAST) {
        light_add(drawing, who, from, to, end);
    }
}

static size_t lines_drawn(const struct drawing *drawing)
{
    size_t lines = 0;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        lines += drawing->strokes.at[i].standing ? 0 : 1;
    }
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) { /* not made yet */
        lines += task_is_throw(segment_task(drawing->segment, i)) ? 1 : 0;
    }
    return lines;
}

/* The condition a picture is drawn for, and the defenders it speaks of. */
struct read_of {
    const struct condition *condition; /* NULL: it is no read's, or the one that is left */
    body first, second;
};

static struct read_of read_of(const struct drawing *drawing)
{
    const struct segment *segment = drawing->segment;
    struct read_of read = {NULL, BODY_NONE, BODY_NONE};
    if (drawing->diagram->branch < 0) {
        return read;
    }
    const struct branch *branch =
        &segment->play->steps.at[segment->step].branches.at[drawing->diagram->branch];
    if (branch->conditions.count == 0 || branch->conditions.at[0].kind == COND_OTHERWISE) {
        return read;
    }
    const struct condition *condition = &branch->conditions.at[0]; /* the one that is run */
    read.condition = condition;
    read.first = defender_of(segment, &condition->who);
    if (condition->kind == COND_BOTH || condition->other.kind == WHO_DEFENDER) {
        read.second = defender_of(segment, &condition->other);
    }
    if (is_seen(condition, SEEN_OF_TWO)) {
        body man = segment_holder(segment, drawing->scope.start);
        if (man != BODY_NONE && read.second == BODY_NONE) {
            read.second = read_guard(segment, man);
        }
    }
    return read;
}

static bool is_read_by(const struct drawing *drawing, int how)
{
    const struct condition *condition = read_of(drawing).condition;
    return condition && is_seen(condition, how);
}

bool read_is_at_screen(const struct drawing *drawing)
{
    return is_read_by(drawing, SEEN_AT_SCREEN);
}

bool read_is_behind(const struct drawing *drawing)
{
    return is_read_by(drawing, SEEN_BEHIND);
}

bool read_is_about(const struct drawing *drawing, body who)
{
    struct read_of read = read_of(drawing);
    return who != BODY_NONE && (who == read.first || who == read.second);
}

void reads_make(struct drawing *drawing)
{
    struct read_of read = read_of(drawing);
    if (!read.condition) {
        return;
    }
    double to = answered(drawing, read.condition);
    read_add(drawing, read.condition, read.first, read.second, to);
    if (read.second != read.first && lines_drawn(drawing) < LINES) {
        read_add(drawing, read.condition, read.second, read.first, to);
    }
}
