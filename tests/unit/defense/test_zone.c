/* SPDX-License-Identifier: MIT */
/* Zones: each row of the tables where a coach would put the five (ours, common practice: no
 * published check), and what must hold between the rows on every court: no jump, one on the ball,
 * nobody under the ring, left as right. Feet, as a coach would read them. */
#include "floor/defense/defense.h"

#include <math.h>

#include "base/real.h"
#include "suite.h"

#define ARM -99 /* in place of a point: an arm's length from the ball toward the rim */

struct zone_place {
    enum zone zone;
    double ball[2], at[ZONE_DEFENDERS][2];
};
#define TOP                                                                                        \
    {                                                                                              \
        0, 20.75                                                                                   \
    }
#define SLOT                                                                                       \
    {                                                                                              \
        8, 19.1458                                                                                 \
    }
#define WING                                                                                       \
    {                                                                                              \
        15.5403, 13.75                                                                             \
    }
#define CORNER                                                                                     \
    {                                                                                              \
        20.75, -2.25                                                                               \
    }
#define HIGH                                                                                       \
    {                                                                                              \
        0, 13.75                                                                                   \
    }
#define BLOCK                                                                                      \
    {                                                                                              \
        7.5, 2.25                                                                                  \
    }
#define BALL                                                                                       \
    {                                                                                              \
        ARM, ARM                                                                                   \
    }

/* Row by row: where the ball is, x1 to x5. */
static const struct zone_place places[] = {
    {ZONE_TWO_THREE, TOP, {{-5, 17}, {5, 17}, {-11, 6}, {11, 6}, {0, 5}}},
    {ZONE_TWO_THREE, SLOT, {{-1, 15}, BALL, {-9, 6}, {12, 7}, {2, 5}}},
    {ZONE_TWO_THREE, WING, {{3, 14}, BALL, {-5, 5}, {13, 5}, {4, 4}}},
    {ZONE_TWO_THREE, CORNER, {{1, 11}, {9, 9}, {-3, 5}, BALL, {6, 3}}},
    {ZONE_TWO_THREE, HIGH, {{-5, 13}, {5, 13}, {-9, 4}, {9, 4}, BALL}},
    {ZONE_TWO_THREE, BLOCK, {{-3, 10}, {8, 9}, {-3, 4}, {10, 2}, BALL}},
    {ZONE_THREE_TWO, TOP, {BALL, {10, 15}, {-10, 15}, {7, 4}, {-7, 4}}},
    {ZONE_THREE_TWO, WING, {{4, 15}, BALL, {-6, 11}, {12, 3}, {0, 4}}},
    {ZONE_THREE_TWO, CORNER, {{3, 12}, {12, 9}, {-4, 9}, BALL, {5, 3}}},
    {ZONE_THREE_TWO, HIGH, {BALL, {8, 11}, {-8, 11}, {6, 4}, {-6, 4}}},
    {ZONE_THREE_TWO, BLOCK, {{1, 9}, {10, 8}, {-4, 8}, BALL, {-1, 4}}},
    {ZONE_ONE_THREE_ONE, TOP, {BALL, {12, 12}, {-12, 12}, {0, 11}, {0, 3}}},
    {ZONE_ONE_THREE_ONE, WING, {{6, 16}, BALL, {-5, 9}, {5, 9}, {9, 1}}},
    {ZONE_ONE_THREE_ONE, CORNER, {{6, 14}, {14, 8}, {-3, 6}, {5, 4}, BALL}},
    {ZONE_ONE_THREE_ONE, HIGH, {{0, 17.03}, {9, 10}, {-9, 10}, BALL, {0, 4}}},
    {ZONE_ONE_TWO_TWO, TOP, {BALL, {9, 14}, {-9, 14}, {7, 5}, {-7, 5}}},
    {ZONE_ONE_TWO_TWO, WING, {{5, 16}, BALL, {-5, 11}, {11, 3}, {0, 4}}},
    {ZONE_ONE_TWO_TWO, CORNER, {{4, 13}, {12, 9}, {-4, 9}, BALL, {4, 3}}},
    {ZONE_TWO_ONE_TWO, TOP, {{-6, 17}, {6, 17}, {-8, 4}, {8, 4}, {0, 11}}},
    {ZONE_TWO_ONE_TWO, WING, {{2, 15}, BALL, {-3, 5}, {11, 3}, {4, 8}}},
    {ZONE_TWO_ONE_TWO, CORNER, {{1, 11}, {10, 9}, {-2, 5}, BALL, {5, 5}}},
};
/* Who has the mirrored place: 2-3 and 2-1-2 change their tops and their lows, and so on. */
static const char *const mirror[ZONE_COUNT] = {"",      "21435", "13254", "13245", "13254",
                                               "21435", "13254", "12354", "21435", "13245"};

static struct zone_seen seen_of(enum court_code code, enum zone zone, double x, double y)
{
    return (struct zone_seen){.court = court_of(code),
                              .zone = zone,
                              .ball = vec2_of(x, y),
                              .on_ball = ZONE_BY_ROWS,
                              .comes = ZONE_DEFENDERS};
}

static void check_place(const struct zone_place *row, bool left)
{
    struct zone_seen seen = seen_of(COURT_HIGH_SCHOOL, row->zone,
                                    row->ball[0] * (left ? -FEET : FEET), row->ball[1] * FEET);
    struct vec2 at[ZONE_DEFENDERS];
    defense_zone(&seen, at);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        int who = left ? mirror[row->zone][k] - '1' : k;
        struct vec2 p = vec2_scale(at[who], 1 / FEET), want = vec2_of(row->at[k][0], row->at[k][1]);
        if (row->at[k][0] == ARM) {
            struct vec2 ball = vec2_of(row->ball[0], row->ball[1]);
            want = vec2_along(ball, vec2_unit(ball), -real_min(1 / FEET, .45 * vec2_length(ball)));
        }
        want.x = left ? -want.x : want.x;
        ck_assert_msg(vec2_distance(p, want) < .02,
                      "%s, ball at %.1f, %.1f: x%d stands at %.2f, %.2f, not %.2f, %.2f",
                      zone_row(row->zone)->setting, row->ball[0] * (left ? -1 : 1), row->ball[1],
                      who + 1, p.x, p.y, want.x, want.y);
    }
}

START_TEST(each_row_stands_where_the_table_says_on_both_sides)
{
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        check_place(&places[i], false);
        check_place(&places[i], true);
    }
}
END_TEST

/* Round the perimeter, through the lane, along the baseline and down the floor, 5 cm a step. */
static const double walk[][2] = {{20.75, -2.25}, {15.5, 13.75},  {8, 19.1},       {0, 20.75},
                                 {-8, 19.1},     {-15.5, 13.75}, {-20.75, -2.25}, {-7.5, 2.25},
                                 {0, 13.75},     {7.5, 2.25},    {-7.5, 2.25},    {-12, -3},
                                 {24, -4},       {0, 2},         {0, 24},         {22, 24},
                                 {-22, 50},      {22, 70},       {0, 76},         {0, 13.75}};

/* How far the furthest target goes for a step of the ball, in steps of the ball. */
static double fastest(enum court_code code, enum zone zone, const struct vec2 *men, int count)
{
    double most = 0;
    struct vec2 before[ZONE_DEFENDERS] = {{0, 0}}, at[ZONE_DEFENDERS] = {{0, 0}};
    bool first = true;
    for (size_t i = 0; i + 1 < sizeof walk / sizeof *walk; i++) {
        struct vec2 a = vec2_of(walk[i][0] * FEET, walk[i][1] * FEET),
                    b = vec2_of(walk[i + 1][0] * FEET, walk[i + 1][1] * FEET);
        double far = vec2_distance(a, b), step = .05;
        for (double s = 0; s < far; s += step) {
            struct vec2 ball = vec2_mix(a, b, s / far);
            struct zone_seen seen = seen_of(code, zone, ball.x, ball.y);
            seen.men = count;
            for (int m = 0; m < count; m++) {
                seen.man[m] = men[m];
            }
            defense_zone(&seen, at);
            for (int k = 0; k < ZONE_DEFENDERS && !first; k++) {
                most = real_max(most, vec2_distance(at[k], before[k]) / step);
            }
            for (int k = 0; k < ZONE_DEFENDERS; k++) {
                before[k] = at[k];
            }
            first = false;
        }
    }
    return most;
}

START_TEST(nobody_jumps_as_the_ball_moves)
{
    const struct vec2 men[] = {{5, 4}, {-5, 4}, {1.5, 4}, {-2.3, 1}};
    for (int code = 0; code < COURT_COUNT; code++) {
        double alone = fastest((enum court_code)code, (enum zone)_i, men, 0);
        double among = fastest((enum court_code)code, (enum zone)_i, men, 4);
        /* that many steps for one of the ball; mini's places stand nearer to each other */
        bool mini = code == COURT_MINI, press = zone_row((enum zone)_i)->press;
        ck_assert_msg(alone < (mini ? 3.2 : 2.5), "%s, %s: %.2f steps for one of the ball",
                      zone_row((enum zone)_i)->setting, court_of((enum court_code)code)->word,
                      alone);
        ck_assert_msg(among < (press  ? 3.7
                               : mini ? 3.5
                                      : 3.3),
                      "%s, %s: %.2f steps among four men", zone_row((enum zone)_i)->setting,
                      court_of((enum court_code)code)->word, among);
    }
}
END_TEST

START_TEST(homes_are_on_the_floor_and_share_the_ball_once)
{
    for (int code = 0; code < COURT_COUNT; code++) {
        const struct court *court = court_of((enum court_code)code);
        for (double x = -court->half_width; x <= court->half_width; x += .5) {
            for (double y = court->baseline; y < 2 * court->half_court - court->baseline; y += .5) {
                struct zone_home home[ZONE_DEFENDERS];
                zone_homes(court, (enum zone)_i, vec2_of(x, y), false, false, home);
                double on = 0;
                for (int k = 0; k < ZONE_DEFENDERS; k++) {
                    double all = home[k].point + home[k].ball + home[k].above + home[k].trap;
                    on += home[k].ball;
                    ck_assert_double_eq_tol(all, zone_is_man((enum zone)_i, k) ? 0 : 1, 1e-9);
                    ck_assert(court_inside(court, home[k].at, .3));
                    ck_assert(home[k].point == 0 || home[k].at.y > -.1);
                }
                ck_assert_double_le(on, 1 + 1e-9);
            }
        }
    }
}
END_TEST

START_TEST(the_left_is_the_right_mirrored_and_so_is_a_mirrored_play)
{
    const struct vec2 men[] = {{5.1, 4.2}, {-3.3, 4}, {1.5, .4}};
    for (double x = -7; x <= 7; x += .37) {
        for (double y = -1; y <= 22; y += .53) {
            struct zone_seen seen = seen_of(COURT_NBA, (enum zone)_i, x, y);
            struct zone_seen left = seen_of(COURT_NBA, (enum zone)_i, -x, y);
            struct zone_seen flip = left;
            seen.men = left.men = flip.men = 3;
            flip.mirrored = true;
            for (int m = 0; m < 3; m++) {
                seen.man[m] = men[m];
                left.man[m] = flip.man[m] = vec2_of(-men[m].x, men[m].y);
            }
            struct vec2 a[ZONE_DEFENDERS] = {{0, 0}}, b[ZONE_DEFENDERS] = {{0, 0}},
                        c[ZONE_DEFENDERS] = {{0, 0}};
            defense_zone(&seen, a);
            defense_zone(&left, b);
            defense_zone(&flip, c);
            for (int k = 0; k < ZONE_DEFENDERS; k++) {
                int who = mirror[_i][k] - '1';
                bool zone = _i != ZONE_PRESS_ONE_TWO_ONE_ONE || y > 13; /* then it is a 2-3 */
                ck_assert(!zone || vec2_near(a[k], vec2_of(-b[who].x, b[who].y), 1e-9));
                ck_assert_double_eq(a[k].x, 0 - c[k].x); /* to the last bit */
                ck_assert_double_eq(a[k].y, c[k].y);
            }
        }
    }
}
END_TEST

static double least_from(const struct vec2 *at, struct vec2 p, int but)
{
    double least = 99;
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        least = k == but ? least : real_min(least, vec2_distance(at[k], p));
    }
    return least;
}

START_TEST(only_one_is_on_the_ball_and_nobody_under_the_ring)
{
    for (double x = -7; x <= 7; x += .31) {
        for (double y = -1.2; y <= 9; y += .27) {
            struct zone_seen seen = seen_of(COURT_HIGH_SCHOOL, ZONE_TWO_THREE, x, y);
            struct vec2 at[ZONE_DEFENDERS];
            for (seen.on_ball = 0; seen.on_ball < ZONE_DEFENDERS; seen.on_ball++) {
                defense_zone(&seen, at);
                ck_assert(vec2_distance(at[seen.on_ball], seen.ball) < 1.8 ||
                          vec2_length(seen.ball) > 7.5);
                double far = vec2_length(seen.ball); /* at the ring itself they all crowd */
                double crowd = far < 1.5 ? 0 : far < 2.5 ? .6 : 1.0;
                ck_assert_double_gt(least_from(at, seen.ball, seen.on_ball), crowd);
                ck_assert_double_gt(least_from(at, vec2_of(0, 0), seen.on_ball), .85);
            }
        }
    }
}
END_TEST

START_TEST(a_man_in_an_area_draws_its_defender_and_a_post_is_fronted)
{
    struct zone_seen seen = seen_of(COURT_HIGH_SCHOOL, ZONE_TWO_THREE, 15.54 * FEET, 13.75 * FEET);
    struct vec2 empty[ZONE_DEFENDERS], full[ZONE_DEFENDERS];
    seen.on_ball = 1;
    defense_zone(&seen, empty);
    seen.man[0] = vec2_of(20.75 * FEET, -2.25 * FEET); /* right corner: out of everybody's reach */
    seen.man[1] = vec2_of(7.5 * FEET, 2.25 * FEET);    /* right block: x5's */
    seen.men = 2;
    defense_zone(&seen, full);
    ck_assert_double_lt(vec2_distance(full[4], seen.man[1]), vec2_distance(empty[4], seen.man[1]));
    struct vec2 to_ball = vec2_unit(vec2_sub(seen.ball, seen.man[1]));
    ck_assert_double_gt(vec2_dot(vec2_sub(full[4], seen.man[1]), to_ball),
                        0); /* on its ball side */
    ck_assert_double_lt(vec2_distance(full[0], empty[0]), .05);
    ck_assert_double_lt(vec2_distance(full[2], empty[2]), .6);
}
END_TEST

START_TEST(a_press_traps_in_the_corner_and_is_a_zone_over_half_court)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct vec2 corner = zone_anchor_point(court, ANCHOR_BACK_CORNER);
    struct zone_seen seen =
        seen_of(COURT_HIGH_SCHOOL, ZONE_PRESS_ONE_TWO_ONE_ONE, corner.x, corner.y);
    struct vec2 at[ZONE_DEFENDERS], home[ZONE_DEFENDERS];
    defense_zone(&seen, at);
    ck_assert_double_lt(vec2_distance(at[0], corner), 1.2);
    ck_assert_double_lt(vec2_distance(at[1], corner), 1.2);
    ck_assert_double_gt(vec2_distance(at[0], at[1]), .6); /* each from his own side */
    for (int k = 2; k < ZONE_DEFENDERS; k++) {
        ck_assert_double_gt(vec2_distance(at[k], corner), 4);
    }
    seen = seen_of(COURT_HIGH_SCHOOL, ZONE_PRESS_ONE_TWO_ONE_ONE, 2, 5);
    defense_zone(&seen, at);
    seen.zone = ZONE_TWO_THREE;
    defense_zone(&seen, home);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        ck_assert(vec2_near(at[k], home[k], 1e-12));
    }
    struct vec2 out = zone_anchor_point(court, ANCHOR_THROW_IN);
    ck_assert(!court_inside(court, out, 0));
    seen = seen_of(COURT_HIGH_SCHOOL, ZONE_PRESS_ONE_TWO_ONE_ONE, out.x, out.y);
    seen.thrown_in = true;
    defense_zone(&seen, at);
    ck_assert_double_lt(vec2_distance(at[0], out), 1.1); /* x1 on the thrower */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("zone");
    TCase *all = tcase_create("zone");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, each_row_stands_where_the_table_says_on_both_sides);
    tcase_add_loop_test(all, nobody_jumps_as_the_ball_moves, 1, ZONE_COUNT);
    tcase_add_loop_test(all, homes_are_on_the_floor_and_share_the_ball_once, 1, ZONE_COUNT);
    tcase_add_loop_test(all, the_left_is_the_right_mirrored_and_so_is_a_mirrored_play, 1,
                        ZONE_COUNT);
    tcase_add_test(all, only_one_is_on_the_ball_and_nobody_under_the_ring);
    tcase_add_test(all, a_man_in_an_area_draws_its_defender_and_a_post_is_fronted);
    tcase_add_test(all, a_press_traps_in_the_corner_and_is_a_zone_over_half_court);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
