/* SPDX-License-Identifier: MIT */
/* page: what every page has round its body: running head, title, key, caution, foot. Private to
 * sheet. */
#ifndef PAGE_SHEET_PAGE_H
#define PAGE_SHEET_PAGE_H

#include "page/sheet/head.h"

#define LETTER_TOP 8.0    /* a band's top is so far over its first baseline */
#define NOTES_PITCH 22.0  /* between ruled lines for notes */
enum { NOTES_LEAST = 3 }; /* fewer are not worth ruling */

struct paper {
    double width, height, margin;
    double foot; /* how much lower the foot stands than on letter */
};
const struct paper *paper_of(bool a4);

/* What a row of steps leaves free at its right. */
struct free_place {
    double width, top, bottom;
    double words; /* height of what stands there already */
};

/* A page being filled; all places are the page's own. */
struct page {
    struct galley *galley;
    const struct head_words *head;
    double y;      /* the body is filled down to here */
    double bottom; /* and may be down to here */
    double key;    /* the key's baseline */
    bool empty;    /* nothing in the body yet */
    bool first;    /* of its play */
    bool keyless;  /* it needs no key */
    int rows;      /* of steps */
    unsigned uses; /* what its key shows besides what its diagrams do */
    struct free_place free;
    band_list bands; /* what stands on it, for its line of contents */
    double about;    /* baseline of that line */
};
typedef VEC(struct page) page_list;

/* What a caution is made of: the sheet's own lines, those for the young, the coach's own. */
enum caution_kind {
    CAUTION_PLAYERS,
    CAUTION_PRACTICE,
    CAUTION_NONE /* there is no diagram */
};
struct caution {
    enum caution_kind kind;
    bool young;
    const struct str *own;
    size_t own_count;
};
struct caution caution_of_play(const struct play *play);
/* Of all of them: young when one of them is, each of the coach's own lines once. */
struct caution caution_of_plays(struct arena *arena, enum caution_kind kind,
                                const struct play *const *plays, size_t count);
/* Of all the plays of the sheet. */
struct caution caution_of_job(const struct setter *setter);
/* Lines of caution that stand at the foot of every page; the rest of the coach's own lines goes
 * where `surplus` says: true when they are too many for the foot. */
const struct galley *page_caution(const struct setter *setter, const struct caution *caution,
                                  bool *surplus);

/* A new page with its running head and title, ready for its body. */
struct page page_open(const struct setter *setter, const struct head_words *head,
                      const struct galley *caution, bool first);
/* Key and caution, when the body is whole. */
void page_finish(const struct setter *setter, struct page *page, const struct galley *caution);
/* The foot, when the pages are counted; number 0: the page has none. */
void page_foot(const struct setter *setter, struct galley *galley, struct str words, size_t number,
               size_t count);
/* Both. */
void page_close(const struct setter *setter, struct page *page, const struct galley *caution,
                size_t number, size_t count);

#endif
