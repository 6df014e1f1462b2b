/* SPDX-License-Identifier: MIT */
/* Zones and presses on the clock: one on the ball, nobody faster than his legs, a man in an area, a
 * trap in the corner; from a coach's own words to the run. The bounds are ours. */
#include "floor_text.h"
#include "mirrors.h"

#include <math.h>

#include "base/real.h"
#include "base/rng.h"

#define AT_BALL 1.35  /* m: nearer than that a defender is on the ball */
#define HAND_OVER 1.0 /* s that two may be at it, one coming and one leaving */
#define GOES_BY 2.3   /* s of a dribble from one area through another's */
#define SEEDS 4
#define PASSES 7 /* a step: with nine some run over half a minute, which is an error; */
#define STEPS 5  /* of them, so that the ball goes about as much */

static struct ran ran;

static const struct segment *way_of(const char *text, int step, int branch)
{
    floor_text(&ran, str_of(text));
    ck_assert_msg(ran.run && ran.text.diags.errors == 0, "%s", floor_said(&ran));
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        const struct segment *segment = ran.run->segments.at[i];
        if (segment->step == step && segment->branch == branch) {
            ck_assert_msg(segment->ran, "%s", floor_said(&ran));
            return segment;
        }
    }
    ck_abort_msg("no such way");
    return NULL;
}

static struct vec2 defender_at(const struct segment *segment, int number, double t)
{
    return segment_at(segment, body_defender(number), t);
}

/* ---- a ball that goes about at random ---- */

static const char *const spots[] = {"top",         "right slot",   "left slot",   "right wing",
                                    "left wing",   "right corner", "left corner", "nail",
                                    "right block", "left block"};
enum { SPOTS = 10 };

struct floor_now {
    struct rng rng;
    int stands[5]; /* on which spot each stands */
    int holder;
};

static int free_spot(struct floor_now *floor)
{
    for (;;) {
        int spot = (int)rng_below(&floor->rng, SPOTS);
        bool taken = false;
        for (int i = 0; i < 5; i++) {
            taken |= floor->stands[i] == spot;
        }
        if (!taken) {
            return spot;
        }
    }
}

/* About 15 s of passes, with a dribble or a wait between them. */
static void write_step(struct strbuf *out, struct floor_now *floor)
{
    strbuf_text(out, "  step\n");
    for (int i = 0; i < PASSES; i++) {
        int to = (int)rng_below(&floor->rng, 4);
        to += to >= floor->holder;
        switch (rng_below(&floor->rng, 4)) {
        case 0:
            floor->stands[floor->holder] = free_spot(floor);
            strbuf_print(out, "    %d dribbles to %s\n", floor->holder + 1,
                         spots[floor->stands[floor->holder]]);
            break;
        case 1:
            strbuf_print(out, "    %d holds for 1 s\n", floor->holder + 1);
            break;
        default:
            break;
        }
        strbuf_print(out, "    %d passes to %d\n", floor->holder + 1, to + 1);
        floor->holder = to;
    }
}

static const char *random_play(enum zone zone, int seed)
{
    struct floor_now floor = {.stands = {0, 3, 4, 5, 6}};
    struct strbuf out;
    rng_seed(&floor.rng, (uint64_t)seed);
    strbuf_init(&out, &arena);
    strbuf_print(&out, "play \"Random\"\n  defense %s\n  start five-out\n",
                 zone_row(zone)->setting);
    for (int step = 0; step < STEPS; step++) {
        write_step(&out, &floor);
    }
    strbuf_char(&out, 0);
    return strbuf_str(&out).at;
}

/* How many defenders are at the ball while somebody has it; a row that wants two is let be. */
static int at_ball(const struct segment *segment, double t)
{
    const struct play *play = segment->play;
    body holder = segment_holder(segment, t);
    if (holder == BODY_NONE) {
        return 0;
    }
    struct vec2 ball = segment_at(segment, holder, t);
    struct zone_home home[ZONE_DEFENDERS];
    zone_homes(play->court, play->zone, ball, false, play->mirrored, home);
    int count = 0;
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        bool sent = home[k].above + home[k].trap > .2 || zone_is_man(play->zone, k);
        count += !sent && vec2_distance(defender_at(segment, k + 1, t), ball) < AT_BALL;
    }
    return count;
}

struct longest { /* s with two at the ball: a ball that stands, and one that is dribbled past them
                  */
    double still, moving;
};

static void hold_against(const struct segment *segment, double *clock, struct longest *longest)
{
    struct longest now = {0, 0};
    for (double t = 0; t < segment->duration; t += RUN_SAMPLE) {
        for (int k = 1; k <= ZONE_DEFENDERS; k++) {
            double speed = vec2_length(segment_velocity(segment, body_defender(k), t));
            ck_assert_double_le(speed, segment->play->speed->sprint + .02);
        }
        body holder = segment_holder(segment, t);
        bool two = at_ball(segment, t) > 1;
        bool still = holder != BODY_NONE && vec2_length(segment_velocity(segment, holder, t)) < 1;
        now.moving = two ? now.moving + RUN_SAMPLE : 0;
        now.still = two && still ? now.still + RUN_SAMPLE : 0;
        longest->still = real_max(longest->still, now.still);
        longest->moving = real_max(longest->moving, now.moving);
    }
    *clock += segment->duration;
}

START_TEST(a_minute_of_ball_at_random_has_one_on_it_and_nobody_too_fast)
{
    enum zone zone = (enum zone)(ZONE_NONE + 1 + _i / SEEDS);
    double clock = 0;
    struct longest longest = {0, 0};
    floor_text(&ran, str_of(random_play(zone, _i)));
    ck_assert_msg(ran.run && ran.text.diags.errors == 0, "%s", floor_said(&ran));
    for (size_t i = 0; i < ran.run->segments.count; i++) {
        hold_against(ran.run->segments.at[i], &clock, &longest);
    }
    ck_assert_msg(clock > 45, "only %.1f s were run", clock);
    ck_assert_msg(longest.still <= HAND_OVER && longest.moving <= GOES_BY,
                  "%s, seed %d: two on the ball for %.2f s, on one that moves for %.2f s",
                  zone_row(zone)->setting, _i, longest.still, longest.moving);
}
END_TEST

/* ---- a zone at work ---- */

#define SWING                                                                                      \
    "  start 1 top, 2 right wing, 3 left wing, 4 left short corner, 5 nail\n"                      \
    "  step\n"                                                                                     \
    "    1 passes to 2\n"                                                                          \
    "    4 cuts to right short corner\n"                                                           \
    "    2 passes to 4\n"                                                                          \
    "    3 drifts to left corner\n"

START_TEST(the_low_man_has_the_wing_until_the_top_man_is_there)
{
    const struct segment *way = way_of("play \"Swing\"\n  defense zone 2-3\n"
                                       "  start 1 top, 2 right wing, 3 left wing, 4 left block, "
                                       "5 nail\n"
                                       "  1 passes to 2\n"
                                       "  2 holds for 3 s\n",
                                       0, -1);
    double caught = floor_moment(way, 0, MOMENT_CAUGHT);
    /* x4 comes up at once, x2 has further to go; then x2 has the ball and x4 is down again */
    ck_assert_double_lt(floor_off(way, 2, 4, caught + .5), floor_off(way, 2, 4, 0) - .6);
    ck_assert_double_lt(floor_off(way, 2, 2, caught + 1.8), AT_BALL);
    ck_assert_double_gt(floor_off(way, 2, 4, caught + 2.8), 2.2);
    struct vec2 x5 = defender_at(way, 5, caught + 2.5), x3 = defender_at(way, 3, caught + 2.5);
    ck_assert_double_gt(x5.x, .6); /* the middle has shifted, the far low man is by the lane */
    ck_assert_double_lt(x3.x, 0);
    ck_assert_double_gt(x3.x, -2.2);
}
END_TEST

START_TEST(a_skip_pass_is_closed_out_on)
{
    const struct segment *way = way_of("play \"Skip\"\n  defense zone 3-2\n  start five-out\n"
                                       "  1 passes to 2\n  2 skip passes to 5\n  5 holds for 2 s\n",
                                       0, -1);
    double caught = floor_moment(way, 1, MOMENT_CAUGHT), fastest = 0;
    for (double t = caught - .5; t < caught + 1; t += RUN_SAMPLE) {
        fastest = real_max(fastest, vec2_length(segment_velocity(way, body_defender(5), t)));
    }
    ck_assert_double_gt(floor_room(way, 5, caught), 2); /* the ball is quicker than he is */
    ck_assert_double_gt(fastest, .55 * way->play->speed->sprint);
    ck_assert_double_lt(floor_off(way, 5, 5, caught + 1.8), AT_BALL);
    for (double t = caught + 1.8; t < way->duration; t += RUN_SAMPLE) { /* and does not fly by */
        ck_assert_double_lt(floor_off(way, 5, 5, t), AT_BALL);
    }
}
END_TEST

START_TEST(a_screen_inside_is_set_on_the_defender_named)
{
    const struct segment *way =
        way_of("play \"Inside\"\n  defense zone 2-3\n" SWING "    5 screens for 3 on x2\n", 0, -1);
    int screen = floor_task(way, 5, TASK_SCREEN);
    const struct task_record *record = &way->record[screen];
    ck_assert_int_eq(record->defender, body_defender(2));
    ck_assert_double_ge(floor_moment(way, screen, MOMENT_SET), 0);
    ck_assert_double_lt(vec2_distance(record->to, record->on), 1.0);
}
END_TEST

START_TEST(a_screen_for_somebody_is_set_on_who_is_nearest_to_him)
{
    const struct segment *way = way_of("play \"Inside\"\n  defense zone 2-3\n"
                                       "  start 1 top, 2 right wing, 3 left wing, 4 left corner, "
                                       "5 left block\n"
                                       "  1 holds for 1 s\n  5 screens for 4\n",
                                       0, -1);
    int screen = floor_task(way, 5, TASK_SCREEN);
    ck_assert_int_eq(way->record[screen].defender, body_defender(3));
    ck_assert_double_ge(floor_moment(way, screen, MOMENT_SET), 0);
}
END_TEST

static double room_at_catch(const char *read)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Gap\"\n  defense zone 2-3\n"
                 "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left block\n"
                 "  step\n    1 passes to 2\n    2 passes to 1\n"
                 "    read %s \"Here\"\n      1 passes to 3\n"
                 "    read otherwise \"There\"\n      1 holds for 1 s\n",
                 read);
    strbuf_char(&text, 0);
    const struct segment *way = way_of(strbuf_str(&text).at, 0, 0);
    return floor_room(way, 3, floor_moment(way, 2, MOMENT_CAUGHT));
}

START_TEST(who_is_with_the_post_stays_until_his_man_is_there)
{
    const struct segment *way =
        way_of("play \"Post\"\n  defense zone 1-3-1\n  ball 3\n"
               "  start 1 top, 2 right wing, 3 left wing, 4 nail, 5 left block\n"
               "  3 holds for 1 s\n  3 passes to 5\n  5 holds for 1.5 s\n",
               0, -1);
    double caught = floor_moment(way, floor_task(way, 3, TASK_PASS), MOMENT_CAUGHT);
    for (double t = caught; t < way->duration; t += .1) {
        double nearest = real_min(floor_off(way, 5, 4, t), floor_off(way, 5, 5, t));
        ck_assert_double_lt(nearest, AT_BALL);
    }
    ck_assert_double_lt(floor_off(way, 5, 4, way->duration), AT_BALL);
}
END_TEST

START_TEST(who_closes_out_in_a_read_goes_when_the_ball_comes_and_the_post_is_not_left)
{
    const struct segment *way =
        way_of("play \"Inside\"\n  defense zone 2-3\n  ball 2\n"
               "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 right mid post\n"
               "  step\n    2 jabs\n    2 passes to 4\n    read x4 closes out \"Inside\"\n"
               "      4 passes to 5\n      5 holds for 1 s\n",
               0, 0);
    double thrown = floor_moment(way, floor_task(way, 2, TASK_PASS), MOMENT_RELEASED);
    double inside = floor_moment(way, floor_task(way, 4, TASK_PASS), MOMENT_CAUGHT);
    body x4 = body_defender(4);
    ck_assert_double_lt(
        vec2_distance(segment_at(way, x4, thrown), segment_at(way, x4, thrown - .3)), .3);
    double there = floor_moment(way, floor_task(way, 4, TASK_PASS), MOMENT_RELEASED);
    ck_assert_double_lt(floor_off(way, 4, 4, there), 5 * FEET);
    for (double t = inside; t < way->duration; t += .1) {
        ck_assert_double_lt(floor_off(way, 5, 5, t), 5 * FEET);
    }
}
END_TEST

START_TEST(the_middle_man_of_a_press_stays_with_who_catches_before_him)
{
    const struct segment *way =
        way_of("play \"Middle\"\n  start press break\n  ball 4\n  defense press 1-2-1-1\n"
               "  step\n    1 cuts to backcourt right corner\n    4 inbounds to 1\n"
               "  step\n    3 flashes to backcourt nail\n    1 passes to 3\n    3 holds for 1 s\n",
               1, -1);
    double caught = floor_moment(way, floor_task(way, 1, TASK_PASS), MOMENT_CAUGHT);
    for (double t = caught + .3; t < way->duration; t += .1) {
        ck_assert_double_lt(floor_room(way, 3, t), 6 * FEET);
        ck_assert(t > caught + .9 || floor_off(way, 3, 3, t) < 6 * FEET); /* until x1 is there */
    }
}
END_TEST

START_TEST(the_baseline_man_of_a_one_three_one_has_the_short_corner)
{
    const struct segment *way =
        way_of("play \"Short\"\n  defense zone 1-3-1\n  ball 2\n"
               "  start 1 left slot, 2 right slot, 3 left corner, 4 right short corner, 5 nail\n"
               "  step\n    2 passes to 4\n    4 holds for 2 s\n",
               0, -1);
    ck_assert_double_lt(floor_off(way, 4, 5, way->duration), AT_BALL);
}
END_TEST

START_TEST(who_is_open_denied_or_closed_out_on_in_a_read_is_so)
{
    double open = room_at_catch("3 is open"), denied = room_at_catch("3 is denied"),
           covered = room_at_catch("3 is covered");
    ck_assert_double_gt(open, 4 * FEET);
    ck_assert_double_lt(denied, open - .8);
    ck_assert_double_lt(covered, 4 * FEET);
    const struct segment *way = way_of("play \"Early\"\n  defense zone 2-3\n  start five-out\n"
                                       "  step\n    1 passes to 2\n"
                                       "    read x2 closes out \"Drive\"\n"
                                       "      2 holds for 2 s\n"
                                       "    read x4 closes out \"Swing\"\n"
                                       "      2 holds for 2 s\n",
                                       0, 1);
    double late = way->duration - .2;
    ck_assert_double_lt(floor_off(way, 2, 4, late), AT_BALL);
    ck_assert_double_gt(floor_off(way, 2, 2, late), AT_BALL);
}
END_TEST

START_TEST(a_defender_of_a_zone_may_be_told_and_goes_back)
{
    const struct segment *way = way_of("play \"Told\"\n  defense zone 2-3\n  start five-out\n"
                                       "  step\n    1 passes to 2\n    x3 denies 3\n"
                                       "    2 holds for 2 s\n"
                                       "  step\n    2 holds for 3 s\n",
                                       1, -1);
    ck_assert_double_lt(floor_off(way, 3, 3, 0), 2.0);                  /* he was out there */
    ck_assert_double_gt(floor_off(way, 3, 3, way->duration - .1), 3.0); /* and is home again */
}
END_TEST

/* ---- with a man ---- */

START_TEST(one_of_a_box_and_one_plays_the_man_he_is_given)
{
    const struct segment *way = way_of("play \"Box\"\n  defense box-and-one\n  x1 guards 3\n"
                                       "  start five-out\n"
                                       "  1 passes to 2\n  3 cuts to right corner past 4\n"
                                       "  4 clears to right short corner\n"
                                       "  2 passes to 3\n  3 holds for 1 s\n",
                                       0, -1);
    for (double t = .5; t < way->duration; t += .1) {
        ck_assert_double_lt(floor_off(way, 3, 1, t), 4.5);
    }
    double end = way->duration;
    ck_assert_double_lt(floor_off(way, 3, 1, end), AT_BALL);
    for (int k = 2; k <= 5; k++) { /* and the box leaves the ball to him */
        ck_assert_double_gt(floor_off(way, 3, k, end), AT_BALL);
    }
}
END_TEST

START_TEST(nobody_else_of_a_box_starts_on_the_ball_of_a_man_who_is_minded)
{
    const struct segment *way = way_of("play \"Box\"\n  defense box-and-one\n"
                                       "  start four-out one-in\n  1 holds for 2 s\n",
                                       0, -1);
    ck_assert_double_lt(floor_off(way, 1, 1, 0), AT_BALL);
    for (double t = 0; t < way->duration; t += .2) {
        for (int k = 2; k <= 5; k++) {
            ck_assert_double_gt(floor_off(way, 1, k, t), AT_BALL);
        }
    }
}
END_TEST

START_TEST(two_of_a_triangle_and_two_play_men_and_three_their_areas)
{
    const struct segment *way = way_of("play \"Triangle\"\n  defense triangle-and-two\n"
                                       "  start five-out\n  1 passes to 2\n  2 passes to 4\n"
                                       "  4 holds for 3 s\n",
                                       0, -1);
    double end = way->duration;
    ck_assert_double_lt(floor_off(way, 4, 4, end), AT_BALL); /* a corner of nobody's man */
    ck_assert_int_eq(way->play->guards[body_defender(2)], body_attacker(2));
    ck_assert_double_lt(floor_off(way, 2, 2, end), 3.5);
    ck_assert_double_lt(vec2_length(defender_at(way, 5, end)), 3);
}
END_TEST

/* ---- over the full floor ---- */

#define BREAK                                                                                      \
    "  start press break\n"                                                                        \
    "  step\n"                                                                                     \
    "    2 cuts to backcourt right corner\n"                                                       \
    "    4 inbounds to 2\n"                                                                        \
    "    2 holds for 2 s\n"                                                                        \
    "  step\n"                                                                                     \
    "    3 flashes to backcourt top\n"                                                             \
    "    2 passes to 3\n"                                                                          \
    "    1 cuts to left hash\n"                                                                    \
    "    3 passes to 1\n"                                                                          \
    "    1 dribbles to left wing\n"                                                                \
    "    1 holds for 3 s\n"

START_TEST(the_first_pass_into_the_corner_is_trapped)
{
    const struct segment *way = way_of("play \"Trap\"\n  defense press 1-2-1-1\n" BREAK, 0, -1);
    double end = way->duration, thrown = floor_moment(way, 1, MOMENT_RELEASED);
    ck_assert_double_lt(floor_off(way, 4, 1, thrown), AT_BALL); /* x1 on the thrower */
    ck_assert_double_lt(floor_off(way, 2, 1, end), AT_BALL);
    ck_assert_double_lt(floor_off(way, 2, 2, end), AT_BALL);
    for (int k = 3; k <= 5; k++) {
        ck_assert_double_gt(floor_off(way, 2, k, end), 3);
    }
    ck_assert_double_lt(defender_at(way, 5, end).y, way->play->court->half_court); /* the safety */
}
END_TEST

START_TEST(a_press_falls_back_once_the_ball_is_over_half_court)
{
    static const char *const presses[] = {"2-2-1", "1-2-1-1"};
    for (size_t i = 0; i < sizeof presses / sizeof *presses; i++) {
        const struct segment *way = way_of(
            str_format(&arena, "play \"Back\"\n  defense press %s\n" BREAK, presses[i]).at, 1, -1);
        for (int k = 1; k <= ZONE_DEFENDERS; k++) {
            ck_assert_double_lt(defender_at(way, k, way->duration).y, 7);
        }
        ck_assert_double_lt(floor_room(way, 1, way->duration), AT_BALL);
    }
}
END_TEST

START_TEST(a_two_two_one_stays_between_the_ball_and_the_basket)
{
    const struct segment *way = way_of("play \"Steer\"\n  defense press 2-2-1\n" BREAK, 0, -1);
    double end = way->duration;
    ck_assert_double_lt(floor_off(way, 2, 2, end), AT_BALL);
    struct vec2 ball = segment_at(way, body_attacker(2), end);
    for (int k = 1; k <= ZONE_DEFENDERS; k++) {
        ck_assert_double_lt(defender_at(way, k, end).y, ball.y + .3);
    }
    ck_assert_double_lt(defender_at(way, 5, end).y, 9);
}
END_TEST

START_TEST(a_man_press_is_on_everybody_from_the_throw_in_on)
{
    const struct segment *way = way_of("play \"Everybody\"\n  defense press man\n" BREAK, 0, -1);
    for (int n = 1; n <= 4; n++) {
        ck_assert_double_lt(floor_off(way, n, n, 0), n == 4 ? AT_BALL : 2.3);
    }
    struct vec2 x4 = defender_at(way, 4, 0);
    ck_assert(court_inside(way->play->court, x4, .1)); /* on the thrower, and on the floor */
    ck_assert_double_lt(floor_off(way, 2, 2, way->duration), AT_BALL);
}
END_TEST

/* ---- the other side ---- */

START_TEST(a_mirrored_play_against_a_zone_is_the_mirror_image)
{
    enum zone zone = (enum zone)(ZONE_NONE + 1 + _i);
    const char *lines = zone_row(zone)->press ? BREAK : SWING;
    floor_text(&ran, str_format(&arena,
                                "play \"Here\"\n  defense %s\n%s"
                                "play \"There\" mirrors \"Here\"\n",
                                zone_row(zone)->setting, lines));
    ck_assert_msg(ran.run && ran.text.diags.errors == 0, "%s", floor_said(&ran));
    const struct run *other =
        sim_run(&arena, &ran.text.sources, &ran.text.book->plays.at[1], &ran.text.diags);
    ck_assert(ran.text.book->plays.at[1].mirrored);
    runs_are_mirrors(ran.run, other);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("zones");
    TCase *all = tcase_create("zones");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, a_minute_of_ball_at_random_has_one_on_it_and_nobody_too_fast, 0,
                        SEEDS * (ZONE_COUNT - 1));
    tcase_add_test(all, the_low_man_has_the_wing_until_the_top_man_is_there);
    tcase_add_test(all, a_skip_pass_is_closed_out_on);
    tcase_add_test(all, a_screen_inside_is_set_on_the_defender_named);
    tcase_add_test(all, a_screen_for_somebody_is_set_on_who_is_nearest_to_him);
    tcase_add_test(all, the_middle_man_of_a_press_stays_with_who_catches_before_him);
    tcase_add_test(all, the_baseline_man_of_a_one_three_one_has_the_short_corner);
    tcase_add_test(all, who_is_with_the_post_stays_until_his_man_is_there);
    tcase_add_test(all, who_closes_out_in_a_read_goes_when_the_ball_comes_and_the_post_is_not_left);
    tcase_add_test(all, who_is_open_denied_or_closed_out_on_in_a_read_is_so);
    tcase_add_test(all, a_defender_of_a_zone_may_be_told_and_goes_back);
    tcase_add_test(all, one_of_a_box_and_one_plays_the_man_he_is_given);
    tcase_add_test(all, nobody_else_of_a_box_starts_on_the_ball_of_a_man_who_is_minded);
    tcase_add_test(all, two_of_a_triangle_and_two_play_men_and_three_their_areas);
    tcase_add_test(all, the_first_pass_into_the_corner_is_trapped);
    tcase_add_test(all, a_press_falls_back_once_the_ball_is_over_half_court);
    tcase_add_test(all, a_two_two_one_stays_between_the_ball_and_the_basket);
    tcase_add_test(all, a_man_press_is_on_everybody_from_the_throw_in_on);
    tcase_add_loop_test(all, a_mirrored_play_against_a_zone_is_the_mirror_image, 0, ZONE_COUNT - 1);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
