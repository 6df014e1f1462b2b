/* SPDX-License-Identifier: MIT */
/* Cutters: where a run to the rim ends, and where a movement goes on into the next. */
#include "told.h"

#include <math.h>

#include "base/real.h"

#define LOW (2.8 * FEET)    /* nobody stands nearer to the baseline than the front of the rim */
#define BESIDE (1.8 * FEET) /* from the ring's line */

static struct told told;

static struct vec2 at_end(int step, int player)
{
    const struct segment *segment = told_segment(&told, step, -1);
    return segment_at(segment, body_attacker(player), segment->duration);
}

static const char *const cuts[] = {
    "1 cuts to the rim", "2 cuts to the rim",        "3 cuts to the rim",
    "4 cuts to the rim", "5 cuts to the rim",        "2 back cuts",
    "5 goes to the rim", "4 cuts to the rim past 2", "3 cuts to the rim around 5"};
static const int cutter[] = {1, 2, 3, 4, 5, 2, 5, 4, 3};

START_TEST(a_cut_to_the_rim_ends_in_front_of_it)
{
    struct strbuf text;
    int passer = cutter[_i] == 1 ? 2 : 1;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Millrace\"\n  start five-out\n  ball %d\n  defense man\n  step\n"
                 "    %s\n  step\n    %d passes to %d\n",
                 passer, cuts[_i], passer, cutter[_i] == 3 ? 5 : 3);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    static const double from[] = {0, 1, -1, 1, -1, 1, -1, 1, -1}; /* his side */
    for (int step = 0; step < 2; step++) {
        struct vec2 at = at_end(step, cutter[_i]);
        ck_assert_msg(at.y > LOW && fabs(at.x) < BESIDE && at.x * from[_i] > -.15,
                      "%s: step %d ends %.2f, %.2f", cuts[_i], step + 1, at.x, at.y);
    }
}
END_TEST

START_TEST(a_cutter_is_passed_to_in_stride)
{
    told_run(&told, "play \"Millrace\"\n  start five-out\n  ball 1\n"
                    "  3 cuts to the rim\n  1 passes to 3\n");
    told_is_sound(&told);
    const struct segment *segment = told_segment(&told, 0, -1);
    double caught = told_time(segment, 1, MOMENT_CAUGHT);
    ck_assert_double_gt(vec2_length(segment_velocity(segment, body_attacker(3), caught)), 1.5);
    ck_assert_double_lt(vec2_length(segment_at(segment, body_attacker(3), caught)), 2.2);
}
END_TEST

START_TEST(who_uses_a_screen_next_runs_through_the_border)
{
    told_run(&told, "play \"Millrace\"\n"
                    "  start 1 top, 2 right wing, 3 right corner, 4 left corner, 5 left block\n"
                    "  defense man\n  step\n    5 screens for 3 at (-5, 9)\n"
                    "    3 runs to left block\n  step\n    3 comes off 5 to left wing\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    double speed = vec2_length(segment_velocity(first, body_attacker(3), first->duration));
    ck_assert_double_gt(speed, 1.5);
    for (double t = 0; t < .6; t += .1) {
        ck_assert_double_gt(vec2_length(segment_velocity(second, body_attacker(3), t)), 1.0);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("cutters");
    TCase *all = tcase_create("cutters");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_cut_to_the_rim_ends_in_front_of_it, 0,
                        (int)(sizeof cuts / sizeof *cuts));
    tcase_add_test(all, a_cutter_is_passed_to_in_stride);
    tcase_add_test(all, who_uses_a_screen_next_runs_through_the_border);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
