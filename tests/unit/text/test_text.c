/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "picture/text/fonts.h"
#include "picture/text/text.h"
#include "suite.h"

#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct fonts *fonts;

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

static struct text_block *set(const char *text, double width)
{
    struct text_piece piece = {str_of(text), FACE_REGULAR};
    struct text_style style = {.size = 9.5, .leading = 12.6};
    return text_layout(&arena, fonts, &piece, 1, &style, width);
}

/* The words as pdftotext reads them from a page on which `draw` has drawn. */
static const char *words_back(void (*draw)(cairo_t *cr))
{
    char path[] = "/tmp/courtwright-text-XXXXXX";
    int file = mkstemp(path);
    ck_assert_int_ge(file, 0);
    cairo_surface_t *surface = cairo_pdf_surface_create(path, 300, 200);
    cairo_t *cr = cairo_create(surface);
    draw(cr);
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    ck_assert_int_eq(cairo_surface_status(surface), CAIRO_STATUS_SUCCESS);
    cairo_surface_destroy(surface);
    FILE *pipe = popen(str_format(&arena, "pdftotext -layout %s -", path).at, "r");
    ck_assert_ptr_nonnull(pipe);
    static char words[1000];
    words[fread(words, 1, sizeof words - 1, pipe)] = '\0';
    ck_assert_int_eq(pclose(pipe), 0);
    remove(path);
    return words;
}

START_TEST(one_line_is_as_wide_as_its_letters_and_kerning)
{
    struct text_block *block = set("Screen the screener", 0);
    ck_assert_uint_eq(text_lines(block), 1);
    double table = metrics_width(FACE_REGULAR, 9.5, STR("Screen the screener"));
    ck_assert_double_eq_tol(text_width(block), table, 0.02 * table);
    ck_assert_double_eq_tol(text_height(block), 12.6, 1e-9);
}
END_TEST

START_TEST(digits_are_exactly_as_wide_as_the_table_says)
{
    ck_assert_double_eq_tol(text_width(set("3", 0)), metrics_width(FACE_REGULAR, 9.5, STR("3")),
                            1e-6);
}
END_TEST

START_TEST(kerning_pulls_letters_together)
{
    ck_assert_double_lt(text_width(set("AVAVAV", 0)),
                        metrics_width(FACE_REGULAR, 9.5, STR("AVAVAV")) - 1);
}
END_TEST

START_TEST(lines_are_no_wider_than_asked)
{
    struct text_block *block =
        set("5 crosses the lane and screens for 3. Look for x3, not for a spot on the floor.", 140);
    ck_assert_uint_eq(text_lines(block), 3);
    ck_assert_double_le(text_width(block), 140);
}
END_TEST

START_TEST(a_text_set_at_its_own_width_stays_one_line)
{
    double width = text_width(set("1 passes to 2 as 2 gets there.", 0));
    ck_assert_uint_eq(text_lines(set("1 passes to 2 as 2 gets there.", width)), 1);
    ck_assert_uint_eq(text_lines(set("1 passes to 2 as 2 gets there.", width - 0.1)), 2);
}
END_TEST

START_TEST(a_number_stays_with_its_unit)
{
    double width = text_width(set("Stay apart 12", 0)) + 1;
    ck_assert_double_lt(text_width(set("Stay apart 12 ft", width)),
                        text_width(set("Stay apart 12", 0)) - 1); /* 12 went down with its ft */
    ck_assert_double_ge(text_width(set("Stay apart 12 xyz", width)),
                        text_width(set("Stay apart 12", 0)) - 0.01);
}
END_TEST

START_TEST(a_step_stays_with_its_number)
{
    double width = text_width(set("See step", 0)) + 1;
    ck_assert_double_lt(text_width(set("See step 3", width)), width - 5);
}
END_TEST

START_TEST(a_short_compound_stays_whole)
{
    double width = text_width(set("Take the hand-", 0)) + 1;
    ck_assert_double_le(text_width(set("Take the hand-off", width)),
                        text_width(set("hand-off", 0)) + 0.1);
    width = text_width(set("Behind the free-", 0)) + 1;
    ck_assert_double_ge(text_width(set("Behind the free-throw", width)), width - 1.1);
}
END_TEST

START_TEST(a_last_line_is_no_lonely_word)
{
    const char *text = "3 takes two steps toward the rim, then comes back.";
    double width = text_width(set(text, 0)) - 1;
    struct text_block *block = set(text, width);
    ck_assert_uint_eq(text_lines(block), 2);
    ck_assert_double_eq_tol(text_width(block),
                            text_width(set("3 takes two steps toward the rim, then", 0)), 0.5);
}
END_TEST

START_TEST(a_word_that_is_too_long_is_broken_not_cut)
{
    struct text_block *block = set("Mmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmm", 60);
    ck_assert_uint_gt(text_lines(block), 3);
    ck_assert_double_le(text_width(block), 60);
}
END_TEST

START_TEST(a_width_under_one_letter_still_ends)
{
    ck_assert_uint_eq(text_lines(set("abc", 0.5)), 3);
}
END_TEST

START_TEST(a_line_end_in_the_text_ends_the_line)
{
    ck_assert_uint_eq(text_lines(set("one\ntwo", 0)), 2);
    ck_assert_uint_eq(text_lines(set("one\n", 0)), 1);
    ck_assert_uint_eq(text_lines(set("", 100)), 0);
}
END_TEST

START_TEST(letter_spacing_stands_between_letters_only)
{
    struct text_piece piece = {STR("KITES"), FACE_MEDIUM};
    struct text_style tight = {.size = 8, .leading = 10};
    struct text_style wide = {.size = 8, .leading = 10, .spacing = 0.6};
    double a = text_width(text_layout(&arena, fonts, &piece, 1, &tight, 0));
    double b = text_width(text_layout(&arena, fonts, &piece, 1, &wide, 0));
    ck_assert_double_eq_tol(b - a, 4 * 0.6, 1e-9);
}
END_TEST

START_TEST(pieces_of_different_weight_share_a_line)
{
    struct text_piece pieces[] = {
        {STR("3"), FACE_BOLD}, {STR(" cuts off "), FACE_REGULAR}, {STR("5"), FACE_BOLD}};
    struct text_style style = {.size = 9.5, .leading = 12.6};
    struct text_block *block = text_layout(&arena, fonts, pieces, 3, &style, 0);
    ck_assert_uint_eq(text_lines(block), 1);
    double wanted = metrics_width(FACE_BOLD, 9.5, STR("35")) +
                    metrics_width(FACE_REGULAR, 9.5, STR(" cuts off "));
    ck_assert_double_eq_tol(text_width(block), wanted, 0.4);
}
END_TEST

/* U+0378 is no letter, and no font has it. */
START_TEST(missing_letters_are_counted_and_named_once)
{
    struct str letters;
    ck_assert_uint_eq(fonts_missing(fonts, &letters), 0);
    set("caf\xC3\xA9 \xCD\xB8 \xCD\xB8", 0);
    ck_assert_uint_eq(fonts_missing(fonts, &letters), 2);
    ck_assert(str_is(letters, "\xCD\xB8"));
    ck_assert(!fonts_failed(fonts));
}
END_TEST

START_TEST(nothing_is_asked_of_the_machine_while_the_face_has_the_letters)
{
    set("Caf\xC3\xA9, \xCE\xA3\xCE\xBF\xCF\x86\xCE\xAF\xCE\xB1, "
        "\xD0\x98\xD1\x80\xD0\xB0, Nguy\xE1\xBB\x85n, \xE2\x80\x9C"
        "2\xE2\x80\x9D",
        0);
    ck_assert_uint_eq(fonts_missing(fonts, NULL), 0);
    ck_assert_ptr_null(fonts->borrowing);
    ck_assert(!fonts->alone);
}
END_TEST

static const uint32_t shalom[] = {0x5E9, 0x5DC, 0x5D5, 0x5DD};
#define SHALOM "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D"

/* Does this machine have a font with Hebrew? tests/run installs one. */
static bool has_hebrew(void)
{
    return fonts_code(fonts, FACE_REGULAR, shalom[0], 0) >= FACE_COUNT;
}

/* Codes for letters in the regular face. */
static face_code *codes_for(const uint32_t *letters, size_t count)
{
    face_code *codes = arena_array(&arena, face_code, count);
    for (size_t i = 0; i < count; i++) {
        codes[i] = fonts_code(fonts, FACE_REGULAR, letters[i], i > 0 ? codes[i - 1] : 0);
    }
    return codes;
}

START_TEST(a_name_that_runs_to_the_left_stands_right)
{
    const uint32_t letters[] = {'1', ' ', 0x5E9, 0x5DC, ' ', 0x5D5, 0x5DD, ' ', 'a'};
    const unsigned wanted[] = {0, 1, 6, 5, 4, 3, 2, 7, 8}; /* both words, and the space in them */
    size_t count;
    ck_assert_msg(has_hebrew(), "no font with Hebrew: fonts-dejavu-core");
    const raqm_glyph_t *glyphs =
        fonts_shape_mixed(fonts, codes_for(letters, 9), letters, 9, false, &count);
    ck_assert_uint_eq(count, 9);
    for (size_t i = 0; i < count; i++) {
        ck_assert_uint_eq(glyphs[i].cluster, wanted[i]);
    }
    bool backward;
    ck_assert_uint_ge(fonts_run_end(glyphs, count, 2, &backward), 4);
    ck_assert(backward);
}
END_TEST

START_TEST(a_text_runs_as_its_first_letter_does)
{
    const uint32_t mixed[] = {0x5E9, ' ', 'a'};
    const uint32_t counted[] = {'1', ' ', 0x5E9, '.'};
    const uint32_t figures[] = {'1', '.'};
    ck_assert(fonts_leftward(shalom, 4));
    ck_assert(fonts_leftward(counted, 4));
    ck_assert(fonts_leftward(mixed, 3)); /* its first letter decides */
    ck_assert(!fonts_leftward(mixed + 1, 2));
    ck_assert(!fonts_leftward(figures, 2));
    const uint32_t apart[] = {'3', ':', ' ', 0x2068, 0x5E9, 0x5DC, 0x2069};
    const uint32_t behind[] = {0x2068, 0x5E9, 0x2069, ' ', 0x5DC};
    ck_assert(!fonts_leftward(apart, 7));
    ck_assert(fonts_leftward(behind, 5));
}
END_TEST

START_TEST(borrowed_letters_and_their_face_are_named)
{
    struct str letters;
    const char *name;
    ck_assert(!fonts_borrowed(fonts, &letters, &name));
    ck_assert_msg(has_hebrew(), "no font with Hebrew: fonts-dejavu-core");
    set("3 " SHALOM " " SHALOM " 5", 0);
    ck_assert(fonts_borrowed(fonts, &letters, &name));
    ck_assert(str_is(letters, SHALOM));
    ck_assert_uint_gt(strlen(name), 0);
    ck_assert_uint_eq(fonts_missing(fonts, NULL), 0);
    ck_assert(!fonts_failed(fonts));
}
END_TEST

START_TEST(lines_of_borrowed_letters_break_where_they_may)
{
    ck_assert_msg(has_hebrew(), "no font with Hebrew: fonts-dejavu-core");
    struct text_block *block = set(SHALOM " " SHALOM " " SHALOM " and on to the rim", 40);
    ck_assert_uint_gt(text_lines(block), 2);
    ck_assert_double_le(text_width(block), 40);
    double whole = text_width(set(SHALOM, 0)), two = text_width(set(SHALOM " " SHALOM, 0));
    ck_assert_double_gt(two, 2 * whole);
}
END_TEST

START_TEST(clusters_of_a_run_to_the_left_go_from_its_last_glyph)
{
    raqm_glyph_t glyphs[] = {{.cluster = 3}, {.cluster = 2}, {.cluster = 0}, {.cluster = 0}};
    size_t ends[4];
    char bytes[32];
    cairo_text_cluster_t clusters[4];
    struct cluster_sink sink = {.bytes = bytes, .clusters = clusters};
    fonts_cluster_ends(glyphs, 4, 4, ends);
    ck_assert_uint_eq(ends[0], 2); /* two letters became two glyphs together */
    ck_assert_uint_eq(ends[2], 3);
    ck_assert_uint_eq(ends[3], 4);
    fonts_mixed_clusters(glyphs, 4, true, shalom, ends, &sink);
    ck_assert_int_eq(sink.count, 3);
    ck_assert_int_eq(clusters[0].num_glyphs, 2);
    ck_assert_int_eq(clusters[0].num_bytes, 4);
    ck_assert_int_eq(clusters[2].num_glyphs, 1);
    ck_assert_uint_eq(sink.size, 8);
    ck_assert_int_eq(memcmp(bytes, SHALOM, 8), 0);
}
END_TEST

/* The face has alternates that make "2x2" a sum; x2 is a defender. */
START_TEST(an_x_between_digits_stays_an_x)
{
    uint32_t letters[] = {'2', 'x', '2'};
    size_t count;
    const raqm_glyph_t *glyphs = fonts_shape(fonts, FACE_REGULAR, letters, 3, &count);
    FT_Face face = fonts->shaping[FACE_REGULAR];
    ck_assert_uint_eq(count, 3);
    ck_assert_uint_eq(glyphs[1].index, FT_Get_Char_Index(face, 'x'));
    double width = text_width(set("2x2", 0));
    double wanted = metrics_width(FACE_REGULAR, 9.5, STR("2x2"));
    ck_assert_double_eq_tol(width, wanted, 0.4);
}
END_TEST

static uint32_t letter_of(size_t text, size_t at)
{
    return (uint32_t)('a' + (text >> (4 * at) & 15));
}

/* More texts than there is room for, twice: whatever was let go comes back the same. */
START_TEST(a_text_said_again_has_the_glyphs_it_had)
{
    enum { LETTERS = 4, TEXTS = SHAPED_PLACES + 500 };
    static unsigned index[TEXTS][LETTERS];
    static int advance[TEXTS][LETTERS];
    for (int round = 0; round < 2; round++) {
        for (size_t i = 0; i < TEXTS; i++) {
            uint32_t letters[LETTERS];
            size_t count;
            for (size_t k = 0; k < LETTERS; k++) {
                letters[k] = letter_of(i, k);
            }
            const raqm_glyph_t *glyphs = fonts_shape(fonts, FACE_REGULAR, letters, LETTERS, &count);
            ck_assert_uint_eq(count, LETTERS);
            for (size_t k = 0; k < LETTERS; k++) {
                ck_assert(round == 0 || index[i][k] == glyphs[k].index);
                ck_assert(round == 0 || advance[i][k] == glyphs[k].x_advance);
                index[i][k] = glyphs[k].index;
                advance[i][k] = glyphs[k].x_advance;
            }
        }
    }
    ck_assert_uint_le(fonts->shaped.bytes, SHAPED_BYTES);
}
END_TEST

/* The same letters in another weight are other glyphs' widths. */
/* libraqm asks the same shaper: what is set up once for Latin letters must not show. */
START_TEST(latin_letters_are_shaped_as_libraqm_shapes_them)
{
    static const char *const said[] = {
        "Find x3: Step out, then 2x2.",
        "AVATAR To Va. ff fi ffl (5:30)",
        "Gr\u00F6\u00DFe \u0160\u0105 na\u00EFve",
        "\u201CGo\u201D \u2013 don\u2019t \u2026 1/2 x5->x4",
        "a",
        "10 min to 2-3",
        "A-B: C; d:e 3:4 <- ->",
    };
    for (size_t i = 0; i < sizeof said / sizeof *said; i++) {
        uint32_t letters[64];
        face_code codes[64];
        raqm_glyph_t kept[64];
        size_t letter_count = 0, count, again;
        for (struct str rest = (struct str){said[i], strlen(said[i])}; rest.size > 0;
             letter_count++) {
            letters[letter_count] = metrics_letter(&rest);
            codes[letter_count] = FACE_BOLD;
        }
        ck_assert_msg(latin_alone(letters, letter_count), "%s", said[i]);
        const raqm_glyph_t *glyphs = fonts_shape(fonts, FACE_BOLD, letters, letter_count, &count);
        ck_assert(glyphs && count <= 64);
        memcpy(kept, glyphs, count * sizeof *kept);
        glyphs = fonts_shape_mixed(fonts, codes, letters, letter_count, false, &again);
        ck_assert_uint_eq(count, again);
        for (size_t k = 0; k < count; k++) {
            ck_assert_msg(kept[k].index == glyphs[k].index &&
                              kept[k].cluster == glyphs[k].cluster &&
                              kept[k].x_advance == glyphs[k].x_advance &&
                              kept[k].x_offset == glyphs[k].x_offset &&
                              kept[k].y_offset == glyphs[k].y_offset,
                          "glyph %zu of %s", k, said[i]);
        }
    }
}
END_TEST

START_TEST(what_is_not_latin_alone_is_left_to_libraqm)
{
    const uint32_t figures[] = {'1', '0'}, hebrew[] = {'a', 0x5D0}, mark[] = {'a', 0x301},
                   soft[] = {'a', 0xAD};
    ck_assert(!latin_alone(figures, 2));
    ck_assert(!latin_alone(hebrew, 2));
    ck_assert(!latin_alone(mark, 2));
    ck_assert(!latin_alone(soft, 2));
}
END_TEST

START_TEST(what_was_shaped_is_kept_by_face)
{
    uint32_t letters[] = {'m', 'i', 'd'};
    size_t count;
    int regular = fonts_shape(fonts, FACE_REGULAR, letters, 3, &count)[0].x_advance;
    int bold = fonts_shape(fonts, FACE_EXTRABOLD, letters, 3, &count)[0].x_advance;
    ck_assert_int_lt(regular, bold);
    ck_assert_int_eq(regular, fonts_shape(fonts, FACE_REGULAR, letters, 3, &count)[0].x_advance);
}
END_TEST

/* A few long texts fill what may be kept. */
START_TEST(what_is_kept_of_long_texts_has_a_bound)
{
    static uint32_t letters[SHAPED_LETTERS_MOST];
    for (uint32_t i = 0; i < 300; i++) {
        for (size_t k = 0; k < SHAPED_LETTERS_MOST; k++) {
            letters[k] = 'a' + (uint32_t)(k + i) % 26;
        }
        letters[0] = 'A' + i;
        size_t count;
        ck_assert_ptr_nonnull(
            fonts_shape(fonts, FACE_REGULAR, letters, SHAPED_LETTERS_MOST, &count));
        ck_assert_uint_le(fonts->shaped.bytes, SHAPED_BYTES);
    }
}
END_TEST

START_TEST(bytes_that_are_no_text_do_no_harm)
{
    struct text_block *block = set("a\x01\xFF\xC3"
                                   "b\x7F\xED\xA0\x80",
                                   30);
    ck_assert_uint_ge(text_lines(block), 1);
    ck_assert(!fonts_failed(fonts));
}
END_TEST

static void draw_block(cairo_t *cr)
{
    struct text_block *block = set("3 takes two steps up, then cuts low off the screen.", 140);
    text_draw(cr, block, 20, 40, 0, text_lines(block));
}

START_TEST(words_can_be_read_back_from_a_page)
{
    const char *words = words_back(draw_block);
    ck_assert_ptr_nonnull(strstr(words, "3 takes two steps up"));
    ck_assert_ptr_nonnull(strstr(words, "screen."));
}
END_TEST

static void draw_last_line(cairo_t *cr)
{
    struct text_block *block = set("first\nsecond\nthird", 0);
    text_draw(cr, block, 20, 40, 1, 99);
}

START_TEST(part_of_a_block_can_be_drawn)
{
    const char *words = words_back(draw_last_line);
    ck_assert_ptr_null(strstr(words, "first"));
    ck_assert_ptr_nonnull(strstr(words, "second"));
    ck_assert_ptr_nonnull(strstr(words, "third"));
}
END_TEST

static void draw_long_line(cairo_t *cr)
{
    text_show(
        cr, fonts, FACE_REGULAR, 2, (struct vec2){150, 50}, 0.5,
        STR("one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
            "fifteen sixteen seventeen eighteen nineteen twenty"));
}

START_TEST(lettering_longer_than_a_chunk_is_whole)
{
    const char *words = words_back(draw_long_line);
    ck_assert_ptr_nonnull(strstr(words, "eleven twelve thirteen"));
    ck_assert_ptr_nonnull(strstr(words, "nineteen twenty"));
}
END_TEST

/* The ink's left and right end, in pixels. */
static void ink_of(double anchor, int *left, int *right)
{
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 200, 40);
    cairo_t *cr = cairo_create(surface);
    text_show(cr, fonts, FACE_BOLD, 20, (struct vec2){100, 30}, anchor, STR("HH"));
    cairo_surface_flush(surface);
    *left = 200;
    *right = -1;
    for (int x = 0; x < 200; x++) {
        if (cairo_image_surface_get_data(
                surface)[25 * cairo_image_surface_get_stride(surface) + x]) {
            *left = x < *left ? x : *left;
            *right = x;
        }
    }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}

START_TEST(anchors_say_which_end_stands_at_the_place)
{
    int left, right;
    ink_of(0, &left, &right);
    ck_assert_int_ge(left, 100);
    ink_of(1, &left, &right);
    ck_assert_int_le(right, 100);
    ink_of(0.5, &left, &right);
    ck_assert_int_le(abs((100 - left) - (right - 99)), 1);
}
END_TEST

START_TEST(fonts_may_go_before_the_surface_they_drew_on)
{
    struct fonts *own = fonts_create();
    cairo_surface_t *surface = cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *cr = cairo_create(surface);
    text_show(cr, own, FACE_REGULAR, 10, (struct vec2){0, 0}, 0, STR("late"));
    fonts_destroy(own);
    cairo_destroy(cr);
    cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 20, 20);
    cr = cairo_create(image);
    cairo_set_source_surface(cr, surface, 0, 10);
    cairo_paint(cr);
    ck_assert_int_eq(cairo_status(cr), CAIRO_STATUS_SUCCESS);
    cairo_destroy(cr);
    cairo_surface_destroy(image);
    cairo_surface_destroy(surface);
}
END_TEST

static void add_tests(TCase *all)
{
    tcase_add_test(all, one_line_is_as_wide_as_its_letters_and_kerning);
    tcase_add_test(all, digits_are_exactly_as_wide_as_the_table_says);
    tcase_add_test(all, kerning_pulls_letters_together);
    tcase_add_test(all, lines_are_no_wider_than_asked);
    tcase_add_test(all, a_text_set_at_its_own_width_stays_one_line);
    tcase_add_test(all, a_number_stays_with_its_unit);
    tcase_add_test(all, a_step_stays_with_its_number);
    tcase_add_test(all, a_short_compound_stays_whole);
    tcase_add_test(all, a_last_line_is_no_lonely_word);
    tcase_add_test(all, a_word_that_is_too_long_is_broken_not_cut);
    tcase_add_test(all, a_width_under_one_letter_still_ends);
    tcase_add_test(all, a_line_end_in_the_text_ends_the_line);
    tcase_add_test(all, letter_spacing_stands_between_letters_only);
    tcase_add_test(all, pieces_of_different_weight_share_a_line);
    tcase_add_test(all, missing_letters_are_counted_and_named_once);
    tcase_add_test(all, nothing_is_asked_of_the_machine_while_the_face_has_the_letters);
    tcase_add_test(all, a_name_that_runs_to_the_left_stands_right);
    tcase_add_test(all, a_text_runs_as_its_first_letter_does);
    tcase_add_test(all, borrowed_letters_and_their_face_are_named);
    tcase_add_test(all, lines_of_borrowed_letters_break_where_they_may);
    tcase_add_test(all, clusters_of_a_run_to_the_left_go_from_its_last_glyph);
    tcase_add_test(all, an_x_between_digits_stays_an_x);
    tcase_add_test(all, a_text_said_again_has_the_glyphs_it_had);
    tcase_add_test(all, latin_letters_are_shaped_as_libraqm_shapes_them);
    tcase_add_test(all, what_is_not_latin_alone_is_left_to_libraqm);
    tcase_add_test(all, what_was_shaped_is_kept_by_face);
    tcase_add_test(all, what_is_kept_of_long_texts_has_a_bound);
    tcase_add_test(all, bytes_that_are_no_text_do_no_harm);
    tcase_add_test(all, words_can_be_read_back_from_a_page);
    tcase_add_test(all, part_of_a_block_can_be_drawn);
    tcase_add_test(all, lettering_longer_than_a_chunk_is_whole);
    tcase_add_test(all, anchors_say_which_end_stands_at_the_place);
    tcase_add_test(all, fonts_may_go_before_the_surface_they_drew_on);
}

int main(void)
{
    Suite *suite = suite_create("text");
    TCase *all = tcase_create("text");
    tcase_add_checked_fixture(all, open_fonts, close_fonts);
    add_tests(all);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
