/* SPDX-License-Identifier: MIT */
/* The whole of a diagram: sizes, floor shown, palettes, who is drawn, order of drawing, text. */
#include "picture/scene/drawing.h"
#include "staged.h"
#include "suite.h"

#include <math.h>
#include <string.h>

#define POINTS(...)                                                                                \
    ((const double[]){__VA_ARGS__}), sizeof((const double[]){__VA_ARGS__}) / sizeof(double) / 2

static struct staged staged;

static void five_out(enum court_code court)
{
    static const double spots[5][2] = {
        {0, 26}, {15.5, 19}, {-15.5, 19}, {20.8, 3.05}, {-20.8, 3.05}};
    staged_begin(&staged, &arena, court);
    for (int i = 0; i < 5; i++) {
        staged_stands(&staged, body_attacker(i + 1), spots[i][0], spots[i][1]);
        staged_stands(&staged, body_defender(i + 1), spots[i][0] * 0.72,
                      5.25 + (spots[i][1] - 5.25) * 0.72 + 1.5);
    }
    staged_ball(&staged, body_attacker(1));
}

/* 2 goes there, and nobody else moves. */
static void one_cut(double x, double y)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(x, y));
    staged_end(&staged);
}

static struct scene *drawn(double width, body accent)
{
    struct scene_options options = {.width = width, .accent = accent};
    return scene_make(&arena, &staged.diagram, &options);
}

static const struct scene_item *first_of(const struct scene *scene, enum scene_class class,
                                         body who)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == class && item->who == who && !item->casing) {
            return item;
        }
    }
    return NULL;
}

static int count_of(const struct scene *scene, enum scene_class class)
{
    int count = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        count += scene->items.at[i].class == class && !scene->items.at[i].casing ? 1 : 0;
    }
    return count;
}

static double channel(unsigned rgb, int shift)
{
    double c = (double)((rgb >> shift) & 255u) / 255.0;
    return c <= 0.03928 ? c / 12.92 : real_exp(2.4 * real_log((c + 0.055) / 1.055));
}

static double luminance(unsigned rgb)
{
    return 0.2126 * channel(rgb, 16) + 0.7152 * channel(rgb, 8) + 0.0722 * channel(rgb, 0);
}

static double contrast(unsigned a, unsigned b)
{
    double la = luminance(a), lb = luminance(b);
    return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

START_TEST(every_palette_can_be_read_on_page_floor_and_lane)
{
    static const enum role texts[] = {ROLE_INK,      ROLE_TEXT,   ROLE_SOFT,
                                      ROLE_DEFENDER, ROLE_ACCENT, ROLE_WARNING};
    static const enum role lines[] = {ROLE_COURT};
    static const enum role grounds[] = {ROLE_PAGE, ROLE_FLOOR, ROLE_LANE};
    for (int t = 0; t < THEME_COUNT; t++) {
        const struct theme_row *row = theme_row((enum theme)t);
        for (size_t g = 0; g < 3; g++) {
            for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
                ck_assert_msg(contrast(row->rgb[texts[i]], row->rgb[grounds[g]]) >= 4.5,
                              "%s text %d on %d", row->word, texts[i], grounds[g]);
            }
            ck_assert_msg(contrast(row->rgb[lines[0]], row->rgb[grounds[g]]) >= 3.0, "%s court",
                          row->word);
        }
        ck_assert(contrast(row->rgb[ROLE_ORDER], row->rgb[ROLE_ORDER_TEXT]) >= 4.5);
        enum theme found;
        ck_assert(theme_find(str_of(row->word), &found) && found == (enum theme)t);
    }
    enum theme none;
    ck_assert(!theme_find(STR("sepia"), &none));
}
END_TEST

START_TEST(marks_have_the_sizes_of_the_tables)
{
    struct sizes wide = sizes_of(4.714), narrow = sizes_of(2.286);
    ck_assert_double_eq_tol(wide.numeral, 12.7, 0.05);
    ck_assert_double_eq_tol(narrow.numeral, 9.4, 1e-9);
    ck_assert_double_eq_tol(wide.bar, 12.7, 0.05);
    ck_assert_double_eq_tol(narrow.head_length, 4.6, 1e-9);
    ck_assert_double_eq_tol(narrow.line, 1.0, 1e-9);
    ck_assert(narrow.small && !wide.small);
}
END_TEST

START_TEST(half_a_floor_has_the_height_of_the_column)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert_double_eq_tol(scene->width, 237.6, 1e-9);
    ck_assert_double_eq_tol(scene->height, 144.26, 0.05);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE};
    ck_assert_double_eq_tol(scene_height(&arena, &staged.diagram, &options), scene->height, 1e-9);
    options.below = 28.6;
    ck_assert(scene_height(&arena, &staged.diagram, &options) < scene->height);
    options.caption = true;
    ck_assert_double_eq_tol(scene_height(&arena, &staged.diagram, &options),
                            scene_make(&arena, &staged.diagram, &options)->height, 1e-9);
}
END_TEST

START_TEST(a_thrower_is_shown_outside_the_line)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_stands(&staged, body_attacker(3), 13.5, -3);
    staged_ball(&staged, body_attacker(3));
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert_double_eq_tol(scene->height, (30.2 + 4.8) * 4.714, 1.0);
    const struct scene_item *ring = first_of(scene, CLASS_BALL, body_attacker(3));
    ck_assert_ptr_nonnull(ring);
    ck_assert(ring->at.y - ring->radius > 0);
}
END_TEST

START_TEST(a_sideline_thrower_widens_the_floor_on_that_side_only)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_stands(&staged, body_attacker(3), 27, 28);
    staged_ball(&staged, body_attacker(3));
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert_double_eq_tol(scene->scale, 237.6 / (25.2 + 30.2), 1e-6);
}
END_TEST

START_TEST(a_full_floor_lies_on_its_side_across_a_page)
{
    five_out(COURT_HIGH_SCHOOL);
    staged.play->full_floor = true;
    staged_end(&staged);
    struct scene *narrow = drawn(115.2, BODY_NONE), *wide = drawn(504, BODY_NONE);
    ck_assert(narrow->height > narrow->width);
    ck_assert(wide->height < wide->width);
    /* the attack goes right: the top of the floor is left of the basket, attackers' left is up */
    const struct scene_item *top = first_of(wide, CLASS_PLAYER, body_attacker(1));
    const struct scene_item *left = first_of(wide, CLASS_PLAYER, body_attacker(3));
    const struct scene_item *right = first_of(wide, CLASS_PLAYER, body_attacker(2));
    ck_assert(left->at.y < right->at.y);
    ck_assert(top->at.x < left->at.x);
}
END_TEST

START_TEST(basket_bottom_turns_the_floor_round)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    const struct scene_item *above =
        first_of(drawn(237.6, BODY_NONE), CLASS_PLAYER, body_attacker(2));
    double x = above->at.x, y = above->at.y;
    staged.play->basket_bottom = true;
    struct scene *scene = drawn(237.6, BODY_NONE);
    const struct scene_item *below = first_of(scene, CLASS_PLAYER, body_attacker(2));
    ck_assert_double_eq_tol(below->at.x, scene->width - x, 0.01);
    ck_assert(below->at.y < y);
}
END_TEST

START_TEST(every_court_is_drawn_inside_the_picture)
{
    for (int code = 0; code < COURT_COUNT; code++) {
        five_out((enum court_code)code);
        staged_end(&staged);
        struct scene *scene = drawn(237.6, BODY_NONE);
        int curves = 0;
        for (size_t i = 0; i < scene->items.count; i++) {
            const struct scene_item *item = &scene->items.at[i];
            for (size_t p = 0; item->class == CLASS_COURT && p < item->count; p++) {
                curves += item->path[p].op == OP_CURVE ? 1 : 0;
                if (item->path[p].op == OP_CLOSE) {
                    continue;
                }
                struct vec2 at = item->path[p].p[item->path[p].op == OP_CURVE ? 2 : 0];
                ck_assert(at.x > -0.01 && at.x < scene->width + 0.01 &&
                          at.y < scene->height + 0.01);
            }
            if (item->class == CLASS_COURT && item->stroke != ROLE_NONE) {
                ck_assert(item->width >= 0.55);
            }
        }
        ck_assert_msg(curves >= 4, "%s has only %d curves", staged.play->court->word, curves);
    }
}
END_TEST

START_TEST(the_ball_holder_is_ringed_and_nobody_else)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_pass(&staged, body_attacker(1), body_attacker(2), 0, 0.6);
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert_int_eq(count_of(scene, CLASS_BALL), 1);
    ck_assert_ptr_nonnull(first_of(scene, CLASS_BALL, body_attacker(1)));
    ck_assert_int_eq(count_of(scene, CLASS_PLAYER), 5);
}
END_TEST

START_TEST(no_defenders_with_no_defense_or_when_hidden)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    ck_assert_int_eq(count_of(drawn(237.6, BODY_NONE), CLASS_DEFENDER),
                     10); /* an X and its numeral each */
    struct scene_options hidden = {.width = 237.6, .accent = BODY_NONE, .hide_defense = true};
    ck_assert_int_eq(count_of(scene_make(&arena, &staged.diagram, &hidden), CLASS_DEFENDER), 0);
    staged.play->defense = DEFENSE_NONE;
    for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) { /* shadows, as a run has them */
        staged.segment->track[b].on_floor = false;
    }
    ck_assert_int_eq(count_of(drawn(237.6, BODY_NONE), CLASS_DEFENDER), 0);
    staged.segment->track[body_defender(3)].on_floor = true; /* but one who was placed is there */
    ck_assert_int_eq(count_of(drawn(237.6, BODY_NONE), CLASS_DEFENDER), 2);
}
END_TEST

START_TEST(small_pictures_drop_numerals_of_defenders_and_keep_the_discs_that_fit)
{
    one_cut(2, 8);
    struct scene *small = drawn(115.2, BODY_NONE), *wide = drawn(237.6, BODY_NONE);
    ck_assert_int_eq(count_of(small, CLASS_ORDER), 2);
    ck_assert_int_eq(count_of(wide, CLASS_ORDER), 2);
    ck_assert_int_eq(count_of(small, CLASS_DEFENDER), 5);
    ck_assert_int_eq(small->labels_left_out, 0);
}
END_TEST

START_TEST(a_plain_picture_has_neither_at_any_size)
{
    one_cut(2, 8);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .plain = true};
    struct scene *plain = scene_make(&arena, &staged.diagram, &options);
    ck_assert_int_eq(count_of(plain, CLASS_ORDER), 0);
    ck_assert_int_eq(count_of(plain, CLASS_DEFENDER), 5);
    options.order = true;
    ck_assert_int_gt(count_of(scene_make(&arena, &staged.diagram, &options), CLASS_ORDER), 0);
}
END_TEST

/* Of those of whom words beside it speak the numerals stand there, and no others. */
START_TEST(who_is_spoken_of_is_numbered_on_a_plain_picture)
{
    one_cut(2, 8);
    struct scene_options options = {
        .width = 115.2, .accent = BODY_NONE, .plain = true, .named = 1u << 4};
    struct scene *plain = scene_make(&arena, &staged.diagram, &options);
    int numerals = 0;
    for (size_t i = 0; i < plain->items.count; i++) {
        const struct scene_item *item = &plain->items.at[i];
        if (item->class == CLASS_DEFENDER && item->shape == ITEM_TEXT) {
            ck_assert(str_equal(item->text, STR("4")));
            numerals++;
        }
    }
    ck_assert_int_eq(numerals, 1);
}
END_TEST

START_TEST(marks_are_drawn_in_the_order_of_the_layers)
{
    static const enum scene_class layers[] = {CLASS_PAGE,   CLASS_COURT, CLASS_CLEAR,
                                              CLASS_MOVE,   CLASS_END,   CLASS_DEFENDER,
                                              CLASS_PLAYER, CLASS_ORDER};
    one_cut(10, 10);
    struct scene *scene = drawn(237.6, BODY_NONE);
    size_t last = 0;
    for (size_t l = 0; l < sizeof layers / sizeof *layers; l++) {
        size_t first = scene->items.count;
        for (size_t i = scene->items.count; i-- > 0;) {
            first = scene->items.at[i].class == layers[l] ? i : first;
        }
        ck_assert_msg(first < scene->items.count && first >= last, "layer %zu", l);
        last = first;
    }
}
END_TEST

START_TEST(the_reader_s_own_lines_are_heavier_and_in_accent)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(10, 10));
    staged_move(&staged, TASK_MOVE, body_attacker(3), 0, 2, POINTS(-10, 10));
    staged_end(&staged);
    struct scene *scene = drawn(237.6, body_attacker(2));
    const struct scene_item *own = first_of(scene, CLASS_MOVE, body_attacker(2));
    const struct scene_item *other = first_of(scene, CLASS_MOVE, body_attacker(3));
    ck_assert_int_eq(own->stroke, ROLE_ACCENT);
    ck_assert_int_eq(other->stroke, ROLE_INK);
    ck_assert_double_eq_tol(own->width / other->width, 1.55 / 0.9, 1e-6);
    ck_assert_int_eq(first_of(scene, CLASS_PLAYER, body_attacker(2))->face, FACE_EXTRABOLD);
}
END_TEST

START_TEST(titles_name_play_step_and_title)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert(str_is(scene->title, "Lantern, step 2: Cross screen"));
    ck_assert(scene->description.size > 0);
    staged.diagram.title = STR("");
    ck_assert(str_is(drawn(237.6, BODY_NONE)->title, "Lantern, step 2"));
}
END_TEST

START_TEST(the_same_diagram_gives_the_same_bytes)
{
    five_out(COURT_FIBA);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2, POINTS(12, 15, 2, 8));
    staged_pass(&staged, body_attacker(1), body_attacker(3), 0.5, 1);
    staged_end(&staged);
    struct strbuf first, second;
    strbuf_init(&first, &arena);
    strbuf_init(&second, &arena);
    scene_dump(&first, drawn(237.6, BODY_NONE));
    scene_dump(&second, drawn(237.6, BODY_NONE));
    ck_assert(str_equal(strbuf_str(&first), strbuf_str(&second)));
    ck_assert(first.size > 500);
}
END_TEST

START_TEST(beads_stand_in_for_discs)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 2.2, POINTS(2, 10));
    staged_end(&staged);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .beads = true};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    int beads = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        beads += item->class == CLASS_BEAD && item->shape == ITEM_CIRCLE && !item->casing ? 1 : 0;
    }
    ck_assert_int_ge(beads, 3);
    ck_assert_int_le(beads, 4);
    ck_assert_int_eq(count_of(scene, CLASS_ORDER), 0);
    options.width = 115.2;
    ck_assert_int_eq(count_of(scene_make(&arena, &staged.diagram, &options), CLASS_BEAD), 0);
}
END_TEST

START_TEST(findings_have_their_mark_and_letter)
{
    static const struct check_row row = {.id = "space.close", .unit = "ft"};
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    struct finding finding = {.row = &row,
                              .severity = SEVERITY_WARNING,
                              .step = 0,
                              .branch = -1,
                              .amount = 2.7,
                              .mark = MARK_DISTANCE,
                              .a = staged.home[body_attacker(1)],
                              .b = staged.home[body_attacker(2)]};
    finding_list findings = {0};
    VEC_PUSH(&arena, &findings, finding);
    finding.mark = MARK_LANE;
    VEC_PUSH(&arena, &findings, finding);
    finding.accepted = true;
    VEC_PUSH(&arena, &findings, finding);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .findings = &findings};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    int letters = 0;
    bool length = false;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_FINDING && item->shape == ITEM_TEXT) {
            letters += str_is(item->text, "A") || str_is(item->text, "B") ? 1 : 0;
            ck_assert(!str_is(item->text, "C"));
            length |= str_is(item->text, "9 ft");
        }
    }
    ck_assert_int_eq(letters, 2);
    ck_assert(length);
}
END_TEST

static bool says(const struct scene *scene, enum scene_class class, const char *text)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == class && item->shape == ITEM_TEXT && str_is(item->text, text)) {
            return true;
        }
    }
    return false;
}

START_TEST(captions_stand_over_and_under_the_floor)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_task(&staged, staged_pass(&staged, body_attacker(1), body_attacker(2), 0, 0.6))->verb =
        VERB_PASSES;
    staged_end(&staged);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .caption = true};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    ck_assert(scene->height > drawn(237.6, BODY_NONE)->height + 14 + 12);
    ck_assert(says(scene, CLASS_CAPTION, "2  Cross screen"));
    ck_assert(says(scene, CLASS_CAPTION, "1")); /* the disc of the sentence, and the player in it */
    ck_assert(says(scene, CLASS_CAPTION, "passes to"));
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_CAPTION && item->anchor == ANCHOR_START) {
            double end = item->at.x + metrics_width(item->face, item->size, item->text);
            ck_assert(end <= scene->width + 0.01 && item->at.y < scene->height);
            ck_assert(item->size >= 8);
        }
    }
}
END_TEST

START_TEST(the_caution_is_in_every_description_and_under_the_floor_when_asked)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    const struct scene *plain = drawn(237.6, BODY_NONE);
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .caution = true};
    struct scene *scene = scene_make(&arena, &staged.diagram, &options);
    const char *words = "Local rules, league and medical staff";
    ck_assert_ptr_nonnull(strstr(str_copy(&arena, plain->description).at, words));
    ck_assert(!says(plain, CLASS_CAPTION, "Caution: feet still, elbows in."));
    ck_assert(scene->height > plain->height + 12);
    bool said = false;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        said =
            said || (item->class == CLASS_CAPTION && str_starts(item->text, "Caution: feet still"));
    }
    ck_assert(said);
}
END_TEST

START_TEST(first_names_stand_beside_numbers_when_asked)
{
    five_out(COURT_HIGH_SCHOOL);
    staged_end(&staged);
    struct team team = {.name = STR("Larkspur Kites")};
    VEC_PUSH(&arena, &team.roster,
             ((struct roster_entry){.number = 2, .name = STR("Mara Lindqvist"), .starter = true}));
    struct scene_options options = {.width = 237.6, .accent = BODY_NONE, .names = &team};
    ck_assert(says(scene_make(&arena, &staged.diagram, &options), CLASS_PLAYER, "Mara"));
    options.names = NULL;
    ck_assert(!says(scene_make(&arena, &staged.diagram, &options), CLASS_PLAYER, "Mara"));
}
END_TEST

START_TEST(every_mark_has_a_sample_for_the_key)
{
    static const enum scene_class others[] = {CLASS_CONE, CLASS_LINE_OF_PLAYERS, CLASS_DEFENDER,
                                              CLASS_PLAYER, CLASS_BALL};
    const int lines = CLASS_DEFENSE_MOVE + 1, all = lines + (int)(sizeof others / sizeof *others);
    for (int i = CLASS_MOVE; i < all; i++) {
        int class = i < lines ? i : (int)others[i - lines];
        struct scene scene = {.width = 100, .height = 20, .theme = THEME_PRINT};
        scene_key_sample(&arena, &scene, (enum scene_class) class, vec2_of(2, 10), 40);
        ck_assert_msg(scene.items.count >= 1, "class %d", class);
        ck_assert(scene.items.at[0].class == (enum scene_class) class);
    }
    struct scene scene = {.width = 100, .height = 20, .theme = THEME_PRINT};
    scene_key_sample(&arena, &scene, CLASS_END, vec2_of(2, 10), 40);
    ck_assert_int_eq(scene.items.at[0].shape, ITEM_CIRCLE);
}
END_TEST

START_TEST(a_drill_has_its_coach_cone_and_line)
{
    staged_begin(&staged, &arena, COURT_HIGH_SCHOOL);
    staged_stands(&staged, BODY_COACH, 0, 26);
    staged_stands(&staged, body_attacker(1), -12, 14);
    staged.play->start[body_attacker(1)].at = staged.home[body_attacker(1)];
    VEC_PUSH(&arena, &staged.play->cones, staged_feet(&staged, 6, 19));
    VEC_PUSH(&arena, &staged.play->lines, body_attacker(1));
    staged_ball(&staged, BODY_COACH);
    staged_end(&staged);
    struct scene *scene = drawn(237.6, BODY_NONE);
    ck_assert(str_is(first_of(scene, CLASS_PLAYER, BODY_COACH)->text, "C"));
    ck_assert_ptr_nonnull(first_of(scene, CLASS_BALL, BODY_COACH));
    ck_assert_int_eq(count_of(scene, CLASS_LINE_OF_PLAYERS), 3);
    ck_assert_int_ge(count_of(scene, CLASS_CONE), 1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("scene");
    TCase *all = tcase_create("scene");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, every_palette_can_be_read_on_page_floor_and_lane);
    tcase_add_test(all, marks_have_the_sizes_of_the_tables);
    tcase_add_test(all, half_a_floor_has_the_height_of_the_column);
    tcase_add_test(all, a_thrower_is_shown_outside_the_line);
    tcase_add_test(all, a_sideline_thrower_widens_the_floor_on_that_side_only);
    tcase_add_test(all, a_full_floor_lies_on_its_side_across_a_page);
    tcase_add_test(all, basket_bottom_turns_the_floor_round);
    tcase_add_test(all, every_court_is_drawn_inside_the_picture);
    tcase_add_test(all, the_ball_holder_is_ringed_and_nobody_else);
    tcase_add_test(all, no_defenders_with_no_defense_or_when_hidden);
    tcase_add_test(all, a_plain_picture_has_neither_at_any_size);
    tcase_add_test(all, who_is_spoken_of_is_numbered_on_a_plain_picture);
    tcase_add_test(all, small_pictures_drop_numerals_of_defenders_and_keep_the_discs_that_fit);
    tcase_add_test(all, marks_are_drawn_in_the_order_of_the_layers);
    tcase_add_test(all, the_reader_s_own_lines_are_heavier_and_in_accent);
    tcase_add_test(all, titles_name_play_step_and_title);
    tcase_add_test(all, the_same_diagram_gives_the_same_bytes);
    tcase_add_test(all, beads_stand_in_for_discs);
    tcase_add_test(all, findings_have_their_mark_and_letter);
    tcase_add_test(all, captions_stand_over_and_under_the_floor);
    tcase_add_test(all, the_caution_is_in_every_description_and_under_the_floor_when_asked);
    tcase_add_test(all, first_names_stand_beside_numbers_when_asked);
    tcase_add_test(all, every_mark_has_a_sample_for_the_key);
    tcase_add_test(all, a_drill_has_its_coach_cone_and_line);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
