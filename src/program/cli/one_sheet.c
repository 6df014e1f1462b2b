/* SPDX-License-Identifier: MIT */
/* one_sheet: see one_sheet.h. */
#include "program/cli/one_sheet.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "program/cli/say.h"

static int not_written(const struct request *request, const char *why)
{
    say(request->command, "nothing was written: %s", why);
    return STATUS_TEXT;
}

bool part_good(const struct courtwright *book, enum courtwright_part part)
{
    return courtwright_error_count_in(book, COURTWRIGHT_ROUND) == 0 &&
           courtwright_error_count_in(book, part) == 0;
}

int sheet_part(const struct request *request, const struct input *input, enum courtwright_part part)
{
    return part_good(input->book, part) ? STATUS_FINE
                                        : not_written(request, "mend the errors first");
}

int sheet_pick(const struct request *request, const struct input *input, struct picked *picked)
{
    if (!pick_plays(picked, request, input->book)) {
        return STATUS_USE;
    }
    int status = sheet_part(request, input, COURTWRIGHT_ROUND);
    if (status != STATUS_FINE) {
        return status;
    }
    if (picked->left_out > 0) {
        return not_written(request, picked->count > 0
                                        ? "mend the errors first; --play prints one play alone"
                                        : "mend the errors first");
    }
    return picked->count == 0 ? not_written(request, "there is no play in it") : STATUS_FINE;
}

struct courtwright_handout sheet_options(const struct request *request)
{
    return (struct courtwright_handout){
        .paper = request->paper ? (enum courtwright_paper)request->paper : COURTWRIGHT_BOOK_PAPER,
        .seed = (unsigned)request->seed,
        .names = request->names,
        .tolerance = request->tolerance,
        .date_text = request->date,
        .date = epoch_date(),
    };
}

bool per_page_good(const struct request *request)
{
    static const int sizes[] = {0, 1, 2, 4, 6, 9};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        if (request->per_page == sizes[i]) {
            return true;
        }
    }
    wrong_use(request, "--per-page takes 1, 2, 4, 6 or 9");
    return false;
}

/* What tells of the plays that a sheet leaves out. */
struct leaving_out {
    const struct request *request;
    const struct courtwright *book;
};

static void say_left_out(void *ctx, size_t play)
{
    const struct leaving_out *leaving = ctx;
    say(leaving->request->command, "'%s' is left out: nobody moves or passes in it",
        shown(courtwright_play(leaving->book, play)->name));
}

/* What is written: a sheet, or a page for screens. */
struct wanted {
    const char *sheet;
    const struct courtwright_handout *options;
    const struct courtwright_web *web; /* NULL: a sheet */
};

static enum courtwright_status write_sheet(const struct request *request, struct input *input,
                                           const struct wanted *wanted,
                                           const struct courtwright_writer *writer)
{
    struct leaving_out leaving = {request, input->book};
    struct courtwright_handout told = *wanted->options;
    told.left_out = told.play_count > 1 ? say_left_out : NULL; /* one: nothing is written */
    told.left_out_ctx = &leaving;
    return courtwright_sheet(input->book, wanted->sheet, &told, writer);
}

static int write_wanted(const struct request *request, struct input *input,
                        const struct wanted *wanted, const char *path)
{
    struct output output;
    if (!output_open(&output, input, request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status = wanted->web
                                         ? courtwright_web(input->book, wanted->web, &output.writer)
                                         : write_sheet(request, input, wanted, &output.writer);
    return output_close(&output, status, shown(path), path);
}

static int one_file(const struct request *request, struct input *input, const struct wanted *wanted,
                    const char *name)
{
    struct name_parts parts = {.play = name};
    struct naming naming = {0};
    int status = STATUS_USE;
    if (naming_start(&naming, request, wanted->web ? "{play}.html" : "{play}.pdf", false)) {
        status = write_wanted(request, input, wanted, naming_next(&naming, &parts));
    }
    status = naming_end(&naming, request, input, status);
    tell_missing(request, input->book);
    return status;
}

int one_sheet(const struct request *request, struct input *input, const char *sheet,
              const struct courtwright_handout *options, const char *name)
{
    struct wanted wanted = {sheet, options, NULL};
    return one_file(request, input, &wanted, name);
}

int one_page(const struct request *request, struct input *input, const struct courtwright_web *web,
             const char *name)
{
    struct wanted wanted = {NULL, NULL, web};
    return one_file(request, input, &wanted, name);
}

bool page_wanted(const struct request *request)
{
    const char *ending = request->output ? naming_ending(request->output) : NULL;
    return ending && (strcasecmp(ending, "html") == 0 || strcasecmp(ending, "htm") == 0);
}

static int write_named(const struct request *request, struct input *input,
                       const struct picked *picked, const char *sheet, const char *word)
{
    const char *book = courtwright_title(input->book);
    bool one = picked->count == 1 || !*book;
    struct courtwright_handout options = sheet_options(request);
    options.plays = picked->plays;
    options.play_count = picked->count;
    char *name = format_text(
        "%s %s", one ? courtwright_play(input->book, picked->plays[0])->name : book, word);
    int status = one_sheet(request, input, sheet, &options, name);
    free(name);
    return status;
}

/* A file a play, where -o has the play's name in it. */
static int write_each(const struct request *request, struct input *input,
                      const struct picked *picked, const char *sheet)
{
    struct courtwright_handout options = sheet_options(request);
    struct wanted wanted = {sheet, &options, NULL};
    struct naming naming = {0};
    int status = STATUS_USE;
    if (naming_start(&naming, request, "{play}.pdf", true)) {
        status = STATUS_FINE;
    }
    for (size_t i = 0; i < picked->count && status == STATUS_FINE; i++) {
        struct name_parts parts = {.play = courtwright_play(input->book, picked->plays[i])->name};
        options.plays = &picked->plays[i];
        options.play_count = 1;
        status = write_wanted(request, input, &wanted, naming_next(&naming, &parts));
    }
    status = naming_end(&naming, request, input, status);
    tell_missing(request, input->book);
    return status;
}

int sheet_of_plays(const struct request *request, struct input *input, struct picked *picked,
                   const char *sheet, const char *word)
{
    int status = sheet_pick(request, input, picked);
    bool each = request->output && strstr(request->output, "{play}") && picked->count > 1;
    if (status == STATUS_FINE && each) {
        return write_each(request, input, picked, sheet);
    }
    return status == STATUS_FINE ? write_named(request, input, picked, sheet, word) : status;
}

int sheet_run(const struct request *request, sheet_work *work)
{
    struct input input;
    struct picked picked = {0};
    struct telling telling = {.least = COURTWRIGHT_WARNING};
    int status = STATUS_FILE;
    if (input_load(&input, request, 0)) {
        int said = tell(request, input.book, &telling);
        status = said == STATUS_FILE ? said : work(request, &input, &picked);
        if (status == STATUS_FINE && said) {
            tell_written(request, input.book);
        }
        bool hidden = status == STATUS_FINE || status == STATUS_USE; /* by errors in the text */
        status = hidden && said ? said : status;
    }
    picked_free(&picked);
    input_free(&input);
    return status;
}
