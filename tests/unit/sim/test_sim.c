/* SPDX-License-Identifier: MIT */
/* The clock, sentence by sentence: passes, hand-offs, shots, ties, and what cannot happen. */
#include "suites.h"

#include <math.h>

#include "base/real.h"

struct diags sim_diags;
static struct sources sources;

static void open_own(void)
{
    open_arena();
    sources_init(&sources, &arena);
    diags_init(&sim_diags, &arena);
}

struct run *sim_of(const struct play *play)
{
    return sim_run(&arena, &sources, play, &sim_diags);
}

double sim_time(const struct run *run, size_t segment, size_t task, enum moment moment)
{
    return run->segments.at[segment]->record[task].time[moment];
}

double sim_between(const struct segment *segment, int player, int other, double t)
{
    return vec2_distance(segment_at(segment, body_attacker(player), t),
                         segment_at(segment, body_attacker(other), t));
}

struct str sim_dump(const struct run *run)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    run_dump(&out, run);
    return strbuf_str(&out);
}

static struct play *five_out(void)
{
    struct play *play = build_play(&arena, DEFENSE_MAN);
    build_formation(play, "fiveout");
    return play;
}

static struct task *add(struct step *step, int who, enum verb verb, int other)
{
    struct task *task = build_task(&arena, step, NULL, who, verb);
    task->other = body_attacker(other);
    return task;
}

static bool ran(const struct run *run)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        if (!run->segments.at[i]->ran) {
            return false;
        }
    }
    return run->segments.count > 0;
}

START_TEST(a_pass_is_caught_after_its_flight)
{
    struct play *play = five_out();
    add(build_step(&arena, play), 1, VERB_PASSES, 2);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    double from = sim_time(run, 0, 0, MOMENT_RELEASED), to = sim_time(run, 0, 0, MOMENT_CAUGHT);
    double far = sim_between(run->segments.at[0], 1, 2, 0);
    ck_assert_double_eq_tol(to - from, motion_pass_time(play->speed, PASS_PLAIN, far), .03);
    ck_assert_uint_eq(segment_holder(run->segments.at[0], run->segments.at[0]->duration),
                      body_attacker(2));
    ck_assert_uint_eq(segment_holder(run->segments.at[0], (from + to) / 2), BODY_NONE);
}
END_TEST

START_TEST(ball_and_cutter_meet)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    build_to(add(step, 3, VERB_CUTS, 0), -4, 10);
    add(step, 1, VERB_PASSES, 3);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    ck_assert_double_eq_tol(sim_time(run, 0, 1, MOMENT_CAUGHT), sim_time(run, 0, 0, MOMENT_ARRIVED),
                            .25);
    ck_assert(vec2_near(run->segments.at[0]->record[1].to, vec2_of(-4 * FEET, 10 * FEET), .6));
}
END_TEST

START_TEST(a_cutter_who_goes_with_the_pass_is_led)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_PASSES, 2);
    struct task *cut = add(step, 2, VERB_CUTS, 0);
    build_to(cut, 0, 0);
    build_wait(&arena, cut, 0, MOMENT_RELEASED, true);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    struct vec2 caught = run->segments.at[0]->record[0].to,
                from = run->segments.at[0]->record[1].from;
    ck_assert_double_gt(vec2_distance(caught, from), .5);
    ck_assert_double_lt(sim_time(run, 0, 0, MOMENT_CAUGHT), sim_time(run, 0, 1, MOMENT_ARRIVED));
}
END_TEST

START_TEST(a_passer_needs_time_between_catch_and_pass)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_PASSES, 2);
    add(step, 2, VERB_PASSES, 1);
    struct run *run = sim_of(play);
    double gap = sim_time(run, 0, 1, MOMENT_RELEASED) - sim_time(run, 0, 0, MOMENT_CAUGHT);
    ck_assert_double_eq_tol(gap, play->speed->catch_pass, .02);
}
END_TEST

START_TEST(a_hand_off_happens_within_reach_and_the_receiver_comes)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_HANDS_OFF, 2);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    double t = sim_time(run, 0, 0, MOMENT_CAUGHT);
    ck_assert_double_lt(sim_between(run->segments.at[0], 1, 2, t), 3 * FEET);
    ck_assert_double_gt(sim_between(run->segments.at[0], 1, 2, t), .40);
}
END_TEST

START_TEST(a_receiver_running_by_takes_the_ball_where_he_is_nearest)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    struct task *cut = add(step, 2, VERB_CUTS, 0);
    build_to(cut, -15.5, 13.8);
    cut->path = PATH_AROUND;
    cut->path_who = body_attacker(1);
    add(step, 1, VERB_HANDS_OFF, 2);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    double t = sim_time(run, 0, 1, MOMENT_CAUGHT);
    ck_assert_double_lt(sim_between(run->segments.at[0], 1, 2, t), 3 * FEET);
    ck_assert_double_gt(vec2_length(segment_velocity(run->segments.at[0], body_attacker(2), t)),
                        1.5);
    ck_assert_double_lt(t, sim_time(run, 0, 0, MOMENT_ARRIVED));
}
END_TEST

START_TEST(a_shot_flies_and_a_rebounder_has_the_ball_in_the_end)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_SHOOTS, 0);
    struct task *rebound = add(step, 4, VERB_REBOUNDS, 0);
    build_to(rebound, 0, 0);
    build_wait(&arena, rebound, 0, MOMENT_RELEASED, false);
    struct run *run = sim_of(play);
    struct segment *segment = run->segments.at[0];
    ck_assert(ran(run));
    double flight = sim_time(run, 0, 0, MOMENT_ARRIVED) - sim_time(run, 0, 0, MOMENT_RELEASED);
    ck_assert_double_gt(flight, .9);
    ck_assert_double_lt(flight, 1.4);
    ck_assert_uint_eq(segment_holder(segment, segment->duration), body_attacker(4));
}
END_TEST

START_TEST(movements_run_into_each_other_without_a_stop)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    build_to(add(step, 5, VERB_GOES, 0), -12, 4);
    build_to(add(step, 5, VERB_GOES, 0), -2, 10);
    struct run *run = sim_of(play);
    double t = sim_time(run, 0, 0, MOMENT_ARRIVED);
    ck_assert_double_gt(vec2_length(segment_velocity(run->segments.at[0], body_attacker(5), t)),
                        1.0);
}
END_TEST

START_TEST(a_tie_makes_a_stop)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    build_to(add(step, 5, VERB_GOES, 0), -12, 4);
    struct task *second = add(step, 5, VERB_GOES, 0);
    build_to(second, -2, 10);
    struct wait wait = {
        .kind = WAIT_CLOCK, .delay = 4, .fixed = true, .written = false, .who = BODY_NONE};
    VEC_PUSH(&arena, &second->waits, wait);
    struct run *run = sim_of(play);
    ck_assert_double_eq_tol(sim_time(run, 0, 1, MOMENT_STARTED), 4, .01);
    ck_assert_double_lt(vec2_length(segment_velocity(run->segments.at[0], body_attacker(5), 3.9)),
                        .05);
}
END_TEST

START_TEST(taking_a_time_takes_that_time)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    struct task *go = add(step, 5, VERB_GOES, 0);
    build_to(go, -12, 14);
    go->taking = 3.5;
    struct run *run = sim_of(play);
    ck_assert_double_eq_tol(sim_time(run, 0, 0, MOMENT_ARRIVED), 3.5, .25);
}
END_TEST

START_TEST(a_circle_of_ties_is_said_and_not_run)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    struct task *a = add(step, 2, VERB_CUTS, 0);
    build_to(a, 0, 8);
    build_wait(&arena, a, 1, MOMENT_ARRIVED, false);
    struct task *b = add(step, 3, VERB_CUTS, 0);
    build_to(b, 0, 12);
    build_wait(&arena, b, 0, MOMENT_ARRIVED, false);
    struct run *run = sim_of(play);
    ck_assert(!run->segments.at[0]->ran);
    ck_assert_uint_eq(sim_diags.errors, 1);
    ck_assert_str_eq(sim_diags.all.at[0].row->id, "run.circle");
    ck_assert_double_lt(run->segments.at[0]->duration, 3);
}
END_TEST

START_TEST(a_pass_without_the_ball_is_said)
{
    struct play *play = five_out();
    add(build_step(&arena, play), 2, VERB_PASSES, 3);
    struct run *run = sim_of(play);
    ck_assert(!run->segments.at[0]->ran);
    ck_assert_str_eq(sim_diags.all.at[0].row->id, "run.stuck");
}
END_TEST

START_TEST(one_fault_is_said_once_and_the_steps_behind_it_run_on)
{
    struct play *play = five_out();
    add(build_step(&arena, play), 2, VERB_PASSES, 3);
    add(build_step(&arena, play), 3, VERB_PASSES, 4);
    build_to(add(build_step(&arena, play), 3, VERB_CUTS, 0), 0, 0);
    struct run *run = sim_of(play);
    ck_assert_uint_eq(run->segments.count, 3);
    ck_assert_uint_eq(sim_diags.errors, 1);
    ck_assert(!run->segments.at[1]->ran);
    ck_assert(run->segments.at[2]->ran);
}
END_TEST

START_TEST(a_wait_past_its_limit_is_said)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    struct task *hold = add(step, 1, VERB_HOLDS, 0);
    hold->duration = 12;
    struct task *cut = add(step, 2, VERB_CUTS, 0);
    build_to(cut, 0, 8);
    build_wait(&arena, cut, 0, MOMENT_ARRIVED, false);
    struct run *run = sim_of(play);
    ck_assert(!run->segments.at[0]->ran);
    ck_assert_str_eq(sim_diags.all.at[0].row->id, "run.wait");
}
END_TEST

START_TEST(a_step_without_end_is_said)
{
    struct play *play = five_out();
    add(build_step(&arena, play), 1, VERB_HOLDS, 0)->duration = 40;
    struct run *run = sim_of(play);
    ck_assert(!run->segments.at[0]->ran);
    ck_assert_str_eq(sim_diags.all.at[0].row->id, "run.long");
}
END_TEST

START_TEST(as_cuts_short_what_a_player_is_doing)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_HOLDS, 0)->duration = 1;
    build_to(add(step, 5, VERB_GOES, 0), -2, 10);
    struct task *turn = add(step, 5, VERB_GOES, 0);
    build_to(turn, -20, 3);
    build_wait(&arena, turn, 0, MOMENT_ARRIVED, true);
    turn->cuts_short = true;
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    ck_assert_double_eq_tol(sim_time(run, 0, 2, MOMENT_STARTED), 1, .03);
    ck_assert_double_gt(
        vec2_distance(run->segments.at[0]->record[1].to, vec2_of(-2 * FEET, 10 * FEET)), 1);
}
END_TEST

START_TEST(each_step_begins_where_the_last_one_ended)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    add(step, 1, VERB_PASSES, 2);
    build_to(add(step, 1, VERB_CUTS, 0), 0, 0);
    step = build_step(&arena, play);
    add(step, 2, VERB_PASSES, 3);
    step = build_step(&arena, play);
    build_to(add(step, 3, VERB_DRIVES, 0), 0, 0);
    struct run *run = sim_of(play);
    ck_assert(ran(run));
    ck_assert_uint_eq(run->segments.count, 3);
    for (size_t s = 1; s < 3; s++) {
        const struct segment *now = run->segments.at[s], *before = now->before;
        ck_assert_ptr_eq(before, run->segments.at[s - 1]);
        ck_assert_double_eq_tol(now->time_before, before->time_before + before->duration, 1e-9);
        for (int b = 0; b < BODY_COUNT; b++) {
            ck_assert(vec2_near(segment_at(now, (body)b, 0),
                                segment_at(before, (body)b, before->duration), 1e-9));
        }
        ck_assert_uint_eq(segment_holder(now, 0), segment_holder(before, before->duration));
    }
}
END_TEST

START_TEST(a_thrower_stays_out_until_he_has_thrown)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    play->start[body_attacker(3)].at = vec2_of(4, play->court->baseline - .7);
    play->ball = body_attacker(3);
    play->throw_in = true;
    add(step, 3, VERB_INBOUNDS, 4);
    build_to(add(step, 3, VERB_GOES, 0), 10, 3);
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    ck_assert(ran(run));
    double thrown = sim_time(run, 0, 0, MOMENT_RELEASED);
    ck_assert(!court_inside(play->court, segment_at(segment, body_attacker(3), thrown), 0));
    ck_assert(
        court_inside(play->court, segment_at(segment, body_attacker(3), segment->duration), 0));
}
END_TEST

START_TEST(a_drive_past_its_defender_draws_the_low_man)
{
    struct play *play = five_out();
    struct step *step = build_step(&arena, play);
    struct task *drive = add(step, 2, VERB_DRIVES, 0);
    struct start_body *guard = &play->start[body_defender(2)];
    play->ball = body_attacker(2);
    guard->placed = true; /* on the wrong side */
    guard->at = vec2_of(18 * FEET, 16 * FEET);
    build_to(drive, 0, 0);
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    ck_assert(ran(run));
    double least = 99; /* somebody other than his own defender comes before him */
    for (double t = 0; t < segment->duration; t += RUN_SAMPLE) {
        struct vec2 driver = segment_at(segment, body_attacker(2), t);
        for (int i = 1; i <= 5; i++) {
            struct vec2 at = segment_at(segment, body_defender(i), t);
            bool before = i != 2 && vec2_length(at) < vec2_length(driver);
            least = before ? real_min(least, vec2_distance(at, driver)) : least;
        }
    }
    ck_assert_double_lt(least, 1.6);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sim");
    TCase *all = tcase_create("sim");
    tcase_add_test(all, a_pass_is_caught_after_its_flight);
    tcase_add_test(all, ball_and_cutter_meet);
    tcase_add_test(all, a_cutter_who_goes_with_the_pass_is_led);
    tcase_add_test(all, a_passer_needs_time_between_catch_and_pass);
    tcase_add_test(all, a_hand_off_happens_within_reach_and_the_receiver_comes);
    tcase_add_test(all, a_receiver_running_by_takes_the_ball_where_he_is_nearest);
    tcase_add_test(all, a_shot_flies_and_a_rebounder_has_the_ball_in_the_end);
    tcase_add_test(all, movements_run_into_each_other_without_a_stop);
    tcase_add_test(all, a_tie_makes_a_stop);
    tcase_add_test(all, taking_a_time_takes_that_time);
    tcase_add_test(all, a_circle_of_ties_is_said_and_not_run);
    tcase_add_test(all, a_pass_without_the_ball_is_said);
    tcase_add_test(all, one_fault_is_said_once_and_the_steps_behind_it_run_on);
    tcase_add_test(all, a_wait_past_its_limit_is_said);
    tcase_add_test(all, a_step_without_end_is_said);
    tcase_add_test(all, as_cuts_short_what_a_player_is_doing);
    tcase_add_test(all, each_step_begins_where_the_last_one_ended);
    tcase_add_test(all, a_thrower_stays_out_until_he_has_thrown);
    tcase_add_test(all, a_drive_past_its_defender_draws_the_low_man);
    TCase *cases[] = {all, sim_screen_tests(), sim_whole_tests()};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        tcase_add_checked_fixture(cases[i], open_own, close_arena);
        suite_add_tcase(suite, cases[i]);
    }
    return suite_main(suite);
}
