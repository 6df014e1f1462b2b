/* SPDX-License-Identifier: MIT */
/* again: a diagram in which something lies on something, or a number has no place, is laid out
 * anew, with a mark of one of those in it moved a little, until nothing does or no such move helps:
 * a numeral a foot off its place is read as the same place, a line through it as another play. */
#include "picture/scene/again.h"

#define NUDGE_POINTS 1.6 /* least, on a small picture */
#define NUDGE_FEET 0.6   /* of each of its steps (ours) */
#define SMALL 4.0        /* points a foot: below, a picture is 2.9 in wide or less */
enum {
    WAYS = 8,
    STEPS = 2,
    TRIES = 200,
    TRIES_NUMBER = 32,
    TRIES_SMALL = 16,
    TRIES_ASTRAY = 12,
    TRIES_WHOLE = 160
};

/* What is amiss in a picture. Heads that touch something are for those who lay them: a search for
 * each would be many layouts. */
static double faults_of(const struct scene_measure *found)
{
    return 10 * scene_measure_hidden(found) + 6 * found->wrong_sides + 2 * found->crossings_flat +
           3 * found->labels_left_out + 3 * found->labels_astray;
}

static bool is_faulty(const struct scene_measure *found)
{
    return scene_measure_hidden(found) > 0 || found->wrong_sides > 0 ||
           found->labels_left_out > 0 || found->labels_astray > 0;
}

struct vec2 nudge_of(const struct drawing *drawing, body who, int stop)
{
    struct vec2 by = {0, 0};
    const struct nudges *nudges = drawing->nudges;
    for (size_t i = 0; nudges && i < nudges->count; i++) {
        if (nudges->at[i].who == who &&
            (nudges->at[i].stop == stop || nudges->at[i].stop == NUDGE_WHOLE)) {
            by = vec2_add(by, nudges->at[i].by);
        }
    }
    return by;
}

struct trying {
    struct arena *arena;
    const struct diagram *diagram;
    const struct scene_options *options;
    struct nudges best;
    struct scene_measure found; /* in the best */
    double faults;
    unsigned rests[SCENE_RESTS];
    unsigned near; /* who else is drawn */
    double step;   /* points by which a mark is moved */
    int further;   /* steps before the first */
    bool small;
    int tries, more; /* layouts, and how many more than as a rule may be */
};

/* A number without a place is worth fewer than a mark on another, and where pictures are small, and
 * many to a page, next to none, as is one that is nearer to another line: each is a layout. */
static int tries_most(const struct trying *trying)
{
    int number = trying->found.labels_left_out == 0 ? TRIES_ASTRAY
                 : trying->small                    ? TRIES_SMALL
                                                    : TRIES_NUMBER;
    bool lies = scene_measure_hidden(&trying->found) > 0 || trying->found.wrong_sides > 0;
    return lies ? TRIES + trying->more : number;
}

/* Laid out with one more mark moved; true: less is amiss. */
static bool try_nudge(struct trying *trying, struct nudge nudge)
{
    struct arena_mark mark = arena_mark(trying->arena);
    struct nudges nudges = trying->best;
    struct scene_measure found;
    nudges.at[nudges.count++] = nudge;
    trying->tries++;
    const struct scene *scene =
        scene_layout(trying->arena, trying->diagram, trying->options, &nudges);
    scene_measure(trying->arena, scene, &found);
    double faults = faults_of(&found);
    arena_release(trying->arena, mark);
    if (faults >= trying->faults) {
        return false;
    }
    trying->best = nudges;
    trying->found = found;
    trying->faults = faults;
    return true;
}

static struct vec2 way_by(const struct trying *trying, int way, int steps)
{
    double angle = 2 * REAL_PI * way / WAYS, far = trying->step * steps;
    return vec2_of(far * real_cos(angle), far * real_sin(angle));
}

/* Each way, a little and a little more. */
static bool try_ways(struct trying *trying, body who, int stop)
{
    for (int i = 0; i < STEPS * WAYS && trying->tries < tries_most(trying); i++) {
        struct vec2 by = way_by(trying, i % WAYS, 1 + i / WAYS + trying->further);
        if (try_nudge(trying, (struct nudge){who, stop, by})) {
            return true;
        }
    }
    return false;
}

/* Moves one more mark of those; false: none helps. */
static bool try_bodies(struct trying *trying, unsigned bodies)
{
    for (int stop = -1; stop < SCENE_RESTS; stop++) {
        unsigned has = stop < 0 ? bodies : bodies & trying->rests[stop];
        for (int b = 0; b < BODY_COUNT; b++) {
            if ((has & 1U << b) != 0 && try_ways(trying, (body)b, stop)) {
                return true;
            }
        }
    }
    return false;
}

/* A screener between two others is moved with his bar as one, and his numeral a little on its own.
 */
static bool try_whole(struct trying *trying, unsigned bodies)
{
    for (int i = -1; i < WAYS; i++) {
        for (int b = 0; b < BODY_COUNT && trying->best.count + 1 < NUDGES; b++) {
            size_t before = trying->best.count;
            if ((bodies & trying->rests[0] & 1U << b) == 0) {
                continue;
            }
            if (i >= 0) {
                trying->best.at[trying->best.count++] =
                    (struct nudge){(body)b, -1, way_by(trying, i, 1)};
            }
            if (try_ways(trying, (body)b, NUDGE_WHOLE)) {
                return true;
            }
            trying->best.count = before;
        }
    }
    return false;
}

/* The attackers. */
static unsigned attackers(void)
{
    unsigned all = 0;
    for (int b = 0; b < BODY_COUNT; b++) {
        all |= body_is_defender((body)b) ? 0 : 1U << b;
    }
    return all;
}

/* Of those on whom something lies; an X gives way by itself, and is moved only where that is not
 * enough, as are those who have nothing to do with it but stand in the way. */
static bool try_all(struct trying *trying)
{
    unsigned lies = trying->found.bodies;
    if (try_bodies(trying, lies & attackers())) {
        return true;
    }
    if (scene_measure_hidden(&trying->found) == 0 && trying->found.wrong_sides == 0) {
        return false;
    }
    if (try_bodies(trying, lies & ~attackers()) || try_bodies(trying, ~lies & trying->near)) {
        return true;
    }
    trying->further = STEPS;
    bool helps = try_bodies(trying, lies & attackers());
    trying->further = 0;
    if (helps || scene_measure_hidden(&trying->found) == 0) {
        return helps;
    }
    trying->more = TRIES_WHOLE;
    return try_whole(trying, lies & attackers());
}

bool again_is_needed(struct arena *arena, const struct scene *scene)
{
    struct arena_mark mark = arena_mark(arena);
    struct scene_measure found;
    scene_measure(arena, scene, &found);
    arena_release(arena, mark);
    return is_faulty(&found);
}

/* The attackers in a picture. */
static unsigned bodies_drawn(const struct scene *scene)
{
    unsigned drawn = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        drawn |= item->class == CLASS_PLAYER && item->who < BODY_COUNT ? 1U << item->who : 0;
    }
    return drawn & attackers();
}

struct nudges again_nudges(struct arena *arena, const struct diagram *diagram,
                           const struct scene_options *options, const struct scene *first)
{
    struct arena_mark mark = arena_mark(arena);
    struct trying trying = {.arena = arena, .diagram = diagram, .options = options};
    scene_measure(arena, first, &trying.found);
    trying.faults = faults_of(&trying.found);
    memcpy(trying.rests, first->rests, sizeof trying.rests);
    trying.near = bodies_drawn(first);
    trying.small = first->scale < SMALL && !options->order; /* a card has no sentence */
    trying.step = real_max(NUDGE_FEET * first->scale, NUDGE_POINTS);
    while (is_faulty(&trying.found) && trying.best.count < NUDGES &&
           trying.tries < tries_most(&trying) && try_all(&trying)) {
    }
    arena_release(arena, mark);
    return trying.best;
}
