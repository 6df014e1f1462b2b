/* SPDX-License-Identifier: MIT */
#include "suite.h"

#include <stdio.h>
#include <stdlib.h>

struct arena arena;

/* A test has nowhere to go without memory: its process ends and counts as failed. */
static void *take(void *ctx, size_t size)
{
    (void)ctx;
    void *block = malloc(size);
    if (!block) {
        fputs("no memory for a test\n", stderr);
        abort();
    }
    return block;
}

static void give(void *ctx, void *block)
{
    (void)ctx;
    free(block);
}

void open_arena(void)
{
    const struct memory memory = {take, give, NULL};
    arena_init(&arena, &memory, NULL);
}

void close_arena(void)
{
    arena_finish(&arena);
}

const char *suite_argument(int argc, char **argv, const char *name)
{
    if (argc != 2) {
        fprintf(stderr, "usage: %s %s\n", argv[0], name);
        exit(2);
    }
    return argv[1];
}

int suite_main(Suite *suite)
{
    SRunner *runner = srunner_create(suite);
    srunner_set_tap(runner, "-");
    srunner_run_all(runner, CK_SILENT);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
