/* SPDX-License-Identifier: MIT */
/* handout: the players' sheet. Takes plays that were run, gives a PDF: steps in order with their
 * sentences and points, reads three across, room for notes; for one player the same with that
 * player's lines in the accent and the job in words. All is set first, then painted. */
#include "page/sheet/sheets.h"

#include "page/sheet/booklet.h"
#include "page/sheet/play_pages.h"
#include "page/sheet/telling.h"

/* The play being set. */
struct flow {
    struct setter setter;
    const struct grid *grid;
    const struct head_words *head;
    const struct galley *caution;
    page_list pages;
    size_t parted; /* bands that went on overleaf */
    VEC(struct mark) marks;
    double last_line;
};

static struct page *current(struct flow *flow)
{
    return &flow->pages.at[flow->pages.count - 1];
}

static void open_page(struct flow *flow, bool first)
{
    struct page page = page_open(&flow->setter, flow->head, flow->caution, first);
    VEC_PUSH(flow->setter.arena, &flow->pages, page);
}

/* Ruled lines for notes from `top` to `bottom`; false when there is room for too few. */
static bool rule_notes(struct flow *flow, double x, double width, double top, double bottom)
{
    const double to_rule = 24;
    double room = bottom - (top + to_rule);
    int lines = room < 0 ? 0 : (int)(room / NOTES_PITCH) + 1;
    if (lines < NOTES_LEAST) {
        return false;
    }
    struct galley *galley = current(flow)->galley;
    galley_text(galley, words_set(&flow->setter, TYPE_HEADING, STR("Notes"), 0), x, top, ROLE_TEXT);
    for (int i = 0; i < lines; i++) {
        double y = top + to_rule + i * NOTES_PITCH;
        galley_rule(galley, vec2_of(x, y), vec2_of(x + width, y), 0.6, ROLE_RULE);
    }
    return true;
}

/* What is left of a page, too little for notes, goes between its bands. */
static void spread_bands(struct page *page)
{
    const double most = 10;
    size_t gaps = page->bands.count > 0 ? page->bands.count - 1 : 0;
    double spare = page->bottom - page->y;
    if (gaps == 0 || spare <= 0) {
        return;
    }
    double each = spare / (double)gaps;
    each = each > most ? most : each;
    double lowered = 0;
    for (size_t i = 1; i <= gaps; i++) {
        const struct band *band = &page->bands.at[i];
        galley_lower(page->galley, band->start, each);
        if (band->taken > 0 && band->taken < PAGE_WIDE) {
            lowered = (double)i * each; /* the last such band has the free place */
        }
    }
    page->free.top += lowered;
    page->free.bottom += lowered;
    page->y += (double)gaps * each;
}

/* What is left of a page is ruled for notes: under the body, else beside its last step. */
static void fill_page(struct flow *flow)
{
    const double to_heading = 32;
    const double below = 28;
    struct page *page = current(flow);
    const struct paper *paper = paper_of(flow->setter.job->a4);
    double top = page->empty ? page->y + LETTER_TOP : page->y + to_heading;
    if (rule_notes(flow, paper->margin, PAGE_WIDE, top, page->bottom - below)) {
        return;
    }
    spread_bands(page);
    const struct free_place *place = &page->free;
    if (place->width > 0) {
        top = place->top + LETTER_TOP + (place->words > 0 ? place->words + 20 : 0);
        rule_notes(flow, paper->margin + PAGE_WIDE - place->width, place->width, top,
                   place->bottom);
    }
}

static void turn_page(struct flow *flow)
{
    fill_page(flow);
    open_page(flow, false);
}

static void place(struct flow *flow, const struct band *band)
{
    struct page *page = current(flow);
    const struct paper *paper = paper_of(flow->setter.job->a4);
    page->y += page->empty ? 0 : band->gap;
    size_t start = page->galley->items.count;
    galley_join(page->galley, band->galley, paper->margin, page->y);
    double top = page->y;
    page->y += band->galley->height;
    if (band->taken > 0 && band->taken < PAGE_WIDE) {
        page->free = (struct free_place){PAGE_WIDE - band->taken, top, page->y, band->beside};
    }
    page->empty = false;
    page->rows += band->kind == BAND_STEPS;
    VEC_PUSH(flow->setter.arena, &page->bands, *band);
    page->bands.at[page->bands.count - 1].start = start;
}

/* Do all of these go on what is left of the page? */
static bool fit(struct flow *flow, const struct band *bands, size_t count)
{
    const struct page *page = current(flow);
    double y = page->y;
    int rows = page->rows;
    for (size_t i = 0; i < count; i++) {
        y += (page->empty && i == 0 ? 0 : bands[i].gap) + bands[i].galley->height;
        rows += bands[i].kind == BAND_STEPS;
    }
    return y <= page->bottom + 1e-6 && rows <= flow->grid->rows;
}

/* What was parted off goes on under a line that says so. */
static struct galley *go_on(const struct flow *flow, const struct galley *rest)
{
    const double line = 20;
    struct galley *galley = galley_new(flow->setter.arena);
    galley_text(galley, words_set(&flow->setter, TYPE_SMALL_HEADING, STR("Continued"), 0), 0, 8,
                ROLE_SOFT);
    galley_keep(galley);
    galley_join(galley, rest, 0, line);
    return galley;
}

/* Returns the number of the page on which it starts. */
static size_t flow_band(struct flow *flow, struct band band)
{
    if (!fit(flow, &band, 1) && !current(flow)->empty) {
        turn_page(flow);
    }
    size_t start = flow->pages.count;
    while (!fit(flow, &band, 1)) {
        struct galley *rest = galley_part(band.galley, current(flow)->bottom - current(flow)->y);
        if (!rest || rest->items.count == 0) {
            break; /* one thing taller than a page: a diagram never is */
        }
        place(flow, &band);
        turn_page(flow);
        flow->parted++;
        band.galley = go_on(flow, rest);
    }
    place(flow, &band);
    return start;
}

/* The first way that goes whole on what is left of the page. */
static const band_list *way_that_fits(struct flow *flow, const struct group *group)
{
    for (size_t i = 0; i < group->count; i++) {
        const band_list *way = &group->ways[i];
        if (fit(flow, way->at, way->count)) {
            return way;
        }
    }
    return NULL;
}

/* Returns the number of the page on which it starts. */
static size_t flow_group(struct flow *flow, const struct group *group)
{
    const band_list *last = &group->ways[group->count - 1];
    const band_list *way = way_that_fits(flow, group);
    if (!way && !current(flow)->empty && !fit(flow, last->at, 1)) {
        turn_page(flow);
        way = way_that_fits(flow, group);
    }
    size_t start = flow->pages.count;
    for (size_t i = 0; way && i < way->count; i++) {
        place(flow, &way->at[i]);
    }
    for (size_t i = 0; !way && i < last->count; i++) {
        size_t page = flow_band(flow, last->at[i]);
        start = i == 0 ? page : start;
    }
    return start;
}

/* The coach's own lines of caution when they are too many for the foot. */
static void add_cautions(const struct flow *flow, const struct play *play, group_list *groups)
{
    struct galley *galley = galley_new(flow->setter.arena);
    galley_text(galley, words_set(&flow->setter, TYPE_HEADING, STR("Caution"), 0), 0, 8, ROLE_TEXT);
    galley_keep(galley);
    double base = 10;
    for (size_t i = 0; i < play->cautions.count; i++) {
        const struct text_block *words =
            words_set(&flow->setter, TYPE_SENTENCE, play->cautions.at[i], PAGE_WIDE);
        base = galley_text(galley, words, 0, base + type_leading(TYPE_SENTENCE) + 1.2, ROLE_TEXT);
    }
    group_add_words(&flow->setter, groups, galley, 12);
}

static void mark_page(struct flow *flow, struct str title, size_t page, bool inside)
{
    struct mark mark = {title, page, inside};
    VEC_PUSH(flow->setter.arena, &flow->marks, mark);
}

static void mark_steps(struct flow *flow, const struct play *play, const struct band *band,
                       size_t page)
{
    for (size_t i = 0; band->kind == BAND_STEPS && i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        if (step->number < band->first || step->number > band->last) {
            continue;
        }
        struct str title =
            step->title.size > 0
                ? str_format(flow->setter.arena, "%d  %.*s", step->number, STR_ARG(step->title))
                : str_format(flow->setter.arena, "Step %d", step->number);
        mark_page(flow, title, page, true);
    }
}

/* What stands before the steps on every layout. */
static void add_before(const struct flow *flow, const struct run *run, bool surplus,
                       group_list *groups)
{
    struct galley *rest = head_surplus(&flow->setter, flow->head);
    if (rest) {
        group_add_words(&flow->setter, groups, rest, 0);
    }
    if (surplus) {
        add_cautions(flow, run->play, groups);
    }
}

/* Room for what the book says at the end of a play, if there is any left. */
static void keep_last_line(struct flow *flow)
{
    const double gap = 10; /* to what stands above (ours) */
    struct page *page = current(flow);
    double height = flow->setter.job->last_line;
    if (height > 0 && page->y + gap + height <= page->bottom) {
        flow->last_line = page->bottom - height;
        page->bottom -= height + gap;
    }
}

/* The play on pages of its own. */
static void flow_layout(struct flow *flow, const struct run *run, const diagram_list *diagrams,
                        const struct layout *layout)
{
    bool surplus;
    struct caution lines = caution_of_play(run->play);
    struct head_words *head = arena_new(flow->setter.arena, struct head_words);
    *head =
        head_of_play(flow->setter.arena, run->play, head_players_sheet(&flow->setter, run->play));
    head_call(&flow->setter, head, run->play);
    group_list groups = {0};
    flow->head = head;
    flow->caution = page_caution(&flow->setter, &lines, &surplus);
    flow->grid = layout->grid;
    add_before(flow, run, surplus, &groups);
    bands_make(&flow->setter, run, diagrams, layout, &groups);
    open_page(flow, true);
    mark_page(flow, run->play->name, flow->pages.count, false);
    for (size_t i = 0; i < groups.count; i++) {
        size_t page = flow_group(flow, &groups.at[i]);
        mark_steps(flow, run->play, &groups.at[i].ways[0].at[0], page);
    }
    keep_last_line(flow);
    fill_page(flow);
}

/* What a layout costs: pages first, then what is torn apart, then pages with a single picture on
 * them; what is left goes by the size of the pictures. (ours) */
static double cost_of(const struct flow *flow)
{
    const double page = 1000, parted = 600, lone = 400, size = 10;
    double cost = page * (double)flow->pages.count + parted * (double)flow->parted, scales = 0;
    int pictures = 0;
    for (size_t i = 0; i < flow->pages.count; i++) {
        int here = 0;
        for (size_t k = 0; k < flow->pages.at[i].bands.count; k++) {
            here += flow->pages.at[i].bands.at[k].pictures;
            scales += flow->pages.at[i].bands.at[k].scale;
        }
        cost += i > 0 && here < 2 ? lone : 0;
        pictures += here;
    }
    return cost - (pictures > 0 ? size * scales / pictures : 0);
}

/* Nothing after it is better: larger pictures are tried first. */
static bool is_one_page(const struct flow *flow)
{
    return flow->pages.count == 1 && flow->parted == 0;
}

/* The same with the call at the head: it may spare the page on which it would stand alone. */
static struct flow flow_spared(const struct setter *setter, const struct run *run,
                               const diagram_list *diagrams, const struct layout *layout)
{
    struct flow flow = {.setter = *setter};
    flow.setter.job = job_with_call(setter);
    flow_layout(&flow, run, diagrams, layout);
    return flow;
}

/* Laid out in every way that is worth it: the best is kept. */
void play_pages_make(const struct setter *setter, const struct run *run, struct play_pages *pages)
{
    diagram_list diagrams = {0};
    layout_list layouts = {0};
    struct kept kept = {.count = 0};
    struct setter own = *setter;
    struct flow best = {.grid = NULL};
    const struct layout *layout = NULL;
    double least = 0;
    own.kept = &kept;
    scene_diagrams(own.arena, run, &diagrams);
    layouts_for(&own, &diagrams, &layouts);
    for (size_t i = 0; i < layouts.count && !is_one_page(&best); i++) {
        struct flow tried = {.setter = own};
        flow_layout(&tried, run, &diagrams, &layouts.at[i]);
        double cost = cost_of(&tried);
        if (!best.grid || cost < least) {
            best = tried;
            least = cost;
            layout = &layouts.at[i];
        }
    }
    if (layout && best.pages.count > 1 && run->play->call.size > 0) {
        struct flow spared = flow_spared(&own, run, &diagrams, layout);
        best = spared.pages.count < best.pages.count ? spared : best;
    }
    pictures_draw(&own, &best.pages);
    for (size_t i = 0; i < best.pages.count; i++) {
        page_finish(&own, &best.pages.at[i], best.caution);
    }
    *pages = (struct play_pages){.pages = best.pages.at,
                                 .count = best.pages.count,
                                 .marks = best.marks.at,
                                 .mark_count = best.marks.count,
                                 .last_line = best.last_line};
}

void play_pages_keep(struct booklet *booklet, const struct play_pages *pages, int level)
{
    size_t before = booklet->pages.count;
    for (size_t i = 0; i < pages->mark_count; i++) {
        const struct mark *mark = &pages->marks[i];
        booklet_mark(booklet, mark->title, before + mark->page, level + (mark->inside ? 1 : 0));
    }
    for (size_t i = 0; i < pages->count; i++) {
        booklet_add(booklet, pages->pages[i].galley, pages->pages[i].head->foot);
    }
}

static struct str title_of(struct arena *arena, const struct sheet_job *job)
{
    struct str name = job->count == 1 ? job->plays[0].play->name : head_club(job);
    struct str sheet =
        job->count == 1 ? STR("players\xE2\x80\x99 sheet") : STR("players\xE2\x80\x99 sheets");
    if (job->reader != BODY_NONE) {
        sheet = str_format(arena, "sheet for player %d", body_number(job->reader));
    } else if (job->plays[0].reader != 0) {
        sheet = str_format(arena, "sheet for %.*s", STR_ARG(job->reader_name));
    }
    return words_joined(arena, name, sheet);
}

/* Who plays where when a player reads as the one who has this spot: else the first of her spot
 * would stand in her place. */
static struct team *team_with(struct arena *arena, const struct sheet_job *job,
                              const struct play *play, int number)
{
    struct team *team = arena_new(arena, struct team);
    team->name = job->book->team.name;
    for (int n = 1; n <= play->players; n++) {
        body who = body_attacker(n);
        struct roster_entry entry = {.number = n,
                                     .name = team_name(&job->book->team, play, who),
                                     .jersey = team_jersey(&job->book->team, play, who),
                                     .starter = true};
        if (n == number) {
            entry.name = job->reader_name;
            entry.jersey = job->reader_jersey;
        }
        if (entry.name.size > 0) {
            VEC_PUSH(arena, &team->roster, entry);
        }
    }
    return team;
}

/* A player who has other spots in other plays reads each as the one she has in it. */
static void add_play(struct booklet *booklet, const struct sheet_play *row)
{
    struct setter setter = booklet->setter;
    struct arena_mark mark = arena_mark(setter.arena);
    struct sheet_job job = *setter.job;
    struct play_pages pages;
    if (row->reader == SHEET_ANY_ROLE) {
        job.heading = head_player(&setter, row->play);
        job.reader = BODY_NONE;
        job.any_role = true;
    } else if (row->reader > 0) {
        job.reader = body_attacker(row->reader);
        job.instead_of = team_instead(&job.book->team, row->play, job.reader_name, row->reader);
        job.team = job.names && job.reader_name.size > 0 && !job.instead_of
                       ? team_with(setter.arena, &job, row->play, row->reader)
                       : NULL;
    }
    setter.job = &job;
    play_pages_make(&setter, booklet_run(&setter, row), &pages);
    play_pages_keep(booklet, &pages, 0);
    arena_release(setter.arena, mark);
}

bool handout_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    if (!grid_find(job->per_page) || job->count == 0) {
        return false;
    }
    for (size_t i = 0; i < job->count; i++) {
        add_play(booklet, &job->plays[i]);
    }
    booklet_number(booklet, 0);
    return booklet_write(booklet, title_of(&booklet->keep, job), NULL, writer);
}
