/* SPDX-License-Identifier: MIT */
/* What the rule codes say of screens and of the closely guarded, held against what the checks
 * say of the same play under each; the article stands in the row. */
#include "pipe.h"
#include "suite.h"

static const struct {
    const char *rules;
    const char *screen;  /* where a step to an unseeing defender is demanded */
    const char *guarded; /* where five seconds are counted; NULL: no such count */
} codes[] = {
    {"fiba", "Official Basketball Rules art. 33.7: one normal step behind a stationary opponent",
     "art. 27: holding only, within 1 m, 5 s"},
    {"high-school", "NFHS 4-40 art. 4: one normal step backward without contact",
     "NFHS 9-10 and 4-10: holding within 6 ft, 5 s; of dribbling, 5 s too, nothing is tried here"},
    {"college-women", "NCAA 4-35: one normal step from an opponent who does not see it",
     "NCAA rules 4 and 9: holding only, within 6 ft, 5 s"},
    {"college-men", "NCAA 4-35",
     "NCAA rules 4 and 9: holding, 5 s; the dribbler's count was dropped in 2015"},
    {"nba", "Official Rules 12-B-III: not nearer than a normal step to who is unaware", NULL},
    {"wnba", "as NBA 12-B-III", NULL},
};
enum { CODES = sizeof codes / sizeof *codes };

static size_t found(const char *rules, const char *format, const char *what, const char *id)
{
    struct strbuf text;
    struct piped piped;
    strbuf_init(&text, &arena);
    strbuf_print(&text, format, rules, what);
    pipe_text(&arena, strbuf_str(&text), &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s: %s", rules, piped_said(&arena, &piped));
    return piped_count(&piped, id);
}

#define SCREEN                                                                                     \
    "play \"Weathervane\"\n"                                                                       \
    "  rules %s\n"                                                                                 \
    "  level u18 girls\n"                                                                          \
    "  start 1 right slot, 2 left wing, 3 right corner, 4 left corner, 5 right elbow\n"            \
    "  defense man\n"                                                                              \
    "  step\n"                                                                                     \
    "    5 screens for 2 at %s x2\n"                                                               \
    "    2 comes off 5 to the rim\n"

/* All codes ask for a normal step, .8 m at this age (between .37 and .41 of the height, a fast walk
 * of 138 children, Aguilar et al.; grown-ups .41), and none gives it a number. */
START_TEST(a_step_is_left_behind_who_does_not_see_the_screen)
{
    const char *rules = codes[_i].rules;
    ck_assert_msg(found(rules, SCREEN, "2 ft below", "screen.step") == 1, "%s", codes[_i].screen);
    ck_assert_msg(found(rules, SCREEN, "4 ft below", "screen.step") == 0, "%s", codes[_i].screen);
}
END_TEST

#define HOLD                                                                                       \
    "play \"Weathervane\"\n"                                                                       \
    "  rules %s\n"                                                                                 \
    "  level u16\n"                                                                                \
    "  start five-out\n"                                                                           \
    "  defense man\n"                                                                              \
    "  step\n"                                                                                     \
    "    1 holds for %s s\n"                                                                       \
    "    4 cuts to the rim\n"                                                                      \
    "    4 clears to right corner\n"                                                               \
    "    3 v-cuts to left wing\n"                                                                  \
    "    5 v-cuts to left corner\n"                                                                \
    "    1 passes to 2\n"

START_TEST(who_is_closely_guarded_has_five_seconds_where_they_are_counted)
{
    const char *rules = codes[_i].rules;
    size_t counted = codes[_i].guarded ? 1 : 0;
    ck_assert_uint_eq(found(rules, HOLD, "6", "time.closely-guarded"), counted);
    ck_assert_uint_eq(found(rules, HOLD, "4.5", "time.closely-guarded"), 0);
}
END_TEST

/* A normal step: 7 to 11 years .54 +- .06 m (second-hand), 12 to 18 years .67 +- .06 m, each level
 * within two deviations; grown-ups .41 of the height, within a tenth. U18 and varsity take .80,
 * what grown-ups take, and so lie a centimetre over the .79 that two deviations give: at 17 few are
 * as short as the mean of 12 to 18. That is our choice, and no more than that centimetre is let
 * pass. */
#define DEVIATION .06
#define OVER_AT_18 .01
static bool is_at_18(enum level_code code)
{
    return (code >= LEVEL_U18 && code <= LEVEL_U18_GIRLS) ||
           (code >= LEVEL_VARSITY && code <= LEVEL_VARSITY_GIRLS);
}

START_TEST(a_normal_step_is_as_long_as_was_measured)
{
    const enum level_code code = (enum level_code)_i;
    const struct level *level = level_of(code);
    bool child = code == LEVEL_U12, grown = code >= LEVEL_COLLEGE_MEN;
    double of_height = .41 * level->height, mean = child ? .54 : .67;
    double low = grown || is_at_18(code) ? .9 * of_height : mean - 2 * DEVIATION;
    double high = grown ? 1.1 * of_height : mean + 2 * DEVIATION;
    ck_assert_msg(level->step >= low, "%s: %g under %g", level->word, level->step, low);
    high += is_at_18(code) ? OVER_AT_18 : 0;
    ck_assert_msg(level->step <= high + 1e-9, "%s: %g over %g", level->word, level->step, high);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("rule codes");
    TCase *all = tcase_create("outside");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_step_is_left_behind_who_does_not_see_the_screen, 0, CODES);
    tcase_add_loop_test(all, who_is_closely_guarded_has_five_seconds_where_they_are_counted, 0,
                        CODES);
    tcase_add_loop_test(all, a_normal_step_is_as_long_as_was_measured, 0, LEVEL_COUNT);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
