/* SPDX-License-Identifier: MIT */
/* Screens at random places, for random uses, against every answer of the defense, at every level:
 * each is to be set and to be used. With --print the program lists how they went instead. */
#include "floor_text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/real.h"
#include "base/rng.h"

#define LOOPS                                                                                      \
    2.6 /* m longer than straight (ours): once round a screener is 2, with the room kept */
enum { TRIES = 400 };

static const char *const levels[] = {"u12",          "u14 girls",     "u16 girls",       "u16 boys",
                                     "varsity boys", "college women", "professional men"};
static const char *const mans[] = {"man", "man deny", "man sag"};
static const char *const answers[] = {
    "",          "x3 trails", "x3 goes under", "x3 goes over", "x3 overplays", "x3 and x5 switch",
    "x3 denies", "x3 sags",   "otherwise"};
static const char *const ball_answers[] = {
    "",        "x3 goes under",  "x3 goes over",     "x5 hedges", "x5 drops",
    "x3 ices", "x3 and x5 trap", "x3 and x5 switch", "otherwise"};
static const char *const uses[] = {"curls off 5 to the rim",
                                   "curls off 5 to the nail",
                                   "comes off 5 to top",
                                   "comes off 5 to right wing",
                                   "comes off 5 to left corner",
                                   "fades off 5 to right corner",
                                   "flares off 5 to left wing",
                                   "back cuts off 5",
                                   "rejects 5"};
static const char *const ball_uses[] = {"drives off 5 to the rim", "dribbles off 5 to right wing",
                                        "dribbles off 5 to top", "dribbles off 5 to left elbow",
                                        "rejects 5"};
static const char *const after[] = {"", "5 rolls to the rim", "5 pops", "5 seals"};

#define PICK(rng, list) ((list)[rng_below((rng), sizeof(list) / sizeof *(list))])

static struct vec2 spot(struct rng *rng)
{
    static const double spots[][2] = {{0, 24},   {9, 23}, {-9, 23}, {17, 17}, {-17, 17}, {21, -1},
                                      {-21, -1}, {8, 14}, {-8, 14}, {7, 4},   {-7, 4},   {12, 8},
                                      {-12, 8},  {0, 14}, {14, 1},  {-14, 1}};
    uint32_t i = rng_below(rng, sizeof spots / sizeof *spots);
    return vec2_of(spots[i][0] + 4 * rng_unit(rng) - 2, spots[i][1] + 4 * rng_unit(rng) - 2);
}

/* Nobody in the fresh spot's way: feet. */
static bool is_free(const struct vec2 *taken, size_t count, struct vec2 p, double least)
{
    for (size_t i = 0; i < count; i++) {
        if (vec2_distance(taken[i], p) < least) {
            return false;
        }
    }
    return true;
}

static void place(struct rng *rng, struct vec2 at[5])
{
    for (size_t i = 0; i < 5; i++) {
        do {
            at[i] = spot(rng);
        } while (!is_free(at, i, at[i], 8));
    }
}

/* 5 screens for 3; on the ball 3 has it, else 1. */
static struct str made(struct rng *rng, bool on_ball)
{
    struct strbuf text;
    struct vec2 at[5];
    strbuf_init(&text, &arena);
    place(rng, at);
    strbuf_print(&text, "play \"Millrace\"\n  level %s\n  start", PICK(rng, levels));
    for (int i = 0; i < 5; i++) {
        strbuf_print(&text, "%s%d at (", i ? ", " : " ", i + 1);
        strbuf_fixed(&text, at[i].x, 2);
        strbuf_text(&text, ", ");
        strbuf_fixed(&text, at[i].y, 2);
        strbuf_text(&text, ")");
    }
    strbuf_print(&text, "\n  ball %d\n  defense %s\n  step\n", on_ball ? 3 : 1, PICK(rng, mans));
    if (!on_ball && rng_below(rng, 2)) {
        strbuf_text(&text, "    3 sets up toward the rim\n");
    }
    strbuf_print(&text, "    5 %s for 3\n", on_ball ? "ball screens" : "screens");
    const char *answer = on_ball ? PICK(rng, ball_answers) : PICK(rng, answers);
    if (*answer) {
        strbuf_print(&text, "    read %s \"Answer\"\n", answer);
    }
    strbuf_print(&text, "    3 %s\n", on_ball ? PICK(rng, ball_uses) : PICK(rng, uses));
    const char *next = PICK(rng, after);
    if (*next) {
        strbuf_print(&text, "    %s\n", next);
    }
    if (!on_ball) {
        strbuf_text(&text, "    1 passes to 3\n");
    }
    return strbuf_str(&text);
}

struct tally {
    int tried, unread, failed, unset, unused;
    double set_after, gap, use_gap; /* sums */
    int sets, uses, far;
};

static const char *verdict(const struct ran *ran, struct tally *tally)
{
    tally->tried++;
    if (!ran->run) {
        tally->unread++;
        return "unread";
    }
    const struct segment *segment = ran->run->segments.at[0];
    int screen = floor_task(segment, 5, TASK_SCREEN), use = floor_task(segment, 3, TASK_USE);
    double set = floor_moment(segment, screen, MOMENT_SET);
    if (set != TIME_NEVER) {
        const struct task_record *record = &segment->record[screen];
        double gap = vec2_distance(record->to, record->on);
        tally->sets++;
        tally->set_after += set;
        tally->gap += gap;
        tally->far += gap > 3 * FEET;
    }
    if (use >= 0 && segment->record[use].gap >= 0) {
        tally->uses++;
        tally->use_gap += segment->record[use].gap;
    }
    if (set == TIME_NEVER) {
        tally->unset++;
        return "never set";
    }
    if (floor_moment(segment, screen, MOMENT_USED) == TIME_NEVER) {
        tally->unused++;
        return "never used";
    }
    if (!segment->ran) {
        tally->failed++;
        return "failed";
    }
    return NULL;
}

static struct tally sweep(bool on_ball, int tries, uint64_t seed, bool print)
{
    struct tally tally = {0};
    for (int i = 0; i < tries; i++) {
        struct rng rng;
        open_arena();
        rng_seed(&rng, seed + (uint64_t)i);
        struct str text = made(&rng, on_ball);
        struct ran ran;
        floor_text(&ran, text);
        const char *said = verdict(&ran, &tally);
        if (said && print) {
            printf("# %d: %s\n%.*s%s\n", i, said, STR_ARG(text), floor_said(&ran));
        }
        close_arena();
    }
    printf("# %s: %d tried, %d unread, %d never set, %d never used, %d failed otherwise; set after "
           "%.2f s, %.2f m from the defender (%d over 3 ft), used %.2f m from the shoulder (%d)\n",
           on_ball ? "on the ball" : "off the ball", tally.tried, tally.unread, tally.unset,
           tally.unused, tally.failed, tally.set_after / tally.sets, tally.gap / tally.sets,
           tally.far, tally.use_gap / tally.uses, tally.uses);
    return tally;
}

START_TEST(every_screen_off_the_ball_is_set_and_used)
{
    struct tally tally = sweep(false, TRIES, 1, false);
    ck_assert_int_eq(tally.unset + tally.unused + tally.failed + tally.unread, 0);
}
END_TEST

START_TEST(every_screen_on_the_ball_is_set_and_used)
{
    struct tally tally = sweep(true, TRIES, 7001, false);
    ck_assert_int_eq(tally.unset + tally.unused + tally.failed + tally.unread, 0);
}
END_TEST

/* ---- the kinds of screens that books name ---- */

/* Spots in feet on the left half, ball with `ball`; `mirror` turns it over. 3 is the user. */
struct kind {
    const char *name;
    double at[5][2];
    int ball;
    const char *screen; /* its sentences */
    const char *uses[5];
    int screener; /* whose screen is to be set and used; 0: a standing post or a hand-off */
};
static const struct kind kinds[] = {
    {"down",
     {{9, 22}, {21, -1}, {-21, -1}, {7, 3}, {-7, 14}},
     1,
     "5 screens for 3",
     {"3 comes off 5 to left wing", "3 curls off 5 to nail", "3 comes off 5 to left slot",
      "3 fades off 5", "3 comes off 5 to top"},
     5},
    {"cross",
     {{16, 14}, {0, 23}, {-7, 3}, {-21, -1}, {7, 3}},
     1,
     "5 screens for 3",
     {"3 comes off 5 to right block", "3 comes off 5 to nail",
      "3 comes off 5 to right short corner", "3 curls off 5 to the rim",
      "3 comes off 5 to right high post"},
     5},
    {"back",
     {{0, 23}, {21, -1}, {-17, 15}, {7, 4}, {-7, 3}},
     1,
     "5 screens for 3",
     {"3 comes off 5 to the rim", "3 comes off 5 to left block", "3 back cuts off 5",
      "3 fades off 5 to left corner", "3 comes off 5 to left short corner"},
     5},
    {"flare",
     {{9, 22}, {21, -1}, {-9, 22}, {-21, -1}, {-7, 14}},
     1,
     "5 screens for 3",
     {"3 flares off 5 to left wing", "3 flares off 5", "3 flares off 5 to left corner",
      "3 curls off 5 to the rim", "3 comes off 5 to left wing"},
     5},
    {"stagger",
     {{0, 23}, {21, -1}, {-21, -1}, {-7, 4}, {-7, 14}},
     1,
     "4 and 5 screen for 3",
     {"3 comes off 4 and 5 to left slot", "3 comes off 4 and 5 to left wing",
      "3 curls off 4 and 5 to the rim", "3 comes off 4 and 5 to nail",
      "3 comes off 4 and 5 to left elbow"},
     5},
    {"stagger along the baseline",
     {{16, 14}, {21, -1}, {7, 3}, {-7, 3}, {-16, 12}},
     1,
     "4 and 5 screen for 3",
     {"3 comes off 4 and 5 to left wing", "3 comes off 4 and 5 to left corner",
      "3 comes off 4 and 5 to top", "3 curls off 4 and 5 to nail",
      "3 comes off 4 and 5 to left slot"},
     5},
    {"double",
     {{0, 23}, {21, -1}, {-7, 3}, {-7, 14}, {-12, 0}},
     1,
     "4 and 5 double screen for 3",
     {"3 comes off 4 and 5 to left wing", "3 comes off 4 and 5 to left corner",
      "3 curls off 4 and 5 to nail", "3 comes off 4 and 5 to left slot",
      "3 comes off 4 and 5 to top"},
     5},
    {"post",
     {{16, 14}, {21, -1}, {0, 22}, {-21, -1}, {-6, 14}},
     1,
     "5 stays",
     {"3 comes off 5 to left block", "3 comes off 5 to the rim", "3 curls off 5 to the rim",
      "3 comes off 5 to left wing", "3 comes off 5 to left short corner"},
     0},
    {"hand-off",
     {{-16, 14}, {21, -1}, {-16, 14}, {21, 10}, {0, 22}},
     5,
     "5 dribbles at 3\n    5 hands off to 3",
     {"3 drives off 5 to the rim", "3 dribbles off 5 to top", "3 drives off 5 to nail",
      "3 dribbles off 5 to right slot", "3 dribbles off 5 to left elbow"},
     0},
};
enum { KINDS = sizeof kinds / sizeof *kinds, EACH = 40, USES = 5 };

/* Turned over: every "left" is "right". */
static void say(struct strbuf *text, const char *words, bool mirror)
{
    for (const char *p = words; *p;) {
        if (strncmp(p, "left", 4) == 0) {
            strbuf_text(text, mirror ? "right" : "left");
            p += 4;
        } else if (strncmp(p, "right", 5) == 0) {
            strbuf_text(text, mirror ? "left" : "right");
            p += 5;
        } else {
            strbuf_char(text, *p++);
        }
    }
}

static struct str kind_text(const struct kind *kind, struct rng *rng, const char *use)
{
    struct strbuf text;
    bool mirror = rng_below(rng, 2) == 1;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"Millrace\"\n  level %s\n  start", PICK(rng, levels));
    for (int i = 0; i < 5; i++) {
        double x = kind->at[i][0] + 2 * rng_unit(rng) - 1,
               y = kind->at[i][1] + 2 * rng_unit(rng) - 1;
        if (kind->ball == 5 && i == 0) { /* out of the way of the hand-off */
            x = -21, y = -1;
        }
        strbuf_print(&text, "%s%d at (", i ? ", " : " ", i + 1);
        strbuf_fixed(&text, mirror ? -x : x, 2);
        strbuf_text(&text, ", ");
        strbuf_fixed(&text, y, 2);
        strbuf_text(&text, ")");
    }
    strbuf_print(&text, "\n  ball %d\n  defense %s\n  step\n    ", kind->ball, PICK(rng, mans));
    say(&text, kind->screen, mirror);
    const char *answer = PICK(rng, answers);
    if (*answer) {
        strbuf_print(&text, "\n    read %s \"Answer\"", answer);
    }
    strbuf_text(&text, *answer ? "\n      " : "\n    ");
    say(&text, use, mirror);
    strbuf_text(&text, "\n");
    return strbuf_str(&text);
}

/* Metres that the user's way was longer than the straight one. */
static double detour(const struct segment *segment)
{
    int use = floor_task(segment, 3, TASK_USE);
    double from = floor_moment(segment, use, MOMENT_STARTED);
    double to = floor_moment(segment, use, MOMENT_ARRIVED), length = 0;
    struct vec2 first = segment_at(segment, body_attacker(3), from), last = first;
    for (double t = from + RUN_SAMPLE; t < to; t += RUN_SAMPLE) {
        struct vec2 next = segment_at(segment, body_attacker(3), t);
        length += vec2_distance(last, next);
        last = next;
    }
    return length - vec2_distance(first, last);
}

struct outcome {
    int tried, unread, unset, unused, failed, loops;
    double detours;
};

static const char *judge(const struct kind *kind, const struct ran *ran, const char *use,
                         struct outcome *outcome)
{
    outcome->tried++;
    if (!ran->run) {
        outcome->unread++;
        return "unread";
    }
    const struct segment *segment = ran->run->segments.at[0];
    int screen = floor_task(segment, kind->screener, TASK_SCREEN);
    if (kind->screener && floor_moment(segment, screen, MOMENT_SET) == TIME_NEVER) {
        outcome->unset++;
        return "never set";
    }
    if (kind->screener && floor_moment(segment, screen, MOMENT_USED) == TIME_NEVER) {
        outcome->unused++;
        return "never used";
    }
    if (!segment->ran) {
        outcome->failed++;
        return "failed";
    }
    double more = detour(segment);
    outcome->detours += more;
    if (!strstr(use, "curls") && more > LOOPS) {
        outcome->loops++;
        return "loops";
    }
    return NULL;
}

static struct outcome try_kind(const struct kind *kind, int each, uint64_t seed, bool print)
{
    struct outcome outcome = {0};
    for (int i = 0; i < each; i++) {
        struct rng rng;
        struct ran ran;
        open_arena();
        rng_seed(&rng, seed + (uint64_t)i);
        const char *use = kind->uses[i % USES];
        struct str text = kind_text(kind, &rng, use);
        floor_text(&ran, text);
        const char *said = judge(kind, &ran, use, &outcome);
        if (said && print) {
            printf("# %s %d: %s\n%.*s%s\n", kind->name, i, said, STR_ARG(text), floor_said(&ran));
        }
        close_arena();
    }
    printf("# %s: %d tried, %d unread, %d never set, %d never used, %d failed otherwise, %d loops, "
           "%.2f m longer than straight\n",
           kind->name, outcome.tried, outcome.unread, outcome.unset, outcome.unused, outcome.failed,
           outcome.loops, outcome.detours / outcome.tried);
    return outcome;
}

START_TEST(every_kind_of_screen_is_set_and_used_without_a_loop)
{
    struct outcome outcome = try_kind(&kinds[_i], EACH, 100, false);
    ck_assert_int_eq(outcome.unread + outcome.unset + outcome.unused + outcome.failed, 0);
    ck_assert_int_eq(outcome.loops, 0);
}
END_TEST

int main(int argc, char **argv)
{
    if (argc == 3) { /* kinds tries */
        for (int i = 0; i < KINDS; i++) {
            try_kind(&kinds[i], atoi(argv[2]), 100, true);
        }
        return 0;
    }
    if (argc > 3) { /* on|off tries seed */
        sweep(strcmp(argv[1], "on") == 0, atoi(argv[2]), (uint64_t)atoi(argv[3]), true);
        return 0;
    }
    Suite *suite = suite_create("many screens");
    TCase *tcase = tcase_create("random");
    tcase_set_timeout(tcase, 240);
    tcase_add_test(tcase, every_screen_off_the_ball_is_set_and_used);
    tcase_add_test(tcase, every_screen_on_the_ball_is_set_and_used);
    tcase_add_loop_test(tcase, every_kind_of_screen_is_set_and_used_without_a_loop, 0, KINDS);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
