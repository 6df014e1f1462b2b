/* SPDX-License-Identifier: MIT */
/* book: the whole playbook as a PDF: cover, contents, every play as its handout has it, index; with
 * bookmarks, links, page labels. Takes one play at a time, keeps only what is painted of it, so
 * that a book may be as long as a season. */
#include "page/sheet/book.h"

#include "page/sheet/book_parts.h"
#include "picture/paint/crest.h"
#include "picture/paint/document.h"

#define BINDING 13.5     /* so far a two-sided page leans to the outside; points */
#define HEAD_BOTTOM 57.0 /* points: of a page's running head */

struct book_page {
    struct galley *galley;
    struct str foot;
    const char *label;
};
struct making {
    struct setter setter; /* its arena is for what is needed for a moment */
    struct arena kept;    /* and this for what is painted */
    book_play_list plays;
    VEC(struct book_page) pages; /* of the plays */
    VEC(struct book_page) all;   /* of the book */
    struct writer *writer;
    bool written;
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

/* The run of a play, made anew where the book keeps none. */
static const struct run *run_of(const struct setter *setter, const struct sheet_play *row)
{
    const struct sheet_job *job = setter->job;
    return row->run ? row->run : job->run_again(job->run_ctx, setter->arena, row->play);
}

static size_t chapter_of(const struct playbook *book, const struct play *play)
{
    size_t index = (size_t)(play - book->plays.at);
    for (size_t i = book->chapters.count; i > 0; i--) {
        const struct chapter *chapter = &book->chapters.at[i - 1];
        if (index >= chapter->first && index < chapter->first + chapter->count) {
            return chapter->title.size > 0 ? i - 1 : CHAPTER_NONE;
        }
    }
    return CHAPTER_NONE;
}

/* ---- plays ---- */

static const struct mark *keep_marks(struct arena *kept, const struct play_pages *pages)
{
    struct mark *marks = arena_array(kept, struct mark, pages->mark_count + 1);
    for (size_t i = 0; i < pages->mark_count; i++) {
        marks[i] = pages->marks[i];
        marks[i].title = arena_copy(kept, marks[i].title, strlen(marks[i].title));
    }
    return marks;
}

/* Finishes the pages of a play and keeps what is painted of them. */
static void keep_pages(struct making *making, const struct setter *setter,
                       const struct play_pages *pages, size_t index)
{
    const struct paper *paper = paper_of(setter->job->a4);
    for (size_t i = 0; i < pages->count; i++) {
        struct page *page = &pages->pages[i];
        page_finish(setter, page, pages->cautions[i]);
        if (i == 0) {
            galley_place(page->galley, paper->margin, HEAD_TOP,
                         book_play_place(setter->arena, index));
        }
        galley_link(page->galley, vec2_of(paper->margin, HEAD_TOP),
                    vec2_of(paper->width - paper->margin, HEAD_BOTTOM), PLACE_CONTENTS);
        struct book_page kept = {.galley = galley_copy(&making->kept, page->galley),
                                 .foot = str_copy(&making->kept, page->head->foot)};
        VEC_PUSH(&making->kept, &making->pages, kept);
    }
}

static void set_play(struct making *making, size_t index)
{
    struct setter setter = making->setter;
    struct arena_mark mark = arena_mark(setter.arena);
    struct sheet_job job = *setter.job;
    const struct sheet_play *row = &job.plays[index];
    struct book_play play = {
        .play = row->play,
        .page = making->pages.count,
        .chapter = chapter_of(job.book, row->play),
    };
    struct str chapter = book_chapter_words(setter.arena, &job, play.chapter);
    job.heading = chapter.size > 0 ? chapter : book_sheet_words(&setter);
    setter.job = &job;
    struct play_pages pages;
    const struct run *run = run_of(&setter, row);
    play_pages_make(&setter, run, &pages);
    keep_pages(making, &setter, &pages, index);
    play.marks = keep_marks(&making->kept, &pages);
    play.mark_count = pages.mark_count;
    VEC_PUSH(&making->kept, &making->plays, play);
    arena_release(setter.arena, mark);
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

static struct galley *set_cover(struct making *making)
{
    const struct setter *setter = &making->setter;
    struct arena_mark mark = arena_mark(setter->arena);
    const struct sheet_play *row = &setter->job->plays[play_for_cover(setter->job)];
    const struct run *run = run_of(setter, row);
    struct galley *cover = galley_copy(&making->kept, book_cover(setter, run));
    arena_release(setter->arena, mark);
    return cover;
}

static void add_page(struct making *making, struct galley *galley, struct str foot)
{
    struct book_page page = {galley, foot, NULL};
    VEC_PUSH(&making->kept, &making->all, page);
}

/* Contents are as long whatever the numbers in them are. */
static void put_together(struct making *making)
{
    struct setter setter = making->setter;
    setter.arena = &making->kept;
    struct str foot = setter.job->book->title;
    galley_list contents = {0}, index = {0};
    book_contents(&making->setter, &making->plays, 1, &contents);
    size_t before = 1 + contents.count;
    for (size_t i = 0; i < making->plays.count; i++) {
        making->plays.at[i].page += before + 1;
    }
    contents.count = 0;
    book_contents(&setter, &making->plays, before + making->pages.count + 1, &contents);
    book_index(&setter, &making->plays, &index);
    add_page(making, set_cover(making), foot);
    for (size_t i = 0; i < contents.count; i++) {
        add_page(making, contents.at[i], foot);
    }
    for (size_t i = 0; i < making->pages.count; i++) {
        add_page(making, making->pages.at[i].galley, making->pages.at[i].foot);
    }
    for (size_t i = 0; i < index.count; i++) {
        add_page(making, index.at[i], foot);
    }
    for (size_t i = 0; i < making->all.count; i++) {
        struct book_page *page = &making->all.at[i];
        page_foot(&setter, page->galley, page->foot, i > 0 ? i + 1 : 0, making->all.count);
        page->label =
            i > 0 ? str_copy(setter.arena, str_format(setter.arena, "%zu", i + 1)).at : "Cover";
    }
}

/* ---- the document ---- */

struct book_mark {
    const char *title;
    size_t page;
    int level; /* 0: on top */
};
typedef VEC(struct book_mark) book_mark_list;

static void add_mark(struct making *making, book_mark_list *marks, const char *title, size_t page,
                     int level)
{
    VEC_PUSH(&making->kept, marks, ((struct book_mark){title, page, level}));
}

static void list_marks(struct making *making, book_mark_list *marks)
{
    size_t chapter = CHAPTER_NONE;
    add_mark(making, marks, "Contents", 2, 0);
    for (size_t i = 0; i < making->plays.count; i++) {
        const struct book_play *play = &making->plays.at[i];
        if (play->chapter != chapter && play->chapter != CHAPTER_NONE) {
            struct str title = making->setter.job->book->chapters.at[play->chapter].title;
            add_mark(making, marks, document_text(&making->kept, title), play->page, 0);
        }
        chapter = play->chapter;
        int level = chapter == CHAPTER_NONE ? 0 : 1;
        for (size_t k = 0; k < play->mark_count; k++) {
            const struct mark *mark = &play->marks[k];
            add_mark(making, marks, mark->title, play->page + mark->page - 1,
                     level + (mark->inside ? 1 : 0));
        }
    }
    size_t after = 1;
    if (making->plays.count > 0) {
        after = making->plays.at[0].page + making->pages.count;
    }
    if (after <= making->all.count) {
        add_mark(making, marks, "Index", after, 0);
    }
}

static bool paint_crest(struct document *document, const struct sheet_job *job)
{
    const struct paper *paper = paper_of(job->a4);
    double left = paper->width - paper->margin - CREST_WIDE + (job->two_sided ? BINDING : 0);
    return job->crest.size == 0 ||
           crest_draw(document->cr, job->crest, left, CREST_TOP, CREST_WIDE, CREST_TALL);
}

static bool paint_pages(struct document *document, struct making *making,
                        const book_mark_list *marks)
{
    enum { LEVELS = 3 };
    int parents[LEVELS + 1] = {0};
    size_t next = 0;
    bool good = paint_crest(document, making->setter.job);
    for (size_t i = 0; i < making->all.count; i++) {
        const struct book_page *page = &making->all.at[i];
        for (; next < marks->count && marks->at[next].page == i + 1; next++) {
            const struct book_mark *mark = &marks->at[next];
            parents[mark->level + 1] =
                document_bookmark(document, parents[mark->level], mark->title, mark->page);
        }
        document_label(document, page->label);
        bool right = i % 2 == 0;
        double lean = !making->setter.job->two_sided ? 0 : right ? BINDING : -BINDING;
        galley_paint(document->cr, making->setter.fonts, page->galley, lean, 0);
        cairo_show_page(document->cr);
    }
    return good;
}

static void write_document(struct making *making)
{
    const struct setter *setter = &making->setter;
    const struct sheet_job *job = setter->job;
    const struct paper *paper = paper_of(job->a4);
    struct str club = head_club(job);
    struct str title = book_title(job);
    struct str whole = str_format(&making->kept, "%.*s%s%.*s", STR_ARG(club),
                                  club.size > 0 ? ", " : "", STR_ARG(title));
    book_mark_list marks = {0};
    struct document document;
    list_marks(making, &marks);
    document_init(&document, setter->arena, whole, job->date);
    document.subject = document_text(&making->kept, book_sheet_words(setter));
    document.author = club.size > 0 ? document_text(&making->kept, club) : NULL;
    document_open(&document, paper->width, paper->height);
    bool painted = paint_pages(&document, making, &marks);
    if (document_close(&document) && painted && !fonts_failed(setter->fonts)) {
        writer_str(making->writer, strbuf_str(&document.sink.bytes));
        making->written = !making->writer->failed;
    }
}

static void make_book(struct making *making)
{
    for (size_t i = 0; i < making->setter.job->count; i++) {
        set_play(making, i);
    }
    put_together(making);
    write_document(making);
}

/* What is kept has an arena of its own; when memory runs out it goes first. */
bool book_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                struct writer *writer)
{
    if (job->count == 0) {
        return false;
    }
    struct making *making = arena_new(arena, struct making);
    jmp_buf here;
    jmp_buf *volatile outer = arena->escape;
    making->setter = (struct setter){.arena = arena, .fonts = fonts, .job = job};
    making->writer = writer;
    arena_init(&making->kept, &arena->memory, &here);
    arena->escape = &here;
    int escaped = setjmp(here);
    if (escaped == 0) {
        make_book(making);
    }
    arena->escape = outer;
    bool written = making->written;
    arena_finish(&making->kept);
    if (escaped) {
        longjmp(*arena->escape, escaped);
    }
    return written;
}
