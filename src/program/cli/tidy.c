/* SPDX-License-Identifier: MIT */
/* tidy: the one written form. The only command that writes over what it read, and only when told.
 */
#include <stdlib.h>
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/say.h"

static bool keep(void *ctx, const char *bytes, size_t size)
{
    struct bytes *kept = ctx;
    kept->at = must(realloc(kept->at, kept->size + size));
    memcpy(kept->at + kept->size, bytes, size);
    kept->size += size;
    return true;
}

static int put(const struct request *request, struct input *input, const struct bytes *tidied)
{
    const char *path = request->write ? input->path : request->output ? request->output : "-";
    struct output output;
    bool same = tidied->size == input->text.size &&
                (tidied->size == 0 || memcmp(tidied->at, input->text.at, tidied->size) == 0);
    if (request->write && same) {
        return STATUS_FINE;
    }
    if (!output_open(&output, input, request->command, path, request->write)) {
        return STATUS_FILE;
    }
    if (tidied->size > 0) {
        output.writer.write(&output, tidied->at, tidied->size);
    }
    if (!output_finish(&output)) {
        return STATUS_FILE;
    }
    if (strcmp(path, "-") != 0) {
        printf("%s\n", path);
    }
    return STATUS_FINE;
}

static int compare(const struct request *request, const struct input *input,
                   const struct bytes *tidied)
{
    if (tidied->size == input->text.size &&
        (tidied->size == 0 || memcmp(tidied->at, input->text.at, tidied->size) == 0)) {
        return STATUS_FINE;
    }
    say(request->command, "%s is not in its tidy form", shown(input->path));
    return STATUS_TEXT;
}

static int tidy(const struct request *request, struct input *input)
{
    struct telling telling = {.only = "error"};
    struct bytes tidied = {NULL, 0};
    struct courtwright_writer writer = {keep, &tidied};
    int said = tell(request, input->book, &telling);
    enum courtwright_status done =
        said == STATUS_FILE ? COURTWRIGHT_MEMORY : courtwright_tidy(input->book, &writer);
    int status;
    if (done != COURTWRIGHT_OK) {
        say(request->command, "%s: %s", shown(input->path), courtwright_status_text(done));
        status = done == COURTWRIGHT_BROKEN ? STATUS_TEXT : STATUS_FILE;
    } else if (request->check) {
        status = compare(request, input, &tidied);
    } else if (request->write && said) {
        say(request->command, "%s was left as it is: mend the errors first", shown(input->path));
        status = said;
    } else {
        status = put(request, input, &tidied);
    }
    free(tidied.at);
    return status ? status : said;
}

static int run(const struct request *request)
{
    struct input input;
    if (request->write &&
        (request->output || request->check || strcmp(request->words[0], "-") == 0)) {
        return wrong_use(request, "--write goes with a file, and without -o or --check");
    }
    int status = input_load(&input, request, 0) ? tidy(request, &input) : STATUS_FILE;
    input_free(&input);
    return status;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file; else standard output"),
    {"write", 0, OPTION_FLAG, FIELD(write), NULL, "write it over what was read", 0, 0},
    {"check", 0, OPTION_FLAG, FIELD(check), NULL, "write nothing: status 1 when it is not tidy", 0,
     0},
    {"upgrade", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    OPTIONS_END,
};

const struct command command_tidy = {"tidy",
                                     "FILE",
                                     "bring a playbook into its one written form",
                                     options,
                                     "  courtwright tidy --write book.play\n",
                                     1,
                                     1,
                                     run};
