/* SPDX-License-Identifier: MIT */
/* book: the whole playbook as one file. */
#include "program/cli/one_sheet.h"

static int write_book(const struct request *request, struct input *input, struct picked *picked)
{
    int status = sheet_pick(request, input, picked);
    if (status != STATUS_FINE) {
        return status;
    }
    struct courtwright_handout options = sheet_options(request);
    options.plays = picked->plays;
    options.play_count = picked->count;
    options.per_page = (int)request->per_page;
    options.two_sided = request->two_sided;
    const char *title = courtwright_title(input->book);
    return one_sheet(request, input, "book", &options, *title ? title : "playbook");
}

static int run(const struct request *request)
{
    if (!per_page_good(request)) {
        return STATUS_USE;
    }
    return sheet_run(request, write_book);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    {"per-page", 0, OPTION_NUMBER, FIELD(per_page), "N",
     "diagrams a page: 1, 2, 4, 6 or 9; else as they fit best", 1, 9},
    {"two-sided", 0, OPTION_FLAG, FIELD(two_sided), NULL,
     "for binding: left and right pages lean to the outside", 0, 0},
    ROW_PAPER,
    ROW_NAMES,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_book = {
    "book",
    "FILE",
    "write the whole playbook: cover, contents, plays, index, as PDF",
    options,
    "  courtwright book kites.play --two-sided -o kites.pdf\n",
    1,
    1,
    run};
