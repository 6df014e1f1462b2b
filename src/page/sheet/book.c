/* SPDX-License-Identifier: MIT */
/* book: the whole playbook as a PDF: cover, contents, every play as its handout has it, index; with
 * bookmarks, links, page labels. Takes one play at a time, keeps only what is painted of it, so
 * that a book may be as long as a season. */
#include "page/sheet/sheets.h"

#include "page/sheet/book_parts.h"
#include "picture/paint/document.h"

#define BINDING 13.5     /* so far a two-sided page leans to the outside; points */
#define HEAD_BOTTOM 57.0 /* points: of a page's running head */

struct making {
    struct booklet *booklet;
    struct setter setter; /* the booklet's */
    bool indexed;         /* there is something to look up */
    book_play_list plays;
};

const char *book_play_place(struct arena *arena, size_t index)
{
    return str_copy(arena, str_format(arena, "play-%zu", index + 1)).at;
}

size_t book_chapter_number(const struct sheet_job *job, size_t chapter)
{
    size_t number = 0;
    for (size_t i = 0; i <= chapter; i++) {
        number += job->book->chapters.at[i].title.size > 0;
    }
    return number;
}

struct str book_chapter_words(struct arena *arena, const struct sheet_job *job, size_t chapter)
{
    if (chapter == CHAPTER_NONE) {
        return STR("");
    }
    return str_format(arena, "%zu\xC2\xA0\xC2\xA0%.*s", book_chapter_number(job, chapter),
                      STR_ARG(job->book->chapters.at[chapter].title));
}

struct str book_sheet_words(const struct setter *setter)
{
    const struct sheet_job *job = setter->job;
    return words_sheet(setter->arena, "Playbook", job->plays[0].play);
}

struct str book_title(const struct sheet_job *job)
{
    struct str title = job->book->title;
    bool own = title.size > 0 && !str_equal_fold(title, job->book->team.name);
    return own ? title : STR("Playbook");
}

static size_t chapter_of(const struct playbook *book, const struct play *play)
{
    size_t chapter = playbook_chapter(book, play);
    return chapter < book->chapters.count ? chapter : CHAPTER_NONE;
}

/* ---- plays ---- */

/* Places to come to and links from the heads of a play's pages. */
static void link_pages(const struct setter *setter, const struct play_pages *pages, size_t index)
{
    const struct paper *paper = paper_of(setter->job->a4);
    for (size_t i = 0; i < pages->count; i++) {
        struct galley *galley = pages->pages[i].galley;
        if (i == 0) {
            galley_place(galley, paper->margin, HEAD_TOP, book_play_place(setter->arena, index));
        }
        galley_link(galley, vec2_of(paper->margin, HEAD_TOP),
                    vec2_of(paper->width - paper->margin, HEAD_BOTTOM), PLACE_CONTENTS);
    }
}

static void list_plays(struct making *making)
{
    const struct sheet_job *job = making->setter.job;
    for (size_t i = 0; i < job->count; i++) {
        const struct play *of = job->plays[i].play;
        struct book_play play = {.play = of, .chapter = chapter_of(job->book, of)};
        VEC_PUSH(&making->booklet->keep, &making->plays, play);
    }
}

/* The chapter that a play opens. */
static void mark_chapter(struct making *making, size_t index)
{
    size_t chapter = making->plays.at[index].chapter;
    size_t before = index > 0 ? making->plays.at[index - 1].chapter : CHAPTER_NONE;
    if (chapter != before && chapter != CHAPTER_NONE) {
        booklet_mark(making->booklet, making->setter.job->book->chapters.at[chapter].title,
                     making->plays.at[index].page, 0);
    }
}

static void set_play(struct making *making, size_t index)
{
    struct setter setter = making->setter;
    struct arena_mark mark = arena_mark(setter.arena);
    struct sheet_job job = *setter.job;
    struct book_play *play = &making->plays.at[index];
    struct str chapter = book_chapter_words(setter.arena, &job, play->chapter);
    job.heading = chapter.size > 0 ? chapter : book_sheet_words(&setter);
    job.last_line = book_line_height(&setter, &making->plays, index);
    setter.job = &job;
    struct play_pages pages;
    play_pages_make(&setter, booklet_run(&setter, &job.plays[index]), &pages);
    link_pages(&setter, &pages, index);
    play->page = making->booklet->pages.count + 1;
    mark_chapter(making, index);
    play_pages_keep(making->booklet, &pages, play->chapter == CHAPTER_NONE ? 0 : 1);
    play->last_page = making->booklet->pages.count;
    play->last_line = pages.last_line;
    arena_release(setter.arena, mark);
}

/* Once all have their pages. */
static void put_lines(struct making *making)
{
    struct booklet *booklet = making->booklet;
    struct setter setter = making->setter;
    setter.arena = &booklet->keep;
    for (size_t i = 0; i < making->plays.count; i++) {
        const struct book_play *play = &making->plays.at[i];
        if (play->last_line > 0) {
            book_line_put(&setter, &making->plays, i, booklet->pages.at[play->last_page - 1].galley,
                          paper_of(setter.job->a4)->margin);
        }
    }
}

/* ---- the book ---- */

/* The first play that is no drill: its first picture stands on the cover. */
static size_t play_for_cover(const struct sheet_job *job)
{
    for (size_t i = 0; i < job->count; i++) {
        if (!job->plays[i].play->is_drill) {
            return i;
        }
    }
    return 0;
}

static void add_cover(struct making *making)
{
    const struct setter *setter = &making->setter;
    const struct sheet_job *job = setter->job;
    struct arena_mark mark = arena_mark(setter->arena);
    const struct sheet_play *row = &job->plays[play_for_cover(job)];
    booklet_add(making->booklet, book_cover(setter, booklet_run(setter, row)), job->book->title);
    making->booklet->pages.at[0].label = "Cover";
    arena_release(setter->arena, mark);
}

/* Contents take as many pages whatever the numbers in them are: these are kept free until the plays
 * have theirs. */
static size_t reserve_contents(struct making *making)
{
    struct arena_mark mark = arena_mark(making->setter.arena);
    galley_list contents = {0};
    book_contents(&making->setter, &making->plays, making->indexed ? 1 : 0, &contents);
    size_t count = contents.count;
    arena_release(making->setter.arena, mark);
    struct booklet_page page = {.foot = making->setter.job->book->title};
    for (size_t i = 0; i < count; i++) {
        VEC_PUSH(&making->booklet->keep, &making->booklet->pages, page);
    }
    return count;
}

static void fill_contents(struct making *making)
{
    struct arena_mark mark = arena_mark(making->setter.arena);
    galley_list contents = {0};
    struct booklet *booklet = making->booklet;
    size_t index = making->indexed ? booklet->pages.count + 1 : 0;
    book_contents(&making->setter, &making->plays, index, &contents);
    for (size_t i = 0; i < contents.count; i++) {
        booklet->pages.at[1 + i].galley = galley_copy(&booklet->keep, contents.at[i]);
    }
    arena_release(making->setter.arena, mark);
}

static void add_index(struct making *making)
{
    galley_list index = {0};
    book_index(&making->setter, &making->plays, &index);
    if (index.count > 0) {
        booklet_mark(making->booklet, STR("Index"), making->booklet->pages.count + 1, 0);
    }
    for (size_t i = 0; i < index.count; i++) {
        booklet_add(making->booklet, index.at[i], making->setter.job->book->title);
    }
}

/* What readers call the pages behind the cover. */
static void label_pages(struct making *making)
{
    struct arena *keep = &making->booklet->keep;
    for (size_t i = 1; i < making->booklet->pages.count; i++) {
        making->booklet->pages.at[i].label = str_copy(keep, str_format(keep, "%zu", i + 1)).at;
    }
}

static bool write_document(struct making *making, struct writer *writer)
{
    const struct setter *setter = &making->setter;
    const struct sheet_job *job = setter->job;
    const struct paper *paper = paper_of(job->a4);
    struct str club = head_club(job);
    struct str whole = words_joined(&making->booklet->keep, club, book_title(job));
    struct booklet_cover cover = {
        .subject = document_text(&making->booklet->keep, book_sheet_words(setter)),
        .author = club.size > 0 ? document_text(&making->booklet->keep, club) : NULL,
        .crest_left = paper->width - paper->margin - CREST_WIDE,
        .crest_top = CREST_TOP,
        .crest_wide = CREST_WIDE,
        .crest_tall = CREST_TALL,
        .lean = job->two_sided ? BINDING : 0,
    };
    return booklet_write(making->booklet, whole, &cover, writer);
}

bool book_pages(struct booklet *booklet, struct writer *writer)
{
    struct making making = {.booklet = booklet, .setter = booklet->setter};
    if (booklet->setter.job->count == 0) {
        return false;
    }
    list_plays(&making);
    making.indexed = book_has_index(&making.setter, &making.plays);
    add_cover(&making);
    if (reserve_contents(&making) > 0) {
        booklet_mark(booklet, STR("Contents"), 2, 0);
    }
    for (size_t i = 0; i < making.plays.count; i++) {
        set_play(&making, i);
    }
    fill_contents(&making);
    put_lines(&making);
    add_index(&making);
    booklet_number(booklet, 1);
    label_pages(&making);
    return write_document(&making, writer);
}
