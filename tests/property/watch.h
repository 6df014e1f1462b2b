/* SPDX-License-Identifier: MIT */
/* watch: looks at every tick of a run and counts what must not be: legs that do more than legs
 * can, bodies in bodies, trembling, feet off the floor, a defender under the ring. Changes nothing.
 */
#ifndef TESTS_PROPERTY_WATCH_H
#define TESTS_PROPERTY_WATCH_H

#include "floor/sim/world.h"

/* The worst case of a kind, and where it was. */
struct worst {
    const char *kind;
    double value;
    uint64_t seed;
    int step, branch;
    double t;
    body who, other;
};

enum { WATCH_TURNS = 8 };

/* One body's movement in the segment that is being run. */
struct motion_memory {
    struct vec2 at, v; /* at the end of the tick before */
    struct vec2 way;   /* the last way in which it really moved, unit */
    double slow_since; /* since when it has been at rest; < 0: it is not */
    double stirred; /* when it last turned about at rest; counted unless it then goes; < 0: not */
    double written; /* a turn that was written: the last one, s */
    size_t passed, head; /* corners of its course, sentences of its queue */
    const struct vec2 *course;
    double turned[WATCH_TURNS]; /* when it last turned about, unwritten */
    size_t turns;
};

/* The foot that one body planted last, and what it can have been for. */
struct plant_memory {
    const struct vec2 *course;
    size_t passed;
    struct vec2 to;
    double ends; /* s */
};

struct watch {
    bool list; /* each case is printed, not only counted */
    uint64_t seed;
    const struct segment *segment; /* the one that is being run */
    struct motion_memory memory[BODY_COUNT];
    struct plant_memory plant[BODY_COUNT];
    /* counts */
    uint64_t ticks, body_ticks, pairs;
    uint64_t too_fast, too_hard, shoved, overlaps, outside, under_ring;
    uint64_t trembling, dancing; /* turns about at rest; the third in one second */
    double seconds;
    struct worst fast, hard, shove, overlap, out, ring, tremble, dance;
};

void watch_tick(void *watch, const struct world *world, bool met);

#endif
