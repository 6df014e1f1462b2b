/* SPDX-License-Identifier: MIT */
/* branches: what is wrong with the ways on of one step taken together, and steps and ways in which
 * nothing happens; the order in which ways on are told, and their letters. Takes a step with its
 * branches made; changes nothing but what is reported. */
#include "floor/play/resolve.h"

/* ---- in what order they are told ---- */

static bool is_otherwise(const struct branch *branch)
{
    return branch->conditions.count > 0 && branch->conditions.at[0].kind == COND_OTHERWISE;
}

/* How many are told before this one. */
static int place_of(const struct step *step, int branch)
{
    bool last = is_otherwise(&step->branches.at[branch]);
    int before = 0;
    for (int i = 0; i < (int)step->branches.count; i++) {
        bool later = is_otherwise(&step->branches.at[i]);
        before += later == last ? i < branch : last;
    }
    return before;
}

branch_list play_reads(struct arena *arena, const struct play *play)
{
    branch_list reads = {0};
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        for (size_t b = 0; b < step->branches.count; b++) {
            const struct branch *branch = &step->branches.at[branch_told(step, (int)b)];
            if (branch->kind == BRANCH_READ) {
                VEC_PUSH(arena, &reads, branch);
            }
        }
    }
    return reads;
}

int branch_told(const struct step *step, int place)
{
    int branch = 0;
    while (branch + 1 < (int)step->branches.count && place_of(step, branch) != place) {
        branch++;
    }
    return branch;
}

char branch_letter(const struct step *step, int branch)
{
    return (char)('a' + place_of(step, branch) % 26);
}

/* ---- two of a kind ---- */

static void say_twice(struct maker *m, struct span span, struct span other, const char *what,
                      struct str name, const char *help)
{
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_BRANCH_TWICE, span,
                                 "two ways on from this step %s \"%.*s\"", what, STR_ARG(name));
    diag_help(m->diags, diag, "%s", help);
    if (diag) {
        diag->other = other;
    }
    m->play->broken = true;
}

static bool same_who(const struct who *a, const struct who *b)
{
    return a->kind == b->kind && a->number == b->number;
}

/* Two places that are surely one; others may differ. */
static bool same_place(const struct place *a, const struct place *b)
{
    return a == b || (a && b && a->kind == PLACE_SPOT && b->kind == PLACE_SPOT &&
                      a->spot == b->spot && a->side == b->side && a->backcourt == b->backcourt);
}

/* Both are settled: players and defenders by number. */
static bool same_condition(const struct condition *a, const struct condition *b)
{
    if (a->kind != b->kind) {
        return false;
    }
    if (a->kind == COND_OTHERWISE) {
        return true;
    }
    if (!same_place(a->place, b->place) || !same_who(&a->object, &b->object)) {
        return false;
    }
    if (a->kind == COND_BOTH && a->verb == b->verb && same_who(&a->who, &b->other) &&
        same_who(&a->other, &b->who)) {
        return true;
    }
    return same_who(&a->who, &b->who) && same_who(&a->other, &b->other) &&
           ((a->kind != COND_VERB && a->kind != COND_BOTH) || a->verb == b->verb);
}

static void say_condition(struct maker *m, const struct branch *branch, size_t index,
                          struct span other)
{
    struct branch alone = {0};
    VEC_PUSH(m->arena, &alone.conditions, branch->conditions.at[index]);
    struct strbuf words;
    strbuf_init(&words, m->arena);
    branch_conditions_print(&words, &alone, BODY_NONE);
    say_twice(m, branch->conditions.at[index].span, other, "are read by", strbuf_str(&words),
              "each answer of the defense has one way on: put their lines under one read");
}

/* Against every condition before it, those of its own read too. */
static void hold_condition(struct maker *m, const struct step *step, size_t branch, size_t index)
{
    const struct condition *condition = &step->branches.at[branch].conditions.at[index];
    for (size_t i = 0; i <= branch; i++) {
        const struct branch *other = &step->branches.at[i];
        size_t end = i < branch ? other->conditions.count : index;
        for (size_t j = 0; j < end; j++) {
            if (same_condition(&other->conditions.at[j], condition)) {
                say_condition(m, &step->branches.at[branch], index, other->conditions.at[j].span);
                return;
            }
        }
    }
}

static void hold_title(struct maker *m, const struct step *step, size_t branch)
{
    const struct block *block = step->branches.at[branch].block;
    for (size_t i = 0; i < branch && block->title.size; i++) {
        const struct block *other = step->branches.at[i].block;
        if (other->title.size && str_equal_fold(other->title, block->title)) {
            say_twice(m, block->title_span, other->title_span, "are called", block->title,
                      "a step that follows one could not name it: give each a title of its own");
            return;
        }
    }
}

void branches_contradict(struct maker *m, const struct step *step)
{
    for (size_t i = 0; i < step->branches.count; i++) {
        hold_title(m, step, i);
        for (size_t j = 0; j < step->branches.at[i].conditions.count; j++) {
            hold_condition(m, step, i, j);
        }
    }
}

/* ---- nothing happens ---- */

static bool says_something(const said_list *lines)
{
    for (size_t i = 0; i < lines->count; i++) {
        if (lines->at[i].form->kind == FORM_SENTENCE) {
            return true;
        }
    }
    return false;
}

void note_empty(struct maker *m, const struct script *script, const struct block *block)
{
    for (size_t i = 0; i < script->branches.count && !m->play->broken; i++) {
        const struct branch_script *branch = &script->branches.at[i];
        if (!says_something(&branch->lines) && !block_is_broken(branch->block)) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_EMPTY, branch->block->span,
                                         "nothing happens in this %s",
                                         branch->block->kind == BLOCK_OPTION ? "option" : "read");
            diag_help(m->diags, diag, "write below it what the players do: 3 cuts to the rim");
        }
    }
    bool whole = block->kind != BLOCK_STEP;
    if (says_something(&script->lines) || script->branches.count > 0 || m->play->broken ||
        (whole && block != m->play->block)) { /* a mirror: said of the play it mirrors */
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_EMPTY, block->span, "nothing happens in this %s",
                 !whole                       ? "step"
                 : block->kind == BLOCK_DRILL ? "drill"
                                              : "play");
    diag_help(m->diags, diag, "write below it what the players do: 1 passes to 2");
}
