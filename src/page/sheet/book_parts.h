/* SPDX-License-Identifier: MIT */
/* book_parts: what a book is put together from: its plays with their pages, cover, contents, index.
 * Private to sheet. */
#ifndef PAGE_SHEET_BOOK_PARTS_H
#define PAGE_SHEET_BOOK_PARTS_H

#include "page/sheet/play_pages.h"

/* Names of places in the document. */
#define PLACE_CONTENTS "contents"
#define PLACE_INDEX "index"
#define HEAD_TOP 40.0 /* points: where a page's running head begins; links lead there */
const char *book_play_place(struct arena *arena, size_t index);

struct book_play {
    const struct play *play;
    size_t page;    /* in the book, from 1 */
    size_t chapter; /* of the playbook, from 0; CHAPTER_NONE: in none */
    size_t last_page;
    double last_line; /* on it, the top of its line; 0: there is no room for one */
};
#define CHAPTER_NONE ((size_t)-1)
typedef VEC(struct book_play) book_play_list;

/* Pages that are whole but for their feet. */
typedef VEC(struct galley *) galley_list;

/* Where the crest stands on the cover: at the right over the rule. Points on the page. */
#define CREST_TOP 36.0
#define CREST_WIDE 150.0
#define CREST_TALL 66.0

/* All of these: in the setter's arena. */
struct galley *book_cover(const struct setter *setter, const struct run *run);
/* "Playbook, under 16 girls" at its head. */
struct str book_sheet_words(const struct setter *setter);
/* The name on the cover: the book's own, unless that is the club's. */
struct str book_title(const struct sheet_job *job);
/* Among those with a title, from 1. */
size_t book_chapter_number(const struct sheet_job *job, size_t chapter);
/* "1 Motion", or nothing. */
struct str book_chapter_words(struct arena *arena, const struct sheet_job *job, size_t chapter);
/* `index_page`: 0: there is no index. */
void book_contents(const struct setter *setter, const book_play_list *plays, size_t index_page,
                   galley_list *pages);
/* A book of drills alone may have nothing to look up. */
bool book_has_index(const struct setter *setter, const book_play_list *plays);
/* What leads to the play in the index, but for its players: actions, formation, tags. */
struct str book_index_words(struct arena *arena, const struct sheet_job *job,
                            const struct play *play);
/* The line at the end of a play's pages, how tall it is and the line itself: what it is found
 * under, and the play whose other side it is. `left`: the page's margin. */
double book_line_height(const struct setter *setter, const book_play_list *plays, size_t index);
void book_line_put(const struct setter *setter, const book_play_list *plays, size_t index,
                   struct galley *page, double left);
void book_index(const struct setter *setter, const book_play_list *plays, galley_list *pages);

#endif
