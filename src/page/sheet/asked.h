/* SPDX-License-Identifier: MIT */
/* asked: what a fill-in sheet asks about a play: which lines of a picture are taken away, so that
 * its point is asked for: what a defender's deed means, what a screener does next, which way round
 * a screen, where to stop. Each picture stands once, with one or more blanks; what would give a
 * blank away is blank, too. The same seed asks the same. Private to sheet. */
#ifndef PAGE_SHEET_ASKED_H
#define PAGE_SHEET_ASKED_H

#include "base/vec.h"
#include "picture/scene/scene.h"

/* What one player's missing lines are asked by. */
struct blank {
    char letter; /* 'A', 'B', in the order in which they happen */
    body who;    /* they begin where he stands, or where the last of his lines that is drawn ends */
    const bool *tasks;           /* of its segment: what is missing */
    size_t first;                /* the first of them that has a line */
    size_t lines;                /* how many that are */
    struct str question, answer; /* players' numbers marked */
};
typedef VEC(struct blank) blank_list;

enum { BLANK_LETTERS = 26 };

struct asked {
    const struct diagram *diagram;
    const struct scene *scene; /* whole */
    struct str title;          /* gives nothing away */
    const bool *missing;       /* of all its blanks, by task of its segment */
    size_t lines;
    blank_list blanks;
};
typedef VEC(struct asked) asked_list;

/* One picture a step, or one for each of its reads, of a short play up to `least` questions; drawn
 * for columns of this width. */
void asked_of(struct arena *arena, const struct play *play, const diagram_list *diagrams,
              uint64_t seed, size_t least, double width, asked_list *out);

/* How many from `from` on may be seen together: none of them begins where the lines that another
 * asks for end, or draws one that tells it. */
size_t asked_together(const asked_list *asked, size_t from);

#endif
