/* SPDX-License-Identifier: MIT */
/* paper_plan: practices as tables for a browser's own printing: when, how long, what, a picture of
 * its play, points; and what it adds up to. */
#include "language/tell/tell.h"
#include "page/web/pages.h"
#include "page/web/paper.h"

#define WIDE 115.2 /* pt: a picture in a row */

static const struct run *run_of(const struct html *html, const struct paper_job *job,
                                const struct play *play)
{
    for (size_t i = 0; i < job->web.count; i++) {
        if (job->web.plays[i].play == play) {
            return paper_run(html, job, i);
        }
    }
    return NULL; /* it is broken: its name stands there alone */
}

static void put_picture(const struct html *html, const struct paper_job *job,
                        const struct plan_item *item)
{
    const struct run *run = item->play ? run_of(html, job, item->play) : NULL;
    diagram_list diagrams = {0};
    if (run) {
        scene_diagrams(html->arena, run, &diagrams);
    }
    size_t step = item->play ? plan_step(item->play) : 0;
    struct paper_picture picture = {.diagram = scene_first_diagram(&diagrams, step),
                                    .width = WIDE,
                                    .plain = true,
                                    .named =
                                        item->play ? tell_spoken_of(html->arena, item->play) : 0,
                                    .hide_defense = plan_is_undefended(item, step)};
    if (picture.diagram) {
        paper_picture(html, job, &picture);
    }
}

static void put_words(const struct html *html, const struct plan_item *item)
{
    html_put(html, "<td><b><bdi>%s</bdi></b>", plan_what(html->arena, item, plan_isolated));
    html_put(html, "<br><bdi>%s</bdi>", plan_how(html->arena, item, plan_isolated));
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        html_put(html, "<br><b><bdi>%s</bdi></b>: <bdi>%s</bdi> <bdi>%s</bdi>", station->station,
                 plan_what(html->arena, station, plan_isolated),
                 plan_how(html->arena, station, plan_isolated));
    }
    html_put(html, "</td>");
}

static void put_item(const struct html *html, const struct paper_job *job,
                     const struct practice *practice, const struct plan_item *item)
{
    html_put(html, "<tr><td>%s</td><td>%s</td>",
             plan_clock(html, &job->web, practice, item->begins),
             plan_minutes(html->arena, item->minutes));
    put_words(html, item);
    html_put(html, "<td class=\"small\">");
    put_picture(html, job, item);
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        if (station->play) {
            html_put(html, "<p class=\"how\"><bdi>%s</bdi></p>", station->station);
            put_picture(html, job, station);
        }
    }
    html_put(html, "</td><td>");
    plan_points(html, item);
    html_put(html, "</td></tr>\n");
}

static void put_practice(const struct html *html, const struct paper_job *job,
                         const struct practice *practice)
{
    html_put(html,
             "<section class=\"sheet plan\"><header><p class=\"over\"><bdi>%s</bdi> Practice "
             "plan</p><h1><bdi>%s</bdi></h1><p class=\"about\"><bdi>%s</bdi></p></header>\n",
             pages_club(&job->web), practice->title, practice->about);
    html_put(html,
             "<table><thead><tr><th scope=\"col\">Clock</th><th scope=\"col\">Min</th>"
             "<th scope=\"col\">What</th><th scope=\"col\">Diagram</th>"
             "<th scope=\"col\">Points</th></tr></thead>\n<tbody><tr><td></td><td></td>"
             "<td colspan=\"3\"><b>Before:</b> %s</td></tr>\n",
             plan_before());
    for (size_t i = 0; i < practice->items.count; i++) {
        put_item(html, job, practice, &practice->items.at[i]);
    }
    html_put(html,
             "<tr class=\"sum\"><td>%s</td><td>%s</td><td colspan=\"3\">%s</td></tr></tbody>"
             "<tfoot><tr><td colspan=\"5\">",
             plan_clock(html, &job->web, practice, practice->planned),
             plan_minutes(html->arena, practice->planned), plan_sums_told(html->arena, practice));
    html_put(html, "<p class=\"care\">");
    plan_care(html, practice);
    html_put(html, "</p></td></tr></tfoot></table></section>\n");
}

bool paper_plans(const struct html *html, const struct paper_job *job)
{
    bool any = false;
    for (size_t i = 0; job->web.season && i < job->web.season->practices.count; i++) {
        const struct practice *practice = &job->web.season->practices.at[i];
        if (job->title.size == 0 || str_equal_fold(practice->title, job->title)) {
            struct arena_mark mark = arena_mark(html->arena);
            put_practice(html, job, practice);
            arena_release(html->arena, mark);
            any = true;
        }
    }
    return any;
}
