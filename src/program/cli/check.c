/* SPDX-License-Identifier: MIT */
/* check: errors of the text and findings of the run. */
#include <jansson.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

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

/* ---- tolerance ---- */

static bool show_tolerance_json(const struct courtwright_tolerance *told, bool names)
{
    json_t *line = json_pack(
        "{ss ss si si ss sf ss ss si ss ss ss ss si si si}", "play", told->play, "step", told->step,
        "runs", told->runs, "works", told->works, "tightest", told->tightest, "spare", told->spare,
        "trouble", told->trouble, "check", told->check, "times", told->times, "warned",
        told->warned, "message", names ? told->named : told->message, "help", told->help, "file",
        told->file, "line", (int)told->line, "column", (int)told->column, "end", (int)told->end);
    bool good = line && json_dumpf(line, stdout, JSON_COMPACT | JSON_REAL_PRECISION(6)) == 0;
    putchar('\n');
    json_decref(line);
    return good;
}

/* How far the long work is, on a terminal that shows nothing else of it. */
struct progress {
    bool shown;
    size_t done, all; /* diagrams */
};

static struct progress progress_of(const struct request *request, const struct courtwright *book)
{
    bool lines = isatty(STDOUT_FILENO) && !request->json; /* they come one by one: enough */
    struct progress progress = {.shown = isatty(STDERR_FILENO) && !lines};
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        progress.all += courtwright_play(book, i)->diagrams;
    }
    return progress;
}

static void progress_show(struct progress *progress)
{
    if (progress->shown) {
        fprintf(stderr, "\rtolerance: %zu of %zu diagrams", progress->done, progress->all);
    }
}

static void progress_end(const struct progress *progress)
{
    if (progress->shown) {
        fputs("\r\033[K", stderr);
    }
}

struct showing {
    const struct request *request;
    struct progress progress;
    bool failed;
};

static bool show_tolerance(void *ctx, const struct courtwright_tolerance *told)
{
    struct showing *showing = ctx;
    if (showing->request->json) {
        showing->failed = !show_tolerance_json(told, showing->request->names);
    } else {
        printf("%s, step %s: %s\n", told->play, told->step,
               showing->request->names ? told->named : told->message);
        if (*told->help) {
            printf("  help: %s\n", told->help);
        }
    }
    showing->progress.done++;
    progress_show(&showing->progress);
    return !showing->failed;
}

static int tell_play(struct courtwright *book, size_t play, struct showing *showing)
{
    enum courtwright_status status = courtwright_tolerance(book, play, show_tolerance, showing);
    if (status != COURTWRIGHT_OK) {
        progress_end(&showing->progress);
        say(showing->request->command, "%s: %s", courtwright_play(book, play)->name,
            courtwright_status_text(status));
        return STATUS_FILE;
    }
    if (showing->failed) {
        progress_end(&showing->progress);
        say(showing->request->command, "standard output could not be written");
        return STATUS_FILE;
    }
    return STATUS_FINE;
}

static int tell_tolerance(const struct request *request, struct courtwright *book)
{
    struct showing showing = {request, progress_of(request, book), false};
    progress_show(&showing.progress);
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        /* of a broken one it has been said why */
        int status = courtwright_play(book, i)->broken ? STATUS_FINE : tell_play(book, i, &showing);
        if (status != STATUS_FINE) {
            return status;
        }
    }
    progress_end(&showing.progress);
    return STATUS_FINE;
}

static const char schema[] = {
#include "check_schema.inc"
    , '\0'};

static int put_schema(const struct request *request)
{
    bool alone = !request->word_count && !request->only && !request->json && !request->strict &&
                 !request->names && !request->tolerance;
    if (!alone) {
        return wrong_use(request, "--schema stands alone: it is the same for every file");
    }
    fputs(schema, stdout);
    return STATUS_FINE;
}

/* What is wrong with the options, or STATUS_FINE. */
static int options_checked(const struct request *request)
{
    if (!request->word_count) {
        return wrong_use(request, "what is missing: FILE");
    }
    if (request->only && !known(request->only)) {
        return wrong_use(request,
                         "--only takes error, warning, note or the name of a check, not '%s'",
                         shown(request->only));
    }
    if (request->jobs > 0 && !request->tolerance) {
        return wrong_use(request, "--jobs is for --tolerance");
    }
    if (request->jobs > (int)request->jobs) {
        return wrong_use(request, "--jobs takes a whole number of threads");
    }
    return STATUS_FINE;
}

static int run(const struct request *request)
{
    struct input input;
    int status = request->schema ? put_schema(request) : options_checked(request);
    if (request->schema || status != STATUS_FINE) {
        return status;
    }
    status = STATUS_FILE;
    if (input_load(&input, request, 0)) {
        struct telling telling = {
            .only = request->only, .json = request->json, .names = request->names};
        status = tell(request, input.book, &telling);
        if (request->tolerance && status != STATUS_FILE) {
            int also = tell_tolerance(request, input.book);
            status = also ? also : status;
        }
    }
    input_free(&input);
    return status;
}

static const struct option_row options[] = {
    ROW_STRICT,
    {"only", 0, OPTION_TEXT, FIELD(only), "LEVEL|ID",
     "only error, warning, note, or one check or family", 0, 0},
    {"json", 0, OPTION_FLAG, FIELD(json), NULL, "one JSON object a line, on standard output", 0, 0},
    {"schema", 0, OPTION_FLAG, FIELD(schema), NULL,
     "the JSON schema of what --json writes, instead: what each field means", 0, 0},
    {"tolerance", 0, OPTION_FLAG, FIELD(tolerance), NULL,
     "run every step 100 times by faster and slower players: how often it works (explain "
     "tolerance)",
     0, 0},
    {"jobs", 'j', OPTION_NUMBER, FIELD(jobs), "N",
     "so many threads for --tolerance (one a processor); the answer stays the same", 1, 64},
    {"reads", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    {"names", 0, OPTION_FLAG, FIELD(names), NULL,
     "players by first name, from the play's lineup or the roster", 0, 0},
    OPTIONS_END,
};

const struct command command_check = {
    "check",
    "FILE",
    "tell what is wrong with a playbook, and what a good assistant would see",
    options,
    "  courtwright check book.play --only space\n"
    "  courtwright check book.play --tolerance --names\n"
    "  courtwright check --schema\n",
    0,
    1,
    run};
