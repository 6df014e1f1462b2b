/* SPDX-License-Identifier: MIT */
/* tick: what one tick of the clock costs, over the example plays and over generated ones, beside a
 * loop that only moves ten points. Nothing here passes or fails; figures are of one core.
 *   tick EXAMPLES... */
#include <stdio.h>
#include <stdlib.h>

#include "floor/sim/sim.h"
#include "generate.h"
#include "resolved.h"
#include "spent.h"
#include "whole_file.h"

enum { GENERATED = 200, ROUNDS = 5, LOOP = 2000000, POINTS = 10 };

struct set { /* plays, resolved, and what running them came to */
    const char *name;
    struct resolved *text;
    size_t texts, plays;
    double ticks, seconds, least, bytes;
};

static void run_all(struct set *set)
{
    double spent = 0, ticks = 0, seconds = 0, bytes = 0;
    size_t plays = 0;
    for (size_t i = 0; i < set->texts; i++) {
        struct resolved *text = &set->text[i];
        for (size_t k = 0; k < text->book->plays.count; k++) {
            struct arena memory;
            struct diags diags;
            arena_init(&memory, NULL, NULL);
            diags_init(&diags, &memory);
            double begin = now();
            struct run *run = sim_run(&memory, &text->sources, &text->book->plays.at[k], &diags);
            spent += now() - begin;
            for (size_t s = 0; s < run->segments.count; s++) {
                seconds += run->segments.at[s]->duration;
                ticks += run->segments.at[s]->duration * SIM_RATE;
            }
            bytes += (double)memory.taken;
            arena_finish(&memory);
            plays++;
        }
    }
    set->least = set->least == 0 || spent < set->least ? spent : set->least;
    set->ticks = ticks;
    set->seconds = seconds;
    set->bytes = bytes;
    set->plays = plays;
}

/* The least that ten points on the floor can cost: a place and a velocity, toward a point. */
static double bare_loop(void)
{
    static struct vec2 at[POINTS], v[POINTS];
    double begin = now();
    volatile double pull = .01; /* not known beforehand */
    for (int i = 0; i < LOOP; i++) {
        for (int b = 0; b < POINTS; b++) {
            v[b].x += (b - at[b].x) * pull;
            v[b].y += (1 - at[b].y) * pull;
            at[b].x += v[b].x / SIM_RATE;
            at[b].y += v[b].y / SIM_RATE;
        }
    }
    return (now() - begin) / LOOP * 1e9;
}

static void report(const struct set *set, double bare)
{
    double tick = set->least / set->ticks * 1e9;
    printf("%-20s %3d plays %6.0f s of play: %5.0f ns a tick, %4.1f x ten bare points (%.1f ns), "
           "%5.0f x real time, %5.1f kB a second of play\n",
           set->name, (int)set->plays, set->seconds, tick, tick / bare, bare,
           set->seconds / set->least, set->bytes / set->seconds / 1000);
}

int main(int argc, char **argv)
{
    struct arena memory;
    arena_init(&memory, NULL, NULL);
    struct set examples = {.name = "example plays"}, made = {.name = "generated plays"};
    examples.text = arena_array(&memory, struct resolved, (size_t)argc);
    for (int i = 1; i < argc; i++) {
        resolve_text(&memory, &examples.text[examples.texts++], str_of(argv[i]),
                     whole_file_or_said(&memory, argv[i]));
    }
    made.text = arena_array(&memory, struct resolved, GENERATED);
    for (uint64_t seed = 1; seed <= GENERATED; seed++) {
        struct strbuf text;
        strbuf_init(&text, &memory);
        generate_play(&text, seed);
        resolve_text(&memory, &made.text[made.texts++], STR("generated"), strbuf_str(&text));
    }
    double bare = bare_loop();
    for (int round = 0; round < ROUNDS; round++) {
        run_all(&examples);
        run_all(&made);
        double again = bare_loop();
        bare = again < bare ? again : bare;
    }
    report(&examples, bare);
    report(&made, bare);
    arena_finish(&memory);
    return EXIT_SUCCESS;
}
