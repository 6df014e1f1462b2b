/* SPDX-License-Identifier: MIT */
/* What each answer of the defense to a screen gives up: the same play against every one of them,
 * and how much room its man has when it counts. Printed as a table; asserted is only the direction
 * that textbooks give, each way of using a screen compared with itself under another answer. */
#include "floor_text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/real.h"

/* Where the five start, in feet: 1 the passer (on the ball the handler), 3 user, 5 screener. */
struct floor_setting {
    const char *name;
    double at[5][2];
    bool held_out;          /* the answers were not tuned on it */
    const char *exit, *gap; /* where a straight cut goes; on the ball, where a pull-up stops */
};
static const struct floor_setting off_ball[] = {
    {"top screens left wing, ball right wing",
     {{17, 17}, {21, -1}, {-17, 17}, {-21, -1}, {0, 23}},
     false,
     "top",
     ""},
    {"wing screens corner, ball other slot",
     {{9, 23}, {17, 17}, {-21, -1}, {21, -1}, {-17, 16}},
     false,
     "left wing",
     ""},
    {"wing screens block, ball top",
     {{0, 24}, {17, 17}, {-7, 3}, {21, -1}, {-17, 15}},
     false,
     "left wing",
     ""},
    {"elbow screens corner, ball top",
     {{0, 24}, {17, 17}, {-21, -1}, {21, -1}, {-8, 14}},
     true,
     "left wing",
     ""},
    {"elbow screens wing, ball far slot",
     {{9, 23}, {21, -1}, {-17, 17}, {17, 10}, {-8, 14}},
     true,
     "left slot",
     ""},
    {"slot screens corner, ball other slot",
     {{9, 23}, {17, 15}, {-21, -1}, {21, -1}, {-9, 22}},
     true,
     "left slot",
     ""},
    {"slot screens wing, ball other slot",
     {{9, 23}, {17, 15}, {-17, 15}, {21, -1}, {-9, 23}},
     true,
     "top",
     ""},
    {"top screens block, ball right wing",
     {{17, 17}, {21, -1}, {-7, 3}, {-17, 17}, {0, 22}},
     true,
     "nail",
     ""},
};
static const struct floor_setting on_ball[] = {
    {"top, screener from the right",
     {{0, 24}, {21, -1}, {-21, -1}, {-17, 16}, {8, 14}},
     false,
     "top",
     "right elbow"},
    {"left wing, screener from the elbow",
     {{-17, 16}, {17, 16}, {21, -1}, {9, 22}, {-8, 13}},
     false,
     "left wing",
     "nail"},
    {"left slot, screener from the block",
     {{-9, 22}, {17, 16}, {-21, -1}, {21, -1}, {-7, 4}},
     true,
     "left slot",
     "nail"},
    {"right slot, screener from the right wing",
     {{8, 22}, {-17, 16}, {21, -1}, {-21, -1}, {17, 15}},
     true,
     "right slot",
     "right elbow"},
};
static const char *const levels[] = {"u16", "college men"};

enum { TRAIL, OVER, UNDER, OVERPLAY, SWITCH, OFF_ANSWERS };
static const char *const off_answers[] = {"x3 trails", "x3 goes over", "x3 goes under",
                                          "x3 overplays", "x3 and x5 switch"};
enum { CURL, FADE, BACK, STRAIGHT, SLIP, OFF_USES };
static const char *const off_names[] = {"curl", "fade", "back cut", "straight", "slip"};
static const bool off_rim[] = {true, false, true, false, true}; /* run at the ring */
enum { B_OVER, B_UNDER, B_HEDGE, B_DROP, B_ICE, B_SWITCH, B_TRAP, ON_ANSWERS };
static const char *const on_answers[] = {"x1 goes over",  "x1 goes under", "x5 hedges",
                                         "x5 drops",      "x1 ices",       "x1 and x5 switch",
                                         "x1 and x5 trap"};
enum { DRIVE, PULL_UP, BEHIND, REJECT, ROLL, B_SLIP, ON_USES };
static const char *const on_names[] = {"drive", "pull-up", "behind", "reject", "roll", "slip"};
static const bool on_rim[] = {true, false, false, true, true, true};

enum { MOST_USES = 6, MOST_ANSWERS = 7 };

static void print_start(struct strbuf *text, const struct floor_setting *setting, const char *level)
{
    strbuf_print(text, "play \"Tollgate\"\n  level %s\n  start", level);
    for (int i = 0; i < 5; i++) {
        strbuf_print(text, "%s%d at (%d, %d)", i ? ", " : " ", i + 1, (int)setting->at[i][0],
                     (int)setting->at[i][1]);
    }
    strbuf_text(text, "\n  ball 1\n  defense man\n  step\n");
}

static struct str off_text(const struct floor_setting *setting, const char *level, int use,
                           int answer)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    print_start(&text, setting, level);
    strbuf_print(&text,
                 "    3 sets up toward the rim\n    5 screens for 3\n"
                 "    read otherwise \"Straight\"\n      3 comes off 5 to %s\n"
                 "    read %s \"Answer\"\n",
                 setting->exit, off_answers[answer]);
    switch (use) {
    case CURL:
        strbuf_text(&text, "    3 curls off 5 to the rim\n    1 passes to 3\n");
        break;
    case FADE:
        strbuf_text(&text, "    3 fades off 5\n    1 passes to 3\n");
        break;
    case BACK:
        strbuf_text(&text, "    3 back cuts off 5 to the rim\n    1 passes to 3\n");
        break;
    case STRAIGHT:
        strbuf_print(&text, "    3 comes off 5 to %s\n    1 passes to 3\n", setting->exit);
        break;
    default:
        strbuf_print(&text, "    5 slips to the rim\n    3 comes off 5 to %s\n    1 passes to 5\n",
                     setting->exit);
        break;
    }
    return strbuf_str(&text);
}

static struct str on_text(const struct floor_setting *setting, const char *level, int use,
                          int answer)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    print_start(&text, setting, level);
    strbuf_print(&text,
                 "    5 ball screens for 1\n    read otherwise \"Drive\"\n"
                 "      1 drives off 5 to the rim\n    read %s \"Answer\"\n",
                 on_answers[answer]);
    switch (use) {
    case DRIVE:
        strbuf_text(&text, "    1 drives off 5 to the rim\n    5 rolls to the rim\n    1 shoots\n");
        break;
    case PULL_UP:
        strbuf_print(&text, "    1 dribbles off 5 to %s\n    5 rolls to the rim\n    1 shoots\n",
                     setting->gap);
        break;
    case BEHIND:
        strbuf_text(&text, "    1 dribbles off 5 to 3 ft outside 5\n    1 shoots\n");
        break;
    case REJECT:
        strbuf_text(&text, "    1 rejects 5 to the rim\n    1 shoots\n");
        break;
    case ROLL:
        strbuf_print(&text,
                     "    1 dribbles off 5 to %s\n    5 rolls to the rim\n    1 passes to 5\n",
                     setting->gap);
        break;
    default:
        strbuf_print(&text,
                     "    5 slips to the rim\n    1 dribbles off 5 to %s\n    1 passes to 5\n",
                     setting->gap);
        break;
    }
    return strbuf_str(&text);
}

/* When it counts: the catch, or for who shoots himself the release. */
static double when_it_counts(const struct segment *segment, int *player)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->kind == TASK_PASS) {
            *player = body_number(task->other);
            return segment->record[i].time[MOMENT_CAUGHT];
        }
        if (task->kind == TASK_SHOOT) {
            *player = body_number(task->who);
            return segment->record[i].time[MOMENT_RELEASED];
        }
    }
    return TIME_NEVER;
}

/* Who runs at the ring is there before the catch counts: when he first is this near, in metres. */
#define AT_RING 2.0
#define REACH .5 /* m before him: there a shot is disturbed */

static double at_ring(const struct segment *segment, int player, double from)
{
    for (double t = from; t <= segment->duration; t += .01) {
        if (vec2_length(segment_at(segment, body_attacker(player), t)) < AT_RING) {
            return t;
        }
    }
    return TIME_NEVER;
}

/* Metres from where a shot of his would be disturbed to the nearer of the two defenders of the
 * screen. */
static double room(const struct segment *segment, int player, int guard, int big, double t)
{
    struct vec2 at = segment_at(segment, body_attacker(player), t);
    struct vec2 hand = vec2_along(at, vec2_unit(at), -REACH);
    return real_min(vec2_distance(segment_at(segment, body_defender(guard), t), hand),
                    vec2_distance(segment_at(segment, body_defender(big), t), hand));
}

struct outcome {
    bool ran;
    double room;
};

static struct outcome measure(struct str text, int guard, bool rim, bool say)
{
    struct ran ran;
    floor_text(&ran, text);
    struct outcome outcome = {0};
    int player = 0;
    const struct segment *segment =
        ran.run ? ran.run->segments.at[ran.run->segments.count - 1] : NULL;
    double t = segment ? when_it_counts(segment, &player) : TIME_NEVER;
    if (!segment || !segment->ran || t == TIME_NEVER) {
        if (say) {
            printf("# %.*s%s\n", STR_ARG(text), floor_said(&ran));
        }
        return outcome;
    }
    int use = floor_task(segment, guard, TASK_USE);
    double near = rim ? at_ring(segment, player, floor_moment(segment, use, MOMENT_STARTED)) : t;
    t = near != TIME_NEVER ? near : t;
    outcome.ran = true;
    outcome.room = room(segment, player, guard, 5, t);
    return outcome;
}

struct table {
    double room[MOST_USES][MOST_ANSWERS];
    int missing;
};

static struct table fill(bool on, const struct floor_setting *setting, const char *level)
{
    struct table table = {0};
    int uses = on ? ON_USES : OFF_USES, answers = on ? ON_ANSWERS : OFF_ANSWERS;
    for (int use = 0; use < uses; use++) {
        for (int answer = 0; answer < answers; answer++) {
            close_arena();
            open_arena();
            struct str text = (on ? on_text : off_text)(setting, level, use, answer);
            struct outcome outcome = measure(text, on ? 1 : 3, (on ? on_rim : off_rim)[use], true);
            table.room[use][answer] = outcome.room;
            table.missing += !outcome.ran;
        }
    }
    return table;
}

static void print_table(bool on, const struct floor_setting *setting, const char *level,
                        const struct table *table)
{
    const char *const *uses = on ? on_names : off_names, *const *answers =
                                                             on ? on_answers : off_answers;
    printf("# %s%s, %s: m from the shot to the two defenders\n# %-10s", setting->name,
           setting->held_out ? " (held out)" : "", level, "");
    for (int answer = 0; answer < (on ? ON_ANSWERS : OFF_ANSWERS); answer++) {
        const char *word = strrchr(answers[answer], ' ') + 1;
        printf("%10s", word);
    }
    printf("\n");
    for (int use = 0; use < (on ? ON_USES : OFF_USES); use++) {
        printf("# %-10s", uses[use]);
        for (int answer = 0; answer < (on ? ON_ANSWERS : OFF_ANSWERS); answer++) {
            printf("%10.2f", table->room[use][answer]);
        }
        printf("\n");
    }
}

/* One direction: this use has more room against `against` than against `than`. Robust: to hold in
 * three of four settings that nothing was tuned on; the others are printed only. */
struct claim {
    int use, against, than;
    const char *what;
    bool robust;
};
static const struct claim off_claims[] = {
    {CURL, TRAIL, UNDER, "trail > under: curl", true},
    {FADE, UNDER, TRAIL, "under > trail: fade", true},
    {BACK, OVERPLAY, TRAIL, "overplay > trail: back cut", true},
    {BACK, OVERPLAY, OVER, "overplay > over: back cut", true},
    {SLIP, SWITCH, TRAIL, "switch > trail: slip", false},
};
static const struct claim on_claims[] = {
    {BEHIND, B_UNDER, B_OVER, "under > over: pull-up behind", true},
    {DRIVE, B_OVER, B_UNDER, "over > under: drive", true},
    {DRIVE, B_OVER, B_ICE, "over > ice: drive", true},
    {PULL_UP, B_DROP, B_HEDGE, "drop > hedge: pull-up", false},
    {PULL_UP, B_DROP, B_SWITCH, "drop > switch: pull-up", false},
    {ROLL, B_HEDGE, B_OVER, "hedge > over: roll", false},
    {ROLL, B_TRAP, B_OVER, "trap > over: roll", true},
    {PULL_UP, B_OVER, B_TRAP, "over > trap: pull-up", false},
    {B_SLIP, B_HEDGE, B_OVER, "hedge > over: slip", false},
    {B_SLIP, B_SWITCH, B_OVER, "switch > over: slip", false},
};

struct score {
    int held[2], of[2]; /* tuned, held out */
};

static void count(const struct table *table, const struct claim *claim, bool held_out,
                  struct score *score)
{
    score->of[held_out]++;
    score->held[held_out] +=
        table->room[claim->use][claim->against] > table->room[claim->use][claim->than];
}

static void run_all(bool on, struct score *scores)
{
    size_t settings = on ? sizeof on_ball / sizeof *on_ball : sizeof off_ball / sizeof *off_ball;
    size_t claims =
        on ? sizeof on_claims / sizeof *on_claims : sizeof off_claims / sizeof *off_claims;
    int missing = 0;
    for (size_t s = 0; s < settings; s++) {
        for (size_t l = 0; l < 2; l++) {
            const struct floor_setting *setting = on ? &on_ball[s] : &off_ball[s];
            struct table table = fill(on, setting, levels[l]);
            print_table(on, setting, levels[l], &table);
            missing += table.missing;
            for (size_t d = 0; d < claims; d++) {
                count(&table, on ? &on_claims[d] : &off_claims[d], setting->held_out, &scores[d]);
            }
        }
    }
    for (size_t d = 0; d < claims; d++) {
        const struct claim *claim = on ? &on_claims[d] : &off_claims[d];
        printf("# %-30s tuned %d of %d, held out %d of %d\n", claim->what, scores[d].held[0],
               scores[d].of[0], scores[d].held[1], scores[d].of[1]);
    }
    fflush(stdout); /* a failed test ends its process */
    for (size_t d = 0; d < claims; d++) {
        const struct claim *claim = on ? &on_claims[d] : &off_claims[d];
        ck_assert_msg(!claim->robust || 4 * scores[d].held[1] >= 3 * scores[d].of[1], "%s",
                      claim->what);
    }
    ck_assert_int_eq(missing, 0);
}

START_TEST(off_the_ball_each_answer_gives_up_what_textbooks_say)
{
    struct score scores[8] = {0};
    run_all(false, scores);
}
END_TEST

START_TEST(on_the_ball_each_answer_gives_up_what_textbooks_say)
{
    struct score scores[12] = {0};
    run_all(true, scores);
}
END_TEST

/* One cell of a table, tick by tick: to look into. */
static void trace(bool on, int s, int l, int use, int answer)
{
    open_arena();
    struct str text =
        (on ? on_text : off_text)(on ? &on_ball[s] : &off_ball[s], levels[l], use, answer);
    struct ran ran;
    floor_text(&ran, text);
    printf("%.*s%s\n", STR_ARG(text), floor_said(&ran));
    const struct segment *segment = ran.run->segments.at[ran.run->segments.count - 1];
    const int user = on ? 1 : 3;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        printf("%d %s: started %.2f set %.2f used %.2f released %.2f caught %.2f arrived %.2f\n",
               body_number(task->who), verb_row(task->verb)->words,
               floor_moment(segment, (int)i, MOMENT_STARTED),
               floor_moment(segment, (int)i, MOMENT_SET),
               floor_moment(segment, (int)i, MOMENT_USED),
               floor_moment(segment, (int)i, MOMENT_RELEASED),
               floor_moment(segment, (int)i, MOMENT_CAUGHT),
               floor_moment(segment, (int)i, MOMENT_ARRIVED));
    }
    const body who[] = {body_attacker(user), body_defender(user), body_attacker(5),
                        body_defender(5)};
    for (double t = 0; t < segment->duration; t += .1) {
        printf("%5.2f", t);
        for (int i = 0; i < 4; i++) {
            struct vec2 p = segment_at(segment, who[i], t);
            printf("  (%6.2f %6.2f) %4.1f", p.x, p.y,
                   vec2_length(segment_velocity(segment, who[i], t)));
        }
        printf("  off %.2f\n", floor_off(segment, user, user, t));
    }
    close_arena();
}

int main(int argc, char **argv)
{
    if (argc == 6) { /* on|off setting level use answer */
        trace(strcmp(argv[1], "on") == 0, atoi(argv[2]), atoi(argv[3]), atoi(argv[4]),
              atoi(argv[5]));
        return 0;
    }
    Suite *suite = suite_create("answers to screens");
    TCase *tcase = tcase_create("directions");
    tcase_add_checked_fixture(tcase, open_arena, close_arena);
    tcase_set_timeout(tcase, 240);
    tcase_add_test(tcase, off_the_ball_each_answer_gives_up_what_textbooks_say);
    tcase_add_test(tcase, on_the_ball_each_answer_gives_up_what_textbooks_say);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
