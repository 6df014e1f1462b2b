/* SPDX-License-Identifier: MIT */
/* fill_in: sheets with lines taken away, for players to draw. */
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

int write_fill_in(const struct request *request, struct input *input, struct picked *picked)
{
    return sheet_of_plays(request, input, picked, "fill-in", "fill-in");
}

static int run(const struct request *request)
{
    if (request->seed != (unsigned)request->seed) {
        return wrong_use(request, "--seed takes a whole number");
    }
    return sheet_run(request, write_fill_in);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    ROW_PLAY,
    {"seed", 0, OPTION_NUMBER, FIELD(seed), "N",
     "which lines are missing: another number asks for others (0)", 0, 1e9},
    ROW_PAPER,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_fill_in = {
    "fill-in",
    "FILE",
    "write steps with lines missing, for players to draw, as PDF",
    options,
    "  courtwright fill-in book.play --play Lantern --seed 2\n",
    1,
    1,
    run};
