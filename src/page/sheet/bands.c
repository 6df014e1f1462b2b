/* SPDX-License-Identifier: MIT */
/* bands: from a run to rows of blocks. Takes what was told and drawn of each step; must not know
 * pages, only their width. */
#include "page/sheet/telling.h"

#include "language/tell/tell.h"

#define BAND_GAP 12.0 /* with the space under a baseline: 23 from baseline to baseline */
#define SECTION_GAP 20.0

static const struct grid grids[] = {
    {1, 1, 1, PAGE_WIDE, PAGE_WIDE, false, TYPE_LARGE_SENTENCE},
    {2, 1, 2, 302.4, PAGE_WIDE, true, TYPE_SENTENCE},
    {4, 2, 2, 237.6, 237.6, false, TYPE_SENTENCE},
    {6, 3, 2, 152, 152, false, TYPE_SENTENCE},
    {9, 3, 3, 152, 152, false, TYPE_SENTENCE},
};

const struct grid *grid_find(int per_page)
{
    for (size_t i = 0; i < sizeof grids / sizeof *grids; i++) {
        if (grids[i].per_page == (per_page ? per_page : 4)) {
            return &grids[i];
        }
    }
    return NULL;
}

/* ---- the coach's paragraphs ---- */

static void set_paragraph(struct column *column, struct str heading, struct str text)
{
    section_set(column, heading);
    const struct text_block *words = words_set(column->setter, TYPE_SENTENCE, text, column->width);
    column->base =
        galley_text(column->galley, words, column->x, column->base + TO_SENTENCE, ROLE_TEXT);
}

static void set_remember(struct column *column, const struct play *play)
{
    bool any = false;
    for (size_t i = 0; i < play->points.count; i++) {
        any = any || point_is_for(&play->points.at[i], column->setter->job->reader);
    }
    if (any) {
        section_set(column, STR("All the way through"));
        points_set(column, play, &play->points, TO_SENTENCE);
    }
}

static struct str starters(struct arena *arena, const struct team *team, int players)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (entry->starter && entry->number <= players) {
            strbuf_print(&out, "%s%c%d%c %.*s", out.size ? ", " : "", TELL_BOLD, entry->number,
                         TELL_PLAIN, STR_ARG(entry->name));
        }
    }
    if (out.size > 0) {
        strbuf_char(&out, '.');
    }
    return strbuf_str(&out);
}

/* Call, names and points for the whole play; NULL when there are none. */
static struct galley *set_paragraphs(const struct setter *setter, const struct play *play,
                                     double width)
{
    struct column column = {.setter = setter, .galley = galley_new(setter->arena), .width = width};
    if (play->call.size > 0) {
        set_paragraph(
            &column, STR("Call it"),
            str_format(setter->arena, "Say \xE2\x80\x9C%.*s.\xE2\x80\x9D", STR_ARG(play->call)));
    }
    if (play->is_drill && play->goal.size > 0) {
        set_paragraph(&column, STR("Goal"), words_bold(setter->arena, play->goal, 0));
    }
    struct str names = starters(setter->arena, &setter->job->book->team, play->players);
    if (setter->job->names && names.size > 0) {
        set_paragraph(&column, STR("Who is who"), names);
    }
    set_remember(&column, play);
    return column.galley->items.count > 0 ? column.galley : NULL;
}

/* ---- rows ---- */

static struct band *add_band(const struct setter *setter, band_list *bands, enum band_kind kind,
                             double gap, int first)
{
    struct band band = {.kind = kind,
                        .galley = galley_new(setter->arena),
                        .gap = gap,
                        .first = first,
                        .last = first};
    VEC_PUSH(setter->arena, bands, band);
    return &bands->at[bands->count - 1];
}

static void set_steps(const struct setter *setter, const struct run *run, const struct grid *grid,
                      const diagram_list *diagrams, band_list *bands)
{
    struct row row = {.count = 0};
    for (size_t i = 0; i < diagrams->count; i++) {
        if (diagrams->at[i].branch < 0) {
            row_add(setter, &row, grid, run, &diagrams->at[i]);
        }
        bool last = i + 1 == diagrams->count;
        if (row.count == (size_t)grid->across || (last && row.count > 0)) {
            int first = row.telling[0].step->number;
            size_t count = row.count;
            struct band *band = add_band(setter, bands, BAND_STEPS, BAND_GAP, first);
            row_set(setter, band, &row, grid, 0);
            band->taken = (double)count * grid_pitch(grid);
        }
    }
}

/* The paragraphs stand in the free place beside the last step, else under it. */
static void set_last(const struct setter *setter, const struct run *run, band_list *bands)
{
    struct band *band = bands->count > 0 ? &bands->at[bands->count - 1] : NULL;
    bool beside = band && band->taken < PAGE_WIDE;
    struct galley *words =
        set_paragraphs(setter, run->play, beside ? PAGE_WIDE - band->taken : PAGE_WIDE);
    if (words && beside) {
        galley_join(band->galley, words, band->taken, 0);
        band->beside = words->height;
    } else if (words) {
        add_band(setter, bands, BAND_WORDS, SECTION_GAP, 0)->galley = words;
    }
}

static const struct grid read_grid = {3, 3, 3, 152, 152, false, TYPE_SENTENCE};

/* The reads of one step: `count` diagrams from `first`. */
static void set_branches(const struct setter *setter, const struct run *run,
                         const struct diagram *first, size_t count, band_list *bands)
{
    struct row row = {.count = 0};
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, &read_grid, run, &first[i]);
        if (row.count < (size_t)read_grid.across && i + 1 < count) {
            continue;
        }
        const struct step *step = row.telling[0].step;
        bool top = i < (size_t)read_grid.across;
        struct band *band =
            add_band(setter, bands, BAND_READS, top ? SECTION_GAP : BAND_GAP, step->number);
        struct column column = {.setter = setter, .galley = band->galley, .width = PAGE_WIDE};
        if (top) {
            section_set(&column,
                        words_decides(setter->arena, run->play, step, setter->job->reader));
        }
        row_set(setter, band, &row, &read_grid, top ? column.base + 17 - HEADING_BASE : 0);
    }
}

static void set_reads(const struct setter *setter, const struct run *run,
                      const diagram_list *diagrams, band_list *bands)
{
    for (size_t i = 0; i < diagrams->count;) {
        size_t end = i;
        while (end < diagrams->count && diagrams->at[end].branch >= 0 &&
               diagrams->at[end].step == diagrams->at[i].step) {
            end++;
        }
        set_branches(setter, run, &diagrams->at[i], end - i, bands);
        i = end > i ? end : i + 1;
    }
}

void bands_make(const struct setter *setter, const struct run *run, const struct grid *grid,
                band_list *bands)
{
    diagram_list diagrams = {0};
    scene_diagrams(setter->arena, run, &diagrams);
    set_steps(setter, run, grid, &diagrams, bands);
    set_last(setter, run, bands);
    set_reads(setter, run, &diagrams, bands);
}
