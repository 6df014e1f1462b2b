/* SPDX-License-Identifier: MIT */
/* bands: from a run to rows of blocks. Takes what was told and drawn of each step; must not know
 * pages, only their width. */
#include "page/sheet/bands.h"

#include "language/tell/tell.h"

#define GUTTER 28.8
#define GUTTER_NARROW 24.0
#define HEADING_BASE 8.0 /* a band's top to its first heading's baseline */
#define TO_DIAGRAM 8.0   /* from a heading's baseline */
#define TO_SENTENCE 15.0 /* from a diagram to the first baseline under it */
#define SENTENCE_GAP 1.2
#define POINT_GAP 1.5
#define INDENT 15.0
#define BAND_GAP 12.0 /* with the space under a baseline: 23 from baseline to baseline */
#define SECTION_GAP 20.0
#define NARROW 200.0 /* a column narrower than this has the smaller headings */

/* A column being filled, from the top down. */
struct column {
    const struct setter *setter;
    struct galley *galley;
    double x, width;
    double base; /* the last baseline */
    bool gap;    /* a sentence stands above */
};

/* One way through a step, as it is to be set. */
struct telling {
    const struct play *play;
    const struct diagram *diagram;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    const struct scene *scene;
    size_t first_task; /* a read tells only what is its own */
    const point_list *points;
};

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

/* ---- parts of a block ---- */

/* "2  Cross screen": the label, a wide space, the title. */
struct heading {
    const struct text_block *label, *title; /* either may be NULL */
    double indent;                          /* of the title */
    size_t lines;
    enum type type;
};

static struct heading heading_make(const struct setter *setter, struct str label, struct str title,
                                   enum type type, double width)
{
    struct heading heading = {.type = type, .lines = 1};
    if (label.size > 0) {
        heading.label = words_set(setter, type, label, 0);
        heading.indent = text_width(heading.label) + type_leading(type) / 2;
    }
    if (title.size > 0) {
        heading.title = words_set(setter, type, title, width - heading.indent);
        heading.lines = text_lines(heading.title);
    }
    return heading;
}

/* The column goes on as if the heading had `lines` lines: diagrams side by side stand level. */
static void set_heading(struct column *column, const struct heading *heading, size_t lines)
{
    double base = column->base + HEADING_BASE;
    if (heading->label) {
        galley_text(column->galley, heading->label, column->x, base, ROLE_TEXT);
        galley_keep(column->galley);
    }
    if (heading->title) {
        galley_text(column->galley, heading->title, column->x + heading->indent, base, ROLE_TEXT);
        galley_keep(column->galley);
    }
    column->base = base + type_leading(heading->type) * (double)(lines - 1);
}

/* "x3 trails: Curl": what the player has to see, and what the coach calls it. */
static struct str branch_words(const struct setter *setter, const struct branch *branch)
{
    struct str title = branch->title;
    if (branch->kind == BRANCH_OPTION || branch->conditions.count == 0) {
        return title;
    }
    struct str seen = tell_strip(setter->arena, tell_conditions(setter->arena, branch));
    if (title.size == 0 || str_equal_fold(title, seen)) {
        title = seen;
    } else {
        title = str_format(setter->arena, "%.*s: %.*s", STR_ARG(seen), STR_ARG(title));
    }
    bool defender =
        title.size > 1 && title.at[0] == 'x' && title.at[1] >= '0' && title.at[1] <= '9';
    if (!defender && title.size > 0 && title.at[0] >= 'a' && title.at[0] <= 'z') {
        title = str_format(setter->arena, "%c%.*s", title.at[0] - 'a' + 'A', (int)title.size - 1,
                           title.at + 1);
    }
    return title;
}

static struct heading telling_heading(const struct setter *setter, const struct telling *telling,
                                      const struct grid *grid)
{
    enum type type = grid->column < NARROW ? TYPE_SMALL_HEADING : TYPE_HEADING;
    struct str label = telling->diagram->label;
    struct str title =
        telling->branch ? branch_words(setter, telling->branch) : telling->step->title;
    if (title.size == 0) {
        title = str_format(setter->arena, "Step %d", telling->step->number);
        label = STR("");
    }
    return heading_make(setter, label, title, type, grid->column);
}

static void set_disc(struct column *column, int order, double base)
{
    char digits[NUMBER_MOST];
    size_t size = number_print(digits, order, 0, false);
    struct str text = str_copy(column->setter->arena, (struct str){digits, size});
    galley_disc(column->galley, words_set(column->setter, TYPE_DISC, text, 0), column->x + 5.2,
                base - 3.3);
}

/* Is the sentence of this task about the reader alone? It is told as "your job". */
static bool is_own(const struct telling *telling, size_t index, body reader)
{
    int branch = telling->diagram->branch;
    const struct sentence *sentence = step_task(telling->step, branch, index)->sentence;
    size_t count = step_task_count(telling->step, branch);
    for (size_t i = 0; i < count; i++) {
        const struct task *task = step_task(telling->step, branch, i);
        bool same = i == index || (sentence && task->sentence == sentence);
        if (same && task->who != reader) {
            return false;
        }
    }
    return true;
}

/* One sentence behind its disc, if it has one. */
static void set_sentence(struct column *column, struct str told, int order, double indent,
                         enum type type)
{
    double gap = column->gap ? SENTENCE_GAP : 0;
    double base = column->base + gap + type_leading(type);
    const struct text_block *words = words_set(column->setter, type, told, column->width - indent);
    if (indent > 0 && order > 0) {
        set_disc(column, order, base);
    }
    enum role role = type == TYPE_OTHERS ? ROLE_SOFT : ROLE_TEXT;
    column->base = galley_text(column->galley, words, column->x + indent, base, role);
    column->gap = true;
}

/* The sentences of a step, behind their discs when the diagram shows these too; those that have no
 * place in the order (who stays where) come last. */
static void set_sentences(struct column *column, const struct telling *telling, enum type type)
{
    body reader = column->setter->job->reader;
    int branch = telling->diagram->branch;
    double indent = telling->scene->uses >> CLASS_ORDER & 1 ? INDENT : 0;
    size_t count = step_task_count(telling->step, branch);
    column->gap = false;
    for (int pass = 0; pass < 2; pass++) {
        for (size_t i = telling->first_task; i < count; i++) {
            int order = step_task(telling->step, branch, i)->order;
            if ((order == 0) != (pass == 1) ||
                (reader != BODY_NONE && is_own(telling, i, reader))) {
                continue;
            }
            struct str told =
                tell_task(column->setter->arena, telling->play, telling->step, branch, i);
            if (told.size > 0) {
                set_sentence(column, told, order, indent, type);
            }
        }
    }
}

static struct str point_text(const struct column *column, const struct play *play,
                             const struct point *point)
{
    struct arena *arena = column->setter->arena;
    struct str text = words_bold(arena, point->text, play->players);
    body reader = column->setter->job->reader;
    if (point->player == 0 || (reader != BODY_NONE && body_number(reader) == point->player)) {
        return text;
    }
    return str_format(arena, "%c%d%c: %.*s", TELL_BOLD, point->player, TELL_PLAIN, STR_ARG(text));
}

static bool is_for(const struct point *point, body reader)
{
    return reader == BODY_NONE || point->player == 0 || point->player == body_number(reader);
}

/* Teaching points with a rule at their left. */
static void set_points(struct column *column, const struct play *play, const point_list *points,
                       double gap)
{
    double top = 0;
    for (size_t i = 0; i < points->count; i++) {
        const struct point *point = &points->at[i];
        if (!is_for(point, column->setter->job->reader)) {
            continue;
        }
        double base = column->base + (top > 0 ? type_leading(TYPE_POINT) + POINT_GAP : gap);
        const struct text_block *words = words_set(
            column->setter, TYPE_POINT, point_text(column, play, point), column->width - INDENT);
        top = top > 0 ? top : base - 7;
        column->base = galley_text(column->galley, words, column->x + INDENT, base, ROLE_TEXT);
    }
    if (top > 0) {
        galley_rule(column->galley, vec2_of(column->x + 5, top),
                    vec2_of(column->x + 5, column->base + 2.5), 1.1, ROLE_INK);
    }
}

/* "Your job", with the player's own rule. */
static void set_job(struct column *column, const struct telling *telling, bool heading)
{
    struct str told = tell_job(column->setter->arena, telling->play, telling->step,
                               telling->diagram->branch, column->setter->job->reader);
    if (told.size == 0) {
        return;
    }
    double indent = heading ? 10 : 0;
    double base = column->base + TO_SENTENCE - 2;
    double top = base - 7.4;
    if (heading) {
        galley_text(column->galley,
                    words_set(column->setter, TYPE_SMALL_HEADING, STR("Your job"), 0),
                    column->x + indent, base, ROLE_ACCENT);
        galley_keep(column->galley);
        base += type_leading(TYPE_JOB);
    }
    const struct text_block *words =
        words_set(column->setter, TYPE_JOB, told, column->width - indent);
    column->base = galley_text(column->galley, words, column->x + indent, base, ROLE_TEXT);
    if (heading) {
        galley_rule(column->galley, vec2_of(column->x + 1.2, top),
                    vec2_of(column->x + 1.2, column->base + 3.7), 2.4, ROLE_ACCENT);
        column->base += 3.5;
    }
}

/* What is said of a step, first baseline `lead` under the column's base. */
static void set_words(struct column *column, const struct telling *telling, enum type sentence)
{
    if (column->setter->job->reader == BODY_NONE) {
        column->base += TO_SENTENCE - type_leading(sentence);
        set_sentences(column, telling, sentence);
    } else {
        set_job(column, telling, telling->branch == NULL);
        if (telling->branch == NULL) {
            set_sentences(column, telling, TYPE_OTHERS);
        }
    }
    set_points(column, telling->play, telling->points, 17);
}

/* Steps or reads that stand side by side. */
struct row {
    struct telling telling[3];
    struct heading heading[3];
    size_t count, lines; /* of the tallest heading */
};

static void row_add(const struct setter *setter, struct row *row, const struct grid *grid,
                    struct telling telling)
{
    struct heading heading = telling_heading(setter, &telling, grid);
    row->lines = heading.lines > row->lines ? heading.lines : row->lines;
    row->heading[row->count] = heading;
    row->telling[row->count++] = telling;
}

/* Heading, diagram, words of one. */
static void set_telling(struct column *column, const struct row *row, size_t index,
                        const struct grid *grid)
{
    const struct telling *telling = &row->telling[index];
    set_heading(column, &row->heading[index], row->lines);
    double top = column->base + TO_DIAGRAM;
    galley_scene(column->galley, telling->scene, column->x, top);
    if (grid->beside) {
        const double between = 21.6;
        column->x += grid->diagram + between;
        column->width -= grid->diagram + between;
        column->base = top - 6;
    } else {
        column->base = top + telling->scene->height;
    }
    set_words(column, telling, grid->sentence);
}

static double gutter_of(const struct grid *grid)
{
    return grid->column < NARROW ? GUTTER_NARROW : GUTTER;
}

/* Sets the row at `top` of the band and empties it. */
static void set_row(const struct setter *setter, struct band *band, struct row *row,
                    const struct grid *grid, double top)
{
    for (size_t i = 0; i < row->count; i++) {
        double x = (double)i * (grid->column + gutter_of(grid));
        struct column column = {setter, band->galley, x, grid->column, top, false};
        set_telling(&column, row, i, grid);
        band->uses |= row->telling[i].scene->uses;
        band->last = row->telling[i].step->number;
    }
    *row = (struct row){.count = 0};
}

static struct telling telling_make(const struct setter *setter, const struct run *run,
                                   const struct diagram *diagram, double width)
{
    struct scene_options options = {.width = width,
                                    .theme = THEME_PRINT,
                                    .accent = setter->job->reader,
                                    .names = setter->job->names};
    const struct step *step = &run->play->steps.at[diagram->step];
    struct telling telling = {.play = run->play,
                              .diagram = diagram,
                              .step = step,
                              .scene = scene_make(setter->arena, diagram, &options),
                              .points = &step->points};
    if (diagram->branch >= 0) {
        telling.branch = &step->branches.at[diagram->branch];
        telling.first_task = step->tasks.count;
        telling.points = &telling.branch->points;
    }
    return telling;
}

/* ---- the coach's paragraphs ---- */

/* A section's heading over the full column, away from what stands before it. */
static void set_section(struct column *column, struct str words)
{
    column->base += column->base > 0 ? 20.6 - HEADING_BASE : 0;
    struct heading heading =
        heading_make(column->setter, STR(""), words, TYPE_HEADING, column->width);
    set_heading(column, &heading, heading.lines);
}

static void set_paragraph(struct column *column, struct str heading, struct str text)
{
    set_section(column, heading);
    const struct text_block *words = words_set(column->setter, TYPE_SENTENCE, text, column->width);
    column->base =
        galley_text(column->galley, words, column->x, column->base + TO_SENTENCE, ROLE_TEXT);
}

static void set_remember(struct column *column, const struct play *play)
{
    bool any = false;
    for (size_t i = 0; i < play->points.count; i++) {
        any = any || is_for(&play->points.at[i], column->setter->job->reader);
    }
    if (any) {
        set_section(column, STR("All the way through"));
        set_points(column, play, &play->points, TO_SENTENCE);
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
            row_add(setter, &row, grid, telling_make(setter, run, &diagrams->at[i], grid->diagram));
        }
        bool last = i + 1 == diagrams->count;
        if (row.count == (size_t)grid->across || (last && row.count > 0)) {
            int first = row.telling[0].step->number;
            size_t count = row.count;
            struct band *band = add_band(setter, bands, BAND_STEPS, BAND_GAP, first);
            set_row(setter, band, &row, grid, 0);
            band->taken = (double)count * (grid->column + gutter_of(grid));
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
        row_add(setter, &row, &read_grid, telling_make(setter, run, &first[i], read_grid.diagram));
        if (row.count < (size_t)read_grid.across && i + 1 < count) {
            continue;
        }
        const struct step *step = row.telling[0].step;
        bool top = i < (size_t)read_grid.across;
        struct band *band =
            add_band(setter, bands, BAND_READS, top ? SECTION_GAP : BAND_GAP, step->number);
        struct column column = {.setter = setter, .galley = band->galley, .width = PAGE_WIDE};
        if (top) {
            set_section(&column,
                        words_decides(setter->arena, run->play, step, setter->job->reader));
        }
        set_row(setter, band, &row, &read_grid, top ? column.base + 17 - HEADING_BASE : 0);
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
