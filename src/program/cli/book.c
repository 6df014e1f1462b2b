/* SPDX-License-Identifier: MIT */
/* book: the whole playbook as one file. */
#include <stdlib.h>

#include "program/cli/crest_try.h"
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

static bool read_crest(const struct request *request, struct input *input, struct bytes *crest)
{
    if (!input_read_beside(input, request, request->crest, crest)) {
        return false;
    }
    const char *trouble = crest_try(crest->at, crest->size);
    if (trouble) {
        say(request->command, "nothing was written: the crest %s %s", shown(request->crest),
            trouble);
    }
    return !trouble;
}

/* What is about paper has no place in a page for screens. */
static bool page_options_good(const struct request *request)
{
    if (request->per_page == 0 && !request->two_sided && !request->crest && !request->paper) {
        return true;
    }
    wrong_use(request, "--per-page, --two-sided, --crest and --paper are for a PDF, not for HTML");
    return false;
}

/* The name of the one play that is asked for, which is not to be taken for the whole book; or NULL.
 */
static const char *part_name(const struct request *request, const struct input *input,
                             const struct picked *picked)
{
    return request->play && picked->count == 1
               ? courtwright_play(input->book, picked->plays[0])->name
               : NULL;
}

static int write_page(const struct request *request, struct input *input,
                      const struct picked *picked)
{
    struct courtwright_web web = {picked->plays, picked->count, request->names, request->date};
    const char *title = courtwright_title(input->book), *part = part_name(request, input, picked);
    return one_page(request, input, &web, part ? part : *title ? title : "playbook");
}

static int write_named(const struct request *request, struct input *input,
                       const struct picked *picked, const struct bytes *crest)
{
    struct courtwright_handout options = sheet_options(request);
    options.plays = picked->plays;
    options.play_count = picked->count;
    options.per_page = (int)request->per_page;
    options.two_sided = request->two_sided;
    options.crest = crest->at;
    options.crest_size = crest->size;
    const char *title = courtwright_title(input->book), *part = part_name(request, input, picked);
    char *name = part     ? format_text("%s book", part)
                 : *title ? format_text("%s book", title)
                          : format_text("playbook");
    int status = one_sheet(request, input, "book", &options, name);
    free(name);
    return status;
}

int write_book(const struct request *request, struct input *input, struct picked *picked)
{
    int status = sheet_pick(request, input, picked);
    if (status != STATUS_FINE) {
        return status;
    }
    if (page_wanted(request)) { /* practices stand in a page of all plays */
        status = request->play ? STATUS_FINE : sheet_part(request, input, COURTWRIGHT_PRACTICES);
        return status == STATUS_FINE ? write_page(request, input, picked) : status;
    }
    struct bytes crest = {NULL, 0};
    if (request->crest && !read_crest(request, input, &crest)) {
        status = STATUS_FILE;
    } else {
        status = write_named(request, input, picked, &crest);
    }
    free(crest.at);
    return status;
}

static int run(const struct request *request)
{
    if (!per_page_good(request) || (page_wanted(request) && !page_options_good(request))) {
        return STATUS_USE;
    }
    return sheet_run(request, write_book);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -; one that ends in .html is a page for phones"),
    ROW_PLAY,
    {"per-page", 0, OPTION_NUMBER, FIELD(per_page), "N",
     "diagrams a page: 1, 2, 4, 6 or 9; else as they fit best", 1, 9},
    {"two-sided", 0, OPTION_FLAG, FIELD(two_sided), NULL,
     "for binding: left and right pages lean to the outside", 0, 0},
    {"crest", 0, OPTION_TEXT, FIELD(crest), "FILE", "the team's picture for the cover: SVG or PNG",
     0, 0},
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
    "write the whole playbook as PDF, or as one HTML file for phones",
    options,
    "  courtwright book kites.play --two-sided --crest kites.svg -o kites.pdf\n"
    "  courtwright book kites.play -o kites.html\n",
    1,
    1,
    run};
