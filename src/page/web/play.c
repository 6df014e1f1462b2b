/* SPDX-License-Identifier: MIT */
/* play: one play as an article of the page. Takes its run, gives head, caution, key, the buttons of
 * its steps and reads, and each of these as a section. */
#include "language/tell/tell.h"
#include "page/web/pages.h"

/* ---- head ---- */

static void put_head(const struct pages *pages, const struct play *play, struct str id)
{
    const struct html *html = &pages->html;
    html_put(html,
             "<header>\n<p class=\"over\"><bdi>%s</bdi> <bdi>%s</bdi></p>\n"
             "<h1 id=\"%s.name\" tabindex=\"-1\"><bdi>%s</bdi></h1>\n",
             pages_club(pages->job), tell_series(html->arena, play), id, play->name);
    if (play->about.size > 0) {
        html_put(html, "<p class=\"about\" dir=\"auto\">%s</p>\n", play->about);
    }
    if (play->call.size > 0) {
        html_put(html, "<p class=\"about\">Call: \xE2\x80\x9C<bdi>%s</bdi>\xE2\x80\x9D</p>\n",
                 play->call);
    }
    if (play->is_drill && play->goal.size > 0) {
        html_put(html, "<p class=\"about\">Goal: <bdi>%s</bdi></p>\n", play->goal);
    }
    html_put(html, "</header>\n");
}

void caution_put(const struct html *html, const struct play *const *plays, size_t count,
                 const char *page)
{
    for (int i = 0; i < TELL_CAUTION_LINES; i++) {
        html_put(html, i > 0 ? " %s" : "%s", tell_page_caution(html->arena, i, page));
    }
    care_put(html, plays, count);
}

void care_put(const struct html *html, const struct play *const *plays, size_t count)
{
    struct tell_care care = tell_care_of(html->arena, plays, count);
    html_put(html, care.young ? " %s" : "", tell_young_caution());
    for (size_t i = 0; i < care.own_count; i++) {
        html_put(html, " <bdi>%s</bdi>", care.own[i]);
    }
}

void care_open(const struct html *html)
{
    html_put(html, "<div class=\"care\" role=\"note\" aria-label=\"Caution\">"
                   "<svg class=\"floor\" width=\"18\" height=\"17\" aria-hidden=\"true\">"
                   "<use href=\"#sign\"/></svg>\n<p>");
}

void care_close(const struct html *html)
{
    html_put(html, "</p></div>\n");
}

/* ---- buttons ---- */

static void put_steps(const struct html *html, const struct play *play, struct str id,
                      const diagram_list *diagrams)
{
    html_put(html, "<p class=\"chips\">\n");
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct diagram *diagram = &diagrams->at[i];
        bool first = i == 0 || diagrams->at[i - 1].step != diagram->step;
        if (first) { /* a step that is all reads begins with the first of them */
            int number = play->steps.at[diagram->step].number;
            html_put(html,
                     "<a href=\"#%s.%s\" data-step=\"%d\"><span><span class=\"of\">Step "
                     "</span>%d</span></a>\n",
                     id, diagram->label, number, number);
        }
    }
    html_put(html, "</p>\n");
}

static void put_read(const struct html *html, const struct play *play, struct str id,
                     const struct diagram *diagram)
{
    const struct branch *branch = &play->steps.at[diagram->step].branches.at[diagram->branch];
    struct str seen = tell_conditions(html->arena, branch);
    bool read = branch->kind == BRANCH_READ, otherwise = read && str_is(seen, "otherwise");
    bool titled = branch->title.size > 0;
    html_put(html, "<a href=\"#%s.%s\"><span>%s ", id, diagram->label, diagram->label);
    html_put(html, otherwise ? titled ? "Otherwise: " : "Otherwise" : "");
    html_put(html, "<bdi>%s</bdi></span></a>\n", read && !otherwise ? seen : branch->title);
}

static void put_reads(const struct html *html, const struct play *play, struct str id,
                      const diagram_list *diagrams)
{
    int open = -1;
    for (size_t i = 0; i < diagrams->count; i++) {
        const struct diagram *diagram = &diagrams->at[i];
        if (diagram->branch < 0) {
            continue;
        }
        if (open != diagram->step) {
            html_put(html, open >= 0 ? "</p>\n" : "");
            const struct step *step = &play->steps.at[diagram->step];
            html_put(html,
                     "<p class=\"chips reads\" data-step=\"%d\"><span class=\"why\">%s</span>\n",
                     step->number, tell_decides_here(html->arena, play, step, BODY_NONE));
            open = diagram->step;
        }
        put_read(html, play, id, diagram);
    }
    html_put(html, open >= 0 ? "</p>\n" : "");
}

static void put_jump(const struct html *html, const struct play *play, struct str id,
                     const diagram_list *diagrams)
{
    if (diagrams->count < 2) {
        return; /* nowhere to go */
    }
    html_put(html, "<nav class=\"jump\" aria-label=\"Steps of %s\">\n", play->name);
    put_steps(html, play, id, diagrams);
    put_reads(html, play, id, diagrams);
    html_put(html, "</nav>\n");
}

void numbers_put(const struct pages *pages, const struct play *play)
{
    const struct html *html = &pages->html;
    html_put(html, "<div class=\"me chips\" role=\"group\" aria-label=\"My number\" hidden>"
                   "<span>My number</span>\n");
    for (int number = 1; number <= (play ? play->players : 5); number++) {
        struct str name = play && pages->job->names ? team_first_name(&pages->job->book->team, play,
                                                                      body_attacker(number))
                                                    : STR("");
        html_put(html, "<button type=\"button\" data-me=\"%d\" aria-pressed=\"false\"><span>%d",
                 number, number);
        html_put(html, name.size > 0 ? " <bdi>%s</bdi>" : "", name);
        html_put(html, "</span></button>\n");
    }
    html_put(html, "</div>\n");
}

/* ---- the article ---- */

static void put_points(const struct html *html, const struct play *play, const point_list *points,
                       struct str name)
{
    if (points->count == 0) {
        return;
    }
    html_put(html, "<div class=\"points\">\n");
    html_put(html, name.size > 0 ? "<p><b>%s</b></p>\n" : "", name);
    for (size_t i = 0; i < points->count; i++) {
        const struct point *point = &points->at[i];
        if (point->player > 0) {
            html_put(html, "<p class=\"p%d\"><b>%d</b>: ", point->player, point->player);
        } else {
            html_put(html, "<p>");
        }
        html_put(html, "<bdi>%m</bdi></p>\n", tell_bold(html->arena, point->text, play->players));
    }
    html_put(html, "</div>\n");
}

void points_put(const struct html *html, const struct play *play, const point_list *points)
{
    put_points(html, play, points, STR(""));
}

void mistakes_put(const struct html *html, const struct play *play, const point_list *mistakes)
{
    put_points(html, play, mistakes, STR("Common mistakes"));
}

static void put_remember(const struct html *html, const struct play *play)
{
    if (play->points.count > 0) {
        html_put(html, "<section class=\"always\"><h2>All the way through</h2>\n");
        points_put(html, play, &play->points);
        html_put(html, "</section>\n");
    }
}

/* The diagram of the segment that this one goes on from. */
static const struct diagram *before_of(const diagram_list *diagrams, const struct diagram *diagram)
{
    const struct segment *before = diagram->segment->before;
    for (size_t i = 0; before && i < diagrams->count; i++) {
        if (diagrams->at[i].segment == before && diagrams->at[i].branch == before->branch) {
            return &diagrams->at[i];
        }
    }
    return NULL;
}

static void put_ways(const struct pages *pages, const struct play *play, struct str id,
                     const diagram_list *diagrams, const struct picture *pictures)
{
    struct cast cast = {0};
    for (size_t i = 0; i < diagrams->count; i++) {
        struct passage passage = passage_of(play, &diagrams->at[i]);
        passage.picture = &pictures[i];
        passage.before = before_of(diagrams, &diagrams->at[i]);
        passage.play_id = id;
        passage_put(&pages->html, &cast, &passage);
    }
    cast_put(&pages->html, &cast);
}

static const struct picture *make_pictures(const struct pages *pages, const diagram_list *diagrams,
                                           unsigned *uses)
{
    const struct team *names = pages->job->names ? &pages->job->book->team : NULL;
    struct picture *pictures = arena_array(pages->html.arena, struct picture, diagrams->count);
    *uses = 0;
    for (size_t i = 0; i < diagrams->count; i++) {
        pictures[i] = picture_make(pages->html.arena, &diagrams->at[i], diagrams, names);
        *uses |= scene_key_uses(pictures[i].still);
    }
    return pictures;
}

void play_put(const struct pages *pages, size_t index, const struct run *run)
{
    const struct html *html = &pages->html;
    const struct play *play = run->play;
    struct str id = pages->ids[index];
    diagram_list diagrams = {0};
    unsigned uses;
    scene_diagrams(html->arena, run, &diagrams);
    const struct picture *pictures = make_pictures(pages, &diagrams, &uses);
    html_put(html, "<article id=\"%s\" aria-labelledby=\"%s.name\">\n", id, id);
    put_head(pages, play, id);
    care_open(html);
    caution_put(html, &play, 1, "page");
    care_close(html);
    html_put(html, "<div class=\"two\">\n<div class=\"left\">\n<div class=\"stage\"></div>\n");
    picture_key(html, uses);
    html_put(html, "</div>\n<div class=\"right\">\n");
    put_jump(html, play, id, &diagrams);
    put_ways(pages, play, id, &diagrams, pictures);
    put_remember(html, play);
    numbers_put(pages, play);
    html_put(html, "</div>\n</div>\n</article>\n");
}
