/* SPDX-License-Identifier: MIT */
/* counted: see counted.h. */
#include "page/sheet/counted.h"

#include "language/words/ast.h"
#include "page/sheet/words.h"

/* The text of the chart line; the word alone where it has none. */
static struct str label_of(struct arena *arena, const struct charted_row *row)
{
    point_list charts = {0};
    if (row->kind == ROW_POINTS) {
        return STR("Points a trip");
    }
    if (row->kind == ROW_READ) {
        return str_format(arena, "Read: %.*s", STR_ARG(words_isolated(arena, row->word)));
    }
    play_chart_words(arena, row->play, &charts);
    for (size_t i = 0; i < charts.count; i++) {
        if (str_equal_fold(charts.at[i].word, row->word)) {
            return charts.at[i].text;
        }
    }
    return row->word;
}

static struct counted *find(struct arena *arena, counted_list *out, const struct charted_row *row)
{
    struct str label = label_of(arena, row);
    for (size_t i = 0; i < out->count; i++) {
        if (out->at[i].kind == row->kind && str_equal_fold(out->at[i].label, label)) {
            return &out->at[i];
        }
    }
    struct counted counted = {.kind = row->kind, .label = label};
    VEC_PUSH(arena, out, counted);
    return &out->at[out->count - 1];
}

/* Film of a game is the game. */
static void add_day(struct arena *arena, struct counted *counted, const struct charted *charted,
                    const struct charted_row *row)
{
    bool game = charted->occasion != OCCASION_PRACTICE;
    struct day *last = counted->days.count ? &counted->days.at[counted->days.count - 1] : NULL;
    if (!last || !str_equal(last->date, charted->date) || last->game != game) {
        struct day day = {.date = charted->date, .number = charted_day(charted), .game = game};
        VEC_PUSH(arena, &counted->days, day);
        last = &counted->days.at[counted->days.count - 1];
    }
    last->made += row->made;
    last->of += row->of;
    counted->made += row->made;
    counted->of += row->of;
}

static void add_player(struct arena *arena, struct counted *counted, const struct charted_row *row)
{
    struct by_player *found = NULL;
    for (size_t i = 0; i < counted->players.count; i++) {
        struct by_player *player = &counted->players.at[i];
        found = str_equal_fold(player->name, row->by) ? player : found;
    }
    if (!found) {
        VEC_PUSH(arena, &counted->players, (struct by_player){.name = row->by});
        found = &counted->players.at[counted->players.count - 1];
    }
    found->made += row->made;
    found->of += row->of;
}

static void points_last(counted_list *out)
{
    for (size_t i = 0; i + 1 < out->count; i++) {
        if (out->at[i].kind == ROW_POINTS) {
            struct counted points = out->at[i];
            out->at[i] = out->at[i + 1];
            out->at[i + 1] = points;
        }
    }
}

void counted_gather(struct arena *arena, const struct season *season, const struct play *play,
                    counted_list *out)
{
    for (size_t i = 0; i < season->charted.count; i++) {
        const struct charted *charted = &season->charted.at[i];
        for (size_t k = 0; k < charted->rows.count; k++) {
            const struct charted_row *row = &charted->rows.at[k];
            if (row->play != play) {
                continue;
            }
            struct counted *counted = find(arena, out, row);
            /* A player's part of what the same day counts of all of them is counted there. */
            if (row->by.size == 0 || !charted_parts(charted, row).fit) {
                add_day(arena, counted, charted, row);
            }
            if (row->by.size > 0) {
                add_player(arena, counted, row);
            }
        }
    }
    points_last(out);
}
