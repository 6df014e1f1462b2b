/* SPDX-License-Identifier: MIT */
/* coach: the coach's own sheets. */
#include "program/cli/one_sheet.h"

static int write_coach(const struct request *request, struct input *input, struct picked *picked)
{
    return sheet_of_plays(request, input, picked, "coach", "coach");
}

static int run(const struct request *request)
{
    return sheet_run(request, write_coach);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    ROW_PLAY,
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
    "  courtwright coach book.play --play Lantern -o lantern-coach.pdf\n",
    1,
    1,
    run};
