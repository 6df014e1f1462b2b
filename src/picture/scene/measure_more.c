/* SPDX-License-Identifier: MIT */
/* measure_more: of what lies on what, arrow heads, the ring of the basket, those who wait in a line
 * of players, and a numeral that touches its own X. */
#include "picture/scene/measuring.h"

/* Is a place in a head? */
static bool head_holds(const struct inked *head, struct vec2 at)
{
    bool in = false;
    for (size_t i = 0; i + 1 < head->count; i++) {
        struct vec2 a = head->at[i], b = head->at[i + 1];
        if ((a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y)) {
            in = !in;
        }
    }
    return in;
}

/* How far a head's edge is from a run of ink, or an edge; 0: they cross, or one is in the other. */
static double head_gap(const struct inked *head, const struct inked *other, double most)
{
    if (ink_is_beyond(head, other->low, other->high, most)) {
        return 1e9;
    }
    return head_holds(head, other->at[0]) ? 0
                                          : way_gap(head->at, head->count, other->at, other->count);
}

static bool head_on_disc(const struct inked *head, struct vec2 at, double radius)
{
    return ink_far(head, at, radius) < radius - TOUCH ||
           (!ink_is_beyond(head, at, at, 0) && head_holds(head, at));
}

/* A disc on its own line may touch that one's head no more than another's. */
static void heads_on_blobs(struct counting *counting, const struct inked *head)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        if (head_on_disc(head, blob->at, blob->radius)) {
            measure_count(counting, MEASURED_HEAD, head->who, blob->kind, blob->who);
        }
    }
}

/* Once for each line, however many dashes of it lie there. */
static void heads_on_lines(struct counting *counting, const struct inked *head)
{
    int last = -1;
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        bool own = line->line == head->line || line->class == CLASS_ORDER;
        if (!own && line->line != last && head_gap(head, line, line->half) < line->half - TOUCH) {
            last = line->line;
            measure_count(counting, MEASURED_HEAD, head->who,
                          line->bar ? MEASURED_BAR : MEASURED_LINE, line->who);
        }
    }
}

void measure_heads(struct counting *counting)
{
    for (size_t i = 0; i < counting->heads.count; i++) {
        const struct inked *head = &counting->heads.at[i];
        heads_on_blobs(counting, head);
        heads_on_lines(counting, head);
        for (size_t j = i + 1; j < counting->heads.count; j++) {
            const struct inked *other = &counting->heads.at[j];
            if (head_gap(head, other, 0) <= 0 || head_holds(other, head->at[0])) {
                measure_count(counting, MEASURED_HEAD, head->who, MEASURED_HEAD, other->who);
            }
        }
    }
}

static void basket_count(struct counting *counting, const struct blob *basket)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        if (vec2_distance(blob->at, basket->at) < blob->radius + basket->radius - TOUCH) {
            measure_count(counting, blob->kind, blob->who, MEASURED_BASKET, BODY_NONE);
        }
    }
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        double clear = basket->radius + line->half - TOUCH;
        if (ink_far(line, basket->at, clear) < clear) {
            measure_count(counting, line->bar ? MEASURED_BAR : MEASURED_LINE, line->who,
                          MEASURED_BASKET, BODY_NONE);
        }
    }
    for (size_t i = 0; i < counting->heads.count; i++) {
        const struct inked *head = &counting->heads.at[i];
        if (head_on_disc(head, basket->at, basket->radius)) {
            measure_count(counting, MEASURED_HEAD, head->who, MEASURED_BASKET, BODY_NONE);
        }
    }
}

void measure_baskets(struct counting *counting)
{
    for (size_t i = 0; i < counting->baskets.count; i++) {
        basket_count(counting, &counting->baskets.at[i]);
    }
}

static void tick_count(struct counting *counting, const struct inked *tick)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        double clear = blob->radius + tick->half - TOUCH;
        if (ink_far(tick, blob->at, clear) < clear) {
            measure_count(counting, blob->kind, blob->who, MEASURED_TICK, tick->who);
        }
    }
    for (size_t i = 0; i < counting->lines.count; i++) {
        const struct inked *line = &counting->lines.at[i];
        double clear = line->half + tick->half;
        if (!ink_is_beyond(line, tick->low, tick->high, clear) &&
            way_gap(line->at, line->count, tick->at, tick->count) < clear - TOUCH) {
            measure_count(counting, line->bar ? MEASURED_BAR : MEASURED_LINE, line->who,
                          MEASURED_TICK, tick->who);
        }
    }
    for (size_t i = 0; i < counting->heads.count; i++) {
        const struct inked *head = &counting->heads.at[i];
        if (head_gap(head, tick, tick->half) < tick->half - TOUCH) {
            measure_count(counting, MEASURED_HEAD, head->who, MEASURED_TICK, tick->who);
        }
    }
}

void measure_ticks(struct counting *counting)
{
    for (size_t i = 0; i < counting->ticks.count; i++) {
        tick_count(counting, &counting->ticks.at[i]);
    }
}

void measure_numerals(struct counting *counting)
{
    for (size_t i = 0; i < counting->blobs.count; i++) {
        const struct blob *blob = &counting->blobs.at[i];
        for (size_t j = 0; blob->lettered && j < counting->exes.count; j++) {
            const struct inked *stroke = &counting->exes.at[j];
            double clear = blob->radius + stroke->half - TOUCH;
            if (stroke->who == blob->who && ink_far(stroke, blob->at, clear) < clear) {
                counting->found->on[MEASURED_SYMBOL][MEASURED_SYMBOL]++;
                counting->found->numerals_own++;
                break;
            }
        }
    }
}
