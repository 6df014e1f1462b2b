/* SPDX-License-Identifier: MIT */
/* trouble: what cannot happen, said with the sentences it is about. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

static struct str words_of(const struct world *world, const struct task *task)
{
    struct str text = {0};
    if (world_is_written(world, task->span)) {
        text = source_text(world->sources, task->span);
    }
    if (text.size) {
        return text;
    }
    struct strbuf out; /* a task without a sentence of its own */
    strbuf_init(&out, world->arena);
    body_print(&out, task->who);
    strbuf_print(&out, " %s", verb_row(task->verb)->words);
    return strbuf_str(&out);
}

const char *said_who(const struct world *world, body b)
{
    struct strbuf out;
    strbuf_init(&out, world->arena);
    body_print(&out, b);
    return strbuf_str(&out).at;
}

const char *said_far(const struct world *world, double metres)
{
    struct strbuf out;
    strbuf_init(&out, world->arena);
    play_length(&out, world->play, metres);
    return strbuf_str(&out).at;
}

const char *said_seconds(const struct world *world, double seconds)
{
    struct strbuf out;
    strbuf_init(&out, world->arena);
    strbuf_fixed(&out, seconds, 1);
    return strbuf_str(&out).at;
}

/* The task that has to happen before this one can go on, or none. */
static int blocker(struct world *world, const struct job *job)
{
    for (size_t i = 0; i < job->task->waits.count; i++) {
        const struct wait *wait = &job->task->waits.at[i];
        if (wait->kind == WAIT_TASK && wait->task >= 0 && (size_t)wait->task < world->jobs &&
            world->segment->record[wait->task].time[wait->moment] == TIME_NEVER) {
            return wait->task;
        }
        if (wait->kind == WAIT_NEARS && !world->job[wait->task].complete) {
            return wait->task;
        }
        if (wait->kind == WAIT_LEAVES) {
            struct job *head = queue_head(world, wait->who);
            return head ? head->index : SIM_NO_TASK;
        }
        for (int k = (size_t)job->index >= world->base ? (int)world->base : 0;
             wait->kind == WAIT_ALL_BEFORE && k < job->index; k++) {
            if (!world->job[k].complete) {
                return k;
            }
        }
    }
    return task_class(job->task->kind)->waits_for(world, job);
}

static bool is_named(const struct world *world, const struct wait *wait)
{
    return (wait->kind == WAIT_STATE || wait->kind == WAIT_DEED) &&
           world_is_written(world, wait->span);
}

/* A state, or a defender's deed, that the coach has written and that has not come about; NULL. */
static const struct wait *unmet(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    if (job->phase != PHASE_WAITING) {
        bool ends = task->has_until && !queue_wait_met(world, job, &task->until);
        return ends && is_named(world, &task->until) ? &task->until : NULL;
    }
    for (size_t i = 0; i < task->waits.count; i++) {
        const struct wait *wait = &task->waits.at[i];
        if (is_named(world, wait) && !queue_wait_met(world, job, wait)) {
            return wait;
        }
    }
    return NULL;
}

static void say_unmet(struct world *world, const struct job *job, enum diag_code code,
                      const struct wait *wait)
{
    bool waits = job->phase == PHASE_WAITING;
    struct str what = source_text(world->sources, wait->span);
    struct diag *diag =
        diag_add(world->diags, code, job->task->span,
                 waits ? "`%.*s` never starts: `%.*s` does not come about in this step"
                       : "`%.*s` never ends, and a sentence waits for it: `%.*s` does not come "
                         "about in this step",
                 STR_ARG(words_of(world, job->task)), STR_ARG(what));
    if (body_is_defender(wait->who)) {
        world->lacked = wait->kind == WAIT_DEED ? wait : NULL;
        diag_help(
            world->diags, diag,
            "what the defense may do is a read: begin with `if %.*s, …`; or write what brings it "
            "about",
            STR_ARG(what));
        return;
    }
    diag_help(world->diags, diag,
              "tie it to a sentence of the step, as 1 passes, or write what brings it about");
}

/* A task that is not the first of its player waits for the one that is. */
static int next_in_chain(struct world *world, int task)
{
    int on = blocker(world, &world->job[task]);
    if (on == SIM_NO_TASK || world->job[on].complete) {
        return SIM_NO_TASK;
    }
    struct job *head = queue_head(world, world->job[on].task->who);
    bool behind = head && head->index != on && world->job[on].phase == PHASE_WAITING;
    return behind ? head->index : on;
}

static struct job *first_waiting(struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        struct job *job = &world->job[i];
        if (!job->complete && job == queue_head(world, job->task->who)) {
            return job;
        }
    }
    for (size_t i = 0; i < world->jobs; i++) { /* a pass that has left the hand, and never came */
        if (!world->job[i].complete) {
            return &world->job[i];
        }
    }
    return NULL;
}

/* Follows who waits for whom from `from`; true when it comes back: then *start is on the circle. */
static bool find_circle(struct world *world, int from, int *start)
{
    bool *seen = arena_array(world->arena, bool, world->jobs);
    for (int at = from; at != SIM_NO_TASK; at = next_in_chain(world, at)) {
        if (seen[at]) {
            *start = at;
            return true;
        }
        seen[at] = true;
    }
    return false;
}

static void say_circle(struct world *world, int start)
{
    struct strbuf out;
    strbuf_init(&out, world->arena);
    strbuf_print(&out, "`%.*s`", STR_ARG(words_of(world, world->job[start].task)));
    int at = start;
    do {
        at = next_in_chain(world, at);
        strbuf_print(&out, " waits for `%.*s`", STR_ARG(words_of(world, world->job[at].task)));
        if (at != start) {
            strbuf_text(&out, ", which");
        }
    } while (at != start);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_CIRCLE, world->job[start].task->span,
                 "these sentences wait for each other: %.*s", STR_ARG(strbuf_str(&out)));
    diag_help(world->diags, diag,
              "take the tie out of one of them, or write `as` where it may start at once");
}

static bool wants_ball(const struct world *world, const struct task *task)
{
    bool ball = task_is_throw(task) || task->kind == TASK_CARRY;
    return (ball || !use_has_ball(world, task)) && !ball_is_held(world, task->who);
}

/* He has shot in this step, and nobody has had the ball since. */
static bool has_shot(const struct world *world, body who)
{
    for (size_t k = world->base; k < world->jobs && world->ball.state != HELD; k++) {
        const struct job *job = &world->job[k];
        if (job->task->kind == TASK_SHOOT && job->task->who == who && job->complete) {
            return true;
        }
    }
    return false;
}

static void say_no_ball(struct world *world, const struct job *job)
{
    const char *who = said_who(world, job->task->who);
    if (has_shot(world, job->task->who)) {
        struct diag *diag = diag_add(world->diags, DIAG_RUN_STUCK, job->task->span,
                                     "`%.*s` cannot happen: %s has shot the ball",
                                     STR_ARG(words_of(world, job->task)), who);
        diag_help(world->diags, diag, "write first who gets it: %s rebounds", who);
        return;
    }
    struct diag *diag = diag_add(world->diags, DIAG_RUN_STUCK, job->task->span,
                                 "`%.*s` cannot happen: %s never gets the ball",
                                 STR_ARG(words_of(world, job->task)), who);
    diag_help(
        world->diags, diag,
        "write the pass that brings it, or give the ball to somebody else at the start: ball %s",
        who);
}

void trouble_stuck(struct world *world)
{
    struct job *job = first_waiting(world);
    int start;
    world->failed = true;
    if (!job) {
        return;
    }
    if (find_circle(world, job->index, &start)) {
        say_circle(world, start);
        return;
    }
    int on = next_in_chain(world, job->index);
    struct diag *diag;
    if (on == SIM_NO_TASK && wants_ball(world, job->task)) {
        say_no_ball(world, job);
        return;
    }
    const struct wait *wait = unmet(world, job);
    if (on == SIM_NO_TASK && wait) {
        say_unmet(world, job, DIAG_RUN_STUCK, wait);
        return;
    }
    if (on != SIM_NO_TASK) {
        diag = diag_add(world->diags, DIAG_RUN_STUCK, job->task->span,
                        "`%.*s` waits for `%.*s`, which does not come to its end",
                        STR_ARG(words_of(world, job->task)),
                        STR_ARG(words_of(world, world->job[on].task)));
    } else {
        diag = diag_add(world->diags, DIAG_RUN_STUCK, job->task->span,
                        job->phase == PHASE_WAITING
                            ? "`%.*s` never starts: what it waits for does not happen"
                            : "`%.*s` never comes to its end",
                        STR_ARG(words_of(world, job->task)));
    }
    diag_help(world->diags, diag, "look at who has the ball there, and at what its ties wait for");
}

void trouble_waited(struct world *world, const struct job *job)
{
    int on = next_in_chain(world, job->index);
    const struct wait *wait = unmet(world, job);
    world->failed = true;
    if (on == SIM_NO_TASK && wait) {
        say_unmet(world, job, DIAG_RUN_WAIT, wait);
        return;
    }
    struct diag *diag = on == SIM_NO_TASK
                            ? diag_add(world->diags, DIAG_RUN_WAIT, job->task->span,
                                       "`%.*s` has waited %d seconds and not started",
                                       STR_ARG(words_of(world, job->task)), (int)LIMIT_WAIT_SECONDS)
                            : diag_add(world->diags, DIAG_RUN_WAIT, job->task->span,
                                       "`%.*s` has waited %d seconds for `%.*s`",
                                       STR_ARG(words_of(world, job->task)), (int)LIMIT_WAIT_SECONDS,
                                       STR_ARG(words_of(world, world->job[on].task)));
    diag_help(world->diags, diag,
              "put what comes later into a step of its own, or tie it to something nearer");
}

void trouble_long(struct world *world)
{
    struct job *job = first_waiting(world);
    world->failed = true;
    struct str words = job ? words_of(world, job->task) : (struct str){"", 0};
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_LONG, world->step->span,
                 "this step takes more than %d seconds%s%.*s%s", (int)LIMIT_STEP_SECONDS,
                 job ? "; `" : "", STR_ARG(words), job ? "` is still going on" : "");
    diag_help(world->diags, diag, "make two steps of it");
}

/* What kept the player: the sentence before. */
static const struct job *kept_by(const struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    return agent->head > 0 ? &world->job[agent->queue[agent->head - 1]] : NULL;
}

void trouble_at_once(struct world *world, const struct job *job)
{
    struct span span = job->task->until.span;
    bool written = world_is_written(world, span);
    struct str until = written ? source_text(world->sources, span) : STR("");
    struct diag *diag = diag_add(world->diags, DIAG_RUN_AT_ONCE, written ? span : job->task->span,
                                 "`%.*s` ends as it begins: `until %.*s` has been by then",
                                 STR_ARG(words_of(world, job->task)), STR_ARG(until));
    diag_help(world->diags, diag, "leave `until` out, or name something that comes later");
}

void trouble_past(struct world *world, const struct job *job, const struct wait *wait,
                  double moment)
{
    const struct job *before = kept_by(world, job);
    struct strbuf out;
    strbuf_init(&out, world->arena);
    strbuf_print(&out, "`%.*s` comes too late: that moment is ",
                 STR_ARG(words_of(world, job->task)));
    strbuf_fixed(&out, moment - world_zero(world), 1);
    strbuf_text(&out, " s into the step, and ");
    body_print(&out, job->task->who);
    if (before) {
        strbuf_print(&out, " is busy with `%.*s` until ", STR_ARG(words_of(world, before->task)));
    } else {
        strbuf_text(&out, " cannot start before ");
    }
    strbuf_fixed(&out, world->t - world_zero(world), 1);
    strbuf_text(&out, " s");
    struct diag *diag = diag_add(world->diags, DIAG_RUN_PAST,
                                 world_is_written(world, wait->span) ? wait->span : job->task->span,
                                 "%.*s", STR_ARG(strbuf_str(&out)));
    diag_help(world->diags, diag,
              "write `after` or `when` in place of `as`, a later time, or cut the sentence before "
              "short with `until`");
}

bool trouble_told(const struct world *world, const struct job *job)
{
    size_t index = (size_t)job->index;
    return world->branch > 0 &&
           (index < world->base || index - world->base < world->step->tasks.count);
}

/* How far he still had to go, where that can be told. */
static void print_left(struct strbuf *out, const struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    if (agent->going) {
        play_length(out, world->play, real_max(0, agent->course.goal - agent->course.along));
        strbuf_text(out, " before its end");
    } else {
        strbuf_text(out, "before it is done");
    }
}

void trouble_cut(struct world *world, const struct job *job, const struct job *by)
{
    struct strbuf out;
    if (trouble_told(world, by)) {
        return;
    }
    strbuf_init(&out, world->arena);
    strbuf_print(&out, "`%.*s` cuts `%.*s` short, ", STR_ARG(words_of(world, by->task)),
                 STR_ARG(words_of(world, job->task)));
    print_left(&out, world, job);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_CUT, by->task->span, "%.*s", STR_ARG(strbuf_str(&out)));
    diag_help(world->diags, diag,
              "give a later time, or leave the time out: it then follows when the other is done");
}

void trouble_screen_place(struct world *world, const struct job *job, double off)
{
    const struct screen *screen = &world->screen[job->task->who];
    if (trouble_told(world, job)) {
        return;
    }
    const char *far = said_far(world, off);
    const char *on =
        said_who(world, screen->defender != BODY_NONE ? screen->defender : job->task->other);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_SCREEN_PLACE, job->task->span,
                 "this screen is set %s from the place you name: it is set on the defender, and "
                 "there %s is",
                 far, on);
    diag_help(
        world->diags, diag,
        "leave the place out; or bring the two there first; or give it in brackets, at (-7, 4), "
        "and the screener stands right there");
}

/* " to right wing" of "1 dribbles off 5 to right wing"; nothing when no place is written. */
static struct str place_words(struct str words)
{
    for (size_t i = 0; i + 4 <= words.size; i++) {
        struct str rest = {words.at + i, words.size - i};
        if (str_starts(rest, " to ")) {
            return rest;
        }
    }
    return (struct str){"", 0};
}

void trouble_away(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    if (trouble_told(world, job)) {
        return;
    }
    const char *who = said_who(world, task->who);
    const char *by = said_who(world, task->other);
    const char *guard = said_who(world, guard_of(world, task->who));
    struct diag *diag = diag_add(
        world->diags, DIAG_RUN_AWAY, task->span,
        "%s goes away from the screen here: %s stands between %s and the way to this place", who,
        guard, by);
    diag_help(world->diags, diag, "write: %s rejects %s%.*s", who, by,
              STR_ARG(place_words(words_of(world, task))));
}

void trouble_order(struct world *world, const struct job *job)
{
    if (trouble_told(world, job)) {
        return;
    }
    const char *first = said_who(world, job->task->other2);
    const char *second = said_who(world, job->task->other);
    struct diag *diag = diag_add(
        world->diags, DIAG_RUN_ORDER, job->task->span,
        "%s stands nearer than %s, so the way goes by %s first: by %s first it would double back",
        first, second, first, second);
    diag_help(world->diags, diag, "write: off %s and %s", first, second);
}

void trouble_up(struct world *world, const struct job *job, double up)
{
    if (trouble_told(world, job)) {
        return;
    }
    const char *who = said_who(world, job->task->who);
    const char *user = said_who(world, job->task->other);
    const char *far = said_far(world, up);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_UP, job->task->span,
                 "this is an up screen: %s comes %s up the floor to set it", who, far);
    diag_help(world->diags, diag, "write: %s screens for %s, or bring %s below first", who, user,
              user);
}

void trouble_ice(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    if (trouble_told(world, job)) {
        return;
    }
    const char *who = said_who(world, task->who);
    const char *by = said_who(world, task->other);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_ICE, task->span,
                 "ICE sends %s away from the screen: did you mean %s rejects %s?", who, who, by);
    diag_help(world->diags, diag,
              "write: %s rejects %s; if the screen is used all the same, leave it", who, by);
}

/* Less than that short of the place nobody asks; nor where the trap is at the screen he uses. */
#define SHORT (3 * FEET)

void trouble_trapped(struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    double off = vec2_distance(world->agent[task->who].m.at, job->goal);
    if (off < SHORT || task->kind == TASK_USE || trouble_told(world, job)) {
        return;
    }
    const char *who = said_who(world, task->who);
    const char *far = said_far(world, off);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_TRAPPED, task->span,
                 "the trap holds %s, %s short of this place: nobody dribbles through "
                 "two defenders",
                 who, far);
    diag_help(world->diags, diag, "pass out of the trap, or dribble back from it first");
}

#define DRAGS 1.75 /* times as long as the way needs, */
#define LOSES 1.5  /* and so many s more, is far too long (both ours) */

/* `how` it went: late, or not to the end. */
static void say_held_up(struct world *world, const struct job *job, const char *how)
{
    body who = job->task->who, by = world->agent[who].held_by;
    bool known = by != BODY_NONE;
    struct diag *diag = diag_add(
        world->diags, DIAG_RUN_HELD_UP, job->task->span, "%s %s: %s in the way",
        said_who(world, who), how,
        known ? str_format(world->arena, "%s stands", said_who(world, by)).at : "others stand");
    diag_help(
        world->diags, diag,
        "start it when the way is free, or name another: along the baseline, through the lane");
}

void trouble_held_up(struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    const struct gait *gait = &agent->gait;
    double top = gait->clip > 0 ? real_min(gait->clip, gait->top) : gait->top;
    double took = world->t - agent->way_since;
    double needs = took > LOSES ? motion_rush(top, gait->tau, gait->brake, agent->way_far) : took;
    double off = agent->going ? 0 : vec2_distance(agent->m.at, job->goal);
    bool late = job->task->taking <= 0 && took > DRAGS * needs && took > needs + LOSES;
    if (trouble_told(world, job)) {
        return;
    }
    if (late) {
        say_held_up(world, job,
                    str_format(world->arena, "takes %s s for %s, where %s s would do",
                               said_seconds(world, took), said_far(world, agent->way_far),
                               said_seconds(world, needs))
                        .at);
    } else if (off >= SHORT) {
        say_held_up(
            world, job,
            str_format(world->arena, "is kept %s short of this place", said_far(world, off)).at);
    }
}

void trouble_until(struct world *world, const struct job *job)
{
    const struct wait *until = &job->task->until;
    if (!is_named(world, until)) {
        return;
    }
    struct str what = source_text(world->sources, until->span);
    struct diag *diag = diag_add(world->diags, DIAG_RUN_UNTIL, job->task->span,
                                 "`%.*s` never came true here: `%.*s` went all its way",
                                 STR_ARG(what), STR_ARG(words_of(world, job->task)));
    diag_help(world->diags, diag, "leave `until %.*s` out, or write what brings it about",
              STR_ARG(what));
}
