/* SPDX-License-Identifier: MIT */
/* typed: see typed.h. What stands here is the language's own: `charted` reads it back. */
#include "page/sheet/typed.h"

#include "language/syntax/chars.h"
#include "page/sheet/telling.h"

#define LINE_PITCH 13.0
#define HALF_GAP 14.0
#define OVER 4.0 /* over the heading, beyond what a section has */

typedef VEC(struct str) line_list;

static struct str quoted(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    text_quote(&out, text);
    return strbuf_str(&out);
}

static line_list lines_of(struct arena *arena, const struct play *play, const point_list *charts)
{
    line_list lines = {0};
    branch_list reads = play_reads(arena, play);
    struct str name = quoted(arena, play->name);
    for (size_t i = 0; i < charts->count; i++) {
        if (charts->at[i].word.size > 0) {
            VEC_PUSH(arena, &lines,
                     str_format(arena, "%.*s %.*s ____ of ____", STR_ARG(name),
                                STR_ARG(charts->at[i].word)));
        }
    }
    for (size_t i = 0; i < reads.count; i++) {
        VEC_PUSH(arena, &lines,
                 str_format(arena, "%.*s read %.*s ____ of ____", STR_ARG(name),
                            STR_ARG(quoted(arena, reads.at[i]->title))));
    }
    VEC_PUSH(arena, &lines, str_format(arena, "%.*s points ____ in ____", STR_ARG(name)));
    return lines;
}

void typed_add(struct rows *rows, const struct play *play, const point_list *charts)
{
    struct arena *arena = rows->setter.arena;
    line_list lines = lines_of(arena, play, charts);
    struct galley *row = rows_section(
        rows, STR("To keep it, type in under charted, date, game"),
        STR("A player\xE2\x80\x99s own line ends in by and her name or jersey: by \"#7\"."));
    double width = (PAGE_WIDE - HALF_GAP) / 2, top = row->height;
    size_t half = (lines.count + 1) / 2;
    for (size_t i = 0; i < lines.count; i++) {
        struct str line = words_isolated(arena, lines.at[i]);
        const struct text_block *words = words_set(&rows->setter, TYPE_NOTE, line, 0);
        if (text_width(words) > width) {
            return; /* cut short it could not be typed */
        }
        galley_text(row, words, i < half ? 0 : width + HALF_GAP,
                    top + 11 + (double)(i % half) * LINE_PITCH, ROLE_TEXT);
    }
    row->height += OVER;
    if (row->height <= rows_room(rows)) {
        rows_add(rows, row);
    }
}
