/* SPDX-License-Identifier: MIT */
/* coach: the coach's sheet. Takes plays that were run and what was found in them, gives a PDF: of
 * each step its diagram with what happens and common mistakes, its timing, what to check, its reads
 * as small diagrams. */
#include "page/sheet/coach.h"

#include "language/tell/tell.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"
#include "page/sheet/timing.h"
#include "page/sheet/watch.h"

#define ACROSS 3
#define COLUMN 152.0
#define SECTION_BASE 8.0 /* of a section's heading, under its row's top */
#define SECTION_GAP 14.0 /* from what stands before, not at the top of a page */

static const struct grid half_floor = {1, 1, 1, 237.6, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid of_several = {1, 1, 1, 190, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid full_floor = {1, 1, 1, COLUMN, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid three_reads = {3, 3, 1, COLUMN, COLUMN, false, TYPE_SENTENCE, false};
static const struct grid two_reads = {2, 2, 1, 190, 237.6, false, TYPE_SENTENCE, false};

struct coaching {
    struct rows rows;
    const struct sheet_play *play;
    diagram_list diagrams;
};

/* Rows that stay on one page where a page is tall enough for them. */
struct bundle {
    VEC(struct galley *) rows;
    unsigned uses;
};

static void bundle_add(struct bundle *bundle, struct galley *row)
{
    if (row->items.count > 0) {
        VEC_PUSH(row->arena, &bundle->rows, row);
    }
}

static void place_bundle(struct coaching *coaching, const struct bundle *bundle)
{
    struct rows *rows = &coaching->rows;
    double height = 0;
    for (size_t i = 0; i < bundle->rows.count; i++) {
        height += bundle->rows.at[i]->height + SECTION_GAP;
    }
    if (height > rows_room(rows) && !rows_page(rows)->empty) {
        rows_turn(rows, false);
    }
    for (size_t i = 0; i < bundle->rows.count; i++) {
        struct page *page = rows_page(rows);
        bool fits = bundle->rows.at[i]->height + SECTION_GAP <= rows_room(rows);
        page->y += page->empty || !fits ? 0 : SECTION_GAP;
        rows_add(rows, bundle->rows.at[i], bundle->uses);
    }
}

/* A section's heading with a note at its right; the column goes on under it. */
static void head_section(struct coaching *coaching, struct galley *galley, struct str title,
                         struct str note)
{
    galley_text(galley, rows_set(&coaching->rows, TYPE_HEADING, title), 0, SECTION_BASE, ROLE_TEXT);
    galley_keep(galley);
    row_put_end(galley, rows_set(&coaching->rows, TYPE_NOTE, note), PAGE_WIDE, SECTION_BASE,
                ROLE_SOFT);
    galley_keep(galley);
}

static bool is_tall(const struct coaching *coaching, const struct diagram *diagram)
{
    struct scene_options options = {.width = half_floor.diagram};
    return scene_height(coaching->rows.setter.arena, diagram, &options) > half_floor.diagram;
}

/* ---- a step ---- */

/* "Common mistakes" under what stands in the column. */
static void set_mistakes(struct column *column, const struct play *play, const point_list *mistakes)
{
    if (mistakes->count == 0) {
        return;
    }
    const double indent = 12;
    const struct setter *setter = column->setter;
    column->base += column->base > 0 ? 18 : 0;
    galley_text(column->galley, words_set(setter, TYPE_SMALL_HEADING, STR("Common mistakes"), 0),
                column->x, column->base, ROLE_TEXT);
    galley_keep(column->galley);
    for (size_t i = 0; i < mistakes->count; i++) {
        column->base += type_leading(TYPE_POINT) + (i > 0 ? 1.5 : 1);
        galley_text(column->galley, words_set(setter, TYPE_POINT, STR("\xE2\x80\x93"), 0),
                    column->x, column->base, ROLE_TEXT);
        galley_keep(column->galley);
        struct str text = tell_bold(setter->arena, mistakes->at[i].text, play->players);
        column->base =
            galley_text(column->galley, words_set(setter, TYPE_POINT, text, column->width - indent),
                        column->x + indent, column->base, ROLE_TEXT);
    }
}

/* What in it is tightest, by the clock. */
static void set_figures(struct column *column, const struct segment *segment,
                        const watched_list *found)
{
    watched_list figures = {0};
    watch_figures(column->setter->arena, segment, found, &figures);
    if (figures.count == 0) {
        return;
    }
    column->base += 18;
    galley_text(column->galley, words_set(column->setter, TYPE_SMALL_HEADING, STR("Watch"), 0),
                column->x, column->base, ROLE_TEXT);
    galley_keep(column->galley);
    struct galley *list = galley_new(column->setter->arena);
    double last = watch_set(column->setter, list, &figures, column->width, column->width, 1, 0);
    galley_join(column->galley, list, column->x, column->base);
    column->base += last;
}

/* Its diagram, with what happens and what goes wrong beside it. */
static void add_picture(struct coaching *coaching, const struct diagram *diagram,
                        const watched_list *found, struct bundle *bundle)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct run *run = coaching->play->run;
    const struct step *step = &run->play->steps.at[diagram->step];
    const struct grid *grid = is_tall(coaching, diagram)   ? &full_floor
                              : run->play->steps.count > 1 ? &of_several
                                                           : &half_floor;
    struct band band = {.galley = galley_new(setter->arena)};
    struct row row = {.count = 0};
    row_add(setter, &row, grid, run, diagram);
    row_set(setter, &band, &row, grid, 0);
    double x = grid->diagram + BESIDE_GAP;
    struct column column = {setter, band.galley, x, PAGE_WIDE - x, band.words, true};
    set_figures(&column, diagram->segment, found);
    set_mistakes(&column, run->play, &step->mistakes);
    bundle_add(bundle, band.galley);
    bundle->uses |= band.uses;
}

static void add_timing(struct coaching *coaching, const struct segment *segment,
                       struct bundle *bundle)
{
    if (!timing_holds(segment)) {
        return;
    }
    struct arena *arena = coaching->rows.setter.arena;
    const struct step *step = &segment->play->steps.at[segment->step];
    struct galley *row = galley_new(arena);
    struct strbuf note;
    strbuf_init(&note, arena);
    if (segment->branch >= 0) {
        strbuf_print(&note, "With %d%c. ", step->number, branch_letter(step, segment->branch));
    }
    strbuf_text(&note, "Set screens have a heavy edge.");
    head_section(coaching, row, STR("Timing"), strbuf_str(&note));
    galley_join(row, timing_set(&coaching->rows.setter, segment), 0, SECTION_BASE + 8);
    bundle_add(bundle, row);
}

static void add_checks(struct coaching *coaching, const watched_list *found, struct bundle *bundle)
{
    const struct setter *setter = &coaching->rows.setter;
    if (found->count == 0) {
        return;
    }
    double pitch = COLUMN + (PAGE_WIDE - ACROSS * COLUMN) / (ACROSS - 1);
    struct galley *row = galley_new(setter->arena);
    head_section(coaching, row, STR("Check these"), STR(""));
    watch_set(setter, row, found, COLUMN, pitch, ACROSS, SECTION_BASE + 2);
    bundle_add(bundle, row);
}

static void add_step(struct coaching *coaching, const struct diagram *diagram)
{
    struct bundle bundle = {.uses = 0};
    watched_list found = {0};
    watch_findings(coaching->rows.setter.arena, coaching->play->findings, diagram->step,
                   diagram->branch, &found);
    add_picture(coaching, diagram, &found, &bundle);
    add_timing(coaching, diagram->segment, &bundle);
    add_checks(coaching, &found, &bundle);
    place_bundle(coaching, &bundle);
}

/* ---- its reads ---- */

/* What is to be said of each read, under its sentences. */
static void set_read_notes(struct coaching *coaching, struct band *band,
                           const struct diagram *diagrams, size_t count, const struct grid *grid)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct play *play = coaching->play->run->play;
    for (size_t i = 0; i < count; i++) {
        const struct branch *branch =
            &play->steps.at[diagrams[i].step].branches.at[diagrams[i].branch];
        double x = (double)i * grid_pitch(grid);
        struct column column = {setter, band->galley, x, grid->column, band->words, true};
        set_mistakes(&column, play, &branch->mistakes);
        watched_list found = {0};
        watch_findings(setter->arena, coaching->play->findings, diagrams[i].step,
                       diagrams[i].branch, &found);
        if (found.count > 0) {
            struct galley *list = galley_new(setter->arena);
            watch_set(setter, list, &found, grid->column, grid->column, 1, 0);
            galley_join(band->galley, list, x, column.base + 2);
        }
    }
}

/* A row of them; the first under a heading. */
static void add_read_row(struct coaching *coaching, const struct diagram *diagrams, size_t count,
                         bool first, const struct grid *grid)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct run *run = coaching->play->run;
    struct band band = {.galley = galley_new(setter->arena)};
    struct row row = {.count = 0};
    if (first) {
        const struct step *step = &run->play->steps.at[diagrams[0].step];
        head_section(coaching, band.galley, tell_decides(setter->arena, run->play, step, BODY_NONE),
                     STR(""));
    }
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, &diagrams[i]);
    }
    row_set(setter, &band, &row, grid, first ? SECTION_BASE + 9 : 0);
    set_read_notes(coaching, &band, diagrams, count, grid);
    struct bundle bundle = {.uses = band.uses};
    bundle_add(&bundle, band.galley);
    place_bundle(coaching, &bundle);
}

/* Two or four are set in twos, others in threes. */
static void add_reads(struct coaching *coaching, const struct diagram *diagrams, size_t count)
{
    const struct grid *grid = count == 2 || count == 4 ? &two_reads : &three_reads;
    size_t across = (size_t)grid->across;
    for (size_t i = 0; i < count; i += across) {
        add_read_row(coaching, &diagrams[i], count - i < across ? count - i : across, i == 0, grid);
    }
}

/* ---- the play ---- */

static void add_paragraphs(struct coaching *coaching)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct play *play = coaching->play->run->play;
    struct galley *words = paragraphs_set(setter, play, PAGE_WIDE);
    struct galley *row = galley_new(setter->arena);
    if (words) {
        galley_join(row, words, 0, 0);
    }
    struct column column = {setter, row, 0, PAGE_WIDE, row->height, true};
    set_mistakes(&column, play, &play->mistakes);
    struct bundle bundle = {.uses = 0};
    bundle_add(&bundle, row);
    place_bundle(coaching, &bundle);
}

static void add_diagrams(struct coaching *coaching)
{
    const diagram_list *diagrams = &coaching->diagrams;
    for (size_t i = 0, end; i < diagrams->count; i = end) {
        const struct diagram *first = &diagrams->at[i];
        end = i + 1;
        if (first->branch < 0) {
            add_step(coaching, first);
            continue;
        }
        while (end < diagrams->count && diagrams->at[end].branch >= 0 &&
               diagrams->at[end].step == first->step) {
            end++;
        }
        add_reads(coaching, first, end - i);
    }
}

static void add_play(struct coaching *coaching, const struct sheet_play *play)
{
    struct arena *arena = coaching->rows.setter.arena;
    const struct play *of = play->run->play;
    struct head_words *head = arena_new(arena, struct head_words);
    *head = head_of_play(arena, of, words_sheet(arena, "Coach\xE2\x80\x99s sheet", of));
    struct caution caution = caution_of_play(of);
    coaching->play = play;
    coaching->diagrams = (diagram_list){0};
    coaching->rows.setter.findings = play->findings;
    scene_diagrams(arena, play->run, &coaching->diagrams);
    rows_open(&coaching->rows, head, &caution);
    add_diagrams(coaching);
    add_paragraphs(coaching);
}

bool coach_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                 struct writer *writer)
{
    struct coaching coaching = {.rows = {.setter = {.arena = arena, .fonts = fonts, .job = job}}};
    for (size_t i = 0; i < job->count; i++) {
        add_play(&coaching, &job->plays[i]);
    }
    struct str name = job->count == 1 ? job->plays[0].run->play->name : STR("");
    struct str title = job->count == 1
                           ? str_format(arena, "%.*s, coach\xE2\x80\x99s sheet", STR_ARG(name))
                           : STR("coach\xE2\x80\x99s sheets");
    return rows_write(&coaching.rows, title, writer);
}
