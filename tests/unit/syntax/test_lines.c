/* SPDX-License-Identifier: MIT */
/* Lines and tokens, as tables: what is written, and what is read. */
#include "base/limits.h"
#include "language/syntax/syntax.h"
#include "suite.h"

#include <string.h>

static struct sources sources;
static struct diags diags;
static struct lines lines;

static void read_text(struct str text)
{
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), text);
    lines_read(&arena, &sources, source, &diags, &lines);
}

static void put_token(struct strbuf *out, const struct token *token)
{
    static const char *const kinds[] = {"w", "n", "m", "q", "x", "g", "d", "c", "i", ""};
    static const char *const units[] = {"", "ft", "m", "step", "s", "min", "deg", "%"};
    strbuf_text(out, out->size ? " " : "");
    strbuf_text(out, kinds[token->kind]);
    switch (token->kind) {
    case TOKEN_NUMBER:
    case TOKEN_DEFENDER:
    case TOKEN_CLOCK:
        strbuf_number(out, token->number, 3);
        break;
    case TOKEN_MEASURE:
        strbuf_number(out, token->number, 3);
        strbuf_text(out, units[token->unit]);
        break;
    case TOKEN_MARK:
        strbuf_char(out, token->mark);
        break;
    default:
        strbuf_print(out, "<%.*s>", STR_ARG(token->text));
    }
    strbuf_text(out, token->possessive ? "'s" : "");
    strbuf_text(out, token->stopped ? "." : "");
}

static const char *dump(size_t index)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    const struct line *line = &lines.all.at[index];
    for (size_t i = 0; i < line->count; i++) {
        put_token(&out, &line->tokens[i]);
    }
    return out.at;
}

static const char *diag_ids(void)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < diags.all.count; i++) {
        strbuf_print(&out, "%s%s", i ? " " : "", diags.all.at[i].row->id);
    }
    return out.at;
}

struct token_case {
    const char *text, *tokens, *ids;
};
static const struct token_case token_cases[] = {
    {"1 passes to 2", "n1 w<passes> w<to> n2", ""},
    {"  Two SWINGS it", "n2 w<swings> w<it>", ""},
    {"five-out", "n5 w<out>", ""},
    {"fiveout back\xE2\x80\x91"
     "cuts",
     "w<fiveout> w<back> w<cuts>", ""},
    {"6 ft", "m6ft", ""},
    {"6ft 6' 6\xE2\x80\x99 6\xE2\x80\xB2 six feet 6-ft", "m6ft m6ft m6ft m6ft m6ft m6ft", ""},
    {"6 ft. above", "m6ft. w<above>", ""},
    {"1.5 s 2 m 30% 50 degrees 12 min", "m1.5s m2m m30% m50deg m12min", ""},
    {"a foot, an hour", "m1ft , w<an> w<hour>", ""},
    {"a second screen after a second", "w<a> w<second> w<screen> w<after> m1s", ""},
    {"two steps", "m2step", ""},
    {"3 steps toward the rim", "n3 w<steps> w<toward> w<the> w<rim>", ""},
    {"3 and 4 step in, 2 steps back", "n3 w<and> n4 w<step> w<in> , n2 w<steps> w<back>", ""},
    {"3's spot", "n3's w<spot>", ""},
    {"3\xE2\x80\x99s spot", "n3's w<spot>", ""},
    {"x3's man, passer's spot, three's", "x3's w<man> , w<passer>'s w<spot> , n3's", ""},
    {"doesn't defenders' let\xE2\x80\x99s", "w<doesn't> w<defenders> w<let>'s", ""},
    {"x3 X3 x 3 x-3 x three x", "x3 x3 x3 x3 x3 w<x>", ""},
    {"xray x3y", "w<xray> w<x3y>", ""},
    {"zone 2-3, 1\xE2\x80\x93"
     "3\xE2\x80\x93"
     "1",
     "w<zone> g<2-3> , g<1-3-1>", ""},
    {"4-out 1-in", "n4 w<out> n1 w<in>", ""},
    {"1-4 high", "g<1-4> w<high>", ""},
    {"2026-12-01 2026-13-01", "d<2026-12-01> g<2026-13-01>", ""},
    {"17:30 5:30 PM 12:05 am 5:75", "c1050 c1050 c5 n5 : n75", ""},
    {"space.close ball.double-dribble", "i<space.close> i<ball.double-dribble>", ""},
    {"(12, -3)", "( n12 , - n3 )", ""},
    {"(12, \xE2\x88\x92"
     "3.5)",
     "( n12 , - n3.5 )", ""},
    {"u16 a4", "w<u16> w<a4>", ""},
    {"1 cuts; 2 cuts. 3 cuts.", "n1 w<cuts> ; n2 w<cuts> . n3 w<cuts> .", ""},
    {"\"Stop # here\" # there", "q<Stop # here>", ""},
    {"\"a \\\"b\\\" c\\\\\" \"\\n\"", "q<a \"b\" c\\> q<\\n>", ""},
    {"\xE2\x80\x9CIt\xE2\x80\x99s on\xE2\x80\x9D x", "q<It\xE2\x80\x99s on> w<x>", ""},
    {"1\xC2\xA0passes\xE2\x80\x89to\t2", "n1 w<passes> w<to> n2", ""},
    {"\xC3\x89mile's caf\xC3\xA9", "w<\xC3\xA9mile>'s w<caf\xC3\xA9>", ""},
    {"\"open", "q<open>", "text.unclosed-quote"},
    {"1 p\x01"
     "asses",
     "n1 w<p\x01"
     "asses>",
     "text.control"},
    {"1 cuts\xE2\x80\x8B to", "n1 w<cuts\xE2\x80\x8B> w<to>", "text.control"},
    {"\"with a mark\xE2\x80\x8F inside\"", "q<with a mark\xE2\x80\x8F inside>", ""},
    {"\"turned \xE2\x80\xAEround\"", "q<turned ?round>", "text.control"},
    {"\"no letter \xF4\x8F\xBF\xBF\"", "q<no letter ?>", "text.control"},
    {"# a comment only", "", ""},
    {"#4 screens", "", "text.hash-number"},
    {"99999999999999999999 ft", "m1000000ft", ""},
};

START_TEST(tokens_are_read_as_a_coach_means_them)
{
    const struct token_case *row = &token_cases[_i];
    read_text(str_of(row->text));
    ck_assert_uint_eq(lines.all.count, 1);
    ck_assert_str_eq(dump(0), row->tokens);
    ck_assert_str_eq(diag_ids(), row->ids);
}
END_TEST

static const struct token_case mark_cases[] = {
    {"1 cuts - 2 cuts", "", "text.stray-mark"},
    {"- 1 cuts", "", "text.stray-mark"},
    {"1 + 2 cut", "", "text.stray-mark"},
    {"play: x", "", "text.stray-mark"},
    {"1 shoots!", "", "text.stray-mark"},
    {"'1 shoots'", "", "text.stray-mark"},
    {"1 cuts.2 cuts", "", "text.stray-mark"},
    {"1 cuts to (1, -3)", "", ""},
    {"1 holds for 1e3 s", "", "text.stray-mark"},
    {"at 2e+1 s 1 cuts", "", "text.stray-mark"},
    {"1 e3 cuts", "", ""},
    {"four e cuts", "", ""},
    {"1 shoots...", "", ""},
    {"1 goes to (3, - 4)", "", "text.stray-mark"},
    {"1 shoots \xE2\x80\xA6", "", ""},
    {"back-cuts, 2; 3.", "", ""},
};

START_TEST(marks_without_a_meaning_are_told)
{
    const struct token_case *row = &mark_cases[_i];
    read_text(str_of(row->text));
    bool fine = line_marks_ok(&lines.all.at[0], &sources, &diags);
    ck_assert_str_eq(diag_ids(), row->ids);
    ck_assert_int_eq(fine, row->ids[0] == '\0');
}
END_TEST

START_TEST(a_measure_below_zero_is_told_as_such)
{
    read_text(STR("1 passes to 2, taking -5 s"));
    ck_assert(!line_marks_ok(&lines.all.at[0], &sources, &diags));
    ck_assert_str_eq(diag_ids(), "text.stray-mark");
    ck_assert_str_eq(diags.all.at[0].message.at,
                     "this is below zero: a time or a length is not negative");
    ck_assert_str_eq(diags.all.at[0].help.at, "leave out the minus: 5 s");
    ck_assert_uint_eq(diags.all.at[0].span.begin, 22);
    ck_assert_uint_eq(diags.all.at[0].span.end, 26);
}
END_TEST

START_TEST(lines_end_in_any_way)
{
    read_text(STR("\xEF\xBB\xBF"
                  "play \"A\"\r\n  1 cuts\r\t2 cuts\n\n# x  \n"));
    ck_assert_uint_eq(lines.all.count, 6);
    ck_assert_str_eq(dump(0), "w<play> q<A>");
    ck_assert_str_eq(dump(1), "n1 w<cuts>");
    ck_assert_uint_eq(lines.all.at[1].indent, 2);
    ck_assert_uint_eq(lines.all.at[2].indent, 8);
    ck_assert_uint_eq(lines.all.at[3].count, 0);
    ck_assert(str_is(lines.all.at[4].comment, "# x"));
    struct place_in_source place = source_place(&sources.all.at[0], lines.all.at[0].span.begin);
    ck_assert_uint_eq(place.column, 1);
}
END_TEST

START_TEST(a_broken_byte_names_line_and_column)
{
    read_text(STR("1 passes to 2 and some more words\n3 c\xC3uts to the rim\n4 lifts to top\n"));
    ck_assert_str_eq(diag_ids(), "text.broken-byte");
    struct place_in_source place = source_place(&sources.all.at[0], diags.all.at[0].span.begin);
    ck_assert_uint_eq(place.line, 2);
    ck_assert_uint_eq(place.column, 4);
    ck_assert(lines.all.at[1].broken && !lines.all.at[2].broken);
}
END_TEST

START_TEST(overlong_and_surrogate_forms_are_broken)
{
    static const char *const texts[] = {"\xC0\xAF is a byte", "\xED\xA0\x80 is a byte",
                                        "\xF4\x90\x80\x80 is one byte or two",
                                        "\xE2\x80 is a byte"};
    for (size_t i = 0; i < 4; i++) {
        read_text(str_of(texts[i]));
        ck_assert_str_eq(diag_ids(), "text.broken-byte");
    }
}
END_TEST

START_TEST(a_binary_file_is_one_error)
{
    char bytes[5000];
    for (size_t i = 0; i < sizeof bytes; i++) {
        bytes[i] = (char)(i * 37 % 256);
    }
    read_text((struct str){bytes, sizeof bytes});
    ck_assert_str_eq(diag_ids(), "text.not-text");
    ck_assert_uint_eq(lines.all.count, 0);
    memset(bytes, 0xE9, sizeof bytes);
    read_text((struct str){bytes, sizeof bytes});
    ck_assert_str_eq(diag_ids(), "text.not-text");
    read_text((struct str){"\xFF\xFE"
                           "1\0 \0",
                           6});
    ck_assert_str_eq(diags.all.at[0].message.at, "this file is UTF-16, not UTF-8");
}
END_TEST

static void read_repeated(const char *piece, size_t count, const char *tail)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    for (size_t i = 0; i < count; i++) {
        strbuf_text(&text, piece);
    }
    strbuf_text(&text, tail);
    read_text(strbuf_str(&text));
}

START_TEST(a_line_too_long_is_one_error)
{
    read_repeated("\x02?????????", LIMIT_LINE_BYTES, "\n1 cuts to top\n");
    ck_assert_str_eq(diag_ids(), "text.long-line");
    ck_assert_str_eq(dump(1), "n1 w<cuts> w<to> w<top>");
    read_repeated("x", LIMIT_LINE_BYTES, "");
    ck_assert_str_eq(diag_ids(), "");
    read_repeated("x", LIMIT_LINE_BYTES + 1, "");
    ck_assert_str_eq(diag_ids(), "text.long-line");
}
END_TEST

START_TEST(a_line_of_too_many_words_is_one_error)
{
    read_repeated("1,", LIMIT_TOKENS / 2, "\n1 cuts\n");
    ck_assert_str_eq(diag_ids(), "");
    read_repeated("1,", LIMIT_TOKENS / 2, "1\n1 cuts\n");
    ck_assert_str_eq(diag_ids(), "text.long-line");
    ck_assert(lines.all.at[0].broken);
    ck_assert_str_eq(dump(1), "n1 w<cuts>");
}
END_TEST

START_TEST(lines_go_on_after_a_comma_and_part)
{
    read_text(STR("1 cuts, # first\n2 cuts # second\n"));
    ck_assert(line_goes_on(&lines.all.at[0]) && !line_goes_on(&lines.all.at[1]));
    struct line line = line_join(&arena, &lines.all.at[0], &lines.all.at[1]);
    ck_assert_uint_eq(line.count, 5);
    ck_assert(str_is(line.comment, "# second"));
    ck_assert_uint_eq(line.span.begin, 0);
    struct line part = line_part(&line, 3, 5);
    ck_assert(str_is(source_text(&sources, part.span), "2 cuts"));
    ck_assert_uint_eq(part.comment.size, 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("syntax");
    TCase *all = tcase_create("lines");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, tokens_are_read_as_a_coach_means_them, 0,
                        (int)(sizeof token_cases / sizeof token_cases[0]));
    tcase_add_loop_test(all, marks_without_a_meaning_are_told, 0,
                        (int)(sizeof mark_cases / sizeof mark_cases[0]));
    tcase_add_test(all, a_measure_below_zero_is_told_as_such);
    tcase_add_test(all, lines_end_in_any_way);
    tcase_add_test(all, a_broken_byte_names_line_and_column);
    tcase_add_test(all, overlong_and_surrogate_forms_are_broken);
    tcase_add_test(all, a_binary_file_is_one_error);
    tcase_add_test(all, a_line_too_long_is_one_error);
    tcase_add_test(all, a_line_of_too_many_words_is_one_error);
    tcase_add_test(all, lines_go_on_after_a_comma_and_part);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
