/* SPDX-License-Identifier: MIT */
/* check: errors of the text and findings of the run. */
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/say.h"

struct search {
    size_t size;
    const char *word;
    bool found;
};

static bool look(void *ctx, const struct courtwright_entry *entry)
{
    struct search *search = ctx;
    bool same = strncmp(entry->word, search->word, search->size) == 0 &&
                (entry->word[search->size] == '\0' || entry->word[search->size] == '.');
    search->found = search->found || same;
    return !same;
}

static bool known(const char *only)
{
    struct search search = {strlen(only), only, false};
    bool level =
        strcmp(only, "note") == 0 || strcmp(only, "warning") == 0 || strcmp(only, "error") == 0;
    if (!level) {
        courtwright_list(COURTWRIGHT_CHECKS, NULL, look, &search);
    }
    if (!level && !search.found) {
        courtwright_list(COURTWRIGHT_ERRORS, NULL, look, &search);
    }
    return level || search.found;
}

static int run(const struct request *request)
{
    struct input input;
    if (request->only && !known(request->only)) {
        return wrong_use(request,
                         "--only takes error, warning, note or the name of a check, not '%s'",
                         shown(request->only));
    }
    int status = STATUS_FILE;
    if (input_load(&input, request, 0)) {
        struct telling telling = {.only = request->only, .json = request->json};
        status = tell(request, input.book, &telling);
    }
    input_free(&input);
    return status;
}

static const struct option_row options[] = {
    ROW_STRICT,
    {"only", 0, OPTION_TEXT, FIELD(only), "LEVEL|ID",
     "only error, warning, note, or one check or family", 0, 0},
    {"json", 0, OPTION_FLAG, FIELD(json), NULL, "one JSON object a line, on standard output", 0, 0},
    {"tolerance", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    {"reads", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    {"names", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    OPTIONS_END,
};

const struct command command_check = {
    "check",
    "FILE",
    "tell what is wrong with a playbook, and what a good assistant would see",
    options,
    "  courtwright check book.play --only space\n",
    1,
    1,
    run};
