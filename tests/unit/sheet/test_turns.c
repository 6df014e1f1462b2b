/* SPDX-License-Identifier: MIT */
#include "page/sheet/turns.h"
#include "ran.h"
#include "suite.h"

#define EACH "The numbers are spots here, and you take each in turn: "

/* Drills, and what whoever does one is told of its numbers. */
static const struct {
    const char *drill, *told;
} cases[] = {
    {"drill \"Two counts\"\n"
     "  start 1 top, 2 right wing, 3 left wing\n"
     "  step\n"
     "    1 passes to 2\n",
     EACH "1, 2 and 3."},
    {"drill \"Alone\"\n"
     "  start 1 top\n"
     "  step\n"
     "    1 drives to the rim\n",
     "You are 1 when it is your turn."},
    {"drill \"One on one\"\n"
     "  start 1 top\n"
     "  defense man\n"
     "  step\n"
     "    1 drives to the rim\n",
     "You are 1 when it is your turn, and then x1 on defense."},
    {"drill \"Two on two\"\n"
     "  start 1 top, 2 right wing\n"
     "  defense man\n"
     "  step\n"
     "    1 passes to 2\n",
     EACH "1 and 2, then x1 and x2 on defense."},
    {"drill \"Pass and follow\"\n"
     "  start 1 right slot, 2 right corner, coach left wing, line behind 1\n"
     "  step\n"
     "    1 passes to 2\n"
     "    1 goes to right corner\n"
     "    2 drives to the rim\n"
     "    2 shoots\n"
     "  step\n"
     "    2 clears to the end of the line\n",
     EACH "1 and 2. Wait in the line behind 1: whoever is first is the next 1. After 1 you are 2. "
          "After 2 you are last in the line."},
    {"drill \"Two lines\"\n"
     "  start 1 right slot, 2 left slot, line behind 1, line behind 2\n"
     "  step\n"
     "    1 passes to 2\n",
     EACH "1 and 2. Wait in the line behind 1 or behind 2: whoever is first takes that spot next."},
    /* where one ends hangs on what the defender does: nothing is said of it */
    {"drill \"Tail\"\n"
     "  start coach top, 1 left corner, 2 left elbow\n"
     "  ball coach\n"
     "  defense man\n"
     "  step\n"
     "    2 down screens for 1\n"
     "    read x1 trails \"Curl\"\n"
     "      1 curls off 2 to the rim\n"
     "    read otherwise \"Stay\"\n"
     "      1 comes off 2 to left elbow\n",
     EACH "1 and 2, then x1 and x2 on defense."},
};

START_TEST(a_number_of_a_drill_is_a_spot_that_all_take)
{
    const struct play *play = run_text(cases[_i].drill);
    ck_assert_str_eq(plain(turns_told(&arena, play)), cases[_i].told);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("turns");
    TCase *all = tcase_create("turns");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_number_of_a_drill_is_a_spot_that_all_take, 0,
                        sizeof cases / sizeof *cases);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
