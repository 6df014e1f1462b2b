/* SPDX-License-Identifier: MIT */
/* The ball: passes of every kind, catches, hand-offs, dribbles, shots, rebounds, throw-ins; and
 * what cannot be, with the amount it is said with. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "ball_law.h"
#include "base/real.h"
#include "floor_text.h"

#define A(player) body_attacker(player)

static struct ran ran;

/* On five-out, 1 has the ball; or, with a `start` of its own, as written there. */
static const struct segment *run_of(const char *sentences)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    bool placed = strstr(sentences, "start ") != NULL;
    strbuf_print(&text, "play \"Lantern\"\n  level u16\n  defense none\n%s%s%s",
                 placed ? "" : "  start five-out\n  ball 1\n  step\n    ", sentences, "\n");
    floor_text(&ran, strbuf_str(&text));
    ck_assert_msg(ran.run != NULL, "%s", floor_said(&ran));
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        struct ball_fault fault = ball_law(ran.run->segments.at[i]);
        ck_assert_msg(!fault.what, "%s at %.3f s, by %.4f m\n%s", fault.what ? fault.what : "",
                      fault.when, fault.far, sentences);
    }
    return ran.run->segments.at[0];
}

static int find(const struct segment *segment, int who, enum task_kind kind)
{
    int task = floor_task(segment, who, kind);
    ck_assert_int_ge(task, 0);
    return task;
}

static double when(const struct segment *segment, int who, enum task_kind kind, enum moment moment)
{
    double t = floor_moment(segment, find(segment, who, kind), moment);
    ck_assert_msg(t != TIME_NEVER, "it never happened: %s", floor_said(&ran));
    return t;
}

static bool says(const char *words)
{
    return strstr(floor_said(&ran), words) != NULL;
}

/* ---- passes ---- */

static double flight_of(const char *kind)
{
    char text[100];
    snprintf(text, sizeof text, "1 %spasses to 2", kind);
    const struct segment *segment = run_of(text);
    ck_assert(segment->ran && !says("run."));
    return when(segment, 1, TASK_PASS, MOMENT_CAUGHT) -
           when(segment, 1, TASK_PASS, MOMENT_RELEASED);
}

START_TEST(passes_fly_as_long_as_their_kind_takes)
{
    double chest = flight_of("chest "), bounce = flight_of("bounce "), lob = flight_of("lob ");
    double skip = flight_of("skip "), overhead = flight_of("overhead ");
    ck_assert_double_eq_tol(flight_of(""), chest, 1e-9);
    ck_assert(skip < overhead && overhead < chest && chest < bounce && bounce < lob);
}
END_TEST

START_TEST(a_bounce_pass_is_on_the_floor_on_its_way_and_a_lob_high)
{
    const struct segment *segment = run_of("1 bounce passes to 2");
    double least = 9, from = when(segment, 1, TASK_PASS, MOMENT_RELEASED),
           to = when(segment, 1, TASK_PASS, MOMENT_CAUGHT);
    for (double t = from; t < to; t += .002) {
        least = fmin(least, segment_ball_height(segment, t));
    }
    ck_assert_double_eq_tol(least, MOTION_BALL, .02);
    segment = run_of("1 lob passes to 2");
    double middle = (when(segment, 1, TASK_PASS, MOMENT_RELEASED) +
                     when(segment, 1, TASK_PASS, MOMENT_CAUGHT)) /
                    2;
    ck_assert_double_gt(segment_ball_height(segment, middle), 3);
}
END_TEST

START_TEST(a_pass_meets_a_receiver_who_runs)
{
    const struct segment *segment = run_of("3 cuts to the rim\n    1 passes to 3");
    int pass = find(segment, 1, TASK_PASS);
    double caught = when(segment, 1, TASK_PASS, MOMENT_CAUGHT);
    ck_assert_double_le(segment->record[pass].miss, .3);
    ck_assert_double_gt(vec2_length(segment_velocity(segment, A(3), caught)), 1.5);
    ck_assert_uint_eq(segment_holder(segment, caught + 1e-6), A(3));
}
END_TEST

START_TEST(a_pass_that_starts_a_cut_leads_the_cutter)
{
    const struct segment *segment = run_of("1 passes to 3\n    as 1 passes, 3 cuts to the rim");
    double from = when(segment, 1, TASK_PASS, MOMENT_RELEASED);
    struct vec2 stood = segment_at(segment, A(3), from);
    const struct task_record *record = &segment->record[find(segment, 1, TASK_PASS)];
    ck_assert_double_ge(vec2_distance(stood, record->to), .8);
    ck_assert_double_le(record->miss, .3);
}
END_TEST

START_TEST(a_pass_is_caught_at_its_place)
{
    const struct segment *segment =
        run_of("3 cuts to right block\n    1 passes to 3 at left elbow");
    const struct task_record *record = &segment->record[find(segment, 1, TASK_PASS)];
    struct vec2 elbow = record->to;
    ck_assert(elbow.x < 0 && elbow.y > 3);
    segment = run_of("2 goes to right slot\n    1 passes to 2 at right slot");
    record = &segment->record[find(segment, 1, TASK_PASS)];
    ck_assert_double_le(vec2_distance(record->to, segment->record[0].to), .6);
    ck_assert(!says("run."));
}
END_TEST

START_TEST(a_pass_at_its_moment_goes_where_it_can_meet_the_runner)
{
    const struct segment *segment = run_of("3 cuts to the rim\n    as 3 cuts, 1 passes to 3");
    ck_assert_double_eq_tol(when(segment, 1, TASK_PASS, MOMENT_RELEASED),
                            when(segment, 3, TASK_MOVE, MOMENT_STARTED), .31);
    ck_assert_double_le(segment->record[find(segment, 1, TASK_PASS)].miss, .4);
    segment = run_of("at 0.7 s, 1 passes to 2");
    ck_assert_double_eq_tol(when(segment, 1, TASK_PASS, MOMENT_RELEASED), .7, 1e-3);
}
END_TEST

START_TEST(a_screener_gets_a_pass_where_he_stands_then)
{
    const struct segment *segment = run_of("5 screens for 4\n    1 passes to 5");
    ck_assert_double_le(segment->record[find(segment, 1, TASK_PASS)].miss, .6);
    ck_assert(segment->ran);
}
END_TEST

START_TEST(who_is_not_there_does_not_catch_and_it_is_said_by_how_much)
{
    const struct segment *segment =
        run_of("3 cuts to left corner\n    at 0.2 s, 1 passes to 3 at right slot");
    (void)segment;
    segment = run_of("2 cuts to left block\n    at 0.2 s, 1 passes to 2 at left block");
    const struct task_record *record = &segment->record[find(segment, 1, TASK_PASS)];
    ck_assert_double_gt(record->miss, 1.5);
    ck_assert(says("run.missed: 2 is ") && says(" ft from the ball when the pass comes"));
    /* and goes and gets it */
    ck_assert(segment->ran);
    double caught = when(segment, 1, TASK_PASS, MOMENT_CAUGHT);
    ck_assert_uint_eq(segment_holder(segment, caught + 1e-6), A(2));
    ck_assert_int_eq(segment_span(segment, caught - .05)->state, BALL_LOOSE);
}
END_TEST

/* ---- hand-offs, dribbles ---- */

static void handed_off(const char *sentences, int giver, int taker)
{
    const struct segment *segment = run_of(sentences);
    double t = when(segment, giver, TASK_EXCHANGE, MOMENT_RELEASED);
    ck_assert_double_le(
        vec2_distance(segment_at(segment, A(giver), t), segment_at(segment, A(taker), t)),
        3 * FEET + .01);
    ck_assert_uint_eq(segment_holder(segment, t - .01), A(giver));
    ck_assert_uint_eq(segment_holder(segment, t + .01), A(taker));
    ck_assert(segment->ran && !says("run."));
}

START_TEST(hand_offs_happen_within_arms)
{
    handed_off("1 hands off to 2", 1, 2);
    handed_off("2 cuts to top\n    1 hands off to 2", 1, 2);
    handed_off("1 dribbles at 2\n    1 hands off to 2\n    2 dribbles to top", 1, 2);
    handed_off("1 dribbles to right slot\n    2 cuts to top\n    1 hands off to 2", 1, 2);
}
END_TEST

START_TEST(dribbles_have_a_start_an_end_and_a_number)
{
    const struct segment *segment = run_of("1 dribbles to left wing\n    1 dribbles to left "
                                           "corner\n    1 jabs\n    1 dribbles to left wing");
    ck_assert_uint_eq(segment->dribbles.count, 2);
    const struct dribble_span *one = &segment->dribbles.at[0], *two = &segment->dribbles.at[1];
    ck_assert_uint_eq(one->who, A(1));
    ck_assert_double_ge(one->length, 9);
    ck_assert_int_ge(one->bounces, 2);
    ck_assert(one->to < two->from);
    double least = 9, most = 0;
    for (double t = one->from; t < one->to; t += .005) {
        double z = segment_ball_height(segment, t);
        least = fmin(least, z);
        most = fmax(most, z);
    }
    ck_assert(least < .15 && most > .8);
    segment = run_of("1 dribbles to the rim, walking");
    ck_assert_double_ge(segment->dribbles.at[0].to - segment->dribbles.at[0].from, 4);
}
END_TEST

/* ---- shots, rebounds ---- */

START_TEST(a_shot_takes_its_time_to_the_ring_and_comes_off_it_to_the_hands)
{
    const struct segment *segment = run_of("1 shoots\n    4 rebounds\n    5 rebounds");
    double from = when(segment, 1, TASK_SHOOT, MOMENT_RELEASED);
    double to = when(segment, 1, TASK_SHOOT, MOMENT_ARRIVED);
    struct flight flight = motion_shot(level_of(LEVEL_U16), 10 * FEET, 24.5 * FEET);
    ck_assert_double_eq_tol(to - from, flight.seconds, .1);
    ck_assert_double_eq_tol(segment_ball_height(segment, to), 10 * FEET, .02);
    ck_assert_double_le(vec2_length(segment_ball(segment, to)), .02);
    const struct ball_span *last = &segment->ball.at[segment->ball.count - 1];
    ck_assert_int_eq(last->state, BALL_HELD);
    ck_assert(last->holder == A(4) || last->holder == A(5));
    ck_assert_double_le(last->from - to, 1.7);
    ck_assert_double_gt(last->flight.from_z, 1.8); /* out of the air */
}
END_TEST

START_TEST(a_shot_that_nobody_rebounds_falls_to_the_floor)
{
    const struct segment *segment = run_of("1 shoots");
    const struct ball_span *last = &segment->ball.at[segment->ball.count - 1];
    ck_assert_int_eq(last->state, BALL_LOOSE);
    ck_assert_uint_eq(segment_holder(segment, segment->duration), BODY_NONE);
    ck_assert_double_lt(segment_ball_height(segment, segment->duration), 3);
}
END_TEST

START_TEST(a_rebounder_may_pass_it_on)
{
    const struct segment *segment = run_of("1 shoots\n    4 rebounds\n    4 passes to 1");
    ck_assert(segment->ran);
    ck_assert_uint_eq(segment_holder(segment, segment->duration), A(1));
}
END_TEST

START_TEST(a_rebound_is_of_the_shot_before_it)
{
    const struct segment *segment =
        run_of("1 drives to the rim\n    1 shoots\n    4 rebounds\n    4 shoots");
    ck_assert(segment->ran);
    ck_assert_uint_eq(segment_holder(segment, segment->duration), BODY_NONE);
    /* and who has the ball as the play begins has not caught it in a hurry */
    run_of("at 0 s, 1 passes to 2");
    ck_assert(!says("run."));
}
END_TEST

/* ---- lines ---- */

START_TEST(a_thrower_stays_out_until_the_release_and_steps_in_after)
{
    const struct segment *segment =
        run_of("  start five-out\n  ball 2 out of bounds at right hash\n"
               "  step\n    3 cuts to top\n    2 inbounds to 1");
    const struct court *court = ran.run->play->court;
    double released = when(segment, 2, TASK_PASS, MOMENT_RELEASED);
    ck_assert(segment->ball.at[0].throw_in && segment->ball.at[1].throw_in &&
              !segment->ball.at[2].throw_in);
    for (double t = 0; t <= released; t += .05) {
        ck_assert(!court_inside(court, segment_at(segment, A(2), t), 0));
    }
    ck_assert(court_inside(court, segment_at(segment, A(2), segment->duration), .5));
    ck_assert_double_le(segment->ball.at[0].to, 5);
}
END_TEST

START_TEST(where_the_ball_is_in_the_back_court_is_known)
{
    const struct segment *segment =
        run_of("  floor full\n  start 1 backcourt top, 2 right wing, 3 left "
               "wing, 4 right corner, 5 left corner\n  ball 1\n  step\n"
               "    1 dribbles to top");
    double half = ran.run->play->court->half_court;
    ck_assert_double_gt(segment_ball(segment, 0).y, half);
    ck_assert_double_lt(segment_ball(segment, segment->duration).y, half);
    ck_assert_int_ge(segment->dribbles.at[0].bounces, 4);
}
END_TEST

/* ---- what cannot be ---- */

/* Text, what is said, and a word of the amount. */
static const struct {
    const char *sentences, *id, *amount;
} bad[] = {
    {"1 passes to 2, taking 0.1 s", "run.time", "needs at least 0.7 s"},
    {"3 cuts to right corner, taking 2.2 s", "run.time", "needs at least "},
    {"1 dribbles to left corner, taking 1.5 s", "run.time", "needs at least "},
    {"1 passes to 2\n    as 2 catches, 2 passes to 3", "run.hurry", "passes 0.3 s after the catch"},
    {"1 passes to 2\n    at 0.5 s, 2 passes to 3", "run.late", " s later"},
    {"3 cuts to the rim\n    at 0.1 s, 1 passes to 3 at right corner", "run.missed",
     " ft from the ball"},
    {"1 passes to 2 at right corner\n    2 cuts to the rim\n    2 clears to right corner",
     "run.catch-place", "no nearer than "},
};

START_TEST(what_cannot_be_is_said_with_its_amount)
{
    run_of(bad[_i].sentences);
    ck_assert_msg(says(bad[_i].id), "%s: wants %s, got\n%s", bad[_i].sentences, bad[_i].id,
                  floor_said(&ran));
    ck_assert_msg(says(bad[_i].amount), "%s: wants \"%s\", got\n%s", bad[_i].sentences,
                  bad[_i].amount, floor_said(&ran));
}
END_TEST

/* Slow is fine. */
START_TEST(slow_is_no_fault)
{
    const struct segment *segment =
        run_of("1 passes to 2, taking 2 s\n    3 cuts to the rim, taking 6 s");
    ck_assert(segment->ran && !says("run."));
    ck_assert_double_eq_tol(when(segment, 1, TASK_PASS, MOMENT_CAUGHT) -
                                when(segment, 1, TASK_PASS, MOMENT_RELEASED),
                            2, 1e-3);
    ck_assert_double_eq_tol(when(segment, 3, TASK_MOVE, MOMENT_ARRIVED), 6, .35);
}
END_TEST

/* It comes to an end: nothing is asked but that, and that the ball keeps its law. */
static const char *const odd[] = {
    "2 shoots\n    1 passes to 2",
    "2 passes to 3",
    "1 passes to 2\n    1 shoots",
    "2 cuts to the rim\n    3 cuts to the rim\n    4 cuts to the rim\n    5 cuts to the rim\n    1 "
    "drives to the rim",
    "1 passes to 2\n    2 passes to 3\n    3 passes to 1\n    1 passes to 2\n    2 passes to 1\n   "
    " 1 passes to 5",
    "1 passes to 2\n    as 2 catches, 2 passes to 3\n    as 3 catches, 3 passes to 1\n    as 1 "
    "catches, 1 passes to 4",
    "1 shoots\n    1 passes to 2",
    "1 shoots\n    4 rebounds\n    5 shoots",
    "at 0 s, 1 passes to 2\n    at 0 s, 1 passes to 3",
    "1 hands off to 2\n    2 hands off to 1\n    1 hands off to 2",
    "1 passes to 2 at backcourt left wing",
    "1 dribbles to right corner\n    at 0.1 s, 1 shoots",
    "2 cuts to the rim, taking 20 s\n    1 passes to 2",
    "4 holds for 1 s\n    1 passes to 4 at left corner",
    "1 passes to 2\n    2 screens for 3\n    1 passes to 2",
};

START_TEST(odd_plays_come_to_an_end)
{
    const struct segment *segment = run_of(odd[_i]);
    ck_assert_double_lt(segment->duration, 31);
    ck_assert(segment->ran || says("run."));
}
END_TEST

/* A lob that is caught high as a step ends comes down in the next one, and not in between. */
START_TEST(the_hands_go_on_with_a_ball_over_the_border)
{
    floor_text(&ran,
               STR("play \"Lantern\"\n  level jv girls\n  defense man gap\n  start 1 left corner, "
                   "2 left slot, 3 the nail, "
                   "4 at halfway between left corner and right corner, 5 right wing\n  ball 1\n"
                   "  step\n    2 back screens for 5\n    5 rejects 2 to (-11, 18)\n"
                   "    2 pops to right corner\n    1 lob passes to 5\n"
                   "  step\n    5 dribbles to right wing\n    2 lifts to top\n"));
    ck_assert_msg(ran.run != NULL, "%s", floor_said(&ran));
    const struct segment *first = ran.run->segments.at[0], *second = ran.run->segments.at[1];
    struct ball_fault fault = ball_law(first);
    ck_assert_msg(!fault.what, "%s at %.3f s, by %.4f m", fault.what, fault.when, fault.far);
    double end = segment_ball_height(first, first->duration);
    ck_assert_double_eq_tol(segment_ball_height(second, 0), end, .02);
    ck_assert_double_lt(
        vec2_distance(segment_ball(second, 0), segment_ball(first, first->duration)), .02);
}
END_TEST

/* 4 is thrown the ball on his way to 5's defender, who turns out to stand elsewhere. */
START_TEST(a_screener_whom_the_ball_would_miss_goes_for_it_before_he_sets_his_screen)
{
    floor_text(&ran, STR("play \"Lantern\"\n  rules nba\n  level u18 boys\n  defense man gap\n"
                         "  start one-four low\n"
                         "  step\n    4 v-cuts to right hash\n"
                         "    5 posts up at right high post, jogging\n"
                         "    while 4 cuts, 3 sinks to left wing\n    4 ball screens for 1\n"
                         "    1 dribbles off 4 to left corner\n    4 pops to right slot\n"
                         "    0.3 s after 4 moves, 1 passes to 3\n"
                         "  step\n    1 flare screens for 4\n    1 slips\n"
                         "  step\n    5 sets up toward the rim\n    4 cross screens for 5\n"
                         "    5 back cuts off 4 to right short corner\n    3 passes to 4\n"
                         "    1 ball screens for 4\n    4 drives off 1\n"));
    ck_assert_msg(ran.run != NULL, "%s", floor_said(&ran));
    const struct segment *last = ran.run->segments.at[2];
    int pass = find(last, 3, TASK_PASS), screen = find(last, 4, TASK_SCREEN);
    ck_assert_msg(last->ran, "%s", floor_said(&ran));
    ck_assert_double_gt(last->record[pass].miss, .6);
    ck_assert_double_lt(floor_moment(last, pass, MOMENT_CAUGHT),
                        floor_moment(last, screen, MOMENT_SET));
    ck_assert_double_lt(floor_moment(last, screen, MOMENT_SET),
                        floor_moment(last, find(last, 4, TASK_USE), MOMENT_STARTED));
}
END_TEST

/* Thrown to a place where he is not to screen: there and back. */
START_TEST(a_screener_fetches_a_ball_that_has_missed_him_and_then_sets_his_screen)
{
    const struct segment *segment =
        run_of("start five-out\nball 1\n3 sets up toward half court\n5 back screens for 3\n"
               "3 back cuts off 5\nat 2 s, 1 passes to 5 at left slot\n5 passes to 2\n");
    int screen = find(segment, 5, TASK_SCREEN), pass = find(segment, 1, TASK_PASS);
    ck_assert_msg(segment->ran, "%s", floor_said(&ran));
    ck_assert_double_gt(segment->record[pass].miss, 1.5);
    ck_assert_double_lt(floor_moment(segment, pass, MOMENT_CAUGHT), 3.5);
    ck_assert_double_gt(floor_moment(segment, screen, MOMENT_SET),
                        floor_moment(segment, pass, MOMENT_CAUGHT));
}
END_TEST

/* 1 comes back to 2, who stands with the ball behind three defenders. */
START_TEST(who_comes_to_a_hand_off_and_gets_no_nearer_is_let_through)
{
    floor_text(&ran,
               STR("play \"Lantern\"\n  rules nba\n  level middle-school girls\n"
                   "  defense man sag\n  start sideline inbounds\n"
                   "  step\n    4 cuts to left wing\n    3 inbounds to 4\n"
                   "    3 cuts to right elbow\n    5 down screens for 1\n"
                   "    1 back cuts off 5\n    5 pops to right slot\n    4 bounce passes to 1\n"
                   "  step\n    3 stays\n    4 sets up toward the rim\n    2 back screens for 4\n"
                   "    4 rejects 2 to right dunker spot\n    2 pops to left slot\n"
                   "  step\n    1 drives baseline\n    1 passes to 2\n    1 clears to right wing\n"
                   "    after 1 dribbles, 2 dribbles at 1\n    2 hands off to 1\n"
                   "    1 dribbles to left corner\n"));
    ck_assert_msg(ran.run != NULL, "%s", floor_said(&ran));
    ck_assert_msg(ran.run->segments.at[2]->ran, "%s", floor_said(&ran));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ball");
    TCase *all = tcase_create("ball");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, passes_fly_as_long_as_their_kind_takes);
    tcase_add_test(all, a_bounce_pass_is_on_the_floor_on_its_way_and_a_lob_high);
    tcase_add_test(all, a_pass_meets_a_receiver_who_runs);
    tcase_add_test(all, a_pass_that_starts_a_cut_leads_the_cutter);
    tcase_add_test(all, a_pass_is_caught_at_its_place);
    tcase_add_test(all, a_pass_at_its_moment_goes_where_it_can_meet_the_runner);
    tcase_add_test(all, a_screener_gets_a_pass_where_he_stands_then);
    tcase_add_test(all, who_is_not_there_does_not_catch_and_it_is_said_by_how_much);
    tcase_add_test(all, hand_offs_happen_within_arms);
    tcase_add_test(all, dribbles_have_a_start_an_end_and_a_number);
    tcase_add_test(all, a_shot_takes_its_time_to_the_ring_and_comes_off_it_to_the_hands);
    tcase_add_test(all, a_shot_that_nobody_rebounds_falls_to_the_floor);
    tcase_add_test(all, a_rebounder_may_pass_it_on);
    tcase_add_test(all, a_rebound_is_of_the_shot_before_it);
    tcase_add_test(all, a_thrower_stays_out_until_the_release_and_steps_in_after);
    tcase_add_test(all, where_the_ball_is_in_the_back_court_is_known);
    tcase_add_loop_test(all, what_cannot_be_is_said_with_its_amount, 0,
                        (int)(sizeof bad / sizeof bad[0]));
    tcase_add_test(all, slow_is_no_fault);
    tcase_add_test(all, the_hands_go_on_with_a_ball_over_the_border);
    tcase_add_test(all, a_screener_whom_the_ball_would_miss_goes_for_it_before_he_sets_his_screen);
    tcase_add_test(all, who_comes_to_a_hand_off_and_gets_no_nearer_is_let_through);
    tcase_add_test(all, a_screener_fetches_a_ball_that_has_missed_him_and_then_sets_his_screen);
    tcase_add_loop_test(all, odd_plays_come_to_an_end, 0, (int)(sizeof odd / sizeof odd[0]));
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
