/* SPDX-License-Identifier: MIT */
/* screens: sentences that set a screen, and those that use one; whether one on the ball is. */
#include "floor/play/sentence.h"

#define SCREEN_OFF 1.2 /* m: about where a screener stands from the player screened for (ours) */

bool task_own_screen(struct maker *m, const struct sentence *s, struct task *task)
{
    task->screen_task = m->flow.screen[task->who];
    if (task->screen_task >= 0 || m->flow.screened[task->who]) {
        return true;
    }
    if (task->verb == VERB_POPS && m->flow.holder != task->who) { /* out to an empty spot */
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_POPS_ALONE, s->verb_span,
                     "%s has set no screen: this is a move out", who_text(m, task->who).at);
        diag_help(m->diags, diag, "if a screen is meant, write it first: %d screens for 3",
                  body_number(task->who));
        return true;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_SCREEN, s->verb_span,
                                 "%s has set no screen before this", who_text(m, task->who).at);
    diag_help(m->diags, diag,
              "write the screen first: %d screens for 3; or use another verb: %d "
              "cuts to the rim",
              body_number(task->who), body_number(task->who));
    return false;
}

static bool screen_for(struct maker *m, const struct sentence *s, const struct voice *voice,
                       struct task *task)
{
    if (s->object.kind != WHO_NONE) {
        if (!task_set_other(m, s, voice, task)) {
            return false;
        }
    } else {
        int before = m->flow.screen[task->who];
        task->other = before >= 0 ? task_at(m, (size_t)before)->other : m->flow.carried[task->who];
        if (task->other == BODY_NONE) {
            struct diag *diag =
                diag_add(m->diags, DIAG_PLAY_NO_SCREEN, s->verb_span,
                         "%s has no screen left to set again", who_text(m, task->who).at);
            diag_help(m->diags, diag, "say for whom: %d re-screens for 3", body_number(task->who));
            return false;
        }
    }
    if (task->other == task->who) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_SELF, s->object.span, "%s cannot screen for %s",
                     who_text(m, task->who).at, who_text(m, task->who).at);
        diag_help(m->diags, diag,
                  "name a team-mate; in an action, give each role a player of its own");
        return false;
    }
    return true;
}

/* screens away for 3, and 3 stands on the side of the ball. */
static void note_away(struct maker *m, const struct sentence *s, const struct task *task)
{
    body holder = m->flow.holder;
    if (s->screen != SCREEN_AWAY || holder == BODY_NONE || holder == task->who ||
        note_is_of_mirror(m)) {
        return;
    }
    enum side ball = where_side(m->flow.at[holder]), user = where_side(m->flow.at[task->other]);
    if (ball == SIDE_NONE || ball != user) {
        return;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_AWAY, s->span,
                                 "%s stands on the side of the ball, and a screen away is for "
                                 "somebody on the other side",
                                 who_text(m, task->other).at);
    for (body b = 0; b < BODY_COACH; b++) {
        enum side side = where_side(m->flow.at[b]);
        if (on_floor(m, b) && b != task->who && side != SIDE_NONE && side != ball) {
            diag_help(m->diags, diag,
                      "write %d screens for %d; or the one who is meant, as in %d screens away for "
                      "%d",
                      body_number(task->who), body_number(task->other), body_number(task->who),
                      body_number(b));
            return;
        }
    }
    diag_help(m->diags, diag, "write %d screens for %d", body_number(task->who),
              body_number(task->other));
}

bool make_screen(struct maker *m, const struct sentence *s, const struct voice *voice,
                 struct task *task, struct work *work)
{
    (void)work;
    if (task->verb == VERB_RE_SCREENS && !task_own_screen(m, s, task)) {
        return false;
    }
    if (!screen_for(m, s, voice, task)) {
        return false;
    }
    if (s->on) {
        task->on = who_body(m, s->on, voice);
        if (task->on == BODY_NONE) {
            return false;
        }
    }
    task->screen = s->screen;
    note_away(m, s, task);
    if (s->place) {
        if (!task_set_goal(m, s, voice, task)) {
            return false;
        }
    } else {
        struct vec2 user = m->flow.at[task->other];
        task->planned = vec2_along(user, vec2_unit(vec2_scale(user, -1)), SCREEN_OFF);
    }
    m->flow.at[task->who] = task->planned;
    m->flow.screen[task->who] = (int)task_count(m);
    m->flow.screened[task->who] = true;
    return true;
}

/* The latest screen that `by` has set for `user` in this segment, or -1. */
static int screen_by(const struct maker *m, body by, body user)
{
    for (size_t i = task_count(m); i-- > 0;) {
        const struct task *task = task_at(m, i);
        if (task->kind == TASK_SCREEN && task->who == by && task->other == user) {
            return (int)i;
        }
    }
    return -1;
}

static bool use_screeners(struct maker *m, const struct sentence *s, const struct voice *voice,
                          struct task *task)
{
    if (!task_set_other(m, s, voice, task)) {
        return false;
    }
    if (s->object2) {
        task->other2 = who_body(m, s->object2, voice);
        if (task->other2 == BODY_NONE) {
            return false;
        }
    }
    if (task->other == task->who || task->other2 == task->who) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_SELF, s->object.span, "%s cannot use a screen of %s",
                     who_text(m, task->who).at, who_text(m, task->who).at);
        diag_help(m->diags, diag,
                  "name a team-mate; in an action, give each role a player of its own");
        return false;
    }
    return true;
}

bool make_use(struct maker *m, const struct sentence *s, const struct voice *voice,
              struct task *task, struct work *work)
{
    if (!use_screeners(m, s, voice, task) || !task_set_goal(m, s, voice, task)) {
        return false;
    }
    task->screen_task = screen_by(m, task->other, task->who);
    bool said = work->wants_ball || verb_is(task->verb, 'B');
    if (!said && m->flow.holder == task->who && !task_meets_ball(m, task)) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_RUNS_WITH_BALL, s->verb_span,
                                     "%s has the ball here, so this is run as a dribble",
                                     who_text(m, task->who).at);
        diag_help(m->diags, diag, "say `dribbles off` or `drives off`, or pass first");
        task->verb = VERB_DRIBBLES_OFF;
        work->wants_ball = true;
    }
    m->flow.at[task->who] = task->planned;
    return true;
}

/* ---- on the ball ---- */

/* Somewhere in this step, on whichever way through it, somebody gives that player the ball. */
static bool is_given_ball(const struct step *step, body who)
{
    for (int b = -1; b < (int)step->branches.count; b++) {
        for (size_t i = 0; i < step_task_count(step, b); i++) {
            if (task_gives_ball_to(step_task(step, b, i), who)) {
                return true;
            }
        }
    }
    return false;
}

static void refuse_ball_screen(struct maker *m, const struct task *task, body holder)
{
    int by = body_number(task->who), whom = body_number(task->other);
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_BALL_SCREEN, task->span,
                 "a ball screen for %s, who has no ball here", who_text(m, task->other).at);
    diag_help(m->diags, diag,
              "write %d screens for %d; or, for who has the ball, %d ball screens for %d", by, whom,
              by, body_number(holder));
    m->play->broken = true;
}

/* One way through a step: who has the ball follows the order of the lines. */
static void ball_screens_on(struct maker *m, size_t index, int branch)
{
    const struct step *steps = m->play->steps.at, *step = &steps[index];
    body holder = m->holders[index];
    for (size_t i = 0; i < step_task_count(step, branch) && holder != BODY_NONE; i++) {
        const struct task *task = step_task(step, branch, i);
        if (task_gives_ball(task)) {
            holder = task->other;
        } else if (task->kind == TASK_SHOOT) {
            return; /* whose the ball is then is for the run */
        }
        bool own = branch < 0 || i >= step->tasks.count;
        if (task->kind != TASK_SCREEN || task->screen != SCREEN_BALL || !own ||
            task->other == holder || is_given_ball(step, task->other) ||
            (index + 1 < m->play->steps.count && is_given_ball(&steps[index + 1], task->other))) {
            continue;
        }
        refuse_ball_screen(m, task, holder);
    }
}

void screens_fit_ball(struct maker *m)
{
    for (size_t i = 0; i < m->play->steps.count && !m->play->broken; i++) {
        for (int b = -1; b < (int)m->play->steps.at[i].branches.count; b++) {
            ball_screens_on(m, i, b);
        }
    }
}
