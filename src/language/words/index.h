/* SPDX-License-Identifier: MIT */
/* index: which rows of the large tables a word may begin, by its first two letters: made while the
 * program is built, by index_make.c. Inside words only. */
#ifndef LANGUAGE_WORDS_INDEX_H
#define LANGUAGE_WORDS_INDEX_H

enum { INDEX_LETTERS = 28, INDEX_BUCKETS = INDEX_LETTERS * INDEX_LETTERS };

/* 0: no letter at all, 1 to 26: a to z, 27: anything else. */
static inline unsigned index_letter(char letter)
{
    return letter >= 'a' && letter <= 'z' ? (unsigned)(letter - 'a') + 1u
           : letter == '\0'               ? 0u
                                          : INDEX_LETTERS - 1u;
}
static inline unsigned index_bucket(char first, char second)
{
    return index_letter(first) * INDEX_LETTERS + index_letter(second);
}

/* Rows by their numbers, some of them twice, in no order that means anything: [at, end). */
struct index_rows {
    const unsigned short *at, *end;
};
enum index_table {
    INDEX_PHRASES, /* of phrases.def, then of verbs.def */
    INDEX_HINTS,
    INDEX_OPENERS, /* of openers.def, of settings.def, and defence */
    INDEX_SPOTS,   /* of spot_words.def */
    INDEX_ASIDES,  /* of asides.def */
    INDEX_PEOPLE,  /* of people.def */
    INDEX_TABLES
};
/* `second` is NUL for a word of one letter, whose row may go on with any. */
struct index_rows index_of(enum index_table table, char first, char second);
/* Beside the rows of INDEX_PHRASES that begin at `at`: the third letter of each one's words; NUL:
 * any. Of no use for a word of one or two letters. */
const char *index_thirds(const unsigned short *at);

#endif
