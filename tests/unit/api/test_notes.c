/* SPDX-License-Identifier: MIT */
/* notes: whatever is taken that the coach did not write is told, once, as a note; written out, it
 * is not. And what a book says about itself: chapters, names, lineups, limits, accepts. Knows the
 * public header alone. */
#include "courtwright/courtwright.h"
#include "suite.h"

#include <string.h>

static struct courtwright *book;

static void close_book(void)
{
    courtwright_free(book);
    book = NULL;
}

static void load(const char *text)
{
    close_book();
    book = courtwright_load("kites.play", text, strlen(text), NULL);
    ck_assert_ptr_nonnull(book);
}

static size_t how_many(const char *id)
{
    size_t count = 0;
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        count += strcmp(courtwright_diagnostic(book, i)->id, id) == 0;
    }
    return count;
}

static const struct courtwright_diagnostic *said(const char *id)
{
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        if (strcmp(courtwright_diagnostic(book, i)->id, id) == 0) {
            return courtwright_diagnostic(book, i);
        }
    }
    ck_abort_msg("%s is not said", id);
}

#define START "start five-out\nball 1\ndefense man\n"
#define GIVE                                                                                       \
    "action \"give\" for passer, receiver\n  passer passes to receiver\n"                          \
    "play \"Lantern\"\n  start five-out\n  step\n    "

/* What is left out, what is said about it, and the same written out. */
static const struct {
    const char *id, *left_out, *message, *written;
} assumed[] = {
    {"play.side-taken", START "2 fills slot\n", "2 is on the right here",
     START "2 fills right slot\n"},
    {"play.side-taken", START "3 cuts to opposite block\n3 fills wing\n", "3 is on the right here",
     START "3 cuts to opposite block\n3 fills right wing\n"},
    {"play.default", START "5 screens for 3\n3 curls off 5\n5 pops\n", "5 goes to left corner",
     START "5 screens for 3\n3 curls off 5\n5 pops to left corner\n"},
    {"play.default", START "5 screens for 3\n3 fades off 5\n", "3 goes to left corner",
     START "5 screens for 3\n3 fades off 5 to left corner\n"},
    {"play.default", START "5 posts up\n", "5 goes to left block",
     START "5 posts up at left block\n"},
    {"play.supplied", START "1 passes to 3 at left corner\n", "a cut to the catch is supplied",
     START "3 cuts to left corner\n1 passes to 3 at left corner\n"},
    {"play.supplied", START "1 hands off to 2\n", "a run to the hand-off is supplied",
     START "2 cuts to top\n1 hands off to 2\n"},
    {"play.goes-with-ball", START "1 goes to right wing\n", "run as a dribble",
     START "1 dribbles to right wing\n"},
    {"play.after-screen",
     START "5 screens for 3\nafter 5 screens, 4 cuts to the rim\n3 curls off 5\n",
     "until the screen has been used",
     START "5 screens for 3\nas 5 screens, 4 cuts to the rim\n3 curls off 5\n"},
    {"play.standing-post", START "3 curls off 5\n", "5 has set no screen for 3",
     START "5 screens for 3\n3 curls off 5\n"},
    {"play.away", "start five-out\n1 passes to 2\n1 screens away for 4\n",
     "4 stands on the side of the ball", "start five-out\n1 passes to 2\n1 screens away for 3\n"},
    {"play.no-room", "start five-out\n4 sets up toward the baseline\n", "4 stands there already",
     "start five-out\n4 sets up toward the rim\n"},
    {"play.coach", "drill \"D\"\n start 1 top\n ball coach\n step\n  coach passes to 1\n",
     "stands above the top",
     "drill \"D\"\n start 1 top, coach left wing\n ball coach\n step\n  coach passes to 1\n"},
    {"play.role-taken", GIVE "run \"give\" with receiver 2\n", "1 has the ball as the step begins",
     GIVE "run \"give\" with passer 1, receiver 2\n"},
    {"text.beat-taken", START "1 passes to 2\na beat later, 3 cuts to the rim\n",
     "`beat` was taken as 0.5 s", START "1 passes to 2\n0.5 s later, 3 cuts to the rim\n"},
    {"text.screen-taken", START "5 screens for 3\n3 curls\n", "the screen of 5 was taken",
     START "5 screens for 3\n3 curls off 5\n"},
    {"text.verb-taken", START "3 to left corner\n", "no verb is written",
     START "3 goes to left corner\n"},
    {"text.length-taken", START "3 goes to just above left corner\n", "3 ft was taken",
     START "3 goes to 3 ft above left corner\n"},
    {"play.empty", "play \"Lantern\"\n step \"One\"\n  1 passes to 2\n step \"Two\"\n",
     "nothing happens", "play \"Lantern\"\n step \"One\"\n  1 passes to 2\n"},
    {"play.nowhere", START "2 goes to right wing\n", "is there already", START "2 stays\n"},
    {"text.who-taken", START "3 cuts to the rim\n4 goes to left wing\n1 hits him\n",
     "4, who moved last, was taken", START "3 cuts to the rim\n4 goes to left wing\n1 hits 4\n"},
    {"text.word-dropped", START "give and go with 4\n", "no pass back is drawn",
     START "1 gives and goes with 4\n"},
    {"text.hash-number", START "4 cuts to the rim #4\n", "is not read",
     START "4 cuts to the rim # fast\n"},
};

START_TEST(each_assumption_is_told_once_and_not_when_it_is_written_out)
{
    const char *id = assumed[_i].id;
    load(assumed[_i].left_out);
    ck_assert_msg(how_many(id) == 1, "%s is said %zu times of:\n%s", id, how_many(id),
                  assumed[_i].left_out);
    ck_assert_int_eq(said(id)->severity, COURTWRIGHT_NOTE);
    ck_assert_msg(strstr(said(id)->message, assumed[_i].message), "%s", said(id)->message);
    ck_assert_uint_gt(said(id)->line, 0);
    ck_assert_uint_eq(courtwright_error_count(book), 0);
    load(assumed[_i].written);
    ck_assert_msg(how_many(id) == 0, "%s is said of:\n%s", id, assumed[_i].written);
    ck_assert_uint_eq(courtwright_error_count(book), 0);
}
END_TEST

START_TEST(a_mirror_does_not_tell_again_what_its_play_told)
{
    load("play \"Lantern\"\n start five-out\n step\n  2 fills slot\n  5 screens for 3\n"
         "  3 curls off 5\n  5 pops\nplay \"Tollgate\" mirrors \"Lantern\"\n");
    ck_assert_uint_eq(courtwright_error_count(book), 0);
    ck_assert_uint_eq(how_many("play.side-taken"), 1);
    ck_assert_uint_eq(how_many("play.default"), 1);
}
END_TEST

/* ---- accepts ---- */

#define CROWD                                                                                      \
    "  start 1 top, 2 right wing, 3 left wing, 4 at 4 ft above right wing, 5 left corner\n"        \
    "  ball 1\n  defense man\n"
#define CROWDED "    1 passes to 3\n    2 and 4 stay\n    1 cuts to the rim\n"

START_TEST(an_accept_that_silences_something_is_not_noted)
{
    load("play \"Lantern\"\n" CROWD "  step\n" CROWDED "    accept space.close \"bait\"\n");
    ck_assert(said("space.close")->accepted);
    ck_assert_str_eq(said("space.close")->reason, "bait");
    ck_assert_uint_eq(how_many("check.accept-idle"), 0);
}
END_TEST

START_TEST(an_accept_that_silences_nothing_is_noted_where_it_stands)
{
    load("play \"Lantern\"\n  start five-out\n  accept screen.angle \"so\"\n  step\n"
         "    1 passes to 2\n    accept space.close \"bait\"\n");
    ck_assert_uint_eq(how_many("check.accept-idle"), 2);
    ck_assert_int_eq(said("check.accept-idle")->severity, COURTWRIGHT_NOTE);
    ck_assert_uint_eq(said("check.accept-idle")->line, 3);
}
END_TEST

START_TEST(an_accept_in_the_wrong_step_is_noted_and_the_finding_stays)
{
    load("play \"Lantern\"\n" CROWD
         "  step\n    3 stays\n    accept pass.long \"so\"\n  step\n" CROWDED);
    ck_assert_uint_eq(how_many("check.accept-idle"), 1);
    ck_assert_uint_eq(how_many("space.close"), 1);
    ck_assert(!said("space.close")->accepted);
}
END_TEST

START_TEST(an_accept_is_not_noted_for_its_mirror_or_a_play_that_shares_its_step)
{
    load("play \"Lantern\"\n" CROWD "  step\n" CROWDED "    accept space.close \"bait\"\n"
         "play \"Tollgate\" mirrors \"Lantern\"\n"
         "play \"Millrace\"\n  start five-out\n  step\n    same as step 1 of \"Lantern\"\n");
    ck_assert_uint_eq(how_many("check.accept-idle"), 0);
}
END_TEST

START_TEST(an_accept_in_a_play_that_cannot_be_run_is_not_noted)
{
    load("play \"Lantern\"\n  start five-out\n  step\n    1 pases to 2\n"
         "    accept space.close \"bait\"\n");
    ck_assert_uint_gt(courtwright_error_count(book), 0);
    ck_assert_uint_eq(how_many("check.accept-idle"), 0);
}
END_TEST

START_TEST(a_limit_moves_the_finding)
{
    load("play \"Lantern\"\n" CROWD "  limit space.close 3 ft\n  step\n" CROWDED);
    ck_assert_uint_eq(how_many("space.close"), 0);
    load("limit space.close 3 ft\nplay \"Lantern\"\n" CROWD "  step\n" CROWDED
         "play \"Tollgate\"\n" CROWD "  limit space.close 6 ft\n  step\n" CROWDED);
    ck_assert_uint_eq(how_many("space.close"), 1); /* the nearest wins */
    ck_assert_str_eq(said("space.close")->play, "Tollgate");
}
END_TEST

/* ---- books ---- */

START_TEST(a_chapter_holds_the_plays_behind_it)
{
    load("play \"Lantern\"\n 1 passes to 2\nchapter \"Against man\"\nplay \"Tollgate\"\n"
         " 1 passes to 3\ndrill \"Switchback\"\n 1 passes to 2\nchapter \"Late\"\n"
         "play \"Millrace\"\n 1 passes to 2\n");
    static const char *const chapters[] = {"", "Against man", "Against man", "Late"};
    ck_assert_uint_eq(courtwright_play_count(book), 4);
    for (size_t i = 0; i < 4; i++) {
        ck_assert_str_eq(courtwright_play(book, i)->chapter, chapters[i]);
    }
}
END_TEST

START_TEST(a_name_that_stands_twice_shows_both_places)
{
    load("play \"Lantern\"\n 1 passes to 2\ndrill \"LANTERN\"\n 1 passes to 3\n");
    ck_assert_uint_eq(how_many("play.duplicate"), 1);
    ck_assert_uint_eq(said("play.duplicate")->line, 3);
    ck_assert_str_eq(said("play.duplicate")->other_file, "kites.play");
    ck_assert_uint_eq(said("play.duplicate")->other_line, 1);
}
END_TEST

START_TEST(a_lineup_is_one_of_the_team)
{
#define TEAM                                                                                       \
    "team \"Larkspur Kites\"\n 1 \"Ada\" guard\n 2 \"Wren\" guard\n lineup \"Big\" 1 \"Ada\", 2 "  \
    "\"Wren\"\n"
    load(TEAM "play \"Lantern\"\n lineup \"Big\"\n 1 passes to 2\n");
    ck_assert_uint_eq(courtwright_error_count(book), 0);
    load(TEAM "play \"Lantern\"\n lineup \"Small\"\n 1 passes to 2\n");
    ck_assert_uint_eq(courtwright_error_count(book), 1);
    ck_assert_ptr_nonnull(strstr(courtwright_diagnostic(book, 0)->message, "Small"));
    load("team \"Larkspur Kites\"\n 1 \"Ada\" guard\n lineup \"Big\" 1 \"Nobody\"\nplay "
         "\"Lantern\"\n 1 passes to 2\n");
    ck_assert_uint_eq(courtwright_error_count(book), 1);
    ck_assert_ptr_nonnull(strstr(courtwright_diagnostic(book, 0)->message, "Nobody"));
}
END_TEST

/* ---- upgrade ---- */

static char kept[4096];
static bool keep(void *ctx, const char *bytes, size_t size)
{
    (void)ctx;
    strncat(kept, bytes, size);
    return true;
}
static const struct courtwright_writer writer = {keep, NULL};

static enum courtwright_status upgraded(const char *text)
{
    load(text);
    kept[0] = '\0';
    return courtwright_upgrade(book, &writer);
}

START_TEST(an_upgrade_names_the_newest_version_on_the_first_line)
{
    static const char *const texts[][2] = {
        {"1 PASSES to 2\n", "courtwright 1\n1 passes to 2\n"},
        {"# ours\n\n1 passes to 2\n", "courtwright 1\n# ours\n\n1 passes to 2\n"},
        {"# ours\ncourtwright 1\n1 passes to 2\n", "# ours\ncourtwright 1\n1 passes to 2\n"},
        {"", ""},
        {"1 pases to 2\n", "courtwright 1\n1 pases to 2\n"},
    };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        ck_assert_int_eq(upgraded(texts[i][0]), COURTWRIGHT_OK);
        ck_assert_str_eq(kept, texts[i][1]);
    }
}
END_TEST

START_TEST(an_unknown_version_is_not_upgraded)
{
    ck_assert_int_eq(upgraded("courtwright 2\n1 passes to 2\n"), COURTWRIGHT_BROKEN);
    ck_assert_str_eq(kept, "");
    ck_assert_uint_eq(how_many("text.version"), 1);
    ck_assert_int_eq(upgraded("courtwright one half\n1 passes to 2\n"), COURTWRIGHT_BROKEN);
    ck_assert_int_eq(upgraded("1 passes to 2\ncourtwright 1\n"), COURTWRIGHT_BROKEN);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("notes");
    TCase *tcase = tcase_create("notes");
    tcase_set_timeout(tcase, 60);
    tcase_add_checked_fixture(tcase, NULL, close_book);
    tcase_add_loop_test(tcase, each_assumption_is_told_once_and_not_when_it_is_written_out, 0,
                        (int)(sizeof assumed / sizeof *assumed));
    tcase_add_test(tcase, a_mirror_does_not_tell_again_what_its_play_told);
    tcase_add_test(tcase, an_accept_that_silences_something_is_not_noted);
    tcase_add_test(tcase, an_accept_that_silences_nothing_is_noted_where_it_stands);
    tcase_add_test(tcase, an_accept_in_the_wrong_step_is_noted_and_the_finding_stays);
    tcase_add_test(tcase, an_accept_is_not_noted_for_its_mirror_or_a_play_that_shares_its_step);
    tcase_add_test(tcase, an_accept_in_a_play_that_cannot_be_run_is_not_noted);
    tcase_add_test(tcase, a_limit_moves_the_finding);
    tcase_add_test(tcase, a_chapter_holds_the_plays_behind_it);
    tcase_add_test(tcase, a_name_that_stands_twice_shows_both_places);
    tcase_add_test(tcase, a_lineup_is_one_of_the_team);
    tcase_add_test(tcase, an_upgrade_names_the_newest_version_on_the_first_line);
    tcase_add_test(tcase, an_unknown_version_is_not_upgraded);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
