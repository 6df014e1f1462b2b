/* SPDX-License-Identifier: MIT */
/* tidy_form: see tidy_form.h. */
#include "language/tidy/tidy_form.h"

#include "language/syntax/chars.h"
#include "language/words/vocabulary.h"

static void put_measure(struct strbuf *out, struct measure measure)
{
    static const char *const units[] = {
        [UNIT_NONE] = "",
        [UNIT_FEET] = " ft",
        [UNIT_METRES] = " m",
        [UNIT_STEPS] = " steps",
        [UNIT_SECONDS] = " s",
        [UNIT_MINUTES] = " min",
        [UNIT_DEGREES] = " degrees",
        [UNIT_PERCENT] = "%",
    };
    strbuf_number(out, measure.value, 4);
    strbuf_text(out,
                measure.unit == UNIT_STEPS && measure.value == 1 ? " step" : units[measure.unit]);
}

/* Letters, digits and single spaces or hyphens between them stand without quotes. */
static bool is_plain(struct str tag)
{
    bool gap = true;
    for (size_t i = 0; i < tag.size; i++) {
        char c = tag.at[i];
        bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (!letter && (gap || (c != ' ' && c != '-'))) {
            return false;
        }
        gap = !letter;
    }
    return !gap;
}

static void put_tags(struct strbuf *out, const struct setting_form *setting)
{
    for (size_t i = 0; i < setting->tags.count; i++) {
        struct str tag = setting->tags.at[i];
        strbuf_text(out, i ? ", " : "");
        if (is_plain(tag)) {
            strbuf_add(out, tag);
        } else {
            text_quote(out, tag);
        }
    }
}

static void put_placing(struct strbuf *out, const struct placing *placing)
{
    switch (placing->kind) {
    case PLACING_FORMATION:
        strbuf_text(out, formation_at(placing->formation)->word);
        return;
    case PLACING_CONE:
        strbuf_text(out, "cone at ");
        break;
    case PLACING_LINE:
        strbuf_text(out, "line behind ");
        tidy_who(out, &placing->who);
        return;
    case PLACING_WHO:
        tidy_who(out, &placing->who);
        bool measured = placing->place->kind == PLACE_OFFSET || placing->place->kind == PLACE_XY;
        strbuf_text(out, measured ? " at " : " ");
        break;
    }
    tidy_place(out, placing->place);
}

static void put_start(struct strbuf *out, const struct setting_form *setting)
{
    for (size_t i = 0; i < setting->placings.count; i++) {
        strbuf_text(out, i ? ", " : "");
        put_placing(out, &setting->placings.at[i]);
    }
}

static void put_ball(struct strbuf *out, const struct setting_form *setting)
{
    tidy_who(out, &setting->ball);
    if (setting->ball_out) {
        strbuf_text(out, " out of bounds at ");
        tidy_place(out, setting->ball_out);
    }
}

void tidy_defense(struct strbuf *out, const struct setting_form *setting)
{
    static const char *const kinds[] = {
        [DEFENSE_NONE] = "none",
        [DEFENSE_MAN] = "man",
        [DEFENSE_ZONE] = "zone",
        [DEFENSE_BOX_AND_ONE] = "box-and-one",
        [DEFENSE_TRIANGLE_AND_TWO] = "triangle-and-two",
        [DEFENSE_PRESS] = "press",
    };
    static const char *const styles[] = {
        [MAN_GAP] = " gap", [MAN_DENY] = " deny", [MAN_SAG] = " sag"};
    strbuf_text(out, kinds[setting->defense]);
    if (setting->defense == DEFENSE_MAN && setting->man_written) {
        strbuf_text(out, styles[setting->man]);
    } else if (setting->defense == DEFENSE_PRESS && setting->zone.size == 0) {
        strbuf_text(out, " man");
    } else if (setting->zone.size > 0) {
        strbuf_print(out, " %.*s", STR_ARG(setting->zone));
    }
}

static void put_choice(struct strbuf *out, const struct setting_form *setting)
{
    strbuf_text(out, choice_word(setting->setting, setting->number != 0));
}

void tidy_setting(struct strbuf *out, const struct setting_form *setting)
{
    strbuf_text(out, setting_word(setting->setting));
    strbuf_char(out, ' ');
    switch (setting->setting) {
    case SETTING_RULES:
        strbuf_text(out, court_of((enum court_code)setting->number)->word);
        break;
    case SETTING_LEVEL:
        strbuf_text(out, level_of((enum level_code)setting->number)->word);
        break;
    case SETTING_LIMIT:
        strbuf_add(out, setting->text);
        strbuf_char(out, ' ');
        put_measure(out, setting->measure);
        break;
    case SETTING_CLOCK:
        put_measure(out, setting->measure);
        break;
    case SETTING_NUMBER:
        strbuf_print(out, "%d", setting->number);
        break;
    case SETTING_TAGS:
        put_tags(out, setting);
        break;
    case SETTING_START:
        put_start(out, setting);
        break;
    case SETTING_BALL:
        put_ball(out, setting);
        break;
    case SETTING_DEFENSE:
        tidy_defense(out, setting);
        break;
    case SETTING_UNITS:
    case SETTING_PAPER:
    case SETTING_BASKET:
    case SETTING_FLOOR:
        put_choice(out, setting);
        break;
    default:
        text_quote(out, setting->text);
    }
}

static void put_roles(struct strbuf *out, const struct note_form *note)
{
    for (size_t i = 0; i < note->roles.count; i++) {
        strbuf_print(out, "%s%.*s ", i ? ", " : " with ", STR_ARG(note->roles.at[i].role));
        tidy_who(out, &note->roles.at[i].who);
    }
}

void tidy_note(struct strbuf *out, enum form_kind kind, const struct note_form *note)
{
    switch (kind) {
    case FORM_POINT:
        strbuf_text(out, "point ");
        if (note->player) {
            strbuf_print(out, "%d ", note->player);
        }
        break;
    case FORM_MISTAKE:
        strbuf_text(out, "mistake ");
        break;
    case FORM_CHART:
    case FORM_ACCEPT:
        strbuf_print(out, "%s %.*s ", kind == FORM_CHART ? "chart" : "accept", STR_ARG(note->word));
        break;
    case FORM_RUN:
        strbuf_text(out, "run ");
        break;
    case FORM_REPEAT:
        strbuf_print(out, "repeat from step %d", note->step);
        break;
    case FORM_SAME:
        strbuf_print(out, "same as step %d of ", note->step);
        break;
    default:
        strbuf_text(out, "continue here");
    }
    if (kind != FORM_REPEAT && kind != FORM_CONTINUE) {
        text_quote(out, note->text);
    }
    put_roles(out, note);
    strbuf_text(out, note->mirrored ? ", mirrored" : "");
}

void tidy_roster(struct strbuf *out, const struct form *form)
{
    if (form->kind == FORM_LINEUP) {
        strbuf_text(out, "lineup ");
        text_quote(out, form->title);
        for (size_t i = 0; i < form->roster->lineup.count; i++) {
            strbuf_print(out, "%s %d ", i ? "," : "", form->roster->lineup.at[i].who.number);
            text_quote(out, form->roster->lineup.at[i].role);
        }
        return;
    }
    strbuf_print(out, "%d ", form->number);
    text_quote(out, form->title);
    if (form->roster->role.size > 0) {
        strbuf_print(out, " %.*s", STR_ARG(form->roster->role));
    }
    if (form->roster->jersey.size > 0) {
        strbuf_print(out, ", jersey %.*s", STR_ARG(form->roster->jersey));
    }
}

static void put_step(struct strbuf *out, const struct block *block)
{
    static const char *const words[] = {
        [TIE_AS] = " as ", [TIE_AFTER] = " after ", [TIE_WHEN] = " when "};
    strbuf_text(out, "step");
    if (block->number) {
        strbuf_print(out, " %d", block->number);
    }
    if (block->title.size > 0) {
        strbuf_char(out, ' ');
        text_quote(out, block->title);
    }
    if (block->after.size > 0) {
        strbuf_text(out, " after ");
        text_quote(out, block->after);
    } else if (block->tie.word != TIE_NONE) {
        strbuf_text(out, words[block->tie.word]);
        tidy_event(out, block->tie.event);
    }
}

static void put_read(struct strbuf *out, const struct block *block)
{
    strbuf_text(out, block->one_line ? "if " : "read ");
    for (size_t i = 0; i < block->conditions.count; i++) {
        strbuf_text(out, i ? " or " : "");
        tidy_condition(out, &block->conditions.at[i]);
    }
    if (block->title.size > 0) {
        strbuf_char(out, ' ');
        text_quote(out, block->title);
    }
}

static void put_action(struct strbuf *out, const struct block *block)
{
    strbuf_text(out, "action ");
    text_quote(out, block->title);
    for (size_t i = 0; i < block->roles.count; i++) {
        strbuf_print(out, "%s%.*s", i ? ", " : " for ", STR_ARG(block->roles.at[i]));
    }
}

void tidy_heading(struct strbuf *out, const struct block *block)
{
    static const char *const words[] = {
        [BLOCK_PLAYBOOK] = "playbook ", [BLOCK_TEAM] = "team ",     [BLOCK_PLAY] = "play ",
        [BLOCK_DRILL] = "drill ",       [BLOCK_OPTION] = "option ", [BLOCK_PRACTICE] = "practice ",
    };
    switch (block->kind) {
    case BLOCK_STEP:
        put_step(out, block);
        return;
    case BLOCK_READ:
        put_read(out, block);
        return;
    case BLOCK_ACTION:
        put_action(out, block);
        return;
    case BLOCK_CHARTED:
        strbuf_print(out, "charted %.*s %s", STR_ARG(block->date), occasion_word(block->occasion));
        if (block->title.size > 0) {
            strbuf_char(out, ' ');
            text_quote(out, block->title);
        }
        return;
    default:
        strbuf_text(out, words[block->kind]);
        text_quote(out, block->title);
        if (block->mirrors.size > 0) {
            strbuf_text(out, " mirrors ");
            text_quote(out, block->mirrors);
        }
    }
}

/* What stands behind a token, up to the next: across line ends, one blank. */
static void put_gap(struct strbuf *out, struct str gap)
{
    size_t from = 0;
    for (size_t i = 0; i < gap.size; i++) {
        from = gap.at[i] == '\n' || gap.at[i] == '\r' ? i + 1 : from;
    }
    if (from == 0) {
        strbuf_add(out, gap);
        return;
    }
    while (from < gap.size && (gap.at[from] == ' ' || gap.at[from] == '\t')) {
        from++;
    }
    strbuf_char(out, ' ');
    strbuf_add(out, (struct str){gap.at + from, gap.size - from});
}

void tidy_raw(struct strbuf *out, const struct sources *sources, const struct line *line)
{
    struct span span = line->span;
    for (size_t i = 0; i < line->count; i++) {
        strbuf_add(out, source_text(sources, (struct span){span.source, span.begin,
                                                           line->tokens[i].span.end}));
        span.begin = line->tokens[i].span.end;
        span.end = i + 1 < line->count ? line->tokens[i + 1].span.begin : line->span.end;
        put_gap(out, source_text(sources, span));
        span.begin = span.end;
    }
    if (line->count == 0) {
        strbuf_add(out, source_text(sources, span));
    }
}
