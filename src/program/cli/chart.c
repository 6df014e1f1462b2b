/* SPDX-License-Identifier: MIT */
/* chart: tally sheets, to be filled in by hand. */
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

/* Which plays have nothing to count, what became of them, and what to write. */
static void tell_uncounted(const struct request *request, const struct courtwright *book,
                           const struct picked *picked)
{
    size_t counted = 0, told = 0;
    for (size_t i = 0; i < picked->count; i++) {
        counted += courtwright_play(book, picked->plays[i])->counted;
    }
    if (counted == picked->count) {
        return;
    }
    say(request->command, counted > 0 ? "left out, with nothing to chart in them:"
                                      : "with nothing to chart, on empty lines to write on:");
    for (size_t i = 0; i < picked->count; i++) {
        const struct courtwright_play *play = courtwright_play(book, picked->plays[i]);
        if (!play->counted) {
            fprintf(stderr, "%s%s", told++ ? ", " : "  ", play->name);
        }
    }
    fputs("\n  help: write under the step: chart set \"Screen set on the defender\"\n", stderr);
}

int write_tally(const struct request *request, struct input *input, struct picked *picked)
{
    int status = sheet_of_plays(request, input, picked, "chart", "tally");
    if (status == STATUS_FINE) {
        tell_uncounted(request, input->book, picked);
    }
    return status;
}

static int run(const struct request *request)
{
    return sheet_run(request, write_tally);
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

const struct command command_chart = {
    "chart",
    "FILE",
    "write sheets to tally what you see, as PDF",
    options,
    "  courtwright chart book.play --play Lantern -o lantern-tally.pdf\n",
    1,
    1,
    run};
