/* SPDX-License-Identifier: MIT */
/* play_pages: the pages of one play as its handout has them, for a sheet that goes on round them.
 * Private to sheet. */
#ifndef PAGE_SHEET_PLAY_PAGES_H
#define PAGE_SHEET_PLAY_PAGES_H

#include "page/sheet/page.h"

/* A bookmark. */
struct mark {
    const char *title;
    size_t page; /* from 1 */
    bool inside; /* under the play before it */
};
/* Pages that are whole but for their numbers: page_close is still to come. */
struct play_pages {
    struct page *pages;
    const struct galley *const *cautions; /* of each page */
    size_t count;
    const struct mark *marks; /* the play first, then its steps */
    size_t mark_count;
};
void play_pages_make(const struct setter *setter, const struct run *run, struct play_pages *pages);

#endif
