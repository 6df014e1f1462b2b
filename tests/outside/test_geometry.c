/* SPDX-License-Identifier: MIT */
/* Geometry against published and textbook values; the source stands beside each check. */
#include "base/geom/path.h"
#include "base/geom/shape.h"
#include "base/real.h"
#include "suite.h"

#include <math.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

/* R. Shah's published notebook on NBA tracking (convex hull of one defence, feet): four corners,
 * 165.2116 square feet, their mean (22.60381, 21.35466); the fifth player is inside. */
START_TEST(the_published_hull_of_a_defense)
{
    const struct vec2 players[] = {{26.45010, 9.01887},
                                   {19.60761, 17.25700},
                                   {15.12674, 33.56918},
                                   {29.23077, 25.57358},
                                   {21.74513, 29.49702}};
    struct vec2 hull[5], sum = {0, 0};
    size_t corners = hull_of(&arena, players, 5, hull);
    ck_assert_uint_eq(corners, 4);
    CLOSE(polygon_area(hull, corners), 165.2116, 1e-4);
    for (size_t i = 0; i < corners; i++) {
        sum = vec2_add(sum, hull[i]);
    }
    CLOSE(sum.x / 4, 22.60381, 1e-5);
    CLOSE(sum.y / 4, 21.35466, 1e-5);
    CLOSE(polygon_area(hull, corners) * FEET * FEET, 15.3487, 5e-4);
}
END_TEST

static double hull_area(const struct vec2 *points, size_t *corners)
{
    struct vec2 hull[5];
    *corners = hull_of(&arena, points, 5, hull);
    return polygon_area(hull, *corners);
}

/* Areas by hand: five-out, four-out one-in and horns on round numbers of feet. */
START_TEST(hulls_of_formations)
{
    const struct vec2 five[] = {{-22, 0}, {22, 0}, {-17, 17}, {17, 17}, {0, 24.5}};
    const struct vec2 four[] = {{-22, 0}, {22, 0}, {-9, 23}, {9, 23}, {6, 2}};
    const struct vec2 horns[] = {{-22, 0}, {22, 0}, {-8, 14}, {8, 14}, {0, 26}};
    size_t corners;
    ck_assert_double_eq(hull_area(five, &corners), 790.5);
    ck_assert_double_eq(hull_area(four, &corners), 713);
    ck_assert_double_eq(hull_area(horns, &corners), 572);
    ck_assert_uint_eq(corners, 3);
}
END_TEST

/* Curvature 4A/abc through three points (Menger 1930): unit circle 1, the flat one 0.2. */
START_TEST(curvature_through_three_points)
{
    const struct vec2 round[] = {{0, 0}, {1, 1}, {2, 0}}, flat[] = {{0, 0}, {3, 1}, {6, 0}};
    CLOSE(4 * polygon_area(round, 3) / (sqrt(2) * sqrt(2) * 2), 1, 1e-12);
    CLOSE(4 * polygon_area(flat, 3) / (sqrt(10) * sqrt(10) * 6), 0.2, 1e-12);
}
END_TEST

/* The quadratic (0,0) (2,3) (4,0) has length 5.19857 (closed form); as a cubic by degree raising.
 */
START_TEST(a_curve_flattens_to_its_true_length)
{
    struct curve_piece piece = {{4 / 3.0, 2}, {8 / 3.0, 2}, {4, 0}};
    struct curve curve = {{0, 0}, &piece, 1};
    struct path path = curve_flatten(&arena, &curve, 1e-6);
    CLOSE(path_length(&path), 5.19857, 1e-5);
}
END_TEST

/* A quarter circle by one cubic with handles of 0.5523 r errs by 2.7 parts in 10,000 of the radius
 * (a textbook result); least squares may not do worse than the tolerance it was given. */
START_TEST(a_quarter_circle_is_fitted_as_well_as_the_textbook)
{
    struct vec2 points[91];
    for (int i = 0; i <= 90; i++) {
        points[i] = vec2_of(real_cos(i * REAL_PI / 180), real_sin(i * REAL_PI / 180));
    }
    struct path arc = path_of(&arena, points, 91);
    struct curve curve = path_fit(&arena, &arc, 3e-4, 0.5);
    ck_assert_uint_eq(curve.count, 1);
    struct path flat = curve_flatten(&arena, &curve, 1e-6);
    for (size_t i = 0; i < flat.count; i++) {
        CLOSE(vec2_length(flat.at[i]), 1, 3.5e-4);
    }
    CLOSE(vec2_distance(curve.piece[0].handle1, curve.start), 0.5523, 0.004);
}
END_TEST

/* Angles between vectors, unsigned and signed: schoolbook values. */
START_TEST(angles_between_vectors)
{
    const double degrees = 180 / REAL_PI;
    CLOSE(vec2_angle(vec2_of(3, 4), vec2_of(4, 3)) * degrees, 16.2602, 5e-5);
    CLOSE(vec2_angle(vec2_of(1, 0), vec2_of(-1, 1)) * degrees, 135, 1e-9);
    CLOSE(real_atan2(vec2_cross(vec2_of(1, 0), vec2_of(1, -1)), 1) * degrees, -45, 1e-9);
}
END_TEST

/* A passing lane (0,0) to (8,6) with a defender at (5,2): foot 5.2 along, 1.4 off. */
START_TEST(the_foot_of_a_defender_in_a_lane)
{
    double t;
    CLOSE(segment_distance(vec2_of(5, 2), vec2_of(0, 0), vec2_of(8, 6), &t), 1.4, 1e-12);
    CLOSE(t * 10, 5.2, 1e-12);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("geometry against published values");
    TCase *all = tcase_create("outside");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, the_published_hull_of_a_defense);
    tcase_add_test(all, hulls_of_formations);
    tcase_add_test(all, curvature_through_three_points);
    tcase_add_test(all, a_curve_flattens_to_its_true_length);
    tcase_add_test(all, a_quarter_circle_is_fitted_as_well_as_the_textbook);
    tcase_add_test(all, angles_between_vectors);
    tcase_add_test(all, the_foot_of_a_defender_in_a_lane);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
