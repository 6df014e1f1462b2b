/* SPDX-License-Identifier: MIT */
/* What is too short, hidden or beside somebody else to be read, in pictures of texts that were run,
 * the width of a third of a page or of a bench card. */
#include "base/geom/shape.h"
#include "base/geom/vec2.h"
#include "pictured.h"

#include <math.h>

#define THIRD 151.2
#define CARD 115.2

static const char screen_at_top[] = "play \"Gate\"\n"
                                    "  level u16 girls\n"
                                    "  start horns\n"
                                    "  ball 1\n"
                                    "  defense man\n"
                                    "  step\n"
                                    "    2 and 3 stay\n"
                                    "    5 ball screens for 1\n"
                                    "    read x5 traps\n"
                                    "      1 dribbles off 5 to left wing\n"
                                    "      5 rolls to the nail\n"
                                    "      1 passes to 5\n"
                                    "      as 5 catches, 4 cuts to the rim\n"
                                    "      5 bounce passes to 4\n";
static const char screen_on_wing[] =
    "play \"Gate\"\n"
    "  level u16 girls\n"
    "  start 1 right wing, 2 left wing, 3 left corner, 4 right corner, 5 right block\n"
    "  ball 1\n"
    "  defense man\n"
    "  step\n"
    "    2, 3 and 4 stay\n"
    "    5 ball screens for 1\n"
    "    read x1 goes under\n"
    "      1 dribbles off 5 to 3 ft above 5\n"
    "      1 shoots\n"
    "      5 rolls to the rim\n";
static const char screen_across[] = "play \"Gate\"\n"
                                    "  level u16 girls\n"
                                    "  start baseline inbounds box\n"
                                    "  defense man\n"
                                    "  step\n"
                                    "    4 cross screens for 5\n"
                                    "    1 clears to left slot\n"
                                    "    read x4 and x5 switch\n"
                                    "      5 comes off 4 to right block\n"
                                    "      4 slips to the front of the rim\n"
                                    "      3 inbounds to 4\n"
                                    "    read otherwise\n"
                                    "      5 comes off 4 to right block\n"
                                    "      3 inbounds to 5\n"
                                    "      5 shoots\n";

/* The points of a line, every run of it. */
static points_list ink_of(const struct scene_item *item)
{
    points_list points = {0};
    ck_assert_msg(item != NULL, "no such line");
    item_ink(&arena, item, 0, 0.1, &points);
    ck_assert_uint_ge(points.count, 2);
    return points;
}

static points_list line_of(const struct scene *scene, enum scene_class class, int number)
{
    return ink_of(drawn_line(scene, class, body_attacker(number)));
}

static const struct scene_item *bar_of(const struct scene *scene, int number)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (is_drawn_line(item, CLASS_SCREEN, body_attacker(number)) && is_bar(scene, item)) {
            return item;
        }
    }
    ck_abort_msg("no bar");
    return NULL;
}

static double bar_distance(const struct scene_item *bar, struct vec2 at)
{
    return segment_distance(at, bar->path[0].p[0], bar->path[1].p[0], NULL);
}

/* The middle of a text of a class. */
static struct vec2 text_at(const struct scene *scene, enum scene_class class, const char *text)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == class && item->shape == ITEM_TEXT && str_is(item->text, text)) {
            return item_middle(item);
        }
    }
    ck_abort_msg("no %s", text);
    return (struct vec2){0, 0};
}

static bool lines_cross(const points_list *a, const points_list *b)
{
    for (size_t i = 0; i + 1 < a->count; i++) {
        for (size_t j = 0; j + 1 < b->count; j++) {
            double s, t;
            if (segment_cross(a->at[i], a->at[i + 1], b->at[j], b->at[j + 1], &s, &t)) {
                return true;
            }
        }
    }
    return false;
}

START_TEST(a_short_way_off_a_bar_has_a_line)
{
    struct scene *scene = pictured("play \"Gate\"\n"
                                   "  level u16 girls\n"
                                   "  start 1 right slot, 2 left wing, 3 right hash, 4 left block, "
                                   "5 right block\n"
                                   "  ball 1\n"
                                   "  defense man\n"
                                   "  step\n"
                                   "    2 stays\n"
                                   "    4 clears to left corner\n"
                                   "    5 screens for 3\n"
                                   "    3 comes off 5 to the rim\n"
                                   "    1 bounce passes to 3\n"
                                   "    5 pops to right wing\n",
                                   1, -1, CARD);
    (void)line_of(scene, CLASS_MOVE, 5);
}
END_TEST

/* Who goes two feet has a line and a ring, the way he goes: a number alone says nothing. */
START_TEST(a_move_of_two_feet_has_a_line)
{
    static const double widths[] = {237.6, THIRD, CARD};
    for (int i = 0; i < 3; i++) {
        struct scene *scene = pictured("play \"Gate\"\n"
                                       "  start five-out\n"
                                       "  3 goes to 2 ft left of left wing\n"
                                       "  4 goes to 2.5 ft above right corner\n"
                                       "  1 dribbles to 3 ft left of top\n",
                                       1, -1, widths[i]);
        points_list left = line_of(scene, CLASS_MOVE, 3), up = line_of(scene, CLASS_MOVE, 4);
        points_list dribble = line_of(scene, CLASS_DRIBBLE, 1);
        ck_assert_double_lt(left.at[left.count - 1].x, left.at[0].x - 1);
        ck_assert_double_gt(up.at[up.count - 1].y, up.at[0].y + 1);
        ck_assert_double_lt(dribble.at[dribble.count - 1].x, dribble.at[0].x - 1);
    }
}
END_TEST

/* Who dribbles into the lane and passes from there has a ring: the pass would start in the air. */
START_TEST(a_pass_off_a_dribble_starts_at_a_ring)
{
    struct scene *scene = pictured("play \"Gate\"\n"
                                   "  start 1 left wing, 2 right wing, 3 left corner, "
                                   "4 right corner, 5 top\n"
                                   "  1 drives to lane\n"
                                   "  1 passes to 4\n",
                                   1, -1, 237.6);
    struct vec2 from = line_of(scene, CLASS_PASS, 1).at[0];
    bool ring = false;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        ring = ring || (item->class == CLASS_END && item->shape == ITEM_CIRCLE &&
                        vec2_near(item->at, from, 2 * scene->scale));
    }
    ck_assert(ring);
}
END_TEST

START_TEST(a_short_dribble_has_its_waves)
{
    struct scene *scene = pictured(screen_on_wing, 1, 0, CARD);
    points_list zigzag = line_of(scene, CLASS_DRIBBLE, 1);
    double waves = sizes_of(scene->scale).wave;
    ck_assert_double_gt(vec2_distance(zigzag.at[0], zigzag.at[zigzag.count - 1]), 1.4 * waves);
}
END_TEST

START_TEST(who_goes_on_past_his_bar_beside_the_line_to_it_leaves_from_it)
{
    static const double widths[] = {237.6, THIRD, CARD};
    for (int i = 0; i < 3; i++) {
        struct scene *scene = pictured(screen_at_top, 1, 0, widths[i]);
        struct vec2 from = line_of(scene, CLASS_MOVE, 5).at[0];
        struct vec2 numeral = text_at(scene, CLASS_PLAYER, "5");
        ck_assert_double_lt(bar_distance(bar_of(scene, 5), from), 2 * scene->scale);
        ck_assert_double_gt(vec2_distance(numeral, from), 3 * scene->scale);
    }
}
END_TEST

/* No more than 30 degrees off square: further off the two look like a Y. */
START_TEST(a_standing_bar_and_its_screener_look_like_a_t)
{
    static const double widths[] = {237.6, THIRD, CARD};
    for (int i = 0; i < 3; i++) {
        struct scene *scene = pictured(screen_on_wing, 1, 0, widths[i]);
        const struct scene_item *bar = bar_of(scene, 5);
        struct vec2 numeral = text_at(scene, CLASS_PLAYER, "5");
        struct vec2 along = vec2_sub(bar->path[1].p[0], bar->path[0].p[0]);
        struct vec2 stem = vec2_sub(numeral, vec2_mix(bar->path[0].p[0], bar->path[1].p[0], 0.5));
        double off = fabs(REAL_PI / 2 - vec2_angle(along, stem)) * 180 / REAL_PI;
        ck_assert_msg(off < 31, "%g degrees at %g pt", off, widths[i]);
    }
}
END_TEST

START_TEST(no_light_line_runs_between_a_screener_and_his_bar)
{
    static const double widths[] = {237.6, THIRD, CARD};
    for (int i = 0; i < 3; i++) {
        struct scene *scene = pictured(screen_at_top, 1, 0, widths[i]);
        const struct scene_item *light = drawn_line(scene, CLASS_DEFENSE_MOVE, body_defender(1));
        points_list stem = line_of(scene, CLASS_SCREEN, 5);
        if (light) {
            points_list line = ink_of(light);
            ck_assert(!lines_cross(&line, &stem));
        }
    }
}
END_TEST

START_TEST(a_run_does_not_cross_its_own_shot)
{
    static const double widths[] = {237.6, 163.2, THIRD};
    for (int i = 0; i < 3; i++) {
        struct scene *scene = pictured(screen_across, 1, 1, widths[i]);
        points_list run = line_of(scene, CLASS_MOVE, 5);
        const struct scene_item *shot = drawn_line(scene, CLASS_SHOT, body_attacker(5));
        struct vec2 ends[2] = {shot->path[0].p[0], shot->path[shot->count - 1].p[0]};
        ck_assert(!lines_cross(&run, &(points_list){ends, 2, 2}));
    }
}
END_TEST

START_TEST(a_line_ends_in_no_hook_that_its_head_hides)
{
    struct scene *scene = pictured(screen_across, 1, 0, 237.6);
    points_list line = line_of(scene, CLASS_MOVE, 4);
    double head = sizes_of(scene->scale).head_length, gone = 0;
    struct vec2 way = vec2_sub(line.at[line.count - 1], line.at[line.count - 2]);
    for (size_t i = line.count - 1; i > 0 && gone < head; i--) {
        struct vec2 step = vec2_sub(line.at[i], line.at[i - 1]);
        ck_assert_double_lt(vec2_angle(way, step), REAL_PI / 4);
        gone += vec2_length(step);
    }
}
END_TEST

START_TEST(a_number_stands_at_its_bar_and_not_behind_an_x)
{
    struct scene *scene = pictured("play \"Gate\"\n"
                                   "  level u16 girls\n"
                                   "  start 1 right slot, 2 right corner, 3 left slot, "
                                   "4 right block, 5 left corner\n"
                                   "  ball 1\n"
                                   "  defense man\n"
                                   "  step\n"
                                   "    5 stays\n"
                                   "    1 passes to 3\n"
                                   "    4 back screens for 2\n"
                                   "    2 comes off 4 to left block\n",
                                   1, -1, THIRD);
    struct vec2 at = text_at(scene, CLASS_ORDER, "2");
    double own = bar_distance(bar_of(scene, 4), at);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *x = &scene->items.at[i];
        if (x->class == CLASS_DEFENDER && x->shape == ITEM_PATH) {
            struct vec2 middle = vec2_mix(x->path[0].p[0], x->path[1].p[0], 0.5);
            ck_assert_double_gt(vec2_distance(middle, at), own);
        }
    }
}
END_TEST

/* Two who trap go with the dribble to where it ends: there the trap is, within 6 ft of the ball. */
START_TEST(a_trap_is_where_the_dribble_ends)
{
    struct scene *scene = pictured("play \"Gate\"\n"
                                   "  start five-out\n"
                                   "  ball 1\n"
                                   "  defense man\n"
                                   "  step\n"
                                   "    1 dribbles to right hash\n"
                                   "    x1 and x2 trap 1\n"
                                   "    1 passes to 2\n",
                                   1, -1, THIRD);
    points_list dribble = line_of(scene, CLASS_DRIBBLE, 1);
    struct vec2 ball = dribble.at[dribble.count - 1];
    for (int n = 1; n <= 2; n++) {
        points_list way = ink_of(drawn_line(scene, CLASS_DEFENSE_MOVE, body_defender(n)));
        double off = vec2_distance(way.at[way.count - 1], ball);
        ck_assert_msg(off < 6 * scene->scale, "x%d ends %g pt off", n, off);
    }
}
END_TEST

/* Beyond the bar's end in open floor it would be a dash, and the way a pass. */
START_TEST(a_way_on_from_a_screen_begins_at_the_bar)
{
    const struct scene *scene = pictured(screen_at_top, 1, 0, 0);
    points_list roll = line_of(scene, CLASS_MOVE, 5), bar = ink_of(bar_of(scene, 5));
    double off = segment_distance(roll.at[0], bar.at[0], bar.at[1], NULL);
    ck_assert_msg(off < 0.3 * scene->scale, "it begins %g pt off", off);
}
END_TEST

/* A disc on a short line is at one of its ends. */
static void assert_one_piece(const struct scene *scene, const struct scene_item *disc)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line != disc->line || !is_drawn_line(item, CLASS_MOVE, disc->who)) {
            continue;
        }
        points_list points = ink_of(item);
        struct path path = path_of(&arena, points.at, points.count);
        struct vec2 begin = points.at[0], end = points.at[points.count - 1];
        bool on = way_distance(disc->at, points.at, points.count) < 0.5 * disc->radius;
        double least =
            real_min(vec2_distance(disc->at, begin), vec2_distance(disc->at, end)) / disc->radius;
        ck_assert_msg(!on || least < 1.7 || path_length(&path) > 6 * disc->radius,
                      "%d's line of %g pt is two dashes", body_number(disc->who),
                      path_length(&path));
    }
}

START_TEST(a_number_leaves_a_short_line_in_one_piece)
{
    static const char short_runs[] = "play \"Gate\"\n"
                                     "  level u16 girls\n"
                                     "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 "
                                     "left corner\n"
                                     "  ball 1\n"
                                     "  step\n"
                                     "    2 goes to right slot\n"
                                     "    3 goes to left slot\n"
                                     "    4 goes to right short corner\n";
    const struct scene *scene = pictured(short_runs, 1, -1, 0);
    int discs = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_ORDER && item->shape == ITEM_CIRCLE && !item->casing) {
            discs++;
            assert_one_piece(scene, item);
        }
    }
    ck_assert_int_eq(discs, 3);
}
END_TEST

/* On a copy the gray of a defender's way is black: its head alone tells it from a run. */
START_TEST(a_defenders_head_is_open)
{
    const struct scene *scene = pictured(screen_at_top, 1, 0, 0);
    size_t open = 0, filled = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool head = item->shape == ITEM_PATH && item->fill != ROLE_NONE && !item->casing;
        open += head && item->class == CLASS_DEFENSE_MOVE && item->count == 7 ? 1 : 0;
        filled += head && item->class == CLASS_MOVE && item->count == 5 ? 1 : 0;
    }
    ck_assert_uint_eq(open, 2);
    ck_assert_uint_eq(filled, 2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("seen");
    TCase *all = tcase_create("seen");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, a_short_way_off_a_bar_has_a_line);
    tcase_add_test(all, a_move_of_two_feet_has_a_line);
    tcase_add_test(all, a_pass_off_a_dribble_starts_at_a_ring);
    tcase_add_test(all, a_short_dribble_has_its_waves);
    tcase_add_test(all, who_goes_on_past_his_bar_beside_the_line_to_it_leaves_from_it);
    tcase_add_test(all, a_standing_bar_and_its_screener_look_like_a_t);
    tcase_add_test(all, no_light_line_runs_between_a_screener_and_his_bar);
    tcase_add_test(all, a_run_does_not_cross_its_own_shot);
    tcase_add_test(all, a_line_ends_in_no_hook_that_its_head_hides);
    tcase_add_test(all, a_number_stands_at_its_bar_and_not_behind_an_x);
    tcase_add_test(all, a_trap_is_where_the_dribble_ends);
    tcase_add_test(all, a_way_on_from_a_screen_begins_at_the_bar);
    tcase_add_test(all, a_number_leaves_a_short_line_in_one_piece);
    tcase_add_test(all, a_defenders_head_is_open);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
