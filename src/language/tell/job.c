/* SPDX-License-Identifier: MIT */
/* job: what one player does in a step, said to that player: what to do, whom to look at and when;
 * one who stands still is told why. */
#include "language/tell/teller.h"

/* ---- what one does ---- */

/* "when 5 is still, " for one who uses a screen, "as 5 slips, " where none comes; else what the
 * task waits for. `first`: no sentence stands before it that "after that" could mean. */
static void say_start(const struct teller *t, struct strbuf *out, const struct task *task,
                      bool first)
{
    struct strbuf when;
    strbuf_init(&when, t->arena);
    say_when(t, &when, task);
    if (first && str_is(strbuf_str(&when), "after that")) {
        strbuf_text(out, "when the others have done their part, ");
    } else if (when.size) {
        strbuf_add(out, strbuf_str(&when));
        strbuf_text(out, ", ");
    } else if (task->kind == TASK_USE && is_slipped(t, task)) {
        strbuf_text(out, "as ");
        say_body(t, out, task->other);
        strbuf_text(out, " slips, ");
    } else if (task->kind == TASK_USE && task->screen_task >= 0 && !task->early) {
        strbuf_text(out, "when ");
        say_body(t, out, task->other);
        if (task->other2 != BODY_NONE) {
            strbuf_text(out, " and ");
            say_body(t, out, task->other2);
        }
        strbuf_text(out, task->other2 == BODY_NONE ? " is still, " : " are still, ");
    }
}

static bool says_it_last(const struct teller *t, const struct task *task)
{
    struct strbuf when;
    strbuf_init(&when, t->arena);
    say_when(t, &when, task);
    return str_is(strbuf_str(&when), "on the catch");
}

/* What one is told besides is told once. */
static bool is_said(const struct strbuf *out, struct str rest)
{
    for (size_t i = 0; i + rest.size <= out->size; i++) {
        if (str_equal((struct str){out->at + i, rest.size}, rest)) {
            return true;
        }
    }
    return false;
}

static void say_own(const struct teller *t, struct strbuf *out, size_t index)
{
    const struct task *task = step_task(t->step, t->branch, index);
    struct strbuf sentence = sentence_of(t);
    bool last = says_it_last(t, task);
    if (!last) {
        say_start(t, &sentence, task, out->size == 0);
    }
    bool waits = sentence.size > 0;
    say_task(t, &sentence, task, FORM_BARE);
    if (last) {
        strbuf_text(&sentence, " on the catch");
    }
    if (!waits && receiver_moves(t, index)) {
        strbuf_text(&sentence, " as ");
        say_body(t, &sentence, task->other);
        strbuf_text(&sentence, " gets there");
    }
    if (task->supplied) {
        strbuf_text(&sentence, " to meet the pass");
    }
    add_sentence(t, out, &sentence);
    if (task->kind == TASK_SCREEN && !task->goal.measured && !is_slipped(t, task)) {
        say_template(t, out, task, "Look for {x}, not for a spot on the floor. |");
    }
    struct strbuf rest = sentence_of(t);
    say_template(t, &rest, task, task_more(t, task));
    if (rest.size && !task->supplied && !is_said(out, strbuf_str(&rest))) {
        say_upper(out, strbuf_str(&rest));
        strbuf_char(out, ' ');
    }
    if (task->verb == VERB_POSTS_UP || task->verb == VERB_SEALS) {
        say_lane(t, out, task->planned);
    }
}

/* ---- what is done for one ---- */

static bool moved_before(const struct teller *t, size_t index)
{
    for (size_t i = 0; i < index; i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        bool moves = task->kind == TASK_MOVE || task->kind == TASK_USE || task->kind == TASK_CARRY;
        if (task->who == t->you && moves) {
            return true;
        }
    }
    return false;
}

/* What one does behind task `index`; NULL: nothing. */
static const struct task *own_next(const struct teller *t, size_t index)
{
    for (size_t i = index + 1; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->who == t->you) {
            return task;
        }
    }
    return NULL;
}

/* Behind half court the rim near by is one's own. */
static void say_facing(const struct teller *t, struct strbuf *out, size_t index, bool moved)
{
    bool back = stands_now(t, index).y > t->play->court->half_court;
    if (back) {
        strbuf_text(out, moved ? ", catch it and turn up the floor" : " and turn up the floor");
    } else {
        strbuf_text(out, moved ? " and catch it facing the rim" : " and face the rim");
    }
}

/* How to catch it is told where the next thing one does does not tell it. */
static void say_thrown(const struct teller *t, struct strbuf *out, size_t index)
{
    const struct task *pass = step_task(t->step, t->branch, index), *next = own_next(t, index);
    bool moved = moved_before(t, index), shoots = next && next->kind == TASK_SHOOT;
    if (!moved && shoots) {
        strbuf_text(out, "be ready");
        say_at(t, out, &pass->goal);
        strbuf_text(out, " for the pass from ");
        say_body(t, out, pass->who);
        return;
    }
    strbuf_text(out, moved ? "look for the pass from " : "catch the pass from ");
    say_body(t, out, pass->who);
    if (!moved) {
        say_at(t, out, &pass->goal);
    }
    if (!shoots && !(next && next->verb == VERB_FACES)) {
        say_facing(t, out, index, moved);
    }
}

static void say_catch(const struct teller *t, struct strbuf *out, size_t index)
{
    const struct task *pass = step_task(t->step, t->branch, index);
    struct strbuf sentence = sentence_of(t);
    if (pass->kind == TASK_EXCHANGE) {
        strbuf_text(&sentence, "take the ball from ");
        say_body(t, &sentence, pass->who);
        strbuf_text(&sentence, ". Run close by, shoulder to shoulder");
    } else {
        say_thrown(t, &sentence, index);
    }
    add_sentence(t, out, &sentence);
}

static bool uses_screen(const struct teller *t, size_t index)
{
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        body by = step_task(t->step, t->branch, index)->who;
        if (task->who == t->you && task->kind == TASK_USE &&
            (task->screen_task == (int)index || task->other2 == by)) {
            return true;
        }
    }
    return false;
}

/* On one of the ways on the screener slips before this screen of the step stands. */
static bool may_slip(const struct teller *t, size_t index)
{
    for (size_t b = 0; t->branch < 0 && b < t->step->branches.count; b++) {
        const struct branch *branch = &t->step->branches.at[b];
        for (size_t i = 0; i < branch->tasks.count; i++) {
            if (branch->tasks.at[i].slip && branch->tasks.at[i].screen_task == (int)index) {
                return true;
            }
        }
    }
    return false;
}

static void say_screened(const struct teller *t, struct strbuf *out, size_t index)
{
    const struct task *screen = step_task(t->step, t->branch, index);
    if (uses_screen(t, index)) {
        return; /* the use tells it */
    }
    struct strbuf sentence = sentence_of(t);
    if (is_slipped(t, screen)) {
        strbuf_text(&sentence, "no screen comes; ");
        say_body(t, &sentence, screen->who);
        strbuf_text(&sentence, " slips");
    } else if (may_slip(t, index)) {
        say_body(t, &sentence, screen->who);
        strbuf_text(&sentence, " comes to screen for you, and may slip before the screen is set");
    } else {
        say_body(t, &sentence, screen->who);
        strbuf_text(&sentence, " screens for you. Wait until ");
        say_body(t, &sentence, screen->who);
        strbuf_text(&sentence, " is still");
    }
    add_sentence(t, out, &sentence);
}

/* "x4 helps to the lane as 1 drives. You are open." */
static bool is_left(const struct teller *t, const struct task *task)
{
    return task->kind == TASK_GUARD && task->other != t->you && *verb_more(task->verb) &&
           guards_then(t, task->who, task) == t->you;
}

static void say_left(const struct teller *t, struct strbuf *out, const struct task *task)
{
    struct strbuf when = sentence_of(t);
    say_body(t, out, task->who);
    strbuf_char(out, ' ');
    say_task(t, out, task, FORM_THIRD);
    say_when(t, &when, task);
    if (when.size) {
        strbuf_char(out, ' ');
        strbuf_add(out, strbuf_str(&when));
    }
    end_sentence(out);
    say_upper(out, str_of(verb_more(task->verb)));
    end_sentence(out);
}

/* Who is dribbled at has to move: no time to stand and watch. */
static bool comes_at_you(const struct teller *t, const struct task *task)
{
    return task->kind == TASK_CARRY && task->shape == SHAPE_AT && task->other == t->you;
}

static void say_coming(const struct teller *t, struct strbuf *out, const struct task *task)
{
    struct strbuf sentence = sentence_of(t);
    say_body(t, &sentence, task->who);
    strbuf_text(&sentence, " dribbles at you. Be ready to go");
    add_sentence(t, out, &sentence);
}

/* ---- all of it ---- */

/* Tells the tasks from `from` on; false when there is nothing of theirs to tell. */
static bool say_tasks(const struct teller *t, struct strbuf *out, size_t from)
{
    size_t before = out->size;
    for (size_t i = from; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        bool gives = task->kind == TASK_PASS || task->kind == TASK_EXCHANGE;
        if (task->who == t->you && !task->stay) {
            say_own(t, out, i);
        } else if (gives && task->other == t->you) {
            say_catch(t, out, i);
        } else if (task->kind == TASK_SCREEN && task->other == t->you) {
            say_screened(t, out, i);
        } else if (is_left(t, task)) {
            say_left(t, out, task);
        } else if (comes_at_you(t, task)) {
            say_coming(t, out, task);
        }
    }
    return out->size > before;
}

static bool acts_in_branches(const struct teller *t)
{
    for (size_t b = 0; b < t->step->branches.count; b++) {
        const struct branch *branch = &t->step->branches.at[b];
        for (size_t i = 0; i < branch->tasks.count; i++) {
            if (branch->tasks.at[i].who == t->you) {
                return true;
            }
        }
    }
    return false;
}

/* What is read begins before one's screen stands, or the one that is set for one. */
static bool reads_as_it_comes(const struct teller *t)
{
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        bool mine = task->who == t->you || task->other == t->you;
        if (task->kind == TASK_SCREEN && mine && may_slip(t, i)) {
            return true;
        }
    }
    return false;
}

/* "Then read x3 and x5: see 2a, 2b and 2c." */
static void say_see(const struct teller *t, struct strbuf *out)
{
    size_t count = t->step->branches.count;
    if (!acts_in_branches(t)) {
        return;
    }
    struct strbuf deciders;
    strbuf_init(&deciders, t->arena);
    if (say_deciders(&deciders, t->play, t->step)) {
        strbuf_print(out, "%s read %.*s: see ", reads_as_it_comes(t) ? "Meanwhile" : "Then",
                     STR_ARG(strbuf_str(&deciders)));
    } else {
        strbuf_text(out, "Then see ");
    }
    for (size_t i = 0; i < count; i++) {
        strbuf_print(out, "%s%d%c",
                     i == 0           ? ""
                     : i + 1 == count ? " and "
                                      : ", ",
                     t->step->number, branch_letter(t->step, branch_told(t->step, (int)i)));
    }
    end_sentence(out);
}

/* Does one move, pass or catch in what the step's ways have in common? */
static bool has_part_before(const struct teller *t, size_t common)
{
    for (size_t i = 0; i < common; i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        bool catches =
            (task->kind == TASK_PASS || task->kind == TASK_EXCHANGE) && task->other == t->you;
        if (catches || (task->who == t->you && !task->stay && task->kind != TASK_HOLD)) {
            return true;
        }
    }
    return false;
}

/* "If x3 trails: " */
static void say_condition(const struct teller *t, struct strbuf *out)
{
    const struct branch *branch = &t->step->branches.at[t->branch];
    if (branch->kind != BRANCH_READ || branch->conditions.count == 0) {
        strbuf_print(out, "On \xE2\x80\x9C%.*s\xE2\x80\x9D: ", STR_ARG(branch->title));
    } else if (branch->conditions.at[0].kind == COND_OTHERWISE) {
        strbuf_text(out, "Otherwise: ");
    } else {
        strbuf_text(out, "If ");
        branch_conditions_print(out, branch, t->you);
        strbuf_text(out, ": ");
    }
}

/* What one does differently on this way; where its picture begins with the step, what was before is
 * named in short. */
static void say_branch(const struct teller *t, struct strbuf *out)
{
    size_t common = t->step->tasks.count;
    struct strbuf job = sentence_of(t);
    bool own = say_tasks(t, &job, common);
    if (!own) {
        say_still(t, &job, common);
    }
    if (own || acts_in_branches(t) || holds_a_screen(t) || t->you == holds_ball_then(t, common)) {
        say_condition(t, out);
    } /* else: the same whatever the defense does */
    size_t lead = out->size;
    if (t->again && has_part_before(t, common)) {
        strbuf_print(out, "begin as in step %d. ", t->step->number);
    }
    strbuf_add(out, strbuf_str(&job));
    char *first = out->size > lead ? &out->at[lead] : NULL;
    if (first && lead > 0 && *first >= 'A' && *first <= 'Z') {
        *first = (char)(*first - 'A' + 'a');
    } else if (first && lead == 0 && *first >= 'a' && *first <= 'z') {
        *first = (char)(*first - 'a' + 'A');
    }
}

/* Does the step begin with the ball in this player's hands, behind a line? */
static bool throws_in(const struct teller *t)
{
    struct vec2 at = stands_at(t->play, t->step, t->you);
    return holds_ball(t->play, t->step) == t->you && !court_inside(t->play->court, at, 0);
}

static struct str job_of(const struct teller *t)
{
    struct strbuf out;
    strbuf_init(&out, t->arena);
    if (t->branch >= 0 && (size_t)t->branch < t->step->branches.count) {
        say_branch(t, &out);
    } else {
        struct strbuf job = sentence_of(t);
        if (!say_tasks(t, &job, 0)) {
            say_still(t, &job, 0);
        } else if (throws_in(t)) {
            strbuf_text(&out, "Hold the ball out of bounds. ");
        }
        strbuf_add(&out, strbuf_str(&job));
        say_see(t, &out);
    }
    while (out.size && out.at[out.size - 1] == ' ') {
        out.at[--out.size] = '\0';
    }
    return strbuf_str(&out);
}

struct str tell_job(struct arena *arena, const struct play *play, const struct step *step,
                    int branch, body who, bool again)
{
    struct teller t = {
        .arena = arena, .play = play, .step = step, .branch = branch, .you = who, .again = again};
    return job_of(&t);
}

/* ---- said before ---- */

/* The job of one who has nothing to do on this way; else empty. */
static struct str still_job(const struct teller *t)
{
    size_t from = t->branch >= 0 ? t->step->tasks.count : 0;
    struct strbuf done = sentence_of(t);
    return say_tasks(t, &done, from) ? STR("") : job_of(t);
}

/* The first way through `step` on which this job is told, of those before the one of `until`: -1
 * the part they share, NO_WAY none. */
enum { NO_WAY = -2 };
static int way_that_tells(struct teller t, struct str job, const struct teller *until)
{
    for (int k = -1; k < (int)t.step->branches.count; k++) {
        t.branch = k < 0 ? -1 : branch_told(t.step, k);
        if (t.step == until->step && t.branch == until->branch) {
            return NO_WAY;
        }
        bool drawn = k >= 0 || t.step->tasks.count > 0 || t.step->branches.count == 0;
        if (drawn && str_equal(still_job(&t), job)) {
            return t.branch;
        }
    }
    return NO_WAY;
}

struct str tell_job_before(struct arena *arena, const struct play *play, const struct step *step,
                           int branch, body who)
{
    struct teller here = {.arena = arena, .play = play, .step = step, .branch = branch, .you = who};
    struct str job = still_job(&here);
    for (size_t i = 0; job.size > 0 && i < play->steps.count; i++) {
        struct teller t = here;
        t.step = &play->steps.at[i];
        int way = way_that_tells(t, job, &here);
        if (way != NO_WAY) {
            return way < 0 ? str_format(arena, "step %d", t.step->number)
                           : str_format(arena, "%d%c", t.step->number, branch_letter(t.step, way));
        }
        if (t.step == step) {
            break;
        }
    }
    return STR("");
}

struct str tell_job_once(struct arena *arena, const struct play *play, const struct step *step,
                         int branch, body who, bool again)
{
    struct teller here = {.arena = arena, .play = play, .step = step, .branch = branch, .you = who};
    bool begins = again && branch >= 0 && has_part_before(&here, step->tasks.count);
    struct str before = begins ? STR("") : tell_job_before(arena, play, step, branch, who);
    return before.size > 0 ? str_format(arena, "The same as in %.*s.", STR_ARG(before))
                           : tell_job(arena, play, step, branch, who, again);
}
