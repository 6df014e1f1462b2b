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
        paragraph_set(
            &column, STR("Call it"),
            str_format(setter->arena, "Say \xE2\x80\x9C%.*s.\xE2\x80\x9D", STR_ARG(play->call)));
    }
    if (play->is_drill && play->goal.size > 0) {
        paragraph_set(&column, STR("Goal"), words_bold(setter->arena, play->goal, 0));
    }
    struct str names = starters(setter->arena, &setter->job->book->team, play->players);
    if (setter->job->names && names.size > 0) {
        paragraph_set(&column, STR("Who is who"), names);
    }
    set_remember(&column, play);
    return column.galley->items.count > 0 ? column.galley : NULL;
}

/* ---- rows ---- */

static struct group *add_group(const struct setter *setter, group_list *groups)
{
    VEC_PUSH(setter->arena, groups, (struct group){.count = 0});
    return &groups->at[groups->count - 1];
}

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

void group_add_words(const struct setter *setter, group_list *groups, struct galley *words,
                     double gap)
{
    struct group *group = add_group(setter, groups);
    group->count = 1;
    add_band(setter, &group->ways[0], BAND_WORDS, gap, 0)->galley = words;
}

/* A row of `count` diagrams as one more way of the group. */
static struct band *add_row(const struct setter *setter, struct group *group, const struct run *run,
                            const struct grid *grid, const struct diagram *const *diagrams,
                            size_t count)
{
    struct row row = {.count = 0};
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, diagrams[i]);
    }
    struct band *band = add_band(setter, &group->ways[group->count++], BAND_STEPS, BAND_GAP,
                                 row.telling[0].step->number);
    row_set(setter, band, &row, grid, 0);
    band->taken = (double)count * grid_pitch(grid);
    return band;
}

static void set_row(const struct setter *setter, const struct run *run, const struct grid *grid,
                    const struct diagram *const *row, size_t count, group_list *groups)
{
    struct group *group = add_group(setter, groups);
    add_row(setter, group, run, grid, row, count);
    if (count == 1 && grid->across > 1) { /* alone it may have its words beside it */
        struct grid flat = *grid;
        flat.across = 1;
        flat.column = PAGE_WIDE;
        flat.beside = true;
        add_row(setter, group, run, &flat, row, 1);
    }
}

/* Does no further step's common part come after this diagram? */
static bool is_last_row(const diagram_list *diagrams, size_t index)
{
    for (size_t i = index + 1; i < diagrams->count; i++) {
        if (diagrams->at[i].branch < 0) {
            return false;
        }
    }
    return true;
}

/* The paragraphs stand in the free place beside the last step, else under it. */
static void set_last(const struct setter *setter, const struct run *run, const struct grid *grid,
                     group_list *groups)
{
    struct group *group = groups->count > 0 ? &groups->at[groups->count - 1] : NULL;
    struct band *band = group ? &group->ways[0].at[0] : NULL;
    bool beside = band && band->kind == BAND_STEPS && band->taken < PAGE_WIDE;
    double taken = beside ? band->taken : 0;
    struct galley *words = set_paragraphs(setter, run->play, PAGE_WIDE - taken);
    if (!words) {
        return;
    }
    if (!beside) {
        group_add_words(setter, groups, words, SECTION_GAP);
        return;
    }
    galley_join(band->galley, words, taken, 0);
    band->beside = words->height;
    if (group->count > 1) {
        band = &group->ways[1].at[0];
        double x = grid->diagram + BESIDE_GAP;
        words = set_paragraphs(setter, run->play, PAGE_WIDE - x);
        galley_join(band->galley, words, x, band->words + BAND_GAP);
    }
}

/* Reads three across, or, where a page has the room, fewer and larger. */
static const struct grid read_grid = {3, 3, 1, 152, 152, false, TYPE_SENTENCE};
static const struct grid large_read_grid = {2, 2, 1, 237.6, 237.6, false, TYPE_SENTENCE};

static void set_branches(const struct setter *setter, const struct run *run,
                         const struct diagram *first, size_t count, const struct grid *grid,
                         band_list *bands)
{
    struct row row = {.count = 0};
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, &first[i]);
        if (row.count < (size_t)grid->across && i + 1 < count) {
            continue;
        }
        const struct step *step = row.telling[0].step;
        bool top = i < (size_t)grid->across;
        struct band *band =
            add_band(setter, bands, BAND_READS, top ? SECTION_GAP : BAND_GAP, step->number);
        struct column column = {.setter = setter, .galley = band->galley, .width = PAGE_WIDE};
        if (top) {
            section_set(&column,
                        words_decides(setter->arena, run->play, step, setter->job->reader));
        }
        row_set(setter, band, &row, grid,
                top ? column.base + (grid->across < 3 ? 20 : 17) - HEADING_BASE : 0);
    }
}

/* The reads of one step: `count` diagrams from `first`. */
static void set_step_reads(const struct setter *setter, const struct run *run,
                           const struct diagram *first, size_t count, group_list *groups)
{
    struct group *group = add_group(setter, groups);
    if (count <= 2 || count == 4) {
        set_branches(setter, run, first, count, &large_read_grid, &group->ways[group->count++]);
    }
    set_branches(setter, run, first, count, &read_grid, &group->ways[group->count++]);
}

static void set_reads(const struct setter *setter, const struct run *run,
                      const struct diagram *diagrams, size_t count, group_list *groups)
{
    for (size_t i = 0; i < count;) {
        size_t end = i;
        while (end < count && diagrams[end].branch >= 0 && diagrams[end].step == diagrams[i].step) {
            end++;
        }
        if (end > i) {
            set_step_reads(setter, run, &diagrams[i], end - i, groups);
        }
        i = end > i ? end : i + 1;
    }
}

/* The steps in rows, the reads of a row's steps right under it. */
static void set_steps(const struct setter *setter, const struct run *run, const struct grid *grid,
                      const diagram_list *diagrams, group_list *groups)
{
    const struct diagram *row[3];
    size_t count = 0, told = 0;
    bool closed = false;
    for (size_t i = 0; i < diagrams->count; i++) {
        if (diagrams->at[i].branch < 0) {
            row[count++] = &diagrams->at[i];
        }
        bool last = i + 1 == diagrams->count;
        bool more = !last && diagrams->at[i + 1].branch >= 0; /* a read of this step */
        if (more || (count < (size_t)grid->across && !last)) {
            continue;
        }
        if (count > 0) {
            set_row(setter, run, grid, row, count, groups);
        }
        if (is_last_row(diagrams, i) && !closed) {
            set_last(setter, run, grid, groups);
            closed = true;
        }
        set_reads(setter, run, &diagrams->at[told], i + 1 - told, groups);
        told = i + 1;
        count = 0;
    }
}

void bands_make(const struct setter *setter, const struct run *run, const struct grid *grid,
                group_list *groups)
{
    diagram_list diagrams = {0};
    scene_diagrams(setter->arena, run, &diagrams);
    set_steps(setter, run, grid, &diagrams, groups);
}
