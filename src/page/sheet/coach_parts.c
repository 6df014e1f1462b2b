/* SPDX-License-Identifier: MIT */
/* coach_parts: see coach_parts.h: bundles of rows, headings, mistakes, and what a timing's note
 * says. */
#include "page/sheet/coach_parts.h"

#include "language/tell/tell.h"

void coach_bundle_add(struct bundle *bundle, struct galley *row)
{
    if (row->items.count > 0) {
        VEC_PUSH(row->arena, &bundle->rows, row);
    }
}

void coach_bundle_place(struct coaching *coaching, const struct bundle *bundle)
{
    struct rows *rows = &coaching->rows;
    double height = 0;
    for (size_t i = 0; i < bundle->rows.count; i++) {
        height += bundle->rows.at[i]->height + coaching->way->gap;
    }
    if (height > rows_room(rows) && !rows_page(rows)->empty) {
        rows_turn(rows, false);
    }
    for (size_t i = 0; i < bundle->rows.count; i++) {
        rows_add_apart(rows, bundle->rows.at[i], coaching->way->gap);
    }
}

/* A section's heading with a note at its right; returns how far the note's further lines reach
 * down. */
double coach_head(struct coaching *coaching, struct galley *galley, struct str title,
                  struct str note)
{
    const struct setter *setter = &coaching->rows.setter;
    const struct text_block *heading = words_set(setter, TYPE_HEADING, title, 0);
    const struct text_block *words =
        words_set(setter, TYPE_NOTE, note, PAGE_WIDE - text_width(heading) - BESIDE_GAP);
    galley_text(galley, heading, 0, SECTION_BASE, ROLE_TEXT);
    galley_keep(galley);
    double last = galley_text_end(galley, words, PAGE_WIDE, SECTION_BASE, ROLE_SOFT);
    galley_keep(galley);
    return last - SECTION_BASE;
}

void coach_small_heading(struct column *column, struct str words)
{
    column->base += column->base > 0 ? 18 : 0;
    galley_text(column->galley, words_set(column->setter, TYPE_SMALL_HEADING, words, 0), column->x,
                column->base, ROLE_TEXT);
    galley_keep(column->galley);
}

/* "Common mistakes" under what stands in the column. */
void coach_mistakes(struct column *column, const struct play *play, const point_list *mistakes)
{
    if (mistakes->count == 0) {
        return;
    }
    const double indent = 12;
    const struct setter *setter = column->setter;
    coach_small_heading(column, STR("Common mistakes"));
    for (size_t i = 0; i < mistakes->count; i++) {
        column->base += type_leading(TYPE_POINT) + (i > 0 ? 1.5 : 1);
        galley_text(column->galley, words_set(setter, TYPE_POINT, STR("\xE2\x80\x93"), 0),
                    column->x, column->base, ROLE_TEXT);
        galley_keep(column->galley);
        struct str text = tell_bold(setter->arena, mistakes->at[i].text, play->players);
        column->base =
            galley_text(column->galley, words_set(setter, TYPE_POINT, text, column->width - indent),
                        column->x + indent, column->base, ROLE_TEXT);
    }
}

/* "Timing held in 81 of 100 computer runs; tightest: 3's curl off 5, 0.4 s." */
void coach_put_tolerance(struct strbuf *out, const struct sheet_tolerance *tolerance)
{
    strbuf_print(out, "Timing held in %d of %d computer runs", tolerance->works, tolerance->runs);
    if (tolerance->tightest.size > 0) {
        strbuf_print(out, "; tightest: %.*s", STR_ARG(tolerance->tightest));
    }
    strbuf_char(out, '.');
    if (tolerance->times > 0) {
        strbuf_print(out, " %d time%s %.*s.", tolerance->times, tolerance->times == 1 ? "" : "s",
                     STR_ARG(tolerance->trouble));
    }
}

/* Of the diagram whose segment it is; NULL: it says nothing. */
const struct sheet_tolerance *coach_tolerance(const struct coaching *coaching,
                                              const struct segment *segment)
{
    for (size_t i = 0; coaching->tolerance && i < coaching->diagrams.count; i++) {
        if (coaching->diagrams.at[i].segment == segment && coaching->tolerance[i].runs > 0) {
            return &coaching->tolerance[i];
        }
    }
    return NULL;
}

/* Where on the whole play's clock it lies. */
void coach_put_clock(struct strbuf *note, const struct segment *segment)
{
    if (segment->play->steps.count > 1) {
        double from = segment->time_before;
        strbuf_print(note, "%.1f to %.1f s of the play. ", from, from + segment->duration);
    }
}

struct str coach_note_ended(struct strbuf *note)
{
    struct str told = strbuf_str(note);
    told.size -= told.size > 0 && told.at[told.size - 1] == ' ';
    return told;
}

/* Has it a timing that its step does not show? */
bool coach_own_timing(const struct coaching *coaching, const struct diagram *diagram)
{
    const diagram_list *all = &coaching->diagrams;
    bool shown = !timing_holds(diagram->segment);
    for (size_t i = 0; i < all->count; i++) {
        shown = shown || (all->at[i].branch < 0 && all->at[i].segment == diagram->segment);
    }
    return !shown;
}
