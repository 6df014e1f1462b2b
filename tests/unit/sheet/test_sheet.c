/* SPDX-License-Identifier: MIT */
#include "page/sheet/bands.h"
#include "page/sheet/head.h"
#include "page/sheet/page.h"
#include "language/tell/tell.h"
#include "suite.h"
#include "written.h"

#include <stdlib.h>
#include <string.h>

static struct fonts *fonts;
static struct playbook book;
static struct sheet_job job;
static struct setter setter;

static void open_setter(void)
{
    open_arena();
    fonts = fonts_create();
    ck_assert_ptr_nonnull(fonts);
    book = (struct playbook){.title = STR("A season")};
    job = (struct sheet_job){.book = &book, .reader = BODY_NONE};
    setter = (struct setter){.arena = &arena, .fonts = fonts, .job = &job};
}

static void close_setter(void)
{
    fonts_destroy(fonts);
    close_arena();
}

/* ---- words ---- */

START_TEST(bold_marks_change_the_face_and_are_not_printed)
{
    double plain = text_width(words_set(&setter, TYPE_SENTENCE, STR("3 cuts"), 0));
    double bold = text_width(words_set(&setter, TYPE_SENTENCE,
                                       STR("\x01"
                                           "3\x02 cuts"),
                                       0));
    double wider =
        metrics_width(FACE_BOLD, 9.5, STR("3")) - metrics_width(FACE_REGULAR, 9.5, STR("3"));
    ck_assert_double_eq_tol(bold - plain, wider, 0.05);
}
END_TEST

START_TEST(no_type_is_under_eight_points)
{
    for (int type = 0; type < TYPE_COUNT; type++) {
        /* a digit of the face is at most 0.67 em wide */
        double digit = text_width(words_set(&setter, (enum type)type, STR("8"), 0));
        ck_assert_double_ge(digit, metrics_width(FACE_REGULAR, 8, STR("8")) - 0.4);
        ck_assert_double_ge(type_leading((enum type)type), 10);
    }
}
END_TEST

START_TEST(clubs_are_set_in_capitals)
{
    ck_assert_str_eq(text_of(words_capitals(&arena, STR("Larkspur Kites"))), "LARKSPUR KITES");
    ck_assert_str_eq(text_of(words_capitals(&arena, STR("Z\xC3\xBCrich \xC3\xB7 2"))),
                     "Z\xC3\x9CRICH \xC3\xB7 2");
}
END_TEST

START_TEST(only_names_that_run_to_the_left_are_set_apart)
{
    ck_assert_str_eq(text_of(words_isolated(&arena, STR("Nguy\xE1\xBB\x85n"))),
                     "Nguy\xE1\xBB\x85n");
    ck_assert_str_eq(text_of(words_isolated(&arena, STR("\xD7\xA9"))),
                     "\xE2\x81\xA8\xD7\xA9\xE2\x81\xA9");
    ck_assert_str_eq(text_of(words_isolated(&arena, STR("\xE6\x9D\x8E"))), "\xE6\x9D\x8E");
}
END_TEST

/* Else the number before it would stand behind it. */
START_TEST(a_point_that_runs_to_the_left_is_set_apart_from_its_player)
{
    const struct point hebrew = {.player = 3, .text = STR("\xD7\xA9")};
    const struct point english = {.player = 3, .text = STR("Wait.")};
    const struct point all = {.text = STR("\xD7\xA9")};
    ck_assert_str_eq(bracketed(words_point(&arena, &hebrew, 5), TELL_BOLD, TELL_PLAIN),
                     "[3]: \xE2\x81\xA8\xD7\xA9\xE2\x81\xA9");
    ck_assert_str_eq(bracketed(words_point(&arena, &english, 5), TELL_BOLD, TELL_PLAIN),
                     "[3]: Wait.");
    ck_assert_str_eq(bracketed(words_point(&arena, &all, 5), TELL_BOLD, TELL_PLAIN), "\xD7\xA9");
}
END_TEST

START_TEST(a_foot_keeps_names_that_run_to_the_left_apart)
{
    const struct play play = {.name = STR("\xD7\xA9"), .series = STR("\xD7\x9C"), .number = 7};
    ck_assert_str_eq(text_of(words_foot(&arena, &play)), "\xE2\x81\xA8\xD7\xA9\xE2\x81\xA9, "
                                                         "\xE2\x81\xA8\xD7\x9C\xE2\x81\xA9 7");
}
END_TEST

START_TEST(a_sheet_names_the_level_that_was_written)
{
    struct play play = {.level = LEVEL_U16, .level_written = true};
    ck_assert_str_eq(text_of(words_sheet(&arena, "Bench card", &play)), "Bench card, under 16");
    play.level_written =
        false; /* then under 16 is what the clock runs by, no word of the coach's */
    ck_assert_str_eq(text_of(words_sheet(&arena, "Bench card", &play)), "Bench card");
}
END_TEST

START_TEST(a_foot_has_series_and_number)
{
    struct play play = {.name = STR("Lantern"), .series = STR("Flex"), .number = 7};
    ck_assert_str_eq(text_of(words_foot(&arena, &play)), "Lantern, Flex 7");
    play.number = 0;
    ck_assert_str_eq(text_of(words_foot(&arena, &play)), "Lantern, Flex");
    play.number = 7;
    play.series = STR("");
    ck_assert_str_eq(text_of(words_foot(&arena, &play)), "Lantern, number 7");
}
END_TEST

START_TEST(a_long_foot_ends_in_whole_words_and_dots)
{
    struct str text = STR("Lantern of the seven long and winding roads down to the canals, Flex 7");
    struct str shown = words_fit(&setter, TYPE_NOTE, text, 120, 1);
    ck_assert(shown.size < text.size);
    ck_assert_str_eq(shown.at + shown.size - 3, "\xE2\x80\xA6");
    ck_assert(text.at[shown.size - 3] == ' ');
    ck_assert(str_equal(words_fit(&setter, TYPE_NOTE, STR("Lantern"), 120, 1), STR("Lantern")));
}
END_TEST

static struct str letters_w(size_t count)
{
    char *at = arena_take(&arena, count + 1);
    memset(at, 'W', count);
    return (struct str){at, count};
}

START_TEST(one_long_word_is_shortened_between_letters)
{
    struct str shown = words_fit(&setter, TYPE_NOTE, letters_w(3500), 120, 2);
    ck_assert_uint_gt(shown.size, 20);
    ck_assert_uint_le(text_lines(words_set(&setter, TYPE_NOTE, shown, 120)), 2);
    struct str accents = STR("\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9");
    for (double width = 10; width < 40; width += 1) {
        shown = words_fit(&setter, TYPE_NOTE, accents, width, 1);
        bool whole = shown.size == accents.size;
        ck_assert_uint_eq((shown.size - (whole ? 0 : 3)) % 2, 0); /* no half letter */
    }
}
END_TEST

static const struct head_words *words_of(const struct play *play)
{
    struct head_words *words = arena_new(&arena, struct head_words);
    *words = head_of_play(&arena, play, STR("Players' sheet"));
    return words;
}

static const struct galley *caution_of(const struct play *play, bool *surplus)
{
    struct caution caution = caution_of_play(play);
    return page_caution(&setter, &caution, surplus);
}

START_TEST(a_long_title_gets_smaller_and_goes_on_in_the_body)
{
    struct play play = {.name = STR("Lantern")};
    struct head head = head_make(&setter, words_of(&play), true);
    double large = text_height(head.shown[HEAD_TITLE]);
    ck_assert_double_eq(large, type_leading(TYPE_TITLE));
    ck_assert_ptr_null(head_surplus(&setter, words_of(&play)));
    play.name = letters_w(60);
    head = head_make(&setter, words_of(&play), true);
    ck_assert(!head.shortened[HEAD_TITLE]);
    double least = type_leading(TYPE_LONGEST_TITLE);
    ck_assert_double_le(text_height(head.shown[HEAD_TITLE]), 3 * least);
    ck_assert_ptr_null(head_surplus(&setter, words_of(&play)));
    play.name = letters_w(3500);
    head = head_make(&setter, words_of(&play), true);
    ck_assert(head.shortened[HEAD_TITLE]);
    ck_assert_double_eq(text_height(head.shown[HEAD_TITLE]), 3 * least);
    ck_assert_ptr_nonnull(head_surplus(&setter, words_of(&play)));
    ck_assert_uint_eq(text_lines(head_make(&setter, words_of(&play), false).shown[HEAD_TITLE]), 1);
}
END_TEST

START_TEST(a_long_date_or_club_stands_in_the_body)
{
    struct play play = {.name = STR("Lantern")};
    job.date_text = letters_w(200);
    ck_assert_uint_eq(text_lines(head_make(&setter, words_of(&play), true).shown[HEAD_DATE]), 1);
    ck_assert_ptr_nonnull(head_surplus(&setter, words_of(&play)));
    job.date_text = STR("Oct 12");
    ck_assert_ptr_null(head_surplus(&setter, words_of(&play)));
    book.team.name = letters_w(500);
    ck_assert_uint_le(text_lines(head_make(&setter, words_of(&play), true).shown[HEAD_CLUB]), 2);
    ck_assert_ptr_nonnull(head_surplus(&setter, words_of(&play)));
}
END_TEST

/* ---- galley ---- */

static struct galley *set_lines(const char *text, double width)
{
    struct galley *galley = galley_new(&arena);
    galley_text(galley, words_set(&setter, TYPE_SENTENCE, str_of(text), width), 0, 10, ROLE_TEXT);
    return galley;
}

static size_t lines_in(const struct galley *galley)
{
    size_t count = 0;
    for (size_t i = 0; i < galley->items.count; i++) {
        count += galley->items.at[i].kind == PLACED_TEXT;
    }
    return count;
}

START_TEST(a_galley_parts_between_lines)
{
    struct galley *galley = set_lines("a\nb\nc\nd\ne", 100);
    double whole = galley->height;
    struct galley *rest = galley_part(galley, 40);
    ck_assert_ptr_nonnull(rest);
    ck_assert_uint_eq(lines_in(galley), 3); /* baselines 10, 22.6, 35.2 and 3 below: 38.2 */
    ck_assert_uint_eq(lines_in(rest), 2);
    ck_assert_double_le(galley->height, 40);
    ck_assert_double_eq_tol(rest->items.at[0].y, 8, 1e-9); /* its first letters stand at the top */
    ck_assert_double_lt(rest->height, whole - galley->height + 1);
}
END_TEST

START_TEST(a_heading_goes_with_what_it_heads)
{
    struct galley *galley = set_lines("a\nb", 100);
    galley_text(galley, words_set(&setter, TYPE_HEADING, STR("Goal"), 0), 0, 40, ROLE_TEXT);
    galley_keep(galley);
    galley_text(galley, words_set(&setter, TYPE_SENTENCE, STR("c"), 0), 0, 55, ROLE_TEXT);
    struct galley *rest = galley_part(galley, 50);
    ck_assert_ptr_nonnull(rest);
    ck_assert_uint_eq(lines_in(galley), 2);
    ck_assert_uint_eq(lines_in(rest), 2);
}
END_TEST

START_TEST(a_rule_beside_parted_lines_goes_on_beside_them)
{
    struct galley *galley = set_lines("a\nb\nc\nd", 100);
    galley_rule(galley, vec2_of(-5, 3), vec2_of(-5, 50), 1.1, ROLE_INK);
    struct galley *rest = galley_part(galley, 30);
    ck_assert_ptr_nonnull(rest);
    const struct placed *above = &galley->items.at[galley->items.count - 1];
    const struct placed *below = &rest->items.at[rest->items.count - 1];
    ck_assert_int_eq(above->kind, PLACED_RULE);
    ck_assert_double_eq(above->y, 3);
    ck_assert_double_eq_tol(above->y2, 25.6, 1e-9);
    ck_assert_int_eq(below->kind, PLACED_RULE);
    ck_assert_double_eq_tol(below->y, 0, 1e-9);
    ck_assert_double_eq_tol(below->y2, 50 - 27.2,
                            1e-9); /* from the top of the third line's letters */
}
END_TEST

START_TEST(what_cannot_be_parted_is_left_whole)
{
    struct galley *galley = set_lines("a\nb", 100);
    ck_assert_ptr_null(galley_part(galley, 5));
    ck_assert_uint_eq(lines_in(galley), 2);
}
END_TEST

START_TEST(columns_side_by_side_part_at_one_height)
{
    struct galley *galley = set_lines("a\nb\nc\nd\ne\nf", 100);
    galley_join(galley, set_lines("g\nh\ni\nj", 100), 200, 4);
    struct galley *rest = galley_part(galley, 45);
    ck_assert_ptr_nonnull(rest);
    ck_assert_uint_eq(lines_in(galley), 3 + 3);
    ck_assert_uint_eq(lines_in(rest), 3 + 1);
    for (size_t i = 0; i < rest->items.count; i++) {
        ck_assert_double_ge(rest->items.at[i].top, -1e-9);
    }
}
END_TEST

START_TEST(a_later_band_is_lowered_and_the_earlier_stays)
{
    struct galley *galley = set_lines("a", 100);
    size_t start = galley->items.count;
    galley_join(galley, set_lines("b", 100), 0, 30);
    double first = galley->items.at[0].y;
    double second = galley->items.at[start].y;
    double height = galley->height;
    galley_lower(galley, start, 7);
    ck_assert_double_eq(galley->items.at[0].y, first);
    ck_assert_double_eq(galley->items.at[start].y, second + 7);
    ck_assert_double_eq(galley->height, height + 7);
}
END_TEST

/* ---- pages ---- */

static struct play short_play(void)
{
    return (struct play){
        .name = STR("Lantern"), .level = LEVEL_U16_GIRLS, .rules = COURT_HIGH_SCHOOL};
}

START_TEST(every_grid_fits_the_page)
{
    static const int known[] = {1, 2, 4, 6, 9};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        const struct grid *grid = grid_find(known[i]);
        ck_assert_ptr_nonnull(grid);
        ck_assert_int_eq(grid->across * grid->rows, known[i]);
        ck_assert_double_le(grid->across * grid->column, PAGE_WIDE);
        ck_assert_double_le(grid->diagram, grid->column);
    }
    ck_assert_ptr_eq(grid_find(0), grid_find(4));
    ck_assert_ptr_null(grid_find(3));
    ck_assert_ptr_null(grid_find(-1));
}
END_TEST

START_TEST(caution_lines_push_the_body_up)
{
    struct play play = short_play();
    bool surplus;
    const struct galley *two = caution_of(&play, &surplus);
    ck_assert(!surplus);
    double bottom = page_open(&setter, words_of(&play), two, true).bottom;
    ck_assert_double_eq_tol(two->height, 11, 1e-9);
    VEC_PUSH(&arena, &play.cautions, STR("Mats away."));
    play.level = LEVEL_U12;
    const struct galley *four = caution_of(&play, &surplus);
    ck_assert(!surplus);
    ck_assert_double_eq_tol(page_open(&setter, words_of(&play), four, true).bottom, bottom - 22,
                            1e-9);
}
END_TEST

START_TEST(a_coach_with_much_to_say_does_not_fill_the_foot)
{
    struct play play = short_play();
    for (int i = 0; i < 7; i++) {
        VEC_PUSH(&arena, &play.cautions, STR("One more line."));
    }
    bool surplus;
    const struct galley *caution = caution_of(&play, &surplus);
    ck_assert(surplus);
    ck_assert_double_eq_tol(caution->height, 11, 1e-9);
}
END_TEST

START_TEST(without_an_about_line_the_body_starts_higher)
{
    struct play play = short_play();
    bool surplus;
    const struct galley *caution = caution_of(&play, &surplus);
    double bare = page_open(&setter, words_of(&play), caution, true).y;
    play.about = STR("Swing the ball.");
    ck_assert_double_eq_tol(page_open(&setter, words_of(&play), caution, true).y, bare + 17, 1e-9);
}
END_TEST

START_TEST(a4_keeps_the_columns_and_lowers_the_foot)
{
    struct play play = short_play();
    bool surplus;
    const struct galley *caution = caution_of(&play, &surplus);
    double letter = page_open(&setter, words_of(&play), caution, true).bottom;
    job.a4 = true;
    ck_assert_double_eq_tol(page_open(&setter, words_of(&play), caution, true).bottom,
                            letter + 49.89, 1e-9);
    const struct paper *paper = paper_of(true);
    ck_assert_double_eq_tol(paper->width - 2 * paper->margin, PAGE_WIDE, 1e-9);
}
END_TEST

START_TEST(the_club_else_the_book_heads_a_page)
{
    ck_assert(str_is(head_club(&job), "A season"));
    book.team.name = STR("Larkspur Kites");
    ck_assert(str_is(head_club(&job), "Larkspur Kites"));
}
END_TEST

/* ---- table ---- */

START_TEST(sheets_are_found_by_their_word)
{
    ck_assert_uint_ge(sheet_count(), 1);
    for (size_t i = 0; i < sheet_count(); i++) {
        ck_assert_ptr_eq(sheet_find(str_of(sheet_at(i)->word)), sheet_at(i));
    }
    ck_assert_ptr_null(sheet_find(STR("hand")));
    ck_assert_ptr_null(sheet_at(sheet_count()));
}
END_TEST

static void add_tests(TCase *all)
{
    tcase_add_test(all, bold_marks_change_the_face_and_are_not_printed);
    tcase_add_test(all, no_type_is_under_eight_points);
    tcase_add_test(all, clubs_are_set_in_capitals);
    tcase_add_test(all, only_names_that_run_to_the_left_are_set_apart);
    tcase_add_test(all, a_point_that_runs_to_the_left_is_set_apart_from_its_player);
    tcase_add_test(all, a_foot_keeps_names_that_run_to_the_left_apart);
    tcase_add_test(all, a_sheet_names_the_level_that_was_written);
    tcase_add_test(all, a_foot_has_series_and_number);
    tcase_add_test(all, a_long_foot_ends_in_whole_words_and_dots);
    tcase_add_test(all, one_long_word_is_shortened_between_letters);
    tcase_add_test(all, a_long_title_gets_smaller_and_goes_on_in_the_body);
    tcase_add_test(all, a_long_date_or_club_stands_in_the_body);
    tcase_add_test(all, a_galley_parts_between_lines);
    tcase_add_test(all, a_heading_goes_with_what_it_heads);
    tcase_add_test(all, a_rule_beside_parted_lines_goes_on_beside_them);
    tcase_add_test(all, what_cannot_be_parted_is_left_whole);
    tcase_add_test(all, columns_side_by_side_part_at_one_height);
    tcase_add_test(all, a_later_band_is_lowered_and_the_earlier_stays);
    tcase_add_test(all, every_grid_fits_the_page);
    tcase_add_test(all, caution_lines_push_the_body_up);
    tcase_add_test(all, a_coach_with_much_to_say_does_not_fill_the_foot);
    tcase_add_test(all, without_an_about_line_the_body_starts_higher);
    tcase_add_test(all, a4_keeps_the_columns_and_lowers_the_foot);
    tcase_add_test(all, the_club_else_the_book_heads_a_page);
    tcase_add_test(all, sheets_are_found_by_their_word);
}

int main(void)
{
    Suite *suite = suite_create("sheet");
    TCase *all = tcase_create("sheet");
    tcase_add_checked_fixture(all, open_setter, close_setter);
    add_tests(all);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
