/* SPDX-License-Identifier: MIT */
/* number: digits, and what they make with their neighbours: measures, groups, dates, clock times.
 * Knows units; not what any of it is for. */
#include "language/syntax/scan.h"

#include <string.h>

/* A word of plain letters at `at`, in lower case, blank-ended; its length, 0 for none or too long.
 */
enum { UNIT_MOST = 12 };
static size_t plain_word(const struct scan *scan, const char *at, char out[UNIT_MOST])
{
    size_t size = 0;
    for (; at + size < scan->end; size++) {
        char c = at[size];
        char small = c >= 'A' && c <= 'Z' ? (char)(c + 32) : c;
        if (small < 'a' || small > 'z') {
            break;
        }
        if (size + 1 >= UNIT_MOST) {
            return 0;
        }
        out[size] = small;
    }
    out[size] = '\0';
    struct letter next = scan_peek(scan, at + size);
    return letter_is_letter(next) || letter_is_digit(next) ? 0 : size;
}

static const char *skip_blanks(const struct scan *scan, const char *at)
{
    while (at < scan->end && scan_peek(scan, at).code == ' ') {
        at += scan_peek(scan, at).size;
    }
    return at;
}

struct unit_word {
    const char *word;
    enum unit unit;
    bool after_a;
};
static const struct unit_word unit_words[] = {
#define UNIT_WORD(word, unit, after_a) {word, unit, after_a},
#include "language/syntax/units.def"
#undef UNIT_WORD
};

static bool among(const char *word, const char *const *list)
{
    for (; *list; list++) {
        if (strcmp(word, *list) == 0) {
            return true;
        }
    }
    return false;
}

/* `3 steps toward the rim` is player 3; `a second screen` is no measure. */
static bool is_no_unit(const struct scan *scan, const struct unit_word *unit, bool after_a,
                       const char *behind)
{
    static const char *const ways[] = {"toward", "towards", "to",   "into", "in",
                                       "out",    "up",      "back", "over", "across",
                                       "onto",   "through", "down", NULL};
    static const char *const nouns[] = {"screen", "pick", "pass", "cut",
                                        "shot",   "fake", "hand", NULL};
    char next[UNIT_MOST];
    if (plain_word(scan, skip_blanks(scan, behind), next) == 0) {
        return false;
    }
    return (unit->unit == UNIT_STEPS && among(next, ways)) ||
           (unit->unit == UNIT_SECONDS && after_a && among(next, nouns));
}

static const struct unit_word *find_unit(const char *word)
{
    for (size_t i = 0; i < sizeof unit_words / sizeof unit_words[0]; i++) {
        if (unit_words[i].word[0] == word[0] && strcmp(unit_words[i].word, word) == 0) {
            return &unit_words[i];
        }
    }
    return NULL;
}

static void become_measure(struct scan *scan, struct token *token, enum unit unit, const char *end)
{
    token->kind = TOKEN_MEASURE;
    token->unit = (unsigned char)unit;
    scan->at = end;
}

/* 5s man: 5's, its mark left out. */
static bool is_owner(const struct scan *scan, const char *word, const char *behind)
{
    static const char *const owned[] = {"man",  "defender", "girl",    "guy", "spot",
                                        "side", "screen",   "screens", NULL};
    char next[UNIT_MOST];
    return word[0] == 's' && word[1] == '\0' &&
           plain_word(scan, skip_blanks(scan, behind), next) > 0 && among(next, owned);
}

void scan_unit(struct scan *scan, struct token *token)
{
    bool after_a = token->kind == TOKEN_WORD;
    const char *at = scan->at;
    struct letter next = scan_peek(scan, at);
    if (!after_a && (next.code == '\'' || next.code == '%')) {
        become_measure(scan, token, next.code == '%' ? UNIT_PERCENT : UNIT_FEET, at + next.size);
        return;
    }
    at = next.code == '-' ? at + next.size : skip_blanks(scan, at);
    char word[UNIT_MOST];
    size_t size = plain_word(scan, at, word);
    if (size == 0) {
        if (!after_a && at < scan->end && *at == '%') {
            become_measure(scan, token, UNIT_PERCENT, at + 1);
        }
        return;
    }
    if (!after_a && at == scan->at && token->integer && is_owner(scan, word, at + size)) {
        token->possessive = true;
        scan->at = at + size;
        return;
    }
    const struct unit_word *unit = find_unit(word);
    if (!unit || (after_a && !unit->after_a) || is_no_unit(scan, unit, after_a, at + size)) {
        return;
    }
    become_measure(scan, token, unit->unit, at + size);
    token->number = after_a ? 1 : token->number;
    /* `6 ft. above`: after a unit a full stop closes nothing. */
    if (scan_peek(scan, scan->at).raw == '.') {
        token->stopped = true;
        scan->at++;
    }
}

bool scan_possessive(struct scan *scan)
{
    struct letter mark = scan_peek(scan, scan->at);
    if (mark.code != '\'') {
        return false;
    }
    const char *s = scan->at + mark.size;
    struct letter letter = scan_peek(scan, s);
    struct letter behind = scan_peek(scan, s + letter.size);
    if ((letter.code != 's' && letter.code != 'S') || letter_is_letter(behind) ||
        letter_is_digit(behind)) {
        return false;
    }
    scan->at = s + 1;
    return true;
}

static size_t digits_at(const struct scan *scan, const char *at)
{
    size_t count = 0;
    while (at + count < scan->end && at[count] >= '0' && at[count] <= '9') {
        count++;
    }
    return count;
}

static int digits_value(const char *at, size_t count)
{
    int value = 0;
    for (size_t i = 0; i < count; i++) {
        value = value * 10 + (at[i] - '0');
    }
    return value;
}

/* 2026-12-01, or 2-3, 1-3-1: digits with hyphens between. */
static bool scan_group(struct scan *scan)
{
    const char *from = scan->at, *at = from;
    size_t parts = 0, sizes[4] = {0};
    const char *starts[4] = {0};
    for (;;) {
        size_t size = digits_at(scan, at);
        if (size == 0) {
            return false; /* a hyphen that leads elsewhere: 5-out */
        }
        if (parts < 4) {
            sizes[parts] = size;
            starts[parts] = at;
        }
        parts++;
        at += size;
        struct letter mark = scan_peek(scan, at);
        if (mark.code != '-' || digits_at(scan, at + mark.size) == 0) {
            break;
        }
        at += mark.size;
    }
    if (parts < 2) {
        return false;
    }
    bool date = parts == 3 && sizes[0] == 4 && sizes[1] == 2 && sizes[2] == 2;
    int month = date ? digits_value(starts[1], 2) : 0, day = date ? digits_value(starts[2], 2) : 0;
    date = date && month >= 1 && month <= 12 && day >= 1 && day <= 31;
    scan->at = at;
    scan_add(scan, date ? TOKEN_DATE : TOKEN_GROUP, from);
    return true;
}

/* 17:30, 5:30 pm. */
static bool scan_clock(struct scan *scan)
{
    const char *from = scan->at;
    size_t hours = digits_at(scan, from);
    const char *at = from + hours;
    if (hours > 2 || at >= scan->end || *at != ':' || digits_at(scan, at + 1) != 2) {
        return false;
    }
    int hour = digits_value(from, hours), minute = digits_value(at + 1, 2);
    at += 3;
    char half[UNIT_MOST];
    const char *behind = skip_blanks(scan, at);
    bool named =
        plain_word(scan, behind, half) == 2 && half[1] == 'm' && (half[0] == 'a' || half[0] == 'p');
    if (minute > 59 || (named ? hour < 1 || hour > 12 : hour > 23)) {
        return false;
    }
    if (named) {
        hour = hour % 12 + (half[0] == 'p' ? 12 : 0);
        at = behind + 2;
    }
    scan->at = at;
    struct token *token = scan_add(scan, TOKEN_CLOCK, from);
    token->number = hour * 60 + minute;
    return true;
}

/* The value of at most 15 digits on each side of the point; more are taken as noughts before it and
 * as nothing behind it. Exact enough for feet and the same on every machine. */
static double decimal_value(const char *at, size_t whole, size_t places)
{
    double value = 0, scale = 1;
    for (size_t i = 0; i < whole; i++) {
        value = i < 15 ? value * 10 + (at[i] - '0') : 1e15;
    }
    for (size_t i = 0; i < places && i < 15; i++) {
        scale *= 10;
        value += (at[whole + 1 + i] - '0') / scale;
    }
    return value < NUMBER_TOP ? value : NUMBER_TOP;
}

/* 0,5 s: a comma for the point, where a unit follows; 2,3 steps in is player 2, and 3 who steps. */
static bool scan_comma(struct scan *scan)
{
    const char *from = scan->at;
    size_t whole = digits_at(scan, from), count = scan->count;
    if (whole == 0 || from + whole >= scan->end || from[whole] != ',') {
        return false;
    }
    size_t places = digits_at(scan, from + whole + 1);
    if (places == 0) {
        return false;
    }
    scan->at = from + whole + 1 + places;
    struct token *token = scan_add(scan, TOKEN_NUMBER, from);
    token->number = decimal_value(from, whole, places);
    scan_unit(scan, token);
    if (token->kind == TOKEN_MEASURE && token->unit != UNIT_STEPS && token->unit != UNIT_PERCENT) {
        return true;
    }
    scan->count = count;
    scan->at = from;
    return false;
}

bool scan_number(struct scan *scan)
{
    if (scan_clock(scan) || scan_group(scan) || scan_comma(scan)) {
        return true;
    }
    const char *from = scan->at;
    size_t whole = digits_at(scan, from), places = 0;
    if (whole == 0) {
        return false;
    }
    if (from + whole < scan->end && from[whole] == '.') {
        places = digits_at(scan, from + whole + 1);
    }
    scan->at = from + whole + (places ? places + 1 : 0);
    struct token *token = scan_add(scan, TOKEN_NUMBER, from);
    token->number = decimal_value(from, whole, places);
    token->integer = places == 0;
    token->possessive = token->integer && scan_possessive(scan);
    if (!token->possessive) {
        scan_unit(scan, token);
    }
    return true;
}
