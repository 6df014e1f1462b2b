/* SPDX-License-Identifier: MIT */
/* head: what stands at the head and foot of a page, shortened to its place; and in full what had to
 * be shortened, for the body: nothing is cut off. Private to sheet. */
#ifndef PAGE_SHEET_HEAD_H
#define PAGE_SHEET_HEAD_H

#include "page/sheet/bands.h"

#define HEAD_SIDE 200.0 /* how wide the words at either end of head and foot may be */

enum head_part {
    HEAD_CLUB,
    HEAD_SHEET,
    HEAD_SERIES,
    HEAD_TITLE,
    HEAD_CLOCK,
    HEAD_ABOUT,
    HEAD_DATE,
    HEAD_PARTS
};
struct head {
    struct str whole[HEAD_PARTS];
    const struct text_block *shown[HEAD_PARTS]; /* no lines: nothing */
    bool shortened[HEAD_PARTS];
};

/* A further page has a title of one line and no about line. */
struct head head_make(const struct setter *setter, const struct play *play, bool first);
/* All that a first page shortens, in full; NULL when that is nothing. */
struct galley *head_surplus(const struct setter *setter, const struct play *play);
/* "Larkspur Kites" or the book's name. */
struct str head_club(const struct sheet_job *job);

#endif
