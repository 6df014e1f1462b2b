/* SPDX-License-Identifier: MIT */
/* Pairs of plays that differ by one line, through every room: the sound one is told nothing above a
 * note, the flawed one what its file is named after, and nothing else above a note. */
#include "pipe.h"
#include "suite.h"

#include <stdio.h>
#include <string.h>

static const char *folder;

static struct str read_play(const struct check_row *row, const char *which)
{
    return pipe_twin(&arena, folder, row, which);
}

START_TEST(the_sound_one_is_told_nothing_above_a_note)
{
    const struct check_row *row = check_at((size_t)_i);
    struct piped piped;
    pipe_text(&arena, read_play(row, "sound"), &piped);
    const char *said = piped_said(&arena, &piped);
    ck_assert_msg(piped.diags.errors + piped.diags.warnings == 0, "%s:%s", row->id, said);
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        ck_assert_msg(finding->severity == SEVERITY_NOTE && finding->row != row, "%s:%s", row->id,
                      said);
    }
}
END_TEST

START_TEST(the_flawed_one_is_told_its_flaw)
{
    const struct check_row *row = check_at((size_t)_i);
    struct piped piped;
    pipe_text(&arena, read_play(row, "flawed"), &piped);
    const char *said = piped_said(&arena, &piped);
    ck_assert_msg(piped_count(&piped, row->id) >= 1, "%s:%s", row->id, said);
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        ck_assert_msg(finding->severity == SEVERITY_NOTE || finding->row == row, "%s:%s", row->id,
                      said);
    }
}
END_TEST

static size_t lines_that_differ(struct str a, struct str b)
{
    size_t differ = 0, i = 0, k = 0;
    while (i < a.size && k < b.size) {
        const char *end = memchr(a.at + i, '\n', a.size - i);
        const char *other = memchr(b.at + k, '\n', b.size - k);
        size_t size = end ? (size_t)(end - a.at) - i : a.size - i;
        size_t length = other ? (size_t)(other - b.at) - k : b.size - k;
        differ += size != length || memcmp(a.at + i, b.at + k, size) != 0;
        i += size + 1;
        k += length + 1;
    }
    return differ + (i < a.size || k < b.size);
}

START_TEST(the_two_differ_by_one_line)
{
    const struct check_row *row = check_at((size_t)_i);
    ck_assert_uint_eq(lines_that_differ(read_play(row, "sound"), read_play(row, "flawed")), 1);
}
END_TEST

/* ---- the help, typed ---- */

/* What a help says to write: after "write: " up to a comma, a semicolon or the end; empty: it is no
 * line. */
static struct str line_of_help(struct str help)
{
    const char *at = strstr(str_copy(&arena, help).at, "write: ");
    if (!at) {
        return (struct str){"", 0};
    }
    at += strlen("write: ");
    return (struct str){at, strcspn(at, ",;")};
}

/* The text with a line at `index` put in, or in place of the one that is there. */
static struct str with_line(struct str text, size_t index, struct str line, bool in_place)
{
    const char *at = text.at, *end = text.at + text.size;
    for (size_t i = 0; i < index; i++) {
        at = memchr(at, '\n', (size_t)(end - at));
        at++;
    }
    const char *next = memchr(at, '\n', (size_t)(end - at));
    const char *rest = in_place && next ? next + 1 : at;
    return str_format(&arena, "%.*s    %.*s\n%.*s", (int)(at - text.at), text.at, STR_ARG(line),
                      (int)(end - rest), rest);
}

static bool takes_it_away(const struct check_row *row, struct str text)
{
    struct piped piped;
    pipe_text(&arena, text, &piped);
    return piped.diags.errors == 0 && piped_count(&piped, row->id) == 0;
}

START_TEST(a_help_that_is_a_line_takes_the_finding_away_when_it_is_typed)
{
    const struct check_row *row = check_at((size_t)_i);
    struct str text = read_play(row, "flawed"), line = {"", 0};
    struct piped piped;
    pipe_text(&arena, text, &piped);
    size_t lines = 0;
    for (size_t i = 0; i < piped.findings.count; i++) {
        if (piped.findings.at[i].row == row && !line.size) {
            line = line_of_help(piped.findings.at[i].help);
        }
    }
    for (size_t i = 0; i < text.size; i++) {
        lines += text.at[i] == '\n';
    }
    bool gone = line.size == 0; /* no line: test_help types what it says by hand */
    for (size_t i = 2; i < lines && !gone; i++) {
        gone = takes_it_away(row, with_line(text, i, line, true)) ||
               takes_it_away(row, with_line(text, i, line, false));
    }
    ck_assert_msg(gone, "%s: nowhere does '%.*s' help", row->id, STR_ARG(line));
}
END_TEST

int main(int argc, char **argv)
{
    folder = suite_argument(argc, argv, "FOLDER");
    Suite *suite = suite_create("check pairs");
    TCase *all = tcase_create("pairs");
    int count = (int)check_count();
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, the_sound_one_is_told_nothing_above_a_note, 0, count);
    tcase_add_loop_test(all, the_flawed_one_is_told_its_flaw, 0, count);
    tcase_add_loop_test(all, the_two_differ_by_one_line, 0, count);
    tcase_add_loop_test(all, a_help_that_is_a_line_takes_the_finding_away_when_it_is_typed, 0,
                        count);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
