/* SPDX-License-Identifier: MIT */
/* dates: see dates.h. Takes charted blocks, gives words; must not know where they stand. */
#include "page/sheet/dates.h"

struct str date_words(const struct rows *rows, struct str date, enum month with_month,
                      bool with_year)
{
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    struct arena *arena = rows->setter.arena;
    int month = (date.at[5] - '0') * 10 + (date.at[6] - '0') - 1;
    int day = (date.at[8] - '0') * 10 + (date.at[9] - '0');
    if (with_month == MONTH_LEFT_OUT) {
        return str_format(arena, "%d", day);
    }
    struct str words =
        rows->setter.job->a4
            ? str_format(arena, with_month == MONTH_SHORT ? "%d %.3s" : "%d %s", day, months[month])
            : str_format(arena, "%.3s\xC2\xA0%d", months[month], day);
    const char *comma = rows->setter.job->a4 ? "" : ",";
    return with_year ? str_format(arena, "%.*s%s %.4s", STR_ARG(words), comma, date.at) : words;
}

bool is_of_years(const struct span_of_days *span)
{
    return !str_equal((struct str){span->first.at, 4}, (struct str){span->last.at, 4});
}

struct span_of_days dates_span(const counted_list *counted)
{
    struct span_of_days span = {.from = 0};
    bool begun = false;
    for (size_t i = 0; i < counted->count; i++) {
        for (size_t k = 0; k < counted->at[i].days.count; k++) {
            const struct day *day = &counted->at[i].days.at[k];
            if (!begun || day->number < span.from) {
                span.from = day->number;
                span.first = day->date;
            }
            if (!begun || day->number > span.to) {
                span.to = day->number;
                span.last = day->date;
            }
            begun = true;
        }
    }
    return span;
}

static bool counts(const struct charted *charted, const struct play *play)
{
    bool found = false;
    for (size_t i = 0; i < charted->rows.count; i++) {
        found = found || charted->rows.at[i].play == play;
    }
    return found;
}

struct str dates_games(const struct rows *rows, const struct play *play, bool with_year)
{
    const struct season *season = rows->setter.job->season;
    struct strbuf out;
    strbuf_init(&out, rows->setter.arena);
    for (size_t i = 0; i < season->charted.count; i++) {
        const struct charted *charted = &season->charted.at[i];
        if (charted->occasion == OCCASION_PRACTICE || charted->where.size == 0 ||
            !counts(charted, play)) {
            continue;
        }
        struct str date = date_words(rows, charted->date, MONTH_IN_FULL, with_year);
        struct str where = words_isolated(rows->setter.arena, charted->where);
        strbuf_print(&out, "%s%.*s%s %.*s", out.size > 0 ? "; " : "", STR_ARG(date),
                     charted->occasion == OCCASION_FILM ? " film," : "", STR_ARG(where));
    }
    return strbuf_str(&out);
}
