/* SPDX-License-Identifier: MIT */
/* settings: what holds for a play: its own lines, those of the play it mirrors, the lines before
 * the file's first heading, the playbook's; the nearest wins. Must not know positions. */
#include "floor/play/resolve.h"

#include <assert.h>
#include <string.h>

#include "base/real.h"

static const char *const places[SETTING_COUNT] = {
#define SETTING(symbol, word, where) [SETTING_##symbol] = where,
#include "language/words/settings.def"
#undef SETTING
};

static const struct form *form_in(const struct block *block, enum setting setting)
{
    for (size_t i = 0; block_sets(block, setting) && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SETTING && form->setting->setting == setting) {
            return form;
        }
    }
    return NULL;
}

static const struct setting_form *in_block(const struct block *block, enum setting setting)
{
    const struct form *form = form_in(block, setting);
    return form ? form->setting : NULL;
}

static bool inherited(enum setting setting)
{
    return strchr(places[setting], 'F') != NULL;
}

/* The blocks a play's settings stand in, nearest first; how many of them are mirrored ones. */
enum { CHAIN_MOST = 12 };
struct chain {
    const struct block *block[CHAIN_MOST];
    bool mirrored[CHAIN_MOST];
    bool own[CHAIN_MOST]; /* a play's, not a file's or book's */
    size_t count;
};

static void chain_add(struct chain *chain, const struct block *block, bool mirrored, bool own)
{
    if (block && chain->count < CHAIN_MOST) {
        chain->block[chain->count] = block;
        chain->mirrored[chain->count] = mirrored;
        chain->own[chain->count++] = own;
    }
}

static struct chain chain_of(const struct maker *m, const struct source_play *source)
{
    struct chain chain = {.count = 0};
    bool mirrored = false;
    const struct source_play *at = source;
    for (size_t i = 0; at && i < LIMIT_PLAYS && chain.count < CHAIN_MOST - 2; i++) {
        chain_add(&chain, at->block, mirrored, true);
        if (at->block->mirrors.size == 0) {
            break;
        }
        at = play_by_name(m, at->block->mirrors);
        mirrored = !mirrored;
    }
    chain_add(&chain, source->file, false, false);
    chain_add(&chain, m->playbook, false, false);
    return chain;
}

struct setting_at setting_find(const struct maker *m, const struct source_play *source,
                               enum setting setting)
{
    struct chain chain = chain_of(m, source);
    for (size_t i = 0; i < chain.count; i++) {
        const struct form *form = form_in(chain.block[i], setting);
        if (form && (chain.own[i] || inherited(setting))) {
            return (struct setting_at){form->setting, chain.mirrored[i], form->span};
        }
    }
    return (struct setting_at){NULL, false, SPAN_NONE};
}

static struct str text_of(const struct maker *m, const struct source_play *source,
                          enum setting setting)
{
    const struct setting_form *form = setting_find(m, source, setting).form;
    return form ? form->text : STR("");
}

static int number_of(const struct maker *m, const struct source_play *source, enum setting setting,
                     int otherwise)
{
    const struct setting_form *form = setting_find(m, source, setting).form;
    return form ? form->number : otherwise;
}

static double limit_value(const struct maker *m, struct measure measure)
{
    switch (measure.unit) {
    case UNIT_FEET:
    case UNIT_METRES:
    case UNIT_STEPS:
        return where_metres(m, measure);
    case UNIT_MINUTES:
        return measure.value * 60;
    case UNIT_DEGREES:
        return measure.value * REAL_PI / 180;
    case UNIT_PERCENT:
        return measure.value / 100;
    case UNIT_SECONDS:
    case UNIT_NONE:
        break;
    }
    return measure.value;
}

static bool has_limit(const struct play *play, struct str check)
{
    for (size_t i = 0; i < play->limits.count; i++) {
        if (str_equal_fold(play->limits.at[i].check, check)) {
            return true;
        }
    }
    return false;
}

/* Every limit and caution along the chain: a nearer limit hides a farther one of its check. */
static void gather(struct maker *m, const struct source_play *source)
{
    struct chain chain = chain_of(m, source);
    for (size_t i = 0; i < chain.count; i++) {
        for (size_t j = 0; j < chain.block[i]->forms.count; j++) {
            const struct form *form = &chain.block[i]->forms.at[j];
            if (form->kind != FORM_SETTING) {
                continue;
            }
            const struct setting_form *setting = form->setting;
            if (setting->setting == SETTING_CAUTION) {
                VEC_PUSH(m->arena, &m->play->cautions, setting->text);
            } else if (setting->setting == SETTING_LIMIT && !has_limit(m->play, setting->text)) {
                struct limit_entry limit = {setting->text, limit_value(m, setting->measure),
                                            form->span, setting->measure.unit};
                VEC_PUSH(m->arena, &m->play->limits, limit);
            }
        }
    }
}

static void set_defense(struct maker *m, const struct source_play *source)
{
    static const char *const words[] = {[DEFENSE_ZONE] = "zone ",
                                        [DEFENSE_BOX_AND_ONE] = "box-and-one",
                                        [DEFENSE_TRIANGLE_AND_TWO] = "triangle-and-two",
                                        [DEFENSE_PRESS] = "press "};
    struct play *play = m->play;
    const struct setting_form *form = setting_find(m, source, SETTING_DEFENSE).form;
    if (!form) {
        return;
    }
    play->defense = form->defense;
    play->man = form->man;
    bool man = form->defense == DEFENSE_PRESS && form->zone.size == 0;
    if (form->defense > DEFENSE_MAN && !man) {
        struct str setting =
            str_format(m->arena, "%s%.*s", words[form->defense], STR_ARG(form->zone));
        bool found = zone_find(setting, &play->zone);
        assert(found); /* the words know no other */
        (void)found;
    }
}

static void set_lineup(struct maker *m, const struct source_play *source)
{
    const struct setting_form *form = setting_find(m, source, SETTING_LINEUP).form;
    if (!form) {
        return;
    }
    const struct team *team = &m->out->team;
    const char **names = arena_array(m->arena, const char *, team->lineups.count + 1);
    for (size_t i = 0; i < team->lineups.count; i++) {
        names[i] = str_copy(m->arena, team->lineups.at[i].title).at;
        if (str_equal_fold(team->lineups.at[i].title, form->text)) {
            m->play->lineup = team->lineups.at[i].title;
            return;
        }
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_LINEUP, form->value_span,
                                 "the team has no lineup \"%.*s\"", STR_ARG(form->text));
    const char *near = words_nearest(form->text, names);
    if (near) {
        diag_help(m->diags, diag, "did you mean \"%s\"?", near);
    } else {
        diag_help(m->diags, diag, "write it under `team`: lineup \"%.*s\" 1 \"…\", 2 \"…\"",
                  STR_ARG(form->text));
    }
}

void play_settings(struct maker *m, const struct source_play *source)
{
    struct play *play = m->play;
    play->rules = (enum court_code)number_of(m, source, SETTING_RULES, COURT_HIGH_SCHOOL);
    play->level = (enum level_code)number_of(m, source, SETTING_LEVEL, LEVEL_U16);
    play->level_written = setting_find(m, source, SETTING_LEVEL).form != NULL;
    play->court = court_of(play->rules);
    play->speed = level_of(play->level);
    play->metres = number_of(m, source, SETTING_UNITS, 0) == 1;
    play->a4 = number_of(m, source, SETTING_PAPER, 0) == 1;
    play->basket_bottom = number_of(m, source, SETTING_BASKET, 0) == 1;
    play->full_floor = number_of(m, source, SETTING_FLOOR, 0) == 1;
    play->number = number_of(m, source, SETTING_NUMBER, 0);
    play->about = text_of(m, source, SETTING_ABOUT);
    play->call = text_of(m, source, SETTING_CALL);
    play->series = text_of(m, source, SETTING_SERIES);
    play->score = text_of(m, source, SETTING_SCORE);
    play->goal = text_of(m, source, SETTING_GOAL);
    const struct setting_form *clock = setting_find(m, source, SETTING_CLOCK).form;
    play->clock = clock ? clock->measure.value : 0;
    const struct setting_form *tags = setting_find(m, source, SETTING_TAGS).form;
    for (size_t i = 0; tags && i < tags->tags.count; i++) {
        VEC_PUSH(m->arena, &play->tags, tags->tags.at[i]);
    }
    gather(m, source);
    set_defense(m, source);
    set_lineup(m, source);
}

/* The play of a file without headings, whose lines are the file's; NULL: there is none. */
static const struct block *implied_play(const struct block *file)
{
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct block *block = file->forms.at[i].block;
        if (block && block->implied) {
            return block;
        }
    }
    return NULL;
}

void book_settings(struct maker *m, const struct block *file)
{
    /* the nearest last: the file's lines, then those of its play without a heading */
    const struct block *const blocks[] = {m->playbook, file, implied_play(file)};
    for (size_t i = 0; i < sizeof blocks / sizeof blocks[0]; i++) {
        const struct setting_form *units = in_block(blocks[i], SETTING_UNITS);
        const struct setting_form *paper = in_block(blocks[i], SETTING_PAPER);
        m->out->metres = units ? units->number == 1 : m->out->metres;
        m->out->a4 = paper ? paper->number == 1 : m->out->a4;
    }
}
