/* SPDX-License-Identifier: MIT */
/* What a sentence has from what stands around it: a deed that no rule brings, the shot that is
 * rebounded, the screen that is slipped. */
#include "told.h"

#include <string.h>

static struct told told;

/* Nobody helps against a drive that does not come inside: who waits for it has it, as in a read,
 * and is told so; not where a sentence has him do something else. */
START_TEST(what_no_rule_has_a_defender_do_is_taken_as_given)
{
    told_run(&told, "start five-out\nball 1\ndefense man\n1 drives left\n"
                    "when x5 helps, 1 passes to 5\n");
    ck_assert_msg(told_segment(&told, 0, -1)->ran, "%s", told_said(&told));
    told_says(&told, "run.supposed", "it is taken as given that x5 helps");
    told_run(&told, "start five-out\nball 1\ndefense man\n1 drives left\nx5 denies 5\n"
                    "when x5 helps, 1 passes to 5\n");
    told_says(&told, "run.stuck", "`x5 helps` does not come about");
}
END_TEST

START_TEST(a_rebound_is_of_the_latest_shot_above)
{
    told_run(&told, "start five-out\nball 1\n1 drives to the rim\n1 shoots\n2 rebounds\n2 shoots\n"
                    "3 rebounds\n");
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_msg(way->ran, "%s", told_said(&told));
    ck_assert_double_ge(told_time(way, 4, MOMENT_STARTED), told_time(way, 3, MOMENT_RELEASED));
}
END_TEST

START_TEST(nobody_slips_a_screen_that_is_used)
{
    static const char *const text = "start horns\nball 1\ndefense man\n5 ball screens for 1\n"
                                    "1 dribbles off 5 to right wing\n%sread x5 hedges\n"
                                    "  5 slips to the rim\n%s";
    told_run(&told, str_format(&arena, text, "5 rolls\n", "").at);
    told_says(&told, "play.slip-late", "5 rolls out of this screen above");
    told_run(&told, str_format(&arena, text, "", "read otherwise\n  5 rolls\n").at);
    ck_assert_msg(told_segment(&told, 0, 0)->ran, "%s", told_said(&told));
    ck_assert(!strstr(told_said(&told), "play.slip-late"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("given");
    TCase *all = tcase_create("given");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, what_no_rule_has_a_defender_do_is_taken_as_given);
    tcase_add_test(all, a_rebound_is_of_the_latest_shot_above);
    tcase_add_test(all, nobody_slips_a_screen_that_is_used);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
