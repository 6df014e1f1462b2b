/* SPDX-License-Identifier: MIT */
/* blanked: see blanked.h. */
#include "page/sheet/blanked.h"

#include <string.h>

static bool is_of_line(const struct scene_item *item)
{
    return (item->class >= CLASS_MOVE && item->class <= CLASS_SHOT) || item->class == CLASS_END ||
           item->class == CLASS_ORDER;
}

/* Lines on which one of the missing tasks is drawn: a run that goes on is one line. */
static bool *lines_without(struct arena *arena, const struct scene *scene, const bool *missing)
{
    int most = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        most = scene->items.at[i].line > most ? scene->items.at[i].line : most;
    }
    bool *gone = arena_array(arena, bool, (size_t)most + 1);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line >= 0 && item->task >= 0 && missing[item->task]) {
            gone[item->line] = true;
        }
    }
    return gone;
}

/* Whose runs are missing, so that the dot at their end would tell where they go. */
static void find_runners(const struct asked *asked, bool runs[BODY_COUNT])
{
    const struct segment *segment = asked->diagram->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool throws = task->kind == TASK_PASS || task->kind == TASK_SHOOT;
        runs[task->who] = runs[task->who] || (asked->away[i] && !throws);
    }
}

const struct scene *blanked_scene(struct arena *arena, const struct scene *scene,
                                  const struct asked *asked)
{
    const bool *gone = lines_without(arena, scene, asked->away);
    bool runs[BODY_COUNT] = {false};
    find_runners(asked, runs);
    struct scene *out = arena_new(arena, struct scene);
    *out = *scene;
    memset(&out->items, 0, sizeof out->items);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool end = item->class == CLASS_END && item->who < BODY_COUNT && runs[item->who];
        bool own = (item->line >= 0 && gone[item->line]) || end ||
                   (is_of_line(item) && item->task >= 0 && asked->away[item->task]);
        if (!own) {
            VEC_PUSH(arena, &out->items, *item);
        }
    }
    return out;
}
