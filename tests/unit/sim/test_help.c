/* SPDX-License-Identifier: MIT */
/* Help as a coach would see it: a play for each situation, and who must be where while the ball is
 * driven, when it leaves the driver's hands, and after. */
#include <math.h>
#include <string.h>

#include "base/real.h"
#include "told.h"

static struct told told;
static const struct segment *way;

/* 2 is past x2 at once; x4 and x5 stand in the lane in front of the rim. */
#define PAST_HIM                                                                                   \
    "start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 left block, x2 at 4 ft above right " \
    "wing\nball 2\ndefense man\n"
/* The same with the low man on the ball's side of the lane. */
#define TO_SHORT_CORNER                                                                            \
    "start 1 top, 2 right wing, 3 left wing, 4 right short corner, 5 left corner, x2 at 4 ft "     \
    "above right wing\nball 2\ndefense man\n"
/* Nobody is beaten. */
#define FROM_THE_WING                                                                              \
    "start 1 left wing, 2 right wing, 3 left corner, 4 right corner, 5 top\ndefense man\n"

static void run(const char *text)
{
    told_run(&told, text);
    ck_assert_msg(told.text.diags.errors == 0, "%s%s", text, told_said(&told));
    way = told.run->segments.at[0];
    ck_assert(way->ran);
}

static struct vec2 at(body b, double t)
{
    return segment_at(way, b, t);
}

static struct vec2 x(int number, double t)
{
    return at(body_defender(number), t);
}

static struct vec2 p(int number, double t)
{
    return at(body_attacker(number), t);
}

/* How far the defender is before the man on his way to the rim, and how far off that line, m. */
static double before(struct vec2 defender, struct vec2 man)
{
    return vec2_dot(vec2_sub(defender, man), vec2_unit(vec2_scale(man, -1)));
}

static double beside(struct vec2 defender, struct vec2 man)
{
    return fabs(vec2_cross(vec2_unit(vec2_scale(man, -1)), vec2_sub(defender, man)));
}

static bool in_lane(struct vec2 at)
{
    return court_in_lane(told.play->court, at);
}

/* The seconds in which the ball is driven inside 10 ft of the rim, until it leaves the driver. */
static double inside_from(int driver, double until)
{
    double t = 0;
    while (t < until && vec2_length(p(driver, t)) > 10 * FEET) {
        t += .02;
    }
    return t;
}

START_TEST(while_the_ball_comes_to_the_rim_the_low_man_stays_in_the_lane)
{
    run(FROM_THE_WING "1 drives to the rim\n1 passes to 4\n");
    double out = told_time(way, 1, MOMENT_RELEASED), in = inside_from(1, out);
    ck_assert_double_lt(in, out - .3);
    for (double t = in; t < out; t += .02) {
        ck_assert_msg(in_lane(x(4, t)), "x4 at (%.1f, %.1f) ft, %.2f s", x(4, t).x / FEET,
                      x(4, t).y / FEET, t);
    }
}
END_TEST

START_TEST(both_low_men_stay_in_the_lane_on_a_drive_down_the_middle)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left corner, x1 at 4 ft above "
        "top\ndefense man\n1 drives to the rim\n1 passes to 4\n");
    double out = told_time(way, 1, MOMENT_RELEASED), in = inside_from(1, out);
    ck_assert_double_lt(in, out);
    for (double t = in + .35; t < out; t += .02) { /* s: an eye, and two steps */
        ck_assert_msg(in_lane(x(4, t)) && in_lane(x(5, t)), "x4 (%.1f, %.1f) x5 (%.1f, %.1f) ft",
                      x(4, t).x / FEET, x(4, t).y / FEET, x(5, t).x / FEET, x(5, t).y / FEET);
    }
}
END_TEST

START_TEST(a_lay_up_past_two_who_stand_in_the_lane_is_contested_from_in_front)
{
    run(PAST_HIM "2 drives to the rim\n2 shoots\n");
    double shot = told_time(way, 1, MOMENT_RELEASED), met = 1e9;
    for (double t = 0; t < shot; t += .02) {
        struct vec2 ball = p(2, t);
        for (int d = 4; d <= 5; d++) {
            bool on = before(x(d, t), ball) > .3 && beside(x(d, t), ball) < .6;
            met = on && vec2_length(ball) > .9 ? real_min(met, vec2_distance(x(d, t), ball)) : met;
        }
    }
    ck_assert_double_lt(met, .8);
    double near =
        real_min(vec2_distance(x(4, shot), p(2, shot)), vec2_distance(x(5, shot), p(2, shot)));
    ck_assert_double_lt(near, .9);
    ck_assert_double_lt(vec2_length(x(4, shot)), 2.0); /* nobody has walked away to his man */
}
END_TEST

START_TEST(who_helps_is_in_front_of_the_drive_and_not_behind_it)
{
    run(PAST_HIM "2 drives to the rim until x5 helps\n2 bounce passes to 5\n");
    told_is_sound(&told);
    double helps = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_gt(before(x(5, helps), p(2, helps)), 1.0);
    ck_assert_double_lt(beside(x(5, helps), p(2, helps)), 1.0);
    struct vec2 nail = x(1, 0); /* and x1, who stood at the nail side, does not chase it */
    ck_assert_double_lt(vec2_distance(x(1, helps), nail), 1.2);
}
END_TEST

START_TEST(a_drive_until_help_goes_into_the_lane_before_the_pass)
{
    run(TO_SHORT_CORNER "2 drives to the rim until x4 helps\n2 bounce passes to 4\n");
    told_is_sound(&told);
    double helps = told_time(way, 0, MOMENT_ARRIVED);
    double far = vec2_distance(way->record[0].from, way->record[0].to);
    ck_assert_double_gt(far, 10 * FEET); /* no hop */
    ck_assert(in_lane(way->record[0].to));
    ck_assert_double_lt(vec2_distance(x(4, helps), p(2, helps)), 2.0); /* he is in the way */
    ck_assert_double_gt(vec2_distance(x(4, helps), p(4, helps)), 5 * FEET);
    double catch = told_time(way, 1, MOMENT_CAUGHT);
    ck_assert_double_gt(vec2_distance(x(4, catch), p(4, catch)), 4 * FEET); /* who is open */
}
END_TEST

START_TEST(the_next_man_sinks_to_where_the_helper_stood_and_both_are_back)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right corner\nball 5\n"
        "defense man\n5 holds for 1 s\n");
    const struct vec2 rule[] = {x(2, 0), x(3, 0)}; /* with the ball in that corner */
    run("start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right corner\ndefense man\n"
        "x1 stays\n1 drives to the rim\n1 passes to 5\n5 holds for 2.5 s\n");
    double out = told_time(way, 2, MOMENT_RELEASED);
    int helper = vec2_distance(x(5, out), p(1, out)) < vec2_distance(x(4, out), p(1, out)) ? 5 : 4;
    int second = helper == 5 ? 2 : 3;
    ck_assert_double_lt(vec2_length(x(second, out)), vec2_length(x(second, 0)) - .5);
    ck_assert_double_lt(vec2_distance(x(5, way->duration), p(5, way->duration)), 1.4);
    ck_assert_double_lt(vec2_distance(x(second, way->duration), rule[second - 2]), 1.0);
    double fast = 0;
    for (double t = out; t < way->duration; t += .02) {
        fast = real_max(fast, vec2_length(segment_velocity(way, body_defender(5), t)));
    }
    ck_assert_double_gt(fast, 1.3 * told.play->speed->slide); /* a sprint */
}
END_TEST

/* Shoved, nobody goes smoothly. */
static bool is_touched(body who, double t)
{
    for (body b = 0; b < BODY_COUNT; b++) {
        if (b != who && way->track[b].on_floor && vec2_distance(at(b, t), at(who, t)) < .6) {
            return true;
        }
    }
    return false;
}

START_TEST(no_low_man_jumps_while_the_ball_is_driven)
{
    run(PAST_HIM "2 drives to the rim\n2 shoots\n");
    for (body d = BODY_FIRST_DEFENDER; d < BODY_COUNT; d++) {
        for (double t = .05; way->track[d].on_floor && t < way->duration; t += .05) {
            struct vec2 a = segment_velocity(way, d, t - .05), b = segment_velocity(way, d, t);
            ck_assert(is_touched(d, t) || is_touched(d, t - .05) ||
                      vec2_length(vec2_sub(a, b)) < .8); /* m/s in a twentieth of a second */
        }
    }
}
END_TEST

/* ---- in a zone nobody leaves a man: it shifts ---- */

START_TEST(a_drive_through_the_gap_of_a_zone_is_met_by_its_middle)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 right short corner, 5 left corner\n"
        "defense zone 2-3\n1 drives to the rim\n1 passes to 4\n");
    double out = told_time(way, 1, MOMENT_RELEASED), met = 1e9;
    for (double t = 0; t < out; t += .02) {
        struct vec2 ball = p(1, t);
        if (vec2_length(ball) < 10 * FEET && vec2_length(ball) > 4 * FEET) {
            ck_assert_double_gt(before(x(5, t), ball), 0); /* never behind it */
            ck_assert_double_lt(beside(x(5, t), ball), .6);
            met = real_min(met, vec2_distance(x(5, t), ball));
        }
    }
    ck_assert_double_lt(met, .8);
    ck_assert_double_lt(vec2_length(x(1, out)), vec2_length(x(1, 0)) - 2); /* the front drops */
    ck_assert_double_lt(fabs(x(3, out).x), fabs(x(3, 0).x) - 1);           /* the wings close in */
    ck_assert_double_lt(fabs(x(4, out).x), fabs(x(4, 0).x) - .6);
}
END_TEST

START_TEST(in_a_zone_he_helps_who_stands_before_the_drive)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 right short corner, 5 left corner\n"
        "defense zone 2-3\n1 drives to the rim until x5 helps\n1 passes to 4\n");
    ck_assert(!strstr(told_said(&told), "never came true"));
    double helps = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_lt(vec2_distance(x(5, helps), p(1, helps)), 2.0);
    ck_assert_double_gt(vec2_distance(way->record[0].from, way->record[0].to), 8 * FEET);
}
END_TEST

/* ---- from step to step ---- */

START_TEST(a_step_that_ends_with_a_catch_ends_soon_after_it_with_the_defenders_on_their_way)
{
    run("start five-out\ndefense man\nstep\n  1 passes to 2\nstep\n  2 skip passes to 5\n"
        "step\n  5 holds for 1 s\n");
    for (int i = 0; i < 2; i++) {
        const struct segment *step = told_segment(&told, i, -1);
        const struct segment *next = told_segment(&told, i + 1, -1);
        double after = step->duration - told_time(step, 0, MOMENT_CAUGHT);
        ck_assert_double_ge(after, .2);
        ck_assert_double_le(after, .36);
        double fast = 0;
        for (body d = BODY_FIRST_DEFENDER; d < BODY_FIRST_DEFENDER + 5; d++) {
            struct vec2 v = segment_velocity(step, d, step->duration);
            struct vec2 w = segment_velocity(next, d, 0);
            ck_assert_double_lt(vec2_length(vec2_sub(v, w)), 1e-9);
            fast = real_max(fast, vec2_length(v));
        }
        ck_assert_double_gt(fast, 1.5); /* m/s: somebody is on his way */
    }
    const struct segment *last = told_segment(&told, 2, -1);
    for (body d = BODY_FIRST_DEFENDER; d < BODY_FIRST_DEFENDER + 5; d++) {
        ck_assert_double_lt(vec2_length(segment_velocity(last, d, last->duration)), .4);
    }
}
END_TEST

START_TEST(who_goes_back_after_he_has_helped_goes_on_in_the_next_step)
{
    run("start five-out\ndefense man\nstep\n  x1 stays\n  1 drives to the rim\n  1 passes to 5\n"
        "step\n  5 holds for 2 s\n");
    const struct segment *first = told_segment(&told, 0, -1), *next = told_segment(&told, 1, -1);
    body x5 = body_defender(5);
    struct vec2 v = segment_velocity(first, x5, first->duration);
    ck_assert_double_gt(vec2_length(v), 1.5);
    ck_assert_double_lt(vec2_length(vec2_sub(v, segment_velocity(next, x5, 0))), 1e-9);
    struct vec2 five = segment_at(next, body_attacker(5), next->duration);
    ck_assert_double_lt(vec2_distance(segment_at(next, x5, next->duration), five), 1.3);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("help");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, while_the_ball_comes_to_the_rim_the_low_man_stays_in_the_lane);
    tcase_add_test(all, both_low_men_stay_in_the_lane_on_a_drive_down_the_middle);
    tcase_add_test(all, a_lay_up_past_two_who_stand_in_the_lane_is_contested_from_in_front);
    tcase_add_test(all, who_helps_is_in_front_of_the_drive_and_not_behind_it);
    tcase_add_test(all, a_drive_until_help_goes_into_the_lane_before_the_pass);
    tcase_add_test(all, the_next_man_sinks_to_where_the_helper_stood_and_both_are_back);
    tcase_add_test(all, no_low_man_jumps_while_the_ball_is_driven);
    tcase_add_test(all, a_drive_through_the_gap_of_a_zone_is_met_by_its_middle);
    tcase_add_test(all, in_a_zone_he_helps_who_stands_before_the_drive);
    tcase_add_test(
        all, a_step_that_ends_with_a_catch_ends_soon_after_it_with_the_defenders_on_their_way);
    tcase_add_test(all, who_goes_back_after_he_has_helped_goes_on_in_the_next_step);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
