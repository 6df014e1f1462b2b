/* SPDX-License-Identifier: MIT */
/* defenders: an X gives way to everything but another screened X: to numerals, rings and bars, and,
 * once the lines are there, to lines; never further than a step or two. */
#include "picture/scene/drawing.h"

#define TROUBLE 0.3 /* points: less is none */
enum { TURNS = 24, WAYS = 16 };

static struct vec2 defender_push(const struct drawing *drawing, const struct symbol *x)
{
    const struct sizes *size = &drawing->size;
    double room = real_max(0.3 * size->k, 1.1), own = 1.15 * size->x_half;
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    struct vec2 push = push_off(x->at, basket, size->basket + own, vec2_of(0, 1));
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *other = &drawing->symbols.at[i];
        if (other == x) {
            continue;
        }
        bool defender = body_is_defender(other->who);
        double least = (defender ? own : other->radius) + own + room;
        struct vec2 one = push_off(x->at, other->at, least, vec2_of(0, -1));
        push = vec2_add(push, vec2_scale(one, defender && !other->pinned ? 0.5 : 1));
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_RING && !x->pinned) {
            push = vec2_add(push, push_off(x->at, stop->at, own + stop_radius(drawing, stop) + room,
                                           vec2_of(0, -1)));
        } else if (stop->kind == STOP_BAR) {
            struct vec2 near = bar_nearest(drawing, stop, x->at);
            push = vec2_add(push,
                            push_off(x->at, near, own + size->bar_stroke / 2 + room, stop->facing));
        }
    }
    return push;
}

void defenders_settle(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        struct symbol *symbol = &drawing->symbols.at[i];
        if (body_is_defender(symbol->who)) {
            symbol->at =
                frame_keep(&drawing->frame, vec2_add(symbol->at, defender_push(drawing, symbol)),
                           symbol->radius + 0.5);
        }
    }
}

/* A small step aside out of the way of lines; `depth` adds up how far it is inside their room. */
static struct vec2 off_lines(const struct drawing *drawing, const struct symbol *x, double *depth)
{
    double least =
        1.15 * drawing->size.x_half + real_max(0.55 * drawing->size.k, drawing->size.gap);
    struct vec2 push = {0, 0};
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->who == x->who) { /* it begins there */
            continue;
        }
        double wide = stroke->class == CLASS_DRIBBLE   ? drawing->size.wave_half
                      : stroke->class == CLASS_HANDOFF ? drawing->size.handoff_bar / 2
                                                       : 0,
               nearest = least + wide;
        struct vec2 off = {0, 0};
        for (size_t p = 0; p + 1 < stroke->trail.count; p++) {
            struct vec2 a = stroke->trail.at[p], b = stroke->trail.at[p + 1];
            if (x->at.x < real_min(a.x, b.x) - nearest || x->at.x > real_max(a.x, b.x) + nearest ||
                x->at.y < real_min(a.y, b.y) - nearest || x->at.y > real_max(a.y, b.y) + nearest) {
                continue;
            }
            double t,
                far = segment_distance(x->at, stroke->trail.at[p], stroke->trail.at[p + 1], &t);
            if (far < nearest) {
                struct vec2 on = vec2_mix(stroke->trail.at[p], stroke->trail.at[p + 1], t);
                struct vec2 way = vec2_unit(vec2_sub(stroke->trail.at[p + 1], stroke->trail.at[p]));
                nearest = far;
                off = push_off(x->at, on, least + wide, vec2_left(way));
            }
        }
        push = vec2_add(push, off);
        *depth += vec2_length(off);
    }
    return push;
}

/* How far an X at a place is inside the room of others, points. */
static double defender_trouble(const struct drawing *drawing, const struct symbol *x,
                               struct vec2 at)
{
    struct symbol there = *x;
    there.at = at;
    double trouble = 0;
    (void)off_lines(drawing, &there, &trouble);
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    trouble +=
        real_max(0, drawing->size.basket + 1.15 * drawing->size.x_half - vec2_distance(at, basket));
    const struct sizes *size = &drawing->size;
    double room = real_max(0.3 * size->k, 1.1), own = 1.15 * size->x_half;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *other = &drawing->symbols.at[i];
        double least = (body_is_defender(other->who) ? own : other->radius) + own + room;
        trouble += other != x ? real_max(0, least - vec2_distance(at, other->at)) : 0;
    }
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        double least = own + stop_radius(drawing, stop) + room;
        if (stop->kind == STOP_RING) {
            trouble += real_max(0, least - vec2_distance(at, stop->at));
        } else if (stop->kind == STOP_BAR) {
            trouble += real_max(0, least - vec2_distance(at, bar_nearest(drawing, stop, at)));
        }
    }
    struct vec2 inside = frame_keep(&drawing->frame, at, x->radius + 0.5);
    return trouble + 4 * vec2_distance(at, inside);
}

/* How far an X at a place is inside the room of numbers, points. */
static double under_discs(const struct drawing *drawing, struct vec2 at)
{
    const struct sizes *size = &drawing->size;
    double least = 1.15 * size->x_half + size->order + real_max(0.15 * size->k, 0.8), deep = 0;
    for (size_t i = 0; i < drawing->discs.count; i++) {
        deep += real_max(0, least - vec2_distance(at, drawing->discs.at[i].at));
    }
    return deep;
}

static double search_cost(const struct drawing *drawing, const struct symbol *x, struct vec2 at,
                          struct vec2 home)
{
    double trouble = defender_trouble(drawing, x, at) + under_discs(drawing, at);
    return 3 * trouble + 0.3 * vec2_distance(at, home);
}

/* An X that pushes from two sides hold on a line looks for the nearest free place. */
static void defender_search(struct drawing *drawing, struct symbol *x, struct vec2 home,
                            double most)
{
    struct vec2 best = x->at;
    double least = search_cost(drawing, x, x->at, home);
    struct vec2 ways[WAYS];
    for (int i = 0; i < WAYS; i++) {
        ways[i] = vec2_of(real_cos(i * REAL_PI / 8), real_sin(i * REAL_PI / 8));
    }
    for (int ring = 1; ring <= 6; ring++) {
        for (int i = 0; i < WAYS; i++) {
            struct vec2 at = vec2_along(home, ways[i], most * ring / 5.0);
            double cost = search_cost(drawing, x, at, home);
            if (cost < least - 1e-9) {
                least = cost;
                best = at;
            }
        }
    }
    x->at = best;
}

/* A line of an X begins where the X is now. */
void defenders_lead(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        struct stroke *stroke = &drawing->strokes.at[i];
        const struct symbol *x = symbol_of(drawing, stroke->who);
        if (stroke->class != CLASS_DEFENSE_MOVE || !x || stroke->start < 0 ||
            drawing->stops.at[stroke->start].kind != STOP_SYMBOL) {
            continue;
        }
        struct vec2 gone = vec2_sub(x->at, drawing->stops.at[stroke->start].at);
        if (stroke->trail.count > 1) {
            trail_lead(drawing->arena, &stroke->trail, gone, vec2_of(0, 0));
        }
        drawing->stops.at[stroke->start].at = x->at;
    }
}

/* How far an X stands off its place at the most. */
static double yields_most(const struct drawing *drawing)
{
    return real_max(1.9 * drawing->size.k, 2.8 * drawing->size.x_half);
}

bool defender_can_yield(const struct drawing *drawing, const struct symbol *x)
{
    bool can = body_is_defender(x->who) && !x->pinned;
    for (size_t i = 0; can && i < drawing->strokes.count; i++) {
        can = drawing->strokes.at[i].who != x->who; /* its line begins there */
    }
    return can;
}

bool defender_has_room(const struct drawing *drawing, const struct symbol *x, struct vec2 at)
{
    return defender_trouble(drawing, x, at) + under_discs(drawing, at) <= TROUBLE;
}

bool defenders_make_room(struct drawing *drawing)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        struct symbol *x = &drawing->symbols.at[i];
        struct vec2 home = x->at;
        if (under_discs(drawing, home) <= 0 || !defender_can_yield(drawing, x)) {
            continue;
        }
        double before = real_max(defender_trouble(drawing, x, home), TROUBLE);
        defender_search(drawing, x, home, yields_most(drawing));
        if (defender_trouble(drawing, x, x->at) + under_discs(drawing, x->at) > before) {
            return false;
        }
    }
    return true;
}

bool defenders_yield(struct drawing *drawing)
{
    double most = yields_most(drawing);
    struct vec2 *home = arena_array(drawing->arena, struct vec2, drawing->symbols.count);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        home[i] = drawing->symbols.at[i].at;
    }
    double before = places_sum(drawing);
    bool left = false;
    for (int turn = 0; turn < TURNS; turn++) {
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            struct symbol *x = &drawing->symbols.at[i];
            if (!body_is_defender(x->who) || x->pinned) {
                continue;
            }
            double depth = 0;
            x->at = vec2_along(x->at, off_lines(drawing, x, &depth), 0.7);
            struct vec2 gone = vec2_sub(x->at, home[i]);
            double far = vec2_length(gone);
            if (far > most) {
                x->at = vec2_along(home[i], vec2_unit(gone), most);
            }
        }
        defenders_settle(drawing);
        double sum = places_sum(drawing);
        if (sum == before) { /* nobody moves any more */
            break;
        }
        before = sum;
    }
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        struct symbol *x = &drawing->symbols.at[i];
        if (body_is_defender(x->who) && !x->pinned &&
            defender_trouble(drawing, x, x->at) > TROUBLE) {
            defender_search(drawing, x, home[i], most);
            left = left || defender_trouble(drawing, x, x->at) > TROUBLE;
        }
    }
    defenders_lead(drawing);
    return left;
}
