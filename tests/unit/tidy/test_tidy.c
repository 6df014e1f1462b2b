/* SPDX-License-Identifier: MIT */
/* Lines one by one: what is written, and the one form it is printed in; whatever is read is printed
 * so that printing it again changes nothing. */
#include "base/rng.h"
#include "language/tidy/tidy.h"
#include "suite.h"

#include <string.h>

static struct diags diags;

static struct str tidied(struct str text)
{
    struct sources sources;
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), text);
    return tidy_book(&arena, &sources, book_read(&arena, &sources, source, NULL, &diags));
}

/* One line under a play's heading. */
static const char *const setting_cases[][2] = {
    {"rules High School", "rules high-school"},
    {"rules NBA.", "rules nba"},
    {"level Middle School boys", "level middle-school boys"},
    {"level u16", "level u16"},
    {"level professional women", "level professional women"},
    {"basket bottom", "basket bottom"},
    {"limit space.close ten feet", "limit space.close 10 ft"},
    {"limit screen.angle 30degrees", "limit screen.angle 30 degrees"},
    {"limit space.area 60 %", "limit space.area 60%"},
    {"limit time.lane 2.50 s", "limit time.lane 2.5 s"},
    {"caution No lobs in traffic.", "caution \"No lobs in traffic.\""},
    {"about \"He said \\\"go\\\" \\\\ left\"", "about \"He said \\\"go\\\" \\\\ left\""},
    {"call Red: left!", "call \"Red: left!\""},
    {"series Motion.", "series \"Motion\""},
    {"number seven", "number 7"},
    {"tags man , \"BLOB\",after time-out", "tags man, BLOB, after time-out"},
    {"tags \"a, b\", caf\xC3\xA9", "tags \"a, b\", \"caf\xC3\xA9\""},
    {"floor full", "floor full"},
    {"start Five Out", "start five-out"},
    {"start 5-out", "start five-out"},
    {"start 1-4 high", "start one-four high"},
    {"start 1 at top and 2 at the right wing", "start 1 top, 2 right wing"},
    {"start horns, x1 at the front of the rim", "start horns, x1 the front of the rim"},
    {"start 5 6' above left corner, 2 (12, -3)",
     "start 5 at 6 ft above left corner, 2 at (12, -3)"},
    {"start 2 out of bounds at left hash", "start 2 out of bounds at left hash"},
    {"ball Two", "ball 2"},
    {"ball 2, out of bounds at the left hash", NULL},
    {"ball 2 out of bounds at the left hash", "ball 2 out of bounds at left hash"},
    {"defence none", "defense none"},
    {"defense man", "defense man"},
    {"defense man to man gap", "defense man gap"},
    {"defense man sag", "defense man sag"},
    {"defense 2-3 zone", "defense zone 2-3"},
    {"defense 2-2-1", "defense press 2-2-1"},
    {"defense zone 1\xE2\x80\x93"
     "3\xE2\x80\x93"
     "1",
     "defense zone 1-3-1"},
    {"defense zone two three", "defense zone 2-3"},
    {"defense box and 1", "defense box-and-one"},
    {"defense triangle and two", "defense triangle-and-two"},
    {"defense press man", "defense press man"},
    {"defense press 1-2-1-1", "defense press 1-2-1-1"},
    {"clock six seconds", "clock 6 s"},
    {"score down 2", "score \"down 2\""},
    {"lineup \xE2\x80\x9C"
     "Big\xE2\x80\x9D",
     "lineup \"Big\""},
    {"x 1 guards three", "x1 guards 3"},
    {"point three \xE2\x80\x9C"
     "Go\xE2\x80\x9D",
     "point 3 \"Go\""},
    {"point \"Go\".", "point \"Go\""},
    {"mistake \"a # b\"  # c", "mistake \"a # b\"  # c"},
    {"chart Set \"Feet still\"", "chart set \"Feet still\""},
    {"accept Space.Close \"on purpose\"", "accept space.close \"on purpose\""},
    {"run \"g\" with passer one, receiver x2 mirrored",
     "run \"g\" with passer 1, receiver x2, mirrored"},
    {"repeat from the step 1,mirrored", "repeat from step 1, mirrored"},
    {"same as step two of \"A\"", "same as step 2 of \"A\""},
    {"Continue here.", "continue here"},
    {"1 passes to 2   #said", "1 passes to 2  #said"},
    {"Level: u16 girls", "level u16 girls"},
    {"call: \"Red\"", "call \"Red\""},
    {"about - The left one.", "about \"The left one.\""},
    {"point: \"Go\"", "point \"Go\""},
    {"1: passes to 2", NULL},
    {"- 1 passes to 2", NULL},
};

START_TEST(a_line_has_one_form)
{
    const char *written = setting_cases[_i][0], *wanted = setting_cases[_i][1];
    struct str out = tidied(str_format(&arena, "play \"A\"\n%s\n", written));
    ck_assert_uint_eq(diags.errors, wanted ? 0 : 1);
    ck_assert_str_eq(out.at,
                     str_format(&arena, "play \"A\"\n  %s\n", wanted ? wanted : written).at);
}
END_TEST

/* Whole texts, one form. */
static const char *const text_cases[][2] = {
    {"", ""},
    {"\n\n", ""},
    {"\n\n# a\n\n\n# b\n\n", "# a\n\n# b\n"},
    {"\n1 shoots\n\n\n\n2 stays\n\n", "1 shoots\n\n2 stays\n"},
    {"1 shoots", "1 shoots\n"},
    {"1 shoots\n;\n. # kept\n2 stays", "1 shoots\n# kept\n2 stays\n"},
    {"play \"A\"\n1 shoots\n# margin\n", "play \"A\"\n  1 shoots\n# margin\n"},
    {"play \"A\"\n1 shoots\n   # under\n", "play \"A\"\n  1 shoots\n  # under\n"},
    {"play \"A\"\n1 shoots\n   # of B\n\nplay \"B\"\n",
     "play \"A\"\n  1 shoots\n# of B\n\nplay \"B\"\n"},
    {"1 shoots. 2 stays # both\n", "1 shoots\n2 stays  # both\n"},
    {"1 passes to 2 and cuts to the rim # both\n", "1 passes to 2\n1 cuts to the rim  # both\n"},
    {"start 1 top, # one\n\n# two\n2 nail # three\n",
     "# one\n# two\nstart 1 top, 2 the nail  # three\n"},
    {"if x3 trails, 3 curls off 5 # a\n", "if x3 trails, 3 curls off 5  # a\n"},
    {"if x3 trails, 3 shoots and 4 stays # a\n5 stays\n",
     "read x3 trails  # a\n  3 shoots\n  4 stays\n  5 stays\n"},
    {"play \"A\"\nstep\nread x3 trails or 3 is open\n1 shoots\noption B\nstep 2 \"C\" when 3 is "
     "open\n",
     "play \"A\"\n  step\n    read x3 trails or 3 is open\n      1 shoots\n    option \"B\"\n  "
     "step 2 \"C\" when 3 is open\n"},
    {"play \"A\"\nstep\nstep B\nstep after \"C\"\nstep as 5 screens\n",
     "play \"A\"\n  step\n  step \"B\"\n  step after \"C\"\n  step as 5 screens\n"},
    {"play \"A\"\n\t1 zorks, # one\n two # three\n",
     "play \"A\"\n  # one\n  1 zorks, two  # three\n"},
    {"play \"A\n 1 shoots\n", "play \"A\n  1 shoots\n"},
    {"start horns\nunits metres\n", "start horns\nunits metres\n"},
    {"play: Lantern\nstep 1: Swing it\nstep - Again\n1 shoots\n",
     "play \"Lantern\"\n  step 1 \"Swing it\"\n  step \"Again\"\n    1 shoots\n"},
    {"practice \"P\"\n\t3 mins: water\n      5 min talk\nstations 4 min,change every 4 "
     "min\nstation \"A\" talk\nplay \"A\"\n",
     "practice \"P\"\n  3 min water\n  5 min talk\n  stations 4 min, change every 4 min\n    "
     "station \"A\" talk\nplay \"A\"\n"},
};

START_TEST(a_text_has_one_form)
{
    struct str out = tidied(str_of(text_cases[_i][0]));
    ck_assert_str_eq(str_copy(&arena, out).at, text_cases[_i][1]);
    ck_assert_str_eq(str_copy(&arena, tidied(out)).at, text_cases[_i][1]);
}
END_TEST

START_TEST(what_is_no_text_is_left_alone)
{
    struct str picture = {"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR", 16};
    ck_assert(str_equal(tidied(picture), picture));
}
END_TEST

START_TEST(a_line_too_long_is_left_alone)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, "play \"A\"\n  ");
    for (size_t i = 0; i < 5000; i++) {
        strbuf_text(&text, "1,");
    }
    strbuf_text(&text, "\n  1 shoots\n");
    struct str out = tidied(strbuf_str(&text));
    ck_assert(str_equal(out, strbuf_str(&text)));
    ck_assert_uint_eq(diags.all.count, 1);
}
END_TEST

/* Pieces that lines are made of, thrown together: nothing of it may break a rule of the house, and
 * printing what was printed changes nothing. */
static const char *const pieces[] = {
    "play ",
    "step ",
    "read ",
    "option ",
    "if ",
    "team ",
    "action ",
    "chapter ",
    "practice ",
    "include ",
    "playbook ",
    "start ",
    "ball ",
    "defense ",
    "level ",
    "tags ",
    "about ",
    "units metres",
    "point ",
    "run ",
    "chart ",
    "accept ",
    "repeat from step 1",
    "same as step 1 of ",
    "continue here",
    "courtwright 1",
    "x1 guards 3",
    "with ",
    "mirrors ",
    "for ",
    "passer ",
    "receiver ",
    "\"A\" ",
    "\"B # c\" ",
    "\"",
    "# why ",
    "\n",
    "\n",
    "\n",
    "\n",
    "\n\n",
    ", ",
    ",\n",
    ". ",
    "; ",
    "- ",
    "and ",
    "then ",
    "or ",
    "1 ",
    "2 ",
    "3 ",
    "x3 ",
    "coach ",
    "the ",
    "passes to ",
    "cuts to ",
    "screens for ",
    "curls off ",
    "trails ",
    "is open ",
    "shoots ",
    "stays ",
    "rim ",
    "left wing ",
    "6 ft above ",
    "(12, -3) ",
    "3's spot ",
    "when ",
    "after ",
    "until ",
    "as ",
    "horns ",
    "five-out ",
    "zone 2-3 ",
    "space.close ",
    "10 ft ",
    "  ",
    "\t",
    "\r\n",
    "\xE2\x80\x9C",
    "\xE2\x80\x99",
    "\xC3",
    "\x01",
    "\\",
    "!",
    ":",
    "one ",
    "jersey ",
    "lineup ",
    "sprinting ",
    "wide ",
    "his defender ",
    "the pass ",
    "everyone else ",
    "gives and goes with ",
    "exchange ",
    "screens again ",
    "otherwise ",
    "while ",
    "meanwhile ",
    "1 s later ",
    "at 2 s ",
    "mirrored ",
};

static void print_twice(uint64_t seed)
{
    struct rng rng;
    rng_seed(&rng, seed);
    struct strbuf text;
    strbuf_init(&text, &arena);
    size_t count = 20 + rng_below(&rng, 200);
    for (size_t i = 0; i < count; i++) {
        strbuf_text(&text, pieces[rng_below(&rng, sizeof pieces / sizeof pieces[0])]);
    }
    struct str out = tidied(strbuf_str(&text));
    struct str again = tidied(out);
    const char *a = str_copy(&arena, out).at, *b = str_copy(&arena, again).at;
    for (; *a && *a == *b; a++) {
        b++;
    }
    if (*a || *b) {
        ck_abort_msg("seed %d, written:\n%s\nfirst, from where they part:\n%s\nthen:\n%s",
                     (int)seed, text.at, a, b);
    }
}

enum { SEEDS_A_TEST = 50 };
START_TEST(printing_twice_changes_nothing)
{
    for (uint64_t i = 0; i < SEEDS_A_TEST; i++) {
        print_twice((uint64_t)_i * SEEDS_A_TEST + i + 1);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("tidy");
    TCase *all = tcase_create("tidy");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_line_has_one_form, 0,
                        (int)(sizeof setting_cases / sizeof setting_cases[0]));
    tcase_add_loop_test(all, a_text_has_one_form, 0,
                        (int)(sizeof text_cases / sizeof text_cases[0]));
    tcase_add_test(all, what_is_no_text_is_left_alone);
    tcase_add_test(all, a_line_too_long_is_left_alone);
    tcase_add_loop_test(all, printing_twice_changes_nothing, 0, 20);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
