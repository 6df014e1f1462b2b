/* SPDX-License-Identifier: MIT */
/* The floors against published numbers; the source stands beside each check. */
#include "base/real.h"
#include "floor/court/court.h"
#include "suite.h"

#include <math.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

struct published {
    enum court_code code;
    double unit;
    double half_width, ring, board, lane_half, free_throw, arc, straight, junction, arc_top,
        half_court;
    double no_charge;
};
/* Rulebook dimensions from the inner edge of the baseline, in the code's own unit: FIBA Official
 * Basketball Rules 2024 art. 2; NBA Official Rules, rule 1; WNBA rule 1 (arc 22 ft 1.75 in,
 * straights 3 ft from the sideline); NCAA court diagram of 17 June 2019; NFHS rule 1 (84 x 50 ft).
 * Junction and top of the arc follow by arithmetic; the NCAA diagram prints 9 ft 10 3/8 in for the
 * junction, the NBA's 14 ft, FIBA's 2.99 m. */
static const struct published table[] = {
    {COURT_FIBA, 1, 7.5, 1.575, 1.2, 2.45, 5.8, 6.75, 6.6, 2.990, 8.325, 14, 1.25},
    {COURT_NBA, FEET, 25, 5.25, 4, 8, 19, 23.75, 22, 14.198, 29, 47, 4},
    {COURT_WNBA, FEET, 25, 5.25, 4, 8, 19, 22.146, 22, 7.787, 27.396, 47, 4},
    {COURT_COLLEGE_MEN, FEET, 25, 5.25, 4, 6, 19, 22.146, 21.656, 9.881, 27.396, 47, 4},
    {COURT_COLLEGE_WOMEN, FEET, 25, 5.25, 4, 6, 19, 22.146, 21.656, 9.881, 27.396, 47, 4},
    {COURT_HIGH_SCHOOL, FEET, 25, 5.25, 4, 6, 19, 19.75, 19.75, 5.25, 25, 42, 0},
};

START_TEST(courts_have_their_rulebooks_dimensions)
{
    const struct published *p = &table[_i];
    const struct court *c = court_of(p->code);
    double unit = p->unit, half_millimetre = 0.0006;
    CLOSE(c->half_width / unit, p->half_width, 1e-9);
    CLOSE(-c->baseline / unit, p->ring, 1e-9);
    CLOSE((c->board - c->baseline) / unit, p->board, 1e-9);
    CLOSE(c->lane_half_width / unit, p->lane_half, 1e-9);
    CLOSE((c->free_throw - c->baseline) / unit, p->free_throw, 1e-9);
    CLOSE(c->arc / unit, p->arc, half_millimetre);
    CLOSE(c->straight / unit, p->straight, half_millimetre);
    CLOSE((c->junction - c->baseline) / unit, p->junction, half_millimetre);
    CLOSE((c->arc - c->baseline) / unit, p->arc_top, half_millimetre);
    CLOSE((c->half_court - c->baseline) / unit, p->half_court, 1e-9);
    CLOSE(c->no_charge / unit, p->no_charge, 1e-9);
}
END_TEST

/* FIBA art. 2: straights 0.90 m from the sideline; NBA rule 1: 3 ft; NCAA diagram: 40 1/8 in. */
START_TEST(straights_keep_their_rulebooks_distance_from_the_sideline)
{
    const struct court *fiba = court_of(COURT_FIBA), *nba = court_of(COURT_NBA);
    const struct court *college = court_of(COURT_COLLEGE_WOMEN);
    CLOSE(fiba->half_width - fiba->straight, 0.90, 1e-9);
    CLOSE((nba->half_width - nba->straight) / FEET, 3, 1e-9);
    CLOSE((college->half_width - college->straight) / FEET * 12, 40.125, 1e-9);
}
END_TEST

/* Worked arithmetic on the rulebook numbers: FIBA arc 155.797 degrees and 18.3544 m long, it begins
 * 1.4151 m in front of the ring; NBA arc 135.7352 degrees, 56.2644 ft, 8.9478 ft in front. */
START_TEST(arcs_have_the_right_angle_and_length)
{
    const struct court *fiba = court_of(COURT_FIBA), *nba = court_of(COURT_NBA);
    double angle = 2 * real_atan2(fiba->straight, fiba->junction);
    CLOSE(angle * 180 / REAL_PI, 155.7970, 5e-4);
    CLOSE(angle * fiba->arc, 18.3544, 5e-4);
    CLOSE(fiba->junction, 1.4151, 5e-4);
    CLOSE(1 / fiba->arc, 0.1481, 5e-4);
    angle = 2 * real_atan2(nba->straight, nba->junction);
    CLOSE(angle * 180 / REAL_PI, 135.7352, 5e-4);
    CLOSE(angle * nba->arc / FEET, 56.2644, 5e-4);
    CLOSE(nba->junction / FEET, 8.9478, 5e-4);
    CLOSE(2 * REAL_PI * fiba->circle, 11.3097, 5e-4);
}
END_TEST

/* FIBA's arc top is level with its throw-in line, 8.325 m; NFHS's with the top of the key, 25 ft.
 */
START_TEST(arc_tops_meet_the_marks_they_are_made_to_meet)
{
    const struct court *fiba = court_of(COURT_FIBA), *school = court_of(COURT_HIGH_SCHOOL);
    CLOSE(fiba->arc, fiba->hash, 1e-9);
    CLOSE(school->arc, school->free_throw + school->circle, 1e-9);
}
END_TEST

/* NFHS 1-5-2 and the state associations' diagrams: block 7 to 8 ft from the baseline, marks at
 * 11'0"-11'2", 14'2"-14'4", 17'4"-17'6"; FIBA diagram: 1.75-1.80, 2.65-3.05, 3.90-3.95, 4.80-4.85.
 */
START_TEST(lane_marks_are_where_the_diagrams_have_them)
{
    const struct court *school = court_of(COURT_HIGH_SCHOOL), *fiba = court_of(COURT_FIBA);
    const double inches[] = {133, 171, 209}, metres[] = {1.775, 3.925, 4.825};
    for (int i = 0; i < 3; i++) {
        CLOSE((school->mark[i] - school->baseline) / FEET * 12, inches[i], 1e-9);
        CLOSE(fiba->mark[i] - fiba->baseline, metres[i], 1e-9);
    }
    CLOSE((school->block_near - school->baseline) / FEET, 7, 1e-9);
    CLOSE((school->block_far - school->baseline) / FEET, 8, 1e-9);
    CLOSE(fiba->block_near - fiba->baseline, 2.65, 1e-9);
    CLOSE(fiba->block_far - fiba->baseline, 3.05, 1e-9);
}
END_TEST

/* FIBA 2024 art. 26 to 29; NBA and WNBA rules 7 and 10; NCAA rule 9 (30 s since 2015-16); NFHS 9-8,
 * 9-10 and 2-14 (no national shot clock). */
START_TEST(time_limits_are_the_rulebooks)
{
    const struct {
        enum court_code code;
        double back, shot, close;
    } limits[] = {{COURT_FIBA, 8, 24, 5},           {COURT_NBA, 8, 24, 0},
                  {COURT_WNBA, 8, 24, 0},           {COURT_COLLEGE_MEN, 10, 30, 5},
                  {COURT_COLLEGE_WOMEN, 10, 30, 5}, {COURT_HIGH_SCHOOL, 10, 0, 5}};
    for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
        const struct court *c = court_of(limits[i].code);
        ck_assert_double_eq(c->backcourt_seconds, limits[i].back);
        ck_assert_double_eq(c->shot_clock, limits[i].shot);
        ck_assert_double_eq(c->closely_guarded, limits[i].close);
        ck_assert_double_eq(c->lane_seconds, 3);
        ck_assert_double_eq(c->throw_in_seconds, 5);
    }
}
END_TEST

static void spot_is(enum spot spot, double x, double y)
{
    struct vec2 p = court_spot(court_of(COURT_HIGH_SCHOOL), spot, SIDE_RIGHT);
    CLOSE(p.x / FEET, x, 0.051);
    CLOSE(p.y / FEET, y, 0.051);
}

/* Worked by hand from NFHS rule 1 and the places' definitions, feet from the ring. */
START_TEST(high_school_spots_have_their_worked_values)
{
    spot_is(SPOT_TOP, 0, 20.8);
    spot_is(SPOT_WING, 15.5, 13.8);
    spot_is(SPOT_SLOT, 8, 19.1);
    spot_is(SPOT_CORNER, 20.8, -2.2);
    spot_is(SPOT_ELBOW, 6, 13.75);
    spot_is(SPOT_BLOCK, 7.5, 2.25);
    spot_is(SPOT_MID_POST, 7.5, 8);
    spot_is(SPOT_SHORT_CORNER, 13.4, 0);
    spot_is(SPOT_DUNKER, 8, -1.25);
    spot_is(SPOT_HASH, 22, 22.75);
}
END_TEST

static double gap(enum court_code code, enum spot a, enum side side_a, enum spot b,
                  enum side side_b)
{
    const struct court *c = court_of(code);
    return vec2_distance(court_spot(c, a, side_a), court_spot(c, b, side_b)) / FEET;
}

/* Worked by hand: top to wing and wing to corner, in feet; slot to slot. */
START_TEST(gaps_between_neighbours_have_their_worked_values)
{
    const struct {
        enum court_code code;
        double top_wing, wing_corner;
    } gaps[] = {{COURT_HIGH_SCHOOL, 17.0, 16.8},
                {COURT_COLLEGE_WOMEN, 20.9, 16.5},
                {COURT_NBA, 23.3, 16.2},
                {COURT_FIBA, 20.7, 16.5}};
    for (size_t i = 0; i < sizeof gaps / sizeof *gaps; i++) {
        CLOSE(gap(gaps[i].code, SPOT_TOP, SIDE_NONE, SPOT_WING, SIDE_RIGHT), gaps[i].top_wing,
              0.051);
        CLOSE(gap(gaps[i].code, SPOT_WING, SIDE_LEFT, SPOT_CORNER, SIDE_LEFT), gaps[i].wing_corner,
              0.051);
    }
    CLOSE(gap(COURT_HIGH_SCHOOL, SPOT_SLOT, SIDE_LEFT, SPOT_SLOT, SIDE_RIGHT), 16, 1e-9);
}
END_TEST

/* A federation's coaching manual puts guards one step outside the arc in line with the lane's edge
 * and wings outside the arc level with the free-throw line, 5.4 to 6.0 m between neighbours. */
START_TEST(fiba_slots_agree_with_the_federations_words)
{
    const struct court *fiba = court_of(COURT_FIBA);
    struct vec2 slot = court_spot(fiba, SPOT_SLOT, SIDE_RIGHT);
    CLOSE(slot.x, 2.70, 0.12);
    CLOSE(slot.y - fiba->baseline, 8.52, 0.46); /* its step of 0.70 m is more than our foot */
    ck_assert_double_gt(vec2_length(slot), fiba->arc);
    CLOSE(2 * slot.x, 5.41, 0.2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("court against rulebooks");
    TCase *all = tcase_create("outside");
    tcase_add_loop_test(all, courts_have_their_rulebooks_dimensions, 0,
                        (int)(sizeof table / sizeof *table));
    tcase_add_test(all, straights_keep_their_rulebooks_distance_from_the_sideline);
    tcase_add_test(all, arcs_have_the_right_angle_and_length);
    tcase_add_test(all, arc_tops_meet_the_marks_they_are_made_to_meet);
    tcase_add_test(all, lane_marks_are_where_the_diagrams_have_them);
    tcase_add_test(all, time_limits_are_the_rulebooks);
    tcase_add_test(all, high_school_spots_have_their_worked_values);
    tcase_add_test(all, gaps_between_neighbours_have_their_worked_values);
    tcase_add_test(all, fiba_slots_agree_with_the_federations_words);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
