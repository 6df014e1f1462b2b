/* SPDX-License-Identifier: MIT */
/* key: one sample of each mark for the key at the foot of a page, in the sizes of a 3.3 in diagram.
 */
#include "picture/scene/drawing.h"

#define KEY_SCALE 4.714 /* points a foot at 3.3 in */

static void sample_stroke(struct drawing *drawing, enum scene_class class, struct vec2 at,
                          double length)
{
    struct stroke stroke = {.class = class,
                            .who = BODY_NONE,
                            .other = BODY_NONE,
                            .start = -1,
                            .end = -1,
                            .grow = 1,
                            .role = ROLE_INK,
                            .parts = 1,
                            .head = class != CLASS_SCREEN && class != CLASS_HANDOFF};
    stroke.part[0].task = -1;
    struct vec2 ends[2] = {at, vec2_of(at.x + length, at.y)};
    stroke.trail.at = (struct vec2 *)arena_copy(drawing->arena, (const char *)ends, sizeof ends);
    stroke.trail.count = 2;
    stroke.path = path_of(drawing->arena, stroke.trail.at, 2);
    if (class == CLASS_SCREEN) {
        stroke.end = stop_add(
            drawing, (struct stop){.kind = STOP_BAR, .at = ends[1], .facing = vec2_of(1, 0)});
    }
    VEC_PUSH(drawing->arena, &drawing->strokes, stroke);
    ink_make(drawing);
    strokes_draw(drawing);
}

void scene_key_sample(struct arena *arena, struct scene *scene, enum scene_class class,
                      struct vec2 at, double length)
{
    static const struct scene_options plain = {.accent = BODY_NONE};
    struct scene_options options = plain;
    options.theme = scene->theme;
    struct drawing drawing = {
        .arena = arena, .options = &options, .scene = scene, .size = sizes_of(KEY_SCALE)};
    int lines = scene->lines;
    if (class == CLASS_END) {
        put_circle(&drawing, CLASS_END,
                   vec2_of(at.x + drawing.size.end + drawing.size.end_stroke / 2, at.y),
                   drawing.size.end, ROLE_PAGE, ROLE_INK, drawing.size.end_stroke);
    } else if (class >= CLASS_MOVE && class <= CLASS_SHOT) {
        sample_stroke(&drawing, class, at, length);
    }
    scene->lines = lines;
}
