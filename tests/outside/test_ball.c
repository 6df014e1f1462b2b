/* SPDX-License-Identifier: MIT */
/* The ball in the air against published figures and textbook formulas; the source stands beside
 * each check. */
#include "base/real.h"
#include "floor/motion/motion.h"
#include "suite.h"

#include <math.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))
#define DEGREES(radians) ((radians) / REAL_PI * 180)
#define RADIANS(degrees) ((degrees)*REAL_PI / 180)
#define GRAVITY 9.81

/* A level of the figures printed for grown men: chest pass 10 m/s, 1.85 m tall. */
static struct level grown(void)
{
    struct level level = *level_of(LEVEL_U18_BOYS);
    level.pass = 10;
    level.height = 1.85;
    return level;
}

/* Drag of a ball of .62 kg and .12 m radius, Cd .5, air 1.2 kg/m^3: k = rho Cd A / 2m = .0219 per
 * metre; t = (e^(k x) - 1) / (k v0) (quadratic drag, any textbook of mechanics). */
START_TEST(a_pass_is_slowed_by_the_air)
{
    struct level level = grown();
    CLOSE(1.2 * .5 * REAL_PI * .12 * .12 / (2 * .62), .0219, 5e-5);
    CLOSE(motion_pass_time(&level, PASS_CHEST, 6), .641, 5e-4);
    level.pass = 12;
    CLOSE(motion_pass_time(&level, PASS_CHEST, 12), 1.144, 1e-3);
    level.pass = 10;
    /* the speed over the way: v = v0 e^(-k x) */
    struct flight flight = motion_pass(&level, PASS_CHEST, 8);
    double h = 1e-4;
    CLOSE(motion_flight_along(&flight, h) / h, 10, .01);
    double last = flight.seconds;
    CLOSE((8 - motion_flight_along(&flight, last - h)) / h, 10 * exp(-.0219 * 8), .01);
}
END_TEST

/* Without drag a chest pass of 10 m/s takes .30, .46, .60 and .80 s over 3, 4.6, 6 and 8 m; with it
 * never less, and by at most a tenth more (common values for grown players, 9 to 12 m/s). */
START_TEST(chest_passes_by_distance)
{
    static const double table[][2] = {{3, .30}, {4.6, .46}, {6, .60}, {8, .80}};
    struct level level = grown();
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        double t = motion_pass_time(&level, PASS_CHEST, table[i][0]);
        ck_assert_double_ge(t, table[i][1]);
        ck_assert_double_le(t, 1.1 * table[i][1]);
    }
}
END_TEST

/* Bounce pass with the floor at two thirds, from 1.1 m to .9 m, 8.5 m/s and .75 of it after the
 * floor: 3 m .48, 4 m .59, 5 m .71, 6 m .83 s; 1.35 to 1.6 times a chest pass of 10 m/s. */
START_TEST(bounce_passes_by_distance)
{
    static const double table[][2] = {{3, .48}, {4, .59}, {5, .71}, {6, .83}};
    struct level level = grown();
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        struct flight flight = motion_pass(&level, PASS_BOUNCE, table[i][0]);
        CLOSE(flight.from_z, 1.1, .02);
        CLOSE(flight.to_z, .9, .02);
        CLOSE(flight.seconds, table[i][1], .006);
        CLOSE(flight.seconds / (table[i][0] / 10), 1.47, .14);
    }
}
END_TEST

/* A ball that goes evenly over `length` metres at `speed`, low all the way. */
static struct flight even(double length, double speed)
{
    return (struct flight){
        .law = FLIGHT_SHOT, .length = length, .seconds = length / speed, .from_z = .5, .to_z = .5};
}

static double margin_of(struct vec2 defender, double length, double speed, const struct lane *lane)
{
    struct flight flight = even(length, speed);
    struct mover mover = {.at = defender};
    return motion_lane_margin(&flight, vec2_of(0, 0), vec2_of(length, 0), mover, lane);
}

/* An accelerating defender (mono-exponential sprint, V 8, tau 1.1, reaction .25 s, reach .8 m) and
 * a pass of 8 m at 10 m/s: margins worked out from the formula |b(s) - D| - reach - V (m - tau (1 -
 * e^(-m/tau))), by 20,000 steps: (4, 1) .1162, (4, 1.5) .6131, (6, 1.5) .2590, (6, 2) .7443 m. */
START_TEST(margins_of_a_lane)
{
    const struct lane lane = {.25, 8, 1.1, .8, 9, 0};
    CLOSE(margin_of(vec2_of(4, 1), 8, 10, &lane), .1162, 1e-3);
    CLOSE(margin_of(vec2_of(4, 1.5), 8, 10, &lane), .6131, 1e-3);
    CLOSE(margin_of(vec2_of(6, 1.5), 8, 10, &lane), .2590, 1e-3);
    CLOSE(margin_of(vec2_of(6, 2), 8, 10, &lane), .7443, 1e-3);
    CLOSE(margin_of(vec2_of(6, -2), 8, 10, &lane), margin_of(vec2_of(6, 2), 8, 10, &lane), 1e-12);
}
END_TEST

/* Half the width of the unsafe lane of an 8 m pass, a still defender at 1 to 7 m from the passer,
 * computed from the same formula: lanes widen towards the receiver, and youth's close much sooner.
 */
START_TEST(lanes_are_cones)
{
    static const struct {
        double speed;
        struct lane lane;
        double half[7];
    } table[] = {{10, {.25, 8, 1.1, .8, 9, 0}, {.80, .80, .81, .88, 1.03, 1.23, 1.51}},
                 {12, {.25, 8, 1.1, .8, 9, 0}, {.80, .80, .80, .83, .90, 1.02, 1.19}},
                 {7.5, {.32, 7.1, 1.05, .72, 9, 0}, {.72, .72, .74, .88, 1.13, 1.50, 1.99}},
                 {6.5, {.35, 6.2, 1.0, .65, 9, 0}, {.65, .65, .69, .88, 1.20, 1.68, 2.27}}};
    for (size_t row = 0; row < sizeof table / sizeof table[0]; row++) {
        for (int at = 1; at <= 7; at++) {
            double low = 0, high = 4;
            for (int i = 0; i < 40; i++) {
                double middle = (low + high) / 2;
                bool caught =
                    margin_of(vec2_of(at, middle), 8, table[row].speed, &table[row].lane) < 0;
                low = caught ? middle : low;
                high = caught ? high : middle;
            }
            CLOSE(low, table[row].half[at - 1], .011);
        }
    }
}
END_TEST

/* A ball on its way over a standing reach of 1.33 heights (Gryko et al. 2022: 220.6 cm to 165.3 cm)
 * and a jump is out of a hand's reach. */
START_TEST(a_lob_is_over_the_hands_in_the_lane)
{
    CLOSE(220.6 / 165.3, 1.335, 5e-4);
    const struct level *level = level_of(LEVEL_U16);
    struct lane lane = motion_lane(level);
    CLOSE(lane.high, 1.33 * level->height + level->reach_jump, 1e-12);
    struct mover under = {.at = {3, 0}};
    lane.reaction = 9; /* he stands there */
    struct flight chest = motion_pass(level, PASS_CHEST, 6), lob = motion_pass(level, PASS_LOB, 6);
    ck_assert_double_lt(motion_lane_margin(&chest, vec2_of(0, 0), vec2_of(6, 0), under, &lane), 0);
    ck_assert_double_gt(motion_lane_margin(&lob, vec2_of(0, 0), vec2_of(6, 0), under, &lane), 0);
}
END_TEST

/* A ball thrown up comes down after 2 sqrt(2 h / g): 1.106 s for 1.5 m. Over the floor a lob is
 * thrown at 5 to 7 m/s by grown players (common value). */
START_TEST(lobs)
{
    CLOSE(motion_lob_time(1.5), 1.106, 5e-4);
    struct level level = grown();
    struct flight lob = motion_pass(&level, PASS_LOB, 8);
    double speed = 8 / lob.seconds;
    ck_assert(speed >= 5 && speed <= 7);
    /* free fall all along: the height's second difference is -g */
    double h = .01, t = .4;
    double bend = motion_flight_height(&lob, t - h) - 2 * motion_flight_height(&lob, t) +
                  motion_flight_height(&lob, t + h);
    CLOSE(bend / (h * h), -GRAVITY, 1e-6);
    struct flight near = motion_pass(&level, PASS_LOB, 2);
    ck_assert_double_ge(near.seconds, motion_lob_time(1.0) - 1e-9);
}
END_TEST

/* Brancazio 1981 (Am. J. Phys. 49): v0^2 = g d^2 / (2 cos^2 a (d tan a - h)), T = d / (v0 cos a),
 * entry angle atan(tan a - 2 h / d). Computed cases, g 9.81: free throw 4.225 m from 2.1 m at 52
 * degrees .953 s and 39.7 degrees; 4.5 m, 2.4 m, 50: .98 s; 6.75 m, 2.4 m, 48: 1.181 s
 * and 42.6; 7.24 m, 2.5 m, 47: 1.213 s; a ring of 2.60 m from 1.6 m, 4.225 m, 52: .948 s. */
START_TEST(tries_for_goal)
{
    static const struct {
        double distance, release, ring, angle, seconds, entry;
    } table[] = {{4.225, 2.1, 3.05, 52, .953, 39.701},
                 {4.5, 2.4, 3.05, 50, .98, 0},
                 {6.75, 2.4, 3.05, 48, 1.181, 42.553},
                 {7.24, 2.5, 3.05, 47, 1.213, 0},
                 {4.225, 1.6, 2.60, 52, .948, 0}};
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        double d = table[i].distance, h = table[i].ring - table[i].release;
        double a = RADIANS(table[i].angle), t = motion_arc_time(d, h, a);
        CLOSE(t, table[i].seconds, 5e-3);
        double v0 = sqrt(GRAVITY * d * d / (2 * cos(a) * cos(a) * (d * tan(a) - h)));
        CLOSE(t, d / (v0 * cos(a)), 1e-9);
        if (table[i].entry > 0) {
            CLOSE(DEGREES(motion_arc_entry(d, h, a)), table[i].entry, .01);
        }
    }
    CLOSE(motion_arc_time(4.225, .95, RADIANS(52)), .953, 5e-4);
    CLOSE(motion_arc_time(6.75, .65, RADIANS(48)), 1.181, 5e-4);
    CLOSE(motion_arc_time(7.24, .55, RADIANS(47)), 1.213, 1e-3);
}
END_TEST

/* Rings stand at 10 ft (every American code) and 3.05 m (FIBA equipment), 2.60 m in mini-basketball
 * under 11 (FIBA mini-basketball art. 2). */
START_TEST(rings_hang_where_the_rulebooks_have_them)
{
    for (int code = 0; code < COURT_COUNT; code++) {
        double ring = court_of((enum court_code)code)->ring_height;
        CLOSE(ring, code == COURT_MINI ? 2.6 : 3.05, .003);
    }
}
END_TEST

/* A ball can only go in if it comes down steeper than asin(24.3 / 45 cm) = 32.7 degrees: ball and
 * ring of the rulebooks. Elite men were measured at 36.6 (centers) to 42.1 degrees (Facta
 * Universitatis, Physical Education and Sport, ball with a sensor). The angle at the ring from the
 * flight itself: its speed down is g T / 2 - rise / T. */
START_TEST(our_shots_come_down_through_the_ring)
{
    CLOSE(DEGREES(asin(24.3 / 45)), 32.7, .05);
    for (int code = 0; code < LEVEL_COUNT; code++) {
        const struct level *level = level_of((enum level_code)code);
        for (double far = 2; far < 9; far += .25) {
            struct flight shot = motion_shot(level, 3.05, far);
            double rise = shot.to_z - shot.from_z, t = shot.seconds;
            double down = GRAVITY * t / 2 - rise / t, entry = atan2(down, far / t);
            ck_assert_double_ge(DEGREES(entry), 32.7);
            ck_assert_double_le(DEGREES(entry), 50);
        }
    }
    /* a lay-up from a metre: .51 s */
    CLOSE(motion_shot(level_of(LEVEL_U16), 3.05, 1).seconds, .51, .005);
}
END_TEST

/* Slegers et al. 2021 (J. Sports Sci. Med. 20:508), 12 men: release speed from 6.75 m is 24 % more
 * than from 4.19 m. Ours, with less steep shots from further out, within four parts in a hundred.
 */
START_TEST(release_speed_grows_with_distance)
{
    const struct level *level = level_of(LEVEL_U18_BOYS);
    double speed[2], far[2] = {4.19, 6.75};
    for (int i = 0; i < 2; i++) {
        struct flight shot = motion_shot(level, 3.05, far[i]);
        double t = shot.seconds, up = (shot.to_z - shot.from_z) / t + GRAVITY * t / 2;
        speed[i] = hypot(far[i] / t, up);
    }
    CLOSE(speed[1] / speed[0], 1.24, .04);
}
END_TEST

/* Mean speed of the ball in one NBA play, dribbles, holds and passes together, is 3.9 m/s (R.
 * Shah's notebook on tracking data): every pass of ours is faster, and none as fast as 14 m/s, the
 * upper end of what is given for skip passes. */
START_TEST(no_pass_is_slower_than_play_or_faster_than_an_arm)
{
    for (int code = 0; code < LEVEL_COUNT; code++) {
        for (int kind = PASS_PLAIN; kind <= PASS_CHEST; kind++) {
            for (double far = 4; far < 14; far += 2) {
                double speed = far / motion_pass_time(level_of((enum level_code)code),
                                                      (enum pass_kind)kind, far);
                ck_assert_double_ge(speed, kind == PASS_LOB ? 3.3 : 3.9);
                ck_assert_double_le(speed, 14);
            }
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside ball");
    TCase *all = tcase_create("all");
    tcase_add_test(all, a_pass_is_slowed_by_the_air);
    tcase_add_test(all, chest_passes_by_distance);
    tcase_add_test(all, bounce_passes_by_distance);
    tcase_add_test(all, margins_of_a_lane);
    tcase_add_test(all, lanes_are_cones);
    tcase_add_test(all, a_lob_is_over_the_hands_in_the_lane);
    tcase_add_test(all, lobs);
    tcase_add_test(all, tries_for_goal);
    tcase_add_test(all, rings_hang_where_the_rulebooks_have_them);
    tcase_add_test(all, our_shots_come_down_through_the_ring);
    tcase_add_test(all, release_speed_grows_with_distance);
    tcase_add_test(all, no_pass_is_slower_than_play_or_faster_than_an_arm);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
