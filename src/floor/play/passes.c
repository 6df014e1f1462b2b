/* SPDX-License-Identifier: MIT */
/* passes: sentences by which the ball changes hands, and the runs a receiver needs for it. */
#include "floor/play/sentence.h"

#define ARM .8 /* m: a hand-off at arm's length (ours) */

/* A movement written after the pass to the same player is the one that the pass meets, unless the
 * player has done something with the ball since, or is to catch it elsewhere. */
bool task_meets_ball(const struct maker *m, const struct task *task)
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

/* Where the sentence would take its subject, without a complaint; false when it names no place. */
static bool leads_to(struct maker *m, const struct said *said, body who, struct vec2 *to)
{
    if (said->form->kind != FORM_SENTENCE) {
        return false;
    }
    const struct sentence *s = said->form->sentence;
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

/* The latest that a line above says of him is that he stays. */
static bool told_to_stay(struct maker *m, body who)
{
    for (size_t i = m->line; i-- > 0;) {
        const struct said *said = &m->block->at[i];
        if (said->form->kind != FORM_SENTENCE) {
            continue;
        }
        const struct sentence *s = said->form->sentence;
        struct body_list subjects = who_subjects(m, s, said->voice);
        for (size_t k = 0; k < subjects.count; k++) {
            if (subjects.at[k] == who) {
                return s->verb == VERB_STAYS && !s->until;
            }
        }
    }
    return false;
}

static bool refuse_elsewhere(struct maker *m, const struct sentence *s, body who)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_STAYS_ELSEWHERE, s->place->span,
                 "%s stays where he is, and does not catch it there", who_text(m, who).at);
    diag_help(m->diags, diag, "leave the place out, or write what brings him there");
    return false;
}

static void supply(struct maker *m, const struct sentence *s, body who, struct goal goal,
                   enum verb verb)
{
    struct task task = task_new(m, NULL, verb, who);
    struct work work = work_new(m, NULL, verb, who);
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

/* Who threw the ball in and gets it back has come onto the floor for that, written or not. */
static void bring_in(struct maker *m, const struct sentence *s, struct task *task,
                     struct work *work)
{
    const struct court *court = m->play->court;
    struct vec2 at = m->flow.at[task->other];
    if (court_inside(court, at, 0) || !court_inside(court, m->flow.at[task->who], 0) ||
        told_to_stay(m, task->other)) {
        return;
    }
    diag_add(m->diags, DIAG_PLAY_SUPPLIED, s->span,
             "no sentence brings %s onto the floor: a step in, to the catch, is supplied",
             who_text(m, task->other).at);
    supply(m, s, task->other, goal_at(court_stepped_in(court, at)), VERB_GOES);
    *work = work_new(m, s, task->verb, task->who);
}

bool make_pass(struct maker *m, const struct sentence *s, const struct voice *voice,
               struct task *task, struct work *work)
{
    /* who is not said again is he who did something before, wherever he is now */
    bool again = s->object.span.begin < s->verb_span.begin;
    task->other =
        again ? who_body(m, &s->object, voice) : who_receiver(m, &s->object, voice, task->who);
    if (task->other == BODY_NONE) {
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
            if (told_to_stay(m, task->other)) {
                return refuse_elsewhere(m, s, task->other);
            }
            diag_add(m->diags, DIAG_PLAY_SUPPLIED, s->span,
                     "no sentence takes %s there: a cut to the catch is supplied",
                     who_text(m, task->other).at);
            supply(m, s, task->other, task->goal, VERB_CUTS);
            *work = work_new(m, s, task->verb, task->who);
        }
        m->flow.at[task->other] = p;
    } else {
        bring_in(m, s, task, work);
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

bool make_exchange(struct maker *m, const struct sentence *s, const struct voice *voice,
                   struct task *task, struct work *work)
{
    if (!task_set_other(m, s, voice, task)) {
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
        *work = work_new(m, s, task->verb, task->who);
    }
    m->flow.holder = to;
    m->flow.gave = (int)task_count(m);
    /* Who hands off stands as a screen for who takes it: "hand off and roll". */
    m->flow.screened[task->who] = true;
    return true;
}

static bool inside_arc(const struct court *court, struct vec2 p)
{
    double beside = p.x < 0 ? -p.x : p.x;
    return p.y < court->junction ? beside < court->straight : vec2_length(p) < court->arc;
}

/* shoots a three: from where the sentences so far leave the shooter. */
static void note_three(struct maker *m, const struct sentence *s, const struct task *task)
{
    const struct court *court = m->play->court;
    if (!s->three || court->arc <= 0 || !inside_arc(court, m->flow.at[task->who]) ||
        note_is_of_mirror(m)) {
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_THREE, s->verb_span,
                 "%s stands inside the arc: that shot is no three", who_text(m, task->who).at);
    diag_help(m->diags, diag, "send the player out first, or write `shoots`");
}

#define LAYUP_WITHIN (5 * FEET) /* of the rim; common practice, no source */

/* Lays it in, dunks, passes for a layup: the words from the verb on. */
static bool says_layup(const struct maker *m, const struct sentence *s)
{
    static const char *const words[] = {"lay", "lays", "layup", "laying", "dunk", "dunks"};
    struct span span = s->verb_span;
    if (span.source == SOURCE_NONE || span.begin > s->span.end) {
        return false;
    }
    span.end = s->span.end;
    struct str text = source_text(m->sources, span);
    for (size_t at = 0, end; at < text.size; at = end + 1) {
        for (end = at; end < text.size && text.at[end] != ' ' && text.at[end] != '-'; end++) {
        }
        struct str word = {text.at + at, end - at};
        for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
            if (str_equal_fold(word, str_of(words[i]))) {
                return true;
            }
        }
    }
    return false;
}

/* A lay-up from where the sentences so far leave the shooter. */
static void note_layup(struct maker *m, const struct sentence *s, const struct task *task)
{
    double far = vec2_length(m->flow.at[task->who]);
    if (far <= LAYUP_WITHIN || note_is_of_mirror(m) || !says_layup(m, s)) {
        return;
    }
    struct str who = who_text(m, task->who);
    struct strbuf text;
    strbuf_init(&text, m->arena);
    play_length(&text, m->play, far);
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_LAYUP, s->span,
                                 "%.*s is %s out: too far for a lay-up", STR_ARG(who), text.at);
    diag_help(m->diags, diag, "write `%.*s drives` first", STR_ARG(who));
}

bool make_shoot(struct maker *m, const struct sentence *s, const struct voice *voice,
                struct task *task, struct work *work)
{
    (void)voice, (void)work;
    note_three(m, s, task);
    note_layup(m, s, task);
    m->flow.holder = BODY_NONE;
    m->flow.gave = -1;
    return true;
}
