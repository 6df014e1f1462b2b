/* SPDX-License-Identifier: MIT */
/* What a reader of the file is told of what moves: once, or again and again. */
#include "picture/svg/moving.h"

#include "suite.h"
#include "written.h"

static struct moving moving;
static struct strbuf bytes;

static const char *written(struct moving_options options)
{
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    svg_moving(&moving, &options, &writer);
    ck_assert(!writer.failed);
    strbuf_char(&bytes, '\0');
    return bytes.at;
}

static struct moving_group *group_add(enum scene_class class, body who, int part)
{
    struct moving_group group = {.class = class, .who = who, .part = part};
    VEC_PUSH(&arena, &moving.groups, group);
    return &moving.groups.at[moving.groups.count - 1];
}

static struct moving_mark *mark_add(struct moving_group *group, struct scene_item item)
{
    struct moving_mark mark = {.item = item};
    mark.item.who = mark.item.other = BODY_NONE;
    VEC_PUSH(&arena, &group->marks, mark);
    return &group->marks.at[group->marks.count - 1];
}

static void key(moving_keys *keys, double t, double x, double y)
{
    struct moving_key one = {t, {x, y}};
    VEC_PUSH(&arena, keys, one);
}

static void show(moving_shows *shows, double from, double to)
{
    struct moving_show one = {from, to};
    VEC_PUSH(&arena, shows, one);
}

static struct scene_item line(void)
{
    struct scene_item item = {.class = CLASS_MOVE, .stroke = ROLE_INK, .width = 1.25, .count = 2};
    item.path = arena_array(&arena, struct path_element, 2);
    item.path[0] = (struct path_element){OP_MOVE, {{10, 20}}};
    item.path[1] = (struct path_element){OP_LINE, {{30.1, 20.2}}};
    return item;
}

/* Ten seconds, two parts of five. */
static void begin(void)
{
    open_arena();
    moving = (struct moving){.width = 100,
                             .height = 60,
                             .theme = THEME_SCREEN,
                             .duration = 10,
                             .tick = 0.01,
                             .decimals = 3};
    show(&moving.parts, 0, 5);
    show(&moving.parts, 5, 10);
}

/* 3 stands, runs for two seconds and stays. */
static void add_player(void)
{
    struct moving_group *group = group_add(CLASS_PLAYER, body_attacker(3), -1);
    key(&group->way, 0, 10, 20);
    key(&group->way, 1, 10, 20);
    key(&group->way, 3, 50.25, 20);
    key(&group->way, 10, 50.25, 20);
    struct scene_item text = {.class = CLASS_PLAYER,
                              .shape = ITEM_TEXT,
                              .fill = ROLE_INK,
                              .stroke = ROLE_FLOOR,
                              .width = 2,
                              .size = 12,
                              .text = STR("3")};
    mark_add(group, text);
}

/* Of a mover's line that is 20 points long: erased behind him, seen from a second before to `end`.
 */
static void add_road(int part, double from, double to, double end)
{
    struct moving_group *road = group_add(CLASS_MOVE, body_attacker(3), part);
    road->length = 20;
    key(&road->erased, from, 0, 0);
    key(&road->erased, to, 1, 0);
    show(&road->shows, from - 1, end);
    mark_add(road, line());
}

START_TEST(a_way_is_told_in_quarters_of_a_point_and_shares_of_the_whole)
{
    add_player();
    const char *text = written((struct moving_options){.loop = false});
    has(text, "<g class=\"moving\" transform=\"scale(.25)\">");
    has(text, "<g class=\"player p3\"><animateTransform attributeName=\"transform\" "
              "values=\"40 80;40 80;201 80;201 80\" keyTimes=\"0;.1;.3;1\" "
              "dur=\"10\" fill=\"freeze\"/>");
    has(text, "paint-order=\"stroke\"");
    has(text, "font-size=\"48\"");
}
END_TEST

START_TEST(again_and_again_everything_is_on_the_whole_clock)
{
    add_player();
    add_road(0, 1, 3, 3);
    const char *text = written((struct moving_options){.loop = true});
    has(text, "values=\"0;0;-80;-80\" keyTimes=\"0;.1;.3;1\" dur=\"10\" "
              "repeatCount=\"indefinite\"/>");
    has(text, "attributeName=\"display\" calcMode=\"discrete\" values=\"inline;none\" "
              "keyTimes=\"0;.3\" dur=\"10\" repeatCount=\"indefinite\"/>");
    has(text, "attributeName=\"display\" calcMode=\"discrete\" values=\"inline;none\" "
              "keyTimes=\"0;.5\"");
    has_not(text, "<set");
    has_not(text, "freeze");
}
END_TEST

START_TEST(who_never_moves_stands_without_an_animation)
{
    struct moving_group *group = group_add(CLASS_CONE, BODY_NONE, -1);
    key(&group->way, 0, 10, 20);
    key(&group->way, 10, 10, 20);
    mark_add(group, line());
    for (int loop = 0; loop < 2; loop++) {
        const char *text = written((struct moving_options){.loop = loop == 1});
        has(text, " transform=\"translate(40 80)\">");
        has_not(text, "animateTransform");
    }
}
END_TEST

START_TEST(what_stays_after_its_line_is_erased_keeps_it_so)
{
    add_road(1, 6, 8, 9);
    has(written((struct moving_options){.loop = false}),
        "values=\"0;-80\" begin=\"6\" dur=\"2\" fill=\"freeze\"/>");
}
END_TEST

START_TEST(how_numerals_are_painted_is_told_once_for_all)
{
    add_player();
    add_player();
    const char *text = written((struct moving_options){.styled = true});
    has(text, "<g class=\"f-ink s-floor\" stroke-width=\"8\" font-size=\"48\" "
              "font-weight=\"400\" paint-order=\"stroke\">");
    ck_assert_ptr_null(strstr(strstr(text, "font-size") + 1, "font-size"));
}
END_TEST

START_TEST(once_a_line_is_erased_from_its_own_beginning_to_its_end)
{
    add_road(1, 6, 8, 8);
    const char *text = written((struct moving_options){.loop = false});
    has(text, "<g display=\"none\"><set attributeName=\"display\" to=\"inline\" begin=\"5\"/><g");
    has(text, "stroke-dasharray=\"9999\">");
    has(text, "<g class=\"move p3\"><set attributeName=\"display\" to=\"none\" begin=\"8\"/>"
              "<animate attributeName=\"stroke-dashoffset\" values=\"0;-80\" begin=\"6\" "
              "dur=\"2\"/><path d=\"m40 80 80 1\"/>");
}
END_TEST

START_TEST(what_is_seen_now_and_then_is_set_each_time)
{
    add_player();
    struct moving_mark *ring =
        mark_add(&moving.groups.at[0], (struct scene_item){.class = CLASS_BALL,
                                                           .shape = ITEM_CIRCLE,
                                                           .stroke = ROLE_INK,
                                                           .width = 1,
                                                           .radius = 8});
    show(&ring->shows, 0, 2);
    show(&ring->shows, 4.5, 11);
    const char *text = written((struct moving_options){.loop = false});
    has(text, "<g display=\"none\"><set attributeName=\"display\" to=\"inline\" "
              "end=\"2\"/><set attributeName=\"display\" to=\"inline\" begin=\"4.5\"/>");
    text = written((struct moving_options){.loop = true});
    has(text, "values=\"inline;none;inline\" keyTimes=\"0;.2;.45\"");
}
END_TEST

START_TEST(a_dashed_line_follows_the_ball)
{
    struct moving_group *pass = group_add(CLASS_PASS, body_attacker(1), 0);
    show(&pass->shows, 1, 2);
    struct moving_mark *mark = mark_add(pass, line());
    mark->dash = 5;
    mark->space = 3;
    key(&mark->ends, 1, 30, 20);
    key(&mark->ends, 2, 10, 20);
    const char *text = written((struct moving_options){.loop = false});
    has(text, "x1=\"40\" y1=\"80\" x2=\"120\" y2=\"80\" stroke-dasharray=\"20 12\"><animate "
              "attributeName=\"x2\" to=\"40\" begin=\"1\" dur=\"1\"/>");
}
END_TEST

START_TEST(a_page_with_a_style_gets_classes_alone)
{
    add_player();
    const char *text = written((struct moving_options){.styled = true});
    has_not(text, "#");
    has(text, "class=\"f-ink s-floor\"");
    has(written((struct moving_options){.hidden = true}),
        " display=\"none\"><set attributeName=\"display\" to=\"inline\"/>");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("moving");
    TCase *all = tcase_create("moving");
    tcase_add_checked_fixture(all, begin, close_arena);
    tcase_add_test(all, a_way_is_told_in_quarters_of_a_point_and_shares_of_the_whole);
    tcase_add_test(all, again_and_again_everything_is_on_the_whole_clock);
    tcase_add_test(all, who_never_moves_stands_without_an_animation);
    tcase_add_test(all, what_stays_after_its_line_is_erased_keeps_it_so);
    tcase_add_test(all, how_numerals_are_painted_is_told_once_for_all);
    tcase_add_test(all, once_a_line_is_erased_from_its_own_beginning_to_its_end);
    tcase_add_test(all, what_is_seen_now_and_then_is_set_each_time);
    tcase_add_test(all, a_dashed_line_follows_the_ball);
    tcase_add_test(all, a_page_with_a_style_gets_classes_alone);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
