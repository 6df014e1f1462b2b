/* SPDX-License-Identifier: MIT */
/* What a team's picture may be, and what an SVG may refer to. */
#include "base/limits.h"
#include "picture/paint/crest.h"
#include "picture/paint/crest_scan.h"
#include "suite.h"

struct scan_case {
    const char *svg;
    bool outside;
};

static const struct scan_case scan_cases[] = {
    {"<use href='#a'/>", false},
    {"<use xlink:href = \"#a\"/>", false},
    {"<image href='data:image/png;base64,AA=='/>", false},
    {"<image href=' DATA:image/png;base64,AA=='/>", false},
    {"<image href=\"crest.png\"/>", true},
    {"<image xlink:href='file:///etc/passwd'/>", true},
    {"<IMAGE HREF\n=\n'http://a.example/x.png'/>", true},
    {"<image href='&a;'/>", true},
    {"<rect fill='url(#a)'/>", false},
    {"<rect fill=\"url('#a')\"/>", false},
    {"<rect fill='url(x.svg#a)'/>", true},
    {"<style>@import 'x.css';</style>", true},
    {"<?xml-stylesheet href='#a'?><svg/>", true},
    {"<!DOCTYPE svg [<!ENTITY a 'b'>]>", false},
    {"<!DOCTYPE svg [<!ENTITY a SYSTEM 'b'>]>", true},
    {"<!DOCTYPE svg [<!ENTITY % a PUBLIC 'b' 'c'>]>", true},
    {"<!-- href='x.png' --><svg/>", false},
    {"<!-- href='x.png' -->href='x.png'", true},
    {"<!-- href='x.png'", false},
    {"<title>his href of old</title>", false},
    {"href", false},
    {"url(", false},
    {"", false},
};

START_TEST(what_an_svg_refers_to_is_seen)
{
    const struct scan_case *row = &scan_cases[_i];
    ck_assert_int_eq(crest_refers_outside(str_of(row->svg)), row->outside);
}
END_TEST

#define SVG_HEAD "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"40\" height=\"20\">"
static const char red[] = SVG_HEAD "<rect width='40' height='20' fill='#f00'/></svg>";

static const char *trouble(const char *bytes)
{
    return crest_trouble(str_of(bytes));
}

START_TEST(trouble_is_told)
{
    ck_assert_ptr_null(trouble(red));
    ck_assert_ptr_null(trouble("\xEF\xBB\xBF \n" SVG_HEAD "<rect width='4' height='4'/></svg>"));
    ck_assert_ptr_nonnull(strstr(trouble(""), "empty"));
    ck_assert_ptr_nonnull(strstr(trouble("hello"), "neither"));
    ck_assert_ptr_nonnull(strstr(trouble("GIF89a"), "neither"));
    ck_assert_ptr_nonnull(strstr(trouble(SVG_HEAD "<rect"), "broken"));
    ck_assert_ptr_nonnull(strstr(trouble("<html/>"), "broken"));
    ck_assert_ptr_nonnull(strstr(trouble(SVG_HEAD "<image href='a.png'/></svg>"), "outside"));
    ck_assert_ptr_nonnull(strstr(trouble("\x89PNG\r\n\x1A\n...."), "broken"));
    ck_assert_ptr_nonnull(
        strstr(trouble("<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 nan inf'>"
                       "<rect width='4' height='4'/></svg>"),
               "shows nothing"));
    struct str nul = {"<svg\0/>", 7};
    ck_assert_ptr_nonnull(strstr(crest_trouble(nul), "neither"));
}
END_TEST

START_TEST(what_is_too_large_is_not_read)
{
    char *bytes = arena_take(&arena, LIMIT_CREST_BYTES + 1);
    memset(bytes, ' ', LIMIT_CREST_BYTES + 1);
    memcpy(bytes, red, strlen(red));
    ck_assert_ptr_null(crest_trouble((struct str){bytes, LIMIT_CREST_BYTES}));
    ck_assert_ptr_nonnull(
        strstr(crest_trouble((struct str){bytes, LIMIT_CREST_BYTES + 1}), "too large"));
    static const unsigned char wide[] = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n', 0, 0, 0, 13,
                                         'I',  'H', 'D', 'R', 0,    0,    0x0F, 0xA1, 0, 0, 0, 1};
    struct str png = {(const char *)wide, sizeof wide}; /* 4001 by 1 */
    ck_assert_ptr_nonnull(strstr(crest_trouble(png), "too large"));
}
END_TEST

static unsigned pixel(cairo_surface_t *surface, int x, int y)
{
    cairo_surface_flush(surface);
    const unsigned char *row = cairo_image_surface_get_data(surface) +
                               (ptrdiff_t)y * cairo_image_surface_get_stride(surface);
    unsigned value;
    memcpy(&value, row + (ptrdiff_t)4 * x, sizeof value);
    return value;
}

START_TEST(it_keeps_its_shape_at_the_right_of_the_box)
{
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, 100, 60);
    cairo_t *cr = cairo_create(surface);
    ck_assert(crest_draw(cr, str_of(red), 10, 10, 80, 30)); /* 60 by 30, from 30 on */
    ck_assert_uint_eq(pixel(surface, 60, 25), 0xFFFF0000);
    ck_assert_uint_eq(pixel(surface, 31, 11), 0xFFFF0000);
    ck_assert_uint_eq(pixel(surface, 28, 25), 0);
    ck_assert_uint_eq(pixel(surface, 91, 25), 0);
    ck_assert_uint_eq(pixel(surface, 60, 8), 0);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("crest");
    TCase *all = tcase_create("crest");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    int cases = (int)(sizeof scan_cases / sizeof *scan_cases);
    tcase_add_loop_test(all, what_an_svg_refers_to_is_seen, 0, cases);
    tcase_add_test(all, trouble_is_told);
    tcase_add_test(all, what_is_too_large_is_not_read);
    tcase_add_test(all, it_keeps_its_shape_at_the_right_of_the_box);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
