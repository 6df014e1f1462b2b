/* SPDX-License-Identifier: MIT */
/* Reads that the defense cannot give, and what else of the words cannot be seen on the floor. */
#include "told.h"

#include <string.h>

static struct told told;

#define STAND                                                                                      \
    "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left "       \
    "elbow\n"                                                                                      \
    "  defense man\n  step\n"

static const struct {
    const char *text, *words;
} cannot[] = {
    {"    5 screens for 2\n    read x3 goes under \"A\"\n      2 comes off 5 to top\n",
     "x3 guards 3, and 3 uses no screen"},
    {"    5 screens for 2\n    read x4 trails \"A\"\n      2 curls off 5\n",
     "x4 guards 4, and 4 goes nowhere"},
    {"    5 ball screens for 1\n    read x4 hedges \"A\"\n      1 dribbles off 5 to right wing\n",
     "x4 guards 4, and 4 sets no screen"},
    {"    5 ball screens for 1\n    read x3 ices \"A\"\n      1 dribbles off 5 to right wing\n",
     "x3 guards 3, and 3 is at no screen"},
    {"    5 screens for 3\n    read x3 and x4 switch \"A\"\n      3 comes off 5 to top\n",
     "x3 guards 3, and 3 is at no screen with the other one's man"},
    {"    1 passes to 2\n    if x3 goes over, 3 cuts to the rim\n",
     "x3 guards 3, and 3 uses no screen"},
};

START_TEST(a_read_that_cannot_come_about_is_said)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, STAND "%s", cannot[_i].text);
    told_run(&told, strbuf_str(&text).at);
    told_says(&told, "run.read", cannot[_i].words);
}
END_TEST

static const char *const can[] = {
    "    5 screens for 3\n    read x3 goes under \"A\"\n      3 comes off 5 to left wing\n",
    "    read x3 goes over \"A\"\n      3 comes off 5 to left wing\n",
    "    5 screens for 3\n  step\n    read x3 goes under \"A\"\n      3 fades off 5\n",
    "    5 screens for 3\n    read x3 and x5 switch \"A\"\n      5 slips\n",
    "    5 ball screens for 1\n    read x5 ices \"A\"\n      1 rejects 5\n",
    "    5 ball screens for 1\n    read x1 ices \"A\"\n      1 rejects 5\n",
    "    1 dribbles at 2\n    1 hands off to 2\n    read x2 goes under \"A\"\n      2 shoots\n",
    "    1 passes to 2\n    read x3 trails \"A\"\n      3 cuts to the rim\n",
    "    1 passes to 2\n    read x3 overplays \"A\"\n      3 back cuts\n",
    "    5 screens for 3\n    read otherwise \"A\"\n      3 comes off 5 to left wing\n",
};

START_TEST(a_read_of_what_can_be_is_none)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, STAND "%s", can[_i]);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    ck_assert_msg(strstr(told_said(&told), "run.read") == NULL, "%s", told_said(&told));
}
END_TEST

/* ---- screens that are not what they are called ---- */

START_TEST(a_down_screen_that_goes_up_is_said)
{
    told_run(&told, "play \"Tollgate\"\n  start 1 top, 2 right corner, 3 left wing, 4 right block, "
                    "5 left block\n  defense man\n  step\n    5 down screens for 3\n"
                    "    3 comes off 5 to left slot\n");
    told_says(&told, "run.up", "this is an up screen: 5 comes");
    told_run(&told, STAND "    5 down screens for 3\n    3 comes off 5 to left wing\n");
    ck_assert(strstr(told_said(&told), "run.up") == NULL);
}
END_TEST

static double longest(const struct segment *segment, size_t use)
{
    double length = 0, end = told_time(segment, use, MOMENT_ARRIVED);
    for (double t = told_time(segment, use, MOMENT_STARTED); t < end; t += .05) {
        length += vec2_distance(segment_at(segment, body_attacker(3), t),
                                segment_at(segment, body_attacker(3), t + .05));
    }
    return length;
}

#define STAGGER                                                                                    \
    "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left corner, 4 left block, 5 left elbow\n"  \
    "  defense man\n  step\n    4 and 5 screen for 3\n"

START_TEST(two_screens_are_passed_in_the_order_that_does_not_double_back)
{
    told_run(&told, STAGGER "    3 comes off 4 and 5 to left slot\n");
    ck_assert(strstr(told_said(&told), "run.order") == NULL);
    double right = longest(told_segment(&told, 0, -1), 2);
    told_run(&told, STAGGER "    3 comes off 5 and 4 to left slot\n");
    told_says(&told, "run.order", "4 stands nearer than 5");
    ck_assert_double_lt(longest(told_segment(&told, 0, -1), 2), right + .5);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reads");
    TCase *all = tcase_create("reads");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_read_that_cannot_come_about_is_said, 0,
                        (int)(sizeof cannot / sizeof *cannot));
    tcase_add_loop_test(all, a_read_of_what_can_be_is_none, 0, (int)(sizeof can / sizeof *can));
    tcase_add_test(all, a_down_screen_that_goes_up_is_said);
    tcase_add_test(all, two_screens_are_passed_in_the_order_that_does_not_double_back);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
