/* SPDX-License-Identifier: MIT */
/* again: a second look at what was laid out. Private to the room. */
#ifndef PICTURE_SCENE_AGAIN_H
#define PICTURE_SCENE_AGAIN_H

#include "picture/scene/drawing.h"

/* A mark that is drawn a little off its place: somebody's numeral (stop -1), or his n-th stop; or
 * all of these as one, for a screener between two others cannot leave his bar behind. */
enum { NUDGE_WHOLE = -2 };
struct nudge {
    body who;
    int stop;
    struct vec2 by; /* points */
};
enum { NUDGES = 6 };
struct nudges {
    struct nudge at[NUDGES];
    size_t count;
};

/* memory.c: what was found for this picture before; NULL: nothing is known of it. */
const struct nudges *memory_find(const struct diagram *diagram,
                                 const struct scene_options *options);
void memory_keep(const struct diagram *diagram, const struct scene_options *options,
                 const struct nudges *nudges);

struct vec2 nudge_of(const struct drawing *drawing, body who, int stop);
/* scene.c: one layout, with those marks moved. */
struct scene *scene_layout(struct arena *arena, const struct diagram *diagram,
                           const struct scene_options *options, const struct nudges *nudges);
/* Does anything lie on anything in it, or has a number no place? */
bool again_is_needed(struct arena *arena, const struct scene *scene);
/* What to move so that the least lies on anything; nothing where nothing does in the first. */
struct nudges again_nudges(struct arena *arena, const struct diagram *diagram,
                           const struct scene_options *options, const struct scene *first);

#endif
