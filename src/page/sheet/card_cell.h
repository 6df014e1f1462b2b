/* SPDX-License-Identifier: MIT */
/* card_cell: one way through a step as a small card: situation, call, name, diagram, caution.
 * Private to sheet. */
#ifndef PAGE_SHEET_CARD_CELL_H
#define PAGE_SHEET_CARD_CELL_H

#include "page/sheet/galley.h"
#include "page/sheet/situation.h"
#include "page/sheet/words.h"

/* How cards stand on a page. Points. */
struct card_size {
    int per_page, across;
    double width, height; /* of one card */
    double inside;        /* margin */
    double diagram;       /* its width */
    double side;          /* of the words of a card of two columns, beside its diagram */
    double first;         /* baseline of situation and call */
    double to_name;       /* from there to the name's baseline */
    double to_diagram;    /* from the last line over it to the diagram */
    double to_caution;    /* from the diagram to the next baseline */
    enum type name;
};
const struct card_size *card_size_find(int per_page); /* NULL: there is none */

struct card_cell {
    const struct galley *galley;
    size_t rows;      /* it is so many cards high, */
    size_t columns;   /* and so many wide: two where a diagram is busy */
    bool busy;        /* many of its numbers have no room on their lines */
    size_t less;      /* steps by which its floor was cut, or made smaller, to fit */
    struct str whole; /* the name, when it had to be shortened; else empty */
};
/* `alone`: the play has no other card, so that its name says all. */
struct card_cell card_cell_make(const struct setter *setter, const struct card_size *size,
                                const struct diagram *diagram, struct str situation, bool alone);

#endif
