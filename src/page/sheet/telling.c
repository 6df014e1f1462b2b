/* SPDX-License-Identifier: MIT */
/* telling: blocks of a page. Takes what was told and drawn of a step; must not know pages. */
#include "page/sheet/telling.h"

#include "language/tell/tell.h"

#include <assert.h>

#define GUTTER 28.8
#define GUTTER_NARROW 24.0
#define TO_DIAGRAM 8.0 /* from a heading's baseline */
#define SENTENCE_GAP 1.2
#define POINT_GAP 1.5
#define INDENT 15.0
#define DISC_PITCH 13.0
#define HEADING_MOST 4 /* lines */
#define TO_AFTER 8.0   /* from a title to what it goes on from */
#define NARROW 200.0   /* a column narrower than this has the smaller headings */

/* ---- headings ---- */

static struct heading heading_make(const struct setter *setter, struct str label, struct str title,
                                   struct str after, enum type type, double width)
{
    struct heading heading = {.type = type, .lines = 1};
    if (label.size > 0) {
        heading.label = words_set(setter, type, label, 0);
        heading.indent = text_width(heading.label) + type_leading(type) / 2;
    }
    if (title.size > 0) {
        struct str shown = words_fit(setter, type, title, width - heading.indent, HEADING_MOST);
        heading.whole = str_equal(shown, title) ? STR("") : title;
        heading.title = words_set(setter, type, shown, width - heading.indent);
        heading.lines = text_lines(heading.title);
    }
    if (after.size > 0) {
        heading.after = words_set(setter, TYPE_NOTE, after, 0);
        double beside = heading.title ? text_width(heading.title) + TO_AFTER : 0;
        double end = heading.indent + beside + text_width(heading.after);
        heading.after_under = heading.lines > 1 || end > width;
        heading.lines += heading.after_under;
    }
    return heading;
}

/* The column goes on as if the heading had `lines` lines: diagrams side by side stand level. */
static void set_heading(struct column *column, const struct heading *heading, size_t lines)
{
    double base = column->base + HEADING_BASE;
    if (heading->label) {
        galley_text(column->galley, heading->label, column->x, base, ROLE_TEXT);
        galley_keep(column->galley);
    }
    if (heading->title) {
        galley_text(column->galley, heading->title, column->x + heading->indent, base, ROLE_TEXT);
        galley_keep(column->galley);
    }
    if (heading->after && heading->title) {
        bool under = heading->after_under;
        double x = column->x + heading->indent;
        double down = type_leading(heading->type) * (double)(heading->lines - 1);
        x += under ? 0 : text_width(heading->title) + TO_AFTER;
        galley_text(column->galley, heading->after, x, under ? base + down : base, ROLE_SOFT);
        galley_keep(column->galley);
    }
    column->base = base + type_leading(heading->type) * (double)(lines - 1);
}

static struct heading telling_heading(const struct setter *setter, const struct telling *telling,
                                      const struct grid *grid)
{
    enum type type = grid->diagram < NARROW ? TYPE_SMALL_HEADING : TYPE_HEADING;
    struct str label = telling->diagram->label;
    struct str title =
        telling->branch ? tell_branch(setter->arena, telling->branch) : telling->step->title;
    if (title.size == 0) {
        title = str_format(setter->arena, "Step %d", telling->step->number);
        label = STR("");
    }
    struct str after = scene_after(setter->arena, telling->diagram);
    return heading_make(setter, label, title, after, type, grid->column);
}

static void set_disc(struct column *column, int order, double x, double base, enum role role)
{
    struct str text = str_format(column->setter->arena, "%d", order);
    galley_disc(column->galley, words_set(column->setter, TYPE_DISC, text, 0), x + GALLEY_DISC,
                base - 3.3, role);
}

/* Is the sentence of this task about the reader alone? It is told as "your job". */
static bool is_own(const struct telling *telling, size_t index, body reader)
{
    int branch = telling->diagram->branch;
    const struct sentence *sentence = step_task(telling->step, branch, index)->sentence;
    size_t count = step_task_count(telling->step, branch);
    for (size_t i = 0; i < count; i++) {
        const struct task *task = step_task(telling->step, branch, i);
        bool same = i == index || (sentence && task->sentence == sentence);
        if (same && task->who != reader) {
            return false;
        }
    }
    return true;
}

/* One sentence behind its disc, if it has one. */
static void set_sentence(struct column *column, struct str told, int order, double indent,
                         enum type type)
{
    double gap = column->gap ? SENTENCE_GAP : 0;
    double base = column->base + gap + type_leading(type);
    const struct text_block *words = words_set(column->setter, type, told, column->width - indent);
    if (indent > 0 && order > 0) {
        set_disc(column, order, column->x, base, ROLE_ORDER);
    }
    enum role role = type == TYPE_OTHERS ? ROLE_SOFT : ROLE_TEXT;
    column->base = galley_text(column->galley, words, column->x + indent, base, role);
    column->gap = true;
}

/* The sentences of a step behind their discs; those that have no place in the order (who stays
 * where) come last. */
static void set_sentences(struct column *column, const struct telling *telling, enum type type)
{
    body reader = column->setter->job->reader;
    int branch = telling->diagram->branch;
    size_t count = step_task_count(telling->step, branch);
    double indent = 0; /* a disc that has no place in the diagram keeps its place here */
    for (size_t i = telling->first_task; i < count; i++) {
        indent = step_task(telling->step, branch, i)->order > 0 ? INDENT : indent;
    }
    column->gap = false;
    for (int pass = 0; pass < 2; pass++) {
        for (size_t i = telling->first_task; i < count; i++) {
            int order = step_task(telling->step, branch, i)->order;
            if ((order == 0) != (pass == 1) ||
                (reader != BODY_NONE && i >= telling->own_task && is_own(telling, i, reader))) {
                continue;
            }
            struct str told = (column->gap ? tell_task : tell_task_first)(
                column->setter->arena, telling->play, telling->step, branch, i);
            if (told.size > 0) {
                set_sentence(column, told, order, indent, type);
            }
        }
    }
}

static struct str point_text(const struct column *column, const struct play *play,
                             const struct point *point)
{
    struct arena *arena = column->setter->arena;
    body reader = column->setter->job->reader;
    bool own = reader != BODY_NONE && body_number(reader) == point->player;
    return own ? tell_bold(arena, point->text, play->players)
               : words_point(arena, point, play->players);
}

bool point_is_for(const struct point *point, body reader)
{
    return reader == BODY_NONE || point->player == 0 || point->player == body_number(reader);
}

void points_set(struct column *column, const struct play *play, const point_list *points,
                double gap)
{
    double top = 0;
    for (size_t i = 0; i < points->count; i++) {
        const struct point *point = &points->at[i];
        if (!point_is_for(point, column->setter->job->reader)) {
            continue;
        }
        double base = column->base + (top > 0 ? type_leading(TYPE_POINT) + POINT_GAP : gap);
        const struct text_block *words = words_set(
            column->setter, TYPE_POINT, point_text(column, play, point), column->width - INDENT);
        top = top > 0 ? top : base - 7;
        column->base = galley_text(column->galley, words, column->x + INDENT, base, ROLE_TEXT);
    }
    if (top > 0) {
        galley_rule(column->galley, vec2_of(column->x + 5, top),
                    vec2_of(column->x + 5, column->base + 2.5), 1.1, ROLE_INK);
    }
}

/* The discs of the sentences that are told as the reader's job, in a row from `x` on. */
static void set_own_discs(struct column *column, const struct telling *telling, double x,
                          double base)
{
    int branch = telling->diagram->branch;
    for (size_t i = telling->own_task; i < step_task_count(telling->step, branch); i++) {
        int order = step_task(telling->step, branch, i)->order;
        if (order > 0 && is_own(telling, i, column->setter->job->reader)) {
            set_disc(column, order, x, base, ROLE_ACCENT);
            x += DISC_PITCH;
        }
    }
}

/* In a drill a number is a spot that all take. */
static struct str job_heading(const struct setter *setter, const struct play *play)
{
    if (play->is_drill) {
        return str_format(setter->arena, "When you are %d", body_number(setter->job->reader));
    }
    return setter->job->instead_of ? STR("If you stand in") : STR("Your job");
}

/* "Your job" with the discs of its sentences behind it and the player's own rule beside it. */
static void set_job(struct column *column, const struct telling *telling)
{
    const double indent = 10;
    const struct setter *setter = column->setter;
    struct str told =
        tell_job_once(setter->arena, telling->play, telling->step, telling->diagram->branch,
                      setter->job->reader, scene_begins_again(telling->diagram));
    if (told.size == 0) {
        return;
    }
    double base = column->base + TO_SENTENCE - 2;
    double top = base - 7.4;
    const struct text_block *heading =
        words_set(setter, TYPE_SMALL_HEADING, job_heading(setter, telling->play), 0);
    galley_text(column->galley, heading, column->x + indent, base, ROLE_ACCENT);
    galley_keep(column->galley);
    set_own_discs(column, telling, column->x + indent + text_width(heading) + 5, base);
    base += type_leading(TYPE_JOB);
    const struct text_block *words = words_set(setter, TYPE_JOB, told, column->width - indent);
    column->base = galley_text(column->galley, words, column->x + indent, base, ROLE_TEXT);
    galley_rule(column->galley, vec2_of(column->x + 1.2, top),
                vec2_of(column->x + 1.2, column->base + 3.7), 2.4, ROLE_ACCENT);
    column->base += 3.5;
}

/* What is said of a step, its title too if the heading is too short for it; first baseline `lead`
 * under the column's base. */
static void set_words(struct column *column, const struct telling *telling, struct str title,
                      const struct grid *grid)
{
    enum type sentence = grid->sentence;
    if (title.size > 0) {
        const struct text_block *words =
            words_set(column->setter, TYPE_SMALL_HEADING, title, column->width);
        column->base =
            galley_text(column->galley, words, column->x, column->base + TO_SENTENCE, ROLE_TEXT);
    }
    if (column->setter->job->reader == BODY_NONE) {
        column->base += TO_SENTENCE - type_leading(sentence);
        set_sentences(column, telling, sentence);
    } else {
        set_job(column, telling);
        set_sentences(column, telling, TYPE_OTHERS);
    }
    points_set(column, telling->play, telling->points, 17);
    if (grid->run_on && !telling->branch && telling->step->branches.count > 0) {
        struct str told = tell_decides_here(column->setter->arena, telling->play, telling->step,
                                            column->setter->job->reader);
        column->base = galley_text(
            column->galley, words_set(column->setter, TYPE_SMALL_HEADING, told, column->width),
            column->x, column->base + TO_SENTENCE + 3, ROLE_TEXT);
    }
}

/* Of a way on the reader's own lines are those of it alone, as her job is; of one that begins with
 * its step all of them: "begin as in step 1". */
static struct scene_options picture_options(const struct setter *setter,
                                            const struct diagram *diagram, double width)
{
    return (struct scene_options){.width = width,
                                  .theme = THEME_PRINT,
                                  .accent = setter->job->reader,
                                  .accent_at = scene_own_task(diagram),
                                  .findings = setter->findings,
                                  .told_elsewhere = true,
                                  .memory = setter->job->pictures,
                                  .names = head_names(setter->job, diagram->segment->play)};
}

/* Several ways to set a play take the same pictures. */
static const struct scene *scene_of(const struct setter *setter, const struct diagram *diagram,
                                    double width)
{
    for (size_t i = 0; i < setter->kept->scenes.count; i++) {
        const struct drawn *drawn = &setter->kept->scenes.at[i];
        if (drawn->diagram.segment == diagram->segment &&
            drawn->diagram.branch == diagram->branch && drawn->width == width) {
            return drawn->scene;
        }
    }
    struct scene_options options = picture_options(setter, diagram, width);
    struct drawn drawn = {*diagram, width, scene_blank(setter->arena, diagram, &options), false};
    VEC_PUSH(setter->arena, &setter->kept->scenes, drawn);
    return drawn.scene;
}

static void draw_picture(const struct setter *setter, const struct scene *scene)
{
    for (size_t i = 0; i < setter->kept->scenes.count; i++) {
        struct drawn *drawn = &setter->kept->scenes.at[i];
        if (drawn->scene == scene && !drawn->made) {
            struct scene_options options = picture_options(setter, &drawn->diagram, drawn->width);
            *drawn->scene = *scene_make(setter->arena, &drawn->diagram, &options);
            drawn->made = true;
        }
    }
}

void pictures_draw(const struct setter *setter, const page_list *pages)
{
    for (size_t i = 0; i < pages->count; i++) {
        const struct galley *galley = pages->at[i].galley;
        for (size_t k = 0; k < galley->items.count; k++) {
            if (galley->items.at[k].kind == PLACED_SCENE) {
                draw_picture(setter, galley->items.at[k].scene);
            }
        }
    }
}

static struct telling telling_make(const struct setter *setter, const struct run *run,
                                   const struct diagram *diagram, double width)
{
    const struct step *step = &run->play->steps.at[diagram->step];
    struct telling telling = {.play = run->play,
                              .diagram = diagram,
                              .step = step,
                              .scene = scene_of(setter, diagram, width),
                              .points = &step->points};
    if (diagram->branch >= 0) {
        telling.branch = &step->branches.at[diagram->branch];
        telling.first_task = scene_first_task(diagram);
        telling.own_task = telling.first_task > 0 ? step->tasks.count : 0;
        telling.points = &telling.branch->points;
    }
    return telling;
}

void row_add(const struct setter *setter, struct row *row, const struct grid *grid,
             const struct run *run, const struct diagram *diagram)
{
    struct telling telling = telling_make(setter, run, diagram, grid->diagram);
    struct heading heading = telling_heading(setter, &telling, grid);
    assert(row->count < sizeof row->telling / sizeof *row->telling);
    double height = telling.scene->height;
    row->height = height > row->height ? height : row->height;
    row->lines = heading.lines > row->lines ? heading.lines : row->lines;
    row->heading[row->count] = heading;
    row->telling[row->count++] = telling;
}

/* Heading, diagram, words of one. */
static void set_telling(struct column *column, const struct row *row, size_t index,
                        const struct grid *grid)
{
    const struct telling *telling = &row->telling[index];
    set_heading(column, &row->heading[index], row->lines);
    double top = column->base + TO_DIAGRAM;
    galley_scene(column->galley, telling->scene, column->x, top);
    if (grid->beside) {
        column->x += grid->diagram + BESIDE_GAP;
        column->width -= grid->diagram + BESIDE_GAP;
        column->base = top - 6;
    } else {
        column->base = top + row->height;
    }
    set_words(column, telling, row->heading[index].whole, grid);
}

double grid_pitch(const struct grid *grid)
{
    return grid->column + (grid->column < NARROW ? GUTTER_NARROW : GUTTER);
}

void row_set(const struct setter *setter, struct band *band, struct row *row,
             const struct grid *grid, double top)
{
    for (size_t i = 0; i < row->count; i++) {
        double x = (double)i * grid_pitch(grid);
        struct column column = {setter, band->galley, x, grid->column, top, false};
        set_telling(&column, row, i, grid);
        band->columns[i] = column.base;
        band->words = column.base > band->words ? column.base : band->words;
        band->last = row->telling[i].step->number;
    }
    *row = (struct row){.count = 0};
}

void section_set(struct column *column, struct str words)
{
    column->base += column->base > 0 ? 20.6 - HEADING_BASE : 0;
    struct heading heading =
        heading_make(column->setter, STR(""), words, STR(""), TYPE_HEADING, column->width);
    set_heading(column, &heading, heading.lines);
}

void paragraph_set(struct column *column, struct str heading, struct str text)
{
    section_set(column, heading);
    const struct text_block *words = words_set(column->setter, TYPE_SENTENCE, text, column->width);
    column->base =
        galley_text(column->galley, words, column->x, column->base + TO_SENTENCE, ROLE_TEXT);
}
