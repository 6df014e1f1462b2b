/* SPDX-License-Identifier: MIT */
#include "picture/metrics/metrics.h"
#include "suite.h"

/* The widths wanted are those FreeType gives (FT_LOAD_NO_SCALE) for Inter 4.0 beta 7: an em is 2816
 * of its units. */
static void wide(enum face face, struct str text, double units)
{
    ck_assert_double_eq_tol(metrics_width(face, 2816, text), units, 1e-6);
}

START_TEST(a_digit_is_as_wide_as_the_face_says)
{
    wide(FACE_REGULAR, STR("3"), 1792);
    wide(FACE_BOLD, STR("3"), 1857);
}
END_TEST

START_TEST(letters_of_a_word_add_up)
{
    double parts = 0;
    for (size_t i = 0; i < 4; i++) {
        parts += metrics_width(FACE_MEDIUM, 10, (struct str){&"Kite"[i], 1});
    }
    ck_assert_double_eq_tol(metrics_width(FACE_MEDIUM, 10, STR("Kite")), parts, 1e-9);
    ck_assert_double_eq(metrics_width(FACE_MEDIUM, 10, STR("")), 0);
}
END_TEST

START_TEST(width_grows_with_the_size)
{
    double once = metrics_width(FACE_REGULAR, 9.5, STR("screens for"));
    ck_assert_double_eq_tol(metrics_width(FACE_REGULAR, 19, STR("screens for")), 2 * once, 1e-9);
    ck_assert_double_gt(metrics_width(FACE_EXTRABOLD, 9.5, STR("screens for")), once);
}
END_TEST

START_TEST(accents_and_dashes_are_in_the_table)
{
    ck_assert_double_eq(metrics_width(FACE_REGULAR, 10, STR("\xC3\xA9")),
                        metrics_width(FACE_REGULAR, 10, STR("e")));               /* é */
    ck_assert_double_lt(metrics_width(FACE_REGULAR, 10, STR("\xE2\x80\x99")), 5); /* ’ */
    ck_assert_double_lt(metrics_width(FACE_REGULAR, 10, STR("\xC5\x82")), 5);     /* ł */
}
END_TEST

START_TEST(a_letter_outside_the_table_counts_as_an_em)
{
    ck_assert_double_eq(metrics_width(FACE_REGULAR, 10, STR("\xE7\x90\x83")), 10); /* 球 */
    ck_assert_double_eq(metrics_width(FACE_REGULAR, 10, STR("\xF0\x9F\x8F\x80")), 10);
}
END_TEST

START_TEST(bytes_that_are_no_letter_count_one_by_one)
{
    struct str rest = STR("\xC3(\xFF"
                          "a\xE2\x82\xED\xA0\x80\xC0\xAF");
    static const unsigned wanted[] = {0xFFFD, '(',    0xFFFD, 'a',    0xFFFD, 0xFFFD,
                                      0xFFFD, 0xFFFD, 0xFFFD, 0xFFFD, 0xFFFD};
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        ck_assert_uint_gt(rest.size, 0);
        ck_assert_uint_eq(metrics_letter(&rest), wanted[i]);
    }
    ck_assert_uint_eq(rest.size, 0);
}
END_TEST

START_TEST(weights_climb_by_hundreds)
{
    for (int face = 0; face < FACE_COUNT; face++) {
        ck_assert_int_eq(metrics_weight((enum face)face), 400 + 100 * face);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("metrics");
    TCase *all = tcase_create("metrics");
    tcase_add_test(all, a_digit_is_as_wide_as_the_face_says);
    tcase_add_test(all, letters_of_a_word_add_up);
    tcase_add_test(all, width_grows_with_the_size);
    tcase_add_test(all, accents_and_dashes_are_in_the_table);
    tcase_add_test(all, a_letter_outside_the_table_counts_as_an_em);
    tcase_add_test(all, bytes_that_are_no_letter_count_one_by_one);
    tcase_add_test(all, weights_climb_by_hundreds);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
