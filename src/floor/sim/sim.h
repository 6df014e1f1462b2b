/* SPDX-License-Identifier: MIT */
/* sim: the one clock. Ten players, the ball and contact advance together, tick by tick; a screener
 * finds the defender where he is, a defender reacts to what was seen. Pure: the same play gives
 * the same run. */
#ifndef FLOOR_SIM_SIM_H
#define FLOOR_SIM_SIM_H

#include "floor/sim/run.h"

/* Runs every step and branch. What cannot happen (a circle of waits, a wait past its limit) is
 * reported with the sentences it is about; that segment has ran == false and holds what was run.
 * The steps behind it are run on from where everybody then is, but nothing more is said of them. */
struct run *sim_run(struct arena *arena, const struct sources *sources, const struct play *play,
                    struct diags *diags);

/* The segment once more, from where it began, by bodies of these levels (BODY_COUNT of them), who
 * are the play's again in none of it. Nothing is said of what goes wrong: `ran` tells it. Only
 * `arena` is written to: segments of one run may be run again by many threads at once, each with an
 * arena of its own. */
const struct segment *sim_again(struct arena *arena, const struct segment *segment,
                                const struct level *levels);

/* Moments lie inside ticks: what happens there is found there, and the rest of the tick is run from
 * it. For tests and the bench: another tick, and somebody who looks at every one of them. */
enum { SIM_RATE = 120, SIM_RATE_PART = 40 };
struct sim_tick { /* how everybody stands at the end of one */
    int step, branch;
    double t; /* s of the segment */
    bool here[BODY_COUNT];
    struct vec2 at[BODY_COUNT], v[BODY_COUNT];
};
struct world;
struct sim_options {
    int rate; /* ticks a second: a multiple of SIM_RATE_PART; sim_run has SIM_RATE */
    void (*watch)(void *watcher, const struct sim_tick *tick); /* or NULL */
    /* Or NULL; the world itself (floor/sim/world.h), `met` false when the legs have moved
     * everybody (from agent.before, for agent.ran seconds) and bodies have not yet met: once a
     * tick, or more often when something happens inside it; true at the end of every tick. Changes
     * nothing.
     */
    void (*inside)(void *watcher, const struct world *world, bool met);
    void *watcher;
};
struct run *sim_run_with(struct arena *arena, const struct sources *sources,
                         const struct play *play, struct diags *diags,
                         const struct sim_options *options);

#endif
