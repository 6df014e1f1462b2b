/* SPDX-License-Identifier: MIT */
/* bands: from a run to rows of blocks. Takes what was told and drawn of each step; must not know
 * pages, only their width. */
#include "page/sheet/telling.h"
#include "page/sheet/turns.h"

#include "language/tell/tell.h"

#define BAND_GAP 12.0 /* with the space under a baseline: 23 from baseline to baseline */
#define SECTION_GAP 20.0

static const struct grid grids[] = {
    {1, 1, 1, PAGE_WIDE, PAGE_WIDE, false, TYPE_LARGE_SENTENCE, false},
    {2, 1, 2, 302.4, PAGE_WIDE, true, TYPE_SENTENCE, false},
    {4, 2, 2, 237.6, 237.6, false, TYPE_SENTENCE, false},
    {6, 3, 2, 152, 152, false, TYPE_SENTENCE, false},
    {9, 3, 3, 152, 152, false, TYPE_SENTENCE, false},
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

/* "Imke (#4)" */
static void print_who(struct strbuf *out, struct str name, struct str jersey)
{
    struct str first = words_isolated(out->arena, team_first_of(name));
    strbuf_print(out, "%.*s", STR_ARG(first));
    if (jersey.size > 0) {
        strbuf_print(out, " (#%.*s)", STR_ARG(jersey));
    }
}

/* " or Ada (#9)": who has the spot on the roster, too; a lineup has one for each. */
static void print_others(struct strbuf *out, const struct team *team, const struct play *play,
                         body who)
{
    struct str name = team_name(team, play, who), jersey = team_jersey(team, play, who);
    for (size_t i = 0; i < team->roster.count && play->lineup.size == 0; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        bool hers = str_equal_fold(entry->name, name) && str_equal(entry->jersey, jersey);
        if (entry->number == body_number(who) && !hers) {
            strbuf_text(out, " or ");
            print_who(out, entry->name, entry->jersey);
        }
    }
}

static struct str who_is_who(struct arena *arena, const struct team *team, const struct play *play)
{
    const char *number_apart = "\xC2\xA0"; /* no line ends behind a number */
    struct strbuf out;
    strbuf_init(&out, arena);
    for (int n = 1; n <= play->players; n++) {
        struct str name = team_name(team, play, body_attacker(n));
        if (name.size > 0) {
            strbuf_print(&out, "%s%c%d%c%s", out.size ? ", " : "", TELL_BOLD, n, TELL_PLAIN,
                         number_apart);
            print_who(&out, name, team_jersey(team, play, body_attacker(n)));
            print_others(&out, team, play, body_attacker(n));
        }
    }
    if (out.size > 0) {
        strbuf_char(&out, '.');
    }
    return strbuf_str(&out);
}

/* "The lineup Small has Bea (#5) as 1, not you. What 1 does is told for when you stand in." Without
 * names by her jersey. */
static struct str standing_in(const struct setter *setter, const struct play *play)
{
    const struct roster_entry *other = setter->job->instead_of;
    struct strbuf out;
    strbuf_init(&out, setter->arena);
    strbuf_print(&out, "The lineup %.*s has ",
                 STR_ARG(words_isolated(setter->arena, play->lineup)));
    if (head_names(setter->job, play)) {
        print_who(&out, other->name, other->jersey);
    } else if (other->jersey.size > 0) {
        strbuf_print(&out, "#%.*s", STR_ARG(other->jersey));
    } else {
        strbuf_text(&out, "another player");
    }
    strbuf_print(&out, " as %d, not you. What %d does is told for when you stand in.",
                 body_number(setter->job->reader), body_number(setter->job->reader));
    return strbuf_str(&out);
}

struct galley *paragraphs_set(const struct setter *setter, const struct play *play,
                              struct str measured, double width)
{
    struct column column = {.setter = setter, .galley = galley_new(setter->arena), .width = width};
    if (play->call.size > 0 && !setter->job->call_at_head) {
        paragraph_set(
            &column, STR("Call it"),
            str_format(setter->arena, "Say \xE2\x80\x9C%.*s.\xE2\x80\x9D", STR_ARG(play->call)));
    }
    if (setter->job->instead_of) {
        paragraph_set(&column, STR("Your part"), standing_in(setter, play));
    }
    if (setter->job->any_role) {
        paragraph_set(&column, STR("Your part"), turns_told(setter->arena, play));
    }
    if (play->is_drill && play->goal.size > 0) {
        struct str goal = tell_bold(setter->arena, play->goal, 0);
        if (measured.size > 0) {
            goal = str_format(setter->arena, "%.*s%.*s %.*s", STR_ARG(goal),
                              STR_ARG(tell_stop(goal)), STR_ARG(measured));
        }
        paragraph_set(&column, STR("Goal"), goal);
    }
    const struct team *team = head_names(setter->job, play);
    struct str names = team ? who_is_who(setter->arena, team, play) : STR("");
    if (names.size > 0) {
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

/* Sets the row into the band at `top`, and counts its pictures. */
static void fill_band(const struct setter *setter, struct band *band, struct row *row,
                      const struct grid *grid, double top)
{
    for (size_t i = 0; i < row->count; i++) {
        band->pictures++;
        band->scale += row->telling[i].scene->scale;
    }
    row_set(setter, band, row, grid, top);
}

/* A row of `count` diagrams as one more way of the group. */
static struct band *add_row(const struct setter *setter, struct group *group, const struct run *run,
                            const struct grid *grid, const struct diagram *const *diagrams,
                            size_t count)
{
    struct row row = {.count = 0};
    bool reads = true;
    for (size_t i = 0; i < count; i++) {
        row_add(setter, &row, grid, run, diagrams[i]);
        reads = reads && diagrams[i]->branch >= 0;
    }
    struct band *band =
        add_band(setter, &group->ways[group->count++], reads ? BAND_READS : BAND_STEPS, BAND_GAP,
                 row.telling[0].step->number);
    fill_band(setter, band, &row, grid, 0);
    band->taken = (double)count * grid_pitch(grid);
    return band;
}

/* One diagram of a grid with its words beside it. */
static struct grid flat_of(const struct grid *grid)
{
    struct grid flat = *grid;
    flat.across = 1;
    flat.column = PAGE_WIDE;
    flat.beside = true;
    return flat;
}

static void set_row(const struct setter *setter, const struct run *run, const struct grid *grid,
                    const struct diagram *const *row, size_t count, group_list *groups)
{
    struct group *group = add_group(setter, groups);
    add_row(setter, group, run, grid, row, count);
    if (count == 1 && grid->across > 1) { /* alone it may have its words beside it */
        struct grid flat = flat_of(grid);
        add_row(setter, group, run, &flat, row, 1);
    }
}

/* The paragraphs stand in the free place beside the last step, else under it. */
static void set_last(const struct setter *setter, const struct run *run, const struct grid *grid,
                     group_list *groups)
{
    struct group *group = groups->count > 0 ? &groups->at[groups->count - 1] : NULL;
    struct band *band = group ? &group->ways[0].at[0] : NULL;
    bool free = band && band->taken > 0 && band->taken < PAGE_WIDE;
    bool under = band && band->taken > 0 && grid->beside; /* the words that stand beside */
    double x = free ? band->taken : under ? grid->diagram + BESIDE_GAP : 0;
    struct galley *words = paragraphs_set(setter, run->play, STR(""), PAGE_WIDE - x);
    if (!words) {
        return;
    }
    if (!free && !under) {
        group_add_words(setter, groups, words, SECTION_GAP);
        return;
    }
    galley_join(band->galley, words, x, under ? band->words + BAND_GAP : 0);
    band->beside = words->height;
    if (group->count > 1) {
        band = &group->ways[1].at[0];
        x = grid->diagram + BESIDE_GAP;
        words = paragraphs_set(setter, run->play, STR(""), PAGE_WIDE - x);
        galley_join(band->galley, words, x, band->words + BAND_GAP);
    }
}

/* ---- the ways on ---- */

/* The next row of the ways on, which is the first of `count`; what is alone in a wide row has its
 * words beside it. Returns how many it took. */
static size_t set_branch_row(const struct setter *setter, const struct run *run,
                             const struct diagram *first, size_t count, bool top,
                             const struct grid *grid, band_list *bands)
{
    struct grid flat = flat_of(grid);
    bool alone = count == 1 && grid->across == 2;
    size_t taken = count < (size_t)grid->across ? count : (size_t)grid->across;
    grid = alone ? &flat : grid;
    struct row row = {.count = 0};
    for (size_t i = 0; i < taken; i++) {
        row_add(setter, &row, grid, run, &first[i]);
    }
    const struct step *step = row.telling[0].step;
    struct band *band =
        add_band(setter, bands, BAND_READS, top ? SECTION_GAP : BAND_GAP, step->number);
    struct column column = {.setter = setter, .galley = band->galley, .width = PAGE_WIDE};
    if (top) {
        section_set(&column, tell_decides(setter->arena, run->play, step, setter->job->reader));
        galley_keep(band->galley);
    }
    double lead = grid->across < 3 ? 20 : 17;
    fill_band(setter, band, &row, grid, top ? column.base + lead - HEADING_BASE : 0);
    return taken;
}

/* The reads of one step: `count` diagrams from `first`. */
static void set_step_reads(const struct setter *setter, const struct run *run,
                           const struct diagram *first, size_t count, const struct grid *grid,
                           group_list *groups)
{
    struct group *group = add_group(setter, groups);
    band_list *bands = &group->ways[group->count++];
    for (size_t i = 0; i < count;) {
        i += set_branch_row(setter, run, &first[i], count - i, i == 0, grid, bands);
    }
}

static void set_reads(const struct setter *setter, const struct run *run,
                      const struct diagram *diagrams, size_t count, const struct grid *grid,
                      group_list *groups)
{
    for (size_t i = 0; i < count;) {
        size_t end = i;
        while (end < count && diagrams[end].branch >= 0 && diagrams[end].step == diagrams[i].step) {
            end++;
        }
        if (end > i) {
            set_step_reads(setter, run, &diagrams[i], end - i, grid, groups);
        }
        i = end > i ? end : i + 1;
    }
}

/* ---- the play ---- */

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

/* The steps in rows, each row's last one with its reads right under it. */
static void set_steps(const struct setter *setter, const struct run *run,
                      const diagram_list *diagrams, const struct layout *layout, group_list *groups)
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
        bool full = count == (size_t)layout->grid->across || diagrams->at[i].branch >= 0;
        if (more || (!full && !last)) {
            continue;
        }
        if (count > 0) {
            set_row(setter, run, layout->grid, row, count, groups);
        }
        if (is_last_row(diagrams, i) && !closed) {
            set_last(setter, run, layout->grid, groups);
            closed = true;
        }
        set_reads(setter, run, &diagrams->at[told], i + 1 - told, layout->reads, groups);
        told = i + 1;
        count = 0;
    }
}

/* Steps and ways on in rows of one grid. */
static void set_running_on(const struct setter *setter, const struct run *run,
                           const diagram_list *diagrams, const struct grid *grid,
                           group_list *groups)
{
    const struct diagram *row[3];
    size_t count = 0;
    for (size_t i = 0; i < diagrams->count; i++) {
        row[count++] = &diagrams->at[i];
        if (count == (size_t)grid->across || i + 1 == diagrams->count) {
            set_row(setter, run, grid, row, count, groups);
            count = 0;
        }
    }
    set_last(setter, run, grid, groups);
}

void bands_make(const struct setter *setter, const struct run *run, const diagram_list *diagrams,
                const struct layout *layout, group_list *groups)
{
    if (layout->grid->run_on) {
        set_running_on(setter, run, diagrams, layout->grid, groups);
    } else {
        set_steps(setter, run, diagrams, layout, groups);
    }
}

/* ---- which ways are worth trying ---- */

static const struct grid small_reads = {3, 3, 1, 152, 152, false, TYPE_SENTENCE, false};
static const struct grid large_reads = {2, 2, 1, 237.6, 237.6, false, TYPE_SENTENCE, false};
static const struct grid running_on = {4, 2, 2, 237.6, 237.6, false, TYPE_SENTENCE, true};
/* Steps under each other, each right before its ways on. */
static const struct grid middle_beside = {2, 1, 4, 237.6, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid small_beside = {3, 1, 5, 190, PAGE_WIDE, true, TYPE_SENTENCE, false};
static const struct grid running_small = {6, 3, 3, 152, 152, false, TYPE_SENTENCE, true};
/* An upright full floor is tall: three of them across, or one with its words beside it. */
static const struct grid full_beside = {1, 1, 1, 237.6, PAGE_WIDE, true, TYPE_SENTENCE, false};

static bool has_reads(const diagram_list *diagrams)
{
    for (size_t i = 0; i < diagrams->count; i++) {
        if (diagrams->at[i].branch >= 0) {
            return true;
        }
    }
    return false;
}

static bool is_tall(const struct setter *setter, const diagram_list *diagrams)
{
    for (size_t i = 0; i < diagrams->count; i++) {
        if (scene_height(setter->arena, &diagrams->at[i],
                         &(struct scene_options){.width = large_reads.diagram}) >
            large_reads.diagram) {
            return true;
        }
    }
    return false;
}

static void add_layout(const struct setter *setter, const struct grid *grid,
                       const struct grid *reads, layout_list *layouts)
{
    VEC_PUSH(setter->arena, layouts, ((struct layout){grid, reads}));
}

/* The ways on large first, then small. */
static void add_layouts(const struct setter *setter, const struct grid *grid, bool reads,
                        layout_list *layouts)
{
    add_layout(setter, grid, &large_reads, layouts);
    if (reads) {
        add_layout(setter, grid, &small_reads, layouts);
    }
}

void layouts_for(const struct setter *setter, const diagram_list *diagrams, layout_list *layouts)
{
    bool reads = has_reads(diagrams), tall = is_tall(setter, diagrams);
    if (setter->job->per_page) {
        add_layouts(setter, grid_find(setter->job->per_page), reads, layouts);
        return;
    }
    if (diagrams->count == 1) {
        add_layouts(setter, grid_find(1), reads, layouts);
    }
    const struct grid *beside = tall ? &full_beside : grid_find(2);
    add_layout(setter, beside, &large_reads, layouts);
    if (reads) { /* large ways on before one large step */
        add_layout(setter, &running_on, &large_reads, layouts);
        add_layout(setter, beside, &small_reads, layouts);
    }
    add_layouts(setter, grid_find(4), reads, layouts);
    if (tall) {
        add_layouts(setter, grid_find(6), reads, layouts);
    }
    if (reads) {
        add_layout(setter, &middle_beside, &small_reads, layouts);
        add_layout(setter, &small_beside, &small_reads, layouts);
        add_layout(setter, &running_small, &small_reads, layouts);
    }
}
