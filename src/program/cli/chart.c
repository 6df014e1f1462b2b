/* SPDX-License-Identifier: MIT */
/* chart: tally sheets, to be filled in by hand. */
#include <stdlib.h>

#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

static int write_named(const struct request *request, struct input *input,
                       const struct picked *picked)
{
    const char *book = courtwright_title(input->book);
    bool one = picked->count == 1 || !*book;
    struct courtwright_handout options = sheet_options(request);
    options.plays = picked->plays;
    options.play_count = picked->count;
    char *name =
        format_text("%s tally", one ? courtwright_play(input->book, picked->plays[0])->name : book);
    int status = one_sheet(request, input, "chart", &options, name);
    free(name);
    return status;
}

static int write_tally(const struct request *request, struct input *input, struct picked *picked)
{
    int status = sheet_pick(request, input, picked);
    if (status != STATUS_FINE) {
        return status;
    }
    return write_named(request, input, picked);
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
