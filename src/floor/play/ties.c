/* SPDX-License-Identifier: MIT */
/* ties: what each task waits for, from its verb and from the coach's words, once every sentence of
 * the way through the step is known. Must not know positions. */
#include "floor/play/resolve.h"

static struct wait *add_wait(struct maker *m, struct task *task, struct wait wait)
{
    VEC_PUSH(m->arena, &task->waits, wait);
    return &task->waits.at[task->waits.count - 1];
}

/* ---- from the verb ---- */

static int later_pass_to(const struct maker *m, size_t from, body who)
{
    for (size_t i = from + 1; i < task_count(m); i++) {
        if (task_gives_ball_to(task_at(m, i), who)) {
            return (int)i;
        }
    }
    return -1;
}

/* A shot follows its catch; so does all that needs the ball. */
static void wait_for_ball(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    const struct work *work = &m->works.at[index];
    bool carries = task->kind == TASK_CARRY;
    if (!work->wants_ball && !carries) {
        return;
    }
    int from = work->holder == task->who ? work->gave : later_pass_to(m, index, task->who);
    if (from >= 0 && task_gives_ball_to(task_at(m, (size_t)from), task->who)) {
        add_wait(m, task, event_wait_for(from, MOMENT_CAUGHT));
    } else if (from >= 0) { /* a rebound */
        add_wait(m, task, event_wait_for(from, MOMENT_ARRIVED));
    }
}

bool task_uses(const struct maker *m, const struct task *task, int screen)
{
    if (task->kind != TASK_USE) {
        return false;
    }
    const struct task *by = task_at(m, (size_t)screen);
    return task->screen_task == screen || (task->other2 == by->who && task->who == by->other);
}

/* Somebody uses the screen on this way through the step, or on one of the ways behind it. */
bool screen_is_used(const struct maker *m, int screen)
{
    for (size_t i = 0; i < task_count(m); i++) {
        if (task_uses(m, task_at(m, i), screen)) {
            return true;
        }
    }
    for (size_t b = 0; !m->branch && b < m->step->branches.count; b++) {
        const struct branch *branch = &m->step->branches.at[b];
        for (size_t i = 0; i < branch->tasks.count; i++) {
            if (task_uses(m, &branch->tasks.at[i], screen)) {
                return true;
            }
        }
    }
    return false;
}

bool screen_is_used_above(const struct maker *m, int screen, size_t index)
{
    for (size_t i = 0; i < index; i++) {
        if (task_uses(m, task_at(m, i), screen)) {
            return true;
        }
    }
    return false;
}

/* He has slipped out of it since: it is never set. */
static bool is_slipped(const struct maker *m, size_t index, int screen)
{
    for (size_t i = (size_t)screen + 1; i < index; i++) {
        const struct task *task = task_at(m, i);
        if (task->slip && task->who == task_at(m, (size_t)screen)->who) {
            return true;
        }
    }
    return false;
}

#define CLEARED                                                                                    \
    .5 /* s after the start of a use of a screen carried over from the step before (ours) */

static void wait_for_own_screen(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    int screen = m->works.at[index].own_screen;
    bool moves = task->kind == TASK_MOVE || task->kind == TASK_USE || task->kind == TASK_CARRY ||
                 task->kind == TASK_SCREEN;
    if (!moves || task->slip) {
        return;
    }
    if (screen >= 0 && is_slipped(m, index, screen)) {
        return;
    }
    if (screen >= 0) {
        add_wait(m, task,
                 event_wait_for(screen, screen_is_used(m, screen) ? MOMENT_USED : MOMENT_SET));
        return;
    }
    for (size_t i = 0; verb_is(task->verb, 'O') && i < task_count(m); i++) {
        const struct task *use = task_at(m, i);
        if (use->kind == TASK_USE && (use->other == task->who || use->other2 == task->who)) {
            add_wait(m, task, event_wait_for((int)i, MOMENT_STARTED))->delay = CLEARED;
            return;
        }
    }
}

/* The first sentence in which he goes anywhere, or NULL. */
static const struct task *first_move(const struct maker *m, body who)
{
    for (size_t i = 0; i < task_count(m); i++) {
        const struct task *task = task_at(m, i);
        bool moves = task->kind == TASK_MOVE || task->kind == TASK_USE ||
                     task->kind == TASK_CARRY || task->kind == TASK_SCREEN;
        if (task->who == who && moves) {
            return task;
        }
    }
    return NULL;
}

static bool waits_on(const struct task *task, size_t index)
{
    for (size_t i = 0; i < task->waits.count; i++) {
        const struct wait *wait = &task->waits.at[i];
        if (wait->kind == WAIT_TASK && !wait->before && wait->task == (int)index) {
            return true;
        }
    }
    return false;
}

/* Who fills the spot waits for him to leave it; not when he is to go as that one does, or then. */
static bool leaves_first(const struct maker *m, body who, size_t fill)
{
    const struct task *move = first_move(m, who);
    for (size_t i = 0; move && i < move->waits.count; i++) {
        const struct wait *wait = &move->waits.at[i];
        if (wait->kind == WAIT_ALL_BEFORE && (int)fill < wait->task) {
            return false;
        }
    }
    return move && !waits_on(move, fill);
}

static body fills_of(const struct maker *m, body who)
{
    for (size_t i = 0; i < task_count(m); i++) {
        if (task_at(m, i)->who == who && m->works.at[i].fills != BODY_NONE) {
            return m->works.at[i].fills;
        }
    }
    return BODY_NONE;
}

/* 2 fills 5's spot and 5 fills 2's: they go together, or neither could start. */
static bool fills_in_a_ring(const struct maker *m, body who)
{
    body next = fills_of(m, who);
    for (int i = 0; i < BODY_COUNT && next != BODY_NONE; i++) {
        if (next == who) {
            return true;
        }
        next = fills_of(m, next);
    }
    return false;
}

static void wait_for_spot(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    const struct work *work = &m->works.at[index];
    if (work->fills == BODY_NONE || !leaves_first(m, work->fills, index) ||
        fills_in_a_ring(m, task->who)) {
        return;
    }
    struct wait wait = event_wait_for(-1, MOMENT_STARTED);
    wait.kind = WAIT_LEAVES;
    wait.who = work->fills;
    wait.where = work->fills_where;
    add_wait(m, task, wait);
}

/* The latest shot above the sentence, else the first one below it; -1: there is none. */
static int shot_for(const struct maker *m, size_t index)
{
    int found = -1;
    for (size_t i = 0; i < task_count(m) && (found < 0 || i < index); i++) {
        found = task_at(m, i)->kind == TASK_SHOOT ? (int)i : found;
    }
    return found;
}

static void wait_for_shot(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    if (task->verb != VERB_REBOUNDS && task->verb != VERB_GETS_BACK &&
        task->verb != VERB_BOXES_OUT) {
        return;
    }
    int shot = shot_for(m, index);
    if (shot >= 0) {
        add_wait(m, task, event_wait_for(shot, MOMENT_RELEASED));
        return;
    }
    if (task->verb != VERB_GETS_BACK) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_NO_SHOT, task->span, "there is no shot in this step to %s",
                     task->verb == VERB_REBOUNDS ? "rebound" : "box out for");
        diag_help(m->diags, diag, "write the shot: 1 shoots");
    }
}

/* With the ball he comes off it. */
static bool is_on_ball(const struct maker *m, size_t index)
{
    const struct task *screen = task_at(m, index);
    for (size_t i = index + 1; i < task_count(m); i++) {
        const struct task *use = task_at(m, i);
        if (use->kind == TASK_USE && use->who == screen->other && use->other == screen->who) {
            return m->works.at[i].wants_ball || verb_is(use->verb, 'B');
        }
    }
    return screen->screen == SCREEN_BALL;
}

/* Who screens on the ball for somebody who is still to get it goes when it is thrown to him. */
static void wait_for_his_ball(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    if (task->kind != TASK_SCREEN || !is_on_ball(m, index)) {
        return;
    }
    for (size_t i = index; i-- > 0;) {
        if (task_gives_ball_to(task_at(m, i), task->other)) {
            add_wait(m, task, event_wait_for((int)i, MOMENT_RELEASED));
            return;
        }
    }
}

/* Who is to be fed by somebody who gets the ball first seals as it is thrown to that one: any
 * sooner and his defender is round him again, and he stands in the lane. */
static void wait_for_feeder(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    int feed = task->verb == VERB_SEALS ? later_pass_to(m, index, task->who) : -1;
    for (size_t i = index; feed >= 0 && i-- > 0;) {
        const struct task *pass = task_at(m, i);
        if (task_gives_ball_to(pass, task_at(m, (size_t)feed)->who) && !waits_on(pass, index)) {
            add_wait(m, task, event_wait_for((int)i, MOMENT_RELEASED));
            return;
        }
    }
}

/* A back cut that nothing is said of when. */
static bool cuts_untied(const struct task *task)
{
    return task->verb == VERB_BACK_CUTS && task->waits.count == 0;
}

/* Who goes backdoor on a dribble at him goes as it comes near, and not before it has begun. */
static void wait_for_dribbler(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    for (size_t i = index; cuts_untied(task) && i-- > 0;) {
        const struct task *by = task_at(m, i);
        if (by->verb == VERB_DRIBBLES_AT && by->other == task->who) {
            struct wait wait = event_wait_for((int)i, MOMENT_STARTED);
            wait.kind = WAIT_NEARS;
            wait.who = by->who;
            wait.other = task->who;
            add_wait(m, task, wait);
            return;
        }
    }
}

/* Who goes backdoor for a pass from somebody who gets the ball first goes as that one has it: any
 * sooner and he stands under the rim. Whose own pass it is goes behind it. */
static void wait_for_passer(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    int feed = cuts_untied(task) ? later_pass_to(m, index, task->who) : -1;
    for (size_t i = index; feed >= 0 && i-- > 0;) {
        const struct task *pass = task_at(m, i);
        if (task_gives_ball_to(pass, task_at(m, (size_t)feed)->who)) {
            if (pass->who != task->who && !waits_on(pass, index)) {
                add_wait(m, task, event_wait_for((int)i, MOMENT_CAUGHT));
            }
            return;
        }
    }
}

static void verb_waits(struct maker *m, size_t index)
{
    wait_for_feeder(m, index);
    wait_for_dribbler(m, index);
    wait_for_passer(m, index);
    wait_for_ball(m, index);
    wait_for_his_ball(m, index);
    wait_for_own_screen(m, index);
    wait_for_spot(m, index);
    wait_for_shot(m, index);
}

/* A screen written after the sentence that uses it still serves it. */
static void find_screen(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    if (task->kind != TASK_USE || task->screen_task >= 0) {
        return;
    }
    for (size_t i = index + 1; i < task_count(m); i++) {
        const struct task *screen = task_at(m, i);
        if (screen->kind == TASK_SCREEN && screen->who == task->other &&
            screen->other == task->who) {
            task->screen_task = (int)i;
            return;
        }
    }
    if (m->flow.carried[task->other] == task->who) {
        return;
    }
    diag_add(m->diags, DIAG_PLAY_STANDING_POST, task->span,
             "%s has set no screen for %s: %s goes past %s as past a standing post",
             who_text(m, task->other).at, who_text(m, task->who).at, who_text(m, task->who).at,
             who_text(m, task->other).at);
}

/* ---- from the words ---- */

/* What a tie of the sentence names. */
static void event_wait(struct maker *m, size_t index, const struct tie *tie)
{
    struct task *task = task_at(m, index);
    const struct work *work = &m->works.at[index];
    const struct asked asked = {.event = tie->event,
                                .by = work->event,
                                .word = tie->word,
                                .seconds = tie->seconds,
                                .index = (int)index,
                                .group = task->group,
                                .holder = work->holder};
    struct wait wait;
    if (event_asked(m, &asked, &wait)) {
        add_wait(m, task, wait);
    }
}

static void plain_wait(struct maker *m, size_t index, struct wait wait, struct span span)
{
    wait.who = wait.other = BODY_NONE;
    wait.written = true;
    wait.span = span;
    add_wait(m, task_at(m, index), wait);
}

/* At so many seconds of the step, whatever is being done then. */
static void clock_wait(struct maker *m, size_t index, const struct tie *tie)
{
    struct wait wait = {.kind = WAIT_CLOCK, .task = -1, .delay = tie->seconds, .fixed = true};
    task_at(m, index)->cuts_short = true;
    plain_wait(m, index, wait, tie->span);
}

/* Of a step's first sentence; so long after nothing is so long after the step's begin. */
static void nothing_above(struct maker *m, size_t index, const struct tie *tie, bool ended)
{
    if (!ended) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_EVENT, tie->span,
                                     "there is no sentence above this one in the step");
        diag_help(m->diags, diag, "say from when: 1 s after 2 catches; or: at 1 s");
        return;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_FROM_START, tie->span,
                                 "nothing stands above it in the step: counted from its start");
    diag_help(m->diags, diag, "write `at` and the seconds, or say after what: 1 s after 2 catches");
    clock_wait(m, index, tie);
}

/* Waits for the sentence above: its start, or its end and some seconds more. */
static void above_waits(struct maker *m, size_t index, const struct tie *tie, bool ended)
{
    struct task *task = task_at(m, index);
    int first = m->works.at[index].above;
    if (first < 0) {
        nothing_above(m, index, tie, ended);
        return;
    }
    int group = task_at(m, (size_t)first)->group;
    for (size_t i = (size_t)first; i < task_count(m) && task_at(m, i)->group == group; i++) {
        enum moment last = event_moment_of(verb_row(task_at(m, i)->verb)->last);
        if (last == MOMENT_USED && !screen_is_used_above(m, (int)i, index)) {
            last = MOMENT_SET;
        }
        struct wait wait = event_wait_for((int)i, ended ? last : MOMENT_STARTED);
        wait.delay = ended ? tie->seconds : 0;
        wait.written = true;
        wait.span = tie->span;
        add_wait(m, task, wait);
    }
}

static void word_waits(struct maker *m, size_t index, const struct tie *tie)
{
    struct task *task = task_at(m, index);
    if (tie->then) {
        plain_wait(m, index, (struct wait){.kind = WAIT_ALL_BEFORE, .task = (int)index}, tie->span);
    }
    if (tie->meanwhile) {
        above_waits(m, index, tie, false);
    }
    switch (tie->word) {
    case TIE_AS:
    case TIE_WHEN:
        task->cuts_short = true;
        event_wait(m, index, tie);
        break;
    case TIE_AFTER:
    case TIE_WHILE:
    case TIE_SECONDS_AFTER:
        event_wait(m, index, tie);
        break;
    case TIE_AT:
        clock_wait(m, index, tie);
        break;
    case TIE_LATER:
        above_waits(m, index, tie, true);
        break;
    case TIE_NONE:
        break;
    }
}

/* A pass, a hand-off and a shot are one moment: there is nothing in them to cut short. */
static bool has_length(struct maker *m, const struct task *task, const struct event *until)
{
    if (!task_is_throw(task)) {
        return true;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_UNTIL, until->span,
                 "`%s` has no length that something could cut short", verb_row(task->verb)->words);
    diag_help(m->diags, diag,
              "`until` ends a movement, a screen or a hold; to wait first, write "
              "the tie in front: when 2 is open, 1 passes to 2");
    m->play->broken = true;
    return false;
}

static void until_wait(struct maker *m, size_t index, const struct event *until)
{
    struct task *task = task_at(m, index);
    const struct work *work = &m->works.at[index];
    const struct asked asked = {.event = until,
                                .by = work->until,
                                .word = TIE_WHEN,
                                .index = (int)index,
                                .group = task->group,
                                .holder = BODY_NONE,
                                .until = true};
    if (has_length(m, task, until)) {
        task->has_until = event_asked(m, &asked, &task->until);
    }
}

bool task_is_fixed(const struct task *task)
{
    for (size_t i = 0; i < task->waits.count; i++) {
        if (task->waits.at[i].fixed) {
            return true;
        }
    }
    return false;
}

void ties_resolve(struct maker *m, size_t from)
{
    for (size_t i = from; i < task_count(m); i++) {
        find_screen(m, i);
    }
    for (size_t i = from; i < task_count(m); i++) {
        const struct sentence *s = m->works.at[i].sentence;
        if (s) {
            word_waits(m, i, &s->tie);
        }
        if (s && s->until) {
            until_wait(m, i, s->until);
        }
    }
    for (size_t i = from; i < task_count(m); i++) {
        if (!task_is_fixed(task_at(m, i))) {
            verb_waits(m, i);
        }
    }
    duties_hold_apart(m, from);
    ties_find_circles(m, from);
}
