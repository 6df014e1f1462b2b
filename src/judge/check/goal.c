/* SPDX-License-Identifier: MIT */
/* goal: see goal.h. Takes a run and the words of its drill's goal; must not know where it is told.
 */
#include "judge/check/goal.h"

#include <string.h>

/* ---- the goal's own words ---- */

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_seconds(struct str word)
{
    static const char *const words[] = {"s", "sec", "secs", "second", "seconds"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        if (str_equal_fold(word, str_of(words[i]))) {
            return true;
        }
    }
    return false;
}

/* The number at `at`, and where it ends. */
static double number_at(struct str text, size_t at, size_t *end)
{
    double value = 0, part = 1;
    bool behind = false;
    for (*end = at; *end < text.size; (*end)++) {
        char c = text.at[*end];
        if (c == '.' && !behind && *end + 1 < text.size && is_digit(text.at[*end + 1])) {
            behind = true;
        } else if (is_digit(c)) {
            part = behind ? part / 10 : part;
            value = behind ? value + (c - '0') * part : value * 10 + (c - '0');
        } else {
            break;
        }
    }
    return value;
}

/* The first "6 s", "6 seconds", "6-second" of it; 0: there is none. */
static double seconds_in(struct str text)
{
    for (size_t i = 0; i < text.size; i++) {
        if (!is_digit(text.at[i]) || (i > 0 && text.at[i - 1] != ' ')) {
            continue;
        }
        size_t end, word;
        double value = number_at(text, i, &end);
        word = end;
        while (word < text.size && (text.at[word] == ' ' || text.at[word] == '-')) {
            word++;
        }
        size_t size = 0;
        while (word + size < text.size && is_letter(text.at[word + size])) {
            size++;
        }
        if (is_seconds((struct str){text.at + word, size})) {
            return value;
        }
        i = end;
    }
    return 0;
}

static bool says(struct str text, const char *words)
{
    struct str part = str_of(words);
    for (size_t i = 0; i + part.size <= text.size; i++) {
        if (str_equal_fold((struct str){text.at + i, part.size}, part)) {
            return true;
        }
    }
    return false;
}

/* ---- the run ---- */

/* Seconds of play until the ball is over half court, from the other half; below 0: it never is. */
static double crossed_at(const struct run *run)
{
    double line = run->play->court->half_court;
    bool behind = false;
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        for (double t = 0; segment->main && segment->ball.count > 0 && t < segment->duration;
             t += .05) {
            bool over = segment_ball(segment, t).y < line;
            if (over && behind) {
                return segment->time_before + t;
            }
            behind = behind || !over;
        }
    }
    return -1;
}

/* Seconds of play until the first shot leaves the hands. */
static double shot_at(const struct run *run)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        for (size_t k = 0; segment->main && k < segment->tasks; k++) {
            double released = segment->record[k].time[MOMENT_RELEASED];
            if (segment_task(segment, k)->kind == TASK_SHOOT && released >= 0) {
                return segment->time_before + released;
            }
        }
    }
    return -1;
}

static double over_at(const struct run *run)
{
    double end = -1;
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        double over = segment->time_before + segment->duration;
        end = segment->main && segment->ran && over > end ? over : end;
    }
    return end;
}

/* What the goal's seconds are of: words in it, what is told, and when that is so in the run. */
static const struct {
    const char *words[4];
    const char *told;
    double (*at)(const struct run *run);
} kinds[] = {
    {{"half court", "half-court", "midcourt", "halfway line"},
     "the ball is over half court after",
     crossed_at},
    {{"shot", "shoot", "layup", "lay-up"}, "the shot leaves the hands after", shot_at},
    {{""}, "once through takes", over_at},
};

struct str goal_measured(struct arena *arena, const struct run *run)
{
    struct str goal = run->play->goal;
    double asked = seconds_in(goal);
    for (size_t i = 0; asked > 0 && i < sizeof kinds / sizeof *kinds; i++) {
        bool meant = false;
        for (size_t k = 0; k < sizeof kinds[i].words / sizeof *kinds[i].words; k++) {
            meant = meant || (kinds[i].words[k] && says(goal, kinds[i].words[k]));
        }
        double at = meant ? kinds[i].at(run) : -1;
        if (at < 0) {
            continue;
        }
        struct strbuf out;
        strbuf_init(&out, arena);
        strbuf_print(&out, "As drawn %s ", kinds[i].told);
        strbuf_fixed(&out, at, 1);
        strbuf_text(&out, "\xC2\xA0s");
        if (at > asked) {
            strbuf_text(&out, ", not within ");
            strbuf_number(&out, asked, 1);
            strbuf_text(&out, "\xC2\xA0s: change the goal or the drill");
        }
        strbuf_char(&out, '.');
        return strbuf_str(&out);
    }
    return STR("");
}
