/* SPDX-License-Identifier: MIT */
/* route: a way for a line that no bow brings clear of what it lies on: the cheapest one over a fine
 * mesh laid on the picture, between the marks, on the side of each on which it was run past, as
 * near to its own course as may be; then smoothed. Costly, and asked only of lines that are in
 * trouble. */
#include "picture/scene/drawing.h"

#include <math.h>
#include <string.h>

#define CELLS_ACROSS 120.0 /* of the picture's width */
#define ABOUT_FEET 9.0     /* round the line: no way is looked for further off */
#define STEM_FEET 2.5      /* of a screener's line behind his bar: it stays as it is */
#define WALL_FEET 9.0      /* behind what is passed on its other side */
#define COMFORT 2.0        /* of cost a foot beside a mark, */
#define YIELDS 1.5         /* on an X that can step aside, */
#define ON_LINE 3.0        /* on or beside another line, */
#define OFF_COURSE 0.35    /* and for each foot off its own course */
#define BLOCKED 1e6
#define STEP_FEET 0.35                  /* between the points of a way */
#define CORNER_FEET 3.0                 /* that a corner is moved at most (ours) */
#define END_ANGLE (100 * REAL_PI / 180) /* by which an end is turned about its numeral at most */
enum { END_TURNS = 10 };
enum { SMOOTH = 30, NEIGHBOURS = 8, CORNER_RINGS = 8, CORNER_WAYS = 16 };

/* A thing to keep off: all that is within r of a piece from a to b. */
struct hurdle {
    struct vec2 a, b;
    double r;
    bool yields; /* an X that steps aside when the line is there */
};
typedef VEC(struct hurdle) hurdle_list;

static void hurdle_add(struct drawing *drawing, hurdle_list *list, struct vec2 a, struct vec2 b,
                       double r)
{
    VEC_PUSH(drawing->arena, list, ((struct hurdle){a, b, r, false}));
}

static void hurdles_of_stops(struct drawing *drawing, const struct stroke *stroke, double half,
                             hurdle_list *list)
{
    const struct sizes *size = &drawing->size;
    for (int i = 0; i < (int)drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        bool own = i == stroke->start || i == stroke->end;
        if (stop->kind == STOP_RING) { /* a line touches its own ring */
            double r = stop_radius(drawing, stop);
            hurdle_add(drawing, list, stop->at, stop->at, own ? r - 0.1 : r + half);
        } else if (stop->kind == STOP_BAR && !own) {
            struct vec2 a, b;
            bar_ends(drawing, stop, &a, &b);
            hurdle_add(drawing, list, a, b, size->bar_stroke / 2 + half);
        }
    }
}

/* All that a line that is so wide to either side may not lie on. */
static void hurdles_of(struct drawing *drawing, const struct stroke *stroke, double half,
                       hurdle_list *list)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        hurdle_add(drawing, list, symbol->at, symbol->at, symbol->radius + half);
        list->at[list->count - 1].yields =
            body_is_defender(symbol->who) && !symbol->pinned && !drawing->defenders_stay;
    }
    hurdles_of_stops(drawing, stroke, half, list);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct vec2 middle;
        if (handoff_middle(&drawing->strokes.at[i], &middle)) {
            hurdle_add(drawing, list, middle, middle, size->handoff_bar / 2 + half);
        }
    }
    for (size_t i = 0; i < drawing->cones.count; i++) {
        hurdle_add(drawing, list, drawing->cones.at[i], drawing->cones.at[i], size->cone + half);
    }
    struct basket_marks basket = basket_marks(drawing, false);
    hurdle_add(drawing, list, basket.ring, vec2_mix(basket.left, basket.right, 0.5),
               size->basket + half);
}

static double line_half(const struct drawing *drawing, const struct stroke *stroke)
{
    double wave = stroke->class == CLASS_DRIBBLE ? 0.5 * drawing->size.wave_half : 0;
    return drawing->size.line / 2 + wave;
}

int trail_lies(struct drawing *drawing, const struct stroke *stroke, const struct trail *trail)
{
    hurdle_list list = {0};
    int lies = 0;
    hurdles_of(drawing, stroke, drawing->size.line / 2 + PEN_SLIP, &list);
    for (size_t h = 0; h < list.count; h++) {
        const struct hurdle *hurdle = &list.at[h];
        bool on = false;
        for (size_t i = 0; i + 1 < trail->count && !on && !hurdle->yields; i++) {
            on = segment_gap(trail->at[i], trail->at[i + 1], hurdle->a, hurdle->b) < hurdle->r;
        }
        lies += on ? 1 : 0;
    }
    return lies;
}

/* The mesh: of each cell what a foot over it costs, and how far off the course it is. */
struct mesh {
    struct vec2 low;
    double cell; /* points */
    int wide, high, count;
    float *cost, *off, *total;
    int *from; /* the cell one comes from; -1: not reached */
    int *heap, *place;
    int waiting;
};

static struct mesh mesh_of(struct drawing *drawing, const struct trail *trail)
{
    const struct frame *frame = &drawing->frame;
    struct vec2 low = trail->at[0], high = low;
    for (size_t i = 1; i < trail->count; i++) {
        struct vec2 at = trail->at[i];
        low = vec2_of(real_min(low.x, at.x), real_min(low.y, at.y));
        high = vec2_of(real_max(high.x, at.x), real_max(high.y, at.y));
    }
    double about = ABOUT_FEET * drawing->size.k, edge = drawing->size.line;
    low = frame_keep(frame, vec2_sub(low, vec2_of(about, about)), edge);
    high = frame_keep(frame, vec2_add(high, vec2_of(about, about)), edge);
    struct mesh mesh = {.low = low, .cell = frame->width / CELLS_ACROSS};
    mesh.wide = (int)((high.x - low.x) / mesh.cell) + 1;
    mesh.high = (int)((high.y - low.y) / mesh.cell) + 1;
    mesh.count = mesh.wide * mesh.high;
    size_t count = (size_t)mesh.count;
    mesh.cost = arena_array(drawing->arena, float, count);
    mesh.off = arena_array(drawing->arena, float, count);
    mesh.total = arena_array(drawing->arena, float, count);
    mesh.from = arena_array(drawing->arena, int, count);
    mesh.heap = arena_array(drawing->arena, int, count);
    mesh.place = arena_array(drawing->arena, int, count);
    return mesh;
}

static struct vec2 cell_middle(const struct mesh *mesh, int cell)
{
    return vec2_of(mesh->low.x + mesh->cell * (cell % mesh->wide),
                   mesh->low.y + mesh->cell * (cell / mesh->wide));
}

static int clamped(double value, int most)
{
    int whole = (int)floor(value + 0.5);
    return whole < 0 ? 0 : whole > most ? most : whole;
}

static int cell_at(const struct mesh *mesh, struct vec2 at)
{
    int x = clamped((at.x - mesh->low.x) / mesh->cell, mesh->wide - 1);
    int y = clamped((at.y - mesh->low.y) / mesh->cell, mesh->high - 1);
    return y * mesh->wide + x;
}

/* Within r of a piece a foot costs so much more; between r and `beyond` ever less of `beside`. */
static void mesh_paint(struct mesh *mesh, const struct hurdle *on, double beyond, double cost,
                       double beside)
{
    double far = real_max(on->r, beyond);
    struct vec2 low = vec2_of(real_min(on->a.x, on->b.x) - far, real_min(on->a.y, on->b.y) - far);
    struct vec2 high = vec2_of(real_max(on->a.x, on->b.x) + far, real_max(on->a.y, on->b.y) + far);
    int first = cell_at(mesh, low), last = cell_at(mesh, high);
    for (int y = first / mesh->wide; y <= last / mesh->wide; y++) {
        for (int x = first % mesh->wide; x <= last % mesh->wide; x++) {
            int cell = y * mesh->wide + x;
            double off = segment_distance(cell_middle(mesh, cell), on->a, on->b, NULL);
            if (off < on->r) {
                mesh->cost[cell] += (float)cost;
            } else if (off < beyond) {
                mesh->cost[cell] += (float)(beside * (beyond - off) / (beyond - on->r));
            }
        }
    }
}

/* No way leads past a thing on the other side than the run: a wall stands there. */
static void mesh_walls(struct drawing *drawing, struct mesh *mesh, const struct stroke *stroke,
                       const struct trail *trail)
{
    double far = WALL_FEET * drawing->size.k;
    for (size_t i = 0; i < stroke->passes; i++) {
        const struct passed *passed = &stroke->passed[i];
        struct vec2 middle = passed_middle(drawing, passed);
        struct vec2 start = vec2_unit(vec2_sub(trail->at[0], middle));
        struct vec2 away = vec2_scale(vec2_turn(start, passed->sweep / 2), -1);
        struct hurdle wall = {middle, vec2_along(middle, away, far), 0.75 * mesh->cell, false};
        mesh_paint(mesh, &wall, 0, BLOCKED, 0);
    }
}

static void mesh_lines(struct drawing *drawing, struct mesh *mesh, const struct stroke *stroke)
{
    double half = line_half(drawing, stroke);
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *line = &drawing->strokes.at[i];
        if (line == stroke || (stroke_is_light(line) && !stroke_is_light(stroke))) {
            continue;
        }
        double r = half + line_half(drawing, line) + drawing->size.line;
        size_t step = line->trail.count > 8 ? 2 : 1;
        for (size_t p = 0; p + step < line->trail.count; p += step) {
            struct hurdle piece = {line->trail.at[p], line->trail.at[p + step], r, false};
            mesh_paint(mesh, &piece, 0, ON_LINE * 0.5, 0);
        }
    }
}

/* How far each cell is off the course, feet, by going from cell to cell. */
static void mesh_course(struct drawing *drawing, struct mesh *mesh, const struct trail *trail)
{
    float step = (float)(mesh->cell / drawing->size.k), slant = step * 1.414f;
    for (int i = 0; i < mesh->count; i++) {
        mesh->off[i] = 1e6f;
    }
    for (size_t i = 0; i < trail->count; i++) {
        mesh->off[cell_at(mesh, trail->at[i])] = 0;
    }
    for (int pass = 0; pass < 2; pass++) {
        for (int n = 0; n < mesh->count; n++) {
            int i = pass ? mesh->count - 1 - n : n, back = pass ? 1 : -1;
            int x = i % mesh->wide, y = i / mesh->wide;
            for (int dx = -1; dx <= 1; dx++) {
                int nx = x + dx, ny = y + back;
                bool in = nx >= 0 && nx < mesh->wide && ny >= 0 && ny < mesh->high;
                float off = in ? mesh->off[ny * mesh->wide + nx] + (dx ? slant : step) : 1e6f;
                mesh->off[i] = off < mesh->off[i] ? off : mesh->off[i];
            }
            int nx = x + back;
            float off = nx >= 0 && nx < mesh->wide ? mesh->off[i + back] + step : 1e6f;
            mesh->off[i] = off < mesh->off[i] ? off : mesh->off[i];
        }
    }
}

static void waiting_swap(struct mesh *mesh, int a, int b)
{
    int cell = mesh->heap[a];
    mesh->heap[a] = mesh->heap[b];
    mesh->heap[b] = cell;
    mesh->place[mesh->heap[a]] = a;
    mesh->place[mesh->heap[b]] = b;
}

static void waiting_rise(struct mesh *mesh, int at)
{
    while (at > 0 && mesh->total[mesh->heap[at]] < mesh->total[mesh->heap[(at - 1) / 2]]) {
        waiting_swap(mesh, at, (at - 1) / 2);
        at = (at - 1) / 2;
    }
}

static int waiting_take(struct mesh *mesh)
{
    int taken = mesh->heap[0], at = 0;
    waiting_swap(mesh, 0, --mesh->waiting);
    mesh->place[taken] = -1;
    for (;;) {
        int least = at;
        for (int child = 2 * at + 1; child <= 2 * at + 2 && child < mesh->waiting; child++) {
            least = mesh->total[mesh->heap[child]] < mesh->total[mesh->heap[least]] ? child : least;
        }
        if (least == at) {
            return taken;
        }
        waiting_swap(mesh, at, least);
        at = least;
    }
}

/* A cell is reached at that cost, if none less is known. */
static void mesh_reach(struct mesh *mesh, int cell, int from, float total)
{
    if (total >= mesh->total[cell]) {
        return;
    }
    mesh->total[cell] = total;
    mesh->from[cell] = from;
    if (mesh->place[cell] < 0) {
        mesh->place[cell] = mesh->waiting;
        mesh->heap[mesh->waiting++] = cell;
    }
    waiting_rise(mesh, mesh->place[cell]);
}

/* The cheapest way from cell to cell; false: all are walled off. */
static bool mesh_search(struct drawing *drawing, struct mesh *mesh, int start, int goal)
{
    static const int way[NEIGHBOURS][2] = {{1, 0}, {-1, 0}, {0, 1},  {0, -1},
                                           {1, 1}, {1, -1}, {-1, 1}, {-1, -1}};
    double step = mesh->cell / drawing->size.k;
    for (int i = 0; i < mesh->count; i++) {
        mesh->total[i] = 1e30f;
        mesh->from[i] = mesh->place[i] = -1;
    }
    mesh->waiting = 0;
    mesh_reach(mesh, start, -1, 0);
    while (mesh->waiting > 0) {
        int cell = waiting_take(mesh), x = cell % mesh->wide, y = cell / mesh->wide;
        if (cell == goal) {
            return mesh->total[goal] < BLOCKED;
        }
        for (int w = 0; w < NEIGHBOURS; w++) {
            int nx = x + way[w][0], ny = y + way[w][1];
            if (nx < 0 || nx >= mesh->wide || ny < 0 || ny >= mesh->high) {
                continue;
            }
            int next = ny * mesh->wide + nx;
            double feet = step * (w < 4 ? 1 : 1.41421356);
            double foot = 1 + mesh->cost[next] + OFF_COURSE * mesh->off[next];
            mesh_reach(mesh, next, cell, mesh->total[cell] + (float)(feet * foot));
        }
    }
    return false;
}

/* The cells of the way as close points, its own ends kept. */
static struct trail mesh_way(struct drawing *drawing, const struct mesh *mesh, int goal,
                             struct vec2 first, struct vec2 last)
{
    size_t count = 0;
    for (int cell = goal; cell >= 0; cell = mesh->from[cell]) {
        count++;
    }
    struct vec2 *at = arena_array(drawing->arena, struct vec2, count + 2);
    size_t n = count;
    for (int cell = goal; cell >= 0; cell = mesh->from[cell]) {
        at[n--] = cell_middle(mesh, cell);
    }
    at[0] = first;
    at[count + 1] = last;
    struct path path = path_of(drawing->arena, at, count + 2);
    double length = path_length(&path);
    size_t pieces = (size_t)(length / (STEP_FEET * drawing->size.k)) + 2;
    struct trail way = {arena_array(drawing->arena, struct vec2, pieces + 1),
                        arena_array(drawing->arena, bool, pieces + 1), pieces + 1};
    for (size_t i = 0; i <= pieces; i++) {
        way.at[i] = path_point(&path, length * (double)i / (double)pieces);
    }
    return way;
}

/* Smooth, and still clear. */
static void way_smooth(struct trail *way, const hurdle_list *list, double comfort)
{
    for (int turn = 0; turn < SMOOTH; turn++) {
        for (size_t i = 1; i + 1 < way->count; i++) {
            struct vec2 middle = vec2_mix(way->at[i - 1], way->at[i + 1], 0.5);
            way->at[i] = vec2_mix(way->at[i], middle, 0.6);
        }
        for (size_t h = 0; h < list->count; h++) {
            const struct hurdle *hurdle = &list->at[h];
            double r = hurdle->r + comfort;
            for (size_t i = 1; i + 1 < way->count && !hurdle->yields; i++) {
                double t, far = segment_distance(way->at[i], hurdle->a, hurdle->b, &t);
                struct vec2 on = vec2_mix(hurdle->a, hurdle->b, t);
                if (far < r && far > 1e-3) {
                    way->at[i] = vec2_along(on, vec2_unit(vec2_sub(way->at[i], on)), r);
                }
            }
        }
    }
}

/* From here to there. */
static bool route_leg(struct drawing *drawing, const struct stroke *stroke, const struct trail *leg,
                      struct route_how how, struct trail *found)
{
    hurdle_list list = {0};
    struct mesh mesh = mesh_of(drawing, leg);
    double half = how.thin ? drawing->size.line / 2 : line_half(drawing, stroke);
    double gap = drawing->size.gap;
    hurdles_of(drawing, stroke, half + PEN_SLIP, &list);
    for (size_t i = 0; i < list.count; i++) {
        const struct hurdle *hurdle = &list.at[i];
        mesh_paint(&mesh, hurdle, hurdle->r + gap, hurdle->yields ? YIELDS : BLOCKED, COMFORT);
    }
    if (how.walls) {
        mesh_walls(drawing, &mesh, stroke, &stroke->trail);
    }
    mesh_lines(drawing, &mesh, stroke);
    mesh_course(drawing, &mesh, leg);
    struct vec2 first = leg->at[0], last = leg->at[leg->count - 1];
    int start = cell_at(&mesh, first), goal = cell_at(&mesh, last);
    mesh.cost[goal] = 0; /* it may lie beside what the line comes to */
    if (start == goal || !mesh_search(drawing, &mesh, start, goal)) {
        return false;
    }
    *found = mesh_way(drawing, &mesh, goal, first, last);
    way_smooth(found, &list, 0.25 * gap);
    return true;
}

static struct trail trail_part(const struct trail *trail, size_t from, size_t to)
{
    return (struct trail){trail->at + from, trail->corner ? trail->corner + from : NULL,
                          to - from + 1};
}

/* One behind the other; where they meet is a corner if `corner`. */
static struct trail trails_join(struct arena *arena, const struct trail *a, const struct trail *b,
                                bool corner)
{
    size_t shared = a->count > 0 ? 1 : 0, count = a->count + b->count - shared;
    struct trail whole = {arena_array(arena, struct vec2, count), arena_array(arena, bool, count),
                          count};
    for (size_t i = 0; i < a->count; i++) {
        whole.at[i] = a->at[i];
        whole.corner[i] = a->corner && a->corner[i];
    }
    for (size_t i = shared; i < b->count; i++) {
        whole.at[a->count + i - shared] = b->at[i];
        whole.corner[a->count + i - shared] = b->corner && b->corner[i];
    }
    if (shared) {
        whole.corner[a->count - 1] = corner;
    }
    return whole;
}

/* Where the stem of a screener's line begins, which stays; of others its end. */
static size_t stem_index(const struct drawing *drawing, const struct stroke *stroke,
                         const struct trail *trail)
{
    size_t i = trail->count - 1;
    double far = 0, most = STEM_FEET * drawing->size.k;
    if (!stroke_has_bar(drawing, stroke)) {
        return i;
    }
    for (; i > 1 && far < most; i--) {
        far += vec2_distance(trail->at[i], trail->at[i - 1]);
    }
    return i;
}

/* Is a place clear of everything? */
static bool is_clear(const struct drawing *drawing, const hurdle_list *list, struct vec2 at)
{
    double more = 0.25 * drawing->size.gap;
    bool clear = true;
    for (size_t h = 0; h < list->count && clear; h++) {
        const struct hurdle *hurdle = &list->at[h];
        clear =
            hurdle->yields || segment_distance(at, hurdle->a, hurdle->b, NULL) >= hurdle->r + more;
    }
    return clear;
}

/* The nearest clear place for a corner; itself if there is none so near. */
static struct vec2 corner_clear(const struct drawing *drawing, const hurdle_list *list,
                                struct vec2 corner)
{
    for (int ring = 0; ring <= CORNER_RINGS; ring++) {
        for (int way = 0; way < (ring ? CORNER_WAYS : 1); way++) {
            double angle = 2 * REAL_PI * way / CORNER_WAYS;
            struct vec2 off = vec2_of(real_cos(angle), real_sin(angle));
            struct vec2 at =
                vec2_along(corner, off, CORNER_FEET * drawing->size.k * ring / CORNER_RINGS);
            if (is_clear(drawing, list, at)) {
                return at;
            }
        }
    }
    return corner;
}

/* The nearest clear place for an end: at the same distance from what the line begins or ends at,
 * or, where that is the basket, anywhere near. */
static struct vec2 end_clear(const struct drawing *drawing, const hurdle_list *list, int stop,
                             struct vec2 at)
{
    const struct stop *about = stop < 0 ? NULL : &drawing->stops.at[stop];
    if (is_clear(drawing, list, at) || !about || about->kind == STOP_BAR) {
        return at;
    }
    if (about->kind == STOP_RIM) {
        return corner_clear(drawing, list, at);
    }
    for (int i = 1; i < 2 * END_TURNS; i++) {
        double turn = (i % 2 ? -1 : 1) * ((i + 1) / 2) * END_ANGLE / END_TURNS;
        struct vec2 to = vec2_add(about->at, vec2_turn(vec2_sub(at, about->at), turn));
        if (is_clear(drawing, list, to)) {
            return to;
        }
    }
    return at;
}

/* The same way, its corners and its ends off the marks; `moved`: which. */
static struct trail corners_clear(struct drawing *drawing, const struct stroke *stroke,
                                  const struct trail *trail, bool *moved)
{
    struct trail way = {arena_array(drawing->arena, struct vec2, trail->count), trail->corner,
                        trail->count};
    hurdle_list list = {0};
    hurdles_of(drawing, stroke, drawing->size.line / 2 + PEN_SLIP, &list);
    memcpy(way.at, trail->at, trail->count * sizeof *way.at);
    for (size_t i = 0; i < trail->count; i++) {
        bool starts = i == 0, ends = i + 1 == trail->count;
        if (starts || ends) {
            int stop = starts ? stroke->start : stroke->end;
            way.at[i] = end_clear(drawing, &list, stop, trail->at[i]);
        } else if (trail->corner && trail->corner[i]) {
            way.at[i] = corner_clear(drawing, &list, trail->at[i]);
        }
        moved[i] = way.at[i].x != trail->at[i].x || way.at[i].y != trail->at[i].y;
    }
    return way;
}

bool route_way(struct drawing *drawing, const struct stroke *stroke, const struct trail *trail,
               struct route_how how, struct trail *found)
{
    size_t stem = stem_index(drawing, stroke, trail), from = 0;
    bool *moved = arena_array(drawing->arena, bool, trail->count), any = false;
    struct trail course = corners_clear(drawing, stroke, trail, moved), way = {0};
    for (size_t i = 1; i < course.count; i++) {
        bool corner = course.corner && course.corner[i], ends = i + 1 == course.count;
        if (!corner && !ends && i != stem) {
            continue;
        }
        struct trail leg = trail_part(&course, from, i), routed;
        bool lies = how.walls || moved[from] || moved[i] || trail_lies(drawing, stroke, &leg) > 0;
        bool better =
            lies && i <= stem && leg.count > 3 && route_leg(drawing, stroke, &leg, how, &routed);
        way = trails_join(drawing->arena, &way, better ? &routed : &leg,
                          from > 0 && course.corner && course.corner[from]);
        any |= better;
        from = i;
    }
    *found = way;
    return any;
}
