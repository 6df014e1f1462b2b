/* SPDX-License-Identifier: MIT */
/* clock: see clock.h. Letter paper has a clock of twelve hours, A4 one of twenty-four. */
#include "page/sheet/clock.h"

enum { HOUR = 60, DAY = 24 * 60, NOON = 12 * 60 };

static int whole(double at)
{
    return (int)(at + 0.5) % DAY;
}

static bool twelve_hours(const struct setter *setter, bool of_day)
{
    return of_day && !setter->job->a4;
}

static const char *half_of(double at)
{
    return whole(at) < NOON ? "AM" : "PM";
}

struct str clock_time(const struct setter *setter, double at, bool of_day)
{
    int minutes = whole(at), hour = minutes / HOUR;
    if (twelve_hours(setter, of_day)) {
        hour = hour % 12 == 0 ? 12 : hour % 12;
    }
    return str_format(setter->arena, "%d:%02d", hour, minutes % HOUR);
}

struct str clock_full(const struct setter *setter, double at, bool of_day)
{
    struct str time = clock_time(setter, at, of_day);
    return twelve_hours(setter, of_day)
               ? str_format(setter->arena, "%.*s\xC2\xA0%s", STR_ARG(time), half_of(at))
               : time;
}

struct str clock_range(const struct setter *setter, double from, double to)
{
    bool one_half = twelve_hours(setter, true) && half_of(from) == half_of(to);
    struct str first = one_half ? clock_time(setter, from, true) : clock_full(setter, from, true);
    return str_format(setter->arena, "%.*s to %.*s", STR_ARG(first),
                      STR_ARG(clock_full(setter, to, true)));
}

struct str clock_minutes(const struct setter *setter, double minutes)
{
    return plan_minutes(setter->arena, minutes);
}
