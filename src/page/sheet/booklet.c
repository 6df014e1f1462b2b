/* SPDX-License-Identifier: MIT */
/* booklet: see booklet.h. Takes pages, gives a PDF with bookmarks; must not know what is on them.
 */
#include "page/sheet/booklet.h"

#include "picture/paint/crest.h"
#include "picture/paint/document.h"

const struct run *booklet_run(const struct setter *setter, const struct sheet_play *row)
{
    const struct sheet_job *job = setter->job;
    return row->run ? row->run : job->run_again(job->run_ctx, setter->arena, row->play);
}

bool booklet_make(const struct setter *setter,
                  bool (*work)(struct booklet *booklet, struct writer *writer),
                  struct writer *writer)
{
    struct arena *arena = setter->arena;
    struct booklet *booklet = arena_new(arena, struct booklet);
    jmp_buf here;
    jmp_buf *volatile outer = arena->escape;
    volatile bool made = false;
    booklet->setter = *setter;
    arena_init(&booklet->keep, &arena->memory, &here);
    arena->escape = &here;
    int escaped = setjmp(here);
    if (escaped == 0) {
        made = work(booklet, writer);
    }
    arena->escape = outer;
    arena_finish(&booklet->keep);
    if (escaped) {
        longjmp(*arena->escape, escaped);
    }
    return made;
}

void booklet_add(struct booklet *booklet, const struct galley *galley, struct str foot)
{
    struct booklet_page page = {galley_copy(&booklet->keep, galley), str_copy(&booklet->keep, foot),
                                NULL};
    VEC_PUSH(&booklet->keep, &booklet->pages, page);
}

void booklet_mark(struct booklet *booklet, struct str title, size_t page, int level)
{
    struct booklet_mark mark = {document_text(&booklet->keep, title), page, level};
    VEC_PUSH(&booklet->keep, &booklet->marks, mark);
}

void booklet_number(struct booklet *booklet, size_t bare)
{
    struct setter setter = booklet->setter;
    setter.arena = &booklet->keep;
    for (size_t i = 0; i < booklet->pages.count; i++) {
        const struct booklet_page *page = &booklet->pages.at[i];
        page_foot(&setter, page->galley, page->foot, i < bare ? 0 : i + 1, booklet->pages.count);
    }
}

static bool paint_crest(struct document *document, struct str crest,
                        const struct booklet_cover *cover)
{
    return crest.size == 0 || crest_draw(document->cr, crest, cover->crest_left + cover->lean,
                                         cover->crest_top, cover->crest_wide, cover->crest_tall);
}

static void paint_pages(struct document *document, struct booklet *booklet, double lean)
{
    int parents[BOOKLET_LEVELS + 1] = {0};
    size_t next = 0;
    for (size_t i = 0; i < booklet->pages.count; i++) {
        const struct booklet_page *page = &booklet->pages.at[i];
        for (; next < booklet->marks.count && booklet->marks.at[next].page == i + 1; next++) {
            const struct booklet_mark *mark = &booklet->marks.at[next];
            parents[mark->level + 1] =
                document_bookmark(document, parents[mark->level], mark->title, mark->page);
        }
        if (page->label) {
            document_label(document, page->label);
        }
        galley_paint(document->cr, booklet->setter.fonts, page->galley, i % 2 == 0 ? lean : -lean,
                     0);
        cairo_show_page(document->cr);
    }
}

bool booklet_write(struct booklet *booklet, struct str title, const struct booklet_cover *cover,
                   struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    const struct paper *paper = paper_of(job->a4);
    struct document document;
    if (booklet->pages.count == 0) {
        return false;
    }
    document_init(&document, booklet->setter.arena, title, job->date);
    document.subject = cover ? cover->subject : NULL;
    document.author = cover ? cover->author : NULL;
    document_open(&document, paper->width, paper->height);
    bool painted = !cover || paint_crest(&document, job->crest, cover);
    paint_pages(&document, booklet, cover ? cover->lean : 0);
    if (!document_close(&document) || !painted || fonts_failed(booklet->setter.fonts)) {
        return false;
    }
    writer_str(writer, strbuf_str(&document.sink.bytes));
    return !writer->failed;
}
