/* SPDX-License-Identifier: MIT */
/* broken: which plays have an error in what they are made of: their own lines, and the plays and
 * actions they take steps from. Such a play is not run: it would be drawn as its coach never wrote
 * it. */
#include "language/words/ast.h"
#include "program/api/handle.h"

/* A play, drill, action, practice or charted block, and the stretch of its file that it opens. */
struct stretch {
    const struct block *block;
    struct span span;
    bool broken;
};
struct survey {
    struct arena *arena;
    VEC(struct stretch) all;
    uint32_t open; /* source of the stretch that still runs on; SOURCE_NONE: none does */
};

static bool opens_stretch(const struct form *form)
{
    return form->kind == FORM_BLOCK &&
           (form->block->kind == BLOCK_PLAY || form->block->kind == BLOCK_DRILL ||
            form->block->kind == BLOCK_ACTION || form->block->kind == BLOCK_PRACTICE ||
            form->block->kind == BLOCK_CHARTED);
}

static bool ends_stretch(const struct form *form)
{
    bool divider = form->kind == FORM_CHAPTER || form->kind == FORM_INCLUDE;
    return divider || (form->kind == FORM_BLOCK && form->block->kind != BLOCK_STEP &&
                       form->block->kind != BLOCK_READ && form->block->kind != BLOCK_OPTION);
}

static void close_stretch(struct survey *survey, uint32_t source, uint32_t end)
{
    if (survey->open == source && survey->all.count > 0) {
        survey->all.at[survey->all.count - 1].span.end = end;
    }
    survey->open = SOURCE_NONE;
}

static void survey_file(struct survey *survey, const struct block *file)
{
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct form *form = &file->forms.at[i];
        if (ends_stretch(form)) {
            close_stretch(survey, form->span.source, form->span.begin);
        }
        if (opens_stretch(form)) {
            struct span span = {form->span.source, form->span.begin, UINT32_MAX};
            VEC_PUSH(survey->arena, &survey->all,
                     ((struct stretch){.block = form->block, .span = span}));
            survey->open = form->span.source;
        }
        if (form->kind == FORM_INCLUDE && form->block) {
            survey_file(survey, form->block);
            survey->open = SOURCE_NONE;
        }
    }
}

static struct stretch *stretch_of(const struct survey *survey, const struct span *span)
{
    for (size_t i = 0; i < survey->all.count; i++) {
        struct stretch *stretch = &survey->all.at[i];
        if (stretch->span.source == span->source && span->begin >= stretch->span.begin &&
            span->begin < stretch->span.end) {
            return stretch;
        }
    }
    return NULL;
}

static void mark_errors(struct survey *survey, struct courtwright *book)
{
    for (size_t i = 0; i < book->diags.all.count; i++) {
        const struct diag *diag = &book->diags.all.at[i];
        if (diag->severity != SEVERITY_ERROR) {
            continue;
        }
        struct stretch *stretch = stretch_of(survey, &diag->span);
        if (stretch) {
            stretch->broken = true;
        }
        bool practice = stretch && stretch->block->kind == BLOCK_PRACTICE;
        bool charted = stretch && stretch->block->kind == BLOCK_CHARTED;
        if (!stretch || practice || charted) {
            book->errors_in[practice  ? COURTWRIGHT_PRACTICES
                            : charted ? COURTWRIGHT_CHARTED
                                      : COURTWRIGHT_ROUND]++;
        }
    }
}

static bool named_is_broken(const struct survey *survey, struct str name)
{
    for (size_t i = 0; i < survey->all.count; i++) {
        if (survey->all.at[i].broken && str_equal_fold(survey->all.at[i].block->title, name)) {
            return true;
        }
    }
    return false;
}

static bool leans_on_broken(const struct survey *survey, const struct block *block)
{
    if (block->mirrors.size > 0 && named_is_broken(survey, block->mirrors)) {
        return true;
    }
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        bool names = form->kind == FORM_RUN || form->kind == FORM_SAME;
        if ((names && named_is_broken(survey, form->note->text)) ||
            (form->kind == FORM_BLOCK && leans_on_broken(survey, form->block))) {
            return true;
        }
    }
    return false;
}

static void spread(struct survey *survey)
{
    for (bool changed = true; changed;) {
        changed = false;
        for (size_t i = 0; i < survey->all.count; i++) {
            struct stretch *stretch = &survey->all.at[i];
            if (!stretch->broken && leans_on_broken(survey, stretch->block)) {
                stretch->broken = changed = true;
            }
        }
    }
}

void broken_find(struct courtwright *book)
{
    struct survey survey = {.arena = &book->arena, .open = SOURCE_NONE};
    if (book->diags.errors == 0) {
        return;
    }
    survey_file(&survey, book->book->file);
    mark_errors(&survey, book);
    spread(&survey);
    size_t next =
        0; /* plays and stretches stand in the same order, though not each has the other */
    for (size_t i = 0; i < book->play_count; i++) {
        const struct play *play = &book->playbook->plays.at[i];
        size_t at = next;
        while (at < survey.all.count && survey.all.at[at].block != play->block) {
            at++;
        }
        bool stretch = at < survey.all.count;
        book->plays[i].broken = play->broken || (stretch && survey.all.at[at].broken);
        next = stretch ? at + 1 : next;
    }
}

size_t courtwright_error_count_in(const struct courtwright *book, enum courtwright_part part)
{
    return (unsigned)part <= COURTWRIGHT_CHARTED ? book->errors_in[part] : 0;
}
