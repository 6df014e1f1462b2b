/* SPDX-License-Identifier: MIT */
/* What one defender does instead of the default, word by word: a play for each, and what must be
 * seen of it: how far from his man, on which side, who is left open. */
#include <math.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "mirrors.h"
#include "told.h"

static struct told told;
static const struct segment *way;

static body x(int number)
{
    return body_defender(number);
}

static body p(int number)
{
    return body_attacker(number);
}

/* Runs the text; the way through its first step. */
static void run(const char *text)
{
    told_run(&told, text);
    ck_assert_msg(told.text.diags.errors == 0, "%s%s", text, told_said(&told));
    told_is_sound(&told);
    way = told.run->segments.at[0];
}

static struct vec2 at(body b, double t)
{
    return segment_at(way, b, t);
}

static struct vec2 end_of(body b)
{
    return at(b, way->duration);
}

static double apart(body a, body b, double t)
{
    return vec2_distance(at(a, t), at(b, t));
}

static double apart_at_end(body a, body b)
{
    return apart(a, b, way->duration);
}

static double nearest_defender(body man, double t)
{
    double least = 1e9;
    for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        least = way->track[b].on_floor ? real_min(least, apart(b, man, t)) : least;
    }
    return least;
}

/* Cosine between the ways from `man` to the defender and to `to`. */
static double toward(body defender, body man, struct vec2 to, double t)
{
    struct vec2 off = vec2_unit(vec2_sub(at(defender, t), at(man, t)));
    return vec2_dot(off, vec2_unit(vec2_sub(to, at(man, t))));
}

static const struct vec2 rim = {0, 0};

#define STANDS "start five-out\ndefense man\n"

/* ---- whose man he is ---- */

START_TEST(who_is_given_another_man_keeps_him_and_his_own_is_open)
{
    run(STANDS "step\n x2 guards 4\n 1 passes to 3\n 3 holds for 1 s\nstep\n 3 passes to 1\n");
    ck_assert_uint_eq(way->guards[x(2)], p(4));
    ck_assert_uint_eq(way->guards[x(4)], BODY_NONE);
    ck_assert_double_gt(nearest_defender(p(2), way->duration), 3); /* nobody's */
    ck_assert(court_in_lane(told.play->court, end_of(x(4))));      /* and he helps */
    way = told.run->segments.at[1];
    ck_assert_uint_eq(way->guards[x(2)], p(4));
    ck_assert_uint_eq(way->guards[x(4)], p(2)); /* picked up as the step began */
}
END_TEST

START_TEST(before_the_first_step_who_lost_his_man_has_the_other)
{
    run(STANDS "x2 guards 4\nstep\n 1 passes to 2\n");
    ck_assert_uint_eq(way->guards[x(2)], p(4));
    ck_assert_uint_eq(way->guards[x(4)], p(2));
    ck_assert_double_lt(at(x(2), 0).y, at(x(4), 0).y); /* he has the corner now */
}
END_TEST

START_TEST(two_switch_at_once_where_nobody_screens)
{
    run(STANDS "x3 switches with x5\n1 passes to 2\n");
    ck_assert_uint_eq(way->guards[x(3)], p(5));
    ck_assert_uint_eq(way->guards[x(5)], p(3));
    ck_assert_double_lt(apart_at_end(x(5), p(3)), apart_at_end(x(3), p(3)));
}
END_TEST

START_TEST(two_switch_at_a_screen_when_the_user_comes_by)
{
    run(STANDS
        "5 screens for 3\n3 comes off 5 to left slot\nx3 switches with x5\n1 holds for 1 s\n");
    ck_assert_uint_eq(way->guards[x(3)], p(5));
    ck_assert_uint_eq(way->guards[x(5)], p(3));
    ck_assert_double_lt(apart_at_end(x(5), p(3)), apart_at_end(x(3), p(3)));
}
END_TEST

/* ---- ways to stand ---- */

/* Two who run the same way and cross: one is let by, and takes the other nowhere. */
START_TEST(who_recovers_beside_one_who_closes_out_goes_behind_him)
{
    told_run(
        &told,
        "start five-out\ndefense man\nstep\n5 ball screens for 1\n1 drives off 5 to left elbow\n"
        "5 rolls to the rim\nx5 hedges\nas 5 rolls, x4 tags 5\nx2 stunts at 1\nstep\n"
        "1 passes to 4\nx2 closes out on 4\nx4 recovers to 2\n");
    told_is_sound(&told);
    way = told_segment(&told, 1, -1);
    ck_assert_double_lt(told_time(way, 2, MOMENT_ARRIVED), 3.0);
    for (double t = 0; t < way->duration; t += .1) {
        ck_assert_double_gt(at(x(4), t).y, -.3); /* not along to the baseline */
    }
    ck_assert_double_lt(apart_at_end(x(2), p(4)), 1.3);
}
END_TEST

/* Between the post and the rim stands his own defender: who comes from above stays on that side. */
START_TEST(who_doubles_a_post_from_above_does_not_run_round_him)
{
    run("start four-out one-in\ndefense man\nstep\n1 passes to 4\n4 skip passes to 3\n"
        "3 passes to 5\n5 holds for 1 s\nas 5 catches, x2 doubles 5\n5 passes to 2\n");
    double thrown = told_time(way, 5, MOMENT_RELEASED);
    ck_assert_double_lt(apart(x(2), p(5), thrown), 1.3);
    for (double t = thrown - 1; t < thrown; t += .1) {
        ck_assert_double_gt(at(x(2), t).y, at(p(5), t).y);
    }
}
END_TEST

START_TEST(who_denies_stands_in_the_lane_of_the_pass)
{
    run(STANDS "x3 denies\n1 holds for 1.5 s\n");
    ck_assert_double_lt(apart_at_end(x(3), p(3)), 1.2);
    ck_assert_double_gt(toward(x(3), p(3), end_of(p(1)), way->duration), .8);
    ck_assert_double_gt(told_time(way, 0, MOMENT_ARRIVED), 0);
}
END_TEST

START_TEST(who_jumps_to_the_ball_goes_toward_it_and_into_the_lane_of_the_pass_back)
{
    run(STANDS "1 passes to 2\nas 1 passes, x1 jumps to the ball\n2 holds for 1.5 s\n");
    double out = told_time(way, 0, MOMENT_RELEASED), t = out + 1;
    struct vec2 ball = end_of(p(2));
    ck_assert_double_lt(vec2_distance(at(x(1), t), ball), vec2_distance(at(x(1), out), ball) - .4);
    ck_assert_double_gt(toward(x(1), p(1), ball, t), .9); /* between 1 and who has it now */
    ck_assert_double_lt(apart(x(1), p(1), t), 1.2);
}
END_TEST

START_TEST(who_denies_another_man_leaves_his_own)
{
    run(STANDS "x3 denies 2\n1 holds for 3 s\n");
    ck_assert_double_lt(apart_at_end(x(3), p(2)), 1.3);
    ck_assert_double_gt(nearest_defender(p(3), way->duration), 3);
    ck_assert_uint_eq(way->guards[x(3)], p(3)); /* for this step only */
}
END_TEST

START_TEST(who_sags_is_off_his_man_on_the_way_to_the_rim)
{
    run(STANDS "x2 sags\n1 holds for 1.5 s\n");
    ck_assert_double_gt(apart_at_end(x(2), p(2)), 2.6);
    ck_assert_double_gt(toward(x(2), p(2), rim, way->duration), .95);
}
END_TEST

START_TEST(who_stays_stays_whatever_his_man_does)
{
    run(STANDS "x5 stays\n5 cuts to right block\n");
    ck_assert_double_lt(vec2_distance(at(x(5), 0), end_of(x(5))), .05);
    ck_assert_double_gt(apart_at_end(x(5), p(5)), 3);
}
END_TEST

START_TEST(who_fronts_stands_between_ball_and_post)
{
    run("start 1 right wing, 2 top, 3 left wing, 4 left corner, 5 right block\ndefense man\n"
        "x5 fronts\n1 holds for 1.5 s\n");
    double far = apart_at_end(x(5), p(5));
    ck_assert_double_gt(far, .45);
    ck_assert_double_lt(far, .8);
    ck_assert_double_gt(toward(x(5), p(5), end_of(p(1)), way->duration), .95);
}
END_TEST

START_TEST(who_overplays_takes_the_ball_s_side_of_his_man)
{
    run(STANDS "x3 overplays\n1 holds for 1.5 s\n");
    ck_assert_double_lt(apart_at_end(x(3), p(3)), 1.2);
    ck_assert_double_gt(toward(x(3), p(3), end_of(p(1)), way->duration), .7);
}
END_TEST

START_TEST(who_trails_runs_behind_his_man)
{
    run(STANDS "as 3 cuts, x3 trails\n3 cuts to right block\n");
    double t = .5 * (told_time(way, 1, MOMENT_STARTED) + told_time(way, 1, MOMENT_ARRIVED));
    struct vec2 v = segment_velocity(way, p(3), t);
    ck_assert_double_lt(vec2_dot(vec2_sub(at(x(3), t), at(p(3), t)), v), 0);
}
END_TEST

START_TEST(who_ices_with_no_screen_keeps_the_ball_from_the_middle)
{
    run("start 1 right wing, 2 top, 3 left wing, 4 left corner, 5 left block\ndefense man\n"
        "x1 ices\n1 holds for 1.5 s\n");
    ck_assert_double_lt(end_of(x(1)).x, end_of(p(1)).x - .4);
    ck_assert_double_lt(apart_at_end(x(1), p(1)), 1.1);
}
END_TEST

/* ---- at a screen: a sentence is what the read is ---- */

static const char *const at_screens[][2] = {
    {"x3 goes under", "5 screens for 3\n 3 comes off 5 to left slot\n"},
    {"x3 goes over", "5 screens for 3\n 3 comes off 5 to left slot\n"},
    {"x3 trails", "5 screens for 3\n 3 comes off 5 to left slot\n"},
    {"x3 overplays", "5 screens for 3\n 3 comes off 5 to left slot\n"},
    {"x1 goes under", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
    {"x1 goes over", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
    {"x1 ices", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
    {"x5 hedges", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
    {"x5 drops", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
    {"x5 traps", "5 ball screens for 1\n 1 drives off 5 to right elbow\n"},
};

START_TEST(at_a_screen_a_sentence_is_what_the_read_is)
{
    struct strbuf said, read;
    strbuf_init(&said, &arena);
    strbuf_init(&read, &arena);
    const char *does = at_screens[_i][0], *play = at_screens[_i][1];
    strbuf_print(&said, STANDS "step\n %s\n %s", does, play);
    strbuf_print(&read, STANDS "step\n read %s\n %s", does, play);
    struct vec2 ends[BODY_COUNT];
    body self = x(does[1] - '0');
    run(said.at);
    double arrived = way->record[2].time[MOMENT_ARRIVED];
    for (int t = 0; t < 10; t++) {
        ends[t] = at(self, .3 * t);
    }
    run(read.at);
    for (int t = 0; t < 10 && .3 * t < arrived; t++) {
        ck_assert_msg(vec2_near(ends[t], at(self, .3 * t), .02), "%s: %.2f m apart at %.1f s", does,
                      vec2_distance(ends[t], at(self, .3 * t)), .3 * t);
    }
}
END_TEST

/* ---- errands ---- */

START_TEST(who_helps_stands_in_the_lane_and_leaves_his_man)
{
    run(STANDS "x4 helps\n1 holds for 2 s\n");
    ck_assert(court_in_lane(told.play->court, end_of(x(4))));
    ck_assert_double_gt(nearest_defender(p(4), way->duration), 3);
}
END_TEST

START_TEST(who_helps_stops_the_drive)
{
    run(STANDS "1 drives to the rim\nas 1 drives, x4 helps\n");
    double least = 1e9, far = 0;
    for (double t = 0; t < way->duration; t += .05) {
        if (apart(x(4), p(1), t) < least) {
            least = apart(x(4), p(1), t);
            far = vec2_length(at(x(4), t)) - vec2_length(at(p(1), t));
        }
    }
    ck_assert_double_lt(least, 1.0);
    ck_assert_double_lt(far, .4); /* from in front, not from behind */
}
END_TEST

START_TEST(who_helps_to_a_place_goes_there)
{
    run(STANDS "x4 helps to left block\n1 holds for 2.5 s\n");
    struct vec2 block = court_spot(told.play->court, SPOT_BLOCK, SIDE_LEFT);
    ck_assert_double_lt(vec2_distance(end_of(x(4)), block), .4);
    ck_assert_double_gt(told_time(way, 0, MOMENT_ARRIVED), .8);
}
END_TEST

/* Close-out from rest, run, brake to a stop, computed from published sprint laws, without reaction
 * (level u16, mean of girls and boys): 3, 4, 5 m. The last steps are chopped: it takes longer, but
 * not by half a second. */
static const double close_outs[][2] = {{3, 1.56}, {4, 1.82}, {5, 2.05}};

START_TEST(who_closes_out_sprints_then_chops_and_ends_an_arm_away)
{
    double far = close_outs[_i][0], time = close_outs[_i][1];
    struct strbuf text;
    strbuf_init(&text, &arena);
    /* 3 on the left wing, x3 so far from where he is to end, on the line to the rim */
    struct vec2 three = court_spot(court_of(COURT_HIGH_SCHOOL), SPOT_WING, SIDE_LEFT);
    double arm = .44 * level_of(LEVEL_U16)->height, wing = vec2_length(three);
    struct vec2 from = vec2_scale(three, (wing - arm - far) / wing);
    strbuf_text(&text,
                "start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left corner, x3 (");
    strbuf_fixed(&text, from.x / FEET, 3);
    strbuf_text(&text, ", ");
    strbuf_fixed(&text, from.y / FEET, 3);
    strbuf_text(&text, ")\nball 3\ndefense man\nx3 closes out\n3 holds for 2.5 s\n");
    run(text.at);
    double t = 0, top = 0, slide = told.play->speed->slide;
    while (t < way->duration && vec2_distance(at(x(3), t), at(x(3), 0)) < far - .15) {
        t += .01;
        top = real_max(top, vec2_length(segment_velocity(way, x(3), t)));
    }
    ck_assert_msg(t > time - .15 && t < time + .5, "%.0f m: %.2f s, not about %.2f", far, t, time);
    ck_assert_double_gt(top, 1.1 * slide);
    double speed = vec2_length(segment_velocity(way, x(3), t));
    ck_assert_double_lt(speed, slide);
    ck_assert_double_eq_tol(apart_at_end(x(3), p(3)), arm, .15);
    ck_assert_double_gt(toward(x(3), p(3), rim, way->duration), .95);
}
END_TEST

static double angle_at(body a, body b, body man)
{
    return vec2_angle(vec2_sub(end_of(a), end_of(man)), vec2_sub(end_of(b), end_of(man)));
}

START_TEST(who_doubles_comes_at_right_angles_and_leaves_his_man_open)
{
    run(STANDS "x2 doubles 1\n1 holds for 3 s\n");
    ck_assert_double_lt(apart_at_end(x(1), p(1)), 1.15);
    ck_assert_double_lt(apart_at_end(x(2), p(1)), .9);
    ck_assert_double_gt(angle_at(x(1), x(2), p(1)), 1.2);
    ck_assert_double_lt(angle_at(x(1), x(2), p(1)), 1.95);
    ck_assert_double_gt(nearest_defender(p(2), way->duration), 2.5);
}
END_TEST

START_TEST(two_trap_whom_they_are_told_to)
{
    run(STANDS "1 dribbles to right wing\n2 clears to right corner\n4 clears to left wing\n"
               "x1 and x5 trap 1\n");
    ck_assert_double_lt(apart_at_end(x(1), p(1)), .9);
    ck_assert_double_lt(apart_at_end(x(5), p(1)), .9);
    ck_assert_double_gt(angle_at(x(1), x(5), p(1)), 1.1);
    ck_assert_double_lt(angle_at(x(1), x(5), p(1)), 2.1);
    ck_assert_double_gt(nearest_defender(p(5), way->duration), 2);
}
END_TEST

START_TEST(who_bumps_meets_the_cutter_and_lets_go)
{
    run(STANDS "3 cuts to the rim\nas 3 cuts, x5 bumps 3\n");
    double least = 1e9;
    for (double t = 0; t < way->duration; t += .02) {
        least = real_min(least, apart(x(5), p(3), t));
    }
    ck_assert_double_lt(least, .9);
    ck_assert_double_lt(apart_at_end(x(5), p(5)), 5.5); /* back on his own side of it */
    ck_assert_double_gt(apart_at_end(x(5), p(3)), .9);
    ck_assert_uint_eq(way->guards[x(5)], p(5));
}
END_TEST

START_TEST(who_tags_holds_the_roller_until_his_man_gets_the_ball)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left elbow\ndefense man\n"
        "5 ball screens for 1\n1 drives off 5 to right elbow\n5 rolls\nas 5 rolls, x3 tags 5\n"
        "1 holds for 1 s\n1 passes to 3\n3 holds for 1.5 s\n");
    double out = told_time(way, 5, MOMENT_RELEASED);
    ck_assert_double_lt(apart(x(3), p(5), out), 1.3);
    ck_assert_double_gt(apart(x(3), p(3), out), 3); /* 3 is open */
    ck_assert_double_lt(apart_at_end(x(3), p(3)), 1.3);
}
END_TEST

START_TEST(who_stunts_jabs_at_the_ball_and_is_back)
{
    run(STANDS "x2 stunts at 1\n1 holds for 2.5 s\n");
    double most = 0;
    for (double t = 0; t < way->duration; t += .02) {
        most = real_max(most, apart(x(2), p(1), 0) - apart(x(2), p(1), t));
    }
    ck_assert_double_gt(most, .9);
    ck_assert_double_lt(vec2_distance(end_of(x(2)), at(x(2), 0)), .5);
    ck_assert_double_gt(nearest_defender(p(1), way->duration), .6);
}
END_TEST

START_TEST(who_recovers_is_back_with_his_man)
{
    run(STANDS "1 drives to the rim\nas 1 drives, x4 helps\n1 passes to 4\n"
               "after 1 passes, x4 recovers\n4 holds for 2 s\n");
    ck_assert_double_gt(apart(x(4), p(4), told_time(way, 2, MOMENT_RELEASED)), 4);
    ck_assert_double_lt(apart_at_end(x(4), p(4)), 1.3);
}
END_TEST

START_TEST(who_boxes_out_has_his_man_on_his_back_once_the_shot_is_up)
{
    run("start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right block\ndefense man\n"
        "1 shoots\nx5 boxes out\nx2 boxes out\n");
    double landed = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_ge(told_time(way, 1, MOMENT_STARTED), told_time(way, 0, MOMENT_RELEASED));
    ck_assert_double_lt(apart(x(5), p(5), landed), .75);
    ck_assert_double_gt(toward(x(5), p(5), rim, landed), .9);
    ck_assert_double_lt(apart_at_end(x(2), p(2)), .75);
    ck_assert_double_gt(toward(x(2), p(2), rim, way->duration), .9);
}
END_TEST

START_TEST(who_rotates_takes_whoever_is_nearest_there)
{
    run(STANDS "x2 guards 1\nx4 rotates to right wing\n1 holds for 3 s\n");
    ck_assert_uint_eq(way->guards[x(4)], p(2));
    ck_assert_uint_eq(way->guards[x(2)], p(1));
    ck_assert_double_lt(apart_at_end(x(4), p(2)), 3.5);
    ck_assert_double_gt(nearest_defender(p(4), way->duration), 3);
}
END_TEST

START_TEST(who_drops_to_a_place_goes_there)
{
    run(STANDS "x5 drops to left block\n1 holds for 2 s\n");
    struct vec2 block = court_spot(told.play->court, SPOT_BLOCK, SIDE_LEFT);
    ck_assert_double_lt(vec2_distance(end_of(x(5)), block), .4);
}
END_TEST

/* ---- by rule ---- */

/* Who comes nearest to the man between two times, but his own. */
static body helper_at(body man, body own, double from, double to, double *least)
{
    body found = BODY_NONE;
    *least = 1e9;
    for (double t = from; t < to; t += .05) {
        for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
            if (b != own && way->track[b].on_floor && apart(b, man, t) < *least) {
                *least = apart(b, man, t);
                found = b;
            }
        }
    }
    return found;
}

START_TEST(a_free_cutter_draws_the_low_man_whose_man_is_open)
{
    run(STANDS "x3 stays\n3 cuts to the rim\n1 holds for 2.5 s\n");
    double least, there = told_time(way, 1, MOMENT_ARRIVED);
    ck_assert_uint_eq(helper_at(p(3), x(3), 0, there, &least), x(5));
    ck_assert_double_lt(least, 1.3);
    ck_assert_double_gt(nearest_defender(p(5), there), 3.5);
}
END_TEST

START_TEST(a_guarded_cutter_draws_nobody)
{
    run("start 1 top, 2 right wing, 3 left slot, 4 right corner, 5 left corner\ndefense man\n"
        "x3 closes out\nat 1.5 s, 3 cuts to left block\n1 holds for 3 s\n");
    struct vec2 five = at(x(5), 1.5);
    double there = told_time(way, 1, MOMENT_ARRIVED);
    ck_assert_double_lt(apart(x(3), p(3), there), 4 * FEET); /* he is with him all the way */
    for (double t = 1.5; t < there; t += .05) {
        ck_assert_double_lt(vec2_distance(at(x(5), t), five), 1.0);
    }
}
END_TEST

/* The drive passes x1 on the right: x5 is the low man of the weak side. */
START_TEST(the_man_who_was_left_is_closed_out_on_when_the_ball_comes_to_him)
{
    run(STANDS "x1 stays\n1 drives to the rim\n1 passes to 5\n5 holds for 2 s\n");
    double out = told_time(way, 2, MOMENT_RELEASED), least, top = 0;
    ck_assert_uint_eq(helper_at(p(1), x(1), 0, out, &least), x(5));
    ck_assert_double_lt(least, 1.2);                     /* he stopped the drive */
    ck_assert_double_gt(nearest_defender(p(5), out), 4); /* whose man is open */
    for (double t = out; t < way->duration; t += .02) {
        top = real_max(top, vec2_length(segment_velocity(way, x(5), t)));
    }
    ck_assert_double_gt(top, 1.4 * told.play->speed->slide); /* a sprint */
    ck_assert_double_lt(apart_at_end(x(5), p(5)), 1.25);
    ck_assert_double_gt(toward(x(5), p(5), rim, way->duration), .8);
}
END_TEST

/* ---- one after the other ---- */

START_TEST(his_next_sentence_ends_the_one_before)
{
    run(STANDS "x3 helps to left block\nx3 denies\n1 holds for 4 s\n");
    double there = told_time(way, 0, MOMENT_ARRIVED);
    ck_assert_double_eq_tol(told_time(way, 1, MOMENT_STARTED), there, .02);
    ck_assert_double_lt(apart_at_end(x(3), p(3)), 1.2);
}
END_TEST

START_TEST(a_tie_cuts_it_short)
{
    run(STANDS
        "x3 helps to right corner\nas 1 passes, x3 recovers\n1 holds for 0.5 s\n1 passes to 2\n");
    ck_assert_double_eq_tol(told_time(way, 0, MOMENT_ARRIVED), told_time(way, 3, MOMENT_RELEASED),
                            .02);
    ck_assert_double_lt(end_of(x(3)).x, 2);
}
END_TEST

START_TEST(it_is_over_with_the_step)
{
    run(STANDS "step\n x3 helps to right block\n 1 holds for 2 s\nstep\n 1 holds for 3 s\n");
    way = told.run->segments.at[1];
    ck_assert_double_lt(end_of(x(3)).x, -1);
}
END_TEST

/* ---- nothing hangs ---- */

static const char *const duties[] = {"x%d guards 4",      "x%d denies",
                                     "x%d sags",          "x%d stays",
                                     "x%d helps",         "x%d helps to left corner",
                                     "x%d closes out",    "x%d closes out on 1",
                                     "x%d goes under",    "x%d goes over",
                                     "x%d trails",        "x%d overplays",
                                     "x%d switches",      "x%d switches with x4",
                                     "x%d doubles 2",     "x%d hedges",
                                     "x%d drops",         "x%d ices",
                                     "x%d traps",         "x%d traps 1",
                                     "x%d fronts",        "x%d bumps",
                                     "x%d bumps 3",       "x%d tags 2",
                                     "x%d stunts at 2",   "x%d recovers",
                                     "x%d recovers to 4", "x%d rotates to right corner"};
static const char *const attacks[] = {
    "1 passes to 2\n2 passes to 4\n",
    "1 drives to the rim\n1 passes to 4\n4 shoots\n4 rebounds\n",
    "5 screens for 3\n3 comes off 5 to left slot\n1 passes to 3\n",
    "5 ball screens for 1\n1 drives off 5 to right elbow\n5 rolls\n1 passes to 5\n",
    "3 cuts to the rim\n5 screens for 3\n",
    "2 stays\n"};
enum { DUTIES = sizeof duties / sizeof *duties, ATTACKS = sizeof attacks / sizeof *attacks };

/* Two duties of one defender, one after the other, whatever the attack does meanwhile. */
START_TEST(no_duty_makes_a_step_hang)
{
    for (int a = 0; a < ATTACKS; a++) {
        run(str_format(&arena, STANDS "%s", attacks[a]).at);
        double alone = way->duration;
        for (int who = 1; who <= 5; who += 2) {
            struct strbuf text;
            strbuf_init(&text, &arena);
            strbuf_text(&text, STANDS);
            strbuf_print(&text, "x%d helps to the lane\n", who == 5 ? 1 : 5);
            strbuf_print(&text, duties[_i], who);
            strbuf_text(&text, "\n");
            strbuf_print(&text, duties[(_i * 7 + a) % DUTIES], who);
            strbuf_print(&text, "\n%s", attacks[a]);
            run(text.at);
            ck_assert_msg(way->duration < alone + 8, "%.1f s, alone %.1f: %s", way->duration, alone,
                          text.at);
            for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) { /* nobody has two */
                for (body c = (body)(b + 1); c < BODY_COUNT; c++) {
                    ck_assert(way->guards[b] == BODY_NONE || way->guards[b] != way->guards[c]);
                }
            }
        }
    }
}
END_TEST

/* The other side of a play runs as the exact mirror image, to the last bit. */
START_TEST(the_other_side_is_the_mirror_image)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"Tollgate\"\n" STANDS "step\n ");
    strbuf_print(&text, duties[_i], 3);
    strbuf_text(&text,
                "\n x5 doubles 1\n 2 cuts to the rim\n x1 stunts at 3\n 1 dribbles to right wing"
                "\n 1 passes to 4\nplay \"Millrace\" mirrors \"Tollgate\"\n");
    told_run(&told, text.at);
    told_is_sound(&told);
    const struct play *first = &told.text.book->plays.at[0];
    runs_are_mirrors(sim_run(&arena, &told.text.sources, first, &told.text.diags), told.run);
}
END_TEST

START_TEST(who_sinks_to_a_man_that_nobody_has_given_up_any_more_plays_his_own)
{
    run("start stack\ndefense man deny\n1 drives baseline\nx3 rotates to top\n");
    for (int k = 1; k <= 5; k++) {
        ck_assert_double_lt(vec2_length(end_of(x(k))), 12); /* nobody runs to nowhere */
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("duties");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, who_is_given_another_man_keeps_him_and_his_own_is_open);
    tcase_add_test(all, before_the_first_step_who_lost_his_man_has_the_other);
    tcase_add_test(all, two_switch_at_once_where_nobody_screens);
    tcase_add_test(all, who_sinks_to_a_man_that_nobody_has_given_up_any_more_plays_his_own);
    tcase_add_test(all, two_switch_at_a_screen_when_the_user_comes_by);
    tcase_add_test(all, who_recovers_beside_one_who_closes_out_goes_behind_him);
    tcase_add_test(all, who_doubles_a_post_from_above_does_not_run_round_him);
    tcase_add_test(all, who_denies_stands_in_the_lane_of_the_pass);
    tcase_add_test(all, who_jumps_to_the_ball_goes_toward_it_and_into_the_lane_of_the_pass_back);
    tcase_add_test(all, who_denies_another_man_leaves_his_own);
    tcase_add_test(all, who_sags_is_off_his_man_on_the_way_to_the_rim);
    tcase_add_test(all, who_stays_stays_whatever_his_man_does);
    tcase_add_test(all, who_fronts_stands_between_ball_and_post);
    tcase_add_test(all, who_overplays_takes_the_ball_s_side_of_his_man);
    tcase_add_test(all, who_trails_runs_behind_his_man);
    tcase_add_test(all, who_ices_with_no_screen_keeps_the_ball_from_the_middle);
    tcase_add_loop_test(all, at_a_screen_a_sentence_is_what_the_read_is, 0,
                        (int)(sizeof at_screens / sizeof *at_screens));
    tcase_add_test(all, who_helps_stands_in_the_lane_and_leaves_his_man);
    tcase_add_test(all, who_helps_stops_the_drive);
    tcase_add_test(all, who_helps_to_a_place_goes_there);
    tcase_add_loop_test(all, who_closes_out_sprints_then_chops_and_ends_an_arm_away, 0, 3);
    tcase_add_test(all, who_doubles_comes_at_right_angles_and_leaves_his_man_open);
    tcase_add_test(all, two_trap_whom_they_are_told_to);
    tcase_add_test(all, who_bumps_meets_the_cutter_and_lets_go);
    tcase_add_test(all, who_tags_holds_the_roller_until_his_man_gets_the_ball);
    tcase_add_test(all, who_stunts_jabs_at_the_ball_and_is_back);
    tcase_add_test(all, who_recovers_is_back_with_his_man);
    tcase_add_test(all, who_boxes_out_has_his_man_on_his_back_once_the_shot_is_up);
    tcase_add_test(all, who_rotates_takes_whoever_is_nearest_there);
    tcase_add_test(all, who_drops_to_a_place_goes_there);
    tcase_add_test(all, a_free_cutter_draws_the_low_man_whose_man_is_open);
    tcase_add_test(all, a_guarded_cutter_draws_nobody);
    tcase_add_test(all, the_man_who_was_left_is_closed_out_on_when_the_ball_comes_to_him);
    tcase_add_test(all, his_next_sentence_ends_the_one_before);
    tcase_add_test(all, a_tie_cuts_it_short);
    tcase_add_test(all, it_is_over_with_the_step);
    tcase_add_loop_test(all, no_duty_makes_a_step_hang, 0, DUTIES);
    tcase_add_loop_test(all, the_other_side_is_the_mirror_image, 0, DUTIES);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
