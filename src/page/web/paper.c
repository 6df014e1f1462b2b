/* SPDX-License-Identifier: MIT */
/* paper: see paper.h. A handout, one player's, the coach's, and cards to be cut apart. */
#include "page/web/paper.h"

#include "language/tell/tell.h"
#include "page/web/pages.h"
#include "picture/svg/svg.h"

#define WIDE 237.6   /* pt: a step of a handout */
#define NARROW 152.0 /* pt: a step of a coach's sheet, a card */

/* ---- what sheets share ---- */

const struct run *paper_run(const struct html *html, const struct paper_job *job, size_t index)
{
    const struct web_play *row = &job->web.plays[index];
    return row->run ? row->run : job->web.run_again(job->web.run_ctx, html->arena, row->play);
}

void paper_picture(const struct html *html, const struct paper_job *job,
                   const struct paper_picture *picture)
{
    struct scene_options options = {
        .width = picture->width,
        .theme = THEME_PRINT,
        .accent = picture->reader > 0 ? body_attacker(picture->reader) : BODY_NONE,
        .caution = picture->caution,
        .hide_defense = picture->hide_defense,
        .plain = picture->plain,
        .findings = picture->findings,
        .told_elsewhere = true,
        .names = job->web.names ? &job->web.book->team : NULL,
    };
    const struct scene *scene = scene_make(html->arena, picture->diagram, &options);
    struct svg_options how = {.salt = STR("paper"), .fluid = true};
    svg_write(html->arena, scene, &how, html->writer);
}

void paper_open(const struct html *html, const char *kind)
{
    html_put(html, "<table class=\"sheet %s\" role=\"presentation\"><tbody><tr><td>\n",
             str_of(kind));
}

void paper_care(const struct html *html, const struct play *const *plays, size_t count, bool plan)
{
    struct tell_care care = tell_care_of(html->arena, plays, count);
    html_put(html, "<p class=\"care\">");
    for (int i = 0; i < TELL_CAUTION_LINES; i++) {
        html_put(html, "%s ",
                 plan ? tell_plan_caution(i) : tell_page_caution(html->arena, i, "sheet"));
    }
    html_put(html, care.young ? "%s" : "", tell_young_caution());
    for (size_t i = 0; i < care.own_count; i++) {
        html_put(html, " <bdi>%s</bdi>", care.own[i]);
    }
    html_put(html, "</p>");
}

void paper_close(const struct html *html, const struct play *play)
{
    html_put(html, "</td></tr></tbody><tfoot><tr><td>");
    paper_care(html, &play, 1, false);
    html_put(html, "</td></tr></tfoot></table>\n");
}

/* ---- plays ---- */

struct leaf { /* a play's pages being written */
    const struct html *html;
    const struct paper_job *job;
    const struct play *play;
    const finding_list *findings; /* NULL: not the coach's */
};

static void put_head(const struct leaf *leaf)
{
    const struct html *html = leaf->html;
    const struct play *play = leaf->play;
    html_put(html,
             "<header><p class=\"over\"><bdi>%s</bdi> <bdi>%s</bdi></p><h1><bdi>%s</bdi></h1>",
             pages_club(&leaf->job->web), tell_series(html->arena, play), play->name);
    if (leaf->job->reader > 0) {
        struct str name = leaf->job->web.names ? team_first_name(&leaf->job->web.book->team, play,
                                                                 body_attacker(leaf->job->reader))
                                               : STR("");
        html_put(html, "<p class=\"whose\">For %d <bdi>%s</bdi></p>", leaf->job->reader, name);
    }
    html_put(html, play->about.size > 0 ? "<p class=\"about\">%s</p>" : "", play->about);
    html_put(html, play->call.size > 0 ? "<p class=\"about\">Call: <bdi>%s</bdi></p>" : "",
             play->call);
    html_put(html, play->goal.size > 0 ? "<p class=\"about\">Goal: <bdi>%s</bdi></p>" : "",
             play->goal);
    html_put(html, "</header>\n");
}

static void put_job(const struct leaf *leaf, const struct passage *way)
{
    int reader = leaf->job->reader;
    if (reader > 0) {
        struct str told = tell_job(leaf->html->arena, way->play, way->step, way->diagram->branch,
                                   body_attacker(reader));
        html_put(leaf->html, told.size > 0 ? "<p class=\"job\"><b>Your job</b> %m</p>\n" : "",
                 told);
    }
}

static void put_findings(const struct leaf *leaf, const struct diagram *diagram)
{
    char letter = 'A';
    for (size_t i = 0; leaf->findings && i < leaf->findings->count; i++) {
        const struct finding *finding = &leaf->findings->at[i];
        if (finding->accepted || finding->step != diagram->step ||
            finding->branch != diagram->branch) {
            continue;
        }
        html_put(leaf->html, "<p class=\"check\"><span class=\"tag\">%s</span> %s</p>\n",
                 (struct str){&letter, 1}, finding->message);
        letter = (char)(letter == 'Z' ? 'A' : letter + 1);
    }
}

static void put_step(const struct leaf *leaf, const struct diagram *diagram, size_t index)
{
    const struct html *html = leaf->html;
    struct passage way = {.play = leaf->play,
                          .step = &leaf->play->steps.at[diagram->step],
                          .diagram = diagram,
                          .on_paper = true};
    way.branch = diagram->branch >= 0 ? &way.step->branches.at[diagram->branch] : NULL;
    bool coach = leaf->findings != NULL;
    struct paper_picture picture = {.diagram = diagram,
                                    .findings = leaf->findings,
                                    .reader = leaf->job->reader,
                                    .width = coach ? NARROW : WIDE};
    html_put(html, "<section class=\"step\" data-diagram=\"%d\">\n", (int)index);
    passage_heading(html, &way);
    paper_picture(html, leaf->job, &picture);
    put_job(leaf, &way);
    passage_sentences(html, &way);
    points_put(html, leaf->play, way.branch ? &way.branch->points : &way.step->points);
    points_put(html, leaf->play, way.branch ? &way.branch->mistakes : &way.step->mistakes);
    put_findings(leaf, diagram);
    html_put(html, "</section>\n");
}

static void put_play(const struct leaf *leaf, const struct run *run)
{
    const struct html *html = leaf->html;
    diagram_list diagrams = {0};
    scene_diagrams(html->arena, run, &diagrams);
    paper_open(html, leaf->findings ? "coach" : "handout");
    put_head(leaf);
    html_put(html, "<div class=\"steps\">\n");
    for (size_t i = 0; i < diagrams.count; i++) {
        put_step(leaf, &diagrams.at[i], i);
    }
    html_put(html, "</div>\n");
    points_put(html, leaf->play, &leaf->play->points);
    paper_close(html, leaf->play);
}

static bool put_plays(const struct html *html, const struct paper_job *job, bool coach)
{
    bool any = false;
    for (size_t i = 0; i < job->web.count && !html->writer->failed; i++) {
        const struct play *play = job->web.plays[i].play;
        if (job->reader > play->players) {
            continue; /* nobody has that number in it */
        }
        struct arena_mark mark = arena_mark(html->arena);
        struct leaf leaf = {html, job, play, coach ? job->findings[i] : NULL};
        put_play(&leaf, paper_run(html, job, i));
        arena_release(html->arena, mark);
        any = true;
    }
    return any;
}

static bool handout(const struct html *html, const struct paper_job *job)
{
    return put_plays(html, job, false);
}

static bool coach(const struct html *html, const struct paper_job *job)
{
    struct paper_job everybody = *job;
    everybody.reader = 0;
    return put_plays(html, &everybody, true);
}

/* ---- cards ---- */

static void put_card(const struct html *html, const struct paper_job *job, const struct play *play,
                     const struct diagram *diagram)
{
    const struct step *step = &play->steps.at[diagram->step];
    struct paper_picture picture = {
        .diagram = diagram, .reader = job->reader, .width = NARROW, .caution = true};
    html_put(html,
             "<section class=\"card\"><p class=\"over\"><bdi>%s</bdi><b><bdi>%s</bdi></b></p>",
             play->series, play->call);
    html_put(html, "<h2><bdi>%s</bdi> %s", play->name, diagram->label);
    if (diagram->branch >= 0) {
        html_put(html, " <bdi>%s</bdi>",
                 tell_branch(html->arena, &step->branches.at[diagram->branch]));
    }
    html_put(html, "</h2>\n");
    paper_picture(html, job, &picture);
    html_put(html, "</section>\n");
}

static bool card(const struct html *html, const struct paper_job *job)
{
    if (job->web.count == 0) {
        return false;
    }
    html_put(html, "<div class=\"sheet cards\">\n");
    for (size_t i = 0; i < job->web.count && !html->writer->failed; i++) {
        struct arena_mark mark = arena_mark(html->arena);
        diagram_list diagrams = {0};
        scene_diagrams(html->arena, paper_run(html, job, i), &diagrams);
        for (size_t k = 0; k < diagrams.count; k++) {
            put_card(html, job, job->web.plays[i].play, &diagrams.at[k]);
        }
        arena_release(html->arena, mark);
    }
    html_put(html, "</div>\n");
    return true;
}

const struct paper_row *paper_find(struct str word)
{
    static const struct paper_row rows[] = {
        {"handout", "for players: steps, sentences, points; for one of them the own job", handout},
        {"coach", "the same with what the checks found", coach},
        {"card", "small pictures to be cut apart", card},
        {"practice", "the plan of a practice", paper_plans},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (str_is(word, rows[i].word)) {
            return &rows[i];
        }
    }
    return NULL;
}
