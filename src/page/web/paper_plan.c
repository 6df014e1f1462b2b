/* SPDX-License-Identifier: MIT */
/* paper_plan: practices as tables for a browser's own printing: when, how long, what, a picture of
 * its play, points; and what it adds up to. */
#include "base/vec.h"
#include "language/tell/tell.h"
#include "page/web/pages.h"
#include "page/web/paper.h"

#define WIDE 115.2 /* pt: a picture in a row */

/* "5:30" on letter paper, "17:30" on A4; "0:30" where the practice does not say when it starts. */
static struct str time_told(const struct html *html, const struct paper_job *job,
                            const struct practice *practice, double minutes)
{
    bool of_day = practice->starts >= 0;
    return plan_time(html->arena, (of_day ? practice->starts : 0) + minutes, of_day && !job->a4);
}

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
    if (diagrams.count > 0) {
        struct paper_picture picture = {
            .diagram = &diagrams.at[0],
            .width = WIDE,
            .plain = true,
            .hide_defense = plan_is_undefended(item),
        };
        paper_picture(html, job, &picture);
    }
}

static struct str isolated(struct arena *arena, struct str name)
{
    return str_format(arena, "\xE2\x81\xA8%.*s\xE2\x81\xA9", STR_ARG(name));
}

static void put_words(const struct html *html, const struct plan_item *item)
{
    html_put(html, "<td><b><bdi>%s</bdi></b>", plan_what(html->arena, item, isolated));
    html_put(html, "<br><bdi>%s</bdi>", plan_how(html->arena, item, isolated));
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        html_put(html, "<br><b><bdi>%s</bdi></b>: <bdi>%s</bdi> <bdi>%s</bdi>", station->station,
                 plan_what(html->arena, station, isolated),
                 plan_how(html->arena, station, isolated));
    }
    html_put(html, "</td>");
}

static void put_item(const struct html *html, const struct paper_job *job,
                     const struct practice *practice, const struct plan_item *item)
{
    html_put(html, "<tr><td>%s</td><td>%s</td>", time_told(html, job, practice, item->begins),
             plan_minutes(html->arena, item->minutes));
    put_words(html, item);
    html_put(html, "<td class=\"small\">");
    put_picture(html, job, item);
    html_put(html, "</td><td>");
    if (item->play) {
        html_put(html, item->play->goal.size > 0 ? "<p><b>Goal</b>: <bdi>%s</bdi></p>" : "",
                 item->play->goal);
        points_put(html, item->play, &item->play->points);
        if (item->play->steps.count > 0) {
            points_put(html, item->play, &item->play->steps.at[0].points);
        }
    }
    html_put(html, "</td></tr>\n");
}

/* Every plan's own lines, and those of its plays, each once. */
static void put_caution(const struct html *html, const struct practice *practice)
{
    VEC(const struct play *) plays = {0};
    for (size_t i = 0; i < practice->items.count; i++) {
        if (practice->items.at[i].play) {
            VEC_PUSH(html->arena, &plays, practice->items.at[i].play);
        }
    }
    struct tell_care care = tell_care_of(html->arena, plays.at, plays.count);
    html_put(html, "<p class=\"care\">");
    for (int i = 0; i < PLAN_CAUTION_LINES; i++) {
        html_put(html, i > 0 ? " %s" : "%s", plan_caution(i));
    }
    html_put(html, care.young ? " %s" : "", tell_young_caution());
    for (size_t i = 0; i < care.own_count; i++) {
        html_put(html, " <bdi>%s</bdi>", care.own[i]);
    }
    html_put(html, "</p>");
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
             time_told(html, job, practice, practice->planned),
             plan_minutes(html->arena, practice->planned), plan_sums_told(html->arena, practice));
    put_caution(html, practice);
    html_put(html, "</td></tr></tfoot></table></section>\n");
}

bool paper_plans(const struct html *html, const struct paper_job *job)
{
    bool any = false;
    for (size_t i = 0; job->season && i < job->season->practices.count; i++) {
        const struct practice *practice = &job->season->practices.at[i];
        if (job->title.size == 0 || str_equal_fold(practice->title, job->title)) {
            struct arena_mark mark = arena_mark(html->arena);
            put_practice(html, job, practice);
            arena_release(html->arena, mark);
            any = true;
        }
    }
    return any;
}
