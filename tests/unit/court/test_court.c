/* SPDX-License-Identifier: MIT */
/* What must hold for every spot, formation and level on every court. */
#include "base/real.h"
#include "floor/court/court.h"
#include "suite.h"

#include <math.h>
#include <string.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

START_TEST(every_spot_of_every_court_is_inside_the_floor_and_mirrors)
{
    const struct court *court = court_of((enum court_code)_i);
    for (int spot = 0; spot < SPOT_COUNT; spot++) {
        struct vec2 left = court_spot(court, (enum spot)spot, SIDE_LEFT);
        struct vec2 right = court_spot(court, (enum spot)spot, SIDE_RIGHT);
        struct vec2 none = court_spot(court, (enum spot)spot, SIDE_NONE);
        ck_assert(court_inside(court, left, 0.2) && court_inside(court, none, 0.2));
        ck_assert_double_eq(left.x, 0 - right.x);
        ck_assert_double_eq(left.y, right.y);
        ck_assert(right.x >= 0 && (left.x < 0 || !signbit(left.x)));
        ck_assert(right.y <= court->half_court);
        ck_assert_str_ne(spot_row((enum spot)spot)->source, "");
        if (spot_row((enum spot)spot)->sided) {
            ck_assert(right.x > 0);
        }
        struct vec2 back = court_mirror_back(court, right);
        ck_assert(court_inside(court, back, 0.2) && back.y >= court->half_court - 1e-9);
        ck_assert(vec2_near(court_mirror_back(court, back), right, 1e-12));
    }
}
END_TEST

START_TEST(perimeter_spots_are_outside_the_arc_and_others_inside_it)
{
    const struct court *court = court_of((enum court_code)_i);
    for (int spot = 0; spot < SPOT_COUNT; spot++) {
        struct vec2 p = court_spot(court, (enum spot)spot, SIDE_RIGHT);
        bool beyond_arc = vec2_length(p) > court->perimeter + 0.1;
        bool beyond_straight =
            p.y <= court->junction && court->arc > 0 && p.x > court->straight + 0.1;
        if (spot_row((enum spot)spot)->perimeter) {
            ck_assert(beyond_arc || beyond_straight);
        }
    }
}
END_TEST

START_TEST(the_numbers_of_a_court_agree_with_each_other)
{
    const struct court *c = court_of((enum court_code)_i);
    ck_assert(c->baseline < c->board && c->board < 0 && c->free_throw > 0);
    ck_assert(c->half_court > c->perimeter && c->half_width > c->straight);
    CLOSE(c->junction, real_sqrt(c->arc * c->arc - c->straight * c->straight), 1e-9);
    ck_assert(c->block_near < c->block_far && c->block_far < c->mark[1]);
    ck_assert(c->mark[0] < c->mark[1] && c->mark[1] < c->mark[2] && c->mark[2] < c->free_throw);
    ck_assert_double_eq(c->mark[3], 0);
    ck_assert(c->arc == 0 || c->arc == c->perimeter);
    ck_assert(c->no_charge == 0 || c->no_charge > -c->board);
    ck_assert(c->lane_seconds == 3 && c->throw_in_seconds == 5 && c->backcourt_seconds >= 8);
    enum court_code found = COURT_COUNT;
    ck_assert(court_find(str_of(c->word), &found));
    ck_assert_int_eq(found, _i);
    ck_assert_str_ne(c->name, "");
    ck_assert_str_ne(c->source, "");
}
END_TEST

START_TEST(every_formation_puts_five_on_five_places)
{
    const struct court *court = court_of((enum court_code)_i);
    for (size_t f = 0; f < formation_count(); f++) {
        const struct formation *formation = formation_at(f);
        int balls = 0;
        for (int i = 0; i < 5; i++) {
            struct vec2 p = formation_point(court, &formation->at[i]);
            balls += formation->at[i].ball;
            ck_assert_int_eq(court_inside(court, p, 0), !formation->at[i].out_of_bounds);
            ck_assert_int_eq(formation->at[i].ball, formation->at[i].out_of_bounds);
            for (int k = 0; k < i; k++) {
                struct vec2 q = formation_point(court, &formation->at[k]);
                ck_assert_double_ge(vec2_distance(p, q), 3 * FEET);
            }
            if (!formation->full_floor) {
                ck_assert(p.y < court->half_court);
            }
        }
        ck_assert_int_le(balls, 1);
        size_t found = 99;
        ck_assert(formation_find(str_of(formation->word), &found));
        ck_assert_uint_eq(found, f);
        if (formation->figures) {
            ck_assert(formation_find(str_of(formation->figures), &found));
            ck_assert_uint_eq(found, f);
        }
    }
}
END_TEST

START_TEST(formations_stand_where_their_table_says)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    size_t stack, throw_in, press, jump;
    ck_assert(formation_find(STR("stack"), &stack));
    ck_assert(formation_find(STR("Baseline inbounds STACK"), &throw_in));
    ck_assert(formation_find(STR("pressbreak"), &press));
    ck_assert(formation_find(STR("jump ball"), &jump));
    const struct formation *f = formation_at(stack);
    struct vec2 two = formation_point(court, &f->at[1]), four = formation_point(court, &f->at[3]);
    ck_assert(vec2_near(four, vec2_add(two, vec2_of(0, 4 * FEET)), 1e-12));
    f = formation_at(throw_in);
    struct vec2 five = formation_point(court, &f->at[4]);
    ck_assert(vec2_near(five,
                        vec2_mix(court_spot(court, SPOT_BLOCK, SIDE_RIGHT),
                                 court_spot(court, SPOT_ELBOW, SIDE_RIGHT), 0.5),
                        1e-12));
    ck_assert_double_lt(formation_point(court, &f->at[2]).y, court->baseline);
    f = formation_at(press);
    ck_assert(f->full_floor);
    ck_assert_double_gt(formation_point(court, &f->at[3]).y,
                        2 * court->half_court - court->baseline);
    f = formation_at(jump);
    struct vec2 right = formation_point(court, &f->at[1]);
    CLOSE(vec2_distance(right, vec2_of(0, court->half_court)), 9 * FEET, 1e-12);
    ck_assert_double_gt(right.x, court->circle);
}
END_TEST

START_TEST(words_are_found_however_they_are_hyphened)
{
    size_t index, other;
    ck_assert(formation_find(STR("fiveout"), &index) && formation_find(STR("5 out"), &other));
    ck_assert_uint_eq(index, other);
    ck_assert(formation_find(STR("FOUR-OUT-ONE-IN"), &index));
    ck_assert(!formation_find(STR("five"), &index));
    ck_assert(!formation_find(STR(""), &index));
    enum level_code level;
    ck_assert(level_find(STR("U16 Girls"), &level) && level == LEVEL_U16_GIRLS);
    ck_assert(level_find(STR("middleschool boys"), &level) && level == LEVEL_MIDDLE_SCHOOL_BOYS);
    ck_assert(!level_find(STR("u15"), &level));
    enum court_code code;
    ck_assert(court_find(STR("high school"), &code) && code == COURT_HIGH_SCHOOL);
    ck_assert(!court_find(STR("high"), &code));
    ck_assert(!court_find(STR("high-schools"), &code));
}
END_TEST

START_TEST(lines_are_met_at_their_nearest_point_inside_the_floor)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct vec2 p = vec2_of(-3, 5);
    struct vec2 base = court_line_point(court, SPOT_BASELINE, SIDE_NONE, p);
    CLOSE(base.x, -3, 1e-12);
    CLOSE(base.y, court->baseline + 3 * FEET, 1e-12);
    struct vec2 side = court_line_point(court, SPOT_SIDELINE, SIDE_NONE, p);
    CLOSE(side.x, -22 * FEET, 1e-12);
    CLOSE(side.y, 5, 1e-12);
    CLOSE(court_line_point(court, SPOT_SIDELINE, SIDE_RIGHT, p).x, 22 * FEET, 1e-12);
    struct vec2 line = court_line_point(court, SPOT_FREE_THROW_LINE, SIDE_NONE, p);
    CLOSE(line.x, -6 * FEET, 1e-12);
    CLOSE(line.y, 13.75 * FEET, 1e-12);
    CLOSE(court_line_point(court, SPOT_HALF_COURT, SIDE_NONE, p).y, court->half_court, 1e-12);
}
END_TEST

START_TEST(a_throw_in_is_taken_outside_the_nearest_line)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct vec2 low = court_outside(court, court_spot(court, SPOT_SHORT_CORNER, SIDE_RIGHT));
    CLOSE(low.y, court->baseline - 2 * FEET, 1e-12);
    struct vec2 hash = court_outside(court, court_spot(court, SPOT_HASH, SIDE_LEFT));
    CLOSE(hash.x, -court->half_width - 2 * FEET, 1e-12);
    CLOSE(hash.y, court->hash, 1e-12);
    struct vec2 back = court_outside(court, vec2_of(1, 2 * court->half_court));
    ck_assert(!court_inside(court, back, 0) && back.y > court->half_court);
    ck_assert(court_in_lane(court, vec2_of(court->lane_half_width, 0)));
    ck_assert(!court_in_lane(court, vec2_of(court->lane_half_width + 0.01, 0)));
    ck_assert(!court_in_lane(court, vec2_of(0, court->free_throw + 0.01)));
}
END_TEST

START_TEST(each_perimeter_spot_is_nearest_to_itself)
{
    const struct court *court = court_of((enum court_code)_i);
    for (int spot = 0; spot < SPOT_COUNT; spot++) {
        if (!spot_row((enum spot)spot)->perimeter) {
            continue;
        }
        enum side side = SIDE_NONE;
        double far = 1;
        struct vec2 p = court_spot(court, (enum spot)spot, SIDE_LEFT);
        ck_assert_int_eq(court_nearest_perimeter(court, p, &side, &far), spot);
        CLOSE(far, 0, 1e-12);
        ck_assert_int_eq(side, spot_row((enum spot)spot)->sided ? SIDE_LEFT : SIDE_NONE);
    }
}
END_TEST

START_TEST(levels_are_ordered_and_means_are_means)
{
    for (int i = 0; i < LEVEL_COUNT; i++) {
        const struct level *level = level_of((enum level_code)i);
        ck_assert(level->sprint > level->jog && level->jog > level->walk && level->walk > 0.5);
        ck_assert(level->slide < level->backpedal && level->backpedal < level->sprint);
        ck_assert(level->dribble > 0.5 && level->dribble < 1);
        ck_assert(level->pass > 5 && level->reaction > 0.2 && level->brake > 3);
        ck_assert(level->catch_shot >= level->catch_pass && level->tau > 0.9);
        ck_assert(level->step > 0.35 * level->height && level->step < 0.47 * level->height);
        ck_assert_str_ne(level->source, "");
        enum level_code found;
        ck_assert(level_find(str_of(level->word), &found) && found == (enum level_code)i);
    }
    CLOSE(level_of(LEVEL_U16)->sprint, 7.55, 1e-12);
    CLOSE(level_of(LEVEL_U16)->pass, 8.4, 1e-12);
    ck_assert_double_eq(level_of(LEVEL_JV_GIRLS)->sprint, level_of(LEVEL_U16_GIRLS)->sprint);
    ck_assert_double_eq(level_of(LEVEL_VARSITY)->brake, level_of(LEVEL_U18)->brake);
    ck_assert_double_eq(level_of(LEVEL_MIDDLE_SCHOOL)->tau, level_of(LEVEL_U14)->tau);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("court");
    TCase *all = tcase_create("court");
    tcase_add_loop_test(all, every_spot_of_every_court_is_inside_the_floor_and_mirrors, 0,
                        COURT_COUNT);
    tcase_add_loop_test(all, perimeter_spots_are_outside_the_arc_and_others_inside_it, 0,
                        COURT_COUNT);
    tcase_add_loop_test(all, the_numbers_of_a_court_agree_with_each_other, 0, COURT_COUNT);
    tcase_add_loop_test(all, every_formation_puts_five_on_five_places, 0, COURT_COUNT);
    tcase_add_test(all, formations_stand_where_their_table_says);
    tcase_add_test(all, words_are_found_however_they_are_hyphened);
    tcase_add_test(all, lines_are_met_at_their_nearest_point_inside_the_floor);
    tcase_add_test(all, a_throw_in_is_taken_outside_the_nearest_line);
    tcase_add_loop_test(all, each_perimeter_spot_is_nearest_to_itself, 0, COURT_COUNT);
    tcase_add_test(all, levels_are_ordered_and_means_are_means);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
