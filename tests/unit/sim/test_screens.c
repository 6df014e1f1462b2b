/* SPDX-License-Identifier: MIT */
/* Screens: set on the defender wherever he is, still before the user goes, by the shoulder, held
 * until used; and what the defence does about them. */
#include "suites.h"

#include <math.h>

#include "base/real.h"

/* 5 comes down from the elbow for 3 in the left corner; 1 has the ball in the slot. */
static struct play *down(enum defense_kind defense, struct step **step)
{
    struct play *play = build_play(&arena, defense);
    build_place(play, 1, -8, 19.1);
    build_place(play, 2, 15.5, 13.8);
    build_place(play, 3, -20.8, -2.2);
    build_place(play, 4, 20.8, -2.2);
    build_place(play, 5, -6, 13.8);
    *step = build_step(&arena, play);
    build_to(build_task(&arena, *step, NULL, 3, VERB_SETS_UP), 0, 0);
    build_task(&arena, *step, NULL, 5, VERB_SCREENS)->other = body_attacker(3);
    return play;
}

static void use(struct step *step, struct branch *branch, enum verb verb, double x, double y)
{
    struct task *task = build_task(&arena, step, branch, 3, verb);
    task->other = body_attacker(5);
    task->screen_task = 1;
    build_to(task, x, y);
    build_task(&arena, step, branch, 1, VERB_PASSES)->other = body_attacker(3);
}

static void curl_is_sound(const struct run *run)
{
    const struct segment *segment = run->segments.at[0];
    const struct task_record *screen = &segment->record[1], *curl = &segment->record[2];
    ck_assert(segment->ran);
    double set = screen->time[MOMENT_SET], left = curl->time[MOMENT_STARTED];
    ck_assert_double_lt(vec2_distance(screen->to, screen->on), 3 * FEET);
    ck_assert_double_ge(set, segment->record[0].time[MOMENT_ARRIVED]);
    ck_assert_double_ge(left, set + .1);
    ck_assert_double_lt(left, set + .3);
    ck_assert_double_lt(vec2_length(segment_velocity(segment, body_attacker(5), left)), .05);
    for (double t = set + RUN_SAMPLE; t < screen->time[MOMENT_USED];
         t += RUN_SAMPLE) { /* he does not move */
        ck_assert(vec2_near(segment_at(segment, body_attacker(5), t), screen->to, .02));
    }
    ck_assert_double_ge(curl->gap, 0);
    ck_assert_double_lt(curl->gap, 2 * FEET);
    ck_assert_double_gt(segment->record[3].time[MOMENT_CAUGHT], screen->time[MOMENT_USED]);
}

START_TEST(a_screener_finds_the_defender_and_is_still_before_the_user_goes)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    use(step, NULL, VERB_CURLS, 0, 3);
    curl_is_sound(sim_of(play));
}
END_TEST

START_TEST(with_no_defense_he_goes_to_where_one_would_stand)
{
    struct step *step;
    struct play *play = down(DEFENSE_NONE, &step);
    use(step, NULL, VERB_CURLS, 0, 3);
    struct run *run = sim_of(play);
    curl_is_sound(run);
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        ck_assert(!run->segments.at[0]->track[b].on_floor);
    }
    ck_assert_ptr_nonnull(run->segments.at[0]->track[body_defender(3)].sample); /* for the checks */
}
END_TEST

static double nearest(const struct segment *segment, int defender, int attacker, double from,
                      double to)
{
    double least = 99;
    for (double t = from; t < to; t += RUN_SAMPLE) {
        least = real_min(least, vec2_distance(segment_at(segment, body_defender(defender), t),
                                              segment_at(segment, body_attacker(attacker), t)));
    }
    return least;
}

START_TEST(all_branches_start_from_one_stand_and_the_defense_differs)
{
    static const enum verb answers[] = {VERB_TRAILS, VERB_GOES_UNDER, VERB_OVERPLAYS, VERB_COUNT};
    static const enum verb uses[] = {VERB_CURLS, VERB_FADES, VERB_BACK_CUTS_OFF, VERB_CURLS};
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    for (int i = 0; i < 4; i++) {
        struct branch *branch = build_branch(&arena, step, "Read");
        build_condition(&arena, branch, 3, answers[i]);
        use(step, branch, uses[i], i == 1 ? -20.8 : 0, i == 1 ? -2.2 : 0);
    }
    build_to(build_task(&arena, build_step(&arena, play), NULL, 3, VERB_CLEARS), 7, 2);
    struct run *run = sim_of(play);
    ck_assert_uint_eq(run->segments.count, 5);
    for (size_t i = 0; i < 4; i++) {
        struct segment *segment = run->segments.at[i];
        ck_assert(segment->ran);
        ck_assert_int_eq(segment->branch, (int)i);
        ck_assert_int_eq(segment->main, i == 0);
        ck_assert(vec2_near(segment_at(segment, body_defender(3), 0),
                            segment_at(run->segments.at[0], body_defender(3), 0), 1e-12));
    }
    ck_assert_ptr_eq(run->segments.at[4]->before, run->segments.at[0]);
    double set = sim_time(run, 1, 1, MOMENT_SET); /* who goes under stands off */
    double under = nearest(run->segments.at[1], 3, 3, set - .1, set);
    double trail = nearest(run->segments.at[0], 3, 3, sim_time(run, 0, 1, MOMENT_SET) - .1,
                           sim_time(run, 0, 1, MOMENT_SET));
    ck_assert_double_gt(under, trail + .4);
}
END_TEST

/* Against a curl, who trails is behind and who goes under is between user and rim. */
START_TEST(who_trails_comes_later_than_who_goes_under)
{
    double ahead[2];
    for (int i = 0; i < 2; i++) {
        struct step *step;
        struct play *play = down(DEFENSE_MAN, &step);
        struct branch *branch = build_branch(&arena, step, "Curl");
        build_condition(&arena, branch, 3, i ? VERB_GOES_UNDER : VERB_TRAILS);
        use(step, branch, VERB_CURLS, 0, 3);
        struct run *run = sim_of(play);
        double used = sim_time(run, 0, 1, MOMENT_USED) + .2;
        ahead[i] = vec2_length(segment_at(run->segments.at[0], body_attacker(3), used)) -
                   vec2_length(segment_at(run->segments.at[0], body_defender(3), used));
    }
    ck_assert_double_lt(ahead[0], 0);
    ck_assert_double_gt(ahead[1], 0);
}
END_TEST

START_TEST(a_roll_starts_as_the_user_clears)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    use(step, NULL, VERB_CURLS, 0, 3);
    struct task *pop = build_task(&arena, step, NULL, 5, VERB_POPS);
    build_to(pop, -20.8, -2.2);
    build_wait(&arena, pop, 1, MOMENT_USED, false);
    struct run *run = sim_of(play);
    double used = sim_time(run, 0, 1, MOMENT_USED), popped = sim_time(run, 0, 4, MOMENT_STARTED);
    ck_assert_double_ge(popped, used);
    ck_assert_double_lt(popped, used + 1);
}
END_TEST

START_TEST(a_slip_leaves_before_contact)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    struct task *slip = build_task(&arena, step, NULL, 5, VERB_SLIPS);
    build_to(slip, 0, 0);
    slip->screen_task = 1;
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    ck_assert(segment->ran);
    ck_assert_double_lt(sim_time(run, 0, 1, MOMENT_SET), 0);
    double t = sim_time(run, 0, 2, MOMENT_STARTED);
    ck_assert_double_gt(vec2_distance(segment_at(segment, body_attacker(5), t),
                                      segment_at(segment, body_defender(3), t)),
                        .6);
}
END_TEST

START_TEST(an_unused_screen_stands_into_the_next_step)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    step = build_step(&arena, play);
    struct task *curl = build_task(&arena, step, NULL, 3, VERB_CURLS);
    curl->other = body_attacker(5);
    build_to(curl, 0, 3);
    struct run *run = sim_of(play);
    const struct segment *first = run->segments.at[0], *second = run->segments.at[1];
    ck_assert(first->ran && second->ran);
    ck_assert(first->record[1].carried);
    ck_assert_double_lt(sim_time(run, 1, 0, MOMENT_STARTED), .05);
    ck_assert(vec2_near(segment_at(second, body_attacker(5), .5), first->record[1].to, .05));
    ck_assert_double_lt(second->record[0].gap, 2 * FEET);
}
END_TEST

START_TEST(a_standing_post_is_used_without_a_wait)
{
    struct play *play = build_play(&arena, DEFENSE_MAN);
    build_formation(play, "fouroutonein");
    struct step *step = build_step(&arena, play);
    struct task *cut = build_task(&arena, step, NULL, 2, VERB_COMES);
    cut->other = body_attacker(5);
    build_to(cut, 0, 3);
    struct run *run = sim_of(play);
    ck_assert(run->segments.at[0]->ran);
    ck_assert_double_lt(sim_time(run, 0, 0, MOMENT_STARTED), .02);
}
END_TEST

START_TEST(early_leaves_before_it_is_set)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    use(step, NULL, VERB_CURLS, 0, 3);
    step->tasks.at[2].early = true;
    struct run *run = sim_of(play);
    double set = sim_time(run, 0, 1, MOMENT_SET), left = sim_time(run, 0, 2, MOMENT_STARTED);
    ck_assert(set < 0 || left < set);
}
END_TEST

START_TEST(a_measured_place_is_taken_literally)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    build_to(&step->tasks.at[1], -10, 8);
    step->tasks.at[1].goal.measured = true;
    use(step, NULL, VERB_CURLS, 0, 3);
    struct run *run = sim_of(play);
    ck_assert(run->segments.at[0]->ran);
    ck_assert(vec2_near(run->segments.at[0]->record[1].to, vec2_of(-10 * FEET, 8 * FEET), .3));
}
END_TEST

static void back_is_turned_to_the_exit(const struct task_record *screen)
{
    struct vec2 face = vec2_of(real_cos(screen->facing), real_sin(screen->facing));
    struct vec2 exit = vec2_sub(screen->exit, screen->to);
    ck_assert_double_lt(vec2_angle(vec2_scale(face, -1), exit), 30.0 / 180 * REAL_PI);
}

START_TEST(a_screener_turns_his_back_to_where_the_user_goes)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    use(step, NULL, VERB_CURLS, 0, 3);
    back_is_turned_to_the_exit(&sim_of(play)->segments.at[0]->record[1]);
}
END_TEST

START_TEST(a_written_facing_is_taken_literally)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    step->tasks.at[1].faces = true;
    step->tasks.at[1].face.kind = GOAL_POINT;
    step->tasks.at[1].face.at = vec2_of(0, 0);
    use(step, NULL, VERB_CURLS, 0, 3);
    const struct task_record *screen = &sim_of(play)->segments.at[0]->record[1];
    struct vec2 to_rim = vec2_scale(screen->to, -1);
    ck_assert_double_eq_tol(screen->facing, real_atan2(to_rim.y, to_rim.x), .02);
}
END_TEST

START_TEST(a_screen_on_the_ball_is_set_beside_the_guard_and_the_dribbler_goes_by_its_far_side)
{
    struct play *play = build_play(&arena, DEFENSE_MAN);
    build_place(play, 1, 0, 20.8);
    build_place(play, 2, 20.8, -2.2);
    build_place(play, 3, -20.8, -2.2);
    build_place(play, 4, -15.5, 13.8);
    build_place(play, 5, 6, 13.8);
    struct step *step = build_step(&arena, play);
    build_task(&arena, step, NULL, 5, VERB_SCREENS)->other = body_attacker(1);
    struct task *drive = build_task(&arena, step, NULL, 1, VERB_DRIVES_OFF);
    drive->other = body_attacker(5);
    drive->screen_task = 0;
    build_to(drive, 0, 0);
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    const struct task_record *screen = &segment->record[0];
    ck_assert(segment->ran);
    ck_assert_double_gt(screen->to.x, screen->on.x + .2);
    back_is_turned_to_the_exit(screen);
    double most = -9;
    for (double t = sim_time(run, 0, 1, MOMENT_STARTED); t < sim_time(run, 0, 1, MOMENT_ARRIVED);
         t += .05) {
        most = real_max(most, segment_at(segment, body_attacker(1), t).x);
    }
    ck_assert_double_gt(most, screen->to.x + .4);
}
END_TEST

START_TEST(a_switch_leaves_each_with_the_other_man)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    struct branch *branch = build_branch(&arena, step, "Switch");
    build_condition(&arena, branch, 3, VERB_SWITCHES);
    branch->conditions.at[0].other = (struct who){.kind = WHO_DEFENDER, .number = 5};
    use(step, branch, VERB_CURLS, 0, 3);
    struct run *run = sim_of(play);
    ck_assert(run->segments.at[0]->ran);
    ck_assert_uint_eq(run->segments.at[0]->guards[body_defender(3)], body_attacker(5));
    ck_assert_uint_eq(run->segments.at[0]->guards[body_defender(5)], body_attacker(3));
}
END_TEST

START_TEST(a_screen_whose_user_went_without_it_is_set_where_it_was_to_be)
{
    struct step *step;
    struct play *play = down(DEFENSE_MAN, &step);
    step->tasks.count = 0;
    build_task(&arena, step, NULL, 5, VERB_SCREENS)->other = body_attacker(3);
    build_to(build_task(&arena, step, NULL, 3, VERB_CUTS), 0, 0);
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    ck_assert(segment->ran);
    ck_assert_double_lt(vec2_distance(segment->record[0].to, segment->record[1].from), 3);
    ck_assert_double_gt(vec2_distance(segment->record[0].to, segment->record[0].on), 3 * FEET);
}
END_TEST

START_TEST(two_screens_for_one_user_stand_in_a_row)
{
    struct play *play = build_play(&arena, DEFENSE_MAN);
    build_place(play, 1, -15.5, 13.8);
    build_place(play, 2, 20.8, -2.2);
    build_place(play, 3, -20.8, -2.2);
    build_place(play, 4, 7.5, 2.2);
    build_place(play, 5, 6, 13.8);
    struct step *step = build_step(&arena, play);
    build_task(&arena, step, NULL, 4, VERB_SCREENS)->other = body_attacker(2);
    build_task(&arena, step, NULL, 5, VERB_SCREENS)->other = body_attacker(2);
    struct task *off = build_task(&arena, step, NULL, 2, VERB_COMES);
    off->other = body_attacker(4);
    off->other2 = body_attacker(5);
    off->screen_task = 0;
    build_to(off, 0, 20.8);
    struct run *run = sim_of(play);
    const struct segment *segment = run->segments.at[0];
    ck_assert(segment->ran);
    double apart = vec2_distance(segment->record[0].to, segment->record[1].to);
    ck_assert_double_gt(apart, 1.2);
    ck_assert_double_lt(apart, 3);
    ck_assert_double_gt(segment->record[0].time[MOMENT_USED], 0);
    ck_assert_double_gt(segment->record[1].time[MOMENT_USED], 0);
}
END_TEST

TCase *sim_screen_tests(void)
{
    TCase *all = tcase_create("screens");
    tcase_add_test(all, a_screener_finds_the_defender_and_is_still_before_the_user_goes);
    tcase_add_test(all, with_no_defense_he_goes_to_where_one_would_stand);
    tcase_add_test(all, all_branches_start_from_one_stand_and_the_defense_differs);
    tcase_add_test(all, who_trails_comes_later_than_who_goes_under);
    tcase_add_test(all, a_roll_starts_as_the_user_clears);
    tcase_add_test(all, a_screener_turns_his_back_to_where_the_user_goes);
    tcase_add_test(all, a_written_facing_is_taken_literally);
    tcase_add_test(all, a_slip_leaves_before_contact);
    tcase_add_test(all, an_unused_screen_stands_into_the_next_step);
    tcase_add_test(all, a_standing_post_is_used_without_a_wait);
    tcase_add_test(all, early_leaves_before_it_is_set);
    tcase_add_test(all, a_measured_place_is_taken_literally);
    tcase_add_test(
        all, a_screen_on_the_ball_is_set_beside_the_guard_and_the_dribbler_goes_by_its_far_side);
    tcase_add_test(all, a_switch_leaves_each_with_the_other_man);
    tcase_add_test(all, a_screen_whose_user_went_without_it_is_set_where_it_was_to_be);
    tcase_add_test(all, two_screens_for_one_user_stand_in_a_row);
    return all;
}
