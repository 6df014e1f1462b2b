/* SPDX-License-Identifier: MIT */
/* Our own elementary functions against the C library's, densely; the random row against itself. */
#include "base/geom/vec2.h"
#include "base/real.h"
#include "base/rng.h"
#include "suite.h"

#include <math.h>
#include <string.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

START_TEST(exp_is_right_to_a_part_in_1e12)
{
    for (double x = -700; x <= 700; x += 0.0137) {
        CLOSE(real_exp(x) / exp(x), 1, 1e-12);
    }
    for (double x = -2; x <= 2; x += 0.00013) {
        CLOSE(real_exp(x) / exp(x), 1, 1e-14);
    }
    ck_assert_double_eq(real_exp(0), 1);
    ck_assert_double_eq(real_exp(-1000), 0);
    ck_assert(isinf(real_exp(1000)));
    ck_assert(isnan(real_exp((double)NAN)));
    CLOSE(real_exp(-740) / exp(-740), 1, 1e-4); /* hardly any digits are left there */
}
END_TEST

START_TEST(log_is_right_to_1e12)
{
    for (double x = 1e-3; x < 50; x += 0.00071) {
        CLOSE(real_log(x), log(x), 1e-13);
    }
    for (int e = -1070; e < 1020; e += 7) {
        double x = ldexp(1.37, e);
        CLOSE(real_log(x), log(x), 1e-12);
    }
    ck_assert_double_eq(real_log(1), 0);
    ck_assert(isinf(real_log(0)) && real_log(0) < 0);
    ck_assert(isnan(real_log(-1)));
    CLOSE(real_log(1.79e308), log(1.79e308), 1e-12);
}
END_TEST

START_TEST(sine_and_cosine_are_right_to_1e12_up_to_a_million)
{
    for (double x = -20; x <= 20; x += 0.00037) {
        CLOSE(real_sin(x), sin(x), 1e-15);
        CLOSE(real_cos(x), cos(x), 1e-15);
    }
    for (double x = -1e6; x <= 1e6; x += 17.39) {
        CLOSE(real_sin(x), sin(x), 1e-12);
        CLOSE(real_cos(x), cos(x), 1e-12);
    }
    ck_assert_double_eq(real_sin(0), 0);
    ck_assert_double_eq(real_cos(0), 1);
}
END_TEST

START_TEST(arc_tangent_and_cosine_are_right_to_1e12)
{
    for (double angle = -3.1415; angle < 3.1415; angle += 0.00019) {
        for (double r = 0.003; r < 40; r *= 17) {
            double x = r * cos(angle), y = r * sin(angle);
            CLOSE(real_atan2(y, x), atan2(y, x), 1e-15);
        }
    }
    ck_assert_double_eq(real_atan2(0, 0), 0);
    CLOSE(real_atan2(0, -1), REAL_PI, 1e-15);
    CLOSE(real_atan2(1, 0), REAL_PI / 2, 1e-15);
    CLOSE(real_atan2(-1, 0), -REAL_PI / 2, 1e-15);
    for (double x = -1; x <= 1; x += 0.00011) {
        CLOSE(real_acos(x), acos(x), 1e-14);
    }
    ck_assert_double_eq(real_acos(1.5), 0);
    CLOSE(real_acos(-2), REAL_PI, 1e-15);
}
END_TEST

START_TEST(lengths_neither_overflow_nor_vanish)
{
    for (double x = -12; x < 12; x += 0.0713) {
        for (double y = -9; y < 9; y += 0.0517) {
            CLOSE(real_hypot(x, y), hypot(x, y), 1e-14);
        }
    }
    CLOSE(real_hypot(3e200, 4e200) / 5e200, 1, 1e-15);
    CLOSE(real_hypot(3e-200, 4e-200) / 5e-200, 1, 1e-15);
    ck_assert_double_eq(real_hypot(0, 0), 0);
    ck_assert_double_eq(real_sqrt(-1), 0);
    ck_assert_double_eq(real_sqrt(2.25), 1.5);
}
END_TEST

START_TEST(mixing_and_smoothing_keep_their_ends)
{
    ck_assert_double_eq(real_mix(2, 7, 0), 2);
    ck_assert_double_eq(real_mix(0.1, 0.7, 1), 0.7);
    ck_assert_double_eq(real_smooth(1, 2, 4), 0);
    ck_assert_double_eq(real_smooth(3, 2, 4), 0.5);
    ck_assert_double_eq(real_smooth(9, 2, 4), 1);
    ck_assert_double_eq(real_smooth(2, 2, 2), 1);
    ck_assert_double_eq(real_clamp(5, 0, 2), 2);
    ck_assert_double_eq(real_clamp(-5, 0, 2), 0);
}
END_TEST

START_TEST(the_random_row_is_the_published_one_and_fair)
{
    /* The first numbers of splitmix64 from 1234567, as its authors' test prints them. */
    struct rng rng;
    rng_seed(&rng, 1234567);
    ck_assert_uint_eq(rng_next(&rng), 6457827717110365317ull);
    ck_assert_uint_eq(rng_next(&rng), 3203168211198807973ull);
    double sum = 0, squares = 0, unit = 0;
    unsigned hits[7] = {0};
    enum { DRAWS = 100000 };
    for (int i = 0; i < DRAWS; i++) {
        double x = rng_normal(&rng);
        sum += x;
        squares += x * x;
        double u = rng_unit(&rng);
        ck_assert(u >= 0 && u < 1);
        unit += u;
        hits[rng_below(&rng, 7)]++;
    }
    CLOSE(sum / DRAWS, 0, 0.02);
    CLOSE(squares / DRAWS, 1, 0.02);
    CLOSE(unit / DRAWS, 0.5, 0.01);
    for (int i = 0; i < 7; i++) {
        CLOSE(hits[i] / (double)DRAWS, 1.0 / 7, 0.01);
    }
}
END_TEST

START_TEST(hashes_are_fnv_1a)
{
    ck_assert_uint_eq(hash_bytes(HASH_SEED, "", 0), 0xcbf29ce484222325ull);
    ck_assert_uint_eq(hash_bytes(HASH_SEED, "a", 1), 0xaf63dc4c8601ec8cull);
    ck_assert_uint_eq(hash_bytes(HASH_SEED, "foobar", 6), 0x85944171f73967e8ull);
}
END_TEST

START_TEST(points_turn_from_x_toward_y)
{
    struct vec2 x = {1, 0};
    struct vec2 turned = vec2_turn(x, REAL_PI / 2);
    CLOSE(turned.x, 0, 1e-15);
    CLOSE(turned.y, 1, 1e-15);
    ck_assert_double_eq(vec2_left(x).y, 1);
    ck_assert_double_eq(vec2_angle(x, vec2_of(0, 0)), 0);
    CLOSE(vec2_angle(x, vec2_of(-1, 0)), REAL_PI, 1e-15);
    ck_assert_double_eq(vec2_length(vec2_unit(vec2_of(0, 0))), 0);
    CLOSE(vec2_length(vec2_unit(vec2_of(-3, 17))), 1, 1e-15);
    ck_assert_double_eq(vec2_distance(vec2_along(x, vec2_of(0, 1), 4), x), 4);
    ck_assert(vec2_near(x, vec2_of(1, 0.5), 0.5));
    ck_assert(!vec2_near(x, vec2_of(1, 0.51), 0.5));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("real");
    TCase *all = tcase_create("real");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, exp_is_right_to_a_part_in_1e12);
    tcase_add_test(all, log_is_right_to_1e12);
    tcase_add_test(all, sine_and_cosine_are_right_to_1e12_up_to_a_million);
    tcase_add_test(all, arc_tangent_and_cosine_are_right_to_1e12);
    tcase_add_test(all, lengths_neither_overflow_nor_vanish);
    tcase_add_test(all, mixing_and_smoothing_keep_their_ends);
    tcase_add_test(all, the_random_row_is_the_published_one_and_fair);
    tcase_add_test(all, hashes_are_fnv_1a);
    tcase_add_test(all, points_turn_from_x_toward_y);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
