/* SPDX-License-Identifier: MIT */
#include "page/web/web.h"
#include "floor/sim/sim.h"
#include "language/tell/tell.h"
#include "page/web/html.h"
#include "picture/scene/scene.h"
#include "resolved.h"
#include "suite.h"
#include "written.h"

#include <string.h>

/* Not in the arena: a page gives back what it took for each play. */
static char bytes[1 << 20];
static size_t bytes_count;

static bool keep(void *ctx, const char *at, size_t size)
{
    (void)ctx;
    ck_assert_uint_lt(bytes_count + size, sizeof bytes);
    memcpy(bytes + bytes_count, at, size);
    bytes_count += size;
    return true;
}

/* ---- text ---- */

static struct html open_html(struct writer *writer)
{
    bytes_count = 0;
    *writer = (struct writer){.write = keep};
    return (struct html){&arena, writer};
}

static const char *so_far(void)
{
    bytes[bytes_count] = '\0';
    return bytes;
}

START_TEST(what_a_coach_writes_is_text_and_never_a_tag)
{
    struct writer writer;
    struct html html = open_html(&writer);
    html_put(&html, "<p title=\"%s\">%s</p>", STR("\"><script>"), STR("a < b & c \x07"));
    ck_assert_str_eq(so_far(), "<p title=\"&quot;&gt;&lt;script&gt;\">a &lt; b &amp; c </p>");
}
END_TEST

START_TEST(numbers_are_bold_where_they_are_marked)
{
    struct writer writer;
    struct html html = open_html(&writer);
    html_put(&html, "%m|%m|%d %n",
             STR("\x01"
                 "3\x02 cuts off \x01"
                 "5\x02"),
             STR("<b>"), 12, 2.345);
    ck_assert_str_eq(so_far(), "<b>3</b> cuts off <b>5</b>|&lt;b&gt;|12 2.35");
}
END_TEST

/* ---- pages ---- */

#define PLAY(name)                                                                                 \
    "play \"" name "\"\n"                                                                          \
    "  start five-out\n"                                                                           \
    "  ball 1\n"                                                                                   \
    "  defense man\n"                                                                              \
    "  step \"Swing\"\n"                                                                           \
    "    1 passes to 2\n"                                                                          \
    "    after 1 passes, 3 back cuts to the rim\n"                                                 \
    "    4 stays\n"

static struct resolved resolved;

static struct web_job job_of(const char *text)
{
    resolve_text(&arena, &resolved, STR("book"), str_of(text));
    ck_assert_uint_eq(resolved.diags.errors, 0);
    size_t count = resolved.book->plays.count;
    struct web_play *plays = arena_array(&arena, struct web_play, count);
    for (size_t i = 0; i < count; i++) {
        const struct play *play = &resolved.book->plays.at[i];
        plays[i].play = play;
        plays[i].run = sim_run(&arena, &resolved.sources, play, &resolved.diags);
    }
    return (struct web_job){
        .book = resolved.book, .plays = plays, .count = count, .date_text = STR("")};
}

static const char *page_of(const struct web_job *job)
{
    bytes_count = 0;
    struct writer writer = {.write = keep};
    web_book_write(&arena, job, &writer);
    ck_assert(!writer.failed);
    return so_far();
}

START_TEST(every_play_has_an_address_of_its_own)
{
    struct web_job job = job_of(PLAY("Tollgate") PLAY("Toll-gate") PLAY("Toll, gate!"));
    const char *page = page_of(&job);
    has(page, "<article id=\"tollgate\"");
    has(page, "<article id=\"toll-gate\"");
    has(page, "<article id=\"toll-gate-2\"");
    ck_assert_uint_eq(count_of(page, "<article "), 3);
    has(page, "<a href=\"#toll-gate-2\" ");
    has(page, "id=\"toll-gate-2.1\"");
}
END_TEST

START_TEST(a_sentence_knows_its_moment_and_who_stays_has_none)
{
    struct web_job job = job_of(PLAY("Tollgate"));
    const struct segment *segment = job.plays[0].run->segments.at[0];
    const char *page = page_of(&job);
    double cut = segment->record[1].time[MOMENT_STARTED];
    ck_assert_double_gt(cut, 0);
    struct strbuf wanted;
    strbuf_init(&wanted, &arena);
    strbuf_text(&wanted, "<a href=\"#tollgate.1,");
    strbuf_number(&wanted, cut, 2);
    strbuf_text(&wanted, "s\" data-at=\"");
    strbuf_number(&wanted, cut, 2);
    strbuf_text(&wanted, "\"><span class=\"n\">2</span>");
    strbuf_char(&wanted, '\0');
    has(page, wanted.at);
    ck_assert_uint_eq(count_of(page, "data-at="), 2);
    has(page, "<li class=\"p4\"><span><b>4</b> stays put.");
    has(page, "<li class=\"p1 p2\"><a href=\"#tollgate.1,"); /* who passes, and to whom */
}
END_TEST

START_TEST(a_court_stands_there_once_for_all_its_diagrams)
{
    struct web_job job = job_of(PLAY("Tollgate") PLAY("Millrace"));
    const char *page = page_of(&job);
    ck_assert_uint_eq(count_of(page, "<g id=\"court.high-school\">"), 1);
    ck_assert_uint_eq(count_of(page, "href=\"#court.high-school\""), 2);
    has_not(page, "<g id=\"court.fiba\">");
}
END_TEST

START_TEST(the_caution_is_on_every_play_with_the_coachs_own_line_behind_it)
{
    struct web_job job = job_of("play \"Plain\"\n"
                                "  caution \"Tape the <loose> board.\"\n"
                                "  start five-out\n"
                                "  step\n"
                                "    2 cuts to the rim\n" PLAY("Millrace"));
    const char *page = page_of(&job);
    ck_assert_uint_eq(count_of(page, "Screens: feet still, elbows in;"), 2);
    ck_assert_uint_eq(count_of(page, "come before this page."), 2);
    ck_assert_uint_eq(count_of(page, "Tape the &lt;loose&gt; board."), 1);
}
END_TEST

START_TEST(names_stand_there_only_when_asked_for)
{
    struct web_job job =
        job_of("team \"Kites\"\n  1 \"Imke Dorn\"\n  2 \"Safi Okoro\"\n" PLAY("Tollgate"));
    has_not(page_of(&job), "Imke");
    job.names = true;
    const char *page = page_of(&job);
    has(page, "<span>1 <bdi>Imke</bdi></span></button>");
    has(page, ">Safi</text>");
}
END_TEST

START_TEST(each_job_is_told_to_whom_it_belongs)
{
    struct web_job job = job_of(PLAY("Tollgate"));
    const char *page = page_of(&job);
    ck_assert_uint_eq(count_of(page, "<p class=\"job\" data-me="), 5);
    has(page, "<p class=\"job\" data-me=\"3\"><b>Your job</b> ");
}
END_TEST

START_TEST(a_failed_write_is_remembered_and_stops)
{
    struct web_job job = job_of(PLAY("Tollgate") PLAY("Millrace"));
    int calls = 0;
    struct writer writer = {.write = written_refuse, .ctx = &calls};
    web_book_write(&arena, &job, &writer);
    ck_assert(writer.failed);
    ck_assert_int_eq(calls, 1);
}
END_TEST

/* ---- style ---- */

static void palette_in(const char *style, const char *from, const char *to, enum theme theme)
{
    const char *begin = strstr(style, from);
    ck_assert_ptr_nonnull(begin);
    const char *end = strstr(begin, to);
    ck_assert_ptr_nonnull(end);
    struct str block = str_copy(&arena, (struct str){begin, (size_t)(end - begin)});
    for (int role = ROLE_NONE + 1; role < ROLE_COUNT; role++) {
        struct str wanted = str_format(&arena, "--%s: #%06x;", scene_role_word((enum role)role),
                                       theme_row(theme)->rgb[role]);
        has(block.at, text_of(wanted));
    }
}

START_TEST(the_style_has_the_colors_of_the_themes)
{
    struct web_job job = job_of(PLAY("Tollgate"));
    const char *text = page_of(&job);
    palette_in(text, ":root {", "}", THEME_SCREEN);
    palette_in(text, ":root[data-look=dark] {", "}", THEME_DARK);
    palette_in(text, ":root:not([data-look=light]) {", "}", THEME_DARK);
    palette_in(text, "@media print", "}", THEME_PRINT);
}
END_TEST

START_TEST(the_style_paints_every_role_that_a_diagram_has)
{
    struct web_job job = job_of(PLAY("Tollgate"));
    const char *page = page_of(&job);
    const char *end = strstr(page, "</style>");
    ck_assert_ptr_nonnull(end);
    const char *text = str_copy(&arena, (struct str){page, (size_t)(end - page)}).at;
    int painted = 0;
    for (int role = ROLE_NONE + 1; role < ROLE_COUNT; role++) {
        for (int kind = 0; kind < 2; kind++) {
            struct str class =
                str_format(&arena, "%c-%s", kind ? 's' : 'f', scene_role_word((enum role)role));
            bool last = strstr(page, text_of(str_format(&arena, "%.*s\"", STR_ARG(class))));
            bool before = strstr(page, text_of(str_format(&arena, "%.*s ", STR_ARG(class))));
            if (last || before) {
                has(text, text_of(str_format(&arena, ".%.*s", STR_ARG(class))));
                painted++;
            }
        }
    }
    ck_assert_int_ge(painted, 10);
}
END_TEST

/* ---- practices ---- */

static struct season season_of(const struct play *play, const struct play *elsewhere)
{
    struct season season = {0};
    struct practice practice = {.title = STR("Tollgate"), .starts = 17 * 60 + 30, .planned = 30};
    struct plan_item items[] = {
        {.minutes = 10, .content = CONTENT_PLAY, .text = play->name, .play = play, .contact = true},
        {.begins = 10,
         .minutes = 20,
         .content = CONTENT_PLAY,
         .text = STR("Gone"),
         .play = elsewhere},
    };
    for (size_t i = 0; i < 2; i++) {
        VEC_PUSH(&arena, &practice.items, items[i]);
    }
    VEC_PUSH(&arena, &season.practices, practice);
    return season;
}

START_TEST(a_practice_is_told_by_the_clock_with_links_to_the_plays_that_are_there)
{
    struct web_job job = job_of(PLAY("Tollgate"));
    struct play elsewhere = {.name = STR("Gone"), .players = 5};
    struct season season = season_of(job.plays[0].play, &elsewhere);
    has_not(page_of(&job), "Practices");
    job.season = &season;
    const char *page = page_of(&job);
    has(page, "<h2>Practices</h2>\n<ul>\n<li><a href=\"#tollgate-2\"");
    has(page, "<article id=\"tollgate-2\" class=\"plan\"");
    has(page, "<tr><td>5:30</td><td>10</td><td><a class=\"go\" href=\"#tollgate\">");
    has(page, "<tr><td>5:40</td><td>20</td><td><p class=\"what\">");
    job.a4 = true;
    has(page_of(&job), "<tr><td>17:40</td><td>20</td>");
}
END_TEST

START_TEST(a_step_tells_what_it_goes_on_from_and_a_read_what_it_is_an_answer_to)
{
    struct web_job job = job_of("play \"Millrace\"\n  start five-out\n  defense man\n  step\n"
                                "    1 passes to 2\n    mistake \"1 stands and watches.\"\n"
                                "    read x3 trails \"Curl\"\n      3 cuts to the rim\n"
                                "    read otherwise \"Stay\"\n      3 stays\n"
                                "  step\n    2 passes to 1\n");
    const char *page = page_of(&job);
    has(page, "id=\"millrace.1a\" data-step=\"1\"");
    has(page, " data-before=\"millrace.1a\" data-begins=\"");
    ck_assert_uint_eq(count_of(page, " data-before="), 1);
    has(page, "<span class=\"label\">1a</span> If <bdi>x3 trails: Curl</bdi>");
    has(page, "<span class=\"label\">1b</span> <bdi>Otherwise: Stay</bdi>");
    ck_assert_ptr_null(strstr(page, "stands and watches")); /* a mistake is for the coach's sheet */
    ck_assert_ptr_nonnull(strstr(strstr(page, "class=\"job\""), "<ol>")); /* the job comes first */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("web");
    TCase *all = tcase_create("web");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, what_a_coach_writes_is_text_and_never_a_tag);
    tcase_add_test(all, numbers_are_bold_where_they_are_marked);
    tcase_add_test(all, every_play_has_an_address_of_its_own);
    tcase_add_test(all, a_sentence_knows_its_moment_and_who_stays_has_none);
    tcase_add_test(all, a_court_stands_there_once_for_all_its_diagrams);
    tcase_add_test(all, the_caution_is_on_every_play_with_the_coachs_own_line_behind_it);
    tcase_add_test(all, names_stand_there_only_when_asked_for);
    tcase_add_test(all, each_job_is_told_to_whom_it_belongs);
    tcase_add_test(all, a_failed_write_is_remembered_and_stops);
    tcase_add_test(all, the_style_has_the_colors_of_the_themes);
    tcase_add_test(all, the_style_paints_every_role_that_a_diagram_has);
    tcase_add_test(all, a_practice_is_told_by_the_clock_with_links_to_the_plays_that_are_there);
    tcase_add_test(all, a_step_tells_what_it_goes_on_from_and_a_read_what_it_is_an_answer_to);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
