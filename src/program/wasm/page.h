/* SPDX-License-Identifier: MIT */
/* page: what the WebAssembly module gives the page, all of it. The page hands text over in blocks
 * that it has taken here; what a call has to say is then at page_out_at, page_out_size long, until
 * the next call. Places in a text are bytes. One book is open at a time. */
#ifndef PROGRAM_WASM_PAGE_H
#define PROGRAM_WASM_PAGE_H

#include <stddef.h>
#include <stdint.h>

#include "courtwright/courtwright.h"

#define EXPORT(name) __attribute__((export_name(name)))

EXPORT("take") void *page_take(size_t size); /* NULL: there is no more */
EXPORT("give") void page_give(void *block);
EXPORT("out_at") size_t page_out_at(void);
EXPORT("out_size") size_t page_out_size(void);

/* Called by the module itself as it starts, before all others. */
EXPORT("unpack") void page_unpack(void);

/* Files that the book may include; names and texts are blocks, and belong to the module then. */
EXPORT("forget_files") void page_forget_files(void);
EXPORT("add_file") void page_add_file(char *name, size_t name_size, char *text, size_t size);

/* Opens a book in the place of the one before it; the name ends in a NUL. Says all that is in it
 * and all that is said about it, as JSON. `line`: only the play it is in is run, of `file`, an
 * include, or of the text itself (empty); below 0: all. */
EXPORT("load")
void page_load(const char *name, const char *text, size_t size, const char *file, int line);

enum {
    PAGE_CHECKS = 1,
    PAGE_DARK = 2,
    PAGE_PRINT = 4,
    PAGE_FLUID = 8,
    PAGE_NAMES = 16, /* players' names beside their numbers: of a sheet, and only where asked for */
    PAGE_A4 = 32     /* of a sheet */
};
/* One diagram as live SVG; `wishes` are sums of the above; `salt` ends in a NUL. */
EXPORT("draw")
enum courtwright_status page_draw(size_t play, size_t diagram, unsigned wishes, double width,
                                  const char *salt);
/* The same as it moves. */
EXPORT("animate")
enum courtwright_status page_animate(size_t play, size_t diagram, unsigned wishes,
                                     const char *salt);
/* A sheet as HTML; play below 0: all; reader 0: everybody's. */
EXPORT("paper")
enum courtwright_status page_paper(const char *sheet, int play, int reader, unsigned wishes);
EXPORT("tidy") enum courtwright_status page_tidy(void);
EXPORT("positions")
enum courtwright_status page_positions(size_t play, int rate); /* as courtwright_positions */
EXPORT("tolerance")
enum courtwright_status page_tolerance(size_t play); /* JSON, one for each diagram */

/* Pieces of a text: begin, end, class, four bytes each. */
EXPORT("tokens") enum courtwright_status page_tokens(const char *text, size_t size);
EXPORT("classes") void page_classes(void); /* their names, JSON */
EXPORT("complete")
enum courtwright_status page_complete(const char *name, const char *text, size_t size, size_t at);
EXPORT("hover")
enum courtwright_status page_hover(const char *name, const char *text, size_t size, size_t at);

/* files.c: the host that finds the page's files. */
const struct courtwright_host *page_host(void);

#endif
