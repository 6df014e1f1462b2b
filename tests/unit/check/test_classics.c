/* SPDX-License-Identifier: MIT */
/* The classics of the game as a coach writes them, sound and with the classic mistakes, from the
 * file given: above each play stands what is said of it. The sound ones are told nothing above a
 * note, and no note but the one they list; of each mistake the first thing that is said, of the
 * gravest, is its own. */
#include "pipe.h"
#include "suite.h"
#include "whole_file.h"

#include <stdio.h>
#include <string.h>

enum { MOST = 128, LEAST = 20, LEAST_FLAWED = 15 };
static const char sound[] = "# sound", flawed[] = "# says ";
static struct str classics[MOST];
static int count;

static bool opens(const char *line)
{
    return strncmp(line, sound, strlen(sound)) == 0 || strncmp(line, flawed, strlen(flawed)) == 0;
}

/* The file, taken apart where such a line begins. */
static void read_classics(struct arena *into, const char *path)
{
    struct str whole;
    if (!whole_file(into, path, &whole)) {
        return; /* there are too few, then */
    }
    const char *end = whole.at + whole.size;
    for (const char *line = whole.at; line < end && count < MOST;) {
        const char *next = memchr(line, '\n', (size_t)(end - line));
        if (opens(line)) {
            classics[count++] = (struct str){line, 0};
        }
        line = next ? next + 1 : end;
        if (count > 0) {
            classics[count - 1].size = (size_t)(line - classics[count - 1].at);
        }
    }
}

static const char *first_line(struct str text)
{
    return str_copy(&arena, (struct str){text.at, strcspn(text.at, "\n")}).at;
}

static void is_sound(const struct piped *piped, const char *head)
{
    const char *said = piped_said(&arena, piped);
    ck_assert_msg(piped->diags.errors + piped->diags.warnings == 0, "%s:%s", head, said);
    for (size_t i = 0; i < piped->findings.count; i++) {
        const struct finding *finding = &piped->findings.at[i];
        ck_assert_msg(finding->severity == SEVERITY_NOTE && strstr(head, finding->row->id), "%s:%s",
                      head, said);
    }
}

static void says_first(const struct piped *piped, const char *head)
{
    const struct finding *first = NULL;
    for (size_t i = 0; i < piped->findings.count; i++) {
        const struct finding *finding = &piped->findings.at[i];
        first = !first || finding->severity > first->severity ? finding : first;
    }
    ck_assert_msg(first && strcmp(first->row->id, head + strlen(flawed)) == 0, "%s:%s", head,
                  piped_said(&arena, piped));
}

START_TEST(what_stands_above_a_classic_is_what_is_said_of_it)
{
    struct piped piped;
    const char *head = first_line(classics[_i]);
    pipe_text(&arena, classics[_i], &piped);
    if (strncmp(head, sound, strlen(sound)) == 0) {
        is_sound(&piped, head);
    } else {
        says_first(&piped, head);
    }
}
END_TEST

START_TEST(there_are_many_of_both)
{
    int wrong = 0;
    for (int i = 0; i < count; i++) {
        wrong += strncmp(classics[i].at, flawed, strlen(flawed)) == 0;
    }
    ck_assert_int_ge(wrong, LEAST_FLAWED);
    ck_assert_int_ge(count - wrong, LEAST);
    ck_assert_int_lt(count, MOST);
}
END_TEST

int main(int argc, char **argv)
{
    const char *path = suite_argument(argc, argv, "FILE");
    open_arena();
    struct arena whole = arena; /* of the file: each test has its own */
    read_classics(&whole, path);
    Suite *suite = suite_create("check classics");
    TCase *all = tcase_create("classics");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, what_stands_above_a_classic_is_what_is_said_of_it, 0, count);
    tcase_add_test(all, there_are_many_of_both);
    suite_add_tcase(suite, all);
    int status = suite_main(suite);
    arena_finish(&whole);
    return status;
}
