/* SPDX-License-Identifier: MIT */
/* trials: the same step again is the same step; the teams that are drawn; what counts as working.
 */
#include "judge/trials/trials.h"
#include "pipe.h"
#include "suite.h"

#include <math.h>
#include <string.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))

static const struct run *run_of(const char *text, size_t play)
{
    static struct piped piped;
    pipe_text(&arena, str_of(text), &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s", piped_said(&arena, &piped));
    return sim_run(&arena, &piped.sources, &piped.book->plays.at[play], &piped.diags);
}

#define LANTERN                                                                                    \
    "play \"Lantern\"\n"                                                                           \
    "  start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"             \
    "  defense man\n"                                                                              \
    "  step\n"                                                                                     \
    "    5 down screens for 3\n"                                                                   \
    "    read x3 trails\n"                                                                         \
    "      3 curls off 5 to the front of the rim\n"                                                \
    "      1 passes to 3\n"                                                                        \
    "    read x3 overplays\n"                                                                      \
    "      3 back cuts to the rim\n"                                                               \
    "      1 bounce passes to 3\n"                                                                 \
    "  step\n"                                                                                     \
    "    4 cuts to the right wing\n"                                                               \
    "    2 cuts to the top\n"

/* The second step begins while the first goes on. */
static const char overlap[] = "play \"Do not wait\"\n"
                              "  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left "
                              "elbow\n"
                              "  defense man\n"
                              "  step\n"
                              "    1 passes to 2\n"
                              "    5 down screens for 3\n"
                              "  step as 5 screens\n"
                              "    3 comes off 5 to left wing\n"
                              "    2 passes to 1\n"
                              "    then 1 passes to 3\n";

static void same_run(const struct segment *a, const struct segment *b)
{
    ck_assert_uint_eq(a->samples, b->samples);
    ck_assert_double_eq(a->duration, b->duration);
    for (int who = 0; who < BODY_COUNT; who++) {
        for (size_t i = 0; a->track[who].sample && i < a->samples; i++) {
            ck_assert_mem_eq(&a->track[who].sample[i], &b->track[who].sample[i],
                             sizeof(struct sample));
        }
    }
    ck_assert_uint_eq(a->tasks, b->tasks);
    for (size_t i = 0; i < a->tasks; i++) {
        ck_assert_mem_eq(a->record[i].time, b->record[i].time, sizeof a->record[i].time);
    }
}

START_TEST(a_step_run_again_by_the_same_players_is_the_same_to_the_last_bit)
{
    const char *texts[] = {LANTERN, overlap};
    const struct run *run = run_of(texts[_i], 0);
    struct level levels[BODY_COUNT];
    ck_assert_uint_ge(run->segments.count, 2);
    for (int b = 0; b < BODY_COUNT; b++) {
        levels[b] = *run->play->speed;
    }
    for (int twice = 0; twice < 2; twice++) { /* nothing of the first time is left */
        for (size_t s = 0; s < run->segments.count; s++) {
            same_run(run->segments.at[s], sim_again(&arena, run->segments.at[s], levels));
        }
    }
}
END_TEST

START_TEST(faster_players_are_through_sooner)
{
    const struct run *run = run_of(LANTERN, 0);
    struct level levels[BODY_COUNT];
    for (int b = 0; b < BODY_COUNT; b++) {
        levels[b] = *run->play->speed;
        levels[b].sprint *= 1.15;
    }
    const struct segment *segment = run->segments.at[2];
    const struct segment *again = sim_again(&arena, segment, levels);
    ck_assert_double_lt(again->record[0].time[MOMENT_ARRIVED] + .02,
                        segment->record[0].time[MOMENT_ARRIVED]);
}
END_TEST

/* Normal, 8 % on speeds, 20 % on reaction, cut off at two deviations: then the deviation of what is
 * drawn is .9594 of the whole one (any table of the normal distribution: winsorized at 2). */
START_TEST(drawn_levels_are_spread_as_they_say)
{
    enum { DRAWN = 400 };
    const struct level *level = level_of(LEVEL_U16_GIRLS);
    struct level drawn[BODY_COUNT];
    double speed = 0, speed2 = 0, eye = 0, eye2 = 0, both = 0, count = DRAWN * BODY_COUNT;
    for (int number = 0; number < DRAWN; number++) {
        trial_levels(level, 1, -1, number, drawn);
        for (int b = 0; b < BODY_COUNT; b++) {
            double s = drawn[b].sprint / level->sprint - 1,
                   e = drawn[b].reaction / level->reaction - 1;
            ck_assert_double_le(fabs(s), .16 + 1e-12);
            ck_assert_double_le(fabs(e), .40 + 1e-12);
            CLOSE(drawn[b].slide / level->slide - 1, s, 1e-12);
            speed += s;
            speed2 += s * s;
            eye += e;
            eye2 += e * e;
            both += s * e;
            ck_assert_double_eq(drawn[b].height, level->height);
        }
    }
    CLOSE(speed / count, 0, 3 * .08 / sqrt(count));
    CLOSE(eye / count, 0, 3 * .20 / sqrt(count));
    CLOSE(sqrt(speed2 / count), .9594 * .08, .002);
    CLOSE(sqrt(eye2 / count), .9594 * .20, .005);
    CLOSE(both / count, 0, 4 * .08 * .20 / sqrt(count)); /* who is fast need not be quick */
}
END_TEST

START_TEST(every_trial_has_its_own_team_and_keeps_it)
{
    const struct level *level = level_of(LEVEL_U16_GIRLS);
    struct level one[BODY_COUNT], again[BODY_COUNT], other[BODY_COUNT];
    const int others[][3] = {{0, -1, 8}, {1, -1, 7}, {0, 0, 7}};
    trial_levels(level, 0, -1, 7, one);
    trial_levels(level, 0, -1, 7, again);
    ck_assert_mem_eq(one, again, sizeof one);
    for (size_t i = 0; i < 3; i++) {
        trial_levels(level, others[i][0], others[i][1], others[i][2], other);
        ck_assert_double_ne(one[0].sprint, other[0].sprint);
    }
}
END_TEST

static struct tolerance tried(const struct segment *segment, bool backwards)
{
    struct trial *trials = arena_array(&arena, struct trial, TRIALS);
    for (int i = 0; i < TRIALS; i++) {
        int number = backwards ? TRIALS - 1 - i : i;
        trials[number].spare = arena_array(&arena, double, segment->tasks + 1);
        trial_run(&arena, segment, number, &trials[number]);
    }
    return tolerance_of(&arena, segment, trials, TRIALS);
}

static void same_tolerance(const struct tolerance *a, const struct tolerance *b)
{
    ck_assert_int_eq(a->works, b->works);
    ck_assert_int_eq(a->tightest, b->tightest);
    ck_assert_double_eq(a->spare, b->spare);
    ck_assert_int_eq(a->trouble, b->trouble);
    ck_assert_int_eq(a->task, b->task);
    ck_assert_int_eq(a->times, b->times);
    ck_assert_int_eq(a->by, b->by);
}

START_TEST(the_order_of_the_trials_is_no_matter)
{
    const struct run *run = run_of(LANTERN, 0);
    struct tolerance one = tried(run->segments.at[0], false),
                     other = tried(run->segments.at[0], true);
    same_tolerance(&one, &other);
}
END_TEST

START_TEST(a_mirrored_play_has_the_same_tolerance)
{
    const char text[] = LANTERN "play \"Lantern left\" mirrors \"Lantern\"\n";
    for (size_t s = 0; s < 2; s++) {
        struct tolerance one = tried(run_of(text, 0)->segments.at[s], false),
                         other = tried(run_of(text, 1)->segments.at[s], false);
        same_tolerance(&one, &other);
    }
}
END_TEST

#define NOBODY_NEAR                                                                                \
    "play \"Tollgate\"\n"                                                                          \
    "  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left block\n"                   \
    "  defense none\n"                                                                             \
    "  step\n"

START_TEST(a_pass_that_nobody_can_reach_works_every_time)
{
    const struct run *run = run_of(NOBODY_NEAR "    1 passes to 2\n", 0);
    struct tolerance found = tried(run->segments.at[0], false);
    ck_assert(trial_has_timing(run->segments.at[0]));
    ck_assert_int_eq(found.works, TRIALS);
    ck_assert_int_eq(found.tightest, -1);
    ck_assert_int_eq(found.trouble, TRIAL_WORKS);
}
END_TEST

START_TEST(a_step_without_pass_or_screen_has_nothing_to_be_late)
{
    const struct run *run = run_of(NOBODY_NEAR "    2 cuts to the rim\n", 0);
    ck_assert(!trial_has_timing(run->segments.at[0]));
}
END_TEST

/* x3 goes with his man across the way of a pass that leaves at its own time: before he is there and
 * after he is through it always comes, between the two sometimes. */
START_TEST(a_defender_who_crosses_the_lane_gets_some_of_the_passes)
{
    static const char format[] = "units metres\n"
                                 "play \"Tollgate\"\n"
                                 "  rules fiba\n"
                                 "  level u16 girls\n"
                                 "  start 1 (-4, 7), 2 (4, 7), 3 (0, 11), 4 right corner, 5 left "
                                 "corner\n"
                                 "  defense man\n"
                                 "  step\n"
                                 "    3 cuts to the rim\n"
                                 "    1 passes to 2 at %s s\n";
    static const char *const times[] = {"0.2", "0.7", "0.8", "0.9", "1", "1.1", "3"};
    enum { TIMES = sizeof times / sizeof *times };
    int between = 0;
    for (size_t i = 0; i < TIMES; i++) {
        struct strbuf text;
        strbuf_init(&text, &arena);
        strbuf_print(&text, format, times[i]);
        struct tolerance found = tried(run_of(text.at, 0)->segments.at[0], false);
        bool end = i == 0 || i + 1 == TIMES;
        ck_assert(!end || found.works == TRIALS);
        between += found.works > 0 && found.works < TRIALS;
        if (found.works < TRIALS) {
            ck_assert_int_eq(found.trouble, TRIAL_FOUND);
            ck_assert_str_eq(found.check->id, "pass.lane");
            ck_assert_int_eq(found.by, body_defender(3));
            ck_assert_int_eq(found.times, TRIALS - found.works);
        }
    }
    ck_assert_int_gt(between, 0);
}
END_TEST

/* x2 denies, and turns with 2: some of them are between 2 and the ball. */
START_TEST(a_defender_on_the_heels_of_the_receiver_gets_some_of_the_passes)
{
    const struct run *run = run_of("play \"Back cut\"\n  defense man deny\n"
                                   "  2 back cuts to the rim\n  1 bounce passes to 2\n",
                                   0);
    struct tolerance found = tried(run->segments.at[0], false);
    ck_assert_int_gt(found.works, 0);
    ck_assert_int_lt(found.works, TRIALS);
    ck_assert_str_eq(found.check->id, "pass.lane");
    ck_assert_int_eq(found.by, body_defender(2));
    ck_assert_int_eq(segment_task(run->segments.at[0], (size_t)found.tightest)->who,
                     body_attacker(2));
    ck_assert_int_eq(found.works >= TRIALS / 2, found.spare >= 0);
}
END_TEST

/* The bad example of each check of passes and screens: what is warned of in the play goes wrong in
 * its trials; and what its coach accepts is not counted. */
static const char *const timed[] = {"pass.lane",     "screen.early",  "screen.gap",
                                    "screen.moving", "screen.nobody", "ball.handoff"};
enum { TIMED = sizeof timed / sizeof *timed };

START_TEST(a_step_that_is_warned_of_does_not_work)
{
    const char *text = check_find(str_of(timed[_i]))->bad;
    struct tolerance found = tried(run_of(text, 0)->segments.at[0], false);
    ck_assert_msg(found.works < TRIALS / 2 && found.check, "%s: %d", timed[_i], found.works);
    ck_assert_str_eq(found.check->id, timed[_i]);
    ck_assert_int_ge(found.example, 0);
}
END_TEST

START_TEST(what_is_accepted_does_not_count)
{
    const char *text = check_find(str_of(timed[_i]))->bad, *second = strchr(text, '\n') + 1;
    struct str accepted = str_format(&arena, "%.*s  accept %s \"on purpose\"\n%s",
                                     (int)(second - text), text, timed[_i], second);
    struct tolerance found = tried(run_of(accepted.at, 0)->segments.at[0], false);
    ck_assert_msg(found.works > TRIALS / 2, "%s: %d, %s", timed[_i], found.works,
                  found.check ? found.check->id : "");
}
END_TEST

/* He goes at his own time, and the screener is or is not there: both come out. */
START_TEST(a_use_at_its_own_time_is_too_early_for_some_screeners)
{
    static const char format[] =
        "play \"Lantern\"\n"
        "  start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 nail\n"
        "  defense man\n"
        "  step\n"
        "    5 down screens for 3\n"
        "    3 curls off 5 to the nail at %s s\n";
    static const char *const times[] = {"0.5", "2.3", "2.4", "2.5", "2.6", "2.7", "2.8", "4"};
    int least = TRIALS, most = 0, between = 0;
    for (size_t i = 0; i < sizeof times / sizeof *times; i++) {
        struct strbuf text;
        strbuf_init(&text, &arena);
        strbuf_print(&text, format, times[i]);
        struct tolerance found = tried(run_of(text.at, 0)->segments.at[0], false);
        least = found.works < least ? found.works : least;
        most = found.works > most ? found.works : most;
        between += found.works > 0 && found.works < TRIALS;
        if (found.works < TRIALS) {
            ck_assert_int_eq(found.trouble, TRIAL_FOUND);
            ck_assert_str_eq(found.check->id, "screen.early");
            ck_assert_int_eq(found.tightest, 0); /* the screen */
        }
    }
    ck_assert_int_eq(least, 0);
    ck_assert_int_eq(most, TRIALS);
    ck_assert_int_gt(between, 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("trials");
    TCase *all = tcase_create("trials");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_step_run_again_by_the_same_players_is_the_same_to_the_last_bit, 0,
                        2);
    tcase_add_test(all, faster_players_are_through_sooner);
    tcase_add_test(all, drawn_levels_are_spread_as_they_say);
    tcase_add_test(all, every_trial_has_its_own_team_and_keeps_it);
    tcase_add_test(all, the_order_of_the_trials_is_no_matter);
    tcase_add_test(all, a_mirrored_play_has_the_same_tolerance);
    tcase_add_test(all, a_pass_that_nobody_can_reach_works_every_time);
    tcase_add_test(all, a_step_without_pass_or_screen_has_nothing_to_be_late);
    tcase_add_test(all, a_defender_who_crosses_the_lane_gets_some_of_the_passes);
    tcase_add_test(all, a_defender_on_the_heels_of_the_receiver_gets_some_of_the_passes);
    tcase_add_loop_test(all, a_step_that_is_warned_of_does_not_work, 0, TIMED);
    /* not the last, which is an error: it cannot be accepted */
    tcase_add_loop_test(all, what_is_accepted_does_not_count, 0, TIMED - 1);
    tcase_add_test(all, a_use_at_its_own_time_is_too_early_for_some_screeners);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
