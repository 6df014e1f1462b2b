/* SPDX-License-Identifier: MIT */
/* fill_in: steps with lines taken away and the question asked, together what tells nothing of each
 * other; the answers with small diagrams, and a table to mark oneself, on a last page. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/asked.h"
#include "page/sheet/blanked.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"

#define TO_DIAGRAM 8.0
#define ROW_GAP 18.0
#define PITCH 19.0      /* of lines to write on */
#define INDENT 15.0     /* of a question behind its letter */
#define LETTER_UP 3.3   /* the middle of its disc over the baseline */
#define APART 4.0       /* between two questions, besides their leading */
#define BOX_WIDE 26.0   /* for points */
#define BOX_UP 10.0     /* its top over the baseline of "of 3 points", */
#define BOX_DOWN 3.5    /* and its foot under it */
#define HANDWRITTEN 1.5 /* as wide as print */
#define COVER_GAP 17.0  /* under the line to cover along */
#define COVER_BASE 10.0 /* of what stands there */

/* How questions stand on a page: so many pictures across, each with its words under or beside it.
 */
struct ask_form {
    size_t across;
    double picture;     /* its width */
    double left, words; /* of its words, from its own left, and how wide they are */
    double pitch;       /* from one picture's left to the next one's */
    bool beside;
    enum type heading;
};
/* A picture with its question beside it, large and small, and a full floor; pictures that may be
 * seen together, side by side. */
static const struct ask_form strip = {1, 300, 324, 180, 0, true, TYPE_HEADING};
static const struct ask_form small_strip = {1, 237.6, 266.4, 237.6, 0, true, TYPE_HEADING};
static const struct ask_form full_strip = {1, 137, 161, 343, 0, true, TYPE_HEADING};
static const struct ask_form pairs = {2, 237.6, 0, 237.6, 266.4, false, TYPE_HEADING};
static const struct ask_form small_pairs = {2, 196, 0, 237.6, 266.4, false, TYPE_HEADING};
/* Answers, of a play with few pictures, and with more: a question's picture is the answer's
 * enlarged, so that line lies on line. */
static const struct ask_form answer_few = {2, 237.6, 0, 237.6, 266.4, false, TYPE_SMALL_HEADING};
static const struct ask_form answer_many = {3, 152, 0, 152, 176, false, TYPE_SMALL_HEADING};
/* Of full floors alone: so wide that two of them stand one above the other on a page. */
static const struct ask_form answer_full = {3, 137, 0, 152, 176, false, TYPE_SMALL_HEADING};
enum { FEW = 2, LEAST_ASKED = 4 /* questions, of a play that has so many */ };

struct filling_in {
    struct rows rows;
    const struct run *run;
    const struct ask_form *answering;
    bool small;    /* the pictures of questions */
    size_t points; /* of the answers that stand */
    asked_list asked;
};

/* ---- pictures ---- */

static struct str labelled(struct arena *arena, const struct asked *asked, struct str title)
{
    struct str label = asked->diagram->label;
    return title.size > 0
               ? str_format(arena, "%.*s\xE2\x80\x82%.*s", STR_ARG(label), STR_ARG(title))
               : str_format(arena, "Step %.*s", STR_ARG(label));
}

/* "1a  x3 trails, from the start of step 1" over a question, "1a  x3 trails: Curl" over the answer,
 * which is the same picture. */
static struct str heading_of(const struct filling_in *filling, const struct asked *asked,
                             bool answered)
{
    struct arena *arena = filling->rows.setter.arena;
    const struct step *step = &filling->run->play->steps.at[asked->diagram->step];
    int branch = asked->diagram->branch;
    if (answered) {
        return labelled(arena, asked,
                        branch >= 0 ? tell_branch(arena, &step->branches.at[branch])
                                    : asked->title);
    }
    struct str named = labelled(arena, asked, branch >= 0 ? asked->title : STR(""));
    struct str after = scene_after(arena, asked->diagram);
    const struct segment *before = asked->diagram->segment->before;
    if (after.size == 0 && branch < 0 && before && before->step != asked->diagram->step) {
        after = str_format(arena, "from the end of step %d",
                           filling->run->play->steps.at[before->step].number);
    }
    return after.size > 0 ? str_format(arena, "%.*s, %.*s", STR_ARG(named), STR_ARG(after)) : named;
}

/* Pictures side by side, each under its heading, all on one level. */
struct pictures {
    const struct ask_form *form;
    const struct asked *asked;
    const struct text_block *heading[3];
    size_t count, lines; /* of the tallest heading */
};

/* As many of these as stand side by side. */
static struct pictures pictures_of(const struct filling_in *filling, const struct ask_form *form,
                                   const struct asked *asked, size_t count, bool answered)
{
    struct pictures pictures = {.form = form, .asked = asked};
    while (pictures.count < form->across && pictures.count < count) {
        struct str heading = heading_of(filling, &asked[pictures.count], answered);
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
    double lines = (double)(pictures->lines - 1);
    double top = HEADING_BASE + type_leading(form->heading) * lines + TO_DIAGRAM;
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

/* A question or an answer behind its letter; returns its last baseline. */
static double set_blank(const struct filling_in *filling, struct galley *row,
                        const struct blank *blank, struct str text, enum type type,
                        struct vec2 base, double width)
{
    const struct setter *setter = &filling->rows.setter;
    struct str letter = str_format(setter->arena, "%c", blank->letter);
    galley_disc(row, words_set(setter, TYPE_DISC, letter, 0), base.x + GALLEY_DISC,
                base.y - LETTER_UP, ROLE_ORDER);
    galley_keep(row);
    const struct text_block *words = words_set(setter, type, text, width - INDENT);
    return galley_text(row, words, base.x + INDENT, base.y, ROLE_TEXT);
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
        base = set_blank(filling, row, blank, blank->question, TYPE_SENTENCE, vec2_of(x, base),
                         form->words);
        galley_keep(row);
        for (int line = rules_for(setter, blank, form->words); line > 0; line--) {
            base += PITCH;
            galley_rule(row, vec2_of(x, base), vec2_of(x + form->words, base), 0.8, ROLE_SOFT);
        }
    }
}

static struct galley *question_row(struct filling_in *filling, const struct ask_form *form,
                                   const struct asked *asked, size_t count)
{
    struct galley *row = galley_new(filling->rows.setter.arena);
    struct pictures pictures = pictures_of(filling, form, asked, count, false);
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
        return tall ? &full_strip : filling->small ? &small_strip : &strip;
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
            if (under->height + ROW_GAP <= rows_room(rows)) {
                row = under;
            } else {
                rows_turn(rows, false);
            }
        }
        rows_add_apart(rows, row, ROW_GAP);
        rows_page(rows)->uses |=
            uses_of(&asked[i], count - i < form->across ? count - i : form->across);
    }
}

/* ---- answers ---- */

/* "[ ] of 3 points" */
static void set_points(const struct filling_in *filling, struct galley *row, struct vec2 base,
                       struct str of, enum type type)
{
    galley_keep(row);
    galley_box(row, vec2_of(base.x, base.y - BOX_UP), vec2_of(base.x + BOX_WIDE, base.y + BOX_DOWN),
               0.8, ROLE_SOFT, FILL_OPEN);
    galley_keep(row);
    galley_text(row, words_set(&filling->rows.setter, type, of, PAGE_WIDE - BOX_WIDE - 6),
                base.x + BOX_WIDE + 6, base.y, ROLE_TEXT);
}

/* The lines and parts of lines that are asked for: each has the letter of its question. */
static size_t letters_in(const struct scene *scene)
{
    size_t count = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool disc = item->class == CLASS_ORDER && item->shape == ITEM_TEXT && item->text.size == 1;
        count += disc && item->text.at[0] >= 'A' && item->text.at[0] <= 'Z';
    }
    return count;
}

static void set_answers(struct filling_in *filling, struct galley *row,
                        const struct pictures *pictures, size_t column)
{
    const struct asked *asked = &pictures->asked[column];
    const struct ask_form *form = pictures->form;
    const struct scene *scene = answered_scene(filling->rows.setter.arena, asked);
    double base = set_picture(row, pictures, column, scene), x = form->pitch * (double)column;
    for (size_t i = 0; i < asked->blanks.count; i++) {
        const struct blank *blank = &asked->blanks.at[i];
        base += i > 0 ? TO_SENTENCE : 0;
        base = set_blank(filling, row, blank, blank->answer, TYPE_ASKED, vec2_of(x, base),
                         form->words);
    }
    size_t points = letters_in(scene) + asked->blanks.count;
    filling->points += points;
    set_points(filling, row, vec2_of(x, base + TO_SENTENCE + BOX_DOWN),
               str_format(row->arena, "of %zu points", points), TYPE_NOTE);
}

static void add_answers(struct filling_in *filling)
{
    const asked_list *asked = &filling->asked;
    const struct ask_form *form = filling->answering;
    for (size_t i = 0; i < asked->count; i += form->across) {
        struct galley *row = galley_new(filling->rows.setter.arena);
        struct pictures pictures =
            pictures_of(filling, form, &asked->at[i], asked->count - i, true);
        for (size_t k = 0; k < pictures.count; k++) {
            set_answers(filling, row, &pictures, k);
        }
        rows_add_apart(&filling->rows, row, ROW_GAP);
    }
}

/* What all points add up to, and what a point is given for. */
static void add_marks(struct filling_in *filling)
{
    struct arena *arena = filling->rows.setter.arena;
    struct galley *row = galley_new(arena);
    galley_rule(row, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.9, ROLE_INK);
    struct str of = str_format(arena,
                               "%cof %zu points in all%c. One for each line that runs as it "
                               "does here, one for each answer.",
                               TELL_BOLD, filling->points, TELL_PLAIN);
    set_points(filling, row, vec2_of(0, ROW_BASE + 5), of, TYPE_SENTENCE);
    rows_add_apart(&filling->rows, row, ROW_GAP);
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

static void set_questions_pages(struct filling_in *filling)
{
    const asked_list *asked = &filling->asked;
    struct caution caution = caution_of_play(filling->run->play);
    struct head_words *head = head_of(filling, "Fill-in sheet");
    head->series = STR("Name ______________  Number ____");
    head->about =
        asked_together(asked, 0) == asked->count
            ? STR("A line is missing where each letter stands. Draw it, then answer. The "
                  "answers are on the last page of this play.")
            : STR("A line is missing where each letter stands. Draw it, then answer. Only then "
                  "look below a dashed line, and at the next page.");
    rows_open(&filling->rows, head, &caution);
    for (size_t i = 0; i < asked->count;) {
        size_t count = asked_together(asked, i);
        add_questions(filling, &asked->at[i], count);
        i += count;
    }
}

static void set_answers_pages(struct filling_in *filling)
{
    struct head_words *head = head_of(filling, "Fill-in sheet, answers");
    head->series = STR("Answers");
    head->about = STR("Compare line by line. Write your points in the boxes.");
    filling->rows.head = head;
    rows_turn(&filling->rows, true);
    add_answers(filling);
    add_marks(filling);
}

/* A step that is read is asked about in its reads alone; a full floor is as tall as many. */
static const struct ask_form *choose_answering(struct arena *arena, const struct play *play,
                                               const diagram_list *diagrams)
{
    const struct scene_options options = {.width = answer_few.picture};
    size_t count = 0, tall = 0;
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct step *step = &play->steps.at[diagrams->at[i].step];
        bool read = step->branches.count > 0 && step->branches.at[0].kind == BRANCH_READ;
        count += diagrams->at[i].branch >= 0 || !read;
        tall += scene_height(arena, &diagrams->at[i], &options) > options.width;
    }
    if (tall > 0) {
        return tall == diagrams->count ? &answer_full : &answer_many;
    }
    return count <= FEW ? &answer_few : &answer_many;
}

/* With small pictures where that saves a page. */
static void set_pages(struct filling_in *filling)
{
    struct filling_in small = *filling;
    small.small = true;
    set_questions_pages(filling);
    set_answers_pages(filling);
    set_questions_pages(&small);
    set_answers_pages(&small);
    if (small.rows.pages.count < filling->rows.pages.count) {
        *filling = small;
    }
}

/* False: there is nothing to ask. */
static bool add_play(struct booklet *booklet, const struct sheet_play *row)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    const struct run *run = booklet_run(&booklet->setter, row);
    diagram_list diagrams = {0};
    scene_diagrams(arena, run, &diagrams);
    struct filling_in filling = {.rows = {.setter = booklet->setter},
                                 .run = run,
                                 .answering = choose_answering(arena, run->play, &diagrams)};
    asked_of(arena, run->play, &diagrams, booklet->setter.job->seed, LEAST_ASKED,
             filling.answering->picture, &filling.asked);
    bool asked = filling.asked.count > 0; /* nothing is where nothing moves */
    if (asked) {
        set_pages(&filling);
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
