/* SPDX-License-Identifier: MIT */
/* charted: the rows of one day, with the names of plays, chart lines, reads and players found. */
#include "floor/season/maker.h"

static bool find_chart(struct season_maker *m, const struct row_form *row, const struct play *play)
{
    point_list charts = {0};
    name_list names = {0};
    play_chart_words(m->arena, play, &charts);
    for (size_t i = 0; i < charts.count; i++) {
        if (str_equal_fold(charts.at[i].word, row->word)) {
            return true;
        }
        name_add(m, &names, charts.at[i].word);
    }
    name_unknown(m, row->word_span, "this play has no chart line", row->word, &names, NULL,
                 "add it under the step it belongs to: chart set \"Screen set on the defender\"");
    return false;
}

static bool find_read(struct season_maker *m, const struct row_form *row, const struct play *play)
{
    name_list names = {0};
    for (size_t i = 0; i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        for (size_t k = 0; k < step->branches.count; k++) {
            if (str_equal_fold(step->branches.at[k].title, row->word)) {
                return true;
            }
            name_add(m, &names, step->branches.at[k].title);
        }
    }
    name_unknown(m, row->word_span, "this play has no read or option", row->word, &names, NULL,
                 "name a read by its title: read x3 trails \"Curl\"");
    return false;
}

/* Which of the two was it? */
static void say_two(struct season_maker *m, const struct row_form *row, struct team_found found)
{
    const struct roster_entry *one = found.entry, *other = found.other;
    struct diag *diag;
    if (!str_equal_fold(one->name, other->name)) {
        diag = diag_add(m->diags, DIAG_SEASON_NAME, row->by_span,
                        "\"%.*s\" may be \"%.*s\" or \"%.*s\"", STR_ARG(row->by),
                        STR_ARG(one->name), STR_ARG(other->name));
        diag_help(m->diags, diag, "write the whole name: by \"%.*s\"", STR_ARG(one->name));
        return;
    }
    diag = diag_add(m->diags, DIAG_SEASON_NAME, row->by_span, "two players are called \"%.*s\"",
                    STR_ARG(one->name));
    if (one->jersey.size > 0 && other->jersey.size > 0) {
        diag_help(m->diags, diag, "write whose jersey it was: by \"#%.*s\" or by \"#%.*s\"",
                  STR_ARG(one->jersey), STR_ARG(other->jersey));
    } else {
        diag_help(m->diags, diag, "tell the two apart in the roster");
    }
}

/* A part of a name is enough while nobody else has it. */
static void note_part(struct season_maker *m, const struct row_form *row, struct team_found found)
{
    if (found.whole || row->by.at[0] == '#') {
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_SEASON_PART, row->by_span, "\"%.*s\" is taken for \"%.*s\"",
                 STR_ARG(row->by), STR_ARG(found.entry->name));
    diag_help(m->diags, diag, "the whole name stays right when another \"%.*s\" joins the team",
              STR_ARG(row->by));
}

/* A spot that two players have does not say which of them it was: said once. */
static void note_spot(struct season_maker *m, const struct row_form *row)
{
    const struct team *team = &m->plays->team;
    const struct roster_entry *one = NULL;
    for (size_t i = 0; i < team->roster.count && !m->spot_told; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (entry->number != row->player) {
            continue;
        }
        if (!one) {
            one = entry;
        } else if (!str_equal_fold(entry->name, one->name)) {
            m->spot_told = true;
            struct diag *diag =
                diag_add(m->diags, DIAG_SEASON_SPOT, row->by_span,
                         "%d is the spot of \"%.*s\" and of \"%.*s\": it is counted for neither",
                         row->player, STR_ARG(one->name), STR_ARG(entry->name));
            diag_help(m->diags, diag, "write who it was: by \"%.*s\"", STR_ARG(one->name));
        }
    }
}

/* by 5: the spot, while somebody who plays elsewhere wears a 5: said once. */
static void note_worn(struct season_maker *m, const struct row_form *row)
{
    const struct team *team = &m->plays->team;
    struct str number = str_format(m->arena, "%d", row->player);
    const struct roster_entry *wears = NULL;
    for (size_t i = 0; i < team->roster.count && !m->worn_told; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (str_equal(entry->jersey, number)) {
            wears = wears ? wears : entry;
            if (entry->number == row->player) { /* hers is both */
                return;
            }
        }
    }
    if (!wears) {
        return;
    }
    m->worn_told = true;
    struct diag *diag = diag_add(m->diags, DIAG_SEASON_WORN, row->by_span,
                                 "`by %d` is the spot %d; the jersey %d is \"%.*s\"'s", row->player,
                                 row->player, row->player, STR_ARG(wears->name));
    diag_help(m->diags, diag, "to count it for \"%.*s\", write by \"#%d\"", STR_ARG(wears->name),
              row->player);
}

/* Without a roster any name will do, and nobody can be looked up: said once. */
static void note_no_roster(struct season_maker *m, const struct row_form *row)
{
    if (m->roster_told || row->by.size == 0) {
        return;
    }
    m->roster_told = true;
    struct diag *diag = diag_add(m->diags, DIAG_SEASON_NO_ROSTER, row->by_span,
                                 "this book has no roster to find \"%.*s\" in", STR_ARG(row->by));
    diag_help(m->diags, diag, "write it under `team`, one a line: `1 \"%.*s\"`", STR_ARG(row->by));
}

/* What she is counted under: with her jersey where another has her name. */
static struct str counted_as(struct season_maker *m, const struct roster_entry *her)
{
    const struct team *team = &m->plays->team;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (str_equal_fold(entry->name, her->name) && !str_equal(entry->jersey, her->jersey) &&
            entry->jersey.size > 0 && her->jersey.size > 0) {
            return str_format(m->arena, "%.*s #%.*s", STR_ARG(her->name), STR_ARG(her->jersey));
        }
    }
    return her->name;
}

static bool find_player(struct season_maker *m, const struct row_form *row, struct charted_row *out)
{
    const struct team *team = &m->plays->team;
    out->by = row->by;
    if (row->player > 0) {
        note_spot(m, row);
        note_worn(m, row);
        out->by = str_format(m->arena, "%d", row->player);
        return true;
    }
    if (row->by.size == 0 || team->roster.count == 0) {
        note_no_roster(m, row);
        return true;
    }
    struct team_found found = team_find(team, row->by);
    if (found.other) {
        say_two(m, row, found);
    } else if (found.entry) {
        note_part(m, row, found);
        out->by = counted_as(m, found.entry);
    } else {
        name_list names = {0};
        for (size_t i = 0; i < team->roster.count; i++) {
            name_add(m, &names, team->roster.at[i].name);
        }
        name_unknown(m, row->by_span, "nobody on the roster is called", row->by, &names, NULL, "");
    }
    return found.entry && !found.other;
}

static bool same_row(const struct charted_row *a, const struct charted_row *b)
{
    return a->kind == b->kind && a->play == b->play && a->made == b->made && a->of == b->of &&
           str_equal_fold(a->word, b->word) && str_equal_fold(a->by, b->by);
}

static bool same_day(const struct charted *a, const struct charted *b)
{
    return a->occasion == b->occasion && str_equal(a->date, b->date) &&
           str_equal_fold(a->where, b->where);
}

/* What was counted once would be added up twice. */
static void hold_row(struct season_maker *m, const struct charted *rows,
                     const struct charted_row *own, struct span span)
{
    for (size_t i = 0; i < rows->rows.count; i++) {
        const struct charted_row *other = &rows->rows.at[i];
        if (same_row(other, own)) {
            struct diag *diag =
                diag_add(m->diags, DIAG_SEASON_ROW_TWICE, span,
                         "this row stands under this day already: both are counted");
            diag_help(m->diags, diag, "take one of the two out");
            if (diag) {
                diag->other = other->span;
            }
            return;
        }
    }
}

/* More than a three on every trip. */
static void hold_points(struct season_maker *m, const struct row_form *row)
{
    enum { MOST = 3 };
    if (row->kind != ROW_POINTS || row->made <= MOST * row->of) {
        return;
    }
    struct diag *diag = diag_add(m->diags, DIAG_SEASON_POINTS, row->count_span,
                                 "%d points in %d trip%s: that is more than a three every time",
                                 row->made, row->of, row->of == 1 ? "" : "s");
    diag_help(m->diags, diag,
              "the points stand first, then how often it was run; a fourth point is a free throw");
}

static void take_row(struct season_maker *m, struct charted *charted, const struct form *form)
{
    const struct row_form *row = form->row;
    struct charted_row out = {.kind = (int)row->kind,
                              .play = play_named(m, row->play),
                              .word = row->word,
                              .made = row->made,
                              .of = row->of,
                              .span = form->span};
    if (!out.play) {
        name_list names = {0};
        play_names(m, &names, true, true);
        name_unknown(m, row->play_span, "this book has no play", row->play, &names, NULL,
                     "include the play: include \"motion.play\"");
        return;
    }
    bool fine = row->kind == ROW_CHART  ? find_chart(m, row, out.play)
                : row->kind == ROW_READ ? find_read(m, row, out.play)
                                        : true;
    hold_points(m, row);
    if (find_player(m, row, &out) && fine) {
        hold_row(m, charted, &out, form->span);
        for (size_t i = 0; i < m->out->charted.count; i++) {
            const struct charted *other = &m->out->charted.at[i];
            if (same_day(other, charted)) {
                hold_row(m, other, &out, form->span);
            }
        }
        VEC_PUSH(m->arena, &charted->rows, out);
    }
}

struct charted_parts charted_parts(const struct charted *charted, const struct charted_row *row)
{
    struct charted_parts parts = {.whole = NULL};
    for (size_t i = 0; i < charted->rows.count; i++) {
        const struct charted_row *other = &charted->rows.at[i];
        if (other->kind != row->kind || other->play != row->play ||
            !str_equal_fold(other->word, row->word)) {
            continue;
        }
        if (other->by.size == 0) {
            parts.whole = other;
            continue;
        }
        parts.part = other;
        parts.made += other->made;
        parts.of += other->of;
    }
    parts.fit = parts.whole && parts.made <= parts.whole->made && parts.of <= parts.whole->of;
    return parts;
}

/* Do players' rows fit into the row that counts all of them? */
static void hold_parts(struct season_maker *m, const struct charted *charted,
                       const struct charted_row *row)
{
    struct charted_parts parts = charted_parts(charted, row);
    if (parts.whole != row || !parts.part || parts.fit) {
        return;
    }
    struct diag *diag = diag_add(m->diags, DIAG_SEASON_OVER, row->span,
                                 "players' rows are %d of %d together, and this one, which counts "
                                 "all, is %d of %d: both are counted",
                                 parts.made, parts.of, row->made, row->of);
    diag_help(m->diags, diag, "mend the counts; a row of others has a name too: by \"…\"");
    if (diag) {
        diag->other = parts.part->span;
    }
}

void charted_make(struct season_maker *m, const struct block *block)
{
    struct charted charted = {.date = block->date,
                              .where = block->title,
                              .occasion = block->occasion,
                              .span = block->span};
    for (size_t i = 0; i < block->forms.count; i++) {
        if (block->forms.at[i].kind == FORM_ROW) {
            take_row(m, &charted, &block->forms.at[i]);
        }
    }
    for (size_t i = 0; i < charted.rows.count; i++) {
        hold_parts(m, &charted, &charted.rows.at[i]);
    }
    VEC_PUSH(m->arena, &m->out->charted, charted);
}

static int digits(struct str text, size_t from, size_t count)
{
    int value = 0;
    for (size_t i = from; i < from + count; i++) {
        value = value * 10 + (text.at[i] - '0');
    }
    return value;
}

int charted_day(const struct charted *charted)
{
    struct str date = charted->date; /* "2026-12-01", and it exists */
    int year = digits(date, 0, 4), month = digits(date, 5, 2), day = digits(date, 8, 2);
    year -= month <= 2; /* a year from March on: the leap day is its last */
    int shifted = month > 2 ? month - 3 : month + 9;
    return 365 * year + year / 4 - year / 100 + year / 400 + (153 * shifted + 2) / 5 + day;
}

/* Those in front of a gap of more than a year, or those behind it: the fewer are told, once. */
void charted_hold_days(struct season_maker *m)
{
    enum { YEAR = 366 };
    const size_t count = m->out->charted.count;
    const struct charted *days = m->out->charted.at;
    for (size_t i = 1; i < count; i++) {
        if (charted_day(&days[i]) - charted_day(&days[i - 1]) <= YEAR) {
            continue;
        }
        const struct charted *far = i * 2 < count ? &days[i - 1] : &days[i];
        const struct charted *other = far == &days[i] ? &days[i - 1] : &days[i];
        struct diag *diag =
            diag_add(m->diags, DIAG_SEASON_DAY, far->span,
                     "more than a year lies between this day and %.*s", STR_ARG(other->date));
        diag_help(m->diags, diag, "is the year right?");
    }
}
