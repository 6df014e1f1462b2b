/* SPDX-License-Identifier: MIT */
/* vocabulary: see vocabulary.h. */
#include "language/words/vocabulary.h"

#include <string.h>

/* The first row of a value is the one tidy prints. */
const struct entry spot_entries[] = {
#define SPOT_WORDS(words, spot) {words, SPOT_##spot},
#include "language/words/spot_words.def"
#undef SPOT_WORDS
    {NULL, 0},
};
const struct entry side_entries[] = {
    {"left", SIDE_LEFT},         {"right", SIDE_RIGHT},      {"ball side", SIDE_BALL},
    {"strong side", SIDE_BALL},  {"weak side", SIDE_WEAK},   {"help side", SIDE_WEAK},
    {"left-hand", SIDE_LEFT},    {"right-hand", SIDE_RIGHT}, {"lt", SIDE_LEFT},
    {"rt", SIDE_RIGHT},          {"l", SIDE_LEFT},           {"r", SIDE_RIGHT},
    {"opposite", SIDE_OPPOSITE}, {"other", SIDE_OPPOSITE},   {NULL, 0},
};
const struct entry direction_entries[] = {
    {"above", ABOVE},        {"below", BELOW},          {"inside", INSIDE},
    {"outside", OUTSIDE},    {"left of", LEFT_OF},      {"right of", RIGHT_OF},
    {"to left of", LEFT_OF}, {"to right of", RIGHT_OF}, {NULL, 0},
};
const struct entry way_entries[] = {
    {"left", WAY_LEFT}, {"right", WAY_RIGHT}, {"up", WAY_UP}, {"down", WAY_DOWN}, {NULL, 0},
};
/* Twelfths of the way. */
const struct entry fraction_entries[] = {
    {"a third of the way from", 4},
    {"one third of the way from", 4},
    {"two thirds of the way from", 8},
    {"a quarter of the way from", 3},
    {"one quarter of the way from", 3},
    {"three quarters of the way from", 9},
    {NULL, 0},
};
const struct entry pace_entries[] = {
    {"walking", PACE_WALK},
    {"jogging", PACE_JOG},
    {"slowly", PACE_JOG},
    {"slow", PACE_JOG},
    {"easy", PACE_JOG},
    {"at a jog", PACE_JOG},
    {"at a walk", PACE_WALK},
    {"running", PACE_RUN},
    {"sprinting", PACE_SPRINT},
    {"at full speed", PACE_SPRINT},
    {"full speed", PACE_SPRINT},
    {"hard", PACE_SPRINT},
    {"fast", PACE_SPRINT},
    {"quickly", PACE_SPRINT},
    {"quick", PACE_SPRINT},
    {"explosively", PACE_SPRINT},
    {"aggressively", PACE_SPRINT},
    {"at a sprint", PACE_SPRINT},
    {"full out", PACE_SPRINT},
    {NULL, 0},
};

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_article(struct str word)
{
    return str_is(word, "the") || str_is(word, "a") || str_is(word, "an");
}

struct str words_squeeze(struct str words, char out[WORDS_MOST])
{
    size_t size = 0;
    for (size_t i = 0; i < words.size;) {
        size_t end = i;
        while (end < words.size && words.at[end] != ' ' && words.at[end] != '-') {
            end++;
        }
        struct str word = {words.at + i, end - i};
        if (size + word.size > WORDS_MOST) {
            return (struct str){out, 0};
        }
        for (size_t k = 0; !is_article(word) && k < word.size; k++) {
            out[size++] = lower(word.at[k]);
        }
        i = end + 1;
    }
    return (struct str){out, size};
}

struct str number_as_word(struct str written)
{
    static const char *const words[] = {"one",   "two",   "three", "four", "five",   "six",
                                        "seven", "eight", "nine",  "ten",  "eleven", "twelve"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        if (str_equal_fold(written, str_of(words[i]))) {
            return str_of(words[i]);
        }
    }
    return (struct str){NULL, 0};
}

int take_spot(struct cursor *c)
{
    const struct token *longest = NULL;
    int spot = -1;
    struct index_rows rows = rows_here(c, INDEX_SPOTS);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        const struct token *end = words_behind(c, str_of(spot_entries[*row].words));
        if (end && (!longest || end > longest)) {
            longest = end;
            spot = spot_entries[*row].value;
        }
    }
    if (longest) {
        cursor_take(c, c->at, longest);
    }
    return spot;
}

int take_entry(struct cursor *c, const struct entry *entries)
{
    const struct token *longest = NULL;
    int value = -1;
    struct opening opening = cursor_opening(c);
    if (opening.first == '\0' ||
        !sieves_let(c->sieves, entries, sizeof *entries, opening.first, opening.second)) {
        return -1;
    }
    for (const struct entry *entry = entries; entry->words; entry++) {
        const struct token *end =
            may_open(opening, entry->words) ? words_behind(c, str_of(entry->words)) : NULL;
        if (end && (!longest || end > longest)) {
            longest = end;
            value = entry->value;
        }
    }
    if (longest) {
        cursor_take(c, c->at, longest);
    }
    return value;
}

const char *entry_words(const struct entry *entries, int value)
{
    for (const struct entry *entry = entries; entry->words; entry++) {
        if (entry->value == value) {
            return entry->words;
        }
    }
    return "";
}

/* The letters of the next `count` words, hyphens aside. */
static struct str next_letters(const struct cursor *c, size_t count, char out[WORDS_MOST])
{
    struct cursor trial = *c;
    size_t size = 0;
    while (count > 0) {
        const struct token *next = cursor_next(&trial);
        if (next && token_is_mark(next, '-')) {
            trial.at = next + 1;
            continue;
        }
        if (!next || next->kind != TOKEN_WORD || size + next->text.size > WORDS_MOST) {
            return (struct str){out, 0};
        }
        for (size_t i = 0; i < next->text.size; i++) {
            if (next->text.at[i] != '-') {
                out[size++] = next->text.at[i];
            }
        }
        trial.at = next + 1;
        count--;
    }
    return (struct str){out, size};
}

/* How many letters a word may be off: short words are near to everything, and what begins
 * otherwise is mostly another word. */
static size_t distance_allowed(struct str have, struct str want)
{
    bool alike = have.size > 0 && want.size > 0 && have.at[0] == want.at[0];
    return have.size < 3 ? 0 : have.size >= 6 && alike ? 2 : 1;
}

static size_t near_distance(struct str have, struct str want)
{
    size_t allowed = distance_allowed(have, want);
    if (have.size == 0 || have.size > want.size + allowed || want.size > have.size + allowed) {
        return 3;
    }
    size_t distance = str_distance(have, want, allowed);
    return distance <= allowed ? distance : 3;
}

void said_read(const struct cursor *c, struct said_words *out)
{
    for (size_t i = 0; i < 2; i++) {
        out->said[i] = next_letters(c, i + 1, out->letters[i]);
    }
}

/* False is certain: they are too short, or begin with other letters than one mistake would make. */
static bool may_be_near(struct str have, const char *words)
{
    if (have.size < 3 || strlen(words) + 2 < have.size) {
        return false;
    }
    const char *said = have.at;
    return words[0] == said[0] || !letter_is_plain(words[1]) || words[1] == said[1] ||
           words[1] == said[0] || words[0] == said[1] || words[0] == 'a' || words[0] == 't';
}

size_t words_distance(const struct said_words *said, const char *words)
{
    char wanted[WORDS_MOST];
    if (!may_be_near(said->said[0], words) && !may_be_near(said->said[1], words)) {
        return 3;
    }
    struct str want = words_squeeze(str_of(words), wanted);
    size_t one = near_distance(said->said[0], want), two = near_distance(said->said[1], want);
    return one < two ? one : two;
}

const char *entry_nearest(const struct cursor *c, const struct entry *entries)
{
    const char *nearest = NULL;
    size_t best = 3;
    struct said_words said;
    said_read(c, &said);
    for (const struct entry *entry = entries; entry->words && !c->diags->full; entry++) {
        size_t distance = words_distance(&said, entry->words);
        if (distance > 0 && distance < best) { /* the very word is what was refused */
            best = distance;
            nearest = entry->words;
        }
    }
    return nearest;
}

const char *words_nearest(struct str word, const char *const *candidates)
{
    char have[WORDS_MOST], want[WORDS_MOST];
    struct str letters = words_squeeze(word, have);
    size_t best = 3;
    const char *nearest = NULL;
    for (; *candidates; candidates++) {
        size_t distance = near_distance(letters, words_squeeze(str_of(*candidates), want));
        if (distance > 0 && distance < best) {
            best = distance;
            nearest = *candidates;
        }
    }
    return nearest;
}

bool spot_takes_side(enum spot spot)
{
    return spot_needs_side(spot) || spot == SPOT_BASELINE;
}

bool spot_needs_side(enum spot spot)
{
    static const bool sided[SPOT_COUNT] = {
#define SPOT(symbol, word, sided_, perimeter, source) [SPOT_##symbol] = sided_,
#include "floor/court/spots.def"
#undef SPOT
    };
    return sided[spot];
}
