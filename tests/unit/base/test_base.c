/* SPDX-License-Identifier: MIT */
#include "base/names.h"
#include "base/arena.h"
#include "base/diag.h"
#include "base/str.h"
#include "suite.h"

#include <string.h>

static void printed(double value, int decimals, const char *wanted)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    strbuf_number(&out, value, decimals);
    ck_assert_str_eq(out.at, wanted);
}

START_TEST(numbers_are_short_and_plain)
{
    printed(0, 3, "0");
    printed(-0.0001, 3, "0");
    printed(1.5, 3, "1.5");
    printed(-12.345678, 2, "-12.35");
    printed(0.05, 2, "0.05");
    printed(100, 0, "100");
    printed(100, 2, "100");
    printed(0.999, 2, "1");
}
END_TEST

START_TEST(slugs_make_file_names)
{
    ck_assert_str_eq(str_slug(&arena, STR("Down 2! (left)")).at, "down-2-left");
    ck_assert(str_is(str_slug(&arena, STR("!!")), "play"));
    ck_assert(str_is(str_slug(&arena, STR("a\xE2\x80\xAE"
                                          "b\xC3\xA9")),
                     "a-b\xC3\xA9"));
}
END_TEST

START_TEST(places_count_code_points)
{
    struct sources sources;
    sources_init(&sources, &arena);
    uint32_t id = sources_add(&sources, STR("a"), STR("\xEF\xBB\xBF\xC3\xA9x\r\nsecond"));
    struct place_in_source place = source_place(&sources.all.at[id], 5);
    ck_assert_uint_eq(place.line, 1);
    ck_assert_uint_eq(place.column, 2);
    ck_assert(str_is(source_line(&sources.all.at[id], 2), "second"));
}
END_TEST

START_TEST(a_line_ends_with_lf_crlf_or_cr_and_never_behind_the_text)
{
    static const struct {
        const char *text;
        size_t lines, last; /* where the last one begins */
    } rows[] = {{"", 1, 0},          {"a", 1, 0},        {"a\n", 2, 2},
                {"a\r", 2, 2},       {"a\r\n", 2, 3},    {"a\n\r", 3, 3},
                {"a\rb\nc\r", 4, 6}, {"\r\r\n\n", 4, 4}, {"a\r\nb\r", 3, 5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct sources sources;
        sources_init(&sources, &arena);
        uint32_t id = sources_add(&sources, STR("a"), str_of(rows[i].text));
        const struct source *source = &sources.all.at[id];
        ck_assert_uint_eq(source->line_starts.count, rows[i].lines);
        ck_assert_uint_eq(source->line_starts.at[rows[i].lines - 1], rows[i].last);
    }
}
END_TEST

START_TEST(distances_count_slips_of_the_fingers)
{
    static const struct {
        const char *a, *b;
        size_t distance;
    } rows[] = {
        {"", "", 0},
        {"", "ab", 2},
        {"step", "step", 0},
        {"lvel", "level", 1},
        {"levvel", "level", 1},
        {"lebel", "level", 1},
        {"tralis", "trails", 1},
        {"tralis", "traps", 2},
        {"ab", "ba", 1},
        {"kitten", "sitting", 3},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_uint_eq(str_distance(str_of(rows[i].a), str_of(rows[i].b), 5), rows[i].distance);
        ck_assert_uint_eq(str_distance(str_of(rows[i].b), str_of(rows[i].a), 5), rows[i].distance);
    }
    ck_assert_uint_eq(str_distance(STR("kitten"), STR("sitting"), 2), 3);
}
END_TEST

START_TEST(names_are_found_whatever_their_capitals)
{
    struct names names = {0};
    ck_assert(names_find(&names, STR("Lantern")) == NAME_NONE);
    for (size_t i = 0; i < 1000; i++) {
        names_add(&arena, &names, str_format(&arena, "Lantern %zu", i), i);
    }
    names_add(&arena, &names, STR(""), 1000);
    names_add(&arena, &names, STR("LANTERN 7"), 1001); /* keeps its first number */
    for (size_t i = 0; i < 1000; i++) {
        ck_assert_uint_eq(names_find(&names, str_format(&arena, "lanTERN %zu", i)), i);
    }
    ck_assert_uint_eq(names_find(&names, STR("")), 1000);
    ck_assert_uint_eq(names.count, 1001);
    ck_assert(names_find(&names, STR("Lantern 1000")) == NAME_NONE);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("base");
    TCase *all = tcase_create("base");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, numbers_are_short_and_plain);
    tcase_add_test(all, slugs_make_file_names);
    tcase_add_test(all, places_count_code_points);
    tcase_add_test(all, a_line_ends_with_lf_crlf_or_cr_and_never_behind_the_text);
    tcase_add_test(all, distances_count_slips_of_the_fingers);
    tcase_add_test(all, names_are_found_whatever_their_capitals);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
