/* SPDX-License-Identifier: MIT */
/* index: see index.h. */
#include "language/words/index.h"

#include "index.inc"

struct index_rows index_of(enum index_table table, char first, char second)
{
    static const struct {
        const unsigned char *many;
        const unsigned short *letters, *rows;
    } tables[INDEX_TABLES] = {
        {phrase_many, phrase_letters, phrase_rows}, {hint_many, hint_letters, hint_rows},
        {opener_many, opener_letters, opener_rows}, {spot_many, spot_letters, spot_rows},
        {aside_many, aside_letters, aside_rows},    {person_many, person_letters, person_rows}};
    unsigned letter = index_letter(first), bucket = letter * INDEX_LETTERS;
    const unsigned short *at = tables[table].rows + tables[table].letters[letter];
    if (second == '\0') {
        return (struct index_rows){at, tables[table].rows + tables[table].letters[letter + 1]};
    }
    for (; bucket < index_bucket(first, second); bucket++) {
        at += tables[table].many[bucket];
    }
    return (struct index_rows){at, at + tables[table].many[bucket]};
}

const char *index_thirds(const unsigned short *at)
{
    return phrase_thirds + (at - phrase_rows);
}
