/* SPDX-License-Identifier: MIT */
/* print_pdf: scenes on one page as large as they are. */
#include "picture/paint/document.h"
#include "picture/paint/lay.h"

bool paint_pdf(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer)
{
    if (sheet->count == 0) {
        return false;
    }
    struct laid laid = lay(arena, fonts, sheet);
    struct document document;
    document_init(&document, arena, options->title, options->date);
    document_open(&document, laid.width, laid.height);
    laid_paint(document.cr, fonts, &laid);
    if (!document_close(&document) || fonts_failed(fonts)) {
        return false;
    }
    writer_str(writer, strbuf_str(&document.sink.bytes));
    return !writer->failed;
}
