/* SPDX-License-Identifier: MIT */
#include "pictured.h"

const struct diagram *diagram_of(const char *text, int step, int branch)
{
    diagram_list diagrams = {0};
    scene_diagrams(&arena, floor_run(text), &diagrams);
    for (size_t i = 0; i < diagrams.count; i++) {
        if (diagrams.at[i].step == step - 1 && diagrams.at[i].branch == branch) {
            return &diagrams.at[i];
        }
    }
    ck_abort_msg("no diagram of step %d, branch %d", step, branch);
    return NULL;
}

struct scene *pictured(const char *text, int step, int branch, double width)
{
    struct scene_options options = {.width = width, .accent = BODY_NONE};
    return scene_make(&arena, diagram_of(text, step, branch), &options);
}

bool is_drawn_line(const struct scene_item *item, enum scene_class class, body who)
{
    return item->class == class && item->who == who && item->shape == ITEM_PATH &&
           item->stroke != ROLE_NONE && !item->casing;
}

bool is_bar(const struct scene *scene, const struct scene_item *item)
{
    return item->class == CLASS_SCREEN && item->width > 1.2 * sizes_of(scene->scale).line;
}

const struct scene_item *drawn_line(const struct scene *scene, enum scene_class class, body who)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (is_drawn_line(item, class, who) && !is_bar(scene, item)) {
            return item;
        }
    }
    return NULL;
}
