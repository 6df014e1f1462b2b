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

#define ROOM (2 * FEET) /* less than a step is no set-up; ours */

/* sets up toward the baseline, in the corner: nothing is left to go. */
static void note_no_room(struct maker *m, const struct sentence *s, const struct task *task)
{
    struct vec2 to = where_planned(m, &task->goal, task->who);
    if (!vec2_near(m->flow.at[task->who], to, ROOM) || note_is_of_mirror(m)) {
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_NO_ROOM, s->place ? s->place->span : s->span,
                 "%s stands there already: this set-up goes nowhere", who_text(m, task->who).at);
    diag_help(m->diags, diag, "set up toward another place: `%s sets up toward the rim`",
              who_text(m, task->who).at);
}

/* Where he has gone out of the screen before, as the step has it in each of its reads; or NULL. */
static const struct task *gone_before(const struct maker *m, const struct task *slip)
{
    for (size_t i = slip->screen_task >= 0 ? (size_t)slip->screen_task + 1 : task_count(m);
         i < task_count(m); i++) {
        const struct task *task = task_at(m, i);
        bool goes = task->kind == TASK_MOVE || task->kind == TASK_USE;
        if (goes && task->who == slip->who && task->shape != SHAPE_SETUP) {
            return task;
        }
    }
    return NULL;
}

static bool may_slip(struct maker *m, const struct sentence *s, const struct task *slip)
{
    const struct task *gone = gone_before(m, slip);
    if (gone) {
        int who = body_number(slip->who);
        const char *does = verb_row(gone->verb)->words;
        struct diag *diag = diag_add(
            m->diags, DIAG_PLAY_SLIP_LATE, s->verb_span,
            "%d %s out of this screen above, when it has been used: a slip comes before it "
            "is set",
            who, does);
        diag_help(m->diags, diag, "write `%d %s` into a read of its own: read otherwise", who,
                  does);
    }
    return !gone;
}

bool make_move(struct maker *m, const struct sentence *s, const struct voice *voice,
               struct task *task, struct work *work)
{
    if (verb_is(task->verb, 'O')) {
        if (!task_own_screen(m, s, task)) {
            return false;
        }
        task->slip = verb_is(task->verb, 'X');
        if (task->slip && !may_slip(m, s, task)) {
            return false;
        }
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
        note_no_room(m, s, task);
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

/* A corner without its side is either of the two. */
static bool is_at(struct maker *m, const struct place *place, const struct voice *voice, body who)
{
    bool spot = place->kind == PLACE_SPOT && place->side == SIDE_NONE && !place->backcourt &&
                spot_row(place->spot)->sided;
    struct goal goals[2] = {goal_none(), goal_none()};
    if (spot) {
        goals[0] = where_spot(m, place->spot, SIDE_LEFT);
        goals[1] = where_spot(m, place->spot, SIDE_RIGHT);
    } else if (!where_goal(m, place, voice, who, &goals[0])) {
        return true; /* reported already */
    }
    for (size_t i = 0; i < 2; i++) {
        if (goals[i].kind != GOAL_NONE &&
            vec2_near(where_planned(m, &goals[i], who), m->flow.at[who], THERE)) {
            return true;
        }
    }
    if (!spot) {
        return false;
    }
    /* the start line's high post, without a side, is the middle of both */
    struct vec2 left = where_planned(m, &goals[0], who), right = where_planned(m, &goals[1], who);
    struct vec2 middle = {(left.x + right.x) / 2, (left.y + right.y) / 2};
    return vec2_near(middle, m->flow.at[who], THERE);
}

/* 4 stays in the corner: where the player is already, or it is no standing. */
static bool stands_there(struct maker *m, const struct sentence *s, const struct voice *voice,
                         const struct task *task)
{
    if (is_at(m, s->place, voice, task->who)) {
        return true;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_STAYS_ELSEWHERE, s->place->span,
                 "%s is not there and cannot stay there", who_text(m, task->who).at);
    diag_help(m->diags, diag, "write `goes to` for a move there, or leave the place out");
    return false;
}

bool begins_there(struct maker *m, const struct sentence *s, const struct voice *voice, body who)
{
    if (!s->begins || is_at(m, s->begins, voice, who)) {
        return true;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_BEGINS_ELSEWHERE, s->begins->span,
                                 "%s is not there when this begins", who_text(m, who).at);
    diag_help(m->diags, diag, "leave out from where, or send the player there first");
    return false;
}

bool make_hold(struct maker *m, const struct sentence *s, const struct voice *voice,
               struct task *task, struct work *work)
{
    (void)work;
    task->stay = verb_is(task->verb, 'Q');
    task->order = task->stay ? 0 : task->order;
    if (task->stay && s->place) {
        return stands_there(m, s, voice, task);
    }
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

/* Where he was planned to be before task `index` of his. */
static struct vec2 was_before(const struct maker *m, body who, size_t index)
{
    while (index-- > 0) {
        const struct task *task = task_at(m, index);
        if (task->who == who && (task->kind == TASK_MOVE || task->kind == TASK_CARRY)) {
            return task->planned;
        }
    }
    return m->stood[who];
}

/* rejects 5 and drives baseline: with no place written he leaves the screen by that side, and not
 * straight for the rim. */
static void leaves_by_baseline(struct maker *m, const struct task *drive)
{
    size_t first = m->branch ? m->step->tasks.count : 0, i = task_count(m);
    while (i > first && task_at(m, i - 1)->who != drive->who) {
        i--;
    }
    struct task *use = i > first ? task_at(m, i - 1) : NULL;
    if (!drive->drive_baseline || !use || use->verb != VERB_REJECTS || use->goal_written) {
        return;
    }
    struct vec2 was = was_before(m, drive->who, i - 1);
    enum side side = where_side(was);
    if (side == SIDE_NONE && use->screen_task >= 0) { /* away from the screener */
        struct vec2 screener = task_at(m, (size_t)use->screen_task)->planned;
        side = where_side(vec2_sub(was, screener));
    }
    if (side != SIDE_NONE) {
        use->goal = where_spot(m, SPOT_SHORT_CORNER, side);
        use->goal_written = true;
        use->planned = use->goal.at;
    }
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
    leaves_by_baseline(m, task);
    m->flow.at[task->who] = task->planned;
    return true;
}
