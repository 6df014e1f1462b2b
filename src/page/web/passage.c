/* SPDX-License-Identifier: MIT */
/* passage: one step or read of a play. Takes its diagram, gives a section of a page: heading,
 * picture, sentences that know their moment, each player's job, points. */
#include "language/tell/tell.h"
#include "page/web/pages.h"

struct passage passage_of(const struct play *play, const struct diagram *diagram)
{
    const struct step *step = &play->steps.at[diagram->step];
    return (struct passage){.play = play,
                            .step = step,
                            .branch =
                                diagram->branch >= 0 ? &step->branches.at[diagram->branch] : NULL,
                            .diagram = diagram};
}

static const struct task *task_of(const struct passage *passage, size_t index)
{
    return step_task(passage->step, passage->diagram->branch, index);
}

/* ---- moments ---- */

/* When a task is seen to begin; a pass leaves the hand. TIME_NEVER: it does not. */
static double task_moment(const struct passage *passage, size_t index)
{
    const struct segment *segment = passage->diagram->segment;
    const struct task *task = task_of(passage, index);
    if (index >= segment->tasks || task->kind == TASK_HOLD) {
        return TIME_NEVER;
    }
    bool throws =
        task->kind == TASK_PASS || task->kind == TASK_EXCHANGE || task->kind == TASK_SHOOT;
    return segment->record[index].time[throws ? MOMENT_RELEASED : MOMENT_STARTED];
}

/* The first moment of any of the sentence's tasks. */
static double sentence_moment(const struct passage *passage, size_t index)
{
    const struct sentence *sentence = task_of(passage, index)->sentence;
    size_t count = step_task_count(passage->step, passage->diagram->branch);
    double first = task_moment(passage, index);
    for (size_t i = 0; sentence && i < count; i++) {
        double moment =
            task_of(passage, i)->sentence == sentence ? task_moment(passage, i) : TIME_NEVER;
        first = moment >= 0 && (first < 0 || moment < first) ? moment : first;
    }
    return first;
}

/* ---- sentences ---- */

static void put_words(const struct html *html, int order, struct str told)
{
    if (order > 0) {
        html_put(html, "<span class=\"n\">%d</span>", order);
    }
    html_put(html, "<span>%m</span>", told);
}

/* Who moves in the sentence of a task, and who is passed to in it: bit 1 << number. */
static unsigned sentence_bodies(const struct passage *passage, size_t index)
{
    const struct task *task = task_of(passage, index);
    size_t count = step_task_count(passage->step, passage->diagram->branch);
    unsigned numbers = 0;
    for (size_t i = 0; i < count; i++) {
        const struct task *other = task_of(passage, i);
        if (other != task && (!task->sentence || other->sentence != task->sentence)) {
            continue;
        }
        const body bodies[] = {other->who, other->kind == TASK_PASS || other->kind == TASK_EXCHANGE
                                               ? other->other
                                               : BODY_NONE};
        for (int k = 0; k < 2; k++) {
            numbers |= body_is_attacker(bodies[k]) ? 1u << body_number(bodies[k]) : 0;
        }
    }
    return numbers;
}

static void open_sentence(const struct html *html, const struct passage *passage, size_t index)
{
    bool before = index < scene_first_task(passage->diagram);
    unsigned numbers = sentence_bodies(passage, index);
    const char *lead = before ? "<li class=\"before p%d" : "<li class=\"p%d";
    for (int number = 1; number <= passage->play->players; number++) {
        if (numbers >> number & 1) {
            html_put(html, lead, number);
            lead = " p%d";
        }
    }
    html_put(html, numbers ? "\">" : before ? "<li class=\"before\">" : "<li>");
}

/* A link to its moment; what only stands still has none. A number is one of its picture's: what led
 * up to a read has none there. */
static void put_sentence(const struct html *html, const struct passage *passage, size_t index,
                         struct str told)
{
    bool before = index < scene_first_task(passage->diagram);
    int order = before ? 0 : task_of(passage, index)->order;
    double moment = sentence_moment(passage, index);
    open_sentence(html, passage, index);
    if (moment < 0 || passage->on_paper) {
        put_words(html, order, told);
    } else {
        html_put(html, "<a href=\"#%s.%s,%ns\" data-at=\"%n\">", passage->play_id,
                 passage->diagram->label, moment, moment);
        put_words(html, order, told);
        html_put(html, "</a>");
    }
    html_put(html, "</li>\n");
}

/* In their order; those that have no place in it (who stays where) last. */
void passage_sentences(const struct html *html, const struct passage *passage)
{
    int branch = passage->diagram->branch;
    size_t count = step_task_count(passage->step, branch);
    bool any = false;
    for (int pass = 0; pass < 2; pass++) {
        for (size_t i = 0; i < count; i++) {
            bool told_before = passage->goes_on && i < scene_first_task(passage->diagram);
            if (told_before || (task_of(passage, i)->order == 0) != (pass == 1)) {
                continue;
            }
            struct str told = (any ? tell_task : tell_task_first)(html->arena, passage->play,
                                                                  passage->step, branch, i);
            if (told.size > 0) {
                html_put(html, any ? "" : "<ol>\n");
                put_sentence(html, passage, i, told);
                any = true;
            }
        }
    }
    html_put(html, any ? "</ol>\n" : "");
}

/* A page has everybody's, and shows that of the one who looks. */
void passage_job(const struct html *html, const struct passage *passage, int number)
{
    int branch = passage->diagram->branch;
    body who = body_attacker(number);
    bool again = scene_begins_again(passage->diagram);
    struct str told = (passage->on_paper ? tell_job_once : tell_job)(
        html->arena, passage->play, passage->step, branch, who, again);
    if (told.size > 0) {
        html_put(html, passage->on_paper ? "<p class=\"job\">" : "<p class=\"job\" data-me=\"%d\">",
                 number);
        if (passage->play->is_drill) { /* where a number is a spot that all take */
            html_put(html, "<b>When you are %d</b> %m</p>\n", number, told);
        } else {
            html_put(html, "<b>Your job</b> %m</p>\n", told);
        }
    }
}

/* ---- the section ---- */

/* Does a read's title begin with what somebody does, "x3 trails: Curl"? */
static bool says_who(const struct passage *passage, struct str title)
{
    bool read = passage->branch && passage->branch->kind == BRANCH_READ;
    bool defender = title.size > 1 && title.at[0] == 'x';
    char first = title.size > 0 ? title.at[defender] : ' ';
    return read && passage->branch->conditions.count > 0 && first >= '0' && first <= '9';
}

void passage_heading(const struct html *html, const struct passage *passage)
{
    struct str title =
        passage->branch ? tell_branch(html->arena, passage->branch) : passage->step->title;
    html_put(html, "<h2 tabindex=\"-1\">");
    if (title.size > 0) {
        html_put(html, "<span class=\"label\">%s</span> %s<bdi>%s</bdi>", passage->diagram->label,
                 says_who(passage, title) ? STR("If ") : STR(""), title);
    } else {
        html_put(html, "Step %s", passage->diagram->label);
    }
    struct str after = scene_after(html->arena, passage->diagram);
    html_put(html, after.size > 0 ? " <small>%s</small>" : "", after);
    html_put(html, "</h2>\n");
}

static void put_picture(const struct html *html, const struct passage *passage)
{
    struct str told = tell_diagram(html->arena, passage->play, passage->step,
                                   passage->diagram->branch, scene_first_task(passage->diagram));
    html_put(html, "<div class=\"picture\" role=\"img\" aria-label=\"%s. %s\">\n",
             passage->picture->still->title, told);
    picture_still(html, passage->picture, passage->play->rules);
    html_put(html, "</div>\n");
}

/* What it goes on from, and when on that one's clock; whether the play goes on by itself here. */
static void put_order(const struct html *html, const struct passage *passage)
{
    const struct segment *segment = passage->diagram->segment;
    if (passage->before) {
        html_put(html, " data-before=\"%s.%s\" data-begins=\"%n\"", passage->play_id,
                 passage->before->label, segment->begins);
    }
    html_put(html, passage->branch ? " data-read" : "");
    html_put(html, segment->main ? " data-main" : "");
}

void passage_points(const struct html *html, const struct passage *passage)
{
    const struct branch *branch = passage->branch;
    const struct step *step = passage->step;
    points_put(html, passage->play, branch ? &branch->points : &step->points);
}

static void put_decides(const struct html *html, const struct passage *passage)
{
    const struct step *step = passage->step;
    if (!passage->branch && step->branches.count > 0) {
        html_put(html, "<p class=\"decides\"><b>%s</b></p>\n",
                 tell_decides_here(html->arena, passage->play, step, BODY_NONE));
    }
}

void passage_put(const struct html *html, struct cast *cast, const struct passage *passage)
{
    html_put(html, "<section class=\"way\" id=\"%s.%s\" data-step=\"%d\" data-seconds=\"%n\"",
             passage->play_id, passage->diagram->label, passage->step->number,
             passage->picture->moving->duration);
    put_order(html, passage);
    html_put(html, " data-film=\"");
    film_put(html, cast, passage->picture->moving);
    html_put(html, "\">\n");
    passage_heading(html, passage);
    put_picture(html, passage);
    html_put(html, "<div class=\"words\">\n");
    for (int number = 1; number <= passage->play->players; number++) {
        passage_job(html, passage, number);
    }
    passage_sentences(html, passage);
    passage_points(html, passage);
    put_decides(html, passage);
    html_put(html, "</div>\n</section>\n");
}
