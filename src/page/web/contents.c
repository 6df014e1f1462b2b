/* SPDX-License-Identifier: MIT */
/* contents: the list of plays, by chapter. Takes the book, gives links and what a search looks at.
 */
#include "language/tell/tell.h"
#include "page/web/pages.h"

/* The words by which a play is found besides its name and call. */
static void put_found_by(const struct html *html, const struct play *play)
{
    html_put(html, "%s", tell_series(html->arena, play));
    for (size_t i = 0; i < play->tags.count; i++) {
        html_put(html, " %s", play->tags.at[i]);
    }
    if (play->formation >= 0) {
        html_put(html, " %s", str_of(formation_at((size_t)play->formation)->word));
    }
}

static void put_link(const struct pages *pages, size_t index)
{
    const struct html *html = &pages->html;
    const struct play *play = pages->job->plays[index].play;
    html_put(html, "<li><a href=\"#%s\" data-find=\"", pages->ids[index]);
    put_found_by(html, play);
    html_put(html, "\"><bdi>%s</bdi>", play->name);
    if (play->call.size > 0) {
        html_put(html, " <span>\xE2\x80\x9C<bdi>%s</bdi>\xE2\x80\x9D</span>", play->call);
    }
    html_put(html, "</a></li>\n");
}

static void open_chapter(const struct html *html, const struct playbook *book, size_t chapter)
{
    bool titled = chapter < book->chapters.count;
    html_put(html, "<section>\n");
    html_put(html, titled ? "<h2 dir=\"auto\">%s</h2>\n" : "",
             titled ? book->chapters.at[chapter].title : STR(""));
    html_put(html, "<ul>\n");
}

static void put_practices(const struct pages *pages)
{
    const struct html *html = &pages->html;
    size_t count = pages_practices(pages->job);
    html_put(html, count > 0 ? "<section>\n<h2>Practices</h2>\n<ul>\n" : "");
    for (size_t i = 0; i < count; i++) {
        html_put(html, "<li><a href=\"#%s\" data-find=\"practice plan\"><bdi>%s</bdi></a></li>\n",
                 pages->ids[pages->job->count + i], pages->job->season->practices.at[i].title);
    }
    html_put(html, count > 0 ? "</ul></section>\n" : "");
}

void contents_put(const struct pages *pages)
{
    const struct html *html = &pages->html;
    const struct web_job *job = pages->job;
    size_t open = 0;
    html_put(html,
             "<nav class=\"contents\" aria-label=\"Plays\">\n<p class=\"over\"><bdi>%s</bdi></p>\n"
             "<h1 tabindex=\"-1\" dir=\"auto\">%s</h1>\n"
             "<p class=\"search\" hidden><label for=\"page.find\">Find a play</label>"
             "<input id=\"page.find\" type=\"search\" autocomplete=\"off\"></p>\n",
             pages_club(job), pages_title(job));
    numbers_put(pages, NULL);
    for (size_t i = 0; i < job->count; i++) {
        size_t chapter = playbook_chapter(job->book, job->plays[i].play);
        if (i == 0 || chapter != open) {
            html_put(html, i > 0 ? "</ul></section>\n" : "");
            open_chapter(html, job->book, chapter);
            open = chapter;
        }
        put_link(pages, i);
    }
    html_put(html, "</ul></section>\n");
    put_practices(pages);
    html_put(html, "<p class=\"none\" hidden>No play has those words.</p>\n"
                   "</nav>\n");
}
