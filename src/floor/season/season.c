/* SPDX-License-Identifier: MIT */
/* season: see season.h. Here: the blocks of the book, and names. */
#include "floor/season/season.h"

#include "floor/season/maker.h"

void name_add(struct season_maker *m, name_list *names, struct str name)
{
    VEC_PUSH(m->arena, names, str_copy(m->arena, name).at);
}

static const char *nearest(const struct season_maker *m, struct str name, const name_list *names)
{
    name_list ended = *names;
    VEC_PUSH(m->arena, &ended, NULL);
    return words_nearest(name, ended.at);
}

void name_unknown(struct season_maker *m, struct span span, const char *what, struct str name,
                  const name_list *names, const name_list *others, const char *example)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_SEASON_NAME, span, "%s \"%.*s\"", what, STR_ARG(name));
    const char *near = nearest(m, name, names);
    near = near || !others ? near : nearest(m, name, others);
    if (near) {
        diag_help(m->diags, diag, "did you mean \"%s\"?", near);
    } else if (names->count > 0) {
        struct strbuf list;
        strbuf_init(&list, m->arena);
        enum { TOLD = 6 };
        for (size_t i = 0; i < names->count && i < TOLD; i++) {
            strbuf_print(&list, "%s\"%s\"", i ? ", " : "", names->at[i]);
        }
        diag_help(m->diags, diag, "there %s %.*s%s", names->count == 1 ? "is" : "are",
                  STR_ARG(strbuf_str(&list)), names->count > TOLD ? " and more" : "");
    } else {
        diag_help(m->diags, diag, "%s", example);
    }
}

const struct play *play_named(const struct season_maker *m, struct str name)
{
    for (size_t i = 0; i < m->plays->plays.count; i++) {
        if (str_equal_fold(m->plays->plays.at[i].name, name)) {
            return &m->plays->plays.at[i];
        }
    }
    return NULL;
}

void play_names(struct season_maker *m, name_list *names, bool drills, bool plays)
{
    for (size_t i = 0; i < m->plays->plays.count; i++) {
        const struct play *play = &m->plays->plays.at[i];
        if (play->is_drill ? drills : plays) {
            name_add(m, names, play->name);
        }
    }
}

static void add_chart_words(struct arena *arena, const point_list *charts, point_list *out)
{
    for (size_t i = 0; i < charts->count; i++) {
        bool known = false;
        for (size_t k = 0; k < out->count; k++) {
            known = known || str_equal_fold(out->at[k].word, charts->at[i].word);
        }
        if (!known) {
            VEC_PUSH(arena, out, charts->at[i]);
        }
    }
}

void play_chart_words(struct arena *arena, const struct play *play, point_list *out)
{
    for (size_t i = 0; i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        add_chart_words(arena, &step->charts, out);
        for (size_t k = 0; k < step->branches.count; k++) {
            add_chart_words(arena, &step->branches.at[k].charts, out);
        }
    }
}

bool play_is_counted(struct arena *arena, const struct play *play)
{
    point_list charts = {0};
    bool reads = false;
    play_chart_words(arena, play, &charts);
    for (size_t i = 0; i < play->steps.count; i++) {
        reads = reads || play->steps.at[i].branches.count > 0;
    }
    return charts.count > 0 || (reads && !play->is_drill);
}

/* Where the lines of the file's `index`-th form end: where the next heading stands. */
static uint32_t lines_end(const struct block *file, size_t index)
{
    for (size_t i = index + 1; i < file->forms.count; i++) {
        if (file->forms.at[i].kind == FORM_BLOCK) {
            return file->forms.at[i].block->span.begin;
        }
    }
    return UINT32_MAX;
}

static void gather(struct season_maker *m, const struct block *file)
{
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct form *form = &file->forms.at[i];
        const struct block *block =
            form->kind == FORM_BLOCK || form->kind == FORM_INCLUDE ? form->block : NULL;
        if (!block || block->broken) {
            continue;
        }
        switch (block->kind) {
        case BLOCK_FILE:
            gather(m, block); /* as deep as includes go: LIMIT_INCLUDE_DEPTH */
            break;
        case BLOCK_PRACTICE:
            practice_make(m, block, lines_end(file, i));
            break;
        case BLOCK_CHARTED:
            charted_make(m, block);
            break;
        default:
            break;
        }
    }
}

/* ---- what cannot be told apart ---- */

/* Two things under one word would be counted as one. */
static void hold_words(struct season_maker *m, const point_list *charts, point_list *seen)
{
    for (size_t i = 0; i < charts->count; i++) {
        const struct point *chart = &charts->at[i], *other = NULL;
        for (size_t k = 0; k < seen->count && !other; k++) {
            bool same = str_equal_fold(seen->at[k].word, chart->word);
            other = same && !str_equal(seen->at[k].text, chart->text) ? &seen->at[k] : NULL;
        }
        if (other) {
            struct diag *diag =
                diag_add(m->diags, DIAG_SEASON_CHART, chart->span,
                         "`%.*s` is the word for two things in this play", STR_ARG(chart->word));
            diag_help(m->diags, diag,
                      "another word for one of them: chart %.*s2 \"Second screen set\"",
                      STR_ARG(chart->word));
            if (diag) {
                diag->other = other->span;
            }
        }
        VEC_PUSH(m->arena, seen, *chart);
    }
}

static void hold_charts(struct season_maker *m)
{
    for (size_t p = 0; p < m->plays->plays.count; p++) {
        const struct play *play = &m->plays->plays.at[p];
        point_list seen = {0};
        for (size_t i = 0; i < play->steps.count && !play->mirrored; i++) {
            hold_words(m, &play->steps.at[i].charts, &seen);
            for (size_t k = 0; k < play->steps.at[i].branches.count; k++) {
                hold_words(m, &play->steps.at[i].branches.at[k].charts, &seen);
            }
        }
    }
}

static void hold_titles(struct season_maker *m)
{
    for (size_t i = 0; i < m->out->practices.count; i++) {
        for (size_t k = 0; k < i; k++) {
            const struct practice *one = &m->out->practices.at[i],
                                  *other = &m->out->practices.at[k];
            if (str_equal_fold(one->title, other->title)) {
                struct diag *diag =
                    diag_add(m->diags, DIAG_SEASON_TWICE, one->span,
                             "there are two practices \"%.*s\"", STR_ARG(one->title));
                diag_help(m->diags, diag, "give one of them another title");
                if (diag) {
                    diag->other = other->span;
                }
                break;
            }
        }
    }
}

static bool earlier(const struct charted *a, const struct charted *b)
{
    for (size_t i = 0; i < a->date.size && i < b->date.size; i++) {
        if (a->date.at[i] != b->date.at[i]) {
            return a->date.at[i] < b->date.at[i];
        }
    }
    return false;
}

/* Few of them, nearly in order: by insertion, which keeps those of one day as they are. */
static void sort_charted(struct season *season)
{
    for (size_t i = 1; i < season->charted.count; i++) {
        struct charted own = season->charted.at[i];
        size_t k = i;
        for (; k > 0 && earlier(&own, &season->charted.at[k - 1]); k--) {
            season->charted.at[k] = season->charted.at[k - 1];
        }
        season->charted.at[k] = own;
    }
}

struct season *season_resolve(struct arena *arena, const struct book *book,
                              const struct playbook *plays, struct diags *diags)
{
    struct season_maker maker = {
        .arena = arena, .plays = plays, .diags = diags, .out = arena_new(arena, struct season)};
    gather(&maker, book->file);
    hold_charts(&maker);
    hold_titles(&maker);
    sort_charted(maker.out);
    charted_hold_days(&maker);
    return maker.out;
}
