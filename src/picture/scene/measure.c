/* SPDX-License-Identifier: MIT */
/* measure: what lies on what in a finished display list, counted from what is drawn and not from
 * what was meant. For tests, for `--measure`, and to hold it all to zero. */
#include "picture/scene/drawing.h"

#include <math.h>

#define TOUCH 0.05 /* points: less is not an overlap */

/* A mark as a disc: a numeral's body, a ring, an X, a label, an end ring. */
struct blob {
    struct vec2 at;
    double radius;
    body who;
    int line;
};
typedef VEC(struct blob) blob_list;
/* One run of ink. */
struct inked {
    const struct vec2 *at;
    size_t count;
    double half;
    int line;
    body who;
    bool bar;
};
typedef VEC(struct inked) inked_list;
typedef VEC(struct vec2) points_list;

struct counting {
    struct arena *arena;
    struct sizes size;
    blob_list symbols, labels, dots;
    inked_list lines;
    struct scene_measure *found;
};

static bool is_line(enum scene_class class)
{
    return class >= CLASS_MOVE && class <= CLASS_DEFENSE_MOVE;
}

static void ink_end(struct counting *counting, const struct scene_item *item, points_list *points)
{
    if (points->count > 1) {
        bool bar = item->class == CLASS_SCREEN && item->width > 1.2 * counting->size.line &&
                   item->count == 2;
        struct inked inked = {points->at, points->count, item->width / 2,
                              item->line, item->who,     bar};
        VEC_PUSH(counting->arena, &counting->lines, inked);
    }
    points->at = NULL;
    points->count = points->room = 0;
}

static void ink_item(struct counting *counting, const struct scene_item *item)
{
    points_list points = {0};
    struct vec2 last = {0, 0};
    for (size_t i = 0; i < item->count; i++) {
        const struct path_element *element = &item->path[i];
        if (element->op == OP_MOVE) {
            ink_end(counting, item, &points);
        }
        if (element->op == OP_CURVE) {
            struct curve_piece piece = {element->p[0], element->p[1], element->p[2]};
            struct curve curve = {last, &piece, 1};
            struct path path = curve_flatten(counting->arena, &curve, 0.03);
            for (size_t p = 1; p < path.count; p++) {
                VEC_PUSH(counting->arena, &points, path.at[p]);
            }
            last = element->p[2];
        } else if (element->op != OP_CLOSE) {
            VEC_PUSH(counting->arena, &points, element->p[0]);
            last = element->p[0];
        }
    }
    ink_end(counting, item, &points);
}

static struct vec2 text_middle(const struct scene_item *item)
{
    return vec2_of(item->at.x, item->at.y - 0.5 * METRICS_CAP_HEIGHT * item->size);
}

static void collect_symbol(struct counting *counting, const struct scene_item *item)
{
    struct blob blob = {item->at, item->radius + item->width / 2, item->who, -1};
    if (item->shape == ITEM_TEXT) {
        double share = item->class == CLASS_DEFENDER ? 0.36 : 1.28 / 2.70;
        blob.at = text_middle(item);
        blob.radius = share * item->size;
    } else if (item->shape == ITEM_PATH) { /* an X */
        blob.at = vec2_mix(item->path[0].p[0], item->path[1].p[0], 0.5);
        blob.radius = fabs(item->path[1].p[0].x - item->path[0].p[0].x) / 2;
    }
    VEC_PUSH(counting->arena, &counting->symbols, blob);
}

static void collect(struct counting *counting, const struct scene *scene)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->casing) {
            continue;
        }
        if (is_line(item->class) && item->shape == ITEM_PATH) {
            ink_item(counting, item);
        } else if (item->class == CLASS_PLAYER || item->class == CLASS_BALL ||
                   item->class == CLASS_DEFENDER) {
            collect_symbol(counting, item);
        } else if ((item->class == CLASS_ORDER || item->class == CLASS_END) &&
                   item->shape == ITEM_CIRCLE) {
            struct blob blob = {item->at, item->radius + item->width / 2, item->who, item->line};
            if (item->class == CLASS_ORDER) {
                VEC_PUSH(counting->arena, &counting->labels, blob);
            } else {
                VEC_PUSH(counting->arena, &counting->dots, blob);
            }
        }
    }
}

static bool overlap(const struct blob *a, const struct blob *b)
{
    return vec2_distance(a->at, b->at) < a->radius + b->radius - TOUCH;
}

static double ink_far(const struct inked *inked, struct vec2 at)
{
    double least = 1e9;
    for (size_t i = 0; i + 1 < inked->count; i++) {
        least = real_min(least, segment_distance(at, inked->at[i], inked->at[i + 1], NULL));
    }
    return least - inked->half;
}

static void count_blobs(struct counting *counting)
{
    struct scene_measure *found = counting->found;
    for (size_t i = 0; i < counting->symbols.count; i++) {
        for (size_t j = i + 1; j < counting->symbols.count; j++) {
            const struct blob *a = &counting->symbols.at[i], *b = &counting->symbols.at[j];
            found->symbol_symbol += a->who != b->who && overlap(a, b) ? 1 : 0;
        }
        for (size_t j = 0; j < counting->dots.count; j++) {
            found->symbol_symbol +=
                overlap(&counting->symbols.at[i], &counting->dots.at[j]) ? 1 : 0;
        }
    }
    for (size_t i = 0; i < counting->labels.count; i++) {
        const struct blob *label = &counting->labels.at[i];
        for (size_t j = 0; j < counting->symbols.count; j++) {
            found->label_symbol += overlap(label, &counting->symbols.at[j]) ? 1 : 0;
        }
        for (size_t j = 0; j < counting->dots.count; j++) {
            found->label_dot += overlap(label, &counting->dots.at[j]) ? 1 : 0;
        }
        for (size_t j = i + 1; j < counting->labels.count; j++) {
            found->label_label += overlap(label, &counting->labels.at[j]) ? 1 : 0;
        }
    }
}

static void count_lines(struct counting *counting)
{
    struct scene_measure *found = counting->found;
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        for (size_t j = 0; j < counting->symbols.count; j++) {
            const struct blob *symbol = &counting->symbols.at[j];
            double gap = ink_far(line, symbol->at) - symbol->radius;
            found->line_symbol += gap < -TOUCH ? 1 : 0;
            if (symbol->who != line->who) {
                found->least_gap = real_min(found->least_gap, gap);
            }
        }
        for (size_t j = 0; j < counting->labels.count; j++) {
            const struct blob *label = &counting->labels.at[j];
            bool on = ink_far(line, label->at) - label->radius < -TOUCH;
            if (line->bar) {
                found->label_bar += on ? 1 : 0;
            } else {
                found->label_line += on && label->line != line->line ? 1 : 0;
            }
        }
    }
}

static void count_pair(struct counting *counting, const struct inked *a, const struct inked *b)
{
    struct scene_measure *found = counting->found;
    for (size_t i = 0; i + 1 < a->count; i++) {
        for (size_t j = 0; j + 1 < b->count; j++) {
            double t, u;
            if (!segment_cross(a->at[i], a->at[i + 1], b->at[j], b->at[j + 1], &t, &u)) {
                continue;
            }
            if (a->bar || b->bar) {
                found->line_bar++;
                continue;
            }
            double angle =
                vec2_angle(vec2_sub(a->at[i + 1], a->at[i]), vec2_sub(b->at[j + 1], b->at[j]));
            angle = angle > REAL_PI / 2 ? REAL_PI - angle : angle;
            found->crossings++;
            found->crossings_flat += angle < 12 * REAL_PI / 180 ? 1 : 0;
        }
    }
}

static void count_crossings(struct counting *counting)
{
    for (size_t i = 0; i < counting->lines.count; i++) {
        for (size_t j = i + 1; j < counting->lines.count; j++) {
            const struct inked *a = &counting->lines.at[i], *b = &counting->lines.at[j];
            bool own_bar = (a->bar || b->bar) && a->who == b->who;
            if (a->line != b->line && !own_bar && a->half > 0 && b->half > 0) {
                count_pair(counting, a, b);
            }
        }
    }
}

static void count_outside(struct counting *counting, const struct scene *scene)
{
    const blob_list *lists[] = {&counting->symbols, &counting->labels, &counting->dots};
    for (size_t l = 0; l < 3; l++) {
        for (size_t i = 0; i < lists[l]->count; i++) {
            const struct blob *blob = &lists[l]->at[i];
            bool out = blob->at.x < blob->radius - TOUCH || blob->at.y < blob->radius - TOUCH ||
                       blob->at.x > scene->width - blob->radius + TOUCH ||
                       blob->at.y > scene->height - blob->radius + TOUCH;
            counting->found->outside += out ? 1 : 0;
        }
    }
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        bool out = false;
        for (size_t p = 0; p < line->count; p++) {
            struct vec2 at = line->at[p];
            out |= at.x < 0 || at.y < 0 || at.x > scene->width || at.y > scene->height;
        }
        counting->found->outside += out ? 1 : 0;
    }
}

void scene_measure(struct arena *arena, const struct scene *scene, struct scene_measure *measure)
{
    *measure = (struct scene_measure){.least_gap = 1e9,
                                      .labels_left_out = scene->labels_left_out,
                                      .labels_beside = scene->labels_beside};
    struct counting counting = {.arena = arena, .size = sizes_of(scene->scale), .found = measure};
    collect(&counting, scene);
    measure->labels = (int)counting.labels.count;
    count_blobs(&counting);
    count_lines(&counting);
    count_crossings(&counting);
    count_outside(&counting, scene);
}
