/* SPDX-License-Identifier: MIT */
/* list: tables: the language's, and a book's plays. */
#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/say.h"

struct listing {
    bool json, failed;
    int width; /* of the first column; 0: being measured */
    int widest;
};

static bool put_json(json_t *line)
{
    bool good = line && json_dumpf(line, stdout, JSON_COMPACT | JSON_REAL_PRECISION(6)) == 0;
    putchar('\n');
    json_decref(line);
    return good;
}

static bool measure(void *ctx, const struct courtwright_entry *entry)
{
    struct listing *listing = ctx;
    int size = (int)strlen(entry->word);
    listing->widest = size > listing->widest ? size : listing->widest;
    return true;
}

static bool put(void *ctx, const struct courtwright_entry *entry)
{
    struct listing *listing = ctx;
    if (listing->json) {
        json_t *line = json_pack("{ss ss ss ss ss}", "word", entry->word, "what", entry->what,
                                 "why", entry->why, "limit", entry->limit, "source", entry->source);
        listing->failed = listing->failed || !put_json(line);
        return !listing->failed;
    }
    printf("%-*s  %s%s%s%s\n", listing->widest, entry->word, entry->what, *entry->limit ? " (" : "",
           entry->limit, *entry->limit ? ")" : "");
    return true;
}

static int list_table(const struct request *request, enum courtwright_list list)
{
    struct listing listing = {.json = request->json};
    enum courtwright_status status = courtwright_list(list, NULL, measure, &listing);
    if (status == COURTWRIGHT_OK) {
        status = courtwright_list(list, NULL, put, &listing);
    }
    if (status != COURTWRIGHT_OK || listing.failed) {
        say(request->command, "%s",
            courtwright_status_text(status == COURTWRIGHT_OK ? COURTWRIGHT_WRITE : status));
        return STATUS_FILE;
    }
    return STATUS_FINE;
}

static bool put_play(const struct request *request, const struct courtwright_play *play)
{
    if (request->json) {
        return put_json(json_pack("{ss ss ss ss ss si si si sf sb sb}", "name", play->name,
                                  "chapter", play->chapter, "series", play->series, "call",
                                  play->call, "about", play->about, "number", play->number, "steps",
                                  play->steps, "diagrams", (int)play->diagrams, "seconds",
                                  play->seconds, "drill", play->drill, "broken", play->broken));
    }
    printf("%s: %d step%s, %zu diagram%s, %.1f s%s\n", play->name, play->steps,
           play->steps == 1 ? "" : "s", play->diagrams, play->diagrams == 1 ? "" : "s",
           play->seconds, play->broken ? " (has errors)" : "");
    return true;
}

static int list_plays(const struct request *request)
{
    struct input input;
    int status = STATUS_FILE;
    if (request->word_count < 2) {
        return wrong_use(request, "which file's plays?");
    }
    if (input_load(&input, request, 1)) {
        struct telling telling = {.only = "error"};
        status = tell(request, input.book, &telling);
        for (size_t i = 0; i < courtwright_play_count(input.book); i++) {
            status = put_play(request, courtwright_play(input.book, i)) ? status : STATUS_FILE;
        }
    }
    input_free(&input);
    return status;
}

static int list_tables(void)
{
    puts("plays FILE");
    for (int list = 0; list < COURTWRIGHT_LIST_COUNT; list++) {
        puts(courtwright_list_name((enum courtwright_list)list));
    }
    return STATUS_FINE;
}

static int run(const struct request *request)
{
    const char *table = request->word_count ? request->words[0] : "";
    if (!*table) {
        return list_tables();
    }
    if (strcmp(table, "plays") == 0) {
        return list_plays(request);
    }
    for (int list = 0; list < COURTWRIGHT_LIST_COUNT; list++) {
        if (strcmp(table, courtwright_list_name((enum courtwright_list)list)) == 0) {
            return request->word_count > 1 ? wrong_use(request, "only plays are listed of a file")
                                           : list_table(request, (enum courtwright_list)list);
        }
    }
    return wrong_use(request, "there is no table '%s'; 'courtwright list' names them",
                     shown(table));
}

static const struct option_row options[] = {
    {"json", 0, OPTION_FLAG, FIELD(json), NULL, "one JSON object a line", 0, 0},
    OPTIONS_END,
};

const struct command command_list = {
    "list",
    "TABLE [FILE]",
    "list plays, verbs, places, formations, zones, checks, …",
    options,
    "  courtwright list verbs\n  courtwright list plays book.play\n",
    0,
    2,
    run};
