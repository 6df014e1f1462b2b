/* SPDX-License-Identifier: MIT */
/* paper: see paper.h. A handout, one player's, the coach's, and cards to be cut apart. */
#include "page/web/paper.h"

#include "judge/check/goal.h"
#include "language/tell/tell.h"
#include "page/web/pages.h"
#include "picture/svg/svg.h"

#define WIDE 237.6   /* pt: a step of a handout */
#define NARROW 152.0 /* pt: a card */

/* ---- what sheets share ---- */

const struct run *paper_run(const struct html *html, const struct paper_job *job, size_t index)
{
    const struct web_play *row = &job->web.plays[index];
    return row->run ? row->run : job->web.run_again(job->web.run_ctx, html->arena, row->play);
}

unsigned paper_picture(const struct html *html, const struct paper_job *job,
                       const struct paper_picture *picture)
{
    const struct diagram *diagram = picture->diagram;
    struct scene_options options = {
        .width = picture->width,
        .theme = THEME_PRINT,
        .accent = picture->reader > 0 ? body_attacker(picture->reader) : BODY_NONE,
        .accent_at = scene_own_task(diagram),
        .caution = picture->caution,
        .hide_defense = picture->hide_defense,
        .plain = picture->plain,
        .order = picture->order,
        .named = picture->named,
        .findings = picture->findings,
        .told_elsewhere = true,
        .names = job->web.names ? &job->web.book->team : NULL,
    };
    const struct scene *scene = scene_make(html->arena, diagram, &options);
    if (picture->findings && scene->scale < SCENE_SMALL) { /* the list beside it has letters */
        options.width *= 1.001 * SCENE_SMALL / scene->scale;
        scene = scene_make(html->arena, diagram, &options);
    }
    struct svg_options how = {.salt = STR("paper"), .fluid = true};
    svg_write(html->arena, scene, &how, html->writer);
    return scene_key_uses(scene);
}

/* ---- plays ---- */

struct leaf { /* a play's pages being written */
    const struct html *html;
    const struct paper_job *job;
    const struct play *play;
    const finding_list *findings; /* NULL: not the coach's */
    unsigned uses;                /* what its key shows */
};

/* Club, play and "Player's sheet for 3, varsity" over the line; the browser repeats it on every
 * page.
 */
static void put_over(const struct leaf *leaf)
{
    const struct html *html = leaf->html;
    const char *sheet = leaf->findings          ? "Coach\xE2\x80\x99s sheet"
                        : leaf->job->reader > 0 ? "Player\xE2\x80\x99s sheet for "
                                                : "Players\xE2\x80\x99 sheet";
    html_put(html, "<p class=\"over\"><bdi>%s</bdi> <b><bdi>%s</bdi></b> <span>%s",
             pages_club(&leaf->job->web), leaf->play->name, str_of(sheet));
    if (!leaf->findings && leaf->job->reader > 0) {
        html_put(html, "%d", leaf->job->reader);
    }
    html_put(html, leaf->play->level_written ? ", %s" : "",
             tell_level(html->arena, leaf->play->level));
    html_put(html, "</span></p>");
}

/* The coach reads besides what the goal's seconds take. */
static void put_goal(const struct leaf *leaf, const struct run *run)
{
    const struct html *html = leaf->html;
    struct str goal = leaf->play->goal;
    struct str measured = leaf->findings ? goal_measured(html->arena, run) : STR("");
    if (goal.size == 0) {
        return;
    }
    html_put(html, "<p class=\"about\">Goal: <bdi>%s</bdi>", goal);
    html_put(html, measured.size > 0 ? "%s %s" : "", tell_stop(goal), measured);
    html_put(html, "</p>");
}

static void put_head(const struct leaf *leaf, const struct run *run)
{
    const struct html *html = leaf->html;
    const struct play *play = leaf->play;
    html_put(html, "<header><h1><bdi>%s</bdi> <small><bdi>%s</bdi></small>", play->name,
             tell_series(html->arena, play));
    if (leaf->job->reader > 0) {
        struct str name = leaf->job->web.names ? team_first_name(&leaf->job->web.book->team, play,
                                                                 body_attacker(leaf->job->reader))
                                               : STR("");
        html_put(html, " <small class=\"whose\">For %d <bdi>%s</bdi></small>", leaf->job->reader,
                 name);
    }
    html_put(html, "</h1>");
    html_put(html, play->about.size > 0 ? "<p class=\"about\">%s</p>" : "", play->about);
    html_put(html, play->call.size > 0 ? "<p class=\"about\">Call: <bdi>%s</bdi></p>" : "",
             play->call);
    put_goal(leaf, run);
    html_put(html, "</header>\n");
}

static void put_findings(const struct leaf *leaf, const struct diagram *diagram)
{
    char letter = 'A';
    for (size_t i = 0; leaf->findings && i < leaf->findings->count; i++) {
        const struct finding *finding = &leaf->findings->at[i];
        if (finding_is_of(finding, diagram->step, diagram->branch)) {
            html_put(leaf->html, "<p class=\"check\"><span class=\"tag\">%s</span> %s</p>\n",
                     (struct str){&letter, 1}, finding->message);
            letter = (char)(letter == 'Z' ? 'A' : letter + 1);
        }
    }
}

static void put_mistakes(const struct leaf *leaf, const point_list *mistakes)
{
    if (leaf->findings) {
        mistakes_put(leaf->html, leaf->play, mistakes);
    }
}

static void put_words(const struct leaf *leaf, const struct passage *way)
{
    const struct html *html = leaf->html;
    if (leaf->job->reader > 0) {
        passage_job(html, way, leaf->job->reader);
    }
    passage_sentences(html, way);
    passage_points(html, way);
    put_mistakes(leaf, way->branch ? &way->branch->mistakes : &way->step->mistakes);
    if (!way->branch && way->step->branches.count > 0) {
        html_put(html, "<p class=\"decides\">%s</p>\n",
                 tell_decides_here(html->arena, leaf->play, way->step,
                                   leaf->job->reader > 0 ? body_attacker(leaf->job->reader)
                                                         : BODY_NONE));
    }
    put_findings(leaf, way->diagram);
}

/* `first`: of its step. On the coach's sheet it goes over both columns, its words beside it and who
 * does what when under it. */
static void put_step(struct leaf *leaf, const struct diagram *diagram, size_t index, bool first)
{
    const struct html *html = leaf->html;
    struct passage way = passage_of(leaf->play, diagram);
    way.on_paper = true;
    way.goes_on = !first;
    struct paper_picture picture = {
        .diagram = diagram, .findings = leaf->findings, .reader = leaf->job->reader, .width = WIDE};
    html_put(html, "<section class=\"step%s\" data-diagram=\"%d\" data-tasks=\"%d\">\n",
             first && leaf->findings ? STR(" whole") : STR(""), (int)index,
             (int)step_task_count(way.step, diagram->branch));
    passage_heading(html, &way);
    html_put(html, "<div class=\"beside\"><div>");
    leaf->uses |= paper_picture(html, leaf->job, &picture);
    html_put(html, "</div><div>");
    put_words(leaf, &way);
    html_put(html, "</div></div></section>\n");
}

/* A table, whose head and foot (the caution) the browser repeats on every page. */
static void put_play(struct leaf *leaf, const struct run *run)
{
    const struct html *html = leaf->html;
    diagram_list diagrams = {0};
    scene_diagrams(html->arena, run, &diagrams);
    html_put(html, "<table class=\"sheet %s\" role=\"presentation\"><thead><tr><td>",
             leaf->findings          ? STR("coach")
             : leaf->job->reader > 0 ? STR("handout own")
                                     : STR("handout"));
    put_over(leaf);
    html_put(html, "</td></tr></thead><tbody><tr><td>\n");
    put_head(leaf, run);
    html_put(html, "<div class=\"steps\">\n");
    for (size_t i = 0; i < diagrams.count; i++) {
        const struct diagram *diagram = &diagrams.at[i];
        put_step(leaf, diagram, i, i == 0 || diagrams.at[i - 1].step != diagram->step);
    }
    html_put(html, "</div>\n");
    points_put(html, leaf->play, &leaf->play->points);
    put_mistakes(leaf, &leaf->play->mistakes);
    html_put(html, "</td></tr></tbody><tfoot><tr><td>");
    paper_key(html, leaf->uses, leaf->play->name);
    html_put(html, "<p class=\"care\">");
    caution_put(html, &leaf->play, 1, "sheet");
    html_put(html, "</p></td></tr></tfoot></table>\n");
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
        struct leaf leaf = {html, job, play, coach ? job->findings[i] : NULL, 0};
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
        .diagram = diagram, .reader = job->reader, .width = NARROW, .plain = true, .order = true};
    html_put(html,
             "<section class=\"card\"><p class=\"over\"><bdi>%s</bdi><b><bdi>%s</bdi></b></p>",
             play->series, play->call);
    html_put(html, "<h2><bdi>%s</bdi> %s</h2>\n", play->name, diagram->label);
    if (diagram->branch >= 0) {
        html_put(html, "<p class=\"when\"><bdi>%s</bdi></p>\n",
                 tell_branch(html->arena, &step->branches.at[diagram->branch]));
    }
    paper_picture(html, job, &picture);
    html_put(html, "<p class=\"brief\">%s</p></section>\n", tell_card_caution());
}

/* Behind the cards: in full what each has in short. */
static void put_cards_caution(const struct html *html, const struct paper_job *job)
{
    const struct play **plays = arena_array(html->arena, const struct play *, job->web.count);
    for (size_t i = 0; i < job->web.count; i++) {
        plays[i] = job->web.plays[i].play;
    }
    html_put(html, "<p class=\"care\">Cut along the dashes. ");
    caution_put(html, plays, job->web.count, "sheet");
    html_put(html, "</p>\n");
}

static bool card(const struct html *html, const struct paper_job *job)
{
    if (job->web.count == 0) {
        return false;
    }
    html_put(html, "<div class=\"sheet\"><div class=\"cards\">\n");
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
    put_cards_caution(html, job);
    html_put(html, "</div>\n");
    return true;
}

const struct paper_row *paper_find(struct str word)
{
    static const struct paper_row rows[] = {
        {"handout", handout},
        {"coach", coach},
        {"card", card},
        {"practice", paper_plans},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (str_is(word, rows[i].word)) {
            return &rows[i];
        }
    }
    return NULL;
}
