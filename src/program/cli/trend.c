/* SPDX-License-Identifier: MIT */
/* trend: what was charted, by date, as pages for the coach. */
#include <stdlib.h>

#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

static int write_named(const struct request *request, struct input *input, const char *play)
{
    const char *book = courtwright_title(input->book);
    struct courtwright_handout options = sheet_options(request);
    options.title = play;
    char *name = format_text("%s trend", play ? play : *book ? book : "");
    int status = one_sheet(request, input, "trend", &options, name);
    free(name);
    return status;
}

int write_trend(const struct request *request, struct input *input, struct picked *picked)
{
    if (request->play && !pick_plays(picked, request, input->book)) {
        return STATUS_USE;
    }
    int status = sheet_part(request, input, COURTWRIGHT_CHARTED);
    if (status != STATUS_FINE) {
        return status;
    }
    const char *play =
        picked->count > 0 ? courtwright_play(input->book, picked->plays[0])->name : request->play;
    if (!courtwright_is_charted(input->book, play)) {
        const char *of = play ? " of " : "", *name = play ? shown(play) : "";
        if (courtwright_error_count(input->book) > 0) {
            say(request->command,
                "nothing was written: nothing charted%s%s can be read; mend the errors first", of,
                name);
        } else {
            say(request->command,
                "nothing was written: nothing is charted%s%s; a block of it begins with charted "
                "2026-12-01 game",
                of, name);
        }
        return STATUS_TEXT;
    }
    return write_named(request, input, play);
}

static int run(const struct request *request)
{
    return sheet_run(request, write_trend);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    ROW_PLAY,
    ROW_PAPER,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_trend = {
    "trend",
    "FILE",
    "write what was charted by date, as PDF",
    options,
    "  courtwright trend book.play --play Lantern -o lantern-trend.pdf\n",
    1,
    1,
    run};
