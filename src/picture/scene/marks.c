/* SPDX-License-Identifier: MIT */
/* marks: how each kind of line is inked: heads, dashes, zigzags, double lines, bars. */
#include "picture/scene/drawing.h"

#include <math.h>

#define HEAD_NOTCH 0.74    /* of the head's length, from its tip */
#define SHORTEST_DASH 0.45 /* of its size, so that a short pass has three (ours) */
#define HEAD_BODY 0.70     /* where the line under the head stops */
#define OPEN_LENGTH 0.85   /* a defender's head is open: black on white it would be a runner's, */
#define OPEN_WIDTH 1.40    /* shorter, wider, */
#define OPEN_ARM 1.0       /* and two arms as wide as its line (ours) */

static void ink_points(struct drawing *drawing, struct stroke *stroke, const struct path *path)
{
    stroke->ink = path->at;
    stroke->ink_count = path->count;
    (void)drawing;
}

/* A head from its tip to its barbs, and to either side. */
struct barbs {
    double back, aside;
};

static struct barbs barbs_of(const struct drawing *drawing, enum scene_class class, double grow)
{
    const struct sizes *size = &drawing->size;
    bool open = class == CLASS_DEFENSE_MOVE;
    return (struct barbs){size->head_length * grow * (open ? OPEN_LENGTH : 1),
                          size->head_width / 2 * grow * (open ? OPEN_WIDTH : 1)};
}

/* Of an open head, from its tip to where its arms part. */
static double open_notch(const struct drawing *drawing, struct barbs barbs)
{
    double arm = OPEN_ARM * drawing->size.defense_line;
    return arm * vec2_length(vec2_of(barbs.back, barbs.aside)) / barbs.aside;
}

double head_reach(const struct drawing *drawing, const struct stroke *stroke)
{
    double grow = stroke->grow > 1 ? 1.18 : 1;
    if (!stroke->head || stroke->class != CLASS_DEFENSE_MOVE) {
        return stroke->head ? HEAD_BODY * drawing->size.head_length * grow : 0;
    }
    return 0.8 * open_notch(drawing, barbs_of(drawing, stroke->class, grow));
}

/* The reader's own, of the part that is to be seen as such. */
static bool is_own(const struct drawing *drawing, const struct stroke *stroke)
{
    body reader = drawing->options->accent;
    bool own = stroke->who == reader || (stroke->other == reader && stroke->class != CLASS_SHOT);
    int last = stroke->parts > 0 ? stroke->part[stroke->parts - 1].task : -1;
    return reader != BODY_NONE && own &&
           (drawing->options->accent_at == 0 || last >= (int)drawing->options->accent_at);
}

void ink_one(struct drawing *drawing, struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    body reader = drawing->options->accent;
    bool own = is_own(drawing, stroke);
    stroke->grow = reader == BODY_NONE ? 1 : own ? 1.55 : 0.9;
    stroke->role = own ? ROLE_ACCENT : ROLE_INK;
    double width = stroke->class == CLASS_SHOT ? size->shot_line : size->line;
    if (stroke->class == CLASS_DEFENSE_MOVE) {
        width = size->defense_line;
        stroke->role = ROLE_DEFENDER;
    }
    stroke->width = width * stroke->grow;
    if (stroke->trail.count < 2) {
        stroke->ink_count = 0;
        return;
    }
    if (stroke->class == CLASS_DRIBBLE) {
        zigzag_ink(drawing, stroke);
        return;
    }
    double length = path_length(&stroke->path);
    struct path shaft =
        path_cut(drawing->arena, &stroke->path, 0, length - head_reach(drawing, stroke));
    ink_points(drawing, stroke, &shaft);
}

static void box_grow(struct stroke *stroke, struct vec2 at)
{
    stroke->low = vec2_of(real_min(stroke->low.x, at.x), real_min(stroke->low.y, at.y));
    stroke->high = vec2_of(real_max(stroke->high.x, at.x), real_max(stroke->high.y, at.y));
}

/* The box round its ink and its head. */
static void box_find(const struct drawing *drawing, struct stroke *stroke)
{
    for (size_t p = 0; p < stroke->ink_count; p++) {
        stroke->low = p == 0 ? stroke->ink[0] : stroke->low;
        stroke->high = p == 0 ? stroke->ink[0] : stroke->high;
        box_grow(stroke, stroke->ink[p]);
    }
    if (stroke->ink_count > 0 && stroke->path.count > 0) {
        box_grow(stroke, stroke->path.at[stroke->path.count - 1]);
        double length = path_length(&stroke->path);
        stroke->tip = path_point(&stroke->path, length);
        stroke->back = path_point(&stroke->path, length - drawing->size.head_length);
    }
}

void ink_make(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        ink_one(drawing, &drawing->strokes.at[i]);
        box_find(drawing, &drawing->strokes.at[i]);
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->class == CLASS_DRIBBLE && stroke->ink_count > 1) {
            zigzag_off_lines(drawing, i);
            box_find(drawing, stroke);
        }
    }
}

void ink_again(struct drawing *drawing, struct stroke *stroke)
{
    ink_one(drawing, stroke);
    box_find(drawing, stroke);
}

bool stroke_is_beyond(const struct drawing *drawing, const struct stroke *stroke, struct vec2 at,
                      double far)
{
    const struct sizes *size = &drawing->size;
    double reach = far + real_max(size->handoff_bar, size->head_width); /* what swells a line */
    return at.x < stroke->low.x - reach || at.x > stroke->high.x + reach ||
           at.y < stroke->low.y - reach || at.y > stroke->high.y + reach;
}

/* From a place to the two bars of a hand-off. */
static double handoff_bars_distance(const struct drawing *drawing, const struct stroke *stroke,
                                    struct vec2 at)
{
    const struct sizes *size = &drawing->size;
    double length = path_length(&stroke->path);
    struct vec2 middle = path_point(&stroke->path, length / 2);
    struct vec2 half =
        vec2_scale(vec2_left(path_direction(&stroke->path, length / 2)), size->handoff_bar / 2);
    double far = segment_distance(at, vec2_add(middle, half), vec2_sub(middle, half), NULL);
    return far - (size->handoff_apart + size->handoff_stroke) / 2;
}

double stroke_distance(const struct drawing *drawing, const struct stroke *stroke, struct vec2 at)
{
    double least = way_distance(at, stroke->ink, stroke->ink_count);
    least -= stroke->class == CLASS_SHOT ? drawing->size.shot_half + stroke->width / 2
                                         : stroke->width / 2;
    if (stroke->class == CLASS_HANDOFF && stroke->path.count > 1) {
        least = real_min(least, handoff_bars_distance(drawing, stroke, at));
    }
    if (stroke->head && stroke->path.count > 1) {
        double t, far = segment_distance(at, stroke->back, stroke->tip, &t);
        least = real_min(least, far - 0.9 * (1 - t) * barbs_of(drawing, stroke->class, 1).aside);
    }
    return least;
}

/* Where along the ink a throw is broken for the symbols it would run through. */
struct span_list {
    double from[32], to[32];
    size_t count;
};

static void span_break(struct span_list *spans, double from, double to)
{
    struct span_list next = {.count = 0};
    for (size_t i = 0; i < spans->count; i++) {
        double a = spans->from[i], b = spans->to[i];
        if (to <= a || from >= b) {
            next.from[next.count] = a;
            next.to[next.count++] = b;
            continue;
        }
        if (from > a && next.count < 31) {
            next.from[next.count] = a;
            next.to[next.count++] = from;
        }
        if (to < b && next.count < 31) {
            next.from[next.count] = to;
            next.to[next.count++] = b;
        }
    }
    *spans = next;
}

static void span_break_round(struct span_list *spans, const struct stroke *stroke,
                             struct vec2 centre, double r)
{
    double along = 0;
    for (size_t i = 0; i + 1 < stroke->ink_count; i++) {
        struct vec2 a = stroke->ink[i], way = vec2_sub(stroke->ink[i + 1], a);
        double length = vec2_length(way);
        way = vec2_unit(way);
        double middle = vec2_dot(vec2_sub(centre, a), way),
               off = fabs(vec2_cross(way, vec2_sub(centre, a)));
        if (off < r) {
            double half = real_sqrt(r * r - off * off);
            double from = real_max(middle - half, 0), to = real_min(middle + half, length);
            if (from < to) {
                span_break(spans, along + from, along + to);
            }
        }
        along += length;
    }
}

/* The same for a bar: where the ink crosses what lies round it. */
static void span_break_bar(const struct drawing *drawing, struct span_list *spans,
                           const struct stroke *stroke, const struct stop *bar)
{
    double r = drawing->size.bar_stroke / 2 + 0.8 * drawing->size.gap, half = drawing->size.bar / 2;
    struct vec2 along = vec2_left(bar->facing);
    int steps = (int)(half / r) + 1;
    for (int i = -steps; i <= steps; i++) {
        span_break_round(spans, stroke, vec2_along(bar->at, along, half * i / steps), r);
    }
}

static double ink_length(const struct stroke *stroke)
{
    double length = 0;
    for (size_t i = 1; i < stroke->ink_count; i++) {
        length += vec2_distance(stroke->ink[i - 1], stroke->ink[i]);
    }
    return length;
}

static struct span_list spans_of(const struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    struct span_list spans = {.count = 1};
    spans.to[0] = ink_length(stroke);
    double gap = 0.42 * size->k;
    double half = stroke->class == CLASS_SHOT ? size->shot_half + stroke->width / 2 : 0;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        double edge = real_max(gap, size->gap);
        span_break_round(&spans, stroke, symbol->at,
                         symbol->radius + (symbol->who == stroke->who ? 0 : half) +
                             (body_is_defender(symbol->who) ? 0.6 * edge : 0.98 * edge));
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING && (int)i != stroke->start && (int)i != stroke->end) {
            span_break_round(&spans, stroke, stop->at,
                             stop_radius(drawing, stop) + half + 0.7 * size->gap);
        } else if (stop->kind == STOP_BAR && (int)i != stroke->start && (int)i != stroke->end) {
            span_break_bar(drawing, &spans, stroke, stop);
        }
    }
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *handoff = &drawing->strokes.at[i];
        if (handoff->class == CLASS_HANDOFF && handoff->path.count > 1) {
            struct vec2 middle = path_point(&handoff->path, path_length(&handoff->path) / 2);
            span_break_round(&spans, stroke, middle, size->handoff_bar / 2 + size->gap);
        }
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        span_break_round(&spans, stroke, drawing->cones.at[i], size->cone + half + 0.7 * size->gap);
    }
    return spans;
}

static void tag(const struct drawing *drawing, struct scene_item *item, const struct stroke *stroke)
{
    item->line = (int)(stroke - drawing->strokes.at);
    item->task = stroke->part[stroke->parts - 1].task;
    item->who = stroke->who;
    item->other = stroke->class == CLASS_SHOT ? BODY_NONE : stroke->other;
}

/* How well n dashes fit a stretch: the stretch they need, and whether dashes lie on the crossings.
 */
static double dash_cost(const struct drawing *drawing, size_t index, double from, double to, int n)
{
    const struct sizes *size = &drawing->size;
    double plain = n * size->dash + (n - 1) * size->space, s = (to - from) / plain;
    double cost = 4 * fabs(real_log(real_max(s, 1e-6)));
    double period = (size->dash + size->space) * s, dash = size->dash * s;
    for (size_t i = 0; i < drawing->crossings.count; i++) {
        const struct crossing *crossing = &drawing->crossings.at[i];
        double along = crossing->under == index ? crossing->along_under : crossing->along_over;
        if ((crossing->under != index && crossing->over != index) || along < from || along > to) {
            continue;
        }
        double phase = (along - from) / period;
        double off =
            fabs(along - from - dash / 2 - period * floor(phase + 0.5 - dash / 2 / period));
        cost += 1.5 * real_max(0, (off - 0.22 * dash) / dash);
    }
    return cost;
}

/* The fewest dashes that still read as a pass: three, drawn closer on a short line; fewer only
 * where they would be dots. */
static int fewest_dashes(const struct sizes *size, double length)
{
    for (int n = 3; n > 1; n--) {
        if (length / (n * size->dash + (n - 1) * size->space) >= SHORTEST_DASH) {
            return n;
        }
    }
    return 1;
}

static void draw_dashes(struct drawing *drawing, size_t index, double from, double to)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    const struct sizes *size = &drawing->size;
    double length = to - from;
    int middle = (int)floor((length + size->space) / (size->dash + size->space) + 0.5);
    int fewest = fewest_dashes(size, length), best = 0;
    double least = 0;
    middle = middle < fewest ? fewest : middle;
    for (int n = middle - 1 < fewest ? fewest : middle - 1; n <= middle + 1; n++) {
        double cost = dash_cost(drawing, index, from, to, n);
        if (best == 0 || cost < least) {
            best = n;
            least = cost;
        }
    }
    double s = length / (best * size->dash + (best - 1) * size->space);
    struct path path = path_of(drawing->arena, stroke->ink, stroke->ink_count);
    for (int i = 0; i < best; i++) {
        double at = from + i * (size->dash + size->space) * s;
        struct path dash = path_cut(drawing->arena, &path, at, at + size->dash * s);
        for (size_t p = 0; p < dash.count; p++) {
            (p == 0 ? pen_move : pen_line)(drawing, dash.at[p]);
        }
    }
    tag(drawing, pen_stroke(drawing, CLASS_PASS, stroke->role, stroke->width), stroke);
}

static void draw_pass(struct drawing *drawing, size_t index)
{
    struct span_list spans = spans_of(drawing, &drawing->strokes.at[index]);
    for (size_t i = 0; i < spans.count; i++) {
        if (spans.to[i] - spans.from[i] > 0.35 * drawing->size.dash) {
            draw_dashes(drawing, index, spans.from[i], spans.to[i]);
        }
    }
}

static void draw_shot(struct drawing *drawing, const struct stroke *stroke)
{
    struct span_list spans = spans_of(drawing, stroke);
    struct vec2 a = stroke->ink[0],
                way = vec2_unit(vec2_sub(stroke->ink[stroke->ink_count - 1], a));
    struct vec2 square = vec2_left(way);
    for (size_t i = 0; i < spans.count; i++) {
        for (int side = -1; side <= 1; side += 2) {
            struct vec2 off = vec2_along(a, square, side * drawing->size.shot_half);
            pen_move(drawing, vec2_along(off, way, spans.from[i]));
            pen_line(drawing, vec2_along(off, way, spans.to[i]));
        }
        tag(drawing, pen_stroke(drawing, CLASS_SHOT, stroke->role, stroke->width), stroke);
    }
}

static double head_grown(const struct stroke *stroke)
{
    return stroke->grow > 1 ? 1.18 : 1;
}

static struct head head_at(const struct drawing *drawing, enum scene_class class, struct vec2 tip,
                           struct vec2 way, double grow)
{
    struct barbs barbs = barbs_of(drawing, class, grow);
    struct vec2 square = vec2_left(way), back = vec2_along(tip, way, -barbs.back);
    double notch =
        class == CLASS_DEFENSE_MOVE ? open_notch(drawing, barbs) : HEAD_NOTCH * barbs.back;
    return (struct head){{tip, vec2_along(back, square, barbs.aside), vec2_along(tip, way, -notch),
                          vec2_along(back, square, -barbs.aside), tip}};
}

/* From a barb of an open head to the inner edge of its arm. */
static struct vec2 arm_inside(const struct drawing *drawing, const struct head *head, int barb)
{
    struct vec2 way = vec2_unit(vec2_sub(head->edge[barb], head->edge[0]));
    struct vec2 square = vec2_left(way), notch = vec2_sub(head->edge[2], head->edge[0]);
    double arm = OPEN_ARM * drawing->size.defense_line;
    return vec2_along(head->edge[barb], square, vec2_dot(notch, square) < 0 ? -arm : arm);
}

static struct scene_item *head_fill(struct drawing *drawing, enum scene_class class, enum role role,
                                    const struct head *head)
{
    bool open = class == CLASS_DEFENSE_MOVE;
    pen_move(drawing, head->edge[0]);
    for (int i = 1; i + 1 < HEAD_EDGE; i++) {
        if (open && i == 3) {
            pen_line(drawing, arm_inside(drawing, head, i));
        }
        pen_line(drawing, head->edge[i]);
        if (open && i == 1) {
            pen_line(drawing, arm_inside(drawing, head, i));
        }
    }
    pen_close(drawing);
    return pen_fill(drawing, class, role);
}

struct scene_item *head_draw(struct drawing *drawing, enum scene_class class, enum role role,
                             struct vec2 tip, struct vec2 way, double grow)
{
    struct head head = head_at(drawing, class, tip, way, grow);
    return head_fill(drawing, class, role, &head);
}

struct head line_head(const struct drawing *drawing, const struct stroke *stroke, double back)
{
    double grow = head_grown(stroke), length = path_length(&stroke->path) - back;
    struct vec2 tip = path_point(&stroke->path, length);
    struct vec2 from = path_point(&stroke->path, length - 0.9 * drawing->size.head_length * grow);
    return head_at(drawing, stroke->class, tip, vec2_unit(vec2_sub(tip, from)), grow);
}

struct scene_item *line_head_draw(struct drawing *drawing, const struct stroke *stroke)
{
    struct head head = line_head(drawing, stroke, 0);
    return head_fill(drawing, stroke->class, stroke->role, &head);
}

struct scene_item *bar_draw(struct drawing *drawing, const struct stop *bar, enum role role,
                            double grow)
{
    struct vec2 a, b;
    bar_ends(drawing, bar, &a, &b);
    pen_move(drawing, a);
    pen_line(drawing, b);
    return pen_stroke(drawing, CLASS_SCREEN, role, drawing->size.bar_stroke * grow);
}

static void draw_bar(struct drawing *drawing, const struct stroke *stroke)
{
    double grow = stroke->grow > 1 ? 1.35 : 1;
    tag(drawing, bar_draw(drawing, &drawing->stops.at[stroke->end], stroke->role, grow), stroke);
}

static void draw_handoff_bars(struct drawing *drawing, const struct stroke *stroke)
{
    const struct sizes *size = &drawing->size;
    double length = path_length(&stroke->path);
    struct vec2 middle = path_point(&stroke->path, length / 2),
                way = path_direction(&stroke->path, length / 2);
    struct vec2 square = vec2_left(way);
    for (int side = -1; side <= 1; side += 2) {
        struct vec2 at = vec2_along(middle, way, side * size->handoff_apart / 2);
        pen_move(drawing, vec2_along(at, square, size->handoff_bar / 2));
        pen_line(drawing, vec2_along(at, square, -size->handoff_bar / 2));
    }
    tag(drawing, pen_stroke(drawing, CLASS_HANDOFF, stroke->role, size->handoff_stroke), stroke);
}

struct scene_item *line_draw(struct drawing *drawing, const struct stroke *stroke, enum role role,
                             double within)
{
    bool waves = stroke->class == CLASS_DRIBBLE;
    if (!waves) {
        pen_way_within(drawing, stroke->ink, stroke->ink_count, within);
    }
    for (size_t i = 0; waves && i < stroke->ink_count; i++) {
        (i == 0 ? pen_move : pen_line)(drawing, stroke->ink[i]);
    }
    struct scene_item *item = pen_stroke(drawing, stroke->class, role, stroke->width);
    item->join = waves ? JOIN_MITER : JOIN_ROUND;
    return item;
}

static void draw_body(struct drawing *drawing, size_t index)
{
    const struct stroke *stroke = &drawing->strokes.at[index];
    if (stroke->class == CLASS_PASS) {
        draw_pass(drawing, index);
        return;
    }
    if (stroke->class == CLASS_SHOT) {
        draw_shot(drawing, stroke);
        return;
    }
    tag(drawing, line_draw(drawing, stroke, stroke->role, PEN_WITHIN), stroke);
}

bool stroke_has_bar(const struct drawing *drawing, const struct stroke *stroke)
{
    return stroke->class == CLASS_SCREEN && stroke->end >= 0 &&
           drawing->stops.at[stroke->end].kind == STOP_BAR;
}

void strokes_draw(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->ink_count >= 2) {
            drawing->scene->lines += stroke->standing ? 0 : 1;
            crossings_case(drawing, i);
            draw_body(drawing, i);
            if (stroke->head) {
                tag(drawing, line_head_draw(drawing, stroke), stroke);
            }
            if (stroke->class == CLASS_HANDOFF) {
                draw_handoff_bars(drawing, stroke);
            }
        }
        if (stroke_has_bar(drawing, stroke)) {
            draw_bar(drawing, stroke);
        }
    }
}

/* The small rings where lines end. */
void rings_draw(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind != STOP_RING) {
            continue;
        }
        bool own = stop->who == drawing->options->accent;
        enum role role = own ? ROLE_ACCENT : body_is_defender(stop->who) ? ROLE_DEFENDER : ROLE_INK;
        struct scene_item *item = put_circle(drawing, CLASS_END, stop->at, size->end,
                                             ground_at(drawing, stop->at), role, size->end_stroke);
        item->who = stop->who;
    }
}
