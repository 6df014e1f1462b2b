/* SPDX-License-Identifier: MIT */
/* Ways that a player must not misread, in pictures of texts that were run: through a bar, through a
 * cone, without the corner that a feint or a second sentence has. */
#include <math.h>

#include "base/geom/shape.h"
#include "base/geom/vec2.h"
#include "pictured.h"

#define LEAST_TURN (10 * REAL_PI / 180)
#define GATE                                                                                       \
    "play \"Gate\"\n"                                                                              \
    "  start 1 top, 2 right corner, 3 left corner, 4 right wing, 5 left elbow\n"                   \
    "  defense man\n"                                                                              \
    "  step \"Screen\"\n"

static struct scene *drawn(const char *text, int step, int branch)
{
    return pictured(text, step, branch, 0);
}

/* The points of somebody's line of a class. */
static points_list line_of(const struct scene *scene, enum scene_class class, body who)
{
    points_list points = {0};
    const struct scene_item *line = drawn_line(scene, class, who);
    ck_assert_msg(line != NULL, "no such line");
    item_ink(&arena, line, 0, 0.1, &points);
    return points;
}

static double sharpest(const points_list *line)
{
    double most = 0;
    for (size_t i = 1; i + 1 < line->count; i++) {
        most = real_max(most, vec2_angle(vec2_sub(line->at[i], line->at[i - 1]),
                                         vec2_sub(line->at[i + 1], line->at[i])));
    }
    return most;
}

/* How often somebody's other lines cross a bar of his own. */
static int crosses_own_bar(const struct scene *scene, body who)
{
    points_list line = line_of(scene, CLASS_MOVE, who);
    int crosses = 0, bars = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (!is_drawn_line(item, CLASS_SCREEN, who) || !is_bar(scene, item)) {
            continue;
        }
        bars++;
        for (size_t p = 0; p + 1 < line.count; p++) {
            double s, t;
            crosses += segment_cross(line.at[p], line.at[p + 1], item->path[0].p[0],
                                     item->path[1].p[0], &s, &t);
        }
    }
    ck_assert_int_eq(bars, 1);
    return crosses;
}

START_TEST(who_rolls_does_not_cross_the_bar_that_is_his)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start 1 top, 2 left corner, 3 right wing, 4 left elbow, "
                                "5 right block\n"
                                "  ball 3\n"
                                "  defense man\n"
                                "  step \"Down\"\n"
                                "    4 down screens for 2\n"
                                "    2 comes off 4 to left wing\n"
                                "    4 rolls to left block\n",
                                1, -1);
    ck_assert_int_eq(crosses_own_bar(scene, body_attacker(4)), 0);
}
END_TEST

START_TEST(who_goes_on_past_his_bar_as_a_read_begins_does_not_cross_it)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start 1 right wing, 2 left wing, 3 left corner, 4 right corner, "
                                "5 right block\n"
                                "  defense man\n"
                                "  step \"Screen\"\n"
                                "    5 ball screens for 1\n"
                                "    read x1 goes over\n"
                                "      1 drives off 5 to right elbow\n"
                                "      5 pops to right wing\n",
                                1, 0);
    ck_assert_int_eq(crosses_own_bar(scene, body_attacker(5)), 0);
}
END_TEST

START_TEST(a_small_picture_passes_everybody_on_the_side_of_the_run)
{
    const char *text = "play \"Gate\"\n"
                       "  start 3 left slot, 2 top, 1 right wing, 4 left wing, 5 left elbow\n"
                       "  ball 3\n"
                       "  defense man\n"
                       "  step\n"
                       "    5 stays\n"
                       "    3 passes to 2\n"
                       "    2 passes to 1\n"
                       "    as 2 passes, 3 comes off 5 to right block\n"
                       "  step\n"
                       "    2 and 5 screen for 4\n"
                       "    4 comes off 2 and 5 to nail\n";
    static const double widths[] = {237.6, 151.2, 115.2, 90};
    for (int i = 0; i < 4; i++) {
        ck_assert_int_eq(pictured(text, 2, -1, widths[i])->wrong_sides, 0);
    }
}
END_TEST

START_TEST(the_steps_toward_a_screen_that_is_slipped_are_drawn)
{
    struct scene *scene = drawn(GATE "    5 ball screens for 1\n"
                                     "    read x5 hedges\n"
                                     "      5 slips to the rim\n"
                                     "      1 passes to 5\n",
                                1, 0);
    points_list line = line_of(scene, CLASS_MOVE, body_attacker(5));
    ck_assert(sharpest(&line) > REAL_PI / 4);
    ck_assert(line.at[1].x > line.at[0].x); /* first to the ball, before the basket */
}
END_TEST

START_TEST(a_screen_slipped_at_once_is_told_by_a_leg_toward_it)
{
    const char *text = "play \"Gate\"\n"
                       "  start 1 right slot, 2 left slot, 3 left corner, 4 right corner, "
                       "5 right elbow\n"
                       "  ball 1\n"
                       "  defense man\n"
                       "  step\n"
                       "    1 passes to 2\n"
                       "    5 flare screens for 1\n"
                       "    read x1 and x5 switch\n"
                       "      5 slips to the rim\n"
                       "      2 passes to 5\n";
    static const double widths[] = {237.6, 115.2};
    for (int i = 0; i < 2; i++) {
        struct scene *scene = pictured(text, 1, 0, widths[i]);
        points_list line = line_of(scene, CLASS_MOVE, body_attacker(5));
        ck_assert(sharpest(&line) > REAL_PI / 4);
        ck_assert(line.at[1].y > line.at[0].y); /* away from the basket, where 1 is */
    }
}
END_TEST

START_TEST(two_sentences_that_name_places_have_a_corner_between_them)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start 1 top, 2 right wing, 3 left wing\n"
                                "  step \"Through\"\n"
                                "    3 cuts to the rim\n"
                                "    3 clears to right corner\n",
                                1, -1);
    points_list line = line_of(scene, CLASS_MOVE, body_attacker(3));
    ck_assert(sharpest(&line) > LEAST_TURN);
}
END_TEST

START_TEST(a_pass_goes_round_a_cone)
{
    struct scene *scene = drawn("drill \"Gate\"\n"
                                "  start 1 left wing, 2 right wing, cone at nail\n"
                                "  ball 1\n"
                                "  step \"Over\"\n"
                                "    1 passes to 2\n",
                                1, -1);
    struct scene_measure found;
    scene_measure(&arena, scene, &found);
    ck_assert_int_eq(found.on[MEASURED_SYMBOL][MEASURED_LINE], 0);
    ck_assert(scene->uses & 1u << CLASS_CONE);
    points_list line = line_of(scene, CLASS_PASS, body_attacker(1));
    ck_assert_uint_gt(line.count, 1);
}
END_TEST

START_TEST(a_read_that_shows_its_whole_step_says_so)
{
    const char *text = GATE "    5 ball screens for 1\n"
                            "    read x5 hedges\n"
                            "      5 slips to the rim\n"
                            "      1 passes to 5\n"
                            "    read x5 drops\n"
                            "      1 dribbles off 5 to left wing\n"
                            "      1 passes to 3\n";
    ck_assert(str_is(scene_after(&arena, diagram_of(text, 1, 0)), "from the start of step 1"));
    ck_assert_uint_eq(scene_after(&arena, diagram_of(text, 1, 1)).size, 0);
    ck_assert_uint_eq(scene_after(&arena, diagram_of(text, 1, -1)).size, 0);
}
END_TEST

/* With what the picture takes up behind it: broken into lines over the floor, and nothing cut off.
 */
START_TEST(a_title_too_long_for_its_picture_is_read_to_its_end)
{
    const char *text = GATE "    5 ball screens for 1\n"
                            "    read x5 hedges \"Slip it when the big man jumps out hard\"\n"
                            "      5 slips to the rim\n"
                            "      1 passes to 5\n"
                            "    read x5 drops\n"
                            "      1 dribbles off 5 to left wing\n";
    static const double widths[] = {115, 160, 237.6};
    for (size_t w = 0; w < sizeof widths / sizeof *widths; w++) {
        struct scene_options options = {.width = widths[w], .accent = BODY_NONE, .caption = true};
        const struct scene *scene = scene_make(&arena, diagram_of(text, 1, 0), &options);
        double low = 0;
        for (size_t i = 0; i < scene->items.count; i++) {
            const struct scene_item *item = &scene->items.at[i];
            if (item->class == CLASS_CAPTION && item->anchor == ANCHOR_START) {
                double wide = metrics_width(item->face, item->size, item->text);
                ck_assert_double_le(item->at.x + wide, widths[w]);
                low = item->at.y < scene->height / 2 ? real_max(low, item->at.y) : low;
            }
        }
        ck_assert_double_gt(low, 15); /* the second line */
    }
}
END_TEST

START_TEST(a_screen_of_the_step_before_stands_in_a_read_that_begins_with_its_step)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start 1 top, 2 right wing, 3 left wing, 4 left corner, "
                                "5 right block\n"
                                "  defense man\n"
                                "  step \"Away\"\n"
                                "    1 passes to 2\n"
                                "    1 screens for 3\n"
                                "  step \"Read\"\n"
                                "    read x3 trails\n"
                                "      3 curls off 1 to the rim\n"
                                "    read x3 goes under\n"
                                "      3 fades off 1 to left corner\n",
                                2, 0);
    ck_assert(scene->uses & 1u << CLASS_SCREEN);
}
END_TEST

START_TEST(what_a_screener_ran_before_is_drawn_though_it_led_him_by_his_bar)
{
    struct scene *scene = drawn("play \"Detour\"\n"
                                "  start 1 right slot, 2 left slot, 3 left corner, "
                                "4 right corner, 5 right wing\n"
                                "  ball 4\n"
                                "  defense man\n"
                                "  step\n"
                                "    5 goes to left elbow\n"
                                "    5 back screens for 1\n"
                                "    1 comes off 5 to right block\n",
                                1, -1);
    points_list line = line_of(scene, CLASS_SCREEN, body_attacker(5));
    double left = 1e9;
    for (size_t i = 0; i < line.count; i++) {
        left = real_min(left, line.at[i].x);
    }
    ck_assert_double_lt(left, scene->floor.origin.x - 4 * scene->scale); /* the left elbow */
    ck_assert_double_gt(line.at[line.count - 1].x, scene->floor.origin.x + 4 * scene->scale);
}
END_TEST

START_TEST(a_screener_from_afar_meets_his_bar_square)
{
    struct scene *scene = drawn("play \"Lock\"\n"
                                "  start 1 top, 2 right wing, 3 left short corner, "
                                "4 right corner, 5 left elbow\n"
                                "  ball 1\n"
                                "  defense man gap\n"
                                "  step\n"
                                "    2 and 4 stay\n"
                                "    3 sets up toward the rim\n"
                                "    5 down screens for 3\n"
                                "    read x3 trails\n"
                                "      3 curls off 5 to the nail\n"
                                "      1 passes to 3\n",
                                1, -1);
    points_list line = line_of(scene, CLASS_SCREEN, body_attacker(5));
    struct vec2 last = vec2_unit(vec2_sub(line.at[line.count - 1], line.at[line.count - 2]));
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_SCREEN && is_bar(scene, item)) {
            struct vec2 bar = vec2_unit(vec2_sub(item->path[1].p[0], item->path[0].p[0]));
            ck_assert_double_lt(fabs(vec2_dot(last, bar)), 0.25);
            return;
        }
    }
    ck_abort_msg("no bar");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ways");
    TCase *all = tcase_create("ways");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, who_rolls_does_not_cross_the_bar_that_is_his);
    tcase_add_test(all, who_goes_on_past_his_bar_as_a_read_begins_does_not_cross_it);
    tcase_add_test(all, a_small_picture_passes_everybody_on_the_side_of_the_run);
    tcase_add_test(all, the_steps_toward_a_screen_that_is_slipped_are_drawn);
    tcase_add_test(all, a_screen_slipped_at_once_is_told_by_a_leg_toward_it);
    tcase_add_test(all, two_sentences_that_name_places_have_a_corner_between_them);
    tcase_add_test(all, a_pass_goes_round_a_cone);
    tcase_add_test(all, a_read_that_shows_its_whole_step_says_so);
    tcase_add_test(all, a_title_too_long_for_its_picture_is_read_to_its_end);
    tcase_add_test(all, a_screen_of_the_step_before_stands_in_a_read_that_begins_with_its_step);
    tcase_add_test(all, what_a_screener_ran_before_is_drawn_though_it_led_him_by_his_bar);
    tcase_add_test(all, a_screener_from_afar_meets_his_bar_square);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
