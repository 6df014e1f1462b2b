/* SPDX-License-Identifier: MIT */
/* caption: the sentence under a diagram, and the whole diagram in words. */
#include "language/tell/teller.h"

enum { LIMIT_SUBJECTS = 12 };

/* "4 stays" and, in the same way through the step, "4 goes to the wing as 1 drives": of the two
 * only the going is told. */
static bool stays_and_goes(const struct teller *t, const struct task *stays)
{
    bool goes = false;
    for (size_t i = 0; stays->stay && i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        bool moves =
            !task->stay && !task->supplied && task->kind != TASK_HOLD && task->kind != TASK_PASS;
        goes = goes || (moves && task->who == stays->who);
    }
    return goes;
}

static bool is_told(const struct teller *t, const struct task *task)
{
    return !task->supplied && !stays_and_goes(t, task);
}

static bool first_of_sentence(const struct teller *t, size_t index)
{
    const struct task *task = step_task(t->step, t->branch, index);
    if (!is_told(t, task) || task->group == 0) {
        return false;
    }
    if (index == 0) {
        return true;
    }
    for (size_t i = index; i-- > 0;) {
        const struct task *before = step_task(t->step, t->branch, i);
        if (is_told(t, before)) {
            return before->group != task->group;
        }
    }
    return true;
}

static bool same_sentence(const struct teller *t, size_t index, int group)
{
    const struct task *task = step_task(t->step, t->branch, index);
    return task->group == group && is_told(t, task);
}

/* "3", "3 and 4", "1, 2 and 4"; how many. */
static int say_subjects(const struct teller *t, struct strbuf *out, size_t index)
{
    body who[LIMIT_SUBJECTS];
    int count = 0;
    int group = step_task(t->step, t->branch, index)->group;
    for (size_t i = index; i < step_task_count(t->step, t->branch); i++) {
        if (same_sentence(t, i, group) && count < LIMIT_SUBJECTS) {
            who[count++] = step_task(t->step, t->branch, i)->who;
        }
    }
    for (int i = 0; i < count; i++) {
        strbuf_text(out, i == 0 ? "" : i == count - 1 ? " and " : ", ");
        say_body(t, out, who[i]);
    }
    return count;
}

/* The play's first screen says how a screen is set; one that is slipped is none. */
static bool first_screen(const struct teller *t, size_t index)
{
    for (size_t i = 0; i < index; i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->kind == TASK_SCREEN && !is_slipped(t, task)) {
            return false;
        }
    }
    for (size_t s = 0; s < t->play->steps.count && &t->play->steps.at[s] != t->step; s++) {
        const struct step *before = &t->play->steps.at[s];
        for (size_t i = 0; i < before->tasks.count; i++) {
            if (before->tasks.at[i].kind == TASK_SCREEN) {
                return false;
            }
        }
    }
    return true;
}

/* `first`: no sentence stands before it, so that it cannot begin with "Then". */
static void say_caption(const struct teller *t, struct strbuf *out, size_t index, bool first)
{
    const struct task *task = step_task(t->step, t->branch, index);
    struct strbuf when;
    strbuf_init(&when, t->arena);
    say_when(t, &when, task);
    bool after = str_is(strbuf_str(&when), "after that");
    bool then = after && !first;
    if (then) {
        strbuf_text(out, "Then ");
    }
    struct strbuf subjects;
    strbuf_init(&subjects, t->arena);
    int count = say_subjects(t, &subjects, index);
    if (then || body_is_defender(task->who)) { /* x4 is called so wherever it stands */
        strbuf_add(out, strbuf_str(&subjects));
    } else {
        say_upper(out, strbuf_str(&subjects));
    }
    strbuf_char(out, ' ');
    say_task(t, out, task, count > 1 ? FORM_BARE : FORM_THIRD);
    if (when.size && !after) {
        bool about = str_starts(strbuf_str(&when), "about");
        strbuf_text(out, about ? ", " : " "); /* not "waits 1 s about two seconds after" */
        strbuf_add(out, strbuf_str(&when));
    } else if (!when.size && receiver_moves(t, index)) {
        strbuf_text(out, " as ");
        say_body(t, out, task->other);
        strbuf_text(out, " gets there");
    }
    strbuf_char(out, '.');
    if (task->kind == TASK_SCREEN && !task->goal.measured && !is_slipped(t, task) &&
        first_screen(t, index)) {
        say_template(t, out, task, " Look for {x}, not for a spot on the floor.|");
    }
}

static struct str caption_of(struct teller t, size_t index, bool first)
{
    struct strbuf out;
    strbuf_init(&out, t.arena);
    if (index < step_task_count(t.step, t.branch) && first_of_sentence(&t, index)) {
        say_caption(&t, &out, index, first);
    }
    return strbuf_str(&out);
}

struct str tell_task(struct arena *arena, const struct play *play, const struct step *step,
                     int branch, size_t index)
{
    return caption_of(teller_to_all(arena, play, step, branch, false), index, false);
}

struct str tell_task_first(struct arena *arena, const struct play *play, const struct step *step,
                           int branch, size_t index)
{
    return caption_of(teller_to_all(arena, play, step, branch, false), index, true);
}

bool tell_says_when(struct arena *arena, const struct play *play, const struct step *step,
                    int branch, size_t index)
{
    struct teller t = teller_to_all(arena, play, step, branch, false);
    struct strbuf when;
    strbuf_init(&when, arena);
    say_when(&t, &when, step_task(step, branch, index));
    return when.size > 0;
}

struct str tell_strip(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size; i++) {
        if (text.at[i] != TELL_BOLD && text.at[i] != TELL_PLAIN) {
            strbuf_char(&out, text.at[i]);
        }
    }
    return strbuf_str(&out);
}

struct str tell_conditions(struct arena *arena, const struct branch *branch)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    branch_conditions_print(&out, branch, BODY_NONE);
    return strbuf_str(&out);
}

struct str tell_branch(struct arena *arena, const struct branch *branch)
{
    struct str title = branch->title;
    if (branch->kind == BRANCH_OPTION || branch->conditions.count == 0) {
        return title;
    }
    struct str seen = tell_strip(arena, tell_conditions(arena, branch));
    if (title.size == 0 || str_equal_fold(title, seen)) {
        title = seen;
    } else {
        title = str_format(arena, "%.*s: %.*s", STR_ARG(seen), STR_ARG(title));
    }
    bool defender =
        title.size > 1 && title.at[0] == 'x' && title.at[1] >= '0' && title.at[1] <= '9';
    if (!defender && title.size > 0 && title.at[0] >= 'a' && title.at[0] <= 'z') {
        title =
            str_format(arena, "%c%.*s", title.at[0] - 'a' + 'A', (int)title.size - 1, title.at + 1);
    }
    return title;
}

struct str tell_after(struct arena *arena, const struct play *play, const struct step *step)
{
    size_t index = (size_t)(step - play->steps.at);
    if (index == 0 || step->after_step < 0) {
        return STR("");
    }
    const struct step *before = &play->steps.at[step->after_step];
    struct strbuf out;
    strbuf_init(&out, arena);
    if (before->branches.count > 1 && step->after_branch >= 0) {
        strbuf_print(&out, "%s %d%c", step->begins.count ? "in" : "after", before->number,
                     branch_letter(before, step->after_branch));
    }
    struct teller t = teller_to_all(arena, play, before, step->after_branch, true);
    for (size_t i = 0; i < step->begins.count; i++) {
        strbuf_text(&out, out.size ? ", " : "");
        say_begins(&t, &out, &step->begins.at[i]);
    }
    return strbuf_str(&out);
}

/* ---- the diagram ---- */

static void say_place_of(const struct teller *t, struct strbuf *out, body b)
{
    struct goal goal = goal_at(stands_at(t->play, t->step, b));
    goal.spot = near_spot(t->play, goal.at, &goal.side);
    say_at(t, out, &goal);
}

static void say_floor(const struct teller *t, struct strbuf *out, body holder)
{
    const char *before = "";
    for (body b = 0; b <= BODY_COACH; b++) {
        if (!t->play->start[b].on_floor || b == holder) {
            continue;
        }
        strbuf_text(out, before);
        struct strbuf who;
        strbuf_init(&who, t->arena);
        say_body(t, &who, b);
        if (*before == '\0') {
            say_upper(out, strbuf_str(&who));
            strbuf_text(out, " is");
        } else {
            strbuf_add(out, strbuf_str(&who));
        }
        say_place_of(t, out, b);
        before = ", ";
    }
    if (*before) {
        strbuf_text(out, ". ");
    }
}

static void say_holder(const struct teller *t, struct strbuf *out, body holder)
{
    if (holder == BODY_NONE) {
        return;
    }
    struct strbuf who;
    strbuf_init(&who, t->arena);
    say_body(t, &who, holder);
    say_upper(out, strbuf_str(&who));
    bool throws = t->play->throw_in && &t->play->steps.at[0] == t->step && holder == t->play->ball;
    strbuf_text(out, throws ? " has the ball out of bounds" : " has the ball");
    if (!throws) {
        say_place_of(t, out, holder);
    }
    strbuf_text(out, ". ");
}

static void say_beginning(const struct teller *t, struct strbuf *out)
{
    body holder = holds_ball(t->play, t->step);
    struct str after = tell_after(t->arena, t->play, t->step);
    if (after.size) {
        say_upper(out, after);
        strbuf_text(out, ". ");
    }
    say_holder(t, out, holder);
    say_floor(t, out, holder);
}

/* The sentences of tasks from `first` up to `end`. */
static void say_sentences(const struct teller *t, struct strbuf *out, size_t first, size_t end)
{
    for (size_t i = first; i < end; i++) {
        if (first_of_sentence(t, i)) {
            say_caption(t, out, i, false);
            strbuf_char(out, ' ');
        }
    }
}

/* What is done before task `drawn`, the first that is seen, is told as such. */
static void say_movements(const struct teller *t, struct strbuf *out, size_t drawn)
{
    const struct step *step = t->step;
    int branch = t->branch;
    if (drawn > 0) {
        strbuf_text(out, "Before this picture: ");
        say_sentences(t, out, 0, drawn);
    }
    if (branch >= 0 && (size_t)branch < step->branches.count &&
        step->branches.at[branch].conditions.count) {
        strbuf_text(out, "The read: ");
        branch_conditions_print(out, &step->branches.at[branch], BODY_NONE);
        strbuf_text(out, ". ");
    } else if (drawn > 0) {
        strbuf_text(out, "Then: ");
    }
    say_sentences(t, out, drawn, step_task_count(step, branch));
    if (out->size && out->at[out->size - 1] == ' ') {
        out->at[--out->size] = '\0';
    }
}

struct str tell_diagram(struct arena *arena, const struct play *play, const struct step *step,
                        int branch, size_t drawn)
{
    struct teller t = teller_to_all(arena, play, step, branch, true);
    struct strbuf out;
    strbuf_init(&out, arena);
    say_beginning(&t, &out);
    say_movements(&t, &out, drawn);
    return strbuf_str(&out);
}

struct str tell_diagram_again(struct arena *arena, const struct play *play, const struct step *step,
                              int branch)
{
    struct teller t = teller_to_all(arena, play, step, branch, true);
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_text(&out, "From the same start. ");
    say_movements(&t, &out, 0);
    return strbuf_str(&out);
}
