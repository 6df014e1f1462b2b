/* SPDX-License-Identifier: MIT */
/* Every verb has words, told to everybody and to the player; no word takes a player for a man. */
#include <string.h>

#include "language/tell/tell.h"
#include "suite.h"

/* Five on the floor at the five-out spots, each guarded; one step of the tasks given. */
static void make_play(struct play *play, const struct task *tasks, size_t count)
{
    *play = (struct play){.rules = COURT_HIGH_SCHOOL, .players = 5, .ball = body_attacker(1)};
    play->court = court_of(play->rules);
    play->speed = level_of(LEVEL_U16);
    for (body b = 0; b < BODY_COUNT; b++) {
        play->guards[b] = BODY_NONE;
    }
    size_t index;
    ck_assert(formation_find(STR("fiveout"), &index));
    for (int n = 1; n <= 5; n++) {
        struct start_body *start = &play->start[body_attacker(n)];
        start->on_floor = true;
        start->at = formation_point(play->court, &formation_at(index)->at[n - 1]);
        play->guards[body_defender(n)] = body_attacker(n);
        play->start[body_defender(n)].on_floor = true;
    }
    struct step step = {.number = 1, .after_branch = -1};
    for (size_t i = 0; i < count; i++) {
        VEC_PUSH(&arena, &step.tasks, tasks[i]);
    }
    VEC_PUSH(&arena, &play->steps, step);
}

static struct task task_of(const struct play *play, enum verb verb, int who, int other)
{
    static const enum task_kind kinds[] = {
        [VERB_MOVE] = TASK_MOVE,         [VERB_HOLD] = TASK_HOLD,
        [VERB_CARRY] = TASK_CARRY,       [VERB_PASS] = TASK_PASS,
        [VERB_EXCHANGE] = TASK_EXCHANGE, [VERB_SHOOT] = TASK_SHOOT,
        [VERB_SCREEN] = TASK_SCREEN,     [VERB_USE] = TASK_USE};
    (void)play;
    const struct verb_row *row = verb_row(verb);
    struct task task = {.kind = kinds[row->task],
                        .verb = verb,
                        .who = body_attacker(who),
                        .other = body_attacker(other),
                        .other2 = BODY_NONE,
                        .on = BODY_NONE,
                        .path_who = BODY_NONE,
                        .goal = goal_none(),
                        .path_goal = goal_none(),
                        .face = goal_none(),
                        .effort = row->pace,
                        .shape = row->shape,
                        .screen_task = -1,
                        .order = 1,
                        .group = 1,
                        .duration = 1};
    task.goal.kind = GOAL_POINT;
    task.goal.spot = SPOT_WING;
    task.goal.side = SIDE_LEFT;
    task.face = task.goal;
    return task;
}

static bool has_word(struct str text, const char *word)
{
    size_t size = strlen(word);
    for (size_t i = 0; i + size <= text.size; i++) {
        bool before = i > 0 && ((text.at[i - 1] | 32) >= 'a' && (text.at[i - 1] | 32) <= 'z');
        char next = i + size < text.size ? text.at[i + size] : ' ';
        bool after = (next | 32) >= 'a' && (next | 32) <= 'z';
        if (!before && !after && memcmp(text.at + i, word, size) == 0) {
            return true;
        }
    }
    return false;
}

static void sounds_right(struct str text, enum verb verb)
{
    static const char *const never[] = {"he", "his", "him", "she", "her", "He", "His", "nobody"};
    const char *words = verb_row(verb)->words;
    ck_assert_msg(text.size > 0, "%s: nothing is told", words);
    ck_assert_msg(text.at[text.size - 1] == '.', "%s: no full stop", words);
    ck_assert_msg(!memchr(text.at, '{', text.size), "%s: a slot is left: %.*s", words,
                  STR_ARG(text));
    ck_assert_msg(!strstr(text.at, "  "), "%s: two blanks: %s", words, text.at);
    for (size_t i = 0; i < sizeof never / sizeof *never; i++) {
        ck_assert_msg(!has_word(text, never[i]), "%s says %s: %s", words, never[i], text.at);
    }
}

START_TEST(every_verb_of_an_attacker_has_words)
{
    enum verb verb = (enum verb)_i;
    if (verb_row(verb)->task == VERB_GUARD) {
        return;
    }
    struct play play;
    struct task task = task_of(&play, verb, 3, 5);
    make_play(&play, &task, 1);
    struct str caption = tell_task(&arena, &play, &play.steps.at[0], -1, 0);
    sounds_right(tell_strip(&arena, caption), verb);
    ck_assert_msg(caption.at[0] == TELL_BOLD && caption.at[1] == '3' && caption.at[2] == TELL_PLAIN,
                  "%s does not begin with its player", verb_row(verb)->words);
    struct str job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(3), false);
    sounds_right(tell_strip(&arena, job), verb);
    ck_assert(job.at[0] >= 'A' && job.at[0] <= 'Z');
    ck_assert_msg(!memchr(job.at, '3', job.size) || has_word(tell_strip(&arena, job), "x3"),
                  "%s names the player who is told: %s", verb_row(verb)->words, job.at);
}
END_TEST

START_TEST(two_players_of_a_sentence_are_told_once)
{
    struct play play;
    struct task tasks[2] = {task_of(&play, VERB_CLEARS, 3, 5), task_of(&play, VERB_CLEARS, 4, 5)};
    make_play(&play, tasks, 2);
    struct str both = tell_task(&arena, &play, &play.steps.at[0], -1, 0);
    ck_assert_str_eq(tell_strip(&arena, both).at, "3 and 4 clear out to the left wing.");
    ck_assert_uint_eq(tell_task(&arena, &play, &play.steps.at[0], -1, 1).size, 0);
}
END_TEST

START_TEST(a_supplied_run_is_told_only_to_its_player)
{
    struct play play;
    struct task task = task_of(&play, VERB_CUTS, 3, 5);
    task.supplied = true;
    task.group = task.order = 0;
    make_play(&play, &task, 1);
    ck_assert_uint_eq(tell_task(&arena, &play, &play.steps.at[0], -1, 0).size, 0);
    struct str job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(3), false);
    ck_assert_str_eq(job.at, "Cut to the left wing to meet the pass.");
}
END_TEST

START_TEST(one_who_stands_still_is_told_why)
{
    struct play play;
    make_play(&play, NULL, 0);
    struct str job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(4), false);
    ck_assert_str_eq(job.at,
                     "Stay deep in the right corner and watch the ball. If your defender goes to "
                     "help, you are open.");
    job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(1), false);
    ck_assert_str_eq(job.at, "Hold the ball at the top.");
    for (int n = 1; n <= 5; n++) { /* a zone: nobody has a defender of one's own */
        play.guards[body_defender(n)] = BODY_NONE;
    }
    job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(4), false);
    ck_assert_str_eq(job.at,
                     "Stay deep in the right corner and watch the ball. If the defender near you "
                     "goes to help, you are open.");
}
END_TEST

static void send_the_defense_home(struct play *play)
{
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        play->start[x].on_floor = false;
    }
}

/* Guards are known by number also where nobody defends. */
START_TEST(without_a_defense_no_verb_speaks_of_a_defender)
{
    enum verb verb = (enum verb)_i;
    if (verb_row(verb)->task == VERB_GUARD) {
        return;
    }
    struct play play;
    struct task task = task_of(&play, verb, 3, 5);
    make_play(&play, &task, 1);
    send_the_defense_home(&play);
    struct str caption = tell_strip(&arena, tell_task(&arena, &play, &play.steps.at[0], -1, 0));
    sounds_right(caption, verb);
    ck_assert_msg(!strstr(caption.at, "defen") && !strstr(caption.at, "x3") &&
                      !strstr(caption.at, "x5"),
                  "%s", caption.at);
    for (int n = 1; n <= 5; n++) {
        struct str job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(n), false);
        job = tell_strip(&arena, job);
        sounds_right(job, verb);
        ck_assert_msg(!strstr(job.at, "defen") && !strstr(job.at, "x3") && !strstr(job.at, "x5"),
                      "%s", job.at);
    }
}
END_TEST

/* 1 passes to 2, whom two ways leave with the ball; 1 has nothing to do in either. */
START_TEST(one_who_passed_before_the_read_does_not_hold_the_ball)
{
    struct play play;
    struct task pass = task_of(&play, VERB_PASSES, 1, 2), cut = task_of(&play, VERB_CUTS, 1, 5);
    pass.goal = goal_none();
    make_play(&play, &pass, 1);
    struct step *step = &play.steps.at[0];
    step->tasks.at[0].planned = play.start[body_attacker(1)].at;
    struct branch idle = {.kind = BRANCH_OPTION, .title = STR("Swing")};
    struct branch busy = {.kind = BRANCH_OPTION, .title = STR("Cut")};
    VEC_PUSH(&arena, &busy.tasks, cut);
    VEC_PUSH(&arena, &step->branches, idle);
    VEC_PUSH(&arena, &step->branches, busy);
    struct str one = tell_job(&arena, &play, step, 0, body_attacker(1), false);
    ck_assert_str_eq(tell_strip(&arena, one).at,
                     "On \xE2\x80\x9CSwing\xE2\x80\x9D: stay at the top and watch the ball; the "
                     "next pass can come back "
                     "to you.");
    struct str two = tell_job(&arena, &play, step, 0, body_attacker(2), false);
    ck_assert_str_eq(tell_strip(&arena, two).at,
                     "On \xE2\x80\x9CSwing\xE2\x80\x9D: hold the ball on the right wing.");
}
END_TEST

static const struct vec2 feet_in_the_lane[] = {{0, 0}, {0, .6}, {0, 2.6}};

/* 4 has cut there, and has nothing to do in the step after. */
START_TEST(one_who_ends_under_the_basket_is_not_told_to_stay_there)
{
    struct play play;
    struct task cut = task_of(&play, VERB_CUTS, 4, 5);
    make_play(&play, &cut, 1);
    VEC_PUSH(&arena, &play.steps, ((struct step){.number = 2, .after_branch = -1}));
    cut.planned = feet_in_the_lane[_i];
    play.steps.at[0].tasks.at[0] = cut;
    struct str job = tell_job(&arena, &play, &play.steps.at[1], -1, body_attacker(4), false);
    ck_assert_str_eq(
        job.at,
        "Your part is done here. Watch the ball, and leave the lane before 3 seconds are over.");
    play.is_drill = true; /* where nobody counts them */
    job = tell_job(&arena, &play, &play.steps.at[1], -1, body_attacker(4), false);
    ck_assert_str_eq(job.at, "Your part is done here. Watch the ball and be ready to move.");
}
END_TEST

START_TEST(one_who_has_not_run_yet_has_no_part_that_is_done)
{
    struct play play;
    make_play(&play, NULL, 0);
    play.start[body_attacker(4)].at = feet_in_the_lane[_i];
    struct str job = tell_job(&arena, &play, &play.steps.at[0], -1, body_attacker(4), false);
    static const char *const at[] = {"Stay at the rim", "Stay at the front of the rim",
                                     "Stay near here"};
    struct str wanted = str_format(
        &arena, "%s and watch the ball, but never 3 seconds in the lane; step out and in again.",
        at[_i]);
    ck_assert_str_eq(job.at, wanted.at);
}
END_TEST

/* 3 screens for 5, and slips it: 5 must not wait for it. */
START_TEST(who_would_have_used_a_screen_that_is_slipped_is_told_that_none_comes)
{
    struct play play;
    struct task tasks[] = {task_of(&play, VERB_SCREENS, 3, 5), task_of(&play, VERB_COMES, 5, 3),
                           task_of(&play, VERB_SLIPS, 3, 5)};
    for (int i = 0; i < 3; i++) {
        tasks[i].group = i + 1;
        tasks[i].screen_task = i == 0 ? -1 : 0;
    }
    make_play(&play, tasks, 3);
    struct step *step = &play.steps.at[0];
    struct str set = tell_job(&arena, &play, step, -1, body_attacker(5), false);
    ck_assert_str_eq(tell_strip(&arena, set).at, "When 3 is still, come off 3 to the left wing. "
                                                 "Go shoulder to hip with 3.");
    step->tasks.at[2].slip = true;
    struct str job = tell_job(&arena, &play, step, -1, body_attacker(5), false);
    ck_assert_str_eq(tell_strip(&arena, job).at,
                     "As 3 slips, go to the left wing without the screen.");
    static const char *const told[] = {"3 goes as if to screen for 5 on the left wing.",
                                       "5 goes to the left wing without the screen.",
                                       "3 slips to the left wing before the screen is set."};
    for (size_t i = 0; i < 3; i++) {
        struct str caption = tell_task(&arena, &play, step, -1, i);
        ck_assert_str_eq(tell_strip(&arena, caption).at, told[i]);
    }
    job = tell_job(&arena, &play, step, -1, body_attacker(3), false); /* x5 is nobody to look for */
    ck_assert_ptr_null(strstr(job.at, "Look for"));
}
END_TEST

struct delay_case {
    double seconds;
    const char *told;
};
static const struct delay_case delay_cases[] = {
    {.1, "3 cuts to the left wing right after 1 passes."},
    {.5, "3 cuts to the left wing right after 1 passes."},
    {.75, "3 cuts to the left wing, about a second after 1 passes."},
    {1.4, "3 cuts to the left wing, about a second after 1 passes."},
    {1.6, "3 cuts to the left wing, about two seconds after 1 passes."},
    {12, "3 cuts to the left wing, about 12 seconds after 1 passes."},
};

START_TEST(a_time_is_told_as_a_player_can_count_it)
{
    struct play play;
    struct task tasks[2] = {task_of(&play, VERB_PASSES, 1, 2), task_of(&play, VERB_CUTS, 3, 5)};
    tasks[1].group = 2;
    struct wait wait = {.kind = WAIT_TASK,
                        .task = 0,
                        .moment = MOMENT_STARTED,
                        .delay = delay_cases[_i].seconds,
                        .fixed = _i % 2,
                        .written = true};
    VEC_PUSH(&arena, &tasks[1].waits, wait);
    make_play(&play, tasks, 2);
    struct str caption = tell_task(&arena, &play, &play.steps.at[0], -1, 1);
    ck_assert_str_eq(tell_strip(&arena, caption).at, delay_cases[_i].told);
}
END_TEST

START_TEST(a_step_says_on_which_of_several_ways_it_goes_on)
{
    struct play play;
    make_play(&play, NULL, 0);
    struct step next = {.number = 2, .after_branch = 1};
    VEC_PUSH(&arena, &play.steps, next);
    struct step *first = &play.steps.at[0];
    struct branch way = {.kind = BRANCH_OPTION, .title = STR("Swing")};
    VEC_PUSH(&arena, &first->branches, way);
    play.steps.at[1].after_branch = 0;
    ck_assert_uint_eq(tell_after(&arena, &play, &play.steps.at[1]).size, 0); /* the only way */
    VEC_PUSH(&arena, &first->branches, way);
    ck_assert_str_eq(tell_after(&arena, &play, &play.steps.at[1]).at, "after 1a");
    play.steps.at[1].after_branch = 1;
    ck_assert_str_eq(tell_after(&arena, &play, &play.steps.at[1]).at, "after 1b");
    ck_assert_uint_eq(tell_after(&arena, &play, first).size, 0);
    ck_assert(str_starts(tell_diagram(&arena, &play, &play.steps.at[1], -1, 0), "After 1b. 1 has"));
}
END_TEST

static struct str told(const struct play *play, struct goal goal)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    tell_goal(&out, play, &goal);
    return strbuf_str(&out);
}

START_TEST(places_are_told_in_words)
{
    struct play play;
    make_play(&play, NULL, 0);
    struct goal corner = goal_none(), above = goal_none(), line = goal_none(), mine = goal_none();
    corner.kind = GOAL_POINT;
    corner.spot = SPOT_CORNER;
    corner.side = SIDE_LEFT;
    ck_assert_str_eq(told(&play, corner).at, "the left corner");
    above.kind = GOAL_OFFSET;
    above.a = &corner;
    above.direction = ABOVE;
    above.length = .9144;
    ck_assert_str_eq(told(&play, above).at, "a spot 3 ft toward half court from the left corner");
    line.kind = GOAL_LINE;
    line.spot = SPOT_BASELINE;
    ck_assert_str_eq(told(&play, line).at, "the baseline");
    mine.kind = GOAL_POINT;
    mine.who = body_attacker(3);
    ck_assert_str_eq(told(&play, mine).at, "3's spot");
    /* A bare point is called after the spot it is near, else by where it lies from the nearest. */
    ck_assert_str_eq(told(&play, goal_at(court_spot(play.court, SPOT_TOP, SIDE_NONE))).at,
                     "the top");
    ck_assert_str_eq(told(&play, goal_at(vec2_of(-3.048, 9.144))).at, "above the left slot");
    ck_assert_str_eq(told(&play, goal_at(vec2_of(0, 9 * FEET))).at, "just below the nail");
}
END_TEST

START_TEST(part_of_the_way_is_told_without_where_it_begins)
{
    struct play play;
    struct task goes = task_of(&play, VERB_GOES, 2, 1);
    struct goal from = goal_none(), to = goal_none();
    from.kind = to.kind = GOAL_BODY;
    from.who = body_attacker(2);
    to.who = body_attacker(1);
    goes.goal = goal_none();
    goes.goal.kind = GOAL_MIX;
    goes.goal.a = &from;
    goes.goal.b = &to;
    goes.goal.fraction = .5;
    make_play(&play, &goes, 1);
    struct str half = tell_task(&arena, &play, &play.steps.at[0], -1, 0);
    ck_assert_str_eq(tell_strip(&arena, half).at, "2 goes halfway to 1.");
    goes.goal.fraction = 1 / 3.0;
    make_play(&play, &goes, 1);
    struct str third = tell_task(&arena, &play, &play.steps.at[0], -1, 0);
    ck_assert_str_eq(tell_strip(&arena, third).at, "2 goes a third of the way to 1.");
}
END_TEST

START_TEST(who_plants_in_the_back_court_does_not_walk_in)
{
    struct play play;
    make_play(&play, NULL, 0);
    struct task cut = task_of(&play, VERB_V_CUTS, 2, 1);
    make_play(&play, &cut, 1);
    ck_assert_ptr_nonnull(
        strstr(tell_task(&arena, &play, &play.steps.at[0], -1, 0).at, "walks in, plants"));
    cut.goal.at = vec2_of(7, 20);
    cut.goal.backcourt = true;
    make_play(&play, &cut, 1);
    ck_assert_ptr_nonnull(strstr(tell_task(&arena, &play, &play.steps.at[0], -1, 0).at,
                                 "walks up the floor, plants"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("tell");
    TCase *all = tcase_create("tell");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, every_verb_of_an_attacker_has_words, 0, VERB_COUNT);
    tcase_add_test(all, two_players_of_a_sentence_are_told_once);
    tcase_add_test(all, a_supplied_run_is_told_only_to_its_player);
    tcase_add_test(all, one_who_stands_still_is_told_why);
    tcase_add_loop_test(all, without_a_defense_no_verb_speaks_of_a_defender, 0, VERB_COUNT);
    tcase_add_test(all, one_who_passed_before_the_read_does_not_hold_the_ball);
    tcase_add_loop_test(all, one_who_ends_under_the_basket_is_not_told_to_stay_there, 0,
                        sizeof feet_in_the_lane / sizeof *feet_in_the_lane);
    tcase_add_loop_test(all, one_who_has_not_run_yet_has_no_part_that_is_done, 0,
                        sizeof feet_in_the_lane / sizeof *feet_in_the_lane);
    tcase_add_test(all, who_would_have_used_a_screen_that_is_slipped_is_told_that_none_comes);
    tcase_add_loop_test(all, a_time_is_told_as_a_player_can_count_it, 0,
                        sizeof delay_cases / sizeof *delay_cases);
    tcase_add_test(all, a_step_says_on_which_of_several_ways_it_goes_on);
    tcase_add_test(all, places_are_told_in_words);
    tcase_add_test(all, part_of_the_way_is_told_without_where_it_begins);
    tcase_add_test(all, who_plants_in_the_back_court_does_not_walk_in);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
