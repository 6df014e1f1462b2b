/* SPDX-License-Identifier: MIT */
/* trials: a step run many times, each time by players a little faster or slower, quicker or later
 * than the level says: how often it comes off, and what in it is tight. The same numbers every time
 * and on every machine. */
#ifndef JUDGE_TRIALS_TRIALS_H
#define JUDGE_TRIALS_TRIALS_H

#include "floor/sim/sim.h"
#include "judge/check/check.h"

enum { TRIALS = 100 };
#define TRIAL_FREE 9.0 /* s: nothing hangs on that task, or nothing near */

/* Whose level everybody has in one of them. The draws hang on the step, the branch and the trial
 * alone: every play is tried by the same hundred teams, whatever it is called and wherever it
 * stands, and its mirror by the same too. */
void trial_levels(const struct level *level, int step, int branch, int number,
                  struct level drawn[BODY_COUNT]);

enum trial_trouble {
    TRIAL_WORKS,
    TRIAL_STUCK,  /* the step does not come to its end */
    TRIAL_MISSED, /* a pass or hand-off is not caught */
    TRIAL_UNUSED, /* a screen is not used, or not set */
    TRIAL_FOUND /* a check of passes and screens finds something: the same as in the play itself */
};
struct trial {                     /* what came of one */
    enum trial_trouble trouble;    /* the first, in the order of the clock */
    int task;                      /* of that; -1 */
    const struct check_row *check; /* FOUND: which, */
    body by;                       /* who else has part in it, */
    struct str help;               /* and what it advises, in the arena of the trial */
    double *spare;                 /* s by task: later by so much, and it would not have come off */
};
/* Whether there is anything in a segment that can be late: a pass, a hand-off, a screen in use. */
bool trial_has_timing(const struct segment *segment);
/* Runs it; `trial->spare` has room for the segment's tasks. The segment is only read: many may be
 * tried at once, each with its own arena. */
void trial_run(struct arena *arena, const struct segment *segment, int number, struct trial *trial);

struct tolerance {
    int runs, works;
    int tightest; /* the task with the least time to spare in the middle run; -1: none is tight */
    double spare; /* s of that */
    enum trial_trouble trouble; /* what went wrong most often, */
    const struct check_row *check;
    int task, times; /* with which task (-1: the whole step), how often; */
    body by;         /* by whom most of these times, */
    int example;     /* and a trial in which it was so; -1 */
};
struct tolerance tolerance_of(struct arena *arena, const struct segment *segment,
                              const struct trial *trials, int count);

#endif
