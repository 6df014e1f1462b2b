/* SPDX-License-Identifier: MIT */
/* plan: one practice as an article of the page: when, how long, what, with links to its plays, and
 * what the coach says to them; what it adds up to. Takes the season; draws nothing. */
#include "language/tell/tell.h"
#include "page/web/pages.h"

/* ---- what a plan's pages share ---- */

struct str plan_clock(const struct html *html, const struct web_job *job,
                      const struct practice *practice, double minutes)
{
    bool of_day = practice->starts >= 0;
    return plan_time(html->arena, (of_day ? practice->starts : 0) + minutes, of_day && !job->a4);
}

struct str plan_isolated(struct arena *arena, struct str name)
{
    return str_format(arena, "\xE2\x81\xA8%.*s\xE2\x81\xA9", STR_ARG(name));
}

/* Every plan's own lines, and those of its plays, each once. */
void plan_care(const struct html *html, const struct practice *practice)
{
    struct practice_plays plays = practice_plays(html->arena, practice);
    for (int i = 0; i < PLAN_CAUTION_LINES; i++) {
        html_put(html, i > 0 ? " %s" : "%s", plan_caution(i));
    }
    care_put(html, plays.at, plays.count);
}

/* A drill's goal, and what the coach says to the step that matters. */
void plan_points(const struct html *html, const struct plan_item *item)
{
    const struct play *play = item->play;
    if (!play) {
        return;
    }
    html_put(html, play->goal.size > 0 ? "<p><b>Goal</b>: <bdi>%s</bdi></p>" : "", play->goal);
    points_put(html, play, &play->points);
    if (play->steps.count > 0) {
        points_put(html, play, &play->steps.at[plan_step(play)].points);
    }
}

/* ---- the article ---- */

size_t pages_practices(const struct web_job *job)
{
    return job->season ? job->season->practices.count : 0;
}

/* The words, as a link where its play is in the page. */
static void put_what(const struct pages *pages, const struct plan_item *item)
{
    const struct html *html = &pages->html;
    struct str what = plan_what(html->arena, item, plan_isolated);
    for (size_t i = 0; i < pages->job->count; i++) {
        if (item->play && pages->job->plays[i].play == item->play) {
            html_put(html, "<a class=\"go\" href=\"#%s\"><bdi>%s</bdi></a>", pages->ids[i], what);
            return;
        }
    }
    html_put(html, "<p class=\"what\"><bdi>%s</bdi></p>", what);
}

static void put_how(const struct pages *pages, const struct plan_item *item)
{
    struct str how = plan_how(pages->html.arena, item, plan_isolated);
    html_put(&pages->html, how.size > 0 ? "<p class=\"how\"><bdi>%s</bdi></p>" : "", how);
}

static void put_stations(const struct pages *pages, const struct plan_item *item)
{
    const struct html *html = &pages->html;
    html_put(html, item->stations.count > 0 ? "<ul>\n" : "");
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        html_put(html, "<li><p class=\"how\"><bdi>%s</bdi></p>", station->station);
        put_what(pages, station);
        put_how(pages, station);
        html_put(html, "</li>\n");
    }
    html_put(html, item->stations.count > 0 ? "</ul>\n" : "");
}

static void put_item(const struct pages *pages, const struct practice *practice,
                     const struct plan_item *item)
{
    const struct html *html = &pages->html;
    html_put(html, "<tr><td>%s</td><td>%s</td><td>",
             plan_clock(html, pages->job, practice, item->begins),
             plan_minutes(html->arena, item->minutes));
    put_what(pages, item);
    put_how(pages, item);
    put_stations(pages, item);
    plan_points(html, item);
    html_put(html, "</td></tr>\n");
}

static void put_table(const struct pages *pages, const struct practice *practice)
{
    const struct html *html = &pages->html;
    html_put(html, "<table>\n<thead><tr><th scope=\"col\">Clock</th><th scope=\"col\">Min</th>"
                   "<th scope=\"col\">What</th></tr></thead>\n<tbody>\n");
    for (size_t i = 0; i < practice->items.count; i++) {
        put_item(pages, practice, &practice->items.at[i]);
    }
    html_put(html, "<tr class=\"sum\"><td>%s</td><td>%s</td><td>%s</td></tr>\n</tbody>\n</table>\n",
             plan_clock(html, pages->job, practice, practice->planned),
             plan_minutes(html->arena, practice->planned), plan_sums_told(html->arena, practice));
}

void practice_put(const struct pages *pages, size_t index)
{
    const struct html *html = &pages->html;
    const struct practice *practice = &pages->job->season->practices.at[index];
    struct str id = pages->ids[pages->job->count + index];
    html_put(html,
             "<article id=\"%s\" class=\"plan\" aria-labelledby=\"%s.name\">\n<header>\n"
             "<p class=\"over\"><bdi>%s</bdi> <bdi>Practice plan</bdi></p>\n"
             "<h1 id=\"%s.name\" tabindex=\"-1\"><bdi>%s</bdi></h1>\n",
             id, id, pages_club(pages->job), id, practice->title);
    html_put(html, practice->about.size > 0 ? "<p class=\"about\" dir=\"auto\">%s</p>\n" : "",
             practice->about);
    html_put(html, "</header>\n");
    care_open(html);
    plan_care(html, practice);
    care_close(html);
    html_put(html, "<p class=\"first\"><b>Before:</b> %s</p>\n", plan_before());
    put_table(pages, practice);
    html_put(html, "</article>\n");
}
