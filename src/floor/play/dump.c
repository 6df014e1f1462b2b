/* SPDX-License-Identifier: MIT */
/* dump: a play as text, for goldens and for looking. Feet with one decimal. */
#include "floor/play/play.h"

#include "base/real.h"

static void feet(struct strbuf *out, struct vec2 at)
{
    strbuf_fixed(out, at.x / FEET, 1);
    strbuf_text(out, ", ");
    strbuf_fixed(out, at.y / FEET, 1);
}

static void spot(struct strbuf *out, enum spot name, enum side side)
{
    static const char *const sides[] = {
        [SIDE_NONE] = "", [SIDE_LEFT] = "left ", [SIDE_RIGHT] = "right "};
    strbuf_print(out, "%s%s", side <= SIDE_RIGHT ? sides[side] : "", spot_row(name)->word);
}

static void who(struct strbuf *out, body b)
{
    body_print(out, b);
}

static void goal_dump(struct strbuf *out, const struct goal *goal)
{
    static const char *const directions[] = {
        [ABOVE] = "above",     [BELOW] = "below",     [INSIDE] = "inside",
        [OUTSIDE] = "outside", [LEFT_OF] = "left of", [RIGHT_OF] = "right of"};
    static const char *const kinds[] = {
        [GOAL_NONE] = "none",      [GOAL_POINT] = "point",
        [GOAL_BODY] = "where",     [GOAL_BESIDE] = "beside",
        [GOAL_BEHIND] = "behind",  [GOAL_LINE] = "nearest of",
        [GOAL_MIX] = "mix",        [GOAL_OFFSET] = "offset",
        [GOAL_LANE] = "lane",      [GOAL_FRONT_OF_RIM] = "front of the rim",
        [GOAL_OUTSIDE] = "outside"};
    strbuf_text(out, kinds[goal->kind]);
    if (goal->kind == GOAL_POINT) {
        strbuf_text(out, " ");
        feet(out, goal->at);
    }
    if (goal->kind == GOAL_OFFSET) {
        strbuf_text(out, " ");
        strbuf_fixed(out, goal->length / FEET, 1);
        strbuf_print(out, " ft %s", directions[goal->direction]);
    }
    if (goal->kind == GOAL_MIX) {
        strbuf_text(out, " ");
        strbuf_fixed(out, goal->fraction, 2);
    }
    if (goal->who != BODY_NONE) {
        strbuf_text(out, " of ");
        who(out, goal->who);
    }
    if (goal->spot != SPOT_COUNT) {
        strbuf_text(out, goal->backcourt ? " [backcourt " : " [");
        spot(out, goal->spot, goal->side);
        strbuf_text(out, "]");
    }
    const struct goal *const inner[] = {goal->a, goal->b};
    for (size_t i = 0; i < 2; i++) {
        if (inner[i]) {
            strbuf_text(out, " (");
            goal_dump(out, inner[i]);
            strbuf_text(out, ")");
        }
    }
}

static void wait_dump(struct strbuf *out, const struct wait *wait, const char *word)
{
    static const char *const moments[MOMENT_COUNT] = {"started", "released", "set",
                                                      "caught",  "used",     "arrived"};
    static const char *const states[] = {[EVENT_OPEN] = " is open",
                                         [EVENT_COVERED] = " is covered",
                                         [EVENT_DENIED] = " is denied",
                                         [EVENT_PAST] = " is past ",
                                         [EVENT_HAS_BALL] = " has the ball"};
    strbuf_print(out, "\n      %s ", word);
    switch (wait->kind) {
    case WAIT_TASK:
        strbuf_print(out, "task %d%s %s", wait->task, wait->before ? " of the step before" : "",
                     moments[wait->moment]);
        break;
    case WAIT_CLOCK:
        strbuf_text(out, "the clock's");
        break;
    case WAIT_ALL_BEFORE:
        strbuf_text(out, "all before is done");
        break;
    case WAIT_LEAVES:
        who(out, wait->who);
        strbuf_text(out, " has left ");
        feet(out, wait->where);
        break;
    case WAIT_NEARS:
        who(out, wait->who);
        strbuf_text(out, " nears ");
        who(out, wait->other);
        break;
    case WAIT_STATE:
        who(out, wait->who);
        strbuf_text(out, states[wait->state]);
        if (wait->state == EVENT_PAST) {
            who(out, wait->other);
        }
        break;
    case WAIT_DEED:
        who(out, wait->who);
        strbuf_print(out, " %s", verb_row(wait->verb)->words);
        if (wait->other != BODY_NONE) {
            strbuf_char(out, ' ');
            who(out, wait->other);
        }
        strbuf_print(out, " %s", moments[wait->moment]);
        break;
    }
    if (wait->delay > 0) {
        strbuf_text(out, " ");
        strbuf_fixed(out, wait->delay, 1);
        strbuf_text(out, " s");
    }
    strbuf_text(out, wait->written ? " (written)" : " (verb)");
}

static void flag(struct strbuf *out, bool on, const char *word)
{
    if (on) {
        strbuf_print(out, ", %s", word);
    }
}

static void number(struct strbuf *out, double value, const char *before, const char *after)
{
    if (value > 0) {
        strbuf_text(out, before);
        strbuf_fixed(out, value, 1);
        strbuf_text(out, after);
    }
}

static void task_flags(struct strbuf *out, const struct task *task)
{
    static const char *const efforts[] = {"walk", "jog", "run", "cut", "hard", "sprint"};
    static const char *const shapes[] = {"straight", "curl",  "fade",  "v",  "l",
                                         "back",     "setup", "drive", "at", "seal"};
    static const char *const passes[] = {"", "bounce", "skip", "lob", "overhead", "chest"};
    static const char *const screens[] = {"",      "away",  "down", "back",
                                          "cross", "flare", "ball", "double"};
    strbuf_print(out, ", %s", efforts[task->effort]);
    flag(out, task->pass != PASS_PLAIN, passes[task->pass]);
    flag(out, task->screen != SCREEN_PLAIN, screens[task->screen]);
    if (task->shape != SHAPE_STRAIGHT) {
        strbuf_print(out, ", %s", shapes[task->shape]);
    }
    number(out, task->taking, ", taking ", " s");
    number(out, task->duration, ", for ", " s");
    number(out, task->length / FEET, ", length ", " ft");
    number(out, task->gap / FEET, ", gap ", " ft");
    flag(out, task->early, "early");
    flag(out, task->drive_baseline, "baseline");
    flag(out, task->drive_middle, "middle");
    flag(out, task->drive_across < 0, "left");
    flag(out, task->drive_across > 0, "right");
    flag(out, task->slip, "slip");
    flag(out, task->stay, "stay");
    flag(out, task->cuts_short, "cuts short");
    flag(out, task->supplied, "supplied");
    if (task->screen_task >= 0) {
        strbuf_print(out, ", screen of task %d", task->screen_task);
    }
}

static void task_dump(struct strbuf *out, size_t index, const struct task *task)
{
    static const char *const kinds[] = {"move",  "hold",   "carry", "pass", "exchange",
                                        "shoot", "screen", "use",   "guard"};
    static const char *const paths[] = {"", "around", "over", "under", "past", "along"};
    strbuf_print(out, "    %d (%d) ", (int)index, task->order);
    who(out, task->who);
    strbuf_print(out, " %s: %s", kinds[task->kind], verb_row(task->verb)->words);
    const body others[] = {task->other, task->other2, task->on};
    for (size_t i = 0; i < 3; i++) {
        if (others[i] != BODY_NONE) {
            strbuf_text(out, i == 0 ? " " : i == 1 ? " and " : " on ");
            who(out, others[i]);
        }
    }
    if (task->goal.kind != GOAL_NONE) {
        strbuf_text(out, task->goal_written ? " to " : " by rule to ");
        goal_dump(out, &task->goal);
    }
    if (task->path != PATH_NONE) {
        strbuf_print(out, ", %s ", paths[task->path]);
        if (task->path_who != BODY_NONE) {
            who(out, task->path_who);
        } else {
            goal_dump(out, &task->path_goal);
        }
    }
    if (task->faces) {
        strbuf_text(out, task->faces_back ? ", back to " : ", facing ");
        goal_dump(out, &task->face);
    }
    task_flags(out, task);
    strbuf_text(out, "; planned ");
    feet(out, task->planned);
    for (size_t i = 0; i < task->waits.count; i++) {
        const struct wait *wait = &task->waits.at[i];
        wait_dump(out, wait, wait->fixed ? "exactly" : "not before");
    }
    if (task->has_until) {
        wait_dump(out, &task->until, "until");
    }
    strbuf_text(out, "\n");
}

static void points_dump(struct strbuf *out, const point_list *list, const char *word)
{
    for (size_t i = 0; i < list->count; i++) {
        const struct point *point = &list->at[i];
        strbuf_print(out, "    %s", word);
        if (point->player) {
            strbuf_print(out, " %d", point->player);
        }
        if (point->word.size) {
            strbuf_print(out, " %.*s", STR_ARG(point->word));
        }
        strbuf_print(out, " \"%.*s\"\n", STR_ARG(point->text));
    }
}

static void step_dump(struct strbuf *out, const struct step *step)
{
    strbuf_print(out, "  step %d \"%.*s\"", step->number, STR_ARG(step->title));
    if (step->after_step >= 0 && step->after_step != step->number - 2) {
        strbuf_print(out, " after step %d", step->after_step + 1);
    }
    if (step->after_branch >= 0) {
        strbuf_print(out, " after branch %d", step->after_branch);
    }
    for (size_t i = 0; i < step->begins.count; i++) {
        wait_dump(out, &step->begins.at[i], "begins");
    }
    strbuf_text(out, "\n");
    for (size_t i = 0; i < step->tasks.count; i++) {
        task_dump(out, i, &step->tasks.at[i]);
    }
    points_dump(out, &step->points, "point");
    points_dump(out, &step->mistakes, "mistake");
    points_dump(out, &step->charts, "chart");
    points_dump(out, &step->accepts, "accept");
    for (size_t b = 0; b < step->branches.count; b++) {
        const struct branch *branch = &step->branches.at[b];
        strbuf_print(out, "   %s ", branch->kind == BRANCH_READ ? "read" : "option");
        branch_conditions_print(out, branch, BODY_NONE);
        strbuf_print(out, " \"%.*s\"%s\n", STR_ARG(branch->title),
                     branch->continues ? " continue here" : "");
        for (size_t i = 0; i < branch->tasks.count; i++) {
            task_dump(out, step->tasks.count + i, &branch->tasks.at[i]);
        }
        points_dump(out, &branch->points, "point");
        points_dump(out, &branch->mistakes, "mistake");
        points_dump(out, &branch->charts, "chart");
        points_dump(out, &branch->accepts, "accept");
    }
}

static void texts_dump(struct strbuf *out, const struct play *play)
{
    const struct {
        const char *word;
        struct str text;
    } texts[] = {{"about", play->about},  {"call", play->call}, {"series", play->series},
                 {"score", play->score},  {"goal", play->goal}, {"chapter", play->chapter},
                 {"lineup", play->lineup}};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        if (texts[i].text.size) {
            strbuf_print(out, "  %s \"%.*s\"\n", texts[i].word, STR_ARG(texts[i].text));
        }
    }
    for (size_t i = 0; i < play->tags.count; i++) {
        strbuf_print(out, "  tag %.*s\n", STR_ARG(play->tags.at[i]));
    }
    for (size_t i = 0; i < play->cautions.count; i++) {
        strbuf_print(out, "  caution \"%.*s\"\n", STR_ARG(play->cautions.at[i]));
    }
    for (size_t i = 0; i < play->limits.count; i++) {
        strbuf_print(out, "  limit %.*s ", STR_ARG(play->limits.at[i].check));
        strbuf_number(out, play->limits.at[i].value, 3);
        strbuf_text(out, "\n");
    }
}

static void start_dump(struct strbuf *out, const struct play *play)
{
    for (body b = 0; b < BODY_COUNT; b++) {
        const struct start_body *start = &play->start[b];
        if (!start->on_floor || (body_is_defender(b) && !start->placed)) {
            continue;
        }
        strbuf_text(out, "  ");
        who(out, b);
        strbuf_text(out, " at ");
        feet(out, start->at);
        if (start->spot != SPOT_COUNT) {
            strbuf_text(out, " [");
            spot(out, start->spot, start->side);
            strbuf_text(out, "]");
        }
        flag(out, play->ball == b, "ball");
        flag(out, play->ball == b && play->throw_in, "out of bounds");
        strbuf_text(out, "\n");
    }
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        body man = play->guards[x];
        bool told = play->zone != ZONE_NONE || body_number(man) != body_number(x);
        if (man != BODY_NONE && told) {
            strbuf_print(out, "  x%d guards %d\n", body_number(x), body_number(man));
        }
    }
    for (size_t i = 0; i < play->cones.count; i++) {
        strbuf_print(out, "  cone %c at ", 'A' + (int)i);
        feet(out, play->cones.at[i]);
        strbuf_text(out, "\n");
    }
    for (size_t i = 0; i < play->lines.count; i++) {
        strbuf_text(out, "  line behind ");
        who(out, play->lines.at[i]);
        strbuf_text(out, "\n");
    }
}

void play_dump(struct strbuf *out, const struct play *play)
{
    static const char *const styles[] = {"gap", "deny", "sag"};
    strbuf_print(out, "%s \"%.*s\" %s, %s", play->is_drill ? "drill" : "play", STR_ARG(play->name),
                 play->court->word, play->speed->word);
    if (play->defense == DEFENSE_MAN) {
        strbuf_print(out, ", man %s", styles[play->man]);
    } else if (play->defense != DEFENSE_NONE) {
        strbuf_print(out, ", %s",
                     play->zone != ZONE_NONE ? zone_row(play->zone)->setting : "press man");
    }
    flag(out, play->mirrored, "mirrored");
    flag(out, play->full_floor, "full floor");
    flag(out, play->metres, "metres");
    flag(out, play->a4, "a4");
    flag(out, play->basket_bottom, "basket bottom");
    flag(out, play->broken, "broken");
    if (play->number) {
        strbuf_print(out, ", number %d", play->number);
    }
    number(out, play->clock, ", clock ", " s");
    strbuf_text(out, "\n");
    texts_dump(out, play);
    start_dump(out, play);
    points_dump(out, &play->points, "point");
    points_dump(out, &play->mistakes, "mistake");
    points_dump(out, &play->accepts, "accept");
    for (size_t i = 0; i < play->steps.count; i++) {
        step_dump(out, &play->steps.at[i]);
    }
}
