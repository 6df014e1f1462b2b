/* SPDX-License-Identifier: MIT */
/* fill_in: steps with lines taken away and the question asked, two by two; the answers with small
 * diagrams, and a table to mark oneself, on a last page. */
#include "page/sheet/fill_in.h"

#include <string.h>

#include "page/sheet/asked.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"

#define TO_DIAGRAM 8.0
#define ROW_GAP 18.0
#define RULES 2        /* lines to write on, */
#define PITCH 19.0     /* so far apart */
#define BOX_LEFT 300.0 /* of the table to mark oneself */
#define BOX_WIDE 34.0

static const struct grid halves = {4, 2, 2, 237.6, 237.6, false, TYPE_SENTENCE, false};
static const struct grid thirds = {3, 3, 1, 152, 152, false, TYPE_OTHERS, false};

struct filling_in {
    struct rows rows;
    const struct run *run;
    asked_list asked;
};

/* ---- a scene with lines taken away ---- */

static bool is_of_line(const struct scene_item *item)
{
    return (item->class >= CLASS_MOVE && item->class <= CLASS_SHOT) || item->class == CLASS_END ||
           item->class == CLASS_ORDER;
}

/* Lines on which one of the missing tasks is drawn: a run that goes on is one line. */
static bool *lines_without(struct arena *arena, const struct scene *scene, const bool *missing)
{
    int most = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        most = scene->items.at[i].line > most ? scene->items.at[i].line : most;
    }
    bool *gone = arena_array(arena, bool, (size_t)most + 1);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line >= 0 && item->task >= 0 && missing[item->task]) {
            gone[item->line] = true;
        }
    }
    return gone;
}

/* Whose runs are missing, so that the dot at their end would tell where they go. */
static void find_runners(const struct asked *asked, bool runs[BODY_COUNT])
{
    const struct segment *segment = asked->diagram->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool throws = task->kind == TASK_PASS || task->kind == TASK_SHOOT;
        runs[task->who] = runs[task->who] || (asked->missing[i] && !throws);
    }
}

static const struct scene *scene_without(struct arena *arena, const struct scene *scene,
                                         const struct asked *asked)
{
    const bool *gone = lines_without(arena, scene, asked->missing);
    bool runs[BODY_COUNT] = {false};
    find_runners(asked, runs);
    struct scene *out = arena_new(arena, struct scene);
    *out = *scene;
    memset(&out->items, 0, sizeof out->items);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool end = item->class == CLASS_END && item->who < BODY_COUNT && runs[item->who];
        bool own = (item->line >= 0 && gone[item->line]) || end ||
                   (is_of_line(item) && item->task >= 0 && asked->missing[item->task]);
        if (!own) {
            VEC_PUSH(arena, &out->items, *item);
        }
    }
    return out;
}

/* ---- questions ---- */

/* Tall floors stand three in a row, and one row is a page. */
static const struct grid *grid_for(struct arena *arena, const diagram_list *diagrams)
{
    for (size_t i = 0; i < diagrams->count; i++) {
        struct scene_options options = {.width = halves.diagram};
        if (scene_height(arena, &diagrams->at[i], &options) > halves.diagram) {
            return &thirds;
        }
    }
    return &halves;
}

/* Heading and diagram of a column; returns where the diagram ends. */
static double set_picture(struct filling_in *filling, struct galley *row, const struct asked *asked,
                          const struct scene *scene, const struct grid *grid, double x)
{
    const struct setter *setter = &filling->rows.setter;
    struct str label = asked->diagram->label;
    struct str title = asked->title.size > 0
                           ? str_format(setter->arena, "%.*s\xE2\x80\x82%.*s", STR_ARG(label),
                                        STR_ARG(asked->title))
                           : str_format(setter->arena, "Step %.*s", STR_ARG(label));
    enum type type = grid == &thirds ? TYPE_SMALL_HEADING : TYPE_HEADING;
    double base =
        galley_text(row, words_set(setter, type, title, grid->column), x, HEADING_BASE, ROLE_TEXT);
    galley_keep(row);
    galley_scene(row, scene, x, base + TO_DIAGRAM);
    return base + TO_DIAGRAM + scene->height;
}

static const struct scene *whole_scene(struct filling_in *filling, const struct asked *asked,
                                       double width)
{
    struct scene_options options = {.width = width, .theme = THEME_PRINT, .accent = BODY_NONE};
    return scene_make(filling->rows.setter.arena, asked->diagram, &options);
}

static void set_question(struct filling_in *filling, struct galley *row, const struct asked *asked,
                         const struct grid *grid, double x)
{
    const struct setter *setter = &filling->rows.setter;
    const struct scene *scene =
        scene_without(setter->arena, whole_scene(filling, asked, grid->diagram), asked);
    double base = set_picture(filling, row, asked, scene, grid, x) + TO_SENTENCE;
    base = galley_text(row, words_set(setter, TYPE_ASKED, asked->draw, grid->column), x, base,
                       ROLE_TEXT);
    galley_keep(row);
    base = galley_text(row, words_set(setter, TYPE_SENTENCE, asked->question, grid->column), x,
                       base + type_leading(TYPE_SENTENCE), ROLE_TEXT);
    for (int i = 0; i < RULES; i++) {
        base += PITCH;
        galley_rule(row, vec2_of(x, base), vec2_of(x + grid->column, base), 0.8, ROLE_SOFT);
    }
}

/* A row on this page, or the next: with room above it where something stands there. */
static void place(struct filling_in *filling, struct galley *row, unsigned uses)
{
    struct page *page = rows_page(&filling->rows);
    bool fits = row->height + ROW_GAP <= rows_room(&filling->rows);
    page->y += page->empty || !fits ? 0 : ROW_GAP;
    rows_add(&filling->rows, row, uses);
}

static void add_questions(struct filling_in *filling, const struct grid *grid, unsigned uses)
{
    size_t across = (size_t)grid->across;
    for (size_t i = 0; i < filling->asked.count; i += across) {
        struct galley *row = galley_new(filling->rows.setter.arena);
        for (size_t k = 0; k < across && i + k < filling->asked.count; k++) {
            set_question(filling, row, &filling->asked.at[i + k], grid,
                         (double)k * grid_pitch(grid));
        }
        place(filling, row, uses);
    }
}

/* ---- answers ---- */

static void add_answers(struct filling_in *filling)
{
    const struct setter *setter = &filling->rows.setter;
    for (size_t i = 0; i < filling->asked.count; i += 3) {
        struct galley *row = galley_new(setter->arena);
        unsigned uses = 0;
        for (size_t k = 0; k < 3 && i + k < filling->asked.count; k++) {
            const struct asked *asked = &filling->asked.at[i + k];
            const struct scene *scene = whole_scene(filling, asked, thirds.diagram);
            double x = (double)k * grid_pitch(&thirds);
            double base = set_picture(filling, row, asked, scene, &thirds, x);
            galley_text(row, words_set(setter, TYPE_ASKED, asked->answer, thirds.column), x,
                        base + TO_SENTENCE, ROLE_TEXT);
            uses |= scene->uses;
        }
        place(filling, row, uses);
    }
}

/* "Lines, 2a   of 2 [ ]" */
static void add_mark(struct filling_in *filling, struct str what, size_t of, bool all)
{
    const double base = 12.6;
    struct galley *row = galley_new(filling->rows.setter.arena);
    const struct rows *rows = &filling->rows;
    enum type type = all ? TYPE_SMALL_HEADING : TYPE_SENTENCE;
    galley_text(row, rows_set(rows, type, what), 0, base, ROLE_TEXT);
    row_put_end(row, rows_set(rows, TYPE_NOTE, str_format(row->arena, "of %zu", of)), BOX_LEFT - 6,
                base, ROLE_SOFT);
    galley_box(row, vec2_of(BOX_LEFT, base - 9.5), vec2_of(BOX_LEFT + BOX_WIDE, base + 3.5),
               all ? 1.1 : 0.7, all ? ROLE_INK : ROLE_RULE, FILL_OPEN);
    row_end(row, all ? 0.9 : 0.5);
    rows_add(&filling->rows, row, 0);
}

static void add_marks(struct filling_in *filling)
{
    struct arena *arena = filling->rows.setter.arena;
    struct rows *rows = &filling->rows;
    const double row_height = 18;
    if (rows_room(rows) < row_height * (double)(filling->asked.count + 4)) {
        rows_turn(rows, false);
    } else {
        rows_page(rows)->y += ROW_GAP;
    }
    rows_add(rows,
             rows_section(rows, STR("Mark yourself"),
                          STR("A point for each line that starts, bends and ends as here.")),
             0);
    size_t lines = 0;
    for (size_t i = 0; i < filling->asked.count; i++) {
        const struct asked *asked = &filling->asked.at[i];
        add_mark(filling, str_format(arena, "Lines, %.*s", STR_ARG(asked->diagram->label)),
                 asked->lines, false);
        lines += asked->lines;
    }
    add_mark(filling, STR("Answers"), filling->asked.count, false);
    add_mark(filling, STR("All"), lines + filling->asked.count, true);
}

/* ---- the play ---- */

static struct head_words *head_of(struct filling_in *filling, const char *sheet)
{
    struct arena *arena = filling->rows.setter.arena;
    const struct play *play = filling->run->play;
    struct head_words *head = arena_new(arena, struct head_words);
    struct str level = words_level(arena, play->level);
    *head = head_of_play(arena, play, str_format(arena, "%s, %.*s", sheet, STR_ARG(level)));
    head->clock = STR("");
    return head;
}

/* What the whole play would show in its key: the lines that are asked for must be in it. */
static unsigned uses_of(struct filling_in *filling)
{
    unsigned uses = 0;
    for (size_t i = 0; i < filling->asked.count; i++) {
        struct scene_options options = {.width = thirds.diagram, .accent = BODY_NONE};
        uses |=
            scene_make(filling->rows.setter.arena, filling->asked.at[i].diagram, &options)->uses;
    }
    return uses;
}

static void add_play(struct filling_in *filling, const struct run *run)
{
    struct arena *arena = filling->rows.setter.arena;
    diagram_list *diagrams = arena_new(arena, diagram_list);
    filling->run = run;
    filling->asked = (asked_list){0};
    scene_diagrams(arena, run, diagrams);
    const struct grid *grid = grid_for(arena, diagrams);
    asked_of(arena, run->play, diagrams, filling->rows.setter.job->seed, (size_t)grid->per_page,
             &filling->asked);
    if (filling->asked.count == 0) {
        return; /* nothing moves in it */
    }
    struct caution caution = caution_of_play(run->play);
    struct head_words *head = head_of(filling, "Fill-in sheet");
    head->series = STR("Name ______________  Number ____");
    head->about =
        STR("Draw the lines that are missing, then answer. The answers are on the last page.");
    rows_open(&filling->rows, head, &caution);
    add_questions(filling, grid, uses_of(filling));
    head = head_of(filling, "Fill-in sheet, answers");
    head->series = STR("Answers");
    head->about = STR("Compare line by line.");
    filling->rows.head = head;
    rows_turn(&filling->rows, true);
    add_answers(filling);
    add_marks(filling);
}

bool fill_in_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                   struct writer *writer)
{
    struct filling_in filling = {.rows = {.setter = {.arena = arena, .fonts = fonts, .job = job}}};
    for (size_t i = 0; i < job->count; i++) {
        add_play(&filling, job->plays[i].run);
    }
    struct str title = job->count == 1 ? str_format(arena, "%.*s, fill-in sheet",
                                                    STR_ARG(job->plays[0].run->play->name))
                                       : STR("fill-in sheets");
    return rows_write(&filling.rows, title, writer);
}
