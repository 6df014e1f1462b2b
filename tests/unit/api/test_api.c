/* SPDX-License-Identifier: MIT */
/* api: the public header's promises, call by call. Knows nothing else of the library. */
#include "kites.h"
#include "suite.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

START_TEST(a_book_tells_what_is_in_it)
{
    ck_assert_str_eq(courtwright_title(book), "Kites at home");
    ck_assert_str_eq(courtwright_team(book), "Larkspur Kites");
    ck_assert_uint_eq(courtwright_source_count(book), 1);
    ck_assert_str_eq(courtwright_source(book, 0), "kites.play");
    ck_assert_ptr_null(courtwright_source(book, 1));
    ck_assert_uint_eq(courtwright_player_count(book), 2);
    ck_assert_str_eq(courtwright_player(book, 0)->jersey, "12");
    ck_assert(courtwright_player(book, 0)->starter && !courtwright_player(book, 1)->starter);
    ck_assert_ptr_null(courtwright_player(book, 2));
}
END_TEST

START_TEST(plays_and_diagrams_are_counted)
{
    ck_assert_uint_eq(courtwright_play_count(book), 3);
    const struct courtwright_play *play = courtwright_play(book, 0);
    ck_assert_str_eq(play->name, "Lantern");
    ck_assert_str_eq(play->chapter, "Early");
    ck_assert_int_eq(play->number, 7);
    ck_assert_int_eq(play->steps, 1);
    ck_assert_uint_eq(play->diagrams, 3);
    ck_assert(play->seconds > 1 && play->seconds < 30);
    ck_assert_str_eq(courtwright_diagram(book, 0, 1)->label, "1a");
    ck_assert_str_eq(courtwright_diagram(book, 0, 1)->title, "Curl");
    ck_assert_int_eq(courtwright_diagram(book, 0, 2)->branch, 2);
    const struct courtwright_diagram *step = courtwright_diagram(book, 0, 0);
    const struct courtwright_diagram *read = courtwright_diagram(book, 0, 1);
    ck_assert(step->tasks > 0 &&
              step->tasks < read->tasks); /* a read's are the step's and its own */
    ck_assert(step->seconds > 0.5 && step->seconds < read->seconds);
    ck_assert_ptr_null(courtwright_diagram(book, 0, 3));
    ck_assert_ptr_null(courtwright_diagram(book, 9, 0));
    ck_assert_ptr_null(courtwright_play(book, 3));
}
END_TEST

START_TEST(an_error_breaks_its_play_and_what_leans_on_it_only)
{
    ck_assert(!courtwright_play(book, 0)->broken);
    ck_assert(courtwright_play(book, 1)->broken);
    ck_assert(courtwright_play(book, 2)->broken);
    ck_assert_uint_eq(courtwright_error_count(book), 1);
    ck_assert_uint_eq(courtwright_play(book, 1)->diagrams, 0);
}
END_TEST

static size_t findings_of(const char *text)
{
    struct courtwright *loaded = courtwright_load("mirror.play", text, strlen(text), NULL);
    size_t count = 0;
    for (size_t i = 0; i < courtwright_diagnostic_count(loaded); i++) {
        count += courtwright_diagnostic(loaded, i)->finding;
    }
    courtwright_free(loaded);
    return count;
}

#define ON_ONE_SPOT                                                                                \
    "play \"Orchard\"\n  start five-out\n  step\n    1 passes to 2\n"                              \
    "    3 goes to left corner\n  step\n    2 passes to 1\n"

START_TEST(what_is_found_in_a_play_is_not_told_again_of_its_mirror)
{
    size_t once = findings_of(ON_ONE_SPOT);
    ck_assert_uint_ge(once, 1);
    ck_assert_uint_eq(findings_of(ON_ONE_SPOT "play \"Orchard right\" mirrors \"Orchard\"\n"),
                      once);
}
END_TEST

START_TEST(a_diagnostic_says_where)
{
    const struct courtwright_diagnostic *said = NULL;
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        if (courtwright_diagnostic(book, i)->severity == COURTWRIGHT_ERROR) {
            said = courtwright_diagnostic(book, i);
        }
    }
    ck_assert_ptr_nonnull(said);
    ck_assert_str_eq(said->file, "kites.play");
    ck_assert_uint_eq(said->line, 23);
    ck_assert_uint_eq(said->column, 7);
    ck_assert_uint_eq(said->end, 12);
    ck_assert_str_eq(said->excerpt, "    1 pases to 2");
    ck_assert(!said->finding && !said->accepted);
    ck_assert_ptr_null(courtwright_diagnostic(book, courtwright_diagnostic_count(book)));
}
END_TEST

START_TEST(excerpts_hold_no_control_characters)
{
    struct courtwright *rough =
        load("a\x1b[31m.play", "play \"A\x1b[2J\x07\"\n  step\n    1 flies \xff\x1b[0m to 2\n");
    ck_assert_uint_gt(courtwright_diagnostic_count(rough), 0);
    for (size_t i = 0; i < courtwright_diagnostic_count(rough); i++) {
        const struct courtwright_diagnostic *said = courtwright_diagnostic(rough, i);
        ck_assert_ptr_null(strpbrk(said->excerpt, "\x1b\x07\xff"));
        ck_assert_ptr_null(strpbrk(said->message, "\x1b\x07\xff"));
        ck_assert_ptr_null(strpbrk(said->help, "\x1b\x07\xff"));
    }
    courtwright_free(rough);
}
END_TEST

START_TEST(a_play_without_a_heading_is_named_after_its_file)
{
    struct courtwright *bare =
        load("plays/swing-it.play", "start five-out\nball 1\nstep\n  1 passes to 2\n");
    ck_assert_uint_eq(courtwright_error_count(bare), 0);
    ck_assert_uint_eq(courtwright_play_count(bare), 1);
    ck_assert_str_eq(courtwright_play(bare, 0)->name, "swing-it");
    courtwright_free(bare);
}
END_TEST

START_TEST(an_empty_text_is_a_book_without_plays)
{
    struct courtwright *empty = courtwright_load(NULL, NULL, 0, NULL);
    ck_assert_ptr_nonnull(empty);
    ck_assert_uint_eq(courtwright_play_count(empty), 0);
    ck_assert_int_eq(courtwright_handout(empty, &(struct courtwright_handout){0}, &writer),
                     COURTWRIGHT_NO_SUCH);
    courtwright_free(empty);
    courtwright_free(NULL);
}
END_TEST

START_TEST(an_include_without_a_host_is_an_error)
{
    struct courtwright *alone = load("a.play", "include \"b.play\"\n");
    ck_assert_uint_eq(courtwright_error_count(alone), 1);
    ck_assert_ptr_nonnull(strstr(courtwright_diagnostic(alone, 0)->id, "file."));
    courtwright_free(alone);
}
END_TEST

/* What a fetch may answer, and the diagnostic it becomes. */
static const struct {
    enum courtwright_fetched answer;
    const char *id;
} answers[] = {
    {COURTWRIGHT_MISSING, "file.missing"},
    {COURTWRIGHT_UNREADABLE, "file.unreadable"},
    {COURTWRIGHT_OUTSIDE, "file.outside"},
    {COURTWRIGHT_TOO_LARGE, "file.too-large"},
    {COURTWRIGHT_FETCHED, "file.unreadable"}, /* without a text */
    {(enum courtwright_fetched)99, "file.unreadable"},
};

static enum courtwright_fetched answer(void *ctx, const char *from, const char *path,
                                       struct courtwright_include *include)
{
    (void)include;
    ck_assert_str_eq(from, "a.play");
    ck_assert_str_eq(path, "b.play");
    return *(const enum courtwright_fetched *)ctx;
}

START_TEST(every_answer_of_a_fetch_is_told)
{
    enum courtwright_fetched given = answers[_i].answer;
    struct courtwright_host host = {.fetch = answer, .fetch_ctx = &given};
    static const char text[] = "include \"b.play\"\n";
    struct courtwright *loaded = courtwright_load("a.play", text, sizeof text - 1, &host);
    ck_assert_uint_eq(courtwright_diagnostic_count(loaded), 1);
    ck_assert_str_eq(courtwright_diagnostic(loaded, 0)->id, answers[_i].id);
    courtwright_free(loaded);
}
END_TEST

START_TEST(a_text_past_the_most_is_too_large)
{
    char *text = malloc(COURTWRIGHT_TEXT_MOST + 1);
    memset(text, '#', COURTWRIGHT_TEXT_MOST + 1);
    struct courtwright *large = courtwright_load("a.play", text, COURTWRIGHT_TEXT_MOST + 1, NULL);
    ck_assert_uint_eq(courtwright_diagnostic_count(large), 1);
    ck_assert_str_eq(courtwright_diagnostic(large, 0)->id, "file.too-large");
    ck_assert_int_eq(courtwright_tidy(large, &writer), COURTWRIGHT_BROKEN);
    courtwright_free(large);
    free(text);
}
END_TEST

static const struct {
    const char *what;
    struct courtwright_draw draw;
    enum courtwright_status status;
} drawings[] = {
    {"live", {.format = COURTWRIGHT_SVG_LIVE}, COURTWRIGHT_OK},
    {"the last diagram", {.format = COURTWRIGHT_SVG_LIVE, .diagram = 2}, COURTWRIGHT_OK},
    {"one diagram too far", {.format = COURTWRIGHT_SVG_LIVE, .diagram = 3}, COURTWRIGHT_NO_SUCH},
    {"one play too far", {.format = COURTWRIGHT_SVG_LIVE, .play = 3}, COURTWRIGHT_NO_SUCH},
    {"a broken play", {.format = COURTWRIGHT_SVG_LIVE, .play = 1}, COURTWRIGHT_BROKEN},
    {"a play that mirrors it", {.format = COURTWRIGHT_SVG_LIVE, .play = 2}, COURTWRIGHT_BROKEN},
    {"too narrow", {.format = COURTWRIGHT_SVG_LIVE, .width = 71}, COURTWRIGHT_BAD_OPTION},
    {"too wide", {.format = COURTWRIGHT_SVG_LIVE, .width = 2001}, COURTWRIGHT_BAD_OPTION},
    {"not a width", {.format = COURTWRIGHT_SVG_LIVE, .width = -1}, COURTWRIGHT_BAD_OPTION},
    {"too fine", {.format = COURTWRIGHT_PNG, .scale = 11}, COURTWRIGHT_BAD_OPTION},
    {"no such format", {.format = (enum courtwright_format)9}, COURTWRIGHT_BAD_OPTION},
    {"no such theme", {.theme = (enum courtwright_theme)9}, COURTWRIGHT_BAD_OPTION},
    {"no such layout", {.layout = (enum courtwright_layout)9}, COURTWRIGHT_BAD_OPTION},
    {"a live strip",
     {.format = COURTWRIGHT_SVG_LIVE, .layout = COURTWRIGHT_STRIP},
     COURTWRIGHT_BAD_OPTION},
    {"more than there are",
     {.layout = COURTWRIGHT_STRIP, .diagram = 1, .count = 3},
     COURTWRIGHT_NO_SUCH},
};

START_TEST(options_of_draw_are_checked)
{
    ck_assert_msg(courtwright_draw(book, &drawings[_i].draw, &writer) == drawings[_i].status, "%s",
                  drawings[_i].what);
    ck_assert_int_eq(kept.size > 0, drawings[_i].status == COURTWRIGHT_OK);
}
END_TEST

static const struct {
    const char *what;
    struct courtwright_animate animate;
    enum courtwright_status status;
} films[] = {
    {"a play", {.theme = COURTWRIGHT_SCREEN}, COURTWRIGHT_OK},
    {"the last diagram", {.alone = true, .diagram = 2}, COURTWRIGHT_OK},
    {"a diagram that is not asked for", {.diagram = 9}, COURTWRIGHT_OK},
    {"one diagram too far", {.alone = true, .diagram = 3}, COURTWRIGHT_NO_SUCH},
    {"one play too far", {.play = 3}, COURTWRIGHT_NO_SUCH},
    {"a broken play", {.play = 1}, COURTWRIGHT_BROKEN},
    {"too narrow", {.width = 71}, COURTWRIGHT_BAD_OPTION},
    {"no such theme", {.theme = (enum courtwright_theme)9}, COURTWRIGHT_BAD_OPTION},
};

START_TEST(options_of_animate_are_checked)
{
    ck_assert_msg(courtwright_animate(book, &films[_i].animate, &writer) == films[_i].status, "%s",
                  films[_i].what);
    ck_assert_int_eq(kept.size > 0, films[_i].status == COURTWRIGHT_OK);
    if (kept.size > 0) {
        ck_assert_ptr_nonnull(strstr(kept.at, "<animateTransform"));
    }
}
END_TEST

START_TEST(salt_makes_ids_differ)
{
    struct courtwright_draw draw = {.format = COURTWRIGHT_SVG_LIVE, .salt = "a"};
    ck_assert_int_eq(courtwright_draw(book, &draw, &writer), COURTWRIGHT_OK);
    char *first = copy(kept.at);
    start_over();
    draw.salt = "b";
    ck_assert_int_eq(courtwright_draw(book, &draw, &writer), COURTWRIGHT_OK);
    ck_assert_str_ne(first, kept.at);
    free(first);
}
END_TEST

START_TEST(a_writer_that_says_no_ends_it)
{
    struct courtwright_draw draw = {.format = COURTWRIGHT_SVG_LIVE};
    kept.most = 100;
    ck_assert_int_eq(courtwright_draw(book, &draw, &writer), COURTWRIGHT_WRITE);
    struct courtwright_animate animate = {.loop = true};
    ck_assert_int_eq(courtwright_animate(book, &animate, &writer), COURTWRIGHT_WRITE);
    ck_assert_int_eq(courtwright_tidy(book, &writer), COURTWRIGHT_WRITE);
    ck_assert_int_eq(courtwright_positions(book, 0, 0, &writer), COURTWRIGHT_WRITE);
    ck_assert_int_eq(courtwright_dump(book, 0, COURTWRIGHT_RUN, &writer), COURTWRIGHT_WRITE);
}
END_TEST

START_TEST(drawing_twice_gives_the_same)
{
    struct courtwright_draw draw = {.format = COURTWRIGHT_SVG_LIVE, .diagram = 1, .caption = true};
    ck_assert_int_eq(courtwright_draw(book, &draw, &writer), COURTWRIGHT_OK);
    char *first = copy(kept.at);
    start_over();
    ck_assert_int_eq(courtwright_draw(book, &draw, &writer), COURTWRIGHT_OK);
    ck_assert_str_eq(first, kept.at);
    free(first);
}
END_TEST

static const struct {
    struct courtwright_handout handout;
    enum courtwright_status status;
} handouts[] = {
    {{.per_page = 5}, COURTWRIGHT_BAD_OPTION},
    {{.per_page = -1}, COURTWRIGHT_BAD_OPTION},
    {{.reader = -1}, COURTWRIGHT_BAD_OPTION},
    {{.reader = 13}, COURTWRIGHT_BAD_OPTION},
    {{.paper = (enum courtwright_paper)7}, COURTWRIGHT_BAD_OPTION},
    {{.plays = (const size_t[]){1}, .play_count = 1}, COURTWRIGHT_BROKEN},
    {{.plays = (const size_t[]){7}, .play_count = 1}, COURTWRIGHT_NO_SUCH},
    {{.plays = (const size_t[]){0}, .play_count = 0}, COURTWRIGHT_NO_SUCH},
    {{.plays = (const size_t[]){0}, .play_count = 1}, COURTWRIGHT_OK},
    {{.reader = 1, .per_page = 9, .paper = COURTWRIGHT_A4}, COURTWRIGHT_OK},
};

START_TEST(options_of_a_handout_are_checked)
{
    ck_assert_int_eq(courtwright_handout(book, &handouts[_i].handout, &writer),
                     handouts[_i].status);
    if (handouts[_i].status == COURTWRIGHT_OK) {
        ck_assert_int_eq(strncmp(kept.at, "%PDF-", 5), 0);
    }
}
END_TEST

START_TEST(the_coachs_and_the_fill_in_sheet_are_made_by_their_word)
{
    struct courtwright_handout options = {.seed = 3};
    static const char *const words[] = {"coach", "fill-in"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        start_over();
        ck_assert_int_eq(courtwright_sheet(book, words[i], &options, &writer), COURTWRIGHT_OK);
        ck_assert_int_eq(strncmp(kept.at, "%PDF-", 5), 0);
        options.per_page = 4;
        ck_assert_int_eq(courtwright_sheet(book, words[i], &options, &writer),
                         COURTWRIGHT_BAD_OPTION);
        options.per_page = 0;
    }
}
END_TEST

START_TEST(a_player_by_name_has_pages_where_there_is_a_spot)
{
    struct courtwright_handout options = {.reader_name = "Nobody"};
    ck_assert_int_eq(courtwright_handout(book, &options, &writer), COURTWRIGHT_NO_SUCH);
    ck_assert_uint_gt(courtwright_player_count(book), 0);
    options.reader_name = courtwright_player(book, 0)->name;
    ck_assert_int_eq(courtwright_handout(book, &options, &writer), COURTWRIGHT_OK);
    options.reader_jersey = "none such";
    ck_assert_int_eq(courtwright_handout(book, &options, &writer), COURTWRIGHT_NO_SUCH);
}
END_TEST

/* Its key has no room for all nine marks: the two that say least go, and no more. */
START_TEST(a_page_with_every_mark_is_made)
{
    struct courtwright *loaded =
        load("all.play", "start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
                         "defense man\n5 down screens for 3\n3 curls off 5 to the nail\n"
                         "1 dribbles at 2\n1 hands off to 2\n2 passes to 3\n1 goes to left wing\n"
                         "3 shoots\n");
    struct courtwright_handout options = {0};
    ck_assert_int_eq(courtwright_handout(loaded, &options, &writer), COURTWRIGHT_OK);
    ck_assert_int_eq(strncmp(kept.at, "%PDF-", 5), 0);
    courtwright_free(loaded);
}
END_TEST

START_TEST(errors_are_told_by_the_part_of_the_book_they_stand_in)
{
    static const struct {
        const char *text;
        size_t round, practices, charted;
    } rows[] = {
        {"play \"A\"\n  start five-out\n  1 pases to 2\n", 0, 0, 0},
        {"team \"Kites\"\n  9 \"Wren\"\nplay \"A\"\n  start five-out\n  1 passes to 2\n", 1, 0, 0},
        {"play \"A\"\n  start five-out\n  1 passes to 2\npractice \"W\"\n  5 min play \"B\"\n", 0,
         1, 0},
        {"play \"A\"\n  start five-out\n  1 passes to 2\ncharted 2026-11-01 game\n"
         "  \"B\" set 1 of 2\n",
         0, 0, 1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct courtwright *one =
            courtwright_load("one.play", rows[i].text, strlen(rows[i].text), NULL);
        ck_assert_uint_eq(courtwright_error_count(one), 1);
        ck_assert_uint_eq(courtwright_error_count_in(one, COURTWRIGHT_ROUND), rows[i].round);
        ck_assert_uint_eq(courtwright_error_count_in(one, COURTWRIGHT_PRACTICES),
                          rows[i].practices);
        ck_assert_uint_eq(courtwright_error_count_in(one, COURTWRIGHT_CHARTED), rows[i].charted);
        ck_assert_uint_eq(courtwright_error_count_in(one, (enum courtwright_part)9), 0);
        courtwright_free(one);
    }
}
END_TEST

START_TEST(positions_and_dumps_are_checked)
{
    ck_assert_int_eq(courtwright_positions(book, 0, 121, &writer), COURTWRIGHT_BAD_OPTION);
    ck_assert_int_eq(courtwright_positions(book, 0, -1, &writer), COURTWRIGHT_BAD_OPTION);
    ck_assert_int_eq(courtwright_positions(book, 3, 0, &writer), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(courtwright_positions(book, 1, 0, &writer), COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_dump(book, 0, (enum courtwright_stage)9, &writer),
                     COURTWRIGHT_BAD_OPTION);
    ck_assert_int_eq(courtwright_dump(book, 1, COURTWRIGHT_RUN, &writer), COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_dump(book, 1, COURTWRIGHT_RESOLVED, &writer), COURTWRIGHT_OK);
}
END_TEST

static bool count_three(void *ctx, const struct courtwright_entry *entry)
{
    ck_assert_str_ne(entry->word, "");
    return ++*(int *)ctx < 3;
}

START_TEST(a_listing_can_be_ended)
{
    int rows = 0;
    ck_assert_int_eq(courtwright_list(COURTWRIGHT_VERBS, NULL, count_three, &rows), COURTWRIGHT_OK);
    ck_assert_int_eq(rows, 3);
    ck_assert_int_eq(courtwright_list(COURTWRIGHT_LIST_COUNT, NULL, count_three, &rows),
                     COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(courtwright_explain("warp", NULL, count_three, &rows), COURTWRIGHT_NO_SUCH);
    ck_assert_ptr_null(courtwright_list_name(COURTWRIGHT_LIST_COUNT));
}
END_TEST

static bool first_row(void *ctx, const struct courtwright_entry *entry)
{
    *(enum courtwright_list *)ctx = entry->list;
    return false;
}

static const struct {
    const char *word;
    enum courtwright_list list;
} explained[] = {
    {"space.close", COURTWRIGHT_CHECKS},
    {"file.memory", COURTWRIGHT_ERRORS},
    {"Passes", COURTWRIGHT_VERBS},
    {"curl off", COURTWRIGHT_VERBS},
    {"left wing", COURTWRIGHT_PLACES},
    {"FIVE OUT", COURTWRIGHT_FORMATIONS},
    {"2-3", COURTWRIGHT_ZONES},
    {"press 1-2-1-1", COURTWRIGHT_ZONES},
    {"defense", COURTWRIGHT_SETTINGS},
    {"fiba", COURTWRIGHT_COURTS},
    {"u16 girls", COURTWRIGHT_LEVELS},
    {"lobs", COURTWRIGHT_VERBS},
    {"dunks", COURTWRIGHT_VERBS},
    {"hoop", COURTWRIGHT_PLACES},
    {"continue here", COURTWRIGHT_WORDS},
    {"cone", COURTWRIGHT_WORDS},
    {"back of the line", COURTWRIGHT_WORDS},
    {"line", COURTWRIGHT_WORDS},
};

START_TEST(words_are_found_as_they_are_said)
{
    enum courtwright_list list = COURTWRIGHT_LIST_COUNT;
    ck_assert_int_eq(courtwright_explain(explained[_i].word, NULL, first_row, &list),
                     COURTWRIGHT_OK);
    ck_assert_int_eq(list, explained[_i].list);
}
END_TEST

static bool example_is_read(void *ctx, const struct courtwright_entry *entry)
{
    static char text[4096];
    bool verb = entry->list == COURTWRIGHT_VERBS;
    ck_assert_msg(*entry->good, "%s has no example", entry->word);
    bool file_only = strncmp(entry->what, "at the head", 11) == 0;
    bool drill_only = strcmp(entry->what, "in a drill") == 0;
    const char *head = !verb && file_only ? entry->good : "# nothing";
    const char *own = verb || file_only ? "# nothing" : entry->good;
    snprintf(text, sizeof text, "%s\n%s \"Tollgate\"\n  %s\n%s%s  step\n    %s\n", head,
             drill_only ? "drill" : "play", own,
             strcmp(entry->word, "start") == 0 ? "" : "  start five-out\n",
             strcmp(entry->word, "ball") == 0 ? "" : "  ball 1\n",
             verb ? entry->good : "1 passes to 2");
    struct courtwright *made = load("example.play", text);
    for (size_t i = 0; i < courtwright_diagnostic_count(made); i++) {
        const struct courtwright_diagnostic *said = courtwright_diagnostic(made, i);
        bool wrong = said->severity == COURTWRIGHT_ERROR && strncmp(said->id, "text.", 5) == 0;
        ck_assert_msg(!wrong, "%s: %s: %s", entry->word, entry->good, said->message);
    }
    courtwright_free(made);
    ++*(int *)ctx;
    return true;
}

START_TEST(examples_of_the_language_can_be_read)
{
    int read = 0;
    ck_assert_int_eq(courtwright_list(COURTWRIGHT_VERBS, NULL, example_is_read, &read),
                     COURTWRIGHT_OK);
    ck_assert_int_gt(read, 40);
    ck_assert_int_eq(courtwright_list(COURTWRIGHT_SETTINGS, NULL, example_is_read, &read),
                     COURTWRIGHT_OK);
}
END_TEST

START_TEST(every_status_has_words)
{
    for (int status = COURTWRIGHT_OK; status <= COURTWRIGHT_NOT_BUILT; status++) {
        ck_assert_str_ne(courtwright_status_text((enum courtwright_status)status), "unknown");
    }
    ck_assert_str_eq(courtwright_status_text((enum courtwright_status)99), "unknown");
}
END_TEST

/* What a host has lent and not got back, by a size kept in front of each block. */
static size_t lent;
enum { IN_FRONT = 64 };

static void *lend(void *ctx, size_t size)
{
    (void)ctx;
    char *block = malloc(size + IN_FRONT);
    memcpy(block, &size, sizeof size);
    lent += size;
    return block + IN_FRONT;
}

static void get_back(void *ctx, void *block)
{
    (void)ctx;
    size_t size;
    memcpy(&size, (char *)block - IN_FRONT, sizeof size);
    lent -= size;
    free((char *)block - IN_FRONT);
}

static char *said_of(struct courtwright *of, size_t play)
{
    struct courtwright_draw draw = {.play = play, .format = COURTWRIGHT_SVG_LIVE};
    start_over();
    ck_assert_int_eq(courtwright_draw(of, &draw, &writer), COURTWRIGHT_OK);
    start_over(); /* its ids hang on the title */
    ck_assert_int_eq(courtwright_dump(of, play, COURTWRIGHT_RUN, &writer), COURTWRIGHT_OK);
    ck_assert_int_eq(courtwright_dump(of, play, COURTWRIGHT_SCENE, &writer), COURTWRIGHT_OK);
    ck_assert_int_eq(courtwright_positions(of, play, 0, &writer), COURTWRIGHT_OK);
    return copy(kept.at);
}

START_TEST(what_is_let_go_of_a_large_book_is_made_again)
{
    enum { PLAYS = 400, MOST = 96 << 20 }; /* the runs of so many take well over 100 MB */
    static char text[PLAYS * 300];
    static const struct courtwright_host lender = {.take = lend, .give = get_back};
    size_t size = 0;
    for (int i = 0; i < PLAYS; i++) { /* names of one length: the same picture but for the name */
        size += (size_t)sprintf(text + size,
                                "play \"Lantern %03d\"\n  defense man\n  5 down screens for 3\n"
                                "  3 curls off 5 to the rim\n  4 goes to left wing\n"
                                "step\n 1 passes to 3\n",
                                i);
        size -= strlen("step\n 1 passes to 3\n");
    }
    struct courtwright *large = courtwright_load("large.play", text, size, &lender);
    ck_assert_uint_eq(courtwright_play_count(large), PLAYS);
    ck_assert_uint_eq(courtwright_error_count(large), 0);
    ck_assert_uint_lt(lent, MOST);
    char *first = said_of(large, 0), *last = said_of(large, PLAYS - 1);
    for (char *name; (name = strstr(last, "Lantern 399"));) {
        memcpy(name, "Lantern 000", strlen("Lantern 000"));
    }
    ck_assert_uint_gt(strlen(first), 10000);
    ck_assert(strcmp(first, last) == 0); /* too long to be shown */
    free(first);
    free(last);
    courtwright_free(large);
    ck_assert_uint_eq(lent, 0);
}
END_TEST

#define ROWS(table) (int)(sizeof(table) / sizeof *(table))

/* ---- tolerance ---- */

static bool write_tolerance(void *ctx, const struct courtwright_tolerance *told)
{
    char line[600];
    int size = snprintf(line, sizeof line, "%s %s %zu %d/%d %.6f %d %s|%s|%s %u\n", told->play,
                        told->step, told->diagram, told->works, told->runs, told->spare,
                        told->times, told->tightest, told->trouble, told->message, told->line);
    return writer.write(ctx, line, (size_t)size);
}

/* A host that does the last first. */
static void last_first(void *ctx, size_t count, void (*job)(void *jobs, size_t i), void *jobs)
{
    int *asked = ctx;
    ++*asked;
    for (size_t i = count; i-- > 0;) {
        job(jobs, i);
    }
}

START_TEST(tolerance_is_the_same_whoever_does_the_jobs)
{
    int asked = 0;
    struct courtwright_host host = {.side_by_side = last_first, .side_by_side_ctx = &asked};
    struct courtwright *other = courtwright_load("kites.play", kites, strlen(kites), &host);
    static char first[4096];
    start_over();
    ck_assert_int_eq(courtwright_tolerance(book, 0, write_tolerance, &kept), COURTWRIGHT_OK);
    ck_assert_uint_lt(kept.size, sizeof first);
    memcpy(first, kept.at, kept.size + 1);
    ck_assert_ptr_nonnull(strstr(first, "Lantern 1a 1 "));
    ck_assert_ptr_nonnull(strstr(first, "Lantern 1b 2 "));
    start_over();
    ck_assert_int_eq(courtwright_tolerance(other, 0, write_tolerance, &kept), COURTWRIGHT_OK);
    ck_assert_str_eq(first, kept.at);
    ck_assert_int_eq(asked, 2);
    courtwright_free(other);
}
END_TEST

static bool stop_tolerance(void *ctx, const struct courtwright_tolerance *told)
{
    (void)told;
    ++*(int *)ctx;
    return false;
}

START_TEST(tolerance_can_be_stopped_and_tells_of_no_broken_play)
{
    int told = 0;
    ck_assert_int_eq(courtwright_tolerance(book, 0, stop_tolerance, &told), COURTWRIGHT_OK);
    ck_assert_int_eq(told, 1);
    ck_assert_int_eq(courtwright_tolerance(book, 1, stop_tolerance, &told), COURTWRIGHT_BROKEN);
    ck_assert_int_eq(courtwright_tolerance(book, 99, stop_tolerance, &told), COURTWRIGHT_NO_SUCH);
    ck_assert_int_eq(told, 1);
}
END_TEST
int main(void)
{
    Suite *suite = suite_create("api");
    TCase *all = tcase_create("api");
    tcase_add_checked_fixture(all, open_book, close_book);
    tcase_set_timeout(all, 60);
    tcase_add_test(all, a_book_tells_what_is_in_it);
    tcase_add_test(all, tolerance_is_the_same_whoever_does_the_jobs);
    tcase_add_test(all, tolerance_can_be_stopped_and_tells_of_no_broken_play);
    tcase_add_test(all, plays_and_diagrams_are_counted);
    tcase_add_test(all, an_error_breaks_its_play_and_what_leans_on_it_only);
    tcase_add_test(all, what_is_found_in_a_play_is_not_told_again_of_its_mirror);
    tcase_add_test(all, a_diagnostic_says_where);
    tcase_add_test(all, excerpts_hold_no_control_characters);
    tcase_add_test(all, a_play_without_a_heading_is_named_after_its_file);
    tcase_add_test(all, an_empty_text_is_a_book_without_plays);
    tcase_add_test(all, an_include_without_a_host_is_an_error);
    tcase_add_loop_test(all, every_answer_of_a_fetch_is_told, 0, ROWS(answers));
    tcase_add_test(all, a_text_past_the_most_is_too_large);
    tcase_add_loop_test(all, options_of_draw_are_checked, 0, ROWS(drawings));
    tcase_add_loop_test(all, options_of_animate_are_checked, 0, ROWS(films));
    tcase_add_test(all, salt_makes_ids_differ);
    tcase_add_test(all, a_writer_that_says_no_ends_it);
    tcase_add_test(all, drawing_twice_gives_the_same);
    tcase_add_loop_test(all, options_of_a_handout_are_checked, 0, ROWS(handouts));
    tcase_add_test(all, the_coachs_and_the_fill_in_sheet_are_made_by_their_word);
    tcase_add_test(all, a_player_by_name_has_pages_where_there_is_a_spot);
    tcase_add_test(all, a_page_with_every_mark_is_made);
    tcase_add_test(all, errors_are_told_by_the_part_of_the_book_they_stand_in);
    tcase_add_test(all, positions_and_dumps_are_checked);
    tcase_add_test(all, a_listing_can_be_ended);
    tcase_add_loop_test(all, words_are_found_as_they_are_said, 0, ROWS(explained));
    tcase_add_test(all, examples_of_the_language_can_be_read);
    tcase_add_test(all, every_status_has_words);
    tcase_add_test(all, what_is_let_go_of_a_large_book_is_made_again);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
