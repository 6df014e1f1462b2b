/* SPDX-License-Identifier: MIT */
/* Zones against what was published of them: each test names its source, and asserts what its words
 * say; the spots that a source leaves open are ours. The sides are turned where it says the left.
 */
#include "pipe.h"
#include "suite.h"

#include "base/real.h"
#include "floor/sim/sim.h"

#define ON_BALL 1.4 /* m: an arm's length and what a body is thick (ours) */

static const struct run *run;

static void runs(const char *text)
{
    struct piped *piped = arena_new(&arena, struct piped);
    pipe_text(&arena, str_of(text), piped);
    ck_assert_msg(piped->diags.errors == 0 && piped->diags.warnings == 0, "%s",
                  piped_said(&arena, piped));
    run = sim_run(&arena, &piped->sources, &piped->book->plays.at[0], &piped->diags);
    for (size_t i = 0; i < run->segments.count; i++) {
        ck_assert(run->segments.at[i]->ran);
    }
}

static const struct segment *step(size_t index)
{
    ck_assert_uint_lt(index, run->segments.count);
    return run->segments.at[index];
}

/* When the nth task of the step came to that moment. */
static double when(const struct segment *segment, size_t task, enum moment moment)
{
    ck_assert_uint_lt(task, segment->tasks);
    double time = segment->record[task].time[moment];
    ck_assert_double_ge(time, 0);
    return time;
}

static struct vec2 of(const struct segment *segment, int number, double t)
{
    return segment_at(segment, body_attacker(number), t);
}

static struct vec2 x_of(const struct segment *segment, int number, double t)
{
    return segment_at(segment, body_defender(number), t);
}

static int nearest_to(const struct segment *segment, struct vec2 p, double t)
{
    int best = 0;
    double least = 99;
    for (int k = 1; k <= 5; k++) {
        double far = vec2_distance(x_of(segment, k, t), p);
        best = far < least ? k : best;
        least = real_min(least, far);
    }
    return best;
}

/* FIBA WABC Coaches Manual L3, 2.4.2 dribble drag against zone defence: 1 passes to the wing and
 * cuts to the basket; 5 goes to screen for 4 and must find x2, a man of the zone and not his own;
 * 4 cuts to the top of the key. Then 2 passes straight to 4, 5 screens x2 again: only x3 is left on
 * 3's side. */
#define ENTRY                                                                                      \
    "play \"Wing entry\"\n"                                                                        \
    "  defense zone 2-3\n"                                                                         \
    "  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 left elbow\n"                      \
    "  step\n"                                                                                     \
    "    1 passes to 2\n"                                                                          \
    "    after 1 passes, 1 cuts to the rim\n"                                                      \
    "    1 clears to left block\n"                                                                 \
    "    5 screens for 4 on x2\n"                                                                  \
    "    4 comes off 5 to top\n"                                                                   \
    "  step\n"                                                                                     \
    "    2 passes to 4\n"                                                                          \
    "    5 screens for 4 on x2\n"

START_TEST(a_screen_inside_the_zone_finds_its_man_and_the_cutter_comes_to_the_top)
{
    runs(ENTRY);
    const struct segment *first = step(0);
    const struct court *court = first->play->court;
    double set = when(first, 3, MOMENT_SET), end = first->duration;
    ck_assert_int_eq(first->record[3].defender, body_defender(2));
    ck_assert_double_lt(vec2_distance(of(first, 5, set), x_of(first, 2, set)), 1.1);
    ck_assert_int_eq(segment_holder(first, end), body_attacker(2));
    ck_assert(vec2_near(of(first, 4, end), court_spot(court, SPOT_TOP, SIDE_NONE), .5));
    ck_assert_double_lt(of(first, 1, end).y, 1.5); /* low */
    ck_assert_double_ge(when(first, 1, MOMENT_STARTED), when(first, 0, MOMENT_CAUGHT) - 1e-9);
}
END_TEST

START_TEST(straight_back_to_the_top_only_the_low_man_is_left_on_the_far_side)
{
    runs(ENTRY);
    const struct segment *second = step(1);
    double caught = when(second, 0, MOMENT_CAUGHT);
    ck_assert_int_eq(segment_holder(second, second->duration), body_attacker(4));
    ck_assert_int_eq(second->record[1].defender, body_defender(2));
    ck_assert_double_gt(-of(second, 3, caught).x, 4); /* 3 is wide */
    for (int k = 1; k <= 5; k++) {
        double beyond = -x_of(second, k, caught).x;
        ck_assert_msg((beyond > .45) == (k == 3), "x%d stands %.2f m beyond the axis", k, beyond);
    }
}
END_TEST

/* B. Aryanto, "How to build a 2-3 zone defense", teaching paper: 1 dribbles into the front gap and
 * passes to 3 below: x3 comes out to 3, x1 goes to the corner of the free-throw line, x5 overplays
 * the low post on the ball's side, x2 to the help side in the lane. */
START_TEST(the_ball_in_the_front_gap_and_down_the_side)
{
    runs("play \"Front gap\"\n"
         "  defense zone 2-3\n"
         "  start 1 top, 2 right wing, 3 halfway between left wing and left corner, "
         "4 right corner, 5 left block\n"
         "  1 dribbles to 3 ft above the nail\n"
         "  1 passes to 3\n"
         "  3 holds for 2 s\n");
    const struct segment *way = step(0);
    const struct court *court = way->play->court;
    double then = when(way, 1, MOMENT_CAUGHT) + 1.5;
    struct vec2 three = of(way, 3, then), five = of(way, 5, then);
    ck_assert_int_eq(nearest_to(way, three, then), 3);
    ck_assert_double_lt(vec2_distance(x_of(way, 3, then), three), ON_BALL);
    struct vec2 elbow = court_spot(court, SPOT_ELBOW, SIDE_LEFT);
    ck_assert_double_lt(vec2_distance(x_of(way, 1, then), elbow), 1.8);
    struct vec2 off = vec2_sub(x_of(way, 5, then), five);
    ck_assert_int_eq(nearest_to(way, five, then), 5);
    ck_assert_double_gt(vec2_dot(off, vec2_sub(three, five)), 0); /* on the ball's side of him */
    struct vec2 x2 = x_of(way, 2, then);
    ck_assert(court_in_lane(court, x2));
    ck_assert_double_gt(x2.x, -1.0);
}
END_TEST

/* The same: the ball on a guard: one of the front two is on it, the other ready for the next pass;
 * they slide with the lateral pass. The floor is split by the free-throw line, x1 and x2 above,
 * x3, x4, x5 below. */
START_TEST(the_front_two_have_one_on_the_ball_and_slide)
{
    runs("play \"Front two\"\n"
         "  defense zone 2-3\n"
         "  start 1 left slot, 2 right slot, 3 left corner, 4 right corner, 5 right block\n"
         "  1 holds for 1.5 s\n"
         "  1 passes to 2\n"
         "  2 holds for 2 s\n");
    const struct segment *way = step(0);
    double line = way->play->court->free_throw;
    const double moments[] = {1.4, way->duration - .1};
    for (int i = 0; i < 2; i++) {
        double t = moments[i];
        int on = i + 1, other = 2 - i;
        struct vec2 ball = of(way, on, t);
        ck_assert_double_lt(vec2_distance(x_of(way, on, t), ball), ON_BALL);
        ck_assert_double_gt(vec2_distance(x_of(way, other, t), ball), 2);
        ck_assert_double_lt(vec2_distance(x_of(way, other, t), ball), 4); /* ready for the next */
        for (int k = 1; k <= 5; k++) {
            ck_assert_int_eq(x_of(way, k, t).y > line, k <= 2);
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside zones");
    TCase *all = tcase_create("zones");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, a_screen_inside_the_zone_finds_its_man_and_the_cutter_comes_to_the_top);
    tcase_add_test(all, straight_back_to_the_top_only_the_low_man_is_left_on_the_far_side);
    tcase_add_test(all, the_ball_in_the_front_gap_and_down_the_side);
    tcase_add_test(all, the_front_two_have_one_on_the_ball_and_slide);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
