/* SPDX-License-Identifier: MIT */
/* What a movement that is told its time takes: that time, to 2 % or one tick, from the shortest
 * that legs allow up. */
#include "floor_text.h"

#include <math.h>

#include "base/real.h"

#define WITHIN .02

static struct ran ran;

static const struct told_time {
    const char *start, *sentence;
    double hurry, most; /* s: what nobody can do, and the longest that is tried */
} told[] = {{"1 top, 2 left corner", "1 cuts to right wing", 1, 9},
            {"1 top, 2 left corner", "1 dribbles to right wing", 1, 9},
            {"1 top, 2 left corner", "1 drives to the rim", 1.2, 9},
            {"1 right wing, 3 left wing", "3 v-cuts to top", 1, 8},
            {"1 left wing, 3 right wing", "3 cuts to the rim", 1.1, 8},
            {"1 top, 3 left corner", "3 cuts to right corner", 2, 9}};
enum { TOLD = sizeof told / sizeof *told };

static double takes(const struct told_time *row, double seconds)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"Lantern\"\n  start %s\n  ball 1\n  defense none\n  %s, taking ",
                 row->start, row->sentence);
    strbuf_number(&text, seconds, 3);
    strbuf_text(&text, " s\n");
    floor_text(&ran, strbuf_str(&text));
    ck_assert_msg(ran.run && ran.run->segments.at[0]->ran, "%s", floor_said(&ran));
    const struct task_record *record = &ran.run->segments.at[0]->record[0];
    return record->time[MOMENT_ARRIVED] - record->time[MOMENT_STARTED];
}

START_TEST(a_movement_told_its_time_takes_it)
{
    const struct told_time *row = &told[_i];
    double least = takes(row, row->hurry), most = row->most;
    const double times[] = {1.01 * least, 1.1 * least, 1.5 * least, 2 * least, most};
    ck_assert_double_gt(most, 2 * least);
    for (size_t i = 0; i < sizeof times / sizeof *times; i++) {
        double took = takes(row, times[i]);
        ck_assert_msg(fabs(took - times[i]) <= real_max(WITHIN * times[i], 1.0 / SIM_RATE),
                      "%s, taking %.3f s: %.3f s", row->sentence, times[i], took);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("times");
    TCase *all = tcase_create("times");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_movement_told_its_time_takes_it, 0, TOLD);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
