/* SPDX-License-Identifier: MIT */
/* taken: which words mean something already and are not free for roles. */
#include <string.h>

#include "language/words/reader.h"
#include "language/words/vocabulary.h"

/* Whether `word` is one of the words of `entry`, or all of them run together. */
static bool is_part_of(struct str word, struct str entry)
{
    for (size_t i = 0; i + word.size <= entry.size; i++) {
        if (entry.at[i] != word.at[0]) {
            continue;
        }
        size_t end = i + word.size;
        bool begins = i == 0 || entry.at[i - 1] == ' ' || entry.at[i - 1] == '-';
        bool ends = end == entry.size || entry.at[end] == ' ' || entry.at[end] == '-';
        if (begins && ends && memcmp(entry.at + i, word.at, word.size) == 0) {
            return true;
        }
    }
    char letters[WORDS_MOST];
    return word.size <= entry.size && may_open((struct opening){word.at[0], '\0'}, entry.at) &&
           str_equal(word, words_squeeze(entry, letters));
}

static bool is_in_entries(struct str word, const struct entry *entries)
{
    for (; entries->words; entries++) {
        if (is_part_of(word, str_of(entries->words))) {
            return true;
        }
    }
    return false;
}

static bool is_verb(struct str word)
{
    for (int i = 0; i < VERB_COUNT; i++) {
        const struct verb_row *row = verb_row((enum verb)i);
        if (is_part_of(word, str_of(row->words)) || is_part_of(word, str_of(row->bare))) {
            return true;
        }
    }
    for (size_t i = 0; i < phrase_count(); i++) {
        struct phrase phrase = phrase_at(i);
        if (is_part_of(word, str_of(phrase.words)) || is_part_of(word, str_of(phrase.bare))) {
            return true;
        }
    }
    return false;
}

/* Words of the grammar that stand in no table. */
static bool is_grammar(struct str word)
{
    static const char *const words[] = {
        "as",        "after",    "when",      "while",    "until",    "once",      "then",
        "meanwhile", "later",    "and",       "or",       "is",       "has",       "open",
        "covered",   "denied",   "past",      "ball",     "coach",    "cone",      "line",
        "end",       "everyone", "else",      "others",   "defender", "behind",    "beside",
        "spot",      "where",    "next",      "halfway",  "between",  "backcourt", "side",
        "weak",      "strong",   "help",      "wide",     "tight",    "early",     "taking",
        "facing",    "his",      "her",       "their",    "him",      "it",        "x",
        "y",         "out",      "over",      "under",    "around",   "middle",    "high",
        "low",       "mid",      "otherwise", "mirrored", "with",     "for",       "screen",
        "pass",      "catch",    "catches",   "shot",     "not",      "never",     "the",
        "a",         "an",       "here",      "mirrors",  NULL};
    for (const char *const *entry = words; *entry; entry++) {
        if (str_is(word, *entry)) {
            return true;
        }
    }
    return false;
}

/* Of the words of all verbs, two bits each: a word without its bits is certainly none of them. The
 * tables are gone through once for a book, not once for each role of it. */
enum { BITS = 1 << 16 };
struct verb_words {
    uint64_t bits[BITS / 64];
};

static uint32_t hash_of(struct str word)
{
    uint32_t hash = 2166136261u;
    for (size_t i = 0; i < word.size; i++) {
        hash = (hash ^ (unsigned char)word.at[i]) * 16777619u;
    }
    return hash;
}

static void put_word(struct verb_words *words, struct str word)
{
    uint32_t hash = hash_of(word), one = hash % BITS, other = hash / BITS;
    words->bits[one / 64] |= (uint64_t)1 << one % 64;
    words->bits[other / 64] |= (uint64_t)1 << other % 64;
}

static bool may_be_verb(const struct verb_words *words, struct str word)
{
    uint32_t hash = hash_of(word), one = hash % BITS, other = hash / BITS;
    return (words->bits[one / 64] >> one % 64 & 1) && (words->bits[other / 64] >> other % 64 & 1);
}

/* Every word of an entry, what hyphens join in one too, and all of them run together. */
static void put_entry(struct verb_words *words, const char *entry)
{
    struct str all = str_of(entry);
    char letters[WORDS_MOST];
    put_word(words, words_squeeze(all, letters));
    for (size_t from = 0; from < all.size; from++) {
        bool begins = from == 0 || all.at[from - 1] == ' ' || all.at[from - 1] == '-';
        for (size_t to = from + 1; begins && to <= all.size; to++) {
            bool ends = to == all.size || all.at[to] == ' ' || all.at[to] == '-';
            if (ends) {
                put_word(words, (struct str){all.at + from, to - from});
            }
            if (to < all.size && all.at[to] == ' ') {
                break;
            }
        }
    }
}

static const struct verb_words *verb_words(struct shelf *shelf)
{
    if (!shelf->verb_words) {
        shelf->verb_words = arena_new(shelf->arena, struct verb_words);
        for (int i = 0; i < VERB_COUNT; i++) {
            put_entry(shelf->verb_words, verb_row((enum verb)i)->words);
            put_entry(shelf->verb_words, verb_row((enum verb)i)->bare);
        }
        for (size_t i = 0; i < phrase_count(); i++) {
            struct phrase phrase = phrase_at(i);
            put_entry(shelf->verb_words, phrase.words);
            put_entry(shelf->verb_words, phrase.bare);
        }
    }
    return shelf->verb_words;
}

static bool taken_by(struct str word, bool may_be_verb)
{
    struct token token = {
        .kind = TOKEN_WORD, .text = word, .first = word.size > 0 ? word.at[0] : (char)0};
    struct line line = {.tokens = &token, .count = 1};
    return is_grammar(word) || opener_of(&line, 0).kind != LINE_OTHER ||
           (may_be_verb && is_verb(word)) || is_in_entries(word, spot_entries) ||
           is_in_entries(word, side_entries) || is_in_entries(word, direction_entries) ||
           is_in_entries(word, way_entries) || is_in_entries(word, pace_entries);
}

bool word_is_taken(struct str word)
{
    return taken_by(word, true);
}

bool role_is_taken(struct shelf *shelf, struct str word)
{
    return taken_by(word, may_be_verb(verb_words(shelf), word));
}
