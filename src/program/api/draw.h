/* SPDX-License-Identifier: MIT */
/* draw: what draw.c shares with the writers that need cairo (print.c; core.c where there is none).
 */
#ifndef PROGRAM_API_DRAW_H
#define PROGRAM_API_DRAW_H

#include "program/api/handle.h"

/* The scenes `draw` asks for; the options are good and the play is whole. */
const struct scene **scenes_make(struct arena *scratch, const struct courtwright *book,
                                 const struct compiled *compiled,
                                 const struct courtwright_draw *draw, size_t *count);

bool draw_options_good(const struct courtwright_draw *draw);
enum theme theme_meant(enum courtwright_theme theme);

/* Scenes in a row, as one picture; the book lends its fonts. */
enum courtwright_status print_side_by_side(struct arena *scratch, struct courtwright *book,
                                           const struct scene *const *scenes, size_t count,
                                           struct str title, const struct courtwright_draw *draw,
                                           struct writer *writer);

/* SVG with outlines, PDF, PNG. */
enum courtwright_status draw_print(struct courtwright *book, const struct compiled *compiled,
                                   const struct courtwright_draw *draw, struct writer *writer);

/* The rows of the table of sheets. */
struct lister;
void list_sheets(struct lister *lister);

#endif
