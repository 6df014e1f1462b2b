/* SPDX-License-Identifier: MIT */
#include "picture/svg/svg.h"
#include "handmade.h"
#include "suite.h"
#include "written.h"

#include <locale.h>
#include <stdlib.h>
#include <string.h>

static struct strbuf bytes;

static const char *written(const struct scene *scene, struct svg_options options)
{
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    svg_write(&arena, scene, &options, &writer);
    ck_assert(!writer.failed);
    strbuf_char(&bytes, '\0');
    return bytes.at;
}

static const char *plainly(enum theme theme)
{
    return written(handmade_scene(&arena, theme), (struct svg_options){.salt = STR("")});
}

START_TEST(title_is_the_first_child_and_names_are_told_to_readers)
{
    const char *text = plainly(THEME_PRINT);
    const char *prefix = svg_prefix(&arena, handmade_scene(&arena, THEME_PRINT), STR("")).at;
    has(text, " role=\"img\"");
    has(text, str_format(&arena, "aria-labelledby=\"%s-t %s-d\"", prefix, prefix).at);
    has(text,
        str_format(&arena, ">\n<title id=\"%s-t\">Lantern, step 1: swing &amp; cut</title>\n<desc ",
                   prefix)
            .at);
}
END_TEST

START_TEST(a_scene_without_description_points_at_none)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    scene->description = STR("");
    const char *text = written(scene, (struct svg_options){.salt = STR("")});
    has_not(text, "<desc");
    has_not(text, "-d\"");
}
END_TEST

START_TEST(nothing_active_or_from_elsewhere_is_written)
{
    const char *text = plainly(THEME_PRINT);
    has_not(text, "<script");
    has_not(text, " onload");
    has_not(text, " onclick");
    has_not(text, "href");
    has_not(text, "url(");
    has_not(text, "foreignObject");
    has_not(text, "<image");
}
END_TEST

START_TEST(colors_are_literal_and_dark_follows_in_style)
{
    const char *text = plainly(THEME_PRINT);
    has(text, "<g class=\"ball s-ink\" stroke=\"#000000\" stroke-width=\"1.13\">");
    has(text, "@media screen and (prefers-color-scheme:dark){");
    has(text, " .s-ink{stroke:#f2f5f7}");
    has_not(text, "@media print");
    has_not(text, ".s-warning"); /* nothing of that color is there */
}
END_TEST

START_TEST(a_screen_scene_goes_back_to_black_on_paper)
{
    const char *text = plainly(THEME_SCREEN);
    has(text, "@media print{");
    has(text, " .s-ink{stroke:#000000}");
    has(text, "stroke=\"#14181b\"");
}
END_TEST

START_TEST(paths_are_relative_and_exact_to_a_hundredth)
{
    const char *text = plainly(THEME_PRINT);
    has(text, "d=\"m20 60c4-20 10-28 22.13-29.5\"");
    has(text, "d=\"m24 52 6-6m4-4 6-6\"");
    has(text, "d=\"m47 30-7 3 2-2.5-2-2.5z\"");
}
END_TEST

START_TEST(rounding_does_not_add_up_along_a_path)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    struct scene_item item = {
        .class = CLASS_MOVE, .shape = ITEM_PATH, .stroke = ROLE_INK, .width = 1};
    item.count = 1001;
    item.path = arena_array(&arena, struct path_element, item.count);
    for (size_t i = 0; i < item.count; i++) {
        item.path[i].op = i ? OP_LINE : OP_MOVE;
        item.path[i].p[0] = (struct vec2){(double)i * 0.014, 5};
    }
    scene->items.count = 0;
    VEC_PUSH(&arena, &scene->items, item);
    const char *d = strstr(written(scene, (struct svg_options){.salt = STR("")}), "d=\"m0 5");
    ck_assert_ptr_nonnull(d);
    double x = 0;
    char *at = (char *)d + strlen("d=\"m0 5");
    while (*at != '"') {
        x += strtod(at, &at);
        ck_assert_double_eq(strtod(at, &at), 0);
    }
    ck_assert_double_eq_tol(x, 14, 1e-9);
}
END_TEST

START_TEST(numbers_that_are_none_do_not_reach_the_page)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    scene->items.at[4].path[0].p[0] = (struct vec2){0.0 / 0.0, 1.0 / 0.0};
    const char *text = written(scene, (struct svg_options){.salt = STR("")});
    has_not(text, "nan");
    has_not(text, "inf");
}
END_TEST

START_TEST(text_is_escaped_and_control_letters_are_left_out)
{
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    svg_escape(&writer, STR("a<b> & \"c\"\x01\x1b\x7f\xC2\x85 \xFF\xC3\xA9\xEF\xBF\xBE'"));
    strbuf_char(&bytes, '\0');
    ck_assert_str_eq(bytes.at, "a&lt;b&gt; &amp; &quot;c&quot; \xEF\xBF\xBD\xC3\xA9'");
}
END_TEST

START_TEST(ids_differ_by_drawing_and_by_salt)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    struct str first = svg_prefix(&arena, scene, STR(""));
    ck_assert(str_equal(first, svg_prefix(&arena, scene, STR(""))));
    ck_assert(!str_equal(first, svg_prefix(&arena, scene, STR("again"))));
    scene->items.at[4].path[0].p[0].x += 1;
    ck_assert(!str_equal(first, svg_prefix(&arena, scene, STR(""))));
}
END_TEST

START_TEST(the_locale_changes_no_byte)
{
    struct str first = str_copy(&arena, str_of(plainly(THEME_PRINT)));
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    setlocale(LC_NUMERIC, "de_DE.UTF-8"); /* where it is installed: a decimal comma */
    ck_assert_str_eq(plainly(THEME_PRINT), first.at);
    setlocale(LC_ALL, "C");
}
END_TEST

START_TEST(fluid_drawings_have_no_fixed_size)
{
    const char *text = written(handmade_scene(&arena, THEME_PRINT),
                               (struct svg_options){.salt = STR(""), .fluid = true});
    has(text, " width=\"100%\" viewBox=\"0 0 120 80\"");
    has_not(text, " height=\"80\"");
}
END_TEST

START_TEST(a_failed_write_is_remembered_and_stops)
{
    int calls = 0;
    struct writer writer = {.write = written_refuse, .ctx = &calls};
    svg_write(&arena, handmade_scene(&arena, THEME_PRINT), &(struct svg_options){.salt = STR("")},
              &writer);
    ck_assert(writer.failed);
    ck_assert_int_eq(calls, 1);
}
END_TEST

static const char *part_written(const struct scene *scene, enum svg_part part)
{
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    svg_write_part(scene, part, &writer);
    strbuf_char(&bytes, '\0');
    return bytes.at;
}

START_TEST(a_part_has_the_floor_or_the_marks_and_no_literal_colors)
{
    struct scene *scene = handmade_scene(&arena, THEME_SCREEN);
    const char *floor = part_written(scene, SVG_FLOOR);
    has(floor, "<g class=\"court ");
    has(floor, "<g class=\"basket ");
    has_not(floor, "class=\"player");
    has_not(floor, "class=\"page");
    has_not(floor, "#");
    const char *marks = part_written(scene, SVG_MARKS);
    has_not(marks, "class=\"court");
    has_not(marks, "class=\"page");
    has(marks, "<g class=\"player f-ink");
    has(marks, "stroke-width=\"1.13\"");
    has_not(marks, "#");
    has_not(marks, "id=");
}
END_TEST

START_TEST(a_part_tells_whose_a_mark_is)
{
    struct scene *scene = handmade_scene(&arena, THEME_SCREEN);
    for (size_t i = 0; i < scene->items.count; i++) {
        struct scene_item *item = &scene->items.at[i];
        bool pass = item->class == CLASS_PASS && !item->casing;
        item->who = pass ? body_attacker(2) : item->casing ? body_attacker(5) : BODY_NONE;
        item->other = pass ? body_attacker(12) : BODY_NONE;
    }
    const char *marks = part_written(scene, SVG_MARKS);
    has(marks, "s-accent p2 p12\"");
    has_not(marks, "p5"); /* what is cleared under a line is nobody's */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("svg");
    TCase *all = tcase_create("svg");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, title_is_the_first_child_and_names_are_told_to_readers);
    tcase_add_test(all, a_scene_without_description_points_at_none);
    tcase_add_test(all, nothing_active_or_from_elsewhere_is_written);
    tcase_add_test(all, colors_are_literal_and_dark_follows_in_style);
    tcase_add_test(all, a_screen_scene_goes_back_to_black_on_paper);
    tcase_add_test(all, paths_are_relative_and_exact_to_a_hundredth);
    tcase_add_test(all, rounding_does_not_add_up_along_a_path);
    tcase_add_test(all, numbers_that_are_none_do_not_reach_the_page);
    tcase_add_test(all, text_is_escaped_and_control_letters_are_left_out);
    tcase_add_test(all, ids_differ_by_drawing_and_by_salt);
    tcase_add_test(all, the_locale_changes_no_byte);
    tcase_add_test(all, fluid_drawings_have_no_fixed_size);
    tcase_add_test(all, a_failed_write_is_remembered_and_stops);
    tcase_add_test(all, a_part_has_the_floor_or_the_marks_and_no_literal_colors);
    tcase_add_test(all, a_part_tells_whose_a_mark_is);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
