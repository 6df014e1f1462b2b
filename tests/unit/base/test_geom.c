/* SPDX-License-Identifier: MIT */
/* Paths, fitted curves and shapes: properties over many random cases, and the odd ones by hand. */
#include "base/geom/path.h"
#include "base/geom/shape.h"
#include "base/real.h"
#include "base/rng.h"
#include "suite.h"

#include <math.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

static struct rng rng;

static void open_own(void)
{
    open_arena();
    rng_seed(&rng, 20);
}

static struct vec2 anywhere(void)
{
    double x = rng_unit(&rng) * 15 - 7.5;
    return vec2_of(x, rng_unit(&rng) * 14);
}

static double off_path(const struct path *path, struct vec2 p)
{
    return vec2_distance(path_point(path, path_nearest(path, p, 0)), p);
}

START_TEST(a_path_is_measured_along_itself)
{
    struct vec2 points[] = {{0, 0}, {0, 0}, {3, 0}, {3, 4}, {3, 4}};
    struct path path = path_of(&arena, points, 5);
    ck_assert_double_eq(path_length(&path), 7);
    ck_assert(vec2_near(path_point(&path, 5), vec2_of(3, 2), 1e-12));
    ck_assert(vec2_near(path_point(&path, -1), points[0], 0));
    ck_assert(vec2_near(path_point(&path, 99), points[4], 0));
    ck_assert(vec2_near(path_direction(&path, 0), vec2_of(1, 0), 1e-12));
    ck_assert(vec2_near(path_direction(&path, 3), vec2_of(0, 1), 1e-12));
    ck_assert(vec2_near(path_direction(&path, 7), vec2_of(0, 1), 1e-12));
    CLOSE(path_nearest(&path, vec2_of(1, -2), 0), 1, 1e-12);
    CLOSE(path_nearest(&path, vec2_of(1, -2), 2), 2, 1e-12);
    CLOSE(path_nearest(&path, vec2_of(9, 3), 0), 6, 1e-12);
}
END_TEST

START_TEST(a_path_of_one_point_has_no_length_and_no_direction)
{
    struct vec2 point = {2, 3};
    struct path path = path_of(&arena, &point, 1);
    ck_assert_double_eq(path_length(&path), 0);
    ck_assert(vec2_near(path_point(&path, 4), point, 0));
    ck_assert_double_eq(vec2_length(path_direction(&path, 0)), 0);
    ck_assert_double_eq(path_nearest(&path, vec2_of(0, 0), 0), 0);
    ck_assert_uint_eq(path_fit(&arena, &path, 0.01, 0.5).count, 0);
    ck_assert_uint_eq(path_resample(&arena, &path, 0.1).count, 1);
    ck_assert_uint_eq(path_cut(&arena, &path, 0, 1).count, 1);
}
END_TEST

START_TEST(cut_and_resampled_paths_lie_on_the_path)
{
    for (int trial = 0; trial < 200; trial++) {
        struct vec2 points[9];
        size_t count = 2 + rng_below(&rng, 8);
        for (size_t i = 0; i < count; i++) {
            points[i] = anywhere();
        }
        struct path path = path_of(&arena, points, count);
        double length = path_length(&path), from = rng_unit(&rng) * length;
        double to = from + rng_unit(&rng) * (length - from);
        struct path cut = path_cut(&arena, &path, from, to);
        CLOSE(path_length(&cut), to - from, 1e-9);
        ck_assert(vec2_near(cut.at[0], path_point(&path, from), 1e-9));
        ck_assert(vec2_near(cut.at[cut.count - 1], path_point(&path, to), 1e-9));
        struct path even = path_resample(&arena, &path, 0.3);
        for (size_t i = 0; i < even.count; i++) {
            CLOSE(off_path(&path, even.at[i]), 0, 1e-9);
            ck_assert(!i || vec2_distance(even.at[i - 1], even.at[i]) <= 0.3 + 1e-9);
        }
        ck_assert(vec2_near(even.at[even.count - 1], points[count - 1], 0));
    }
}
END_TEST

/* Nowhere farther from each other than the tolerance, seen from both sides. */
static void same_way(const struct path *path, const struct curve *curve, double tolerance)
{
    struct path flat = curve_flatten(&arena, curve, tolerance / 50);
    struct path dense = path_resample(&arena, path, 0.02);
    for (size_t i = 0; i < dense.count; i++) {
        ck_assert_double_le(off_path(&flat, dense.at[i]), tolerance * 1.05);
    }
    for (size_t i = 0; i < flat.count; i++) {
        ck_assert_double_le(off_path(path, flat.at[i]), tolerance * 1.05);
    }
    ck_assert(vec2_near(flat.at[0], path->at[0], 0));
    ck_assert(vec2_near(flat.at[flat.count - 1], path->at[path->count - 1], 0));
}

START_TEST(a_straight_way_is_one_piece)
{
    struct vec2 points[] = {{0, 0}, {1, 1}, {1, 1}, {4, 4}};
    struct path path = path_of(&arena, points, 4);
    struct curve curve = path_fit(&arena, &path, 0.01, 0.5);
    ck_assert_uint_eq(curve.count, 1);
    same_way(&path, &curve, 0.01);
}
END_TEST

START_TEST(a_quarter_circle_is_one_piece_and_a_corner_splits)
{
    struct vec2 points[82];
    for (int i = 0; i <= 80; i++) {
        double a = REAL_PI / 2 * i / 80;
        points[i] = vec2_of(3 * real_cos(a), 3 * real_sin(a));
    }
    struct path arc = path_of(&arena, points, 81);
    struct curve curve = path_fit(&arena, &arc, 0.01, 0.5);
    ck_assert_uint_eq(curve.count, 1);
    same_way(&arc, &curve, 0.01);
    points[81] = vec2_of(0, 9); /* a right angle at the arc's end */
    struct path bent = path_of(&arena, points, 82);
    curve = path_fit(&arena, &bent, 0.01, 0.5);
    ck_assert_uint_eq(curve.count, 2);
    ck_assert(vec2_near(curve.piece[0].end, points[80], 0));
    same_way(&bent, &curve, 0.01);
}
END_TEST

START_TEST(an_s_bend_is_few_pieces_and_smooth_where_they_meet)
{
    struct vec2 points[201];
    for (int i = 0; i <= 200; i++) {
        points[i] = vec2_of(i * 0.05, 1.2 * real_sin(i * 0.05 * 1.1));
    }
    struct path path = path_of(&arena, points, 201);
    struct curve curve = path_fit(&arena, &path, 0.02, 0.5);
    ck_assert_uint_le(curve.count, 5);
    ck_assert_uint_ge(curve.count, 2);
    same_way(&path, &curve, 0.02);
    for (size_t i = 0; i + 1 < curve.count; i++) {
        struct vec2 in = vec2_sub(curve.piece[i].end, curve.piece[i].handle2);
        struct vec2 out = vec2_sub(curve.piece[i + 1].handle1, curve.piece[i].end);
        ck_assert_double_le(vec2_angle(in, out), 1e-6);
    }
}
END_TEST

START_TEST(any_path_is_followed_within_the_tolerance)
{
    for (int trial = 0; trial < 120; trial++) {
        struct vec2 points[8];
        size_t count = 2 + rng_below(&rng, 7);
        for (size_t i = 0; i < count; i++) {
            points[i] = i && rng_below(&rng, 6) == 0 ? points[i - 1] : anywhere();
        }
        struct path path = path_of(&arena, points, count);
        double corner = trial % 3 ? 0.4 : 4; /* also with no corner at all */
        struct curve curve = path_fit(&arena, &path, 0.05, corner);
        same_way(&path, &curve, 0.05);
    }
}
END_TEST

START_TEST(a_walk_there_and_back_is_followed)
{
    struct vec2 points[] = {{0, 0}, {2, 0}, {0.5, 0}};
    struct path path = path_of(&arena, points, 3);
    struct curve curve = path_fit(&arena, &path, 0.02, 0.5);
    ck_assert_uint_eq(curve.count, 2);
    same_way(&path, &curve, 0.02);
    curve = path_fit(&arena, &path, 0.02, 4);
    same_way(&path, &curve, 0.02);
}
END_TEST

START_TEST(segments_cross_or_keep_a_gap)
{
    double t, u;
    struct vec2 a = {0, 0}, b = {4, 0};
    ck_assert(segment_cross(a, b, vec2_of(1, -1), vec2_of(1, 3), &t, &u));
    CLOSE(t, 0.25, 1e-12);
    CLOSE(u, 0.25, 1e-12);
    ck_assert(!segment_cross(a, b, vec2_of(0, 1), vec2_of(4, 1), &t, &u));
    ck_assert(!segment_cross(a, b, vec2_of(5, -1), vec2_of(5, 1), &t, &u));
    ck_assert_double_eq(segment_gap(a, b, vec2_of(0, 1), vec2_of(4, 1)), 1);
    ck_assert_double_eq(segment_gap(a, b, vec2_of(7, 4), vec2_of(9, 9)), 5);
    ck_assert_double_eq(segment_gap(a, b, vec2_of(1, -1), vec2_of(1, 3)), 0);
    ck_assert_double_eq(segment_distance(vec2_of(7, 4), a, b, &t), 5);
    ck_assert_double_eq(t, 1);
    ck_assert_double_eq(segment_distance(vec2_of(3, 4), a, a, NULL), 5);
}
END_TEST

START_TEST(a_way_round_a_circle_clears_it)
{
    int turned = 0;
    for (int trial = 0; trial < 20000; trial++) {
        struct vec2 p = anywhere(), goal = anywhere(), c = anywhere(), turn;
        double r = 0.3 + rng_unit(&rng);
        if (vec2_distance(p, c) < r * 1.2 || vec2_distance(goal, c) < r * 1.2) {
            continue;
        }
        double gap = segment_distance(c, p, goal, NULL);
        if (!circle_detour(p, goal, c, r, &turn)) {
            ck_assert_double_ge(gap, r * (1 - 1e-8));
            continue;
        }
        turned++;
        ck_assert_double_lt(gap, r);
        ck_assert_double_ge(segment_distance(c, p, turn, NULL), r * (1 - 1e-6));
        ck_assert_double_ge(segment_distance(c, turn, goal, NULL), r * (1 - 1e-6));
        /* on the side that the straight way already passes on */
        double side = vec2_cross(vec2_sub(goal, p), vec2_sub(c, p));
        ck_assert(side * vec2_cross(vec2_sub(goal, p), vec2_sub(turn, p)) <= 0);
    }
    ck_assert_int_gt(turned, 500);
}
END_TEST

START_TEST(whoever_stands_in_a_circle_steps_out_unless_he_is_leaving)
{
    struct vec2 turn, c = {0, 0};
    ck_assert(circle_detour(vec2_of(0.5, 0), vec2_of(-5, 0), c, 1, &turn));
    ck_assert(vec2_near(turn, vec2_of(1, 0), 1e-12));
    ck_assert(!circle_detour(vec2_of(0.5, 0), vec2_of(5, 0), c, 1, &turn));
    ck_assert(circle_detour(c, vec2_of(5, 0), c, 1, &turn));
    CLOSE(vec2_length(turn), 1, 1e-12);
    ck_assert(!circle_detour(vec2_of(5, 0), vec2_of(0.2, 0), c, 1, &turn)); /* the goal is inside */
    ck_assert(!circle_detour(vec2_of(5, 0), vec2_of(5, 0), c, 1, &turn));
    /* head on: one side is as good, but it must be one */
    ck_assert(circle_detour(vec2_of(-5, 0), vec2_of(5, 0), c, 1, &turn));
    ck_assert_double_ge(segment_distance(c, vec2_of(-5, 0), turn, NULL), 1 - 1e-9);
}
END_TEST

START_TEST(how_far_a_way_goes_round_a_place_tells_on_which_side_it_passes)
{
    struct vec2 place = vec2_of(1, 2);
    struct vec2 under[] = {vec2_of(-3, 2), vec2_of(1, 1.9), vec2_of(5, 2.5)};
    struct vec2 over[] = {vec2_of(-3, 2), vec2_of(1, 2.1), vec2_of(5, 2.5)};
    struct vec2 twice[] = {vec2_of(0, 2), vec2_of(1, 1), vec2_of(2, 2), vec2_of(1, 3),
                           vec2_of(0, 2), vec2_of(1, 1), vec2_of(2, 2)};
    CLOSE(sweep_round(place, under, 3), REAL_PI + real_atan2(0.5, 4), 1e-12);
    CLOSE(sweep_round(place, over, 3), real_atan2(0.5, 4) - REAL_PI, 1e-12);
    CLOSE(sweep_round(place, twice, 7), 3 * REAL_PI, 1e-12);
    CLOSE(sweep_round(place, twice, 5), 2 * REAL_PI, 1e-12);
    CLOSE(sweep_round(place, under, 1), 0, 1e-12);
}
END_TEST

START_TEST(a_hull_holds_all_points_and_turns_one_way)
{
    for (int trial = 0; trial < 2000; trial++) {
        struct vec2 points[12], hull[12];
        size_t count = 1 + rng_below(&rng, 12);
        for (size_t i = 0; i < count; i++) {
            points[i] = vec2_of(rng_below(&rng, 6), rng_below(&rng, 6)); /* many on one line */
        }
        size_t corners = hull_of(&arena, points, count, hull);
        ck_assert(corners >= 1 && corners <= count);
        for (size_t i = 0; corners > 2 && i < corners; i++) {
            struct vec2 a = hull[i], b = hull[(i + 1) % corners], c = hull[(i + 2) % corners];
            ck_assert(vec2_cross(vec2_sub(b, a), vec2_sub(c, b)) > 0);
            for (size_t k = 0; k < count; k++) {
                ck_assert(vec2_cross(vec2_sub(b, a), vec2_sub(points[k], a)) >= 0);
            }
        }
    }
    struct vec2 same[] = {{1, 1}, {1, 1}, {1, 1}}, line[] = {{0, 0}, {2, 2}, {1, 1}}, hull[3];
    ck_assert_uint_eq(hull_of(&arena, same, 3, hull), 1);
    ck_assert_uint_eq(hull_of(&arena, line, 3, hull), 2);
    ck_assert_uint_eq(hull_of(&arena, same, 0, hull), 0);
    ck_assert_double_eq(polygon_area(line, 2), 0);
}
END_TEST

START_TEST(boxes_that_only_touch_do_not_overlap)
{
    struct box2 a = {{0, 0}, {2, 2}}, b = {{2, 0}, {3, 1}}, c = {{1, 1}, {1.5, 9}};
    ck_assert(!box_overlap(a, b));
    ck_assert(box_overlap(a, c));
    ck_assert(box_overlap(c, a));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("geom");
    TCase *all = tcase_create("geom");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_own, close_arena);
    tcase_add_test(all, a_path_is_measured_along_itself);
    tcase_add_test(all, a_path_of_one_point_has_no_length_and_no_direction);
    tcase_add_test(all, cut_and_resampled_paths_lie_on_the_path);
    tcase_add_test(all, a_straight_way_is_one_piece);
    tcase_add_test(all, a_quarter_circle_is_one_piece_and_a_corner_splits);
    tcase_add_test(all, an_s_bend_is_few_pieces_and_smooth_where_they_meet);
    tcase_add_test(all, any_path_is_followed_within_the_tolerance);
    tcase_add_test(all, a_walk_there_and_back_is_followed);
    tcase_add_test(all, segments_cross_or_keep_a_gap);
    tcase_add_test(all, a_way_round_a_circle_clears_it);
    tcase_add_test(all, whoever_stands_in_a_circle_steps_out_unless_he_is_leaving);
    tcase_add_test(all, how_far_a_way_goes_round_a_place_tells_on_which_side_it_passes);
    tcase_add_test(all, a_hull_holds_all_points_and_turns_one_way);
    tcase_add_test(all, boxes_that_only_touch_do_not_overlap);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
