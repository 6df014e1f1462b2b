/* SPDX-License-Identifier: MIT */
/* one_sheet: see one_sheet.h. */
#include "program/cli/one_sheet.h"

#include <string.h>

#include "program/cli/naming.h"
#include "program/cli/say.h"

struct courtwright_handout sheet_options(const struct request *request)
{
    return (struct courtwright_handout){
        .paper = request->paper ? (enum courtwright_paper)request->paper : COURTWRIGHT_BOOK_PAPER,
        .names = request->names,
        .date_text = request->date,
        .date = epoch_date(),
    };
}

static int write_pages(const struct request *request, struct input *input, const char *sheet,
                       const struct courtwright_handout *options, const char *path)
{
    struct output output;
    if (!output_open(&output, input, request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status = courtwright_sheet(input->book, sheet, options, &output.writer);
    return output_close(&output, status, shown(path), path);
}

int one_sheet(const struct request *request, struct input *input, const char *sheet,
              const struct courtwright_handout *options, const char *name)
{
    struct name_parts parts = {.play = name};
    struct naming naming = {0};
    int status = STATUS_USE;
    if (naming_start(&naming, request, "{play}.pdf", false)) {
        status = write_pages(request, input, sheet, options, naming_next(&naming, &parts));
    }
    if (status == STATUS_FINE && !write_deps(request, input, naming.used, naming.count)) {
        status = STATUS_FILE;
    }
    tell_missing(request, input->book);
    naming_free(&naming);
    return status;
}

int sheet_run(const struct request *request,
              int (*work)(const struct request *request, struct input *input,
                          struct picked *picked))
{
    struct input input;
    struct picked picked = {0};
    struct telling telling = {.least = COURTWRIGHT_WARNING};
    int status = STATUS_FILE;
    if (input_load(&input, request, 0)) {
        int said = tell(request, input.book, &telling);
        status = said == STATUS_FILE ? said : work(request, &input, &picked);
        bool hidden = status == STATUS_FINE || status == STATUS_USE; /* by errors in the text */
        status = hidden && said ? said : status;
    }
    picked_free(&picked);
    input_free(&input);
    return status;
}
