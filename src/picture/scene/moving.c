/* SPDX-License-Identifier: MIT */
/* moving: parts on one clock, one after the other; who stands where at every moment of it, who has
 * the ball, and the ball itself. The lines are in moving_roads.c and moving_throws.c. */
#include "picture/scene/drawing.h"

#include <assert.h>

#define TICK 0.045     /* s: the longest (ours) */
#define WITHIN 0.038   /* m: how far a straight way between keys may be from the run; */
#define WITHIN_X 0.058 /* and from a defender, who shuffles all the time */
#define BALL_FEET 0.62
#define RIM 0.22  /* of the lettering's size */
#define LOOK 0.25 /* s between the moments at which a numeral's side is weighed */

/* When what all the reads of a step share is done: its lines are whole then. */
static double shared_end(const struct segment *segment, size_t common)
{
    double last = 0;
    for (size_t i = 0; i < common && i < segment->tasks; i++) {
        enum task_kind kind = segment_task(segment, i)->kind;
        double end = task_end(segment, i);
        bool done = end < segment->duration; /* not what an answer has put an end to */
        bool moves = kind != TASK_HOLD && kind != TASK_GUARD;
        last = moves && done && task_start(segment, i) >= 0 && end > last ? end : last;
    }
    return last;
}

struct moving_part moving_part_of(const struct diagram *diagram)
{
    const struct segment *segment = diagram->segment;
    const struct step *step = &segment->play->steps.at[diagram->step];
    struct moving_part part = {.diagram = *diagram, .to = segment->duration};
    part.common = diagram->branch < 0 && step->branches.count > 0;
    if (part.common) {
        double shared = shared_end(segment, step_task_count(step, -1));
        part.to = real_min(part.to, real_max(answer_start(diagram), shared));
    }
    return part;
}

/* Does a diagram show a run of its own? A step before its reads has none: they all begin with it.
 */
static bool has_part(const struct diagram *diagram)
{
    const struct segment *segment = diagram->segment;
    return diagram->branch == segment->branch && (segment->ran || !segment->main);
}

static bool told_before(const moving_part_list *parts, const struct diagram *diagram)
{
    for (size_t i = 0; i < parts->count; i++) {
        if (parts->at[i].diagram.step == diagram->step) {
            return true;
        }
    }
    return false;
}

/* The next step may begin before this one is over: it is shown as far as that. */
static bool goes_on(moving_part_list *parts, const struct segment *segment)
{
    struct moving_part *last = parts->count > 0 ? &parts->at[parts->count - 1] : NULL;
    if (!last || segment->before != last->diagram.segment) {
        return false;
    }
    last->to = segment->begins;
    last->after = 0;
    return true;
}

void moving_parts_of(struct arena *arena, const diagram_list *diagrams, moving_part_list *parts)
{
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct diagram *diagram = &diagrams->at[i];
        if (!has_part(diagram)) {
            continue;
        }
        struct moving_part part = {
            .diagram = *diagram, .to = diagram->segment->duration, .after = MOVING_AFTER};
        part.again = told_before(parts, diagram);
        if (part.again) {
            part.from = real_max(0, answer_start(diagram) - MOVING_LEAD);
        }
        if (!goes_on(parts, diagram->segment)) {
            part.back = parts->count > 0 ? MOVING_BACK : 0;
            part.before = part.back + MOVING_BEFORE;
        }
        VEC_PUSH(arena, parts, part);
    }
}

static long tick_at(const struct moving_work *work, double t)
{
    return (long)floor(t / work->moving->tick + 0.5);
}

long moving_tick(const struct moving_work *work, double time)
{
    double t = time + work->shift;
    t = time <= work->part->from ? work->begin : time >= work->part->to ? work->end : t;
    return tick_at(work, t);
}

double moving_clock(const struct moving_work *work, long tick)
{
    double time = (double)tick * work->moving->tick - work->shift;
    return real_clamp(time, work->part->from, work->part->to);
}

double moving_time(const struct moving_work *work, double time)
{
    return (double)moving_tick(work, time) * work->moving->tick;
}

struct moving_group *moving_group_add(struct moving_work *work, enum scene_class class, body who)
{
    struct moving_group group = {.class = class, .who = who, .part = -1};
    VEC_PUSH(work->arena, &work->moving->groups, group);
    return &work->moving->groups.at[work->moving->groups.count - 1];
}

struct moving_mark *moving_mark_add(struct moving_work *work, struct moving_group *group)
{
    struct scene *scene = work->drawing.scene;
    struct moving_mark mark = {.item = scene->items.at[--scene->items.count]};
    VEC_PUSH(work->arena, &group->marks, mark);
    return &group->marks.at[group->marks.count - 1];
}

void moving_show(struct moving_work *work, moving_shows *shows, double from, double to)
{
    struct moving_show show = {moving_time(work, from), moving_time(work, to)};
    struct moving_show *last = shows->count > 0 ? &shows->at[shows->count - 1] : NULL;
    if (show.to <= show.from) {
        return;
    }
    if (show.to > work->moving->duration - work->moving->tick / 2) {
        show.to = work->moving->duration + 1; /* it stays */
    }
    if (last && show.from <= last->to + work->moving->tick / 2) {
        last->to = real_max(last->to, show.to);
    } else {
        VEC_PUSH(work->arena, shows, show);
    }
}

/* ---- a part ---- */

static void work_part(struct moving_work *work, size_t index)
{
    const struct moving_part *part = &work->parts[index];
    const struct segment *segment = part->diagram.segment;
    size_t common = step_task_count(&segment->play->steps.at[segment->step], -1);
    work->part = part;
    work->index = (int)index;
    work->begin = index > 0 ? work->end : 0;
    work->shift = work->begin + part->before - part->from;
    work->end = part->to + work->shift + part->after;
    work->whole = part->diagram;
    work->whole.branch = -1;
    work->drawing = (struct drawing){
        .arena = work->arena,
        .diagram = &work->whole,
        .options = work->options,
        .segment = segment,
        .play = segment->play,
        .scope = {0, part->common && common < segment->tasks ? common : segment->tasks, 0},
        .frame = work->frame,
        .scene = arena_new(work->arena, struct scene)};
    work->drawing.size = sizes_of(work->drawing.frame.k);
}

/* ---- ways ---- */

static void keys_take(struct moving_work *work, moving_keys *keys, long first, long last,
                      double within, double grain, moving_at *at, const void *ctx)
{
    size_t count = (size_t)(last - first + 1);
    struct moving_key *sample = arena_array(work->arena, struct moving_key, count);
    for (long tick = first; tick <= last; tick++) {
        sample[tick - first] = (struct moving_key){(double)tick * work->moving->tick,
                                                   at(work, ctx, moving_clock(work, tick))};
    }
    keys_add(work->arena, keys, sample, count, within, grain);
}

void keys_sample(struct moving_work *work, moving_keys *keys, long first, long last, double within,
                 moving_at *at, const void *ctx)
{
    keys_take(work, keys, first, last, within, MOVING_GRAIN, at, ctx);
}

void keys_share(struct moving_work *work, moving_keys *keys, long first, long last, double within,
                moving_at *at, const void *ctx)
{
    keys_take(work, keys, first, last, within, 0, at, ctx);
}

static struct vec2 place_of_ball(const struct moving_work *work, const void *ctx, double time)
{
    (void)ctx;
    return frame_point(&work->frame, segment_ball(work->drawing.segment, time));
}

static struct vec2 place_of_body(const struct moving_work *work, const void *ctx, double time)
{
    const body *who = ctx;
    return frame_point(&work->frame, segment_at(work->drawing.segment, *who, time));
}

/* The way of a body, or of the ball, between two moments of the part. While they return to where it
 * begins there is no key: they go straight there. */
static void way_add(struct moving_work *work, moving_keys *keys, double from, double to,
                    double metres, moving_at *at, const void *ctx)
{
    long first = moving_tick(work, from), last = moving_tick(work, to);
    long there = tick_at(work, work->begin + work->part->back);
    keys_sample(work, keys, first < there ? there : first, last,
                metres / FEET * work->drawing.size.k, at, ctx);
}

/* ---- the marks of players ---- */

static const struct vec2 nowhere = {0, 0};

/* How deep a numeral at `at` lies in somebody's room at that time, feet. */
static double on_somebody(const struct moving_work *work, body who, struct vec2 at, double time)
{
    const struct segment *segment = work->drawing.segment;
    const struct sizes *size = &work->drawing.size;
    double trouble = 0;
    for (int b = 0; b < BODY_COUNT; b++) {
        body other = (body)b;
        if (other == who || !segment->track[b].on_floor) {
            continue;
        }
        double room = body_is_defender(other)                  ? size->x_half
                      : segment_holder(segment, time) == other ? size->ring
                                                               : size->body;
        struct vec2 there = frame_point(&work->drawing.frame, segment_at(segment, other, time));
        trouble += real_max(0, 0.4 * size->x_numeral + room - vec2_distance(at, there)) / size->k;
    }
    return trouble;
}

/* The same of the bars that are seen then. */
static double on_bar(const struct moving_work *work, struct vec2 at, double time)
{
    const struct sizes *size = &work->drawing.size;
    double trouble = 0, now = moving_time(work, time);
    for (size_t i = 0; i < work->over.count; i++) {
        const struct moving_group *bar = &work->over.at[i];
        const struct path_element *path = bar->marks.at[0].item.path;
        double room = 0.4 * size->x_numeral + size->bar_stroke;
        if (bar->shows.count > 0 && now >= bar->shows.at[0].from && now < bar->shows.at[0].to) {
            double far = segment_distance(at, path[0].p[0], path[1].p[0], NULL);
            trouble += real_max(0, room - far) / size->k;
        }
    }
    return trouble;
}

/* How much of the time, and how deep, a numeral at `off` from this X lies on something. */
static double numeral_trouble(const struct moving_work *work, body who, struct vec2 off)
{
    double trouble = 0;
    for (double t = work->part->from; t <= work->part->to; t += LOOK) {
        struct vec2 x =
            frame_point(&work->drawing.frame, segment_at(work->drawing.segment, who, t));
        struct vec2 at = vec2_add(x, off);
        trouble += on_somebody(work, who, at, t) + on_bar(work, at, t);
    }
    return trouble;
}

/* Where a defender's numeral stands beside his X: the same place all the time. */
static struct vec2 numeral_side(struct moving_work *work, body who)
{
    static const struct vec2 ways[] = {{1, 0},      {-1, 0},      {0, 1},     {0, -1},
                                       {0.8, -0.8}, {-0.8, -0.8}, {0.8, 0.8}, {-0.8, 0.8}};
    const struct sizes *size = &work->drawing.size;
    double least = 1e9;
    struct vec2 best = {0, 0};
    for (size_t w = 0; w < sizeof ways / sizeof *ways; w++) {
        double trouble = 0;
        struct vec2 off = vec2_scale(ways[w], numeral_reach(size));
        for (size_t i = 0; i < work->count; i++) {
            work_part(work, i);
            if (work->drawing.segment->track[who].on_floor) {
                trouble += numeral_trouble(work, who, off);
            }
        }
        if (trouble < least - 1e-6) {
            least = trouble;
            best = off;
        }
    }
    return best;
}

/* A rim of floor round a numeral, so that lines stop short of it. */
static void rim(struct scene_item *item)
{
    item->stroke = ROLE_FLOOR;
    item->width = RIM * item->size;
}

static void defender_marks(struct moving_work *work, struct moving_group *group, struct vec2 off)
{
    struct drawing *drawing = &work->drawing;
    const struct sizes *size = &drawing->size;
    x_pen(drawing, nowhere, size->x_half);
    struct scene_item *clear =
        pen_stroke(drawing, CLASS_CLEAR, ROLE_FLOOR, size->x_stroke + 2 * size->casing);
    clear->cap = CAP_ROUND;
    moving_mark_add(work, group);
    x_pen(drawing, nowhere, size->x_half);
    pen_stroke(drawing, CLASS_DEFENDER, ROLE_DEFENDER, size->x_stroke);
    moving_mark_add(work, group);
    if (!size->small) {
        rim(put_text(drawing, CLASS_DEFENDER, body_text(drawing, group->who), off, size->x_numeral,
                     FACE_MEDIUM, ROLE_DEFENDER));
        moving_mark_add(work, group);
    }
}

static void attacker_marks(struct moving_work *work, struct moving_group *group)
{
    rim(put_text(&work->drawing, CLASS_PLAYER, body_text(&work->drawing, group->who), nowhere,
                 work->drawing.size.numeral, FACE_BOLD, ROLE_INK));
    moving_mark_add(work, group);
}

static bool ever_on_floor(const struct moving_work *work, body who)
{
    for (size_t i = 0; i < work->count; i++) {
        if (work->parts[i].diagram.segment->track[who].on_floor) {
            return true;
        }
    }
    return false;
}

static void actor_add(struct moving_work *work, body who)
{
    bool defends = body_is_defender(who);
    struct vec2 off = defends ? numeral_side(work, who) : nowhere;
    struct moving_group *group =
        moving_group_add(work, defends ? CLASS_DEFENDER : CLASS_PLAYER, who);
    if (defends) {
        defender_marks(work, group, off);
    } else {
        attacker_marks(work, group);
    }
    for (size_t i = 0; i < work->count; i++) {
        work_part(work, i);
        if (work->drawing.segment->track[who].on_floor) {
            way_add(work, &group->way, work->part->from, work->part->to,
                    defends ? WITHIN_X : WITHIN, place_of_body, &who);
        }
    }
}

/* ---- the ball: a ring round who has it, a dot in the air ---- */

/* In a part: goes with its holder, key by key. */
static void ring_follow(struct moving_work *work, struct moving_group *ring, size_t first)
{
    const struct segment *segment = work->drawing.segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        double from = moving_time(work, span->from), to = moving_time(work, span->to);
        for (size_t g = first; span->state == BALL_HELD && g < work->moving->groups.count; g++) {
            if (work->moving->groups.at[g].who == span->holder && to > from) {
                keys_copy(work->arena, &ring->way, &work->moving->groups.at[g].way, from, to);
                moving_show(work, &ring->shows, span->from, span->to);
            }
        }
    }
}

/* Under all attackers, who are the groups from `first` on: it may hide lines, but nobody. */
static void ring_add(struct moving_work *work, size_t first)
{
    struct moving_group ring = {.class = CLASS_BALL, .who = BODY_NONE, .part = -1};
    const struct sizes *size = &work->drawing.size;
    put_circle(&work->drawing, CLASS_BALL, nowhere, size->ring, ROLE_FLOOR, ROLE_INK,
               size->ring_stroke);
    moving_mark_add(work, &ring);
    for (size_t i = 0; i < work->count; i++) {
        work_part(work, i);
        ring_follow(work, &ring, first);
    }
    if (ring.shows.count == 0) {
        return;
    }
    VEC_PUSH(work->arena, &work->moving->groups, ring);
    struct moving_group *groups = work->moving->groups.at;
    for (size_t i = work->moving->groups.count - 1; i > first; i--) {
        groups[i] = groups[i - 1];
    }
    groups[first] = ring;
}

/* Its flights: where it is while somebody has it, the ring tells. */
static void ball_fly(struct moving_work *work, struct moving_group *ball)
{
    const struct segment *segment = work->drawing.segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state != BALL_HELD &&
            moving_time(work, span->to) > moving_time(work, span->from)) {
            way_add(work, &ball->way, span->from, span->to, WITHIN, place_of_ball, NULL);
            moving_show(work, &ball->shows, span->from, span->to);
        }
    }
}

static void ball_add(struct moving_work *work)
{
    struct moving_group *group = moving_group_add(work, CLASS_BALL, BODY_NONE);
    put_circle(&work->drawing, CLASS_BALL, nowhere, BALL_FEET * work->drawing.size.k, ROLE_INK,
               ROLE_NONE, 0);
    moving_mark_add(work, group);
    for (size_t i = 0; i < work->count; i++) {
        work_part(work, i);
        ball_fly(work, group);
    }
    if (group->shows.count == 0) {
        work->moving->groups.count--;
    }
}

/* ---- the whole ---- */

static void actors_add(struct moving_work *work)
{
    size_t first = 0;
    for (int defenders = work->options->hide_defense ? 0 : 1; defenders >= 0; defenders--) {
        first = work->moving->groups.count;
        for (int b = 0; b < BODY_COUNT; b++) {
            if (body_is_defender((body)b) == (defenders == 1) && ever_on_floor(work, (body)b)) {
                actor_add(work, (body)b);
            }
        }
    }
    ring_add(work, first);
    for (size_t i = 0; i < work->over.count; i++) {
        VEC_PUSH(work->arena, &work->moving->groups, work->over.at[i]);
    }
    ball_add(work);
}

static void props_add(struct moving_work *work)
{
    struct drawing *drawing = &work->drawing;
    symbols_place(drawing);
    props_place(drawing);
    queues_place(drawing);
    props_draw(drawing);
    struct scene_item *item = drawing->scene->items.at;
    size_t count = drawing->scene->items.count;
    drawing->scene->items.count = 0;
    drawing->symbols.count = 0;
    for (size_t i = 0; i < count; i++) {
        struct moving_group *group = moving_group_add(work, item[i].class, item[i].who);
        struct moving_mark mark = {.item = item[i]};
        VEC_PUSH(work->arena, &group->marks, mark);
    }
}

/* The title of the part over the floor. */
static void heading_add(struct moving_work *work)
{
    struct scene *scene = work->drawing.scene;
    struct moving_group *group = moving_group_add(work, CLASS_CAPTION, BODY_NONE);
    group->part = work->index;
    title_put(&work->drawing, &work->part->diagram, work->part->back > 0);
    while (scene->items.count > 0) {
        moving_mark_add(work, group);
    }
}

/* How long it all takes, and the ticks: a power of ten of them, so that each is told in few digits.
 */
static void clock_make(struct moving_work *work)
{
    struct moving *moving = work->moving;
    for (size_t i = 0; i < work->count; i++) {
        double begin = moving->duration;
        const struct moving_part *part = &work->parts[i];
        moving->duration += part->before + part->to - part->from + part->after;
        struct moving_show show = {begin, moving->duration};
        VEC_PUSH(work->arena, &moving->parts, show);
    }
    moving->duration = real_max(moving->duration, TICK);
    moving->tick = moving->duration / 10;
    for (moving->decimals = 1; moving->tick > TICK; moving->decimals++) {
        moving->tick /= 10;
    }
}

/* The lines of one part: trails under roads, and its title. */
static void lines_add(struct moving_work *work)
{
    roads_plan(work);
    for (int trails = 1; trails >= 0; trails--) {
        roads_add(work, trails == 1);
        flights_add(work, trails == 1);
    }
    if (work->options->heading) {
        heading_add(work);
    }
}

struct moving *moving_make(struct arena *arena, const struct moving_part *parts, size_t count,
                           const struct scene_options *options)
{
    struct moving *moving = arena_new(arena, struct moving);
    struct scene_options plain = *options;
    assert(count > 0);
    plain.accent = BODY_NONE;
    struct moving_work work = {
        .arena = arena, .moving = moving, .options = &plain, .parts = parts, .count = count};
    const struct frame *frame = &work.frame;
    work.frame = frame_of(arena, &parts[0].diagram, &plain);
    moving->width = frame->width;
    moving->height = frame->height;
    moving->scale = frame->k;
    moving->floor = (struct floor_place){frame->origin, frame->across, frame->down};
    moving->theme = options->theme;
    clock_make(&work);
    work_part(&work, 0);
    props_add(&work);
    for (size_t i = 0; i < count; i++) {
        work_part(&work, i);
        lines_add(&work);
    }
    actors_add(&work);
    return moving;
}
