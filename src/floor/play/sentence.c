/* SPDX-License-Identifier: MIT */
/* sentence: one sentence as tasks of the closed set, and what is planned after it. Verbs are known
 * by their rows and traits, never by name, but for the few that are one of a kind. */
#include "floor/play/sentence.h"

#include "base/real.h"

#define WIDE (5 * FEET) /* language.md: `wide` is 5 ft off, `tight` 1 ft off */
#define TIGHT (1 * FEET)
#define STEP_OVER (3 * FEET) /* ball and both feet past the line: a normal step (ours) */
#define NOWHERE (1 * FEET)   /* a way shorter than this is none (ours) */

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

struct task task_new(const struct maker *m, const struct sentence *s, enum verb verb, body who)
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
        [VERB_MOVE] = TASK_MOVE,     [VERB_HOLD] = TASK_HOLD,         [VERB_CARRY] = TASK_CARRY,
        [VERB_PASS] = TASK_PASS,     [VERB_EXCHANGE] = TASK_EXCHANGE, [VERB_SHOOT] = TASK_SHOOT,
        [VERB_SCREEN] = TASK_SCREEN, [VERB_USE] = TASK_USE,           [VERB_GUARD] = TASK_GUARD};
    task.kind = body_is_defender(who) ? TASK_GUARD : kinds[row->task]; /* `stays` is both */
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

struct work work_new(const struct maker *m, const struct sentence *s, enum verb verb, body who)
{
    struct work work = {.sentence = s,
                        .event = {.subject = BODY_NONE, .object = BODY_NONE},
                        .until = {.subject = BODY_NONE, .object = BODY_NONE},
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
    task->face.who = who_body(m, s->face_who, voice);
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
    task->path_who = who_body(m, s->path_who, voice);
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
    int right = voice->mirrored ? -1 : 1;
    task->drive_across = s->drive == DRIVE_RIGHT ? right : s->drive == DRIVE_LEFT ? -right : 0;
    return set_face(m, s, voice, task) && set_path(m, s, voice, task);
}

/* ---- where to ---- */

static void note_default(struct maker *m, const struct sentence *s, const struct task *task)
{
    const struct goal *goal = &task->goal;
    if (goal->spot == SPOT_COUNT || goal->spot == SPOT_RIM || goal->kind != GOAL_POINT ||
        goal->spot == SPOT_HALF_COURT || note_is_of_mirror(m)) {
        return;
    }
    static const char *const sides[] = {
        [SIDE_NONE] = "", [SIDE_LEFT] = "left ", [SIDE_RIGHT] = "right "};
    diag_add(m->diags, DIAG_PLAY_DEFAULT, s->verb_span, "no place is written: %s goes to %s%s",
             who_text(m, task->who).at, sides[goal->side], spot_row(goal->spot)->word);
}

/* 2 and 3 sink to the corners: each has one. */
static bool each_has_one(struct maker *m, const struct sentence *s, const struct task *task)
{
    for (size_t i = task_count(m); s->place->each && i-- > 0;) {
        const struct task *other = task_at(m, i);
        if (other->group == m->group && other->goal.kind == task->goal.kind &&
            other->goal.side == task->goal.side && other->who != task->who) {
            const char *side = task->goal.side == SIDE_LEFT ? "left" : "right";
            const char *word = spot_row(s->place->spot)->word;
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_SIDE, s->place->span,
                                         "which %s each? Both players are on the %s", word, side);
            diag_help(m->diags, diag, "write two sentences, with `left %s` and `right %s`", word,
                      word);
            return false;
        }
    }
    return true;
}

/* Who goes to the free-throw line goes to its middle; several go to where each is nearest. */
static void settle_on_line(const struct maker *m, const struct sentence *s, struct task *task)
{
    struct goal *goal = &task->goal;
    bool line = goal->kind == GOAL_LINE && goal->spot == SPOT_FREE_THROW_LINE;
    if (line && goal->side == SIDE_NONE && s->subject.count == 1) {
        goal->kind = GOAL_POINT;
        goal->at = court_spot(m->play->court, SPOT_FREE_THROW_LINE, SIDE_NONE);
    }
}

/* up the right sideline to the hash: to that of the line, unless the place has a side of its own.
 */
static const struct place *beside_line(const struct sentence *s, struct place *sided)
{
    const struct place *line = s->path == PATH_ALONG ? s->path_place : NULL;
    bool named = line && line->kind == PLACE_SPOT && line->spot == SPOT_SIDELINE &&
                 (line->side == SIDE_LEFT || line->side == SIDE_RIGHT);
    *sided = *s->place;
    if (named && sided->kind == PLACE_SPOT && sided->side == SIDE_NONE &&
        spot_row(sided->spot)->sided) {
        sided->side = line->side;
    }
    return sided;
}

/* On the line the ball is in the backcourt still: who brings it up to half court ends over it. */
static void bring_over(const struct maker *m, struct task *task)
{
    struct goal *goal = &task->goal;
    double from = m->flow.at[task->who].y, line = m->play->court->half_court;
    if (m->flow.holder == task->who && goal->kind == GOAL_POINT && goal->spot == SPOT_HALF_COURT &&
        from > line) {
        goal->at.y = line - STEP_OVER;
    }
}

/* Whose side a place is on that names none: of a screen his for whom it is set. */
static body whose_side(struct maker *m, const struct sentence *s, const struct voice *voice,
                       const struct task *task)
{
    bool screens = verb_row(task->verb)->task == VERB_SCREEN && s->object.kind == WHO_PLAYER &&
                   s->place->kind == PLACE_SPOT && s->place->side == SIDE_NONE;
    body who = screens && where_side_of(m, task->who) == SIDE_NONE ? who_body(m, &s->object, voice)
                                                                   : BODY_NONE;
    return who != BODY_NONE ? who : task->who;
}

bool task_set_goal(struct maker *m, const struct sentence *s, const struct voice *voice,
                   struct task *task)
{
    if (s->place) {
        struct place sided;
        task->goal_written = true;
        body whose = whose_side(m, s, voice, task);
        if (!where_goal(m, beside_line(s, &sided), voice, whose, &task->goal) ||
            !each_has_one(m, s, task)) {
            return false;
        }
        settle_on_line(m, s, task);
    } else {
        enum verb_default place = verb_row(task->verb)->place;
        if (!where_default(m, place, task->who, s->verb_span, &task->goal)) {
            return false;
        }
        note_default(m, s, task);
    }
    bring_over(m, task);
    if (task->goal.kind != GOAL_NONE) {
        task->planned = where_planned(m, &task->goal, task->who);
    }
    return true;
}

bool task_set_other(struct maker *m, const struct sentence *s, const struct voice *voice,
                    struct task *task)
{
    task->other = who_body(m, &s->object, voice);
    return task->other != BODY_NONE;
}

static maker_of_task *const makers[] = {
    [TASK_MOVE] = make_move,     [TASK_HOLD] = make_hold,         [TASK_CARRY] = make_carry,
    [TASK_PASS] = make_pass,     [TASK_EXCHANGE] = make_exchange, [TASK_SHOOT] = make_shoot,
    [TASK_SCREEN] = make_screen, [TASK_USE] = make_use,           [TASK_GUARD] = make_guard};

/* D9: `cuts around 5` is a path, unless 5's latest screen is for that cutter. */
static enum verb verb_meant(struct maker *m, const struct sentence *s, const struct voice *voice,
                            body who, struct sentence *changed)
{
    if (s->verb != VERB_CUTS || s->path != PATH_AROUND || s->path_place) {
        return s->verb;
    }
    body by = who_body(m, s->path_who, voice);
    int latest = by < BODY_COUNT ? m->flow.screen[by] : -1;
    if (latest < 0 || task_at(m, (size_t)latest)->other != who) {
        return s->verb;
    }
    *changed = *s;
    changed->verb = VERB_COMES;
    changed->object = *s->path_who;
    changed->path = PATH_NONE;
    return VERB_COMES;
}

static void set_event(struct maker *m, const struct event *event, const struct voice *voice,
                      struct named *by)
{
    if (!event) {
        return;
    }
    by->subject = who_body(m, &event->subject, voice);
    if (event->object.kind != WHO_NONE) {
        by->object = who_body(m, &event->object, voice);
    }
    if (by->object != BODY_NONE) {
        by->where = m->flow.at[by->object];
    }
}

/* ---- times and ways that can be kept ---- */

static void say_time(struct maker *m, const struct sentence *s, const char *word,
                     struct measure time)
{
    struct strbuf seconds;
    struct diag *diag;
    strbuf_init(&seconds, m->arena);
    strbuf_number(&seconds, time.value, 3);
    if (time.value >= NUMBER_TOP) { /* what is written is larger still */
        diag = diag_add(m->diags, DIAG_PLAY_TIME, s->span,
                        "what stands behind `%s` is longer than a step, %d s", word,
                        (int)LIMIT_STEP_SECONDS);
    } else if (time.value > 0) {
        diag = diag_add(m->diags, DIAG_PLAY_TIME, s->span, "`%s %s s` is longer than a step, %d s",
                        word, seconds.at, (int)LIMIT_STEP_SECONDS);
    } else {
        diag = diag_add(m->diags, DIAG_PLAY_TIME, s->span, "`%s %s s` is no time at all", word,
                        seconds.at);
    }
    diag_help(m->diags, diag, "write a time that can be kept, `%s 1.5 s`, or leave it out", word);
}

/* A hand-off and a shot take the time they take. */
static bool takes_time(struct maker *m, const struct sentence *s)
{
    enum verb_task task = verb_row(s->verb)->task;
    if (s->taking.unit == UNIT_NONE || (task != VERB_EXCHANGE && task != VERB_SHOOT)) {
        return true;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_TIME, s->span,
                 "`taking` says how long a movement or a pass lasts: a %s has its own time",
                 task == VERB_SHOOT ? "shot" : "hand-off");
    diag_help(m->diags, diag, "leave `taking` out");
    return false;
}

/* A third or more of any shot clock (24 to 35 s), most of a step (ours): mostly a point left out.
 */
#define TIME_LONG 10

static void say_long(struct maker *m, const struct sentence *s, const char *word, double seconds)
{
    struct strbuf text;
    strbuf_init(&text, m->arena);
    strbuf_number(&text, seconds, 3);
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_LONG_TIME, s->span,
                                 "`%s %s s` is much of a shot clock", word, text.at);
    strbuf_init(&text, m->arena);
    strbuf_number(&text, seconds / 10, 3);
    diag_help(m->diags, diag,
              "was `%s %s s` meant? To wait for something, name it: `until 3 is open`", word,
              text.at);
}

static bool times_fit(struct maker *m, const struct sentence *s)
{
    if (!takes_time(m, s)) {
        return false;
    }
    const struct {
        const char *word;
        struct measure time;
    } times[] = {{"taking", s->taking}, {"for", s->duration}};
    for (size_t i = 0; i < sizeof times / sizeof *times; i++) {
        double value = times[i].time.value;
        if (times[i].time.unit != UNIT_NONE && !(value > 0 && value <= LIMIT_STEP_SECONDS)) {
            say_time(m, s, times[i].word, times[i].time);
            return false;
        }
        if (times[i].time.unit != UNIT_NONE && value >= TIME_LONG) {
            say_long(m, s, times[i].word, value);
        }
    }
    return true;
}

/* No faster than at top speed all the way, straight. A place that hangs on where others are may
 * come to meet the mover a little. */
static bool is_in_time(struct maker *m, const struct task *task, const struct work *work,
                       struct vec2 from)
{
    bool goes = task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE ||
                task->kind == TASK_SCREEN;
    if (!goes || task->taking <= 0) {
        return true;
    }
    bool ball = task->kind == TASK_CARRY || (task->kind == TASK_USE && work->holder == task->who);
    double top = m->play->speed->sprint * (ball ? m->play->speed->dribble : 1);
    double way = vec2_distance(from, task->planned);
    double least = (way - (task->goal.kind == GOAL_POINT ? 0 : THERE)) / top;
    if (task->taking >= least) {
        return true;
    }
    struct strbuf text;
    strbuf_init(&text, m->arena);
    strbuf_print(&text, "%s cannot go ", who_text(m, task->who).at);
    play_length(&text, m->play, way);
    strbuf_text(&text, " in ");
    strbuf_number(&text, task->taking, 3);
    strbuf_text(&text, " s: at top speed it takes ");
    strbuf_number(&text, least, 2);
    strbuf_text(&text, " s");
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_TIME, task->span, "%s", text.at);
    diag_help(m->diags, diag, "give it more time, or leave `taking` out");
    return false;
}

/* Where the sentences so far leave a player; a pass that looks ahead to a run is not one of them.
 */
static struct vec2 left_at(const struct maker *m, body who)
{
    int last = last_of(m, who);
    return last >= 0 ? task_at(m, (size_t)last)->planned : m->stood[who];
}

static void note_nowhere(struct maker *m, const struct sentence *s, const struct task *task,
                         struct vec2 from)
{
    bool fixed = task->goal.kind == GOAL_POINT || task->goal.who == task->who;
    bool straight = task->shape == SHAPE_STRAIGHT && task->path == PATH_NONE && fixed;
    bool round =
        task->kind == TASK_USE && fixed &&
        (task->shape == SHAPE_STRAIGHT || task->shape == SHAPE_CURL ||
         (task->shape == SHAPE_FADE && last_of(m, task->who) < 0)); /* after a set-up: back */
    if (((task->kind == TASK_MOVE && straight) || round) && task->goal_written &&
        vec2_near(from, task->planned, NOWHERE)) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_NOWHERE, s->span, "%s is there already, and goes nowhere",
                     who_text(m, task->who).at);
        diag_help(m->diags, diag, "name another place, or write `%s stays`",
                  who_text(m, task->who).at);
    }
}

/* Who drives left, or baseline from the right, has that side where he ends in the middle. */
static void keep_side(struct maker *m, const struct task *task, struct vec2 before)
{
    enum side from = where_side(before);
    m->flow.came[task->who] = from != SIDE_NONE ? from : m->flow.came[task->who];
    if (task->kind == TASK_CARRY) {
        bool baseline = task->drive_baseline && from != SIDE_NONE;
        m->flow.drove[task->who] = task->drive_across ? task->drive_across
                                   : baseline         ? (from == SIDE_LEFT ? -1 : 1)
                                                      : 0;
    } else if (task->kind == TASK_MOVE || task->kind == TASK_USE) {
        m->flow.drove[task->who] = 0;
    }
}

static void one_task(struct maker *m, const struct sentence *s, const struct voice *voice, body who)
{
    struct sentence changed;
    enum verb verb = verb_meant(m, s, voice, who, &changed);
    const struct sentence *meant = verb == s->verb ? s : &changed;
    struct task task = task_new(m, s, verb, who);
    struct work work = work_new(m, s, verb, who);
    struct vec2 from = left_at(m, who), before = m->flow.at[who];
    if (!times_fit(m, s) || !begins_there(m, s, voice, who) ||
        !set_modifiers(m, meant, voice, &task) ||
        !makers[task.kind](m, meant, voice, &task, &work) || !is_in_time(m, &task, &work, from)) {
        m->play->broken = true;
        return;
    }
    keep_side(m, &task, before);
    note_nowhere(m, s, &task, from);
    set_event(m, s->tie.event, voice, &work.event);
    set_event(m, s->until, voice, &work.until);
    sentence_add(m, &task, &work);
}

void sentence_tasks(struct maker *m, const struct sentence *s, const struct voice *voice)
{
    struct body_list subjects = who_subjects(m, s, voice);
    if (subjects.count == 0) {
        m->play->broken = true;
        return;
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
