/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "picture/paint/paint.h"
#include "handmade.h"
#include "suite.h"
#include "written.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct fonts *fonts;
static struct strbuf bytes;

static void open_fonts(void)
{
    open_arena();
    fonts = fonts_create();
    ck_assert_ptr_nonnull(fonts);
}

static void close_fonts(void)
{
    fonts_destroy(fonts);
    close_arena();
}

typedef bool painter(struct arena *, struct fonts *, const struct paint_sheet *,
                     const struct paint_options *, struct writer *);

static struct paint_options plain(void)
{
    return (struct paint_options){.title = STR("Lantern, step 1: swing & cut"),
                                  .description = STR("2 has the ball."),
                                  .salt = STR(""),
                                  .scale = 2};
}

static struct str painted(painter *paint, const struct scene *scene, struct paint_options options)
{
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    struct paint_sheet sheet = {.scenes = &scene, .count = 1, .across = 1};
    ck_assert(paint(&arena, fonts, &sheet, &options, &writer));
    strbuf_char(&bytes, '\0');
    return (struct str){bytes.at, bytes.size - 1};
}

static struct str painted_plainly(painter *paint)
{
    return painted(paint, handmade_scene(&arena, THEME_PRINT), plain());
}

/* Puts the bytes in a file and gives what a command says of it; it has to end well. */
static const char *asked(const char *command, struct str file_bytes)
{
    char path[] = "/tmp/courtwright-paint-XXXXXX";
    int id = mkstemp(path);
    ck_assert_int_ge(id, 0);
    FILE *file = fdopen(id, "wb");
    ck_assert_uint_eq(fwrite(file_bytes.at, 1, file_bytes.size, file), file_bytes.size);
    ck_assert_int_eq(fclose(file), 0);
    FILE *pipe = popen(str_format(&arena, command, path).at, "r");
    ck_assert_ptr_nonnull(pipe);
    static char said[20000];
    said[fread(said, 1, sizeof said - 1, pipe)] = '\0';
    ck_assert_msg(pclose(pipe) == 0, "%s says: %s", command, said);
    remove(path);
    return said;
}

/* ---- SVG ---- */

START_TEST(print_svg_has_a_name_and_words_for_readers)
{
    const char *text = painted_plainly(paint_svg).at;
    ck_assert_int_eq(strncmp(text, "<svg xmlns=", 11), 0);
    has(text, " width=\"120\" height=\"80\" viewBox=\"0 0 120 80\"");
    has(text, " role=\"img\" aria-labelledby=\"cw");
    has(text, "-t\">Lantern, step 1: swing &amp; cut</title>\n<desc ");
    has_not(text, "<?xml");
    has_not(text, "<image");
    has_not(text, "<text");
}
END_TEST

/* Calls `look` with each piece of text between `mark` and the letter `end`. */
static size_t each(const char *text, const char *mark, char end,
                   void (*look)(const char *text, struct str id))
{
    size_t count = 0;
    for (const char *at = text; (at = strstr(at, mark)); count++) {
        at += strlen(mark);
        look(text, (struct str){at, (size_t)(strchr(at, end) - at)});
    }
    return count;
}

static void must_be_there(const char *text, struct str id)
{
    has(text, str_format(&arena, " id=\"%.*s\"", STR_ARG(id)).at);
}

static void must_be_once(const char *text, struct str id)
{
    const char *mark = str_format(&arena, " id=\"%.*s\"", STR_ARG(id)).at;
    ck_assert_ptr_null(strstr(strstr(text, mark) + 1, mark));
    ck_assert_int_eq(strncmp(id.at, "cw", 2), 0);
}

START_TEST(every_reference_finds_its_id)
{
    const char *text = painted_plainly(paint_svg).at;
    ck_assert_uint_gt(each(text, "href=\"#", '"', must_be_there), 3);
    ck_assert_uint_gt(each(text, " id=\"", '"', must_be_once), 3);
    each(text, "url(#", ')', must_be_there);
}
END_TEST

START_TEST(fifty_drawings_in_one_page_share_no_id)
{
    struct strbuf page;
    strbuf_init(&page, &arena);
    strbuf_text(&page, "<body>");
    for (int i = 0; i < 50; i++) {
        struct paint_options options = plain();
        options.salt = str_format(&arena, "%d", i);
        strbuf_add(&page, painted(paint_svg, handmade_scene(&arena, THEME_PRINT), options));
    }
    strbuf_text(&page, "</body>");
    strbuf_char(&page, '\0');
    ck_assert_uint_gt(each(page.at, " id=\"", '"', must_be_once), 500);
    asked("xmllint --noout %s 2>&1", (struct str){page.at, page.size - 1});
}
END_TEST

START_TEST(fluid_print_svg_has_no_fixed_size)
{
    struct paint_options options = plain();
    options.fluid = true;
    has(painted(paint_svg, handmade_scene(&arena, THEME_PRINT), options).at, " width=\"100%\"");
}
END_TEST

/* ---- PDF ---- */

START_TEST(pdf_is_whole_and_as_large_as_the_scene)
{
    struct str pdf = painted_plainly(paint_pdf);
    asked("qpdf --check %s 2>&1", pdf);
    const char *facts = asked("pdfinfo %s 2>&1", pdf);
    has(facts, "Title:           Lantern, step 1: swing & cut");
    has(facts, "Creator:         courtwright");
    has(facts, "Tagged:          yes");
    has(facts, "Page size:       120 x 80 pts");
    has_not(facts, "CreationDate");
}
END_TEST

START_TEST(pdf_has_the_date_it_is_given)
{
    struct paint_options options = plain();
    options.date = "2026-10-12T00:00:00Z";
    struct str pdf = painted(paint_pdf, handmade_scene(&arena, THEME_PRINT), options);
    has(asked("TZ=UTC pdfinfo -isodates %s 2>&1", pdf), "CreationDate:    2026-10-12T00:00:00Z");
}
END_TEST

START_TEST(pdf_embeds_its_faces_and_gives_words_back)
{
    struct str pdf = painted_plainly(paint_pdf);
    const char *faces = asked("pdffonts %s 2>&1", pdf);
    has(faces, "Inter-Bold");
    has(faces, "Inter-Regular");
    has_not(faces, " no  yes"); /* embedded, subset */
    has(asked("pdftotext -layout %s - 2>&1", pdf), "a < b & \"c\"");
}
END_TEST

/* ---- PNG ---- */

/* The color type in the head of the file: 0 gray, 3 palette. */
static int color_type(struct str png)
{
    ck_assert_uint_gt(png.size, 33);
    ck_assert_int_eq(memcmp(png.at, "\x89PNG\r\n\x1a\n", 8), 0);
    return png.at[25];
}

static void blacken(struct scene *scene)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        if (scene->items.at[i].stroke == ROLE_ACCENT) {
            scene->items.at[i].stroke = ROLE_INK;
        }
    }
}

START_TEST(a_black_picture_is_gray_png)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    blacken(scene);
    ck_assert_int_eq(color_type(painted(paint_png, scene, plain())), 0);
}
END_TEST

START_TEST(a_picture_of_few_colors_has_a_palette)
{
    struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    for (size_t i = 0; i < scene->items.count; i++) {
        scene->items.at[i].shape = ITEM_PATH; /* only the page is left, in one color */
        scene->items.at[i].fill = i == 0 ? ROLE_ACCENT : ROLE_NONE;
        scene->items.at[i].stroke = ROLE_NONE;
    }
    ck_assert_int_eq(color_type(painted(paint_png, scene, plain())), 3);
    ck_assert_int_eq(color_type(painted_plainly(paint_png)), 2); /* smooth edges in two colors */
}
END_TEST

struct reading {
    struct str png;
    size_t at;
};

static cairo_status_t read_on(void *closure, unsigned char *out, unsigned size)
{
    struct reading *reading = closure;
    if (reading->png.size - reading->at < size) {
        return CAIRO_STATUS_READ_ERROR;
    }
    memcpy(out, reading->png.at + reading->at, size);
    reading->at += size;
    return CAIRO_STATUS_SUCCESS;
}

START_TEST(png_is_what_cairo_painted)
{
    struct reading reading = {painted_plainly(paint_png), 0};
    cairo_surface_t *read = cairo_image_surface_create_from_png_stream(read_on, &reading);
    ck_assert_int_eq(cairo_surface_status(read), CAIRO_STATUS_SUCCESS);
    ck_assert_int_eq(cairo_image_surface_get_width(read), 240);
    ck_assert_int_eq(cairo_image_surface_get_height(read), 160);
    cairo_surface_t *wanted = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 240, 160);
    cairo_t *cr = cairo_create(wanted);
    cairo_scale(cr, 2, 2);
    paint_scene(cr, fonts, handmade_scene(&arena, THEME_PRINT));
    cairo_destroy(cr);
    cairo_surface_flush(wanted);
    for (int y = 0; y < 160; y++) {
        const unsigned char *a =
            cairo_image_surface_get_data(read) + y * cairo_image_surface_get_stride(read);
        const unsigned char *b =
            cairo_image_surface_get_data(wanted) + y * cairo_image_surface_get_stride(wanted);
        for (int x = 0; x < 240; x++) {
            ck_assert_mem_eq(a + 4 * x, b + 4 * x, 3);
        }
    }
    cairo_surface_destroy(wanted);
    cairo_surface_destroy(read);
}
END_TEST

START_TEST(a_png_too_large_for_memory_is_refused)
{
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    const struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    struct paint_sheet sheet = {.scenes = &scene, .count = 1, .across = 1};
    struct paint_options options = plain();
    options.scale = 1e6;
    ck_assert(!paint_png(&arena, fonts, &sheet, &options, &writer));
}
END_TEST

/* ---- sheets of several ---- */

static struct str painted_grid(painter *paint, struct paint_options options)
{
    const struct scene *scenes[5];
    for (size_t i = 0; i < 5; i++) {
        scenes[i] = handmade_scene(&arena, THEME_PRINT);
    }
    static const struct str headings[5] = {{"1  Swing the ball", 17},
                                           {"2  A heading that is too long for one line of it", 48},
                                           {"2a  x3 trails", 13},
                                           {"", 0},
                                           {"4  Last", 7}};
    struct paint_sheet sheet = {
        .scenes = scenes, .headings = headings, .count = 5, .across = 3, .gutter = 18};
    strbuf_init(&bytes, &arena);
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    ck_assert(paint(&arena, fonts, &sheet, &options, &writer));
    return strbuf_str(&bytes);
}

START_TEST(a_grid_has_room_for_its_headings)
{
    struct str pdf = painted_grid(paint_pdf, plain());
    const char *facts = asked("pdfinfo %s 2>&1", pdf);
    /* three columns of 120 with two gutters, half a gutter round all; rows of 80, headings of two
     * lines and of one: 9.5 x .727 + 12 a further line + 8 */
    has(facts, "Page size:       414 x ");
    double height = strtod(strstr(facts, "414 x ") + 6, NULL);
    ck_assert_double_eq_tol(height, 2 * 80 + 18 + 18 + 2 * (9.5 * METRICS_CAP_HEIGHT + 8) + 12,
                            0.02);
    has(asked("pdftotext -layout %s - 2>&1", pdf), "4 Last");
}
END_TEST

/* ---- all kinds ---- */

static painter *const painters[] = {paint_svg, paint_pdf, paint_png};

START_TEST(the_same_bytes_come_twice)
{
    struct str first = painted_grid(painters[_i], plain());
    fonts_destroy(fonts);
    fonts = fonts_create();
    struct str second = painted_grid(painters[_i], plain());
    ck_assert_uint_eq(first.size, second.size);
    ck_assert_mem_eq(first.at, second.at, first.size);
}
END_TEST

START_TEST(a_failed_write_ends_as_false)
{
    int calls = 0;
    struct writer writer = {.write = written_refuse, .ctx = &calls};
    const struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    struct paint_sheet sheet = {.scenes = &scene, .count = 1, .across = 1};
    struct paint_options options = plain();
    ck_assert(!painters[_i](&arena, fonts, &sheet, &options, &writer));
    ck_assert(writer.failed);
}
END_TEST

/* Each allocation fails in turn; what cairo and libpng hold is given back (the leak checker looks).
 */
START_TEST(memory_that_runs_out_jumps_and_leaves_nothing_behind)
{
    const struct scene *scene = handmade_scene(&arena, THEME_PRINT);
    struct paint_sheet sheet = {.scenes = &scene, .count = 1, .across = 1};
    struct paint_options options = plain();
    volatile int jumps = 0;
    volatile bool done = false;
    for (volatile size_t limit = 64; !done; limit += limit / 2) {
        jmp_buf here;
        struct arena small;
        arena_init(&small, NULL, &here);
        small.limit = limit;
        if (setjmp(here) == 0) {
            struct strbuf out;
            strbuf_init(&out, &arena);
            struct writer writer = {.write = written_keep, .ctx = &out};
            done = painters[_i](&small, fonts, &sheet, &options, &writer);
            ck_assert(done);
        } else {
            jumps++;
        }
        arena_finish(&small);
    }
    ck_assert_int_gt(jumps, 0);
}
END_TEST

START_TEST(a_sheet_without_scenes_is_refused)
{
    struct writer writer = {.write = written_keep, .ctx = &bytes};
    struct paint_sheet sheet = {.count = 0};
    struct paint_options options = plain();
    ck_assert(!painters[_i](&arena, fonts, &sheet, &options, &writer));
}
END_TEST

static void add_tests(TCase *all)
{
    int kinds = (int)(sizeof painters / sizeof *painters);
    tcase_add_test(all, print_svg_has_a_name_and_words_for_readers);
    tcase_add_test(all, every_reference_finds_its_id);
    tcase_add_test(all, fifty_drawings_in_one_page_share_no_id);
    tcase_add_test(all, fluid_print_svg_has_no_fixed_size);
    tcase_add_test(all, pdf_is_whole_and_as_large_as_the_scene);
    tcase_add_test(all, pdf_has_the_date_it_is_given);
    tcase_add_test(all, pdf_embeds_its_faces_and_gives_words_back);
    tcase_add_test(all, a_black_picture_is_gray_png);
    tcase_add_test(all, a_picture_of_few_colors_has_a_palette);
    tcase_add_test(all, png_is_what_cairo_painted);
    tcase_add_test(all, a_png_too_large_for_memory_is_refused);
    tcase_add_test(all, a_grid_has_room_for_its_headings);
    tcase_add_loop_test(all, the_same_bytes_come_twice, 0, kinds);
    tcase_add_loop_test(all, a_failed_write_ends_as_false, 0, kinds);
    tcase_add_loop_test(all, memory_that_runs_out_jumps_and_leaves_nothing_behind, 0, kinds);
    tcase_add_loop_test(all, a_sheet_without_scenes_is_refused, 0, kinds);
}

int main(void)
{
    Suite *suite = suite_create("paint");
    TCase *all = tcase_create("paint");
    tcase_add_checked_fixture(all, open_fonts, close_fonts);
    tcase_set_timeout(all, 60);
    add_tests(all);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
