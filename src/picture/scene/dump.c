/* SPDX-License-Identifier: MIT */
/* dump: a scene as text for goldens, one item a line, points to two decimals. */
#include "picture/scene/scene.h"

static void dump_point(struct strbuf *out, struct vec2 p)
{
    strbuf_char(out, ' ');
    strbuf_number(out, p.x, 2);
    strbuf_char(out, ',');
    strbuf_number(out, p.y, 2);
}

static void dump_path(struct strbuf *out, const struct scene_item *item)
{
    static const char letters[] = {'M', 'L', 'C', 'Z'};
    for (size_t i = 0; i < item->count; i++) {
        const struct path_element *element = &item->path[i];
        strbuf_char(out, ' ');
        strbuf_char(out, letters[element->op]);
        size_t points = element->op == OP_CURVE ? 3 : element->op == OP_CLOSE ? 0 : 1;
        for (size_t p = 0; p < points; p++) {
            dump_point(out, element->p[p]);
        }
    }
}

static void dump_item(struct strbuf *out, const struct scene_item *item)
{
    strbuf_text(out, scene_class_word(item->class));
    if (item->casing) {
        strbuf_text(out, " casing");
    }
    if (item->task >= 0) {
        strbuf_print(out, " task %d", item->task + 1);
    }
    if (item->who != BODY_NONE) {
        strbuf_text(out, " of ");
        body_print(out, item->who);
    }
    if (item->fill != ROLE_NONE) {
        strbuf_print(out, " fill %s", scene_role_word(item->fill));
    }
    if (item->stroke != ROLE_NONE) {
        strbuf_print(out, " stroke %s ", scene_role_word(item->stroke));
        strbuf_number(out, item->width, 2);
    }
    switch (item->shape) {
    case ITEM_PATH:
        dump_path(out, item);
        break;
    case ITEM_CIRCLE:
        strbuf_text(out, " circle");
        dump_point(out, item->at);
        strbuf_char(out, ' ');
        strbuf_number(out, item->radius, 2);
        break;
    case ITEM_TEXT:
        strbuf_text(out, " text");
        dump_point(out, item->at);
        strbuf_print(out, " \"%.*s\" ", STR_ARG(item->text));
        strbuf_number(out, item->size, 2);
        break;
    }
    strbuf_char(out, '\n');
}

void scene_dump(struct strbuf *out, const struct scene *scene)
{
    strbuf_text(out, "scene ");
    strbuf_number(out, scene->width, 2);
    strbuf_text(out, " x ");
    strbuf_number(out, scene->height, 2);
    strbuf_print(out, " %s, %d lines\n%.*s\n", theme_row(scene->theme)->word, scene->lines,
                 STR_ARG(scene->title));
    for (size_t i = 0; i < scene->items.count; i++) {
        dump_item(out, &scene->items.at[i]);
    }
}
