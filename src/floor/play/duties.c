/* SPDX-License-Identifier: MIT */
/* duties: sentences that say what one defender does instead of the default, and what is planned of
 * who guards whom after them. What cannot be is said here: one who is not on the floor, one who
 * doubles his own man, two duties that begin at once. Must not know positions on the clock. */
#include "floor/play/sentence.h"

/* ---- what cannot be ---- */

static bool is_there(struct maker *m, const struct sentence *s, body who)
{
    if (m->play->start[who].on_floor) {
        return true;
    }
    bool none = m->play->defense == DEFENSE_NONE;
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_DEFENDER_OFF, s->span, "%s is not on the floor%s",
                 who_text(m, who).at, none ? ": this play has no defense" : "");
    if (none) {
        diag_help(m->diags, diag, "write before the first step: defense man gap");
    } else {
        diag_help(m->diags, diag, "place the defender in the start: start five-out, %s at top",
                  who_text(m, who).at);
    }
    return false;
}

static bool by_himself(struct maker *m, const struct sentence *s, body who)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_DUTY_SELF, s->object.span, "%s cannot %s with himself",
                 who_text(m, who).at, verb_row(s->verb)->bare);
    diag_help(m->diags, diag, "name the team-mate who does it with him: x%d",
              body_number(who) == 1 ? 2 : 1);
    return false;
}

/* A second man comes to somebody else's: to his own he would be the first. */
static bool is_second(enum verb verb)
{
    return verb == VERB_DOUBLES || verb == VERB_TAGS || verb == VERB_STUNTS;
}

static bool his_own(struct maker *m, const struct sentence *s, body who, body man)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_DUTY_SELF, s->object.span,
                 "%s guards %s already: who %s a player leaves his own man for it",
                 who_text(m, who).at, who_text(m, man).at, verb_row(s->verb)->words);
    diag_help(m->diags, diag, "name another player, or write `%s overplays`", who_text(m, who).at);
    return false;
}

/* ---- who guards whom then ---- */

/* The defender takes this man for good; who had him has nobody. */
static void flow_take(struct maker *m, body who, body man)
{
    for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (m->flow.guards[b] == man) {
            m->flow.guards[b] = BODY_NONE;
        }
    }
    m->flow.guards[who] = man;
}

static void flow_swap(struct maker *m, body a, body b)
{
    body man = m->flow.guards[a];
    m->flow.guards[a] = m->flow.guards[b];
    m->flow.guards[b] = man;
}

static body nearest_planned(const struct maker *m, struct vec2 p)
{
    body best = BODY_NONE;
    double least = 1e9;
    for (body b = 0; b < BODY_COACH; b++) {
        double far = vec2_distance(m->flow.at[b], p);
        if (on_floor(m, b) && far < least) {
            least = far;
            best = b;
        }
    }
    return best;
}

static void plan_guards(struct maker *m, const struct task *task)
{
    if (task->verb == VERB_GUARDS) {
        flow_take(m, task->who, task->other);
    } else if (task->verb == VERB_SWITCHES && task->on != BODY_NONE) {
        flow_swap(m, task->who, task->on);
    } else if (task->verb == VERB_ROTATES) {
        body man = nearest_planned(m, task->planned);
        if (man != BODY_NONE) {
            flow_take(m, task->who, man);
        }
    }
}

/* ---- the sentence ---- */

static bool set_whom(struct maker *m, const struct sentence *s, const struct voice *voice,
                     struct task *task)
{
    if (s->object.kind == WHO_NONE) {
        return true;
    }
    body whom = who_body(m, &s->object, voice);
    if (whom == BODY_NONE) {
        return false;
    }
    if (body_is_attacker(whom)) {
        task->other = whom;
        return !is_second(s->verb) || m->flow.guards[task->who] != whom ||
               his_own(m, s, task->who, whom);
    }
    task->on = whom;
    return whom == task->who ? by_himself(m, s, whom) : is_there(m, s, whom);
}

bool make_guard(struct maker *m, const struct sentence *s, const struct voice *voice,
                struct task *task, struct work *work)
{
    (void)work;
    if (!is_there(m, s, task->who) || !set_whom(m, s, voice, task)) {
        return false;
    }
    body man = m->flow.guards[task->who];
    if (man != BODY_NONE) { /* a side left out is the side of his man */
        task->planned = m->flow.at[task->who] = m->flow.at[man];
    }
    if (!task_set_goal(m, s, voice, task)) {
        return false;
    }
    task->stay = verb_is(task->verb, 'Q');
    task->order = task->stay ? 0 : task->order;
    m->flow.at[task->who] = task->planned;
    plan_guards(m, task);
    return true;
}

/* ---- as the condition of a read ---- */

static bool needs(enum verb verb, char letter)
{
    for (const char *need = verb_row(verb)->needs; *need; need++) {
        if (*need == letter) {
            return true;
        }
    }
    return false;
}

static body said_body(const struct who *who)
{
    if (who->kind == WHO_NONE) {
        return BODY_NONE;
    }
    return who->kind == WHO_DEFENDER ? body_defender(who->number) : body_attacker(who->number);
}

static bool read_short(struct maker *m, const struct condition *condition, body who)
{
    bool place = needs(condition->verb, 'P');
    const char *words = verb_row(condition->verb)->words;
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_READ_SHORT, condition->span, "%s %s %s",
                                 who_text(m, who).at, words, place ? "where to?" : "whom?");
    diag_help(m->diags, diag, place ? "write the place: %s %s to left block" : "write %s %s 1",
              who_text(m, who).at, words);
    return false;
}

static bool read_own(struct maker *m, const struct condition *condition, body who, body whom)
{
    struct sentence s = {.verb = condition->verb, .object.span = condition->span};
    if (whom == who) {
        return by_himself(m, &s, who);
    }
    bool own = is_second(condition->verb) && whom != BODY_NONE && m->flow.guards[who] == whom;
    return !own || his_own(m, &s, who, whom);
}

bool duty_condition(struct maker *m, struct branch *branch, const struct condition *condition,
                    const struct voice *voice)
{
    if (condition->kind != COND_VERB && condition->kind != COND_BOTH) {
        return true;
    }
    body who = said_body(&condition->who);
    bool both = condition->kind == COND_BOTH;
    body whom = said_body(both ? &condition->object : &condition->other);
    if ((needs(condition->verb, 'W') && whom == BODY_NONE) ||
        (needs(condition->verb, 'P') && !condition->place)) {
        return read_short(m, condition, who);
    }
    if (!read_own(m, condition, who, whom) ||
        (both && !read_own(m, condition, who, said_body(&condition->other)))) {
        return false;
    }
    struct goal goal;
    body man = m->flow.guards[who];
    m->flow.at[who] = man != BODY_NONE ? m->flow.at[man] : m->flow.at[who];
    bool fits = condition->place ? where_goal(m, condition->place, voice, who, &goal)
                                 : where_default(m, verb_row(condition->verb)->place, who,
                                                 condition->span, &goal);
    if (fits && branch->conditions.count == 0) {
        branch->goal = goal;
        branch->goal_written = condition->place != NULL;
    }
    return fits;
}

/* ---- two at once ---- */

static bool same_moment(const struct wait *a, const struct wait *b)
{
    if (!a->fixed || !b->fixed || a->kind != b->kind || a->delay != b->delay) {
        return false;
    }
    return a->kind == WAIT_CLOCK ||
           (a->kind == WAIT_TASK && a->task == b->task && a->moment == b->moment);
}

/* Both are tied to the same moment, or the later one to the start of the other. */
static bool at_once(const struct maker *m, size_t first, size_t second)
{
    const struct task *a = task_at(m, first), *b = task_at(m, second);
    for (size_t i = 0; i < b->waits.count; i++) {
        const struct wait *wait = &b->waits.at[i];
        if (wait->written && wait->kind == WAIT_TASK && !wait->before && wait->task == (int)first &&
            wait->moment == MOMENT_STARTED && wait->delay <= 0) {
            return true;
        }
        for (size_t j = 0; j < a->waits.count; j++) {
            if (same_moment(&a->waits.at[j], wait)) {
                return true;
            }
        }
    }
    return false;
}

static bool holds_with(struct maker *m, size_t first, size_t second)
{
    const struct task *a = task_at(m, first), *b = task_at(m, second);
    if (a->kind != TASK_GUARD || a->who != b->who || a->group == b->group ||
        !at_once(m, first, second)) {
        return true;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_TWO_DUTIES, b->span,
                                 "%s is to do two things at the same moment: this and `%s`",
                                 who_text(m, b->who).at, verb_row(a->verb)->words);
    diag_help(m->diags, diag, "tie one of them to something later, or take one out");
    if (diag) {
        diag->other = a->span;
    }
    m->play->broken = true;
    return false;
}

void duties_hold_apart(struct maker *m, size_t from)
{
    for (size_t i = from; i < task_count(m); i++) {
        for (size_t j = 0; j < i && task_at(m, i)->kind == TASK_GUARD; j++) {
            if (!holds_with(m, j, i)) {
                break;
            }
        }
    }
}
