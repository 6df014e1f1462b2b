/* SPDX-License-Identifier: MIT */
/* limits: crowds and steps without end. Whatever is written, a run comes to its end or says what
 * keeps it from it, within the limits of base/limits.h: it never hangs. */
#include "base/limits.h"
#include "floor/sim/sim.h"
#include "resolved.h"
#include "suite.h"

struct long_run {
    struct resolved text;
    struct run *run;
    double longest; /* s */
    size_t failed;
};

static void run_text(struct long_run *out, struct str text)
{
    *out = (struct long_run){.longest = 0};
    resolve_text(&arena, &out->text, STR("limits"), text);
    out->run = sim_run(&arena, &out->text.sources, &out->text.book->plays.at[0], &out->text.diags);
    for (size_t i = 0; i < out->run->segments.count; i++) {
        const struct segment *segment = out->run->segments.at[i];
        out->longest = segment->duration > out->longest ? segment->duration : out->longest;
        out->failed += !segment->ran;
    }
}

/* It ended, or an error says why not; in either case within the step's limit. */
static void ends_or_says(struct long_run *out)
{
    ck_assert_uint_gt(out->run->segments.count, 0);
    ck_assert_double_le(out->longest, LIMIT_STEP_SECONDS + .1);
    ck_assert_msg(out->failed == 0 || out->text.diags.errors > 0,
                  "a step stopped and nothing was said");
}

static const char *const points[] = {"the nail", "the rim", "top", "right corner", "left block"};

START_TEST(five_through_one_point_come_through)
{
    struct long_run out;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "play \"Switchback\"\n  start five-out\n  ball coach\n  defense man\n");
    for (int i = 1; i <= 5; i++) {
        strbuf_print(&text, "  %d cuts to %s\n  %d clears to (%d, 12)\n", i, points[_i], i,
                     8 * i - 24);
    }
    run_text(&out, strbuf_str(&text));
    ends_or_says(&out);
    ck_assert_msg(out.failed == 0, "%.*s", STR_ARG(out.text.diags.all.at[0].message));
}
END_TEST

START_TEST(five_to_one_point_stand_round_it)
{
    struct long_run out;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "play \"Millrace\"\n  start five-out\n  defense man\n");
    for (int i = 2; i <= 5; i++) {
        strbuf_print(&text, "  %d cuts to %s\n", i, points[_i]);
    }
    strbuf_print(&text, "  1 dribbles to %s\n", points[_i == 2 ? 0 : _i]);
    run_text(&out, strbuf_str(&text));
    ends_or_says(&out);
    ck_assert_uint_eq(out.failed, 0);
}
END_TEST

START_TEST(twelve_through_one_point_in_a_drill)
{
    struct long_run out;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "drill \"Tollgate\"\n  start ");
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        strbuf_print(&text, "%s%d at (%d, %d)", i > 1 ? ", " : "", i, i <= 6 ? -14 : 14,
                     2 + 4 * ((i - 1) % 6));
    }
    strbuf_text(&text, "\n  step\n");
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        strbuf_print(&text, "    %d cuts to (0, 12)\n    %d clears to (%d, %d)\n", i, i,
                     i <= 6 ? 14 : -14, 2 + 4 * ((i - 1) % 6));
    }
    run_text(&out, strbuf_str(&text));
    ends_or_says(&out);
}
END_TEST

/* As many sentences as a step takes, none tied: two spots each for five players, again and again.
 */
START_TEST(sixty_four_sentences_at_once)
{
    static const char *const there[] = {"right slot", "right corner", "left slot", "left corner",
                                        "right block"};
    static const char *const back[] = {"left elbow", "right wing", "the nail", "left wing", "top"};
    struct long_run out;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "play \"Weathervane\"\n  start five-out\n  ball coach\n  defense man\n");
    for (int i = 0; i < LIMIT_SENTENCES; i++) {
        strbuf_print(&text, "  %d cuts to %s\n", i % 5 + 1, i / 5 % 2 ? back[i % 5] : there[i % 5]);
    }
    run_text(&out, strbuf_str(&text));
    ends_or_says(&out);
}
END_TEST

START_TEST(a_step_that_lasts_too_long_says_so)
{
    struct long_run out;
    run_text(&out, STR("play \"Sluice\"\n  start five-out\n  1 holds for 20 s\n"
                       "  1 holds for 20 s\n  1 passes to 2\n"));
    ends_or_says(&out);
    ck_assert(has_diag(&out.text, "run.long"));
}
END_TEST

START_TEST(who_waits_too_long_says_so)
{
    struct long_run out;
    run_text(&out, STR("play \"Sluice\"\n  start five-out\n  1 holds for 10 s\n  1 passes to 2\n"
                       "  after 1 passes, 3 cuts to the rim\n"));
    ends_or_says(&out);
    ck_assert(has_diag(&out.text, "run.wait"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("limits");
    TCase *all = tcase_create("limits");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, five_through_one_point_come_through, 0, 5);
    tcase_add_loop_test(all, five_to_one_point_stand_round_it, 0, 5);
    tcase_add_test(all, twelve_through_one_point_in_a_drill);
    tcase_add_test(all, sixty_four_sentences_at_once);
    tcase_add_test(all, a_step_that_lasts_too_long_says_so);
    tcase_add_test(all, who_waits_too_long_says_so);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
