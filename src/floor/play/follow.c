/* SPDX-License-Identifier: MIT */
/* follow: one cause, one error. A line that could not be read leaves what hangs on it without it:
 * after a wrong `defense` every sentence of a defender would be said to have none. What follows
 * from a line that is reported already is not reported again. Takes the diagnostics of one play. */
#include "floor/play/resolve.h"

/* Which broken lines bring it about. */
enum cause { BY_HEAD, BY_STEP, BY_ANY }; /* a setting; a line above in its step; any line above */
static const struct {
    enum diag_code code;
    enum cause cause;
} follows[] = {
    {DIAG_PLAY_DEFENDER_OFF, BY_HEAD},   {DIAG_PLAY_NOT_ON_FLOOR, BY_HEAD},
    {DIAG_PLAY_INBOUNDS, BY_HEAD},       {DIAG_PLAY_REPEAT, BY_ANY},
    {DIAG_PLAY_SPOT_WHO, BY_HEAD},       {DIAG_PLAY_NO_EVENT, BY_STEP},
    {DIAG_PLAY_NO_SCREEN, BY_ANY},       {DIAG_PLAY_NO_SHOT, BY_STEP},
    {DIAG_PLAY_STAYS_ELSEWHERE, BY_ANY}, {DIAG_PLAY_STANDING_POST, BY_ANY},
    {DIAG_PLAY_POPS_ALONE, BY_ANY},      {DIAG_PLAY_BEGINS_ELSEWHERE, BY_ANY},
    {DIAG_PLAY_EMPTY, BY_ANY},           {DIAG_PLAY_NOWHERE, BY_ANY},
};

/* A line of the head that could not be read: it stands before every sentence and step. */
static bool head_is_broken(const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_BROKEN) {
            return true;
        }
        if (form->kind == FORM_SENTENCE || form->kind == FORM_BLOCK) {
            return false;
        }
    }
    return false;
}

static void latest_before(const struct block *block, struct span span, struct span *broken,
                          struct span *step)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        bool part = form->kind == FORM_BLOCK && form->block->kind >= BLOCK_STEP &&
                    form->block->kind <= BLOCK_OPTION;
        if (form->span.source != span.source || form->span.begin > span.begin) {
            continue;
        }
        *broken = form->kind == FORM_BROKEN ? form->span : *broken;
        *step = part && form->block->kind == BLOCK_STEP ? form->span : *step;
        if (part) {
            latest_before(form->block, span, broken, step);
        }
    }
}

/* A line above could not be read: in the same step, or anywhere. */
static bool broken_before(const struct block *block, struct span span, bool same_step)
{
    struct span broken = SPAN_NONE, step = SPAN_NONE;
    latest_before(block, span, &broken, &step);
    bool any = broken.source != SOURCE_NONE;
    return any && (!same_step || step.source == SOURCE_NONE || broken.begin > step.begin);
}

static bool inside(struct span a, struct span b)
{
    return a.source == b.source && a.begin >= b.begin && a.end <= b.end;
}

/* The very words were refused before. */
static bool said_before(const struct diags *diags, size_t from, struct span span)
{
    for (size_t i = 0; i < from; i++) {
        if (diags->all.at[i].severity == SEVERITY_ERROR && inside(span, diags->all.at[i].span)) {
            return true;
        }
    }
    return false;
}

static bool follows_from(const struct diag *diag, const struct block *block, bool head)
{
    for (size_t i = 0; i < sizeof follows / sizeof *follows; i++) {
        if (diag->row == &diag_rows[follows[i].code]) {
            enum cause cause = follows[i].cause;
            return cause == BY_HEAD ? head : broken_before(block, diag->span, cause == BY_STEP);
        }
    }
    return false;
}

void follow_drop(struct diags *diags, size_t from, const struct block *block)
{
    bool head = head_is_broken(block);
    size_t kept = from;
    for (size_t i = from; i < diags->all.count; i++) {
        const struct diag *diag = &diags->all.at[i];
        bool again =
            diag->row == &diag_rows[DIAG_PLAY_NO_DEFENDER] && said_before(diags, from, diag->span);
        if (again || follows_from(diag, block, head)) {
            diags->errors -= diag->severity == SEVERITY_ERROR;
            diags->warnings -= diag->severity == SEVERITY_WARNING;
            continue;
        }
        diags->all.at[kept++] = *diag;
    }
    diags->all.count = kept;
}
