/* SPDX-License-Identifier: MIT */
/* coach: the coach's own sheets. */
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

int write_coach(const struct request *request, struct input *input, struct picked *picked)
{
    return sheet_of_plays(request, input, picked, "coach", "coach");
}

static int run(const struct request *request)
{
    if (request->jobs > 0 && !request->tolerance) {
        return wrong_use(request, "--jobs is for --tolerance");
    }
    return sheet_run(request, write_coach);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    ROW_PLAY,
    {"tolerance", 0, OPTION_FLAG, FIELD(tolerance), NULL,
     "how often each step works when it is run 100 times by other players (`explain tolerance`)", 0,
     0},
    {"jobs", 'j', OPTION_NUMBER, FIELD(jobs), "N",
     "so many threads for --tolerance (one a processor); the answer stays the same", 1, 64},
    ROW_PAPER,
    ROW_NAMES,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_coach = {
    "coach",
    "FILE",
    "write sheets for the coach: steps, timing, what to check, as PDF",
    options,
    "  courtwright coach book.play --play Lantern --tolerance -o lantern-coach.pdf\n",
    1,
    1,
    run};
