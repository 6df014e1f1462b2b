/* SPDX-License-Identifier: MIT */
/* Words that point back to what stands above: printed as what they mean. */
#include "said.h"

START_TEST(words_that_point_back_are_printed_as_what_they_mean)
{
    check_pairs(back, false);
}
END_TEST
static const char lines_written[] = "play \"Lantern\"\n"
                                    "  defense man\n"
                                    "  x2 guards 4\n"
                                    "  step\n"
                                    "    1 passes to 2\n"
                                    "    on the catch, 3 cuts to the rim\n"
                                    "    1 follows the pass\n"
                                    "    his defender trails\n"
                                    "    5 screens for 3\n"
                                    "    5 screens x2\n"
                                    "  step\n"
                                    "    3 uses the screen and curls\n"
                                    "    read x3 trails\n"
                                    "      1 passes to 3. After the pass 2 lifts to top\n";
static const char lines_tidied[] = "play \"Lantern\"\n"
                                   "  defense man\n"
                                   "  x2 guards 4\n"
                                   "  step\n"
                                   "    1 passes to 2\n"
                                   "    as 2 catches, 3 cuts to the rim\n"
                                   "    1 goes beside 2\n"
                                   "    1's defender trails\n"
                                   "    5 screens for 3\n"
                                   "    5 screens for 4\n"
                                   "  step\n"
                                   "    3 curls off 5\n"
                                   "    read x3 trails\n"
                                   "      1 passes to 3\n"
                                   "      after 1 passes, 2 lifts to top\n";

START_TEST(words_point_back_over_lines_and_steps_but_the_pass_not_over_steps)
{
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), str_of(lines_written));
    struct book *book = book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_msg(diags.all.count == 0, "%s", complaint());
    ck_assert_str_eq(str_copy(&arena, tidy_book(&arena, &sources, book)).at, lines_tidied);

    static const char lost[] = "play \"Lantern\"\n"
                               "  step\n"
                               "    1 passes to 2\n"
                               "  step\n"
                               "    on the pass, 3 cuts to the rim\n";
    source = sources_add(&sources, STR("b.play"), str_of(lost));
    book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_uint_eq(diags.all.count, 1);
    ck_assert_str_eq(diags.all.at[0].row->id, "text.points-back");

    static const char zone[] = "play \"Lantern\"\n"
                               "  defense zone 2-3\n"
                               "  5 screens x2\n"
                               "  5 screens for 4 on x2\n";
    diags_init(&diags, &arena);
    source = sources_add(&sources, STR("c.play"), str_of(zone));
    book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_uint_eq(diags.all.count, 1);
    ck_assert_str_eq(diags.all.at[0].row->id, "text.object-unfit");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("back");
    TCase *all = tcase_create("back");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, words_that_point_back_are_printed_as_what_they_mean);
    tcase_add_test(all, words_point_back_over_lines_and_steps_but_the_pass_not_over_steps);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
