/* SPDX-License-Identifier: MIT */
#include "language/tell/tell.h"
#include "suite.h"
#include "written.h"

#include <string.h>

struct bold_case {
    const char *text, *wanted;
};

static const struct bold_case bold_cases[] = {
    {"brush shoulders with 5", "brush shoulders with [5]"},
    {"3 and 4: stay deep", "[3] and [4]: stay deep"},
    {"If 3 is open, pass.", "If [3] is open, pass."},
    {"See 2a, 2b and 2c", "See 2a, 2b and 2c"},
    {"Take 2 dribbles", "Take 2 dribbles"},
    {"Stay 3 ft away for 2 seconds", "Stay 3 ft away for 2 seconds"},
    {"a 2-3 zone, 3-on-0, 4.5 or 3:00", "a 2-3 zone, 3-on-0, 4.5 or 3:00"},
    {"8 of 10", "8 of 10"}, /* five players */
    {"x3 trails", "x3 trails"},
    {"(5) \"4\" 3.", "([5]) \"[4]\" [3]."},
    {"25 and 1234", "25 and 1234"},
    {"", ""},
};

START_TEST(players_numbers_are_bold_and_counts_are_not)
{
    const struct bold_case *row = &bold_cases[_i];
    ck_assert_str_eq(bracketed(tell_bold(&arena, str_of(row->text), 5), TELL_BOLD, TELL_PLAIN),
                     row->wanted);
}
END_TEST

START_TEST(defenders_are_found_where_words_speak_of_them)
{
    struct play play = {.players = 5, .goal = STR("8 of 10, x2 beaten")};
    struct step step = {.number = 1};
    struct branch branch = {.kind = BRANCH_READ, .title = STR("Curl")};
    struct condition condition = {
        .kind = COND_VERB, .verb = VERB_TRAILS, .who = {.kind = WHO_DEFENDER, .number = 3}};
    struct point one = {.text = STR("Look at x5, not box1 or 4x4.")};
    VEC_PUSH(&arena, &branch.conditions, condition);
    VEC_PUSH(&arena, &step.branches, branch);
    VEC_PUSH(&arena, &step.points, one);
    VEC_PUSH(&arena, &play.steps, step);
    ck_assert_uint_eq(tell_spoken_of(&arena, &play), 1u << 2 | 1u << 3 | 1u << 5);
}
END_TEST

START_TEST(levels_are_told_in_words)
{
    ck_assert_str_eq(text_of(tell_level(&arena, LEVEL_U16_GIRLS)), "under 16 girls");
    ck_assert_str_eq(text_of(tell_level(&arena, LEVEL_JV_BOYS)), "JV boys");
    ck_assert_str_eq(text_of(tell_level(&arena, LEVEL_MIDDLE_SCHOOL)), "middle school");
}
END_TEST

START_TEST(series_and_number_stand_together_or_alone)
{
    struct play play = {.name = STR("Lantern"), .series = STR("Flex"), .number = 7};
    ck_assert_str_eq(text_of(tell_series(&arena, &play)), "Flex, number 7");
    play.number = 0;
    ck_assert_str_eq(text_of(tell_series(&arena, &play)), "Flex");
    play.number = 7;
    play.series = STR("");
    ck_assert_str_eq(text_of(tell_series(&arena, &play)), "Number 7");
}
END_TEST

enum branch_is { READ, OPTION };

static void add_read(struct step *step, enum branch_is is, int decider, int doer)
{
    struct branch branch = {.kind = is == READ ? BRANCH_READ : BRANCH_OPTION};
    struct condition condition = {.kind = COND_VERB,
                                  .who = {.kind = WHO_DEFENDER, .number = decider}};
    struct task task = {.who = body_attacker(doer)};
    if (is == READ) {
        VEC_PUSH(&arena, &branch.conditions, condition);
    }
    VEC_PUSH(&arena, &branch.tasks, task);
    VEC_PUSH(&arena, &step->branches, branch);
}

static void tasks_add(struct branch *branch, enum task_kind kind, int who, int other)
{
    struct task task = {.kind = kind, .who = body_attacker(who)};
    task.other = other > 0 ? body_attacker(other) : BODY_NONE;
    VEC_PUSH(&arena, &branch->tasks, task);
}

START_TEST(reads_tell_who_decides)
{
    struct play play = {.players = 5};
    struct step step = {.number = 2};
    add_read(&step, READ, 3, 3);
    add_read(&step, READ, 3, 3);
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)),
                     "Step 2: what x3 does decides what 3 does");
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, body_attacker(3))),
                     "Step 2: what x3 does decides what you do");
    add_read(&step, READ, 5, 4);
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)),
                     "Step 2: what x3 and x5 do decides what 3 and 4 do");
    add_read(&step, READ, 5, 1);
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)),
                     "Step 2: what x3 and x5 do decides what comes next");
}
END_TEST

/* "5 comes off 4" begins every way; what they are about is who gets the ball. */
START_TEST(who_answers_a_read_is_who_moves_and_gets_the_ball)
{
    struct play play = {.players = 5};
    struct step step = {.number = 1};
    for (int i = 0; i < 2; i++) {
        add_read(&step, READ, 4, 5);
        tasks_add(&step.branches.at[i], TASK_MOVE, 4 - i, 0);
        tasks_add(&step.branches.at[i], TASK_PASS, 3, 4 - i);
    }
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)),
                     "Step 1: what x4 does decides what 3 and 4 do");
}
END_TEST

START_TEST(a_player_who_is_denied_is_decided_by_the_guard)
{
    struct play play = {.players = 5};
    for (int i = 0; i < BODY_COUNT; i++) {
        play.guards[i] = BODY_NONE;
    }
    play.guards[body_defender(5)] = body_attacker(2);
    struct step step = {.number = 1};
    add_read(&step, READ, 5, 2);
    step.branches.at[0].conditions.at[0] =
        (struct condition){.kind = COND_DENIED, .who = {.kind = WHO_PLAYER, .number = 2}};
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)),
                     "Step 1: what x5 does decides what 2 does");
}
END_TEST

START_TEST(options_are_the_ways_on)
{
    struct play play = {.players = 5};
    struct step step = {.number = 4};
    add_read(&step, OPTION, 0, 3);
    ck_assert_str_eq(text_of(tell_decides(&arena, &play, &step, BODY_NONE)), "Step 4: the ways on");
    ck_assert_str_eq(text_of(tell_decides_here(&arena, &play, &step, BODY_NONE)), "Way on: 4a.");
    add_read(&step, OPTION, 0, 1);
    ck_assert_str_eq(text_of(tell_decides_here(&arena, &play, &step, BODY_NONE)),
                     "Ways on: 4a or 4b.");
}
END_TEST

START_TEST(the_caution_names_what_it_stands_on)
{
    const char *line = text_of(tell_page_caution(&arena, 1, "page"));
    ck_assert_str_eq(line + strlen(line) - 23, " come before this page.");
    struct play play = {.level = LEVEL_U12};
    ck_assert(tell_is_young(&play));
    play = (struct play){.level = LEVEL_U16, .rules = COURT_MINI};
    ck_assert(tell_is_young(&play));
    play.rules = COURT_HIGH_SCHOOL;
    ck_assert(!tell_is_young(&play));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("about");
    TCase *all = tcase_create("about");
    const int cases = sizeof bold_cases / sizeof *bold_cases;
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, players_numbers_are_bold_and_counts_are_not, 0, cases);
    tcase_add_test(all, levels_are_told_in_words);
    tcase_add_test(all, defenders_are_found_where_words_speak_of_them);
    tcase_add_test(all, series_and_number_stand_together_or_alone);
    tcase_add_test(all, reads_tell_who_decides);
    tcase_add_test(all, who_answers_a_read_is_who_moves_and_gets_the_ball);
    tcase_add_test(all, a_player_who_is_denied_is_decided_by_the_guard);
    tcase_add_test(all, options_are_the_ways_on);
    tcase_add_test(all, the_caution_names_what_it_stands_on);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
