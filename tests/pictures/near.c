/* SPDX-License-Identifier: MIT */
/* near: how near the drawn lines keep to the run, over the example books and generated plays. A
 * mover drawn alone, with nobody to go round, keeps within 15 cm of his own track, but for what his
 * numeral and his finish rings stand off their places (the court's own lines push those). Drawn
 * with all the others his line may be pushed. Three runs in four are held to it, those too that go
 * round the basket or come back along their own way; of the others the rest is a TODO. Of
 * screeners, of those who plant a foot and of all together it is only printed by how much, and how
 * often. near COUNT BOOK.play ... */
#include <stdio.h>
#include <stdlib.h>

#include "floor/sim/sim.h"
#include "generate.h"
#include "picture/scene/drawing.h"
#include "resolved.h"
#include "sides.h"
#include "whole_file.h"

#define NEAR 0.15     /* metres */
#define BY_BASKET 0.8 /* metres from its middle: ring, gap and line are kept clear (bend.c) */
#define BACK 0.6      /* of the way out: who ends nearer to where he began came back */

enum cause { RUNS, ROUND, SCREENERS, PLANTS, TOGETHER, CAUSES };
static const char *const words[CAUSES] = {
    "runs drawn alone", "runs by the basket or back along themselves, pushed apart on purpose",
    "screeners drawn alone", "plants drawn alone", "all among the others"};

struct tally {
    long lines, over;
    double most, sum;
    char where[96]; /* of the most */
};

static double track_distance(const struct segment *segment, body who, struct vec2 at)
{
    double least = 1e9;
    struct vec2 last = segment_at(segment, who, 0);
    for (double t = RUN_SAMPLE; t < segment->duration + RUN_SAMPLE; t += RUN_SAMPLE) {
        struct vec2 next = segment_at(segment, who, t);
        least = real_min(least, segment_distance(at, last, next, NULL));
        last = next;
    }
    return least;
}

/* How far a player's numeral and rings stand off his track at the most. */
static double marks_off(const struct frame *frame, const struct segment *segment,
                        const struct scene *scene, body who)
{
    double most = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        struct vec2 at = item->at;
        if (item->who != who || item->casing ||
            (item->class != CLASS_PLAYER && item->class != CLASS_END)) {
            continue;
        }
        if (item->shape == ITEM_TEXT) {
            at.y -= 0.5 * METRICS_CAP_HEIGHT * item->size;
        }
        most = real_max(most, track_distance(segment, who, frame_back(frame, at)));
    }
    return most;
}

/* The farthest that a line's ink is off the track, metres. */
static double line_off(struct arena *memory, const struct frame *frame,
                       const struct segment *segment, const struct scene_item *item)
{
    double most = 0;
    for (size_t i = 0; i < item->count;) {
        points_list points = {0};
        i = item_ink(memory, item, i, 0.3, &points);
        for (size_t p = 0; p < points.count; p++) {
            struct vec2 at = frame_back(frame, points.at[p]);
            most = real_max(most, track_distance(segment, item->who, at));
        }
    }
    return most;
}

/* Does a run pass the basket so near that its line goes round it, or come back along itself, which
 * is opened to a V? Those are pushed apart on purpose. */
static bool is_pushed(const struct segment *segment, body who)
{
    const struct court *court = segment->play->court;
    struct vec2 far = vec2_of(0, 2 * court->half_court), start = segment_at(segment, who, 0);
    double reach = 0, end = segment->duration;
    for (double t = 0; t <= end; t += RUN_SAMPLE) {
        struct vec2 at = segment_at(segment, who, t);
        double basket = real_min(vec2_length(at), vec2_distance(at, far));
        if (basket < BY_BASKET) {
            return true;
        }
        reach = real_max(reach, vec2_distance(start, at));
    }
    return vec2_distance(start, segment_at(segment, who, end)) < BACK * reach;
}

static enum cause cause_of(const struct segment *segment, const struct scene_item *item)
{
    const struct task *task = segment_task(segment, (size_t)item->task);
    for (size_t i = 0; i < segment->tasks; i++) { /* his line may have begun with one */
        const struct task *other = segment_task(segment, i);
        bool plants =
            other->shape == SHAPE_V || other->shape == SHAPE_L || other->shape == SHAPE_SETUP;
        if (other->who == item->who && plants) {
            return PLANTS;
        }
    }
    if (task->kind == TASK_SCREEN) {
        return SCREENERS;
    }
    return is_pushed(segment, item->who) ? ROUND : RUNS;
}

static void measure(struct arena *memory, const struct diagram *diagram, body only,
                    const char *name, struct tally *tallies)
{
    struct scene_options options = {.accent = BODY_NONE, .hide_defense = only != BODY_NONE};
    struct diagram drawn = *diagram;
    struct segment alone = *diagram->segment;
    for (int b = 0; b < BODY_COUNT && only != BODY_NONE; b++) {
        alone.track[b].on_floor = b == only;
    }
    drawn.segment = &alone;
    const struct scene *scene = scene_make(memory, &drawn, &options);
    struct frame frame = frame_of(memory, &drawn, &options);
    struct sizes size = sizes_of(frame.k);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (!is_movement(item, &size) || item->task < 0) {
            continue;
        }
        double wave = item->class == CLASS_DRIBBLE ? size.wave_half / size.k * FEET : 0;
        double off = line_off(memory, &frame, &alone, item) - wave -
                     marks_off(&frame, &alone, scene, item->who);
        off = real_max(0, off);
        struct tally *tally = &tallies[only == BODY_NONE ? TOGETHER : cause_of(&alone, item)];
        tally->lines++;
        tally->over += off > NEAR;
        tally->sum += off;
        if (off > tally->most) {
            tally->most = off;
            snprintf(tally->where, sizeof tally->where, "%s step %.*s of %d", name,
                     STR_ARG(diagram->label), (int)item->who);
        }
    }
}

static void measure_play(struct arena *memory, struct resolved *resolved, size_t index,
                         const char *name, struct tally tally[CAUSES])
{
    const struct play *play = &resolved->book->plays.at[index];
    struct run *run = sim_run(memory, &resolved->sources, play, &resolved->diags);
    char called[64];
    snprintf(called, sizeof called, "%s %.*s", name, STR_ARG(play->name));
    diagram_list diagrams = {0};
    scene_diagrams(memory, run, &diagrams);
    for (size_t i = 0; i < diagrams.count; i++) {
        for (int b = 0; b < BODY_COUNT; b++) {
            if (body_is_attacker((body)b) && diagrams.at[i].segment->track[b].on_floor) {
                measure(memory, &diagrams.at[i], (body)b, called, tally);
            }
        }
        measure(memory, &diagrams.at[i], BODY_NONE, called, tally);
    }
}

static void measure_text(struct str text, const char *name, struct tally tally[CAUSES])
{
    struct arena memory;
    arena_init(&memory, NULL, NULL);
    struct resolved resolved;
    resolve_text(&memory, &resolved, str_of(name), text);
    for (size_t i = 0; i < resolved.book->plays.count; i++) {
        measure_play(&memory, &resolved, i, name, tally);
    }
    arena_finish(&memory);
}

int main(int argc, char **argv)
{
    unsigned long long count = argc > 1 ? strtoull(argv[1], NULL, 10) : 100;
    static struct tally tally[CAUSES];
    for (int i = 2; i < argc; i++) {
        struct arena memory;
        arena_init(&memory, NULL, NULL);
        struct str text;
        if (!whole_file(&memory, argv[i], &text)) {
            printf("Bail out! %s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        measure_text(text, "example", tally);
        arena_finish(&memory);
    }
    for (unsigned long long seed = 1; seed <= count; seed++) {
        struct arena memory;
        struct strbuf text;
        arena_init(&memory, NULL, NULL);
        strbuf_init(&text, &memory);
        generate_play(&text, seed);
        measure_text(strbuf_str(&text), "generated", tally);
        arena_finish(&memory);
    }
    for (int i = 0; i < CAUSES; i++) {
        printf(
            "# %s: %ld lines, %ld further than 15 cm from the run, mean %.3f m, most %.2f m: %s\n",
            words[i], tally[i].lines, tally[i].over,
            tally[i].sum / (double)(tally[i].lines ? tally[i].lines : 1), tally[i].most,
            tally[i].where);
    }
    long lines = tally[RUNS].lines + tally[ROUND].lines,
         over = tally[RUNS].over + tally[ROUND].over;
    bool reached = lines > 0 && tally[RUNS].over == 0, failed = lines == 0 || 4 * over > lines;
    printf("1..2\n%sok 1 - drawn alone, three runs in four are within 15 cm of their track\n",
           failed ? "not " : "");
    printf("%sok 2 - drawn alone, every run is that is not pushed apart on purpose%s\n",
           reached ? "" : "not ", reached ? "" : " # TODO not reached");
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
