/* SPDX-License-Identifier: MIT */
/* trend: what was charted of a play, by date: the share with its interval, what changed, who. Takes
 * a season, gives a PDF. Few numbers are said to be few: nothing is read into them. */
#include "page/sheet/sheets.h"

#include "language/tell/tell.h"
#include "page/sheet/dates.h"
#include "page/sheet/trend.h"

#define LABEL_WIDE 138.0
#define CURVE_X 146.0
#define CURVE_WIDE 166.0
#define CURVE_HIGH 49.0
#define CURVE_TOP 8.0
#define ROW_HIGH 64.0
#define TOTAL_X 330.0
#define CHANGE_X 406.0
#define CAP 2.2    /* half of it */
#define INSET 12.0 /* from the curve's ends to the first and last date */

enum { FEW_ON_A_DATE = 10, FEW_IN_ALL = 25, FEW_OF_A_HALF = 10 };

/* ---- shares, and points a trip ---- */

struct interval trend_interval(int kind, int made, int of)
{
    return kind == ROW_POINTS ? points_interval(made, of) : share_interval(made, of);
}

static struct interval change_by(int kind, const int made[2], const int of[2])
{
    return kind == ROW_POINTS ? points_change(made[0], of[0], made[1], of[1])
                              : share_change(made[0], of[0], made[1], of[1]);
}

static int percent(double share)
{
    return (int)(share * 100 + (share < 0 ? -0.5 : 0.5));
}

/* "64%", "0.69". */
struct str trend_value(struct arena *arena, int kind, double value)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    if (kind == ROW_POINTS) {
        strbuf_fixed(&out, value, 2);
    } else {
        strbuf_print(&out, "%d%%", percent(value));
    }
    return strbuf_str(&out);
}

struct str trend_range(struct arena *arena, int kind, struct interval interval)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    if (kind != ROW_POINTS) {
        return str_format(arena, "(%d\xE2\x80\x93%d)", percent(interval.low),
                          percent(interval.high));
    }
    strbuf_char(&out, '(');
    strbuf_fixed(&out, interval.low, 1);
    strbuf_text(&out, "\xE2\x80\x93");
    strbuf_fixed(&out, interval.high, 1);
    strbuf_char(&out, ')');
    return strbuf_str(&out);
}

struct str trend_count(struct arena *arena, int kind, int made, int of)
{
    return str_format(arena, kind == ROW_POINTS ? "%d in\xC2\xA0%d" : "%d of\xC2\xA0%d", made, of);
}

/* ---- one thing that was counted ---- */

static double day_x(const struct span_of_days *span, int number)
{
    double inner = CURVE_WIDE - 2 * INSET;
    int days = span->to - span->from;
    return CURVE_X + INSET + (days > 0 ? inner * (number - span->from) / days : inner / 2);
}

static double share_y(double share)
{
    return CURVE_TOP + CURVE_HIGH * (1 - share);
}

static void put_grid(const struct rows *rows, struct galley *row, const char *const labels[3])
{
    for (int i = 0; i < 3; i++) {
        double y = CURVE_TOP + CURVE_HIGH * i / 2.0;
        galley_rule(row, vec2_of(CURVE_X, y), vec2_of(CURVE_X + CURVE_WIDE, y), 0.4, ROLE_HAIRLINE);
        galley_text_end(row, rows_set(rows, TYPE_NOTE, str_of(labels[i])), CURVE_X - 4, y + 2.9,
                        ROLE_SOFT);
    }
}

static void put_interval(struct galley *row, double x, struct interval interval, double most,
                         enum role role)
{
    double low = share_y(interval.low / most), high = share_y(interval.high / most);
    galley_rule(row, vec2_of(x, high), vec2_of(x, low), 1.2, role);
    galley_rule(row, vec2_of(x - CAP, high), vec2_of(x + CAP, high), 1.2, role);
    galley_rule(row, vec2_of(x - CAP, low), vec2_of(x + CAP, low), 1.2, role);
}

/* Lines between neighbours of which enough was counted; then intervals, then dots over them. */
static void put_curve(struct galley *row, const struct counted *counted,
                      const struct span_of_days *span, double most)
{
    const struct day *before = NULL;
    for (size_t i = 0; i < counted->days.count; i++) {
        const struct day *day = &counted->days.at[i];
        bool enough = day->of >= FEW_ON_A_DATE;
        if (before && enough) {
            double from = (double)before->made / before->of / most;
            double to = (double)day->made / day->of / most;
            galley_rule(row, vec2_of(day_x(span, before->number), share_y(from)),
                        vec2_of(day_x(span, day->number), share_y(to)), 1.0, ROLE_INK);
        }
        before = enough ? day : NULL;
    }
    for (size_t i = 0; i < counted->days.count; i++) {
        const struct day *day = &counted->days.at[i];
        double x = day_x(span, day->number);
        enum role role = day->of >= FEW_ON_A_DATE ? ROLE_INK : ROLE_COURT;
        put_interval(row, x, trend_interval(counted->kind, day->made, day->of), most, role);
        double y = share_y((double)day->made / day->of / most);
        galley_dot(row, vec2_of(x, y), TREND_DOT, role, day->game ? FILL_ROLE : FILL_OPEN);
    }
}

/* "+12", and of points a trip "+0.4". */
static struct str signed_number(struct arena *arena, int kind, double change)
{
    bool points = kind == ROW_POINTS;
    double size = change < 0 ? -change : change;
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_text(&out,
                change < 0 && (points ? size >= 0.05 : percent(size) > 0) ? "\xE2\x88\x92" : "+");
    strbuf_fixed(&out, points ? size : percent(size), points ? 1 : 0);
    return strbuf_str(&out);
}

/* "64%  66 of 103", its interval under it. */
static void put_total(const struct rows *rows, struct galley *row, const struct counted *counted)
{
    struct arena *arena = rows->setter.arena;
    int kind = counted->kind;
    struct str value = trend_value(arena, kind, (double)counted->made / counted->of);
    const struct text_block *words = rows_set(rows, TYPE_HEADING, value);
    double base = ROW_BASE + 9;
    galley_text(row, words, TOTAL_X, base, ROLE_TEXT);
    struct str of = trend_count(arena, kind, counted->made, counted->of);
    const struct text_block *count = rows_set(rows, TYPE_NOTE, of);
    bool beside = TOTAL_X + text_width(words) + 5 + text_width(count) < CHANGE_X - 6;
    galley_text(row, count, beside ? TOTAL_X + text_width(words) + 5 : TOTAL_X,
                beside ? base : base + 24, ROLE_SOFT);
    struct str range = trend_range(arena, kind, trend_interval(kind, counted->made, counted->of));
    galley_text(row, rows_set(rows, TYPE_NOTE, range), TOTAL_X, base + 12, ROLE_SOFT);
}

/* How many dates: practice and game of one day are one. */
static size_t date_count(const struct counted *counted)
{
    size_t dates = 0;
    for (size_t i = 0; i < counted->days.count; i++) {
        dates += i == 0 || counted->days.at[i].number != counted->days.at[i - 1].number;
    }
    return dates;
}

/* What was counted in the first half of the dates, and in the last; with an odd number the middle
 * one is in neither. */
struct halves {
    int kind;
    int made[2], of[2];
    struct str until, since; /* the last date of the first half, the first of the last */
};

static struct halves halves_of(const struct counted *counted, size_t dates)
{
    struct halves halves = {.kind = counted->kind};
    size_t half = dates / 2, date = 0;
    for (size_t i = 0; i < counted->days.count; i++) {
        const struct day *day = &counted->days.at[i];
        date += i > 0 && day->number != counted->days.at[i - 1].number;
        bool first = date < half, last = date >= dates - half;
        if (first || last) {
            halves.made[last] += day->made;
            halves.of[last] += day->of;
        }
        halves.until = first ? day->date : halves.until;
        halves.since = last && halves.since.size == 0 ? day->date : halves.since;
    }
    return halves;
}

/* What can be said of the change, and under it the numbers that it is of. */
enum { BEHIND = 3 };
struct change {
    struct str words, behind[BEHIND];
};

/* "to 14 Nov: 19 of 33"; without the date where the column is too narrow for it. */
static struct str half_words(const struct rows *rows, const struct halves *halves, bool last,
                             bool years)
{
    static const char *const before[] = {"to", "from"}, *const bare[] = {"at first", "of late"};
    struct arena *arena = rows->setter.arena;
    struct str date = date_words(rows, last ? halves->since : halves->until, MONTH_SHORT, years);
    struct str count = trend_count(arena, halves->kind, halves->made[last], halves->of[last]);
    struct str words =
        str_format(arena, "%s %.*s: %.*s", before[last], STR_ARG(date), STR_ARG(count));
    return text_width(rows_set(rows, TYPE_NOTE, words)) <= PAGE_WIDE - CHANGE_X
               ? words
               : str_format(arena, "%s: %.*s", bare[last], STR_ARG(count));
}

static struct change change_of(const struct rows *rows, const struct counted *counted, bool years)
{
    struct arena *arena = rows->setter.arena;
    struct change out = {.words = STR("One date so far"), .behind = {STR(""), STR(""), STR("")}};
    size_t dates = date_count(counted);
    if (dates < 2) {
        return out;
    }
    struct halves halves = halves_of(counted, dates);
    out.behind[0] = half_words(rows, &halves, false, years);
    out.behind[1] = half_words(rows, &halves, true, years);
    bool few = halves.of[0] < FEW_OF_A_HALF || halves.of[1] < FEW_OF_A_HALF;
    if (few || counted->of < FEW_IN_ALL) {
        out.words = STR("Too few to tell");
        return out;
    }
    struct interval change = change_by(counted->kind, halves.made, halves.of);
    out.behind[2] = str_format(arena, "by %.*s to %.*s %s",
                               STR_ARG(signed_number(arena, counted->kind, change.low)),
                               STR_ARG(signed_number(arena, counted->kind, change.high)),
                               counted->kind == ROW_POINTS ? "a trip" : "points");
    if (change.low <= 0 && change.high >= 0) {
        out.words = STR("No change seen");
        return out;
    }
    double first = (double)halves.made[0] / halves.of[0];
    double last = (double)halves.made[1] / halves.of[1];
    out.words = str_format(arena, "%s: %.*s to %.*s", last > first ? "Up" : "Down",
                           STR_ARG(trend_value(arena, counted->kind, first)),
                           STR_ARG(trend_value(arena, counted->kind, last)));
    return out;
}

static void put_change(const struct rows *rows, struct galley *row, const struct counted *counted,
                       bool years)
{
    struct change change = change_of(rows, counted, years);
    double base = ROW_BASE + 9;
    galley_text(row, rows_set(rows, TYPE_SMALL_HEADING, change.words), CHANGE_X, base, ROLE_TEXT);
    for (int i = 0; i < BEHIND; i++) {
        if (change.behind[i].size > 0) {
            galley_text(row, rows_set(rows, TYPE_NOTE, change.behind[i]), CHANGE_X,
                        base + 12 * (i + 1), ROLE_SOFT);
        }
    }
}

/* The top of the scale of points a trip, with the intervals: 1, 2 … */
static double points_most(const struct counted *counted)
{
    double most = 1;
    for (size_t i = 0; i < counted->days.count; i++) {
        const struct day *day = &counted->days.at[i];
        while (real_max((double)day->made / day->of, points_interval(day->made, day->of).high) >
               most) {
            most += 1;
        }
    }
    return most;
}

static struct galley *counted_row(const struct rows *rows, const struct counted *counted,
                                  const struct span_of_days *span)
{
    static const char *const shares[] = {"100", "50", "0"};
    struct arena *arena = rows->setter.arena;
    struct galley *row = galley_new(arena);
    double most = counted->kind == ROW_POINTS ? points_most(counted) : 1;
    struct strbuf top, middle;
    strbuf_init(&top, arena);
    strbuf_init(&middle, arena);
    strbuf_number(&top, most, 1);
    strbuf_number(&middle, most / 2, 1);
    const char *const points[] = {strbuf_str(&top).at, strbuf_str(&middle).at, "0"};
    galley_text(row, words_set(&rows->setter, TYPE_SMALL_HEADING, counted->label, LABEL_WIDE - 20),
                0, ROW_BASE + 9, ROLE_TEXT);
    put_grid(rows, row, counted->kind == ROW_POINTS ? points : shares);
    put_curve(row, counted, span, most);
    put_total(rows, row, counted);
    put_change(rows, row, counted, is_of_years(span));
    galley_reach(row, ROW_HIGH - 1.6);
    row_end(row, 0.5);
    return row;
}

/* The dates of the curves: those for which there is room, the first with its month. `noted`: they
 * stand under the last curve, with what the changes are. */
static struct galley *axis_row(const struct rows *rows, const counted_list *counted,
                               const struct span_of_days *span, bool noted)
{
    const double apart = 5;
    struct galley *row = galley_new(rows->setter.arena);
    const struct text_block *note =
        rows_set(rows, TYPE_NOTE, noted ? STR("Later dates against earlier, in points.") : STR(""));
    double room = PAGE_WIDE - text_width(note) - apart;
    double taken = CURVE_X - 30;
    struct str month = STR("");
    for (int number = span->from; number <= span->to; number++) {
        const struct day *day = NULL;
        for (size_t i = 0; i < counted->count && !day; i++) {
            for (size_t k = 0; k < counted->at[i].days.count && !day; k++) {
                const struct day *one = &counted->at[i].days.at[k];
                day = one->number == number ? one : NULL;
            }
        }
        if (!day) {
            continue;
        }
        struct str own = {day->date.at, 7};
        const struct text_block *words = rows_set(
            rows, TYPE_NOTE,
            date_words(rows, day->date, str_equal(own, month) ? MONTH_LEFT_OUT : MONTH_IN_FULL,
                       is_of_years(span)));
        double x = day_x(span, number) - text_width(words) / 2;
        if (x > taken && x + text_width(words) < room) {
            galley_text(row, words, x, 10, ROLE_SOFT);
            taken = x + text_width(words) + apart;
            month = own;
        }
    }
    galley_text_end(row, note, PAGE_WIDE, 10, ROLE_SOFT);
    row->height = noted ? 22 : 13;
    return row;
}

/* ---- heads ---- */

static struct galley *head_row(const struct rows *rows)
{
    static const struct {
        double x;
        const char *word;
    } columns[] = {
        {0, "What"}, {CURVE_X, "By date"}, {TOTAL_X, "All together"}, {CHANGE_X, "What changed"}};
    struct galley *row = galley_new(rows->setter.arena);
    for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
        galley_text(row, rows_set(rows, TYPE_DISC, str_of(columns[i].word)), columns[i].x, 10.5,
                    ROLE_TEXT);
    }
    row_end(row, 0.5);
    return row;
}

/* What a further page opens with. */
static struct galley *columns_row(const struct rows *rows, const counted_list *counted,
                                  const struct span_of_days *span)
{
    struct galley *row = galley_new(rows->setter.arena);
    galley_join(row, head_row(rows), 0, 0);
    galley_join(row, axis_row(rows, counted, span, false), 0, row->height);
    return row;
}

/* All curves with their dates under the last one; where they take more than this page, over the
 * first of each. */
static void add_curves(struct rows *rows, const counted_list *counted,
                       const struct span_of_days *span)
{
    struct arena *arena = rows->setter.arena;
    struct galley **curves = arena_array(arena, struct galley *, counted->count);
    struct galley *axis = axis_row(rows, counted, span, true), *head = head_row(rows);
    double height = head->height + axis->height;
    for (size_t i = 0; i < counted->count; i++) {
        curves[i] = counted_row(rows, &counted->at[i], span);
        height += curves[i]->height;
    }
    bool several = height > rows_room(rows);
    rows_add(rows, several ? columns_row(rows, counted, span) : head);
    rows->columns = columns_row(rows, counted, span);
    for (size_t i = 0; i < counted->count; i++) {
        rows_add(rows, curves[i]);
    }
    rows_add(rows, axis);
    rows->columns = NULL;
}

/* ---- the sheet ---- */

/* Whom the filled dots were played against: "Nov 14 Millrace; Nov 21 film, Quarry Bay." */
static void add_games(struct rows *rows, const struct play *play, const struct span_of_days *span)
{
    struct arena *arena = rows->setter.arena;
    struct str games = dates_games(rows, play, is_of_years(span));
    if (games.size == 0) {
        return;
    }
    struct galley *row = galley_new(arena);
    galley_text(row,
                words_set(&rows->setter, TYPE_NOTE,
                          str_format(arena, "Filled dots: %.*s.", STR_ARG(games)), PAGE_WIDE),
                0, 20, ROLE_TEXT);
    rows_add(rows, row);
}

static bool has_points(const counted_list *counted)
{
    return counted->count > 0 && counted->at[counted->count - 1].kind == ROW_POINTS;
}

static struct galley *note_row(const struct rows *rows, bool points)
{
    static const char note[] =
        "Counted by hand. Practice and games differ: trust a change that shows in both. With 50 "
        "counted before and 50 after, a change of about 16 points can be seen; a smaller one "
        "cannot.%s";
    static const char of_points[] =
        " Only the sum of points is known: their interval is as wide as if every score were "
        "worth three.";
    struct galley *row = galley_new(rows->setter.arena);
    galley_text(row,
                words_set(&rows->setter, TYPE_NOTE,
                          str_format(rows->setter.arena, note, points ? of_points : ""), PAGE_WIDE),
                0, 20, ROLE_SOFT);
    return row;
}

static void set_play(struct rows *rows, const struct play *play, const counted_list *counted)
{
    struct arena *arena = rows->setter.arena;
    struct span_of_days span = dates_span(counted);
    bool years = is_of_years(&span);
    struct str first = date_words(rows, span.first, MONTH_IN_FULL, years);
    struct str last = date_words(rows, span.last, MONTH_IN_FULL, years);
    struct head_words *head = arena_new(arena, struct head_words);
    *head = head_of_play(arena, play, STR("Trend, coach only"));
    head->series = str_equal(first, last)
                       ? first
                       : str_format(arena, "%.*s to %.*s", STR_ARG(first), STR_ARG(last));
    head->clock = STR("");
    head->about =
        STR("What was counted, by date. Bars are 90% intervals: the true share is likely inside.");
    struct caution caution = caution_of_play(play);
    rows_open(rows, head, &caution);
    rows_add(rows,
             rows_section(
                 rows, STR("Share of what was seen"),
                 STR("Open dot: practice. Filled: game or film. Gray, no line: fewer than 10.")));
    add_curves(rows, counted, &span);
    add_games(rows, play, &span);
    rows_add(rows, note_row(rows, has_points(counted)));
    for (size_t i = 0; i < counted->count; i++) {
        trend_players(rows, &counted->at[i]);
    }
}

static bool is_meant(const struct sheet_job *job, const struct play *play)
{
    return job->title.size == 0 || str_equal_fold(job->title, play->name);
}

bool trend_holds(const struct sheet_job *job)
{
    bool found = false;
    for (size_t i = 0; i < job->season->charted.count; i++) {
        const struct charted *charted = &job->season->charted.at[i];
        for (size_t k = 0; k < charted->rows.count; k++) {
            found = found || is_meant(job, charted->rows.at[k].play);
        }
    }
    return found;
}

static void add_play(struct booklet *booklet, const struct play *play)
{
    const struct sheet_job *job = booklet->setter.job;
    struct arena *arena = booklet->setter.arena;
    struct arena_mark mark = arena_mark(arena);
    struct rows rows = {.setter = booklet->setter, .ruled = true};
    counted_list counted = {0};
    counted_gather(arena, job->season, play, &counted);
    if (counted.count > 0) {
        set_play(&rows, play, &counted);
        rows_close(&rows, booklet, play->name);
    }
    arena_release(arena, mark);
}

bool trend_pages(struct booklet *booklet, struct writer *writer)
{
    const struct sheet_job *job = booklet->setter.job;
    for (size_t i = 0; i < job->book->plays.count; i++) {
        if (is_meant(job, &job->book->plays.at[i])) {
            add_play(booklet, &job->book->plays.at[i]);
        }
    }
    return rows_write(booklet, rows_title(booklet, "", "trend"), writer);
}
