/* SPDX-License-Identifier: MIT */
/* checks: what all checks of the example plays cost, as a share of running them; what they are to
 * cost at most is 20 %. Nothing here passes or fails; figures are of one core.
 *   bench_checks EXAMPLES... */
#include <stdio.h>

#include "floor/sim/sim.h"
#include "judge/check/check.h"
#include "resolved.h"
#include "spent.h"
#include "whole_file.h"

enum { ROUNDS = 7 };

struct spent {
    double running, checking;
    size_t plays, findings;
};

static void time_play(struct resolved *text, size_t index, struct spent *spent)
{
    struct arena memory;
    struct diags diags;
    finding_list findings;
    arena_init(&memory, NULL, NULL);
    diags_init(&diags, &memory);
    double begin = now();
    struct run *run = sim_run(&memory, &text->sources, &text->book->plays.at[index], &diags);
    double ran = now();
    check_run(&memory, run, &findings);
    spent->running += ran - begin;
    spent->checking += now() - ran;
    spent->findings += findings.count;
    spent->plays++;
    arena_finish(&memory);
}

int main(int argc, char **argv)
{
    struct arena memory;
    arena_init(&memory, NULL, NULL);
    struct resolved *texts = arena_array(&memory, struct resolved, (size_t)argc);
    for (int i = 1; i < argc; i++) {
        resolve_text(&memory, &texts[i], str_of(argv[i]), whole_file_or_said(&memory, argv[i]));
    }
    struct spent best = {.running = 1e9, .checking = 1e9};
    for (int round = 0; round < ROUNDS; round++) {
        struct spent spent = {0};
        for (int i = 1; i < argc; i++) {
            for (size_t k = 0; k < texts[i].book->plays.count; k++) {
                time_play(&texts[i], k, &spent);
            }
        }
        best.running = spent.running < best.running ? spent.running : best.running;
        best.checking = spent.checking < best.checking ? spent.checking : best.checking;
        best.plays = spent.plays;
        best.findings = spent.findings;
    }
    printf("%zu plays, %zu checks, %zu findings: running %.1f ms, checking %.1f ms, %.1f %% of it "
           "(at most 20)\n",
           best.plays, check_count(), best.findings, best.running * 1000, best.checking * 1000,
           best.checking / best.running * 100);
    arena_finish(&memory);
    return 0;
}
