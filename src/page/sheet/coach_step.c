/* SPDX-License-Identifier: MIT */
/* coach_step: a step on a coach's sheet: its picture with what happens and what goes wrong, its
 * timing, what to check. */
#include "page/sheet/coach_parts.h"

static bool is_tall(const struct coaching *coaching, const struct diagram *diagram)
{
    struct scene_options options = {.width = LARGE};
    return scene_height(coaching->rows.setter.arena, diagram, &options) > LARGE;
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
    coach_small_heading(column, STR("Watch"));
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
    const struct run *run = coaching->run;
    const struct step *step = &run->play->steps.at[diagram->step];
    const struct grid *grid = is_tall(coaching, diagram) ? &coach_small_step : coaching->way->step;
    struct band band = {.galley = galley_new(setter->arena)};
    struct row row = {.count = 0};
    row_add(setter, &row, grid, run, diagram);
    row_set(setter, &band, &row, grid, 0);
    double x = grid->diagram + BESIDE_GAP;
    struct column column = {setter, band.galley, x, PAGE_WIDE - x, band.words, true};
    set_figures(&column, diagram->segment, found);
    coach_mistakes(&column, run->play, &step->mistakes);
    coach_bundle_add(bundle, band.galley);
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
    coach_put_clock(&note, segment);
    strbuf_text(&note, timing_has_set(segment) ? "Set screens have a heavy edge. " : "");
    const struct sheet_tolerance *tolerance = coach_tolerance(coaching, segment);
    if (tolerance) {
        coach_put_tolerance(&note, tolerance);
    }
    double down = coach_head(coaching, row, STR("Timing"), coach_note_ended(&note));
    galley_join(row, timing_set(&coaching->rows.setter, segment, &timing_whole, PAGE_WIDE), 0,
                SECTION_BASE + 8 + down);
    coach_bundle_add(bundle, row);
}

static void add_checks(struct coaching *coaching, const watched_list *found, struct bundle *bundle)
{
    const struct setter *setter = &coaching->rows.setter;
    if (found->count == 0) {
        return;
    }
    double pitch = COLUMN + (PAGE_WIDE - ACROSS * COLUMN) / (ACROSS - 1);
    struct galley *row = galley_new(setter->arena);
    coach_head(coaching, row, STR("Check these"), STR(""));
    watch_set(setter, row, found, COLUMN, pitch, ACROSS, SECTION_BASE + 2);
    coach_bundle_add(bundle, row);
}

void coach_step(struct coaching *coaching, const struct diagram *diagram)
{
    struct bundle bundle = {{0}};
    watched_list found = {0};
    watch_findings(coaching->rows.setter.arena, coaching->play->findings, diagram->step,
                   diagram->branch, &found);
    add_picture(coaching, diagram, &found, &bundle);
    add_timing(coaching, diagram->segment, &bundle);
    add_checks(coaching, &found, &bundle);
    coach_bundle_place(coaching, &bundle);
}
