/* SPDX-License-Identifier: MIT */
/* coach: the coach's sheet. Takes plays that were run and what was found in them, gives a PDF: of
 * each step its diagram with what happens and common mistakes, its timing, what to check, its reads
 * as small diagrams. */
#include "page/sheet/sheets.h"

#include "judge/check/goal.h"
#include "language/tell/tell.h"
#include "page/sheet/coach_parts.h"

#define SECTION_GAP 14.0 /* from what stands before, not at the top of a page */
#define TIGHT_GAP 9.0    /* the same with the smallest pictures (ours) */

static const struct grid large_step = {1, 1, 1, LARGE, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid middle_step = {1, 1, 1, 190, PAGE_WIDE, true, TYPE_SENTENCE, false};
const struct grid coach_small_step = {1, 1, 1, COLUMN, PAGE_WIDE, true, TYPE_SENTENCE, false};
const struct grid coach_three_reads = {3, 3, 1, COLUMN, COLUMN, false, TYPE_SENTENCE, false};
static const struct grid two_reads = {2, 2, 1, 190, 237.6, false, TYPE_SENTENCE, false};

static const struct coach_sizes ways[] = {
    {&large_step, &two_reads, TIMED_ACROSS, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_ACROSS, SECTION_GAP},
    {&coach_small_step, &coach_three_reads, TIMED_ACROSS, TIGHT_GAP},
    {&large_step, &two_reads, TIMED_UNDER, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_UNDER, SECTION_GAP},
    {&coach_small_step, &coach_three_reads, TIMED_UNDER, TIGHT_GAP},
    {&large_step, &two_reads, TIMED_FREE, SECTION_GAP},
    {&middle_step, &two_reads, TIMED_FREE, SECTION_GAP},
    {&coach_small_step, &coach_three_reads, TIMED_FREE, TIGHT_GAP},
};
enum { WAYS = sizeof ways / sizeof *ways };

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
    coach_mistakes(&column, play, &play->mistakes);
    struct bundle bundle = {{0}};
    coach_bundle_add(&bundle, row);
    coach_bundle_place(coaching, &bundle);
}

static void add_diagrams(struct coaching *coaching)
{
    const diagram_list *diagrams = &coaching->diagrams;
    for (size_t i = 0, end; i < diagrams->count; i = end) {
        const struct diagram *first = &diagrams->at[i];
        end = i + 1;
        if (first->branch < 0) {
            coach_step(coaching, first);
            continue;
        }
        while (end < diagrams->count && diagrams->at[end].branch >= 0 &&
               diagrams->at[end].step == first->step) {
            end++;
        }
        coach_reads(coaching, first, end - i);
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
