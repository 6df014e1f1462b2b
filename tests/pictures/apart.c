/* SPDX-License-Identifier: MIT */
/* apart: generated plays drawn at three sizes: nothing lies on anything. Prints every kind of
 * overlap with its number and a seed that has it.
 *   apart COUNT [FIRST_SEED] */
#include <stdio.h>
#include <stdlib.h>

#include "floor/sim/sim.h"
#include "generate.h"
#include "picture/scene/drawing.h"
#include "resolved.h"
#include "sides.h"

enum { WIDTHS = 3 };
static const struct {
    const char *name;
    double points;
    long dirty; /* one diagram in so many may have something on something, until none has */
} widths[WIDTHS] = {{"3.3 in", 237.6, 600}, {"2.1 in", 151.2, 400}, {"1.6 in", 115.2, 300}};

struct seen { /* of one kind of overlap at one width */
    long count;
    unsigned long long seed; /* the first */
    char label[8];
};
struct total {
    long throws;
    struct seen unseen; /* throws of which nothing is drawn */
    long diagrams, dirty, touched, labels, left_out, moved, crossings, flat;
    struct seen on[MEASURED_KINDS][MEASURED_KINDS], outside, astray, off, out, wrong, differ;
};

static void see(struct seen *seen, int count, unsigned long long seed, struct str label)
{
    if (count > 0 && seen->count == 0) {
        seen->seed = seed;
        snprintf(seen->label, sizeof seen->label, "%.*s", STR_ARG(label));
    }
    seen->count += count;
}

static void add(struct total *total, const struct scene_measure *found, unsigned long long seed,
                struct str label)
{
    for (int a = 0; a < MEASURED_KINDS; a++) {
        for (int b = a; b < MEASURED_KINDS; b++) {
            see(&total->on[a][b], found->on[a][b], seed, label);
        }
    }
    see(&total->outside, found->outside, seed, label);
    see(&total->astray, found->labels_astray, seed, label);
    see(&total->wrong, found->wrong_sides, seed, label);
    see(&total->off, found->labels_left_out, seed, label);
    total->diagrams++;
    total->dirty += scene_measure_hidden(found) > 0;
    total->touched += scene_measure_overlaps(found) > scene_measure_hidden(found);
    total->labels += found->labels;
    total->left_out += found->labels_left_out;
    total->moved += found->labels_beside;
    total->crossings += found->crossings;
    total->flat += found->crossings_flat;
}

static bool is_drawn(const struct scene *scene, size_t task)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (class_is_throw(item->class) && item->task == (int)task && !item->casing &&
            item->width > 0 && item->count > 1) {
            return true;
        }
    }
    return false;
}

/* Every throw of the diagram, ball let go, has ink, and not of a head alone. */
static void throws_see(struct total *total, const struct diagram *diagram,
                       const struct scene *scene, unsigned long long seed)
{
    struct scope scope = scope_of(diagram);
    for (size_t i = scope.first; i < scope.end; i++) {
        enum task_kind kind = segment_task(diagram->segment, i)->kind;
        bool throws = kind == TASK_PASS || kind == TASK_EXCHANGE || kind == TASK_SHOOT;
        if (throws && diagram->segment->record[i].time[MOMENT_RELEASED] >= 0) {
            total->throws++;
            see(&total->unseen, !is_drawn(scene, i), seed, diagram->label);
        }
    }
}

static bool is_inside(const struct court *court, struct vec2 metres, double off)
{
    return metres.x > -court->half_width + off && metres.x < court->half_width - off &&
           metres.y > court->baseline + off;
}

static bool stays_inside(const struct segment *segment, body who)
{
    for (double t = 0; t <= segment->duration; t += RUN_SAMPLE) {
        if (!is_inside(segment->play->court, segment_at(segment, who, t), 0.1)) {
            return false;
        }
    }
    return true;
}

/* End rings on a boundary line, of players who never step on one. */
static int rings_out(struct arena *memory, const struct diagram *diagram,
                     const struct scene_options *options, const struct scene *scene)
{
    const struct frame frame = frame_of(memory, diagram, options);
    int out = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_END && item->shape == ITEM_CIRCLE && !item->casing) {
            double radius = item->radius / scene->scale * FEET;
            struct vec2 at = frame_back(&frame, item->at);
            out += !is_inside(diagram->segment->play->court, at, radius) &&
                           stays_inside(diagram->segment, item->who)
                       ? 1
                       : 0;
        }
    }
    return out;
}

static void try_seed(unsigned long long seed, struct total total[WIDTHS])
{
    struct arena memory;
    arena_init(&memory, NULL, NULL);
    struct strbuf text;
    struct resolved resolved;
    strbuf_init(&text, &memory);
    generate_play(&text, seed);
    resolve_text(&memory, &resolved, STR("generated"), strbuf_str(&text));
    struct run *run =
        sim_run(&memory, &resolved.sources, &resolved.book->plays.at[0], &resolved.diags);
    diagram_list diagrams = {0};
    scene_diagrams(&memory, run, &diagrams);
    for (size_t i = 0; i < diagrams.count; i++) {
        const struct scene *large = NULL;
        for (int w = 0; w < WIDTHS; w++) {
            struct scene_options options = {.width = widths[w].points, .accent = BODY_NONE};
            struct scene_measure found;
            const struct scene *scene = scene_make(&memory, &diagrams.at[i], &options);
            scene_measure(&memory, scene, &found);
            throws_see(&total[w], &diagrams.at[i], scene, seed);
            add(&total[w], &found, seed, diagrams.at[i].label);
            large = large ? large : scene;
            see(&total[w].out, rings_out(&memory, &diagrams.at[i], &options, scene), seed,
                diagrams.at[i].label);
            see(&total[w].differ, sides_differ(&memory, large, scene), seed, diagrams.at[i].label);
        }
    }
    arena_finish(&memory);
}

static void say(const char *what, const char *with, const struct seen *seen)
{
    if (seen->count > 0) {
        printf("#   %s%s%s: %ld, first in seed %llu, step %s\n", what, *with ? " on " : "", with,
               seen->count, seen->seed, seen->label);
    }
}

static int number;

/* What is wanted and not reached is told as a TODO with its number; over `most` it is a failure. */
static int hold(const char *what, const char *where, long count, long wanted, long most)
{
    printf("%sok %d - %s at %s%s\n# %ld, wanted %ld\n", count > wanted ? "not " : "", ++number,
           what, where, count > wanted && count <= most ? " # TODO not reached" : "", count,
           wanted);
    return count > most;
}

int main(int argc, char **argv)
{
    unsigned long long count = argc > 1 ? strtoull(argv[1], NULL, 10) : 100;
    unsigned long long first = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    static struct total total[WIDTHS];
    int failed = 0;
    for (unsigned long long seed = first; seed < first + count; seed++) {
        try_seed(seed, total);
    }
    for (int w = 0; w < WIDTHS; w++) {
        const struct total *all = &total[w];
        printf("# %s: %ld diagrams; %ld discs, %ld beside their line, %ld left out; %ld crossings, "
               "%ld flat\n",
               widths[w].name, all->diagrams, all->labels, all->moved, all->left_out,
               all->crossings, all->flat);
        for (int a = 0; a < MEASURED_KINDS; a++) {
            for (int b = a; b < MEASURED_KINDS; b++) {
                say(measured_word((enum measured)a), measured_word((enum measured)b),
                    &all->on[a][b]);
            }
        }
        say("outside", "", &all->outside);
        say("astray", "", &all->astray);
        say("left out", "", &all->off);
        say("wrong side", "", &all->wrong);
        say("other side than at 3.3 in", "", &all->differ);
        say("ring on a boundary", "", &all->out);
        say("unseen", "", &all->unseen);
        failed += hold("every throw is drawn", widths[w].name, all->unseen.count, 0,
                       all->throws / 300); /* a head is left of one from hand to hand */
        failed +=
            hold("who ends on the floor has his ring there", widths[w].name, all->out.count, 0, 0);
        failed += hold("no diagram with something on something", widths[w].name, all->dirty, 0,
                       all->diagrams / widths[w].dirty);
        failed += hold("no diagram with a head, the basket or who waits under something",
                       widths[w].name, all->touched, 0, all->diagrams / 2);
        failed += hold("every numeral and bar is passed as it was run past", widths[w].name,
                       all->wrong.count, 0, all->diagrams / 100);
        failed +=
            hold("and as at 3.3 in", widths[w].name, all->differ.count, 0, all->diagrams / 12);
        failed += hold("no disc is nearer to another line than to its own", widths[w].name,
                       all->astray.count, 0, all->labels / 100);
        failed += hold("under 1 of 200 discs is left out", widths[w].name, all->left_out,
                       all->labels / 200, all->labels / 50);
    }
    printf("1..%d\n", number);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
