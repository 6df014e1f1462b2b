/* SPDX-License-Identifier: MIT */
/* sentences: each sentence of a text with what became of it: its one form, its tasks, what they
 * wait for, and the diagrams they are drawn in. */
#include "language/edit/edit.h"
#include "language/tell/tell.h"
#include "language/tidy/tidy.h"

struct teller_of_all {
    struct arena *arena;
    uint32_t source;
    const struct playbook *book;
    edit_sentence_list *out;
};

static void collect(struct teller_of_all *t, const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_BLOCK) {
            collect(t, form->block);
        } else if (form->kind == FORM_SENTENCE && form->sentence->span.source == t->source) {
            struct edit_sentence sentence = {.sentence = form->sentence,
                                             .span = form->sentence->span};
            struct strbuf tidy;
            strbuf_init(&tidy, t->arena);
            tidy_sentence(&tidy, form->sentence);
            sentence.tidy = strbuf_str(&tidy);
            sentence.told = STR("");
            VEC_PUSH(t->arena, t->out, sentence);
        }
    }
}

static struct edit_sentence *entry_of(struct teller_of_all *t, const struct sentence *sentence)
{
    for (size_t i = 0; sentence && i < t->out->count; i++) {
        if (t->out->at[i].sentence == sentence) {
            return &t->out->at[i];
        }
    }
    return NULL;
}

struct passage { /* through a step */
    size_t play;
    int index, branch;
    const struct step *step;
};

static void add_ties(struct teller_of_all *t, struct edit_sentence *entry,
                     const struct passage *way, const struct task *task)
{
    for (size_t i = 0; i < task->waits.count; i++) {
        const struct wait *wait = &task->waits.at[i];
        bool own = wait->kind == WAIT_TASK && !wait->before && wait->task >= 0 &&
                   (size_t)wait->task < step_task_count(way->step, way->branch);
        struct edit_tie tie = {
            .sentence =
                own ? step_task(way->step, way->branch, (size_t)wait->task)->sentence : NULL,
            .moment = wait->moment,
            .delay = wait->delay,
            .written = wait->written,
            .fixed = wait->fixed};
        VEC_PUSH(t->arena, &entry->ties, tie);
    }
    size_t screen = task->screen_task < 0 ? SIZE_MAX : (size_t)task->screen_task;
    bool uses = task->kind == TASK_USE && screen < step_task_count(way->step, way->branch);
    if (uses && !task->early) {
        struct edit_tie tie = {.sentence = step_task(way->step, way->branch, screen)->sentence,
                               .moment = MOMENT_SET};
        VEC_PUSH(t->arena, &entry->ties, tie);
    }
}

static struct str label_of(struct arena *arena, const struct passage *way)
{
    return way->branch < 0 ? str_format(arena, "%d", way->step->number)
                           : str_format(arena, "%d%c", way->step->number,
                                        branch_letter(way->step, way->branch));
}

static bool in_diagram(const struct edit_sentence *entry, const struct passage *way)
{
    for (size_t i = 0; i < entry->diagrams.count; i++) {
        const struct edit_diagram *diagram = &entry->diagrams.at[i];
        if (diagram->play == way->play && diagram->step == way->index &&
            diagram->branch == way->branch) {
            return true;
        }
    }
    return false;
}

static bool is_first(const struct edit_sentence *entry, const struct passage *way)
{
    const struct edit_diagram *first = entry->diagrams.at;
    return first->play == way->play && first->step == way->index && first->branch == way->branch;
}

static void add_task(struct teller_of_all *t, const struct passage *way, size_t index)
{
    const struct task *task = step_task(way->step, way->branch, index);
    struct edit_sentence *entry = entry_of(t, task->sentence);
    if (!entry) {
        return;
    }
    if (!in_diagram(entry, way)) {
        struct edit_diagram diagram = {way->play, way->index, way->branch, label_of(t->arena, way)};
        VEC_PUSH(t->arena, &entry->diagrams, diagram);
    }
    if (!is_first(entry, way)) {
        return;
    }
    const struct play *play = &t->book->plays.at[way->play];
    if (entry->tasks++ == 0) {
        add_ties(t, entry, way, task);
    }
    if (entry->told.size == 0 && !play->broken) {
        struct str told = tell_task(t->arena, play, way->step, way->branch, index);
        entry->told = tell_strip(t->arena, told);
    }
}

static void add_way(struct teller_of_all *t, size_t play, int index, int branch)
{
    const struct step *step = &t->book->plays.at[play].steps.at[index];
    struct passage way = {play, index, branch, step};
    size_t common = step->tasks.count;
    size_t from = branch < 0 ? 0 : common, to = step_task_count(step, branch);
    for (size_t i = from; i < to; i++) {
        add_task(t, &way, i);
    }
}

void edit_sentences(const struct edit_text *text, struct str name, edit_sentence_list *out)
{
    struct diags diags;
    const struct book *book = edit_read(text, &diags);
    struct teller_of_all teller = {.arena = text->arena, .source = text->source, .out = out};
    collect(&teller, book->file);
    teller.book = playbook_resolve(text->arena, text->sources, book, name, &diags);
    for (size_t play = 0; play < teller.book->plays.count; play++) {
        const struct play *one = &teller.book->plays.at[play];
        for (size_t step = 0; step < one->steps.count; step++) {
            add_way(&teller, play, (int)step, -1);
            for (size_t b = 0; b < one->steps.at[step].branches.count; b++) {
                add_way(&teller, play, (int)step, (int)b);
            }
        }
    }
}
