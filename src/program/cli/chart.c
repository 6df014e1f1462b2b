/* SPDX-License-Identifier: MIT */
/* chart: tally sheets, to be filled in by hand. */
#include "program/cli/one_sheet.h"

static int write_tally(const struct request *request, struct input *input, struct picked *picked)
{
    return sheet_of_plays(request, input, picked, "chart", "tally");
}

static int run(const struct request *request)
{
    return sheet_run(request, write_tally);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"), ROW_PLAY, ROW_PAPER, ROW_STRICT, ROW_DEPS, OPTIONS_END,
};

const struct command command_chart = {
    "chart",
    "FILE",
    "write sheets to tally what you see, as PDF",
    options,
    "  courtwright chart book.play --play Lantern -o lantern-tally.pdf\n",
    1,
    1,
    run};
