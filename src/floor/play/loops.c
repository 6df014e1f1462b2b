/* SPDX-License-Identifier: MIT */
/* loops: actions by their names, and those that run themselves, straight or by way of others,
 * whether a play runs them or not. Takes the book's actions; must not know plays. */
#include "floor/play/resolve.h"

struct walk {
    struct maker *m;
    unsigned char *state; /* 0: not seen, 1: on the way, 2: done */
    size_t *way;          /* the actions on the way, outermost first */
    size_t depth;         /* at most LIMIT_ACTIONS */
};

static bool index_of(const struct maker *m, struct str name, size_t *index)
{
    for (size_t i = 0; i < m->actions.count; i++) {
        if (str_equal_fold(m->actions.at[i]->title, name)) {
            *index = i;
            return true;
        }
    }
    return false;
}

const struct block *action_by_name(const struct maker *m, struct str name)
{
    size_t index;
    return index_of(m, name, &index) ? m->actions.at[index] : NULL;
}

static void say_loop(struct walk *walk, size_t action, struct span span)
{
    struct maker *m = walk->m;
    const struct block *block = m->actions.at[action];
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_TOO_DEEP, span,
                                 "the action \"%.*s\" runs itself", STR_ARG(block->title));
    diag_help(m->diags, diag, "take this line out, or write its sentences out");
    if (diag) {
        diag->other = block->title_span;
    }
    for (size_t i = walk->depth; i-- > 0;) {
        VEC_PUSH(m->arena, &m->loops, m->actions.at[walk->way[i]]);
        if (walk->way[i] == action) {
            break;
        }
    }
}

static void visit(struct walk *walk, size_t action);

static void visit_forms(struct walk *walk, const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        size_t run;
        if (form->kind == FORM_BLOCK) { /* a read or an option */
            visit_forms(walk, form->block);
        } else if (form->kind == FORM_RUN && index_of(walk->m, form->note->text, &run)) {
            if (walk->state[run] == 1) {
                say_loop(walk, run, form->span);
            } else {
                visit(walk, run);
            }
        }
    }
}

static void visit(struct walk *walk, size_t action)
{
    if (walk->state[action]) {
        return;
    }
    walk->state[action] = 1;
    walk->way[walk->depth++] = action;
    visit_forms(walk, walk->m->actions.at[action]);
    walk->depth--;
    walk->state[action] = 2;
}

void actions_find_loops(struct maker *m)
{
    struct walk walk = {.m = m,
                        .state = arena_array(m->arena, unsigned char, m->actions.count + 1),
                        .way = arena_array(m->arena, size_t, m->actions.count + 1)};
    for (size_t i = 0; i < m->actions.count; i++) {
        visit(&walk, i);
    }
}
