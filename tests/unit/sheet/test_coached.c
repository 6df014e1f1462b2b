/* SPDX-License-Identifier: MIT */
/* What sheets make of a play that was run: figures to watch, lanes on the clock; the words of a
 * page; and in which order ways on are told, and who has which spot. */
#include "page/sheet/bands.h"
#include "judge/check/goal.h"
#include "page/sheet/timing.h"
#include "page/sheet/watch.h"
#include "language/tell/tell.h"
#include "ran.h"
#include "suite.h"
#include "written.h"

#include <stdlib.h>
#include <string.h>

/* ---- the order of ways on ---- */

START_TEST(what_is_left_over_is_told_last)
{
    const struct play *play = run_text(PLAY READS);
    static const char *const wanted[] = {"1", "1a Curl", "1b Back cut", "1c Wait"};
    ck_assert_uint_eq(diagrams.count, 4);
    for (size_t i = 1; i < diagrams.count; i++) {
        const struct diagram *diagram = &diagrams.at[i];
        const struct branch *branch = &play->steps.at[0].branches.at[diagram->branch];
        ck_assert_str_eq(
            plain(str_format(&arena, "%.*s %.*s", STR_ARG(diagram->label), STR_ARG(branch->title))),
            wanted[i]);
        ck_assert_int_eq(diagram->segment->branch, diagram->branch);
        ck_assert_int_eq(branch_letter(&play->steps.at[0], diagram->branch), (int)('a' + i - 1));
        ck_assert_int_eq(branch_told(&play->steps.at[0], (int)i - 1), diagram->branch);
    }
}
END_TEST

START_TEST(a_step_goes_on_from_the_first_as_written)
{
    const struct play *play = run_text(PLAY READS "  step \"Again\"\n    3 passes to 1\n");
    ck_assert_int_eq(play->steps.at[1].after_branch, 0);
    ck_assert_str_eq(plain(tell_after(&arena, play, &play->steps.at[1])), "after 1c");
}
END_TEST

/* ---- cards ---- */

START_TEST(on_a_card_whom_a_read_is_about_is_numbered_and_nobody_else)
{
    run_text(PLAY READS);
    static const double widths[] = {115.2, 152}; /* 20 and 12 a page */
    for (size_t i = 0; i < diagrams.count; i++) {
        for (size_t w = 0; w < 2; w++) {
            const struct scene_options options = {
                .width = widths[w], .accent = BODY_NONE, .plain = true};
            const struct scene *card = scene_make(&arena, &diagrams.at[i], &options);
            int numbers = 0;
            for (size_t k = 0; k < card->items.count; k++) {
                const struct scene_item *item = &card->items.at[k];
                if (item->class == CLASS_DEFENDER && item->shape == ITEM_TEXT) {
                    ck_assert(str_is(item->text, "3"));
                    numbers++;
                }
            }
            bool read = i == 1 || i == 2; /* x3 trails, x3 overplays */
            ck_assert_int_eq(numbers, read);
        }
    }
}
END_TEST

/* ---- words ---- */

static const char *job_of(const struct play *play, size_t step, int number)
{
    return plain(tell_job(&arena, play, &play->steps.at[step], -1, body_attacker(number), false));
}

START_TEST(what_comes_first_does_not_begin_with_what_was_before)
{
    const struct play *play = run_text("play \"Tollgate\"\n  start five-out\n  ball 1\n"
                                       "  step\n    1 passes to 2\n    then 3 cuts to the rim\n");
    const struct step *step = &play->steps.at[0];
    ck_assert_str_eq(plain(tell_task(&arena, play, step, -1, 1)), "Then 3 cuts to the rim.");
    ck_assert_str_eq(plain(tell_task_first(&arena, play, step, -1, 1)), "3 cuts to the rim.");
    ck_assert(str_starts(str_of(job_of(play, 0, 3)),
                         "When the others have done their part, cut to the rim."));
}
END_TEST

START_TEST(who_throws_in_holds_the_ball_out_of_bounds)
{
    const struct play *play =
        run_text("play \"Towpath\"\n  start sideline inbounds\n  defense man\n"
                 "  step\n    1 v-cuts to right slot\n    3 inbounds to 1\n"
                 "  step\n    1 passes to 2\n");
    ck_assert(str_starts(str_of(job_of(play, 0, 3)), "Hold the ball out of bounds. Inbound to 1"));
    ck_assert_ptr_null(strstr(job_of(play, 0, 1), "out of bounds"));
    ck_assert_ptr_null(strstr(job_of(play, 1, 1), "out of bounds"));
}
END_TEST

START_TEST(who_waits_with_the_ball_watches_whom_a_screen_is_for)
{
    const struct play *play = run_text(PLAY "  step \"Again\"\n    2 clears to right corner\n"
                                            "    4 cross screens for 5\n");
    ck_assert_ptr_nonnull(strstr(job_of(play, 1, 1), "and watch 5 come open"));
}
END_TEST

/* 1 and 4 begin before the read does; 5 and 2 do not. */
#define SLIPPED                                                                                    \
    "play \"Sandbar\"\n  start baseline inbounds box\n  defense man\n"                             \
    "  step \"Screen across\"\n    4 cross screens for 5\n    1 clears to left slot\n"             \
    "    read x4 and x5 switch \"Turn\"\n      5 comes off 4 to right block\n"                     \
    "      4 slips to the front of the rim\n      3 inbounds to 4\n"                               \
    "    read otherwise \"Low\"\n      5 comes off 4 to right block\n      3 inbounds to 5\n"

START_TEST(a_read_tells_what_is_other_in_it_and_names_what_was_before)
{
    const struct play *play = run_text(SLIPPED);
    static const struct {
        int number;
        const char *told;
    } rows[] = {{1, "Begin as in step 1. Stay in the left slot"},
                {2, "Stay at the right elbow"},
                {3, "If x4 and x5 switch: inbound to 4"},
                {4,
                 "If x4 and x5 switch: begin as in step 1. Slip to the front of the rim instead of "
                 "setting the screen."},
                {5, "If x4 and x5 switch: as 4 slips, go to the right block without the screen."}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const char *job = plain(
            tell_job(&arena, play, &play->steps.at[0], 0, body_attacker(rows[i].number), true));
        ck_assert_msg(str_starts(str_of(job), rows[i].told), "%d: %s", rows[i].number, job);
        job = plain(
            tell_job(&arena, play, &play->steps.at[0], 0, body_attacker(rows[i].number), false));
        ck_assert_ptr_null(strstr(job, "egin as"));
    }
}
END_TEST

/* Lines with their discs in the accent, on the sheet of this player. */
static size_t accented(const struct diagram *diagram, int number, size_t from)
{
    struct scene_options options = {
        .width = 300, .theme = THEME_PRINT, .accent = body_attacker(number), .accent_at = from};
    const struct scene *scene = scene_make(&arena, diagram, &options);
    size_t count = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        count += item->class == CLASS_ORDER && item->fill == ROLE_ACCENT;
    }
    return count;
}

START_TEST(the_accent_of_a_read_is_on_its_own_lines)
{
    run_text(SLIPPED);
    const struct diagram *read = &diagrams.at[1];
    ck_assert_uint_eq(scene_first_task(read), 0); /* it shows the step from its start */
    ck_assert_uint_eq(accented(read, 1, 0), 1);
    ck_assert_uint_eq(accented(read, 1, 2), 0);
    ck_assert_uint_eq(accented(read, 4, 0), 2);
    ck_assert_uint_eq(accented(read, 4, 2), 1);
}
END_TEST

START_TEST(who_stands_still_for_one_reason_is_told_it_once)
{
    const struct play *play = run_text("play \"Tollgate\"\n  start five-out\n  ball 1\n"
                                       "  defense man\n"
                                       "  step\n    1 passes to 2\n"
                                       "  step\n    2 passes to 1\n"
                                       "    read x3 trails \"A\"\n      1 passes to 3\n"
                                       "    read otherwise \"B\"\n      3 cuts to the rim\n"
                                       "  step\n    5 cuts to the rim\n");
    static const struct {
        size_t step;
        int branch, who;
        const char *where;
    } rows[] = {{0, -1, 5, ""}, {1, -1, 5, "step 1"}, {1, 0, 5, "step 1"}, {1, 1, 5, "step 1"},
                {2, -1, 5, ""}, {1, -1, 1, ""},       {1, 0, 1, ""},       {1, 1, 3, ""}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct str where = tell_job_before(&arena, play, &play->steps.at[rows[i].step],
                                           rows[i].branch, body_attacker(rows[i].who));
        ck_assert_msg(str_is(where, rows[i].where), "row %zu: %s", i, text_of(where));
    }
}
END_TEST

START_TEST(where_no_common_part_is_drawn_the_first_way_tells_it)
{
    const struct play *play = run_text("play \"Tollgate\"\n  start five-out\n  ball 1\n"
                                       "  defense man\n  step\n"
                                       "    option \"A\"\n      1 passes to 2\n"
                                       "    option \"B\"\n      1 passes to 3\n");
    const struct step *step = &play->steps.at[0];
    struct str first = tell_job_before(&arena, play, step, 0, body_attacker(5));
    struct str second = tell_job_before(&arena, play, step, 1, body_attacker(5));
    ck_assert_str_eq(text_of(first), "");
    ck_assert_str_eq(text_of(second), "1a");
}
END_TEST

/* Her picture shows the step's pass again: to stay wide is not all of her job there. */
START_TEST(who_begins_again_and_then_stands_is_told_both)
{
    const struct play *play = run_text("play \"Tollgate\"\n  start five-out\n  ball 1\n"
                                       "  defense man\n  step\n    1 passes to 2\n"
                                       "    read x3 trails \"A\"\n      3 cuts to the rim\n"
                                       "    read otherwise \"B\"\n      4 cuts to the rim\n");
    const struct step *step = &play->steps.at[0];
    const char *apart = plain(tell_job_once(&arena, play, step, 1, body_attacker(1), false));
    ck_assert_msg(strstr(apart, "The same as in ") != NULL, "%s", apart);
    const char *again = plain(tell_job_once(&arena, play, step, 1, body_attacker(1), true));
    ck_assert_msg(strstr(again, "egin as in step 1.") != NULL, "%s", again);
}
END_TEST

/* ---- the order of the pictures on a page ---- */

static const char *label_of(const struct setter *setter, const struct scene *scene)
{
    for (size_t i = 0; i < setter->kept->scenes.count; i++) {
        if (setter->kept->scenes.at[i].scene == scene) {
            return text_of(setter->kept->scenes.at[i].diagram.label);
        }
    }
    return "?";
}

/* "1 1a 1b 2": the pictures as they stand, row by row. */
static const char *order_of(const struct setter *setter, const group_list *groups)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < groups->count; i++) {
        const band_list *bands = &groups->at[i].ways[0];
        for (size_t k = 0; k < bands->count; k++) {
            const struct galley *galley = bands->at[k].galley;
            for (size_t n = 0; n < galley->items.count; n++) {
                if (galley->items.at[n].kind == PLACED_SCENE) {
                    strbuf_print(&out, "%s%s", out.size > 0 ? " " : "",
                                 label_of(setter, galley->items.at[n].scene));
                }
            }
        }
    }
    return text_of(strbuf_str(&out));
}

START_TEST(ways_on_stand_before_the_step_that_follows_them)
{
    run_text(PLAY READS "  step \"Again\"\n    3 passes to 1\n"
                        "  step \"And again\"\n    1 passes to 2\n");
    struct fonts *fonts = fonts_create();
    struct sheet_job job = {.book = resolved.book, .reader = BODY_NONE};
    struct kept kept = {.count = 0};
    struct setter setter = {.arena = &arena, .fonts = fonts, .job = &job, .kept = &kept};
    layout_list layouts = {0};
    layouts_for(&setter, &diagrams, &layouts);
    ck_assert_uint_ge(layouts.count, 5);
    for (size_t i = 0; i < layouts.count; i++) {
        group_list groups = {0};
        bands_make(&setter, run, &diagrams, &layouts.at[i], &groups);
        ck_assert_str_eq(order_of(&setter, &groups), "1 1a 1b 1c 2 3");
    }
    fonts_destroy(fonts);
}
END_TEST

/* ---- figures ---- */

static watched_list found, figures; /* of the first step of what was run */

static void watch_text(const char *text)
{
    finding_list findings = {0};
    run_text(text);
    check_run(&arena, run, &findings);
    found = figures = (watched_list){0};
    watch_findings(&arena, &findings, 0, -1, &found);
    watch_figures(&arena, run->segments.at[0], &found, &figures);
}

START_TEST(figures_are_those_of_the_run)
{
    watch_text(PLAY "    3 curls off 5 to the nail\n    1 passes to 3\n");
    ck_assert_uint_eq(found.count, 0);
    ck_assert_uint_ge(figures.count, 2);
    const struct segment *segment = run->segments.at[0];
    size_t screen = 0;
    while (segment_task(segment, screen)->kind != TASK_SCREEN) {
        screen++;
    }
    struct strbuf set;
    strbuf_init(&set, &arena);
    strbuf_text(&set, "3 waits for 5: the screen is set at ");
    strbuf_fixed(&set, segment->record[screen].time[MOMENT_SET], 1);
    strbuf_char(&set, '\0');
    ck_assert(strncmp(plain(figures.at[0].text), set.at, set.size - 1) == 0);
    ck_assert_ptr_nonnull(
        strstr(plain(figures.at[0].text), "; 3 leaves at ")); /* the coach reads */
    ck_assert_ptr_nonnull(strstr(plain(figures.at[1].text), "the cut passes at "));
}
END_TEST

START_TEST(what_is_a_finding_is_no_figure)
{
    watch_text(PLAY "    3 curls off 5 to the nail early\n    1 passes to 2\n");
    ck_assert_uint_ge(found.count, 1);
    for (size_t i = 0; i < found.count; i++) {
        ck_assert_uint_eq(found.at[i].letter, i);
    }
    ck_assert_uint_ge(figures.count, 1);
    for (size_t i = 0; i < figures.count; i++) {
        ck_assert_ptr_null(strstr(plain(figures.at[i].text), "waits for"));
    }
}
END_TEST

START_TEST(where_nobody_defends_nobody_is_watched)
{
    static const char *const play = "play \"Swing\"\n  start five-out\n%s  step\n"
                                    "    1 passes to 2\n    4 clears to right block\n";
    watch_text(text_of(str_format(&arena, play, "  defense man\n")));
    ck_assert_uint_eq(figures.count, 1);
    ck_assert_ptr_nonnull(strstr(plain(figures.at[0].text), "1 looks for x"));
    watch_text(text_of(str_format(&arena, play, "")));
    ck_assert_uint_eq(figures.count, 0);
}
END_TEST

START_TEST(a_pass_of_the_coach_is_no_figure)
{
    static const char *const drill = "drill \"Gate\"\n"
                                     "  start 1 right wing, x1 at front of the rim, coach top\n"
                                     "  ball coach\n  step\n    coach passes to 1\n"
                                     "    x1 closes out on 1\n%s";
    watch_text(text_of(str_format(&arena, drill, "")));
    ck_assert_uint_eq(figures.count, 0);
    watch_text(text_of(str_format(&arena, drill, "    1 passes to coach\n")));
    ck_assert_uint_eq(figures.count, 1);
    ck_assert_ptr_nonnull(strstr(plain(figures.at[0].text), "1 looks for x1"));
}
END_TEST

/* ---- a goal's seconds ---- */

#define PRESSED                                                                                    \
    "drill \"Out\"\n  goal \"%s\"\n  floor full\n"                                                 \
    "  start 1 backcourt right elbow, 2 half court, 3 right hash\n  ball 1\n"                      \
    "  step\n    2 flashes to the backcourt nail\n    1 passes to 2\n"                             \
    "    3 goes to right wing\n    2 passes to 3\n"

static const char *measured(const char *goal)
{
    run_text(text_of(str_format(&arena, PRESSED, goal)));
    return plain(goal_measured(&arena, run));
}

START_TEST(the_coach_is_told_what_a_goal_in_seconds_takes)
{
    const char *late = measured("10 in a row, over half court in 1 second");
    ck_assert(str_starts(str_of(late), "As drawn the ball is over half court after "));
    ck_assert_ptr_nonnull(strstr(late, ", not within 1\xC2\xA0s: change the goal or the drill."));
    const struct segment *segment = run->segments.at[0];
    double crossed = atof(late + strlen("As drawn the ball is over half court after "));
    ck_assert_double_ge(segment_ball(segment, crossed - .3).y, run->play->court->half_court);
    ck_assert_double_le(segment_ball(segment, crossed + .3).y, run->play->court->half_court);
    ck_assert_ptr_null(strstr(measured("over half court in 30-seconds"), "not within"));
    ck_assert(str_starts(str_of(measured("Twice in 20 s")), "As drawn once through takes "));
    ck_assert_str_eq(measured("20 catches in 3 minutes"), "");
    ck_assert_str_eq(measured("8 right reads of 10"), "");
}
END_TEST

/* ---- lanes ---- */

START_TEST(the_strip_ends_on_a_whole_second_and_has_a_lane_for_each_who_moves)
{
    run_text(PLAY "    3 curls off 5 to the nail\n");
    struct fonts *fonts = fonts_create();
    struct sheet_job job = {.book = resolved.book, .reader = BODY_NONE};
    struct setter setter = {.arena = &arena, .fonts = fonts, .job = &job};
    const struct segment *segment = run->segments.at[0];
    ck_assert(timing_holds(segment));
    struct galley *strip = timing_set(&setter, segment, &timing_whole, 504);
    double right = 0, lowest = 0;
    size_t heavy = 0;
    for (size_t i = 0; i < strip->items.count; i++) {
        const struct placed *placed = &strip->items.at[i];
        right = placed->x2 > right ? placed->x2 : right;
        lowest = placed->kind == PLACED_RULE && placed->y2 > lowest ? placed->y2 : lowest;
        heavy += placed->kind == PLACED_RULE && placed->width == 2.2;
    }
    ck_assert(timing_has_set(segment));
    ck_assert_double_le(right, PAGE_WIDE + 1e-6);
    ck_assert_double_eq_tol(lowest, 4 * 16, 1e-6); /* ball, 3, 5, and those who stand still */
    ck_assert_uint_eq(heavy, 1);                   /* the screen */
    fonts_destroy(fonts);
}
END_TEST

/* ---- spots ---- */

START_TEST(a_lineup_says_who_has_which_spot_else_the_roster)
{
    resolve_text(
        &arena, &resolved, STR("kites"),
        STR("team \"Kites\"\n  1 \"Imke\"\n  2 \"Wren\", jersey 7\n  3 \"Wren\", jersey 7\n"
            "  4 \"Wren\", jersey 9\n  5 \"Pia\"\n"
            "  lineup \"Small\" 1 \"Imke\", 2 \"Pia\", 3 \"Wren\", 4 \"Wren\", 5 \"Imke\"\n"
            "play \"Lantern\"\n  start five-out\n  1 passes to 2\n"
            "play \"Sluice\"\n  lineup \"Small\"\n  start five-out\n  1 passes to 2\n"));
    ck_assert_uint_eq(resolved.diags.errors, 0);
    const struct team *team = &resolved.book->team;
    static const struct {
        size_t play;
        const char *name, *jersey, *spots;
    } rows[] = {{0, "wren", "", ".234."}, {0, "Wren", "7", ".23.."}, {0, "Wren", "9", "...4."},
                {0, "Imke", "", "1...."}, {1, "Imke", "", "1...5"},  {1, "Pia", "", ".2..."},
                {1, "Wren", "", "..34."}, {0, "Nobody", "", "....."}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char spots[] = ".....";
        for (int number = 1; number <= 5; number++) {
            if (team_plays(team, &resolved.book->plays.at[rows[i].play], str_of(rows[i].name),
                           str_of(rows[i].jersey), number)) {
                spots[number - 1] = (char)('0' + number);
            }
        }
        ck_assert_str_eq(spots, rows[i].spots);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("coached");
    TCase *all = tcase_create("coached");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, what_is_left_over_is_told_last);
    tcase_add_test(all, a_step_goes_on_from_the_first_as_written);
    tcase_add_test(all, on_a_card_whom_a_read_is_about_is_numbered_and_nobody_else);
    tcase_add_test(all, what_comes_first_does_not_begin_with_what_was_before);
    tcase_add_test(all, who_throws_in_holds_the_ball_out_of_bounds);
    tcase_add_test(all, who_waits_with_the_ball_watches_whom_a_screen_is_for);
    tcase_add_test(all, a_read_tells_what_is_other_in_it_and_names_what_was_before);
    tcase_add_test(all, the_accent_of_a_read_is_on_its_own_lines);
    tcase_add_test(all, who_stands_still_for_one_reason_is_told_it_once);
    tcase_add_test(all, where_no_common_part_is_drawn_the_first_way_tells_it);
    tcase_add_test(all, ways_on_stand_before_the_step_that_follows_them);
    tcase_add_test(all, figures_are_those_of_the_run);
    tcase_add_test(all, what_is_a_finding_is_no_figure);
    tcase_add_test(all, where_nobody_defends_nobody_is_watched);
    tcase_add_test(all, a_pass_of_the_coach_is_no_figure);
    tcase_add_test(all, who_begins_again_and_then_stands_is_told_both);
    tcase_add_test(all, the_coach_is_told_what_a_goal_in_seconds_takes);
    tcase_add_test(all, the_strip_ends_on_a_whole_second_and_has_a_lane_for_each_who_moves);
    tcase_add_test(all, a_lineup_says_who_has_which_spot_else_the_roster);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
