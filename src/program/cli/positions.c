/* SPDX-License-Identifier: MIT */
/* positions: where everybody is over time. */
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/naming.h"
#include "program/cli/pick.h"
#include "program/cli/say.h"

static enum courtwright_status produce(const struct request *request, struct input *input,
                                       size_t play, const struct courtwright_writer *writer)
{
    if (request->dump) {
        return courtwright_dump(input->book, play, (enum courtwright_stage)(request->dump - 1),
                                writer);
    }
    return courtwright_positions(input->book, play, (int)request->rate, writer);
}

static int put(const struct request *request, struct input *input, size_t play, const char *path)
{
    struct output output;
    if (!output_open(&output, input, request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status = produce(request, input, play, &output.writer);
    return output_close(&output, status, courtwright_play(input->book, play)->name, path);
}

static int put_all(const struct request *request, struct input *input, const struct picked *picked)
{
    bool standard = !request->output || strcmp(request->output, "-") == 0;
    struct naming naming;
    int status = STATUS_FINE;
    if (standard && picked->count > 1 && !request->dump) {
        return wrong_use(request,
                         "%zu plays come out, each as JSON of its own: --play NAME takes "
                         "one, -o a folder or a name with {play} in it takes all",
                         picked->count);
    }
    if (!standard && !naming_start(&naming, request, request->dump ? "{play}.txt" : "{play}.json",
                                   picked->count > 1)) {
        return STATUS_USE;
    }
    for (size_t i = 0; i < picked->count && status == STATUS_FINE; i++) {
        struct name_parts parts = {.play = courtwright_play(input->book, picked->plays[i])->name};
        status =
            put(request, input, picked->plays[i], standard ? "-" : naming_next(&naming, &parts));
    }
    if (!standard) {
        naming_free(&naming);
    }
    return status;
}

/* Data to standard output, or to the file named. */
static int put_schema(const struct request *request)
{
    struct input none = {0};
    struct output output;
    const char *schema = courtwright_positions_schema();
    const char *path = request->output ? request->output : "-";
    if (request->word_count || request->dump || request->play || request->rate > 0) {
        return wrong_use(request, "--schema stands alone: it is the same for every file");
    }
    if (!output_open(&output, &none, request->command, path, false)) {
        return STATUS_FILE;
    }
    output.writer.write(output.writer.ctx, schema, strlen(schema));
    return output_finish(&output) ? STATUS_FINE : STATUS_FILE;
}

static int run(const struct request *request)
{
    if (request->schema) {
        return put_schema(request);
    }
    if (request->dump && request->rate > 0) {
        return wrong_use(request, "--rate is for positions, not for --dump");
    }
    if (request->rate > (int)request->rate) {
        return wrong_use(request, "--rate takes a whole number of places a second");
    }
    if (!request->word_count) {
        return wrong_use(request, "what is missing: FILE");
    }
    struct input input;
    struct picked picked = {0};
    int status = STATUS_FILE;
    if (input_load(&input, request, 0)) {
        struct telling telling = {.only = "error"};
        int said = tell(request, input.book, &telling);
        status = said == STATUS_FILE                         ? said
                 : !pick_plays(&picked, request, input.book) ? STATUS_USE
                                                             : put_all(request, &input, &picked);
        status = status ? status : said;
    }
    picked_free(&picked);
    input_free(&input);
    return status;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, a name with {play} {n}; else standard output, for one play"),
    ROW_PLAY,
    {"rate", 0, OPTION_NUMBER, FIELD(rate), "N", "places a second (30)", 1, 120},
    {"schema", 0, OPTION_FLAG, FIELD(schema), NULL,
     "the JSON schema of what is written, instead: what each field means", 0, 0},
    {"dump", 0, OPTION_CHOICE, FIELD(dump), "resolved|run|scene",
     "a stage of the work as text instead", 0, 0},
    OPTIONS_END,
};

const struct command command_positions = {
    "positions",
    "FILE",
    "tell where everybody is over time, as JSON",
    options,
    "  courtwright positions book.play --play Lantern --rate 10\n"
    "  courtwright positions --schema\n",
    0,
    1,
    run};
