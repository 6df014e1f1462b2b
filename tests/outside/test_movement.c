/* SPDX-License-Identifier: MIT */
/* How the players of a run move, against what was measured of real ones. Each play here is written
 * and run as a coach's would be; the figures are read off its tracks. */
#include "pipe.h"
#include "suite.h"
#include "worked.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "floor/sim/sim.h"

static const struct segment *run_text(const char *format, const char *level)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, format, level);
    struct piped piped;
    pipe_text(&arena, str_of(text.at), &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s:%s", level, piped_said(&arena, &piped));
    const struct run *run = sim_run(&arena, &piped.sources, &piped.book->plays.at[0], &piped.diags);
    ck_assert(run->segments.count > 0 && run->segments.at[0]->ran);
    return run->segments.at[0];
}

/* Seconds at which the body has gone so far; the ticks between samples are a curve. */
static double time_at(const struct segment *segment, body who, double far)
{
    const double step = .005;
    double gone = 0;
    for (double t = step; t <= segment->duration; t += step) {
        double more =
            vec2_distance(segment_at(segment, who, t - step), segment_at(segment, who, t));
        if (gone + more >= far) {
            return t - step + step * (far - gone) / more;
        }
        gone += more;
    }
    ck_abort_msg("it never goes %.2f m", far);
    return 0;
}

#define SPRINT                                                                                     \
    "units metres\n"                                                                               \
    "play \"Sprint\"\n"                                                                            \
    "  rules fiba\n"                                                                               \
    "  level %s\n"                                                                                 \
    "  floor full\n"                                                                               \
    "  start 1 (0, 26.2), 2 right wing, 3 left wing, 4 right corner, 5 left corner\n"              \
    "  ball 2\n"                                                                                   \
    "  1 cuts to (0, -1.2), sprinting\n"

/* Gates start some 0.3 s after the first push (Vescovi & Jovanovic 2021, Front Sports Act Living
 * 3:629694), so a gate's time is the run's less that. Seconds, from..to at 5, 10, 20 m; 0: not
 * published. */
#define GATE .3
static const struct {
    const char *level;
    double low[3], high[3];
    const char *source;
} splits[] = {
    {"u14 girls", {1.20, 2.00, 3.53}, {1.23, 2.07, 3.60}, "Gryko et al. 2022, 904 girls of 13-15"},
    {"u16 girls",
     {1.109, 1.85, 3.289},
     {1.21, 2.05, 3.54},
     "between Gryko's girls of 15 and Freitas et al. 2022, elite women"},
    {"college women",
     {1.05, 1.85, 3.20},
     {1.13, 2.0, 3.31},
     "Freitas et al. 2022: football, handball and rugby women"},
    {"college men",
     {0, 1.80, 3.05},
     {0, 1.92, 3.24},
     "at least as quick as Giannakopoulos et al. 2026, experienced footballers"},
    {"u12", {1.25, 2.15, 3.75}, {1.35, 2.30, 4.0}, "typical of boys, remembered, no page seen"},
    {"u14 boys", {1.15, 1.95, 3.4}, {1.22, 2.10, 3.6}, "typical, remembered, no page seen"},
    {"u16 boys", {1.08, 1.85, 3.2}, {1.15, 1.95, 3.4}, "typical, remembered, no page seen"},
    {"u18 girls", {1.08, 1.85, 3.2}, {1.18, 2.0, 3.45}, "typical of women, remembered"},
    {"u18 boys", {1.02, 1.75, 3.0}, {1.11, 1.87, 3.2}, "typical, remembered; 1.10 and 1.85 there"},
    {"professional men", {1.0, 1.72, 2.95}, {1.1, 1.85, 3.15}, "typical, remembered"},
};

START_TEST(sprints_pass_the_gates_in_published_times)
{
    const struct segment *segment = run_text(SPRINT, splits[_i].level);
    static const double far[] = {5, 10, 20};
    for (int i = 0; i < 3; i++) {
        double gate = time_at(segment, body_attacker(1), far[i]) - GATE;
        ck_assert_msg(splits[_i].high[i] == 0 ||
                          (gate >= splits[_i].low[i] - .005 && gate <= splits[_i].high[i] + .005),
                      "%s, %.0f m: %.3f s, published %.2f to %.2f (%s)", splits[_i].level, far[i],
                      gate, splits[_i].low[i], splits[_i].high[i], splits[_i].source);
    }
}
END_TEST

/* 75 ft of a draft combine: 3.10 to 3.50 s by a gate (remembered, no page seen). */
START_TEST(three_quarters_of_the_floor_take_what_a_combine_shows)
{
    double gate = time_at(run_text(SPRINT, "professional men"), body_attacker(1), 22.86) - GATE;
    ck_assert_msg(gate >= 3.1 && gate <= 3.5, "%.2f s", gate);
}
END_TEST

/* Run from rest and brake to a stop, seconds at 2, 3, 4, 5, 6 m: worked out from the sprint law by
 * an independent program, reaction not in it. */
static const struct {
    const char *level;
    enum level_code code;
    double time[5];
} close_outs[] = {
    {"u12", LEVEL_U12, {1.38, 1.71, 2.00, 2.25, 2.49}},
    {"u14 boys", LEVEL_U14_BOYS, {1.30, 1.61, 1.88, 2.11, 2.33}},
    {"u16 boys", LEVEL_U16_BOYS, {1.26, 1.56, 1.82, 2.05, 2.26}},
    {"professional men", LEVEL_PROFESSIONAL_MEN, {1.18, 1.45, 1.69, 1.90, 2.10}},
};

START_TEST(the_law_of_a_close_out_gives_the_worked_out_times)
{
    const struct level *level = level_of(close_outs[_i].code);
    for (int i = 0; i < 5; i++) {
        double time = motion_rush(level->sprint, level->tau, level->brake, 2 + i);
        ck_assert_msg(
            real_max(time, close_outs[_i].time[i]) - real_min(time, close_outs[_i].time[i]) <= .012,
            "%s, %d m: %.3f s, not %.2f", close_outs[_i].level, 2 + i, time,
            close_outs[_i].time[i]);
    }
}
END_TEST

static double table_time(int row, double far)
{
    int i = far >= 5 ? 3 : far >= 4 ? 2 : far >= 3 ? 1 : 0;
    return real_mix(close_outs[row].time[i], close_outs[row].time[i + 1], far - 2 - i);
}

#define CLOSE_OUT(style, ball, pass)                                                               \
    "play \"Close out\"\n"                                                                         \
    "  level %s\n"                                                                                 \
    "  start five-out\n"                                                                           \
    "  ball " ball "\n"                                                                            \
    "  defense man " style "\n" pass
static const struct {
    const char *text;
    int receiver;
} throws[] = {
    {CLOSE_OUT("sag", "1", "  1 passes to 2\n  2 holds for 3 s\n"), 2},
    {CLOSE_OUT("gap", "3", "  3 skip passes to 2\n  2 holds for 3 s\n"), 2},
    {CLOSE_OUT("sag", "3", "  3 skip passes to 4\n  4 holds for 3 s\n"), 4},
};
struct rush {
    double start, stop, far; /* of the receiver's defender: seconds, and metres between */
};
static struct rush rush_of(const struct segment *segment, int receiver)
{
    body who = body_defender(receiver);
    struct vec2 end = segment_at(segment, who, segment->duration);
    struct rush rush = {-1, -1, 0};
    for (double t = 0; t <= segment->duration && rush.stop < 0; t += .01) {
        double speed = vec2_length(segment_velocity(segment, who, t));
        if (rush.start < 0 && speed > .2) {
            rush.start = t;
        }
        if (rush.start >= 0 && t > rush.start + .2 && speed < .3 &&
            vec2_distance(segment_at(segment, who, t), end) < .6) {
            rush.stop = t;
        }
    }
    ck_assert(rush.start >= 0 && rush.stop > rush.start);
    rush.far =
        vec2_distance(segment_at(segment, who, rush.start), segment_at(segment, who, rush.stop));
    return rush;
}

/* Nobody closes out sooner than legs allow, and nobody dawdles: the last short steps of the
 * textbook may cost up to 15 % (ours). */
START_TEST(a_close_out_of_the_run_takes_what_legs_need)
{
    for (size_t i = 0; i < sizeof throws / sizeof *throws; i++) {
        const struct segment *segment = run_text(throws[i].text, close_outs[_i].level);
        struct rush rush = rush_of(segment, throws[i].receiver);
        double least = table_time(_i, rush.far), took = rush.stop - rush.start;
        ck_assert_msg(took >= least - .05 && took <= 1.15 * least,
                      "%s, %.2f m: %.2f s, %.2f worked out", close_outs[_i].level, rush.far, took,
                      least);
    }
}
END_TEST

/* Trained adults answer a light in 0.20 to 0.25 s, children of 11 to 13 in 0.25 to 0.32, a choice
 * of two in 0.28 to 0.40 (common values, remembered): from the release of a pass to the defender's
 * first push; 0.05 s are what it takes to be seen moving at 0.2 m/s. */
START_TEST(a_defender_answers_a_pass_after_a_human_reaction)
{
    double before = 1;
    for (int row = 0; row < 4; row++) {
        const struct segment *segment = run_text(throws[0].text, close_outs[row].level);
        double wait = rush_of(segment, 2).start - segment->record[0].time[MOMENT_RELEASED];
        ck_assert_msg(wait >= .20 && wait <= .40 + .05, "%s: %.2f s", close_outs[row].level, wait);
        ck_assert_msg(wait <= before + 1e-9, "%s is slower than younger players",
                      close_outs[row].level);
        before = wait;
    }
}
END_TEST

struct speeds {
    double way, time;
};
static void add_body(const struct segment *segment, body who, double from, double to,
                     struct speeds *speeds)
{
    for (double t = from; t + RUN_SAMPLE <= to; t += RUN_SAMPLE) {
        speeds->way +=
            vec2_distance(segment_at(segment, who, t), segment_at(segment, who, t + RUN_SAMPLE));
    }
    speeds->time += to - from;
}

/* All ten all the time, and attackers while they are on a movement of their own. */
static void add_speeds(const struct segment *segment, struct speeds *all, struct speeds *active)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        if (segment->track[b].on_floor) {
            add_body(segment, (body)b, 0, segment->duration, all);
        }
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const double *time = segment->record[i].time;
        bool moves = task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE;
        if (moves && time[MOMENT_STARTED] >= 0 && time[MOMENT_ARRIVED] >= 0) {
            add_body(segment, task->who, time[MOMENT_STARTED], time[MOMENT_ARRIVED], active);
        }
    }
}

/* Live play: 5 to 6 km in 40 min is 2.08 to 2.50 m/s (Stojanovic et al. 2018, 25 studies); ten
 * players of one tracked possession had 2.01 to 3.00 m/s; league tracking means are 1.8 to 2.2
 * (remembered). Those count fast breaks and ways back and have no diagram's players who wait for
 * their turn, so the mean of all ten is printed beside them and only held to be lower; who is on a
 * movement of his own must be no slower than the least of a whole game, and stays within its most,
 * for his ways are short. */
START_TEST(players_on_the_move_are_about_as_fast_as_in_games)
{
    const struct worked_table *tables[] = {&worked_offense, &worked_defense, &worked_break};
    struct speeds all = {0, 0}, active = {0, 0};
    for (size_t k = 0; k < 3; k++) {
        for (size_t i = 0; i < tables[k]->count; i++) {
            struct piped piped;
            pipe_text(&arena, str_of(tables[k]->at[i].text), &piped);
            const struct run *run =
                sim_run(&arena, &piped.sources, &piped.book->plays.at[0], &piped.diags);
            for (size_t s = 0; s < run->segments.count; s++) {
                add_speeds(run->segments.at[s], &all, &active);
            }
        }
    }
    double mean = all.way / all.time, moving = active.way / active.time;
    printf("# written plays: attackers on a movement %.2f m/s, all ten all the time %.2f m/s; "
           "published for whole games 1.8 to 3.0 m/s\n",
           moving, mean);
    fflush(stdout);
    ck_assert_msg(moving >= 1.8 && moving <= 3.0, "%.2f m/s", moving);
    ck_assert_msg(mean > .3 && mean < 2.5, "%.2f m/s", mean);
}
END_TEST

/* 20 m with one cut at 15 m, 18 experienced footballers (Giannakopoulos et al. 2026, Biol Sport):
 * the second half took them 1.328 s straight, 1.573, 1.959 and 2.539 s with a cut of 45, 90 and 180
 * degrees. */
#define TURN(second)                                                                               \
    "units metres\n"                                                                               \
    "play \"Turn\"\n"                                                                              \
    "  rules fiba\n"                                                                               \
    "  level %s\n"                                                                                 \
    "  floor full\n"                                                                               \
    "  start 1 (-1, 26.2), 2 right wing, 3 left wing, 4 right corner, 5 left corner\n"             \
    "  ball 2\n" second
#define TO_CORNER "  1 cuts to (-1, 11.2), sprinting\n"
static const struct {
    const char *text;
    double published; /* s, from 10 to 20 m */
} turns[] = {
    {TURN("  1 cuts to (-1, 1.5), sprinting\n"), 1.328},
    {TURN(TO_CORNER "  1 cuts to (4.30, 5.90), sprinting\n"), 1.573},
    {TURN(TO_CORNER "  1 cuts to (6.50, 11.20), sprinting\n"), 1.959},
    {TURN(TO_CORNER "  1 cuts to (-1, 18.70), sprinting\n"), 2.539},
};

/* Within a tenth of theirs, and each dearer than the one before. */
START_TEST(a_cut_costs_what_was_measured_of_men_who_made_it)
{
    double before = 0;
    for (int i = 0; i < 4; i++) {
        const struct segment *segment = run_text(turns[i].text, "college men");
        double took =
            time_at(segment, body_attacker(1), 20) - time_at(segment, body_attacker(1), 10);
        double published = turns[i].published, off = took / published - 1;
        printf("# 10 to 20 m with cut %d: %.3f s, published %.3f s\n", i, took, published);
        ck_assert_msg(off >= -.1 && off <= .1, "%.3f s, published %.3f s", took, published);
        ck_assert_msg(took > before + .05, "%.3f s after %.3f s", took, before);
        before = took;
    }
    fflush(stdout);
}
END_TEST

#define CURL                                                                                       \
    "play \"Curl\"\n"                                                                              \
    "  level %s\n"                                                                                 \
    "  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left wing\n"                    \
    "  defense man\n"                                                                              \
    "  5 down screens for 3\n"                                                                     \
    "  3 curls off 5 to left block\n"

/* m/s^2 across the way, over a tenth of a second. */
static double sideways_at(const struct segment *segment, body who, double t)
{
    struct vec2 a = segment_velocity(segment, who, t - .05),
                b = segment_velocity(segment, who, t + .05);
    double speed = vec2_length(segment_velocity(segment, who, t));
    return speed > 1 ? fabs(vec2_cross(vec2_unit(a), b)) / .1 : 0;
}

/* A curve of radius R is run at no more than sqrt(a R), with a of 4 to 6 m/s^2 (engineering values,
 * no source). A curl goes round the screener on MOTION_CURL: there the user is no faster than 6
 * m/s^2 allow, and no slower than half of what 4 allow, for he has only just started; and nowhere
 * on his way do his feet hold more than 6 sideways. */
START_TEST(a_curl_is_run_as_fast_as_the_feet_hold)
{
    const struct segment *segment = run_text(CURL, close_outs[_i].level);
    const struct task_record *curl = &segment->record[1];
    double nearest = 99, speed = 0, sideways = 0;
    ck_assert(segment_task(segment, 1)->verb == VERB_CURLS);
    for (double t = curl->time[MOMENT_STARTED]; t <= curl->time[MOMENT_ARRIVED]; t += .01) {
        double off = vec2_distance(segment_at(segment, body_attacker(3), t),
                                   segment_at(segment, body_attacker(5), t));
        if (off < nearest) {
            nearest = off;
            speed = vec2_length(segment_velocity(segment, body_attacker(3), t));
        }
        sideways = real_max(sideways, sideways_at(segment, body_attacker(3), t));
    }
    ck_assert_msg(sideways <= 6.0, "%s: %.2f m/s^2 sideways", close_outs[_i].level, sideways);
    ck_assert_msg(speed <= real_sqrt(6 * MOTION_CURL) && speed >= .5 * real_sqrt(4 * MOTION_CURL),
                  "%s: %.2f m/s at the shoulder", close_outs[_i].level, speed);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside movement");
    TCase *all = tcase_create("movement");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, sprints_pass_the_gates_in_published_times, 0,
                        (int)(sizeof splits / sizeof *splits));
    tcase_add_test(all, three_quarters_of_the_floor_take_what_a_combine_shows);
    tcase_add_loop_test(all, the_law_of_a_close_out_gives_the_worked_out_times, 0, 4);
    tcase_add_loop_test(all, a_close_out_of_the_run_takes_what_legs_need, 0, 4);
    tcase_add_test(all, a_cut_costs_what_was_measured_of_men_who_made_it);
    tcase_add_loop_test(all, a_curl_is_run_as_fast_as_the_feet_hold, 0, 4);
    tcase_add_test(all, a_defender_answers_a_pass_after_a_human_reaction);
    tcase_add_test(all, players_on_the_move_are_about_as_fast_as_in_games);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
