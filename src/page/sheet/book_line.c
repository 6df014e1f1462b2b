/* SPDX-License-Identifier: MIT */
/* book_line: what stands at the end of a play's pages in a book: the words under which the index
 * has it, and its other side with a link there. Takes plays with their pages. */
#include "page/sheet/book_parts.h"

#define HEADINGS 48.0 /* wide: the headings' column */
#define TO_FIRST 9.0  /* from the top to the first baseline */

/* Is one the other's other side? */
static bool are_sides(const struct play *a, const struct play *b)
{
    bool one = a->mirrors.size > 0 && str_equal_fold(a->mirrors, b->name);
    return a != b && (one || (b->mirrors.size > 0 && str_equal_fold(b->mirrors, a->name)));
}

struct line_set {
    const struct setter *setter;
    struct galley *galley;
    double base;
};

/* Returns the top of what it set. */
static double add(struct line_set *line, const char *heading, struct str text)
{
    const struct setter *setter = line->setter;
    double top = line->base;
    line->base += top > 0 ? type_leading(TYPE_POINT) : TO_FIRST;
    galley_text(line->galley, words_set(setter, TYPE_SMALL_HEADING, str_of(heading), 0), 0,
                line->base, ROLE_TEXT);
    line->base =
        galley_text(line->galley, words_set(setter, TYPE_POINT, text, PAGE_WIDE - HEADINGS),
                    HEADINGS, line->base, ROLE_TEXT);
    return top;
}

static struct galley *set_line(const struct setter *setter, const book_play_list *plays,
                               size_t index)
{
    struct arena *arena = setter->arena;
    struct line_set line = {setter, galley_new(arena), 0};
    const struct play *play = plays->at[index].play;
    struct str words = book_index_words(arena, setter->job, play);
    if (words.size > 0) {
        add(&line, "Tags", words);
    }
    for (size_t i = 0; i < plays->count; i++) {
        if (!are_sides(play, plays->at[i].play)) {
            continue;
        }
        struct str name = words_isolated(arena, plays->at[i].play->name);
        struct str text = str_format(arena, "%.*s, page\xC2\xA0%zu: the same on the other side",
                                     STR_ARG(name), plays->at[i].page);
        double top = add(&line, "See also", text);
        galley_link(line.galley, vec2_of(0, top + 1), vec2_of(PAGE_WIDE, line.base + 3),
                    book_play_place(arena, i));
    }
    return line.galley;
}

double book_line_height(const struct setter *setter, const book_play_list *plays, size_t index)
{
    struct arena_mark mark = arena_mark(setter->arena);
    double height = set_line(setter, plays, index)->height;
    arena_release(setter->arena, mark);
    return height;
}

void book_line_put(const struct setter *setter, const book_play_list *plays, size_t index,
                   struct galley *page, double left)
{
    galley_join(page, set_line(setter, plays, index), left, plays->at[index].last_line);
}
