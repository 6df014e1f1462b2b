/* SPDX-License-Identifier: MIT */
/* book_contents: cover and contents of a book. Takes its plays with their page numbers, gives pages
 * without their feet. */
#include "language/tell/tell.h"
#include "page/sheet/book_parts.h"
#include "page/sheet/rows.h"
#include "page/sheet/situation.h"

/* ---- contents ---- */

#define NAME_X 24.0
#define SERIES_X 190.0
#define CALL_X 330.0
#define PAGE_ROOM 40.0 /* at the right, for the page's number */
#define COLUMN_GAP 12.0
#define ROW_LINES 36      /* at the most */
#define CHAPTER_BASE 30.0 /* under the row before it */
#define TO_CHAPTER_RULE 7.0

/* A row's columns; what is long takes more lines, and ends with a mark where it would take a page:
 * the play itself has the whole of it. */
static void put_column(const struct setter *setter, struct galley *row, enum type type,
                       struct str text, bool bold, double x, double end, double base)
{
    double width = end - COLUMN_GAP - x;
    struct str shown = words_fit(setter, type, text, width, ROW_LINES);
    if (bold) {
        shown = str_format(setter->arena, "%c%.*s%c", TELL_BOLD, STR_ARG(shown), TELL_PLAIN);
    }
    galley_text(row, words_set(setter, type, shown, width), x, base, ROLE_TEXT);
}

static void put_number(const struct setter *setter, struct galley *row, enum type type,
                       size_t number, double base)
{
    struct str text = str_format(setter->arena, "%c%zu%c", TELL_BOLD, number, TELL_PLAIN);
    galley_text_end(row, words_set(setter, type, text, 0), PAGE_WIDE, base, ROLE_TEXT);
}

static struct str series_of(const struct setter *setter, const struct play *play)
{
    struct str series = tell_series(setter->arena, play);
    return series.size > 0 || play->is_drill ? series : situation_of(setter->arena, play).word;
}

static void put_play(const struct setter *setter, struct galley *row, const struct book_play *play,
                     size_t index, double top)
{
    double base = top + ROW_BASE;
    put_column(setter, row, TYPE_ABOUT, play->play->name, true, NAME_X, SERIES_X, base);
    put_column(setter, row, TYPE_POINT, series_of(setter, play->play), false, SERIES_X, CALL_X,
               base);
    if (play->play->call.size > 0) {
        struct str call =
            str_format(setter->arena, "\xE2\x80\x9C%.*s\xE2\x80\x9D", STR_ARG(play->play->call));
        put_column(setter, row, TYPE_POINT, call, false, CALL_X, PAGE_WIDE - PAGE_ROOM, base);
    }
    put_number(setter, row, TYPE_ABOUT, play->page, base);
    double under = row->height + 1.9;
    galley_rule(row, vec2_of(NAME_X, under), vec2_of(PAGE_WIDE, under), 0.5, ROLE_HAIRLINE);
    row->height = under;
    galley_link(row, vec2_of(0, top), vec2_of(PAGE_WIDE, under),
                book_play_place(setter->arena, index));
}

/* "2  Against zone", over a rule. */
static void put_chapter(const struct setter *setter, struct galley *row, size_t chapter, bool first)
{
    const struct sheet_job *job = setter->job;
    double base = first ? ROW_BASE : CHAPTER_BASE;
    struct str number = str_format(setter->arena, "%zu", book_chapter_number(job, chapter));
    galley_text(row, words_set(setter, TYPE_CHAPTER, number, 0), 0, base, ROLE_TEXT);
    galley_keep(row);
    base = galley_text(
        row,
        words_set(setter, TYPE_CHAPTER, job->book->chapters.at[chapter].title, PAGE_WIDE - NAME_X),
        NAME_X, base, ROLE_TEXT);
    galley_keep(row);
    double rule = base + TO_CHAPTER_RULE;
    galley_rule(row, vec2_of(0, rule), vec2_of(PAGE_WIDE, rule), 0.9, ROLE_INK);
    galley_keep(row);
    row->height = rule + 2;
}

static void put_index_row(const struct setter *setter, struct rows *rows, size_t page)
{
    struct galley *row = galley_new(setter->arena);
    galley_text(row, words_set(setter, TYPE_CHAPTER, STR("Index"), 0), 0, CHAPTER_BASE, ROLE_TEXT);
    put_number(setter, row, TYPE_ABOUT, page, CHAPTER_BASE);
    galley_link(row, vec2_of(0, CHAPTER_BASE - ROW_BASE), vec2_of(PAGE_WIDE, row->height),
                PLACE_INDEX);
    rows_add(rows, row);
}

/* A title too long for the cover goes on in the contents. */
static struct str cover_title(const struct setter *setter)
{
    return words_fit(setter, TYPE_LONGEST_COVER, book_title(setter->job), PAGE_WIDE, 8);
}

void book_contents(const struct setter *setter, const book_play_list *plays, size_t index_page,
                   galley_list *pages)
{
    struct rows rows = {.setter = *setter};
    struct head_words *head = arena_new(setter->arena, struct head_words);
    struct caution none = {.kind = CAUTION_NONE};
    *head = (struct head_words){.sheet = book_sheet_words(setter), .title = STR("Contents")};
    struct str title = book_title(setter->job);
    head->about = str_equal(cover_title(setter), title) ? STR("") : title;
    rows_open(&rows, head, &none);
    galley_place(rows_page(&rows)->galley, paper_of(setter->job->a4)->margin, HEAD_TOP,
                 PLACE_CONTENTS);
    for (size_t i = 0; i < plays->count; i++) {
        const struct book_play *play = &plays->at[i];
        size_t before = i > 0 ? plays->at[i - 1].chapter : CHAPTER_NONE;
        struct galley *row = galley_new(setter->arena);
        if (play->chapter != before && play->chapter != CHAPTER_NONE) {
            put_chapter(setter, row, play->chapter, i == 0);
        }
        put_play(setter, row, play, i, row->height);
        rows_add(&rows, row);
    }
    if (index_page > 0) {
        put_index_row(setter, &rows, index_page);
    }
    for (size_t i = 0; i < rows.pages.count; i++) {
        page_finish(setter, &rows.pages.at[i], rows.caution);
        VEC_PUSH(setter->arena, pages, rows.pages.at[i].galley);
    }
}

/* ---- cover ---- */

#define CLUB 96.0
#define COVER_RULE 110.0
#define COVER_TITLE 176.0
#define COVER_DIAGRAM 256.0
#define COVER_DIAGRAM_LEAST 100.0 /* high */
#define FACTS 658.0
#define TO_LEVEL 26.0

/* The largest type in which the title takes few lines; its last baseline. */
static double put_cover_title(const struct setter *setter, struct galley *cover, double left)
{
    static const struct {
        enum type type;
        size_t lines;
    } ways[] = {{TYPE_COVER, 1}, {TYPE_LONG_COVER, 2}, {TYPE_LONGEST_COVER, 3}};
    struct str title = cover_title(setter);
    const struct text_block *words = NULL;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        words = words_set(setter, ways[i].type, title, PAGE_WIDE);
        if (text_lines(words) <= ways[i].lines) {
            break;
        }
    }
    return galley_text(cover, words, left, text_lines(words) > 1 ? COVER_TITLE - 26 : COVER_TITLE,
                       ROLE_TEXT);
}

static struct str count_of(struct arena *arena, size_t count, const char *one)
{
    return count == 0 ? STR("") : str_format(arena, "%zu %s%s", count, one, count == 1 ? "" : "s");
}

/* "17 plays, 2 drills" */
static struct str facts_of(const struct setter *setter)
{
    size_t drills = 0;
    for (size_t i = 0; i < setter->job->count; i++) {
        drills += setter->job->plays[i].play->is_drill;
    }
    struct str plays = count_of(setter->arena, setter->job->count - drills, "play");
    struct str rest = count_of(setter->arena, drills, "drill");
    return words_joined(setter->arena, plays, rest);
}

static const struct scene *cover_scene(const struct setter *setter, const struct run *run,
                                       double room)
{
    diagram_list diagrams = {0};
    scene_diagrams(setter->arena, run, &diagrams);
    if (diagrams.count == 0 || room < COVER_DIAGRAM_LEAST) {
        return NULL;
    }
    struct scene_options options = {
        .width = PAGE_WIDE, .theme = THEME_PRINT, .accent = BODY_NONE, .plain = true};
    double height = scene_height(setter->arena, &diagrams.at[0], &options);
    if (height > room) {
        options.width *= room / height;
    }
    return scene_make(setter->arena, &diagrams.at[0], &options);
}

static void put_facts(const struct setter *setter, struct galley *cover, double left, double base)
{
    const struct play *play = setter->job->plays[0].play;
    galley_rule(cover, vec2_of(left, base - 18), vec2_of(left + PAGE_WIDE, base - 18), 0.6,
                ROLE_RULE);
    galley_text(cover, words_set(setter, TYPE_HEADING, facts_of(setter), 0), left, base, ROLE_TEXT);
    struct str court = str_format(setter->arena, "Court: %s", play->court->name);
    galley_text(cover, words_set(setter, TYPE_ABOUT, court, 0), left, base + 16, ROLE_TEXT);
}

struct galley *book_cover(const struct setter *setter, const struct run *run)
{
    const struct sheet_job *job = setter->job;
    const struct paper *paper = paper_of(job->a4);
    double left = paper->margin;
    struct galley *cover = galley_new(setter->arena);
    bool surplus;
    struct caution lines = caution_of_play(run->play);
    const struct galley *caution = page_caution(setter, &lines, &surplus);
    struct str club = words_capitals(setter->arena, head_club(job));
    double room = PAGE_WIDE - (job->crest.size > 0 ? CREST_WIDE + COLUMN_GAP : 0);
    const struct text_block *words =
        words_set(setter, TYPE_CLOCK, words_fit(setter, TYPE_CLOCK, club, room, 2), room);
    double lift = type_leading(TYPE_CLOCK) * (double)(text_lines(words) > 1);
    galley_text(cover, words, left, CLUB - lift, ROLE_SOFT);
    galley_rule(cover, vec2_of(left, COVER_RULE), vec2_of(left + PAGE_WIDE, COVER_RULE), 1.2,
                ROLE_INK);
    double base = put_cover_title(setter, cover, left);
    const struct play *first = job->plays[0].play;
    if (first->level_written) {
        struct str level = str_capital(setter->arena, tell_level(setter->arena, first->level));
        base = galley_text(cover, words_set(setter, TYPE_CHAPTER, level, 0), left, base + TO_LEVEL,
                           ROLE_TEXT);
    }
    double facts = FACTS + paper->foot - (caution->height - type_leading(TYPE_NOTE));
    double top = base + 30 > COVER_DIAGRAM ? base + 30 : COVER_DIAGRAM;
    const struct scene *scene = cover_scene(setter, run, facts - 40 - top);
    if (scene) {
        galley_scene(cover, scene, left + (PAGE_WIDE - scene->width) / 2, top);
    }
    put_facts(setter, cover, left, facts);
    struct page page = {.galley = cover, .first = true, .keyless = true};
    page_finish(setter, &page, caution);
    return cover;
}
