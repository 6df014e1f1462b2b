/* SPDX-License-Identifier: MIT */
#include "plays.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "generate.h"
#include "resolved.h"
#include "whole_file.h"

static void one_text(struct arena *memory, struct str text, plays_visit *visit, void *ctx)
{
    struct resolved resolved;
    resolve_text(memory, &resolved, STR("plays"), text);
    for (size_t p = 0; p < resolved.book->plays.count; p++) {
        const struct play *play = &resolved.book->plays.at[p];
        if (!play->broken) {
            visit(ctx, memory, &resolved.sources, play);
        }
    }
}

static struct str read_file(struct arena *memory, const char *name)
{
    struct str text;
    if (!whole_file(memory, name, &text)) {
        printf("Bail out! %s cannot be read\n", name);
        exit(EXIT_FAILURE);
    }
    return text;
}

void plays_seeds(int seeds, plays_visit *visit, void *ctx)
{
    for (int seed = 1; seed <= seeds; seed++) {
        struct arena memory;
        struct strbuf text;
        arena_init(&memory, NULL, NULL);
        strbuf_init(&text, &memory);
        generate_play(&text, (uint64_t)seed);
        one_text(&memory, strbuf_str(&text), visit, ctx);
        arena_finish(&memory);
    }
}

void plays_text(const char *text, plays_visit *visit, void *ctx)
{
    struct arena memory;
    arena_init(&memory, NULL, NULL);
    one_text(&memory, str_of(text), visit, ctx);
    arena_finish(&memory);
}

void plays_files(int argc, char **argv, plays_visit *visit, void *ctx)
{
    for (int i = 1; i < argc; i++) {
        struct arena memory;
        if (argv[i][0] == '-') {
            i++;
            continue;
        }
        arena_init(&memory, NULL, NULL);
        one_text(&memory, read_file(&memory, argv[i]), visit, ctx);
        arena_finish(&memory);
    }
}

void plays_each(int argc, char **argv, plays_visit *visit, void *ctx)
{
    plays_files(argc, argv, visit, ctx);
    plays_seeds((int)plays_option(argc, argv, "-g", 0), visit, ctx);
}

double plays_option(int argc, char **argv, const char *name, double otherwise)
{
    for (int i = 1; i + 1 < argc; i++) {
        if (strcmp(argv[i], name) == 0) {
            return strtod(argv[i + 1], NULL);
        }
    }
    return otherwise;
}
