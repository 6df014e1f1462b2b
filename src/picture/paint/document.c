/* SPDX-License-Identifier: MIT */
/* document: what every PDF has: a title, a maker, no date but the one given, one structure tag
 * round it all (cairo 1.16 writes broken links without). Gives the bytes in its sink. */
#include "picture/paint/document.h"

#include <cairo-pdf.h>

#include "picture/metrics/metrics.h"

const char *document_text(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    while (text.size > 0) {
        struct str rest = text;
        unsigned letter = metrics_letter(&rest);
        if (letter == 0xFFFD) {
            strbuf_text(&out, "\xEF\xBF\xBD");
        } else if (letter >= ' ' && letter != 0x7F) {
            strbuf_add(&out, (struct str){text.at, text.size - rest.size});
        }
        text = rest;
    }
    strbuf_char(&out, '\0');
    return out.at;
}

void document_init(struct document *document, struct arena *arena, struct str title,
                   const char *date)
{
    *document = (struct document){.surface = NULL};
    sink_init(&document->sink, arena);
    document->title = document_text(arena, title);
    document->date = date;
}

static void tell(cairo_surface_t *surface, cairo_pdf_metadata_t what, const char *text)
{
    if (text) {
        cairo_pdf_surface_set_metadata(surface, what, text);
    }
}

void document_open(struct document *document, double width, double height)
{
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(sink_take, &document->sink, width, height);
    tell(surface, CAIRO_PDF_METADATA_TITLE, document->title);
    tell(surface, CAIRO_PDF_METADATA_AUTHOR, document->author);
    tell(surface, CAIRO_PDF_METADATA_SUBJECT, document->subject);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "courtwright");
    /* What is no ISO date takes out the time of day that cairo would put in. */
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE,
                                   document->date ? document->date : "none");
    document->surface = surface;
    document->cr = cairo_create(surface);
    cairo_tag_begin(document->cr, "Document", NULL);
}

int document_bookmark(struct document *document, int parent, const char *title, size_t page)
{
    char place[64];
    size_t size = 0;
    const char before[] = "page=";
    for (size_t i = 0; before[i]; i++) {
        place[size++] = before[i];
    }
    size += number_print(place + size, (double)page, 0, false);
    place[size] = '\0';
    return cairo_pdf_surface_add_outline(document->surface, parent, title, place,
                                         parent ? 0 : CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

void document_label(struct document *document, const char *label)
{
    cairo_pdf_surface_set_page_label(document->surface, label);
}

bool document_close(struct document *document)
{
    cairo_tag_end(document->cr, "Document");
    bool good = cairo_status(document->cr) == CAIRO_STATUS_SUCCESS;
    cairo_destroy(document->cr);
    cairo_surface_finish(document->surface);
    good = good && cairo_surface_status(document->surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(document->surface);
    sink_end(&document->sink);
    return good;
}
