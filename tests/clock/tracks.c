/* SPDX-License-Identifier: MIT */
/* tracks: what a run keeps of a movement, samples and the curve between them, against where
 * everybody was at every tick: within 1 cm at 99.9 % of them. Prints the rest.
 *   tracks [-g PLAYS] FILE... */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "floor/sim/sim.h"
#include "plays.h"
#include "table.h"

#define OFF_MM 10.0
#define SHARE .999

struct ticks {
    struct sim_tick *at;
    size_t count, room;
};

static void keep(void *watcher, const struct sim_tick *tick)
{
    struct ticks *ticks = watcher;
    if (ticks->count == ticks->room) {
        ticks->room = ticks->room * 2 + 4096;
        ticks->at = realloc(ticks->at, ticks->room * sizeof *ticks->at);
        if (!ticks->at) {
            abort();
        }
    }
    ticks->at[ticks->count++] = *tick;
}

struct tally {
    struct numbers off, fast; /* mm, mm/s: one a body and tick */
    size_t over;
    double worst;
    char where[96];
};

static const struct segment *segment_of(const struct run *run, const struct sim_tick *tick)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        if (segment->step == tick->step && segment->branch == tick->branch) {
            return segment;
        }
    }
    return NULL;
}

static void measure(struct tally *tally, const struct segment *segment, const struct sim_tick *tick)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        if (!tick->here[b] || tick->t > segment->duration + 1e-9) {
            continue;
        }
        struct vec2 at = segment_at(segment, (body)b, tick->t);
        struct vec2 v = segment_velocity(segment, (body)b, tick->t);
        double off = 1000 * vec2_distance(at, tick->at[b]);
        numbers_add(&tally->off, off);
        numbers_add(&tally->fast, 1000 * vec2_distance(v, tick->v[b]));
        tally->over += off > OFF_MM;
        if (off > tally->worst) {
            tally->worst = off;
            snprintf(tally->where, sizeof tally->where, "%.*s, step %d, %.3f s, body %d",
                     STR_ARG(segment->play->name), segment->step + 1, tick->t, b);
        }
    }
}

static void one_play(void *ctx, struct arena *arena, const struct sources *sources,
                     const struct play *play)
{
    struct tally *tally = ctx;
    struct ticks ticks = {0};
    struct diags diags;
    diags_init(&diags, arena);
    struct sim_options options = {.rate = SIM_RATE, .watch = keep, .watcher = &ticks};
    const struct run *run = sim_run_with(arena, sources, play, &diags, &options);
    for (size_t i = 0; i < ticks.count; i++) {
        const struct segment *segment = segment_of(run, &ticks.at[i]);
        if (segment) {
            measure(tally, segment, &ticks.at[i]);
        }
    }
    free(ticks.at);
}

int main(int argc, char **argv)
{
    static struct tally tally;
    plays_each(argc, argv, one_play, &tally);
    double off = numbers_share(&tally.off, SHARE);
    printf("# %zu bodies at ticks; median, 90 %%, most\n", tally.off.count);
    numbers_print("off the true place, mm", &tally.off);
    numbers_print("off the true velocity, mm/s", &tally.fast);
    printf("# %zu over %.0f mm (%.4f %%); the worst %.1f mm: %s\n", tally.over, OFF_MM,
           100.0 * (double)tally.over / (double)(tally.off.count + !tally.off.count), tally.worst,
           tally.where);
    printf("1..1\n%sok 1 - 99.9 %% of the tracks are within %.0f mm: %.2f\n",
           tally.off.count && off <= OFF_MM ? "" : "not ", OFF_MM, off);
    return tally.off.count && off <= OFF_MM ? EXIT_SUCCESS : EXIT_FAILURE;
}
