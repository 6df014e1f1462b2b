/* SPDX-License-Identifier: MIT */
/* moves: sentences that move a player, with the ball or without, or have one stand. */
#include "floor/play/sentence.h"

static body mate_at(const struct maker *m, struct vec2 p, body but)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != but && on_floor(m, b) && vec2_near(m->flow.at[b], p, THERE)) {
            return b;
        }
    }
    return BODY_NONE;
}

static void fills_whose(const struct maker *m, const struct task *task, struct work *work)
{
    work->fills = task->goal.kind == GOAL_POINT && task->goal.who != BODY_NONE
                      ? task->goal.who
                      : mate_at(m, task->planned, task->who);
    for (body b = 0; b < BODY_COACH && work->fills == BODY_NONE; b++) { /* sent off already */
        if (b != task->who && on_floor(m, b) && vec2_near(m->stood[b], task->planned, THERE)) {
            work->fills = b;
        }
    }
    work->fills_where = task->planned;
}

static void with_the_ball(struct maker *m, const struct sentence *s, struct task *task)
{
    if (m->flow.holder != task->who || task_meets_ball(m, task)) {
        return;
    }
    task->kind = TASK_CARRY;
    enum diag_code code =
        verb_is(task->verb, 'W') ? DIAG_PLAY_GOES_WITH_BALL : DIAG_PLAY_RUNS_WITH_BALL;
    struct diag *diag =
        diag_add(m->diags, code, s->verb_span, "%s has the ball here, so this is run as a dribble",
                 who_text(m, task->who).at);
    diag_help(m->diags, diag, "say `dribbles to`, or pass first");
}

bool make_move(struct maker *m, const struct sentence *s, const struct voice *voice,
               struct task *task, struct work *work)
{
    if (verb_is(task->verb, 'O')) {
        if (!task_own_screen(m, s, task)) {
            return false;
        }
        task->slip = verb_is(task->verb, 'X');
    }
    if (task->verb == VERB_REPLACES) {
        if (!task_set_other(m, s, voice, task)) {
            return false;
        }
        task->goal = goal_at(m->stood[task->other]);
        task->goal.who = task->other;
        task->goal_written = true;
        task->planned = task->goal.at;
    } else if (task->shape == SHAPE_SETUP && !s->place) {
        task->goal.kind = GOAL_BODY;
        task->goal.who = who_body(m, &s->object, voice);
        if (task->goal.who == BODY_NONE) {
            return false;
        }
    } else if (!task_set_goal(m, s, voice, task)) {
        return false;
    }
    if (verb_is(task->verb, 'L')) {
        fills_whose(m, task, work);
    }
    if (task->shape == SHAPE_SETUP) { /* out and back */
        task->planned = m->flow.at[task->who];
    } else {
        with_the_ball(m, s, task);
    }
    m->flow.at[task->who] = task->planned;
    if (task->verb == VERB_REBOUNDS) {
        m->flow.holder = task->who;
        m->flow.gave = (int)task_count(m);
    }
    return true;
}

bool make_hold(struct maker *m, const struct sentence *s, const struct voice *voice,
               struct task *task, struct work *work)
{
    (void)work;
    task->stay = verb_is(task->verb, 'Q');
    task->order = task->stay ? 0 : task->order;
    if (task->verb != VERB_FACES) {
        return true;
    }
    task->faces = true;
    if (s->place) {
        return where_goal(m, s->place, voice, task->who, &task->face);
    }
    task->face.kind = GOAL_BODY;
    task->face.who = who_body(m, &s->object, voice);
    return task->face.who != BODY_NONE;
}

bool make_carry(struct maker *m, const struct sentence *s, const struct voice *voice,
                struct task *task, struct work *work)
{
    (void)work;
    if (task->shape == SHAPE_AT) {
        if (!task_set_other(m, s, voice, task)) {
            return false;
        }
        task->goal.kind = GOAL_BESIDE;
        task->goal.who = task->other;
        task->planned = where_planned(m, &task->goal, task->who);
    } else if (!task_set_goal(m, s, voice, task)) {
        return false;
    }
    m->flow.at[task->who] = task->planned;
    return true;
}
