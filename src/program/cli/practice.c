/* SPDX-License-Identifier: MIT */
/* practice: practice plans as pages. */
#include <stdlib.h>
#include <strings.h>

#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

/* The title as the book has it; NULL, and said, when there is none of that name. */
static const char *find_title(const struct request *request, const struct courtwright *book)
{
    size_t count = courtwright_practice_count(book);
    for (size_t i = 0; i < count; i++) {
        if (strcasecmp(courtwright_practice(book, i), request->title) == 0) {
            return courtwright_practice(book, i);
        }
    }
    wrong_use(request, "there is no practice '%s' in this file", shown(request->title));
    return NULL;
}

static int write_named(const struct request *request, struct input *input, const char *title)
{
    const char *book = courtwright_title(input->book);
    bool one = title || courtwright_practice_count(input->book) == 1;
    char *all = format_text("%s practices", *book ? book : "");
    struct courtwright_handout options = sheet_options(request);
    options.title = title;
    int status = one_sheet(request, input, "practice", &options,
                           title ? title
                           : one ? courtwright_practice(input->book, 0)
                                 : all);
    free(all);
    return status;
}

int write_practices(const struct request *request, struct input *input, struct picked *picked)
{
    (void)picked; /* a plan is picked by its title */
    if (courtwright_practice_count(input->book) == 0) {
        say(request->command,
            courtwright_error_count(input->book) > 0
                ? "nothing was written: no practice can be read in it; mend the errors first"
                : "nothing was written: there is no practice in it; one begins with practice "
                  "\"Week 3, Tuesday\"");
        return STATUS_TEXT;
    }
    int status = sheet_part(request, input, COURTWRIGHT_PRACTICES);
    if (status != STATUS_FINE) {
        return status;
    }
    const char *title = request->title ? find_title(request, input->book) : NULL;
    if (request->title && !title) {
        return STATUS_USE;
    }
    return write_named(request, input, title);
}

static int run(const struct request *request)
{
    return sheet_run(request, write_practices);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    {"title", 't', OPTION_TEXT, FIELD(title), "NAME", "only this practice", 0, 0},
    ROW_PAPER,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_practice = {
    "practice",
    "FILE",
    "write practice plans, as PDF",
    options,
    "  courtwright practice book.play --title \"Week 3, Tuesday\" -o tuesday.pdf\n",
    1,
    1,
    run};
