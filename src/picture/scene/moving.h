/* SPDX-License-Identifier: MIT */
/* moving: a play, or one step or read of it, as a picture that moves: what is drawn, and when it is
 * where. Takes segments of a run and the stretches of their clock that are shown, one after the
 * other; gives groups of marks with keys on the picture's own clock, in points, y down, in the
 * frame of a scene of the same options. No court: that is a scene's. The players are
 * where the run has them, not where paper would push them. */
#ifndef PICTURE_SCENE_MOVING_H
#define PICTURE_SCENE_MOVING_H

#include "picture/scene/scene.h"

/* One stretch of a segment. */
struct moving_part {
    struct diagram diagram;
    double from, to;      /* seconds of its segment */
    bool common;          /* only the sentences that all of the step's reads share */
    bool again;           /* its step was told by a part before it */
    double before, after; /* seconds before anything is played, and when it is over */
    double back;          /* of `before`, first: everybody returns, and the title says so */
};
typedef VEC(struct moving_part) moving_part_list;
/* One diagram alone. A step: all of it; before its reads, until what they share is done and the
 * first of them is answered. A read: its step from the beginning, with this answer. */
struct moving_part moving_part_of(const struct diagram *diagram);
/* A whole play in the order of its labels. What goes on from the part before it does so without a
 * stop; else everybody returns, and a step that was told is told again from a little before its
 * answer. */
void moving_parts_of(struct arena *arena, const diagram_list *diagrams, moving_part_list *parts);
#define MOVING_BEFORE 1.0 /* s: the picture stands before anybody moves (ours) */
#define MOVING_AFTER 1.5  /* s: and when it is over (ours) */
#define MOVING_BACK 0.8   /* s: of returning (ours) */
#define MOVING_LEAD 2.0   /* s: of what led up to an answer (ours) */

/* Between keys everything goes straight and evenly; two keys of one time are a jump. Before the
 * first it is as there, after the last as there. Every time is a whole number of ticks, every place
 * of a way or an end a whole number of grains, so that it is told in few digits. */
#define MOVING_GRAIN 0.25 /* pt */
struct moving_key {
    double t; /* s of the picture */
    struct vec2 at;
};
typedef VEC(struct moving_key) moving_keys;
struct moving_show {
    double from, to; /* s of the picture; `to` of what stays at the end is beyond it */
};
typedef VEC(struct moving_show) moving_shows;
struct moving_mark {
    struct scene_item item; /* about (0, 0) where its group has a way; text with a stroke has it as
                             * a rim under the letters */
    double dash, space;     /* points, of a straight line; 0: a whole line */
    moving_shows shows;     /* when it is seen; none: with its group */
    moving_keys ends;       /* where the second of its two points is */
};
struct moving_group {
    enum scene_class class;
    body who;           /* whose it is; BODY_NONE: a prop, the ball */
    int part;           /* the one it is seen in; -1: all */
    bool trail;         /* what has been: lighter; a part's trails come first, together */
    moving_shows shows; /* when it is seen; none: all the time */
    moving_keys way;    /* where its (0, 0) is; none: it stands */
    moving_keys erased; /* at.x: the share of its line, from its start, that is gone; */
    double length;      /* points, of that line */
    VEC(struct moving_mark) marks;
};
struct moving {
    double width, height, scale; /* of the frame, points; points a foot */
    struct floor_place floor;
    enum theme theme;
    double duration, tick; /* s */
    int decimals;          /* a tick is 10^-decimals of the duration */
    VEC(struct moving_group) groups;
    moving_shows parts; /* when each is shown, its holds counted in */
};

/* Attackers and the ball within 3.8 cm of the run at every tick, defenders within 5.8. Of `options`
 * the width, the theme, `heading`, `together` and hide_defense count. */
struct moving *moving_make(struct arena *arena, const struct moving_part *parts, size_t count,
                           const struct scene_options *options);

#endif
