/* SPDX-License-Identifier: MIT */
/* galley: set things with their places. Takes blocks and scenes; must not know plays, nor how
 * things are painted. */
#include "page/sheet/galley.h"

#include <string.h>

#define DESCENT 3.0 /* kept free under a baseline */
#define ASCENT 8.0  /* and over it */

struct galley *galley_new(struct arena *arena)
{
    struct galley *galley = arena_new(arena, struct galley);
    galley->arena = arena;
    return galley;
}

static void add(struct galley *galley, struct placed placed)
{
    galley_reach(galley, placed.bottom);
    VEC_PUSH(galley->arena, &galley->items, placed);
}

void galley_reach(struct galley *galley, double y)
{
    galley->height = y > galley->height ? y : galley->height;
}

void galley_keep(struct galley *galley)
{
    if (galley->items.count > 0) {
        galley->items.at[galley->items.count - 1].keep = true;
    }
}

double galley_text(struct galley *galley, const struct text_block *text, double x, double y,
                   enum role role)
{
    size_t lines = text_lines(text);
    double leading = lines > 0 ? text_height(text) / (double)lines : 0;
    for (size_t i = 0; i < lines; i++) {
        double base = y + (double)i * leading;
        add(galley, (struct placed){.kind = PLACED_TEXT,
                                    .x = x,
                                    .y = base,
                                    .top = base - ASCENT,
                                    .bottom = base + DESCENT,
                                    .role = role,
                                    .text = text,
                                    .line = i});
    }
    return lines > 0 ? y + (double)(lines - 1) * leading : y;
}

double galley_text_end(struct galley *galley, const struct text_block *text, double right, double y,
                       enum role role)
{
    return galley_text(galley, text, right - text_width(text), y, role);
}

double galley_text_middle(struct galley *galley, const struct text_block *text, double x, double y,
                          enum role role)
{
    return galley_text(galley, text, x - text_width(text) / 2, y, role);
}

void galley_scene(struct galley *galley, const struct scene *scene, double x, double y)
{
    add(galley, (struct placed){.kind = PLACED_SCENE,
                                .x = x,
                                .y = y,
                                .top = y,
                                .bottom = y + scene->height,
                                .keep = true,
                                .scene = scene});
}

void galley_disc(struct galley *galley, const struct text_block *number, double x, double y,
                 enum role role)
{
    add(galley, (struct placed){.kind = PLACED_DISC,
                                .x = x,
                                .y = y,
                                .top = y - GALLEY_DISC,
                                .bottom = y + GALLEY_DISC,
                                .role = role,
                                .keep = true,
                                .text = number});
}

void galley_rule(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                 enum role role)
{
    add(galley, (struct placed){.kind = PLACED_RULE,
                                .x = from.x,
                                .y = from.y,
                                .top = from.y,
                                .bottom = to.y,
                                .role = role,
                                .x2 = to.x,
                                .y2 = to.y,
                                .width = width});
}

void galley_box(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                enum role role, enum filling filling)
{
    add(galley, (struct placed){.kind = PLACED_BOX,
                                .x = from.x,
                                .y = from.y,
                                .top = from.y,
                                .bottom = to.y,
                                .role = role,
                                .x2 = to.x,
                                .y2 = to.y,
                                .width = width,
                                .filling = filling});
}

void galley_dot(struct galley *galley, struct vec2 at, double radius, enum role role,
                enum filling filling)
{
    add(galley, (struct placed){.kind = PLACED_DOT,
                                .x = at.x,
                                .y = at.y,
                                .top = at.y - radius,
                                .bottom = at.y + radius,
                                .role = role,
                                .width = radius,
                                .filling = filling});
}

void galley_sign(struct galley *galley, double x, double y)
{
    add(galley,
        (struct placed){
            .kind = PLACED_SIGN, .x = x, .y = y, .top = y - 6, .bottom = y + 6, .role = ROLE_INK});
}

void galley_link(struct galley *galley, struct vec2 from, struct vec2 to, const char *place)
{
    add(galley, (struct placed){.kind = PLACED_LINK,
                                .x = from.x,
                                .y = from.y,
                                .top = from.y,
                                .bottom = to.y,
                                .x2 = to.x,
                                .y2 = to.y,
                                .place = place});
}

void galley_place(struct galley *galley, double x, double y, const char *place)
{
    add(galley, (struct placed){
                    .kind = PLACED_PLACE, .x = x, .y = y, .top = y, .bottom = y, .place = place});
}

struct galley *galley_copy(struct arena *arena, const struct galley *galley)
{
    struct galley *copy = galley_new(arena);
    const struct text_block *last = NULL; /* neighbors are lines of one block */
    const struct text_block *last_copy = NULL;
    copy->height = galley->height;
    copy->items.at = arena_array(arena, struct placed, galley->items.count);
    copy->items.room = copy->items.count = galley->items.count;
    for (size_t i = 0; i < galley->items.count; i++) {
        struct placed *placed = &copy->items.at[i];
        *placed = galley->items.at[i];
        if (placed->text && placed->text != last) {
            last = placed->text;
            last_copy = text_copy(arena, last);
        }
        placed->text = placed->text ? last_copy : NULL;
        placed->scene = placed->scene ? scene_copy(arena, placed->scene) : NULL;
        if (placed->place) {
            placed->place = arena_copy(arena, placed->place, strlen(placed->place));
        }
    }
    return copy;
}

void galley_dots(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                 enum role role)
{
    galley_rule(galley, from, to, width, role);
    galley->items.at[galley->items.count - 1].line_kind = LINE_DOTTED;
}

void galley_dashes(struct galley *galley, struct vec2 from, struct vec2 to, double width,
                   enum role role)
{
    galley_rule(galley, from, to, width, role);
    galley->items.at[galley->items.count - 1].line_kind = LINE_CUT;
}

void galley_cut(struct galley *galley, struct vec2 from, struct vec2 to)
{
    galley_dashes(galley, from, to, 0.5, ROLE_SOFT);
}

void galley_scissors(struct galley *galley, double x, double y)
{
    add(galley, (struct placed){.kind = PLACED_SCISSORS,
                                .x = x,
                                .y = y,
                                .top = y - 4,
                                .bottom = y + 4,
                                .role = ROLE_SOFT});
}

static struct placed moved(struct placed placed, double x, double y)
{
    placed.x += x;
    placed.x2 += x;
    placed.y += y;
    placed.y2 += y;
    placed.top += y;
    placed.bottom += y;
    return placed;
}

void galley_join(struct galley *galley, const struct galley *other, double x, double y)
{
    for (size_t i = 0; i < other->items.count; i++) {
        add(galley, moved(other->items.at[i], x, y));
    }
    galley_reach(galley, other->height + y);
}

void galley_lower(struct galley *galley, size_t from, double y)
{
    for (size_t i = from; i < galley->items.count; i++) {
        galley->items.at[i] = moved(galley->items.at[i], 0, y);
    }
    galley->height += y;
}

/* ---- parting ---- */

static bool stays(const struct placed *placed, double cut)
{
    return placed->bottom <= cut + 1e-9;
}

/* The lowest place at most `height` at which nothing is left standing that has to stay with what
 * follows it. */
static double find_cut(const struct galley *galley, double height)
{
    for (size_t tries = 0; tries <= galley->items.count; tries++) {
        double cut = 0;
        for (size_t i = 0; i < galley->items.count; i++) {
            const struct placed *placed = &galley->items.at[i];
            if (placed->kind != PLACED_RULE && placed->bottom <= height && placed->bottom > cut) {
                cut = placed->bottom;
            }
        }
        double lower = cut;
        for (size_t i = 0; i + 1 < galley->items.count; i++) {
            const struct placed *placed = &galley->items.at[i];
            if (placed->keep && stays(placed, cut) && !stays(&galley->items.at[i + 1], cut) &&
                placed->top < lower) {
                lower = placed->top;
            }
        }
        if (lower >= cut) {
            return cut;
        }
        height = lower;
    }
    return 0;
}

static bool is_upright(const struct placed *placed)
{
    return placed->kind == PLACED_RULE && placed->x == placed->x2;
}

struct galley *galley_part(struct galley *galley, double height)
{
    double cut = find_cut(galley, height);
    if (cut <= 0) {
        return NULL;
    }
    struct galley all = *galley;
    double shift = all.height;
    for (size_t i = 0; i < all.items.count; i++) {
        const struct placed *placed = &all.items.at[i];
        if (placed->kind != PLACED_RULE && !stays(placed, cut)) {
            shift = placed->top < shift ? placed->top : shift;
        }
    }
    struct galley *rest = galley_new(galley->arena);
    struct galley *head = galley_new(galley->arena);
    for (size_t i = 0; i < all.items.count; i++) {
        struct placed placed = all.items.at[i];
        if (is_upright(&placed) && placed.y < cut && placed.y2 > cut) {
            struct placed below = placed; /* a rule beside the text goes on beside it */
            below.y = below.top = shift;
            if (below.y2 > shift) {
                add(rest, moved(below, 0, -shift));
            }
            placed.y2 = placed.bottom = cut;
            add(head, placed);
        } else if (stays(&placed, cut)) {
            add(head, placed);
        } else {
            add(rest, moved(placed, 0, -shift));
        }
    }
    *galley = *head;
    return rest;
}
