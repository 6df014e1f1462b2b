/* SPDX-License-Identifier: MIT */
/* events: the sentence a clause names, and the moment of it; or a state of the game. Takes the
 * tasks of one way through a step, gives waits. Must not know positions. */
#include "floor/play/resolve.h"

enum moment event_moment_of(enum verb_event event)
{
    static const enum moment moments[] = {
        [WHEN_STARTED] = MOMENT_STARTED,   [WHEN_ARRIVED] = MOMENT_ARRIVED,
        [WHEN_SET] = MOMENT_SET,           [WHEN_USED] = MOMENT_USED,
        [WHEN_RELEASED] = MOMENT_RELEASED, [WHEN_CAUGHT] = MOMENT_CAUGHT};
    return moments[event];
}

struct wait event_wait_for(int task, enum moment moment)
{
    return (struct wait){.kind = WAIT_TASK,
                         .task = task,
                         .moment = moment,
                         .who = BODY_NONE,
                         .other = BODY_NONE,
                         .span = SPAN_NONE};
}

static bool is_catch(const struct event *event)
{
    return event->kind == EVENT_CATCHES || event->kind == EVENT_HAS_BALL;
}

static bool matches(const struct task *task, const struct asked *asked)
{
    const struct event *event = asked->event;
    body object = asked->by.object;
    if (task->supplied || task->group == asked->group) {
        return false;
    }
    if (is_catch(event)) {
        return task_gives_ball_to(task, asked->by.subject) &&
               (object == BODY_NONE || task->who == object);
    }
    bool same = task->verb == event->verb || verb_in_family(task->verb, event->family);
    bool fits = object == BODY_NONE || task->other == object || task->other2 == object;
    return task->who == asked->by.subject && same && fits;
}

/* The nearest earlier task that matches, else the nearest later one; -1: none. */
static int find_event(const struct maker *m, const struct asked *asked)
{
    for (int i = asked->index; i-- > 0;) {
        if (matches(task_at(m, (size_t)i), asked)) {
            return i;
        }
    }
    for (size_t i = (size_t)asked->index + 1; i < task_count(m); i++) {
        if (matches(task_at(m, i), asked)) {
            return (int)i;
        }
    }
    return -1;
}

/* The way that goes on while the step in hand has begun; NULL: none. */
static const struct step *step_beside(const struct maker *m)
{
    bool beside = m->step->begins.count > 0 && m->step->after_step >= 0;
    return beside ? &m->play->steps.at[m->step->after_step] : NULL;
}

/* The same, in the step before, which goes on meanwhile. */
static int find_before(const struct maker *m, const struct asked *asked)
{
    const struct step *before = step_beside(m);
    int branch = m->step->after_branch;
    for (size_t i = before ? step_task_count(before, branch) : 0; i-- > 0;) {
        struct asked any = *asked;
        any.group = -1;
        if (matches(step_task(before, branch, i), &any)) {
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

/* A screen is over when it has been used: not for who slips out of it, nor for its user before he
 * uses it, nor where nobody does; they wait for the set. */
static bool is_over_when_set(const struct maker *m, const struct asked *asked, int screen)
{
    size_t index = (size_t)asked->index;
    const struct task *by = index < task_count(m) ? task_at(m, index) : NULL,
                      *on = task_at(m, (size_t)screen);
    bool slips = by && by->slip && by->who == on->who;
    bool user = by && by->who == on->other && !screen_is_used_above(m, screen, index);
    return slips || user || !screen_is_used(m, screen);
}

static enum moment moment_asked(struct maker *m, const struct asked *asked,
                                const struct task *found, bool set)
{
    if (is_catch(asked->event)) {
        return MOMENT_CAUGHT;
    }
    const struct verb_row *row = verb_row(found->verb);
    switch (asked->word) {
    case TIE_WHILE: /* a pass is under way when it has left the hands, not while it is held */
        return task_is_throw(found) ? event_moment_of(row->fixed) : MOMENT_STARTED;
    case TIE_AS:
    case TIE_WHEN:
        return event_moment_of(row->fixed);
    default:
        if (found->kind == TASK_SCREEN && set) {
            return MOMENT_SET;
        }
        if (found->kind == TASK_SCREEN) {
            note_used(m, asked->event);
        }
        return event_moment_of(row->last);
    }
}

/* A state of the game: what it is about, as far as it is planned. */
static struct wait state_wait(const struct asked *asked)
{
    struct wait wait = event_wait_for(-1, MOMENT_STARTED);
    wait.kind = WAIT_STATE;
    wait.who = asked->by.subject;
    wait.other = asked->by.object;
    wait.state = asked->event->kind;
    wait.where = asked->by.where;
    wait.written = true;
    wait.span = asked->event->span;
    return wait;
}

/* What a defender does by rule needs no sentence. */
static struct wait deed_wait(const struct asked *asked)
{
    struct wait wait = event_wait_for(-1, MOMENT_STARTED);
    wait.kind = WAIT_DEED;
    wait.who = asked->by.subject;
    wait.other = asked->by.object;
    wait.verb = asked->event->verb;
    bool ended = asked->word == TIE_AFTER || asked->word == TIE_SECONDS_AFTER;
    wait.moment = ended ? MOMENT_ARRIVED : MOMENT_STARTED;
    return wait;
}

static void no_event(struct maker *m, const struct asked *asked)
{
    struct strbuf step;
    strbuf_init(&step, m->arena);
    if (asked->of_step) {
        strbuf_print(&step, "step %d", m->step->number);
    } else {
        strbuf_text(&step, "this step");
    }
    const char *in = strbuf_str(&step).at, *who = who_text(m, asked->by.subject).at;
    struct diag *diag = is_catch(asked->event)
                            ? diag_add(m->diags, DIAG_PLAY_NO_EVENT, asked->event->span,
                                       "nobody passes to %s in %s", who, in)
                            : diag_add(m->diags, DIAG_PLAY_NO_EVENT, asked->event->span,
                                       "no sentence of %s says that %s does this", in, who);
    diag_help(m->diags, diag, "name a sentence of %s by its player and verb: %s 1 passes", in,
              asked->of_step || !asked->until ? "as" : "until");
    m->play->broken = true;
}

bool event_asked(struct maker *m, const struct asked *asked, struct wait *out)
{
    if (asked->by.subject == BODY_NONE) {
        return false; /* reported with the subject */
    }
    bool has_ball = asked->event->kind == EVENT_HAS_BALL && asked->until;
    if ((asked->event->kind >= EVENT_OPEN && asked->event->kind <= EVENT_PAST) || has_ball) {
        *out = state_wait(asked);
        return true;
    }
    int found = find_event(m, asked);
    bool before = found < 0;
    if (before) {
        found = find_before(m, asked);
    }
    /* What cuts a movement short is to be seen of him; that he is told to do it is not enough. */
    bool deed = (found < 0 || asked->until) && asked->event->kind == EVENT_VERB &&
                body_is_defender(asked->by.subject);
    if (found < 0 && !deed) {
        bool has_it = asked->event->kind == EVENT_HAS_BALL && asked->holder == asked->by.subject;
        if (!has_it) {
            no_event(m, asked);
        }
        return false;
    }
    const struct task *on = NULL;
    if (found >= 0 && !deed) {
        on = before ? step_task(step_beside(m), m->step->after_branch, (size_t)found)
                    : task_at(m, (size_t)found);
    }
    bool set = on && !before && on->kind == TASK_SCREEN && is_over_when_set(m, asked, found);
    *out = deed ? deed_wait(asked) : event_wait_for(found, moment_asked(m, asked, on, set));
    out->before = before && !deed;
    out->fixed = asked->word == TIE_AS;
    out->written = true;
    out->delay = asked->word == TIE_SECONDS_AFTER ? asked->seconds : 0;
    out->span = asked->event->span;
    return true;
}
