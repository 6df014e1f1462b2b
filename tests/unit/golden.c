/* SPDX-License-Identifier: MIT */
/* golden: see golden.h. */
#include "golden.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "suite.h"
#include "whole_file.h"

static struct golden golden;
static char names[256][128];
static int count;

static void find_goldens(void)
{
    DIR *folder = opendir(golden.folder);
    for (struct dirent *entry = folder ? readdir(folder) : NULL; entry; entry = readdir(folder)) {
        char *dot = strrchr(entry->d_name, '.');
        if (dot && strcmp(dot, ".play") == 0 && count < 256) {
            size_t size = (size_t)(dot - entry->d_name);
            snprintf(names[count++], sizeof names[0], "%.*s", (int)size, entry->d_name);
        }
    }
    if (folder) {
        closedir(folder);
    }
    qsort(names, (size_t)count, sizeof names[0], (int (*)(const void *, const void *))strcmp);
}

/* Empty when there is none. */
static struct str read_file(const char *name, const char *ending)
{
    struct str text;
    whole_file(&arena, str_format(&arena, "%s/%s%s", golden.folder, name, ending).at, &text);
    return text;
}

/* The line of text at `from`, without its end. */
static struct str line_at(struct str text, size_t from)
{
    size_t end = from;
    while (end < text.size && text.at[end] != '\n') {
        end++;
    }
    return (struct str){text.at + from, end - from};
}

/* Check's messages are short: only the first line that differs is shown. */
static struct str first_difference(struct str want, struct str got)
{
    size_t same = 0, start = 0;
    int line = 1;
    while (same < want.size && same < got.size && want.at[same] == got.at[same]) {
        if (want.at[same++] == '\n') {
            start = same;
            line++;
        }
    }
    struct str was = line_at(want, start), is = line_at(got, start);
    return str_format(&arena, "line %d was\n%.*s\nand is\n%.*s", line,
                      (int)(was.size < 900 ? was.size : 900), was.at,
                      (int)(is.size < 900 ? is.size : 900), is.at);
}

START_TEST(a_golden_play_is_as_before)
{
    struct str want = read_file(names[_i], golden.ending);
    struct str got = golden.make(names[_i], read_file(names[_i], ".play"));
    ck_assert_msg(str_equal(want, got), "%s%s: %.*s", names[_i], golden.ending,
                  STR_ARG(first_difference(want, got)));
}
END_TEST

static int write_all(void)
{
    for (int i = 0; i < count; i++) {
        open_arena();
        struct str got = golden.make(names[i], read_file(names[i], ".play"));
        char path[512];
        snprintf(path, sizeof path, "%s/%.200s%s", golden.folder, names[i], golden.ending);
        FILE *file = fopen(path, "wb");
        if (!file || fwrite(got.at, 1, got.size, file) != got.size || fclose(file)) {
            return EXIT_FAILURE;
        }
        close_arena();
    }
    return EXIT_SUCCESS;
}

int golden_main(const struct golden *what, int argc, char **argv)
{
    golden = *what;
    find_goldens();
    if (argc > 1 && strcmp(argv[1], "--write") == 0) {
        return write_all();
    }
    Suite *suite = suite_create("goldens");
    TCase *all = tcase_create("goldens");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_golden_play_is_as_before, 0, count);
    suite_add_tcase(suite, all);
    return count ? suite_main(suite) : EXIT_FAILURE;
}
