/* SPDX-License-Identifier: MIT */
/* fill_in_answers: see fill_in.h. The answers with small diagrams, each with its points; must not
 * know what is asked. */
#include "page/sheet/fill_in.h"

#include "language/tell/tell.h"
#include "page/sheet/blanked.h"
#include "page/sheet/telling.h"

#define BOX_WIDE 26.0  /* for points */
#define BOX_UP 10.0    /* its top over the baseline of "of 3 points", */
#define BOX_DOWN 3.5   /* and its foot under it */
#define BOX_GAP 6.0    /* to its words */
#define NAME_RULE 18.6 /* under a play's name, */
#define NAME_GAP 4.0   /* over what it stands over; */
#define NAME_RISE 9.0  /* the first line of a long one is so much higher */

/* Answers, of a play with few pictures, and with more: a question's picture is the answer's
 * enlarged, so that line lies on line. */
static const struct ask_form answer_few = {2, 237.6, 0, 237.6, 266.4, false, TYPE_SMALL_HEADING};
static const struct ask_form answer_many = {3, 152, 0, 152, 176, false, TYPE_SMALL_HEADING};
/* Of full floors alone: so wide that two of them stand one above the other on a page. */
static const struct ask_form answer_full = {3, 137, 0, 152, 176, false, TYPE_SMALL_HEADING};
enum { FEW = 2, ACROSS = 3 /* at most */ };

/* A step that is read is asked about in its reads alone; a full floor is as tall as many. */
const struct ask_form *answers_form(struct arena *arena, const struct play *play,
                                    const diagram_list *diagrams, bool alone)
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
    return alone && count <= FEW ? &answer_few : &answer_many;
}

/* "[ ] of 3 points", from the box's left or up to the words' right end. */
static void set_points(const struct setter *setter, struct galley *row, struct vec2 base,
                       struct str of, enum type type, bool ends)
{
    const struct text_block *words = words_set(setter, type, of, PAGE_WIDE - BOX_WIDE - BOX_GAP);
    double x = ends ? base.x - text_width(words) - BOX_GAP - BOX_WIDE : base.x;
    galley_keep(row);
    galley_box(row, vec2_of(x, base.y - BOX_UP), vec2_of(x + BOX_WIDE, base.y + BOX_DOWN), 0.8,
               ROLE_SOFT, FILL_OPEN);
    galley_keep(row);
    galley_text(row, words, x + BOX_WIDE + BOX_GAP, base.y, ROLE_TEXT);
}

static struct answer answer_of(const struct filling_in *filling, const struct asked *asked,
                               size_t *points)
{
    const struct setter *setter = &filling->rows.setter;
    const struct ask_form *form = filling->answering;
    const struct scene *scene = answered_scene(setter->arena, asked);
    struct galley *below = galley_new(setter->arena);
    galley_scene(below, scene, 0, 0);
    double base = scene->height + TO_SENTENCE;
    *points = asked->blanks.count;
    for (size_t i = 0; i < asked->blanks.count; i++) {
        const struct blank *blank = &asked->blanks.at[i];
        base += i > 0 ? TO_SENTENCE : 0;
        base = blank_set(filling, below, blank, blank->answer, TYPE_ASKED, vec2_of(0, base),
                         form->words);
        *points += blank->lines;
    }
    set_points(setter, below, vec2_of(0, base + TO_SENTENCE + BOX_DOWN),
               str_format(setter->arena, "of %zu points", *points), TYPE_NOTE, false);
    struct str heading = asked_heading(filling, asked, true);
    return (struct answer){words_set(setter, form->heading, heading, form->picture), below};
}

struct answers answers_of(const struct filling_in *filling, struct arena *keep)
{
    const asked_list *asked = &filling->asked;
    struct answers answers = {filling->answering, str_copy(keep, filling->run->play->name), 0, {0}};
    for (size_t i = 0; i < asked->count; i++) {
        size_t points;
        struct answer answer = answer_of(filling, &asked->at[i], &points);
        answer.heading = text_copy(keep, answer.heading);
        answer.below = galley_copy(keep, answer.below);
        answers.points += points;
        VEC_PUSH(keep, &answers.pictures, answer);
    }
    return answers;
}

/* ---- rows ---- */

/* Pictures side by side, all on one level under their headings, from `top` on. */
static void set_row(struct galley *row, const struct ask_form *form,
                    const struct answer *const *answers, size_t count, double top)
{
    size_t lines = 1;
    for (size_t i = 0; i < count; i++) {
        size_t own = text_lines(answers[i]->heading);
        lines = own > lines ? own : lines;
    }
    double down = ask_form_top(form, lines);
    for (size_t i = 0; i < count; i++) {
        double x = form->pitch * (double)i;
        galley_text(row, answers[i]->heading, x, top + HEADING_BASE, ROLE_TEXT);
        galley_keep(row);
        galley_join(row, answers[i]->below, x, top + down);
    }
}

void answers_add(struct rows *rows, const struct answers *answers)
{
    const struct ask_form *form = answers->form;
    for (size_t i = 0; i < answers->pictures.count; i += form->across) {
        struct galley *row = galley_new(rows->setter.arena);
        const struct answer *beside[ACROSS];
        size_t count = 0;
        while (count < form->across && i + count < answers->pictures.count) {
            beside[count] = &answers->pictures.at[i + count];
            count++;
        }
        set_row(row, form, beside, count, 0);
        rows_add_apart(rows, row, FILL_IN_GAP);
    }
    struct galley *row = galley_new(rows->setter.arena);
    galley_rule(row, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.9, ROLE_INK);
    struct str of = str_format(row->arena, "%cof %zu points in all%c. " ANSWERS_POINTS, TELL_BOLD,
                               answers->points, TELL_PLAIN);
    set_points(&rows->setter, row, vec2_of(0, ROW_BASE + 5), of, TYPE_SENTENCE, false);
    rows_add_apart(rows, row, FILL_IN_GAP);
}

/* ---- many plays ---- */

/* A row of pictures of as many plays as it takes: whose each is. */
struct mixed_row {
    const struct answer *beside[ACROSS];
    const struct answers *of[ACROSS];
    bool first[ACROSS]; /* of its play */
    size_t count;
};

/* "Lantern", and at the right the box for what its points add up to, over a rule as long as its
 * pictures in this row. */
static void set_name(const struct rows *rows, struct galley *row, const struct mixed_row *mixed,
                     size_t from, size_t behind)
{
    const struct answers *answers = mixed->of[from];
    double left = answer_many.pitch * (double)from;
    double right = answer_many.pitch * (double)(behind - 1) + answer_many.words;
    struct str of = mixed->first[from] ? str_format(row->arena, "of %zu in all", answers->points)
                                       : STR("continued");
    double box = mixed->first[from] ? BOX_WIDE + BOX_GAP : 0;
    double wide = right - left - text_width(rows_set(rows, TYPE_NOTE, of)) - box - BOX_GAP;
    struct str name = words_fit(&rows->setter, TYPE_SMALL_HEADING, answers->name, wide, 2);
    rows_name(rows, row, TYPE_HEADING, name, vec2_of(left, ROW_BASE), wide, NAME_RISE);
    galley_keep(row);
    if (mixed->first[from]) {
        set_points(&rows->setter, row, vec2_of(right, ROW_BASE), of, TYPE_NOTE, true);
    } else {
        galley_text_end(row, rows_set(rows, TYPE_NOTE, of), right, ROW_BASE, ROLE_SOFT);
    }
    galley_keep(row);
    galley_rule(row, vec2_of(left, NAME_RULE), vec2_of(right, NAME_RULE), 0.9, ROLE_INK);
    galley_keep(row);
}

static void add_mixed(struct rows *rows, struct mixed_row *mixed)
{
    struct galley *row = galley_new(rows->setter.arena);
    for (size_t from = 0, behind; from < mixed->count; from = behind) {
        for (behind = from + 1; behind < mixed->count && mixed->of[behind] == mixed->of[from];) {
            behind++;
        }
        set_name(rows, row, mixed, from, behind);
    }
    set_row(row, &answer_many, mixed->beside, mixed->count, NAME_RULE + NAME_GAP);
    if (row->height > rows_room(rows) && !rows_page(rows)->empty) {
        rows_turn(rows, false); /* rather than be parted */
    }
    rows_add_apart(rows, row, FILL_IN_GAP);
    mixed->count = 0;
}

/* So many of those left stand in a row: the last one has no page of its own where two can share it.
 */
static size_t in_row(size_t left)
{
    return left == ACROSS + 1 ? left / 2 : ACROSS;
}

void answers_add_all(struct rows *rows, const answers_list *all)
{
    struct mixed_row mixed = {.count = 0};
    size_t left = 0;
    for (size_t i = 0; i < all->count; i++) {
        left += all->at[i].pictures.count;
    }
    for (size_t i = 0; i < all->count; i++) {
        const struct answers *answers = &all->at[i];
        for (size_t k = 0; k < answers->pictures.count; k++) {
            mixed.beside[mixed.count] = &answers->pictures.at[k];
            mixed.of[mixed.count] = answers;
            mixed.first[mixed.count++] = k == 0;
            if (mixed.count == in_row(left)) {
                left -= mixed.count;
                add_mixed(rows, &mixed);
            }
        }
    }
    if (mixed.count > 0) {
        add_mixed(rows, &mixed);
    }
}
