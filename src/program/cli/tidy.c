/* SPDX-License-Identifier: MIT */
/* tidy: the one written form. The only command that writes over what it read, and only when told;
 * what it leaves out or writes otherwise than it stood is told. */
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
    return output_named(&output, path);
}

/* One line of a text, and where the next one begins. */
static size_t line_size(const struct bytes *text, size_t at)
{
    const char *end = at < text->size ? memchr(text->at + at, '\n', text->size - at) : NULL;
    return end ? (size_t)(end - text->at) - at + 1 : text->size - at;
}

static bool same_line(const struct bytes *a, size_t i, const struct bytes *b, size_t k)
{
    size_t size = line_size(a, i);
    return size > 0 && size == line_size(b, k) && memcmp(a->at + i, b->at + k, size) == 0;
}

enum { LINES_AHEAD = 16 }; /* how far a line may have moved */

/* How many lines from `i` on have none like them in the tidy text, which then goes on at `*k`. */
static size_t lines_off(const struct bytes *text, size_t i, const struct bytes *tidied, size_t *k)
{
    size_t off = 0;
    for (; i < text->size; i += line_size(text, i), off++) {
        size_t at = *k;
        for (int ahead = 0; ahead < LINES_AHEAD && at < tidied->size; ahead++) {
            if (same_line(text, i, tidied, at)) {
                *k = at;
                return off;
            }
            at += line_size(tidied, at);
        }
    }
    return off;
}

/* Each line that tidy would write otherwise, as "book.play:3: 2 swings it to 3". */
static void list_lines(const struct input *input, const struct bytes *tidied)
{
    const struct bytes *text = &input->text;
    size_t k = 0;
    unsigned line = 1;
    for (size_t i = 0; i < text->size;) {
        size_t off = lines_off(text, i, tidied, &k);
        for (; off > 0 && i < text->size; off--, line++) {
            size_t size = line_size(text, i), shows = size;
            while (shows > 0 && strchr("\r\n", text->at[i + shows - 1])) {
                shows--;
            }
            char *words = format_text("%.*s", (int)shows, text->at + i);
            printf("%s:%u: %s\n", input->path, line, shown(words));
            free(words);
            i += size;
        }
        if (i < text->size) {
            i += line_size(text, i);
            k += line_size(tidied, k);
            line++;
        }
    }
}

static int compare(const struct request *request, const struct input *input,
                   const struct bytes *tidied)
{
    if (tidied->size == input->text.size &&
        (tidied->size == 0 || memcmp(tidied->at, input->text.at, tidied->size) == 0)) {
        return STATUS_FINE;
    }
    list_lines(input, tidied);
    say(request->command, "%s is not in its tidy form%s", shown(input->path),
        request->upgrade ? " of the newest version" : "");
    return STATUS_TEXT;
}

static int tidy(const struct request *request, struct input *input)
{
    struct telling telling = {.only = "error", .rewritten = courtwright_source(input->book, 0)};
    struct bytes tidied = {NULL, 0};
    struct courtwright_writer writer = {keep, &tidied};
    int said = tell(request, input->book, &telling);
    if (courtwright_list_full(input->book)) {
        say(request->command,
            "there is more to tell of %s than a list holds; more may be left out: "
            "divide it to see all",
            shown(input->path));
    }
    enum courtwright_status done = said == STATUS_FILE ? COURTWRIGHT_MEMORY
                                   : request->upgrade  ? courtwright_upgrade(input->book, &writer)
                                                       : courtwright_tidy(input->book, &writer);
    int status;
    if (done == COURTWRIGHT_BROKEN && request->upgrade && said == STATUS_TEXT) {
        say(request->command, "%s was not upgraded", shown(input->path));
        status = STATUS_TEXT;
    } else if (done != COURTWRIGHT_OK) {
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
    if (request->check && request->output) {
        return wrong_use(request, "--check writes nothing: leave -o out");
    }
    int status = input_load_words(&input, request, 0) ? tidy(request, &input) : STATUS_FILE;
    input_free(&input);
    return status;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file; else standard output"),
    {"write", 0, OPTION_FLAG, FIELD(write), NULL, "write it over what was read", 0, 0},
    {"check", 0, OPTION_FLAG, FIELD(check), NULL,
     "write nothing: list the lines that are not tidy; then status 1", 0, 0},
    {"upgrade", 0, OPTION_FLAG, FIELD(upgrade), NULL,
     "bring it up to the newest version, which its first line then names", 0, 0},
    OPTIONS_END,
};

const struct command command_tidy = {
    "tidy",
    "FILE",
    "bring a playbook into its one written form; tell what is left out or read another way",
    options,
    "  courtwright tidy --write book.play\n",
    1,
    1,
    run};
