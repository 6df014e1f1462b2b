/* SPDX-License-Identifier: MIT */
/* ties: what each task waits for, from its verb and from the coach's words, once every sentence of
 * the way through the step is known. Must not know positions. */
#include "floor/play/resolve.h"

static enum moment moment_of(enum verb_event event)
{
    static const enum moment moments[] = {
        [WHEN_STARTED] = MOMENT_STARTED,   [WHEN_ARRIVED] = MOMENT_ARRIVED,
        [WHEN_SET] = MOMENT_SET,           [WHEN_USED] = MOMENT_USED,
        [WHEN_RELEASED] = MOMENT_RELEASED, [WHEN_CAUGHT] = MOMENT_CAUGHT};
    return moments[event];
}

static struct wait *add_wait(struct maker *m, struct task *task, struct wait wait)
{
    VEC_PUSH(m->arena, &task->waits, wait);
    return &task->waits.at[task->waits.count - 1];
}

static struct wait task_wait(int task, enum moment moment)
{
    return (struct wait){
        .kind = WAIT_TASK, .task = task, .moment = moment, .who = BODY_NONE, .span = SPAN_NONE};
}

/* ---- from the verb ---- */

static bool gives_ball_to(const struct task *task, body who)
{
    return (task->kind == TASK_PASS || task->kind == TASK_EXCHANGE) && task->other == who;
}

static int later_pass_to(const struct maker *m, size_t from, body who)
{
    for (size_t i = from + 1; i < task_count(m); i++) {
        if (gives_ball_to(task_at(m, i), who)) {
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
    if (from >= 0 && gives_ball_to(task_at(m, (size_t)from), task->who)) {
        add_wait(m, task, task_wait(from, MOMENT_CAUGHT));
    } else if (from >= 0) { /* a rebound */
        add_wait(m, task, task_wait(from, MOMENT_ARRIVED));
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
static bool is_used(const struct maker *m, int screen)
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
    if (screen >= 0) {
        add_wait(m, task, task_wait(screen, is_used(m, screen) ? MOMENT_USED : MOMENT_SET));
        return;
    }
    for (size_t i = 0; verb_is(task->verb, 'O') && i < task_count(m); i++) {
        const struct task *use = task_at(m, i);
        if (use->kind == TASK_USE && (use->other == task->who || use->other2 == task->who)) {
            add_wait(m, task, task_wait((int)i, MOMENT_STARTED))->delay = CLEARED;
            return;
        }
    }
}

static bool leaves(const struct maker *m, body who)
{
    for (size_t i = 0; i < task_count(m); i++) {
        const struct task *task = task_at(m, i);
        bool moves = task->kind == TASK_MOVE || task->kind == TASK_USE ||
                     task->kind == TASK_CARRY || task->kind == TASK_SCREEN;
        if (task->who == who && moves) {
            return true;
        }
    }
    return false;
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
    if (work->fills == BODY_NONE || !leaves(m, work->fills) || fills_in_a_ring(m, task->who)) {
        return;
    }
    struct wait wait = task_wait(-1, MOMENT_STARTED);
    wait.kind = WAIT_LEAVES;
    wait.who = work->fills;
    wait.where = work->fills_where;
    add_wait(m, task, wait);
}

static void wait_for_shot(struct maker *m, size_t index)
{
    struct task *task = task_at(m, index);
    if (task->verb != VERB_REBOUNDS && task->verb != VERB_GETS_BACK) {
        return;
    }
    for (size_t i = 0; i < task_count(m); i++) {
        if (task_at(m, i)->kind == TASK_SHOOT) {
            add_wait(m, task, task_wait((int)i, MOMENT_RELEASED));
            return;
        }
    }
    if (task->verb == VERB_REBOUNDS) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_SHOT, task->span,
                                     "there is no shot in this step to rebound");
        diag_help(m->diags, diag, "write the shot: 1 shoots");
    }
}

static void verb_waits(struct maker *m, size_t index)
{
    wait_for_ball(m, index);
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

static bool in_family(enum event_family family, enum verb verb)
{
    static const char letters[] = {
        [FAMILY_NONE] = 0,   [FAMILY_PASSES] = 'p',   [FAMILY_SCREENS] = 's',
        [FAMILY_CUTS] = 'c', [FAMILY_DRIBBLES] = 'd', [FAMILY_MOVES] = 'm'};
    if (family == FAMILY_USES) {
        return verb_row(verb)->task == VERB_USE;
    }
    return family != FAMILY_NONE && verb_is(verb, letters[family]);
}

static bool matches(const struct maker *m, const struct task *task, const struct event *event,
                    const struct work *work)
{
    (void)m;
    if (task->supplied) {
        return false;
    }
    body object = work->event_object;
    if (event->kind == EVENT_CATCHES || event->kind == EVENT_HAS_BALL) {
        return gives_ball_to(task, work->event_subject) &&
               (object == BODY_NONE || task->who == object);
    }
    bool same = task->verb == event->verb || in_family(event->family, task->verb);
    bool fits = object == BODY_NONE || task->other == object || task->other2 == object;
    return task->who == work->event_subject && same && fits;
}

/* The nearest earlier task that matches, else the nearest later one; -1: none. */
static int find_event(const struct maker *m, size_t index, const struct event *event)
{
    const struct work *work = &m->works.at[index];
    int group = task_at(m, index)->group;
    for (size_t i = index; i-- > 0;) {
        if (task_at(m, i)->group != group && matches(m, task_at(m, i), event, work)) {
            return (int)i;
        }
    }
    for (size_t i = index + 1; i < task_count(m); i++) {
        if (task_at(m, i)->group != group && matches(m, task_at(m, i), event, work)) {
            return (int)i;
        }
    }
    return -1;
}

static void note_used(struct maker *m, const struct event *event)
{
    uint32_t source = event->span.source;
    if (source >= LIMIT_SOURCES || m->said_used[source]) {
        return;
    }
    m->said_used[source] = true;
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_AFTER_SCREEN, event->span,
                                 "this waits until the screen has been used");
    diag_help(m->diags, diag, "to start as it is set, write `as` in place of `after`");
}

static enum moment event_moment(struct maker *m, const struct tie *tie, const struct task *found)
{
    if (tie->event.kind == EVENT_CATCHES || tie->event.kind == EVENT_HAS_BALL) {
        return MOMENT_CAUGHT;
    }
    const struct verb_row *row = verb_row(found->verb);
    switch (tie->word) {
    case TIE_WHILE:
        return MOMENT_STARTED;
    case TIE_AS:
    case TIE_WHEN:
        return moment_of(row->fixed);
    default:
        if (found->kind == TASK_SCREEN) {
            note_used(m, &tie->event);
        }
        return moment_of(row->last);
    }
}

/* A state of the game: what it is about, as far as it is planned. */
static struct wait state_wait(const struct work *work, const struct event *event)
{
    struct wait wait = task_wait(-1, MOMENT_STARTED);
    wait.kind = WAIT_STATE;
    wait.who = work->event_subject;
    wait.state = event->kind;
    wait.where = work->event_where;
    wait.written = true;
    wait.span = event->span;
    return wait;
}

static bool event_is_built(struct maker *m, size_t index, const struct event *event)
{
    if (event->kind != EVENT_VERB || !body_is_defender(m->works.at[index].event_subject)) {
        return true;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_STATE_NOT_YET, event->span,
                                 "waiting for what a defender does is not built yet");
    diag_help(m->diags, diag,
              "write it as a read: read x3 trails; or wait for a state: when 3 is "
              "open");
    return false;
}

static void no_event(struct maker *m, const struct tie *tie, body subject)
{
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_EVENT, tie->event.span,
                                 tie->event.kind == EVENT_CATCHES
                                     ? "nobody passes to %s in this step"
                                     : "no sentence of this step says that %s does this",
                                 who_text(m, subject).at);
    diag_help(m->diags, diag, "name a sentence of this step by its player and verb: as 1 passes");
    m->play->broken = true;
}

static struct wait *event_wait(struct maker *m, size_t index, const struct tie *tie)
{
    struct task *task = task_at(m, index);
    const struct work *work = &m->works.at[index];
    if (!event_is_built(m, index, &tie->event)) {
        m->play->broken = true;
        return NULL;
    }
    if (work->event_subject == BODY_NONE) {
        return NULL; /* reported with the subject */
    }
    if (tie->event.kind >= EVENT_OPEN && tie->event.kind <= EVENT_PAST) {
        return add_wait(m, task, state_wait(work, &tie->event));
    }
    int found = find_event(m, index, &tie->event);
    bool has_it = tie->event.kind == EVENT_HAS_BALL && work->holder == work->event_subject;
    if (found < 0) {
        if (!has_it) {
            no_event(m, tie, work->event_subject);
        }
        return NULL;
    }
    struct wait wait = task_wait(found, event_moment(m, tie, task_at(m, (size_t)found)));
    wait.fixed = tie->word == TIE_AS;
    wait.written = true;
    wait.delay = tie->word == TIE_SECONDS_AFTER ? tie->seconds : 0;
    wait.span = tie->event.span;
    return add_wait(m, task, wait);
}

/* Waits for the sentence above: its start, or its end and some seconds more. */
static void above_waits(struct maker *m, size_t index, const struct tie *tie, bool ended)
{
    struct task *task = task_at(m, index);
    int first = m->works.at[index].above;
    if (first < 0) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_EVENT, tie->span,
                                     "there is no sentence above this one in the step");
        diag_help(m->diags, diag, "say from when: 1 s after 2 catches; or: at 1 s");
        return;
    }
    int group = task_at(m, (size_t)first)->group;
    for (size_t i = (size_t)first; i < task_count(m) && task_at(m, i)->group == group; i++) {
        enum moment last = moment_of(verb_row(task_at(m, i)->verb)->last);
        if (last == MOMENT_USED && !is_used(m, (int)i)) {
            last = MOMENT_SET;
        }
        struct wait wait = task_wait((int)i, ended ? last : MOMENT_STARTED);
        wait.delay = ended ? tie->seconds : 0;
        wait.written = true;
        wait.span = tie->span;
        add_wait(m, task, wait);
    }
}

static void plain_wait(struct maker *m, size_t index, struct wait wait, struct span span)
{
    wait.who = BODY_NONE;
    wait.written = true;
    wait.span = span;
    add_wait(m, task_at(m, index), wait);
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
        plain_wait(
            m, index,
            (struct wait){.kind = WAIT_CLOCK, .task = -1, .delay = tie->seconds, .fixed = true},
            tie->span);
        break;
    case TIE_LATER:
        above_waits(m, index, tie, true);
        break;
    case TIE_NONE:
        break;
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
        if (!task_is_fixed(task_at(m, i))) {
            verb_waits(m, i);
        }
    }
    ties_find_circles(m, from);
}
