/* SPDX-License-Identifier: MIT */
/* fill_in: steps with lines taken away and the question asked, two by two; the answers with small
 * diagrams, and a table to mark oneself, on a last page. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/asked.h"
#include "page/sheet/blanked.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"

#define TO_DIAGRAM 8.0
#define ROW_GAP 18.0
#define RULES 2        /* lines to write on, */
#define PITCH 19.0     /* so far apart */
#define BOX_LEFT 300.0 /* of the table to mark oneself */
#define BOX_WIDE 34.0
#define TO_OF 44.0 /* kept before the box for "of 12" */

static const struct grid halves = {4, 2, 2, 237.6, 237.6, false, TYPE_SENTENCE, false};
static const struct grid thirds = {3, 3, 1, 152, 152, false, TYPE_OTHERS, false};

struct filling_in {
    struct rows rows;
    const struct run *run;
    asked_list asked;
};

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

/* "1a  x3 trails" over a question. */
static struct str question_heading(struct arena *arena, const struct asked *asked)
{
    struct str label = asked->diagram->label;
    return asked->title.size > 0
               ? str_format(arena, "%.*s\xE2\x80\x82%.*s", STR_ARG(label), STR_ARG(asked->title))
               : str_format(arena, "Step %.*s", STR_ARG(label));
}

/* "2. Lantern, step 1a, x3 trails: Curl": which question it answers, and of what. */
static struct str answer_heading(const struct filling_in *filling, size_t index)
{
    struct arena *arena = filling->rows.setter.arena;
    const struct play *play = filling->run->play;
    const struct diagram *diagram = filling->asked.at[index].diagram;
    const struct step *step = &play->steps.at[diagram->step];
    struct str title =
        diagram->branch < 0 ? step->title : tell_branch(arena, &step->branches.at[diagram->branch]);
    return str_format(arena, "%zu. %.*s, step %.*s%s%.*s", index + 1,
                      STR_ARG(words_isolated(arena, play->name)), STR_ARG(diagram->label),
                      title.size > 0 ? ", " : "", STR_ARG(title));
}

/* Pictures side by side, each under its heading. */
struct pictures {
    const struct grid *grid;
    const struct text_block *heading[3];
    size_t count, lines; /* of the tallest heading: the pictures stand level */
    enum type type;
};

static struct pictures pictures_of(const struct grid *grid)
{
    return (struct pictures){.grid = grid,
                             .type = grid == &thirds ? TYPE_SMALL_HEADING : TYPE_HEADING};
}

static void add_heading(const struct filling_in *filling, struct pictures *pictures,
                        struct str heading)
{
    const struct text_block *words =
        words_set(&filling->rows.setter, pictures->type, heading, pictures->grid->column);
    pictures->lines = text_lines(words) > pictures->lines ? text_lines(words) : pictures->lines;
    pictures->heading[pictures->count++] = words;
}

static double column_left(const struct pictures *pictures, size_t column)
{
    return (double)column * grid_pitch(pictures->grid);
}

/* Heading and diagram of a column; returns where the diagram ends. */
static double set_picture(struct galley *row, const struct pictures *pictures, size_t column,
                          const struct scene *scene)
{
    double x = column_left(pictures, column);
    galley_text(row, pictures->heading[column], x, HEADING_BASE, ROLE_TEXT);
    galley_keep(row);
    double top =
        HEADING_BASE + type_leading(pictures->type) * (double)(pictures->lines - 1) + TO_DIAGRAM;
    galley_scene(row, scene, x, top);
    return top + scene->height;
}

static const struct scene *whole_scene(struct filling_in *filling, const struct asked *asked,
                                       double width)
{
    struct scene_options options = {.width = width, .theme = THEME_PRINT, .accent = BODY_NONE};
    return scene_make(filling->rows.setter.arena, asked->diagram, &options);
}

static void set_question(struct filling_in *filling, struct galley *row,
                         const struct pictures *pictures, size_t column, size_t index)
{
    const struct setter *setter = &filling->rows.setter;
    const struct asked *asked = &filling->asked.at[index];
    const struct grid *grid = pictures->grid;
    const struct scene *scene =
        blanked_scene(setter->arena, whole_scene(filling, asked, grid->diagram), asked);
    double x = column_left(pictures, column);
    double base = set_picture(row, pictures, column, scene) + TO_SENTENCE;
    struct str draw = str_format(setter->arena, "%zu. %.*s", index + 1, STR_ARG(asked->draw));
    base = galley_text(row, words_set(setter, TYPE_ASKED, draw, grid->column), x, base, ROLE_TEXT);
    galley_keep(row);
    base = galley_text(row, words_set(setter, TYPE_SENTENCE, asked->question, grid->column), x,
                       base + type_leading(TYPE_SENTENCE), ROLE_TEXT);
    for (int i = 0; i < RULES; i++) {
        base += PITCH;
        galley_rule(row, vec2_of(x, base), vec2_of(x + grid->column, base), 0.8, ROLE_SOFT);
    }
}

static void add_questions(struct filling_in *filling, const struct grid *grid, unsigned uses)
{
    size_t across = (size_t)grid->across;
    for (size_t i = 0; i < filling->asked.count; i += across) {
        struct galley *row = galley_new(filling->rows.setter.arena);
        struct pictures pictures = pictures_of(grid);
        for (size_t k = i; k < i + across && k < filling->asked.count; k++) {
            add_heading(filling, &pictures, question_heading(row->arena, &filling->asked.at[k]));
        }
        for (size_t k = 0; k < pictures.count; k++) {
            set_question(filling, row, &pictures, k, i + k);
        }
        rows_add_apart(&filling->rows, row, ROW_GAP);
        rows_page(&filling->rows)->uses |= uses; /* what is missing is in the key, too */
    }
}

/* ---- answers ---- */

static void add_answers(struct filling_in *filling)
{
    const struct setter *setter = &filling->rows.setter;
    for (size_t i = 0; i < filling->asked.count; i += 3) {
        struct galley *row = galley_new(setter->arena);
        struct pictures pictures = pictures_of(&thirds);
        for (size_t k = i; k < i + 3 && k < filling->asked.count; k++) {
            add_heading(filling, &pictures, answer_heading(filling, k));
        }
        for (size_t k = 0; k < pictures.count; k++) {
            const struct asked *asked = &filling->asked.at[i + k];
            const struct scene *scene = whole_scene(filling, asked, thirds.diagram);
            double base = set_picture(row, &pictures, k, scene);
            galley_text(row, words_set(setter, TYPE_ASKED, asked->answer, thirds.column),
                        column_left(&pictures, k), base + TO_SENTENCE, ROLE_TEXT);
        }
        rows_add_apart(&filling->rows, row, ROW_GAP);
    }
}

/* "Lines, 1. Lantern, step 1a, x3 trails   of 2 [ ]" */
static void add_mark(struct filling_in *filling, struct str what, size_t of, bool all)
{
    const double base = ROW_BASE;
    struct galley *row = galley_new(filling->rows.setter.arena);
    const struct rows *rows = &filling->rows;
    enum type type = all ? TYPE_SMALL_HEADING : TYPE_SENTENCE;
    what = words_fit(&rows->setter, type, what, BOX_LEFT - TO_OF, 1);
    galley_text(row, rows_set(rows, type, what), 0, base, ROLE_TEXT);
    galley_text_end(row, rows_set(rows, TYPE_NOTE, str_format(row->arena, "of %zu", of)),
                    BOX_LEFT - 6, base, ROLE_SOFT);
    galley_box(row, vec2_of(BOX_LEFT, base - 9.5), vec2_of(BOX_LEFT + BOX_WIDE, base + 3.5),
               all ? 1.1 : 0.7, all ? ROLE_INK : ROLE_RULE, FILL_OPEN);
    row_end(row, all ? 0.9 : 0.5);
    rows_add(&filling->rows, row);
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
    rows_add(rows, rows_section(rows, STR("Mark yourself"),
                                STR("A point for each line that starts, bends and ends as here.")));
    size_t lines = 0;
    for (size_t i = 0; i < filling->asked.count; i++) {
        const struct asked *asked = &filling->asked.at[i];
        add_mark(filling, str_format(arena, "Lines, %.*s", STR_ARG(answer_heading(filling, i))),
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
    *head = head_of_play(arena, play, words_sheet(arena, sheet, play));
    head->clock = STR("");
    return head;
}

/* What the whole play would show in its key: the lines that are asked for must be in it. */
static unsigned uses_of(struct filling_in *filling)
{
    unsigned uses = 0;
    for (size_t i = 0; i < filling->asked.count; i++) {
        struct scene_options options = {.width = thirds.diagram, .accent = BODY_NONE};
        uses |= scene_key_uses(
            scene_make(filling->rows.setter.arena, filling->asked.at[i].diagram, &options));
    }
    return uses;
}

static struct str about_questions(const asked_list *asked)
{
    for (size_t i = 0; i < asked->count; i++) {
        if (asked->at[i].others) {
            return STR(
                "Draw the lines that are missing, then answer. What another picture asks for "
                "is missing, too. The answers are on the last page.");
        }
    }
    return STR("Draw the lines that are missing, then answer. The answers are on the last page.");
}

static void set_play(struct filling_in *filling, const struct grid *grid)
{
    const struct play *play = filling->run->play;
    struct caution caution = caution_of_play(play);
    struct head_words *head = head_of(filling, "Fill-in sheet");
    head->series = STR("Name ______________  Number ____");
    head->about = about_questions(&filling->asked);
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

/* False: nothing moves in it, there is nothing to ask. */
static bool add_play(struct booklet *booklet, const struct sheet_play *row)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    struct filling_in filling = {.rows = {.setter = booklet->setter},
                                 .run = booklet_run(&booklet->setter, row)};
    diagram_list diagrams = {0};
    scene_diagrams(arena, filling.run, &diagrams);
    const struct grid *grid = grid_for(arena, &diagrams);
    asked_of(arena, row->play, &diagrams, booklet->setter.job->seed, (size_t)grid->per_page,
             &filling.asked);
    bool asked = filling.asked.count > 0;
    if (asked) {
        set_play(&filling, grid);
        rows_close(&filling.rows, booklet, row->play->name);
    }
    arena_release(arena, mark);
    return asked;
}

bool fill_in_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    for (size_t i = 0; i < job->count; i++) {
        if (!add_play(booklet, &job->plays[i])) {
            job->left_out(job->left_out_ctx, job->plays[i].play);
        }
    }
    *job->nothing = booklet->pages.count == 0;
    if (*job->nothing) {
        return true;
    }
    return rows_write(booklet, rows_title(booklet, "fill-in sheet", "fill-in sheets"), writer);
}
