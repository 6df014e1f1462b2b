/* SPDX-License-Identifier: MIT */
/* book: the book's headings as teams, actions, chapters and plays; each play is then resolved on
 * its own, so that an error in one leaves the others whole. */
#include "floor/play/resolve.h"

/* ---- gathering ---- */

struct gathering {
    struct maker *m;
    struct str chapter;
    struct span chapter_span;
    bool in_chapter;
};

static void open_chapter(struct gathering *g, struct str title)
{
    struct chapter chapter = {.title = title, .first = g->m->found.count};
    VEC_PUSH(g->m->arena, &g->m->out->chapters, chapter);
    g->chapter = title;
    g->in_chapter = true;
}

static const struct source_play *same_name(const struct maker *m, struct str name)
{
    size_t index = names_find(&m->names, name);
    return index == NAME_NONE ? NULL : &m->found.at[index];
}

/* Said once; of headings the reader has refused it has said it itself. */
static void too_many(struct maker *m, const struct block *block, const char *what, int limit)
{
    if (!block->broken && !m->too_many) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_TOO_MANY, block->span,
                                     "a book holds at most %d %s", limit, what);
        diag_help(m->diags, diag, "begin another book with this one");
        m->too_many = true;
    }
}

/* Lines that make a file a play of its own. */
static bool makes_a_play(const struct form *form)
{
    switch (form->kind) {
    case FORM_SENTENCE:
    case FORM_RUN:
    case FORM_SAME:
    case FORM_REPEAT:
    case FORM_STANDING:
        return true;
    case FORM_SETTING:
        return form->setting->setting == SETTING_START || form->setting->setting == SETTING_BALL ||
               form->setting->setting == SETTING_DEFENSE;
    case FORM_BLOCK:
        return form->block->kind == BLOCK_STEP || form->block->kind == BLOCK_READ ||
               form->block->kind == BLOCK_OPTION;
    default:
        return false;
    }
}

static const struct form *first_of_play(const struct block *file)
{
    for (size_t i = 0; i < file->forms.count; i++) {
        if (makes_a_play(&file->forms.at[i])) {
            return &file->forms.at[i];
        }
    }
    return NULL;
}

/* Where a play gets its name: its title, or the line by which the file itself is one. */
static struct span name_span(const struct block *block)
{
    const struct form *first = block->line ? NULL : first_of_play(block);
    return first                                     ? first->span
           : block->title_span.source != SOURCE_NONE ? block->title_span
                                                     : block->span;
}

static void found_play(struct gathering *g, const struct block *block, const struct block *file,
                       struct str name)
{
    struct maker *m = g->m;
    if (m->found.count == LIMIT_PLAYS) {
        too_many(m, block, "plays", LIMIT_PLAYS);
        return;
    }
    if (!g->in_chapter) {
        open_chapter(g, STR(""));
    }
    struct source_play play = {.block = block, .file = file, .chapter = g->chapter, .name = name};
    bool nameless = block->broken && !block->title.size; /* the reader has said it */
    const struct source_play *other = nameless ? NULL : same_name(m, name);
    if (other) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_DUPLICATE, name_span(block),
                                     "there are two plays \"%.*s\"", STR_ARG(name));
        diag_help(m->diags, diag, "names are unique in a book, whatever the capitals: rename one");
        if (diag) {
            diag->other = name_span(other->block);
        }
        play.duplicate = true;
    }
    if (!nameless) {
        names_add(m->arena, &m->names, name, m->found.count);
    }
    VEC_PUSH(m->arena, &m->found, play);
    m->out->chapters.at[m->out->chapters.count - 1].count++;
}

static void found_action(struct maker *m, const struct block *block)
{
    const struct block *other = action_by_name(m, block->title);
    if (other) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_DUPLICATE, block->title_span,
                                     "there are two actions \"%.*s\"", STR_ARG(block->title));
        if (diag) {
            diag->other = other->title_span;
        }
        return;
    }
    if (m->actions.count == LIMIT_ACTIONS) {
        too_many(m, block, "actions", LIMIT_ACTIONS);
        return;
    }
    VEC_PUSH(m->arena, &m->actions, block);
}

static void gather(struct gathering *g, const struct block *block, const struct block *file);

static void gather_block(struct gathering *g, const struct block *block, const struct block *file)
{
    struct maker *m = g->m;
    switch (block->kind) {
    case BLOCK_FILE:
        gather(g, block, block);
        break;
    case BLOCK_PLAYBOOK:
        m->playbook = block; /* the reader leaves only one, that of the file that was opened */
        m->out->title = block->title;
        gather(g, block, file);
        break;
    case BLOCK_TEAM:
        team_gather(m, block);
        break;
    case BLOCK_ACTION:
        found_action(m, block);
        break;
    case BLOCK_PLAY:
    case BLOCK_DRILL:
        found_play(g, block, file, block->title.size ? block->title : m->file_name);
        break;
    default:
        break;
    }
}

static void gather(struct gathering *g, const struct block *block, const struct block *file)
{
    if (block->kind == BLOCK_FILE && first_of_play(block)) {
        found_play(g, block, block, g->m->file_name);
    }
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_CHAPTER) {
            open_chapter(g, form->title);
        } else if ((form->kind == FORM_BLOCK || form->kind == FORM_INCLUDE) && form->block) {
            gather_block(g, form->block, file);
        }
    }
}

/* ---- one play ---- */

const struct source_play *play_by_name(const struct maker *m, struct str name)
{
    return same_name(m, name);
}

/* All names with a NULL behind them, made once. */
static const char *const *play_names(struct maker *m)
{
    if (!m->spelled) {
        const char **names = arena_array(m->arena, const char *, m->found.count + 1);
        for (size_t i = 0; i < m->found.count; i++) {
            names[i] = str_copy(m->arena, m->found.at[i].name).at;
        }
        m->spelled = names;
    }
    return m->spelled;
}

static void no_other(struct maker *m, const struct block *block)
{
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_MIRROR, block->mirrors_span,
                                 "there is no play \"%.*s\" in this book", STR_ARG(block->mirrors));
    const char *near = diag ? words_nearest(block->mirrors, play_names(m)) : NULL;
    if (near) {
        diag_help(m->diags, diag, "did you mean \"%s\"?", near);
    }
}

const struct block *play_body(struct maker *m, const struct source_play *source, bool *mirrored)
{
    *mirrored = false;
    const struct source_play *at = source;
    for (size_t i = 0; i <= m->found.count; i++) {
        if (at->block->mirrors.size == 0) {
            return at->block;
        }
        const struct source_play *next = same_name(m, at->block->mirrors);
        if (!next) {
            no_other(m, at->block);
            return NULL;
        }
        at = next;
        *mirrored = !*mirrored;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_MIRROR, source->block->mirrors_span,
                                 "these plays mirror one another in a circle");
    diag_help(m->diags, diag, "take `mirrors` away in one of them, and write its steps");
    return NULL;
}

const struct voice *voice_plain(struct maker *m, bool mirrored)
{
    struct voice *voice = arena_new(m->arena, struct voice);
    voice->mirrored = mirrored;
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        voice->number[i] = i;
    }
    return voice;
}

static bool no_steps_of_its_own(struct maker *m, const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SENTENCE || form->kind == FORM_BLOCK) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_MIRROR, form->span,
                                         "a play that mirrors another has no steps of its own");
            diag_help(m->diags, diag, "take `mirrors` away, or these lines; settings may stand");
            return false;
        }
    }
    return true;
}

bool block_is_broken(const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        bool part = form->kind == FORM_BLOCK && form->block->kind >= BLOCK_STEP &&
                    form->block->kind <= BLOCK_OPTION;
        if (form->kind == FORM_BROKEN || (part && block_is_broken(form->block))) {
            return true;
        }
    }
    return false;
}

/* `floor half` cannot keep what goes on behind it off the page. */
static void hold_floor(struct maker *m, const struct source_play *source)
{
    struct setting_at floor = setting_find(m, source, SETTING_FLOOR);
    if (floor.form && floor.form->number == 0 && m->play->full_floor) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_FLOOR, floor.span,
                                     "part of this play is in the backcourt, so the whole floor is "
                                     "shown");
        diag_help(m->diags, diag, "write `floor full`, or bring everybody over half court");
    }
}

static void resolve_play(struct maker *m, const struct source_play *source)
{
    struct play play = {.name = source->name,
                        .chapter = source->chapter,
                        .block = source->block,
                        .span = source->block->span,
                        .broken = source->duplicate};
    VEC_PUSH(m->arena, &m->out->plays, play);
    m->play = &m->out->plays.at[m->out->plays.count - 1];
    m->scripts.count = 0;
    m->branch = NULL;
    m->step = NULL;
    bool mirrored;
    m->body = play_body(m, source, &mirrored);
    m->play->mirrored = mirrored;
    m->play->mirrors = source->block->mirrors;
    m->plain = voice_plain(m, mirrored);
    bool whole = m->body && (m->body == source->block || no_steps_of_its_own(m, source->block));
    if (!m->body) {
        m->body = source->block;
    }
    m->play->broken =
        m->play->broken || !whole || block_is_broken(m->body) || block_is_broken(source->block);
    m->play->is_drill = m->body->kind == BLOCK_DRILL;
    size_t errors = m->diags->errors, first = m->diags->all.count;
    play_settings(m, source);
    play_start(m, source);
    play_steps(m);
    hold_floor(m, source);
    m->play->broken = m->play->broken || m->diags->errors > errors;
    follow_drop(m->diags, first, m->body);
}

const struct maker *play_aside(struct maker *m, const struct source_play *source)
{
    if (m->depth == LIMIT_ACTION_DEPTH || m->asides == LIMIT_RUNS) {
        return NULL;
    }
    struct maker *aside = arena_new(m->arena, struct maker);
    struct diags *unsaid = arena_new(m->arena, struct diags);
    *aside = *m;
    diags_init(unsaid, m->arena);
    aside->diags = unsaid; /* said where the play itself is resolved */
    aside->out = arena_new(m->arena, struct playbook);
    aside->scripts.at = NULL;
    aside->scripts.count = aside->scripts.room = 0;
    aside->depth++;
    aside->asides++;
    resolve_play(aside, source);
    m->asides = aside->asides;
    return aside;
}

struct playbook *playbook_resolve(struct arena *arena, const struct sources *sources,
                                  const struct book *book, struct str name, struct diags *diags)
{
    struct maker *m = arena_new(arena, struct maker);
    m->arena = arena;
    m->sources = sources;
    m->diags = diags;
    m->out = arena_new(arena, struct playbook);
    m->file_name = name.size ? name : STR("Play");
    struct gathering g = {.m = m, .chapter = STR("")};
    gather(&g, book->file, book->file);
    team_hold(g.m);
    actions_find_loops(m);
    book_settings(m, book->file);
    for (size_t i = 0; i < m->found.count; i++) {
        resolve_play(m, &m->found.at[i]);
    }
    return m->out;
}
