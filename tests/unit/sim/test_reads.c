/* SPDX-License-Identifier: MIT */
/* Reads that the defense cannot give, and what else of the words cannot be seen on the floor. */
#include "told.h"

#include <string.h>

static struct told told;

#define STAND                                                                                      \
    "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left "       \
    "elbow\n"                                                                                      \
    "  defense man\n  step\n"

static const struct {
    const char *text, *words;
} cannot[] = {
    {"    5 screens for 2\n    read x3 goes under \"A\"\n      2 comes off 5 to top\n",
     "x3 guards 3, and 3 uses no screen"},
    {"    5 screens for 2\n    read x4 trails \"A\"\n      2 curls off 5\n",
     "x4 guards 4, and 4 goes nowhere"},
    {"    5 ball screens for 1\n    read x4 hedges \"A\"\n      1 dribbles off 5 to right wing\n",
     "x4 guards 4, and 4 sets no screen"},
    {"    5 ball screens for 1\n    read x3 ices \"A\"\n      1 dribbles off 5 to right wing\n",
     "x3 guards 3, and 3 is at no screen"},
    {"    5 screens for 3\n    read x3 and x4 switch \"A\"\n      3 comes off 5 to top\n",
     "x3 guards 3, and 3 is at no screen with the other one's man"},
    {"    1 passes to 2\n    if x3 goes over, 3 cuts to the rim\n",
     "x3 guards 3, and 3 uses no screen"},
    {"    1 passes to 2\n    read x5 drops \"A\"\n      3 cuts to the rim\n",
     "x5 guards 5, and 5 sets no screen"},
    {"    5 screens for 3\n    read x5 ices \"A\"\n      3 comes off 5 to left wing\n",
     "x5 guards 5, and 5 is at no screen on the ball"},
    {"    5 ball screens for 1\n    read x1 goes under 4 \"A\"\n      1 drives off 5\n",
     "4 has no part in that screen"},
    {"    1 passes to 2\n    read x5 doubles 4 \"A\"\n      3 cuts to the rim\n",
     "4 never has the ball"},
    {"    1 passes to 2\n    read x5 traps 4 \"A\"\n      3 cuts to the rim\n",
     "4 never has the ball"},
    {"    1 passes to 2\n    read x2 and x5 trap 4 \"A\"\n      3 cuts to the rim\n",
     "4 never has the ball"},
    {"    1 passes to 2\n    read x5 stunts at 4 \"A\"\n      3 cuts to the rim\n",
     "4 never has the ball"},
    {"    1 passes to 2\n    read x4 closes out \"A\"\n      3 cuts to the rim\n",
     "x4 guards 4, and 4 never has the ball"},
    {"    3 cuts to the rim\n    read 1 is denied \"A\"\n      1 dribbles to left wing\n",
     "x1 guards 1, and 1 has the ball all the while"},
    {"    3 cuts to the rim\n    read x1 denies \"A\"\n      1 dribbles to left wing\n",
     "1 has the ball all the while"},
    {"    3 cuts to the rim\n    read x1 overplays \"A\"\n      1 dribbles to left wing\n",
     "1 has the ball all the while"},
    {"    3 cuts to the rim\n    read x1 trails \"A\"\n      1 dribbles to left wing\n",
     "1 has the ball all the while"},
    {"    3 cuts to the rim\n    read x5 fronts 1 \"A\"\n      1 dribbles to left wing\n",
     "1 has the ball all the while"},
    {"    1 passes to 2\n    read x2 boxes out \"A\"\n      2 drives to the rim\n",
     "nobody shoots in this step"},
    {"    1 passes to 2\n    read x4 tags 5 \"A\"\n      3 cuts to the rim\n", "5 goes nowhere"},
    {"    1 passes to 2\n    read x4 bumps 5 \"A\"\n      3 cuts to the rim\n", "5 goes nowhere"},
    {"    1 passes to 2\n    read x4 helps \"A\"\n      3 cuts to left wing\n",
     "nobody comes at the rim with the ball"},
    {"    1 passes to 2\n    read x4 recovers \"A\"\n      3 cuts to left wing\n",
     "x4 guards 4, and 4 is near"},
    {"    5 screens for 3\n    read x3 trails or x4 hedges \"A\"\n      3 curls off 5\n",
     "x4 guards 4, and 4 sets no screen"}, /* only the first is run, all are looked at */
    /* the ball goes out to the wing: that calls for nobody */
    {"    1 dribbles to left wing\n    read x4 helps \"A\"\n      1 passes to 3\n",
     "nobody comes at the rim with the ball"},
    {"    1 drives to the rim\n    read x1 helps \"A\"\n      1 passes to 3\n",
     "x1 guards 1, and 1 is the one who drives"},
    {"    1 passes to 2\n    read x4 helps to left block \"A\"\n      2 passes to 1\n",
     "nobody drives, cuts or screens"},
    {"    1 passes to 2\n    read x4 rotates to left block \"A\"\n      2 passes to 1\n",
     "nobody drives, cuts or screens"},
    {"    1 passes to 2\n    read x4 denies \"A\"\n      3 cuts to the rim\n",
     "x4 guards 4, and 4 has no part in this step"},
    {"    1 passes to 2\n    4 stays\n    read 4 is denied \"A\"\n      3 cuts to the rim\n",
     "4 has no part in this step"},
    {"    1 passes to 2\n    read x4 sags \"A\"\n      3 cuts to the rim\n",
     "4 has no part in this step"},
    {"    1 passes to 2\n    read x4 stays \"A\"\n      3 cuts to the rim\n",
     "4 has no part in this step"},
    {"    1 passes to 2\n    read 4 is open \"A\"\n      3 cuts to the rim\n",
     "4 has no part in this step"},
    {"    1 dribbles to left wing\n    read x1 closes out \"A\"\n      1 passes to 3\n",
     "1 has the ball from the start"},
    {"    5 screens for 2\n    read x5 trails \"A\"\n      2 curls off 5\n",
     "x5 guards 5, and 5 goes nowhere"}, /* he goes to set it, and is met there */
    {"    1 passes to 2\n    read x5 switches \"A\"\n      3 cuts to the rim\n",
     "x5 guards 5, and 5 is at no screen"}, /* told before they change men */
};

/* The same of sentences, as they start. */
static const struct {
    const char *text, *words, *help;
} idle[] = {
    {"    x3 goes under\n", "x3 guards 3, and 3 uses no screen",
     "write the screen it answers: 5 screens for 3"},
    {"    x3 goes over\n", "3 uses no screen", "5 screens for 3"},
    {"    x3 trails\n", "3 goes nowhere", "write where: 3 cuts to the rim"},
    {"    x5 hedges\n", "5 sets no screen", "write the screen it answers: 5 screens for 1"},
    {"    x5 drops\n", "5 sets no screen", "5 screens for 1"},
    {"    x5 ices\n", "5 is at no screen on the ball", "5 ball screens for 1"},
    {"    x5 doubles 4\n", "4 never has the ball", "write the pass, 2 passes to 4, or name"},
    {"    x5 traps 4\n", "4 never has the ball", "1 passes to 4"},
    {"    x5 stunts at 4\n", "4 never has the ball", "2 passes to 4"},
    {"    x4 closes out\n", "4 never has the ball", "2 passes to 4"},
    {"    after 1 passes, x3 closes out on 1\n", "1 never has the ball", "2 passes to 1"},
    {"    after 1 passes, x2 denies\n", "2 has the ball all the while", "2 passes to 1"},
    {"    after 1 passes, x2 overplays\n", "2 has the ball all the while", "2 passes to 1"},
    {"    after 1 passes, x2 fronts\n", "2 has the ball all the while", "2 passes to 1"},
    {"    x4 bumps 5\n", "5 goes nowhere", "5 cuts to the rim"},
    {"    x4 tags 5\n", "5 goes nowhere", "5 cuts to the rim"},
    {"    at 0 s, x1 recovers\n", "x1 guards 1, and 1 is near", "write first what draws"},
};

START_TEST(a_read_that_cannot_come_about_is_said)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, STAND "%s", cannot[_i].text);
    told_run(&told, strbuf_str(&text).at);
    told_says(&told, "run.read", cannot[_i].words);
}
END_TEST

START_TEST(a_defenders_sentence_that_nothing_calls_for_is_said)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, STAND "    1 passes to 2\n%s", idle[_i].text);
    told_run(&told, strbuf_str(&text).at);
    told_says(&told, "run.duty", idle[_i].words);
    for (size_t i = 0; i < told.text.diags.all.count; i++) {
        const struct diag *diag = &told.text.diags.all.at[i];
        if (strcmp(diag->row->id, "run.duty") == 0) {
            const char *help = str_copy(&arena, diag->help).at;
            ck_assert_msg(strstr(help, idle[_i].help) != NULL, "%s", help);
        }
    }
}
END_TEST

/* Every word of a defender's that needs something is told of what it lacks. */
START_TEST(each_word_of_a_defender_is_looked_at)
{
    static const char *const always[] = {"guards", "sags", "stays", "rotates", "switches", "helps"};
    for (int v = 0; v < VERB_COUNT; v++) {
        const struct verb_row *row = verb_row((enum verb)v);
        bool told_of = row->task != VERB_GUARD;
        for (size_t i = 0; i < sizeof always / sizeof *always; i++) {
            told_of |= strcmp(row->words, always[i]) == 0;
        }
        for (size_t i = 0; i < sizeof idle / sizeof *idle && !told_of; i++) {
            told_of = strstr(idle[i].text, row->words) != NULL;
        }
        ck_assert_msg(told_of || strcmp(row->words, "boxes out") == 0, "%s", row->words);
    }
}
END_TEST

/* Whatever a read may have a defender do asks for something on the floor; he may always have
 * changed his man. */
START_TEST(each_word_of_a_read_has_a_floor_on_which_it_cannot_be)
{
    for (int v = 0; v < VERB_COUNT; v++) {
        const struct verb_row *row = verb_row((enum verb)v);
        bool told_of = row->task != VERB_GUARD && strcmp(row->words, "stays") != 0;
        for (size_t i = 0; i < sizeof cannot / sizeof *cannot && !told_of; i++) {
            const char *read = strstr(cannot[i].text, "read "), *text = cannot[i].text;
            read = read ? read : strstr(text, "if ");
            told_of = read && (strstr(read, row->words) || strstr(read, row->bare));
        }
        ck_assert_msg(told_of || strcmp(row->words, "guards") == 0, "%s", row->words);
    }
}
END_TEST

START_TEST(one_that_comes_too_late_is_said)
{
    told_run(&told, STAND "    x4 doubles 1\n    at 0.1 s, 1 passes to 2\n");
    told_says(&told, "run.duty-late", "x4 never gets to 1");
    told_run(&told, STAND "    x4 tags 2\n    2 cuts to right block\n    1 holds for 1 s\n");
    ck_assert(strstr(told_said(&told), "run.duty-late") == NULL);
}
END_TEST

START_TEST(a_sentence_that_all_reads_share_is_said_once)
{
    told_run(&told, STAND "    x5 doubles 4\n    1 passes to 2\n    read x3 denies \"A\"\n      3 "
                          "cuts to the rim\n    read x3 sags \"B\"\n      3 shoots\n");
    int said = 0;
    for (size_t i = 0; i < told.text.diags.all.count; i++) {
        said += strcmp(told.text.diags.all.at[i].row->id, "run.duty") == 0;
    }
    ck_assert_int_eq(said, 1);
}
END_TEST

static const char *const can[] = {
    "    5 screens for 3\n    read x3 goes under \"A\"\n      3 comes off 5 to left wing\n",
    "    read x3 goes over \"A\"\n      3 comes off 5 to left wing\n",
    "    5 screens for 3\n  step\n    read x3 goes under \"A\"\n      3 fades off 5\n",
    "    5 screens for 3\n    read x3 and x5 switch \"A\"\n      5 slips\n",
    "    5 ball screens for 1\n    read x5 ices \"A\"\n      1 rejects 5\n",
    "    5 ball screens for 1\n    read x1 ices \"A\"\n      1 rejects 5\n",
    "    1 dribbles at 2\n    1 hands off to 2\n    read x2 goes under \"A\"\n      2 shoots\n",
    "    1 passes to 2\n    read x3 trails \"A\"\n      3 cuts to the rim\n",
    "    1 passes to 2\n    read x3 overplays \"A\"\n      3 back cuts\n",
    "    5 screens for 3\n    read otherwise \"A\"\n      3 comes off 5 to left wing\n",
    "    5 ball screens for 1\n    read x1 overplays \"A\"\n      1 rejects 5\n",
    ("    5 ball screens for 1\n    read x1 goes under 5 \"A\"\n      1 dribbles off 5 to left "
     "wing\n"),
    "    5 ball screens for 1\n    read x5 hedges 1 \"A\"\n      1 dribbles off 5 to left wing\n",
    "    1 passes to 2\n    read x4 traps \"A\"\n      2 passes to 4\n",
    "    1 passes to 2\n    read x1 denies \"A\"\n      1 cuts to the rim\n",
    "    1 passes to 2\n    read x5 drops to left block \"A\"\n      1 cuts to left wing\n",
    "    1 passes to 2\n    read x4 helps to the lane \"A\"\n      1 cuts to left wing\n",
    "    1 passes to 2\n    read x4 helps \"A\"\n      2 drives to the rim\n",
    "    1 passes to 5\n    read x4 helps \"A\"\n      5 shoots\n", /* the elbow is near enough */
    "    1 passes to 2\n    read x4 rotates to left block \"A\"\n      3 cuts to the rim\n",
    "    1 drives to the rim\n    read x4 stays \"A\"\n      1 shoots\n",
    "    1 drives to the rim\n    read x4 sags \"A\"\n      1 shoots\n",
    "    1 passes to 2\n    read 4 is denied \"A\"\n      3 fills top\n    read otherwise \"B\"\n"
    "      2 passes to 4\n", /* the other way has the pass that is denied */
    "    1 passes to 2\n    read x2 closes out \"A\"\n      2 drives to the rim\n",
};

START_TEST(a_read_of_what_can_be_is_none)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, STAND "%s", can[_i]);
    told_run(&told, strbuf_str(&text).at);
    told_is_sound(&told);
    ck_assert_msg(strstr(told_said(&told), "run.read") == NULL, "%s", told_said(&told));
}
END_TEST

/* ---- screens that are not what they are called ---- */

START_TEST(a_down_screen_that_goes_up_is_said)
{
    told_run(&told, "play \"Tollgate\"\n  start 1 top, 2 right corner, 3 left wing, 4 right block, "
                    "5 left block\n  defense man\n  step\n    5 down screens for 3\n"
                    "    3 comes off 5 to left slot\n");
    told_says(&told, "run.up", "this is an up screen: 5 comes");
    told_run(&told, STAND "    5 down screens for 3\n    3 comes off 5 to left wing\n");
    ck_assert(strstr(told_said(&told), "run.up") == NULL);
}
END_TEST

static double longest(const struct segment *segment, size_t use)
{
    double length = 0, end = told_time(segment, use, MOMENT_ARRIVED);
    for (double t = told_time(segment, use, MOMENT_STARTED); t < end; t += .05) {
        length += vec2_distance(segment_at(segment, body_attacker(3), t),
                                segment_at(segment, body_attacker(3), t + .05));
    }
    return length;
}

#define STAGGER                                                                                    \
    "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left corner, 4 left block, 5 left elbow\n"  \
    "  defense man\n  step\n    4 and 5 screen for 3\n"

START_TEST(two_screens_are_passed_in_the_order_that_does_not_double_back)
{
    told_run(&told, STAGGER "    3 comes off 4 and 5 to left slot\n");
    ck_assert(strstr(told_said(&told), "run.order") == NULL);
    double right = longest(told_segment(&told, 0, -1), 2);
    told_run(&told, STAGGER "    3 comes off 5 and 4 to left slot\n");
    told_says(&told, "run.order", "4 stands nearer than 5");
    ck_assert_double_lt(longest(told_segment(&told, 0, -1), 2), right + .5);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reads");
    TCase *all = tcase_create("reads");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_read_that_cannot_come_about_is_said, 0,
                        (int)(sizeof cannot / sizeof *cannot));
    tcase_add_loop_test(all, a_defenders_sentence_that_nothing_calls_for_is_said, 0,
                        (int)(sizeof idle / sizeof *idle));
    tcase_add_test(all, each_word_of_a_defender_is_looked_at);
    tcase_add_test(all, each_word_of_a_read_has_a_floor_on_which_it_cannot_be);
    tcase_add_test(all, one_that_comes_too_late_is_said);
    tcase_add_test(all, a_sentence_that_all_reads_share_is_said_once);
    tcase_add_loop_test(all, a_read_of_what_can_be_is_none, 0, (int)(sizeof can / sizeof *can));
    tcase_add_test(all, a_down_screen_that_goes_up_is_said);
    tcase_add_test(all, two_screens_are_passed_in_the_order_that_does_not_double_back);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
