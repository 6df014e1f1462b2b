/* SPDX-License-Identifier: MIT */
/* The rulebook's checks and those of passes, shots and spots on runs made by hand: amounts swept
 * through their limits; and the names of checks in a book's own lines. */
#include "base/real.h"
#include "made.h"
#include "pipe.h"
#include "suite.h"

#include <math.h>
#include <string.h>

enum { P1, P2, P3, P4, P5, X1 = BODY_FIRST_DEFENDER, X2, X3 };

static const struct finding *the(struct made *made, const char *id)
{
    finding_list found;
    check_run(&arena, &made->run, &found);
    for (size_t i = 0; i < found.count; i++) {
        if (strcmp(found.at[i].row->id, id) == 0) {
            return &found.at[i];
        }
    }
    return NULL;
}

/* ---- time ---- */

static struct made *in_the_lane(double seconds)
{
    struct made *made = made_play(&arena, seconds + 2);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, seconds + 2);
    made_stand(made, segment, P5, 0, 2);
    made_walk(made, segment, P5, seconds, seconds + 0.5, -20, -2);
    return made;
}

START_TEST(the_lane_is_noted_over_three_seconds_and_warned_of_over_five)
{
    for (double seconds = 1; seconds < 7; seconds += 0.25) {
        const struct finding *finding = the(in_the_lane(seconds), "time.lane");
        double inside = seconds + 0.125; /* it takes him a moment to be out */
        if (fabs(inside - 3) > 0.2) {
            ck_assert_int_eq(finding != NULL, inside > 3);
        }
        if (finding && fabs(inside - 5) > 0.2) {
            ck_assert_int_eq(finding->severity, inside > 5 ? SEVERITY_WARNING : SEVERITY_NOTE);
            ck_assert_double_eq_tol(finding->amount, inside, 0.15);
        }
    }
}
END_TEST

START_TEST(on_the_line_at_a_throw_in_after_a_shot_or_screening_the_lane_is_not_counted)
{
    struct made *made = in_the_lane(6);
    made_stand(made, &made->segment[0], P5, 5.5, 2); /* less than a foot inside */
    ck_assert_ptr_null(the(made, "time.lane"));
    made = in_the_lane(6);
    made_stand(made, &made->segment[0], P1, 26, 10);
    ck_assert_ptr_null(the(made, "time.lane"));
    made = in_the_lane(6);
    made->segment[0].ball.at[0].to = 1;
    made_flight(made, &made->segment[0], P1, BODY_NONE, 1, 8, true);
    ck_assert_ptr_null(the(made, "time.lane"));
    made = in_the_lane(6);
    made_task(made, &made->segment[0], TASK_SCREEN, VERB_SCREENS, P5, P3, 0, TIME_NEVER);
    ck_assert_ptr_null(the(made, "time.lane"));
    made = in_the_lane(6);
    made_stand(made, &made->segment[0], P1, 0, 60); /* the ball is in the backcourt */
    ck_assert_ptr_null(the(made, "time.lane"));
}
END_TEST

START_TEST(a_stay_in_the_lane_goes_on_over_the_border_of_steps)
{
    struct made *made = made_play(&arena, 2);
    made_ball(made, &made->segment[0], P1, 0, 2);
    made_stand(made, &made->segment[0], P5, 0, 2);
    struct segment *second = made_step(made, 2);
    made_ball(made, second, P1, 0, 2);
    const struct finding *finding = the(made, "time.lane");
    ck_assert_ptr_nonnull(finding);
    ck_assert_int_eq(finding->step, 1);
    ck_assert_double_eq_tol(finding->time, 1, 0.15);
}
END_TEST

START_TEST(where_two_steps_overlap_their_time_counts_once)
{
    struct made *made = made_play(&arena, 2);
    made_ball(made, &made->segment[0], P1, 0, 2);
    made_stand(made, &made->segment[0], P5, 0, 2);
    struct segment *second = made_step(made, 2);
    made_ball(made, second, P1, 0, 2);
    second->begins = 1;
    ck_assert_ptr_null(the(made, "time.lane")); /* 1 + 2 s */
}
END_TEST

START_TEST(a_throw_in_that_comes_too_late_names_the_sentence_that_takes_the_time)
{
    struct piped piped;
    pipe_text(
        &arena,
        STR("play \"Weir\"\n"
            "  start 1 out of bounds at right short corner, 2 right block, 3 left elbow, 4 left "
            "block, 5 right elbow\n"
            "  ball 1\n  defense man\n  step\n"
            "    2 cross screens for 4\n    4 comes off 2 to right block\n    5 screens for 2\n    "
            "2 pops out to right corner\n    1 inbounds to 2\n"),
        &piped);
    const struct finding *late = NULL;
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        late = strcmp(finding->row->id, "time.throw-in") == 0 ? finding : late;
    }
    ck_assert_ptr_nonnull(late);
    ck_assert_ptr_nonnull(strstr(late->message.at, "s of it go by while 2 screens for 4."));
    struct str words = source_text(&piped.sources, late->span);
    ck_assert_msg(str_starts(words, "2 cross screens for 4"), "%.*s", STR_ARG(words));
}
END_TEST

START_TEST(a_throw_in_takes_five_seconds_and_the_backcourt_ten_or_eight)
{
    for (double seconds = 3; seconds < 12; seconds += 0.5) {
        struct made *made = made_play(&arena, seconds + 1);
        struct segment *segment = &made->segment[0];
        made_stand(made, segment, P3, 13, -7);
        made_ball(made, segment, P3, 0, seconds);
        made_flight(made, segment, P3, P1, seconds, seconds + 0.5, false);
        made_ball(made, segment, P1, seconds + 0.5, seconds + 1);
        ck_assert_int_eq(the(made, "time.throw-in") != NULL, seconds > 5.2);
        made = made_play(&arena, seconds + 1);
        segment = &made->segment[0];
        made_stand(made, segment, P1, 0, 60);
        made_ball(made, segment, P1, 0, seconds + 1);
        made_walk(made, segment, P1, seconds, seconds + 0.2, 0, 20);
        if (seconds != 10) { /* the way over half court takes a moment */
            ck_assert_int_eq(the(made, "time.backcourt") != NULL, seconds > 10);
        }
        made->play.court = court_of(COURT_FIBA);
        if (seconds != 8) {
            ck_assert_int_eq(the(made, "time.backcourt") != NULL, seconds > 8);
        }
    }
}
END_TEST

START_TEST(the_clock_of_the_play_or_of_the_rules_runs_out)
{
    for (double shot = 1; shot < 10; shot += 0.5) {
        struct made *made = made_play(&arena, shot + 1);
        struct segment *segment = &made->segment[0];
        made_ball(made, segment, P1, 0, shot);
        made_flight(made, segment, P1, BODY_NONE, shot, shot + 1, true);
        ck_assert_ptr_null(the(made, "time.clock"));
        made->play.clock = 6;
        ck_assert_int_eq(the(made, "time.clock") != NULL, shot > 6);
        struct limit_entry limit = {.check = STR("time.shot-clock"), .value = 4};
        VEC_PUSH(&arena, &made->play.limits, limit);
        const struct finding *finding = the(made, "time.shot-clock");
        ck_assert_int_eq(finding != NULL, shot > 4);
        ck_assert(!finding || finding->amount == shot);
    }
    struct made *made = made_play(&arena, 30);
    made_ball(made, &made->segment[0], P1, 0, 30);
    ck_assert_ptr_null(the(made, "time.shot-clock")); /* high school has none */
    made->play.court = court_of(COURT_NBA);
    const struct finding *finding = the(made, "time.shot-clock");
    ck_assert_ptr_nonnull(finding);
    ck_assert_ptr_nonnull(strstr(finding->message.at, "nobody has shot"));
}
END_TEST

START_TEST(on_a_throw_in_the_clock_starts_when_the_ball_is_touched)
{
    for (double shot = 4; shot < 12; shot += 0.5) { /* touched at 3 s */
        struct made *made = made_play(&arena, shot + 1);
        struct segment *segment = &made->segment[0];
        made->play.throw_in = true;
        made->play.clock = 4;
        made_ball(made, segment, P1, 0, 2);
        made_flight(made, segment, P1, P2, 2, 3, false);
        segment->ball.at[segment->ball.count - 1].throw_in = true;
        made_ball(made, segment, P2, 3, shot);
        made_flight(made, segment, P2, BODY_NONE, shot, shot + 1, true);
        const struct finding *finding = the(made, "time.clock");
        ck_assert_int_eq(finding != NULL, shot > 7);
        ck_assert(!finding || finding->amount == shot - 3);
    }
    struct made *made = made_play(&arena, 9); /* it has not been touched: no clock runs */
    made->play.throw_in = true;
    made->play.clock = 4;
    made_ball(made, &made->segment[0], P1, 0, 9);
    ck_assert_ptr_null(the(made, "time.clock"));
}
END_TEST

START_TEST(a_run_with_the_ball_in_hand_is_told_from_its_twelfth_foot)
{
    for (double feet = 4; feet < 30; feet += 2) {
        struct made *made = made_run_with_ball(&arena, feet);
        struct segment *segment = &made->segment[0];
        const struct finding *finding = the(made, "ball.travel");
        ck_assert_int_eq(finding != NULL, feet > 12);
        ck_assert(!finding || fabs(finding->amount - feet * FEET) < .01);
        struct dribble_span dribble = {.who = P2, .from = 2.4, .to = 4.6};
        VEC_PUSH(&arena, &segment->dribbles, dribble);
        ck_assert_ptr_null(the(made, "ball.travel")); /* a dribble */
    }
}
END_TEST

START_TEST(who_runs_with_the_ball_does_not_hold_it_while_nobody_moves)
{
    struct made *made = made_play(&arena, 6);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P2, 0, 5);
    made_flight(made, segment, P2, P1, 5, 6, false);
    ck_assert_ptr_nonnull(the(made, "ball.held"));
    made_stand(made, segment, P2, 0, 20);
    made_walk(made, segment, P2, 1, 5, 24, 20);
    ck_assert_ptr_null(the(made, "ball.held"));
}
END_TEST

/* ---- on the floor ---- */

START_TEST(a_place_over_the_line_by_more_than_a_foot_is_out)
{
    for (double x = 20; x < 30; x += 0.3) {
        struct made *made = made_play(&arena, 1);
        struct task *task =
            made_task(made, &made->segment[0], TASK_MOVE, VERB_GOES, P4, BODY_NONE, 0, 1);
        task->planned = vec2_of(x * FEET, 0);
        ck_assert_ptr_null(the(made, "player.out"));
        task->goal_written = true;
        ck_assert_int_eq(the(made, "player.out") != NULL, x > 26);
    }
}
END_TEST

START_TEST(only_who_throws_in_may_start_outside)
{
    struct made *made = made_play(&arena, 1);
    made->play.start[P1].at = vec2_of(0, 100 * FEET);
    ck_assert_ptr_nonnull(the(made, "player.out"));
    made->play.throw_in = true;
    ck_assert_ptr_null(the(made, "player.out"));
}
END_TEST

START_TEST(a_defender_stands_and_is_sent_on_the_floor_too)
{
    struct made *made = made_play(&arena, 1);
    body x3 = body_defender(3);
    made->play.start[x3].at = vec2_of(0, 100 * FEET);
    made->play.start[x3].on_floor = true;
    ck_assert_ptr_null(the(made, "player.out")); /* the rules of the defense placed him */
    made->play.start[x3].placed = true;
    ck_assert_ptr_nonnull(the(made, "player.out"));
    made->play.start[x3].at = vec2_of(0, 0);
    ck_assert_ptr_null(the(made, "player.out"));
    struct task *task =
        made_task(made, &made->segment[0], TASK_GUARD, VERB_ROTATES, x3, BODY_NONE, 0, 1);
    task->planned = vec2_of(40 * FEET, 0);
    task->goal_written = true;
    ck_assert_ptr_nonnull(the(made, "player.out"));
}
END_TEST

START_TEST(in_a_drill_lines_may_wait_beside_the_floor_but_not_far_from_it)
{
    struct made *made = made_play(&arena, 1);
    made->play.is_drill = true;
    made->play.start[P1].at = vec2_of(35 * FEET, 0);
    ck_assert_ptr_null(the(made, "player.out"));
    made->play.start[P1].at = vec2_of(200 * FEET, 0);
    ck_assert_ptr_nonnull(the(made, "player.out"));
}
END_TEST

START_TEST(fewer_than_five_are_noted_once)
{
    struct made *made = made_play(&arena, 1);
    ck_assert_ptr_null(the(made, "start.missing"));
    made->play.start[P5].on_floor = false;
    made_step(made, 1);
    const struct finding *finding = the(made, "start.missing");
    ck_assert_ptr_nonnull(finding);
    ck_assert_int_eq(finding->severity, SEVERITY_NOTE);
    ck_assert_int_eq(finding->step, 0);
}
END_TEST

START_TEST(two_on_one_spot_are_told_and_two_of_a_screen_are_not)
{
    for (double gap = 0.5; gap < 6; gap += 0.2) {
        struct made *made = made_play(&arena, 2);
        made_stand(made, &made->segment[0], P4, -20.75 + gap, -2.25);
        ck_assert_int_eq(the(made, "spot.taken") != NULL, gap <= 3);
        ck_assert_int_eq(the(made, "space.close") != NULL, gap > 3); /* one of the two says it */
    }
    struct made *made = made_play(&arena, 2);
    made_stand(made, &made->segment[0], P4, -20, -2);
    made_task(made, &made->segment[0], TASK_MOVE, VERB_GOES, P4, BODY_NONE, 0, 1);
    ck_assert_int_eq(the(made, "spot.taken")->who[0], P4);
    made_task(made, &made->segment[0], TASK_SCREEN, VERB_SCREENS, P4, P5, 1, TIME_NEVER);
    ck_assert_ptr_null(the(made, "spot.taken"));
}
END_TEST

START_TEST(who_gets_there_as_the_step_ends_stands_there_too)
{
    for (int there = 0; there < 2; there++) {
        struct made *made = made_play(&arena, 2);
        made_task(made, &made->segment[0], TASK_MOVE, VERB_GOES, P4, BODY_NONE, 0,
                  there ? 1.97 : TIME_NEVER);
        made_walk(made, &made->segment[0], P4, 1, 2, -20, -2); /* stops with the step */
        ck_assert_int_eq(the(made, "spot.taken") != NULL, there);
    }
}
END_TEST

/* ---- dribbles ---- */

static struct made *deeds(const enum verb *verbs, size_t count)
{
    struct made *made = made_play(&arena, 5);
    made_ball(made, &made->segment[0], P1, 0, 5);
    for (size_t i = 0; i < count; i++) {
        enum task_kind kind = verbs[i] == VERB_DRIBBLES ? TASK_CARRY : TASK_HOLD;
        made_task(made, &made->segment[0], kind, verbs[i], P1, BODY_NONE, (double)i, (double)i + 1);
    }
    return made;
}

START_TEST(a_dribble_after_a_hold_is_double_and_dribbles_in_a_row_are_one)
{
    const enum verb row[] = {VERB_DRIBBLES, VERB_DRIBBLES};
    const enum verb ended[] = {VERB_DRIBBLES, VERB_SHOT_FAKES, VERB_DRIBBLES};
    const enum verb before[] = {VERB_SHOT_FAKES, VERB_DRIBBLES};
    const enum verb stays[] = {VERB_DRIBBLES, VERB_STAYS, VERB_DRIBBLES};
    ck_assert_ptr_null(the(deeds(row, 2), "ball.double-dribble"));
    ck_assert_ptr_null(the(deeds(before, 2), "ball.double-dribble"));
    ck_assert_ptr_null(the(deeds(stays, 3), "ball.double-dribble"));
    const struct finding *finding = the(deeds(ended, 3), "ball.double-dribble");
    ck_assert_ptr_nonnull(finding);
    ck_assert_double_eq(finding->time, 2);
}
END_TEST

START_TEST(a_dribble_ended_in_the_step_before_stays_ended)
{
    const enum verb first[] = {VERB_DRIBBLES, VERB_JABS};
    struct made *made = deeds(first, 2);
    struct segment *second = made_step(made, 2);
    made_ball(made, second, P1, 0, 2);
    made_task(made, second, TASK_CARRY, VERB_DRIBBLES, P1, BODY_NONE, 0, 1);
    const struct finding *finding = the(made, "ball.double-dribble");
    ck_assert_ptr_nonnull(finding);
    ck_assert_int_eq(finding->step, 1);
    made->segment[0].ball.at[0].holder = P2; /* he only got it since */
    ck_assert_ptr_null(the(made, "ball.double-dribble"));
}
END_TEST

/* ---- passes and shots ---- */

static struct made *a_pass(double feet, enum pass_kind kind)
{
    struct made *made = made_play(&arena, 3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P1, -20, 5);
    made_stand(made, segment, P2, -20 + feet, 5);
    made_task(made, segment, TASK_PASS, VERB_PASSES, P1, P2, 0, TIME_NEVER)->pass = kind;
    made_ball(made, segment, P1, 0, 0.2);
    made_flight(made, segment, P1, P2, 0.2, 1, false);
    segment->ball.at[1].task = 0;
    made_ball(made, segment, P2, 1, 3);
    return made;
}

START_TEST(a_pass_over_thirty_feet_is_long_unless_it_is_a_skip)
{
    for (double feet = 5; feet < 42; feet += 1.1) {
        ck_assert_int_eq(the(a_pass(feet, PASS_PLAIN), "pass.long") != NULL, feet > 30.5);
        ck_assert_ptr_null(the(a_pass(feet, PASS_SKIP), "pass.long"));
    }
}
END_TEST

START_TEST(a_shot_at_the_rim_is_not_called_covered)
{
    struct made *made = a_pass(15, PASS_PLAIN);
    struct segment *segment = &made->segment[0];
    segment->ball.at[2].to = 1.9;
    made_flight(made, segment, P2, BODY_NONE, 1.9, 3, true);
    for (double y = 1; y < 20; y += 0.3) {
        made_stand(made, segment, P2, 0, y);
        made_stand(made, segment, X2, 0, y - 1);
        ck_assert_int_eq(the(made, "open.catch") != NULL, y >= 10);
    }
}
END_TEST

START_TEST(a_catch_to_shoot_is_covered_within_four_feet)
{
    for (double feet = 1; feet < 8; feet += 0.3) {
        struct made *made = a_pass(5, PASS_PLAIN);
        struct segment *segment = &made->segment[0];
        made_stand(made, segment, X2, -15, 5 - feet);
        ck_assert_ptr_null(the(made, "open.catch")); /* nobody shoots */
        segment->ball.at[2].to = 1.9;
        made_flight(made, segment, P2, BODY_NONE, 1.9, 3, true);
        ck_assert_int_eq(the(made, "open.catch") != NULL, feet < 3.5);
        segment->ball.at[1].to = 0.25; /* caught long before: no catch-and-shoot */
        ck_assert_ptr_null(the(made, "open.catch"));
    }
}
END_TEST

START_TEST(balance_is_looked_at_only_where_the_play_speaks_of_it)
{
    struct made *made = made_play(&arena, 2);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 0.5);
    made_flight(made, segment, P1, BODY_NONE, 0.5, 1.5, true);
    ck_assert_ptr_null(the(made, "shot.balance"));
    made_task(made, segment, TASK_MOVE, VERB_REBOUNDS, P3, BODY_NONE, 0.5, 2);
    made_task(made, segment, TASK_MOVE, VERB_REBOUNDS, P4, BODY_NONE, 0.5, 2);
    made_task(made, segment, TASK_MOVE, VERB_REBOUNDS, P5, BODY_NONE, 0.5, 2);
    ck_assert_str_eq(the(made, "shot.balance")->message.at,
                     "Send three to the glass and keep one back: 3 rebound, 0 get back.");
    made_task(made, segment, TASK_MOVE, VERB_GETS_BACK, P2, BODY_NONE, 0.5, 2);
    ck_assert_ptr_null(the(made, "shot.balance"));
}
END_TEST

/* ---- screens ---- */

static struct made *a_screen(void)
{
    struct made *made = made_play(&arena, 4);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 4);
    made_stand(made, segment, P5, -12, 8);
    made_stand(made, segment, X3, -14, 8);
    struct task *screen =
        made_task(made, segment, TASK_SCREEN, VERB_SCREENS, P5, P3, 0, TIME_NEVER);
    screen->faces = true;
    struct task_record *record = made_record(segment, screen);
    record->time[MOMENT_SET] = 1;
    record->to = segment_at(segment, P5, 0);
    record->on = segment_at(segment, X3, 0);
    record->defender = X3;
    record->exit = vec2_of(0, 8 * FEET); /* to the right of him */
    record->facing = REAL_PI;            /* he looks left: the back is square */
    return made;
}

START_TEST(a_screen_turned_away_is_noted_over_thirty_degrees_and_warned_of_over_fifty)
{
    for (int degrees = -175; degrees < 180; degrees += 5) {
        struct made *made = a_screen();
        made->segment[0].record[0].facing = REAL_PI + degrees * REAL_PI / 180;
        const struct finding *finding = the(made, "screen.angle");
        int off = degrees < 0 ? -degrees : degrees;
        ck_assert_int_eq(finding != NULL, off > 32);
        if (finding && off != 50) {
            ck_assert_int_eq(finding->severity, off > 50 ? SEVERITY_WARNING : SEVERITY_NOTE);
            ck_assert_double_eq_tol(finding->amount, off * REAL_PI / 180, 1e-9);
        }
    }
}
END_TEST

START_TEST(a_cut_wide_of_the_screener_is_told_from_two_feet)
{
    for (double gap = -0.3; gap < 5; gap += 0.2) {
        struct made *made = a_screen();
        struct task *use = made_task(made, &made->segment[0], TASK_USE, VERB_COMES, P3, P5, 1.2, 3);
        use->screen_task = 0;
        made_record(&made->segment[0], use)->gap = gap * FEET;
        ck_assert_int_eq(the(made, "screen.gap") != NULL, gap > 2.5 + 1e-6);
        use->shape = SHAPE_FADE; /* bowed away on purpose */
        ck_assert_ptr_null(the(made, "screen.gap"));
    }
}
END_TEST

START_TEST(a_screen_inside_a_zone_is_used_by_the_pass_behind_it)
{
    static const char play[] = "play \"Switchback\"\n  defense zone 1-3-1\n"
                               "  start 1 right slot, 2 left slot, 3 left corner, 4 right corner, "
                               "5 right block\n"
                               "  1 passes to 2\n  5 screens for 4 on x5\n";
    struct piped passed, alone;
    pipe_text(&arena, str_format(&arena, "%s  2 skip passes to 4\n", play), &passed);
    ck_assert_msg(passed.diags.errors == 0, "%s", piped_said(&arena, &passed));
    ck_assert_uint_eq(piped_count(&passed, "screen.unused"), 0);
    pipe_text(&arena, str_of(play), &alone);
    ck_assert_uint_eq(piped_count(&alone, "screen.unused"), 1);
}
END_TEST

START_TEST(a_screen_is_unused_if_nobody_comes_off_it_to_the_end)
{
    struct made *made = a_screen();
    ck_assert_ptr_nonnull(the(made, "screen.unused"));
    struct segment *second = made_step(made, 2);
    made_ball(made, second, P1, 0, 2);
    ck_assert_ptr_nonnull(the(made, "screen.unused"));
    made_task(made, second, TASK_USE, VERB_COMES, P3, P5, 0.5, 2);
    ck_assert_ptr_null(the(made, "screen.unused"));
}
END_TEST

/* ---- names ---- */

static size_t said(const struct piped *piped, const char *id)
{
    size_t count = 0;
    for (size_t i = 0; i < piped->diags.all.count; i++) {
        count += strcmp(piped->diags.all.at[i].row->id, id) == 0;
    }
    return count;
}

static const char *help_of(const struct piped *piped, const char *id)
{
    for (size_t i = 0; i < piped->diags.all.count; i++) {
        if (strcmp(piped->diags.all.at[i].row->id, id) == 0) {
            return piped->diags.all.at[i].help.at;
        }
    }
    return "";
}

START_TEST(names_of_checks_are_held_against_the_table)
{
    struct piped piped;
    pipe_text(&arena,
              STR("play \"Ferry\"\n"
                  "  limit space.clos 10 ft\n"
                  "  limit ball.held 3 ft\n"
                  "  limit start.missing 3 ft\n"
                  "  limit Space.Corner 4 ft\n"
                  "  limit practice.break 20 min\n"
                  "  limit practice.over 20 min\n"
                  "  limit read.better 2 s\n"
                  "  accept spot.taken \"a stack\"\n"
                  "  step\n"
                  "    1 passes to 2\n"
                  "    accept player.out \"they will not see it\"\n"
                  "    accept no.such \"why\"\n"),
              &piped);
    for (size_t i = 0; i < piped.book->plays.count; i++) {
        check_names(&piped.book->plays.at[i], &piped.diags);
    }
    const char *all = piped_said(&arena, &piped);
    ck_assert_msg(said(&piped, "check.unknown") == 2, "%s", all);
    ck_assert_str_eq(help_of(&piped, "check.unknown"), "did you mean space.close?");
    ck_assert_msg(said(&piped, "check.unit") == 1, "%s", all);
    ck_assert_str_eq(help_of(&piped, "check.unit"), "write limit ball.held 3 s");
    ck_assert_msg(said(&piped, "check.no-limit") == 2, "%s", all);
    ck_assert_msg(said(&piped, "check.not-built") == 1, "%s", all);
    ck_assert_msg(said(&piped, "check.no-accept") == 1, "%s", all);
    ck_assert_uint_eq(piped.diags.all.count, 7);
}
END_TEST

/* `once` in front of the reads; `again` is a line of the second read alone. */
static size_t close_in_reads(const char *once, const char *first, const char *again)
{
    struct piped piped;
    struct str text = str_format(&arena,
                                 "play \"Ferry\"\n"
                                 "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left "
                                 "block\n  ball 1\n  defense man\n  step\n    1 passes to 3\n%s"
                                 "    read x3 helps\n      3 passes to 5\n%s"
                                 "    read otherwise\n      5 goes to left corner\n%s",
                                 once, first, again);
    pipe_text(&arena, text, &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s", piped_said(&arena, &piped));
    return piped_count(&piped, "space.close");
}

START_TEST(what_is_common_to_the_reads_is_told_once)
{
    ck_assert_uint_eq(close_in_reads("    2 goes to 7 ft above 4\n", "", ""), 1);
    ck_assert_uint_eq(
        close_in_reads("", "      2 goes to 7 ft above 4\n", "      2 goes to 7 ft above 4\n"), 2);
    ck_assert_uint_eq(close_in_reads("    2 goes to 7 ft above 4\n",
                                     "      accept space.close \"a stack\"\n", ""),
                      2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("more checks");
    TCase *all = tcase_create("more");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, the_lane_is_noted_over_three_seconds_and_warned_of_over_five);
    tcase_add_test(all,
                   on_the_line_at_a_throw_in_after_a_shot_or_screening_the_lane_is_not_counted);
    tcase_add_test(all, a_throw_in_that_comes_too_late_names_the_sentence_that_takes_the_time);
    tcase_add_test(all, a_stay_in_the_lane_goes_on_over_the_border_of_steps);
    tcase_add_test(all, where_two_steps_overlap_their_time_counts_once);
    tcase_add_test(all, a_throw_in_takes_five_seconds_and_the_backcourt_ten_or_eight);
    tcase_add_test(all, the_clock_of_the_play_or_of_the_rules_runs_out);
    tcase_add_test(all, on_a_throw_in_the_clock_starts_when_the_ball_is_touched);
    tcase_add_test(all, a_run_with_the_ball_in_hand_is_told_from_its_twelfth_foot);
    tcase_add_test(all, who_runs_with_the_ball_does_not_hold_it_while_nobody_moves);
    tcase_add_test(all, a_place_over_the_line_by_more_than_a_foot_is_out);
    tcase_add_test(all, only_who_throws_in_may_start_outside);
    tcase_add_test(all, a_defender_stands_and_is_sent_on_the_floor_too);
    tcase_add_test(all, in_a_drill_lines_may_wait_beside_the_floor_but_not_far_from_it);
    tcase_add_test(all, fewer_than_five_are_noted_once);
    tcase_add_test(all, two_on_one_spot_are_told_and_two_of_a_screen_are_not);
    tcase_add_test(all, who_gets_there_as_the_step_ends_stands_there_too);
    tcase_add_test(all, a_dribble_after_a_hold_is_double_and_dribbles_in_a_row_are_one);
    tcase_add_test(all, a_dribble_ended_in_the_step_before_stays_ended);
    tcase_add_test(all, a_pass_over_thirty_feet_is_long_unless_it_is_a_skip);
    tcase_add_test(all, a_catch_to_shoot_is_covered_within_four_feet);
    tcase_add_test(all, a_shot_at_the_rim_is_not_called_covered);
    tcase_add_test(all, balance_is_looked_at_only_where_the_play_speaks_of_it);
    tcase_add_test(all, a_screen_turned_away_is_noted_over_thirty_degrees_and_warned_of_over_fifty);
    tcase_add_test(all, a_cut_wide_of_the_screener_is_told_from_two_feet);
    tcase_add_test(all, a_screen_inside_a_zone_is_used_by_the_pass_behind_it);
    tcase_add_test(all, a_screen_is_unused_if_nobody_comes_off_it_to_the_end);
    tcase_add_test(all, what_is_common_to_the_reads_is_told_once);
    tcase_add_test(all, names_of_checks_are_held_against_the_table);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
