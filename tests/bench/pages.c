/* SPDX-License-Identifier: MIT */
/* pages: what the handouts of some books cost, each figure the least of several rounds: setting the
 * pages (scenes, words, layouts), the PDF of the pages that were set, and cairo's own replay of the
 * same display list to a PDF. Nothing here passes or fails; figures are of one core.
 *   pages EXAMPLES... */
#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>

#include "floor/sim/sim.h"
#include "page/sheet/galley.h"
#include "page/sheet/play_pages.h"
#include "picture/paint/document.h"
#include "resolved.h"
#include "stopwatch.h"
#include "whole_file.h"

enum { ROUNDS = 9 };

struct benched {
    struct arena memory;
    struct resolved text;
    struct sheet_job job;
    struct setter setter;
    VEC(const struct run *) runs;
    VEC(const struct galley *) pages; /* those of the last round */
};
struct figures {
    double set, written, replayed; /* us; 0: not yet */
};

static cairo_status_t swallow(void *ctx, const unsigned char *bytes, unsigned size)
{
    (void)bytes;
    *(size_t *)ctx += size;
    return CAIRO_STATUS_SUCCESS;
}

static void set_pages(struct benched *book)
{
    book->pages.count = 0;
    for (size_t i = 0; i < book->runs.count; i++) {
        struct play_pages made;
        play_pages_make(&book->setter, book->runs.at[i], &made);
        for (size_t k = 0; k < made.count; k++) {
            page_foot(&book->setter, made.pages[k].galley, made.pages[k].head->foot, k + 1,
                      made.count);
            VEC_PUSH(&book->memory, &book->pages, made.pages[k].galley);
        }
    }
}

static void write_pages(struct benched *book)
{
    struct document document;
    const struct paper *paper = paper_of(false);
    document_init(&document, &book->memory, STR("bench"), NULL);
    document_open(&document, paper->width, paper->height);
    for (size_t i = 0; i < book->pages.count; i++) {
        galley_paint(document.cr, book->setter.fonts, book->pages.at[i], 0, 0);
        cairo_show_page(document.cr);
    }
    document_close(&document);
}

/* The same drawing, as cairo keeps it. */
static cairo_surface_t *record(const struct benched *book, const struct galley *page)
{
    const struct paper *paper = paper_of(false);
    cairo_rectangle_t whole = {0, 0, paper->width, paper->height};
    cairo_surface_t *recorded = cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &whole);
    cairo_t *cr = cairo_create(recorded);
    galley_paint(cr, book->setter.fonts, page, 0, 0);
    cairo_destroy(cr);
    return recorded;
}

static void replay_pages(const struct benched *book, cairo_surface_t *const *recorded,
                         double *figure)
{
    size_t size = 0;
    const struct paper *paper = paper_of(false);
    double begin = now();
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(swallow, &size, paper->width, paper->height);
    cairo_t *cr = cairo_create(surface);
    for (size_t i = 0; i < book->pages.count; i++) {
        cairo_set_source_surface(cr, recorded[i], 0, 0);
        cairo_paint(cr);
        cairo_show_page(cr);
    }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    least(figure, begin);
}

static void time_round(struct benched *book, struct figures *figures)
{
    double begin = now();
    set_pages(book);
    least(&figures->set, begin);
    begin = now();
    write_pages(book);
    least(&figures->written, begin);
    cairo_surface_t **recorded = arena_array(&book->memory, cairo_surface_t *, book->pages.count);
    for (size_t i = 0; i < book->pages.count; i++) {
        recorded[i] = record(book, book->pages.at[i]);
    }
    replay_pages(book, recorded, &figures->replayed);
    for (size_t i = 0; i < book->pages.count; i++) {
        cairo_surface_destroy(recorded[i]);
    }
}

static void time_book(const char *path, struct fonts *fonts)
{
    struct benched *book = calloc(1, sizeof *book);
    struct figures figures = {0, 0, 0};
    struct diags diags;
    arena_init(&book->memory, NULL, NULL);
    diags_init(&diags, &book->memory);
    resolve_text(&book->memory, &book->text, str_of(path), whole_file_or_said(&book->memory, path));
    book->job = (struct sheet_job){.book = book->text.book, .reader = BODY_NONE};
    book->setter = (struct setter){.arena = &book->memory, .fonts = fonts, .job = &book->job};
    for (size_t i = 0; i < book->text.book->plays.count; i++) {
        const struct run *run =
            sim_run(&book->memory, &book->text.sources, &book->text.book->plays.at[i], &diags);
        VEC_PUSH(&book->memory, &book->runs, run);
    }
    for (int round = 0; round < ROUNDS; round++) {
        time_round(book, &figures);
    }
    double pages = (double)book->pages.count;
    printf("%-40s %3.0f pages: set %6.0f us a page, PDF %6.0f, cairo's replay %6.0f: %.2f times\n",
           path, pages, figures.set / pages, figures.written / pages, figures.replayed / pages,
           figures.written / figures.replayed);
    arena_finish(&book->memory);
    free(book);
}

int main(int argc, char **argv)
{
    struct fonts *fonts = fonts_create();
    for (int i = 1; i < argc; i++) {
        time_book(argv[i], fonts);
    }
    fonts_destroy(fonts);
    return EXIT_SUCCESS;
}
