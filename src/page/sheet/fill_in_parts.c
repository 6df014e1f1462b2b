/* SPDX-License-Identifier: MIT */
/* fill_in_parts: see fill_in.h. What questions and answers both say. */
#include "page/sheet/fill_in.h"

#include "language/tell/tell.h"
#include "page/sheet/telling.h"

#define TO_DIAGRAM 8.0
#define INDENT 15.0   /* of a question behind its letter */
#define LETTER_UP 3.3 /* the middle of its disc over the baseline */

double ask_form_top(const struct ask_form *form, size_t lines)
{
    return HEADING_BASE + type_leading(form->heading) * (double)(lines - 1) + TO_DIAGRAM;
}

static struct str labelled(struct arena *arena, const struct asked *asked, struct str title)
{
    struct str label = asked->diagram->label;
    return title.size > 0
               ? str_format(arena, "%.*s\xE2\x80\x82%.*s", STR_ARG(label), STR_ARG(title))
               : str_format(arena, "Step %.*s", STR_ARG(label));
}

struct str asked_heading(const struct filling_in *filling, const struct asked *asked, bool answered)
{
    struct arena *arena = filling->rows.setter.arena;
    const struct step *step = &filling->run->play->steps.at[asked->diagram->step];
    int branch = asked->diagram->branch;
    if (answered) {
        return labelled(arena, asked,
                        branch >= 0 ? tell_branch(arena, &step->branches.at[branch])
                                    : asked->title);
    }
    struct str named = labelled(arena, asked, branch >= 0 ? asked->title : STR(""));
    struct str after = scene_after(arena, asked->diagram);
    const struct segment *before = asked->diagram->segment->before;
    if (after.size == 0 && branch < 0 && before && before->step != asked->diagram->step) {
        after = str_format(arena, "from the end of step %d",
                           filling->run->play->steps.at[before->step].number);
    }
    return after.size > 0 ? str_format(arena, "%.*s, %.*s", STR_ARG(named), STR_ARG(after)) : named;
}

double blank_set(const struct filling_in *filling, struct galley *row, const struct blank *blank,
                 struct str text, enum type type, struct vec2 base, double width)
{
    const struct setter *setter = &filling->rows.setter;
    struct str letter = str_format(setter->arena, "%c", blank->letter);
    galley_disc(row, words_set(setter, TYPE_DISC, letter, 0), base.x + GALLEY_DISC,
                base.y - LETTER_UP, ROLE_ORDER);
    galley_keep(row);
    const struct text_block *words = words_set(setter, type, text, width - INDENT);
    return galley_text(row, words, base.x + INDENT, base.y, ROLE_TEXT);
}
