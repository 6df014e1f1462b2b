/* SPDX-License-Identifier: MIT */
/* The man rules against the positions they were tuned to. Those are ours and no published check:
 * the test holds the rules where they are. Feet, as a coach would read them. */
#include "floor/defense/defense.h"

#include <math.h>

#include "base/real.h"
#include "suite.h"

struct row {
    const char *what;
    enum man_style style;
    double man[2], ball[2], at[2];
};

static const struct vec2 none = {0, 0};

static struct vec2 stand(enum man_style style, const double man[2], const double ball[2])
{
    struct vec2 m = vec2_of(man[0] * FEET, man[1] * FEET),
                b = vec2_of(ball[0] * FEET, ball[1] * FEET);
    bool has = man[0] == ball[0] && man[1] == ball[1];
    return vec2_scale(defense_man(court_of(COURT_HIGH_SCHOOL), style, m, b, has), 1 / FEET);
}

static void check_rows(const struct row *rows, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct vec2 p = stand(rows[i].style, rows[i].man, rows[i].ball);
        ck_assert_msg(fabs(p.x - rows[i].at[0]) < .11 && fabs(p.y - rows[i].at[1]) < .11,
                      "%s: stands at %.2f, %.2f, not %.1f, %.1f", rows[i].what, p.x, p.y,
                      rows[i].at[0], rows[i].at[1]);
    }
}

#define TOP                                                                                        \
    {                                                                                              \
        0, 24.5                                                                                    \
    }
#define RIGHT_WING                                                                                 \
    {                                                                                              \
        17, 17                                                                                     \
    }
#define LEFT_WING                                                                                  \
    {                                                                                              \
        -17, 17                                                                                    \
    }
#define RIGHT_CORNER                                                                               \
    {                                                                                              \
        22, 0                                                                                      \
    }
#define LEFT_CORNER                                                                                \
    {                                                                                              \
        -22, 0                                                                                     \
    }
#define RIGHT_SLOT                                                                                 \
    {                                                                                              \
        9, 23                                                                                      \
    }
#define LEFT_SLOT                                                                                  \
    {                                                                                              \
        -9, 23                                                                                     \
    }

START_TEST(five_out_stands_as_it_was_tuned)
{
    static const struct row rows[] = {
        {"on the ball at the top", MAN_GAP, TOP, TOP, {0, 21.2}},
        {"right wing, ball top", MAN_GAP, RIGHT_WING, TOP, {9.4, 16.8}},
        {"right corner, ball top", MAN_GAP, RIGHT_CORNER, TOP, {8.3, 7.6}},
        {"left corner, ball top", MAN_GAP, LEFT_CORNER, TOP, {-8.3, 7.6}},
        {"top, ball right wing", MAN_GAP, TOP, RIGHT_WING, {5.1, 18.7}},
        {"on the ball at the wing", MAN_GAP, RIGHT_WING, RIGHT_WING, {14.7, 14.7}},
        {"left wing, ball right wing", MAN_GAP, LEFT_WING, RIGHT_WING, {-1.0, 11.8}},
        {"right corner, ball right wing", MAN_GAP, RIGHT_CORNER, RIGHT_WING, {17.1, 5.0}},
        {"left corner, ball right wing", MAN_GAP, LEFT_CORNER, RIGHT_WING, {-.9, 5.7}},
        {"top, ball right corner", MAN_GAP, TOP, RIGHT_CORNER, {5.3, 11.1}},
        {"right wing, ball right corner", MAN_GAP, RIGHT_WING, RIGHT_CORNER, {15.9, 9.4}},
        {"left wing, ball right corner", MAN_GAP, LEFT_WING, RIGHT_CORNER, {-1.0, 6.7}},
        {"on the ball in the corner", MAN_GAP, RIGHT_CORNER, RIGHT_CORNER, {18.7, 0}},
        /* nobody under the ring */
        {"left corner, ball right corner", MAN_GAP, LEFT_CORNER, RIGHT_CORNER, {-.1, 4}}};
    check_rows(rows, sizeof rows / sizeof *rows);
}
END_TEST

START_TEST(four_out_and_the_post_stand_as_they_were_tuned)
{
    static const struct row rows[] = {
        {"right corner, ball right slot", MAN_GAP, RIGHT_CORNER, RIGHT_SLOT, {15.2, 5.5}},
        {"left slot, ball right slot", MAN_GAP, LEFT_SLOT, RIGHT_SLOT, {-2.3, 19.7}},
        {"left corner, ball right slot", MAN_GAP, LEFT_CORNER, RIGHT_SLOT, {-1.5, 10.1}},
        {"right block, ball right slot", MAN_GAP, {6, 2}, RIGHT_SLOT, {5.3, 4.0}},
        {"right block, ball right corner", MAN_GAP, {6, 2}, RIGHT_CORNER, {7.9, 1.1}},
        {"post, ball top", MAN_GAP, {8, 3}, TOP, {6.5, 4.5}},
        {"post, ball right wing", MAN_GAP, {8, 3}, RIGHT_WING, {8.4, 5.1}},
        {"post, ball left wing", MAN_GAP, {8, 3}, LEFT_WING, {.9, 4.0}}};
    check_rows(rows, sizeof rows / sizeof *rows);
}
END_TEST

START_TEST(denying_is_nearer_and_sagging_further_off)
{
    static const struct row rows[] = {
        {"deny the wing", MAN_DENY, RIGHT_WING, TOP, {13.2, 16.8}},
        {"deny the top", MAN_DENY, TOP, RIGHT_WING, {2.5, 21.5}},
        {"deny the corner", MAN_DENY, RIGHT_CORNER, RIGHT_WING, {19.4, 4.0}},
        {"sag off the wing", MAN_SAG, RIGHT_WING, TOP, {6.8, 14.7}},
        {"sag off the top", MAN_SAG, TOP, RIGHT_WING, {5.5, 15.3}},
        {"sag off the corner", MAN_SAG, RIGHT_CORNER, RIGHT_WING, {13.9, 5.4}}};
    check_rows(rows, sizeof rows / sizeof *rows);
}
END_TEST

START_TEST(nobody_jumps_when_man_or_ball_moves_a_little)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    for (int style = MAN_GAP; style <= MAN_SAG; style++) {
        for (double x = -7; x <= 7; x += .35) {
            for (double y = -1; y <= 8; y += .35) {
                struct vec2 man = {x, y}, ball = {3.1, 6.2}, near = {x + .01, y + .01};
                struct vec2 a = defense_man(court, (enum man_style)style, man, ball, false);
                struct vec2 b = defense_man(court, (enum man_style)style, near, ball, false);
                struct vec2 c =
                    defense_man(court, (enum man_style)style, man, vec2_of(3.11, 6.2), false);
                ck_assert_double_lt(vec2_distance(a, b), .10);
                ck_assert_double_lt(vec2_distance(a, c), .10);
            }
        }
    }
}
END_TEST

START_TEST(the_other_side_is_the_mirror_image)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct vec2 man = {4.3, 2.2}, ball = {-2.1, 6.4};
    struct vec2 a = defense_man(court, MAN_GAP, man, ball, false);
    struct vec2 b = defense_man(court, MAN_GAP, vec2_of(-4.3, 2.2), vec2_of(2.1, 6.4), false);
    ck_assert(a.x == -b.x && a.y == b.y);
}
END_TEST

static struct seen_screen down_screen(void)
{
    return (struct seen_screen){.man = {-6.3, -.6},
                                .man_v = none,
                                .ball = {-2.4, 5.8},
                                .exit = {0, .9},
                                .screener = {-4.9, .2},
                                .self = {-5.4, 0}};
}

START_TEST(each_answer_to_a_screen_stands_somewhere_else)
{
    struct seen_screen seen = down_screen();
    struct vec2 trail = defense_screened(STRATEGY_TRAIL, &seen).at;
    struct vec2 under = defense_screened(STRATEGY_UNDER, &seen).at;
    struct vec2 over = defense_screened(STRATEGY_OVERPLAY, &seen).at;
    ck_assert_double_lt(vec2_distance(trail, seen.man), 1.3);
    ck_assert_double_gt(vec2_distance(under, seen.man), 1.8);
    ck_assert_double_lt(vec2_distance(over, seen.man), .9);
    ck_assert_double_lt(vec2_distance(over, seen.exit), vec2_distance(seen.man, seen.exit));
}
END_TEST

START_TEST(who_trails_runs_behind_and_who_goes_under_meets_him)
{
    struct seen_screen seen = down_screen();
    seen.left = true;
    seen.passed = true;
    seen.man = vec2_of(-4.4, 1.0);
    seen.man_v = vec2_of(3.0, .2);
    seen.self = vec2_of(-4.0, -.6);
    struct vec2 trail = defense_screened(STRATEGY_TRAIL, &seen).at;
    struct vec2 under = defense_screened(STRATEGY_UNDER, &seen).at;
    ck_assert_double_lt(trail.x, seen.man.x);
    ck_assert_double_gt(under.x, seen.man.x);
}
END_TEST

START_TEST(conditions_of_reads_name_their_strategies)
{
    struct condition condition = {.kind = COND_VERB, .verb = VERB_GOES_UNDER};
    enum strategy strategy;
    ck_assert(defense_strategy(&condition, &strategy) && strategy == STRATEGY_UNDER);
    condition.verb = VERB_CUTS;
    ck_assert(!defense_strategy(&condition, &strategy));
    condition.kind = COND_OPEN;
    ck_assert(defense_strategy(&condition, &strategy) && strategy == STRATEGY_SAG);
    condition.kind = COND_OTHERWISE;
    ck_assert(defense_strategy(&condition, &strategy) && strategy == STRATEGY_NONE);
}
END_TEST

START_TEST(each_of_the_two_has_his_own_word_at_a_ball_screen)
{
    static const enum strategy rows[][4] = {
        /* the handler's man says, the screener's says: they do */
        {STRATEGY_NONE, STRATEGY_NONE, STRATEGY_OVER, STRATEGY_OVER},
        {STRATEGY_UNDER, STRATEGY_NONE, STRATEGY_UNDER, STRATEGY_UNDER},
        {STRATEGY_NONE, STRATEGY_HEDGE, STRATEGY_OVER, STRATEGY_HEDGE},
        {STRATEGY_UNDER, STRATEGY_DROP, STRATEGY_UNDER, STRATEGY_DROP},
        {STRATEGY_ICE, STRATEGY_NONE, STRATEGY_ICE, STRATEGY_ICE},
        {STRATEGY_NONE, STRATEGY_TRAP, STRATEGY_TRAP, STRATEGY_TRAP},
        {STRATEGY_SWITCH, STRATEGY_NONE, STRATEGY_SWITCH, STRATEGY_SWITCH}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct coverage does = defense_coverage(rows[i][0], rows[i][1]);
        ck_assert_int_eq(does.guard, rows[i][2]);
        ck_assert_int_eq(does.big, rows[i][3]);
    }
}
END_TEST

/* 1 at the top, the screener beside his man on the right. */
static struct seen_screen at_the_top(void)
{
    return (struct seen_screen){.man = {0, 7.3},
                                .ball = {0, 7.3},
                                .exit = {4, 4},
                                .screener = {.6, 6.2},
                                .from = {0, 7.3},
                                .self = {0, 6.3},
                                .has_ball = true};
}

START_TEST(hedge_is_high_and_drop_is_low_and_ice_is_between_ball_and_screen)
{
    struct seen_screen seen = at_the_top();
    struct coverage hedge = {STRATEGY_OVER, STRATEGY_HEDGE}, drop = {STRATEGY_OVER, STRATEGY_DROP},
                    ice = {STRATEGY_ICE, STRATEGY_ICE}, over = {STRATEGY_OVER, STRATEGY_OVER};
    ck_assert_double_gt(defense_on_handler(ice, &seen).at.x, defense_on_handler(over, &seen).at.x);
    seen.left = true;
    struct vec2 high = defense_on_screener(hedge, &seen).at,
                low = defense_on_screener(drop, &seen).at;
    ck_assert_double_gt(vec2_length(high), vec2_length(low) + 2);
    ck_assert(defense_big_jumps(hedge) && defense_big_jumps(drop) && !defense_big_jumps(over));
}
END_TEST

START_TEST(a_ball_screen_on_the_other_side_is_the_mirror_image)
{
    for (int strategy = 0; strategy < STRATEGY_COUNT; strategy++) {
        struct coverage does = defense_coverage((enum strategy)strategy, (enum strategy)strategy);
        for (int left = 0; left < 2; left++) {
            struct seen_screen seen = at_the_top();
            seen.man = vec2_of(.7, 6.9);
            seen.man_v = vec2_of(2.1, -.7);
            seen.left = left;
            struct seen_screen other = seen;
            struct vec2 *points[] = {&other.man,      &other.man_v, &other.ball, &other.exit,
                                     &other.screener, &other.from,  &other.self};
            for (size_t i = 0; i < sizeof points / sizeof *points; i++) {
                points[i]->x = -points[i]->x;
            }
            struct vec2 a = defense_on_handler(does, &seen).at,
                        b = defense_on_handler(does, &other).at;
            ck_assert(a.x == -b.x && a.y == b.y);
            a = defense_on_screener(does, &seen).at;
            b = defense_on_screener(does, &other).at;
            ck_assert(a.x == -b.x && a.y == b.y);
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("defense");
    TCase *all = tcase_create("defense");
    tcase_add_test(all, five_out_stands_as_it_was_tuned);
    tcase_add_test(all, four_out_and_the_post_stand_as_they_were_tuned);
    tcase_add_test(all, denying_is_nearer_and_sagging_further_off);
    tcase_add_test(all, nobody_jumps_when_man_or_ball_moves_a_little);
    tcase_add_test(all, the_other_side_is_the_mirror_image);
    tcase_add_test(all, each_answer_to_a_screen_stands_somewhere_else);
    tcase_add_test(all, who_trails_runs_behind_and_who_goes_under_meets_him);
    tcase_add_test(all, conditions_of_reads_name_their_strategies);
    tcase_add_test(all, each_of_the_two_has_his_own_word_at_a_ball_screen);
    tcase_add_test(all, hedge_is_high_and_drop_is_low_and_ice_is_between_ball_and_screen);
    tcase_add_test(all, a_ball_screen_on_the_other_side_is_the_mirror_image);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
