/* SPDX-License-Identifier: MIT */
/* coach_reads: the ways on of a step on a coach's sheet: small pictures side by side, under each
 * what is to be said of it, their timings. */
#include "page/sheet/coach_parts.h"

#include "language/tell/tell.h"

#define TO_STRIP 11.0 /* from a column's last baseline to its timing (ours) */

/* Of a read, across the page. */
static void add_read_timing(struct coaching *coaching, const struct diagram *diagram)
{
    if (!coach_own_timing(coaching, diagram)) {
        return;
    }
    struct arena *arena = coaching->rows.setter.arena;
    struct galley *row = galley_new(arena);
    struct str title = str_format(arena, "Timing with %.*s", STR_ARG(diagram->label));
    struct strbuf note;
    strbuf_init(&note, arena);
    coach_put_clock(&note, diagram->segment);
    coach_head(coaching, row, title, coach_note_ended(&note));
    galley_join(row, timing_set(&coaching->rows.setter, diagram->segment, &timing_whole, PAGE_WIDE),
                0, SECTION_BASE + 8);
    struct bundle bundle = {{0}};
    coach_bundle_add(&bundle, row);
    coach_bundle_place(coaching, &bundle);
}

/* How often it held, under a read. */
static void set_held(const struct coaching *coaching, struct column *column,
                     const struct segment *segment)
{
    const struct sheet_tolerance *tolerance = coach_tolerance(coaching, segment);
    if (!tolerance) {
        return;
    }
    struct strbuf note;
    strbuf_init(&note, column->setter->arena);
    coach_put_tolerance(&note, tolerance);
    column->base = galley_text(
        column->galley, words_set(column->setter, TYPE_NOTE, strbuf_str(&note), column->width),
        column->x, column->base + TO_SENTENCE, ROLE_SOFT);
}

/* Their timings, where they stand in the columns of a row. */
static void set_read_timings(const struct coaching *coaching, const struct column *columns,
                             const struct diagram *diagrams, size_t count)
{
    enum timed timed = coaching->way->timed;
    double bottom = columns->galley->height;
    for (size_t i = 0; i < count; i++) {
        const struct column *column = &columns[i];
        if (timed == TIMED_ACROSS || !coach_own_timing(coaching, &diagrams[i])) {
            continue;
        }
        struct galley *strip =
            timing_set(column->setter, diagrams[i].segment, &timing_column, column->width);
        double top = column->base + TO_STRIP;
        if (timed == TIMED_UNDER || top + strip->height <= bottom) {
            galley_join(column->galley, strip, column->x, top);
        }
    }
}

/* What is to be said of each read, under its sentences. */
static void set_read_notes(struct coaching *coaching, struct band *band,
                           const struct diagram *diagrams, size_t count, const struct grid *grid)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct play *play = coaching->play->play;
    struct column columns[ACROSS];
    for (size_t i = 0; i < count; i++) {
        const struct branch *branch =
            &play->steps.at[diagrams[i].step].branches.at[diagrams[i].branch];
        double x = (double)i * grid_pitch(grid);
        struct column column = {setter, band->galley, x, grid->column, band->columns[i], true};
        set_held(coaching, &column, diagrams[i].segment);
        coach_mistakes(&column, play, &branch->mistakes);
        watched_list found = {0};
        watch_findings(setter->arena, coaching->play->findings, diagrams[i].step,
                       diagrams[i].branch, &found);
        if (found.count > 0) {
            struct galley *list = galley_new(setter->arena);
            double top = column.base + 2;
            column.base += 2 + watch_set(setter, list, &found, grid->column, grid->column, 1, 0);
            galley_join(band->galley, list, x, top);
        }
        columns[i] = column;
    }
    set_read_timings(coaching, columns, diagrams, count);
}

/* A row of them; the first under a heading. */
static void add_read_row(struct coaching *coaching, const struct diagram *diagrams, size_t count,
                         bool first, const struct grid *grid)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct run *run = coaching->run;
    struct band band = {.galley = galley_new(setter->arena)};
    struct row row = {.count = 0};
    if (first) {
        const struct step *step = &run->play->steps.at[diagrams[0].step];
        coach_head(coaching, band.galley, tell_decides(setter->arena, run->play, step, BODY_NONE),
                   STR(""));
    }
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, &diagrams[i]);
    }
    row_set(setter, &band, &row, grid, first ? SECTION_BASE + 9 : 0);
    set_read_notes(coaching, &band, diagrams, count, grid);
    struct bundle bundle = {{0}};
    coach_bundle_add(&bundle, band.galley);
    coach_bundle_place(coaching, &bundle);
}

/* Two or four are set in twos, others in threes. */
void coach_reads(struct coaching *coaching, const struct diagram *diagrams, size_t count)
{
    const struct grid *grid = count == 2 || count == 4 ? coaching->way->pair : &coach_three_reads;
    size_t across = (size_t)grid->across;
    for (size_t i = 0; i < count; i += across) {
        add_read_row(coaching, &diagrams[i], count - i < across ? count - i : across, i == 0, grid);
    }
    for (size_t i = 0; coaching->way->timed == TIMED_ACROSS && i < count; i++) {
        add_read_timing(coaching, &diagrams[i]);
    }
}
