/* SPDX-License-Identifier: MIT */
/* coach: the coach's sheet. Takes plays that were run and what was found in them, gives a PDF: of
 * each step its diagram with what happens and common mistakes, its timing, what to check, its reads
 * as small diagrams. */
#include "page/sheet/sheets.h"

#include "judge/check/goal.h"
#include "language/tell/tell.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"
#include "page/sheet/timing.h"
#include "page/sheet/watch.h"

#define ACROSS 3
#define COLUMN 152.0
#define SECTION_BASE 8.0 /* of a section's heading, under its row's top */
#define SECTION_GAP 14.0 /* from what stands before, not at the top of a page */
#define TIGHT_GAP 9.0    /* the same with the smallest pictures (ours) */
#define TO_STRIP 11.0    /* from a column's last baseline to its timing (ours) */

#define LARGE 237.6 /* a step's picture, in points; a full floor's is a column wide */

static const struct grid large_step = {1, 1, 1, LARGE, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid middle_step = {1, 1, 1, 190, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid small_step = {1, 1, 1, COLUMN, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid three_reads = {3, 3, 1, COLUMN, COLUMN, false, TYPE_SENTENCE, false};
static const struct grid two_reads = {2, 2, 1, 190, 237.6, false, TYPE_SENTENCE, false};

/* Where a read's timing stands that its step does not show: across the page, in its column under
 * the sentences, or there where this makes no row higher. */
enum timed { TIMED_ACROSS, TIMED_UNDER, TIMED_FREE };

/* How large the pictures are, and where the reads have their timing: the first way that takes no
 * more pages than another is kept. */
struct sizes {
    const struct grid *step;
    const struct grid *pair; /* reads in twos and fours */
    enum timed timed;
    double gap; /* between sections */
};
static const struct sizes ways[] = {
    {&large_step, &two_reads, TIMED_ACROSS, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_ACROSS, SECTION_GAP},
    {&small_step, &three_reads, TIMED_ACROSS, TIGHT_GAP},
    {&large_step, &two_reads, TIMED_UNDER, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_UNDER, SECTION_GAP},
    {&small_step, &three_reads, TIMED_UNDER, TIGHT_GAP},
    {&large_step, &two_reads, TIMED_FREE, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_FREE, SECTION_GAP},
    {&small_step, &three_reads, TIMED_FREE, TIGHT_GAP},
};
enum { WAYS = sizeof ways / sizeof *ways };

struct coaching {
    struct rows rows;
    const struct sizes *way;
    const struct sheet_tolerance *tolerance; /* of each diagram; NULL: nobody asked */
    const struct sheet_play *play;
    const struct run *run;
    diagram_list diagrams;
};

/* Rows that stay on one page where a page is tall enough for them. */
struct bundle {
    VEC(struct galley *) rows;
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
        height += bundle->rows.at[i]->height + coaching->way->gap;
    }
    if (height > rows_room(rows) && !rows_page(rows)->empty) {
        rows_turn(rows, false);
    }
    for (size_t i = 0; i < bundle->rows.count; i++) {
        rows_add_apart(rows, bundle->rows.at[i], coaching->way->gap);
    }
}

/* A section's heading with a note at its right; returns how far the note's further lines reach
 * down. */
static double head_section(struct coaching *coaching, struct galley *galley, struct str title,
                           struct str note)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct text_block *heading = words_set(setter, TYPE_HEADING, title, 0);
    const struct text_block *words =
        words_set(setter, TYPE_NOTE, note, PAGE_WIDE - text_width(heading) - BESIDE_GAP);
    galley_text(galley, heading, 0, SECTION_BASE, ROLE_TEXT);
    galley_keep(galley);
    double last = galley_text_end(galley, words, PAGE_WIDE, SECTION_BASE, ROLE_SOFT);
    galley_keep(galley);
    return last - SECTION_BASE;
}

static bool is_tall(const struct coaching *coaching, const struct diagram *diagram)
{
    struct scene_options options = {.width = LARGE};
    return scene_height(coaching->rows.setter.arena, diagram, &options) > LARGE;
}

/* ---- a step ---- */

static void set_small_heading(struct column *column, struct str words)
{
    column->base += column->base > 0 ? 18 : 0;
    galley_text(column->galley, words_set(column->setter, TYPE_SMALL_HEADING, words, 0), column->x,
                column->base, ROLE_TEXT);
    galley_keep(column->galley);
}

/* "Common mistakes" under what stands in the column. */
static void set_mistakes(struct column *column, const struct play *play, const point_list *mistakes)
{
    if (mistakes->count == 0) {
        return;
    }
    const double indent = 12;
    const struct setter *setter = column->setter;
    set_small_heading(column, STR("Common mistakes"));
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
    set_small_heading(column, STR("Watch"));
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
    const struct grid *grid = is_tall(coaching, diagram) ? &small_step : coaching->way->step;
    struct band band = {.galley = galley_new(setter->arena)};
    struct row row = {.count = 0};
    row_add(setter, &row, grid, run, diagram);
    row_set(setter, &band, &row, grid, 0);
    double x = grid->diagram + BESIDE_GAP;
    struct column column = {setter, band.galley, x, PAGE_WIDE - x, band.words, true};
    set_figures(&column, diagram->segment, found);
    set_mistakes(&column, run->play, &step->mistakes);
    bundle_add(bundle, band.galley);
}

/* "Timing held in 81 of 100 computer runs; tightest: 3's curl off 5, 0.4 s." */
static void put_tolerance(struct strbuf *out, const struct sheet_tolerance *tolerance)
{
    strbuf_print(out, "Timing held in %d of %d computer runs", tolerance->works, tolerance->runs);
    if (tolerance->tightest.size > 0) {
        strbuf_print(out, "; tightest: %.*s", STR_ARG(tolerance->tightest));
    }
    strbuf_char(out, '.');
    if (tolerance->times > 0) {
        strbuf_print(out, " %d time%s %.*s.", tolerance->times, tolerance->times == 1 ? "" : "s",
                     STR_ARG(tolerance->trouble));
    }
}

/* Of the diagram whose segment it is; NULL: it says nothing. */
static const struct sheet_tolerance *tolerance_of_segment(const struct coaching *coaching,
                                                          const struct segment *segment)
{
    for (size_t i = 0; coaching->tolerance && i < coaching->diagrams.count; i++) {
        if (coaching->diagrams.at[i].segment == segment && coaching->tolerance[i].runs > 0) {
            return &coaching->tolerance[i];
        }
    }
    return NULL;
}

/* Where on the whole play's clock it lies. */
static void put_clock(struct strbuf *note, const struct segment *segment)
{
    if (segment->play->steps.count > 1) {
        double from = segment->time_before;
        strbuf_print(note, "%.1f to %.1f s of the play. ", from, from + segment->duration);
    }
}

static struct str note_ended(struct strbuf *note)
{
    struct str told = strbuf_str(note);
    told.size -= told.size > 0 && told.at[told.size - 1] == ' ';
    return told;
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
    put_clock(&note, segment);
    strbuf_text(&note, timing_has_set(segment) ? "Set screens have a heavy edge. " : "");
    const struct sheet_tolerance *tolerance = tolerance_of_segment(coaching, segment);
    if (tolerance) {
        put_tolerance(&note, tolerance);
    }
    double down = head_section(coaching, row, STR("Timing"), note_ended(&note));
    galley_join(row, timing_set(&coaching->rows.setter, segment, &timing_whole, PAGE_WIDE), 0,
                SECTION_BASE + 8 + down);
    bundle_add(bundle, row);
}

/* Has it a timing that its step does not show? */
static bool has_own_timing(const struct coaching *coaching, const struct diagram *diagram)
{
    const diagram_list *all = &coaching->diagrams;
    bool shown = !timing_holds(diagram->segment);
    for (size_t i = 0; i < all->count; i++) {
        shown = shown || (all->at[i].branch < 0 && all->at[i].segment == diagram->segment);
    }
    return !shown;
}

/* Of a read, across the page. */
static void add_read_timing(struct coaching *coaching, const struct diagram *diagram)
{
    if (!has_own_timing(coaching, diagram)) {
        return;
    }
    struct arena *arena = coaching->rows.setter.arena;
    struct galley *row = galley_new(arena);
    struct str title = str_format(arena, "Timing with %.*s", STR_ARG(diagram->label));
    struct strbuf note;
    strbuf_init(&note, arena);
    put_clock(&note, diagram->segment);
    head_section(coaching, row, title, note_ended(&note));
    galley_join(row, timing_set(&coaching->rows.setter, diagram->segment, &timing_whole, PAGE_WIDE),
                0, SECTION_BASE + 8);
    struct bundle bundle = {{0}};
    bundle_add(&bundle, row);
    place_bundle(coaching, &bundle);
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
    struct bundle bundle = {{0}};
    watched_list found = {0};
    watch_findings(coaching->rows.setter.arena, coaching->play->findings, diagram->step,
                   diagram->branch, &found);
    add_picture(coaching, diagram, &found, &bundle);
    add_timing(coaching, diagram->segment, &bundle);
    add_checks(coaching, &found, &bundle);
    place_bundle(coaching, &bundle);
}

/* ---- its reads ---- */

/* How often it held, under a read. */
static void set_held(const struct coaching *coaching, struct column *column,
                     const struct segment *segment)
{
    const struct sheet_tolerance *tolerance = tolerance_of_segment(coaching, segment);
    if (!tolerance) {
        return;
    }
    struct strbuf note;
    strbuf_init(&note, column->setter->arena);
    put_tolerance(&note, tolerance);
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
        if (timed == TIMED_ACROSS || !has_own_timing(coaching, &diagrams[i])) {
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
        set_mistakes(&column, play, &branch->mistakes);
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
        head_section(coaching, band.galley, tell_decides(setter->arena, run->play, step, BODY_NONE),
                     STR(""));
    }
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, &diagrams[i]);
    }
    row_set(setter, &band, &row, grid, first ? SECTION_BASE + 9 : 0);
    set_read_notes(coaching, &band, diagrams, count, grid);
    struct bundle bundle = {{0}};
    bundle_add(&bundle, band.galley);
    place_bundle(coaching, &bundle);
}

/* Two or four are set in twos, others in threes. */
static void add_reads(struct coaching *coaching, const struct diagram *diagrams, size_t count)
{
    const struct grid *grid = count == 2 || count == 4 ? coaching->way->pair : &three_reads;
    size_t across = (size_t)grid->across;
    for (size_t i = 0; i < count; i += across) {
        add_read_row(coaching, &diagrams[i], count - i < across ? count - i : across, i == 0, grid);
    }
    for (size_t i = 0; coaching->way->timed == TIMED_ACROSS && i < count; i++) {
        add_read_timing(coaching, &diagrams[i]);
    }
}

/* ---- the play ---- */

static void add_paragraphs(struct coaching *coaching)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct play *play = coaching->play->play;
    struct galley *words =
        paragraphs_set(setter, play, goal_measured(setter->arena, coaching->run), PAGE_WIDE);
    struct galley *row = galley_new(setter->arena);
    if (words) {
        galley_join(row, words, 0, 0);
    }
    struct column column = {setter, row, 0, PAGE_WIDE, row->height, true};
    set_mistakes(&column, play, &play->mistakes);
    struct bundle bundle = {{0}};
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

static void set_play(struct coaching *coaching)
{
    struct arena *arena = coaching->rows.setter.arena;
    const struct play *play = coaching->play->play;
    struct head_words *head = arena_new(arena, struct head_words);
    *head = head_of_play(arena, play, words_sheet(arena, "Coach\xE2\x80\x99s sheet", play));
    head_call(&coaching->rows.setter, head, play);
    struct caution caution = caution_of_play(play);
    rows_open(&coaching->rows, head, &caution);
    add_diagrams(coaching);
    add_paragraphs(coaching);
}

/* Every way on is tried, each by itself; a step's common part is that of its first way. */
static bool try_diagrams(struct coaching *coaching)
{
    const struct sheet_job *job = coaching->rows.setter.job;
    struct arena *arena = coaching->rows.setter.arena;
    if (!job->tolerance) {
        return true;
    }
    size_t count = coaching->diagrams.count;
    struct sheet_tolerance *tolerance = arena_array(arena, struct sheet_tolerance, count + 1);
    coaching->tolerance = tolerance;
    for (size_t i = 0; i < count; i++) {
        size_t same = 0; /* the same segment is tried once */
        while (coaching->diagrams.at[same].segment != coaching->diagrams.at[i].segment) {
            same++;
        }
        if (same < i) {
            tolerance[i] = tolerance[same];
        } else if (!job->tolerance(job->tolerance_ctx, arena, coaching->diagrams.at[i].segment,
                                   &tolerance[i])) {
            return false;
        }
    }
    return true;
}

static bool add_play(struct booklet *booklet, const struct sheet_play *row)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    struct kept kept = {.count = 0};
    struct coaching coaching = {.rows = {.setter = booklet->setter, .ruled = true},
                                .play = row,
                                .run = booklet_run(&booklet->setter, row)};
    coaching.rows.setter.findings = row->findings;
    coaching.rows.setter.kept = &kept;
    scene_diagrams(arena, coaching.run, &coaching.diagrams);
    if (!try_diagrams(&coaching)) {
        return false;
    }
    struct coaching best = coaching;
    for (size_t i = 0; i < WAYS && (i == 0 || best.rows.pages.count > 1); i++) {
        coaching.way = &ways[i];
        set_play(&coaching);
        if (i == 0 || coaching.rows.pages.count < best.rows.pages.count) {
            best = coaching;
        }
    }
    if (best.rows.pages.count > 1 && row->play->call.size > 0) { /* it may spare a page */
        coaching.rows.setter.job = job_with_call(&booklet->setter);
        coaching.way = best.way;
        set_play(&coaching);
        best = coaching.rows.pages.count < best.rows.pages.count ? coaching : best;
    }
    pictures_draw(&best.rows.setter, &best.rows.pages);
    rows_close(&best.rows, booklet, row->play->name);
    arena_release(arena, mark);
    return true;
}

bool coach_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    for (size_t i = 0; i < job->count; i++) {
        if (!add_play(booklet, &job->plays[i])) {
            return false;
        }
    }
    struct str title = rows_title(booklet, "coach\xE2\x80\x99s sheet", "coach\xE2\x80\x99s sheets");
    return rows_write(booklet, title, writer);
}
