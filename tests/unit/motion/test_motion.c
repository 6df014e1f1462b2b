/* SPDX-License-Identifier: MIT */
/* The laws against values worked out elsewhere: the sprint law in closed form (Furusawa, Hill and
 * Parkinson 1927), Gryko et al. 2022 (split times of U15 girls), Brancazio 1981 (flight of a shot),
 * drag of a ball, and races worked out from the same law by an independent program. */
#include "floor/motion/motion.h"

#include <math.h>

#include "base/real.h"
#include "suite.h"

#define NEAR(a, b, within) ck_assert_double_eq_tol(a, b, within)

START_TEST(a_sprint_from_rest_follows_the_exponential_law)
{
    NEAR(motion_distance(8, 1, 0, 1), 2.9430, 5e-4);
    NEAR(motion_distance(8, 1, 0, 2), 9.0827, 5e-4);
    NEAR(motion_speed(8, 1, 0, 1), 5.0570, 5e-4);
    static const double far[] = {1, 2, 3, 5, 10, 20};
    static const double time[] = {.5454, .8012, 1.0112, 1.3712, 2.1313, 3.4688};
    for (int i = 0; i < 6; i++) {
        NEAR(motion_time(8, 1, 0, far[i]), time[i], 5e-4);
    }
}
END_TEST

START_TEST(a_sprint_may_begin_on_the_run_or_the_wrong_way)
{
    NEAR(motion_distance(8, 1, 3, 1), 4.8394, 5e-4);
    NEAR(motion_time(8, 1, 3, 5), 1.0260, 5e-4);
    NEAR(motion_distance(8, 1, -3, .318454), -.4524, 5e-4);
    NEAR(motion_time(8, 1, -3, 5), 1.7645, 5e-4);
}
END_TEST

START_TEST(published_splits_of_u15_girls_come_out)
{
    /* gate times start .3 s after the first push: Vescovi & Jovanovic 2021 */
    NEAR(motion_time(7.12, 1.058, 0, 5) - .3, 1.205, 2e-3);
    NEAR(motion_time(7.12, 1.058, 0, 10) - .3, 2.048, 2e-3);
    NEAR(motion_time(7.12, 1.058, 0, 20) - .3, 3.539, 2e-3);
}
END_TEST

START_TEST(a_close_out_runs_and_stops_in_its_distance)
{
    static const double time[] = {1.237, 1.528, 1.778, 2.002, 2.208};
    for (int i = 0; i < 5; i++) {
        NEAR(motion_rush(8, 1.1, 4.5, 2 + i), time[i], 1e-3);
    }
}
END_TEST

START_TEST(turns_cost_what_was_measured)
{
    /* Giannakopoulos et al. 2026: shares fitted to losses at 45, 90 and 180 degrees */
    NEAR(motion_turn_share(0), 1, 1e-9);
    NEAR(motion_turn_share(REAL_PI / 4), .63, 1e-9);
    NEAR(motion_turn_share(REAL_PI / 2), .385, 1e-9);
    NEAR(motion_turn_share(REAL_PI), .12, 1e-9);
}
END_TEST

START_TEST(races_are_won_by_the_same_hundredths)
{
    double cutter = motion_time(8, 1.1, 0, 6), defender = .25 + motion_time(8, 1.1, 0, 5);
    NEAR(cutter, 1.5910, 5e-4);
    NEAR(defender - cutter, .0824, 5e-4);
    NEAR(motion_time(8 * .93, 1.1, 0, 7) - cutter, .2420, 5e-4); /* the driver comes later */
}
END_TEST

START_TEST(shots_and_passes_take_their_time)
{
    NEAR(motion_arc_time(4.225, 3.05 - 2.1, 52.0 / 180 * REAL_PI), .953, 1e-3);
    NEAR(motion_arc_time(6.75, 3.05 - 2.4, 48.0 / 180 * REAL_PI), 1.181, 1e-3);
    struct level level = *level_of(LEVEL_U16);
    level.pass = 10;
    NEAR(motion_pass_time(&level, PASS_CHEST, 6), .6412, 5e-4);
    ck_assert(motion_pass_time(&level, PASS_BOUNCE, 6) >
              1.3 * 6 / level.pass); /* no drag in either */
    ck_assert(motion_pass_time(&level, PASS_LOB, 6) > motion_pass_time(&level, PASS_OVERHEAD, 6));
}
END_TEST

/* Whatever is thrown leaves the hand, is never under the floor, never stands still or jumps, and is
 * where it is to be caught, at the height of hands, when its time is over. */
static void fly_whole(const struct flight *flight)
{
    double before = 0, step = flight->seconds / 400;
    NEAR(motion_flight_along(flight, 0), 0, 1e-12);
    NEAR(motion_flight_height(flight, 0), flight->from_z, 1e-12);
    for (int i = 1; i <= 400; i++) {
        double along = motion_flight_along(flight, i * step);
        ck_assert_double_gt(along, before);
        ck_assert_double_le(along - before, 3 * flight->length / 400); /* three times the mean */
        ck_assert_double_ge(motion_flight_height(flight, i * step), MOTION_BALL - 1e-12);
        before = along;
    }
    NEAR(motion_flight_along(flight, flight->seconds), flight->length, 1e-9);
    NEAR(motion_flight_height(flight, flight->seconds), flight->to_z, 1e-9);
    NEAR(motion_flight_along(flight, flight->seconds + 1), flight->length, 1e-9);
}

START_TEST(every_throw_is_known_from_hand_to_hand)
{
    for (int kind = PASS_PLAIN; kind <= PASS_CHEST; kind++) {
        for (double far = .5; far < 16; far += .5) {
            struct flight flight = motion_pass(level_of(LEVEL_U16), (enum pass_kind)kind, far);
            fly_whole(&flight);
        }
    }
    for (double far = .2; far < 14; far += .2) {
        struct flight flight = motion_shot(level_of(LEVEL_U12), 2.6, far);
        fly_whole(&flight);
    }
}
END_TEST

START_TEST(a_bounce_touches_the_floor_and_a_lob_goes_over_an_arm)
{
    const struct level *level = level_of(LEVEL_U16);
    struct flight bounce = motion_pass(level, PASS_BOUNCE, 6);
    NEAR(motion_flight_height(&bounce, bounce.bounce_seconds), MOTION_BALL, 1e-12);
    NEAR(motion_flight_along(&bounce, bounce.bounce_seconds), 4, 1e-9);
    struct flight lob = motion_pass(level, PASS_LOB, 3);
    double hand = level->height * 1.33 + level->reach_jump; /* of a defender who jumps */
    ck_assert_double_gt(motion_flight_height(&lob, lob.seconds / 2), hand);
    struct flight chest = motion_pass(level, PASS_CHEST, 3);
    ck_assert_double_lt(motion_flight_height(&chest, chest.seconds / 2), hand);
}
END_TEST

/* The tick itself must agree with the closed form, however long it is. */
START_TEST(ticks_do_not_change_a_sprint)
{
    const struct level *level = level_of(LEVEL_U16);
    struct gait gait = motion_gait(level, EFFORT_SPRINT, false);
    for (int per_second = 60; per_second <= 240; per_second *= 2) {
        struct mover mover = {.at = {0, 0}};
        for (int i = 0; i < 2 * per_second; i++) {
            motion_advance(&mover, &gait, vec2_of(20, 0), 1.0 / per_second);
        }
        NEAR(mover.at.x, motion_distance(level->sprint, level->tau, 0, 2), 1e-3);
        NEAR(mover.v.x, motion_speed(level->sprint, level->tau, 0, 2), 1e-9);
    }
}
END_TEST

static double run(struct course *course, const struct gait *gait, struct vec2 from, double *most,
                  struct vec2 *end)
{
    struct mover mover = {.at = from};
    double t = 0;
    *most = 0;
    while (course->along < course->goal - .05 && t < 20) {
        motion_advance(&mover, gait, motion_follow(course, &mover, gait, 0), 1.0 / 120);
        *most = real_max(*most, vec2_length(mover.v));
        t += 1.0 / 120;
    }
    for (int i = 0; i < 120; i++) {
        motion_advance(&mover, gait, motion_follow(course, &mover, gait, 0), 1.0 / 120);
    }
    *end = mover.at;
    return t;
}

START_TEST(a_straight_run_stops_on_its_spot_and_not_beyond)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_HARD, false);
    struct vec2 points[] = {{0, 0}, {6, 2}}, end;
    struct course course = motion_course(&arena, points, 2, &gait, 0);
    double most, t = run(&course, &gait, points[0], &most, &end);
    ck_assert(vec2_near(end, points[1], .02));
    ck_assert(most < gait.top);
    ck_assert(t > motion_time(gait.top, gait.tau, 0, 6.3));
}
END_TEST

START_TEST(a_corner_is_reached_and_slows_the_runner)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_HARD, false);
    struct vec2 points[] = {{0, 0}, {4, 0}, {0, 1}}, end;
    struct course course = motion_course(&arena, points, 3, &gait, 0);
    struct mover mover = {.at = points[0]};
    double furthest = 0, there = 9;
    for (int i = 0; i < 480; i++) {
        motion_advance(&mover, &gait, motion_follow(&course, &mover, &gait, 0), 1.0 / 120);
        furthest = real_max(furthest, mover.at.x);
        if (mover.at.x > 3.8) {
            there = real_min(there, vec2_length(mover.v));
        }
    }
    end = mover.at;
    ck_assert(furthest > 3.8 && furthest < 4.3);
    ck_assert(there < .3 * gait.sprint);
    ck_assert(vec2_near(end, points[2], .05));
}
END_TEST

/* A planted foot turns him about the corner: he comes in along one leg and is on the other one step
 * later, with the speed that the angle lets through, at whatever tick. */
START_TEST(a_planted_foot_puts_him_on_the_way_out_whatever_the_tick)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_SPRINT, false);
    struct vec2 out = vec2_of(0, 1);
    double carried = gait.sprint * motion_turn_share(REAL_PI / 2), turn = real_sqrt(2);
    double lead = motion_plant_lead(carried, turn);
    for (int per_second = 60; per_second <= 240; per_second *= 2) {
        struct mover mover = {.at = {-lead, 0}, .v = {carried, 0}};
        motion_plant(&mover, &gait, out, gait.sprint);
        double left = mover.plant.left;
        NEAR(left, carried * turn / MOTION_PLANT, 1e-12);
        while (left > 0) {
            double dt = real_min(left, 1.0 / per_second);
            motion_advance(&mover, &gait, vec2_of(0, 9), dt);
            left -= dt;
        }
        ck_assert(vec2_near(mover.at, vec2_of(0, lead), 1e-9));
        ck_assert(vec2_near(mover.v, vec2_of(0, carried), 1e-9));
    }
}
END_TEST

START_TEST(a_planted_foot_makes_nobody_faster_and_none_who_stands_waits)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_SPRINT, false);
    struct mover slow = {.v = {1, 0}}, stands = {.at = {0, 0}}, fast = {.v = {gait.sprint, 0}};
    motion_plant(&slow, &gait, vec2_of(0, 1), gait.sprint);
    NEAR(vec2_length(slow.plant.to), 1, 1e-12);
    motion_plant(&stands, &gait, vec2_of(0, 1), gait.sprint);
    ck_assert(stands.plant.left == 0);
    motion_plant(&fast, &gait, vec2_of(-1, 0), gait.sprint);
    NEAR(vec2_length(fast.plant.to), gait.sprint * motion_turn_share(REAL_PI), 1e-12);
    struct mover straight = {.v = {3, 0}};
    motion_plant(&straight, &gait, vec2_of(1, 0), gait.sprint);
    ck_assert(straight.plant.left == 0);
}
END_TEST

START_TEST(mirrored_corners_are_run_as_mirror_images_to_the_last_bit)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_HARD, false);
    struct vec2 a[] = {{1, 0}, {4, .3}, {2, 3.1}, {2.5, 6}}, b[4];
    for (int i = 0; i < 4; i++) {
        b[i] = vec2_of(-a[i].x, a[i].y);
    }
    struct course one = motion_course(&arena, a, 4, &gait, 0),
                  two = motion_course(&arena, b, 4, &gait, 0);
    struct mover left = {.at = a[0]}, right = {.at = b[0]};
    for (int i = 0; i < 480; i++) {
        motion_advance(&left, &gait, motion_follow(&one, &left, &gait, 0), 1.0 / 120);
        motion_advance(&right, &gait, motion_follow(&two, &right, &gait, 0), 1.0 / 120);
        ck_assert(left.at.x == -right.at.x && left.at.y == right.at.y);
    }
    ck_assert_uint_eq(one.passed, 2);
}
END_TEST

START_TEST(an_arc_is_run_no_faster_than_the_feet_hold)
{
    struct gait gait = motion_gait(level_of(LEVEL_U16), EFFORT_SPRINT, false);
    struct route route;
    route_start(&route, &arena, vec2_of(-6, 1.15));
    route_round(&route, vec2_of(0, 0), 1.15, -1, vec2_of(-6, -1.15));
    struct course course = motion_course(&arena, route.points.at, route.points.count, &gait, 0);
    struct mover mover = {.at = route.points.at[0]};
    for (int i = 0; i < 780; i++) {
        motion_advance(&mover, &gait, motion_follow(&course, &mover, &gait, 0), 1.0 / 120);
        if (mover.at.x > .5) {
            ck_assert(vec2_length(mover.v) < 1.15 * sqrt(MOTION_ACROSS * 1.15));
            ck_assert(vec2_length(mover.at) > .85 && vec2_length(mover.at) < 1.45);
        }
    }
    ck_assert(vec2_near(mover.at, vec2_of(-6, -1.15), .05));
}
END_TEST

START_TEST(a_way_round_touches_the_circle_and_does_not_cross_it)
{
    struct route route;
    route_start(&route, &arena, vec2_of(-4, .2));
    route_round(&route, vec2_of(0, 0), 1, -1, vec2_of(4, .2));
    struct path path = path_of(&arena, route.points.at, route.points.count);
    double least = 9;
    for (double s = 0; s < path_length(&path); s += .01) {
        struct vec2 p = path_point(&path, s);
        least = real_min(least, vec2_length(p));
        ck_assert(p.y > -.01);
    }
    ck_assert_double_eq_tol(least, 1, .01);
}
END_TEST

START_TEST(mirrored_ways_are_mirror_images_to_the_last_bit)
{
    struct route right, left;
    struct tie_side tie = {{2, 6}, 1}, eit = {{-2, 6}, -1};
    struct vec2 user = {6, -.5}, screener = {5, 1}, exit = {.3, .9};
    struct vec2 resu = {-6, -.5}, renee = {-5, 1}, tixe = {-.3, .9};
    route_start(&right, &arena, user);
    route_start(&left, &arena, resu);
    route_shoulder(&right, screener, route_outward(user, screener, exit, &tie), .6, 1.15, exit);
    route_shoulder(&left, renee, route_outward(resu, renee, tixe, &eit), .6, 1.15, tixe);
    route_bow(&right, vec2_of(-3, 4), .5, vec2_of(0, 6), &tie);
    route_bow(&left, vec2_of(3, 4), .5, vec2_of(0, 6), &eit);
    ck_assert_uint_eq(right.points.count, left.points.count);
    for (size_t i = 0; i < right.points.count; i++) {
        ck_assert(right.points.at[i].x == -left.points.at[i].x);
        ck_assert(right.points.at[i].y == left.points.at[i].y);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("motion");
    TCase *all = tcase_create("motion");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, a_sprint_from_rest_follows_the_exponential_law);
    tcase_add_test(all, a_sprint_may_begin_on_the_run_or_the_wrong_way);
    tcase_add_test(all, published_splits_of_u15_girls_come_out);
    tcase_add_test(all, a_close_out_runs_and_stops_in_its_distance);
    tcase_add_test(all, turns_cost_what_was_measured);
    tcase_add_test(all, races_are_won_by_the_same_hundredths);
    tcase_add_test(all, shots_and_passes_take_their_time);
    tcase_add_test(all, every_throw_is_known_from_hand_to_hand);
    tcase_add_test(all, a_bounce_touches_the_floor_and_a_lob_goes_over_an_arm);
    tcase_add_test(all, ticks_do_not_change_a_sprint);
    tcase_add_test(all, a_straight_run_stops_on_its_spot_and_not_beyond);
    tcase_add_test(all, a_corner_is_reached_and_slows_the_runner);
    tcase_add_test(all, a_planted_foot_puts_him_on_the_way_out_whatever_the_tick);
    tcase_add_test(all, a_planted_foot_makes_nobody_faster_and_none_who_stands_waits);
    tcase_add_test(all, mirrored_corners_are_run_as_mirror_images_to_the_last_bit);
    tcase_add_test(all, an_arc_is_run_no_faster_than_the_feet_hold);
    tcase_add_test(all, a_way_round_touches_the_circle_and_does_not_cross_it);
    tcase_add_test(all, mirrored_ways_are_mirror_images_to_the_last_bit);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
