/* SPDX-License-Identifier: MIT */
/* Screens on the ball as a coach who teaches one coverage would look at them: on which side he
 * stands, whether anybody runs in a circle, whom a trap holds, who comes between man and rim. */
#include <math.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "told.h"

static struct told told;
static const struct segment *way;

/* The way through the only step, or its last read. */
static void run(const char *text)
{
    told_run(&told, text);
    ck_assert_msg(told.text.diags.errors == 0, "%s%s", text, told_said(&told));
    way = told.run->segments.at[told.run->segments.count - 1];
    ck_assert(way->ran);
}

static struct vec2 x(int number, double t)
{
    return segment_at(way, body_defender(number), t);
}

static struct vec2 p(int number, double t)
{
    return segment_at(way, body_attacker(number), t);
}

static double off(int defender, int player, double t)
{
    return vec2_distance(x(defender, t), p(player, t));
}

/* The first task of that verb. */
static size_t task_of(enum verb verb)
{
    for (size_t i = 0; i < way->tasks; i++) {
        if (segment_task(way, i)->verb == verb) {
            return i;
        }
    }
    ck_abort_msg("no such sentence");
}

static double when(enum verb verb, enum moment moment)
{
    return told_time(way, task_of(verb), moment);
}

/* How far round a way turns in all, left and right taken together, in turns. */
static double turns_of(body who)
{
    struct vec2 last = segment_at(way, who, 0), was = {0, 0};
    double turned = 0;
    for (double t = 0; t <= way->duration; t += .01) {
        struct vec2 now = segment_at(way, who, t), step = vec2_sub(now, last);
        if (vec2_length(step) < .3) {
            continue;
        }
        if (was.x != 0 || was.y != 0) {
            double angle = vec2_angle(was, step);
            turned += vec2_cross(was, step) > 0 ? angle : -angle;
        }
        was = step;
        last = now;
    }
    return fabs(turned) / (2 * REAL_PI);
}

/* ---- ICE ---- */

#define WING "start 1 right wing, 2 left slot, 3 left corner, 4 left short corner, 5 right elbow\n"
#define TOP "start 1 top, 2 right corner, 3 left wing, 4 left corner, 5 right elbow\n"
#define ICE(start, use) start "defense man\nstep\n5 ball screens for 1\nread x1 ices\n" use "\n"

static const struct {
    const char *text;
    double side; /* of the screen: x to the right is more than 0 */
} iced[] = {
    {ICE(WING, "1 dribbles off 5 to nail"), -1},
    {ICE(WING, "1 dribbles off 5 to right slot"), -1},
    {ICE(WING, "1 dribbles off 5 to top"), -1},
    {ICE(TOP, "1 dribbles off 5 to left wing"), -1}, /* 5 comes from the other side */
    {ICE(TOP, "1 dribbles off 5 to right wing"), 1},
    {ICE(TOP, "1 dribbles off 5 to right elbow"), 1},
};

START_TEST(who_ices_stands_on_the_side_of_the_screen)
{
    run(iced[_i].text);
    double goes = when(VERB_DRIBBLES_OFF, MOMENT_STARTED);
    ck_assert_double_gt(iced[_i].side * (x(1, goes).x - p(1, goes).x), .4);
}
END_TEST

START_TEST(an_iced_screen_that_is_used_all_the_same_makes_nobody_run_in_a_circle)
{
    run(iced[_i].text);
    told_says(&told, "run.ice", "ICE sends 1 away from the screen: did you mean 1 rejects 5?");
    ck_assert_double_lt(turns_of(body_attacker(1)), .5);
    ck_assert_double_lt(turns_of(body_defender(1)), .8);
    struct vec2 end = x(1, way->duration), man = p(1, way->duration);
    ck_assert_double_lt(vec2_length(end), vec2_length(man)); /* and he is between man and rim */
}
END_TEST

START_TEST(who_rejects_an_iced_screen_is_told_nothing)
{
    run(ICE(WING, "1 rejects 5 to right short corner"));
    for (size_t i = 0; i < told.text.diags.all.count; i++) {
        ck_assert_str_ne(told.text.diags.all.at[i].row->id, "run.ice");
    }
    double goes = when(VERB_REJECTS, MOMENT_STARTED);
    ck_assert_double_lt(x(1, goes).x, p(1, goes).x - .4);
    ck_assert_double_lt(turns_of(body_attacker(1)), .5);
    double there = when(VERB_REJECTS, MOMENT_ARRIVED);
    ck_assert_double_lt(x(1, there).x, p(1, there).x); /* still on the side of the middle */
}
END_TEST

/* ---- a trap ---- */

START_TEST(a_trap_holds_who_would_dribble_through_it)
{
    run("start five-out\ndefense man\nstep\nx2 traps 1\nafter x2 traps, 1 dribbles to right wing\n"
        "1 holds for 1 s\n2 cuts to the rim\n");
    told_says(&told, "run.trapped", "the trap holds 1");
    struct vec2 end = p(1, way->duration);
    ck_assert_double_lt(vec2_distance(end, p(1, 0)), 2.0);
    ck_assert_double_lt(off(1, 1, way->duration), 1.1);
    ck_assert_double_lt(off(2, 1, way->duration), 1.1);
}
END_TEST

START_TEST(who_is_trapped_may_dribble_back)
{
    run("start five-out\ndefense man\nstep\nx2 traps 1\nafter x2 traps, 1 dribbles to half court\n"
        "2 cuts to the rim\n");
    ck_assert_double_gt(p(1, way->duration).y, told.play->court->half_court - .4);
}
END_TEST

START_TEST(a_trap_at_the_screen_holds_until_the_ball_is_thrown)
{
    run("start horns\ndefense man\nstep\n4 ball screens for 1\n1 dribbles off 4 to the right wing\n"
        "read x1 and x4 trap 1\n4 pops to left wing\n1 passes to 4\n");
    double held = when(VERB_DRIBBLES_OFF, MOMENT_ARRIVED),
           thrown = when(VERB_PASSES, MOMENT_RELEASED);
    for (double t = held; t < thrown; t += .05) {
        ck_assert_double_lt(vec2_distance(p(1, t), p(1, held)), .2);
        ck_assert_double_lt(off(4, 1, t), 1.2);
        ck_assert_double_lt(off(1, 1, t), 1.2);
    }
}
END_TEST

START_TEST(the_next_one_takes_the_man_whom_a_trap_has_left)
{
    run("start 1 right wing, 2 top, 3 left slot, 4 left corner, 5 right corner\ndefense man\nstep\n"
        "x2 traps 1\nafter x2 traps, 1 passes to 2\n2 holds for 1.5 s\n");
    ck_assert_uint_eq(way->guards[body_defender(3)], body_attacker(2));
    ck_assert_uint_eq(way->guards[body_defender(2)], body_attacker(3));
    ck_assert_double_lt(off(3, 2, way->duration), 1.5);
}
END_TEST

START_TEST(who_tagged_the_roller_keeps_him_when_the_ball_comes_out_of_a_trap)
{
    run("start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\ndefense "
        "man\nstep\n"
        "2, 3 and 4 stay\n5 ball screens for 1\nread x1 and x5 trap\n1 dribbles off 5 to left "
        "wing\n5 rolls to nail\n1 passes to 5\n5 holds for 2 s\n");
    ck_assert_uint_eq(way->guards[body_defender(4)], body_attacker(5));
    ck_assert_uint_eq(way->guards[body_defender(5)], body_attacker(4));
    double end = way->duration;
    ck_assert_double_lt(off(4, 5, end), 1.3);
    ck_assert_double_lt(off(2, 2, end), 2.5); /* back with his own man, one pass away */
    ck_assert_double_lt(off(5, 4, end), 4.5); /* and who trapped has the corner */
}
END_TEST

/* On the ball he may jump to the side of the screen: it is turned down. */
START_TEST(who_overplays_the_ball_stands_between_it_and_the_screen)
{
    run(TOP "defense man\nstep\n5 ball screens for 1\nread x1 overplays\n1 rejects 5 to the rim\n");
    double goes = when(VERB_REJECTS, MOMENT_STARTED);
    ck_assert_double_gt(x(1, goes).x, p(1, goes).x + .4);
    ck_assert_double_lt(off(1, 1, goes), 1.3);
    double there = when(VERB_REJECTS, MOMENT_ARRIVED); /* the big is no help: he stays below */
    ck_assert_double_lt(vec2_length(p(1, there)), 1.8);
}
END_TEST

/* Over a flare, to where the ball is caught, and between his man and the rim without a lap. */
START_TEST(who_goes_over_a_flare_comes_down_inside_his_man)
{
    run("start 1 right slot, 2 right corner, 3 left slot, 4 left corner, 5 left elbow\ndefense "
        "man\n"
        "step\n1, 2 and 4 stay\n5 flare screens for 3\nread x3 goes over\n3 flares off 5 to left "
        "wing\n1 skip passes to 3\n3 holds for 1.5 s\n");
    double soon = when(VERB_PASSES, MOMENT_CAUGHT) + 1.4;
    ck_assert_double_lt(vec2_length(x(3, soon)), vec2_length(p(3, soon)) - .5);
    ck_assert_double_lt(off(3, 3, soon), 1.3);
}
END_TEST

START_TEST(two_close_out_crosswise_when_told)
{
    run("start 1 right slot, 2 right corner, 3 left corner, 4 left slot, 5 right block\ndefense "
        "man\n"
        "step\n1 skip passes to 4\nx3 closes out on 4\n4 passes to 3\n"
        "as 4 passes, x4 closes out on 3\n3 holds for 1 s\n");
    ck_assert_double_lt(off(3, 4, when(VERB_PASSES, MOMENT_CAUGHT) + .6), 2.2);
    ck_assert_double_lt(off(4, 3, way->duration), 1.3);
    ck_assert_double_lt(off(3, 4, way->duration), 1.3);
}
END_TEST

START_TEST(who_was_told_whom_to_guard_stays_with_him_when_another_has_the_roller)
{
    run("start 1 top, 2 right wing, 3 right corner, 4 left elbow, 5 left block\ndefense man\nstep\n"
        "4 ball screens for 1\nread x4 traps\n1 dribbles off 4 to left wing\n4 rolls to lane\n"
        "as 4 rolls, x5 tags 4\nas 4 rolls, x3 guards 5\nas 4 rolls, x2 denies 2\n1 holds for 2 "
        "s\n");
    ck_assert_double_lt(off(3, 5, way->duration), 1.3);
    for (double t = when(VERB_GUARDS, MOMENT_ARRIVED); t < way->duration; t += .1) {
        ck_assert_double_lt(off(3, 5, t), 1.5);
    }
    ck_assert_double_lt(off(5, 4, way->duration), 1.3);
}
END_TEST

/* ---- who chases ---- */

#define CHASED(start, exit, way)                                                                   \
    "start " start "\ndefense man\nstep\n5 screens for 3\nread x3 " way "\n3 comes off 5 to " exit \
    "\n3 holds for 1.2 s\n"
#define ELBOW "1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow"
#define BLOCK "1 right wing, 2 right corner, 3 left block, 4 top, 5 left wing"
#define CROSS "1 top, 2 right wing, 3 right block, 4 left corner, 5 left block"

static const char *const chased[] = {
    CHASED(ELBOW, "left wing", "trails"),         CHASED(ELBOW, "left slot", "trails"),
    CHASED(BLOCK, "left wing", "trails"),         CHASED(BLOCK, "left slot", "trails"),
    CHASED(CROSS, "left short corner", "trails"), CHASED(CROSS, "left wing", "trails"),
    CHASED(ELBOW, "left slot", "goes over"),      CHASED(BLOCK, "left slot", "goes over"),
    CHASED(CROSS, "left wing", "goes over"),
};

/* A moment after his man has come to a stop, before he goes back to the gap. */
/* Off and on the ball: who has stepped out is at the user when the ball is thrown, and his man has
 * gone after the slip. */
START_TEST(a_slip_against_a_switch_is_switched)
{
    static const char *const floors[] = {
        "play \"P\"\n  start 1 right slot, 2 left slot, 3 left corner, 4 right corner, 5 right "
        "elbow\n"
        "  ball 1\n  defense man\n  step\n    3 and 4 stay\n    1 passes to 2\n"
        "    5 flare screens for 1\n    read x1 and x5 switch\n      1 flares off 5 to right wing\n"
        "      5 slips to the rim\n      2 lob passes to 5\n",
        "play \"P\"\n  start 1 right wing, 2 left wing, 3 left corner, 4 right corner, 5 right "
        "block\n"
        "  ball 1\n  defense man\n  step\n    2, 3 and 4 stay\n    5 ball screens for 1\n"
        "    read x1 and x5 switch\n      1 dribbles off 5 to right slot\n      5 slips to the "
        "rim\n"
        "      1 lob passes to 5\n"};
    for (size_t i = 0; i < sizeof floors / sizeof *floors; i++) {
        run(floors[i]);
        double thrown = 0;
        for (size_t k = 0; k < way->tasks; k++) {
            bool lob =
                segment_task(way, k)->verb == VERB_PASSES && segment_task(way, k)->other == 4;
            thrown = lob ? told_time(way, k, MOMENT_RELEASED) : thrown;
        }
        ck_assert_double_gt(thrown, 0);
        ck_assert_double_lt(off(5, 1, thrown), off(1, 1, thrown));
        ck_assert_double_lt(off(1, 5, thrown), off(5, 5, thrown));
        ck_assert_double_lt(off(5, 1, thrown), 1.5);
    }
}
END_TEST

/* He leaves his man before the screen is set, which is what the slip answers: as it begins he is
 * nearer to the ball than the screener, and far from where he stood. */
START_TEST(who_hedges_is_out_before_the_slip)
{
    run("play \"P\"\n  start horns\n  ball 1\n  defense man\n  step\n    5 ball screens for 1\n"
        "    read x5 hedges\n      5 slips to the rim\n      1 bounce passes to 5\n");
    double slips = 0;
    for (size_t k = 0; k < way->tasks; k++) {
        bool slip = segment_task(way, k)->verb == VERB_SLIPS;
        slips = slip ? told_time(way, k, MOMENT_STARTED) : slips;
    }
    ck_assert_double_gt(slips, 0);
    ck_assert_double_lt(off(5, 1, slips), vec2_distance(p(5, slips), p(1, slips)));
    ck_assert_double_gt(off(5, 5, slips + .4), 1);
}
END_TEST

START_TEST(who_has_chased_is_between_man_and_rim_and_not_past_him)
{
    run(chased[_i]);
    double there = when(VERB_COMES, MOMENT_ARRIVED);
    for (double t = there + .4; t < there + .8; t += .1) {
        struct vec2 rim = vec2_unit(vec2_scale(p(3, t), -1));
        ck_assert_double_gt(vec2_dot(vec2_sub(x(3, t), p(3, t)), rim), .4);
        ck_assert_double_lt(off(3, 3, t), 1.5); /* an arm and a step */
    }
}
END_TEST

START_TEST(who_goes_under_a_down_screen_comes_out_of_it_to_his_man)
{
    run("start " ELBOW "\ndefense man\nstep\n5 down screens for 3\nread x3 goes under\n"
        "3 comes off 5 to left wing\n3 holds for 2 s\n");
    double there = when(VERB_COMES, MOMENT_ARRIVED);
    ck_assert_double_lt(off(3, 3, there + 1.2), 1.5);
    ck_assert_double_lt(turns_of(body_defender(3)), 1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("coverages");
    TCase *all = tcase_create("all");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    int n = (int)(sizeof iced / sizeof *iced);
    tcase_add_loop_test(all, who_ices_stands_on_the_side_of_the_screen, 0, n);
    tcase_add_loop_test(all, an_iced_screen_that_is_used_all_the_same_makes_nobody_run_in_a_circle,
                        0, n);
    tcase_add_test(all, who_rejects_an_iced_screen_is_told_nothing);
    tcase_add_test(all, a_trap_holds_who_would_dribble_through_it);
    tcase_add_test(all, who_is_trapped_may_dribble_back);
    tcase_add_test(all, a_trap_at_the_screen_holds_until_the_ball_is_thrown);
    tcase_add_test(all, the_next_one_takes_the_man_whom_a_trap_has_left);
    tcase_add_test(all, who_tagged_the_roller_keeps_him_when_the_ball_comes_out_of_a_trap);
    tcase_add_test(all, who_overplays_the_ball_stands_between_it_and_the_screen);
    tcase_add_test(all, who_goes_over_a_flare_comes_down_inside_his_man);
    tcase_add_test(all, two_close_out_crosswise_when_told);
    tcase_add_test(all, who_was_told_whom_to_guard_stays_with_him_when_another_has_the_roller);
    tcase_add_test(all, a_slip_against_a_switch_is_switched);
    tcase_add_test(all, who_hedges_is_out_before_the_slip);
    tcase_add_loop_test(all, who_has_chased_is_between_man_and_rim_and_not_past_him, 0,
                        sizeof chased / sizeof *chased);
    tcase_add_test(all, who_goes_under_a_down_screen_comes_out_of_it_to_his_man);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
