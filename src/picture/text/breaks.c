/* SPDX-License-Identifier: MIT */
/* breaks: where lines may end. Takes letters, gives a mark for each; must not know widths. */
#include "picture/text/breaks.h"

#include <linebreak.h>
#include <stdbool.h>
#include <string.h>
#include <threads.h>

void breaks_prepare(void)
{
    static once_flag once = ONCE_FLAG_INIT;
    call_once(&once, init_linebreak);
}

static bool is_digit(uint32_t letter)
{
    return letter >= '0' && letter <= '9';
}

static bool is_word_letter(uint32_t letter)
{
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

/* Is the word that starts at letters[0] one of a list? Capitals do not matter. */
static bool is_one_of(const uint32_t *letters, size_t count, const char *const *words)
{
    for (; *words; words++) {
        size_t size = strlen(*words);
        bool same = size <= count;
        for (size_t i = 0; same && i < size; i++) {
            uint32_t letter = letters[i];
            letter = letter >= 'A' && letter <= 'Z' ? letter + 32 : letter;
            same = letter == (unsigned char)(*words)[i];
        }
        if (same && (size == count || !is_word_letter(letters[size]))) {
            return true;
        }
    }
    return false;
}

/* "12 ft": the space between, when a unit follows. */
static bool before_unit(const uint32_t *letters, size_t count, size_t space)
{
    static const char *const units[] = {"ft",  "feet",    "foot",    "in",       "m",     "s",
                                        "sec", "seconds", "second",  "min",      "steps", "minutes",
                                        "pt",  "degrees", "percent", "dribbles", "lb",    "kg",
                                        "am",  "pm",      NULL};
    return space > 0 && is_digit(letters[space - 1]) &&
           is_one_of(letters + space + 1, count - space - 1, units);
}

/* "step 3": the space between, when a number follows such a word. */
static bool behind_counter(const uint32_t *letters, size_t count, size_t space)
{
    static const char *const words[] = {"step", "steps", "page", "number", "level", "under", NULL};
    if (space + 1 >= count || !is_digit(letters[space + 1])) {
        return false;
    }
    size_t begin = space;
    while (begin > 0 && is_word_letter(letters[begin - 1])) {
        begin--;
    }
    return is_one_of(letters + begin, space - begin, words);
}

/* "3-on-0", "hand-off", "V-cut" are one word: no line ends in them unless both parts are long. */
static bool inside_word(const uint32_t *letters, size_t count, size_t hyphen)
{
    const size_t long_part = 4;
    size_t before = 0;
    size_t after = 0;
    if (letters[hyphen] != '-') {
        return false;
    }
    while (before < hyphen && is_word_letter(letters[hyphen - before - 1])) {
        before++;
    }
    while (hyphen + after + 1 < count && is_word_letter(letters[hyphen + after + 1])) {
        after++;
    }
    return before < long_part || after < long_part;
}

unsigned char *breaks_find(struct arena *arena, const uint32_t *letters, size_t count)
{
    char *found = arena_take(arena, count + 1);
    unsigned char *breaks = arena_take(arena, count + 1);
    set_linebreaks_utf32(letters, count, "en", found);
    for (size_t i = 0; i < count; i++) {
        if (found[i] == LINEBREAK_MUSTBREAK) {
            breaks[i] = i + 1 < count ? BREAK_MUST : BREAK_ALLOWED;
            continue;
        }
        bool allowed = found[i] == LINEBREAK_ALLOWBREAK && !inside_word(letters, count, i);
        if (allowed && letters[i] == ' ') {
            allowed = !before_unit(letters, count, i) && !behind_counter(letters, count, i);
        }
        breaks[i] = allowed ? BREAK_ALLOWED : BREAK_NEVER;
    }
    return breaks;
}
