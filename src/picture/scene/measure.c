/* SPDX-License-Identifier: MIT */
/* measure: what lies on what in a finished display list, counted from what is drawn and not from
 * what was meant. For tests, for `--measure`, and to hold it all to zero. */
#include "picture/scene/measuring.h"

#include <math.h>

#define TOGETHER_FEET 2.0 /* so long side by side is one line to the eye (ours) */
#define ALONG 0.21        /* sine of 12 degrees: flatter is along, not across */
#define FLAT (12 * REAL_PI / 180)
#define WIDE 2.0 /* radii of a disc: so far from its own, nobody is sure whose it is (ours) */

const char *measured_word(enum measured kind)
{
    static const char *const words[MEASURED_KINDS] = {"symbol", "line", "bar",    "dot",
                                                      "label",  "head", "basket", "tick"};
    return words[kind];
}

static void blame(struct counting *counting, body who)
{
    counting->found->bodies |= who < BODY_COUNT ? 1U << who : 0;
}

/* A mark of one lies on one of the other's. */
void measure_count(struct counting *counting, enum measured a, body who, enum measured b,
                   body other)
{
    counting->found->on[a < b ? a : b][a < b ? b : a]++;
    if (a < MEASURED_HEAD && b < MEASURED_HEAD) { /* what a search may help */
        blame(counting, who);
        blame(counting, other);
    }
}

static int overlaps_below(const struct scene_measure *measure, int kinds)
{
    int all = measure->outside;
    for (int b = 0; b < kinds; b++) {
        for (int a = 0; a <= b; a++) {
            all += measure->on[a][b];
        }
    }
    return all;
}

int scene_measure_overlaps(const struct scene_measure *measure)
{
    return overlaps_below(measure, MEASURED_KINDS);
}

int scene_measure_hidden(const struct scene_measure *measure)
{
    return overlaps_below(measure, MEASURED_HEAD) - measure->numerals_own;
}

static bool is_line(enum scene_class class)
{
    return class >= CLASS_MOVE && class <= CLASS_DEFENSE_MOVE;
}

/* A screen's bar or a hand-off's two: thick, and one stroke of the pen each. */
bool item_is_bar(const struct scene_item *item, const struct sizes *size)
{
    return (item->class == CLASS_SCREEN && item->width > 1.2 * size->line && item->count == 2) ||
           (item->class == CLASS_HANDOFF && item->count == 4);
}

size_t item_ink(struct arena *arena, const struct scene_item *item, size_t first, double flatness,
                points_list *points)
{
    size_t i = first;
    do {
        const struct path_element *element = &item->path[i];
        if (element->op == OP_CURVE) {
            struct curve_piece piece = {element->p[0], element->p[1], element->p[2]};
            struct curve curve = {points->at[points->count - 1], &piece, 1};
            struct path path = curve_flatten(arena, &curve, flatness);
            for (size_t p = 1; p < path.count; p++) {
                VEC_PUSH(arena, points, path.at[p]);
            }
        } else if (element->op != OP_CLOSE) {
            VEC_PUSH(arena, points, element->p[0]);
        }
        i++;
    } while (i < item->count && item->path[i].op != OP_MOVE);
    return i;
}

static void ink_box(struct inked *inked)
{
    inked->low = inked->high = inked->at[0];
    for (size_t i = 1; i < inked->count; i++) {
        struct vec2 at = inked->at[i];
        inked->low = vec2_of(real_min(inked->low.x, at.x), real_min(inked->low.y, at.y));
        inked->high = vec2_of(real_max(inked->high.x, at.x), real_max(inked->high.y, at.y));
    }
}

/* Is a place, is another run, surely further off than that? */
bool ink_is_beyond(const struct inked *inked, struct vec2 low, struct vec2 high, double far)
{
    return low.x > inked->high.x + far || high.x < inked->low.x - far ||
           low.y > inked->high.y + far || high.y < inked->low.y - far;
}

static void ink_add(struct counting *counting, const struct scene_item *item, inked_list *list)
{
    for (size_t i = 0; i < item->count;) {
        points_list points = {0};
        i = item_ink(counting->arena, item, i, 0.03, &points);
        if (item->width <= 0 && points.count > 2) {
            VEC_PUSH(counting->arena, &points, points.at[0]);
        }
        if (points.count > 1) {
            struct inked inked = {points.at,
                                  points.count,
                                  item->width / 2,
                                  item->line,
                                  item->who,
                                  item->class,
                                  item_is_bar(item, &counting->size),
                                  {0, 0},
                                  {0, 0}};
            ink_box(&inked);
            VEC_PUSH(counting->arena, list, inked);
        }
    }
}

static void ink_item(struct counting *counting, const struct scene_item *item)
{
    ink_add(counting, item, item->width > 0 ? &counting->lines : &counting->heads);
}

struct vec2 item_middle(const struct scene_item *item)
{
    double up = item->shape == ITEM_TEXT ? 0.5 * METRICS_CAP_HEIGHT * item->size : 0;
    return vec2_of(item->at.x, item->at.y - up);
}

static struct blob path_blob(const struct scene_item *item)
{
    struct vec2 low = item->path[0].p[0], high = low;
    for (size_t i = 1; i < item->count; i++) {
        if (item->path[i].op != OP_CLOSE) {
            struct vec2 at = item->path[i].p[0];
            low = vec2_of(real_min(low.x, at.x), real_min(low.y, at.y));
            high = vec2_of(real_max(high.x, at.x), real_max(high.y, at.y));
        }
    }
    return (struct blob){.at = vec2_mix(low, high, 0.5), .radius = (high.x - low.x) / 2};
}

static void collect_blob(struct counting *counting, const struct scene_item *item,
                         enum measured kind)
{
    struct blob blob = {.at = item->at, .radius = item->radius + item->width / 2};
    if (item->shape == ITEM_TEXT) {
        double share = item->class == CLASS_DEFENDER ? 0.36 : 1.28 / 2.70;
        blob = (struct blob){.at = item_middle(item), .radius = share * item->size};
    } else if (item->shape == ITEM_PATH) { /* an X, a cone */
        blob = path_blob(item);
    }
    blob.who = item->who;
    blob.line = item->line;
    blob.kind = kind;
    blob.lettered = item->shape == ITEM_TEXT;
    VEC_PUSH(counting->arena, kind == MEASURED_BASKET ? &counting->baskets : &counting->blobs,
             blob);
    if (item->shape == ITEM_PATH && item->class == CLASS_DEFENDER) {
        ink_add(counting, item, &counting->exes);
    }
}

/* The thin line that leads from a disc to its own stands just before it. */
static void collect_leader(struct counting *counting, const struct scene *scene, size_t disc)
{
    const struct scene_item *item = disc > 0 ? &scene->items.at[disc - 1] : NULL;
    if (item && item->class == CLASS_ORDER && item->shape == ITEM_PATH && !item->casing) {
        struct blob *blob = &counting->blobs.at[counting->blobs.count - 1];
        blob->led = true;
        blob->tip = item->path[item->count - 1].p[0];
        ink_item(counting, item);
    }
}

static void collect(struct counting *counting, const struct scene *scene)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool circle = item->shape == ITEM_CIRCLE;
        if (item->casing) {
            continue;
        }
        if (is_line(item->class) && item->shape == ITEM_PATH) {
            ink_item(counting, item);
        } else if (item->class == CLASS_PLAYER || item->class == CLASS_BALL ||
                   item->class == CLASS_DEFENDER ||
                   (item->class == CLASS_CONE && item->fill != ROLE_NONE)) {
            collect_blob(counting, item, MEASURED_SYMBOL);
        } else if (item->class == CLASS_ORDER && circle) {
            collect_blob(counting, item, MEASURED_LABEL);
            collect_leader(counting, scene, i);
        } else if (item->class == CLASS_END && circle) {
            collect_blob(counting, item, MEASURED_DOT);
        } else if (item->class == CLASS_BASKET && circle) {
            collect_blob(counting, item, MEASURED_BASKET);
        } else if (item->class == CLASS_LINE_OF_PLAYERS) {
            ink_add(counting, item, &counting->ticks);
        }
    }
}

/* How far a place is; or only that it is further off than `most`. */
double ink_far(const struct inked *inked, struct vec2 at, double most)
{
    double least = 1e9;
    if (ink_is_beyond(inked, at, at, most)) {
        return least;
    }
    for (size_t i = 0; i + 1 < inked->count; i++) {
        least = real_min(least, segment_distance(at, inked->at[i], inked->at[i + 1], NULL));
    }
    return least;
}

static void count_blobs(struct counting *counting)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        for (size_t j = i + 1; j < counting->blobs.count; j++) {
            const struct blob *a = &counting->blobs.at[i], *b = &counting->blobs.at[j];
            bool one = a->kind == MEASURED_SYMBOL && b->kind == MEASURED_SYMBOL &&
                       a->who == b->who && a->who != BODY_NONE;
            double gap = vec2_distance(a->at, b->at) - a->radius - b->radius;
            if (!one && gap < -TOUCH) {
                measure_count(counting, a->kind, a->who, b->kind, b->who);
            }
        }
    }
}

/* Does a run of ink touch a mark that it may not? It may lie under its own label, and begin and end
 * at the edge of its player's own ring. */
static bool ink_on(const struct inked *line, const struct blob *blob, double far)
{
    if (blob->kind == MEASURED_LABEL && !line->bar && line->line == blob->line) {
        return false;
    }
    bool meets = blob->kind == MEASURED_DOT && !line->bar &&
                 (line->who == blob->who || line->class == CLASS_HANDOFF);
    return far - (meets ? 0 : line->half) - blob->radius < -TOUCH;
}

static void count_lines(struct counting *counting)
{
    struct scene_measure *found = counting->found;
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        for (size_t j = 0; j < counting->blobs.count; j++) {
            const struct blob *blob = &counting->blobs.at[j];
            double far =
                ink_far(line, blob->at, real_max(0, found->least_gap) + line->half + blob->radius);
            if (ink_on(line, blob, far)) {
                measure_count(counting, line->bar ? MEASURED_BAR : MEASURED_LINE, line->who,
                              blob->kind, blob->who);
            }
            if (blob->kind == MEASURED_SYMBOL && blob->who != line->who) {
                found->least_gap = real_min(found->least_gap, far - line->half - blob->radius);
            }
        }
    }
}

/* How far a disc is from what it belongs to, and from the nearest thing that it does not. */
struct claim {
    double own, other;
    body who; /* whose the nearest line is that it does not belong to */
    bool has_line;
};

/* What tells whose a disc is: its place, or where the line ends that leads from it. */
static struct vec2 claim_point(const struct blob *disc)
{
    return disc->led ? disc->tip : disc->at;
}

/* A number that belongs to no line, a fake's, a wait's, belongs to its player and all his runs. */
static void claim_lines(struct claim *claim, const struct blob *disc, const inked_list *lines)
{
    struct vec2 at = claim_point(disc);
    for (size_t i = 0; i < lines->count; i++) {
        const struct inked *line = &lines->at[i];
        if (line->class == CLASS_ORDER) {
            continue;
        }
        bool own = claim->has_line ? line->line == disc->line
                                   : line->who == disc->who && !class_is_throw(line->class);
        double *nearest = own ? &claim->own : &claim->other;
        double far = ink_far(line, at, *nearest + line->half) - line->half;
        claim->who = !own && far < *nearest ? line->who : claim->who;
        *nearest = real_min(*nearest, far);
    }
}

static void claim_player(const struct counting *counting, struct claim *claim,
                         const struct blob *disc)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        bool own = blob->kind != MEASURED_LABEL && blob->who == disc->who;
        double *nearest = own ? &claim->own : &claim->other;
        if (own || blob->kind == MEASURED_SYMBOL) {
            *nearest =
                real_min(*nearest, vec2_distance(blob->at, claim_point(disc)) - blob->radius);
        }
    }
}

static bool has_line(const struct counting *counting, int line)
{
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *ink = &counting->lines.at[i];
        if (line >= 0 && ink->line == line && ink->class != CLASS_ORDER) {
            return true;
        }
    }
    return false;
}

/* Discs of which a player cannot tell whose they are. */
static void count_astray(struct counting *counting)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *disc = &counting->blobs.at[i];
        if (disc->kind != MEASURED_LABEL) {
            continue;
        }
        struct claim claim = {1e9, 1e9, BODY_NONE, has_line(counting, disc->line)};
        claim_lines(&claim, disc, &counting->lines);
        claim_lines(&claim, disc, &counting->heads);
        if (!claim.has_line) {
            claim_player(counting, &claim, disc);
        }
        bool astray = claim.other < claim.own - TOUCH ||
                      claim.own > (disc->led ? 0.5 : 1 + WIDE) * disc->radius;
        if (astray) {
            counting->found->labels_astray++;
            blame(counting, disc->who);
            blame(counting, claim.who);
        }
    }
}

static bool bars_cross(const struct inked *a, const struct inked *b)
{
    double clear = a->half + b->half;
    return !ink_is_beyond(a, b->low, b->high, clear) &&
           way_gap(a->at, a->count, b->at, b->count) < clear - TOUCH;
}

static void count_crossings(struct counting *counting, const struct inked *a, const struct inked *b)
{
    struct scene_measure *found = counting->found;
    if (ink_is_beyond(a, b->low, b->high, 0)) {
        return;
    }
    for (size_t i = 0; i + 1 < a->count; i++) {
        for (size_t j = 0; j + 1 < b->count; j++) {
            double t, u;
            if (!segment_cross(a->at[i], a->at[i + 1], b->at[j], b->at[j + 1], &t, &u)) {
                continue;
            }
            double angle =
                vec2_angle(vec2_sub(a->at[i + 1], a->at[i]), vec2_sub(b->at[j + 1], b->at[j]));
            angle = angle > REAL_PI / 2 ? REAL_PI - angle : angle;
            found->crossings++;
            found->crossings_flat += angle < FLAT ? 1 : 0;
        }
    }
}

/* How much of `a` runs beside `b`, no further off than a line's width. */
static double beside(const struct inked *a, const struct inked *b)
{
    double length = 0, near = a->half + b->half + real_max(a->half, b->half);
    if (ink_is_beyond(a, b->low, b->high, near)) {
        return 0;
    }
    for (size_t i = 0; i + 1 < a->count; i++) {
        struct vec2 middle = vec2_mix(a->at[i], a->at[i + 1], 0.5),
                    way = vec2_unit(vec2_sub(a->at[i + 1], a->at[i]));
        for (size_t j = 0; j + 1 < b->count; j++) {
            struct vec2 other = vec2_unit(vec2_sub(b->at[j + 1], b->at[j]));
            if (fabs(vec2_cross(way, other)) < ALONG &&
                segment_distance(middle, b->at[j], b->at[j + 1], NULL) < near) {
                length += vec2_distance(a->at[i], a->at[i + 1]);
                break;
            }
        }
    }
    return length;
}

/* Lines are drawn in runs (dashes, and twice for a shot): what of them lies together adds up. */
static void count_together(struct counting *counting, size_t lines)
{
    double *length = arena_array(counting->arena, double, lines *lines);
    body *who = arena_array(counting->arena, body, lines);
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *a = &counting->lines.at[i];
        if (a->line >= 0) {
            who[a->line] = a->who;
        }
        for (size_t j = 0; j < counting->lines.count; j++) {
            const struct inked *b = &counting->lines.at[j];
            if (a->line >= 0 && b->line > a->line && !a->bar && !b->bar) {
                length[(size_t)a->line * lines + (size_t)b->line] += beside(a, b);
            }
        }
    }
    for (size_t i = 0; i < lines * lines; i++) {
        if (length[i] > TOGETHER_FEET * counting->size.k) {
            measure_count(counting, MEASURED_LINE, who[i / lines], MEASURED_LINE, who[i % lines]);
        }
    }
}

static void count_pairs(struct counting *counting)
{
    int lines = 0;
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *a = &counting->lines.at[i];
        lines = a->line >= lines ? a->line + 1 : lines;
        for (size_t j = i + 1; j < counting->lines.count; j++) {
            const struct inked *b = &counting->lines.at[j];
            bool own_bar = (a->bar || b->bar) && a->who == b->who;
            if (a->line == b->line || own_bar) {
                continue;
            }
            if (a->bar || b->bar) {
                if (bars_cross(a, b)) {
                    measure_count(counting, MEASURED_BAR, a->who,
                                  a->bar && b->bar ? MEASURED_BAR : MEASURED_LINE, b->who);
                }
            } else {
                count_crossings(counting, a, b);
            }
        }
    }
    count_together(counting, (size_t)lines);
}

static void count_out(struct counting *counting, bool out, body who)
{
    counting->found->outside += out ? 1 : 0;
    counting->found->bodies |= out && who < BODY_COUNT ? 1U << who : 0;
}

static void count_outside(struct counting *counting, const struct scene *scene)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        double edge = blob->radius - TOUCH;
        bool out = blob->at.x < edge || blob->at.y < edge || blob->at.x > scene->width - edge ||
                   blob->at.y > scene->height - edge;
        count_out(counting, out, blob->who);
    }
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        bool out = false;
        for (size_t p = 0; p < line->count; p++) {
            struct vec2 at = line->at[p];
            out |= at.x < 0 || at.y < 0 || at.x > scene->width || at.y > scene->height;
        }
        count_out(counting, out, line->who);
    }
}

void scene_measure(struct arena *arena, const struct scene *scene, struct scene_measure *measure)
{
    *measure = (struct scene_measure){.least_gap = 1e9,
                                      .labels_left_out = scene->labels_left_out,
                                      .labels_beside = scene->labels_beside,
                                      .wrong_sides = scene->wrong_sides,
                                      .bodies = scene->wrong};
    measure->bodies |= scene->labels_left_out > 0 ? scene->left_out : 0;
    struct counting counting = {.arena = arena, .size = sizes_of(scene->scale), .found = measure};
    collect(&counting, scene);
    for (size_t i = 0; i < counting.blobs.count; i++) {
        measure->labels += counting.blobs.at[i].kind == MEASURED_LABEL ? 1 : 0;
    }
    count_blobs(&counting);
    count_lines(&counting);
    count_pairs(&counting);
    measure_heads(&counting);
    measure_baskets(&counting);
    measure_ticks(&counting);
    measure_numerals(&counting);
    count_outside(&counting, scene);
    count_astray(&counting);
}
