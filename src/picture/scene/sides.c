/* SPDX-License-Identifier: MIT */
/* sides: on which side of each numeral and of each bar a movement passes is the run's to say, so
 * that pictures of all sizes tell the same: where marks are large their places on paper do not. */
#include "picture/scene/drawing.h"

#include <math.h>

#define NEARBY 7.0 /* feet from a run: what is further off cannot get to its other side (ours) */
#define AT_END 2.0 /* feet: what a run begins or ends beside has no side of it (ours) */
#define NOBODY 2.5 /* feet: nor has what it runs over before or after somebody is there (ours) */
#define ABOUT 0.3  /* s */
#define ONE 4.5    /* feet: a screener so near his bar is one mark with it (ours) */

typedef VEC(struct passed) passed_list;

/* Notes a thing that stood there so long, if the run, on paper, passes it. */
static void note(struct drawing *drawing, passed_list *list, struct passed passed,
                 const struct stop *stop, const struct run_way *run)
{
    double k = drawing->size.k, nearest = 1e9, when = 0;
    struct vec2 at = frame_point(&drawing->frame, stop->truth);
    for (size_t i = 0; i < run->count; i++) {
        double far = vec2_square(vec2_sub(at, run->at[i]));
        if (far < nearest) {
            nearest = far;
            when = run->when[i];
        }
    }
    nearest = real_sqrt(nearest);
    bool there = stop->from < 0 || (when > stop->from - ABOUT && when < stop->to + ABOUT);
    if (nearest < NEARBY * k && (there || nearest > NOBODY * k) &&
        vec2_distance(at, run->at[0]) > AT_END * k &&
        vec2_distance(at, run->at[run->count - 1]) > AT_END * k) {
        passed.sweep = sweep_round(at, run->at, run->count);
        VEC_PUSH(drawing->arena, list, passed);
    }
}

/* Where somebody who begins there is met: a screener with his bar. */
static const struct stop *met_at(const struct drawing *drawing, const struct stop *begins)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *bar = &drawing->stops.at[i];
        if (bar->kind == STOP_BAR && bar->who == begins->who &&
            vec2_distance(bar->truth, begins->truth) / FEET < ONE) {
            return bar;
        }
    }
    return begins;
}

void sides_note(struct drawing *drawing, struct stroke *stroke, const struct run_way *run)
{
    passed_list list = {0};
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        bool begins = stop->kind == STOP_SYMBOL && stop->from == drawing->scope.start;
        if (stop->who == stroke->who || body_is_defender(stop->who)) {
            continue;
        }
        if (begins || stop->kind == STOP_BAR) {
            struct passed passed = {.who = stop->who, .bar = begins ? -1 : (int)i};
            note(drawing, &list, passed, begins ? met_at(drawing, stop) : stop, run);
        }
    }
    const struct stop basket = {.from = -1, .truth = vec2_of(0, 0)};
    note(drawing, &list, (struct passed){.who = BODY_NONE, .bar = -1}, &basket, run);
    stroke->passed = list.at;
    stroke->passes = list.count;
}

const struct passed *stroke_passes(const struct stroke *stroke, body who, int bar)
{
    for (size_t i = 0; i < stroke->passes; i++) {
        const struct passed *passed = &stroke->passed[i];
        if (passed->who == who && passed->bar == bar) {
            return passed;
        }
    }
    return NULL;
}

bool is_passed_wrong(const struct passed *passed, struct vec2 middle, const struct trail *trail)
{
    return fabs(sweep_round(middle, trail->at, trail->count) - passed->sweep) > REAL_PI;
}

void sides_count(struct drawing *drawing)
{
    struct scene *scene = drawing->scene;
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        for (size_t p = 0; stroke->ink_count > 1 && p < stroke->passes; p++) {
            const struct passed *passed = &stroke->passed[p];
            if (is_passed_wrong(passed, passed_middle(drawing, passed), &stroke->trail)) {
                scene->wrong_sides++;
                scene->wrong |= 1U << stroke->who;
                scene->wrong |= passed->who < BODY_COUNT ? 1U << passed->who : 0;
            }
        }
    }
}

struct vec2 passed_middle(const struct drawing *drawing, const struct passed *passed)
{
    return passed->who == BODY_NONE ? basket_marks(drawing, false).ring
           : passed->bar >= 0       ? drawing->stops.at[passed->bar].at
                                    : symbol_of(drawing, passed->who)->at;
}

int sides_wrong(const struct drawing *drawing, const struct stroke *stroke,
                const struct trail *trail)
{
    int wrong = 0;
    for (size_t i = 0; i < stroke->passes; i++) {
        const struct passed *passed = &stroke->passed[i];
        wrong += is_passed_wrong(passed, passed_middle(drawing, passed), trail) ? 1 : 0;
    }
    return wrong;
}
