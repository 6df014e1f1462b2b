/* SPDX-License-Identifier: MIT */
/* clock: see clock.h. Letter paper has a clock of twelve hours, A4 one of twenty-four. */
#include "page/sheet/clock.h"

static bool twelve_hours(const struct setter *setter, bool of_day)
{
    return of_day && !setter->job->a4;
}

static const char *half_of(double at)
{
    enum { NOON = 12 * 60, DAY = 2 * NOON };
    return (int)(at + 0.5) % DAY < NOON ? "AM" : "PM";
}

struct str clock_time(const struct setter *setter, double at, bool of_day)
{
    return plan_time(setter->arena, at, twelve_hours(setter, of_day));
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
