/* SPDX-License-Identifier: MIT */
/* book: the whole file: what a browser is told first, the contents, every play. Takes plays one at
 * a time, so that a book may be as long as a season. */
#include "page/web/pages.h"
#include "page/web/web.h"

/* The page's style and script and the policy that lets these two in, and nothing else. */
#include "book_parts.inc"

struct str pages_club(const struct web_job *job)
{
    return job->book->team.name.size > 0 ? job->book->team.name : job->book->title;
}

struct str pages_title(const struct web_job *job)
{
    struct str title = job->book->title;
    return title.size > 0 && !str_equal_fold(title, job->book->team.name) ? title : STR("Playbook");
}

/* Names that differ only in marks get numbers behind them. */
static const struct str *make_ids(struct arena *arena, const struct web_job *job)
{
    size_t count = job->count + pages_practices(job);
    struct str *ids = arena_array(arena, struct str, count);
    for (size_t i = 0; i < count; i++) {
        struct str slug =
            str_slug(arena, i < job->count ? job->plays[i].play->name
                                           : job->season->practices.at[i - job->count].title);
        ids[i] = slug;
        int number = 1;
        for (size_t k = 0; k < i; k++) {
            if (str_equal(ids[k], ids[i])) {
                ids[i] = str_format(arena, "%.*s-%d", STR_ARG(slug), ++number);
                k = (size_t)-1; /* from the first again */
            }
        }
    }
    return ids;
}

static unsigned courts_of(const struct web_job *job)
{
    unsigned courts = 0;
    for (size_t i = 0; i < job->count; i++) {
        courts |= 1u << job->plays[i].play->rules;
    }
    return courts;
}

static void put_top(const struct pages *pages)
{
    const struct html *html = &pages->html;
    struct str club = pages_club(pages->job);
    html_put(html, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                   "<meta http-equiv=\"Content-Security-Policy\" content=\"" BOOK_POLICY "\">\n"
                   "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                   "<meta name=\"color-scheme\" content=\"light dark\">\n"
                   "<meta name=\"referrer\" content=\"no-referrer\">\n<title>");
    html_put(html, club.size > 0 ? "%s, " : "", club);
    html_put(html, "%s</title>\n<style>", pages_title(pages->job));
    writer_str(html->writer, (struct str){book_style, sizeof book_style});
    html_put(html, "</style>\n<script>");
    writer_str(html->writer, (struct str){book_script, sizeof book_script});
    html_put(html, "</script>\n</head>\n<body>\n");
}

static void put_bottom(const struct pages *pages)
{
    const struct html *html = &pages->html;
    if (pages->job->date_text.size > 0) {
        html_put(html, "<footer><p><bdi>%s</bdi></p></footer>\n", pages->job->date_text);
    }
    html_put(html, "<p class=\"hidden\" role=\"status\" id=\"page.told\"></p>\n</body>\n</html>\n");
}

void web_book_write(struct arena *arena, const struct web_job *job, struct writer *writer)
{
    struct pages pages = {.html = {arena, writer}, .job = job, .ids = make_ids(arena, job)};
    const struct html *html = &pages.html;
    put_top(&pages);
    picture_library(html, courts_of(job));
    html_put(html, "<header class=\"bar\" hidden><a href=\"#\" class=\"home\">All plays</a>"
                   "<button type=\"button\" id=\"page.dark\">Dark</button></header>\n"
                   "<div class=\"book\">\n");
    contents_put(&pages);
    html_put(html, "<main>\n");
    for (size_t i = 0; i < job->count && !writer->failed; i++) {
        struct arena_mark mark = arena_mark(arena);
        const struct run *run = job->plays[i].run;
        play_put(&pages, i, run ? run : job->run_again(job->run_ctx, arena, job->plays[i].play));
        arena_release(arena, mark);
    }
    for (size_t i = 0; i < pages_practices(job); i++) {
        practice_put(&pages, i);
    }
    html_put(html, "</main>\n</div>\n");
    put_bottom(&pages);
}
