/* SPDX-License-Identifier: MIT */
/* How lines are made: gaps, heads, dashes, zigzags, bars, corners, crossings, joined lines, reads.
 */
#include "picture/scene/drawing.h"
#include "staged.h"
#include "suite.h"

#include <math.h>

#define POINTS(...)                                                                                \
    ((const double[]){__VA_ARGS__}), sizeof((const double[]){__VA_ARGS__}) / sizeof(double) / 2
#define WIDE 237.6

static struct staged staged;
static struct sizes size;

static void open_own(void)
{
    open_arena();
    size = sizes_of(WIDE / 50.4);
    staged_begin(&staged, &arena, COURT_HIGH_SCHOOL);
    staged_stands(&staged, body_attacker(1), 0, 26);
    staged_stands(&staged, body_attacker(2), 16, 19.5);
    staged_stands(&staged, body_attacker(3), -16, 19.5);
    staged_ball(&staged, body_attacker(1));
}

static struct scene *drawn(void)
{
    staged_end(&staged);
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    return scene_make(&arena, &staged.diagram, &options);
}

/* The `nth` uncased item of a class. */
static const struct scene_item *item_of(const struct scene *scene, enum scene_class class,
                                        size_t nth)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == class && !item->casing && nth-- == 0) {
            return item;
        }
    }
    ck_abort_msg("no item of class %d", class);
    return NULL;
}

static size_t items_of(const struct scene *scene, enum scene_class class, bool casing)
{
    size_t count = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        count += scene->items.at[i].class == class && scene->items.at[i].casing == casing ? 1 : 0;
    }
    return count;
}

static struct vec2 symbol_at(const struct scene *scene, body who)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_PLAYER && item->who == who) {
            return vec2_of(item->at.x, item->at.y - 0.5 * METRICS_CAP_HEIGHT * item->size);
        }
    }
    ck_abort_msg("nobody there");
    return vec2_of(0, 0);
}

static struct vec2 last_point(const struct scene_item *item)
{
    const struct path_element *last = &item->path[item->count - 1];
    return last->op == OP_CURVE ? last->p[2] : last->p[0];
}

START_TEST(a_line_starts_and_stops_short_of_what_it_joins)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(4, 12));
    struct scene *scene = drawn();
    const struct scene_item *line = item_of(scene, CLASS_MOVE, 0),
                            *head = item_of(scene, CLASS_MOVE, 1);
    const struct scene_item *ring = item_of(scene, CLASS_END, 0);
    double start = vec2_distance(line->path[0].p[0], symbol_at(scene, body_attacker(2)));
    ck_assert_double_eq_tol(start, size.body + size.gap, 0.3);
    double tip = vec2_distance(head->path[0].p[0], ring->at);
    ck_assert_double_eq_tol(tip, size.end + size.end_stroke / 2 + 0.45 * size.gap, 0.1);
    ck_assert_double_eq_tol(vec2_distance(last_point(line), head->path[0].p[0]),
                            0.70 * size.head_length, 0.1);
}
END_TEST

START_TEST(a_move_of_a_foot_is_not_drawn)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 0.5, POINTS(15, 19.5));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_MOVE, false), 0);
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 0);
    ck_assert_int_eq(scene->lines, 0);
}
END_TEST

START_TEST(no_ring_at_the_rim)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(0.3, 5.5));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 0);
    ck_assert_uint_eq(items_of(scene, CLASS_MOVE, false), 2);
}
END_TEST

/* A run to the rim that a pass ends early is a run to the rim; the block is a place of its own. */
START_TEST(no_ring_within_six_feet_of_the_basket)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(2, 10.4));
    staged_move(&staged, TASK_MOVE, body_attacker(3), 0, 2, POINTS(-2, 11.6));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 1);
    ck_assert_int_eq(item_of(scene, CLASS_END, 0)->who, body_attacker(3));
}
END_TEST

START_TEST(a_pass_begins_and_ends_with_a_dash)
{
    staged_pass(&staged, body_attacker(1), body_attacker(2), 0, 0.6);
    struct scene *scene = drawn();
    const struct scene_item *dashes = item_of(scene, CLASS_PASS, 0),
                            *head = item_of(scene, CLASS_PASS, 1);
    ck_assert_uint_eq(dashes->count % 2, 0);
    struct vec2 from = symbol_at(scene, body_attacker(1));
    ck_assert_double_eq_tol(vec2_distance(dashes->path[0].p[0], from),
                            size.ring + size.ring_stroke / 2 + size.gap,
                            0.5); /* its 1 stands a little left of its middle */
    ck_assert_double_eq_tol(vec2_distance(last_point(dashes), head->path[0].p[0]),
                            0.70 * size.head_length, 0.05);
    double dash = vec2_distance(dashes->path[0].p[0], dashes->path[1].p[0]);
    double space = vec2_distance(dashes->path[1].p[0], dashes->path[2].p[0]);
    ck_assert_double_eq_tol(dash / space, size.dash / size.space, 1e-6);
    ck_assert(dash > 0.8 * size.dash && dash < 1.25 * size.dash);
}
END_TEST

START_TEST(a_pass_through_a_symbol_is_broken)
{
    staged_stands(&staged, body_attacker(4), 8, 22.75);
    staged_pass(&staged, body_attacker(1), body_attacker(2), 0, 0.6);
    struct scene *scene = drawn();
    struct scene_measure measure;
    scene_measure(&arena, scene, &measure);
    ck_assert_int_eq(measure.on[MEASURED_SYMBOL][MEASURED_LINE], 0);
    ck_assert_uint_ge(items_of(scene, CLASS_PASS, false), 3); /* two rows of dashes and a head */
}
END_TEST

START_TEST(a_dribble_zigzags_with_straight_ends)
{
    staged_move(&staged, TASK_CARRY, body_attacker(1), 0, 2, POINTS(0, 8.5));
    struct scene *scene = drawn();
    const struct scene_item *line = item_of(scene, CLASS_DRIBBLE, 0);
    const struct scene_item *head = item_of(scene, CLASS_DRIBBLE, 1);
    double length = vec2_distance(line->path[0].p[0], head->path[0].p[0]);
    double waves = length - size.wave_in - size.wave_out - 0.70 * size.head_length;
    ck_assert_uint_eq(line->count, (size_t)floor(waves / (size.wave / 2) + 0.5) + 4);
    ck_assert_int_eq(line->join, JOIN_MITER);
    double way = line->path[line->count - 1].p[0].x - line->path[0].p[0].x;
    ck_assert(fabs(way) < 0.5);
    int turns = 0;
    for (size_t i = 3; i + 3 < line->count; i++) {
        double a = line->path[i].p[0].x - line->path[0].p[0].x,
               b = line->path[i + 1].p[0].x - line->path[0].p[0].x;
        turns += a * b < 0 ? 1 : 0;
    }
    ck_assert_int_eq(turns, (int)line->count - 6);
}
END_TEST

START_TEST(a_bar_stands_square_to_the_way_its_screener_looks)
{
    staged_stands(&staged, body_defender(2), 12, 14);
    size_t screen =
        staged_screen(&staged, body_attacker(3), body_defender(2), 0, 2, POINTS(9.6, 12.6));
    struct scene *scene = drawn();
    const struct scene_item *bar = item_of(scene, CLASS_SCREEN, 1);
    ck_assert_double_eq_tol(bar->width, size.bar_stroke, 1e-6);
    struct vec2 along = vec2_unit(vec2_sub(bar->path[1].p[0], bar->path[0].p[0]));
    double facing = staged.segment->record[screen].facing;
    ck_assert_double_eq_tol(vec2_dot(along, vec2_of(real_cos(facing), real_sin(facing))), 0, 0.06);
    ck_assert_double_eq_tol(vec2_distance(bar->path[0].p[0], bar->path[1].p[0]), size.bar, 1e-6);
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 0);
    /* the X stands where the screen finds it, a step in front of the bar */
    const struct scene_item *x = item_of(scene, CLASS_DEFENDER, 0);
    struct vec2 middle = vec2_mix(x->path[0].p[0], x->path[1].p[0], 0.5);
    double far =
        vec2_distance(middle, vec2_mix(bar->path[0].p[0], bar->path[1].p[0], 0.5)) / size.k;
    ck_assert(far > 2.55 && far < 3.05);
}
END_TEST

START_TEST(a_v_cut_keeps_its_sharp_corner_and_opens)
{
    size_t cut =
        staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(10, 14, 15.6, 19.2));
    staged_task(&staged, cut)->shape = SHAPE_V;
    staged.segment->record[cut].has_corner = true;
    staged.segment->record[cut].corner = staged_feet(&staged, 10, 14);
    struct scene *scene = drawn();
    const struct scene_item *line = item_of(scene, CLASS_MOVE, 0);
    ck_assert_uint_eq(line->count, 3);
    ck_assert_int_eq(line->path[1].op, OP_LINE);
    ck_assert_int_eq(line->path[2].op, OP_LINE);
    struct vec2 corner = line->path[1].p[0];
    double open =
        vec2_angle(vec2_sub(line->path[0].p[0], corner), vec2_sub(line->path[2].p[0], corner));
    ck_assert(open > 25 * REAL_PI / 180 && open < 80 * REAL_PI / 180);
}
END_TEST

START_TEST(the_later_line_of_a_crossing_is_cased)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(-14, 8));
    staged_move(&staged, TASK_MOVE, body_attacker(3), 0, 2, POINTS(14, 8));
    struct scene *scene = drawn();
    struct scene_measure measure;
    scene_measure(&arena, scene, &measure);
    ck_assert_int_eq(measure.crossings, 1);
    ck_assert_uint_eq(items_of(scene, CLASS_MOVE, true), 1);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_MOVE && item->casing) {
            ck_assert_int_eq(item->who, body_attacker(3));
            ck_assert_double_eq_tol(item->width, size.line + 2 * size.casing, 1e-6);
            ck_assert(!scene->items.at[i + 1].casing &&
                      scene->items.at[i + 1].who == body_attacker(3));
        }
    }
}
END_TEST

/* Two lines that cross at 18 degrees would run together without it. */
START_TEST(a_flat_crossing_is_cased_too)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(-14, 14.5));
    staged_move(&staged, TASK_MOVE, body_attacker(3), 0, 2, POINTS(14, 14.5));
    ck_assert_uint_eq(items_of(drawn(), CLASS_MOVE, true), 1);
}
END_TEST

START_TEST(a_shot_is_two_thin_lines_to_the_ring)
{
    staged_shot(&staged, body_attacker(1), 0.2);
    struct scene *scene = drawn();
    const struct scene_item *lines = item_of(scene, CLASS_SHOT, 0),
                            *head = item_of(scene, CLASS_SHOT, 1);
    ck_assert_uint_eq(lines->count, 4);
    ck_assert_double_eq_tol(vec2_distance(lines->path[0].p[0], lines->path[2].p[0]),
                            2 * size.shot_half, 1e-6);
    struct vec2 ring = vec2_of(WIDE / 2, (5.25 + 0.4) * size.k);
    ck_assert_double_eq_tol(vec2_distance(head->path[0].p[0], ring), size.basket + size.gap, 0.1);
}
END_TEST

START_TEST(a_handoff_has_two_bars_between_two_rings)
{
    staged_move(&staged, TASK_CARRY, body_attacker(1), 0, 1.5, POINTS(10, 21));
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0.4, 1.1, POINTS(12, 21));
    staged_handoff(&staged, body_attacker(1), body_attacker(2), 1.6);
    struct scene *scene = drawn();
    const struct scene_item *first = item_of(scene, CLASS_END, 0),
                            *second = item_of(scene, CLASS_END, 1);
    double apart = vec2_distance(first->at, second->at) / size.k;
    ck_assert(apart > 3.45 && apart < 5.05);
    const struct scene_item *bars = item_of(scene, CLASS_HANDOFF, 1);
    ck_assert_uint_eq(bars->count, 4);
    struct vec2 middle = vec2_mix(vec2_mix(bars->path[0].p[0], bars->path[1].p[0], 0.5),
                                  vec2_mix(bars->path[2].p[0], bars->path[3].p[0], 0.5), 0.5);
    ck_assert_double_eq_tol(vec2_distance(middle, vec2_mix(first->at, second->at, 0.5)), 0, 0.2);
}
END_TEST

/* Moves the one disc of a scene by so many feet across, and measures. */
static int astray_when_moved(struct scene *scene, double feet)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        if (scene->items.at[i].class == CLASS_ORDER && scene->items.at[i].task == 0) {
            scene->items.at[i].at.x += feet * size.k;
        }
    }
    struct scene_measure measure;
    scene_measure(&arena, scene, &measure);
    return measure.labels_astray;
}

START_TEST(a_disc_nearer_to_anothers_line_or_far_from_its_own_is_astray)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(15.6, 5));
    staged_move(&staged, TASK_MOVE, body_attacker(1), 0, 2, POINTS(8, 5));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_ORDER, false), 4);
    ck_assert_int_eq(astray_when_moved(scene, 0), 0);
    ck_assert_int_eq(astray_when_moved(scene, 2.5), 0);
    ck_assert_int_eq(astray_when_moved(scene, -9), 1);
    ck_assert_int_eq(astray_when_moved(scene, 6.5 + 5), 1);
}
END_TEST

START_TEST(two_movements_in_a_row_are_one_line_with_two_discs)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 1.5, POINTS(6, 8));
    staged_move(&staged, TASK_MOVE, body_attacker(2), 1.5, 1.5, POINTS(-10, 8));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 1);
    ck_assert_uint_eq(items_of(scene, CLASS_MOVE, false), 2);
    ck_assert_uint_eq(items_of(scene, CLASS_ORDER, false), 4);
    ck_assert_int_eq(scene->lines, 1);
}
END_TEST

START_TEST(a_stop_between_two_movements_is_ringed)
{
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 1.5, POINTS(8, 10));
    staged_move(&staged, TASK_MOVE, body_attacker(2), 3, 1.5, POINTS(-10, 10));
    struct scene *scene = drawn();
    ck_assert_uint_eq(items_of(scene, CLASS_END, false), 2);
    ck_assert_int_eq(scene->lines, 2);
}
END_TEST

START_TEST(runs_bend_round_whoever_stands_in_the_way)
{
    staged_stands(&staged, body_attacker(4), 3, 14);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(-10, 8.5));
    struct scene *scene = drawn();
    struct scene_measure measure;
    scene_measure(&arena, scene, &measure);
    ck_assert_int_eq(measure.on[MEASURED_SYMBOL][MEASURED_LINE], 0);
    ck_assert(measure.least_gap > 0.5);
}
END_TEST

START_TEST(a_read_shows_the_set_screen_and_only_its_own_lines)
{
    staged_stands(&staged, body_defender(2), 12, 14);
    staged_screen(&staged, body_attacker(3), body_defender(2), 0, 2, POINTS(9.6, 12.6));
    struct task cut = *staged_task(&staged, 0);
    cut.kind = TASK_USE;
    cut.who = body_attacker(2);
    cut.other = body_attacker(3);
    cut.order = 2;
    struct branch branch = {.title = STR("Curl")};
    VEC_PUSH(&arena, &branch.tasks, cut);
    /* run it as a common task first, so that the track is there; then make it the branch's own */
    staged_move(&staged, TASK_USE, body_attacker(2), 2.1, 2, POINTS(9, 17, 4, 19));
    staged.step->tasks.count = 1;
    VEC_PUSH(&arena, &staged.step->branches, branch);
    staged.segment->branch = 0;
    staged_end(&staged);
    struct diagram read = staged.diagram;
    read.branch = 0;
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    struct scene *scene = scene_make(&arena, &read, &options);
    ck_assert_int_eq(scene->lines, 1);
    const struct scene_item *bar = item_of(scene, CLASS_SCREEN, 1);
    struct vec2 middle = vec2_mix(bar->path[0].p[0], bar->path[1].p[0], 0.5);
    double behind = vec2_distance(middle, symbol_at(scene, body_attacker(3))) / size.k;
    ck_assert_double_eq_tol(behind, 4.2, 0.4);
    staged.diagram.branch = -1; /* the common part shows the screen being set, and no cut */
    scene = scene_make(&arena, &staged.diagram, &options);
    ck_assert_int_eq(scene->lines, 1);
    ck_assert_uint_eq(items_of(scene, CLASS_MOVE, false), 0);
}
END_TEST

START_TEST(a_way_that_begins_with_a_catch_shows_the_catcher_with_the_ball)
{
    staged_pass(&staged, body_attacker(1), body_attacker(2), 0.5, 1.5);
    struct task cut = *staged_task(&staged, 0);
    cut.kind = TASK_MOVE;
    cut.who = body_attacker(3);
    cut.order = 2;
    struct branch branch = {.title = STR("Cut")};
    VEC_PUSH(&arena, &branch.tasks, cut);
    staged_move(&staged, TASK_MOVE, body_attacker(3), 1.5, 2, POINTS(-4, 9));
    staged.step->tasks.count = 1;
    VEC_PUSH(&arena, &staged.step->branches, branch);
    staged.segment->branch = 0;
    staged_end(&staged);
    staged.diagram.branch = 0;
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    ck_assert_int_eq(scene->lines, 1);
    ck_assert_int_eq(item_of(scene, CLASS_BALL, 0)->who, body_attacker(2));
}
END_TEST

START_TEST(what_a_read_begins_with_is_drawn_from_a_way_that_sets_its_screen)
{
    staged_stands(&staged, body_defender(2), 12, 14);
    staged_screen(&staged, body_attacker(3), body_defender(2), 0, 2, POINTS(9.6, 12.6));
    struct branch slip = {.title = STR("Slip")}, curl = {.title = STR("Curl")};
    VEC_PUSH(&arena, &staged.step->branches, slip);
    VEC_PUSH(&arena, &staged.step->branches, curl);
    staged_end(&staged);
    struct segment first = *staged.segment, second = *staged.segment;
    struct task_record never = staged.segment->record[0];
    never.time[MOMENT_SET] = TIME_NEVER;
    first.record = &never;
    first.branch = 0;
    second.branch = 1;
    struct run run = {.play = staged.play};
    VEC_PUSH(&arena, &run.segments, &first);
    VEC_PUSH(&arena, &run.segments, &second);
    diagram_list diagrams = {0};
    scene_diagrams(&arena, &run, &diagrams);
    ck_assert_uint_eq(diagrams.count, 3);
    ck_assert_ptr_eq(diagrams.at[0].segment, &second);
    ck_assert_int_eq(diagrams.at[0].branch, -1);
    ck_assert_ptr_eq(diagrams.at[1].segment, &first);
}
END_TEST

START_TEST(a_way_that_begins_with_a_hand_off_shows_who_got_the_ball)
{
    staged_pass(&staged, body_attacker(1), body_attacker(2), 1.5, 1.5);
    staged_task(&staged, 0)->kind = TASK_EXCHANGE;
    struct task drive = *staged_task(&staged, 0);
    drive.kind = TASK_MOVE;
    drive.who = body_attacker(2);
    drive.order = 2;
    struct branch branch = {.title = STR("Drive")};
    VEC_PUSH(&arena, &branch.tasks, drive);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 1.5, 2, POINTS(-4, 9));
    staged.step->tasks.count = 1;
    VEC_PUSH(&arena, &staged.step->branches, branch);
    staged.segment->branch = 0;
    staged_end(&staged);
    staged.diagram.branch = 0;
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    ck_assert_int_eq(item_of(scene, CLASS_BALL, 0)->who, body_attacker(2));
}
END_TEST

START_TEST(nobody_is_drawn_between_a_standing_screener_and_his_bar)
{
    staged_stands(&staged, body_defender(2), 12, 14);
    staged_screen(&staged, body_attacker(3), body_defender(2), 0, 2, POINTS(9.6, 12.6));
    struct task curl = *staged_task(&staged, 0);
    curl.kind = TASK_USE;
    curl.who = body_attacker(2);
    curl.other = body_attacker(3);
    curl.order = 2;
    struct branch branch = {.title = STR("Curl")};
    VEC_PUSH(&arena, &branch.tasks, curl);
    staged_move(&staged, TASK_USE, body_attacker(2), 2.1, 2, POINTS(7.6, 15, 8.5, 11.9, 11, 7));
    staged.step->tasks.count = 1;
    VEC_PUSH(&arena, &staged.step->branches, branch);
    staged.segment->branch = 0;
    staged_end(&staged);
    staged.diagram.branch = 0;
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    struct scene_measure measure;
    scene_measure(&arena, scene_make(&arena, &staged.diagram, &options), &measure);
    ck_assert_int_eq(measure.crossings, 0); /* of his short line to the bar */
    ck_assert_int_eq(measure.on[MEASURED_SYMBOL][MEASURED_LINE], 0);
}
END_TEST

START_TEST(a_read_that_starts_under_way_draws_the_whole_step)
{
    staged_move(&staged, TASK_MOVE, body_attacker(3), 0, 4, POINTS(10, 12));
    struct task cut = *staged_task(&staged, 0);
    cut.who = body_attacker(2);
    cut.order = 2;
    struct branch branch = {.title = STR("Cut")};
    VEC_PUSH(&arena, &branch.tasks, cut);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 2, 2, POINTS(-4, 9));
    staged.step->tasks.count = 1;
    VEC_PUSH(&arena, &staged.step->branches, branch);
    staged.segment->branch = 0;
    staged_end(&staged);
    staged.diagram.branch = 0;
    struct scene_options options = {.width = WIDE, .accent = BODY_NONE};
    struct scene *read = scene_make(&arena, &staged.diagram, &options);
    staged.diagram.branch = -1;
    struct scene *common = scene_make(&arena, &staged.diagram, &options);
    ck_assert_int_eq(common->lines, 1);
    ck_assert_int_eq(read->lines, 2);
    ck_assert(vec2_near(symbol_at(read, body_attacker(3)), symbol_at(common, body_attacker(3)), 1));
}
END_TEST

START_TEST(a_shot_from_under_the_basket_is_seen)
{
    staged_stands(&staged, body_attacker(1), 0.5, 6.5);
    staged_shot(&staged, body_attacker(1), 0.2);
    struct scene *scene = drawn();
    const struct scene_item *lines = item_of(scene, CLASS_SHOT, 0),
                            *head = item_of(scene, CLASS_SHOT, 1);
    ck_assert(vec2_distance(lines->path[0].p[0], head->path[0].p[0]) > 2.15 * size.k);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("marks");
    TCase *all = tcase_create("marks");
    tcase_add_checked_fixture(all, open_own, close_arena);
    tcase_add_test(all, a_line_starts_and_stops_short_of_what_it_joins);
    tcase_add_test(all, a_move_of_a_foot_is_not_drawn);
    tcase_add_test(all, no_ring_at_the_rim);
    tcase_add_test(all, no_ring_within_six_feet_of_the_basket);
    tcase_add_test(all, a_pass_begins_and_ends_with_a_dash);
    tcase_add_test(all, a_pass_through_a_symbol_is_broken);
    tcase_add_test(all, a_dribble_zigzags_with_straight_ends);
    tcase_add_test(all, a_bar_stands_square_to_the_way_its_screener_looks);
    tcase_add_test(all, a_v_cut_keeps_its_sharp_corner_and_opens);
    tcase_add_test(all, the_later_line_of_a_crossing_is_cased);
    tcase_add_test(all, a_flat_crossing_is_cased_too);
    tcase_add_test(all, a_disc_nearer_to_anothers_line_or_far_from_its_own_is_astray);
    tcase_add_test(all, a_shot_is_two_thin_lines_to_the_ring);
    tcase_add_test(all, a_handoff_has_two_bars_between_two_rings);
    tcase_add_test(all, two_movements_in_a_row_are_one_line_with_two_discs);
    tcase_add_test(all, a_stop_between_two_movements_is_ringed);
    tcase_add_test(all, runs_bend_round_whoever_stands_in_the_way);
    tcase_add_test(all, a_read_shows_the_set_screen_and_only_its_own_lines);
    tcase_add_test(all, a_way_that_begins_with_a_catch_shows_the_catcher_with_the_ball);
    tcase_add_test(all, what_a_read_begins_with_is_drawn_from_a_way_that_sets_its_screen);
    tcase_add_test(all, a_way_that_begins_with_a_hand_off_shows_who_got_the_ball);
    tcase_add_test(all, nobody_is_drawn_between_a_standing_screener_and_his_bar);
    tcase_add_test(all, a_read_that_starts_under_way_draws_the_whole_step);
    tcase_add_test(all, a_shot_from_under_the_basket_is_seen);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
