/* SPDX-License-Identifier: MIT */
/* leaving: where the line of a movement begins at its stop: by which end of a bar, and to which
 * side of the numeral of one who comes back to it. */
#include "picture/scene/drawing.h"

#include <math.h>

#define HOME_ANGLE (45 * REAL_PI / 180) /* between the legs of a way there and back */
#define SHORT_TRIP 9.0                  /* feet there: a shorter one */
/* opens by so much of the numeral's body to either side (ours). 45 degrees would be 2 ft: looked
 * at, its legs pass by the numeral, and neither begins nor ends at it. */
#define SHORT_OPENS 1.1
#define LEAVES_BEHIND 1.1 /* feet behind a bar */
#define THROUGH_BAR 0.2   /* cosine between a bar's facing and a way that leads through it (ours) */
#define BESIDE_OTHER                                                                               \
    1.4 /* feet from somebody's numeral: a line that begins there seems his (ours) */

/* How near a place is to the numeral of somebody else, or to an X, points. */
static double symbol_room(const struct drawing *drawing, struct vec2 at, body who, bool defenders)
{
    double room = 1e9;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        if (symbol->who != who && body_is_defender(symbol->who) == defenders) {
            room = real_min(room, vec2_distance(at, symbol->at) - symbol->radius);
        }
    }
    return room;
}

/* What is amiss with a place where a line leaves a bar, going that way: it seems somebody else's,
 * or lies on an X. */
static int leaving_amiss(const struct drawing *drawing, struct vec2 at, struct vec2 goes, body who)
{
    double k = drawing->size.k;
    struct vec2 ink = vec2_along(at, goes, k); /* where it will be seen to begin */
    bool seems_his = symbol_room(drawing, ink, who, false) < BESIDE_OTHER * k;
    return (seems_his ? 2 : 0) + (symbol_room(drawing, ink, who, true) < drawing->size.gap ? 1 : 0);
}

struct vec2 trail_leaves(const struct drawing *drawing, const struct stop *start,
                         const struct trail *trail)
{
    if (start->kind != STOP_BAR) {
        return start->at;
    }
    double k = drawing->size.k;
    size_t i = 0;
    while (i + 1 < trail->count && vec2_distance(trail->at[i], trail->at[0]) < 4 * k) {
        i++;
    }
    struct vec2 along = vec2_left(start->facing);
    struct vec2 goes = vec2_unit(vec2_sub(trail->at[i], trail->at[0]));
    double half = (vec2_dot(along, goes) < 0 ? -1 : 1) * drawing->size.bar / 2;
    bool through = vec2_dot(start->facing, goes) > THROUGH_BAR;
    struct vec2 places[] = {vec2_along(start->at, along, half),
                            through ? vec2_along(start->at, along, -half)
                                    : vec2_along(start->at, start->facing, -LEAVES_BEHIND * k)};
    int near = leaving_amiss(drawing, places[0], goes, start->who);
    return leaving_amiss(drawing, places[1], goes, start->who) < near ? places[1] : places[0];
}

struct vec2 trail_aside(const struct drawing *drawing, const struct stop *home,
                        const struct trail *trail)
{
    double area = 0, reach = 0, k = drawing->size.k;
    struct vec2 out = {0, 0};
    for (size_t i = 1; i < trail->count; i++) {
        area += vec2_cross(vec2_sub(trail->at[i - 1], home->at), vec2_sub(trail->at[i], home->at));
        struct vec2 off = vec2_sub(trail->at[i], home->at);
        if (vec2_length(off) > reach) {
            reach = vec2_length(off);
            out = vec2_unit(off);
        }
    }
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    if (fabs(area) < 0.02 * k * reach) { /* the same way: it comes back on the basket's side */
        area = -vec2_cross(out, vec2_sub(basket, home->at));
    }
    double half = reach * real_sin(HOME_ANGLE / 2) / real_cos(HOME_ANGLE / 2);
    double radius = stop_radius(drawing, home);
    bool is_short = reach < SHORT_TRIP * k;
    half = real_clamp(half, 0.8 * k, (is_short ? SHORT_OPENS : 0.8) * radius);
    return vec2_scale(vec2_left(out), area < 0 ? half : -half);
}
