/* SPDX-License-Identifier: MIT */
/* Cutters and posts: where a run to the rim ends, where a movement goes on into the next, which
 * side of a screen is run by, and who has his defender on his back. */
#include "mirrors.h"
#include "told.h"

#include <math.h>

#include "base/real.h"

#define LOW (2.8 * FEET)    /* nobody stands nearer to the baseline than the front of the rim */
#define BESIDE (1.8 * FEET) /* from the ring's line */

static struct told told;

static struct vec2 at_end(int step, int player)
{
    const struct segment *segment = told_segment(&told, step, -1);
    return segment_at(segment, body_attacker(player), segment->duration);
}

static const char *const cuts[] = {
    "1 cuts to the rim", "2 cuts to the rim",        "3 cuts to the rim",
    "4 cuts to the rim", "5 cuts to the rim",        "2 back cuts",
    "5 goes to the rim", "4 cuts to the rim past 2", "3 cuts to the rim around 5"};
static const int cutter[] = {1, 2, 3, 4, 5, 2, 5, 4, 3};

START_TEST(a_cut_to_the_rim_ends_in_front_of_it)
{
    struct strbuf text;
    int passer = cutter[_i] == 1 ? 2 : 1;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Millrace\"\n  start five-out\n  ball %d\n  defense man\n  step\n"
                 "    %s\n  step\n    %d passes to %d\n",
                 passer, cuts[_i], passer, cutter[_i] == 3 ? 5 : 3);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    static const double from[] = {0, 1, -1, 1, -1, 1, -1, 1, -1}; /* his side */
    for (int step = 0; step < 2; step++) {
        struct vec2 at = at_end(step, cutter[_i]);
        ck_assert_msg(at.y > LOW && fabs(at.x) < BESIDE && at.x * from[_i] > -.15,
                      "%s: step %d ends %.2f, %.2f", cuts[_i], step + 1, at.x, at.y);
    }
}
END_TEST

/* The share of a player's way that lies within half a metre of a line `x` or `y` (the other: 99).
 */
static double share_on(int player, double x, double y)
{
    const struct segment *segment = told_segment(&told, 0, -1);
    double way = 0, on = 0;
    struct vec2 before = segment_at(segment, body_attacker(player), 0);
    for (int i = 1; i <= 400; i++) {
        struct vec2 at = segment_at(segment, body_attacker(player), i * segment->duration / 400);
        double piece = vec2_distance(before, at);
        way += piece;
        on += fabs(at.x - x) < .5 || fabs(at.y - y) < .5 ? piece : 0;
        before = at;
    }
    return on / way;
}

static const struct {
    const char *sentence;
    int player;
    double x, y, share;
} lines[] = {
    {"2 cuts to left corner along the baseline", 2, 99, -2.25 * FEET, .6},
    {"3 cuts to right corner along the baseline", 3, 99, -2.25 * FEET, .6},
    {"3 goes to left corner along the left sideline", 3, -22 * FEET, 99, .4},
    {"1 dribbles to right corner along the right sideline", 1, 22 * FEET, 99, .3},
};

START_TEST(who_goes_along_a_line_is_on_it_most_of_his_way)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(
        &text,
        "play \"Millrace\"\n  start 1 top, 2 right wing, 3 left wing, 4 left block, 5 nail\n"
        "  ball 1\n  %s\n",
        lines[_i].sentence);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    double share = share_on(lines[_i].player, lines[_i].x, lines[_i].y);
    ck_assert_msg(share > lines[_i].share, "%s: %.2f of it", lines[_i].sentence, share);
}
END_TEST

static const struct {
    const char *start, *drive;
    double on; /* m of it along the baseline, at the least */
} drives[] = {
    {"2 right wing", "2 drives along the baseline to the rim", 1.2},
    {"2 left wing", "2 drives baseline", 1.2},
    {"2 right corner", "2 drives baseline", 2.5},
    {"2 right wing", "2 drives baseline to left short corner", 3.0},
};

/* m of a player's way that lie within a foot and a half of the baseline's line. */
static double metres_low(int player)
{
    const struct segment *segment = told_segment(&told, 0, -1);
    double low = 0;
    struct vec2 before = segment_at(segment, body_attacker(player), 0);
    for (int i = 1; i <= 400; i++) {
        struct vec2 at = segment_at(segment, body_attacker(player), i * segment->duration / 400);
        low += at.y < -.75 * FEET ? vec2_distance(before, at) : 0;
        before = at;
    }
    return low;
}

START_TEST(a_baseline_drive_runs_along_the_baseline_and_turns_in)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Millrace\"\n  start 1 top, %s, 3 nail, 4 left slot, 5 right slot\n"
                 "  ball 2\n  defense man\n  %s\n",
                 drives[_i].start, drives[_i].drive);
    told_run(&told, strbuf_str(&text).at);
    double low = metres_low(2);
    ck_assert_msg(low > drives[_i].on, "%s, %s: %.2f m", drives[_i].start, drives[_i].drive, low);
}
END_TEST

START_TEST(who_flashes_to_the_foul_line_ends_at_its_middle)
{
    static const char *const starts[] = {"4 right block", "4 left short corner", "4 right corner"};
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Millrace\"\n  start 1 top, 2 right wing, 3 left wing, %s, 5 left corner\n"
                 "  ball 1\n  4 flashes to the free-throw line\n  1 passes to 4\n",
                 starts[_i]);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    struct vec2 at = at_end(0, 4);
    ck_assert_msg(fabs(at.x) < .4, "%s: %.2f off the middle", starts[_i], at.x);
}
END_TEST

START_TEST(two_who_go_to_the_foul_line_stand_apart_on_it)
{
    told_run(&told, "play \"Millrace\"\n"
                    "  start 1 top, 2 right wing, 3 left wing, 4 left block, 5 right block\n"
                    "  ball 1\n  4 and 5 flash to the free-throw line\n");
    ck_assert_double_gt(vec2_distance(at_end(0, 4), at_end(0, 5)), 2);
}
END_TEST

START_TEST(who_is_dribbled_at_goes_backdoor_as_the_dribbler_comes_near)
{
    told_run(&told, "play \"Millrace\"\n  start five-out\n  ball 1\n  defense man\n"
                    "  1 dribbles at 2\n  2 back cuts\n");
    told_is_sound(&told);
    const struct segment *segment = told_segment(&told, 0, -1);
    double cut = told_time(segment, 1, MOMENT_STARTED);
    double far = vec2_distance(segment_at(segment, body_attacker(1), cut),
                               segment_at(segment, body_attacker(2), cut));
    ck_assert_double_gt(cut, told_time(segment, 0, MOMENT_STARTED) + .3);
    ck_assert_double_gt(far, 2);
    ck_assert_double_lt(far, 3.05);
}
END_TEST

/* By hand, and not by `mirrors`: what breaks a tie is on the floor, and not in the program. */
START_TEST(who_chases_a_back_cut_does_so_alike_on_both_sides)
{
    static const char *const text =
        "play \"Millrace\"\n"
        "  start 1 top, 2 %s wing, 3 %s wing, 4 %s corner, 5 %s corner\n"
        "  ball 1\n  defense man\n  1 dribbles at 2\n  2 back cuts\n  1 passes to 2\n";
    static struct told other;
    told_run(&told, str_format(&arena, text, "right", "left", "right", "left").at);
    told_run(&other, str_format(&arena, text, "left", "right", "left", "right").at);
    told_is_sound(&told);
    runs_are_mirrors(told.run, other.run);
}
END_TEST

START_TEST(a_back_cut_for_a_pass_waits_until_its_passer_has_the_ball)
{
    told_run(&told, "play \"Millrace\"\n  start horns\n  ball 1\n  defense man\n"
                    "  1 passes to 4\n  4 passes to 5\n  3 back cuts\n  5 passes to 3\n");
    const struct segment *segment = told_segment(&told, 0, -1);
    ck_assert_double_ge(told_time(segment, 2, MOMENT_STARTED),
                        told_time(segment, 1, MOMENT_CAUGHT) - 1e-9);
    ck_assert_double_lt(told_time(segment, 3, MOMENT_RELEASED),
                        told_time(segment, 2, MOMENT_ARRIVED) + .2);
    told_run(&told, "play \"Millrace\"\n  start horns\n  ball 1\n  defense man\n"
                    "  1 passes to 4\n  4 passes to 5\n  at 0.2 s, 3 back cuts\n"
                    "  5 passes to 3\n");
    ck_assert_double_lt(told_time(told_segment(&told, 0, -1), 2, MOMENT_STARTED), .3);
}
END_TEST

START_TEST(who_breaks_to_the_corner_for_a_throw_in_takes_the_corner_there)
{
    told_run(&told, "play \"Millrace\"\n  start press break\n  defense press 2-2-1\n"
                    "  ball 4\n  1 breaks to the right corner\n  4 inbounds to 1\n");
    told_says(&told, "text.place-taken", "the backcourt corner");
    ck_assert_double_gt(at_end(0, 1).y, told.play->court->half_court);
    ck_assert_double_gt(at_end(0, 1).x, 3);
    told_run(&told, "play \"Millrace\"\n  start press break\n  defense press 2-2-1\n"
                    "  ball 4\n  4 inbounds to 1\n  then 2 goes to the right corner\n");
    ck_assert_double_lt(at_end(0, 2).y, told.play->court->half_court);
}
END_TEST

START_TEST(a_cutter_is_passed_to_in_stride)
{
    told_run(&told, "play \"Millrace\"\n  start five-out\n  ball 1\n"
                    "  3 cuts to the rim\n  1 passes to 3\n");
    told_is_sound(&told);
    const struct segment *segment = told_segment(&told, 0, -1);
    double caught = told_time(segment, 1, MOMENT_CAUGHT);
    ck_assert_double_gt(vec2_length(segment_velocity(segment, body_attacker(3), caught)), 1.5);
    ck_assert_double_lt(vec2_length(segment_at(segment, body_attacker(3), caught)), 2.2);
}
END_TEST

START_TEST(who_uses_a_screen_next_runs_through_the_border)
{
    told_run(&told, "play \"Millrace\"\n"
                    "  start 1 top, 2 right wing, 3 right corner, 4 left corner, 5 left block\n"
                    "  defense man\n  step\n    5 screens for 3 at (-5, 9)\n"
                    "    3 runs to left block\n  step\n    3 comes off 5 to left wing\n");
    told_is_sound(&told);
    const struct segment *first = told_segment(&told, 0, -1), *second = told_segment(&told, 1, -1);
    double speed = vec2_length(segment_velocity(first, body_attacker(3), first->duration));
    ck_assert_double_gt(speed, 1.5);
    for (double t = 0; t < .6; t += .1) {
        ck_assert_double_gt(vec2_length(segment_velocity(second, body_attacker(3), t)), 1.0);
    }
}
END_TEST

/* m that the user passed the screener on the side of `from` when he was nearest. */
static double passed_on_side(const struct segment *segment, size_t use, struct vec2 side)
{
    double nearest = 99, on = 0, end = told_time(segment, use, MOMENT_ARRIVED);
    for (double t = told_time(segment, use, MOMENT_STARTED); t < end; t += .02) {
        struct vec2 off = vec2_sub(segment_at(segment, body_attacker(3), t),
                                   segment_at(segment, body_attacker(5), t));
        if (vec2_length(off) < nearest) {
            nearest = vec2_length(off);
            on = vec2_dot(off, side);
        }
    }
    return on;
}

START_TEST(a_curl_that_hardly_turns_goes_by_the_near_side)
{
    bool other = _i == 1;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Lantern\"\n  start 1 top, 2 %s wing, 3 %s short corner, 4 %s corner, "
                 "5 %s elbow\n  defense man gap\n  step\n    3 sets up toward the rim\n"
                 "    5 down screens for 3\n    read x3 trails \"Curl\"\n"
                 "      3 curls off 5 to the nail\n",
                 other ? "left" : "right", other ? "right" : "left", other ? "left" : "right",
                 other ? "right" : "left");
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    struct vec2 out = vec2_of(other ? 1 : -1, 1); /* away from the rim */
    ck_assert_double_gt(passed_on_side(told_segment(&told, 0, 0), 2, out), .3);
}
END_TEST

/* ---- who throws in ---- */

static const char *const thrown[] = {
    "    3 inbounds to 1\n    3 cuts to left corner\n",
    "    3 inbounds to 1\n    5 screens for 3\n    3 comes off 5 to left wing\n",
    "    3 inbounds to 1\n    then 3 cuts to the rim\n  step\n    1 passes to 2\n",
    "    3 inbounds to 1\n  step\n    5 and 4 screen for 3\n    3 comes off 5 and 4 to left wing\n",
};

START_TEST(who_has_thrown_in_comes_in_at_once)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Sandbar\"\n  start baseline inbounds box\n  defense man\n  step\n"
                 "    1 v-cuts to top\n%s",
                 thrown[_i]);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    const struct segment *segment = told_segment(&told, 0, -1);
    double thrown_at = told_time(segment, 1, MOMENT_RELEASED);
    for (double t = thrown_at + .9; t < segment->duration; t += .05) {
        struct vec2 at = segment_at(segment, body_attacker(3), t);
        ck_assert_msg(court_inside(told.play->court, at, 0), "%.2f s after: %.2f, %.2f",
                      t - thrown_at, at.x, at.y);
    }
}
END_TEST

/* ---- seals ---- */

/* How far the defender stands toward the ball from his man, m. */
static double ballward(const struct segment *segment, int man, double t)
{
    struct vec2 at = segment_at(segment, body_attacker(man), t);
    struct vec2 off = vec2_sub(segment_at(segment, body_defender(man), t), at);
    return vec2_dot(off, vec2_unit(vec2_sub(segment_ball(segment, t), at)));
}

static const char *const seals[] = {
    "start 1 right wing, 2 top, 3 left wing, 4 left corner, 5 right block\ndefense man\n",
    "start 1 left wing, 2 top, 3 right wing, 4 right corner, 5 left mid post\ndefense man deny\n",
    "start 1 right corner, 2 top, 3 left wing, 4 left corner, 5 right block\ndefense man sag\n",
};

START_TEST(who_seals_has_his_defender_on_his_back)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "%sstep\n  5 seals\nstep\n  2 fills 2's spot\n", seals[_i]);
    told_run(&told, strbuf_str(&text).at);
    const struct segment *segment = told_segment(&told, 0, -1);
    double set = told_time(segment, 0, MOMENT_ARRIVED);
    for (double t = set + .3; t < segment->duration; t += .1) {
        ck_assert_double_lt(ballward(segment, 5, t), -.3);
    }
    const struct segment *next = told_segment(&told, 1, -1); /* he holds him */
    ck_assert_double_lt(ballward(next, 5, next->duration), -.3);
    /* without a word the defender is on the ball's side of him */
    strbuf_init(&text, &arena);
    strbuf_print(&text, "%sstep\n  5 stays\n", seals[_i]);
    told_run(&told, strbuf_str(&text).at);
    ck_assert_double_gt(ballward(told_segment(&told, 0, -1), 5, .2), -.3);
}
END_TEST

START_TEST(the_pass_to_a_seal_goes_to_the_open_hand)
{
    told_run(&told, "start 1 right wing, 2 top, 3 left wing, 4 left corner, 5 right block\n"
                    "defense man\n5 seals\nthen 1 passes to 5\nas 5 catches, 5 holds for 1 s\n");
    told_is_sound(&told);
    const struct segment *segment = told_segment(&told, 0, -1);
    double caught = told_time(segment, 1, MOMENT_CAUGHT);
    struct vec2 to = segment_span(segment, caught - .01)->end;
    struct vec2 at = segment_at(segment, body_attacker(5), caught);
    struct vec2 guard = segment_at(segment, body_defender(5), caught);
    ck_assert_double_gt(vec2_distance(to, guard), vec2_distance(at, guard) + .2);
    told_run(&told, "start 1 right wing, 2 top, 3 left wing, 4 left corner, 5 right block\n"
                    "defense man\n5 seals\nthen 1 passes to 5\n5 drives to the rim\n");
    told_is_sound(&told); /* and then he is free to go */
}
END_TEST

/* The ball begins in the corner, and comes to him from the nail. */
#define HIGH_LOW                                                                                   \
    "start 1 left slot, 2 right wing, 3 the nail, 4 right corner, 5 right block\nball 4\n"         \
    "defense zone 2-3\nlevel %s\n4 passes to 2\n2 passes to 3\n5 seals\n3 passes to 5\n5 shoots\n"

static const char *const feeds[] = {"u16", "varsity girls", "u12", "professional men"};

START_TEST(who_is_to_be_fed_from_above_seals_toward_there_and_not_toward_the_baseline)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, HIGH_LOW, feeds[_i]);
    told_run(&told, strbuf_str(&text).at);
    const struct segment *segment = told_segment(&told, 0, -1);
    double sealed = told_time(segment, 2, MOMENT_STARTED);
    ck_assert_double_ge(sealed, told_time(segment, 1, MOMENT_RELEASED)); /* not before */
    struct vec2 from = segment_at(segment, body_attacker(5), sealed);
    struct vec2 to = segment_at(segment, body_attacker(5), told_time(segment, 3, MOMENT_CAUGHT));
    struct vec2 nail = segment_at(segment, body_attacker(3), sealed);
    ck_assert_double_lt(vec2_distance(to, nail), vec2_distance(from, nail) - .3);
    ck_assert_double_gt(to.y, .45);
}
END_TEST

START_TEST(a_seal_that_the_feeders_own_catch_waits_for_waits_for_nothing)
{
    told_run(&told, "start 1 left slot, 2 right wing, 3 the nail, 4 right corner, 5 right block\n"
                    "ball 2\ndefense man\nafter 5 seals, 2 passes to 3\n5 seals\n3 passes to 5\n");
    told_is_sound(&told);
}
END_TEST

START_TEST(a_use_that_ends_where_it_begins_is_said)
{
    told_run(&told, "start 1 top, 2 right corner, 3 left corner, 4 right wing, 5 left elbow\n"
                    "5 screens for 3\n3 curls off 5 to left corner\n");
    told_says(&told, "play.nowhere", "3 is there already");
}
END_TEST

START_TEST(who_screens_for_him_twice_goes_the_second_time_when_the_ball_is_thrown_to_him)
{
    told_run(&told, "start 1 top, 2 right wing, 3 left wing, 4 left elbow, 5 right elbow\n"
                    "defense man\n5 and 4 screen for 2\n2 comes off 5 and 4 to left wing\n"
                    "3 clears to left corner\n1 passes to 2\n4 ball screens for 2\n"
                    "2 drives off 4 to the rim\n4 rolls\n");
    told_is_sound(&told);
    const struct segment *way = told_segment(&told, 0, -1);
    double released = told_time(way, 4, MOMENT_RELEASED), set = told_time(way, 5, MOMENT_SET);
    ck_assert_double_ge(told_time(way, 5, MOMENT_STARTED), released);
    ck_assert_double_gt(told_time(way, 5, MOMENT_USED), set + .3);
    ck_assert_double_gt(told_time(way, 6, MOMENT_STARTED), set + .1);
    /* on the side of the drive, not of the first use */
    struct vec2 user = segment_at(way, body_attacker(2), set);
    ck_assert_double_lt(vec2_length(segment_at(way, body_attacker(4), set)), vec2_length(user));
    ck_assert_double_gt(told_time(way, 7, MOMENT_STARTED), told_time(way, 5, MOMENT_USED));
}
END_TEST

START_TEST(a_screen_on_the_ball_is_not_set_before_it_is_thrown_to_its_user)
{
    told_run(&told, "start sideline inbounds\ndefense man\n5 screens for 2\n"
                    "2 comes off 5 to right wing\n3 inbounds to 2\n4 screens for 2\n"
                    "2 drives off 4 to the rim\n");
    const struct segment *way = told_segment(&told, 0, -1);
    ck_assert_double_ge(told_time(way, 3, MOMENT_STARTED), told_time(way, 2, MOMENT_RELEASED));
    double set = told_time(way, 3, MOMENT_SET);
    ck_assert_double_lt(vec2_distance(segment_at(way, body_attacker(4), set),
                                      segment_at(way, body_attacker(2), set)),
                        2.2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("cutters");
    TCase *all = tcase_create("cutters");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_cut_to_the_rim_ends_in_front_of_it, 0,
                        (int)(sizeof cuts / sizeof *cuts));
    tcase_add_loop_test(all, who_goes_along_a_line_is_on_it_most_of_his_way, 0,
                        sizeof lines / sizeof *lines);
    tcase_add_loop_test(all, a_baseline_drive_runs_along_the_baseline_and_turns_in, 0,
                        sizeof drives / sizeof *drives);
    tcase_add_loop_test(all, who_flashes_to_the_foul_line_ends_at_its_middle, 0, 3);
    tcase_add_test(all, two_who_go_to_the_foul_line_stand_apart_on_it);
    tcase_add_test(all, who_is_dribbled_at_goes_backdoor_as_the_dribbler_comes_near);
    tcase_add_test(all, who_chases_a_back_cut_does_so_alike_on_both_sides);
    tcase_add_test(all, a_back_cut_for_a_pass_waits_until_its_passer_has_the_ball);
    tcase_add_test(all, who_breaks_to_the_corner_for_a_throw_in_takes_the_corner_there);
    tcase_add_test(all, a_cutter_is_passed_to_in_stride);
    tcase_add_test(all, who_uses_a_screen_next_runs_through_the_border);
    tcase_add_loop_test(all, a_curl_that_hardly_turns_goes_by_the_near_side, 0, 2);
    tcase_add_loop_test(all, who_has_thrown_in_comes_in_at_once, 0,
                        (int)(sizeof thrown / sizeof *thrown));
    tcase_add_loop_test(all, who_seals_has_his_defender_on_his_back, 0,
                        (int)(sizeof seals / sizeof *seals));
    tcase_add_test(all, the_pass_to_a_seal_goes_to_the_open_hand);
    tcase_add_loop_test(all,
                        who_is_to_be_fed_from_above_seals_toward_there_and_not_toward_the_baseline,
                        0, (int)(sizeof feeds / sizeof *feeds));
    tcase_add_test(all, a_seal_that_the_feeders_own_catch_waits_for_waits_for_nothing);
    tcase_add_test(all, a_use_that_ends_where_it_begins_is_said);
    tcase_add_test(all,
                   who_screens_for_him_twice_goes_the_second_time_when_the_ball_is_thrown_to_him);
    tcase_add_test(all, a_screen_on_the_ball_is_not_set_before_it_is_thrown_to_its_user);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
