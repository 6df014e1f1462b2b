/* SPDX-License-Identifier: MIT */
/* What sheets make of a play that was run: questions with lines taken away, figures to watch, lanes
 * on the clock; the words of a page; and in which order ways on are told, and who has which spot.
 */
#include "floor/sim/sim.h"
#include "page/sheet/blanked.h"
#include "page/sheet/bands.h"
#include "page/sheet/timing.h"
#include "page/sheet/watch.h"
#include "language/tell/tell.h"
#include "resolved.h"
#include "suite.h"
#include "written.h"

#include <string.h>

#define PLAY                                                                                       \
    "play \"Lantern\"\n"                                                                           \
    "  start 1 top, 2 right wing, 3 left short corner, 4 right corner, 5 left elbow\n"             \
    "  ball 1\n"                                                                                   \
    "  defense man gap\n"                                                                          \
    "  step \"Screen down\"\n"                                                                     \
    "    2 and 4 stay\n"                                                                           \
    "    3 sets up toward the rim\n"                                                               \
    "    5 down screens for 3\n"
#define READS                                                                                      \
    "    read otherwise \"Wait\"\n"                                                                \
    "      3 comes off 5 to left wing\n"                                                           \
    "      1 passes to 3\n"                                                                        \
    "    read x3 trails \"Curl\"\n"                                                                \
    "      3 curls off 5 to the nail\n"                                                            \
    "      5 pops to left wing\n"                                                                  \
    "      1 passes to 3\n"                                                                        \
    "    read x3 overplays \"Back cut\"\n"                                                         \
    "      3 back cuts to the rim\n"                                                               \
    "      1 bounce passes to 3\n"

static struct resolved resolved;
static struct run *run;
static diagram_list diagrams;
static finding_list findings;

static const struct play *run_text(const char *text)
{
    resolve_text(&arena, &resolved, STR("lantern"), str_of(text));
    ck_assert_uint_eq(resolved.diags.errors, 0);
    const struct play *play = &resolved.book->plays.at[0];
    run = sim_run(&arena, &resolved.sources, play, &resolved.diags);
    diagrams = (diagram_list){0};
    findings = (finding_list){0};
    scene_diagrams(&arena, run, &diagrams);
    check_run(&arena, run, &findings);
    return play;
}

static const char *plain(struct str text)
{
    return text_of(tell_strip(&arena, text));
}

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

/* ---- questions ---- */

static asked_list ask(const struct play *play, uint64_t seed, size_t least)
{
    asked_list asked = {0};
    asked_of(&arena, play, &diagrams, seed, least, &asked);
    return asked;
}

START_TEST(a_read_is_asked_by_what_the_defender_does)
{
    const struct play *play = run_text(PLAY READS);
    asked_list asked = ask(play, 0, 1);
    ck_assert_uint_eq(asked.count, 1);
    const struct asked *one = &asked.at[0];
    ck_assert_int_ge(one->diagram->branch, 1); /* not what is left over */
    ck_assert_ptr_nonnull(strstr(plain(one->question), ". What does 3 do? Who gives up the ball?"));
    ck_assert_str_eq(plain(one->draw), "Draw a run and a pass.");
    ck_assert_uint_eq(one->lines, 2);
    const struct branch *branch = &play->steps.at[0].branches.at[one->diagram->branch];
    ck_assert(branch->title.size > 0); /* its name gives it away */
    ck_assert_ptr_null(strstr(plain(one->title), plain(branch->title)));
    ck_assert_int_eq(plain(one->answer)[0], '3');
}
END_TEST

START_TEST(only_what_is_asked_is_missing)
{
    const struct play *play = run_text(PLAY READS);
    asked_list asked = ask(play, 0, 4);
    ck_assert_uint_eq(asked.count, 4);
    for (size_t i = 0; i < asked.count; i++) {
        const struct segment *segment = asked.at[i].diagram->segment;
        size_t missing = 0;
        for (size_t k = 0; k < segment->tasks; k++) {
            missing += asked.at[i].missing[k];
            bool own = (int)k >= (asked.at[i].diagram->branch < 0 ? 0 : 4);
            ck_assert(!asked.at[i].missing[k] || own); /* what came before stays */
        }
        ck_assert_uint_ge(missing, 1);
        ck_assert(asked.at[i].answer.size > 0);
    }
}
END_TEST

START_TEST(a_screener_is_asked_for_the_next_move)
{
    const struct play *play = run_text(PLAY "    3 curls off 5 to the nail\n"
                                            "    5 pops to left wing\n");
    bool found = false;
    for (uint64_t seed = 0; seed < 8 && !found; seed++) {
        asked_list asked = ask(play, seed, 1);
        found =
            strcmp(plain(asked.at[0].question), "5 has set the screen. What does 5 do next?") == 0;
        if (found) {
            ck_assert_str_eq(plain(asked.at[0].draw), "Draw a run.");
            ck_assert_ptr_nonnull(strstr(plain(asked.at[0].answer), "5 pops to the left wing"));
        }
    }
    ck_assert(found);
}
END_TEST

START_TEST(the_same_seed_asks_the_same_and_others_ask_otherwise)
{
    const struct play *play = run_text(PLAY READS);
    bool differs = false;
    for (uint64_t seed = 0; seed < 6; seed++) {
        asked_list one = ask(play, seed, 1), again = ask(play, seed, 1), first = ask(play, 0, 1);
        ck_assert_str_eq(plain(one.at[0].question), plain(again.at[0].question));
        differs = differs || strcmp(plain(one.at[0].question), plain(first.at[0].question)) != 0;
    }
    ck_assert(differs);
}
END_TEST

/* The same sentence of the same step: ways on share the common part, which comes first. */
static const struct task *task_in(const struct asked *asked, size_t index)
{
    return segment_task(asked->diagram->segment, index);
}

static size_t count_drawn(const struct scene *scene, const struct task *task,
                          const struct asked *asked)
{
    size_t drawn = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool line = item->line >= 0 || item->class == CLASS_ORDER || item->class == CLASS_END;
        drawn += line && item->task >= 0 && task_in(asked, (size_t)item->task) == task;
    }
    return drawn;
}

/* How often what one question asks for would be drawn in pictures of others, and is. */
static void count_shown(const asked_list *asked, size_t *would, size_t *is)
{
    for (size_t i = 0; i < asked->count; i++) {
        const struct scene_options options = {.width = 237.6, .accent = BODY_NONE};
        const struct asked *picture = &asked->at[i];
        const struct scene *whole = scene_make(&arena, picture->diagram, &options);
        const struct scene *blanked = blanked_scene(&arena, whole, picture);
        ck_assert_uint_lt(blanked->items.count, whole->items.count);
        for (size_t k = 0; k < asked->count; k++) {
            const struct asked *other = &asked->at[k];
            for (size_t task = 0; task < other->diagram->segment->tasks; task++) {
                if (other->missing[task]) {
                    *would += k == i ? 0 : count_drawn(whole, task_in(other, task), picture);
                    *is += count_drawn(blanked, task_in(other, task), picture);
                }
            }
        }
    }
}

START_TEST(what_one_question_asks_for_no_picture_shows)
{
    static const char *const texts[] = {
        PLAY "    1 passes to 2\n    3 curls off 5 to the nail\n    5 pops to left wing\n",
        PLAY "    1 passes to 2 and cuts to the rim\n" READS,
        PLAY "    3 curls off 5 to the nail\n"
             "    read x3 trails\n      3 cuts to the rim\n      1 passes to 3\n"
             "    read x3 overplays\n      3 pops to left wing\n      1 passes to 3\n",
    };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        const struct play *play = run_text(texts[i]);
        size_t would = 0, is = 0;
        for (uint64_t seed = 0; seed < 6; seed++) {
            asked_list asked = ask(play, seed, 4);
            ck_assert_uint_ge(asked.count, 3);
            count_shown(&asked, &would, &is);
        }
        ck_assert_uint_eq(is, 0);
        ck_assert_msg(would > 0, "play %zu has no line that stands in two pictures", i);
    }
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
    return plain(tell_job(&arena, play, &play->steps.at[step], -1, body_attacker(number)));
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
    run_text(text);
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

/* ---- lanes ---- */

START_TEST(the_strip_ends_on_a_whole_second_and_has_a_lane_for_each_who_moves)
{
    run_text(PLAY "    3 curls off 5 to the nail\n");
    struct fonts *fonts = fonts_create();
    struct sheet_job job = {.book = resolved.book, .reader = BODY_NONE};
    struct setter setter = {.arena = &arena, .fonts = fonts, .job = &job};
    const struct segment *segment = run->segments.at[0];
    ck_assert(timing_holds(segment));
    struct galley *strip = timing_set(&setter, segment);
    double right = 0, lowest = 0;
    size_t heavy = 0;
    for (size_t i = 0; i < strip->items.count; i++) {
        const struct placed *placed = &strip->items.at[i];
        right = placed->x2 > right ? placed->x2 : right;
        lowest = placed->kind == PLACED_RULE && placed->y2 > lowest ? placed->y2 : lowest;
        heavy += placed->kind == PLACED_RULE && placed->width == 2.2;
    }
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
    tcase_add_test(all, a_read_is_asked_by_what_the_defender_does);
    tcase_add_test(all, only_what_is_asked_is_missing);
    tcase_add_test(all, a_screener_is_asked_for_the_next_move);
    tcase_add_test(all, the_same_seed_asks_the_same_and_others_ask_otherwise);
    tcase_add_test(all, what_one_question_asks_for_no_picture_shows);
    tcase_add_test(all, on_a_card_whom_a_read_is_about_is_numbered_and_nobody_else);
    tcase_add_test(all, what_comes_first_does_not_begin_with_what_was_before);
    tcase_add_test(all, who_throws_in_holds_the_ball_out_of_bounds);
    tcase_add_test(all, who_waits_with_the_ball_watches_whom_a_screen_is_for);
    tcase_add_test(all, who_stands_still_for_one_reason_is_told_it_once);
    tcase_add_test(all, where_no_common_part_is_drawn_the_first_way_tells_it);
    tcase_add_test(all, ways_on_stand_before_the_step_that_follows_them);
    tcase_add_test(all, figures_are_those_of_the_run);
    tcase_add_test(all, what_is_a_finding_is_no_figure);
    tcase_add_test(all, the_strip_ends_on_a_whole_second_and_has_a_lane_for_each_who_moves);
    tcase_add_test(all, a_lineup_says_who_has_which_spot_else_the_roster);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
