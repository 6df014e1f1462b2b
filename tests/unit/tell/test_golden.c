/* SPDX-License-Identifier: MIT */
/* Every tests/golden/tell/NAME.play is told as in NAME.told: captions, jobs, the picture in words.
 * `test_golden_tell --write` writes the files anew, to be looked at before they are kept. */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "language/tell/tell.h"
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
    char path[512];
    snprintf(path, sizeof path, "%s/%s%s", GOLDEN_DIR, name, ending);
    FILE *file = fopen(path, "rb");
    if (!file) {
        return STR("");
    }
    char *bytes = arena_take(&arena, 1 << 16);
    size_t size = fread(bytes, 1, (1 << 16) - 1, file);
    fclose(file);
    return (struct str){bytes, size};
}

static void marked(struct strbuf *out, struct str text)
{
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        strbuf_char(out, c == TELL_BOLD || c == TELL_PLAIN ? '*' : c);
    }
    strbuf_char(out, '\n');
}

static void way_told(struct strbuf *out, const struct play *play, const struct step *step,
                     int branch)
{
    strbuf_print(out, "step %d", step->number);
    if (branch >= 0) {
        strbuf_print(out, "%c if %.*s", 'a' + branch,
                     STR_ARG(tell_conditions(&arena, &step->branches.at[branch])));
    }
    strbuf_char(out, '\n');
    for (size_t i = 0; i < step_task_count(step, branch); i++) {
        struct str caption = tell_task(&arena, play, step, branch, i);
        if (caption.size) {
            strbuf_print(out, "  (%d) ", step_task(step, branch, i)->order);
            marked(out, caption);
        }
    }
    for (int number = 1; number <= play->players; number++) {
        strbuf_print(out, "  job of %d: ", number);
        marked(out, tell_job(&arena, play, step, branch, body_attacker(number)));
    }
    strbuf_text(out, "  picture: ");
    marked(out, tell_diagram(&arena, play, step, branch));
}

static struct str told_text(const char *name)
{
    struct resolved resolved;
    resolve_text(&arena, &resolved, str_of(name), read_file(name, ".play"));
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t p = 0; p < resolved.book->plays.count; p++) {
        const struct play *play = &resolved.book->plays.at[p];
        for (size_t s = 0; s < play->steps.count; s++) {
            const struct step *step = &play->steps.at[s];
            way_told(&out, play, step, -1);
            for (size_t b = 0; b < step->branches.count; b++) {
                way_told(&out, play, step, (int)b);
            }
        }
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

START_TEST(a_golden_play_is_told_as_before)
{
    struct str want = read_file(names[_i], ".told"), got = told_text(names[_i]);
    ck_assert_msg(str_equal(want, got), "%s.told: %.*s", names[_i],
                  STR_ARG(first_difference(want, got)));
}
END_TEST

static int write_all(void)
{
    for (int i = 0; i < count; i++) {
        open_arena();
        struct str got = told_text(names[i]);
        char path[512];
        snprintf(path, sizeof path, "%s/%.200s.told", GOLDEN_DIR, names[i]);
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
    Suite *suite = suite_create("tell goldens");
    TCase *all = tcase_create("goldens");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_golden_play_is_told_as_before, 0, count);
    suite_add_tcase(suite, all);
    return count ? suite_main(suite) : EXIT_FAILURE;
}
