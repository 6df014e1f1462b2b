/* SPDX-License-Identifier: MIT */
/* discs: how the order discs are drawn, once they have their places: over everything, each with
 * white round it, and before it the thin line that leads from it to its own. */
#include "picture/scene/labels.h"

static void tag(struct scene_item *item, const struct disc *disc)
{
    item->task = disc->task;
    item->line = disc->line;
    item->who = disc->who;
}

/* The reader's own, of the part that is to be seen as such. */
static bool is_readers(const struct drawing *drawing, const struct disc *disc)
{
    const struct scene_options *options = drawing->options;
    return disc->who == options->accent &&
           (options->accent_at == 0 || disc->task >= (int)options->accent_at);
}

static void number_draw(struct drawing *drawing, const struct disc *disc)
{
    double narrow = disc->order > 9 ? 0.86 : 1;
    double size = real_max(8.0 * narrow, drawing->size.order_numeral * narrow);
    struct str number = str_format(drawing->arena, "%d", disc->order);
    tag(put_text(drawing, CLASS_ORDER, number, disc->at, size, FACE_SEMIBOLD, ROLE_ORDER_TEXT),
        disc);
}

/* Over the white of the disc, its own white ends short of what it leads to. */
static void leader_draw(struct drawing *drawing, const struct disc *disc, enum role role)
{
    struct vec2 way = vec2_unit(vec2_sub(disc->tip, disc->at));
    struct vec2 from = vec2_along(disc->at, way, drawing->size.order - 0.1);
    double width = drawing->size.leader, white = drawing->size.casing;
    for (int casing = 1; casing >= 0; casing--) {
        pen_move(drawing, from);
        pen_line(drawing, casing ? vec2_along(disc->tip, way, -white) : disc->tip);
        struct scene_item *item =
            pen_stroke(drawing, CLASS_ORDER, casing ? ground_at(drawing, disc->at) : role,
                       casing ? width + 2 * white : width);
        item->casing = casing == 1;
        tag(item, disc);
    }
}

void discs_draw(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->discs.count; i++) {
        const struct disc *disc = &drawing->discs.at[i];
        enum role role = is_readers(drawing, disc) ? ROLE_ACCENT : ROLE_ORDER;
        struct scene_item *item = put_circle(drawing, CLASS_ORDER, disc->at, disc_white(size),
                                             ground_at(drawing, disc->at), ROLE_NONE, 0);
        item->casing = true;
        tag(item, disc);
        if (disc->led) {
            leader_draw(drawing, disc, role);
        }
        tag(put_circle(drawing, CLASS_ORDER, disc->at, size->order, role, ROLE_NONE, 0), disc);
        number_draw(drawing, disc);
    }
}
