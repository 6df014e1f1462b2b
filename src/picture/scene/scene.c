/* SPDX-License-Identifier: MIT */
/* scene: the order of work on one page: from a segment of a run to the display list of its diagram.
 */
#include "language/tell/tell.h"
#include "picture/scene/again.h"

enum { TURNS = 3 };

/* "2", or "2a" for the first way on. */
static struct str diagram_label(struct arena *arena, const struct step *step, int branch)
{
    if (branch < 0) {
        return str_format(arena, "%d", step->number);
    }
    return str_format(arena, "%d%c", step->number, branch_letter(step, branch));
}

static struct str diagram_title(const struct step *step, int branch)
{
    return branch < 0 ? step->title : step->branches.at[branch].title;
}

static void diagram_add(struct arena *arena, const struct segment *segment, int branch,
                        diagram_list *diagrams)
{
    const struct step *step = &segment->play->steps.at[segment->step];
    struct diagram diagram = {segment, segment->step, branch, diagram_label(arena, step, branch),
                              diagram_title(step, branch)};
    VEC_PUSH(arena, diagrams, diagram);
}

/* Whether every screen of the common sentences was set on this way: a slip leaves before. */
static bool sets_its_screens(const struct segment *segment, const struct step *step)
{
    for (size_t i = 0; i < step->tasks.count && i < segment->tasks; i++) {
        if (step->tasks.at[i].kind == TASK_SCREEN && segment->record[i].time[MOMENT_SET] < 0) {
            return false;
        }
    }
    return true;
}

/* The way from which a step's common part is drawn: the first on which its screens are set. */
static const struct segment *common_way(const struct run *run, size_t first,
                                        const struct step *step)
{
    const struct segment *way = run->segments.at[first];
    for (size_t i = first; i < run->segments.count; i++) {
        const struct segment *other = run->segments.at[i];
        if (other->step != way->step) {
            break;
        }
        if (sets_its_screens(other, step)) {
            return other;
        }
    }
    return way;
}

void scene_diagrams(struct arena *arena, const struct run *run, diagram_list *diagrams)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        const struct step *step = &segment->play->steps.at[segment->step];
        /* the common part, once; a step that is all branches has none */
        if (segment->branch <= 0 && (step->branches.count == 0 || step_task_count(step, -1) > 0)) {
            diagram_add(arena, common_way(run, i, step), -1, diagrams);
        }
        if (segment->branch >= 0) {
            int told = branch_told(step, segment->branch); /* a step's ways stand side by side */
            size_t at = i - (size_t)segment->branch + (size_t)told;
            diagram_add(arena, run->segments.at[at], told, diagrams);
        }
    }
}

const struct diagram *scene_first_diagram(const diagram_list *diagrams, size_t step)
{
    for (size_t i = 0; i < diagrams->count; i++) {
        if (diagrams->at[i].step == (int)step) {
            return &diagrams->at[i];
        }
    }
    return NULL;
}

/* "Lantern, step 2: Cross screen" */
static struct str scene_title(struct arena *arena, const struct diagram *diagram)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_add(&out, diagram->segment->play->name);
    strbuf_text(&out, ", step ");
    strbuf_add(&out, diagram->label);
    if (diagram->title.size > 0) {
        strbuf_text(&out, ": ");
        strbuf_add(&out, diagram->title);
    }
    return strbuf_str(&out);
}

static void page_draw(struct drawing *drawing)
{
    const struct frame *frame = &drawing->frame;
    pen_move(drawing, vec2_of(0, 0));
    pen_line(drawing, vec2_of(frame->width, 0));
    pen_line(drawing, vec2_of(frame->width, drawing->scene->height));
    pen_line(drawing, vec2_of(0, drawing->scene->height));
    pen_close(drawing);
    pen_fill(drawing, CLASS_PAGE, ROLE_PAGE);
}

/* By the order of the sentences, so that a later line lies over an earlier one. */
static bool comes_after(const struct stroke *a, const struct stroke *b)
{
    if (a->standing != b->standing) {
        return b->standing;
    }
    int first = a->part[a->parts - 1].task, second = b->part[b->parts - 1].task;
    return first > second;
}

static void strokes_sort(struct drawing *drawing)
{
    for (size_t i = 1; i < drawing->strokes.count; i++) {
        struct stroke stroke = drawing->strokes.at[i];
        size_t at = i;
        for (; at > 0 && comes_after(&drawing->strokes.at[at - 1], &stroke); at--) {
            drawing->strokes.at[at] = drawing->strokes.at[at - 1];
        }
        drawing->strokes.at[at] = stroke;
    }
}

/* Lines go off what they lie on, defenders off the lines, and lines off those who could not. */
static void crowds_part(struct drawing *drawing)
{
    (void)lines_repair(drawing);
    if (defenders_yield(drawing)) {
        drawing->defenders_stay = true;
        (void)lines_repair(drawing);
    }
}

/* The n-th stop of each that is no numeral. */
static void stops_nudge(struct drawing *drawing)
{
    int stops[BODY_COUNT] = {0};
    for (size_t i = 0; i < drawing->stops.count; i++) {
        struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_SYMBOL || stop->who >= BODY_COUNT) {
            continue;
        }
        int n = stops[stop->who]++;
        stop->at = vec2_add(stop->at, nudge_of(drawing, stop->who, n));
        if (n < SCENE_RESTS && (stop->kind == STOP_RING || stop->kind == STOP_BAR)) {
            drawing->scene->rests[n] |= 1U << stop->who;
        }
    }
}

/* Everything is placed before anything is drawn. */
static void plan(struct drawing *drawing)
{
    symbols_place(drawing);
    props_place(drawing);
    chain_make(drawing);
    stops_nudge(drawing);
    strokes_sort(drawing);
    queues_place(drawing);
    settle(drawing);
    trace_moves(drawing);
    open_corners(drawing);
    (void)defenders_yield(drawing);
    bend_round(drawing);
    throws_make(drawing);
    rims_cut(drawing);
    throws_aim(drawing);
    (void)defenders_yield(drawing);
    for (int turn = 0; turn < TURNS && (bend_off(drawing) || turn == 0); turn++) {
        bend_round(drawing); /* which may bring some together again */
    }
    rims_cut(drawing);
    throws_aim(drawing);
    passes_round(drawing);
    lights_off(drawing);
    trim(drawing);
    bars_square(drawing);
    crowds_part(drawing);
    lights_cut(drawing);
    strokes_sort(drawing);
    ink_make(drawing);
    heads_part(drawing);
    crossings_find(drawing);
    symbols_number(drawing);
    discs_place(drawing);
    sides_count(drawing);
}

static void measure(struct arena *arena, const struct diagram *diagram,
                    const struct scene_options *options, const struct frame *frame,
                    struct scene *scene)
{
    scene->width = frame->width;
    scene->height = frame->height + caption_height(arena, diagram, options, frame->width);
    scene->theme = options->theme;
    scene->scale = frame->k;
    scene->floor = (struct floor_place){frame->origin, frame->across, frame->down};
}

struct scene *scene_blank(struct arena *arena, const struct diagram *diagram,
                          const struct scene_options *options)
{
    struct scene *scene = arena_new(arena, struct scene);
    struct frame frame = frame_of(arena, diagram, options);
    measure(arena, diagram, options, &frame, scene);
    return scene;
}

struct scene *scene_layout(struct arena *arena, const struct diagram *diagram,
                           const struct scene_options *options, const struct nudges *nudges)
{
    const struct segment *segment = diagram->segment;
    struct drawing drawing = {.arena = arena,
                              .diagram = diagram,
                              .options = options,
                              .segment = segment,
                              .play = segment->play,
                              .scope = scope_of(diagram),
                              .nudges = nudges,
                              .frame = frame_of(arena, diagram, options),
                              .scene = arena_new(arena, struct scene)};
    struct scene *scene = drawing.scene;
    drawing.size = sizes_of(drawing.frame.k);
    drawing.size.small = drawing.size.small || options->plain;
    measure(arena, diagram, options, &drawing.frame, scene);
    scene->title = scene_title(arena, diagram);
    struct str told = tell_diagram(arena, segment->play, &segment->play->steps.at[diagram->step],
                                   diagram->branch, drawing.scope.first);
    struct str caution = tell_caution(arena, segment->play);
    scene->description = str_format(arena, "%.*s %.*s", STR_ARG(told), STR_ARG(caution));
    plan(&drawing);
    page_draw(&drawing);
    court_draw(&drawing);
    findings_under(&drawing);
    symbols_clear(&drawing);
    strokes_draw(&drawing);
    props_draw(&drawing);
    beads_draw(&drawing);
    rings_draw(&drawing);
    symbols_draw(&drawing);
    discs_draw(&drawing);
    beads_time(&drawing);
    findings_draw(&drawing);
    names_draw(&drawing);
    caption_draw(&drawing);
    return scene;
}

/* What to move is sought in the picture that is nobody's, so that it is the same in everybody's,
 * and is sought once. */
static struct nudges nudges_for(struct arena *arena, const struct diagram *diagram,
                                const struct scene_options *options)
{
    const struct nudges *known = memory_find(diagram, options);
    if (known) {
        return *known;
    }
    struct arena_mark mark = arena_mark(arena);
    struct scene_options plain = *options;
    plain.accent = BODY_NONE;
    plain.names = NULL;
    plain.findings = NULL;
    const struct scene *first = scene_layout(arena, diagram, &plain, NULL);
    struct nudges nudges = again_nudges(arena, diagram, &plain, first);
    arena_release(arena, mark);
    memory_keep(diagram, options, &nudges);
    return nudges;
}

struct scene *scene_make(struct arena *arena, const struct diagram *diagram,
                         const struct scene_options *options)
{
    struct arena_mark mark = arena_mark(arena);
    struct scene *scene = scene_layout(arena, diagram, options, NULL);
    if (!again_is_needed(arena, scene)) {
        return scene;
    }
    struct nudges nudges = nudges_for(arena, diagram, options);
    if (nudges.count == 0) {
        return scene;
    }
    arena_release(arena, mark);
    return scene_layout(arena, diagram, options, &nudges);
}

struct scene *scene_copy(struct arena *arena, const struct scene *scene)
{
    struct scene *copy = arena_new(arena, struct scene);
    *copy = *scene;
    copy->title = str_copy(arena, scene->title);
    copy->description = str_copy(arena, scene->description);
    copy->items.at = arena_array(arena, struct scene_item, scene->items.count);
    copy->items.room = scene->items.count;
    for (size_t i = 0; i < scene->items.count; i++) {
        struct scene_item *item = &copy->items.at[i];
        *item = scene->items.at[i];
        item->text = item->text.size > 0 ? str_copy(arena, item->text) : STR("");
        if (item->count > 0) {
            item->path = arena_array(arena, struct path_element, item->count);
            memcpy(item->path, scene->items.at[i].path, item->count * sizeof *item->path);
        }
    }
    return copy;
}

static void item_enlarge(struct scene_item *item, double times)
{
    item->at = vec2_scale(item->at, times);
    item->width *= times;
    item->radius *= times;
    item->size *= times;
    for (size_t i = 0; i < item->count; i++) {
        for (int k = 0; k < 3; k++) {
            item->path[i].p[k] = vec2_scale(item->path[i].p[k], times);
        }
    }
}

struct scene *scene_enlarge(struct arena *arena, const struct scene *scene, double times)
{
    struct scene *large = scene_copy(arena, scene);
    for (size_t i = 0; i < large->items.count; i++) {
        item_enlarge(&large->items.at[i], times);
    }
    large->width *= times;
    large->height *= times;
    large->scale *= times;
    large->floor = (struct floor_place){vec2_scale(scene->floor.origin, times),
                                        vec2_scale(scene->floor.across, times),
                                        vec2_scale(scene->floor.down, times)};
    return large;
}

double scene_height(struct arena *arena, const struct diagram *diagram,
                    const struct scene_options *options)
{
    struct frame frame = frame_of(arena, diagram, options);
    return frame.height + caption_height(arena, diagram, options, frame.width);
}
