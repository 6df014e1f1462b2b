/* SPDX-License-Identifier: MIT */
/* page: what the page to write in asks of the library: of a book the play of a line alone, and
 * sheets for a browser's own printing. */
#include "kites.h"
#include "suite.h"
#include "written.h"

#include <stdlib.h>
#include <string.h>

static const char three_plays[] = "level u16 girls\n"
                                  "play \"Lantern\"\n"
                                  "  start five-out\n"
                                  "  step\n"
                                  "    1 passes to 2\n"
                                  "play \"Millrace\"\n"
                                  "  start five-out\n"
                                  "  ball 1\n"
                                  "  step \"Out\"\n"
                                  "    1 passes to 2\n"
                                  "    read x1 trails \"Go\"\n"
                                  "      1 cuts to the rim\n"
                                  "play \"Sluice\"\n"
                                  "  step\n"
                                  "    1 pases to 2\n";
static struct courtwright *three_at(unsigned line)
{
    return courtwright_load_at("three.play", three_plays, sizeof three_plays - 1, NULL, line, NULL);
}

START_TEST(of_a_book_loaded_at_a_line_only_that_play_runs)
{
    struct courtwright *one = three_at(11), *all = load("three.play", three_plays);
    ck_assert_uint_eq(courtwright_play_count(one), 3);
    const struct courtwright_play *lantern = courtwright_play(one, 0);
    const struct courtwright_play *millrace = courtwright_play(one, 1);
    ck_assert(lantern->waiting && !lantern->broken && lantern->diagrams == 0);
    ck_assert(!millrace->waiting && !millrace->broken);
    ck_assert_uint_eq(millrace->diagrams, courtwright_play(all, 1)->diagrams);
    ck_assert(courtwright_play(one, 2)->broken);
    ck_assert_uint_eq(courtwright_error_count(one), courtwright_error_count(all));
    struct courtwright_draw draw = {.play = 1, .format = COURTWRIGHT_SVG_LIVE};
    ck_assert_int_eq(courtwright_draw(all, &draw, &writer), COURTWRIGHT_OK);
    char *whole = copy(kept.at);
    start_over();
    ck_assert_int_eq(courtwright_draw(one, &draw, &writer), COURTWRIGHT_OK);
    ck_assert_str_eq(kept.at, whole);
    free(whole);
    draw.play = 0;
    ck_assert_int_eq(courtwright_draw(one, &draw, &writer), COURTWRIGHT_BROKEN);
    courtwright_free(one);
    courtwright_free(all);
}
END_TEST

static enum courtwright_fetched give_three(void *ctx, const char *from, const char *path,
                                           struct courtwright_include *include)
{
    (void)ctx, (void)from;
    courtwright_include_text(include, path, three_plays, sizeof three_plays - 1);
    return COURTWRIGHT_FETCHED;
}

START_TEST(of_an_include_the_play_of_a_line_runs_too)
{
    static const char text[] =
        "include \"three.play\"\nplay \"Weir\"\n  start five-out\n  step\n    1 passes to 2\n";
    struct courtwright_host host = {.fetch = give_three};
    struct courtwright *one =
        courtwright_load_at("book.play", text, sizeof text - 1, "three.play", 11, &host);
    struct courtwright *own =
        courtwright_load_at("book.play", text, sizeof text - 1, "", 11, &host);
    ck_assert_uint_eq(courtwright_play_count(one), 4);
    for (size_t i = 0; i < 4; i++) {
        const char *name = courtwright_play(one, i)->name;
        ck_assert(courtwright_play(one, i)->waiting == (strcmp(name, "Millrace") != 0));
        ck_assert(courtwright_play(own, i)->waiting == (strcmp(name, "Weir") != 0));
    }
    courtwright_free(one);
    courtwright_free(own);
}
END_TEST

START_TEST(above_the_first_play_none_runs)
{
    struct courtwright *none = three_at(1);
    for (size_t i = 0; i < courtwright_play_count(none); i++) {
        ck_assert(courtwright_play(none, i)->waiting);
        ck_assert_uint_eq(courtwright_play(none, i)->diagrams, 0);
    }
    courtwright_free(none);
}
END_TEST

START_TEST(plays_and_diagrams_say_where_they_begin)
{
    struct courtwright *all = load("three.play", three_plays);
    const struct courtwright_play *millrace = courtwright_play(all, 1);
    ck_assert_uint_eq(millrace->line, 6);
    ck_assert_uint_gt(millrace->diagrams, 0);
    const struct courtwright_diagram *last = courtwright_diagram(all, 1, millrace->diagrams - 1);
    ck_assert_uint_eq(last->line, last->branch ? 11 : 9);
    courtwright_free(all);
}
END_TEST

/* A sheet that can be made; what was written before is gone. */
static void papered(struct courtwright *of, const char *sheet,
                    const struct courtwright_handout *options)
{
    start_over();
    ck_assert_int_eq(courtwright_paper_html(of, sheet, options, &writer), COURTWRIGHT_OK);
}

START_TEST(a_handout_as_html_has_every_diagram_and_the_caution)
{
    papered(book, "handout", NULL);
    ck_assert_uint_eq(count_of(kept.at, "<section class=\"step\""),
                      courtwright_play(book, 0)->diagrams);
    ck_assert_uint_eq(count_of(kept.at, "<svg "),
                      courtwright_play(book, 0)->diagrams +
                          count_of(kept.at, "<span aria-hidden=\"true\">"));
    ck_assert_uint_eq(count_of(kept.at, "<tfoot>"), 1);
    ck_assert_ptr_null(strstr(kept.at, "Your job"));
}
END_TEST

START_TEST(a_sheet_as_html_has_a_key_of_the_lines_that_are_drawn)
{
    struct courtwright *passing = load(
        "pass.play", "play \"Millrace\"\n  start five-out\n  ball 1\n  step\n    1 passes to 2\n");
    papered(passing, "handout", NULL);
    ck_assert_uint_eq(count_of(kept.at, ">pass</span>"), 1);
    ck_assert_uint_eq(count_of(kept.at, ">dribble</span>"), 0);
    courtwright_free(passing);
}
END_TEST

START_TEST(a_sheet_as_html_has_names_only_where_asked_for)
{
    struct courtwright *team = load("team.play", "team \"Larkspur Kites\"\n"
                                                 "  1 \"Wren Halloway\" guard, jersey 12\n"
                                                 "play \"Millrace\"\n"
                                                 "  start five-out\n"
                                                 "  ball 1\n"
                                                 "  step\n"
                                                 "    1 passes to 2\n");
    struct courtwright_handout own = {.reader = 1};
    papered(team, "handout", &own);
    ck_assert_uint_eq(count_of(kept.at, "Wren"), 0);
    own.names = true;
    papered(team, "handout", &own);
    ck_assert_uint_gt(count_of(kept.at, "Wren"), 0);
    courtwright_free(team);
}
END_TEST

START_TEST(a_read_on_a_sheet_as_html_does_not_say_again_what_led_up_to_it)
{
    struct courtwright *reads = load("reads.play", "play \"Millrace\"\n"
                                                   "  start five-out\n"
                                                   "  ball 1\n"
                                                   "  defense man\n"
                                                   "  step\n"
                                                   "    1 passes to 2\n"
                                                   "    read x2 trails \"Drive\"\n"
                                                   "      2 drives to the rim\n"
                                                   "    read otherwise \"Back out\"\n"
                                                   "      2 passes to 1\n");
    papered(reads, "handout", NULL);
    ck_assert_uint_eq(count_of(kept.at, "<section class=\"step\""), 3);
    ck_assert_uint_eq(count_of(kept.at, "<b>1</b> passes to <b>2</b>"), 1);
    courtwright_free(reads);
}
END_TEST

START_TEST(a_players_own_handout_as_html_says_her_job)
{
    struct courtwright_handout own = {.reader = 3};
    papered(book, "handout", &own);
    ck_assert_ptr_nonnull(strstr(kept.at, "For 3"));
    ck_assert_uint_ge(count_of(kept.at, "Your job"), 1);
    own.reader = 6;
    ck_assert_int_eq(courtwright_paper_html(book, "handout", &own, &writer),
                     COURTWRIGHT_BAD_OPTION);
}
END_TEST

#define CLOSE                                                                                      \
    "play \"Millrace\"\n"                                                                          \
    "  start 1 top, 2 right wing, 3 left corner, 4 left wing, 5 right block\n"                     \
    "  ball 1\n"                                                                                   \
    "  step\n"
START_TEST(the_coachs_sheet_as_html_letters_what_was_found)
{
    struct courtwright *close = load("close.play", CLOSE "    4 sinks to left short corner\n"
                                                         "    2 goes to right corner\n");
    papered(close, "coach", NULL);
    size_t found = 0;
    for (size_t i = 0; i < courtwright_diagnostic_count(close); i++) {
        found += courtwright_diagnostic(close, i)->letter > 0;
    }
    ck_assert_uint_gt(found, 0);
    ck_assert_uint_eq(count_of(kept.at, "class=\"tag\""), found);
    courtwright_free(close);
}
END_TEST

START_TEST(the_coach_alone_reads_what_a_goals_seconds_take)
{
    struct courtwright *drill = load("drill.play", "drill \"Round\"\n"
                                                   "  goal \"Twice in 1 second\"\n"
                                                   "  start five-out\n"
                                                   "  ball 1\n"
                                                   "  step\n"
                                                   "    1 passes to 2\n"
                                                   "    2 passes to 4\n");
    papered(drill, "coach", NULL);
    ck_assert_ptr_nonnull(strstr(kept.at, "Twice in 1 second</bdi>. As drawn once through takes"));
    papered(drill, "handout", NULL);
    ck_assert_ptr_nonnull(strstr(kept.at, "Twice in 1 second</bdi></p>"));
    courtwright_free(drill);
}
END_TEST

START_TEST(a_letter_of_the_coachs_sheet_is_in_the_picture_of_a_side_out_too)
{
    struct courtwright *side = load("side.play", "play \"Towpath\"\n"
                                                 "  level varsity\n"
                                                 "  start sideline inbounds\n"
                                                 "  step\n"
                                                 "    3 cuts to 2's spot\n");
    papered(side, "coach", NULL);
    ck_assert_uint_eq(count_of(kept.at, ">A<"), 2);
    courtwright_free(side);
}
END_TEST

START_TEST(findings_that_are_told_elsewhere_have_their_letter_in_the_picture_only)
{
    struct courtwright *close = load("close.play", CLOSE "    1 passes to 2\n"
                                                         "    1 screens for 3\n"
                                                         "    3 comes off 1 to left wing\n");
    struct courtwright_draw draw = {
        .format = COURTWRIGHT_SVG_LIVE, .width = 400, .show_checks = true};
    ck_assert_int_eq(courtwright_draw(close, &draw, &writer), COURTWRIGHT_OK);
    ck_assert_uint_gt(count_of(kept.at, "find another spot"), 0);
    size_t letters = count_of(kept.at, ">A<");
    start_over();
    draw.only_lettered = true;
    ck_assert_int_eq(courtwright_draw(close, &draw, &writer), COURTWRIGHT_OK);
    ck_assert_uint_eq(count_of(kept.at, "find another spot"), 0);
    ck_assert_uint_eq(count_of(kept.at, ">A<"), 1);
    ck_assert_uint_eq(letters, 2);
    courtwright_free(close);
}
END_TEST

START_TEST(cards_as_html_are_one_a_diagram)
{
    papered(book, "card", NULL);
    ck_assert_uint_eq(count_of(kept.at, "<section class=\"card\""),
                      courtwright_play(book, 0)->diagrams);
}
END_TEST

START_TEST(a_practice_as_html_adds_up)
{
    struct courtwright *planned = load("plan.play", "practice \"Tuesday\"\n"
                                                    "  starts 17:30\n"
                                                    "  lasts 30 min\n"
                                                    "  10 min warm-up\n"
                                                    "  20 min play \"Lantern\"\n"
                                                    "play \"Lantern\"\n"
                                                    "  start five-out\n"
                                                    "  step\n"
                                                    "    1 passes to 2\n");
    struct courtwright_handout a4 = {.paper = COURTWRIGHT_A4};
    papered(planned, "practice", NULL);
    ck_assert_ptr_nonnull(strstr(kept.at, "<td>5:40</td><td>20</td>"));
    ck_assert_ptr_nonnull(strstr(kept.at, "fits the time booked"));
    ck_assert_uint_eq(count_of(kept.at, "<svg "), 1);
    ck_assert_uint_eq(count_of(kept.at, "medical staff come before this plan."), 1);
    papered(planned, "practice", &a4);
    ck_assert_ptr_nonnull(strstr(kept.at, "<td>17:40</td><td>20</td>"));
    courtwright_free(planned);
}
END_TEST

START_TEST(a_sheet_as_html_is_for_the_paper_of_the_book)
{
    struct courtwright *planned = load("plan.play", "playbook \"Kites\"\n"
                                                    "  paper a4\n"
                                                    "practice \"Tuesday\"\n"
                                                    "  starts 17:30\n"
                                                    "  10 min warm-up\n"
                                                    "  20 min stretching\n");
    struct courtwright_handout letter = {.paper = COURTWRIGHT_LETTER},
                               none = {.paper = (enum courtwright_paper)3};
    papered(planned, "practice", NULL);
    ck_assert_ptr_nonnull(strstr(kept.at, "<td>17:40</td><td>20</td>"));
    papered(planned, "practice", &letter);
    ck_assert_ptr_nonnull(strstr(kept.at, "<td>5:40</td><td>20</td>"));
    ck_assert_int_eq(courtwright_paper_html(planned, "practice", &none, &writer),
                     COURTWRIGHT_BAD_OPTION);
    courtwright_free(planned);
}
END_TEST

START_TEST(sheets_as_html_that_cannot_be_made_say_so)
{
    size_t broken = 1, beyond = 99;
    struct courtwright_handout one = {.plays = &broken, .play_count = 1};
    ck_assert_int_eq(courtwright_paper_html(book, "poster", NULL, &writer), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(courtwright_paper_html(book, "practice", NULL, &writer), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(courtwright_paper_html(book, "handout", &one, &writer), COURTWRIGHT_BROKEN);
    one.plays = &beyond;
    ck_assert_int_eq(courtwright_paper_html(book, "card", &one, &writer), COURTWRIGHT_NO_SUCH);
    kept.most = 100;
    ck_assert_int_eq(courtwright_paper_html(book, "handout", NULL, &writer), COURTWRIGHT_WRITE);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("page");
    TCase *all = tcase_create("calls");
    tcase_add_checked_fixture(all, open_book, close_book);
    tcase_add_test(all, of_a_book_loaded_at_a_line_only_that_play_runs);
    tcase_add_test(all, above_the_first_play_none_runs);
    tcase_add_test(all, of_an_include_the_play_of_a_line_runs_too);
    tcase_add_test(all, plays_and_diagrams_say_where_they_begin);
    tcase_add_test(all, a_handout_as_html_has_every_diagram_and_the_caution);
    tcase_add_test(all, a_sheet_as_html_has_a_key_of_the_lines_that_are_drawn);
    tcase_add_test(all, a_sheet_as_html_has_names_only_where_asked_for);
    tcase_add_test(all, a_read_on_a_sheet_as_html_does_not_say_again_what_led_up_to_it);
    tcase_add_test(all, a_players_own_handout_as_html_says_her_job);
    tcase_add_test(all, the_coachs_sheet_as_html_letters_what_was_found);
    tcase_add_test(all, the_coach_alone_reads_what_a_goals_seconds_take);
    tcase_add_test(all, a_letter_of_the_coachs_sheet_is_in_the_picture_of_a_side_out_too);
    tcase_add_test(all, findings_that_are_told_elsewhere_have_their_letter_in_the_picture_only);
    tcase_add_test(all, cards_as_html_are_one_a_diagram);
    tcase_add_test(all, a_practice_as_html_adds_up);
    tcase_add_test(all, a_sheet_as_html_is_for_the_paper_of_the_book);
    tcase_add_test(all, sheets_as_html_that_cannot_be_made_say_so);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
