/* SPDX-License-Identifier: MIT */
/* index_make: run while the program is built: writes, for each table of the language, which rows
 * can begin at a word, by the first two letters of it. So a word is looked for among the few rows
 * that it may open instead of among all, in tables that stay in the order they are written in. What
 * it writes is read by index.c. */
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "language/words/index.h"

struct row {
    const char *words, *bare; /* two ways to say it, or the same twice */
};

static const struct row phrase_rows[] = {
#define PHRASE(verb, words, bare, ...) {words, bare},
#include "language/words/phrases.def"
#undef PHRASE
#define VERB(symbol, words, bare, ...) {words, bare},
#include "language/words/verbs.def"
#undef VERB
};
static const struct row hint_rows[] = {
#define HINT(where, words, help) {words, words},
#include "language/words/hints.def"
#undef HINT
};
static const struct row opener_rows[] = {
#define OPENER(word, kind, which) {word, word},
#include "language/words/openers.def"
#undef OPENER
#define SETTING(symbol, word, where) {word, word},
#include "language/words/settings.def"
#undef SETTING
    {"defence", "defence"},
};
static const struct row spot_rows[] = {
#define SPOT_WORDS(words, spot) {words, words},
#include "language/words/spot_words.def"
#undef SPOT_WORDS
};

static const struct row aside_rows[] = {
#define ASIDE(kind, words) {words, words},
#include "language/words/asides.def"
#undef ASIDE
};

static const struct row person_rows[] = {
#define PERSON(words, person, number, deed) {words, words},
#include "language/words/people.def"
#undef PERSON
};

/* Past what stands between the letters of a row: blanks, hyphens, and articles at a word's start.
 */
static const char *past_gap(const char *at, bool begins)
{
    for (;;) {
        size_t skip = *at == ' ' || *at == '-'                ? 1
                      : begins && strncmp(at, "the ", 4) == 0 ? 4
                      : begins && strncmp(at, "an ", 3) == 0  ? 3
                      : begins && strncmp(at, "a ", 2) == 0   ? 2
                                                              : 0;
        if (skip == 0) {
            return at;
        }
        at += skip;
        begins = true;
    }
}

static unsigned bucket_of_words(const char *words)
{
    const char *first = past_gap(words, true);
    const char *second = *first ? past_gap(first + 1, false) : first;
    return index_bucket(*first, *second);
}

static bool begins_in(const struct row *row, unsigned bucket)
{
    return bucket_of_words(row->words) == bucket || bucket_of_words(row->bare) == bucket;
}

/* How many rows each bucket has, and how many stand before each first letter. False: more than a
 * byte holds. */
static bool write_index(const char *name, const struct row *rows, unsigned count)
{
    unsigned before[INDEX_LETTERS + 1] = {0};
    bool fits = true;
    printf("static const unsigned char %s_many[] = {", name);
    for (unsigned bucket = 0; bucket < INDEX_BUCKETS; bucket++) {
        unsigned many = 0;
        for (unsigned i = 0; i < count; i++) {
            many += begins_in(&rows[i], bucket);
        }
        before[bucket / INDEX_LETTERS + 1] += many;
        fits = fits && many < 256;
        printf("%u,", many);
    }
    printf("};\nstatic const unsigned short %s_letters[] = {", name);
    for (unsigned letter = 0; letter < INDEX_LETTERS; letter++) {
        printf("%u,", before[letter]);
        before[letter + 1] += before[letter];
    }
    printf("%u};\nstatic const unsigned short %s_rows[] = {", before[INDEX_LETTERS], name);
    for (unsigned bucket = 0; bucket < INDEX_BUCKETS; bucket++) {
        for (unsigned i = 0; i < count; i++) {
            if (begins_in(&rows[i], bucket)) {
                printf("%u,", i);
            }
        }
    }
    printf("};\n");
    return fits;
}

/* The third letter of these words, where the first three are plain; else any_letter. False: they
 * do not begin in this bucket. */
static const char any_letter = '\0';
static bool third_letter(const char *words, unsigned bucket, char *third)
{
    if (bucket_of_words(words) != bucket) {
        return false;
    }
    bool plain = past_gap(words, true) == words;
    for (unsigned i = 0; plain && i < 3; i++) {
        plain = words[i] >= 'a' && words[i] <= 'z';
    }
    *third = plain ? words[2] : any_letter;
    return true;
}

/* Beside each row of a bucket the third letter of its words, where it is certain. */
static void write_thirds(const char *name, const struct row *rows, unsigned count)
{
    printf("static const char %s_thirds[] = {", name);
    for (unsigned bucket = 0; bucket < INDEX_BUCKETS; bucket++) {
        for (unsigned i = 0; i < count; i++) {
            char words = any_letter, bare = any_letter;
            bool both = third_letter(rows[i].words, bucket, &words);
            both = third_letter(rows[i].bare, bucket, &bare) && both;
            if (begins_in(&rows[i], bucket)) {
                printf("%d,", !both ? words + bare : words == bare ? words : any_letter);
            }
        }
    }
    printf("};\n");
}

#define WRITE(name) write_index(#name, name##_rows, sizeof name##_rows / sizeof *name##_rows)

int main(void)
{
    bool fits = WRITE(phrase);
    write_thirds("phrase", phrase_rows, sizeof phrase_rows / sizeof *phrase_rows);
    fits = WRITE(hint) && fits;
    fits = WRITE(opener) && fits;
    fits = WRITE(spot) && fits;
    fits = WRITE(aside) && fits;
    fits = WRITE(person) && fits;
    return fits ? 0 : 1;
}
