/* SPDX-License-Identifier: MIT */
#include "handmade.h"

static struct path_element to(enum path_op op, double x, double y)
{
    return (struct path_element){op, {{x, y}}};
}

static struct path_element curve(double ax, double ay, double bx, double by, double x, double y)
{
    return (struct path_element){OP_CURVE, {{ax, ay}, {bx, by}, {x, y}}};
}

static void add_path(struct arena *arena, struct scene *scene, struct scene_item item,
                     const struct path_element *path, size_t count)
{
    item.shape = ITEM_PATH;
    item.path = arena_array(arena, struct path_element, count);
    for (size_t i = 0; i < count; i++) {
        item.path[i] = path[i];
    }
    item.count = count;
    VEC_PUSH(arena, &scene->items, item);
}

static void add_circle(struct arena *arena, struct scene *scene, struct scene_item item,
                       struct vec2 at, double radius)
{
    item.shape = ITEM_CIRCLE;
    item.at = at;
    item.radius = radius;
    VEC_PUSH(arena, &scene->items, item);
}

static void add_text(struct arena *arena, struct scene *scene, struct scene_item item,
                     struct vec2 at, double size, enum face face, struct str text)
{
    item.shape = ITEM_TEXT;
    item.at = at;
    item.size = size;
    item.face = face;
    item.text = text;
    VEC_PUSH(arena, &scene->items, item);
}

#define PATH(...)                                                                                  \
    (const struct path_element[]){__VA_ARGS__},                                                    \
        sizeof((const struct path_element[]){__VA_ARGS__}) / sizeof(struct path_element)

static void add_floor(struct arena *arena, struct scene *scene)
{
    struct scene_item page = {.class = CLASS_PAGE, .fill = ROLE_PAGE, .task = -1};
    add_path(arena, scene, page,
             PATH(to(OP_MOVE, 0, 0), to(OP_LINE, 120, 0), to(OP_LINE, 120, 80), to(OP_LINE, 0, 80),
                  to(OP_CLOSE, 0, 0)));
    struct scene_item court = {.class = CLASS_COURT, .stroke = ROLE_COURT, .width = 0.79};
    add_path(
        arena, scene, court,
        PATH(to(OP_MOVE, 1, 80), to(OP_LINE, 1, 1), to(OP_LINE, 119, 1), to(OP_LINE, 119, 80)));
    add_path(arena, scene, court,
             PATH(to(OP_MOVE, 45, 1), to(OP_LINE, 45, 40), curve(45, 60, 75, 60, 75, 40),
                  to(OP_LINE, 75, 1)));
    struct scene_item ring = {.class = CLASS_BASKET, .stroke = ROLE_SOFT, .width = 0.8};
    add_circle(arena, scene, ring, (struct vec2){60, 12}, 3.5);
}

static void add_lines(struct arena *arena, struct scene *scene)
{
    struct scene_item run = {.class = CLASS_MOVE, .stroke = ROLE_INK, .width = 1.23};
    add_path(arena, scene, run, PATH(to(OP_MOVE, 20, 60), curve(24, 40, 30, 32, 42.125, 30.5)));
    struct scene_item head = {.class = CLASS_MOVE, .fill = ROLE_INK};
    add_path(arena, scene, head,
             PATH(to(OP_MOVE, 47, 30), to(OP_LINE, 40, 33), to(OP_LINE, 42, 30.5),
                  to(OP_LINE, 40, 28), to(OP_CLOSE, 0, 0)));
    struct scene_item casing = {
        .class = CLASS_PASS, .stroke = ROLE_PAGE, .width = 4.4, .casing = true};
    add_path(arena, scene, casing, PATH(to(OP_MOVE, 28, 48), to(OP_LINE, 36, 40)));
    struct scene_item pass = {.class = CLASS_PASS, .stroke = ROLE_ACCENT, .width = 1.9};
    add_path(
        arena, scene, pass,
        PATH(to(OP_MOVE, 24, 52), to(OP_LINE, 30, 46), to(OP_MOVE, 34, 42), to(OP_LINE, 40, 36)));
    struct scene_item zigzag = {
        .class = CLASS_DRIBBLE, .stroke = ROLE_INK, .width = 1.2, .join = JOIN_MITER};
    add_path(arena, scene, zigzag,
             PATH(to(OP_MOVE, 80, 60), to(OP_LINE, 84, 58), to(OP_LINE, 86, 52),
                  to(OP_LINE, 90, 56), to(OP_LINE, 92, 50)));
    struct scene_item end = {
        .class = CLASS_END, .fill = ROLE_PAGE, .stroke = ROLE_INK, .width = 1.04};
    add_circle(arena, scene, end, (struct vec2){50, 28.5}, 2.45);
}

static void add_symbols(struct arena *arena, struct scene *scene)
{
    struct scene_item player = {.class = CLASS_PLAYER, .fill = ROLE_INK};
    add_text(arena, scene, player, (struct vec2){20, 68}, 12.7, FACE_BOLD, STR("2"));
    add_text(arena, scene, player, (struct vec2){80, 68}, 12.7, FACE_BOLD, STR("3"));
    struct scene_item ball = {.class = CLASS_BALL, .stroke = ROLE_INK, .width = 1.13};
    add_circle(arena, scene, ball, (struct vec2){20, 63.4}, 8);
    struct scene_item cross = {.class = CLASS_DEFENDER, .stroke = ROLE_DEFENDER, .width = 1.27};
    add_path(arena, scene, cross,
             PATH(to(OP_MOVE, 96, 26), to(OP_LINE, 103.6, 33.6), to(OP_MOVE, 103.6, 26),
                  to(OP_LINE, 96, 33.6)));
    struct scene_item disc = {.class = CLASS_ORDER, .fill = ROLE_ORDER};
    add_circle(arena, scene, disc, (struct vec2){28, 40}, 4.7);
    struct scene_item number = {.class = CLASS_ORDER, .fill = ROLE_ORDER_TEXT};
    add_text(arena, scene, number, (struct vec2){28, 42.9}, 8.1, FACE_SEMIBOLD, STR("1"));
    struct scene_item caption = {.class = CLASS_CAPTION, .fill = ROLE_TEXT, .anchor = ANCHOR_START};
    add_text(arena, scene, caption, (struct vec2){48, 76}, 8, FACE_REGULAR, STR("a < b & \"c\""));
}

struct scene *handmade_scene(struct arena *arena, enum theme theme)
{
    struct scene *scene = arena_new(arena, struct scene);
    scene->width = 120;
    scene->height = 80;
    scene->theme = theme;
    scene->title = STR("Lantern, step 1: swing & cut");
    scene->description = STR("2 has the ball on the left wing. 3 dribbles at x3.");
    add_floor(arena, scene);
    add_lines(arena, scene);
    add_symbols(arena, scene);
    scene->lines = 3;
    return scene;
}
