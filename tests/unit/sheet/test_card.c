/* SPDX-License-Identifier: MIT */
/* Which situation a play belongs to. */
#include "page/sheet/situation.h"
#include "suite.h"

static struct play play;
static const struct court *court;

static void open_play(void)
{
    open_arena();
    court = court_of(COURT_HIGH_SCHOOL);
    play = (struct play){.name = STR("Lantern"), .court = court, .ball = body_attacker(1)};
}

static void tag(const char *word)
{
    VEC_PUSH(&arena, &play.tags, str_of(word));
}

static const char *word_of(void)
{
    return str_copy(&arena, situation_of(&arena, &play).word).at;
}

/* Of a play with this tag alone. */
static const char *word_of_tag(const char *word)
{
    play.tags.count = 0;
    tag(word);
    return word_of();
}

START_TEST(what_is_special_goes_before_how_they_defend)
{
    tag("man");
    tag("Late Clock");
    ck_assert_str_eq(word_of(), "Late clock, man");
}
END_TEST

START_TEST(trade_words_mean_the_same)
{
    ck_assert_str_eq(word_of_tag("BLOB"), "Baseline");
    ck_assert_str_eq(word_of_tag("slob"), "Sideline");
    ck_assert_str_eq(word_of_tag("ATO"), "After time-out");
}
END_TEST

START_TEST(a_tag_of_the_coachs_own_is_its_own_group)
{
    tag("man");
    tag("quick hitter");
    ck_assert_str_eq(word_of(), "Quick hitter");
    ck_assert_uint_eq(situation_of(&arena, &play).order, situation_count());
    tag("blob");
    ck_assert_str_eq(word_of(), "Baseline, man");
}
END_TEST

START_TEST(part_of_a_word_is_not_the_word)
{
    ck_assert_str_eq(word_of_tag("mandarin"), "Mandarin");
    ck_assert_str_eq(word_of_tag("la"), "La");
}
END_TEST

START_TEST(without_tags_a_throw_in_tells_where_it_is)
{
    play.throw_in = true;
    play.start[play.ball].at = vec2_of(2, court->baseline - 0.7);
    ck_assert_str_eq(word_of(), "Baseline");
    play.start[play.ball].at = vec2_of(-court->half_width - 0.7, 5);
    ck_assert_str_eq(word_of(), "Sideline");
    play.start[play.ball].at = vec2_of(court->half_width + 0.7, 5);
    ck_assert_str_eq(word_of(), "Sideline");
}
END_TEST

START_TEST(without_tags_clock_and_defense_tell)
{
    ck_assert_str_eq(word_of(), "Other plays");
    play.defense = DEFENSE_MAN;
    ck_assert_str_eq(word_of(), "Man");
    play.defense = DEFENSE_ZONE;
    ck_assert_str_eq(word_of(), "Against zone");
    play.defense = DEFENSE_PRESS;
    ck_assert_str_eq(word_of(), "Press");
    play.clock = 6;
    ck_assert_str_eq(word_of(), "Late clock");
    play = (struct play){.court = court, .is_drill = true};
    ck_assert_str_eq(word_of(), "Drills");
}
END_TEST

static size_t order_of_tag(const char *word)
{
    play.tags.count = 0;
    tag(word);
    return situation_of(&arena, &play).order;
}

START_TEST(all_tags_of_ours_are_named_in_the_coachs_order)
{
    tag("man");
    tag("zone");
    ck_assert_str_eq(word_of(), "Man, against zone");
    ck_assert_uint_eq(situation_of(&arena, &play).order, order_of_tag("man"));
}
END_TEST

START_TEST(what_is_looked_for_in_a_hurry_stands_first)
{
    static const char *const words[] = {"baseline",   "sideline", "after time-out",
                                        "late clock", "press",    "against zone",
                                        "man",        "own word"};
    for (size_t i = 1; i < sizeof words / sizeof *words; i++) {
        ck_assert_msg(order_of_tag(words[i - 1]) < order_of_tag(words[i]), "%s", words[i]);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("card");
    TCase *all = tcase_create("card");
    tcase_add_checked_fixture(all, open_play, close_arena);
    tcase_add_test(all, what_is_special_goes_before_how_they_defend);
    tcase_add_test(all, trade_words_mean_the_same);
    tcase_add_test(all, a_tag_of_the_coachs_own_is_its_own_group);
    tcase_add_test(all, part_of_a_word_is_not_the_word);
    tcase_add_test(all, without_tags_a_throw_in_tells_where_it_is);
    tcase_add_test(all, without_tags_clock_and_defense_tell);
    tcase_add_test(all, all_tags_of_ours_are_named_in_the_coachs_order);
    tcase_add_test(all, what_is_looked_for_in_a_hurry_stands_first);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
