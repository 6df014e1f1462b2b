/* SPDX-License-Identifier: MIT */
/* core: what stands in the place of print.c, fonts.c and handout.c where there is no cairo. */
#include "program/api/draw.h"
#include "program/api/list.h"

enum courtwright_status draw_print(struct courtwright *book, const struct compiled *compiled,
                                   const struct courtwright_draw *draw, struct writer *writer)
{
    (void)book, (void)compiled, (void)draw, (void)writer;
    return COURTWRIGHT_NOT_BUILT;
}

enum courtwright_status print_side_by_side(struct arena *scratch, struct courtwright *book,
                                           const struct scene *const *scenes, size_t count,
                                           struct str title, const struct courtwright_draw *draw,
                                           struct writer *writer)
{
    (void)scratch, (void)book, (void)scenes, (void)count, (void)title, (void)draw, (void)writer;
    return COURTWRIGHT_NOT_BUILT;
}

enum courtwright_status courtwright_handout(struct courtwright *book,
                                            const struct courtwright_handout *handout,
                                            const struct courtwright_writer *writer)
{
    (void)book, (void)handout, (void)writer;
    return COURTWRIGHT_NOT_BUILT;
}

enum courtwright_status courtwright_sheet(struct courtwright *book, const char *sheet,
                                          const struct courtwright_handout *options,
                                          const struct courtwright_writer *writer)
{
    (void)book, (void)sheet, (void)options, (void)writer;
    return COURTWRIGHT_NOT_BUILT;
}

const char *courtwright_crest_trouble(const void *bytes, size_t size)
{
    (void)bytes, (void)size;
    return "cannot be drawn: this library was built without pages";
}

void fonts_let_go(struct courtwright *book)
{
    (void)book; /* none are ever loaded */
}

void list_sheets(struct lister *lister)
{
    (void)lister; /* the core has no sheets: the table is empty */
}
