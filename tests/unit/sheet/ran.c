/* SPDX-License-Identifier: MIT */
#include "ran.h"

#include "floor/sim/sim.h"
#include "language/tell/tell.h"
#include "suite.h"
#include "written.h"

struct resolved resolved;
struct run *run;
diagram_list diagrams;

const struct play *run_text(const char *text)
{
    resolve_text(&arena, &resolved, STR("lantern"), str_of(text));
    ck_assert_uint_eq(resolved.diags.errors, 0);
    return run_play(&resolved.book->plays.at[0]);
}

const struct play *run_play(const struct play *play)
{
    run = sim_run(&arena, &resolved.sources, play, &resolved.diags);
    diagrams = (diagram_list){0};
    scene_diagrams(&arena, run, &diagrams);
    return play;
}

const char *plain(struct str text)
{
    return text_of(tell_strip(&arena, text));
}
