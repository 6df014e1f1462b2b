/* SPDX-License-Identifier: MIT */
/* Each check on runs made by hand: an amount is swept through the limit, and what is sound has a
 * flawed twin. */
#include "base/real.h"
#include "made.h"
#include "suite.h"

#include <math.h>
#include <string.h>

enum { P1, P2, P3, P4, P5, X1 = BODY_FIRST_DEFENDER, X2, X3, X4, X5 };

static finding_list checked(struct made *made)
{
    finding_list found;
    check_run(&arena, &made->run, &found);
    return found;
}

static const struct finding *the(const finding_list *found, const char *id)
{
    for (size_t i = 0; i < found->count; i++) {
        if (strcmp(found->at[i].row->id, id) == 0) {
            return &found->at[i];
        }
    }
    return NULL;
}

static size_t how_many(struct made *made, const char *id)
{
    finding_list found = checked(made);
    size_t count = 0;
    for (size_t i = 0; i < found.count; i++) {
        count += strcmp(found.at[i].row->id, id) == 0;
    }
    return count;
}

static void says(struct str got, const char *wanted)
{
    ck_assert_str_eq(got.at, wanted);
}

/* ---- the table ---- */

START_TEST(rows_are_in_order_found_by_id_and_complete)
{
    for (size_t i = 0; i < check_count(); i++) {
        const struct check_row *row = check_at(i);
        ck_assert(i == 0 || strcmp(check_at(i - 1)->id, row->id) < 0);
        ck_assert_ptr_eq(check_find(str_of(row->id)), row);
        ck_assert(strlen(row->why) > 60 && strlen(row->what) > 10 && strlen(row->source) > 5);
        ck_assert(row->good && row->bad && strcmp(row->good, row->bad) != 0);
        ck_assert((row->limit == 0) || *row->unit);
    }
    ck_assert_ptr_null(check_find(STR("space")));
}
END_TEST

START_TEST(five_who_stand_on_their_spots_are_told_nothing)
{
    struct made *made = made_play(&arena, 1.5);
    made_ball(made, &made->segment[0], P1, 0, 1.5);
    ck_assert_uint_eq(checked(made).count, 0);
}
END_TEST

/* ---- limits by the rules ---- */

START_TEST(each_limit_of_a_rulebook_has_its_article_under_every_code)
{
    size_t told = 0;
    for (size_t i = 0; i < check_count(); i++) {
        const struct check_row *row = check_at(i);
        for (int code = 0; code < COURT_COUNT; code++) {
            const struct check_rule *rule = check_rule(row, (enum court_code)code);
            if (!rule) {
                ck_assert_ptr_null(check_rule(row, COURT_HIGH_SCHOOL)); /* all of them or none */
                continue;
            }
            const char *wants = code == COURT_HIGH_SCHOOL ? "NFHS"
                                : code == COURT_FIBA      ? "FIBA"
                                : code == COURT_NBA       ? "NBA"
                                : code == COURT_WNBA      ? "WNBA"
                                : code == COURT_MINI      ? "mini"
                                                          : "NCAA";
            const char *source = rule->source;
            bool womens = code == COURT_NBA && strstr(source, "WNBA"); /* "NBA" stands in it */
            bool none = strstr(source, "none") != NULL; /* that code has no such rule */
            double seconds = check_rule_seconds(rule);
            ck_assert_msg(strstr(source, wants) && !womens, "%s: %s", row->id, source);
            ck_assert_msg(none ? seconds == 0 : seconds > 0 && seconds <= 35, "%s: %s: %g", row->id,
                          source, seconds);
            told++;
        }
    }
    ck_assert_uint_eq(told, 5 * COURT_COUNT);
}
END_TEST

/* ---- space.close ---- */

START_TEST(two_who_stand_close_are_told_from_half_a_foot_under_the_limit)
{
    for (double gap = 5; gap < 16; gap += 0.1) {
        struct made *made = made_play(&arena, 3);
        made_stand(made, &made->segment[0], P4, 15.547,
                   13.75 - gap); /* below 2 on the right wing */
        ck_assert_uint_eq(how_many(made, "space.close"), gap < 11.5 - 1e-6);
    }
}
END_TEST

START_TEST(who_is_off_his_spot_is_told_where_to_go)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 17, 4.2);
    finding_list found = checked(made);
    const struct finding *finding = the(&found, "space.close");
    ck_assert_ptr_nonnull(finding);
    says(finding->message, "4: go to right corner. 2 and 4 stand 10 ft apart; keep 12 ft or more.");
    says(finding->help, "write: 4 goes to right corner");
    ck_assert_int_eq(finding->who[0], P4);
    ck_assert_int_eq(finding->who[1], P2);
    ck_assert_int_eq(finding->who[2], BODY_NONE);
    ck_assert_int_eq(finding->mark, MARK_DISTANCE);
    ck_assert_double_eq_tol(finding->amount, vec2_distance(finding->a, finding->b), 1e-9);
    ck_assert_int_eq(finding->severity, SEVERITY_WARNING);
}
END_TEST

START_TEST(u12_may_stand_closer_unless_the_book_says_otherwise)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 3.25); /* 10.5 ft */
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
    made->play.level = LEVEL_U12;
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    struct limit_entry limit = {.check = STR("space.close"), .value = 12 * FEET};
    VEC_PUSH(&arena, &made->play.limits, limit);
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
}
END_TEST

START_TEST(a_limit_of_the_play_moves_the_threshold)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 3.75); /* 10 ft */
    struct limit_entry limit = {.check = STR("space.close"), .value = 9 * FEET};
    VEC_PUSH(&arena, &made->play.limits, limit);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    made->play.limits.at[0].value = 11 * FEET;
    finding_list found = checked(made);
    ck_assert_double_eq(the(&found, "space.close")->limit, 11 * FEET);
}
END_TEST

START_TEST(spots_of_the_start_set_the_least)
{
    struct made *made = made_play(&arena, 3);
    /* wing and elbow, 9.5 ft apart, both spots with names: the start's own */
    made->play.start[P4].spot = SPOT_ELBOW;
    made->play.start[P4].at = court_spot(made->play.court, SPOT_ELBOW, SIDE_RIGHT);
    made_stand(made, &made->segment[0], P4, 6, 13.75);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    made_stand(made, &made->segment[0], P4, 7.1, 13.75); /* nearer than that */
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
}
END_TEST

START_TEST(players_of_a_stack_stand_as_close_as_it_does)
{
    struct made *made = made_play(&arena, 3);
    size_t stack;
    ck_assert(formation_find(STR("stack"), &stack));
    made->play.formation = (int)stack;
    for (int i = 0; i < 5; i++) {
        struct vec2 at = formation_point(made->play.court, &formation_at(stack)->at[i]);
        made_stand(made, &made->segment[0], (body)i, at.x / FEET, at.y / FEET);
    }
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
}
END_TEST

START_TEST(a_screener_a_cutter_and_a_hand_off_are_not_close)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 7);
    struct task *task =
        made_task(made, &made->segment[0], TASK_SCREEN, VERB_SCREENS, P4, P3, 0, TIME_NEVER);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    task->kind = TASK_EXCHANGE;
    task->verb = VERB_HANDS_OFF;
    task->other = P2;
    made_ball(made, &made->segment[0], P4, 0, 3);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    task->kind = TASK_HOLD;
    task->verb = VERB_STAYS;
    ck_assert_uint_eq(how_many(made, "space.close"), 0); /* it is still about 2 */
    task->other = BODY_NONE;
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
}
END_TEST

START_TEST(who_only_passes_by_is_not_close)
{
    struct made *made = made_play(&arena, 4);
    struct segment *segment = &made->segment[0];
    made_walk(made, segment, P4, 0, 2, 15.547, 8);
    made_walk(made, segment, P4, 2.5, 4, 0, -3); /* half a second there */
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    made = made_play(&arena, 4);
    segment = &made->segment[0];
    made_walk(made, segment, P4, 0, 2, 15.547, 8);
    made_walk(made, segment, P4, 3.3, 4, 0, -3);
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
}
END_TEST

START_TEST(the_lane_the_thrower_and_what_follows_a_shot_are_not_counted)
{
    struct made *made = made_play(&arena, 3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P4, 3, 0);
    made_stand(made, segment, P5, -2, 2);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    made_stand(made, segment, P4, 15, -7); /* behind the baseline */
    made_stand(made, segment, P5, 15, -2);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
    made_stand(made, segment, P4, 15, 3);
    made_stand(made, segment, P5, 15, -2);
    made_ball(made, segment, P1, 0, 0.1);
    made_flight(made, segment, P1, BODY_NONE, 0.1, 1, true);
    ck_assert_uint_eq(how_many(made, "space.close"), 0);
}
END_TEST

START_TEST(what_lasts_through_steps_is_said_once)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 5);
    made_step(made, 3);
    made_step(made, 3);
    finding_list found = checked(made);
    ck_assert_uint_eq(how_many(made, "space.close"), 1);
    ck_assert_int_eq(the(&found, "space.close")->step, 0);
}
END_TEST

START_TEST(a_drill_has_no_spacing)
{
    struct made *made = made_play(&arena, 3);
    made->play.is_drill = true;
    made_stand(made, &made->segment[0], P4, 15.547, 7);
    ck_assert_uint_eq(checked(made).count, 0);
}
END_TEST

/* A warning that the corner stands too high, one that it is too near to the wing: go down, both
 * say. */
START_TEST(what_two_checks_advise_alike_is_said_once_by_the_surer)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 20.75, 5);
    finding_list found = checked(made);
    ck_assert_ptr_nonnull(the(&found, "space.corner"));
    ck_assert_ptr_null(the(&found, "space.close"));
    made_stand(made, &made->segment[0], P4, 17.9, 3.4); /* so high is a note, so near a warning */
    found = checked(made);
    ck_assert_int_eq(the(&found, "space.corner")->severity, SEVERITY_NOTE);
    ck_assert_int_eq(the(&found, "space.close")->severity, SEVERITY_WARNING);
}
END_TEST

/* ---- space.corner ---- */

START_TEST(a_high_corner_is_a_note_and_a_very_high_one_a_warning)
{
    for (double up = 0; up < 9; up += 0.1) {
        struct made *made = made_play(&arena, 3);
        made_stand(made, &made->segment[0], P5, -20.75, -2.25 + up);
        finding_list found = checked(made);
        const struct finding *finding = the(&found, "space.corner");
        bool in_corner = up < 8.2; /* above that the wing is the nearer spot */
        if (up > 3.5 + 1e-6 && in_corner) {
            ck_assert_ptr_nonnull(finding);
            ck_assert_int_eq(finding->severity, up > 6.5 + 1e-6 ? SEVERITY_WARNING : SEVERITY_NOTE);
            ck_assert_double_eq_tol(finding->amount, up * FEET, 0.002);
        } else if (up < 3.4) {
            ck_assert_ptr_null(finding);
        }
    }
}
END_TEST

START_TEST(a_high_corner_is_sent_down_in_words)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P5, -20.75, 2.75);
    finding_list found = checked(made);
    says(the(&found, "space.corner")->message,
         "5: stay low in the corner. You stand 5 ft up from the left corner; keep within 3 ft.");
    made_stand(made, &made->segment[0], P5, -14, 2.75); /* short corner: no corner player */
    ck_assert_uint_eq(how_many(made, "space.corner"), 0);
}
END_TEST

/* ---- ball ---- */

START_TEST(a_pass_by_who_never_has_the_ball_is_an_error)
{
    struct made *made = made_play(&arena, 2);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 2);
    struct task *task = made_task(made, segment, TASK_PASS, VERB_PASSES, P1, P2, 0, TIME_NEVER);
    ck_assert_uint_eq(how_many(made, "ball.holder"), 0);
    task->who = P4;
    segment->record[0].time[MOMENT_STARTED] = TIME_NEVER;
    segment->ran = false;
    finding_list found = checked(made);
    ck_assert_uint_eq(found.count, 1);
    says(found.at[0].message, "4: get the ball first. You pass here, and 1 has the ball.");
    says(found.at[0].help, "write: 1 passes to 4, before this sentence");
    ck_assert_int_eq(found.at[0].severity, SEVERITY_ERROR);
    ck_assert_uint_eq(found.at[0].span.begin, task->span.begin);
}
END_TEST

START_TEST(each_deed_without_the_ball_is_named)
{
    const struct {
        enum task_kind kind;
        enum verb verb;
        const char *word;
    } deeds[] = {{TASK_CARRY, VERB_DRIBBLES, "You dribble here"},
                 {TASK_SHOOT, VERB_SHOOTS, "You shoot here"},
                 {TASK_EXCHANGE, VERB_HANDS_OFF, "You hand off here"},
                 {TASK_HOLD, VERB_SHOT_FAKES, "You fake here"},
                 {TASK_USE, VERB_DRIVES_OFF, "You dribble here"}};
    for (size_t i = 0; i < sizeof deeds / sizeof *deeds; i++) {
        struct made *made = made_play(&arena, 1);
        made_ball(made, &made->segment[0], P1, 0, 1);
        made_task(made, &made->segment[0], deeds[i].kind, deeds[i].verb, P3, P5, TIME_NEVER,
                  TIME_NEVER);
        finding_list found = checked(made);
        ck_assert_uint_eq(found.count, 1);
        ck_assert_ptr_nonnull(strstr(found.at[0].message.at, deeds[i].word));
    }
}
END_TEST

START_TEST(who_catches_later_in_the_step_has_the_ball)
{
    struct made *made = made_play(&arena, 2);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 0.5);
    made_flight(made, segment, P1, P2, 0.5, 1, false);
    made_ball(made, segment, P2, 1, 2);
    made_task(made, segment, TASK_PASS, VERB_PASSES, P2, P3, 1.5, TIME_NEVER);
    made_task(made, segment, TASK_PASS, VERB_PASSES, P1, P2, 0, 1);
    ck_assert_uint_eq(how_many(made, "ball.holder"), 0);
    made_task(made, segment, TASK_MOVE, VERB_CUTS, P4, BODY_NONE, 0, 1);
    ck_assert_uint_eq(how_many(made, "ball.holder"), 0);
}
END_TEST

START_TEST(a_pass_to_oneself_is_an_error_and_cannot_be_accepted)
{
    struct made *made = made_play(&arena, 1);
    made_ball(made, &made->segment[0], P1, 0, 1);
    made_task(made, &made->segment[0], TASK_PASS, VERB_PASSES, P1, P1, TIME_NEVER, TIME_NEVER);
    struct point accept = {.word = STR("ball.holder"), .text = STR("a trick")};
    VEC_PUSH(&arena, &made->play.accepts, accept);
    finding_list found = checked(made);
    ck_assert_uint_eq(found.count, 1);
    says(found.at[0].message, "1: give the ball to a team-mate. You cannot pass to yourself.");
    ck_assert(!found.at[0].accepted);
}
END_TEST

static struct made *a_hold(double seconds)
{
    struct made *made = made_play(&arena, seconds + 1);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 0.5);
    made_flight(made, segment, P1, P2, 0.5, 0.8, false);
    made_ball(made, segment, P2, 0.8, 0.8 + seconds);
    made_flight(made, segment, P2, P4, 0.8 + seconds, 1 + seconds, false);
    return made;
}

START_TEST(a_hold_is_noted_over_two_seconds_and_warned_of_over_three)
{
    for (double seconds = 0.5; seconds < 5; seconds += 0.1) {
        struct made *made = a_hold(seconds);
        finding_list found = checked(made);
        const struct finding *finding = the(&found, "ball.held");
        if (seconds < 1.99 || seconds > 2.12) { /* a sample's width aside */
            ck_assert_int_eq(finding != NULL, seconds > 2);
        }
        if (finding && (seconds < 2.95 || seconds > 3.05)) {
            ck_assert_int_eq(finding->severity, seconds > 3 ? SEVERITY_WARNING : SEVERITY_NOTE);
            ck_assert_double_eq_tol(finding->amount, seconds, 0.06);
        }
    }
    finding_list found = checked(a_hold(3.5));
    says(the(&found, "ball.held")->message, "2: pass, drive or shoot sooner. You hold the ball 3.5 "
                                            "s while nobody moves; 2 s is enough.");
}
END_TEST

START_TEST(a_hold_while_somebody_moves_or_while_dribbling_does_not_count)
{
    struct made *made = a_hold(4);
    made_walk(made, &made->segment[0], P3, 1, 3.5, -3, 2);
    ck_assert_uint_eq(how_many(made, "ball.held"), 0);
    made = a_hold(4);
    made_task(made, &made->segment[0], TASK_CARRY, VERB_DRIBBLES, P2, BODY_NONE, 1, 3.5);
    ck_assert_uint_eq(how_many(made, "ball.held"), 0);
    made = a_hold(4);
    made_stand(made, &made->segment[0], P2, 27, 10); /* the thrower-in has his own limit */
    ck_assert_uint_eq(how_many(made, "ball.held"), 0);
}
END_TEST

START_TEST(a_hold_goes_on_over_the_border_of_steps_and_is_told_where_it_ends)
{
    struct made *made = made_play(&arena, 1.2);
    made_ball(made, &made->segment[0], P1, 0, 1.2);
    struct segment *second = made_step(made, 1.2), *third = made_step(made, 1);
    made_ball(made, second, P1, 0, 1.2);
    made_ball(made, third, P1, 0, 0.4);
    made_flight(made, third, P1, P2, 0.4, 1, false);
    finding_list found = checked(made);
    ck_assert_uint_eq(found.count, 1);
    ck_assert_int_eq(found.at[0].step, 2);
    ck_assert_double_eq_tol(found.at[0].amount, 2.8, 0.16);
}
END_TEST

/* ---- screens ---- */

static struct made *a_screen(double feet_away, double set, double leaves)
{
    struct made *made = made_play(&arena, 4);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 4);
    struct task *screen =
        made_task(made, segment, TASK_SCREEN, VERB_SCREENS, P5, P3, 0, TIME_NEVER);
    struct task_record *record = made_record(segment, screen);
    made_stand(made, segment, P5, -12, 8);
    made_stand(made, segment, X3, -12 + feet_away, 8);
    record->time[MOMENT_SET] = set;
    record->to = segment_at(segment, P5, 0);
    record->on = segment_at(segment, X3, 0);
    record->defender = X3;
    struct task *use = made_task(made, segment, TASK_USE, VERB_CURLS, P3, P5, leaves, 3.5);
    use->screen_task = 0;
    made_walk(made, segment, P3, leaves, 3.5, 0, 2);
    return made;
}

START_TEST(a_screen_on_nobody_is_told_from_three_feet_between_bodies)
{
    double bodies = 2 * 0.25 / FEET;
    for (double gap = 0.05; gap < 7; gap += 0.1) {
        struct made *made = a_screen(gap + bodies, 1, 1.2);
        ck_assert_uint_eq(how_many(made, "screen.nobody"), gap > 3.5 + 1e-6);
    }
    struct made *made = a_screen(6 + bodies, 1, 1.2);
    finding_list found = checked(made);
    const struct finding *finding = the(&found, "screen.nobody");
    says(finding->message, "5: find x3 and screen there. You set it 6 ft away; be within 3 ft.");
    ck_assert_int_eq(finding->who[1], X3);
    made->step[0].tasks.at[0].goal_written = true;
    found = checked(made);
    says(the(&found, "screen.nobody")->help,
         "write: 5 screens for 3, which goes to the defender by itself");
}
END_TEST

START_TEST(a_screen_set_on_a_team_mate_is_told)
{
    struct made *made = a_screen(2.8 + 2 * 0.25 / FEET, 1, 1.2);
    ck_assert_uint_eq(how_many(made, "screen.nobody"), 0);
    made_stand(made, &made->segment[0], P2, -12, 10);
    finding_list found = checked(made);
    says(the(&found, "screen.nobody")->message,
         "5: find x3 and screen there. You set it nearer to 2 than to x3, who is 2.8 ft away.");
}
END_TEST

START_TEST(a_slipped_or_carried_screen_or_one_with_no_defense_is_not_judged)
{
    struct made *made = a_screen(12, 1, 1.2);
    made->segment[0].record[0].defender = BODY_NONE;
    ck_assert_uint_eq(how_many(made, "screen.nobody"), 0);
    made = a_screen(12, TIME_NEVER, 1.2);
    made->segment[0].record[0].carried = true;
    ck_assert_uint_eq(how_many(made, "screen.nobody"), 0);
    made = a_screen(12, TIME_NEVER, 1.2);
    made_task(made, &made->segment[0], TASK_MOVE, VERB_SLIPS, P5, BODY_NONE, 1, 2)->slip = true;
    ck_assert_uint_eq(how_many(made, "screen.nobody"), 0);
    ck_assert_uint_eq(how_many(made, "screen.early"), 0);
}
END_TEST

START_TEST(a_user_who_leaves_before_the_set_is_told_how_much)
{
    for (double leaves = 0.2; leaves < 2; leaves += 0.05) {
        struct made *made = a_screen(2, 1, leaves);
        ck_assert_uint_eq(how_many(made, "screen.early"), leaves < 0.9 - 1e-6);
    }
    struct made *made = a_screen(2, 1, 0.4);
    made->step[0].tasks.at[1].early = true;
    finding_list found = checked(made);
    const struct finding *finding = the(&found, "screen.early");
    says(finding->message,
         "3: wait for the screen. You leave 0.6 s before 5 is set; go when 5's feet are still.");
    says(finding->help, "leave out `early`: 3 then waits for the screen");
    made->step[0].tasks.at[1].shape = SHAPE_BACK; /* the answer to a defender who jumps early */
    ck_assert_uint_eq(how_many(made, "screen.early"), 0);
    made = a_screen(2, TIME_NEVER, 0.4);
    found = checked(made);
    says(the(&found, "screen.early")->message,
         "3: wait for the screen. You are gone before 5 is set; go when 5's feet are still.");
}
END_TEST

/* ---- cut.traffic ---- */

static struct made *a_drive(double cutter_x, double late)
{
    struct made *made = made_play(&arena, 4);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 4);
    made_task(made, segment, TASK_CARRY, VERB_DRIVES, P1, BODY_NONE, 0, 2);
    made_task(made, segment, TASK_MOVE, VERB_CUTS, P3, BODY_NONE, late, 2 + late);
    made_walk(made, segment, P1, 0, 2, 1, -2);
    made_stand(made, segment, P3, cutter_x, 22);
    made_walk(made, segment, P3, late, 2 + late, cutter_x, -2);
    return made;
}

START_TEST(a_driver_and_a_cutter_side_by_side_in_the_lane_are_told)
{
    for (double x = -5.9; x < 0; x += 0.1) {
        struct made *made = a_drive(x, 0);
        finding_list found = checked(made);
        const struct finding *finding = the(&found, "cut.traffic");
        ck_assert_int_eq(finding != NULL, 1 - x < 5.5 + 0.05 || (finding && 1 - x < 6.2));
    }
    finding_list found = checked(a_drive(-2.2, 0));
    const struct finding *finding = the(&found, "cut.traffic");
    ck_assert_int_eq(finding->who[0], P3);
    ck_assert_int_eq(finding->who[1], P1);
    ck_assert_ptr_nonnull(strstr(finding->message.at, "3: let 1's drive go by, or cut behind it."));
}
END_TEST

START_TEST(a_cutter_a_second_later_or_one_of_a_screen_is_no_traffic)
{
    ck_assert_uint_eq(how_many(a_drive(-1, 1.9), "cut.traffic"), 0);
    struct made *made = a_drive(-1, 0);
    ck_assert_uint_eq(how_many(made, "cut.traffic"), 1);
    made_task(made, &made->segment[0], TASK_SCREEN, VERB_SCREENS, P3, P1, 0, TIME_NEVER);
    ck_assert_uint_eq(how_many(made, "cut.traffic"), 0);
    made = a_drive(-1, 0);
    made->step[0].tasks.at[1].effort = EFFORT_RUN; /* drifts out of the way */
    ck_assert_uint_eq(how_many(made, "cut.traffic"), 0);
}
END_TEST

/* ---- the runner ---- */

START_TEST(what_the_coach_accepts_is_marked_with_the_reason)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 5);
    struct point accept = {.word = STR("space.close"), .text = STR("bait for the trap")};
    VEC_PUSH(&arena, &made->step[0].accepts, accept);
    finding_list found = checked(made);
    const struct finding *finding = the(&found, "space.close");
    ck_assert(finding->accepted);
    says(finding->reason, "bait for the trap");
    made->step[0].accepts.at[0].word = STR("space.corner");
    found = checked(made);
    ck_assert(!the(&found, "space.close")->accepted);
    accept.word = STR("space.close");
    VEC_PUSH(&arena, &made->play.accepts, accept);
    found = checked(made);
    ck_assert(the(&found, "space.close")->accepted);
}
END_TEST

START_TEST(findings_come_in_the_order_of_the_play)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P5, -20.75, 4); /* high, and 11 ft from 3 */
    struct segment *second = made_step(made, 3);
    made_stand(made, second, P4, 20.75, 4);
    finding_list found = checked(made);
    ck_assert_uint_ge(found.count, 3);
    for (size_t i = 1; i < found.count; i++) {
        const struct finding *a = &found.at[i - 1], *b = &found.at[i];
        ck_assert(a->step < b->step || (a->step == b->step && a->time <= b->time));
    }
    ck_assert_int_eq(found.at[found.count - 1].step, 1);
}
END_TEST

START_TEST(a_step_that_could_not_be_run_is_not_judged)
{
    struct made *made = made_play(&arena, 3);
    made_stand(made, &made->segment[0], P4, 15.547, 5);
    made->segment[0].ran = false;
    ck_assert_uint_eq(checked(made).count, 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("check");
    TCase *all = tcase_create("check");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, rows_are_in_order_found_by_id_and_complete);
    tcase_add_test(all, each_limit_of_a_rulebook_has_its_article_under_every_code);
    tcase_add_test(all, five_who_stand_on_their_spots_are_told_nothing);
    tcase_add_test(all, two_who_stand_close_are_told_from_half_a_foot_under_the_limit);
    tcase_add_test(all, who_is_off_his_spot_is_told_where_to_go);
    tcase_add_test(all, what_two_checks_advise_alike_is_said_once_by_the_surer);
    tcase_add_test(all, u12_may_stand_closer_unless_the_book_says_otherwise);
    tcase_add_test(all, a_limit_of_the_play_moves_the_threshold);
    tcase_add_test(all, spots_of_the_start_set_the_least);
    tcase_add_test(all, players_of_a_stack_stand_as_close_as_it_does);
    tcase_add_test(all, a_screener_a_cutter_and_a_hand_off_are_not_close);
    tcase_add_test(all, who_only_passes_by_is_not_close);
    tcase_add_test(all, the_lane_the_thrower_and_what_follows_a_shot_are_not_counted);
    tcase_add_test(all, what_lasts_through_steps_is_said_once);
    tcase_add_test(all, a_drill_has_no_spacing);
    tcase_add_test(all, a_high_corner_is_a_note_and_a_very_high_one_a_warning);
    tcase_add_test(all, a_high_corner_is_sent_down_in_words);
    tcase_add_test(all, a_pass_by_who_never_has_the_ball_is_an_error);
    tcase_add_test(all, each_deed_without_the_ball_is_named);
    tcase_add_test(all, who_catches_later_in_the_step_has_the_ball);
    tcase_add_test(all, a_pass_to_oneself_is_an_error_and_cannot_be_accepted);
    tcase_add_test(all, a_hold_is_noted_over_two_seconds_and_warned_of_over_three);
    tcase_add_test(all, a_hold_while_somebody_moves_or_while_dribbling_does_not_count);
    tcase_add_test(all, a_hold_goes_on_over_the_border_of_steps_and_is_told_where_it_ends);
    tcase_add_test(all, a_screen_on_nobody_is_told_from_three_feet_between_bodies);
    tcase_add_test(all, a_screen_set_on_a_team_mate_is_told);
    tcase_add_test(all, a_slipped_or_carried_screen_or_one_with_no_defense_is_not_judged);
    tcase_add_test(all, a_user_who_leaves_before_the_set_is_told_how_much);
    tcase_add_test(all, a_driver_and_a_cutter_side_by_side_in_the_lane_are_told);
    tcase_add_test(all, a_cutter_a_second_later_or_one_of_a_screen_is_no_traffic);
    tcase_add_test(all, what_the_coach_accepts_is_marked_with_the_reason);
    tcase_add_test(all, findings_come_in_the_order_of_the_play);
    tcase_add_test(all, a_step_that_could_not_be_run_is_not_judged);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
