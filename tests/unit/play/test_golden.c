/* SPDX-License-Identifier: MIT */
/* Every tests/golden/play/NAME.play resolves to NAME.resolved: plays first, then what was said.
 * `test_golden --write` writes the files anew, to be looked at before they are kept. */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "resolved.h"
#include "suite.h"

static jmp_buf escape;
static struct arena arena;
static char names[256][128];
static int count;

static void find_goldens(void)
{
    DIR *folder = opendir(GOLDEN_DIR);
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

static struct str read_file(const char *name, const char *ending)
{
    struct strbuf path;
    strbuf_init(&path, &arena);
    strbuf_print(&path, "%s/%s%s", GOLDEN_DIR, name, ending);
    FILE *file = fopen(path.at, "rb");
    if (!file) {
        return STR("");
    }
    char *bytes = arena_take(&arena, 1 << 16);
    size_t size = fread(bytes, 1, (1 << 16) - 1, file);
    fclose(file);
    return (struct str){bytes, size};
}

static struct str resolved_text(const char *name)
{
    struct resolved resolved;
    resolve_text(&arena, &resolved, str_of(name), read_file(name, ".play"));
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < resolved.book->plays.count; i++) {
        play_dump(&out, &resolved.book->plays.at[i]);
    }
    print_diags(&out, &resolved);
    return strbuf_str(&out);
}

static void open_arena(void)
{
    if (setjmp(escape)) {
        ck_abort_msg("the arena gave up");
    }
    arena_init(&arena, NULL, &escape);
}

static void close_arena(void)
{
    arena_finish(&arena);
}

START_TEST(a_golden_play_resolves_as_before)
{
    struct str want = read_file(names[_i], ".resolved"), got = resolved_text(names[_i]);
    ck_assert_msg(str_equal(want, got), "%s.resolved differs; it is now\n%.*s", names[_i],
                  STR_ARG(got));
}
END_TEST

static int write_all(void)
{
    for (int i = 0; i < count; i++) {
        open_arena();
        struct str got = resolved_text(names[i]);
        char path[512];
        snprintf(path, sizeof path, "%s/%.200s.resolved", GOLDEN_DIR, names[i]);
        FILE *file = fopen(path, "wb");
        if (!file || fwrite(got.at, 1, got.size, file) != got.size || fclose(file)) {
            return EXIT_FAILURE;
        }
        close_arena();
    }
    return EXIT_SUCCESS;
}

int main(int argc, char **argv)
{
    find_goldens();
    if (argc > 1 && strcmp(argv[1], "--write") == 0) {
        return write_all();
    }
    Suite *suite = suite_create("play goldens");
    TCase *all = tcase_create("goldens");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_golden_play_resolves_as_before, 0, count);
    suite_add_tcase(suite, all);
    return count ? suite_main(suite) : EXIT_FAILURE;
}
