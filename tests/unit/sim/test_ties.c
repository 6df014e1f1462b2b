/* SPDX-License-Identifier: MIT */
/* What sentences wait for and what cuts them short, from a coach's own words to the run. */
#include "mirrors.h"
#include "told.h"

#include <stdio.h>
#include <string.h>

#include "base/real.h"

static struct told told;

/* ---- until ---- */

START_TEST(a_dribble_is_cut_short_the_moment_another_catches)
{
    told_run(&told, "start five-out\nball 4\n"
                    "4 passes to 2\n"
                    "1 cuts to the rim until 2 catches\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double caught = told_time(way, 0, MOMENT_CAUGHT), ended = told_time(way, 1, MOMENT_ARRIVED);
    ck_assert_double_le(caught, ended);
    ck_assert_double_lt(ended - caught, .02);
    struct vec2 stood = segment_at(way, body_attacker(1), way->duration);
    ck_assert_double_gt(vec2_length(stood), 2); /* he never got to the rim */
    ck_assert_double_lt(vec2_length(segment_velocity(way, body_attacker(1), way->duration)), .4);
}
END_TEST

START_TEST(who_is_cut_short_goes_on_with_his_next_sentence_at_once)
{
    told_run(&told, "start five-out\n"
                    "1 dribbles to left corner until 3 cuts\n"
                    "1 passes to 2\n"
                    "at 1 s, 3 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double cut = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_eq_tol(cut, 1, .02);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), cut, .02);
}
END_TEST

START_TEST(a_hold_lasts_until_the_other_is_past)
{
    told_run(&told, "start 1 top, 2 left wing, 3 right wing, 4 left corner, 5 right corner\n"
                    "1 holds until 3 is past 1\n"
                    "1 passes to 2\n"
                    "3 cuts to left slot\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double end = told_time(way, 0, MOMENT_ARRIVED);
    struct vec2 three = segment_at(way, body_attacker(3), end);
    struct vec2 one = segment_at(way, body_attacker(1), end);
    ck_assert_double_lt(three.x, one.x);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), end, .02);
}
END_TEST

START_TEST(a_hold_until_what_holds_already_is_no_time)
{
    told_run(&told, "start five-out\n1 holds until 1 has the ball\n1 passes to 2\n");
    told_is_sound(&told);
    ck_assert_double_lt(told_time(told_segment(&told, 0, -1), 0, MOMENT_ARRIVED), .02);
}
END_TEST

START_TEST(a_movement_until_what_is_so_already_is_said)
{
    told_run(&told, "start five-out\n1 dribbles to right wing until 1 has the ball\n");
    told_says(&told, "run.at-once", "`until 1 has the ball`");
    told_run(&told, "start five-out\n1 passes to 2\nafter 2 catches, 3 cuts to the rim until 1 "
                    "passes\n");
    told_says(&told, "run.at-once", "`until 1 passes`");
    told_run(&told, "start five-out\n1 passes to 2\n3 cuts to the rim until 2 catches\n");
    told_is_sound(&told);
}
END_TEST

START_TEST(who_is_told_to_take_very_long_is_given_his_time)
{
    told_run(&told, "start five-out\n3 cuts to the rim, taking 25 s\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(told_time(told_segment(&told, 0, -1), 0, MOMENT_ARRIVED), 25, .5);
}
END_TEST

START_TEST(who_is_kept_from_his_place_by_a_wall_of_bodies_is_told_of)
{
    const char *wall =
        "start 1 top, 2 left wing, 3 at (21, -2), 4 at (22.4, -0.8), 5 at (20.8, -3.8)\n";
    char text[400];
    snprintf(text, sizeof text, "%s2 goes to (23.5, -4.2)\n", wall);
    told_run(&told, text);
    told_says(&told, "run.held-up", "2 is kept 4 ft short of this place: 5 stands in the way");
    snprintf(text, sizeof text, "%s2 goes to right wing\n", wall);
    told_run(&told, text);
    ck_assert_ptr_null(strstr(told_said(&told), "run.held-up"));
}
END_TEST

START_TEST(an_until_that_never_comes_never_cuts)
{
    told_run(&told, "start five-out\ndefense man\n"
                    "3 cuts to the rim until 5 has the ball\n"
                    "2 stays until 5 has the ball\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_lt(vec2_length(way->record[0].to), 1.2);
    ck_assert_double_lt(way->duration, 6);
}
END_TEST

START_TEST(a_hold_that_keeps_a_sentence_waiting_for_ever_is_said)
{
    told_run(&told, "start five-out\n"
                    "1 stays until 5 has the ball\n1 passes to 2\n3 cuts to the rim\n");
    told_says(&told, "run.stuck", "until 5 has the ball");
}
END_TEST

START_TEST(a_screen_cut_short_lets_its_user_and_its_screener_go)
{
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 screens for 2 until 1 dribbles\n"
                    "5 cuts to the rim\n"
                    "at 2 s, 1 dribbles to left wing\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_double_eq_tol(told_time(way, 0, MOMENT_ARRIVED), 2, .02);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), 2, .02);
}
END_TEST

START_TEST(a_use_cut_short_frees_its_screener)
{
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 down screens for 2\n"
                    "2 curls off 5 to the rim until 3 cuts\n"
                    "5 pops to top\n"
                    "1 s after 2 curls, 3 cuts to the rim\n"
                    "after 5 screens, 4 cuts to the rim\n");
    told_run(&told, "start four-out one-in\ndefense man\n"
                    "5 screens for 2\n"
                    "2 curls off 5 to the rim until 3 cuts\n"
                    "as 2 curls, 3 lifts to top\n"
                    "5 pops to right wing\n");
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_msg(way->ran, "%s", told_said(&told));
    told_time(way, 3, MOMENT_ARRIVED);
}
END_TEST

START_TEST(a_pass_has_nothing_to_cut_short)
{
    told_run(&told, "start five-out\n1 passes to 2 until 3 is open\n");
    told_says(&told, "play.until", "passes to");
}
END_TEST

START_TEST(an_until_that_names_nobodys_sentence_is_said)
{
    told_run(&told, "start five-out\n1 dribbles to left wing until 3 cuts\n");
    told_says(&told, "play.no-event", "3");
}
END_TEST

START_TEST(a_spot_beside_which_its_player_screens_is_filled_when_he_is_done)
{
    told_run(&told, "start 1 left block, 2 top, 3 right wing, 4 right slot, 5 left short corner\n"
                    "ball 4\ndefense zone 2-3\n1 screens for 5\n5 cuts off 1 to the rim\n"
                    "2 fills 1's spot\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_double_ge(told_time(way, 2, MOMENT_STARTED), told_time(way, 0, MOMENT_USED));
    struct vec2 one = segment_at(way, body_attacker(1), way->duration);
    struct vec2 two = segment_at(way, body_attacker(2), way->duration);
    ck_assert_double_gt(vec2_distance(one, two), .45);
    ck_assert_double_lt(vec2_distance(one, two), 2.0); /* beside him */
}
END_TEST

/* ---- what a defender does by rule ---- */

/* 2 is past x2 at once and drives; the low man, x4, comes. */
#define DRIVE                                                                                      \
    "start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left block, x2 at 4 ft above "      \
    "right "                                                                                       \
    "wing\nball 2\ndefense man\n"

START_TEST(a_team_mate_goes_as_the_helper_comes)
{
    told_run(&told, DRIVE "2 drives to the rim\nas x5 helps, 5 cuts to right block\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double began = told_time(way, 1, MOMENT_STARTED);
    ck_assert_double_gt(began, .2);
    ck_assert_double_lt(began, told_time(way, 0, MOMENT_ARRIVED));
    struct vec2 x5 = segment_at(way, body_defender(5), began);
    struct vec2 later = segment_at(way, body_defender(5), began + .6);
    ck_assert_double_gt(vec2_distance(x5, later), .4); /* that is when he goes */
}
END_TEST

START_TEST(a_drive_ends_when_help_comes)
{
    told_run(&told, DRIVE "2 drives to the rim until x5 helps\n2 passes to 5\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double cut = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_gt(vec2_length(way->record[0].to), 2.5);
    ck_assert_double_le(told_time(way, 1, MOMENT_RELEASED), cut + .3);
    struct vec2 five = segment_at(way, body_attacker(5), told_time(way, 1, MOMENT_CAUGHT));
    struct vec2 x5 = segment_at(way, body_defender(5), told_time(way, 1, MOMENT_CAUGHT));
    ck_assert_double_gt(vec2_distance(five, x5), 4 * FEET); /* whose man is open */
}
END_TEST

/* Told to help as the drive begins: not the telling ends it, but he himself, before the driver. */
START_TEST(a_drive_ends_when_the_help_that_is_written_is_there)
{
    for (int helper = 4; helper <= 5; helper++) {
        const char *text = "start five-out\ndefense man\n1 drives to the rim until x%d helps\n"
                           "as 1 drives, x%d helps\n1 passes to %d\n";
        told_run(&told, str_format(&arena, text, helper, helper, helper).at);
        told_is_sound(&told);
        const struct segment *way = told_segment(&told, 0, -1);
        double cut = told_time(way, 0, MOMENT_ARRIVED);
        struct vec2 driver = segment_at(way, body_attacker(1), cut);
        struct vec2 help = segment_at(way, body_defender(helper), cut);
        ck_assert_double_gt(vec2_distance(driver, way->record[0].from), 1);
        ck_assert_double_lt(vec2_distance(driver, help), 2);
        ck_assert_double_lt(vec2_length(help), vec2_length(driver));
    }
}
END_TEST

START_TEST(an_end_of_what_a_defender_does_can_be_waited_for)
{
    told_run(&told, "start five-out\ndefense man sag\n"
                    "1 passes to 4\nafter x4 closes out, 4 drives to the rim\n"
                    "as x4 closes out, 2 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double start = told_time(way, 2, MOMENT_STARTED), end = told_time(way, 1, MOMENT_STARTED);
    ck_assert_double_lt(start, end);
    ck_assert_double_ge(end, told_time(way, 0, MOMENT_CAUGHT));
    double far = vec2_distance(segment_at(way, body_attacker(4), end),
                               segment_at(way, body_defender(4), end));
    ck_assert_double_lt(far, 1.6);
}
END_TEST

START_TEST(under_and_over_a_screen_are_told_apart)
{
    static const char *const text =
        "start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
        "defense man gap\n"
        "5 down screens for 3\n3 curls off 5 to top\n"
        "as x3 %s, 2 cuts to the rim\n"
        "read x3 %s\n  4 stays\nread x3 %s\n  4 stays\n";
    told_run(&told, str_format(&arena, text, "goes under", "goes under", "trails").at);
    ck_assert_msg(told_segment(&told, 0, 0)->ran, "%s", told_said(&told));
    ck_assert(!told_segment(&told, 0, 1)->ran);
    told_says(&told, "run.stuck", "x3 goes under");
    told_run(&told, str_format(&arena, text, "trails", "trails", "goes under").at);
    ck_assert_msg(told_segment(&told, 0, 0)->ran, "%s", told_said(&told));
}
END_TEST

START_TEST(a_switch_can_be_waited_for)
{
    told_run(&told, "start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
                    "defense man gap\n"
                    "5 down screens for 3\n3 curls off 5 to top\n"
                    "when x5 switches, 5 cuts to the rim\n"
                    "read x3 and x5 switch\n  2 stays\n");
    ck_assert_msg(told_segment(&told, 0, 0)->ran, "%s", told_said(&told));
}
END_TEST

START_TEST(who_has_shot_has_no_ball_to_pass)
{
    told_run(&told, "start five-out\nball 1\n1 shoots\n1 passes to 2\n");
    told_says(&told, "run.stuck", "1 has shot the ball");
    told_run(&told, "start five-out\nball 1\n1 shoots\n1 rebounds\n1 passes to 2\n");
    ck_assert_msg(told_segment(&told, 0, -1)->ran, "%s", told_said(&told));
}
END_TEST

START_TEST(a_defender_who_never_does_it_is_said_by_name)
{
    told_run(&told, "start five-out\ndefense man\nas x4 helps, 4 cuts to the rim\n"
                    "1 passes to 2\n");
    told_says(&told, "run.stuck", "`x4 helps` does not come about");
}
END_TEST

START_TEST(an_until_that_never_comes_true_is_said_and_the_drive_goes_to_the_rim)
{
    static const char *const drive = "start 1 left wing, 2 right wing, 3 left corner, 4 right "
                                     "corner, 5 top\ndefense man\n%s\n1 passes to 4\n";
    told_run(&told, str_format(&arena, drive, "1 drives to the rim until x5 helps").at);
    told_is_sound(&told);
    told_says(&told, "run.until", "`x5 helps` never came true here");
    ck_assert_double_lt(vec2_length(told_segment(&told, 0, -1)->record[0].to), 1.2);
    told_run(&told, str_format(&arena, drive, "1 drives to the rim").at);
    ck_assert(!strstr(told_said(&told), "never came true"));
    told_run(&told, DRIVE "2 drives to the rim until x5 helps\n2 passes to 5\n");
    ck_assert(!strstr(told_said(&told), "never came true"));
}
END_TEST

/* ---- moments that are past, and those that never come ---- */

START_TEST(at_a_time_at_which_the_player_is_still_busy_is_said)
{
    told_run(&told, "start five-out\n3 cuts to the rim\n3 clears to right block\n"
                    "at 1 s, 3 fills left corner\n");
    told_says(&told, "run.past",
              "1.0 s into the step, and 3 is busy with `3 clears to right block`");
    told_run(&told, "start five-out\n3 cuts to the rim\nat 4 s, 3 clears to left corner\n");
    told_is_sound(&told);
    told_run(&told, "start five-out\n3 cuts to the rim\nat 1 s, 3 clears to left corner\n");
    told_is_sound(&told); /* it fixes the start, and cuts short what he is doing */
    ck_assert_double_eq_tol(told_time(told_segment(&told, 0, -1), 1, MOMENT_STARTED), 1, 1e-3);
}
END_TEST

START_TEST(a_time_that_cuts_a_dribble_short_is_a_pass_off_the_dribble_and_told)
{
    told_run(&told, "start five-out\n1 dribbles to left elbow\nat 1 s, 1 passes to 2\n");
    told_is_sound(&told);
    told_says(&told, "run.cut", "cuts `1 dribbles to left elbow` short, ");
    ck_assert_double_eq_tol(told_time(told_segment(&told, 0, -1), 1, MOMENT_RELEASED), 1, 1e-3);
    told_run(&told, "start five-out\n1 dribbles to left elbow\nat 5 s, 1 passes to 2\n");
    ck_assert(!strstr(told_said(&told), "run.cut"));
    told_run(&told, "start five-out\n3 stays\nat 2 s, 3 cuts to the rim\n");
    ck_assert(!strstr(told_said(&told), "run.cut")); /* who stands on purpose is not cut short */
    told_run(&told, "start five-out\n1 dribbles to left elbow\n2 cuts to the rim\n"
                    "as 2 cuts, 1 passes to 3\n");
    ck_assert(!strstr(told_said(&told), "run.cut")); /* `as` is written for it */
}
END_TEST

START_TEST(as_something_that_was_before_the_player_was_free_is_said)
{
    told_run(&told, "start five-out\n1 passes to 2\n3 cuts to right block\n"
                    "3 clears to left corner\nas 1 passes, 3 fills left wing\n");
    told_says(&told, "run.past", "`as 1 passes, 3 fills left wing` comes too late");
}
END_TEST

START_TEST(a_circle_is_said_in_the_coachs_own_sentences)
{
    told_run(&told, "start five-out\nafter 3 cuts, 1 dribbles to left wing\n"
                    "after 1 dribbles, 3 cuts to the rim\n");
    told_says(&told, "play.circle", "`after 3 cuts, 1 dribbles to left wing`");
    told_says(&told, "play.circle", "`after 1 dribbles, 3 cuts to the rim`");
}
END_TEST

START_TEST(a_circle_by_way_of_a_players_own_order_is_said)
{
    told_run(&told, "start five-out\nafter 3 clears, 1 dribbles to left wing\n"
                    "after 1 dribbles, 3 cuts to the rim\n3 clears to left corner\n");
    ck_assert_uint_gt(told.text.diags.errors, 0);
    told_says(&told, "play.circle", "3 clears to left corner");
}
END_TEST

/* Who has it is asked of the step the passes stand in, not of the play's beginning. */
START_TEST(passes_that_nobody_begins_are_said_with_who_has_the_ball)
{
    told_run(&told, "start five-out\nstep\n  2 passes to 3\n  3 passes to 2\n");
    told_says(&told, "play.circle", "1 has the ball, and it comes to 2 only by a pass behind");
    told_run(&told, "start five-out\nstep\n  1 passes to 2\n"
                    "step\n  3 passes to 4\n  4 passes to 3\n");
    told_says(&told, "play.circle", "2 has the ball, and it comes to 3 only by a pass behind");
}
END_TEST

START_TEST(a_tie_to_what_never_happens_is_said)
{
    told_run(&told, "start five-out\nwhen 5 has the ball, 3 cuts to the rim\n1 passes to 2\n");
    told_says(&told, "play.no-event", "nobody passes to 5");
    told_run(&told,
             "start five-out\ndefense man\nwhen 3 is past 4, 3 cuts to the rim\n1 passes to 2\n");
    told_says(&told, "run.stuck", "`3 is past 4` does not come about");
}
END_TEST

START_TEST(a_wait_of_more_than_eight_seconds_is_said)
{
    told_run(&told, "start five-out\n2 holds for 10 s\nafter 2 holds, 3 cuts to the rim\n");
    told_says(&told, "run.wait", "has waited 8 seconds for `2 holds for 10 s`");
}
END_TEST

START_TEST(who_only_lets_the_seconds_after_an_event_go_by_is_not_said_to_wait)
{
    told_run(&told, "start five-out\n2 holds for 7.8 s\n0.5 s after 2 holds, 3 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double held = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_gt(held, 7.5);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), held + .5, .002);
}
END_TEST

START_TEST(a_step_of_more_than_half_a_minute_is_said)
{
    told_run(&told, "start five-out\n2 holds for 20 s\n2 holds for 20 s\n");
    told_says(&told, "run.long", "more than 30 seconds");
}
END_TEST

/* ---- every event of every kind ---- */

static const struct {
    const char *play;
    size_t on, task; /* what is waited for, and who waits */
    enum moment moment;
    double after;
} events[] = {
    {"1 passes to 2\nas 1 passes, 3 cuts to the rim", 0, 1, MOMENT_RELEASED, 0},
    {"1 passes to 2\nafter 1 passes, 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 0},
    {"1 passes to 2\nas 2 catches, 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 0},
    {"1 passes to 2\nwhen 2 has the ball, 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 0},
    {"1 passes to 2\n1 s after 2 catches, 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 1},
    {"1 passes to 2\nwhile 1 passes, 3 cuts to the rim", 0, 1, MOMENT_STARTED, 0},
    {"3 cuts to the rim\n1 passes to 3\nwhile 1 passes, 5 cuts to the rim", 1, 2, MOMENT_RELEASED,
     0},
    {"1 passes to 2\nmeanwhile, 3 cuts to the rim", 0, 1, MOMENT_STARTED, 0},
    {"1 passes to 2\nthen 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 0},
    {"1 passes to 2\n1 s later, 3 cuts to the rim", 0, 1, MOMENT_CAUGHT, 1},
    {"3 screens for 2\n2 comes off 3 to top\nas 3 screens, 4 cuts to the rim", 0, 2, MOMENT_SET, 0},
    {"3 screens for 2\n2 comes off 3 to top\nafter 3 screens, 4 cuts to the rim", 0, 2, MOMENT_USED,
     0},
    {"3 screens for 2\n2 comes off 3 to top\nwhile 3 screens, 4 cuts to the rim", 0, 2,
     MOMENT_STARTED, 0},
    {"3 screens for 2\n2 comes off 3 to top\nas 2 cuts, 4 cuts to the rim", 1, 2, MOMENT_STARTED,
     0},
    {"3 cuts to the rim\nafter 3 cuts, 2 cuts to top", 0, 1, MOMENT_ARRIVED, 0},
    {"1 dribbles to left slot\nafter 1 dribbles, 2 cuts to the rim", 0, 1, MOMENT_ARRIVED, 0},
    {"2 holds for 1 s\nafter 2 holds, 3 cuts to the rim", 0, 1, MOMENT_ARRIVED, 0},
    {"1 hands off to 3\nas 1 hands off, 4 cuts to the rim", 1, 2, MOMENT_RELEASED, 0},
    {"1 hands off to 3\nwhen 3 catches, 4 cuts to the rim", 1, 2, MOMENT_CAUGHT, 0},
    {"1 shoots\nafter 1 shoots, 4 rebounds", 0, 1, MOMENT_RELEASED, 0},
};

START_TEST(each_event_has_its_moment)
{
    told_run(&told, str_format(&arena, "start five-out\ndefense man\n%s\n", events[_i].play).at);
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double moment = told_time(way, events[_i].on, events[_i].moment) + events[_i].after;
    double began = told_time(way, events[_i].task, MOMENT_STARTED);
    ck_assert_msg(began >= moment - 1e-6 && began <= moment + .02, "`%s`: %d ms late",
                  events[_i].play, (int)((began - moment) * 1000));
}
END_TEST

START_TEST(a_time_of_the_step_is_exact)
{
    told_run(&told, "start five-out\nat 2 s, 3 cuts to the rim\n1 holds for 3 s\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(told_time(told_segment(&told, 0, -1), 0, MOMENT_STARTED), 2, 1e-3);
}
END_TEST

START_TEST(a_clause_finds_the_nearest_earlier_sentence_else_the_nearest_later)
{
    told_run(&told, "start five-out\n3 cuts to the rim\n3 cuts to left corner\n"
                    "after 3 cuts, 2 cuts to the rim\n3 cuts to left wing\n");
    ck_assert_int_eq(told.play->steps.at[0].tasks.at[2].waits.at[0].task, 1);
    told_run(&told, "start five-out\nafter 3 cuts, 2 cuts to the rim\n3 cuts to left corner\n"
                    "3 cuts to left wing\n");
    ck_assert_int_eq(told.play->steps.at[0].tasks.at[0].waits.at[0].task, 1);
}
END_TEST

/* ---- steps that overlap, and steps behind a branch ---- */

#define MILLRACE                                                                                   \
    "start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left block\ndefense man gap\n"      \
    "step \"Swing\"\n  1 passes to 2\n  5 screens for 3\n  after 1 passes, 1 cuts to left "        \
    "corner\n"                                                                                     \
    "  4 posts up on right block\n"

#define EXACT 1e-5 /* s: moments inside a tick are found that well */

/* When the first sentence of a tied step starts, by the clock of the step before. */
static double begun(int step)
{
    const struct segment *segment = told_segment(&told, step, -1);
    return segment->begins + told_time(segment, 0, MOMENT_STARTED);
}

static const char *const tied[] = {"as 1 passes", "as 2 catches", "after 1 passes",
                                   "when 2 has the ball"};

START_TEST(a_tied_step_begins_at_its_moment_and_not_with_the_next_tick)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, MILLRACE "step \"Go\" %s\n  3 cuts to the rim\n", tied[_i]);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1);
    double moment = told_time(first, 0, _i == 0 ? MOMENT_RELEASED : MOMENT_CAUGHT);
    ck_assert_double_eq_tol(begun(1), moment, EXACT);
}
END_TEST

START_TEST(a_step_begins_in_the_middle_of_the_one_before)
{
    told_run(&told,
             MILLRACE "step \"Use it\" as 1 passes\n  3 comes off 5 to top\n  2 passes to 3\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    double released = told_time(first, 0, MOMENT_RELEASED);
    ck_assert_double_le(second->begins, released);
    ck_assert_double_lt(released - second->begins, 1.0 / SIM_RATE);
    ck_assert_double_eq_tol(second->time_before, second->begins, 1e-9);
    /* the first is whole all the same */
    ck_assert_double_gt(first->duration, told_time(first, 2, MOMENT_ARRIVED));
    /* and nobody jumps at the border, nor changes his speed */
    for (body b = 0; b < BODY_COUNT; b++) {
        struct vec2 a = segment_at(first, b, second->begins), c = segment_at(second, b, 0);
        struct vec2 v = segment_velocity(first, b, second->begins);
        ck_assert_double_lt(vec2_distance(a, c), .03);
        ck_assert_double_lt(vec2_distance(v, segment_velocity(second, b, 0)), .5);
    }
}
END_TEST

START_TEST(what_goes_on_from_the_step_before_is_done_beside_the_new_one)
{
    told_run(&told,
             MILLRACE "step \"Use it\" as 1 passes\n  3 comes off 5 to top\n  2 passes to 3\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    /* the ball in the air is caught, the screen set and used, 1 and 4 get where they were going */
    ck_assert_int_eq(segment_holder(second, 1), body_attacker(2));
    double set = told_time(first, 1, MOMENT_SET) - second->begins;
    ck_assert_double_ge(told_time(second, 0, MOMENT_STARTED), set);
    body moved[] = {body_attacker(1), body_attacker(4)};
    for (size_t i = 0; i < 2; i++) {
        ck_assert_double_lt(vec2_distance(segment_at(first, moved[i], first->duration),
                                          segment_at(second, moved[i], second->duration)),
                            .5);
    }
    ck_assert_uint_eq(second->tasks, 2); /* they are told in the first */
}
END_TEST

START_TEST(who_is_on_his_way_to_screen_gets_there_whatever_step_begins)
{
    told_run(&told, MILLRACE "step \"Go\" as 1 passes\n  2 passes to 4\n"
                             "step \"On\" as 2 passes\n  4 shoots\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    double set = told_time(first, 1, MOMENT_SET);
    ck_assert_double_lt(second->begins, set - .5); /* he is still looking for x3 then */
    ck_assert_double_lt(vec2_distance(segment_at(first, body_attacker(5), set),
                                      segment_at(first, body_defender(3), set)),
                        1.0);
    /* there the ball goes on to 4, x3 with it as he helps, and the screener after him */
    ck_assert_double_lt(vec2_distance(segment_at(second, body_attacker(5), second->duration),
                                      segment_at(second, body_defender(3), second->duration)),
                        1.0);
}
END_TEST

START_TEST(a_tie_finds_a_sentence_that_goes_on_from_the_step_before)
{
    told_run(&told, MILLRACE "step \"Use it\" as 1 passes\n  after 1 cuts, 4 goes to right corner\n"
                             "  as 2 catches, 3 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    double began = told_time(second, 0, MOMENT_STARTED); /* as 1 is there, in this world */
    struct vec2 corner = segment_at(first, body_attacker(1), first->duration);
    ck_assert_double_lt(vec2_distance(segment_at(second, body_attacker(1), began), corner), .5);
    ck_assert_double_gt(vec2_distance(segment_at(second, body_attacker(1), began - .3), corner),
                        .3);
    double caught = told_time(first, 0, MOMENT_CAUGHT) - second->begins;
    ck_assert_double_eq_tol(told_time(second, 1, MOMENT_STARTED), caught, .05);
}
END_TEST

START_TEST(a_step_can_begin_when_a_state_first_holds)
{
    told_run(&told, MILLRACE "step \"Then\" when 2 has the ball\n  3 cuts to the rim\n"
                             "step \"And\" when 3 is past 5\n  2 drives to the rim\n");
    told_is_sound(&told);
    ck_assert_double_eq_tol(begun(1), told_time(told_segment(&told, 0, -1), 0, MOMENT_CAUGHT),
                            EXACT);
    ck_assert_double_lt(told_segment(&told, 2, -1)->begins, told_segment(&told, 1, -1)->duration);
}
END_TEST

START_TEST(a_step_whose_moment_never_comes_is_said)
{
    told_run(&told, MILLRACE "step \"Use it\" when 5 has the ball\n  3 cuts to top\n");
    told_says(&told, "run.step-tie", "step 2 never begins");
    told_says(&told, "run.step-tie", "`5 has the ball` does not come about in step 1");
    ck_assert_uint_eq(told.run->segments.count, 2);
}
END_TEST

START_TEST(a_step_whose_moment_is_past_is_said)
{
    told_run(&told, MILLRACE "step \"Use it\" when 1 has the ball\n  3 comes off 5 to top\n");
    told_says(&told, "run.step-tie", "so already");
}
END_TEST

START_TEST(the_first_step_is_tied_to_nothing)
{
    told_run(&told, "start five-out\nstep \"A\" as 1 passes\n  1 passes to 2\n");
    told_says(&told, "play.step-tie", "no step before");
}
END_TEST

START_TEST(steps_that_overlap_run_as_their_own_mirror)
{
    told_run(&told, "play \"Millrace\"\n" MILLRACE
                    "step \"Use it\" as 1 passes\n  3 comes off 5 to top until 1 cuts\n"
                    "  after 1 cuts, 4 goes to right corner\n  2 passes to 3\n"
                    "step \"On\"\n  3 cuts to left corner\n"
                    "play \"Other\" mirrors \"Millrace\"\n");
    told_is_sound(&told);
    const struct play *own = &told.text.book->plays.at[0];
    struct run *run = sim_run(&arena, &told.text.sources, own, &told.text.diags);
    runs_are_mirrors(run, told.run);
}
END_TEST

START_TEST(an_unused_screen_stands_on_through_a_step_and_is_used_in_the_next)
{
    told_run(&told, "start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
                    "defense man\nstep\n  5 down screens for 3\nstep\n  1 passes to 2\n"
                    "step\n  3 curls off 5 to top\n");
    told_is_sound(&told);
    const struct segment *third = told_segment(&told, 2, -1);
    ck_assert_double_lt(told_time(third, 0, MOMENT_STARTED), .3);
    ck_assert_double_ge(third->record[0].gap, 0); /* it went by a screener, not by a post */
    ck_assert_double_lt(third->record[0].gap, 1.2);
}
END_TEST

/* ---- through the border ---- */

static double speed_at(const struct segment *segment, int player, double t)
{
    return vec2_length(segment_velocity(segment, body_attacker(player), t));
}

START_TEST(who_goes_on_running_does_not_brake_at_the_border)
{
    told_run(&told, "start five-out\nball 2\nstep\n  1 cuts to right elbow\n"
                    "step\n  1 cuts to right block\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    ck_assert_double_lt(first->duration - told_time(first, 0, MOMENT_ARRIVED), .06);
    ck_assert_double_gt(speed_at(first, 1, first->duration), .5);
    ck_assert_double_eq_tol(speed_at(second, 1, 0), speed_at(first, 1, first->duration), 1e-6);
    double least = 9;
    for (double t = 0; t < .8; t += RUN_SAMPLE) {
        least = real_min(least, speed_at(second, 1, t));
    }
    ck_assert_double_gt(least, .5);
    told_run(&told, "start five-out\nball 2\nstep\n  1 cuts to right elbow\n"
                    "step\n  3 cuts to left corner\n");
    first = told_segment(&told, 0, -1); /* who does not go on stops */
    ck_assert_double_lt(speed_at(first, 1, first->duration), .4);
}
END_TEST

START_TEST(who_has_to_wait_at_the_border_stops_there)
{
    told_run(&told, "start five-out\nball 2\nstep\n  1 cuts to right elbow\n"
                    "  3 goes to top, walking\nstep\n  1 cuts to right block\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1);
    ck_assert_double_lt(speed_at(first, 1, first->duration), .4);
    told_run(&told, "start five-out\nball 2\nstep\n  1 cuts to right elbow\n"
                    "step\n  2 passes to 4\n  after 2 passes, 1 cuts to right block\n");
    told_is_sound(&told);
    first = told_segment(&told, 0, -1);
    ck_assert_double_lt(speed_at(first, 1, first->duration), .4);
}
END_TEST

START_TEST(a_defender_sees_on_across_the_border)
{
    told_run(&told, "start five-out\nball 2\ndefense man\nstep\n  1 cuts to right elbow\n"
                    "step\n  1 cuts to right block\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    body x1 = body_defender(1);
    struct vec2 before = segment_velocity(first, x1, first->duration);
    ck_assert_double_gt(vec2_length(before), .5); /* he runs with his man, and goes on running */
    for (double t = 0; t < .3; t += RUN_SAMPLE) {
        ck_assert_double_gt(vec2_length(segment_velocity(second, x1, t)), .3);
    }
}
END_TEST

#define TWO_WAYS                                                                                   \
    "start five-out\ndefense man\nstep \"Enter\"\n  1 passes to 2\n"                               \
    "  option \"Cut\"\n    1 cuts to the rim\n  option \"Away\"\n    1 cuts to left corner, "      \
    "jogging\n"

START_TEST(a_step_goes_on_from_a_branch_of_an_earlier_one)
{
    told_run(&told, TWO_WAYS "step \"On\"\n  2 passes to 4\nstep \"Again\" after \"Away\"\n"
                             "  2 dribbles to top\nstep \"More\"\n  3 cuts to the rim\n");
    told_is_sound(&told);
    const struct segment *away = told_segment(&told, 0, 1), *on = told_segment(&told, 1, -1),
                         *again = told_segment(&told, 2, -1), *more = told_segment(&told, 3, -1);
    ck_assert_ptr_eq(on->before, told_segment(&told, 0, 0));
    ck_assert_ptr_eq(again->before, away);
    ck_assert_ptr_eq(more->before, again);
    ck_assert_double_eq_tol(again->time_before, away->duration, 1e-9);
    struct vec2 left = segment_at(away, body_attacker(1), away->duration);
    ck_assert_double_lt(vec2_distance(left, segment_at(again, body_attacker(1), 0)), 1e-3);
    ck_assert_int_eq(segment_holder(again, 0), body_attacker(2)); /* not 4, as in step 2 */
}
END_TEST

/* ---- steps that are repeated and shared ---- */

#define WHEEL                                                                                      \
    "play \"Wheel\"\nstart five-out\nstep\n  1 passes to 2\n  1 cuts to left corner\n"             \
    "  5 fills left wing\n  3 fills top\nstep\n  2 passes to 3\nstep\n  repeat from step 1\n"

START_TEST(a_shared_step_repeats_by_the_spots_of_its_own_play)
{
    told_run(&told, WHEEL "play \"Counter\"\nstart five-out\nstep\n  same as step 1 of \"Wheel\"\n"
                          "step\n  same as step 2 of \"Wheel\"\n"
                          "step\n  same as step 3 of \"Wheel\"\n  4 stays\n");
    told_is_sound(&told);
    const struct segment *third = told_segment(&told, 2, -1);
    /* 3 stands at the top now, and passes as 1 did */
    ck_assert_int_eq(segment_task(third, 0)->who, body_attacker(3));
    ck_assert_int_eq(segment_task(third, 0)->other, body_attacker(2));
    ck_assert_int_eq(segment_task(third, 1)->who, body_attacker(3));
}
END_TEST

START_TEST(a_shared_repeat_is_the_other_side_in_a_mirror)
{
    told_run(&told, WHEEL "play \"Counter\"\nstart five-out\nball 1\nstep\n"
                          "  same as step 1 of \"Wheel\"\nstep\n  same as step 2 of \"Wheel\"\n"
                          "step\n  same as step 3 of \"Wheel\"\n"
                          "play \"Other\" mirrors \"Counter\"\n");
    told_is_sound(&told);
    const struct segment *third = told_segment(&told, 2, -1);
    ck_assert_int_eq(segment_task(third, 0)->who, body_attacker(3));
    ck_assert_double_gt(segment_task(third, 1)->planned.x, 3); /* to the right corner */
}
END_TEST

START_TEST(plays_that_share_each_others_repeats_come_to_an_end)
{
    told_run(&told, "play \"A\"\nstart five-out\nstep\n  1 passes to 2\nstep\n"
                    "  same as step 2 of \"B\"\n  repeat from step 1\n"
                    "play \"B\"\nstart five-out\nstep\n  1 passes to 2\nstep\n"
                    "  repeat from step 1\n  same as step 2 of \"A\"\n");
    told_says(&told, "play.too-deep", "same as itself");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sim ties");
    TCase *steps = tcase_create("steps");
    tcase_add_checked_fixture(steps, open_arena, close_arena);
    tcase_add_test(steps, a_step_begins_in_the_middle_of_the_one_before);
    tcase_add_loop_test(steps, a_tied_step_begins_at_its_moment_and_not_with_the_next_tick, 0,
                        (int)(sizeof tied / sizeof *tied));
    tcase_add_test(steps, what_goes_on_from_the_step_before_is_done_beside_the_new_one);
    tcase_add_test(steps, a_tie_finds_a_sentence_that_goes_on_from_the_step_before);
    tcase_add_test(steps, a_step_can_begin_when_a_state_first_holds);
    tcase_add_test(steps, a_step_whose_moment_never_comes_is_said);
    tcase_add_test(steps, a_step_whose_moment_is_past_is_said);
    tcase_add_test(steps, the_first_step_is_tied_to_nothing);
    tcase_add_test(steps, steps_that_overlap_run_as_their_own_mirror);
    tcase_add_test(steps, who_is_on_his_way_to_screen_gets_there_whatever_step_begins);
    tcase_add_test(steps, an_unused_screen_stands_on_through_a_step_and_is_used_in_the_next);
    tcase_add_test(steps, who_goes_on_running_does_not_brake_at_the_border);
    tcase_add_test(steps, who_has_to_wait_at_the_border_stops_there);
    tcase_add_test(steps, a_defender_sees_on_across_the_border);
    tcase_add_test(steps, a_step_goes_on_from_a_branch_of_an_earlier_one);
    tcase_add_test(steps, a_shared_step_repeats_by_the_spots_of_its_own_play);
    tcase_add_test(steps, a_shared_repeat_is_the_other_side_in_a_mirror);
    tcase_add_test(steps, plays_that_share_each_others_repeats_come_to_an_end);
    suite_add_tcase(suite, steps);
    TCase *moments = tcase_create("moments");
    tcase_add_checked_fixture(moments, open_arena, close_arena);
    tcase_add_test(moments, at_a_time_at_which_the_player_is_still_busy_is_said);
    tcase_add_test(moments, a_time_that_cuts_a_dribble_short_is_a_pass_off_the_dribble_and_told);
    tcase_add_test(moments, as_something_that_was_before_the_player_was_free_is_said);
    tcase_add_test(moments, a_circle_is_said_in_the_coachs_own_sentences);
    tcase_add_test(moments, a_circle_by_way_of_a_players_own_order_is_said);
    tcase_add_test(moments, passes_that_nobody_begins_are_said_with_who_has_the_ball);
    tcase_add_test(moments, a_tie_to_what_never_happens_is_said);
    tcase_add_test(moments, a_wait_of_more_than_eight_seconds_is_said);
    tcase_add_test(moments, who_only_lets_the_seconds_after_an_event_go_by_is_not_said_to_wait);
    tcase_add_test(moments, a_step_of_more_than_half_a_minute_is_said);
    tcase_add_loop_test(moments, each_event_has_its_moment, 0,
                        (int)(sizeof events / sizeof *events));
    tcase_add_test(moments, a_spot_beside_which_its_player_screens_is_filled_when_he_is_done);
    tcase_add_test(moments, a_time_of_the_step_is_exact);
    tcase_add_test(moments, a_clause_finds_the_nearest_earlier_sentence_else_the_nearest_later);
    suite_add_tcase(suite, moments);
    TCase *deeds = tcase_create("deeds");
    tcase_add_checked_fixture(deeds, open_arena, close_arena);
    tcase_add_test(deeds, a_team_mate_goes_as_the_helper_comes);
    tcase_add_test(deeds, a_drive_ends_when_help_comes);
    tcase_add_test(deeds, a_drive_ends_when_the_help_that_is_written_is_there);
    tcase_add_test(deeds, an_until_that_never_comes_true_is_said_and_the_drive_goes_to_the_rim);
    tcase_add_test(deeds, an_end_of_what_a_defender_does_can_be_waited_for);
    tcase_add_test(deeds, under_and_over_a_screen_are_told_apart);
    tcase_add_test(deeds, a_switch_can_be_waited_for);
    tcase_add_test(deeds, who_has_shot_has_no_ball_to_pass);
    tcase_add_test(deeds, a_defender_who_never_does_it_is_said_by_name);
    suite_add_tcase(suite, deeds);
    TCase *all = tcase_create("until");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, a_dribble_is_cut_short_the_moment_another_catches);
    tcase_add_test(all, who_is_cut_short_goes_on_with_his_next_sentence_at_once);
    tcase_add_test(all, a_hold_lasts_until_the_other_is_past);
    tcase_add_test(all, a_hold_until_what_holds_already_is_no_time);
    tcase_add_test(all, who_is_kept_from_his_place_by_a_wall_of_bodies_is_told_of);
    tcase_add_test(all, an_until_that_never_comes_never_cuts);
    tcase_add_test(all, a_movement_until_what_is_so_already_is_said);
    tcase_add_test(all, who_is_told_to_take_very_long_is_given_his_time);
    tcase_add_test(all, a_hold_that_keeps_a_sentence_waiting_for_ever_is_said);
    tcase_add_test(all, a_screen_cut_short_lets_its_user_and_its_screener_go);
    tcase_add_test(all, a_use_cut_short_frees_its_screener);
    tcase_add_test(all, a_pass_has_nothing_to_cut_short);
    tcase_add_test(all, an_until_that_names_nobodys_sentence_is_said);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
