/* SPDX-License-Identifier: MIT */
/* chart: the tally sheet. Takes plays that were run, gives a PDF to be filled in by hand: what the
 * play's `chart` lines name by trip, strokes by player, what the defense did in each read. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/rows.h"
#include "page/sheet/telling.h"
#include "page/sheet/typed.h"

#define LABEL_WIDE 144.0
#define BOXES_X 150.0
#define BOX_WIDE 14.0
#define BOX_HIGH 16.0
#define BOX_PITCH 15.7
#define AFTER_FIVE 3.0
#define TOTAL_WIDE 26.0
#define ROW_PITCH 21.0
#define PLAYER_PITCH 22.6
#define PITCH_LEAST 19.5
#define TABLE_END 12.0
#define PLAYER_X 120.0
#define PLAYER_GAP 4.0
#define LEAST_LABEL_LINES 4 /* rows to write on where the play names few */

enum { TRIPS = 20, COLUMNS = 5, EMPTY_PLAYERS = 2 };

/* "Against ____  Date ____  Half or quarter ____  Charted by ____" */
static struct galley *facts_row(const struct rows *rows)
{
    static const struct {
        const char *word;
        double line;
    } facts[] = {{"Against", 112}, {"Date", 52}, {"Half or quarter", 24}, {"Charted by", 0}};
    struct galley *row = galley_new(rows->setter.arena);
    double x = 0;
    for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
        const struct text_block *word = rows_set(rows, TYPE_POINT, str_of(facts[i].word));
        galley_text(row, word, x, 8, ROLE_SOFT);
        x += text_width(word) + 5;
        double end = facts[i].line > 0 ? x + facts[i].line : PAGE_WIDE;
        galley_rule(row, vec2_of(x, 10), vec2_of(end, 10), 0.8, ROLE_INK);
        x = end + 12;
    }
    row->height = 16;
    return row;
}

/* What a further page opens with: loose, it says of which game it is. */
static struct galley *with_facts(const struct rows *rows, const struct galley *columns)
{
    struct galley *row = galley_new(rows->setter.arena);
    galley_join(row, facts_row(rows), 0, 0);
    galley_join(row, columns, 0, row->height);
    return row;
}

/* ---- by trip ---- */

static double box_x(int trip)
{
    return BOXES_X + trip * BOX_PITCH + trip / 5 * AFTER_FIVE;
}

static struct galley *trips_row(const struct rows *rows)
{
    struct galley *row = galley_new(rows->setter.arena);
    for (int trip = 0; trip < TRIPS; trip++) {
        struct str number = str_format(rows->setter.arena, "%d", trip + 1);
        bool fifth = trip % 5 == 4;
        galley_text_middle(row, rows_set(rows, fifth ? TYPE_DISC : TYPE_NOTE, number),
                           box_x(trip) + BOX_WIDE / 2, 11, fifth ? ROLE_TEXT : ROLE_SOFT);
    }
    galley_text_end(row, rows_set(rows, TYPE_DISC, STR("Total")), PAGE_WIDE, 11, ROLE_TEXT);
    row->height = 15;
    return row;
}

/* An empty label is a line to write on. */
static struct galley *trip_row(const struct rows *rows, struct str label, enum type type)
{
    struct galley *row = galley_new(rows->setter.arena);
    const struct text_block *words = words_set(&rows->setter, type, label, LABEL_WIDE);
    double lines = (double)text_lines(words);
    double below = lines > 1 ? (lines - 1) * type_leading(type) / 2 : 0;
    double base = 11.5 - below;
    if (label.size > 0) {
        galley_text(row, words, 0, base > 8 ? base : 8, ROLE_TEXT);
    } else {
        galley_rule(row, vec2_of(0, BOX_HIGH), vec2_of(LABEL_WIDE - 8, BOX_HIGH), 0.5, ROLE_RULE);
    }
    double top = row->height > BOX_HIGH + 4 ? (row->height - BOX_HIGH) / 2 : 0;
    for (int trip = 0; trip < TRIPS; trip++) {
        galley_box(row, vec2_of(box_x(trip), top), vec2_of(box_x(trip) + BOX_WIDE, top + BOX_HIGH),
                   0.6, ROLE_COURT, FILL_OPEN);
    }
    galley_box(row, vec2_of(PAGE_WIDE - TOTAL_WIDE, top), vec2_of(PAGE_WIDE, top + BOX_HIGH), 1.0,
               ROLE_INK, FILL_OPEN);
    row->height = row->height > ROW_PITCH ? row->height + 3 : ROW_PITCH;
    return row;
}

/* "Set: screen set on the defender": the word that its column of strokes has. */
static struct str label_of(const struct rows *rows, const struct point *chart)
{
    struct arena *arena = rows->setter.arena;
    struct str word = str_capital(arena, chart->word);
    return word.size > 0 ? str_format(arena, "%c%.*s:%c %.*s", TELL_BOLD, STR_ARG(word), TELL_PLAIN,
                                      STR_ARG(chart->text))
                         : chart->text;
}

static void add_trips(struct rows *rows, const point_list *charts)
{
    rows_add(rows,
             rows_section(rows, STR("By trip"),
                          STR("Tick what you saw. Ring the tick if a score came of it. Leave the "
                              "rest empty.")));
    rows_add(rows, trips_row(rows));
    rows->columns = with_facts(rows, trips_row(rows));
    for (size_t i = 0; i < charts->count || i < LEAST_LABEL_LINES; i++) {
        struct str label = i < charts->count ? label_of(rows, &charts->at[i]) : STR("");
        rows_add(rows, trip_row(rows, label, TYPE_POINT));
    }
    struct galley *points = galley_new(rows->setter.arena);
    galley_rule(points, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.5, ROLE_RULE);
    galley_join(points, trip_row(rows, STR("Points on the trip"), TYPE_SMALL_HEADING), 0, 5);
    galley_rule(points, vec2_of(0, points->height), vec2_of(PAGE_WIDE, points->height), 0.9,
                ROLE_INK);
    points->height += 12;
    rows_add(rows, points);
    rows->columns = NULL;
}

/* ---- by player ---- */

static double column_x(int column)
{
    return PLAYER_X + column * (PAGE_WIDE - PLAYER_X) / COLUMNS;
}

/* What is counted of a player, as `charted` has it: the words of the chart lines, and where the
 * table has room for all of them the reads by their titles. */
typedef VEC(struct str) word_list;
static word_list counted_words(const struct rows *rows, const struct play *play,
                               const point_list *charts)
{
    struct arena *arena = rows->setter.arena;
    word_list words = {0};
    branch_list reads = play_reads(arena, play);
    for (size_t i = 0; i < charts->count; i++) {
        VEC_PUSH(arena, &words, str_capital(arena, charts->at[i].word));
    }
    size_t last = words.count % COLUMNS;
    size_t room = words.count > 0 && last == 0 ? 0 : COLUMNS - last;
    for (size_t i = 0; i < reads.count && reads.count <= room; i++) {
        VEC_PUSH(arena, &words, words_isolated(arena, reads.at[i]->title));
    }
    return words;
}

/* What is left over is for the one who counts to name. */
static struct galley *columns_row(const struct rows *rows, const word_list *words, size_t from)
{
    struct galley *row = galley_new(rows->setter.arena);
    for (int i = 0; i < COLUMNS; i++) {
        double x = column_x(i), end = column_x(i + 1) - PLAYER_GAP;
        if (from + (size_t)i < words->count) {
            struct str word =
                words_fit(&rows->setter, TYPE_DISC, words->at[from + (size_t)i], end - x, 1);
            galley_text(row, rows_set(rows, TYPE_DISC, word), x, 11, ROLE_TEXT);
        } else {
            galley_rule(row, vec2_of(x, 12), vec2_of(end, 12), 0.5, ROLE_RULE);
        }
    }
    row->height = 16;
    return row;
}

/* Players of the roster, each with her spots: "1/5", and who she is: "Imke #4", without names "#4".
 */
struct counted_player {
    const struct roster_entry *entry;
    struct str spots;
};

static size_t players_of(const struct rows *rows, struct counted_player *players)
{
    const struct team *team = &rows->setter.job->book->team;
    size_t count = 0;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        size_t k = 0;
        while (k < count && !team_same_player(players[k].entry, entry)) {
            k++;
        }
        if (k < count) {
            players[k].spots =
                str_format(rows->setter.arena, "%.*s/%d", STR_ARG(players[k].spots), entry->number);
        } else {
            players[count++] =
                (struct counted_player){entry, str_format(rows->setter.arena, "%d", entry->number)};
        }
    }
    return count;
}

/* Players are mostly minors, and tally sheets lie about: names where they are asked for. */
static struct str who_told(const struct rows *rows, const struct roster_entry *entry)
{
    struct arena *arena = rows->setter.arena;
    struct str name =
        rows->setter.job->names ? words_isolated(arena, team_first_of(entry->name)) : STR("");
    return entry->jersey.size > 0 ? str_format(arena, "%.*s%s#%.*s", STR_ARG(name),
                                               name.size > 0 ? " " : "", STR_ARG(entry->jersey))
                                  : name;
}

/* NULL: for one to be written in. */
static struct galley *player_row(const struct rows *rows, const struct counted_player *player,
                                 double pitch)
{
    struct galley *row = galley_new(rows->setter.arena);
    galley_rule(row, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.5, ROLE_RULE);
    if (player) {
        const struct text_block *spots = rows_set(rows, TYPE_HEADING, player->spots);
        double x = real_max(14, text_width(spots) + 6);
        galley_text(row, spots, 0, 14.5, ROLE_TEXT);
        rows_name(rows, row, TYPE_SENTENCE, who_told(rows, player->entry), vec2_of(x, 14.5),
                  PLAYER_X - x - PLAYER_GAP, 5);
    }
    for (int i = 0; i < COLUMNS; i++) {
        double x = column_x(i), end = column_x(i + 1) - PLAYER_GAP;
        galley_box(row, vec2_of(x, 3), vec2_of(end, pitch - 2.6), 0.6, ROLE_COURT, FILL_OPEN);
        double middle = (x + end) / 2;
        galley_rule(row, vec2_of(middle, 3), vec2_of(middle, pitch - 2.6), 0.4, ROLE_COURT);
    }
    row->height = real_max(row->height + 2, pitch);
    return row;
}

/* Rows are a little less high where so the last of them stay on the page. */
static double pitch_of(double room, size_t players)
{
    double each = players > 0 ? room / (double)players : PLAYER_PITCH;
    return each >= PITCH_LEAST && each < PLAYER_PITCH ? each : PLAYER_PITCH;
}

/* One table: five words, all players; `after`: what is to stay on the page with it, if it can. */
static void add_table(struct rows *rows, const word_list *words, size_t from, double after)
{
    struct counted_player *players = arena_array(rows->setter.arena, struct counted_player,
                                                 rows->setter.job->book->team.roster.count + 1);
    struct galley *head = rows_section(rows, from == 0 ? STR("By player") : STR("By player, more"),
                                       STR("Strokes: left of the line when it was done, right of "
                                           "it when not."));
    galley_join(head, columns_row(rows, words, from), 0, head->height);
    rows_add(rows, head);
    rows->columns = with_facts(rows, columns_row(rows, words, from));
    size_t known = players_of(rows, players), empty = known > 0 ? EMPTY_PLAYERS : 5;
    double room = rows_room(rows) - TABLE_END;
    after = room - (double)known * PITCH_LEAST >= after ? after : 0;
    double pitch = pitch_of(room - after, known);
    for (size_t i = 0; i < known; i++) {
        rows_add(rows, player_row(rows, &players[i], pitch));
    }
    for (size_t i = 0; i < empty; i++) { /* no page for lines to write on alone */
        if (known == 0 || rows_room(rows) >= pitch + TABLE_END + after) {
            rows_add(rows, player_row(rows, NULL, pitch));
        }
    }
    struct galley *end = galley_new(rows->setter.arena);
    galley_rule(end, vec2_of(0, 0), vec2_of(PAGE_WIDE, 0), 0.9, ROLE_INK);
    end->height = TABLE_END;
    if (rows_room(rows) >= TABLE_END) { /* no page for a rule alone */
        rows_add(rows, end);
    }
    rows->columns = NULL;
}

static void add_players(struct rows *rows, const struct play *play, const point_list *charts,
                        double after)
{
    word_list words = counted_words(rows, play, charts);
    for (size_t from = 0; from == 0 || from < words.count; from += COLUMNS) {
        add_table(rows, &words, from, from + COLUMNS >= words.count ? after : 0);
    }
}

/* ---- reads ---- */

/* "Times [ ]  Answer [ ]  Score [ ]"; in a narrow column the first on a line of its own, so that
 * there is room to write. */
static void put_counts(const struct rows *rows, struct galley *row, double x, double width,
                       double top)
{
    static const char *const words[] = {"Times", "Answer", "Score"};
    const double high = 15, pitch = 19, least = 140, gap = 4;
    bool narrow = width < least;
    for (int i = 0; i < 3; i++) {
        int column = narrow && i > 0 ? i - 1 : i, columns = narrow ? 2 : 3;
        double y = narrow && i > 0 ? top + pitch : top;
        double at = x + width * column / columns, end = x + width * (column + 1) / columns - gap;
        const struct text_block *word = rows_set(rows, TYPE_NOTE, str_of(words[i]));
        galley_text(row, word, at, y + 10.5, ROLE_TEXT);
        galley_box(row, vec2_of(at + text_width(word) + 3, y), vec2_of(end, y + high),
                   i == 0 ? 1.0 : 0.6, i == 0 ? ROLE_INK : ROLE_COURT, FILL_OPEN);
    }
}

/* "1a  x3 trails: Curl" */
static const struct text_block *read_title(const struct rows *rows, const struct play *play,
                                           const struct diagram *diagram, double width)
{
    const struct step *step = &play->steps.at[diagram->step];
    struct str words = tell_branch(rows->setter.arena, &step->branches.at[diagram->branch]);
    struct str title = str_format(rows->setter.arena, "%.*s  %.*s", STR_ARG(diagram->label),
                                  STR_ARG(words_isolated(rows->setter.arena, words)));
    return words_set(&rows->setter, TYPE_SMALL_HEADING, title, width);
}

static struct galley *reads_row(const struct rows *rows, const struct play *play,
                                const diagram_list *diagrams, size_t from, size_t count,
                                size_t across)
{
    const double gutter = across == 4 ? 14.4 : 24;
    double width = (PAGE_WIDE - gutter * (double)(across - 1)) / (double)across;
    struct galley *row = galley_new(rows->setter.arena);
    const struct scene *scenes[4];
    const struct text_block *titles[4];
    double high = 0;
    size_t lines = 1;
    for (size_t i = 0; i < count; i++) {
        struct scene_options options = {.width = width,
                                        .theme = THEME_PRINT,
                                        .accent = BODY_NONE,
                                        .plain = true}; /* no sentence stands under it */
        scenes[i] = scene_make(rows->setter.arena, &diagrams->at[from + i], &options);
        titles[i] = read_title(rows, play, &diagrams->at[from + i], width);
        high = scenes[i]->height > high ? scenes[i]->height : high;
        lines = text_lines(titles[i]) > lines ? text_lines(titles[i]) : lines;
    }
    double top = ROW_BASE + 6 + (double)(lines - 1) * type_leading(TYPE_SMALL_HEADING);
    for (size_t i = 0; i < count; i++) {
        double x = (width + gutter) * (double)i;
        galley_text(row, titles[i], x, ROW_BASE, ROLE_TEXT);
        galley_keep(row);
        galley_scene(row, scenes[i], x, top);
        put_counts(rows, row, x, width, top + high + 5);
    }
    row->height += 8;
    return row;
}

typedef VEC(struct galley *) galley_list;
static galley_list make_reads(const struct rows *rows, const struct run *run)
{
    diagram_list diagrams = {0}, reads = {0};
    galley_list made = {0};
    scene_diagrams(rows->setter.arena, run, &diagrams);
    for (size_t s = 0; s < run->play->steps.count; s++) {
        reads.count = 0;
        for (size_t i = 0; i < diagrams.count; i++) {
            if (diagrams.at[i].step == (int)s && diagrams.at[i].branch >= 0) {
                VEC_PUSH(rows->setter.arena, &reads, diagrams.at[i]);
            }
        }
        size_t across = reads.count == 4 ? 4 : 3;
        for (size_t from = 0; from < reads.count; from += across) {
            size_t left = reads.count - from, count = left < across ? left : across;
            struct galley *row = reads_row(rows, run->play, &reads, from, count, across);
            if (from == 0) {
                struct str title =
                    tell_decides(rows->setter.arena, run->play, &run->play->steps.at[s], BODY_NONE);
                struct galley *head =
                    rows_section(rows, title, STR("Answer: what the sheet says was done."));
                galley_join(head, row, 0, head->height);
                row = head;
            }
            VEC_PUSH(rows->setter.arena, &made, row);
        }
    }
    return made;
}

static double height_of(const galley_list *reads)
{
    double height = 0;
    for (size_t i = 0; i < reads->count; i++) {
        height += reads->at[i]->height;
    }
    return height;
}

static void add_reads(struct rows *rows, const galley_list *reads)
{
    rows->columns = facts_row(rows);
    for (size_t i = 0; i < reads->count; i++) {
        rows_add(rows, reads->at[i]);
    }
    rows->columns = NULL;
}

/* ---- the sheet ---- */

static void add_play(struct booklet *booklet, const struct sheet_play *row)
{
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    struct rows rows = {.setter = booklet->setter};
    const struct play *play = row->play;
    struct head_words *head = arena_new(arena, struct head_words);
    *head = head_of_play(arena, play, STR("Tally sheet"));
    head->clock = head->about = STR("");
    struct caution caution = caution_of_play(play);
    point_list charts = {0};
    play_chart_words(arena, play, &charts);
    rows_open(&rows, head, &caution);
    rows_add(&rows, facts_row(&rows));
    add_trips(&rows, &charts);
    galley_list reads = make_reads(&rows, booklet_run(&rows.setter, row));
    add_players(&rows, play, &charts, height_of(&reads));
    add_reads(&rows, &reads);
    typed_add(&rows, play, &charts);
    rows_notes(&rows, 1);
    rows_close(&rows, booklet, play->name);
    arena_release(arena, mark);
}

bool chart_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    struct arena *arena = booklet->setter.arena;
    bool any = false;
    for (size_t i = 0; i < job->count; i++) {
        any = any || play_is_counted(arena, job->plays[i].play);
    }
    for (size_t i = 0; i < job->count; i++) {
        if (!any || play_is_counted(arena, job->plays[i].play)) {
            add_play(booklet, &job->plays[i]);
        }
    }
    return rows_write(booklet, rows_title(booklet, "tally sheet", "tally sheets"), writer);
}
