/* SPDX-License-Identifier: MIT */
/* practice: one practice plan from its lines: the clock from item to item, plays and drills found,
 * who is in contact. */
#include "floor/season/maker.h"

#define WHOLE 1e-9 /* minutes: what two sums of minutes may differ by */

struct clocks { /* as written; -1 and 0: not */
    int starts, ends;
    double lasts;
    struct span ends_span, lasts_span;
};

/* ---- what is done ---- */

static bool has_defender(const struct play *play)
{
    bool found = play->defense != DEFENSE_NONE;
    for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        found = found || play->start[b].on_floor;
    }
    return found;
}

/* A play is a drill where a drill is named, and the other way round: said, and taken. */
static void find_play(struct season_maker *m, const struct plan_form *plan, struct plan_item *item)
{
    bool drill = plan->content == CONTENT_DRILL;
    item->play = play_named(m, plan->text);
    if (!item->play) {
        name_list names = {0}, others = {0};
        play_names(m, &names, drill, !drill);
        play_names(m, &others, !drill, drill);
        name_unknown(m, plan->text_span, drill ? "this book has no drill" : "this book has no play",
                     plan->text, &names, &others,
                     drill ? "write the drill in this book, or include it: include \"drills.play\""
                           : "write the play in this book, or include it: include \"motion.play\"");
    } else if (item->play->is_drill != drill) {
        struct diag *diag =
            diag_add(m->diags, DIAG_SEASON_NAME, plan->text_span, "\"%.*s\" is a %s, not a %s",
                     STR_ARG(plan->text), drill ? "play" : "drill", drill ? "drill" : "play");
        diag_help(m->diags, diag, "write `%s \"%.*s\"`", drill ? "play" : "drill",
                  STR_ARG(item->play->name));
    }
}

static struct str defense_words(struct season_maker *m, const struct setting_form *defense)
{
    static const char *const kinds[] = {
        [DEFENSE_NONE] = "no defense", [DEFENSE_MAN] = "man",
        [DEFENSE_ZONE] = "zone",       [DEFENSE_BOX_AND_ONE] = "box-and-one",
        [DEFENSE_PRESS] = "press",     [DEFENSE_TRIANGLE_AND_TWO] = "triangle-and-two"};
    static const char *const styles[] = {
        [MAN_GAP] = " gap", [MAN_DENY] = " deny", [MAN_SAG] = " sag"};
    struct strbuf out;
    strbuf_init(&out, m->arena);
    strbuf_text(&out, kinds[defense->defense]);
    strbuf_text(&out, defense->man_written ? styles[defense->man] : "");
    if (defense->zone.size > 0) {
        strbuf_print(&out, " %.*s", STR_ARG(defense->zone));
    }
    return strbuf_str(&out);
}

static struct plan_item make_item(struct season_maker *m, const struct form *form)
{
    const struct plan_form *plan = form->plan;
    struct plan_item item = {.minutes = plan->minutes,
                             .content = plan->content,
                             .text = plan->text,
                             .groups = plan->groups,
                             .with = plan->with,
                             .station = plan->station,
                             .change = plan->change,
                             .span = form->span};
    if (plan->kind == PLAN_STATIONS) {
        item.content = CONTENT_COUNT;
        return item;
    }
    if (plan->content == CONTENT_DRILL || plan->content == CONTENT_PLAY) {
        find_play(m, plan, &item);
    }
    if (plan->content == CONTENT_TEXT && play_named(m, plan->text)) {
        const struct play *play = play_named(m, plan->text);
        const char *word = play->is_drill ? "drill" : "play";
        struct diag *diag = diag_add(m->diags, DIAG_SEASON_TEXT, plan->text_span,
                                     "\"%.*s\" is taken as words, not as the %s of that name",
                                     STR_ARG(plan->text), word);
        diag_help(m->diags, diag, "write `%s \"%.*s\"` to have its diagram", word,
                  STR_ARG(play->name));
    }
    item.against = plan->against ? defense_words(m, plan->defense) : item.against;
    bool defended = plan->against ? plan->defense->defense != DEFENSE_NONE
                                  : item.play && has_defender(item.play);
    item.contact = plan->contact == CONTACT_BY_RULE ? defended : plan->contact == CONTACT_YES;
    item.passive = defended && !item.contact;
    return item;
}

/* The turns of the stations have to fill their time. */
static void hold_stations(struct season_maker *m, const struct plan_item *item)
{
    if (item->stations.count == 0) {
        struct diag *diag = diag_add(m->diags, DIAG_SEASON_STATIONS, item->span,
                                     "no station stands under these stations");
        diag_help(m->diags, diag, "add one: station \"Basket 1\" \"Finishing in pairs\"");
        return;
    }
    double turns = item->change * (double)item->stations.count;
    if (turns - item->minutes < WHOLE && item->minutes - turns < WHOLE) {
        return;
    }
    struct strbuf words;
    strbuf_init(&words, m->arena);
    strbuf_print(&words, "%zu station%s with a change every ", item->stations.count,
                 item->stations.count == 1 ? "" : "s");
    strbuf_number(&words, item->change, 2);
    strbuf_text(&words, " min take ");
    strbuf_number(&words, turns, 2);
    strbuf_text(&words, " min, not ");
    strbuf_number(&words, item->minutes, 2);
    struct diag *diag =
        diag_add(m->diags, DIAG_SEASON_STATIONS, item->span, "%.*s", STR_ARG(strbuf_str(&words)));
    struct strbuf help;
    strbuf_init(&help, m->arena);
    strbuf_text(&help, "write `stations ");
    strbuf_number(&help, turns, 2);
    strbuf_text(&help, " min, change every ");
    strbuf_number(&help, item->change, 2);
    diag_help(m->diags, diag, "%.*s min`", STR_ARG(strbuf_str(&help)));
}

/* ---- when ---- */

static void hold_times(struct season_maker *m, const struct clocks *clocks,
                       struct practice *practice)
{
    double between = clocks->ends - clocks->starts;
    bool both = clocks->starts >= 0 && clocks->ends >= 0;
    practice->starts = clocks->starts;
    practice->booked = clocks->lasts > 0 ? clocks->lasts : both ? between : 0;
    practice->booked_span = clocks->lasts > 0 ? clocks->lasts_span
                            : both            ? clocks->ends_span
                                              : practice->span;
    if (both && between <= 0) {
        struct diag *diag = diag_add(m->diags, DIAG_SEASON_TIME, clocks->ends_span,
                                     "the practice ends before it starts");
        diag_help(m->diags, diag, "times are on a clock of 24 hours: starts 17:30, ends 18:45");
        practice->booked = clocks->lasts;
    } else if (both && clocks->lasts > 0 &&
               (between - clocks->lasts > WHOLE || clocks->lasts - between > WHOLE)) {
        struct diag *diag = diag_add(m->diags, DIAG_SEASON_TIME, clocks->lasts_span,
                                     "from its start to its end are %d minutes", (int)between);
        diag_help(m->diags, diag, "keep `lasts` or `ends`, not both");
    } else if (clocks->ends >= 0 && clocks->starts < 0) {
        struct diag *diag = diag_add(m->diags, DIAG_SEASON_TIME, clocks->ends_span,
                                     "when it ends is said, when it starts is not");
        diag_help(m->diags, diag, "add `starts 17:30`, or write `lasts 75 min` instead");
    }
}

static void hold_lineup(struct season_maker *m, const struct plan_form *plan)
{
    name_list names = {0};
    for (size_t i = 0; i < m->plays->team.lineups.count; i++) {
        struct str title = m->plays->team.lineups.at[i].title;
        if (str_equal_fold(title, plan->text)) {
            return;
        }
        name_add(m, &names, title);
    }
    name_unknown(m, plan->text_span, "the team has no lineup", plan->text, &names, NULL,
                 "write it under team: lineup \"Big\" 1 \"Wren Halloway\", 2 \"Juno Marsh\"");
}

/* ---- what it adds up to ---- */

/* Minutes with contact: at stations everybody comes to each for its share of the time. */
static double contact_minutes(const struct plan_item *item)
{
    double minutes = 0;
    for (size_t i = 0; i < item->stations.count; i++) {
        minutes += item->stations.at[i].contact ? item->stations.at[i].minutes : 0;
    }
    return item->stations.count > 0 ? minutes : item->contact ? item->minutes : 0;
}

/* How many items with contact follow each other from this one on. */
static struct practice_row row_from(const struct practice *practice, size_t first)
{
    struct practice_row row = {.first = first};
    for (size_t i = first; i < practice->items.count && practice->items.at[i].contact; i++) {
        row.minutes += contact_minutes(&practice->items.at[i]);
        row.blocks++;
    }
    return row;
}

struct practice_sums practice_sum(const struct practice *practice)
{
    struct practice_sums sums = {0};
    double drunk = 0; /* when water ended last */
    for (size_t i = 0; i <= practice->items.count; i++) {
        bool end = i == practice->items.count;
        const struct plan_item *item = end ? NULL : &practice->items.at[i];
        if (end || item->content == CONTENT_WATER) {
            double begins = end ? practice->planned : item->begins;
            if (begins - drunk > sums.dry) {
                sums.dry = begins - drunk;
                sums.dry_from = drunk;
            }
            drunk = end ? begins : begins + item->minutes;
        }
        bool contact = !end && item->contact;
        sums.contact += contact ? contact_minutes(item) : 0;
        sums.blocks += contact;
        struct practice_row row = row_from(practice, i);
        sums.row = row.blocks > sums.row.blocks ? row : sums.row;
    }
    return sums;
}

typedef VEC(const struct play *) play_list;

static void add_play(struct arena *arena, play_list *plays, const struct plan_item *item)
{
    if (item->play) {
        VEC_PUSH(arena, plays, item->play);
    }
    for (size_t i = 0; i < item->stations.count; i++) {
        if (item->stations.at[i].play) {
            VEC_PUSH(arena, plays, item->stations.at[i].play);
        }
    }
}

struct practice_plays practice_plays(struct arena *arena, const struct practice *practice)
{
    play_list plays = {0};
    for (size_t i = 0; i < practice->items.count; i++) {
        add_play(arena, &plays, &practice->items.at[i]);
    }
    return (struct practice_plays){plays.at, plays.count};
}

static struct str minutes_words(struct season_maker *m, double minutes)
{
    struct strbuf out;
    strbuf_init(&out, m->arena);
    strbuf_number(&out, minutes, 2);
    strbuf_text(&out, " min");
    return strbuf_str(&out);
}

/* Contact items back to back, the whole stretch of them: the second is the first to be moved. */
static void hold_load(struct season_maker *m, const struct practice *practice)
{
    struct practice_row row;
    for (size_t i = 0; i<practice->items.count; i += row.blocks> 0 ? row.blocks : 1) {
        row = row_from(practice, i);
        if (row.blocks < 2) {
            continue;
        }
        struct str all = minutes_words(m, row.minutes);
        struct str from = minutes_words(m, practice->items.at[i].begins);
        struct diag *diag = diag_add(
            m->diags, DIAG_PRACTICE_LOAD, practice->items.at[i + 1].span,
            "%s blocks with contact follow each other: %.*s of contact, from minute %.*s on",
            plan_count(m->arena, row.blocks), STR_ARG(all), (int)from.size - 4, from.at);
        diag_help(m->diags, diag, "put `3 min water` or something without contact between");
    }
}

/* Minutes without water that nothing is said about. */
static double dry_most(const struct season_maker *m)
{
    enum { DRY_MOST = 25 }; /* common practice, no source */
    double most = DRY_MOST;
    for (size_t i = 0; m->plays->plays.count > 0 && i < m->plays->plays.at[0].limits.count; i++) {
        const struct limit_entry *limit = &m->plays->plays.at[0].limits.at[i];
        bool time = limit->unit == UNIT_MINUTES || limit->unit == UNIT_SECONDS;
        if (time && str_equal_fold(limit->check, STR("practice.break"))) {
            most = limit->value / 60;
        }
    }
    return most;
}

static void hold_sums(struct season_maker *m, const struct practice *practice)
{
    double over = practice->planned - practice->booked;
    if (practice->booked > 0 && over > WHOLE) {
        struct str planned = minutes_words(m, practice->planned);
        struct str booked = minutes_words(m, practice->booked);
        struct str more = minutes_words(m, over);
        struct diag *diag =
            diag_add(m->diags, DIAG_PRACTICE_OVER, practice->booked_span,
                     "the items take %.*s, %.*s are booked", STR_ARG(planned), STR_ARG(booked));
        diag_help(m->diags, diag, "shorten something by %.*s", STR_ARG(more));
    }
    hold_load(m, practice);
    struct practice_sums sums = practice_sum(practice);
    double most = practice->dry;
    if (sums.dry > most + WHOLE) {
        struct str enough = minutes_words(m, most); /* is what may go by, not what is to be drunk */
        struct str dry = minutes_words(m, sums.dry), from = minutes_words(m, sums.dry_from);
        struct diag *diag = diag_add(m->diags, DIAG_PRACTICE_BREAK, practice->span,
                                     "%.*s without water, from minute %.*s on", STR_ARG(dry),
                                     (int)from.size - 4, from.at);
        diag_help(m->diags, diag,
                  "write `3 min water` on a line of its own in between: %.*s go by "
                  "without a break at most",
                  STR_ARG(enough));
    }
}

/* ---- lines ---- */

static void add_item(struct season_maker *m, struct practice *practice, const struct form *form)
{
    struct plan_item item = make_item(m, form);
    item.begins = practice->planned;
    practice->planned += item.minutes;
    VEC_PUSH(m->arena, &practice->items, item);
}

static void add_station(struct season_maker *m, struct practice *practice, const struct form *form)
{
    struct plan_item station = make_item(m, form);
    struct plan_item *above = &practice->items.at[practice->items.count - 1];
    station.begins = above->begins;
    station.minutes = above->change;
    above->contact = above->contact || station.contact;
    VEC_PUSH(m->arena, &above->stations, station);
}

static void take_line(struct season_maker *m, struct practice *practice, struct clocks *clocks,
                      const struct form *form)
{
    const struct plan_form *plan = form->plan;
    switch (plan->kind) {
    case PLAN_STARTS:
        clocks->starts = plan->clock;
        break;
    case PLAN_ENDS:
        clocks->ends = plan->clock;
        clocks->ends_span = form->span;
        break;
    case PLAN_LASTS:
        clocks->lasts = plan->minutes;
        clocks->lasts_span = form->span;
        break;
    case PLAN_ABOUT:
        practice->about = plan->text;
        break;
    case PLAN_LINEUP:
        practice->lineup = plan->text;
        hold_lineup(m, plan);
        break;
    case PLAN_STATION:
        add_station(m, practice, form);
        break;
    case PLAN_ITEM:
    case PLAN_STATIONS:
        add_item(m, practice, form);
        break;
    }
}

/* Its lines may be those that could not be read: what is wrong with them is said already. */
static bool has_errors(const struct season_maker *m, const struct block *block, uint32_t end)
{
    bool found = false;
    for (size_t i = 0; i < m->diags->all.count; i++) {
        const struct diag *diag = &m->diags->all.at[i];
        found =
            found || (diag->severity == SEVERITY_ERROR && diag->span.source == block->span.source &&
                      diag->span.begin > block->span.end && diag->span.begin < end);
    }
    return found;
}

void practice_make(struct season_maker *m, const struct block *block, uint32_t end)
{
    struct practice practice = {.title = block->title, .span = block->span, .dry = dry_most(m)};
    struct clocks clocks = {.starts = -1, .ends = -1};
    for (size_t i = 0; i < block->forms.count; i++) {
        if (block->forms.at[i].kind == FORM_PLAN) {
            take_line(m, &practice, &clocks, &block->forms.at[i]);
        }
    }
    hold_times(m, &clocks, &practice);
    if (practice.items.count == 0 && !has_errors(m, block, end)) {
        struct diag *diag =
            diag_add(m->diags, DIAG_SEASON_EMPTY, block->span, "nothing is done in this practice");
        diag_help(m->diags, diag, "add what is, with its minutes: 10 min warm-up");
    }
    for (size_t i = 0; i < practice.items.count; i++) {
        if (practice.items.at[i].content == CONTENT_COUNT) {
            hold_stations(m, &practice.items.at[i]);
        }
    }
    hold_sums(m, &practice);
    VEC_PUSH(m->arena, &m->out->practices, practice);
}
