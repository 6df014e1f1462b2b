/* SPDX-License-Identifier: MIT */
/* trace: the drawn line of a movement is the run's own track, brought to few smooth curves that
 * stay within 15 cm of it, with sharp corners where the run has them, and led from stop to stop. */
#include "picture/scene/drawing.h"

#include <math.h>

#define TOLERANCE 0.15               /* metres */
#define STEP_FEET 0.35               /* between the points of a trail */
#define ONE_TURN 1.2                 /* feet between two corners (ours) */
#define SHARP (REAL_PI / 4)          /* a turn of more is a corner */
#define ROUNDED (15 * REAL_PI / 180) /* between two sentences a turn of more is drawn as one */
#define OBLIQUE (35 * REAL_PI / 180) /* a line comes to its bar no more aslant than this */
#define STEM 2.5                     /* feet of it that are straight there */
#define ROUND_INTO_BAR 12.0          /* feet of it that may turn for that */
#define HEEL_USE (130 * REAL_PI / 180)
#define HEEL (80 * REAL_PI / 180) /* a turn of more is one even where none is reported */
#define LEG_STRAIGHT 0.32   /* metres: a leg beside a corner that bows less is drawn straight */
#define LIGHT_STRAIGHT 0.9  /* metres: where a defender goes in a read, in one stroke (ours) */
#define LIGHT_TOLERANCE 0.6 /* metres */
#define LIGHT_BOW 0.35      /* of the way from end to end: more is a hook, like a slip of the pen */
#define LAST_HEADS 1.5      /* of its head: a last leg of less shows no more than that (ours) */
enum { CORNERS = 24 };

/* The samples of a movement on paper. */
struct raw {
    struct vec2 *at;
    double *when;
    size_t count;
    size_t corner[CORNERS]; /* where it is cut into legs, rising; first 0, last count - 1 */
    bool sharp[CORNERS];
    size_t corners;
};

static struct raw raw_of(struct drawing *drawing, const struct stroke *stroke)
{
    size_t most = (size_t)((stroke->ended - stroke->began) / RUN_SAMPLE) + 3;
    struct raw raw = {.at = arena_array(drawing->arena, struct vec2, most),
                      .when = arena_array(drawing->arena, double, most)};
    double near = 0.03 * drawing->size.k;
    for (size_t i = 0; i < most; i++) {
        double t = real_min(stroke->began + (double)i * RUN_SAMPLE, stroke->ended);
        struct vec2 at = frame_point(&drawing->frame, segment_at(drawing->segment, stroke->who, t));
        if (raw.count == 0 || vec2_distance(at, raw.at[raw.count - 1]) > near) {
            raw.at[raw.count] = at;
            raw.when[raw.count++] = t;
        } else {
            raw.when[raw.count - 1] = raw.count == 1 ? raw.when[0] : t;
        }
    }
    return raw;
}

/* A screener's last shuffles say nothing: from a long step off he goes straight to the bar. What he
 * ran before he went to screen may have led him by there. */
static void raw_to_bar(struct raw *raw, double went, double near)
{
    struct vec2 end = raw->at[raw->count - 1];
    for (size_t i = 1; i + 1 < raw->count; i++) {
        if (raw->when[i] >= went && vec2_distance(raw->at[i], end) < near) {
            raw->at[i + 1] = end;
            raw->when[i + 1] = raw->when[raw->count - 1];
            raw->count = i + 2;
            return;
        }
    }
}

/* A first leg too short to be seen beyond the numeral is left out. */
static void raw_drop_hook(struct raw *raw, double least)
{
    if (raw->corners < 3) {
        return;
    }
    size_t cut = raw->corner[1];
    double leg = 0;
    for (size_t i = 1; i <= cut; i++) {
        leg += vec2_distance(raw->at[i - 1], raw->at[i]);
    }
    if (leg >= least) {
        return;
    }
    raw->at += cut;
    raw->when += cut;
    raw->count -= cut;
    raw->corners--;
    for (size_t i = 0; i < raw->corners; i++) {
        raw->corner[i] = raw->corner[i + 1] - cut;
    }
}

static size_t raw_at(const struct raw *raw, double time)
{
    size_t i = 0;
    while (i + 1 < raw->count && raw->when[i] < time) {
        i++;
    }
    return i;
}

/* The turn of the way at a sample, looked at from two feet off either side. */
static double turn_at(const struct raw *raw, size_t index, double look)
{
    size_t before = index, after = index;
    while (before > 0 && vec2_distance(raw->at[before], raw->at[index]) < look) {
        before--;
    }
    while (after + 1 < raw->count && vec2_distance(raw->at[after], raw->at[index]) < look) {
        after++;
    }
    return vec2_angle(vec2_sub(raw->at[index], raw->at[before]),
                      vec2_sub(raw->at[after], raw->at[index]));
}

static void cut_here(struct raw *raw, size_t index, double look)
{
    if (index == 0 || index + 1 >= raw->count || raw->corners + 2 >= CORNERS) {
        return;
    }
    for (size_t i = 0; i < raw->corners; i++) {
        if (vec2_distance(raw->at[raw->corner[i]], raw->at[index]) < look) {
            return;
        }
    }
    size_t at = raw->corners++;
    for (; at > 0 && raw->corner[at - 1] > index; at--) {
        raw->corner[at] = raw->corner[at - 1];
    }
    raw->corner[at] = index;
}

static void cut_at(struct raw *raw, size_t index, double look)
{
    if (turn_at(raw, index, look) >= SHARP) {
        cut_here(raw, index, look);
    }
}

static bool goes_to_place(const struct drawing *drawing, int task)
{
    enum task_kind kind = task < 0 ? TASK_HOLD : segment_task(drawing->segment, (size_t)task)->kind;
    return kind == TASK_MOVE || kind == TASK_CARRY;
}

/* Between two sentences that each name a place the line has a corner there, however round the run
 * takes it: one smooth curve reads as one sentence. */
static void cut_between(const struct drawing *drawing, const struct stroke *stroke, size_t part,
                        struct raw *raw, size_t index)
{
    double look = 2.0 * drawing->size.k, seen = 6.0 * drawing->size.k;
    if (goes_to_place(drawing, stroke->part[part].task) &&
        goes_to_place(drawing, stroke->part[part + 1].task) &&
        turn_at(raw, index, seen) > ROUNDED) {
        cut_here(raw, index, look);
    } else {
        cut_at(raw, index, look);
    }
}

/* The sample nearest to a corner the run reports, within its sentence. */
static size_t corner_near(const struct raw *raw, struct vec2 corner, size_t from, size_t to)
{
    size_t best = from;
    for (size_t i = from; i <= to && i < raw->count; i++) {
        if (vec2_distance(raw->at[i], corner) < vec2_distance(raw->at[best], corner)) {
            best = i;
        }
    }
    return best;
}

/* The sharpest turn within a step or so of a sample: the run rounds its corners a little. */
static size_t sharpest_near(const struct raw *raw, size_t index, double look)
{
    size_t best = index;
    double most = turn_at(raw, index, look);
    for (size_t i = 1; i + 1 < raw->count; i++) {
        if (vec2_distance(raw->at[i], raw->at[index]) < 1.5 * look) {
            double turn = turn_at(raw, i, look);
            if (turn > most + 1e-9) {
                most = turn;
                best = i;
            }
        }
    }
    return best;
}

/* A cut off a screen is drawn round, however tight; only a turn back is a corner in it. */
static double heel_at(const struct drawing *drawing, const struct stroke *stroke, double time)
{
    for (size_t i = 0; i < stroke->parts; i++) {
        const struct stroke_part *part = &stroke->part[i];
        if (part->task >= 0 && time >= part->from && time <= part->to &&
            segment_task(drawing->segment, (size_t)part->task)->kind == TASK_USE) {
            return HEEL_USE;
        }
    }
    return HEEL;
}

static void raw_corners(struct drawing *drawing, const struct stroke *stroke, struct raw *raw)
{
    double look = 2.0 * drawing->size.k;
    raw->corner[0] = 0;
    raw->corners = 1;
    if (stroke_is_light(stroke)) {
        raw->corner[raw->corners++] = raw->count - 1;
        return;
    }
    for (size_t i = 0; i < stroke->parts; i++) {
        const struct stroke_part *part = &stroke->part[i];
        const struct task_record *record =
            part->task < 0 ? NULL : &drawing->segment->record[part->task];
        size_t from = raw_at(raw, part->from), to = raw_at(raw, part->to);
        if (record && record->has_corner) {
            size_t index = corner_near(raw, frame_point(&drawing->frame, record->corner), from, to);
            cut_at(raw, sharpest_near(raw, index, look), look);
        }
        if (i + 1 < stroke->parts) {
            cut_between(drawing, stroke, i, raw, to);
        }
    }
    for (size_t i = 1; i + 1 < raw->count; i++) { /* where he turned on his heel */
        double turn = turn_at(raw, i, look);
        if (turn > heel_at(drawing, stroke, raw->when[i]) && turn >= turn_at(raw, i - 1, look) &&
            turn >= turn_at(raw, i + 1, look)) {
            cut_at(raw, i, look);
        }
    }
    raw->corner[raw->corners++] = raw->count - 1;
}

typedef VEC(struct vec2) point_list_pt;
typedef VEC(bool) flag_list;
struct building {
    struct arena *arena;
    point_list_pt at;
    flag_list corner;
};

static void build_point(struct building *building, struct vec2 at, bool corner)
{
    if (building->at.count > 0 &&
        vec2_distance(building->at.at[building->at.count - 1], at) < 1e-6) {
        building->corner.at[building->corner.count - 1] |= corner;
        return;
    }
    VEC_PUSH(building->arena, &building->at, at);
    VEC_PUSH(building->arena, &building->corner, corner);
}

/* Points of a path at even steps; its own ends kept. */
static void build_path(struct building *building, const struct path *path, double step)
{
    double length = path_length(path);
    size_t pieces = (size_t)(length / step) + 1;
    for (size_t i = 0; i <= pieces; i++) {
        build_point(building, path_point(path, length * (double)i / (double)pieces), false);
    }
}

/* A fitted curve as points, sharp where two pieces meet at an angle. */
static void build_curve(struct building *building, const struct curve *curve, double step)
{
    struct vec2 start = curve->start;
    for (size_t i = 0; i < curve->count; i++) {
        struct curve one = {start, &curve->piece[i], 1};
        struct path path = curve_flatten(building->arena, &one, 0.03);
        build_path(building, &path, step);
        start = curve->piece[i].end;
        if (i + 1 < curve->count) {
            double turn = vec2_angle(vec2_sub(curve->piece[i].end, curve->piece[i].handle2),
                                     vec2_sub(curve->piece[i + 1].handle1, curve->piece[i].end));
            if (turn > SHARP) {
                building->corner.at[building->corner.count - 1] = true;
            }
        }
    }
}

static double bow_of(const struct vec2 *at, size_t count)
{
    double most = 0;
    for (size_t i = 1; i + 1 < count; i++) {
        most = real_max(most, segment_distance(at[i], at[0], at[count - 1], NULL));
    }
    return most;
}

static void build_leg(struct drawing *drawing, struct building *building, const struct raw *raw,
                      size_t leg, bool light)
{
    size_t from = raw->corner[leg], to = raw->corner[leg + 1], count = to - from + 1;
    double metre = drawing->size.k / FEET, step = STEP_FEET * drawing->size.k;
    if (count < 2) {
        return;
    }
    double straight = (light ? LIGHT_STRAIGHT : raw->corners > 2 ? LEG_STRAIGHT : 0.05) * metre;
    double bow = bow_of(&raw->at[from], count);
    bool hook = light && bow > LIGHT_BOW * vec2_distance(raw->at[from], raw->at[to]);
    if (bow < straight || hook) {
        struct vec2 ends[2] = {raw->at[from], raw->at[to]};
        struct path path = path_of(drawing->arena, ends, 2);
        build_path(building, &path, step);
    } else {
        struct path path = path_of(drawing->arena, &raw->at[from], count);
        struct curve curve = path_fit(drawing->arena, &path,
                                      (light ? LIGHT_TOLERANCE : TOLERANCE) * metre, REAL_PI / 3);
        build_curve(building, &curve, step);
    }
    if (leg + 2 < raw->corners && building->corner.count > 0) {
        building->corner.at[building->corner.count - 1] = true;
    }
}

static void clocks_of(struct drawing *drawing, struct stroke *stroke, const struct raw *raw)
{
    struct path path = path_of(drawing->arena, raw->at, raw->count);
    double length = real_max(path_length(&path), 1e-9);
    stroke->clock = raw->when;
    stroke->share = arena_array(drawing->arena, double, raw->count);
    stroke->clocks = raw->count;
    for (size_t i = 0; i < raw->count; i++) {
        stroke->share[i] = path.along[i] / length;
    }
}

double stroke_share(const struct stroke *stroke, double time)
{
    if (stroke->clocks == 0 || time <= stroke->clock[0]) {
        return 0;
    }
    for (size_t i = 1; i < stroke->clocks; i++) {
        if (time <= stroke->clock[i]) {
            double t = (time - stroke->clock[i - 1]) /
                       real_max(stroke->clock[i] - stroke->clock[i - 1], 1e-9);
            return real_mix(stroke->share[i - 1], stroke->share[i], t);
        }
    }
    return 1;
}

double stroke_clock(const struct stroke *stroke, double share)
{
    for (size_t i = 1; i < stroke->clocks; i++) {
        if (share <= stroke->share[i]) {
            double t = (share - stroke->share[i - 1]) /
                       real_max(stroke->share[i] - stroke->share[i - 1], 1e-9);
            return real_mix(stroke->clock[i - 1], stroke->clock[i], real_clamp(t, 0, 1));
        }
    }
    return stroke->ended;
}

/* Both ends are led to where their stops are on paper, the rest in proportion. */
void trail_lead(struct arena *arena, struct trail *trail, struct vec2 off0, struct vec2 off1)
{
    struct path path = path_of(arena, trail->at, trail->count);
    double length = real_max(path_length(&path), 1e-9);
    for (size_t i = 0; i < trail->count; i++) {
        trail->at[i] = vec2_add(trail->at[i], vec2_mix(off0, off1, path.along[i] / length));
    }
}

static void trace_straight(struct drawing *drawing, struct stroke *stroke)
{
    struct building building = {.arena = drawing->arena};
    struct vec2 ends[2] = {drawing->stops.at[stroke->start].at, drawing->stops.at[stroke->end].at};
    struct path path = path_of(drawing->arena, ends, 2);
    build_path(&building, &path, STEP_FEET * drawing->size.k);
    stroke->trail = (struct trail){building.at.at, building.corner.at, building.at.count};
}

/* Two corners within a foot or so are one turn: it is opened and read as one. */
static void corners_join(struct trail *trail, double near)
{
    size_t last = 0;
    for (size_t i = 1; i + 1 < trail->count; i++) {
        if (trail->corner[i] && last > 0 && vec2_distance(trail->at[i], trail->at[last]) < near) {
            trail->corner[last] = false;
        }
        last = trail->corner[i] ? i : last;
    }
}

/* A last leg of which no more than the head would be seen is no leg: the one before it leads to the
 * end. */
static void drop_last_hook(const struct drawing *drawing, const struct stroke *stroke,
                           struct trail *trail)
{
    size_t last = trail->count - 1;
    double leg = 0, least = end_gap(drawing, stroke) + LAST_HEADS * drawing->size.head_length;
    while (last > 0 && !trail->corner[last]) {
        leg += vec2_distance(trail->at[last], trail->at[last - 1]);
        last--;
    }
    if (last == 0 || leg >= least || !stroke->head || stroke_comes_home(drawing, stroke)) {
        return;
    }
    struct vec2 off = vec2_sub(trail->at[trail->count - 1], trail->at[last]);
    size_t first = last - 1;
    double whole = vec2_distance(trail->at[last], trail->at[first]), along = 0;
    for (; first > 0 && !trail->corner[first]; first--) {
        whole += vec2_distance(trail->at[first], trail->at[first - 1]);
    }
    struct vec2 before = trail->at[first];
    for (size_t i = first + 1; i <= last; i++) {
        along += vec2_distance(before, trail->at[i]);
        before = trail->at[i];
        trail->at[i] = vec2_along(before, off, along / real_max(whole, 1e-9));
    }
    trail->corner[last] = false;
    trail->count = last + 1;
}

static void trace_one(struct drawing *drawing, struct stroke *stroke)
{
    if (stroke->standing) {
        trace_straight(drawing, stroke);
        return;
    }
    struct raw raw = raw_of(drawing, stroke);
    if (raw.count < 2) {
        trace_straight(drawing, stroke);
        return;
    }
    if (body_is_attacker(stroke->who)) {
        sides_note(drawing, stroke, &(struct run_way){raw.at, raw.when, raw.count});
    }
    const struct stop *start = &drawing->stops.at[stroke->start];
    int task = stroke->part[0].task;
    enum verb_shape shape =
        task < 0 ? SHAPE_STRAIGHT : segment_task(drawing->segment, (size_t)task)->shape;
    double k = drawing->size.k;
    if (drawing->stops.at[stroke->end].kind == STOP_BAR) {
        raw_to_bar(&raw, stroke->part[stroke->parts - 1].from, 3.0 * k);
    }
    raw_corners(drawing, stroke, &raw);
    bool vee = shape == SHAPE_V || shape == SHAPE_L || shape == SHAPE_SETUP ||
               is_feint(drawing->segment, task);
    raw_drop_hook(&raw, stop_radius(drawing, start) + drawing->size.gap + (vee ? 0.2 : 3.2) * k);
    clocks_of(drawing, stroke, &raw);
    for (size_t i = 0; i < stroke->parts; i++) {
        stroke->part[i].from = stroke_share(stroke, stroke->part[i].from);
        stroke->part[i].to = stroke_share(stroke, stroke->part[i].to);
    }
    struct building building = {.arena = drawing->arena};
    for (size_t leg = 0; leg + 1 < raw.corners; leg++) {
        build_leg(drawing, &building, &raw, leg, stroke_is_light(stroke));
    }
    stroke->trail = (struct trail){building.at.at, building.corner.at, building.at.count};
    if (stroke->trail.count < 2) {
        trace_straight(drawing, stroke);
        return;
    }
    feint_show(drawing, stroke);
    struct trail *trail = &stroke->trail;
    corners_join(trail, ONE_TURN * k);
    if (!vee || is_feint(drawing->segment, task)) {
        drop_last_hook(drawing, stroke, trail);
    }
    struct vec2 aside = {0, 0};
    if (stroke_comes_home(drawing, stroke)) {
        aside = trail_aside(drawing, start, trail);
    }
    struct vec2 leaves = vec2_add(trail_leaves(drawing, start, trail), aside);
    struct vec2 comes = vec2_sub(drawing->stops.at[stroke->end].at, aside);
    trail_lead(drawing->arena, trail, vec2_sub(leaves, trail->at[0]),
               vec2_sub(comes, trail->at[trail->count - 1]));
}

/* The direction in which a screener comes to his bar: his own, but no more than so far off the way
 * that the bar looks. */
static struct vec2 stem_way(struct vec2 comes, struct vec2 facing)
{
    if (vec2_angle(comes, facing) <= OBLIQUE) {
        return comes;
    }
    return vec2_turn(facing, vec2_cross(facing, comes) < 0 ? -OBLIQUE : OBLIQUE);
}

/* A screener's line comes to its bar from behind, straight at the last: one that would run along
 * the bar, and read as part of it, is led there in one curve. */
static void into_bar(struct drawing *drawing, struct stroke *stroke)
{
    const struct stop *bar = &drawing->stops.at[stroke->end];
    struct path path = path_of(drawing->arena, stroke->trail.at, stroke->trail.count);
    double length = path_length(&path), k = drawing->size.k;
    if (bar->kind != STOP_BAR || stroke->standing || length < 2 * k) {
        return;
    }
    struct vec2 comes =
        vec2_unit(vec2_sub(bar->at, path_point(&path, length - real_min(STEM * k, length))));
    if (vec2_angle(comes, bar->facing) < OBLIQUE) {
        return;
    }
    double from = length - real_min(ROUND_INTO_BAR * k, length);
    struct vec2 start = path_point(&path, from), leaves = path_direction(&path, from);
    struct vec2 way = stem_way(vec2_unit(vec2_sub(bar->at, start)), bar->facing);
    double straight = real_min(STEM * k, 0.4 * vec2_distance(start, bar->at));
    struct vec2 stem = vec2_along(bar->at, way, -straight);
    double reach = 0.42 * vec2_distance(start, stem);
    if (from < 0.5 * k) { /* the whole line: it leaves the way that makes one bow */
        leaves = vec2_unit(vec2_sub(vec2_along(stem, way, -reach), start));
    }
    struct curve_piece pieces[2] = {
        {vec2_along(start, leaves, reach), vec2_along(stem, way, -reach), stem},
        {vec2_mix(stem, bar->at, 1.0 / 3), vec2_mix(stem, bar->at, 2.0 / 3), bar->at}};
    struct curve curve = {start, pieces, 2};
    struct path end = curve_flatten(drawing->arena, &curve, 0.03);
    struct path begin = path_cut(drawing->arena, &path, 0, from);
    struct building building = {.arena = drawing->arena};
    if (from >= 0.5 * k) {
        build_path(&building, &begin, STEP_FEET * k);
    }
    build_path(&building, &end, STEP_FEET * k);
    stroke->trail = (struct trail){building.at.at, building.corner.at, building.at.count};
}

void trace_moves(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        trace_one(drawing, &drawing->strokes.at[i]);
        into_bar(drawing, &drawing->strokes.at[i]);
    }
}
