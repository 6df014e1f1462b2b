/* SPDX-License-Identifier: MIT */
/* One sentence in the form tidy prints, by what it is made of: verbs, places, ties, drills. */
#include "said.h"

#include <string.h>

START_TEST(the_tidy_form_of_a_sentence_is_printed_as_written)
{
    check_pairs(tidy_forms, false);
}
END_TEST

START_TEST(defenders_have_verbs_of_their_own)
{
    check_pairs(guards, false);
}
END_TEST

static const struct pair places[] = {
    {"4 goes to top", NULL},
    {"4 goes to left slot", NULL},
    {"4 goes to left mid post", NULL},
    {"4 goes to high post", NULL},
    {"4 goes to right high post", NULL},
    {"4 goes to left low post", NULL},
    {"4 goes to left hash", NULL},
    {"4 goes to wing", NULL},
    {"4 goes to the free-throw line", NULL},
    {"4 goes to half court", NULL},
    {"4 goes to the sideline", NULL},
    {"4 goes to the opposite elbow", NULL},
    {"4 goes to the ball side wing", NULL},
    {"4 goes to the ball side", NULL},
    {"4 goes to the right side", NULL},
    {"4 goes to the opposite side", NULL},
    {"4 goes to the next spot left", NULL},
    {"4 goes to the next spot up", NULL},
    {"4 goes to backcourt left elbow", NULL},
    {"4 goes to 4 ft above 5", NULL},
    {"4 goes to 0.5 m left of the rim", NULL},
    {"4 goes to 2 steps below top", NULL},
    {"4 goes to 1 step inside left wing", NULL},
    {"4 goes to a foot outside left wing", "4 goes to 1 ft outside left wing"},
    {"4 goes to 6' right of 3's spot", "4 goes to 6 ft right of 3's spot"},
    {"4 goes to halfway between top and left wing", NULL},
    {"4 goes to a third of the way from top to left wing", NULL},
    {"4 goes to two thirds of the way from top to left wing", NULL},
    {"4 goes to a quarter of the way from top to 3's spot", NULL},
    {"4 goes to three quarters of the way from top to where 3 is", NULL},
    {"4 goes to (12, -3)", NULL},
    {"4 goes to (-12.5, 3)", NULL},
    {"4 goes to where 3 is", NULL},
    {"4 goes beside 3", NULL},
    {"4 goes out of bounds at left hash", NULL},
    {"4 goes to 3 ft above halfway between top and left wing", NULL},
    {"4 goes to the paint", "4 goes to the lane"},
    {"4 goes to the key", "4 goes to the lane"},
    {"4 goes to the basket", "4 goes to the rim"},
    {"4 goes to the point", "4 goes to top"},
    {"4 goes to the top of the key", "4 goes to top"},
    {"4 goes to the strong-side block", "4 goes to the ball side block"},
    {"4 goes to the help side", "4 goes to the weak side"},
    {"4 goes to the weakside corner", "4 goes to the weak side corner"},
    {"4 goes to the left dunkerspot", "4 goes to left dunker spot"},
    {"4 goes to free throw line", "4 goes to the free-throw line"},
    {NULL, NULL},
};

START_TEST(every_kind_of_place_is_read)
{
    check_pairs(places, false);
}
END_TEST

START_TEST(sentences_wait_for_events_states_and_the_clock)
{
    check_pairs(ties, false);
}
END_TEST

static const struct pair drills[] = {
    {"coach passes to 2", NULL},
    {"1 passes to coach", NULL},
    {"1 goes to the end of the line", NULL},
    {"12 goes behind 1", NULL},
    {"4 goes to cone A", NULL},
    {"4 goes to 3 ft above cone b", "4 goes to 3 ft above cone B"},
    {"x7 guards 7", NULL},
    {"2 goes to the back of the line", "2 goes to the end of the line"},
    {"2 goes to the end of his line", "2 goes to the end of the line"},
    {"2 goes next to 3", "2 goes beside 3"},
    {NULL, NULL},
};

START_TEST(drills_have_cones_lines_a_coach_and_twelve_players)
{
    check_pairs(drills, true);
}
END_TEST

START_TEST(one_sentence_is_asked_for_and_two_are_refused)
{
    struct sentence sentence;
    struct cursor c = open_line("3 curls off 5", false);
    ck_assert(sentence_read(&c, &sentence));
    ck_assert_int_eq(sentence.verb, VERB_CURLS);
    c = open_line("3 curls off 5 and 5 rolls", false);
    ck_assert(!sentence_read(&c, &sentence));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.sentences-many");
    c = open_line(".", false);
    ck_assert(!sentence_read(&c, &sentence));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.who-missing");
}
END_TEST

static const struct pair conditions[] = {
    {"x3 trails", NULL},
    {"x3 goes under 5", NULL},
    {"x4 helps", NULL},
    {"x5 shows on 1", "x5 hedges 1"},
    {"x1 and x3 switch", NULL},
    {"3's defender sags", NULL},
    {"3 is open", NULL},
    {"3 is covered", NULL},
    {"passer is denied", NULL},
    {"otherwise", NULL},
    {NULL, NULL},
};

START_TEST(a_read_names_what_the_defense_does)
{
    for (const struct pair *pair = conditions; pair->written; pair++) {
        struct cursor c = open_line(pair->written, false);
        struct condition condition;
        ck_assert_msg(condition_read(&c, &condition) && cursor_done(&c), "%s", pair->written);
        struct strbuf out;
        strbuf_init(&out, &arena);
        tidy_condition(&out, &condition);
        ck_assert_str_eq(str_copy(&arena, strbuf_str(&out)).at,
                         pair->tidy ? pair->tidy : pair->written);
    }
    static const char *const unread[] = {"3 trails", "x3", "x3 cuts", "3 is past 1", "top", NULL};
    for (const char *const *text = unread; *text; text++) {
        struct cursor c = open_line(*text, false);
        const struct token *before = c.at;
        struct condition condition;
        ck_assert_msg(!condition_read(&c, &condition), "%s: taken", *text);
        ck_assert_ptr_eq(c.at, before);
    }
}
END_TEST

START_TEST(a_step_may_begin_with_an_event_or_follow_a_branch)
{
    struct tie tie;
    struct str title;
    struct cursor c = open_line("as 5 screens", false);
    ck_assert(step_tie_read(&c, &tie, &title));
    ck_assert_int_eq(tie.word, TIE_AS);
    ck_assert_int_eq(tie.event->family, FAMILY_SCREENS);
    c = open_line("after \"Fade\"", false);
    ck_assert(step_tie_read(&c, &tie, &title));
    ck_assert(str_is(title, "Fade"));
    ck_assert_int_eq(tie.word, TIE_NONE);
    c = open_line("while 5 screens", false);
    ck_assert(!step_tie_read(&c, &tie, &title));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.clause-half");
    c = open_line("as 5 screens badly", false);
    ck_assert(!step_tie_read(&c, &tie, &title));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.left-over");
}
END_TEST

START_TEST(every_verb_has_words_slots_and_an_event)
{
    for (int verb = 0; verb < VERB_COUNT; verb++) {
        const struct verb_row *row = verb_row((enum verb)verb);
        ck_assert_ptr_nonnull(row->words);
        ck_assert_ptr_nonnull(row->bare);
        ck_assert_ptr_nonnull(row->slots);
        ck_assert_msg(strlen(row->bare) <= strlen(row->words), "%s", row->symbol);
        bool object = strpbrk(row->needs, "W") != NULL;
        bool slot = strstr(row->slots, ":W") || strstr(row->slots, ":U");
        ck_assert_msg(object == slot, "%s", row->symbol);
    }
    ck_assert_int_eq(verb_row(VERB_SCREENS)->last, WHEN_USED);
    ck_assert_str_eq(verb_row(VERB_PASSES)->words, "passes to");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sentence");
    TCase *all = tcase_create("sentence");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, the_tidy_form_of_a_sentence_is_printed_as_written);
    tcase_add_test(all, defenders_have_verbs_of_their_own);
    tcase_add_test(all, every_kind_of_place_is_read);
    tcase_add_test(all, sentences_wait_for_events_states_and_the_clock);
    tcase_add_test(all, drills_have_cones_lines_a_coach_and_twelve_players);
    tcase_add_test(all, one_sentence_is_asked_for_and_two_are_refused);
    tcase_add_test(all, a_read_names_what_the_defense_does);
    tcase_add_test(all, a_step_may_begin_with_an_event_or_follow_a_branch);
    tcase_add_test(all, every_verb_has_words_slots_and_an_event);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
