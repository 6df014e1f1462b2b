/* SPDX-License-Identifier: MIT */
/* play_pages: the pages of one play as its handout has them, for a sheet that goes on round them.
 * Private to sheet. */
#ifndef PAGE_SHEET_PLAY_PAGES_H
#define PAGE_SHEET_PLAY_PAGES_H

#include "page/sheet/booklet.h"

/* A bookmark. */
struct mark {
    struct str title;
    size_t page; /* from 1 */
    bool inside; /* under the play before it */
};
/* Pages that are whole but for their feet. */
struct play_pages {
    struct page *pages;
    size_t count;
    const struct mark *marks; /* the play first, then its steps */
    size_t mark_count;
    double last_line; /* on the last page, where room was kept for it: its top; 0: none was */
};
void play_pages_make(const struct setter *setter, const struct run *run, struct play_pages *pages);
/* Behind the booklet's last page, with their bookmarks: the play's of that level, its steps' one
 * deeper. */
void play_pages_keep(struct booklet *booklet, const struct play_pages *pages, int level);

#endif
