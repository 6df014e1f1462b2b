/* SPDX-License-Identifier: MIT */
/* sentence: one sentence as tasks of the closed set, and what is planned after it. Verbs are known
 * by their rows and traits, never by name, but for the few that are one of a kind. */
#include "floor/play/resolve.h"

#include "base/real.h"

#define THERE (1.0)     /* m: a sentence that ends this near takes the receiver there (ours) */
#define WIDE (5 * FEET) /* language.md: `wide` is 5 ft off, `tight` 1 ft off */
#define TIGHT (1 * FEET)
#define SCREEN_OFF (1.2)   /* m: about where a screener stands from the player screened for */
#define MEETS_WITHIN (2.0) /* m: nearer than this a hand-off needs nobody to come */
#define ARM (.8)           /* m: a hand-off at arm's length */

size_t task_count(const struct maker *m)
{
    return m->step->tasks.count + (m->branch ? m->branch->tasks.count : 0);
}

struct task *task_at(const struct maker *m, size_t index)
{
    size_t common = m->step->tasks.count;
    if (index < common) {
        return &m->step->tasks.at[index];
    }
    return &m->branch->tasks.at[index - common];
}

struct task *sentence_add(struct maker *m, const struct task *task, const struct work *work)
{
    if (m->branch) {
        VEC_PUSH(m->arena, &m->branch->tasks, *task);
    } else {
        VEC_PUSH(m->arena, &m->step->tasks, *task);
    }
    VEC_PUSH(m->arena, &m->works, *work);
    return task_at(m, task_count(m) - 1);
}

static struct task task_of(const struct maker *m, const struct sentence *s, enum verb verb,
                           body who)
{
    const struct verb_row *row = verb_row(verb);
    struct task task = {.verb = verb,
                        .who = who,
                        .other = BODY_NONE,
                        .other2 = BODY_NONE,
                        .on = BODY_NONE,
                        .path_who = BODY_NONE,
                        .goal = goal_none(),
                        .path_goal = goal_none(),
                        .face = goal_none(),
                        .planned = m->flow.at[who],
                        .shape = row->shape,
                        .effort = row->pace,
                        .screen_task = -1,
                        .order = m->order,
                        .group = m->group,
                        .sentence = s};
    static const enum task_kind kinds[] = {
        [VERB_MOVE] = TASK_MOVE,         [VERB_HOLD] = TASK_HOLD,
        [VERB_CARRY] = TASK_CARRY,       [VERB_PASS] = TASK_PASS,
        [VERB_EXCHANGE] = TASK_EXCHANGE, [VERB_SHOOT] = TASK_SHOOT,
        [VERB_SCREEN] = TASK_SCREEN,     [VERB_USE] = TASK_USE};
    task.kind = kinds[row->task];
    if (s) {
        task.span = s->span;
    }
    return task;
}

/* The player's last task of the segment, or -1. */
static int last_of(const struct maker *m, body who)
{
    for (size_t i = task_count(m); i-- > 0;) {
        if (task_at(m, i)->who == who) {
            return (int)i;
        }
    }
    return -1;
}

static struct work work_of(const struct maker *m, const struct sentence *s, enum verb verb,
                           body who)
{
    struct work work = {.sentence = s,
                        .event_subject = BODY_NONE,
                        .event_object = BODY_NONE,
                        .gave = m->flow.holder == who ? m->flow.gave : -1,
                        .holder = m->flow.holder,
                        .fills = BODY_NONE,
                        .own_screen = -1,
                        .above = m->above};
    for (const char *need = verb_row(verb)->needs; *need; need++) {
        work.wants_ball = work.wants_ball || *need == 'B';
    }
    int last = last_of(m, who);
    if (verb_is(verb, 'O')) {
        work.own_screen = m->flow.screen[who];
    } else if (last >= 0 && task_at(m, (size_t)last)->kind == TASK_SCREEN) {
        work.own_screen = last;
    }
    return work;
}

/* ---- modifiers ---- */

static void set_pace(struct task *task, enum pace pace)
{
    static const enum verb_pace efforts[] = {[PACE_WALK] = EFFORT_WALK,
                                             [PACE_JOG] = EFFORT_JOG,
                                             [PACE_RUN] = EFFORT_RUN,
                                             [PACE_SPRINT] = EFFORT_SPRINT};
    if (pace != PACE_VERB) {
        task->effort = efforts[pace];
    }
}

static bool set_face(struct maker *m, const struct sentence *s, const struct voice *voice,
                     struct task *task)
{
    if (s->face == FACE_NONE) {
        return true;
    }
    task->faces = true;
    task->faces_back = s->face == FACE_BACK;
    if (s->face_place) {
        return where_goal(m, s->face_place, voice, task->who, &task->face);
    }
    task->face.kind = GOAL_BODY;
    task->face.who = who_body(m, &s->face_who, voice);
    return task->face.who != BODY_NONE;
}

static bool set_path(struct maker *m, const struct sentence *s, const struct voice *voice,
                     struct task *task)
{
    task->path = s->path;
    if (s->path == PATH_NONE) {
        return true;
    }
    if (s->path_place) {
        return where_goal(m, s->path_place, voice, task->who, &task->path_goal);
    }
    task->path_who = who_body(m, &s->path_who, voice);
    return task->path_who != BODY_NONE;
}

static bool set_modifiers(struct maker *m, const struct sentence *s, const struct voice *voice,
                          struct task *task)
{
    set_pace(task, s->pace);
    task->taking = s->taking.value;
    task->early = s->early;
    task->gap = s->width == WIDTH_WIDE ? WIDE : s->width == WIDTH_TIGHT ? TIGHT : 0;
    task->length = s->length.value > 0 ? where_metres(m, s->length) : 0;
    task->duration = s->duration.value;
    task->drive_baseline = s->drive == DRIVE_BASELINE;
    task->drive_middle = s->drive == DRIVE_MIDDLE;
    return set_face(m, s, voice, task) && set_path(m, s, voice, task);
}

/* ---- where to ---- */

static void note_default(struct maker *m, const struct sentence *s, const struct task *task)
{
    const struct goal *goal = &task->goal;
    if (goal->spot == SPOT_COUNT || goal->spot == SPOT_RIM || goal->kind != GOAL_POINT ||
        goal->spot == SPOT_HALF_COURT) {
        return;
    }
    static const char *const sides[] = {
        [SIDE_NONE] = "", [SIDE_LEFT] = "left ", [SIDE_RIGHT] = "right "};
    diag_add(m->diags, DIAG_PLAY_DEFAULT, s->verb_span, "no place is written: %s goes to %s%s",
             who_text(m, task->who).at, sides[goal->side], spot_row(goal->spot)->word);
}

static bool set_goal(struct maker *m, const struct sentence *s, const struct voice *voice,
                     struct task *task)
{
    if (s->place) {
        task->goal_written = true;
        if (!where_goal(m, s->place, voice, task->who, &task->goal)) {
            return false;
        }
    } else {
        enum verb_default place = verb_row(task->verb)->place;
        if (!where_default(m, place, task->who, s->verb_span, &task->goal)) {
            return false;
        }
        note_default(m, s, task);
    }
    if (task->goal.kind != GOAL_NONE) {
        task->planned = where_planned(m, &task->goal, task->who);
    }
    task->runs_through = verb_is(task->verb, 'R') && task->goal.spot == SPOT_RIM;
    return true;
}

static bool set_other(struct maker *m, const struct sentence *s, const struct voice *voice,
                      struct task *task)
{
    task->other = who_body(m, &s->object, voice);
    return task->other != BODY_NONE;
}

/* ---- the kinds of tasks ---- */

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
    work->fills_where = task->planned;
}

static bool own_screen(struct maker *m, const struct sentence *s, struct task *task)
{
    task->screen_task = m->flow.screen[task->who];
    if (task->screen_task >= 0 || m->flow.screened[task->who]) {
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

/* A movement written after the pass to the same player is the one that the pass meets, unless the
 * player has done something with the ball since, or is to catch it elsewhere. */
static bool meets_the_ball(const struct maker *m, const struct task *task)
{
    if (m->flow.gave < 0) {
        return false;
    }
    const struct task *gift = task_at(m, (size_t)m->flow.gave);
    for (size_t i = (size_t)m->flow.gave + 1; i < task_count(m); i++) {
        const struct task *since = task_at(m, i);
        bool acts = since->kind == TASK_CARRY || (since->kind == TASK_HOLD && !since->stay);
        if (since->who == task->who && acts) {
            return false;
        }
    }
    if (gift->kind == TASK_EXCHANGE) {
        return vec2_near(task->planned, gift->planned, MEETS_WITHIN);
    }
    if (gift->goal_written) {
        return vec2_near(task->planned, m->flow.at[task->who], THERE);
    }
    return gift->kind == TASK_PASS && !verb_is(task->verb, 'W');
}

static void with_the_ball(struct maker *m, const struct sentence *s, struct task *task)
{
    if (m->flow.holder != task->who || meets_the_ball(m, task)) {
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

static bool make_move(struct maker *m, const struct sentence *s, const struct voice *voice,
                      struct task *task, struct work *work)
{
    if (verb_is(task->verb, 'O')) {
        if (!own_screen(m, s, task)) {
            return false;
        }
        task->slip = verb_is(task->verb, 'X');
    }
    if (task->verb == VERB_REPLACES) {
        if (!set_other(m, s, voice, task)) {
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
    } else if (!set_goal(m, s, voice, task)) {
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

static bool make_hold(struct maker *m, const struct sentence *s, const struct voice *voice,
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

static bool make_carry(struct maker *m, const struct sentence *s, const struct voice *voice,
                       struct task *task, struct work *work)
{
    (void)work;
    if (task->shape == SHAPE_AT) {
        if (!set_other(m, s, voice, task)) {
            return false;
        }
        task->goal.kind = GOAL_BESIDE;
        task->goal.who = task->other;
        task->planned = where_planned(m, &task->goal, task->who);
    } else if (!set_goal(m, s, voice, task)) {
        return false;
    }
    m->flow.at[task->who] = task->planned;
    return true;
}

/* Where the sentence would take its subject, without a complaint; false when it names no place. */
static bool leads_to(struct maker *m, const struct said *said, body who, struct vec2 *to)
{
    if (said->form->kind != FORM_SENTENCE) {
        return false;
    }
    const struct sentence *s = &said->form->sentence;
    const struct verb_row *row = verb_row(s->verb);
    if (row->task != VERB_MOVE && row->task != VERB_CARRY && row->task != VERB_USE) {
        return false;
    }
    struct diags aside, *kept = m->diags;
    diags_init(&aside, m->arena);
    m->diags = &aside;
    struct body_list subjects = who_subjects(m, s, said->voice);
    bool found = false;
    for (size_t i = 0; i < subjects.count && !found; i++) {
        struct goal goal;
        found = subjects.at[i] == who &&
                (s->place ? where_goal(m, s->place, said->voice, who, &goal)
                          : where_default(m, row->place, who, s->span, &goal)) &&
                goal.kind != GOAL_NONE;
        if (found) {
            *to = where_planned(m, &goal, who);
        }
    }
    m->diags = kept;
    return found;
}

static bool any_leads_to(struct maker *m, const said_list *lines, size_t from, body who,
                         struct vec2 p)
{
    for (size_t i = from; i < lines->count; i++) {
        struct vec2 to;
        if (leads_to(m, &lines->at[i], who, &to) && vec2_near(to, p, THERE)) {
            return true;
        }
    }
    return false;
}

/* A later sentence of the block, or of a branch behind it, takes `who` to p. */
static bool goes_there_later(struct maker *m, body who, struct vec2 p)
{
    if (any_leads_to(m, m->block, m->line + 1, who, p)) {
        return true;
    }
    for (size_t i = 0; !m->branch && i < m->script->branches.count; i++) {
        if (any_leads_to(m, &m->script->branches.at[i].lines, 0, who, p)) {
            return true;
        }
    }
    return false;
}

static void supply(struct maker *m, const struct sentence *s, body who, struct goal goal,
                   enum verb verb)
{
    struct task task = task_of(m, NULL, verb, who);
    struct work work = work_of(m, NULL, verb, who);
    task.kind = TASK_MOVE;
    task.goal = goal;
    task.planned = where_planned(m, &goal, who);
    task.supplied = true;
    task.order = 0;
    task.group = 0;
    task.span = s->span;
    m->flow.at[who] = task.planned;
    sentence_add(m, &task, &work);
}

static bool make_pass(struct maker *m, const struct sentence *s, const struct voice *voice,
                      struct task *task, struct work *work)
{
    if (!set_other(m, s, voice, task)) {
        return false;
    }
    task->pass = s->pass;
    if (task->verb == VERB_INBOUNDS && court_inside(m->play->court, m->flow.at[task->who], 0)) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_INBOUNDS, s->verb_span,
                                     "%s is on the floor: only a player out of bounds inbounds",
                                     who_text(m, task->who).at);
        diag_help(m->diags, diag,
                  "write `passes to`, or start it there: ball %d out of bounds at "
                  "left hash",
                  body_number(task->who));
    }
    if (s->place) {
        task->goal_written = true;
        if (!where_goal(m, s->place, voice, task->other, &task->goal)) {
            return false;
        }
        struct vec2 p = where_planned(m, &task->goal, task->other);
        if (!vec2_near(m->flow.at[task->other], p, THERE) && !goes_there_later(m, task->other, p)) {
            diag_add(m->diags, DIAG_PLAY_SUPPLIED, s->span,
                     "no sentence takes %s there: a cut to the catch is supplied",
                     who_text(m, task->other).at);
            supply(m, s, task->other, task->goal, VERB_CUTS);
            *work = work_of(m, s, task->verb, task->who);
        }
        m->flow.at[task->other] = p;
    }
    m->flow.holder = task->other;
    m->flow.gave = (int)task_count(m);
    return true;
}

static bool has_movement(struct maker *m, const said_list *lines, body who)
{
    for (size_t i = 0; i < lines->count; i++) {
        struct vec2 to;
        if (leads_to(m, &lines->at[i], who, &to)) {
            return true;
        }
    }
    return false;
}

static bool make_exchange(struct maker *m, const struct sentence *s, const struct voice *voice,
                          struct task *task, struct work *work)
{
    if (!set_other(m, s, voice, task)) {
        return false;
    }
    body to = task->other;
    bool comes = has_movement(m, m->block, to) ||
                 (m->branch && has_movement(m, &m->script->lines, to)) ||
                 vec2_near(m->flow.at[to], m->flow.at[task->who], MEETS_WITHIN);
    if (!comes && to != task->who) {
        diag_add(m->diags, DIAG_PLAY_SUPPLIED, s->span,
                 "no sentence brings %s to the ball: a run to the hand-off is supplied",
                 who_text(m, to).at);
        struct vec2 giver = m->flow.at[task->who];
        struct vec2 way = vec2_unit(vec2_sub(m->flow.at[to], giver));
        supply(m, s, to, goal_at(vec2_along(giver, way, ARM)), VERB_GOES);
        *work = work_of(m, s, task->verb, task->who);
    }
    m->flow.holder = to;
    m->flow.gave = (int)task_count(m);
    return true;
}

static bool make_shoot(struct maker *m, const struct sentence *s, const struct voice *voice,
                       struct task *task, struct work *work)
{
    (void)s, (void)voice, (void)task, (void)work;
    m->flow.holder = BODY_NONE;
    m->flow.gave = -1;
    return true;
}

static bool screen_for(struct maker *m, const struct sentence *s, const struct voice *voice,
                       struct task *task)
{
    if (s->object.kind != WHO_NONE) {
        if (!set_other(m, s, voice, task)) {
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
        diag_add(m->diags, DIAG_PLAY_SELF, s->object.span, "%s cannot screen for %s",
                 who_text(m, task->who).at, who_text(m, task->who).at);
        return false;
    }
    return true;
}

static bool make_screen(struct maker *m, const struct sentence *s, const struct voice *voice,
                        struct task *task, struct work *work)
{
    (void)work;
    if (task->verb == VERB_RE_SCREENS && !own_screen(m, s, task)) {
        return false;
    }
    if (!screen_for(m, s, voice, task)) {
        return false;
    }
    if (s->on.kind != WHO_NONE) {
        task->on = who_body(m, &s->on, voice);
        if (task->on == BODY_NONE) {
            return false;
        }
    }
    task->screen = s->screen;
    if (s->place) {
        if (!set_goal(m, s, voice, task)) {
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

static bool screen_is_used(const struct maker *m, size_t index)
{
    for (size_t i = 0; i < task_count(m); i++) {
        if (task_uses(m, task_at(m, i), (int)index)) {
            return true;
        }
    }
    return false;
}

/* D9: a use without its screener means the one screener waiting for the user. */
static bool waiting_screener(struct maker *m, const struct sentence *s, struct task *task)
{
    size_t found = 0;
    for (size_t i = 0; i < task_count(m); i++) {
        const struct task *screen = task_at(m, i);
        if (screen->kind == TASK_SCREEN && screen->other == task->who && !screen_is_used(m, i)) {
            task->other = screen->who;
            found++;
        }
    }
    for (body b = 0; b < BODY_COACH && found == 0; b++) {
        if (m->flow.carried[b] == task->who) {
            task->other = b;
            found++;
        }
    }
    if (found == 1) {
        return true;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_WHICH_SCREEN, s->verb_span,
                 found ? "more than one screen waits for %s" : "no screen waits for %s",
                 who_text(m, task->who).at);
    diag_help(m->diags, diag, "say whose: off 5");
    return false;
}

static bool use_screeners(struct maker *m, const struct sentence *s, const struct voice *voice,
                          struct task *task)
{
    if (s->object.kind == WHO_NONE) {
        return waiting_screener(m, s, task);
    }
    if (!set_other(m, s, voice, task)) {
        return false;
    }
    if (s->object2.kind != WHO_NONE) {
        task->other2 = who_body(m, &s->object2, voice);
        if (task->other2 == BODY_NONE) {
            return false;
        }
    }
    if (task->other == task->who || task->other2 == task->who) {
        diag_add(m->diags, DIAG_PLAY_SELF, s->object.span, "%s cannot use a screen of %s",
                 who_text(m, task->who).at, who_text(m, task->who).at);
        return false;
    }
    return true;
}

static bool make_use(struct maker *m, const struct sentence *s, const struct voice *voice,
                     struct task *task, struct work *work)
{
    (void)work;
    if (!use_screeners(m, s, voice, task) || !set_goal(m, s, voice, task)) {
        return false;
    }
    task->screen_task = screen_by(m, task->other, task->who);
    m->flow.at[task->who] = task->planned;
    return true;
}

typedef bool maker_of_task(struct maker *m, const struct sentence *s, const struct voice *voice,
                           struct task *task, struct work *work);
static maker_of_task *const makers[] = {[TASK_MOVE] = make_move,         [TASK_HOLD] = make_hold,
                                        [TASK_CARRY] = make_carry,       [TASK_PASS] = make_pass,
                                        [TASK_EXCHANGE] = make_exchange, [TASK_SHOOT] = make_shoot,
                                        [TASK_SCREEN] = make_screen,     [TASK_USE] = make_use};

/* D9: `cuts around 5` is a path, unless 5's latest screen is for that cutter. */
static enum verb verb_meant(struct maker *m, const struct sentence *s, const struct voice *voice,
                            body who, struct sentence *changed)
{
    if (s->verb != VERB_CUTS || s->path != PATH_AROUND || s->path_place) {
        return s->verb;
    }
    body by = who_body(m, &s->path_who, voice);
    int latest = by < BODY_COUNT ? m->flow.screen[by] : -1;
    if (latest < 0 || task_at(m, (size_t)latest)->other != who) {
        return s->verb;
    }
    *changed = *s;
    changed->verb = VERB_COMES;
    changed->object = s->path_who;
    changed->path = PATH_NONE;
    return VERB_COMES;
}

static void set_event(struct maker *m, const struct event *event, const struct voice *voice,
                      struct work *work)
{
    if (event->kind == EVENT_NONE) {
        return;
    }
    work->event_subject = who_body(m, &event->subject, voice);
    if (event->object.kind != WHO_NONE) {
        work->event_object = who_body(m, &event->object, voice);
    }
    if (work->event_object != BODY_NONE) {
        work->event_where = m->flow.at[work->event_object];
    }
}

static void one_task(struct maker *m, const struct sentence *s, const struct voice *voice, body who)
{
    struct sentence changed;
    enum verb verb = verb_meant(m, s, voice, who, &changed);
    const struct sentence *meant = verb == s->verb ? s : &changed;
    struct task task = task_of(m, s, verb, who);
    struct work work = work_of(m, s, verb, who);
    if (!set_modifiers(m, meant, voice, &task) ||
        !makers[task.kind](m, meant, voice, &task, &work)) {
        m->play->broken = true;
        return;
    }
    set_event(m, &s->tie.event, voice, &work);
    sentence_add(m, &task, &work);
}

/* What the language has and this program does not run yet, each said on its own. */
static bool is_built(struct maker *m, const struct sentence *s, const struct body_list *subjects)
{
    const struct verb_row *row = verb_row(s->verb);
    for (size_t i = 0; i < subjects->count; i++) {
        if (body_is_defender(subjects->at[i]) || row->task == VERB_GUARD) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_DEFENDER_NOT_YET, s->span,
                                         "a sentence for one defender is not built yet");
            diag_help(m->diags, diag,
                      "defenders move by rule (defense man gap); say what one of "
                      "them does in a read: read x3 trails");
            return false;
        }
    }
    if (row->task == VERB_SCREEN && (subjects->count > 1 || s->screen == SCREEN_DOUBLE)) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_DOUBLE_NOT_YET, s->span,
                                     "two screeners in one sentence are not built yet");
        diag_help(m->diags, diag, "write two sentences: 4 screens for 2; 5 screens for 2");
        return false;
    }
    return true;
}

void sentence_tasks(struct maker *m, const struct sentence *s, const struct voice *voice)
{
    struct body_list subjects = who_subjects(m, s, voice);
    if (subjects.count == 0 || !is_built(m, s, &subjects)) {
        m->play->broken = true;
        return;
    }
    if (s->until.kind != EVENT_NONE) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_UNTIL_NOT_YET, s->until.span, "`until` is not built yet");
        diag_help(m->diags, diag, "give the movement its end by a place or a time: taking 1.5 s");
    }
    size_t first = task_count(m);
    m->order += !verb_is(s->verb, 'Q');
    m->group++;
    for (size_t i = 0; i < subjects.count; i++) {
        one_task(m, s, voice, subjects.at[i]);
    }
    while (first < task_count(m) && task_at(m, first)->supplied) {
        first++;
    }
    if (first < task_count(m)) {
        m->above = (int)first;
    }
}
