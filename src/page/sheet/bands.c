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

/* "2  Cross screen": the label, a space as wide as two, the title. */
static void set_heading(struct column *column, struct str label, struct str title, enum type type)
{
    double x = column->x;
    double width = column->width;
    double base = column->base + HEADING_BASE;
    if (label.size > 0 && title.size > 0) {
        const struct text_block *number = words_set(column->setter, type, label, 0);
        double wide = text_width(number) + 0.75 * type_leading(type) * 0.7;
        galley_text(column->galley, number, x, base, ROLE_TEXT);
        galley_keep(column->galley);
        x += wide;
        width -= wide;
    }
    const struct text_block *words =
        words_set(column->setter, type, title.size > 0 ? title : label, width);
    column->base = galley_text(column->galley, words, x, base, ROLE_TEXT);
    galley_keep(column->galley);
}

static struct str way_title(const struct setter *setter, const struct telling *way,
                            struct str *label)
{
    *label = way->diagram->label;
    if (way->diagram->title.size > 0) {
        return way->diagram->title;
    }
    if (way->branch) {
        return way->branch->title;
    }
    *label = str_format(setter->arena, "Step %d", way->step->number);
    return STR("");
}

static void set_disc(struct column *column, int order, double base)
{
    char digits[NUMBER_MOST];
    size_t size = number_print(digits, order, 0, false);
    struct str text = str_copy(column->setter->arena, (struct str){digits, size});
    galley_disc(column->galley, words_set(column->setter, TYPE_DISC, text, 0), column->x + 5.2,
                base - 3.3);
}

/* The sentences of a step, each behind its disc when the diagram shows the discs too. */
static void set_sentences(struct column *column, const struct telling *way, enum type type)
{
    body reader = column->setter->job->reader;
    int branch = way->diagram->branch;
    bool discs = way->scene->uses >> CLASS_ORDER & 1;
    double indent = discs ? INDENT : 0;
    enum role role = type == TYPE_OTHERS ? ROLE_SOFT : ROLE_TEXT;
    size_t count = step_task_count(way->step, branch);
    double gap = 0;
    for (size_t i = way->first_task; i < count; i++) {
        const struct task *task = step_task(way->step, branch, i);
        struct str told = tell_task(column->setter->arena, way->play, way->step, branch, i);
        if (told.size == 0 || (reader != BODY_NONE && task->who == reader)) {
            continue;
        }
        double base = column->base + gap + type_leading(type);
        const struct text_block *words =
            words_set(column->setter, type, told, column->width - indent);
        if (discs && task->order > 0) {
            set_disc(column, task->order, base);
        }
        column->base = galley_text(column->galley, words, column->x + indent, base, role);
        gap = SENTENCE_GAP;
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
static void set_job(struct column *column, const struct telling *way, bool heading)
{
    struct str told = tell_job(column->setter->arena, way->play, way->step, way->diagram->branch,
                               column->setter->job->reader);
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
static void set_words(struct column *column, const struct telling *way, enum type sentence)
{
    if (column->setter->job->reader == BODY_NONE) {
        column->base += TO_SENTENCE - type_leading(sentence);
        set_sentences(column, way, sentence);
    } else {
        set_job(column, way, way->branch == NULL);
        if (way->branch == NULL) {
            set_sentences(column, way, TYPE_OTHERS);
        }
    }
    set_points(column, way->play, way->points, 17);
}

/* A step or a read: heading, diagram, words. */
static void set_way(const struct setter *setter, struct galley *galley, const struct grid *grid,
                    const struct telling *way, double x, double y)
{
    struct column column = {setter, galley, x, grid->column, y};
    struct str label;
    struct str title = way_title(setter, way, &label);
    set_heading(&column, label, title, grid->column < NARROW ? TYPE_SMALL_HEADING : TYPE_HEADING);
    double top = column.base + TO_DIAGRAM;
    galley_scene(galley, way->scene, x, top);
    if (grid->beside) {
        const double between = 21.6;
        column.x += grid->diagram + between;
        column.width -= grid->diagram + between;
        column.base = top - 6;
    } else {
        column.base = top + way->scene->height;
    }
    set_words(&column, way, grid->sentence);
}

static struct telling way_make(const struct setter *setter, const struct run *run,
                               const struct diagram *diagram, double width)
{
    struct scene_options options = {.width = width,
                                    .theme = THEME_PRINT,
                                    .accent = setter->job->reader,
                                    .names = setter->job->names};
    const struct step *step = &run->play->steps.at[diagram->step];
    struct telling way = {.play = run->play,
                          .diagram = diagram,
                          .step = step,
                          .scene = scene_make(setter->arena, diagram, &options),
                          .points = &step->points};
    if (diagram->branch >= 0) {
        way.branch = &step->branches.at[diagram->branch];
        way.first_task = step->tasks.count;
        way.points = &way.branch->points;
    }
    return way;
}

static void add_band(const struct setter *setter, band_list *bands, struct band band)
{
    VEC_PUSH(setter->arena, bands, band);
}

/* ---- the coach's paragraphs ---- */

static void set_paragraph(struct column *column, struct str heading, struct str text)
{
    if (column->base > 0) {
        column->base += 20.6 - HEADING_BASE;
    }
    set_heading(column, STR(""), heading, TYPE_HEADING);
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
        column->base += column->base > 0 ? 20.6 - HEADING_BASE : 0;
        set_heading(column, STR(""), STR("All the way through"), TYPE_HEADING);
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
    struct column column = {setter, galley_new(setter->arena), 0, width, 0};
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

static void set_steps(const struct setter *setter, const struct run *run, const struct grid *grid,
                      const diagram_list *diagrams, band_list *bands)
{
    int place = 0;
    double gutter = grid->column < NARROW ? GUTTER_NARROW : GUTTER;
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct diagram *diagram = &diagrams->at[i];
        if (diagram->branch >= 0) {
            continue;
        }
        struct telling way = way_make(setter, run, diagram, grid->diagram);
        if (place == 0) {
            struct band band = {.kind = BAND_STEPS,
                                .galley = galley_new(setter->arena),
                                .gap = BAND_GAP,
                                .first = way.step->number};
            add_band(setter, bands, band);
        }
        struct band *band = &bands->at[bands->count - 1];
        set_way(setter, band->galley, grid, &way, place * (grid->column + gutter), 0);
        band->uses |= way.scene->uses;
        band->last = way.step->number;
        place = (place + 1) % grid->across;
    }
}

/* The paragraphs stand in the free place beside the last step, else under it. */
static void set_last(const struct setter *setter, const struct run *run, const struct grid *grid,
                     band_list *bands, size_t steps)
{
    int free_columns =
        bands->count > 0 ? grid->across - 1 - (int)((steps - 1) % (size_t)grid->across) : 0;
    double gutter = grid->column < NARROW ? GUTTER_NARROW : GUTTER;
    double width = free_columns > 0 ? free_columns * (grid->column + gutter) - gutter : PAGE_WIDE;
    struct galley *words = set_paragraphs(setter, run->play, width);
    if (!words) {
        return;
    }
    if (free_columns > 0) {
        struct band *band = &bands->at[bands->count - 1];
        galley_join(band->galley, words, PAGE_WIDE - width, 0);
        return;
    }
    struct band band = {.kind = BAND_WORDS, .galley = words, .gap = SECTION_GAP};
    add_band(setter, bands, band);
}

static const struct grid read_grid = {3, 3, 3, 152, 152, false, TYPE_SENTENCE};

static void set_reads(const struct setter *setter, const struct run *run,
                      const diagram_list *diagrams, band_list *bands)
{
    int step = -1;
    int place = 0;
    double top = 0;
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct diagram *diagram = &diagrams->at[i];
        if (diagram->branch < 0) {
            continue;
        }
        struct telling way = way_make(setter, run, diagram, read_grid.diagram);
        bool first = diagram->step != step;
        place = first ? 0 : (place + 1) % read_grid.across;
        if (place == 0) {
            struct band band = {.kind = BAND_READS,
                                .galley = galley_new(setter->arena),
                                .gap = first ? SECTION_GAP : BAND_GAP,
                                .first = way.step->number,
                                .last = way.step->number};
            struct column column = {setter, band.galley, 0, PAGE_WIDE, 0};
            if (first) {
                set_heading(&column, STR(""),
                            words_decides(setter->arena, way.step, setter->job->reader),
                            TYPE_HEADING);
            }
            top = first ? column.base + 17 - HEADING_BASE : 0;
            step = diagram->step;
            add_band(setter, bands, band);
        }
        struct band *band = &bands->at[bands->count - 1];
        set_way(setter, band->galley, &read_grid, &way, place * (read_grid.column + GUTTER_NARROW),
                top);
        band->uses |= way.scene->uses;
    }
}

void bands_make(const struct setter *setter, const struct run *run, const struct grid *grid,
                band_list *bands)
{
    diagram_list diagrams = {0};
    scene_diagrams(setter->arena, run, &diagrams);
    size_t steps = 0;
    for (size_t i = 0; i < diagrams.count; i++) {
        steps += diagrams.at[i].branch < 0;
    }
    set_steps(setter, run, grid, &diagrams, bands);
    set_last(setter, run, grid, bands, steps);
    set_reads(setter, run, &diagrams, bands);
}
