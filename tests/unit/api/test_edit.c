/* SPDX-License-Identifier: MIT */
/* edit: what an editor may ask of a text, half typed or whole. Knows the public header alone. */
#include "courtwright/courtwright.h"
#include "suite.h"

#include <stdlib.h>
#include <string.h>

static const char lantern[] = "team \"Larkspur Kites\"\n"                           /* 1 */
                              "  3 \"Wren Castell\" guard\n"                        /* 2 */
                              "action \"give and go\" for passer, receiver\n"       /* 3 */
                              "  passer passes to receiver\n"                       /* 4 */
                              "  passer cuts to the rim\n"                          /* 5 */
                              "play \"Lantern\"\n"                                  /* 6 */
                              "  start five-out  # one out of five\n"               /* 7 */
                              "  defense man\n"                                     /* 8 */
                              "  step \"Down\"\n"                                   /* 9 */
                              "    5 sets a down screen for 3\n"                    /* 10 */
                              "    read x3 trails \"Curl\"\n"                       /* 11 */
                              "      3 curls off 5 to the rim, wide\n"              /* 12 */
                              "      1 passes to 3\n"                               /* 13 */
                              "    read x3 goes under \"Fade\"\n"                   /* 14 */
                              "      3 fades off 5\n"                               /* 15 */
                              "  step \"Go\" after \"Fade\"\n"                      /* 16 */
                              "    run \"give and go\" with passer 1, receiver 2\n" /* 17 */
                              "    accept space.close \"they cross\"\n"             /* 18 */
                              "play \"Tollgate\" mirrors \"Lantern\"\n";            /* 19 */

/* Where `words` stand in `text`. */
static size_t place(const char *text, const char *words)
{
    const char *found = strstr(text, words);
    ck_assert_ptr_nonnull(found);
    return (size_t)(found - text);
}

struct looked { /* for one piece of the text */
    const char *text;
    size_t at;
    const char *kind;
};

static bool look(void *ctx, const struct courtwright_token *token)
{
    struct looked *looked = ctx;
    if (token->begin <= looked->at && looked->at < token->end) {
        looked->kind = courtwright_class_name(token->kind);
    }
    return true;
}

static const char *kind_at(const char *text, size_t at)
{
    struct looked looked = {text, at, "blank"};
    ck_assert_int_eq(courtwright_tokens(text, strlen(text), NULL, look, &looked), COURTWRIGHT_OK);
    return looked.kind;
}

START_TEST(each_word_of_a_play_has_its_class)
{
    static const struct {
        const char *words, *kind;
    } cases[] = {
        {"play \"Lan", "heading"},  {"\"Lantern\"", "quoted"},   {"start", "setting"},
        {"five-out", "value"},      {"# one out", "comment"},    {"step", "heading"},
        {"5 sets", "player"},       {"sets a", "verb"},          {"screen for", "verb"},
        {"x3 trails", "defender"},  {"trails", "verb"},          {"curls", "verb"},
        {"the rim, wide", "place"}, {", wide", "plain"},         {"wide", "modifier"},
        {"goes under", "verb"},     {"after \"Fade", "tie"},     {"run", "note"},
        {"accept", "note"},         {"space.close", "check"},    {"\"they cross", "quoted"},
        {"mirrors", "plain"},       {"passer passes", "player"}, {"receiver\n  passer", "player"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *kind = kind_at(lantern, place(lantern, cases[i].words));
        ck_assert_msg(strcmp(kind, cases[i].kind) == 0, "%s is %s", cases[i].words, kind);
    }
}
END_TEST

START_TEST(a_half_typed_line_keeps_what_can_be_told)
{
    static const char text[] = "1 passes to\n"
                               "4 zigzags to the rim\n"
                               "title \"not clo\n"
                               "after 2 catches, 3 cu\n";
    ck_assert_str_eq(kind_at(text, 0), "player");
    ck_assert_str_eq(kind_at(text, place(text, "passes")), "verb");
    ck_assert_str_eq(kind_at(text, place(text, "zigzags")), "error");
    ck_assert_str_eq(kind_at(text, place(text, "after")), "tie");
}
END_TEST

static bool first_only(void *ctx, const struct courtwright_token *token)
{
    (void)token;
    ++*(int *)ctx;
    return false;
}

START_TEST(a_callback_that_says_no_ends_the_call)
{
    int calls = 0;
    ck_assert_int_eq(courtwright_tokens(lantern, strlen(lantern), NULL, first_only, &calls),
                     COURTWRIGHT_OK);
    ck_assert_int_eq(calls, 1);
}
END_TEST

START_TEST(every_class_has_a_name_and_past_them_there_is_none)
{
    for (int i = 0; i < COURTWRIGHT_CLASS_COUNT; i++) {
        ck_assert_ptr_nonnull(courtwright_class_name((enum courtwright_class)i));
    }
    ck_assert_ptr_null(courtwright_class_name(COURTWRIGHT_CLASS_COUNT));
}
END_TEST

struct offers { /* what was offered, one a line: "left wing|" */
    char at[1 << 15];
    size_t size, count, begin, end;
    const char *wanted, *what;
    char kept[256];
};

static bool collect(void *ctx, const struct courtwright_completion *completion)
{
    struct offers *offers = ctx;
    size_t size = strlen(completion->text);
    ck_assert_uint_lt(offers->size + size + 2, sizeof offers->at);
    offers->at[offers->size++] = '|';
    memcpy(offers->at + offers->size, completion->text, size + 1);
    offers->size += size;
    offers->count++;
    if (offers->wanted && strcmp(completion->text, offers->wanted) == 0) {
        offers->begin = completion->begin;
        offers->end = completion->end;
        strncpy(offers->kept, completion->what, sizeof offers->kept - 1);
        offers->what = offers->kept;
    }
    return true;
}

static struct offers offers;

static void complete(const char *text, const char *wanted)
{
    offers.size = offers.count = 0;
    offers.at[0] = '\0';
    offers.wanted = wanted;
    offers.what = NULL;
    ck_assert_int_eq(
        courtwright_complete("a.play", text, strlen(text), strlen(text), NULL, collect, &offers),
        COURTWRIGHT_OK);
    strcpy(offers.at + offers.size, "|");
}

static bool offered(const char *text)
{
    char wanted[128] = "|";
    strcat(strcat(wanted, text), "|");
    return strstr(offers.at, wanted) != NULL;
}

#define HEAD "play \"Lantern\"\n  start five-out\n  defense man\n  step\n    5 down screens for 3\n"

START_TEST(what_can_stand_there_is_offered_and_nothing_else)
{
    static const struct {
        const char *typed, *yes, *no;
    } cases[] = {
        {"", "play", "passes to"},
        {"", "rules", "point 3"},
        {"", "1", "to"},
        {HEAD, "3", "rules"},
        {HEAD, "point", "five-out"},
        {HEAD, "as", "to"},
        {HEAD, "everyone else", "coach"},
        {HEAD "3 ", "curls off", "denies"},
        {HEAD "3 ", "cuts to", "left wing"},
        {HEAD "x3 ", "trails", "passes to"},
        {HEAD "1 passes to ", "2", "1"},
        {HEAD "3 cuts to ", "left wing", "curls off"},
        {HEAD "3 cuts to left ", "left wing", "rim"},
        {HEAD "3 cuts to left w", "left wing", "right wing"},
        {HEAD "1 thr", "throws to", "passes to"},
        {HEAD "1 ", "passes to", "throws to"},
        {HEAD "3 curls off 5, wi", "wide", "wing"},
        {HEAD "after 1 passes, ", "3", "passes to"},
        {HEAD "as 1 ", "passes", "passes to"},
        {HEAD "after 5 sc", "screens", "screens for"},
        {HEAD "as 1 passes, 3 ", "cuts to", "cuts"},
        {HEAD "1 drives to the rim until ", "x4", "rules"},
        {HEAD "1 drives to the rim until x4 ", "helps", "cuts"},
        {HEAD "4 cuts from ", "left wing", "curls off"},
        {HEAD "4 stays at ", "left corner", "curls off"},
        {HEAD "5 ball screens for ", "1", "5"},
        {HEAD "1 passes to 2 at ", "right wing", "curls off"},
        {HEAD "1 passes to 2 and ", "cuts to", "rules"},
        {HEAD "read ", "otherwise", "rules"},
        {HEAD "read ", "x3", "rules"},
        {HEAD "read x3 ", "goes under", "curls off"},
        {HEAD "accept sp", "space.close", "pass.long"},
        {HEAD "# 1 pas", NULL, "passes to"},
        {HEAD "point \"1 pas", NULL, "passes to"},
        {HEAD "1 pasess t", NULL, "to"},
        {"level ", "u16 girls", "five-out"},
        {"level u16 g", "u16 girls", "girls"},
        {"play \"T\"\n  defense ", "zone 2-3", "u12"},
        {"play \"T\"\n  defense m", "man deny", "metres"},
        {"units ", "metres", "letter"},
        {"play \"T\"\n  start ", "horns", "man"},
        {"play Lan", NULL, "lane"},
        {"drill \"D\"\n  step\n    ", "coach", "rules"},
        {"action \"a\" for passer, receiver\n  ", "passer", "coach"},
        {"play \"A\"\nplay \"B\" mirrors ", "\"A\"", "\"B\""},
        {"action \"give\" for p, q\nplay \"B\"\n  step\n    run ", "\"give\"", "\"B\""},
        {"action \"give\" for p, q\nplay \"B\"\n  step\n    run \"give\" with ", "p", "3"},
        {"play \"A\"\n  step\n    5 screens for 3\n    read x3 trails \"Curl\"\n      3 curls off "
         "5\n"
         "  step after ",
         "\"Curl\"", "\"A\""},
        {"team \"Kites\"\n  lineup \"Big\" 1 \"Ada\"\nplay \"A\"\n  lineup ", "\"Big\"", "\"Ada\""},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        complete(cases[i].typed, NULL);
        ck_assert_msg(!cases[i].yes || offered(cases[i].yes), "`%s` offers no %s: %.600s",
                      cases[i].typed, cases[i].yes ? cases[i].yes : "", offers.at);
        ck_assert_msg(!offered(cases[i].no), "`%s` offers %s", cases[i].typed, cases[i].no);
    }
}
END_TEST

START_TEST(a_completion_takes_the_place_of_what_was_typed_of_it)
{
    static const char text[] = HEAD "3 cuts to Left w";
    complete(text, "left wing");
    ck_assert_uint_eq(offers.begin, place(text, "Left w"));
    ck_assert_uint_eq(offers.end, strlen(text));
    ck_assert_uint_eq(offers.count, 1);
}
END_TEST

START_TEST(a_completion_says_what_it_is)
{
    complete(HEAD "3 cur", "curls off");
    ck_assert_str_eq(offers.what, "a solid line with an arrow head");
    complete("team \"K\"\n  3 \"Wren\" guard\nplay \"A\"\n  step\n    ", "3");
    ck_assert_str_eq(offers.what, "Wren");
    complete("action \"give\" for p, q\nplay \"B\"\n  step\n    run ", "\"give\"");
    ck_assert_str_eq(offers.what, "for p, q");
}
END_TEST

struct hovers {
    char at[1 << 14];
    size_t sentences, words;
};

static bool hover_keep(void *ctx, const struct courtwright_hover *hover)
{
    struct hovers *hovers = ctx;
    const char *pieces[] = {hover->title, ": ", hover->text, "\n"};
    for (size_t i = 0; i < 4; i++) {
        strncat(hovers->at, pieces[i], sizeof hovers->at - strlen(hovers->at) - 1);
    }
    hovers->sentences += hover->sentence;
    hovers->words += !hover->sentence;
    return true;
}

static struct hovers hovers;

static enum courtwright_status hover(const char *text, size_t at)
{
    hovers = (struct hovers){.at = ""};
    return courtwright_hover("a.play", text, strlen(text), at, NULL, hover_keep, &hovers);
}

START_TEST(a_word_is_explained_and_its_sentence_told)
{
    ck_assert_int_eq(hover(lantern, place(lantern, "down screen")), COURTWRIGHT_OK);
    ck_assert_ptr_nonnull(strstr(hovers.at, "screens for: a solid line ending in a bar"));
    ck_assert_ptr_nonnull(strstr(hovers.at, "5 down screens for 3: 5 "));
    ck_assert_uint_eq(hovers.sentences, 1);
}
END_TEST

START_TEST(a_check_a_setting_and_a_value_are_explained)
{
    hover(lantern, place(lantern, "space.close") + 3);
    ck_assert_ptr_nonnull(strstr(hovers.at, "space.close: two players stand too close"));
    hover(lantern, place(lantern, "start"));
    ck_assert_ptr_nonnull(strstr(hovers.at, "start: "));
    ck_assert_int_eq(hover("level u12\n", 7), COURTWRIGHT_OK);
    ck_assert_ptr_nonnull(strstr(hovers.at, "u12: "));
}
END_TEST

START_TEST(where_nothing_stands_nothing_is_said)
{
    ck_assert_int_eq(hover(lantern, place(lantern, "one out of")), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(hover("\n\n\n", 1), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(hover("1 shoots\n", 1000), COURTWRIGHT_NO_SUCH);
    ck_assert_uint_eq(hovers.words + hovers.sentences, 0);
}
END_TEST

struct told { /* of the sentence on one line */
    unsigned line;
    struct courtwright_sentence sentence;
    char tidy[128], labels[128], tied[128], told[256];
    size_t plays[8], count;
    bool written;
};

static bool sentence_keep(void *ctx, const struct courtwright_sentence *sentence)
{
    struct told *told = ctx;
    told->count++;
    if (sentence->line != told->line) {
        return true;
    }
    told->sentence = *sentence;
    strncpy(told->tidy, sentence->tidy, sizeof told->tidy - 1);
    strncpy(told->told, sentence->told, sizeof told->told - 1);
    for (size_t i = 0; i < sentence->diagram_count && i < 8; i++) {
        strcat(strcat(told->labels, sentence->diagrams[i].label), " ");
        told->plays[i] = sentence->diagrams[i].play;
    }
    for (size_t i = 0; i < sentence->tie_count; i++) {
        strcat(strcat(told->tied, sentence->ties[i].moment), " ");
        told->written = told->written || sentence->ties[i].written;
    }
    return true;
}

static struct told told_of(const char *text, unsigned line)
{
    struct told told = {.line = line};
    ck_assert_int_eq(
        courtwright_sentences("a.play", text, strlen(text), NULL, sentence_keep, &told),
        COURTWRIGHT_OK);
    return told;
}

START_TEST(a_sentence_tells_what_it_became)
{
    struct told told = told_of(lantern, 12);
    ck_assert_str_eq(told.tidy, "3 curls off 5 to the rim, wide");
    ck_assert_int_eq(told.sentence.tasks, 1);
    ck_assert_uint_eq(told.sentence.begin, place(lantern, "3 curls"));
    ck_assert_uint_eq(told.sentence.end, place(lantern, "wide") + 4);
    ck_assert_str_eq(told.tied, "set ");
    ck_assert(!told.written);
    ck_assert_str_eq(told.labels, "1a 1a "); /* of the play and of its mirror */
    ck_assert_uint_eq(told.plays[1], 1);
    ck_assert_uint_gt(strlen(told.told), 0);
}
END_TEST

START_TEST(a_sentence_of_an_action_is_in_the_diagrams_that_run_it)
{
    struct told told = told_of(lantern, 5);
    ck_assert_str_eq(told.tidy, "passer cuts to the rim");
    ck_assert_str_eq(told.labels, "2 2 ");
    told = told_of(
        "action \"a\" for p, q\n  p passes to q\nplay \"A\"\n  step\n    1 passes to 2\n", 2);
    ck_assert_int_eq(told.sentence.tasks, 0);
    ck_assert_uint_eq(told.sentence.diagram_count, 0);
}
END_TEST

START_TEST(a_written_tie_names_the_sentence_it_waits_for)
{
    static const char text[] = "1 passes to 2\nafter 2 catches, 3 cuts to the rim\n"
                               "3 and 4 stay\n";
    struct told told = told_of(text, 2);
    ck_assert(told.written);
    ck_assert_str_eq(told.tied, "caught ");
    told = told_of(text, 3);
    ck_assert_int_eq(told.sentence.tasks, 2);
    ck_assert_uint_eq(told.count, 3);
}
END_TEST

START_TEST(a_text_that_is_none_is_refused_by_all_four)
{
    static const char nul[] = "1 passes\0 to 2\n";
    size_t size = sizeof nul - 1;
    struct looked looked = {nul, 0, ""};
    struct told told = {0};
    ck_assert_int_eq(courtwright_tokens(nul, size, NULL, look, &looked), COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_complete("a", nul, size, 3, NULL, collect, &offers),
                     COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_hover("a", nul, size, 3, NULL, hover_keep, &hovers),
                     COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_sentences("a", nul, size, NULL, sentence_keep, &told),
                     COURTWRIGHT_BROKEN);
}
END_TEST

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    static const char text[] = "play \"Millrace\"\n  step\n    1 passes to 2\n";
    (void)ctx;
    (void)from;
    courtwright_include_text(include, path, text, sizeof text - 1);
    return COURTWRIGHT_FETCHED;
}

START_TEST(names_of_included_files_are_known_where_the_host_fetches_them)
{
    static const char text[] = "include \"b.play\"\nplay \"A\"\n  step\n    same as step 1 of ";
    struct courtwright_host host = {.fetch = fetch};
    complete(text, NULL);
    ck_assert(!offered("\"Millrace\""));
    offers.size = 0;
    courtwright_complete("a.play", text, strlen(text), strlen(text), &host, collect, &offers);
    strcpy(offers.at + offers.size, "|");
    ck_assert(offered("\"Millrace\""));
}
END_TEST

static void *take_nothing(void *ctx, size_t size)
{
    (void)ctx;
    (void)size;
    return NULL;
}

static void give_nothing(void *ctx, void *block)
{
    (void)ctx;
    (void)block;
}

START_TEST(memory_that_runs_out_is_a_status)
{
    struct courtwright_host host = {.take = take_nothing, .give = give_nothing};
    struct looked looked = {lantern, 0, ""};
    ck_assert_int_eq(courtwright_tokens(lantern, strlen(lantern), &host, look, &looked),
                     COURTWRIGHT_MEMORY);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("edit");
    TCase *tcase = tcase_create("edit");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, each_word_of_a_play_has_its_class);
    tcase_add_test(tcase, a_half_typed_line_keeps_what_can_be_told);
    tcase_add_test(tcase, a_callback_that_says_no_ends_the_call);
    tcase_add_test(tcase, every_class_has_a_name_and_past_them_there_is_none);
    tcase_add_test(tcase, what_can_stand_there_is_offered_and_nothing_else);
    tcase_add_test(tcase, a_completion_takes_the_place_of_what_was_typed_of_it);
    tcase_add_test(tcase, a_completion_says_what_it_is);
    tcase_add_test(tcase, a_word_is_explained_and_its_sentence_told);
    tcase_add_test(tcase, a_check_a_setting_and_a_value_are_explained);
    tcase_add_test(tcase, where_nothing_stands_nothing_is_said);
    tcase_add_test(tcase, a_sentence_tells_what_it_became);
    tcase_add_test(tcase, a_sentence_of_an_action_is_in_the_diagrams_that_run_it);
    tcase_add_test(tcase, a_written_tie_names_the_sentence_it_waits_for);
    tcase_add_test(tcase, a_text_that_is_none_is_refused_by_all_four);
    tcase_add_test(tcase, names_of_included_files_are_known_where_the_host_fetches_them);
    tcase_add_test(tcase, memory_that_runs_out_is_a_status);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
