/* SPDX-License-Identifier: MIT */
/* Limits and accepts that no coach can mean: each has its own error, at its own line, with a help
 * that can be typed; and those that can be meant have none. */
#include "pipe.h"
#include "suite.h"

#include <string.h>

static const struct {
    const char *line, *id, *help; /* id NULL: nothing is said */
} lines[] = {
    {"limit space.close 10 ft", NULL, ""},
    {"limit space.close 0 ft", NULL, ""},
    {"limit space.close 94 ft", NULL, ""},
    {"limit space.close 28 m", NULL, ""},
    {"limit space.close 95 ft", "check.range", "write limit space.close 10 ft"},
    {"limit space.close 29 m", "check.range", "write limit space.close 10 ft"},
    {"limit space.close 3 s", "check.unit", "write limit space.close 10 ft"},
    {"limit space.close 30 degrees", "check.unit", "write limit space.close 10 ft"},
    {"limit space.close 30 %", "check.unit", "write limit space.close 10 ft"},
    {"limit ball.held 60 s", NULL, ""},
    {"limit ball.held 1 min", NULL, ""},
    {"limit ball.held 61 s", "check.range", "write limit ball.held 3 s"},
    {"limit ball.held 2 min", "check.range", "write limit ball.held 3 s"},
    {"limit ball.held 100000 s", "check.range", "write limit ball.held 3 s"},
    {"limit ball.held 0 s", "check.range", "write limit ball.held 3 s"},
    {"limit ball.held 3 ft", "check.unit", "write limit ball.held 3 s"},
    {"limit screen.angle 180 degrees", NULL, ""},
    {"limit screen.angle 1 degree", NULL, ""},
    {"limit screen.angle 0 degrees", "check.range", "write limit screen.angle 40 degrees"},
    {"limit screen.angle 400 degrees", "check.range", "write limit screen.angle 40 degrees"},
    {"limit screen.angle 30 ft", "check.unit", "write limit screen.angle 40 degrees"},
    {"limit space.area 100 %", NULL, ""},
    {"limit space.area 140 %", "check.range", "write limit space.area 60 %"},
    {"limit space.area 0 %", "check.range", "write limit space.area 60 %"},
    {"limit space.area 60 ft", "check.unit", "write limit space.area 60 %"},
    {"limit ball.holder 3 s", "check.no-limit", ""},
    {"limit space.clsoe 10 ft", "check.unknown", "did you mean space.close?"},
    {"limit run.time 3 s", "check.unknown", NULL},
    {"accept space.close \"they cross\"", NULL, ""},
    {"accept space.close \"\"", "check.no-reason",
     "write the reason: accept space.close \"they cross\""},
    {"accept space.clsoe \"they cross\"", "check.unknown", "did you mean space.close?"},
    {"accept ball.holder \"they cross\"", "check.no-accept",
     "take the line out and change the sentence"},
};

START_TEST(a_limit_or_accept_is_good_or_has_its_own_error)
{
    struct piped piped;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"Ferry\"\n  %s\n  step\n    1 passes to 2\n", lines[_i].line);
    pipe_text(&arena, strbuf_str(&text), &piped);
    ck_assert_uint_eq(piped.diags.all.count, 0);
    check_names(&piped.book->plays.at[0], &piped.diags);
    if (!lines[_i].id) {
        ck_assert_msg(piped.diags.all.count == 0, "%s: %s", lines[_i].line,
                      piped_said(&arena, &piped));
        return;
    }
    ck_assert_msg(piped.diags.all.count == 1, "%s: %s", lines[_i].line, piped_said(&arena, &piped));
    const struct diag *diag = &piped.diags.all.at[0];
    ck_assert_str_eq(diag->row->id, lines[_i].id);
    ck_assert_int_eq(diag->severity, SEVERITY_ERROR);
    if (lines[_i].help) {
        ck_assert_str_eq(diag->help.size ? diag->help.at : "", lines[_i].help);
    }
    struct str marked = source_text(&piped.sources, diag->span);
    ck_assert_msg(marked.size > 0 && strstr(lines[_i].line, str_copy(&arena, marked).at),
                  "%s is not the line", str_copy(&arena, marked).at);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("limits");
    TCase *all = tcase_create("limits");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_limit_or_accept_is_good_or_has_its_own_error, 0,
                        (int)(sizeof lines / sizeof *lines));
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
