/* SPDX-License-Identifier: MIT */
/* sides: how far round each mark each line goes is measured on what is drawn, in both pictures. */
#include "sides.h"

#include <math.h>

/* What may be passed. */
struct mark {
    struct vec2 at;
    body who;
    int line; /* a bar's; a numeral has none */
};
typedef VEC(struct mark) mark_list;

bool is_movement(const struct scene_item *item, const struct sizes *size)
{
    bool runs = item->class == CLASS_MOVE || item->class == CLASS_DRIBBLE ||
                (item->class == CLASS_SCREEN && !item_is_bar(item, size));
    return runs && item->shape == ITEM_PATH && item->fill == ROLE_NONE && !item->casing;
}

static void marks_find(struct arena *arena, const struct scene *scene, mark_list *marks)
{
    struct sizes size = sizes_of(scene->scale);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_PLAYER && item->shape == ITEM_TEXT) {
            struct vec2 middle = item->at;
            middle.y -= 0.5 * METRICS_CAP_HEIGHT * item->size;
            VEC_PUSH(arena, marks, ((struct mark){middle, item->who, -1}));
        } else if (item->class == CLASS_SCREEN && item_is_bar(item, &size) && !item->casing) {
            struct vec2 middle = vec2_mix(item->path[0].p[0], item->path[1].p[0], 0.5);
            VEC_PUSH(arena, marks, ((struct mark){middle, item->who, item->line}));
        }
    }
}

/* All the ink of a line's movement, gaps at what it crosses bridged. */
static points_list line_ink(struct arena *arena, const struct scene *scene, int line, body *who)
{
    points_list points = {0};
    struct sizes size = sizes_of(scene->scale);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line == line && is_movement(item, &size)) {
            *who = item->who;
            for (size_t from = 0; from < item->count;) {
                from = item_ink(arena, item, from, 0.1, &points);
            }
        }
    }
    return points;
}

static const struct mark *mark_like(const mark_list *marks, const struct mark *mark)
{
    for (size_t i = 0; i < marks->count; i++) {
        if (marks->at[i].who == mark->who && marks->at[i].line == mark->line) {
            return &marks->at[i];
        }
    }
    return NULL;
}

static int line_differs(struct arena *arena, const struct scene *large, const mark_list *in_large,
                        const struct scene *small, const mark_list *in_small, int line)
{
    body who = BODY_NONE;
    points_list one = line_ink(arena, large, line, &who);
    points_list other = line_ink(arena, small, line, &who);
    int differ = 0;
    for (size_t i = 0; i < in_large->count && one.count > 1 && other.count > 1; i++) {
        const struct mark *mark = &in_large->at[i], *same = mark_like(in_small, mark);
        if (same && mark->who != who) {
            double far = sweep_round(mark->at, one.at, one.count) -
                         sweep_round(same->at, other.at, other.count);
            differ += fabs(far) > REAL_PI ? 1 : 0;
        }
    }
    return differ;
}

int sides_differ(struct arena *arena, const struct scene *large, const struct scene *small)
{
    mark_list in_large = {0}, in_small = {0};
    int lines = 0, differ = 0;
    marks_find(arena, large, &in_large);
    marks_find(arena, small, &in_small);
    for (size_t i = 0; i < large->items.count; i++) {
        int line = large->items.at[i].line;
        lines = line >= lines ? line + 1 : lines;
    }
    for (int line = 0; line < lines; line++) {
        differ += line_differs(arena, large, &in_large, small, &in_small, line);
    }
    return differ;
}
