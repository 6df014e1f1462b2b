/* SPDX-License-Identifier: MIT */
/* props: what stands on the floor of a drill besides players: cones, and the ticks of a line of
 * players who wait. */
#include "picture/scene/drawing.h"

#include <math.h>

enum { WAITING = 3 }; /* ticks drawn behind the first of a line */

void props_place(struct drawing *drawing)
{
    const struct play *play = drawing->play;
    for (size_t i = 0; i < play->cones.count; i++) {
        VEC_PUSH(drawing->arena, &drawing->cones, frame_point(&drawing->frame, play->cones.at[i]));
    }
    /* nobody stands in a cone */
    for (size_t i = 0; i < drawing->cones.count; i++) {
        for (size_t s = 0; s < drawing->symbols.count; s++) {
            struct symbol *symbol = &drawing->symbols.at[s];
            struct vec2 off = vec2_sub(symbol->at, drawing->cones.at[i]);
            double least = symbol->radius + drawing->size.cone + drawing->size.gap,
                   far = vec2_length(off);
            if (far < least) {
                off = far > 0.05 ? vec2_unit(off) : vec2_of(0, 1);
                symbol->at = vec2_along(drawing->cones.at[i], off, least);
            }
        }
    }
}

/* Behind the head of the line: away from the basket, by eighths of a turn, and in the picture. */
static struct vec2 queue_way(const struct drawing *drawing, struct vec2 head, double length)
{
    struct vec2 away = vec2_unit(vec2_sub(head, frame_point(&drawing->frame, vec2_of(0, 0))));
    struct vec2 best = {0, 1};
    double most = -10;
    for (int i = 0; i < 8; i++) {
        struct vec2 way = vec2_of(real_cos(i * REAL_PI / 4), real_sin(i * REAL_PI / 4));
        struct vec2 end = vec2_along(head, way, length);
        double edge = drawing->size.tick, score = vec2_dot(way, away);
        bool out = end.x < edge || end.y < drawing->frame.top + edge ||
                   end.x > drawing->frame.width - edge || end.y > drawing->frame.height - edge;
        score -= out ? 5 : 0;
        for (size_t s = 0; s < drawing->symbols.count; s++) {
            const struct symbol *other = &drawing->symbols.at[s];
            double far = segment_distance(other->at, vec2_along(head, way, length / 2), end, NULL);
            score -= far < other->radius + drawing->size.tick ? 2 : 0;
        }
        if (score > most + 1e-9) {
            most = score;
            best = way;
        }
    }
    return best;
}

/* A line waits where its first player stood as the drill began, wherever he is now. */
static void line_of_players(struct drawing *drawing, body first)
{
    const struct sizes *size = &drawing->size;
    const struct symbol *symbol = symbol_of(drawing, first);
    struct vec2 home = drawing->play->start[first].at;
    struct vec2 head = symbol_spot(drawing, home, symbol && symbol->ball);
    double start = size->body + size->tick_first;
    if (symbol && vec2_distance(symbol->at, head) < 2 * size->body) {
        head = symbol->at;
        start = symbol->radius + size->tick_first;
    }
    struct vec2 way = queue_way(drawing, head, start + (WAITING - 1) * size->tick_apart);
    struct vec2 square = vec2_scale(vec2_left(way), size->tick);
    for (int i = 0; i < WAITING; i++) {
        struct vec2 at = vec2_along(head, way, start + i * size->tick_apart);
        VEC_PUSH(drawing->arena, &drawing->ticks, at);
        VEC_PUSH(drawing->arena, &drawing->tick_ways, square);
        VEC_PUSH(drawing->arena, &drawing->tick_owners, first);
    }
}

void queues_place(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->play->lines.count; i++) {
        line_of_players(drawing, drawing->play->lines.at[i]);
    }
}

void cone_draw(struct drawing *drawing, struct vec2 at)
{
    /* base 1.9, height 1.75, flat top 0.6; a white stripe from .36 to .58 of the height */
    double u = drawing->size.cone, high = 1.75 * u, foot = at.y + high / 2;
    double low = 0.36, top = 0.58;
#define SIDE(share) (u * (0.80 + (0.30 - 0.80) * (share)))
    pen_move(drawing, vec2_of(at.x - SIDE(0), foot));
    pen_line(drawing, vec2_of(at.x + SIDE(0), foot));
    pen_line(drawing, vec2_of(at.x + SIDE(low), foot - low * high));
    pen_line(drawing, vec2_of(at.x - SIDE(low), foot - low * high));
    pen_close(drawing);
    pen_move(drawing, vec2_of(at.x - SIDE(top), foot - top * high));
    pen_line(drawing, vec2_of(at.x + SIDE(top), foot - top * high));
    pen_line(drawing, vec2_of(at.x + SIDE(1), foot - high));
    pen_line(drawing, vec2_of(at.x - SIDE(1), foot - high));
    pen_close(drawing);
    pen_fill(drawing, CLASS_CONE, ROLE_SOFT);
    pen_move(drawing, vec2_of(at.x - SIDE(low), foot - low * high));
    pen_line(drawing, vec2_of(at.x - SIDE(top), foot - top * high));
    pen_move(drawing, vec2_of(at.x + SIDE(low), foot - low * high));
    pen_line(drawing, vec2_of(at.x + SIDE(top), foot - top * high));
    pen_stroke(drawing, CLASS_CONE, ROLE_SOFT, 0.5);
#undef SIDE
    pen_move(drawing, vec2_of(at.x - 0.95 * u, foot));
    pen_line(drawing, vec2_of(at.x + 0.95 * u, foot));
    pen_stroke(drawing, CLASS_CONE, ROLE_SOFT, 0.24 * u);
}

void props_draw(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->cones.count; i++) {
        cone_draw(drawing, drawing->cones.at[i]);
    }
    for (size_t i = 0; i < drawing->ticks.count; i++) {
        pen_move(drawing, vec2_add(drawing->ticks.at[i], drawing->tick_ways.at[i]));
        pen_line(drawing, vec2_sub(drawing->ticks.at[i], drawing->tick_ways.at[i]));
        struct scene_item *item =
            pen_stroke(drawing, CLASS_LINE_OF_PLAYERS, ROLE_INK, drawing->size.line);
        item->who = drawing->tick_owners.at[i];
    }
}
