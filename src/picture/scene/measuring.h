/* SPDX-License-Identifier: MIT */
/* measuring: what the files share that count what lies on what. Private to the room. */
#ifndef PICTURE_SCENE_MEASURING_H
#define PICTURE_SCENE_MEASURING_H

#include "picture/scene/drawing.h"

#define TOUCH 0.05 /* points: less is not an overlap */

/* A mark as a disc: a numeral's body, a ring, an X, a cone, a label, an end ring. */
struct blob {
    struct vec2 at;
    double radius;
    body who;
    int line;
    enum measured kind;
    bool lettered; /* a numeral or letter */
    bool led;      /* a label: a thin line leads from it to `tip` */
    struct vec2 tip;
};
typedef VEC(struct blob) blob_list;
/* One run of ink. */
struct inked {
    const struct vec2 *at;
    size_t count;
    double half;
    int line;
    body who;
    enum scene_class class;
    bool bar;
    struct vec2 low, high; /* the box round its middle line */
};
typedef VEC(struct inked) inked_list; /* a head has no width, and its last point is its first */

struct counting {
    struct arena *arena;
    struct sizes size;
    blob_list blobs;
    blob_list baskets; /* rings alone */
    inked_list lines, heads;
    inked_list ticks; /* of a line of players */
    inked_list exes;  /* the two strokes of each X */
    struct scene_measure *found;
};

/* A mark of one lies on one of the other's. */
void measure_count(struct counting *counting, enum measured a, body who, enum measured b,
                   body other);
/* Is a place, is another run, surely further off than that? */
bool ink_is_beyond(const struct inked *inked, struct vec2 low, struct vec2 high, double far);
/* How far a place is; or only that it is further off than `most`. */
double ink_far(const struct inked *inked, struct vec2 at, double most);
/* measure_more.c: arrow heads, the basket, lines of players, a numeral beside its own X. */
void measure_heads(struct counting *counting);
void measure_baskets(struct counting *counting);
void measure_ticks(struct counting *counting);
void measure_numerals(struct counting *counting);

#endif
