/* SPDX-License-Identifier: MIT */
/* practice: the practice plan. Takes practices with the plays they name, gives a PDF: the minutes
 * as a bar, then a row an item: when, how long, what, a diagram, points; and what it adds up to. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/clock.h"
#include "page/sheet/plan_bar.h"
#include "page/sheet/rows.h"

#define MINUTES_X 40.0
#define WHAT_X 74.0
#define DIAGRAM_X 222.0
#define POINTS_X 352.0
#define DIAGRAM_WIDE 115.2
#define DIAGRAM_FULL 62.0 /* a full floor is three times as high */
#define PITCH_OF 14.4     /* between pictures side by side, besides their width */
#define LABEL_HIGH 11.0   /* over a picture of several */
#define LABEL_NEAR 2.0    /* nearer to the rule over it than a picture */

/* What is shown, and what stays free between things; each where the one before makes one page more.
 * (ours) */
static const struct spaces {
    double diagram;                                      /* over a diagram and under it */
    double table;                                        /* over the table */
    enum { STEPS_ONE, STEPS_OF_PLAYS, STEPS_ALL } steps; /* that have their picture */
} spaces[] = {{4, 8, STEPS_ALL},
              {4, 8, STEPS_OF_PLAYS},
              {2, 4, STEPS_OF_PLAYS},
              {4, 8, STEPS_ONE},
              {2, 4, STEPS_ONE}};
enum { SPACES = sizeof spaces / sizeof *spaces };

struct plan_flow {
    struct rows rows;
    const struct practice *practice;
    const struct spaces *spaces;
};

/* ---- what stands in a row ---- */

static const struct run *run_of(const struct setter *setter, const struct play *play)
{
    for (size_t i = 0; i < setter->job->count; i++) {
        if (setter->job->plays[i].play == play) {
            return booklet_run(setter, &setter->job->plays[i]);
        }
    }
    return NULL;
}

/* A picture of a step, or of its first way on; without the defense where nobody defends, or others
 * do. NULL: there is none. */
static const struct scene *scene_of(const struct setter *setter, const struct plan_item *item,
                                    const diagram_list *diagrams, size_t step)
{
    struct scene_options options = {.width = item->play->full_floor ? DIAGRAM_FULL : DIAGRAM_WIDE,
                                    .theme = THEME_PRINT,
                                    .accent = BODY_NONE,
                                    .plain = true, /* no sentence stands beside it */
                                    .named = tell_spoken_of(setter->arena, item->play),
                                    .hide_defense = plan_is_undefended(item, step)};
    const struct diagram *diagram = scene_first_diagram(diagrams, step);
    return diagram ? scene_make(setter->arena, diagram, &options) : NULL;
}

/* Has each step of the play its picture? */
static bool shows_all(const struct plan_flow *flow, const struct play *play)
{
    return flow->spaces->steps >= (play->is_drill ? STEPS_ALL : STEPS_OF_PLAYS);
}

/* "2 Screen for the screener" over a picture, where the play has several; where they are not all
 * there, "1 of 3". */
static double put_label(const struct plan_flow *flow, struct galley *row, const struct play *play,
                        size_t step, struct vec2 at, double width)
{
    const struct setter *setter = &flow->rows.setter;
    if (play->steps.count < 2) {
        return at.y;
    }
    const struct step *shown = &play->steps.at[step];
    struct str of =
        shows_all(flow, play) ? STR("") : str_format(setter->arena, " of %zu", play->steps.count);
    struct str label =
        str_format(setter->arena, "%c%d%.*s%c %.*s", TELL_BOLD, shown->number, STR_ARG(of),
                   TELL_PLAIN, STR_ARG(words_isolated(setter->arena, shown->title)));
    const struct text_block *words = words_set(setter, TYPE_NOTE, label, width);
    double base = galley_text(row, words, at.x, at.y + LABEL_HIGH - 2.5, ROLE_TEXT);
    return base + 2.5;
}

/* A step's picture under its label; false: it has none. `middle`: of a narrow one, in the column.
 */
static bool put_picture(const struct plan_flow *flow, struct galley *row,
                        const struct plan_item *item, const diagram_list *diagrams, size_t step,
                        struct vec2 at, bool middle)
{
    const struct setter *setter = &flow->rows.setter;
    const struct scene *scene = scene_of(setter, item, diagrams, step);
    if (!scene) {
        return false;
    }
    double over = middle ? (DIAGRAM_WIDE - scene->width) / 2 : 0;
    double room = middle ? DIAGRAM_WIDE : scene->width + PITCH_OF - 4;
    double y = put_label(flow, row, item->play, step, at, room);
    y = y > at.y ? y : at.y + flow->spaces->diagram - LABEL_NEAR;
    galley_scene(row, scene, at.x + over, y);
    galley_reach(row, y + scene->height + flow->spaces->diagram);
    return true;
}

/* How many steps have their picture under the item's words: as many as stand there side by side,
 * where that saves a row of pictures under the item. */
static size_t count_before(const struct play *play, double pitch)
{
    size_t most = play->full_floor ? 2 : 1;
    size_t across = (size_t)((PAGE_WIDE - WHAT_X + PITCH_OF) / pitch);
    size_t others = play->steps.count > 0 ? play->steps.count - 1 : 0;
    size_t before = others < most ? others : most;
    bool saves = (others - before + across - 1) / across < (others + across - 1) / across;
    return saves ? before : 0;
}

/* One picture in the diagrams' column; with all steps, those before it under the item's words,
 * which end at `base`, and those behind it side by side under all that stands in the row. */
static void put_pictures(const struct plan_flow *flow, struct galley *row,
                         const struct plan_item *item, const diagram_list *diagrams, double base)
{
    const struct play *play = item->play;
    double top = flow->spaces->diagram - LABEL_NEAR;
    if (!shows_all(flow, play)) {
        put_picture(flow, row, item, diagrams, plan_step(play), vec2_of(DIAGRAM_X, top), true);
        return;
    }
    double pitch = (play->full_floor ? DIAGRAM_FULL : DIAGRAM_WIDE) + PITCH_OF;
    size_t before = count_before(play, pitch);
    for (size_t i = 0; i < before; i++) {
        struct vec2 at = vec2_of(WHAT_X + pitch * (double)i, base + 4);
        put_picture(flow, row, item, diagrams, i, at, false);
    }
    put_picture(flow, row, item, diagrams, before, vec2_of(DIAGRAM_X, top), true);
    struct vec2 at = {WHAT_X, row->height};
    for (size_t i = before + 1; i < play->steps.count; i++) {
        if (at.x + pitch - PITCH_OF > PAGE_WIDE) {
            at = vec2_of(WHAT_X, row->height);
        }
        at.x += put_picture(flow, row, item, diagrams, i, at, false) ? pitch : 0;
    }
}

static double put_point(const struct setter *setter, struct galley *row, double base,
                        struct str text, double x, double right)
{
    const struct text_block *words = words_set(setter, TYPE_POINT, text, right - x);
    double last = galley_text(row, words, x, base, ROLE_TEXT);
    return last + type_leading(TYPE_POINT) + 1.5;
}

static double put_points(const struct setter *setter, struct galley *row, double base,
                         const struct play *play, const point_list *points)
{
    for (size_t i = 0; i < points->count; i++) {
        struct str text = words_point(setter->arena, &points->at[i], play->players);
        base = put_point(setter, row, base, text, POINTS_X, PAGE_WIDE);
    }
    return base;
}

/* "2a x3 trails: Curl; 2b x3 goes under: Fade": what pictures of steps do not show. */
static struct str reads_of(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        for (size_t k = 0; k < step->branches.count; k++) {
            int branch = branch_told(step, (int)k);
            struct str told = tell_branch(arena, &step->branches.at[branch]);
            strbuf_print(&out, "%s%c%d%c%c %.*s", out.size > 0 ? "; " : "", TELL_BOLD, step->number,
                         branch_letter(step, branch), TELL_PLAIN,
                         STR_ARG(words_isolated(arena, told)));
        }
    }
    if (out.size > 0) {
        strbuf_char(&out, '.');
    }
    return strbuf_str(&out);
}

/* A drill's goal, its reads, and what the coach says to the step that matters. */
static void put_play(const struct setter *setter, struct galley *row, const struct play *play)
{
    double base = ROW_BASE;
    if (play->goal.size > 0) {
        struct str goal =
            str_format(setter->arena, "%cGoal%c: %.*s", TELL_BOLD, TELL_PLAIN, STR_ARG(play->goal));
        base = put_point(setter, row, base, goal, POINTS_X, PAGE_WIDE);
    }
    base = put_points(setter, row, base, play, &play->points);
    if (play->steps.count > 0) {
        base = put_points(setter, row, base, play, &play->steps.at[plan_step(play)].points);
    }
    struct str reads = reads_of(setter->arena, play);
    if (reads.size > 0) {
        put_point(setter, row, base, reads, POINTS_X, PAGE_WIDE);
    }
}

/* "North basket: Two counts, with guards", as far as `right`. */
static void put_stations(const struct setter *setter, struct galley *row,
                         const struct plan_item *item, double right)
{
    double base = ROW_BASE;
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        struct str how = plan_how(setter->arena, station, words_isolated);
        struct str where =
            words_isolated(setter->arena, str_capital(setter->arena, station->station));
        struct str what =
            str_capital(setter->arena, plan_what(setter->arena, station, words_isolated));
        if (how.size > 0) {
            how = str_format(setter->arena, "%.*s %.*s", STR_ARG(tell_stop(what)), STR_ARG(how));
        }
        struct str text = str_format(setter->arena, "%c%.*s%c: %.*s%.*s", TELL_BOLD, STR_ARG(where),
                                     TELL_PLAIN, STR_ARG(what), STR_ARG(how));
        base = put_point(setter, row, base, text, DIAGRAM_X, right);
    }
}

/* ---- pictures of stations ---- */

/* What a station is shown by: its play's picture; NULL: it has none. */
static const struct scene *station_scene(const struct setter *setter,
                                         const struct plan_item *station)
{
    const struct run *run = station->play ? run_of(setter, station->play) : NULL;
    diagram_list diagrams = {0};
    if (!run) {
        return NULL;
    }
    scene_diagrams(setter->arena, run, &diagrams);
    return scene_of(setter, station, &diagrams, plan_step(station->play));
}

/* Under the name of the station; returns how wide it is. */
static double put_station_picture(const struct plan_flow *flow, struct galley *row,
                                  const struct plan_item *station, const struct scene *scene,
                                  struct vec2 at)
{
    const struct setter *setter = &flow->rows.setter;
    double wide = scene->width > DIAGRAM_WIDE ? scene->width : DIAGRAM_WIDE;
    struct str name = words_isolated(setter->arena, str_capital(setter->arena, station->station));
    name = words_fit(setter, TYPE_NOTE, name, wide, 1);
    galley_text(row, words_set(setter, TYPE_NOTE, name, 0), at.x, at.y + LABEL_HIGH - 2.5,
                ROLE_TEXT);
    galley_scene(row, scene, at.x, at.y + LABEL_HIGH);
    galley_reach(row, at.y + LABEL_HIGH + scene->height + flow->spaces->diagram);
    return wide;
}

static size_t count_pictured(const struct setter *setter, const struct plan_item *item)
{
    size_t count = 0;
    for (size_t i = 0; i < item->stations.count; i++) {
        count += station_scene(setter, &item->stations.at[i]) != NULL;
    }
    return count;
}

/* What is done at each, and its picture: one at the right of the words, several side by side under
 * all that stands in the row. */
static void put_all_stations(const struct plan_flow *flow, struct galley *row,
                             const struct plan_item *item)
{
    const struct setter *setter = &flow->rows.setter;
    double beside = PAGE_WIDE - DIAGRAM_WIDE;
    bool one = count_pictured(setter, item) == 1;
    put_stations(setter, row, item, one ? beside - 10 : PAGE_WIDE);
    struct vec2 at =
        one ? vec2_of(beside, flow->spaces->diagram - LABEL_NEAR) : vec2_of(WHAT_X, row->height);
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        const struct scene *scene = station_scene(setter, station);
        if (scene && at.x + scene->width > PAGE_WIDE + 1e-6) {
            at = vec2_of(WHAT_X, row->height);
        }
        at.x += scene ? put_station_picture(flow, row, station, scene, at) + PITCH_OF : 0;
    }
}

static void put_time(const struct setter *setter, struct galley *row, struct str clock,
                     struct str minutes, enum type type)
{
    galley_text(row, words_set(setter, TYPE_HEADING, clock, 0), 0, ROW_BASE, ROLE_TEXT);
    galley_text(row, words_set(setter, type, minutes, 0), MINUTES_X, ROW_BASE, ROLE_TEXT);
}

/* The clock's column in minutes of the day, or from nought. */
static struct str time_at(const struct plan_flow *flow, double minutes)
{
    bool of_day = flow->practice->starts >= 0;
    double start = of_day ? flow->practice->starts : 0;
    return clock_time(&flow->rows.setter, start + minutes, of_day);
}

static struct galley *item_row(const struct plan_flow *flow, const struct plan_item *item)
{
    const struct setter *setter = &flow->rows.setter;
    struct galley *row = galley_new(setter->arena);
    put_time(setter, row, time_at(flow, item->begins), plan_minutes(setter->arena, item->minutes),
             TYPE_ABOUT);
    const struct run *run = item->play ? run_of(setter, item->play) : NULL;
    bool alone = !run && (!item->play || item->play->goal.size == 0) &&
                 item->stations.count == 0; /* the words may run on to the right */
    double width = (alone ? PAGE_WIDE : DIAGRAM_X - 10) - WHAT_X;
    struct str what = plan_what(setter->arena, item, words_isolated);
    double base = galley_text(row, words_set(setter, TYPE_SMALL_HEADING, what, width), WHAT_X,
                              ROW_BASE, ROLE_TEXT);
    struct str how = plan_how(setter->arena, item, words_isolated);
    if (how.size > 0) {
        base = galley_text(row, words_set(setter, TYPE_POINT, how, width), WHAT_X, base + 12,
                           ROLE_SOFT);
    }
    if (item->play) {
        put_play(setter, row, item->play);
    }
    if (run) {
        diagram_list diagrams = {0};
        scene_diagrams(setter->arena, run, &diagrams);
        put_pictures(flow, row, item, &diagrams, base);
    }
    put_all_stations(flow, row, item);
    row_end(row, 0.5);
    return row;
}

static struct galley *before_row(const struct plan_flow *flow)
{
    struct galley *row = galley_new(flow->rows.setter.arena);
    galley_text(row, words_set(&flow->rows.setter, TYPE_SMALL_HEADING, STR("Before"), 0), 0,
                ROW_BASE - 1, ROLE_TEXT);
    galley_text(row, words_set(&flow->rows.setter, TYPE_SMALL_HEADING, plan_before(), 0), WHAT_X,
                ROW_BASE - 1, ROLE_TEXT);
    row_end(row, 0.5);
    return row;
}

static struct galley *head_row(const struct plan_flow *flow)
{
    static const struct {
        double x;
        const char *word;
    } columns[] = {{0, "Clock"},
                   {MINUTES_X, "Min"},
                   {WHAT_X, "What"},
                   {DIAGRAM_X, "Diagram"},
                   {POINTS_X, "Points"}};
    struct galley *row = galley_new(flow->rows.setter.arena);
    galley_rule(row, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.9, ROLE_INK);
    for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
        galley_text(row, words_set(&flow->rows.setter, TYPE_DISC, str_of(columns[i].word), 0),
                    columns[i].x, 11, ROLE_TEXT);
    }
    row_end(row, 0.5);
    return row;
}

static struct galley *sum_row(const struct plan_flow *flow)
{
    const struct setter *setter = &flow->rows.setter;
    struct galley *row = galley_new(setter->arena);
    put_time(setter, row, time_at(flow, flow->practice->planned),
             plan_minutes(setter->arena, flow->practice->planned), TYPE_HEADING);
    galley_text(row,
                words_set(setter, TYPE_POINT, plan_sums_told(setter->arena, flow->practice),
                          PAGE_WIDE - WHAT_X),
                WHAT_X, ROW_BASE, ROLE_TEXT);
    struct str again = plan_warned(setter->arena, flow->practice);
    if (again.size > 0) {
        galley_text(row, words_set(setter, TYPE_SMALL_HEADING, again, PAGE_WIDE - WHAT_X), WHAT_X,
                    row->height + 9, ROLE_TEXT);
    }
    return row;
}

/* ---- the sheet ---- */

static struct str series_words(const struct setter *setter, const struct practice *practice)
{
    double length = practice->booked > 0 ? practice->booked : practice->planned;
    if (practice->starts >= 0) {
        return clock_range(setter, practice->starts, practice->starts + length);
    }
    return str_format(setter->arena, "%.*s\xC2\xA0minutes",
                      STR_ARG(plan_minutes(setter->arena, length)));
}

static struct caution caution_of(const struct setter *setter, const struct practice *practice)
{
    struct practice_plays plays = practice_plays(setter->arena, practice);
    return caution_of_plays(setter->arena, CAUTION_PRACTICE, plays.at, plays.count);
}

/* "Practice plan, under 16 girls": the level of the book's plays. */
static struct str sheet_words(const struct setter *setter)
{
    const struct playbook *book = setter->job->book;
    if (book->plays.count == 0) {
        return STR("Practice plan");
    }
    return words_sheet(setter->arena, "Practice plan", &book->plays.at[0]);
}

static void flow_practice(struct plan_flow *flow)
{
    const struct setter *setter = &flow->rows.setter;
    const struct practice *practice = flow->practice;
    struct head_words *head = arena_new(setter->arena, struct head_words);
    *head = (struct head_words){.sheet = sheet_words(setter),
                                .series = series_words(setter, practice),
                                .title = practice->title,
                                .about = practice->about,
                                .foot = practice->title};
    if (practice->lineup.size > 0) {
        head->clock = str_format(setter->arena, "Lineup %.*s",
                                 STR_ARG(words_isolated(setter->arena, practice->lineup)));
    }
    struct caution caution = caution_of(setter, practice);
    rows_open(&flow->rows, head, &caution);
    if (practice->planned > 0) {
        struct galley *bar = plan_bar(setter, practice);
        bar->height += flow->spaces->table;
        rows_add(&flow->rows, bar);
    }
    flow->rows.columns = head_row(flow);
    rows_add(&flow->rows, head_row(flow));
    rows_add(&flow->rows, before_row(flow));
    struct galley *sums = sum_row(flow);
    for (size_t i = 0; i < practice->items.count; i++) {
        struct galley *row = item_row(flow, &practice->items.at[i]);
        double both = row->height + sums->height;
        if (i + 1 == practice->items.count && both > rows_room(&flow->rows) &&
            both < rows_page(&flow->rows)->bottom / 2) {
            rows_turn(&flow->rows, false); /* the sums do not stand alone overleaf */
        }
        rows_add(&flow->rows, row);
    }
    rows_add(&flow->rows, sums);
}

static bool is_meant(const struct sheet_job *job, const struct practice *practice)
{
    return job->title.size == 0 || str_equal_fold(job->title, practice->title);
}

bool practice_holds(const struct sheet_job *job)
{
    bool found = false;
    for (size_t i = 0; i < job->season->practices.count; i++) {
        found = found || is_meant(job, &job->season->practices.at[i]);
    }
    return found;
}

static void add_practice(struct booklet *booklet, const struct practice *practice)
{
    struct arena_mark mark = arena_mark(booklet->setter.arena);
    struct plan_flow best = {.practice = NULL};
    for (size_t i = 0; i < SPACES && best.rows.pages.count != 1; i++) {
        struct plan_flow flow = {.rows = {.setter = booklet->setter, .ruled = true},
                                 .practice = practice,
                                 .spaces = &spaces[i]};
        flow_practice(&flow);
        if (i == 0 || flow.rows.pages.count < best.rows.pages.count) {
            best = flow;
        }
    }
    rows_close(&best.rows, booklet, practice->title);
    arena_release(booklet->setter.arena, mark);
}

bool practice_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    for (size_t i = 0; i < job->season->practices.count; i++) {
        if (is_meant(job, &job->season->practices.at[i])) {
            add_practice(booklet, &job->season->practices.at[i]);
        }
    }
    return rows_write(booklet, rows_title(booklet, "", "practice plans"), writer);
}
