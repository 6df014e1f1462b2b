/* SPDX-License-Identifier: MIT */
/* What is refused, and how often: one fault is one message, and none takes long to find. */
#include <stdio.h>
#include <string.h>

#include "base/limits.h"
#include "resolved.h"
#include "suite.h"

static struct resolved r;

static void resolve(const char *text)
{
    resolve_text(&arena, &r, STR("Test"), str_of(text));
}

static size_t how_many(const char *id)
{
    size_t count = 0;
    for (size_t i = 0; i < r.diags.all.count; i++) {
        count += str_is(str_of(r.diags.all.at[i].row->id), id);
    }
    return count;
}

static unsigned line_of(struct span span)
{
    return source_place(&r.sources.all.at[span.source], span.begin).line;
}

/* The only message but notes: its id and line; `other` 0: shows no second place. */
static void only_error(const char *id, unsigned line, unsigned other)
{
    struct strbuf said;
    strbuf_init(&said, &arena);
    print_diags(&said, &r);
    ck_assert_msg(r.diags.errors == 1 && how_many(id) == 1, "not one %s but:\n%s", id, said.at);
    for (size_t i = 0; i < r.diags.all.count; i++) {
        const struct diag *diag = &r.diags.all.at[i];
        if (str_is(str_of(diag->row->id), id)) {
            ck_assert_uint_eq(line_of(diag->span), line);
            ck_assert_uint_eq(diag->other.source == SOURCE_NONE ? 0 : line_of(diag->other), other);
        }
    }
}

/* ---- limits ---- */

/* `deep` actions, each of which runs the next so often; the innermost says `line`. */
static const char *nested(int deep, int times, const char *line)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    for (int i = 0; i < deep; i++) {
        strbuf_print(&text, "action \"a%d\" for mover\n", i);
        for (int j = 0; j < times && i + 1 < deep; j++) {
            strbuf_print(&text, "  run \"a%d\" with mover mover\n", i + 1);
        }
    }
    strbuf_print(&text, "%splay \"P\"\n  start five-out\n  run \"a0\" with mover 3\n", line);
    return text.at;
}

START_TEST(runs_too_deep_are_said_once_however_many)
{
    resolve(nested(LIMIT_ACTION_DEPTH + 1, 60, "  mover jabs\n"));
    only_error("play.too-deep", 2 + 61 * (LIMIT_ACTION_DEPTH - 1), 61 * LIMIT_ACTION_DEPTH + 5);
}
END_TEST

START_TEST(a_step_runs_so_many_actions)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "action \"nothing\" for mover\nplay \"P\"\n  start five-out\n");
    for (int i = 0; i < LIMIT_RUNS; i++) {
        strbuf_text(&text, "  run \"nothing\" with mover 1\n");
    }
    resolve(text.at);
    ck_assert_uint_eq(how_many("play.too-many"), 0);
    strbuf_text(&text, "  run \"nothing\" with mover 1\n  run \"nothing\" with mover 1\n");
    resolve(text.at);
    only_error("play.too-many", 4 + LIMIT_RUNS, 0);
    /* in one another: 60 * 60 * 60 of them */
    resolve(nested(LIMIT_ACTION_DEPTH, 60, ""));
    only_error("play.too-many", 61 * (LIMIT_ACTION_DEPTH - 1) + 4, 0);
}
END_TEST

START_TEST(lines_run_past_a_steps_limit_are_said_once)
{
    resolve(nested(LIMIT_ACTION_DEPTH, 60, "  mover jabs\n"));
    only_error("play.too-many", 61 * (LIMIT_ACTION_DEPTH - 1) + 5, 0);
    resolve(nested(LIMIT_ACTION_DEPTH, 60, "  point \"again\"\n"));
    only_error("play.too-many", 61 * (LIMIT_ACTION_DEPTH - 1) + 5, 0);
}
END_TEST

/* The head, then the lines so often, each `@` in them its number. */
static const char *counted(const char *head, const char *lines, int times)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, head);
    for (int i = 0; i < times; i++) {
        for (const char *at = lines; *at; at++) {
            if (*at == '@') {
                strbuf_print(&text, "%d", i);
            } else {
                strbuf_char(&text, *at);
            }
        }
    }
    return text.at;
}

START_TEST(a_book_holds_so_many_actions)
{
    resolve(counted("", "action \"a@\" for mover\n  mover jabs\n", LIMIT_ACTIONS));
    ck_assert_uint_eq(r.diags.errors, 0);
    resolve(counted("", "action \"a@\" for mover\n  mover jabs\n", LIMIT_ACTIONS + 20));
    only_error("play.too-many", 2 * LIMIT_ACTIONS + 1, 0);
}
END_TEST

START_TEST(too_many_of_a_kind_are_said_once)
{
    resolve(counted("", "play \"p@\"\n  start five-out\n  1 passes to 2\n", LIMIT_PLAYS + 20));
    only_error("text.too-many", 3 * LIMIT_PLAYS + 1, 0);
    resolve(counted("play \"P\"\n  start five-out\n", "  step \"s@\"\n    3 stays\n    1 jabs\n",
                    LIMIT_STEPS + 40));
    only_error("text.too-many", 3 + 3 * LIMIT_STEPS, 0);
    resolve(counted("play \"P\"\n  start five-out\n  step\n    1 passes to 2\n",
                    "    option \"o@\"\n      2 shoots\n", LIMIT_BRANCHES + 20));
    only_error("text.too-many", 5 + 2 * LIMIT_BRANCHES, 0);
    resolve(counted("play \"P\"\n  start five-out\n", "  3 stays # @\n", 3 * LIMIT_SENTENCES));
    only_error("text.too-many", 3 + LIMIT_SENTENCES, 0);
}
END_TEST

START_TEST(behind_the_last_message_kept_the_rest_is_counted)
{
    static const char head[] = "play \"P\"\n  start five-out\n  1 passes to 2\n";
    resolve(counted(head, "  gurgle @ blah\n", LIMIT_DIAGS));
    ck_assert(!r.diags.full);
    ck_assert_uint_eq(r.diags.all.count, LIMIT_DIAGS);
    ck_assert_uint_eq(r.diags.errors, LIMIT_DIAGS);
    resolve(counted(head, "  gurgle @ blah\n", 3 * LIMIT_DIAGS));
    ck_assert(r.diags.full);
    ck_assert_uint_eq(r.diags.all.count, LIMIT_DIAGS);
    ck_assert_uint_eq(r.diags.errors, 3 * LIMIT_DIAGS);
}
END_TEST

/* ---- runs in a circle ---- */

static const char looped[] = "action \"one\" for mover\n  run \"two\" with mover mover\n"
                             "action \"two\" for mover\n  run \"one\" with mover mover\n";

START_TEST(a_circle_of_actions_is_said_once_used_or_not)
{
    resolve(looped);
    only_error("play.too-deep", 4, 1);
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "%splay \"A\"\n  start five-out\n  run \"one\" with mover 1\n"
                 "play \"B\"\n  start five-out\n  run \"two\" with mover 1\n",
                 looped);
    resolve(text.at);
    only_error("play.too-deep", 4, 1);
    ck_assert(r.book->plays.at[0].broken && r.book->plays.at[1].broken);
}
END_TEST

START_TEST(an_action_run_in_two_places_is_no_circle)
{
    resolve("action \"leaf\" for mover\n  mover jabs\n"
            "action \"left\" for mover\n  run \"leaf\" with mover mover\n"
            "action \"both\" for mover\n  run \"left\" with mover mover\n"
            "  run \"leaf\" with mover mover\n"
            "play \"A\"\n  start five-out\n  run \"both\" with mover 1\n");
    ck_assert_uint_eq(r.diags.errors, 0);
    ck_assert_uint_eq(r.book->plays.at[0].steps.at[0].tasks.count, 2);
}
END_TEST

START_TEST(a_step_that_is_the_same_as_itself_is_said_once)
{
    resolve("play \"A\"\n  start five-out\n  step\n    same as step 1 of \"A\"\n"
            "    same as step 1 of \"A\"\n");
    only_error("play.too-deep", 4, 0);
}
END_TEST

/* ---- times ---- */

static const struct {
    const char *line;
    bool kept;
} times[] = {
    {"2 cuts to the rim, taking 0 s", false},
    {"2 cuts to the rim, taking 0.001 s", false},
    {"2 cuts to the rim, taking 0.7 s", false},
    {"2 cuts to the rim, taking 1.6 s", true},
    {"2 cuts to the rim, taking 30 s", true},
    {"2 cuts to the rim, taking 30.1 s", false},
    {"1 dribbles to the rim, taking 0.8 s", false},
    {"1 dribbles to the rim, taking 3 s", true},
    {"2 holds for 0 s", false},
    {"2 holds for 0.5 s", true},
    {"2 holds for 31 s", false},
    {"2 screens for 4, taking 0.05 s", false},
    {"1 passes to 2, taking 1.5 s", true},
    {"1 shoots, taking 2 s", false},
    {"1 hands off to 2, taking 2 s", false},
};

START_TEST(a_time_that_nobody_can_keep_is_refused)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"A\"\n  start five-out\n  %s\n", times[_i].line);
    resolve(text.at);
    if (times[_i].kept) {
        ck_assert_msg(r.diags.errors == 0, "%s", times[_i].line);
    } else {
        only_error("play.time", 3, 0);
    }
}
END_TEST

/* ---- ways on ---- */

START_TEST(ways_on_that_contradict_show_both_places)
{
    static const char head[] = "play \"A\"\n  start five-out\n  defense man\n  step\n"
                               "    1 passes to 2\n";
    static const struct {
        const char *ways, *id;
        unsigned line, other;
    } wanted[] = {
        {"    option \"x\"\n      2 jabs\n      continue here\n    option \"y\"\n      2 shoots\n"
         "      continue here\n",
         "play.continue", 11, 8},
        {"    option \"x\"\n      2 jabs\n    option \"X\"\n      2 shoots\n", "play.branch-twice",
         8, 6},
        {"    read x2 trails\n      2 jabs\n    read 3 is open\n      2 shoots\n"
         "    read x4 sags or x2 trails\n      2 shoots\n",
         "play.branch-twice", 10, 6},
        {"    read x2 and x3 switch\n      2 jabs\n    read x3 and x2 switch\n      2 shoots\n",
         "play.branch-twice", 8, 6},
        {"    read x2 trails or x2 trails\n      2 jabs\n", "play.branch-twice", 6, 6},
        {"    read otherwise\n      2 jabs\n    read otherwise\n      2 shoots\n",
         "play.branch-twice", 8, 6},
    };
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        struct strbuf text;
        strbuf_init(&text, &arena);
        strbuf_print(&text, "%s%s", head, wanted[i].ways);
        resolve(text.at);
        only_error(wanted[i].id, wanted[i].line, wanted[i].other);
    }
    resolve("play \"A\"\n  start five-out\n  defense man\n  step\n    1 passes to 2\n"
            "    read x2 trails\n      2 jabs\n    read x3 trails\n      2 shoots\n"
            "    read x2 sags \"Shot\"\n      2 shoots\n      continue here\n"
            "    read otherwise\n      2 stays\n");
    ck_assert_uint_eq(r.diags.errors, 0);
}
END_TEST

START_TEST(the_first_step_follows_no_branch)
{
    resolve("play \"A\"\n  start five-out\n  step \"a\" after \"b\"\n    1 passes to 2\n"
            "  step \"b\"\n    2 passes to 1\n");
    only_error("play.no-branch", 3, 0);
    ck_assert(r.book->plays.at[0].broken);
}
END_TEST

/* ---- the start ---- */

START_TEST(all_who_start_on_one_spot_are_one_message_at_the_start_line)
{
    resolve("play \"A\"\n  about \"x\"\n  start five-out, 1 top, 2 top, 3 top, 4 top, 5 top\n"
            "  1 passes to 2\n");
    only_error("play.one-spot", 3, 0);
    ck_assert_uint_eq(line_of(r.book->plays.at[0].start_span), 3);
    resolve("play \"A\"\n  start 1 top, 2 1 ft above top, 3 left wing, 4 left corner, 5 left wing\n"
            "  1 passes to 2\n");
    ck_assert_uint_eq(how_many("play.one-spot"), 2);
    resolve("play \"A\"\n  start five-out, 2 2 ft above top\n  1 passes to 2\n");
    ck_assert_uint_eq(how_many("play.one-spot"), 0);
    resolve("play \"A\"\n  1 passes to 2\n");
    ck_assert_uint_eq(line_of(r.book->plays.at[0].start_span), 1);
}
END_TEST

START_TEST(who_starts_far_off_the_floor_is_one_message)
{
    resolve("play \"A\"\n  start five-out, 3 at (0, 1000)\n  1 passes to 3\n  3 shoots\n");
    only_error("play.off-floor", 2, 0);
    ck_assert(r.book->plays.at[0].broken);
    resolve("play \"A\"\n  start five-out, 3 out of bounds at left wing\n  1 passes to 2\n");
    ck_assert_uint_eq(how_many("play.off-floor"), 0);
}
END_TEST

/* ---- repeats ---- */

static const struct {
    const char *text, *words;
} repeats[] = {
    {"play \"A\"\n  step\n    1 passes to 2\n    1 cuts to left corner\n    3 fills top\n"
     "    5 fills left wing\n  step\n    repeat from step 1\n",
     "step 1 began with the ball in 1's hands; 3 stands there now, and 2 has the ball"},
    {"play \"A\"\n  step\n    1 passes to 2\n    repeat from step 1\n",
     "this line stands in step 1 itself"},
    {"play \"A\"\n  1 passes to 2\n  repeat from step 1\n", "this line stands in step 1 itself"},
    {"play \"A\"\n  step\n    1 passes to 2\n    1 cuts to the rim\n  step\n"
     "    repeat from step 1\n",
     "nobody stands now at top where 1 stood as step 1 began"},
    {"play \"A\"\n  step\n    1 passes to 2\n  step\n    repeat from step 7\n",
     "there is no step 7 before this one"},
};

START_TEST(a_repeat_that_cannot_be_says_what_is_missing)
{
    resolve(repeats[_i].text);
    ck_assert_uint_eq(how_many("play.repeat"), 1);
    ck_assert(r.book->plays.at[0].broken);
    for (size_t i = 0; i < r.diags.all.count; i++) {
        const struct diag *diag = &r.diags.all.at[i];
        if (strcmp(diag->row->id, "play.repeat") == 0) {
            ck_assert_msg(strstr(str_copy(&arena, diag->message).at, repeats[_i].words), "%.*s",
                          STR_ARG(diag->message));
        }
    }
}
END_TEST

START_TEST(a_repeat_takes_the_ball_where_a_pass_before_it_brings_it)
{
    resolve("play \"A\"\n  step\n    1 passes to 2\n    1 cuts to left corner\n    3 fills top\n"
            "    5 fills left wing\n  step\n    2 passes to 3\n  step\n    repeat from step 1\n");
    ck_assert_uint_eq(r.diags.errors, 0);
    ck_assert_uint_eq(r.book->plays.at[0].steps.at[2].tasks.at[0].who, body_attacker(3));
}
END_TEST

/* ---- nothing happens ---- */

START_TEST(where_nothing_happens_is_a_note)
{
    static const struct {
        const char *text;
        size_t notes;
    } wanted[] = {
        {"play \"A\"\n", 1},
        {"play \"A\"\n  start five-out\nplay \"B\" mirrors \"A\"\n", 1},
        {"play \"A\"\n  start five-out\n  step \"a\"\n  step \"b\"\n", 2},
        {"play \"A\"\n  start five-out\n  step\n    option \"a\"\n    option \"b\"\n      1 "
         "shoots\n",
         1},
        {"play \"A\"\n  start five-out\n  defense man\n  step\n    1 passes to 2\n"
         "    read x3 trails\n",
         1},
        {"play \"A\"\n  start five-out\n  1 passes to 2\n", 0},
        {"play \"A\"\n  start five-out\n  step\n    1 passes to 2\n", 0},
    };
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        resolve(wanted[i].text);
        ck_assert_msg(how_many("play.empty") == wanted[i].notes, "%s", wanted[i].text);
        ck_assert_uint_eq(r.diags.errors, 0);
    }
}
END_TEST

START_TEST(a_way_to_where_one_stands_is_a_note)
{
    resolve("play \"A\"\n  start five-out\n  3 fills 3's spot\n  4 cuts to right corner\n"
            "  2 v-cuts to right wing\n  5 stays\n");
    ck_assert_uint_eq(how_many("play.nowhere"), 2);
    ck_assert_uint_eq(r.diags.errors, 0);
    /* a pass that looks ahead to the catch is no reason to think that 2 stands there */
    resolve("play \"A\"\n  start five-out\n  1 passes to 2 at right elbow\n"
            "  2 cuts to right elbow\n");
    ck_assert_uint_eq(how_many("play.nowhere"), 0);
    resolve("play \"A\"\n  start five-out\n  3 cuts to the rim\n  then 3 fills 3's spot\n");
    ck_assert_uint_eq(how_many("play.nowhere"), 0);
    /* a fade back from a set-up is one; from his own corner it is none */
    resolve("play \"A\"\n  start five-out\n  5 screens for 3\n  3 fades off 5 to left wing\n");
    ck_assert_uint_eq(how_many("play.nowhere"), 1);
    resolve("play \"A\"\n  start five-out\n  3 sets up toward the rim\n  5 screens for 3\n"
            "  3 fades off 5 to left wing\n");
    ck_assert_uint_eq(how_many("play.nowhere"), 0);
}
END_TEST

START_TEST(a_defender_given_two_players_shows_both_lines)
{
    resolve("play \"A\"\n  start five-out\n  defense man\n  x1 guards 2\n  x3 guards 1\n"
            "  x1 guards 3\n  step\n    1 passes to 2\n");
    only_error("play.two-duties", 6, 4);
    resolve("play \"A\"\n  start five-out\n  defense man\n  x1 guards 2\n  x2 guards 2\n"
            "  step\n    1 passes to 2\n");
    ck_assert_uint_eq(r.diags.errors, 0); /* two on one player: a box-and-one does that */
}
END_TEST

#define CHASED(defense, lines)                                                                     \
    "play \"A\"\n  start five-out\n  defense " defense "\n" lines "  step\n    1 passes to 2\n"
static const struct {
    const char *text, *words; /* NULL: nothing is said of it */
} chased[] = {
    {CHASED("box-and-one", "  x1 guards 3\n"), NULL},
    {CHASED("box-and-one", "  x1 guards 3\n  x2 guards 4\n"), "x1 guards a man, and x2 is not"},
    {CHASED("box-and-one", "  x2 guards 4\n"), "x1 guards a man, and x2 is not"},
    {CHASED("triangle-and-two", "  x1 guards 3\n  x2 guards 4\n"), NULL},
    {CHASED("triangle-and-two", "  x1 guards 3\n  x2 guards 4\n  x5 guards 5\n"),
     "x1 and x2 guard a man, and x5 is not"},
    {CHASED("triangle-and-two", "  x1 guards 3\n  x2 guards 3\n"), "both guard 3"},
    {CHASED("zone 2-3", "  x2 guards 4\n"), NULL},
};

START_TEST(chasers_more_or_fewer_than_the_defense_has_are_said)
{
    resolve(chased[_i].text);
    ck_assert_uint_eq(how_many("play.chasers"), chased[_i].words != NULL);
    for (size_t i = 0; i < r.diags.all.count && chased[_i].words; i++) {
        const struct diag *diag = &r.diags.all.at[i];
        if (strcmp(diag->row->id, "play.chasers") == 0) {
            ck_assert_ptr_nonnull(strstr(str_copy(&arena, diag->message).at, chased[_i].words));
        }
    }
}
END_TEST

START_TEST(whom_a_chaser_guards_is_said_when_no_line_does)
{
    resolve(CHASED("box-and-one", ""));
    ck_assert_uint_eq(how_many("play.chaser-taken"), 1);
    resolve(CHASED("triangle-and-two", "  x1 guards 3\n"));
    ck_assert_uint_eq(how_many("play.chaser-taken"), 1); /* x2's, who gets 1 */
    ck_assert_uint_eq(r.book->plays.at[0].guards[body_defender(2)], body_attacker(1));
    resolve(CHASED("triangle-and-two", "  x1 guards 3\n  x2 guards 4\n"));
    ck_assert_uint_eq(how_many("play.chaser-taken"), 0);
}
END_TEST

START_TEST(half_a_floor_that_cannot_hold_the_play_is_said)
{
    resolve("play \"A\"\n  floor half\n  start press break\n  step\n    4 inbounds to 1\n");
    ck_assert_uint_eq(how_many("play.floor"), 1);
    resolve("play \"A\"\n  floor half\n  start five-out\n  step\n"
            "    1 dribbles to backcourt top\n");
    ck_assert_uint_eq(how_many("play.floor"), 1);
    resolve("play \"A\"\n  start press break\n  step\n    4 inbounds to 1\n");
    ck_assert_uint_eq(how_many("play.floor"), 0);
    resolve("play \"A\"\n  floor half\n  start five-out\n  step\n    1 passes to 2\n");
    ck_assert_uint_eq(how_many("play.floor"), 0);
}
END_TEST

START_TEST(a_coach_has_the_ball_in_drills_only)
{
    resolve("play \"A\"\n  start five-out\n  ball coach\n  step\n    1 cuts to the rim\n");
    only_error("text.drill-only", 3, 0);
    resolve("drill \"A\"\n  start 1 top, 2 left wing\n  ball coach\n  step\n"
            "    coach passes to 1\n");
    ck_assert_uint_eq(r.diags.errors, 0);
}
END_TEST

START_TEST(a_tied_step_names_the_step_it_looks_in)
{
    resolve("play \"A\"\n  start five-out\n  step\n    1 passes to 2\n"
            "  step as 5 screens\n    5 screens for 3\n");
    only_error("play.no-event", 5, 0);
    struct strbuf said;
    strbuf_init(&said, &arena);
    print_diags(&said, &r);
    ck_assert_msg(strstr(said.at, "no sentence of step 1 says that 5 does this"), "%s", said.at);
}
END_TEST

/* What hangs on a line that could not be read is not told of as well. */
static const struct {
    const char *id, *text;
    unsigned line;
} causes[] = {
    {"text.setting",
     "play \"P\"\n  start five-out\n  defense mann\n  1 passes to 2\n  x3 denies\n  x4 helps\n", 3},
    {"text.setting", "play \"P\"\n  start 1 topp, 2 right wing\n  3 cuts to the rim\n  4 stays\n",
     2},
    {"text.player-range",
     "play \"P\"\n  start five-out\n  defense man\n  1 passes to 2\n  read x9 trails \"A\"\n"
     "    3 cuts to the rim\n",
     5},
    {"text.unknown-line",
     "play \"P\"\n  start five-out\n  stepp \"One\"\n    1 passes to 2\n    3 cuts to the rim\n"
     "  step \"Two\"\n    2 passes to 1\n",
     3},
    {"text.verb-unknown",
     "play \"P\"\n  start five-out\n  5 screenz for 3\n  3 curls off the screen\n  5 rolls\n"
     "  after 5 screens, 4 clears to right block\n",
     3},
};

START_TEST(one_cause_is_one_error)
{
    resolve(causes[_i].text);
    only_error(causes[_i].id, causes[_i].line, 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("play faults");
    TCase *all = tcase_create("faults");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, runs_too_deep_are_said_once_however_many);
    tcase_add_test(all, a_defender_given_two_players_shows_both_lines);
    tcase_add_loop_test(all, chasers_more_or_fewer_than_the_defense_has_are_said, 0,
                        (int)(sizeof chased / sizeof *chased));
    tcase_add_test(all, whom_a_chaser_guards_is_said_when_no_line_does);
    tcase_add_test(all, half_a_floor_that_cannot_hold_the_play_is_said);
    tcase_add_test(all, a_coach_has_the_ball_in_drills_only);
    tcase_add_test(all, a_tied_step_names_the_step_it_looks_in);
    tcase_add_test(all, a_step_runs_so_many_actions);
    tcase_add_test(all, lines_run_past_a_steps_limit_are_said_once);
    tcase_add_test(all, a_book_holds_so_many_actions);
    tcase_add_test(all, too_many_of_a_kind_are_said_once);
    tcase_add_test(all, behind_the_last_message_kept_the_rest_is_counted);
    tcase_add_test(all, a_circle_of_actions_is_said_once_used_or_not);
    tcase_add_test(all, an_action_run_in_two_places_is_no_circle);
    tcase_add_test(all, a_step_that_is_the_same_as_itself_is_said_once);
    tcase_add_loop_test(all, a_time_that_nobody_can_keep_is_refused, 0,
                        (int)(sizeof times / sizeof *times));
    tcase_add_test(all, ways_on_that_contradict_show_both_places);
    tcase_add_test(all, the_first_step_follows_no_branch);
    tcase_add_test(all, all_who_start_on_one_spot_are_one_message_at_the_start_line);
    tcase_add_test(all, who_starts_far_off_the_floor_is_one_message);
    tcase_add_loop_test(all, one_cause_is_one_error, 0, (int)(sizeof causes / sizeof *causes));
    tcase_add_loop_test(all, a_repeat_that_cannot_be_says_what_is_missing, 0,
                        (int)(sizeof repeats / sizeof *repeats));
    tcase_add_test(all, a_repeat_takes_the_ball_where_a_pass_before_it_brings_it);
    tcase_add_test(all, where_nothing_happens_is_a_note);
    tcase_add_test(all, a_way_to_where_one_stands_is_a_note);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
