/* SPDX-License-Identifier: MIT */
/* index: see index.h. */
#include "language/words/index.h"

#include "index.inc"

struct index_rows index_of(enum index_table table, char first, char second)
{
    static const unsigned short *const firsts[INDEX_TABLES] = {
        phrase_first, hint_first, opener_first, spot_first, aside_first};
    static const unsigned short *const rows[INDEX_TABLES] = {phrase_rows, hint_rows, opener_rows,
                                                             spot_rows, aside_rows};
    unsigned from = index_bucket(first, second);
    unsigned to = second == '\0' ? from + INDEX_LETTERS : from + 1;
    return (struct index_rows){rows[table] + firsts[table][from], rows[table] + firsts[table][to]};
}
