/* SPDX-License-Identifier: MIT */
/* The pictures of a text that was run. Of reads: what the defense does is drawn, lightly; and what
 * a run does that no sentence, or only half of one, tells. */
#include <math.h>
#include <stdio.h>

#include "base/geom/shape.h"
#include "base/geom/vec2.h"
#include "pictured.h"

#define HEAD                                                                                       \
    "play \"Gate\"\n"                                                                              \
    "  start 1 top, 2 right corner, 3 left corner, 4 right wing, 5 left elbow\n"                   \
    "  defense man\n"                                                                              \
    "  step \"Screen\"\n"                                                                          \
    "    5 ball screens for 1\n"
#define OFF                                                                                        \
    "      1 dribbles off 5 to left wing\n"                                                        \
    "      5 rolls to left block\n"                                                                \
    "      1 passes to 5\n"

static struct scene *drawn(const char *text, int branch)
{
    return pictured(text, 1, branch, 0);
}

/* Somebody's drawn line of a class, not its head: from where to where; false: there is none. */
static bool way_of(const struct scene *scene, enum scene_class class, body who, struct vec2 *from,
                   struct vec2 *to)
{
    const struct scene_item *line = drawn_line(scene, class, who);
    if (line) {
        const struct path_element *last = &line->path[line->count - 1];
        *from = line->path[0].p[0];
        *to = last->op == OP_CURVE ? last->p[2] : last->p[0];
    }
    return line != NULL;
}

/* The same of a defender. */
static bool line_of(const struct scene *scene, int number, struct vec2 *from, struct vec2 *to)
{
    return way_of(scene, CLASS_DEFENSE_MOVE, body_defender(number), from, to);
}

static bool has_line(const struct scene *scene, int number)
{
    struct vec2 from, to;
    return line_of(scene, number, &from, &to);
}

/* Where the ball's own line ends: the zigzag. */
static struct vec2 drive_end(const struct scene *scene)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_DRIBBLE && item->stroke != ROLE_NONE && !item->casing) {
            return item->path[item->count - 1].p[0];
        }
    }
    ck_abort_msg("nobody dribbles");
    return (struct vec2){0, 0};
}

START_TEST(a_trap_brings_two_lines_to_the_ball)
{
    struct scene *scene = drawn(HEAD "    read x5 traps\n" OFF, 0);
    struct vec2 from, to, ball = drive_end(scene);
    ck_assert(line_of(scene, 5, &from, &to));
    ck_assert(vec2_distance(to, ball) < 0.5 * vec2_distance(from, ball));
    ck_assert(line_of(scene, 1, &from, &to));
    ck_assert(vec2_distance(to, ball) < vec2_distance(from, ball));
}
END_TEST

START_TEST(a_drop_is_a_line_toward_the_basket)
{
    struct scene *scene = drawn(HEAD "    read x5 drops\n" OFF, 0);
    struct vec2 from, to;
    ck_assert(line_of(scene, 5, &from, &to));
    ck_assert(to.y < from.y);
    ck_assert(!has_line(scene, 1));
}
END_TEST

START_TEST(a_switch_is_two_lines_that_part)
{
    struct scene *scene = drawn(HEAD "    read x1 and x5 switch\n" OFF, 0);
    struct vec2 from1, to1, from5, to5, ball = drive_end(scene);
    ck_assert(line_of(scene, 1, &from1, &to1) && line_of(scene, 5, &from5, &to5));
    ck_assert(vec2_distance(to5, ball) < vec2_distance(to1, ball));
}
END_TEST

/* Not the way along with his own man, which comes first. */
START_TEST(a_switch_off_the_ball_points_at_the_other_man)
{
    struct scene *scene = drawn("play \"P\"\n  start five-out\n  ball 1\n  defense man\n  step\n"
                                "    2 and 4 stay\n    5 sets up toward the rim\n"
                                "    3 down screens for 5\n    read x3 and x5 switch\n"
                                "      5 comes off 3 to left wing\n      3 slips to the rim\n"
                                "      1 bounce passes to 3\n",
                                0);
    struct vec2 from, to, cut, wing;
    ck_assert(line_of(scene, 3, &from, &to));
    ck_assert(way_of(scene, CLASS_MOVE, body_attacker(5), &cut, &wing));
    ck_assert(vec2_distance(to, wing) < vec2_distance(from, wing));
    ck_assert(fabs(to.y - from.y) < fabs(to.x - from.x)); /* out, and not down with his own */
}
END_TEST

/* Is a line, where it is as far down the picture as that place, on the left of it? */
static bool goes_by_left(const struct scene_item *line, struct vec2 place)
{
    struct vec2 last = line->path[0].p[0];
    bool left = true;
    for (size_t i = 1; i < line->count; i++) {
        struct vec2 at = line->path[i].p[line->path[i].op == OP_CURVE ? 2 : 0];
        if ((last.y < place.y) != (at.y < place.y)) {
            left &= vec2_mix(last, at, (place.y - last.y) / (at.y - last.y)).x < place.x;
        }
        last = at;
    }
    return left;
}

START_TEST(who_trails_goes_by_the_screen_where_his_man_does)
{
    static const double widths[] = {237.6, 200, 152};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        struct scene *scene = pictured("play \"Sidelight\"\n"
                                       "  start five-out\n"
                                       "  ball 1\n"
                                       "  defense man\n"
                                       "  step\n"
                                       "    5 sets up toward the rim\n"
                                       "    3 down screens for 5\n"
                                       "    read x5 trails\n"
                                       "      5 curls off 3 to left elbow\n"
                                       "      3 pops to left corner\n"
                                       "      1 passes to 5\n",
                                       1, 0, widths[i]);
        struct vec2 bar = {0, 0};
        const struct scene_item *cut = drawn_line(scene, CLASS_MOVE, body_attacker(5));
        const struct scene_item *trail = drawn_line(scene, CLASS_DEFENSE_MOVE, body_defender(5));
        ck_assert_ptr_nonnull(cut);
        for (size_t n = 0; n < scene->items.count; n++) {
            const struct scene_item *item = &scene->items.at[n];
            if (item->class == CLASS_SCREEN && is_bar(scene, item)) {
                bar = vec2_mix(item->path[0].p[0], item->path[1].p[0], 0.5);
            }
        }
        /* 5 goes by on the left of it; x5 does, or has no line */
        ck_assert_double_lt(cut->path[0].p[0].x, bar.x);
        ck_assert(!trail || goes_by_left(trail, bar));
    }
}
END_TEST

START_TEST(a_hedge_is_seen_where_a_pass_hides_its_end)
{
    struct scene *scene = drawn("play \"P\"\n  start horns\n  ball 1\n  defense man\n  step\n"
                                "    5 ball screens for 1\n    read x5 hedges\n"
                                "      5 slips to the rim\n      4 clears to right wing\n"
                                "      1 bounce passes to 5\n",
                                0);
    struct vec2 from, to;
    ck_assert(line_of(scene, 5, &from, &to));
    ck_assert(to.y > from.y);
}
END_TEST

START_TEST(who_only_stands_in_the_way_has_no_line)
{
    struct scene *scene = drawn(HEAD "    read x1 overplays\n"
                                     "      1 rejects 5 to the rim\n",
                                0);
    ck_assert(!has_line(scene, 1));
}
END_TEST

START_TEST(otherwise_shows_no_defender_move)
{
    struct scene *scene = drawn(HEAD "    read x5 traps\n" OFF "    read otherwise\n" OFF, 1);
    ck_assert(!has_line(scene, 5) && !has_line(scene, 1));
}
END_TEST

START_TEST(what_is_written_of_a_defender_is_drawn_once)
{
    struct scene *scene =
        drawn(HEAD "    read x5 traps\n" OFF "      as 1 dribbles, x5 traps 1\n", 0);
    int lines = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        lines += item->class == CLASS_DEFENSE_MOVE && item->stroke == ROLE_DEFENDER &&
                 item->who == body_defender(5);
    }
    ck_assert_int_eq(lines, 1);
}
END_TEST

START_TEST(a_hedge_is_seen_though_the_slip_comes_first)
{
    struct scene *scene = drawn(HEAD "    read x5 hedges\n"
                                     "      5 slips to the rim\n"
                                     "      1 passes to 5\n",
                                0);
    struct vec2 from, to;
    ck_assert(line_of(scene, 5, &from, &to));
    ck_assert(to.y > from.y); /* toward the ball at the top */
}
END_TEST

/* The disc of a sentence: its middle and the line it belongs to. */
static const struct scene_item *disc_of(const struct scene *scene, int order, body who)
{
    char number[4];
    snprintf(number, sizeof number, "%d", order);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_ORDER && item->shape == ITEM_TEXT && str_is(item->text, number) &&
            item->who == who) {
            return item;
        }
    }
    return NULL;
}

START_TEST(a_slip_before_its_screen_has_both_numbers_on_its_line)
{
    struct scene *scene = drawn(HEAD "    read x5 hedges\n"
                                     "      5 slips to the rim\n"
                                     "      1 passes to 5\n",
                                0);
    const struct scene_item *screen = disc_of(scene, 1, body_attacker(5)),
                            *slip = disc_of(scene, 2, body_attacker(5));
    ck_assert_ptr_nonnull(screen);
    ck_assert_ptr_nonnull(slip);
    ck_assert_int_ge(screen->line, 0);
    ck_assert_int_eq(screen->line, slip->line);
}
END_TEST

START_TEST(who_takes_a_hand_off_comes_to_it)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start four-out one-in\n"
                                "  step \"Hand it over\"\n"
                                "    1 hands off to 4\n"
                                "    4 dribbles to the top\n",
                                -1);
    struct vec2 from, to, handed, taken, drive, end;
    ck_assert(way_of(scene, CLASS_MOVE, body_attacker(4), &from, &to));
    ck_assert(way_of(scene, CLASS_HANDOFF, body_attacker(1), &handed, &taken));
    ck_assert(way_of(scene, CLASS_DRIBBLE, body_attacker(4), &drive, &end));
    ck_assert(vec2_distance(handed, taken) < 0.3 * vec2_distance(from, to));
    ck_assert(vec2_distance(drive, to) < 0.3 * vec2_distance(from, to));
    ck_assert_ptr_nonnull(disc_of(scene, 1, body_attacker(4)));
}
END_TEST

START_TEST(two_who_change_places_pass_each_other)
{
    struct scene *scene = drawn("play \"Gate\"\n"
                                "  start 1 top, 2 right wing, 3 left wing, 4 right block, "
                                "5 left block\n"
                                "  step \"Cross\"\n"
                                "    4 and 5 exchange\n",
                                -1);
    struct vec2 from4, to4, from5, to5;
    double s, t;
    ck_assert(way_of(scene, CLASS_MOVE, body_attacker(4), &from4, &to4));
    ck_assert(way_of(scene, CLASS_MOVE, body_attacker(5), &from5, &to5));
    ck_assert(!segment_cross(from4, to4, from5, to5, &s, &t));
}
END_TEST

START_TEST(who_ends_at_a_cone_is_seen_beside_it)
{
    struct scene *scene = drawn("drill \"Gate\"\n"
                                "  start 1 left corner, cone at right elbow\n"
                                "  ball 1\n"
                                "  step \"Run\"\n"
                                "    1 dribbles to cone A\n",
                                -1);
    struct scene_measure found;
    scene_measure(&arena, scene, &found);
    ck_assert_int_eq(found.on[MEASURED_SYMBOL][MEASURED_DOT], 0);
    ck_assert(scene->uses & 1u << CLASS_END);
}
END_TEST

static int discs_in(const struct scene *scene)
{
    int discs = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        discs += item->class == CLASS_ORDER && item->shape == ITEM_TEXT;
    }
    return discs;
}

START_TEST(on_a_small_picture_all_numbers_stand_or_none)
{
    const char *crowded = HEAD "    1 dribbles off 5 to left elbow\n"
                               "    5 rolls to the rim\n"
                               "    1 hands off to 3\n"
                               "    3 drives to the rim\n"
                               "    2 cuts to left elbow\n"
                               "    4 cuts to the lane\n"
                               "    3 passes to 4\n"
                               "    4 passes to 2\n";
    int large = discs_in(pictured(crowded, 1, -1, 400)),
        small = discs_in(pictured(crowded, 1, -1, 100));
    ck_assert_int_gt(large, 8);
    ck_assert_int_eq(small, 0);
    const char *plain = "play \"Gate\"\n  start five-out\n  step \"Over\"\n    1 passes to 2\n"
                        "    3 cuts to the rim\n";
    ck_assert_int_eq(discs_in(pictured(plain, 1, -1, 115)), 2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reads");
    TCase *all = tcase_create("reads");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, a_trap_brings_two_lines_to_the_ball);
    tcase_add_test(all, a_drop_is_a_line_toward_the_basket);
    tcase_add_test(all, a_switch_is_two_lines_that_part);
    tcase_add_test(all, a_switch_off_the_ball_points_at_the_other_man);
    tcase_add_test(all, who_trails_goes_by_the_screen_where_his_man_does);
    tcase_add_test(all, a_hedge_is_seen_where_a_pass_hides_its_end);
    tcase_add_test(all, who_only_stands_in_the_way_has_no_line);
    tcase_add_test(all, otherwise_shows_no_defender_move);
    tcase_add_test(all, what_is_written_of_a_defender_is_drawn_once);
    tcase_add_test(all, a_hedge_is_seen_though_the_slip_comes_first);
    tcase_add_test(all, a_slip_before_its_screen_has_both_numbers_on_its_line);
    tcase_add_test(all, who_takes_a_hand_off_comes_to_it);
    tcase_add_test(all, two_who_change_places_pass_each_other);
    tcase_add_test(all, who_ends_at_a_cone_is_seen_beside_it);
    tcase_add_test(all, on_a_small_picture_all_numbers_stand_or_none);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
