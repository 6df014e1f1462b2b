/* SPDX-License-Identifier: MIT */
/* asked: what a fill-in sheet asks about a play: which line of a diagram is taken away, so that its
 * point is asked for: what a defender's deed means, what a screener does next, which way round a
 * screen, where to stop. The same seed asks the same. Private to sheet. */
#ifndef PAGE_SHEET_ASKED_H
#define PAGE_SHEET_ASKED_H

#include "base/vec.h"
#include "picture/scene/scene.h"

struct asked {
    const struct diagram *diagram;
    const bool *missing;         /* what it asks for, by task of its segment */
    const bool *away;            /* what is not drawn: also what others of the list ask for */
    bool others;                 /* more is away than it asks for */
    size_t lines;                /* how many are taken away */
    struct str title;            /* gives nothing away */
    struct str draw;             /* "Draw a run and a pass." */
    struct str question, answer; /* players' numbers marked */
};
typedef VEC(struct asked) asked_list;

/* One question a step, of a short play up to `least`, in the order of the diagrams. */
void asked_of(struct arena *arena, const struct play *play, const diagram_list *diagrams,
              uint64_t seed, size_t least, asked_list *out);

#endif
