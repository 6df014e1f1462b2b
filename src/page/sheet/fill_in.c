/* SPDX-License-Identifier: MIT */
/* fill_in: steps with lines taken away and the question asked, together what tells nothing of each
 * other; the answers behind the questions of all plays, so that each play's pages can be handed out
 * and the answers kept. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/blanked.h"
#include "page/sheet/fill_in.h"
#include "page/sheet/telling.h"

#define PITCH 19.0       /* of lines to write on, */
#define SMALL_PITCH 17.5 /* and where a page is saved by it */
#define APART 4.0        /* between two questions, besides their leading */
#define HANDWRITTEN 1.5  /* as wide as print */
#define COVER_GAP 17.0   /* under the line to cover along */
#define COVER_BASE 10.0  /* of what stands there */

/* A picture with its question beside it, large and small, and so a full floor; pictures that may be
 * seen together, side by side. */
static const struct ask_form strip = {1, 300, 324, 180, 0, true, TYPE_HEADING};
static const struct ask_form small_strip = {1, 237.6, 266.4, 237.6, 0, true, TYPE_HEADING};
static const struct ask_form pairs = {2, 237.6, 0, 237.6, 266.4, false, TYPE_HEADING};
static const struct ask_form small_pairs = {2, 196, 0, 237.6, 266.4, false, TYPE_HEADING};
enum { LEAST_ASKED = 4 /* questions, of a play that has so many */ };

/* ---- pictures ---- */

/* Pictures side by side, each under its heading, all on one level. */
struct pictures {
    const struct ask_form *form;
    const struct asked *asked;
    const struct text_block *heading[2];
    size_t count, lines; /* of the tallest heading */
};

/* As many of these as stand side by side. */
static struct pictures pictures_of(const struct filling_in *filling, const struct ask_form *form,
                                   const struct asked *asked, size_t count)
{
    struct pictures pictures = {.form = form, .asked = asked};
    while (pictures.count < form->across && pictures.count < count) {
        struct str heading = asked_heading(filling, &asked[pictures.count], false);
        const struct text_block *words =
            words_set(&filling->rows.setter, form->heading, heading, form->picture);
        pictures.lines = text_lines(words) > pictures.lines ? text_lines(words) : pictures.lines;
        pictures.heading[pictures.count++] = words;
    }
    return pictures;
}

/* Heading and diagram of a column; returns the first baseline of its words. */
static double set_picture(struct galley *row, const struct pictures *pictures, size_t column,
                          const struct scene *scene)
{
    const struct ask_form *form = pictures->form;
    double x = form->pitch * (double)column;
    galley_text(row, pictures->heading[column], x, HEADING_BASE, ROLE_TEXT);
    galley_keep(row);
    double top = ask_form_top(form, pictures->lines);
    galley_scene(row, scene, x, top);
    return form->beside ? top + HEADING_BASE : top + scene->height + TO_SENTENCE;
}

/* A picture of the answers' width, as wide as here. */
static const struct scene *enlarged(const struct filling_in *filling, const struct scene *scene,
                                    const struct ask_form *form)
{
    return form->picture == scene->width
               ? scene
               : scene_enlarge(filling->rows.setter.arena, scene, form->picture / scene->width);
}

/* ---- questions ---- */

/* Lines to write an answer on: as many as it takes by hand. */
static int rules_for(const struct setter *setter, const struct blank *blank, double width)
{
    const int most = 3;
    double length = text_width(words_set(setter, TYPE_SENTENCE, blank->answer, 0));
    int lines = 1 + (int)(HANDWRITTEN * length / width);
    return lines < most ? lines : most;
}

static void set_questions(struct filling_in *filling, struct galley *row,
                          const struct pictures *pictures, size_t column)
{
    const struct setter *setter = &filling->rows.setter;
    const struct asked *asked = &pictures->asked[column];
    const struct ask_form *form = pictures->form;
    const struct scene *scene = enlarged(filling, blanked_scene(setter->arena, asked), form);
    double base = set_picture(row, pictures, column, scene);
    double x = form->pitch * (double)column + form->left;
    for (size_t i = 0; i < asked->blanks.count; i++) {
        const struct blank *blank = &asked->blanks.at[i];
        base += i > 0 ? TO_SENTENCE + APART : 0;
        base = blank_set(filling, row, blank, blank->question, TYPE_SENTENCE, vec2_of(x, base),
                         form->words);
        galley_keep(row);
        for (int line = rules_for(setter, blank, form->words); line > 0; line--) {
            base += filling->small ? SMALL_PITCH : PITCH;
            galley_rule(row, vec2_of(x, base), vec2_of(x + form->words, base), 0.8, ROLE_SOFT);
        }
    }
}

static struct galley *question_row(struct filling_in *filling, const struct ask_form *form,
                                   const struct asked *asked, size_t count)
{
    struct galley *row = galley_new(filling->rows.setter.arena);
    struct pictures pictures = pictures_of(filling, form, asked, count);
    for (size_t k = 0; k < pictures.count; k++) {
        set_questions(filling, row, &pictures, k);
    }
    return row;
}

static const struct ask_form *choose_form(const struct filling_in *filling,
                                          const struct asked *asked, size_t count)
{
    bool tall = false;
    for (size_t i = 0; i < count; i++) {
        tall = tall || asked[i].scene->height > asked[i].scene->width;
    }
    if (count == 1) {
        return tall || filling->small ? &small_strip : &strip;
    }
    return filling->small && !tall ? &small_pairs : &pairs;
}

/* What the whole pictures would show in their key: the lines that are asked for must be in it. */
static unsigned uses_of(const struct asked *asked, size_t count)
{
    unsigned uses = 0;
    for (size_t i = 0; i < count; i++) {
        uses |= scene_key_uses(asked[i].scene);
    }
    return uses;
}

/* A row under a line to cover along: what stands there would tell what is asked over it. */
static struct galley *covered(struct filling_in *filling, const struct galley *row)
{
    struct galley *under = galley_new(row->arena);
    galley_dashes(under, vec2_of(0, 1), vec2_of(PAGE_WIDE, 1), 0.8, ROLE_SOFT);
    galley_keep(under);
    galley_text_end(under, rows_set(&filling->rows, TYPE_NOTE, STR("Cover from here on")),
                    PAGE_WIDE, COVER_BASE, ROLE_SOFT);
    galley_keep(under);
    galley_join(under, row, 0, COVER_GAP);
    return under;
}

/* Of pictures that may be seen together. */
static void add_questions(struct filling_in *filling, const struct asked *asked, size_t count)
{
    struct rows *rows = &filling->rows;
    const struct ask_form *form = choose_form(filling, asked, count);
    for (size_t i = 0; i < count; i += form->across) {
        struct galley *row = question_row(filling, form, &asked[i], count - i);
        if (i == 0 && !rows_page(rows)->empty) {
            struct galley *under = covered(filling, row);
            if (under->height + FILL_IN_GAP <= rows_room(rows)) {
                row = under;
                filling->dashed = true;
            } else {
                rows_turn(rows, false);
                filling->turned = true;
            }
        }
        rows_add_apart(rows, row, FILL_IN_GAP);
        rows_page(rows)->uses |=
            uses_of(&asked[i], count - i < form->across ? count - i : form->across);
    }
}

/* ---- the play ---- */

#define QUESTIONS "Fill-in sheet"
#define ANSWERS "Fill-in sheet, answers"

/* "Fill-in sheet, answers, set 2, under 16 girls": another seed asks other things, and its answers
 * must be told from these. */
static struct str sheet_words(const struct setter *setter, const char *sheet,
                              const struct play *play)
{
    unsigned long long seed = setter->job->seed;
    struct str named =
        seed == 0 ? str_of(sheet) : str_format(setter->arena, "%s, set %llu", sheet, seed);
    return words_sheet(setter->arena, named.at, play);
}

static struct head_words *head_of(const struct filling_in *filling, const char *sheet)
{
    struct arena *arena = filling->rows.setter.arena;
    const struct play *play = filling->run->play;
    struct head_words *head = arena_new(arena, struct head_words);
    *head = head_of_play(arena, play, sheet_words(&filling->rows.setter, sheet, play));
    head->clock = STR("");
    return head;
}

static bool is_alone(const struct filling_in *filling)
{
    return filling->rows.setter.job->count == 1;
}

/* What follows the answers on a first page, if there is a line to cover along under it, or a page
 * that may be looked at only then. */
static const char *then_of(const struct filling_in *filling)
{
    if (filling->dashed) {
        return filling->turned ? "Only then look below a dashed line, and at the next page."
                               : "Only then look below a dashed line.";
    }
    return filling->turned     ? "Only then look at the next page."
           : is_alone(filling) ? "The answers are on the last page."
                               : "The answers are at the end.";
}

static void set_questions_pages(struct filling_in *filling)
{
    const asked_list *asked = &filling->asked;
    struct caution caution = caution_of_play(filling->run->play);
    struct head_words *head = head_of(filling, QUESTIONS);
    head->series = STR("Name ______________  Number ____");
    head->about = str_format(filling->rows.setter.arena,
                             "A line is missing where each letter stands. Draw it, then answer. %s",
                             then_of(filling));
    filling->dashed = filling->turned = false;
    rows_open(&filling->rows, head, &caution);
    for (size_t i = 0; i < asked->count;) {
        size_t count = asked_together(asked, i);
        add_questions(filling, &asked->at[i], count);
        i += count;
    }
}

/* Its first line says what there is, which is known when the pages are set. */
static void set_questions_told(struct filling_in *filling)
{
    set_questions_pages(filling);
    if (filling->dashed || filling->turned) {
        set_questions_pages(filling);
    }
}

/* With small pictures where that saves a page. */
static void set_questions_small(struct filling_in *filling)
{
    struct filling_in small = *filling;
    small.small = true;
    set_questions_told(filling);
    set_questions_told(&small);
    if (small.rows.pages.count < filling->rows.pages.count) {
        *filling = small;
    }
}

/* The answers of the one play there is stand on a last page of its sheet. */
static void set_answers_page(struct filling_in *filling, const struct answers *answers)
{
    struct head_words *head = head_of(filling, ANSWERS);
    head->series = STR("Answers");
    head->about = STR("Compare line by line. Write your points in the boxes.");
    filling->rows.head = head;
    rows_turn(&filling->rows, true);
    answers_add(&filling->rows, answers);
}

/* False: there is nothing to ask. */
static bool add_play(struct booklet *booklet, const struct sheet_play *row, answers_list *all)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    const struct run *run = booklet_run(&booklet->setter, row);
    diagram_list diagrams = {0};
    scene_diagrams(arena, run, &diagrams);
    struct filling_in filling = {.rows = {.setter = booklet->setter}, .run = run};
    filling.answering = answers_form(arena, run->play, &diagrams, is_alone(&filling));
    asked_of(arena, run->play, &diagrams, booklet->setter.job->seed, LEAST_ASKED,
             filling.answering->picture, &filling.asked);
    bool asked = filling.asked.count > 0; /* nothing is where nothing moves */
    if (asked) {
        struct answers answers = answers_of(&filling, &booklet->keep);
        set_questions_small(&filling);
        if (is_alone(&filling)) {
            set_answers_page(&filling, &answers);
        }
        VEC_PUSH(&booklet->keep, all, answers);
        rows_close(&filling.rows, booklet, row->play->name);
    }
    arena_release(arena, mark);
    return asked;
}

/* ---- the answers of all plays ---- */

static struct head_words *head_of_all(const struct setter *setter, const char *sheet,
                                      const char *title)
{
    const struct sheet_job *job = setter->job;
    struct head_words *head = arena_new(setter->arena, struct head_words);
    *head = (struct head_words){.sheet = sheet_words(setter, sheet, job->plays[0].play),
                                .title = str_of(title),
                                .foot = job->book->title};
    return head;
}

/* Printed on both sides, no answer stands behind a question: a page for notes is between them. */
static void add_notes_page(struct booklet *booklet)
{
    const struct caution none = {.kind = CAUTION_NONE};
    struct rows rows = {.setter = booklet->setter};
    struct head_words *head = head_of_all(&booklet->setter, QUESTIONS, "Notes");
    head->about = STR("The answers begin on the next page.");
    rows_open(&rows, head, &none);
    rows.ruled = true;
    rows_page(&rows)->keyless = true;
    rows_close(&rows, booklet, STR("Notes"));
}

static void add_answers_pages(struct booklet *booklet, const answers_list *all)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    struct caution caution = caution_of_job(&booklet->setter);
    if (booklet->pages.count % 2 == 1) {
        add_notes_page(booklet);
    }
    struct rows rows = {.setter = booklet->setter};
    struct head_words *head = head_of_all(&rows.setter, ANSWERS, "Answers");
    head->about = STR("Compare line by line. Write your points in the boxes. " ANSWERS_POINTS);
    rows_open(&rows, head, &caution);
    answers_add_all(&rows, all);
    rows_close(&rows, booklet, STR("Answers"));
    arena_release(arena, mark);
}

bool fill_in_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    answers_list all = {0};
    for (size_t i = 0; i < job->count; i++) {
        if (!add_play(booklet, &job->plays[i], &all)) {
            job->left_out(job->left_out_ctx, job->plays[i].play);
        }
    }
    *job->nothing = booklet->pages.count == 0;
    if (*job->nothing) {
        return true;
    }
    if (job->count > 1) {
        add_answers_pages(booklet, &all);
    }
    return rows_write(booklet, rows_title(booklet, "fill-in sheet", "fill-in sheets"), writer);
}
