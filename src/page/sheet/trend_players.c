/* SPDX-License-Identifier: MIT */
/* trend_players: what was charted of a play by player: shares, or points a trip, with their
 * intervals. Takes one thing that was counted, gives rows. */
#include "page/sheet/trend.h"

#define SCALE_X 190.0
#define SCALE_WIDE 210.0

enum { FEW_OF_A_PLAYER = 10 };

static int roster_number(const struct rows *rows, struct str name)
{
    const struct team *team = &rows->setter.job->book->team;
    for (size_t i = 0; i < team->roster.count; i++) {
        if (str_equal_fold(team->roster.at[i].name, name)) {
            return team->roster.at[i].number;
        }
    }
    return name.size == 1 && name.at[0] >= '1' && name.at[0] <= '5' ? name.at[0] - '0' : 0;
}

/* The scale's right end: all of them, or so many points a trip. */
static double most_of(int kind)
{
    return kind == ROW_POINTS ? 3 : 1;
}

static void put_bar(const struct rows *rows, struct galley *row, int kind,
                    const struct by_player *player)
{
    struct arena *arena = rows->setter.arena;
    const double middle = ROW_BASE - 3.2, value_x = SCALE_X + SCALE_WIDE + 14;
    if (player->of < FEW_OF_A_PLAYER) {
        galley_dots(row, vec2_of(SCALE_X, middle), vec2_of(SCALE_X + SCALE_WIDE, middle), 0.8,
                    ROLE_COURT);
        galley_text(row, rows_set(rows, TYPE_SMALL_HEADING, STR("Too few to tell")), value_x,
                    ROW_BASE, ROLE_TEXT);
        return;
    }
    struct interval interval = trend_interval(kind, player->made, player->of);
    double value_of = (double)player->made / player->of, most = most_of(kind);
    galley_rule(row, vec2_of(SCALE_X + SCALE_WIDE * interval.low / most, middle),
                vec2_of(SCALE_X + SCALE_WIDE * interval.high / most, middle), 1.6, ROLE_INK);
    galley_dot(row, vec2_of(SCALE_X + SCALE_WIDE * real_min(value_of / most, 1), middle),
               TREND_DOT + 0.5, ROLE_INK, FILL_ROLE);
    const struct text_block *value =
        rows_set(rows, TYPE_SMALL_HEADING, trend_value(arena, kind, value_of));
    galley_text(row, value, value_x, ROW_BASE, ROLE_TEXT);
    struct str range = trend_range(arena, kind, interval);
    galley_text(row, rows_set(rows, TYPE_NOTE, range), value_x + text_width(value) + 5, ROW_BASE,
                ROLE_SOFT);
}

static int marks_of(int kind)
{
    return kind == ROW_POINTS ? 3 : 4;
}

static struct galley *player_row(const struct rows *rows, int kind, const struct by_player *player)
{
    struct arena *arena = rows->setter.arena;
    struct galley *row = galley_new(arena);
    int number = roster_number(rows, player->name);
    bool named = number == 0 || player->name.size > 1;
    for (int i = 0; i <= marks_of(kind); i++) {
        double x = SCALE_X + SCALE_WIDE * i / marks_of(kind);
        galley_rule(row, vec2_of(x, 0), vec2_of(x, ROW_BASE + 4.6), 0.4, ROLE_HAIRLINE);
    }
    if (number > 0) {
        galley_text(row, rows_set(rows, TYPE_HEADING, str_format(arena, "%d", number)), 0, ROW_BASE,
                    ROLE_TEXT);
    }
    if (named) {
        rows_name(rows, row, TYPE_SENTENCE, player->name, vec2_of(14, ROW_BASE), 96, 3);
    }
    struct str of = trend_count(arena, kind, player->made, player->of);
    galley_text(row, rows_set(rows, TYPE_SENTENCE, of), 118, ROW_BASE, ROLE_TEXT);
    put_bar(rows, row, kind, player);
    row_end(row, 0.5);
    return row;
}

static struct galley *scale_row(const struct rows *rows, int kind)
{
    struct galley *row = galley_new(rows->setter.arena);
    for (int i = 0; i <= marks_of(kind); i++) {
        struct str mark = kind == ROW_POINTS ? str_format(rows->setter.arena, "%d", i)
                                             : str_format(rows->setter.arena, "%d%%", 25 * i);
        galley_text_middle(row, rows_set(rows, TYPE_NOTE, mark),
                           SCALE_X + SCALE_WIDE * i / marks_of(kind), 10, ROLE_SOFT);
    }
    row_end(row, 0.5);
    return row;
}

void trend_players(struct rows *rows, const struct counted *counted)
{
    if (counted->players.count == 0) {
        return;
    }
    struct str title = str_format(rows->setter.arena, "By player: %.*s",
                                  STR_ARG(words_isolated(rows->setter.arena, counted->label)));
    title = words_fit(&rows->setter, TYPE_HEADING, title, 300, 1);
    struct galley *head = rows_section(rows, title, STR("All dates. For the coach only."));
    galley_lower(head, 0, 8);
    galley_join(head, scale_row(rows, counted->kind), 0, head->height);
    galley_join(head, player_row(rows, counted->kind, &counted->players.at[0]), 0, head->height);
    rows_add(rows, head);
    for (size_t i = 1; i < counted->players.count; i++) {
        rows_add(rows, player_row(rows, counted->kind, &counted->players.at[i]));
    }
}
