/* SPDX-License-Identifier: MIT */
/* The examples of `explain` through the whole pipeline: the good one is told nothing above a note,
 * the bad one what it is an example of. */
#include "pipe.h"
#include "suite.h"

#include <string.h>

START_TEST(the_good_example_is_told_nothing_above_a_note)
{
    const struct check_row *row = check_at((size_t)_i);
    struct piped piped;
    pipe_text(&arena, str_of(row->good), &piped);
    ck_assert_msg(piped.diags.errors == 0 && piped.diags.warnings == 0, "%s:%s", row->id,
                  piped_said(&arena, &piped));
    for (size_t i = 0; i < piped.findings.count; i++) {
        ck_assert_msg(piped.findings.at[i].severity == SEVERITY_NOTE, "%s:%s", row->id,
                      piped_said(&arena, &piped));
    }
    ck_assert_msg(piped_count(&piped, row->id) == 0, "%s:%s", row->id, piped_said(&arena, &piped));
}
END_TEST

START_TEST(the_bad_example_is_told_what_it_shows)
{
    const struct check_row *row = check_at((size_t)_i);
    struct piped piped;
    pipe_text(&arena, str_of(row->bad), &piped);
    ck_assert_msg(piped_count(&piped, row->id) == 1, "%s:%s", row->id, piped_said(&arena, &piped));
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        ck_assert_msg(finding->severity == SEVERITY_NOTE || finding->row == row, "%s:%s", row->id,
                      piped_said(&arena, &piped));
        ck_assert(finding->span.source == 0 && finding->span.end > finding->span.begin);
        ck_assert(finding->message.size > 20 && finding->help.size > 5);
    }
}
END_TEST

static size_t lines(const char *text, const char *at[64])
{
    size_t count = 0;
    for (const char *line = text; line && *line && count < 64; count++) {
        at[count] = line;
        line = strchr(line, '\n');
        line = line ? line + 1 : NULL;
    }
    return count;
}

START_TEST(the_two_examples_differ_by_one_line)
{
    const struct check_row *row = check_at((size_t)_i);
    const char *good[64], *bad[64];
    size_t count = lines(row->good, good), differ = 0;
    ck_assert_uint_eq(count, lines(row->bad, bad));
    for (size_t i = 0; i < count; i++) {
        size_t size = strcspn(good[i], "\n");
        differ += size != strcspn(bad[i], "\n") || memcmp(good[i], bad[i], size) != 0;
    }
    ck_assert_uint_eq(differ, 1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("check examples");
    TCase *all = tcase_create("examples");
    int count = (int)check_count();
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, the_good_example_is_told_nothing_above_a_note, 0, count);
    tcase_add_loop_test(all, the_bad_example_is_told_what_it_shows, 0, count);
    tcase_add_loop_test(all, the_two_examples_differ_by_one_line, 0, count);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
